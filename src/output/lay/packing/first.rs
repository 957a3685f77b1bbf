//! A first layout: the largest pieces first, each as far to the left as chance finds room for it. It is fast, and what is left if nothing else is
//! found.

use super::kind::Spot;
use super::slide::{Best, chance_spot, descend};
use super::strip::Strip;
use super::{Go, Job};

/// Places that are tried for each piece.
const TRIES: usize = 1000;
/// How much longer the strip is made where a piece finds no room.
const GROW: f32 = 1.2;
/// How often; then the piece goes behind all others.
const GROWS: usize = 8;
/// Steps of sliding, as shares of the piece's shorter side.
const STEPS: (f32, f32) = (0.25, 0.01);

/// Lays all pieces that do not lie yet on a strip that begins with this length (mm). `watch` is called after each. None where it says stop before all
/// lie, or a piece has nowhere to go at all.
pub(super) fn lay_all(strip: &mut Strip, job: &Job, length: f32, watch: &mut dyn FnMut() -> Go) -> Option<()> {
    strip.length = length.max(strip.right());
    let mut order: Vec<usize> = (0..strip.pieces.len()).filter(|i| !strip.lies(*i)).collect();
    let size = |strip: &Strip, i: usize| {
        let kind = &strip.kinds[strip.pieces[i].kind];
        (kind.free, -kind.hull * kind.diameter)
    };
    order.sort_by(|a, b| {
        let ((free, size_a), (other, size_b)) = (size(strip, *a), size(strip, *b));
        free.cmp(&other).then(size_a.total_cmp(&size_b))
    });
    for i in order {
        match room(strip, i) {
            Some(spot) => strip.put(i, spot),
            None => behind(strip, job, i)?,
        }
        if watch() == Go::Stop {
            return None;
        }
    }
    strip.length = strip.right();
    Some(())
}

/// The best place of many for a piece; the strip is made longer if there is none.
fn room(strip: &mut Strip, i: usize) -> Option<Spot> {
    let kind = strip.pieces[i].kind;
    let side = strip.kinds[kind].stances[0].least_side();
    let cost = |strip: &mut Strip, spot: Spot, most: f32| {
        let stance = &strip.kinds[kind].stances[spot.stance];
        let (px, py, _) = stance.circles[0];
        let cost = 10.0 * (spot.x + px + spot.x - stance.half.0) + (spot.y + py + spot.y - stance.half.1);
        if cost > most || !strip.is_free(i, spot) { f32::INFINITY } else { cost }
    };
    for _ in 0..GROWS {
        let mut best = Best::new(side);
        for _ in 0..TRIES {
            let spot = chance_spot(strip, kind, None);
            let found = cost(strip, spot, best.most());
            best.take(found, spot);
        }
        let ends = best.spots().into_iter().map(|start| descend(strip, kind, start, STEPS, cost)).collect::<Vec<_>>();
        if let Some((_, spot)) = ends.into_iter().min_by(|a, b| a.0.total_cmp(&b.0)) {
            return Some(spot);
        }
        let longer = strip.length * GROW;
        if longer > strip.longest() {
            return None;
        }
        strip.length = longer;
    }
    None
}

/// Lays a piece behind all others, with a little room between. None if the strip cannot be made so long.
fn behind(strip: &mut Strip, job: &Job, i: usize) -> Option<()> {
    let stance = &strip.kinds[strip.pieces[i].kind].stances[0];
    let (half, y) = (stance.half.0, stance.across.0);
    // A hundredth of a mm more than the gap, so that single precision does not see a collision.
    let x = strip.right() + job.gap.max(0.0) as f32 + crate::base::tolerance::lay::DEEP as f32 + half;
    if x + half > strip.longest() && !strip.widen(job, (x + half) * GROW) {
        return None;
    }
    strip.put(i, Spot { stance: 0, x, y });
    strip.length = strip.length.max(x + half);
    Some(())
}
