//! Cut lines that cross themselves, and what is left of them.

use kurbo::{BezPath, PathEl, Point, Shape};
use linesweeper::topology::Topology;

use crate::base::tolerance;

/// Where a closed path crosses itself: looked for on its flattened form, touching ends left out.
pub(super) fn crossing(path: &BezPath) -> Option<Point> {
    let mut points: Vec<Point> = Vec::new();
    kurbo::flatten(path, tolerance::CROSSING, |el| match el {
        PathEl::MoveTo(p) | PathEl::LineTo(p) => points.push(p),
        _ => {}
    });
    points.dedup_by(|a, b| a.distance(*b) <= tolerance::EQUAL);
    while points.len() > 1 && points[0].distance(points[points.len() - 1]) <= tolerance::EQUAL {
        points.pop();
    }
    let n = points.len();
    if n < 4 {
        return None;
    }
    // Legs sorted by where they start from the left: only those that overlap from left to right are compared.
    let leg = |i: usize| (points[i], points[(i + 1) % n]);
    let span = |i: usize| {
        let (a, b) = leg(i);
        (a.x.min(b.x), a.x.max(b.x))
    };
    let mut order: Vec<usize> = (0..n).collect();
    order.sort_by(|a, b| span(*a).0.total_cmp(&span(*b).0));
    let mut open: Vec<usize> = Vec::new();
    for i in order {
        let from = span(i).0;
        open.retain(|k| span(*k).1 >= from);
        let near = |k: usize| (i + 1) % n == k || (k + 1) % n == i;
        if open.iter().any(|k| !near(*k) && legs_cross(leg(i), leg(*k))) {
            return Some(points[i]);
        }
        open.push(i);
    }
    None
}

/// Whether two straight legs cross truly, each leaving the other on both sides.
fn legs_cross((a, b): (Point, Point), (c, d): (Point, Point)) -> bool {
    let side = |p: Point, q: Point, r: Point| {
        let area = (q - p).cross(r - p);
        // Nearer than 1e-6 mm counts as touching.
        if area.abs() <= tolerance::EQUAL * (q - p).hypot() { 0.0 } else { area.signum() }
    };
    side(a, b, c) * side(a, b, d) < 0.0 && side(c, d, a) * side(c, d, b) < 0.0
}

/// What is left of a closed path that crosses itself: the largest part round which it winds as the whole does. None where
/// nothing is.
pub(super) fn trimmed(path: &BezPath) -> Option<BezPath> {
    let around = path.area().signum();
    let topology = Topology::<i32>::from_path(path, tolerance::TRIM).ok()?;
    let mut best: Option<(f64, BezPath)> = None;
    // The sign of its winding is not told: that with the larger part holds.
    for positive in [true, false] {
        let contours = topology.contours(|w| if positive { *w > 0 } else { *w < 0 });
        for contour in contours.contours() {
            let area = contour.path.area().abs();
            if area.is_finite() && best.as_ref().is_none_or(|(most, _)| area > *most) {
                best = Some((area, contour.path.clone()));
            }
        }
    }
    let (_, mut path) = best.filter(|(area, _)| *area > tolerance::CROSSING)?;
    if path.area().signum() != around {
        path = path.reverse_subpaths();
    }
    Some(path)
}
