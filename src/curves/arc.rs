//! Arcs of circles, kept as arcs.

use std::f64::consts::{FRAC_PI_2, TAU};

use super::{CurveError, Pt, Rigid};
use crate::base::{Scalar, tolerance};

/// An arc from one point to another about a centre.
///
/// The two radii may differ by at most 0.01 mm. The radius then runs evenly with the angle, so that both ends are kept; lengths count
/// as the integral of the radius over the angle, which is short by less than (difference)² / (2 length) mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Arc<S> {
    from: Pt<S>,
    to: Pt<S>,
    centre: Pt<S>,
    radius: S,
    end_radius: S,
    start: S,
    sweep: S,
}

impl<S: Scalar> Arc<S> {
    /// The arc about `centre`, clockwise as seen or counter to it. Ends that lie on each other (1e-6 mm) give a full turn.
    ///
    /// # Errors
    /// [`CurveError::RadiiDiffer`] by more than 0.01 mm; [`CurveError::NoRadius`].
    pub fn new(from: Pt<S>, to: Pt<S>, centre: Pt<S>, clockwise: bool) -> Result<Self, CurveError> {
        let (radius, end_radius) = ((from - centre).length(), (to - centre).length());
        if radius.value().min(end_radius.value()) <= tolerance::EQUAL {
            return Err(CurveError::NoRadius);
        }
        let difference = (end_radius - radius).value();
        if difference.abs() > tolerance::ON_EDGE {
            return Err(CurveError::RadiiDiffer { difference });
        }
        let (start, end) = ((from - centre).angle(), (to - centre).angle());
        let mut sweep = end - start;
        let least = tolerance::EQUAL / radius.value();
        // Both angles are in (-π, π], so one whole turn always suffices.
        if clockwise && sweep.value() <= least {
            sweep = sweep.plus(TAU);
        } else if !clockwise && sweep.value() >= -least {
            sweep = sweep.plus(-TAU);
        }
        Ok(Self { from, to, centre, radius, end_radius, start, sweep })
    }
    /// A plain arc as one that does not depend on anything.
    pub fn lifted(plain: &Arc<f64>) -> Self {
        let c = S::constant;
        Self {
            from: Pt::constant(plain.from),
            to: Pt::constant(plain.to),
            centre: Pt::constant(plain.centre),
            radius: c(plain.radius),
            end_radius: c(plain.end_radius),
            start: c(plain.start),
            sweep: c(plain.sweep),
        }
    }
    /// The first end.
    pub fn from(&self) -> Pt<S> {
        self.from
    }
    /// The other end.
    pub fn to(&self) -> Pt<S> {
        self.to
    }
    /// The centre.
    pub fn centre(&self) -> Pt<S> {
        self.centre
    }
    /// Radius at the first end, mm.
    pub fn radius(&self) -> S {
        self.radius
    }
    /// The angle that is run through, positive clockwise as seen, radians.
    pub fn sweep(&self) -> S {
        self.sweep
    }
    /// Length, mm.
    pub fn length(&self) -> S {
        (self.radius + self.end_radius).times(0.5) * self.span()
    }

