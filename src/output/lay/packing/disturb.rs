//! Changes of all pieces at once: the strip made shorter or longer, and a layout that leads nowhere disturbed.

use super::kind::Spot;
use super::strip::Strip;

/// Pieces with the largest hulls, which make up this share of all hulls, are the large ones.
const LARGE_SHARE: f32 = 0.75;
/// Two kinds differ if their area and their diameter do by more than this factor.
const DIFFER: f32 = 1.01;
/// Pairs that are drawn until two differ.
const DRAWS: usize = 50;

impl Strip {
    /// Where all pieces go on a strip of another length: what lies right of a chance line is moved by the difference.
    pub(super) fn cut_to(&mut self, length: f32) -> Vec<Spot> {
        let line = self.chance.between(0.0, self.length);
        let by = length - self.length;
        self.moved(length, |x| if x > line { x + by } else { x })
    }

    /// Where all pieces go on a strip of another length: all places along it are scaled.
    pub(super) fn scaled_to(&mut self, length: f32) -> Vec<Spot> {
        let by = length / self.length;
        self.moved(length, |x| x * by)
    }

    /// A place moved as little as needed to lie on a strip of this length; that of a locked piece stays.
    pub(super) fn within(&self, i: usize, spot: Spot, length: f32) -> Spot {
        let piece = &self.pieces[i];
        if piece.locked.is_some() {
            return piece.spot;
        }
        let (x, y) = self.kinds[piece.kind].stances[spot.stance].clamped(spot.x, spot.y, length);
        Spot { x, y, ..spot }
    }

    /// Where all pieces go if their places along the strip change; locked ones stay.
    fn moved(&self, length: f32, to: impl Fn(f32) -> f32) -> Vec<Spot> {
        let place = |i: usize| {
            let spot = self.pieces[i].spot;
            self.within(i, Spot { x: to(spot.x), ..spot }, length)
        };
        (0..self.pieces.len()).map(place).collect()
    }

    /// Swaps two large pieces that differ; small ones that then lie in them go to where the other came from. Where no two differ, one piece goes
    /// anywhere. Losses are up to date afterwards.
    pub(super) fn disturb(&mut self) {
        let free: Vec<usize> = (0..self.pieces.len())
            .filter(|i| self.pieces[*i].locked.is_none() && self.kinds[self.pieces[*i].kind].free)
            .collect();
        let large = self.large(&free);
        let differ = |strip: &Self, i: usize, j: usize| {
            let (a, b) = (&strip.kinds[strip.pieces[i].kind], &strip.kinds[strip.pieces[j].kind]);
            let apart = |p: f32, q: f32| p.max(q) > p.min(q) * DIFFER;
            apart(a.area as f32, b.area as f32) && apart(a.diameter, b.diameter)
        };
        for _ in 0..DRAWS {
            let (i, j) = (self.chance.below(large.len()), self.chance.below(large.len()));
            let (Some(&i), Some(&j)) = (large.get(i), large.get(j)) else { return };
            if differ(self, i, j) {
                self.swap(i, j, &free);
                self.survey();
                return;
            }
        }
        if let Some(&i) = large.get(self.chance.below(large.len())) {
            let kind = self.pieces[i].kind;
            let spot = super::slide::chance_spot(self, kind, None);
            self.put(i, spot);
            self.survey();
        }
    }

    /// Those pieces that are large.
    fn large(&self, among: &[usize]) -> Vec<usize> {
        let hull = |i: usize| self.kinds[self.pieces[i].kind].hull;
        let mut order = among.to_vec();
        order.sort_by(|a, b| hull(*b).total_cmp(&hull(*a)));
        let all: f32 = order.iter().map(|i| hull(*i)).sum();
        let mut sum = 0.0;
        let enough = order.iter().position(|i| {
            sum += hull(*i);
            sum >= LARGE_SHARE * all
        });
        let least = enough.map_or(0.0, |k| hull(order[k]));
        order.retain(|i| hull(*i) >= least);
        order
    }

    fn swap(&mut self, i: usize, j: usize, free: &[usize]) {
        let (from, to) = (self.pieces[i].spot, self.pieces[j].spot);
        let place = |strip: &mut Self, k: usize, x: f32, y: f32| {
            let piece = &strip.pieces[k];
            let (x, y) = strip.kinds[piece.kind].stances[piece.spot.stance].clamped(x, y, strip.length);
            strip.put(k, Spot { x, y, ..piece.spot });
        };
        place(self, i, to.x, to.y);
        place(self, j, from.x, from.y);
        for (large, old) in [(i, from), (j, to)] {
            let Spot { stance, x, y } = self.pieces[large].spot;
            let form = &self.kinds[self.pieces[large].kind].stances[stance].form;
            let inside = |k: &&usize| {
                let small = &self.pieces[**k];
                let (px, py, _) = self.kinds[small.kind].stances[small.spot.stance].circles[0];
                form.contains(small.spot.x + px - x, small.spot.y + py - y)
            };
            let go: Vec<usize> = free.iter().filter(|k| **k != i && **k != j).filter(inside).copied().collect();
            for k in go {
                let spot = self.pieces[k].spot;
                place(self, k, spot.x + old.x - x, spot.y + old.y - y);
            }
        }
    }
}
