//! The parallel of a curve as a curve of its own, with derivatives.

use super::cubic::{self, Cubic};
use super::{Curve, Pt, Segment};
use crate::base::{Scalar, tolerance};

/// Pieces of one segment.
const MOST_PIECES: usize = 2_000;

/// Why there is no parallel.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum NoParallel {
    /// The curve bends tighter than the distance somewhere.
    Tight,
    /// The parallels of two segments end so far from each other, mm.
    Corner(f64),
}

/// Distance of a parallel by the parameter of a segment: its value and its derivative by the length.
#[derive(Clone, Copy)]
struct Apart<S> {
    from: S,
    grow: S,
}

impl<S: Scalar> Apart<S> {
    fn at(&self, segment: &Segment<S>, u: S) -> S {
        // Of plain numbers one that does not grow is everywhere the same; derivatives may still hang on the length.
        if size_of::<S>() == size_of::<f64>() && self.grow.value() == 0.0 {
            return self.from;
        }
        self.from + self.grow * segment.length_to(u)
    }
}

impl<S: Scalar> Curve<S> {
    /// The parallel on the right-hand side of travel as seen (negative distances: on the left), the distance running evenly by arc length
    /// from `d0` to `d1`. Straight and round stretches exactly where the distance is constant, else cubics within 1e-6 mm at equal
    /// parameters.
    ///
    /// # Errors
    /// See [`NoParallel`].
    pub fn parallel(&self, d0: S, d1: S) -> Result<Self, NoParallel> {
        self.parallel_within(d0, d1, tolerance::EQUAL)
    }

    /// The same with another tolerance for cubics, mm.
    ///
    /// # Errors
    /// See [`NoParallel`].
    pub fn parallel_within(&self, d0: S, d1: S, near: f64) -> Result<Self, NoParallel> {
        let grow = (d1 - d0) / self.length();
        let level = (d1 - d0).value() == 0.0;
        let mut out: Vec<Segment<S>> = Vec::new();
        for (i, segment) in self.segments().iter().enumerate() {
            let apart = Apart { from: d0 + grow * self.start_of(i), grow };
            let from = out.len();
            match segment {
                Segment::Line(a, b) => {
                    let Some(along) = (*b - *a).unit() else { continue };
                    let aside = along.square();
                    let end = apart.from + grow * self.lengths()[i];
                    out.push(Segment::Line(*a + aside.times(apart.from), *b + aside.times(end)));
                }
                Segment::Arc(arc) if level => {
                    // Clockwise as seen the centre is on the right.
                    let radius = arc.radius() - d0.times(arc.sense());
                    if radius.value() <= tolerance::EQUAL {
                        return Err(NoParallel::Tight);
                    }
                    out.push(Segment::Arc(arc.with_radii_moved(-d0.times(arc.sense()))));
                }
                _ => fitted(segment, apart, near, &mut out)?,
            }
            if let (Some(before), Some(first)) = (from.checked_sub(1).and_then(|k| out.get(k)), out.get(from)) {
                let gap = (first.start().plain() - before.end().plain()).length();
                if gap > tolerance::ON_EDGE {
                    return Err(NoParallel::Corner(gap));
                }
            }
        }
        Self::new(out).map_err(|_| NoParallel::Tight)
    }
}

/// Cubics that share ends and derivatives with the true parallel, halved until they are near enough.
fn fitted<S: Scalar>(
    segment: &Segment<S>,
    apart: Apart<S>,
    near: f64,
    out: &mut Vec<Segment<S>>,
) -> Result<(), NoParallel> {
    let (plain, flat) = (segment.plain(), Apart { from: apart.from.value(), grow: apart.grow.value() });
    let at = |t: f64| ray(&plain, flat, t).ok_or(NoParallel::Tight);
    let mut cuts = vec![0.0];
    let mut waiting = vec![(0.0, 1.0)];
    while let Some((a, b)) = waiting.pop() {
        let fit = hermite(at(a)?, at(b)?, b - a);
        let mut is_off = false;
        for share in [0.25, 0.5, 0.75] {
            let (p, _) = at(a + share * (b - a))?;
            is_off |= (cubic::point(&fit, share) - p).length() > near;
        }
        if is_off && cuts.len() < MOST_PIECES && b - a > tolerance::EQUAL {
            let middle = 0.5 * (a + b);
            waiting.extend([(middle, b), (a, middle)]);
        } else {
            cuts.push(b);
        }
    }
    let mut rays = Vec::with_capacity(cuts.len());
    for t in &cuts {
        rays.push(ray(segment, apart, *t).ok_or(NoParallel::Tight)?);
    }
    for (pair, t) in rays.windows(2).zip(cuts.windows(2)) {
        out.push(Segment::Cubic(hermite(pair[0], pair[1], t[1] - t[0])));
    }
    Ok(())
}

fn hermite<S: Scalar>(a: (Pt<S>, Pt<S>), b: (Pt<S>, Pt<S>), step: f64) -> Cubic<S> {
    [a.0, a.0 + a.1.scaled(step / 3.0), b.0 - b.1.scaled(step / 3.0), b.0]
}

/// A place of the parallel and its derivative by the segment's parameter; none where it would run backwards.
fn ray<S: Scalar>(segment: &Segment<S>, apart: Apart<S>, t: f64) -> Option<(Pt<S>, Pt<S>)> {
    let u = S::constant(t);
    let along = segment.tangent(u)?;
    let velocity = segment.velocity(u);
    let speed = velocity.length();
    let turning =
        if speed.value() > 0.0 { velocity.cross(segment.acceleration(u)) / (speed * speed) } else { S::zero() };
    let distance = apart.at(segment, u);
    let forward = speed - distance * turning;
    if forward.value() < 0.0 || (forward.value() == 0.0 && speed.value() > 0.0) || !forward.value().is_finite() {
        return None;
    }
    let way = along.times(forward) + along.square().times(apart.grow * speed);
    Some((segment.point(u) + along.square().times(distance), way))
}
