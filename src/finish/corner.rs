//! Corners of the cut line: how two set-off lines go over into each other.
//!
//! Everything is told for the lines as the outline runs: one arrives at the corner, the other leaves it.

use super::ring::Hem;
use crate::base::tolerance;
use crate::curves::{Curve, Pt, Rigid, Segment};

/// How two cut lines go over into each other.
#[derive(Clone, Debug)]
pub(super) struct Join {
    /// The arriving line is kept up to this place.
    pub keep: f64,
    /// What lies between them; gaps at its ends are closed by straight lines.
    pub via: Vec<Segment<f64>>,
    /// The leaving line is kept from this place on.
    pub from: f64,
}

/// A line that arrives at a corner or leaves it.
#[derive(Clone, Copy, Debug)]
pub(super) struct Limb<'a> {
    /// The cut line.
    pub off: &'a Curve<f64>,
    /// Direction of the stitch line at the corner, as it runs.
    pub way: Pt<f64>,
    /// Its allowance at the corner, mm.
    pub width: f64,
}

impl Limb<'_> {
    fn end(&self) -> Pt<f64> {
        self.off.end()
    }
    fn start(&self) -> Pt<f64> {
        self.off.start()
    }
}

/// A straight line, if it has a length.
pub(super) fn straight(a: Pt<f64>, b: Pt<f64>) -> Option<Segment<f64>> {
    ((b - a).length() > tolerance::EQUAL).then_some(Segment::Line(a, b))
}

/// Both as they are, joined by whatever `via` is.
pub(super) fn as_they_are(a: &Limb<'_>, via: Vec<Segment<f64>>) -> Join {
    Join { keep: a.off.length(), via, from: 0.0 }
}

/// Both cut lines run on until they meet; a sharp point is cut square at `limit` allowances. `sense` as in
/// [`super::body::Body`].
pub(super) fn plain(at: Pt<f64>, a: &Limb<'_>, b: &Limb<'_>, sense: f64, limit: f64) -> Join {
    let turn = a.way.cross(b.way);
    if turn.abs() <= tolerance::STRAIGHT && a.way.dot(b.way) > 0.0 {
        return as_they_are(a, Vec::new());
    }
    if turn.abs() > tolerance::EQUAL {
        // Ahead on the first by u, back on the second by v.
        let gap = b.start() - a.end();
        let (u, v) = (gap.cross(b.way) / turn, gap.cross(a.way) / turn);
        // Lines of two widths that hardly turn would meet far away: there a square step is cleaner.
        let step = || as_they_are(a, straight(a.end(), b.start()).into_iter().collect());
        let far = |meet: Pt<f64>| {
            a.way.dot(b.way) > 0.0 && (meet - at).length() > tolerance::limit::STEP * a.width.max(b.width)
        };
        if u >= 0.0 && v <= 0.0 {
            let meet = a.end() + a.way.scaled(u);
            if far(meet) {
                return step();
            }
            let reach = limit * a.width.max(b.width);
            if turn * sense > 0.0 && (meet - at).length() > reach + tolerance::EQUAL {
                return square(at, a, b, (meet - at).unit().unwrap_or(a.way), reach);
            }
            return as_they_are(a, straight(a.end(), meet).into_iter().chain(straight(meet, b.start())).collect());
        }
        if let Some((join, meet)) = crossing(a, b, u >= 0.0, v <= 0.0) {
            return if far(meet) { step() } else { join };
        }
        if a.way.dot(b.way) > 0.0 {
            return step();
        }
    }
    // A point that turns right back, or lines too short to meet.
    if turn * sense > 0.0 || a.way.dot(b.way) < 0.0 && turn.abs() <= tolerance::EQUAL {
        let reach = limit.min(tolerance::limit::SHARP) * a.width.max(b.width);
        return square(at, a, b, (a.way - b.way).unit().unwrap_or(a.way), reach);
    }
    as_they_are(a, straight(a.end(), at).into_iter().chain(straight(at, b.start())).collect())
}

/// Where two lines cross of which at least one must be cut back; one that may run on does so straight.
fn crossing(a: &Limb<'_>, b: &Limb<'_>, a_runs_on: bool, b_runs_on: bool) -> Option<(Join, Pt<f64>)> {
    let last = |met: Vec<crate::curves::Met<f64>>| met.into_iter().next_back();
    if a_runs_on {
        let met = b.off.meets_line(a.end(), a.way).ok()?;
        let meet = met.into_iter().find(|m| (m.point - a.end()).dot(a.way) >= -tolerance::EQUAL)?;
        let via = straight(a.end(), meet.point).into_iter().collect();
        return Some((Join { keep: a.off.length(), via, from: meet.along }, meet.point));
    }
    if b_runs_on {
        let met = a.off.meets_line(b.start(), b.way).ok()?;
        let ahead = met.into_iter().filter(|m| (b.start() - m.point).dot(b.way) >= -tolerance::EQUAL);
        let meet = last(ahead.collect())?;
        let via = straight(meet.point, b.start()).into_iter().collect();
        return Some((Join { keep: meet.along, via, from: 0.0 }, meet.point));
    }
    let meet = last(a.off.meets(b.off).ok()?)?;
    Some((Join { keep: meet.along, via: Vec::new(), from: b.off.locate(meet.point).along }, meet.point))
}

