//! Phase 2: among all points that fulfil the equations, the one nearest the start.
//!
//! Sequential quadratic programming: each step returns to the linearised equations (`boxed.rs`) and, along what they
//! leave free, goes to the minimum of the squared distance plus the equations' curvature within the limits
//! (`program.rs`). The curvature is learnt from the derivatives at successive points (damped BFGS, M. J. D. Powell
//! 1978); it starts as that of the distance alone, which is exact where the equations are straight.

use super::boxed::box_step;
use super::factor::eigen;
use super::program::{Minimum, minimise};
use super::reach::{Reached, crest_shares, reach};
use super::system::{Point, System, add_transposed, dot, largest};
use crate::base::tolerance;

/// Steps shorter than this end the phase, in steps of the scale: 1e-9 mm for lengths.
const STILL: f64 = 1e-10;
/// Steps shorter than this are no longer judged by the merit, which cannot see them above its rounding.
const TRUSTED: f64 = 1e-5;
/// Halvings of one step.
const TRIES: usize = 25;
/// Trusted steps that do not halve: the end is the rounding of the derivatives.
const PATIENCE: u32 = 3;
/// Saddles that are left in one solve.
const WAYS_OUT: u32 = 4;

struct Plan {
    step: Vec<f64>,
    /// Lagrange multipliers of the equations.
    multipliers: Vec<f64>,
    freedom: usize,
}

/// Moves `here`, at which `residuals = target` (within rounding), to the nearest such point. `here` is always a point
/// that fulfils the equations at the end, also when spent.
pub(super) fn nearest(system: &mut System, here: &mut Point, target: &[f64]) -> Reached {
    let mut ways_out = 0;
    if system.n == 0 {
        return Reached::Met;
    }
    loop {
        let safe = here.clone();
        let Some((ended, multipliers)) = slide(system, here, target) else { return Reached::Met };
        // The last step may have left a rounding of its own.
        if reach(system, here, target) != Reached::Met {
            here.copy_from(&safe);
            return Reached::Spent;
        }
        if ended != Reached::Met || ways_out == WAYS_OUT {
            return ended;
        }
        match leave_saddle(system, here, target, &multipliers) {
            Some(true) => ways_out += 1,
            Some(false) => return Reached::Met,
            None => return Reached::Spent,
        }
    }
}

/// Slides to a point where the distance no longer falls. None where nothing is free.
fn slide(system: &mut System, here: &mut Point, target: &[f64]) -> Option<(Reached, Vec<f64>)> {
    let (m, n) = (system.m, system.n);
    let mut bend: Vec<f64> = identity(n);
    let mut c = vec![0.0; m];
    let mut weight = 0.0_f64;
    let (mut last, mut stalled) = (f64::INFINITY, 0);
    let enough = difference(&here.residuals, target, &mut c).max(tolerance::SOLVED);
    loop {
        let worst = difference(&here.residuals, target, &mut c);
        let mut plan = plan(system, here, &c, &bend);
        if plan.is_none() {
            bend = identity(n);
            plan = self::plan(system, here, &c, &bend);
        }
        let plan = plan?;
        if plan.freedom == 0 && worst <= enough {
            return None;
        }
        let size = largest(&plan.step);
        stalled = if size < TRUSTED && size > 0.5 * last { stalled + 1 } else { 0 };
        last = size;
        if worst <= enough && (size <= STILL || stalled >= PATIENCE) {
            return Some((Reached::Met, plan.multipliers));
        }
        if !system.next_iteration() {
            return Some((Reached::Spent, plan.multipliers));
        }
        weight = weight.max(1.5 * largest(&plan.multipliers)).max(1e-3);
        let rows = here.rows.clone();
        let from = here.z.clone();
        if !step_along(system, here, target, &c, &plan, weight) {
            let ended = if system.is_spent() { Reached::Spent } else { Reached::Met };
            return Some((ended, plan.multipliers));
        }
        // What the step taught of the Lagrangian's curvature.
        let taken: Vec<f64> = here.z.iter().zip(&from).map(|(a, b)| a - b).collect();
        let mut change = taken.clone();
        let turned: Vec<f64> = here.rows.iter().zip(&rows).map(|(a, b)| a - b).collect();
        add_transposed(&turned, &plan.multipliers, &mut change);
        learn(&mut bend, &taken, change);
    }
}

