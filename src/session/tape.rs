//! The tape: what lies between places that are pointed at, as a formula that measures it in every size.

use kurbo::{BezPath, ParamCurve, ParamCurveArclen, ParamCurveNearest, Point};

use super::pencil::{SeenEdge, Sight};
use crate::base::tolerance;
use crate::document::{Draft, Edge, Segment};
use crate::texts::{owned, say, typed};

/// A place at which the tape is held.
#[derive(Clone, Debug, PartialEq)]
pub struct TapeStop {
    /// The piece or drawing.
    pub frame: String,
    /// The place as a formula outside of it.
    pub text: String,
    /// In words: "the point tip", "a place on hem, half way".
    pub words: String,
    /// Where it is, mm, in the frame.
    pub place: Point,
    /// The edges on which it lies, and how far along on paper, mm.
    on: Vec<(String, f64)>,
}

impl Sight<'_> {
    /// Where the tape would be held if this place were pointed at: at a point, else on an edge; none where neither is near.
    pub fn stop(&self, at: Point, reach: f64, scale: f64) -> Option<TapeStop> {
        let near = self.points.iter().map(|p| ((p.at - at).hypot(), p)).filter(|(d, _)| *d <= reach);
        if let Some((_, point)) = near.min_by(|a, b| a.0.total_cmp(&b.0)) {
            let (frame, name) = (&self.frame, &point.name);
            return Some(self.stop_at(format!("{frame}.{name}"), say!("pencil-point", name), point.at));
        }
        let far = |e: &SeenEdge| {
            let all = e.path.segments().map(|s| s.nearest(at, tolerance::ON_EDGE).distance_sq);
            all.reduce(f64::min).map_or(f64::INFINITY, f64::sqrt)
        };
        let near = self.edges.iter().map(|e| (far(e), e)).filter(|(d, _)| *d <= reach);
        let (_, edge) = near.min_by(|a, b| a.0.total_cmp(&b.0))?;
        let name = &edge.name;
        let place = self.real(&format!("place({name}, foot(({:.4} mm, {:.4} mm), {name}))", at.x, at.y))?;
        let all = self.real(&format!("length({name})"))?;
        let half = (place - all / 2.0).abs() <= reach / 2.0;
        let (written, words) = match half {
            true => ("1/2".to_owned(), say!("tape-half", edge = name)),
            false => {
                let far = self.rounding(scale).length(place);
                (far.clone(), say!("tape-along", edge = name, far = owned(|| typed(&far)), from = edge.ends[0]))
            }
        };
        let place = self.place(&format!("{name}.at({written})")).ok()?;
        Some(self.stop_at(format!("{}.{name}.at({written})", self.frame), words, place))
    }

    fn stop_at(&self, text: String, words: String, place: Point) -> TapeStop {
        let on = self.edges.iter().filter_map(|e| Some((e.name.clone(), along(&e.path, place)?)));
        TapeStop { frame: self.frame.clone(), text, words, place, on: on.collect() }
    }
}

impl TapeStop {
    fn is_on(&self, edge: &Edge) -> bool {
        self.along(edge).is_some()
    }

    fn along(&self, edge: &Edge) -> Option<f64> {
        self.on.iter().find(|(name, _)| *name == edge.name).map(|(_, far)| *far)
    }
}

/// How far along a path a point lies on it, mm.
fn along(path: &BezPath, place: Point) -> Option<f64> {
    let mut before = 0.0;
    for segment in path.segments() {
        let near = segment.nearest(place, tolerance::CURVE);
        if near.distance_sq.sqrt() <= tolerance::ON_EDGE {
            return Some(before + segment.subsegment(0.0..near.t).arclen(tolerance::CURVE));
        }
        before += segment.arclen(tolerance::CURVE);
    }
    None
}

/// What lies between two places, as formulas: straight, and along edges where both lie on one, or around corners of the outline (both
/// ways). Nothing between two pieces: there the tape is lifted.
pub fn tape_between(draft: &Draft, a: &TapeStop, b: &TapeStop) -> Vec<String> {
    if a.frame != b.frame || a.text == b.text {
        return Vec::new();
    }
    let mut out = vec![format!("gap({}, {})", a.text, b.text)];
    let piece = draft.pieces.iter().find(|p| p.name == a.frame);
    let drawing = draft.drawings.iter().find(|d| d.name == a.frame);
    let lines = piece.map(|p| &p.lines).or(drawing.map(|d| &d.lines));
    let outline = piece.map_or(&[][..], |p| &p.edges);
    for line in lines.into_iter().flatten() {
        if a.is_on(line) && b.is_on(line) {
            out.push(stretch(&a.frame, line, &a.text, &b.text));
        }
    }
    out.extend(around(&a.frame, outline, a, b));
    out.extend(around(&a.frame, outline, b, a));
    out.dedup();
    out
}

/// From one place along the outline to another, in the sense of the outline.
fn around(frame: &str, outline: &[Edge], a: &TapeStop, b: &TapeStop) -> Option<String> {
    let point = |name: &str| format!("{frame}.{name}");
    // The edge that it leaves by: where it stands at the end of one, the next.
    let first = outline.iter().position(|e| a.is_on(e) && point(end_of(e)) != a.text)?;
    let closed = outline.first().map(|e| e.from.as_str()) == outline.last().map(end_of);
    // Where it goes to a place behind it on the same edge, it comes to that edge once more.
    let steps = if closed { outline.len() + 1 } else { outline.len() - first };
    let mut parts = Vec::new();
    let mut from = a.text.clone();
    for step in 0..steps {
        let edge = &outline[(first + step) % outline.len()];
        let here = b.is_on(edge) && point(&edge.from) != b.text;
        let behind = step == 0 && b.along(edge) < a.along(edge);
        if here && !behind {
            parts.push(stretch(frame, edge, &from, &b.text));
            return Some(parts.join(" + "));
        }
        let end = point(end_of(edge));
        parts.push(stretch(frame, edge, &from, &end));
        from = end;
    }
    None
}

fn end_of(edge: &Edge) -> &str {
    edge.by.last().map_or(&edge.from, Segment::end)
}

/// A whole edge, or a part of it.
fn stretch(frame: &str, edge: &Edge, from: &str, to: &str) -> String {
    let (start, end) = (format!("{frame}.{}", edge.from), format!("{frame}.{}", end_of(edge)));
    let name = format!("{frame}.{}", edge.name);
    match (from == start && to == end) || (from == end && to == start) {
        true => format!("length({name})"),
        false => format!("length(part({name}, {from}, {to}))"),
    }
}