/// Straight across at a distance from the corner, square to a direction.
pub(super) fn square(at: Pt<f64>, a: &Limb<'_>, b: &Limb<'_>, out: Pt<f64>, reach: f64) -> Join {
    let (foot, along) = (at + out.scaled(reach), out.square());
    let on = |limb: &Limb<'_>, from: Pt<f64>| {
        let turn = limb.way.cross(along);
        (turn.abs() > tolerance::EQUAL).then(|| from + limb.way.scaled((foot - from).cross(along) / turn))
    };
    let (p, q) = (on(a, a.end()), on(b, b.start()));
    let (Some(p), Some(q)) = (p, q) else { return as_they_are(a, straight(a.end(), b.start()).into_iter().collect()) };
    // What ends before the line runs on to it; what ends behind it is cut back.
    let keep = if (p - a.end()).dot(a.way) >= 0.0 { a.off.length() } else { a.off.locate(p).along };
    let from = if (b.start() - q).dot(b.way) >= 0.0 { 0.0 } else { b.off.locate(q).along };
    let via = [
        if keep == a.off.length() { straight(a.end(), p) } else { None },
        straight(p, q),
        if from == 0.0 { straight(q, b.start()) } else { None },
    ];
    Join { keep, via: via.into_iter().flatten().collect(), from }
}

/// Both allowances turned in and meeting on the line that halves the corner, with so much left beyond the mitre.
pub(super) fn mitred(at: Pt<f64>, a: &Limb<'_>, b: &Limb<'_>, sense: f64, beyond: f64) -> Join {
    let turn = a.way.cross(b.way);
    if turn * sense <= tolerance::STRAIGHT {
        return plain(at, a, b, sense, tolerance::limit::SHARP);
    }
    // Inside, both turned lines meet here; unfolded over each edge it is where the mitre leaves that cut line.
    let inside = |way: Pt<f64>| way.square().scaled(sense);
    let (p, q) = (at + inside(a.way).scaled(a.width), at + inside(b.way).scaled(b.width));
    let meet = p + a.way.scaled((q - p).cross(b.way) / turn);
    let mirrored = |way: Pt<f64>| Rigid::mirroring(at, at + way).map_or(meet, |m| m.of(meet));
    let (u, v) = (mirrored(a.way), mirrored(b.way));
    let out = (a.way - b.way).unit().unwrap_or(a.way);
    // Both legs of the mitre, moved out by what is left beyond it.
    let legs = [(u, at), (at, v)].map(|(from, to)| {
        let way = (to - from).unit().unwrap_or(out);
        let aside = way.square();
        let aside = if aside.dot(out) >= 0.0 { aside } else { -aside };
        (from + aside.scaled(beyond), way)
    });
    let on_a = meet_lines(legs[0], (a.end(), a.way)).unwrap_or(u);
    let on_b = meet_lines(legs[1], (b.start(), b.way)).unwrap_or(v);
    let middle = meet_lines(legs[0], legs[1]).unwrap_or(at + out.scaled(beyond));
    let keep = if (on_a - a.end()).dot(a.way) >= 0.0 { a.off.length() } else { a.off.locate(on_a).along };
    let from = if (b.start() - on_b).dot(b.way) >= 0.0 { 0.0 } else { b.off.locate(on_b).along };
    let via = [
        if keep == a.off.length() { straight(a.end(), on_a) } else { None },
        straight(on_a, middle),
        straight(middle, on_b),
        if from == 0.0 { straight(on_b, b.start()) } else { None },
    ];
    Join { keep, via: via.into_iter().flatten().collect(), from }
}

/// Where two straight lines meet.
pub(super) fn meet_lines((p, way): (Pt<f64>, Pt<f64>), (q, other): (Pt<f64>, Pt<f64>)) -> Option<Pt<f64>> {
    let turn = way.cross(other);
    (turn.abs() > tolerance::EQUAL).then(|| p + way.scaled((q - p).cross(other) / turn))
}

/// The end of an allowance beyond a line that is sewn (or folded) first: a path from that line outwards.
pub(super) struct Lid {
    /// Where the later cut line crosses the sewn line, or its prolongation.
    pub foot: Pt<f64>,
    /// From there outwards.
    pub path: Curve<f64>,
    /// The place on the later cut line from which it is kept.
    pub from: f64,
}

