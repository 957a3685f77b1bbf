//! Where a curve meets a line, a circle or another curve, and where its tangent runs through a point.

use kurbo::Rect;

use super::cubic::{self, Cubic};
use super::{Curve, Pt, Segment, roots};
use crate::base::{Scalar, tolerance};

/// Pairs of stretches that are looked at before two cubics count as running along each other.
const MOST_PAIRS: usize = 20_000;
/// Two cubics meet at no more places than this, unless they are parts of one curve (Bézout).
const MOST_MEETINGS: usize = 9;
/// Steps of Newton's for two curves at once.
const MOST_STEPS: usize = 40;

/// A place at which a curve meets something.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Met<S> {
    /// Flat place on the curve, mm.
    pub along: S,
    /// The point.
    pub point: Pt<S>,
}

/// Two things run along each other, so that they meet everywhere.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Endless;

/// What a curve may meet.
#[derive(Clone, Copy)]
enum Probe<S> {
    /// A line: a point on it and its unit direction.
    Line(Pt<S>, Pt<S>),
    /// A circle.
    Circle(Pt<S>, S),
    /// A point through which the tangent runs.
    Touch(Pt<S>),
}

impl<S: Scalar> Probe<S> {
    fn plain(&self) -> Probe<f64> {
        match self {
            Self::Line(a, way) => Probe::Line(a.plain(), way.plain()),
            Self::Circle(c, r) => Probe::Circle(c.plain(), r.value()),
            Self::Touch(q) => Probe::Touch(q.plain()),
        }
    }

    /// What is zero where the segment meets it, and the slope by the parameter.
    fn at(&self, segment: &Segment<S>, u: S) -> (S, f64) {
        let (p, v) = (segment.point(u), segment.velocity(u));
        match self {
            Self::Line(a, way) => ((p - *a).cross(*way), v.cross(*way).value()),
            Self::Circle(c, r) => {
                let out = p - *c;
                let distance = out.length();
                (distance - *r, out.dot(v).value() / distance.value())
            }
            Self::Touch(q) => {
                let to = p - *q;
                (to.cross(v), to.cross(segment.acceleration(u)).value())
            }
        }
    }
}

impl Probe<f64> {
    /// How far it is missed at `u`, mm.
    fn miss(&self, segment: &Segment<f64>, u: f64) -> f64 {
        let p = segment.point(u);
        match self {
            Self::Line(a, way) => (p - *a).cross(*way),
            Self::Circle(c, r) => (p - *c).length() - r,
            Self::Touch(q) => segment.tangent(u).map_or(f64::NAN, |t| (p - *q).cross(t)),
        }
    }

    /// Parameters of a segment at which it is met, rising.
    fn on(&self, segment: &Segment<f64>) -> Result<Vec<f64>, Endless> {
        let (turns, sign): (Vec<f64>, Box<dyn Fn(f64) -> f64>) = match segment {
            Segment::Line(a, b) => match self {
                Self::Touch(_) => return Ok(Vec::new()),
                Self::Line(p, way) => {
                    let (at_a, at_b) = ((*a - *p).cross(*way), (*b - *p).cross(*way));
                    if at_a.abs() <= tolerance::EQUAL && at_b.abs() <= tolerance::EQUAL {
                        return if (*b - *a).length() <= tolerance::EQUAL { Ok(vec![0.0]) } else { Err(Endless) };
                    }
                    (Vec::new(), Box::new(move |u| at_a + (at_b - at_a) * u))
                }
                Self::Circle(..) => (vec![segment.nearest(self.middle())], self.missed(segment)),
            },
            Segment::Arc(arc) => {
                let from_centre = self.middle() - arc.centre();
                match self {
                    Self::Circle(_, r)
                        if from_centre.length() <= tolerance::EQUAL && (arc.radius() - r).abs() <= tolerance::EQUAL =>
                    {
                        return Err(Endless);
                    }
                    _ => {}
                }
                let angle = match self {
                    Self::Line(_, way) => way.square().angle(),
                    _ => from_centre.angle(),
                };
                let turns = arc.fractions_towards(angle);
                (turns, self.missed(segment))
            }
            Segment::Cubic(c) => {
                let coefficients = self.polynomial(c);
                if let Self::Line(..) = self
                    && coefficients.iter().all(|d| d.abs() <= tolerance::EQUAL)
                {
                    return Err(Endless);
                }
                let turns = roots::turns(&coefficients);
                (turns, Box::new(move |u| roots::value(&coefficients, u)))
            }
        };
        let hits = |u: f64| self.miss(segment, u).abs() <= tolerance::EQUAL;
        let mut cuts = vec![(0.0, hits(0.0), false)];
        cuts.extend(turns.into_iter().filter(|u| *u > 0.0 && *u < 1.0).map(|u| (u, hits(u), true)));
        cuts.push((1.0, hits(1.0), false));
        let mut out: Vec<f64> = cuts.iter().filter(|(_, hit, turn)| *hit && *turn).map(|c| c.0).collect();
        let mut ends = [cuts[0].1, cuts[cuts.len() - 1].1];
        for pair in cuts.windows(2) {
            let ((low, low_hit, low_turn), (high, high_hit, high_turn)) = (pair[0], pair[1]);
            // Beside a turn that reaches zero the turn itself is the answer: they touch there.
            if (low_hit && low_turn) || (high_hit && high_turn) {
                ends[0] &= low != 0.0;
                ends[1] &= high != 1.0;
                continue;
            }
            if let Some(u) = roots::root(&*sign, low, high) {
                ends[0] &= low != 0.0;
                ends[1] &= high != 1.0;
                out.push(u);
            }
        }
        out.extend(ends[0].then_some(0.0));
        out.extend(ends[1].then_some(1.0));
        // Where a cubic stands still its polynomial is zero without meeting anything.
        out.retain(|u| self.miss(segment, *u).abs() <= tolerance::CURVE);
        if let Self::Touch(q) = self {
            out.retain(|u| (segment.point(*u) - *q).length() > tolerance::EQUAL);
        }
        out.sort_by(f64::total_cmp);
        Ok(out)
    }

