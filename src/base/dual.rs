//! Dual numbers: a value and its derivatives by `N` unknowns, exact to rounding.

use std::array::from_fn;
use std::ops::{Add, Div, Mul, Neg, Sub};

use super::Scalar;

/// A value with its derivatives by `N` unknowns.
///
/// Own code rather than a crate: sixty lines, and the functions must be `libm`'s.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Dual<const N: usize> {
    /// The value.
    pub value: f64,
    /// Its derivatives.
    pub slopes: [f64; N],
}

impl<const N: usize> Dual<N> {
    /// The `i`th unknown itself.
    pub fn unknown(value: f64, i: usize) -> Self {
        Self { value, slopes: from_fn(|k| if k == i { 1.0 } else { 0.0 }) }
    }
}

impl<const N: usize> Scalar for Dual<N> {
    fn constant(value: f64) -> Self {
        Self { value, slopes: [0.0; N] }
    }
    fn value(self) -> f64 {
        self.value
    }
    fn chain(self, value: f64, slope: f64) -> Self {
        // A slope that is not finite belongs to a direction only where something moves in it.
        Self { value, slopes: self.slopes.map(|s| if s == 0.0 { 0.0 } else { s * slope }) }
    }
    fn chain2(self, other: Self, value: f64, slope: f64, other_slope: f64) -> Self {
        let (a, b) = (self.chain(value, slope), other.chain(value, other_slope));
        Self { value, slopes: from_fn(|i| a.slopes[i] + b.slopes[i]) }
    }
}

impl<const N: usize> Add for Dual<N> {
    type Output = Self;
    fn add(self, o: Self) -> Self {
        Self { value: self.value + o.value, slopes: from_fn(|i| self.slopes[i] + o.slopes[i]) }
    }
}

impl<const N: usize> Sub for Dual<N> {
    type Output = Self;
    fn sub(self, o: Self) -> Self {
        Self { value: self.value - o.value, slopes: from_fn(|i| self.slopes[i] - o.slopes[i]) }
    }
}

#[allow(clippy::suspicious_arithmetic_impl, reason = "the product rule adds")]
impl<const N: usize> Mul for Dual<N> {
    type Output = Self;
    fn mul(self, o: Self) -> Self {
        Self { value: self.value * o.value, slopes: from_fn(|i| self.slopes[i] * o.value + self.value * o.slopes[i]) }
    }
}

#[allow(clippy::suspicious_arithmetic_impl, reason = "the quotient rule subtracts and multiplies")]
impl<const N: usize> Div for Dual<N> {
    type Output = Self;
    fn div(self, o: Self) -> Self {
        let value = self.value / o.value;
        Self { value, slopes: from_fn(|i| (self.slopes[i] - value * o.slopes[i]) / o.value) }
    }
}

impl<const N: usize> Neg for Dual<N> {
    type Output = Self;
    fn neg(self) -> Self {
        Self { value: -self.value, slopes: self.slopes.map(|s| -s) }
    }
}
