//! Phase 1: from a start to true equations, or to the best that is possible within the limits.

use super::boxed::{BoxStep, box_step};
use super::factor::eigen;
use super::system::{Point, System, add_transposed, dot, largest};
use crate::base::tolerance;

/// A step whose every part is shorter than this (in steps of the scale) no longer moves anything: 1e-8 mm for lengths.
pub(super) const STILL: f64 = 1e-9;
/// Trials for one step; each shortens it to a quarter at most.
const TRIES: usize = 20;
/// So many poor steps in a row, and the curvature of the equations is asked for.
const PATIENCE: u32 = 4;
/// A change of the sum of squares by less than this share is hidden in its rounding.
const NOISE: f64 = 1e-11;
/// Ways out of a flat place that are taken in one solve.
const WAYS_OUT: u32 = 6;

/// How a phase ended.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Reached {
    /// The equations are true to [`tolerance::SOLVED`], or to the rounding of their own terms.
    Met,
    /// No step makes the sum of squares smaller.
    Stationary,
    /// Out of iterations or evaluations.
    Spent,
}

enum Turn {
    Moved,
    Still,
    Spent,
}

/// What both kinds of step share.
struct Search<'t> {
    target: &'t [f64],
    /// `residuals - target` at the present point, and half its square.
    c: Vec<f64>,
    f: f64,
    ways_out: u32,
    last_turn: f64,
}

impl Search<'_> {
    fn square(&self, residuals: &[f64]) -> f64 {
        0.5 * residuals.iter().zip(self.target).map(|(r, t)| (r - t) * (r - t)).sum::<f64>()
    }
}

/// Brings `residuals - target` to zero, or its square to a minimum. `here` must have been evaluated.
pub(super) fn reach(system: &mut System, here: &mut Point, target: &[f64]) -> Reached {
    let mut search = Search { target, c: vec![0.0; system.m], f: 0.0, ways_out: 0, last_turn: f64::INFINITY };
    let (mut polished, mut poor, mut last, mut curved) = (false, 0, f64::INFINITY, false);
    loop {
        for (c, (r, t)) in search.c.iter_mut().zip(here.residuals.iter().zip(target)) {
            *c = r - t;
        }
        search.f = 0.5 * dot(&search.c, &search.c);
        let worst = largest(&search.c);
        if worst == 0.0 {
            return Reached::Met;
        }
        let before = search.f;
        let mut plain = None;
        let size = if curved && worst > tolerance::SOLVED {
            f64::INFINITY
        } else {
            let Some(found) = box_step(system, here, &search.c, 0.0) else { return Reached::Stationary };
            let size = largest(&found.step);
            plain = Some(found);
            if worst <= tolerance::SOLVED {
                // One step more where it still moves something: badly conditioned values gain digits.
                if polished || size <= STILL {
                    return Reached::Met;
                }
                polished = true;
            } else if size <= STILL {
                curved = true;
            }
            size
        };
        if !system.next_iteration() {
            return Reached::Spent;
        }
        let turned = match plain {
            Some(plain) if !(curved && worst > tolerance::SOLVED) => advance(system, here, &search, plain),
            _ => turn(system, here, &mut search),
        };
        match turned {
            Turn::Spent if worst > tolerance::SOLVED => return Reached::Spent,
            Turn::Still | Turn::Spent if worst <= tolerance::EQUAL => return Reached::Met,
            Turn::Still if curved => return Reached::Stationary,
            Turn::Still | Turn::Spent => curved = true,
            Turn::Moved => {
                let after = search.square(&here.residuals);
                if curved {
                    (curved, poor) = (after > 0.25 * before, 0);
                } else {
                    poor = if after > 0.5 * before && size > 0.3 * last { poor + 1 } else { 0 };
                    last = size;
                    curved = poor >= PATIENCE;
                }
            }
        }
    }
}

/// A Gauss-Newton step, damped only as far as the trust radius asks for.
fn advance(system: &mut System, here: &mut Point, search: &Search, plain: BoxStep) -> Turn {
    let mut damped;
    for attempt in 0..TRIES {
        let mut found = &plain;
        if length(&found.step) > 1.1 * system.radius {
            let damping = found.factor.damping(&found.shares, system.radius);
            let Some(step) = box_step(system, here, &search.c, damping) else { return Turn::Still };
            damped = step;
            found = &damped;
        }
        let long = length(&found.step);
        if long == 0.0 {
            return Turn::Still;
        }
        let promised = search.f - 0.5 * dot(&found.left, &found.left);
        if promised <= NOISE * search.f {
            return Turn::Still;
        }
        system.try_step(&here.z, &found.step, 1.0);
        let mut fine = if attempt == 0 { system.differentiate() } else { system.evaluate() };
        let gained = search.f - search.square(&system.trial.residuals);
        let better = fine && gained > 1e-4 * promised;
        if better && attempt > 0 {
            fine = system.differentiate();
        }
        if better && fine {
            here.copy_from(&system.trial);
            if gained > 0.75 * promised {
                system.radius = system.radius.max(4.0 * long);
            } else if gained < 0.25 * promised {
                system.radius = 0.5 * long;
            }
            return Turn::Moved;
        }
        if system.is_spent() {
            return Turn::Spent;
        }
        system.radius = if fine { 0.25 } else { 0.1 } * long.min(system.radius);
    }
    Turn::Still
}