    /// The point about which it is.
    fn middle(&self) -> Pt<f64> {
        match self {
            Self::Line(p, _) | Self::Circle(p, _) | Self::Touch(p) => *p,
        }
    }

    fn missed<'a>(&'a self, segment: &'a Segment<f64>) -> Box<dyn Fn(f64) -> f64 + 'a> {
        Box::new(|u| self.miss(segment, u))
    }

    /// The polynomial of a cubic that is zero where it meets this.
    fn polynomial(&self, c: &Cubic<f64>) -> Vec<f64> {
        match self {
            Self::Line(a, way) => c.iter().map(|p| (*p - *a).cross(*way)).collect(),
            Self::Circle(centre, r) => {
                let to = c.map(|p| p - *centre);
                roots::product(&to, &to, |a, b| a.dot(b)).into_iter().map(|d| d - r * r).collect()
            }
            Self::Touch(q) => {
                let (to, way) = (c.map(|p| p - *q), [c[1] - c[0], c[2] - c[1], c[3] - c[2]]);
                roots::product(&to, &way, |a, b| a.cross(b))
            }
        }
    }
}

/// The parameter with its derivatives: one step of Newton's from a root of the plain numbers.
fn carried<S: Scalar>(miss: S, slope: f64, speed: f64, u: f64) -> S {
    if slope.abs() <= tolerance::RANK * speed || !slope.is_finite() {
        return S::constant(u);
    }
    let step = miss.times(-1.0 / slope);
    step.plus(u - step.value())
}

impl<S: Scalar> Curve<S> {
    /// Where the curve meets the endless line through `at` in the unit direction `way`, in order along the curve. What it touches counts
    /// once. Within 1e-9 mm where it crosses; carries derivatives.
    pub fn meets_line(&self, at: Pt<S>, way: Pt<S>) -> Result<Vec<Met<S>>, Endless> {
        self.met(&Probe::Line(at, way))
    }

    /// Where the curve is at a distance of `radius` from `centre`, in order along it.
    pub fn meets_circle(&self, centre: Pt<S>, radius: S) -> Result<Vec<Met<S>>, Endless> {
        self.met(&Probe::Circle(centre, radius))
    }

    /// Where a curved stretch has a tangent that runs through `from`, in order along the curve.
    pub fn touched_from(&self, from: Pt<S>) -> Vec<Met<S>> {
        self.met(&Probe::Touch(from)).unwrap_or_default()
    }

    fn met(&self, probe: &Probe<S>) -> Result<Vec<Met<S>>, Endless> {
        let plain = probe.plain();
        let mut out = Vec::new();
        for (i, segment) in self.segments().iter().enumerate() {
            for u in plain.on(&segment.plain())? {
                let at = S::constant(u);
                let (miss, slope) = probe.at(segment, at);
                let speed = segment.velocity(at).plain().length();
                out.push(self.met_at(i, carried(miss, slope, speed, u)));
            }
        }
        Ok(distinct(out))
    }

    fn met_at(&self, segment: usize, u: S) -> Met<S> {
        let s = &self.segments()[segment];
        Met { along: self.start_of(segment) + s.length_to(u), point: s.point(u) }
    }