/// How far beyond a corner lines are followed: some allowances.
fn reach_of(width: f64) -> f64 {
    6.0 * width + 10.0
}

/// The later cut line (leaving the corner) as it lies beyond the line sewn first: mirrored in it. `axis` is that line's direction.
pub(super) fn mirrored_lid(at: Pt<f64>, axis: Pt<f64>, later: &Limb<'_>, width: f64) -> Option<Lid> {
    let reach = reach_of(width.max(later.width));
    let (whole, foot, place) = over_axis(at, axis, later.off, reach)?;
    let far = (place + 3.0 * width + reach).min(whole.length());
    let inner = whole.between(place, far)?;
    let path = inner.moved(&Rigid::mirroring(at, at + axis)?);
    Some(Lid { foot, path: path.run_on(0.0, reach)?, from: (place - reach).max(0.0) })
}

/// The later cut line of the other piece, laid against this one along the line sewn first: `lay` takes it there.
pub(super) fn laid_lid(
    at: Pt<f64>,
    axis: Pt<f64>,
    other: &Limb<'_>,
    lay: &Rigid<f64>,
    own: &Limb<'_>,
    width: f64,
) -> Option<Lid> {
    let reach = reach_of(width.max(other.width).max(own.width));
    let (whole, foot, place) = over_axis(at, axis, &other.off.moved(lay), reach)?;
    let path = whole.between(place, (place + 3.0 * width + reach).min(whole.length()))?;
    let (_, _, own_place) = over_axis(at, axis, own.off, reach)?;
    Some(Lid { foot, path: path.run_on(0.0, reach)?, from: (own_place - reach).max(0.0) })
}

/// A line that leaves a corner, run on backwards, and where it crosses the axis nearest to the corner.
fn over_axis(at: Pt<f64>, axis: Pt<f64>, line: &Curve<f64>, reach: f64) -> Option<(Curve<f64>, Pt<f64>, f64)> {
    let whole = line.run_on(reach, 0.0)?;
    let met = whole.meets_line(at, axis).ok()?;
    let near = |m: &crate::curves::Met<f64>| (m.point - at).length();
    let cross = met.into_iter().min_by(|a, b| near(a).total_cmp(&near(b)))?;
    Some((whole, cross.point, cross.along))
}

/// For a hem of two turns: the path mirrored once more in the line at which the second turn folds.
pub(super) fn turned_twice(lid: Lid, at: Pt<f64>, axis: Pt<f64>, out: Pt<f64>, hem: Hem) -> Option<Lid> {
    if hem.turn_in <= 0.0 {
        return Some(lid);
    }
    let fold = at + out.scaled(hem.depth);
    let at_fold = lid.path.meets_line(fold, axis).ok()?.first()?.along;
    let below = at + out.scaled(hem.depth - hem.turn_in);
    // A second turn as deep as the first ends where the path starts.
    let at_below = lid.path.meets_line(below, axis).ok()?.first().map_or(0.0, |m| m.along).min(at_fold);
    let tail = lid.path.between(at_below, at_fold)?.reversed().moved(&Rigid::mirroring(fold, fold + axis)?);
    let mut segments = lid.path.between(0.0, at_fold)?.segments().to_vec();
    segments.extend(tail.segments().iter().copied());
    let path = Curve::new(segments).ok()?.run_on(0.0, hem.depth)?;
    Some(Lid { path, ..lid })
}

/// The cut line of what is sewn first (arriving), its end by a lid, and the later cut line (leaving).
pub(super) fn lidded(first: &Limb<'_>, later: &Limb<'_>, lid: &Lid) -> Option<Join> {
    let reach = reach_of(first.width.max(later.width));
    let whole = first.off.run_on(0.0, reach)?;
    let met = lid.path.meets(&whole).ok()?;
    let meet = met.first()?;
    let place = whole.locate(meet.point).along;
    let keep = place.min(first.off.length());
    let mut via: Vec<Segment<f64>> = Vec::new();
    if place > keep {
        via.extend(straight(first.end(), meet.point));
    }
    if meet.along > tolerance::EQUAL {
        via.extend(lid.path.between(0.0, meet.along)?.reversed().segments().iter().copied());
    }
    let next = later.off.point_at(lid.from)?;
    via.extend(straight(lid.foot, next));
    Some(Join { keep, via, from: lid.from })
}

/// A join told for the other direction of travel.
pub(super) fn turned(join: Join, a: &Limb<'_>, b: &Limb<'_>) -> Join {
    let via = join.via.iter().rev().map(Segment::reversed).collect();
    Join { keep: a.off.length() - join.from, via, from: b.off.length() - join.keep }
}
