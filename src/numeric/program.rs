//! A small strictly convex quadratic program: minimise `y^T H y / 2 + h^T y` subject to `rows y >= bounds`.
//!
//! The dual method of D. Goldfarb and A. Idnani, "A numerically stable dual method for solving strictly convex
//! quadratic programs" (Mathematical Programming 27, 1983): it starts at the free minimum and adds violated rows one by
//! one, so it needs no feasible start and cannot cycle. Exact, for the few dozen unknowns it is meant for.

use super::factor::{backward, cholesky, forward};
use super::system::dot;

/// The minimiser and the pressure on every row, zero where a row does not hold it back.
pub(super) struct Minimum {
    pub y: Vec<f64>,
    pub pressures: Vec<f64>,
}

/// None where `H` is not positive, no point fulfils the rows, or `20 (rows + 1)` rounds do not suffice.
pub(super) fn minimise(hessian: &[f64], linear: &[f64], rows: &[Vec<f64>], bounds: &[f64]) -> Option<Minimum> {
    let d = linear.len();
    let mut lower = hessian.to_vec();
    if !cholesky(&mut lower, d) {
        return None;
    }
    // In w = L^T y the program is: the point nearest -L^-1 h within half-spaces.
    let mut w: Vec<f64> = linear.iter().map(|h| -h).collect();
    forward(&lower, d, &mut w);
    let normal = |k: usize| {
        let mut out = rows[k].clone();
        forward(&lower, d, &mut out);
        out
    };
    let mut working: Vec<(usize, Vec<f64>, f64)> = Vec::new();
    let mut rounds = 20 * (rows.len() + 1);
    'add: loop {
        let y = unscaled(&lower, &w, d);
        let mut worst = (0.0, None);
        for (k, row) in rows.iter().enumerate() {
            let slack = dot(row, &y) - bounds[k];
            let noise = 1e-12 * (1.0 + bounds[k].abs());
            if slack < -noise && slack < worst.0 && working.iter().all(|a| a.0 != k) {
                worst = (slack, Some(k));
            }
        }
        let Some(k) = worst.1 else {
            let mut pressures = vec![0.0; rows.len()];
            for (k, _, pressure) in &working {
                pressures[*k] = *pressure;
            }
            return Some(Minimum { y, pressures });
        };
        let entering = normal(k);
        let mut pressure = 0.0;
        loop {
            rounds -= 1;
            if rounds == 0 {
                return None;
            }
            let (weights, direction) = split(&working, &entering);
            let square = dot(&direction, &direction);
            // A row that the working ones already span cannot move the point, only exchange with one of them.
            let full = if square > 1e-20 * dot(&entering, &entering) {
                let slack = dot(&rows[k], &unscaled(&lower, &w, d)) - bounds[k];
                (-slack / square).max(0.0)
            } else {
                f64::INFINITY
            };
            let mut partial = (f64::INFINITY, 0);
            for (j, weight) in weights.iter().enumerate() {
                if *weight > 1e-14 && working[j].2 / weight < partial.0 {
                    partial = (working[j].2 / weight, j);
                }
            }
            let t = full.min(partial.0);
            if t == f64::INFINITY {
                return None;
            }
            for (a, weight) in working.iter_mut().zip(&weights) {
                a.2 = (a.2 - t * weight).max(0.0);
            }
            pressure += t;
            if full.is_finite() {
                w.iter_mut().zip(&direction).for_each(|(w, z)| *w += t * z);
            }
            if full <= partial.0 {
                working.push((k, entering, pressure));
                continue 'add;
            }
            working.remove(partial.1);
        }
    }
}

fn unscaled(lower: &[f64], w: &[f64], d: usize) -> Vec<f64> {
    let mut y = w.to_vec();
    backward(lower, d, &mut y);
    y
}

/// `entering = sum(weights * working normals) + direction`, the direction at right angles to all of them.
fn split(working: &[(usize, Vec<f64>, f64)], entering: &[f64]) -> (Vec<f64>, Vec<f64>) {
    let q = working.len();
    if q == 0 {
        return (Vec::new(), entering.to_vec());
    }
    let d = entering.len();
    // Gram-Schmidt, each vector twice: "twice is enough" (W. Kahan, in Parlett's The Symmetric Eigenvalue Problem).
    let mut basis: Vec<Vec<f64>> = Vec::with_capacity(q);
    let mut upper = vec![0.0; q * q];
    let reduce = |vector: &mut [f64], basis: &[Vec<f64>], out: &mut dyn FnMut(usize, f64)| {
        for _ in 0..2 {
            for (i, b) in basis.iter().enumerate() {
                let share = dot(b, vector);
                out(i, share);
                vector.iter_mut().zip(b).for_each(|(v, b)| *v -= share * b);
            }
        }
    };
    for (j, (_, normal, _)) in working.iter().enumerate() {
        let mut v = normal.clone();
        reduce(&mut v, &basis, &mut |i, share| upper[i * q + j] += share);
        let norm = dot(&v, &v).sqrt();
        upper[j * q + j] = norm;
        v.iter_mut().for_each(|v| *v /= norm.max(f64::MIN_POSITIVE));
        basis.push(v);
    }
    let mut direction = entering.to_vec();
    let mut weights = vec![0.0; q];
    reduce(&mut direction, &basis, &mut |i, share| weights[i] += share);
    if q >= d {
        direction.iter_mut().for_each(|z| *z = 0.0);
    }
    for i in (0..q).rev() {
        let sum: f64 = (i + 1..q).map(|k| upper[i * q + k] * weights[k]).sum();
        weights[i] = (weights[i] - sum) / upper[i * q + i].max(f64::MIN_POSITIVE);
    }
    (weights, direction)
}