    /// Where two curves meet, in order along this one.
    pub fn meets(&self, other: &Self) -> Result<Vec<Met<S>>, Endless> {
        let mut out = Vec::new();
        let hulls: Vec<Rect> = other.segments().iter().map(hull).collect();
        for (i, a) in self.segments().iter().enumerate() {
            let own = hull(a);
            for (b, hull) in other.segments().iter().zip(&hulls) {
                // What lies apart does not meet; boxes that touch are looked at.
                if own.x0 > hull.x1 || own.x1 < hull.x0 || own.y0 > hull.y1 || own.y1 < hull.y0 {
                    continue;
                }
                for (u, v) in pair(&a.plain(), &b.plain())? {
                    let (at, bt) = (S::constant(u), S::constant(v));
                    let (va, vb) = (a.velocity(at).plain(), b.velocity(bt).plain());
                    let apart = a.point(at) - b.point(bt);
                    let miss = apart.cross(Pt::constant(vb));
                    out.push(self.met_at(i, carried(miss, va.cross(vb), va.length() * vb.length(), u)));
                }
            }
        }
        out.sort_by(|a, b| a.along.value().total_cmp(&b.along.value()));
        Ok(distinct(out))
    }

    /// Curvature at the flat place `s`, one over mm, positive where the curve turns clockwise as seen; none outside the curve, or where it
    /// stands still.
    pub fn bend_at(&self, s: S) -> Option<S> {
        let (segment, u) = self.parameter_of(s)?;
        let velocity = segment.velocity(u);
        let speed = velocity.length();
        if speed.value() <= tolerance::ARC_LENGTH {
            return None;
        }
        Some(velocity.cross(segment.acceleration(u)) / (speed * speed * speed))
    }
}

/// A box around a segment, not the smallest, grown by 1e-6 mm.
fn hull<S: Scalar>(segment: &Segment<S>) -> Rect {
    let box_of = |points: &[Pt<S>]| {
        let first = points[0].value();
        points.iter().fold(Rect::from_points(first, first), |r, p| r.union_pt(p.value()))
    };
    let room = match segment {
        Segment::Line(a, b) => box_of(&[*a, *b]),
        Segment::Cubic(c) => box_of(c),
        Segment::Arc(_) => segment.bounds(),
    };
    room.inflate(tolerance::EQUAL, tolerance::EQUAL)
}

/// Answers closer than 1e-6 mm count once.
fn distinct<S: Scalar>(all: Vec<Met<S>>) -> Vec<Met<S>> {
    let mut out: Vec<Met<S>> = Vec::with_capacity(all.len());
    for met in all {
        let near = |m: &Met<S>| (m.point.plain() - met.point.plain()).length() <= tolerance::EQUAL;
        if !out.iter().any(near) {
            out.push(met);
        }
    }
    out
}

/// Parameters at which two segments meet.
fn pair(a: &Segment<f64>, b: &Segment<f64>) -> Result<Vec<(f64, f64)>, Endless> {
    let probe = |s: &Segment<f64>| match s {
        Segment::Line(p, q) => (*q - *p).unit().map(|way| Probe::Line(*p, way)),
        Segment::Arc(arc) => Some(Probe::Circle(arc.centre(), arc.radius())),
        Segment::Cubic(_) => None,
    };
    if let Some(met) = probe(b).map(|p| p.on(a)) {
        return on_both(a, b, met);
    }
    if let Some(met) = probe(a).map(|p| p.on(b)) {
        return Ok(on_both(b, a, met)?.into_iter().map(|(v, u)| (u, v)).collect());
    }
    let (Segment::Cubic(a), Segment::Cubic(b)) = (a, b) else { return Ok(Vec::new()) };
    cubics(a, b)
}

/// Places of `a` on the line or circle of `b` that lie on `b` itself.
fn on_both(a: &Segment<f64>, b: &Segment<f64>, met: Result<Vec<f64>, Endless>) -> Result<Vec<(f64, f64)>, Endless> {
    let reach = |p: Pt<f64>| {
        let v = b.nearest(p);
        ((b.point(v) - p).length() <= tolerance::ON_EDGE.min(tolerance::EQUAL), v)
    };
    match met {
        Ok(places) => Ok(places
            .into_iter()
            .filter_map(|u| Some((u, reach(a.point(u)))).filter(|r| r.1.0))
            .map(|(u, r)| (u, r.1))
            .collect()),
        // They lie on one line or circle: apart, end to end, or along each other.
        Err(Endless) => {
            let mut out: Vec<(f64, f64)> = Vec::new();
            for u in [0.0, 1.0] {
                let (on, v) = reach(a.point(u));
                out.extend(on.then_some((u, v)));
            }
            for v in [0.0, 1.0] {
                let p = b.point(v);
                let u = a.nearest(p);
                if (a.point(u) - p).length() <= tolerance::EQUAL {
                    out.push((u, v));
                }
            }
            let apart = |x: &(f64, f64), y: &(f64, f64)| (a.point(x.0) - a.point(y.0)).length() > tolerance::EQUAL;
            if out.iter().any(|x| out.iter().any(|y| apart(x, y))) {
                // Two half circles meet end to end twice without a common stretch.
                let middle = |x: &(f64, f64), y: &(f64, f64)| a.point(0.5 * (x.0 + y.0));
                let shared = out.iter().any(|x| out.iter().any(|y| apart(x, y) && reach(middle(x, y)).0));
                if shared {
                    return Err(Endless);
                }
            }
            out.dedup_by(|x, y| !apart(x, y));
            Ok(out)
        }
    }
}

