//! Integrals by Gauss's rule, halved where the integrand is not smooth.

use crate::base::{Scalar, tolerance};

/// Positive nodes and weights of the 16-node Gauss-Legendre rule on [-1, 1].
/// Source: roots of the Legendre polynomial, computed with mpmath at 40 digits (as in Abramowitz & Stegun, table 25.4).
const SIXTEEN: [(f64, f64); 8] = [
    (0.09501250983763744, 0.1894506104550685),
    (0.2816035507792589, 0.18260341504492358),
    (0.45801677765722737, 0.16915651939500254),
    (0.6178762444026438, 0.14959598881657674),
    (0.755404408355003, 0.12462897125553388),
    (0.8656312023878318, 0.09515851168249279),
    (0.9445750230732326, 0.062253523938647894),
    (0.9894009349916499, 0.027152459411754096),
];

/// The same for 8 nodes: only to see how far off the rule is. Same source.
const EIGHT: [(f64, f64); 4] = [
    (0.1834346424956498, 0.362683783378362),
    (0.525532409916329, 0.31370664587788727),
    (0.7966664774136267, 0.22238103445337448),
    (0.9602898564975363, 0.10122853629037626),
];

/// No interval is halved more often: a kink is then narrower than 1e-12 of the whole.
const MOST_HALVINGS: usize = 40;
/// After so many intervals every further one is taken as it is. A kink needs about 60.
const MOST_INTERVALS: usize = 2000;

/// Integral of `f` from `from` to `to`, halved until `is_good(a, b, value)` for each interval from a to b. Its answers are made from plain
/// numbers, so that a result with derivatives is the exact derivative of the rule used.
///
/// Never more than 2000 intervals; what is not finite is summed as it is.
pub fn integral<S: Scalar>(is_good: impl Fn(f64, f64, f64) -> bool, f: impl Fn(f64) -> S, from: f64, to: f64) -> S {
    // Most are good at once and need no list.
    let whole = rule(&SIXTEEN, &f, from, to);
    if is_good(from, to, whole.value()) {
        return S::zero() + whole;
    }
    let mut waiting = [(0.0, 0.0, 0_usize); MOST_HALVINGS + 1];
    let middle = 0.5 * (from + to);
    (waiting[0], waiting[1]) = ((middle, to, 1), (from, middle, 1));
    let (mut count, mut seen) = (2, 1);
    let mut sum = S::zero();
    while count > 0 {
        count -= 1;
        seen += 1;
        let (a, b, halvings) = waiting[count];
        let fine = rule(&SIXTEEN, &f, a, b);
        if halvings == MOST_HALVINGS || seen > MOST_INTERVALS || is_good(a, b, fine.value()) {
            sum = sum + fine;
        } else {
            let middle = 0.5 * (a + b);
            waiting[count] = (middle, b, halvings + 1);
            waiting[count + 1] = (a, middle, halvings + 1);
            count += 2;
        }
    }
    sum
}

/// For an integrand of which nothing is known: good if half the nodes give the same within 1e-9. Even at a kink the error of the full
/// rule is then a quarter of that.
pub fn agrees(plain: impl Fn(f64) -> f64) -> impl Fn(f64, f64, f64) -> bool {
    move |a, b, fine| {
        let is_off = (fine - rule(&EIGHT, &plain, a, b)).abs() > tolerance::ARC_LENGTH;
        // What is not a number is not halved further.
        !is_off
    }
}

/// A bound of the error on [`a`, `b`] of a function that is analytic but for the given places of the complex plane.
///
/// (64/15) M ρ^(-32) / (1 - ρ^-2), ρ from the largest ellipse about the interval that keeps clear of them, M the largest value on it:
/// Trefethen, Is Gauss Quadrature Better than Clenshaw-Curtis?, SIAM Review 50 (2008), theorem 4.5 (from memory; the tests measure it).
/// `most(r)` bounds the function within the distance r of the middle. These places are roots, like those of |t - z|: at such the terms
/// that the rule misses are smaller by k^(-3/2), k > 32, of which 1/100 is kept.
pub fn error_bound(a: f64, b: f64, singular: &[(f64, f64)], most: impl Fn(f64) -> f64) -> f64 {
    /// Beyond this the bound is far below every rounding.
    const WIDEST: f64 = 8.0;
    let (middle, half) = (0.5 * (a + b), 0.5 * (b - a).abs());
    let mut rho = WIDEST;
    for (re, im) in singular {
        let (x, y) = ((re - middle) / half, im / half);
        // Half the sum of the distances from the foci is the long half axis, (ρ + 1/ρ) / 2.
        let (left, right) = ((x + 1.0) * (x + 1.0) + y * y, (x - 1.0) * (x - 1.0) + y * y);
        let long = 0.5 * (left.sqrt() + right.sqrt());
        rho = rho.min(long + (long * long - 1.0).max(0.0).sqrt());
    }
    let reach = half * 0.5 * (rho + 1.0 / rho);
    let (square, mut power) = (rho * rho, rho);
    for _ in 0..5 {
        power = power * power;
    }
    let share = 0.01 * 64.0 / 15.0 / power / (1.0 - 1.0 / square);
    // The interval itself bounds the error too, where the ellipse shrinks to nothing.
    half * most(reach) * share.min(1.0)
}

fn rule<S: Scalar>(nodes: &[(f64, f64)], f: impl Fn(f64) -> S, a: f64, b: f64) -> S {
    let (middle, half) = (0.5 * (a + b), 0.5 * (b - a));
    let mut sum = S::zero();
    for &(x, w) in nodes {
        sum = sum + (f(middle - half * x) + f(middle + half * x)).times(w);
    }
    sum.times(half)
}

#[cfg(test)]
mod tests {
    use crate::base::Scalar;

    use super::{EIGHT, SIXTEEN, agrees, integral, rule};

    #[test]
    fn rules_are_exact_for_polynomials_of_their_degree() {
        for (nodes, degree) in [(&SIXTEEN[..], 31), (&EIGHT[..], 15)] {
            for n in 0..=degree {
                let exact = 1.0 / f64::from(n + 1);
                let got = rule(nodes, |x: f64| Scalar::powi(x, n), 0.0, 1.0);
                assert!((got - exact).abs() < 4e-16, "x^{n}: {got} for {exact}");
            }
            let beyond = rule(nodes, |x: f64| Scalar::powi(x, degree + 1), -1.0, 1.0);
            assert!((beyond - 2.0 / f64::from(degree + 2)).abs() > 1e-10);
        }
    }

    #[test]
    fn kinks_are_found_and_what_is_not_finite_ends() {
        let kink = |x: f64| 300.0 * (x - 0.3).abs();
        assert!((integral(agrees(kink), kink, 0.0, 1.0) - 300.0 * (0.045 + 0.245)).abs() < 1e-9);
        let hole = |x: f64| if x > 0.5 { f64::NAN } else { 1.0 };
        assert!(integral(agrees(hole), hole, 0.0, 1.0).is_nan());
        let comb = |x: f64| f64::from((x * 1e6) as u32 % 2);
        assert!(integral(agrees(comb), comb, 0.0, 1.0).is_finite());
    }
}
