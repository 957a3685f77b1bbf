//! Pieces on a strip of some length, which may overlap: where each lies, which of them collide, how much, and how heavily that weighs.
//!
//! The loss of a pair that collides is a length that grows with its overlap (see `overlap`), times the fourth root of both hull areas, so that
//! small pieces make way for large ones; that of any other pair is exactly 0.

use super::chance::Chance;
use super::engine::Field;
use super::kind::{Kind, Spot};
use super::overlap::{Circles, overlap};
use super::{Job, Laid, Layout};

/// A piece on the strip.
#[derive(Clone, Debug)]
pub(super) struct Piece {
    /// Its kind, by its place; that of its shape in the job.
    pub(super) kind: usize,
    /// Where it lies.
    pub(super) spot: Spot,
    /// Where it is held, if it is locked.
    pub(super) locked: Option<Laid>,
    circles: Circles,
    lies: bool,
}

/// What two kinds have together.
#[derive(Clone, Copy, Debug)]
struct Pair {
    /// One hundredth of the larger diameter, mm: how far pieces feel each other.
    soft: f32,
    /// The fourth root of the product of their hull areas, mm.
    size: f32,
}

/// The strip with all its pieces.
#[derive(Clone, Debug)]
pub(super) struct Strip {
    /// The kinds.
    pub(super) kinds: Vec<Kind>,
    /// The pieces, ordered by kind.
    pub(super) pieces: Vec<Piece>,
    /// How long the strip is at the moment, mm.
    pub(super) length: f32,
    /// Chance.
    pub(super) chance: Chance,
    /// Places that were tried so far.
    pub(super) evaluations: u64,
    longest: f32,
    field: Field,
    pairs: Vec<Pair>,
    losses: Vec<f32>,
    weights: Vec<f32>,
}

/// How much larger than the strip the field is, so that grown shapes at its edges lie on it.
const MARGIN: f32 = 0.02;

impl Strip {
    /// A strip with no piece laid yet, for lengths up to `longest` (mm). None if there is no strip.
    pub(super) fn new(job: &Job, kinds: Vec<Kind>, longest: f32, seed: u64) -> Option<Self> {
        let mut pieces = Vec::new();
        for (kind, shape) in job.shapes.iter().enumerate() {
            let locks = job.locked.iter().filter(|l| l.shape == kind).map(|l| Some(*l));
            for locked in locks.chain(std::iter::repeat(None)).take(shape.count) {
                let spot = Spot { stance: 0, x: 0.0, y: 0.0 };
                pieces.push(Piece { kind, spot, locked, circles: Circles::default(), lies: false });
            }
        }
        let pair = |a: &Kind, b: &Kind| Pair {
            soft: a.diameter.max(b.diameter) / 100.0,
            size: (a.hull * b.hull).sqrt().sqrt(),
        };
        let pairs = kinds.iter().flat_map(|a| kinds.iter().map(move |b| pair(a, b))).collect();
        let n = pieces.len();
        Some(Self {
            field: field(job, longest, n)?,
            pieces,
            length: longest,
            chance: Chance::new(seed),
            evaluations: 0,
            longest,
            pairs,
            losses: vec![0.0; n * n],
            weights: vec![1.0; n * n],
            kinds,
        })
    }

    /// Makes room for another length; all pieces stay where they are. Whether there is such a strip.
    pub(super) fn widen(&mut self, job: &Job, longest: f32) -> bool {
        let Some(field) = field(job, longest, self.pieces.len()) else { return false };
        self.field = field;
        self.longest = longest;
        for i in 0..self.pieces.len() {
            if self.pieces[i].lies {
                let Piece { kind, spot, .. } = self.pieces[i];
                self.field.put(i, &self.kinds[kind].stances[spot.stance].form, (spot.x, spot.y));
            }
        }
        true
    }

