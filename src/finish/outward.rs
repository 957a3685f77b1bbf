//! A cut line as a polygon that contains it: what is laid on cloth and must not lose a hair of the piece.
//!
//! Straight lines stay as they are, so that what fits exactly goes on fitting. A curve that bulges outwards is taken by its tangents, one
//! that goes in by its chords; both lie outside of it.

use kurbo::{BezPath, CubicBez, ParamCurve, ParamCurveDeriv, PathSeg, Point, Vec2};

use crate::base::tolerance;

/// A curve is halved so often at most: by then it is shorter than anything that is cut.
const MOST_HALVES: u32 = 12;

/// The corners of a polygon that contains the inside of a closed line and lies within 0.1 mm of it, mm; in the sense of the line.
pub fn outward(path: &BezPath) -> Vec<Point> {
    use kurbo::Shape;
    let sense = if path.area() < 0.0 { -1.0 } else { 1.0 };
    let mut out: Vec<Point> = Vec::new();
    for segment in path.segments() {
        let cubic = match segment {
            PathSeg::Line(line) => {
                out.push(line.p0);
                continue;
            }
            PathSeg::Quad(quad) => quad.raise(),
            PathSeg::Cubic(cubic) => cubic,
        };
        out.push(cubic.p0);
        // Between two places where it does not bend, a curve bends one way.
        let mut cuts: Vec<f64> = cubic.inflections().into_iter().filter(|t| *t > 0.0 && *t < 1.0).collect();
        cuts.sort_by(f64::total_cmp);
        let mut from = 0.0;
        for to in cuts.into_iter().chain([1.0]) {
            bend(&cubic.subsegment(from..to), sense, 0, &mut out);
            from = to;
        }
    }
    corners(out)
}

/// Without points that are no corners: where two tangents touch one curve, or a line is drawn in two parts.
fn corners(all: Vec<Point>) -> Vec<Point> {
    let mut out: Vec<Point> = Vec::with_capacity(all.len());
    let is_corner = |a: Point, b: Point, c: Point| {
        let (to, on) = (b - a, c - b);
        to.hypot() > 0.0
            && on.hypot() > 0.0
            && (to.cross(on).abs() > tolerance::EQUAL * (c - a).hypot() || to.dot(on) < 0.0)
    };
    for (i, p) in all.iter().enumerate() {
        let before = out.last().or(all.last()).copied().unwrap_or(*p);
        let next = all[i + 1..].iter().chain(&out).find(|q| **q != *p).copied().unwrap_or(*p);
        if is_corner(before, *p, next) {
            out.push(*p);
        }
    }
    out
}

/// A part of a curve that bends one way: what lies between its start, which is there, and its end, which comes with the next part.
fn bend(part: &CubicBez, sense: f64, depth: u32, out: &mut Vec<Point>) {
    let halves = |out: &mut Vec<Point>| {
        let (first, second) = part.subdivide();
        bend(&first, sense, depth + 1, out);
        bend(&second, sense, depth + 1, out);
    };
    let chord = part.p3 - part.p0;
    let (leaving, arriving) = (way(part, 0.0), way(part, 1.0));
    let turn = leaving.cross(arriving);
    if part.p0 == part.p3 && depth == 0 {
        return halves(out);
    }
    // More than a right angle in one go, or a loop: too much to be told by two tangents.
    if leaving.dot(arriving) < 0.0 && depth < MOST_HALVES {
        return halves(out);
    }
    let meet = (turn.abs() > tolerance::LEVEL).then(|| part.p0 + leaving * (chord.cross(arriving) / turn));
    let far =
        meet.map_or(0.0, |m| if chord.hypot() > 0.0 { (chord.cross(m - part.p0) / chord.hypot()).abs() } else { 0.0 });
    // The tangents meet twice as far from the chord as the curve is, or less: half of it is how far each may be off.
    if far > tolerance::PRINT && depth < MOST_HALVES {
        return halves(out);
    }
    if let Some(meet) = meet.filter(|_| turn * sense > 0.0) {
        // On a tangent from corner to corner the point where they touch is no corner.
        out.push(meet);
    }
    if out.last() != Some(&part.p3) {
        out.push(part.p3);
    }
}

/// The direction of a curve at one of its ends.
fn way(part: &CubicBez, at: f64) -> Vec2 {
    let along = part.deriv().eval(at).to_vec2();
    let along = match (along.hypot() > tolerance::EQUAL, at > 0.5) {
        (true, _) => along,
        // A handle of no length: it goes the way of the other one.
        (false, false) => {
            if part.p2 != part.p0 {
                part.p2 - part.p0
            } else {
                part.p3 - part.p0
            }
        }
        (false, true) => {
            if part.p1 != part.p3 {
                part.p3 - part.p1
            } else {
                part.p3 - part.p0
            }
        }
    };
    if along.hypot() > 0.0 { along.normalize() } else { along }
}
