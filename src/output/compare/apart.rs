//! The largest distance between two lines, and motions that lay one piece over another.

use kurbo::{Affine, BezPath, PathEl, Point, Vec2};

use crate::base::tolerance;

/// Segments that are asked for together.
const BLOCK: usize = 16;
/// Parts into which a segment is halved before what is known has to do. Each halving that is needed at all halves what is not known.
const MOST_HALVINGS: u32 = 40;

/// The largest distance from any point of one of two lines to the other one, mm, within [`tolerance::LINES_APART`].
///
/// Symmetric. Nothing where either is empty.
pub(super) fn apart(a: &BezPath, b: &BezPath) -> Option<f64> {
    if is_same(a, b, Vec2::ZERO) {
        return Some(0.0);
    }
    let (one, two) = (Straight::of(a)?, Straight::of(b)?);
    let there = one.farthest_from(&two, 0.0);
    Some(two.farthest_from(&one, there))
}

/// Whether `b` is `a` shifted: the same elements with the same points, within [`tolerance::COMPARED`]. Then no point of the one is farther
/// from the other than that.
pub(super) fn is_same(a: &BezPath, b: &BezPath, shift: Vec2) -> bool {
    let near = |p: Point, q: Point| length(q - (p + shift)) <= tolerance::COMPARED;
    a.elements().len() == b.elements().len()
        && a.elements().iter().zip(b.elements()).all(|pair| match pair {
            (PathEl::MoveTo(p), PathEl::MoveTo(q)) | (PathEl::LineTo(p), PathEl::LineTo(q)) => near(*p, *q),
            (PathEl::QuadTo(p, r), PathEl::QuadTo(q, s)) => near(*p, *q) && near(*r, *s),
            (PathEl::CurveTo(p, r, t), PathEl::CurveTo(q, s, u)) => near(*p, *q) && near(*r, *s) && near(*t, *u),
            (PathEl::ClosePath, PathEl::ClosePath) => true,
            _ => false,
        })
}

/// The length of a vector, the same on every machine.
pub(super) fn length(v: Vec2) -> f64 {
    v.hypot2().sqrt()
}

/// The motion, without mirroring, that takes `a` to `to_a` and the direction from `a` to `b` to that from `to_a` to `to_b`; none where two lie on
/// each other.
pub(super) fn laying(a: Point, b: Point, to_a: Point, to_b: Point) -> Option<Affine> {
    let (from, to) = (b - a, to_b - to_a);
    let size = length(from) * length(to);
    if size <= tolerance::EQUAL {
        return None;
    }
    let (cos, sin) = (from.dot(to) / size, from.cross(to) / size);
    let turn = Affine::new([cos, sin, -sin, cos, 0.0, 0.0]);
    Some(Affine::translate(to_a - turn * a) * turn)
}

/// A line as straight segments in blocks.
struct Straight {
    segments: Vec<[Point; 2]>,
    /// The box of each block: least and most.
    blocks: Vec<[Point; 2]>,
}

impl Straight {
    /// Leaves the line by a quarter of the tolerance at most, so that two of them leave half of it to the search.
    fn of(path: &BezPath) -> Option<Self> {
        let mut segments = Vec::new();
        let (mut start, mut last) = (Point::ZERO, Point::ZERO);
        kurbo::flatten(path, tolerance::LINES_APART / 4.0, |el| match el {
            PathEl::MoveTo(p) => (start, last) = (p, p),
            PathEl::LineTo(p) => {
                segments.push([last, p]);
                last = p;
            }
            PathEl::ClosePath => {
                segments.push([last, start]);
                last = start;
            }
            _ => {}
        });
        if segments.is_empty() || segments.iter().flatten().any(|p| !p.is_finite()) {
            return None;
        }
        let blocks = segments
            .chunks(BLOCK)
            .map(|chunk| {
                let mut all = chunk.iter().flatten();
                let first = all.next().copied().unwrap_or_default();
                all.fold([first, first], |[least, most], p| {
                    [Point::new(least.x.min(p.x), least.y.min(p.y)), Point::new(most.x.max(p.x), most.y.max(p.y))]
                })
            })
            .collect();
        Some(Self { segments, blocks })
    }