    /// Lays a piece; its losses are not looked at.
    pub(super) fn put(&mut self, i: usize, spot: Spot) {
        let piece = &mut self.pieces[i];
        let stance = &self.kinds[piece.kind].stances[spot.stance];
        piece.spot = spot;
        piece.lies = true;
        piece.circles.follow(&stance.circles, (spot.x, spot.y));
        self.field.put(i, &stance.form, (spot.x, spot.y));
    }

    /// Whether a piece lies on the strip already.
    pub(super) fn lies(&self, i: usize) -> bool {
        self.pieces[i].lies
    }

    /// The greatest length for which there is room, mm.
    pub(super) fn longest(&self) -> f32 {
        self.longest
    }

    /// Where the last piece ends, mm; 0 if none lies.
    pub(super) fn right(&self) -> f32 {
        let right = |p: &Piece| p.spot.x + self.kinds[p.kind].stances[p.spot.stance].half.0;
        self.pieces.iter().filter(|p| p.lies).map(right).fold(0.0, f32::max)
    }

    /// Where the last piece would end, mm, if all lay like this.
    pub(super) fn right_of(&self, spots: &[Spot]) -> f32 {
        let right = |(p, s): (&Piece, &Spot)| s.x + self.kinds[p.kind].stances[s.stance].half.0;
        self.pieces.iter().zip(spots).map(right).fold(0.0, f32::max)
    }

    /// Takes all pieces away.
    pub(super) fn clear(&mut self) {
        for i in 0..self.pieces.len() {
            self.field.take(i);
            self.pieces[i].lies = false;
        }
    }

    /// Whether a piece would hit nothing here.
    pub(super) fn is_free(&mut self, i: usize, spot: Spot) -> bool {
        self.evaluations += 1;
        let stance = &mut self.kinds[self.pieces[i].kind].stances[spot.stance];
        !self.field.hits(i, &stance.form, &mut stance.try_on, (spot.x, spot.y), |_| true)
    }

    /// The weighted loss of a piece here, and that of each pair that collides, unweighted, handed to `told`. Once it is above `most` it may be told
    /// unfinished.
    fn try_out(&mut self, i: usize, spot: Spot, most: f32, mut told: impl FnMut(usize, f32)) -> f32 {
        self.evaluations += 1;
        let (n, kind, count) = (self.pieces.len(), self.pieces[i].kind, self.kinds.len());
        let Self { kinds, pieces, pairs, weights, field, .. } = self;
        let stance = &mut kinds[kind].stances[spot.stance];
        let mut loss = 0.0_f32;
        let at = (spot.x, spot.y);
        field.hits(i, &stance.form, &mut stance.try_on, at, |j| {
            let pair = pairs[kind * count + pieces[j].kind];
            let weight = weights[i * n + j];
            let square = pair.soft * pair.soft;
            // The sum of circles at which the bound is reached.
            let root = (most - loss) / (weight * pair.size);
            let cap = (root * root - square) / std::f32::consts::PI;
            let sum = overlap(&stance.circles, at, &pieces[j].circles, pair.soft, cap);
            let one = (std::f32::consts::PI * sum + square).sqrt() * pair.size;
            told(j, one);
            loss += weight * one;
            loss > most
        });
        loss
    }

    /// The weighted loss of a piece here; once it is above `most` it may be told unfinished.
    pub(super) fn evaluate(&mut self, i: usize, spot: Spot, most: f32) -> f32 {
        self.try_out(i, spot, most, |_, _| {})
    }

    /// Lays a piece and brings its row of losses up to date.
    pub(super) fn settle(&mut self, i: usize, spot: Spot) {
        self.put(i, spot);
        let n = self.pieces.len();
        for j in 0..n {
            self.losses[i * n + j] = 0.0;
            self.losses[j * n + i] = 0.0;
        }
        let mut hit = Vec::with_capacity(8);
        self.try_out(i, spot, f32::INFINITY, |j, loss| hit.push((j, loss)));
        for (j, loss) in hit {
            self.losses[i * n + j] = loss;
            self.losses[j * n + i] = loss;
        }
    }

