//! Moving one piece: places all over the strip are tried, the best of them are slid downhill, and the piece goes to the best that was found. What it
//! weighs there is never more than before.

use super::kind::{Kind, Spot};
use super::strip::Strip;

/// Places tried in the piece's own box …
const NEAR: usize = 25;
/// … and all over the strip.
const FAR: usize = 50;
/// Places flush with others that are tried for a piece that is nearly a rectangle.
const FLUSH: usize = 12;
/// Places that are slid downhill.
const BEST: usize = 3;
/// How far apart those must be, as a share of the piece's shorter side.
const APART: f32 = 0.05;
/// Steps of sliding as shares of the shorter side: of each of the best, from and to, and of the very best.
const COARSE: (f32, f32) = (0.25, 0.02);
/// See [`COARSE`].
const FINE: (f32, f32) = (0.01, 1.0 / 1000.0);
/// A slide ends after so many tries at the latest.
const MOST_TRIES: usize = 300;

/// The best few places, the best first.
pub(super) struct Best {
    spots: Vec<(f32, Spot)>,
    apart: f32,
}

impl Best {
    /// None yet, for pieces whose shorter side is so long.
    pub(super) fn new(side: f32) -> Self {
        Self { spots: Vec::with_capacity(BEST + 1), apart: side * APART }
    }

    /// What a place must be below to be among them.
    pub(super) fn most(&self) -> f32 {
        if self.spots.len() < BEST { f32::INFINITY } else { self.spots[BEST - 1].0 }
    }

    /// Takes a place in, if it is good enough; of two that are close together only the better one stays.
    pub(super) fn take(&mut self, loss: f32, spot: Spot) {
        if loss >= self.most() {
            return;
        }
        let close = |s: &Spot| {
            s.stance == spot.stance && (s.x - spot.x).abs() < self.apart && (s.y - spot.y).abs() < self.apart
        };
        if self.spots.iter().any(|(l, s)| *l <= loss && close(s)) {
            return;
        }
        self.spots.retain(|(_, s)| !close(s));
        let at = self.spots.partition_point(|(l, _)| *l <= loss);
        self.spots.insert(at, (loss, spot));
        self.spots.truncate(BEST);
    }

    /// They.
    pub(super) fn spots(self) -> Vec<(f32, Spot)> {
        self.spots
    }
}

/// Moves a piece to a better place, if one is found; its losses are up to date afterwards.
pub(super) fn slide(strip: &mut Strip, i: usize) {
    let here = strip.pieces[i].spot;
    let kind = strip.pieces[i].kind;
    let weighted = strip.weighted(i);
    let side = strip.kinds[kind].stances[here.stance].least_side();
    let mut best = Best::new(side);
    best.take(weighted, here);
    for k in 0..NEAR + FAR {
        let spot = chance_spot(strip, kind, (k < NEAR).then_some(here));
        let loss = strip.evaluate(i, spot, best.most());
        best.take(loss, spot);
    }
    if strip.kinds[kind].boxy {
        for _ in 0..FLUSH {
            let spot = flush_spot(strip, i);
            let loss = strip.evaluate(i, spot, best.most());
            best.take(loss, spot);
        }
    }
    let weigh = |strip: &mut Strip, spot, most| strip.evaluate(i, spot, most);
    let mut least = (weighted, here);
    for start in best.spots() {
        let end = if least.0 == 0.0 { least } else { descend(strip, kind, start, COARSE, weigh) };
        if end.0 < least.0 {
            least = end;
        }
    }
    let least = if least.0 == 0.0 { least } else { descend(strip, kind, least, FINE, weigh) };
    if least.0 <= weighted && least.1 != here {
        strip.settle(i, least.1);
    }
}

/// A chance place in a chance stance: with its middle in the box of a piece that lies here, or anywhere on the strip.
pub(super) fn chance_spot(strip: &mut Strip, kind: usize, near: Option<Spot>) -> Spot {
    let Strip { kinds, chance, length, .. } = strip;
    let stances = &kinds[kind].stances;
    let stance = if stances.len() > 1 { chance.below(stances.len()) } else { 0 };
    let [x0, x1, y0, y1] = stances[stance].allowed(*length);
    let within = match near {
        None => [x0, x1, y0, y1],
        Some(here) => {
            let half = stances[here.stance].half;
            [x0.max(here.x - half.0), x1.min(here.x + half.0), y0.max(here.y - half.1), y1.min(here.y + half.1)]
        }
    };
    let (x, y) = (chance.between(within[0], within[1]), chance.between(within[2], within[3]));
    Spot { stance, x: x.clamp(x0, x1), y: y.clamp(y0, y1) }
}

