//! The number type over which evaluation is generic: plain, or carrying derivatives.

use std::fmt::Debug;
use std::ops::{Add, Div, Mul, Neg, Sub};

/// A real number, possibly with derivatives. Comparisons and branches look at [`Scalar::value`] only.
///
/// Functions come from `libm`, so that the same bytes come out on every machine.
pub trait Scalar:
    Copy
    + Debug
    + Send
    + Sync
    + 'static
    + Add<Output = Self>
    + Sub<Output = Self>
    + Mul<Output = Self>
    + Div<Output = Self>
    + Neg<Output = Self>
{
    /// A number that does not depend on anything.
    fn constant(value: f64) -> Self;
    /// The plain number.
    fn value(self) -> f64;
    /// The function `f` applied, given its value and its first derivative at [`Scalar::value`].
    fn chain(self, value: f64, slope: f64) -> Self;
    /// The function `f(self, other)` applied, given its value and both first derivatives.
    fn chain2(self, other: Self, value: f64, slope: f64, other_slope: f64) -> Self;

    /// Zero.
    fn zero() -> Self {
        Self::constant(0.0)
    }
    /// Times a plain number.
    fn times(self, factor: f64) -> Self {
        self.chain(self.value() * factor, factor)
    }
    /// Plus a plain number.
    fn plus(self, summand: f64) -> Self {
        self.chain(self.value() + summand, 1.0)
    }
    /// Sine of an angle in radians.
    fn sin(self) -> Self {
        self.chain(libm::sin(self.value()), libm::cos(self.value()))
    }
    /// Cosine of an angle in radians.
    fn cos(self) -> Self {
        self.chain(libm::cos(self.value()), -libm::sin(self.value()))
    }
    /// Tangent of an angle in radians.
    fn tan(self) -> Self {
        let t = libm::tan(self.value());
        self.chain(t, 1.0 + t * t)
    }
    /// Inverse sine; not finite outside [-1, 1].
    fn asin(self) -> Self {
        let x = self.value();
        self.chain(libm::asin(x), 1.0 / libm::sqrt(1.0 - x * x))
    }
    /// Inverse cosine; not finite outside [-1, 1].
    fn acos(self) -> Self {
        let x = self.value();
        self.chain(libm::acos(x), -1.0 / libm::sqrt(1.0 - x * x))
    }
    /// Inverse tangent.
    fn atan(self) -> Self {
        let x = self.value();
        self.chain(libm::atan(x), 1.0 / (1.0 + x * x))
    }
    /// Angle of the vector (`x`, `self`).
    fn atan2(self, x: Self) -> Self {
        let (y, x0) = (self.value(), x.value());
        let square = x0 * x0 + y * y;
        let (sy, sx) = if square > 0.0 { (x0 / square, -y / square) } else { (0.0, 0.0) };
        self.chain2(x, libm::atan2(y, x0), sy, sx)
    }
    /// Length of the vector (`self`, `other`). Its derivatives at zero are taken as zero.
    fn hypot(self, other: Self) -> Self {
        let length = libm::hypot(self.value(), other.value());
        let (a, b) = if length > 0.0 { (self.value() / length, other.value() / length) } else { (0.0, 0.0) };
        self.chain2(other, length, a, b)
    }
    /// Square root; not finite below zero. Its derivative at zero is taken as zero.
    fn sqrt(self) -> Self {
        let root = libm::sqrt(self.value());
        self.chain(root, if root > 0.0 { 0.5 / root } else { 0.0 })
    }
    /// Distance from zero.
    fn abs(self) -> Self {
        if self.value() < 0.0 { -self } else { self }
    }
    /// Whole power.
    fn powi(self, n: i32) -> Self {
        let x = self.value();
        self.chain(libm::pow(x, f64::from(n)), if n == 0 { 0.0 } else { f64::from(n) * libm::pow(x, f64::from(n - 1)) })
    }
    /// Real power of a plain number. The exponent is taken as fixed where the base is not above zero.
    fn powf(self, exponent: Self) -> Self {
        let (x, n) = (self.value(), exponent.value());
        let value = libm::pow(x, n);
        let slope = if n == 0.0 { 0.0 } else { n * libm::pow(x, n - 1.0) };
        self.chain2(exponent, value, slope, if x > 0.0 { value * libm::log(x) } else { 0.0 })
    }
}

impl Scalar for f64 {
    fn constant(value: f64) -> Self {
        value
    }
    fn value(self) -> f64 {
        self
    }
    fn chain(self, value: f64, _slope: f64) -> Self {
        value
    }
    fn chain2(self, _other: Self, value: f64, _slope: f64, _other_slope: f64) -> Self {
        value
    }
}
