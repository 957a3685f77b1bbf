//! The smooth curve through points: interpolating C2 cubic spline, centripetal parameters.

use super::{CurveError, Pt, Segment};
use crate::base::{Scalar, tolerance};

/// The spline through `points`, one cubic between each two; the parameter grows by the square root of the chord.
///
/// Each end is natural (second derivative zero) or, given the heading of travel there, clamped: the first derivative has that direction
/// and the length (chord of the end span) / (parameter step of the end span).
///
/// # Errors
/// Fewer than two points; two neighbours closer than 1e-6 mm; a coordinate or heading that is not finite.
pub fn spline<S: Scalar>(
    points: &[Pt<S>],
    leaving: Option<S>,
    arriving: Option<S>,
) -> Result<Vec<Segment<S>>, CurveError> {
    let last = points.len().saturating_sub(1);
    if last == 0 {
        return Err(CurveError::TooFewPoints);
    }
    if let Some(i) = points.iter().position(|p| !p.is_finite()) {
        return Err(CurveError::NotFinite { segment: i.saturating_sub(1) });
    }
    for (end, segment) in [(leaving, 0), (arriving, last - 1)] {
        if end.is_some_and(|a| !a.value().is_finite()) {
            return Err(CurveError::NotFinite { segment });
        }
    }
    let ways: Vec<Pt<S>> = points.windows(2).map(|p| p[1] - p[0]).collect();
    if let Some(i) = ways.iter().position(|w| w.length().value() <= tolerance::EQUAL) {
        return Err(CurveError::PointsCoincide { point: i + 1 });
    }
    let steps: Vec<S> = ways.iter().map(|w| w.length().sqrt()).collect();
    let slopes = slopes(&ways, &steps, leaving, arriving);
    let third = |i: usize, k: usize| slopes[k].times(steps[i]).scaled(1.0 / 3.0);
    Ok((0..last)
        .map(|i| Segment::Cubic([points[i], points[i] + third(i, i), points[i + 1] - third(i, i + 1), points[i + 1]]))
        .collect())
}

/// The first derivatives at the points. One row for each: before * m(i-1) + own * m(i) + after * m(i+1) = right, which says that the
/// second derivatives on both sides agree (de Boor, A Practical Guide to Splines, chapter IV). The rows are diagonally dominant, so that
/// elimination needs no exchange of rows.
fn slopes<S: Scalar>(ways: &[Pt<S>], steps: &[S], leaving: Option<S>, arriving: Option<S>) -> Vec<Pt<S>> {
    let (one, zero, last) = (S::constant(1.0), S::zero(), ways.len());
    let inverse = |i: usize| one / steps[i];
    // Three times the chord by the square of the step.
    let pull = |i: usize| ways[i].times(inverse(i) * inverse(i)).scaled(3.0);
    // An end row: natural 2 m(end) + m(next) = 3 chord / step; clamped m(end) = speed * heading. A chord over its root is its root.
    let end_row = |heading: Option<S>, span: usize| match heading {
        Some(angle) => (one, zero, Pt::heading(angle).times(steps[span])),
        None => (S::constant(2.0), one, pull(span).times(steps[span])),
    };
    let row = |i: usize| {
        if i == 0 {
            let (own, after, right) = end_row(leaving, 0);
            (zero, own, after, right)
        } else if i == last {
            let (own, before, right) = end_row(arriving, last - 1);
            (before, own, zero, right)
        } else {
            let (a, b) = (inverse(i - 1), inverse(i));
            (a, (a + b).times(2.0), b, pull(i - 1) + pull(i))
        }
    };
    // Downwards: m(i) = right - after * m(i+1).
    let mut reduced: Vec<(S, Pt<S>)> = Vec::with_capacity(last + 1);
    for i in 0..=last {
        let (before, own, after, right) = row(i);
        let (own, right) = match reduced.last() {
            Some((above_after, above_right)) => (own - before * *above_after, right - above_right.times(before)),
            None => (own, right),
        };
        reduced.push((after / own, right.times(one / own)));
    }
    // Upwards.
    let mut below: Option<Pt<S>> = None;
    let mut found: Vec<Pt<S>> = reduced
        .iter()
        .rev()
        .map(|(after, right)| {
            let slope = below.map_or(*right, |m| *right - m.times(*after));
            below = Some(slope);
            slope
        })
        .collect();
    found.reverse();
    found
}