/// The next step: back to the linearised equations, then to the minimum along what they leave free.
fn plan(system: &System, here: &Point, c: &[f64], bend: &[f64]) -> Option<Plan> {
    let n = system.n;
    let columns: Vec<usize> = (0..n).collect();
    let factor = system.factor(&here.rows, &columns, true)?;
    let freedom = n - factor.rank();
    let mut step = if largest(c) > 0.0 { box_step(system, here, c, 0.0)?.step } else { vec![0.0; n] };
    let mut pressures = vec![0.0; n];
    if freedom > 0 {
        let free: Vec<&[f64]> = factor.null.chunks_exact(n).collect();
        let bent: Vec<Vec<f64>> = free.iter().map(|v| product(bend, v)).collect();
        let mut slope = product(bend, &step);
        slope.iter_mut().zip(&here.z).for_each(|(s, z)| *s += z);
        let hessian: Vec<f64> = free.iter().flat_map(|v| bent.iter().map(|b| dot(v, b))).collect();
        let linear: Vec<f64> = free.iter().map(|v| dot(v, &slope)).collect();
        let (mut rows, mut bounds, mut owners) = (Vec::new(), Vec::new(), Vec::new());
        for i in 0..n {
            let row: Vec<f64> = free.iter().map(|v| v[i]).collect();
            // A row of rounding only would ask for the impossible.
            if row.iter().all(|r| r.abs() < 1e-12) {
                continue;
            }
            let (low, high) = (system.low[i], system.high[i]);
            if low.is_finite() {
                rows.push(row.clone());
                bounds.push(low - here.z[i] - step[i]);
                owners.push((i, 1.0));
            }
            if high.is_finite() {
                let row = row.iter().map(|r| -r).collect();
                rows.push(row);
                bounds.push(here.z[i] + step[i] - high);
                owners.push((i, -1.0));
            }
        }
        let Minimum { y, pressures: pushed } = minimise(&hessian, &linear, &rows, &bounds)?;
        for (v, share) in free.iter().zip(&y) {
            step.iter_mut().zip(*v).for_each(|(p, v)| *p += share * v);
        }
        for ((i, sign), pressure) in owners.iter().zip(&pushed) {
            if *pressure > 0.0 {
                pressures[*i] += sign * pressure;
                // Onto the limit itself, without the rounding of the basis.
                step[*i] = if *sign > 0.0 { system.low[*i] } else { system.high[*i] } - here.z[*i];
            }
        }
    }
    let mut rest = product(bend, &step);
    for i in 0..n {
        rest[i] = pressures[i] - rest[i] - here.z[i];
    }
    let multipliers = factor.solve_transposed(&rest);
    Some(Plan { step, multipliers, freedom })
}

/// Takes the step, shortened until the merit (half the squared distance plus weighted residuals) falls. False where no
/// share of it helps.
fn step_along(system: &mut System, here: &mut Point, target: &[f64], c: &[f64], plan: &Plan, weight: f64) -> bool {
    let merit = |at: &Point| {
        let untrue: f64 = at.residuals.iter().zip(target).map(|(r, t)| (r - t).abs()).sum();
        (0.5 * dot(&at.z, &at.z), weight * untrue)
    };
    let (distance, untrue) = merit(here);
    // The linear model's change; what the limits keep from being repaired is left out of the promise.
    let left: f64 = here.rows.chunks_exact(system.n).zip(c).map(|(row, c)| (c + dot(row, &plan.step)).abs()).sum();
    let promised = (untrue - weight * left - dot(&here.z, &plan.step)).max(0.0);
    let long = dot(&plan.step, &plan.step).sqrt();
    let trusted = largest(&plan.step) < TRUSTED;
    let mut share = (system.radius / long).min(1.0);
    for attempt in 0..TRIES {
        system.try_step(&here.z, &plan.step, share);
        let fine = system.differentiate();
        if system.is_spent() {
            return false;
        }
        let falls = |at: &Point| {
            let (d, u) = merit(at);
            (distance - d) + (untrue - u) >= 1e-4 * share * promised - 1e-14 * (distance + 1.0)
        };
        if fine && (trusted || falls(&system.trial)) {
            here.copy_from(&system.trial);
            return true;
        }
        if fine && attempt == 0 {
            // The full step may fail only because the equations curve away from it: repair that and look again.
            let mut off = vec![0.0; system.m];
            difference(&system.trial.residuals, target, &mut off);
            let mut ahead = here.clone();
            ahead.z.copy_from_slice(&system.trial.z);
            if let Some(repair) = box_step(system, &ahead, &off, 0.0) {
                system.try_step(&ahead.z, &repair.step, 1.0);
                if system.differentiate() && falls(&system.trial) {
                    here.copy_from(&system.trial);
                    return true;
                }
            }
        }
        share *= 0.5;
    }
    false
}

