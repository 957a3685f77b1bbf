//! The outline of a piece as stretches with one allowance each, and their set-off lines.

use super::body::Body;
use crate::base::tolerance;
use crate::curves::{Curve, Pt, Segment};

/// A hem: how deep it is turned up, and how far the second turn goes in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Hem {
    /// Of the first turn, mm.
    pub depth: f64,
    /// Of the second turn, mm; 0: there is none.
    pub turn_in: f64,
}

/// The allowance of an edge from a flat place on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Width {
    /// The flat place from which it holds, mm.
    pub from: f64,
    /// Its width there, mm.
    pub start: f64,
    /// Its width where the next one begins, or at the edge's end, mm.
    pub end: f64,
}

/// What is told of an edge.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct EdgeWidths {
    /// Its allowances in order; none: 0.
    pub widths: Vec<Width>,
    /// Whether it is a hem.
    pub hem: Option<Hem>,
    /// Whether it lies on a fold of the cloth.
    pub on_fold: bool,
    /// Whether anything was told at all.
    pub told: bool,
}

impl EdgeWidths {
    /// The width at a flat place of an edge of that length; at a step the one that starts there, unless `arriving`.
    pub fn at(&self, place: f64, length: f64, arriving: bool) -> f64 {
        let reach = if arriving { -tolerance::EQUAL } else { tolerance::EQUAL };
        let i = self.widths.iter().rposition(|w| w.from <= place + reach).unwrap_or(0);
        let Some(width) = self.widths.get(i) else { return 0.0 };
        let until = self.widths.get(i + 1).map_or(length, |w| w.from);
        let span = until - width.from;
        let share = if span > tolerance::EQUAL { ((place - width.from) / span).clamp(0.0, 1.0) } else { 0.0 };
        width.start + (width.end - width.start) * share
    }
}

/// What stands behind a stretch.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Behind {
    /// A corner of the piece, where the edge with this place starts.
    Corner(usize),
    /// A bend or a step within an edge.
    Bend,
    /// The mouth with this place in the body.
    Mouth(usize),
}

/// A smooth stretch of an edge.
#[derive(Clone, Debug)]
pub(super) struct Stretch {
    /// The edge.
    pub edge: usize,
    /// Its stitch line.
    pub line: Curve<f64>,
    /// Widths at its start and end, mm.
    pub widths: [f64; 2],
    /// Its cut line, before corners are made.
    pub off: Curve<f64>,
    /// What stands behind it.
    pub behind: Behind,
}

/// All stretches of an outline in order; none where a line cannot be set off.
pub(super) fn stretches(body: &Body, told: &[EdgeWidths]) -> Option<Vec<Stretch>> {
    let mut out: Vec<Stretch> = Vec::with_capacity(body.edges.len() + 2 * body.mouths.len());
    for (edge, line) in body.edges.iter().enumerate() {
        let (length, widths) = (line.length(), &told[edge]);
        let mut cuts: Vec<(f64, Behind)> = Vec::new();
        for place in bends(line) {
            cuts.push((place, Behind::Bend));
        }
        for width in widths.widths.iter().skip(1).filter(|w| w.from < length - tolerance::EQUAL) {
            cuts.push((width.from, Behind::Bend));
        }
        cuts.sort_by(|a, b| a.0.total_cmp(&b.0));
        cuts.dedup_by(|a, b| a.0 - b.0 <= tolerance::EQUAL);
        let mut from = 0.0;
        let opened = body.mouths.iter().enumerate().filter(|(_, m)| m.edge == edge && !m.is_bowed);
        let opened: Vec<(usize, [f64; 2])> = opened.map(|(i, m)| (i, m.feet)).collect();
        let end = (length, Behind::Corner((edge + 1) % body.edges.len()));
        let mut add = |from: f64, to: f64, behind: Behind| -> Option<()> {
            if to - from <= tolerance::EQUAL {
                // Nothing is left between two mouths: what stands behind it stands behind the one before.
                if let Some(last) = out.last_mut().filter(|s| s.edge == edge) {
                    last.behind = behind;
                }
                return Some(());
            }
            let part = line.between(from, to)?;
            let ends = [widths.at(from, length, false), widths.at(to, length, true)];
            let off = set_off(&part, ends, body.sense)?;
            out.push(Stretch { edge, line: part, widths: ends, off, behind });
            Some(())
        };
        for (mouth, feet) in opened {
            from = until(&cuts, from, feet[0], &mut add)?;
            add(from, feet[0], Behind::Mouth(mouth))?;
            from = feet[1];
        }
        from = until(&cuts, from, length, &mut add)?;
        add(from, end.0, end.1)?;
    }
    (!out.is_empty()).then_some(out)
}

/// Adds a stretch.
type Add<'a> = dyn FnMut(f64, f64, Behind) -> Option<()> + 'a;

/// Adds the stretches that end at cuts between two places; gives the place from which the last one goes on.
fn until(cuts: &[(f64, Behind)], mut from: f64, end: f64, add: &mut Add<'_>) -> Option<f64> {
    for (place, behind) in cuts {
        if *place > from + tolerance::EQUAL && *place < end - tolerance::EQUAL {
            add(from, *place, *behind)?;
            from = *place;
        }
    }
    Some(from)
}

/// Flat places at which a line has a corner within itself.
fn bends(line: &Curve<f64>) -> Vec<f64> {
    let mut out = Vec::new();
    let mut along = 0.0;
    for (pair, length) in line.segments().windows(2).zip(line.lengths()) {
        along += length;
        let (Some(a), Some(b)) = (pair[0].tangent(1.0), pair[1].tangent(0.0)) else { continue };
        if libm::atan2(a.cross(b).abs(), a.dot(b)) > tolerance::STRAIGHT {
            out.push(along);
        }
    }
    out
}

/// The line set off to the outside. Where it bends tighter than that, it runs backwards and crosses itself.
fn set_off(line: &Curve<f64>, widths: [f64; 2], sense: f64) -> Option<Curve<f64>> {
    if widths == [0.0, 0.0] {
        return Some(line.clone());
    }
    let [from, to] = widths.map(|w| -w * sense);
    if let [Segment::Line(a, b)] = line.segments() {
        let aside = (*b - *a).unit()?.square();
        return Curve::straight(*a + aside.scaled(from), *b + aside.scaled(to)).ok();
    }
    if let Ok(off) = line.parallel_within(from, to, tolerance::CURVE) {
        return Some(off);
    }
    if from == to {
        return Curve::<f64>::from_path(&line.set_off(from).path).ok();
    }
    // Running and tight: a dense line through places of it.
    const STEPS: u32 = 400;
    let mut points: Vec<Pt<f64>> = Vec::new();
    for i in 0..=STEPS {
        let share = f64::from(i) / f64::from(STEPS);
        let place = line.length() * share;
        let aside = line.tangent_at(place)?.square();
        points.push(line.point_at(place)? + aside.scaled(from + (to - from) * share));
    }
    let legs = points.windows(2).map(|p| Segment::Line(p[0], p[1])).collect();
    Curve::new(legs).ok()
}