    /// Looks at all losses anew.
    pub(super) fn survey(&mut self) {
        let n = self.pieces.len();
        self.losses.fill(0.0);
        let mut hit = Vec::with_capacity(8);
        for i in 0..n {
            hit.clear();
            self.try_out(i, self.pieces[i].spot, f32::INFINITY, |j, loss| hit.push((j, loss)));
            // The same number from both sides, also where rounding sees a pair that touches from one side only.
            for (j, loss) in &hit {
                self.losses[i * n + j] = *loss;
                self.losses[j * n + i] = *loss;
            }
        }
    }

    /// The sum of the losses of all pairs, unweighted.
    pub(super) fn total(&self) -> f64 {
        let n = self.pieces.len();
        (0..n).flat_map(|i| self.losses[i * n..i * n + i].iter()).map(|l| f64::from(*l)).sum()
    }

    /// The weighted loss of a piece where it lies.
    pub(super) fn weighted(&self, i: usize) -> f32 {
        let n = self.pieces.len();
        let rows = self.losses[i * n..(i + 1) * n].iter().zip(&self.weights[i * n..(i + 1) * n]);
        rows.map(|(loss, weight)| loss * weight).sum()
    }

    /// Whether a piece collides with anything.
    pub(super) fn collides(&self, i: usize) -> bool {
        let n = self.pieces.len();
        self.losses[i * n..(i + 1) * n].iter().any(|l| *l > 0.0)
    }

    /// All weights are 1 again.
    pub(super) fn forget(&mut self) {
        self.weights.fill(1.0);
    }

    /// Makes pairs that collide weigh more, the more they overlap (1.2 to 2 times as much), others less (0.95 times), never less than 1.
    pub(super) fn weigh(&mut self) {
        let largest = self.losses.iter().copied().fold(0.0, f32::max);
        for (weight, loss) in self.weights.iter_mut().zip(&self.losses) {
            let factor = if *loss > 0.0 { 1.2 + 0.8 * loss / largest } else { 0.95 };
            *weight = (*weight * factor).max(1.0);
        }
    }

    /// Where all pieces lie.
    pub(super) fn spots(&self) -> Vec<Spot> {
        self.pieces.iter().map(|p| p.spot).collect()
    }

    /// Lays all pieces where they lay once, on a strip of that length, and looks at their losses.
    pub(super) fn restore(&mut self, spots: &[Spot], length: f32) {
        self.length = length;
        for (i, spot) in spots.iter().enumerate() {
            if !self.pieces[i].lies || self.pieces[i].spot != *spot {
                self.put(i, *spot);
            }
        }
        self.survey();
    }

    /// The layout in full precision: with the true length, which may be a little more or less than the strip's.
    pub(super) fn layout(&self) -> Layout {
        let told =
            |p: &Piece| p.locked.unwrap_or_else(|| self.kinds[p.kind].stances[p.spot.stance].laid(p.kind, &p.spot));
        let laid: Vec<Laid> = self.pieces.iter().map(told).collect();
        let right = |(p, l): (&Piece, &Laid)| self.kinds[p.kind].stances[p.spot.stance].right(l);
        let length = self.pieces.iter().zip(&laid).map(right).fold(0.0, f64::max);
        Layout { laid, length }
    }
}

/// An empty field for a strip of this length.
fn field(job: &Job, longest: f32, pieces: usize) -> Option<Field> {
    let width = job.width as f32;
    let margin = MARGIN * longest.max(width) + job.gap.max(0.0) as f32;
    Field::new((-margin, -margin, longest + margin, width + margin), pieces)
}

#[cfg(test)]
mod tests {
    use kurbo::Point;

    use super::super::kind::kinds;
    use super::super::slide::{chance_spot, slide};
    use super::super::{Across, Pose, Shape, Touch};
    use super::*;