/// A Newton step on the sum of squares, with its true curvature from finite differences; at a saddle or on a crest,
/// where every derivative is zero, a step along what falls away.
fn turn(system: &mut System, here: &mut Point, search: &mut Search) -> Turn {
    let n = system.n;
    let mut slope = vec![0.0; n];
    add_transposed(&here.rows, &search.c, &mut slope);
    let mut free: Vec<usize> = (0..n)
        .filter(|&i| {
            let (down, up) = (here.z[i] > system.low[i], here.z[i] < system.high[i]);
            (down || slope[i] < 0.0) && (up || slope[i] > 0.0)
        })
        .collect();
    let target = search.target;
    let weigh = |at: &Point, out: &mut [f64]| {
        let c: Vec<f64> = at.residuals.iter().zip(target).map(|(r, t)| r - t).collect();
        add_transposed(&at.rows, &c, out);
    };
    let mut curvature = vec![0.0; n * n];
    for &i in &free {
        let mut direction = vec![0.0; n];
        direction[i] = 1.0;
        if let Some(column) = system.bend(here, &direction, &weigh) {
            curvature[i * n..(i + 1) * n].copy_from_slice(&column);
        } else if system.is_spent() {
            return Turn::Spent;
        }
    }
    let mut step = vec![0.0; n];
    let mut crest = None;
    loop {
        let k = free.len();
        if k == 0 {
            break;
        }
        let matrix: Vec<f64> =
            free.iter().flat_map(|&i| free.iter().map(move |&j| i * n + j)).map(|e| curvature[e]).collect();
        let Some(pairs) = eigen(&matrix, k) else { return Turn::Still };
        let top = pairs.iter().fold(0.0_f64, |a, p| a.max(p.0.abs()));
        if top <= tolerance::NO_EFFECT {
            free.iter().for_each(|&i| step[i] = 0.0);
            break;
        }
        // What was stopped at a limit pulls on the rest.
        let held: Vec<usize> = (0..n).filter(|i| step[*i] != 0.0 && !free.contains(i)).collect();
        let pull: Vec<f64> = free
            .iter()
            .map(|&i| slope[i] + held.iter().map(|&j| curvature[j * n + i] * step[j]).sum::<f64>())
            .collect();
        free.iter().for_each(|&i| step[i] = 0.0);
        for (value, vector) in pairs.iter().filter(|p| p.0.abs() > 1e-7 * top) {
            let share = dot(vector, &pull) / value.abs();
            vector.iter().zip(&free).for_each(|(v, &i)| step[i] -= share * v);
        }
        crest = pairs.first().filter(|p| p.0 < -1e-4 * top).map(|p| {
            let mut direction = vec![0.0; n];
            p.1.iter().zip(&free).for_each(|(v, &i)| direction[i] = *v);
            direction
        });
        // Whatever would leave is stopped at its limit, for this step.
        let before = free.len();
        free.retain(|&i| {
            let limited = step[i].clamp(system.low[i] - here.z[i], system.high[i] - here.z[i]);
            let leaves = limited != step[i];
            step[i] = limited;
            !leaves
        });
        if free.len() == before {
            break;
        }
        crest = None;
    }
    let size = largest(&step);
    if size <= STILL {
        return match crest {
            Some(direction) if search.ways_out < WAYS_OUT => {
                search.ways_out += 1;
                leave_crest(system, here, &direction, &|at| search.square(&at.residuals))
            }
            _ => Turn::Still,
        };
    }
    let mut share = (system.radius / length(&step)).min(1.0);
    for _ in 0..TRIES {
        system.try_step(&here.z, &step, share);
        let promised: f64 = (0..n).map(|i| slope[i] * (here.z[i] - system.trial.z[i])).sum();
        let fine = system.differentiate();
        if system.is_spent() {
            return Turn::Spent;
        }
        let gained = search.f - search.square(&system.trial.residuals);
        // Below the rounding of the sum only the steps' own shrinking shows progress.
        let in_noise = promised.abs() <= NOISE * search.f;
        let better = if in_noise { size < 0.5 * search.last_turn } else { gained > 1e-4 * promised && promised > 0.0 };
        if fine && better {
            here.copy_from(&system.trial);
            search.last_turn = size;
            system.radius = system.radius.max(2.0 * share * length(&step));
            return Turn::Moved;
        }
        if fine && in_noise {
            return Turn::Still;
        }
        share *= 0.25;
    }
    Turn::Still
}

/// Leaves a crest along `direction`, both ways, towards the largest part's positive side first, by the longest step
/// that makes `height` smaller.
fn leave_crest(system: &mut System, here: &mut Point, direction: &[f64], height: &dyn Fn(&Point) -> f64) -> Turn {
    let before = height(here);
    for share in crest_shares(direction) {
        system.try_step(&here.z, direction, share);
        if system.differentiate() && height(&system.trial) < before {
            here.copy_from(&system.trial);
            return Turn::Moved;
        }
        if system.is_spent() {
            return Turn::Spent;
        }
    }
    Turn::Still
}

/// The steps tried along a direction that falls away on both sides: 1, -1, 1/4, -1/4, …; the first is the one in which
/// the largest part grows.
pub(super) fn crest_shares(direction: &[f64]) -> impl Iterator<Item = f64> {
    let mut largest = 0.0_f64;
    for &d in direction {
        if d.abs() > largest.abs() * (1.0 + 1e-9) {
            largest = d;
        }
    }
    let sign = if largest < 0.0 { -1.0 } else { 1.0 };
    (0..16).map(move |k| sign * if k % 2 == 0 { 1.0 } else { -1.0 } * libm::pow(0.25, f64::from(k / 2)))
}

fn length(step: &[f64]) -> f64 {
    dot(step, step).sqrt()
}
