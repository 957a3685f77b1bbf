//! The equations as the solver sees them: scaled unknowns, checked values, counted evaluations.

use std::cell::RefCell;
use std::rc::Rc;

use super::factor::Factor;
use crate::base::tolerance;

/// Most steps of one [`settle`](super::settle()), all phases together: a constant of the format.
pub const ITERATIONS: u32 = 200;
/// Most evaluations (residuals or derivatives, each counts one) of one [`settle`](super::settle()).
pub const EVALUATIONS: u32 = 2000;

/// How far the first step may go, for each unknown,
/// in steps of its scale (200 mm, 100°): long enough for a draft, short enough not to leap into another branch.
const FIRST_RADIUS: f64 = 20.0;

/// What is to be found. All four have one entry for each unknown, in mm, radians or plain numbers.
#[derive(Clone, Copy, Debug)]
pub struct Unknowns<'a> {
    /// Where each starts, and what the settled solution is nearest to. Clamped into the limits for the first step.
    pub start: &'a [f64],
    /// The natural step of each, above zero.
    pub scale: &'a [f64],
    /// Lower limits; may be `-inf`.
    pub least: &'a [f64],
    /// Upper limits; may be `inf`.
    pub most: &'a [f64],
}

impl Unknowns<'_> {
    /// Whether the four agree in number and can be computed with.
    pub(super) fn are_sound(&self) -> bool {
        let n = self.start.len();
        let same = self.scale.len() == n && self.least.len() == n && self.most.len() == n;
        same && (0..n).all(|i| {
            self.start[i].is_finite()
                && self.scale[i].is_finite()
                && self.scale[i] > 0.0
                && self.least[i] <= self.most[i]
                && self.least[i] < f64::INFINITY
                && self.most[i] > f64::NEG_INFINITY
        })
    }
}

/// Equations to be made true: residuals in mm, zero where true.
pub trait Equations {
    /// How many equations there are.
    fn count(&self) -> usize;
    /// Residuals at `x`; false where something cannot be computed or is not finite.
    fn residuals(&mut self, x: &[f64], out: &mut [f64]) -> bool;
    /// Residuals and their derivatives, one row of `x.len()` for each equation; false as in [`Equations::residuals`].
    fn jacobian(&mut self, x: &[f64], out: &mut [f64], rows: &mut [f64]) -> bool;
}

/// A place in scaled unknowns, `z = (x - start) / scale`, with what is known there.
#[derive(Clone, Debug)]
pub(super) struct Point {
    pub z: Vec<f64>,
    pub residuals: Vec<f64>,
    /// Derivatives by `z`, row by row.
    pub rows: Vec<f64>,
}

impl Point {
    pub fn new(m: usize, n: usize) -> Self {
        Self { z: vec![0.0; n], residuals: vec![0.0; m], rows: vec![0.0; m * n] }
    }
    pub fn copy_from(&mut self, other: &Self) {
        self.z.copy_from_slice(&other.z);
        self.residuals.copy_from_slice(&other.residuals);
        self.rows.copy_from_slice(&other.rows);
    }
}

/// The equations with their unknowns, limits in scaled unknowns, and the counts.
pub(super) struct System<'a> {
    unknowns: &'a Unknowns<'a>,
    equations: &'a mut dyn Equations,
    pub m: usize,
    pub n: usize,
    pub low: Vec<f64>,
    pub high: Vec<f64>,
    /// Where a trial is evaluated, kept to spare allocations.
    pub trial: Point,
    x: Vec<f64>,
    pub iterations: u32,
    pub evaluations: u32,
    /// How far one step may go (length in scaled unknowns).
    pub radius: f64,
    /// What was factored last.
    factored: RefCell<Option<Factored>>,
}

/// A factor, and of what.
struct Factored {
    rows: Vec<f64>,
    columns: Vec<usize>,
    with_null: bool,
    factor: Rc<Factor>,
}

impl<'a> System<'a> {
    pub fn new(unknowns: &'a Unknowns<'a>, equations: &'a mut dyn Equations) -> Self {
        let (m, n) = (equations.count(), unknowns.start.len());
        let scaled = |limit: &[f64]| (0..n).map(|i| (limit[i] - unknowns.start[i]) / unknowns.scale[i]).collect();
        let (low, high) = (scaled(unknowns.least), scaled(unknowns.most));
        let radius = FIRST_RADIUS * (n as f64).sqrt();
        let (trial, x) = (Point::new(m, n), vec![0.0; n]);
        Self {
            unknowns,
            equations,
            m,
            n,
            low,
            high,
            trial,
            x,
            iterations: 0,
            evaluations: 0,
            radius,
            factored: RefCell::default(),
        }
    }

