//! The solver against the `levenberg-marquardt` crate on the same systems, and its times with limits:
//! `cargo run --release --manifest-path tests/bench/against/Cargo.toml`. A crate of its own, because that one needs another nalgebra.
//!
//! Both get the same residuals and the same derivatives (dual numbers) and begin at the same start, in the same scale. Ours also looks
//! for the answer nearest to the start; theirs does not.
#![allow(dead_code, clippy::unwrap_used, clippy::print_stdout, reason = "a bench")]

#[path = "../../it/numeric_systems.rs"]
mod numeric_systems;

use std::time::Instant;

use levenberg_marquardt::{LeastSquaresProblem, LevenbergMarquardt};
use nalgebra::storage::Owned;
use nalgebra::{DMatrix, DVector, Dyn};
use numeric_systems::{Posed, judged};
use tracewheel::numeric::{Ending, Equations, Unknowns, settle};

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

/// The best of several runs, in microseconds.
fn micros(mut run: impl FnMut()) -> f64 {
    let once = {
        let begin = Instant::now();
        run();
        begin.elapsed().as_secs_f64()
    };
    let times = ((0.02 / once.max(1e-9)) as usize).clamp(3, 20_000);
    (0..5)
        .map(|_| {
            let begin = Instant::now();
            (0..times).for_each(|_| run());
            begin.elapsed().as_secs_f64() * 1e6 / times as f64
        })
        .fold(f64::INFINITY, f64::min)
}

fn largest(r: &[f64]) -> f64 {
    r.iter().fold(0.0, |w, r| f64::max(w, r.abs()))
}

/// Pairs of circles that meet, one after the other, each a little further on: two unknowns a pair, with limits.
struct Ring {
    pairs: usize,
    odd: bool,
}

impl Ring {
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

fn main() {
    println!("the same systems without limits, microseconds a solve (evaluations)");
    let free = |p: &Posed| {
        p.least.iter().all(|v| *v == f64::NEG_INFINITY) && p.most.iter().all(|v| *v == f64::INFINITY)
    };
    let (mut sum, mut product, mut count, mut missed) = ([0.0; 2], 0.0, 0, Vec::new());
    for posed in judged().iter().filter(|p| free(p) && p.count >= p.start.len()) {
        let found = posed.settle();
        let (answer, evaluations) = theirs(posed);
        let (ours_left, theirs_left) = (largest(&found.residuals), largest(&(posed.plain)(&answer)));
        let (a, b) = (micros(|| drop(posed.settle())), micros(|| drop(theirs(posed))));
        println!(
            "{:30} {a:9.2} ({:3})  {b:9.2} ({evaluations:3})  ratio {:.2}  left {ours_left:.0e} / {theirs_left:.0e}",
            posed.name,
            found.evaluations,
            a / b
        );
        sum[0] += a;
        sum[1] += b;
        product += (a / b).ln();
        count += 1;
        if found.ending == Ending::True && theirs_left > 1e-6 {
            missed.push(posed.name);
        }
    }
    println!(
        "together {:.1} against {:.1}: ratio {:.2}, geometric mean {:.2} of {count}; not solved by the other: {missed:?}",
        sum[0],
        sum[1],
        sum[0] / sum[1],
        (product / f64::from(count)).exp()
    );
    println!("with limits, microseconds a solve");
    for (pairs, odd) in [(0, true), (1, true), (3, false), (30, false)] {
        let mut ring = Ring { pairs, odd };
        let n = ring.unknowns();
        let start: Vec<f64> = (0..n).map(|i| if i % 2 == 0 { 60.0 } else { 70.0 }).collect();
        let (scale, least, most) = (vec![10.0; n], vec![1.0; n], vec![300.0; n]);
        let unknowns = Unknowns { start: &start, scale: &scale, least: &least, most: &most };
        let found = settle(&unknowns, &mut ring);
        assert_eq!(found.ending, Ending::True);
        let time = micros(|| drop(settle(&unknowns, &mut ring)));
        println!("{n:3} unknowns {time:9.2} ({} evaluations)", found.evaluations);
    }
}