    /// Wedges, hooks and bars on each other, three of each, at chance places.
    fn heap(seed: u64) -> Strip {
        let across = Across { from: 0.0, to: 400.0, touch: Touch::Free };
        let poses = [0.0, 180.0].map(|turned| Pose { mirrored: false, turned, across });
        let shape = |points: &[(f64, f64)]| Shape {
            outline: points.iter().map(|(x, y)| Point::new(*x, *y)).collect(),
            count: 3,
            poses: poses.to_vec(),
        };
        let shapes = vec![
            shape(&[(0.0, 0.0), (170.0, 20.0), (120.0, 90.0)]),
            shape(&[(0.0, 0.0), (150.0, 0.0), (150.0, 40.0), (50.0, 45.0), (45.0, 130.0), (0.0, 120.0)]),
            shape(&[(0.0, 0.0), (200.0, 0.0), (200.0, 25.0), (0.0, 25.0)]),
        ];
        let job = Job { width: 400.0, shapes, gap: 0.0, locked: Vec::new(), step: 0.0, before: 0.0 };
        let mut strip = Strip::new(&job, kinds(&job).unwrap(), 600.0, seed).unwrap();
        strip.length = 300.0;
        for i in 0..strip.pieces.len() {
            let kind = strip.pieces[i].kind;
            let spot = chance_spot(&mut strip, kind, None);
            strip.put(i, spot);
        }
        strip.survey();
        strip
    }

    fn close(a: f32, b: f32) -> bool {
        (a - b).abs() <= 1e-3 * a.max(b)
    }

    #[test]
    fn the_table_after_many_moves_is_a_fresh_one() {
        let mut strip = heap(1);
        for k in 0..1000 {
            let i = strip.chance.below(strip.pieces.len());
            let near = (k % 3 == 0).then_some(strip.pieces[i].spot);
            let kind = strip.pieces[i].kind;
            let spot = chance_spot(&mut strip, kind, near);
            strip.settle(i, spot);
        }
        let kept = strip.losses.clone();
        strip.survey();
        assert!(kept.iter().any(|l| *l > 0.0) && kept.contains(&0.0));
        for (kept, fresh) in kept.iter().zip(&strip.losses) {
            assert!(close(*kept, *fresh), "{kept} {fresh}");
        }
        // And one whose field is made anew.
        let mut other = heap(2);
        other.restore(&strip.spots(), strip.length);
        assert!(other.losses.iter().zip(&strip.losses).all(|(a, b)| close(*a, *b)));
    }

    #[test]
    fn a_move_never_makes_a_piece_weigh_more() {
        let mut moved = 0;
        for seed in 0..10 {
            let mut strip = heap(seed);
            for _ in 0..20 {
                let i = strip.chance.below(strip.pieces.len());
                let (before, here) = (strip.weighted(i), strip.pieces[i].spot);
                slide(&mut strip, i);
                let after = strip.weighted(i);
                // What is summed in another order differs by rounding.
                assert!(after <= before * 1.0001, "{after} {before}");
                moved += usize::from(strip.pieces[i].spot != here);
                strip.weigh();
            }
        }
        assert!(moved > 50, "{moved}");
    }

    #[test]
    fn an_early_end_never_changes_which_place_is_better() {
        let mut strip = heap(3);
        for _ in 0..5 {
            strip.weigh();
        }
        let (mut better, mut worse) = (0, 0);
        for _ in 0..2000 {
            let i = strip.chance.below(strip.pieces.len());
            let kind = strip.pieces[i].kind;
            let (one, two) = (chance_spot(&mut strip, kind, None), chance_spot(&mut strip, kind, None));
            let most = strip.evaluate(i, one, f32::INFINITY);
            let all = strip.evaluate(i, two, f32::INFINITY);
            let told = strip.evaluate(i, two, most);
            // Within rounding of the bound either is right.
            if !close(all, most) {
                assert_eq!(told > most, all > most, "{told} {all} {most}");
                assert!(told > most || close(told, all), "{told} {all}");
                *if all > most { &mut worse } else { &mut better } += 1;
            }
        }
        assert!(better > 300 && worse > 300, "{better} {worse}");
    }

