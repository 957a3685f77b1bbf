//! Why a system cannot be true: what has no effect, and which equations contradict each other.

use super::system::{Equations, largest};

/// For each unknown the largest change of a residual, to first order, when it moves by its scale: mm.
///
/// `rows` are `m` rows of `n` derivatives. Below [`NO_EFFECT`](crate::base::tolerance::NO_EFFECT): it has none.
pub fn effect(rows: &[f64], m: usize, n: usize, scale: &[f64]) -> Vec<f64> {
    (0..n).map(|i| (0..m).fold(0.0_f64, |a, e| a.max((rows[e * n + i] * scale[i]).abs()))).collect()
}

/// A conflicting set among `m` equations that has no member too many: without any one of them the rest can be true.
///
/// `solvable` says whether the equations with the given indices (rising) can be true together. Deletion filtering: each
/// equation in turn is left out for good if the rest still contradict each other; `m + 1` calls. Empty where all can be
/// true. The later equations stay in the set, where there is a choice.
pub fn conflict(m: usize, solvable: &mut dyn FnMut(&[usize]) -> bool) -> Vec<usize> {
    let mut kept: Vec<usize> = (0..m).collect();
    if solvable(&kept) {
        return Vec::new();
    }
    for candidate in 0..m {
        let rest: Vec<usize> = kept.iter().copied().filter(|&e| e != candidate).collect();
        if !solvable(&rest) {
            kept = rest;
        }
    }
    kept
}

/// Some of the equations of another system, in the given order; for [`conflict`].
pub struct Chosen<'a> {
    all: &'a mut dyn Equations,
    chosen: &'a [usize],
    residuals: Vec<f64>,
    rows: Vec<f64>,
}

impl<'a> Chosen<'a> {
    /// The equations of `all` with these indices; an index past its end makes the system one that cannot be computed.
    pub fn new(all: &'a mut dyn Equations, chosen: &'a [usize]) -> Self {
        let m = all.count();
        Self { all, chosen, residuals: vec![0.0; m], rows: Vec::new() }
    }
    fn copy_residuals(&self, out: &mut [f64]) -> bool {
        let found = self.chosen.iter().zip(out).all(|(&e, o)| self.residuals.get(e).map(|r| *o = *r).is_some());
        found && largest(&self.residuals).is_finite()
    }
}

impl Equations for Chosen<'_> {
    fn count(&self) -> usize {
        self.chosen.len()
    }
    fn residuals(&mut self, x: &[f64], out: &mut [f64]) -> bool {
        self.all.residuals(x, &mut self.residuals) && self.copy_residuals(out)
    }
    fn jacobian(&mut self, x: &[f64], out: &mut [f64], rows: &mut [f64]) -> bool {
        let n = x.len();
        self.rows.resize(self.residuals.len() * n, 0.0);
        if !self.all.jacobian(x, &mut self.residuals, &mut self.rows) || !self.copy_residuals(out) {
            return false;
        }
        for (row, &e) in rows.chunks_exact_mut(n.max(1)).zip(self.chosen) {
            row.copy_from_slice(&self.rows[e * n..(e + 1) * n]);
        }
        true
    }
}
