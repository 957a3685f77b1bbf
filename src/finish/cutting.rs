//! How a piece is cut: its grain line, rough blocks, symmetry, and the words for how often it is cut.

use kurbo::{Affine, BezPath, PathEl, Point, Rect, Shape, Vec2};

use super::Finished;
use crate::base::tolerance;
use crate::compute::{CutPlan, Model};
use crate::document::{Face, Outline};
use crate::texts::t;

/// A cloth that shrinks by more than this part of its length is not believed.
pub(super) const MOST_SHRINKAGE: f64 = 0.5;
/// A grain line leaves this part of its chord free at each end.
const GRAIN_END: f64 = 0.08;
/// Farther from the middle it must be so many times as long.
const GRAIN_GAIN: f64 = 1.1;
/// So many lines along the grain are tried.
const GRAIN_TRIES: u32 = 9;
/// A rough block stands out by this much, mm: common practice, no source.
const BLOCK_ROOM: f64 = 20.0;

/// The corners of a closed path, flattened.
pub(super) fn flattened(path: &BezPath) -> Vec<Point> {
    let mut out = Vec::new();
    kurbo::flatten(path, tolerance::PRINT, |el| match el {
        PathEl::MoveTo(p) | PathEl::LineTo(p) => out.push(p),
        _ => {}
    });
    out
}

/// Places at which the line through `at` in direction `way` enters and leaves a polygon, in order along the line.
pub(super) fn chords(polygon: &[Point], at: Point, way: Vec2) -> Vec<f64> {
    let aside: Vec<f64> = polygon.iter().map(|p| way.cross(*p - at)).collect();
    let mut out = Vec::new();
    for i in 0..polygon.len() {
        let k = (i + 1) % polygon.len();
        if (aside[i] > 0.0) != (aside[k] > 0.0) {
            let meet = polygon[i].lerp(polygon[k], aside[i] / (aside[i] - aside[k]));
            out.push((meet - at).dot(way));
        }
    }
    out.sort_by(f64::total_cmp);
    out
}

/// The longest line along a heading that fits into a polygon, its head first: of several tries between a third and two thirds
/// of the width the longest.
pub(super) fn grain_line(polygon: &[Point], heading: f64) -> Option<[Point; 2]> {
    let way = Vec2::new(libm::cos(heading), libm::sin(heading));
    let side = Vec2::new(-way.y, way.x);
    let across = polygon.iter().map(|p| p.to_vec2().dot(side));
    let (low, high) = across.fold((f64::INFINITY, f64::NEG_INFINITY), |(a, b), v| (a.min(v), b.max(v)));
    let mut best: Option<(f64, [Point; 2])> = None;
    // From the middle outwards, to both sides in turn.
    for i in 0..GRAIN_TRIES {
        let aside = f64::from(i.div_ceil(2)) * if i % 2 == 0 { 1.0 } else { -1.0 };
        let share = 0.5 + aside / f64::from(GRAIN_TRIES - 1) / 3.0;
        let at = (side * (low + (high - low) * share)).to_point();
        for pair in chords(polygon, at, way).chunks_exact(2) {
            let length = pair[1] - pair[0];
            // One near the middle is taken unless another is clearly longer, so that sizes keep it in one place.
            if best.as_ref().is_none_or(|(most, _)| length > *most * GRAIN_GAIN) {
                let end = length * GRAIN_END;
                best = Some((length, [at + way * (pair[1] - end), at + way * (pair[0] + end)]));
            }
        }
    }
    best.map(|(_, line)| line)
}

/// A rough block around a cut line, its sides along and across a heading.
pub(super) fn block(outline: &BezPath, heading: f64) -> BezPath {
    let turned = Affine::rotate(-heading) * outline;
    let room: Rect = turned.bounding_box().inflate(BLOCK_ROOM, BLOCK_ROOM);
    Affine::rotate(heading) * room.to_path(tolerance::PRINT)
}

/// Whether a piece is the same when it is turned over.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Symmetry {
    /// It is: turned over left to right or top to bottom it lies on itself.
    Symmetric,
    /// It is not: its copies come in mirrored pairs.
    Handed,
}