    /// 1 clockwise, -1 counter to it.
    pub(super) fn sense(&self) -> f64 {
        self.sweep.value().signum()
    }
    /// The angle that is run through, without sign.
    pub(super) fn span(&self) -> S {
        self.sweep.times(self.sense())
    }
    /// Radius after the fraction `u` of the angle.
    pub(super) fn radius_at(&self, u: S) -> S {
        self.radius + (self.end_radius - self.radius) * u
    }
    /// Point after the fraction `u` of the angle.
    pub(super) fn point(&self, u: S) -> Pt<S> {
        self.centre + Pt::heading(self.start + self.sweep * u).times(self.radius_at(u))
    }
    /// Derivative of the point by `u`.
    pub(super) fn velocity(&self, u: S) -> Pt<S> {
        let out = Pt::heading(self.start + self.sweep * u);
        out.square().times(self.radius_at(u) * self.sweep) + out.times(self.end_radius - self.radius)
    }
    /// Length up to the fraction `u` of the angle.
    pub(super) fn length_to(&self, u: S) -> S {
        (self.radius + self.radius_at(u)).times(0.5) * self.span() * u
    }
    /// The fraction of the angle after which the length is `s`: the inverse of `length_to`.
    pub(super) fn fraction_at(&self, s: S) -> S {
        let squares = self.end_radius * self.end_radius - self.radius * self.radius;
        let radius = (self.radius * self.radius + squares * (s / self.length())).sqrt();
        s.times(2.0) / (self.span() * (self.radius + radius))
    }
    /// The part between two fractions of the angle.
    pub(super) fn part(&self, u0: S, u1: S) -> Self {
        Self {
            from: self.point(u0),
            to: self.point(u1),
            centre: self.centre,
            radius: self.radius_at(u0),
            end_radius: self.radius_at(u1),
            start: self.start + self.sweep * u0,
            sweep: self.sweep * (u1 - u0),
        }
    }
    pub(super) fn reversed(&self) -> Self {
        Self {
            from: self.to,
            to: self.from,
            centre: self.centre,
            radius: self.end_radius,
            end_radius: self.radius,
            start: self.start + self.sweep,
            sweep: -self.sweep,
        }
    }
    pub(super) fn moved(&self, motion: &Rigid<S>) -> Self {
        Self {
            from: motion.of(self.from),
            to: motion.of(self.to),
            centre: motion.of(self.centre),
            start: motion.of_angle(self.start),
            sweep: if motion.is_mirrored() { -self.sweep } else { self.sweep },
            ..*self
        }
    }
    /// Integral of (x dy - y dx) / 2.
    pub(super) fn area_under(&self) -> S {
        let (a, b) = (self.radius, self.end_radius);
        self.centre.cross(self.to - self.from).times(0.5) + self.sweep * (a * a + a * b + b * b).times(1.0 / 6.0)
    }
    /// The fraction of the angle at which the arc is nearest to `p`; the start for the centre itself.
    pub(super) fn nearest(&self, p: Pt<f64>) -> f64 {
        let arc = self.plain();
        let turned = (p - arc.centre).angle() - arc.start;
        let along = (turned * arc.sense()).rem_euclid(TAU);
        let span = arc.span();
        if along <= span {
            along / span
        } else if along - span < TAU - along {
            1.0
        } else {
            0.0
        }
    }
    /// The fractions, rising, at which the arc lies in the direction `angle` from its centre, or opposite.
    pub(super) fn fractions_towards(&self, angle: f64) -> Vec<f64> {
        let arc = self.plain();
        let span = arc.span();
        let mut out: Vec<f64> = [0.0, TAU / 2.0]
            .into_iter()
            .map(|half| ((angle + half - arc.start) * arc.sense()).rem_euclid(TAU) / span)
            .filter(|u| *u <= 1.0)
            .collect();
        out.sort_by(f64::total_cmp);
        out
    }
    /// The same arc on circles that are larger by `step`.
    pub(super) fn with_radii_moved(&self, step: S) -> Self {
        let mut arc = Self { radius: self.radius + step, end_radius: self.end_radius + step, ..*self };
        (arc.from, arc.to) = (arc.point(S::zero()), arc.point(S::constant(1.0)));
        arc
    }
    /// The fractions at which the arc runs straight to the right, down, left or up.
    pub(super) fn extremes(&self) -> Vec<f64> {
        let arc = self.plain();
        let (low, high) = (arc.start.min(arc.start + arc.sweep), arc.start.max(arc.start + arc.sweep));
        let first = (low / FRAC_PI_2).ceil();
        (0..=4)
            .map(|k| (first + f64::from(k)) * FRAC_PI_2)
            .filter(|angle| *angle <= high)
            .map(|angle| (angle - arc.start) / arc.sweep)
            .collect()
    }
    pub(super) fn plain(&self) -> Arc<f64> {
        Arc {
            from: self.from.plain(),
            to: self.to.plain(),
            centre: self.centre.plain(),
            radius: self.radius.value(),
            end_radius: self.end_radius.value(),
            start: self.start.value(),
            sweep: self.sweep.value(),
        }
    }
    pub(super) fn is_finite(&self) -> bool {
        self.from.is_finite() && self.to.is_finite() && self.centre.is_finite() && self.length().value().is_finite()
    }
}

impl Arc<f64> {
    /// The same arc on circles that are larger by `step`; below zero it runs on the far side of the centre.
    pub(super) fn with_radii_grown(&self, step: f64) -> Self {
        let mut arc = Self { radius: self.radius + step, end_radius: self.end_radius + step, ..*self };
        (arc.from, arc.to) = (arc.point(0.0), arc.point(1.0));
        arc
    }
    /// Cubics that stay within 1e-4 mm of the arc, without the first point.
    ///
    /// The radial error of a cubic over the angle a is r (4/27) sin⁶(a/4) / cos²(a/4): Goldapp, Computer Aided Geometric Design 8 (1991), for
    /// handles of (4/3) tan(a/4) (from memory; the tests measure it).
    pub(super) fn draw(&self, path: &mut kurbo::BezPath) {
        const MOST: u32 = 1024;
        let radius = self.radius.abs().max(self.end_radius.abs());
        let mut count = (self.span() / FRAC_PI_2).ceil().clamp(1.0, 4.0) as u32;
        while count < MOST {
            let quarter = self.span() / f64::from(count) / 4.0;
            let (sine, cosine) = (libm::sin(quarter), libm::cos(quarter));
            let square = sine * sine;
            if radius * 4.0 / 27.0 * square * square * square / (cosine * cosine) <= tolerance::ARC_DRAWN {
                break;
            }
            count += 1;
        }
        let step = 1.0 / f64::from(count);
        let angle = self.sweep * step;
        // Derivative by the fraction, times what turns it into a handle.
        let handle = if angle == 0.0 { 0.0 } else { 4.0 / 3.0 * libm::tan(angle / 4.0) / self.sweep };
        for i in 0..count {
            let (u0, u1) = (f64::from(i) * step, f64::from(i + 1) * step);
            let start = if i == 0 { self.from } else { self.point(u0) };
            let end = if i + 1 == count { self.to } else { self.point(u1) };
            let (out, back) = (self.velocity(u0).scaled(handle), self.velocity(u1).scaled(handle));
            path.curve_to((start + out).value(), (end - back).value(), end.value());
        }
    }
}
