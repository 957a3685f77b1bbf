//! Systems with limits, of any number of unknowns.

use tracewheel::numeric::Equations;

/// Pairs of circles that meet, one after the other, each a little further on: two unknowns a pair, with limits.
pub struct Ring {
    pairs: usize,
    odd: bool,
}

impl Ring {
    pub fn of(unknowns: usize) -> Self {
        Self { pairs: unknowns / 2, odd: unknowns % 2 == 1 }
    }
    fn unknowns(&self) -> usize {
        2 * self.pairs + usize::from(self.odd)
    }
    fn rows(&self, x: &[f64], out: &mut [f64], mut slope: impl FnMut(usize, usize, f64)) {
        for k in 0..self.pairs {
            let (a, b) = (x[2 * k], x[2 * k + 1]);
            let before = if k > 0 { x[2 * k - 2] - 80.0 } else { 0.0 };
            let (one, two) = (a.hypot(b), (a - 140.0).hypot(b));
            out[2 * k] = one - 100.0 - 0.1 * before;
            out[2 * k + 1] = two - 110.0;
            slope(2 * k, 2 * k, a / one);
            slope(2 * k, 2 * k + 1, b / one);
            if k > 0 {
                slope(2 * k, 2 * k - 2, -0.1);
            }
            slope(2 * k + 1, 2 * k, (a - 140.0) / two);
            slope(2 * k + 1, 2 * k + 1, b / two);
        }
        if self.odd {
            let k = 2 * self.pairs;
            out[k] = (x[k] * x[k]) / 10.0 - 250.0;
            slope(k, k, x[k] / 5.0);
        }
    }
}

impl Equations for Ring {
    fn count(&self) -> usize {
        self.unknowns()
    }
    fn residuals(&mut self, x: &[f64], out: &mut [f64]) -> bool {
        self.rows(x, out, |_, _, _| {});
        true
    }
    fn jacobian(&mut self, x: &[f64], out: &mut [f64], rows: &mut [f64]) -> bool {
        rows.fill(0.0);
        let n = self.unknowns();
        self.rows(x, out, |e, i, v| rows[e * n + i] = v);
        true
    }
}