    #[test]
    fn losses_are_those_of_the_definition() {
        let mut strip = heap(4);
        let (n, mut pairs) = (strip.pieces.len(), 0);
        for i in 0..n {
            for j in 0..i {
                let loss = strip.losses[i * n + j];
                assert_eq!(loss, strip.losses[j * n + i]);
                let (a, b) = (&strip.pieces[i], &strip.pieces[j]);
                let (ka, kb) = (&strip.kinds[a.kind], &strip.kinds[b.kind]);
                let soft = f64::from(ka.diameter.max(kb.diameter)) / 100.0;
                let mut sum = 0.0;
                for (x, y, r) in &ka.stances[a.spot.stance].circles {
                    for (u, v, s) in &kb.stances[b.spot.stance].circles {
                        let (dx, dy) = (f64::from(x + a.spot.x - u - b.spot.x), f64::from(y + a.spot.y - v - b.spot.y));
                        let deep = f64::from(r + s) - (dx * dx + dy * dy).sqrt();
                        let felt = if deep >= soft { deep } else { soft * soft / (2.0 * soft - deep) };
                        sum += felt * f64::from(r.min(*s));
                    }
                }
                let size = f64::from(ka.hull * kb.hull).sqrt().sqrt();
                let expected = (std::f64::consts::PI * sum + soft * soft).sqrt() * size;
                if loss > 0.0 {
                    assert!((f64::from(loss) - expected).abs() <= 1e-3 * expected, "{loss} {expected}");
                    pairs += 1;
                }
            }
        }
        assert!(pairs > 5, "{pairs}");
        let total = strip.total();
        strip.weigh();
        assert!((strip.total() - total).abs() <= 1e-9 * total, "weights have no part in it");
    }

    #[test]
    fn weights_are_those_worked_out_by_hand() {
        let mut strip = heap(5);
        let n = strip.pieces.len();
        strip.losses.fill(0.0);
        for (i, j, loss) in [(0, 1, 4.0), (2, 3, 1.0)] {
            strip.losses[i * n + j] = loss;
            strip.losses[j * n + i] = loss;
        }
        strip.weights[4 * n + 5] = 1.5;
        strip.weigh();
        // 1.2 + 0.8 x 4/4, 1.2 + 0.8 x 1/4, 1.5 x 0.95, and never less than 1.
        let of = |s: &Strip, i: usize, j: usize| s.weights[i * n + j];
        assert!(close(of(&strip, 0, 1), 2.0) && close(of(&strip, 1, 0), 2.0) && close(of(&strip, 2, 3), 1.4));
        assert!(close(of(&strip, 4, 5), 1.425) && of(&strip, 0, 2) == 1.0);
        // Each pair once a pass, from both sides alike.
        strip.weigh();
        assert!(close(of(&strip, 0, 1), 4.0) && close(of(&strip, 2, 3), 1.96) && close(of(&strip, 4, 5), 1.353_75));
        strip.forget();
        assert!(strip.weights.iter().all(|w| *w == 1.0));
    }

    #[test]
    fn a_swap_of_few_pieces_ends() {
        let mut strip = heap(6);
        strip.disturb();
        let spots = strip.spots();
        strip.disturb();
        assert_ne!(strip.spots(), spots);
        // One piece, or none that is free.
        let across = Across { from: 0.0, to: 400.0, touch: Touch::Free };
        let outline = [(0.0, 0.0), (170.0, 20.0), (120.0, 90.0)].map(|(x, y)| Point::new(x, y)).to_vec();
        for (count, touch) in [(1, Touch::Free), (0, Touch::Free), (2, Touch::From)] {
            let poses = vec![Pose { mirrored: false, turned: 0.0, across: Across { touch, ..across } }];
            let shapes = vec![Shape { outline: outline.clone(), count, poses }];
            let job = Job { width: 400.0, shapes, gap: 0.0, locked: Vec::new(), step: 0.0, before: 0.0 };
            let mut strip = Strip::new(&job, kinds(&job).unwrap(), 600.0, 1).unwrap();
            for i in 0..count {
                let spot = chance_spot(&mut strip, 0, None);
                strip.put(i, spot);
            }
            strip.disturb();
            assert_eq!(strip.pieces.len(), count);
        }
    }
}