/// Two cubics: boxes are halved while they overlap; what is left is polished by Newton's steps.
fn cubics(a: &Cubic<f64>, b: &Cubic<f64>) -> Result<Vec<(f64, f64)>, Endless> {
    const SMALL: f64 = 1.0 / 1024.0;
    let hull = |c: &Cubic<f64>| {
        let (mut low, mut high) = (c[0], c[0]);
        for p in c {
            low = Pt::new(low.x.min(p.x), low.y.min(p.y));
            high = Pt::new(high.x.max(p.x), high.y.max(p.y));
        }
        (low, high)
    };
    let mut out: Vec<(f64, f64)> = Vec::new();
    let mut waiting = vec![(*a, 0.0, 1.0, *b, 0.0, 1.0)];
    let mut seen = 0;
    while let Some((ca, a0, a1, cb, b0, b1)) = waiting.pop() {
        let ((al, ah), (bl, bh)) = (hull(&ca), hull(&cb));
        let near = tolerance::EQUAL;
        if al.x > bh.x + near || bl.x > ah.x + near || al.y > bh.y + near || bl.y > ah.y + near {
            continue;
        }
        seen += 1;
        if seen > MOST_PAIRS {
            return Err(Endless);
        }
        if a1 - a0 <= SMALL && b1 - b0 <= SMALL {
            if let Some((u, v)) = polished(a, b, 0.5 * (a0 + a1), 0.5 * (b0 + b1)) {
                let slack = SMALL;
                let inside = u >= a0 - slack && u <= a1 + slack && v >= b0 - slack && v <= b1 + slack;
                let p = cubic::point(a, u);
                let known = out.iter().any(|(k, _)| (cubic::point(a, *k) - p).length() <= tolerance::EQUAL);
                if inside && !known {
                    out.push((u, v));
                }
                if out.len() > MOST_MEETINGS {
                    return Err(Endless);
                }
            }
            continue;
        }
        let (am, bm) = (0.5 * (a0 + a1), 0.5 * (b0 + b1));
        if a1 - a0 >= b1 - b0 {
            waiting.push((cubic::part(&ca, 0.0, 0.5), a0, am, cb, b0, b1));
            waiting.push((cubic::part(&ca, 0.5, 1.0), am, a1, cb, b0, b1));
        } else {
            waiting.push((ca, a0, a1, cubic::part(&cb, 0.0, 0.5), b0, bm));
            waiting.push((ca, a0, a1, cubic::part(&cb, 0.5, 1.0), bm, b1));
        }
    }
    Ok(out)
}

fn polished(a: &Cubic<f64>, b: &Cubic<f64>, u: f64, v: f64) -> Option<(f64, f64)> {
    let (mut u, mut v) = (u, v);
    let mut best = (f64::INFINITY, u, v);
    for _ in 0..MOST_STEPS {
        let apart = cubic::point(a, u) - cubic::point(b, v);
        let distance = apart.length();
        if distance < best.0 {
            best = (distance, u, v);
        } else if best.0 <= tolerance::SOLVED {
            break;
        }
        let (va, vb) = (cubic::velocity(a, u), cubic::velocity(b, v));
        let slant = va.cross(vb);
        // Where they touch the steps of Newton's have no direction: then the nearest place of one to the other.
        if slant.abs() <= tolerance::RANK * va.length() * vb.length() {
            v = Segment::Cubic(*b).nearest(cubic::point(a, u));
            u = Segment::Cubic(*a).nearest(cubic::point(b, v));
            continue;
        }
        u = (u - apart.cross(vb) / slant).clamp(0.0, 1.0);
        v = (v - apart.cross(va) / slant).clamp(0.0, 1.0);
    }
    (best.0 <= tolerance::EQUAL).then_some((best.1, best.2))
}