/// A place where the box of a piece is flush with an end of the strip or the box of another piece, along and across.
fn flush_spot(strip: &mut Strip, i: usize) -> Spot {
    let kind = strip.pieces[i].kind;
    let Strip { kinds, pieces, chance, length, .. } = strip;
    let stances = &kinds[kind].stances;
    let stance = chance.below(stances.len());
    let own = &stances[stance];
    let [x0, x1, y0, y1] = own.allowed(*length);
    let other = |j: usize| (pieces[j].spot, kinds[pieces[j].kind].stances[pieces[j].spot.stance].half);
    let j = chance.below(pieces.len());
    let (at, half) = other(j);
    let x = match chance.below(6) {
        0 => x0,
        1 => x1,
        2 | 3 => at.x + half.0 + own.half.0,
        _ => at.x - half.0 - own.half.0,
    };
    // Half of the time across the same piece, whose upper or lower sides may also be in one line.
    let (at, half) = if chance.below(2) == 0 { (at, half) } else { other(chance.below(pieces.len())) };
    let y = match chance.below(6) {
        0 => y0,
        1 => y1,
        2 => at.y + half.1 + own.half.1,
        3 => at.y - half.1 - own.half.1,
        4 => at.y + half.1 - own.half.1,
        _ => at.y - half.1 + own.half.1,
    };
    Spot { stance, x: x.clamp(x0, x1), y: y.clamp(y0, y1) }
}

/// Slides a place downhill: along x, y or a diagonal, longer steps after a success, shorter ones after a failure, until they are short.
/// `cost` is that of a place; once it is above what it is told it need not be exact.
pub(super) fn descend(
    strip: &mut Strip,
    kind: usize,
    (mut loss, mut spot): (f32, Spot),
    (from, to): (f32, f32),
    cost: impl Fn(&mut Strip, Spot, f32) -> f32,
) -> (f32, Spot) {
    let (side, moves_across) = {
        let stance = &strip.kinds[kind].stances[spot.stance];
        (stance.least_side(), stance.across.0 < stance.across.1)
    };
    let (mut step_x, mut step_y) = (from * side, if moves_across { from * side } else { 0.0 });
    let short = to * side;
    let mut axis = chance_axis(strip, moves_across);
    for _ in 0..MOST_TRIES {
        if (step_x < short && step_y < short) || loss == 0.0 {
            break;
        }
        let (dx, dy) = match axis {
            0 => (step_x, 0.0),
            1 => (0.0, step_y),
            2 => (step_x, step_y),
            _ => (step_x, -step_y),
        };
        let mut next = (f32::INFINITY, spot);
        for sense in [1.0, -1.0] {
            let (x, y) = clamped(&strip.kinds[kind], spot, (spot.x + sense * dx, spot.y + sense * dy), strip.length);
            let there = Spot { x, y, ..spot };
            if there != spot {
                let found = cost(strip, there, if next.0 < loss { next.0 } else { loss });
                if found < next.0 {
                    next = (found, there);
                }
            }
        }
        let better = next.0 < loss;
        if next.0 <= loss {
            (loss, spot) = next;
        }
        let (whole, part) = if better { (1.1, GROWN_ROOT) } else { (0.5, std::f32::consts::FRAC_1_SQRT_2) };
        match axis {
            0 => step_x *= whole,
            1 => step_y *= whole,
            _ => (step_x, step_y) = (step_x * part, step_y * part),
        }
        if !better {
            axis = chance_axis(strip, moves_across);
        }
    }
    (loss, spot)
}

/// The root of 1.1: on a diagonal both steps grow by it.
const GROWN_ROOT: f32 = 1.048_808_8;

fn clamped(kind: &Kind, spot: Spot, (x, y): (f32, f32), length: f32) -> (f32, f32) {
    kind.stances[spot.stance].clamped(x, y, length)
}

/// Along, across or one of both diagonals; along only, where a piece cannot move across.
fn chance_axis(strip: &mut Strip, moves_across: bool) -> usize {
    if moves_across { strip.chance.below(4) } else { 0 }
}
