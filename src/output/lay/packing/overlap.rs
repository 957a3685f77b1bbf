//! How much two shapes overlap, told by the circles inside them. It falls off smoothly as they are moved apart, also where one lies in the
//! middle of the other, so that it shows the way out; whether they overlap at all is told by the field.
//!
//! The measure is that of Gardeyn, Vanden Berghe and Wauters, "An open-source heuristic to reboot 2D nesting research" (arXiv:2509.13329):
//! over all pairs of circles, the smaller radius times how deep they are in each other.

use super::engine::Circle;

/// Circles that are summed side by side.
const WIDE: usize = 8;

/// Circles of a piece that lies, in blocks; the last block is filled up with circles of radius 0, which add nothing.
#[derive(Clone, Debug, Default)]
pub(super) struct Circles {
    blocks: Vec<Block>,
}

#[derive(Clone, Copy, Debug)]
struct Block {
    x: [f32; WIDE],
    y: [f32; WIDE],
    r: [f32; WIDE],
}

impl Circles {
    /// Takes over the circles of a form that lies here.
    pub(super) fn follow(&mut self, circles: &[Circle], (x, y): (f32, f32)) {
        self.blocks.clear();
        for part in circles.chunks(WIDE) {
            let of = |i: usize| part.get(i).copied().unwrap_or((part[0].0, part[0].1, 0.0));
            self.blocks.push(Block {
                x: std::array::from_fn(|i| of(i).0 + x),
                y: std::array::from_fn(|i| of(i).1 + y),
                r: std::array::from_fn(|i| of(i).2),
            });
        }
    }
}

/// The sum over all pairs of circles, mm²: that of a form at a place, and of a piece that lies. Circles that do not meet count less the
/// farther they are apart; `soft` (mm) says how slowly. Once the sum is above `most` it may be told unfinished.
pub(super) fn overlap(moving: &[Circle], (x, y): (f32, f32), lying: &Circles, soft: f32, most: f32) -> f32 {
    let (square, twice) = (soft * soft, soft + soft);
    let mut sums = [0.0_f32; WIDE];
    for four in moving.chunks(4) {
        for (cx, cy, r) in four {
            let (cx, cy) = (cx + x, cy + y);
            for block in &lying.blocks {
                for (i, sum) in sums.iter_mut().enumerate() {
                    let (dx, dy) = (block.x[i] - cx, block.y[i] - cy);
                    let deep = r + block.r[i] - (dx * dx + dy * dy).sqrt();
                    let under = twice - deep;
                    // Not `max`, which costs a comparison more for numbers that are none.
                    let under = if under > soft { under } else { soft };
                    let counted = if deep >= soft { deep } else { square / under };
                    let least = if block.r[i] < *r { block.r[i] } else { *r };
                    *sum += counted * least;
                }
            }
        }
        let sum = total(&sums);
        if sum > most {
            return sum;
        }
    }
    total(&sums)
}

/// Always in the same order, so that it is the same on every machine.
fn total(sums: &[f32; WIDE]) -> f32 {
    let [a, b, c, d, e, f, g, h] = *sums;
    ((a + e) + (c + g)) + ((b + f) + (d + h))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::output::lay::packing::chance::Chance;

    fn some(chance: &mut Chance, n: usize) -> Vec<Circle> {
        (0..n).map(|_| (chance.between(-50.0, 50.0), chance.between(-50.0, 50.0), chance.between(1.0, 20.0))).collect()
    }

    /// The definition, in full precision.
    fn plain(a: &[Circle], at: (f32, f32), b: &[Circle], to: (f32, f32), soft: f64) -> f64 {
        let mut sum = 0.0;
        for (ax, ay, ar) in a {
            for (bx, by, br) in b {
                let dx = f64::from(ax + at.0) - f64::from(bx + to.0);
                let dy = f64::from(ay + at.1) - f64::from(by + to.1);
                let deep = f64::from(ar + br) - (dx * dx + dy * dy).sqrt();
                let counted = if deep >= soft { deep } else { soft * soft / (2.0 * soft - deep) };
                sum += counted * f64::from(ar.min(*br));
            }
        }
        sum
    }

    #[test]
    fn the_sum_is_the_plain_one() {
        let mut chance = Chance::new(1);
        for case in 0..200 {
            let (a, b) = (some(&mut chance, 1 + case % 23), some(&mut chance, 1 + case % 17));
            let (at, to) =
                ((chance.between(-80.0, 80.0), 3.0), (chance.between(-80.0, 80.0), 700.0 * (case % 2) as f32));
            let (mut lying, mut turned) = (Circles::default(), Circles::default());
            lying.follow(&b, to);
            turned.follow(&a, at);
            let sum = overlap(&a, at, &lying, 1.5, f32::INFINITY);
            let expected = plain(&a, at, &b, to, 1.5);
            assert!((f64::from(sum) - expected).abs() <= 1e-4 * expected, "{sum} {expected}");
            // The same from the other's side.
            let back = overlap(&b, to, &turned, 1.5, f32::INFINITY);
            assert!((back - sum).abs() <= 1e-4 * sum, "{sum} {back}");
        }
    }

    #[test]
    fn an_early_end_is_above_the_most() {
        let mut chance = Chance::new(2);
        for _ in 0..200 {
            let (a, b) = (some(&mut chance, 15), some(&mut chance, 16));
            let mut lying = Circles::default();
            lying.follow(&b, (5.0, 5.0));
            let all = overlap(&a, (0.0, 0.0), &lying, 1.0, f32::INFINITY);
            let most = all * chance.between(0.2, 1.5);
            let told = overlap(&a, (0.0, 0.0), &lying, 1.0, most);
            assert_eq!(told > most, all > most);
            assert!(told <= all && (told > most || told == all));
        }
    }

    #[test]
    fn it_falls_with_the_distance() {
        let one = [(0.0, 0.0, 10.0)];
        let mut lying = Circles::default();
        lying.follow(&one, (0.0, 0.0));
        let mut before = f32::INFINITY;
        for i in 0..100 {
            let sum = overlap(&one, (i as f32, 0.0), &lying, 1.0, f32::INFINITY);
            assert!(sum < before && sum > 0.0);
            before = sum;
        }
    }
}