    /// The factor of these columns of `rows`; the last one is kept, because both phases and the end ask for it at one point.
    pub fn factor(&self, rows: &[f64], columns: &[usize], with_null: bool) -> Option<Rc<Factor>> {
        // Of a matrix that is not wider than high what has no effect is found in any case.
        let with_null = with_null || self.m >= columns.len();
        let mut last = self.factored.borrow_mut();
        if let Some(known) = &*last
            && known.with_null == with_null
            && known.columns == columns
            && known.rows == rows
        {
            return Some(Rc::clone(&known.factor));
        }
        let factor = Rc::new(Factor::of(rows, self.m, self.n, columns, with_null)?);
        let (rows, columns) = (rows.to_vec(), columns.to_vec());
        *last = Some(Factored { rows, columns, with_null, factor: Rc::clone(&factor) });
        Some(factor)
    }

    /// The unknown itself. On a limit it is that limit's very number.
    pub fn unscaled(&self, z: f64, i: usize) -> f64 {
        let u = self.unknowns;
        if z <= self.low[i] {
            u.least[i]
        } else if z >= self.high[i] {
            u.most[i]
        } else {
            (u.start[i] + u.scale[i] * z).clamp(u.least[i], u.most[i])
        }
    }

    /// Puts `from + step` into the trial point, within the limits.
    pub fn try_step(&mut self, from: &[f64], step: &[f64], share: f64) {
        for i in 0..self.n {
            self.trial.z[i] = (from[i] + share * step[i]).clamp(self.low[i], self.high[i]);
        }
    }

    /// Counts one iteration; false when there are none left.
    pub fn next_iteration(&mut self) -> bool {
        let more = self.iterations < ITERATIONS && !self.is_spent();
        self.iterations += u32::from(more);
        more
    }

    pub fn is_spent(&self) -> bool {
        self.evaluations >= EVALUATIONS
    }

    fn prepare(&mut self) -> bool {
        if self.is_spent() {
            return false;
        }
        self.evaluations += 1;
        for i in 0..self.n {
            self.x[i] = self.unscaled(self.trial.z[i], i);
        }
        true
    }

    /// Residuals at the trial point.
    pub fn evaluate(&mut self) -> bool {
        self.prepare()
            && self.equations.residuals(&self.x, &mut self.trial.residuals)
            && self.trial.residuals.iter().all(|r| r.is_finite())
    }

    /// Residuals and derivatives at the trial point.
    pub fn differentiate(&mut self) -> bool {
        let fine = self.prepare()
            && self.equations.jacobian(&self.x, &mut self.trial.residuals, &mut self.trial.rows)
            && self.trial.residuals.iter().all(|r| r.is_finite());
        if !fine {
            return false;
        }
        for row in self.trial.rows.chunks_exact_mut(self.n.max(1)) {
            for (slope, scale) in row.iter_mut().zip(self.unknowns.scale) {
                *slope *= scale;
            }
        }
        self.trial.rows.iter().all(|s| s.is_finite())
    }

    /// The change of `rows^T weights` along `direction`, by a finite difference that stays within the limits: one
    /// evaluation. None where there is no room or nothing can be computed.
    pub fn bend(&mut self, here: &Point, direction: &[f64], weigh: &dyn Fn(&Point, &mut [f64])) -> Option<Vec<f64>> {
        // Trades truncation (grows with the step) against rounding (grows against it).
        const PROBE: f64 = 1e-4;
        const ROOM: f64 = 1e-8;
        let room = |sign: f64| {
            let mut free = f64::INFINITY;
            for (i, along) in direction.iter().enumerate() {
                let d = sign * along;
                if d > 0.0 {
                    free = free.min((self.high[i] - here.z[i]) / d);
                } else if d < 0.0 {
                    free = free.min((self.low[i] - here.z[i]) / d);
                }
            }
            free
        };
        let (ahead, behind) = (room(1.0), room(-1.0));
        let signed = if ahead >= behind.min(PROBE) { ahead.min(PROBE) } else { -behind.min(PROBE) };
        if signed.abs() < ROOM {
            return None;
        }
        self.try_step(&here.z, direction, signed);
        if !self.differentiate() {
            return None;
        }
        let (mut before, mut after) = (vec![0.0; self.n], vec![0.0; self.n]);
        weigh(here, &mut before);
        weigh(&self.trial, &mut after);
        for (a, b) in after.iter_mut().zip(&before) {
            *a = (*a - b) / signed;
        }
        Some(after)
    }
}

/// Largest distance from zero.
pub(super) fn largest(values: &[f64]) -> f64 {
    values.iter().fold(0.0, |worst, v| v.abs().max(worst))
}

/// Sum of products.
pub(super) fn dot(a: &[f64], b: &[f64]) -> f64 {
    a.iter().zip(b).map(|(x, y)| x * y).sum()
}

/// `rows^T weights`, added to `out`.
pub(super) fn add_transposed(rows: &[f64], weights: &[f64], out: &mut [f64]) {
    let n = out.len();
    for (row, w) in rows.chunks_exact(n.max(1)).zip(weights) {
        for (o, slope) in out.iter_mut().zip(row) {
            *o += slope * w;
        }
    }
}

/// Whether all residuals are true, as the whole program understands it.
pub(super) fn are_true(residuals: &[f64]) -> bool {
    largest(residuals) <= tolerance::EQUAL
}
