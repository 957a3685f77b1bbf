//! Outlines cut into triangles, so that pieces on the cloth are painted filled; made once for a shape, moved and scaled each frame.

use kurbo::Point;

/// Triangles of a simple polygon, as places in it, three by three. What is no simple polygon gives fewer: it is painted, not measured.
pub(super) fn triangles(points: &[Point]) -> Vec<u32> {
    let n = points.len();
    let area: f64 = (0..n).map(|i| points[i].to_vec2().cross(points[(i + 1) % n].to_vec2())).sum();
    let mut left: Vec<usize> = if area >= 0.0 { (0..n).collect() } else { (0..n).rev().collect() };
    let mut out = Vec::new();
    let turn = |a: usize, b: usize, c: usize| (points[b] - points[a]).cross(points[c] - points[b]);
    // Each round takes one corner off, or ends.
    while left.len() > 2 {
        let m = left.len();
        let ear = (0..m).find(|i| {
            let (a, b, c) = (left[(i + m - 1) % m], left[*i], left[(i + 1) % m]);
            turn(a, b, c) >= 0.0
                && !left.iter().any(|p| {
                    let is_corner = [a, b, c].iter().any(|k| points[*k] == points[*p]);
                    !is_corner && turn(a, b, *p) >= 0.0 && turn(b, c, *p) >= 0.0 && turn(c, a, *p) >= 0.0
                })
        });
        let Some(i) = ear else { break };
        out.extend([left[(i + m - 1) % m], left[i], left[(i + 1) % m]].map(|k| k as u32));
        left.remove(i);
    }
    out
}

/// Whether a point lies inside a polygon.
pub(super) fn inside(points: &[Point], at: Point) -> bool {
    let n = points.len();
    let crossed = (0..n).filter(|i| {
        let (a, b) = (points[*i], points[(i + 1) % n]);
        (a.y > at.y) != (b.y > at.y) && at.x < a.x + (at.y - a.y) / (b.y - a.y) * (b.x - a.x)
    });
    crossed.count() % 2 == 1
}

/// A place inside a polygon that has room for a letter: of those on some levels the middle of the longest stretch.
pub(super) fn room_for_letter(points: &[Point]) -> (Point, f64) {
    let (low, high) = points.iter().fold((f64::MAX, f64::MIN), |(l, h), p| (l.min(p.y), h.max(p.y)));
    let mut best = (points.first().copied().unwrap_or_default(), 0.0);
    let n = points.len();
    for share in [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8] {
        let y = low + (high - low) * share;
        let mut cuts: Vec<f64> = (0..n)
            .filter_map(|i| {
                let (a, b) = (points[i], points[(i + 1) % n]);
                ((a.y > y) != (b.y > y)).then(|| a.x + (y - a.y) / (b.y - a.y) * (b.x - a.x))
            })
            .collect();
        cuts.sort_by(f64::total_cmp);
        for pair in cuts.chunks_exact(2) {
            // A level nearer to the middle is taken unless another one is much wider.
            if pair[1] - pair[0] > best.1 * 1.3 {
                best = (Point::new((pair[0] + pair[1]) / 2.0, y), pair[1] - pair[0]);
            }
        }
    }
    best
}

#[cfg(test)]
mod tests {
    use super::*;

    fn polygon(all: &[(f64, f64)]) -> Vec<Point> {
        all.iter().map(|p| Point::new(p.0, p.1)).collect()
    }

    #[test]
    fn triangles_cover_what_the_polygon_covers() {
        let hook = polygon(&[
            (0.0, 0.0),
            (40.0, 0.0),
            (40.0, 10.0),
            (10.0, 10.0),
            (10.0, 30.0),
            (40.0, 30.0),
            (40.0, 40.0),
            (0.0, 40.0),
        ]);
        let mut back = hook.clone();
        back.reverse();
        for shape in [hook, back] {
            let all = triangles(&shape);
            assert_eq!(all.len(), 3 * (shape.len() - 2));
            let area = |t: &[u32]| {
                let [a, b, c] = [t[0], t[1], t[2]].map(|k| shape[k as usize]);
                (b - a).cross(c - a).abs() / 2.0
            };
            let sum: f64 = all.chunks_exact(3).map(area).sum();
            // 40 x 40 less the bay of 30 x 20.
            assert!((sum - 1000.0).abs() < 1e-9, "{sum}");
            assert!(inside(&shape, Point::new(5.0, 20.0)) && !inside(&shape, Point::new(25.0, 20.0)));
            let (at, wide) = room_for_letter(&shape);
            assert!(inside(&shape, at) && wide >= 10.0, "{at:?} {wide}");
        }
    }
}
