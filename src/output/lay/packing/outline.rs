//! Outlines as they lie: turned over, turned and moved, in full precision. What is exact is kept exact: a quarter turn only swaps and changes
//! signs. Distances and insides of polygons for the check; nothing of the search is here.

use kurbo::{Point, Rect, Vec2};

use super::{Job, Laid, Pose};
use crate::base::Scalar;

/// An outline in a pose about its origin, not yet moved.
pub(in crate::output::lay) fn posed(outline: &[Point], pose: &Pose) -> Vec<Point> {
    let (cos, sin) = turn(pose.turned);
    let turned = |p: &Point| {
        let y = if pose.mirrored { -p.y } else { p.y };
        Point::new(cos * p.x - sin * y, sin * p.x + cos * y)
    };
    outline.iter().map(turned).collect()
}

/// Cosine and sine of degrees; those of quarter turns are whole numbers.
fn turn(degrees: f64) -> (f64, f64) {
    let about = degrees.rem_euclid(360.0);
    for (quarter, pair) in [(1.0, 0.0), (0.0, 1.0), (-1.0, 0.0), (0.0, -1.0)].into_iter().enumerate() {
        if about == 90.0 * quarter as f64 {
            return pair;
        }
    }
    let radians = about.to_radians();
    (Scalar::cos(radians), Scalar::sin(radians))
}

/// The outline of a laid piece; none if there is no such shape or pose, or a number is not finite.
pub(super) fn laid(job: &Job, piece: &Laid) -> Option<Vec<Point>> {
    let shape = job.shapes.get(piece.shape)?;
    let pose = shape.poses.get(piece.pose)?;
    let to = Vec2::new(piece.x, piece.y);
    let points: Vec<Point> = posed(&shape.outline, pose).into_iter().map(|p| p + to).collect();
    points.iter().all(|p| p.is_finite()).then_some(points)
}

/// The box of some points; of none it is empty, at the origin.
pub(in crate::output::lay) fn bounds(points: &[Point]) -> Rect {
    let first = points.first().copied().unwrap_or_default();
    points.iter().fold(Rect::from_points(first, first), |b, p| b.union_pt(*p))
}

/// The area of a polygon, mm², without sign.
pub(in crate::output::lay) fn area(points: &[Point]) -> f64 {
    let twice: f64 = edges(points).map(|(a, b)| a.to_vec2().cross(b.to_vec2())).sum();
    twice.abs() / 2.0
}

/// The edges of a polygon, the last one back to the first point.
pub(super) fn edges(points: &[Point]) -> impl Iterator<Item = (Point, Point)> + '_ {
    points.iter().copied().zip(points.iter().copied().cycle().skip(1))
}

/// Whether a point lies in a polygon (even-odd).
pub(super) fn contains(points: &[Point], p: Point) -> bool {
    within(edges(points), p)
}

/// The same of the edges of a polygon; those that lie wholly above, below or to the left of the point may be missing.
pub(super) fn within(edges: impl Iterator<Item = (Point, Point)>, p: Point) -> bool {
    let crossed =
        |(a, b): &(Point, Point)| (a.y > p.y) != (b.y > p.y) && p.x < (b.x - a.x) * (p.y - a.y) / (b.y - a.y) + a.x;
    edges.filter(crossed).count() % 2 == 1
}

/// How far a point is from an edge, mm.
pub(super) fn distance((a, b): (Point, Point), p: Point) -> f64 {
    let along = b - a;
    let square = along.hypot2();
    let t = if square > 0.0 { ((p - a).dot(along) / square).clamp(0.0, 1.0) } else { 0.0 };
    (p - (a + along * t)).hypot()
}

/// A point well inside a polygon: the middle of the widest level chord half-way up. None if it has no inside there.
pub(super) fn inner(points: &[Point]) -> Option<Point> {
    let mut heights: Vec<f64> = points.iter().map(|p| p.y).collect();
    heights.sort_by(f64::total_cmp);
    let gaps = heights.windows(2).map(|w| (w[1] - w[0], (w[0] + w[1]) / 2.0));
    let (_, y) = gaps.max_by(|a, b| a.0.total_cmp(&b.0))?;
    let mut cuts: Vec<f64> = edges(points)
        .filter(|(a, b)| (a.y > y) != (b.y > y))
        .map(|(a, b)| (b.x - a.x) * (y - a.y) / (b.y - a.y) + a.x)
        .collect();
    cuts.sort_by(f64::total_cmp);
    let chords = cuts.chunks_exact(2).map(|c| (c[1] - c[0], (c[0] + c[1]) / 2.0));
    chords.max_by(|a, b| a.0.total_cmp(&b.0)).map(|(_, x)| Point::new(x, y))
}