/// At a point where the distance neither falls nor rises it may still be a crest along the equations: looks at the
/// curvature there and goes down, if so. Some(true): moved; None: spent.
fn leave_saddle(system: &mut System, here: &mut Point, target: &[f64], multipliers: &[f64]) -> Option<bool> {
    // Without a pull on the equations the distance alone decides, and that has no crest.
    if largest(multipliers) <= STILL {
        return Some(false);
    }
    let n = system.n;
    let inside: Vec<usize> = (0..n).filter(|&i| here.z[i] > system.low[i] && here.z[i] < system.high[i]).collect();
    let Some(factor) = system.factor(&here.rows, &inside, true) else { return Some(false) };
    let mut directions = Vec::new();
    for v in factor.null.chunks_exact(inside.len().max(1)) {
        let mut direction = vec![0.0; n];
        inside.iter().zip(v).for_each(|(&i, v)| direction[i] = *v);
        directions.push(direction);
    }
    if directions.is_empty() {
        return Some(false);
    }
    let weigh = |at: &Point, out: &mut [f64]| add_transposed(&at.rows, multipliers, out);
    let mut matrix = Vec::new();
    for direction in &directions {
        let bent = system.bend(here, direction, &weigh);
        if system.is_spent() {
            return None;
        }
        for other in &directions {
            matrix.push(dot(direction, other) + bent.as_ref().map_or(0.0, |b| dot(b, other)));
        }
    }
    let Some(pairs) = eigen(&matrix, directions.len()) else { return Some(false) };
    let Some((value, vector)) = pairs.first().filter(|p| p.0 < -1e-6) else { return Some(false) };
    debug_assert!(*value < 0.0);
    let mut down = vec![0.0; n];
    for (direction, share) in directions.iter().zip(vector) {
        down.iter_mut().zip(direction).for_each(|(d, v)| *d += share * v);
    }
    let before = dot(&here.z, &here.z);
    let safe = here.clone();
    for share in crest_shares(&down) {
        system.try_step(&safe.z, &down, share);
        if system.differentiate() {
            here.copy_from(&system.trial);
            if reach(system, here, target) == Reached::Met && dot(&here.z, &here.z) < before * (1.0 - 1e-12) {
                return Some(true);
            }
        }
        here.copy_from(&safe);
        if system.is_spent() {
            return None;
        }
    }
    Some(false)
}

/// Powell's damped BFGS: the curvature stays positive whatever the equations do.
fn learn(bend: &mut [f64], taken: &[f64], mut change: Vec<f64>) {
    let n = taken.len();
    let bent = product(bend, taken);
    let along = dot(taken, &bent);
    if along <= 1e-24 {
        return;
    }
    let seen = dot(taken, &change);
    if seen < 0.2 * along {
        let share = 0.8 * along / (along - seen);
        change.iter_mut().zip(&bent).for_each(|(c, b)| *c = share * *c + (1.0 - share) * b);
    }
    let seen = dot(taken, &change);
    for i in 0..n {
        for j in 0..n {
            bend[i * n + j] += change[i] * change[j] / seen - bent[i] * bent[j] / along;
        }
    }
}

fn identity(n: usize) -> Vec<f64> {
    (0..n * n).map(|e| if e / n == e % n { 1.0 } else { 0.0 }).collect()
}

fn product(matrix: &[f64], vector: &[f64]) -> Vec<f64> {
    matrix.chunks_exact(vector.len()).map(|row| dot(row, vector)).collect()
}

/// `residuals - target` into `out`; the largest of it.
fn difference(residuals: &[f64], target: &[f64], out: &mut [f64]) -> f64 {
    for (o, (r, t)) in out.iter_mut().zip(residuals.iter().zip(target)) {
        *o = r - t;
    }
    largest(out)
}
