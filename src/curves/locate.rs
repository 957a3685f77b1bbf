//! The place of a curve that is nearest to a point.

use super::{Curve, Pt, Segment};
use crate::base::{Scalar, tolerance};

/// The nearest place of a curve.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Located<S> {
    /// Flat place: length from the start, mm.
    pub along: S,
    /// Straight distance from the point, mm. Its derivatives are taken as zero where it is zero.
    pub distance: S,
}

impl<S: Scalar> Curve<S> {
    /// The place nearest to `p` on the whole curve; of several equally near ones the first.
    ///
    /// Carries derivatives, except at an end where the curve just stops, and where the nearest place jumps (`p` at the centre of
    /// curvature or beyond).
    pub fn locate(&self, p: Pt<S>) -> Located<S> {
        let plain = p.plain();
        let away = |segment: &Segment<S>, u: f64| (segment.point(S::constant(u)).plain() - plain).length();
        let mut best = (0, 0.0, f64::INFINITY);
        for (i, segment) in self.segments().iter().enumerate() {
            let u = segment.nearest(plain);
            let distance = away(segment, u);
            if distance < best.2 {
                best = (i, u, distance);
            }
        }
        let (i, u, _) = best;
        let segment = &self.segments()[i];
        let u = carried(segment, p, u);
        Located { along: self.start_of(i) + segment.length_to(u), distance: (segment.point(u) - p).length() }
    }
}

/// The parameter of the foot of `p`, given its value, with derivatives.
fn carried<S: Scalar>(segment: &Segment<S>, p: Pt<S>, u: f64) -> S {
    let at = S::constant(u);
    // The foot is where off * velocity = 0. Where that does not hold the curve stops short of it.
    let (off, velocity, bend) = (segment.point(at) - p, segment.velocity(at), segment.acceleration(at));
    let miss = off.dot(velocity);
    let square = velocity.dot(velocity).value();
    let slope = square + off.dot(bend).value();
    let step = -miss.value() / slope;
    if slope <= tolerance::RANK * square || (u <= 0.0 && step < 0.0) || (u >= 1.0 && step > 0.0) {
        return at;
    }
    let moved = miss.times(-1.0 / slope);
    moved.plus(u - moved.value())
}
