//! Hems: the edge that is turned up against the place where it comes to lie.

use super::corner::Join;
use super::piece::Work;
use crate::curves::Segment;

/// A hem against the place where it is sewn.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HemState {
    /// The edge.
    pub edge: usize,
    /// Length of the edge that is turned up, mm.
    pub have: f64,
    /// Length of the piece where it comes to lie, mm.
    pub needed: f64,
    /// Whether the hem is curved.
    pub curved: bool,
}

/// Hems against the places where they are sewn.
pub(super) fn hems(work: &Work, joins: &[Join]) -> Vec<HemState> {
    let n = work.stretches.len();
    let mut out = Vec::new();
    for (edge, told) in work.told.iter().enumerate() {
        let Some(hem) = told.hem else { continue };
        let line = &work.body.edges[edge];
        let mut have = 0.0;
        let curved = line.segments().len() > 1 || !matches!(line.segments()[0], Segment::Line(..));
        for (k, stretch) in work.stretches.iter().enumerate().filter(|(_, s)| s.edge == edge) {
            if curved {
                // Parallel against parallel: what the sides' allowances add is the same on both.
                have += stretch.off.length();
                continue;
            }
            let (from, to) = (joins[(k + n - 1) % n].from, joins[k].keep);
            have += (to - from).max(0.0);
            // Where the corner is run on along the hem's cut line.
            let way = |at_end: bool| if at_end { stretch.off.end_tangent() } else { stretch.off.start_tangent() };
            let on = |s: &Segment<f64>, at_end: bool| {
                let (Segment::Line(a, b), Some(way)) = (s, way(at_end)) else { return 0.0 };
                let leg = *b - *a;
                if leg.cross(way).abs() <= crate::base::tolerance::CURVE { leg.dot(way).abs() } else { 0.0 }
            };
            have += joins[k].via.first().map_or(0.0, |s| on(s, true));
            have += joins[(k + n - 1) % n].via.last().map_or(0.0, |s| on(s, false));
        }
        // Where the turned edge comes to lie: that far inside, between the cut lines of the sides.
        let inside = if hem.turn_in > 0.0 { hem.depth - hem.turn_in } else { hem.depth };
        let sides = |end: bool| {
            let k = work.stretches.iter().position(|s| s.edge == edge)?;
            let last = work.stretches.iter().rposition(|s| s.edge == edge)?;
            let (corner, way) =
                if end { (line.end(), line.end_tangent()?) } else { (line.start(), line.start_tangent()?) };
            let foot = corner + way.square().scaled(work.body.sense * inside);
            let side = if end { &work.stretches[(last + 1) % n].off } else { &work.stretches[(k + n - 1) % n].off };
            let near = |m: &crate::curves::Met<f64>| (m.point - foot).length();
            let met = side.meets_line(foot, way).ok()?.into_iter().min_by(|a, b| near(a).total_cmp(&near(b)))?;
            Some((met.point - foot).dot(way) * if end { 1.0 } else { -1.0 })
        };
        let needed = match curved {
            true => Some(line.set_off_length(work.body.sense * inside, work.body.sense * inside)),
            false => sides(true).zip(sides(false)).map(|(a, b)| line.length() + a + b),
        };
        if let Some(needed) = needed {
            out.push(HemState { edge, have, needed, curved });
        }
    }
    out
}
