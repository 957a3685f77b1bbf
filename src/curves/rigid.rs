//! Motions that keep lengths.

use super::Pt;
use crate::base::Scalar;

/// A rigid motion: mirrored top to bottom (y to -y) or not, then turned about the origin, then shifted.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rigid<S> {
    turn: S,
    heading: Pt<S>,
    mirrored: bool,
    shift: Pt<S>,
}

impl<S: Scalar> Rigid<S> {
    /// Mirrored (y to -y) if asked for, then turned clockwise about the origin, then shifted.
    pub fn new(turn: S, mirrored: bool, shift: Pt<S>) -> Self {
        Self { turn, heading: Pt::heading(turn), mirrored, shift }
    }
    /// A plain motion as one that does not depend on anything.
    pub fn lifted(plain: &Rigid<f64>) -> Self {
        Self {
            turn: S::constant(plain.turn),
            heading: Pt::constant(plain.heading),
            mirrored: plain.mirrored,
            shift: Pt::constant(plain.shift),
        }
    }
    /// Every point moved by `offset`.
    pub fn shifting(offset: Pt<S>) -> Self {
        Self::new(S::zero(), false, offset)
    }
    /// Turned clockwise about a point.
    pub fn turning(about: Pt<S>, angle: S) -> Self {
        Self::taking(about, about, angle, false)
    }
    /// Mirrored in the line through `a` and `b`; none if they lie on each other.
    pub fn mirroring(a: Pt<S>, b: Pt<S>) -> Option<Self> {
        (b - a).unit()?;
        Some(Self::taking(a, a, (b - a).angle().times(2.0), true))
    }
    /// `a` comes to lie on `on_a`, and the direction from `a` to `b` on that from `on_a` to `on_b`; none if two of them lie
    /// on each other. With `mirrored` the sheet is turned over.
    pub fn laying(a: Pt<S>, b: Pt<S>, on_a: Pt<S>, on_b: Pt<S>, mirrored: bool) -> Option<Self> {
        (b - a).unit()?;
        (on_b - on_a).unit()?;
        let (from, to) = ((b - a).angle(), (on_b - on_a).angle());
        Some(Self::taking(a, on_a, if mirrored { to + from } else { to - from }, mirrored))
    }
    /// `p` comes to lie on `to`; mirrored (y to -y) if asked for, then turned by `turn`.
    pub fn taking(p: Pt<S>, to: Pt<S>, turn: S, mirrored: bool) -> Self {
        let mut motion = Self::new(turn, mirrored, Pt::new(S::zero(), S::zero()));
        motion.shift = to - motion.of_vector(p);
        motion
    }
    /// Where a point goes.
    pub fn of(&self, p: Pt<S>) -> Pt<S> {
        self.of_vector(p) + self.shift
    }
    /// What becomes of a vector.
    pub fn of_vector(&self, v: Pt<S>) -> Pt<S> {
        let v = if self.mirrored { Pt::new(v.x, -v.y) } else { v };
        v.turned_by(self.heading)
    }
    /// What becomes of an angle (of a direction).
    pub fn of_angle(&self, angle: S) -> S {
        if self.mirrored { self.turn - angle } else { self.turn + angle }
    }
    /// Whether the sheet is turned over.
    pub fn is_mirrored(&self) -> bool {
        self.mirrored
    }
    /// First this motion, then `next`.
    pub fn then(&self, next: &Self) -> Self {
        Self::new(next.of_angle(self.turn), self.mirrored != next.mirrored, next.of(self.shift))
    }
}
