//! Linear least squares within a box: the step of phase 1.

use std::rc::Rc;

use super::factor::Factor;
use super::system::{Point, System, add_transposed};

/// The step `p` that minimises `|c + J p|^2 + damping |p|^2` with `z + p` within the limits; the shortest, where many do.
pub(super) struct BoxStep {
    pub step: Vec<f64>,
    /// What the linear model leaves: `c + J p`.
    pub left: Vec<f64>,
    /// The free unknowns' factor of the last round, and the shares of `-c` in it.
    pub factor: Rc<Factor>,
    pub shares: Vec<f64>,
}

/// Exact active set: an unknown that would leave is stopped at its limit, one that is pressed inwards is let go.
/// Bounded by `3 n + 10` rounds; a step cut short there is still within the limits and downhill.
pub(super) fn box_step(system: &System, here: &Point, c: &[f64], damping: f64) -> Option<BoxStep> {
    let (m, n) = (system.m, system.n);
    let room = |i: usize| (system.low[i] - here.z[i], system.high[i] - here.z[i]);
    let mut pull = vec![0.0; n];
    add_transposed(&here.rows, c, &mut pull);
    let mut held: Vec<bool> = (0..n)
        .map(|i| {
            let (down, up) = room(i);
            (down >= 0.0 && pull[i] >= 0.0) || (up <= 0.0 && pull[i] <= 0.0)
        })
        .collect();
    let mut step = vec![0.0; n];
    let mut left = c.to_vec();
    let mut last = None;
    for round in 0..3 * n + 10 {
        let free: Vec<usize> = (0..n).filter(|&i| !held[i]).collect();
        let factor = system.factor(&here.rows, &free, false)?;
        // What the held ones already do is part of the right side.
        let aim: Vec<f64> = (0..m)
            .map(|e| {
                let row = &here.rows[e * n..(e + 1) * n];
                -c[e] - (0..n).filter(|&i| held[i]).map(|i| row[i] * step[i]).sum::<f64>()
            })
            .collect();
        let shares = factor.shares(&aim);
        let wanted = factor.solve(&shares, damping);
        let mut share = 1.0;
        let mut stopped = None;
        for (k, &i) in free.iter().enumerate() {
            let (down, up) = room(i);
            let limit = if wanted[k] < down {
                down
            } else if wanted[k] > up {
                up
            } else {
                continue;
            };
            let reach = ((limit - step[i]) / (wanted[k] - step[i])).clamp(0.0, 1.0);
            if stopped.is_none() || reach < share {
                (share, stopped) = (reach, Some((i, limit)));
            }
        }
        for (k, &i) in free.iter().enumerate() {
            step[i] =
                if share == 1.0 && stopped.is_none() { wanted[k] } else { step[i] + share * (wanted[k] - step[i]) };
        }
        if let Some((i, limit)) = stopped {
            (step[i], held[i]) = (limit, true);
        }
        for (e, l) in left.iter_mut().enumerate() {
            *l = c[e] + here.rows[e * n..(e + 1) * n].iter().zip(&step).map(|(a, b)| a * b).sum::<f64>();
        }
        last = Some((factor, shares));
        if stopped.is_some() {
            continue;
        }
        // Let go of the one that is pressed inwards most; an insignificant pressure is rounding.
        let mut slope = vec![0.0; n];
        add_transposed(&here.rows, &left, &mut slope);
        let floor = 1e-12 * slope_floor(&here.rows, c, n);
        let mut worst = (floor, None);
        for i in (0..n).filter(|&i| held[i]) {
            let (down, up) = room(i);
            let pressure = slope[i] + damping * step[i];
            let inward = if step[i] <= down && step[i] < up {
                -pressure
            } else if step[i] >= up && step[i] > down {
                pressure
            } else {
                0.0
            };
            if inward > worst.0 {
                worst = (inward, Some(i));
            }
        }
        match worst.1 {
            Some(i) if round < 3 * n + 9 => held[i] = false,
            _ => break,
        }
    }
    last.map(|(factor, shares)| BoxStep { step, left, factor, shares })
}

/// The size below which a gradient of these rows cannot be told from rounding (before the factor).
fn slope_floor(rows: &[f64], c: &[f64], n: usize) -> f64 {
    rows.chunks_exact(n.max(1)).zip(c).map(|(row, c)| row.iter().fold(0.0_f64, |a, b| a.max(b.abs())) * c.abs()).sum()
}