impl Symmetry {
    /// Of an outline with a grain of this heading: a symmetric one lies on itself within 0.5 mm.
    pub fn of(outline: &BezPath, heading: f64) -> Self {
        let points = flattened(outline);
        let turned: Vec<Point> = points.iter().map(|p| Affine::rotate(-heading) * *p).collect();
        if same_turned_over(&turned, true) { Self::Symmetric } else { Self::Handed }
    }
}

/// Whether a polygon whose thread runs along x lies on itself, within 0.5 mm, when it is turned over about its thread; or, where it may be turned
/// by half, also about the line across.
pub fn same_turned_over(points: &[Point], both_ways: bool) -> bool {
    let Some(first) = points.first() else { return false };
    let centre = points.iter().fold(Rect::from_points(*first, *first), |r, p| r.union_pt(*p)).center();
    let on_itself = |mirror: &dyn Fn(Point) -> Point| {
        points.iter().all(|p| {
            let q = mirror(*p);
            (0..points.len()).any(|i| {
                let (a, b) = (points[i], points[(i + 1) % points.len()]);
                let leg = b - a;
                let t = if leg.hypot2() > 0.0 { ((q - a).dot(leg) / leg.hypot2()).clamp(0.0, 1.0) } else { 0.0 };
                (a + leg * t).distance(q) <= tolerance::limit::JOINT_GAP
            })
        })
    };
    on_itself(&|p| Point::new(p.x, 2.0 * centre.y - p.y))
        || both_ways && on_itself(&|p| Point::new(2.0 * centre.x - p.x, p.y))
}

/// Whether a piece of a view is the same when it is turned over, in all of these cases; one that cannot be drawn is passed over.
pub fn symmetry(
    model: &Model,
    finished: &Finished,
    cases: impl IntoIterator<Item = usize>,
    (frame, cut): (usize, &CutPlan),
) -> Symmetry {
    let handed = cases.into_iter().any(|case| {
        let Some(Some(piece)) = finished.cases[case].get(frame) else { return false };
        let heading = cut.heading.as_ref().and_then(|f| model.real(case, f).ok());
        Symmetry::of(&piece.stitch, heading.unwrap_or(0.0)) == Symmetry::Handed
    });
    if handed { Symmetry::Handed } else { Symmetry::Symmetric }
}

/// How often a piece is cut, in the words of sheets and lists: `cut 2 (1 + 1 mirrored) from main`.
pub fn cut_words(cut: &CutPlan, symmetry: Symmetry) -> String {
    let count = cut.count;
    let words = match (cut.on_fold.is_some(), cut.face, symmetry) {
        (true, ..) => t!("cut-on-fold", count),
        (_, Face::RightSideUp, _) => t!("cut-right-side", count),
        (_, Face::WrongSideUp, _) => t!("cut-wrong-side", count),
        (_, _, Symmetry::Handed) if count.is_multiple_of(2) => t!("cut-mirrored", count, half = count / 2),
        _ => t!("cut", count),
    };
    if cut.material.is_empty() { words } else { t!("cut-from", cut = words, material = &*cut.material) }
}

/// Which outline is cut, in the words of sheets and lists; empty where it is the cut line itself.
pub fn outline_words(outline: Outline) -> String {
    match outline {
        Outline::Full => String::new(),
        Outline::LessAllowance => t!("outline-less"),
        Outline::Block => t!("outline-block"),
    }
}

/// How many pairs a count of mirrored copies is: `2 = 1 pair`; nothing where copies are all alike.
pub fn pair_words(cut: &CutPlan, symmetry: Symmetry) -> Option<String> {
    let comes_in_pairs = cut.on_fold.is_none() && cut.face == Face::Pairs && symmetry == Symmetry::Handed;
    let pairs = cut.count / 2;
    (comes_in_pairs && cut.count.is_multiple_of(2) && pairs > 0).then(|| t!("cut-pairs", count = cut.count, pairs))
}
