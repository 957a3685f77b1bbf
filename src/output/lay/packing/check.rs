//! The check of a layout: on the outlines as they are told, in full precision, by other means than the search uses. Also for layouts that
//! were put together by hand.

use kurbo::{Point, Rect};

use super::outline::{bounds, contains, distance, edges, inner, laid, within};
use super::{Job, Layout, Touch};
use crate::base::tolerance::lay;

/// What is wrong with a layout. Pieces are told by their place in it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum LayFault {
    /// Two pieces overlap.
    Overlap {
        /// One of them …
        one: usize,
        /// … and the other.
        other: usize,
        /// How far the outline of one of them reaches into the other, mm.
        deep: f64,
    },
    /// Two pieces are nearer than they may be.
    Near {
        /// One of them …
        one: usize,
        /// … and the other.
        other: usize,
        /// What is missing, mm.
        short: f64,
    },
    /// A piece lies beyond the strip, or beyond its part of it.
    Outside {
        /// The piece.
        piece: usize,
        /// How far, mm.
        far: f64,
    },
    /// A piece does not touch what it must touch.
    Loose {
        /// The piece.
        piece: usize,
        /// How far off it is, mm.
        off: f64,
    },
    /// There are more or fewer pieces of a shape than there must be.
    Count {
        /// The shape.
        shape: usize,
        /// How many are laid …
        laid: usize,
        /// … and how many there must be.
        asked: usize,
    },
    /// There is no such shape or pose, or a number is not finite.
    Unknown {
        /// The piece.
        piece: usize,
    },
    /// No piece lies where this locked one lay.
    Moved {
        /// The locked piece, by its place in the job.
        locked: usize,
    },
}

/// All faults of a layout; none: it can be cut. Overlaps up to 0.01 mm deep are no fault, nor is any other deviation of that size.
pub fn faults(job: &Job, layout: &Layout) -> Vec<LayFault> {
    let mut found = Vec::new();
    let outlines: Vec<Option<Vec<Point>>> = layout.laid.iter().map(|piece| laid(job, piece)).collect();
    for (piece, outline) in outlines.iter().enumerate() {
        match outline {
            None => found.push(LayFault::Unknown { piece }),
            Some(points) => place_faults(job, layout, piece, &bounds(points), &mut found),
        }
    }
    for (shape, asked) in job.shapes.iter().map(|s| s.count).enumerate() {
        let laid = layout.laid.iter().filter(|l| l.shape == shape).count();
        if laid != asked {
            found.push(LayFault::Count { shape, laid, asked });
        }
    }
    // A piece stands for one lock only, also where two locks are alike.
    let mut taken = vec![false; layout.laid.len()];
    for (locked, lock) in job.locked.iter().enumerate() {
        let same = |l: &super::Laid| {
            (l.shape, l.pose) == (lock.shape, lock.pose)
                && (l.x - lock.x).abs() <= lay::DEEP
                && (l.y - lock.y).abs() <= lay::DEEP
        };
        match layout.laid.iter().enumerate().position(|(i, l)| !taken[i] && same(l)) {
            Some(i) => taken[i] = true,
            None => found.push(LayFault::Moved { locked }),
        }
    }
    pair_faults(job.gap, &outlines, &mut found);
    found
}

/// Whether a piece lies in the strip and in its range, and touches what it must touch.
fn place_faults(job: &Job, layout: &Layout, piece: usize, box_: &Rect, found: &mut Vec<LayFault>) {
    let laid = &layout.laid[piece];
    let across = &job.shapes[laid.shape].poses[laid.pose].across;
    let over = [-box_.x0, box_.x1 - layout.length, across.from.max(0.0) - box_.y0, box_.y1 - across.to.min(job.width)];
    let far = over.into_iter().fold(0.0, f64::max);
    if far > lay::DEEP || !layout.length.is_finite() {
        found.push(LayFault::Outside { piece, far });
    }
    let off = match across.touch {
        Touch::Free => 0.0,
        Touch::From => (box_.y0 - across.from).abs(),
        Touch::To => (box_.y1 - across.to).abs(),
    };
    if off > lay::DEEP {
        found.push(LayFault::Loose { piece, off });
    }
}

/// Pairs that overlap or are too near.
fn pair_faults(gap: f64, outlines: &[Option<Vec<Point>>], found: &mut Vec<LayFault>) {
    let known: Vec<(usize, &[Point], Rect)> =
        outlines.iter().enumerate().filter_map(|(i, o)| o.as_deref().map(|o| (i, o, bounds(o)))).collect();
    for (k, (one, a, box_a)) in known.iter().enumerate() {
        for (other, b, box_b) in &known[k + 1..] {
            if !meet(box_a, box_b, gap.max(0.0)) {
                continue;
            }
            let deep = if meet(box_a, box_b, 0.0) { depth(a, b) } else { 0.0 };
            if deep > lay::DEEP {
                found.push(LayFault::Overlap { one: *one, other: *other, deep });
            } else if gap > 0.0 {
                let short = gap - if deep > 0.0 { 0.0 } else { apart(a, b, gap) };
                if short > lay::DEEP {
                    found.push(LayFault::Near { one: *one, other: *other, short });
                }
            }
        }
    }
}

