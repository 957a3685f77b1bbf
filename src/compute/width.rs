//! How wide a piece is along a line.

use kurbo::Shape;

use super::item::EdgeShape;
use crate::base::{Scalar, tolerance};
use crate::curves::Pt;
use crate::language::Trouble;
use crate::texts::id;

/// What of the line lies inside the outline, less what lies in the triangles of its darts.
pub(super) fn of<S: Scalar>(outline: &EdgeShape<S>, (at, way): (Pt<S>, Pt<S>)) -> Result<S, Trouble> {
    let met = outline.curve.meets_line(at, way).map_err(|_| Trouble::NoAnswer(id!("answer-along-outline")))?;
    let mut places: Vec<S> = met.into_iter().map(|m| (m.point - at).dot(way)).collect();
    places.sort_by(|a, b| a.value().total_cmp(&b.value()));
    let mut path = outline.curve.to_path();
    path.close_path();
    let mut sum = S::zero();
    for pair in places.windows(2) {
        let middle = at.plain() + way.plain().scaled(0.5 * (pair[0].value() + pair[1].value()));
        if path.winding(middle.value()) != 0 {
            sum = sum + (pair[1] - pair[0]);
        }
    }
    if sum.value() <= tolerance::EQUAL {
        return Err(Trouble::NoAnswer(id!("answer-not-through")));
    }
    Ok(outline.folded.iter().fold(sum, |sum, dart| sum - within(dart, at, way)))
}

/// How much of the line lies in a triangle.
fn within<S: Scalar>(corners: &[Pt<S>; 3], at: Pt<S>, way: Pt<S>) -> S {
    let aside = corners.map(|p| (p - at).cross(way));
    let along = corners.map(|p| (p - at).dot(way));
    let mut cuts: Vec<S> = Vec::with_capacity(3);
    for (i, k) in [(0, 1), (1, 2), (2, 0)] {
        let (a, b) = (aside[i], aside[k]);
        // A corner on the line belongs to one of its two sides.
        if (a.value() > 0.0) != (b.value() > 0.0) {
            cuts.push(along[i] + (along[k] - along[i]) * (a / (a - b)));
        }
    }
    match cuts.as_slice() {
        [one, other] => (*one - *other).abs(),
        _ => S::zero(),
    }
}
