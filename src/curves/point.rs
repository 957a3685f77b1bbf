//! Points and vectors of the plane.

use std::ops::{Add, Neg, Sub};

use crate::base::{Scalar, tolerance};

/// A point, or a vector: millimetres, x to the right, y down.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pt<S> {
    /// To the right, mm.
    pub x: S,
    /// Down, mm.
    pub y: S,
}

impl<S: Scalar> Pt<S> {
    /// The point (`x`, `y`).
    pub fn new(x: S, y: S) -> Self {
        Self { x, y }
    }
    /// A point that does not depend on anything.
    pub fn constant(p: Pt<f64>) -> Self {
        Self::new(S::constant(p.x), S::constant(p.y))
    }
    /// The unit vector at `angle`, clockwise from "to the right".
    pub fn heading(angle: S) -> Self {
        Self::new(angle.cos(), angle.sin())
    }
    /// Without derivatives.
    pub fn plain(self) -> Pt<f64> {
        Pt::new(self.x.value(), self.y.value())
    }
    /// Without derivatives, as the curve library has it.
    pub fn value(self) -> kurbo::Point {
        kurbo::Point::new(self.x.value(), self.y.value())
    }
    /// Stretched by a factor.
    pub fn times(self, factor: S) -> Self {
        Self::new(self.x * factor, self.y * factor)
    }
    /// Stretched by a plain factor.
    pub fn scaled(self, factor: f64) -> Self {
        Self::new(self.x.times(factor), self.y.times(factor))
    }
    /// The point at fraction `t` of the way to `other`.
    pub fn towards(self, other: Self, t: S) -> Self {
        self + (other - self).times(t)
    }
    /// Scalar product.
    pub fn dot(self, other: Self) -> S {
        self.x * other.x + self.y * other.y
    }
    /// Vector product: positive if `other` points to the right of `self` as seen.
    pub fn cross(self, other: Self) -> S {
        self.x * other.y - self.y * other.x
    }
    /// Length of the vector.
    pub fn length(self) -> S {
        self.x.hypot(self.y)
    }
    /// Angle of the vector in (-π, π], clockwise from "to the right".
    pub fn angle(self) -> S {
        self.y.atan2(self.x)
    }
    /// The vector turned clockwise as seen.
    pub fn turned(self, angle: S) -> Self {
        self.turned_by(Self::heading(angle))
    }
    /// The vector turned clockwise by the angle of the unit vector `heading`.
    pub fn turned_by(self, heading: Self) -> Self {
        Self::new(self.x * heading.x - self.y * heading.y, self.x * heading.y + self.y * heading.x)
    }
    /// The vector turned by 90° clockwise as seen: from the direction of travel to its right-hand side.
    pub fn square(self) -> Self {
        Self::new(-self.y, self.x)
    }
    /// The unit vector in this direction; none if the vector is no longer than 1e-9.
    pub fn unit(self) -> Option<Self> {
        let length = self.length();
        (length.value() > tolerance::ARC_LENGTH).then(|| Self::new(self.x / length, self.y / length))
    }
    /// Whether both coordinates are numbers.
    pub fn is_finite(self) -> bool {
        self.x.value().is_finite() && self.y.value().is_finite()
    }
}

impl<S: Scalar> Add for Pt<S> {
    type Output = Self;
    fn add(self, o: Self) -> Self {
        Self::new(self.x + o.x, self.y + o.y)
    }
}

impl<S: Scalar> Sub for Pt<S> {
    type Output = Self;
    fn sub(self, o: Self) -> Self {
        Self::new(self.x - o.x, self.y - o.y)
    }
}

impl<S: Scalar> Neg for Pt<S> {
    type Output = Self;
    fn neg(self) -> Self {
        Self::new(-self.x, -self.y)
    }
}
