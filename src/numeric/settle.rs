//! The settled solution, and how it ended.

use super::nearest::nearest;
use super::reach::{Reached, reach};
use super::system::{Equations, Point, System, Unknowns, are_true, dot};

/// Take part in what stays free: more than this share of the motion.
const TAKES_PART: f64 = 1e-6;

/// How a solve ended.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ending {
    /// All residuals are at most [`EQUAL`](crate::base::tolerance::EQUAL); the point is settled.
    True,
    /// They cannot all hold within the limits; the point is a least-squares point.
    NotTrue,
    /// Iterations or evaluations ran out before the point was settled; it is the best that was seen.
    RanOut,
    /// Nothing can be computed at the start, or start, scale and limits cannot be computed with.
    StartNotComputable,
}

/// A limit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Bound {
    /// The lower one.
    Least,
    /// The upper one.
    Most,
}

/// What [`settle`] found.
#[derive(Clone, Debug, PartialEq)]
pub struct Settled {
    /// The unknowns, always within their limits.
    pub x: Vec<f64>,
    /// The residuals at `x`, mm; zeros where the start cannot be computed.
    pub residuals: Vec<f64>,
    /// How it ended.
    pub ending: Ending,
    /// Steps taken, at most [`ITERATIONS`](super::ITERATIONS).
    pub iterations: u32,
    /// Evaluations used, at most [`EVALUATIONS`](super::EVALUATIONS).
    pub evaluations: u32,
    /// For each unknown, the limit it rests on. Where both limits are one number: the lower.
    pub at_limit: Vec<Option<Bound>>,
    /// In how many independent ways the unknowns that rest on no limit can move without a residual changing (to first
    /// order).
    pub freedom: usize,
    /// Which unknowns move in these ways.
    pub free: Vec<bool>,
}

/// The local minimiser, reached from the start, of `sum(((x - start) / scale)^2)` subject to equations and limits.
///
/// - Redundant equations that agree are true; a system without freedom is simply solved.
/// - Equations that cannot hold: the least-squares point within the limits; among several the one nearest the start.
/// - A start outside the limits is clamped for the first step; nearness is still measured from the start itself.
/// - A flat start (all derivatives zero, like `x^2 = 1` from 0) is left along the direction in which the sum of squares
///   falls most, first the way in which its largest unknown grows, so the answer is `x = 1`; the same holds for a saddle
///   of the distance along the equations. Where nothing falls, the start stays and is `NotTrue`.
/// - A trial that cannot be computed shortens the step.
pub fn settle(unknowns: &Unknowns, equations: &mut dyn Equations) -> Settled {
    settle_from(unknowns, unknowns.start, equations)
}

/// As [`settle`], but the first step is taken from `begin`; nearness is still measured from `unknowns.start`.
/// For a gesture that follows the previous answer: where several answers exist, it may find another one than [`settle`].
pub fn settle_from(unknowns: &Unknowns, begin: &[f64], equations: &mut dyn Equations) -> Settled {
    let n = unknowns.start.len();
    if !unknowns.are_sound() || begin.len() != n || !begin.iter().all(|b| b.is_finite()) {
        return not_computable(begin.to_vec(), equations.count(), 0);
    }
    let mut system = System::new(unknowns, equations);
    let mut here = Point::new(system.m, n);
    let first: Vec<f64> = (0..n).map(|i| (begin[i] - unknowns.start[i]) / unknowns.scale[i]).collect();
    system.try_step(&first, &first, 0.0);
    if !system.differentiate() {
        let x = (0..n).map(|i| system.unscaled(system.trial.z[i], i)).collect();
        return not_computable(x, system.m, system.evaluations);
    }
    here.copy_from(&system.trial);
    let ending = run(&mut system, &mut here);
    finish(&system, &here, ending)
}

fn run(system: &mut System, here: &mut Point) -> Ending {
    let zero = vec![0.0; system.m];
    match reach(system, here, &zero) {
        Reached::Spent => Ending::RanOut,
        Reached::Met => match nearest(system, here, &zero) {
            Reached::Spent => Ending::RanOut,
            _ => Ending::True,
        },
        Reached::Stationary => {
            // Among equally good points the nearest: the residuals reached become what must be kept.
            let (safe, kept) = (here.clone(), here.residuals.clone());
            let settled = nearest(system, here, &kept);
            let (before, after) = (dot(&kept, &kept), dot(&here.residuals, &here.residuals));
            if after > before * (1.0 + 1e-12) || dot(&here.z, &here.z) > dot(&safe.z, &safe.z) {
                here.copy_from(&safe);
            }
            match settled {
                _ if are_true(&here.residuals) => Ending::True,
                Reached::Spent => Ending::RanOut,
                _ => Ending::NotTrue,
            }
        }
    }
}

fn finish(system: &System, here: &Point, ending: Ending) -> Settled {
    let n = system.n;
    let at_limit: Vec<Option<Bound>> = (0..n)
        .map(|i| match here.z[i] {
            z if z <= system.low[i] => Some(Bound::Least),
            z if z >= system.high[i] => Some(Bound::Most),
            _ => None,
        })
        .collect();
    let inside: Vec<usize> = (0..n).filter(|&i| at_limit[i].is_none()).collect();
    let mut free = vec![false; n];
    let mut freedom = 0;
    if let Some(factor) = system.factor(&here.rows, &inside, true) {
        freedom = inside.len() - factor.rank();
        for (&i, loose) in inside.iter().zip(factor.looseness()) {
            free[i] = loose > TAKES_PART;
        }
    }
    Settled {
        x: (0..n).map(|i| system.unscaled(here.z[i], i)).collect(),
        residuals: here.residuals.clone(),
        ending,
        iterations: system.iterations,
        evaluations: system.evaluations,
        at_limit,
        freedom,
        free,
    }
}

fn not_computable(x: Vec<f64>, m: usize, evaluations: u32) -> Settled {
    let n = x.len();
    Settled {
        x,
        residuals: vec![0.0; m],
        ending: Ending::StartNotComputable,
        iterations: 0,
        evaluations,
        at_limit: vec![None; n],
        freedom: 0,
        free: vec![false; n],
    }
}