    /// The largest distance of a point of this line from the other one, if it is larger than `known`, else `known`.
    ///
    /// A distance from one segment is convex along another, so on a stretch it is nowhere larger than at the ends; where one
    /// segment of the other line is nearest to both ends, that settles the stretch. Else it is halved.
    fn farthest_from(&self, other: &Self, known: f64) -> f64 {
        let mut most = known;
        let mut near = 0;
        let mut work = Vec::new();
        for [a, b] in &self.segments {
            work.push((*a, *b, 0));
            while let Some((a, b, halved)) = work.pop() {
                let (bound, ends) = other.within(a, b, &mut near);
                most = most.max(ends);
                if bound > most + tolerance::LINES_APART / 2.0 && halved < MOST_HALVINGS {
                    let middle = a.midpoint(b);
                    work.push((a, middle, halved + 1));
                    work.push((middle, b, halved + 1));
                }
            }
        }
        most
    }

    /// No point between two points is farther from this line than the first number, and one of the two is as far as the second. `near` is the segment to begin
    /// with, and becomes the best one.
    fn within(&self, a: Point, b: Point, near: &mut usize) -> (f64, f64) {
        let of = |k: usize| {
            let [p, q] = self.segments[k];
            [from_segment(a, p, q), from_segment(b, p, q)]
        };
        let first = of(*near);
        let (mut bound, mut at_a, mut at_b) = (first[0].max(first[1]), first[0], first[1]);
        for (i, block) in self.blocks.iter().enumerate() {
            let (da, db) = (from_box(a, block), from_box(b, block));
            if da >= at_a && db >= at_b && da.max(db) >= bound {
                continue;
            }
            for k in i * BLOCK..((i + 1) * BLOCK).min(self.segments.len()) {
                let [da, db] = of(k);
                (at_a, at_b) = (at_a.min(da), at_b.min(db));
                if da.max(db) < bound {
                    bound = da.max(db);
                    *near = k;
                }
            }
        }
        (bound, at_a.max(at_b))
    }
}

fn from_segment(p: Point, a: Point, b: Point) -> f64 {
    let way = b - a;
    let size = way.hypot2();
    let share = if size > 0.0 { ((p - a).dot(way) / size).clamp(0.0, 1.0) } else { 0.0 };
    length(p - (a + way * share))
}

fn from_box(p: Point, [least, most]: &[Point; 2]) -> f64 {
    let x = (least.x - p.x).max(p.x - most.x).max(0.0);
    let y = (least.y - p.y).max(p.y - most.y).max(0.0);
    (x * x + y * y).sqrt()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn path(text: &str) -> BezPath {
        BezPath::from_svg(text).unwrap_or_default()
    }

    #[test]
    fn distances_are_those_of_closed_forms() {
        let near = |a: &str, b: &str, meant: f64| {
            let (there, back) = (apart(&path(a), &path(b)), apart(&path(b), &path(a)));
            assert!(there.is_some_and(|d| (d - meant).abs() <= tolerance::LINES_APART), "{a} {b}: {there:?}");
            assert!(back.is_some_and(|d| (d - meant).abs() <= tolerance::LINES_APART), "{b} {a}: {back:?}");
        };
        // Parallel lines; a line slid along itself; the corner of a triangle over its base.
        near("M0 0 L100 0", "M0 7 L100 7", 7.0);
        near("M0 0 L100 0", "M30 0 L130 0", 30.0);
        near("M0 0 L50 30 L100 0", "M0 0 L100 0", 30.0);
        // Farthest in the middle of a segment: from two uprights at 0 and 100, the middle of the level line is 50 away.
        near("M0 0 L100 0", "M0 0 L0 50 L100 50 L100 0", 50.0);
        // A cubic with level handles of height h rises by 3/4 h.
        near("M0 0 C0 40 100 40 100 0", "M0 0 L100 0", 30.0);
        near("M0 0 L10 0", "M0 0 L5 0 L10 0", 0.0);
    }
}