/// Whether two boxes are no farther apart than this along both axes.
fn meet(a: &Rect, b: &Rect, by: f64) -> bool {
    a.x0 <= b.x1 + by && b.x0 <= a.x1 + by && a.y0 <= b.y1 + by && b.y0 <= a.y1 + by
}

/// The box of an edge.
fn span((a, b): (Point, Point)) -> Rect {
    Rect::from_points(a, b)
}

/// How deep two polygons overlap, mm: the farthest that a point of either outline lies inside the other; where the outlines
/// are the same, how far a point inside both is from them. 0: they do not overlap. Found within a fiftieth of itself, or
/// within a tenth of what is allowed.
pub(super) fn depth(a: &[Point], b: &[Point]) -> f64 {
    // Without an outline inside the other, polygons overlap only if one point inside lies in both.
    let common = |p: &[Point], q: &[Point]| {
        let point = inner(p).filter(|point| contains(q, *point))?;
        Some(to_outline(p, point).min(to_outline(q, point)))
    };
    let same = common(a, b).or_else(|| common(b, a)).unwrap_or(0.0);
    same.max(reach(a, b)).max(reach(b, a))
}

fn to_outline(points: &[Point], p: Point) -> f64 {
    edges(points).map(|e| distance(e, p)).fold(f64::INFINITY, f64::min)
}

/// How far the outline of `a` reaches into `b`.
fn reach(a: &[Point], b: &[Point]) -> f64 {
    let (box_a, box_b) = (bounds(a), bounds(b));
    // Only edges near `a` can cut its edges; only those level with it or to the right of it say what lies in `b`.
    let level = |e: &Rect| e.y0 <= box_a.y1 + lay::DEEP && e.y1 >= box_a.y0 - lay::DEEP && e.x1 >= box_a.x0 - lay::DEEP;
    let beside: Vec<(Point, Point)> = edges(b).filter(|e| level(&span(*e))).collect();
    let near: Vec<((Point, Point), Rect)> =
        edges(b).map(|e| (e, span(e))).filter(|(_, box_)| meet(box_, &box_a, lay::DEEP)).collect();
    let mut best: f64 = 0.0;
    let mut cuts = Vec::new();
    for (p, q) in edges(a) {
        let own = span((p, q));
        if !meet(&own, &box_b, 0.0) {
            continue;
        }
        cuts.clear();
        cuts.extend([0.0, 1.0]);
        for (other, _) in near.iter().filter(|(_, box_)| meet(box_, &own, lay::DEEP)) {
            crossings((p, q), *other, &mut cuts);
        }
        cuts.sort_by(f64::total_cmp);
        for pair in cuts.windows(2) {
            let (from, to) = (p.lerp(q, pair[0]), p.lerp(q, pair[1]));
            if pair[1] > pair[0] && within(beside.iter().copied(), from.midpoint(to)) {
                best = deepest(b, from, to, best);
            }
        }
    }
    best
}

/// Where on the first edge (0 to 1) the second one may cross or begin to lie beside it. Too many places do no harm.
fn crossings((p, q): (Point, Point), (c, d): (Point, Point), cuts: &mut Vec<f64>) {
    let along = q - p;
    let square = along.hypot2();
    if square == 0.0 {
        return;
    }
    let (of_c, of_d) = (along.cross(c - p), along.cross(d - p));
    if of_c != of_d {
        let point = c + (d - c) * (of_c / (of_c - of_d)).clamp(0.0, 1.0);
        cuts.push(((point - p).dot(along) / square).clamp(0.0, 1.0));
    }
    for end in [c, d] {
        cuts.push(((end - p).dot(along) / square).clamp(0.0, 1.0));
    }
}

/// The farthest that a stretch that lies in `b` is from its outline, if that is more than `best`.
///
/// The distance from one edge is a convex function along the stretch, so that no place of it is farther from the outline than the least, over
/// the edges, of the larger of both ends' distances. Stretches are halved while that bound leaves room.
fn deepest(b: &[Point], from: Point, to: Point, mut best: f64) -> f64 {
    const MOST: usize = 4000;
    let mut open = vec![(from, to)];
    for _ in 0..MOST {
        let Some((p, q)) = open.pop() else { break };
        let middle = p.midpoint(q);
        let (mut bound, mut here) = (f64::INFINITY, f64::INFINITY);
        for edge in edges(b) {
            bound = bound.min(distance(edge, p).max(distance(edge, q)));
            here = here.min(distance(edge, middle));
        }
        best = best.max(here);
        if bound > (best * lay::DEPTH_WITHIN).max(lay::DEEP * lay::DEPTH_FLOOR) {
            open.extend([(p, middle), (middle, q)]);
        }
    }
    best
}

/// How far apart two polygons are that do not overlap, mm; `most` if that is less.
fn apart(a: &[Point], b: &[Point], most: f64) -> f64 {
    let box_a = bounds(a);
    let near_b: Vec<(Point, Point)> = edges(b).filter(|e| meet(&span(*e), &box_a, most)).collect();
    let mut least = most;
    for own in edges(a) {
        for other in &near_b {
            if !meet(&span(*other), &span(own), least) {
                continue;
            }
            let ends =
                [distance(own, other.0), distance(own, other.1), distance(*other, own.0), distance(*other, own.1)];
            least = ends.into_iter().fold(least, f64::min);
        }
    }
    least
}
