//! What is seen of outlines before they become pieces: where they bend, whether they cross themselves, what lies in them.

use kurbo::{BezPath, PathEl, Point, Rect, Shape, Vec2};

use crate::base::tolerance;
use crate::file::svg::{Outline, Run};

/// An outline is looked at for crossings as at most so many straight stretches.
const MOST_STRETCHES: usize = 4_000;
/// How finely, as a share of its size.
const FINELY: f64 = 1.0 / 2_000.0;

/// The direction in which a stretch leaves, and in which it arrives, if it has any length.
fn directions(from: Point, run: &Run) -> Option<(Vec2, Vec2)> {
    let first = |list: &[Vec2]| list.iter().copied().find(|v| v.hypot() > tolerance::EQUAL).map(|v| v / v.hypot());
    match run {
        Run::Straight(to) => {
            let way = first(&[*to - from])?;
            Some((way, way))
        }
        Run::Cubic(a, b, to) => {
            Some((first(&[*a - from, *b - from, *to - from])?, first(&[*to - *b, *to - *a, *to - from])?))
        }
        Run::Arc(arc) => {
            let at = |angle: f64| {
                let [a, b, c, d, _, _] = arc.map.as_coeffs();
                let (x, y) = (-libm::sin(angle), libm::cos(angle));
                Vec2::new(a * x + c * y, b * x + d * y) * arc.sweep.signum()
            };
            Some((first(&[at(arc.start)])?, first(&[at(arc.start + arc.sweep)])?))
        }
    }
}

/// By how much the line turns from one stretch, with the point where it starts, to the next; none: one of them has no direction.
pub(super) fn bend(one: (Point, &Run), next: (Point, &Run)) -> Option<f64> {
    let (_, arriving) = directions(one.0, one.1)?;
    let (leaving, _) = directions(next.0, next.1)?;
    Some(libm::atan2(arriving.cross(leaving).abs(), arriving.dot(leaving)))
}

/// A path as straight stretches.
fn straight(path: &BezPath, limit: f64) -> Vec<Point> {
    let mut out = Vec::new();
    kurbo::flatten(path, limit, |element| match element {
        PathEl::MoveTo(p) | PathEl::LineTo(p) | PathEl::QuadTo(_, p) | PathEl::CurveTo(_, _, p) => out.push(p),
        PathEl::ClosePath => {}
    });
    out
}

/// Where an outline crosses itself, if it does; seen as finely as a two-thousandth of its size.
pub(super) fn crossing(outline: &Outline) -> Option<Point> {
    let bounds = outline.bounds();
    let limit = bounds.width().max(bounds.height()) * FINELY;
    if limit <= 0.0 {
        return None;
    }
    let mut points = straight(&outline.path(limit), limit);
    points.dedup();
    if points.first() != points.last() {
        points.extend(points.first().copied());
    }
    if points.len() > MOST_STRETCHES {
        return None;
    }
    let many = points.len().saturating_sub(1);
    let boxes: Vec<Rect> = points.windows(2).map(|p| Rect::from_points(p[0], p[1])).collect();
    for i in 0..many {
        for k in i + 2..many {
            if i == 0 && k + 1 == many || boxes[i].x1 < boxes[k].x0 || boxes[k].x1 < boxes[i].x0 {
                continue;
            }
            let (a, b) = (points[i], points[i + 1] - points[i]);
            let (c, d) = (points[k], points[k + 1] - points[k]);
            let over = b.cross(d);
            if over == 0.0 {
                continue;
            }
            let (t, u) = ((c - a).cross(d) / over, (c - a).cross(b) / over);
            if t > 0.0 && t < 1.0 && u > 0.0 && u < 1.0 {
                return Some(a + b * t);
            }
        }
    }
    None
}

/// Whether a line lies in a closed outline: all of its points are inside or on it.
pub(super) fn holds(outline: &BezPath, line: &BezPath) -> bool {
    let bounds = outline.bounding_box().inflate(tolerance::ON_EDGE, tolerance::ON_EDGE);
    let mut closed = outline.clone();
    closed.close_path();
    let points = straight(line, tolerance::PRINT);
    let inside = |p: &Point| {
        bounds.contains(*p)
            && (closed.winding(*p) != 0 || {
                let near = |segment: kurbo::PathSeg| {
                    use kurbo::ParamCurveNearest;
                    segment.nearest(*p, tolerance::CURVE).distance_sq <= tolerance::PRINT * tolerance::PRINT
                };
                closed.segments().any(near)
            })
    };
    !points.is_empty() && points.iter().all(inside)
}
