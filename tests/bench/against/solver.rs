//! The solver beside the `levenberg-marquardt` crate on the same systems, and its times with limits.
//!
//! Both get the same residuals and the same derivatives (dual numbers) and begin at the same start, in the same scale. Ours also looks
//! for the answer nearest to the start; theirs does not.

use levenberg_marquardt::{LeastSquaresProblem, LevenbergMarquardt};
use nalgebra::storage::Owned;
use nalgebra::{DMatrix, DVector, Dyn};
use serde_json::json;
use tracewheel::numeric::{Ending, Equations, Unknowns, settle};

use crate::numeric_systems::{Posed, judged};
use crate::ring::Ring;
use crate::{batch, told};

/// A system for the other crate, in units of its scale.
struct Theirs<'a> {
    posed: &'a Posed,
    at: DVector<f64>,
}

impl Theirs<'_> {
    fn unscaled(&self) -> Vec<f64> {
        self.at.iter().zip(&self.posed.scale).map(|(z, s)| z * s).collect()
    }
}

impl LeastSquaresProblem<f64, Dyn, Dyn> for Theirs<'_> {
    type ParameterStorage = Owned<f64, Dyn>;
    type ResidualStorage = Owned<f64, Dyn>;
    type JacobianStorage = Owned<f64, Dyn, Dyn>;
    fn set_params(&mut self, x: &DVector<f64>) {
        self.at.copy_from(x);
    }
    fn params(&self) -> DVector<f64> {
        self.at.clone()
    }
    fn residuals(&self) -> Option<DVector<f64>> {
        Some(DVector::from_vec((self.posed.plain)(&self.unscaled())))
    }
    fn jacobian(&self) -> Option<DMatrix<f64>> {
        let (m, n) = (self.posed.count, self.at.len());
        let (mut out, mut rows) = (vec![0.0; m], vec![0.0; m * n]);
        self.posed.counted().jacobian(&self.unscaled(), &mut out, &mut rows);
        for (i, v) in rows.iter_mut().enumerate() {
            *v *= self.posed.scale[i % n];
        }
        Some(DMatrix::from_row_slice(m, n, &rows))
    }
}

fn theirs(posed: &Posed) -> (Vec<f64>, usize) {
    let at = DVector::from_iterator(posed.start.len(), posed.start.iter().zip(&posed.scale).map(|(x, s)| x / s));
    let (answer, report) = LevenbergMarquardt::new().minimize(Theirs { posed, at });
    (answer.unscaled(), report.number_of_evaluations)
}

fn largest(r: &[f64]) -> f64 {
    r.iter().fold(0.0, |w, r| f64::max(w, r.abs()))
}

/// What both need for each system, and how near they came.
pub fn run(rounds: usize) {
    let free = |p: &Posed| {
        p.least.iter().all(|v| *v == f64::NEG_INFINITY) && p.most.iter().all(|v| *v == f64::INFINITY)
    };
    for posed in judged().iter().filter(|p| free(p) && p.count >= p.start.len()) {
        let found = posed.settle();
        let (answer, evaluations) = theirs(posed);
        let left = [largest(&found.residuals), largest(&(posed.plain)(&answer))];
        let (mut ours, mut other) = (batch(|| drop(posed.settle())), batch(|| drop(theirs(posed))));
        let times: Vec<[f64; 2]> = (0..rounds).map(|_| [ours(), other()]).collect();
        told(&json!({
            "name": posed.name, "unknowns": posed.start.len(), "micros": times, "left": left,
            "evaluations": [found.evaluations as usize, evaluations], "true": found.ending == Ending::True,
        }));
    }
    for n in [1, 2, 3, 6, 12, 30, 60, 120] {
        let mut ring = Ring::of(n);
        let start: Vec<f64> = (0..n).map(|i| if i % 2 == 0 { 60.0 } else { 70.0 }).collect();
        let (scale, least, most) = (vec![10.0; n], vec![1.0; n], vec![300.0; n]);
        let unknowns = Unknowns { start: &start, scale: &scale, least: &least, most: &most };
        let found = settle(&unknowns, &mut ring);
        assert_eq!(found.ending, Ending::True);
        let mut one = batch(|| drop(settle(&unknowns, &mut ring)));
        let times: Vec<f64> = (0..rounds).map(|_| one()).collect();
        told(&json!({ "with_limits": n, "micros": times, "evaluations": found.evaluations }));
    }
}
