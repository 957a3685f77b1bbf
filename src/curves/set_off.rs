//! Parallel curves: their length, exactly, and their drawing, fitted.

use kurbo::{BezPath, offset::offset_cubic};

use super::cubic::{self, Cubic};
use super::quadrature::{agrees, integral};
use super::{Curve, Pt, Segment};
use crate::base::{Scalar, tolerance};

/// A curve set off, for drawing.
#[derive(Clone, Debug, PartialEq)]
pub struct SetOff {
    /// The parallel curve, within 1e-3 mm where it is regular. Where two segments meet at a corner, a straight line joins them.
    pub path: BezPath,
    /// Whether the distance exceeds the radius of curvature somewhere (also by turning back on the spot), so that the path runs backwards
    /// there. Such loops are left in.
    pub folds: bool,
}

impl<S: Scalar> Curve<S> {
    /// Length of the parallel curve on the right-hand side of travel as seen (negative distances: on the left), the distance running evenly
    /// by arc length from `d0` at the start to `d1` at the end.
    ///
    /// The exact integral of the parallel's speed, within 1e-9 mm for each segment; what runs backwards counts too; corners between
    /// segments add nothing.
    pub fn set_off_length(&self, d0: S, d1: S) -> S {
        if self.length().value() <= tolerance::ARC_LENGTH {
            return S::zero();
        }
        let grow = (d1 - d0) / self.length();
        let mut sum = S::zero();
        let mut from = d0;
        for (segment, length) in self.segments().iter().zip(self.lengths()) {
            sum = sum + set_off_length(segment, *length, from, grow);
            from = from + grow * *length;
        }
        sum
    }
    /// The parallel curve at distance `d` on the right-hand side of travel as seen (negative: on the left). Derivatives are dropped.
    pub fn set_off(&self, d: f64) -> SetOff {
        let mut off = SetOff { path: BezPath::new(), folds: false };
        for segment in self.segments() {
            match segment {
                Segment::Line(a, b) => off.add_straight(&[a.plain(), b.plain()], d),
                Segment::Cubic(c) => off.add_cubic(&cubic::plain(c), d),
                Segment::Arc(a) => {
                    let arc = a.plain();
                    // Clockwise as seen the centre is on the right.
                    let moved = arc.with_radii_grown(-d * arc.sense());
                    off.folds |= moved.radius() < 0.0;
                    off.reach(moved.from());
                    moved.draw(&mut off.path);
                }
            }
        }
        off
    }
}

/// The integral for one segment: with the curvature k (clockwise positive) and the distance d(s), the parallel's speed is
/// hypot(1 - k d, d') times the curve's own.
fn set_off_length<S: Scalar>(segment: &Segment<S>, length: S, d: S, grow: S) -> S {
    if length.value() <= tolerance::ARC_LENGTH {
        return S::zero();
    }
    match segment {
        Segment::Line(..) => length.hypot(grow * length),
        Segment::Arc(a) => {
            let sense = S::constant(a.sense());
            let speed = |u: f64| {
                let u = S::constant(u);
                let radius = a.radius_at(u);
                a.span() * (radius - sense * (d + grow * a.length_to(u))).hypot(grow * radius)
            };
            integral(agrees(|u| speed(u).value()), speed, 0.0, 1.0)
        }
        Segment::Cubic(c) => {
            let speed = |t: f64| {
                let at = S::constant(t);
                let (velocity, bend) = (cubic::velocity(c, at), cubic::bend(c, at));
                let own = velocity.length();
                if own.value() == 0.0 {
                    return S::zero();
                }
                let turning = velocity.cross(bend) / (own * own);
                let distance = d + grow * cubic::length(c, 0.0, t);
                (own - distance * turning).hypot(grow * own)
            };
            integral(agrees(|t| speed(t).value()), speed, 0.0, 1.0)
        }
    }
}

impl SetOff {
    /// Goes to `p`: nothing if the path is there.
    fn reach(&mut self, p: Pt<f64>) {
        let p = p.value();
        if self.path.elements().is_empty() {
            self.path.move_to(p);
        } else if self.path.current_position().is_some_and(|q| q.distance(p) > tolerance::EQUAL) {
            self.path.line_to(p);
        }
    }
    /// Straight legs through `points`, each set off by itself.
    fn add_straight(&mut self, points: &[Pt<f64>], d: f64) {
        for leg in points.windows(2) {
            let Some(along) = (leg[1] - leg[0]).unit() else { continue };
            let aside = along.square().scaled(d);
            self.reach(leg[0] + aside);
            self.path.line_to((leg[1] + aside).value());
        }
        self.folds |= d != 0.0 && points.len() > 2;
    }
    /// The stretch of a cubic from `t0` to `t1`, set off by cubics that share ends and derivatives with the true parallel, halved until they
    /// are within half of 1e-3 mm of it at equal parameters.
    fn add_fitted(&mut self, c: &Cubic<f64>, d: f64, t0: f64, t1: f64) {
        const MOST_HALVINGS: u32 = 40;
        const MOST_PIECES: u32 = 1000;
        let mut waiting = vec![(t0, t1, 0)];
        let mut seen = 0;
        while let Some((a, b, halvings)) = waiting.pop() {
            let (Some((start, out)), Some((end, back))) = (parallel(c, d, a, false), parallel(c, d, b, true)) else {
                continue;
            };
            let third = (b - a) / 3.0;
            let fit = [start, start + out.scaled(third), end - back.scaled(third), end];
            let is_off = [0.25, 0.5, 0.75].into_iter().any(|u| {
                let there = parallel(c, d, a + u * (b - a), false);
                there.is_some_and(|(p, _)| (cubic::point(&fit, u) - p).length() > 0.5 * tolerance::CURVE)
            });
            seen += 1;
            if is_off && halvings < MOST_HALVINGS && seen < MOST_PIECES {
                let middle = 0.5 * (a + b);
                waiting.extend([(middle, b, halvings + 1), (a, middle, halvings + 1)]);
            } else {
                self.reach(start);
                self.path.curve_to(fit[1].value(), fit[2].value(), end.value());
            }
        }
    }
    fn add_cubic(&mut self, c: &Cubic<f64>, d: f64) {
        let far = c.map(|p| p - c[0]).into_iter().max_by(|a, b| a.length().total_cmp(&b.length()));
        let Some(along) = far.and_then(Pt::unit) else { return };
        if c.iter().all(|p| along.cross(*p - c[0]).abs() <= tolerance::EQUAL) {
            // The curve library asks for such cubics as lines.
            return self.add_straight(&turns(c, along), d);
        }
        let bends = cubic::sharp_bends(c);
        if bends.is_empty() {
            let mut path = BezPath::new();
            // The library's own estimate of its error was seen 20 % short: half the tolerance leaves room.
            offset_cubic(cubic::to_kurbo(c), d, 0.5 * tolerance::CURVE, &mut path);
            let mut elements = path.into_iter();
            if let Some(kurbo::PathEl::MoveTo(p)) = elements.next() {
                self.reach(Pt::new(p.x, p.y));
            }
            elements.for_each(|e| self.path.push(e));
        } else {
            // There the library was seen off by up to 0.4 mm (60 000 random cubics; none elsewhere).
            let ends: Vec<f64> = [0.0].into_iter().chain(bends).chain([1.0]).collect();
            for stretch in ends.windows(2) {
                self.add_fitted(c, d, stretch[0], stretch[1]);
            }
        }
        self.folds |= folds(c, d);
    }
}

/// A place of the parallel of a cubic and its derivative by the cubic's parameter; at the upper end of a stretch (`arriving`) the limit
/// from below.
fn parallel(c: &Cubic<f64>, d: f64, t: f64, arriving: bool) -> Option<(Pt<f64>, Pt<f64>)> {
    let along = if arriving { cubic::tangent(&cubic::part(c, 0.0, t), 1.0) } else { cubic::tangent(c, t) }?;
    let (velocity, bend) = (cubic::velocity(c, t), cubic::bend(c, t));
    let square = velocity.dot(velocity);
    let turning = if square > 0.0 { velocity.cross(bend) / square } else { 0.0 };
    let speed = square.sqrt() - d * turning;
    Some((cubic::point(c, t) + along.square().scaled(d), along.scaled(speed)))
}

/// Start, places of turning back and end of a cubic whose points are on one line.
fn turns(c: &Cubic<f64>, along: Pt<f64>) -> Vec<Pt<f64>> {
    let [a, b, d] = [c[1] - c[0], c[2] - c[1], c[3] - c[2]].map(|leg| leg.dot(along));
    // The derivative is a + 2 (b - a) t + (a - 2 b + d) t².
    let mut roots: Vec<f64> = kurbo::common::solve_quadratic(a, 2.0 * (b - a), a - 2.0 * b + d)
        .into_iter()
        .filter(|t| *t > 0.0 && *t < 1.0)
        .collect();
    roots.sort_by(f64::total_cmp);
    let mut points = vec![c[0]];
    points.extend(roots.into_iter().map(|t| cubic::point(c, t)));
    points.push(c[3]);
    points
}

/// Whether curvature times `d` exceeds 1 somewhere on the cubic: sampled, the lowest places refined.
fn folds(c: &Cubic<f64>, d: f64) -> bool {
    const SAMPLES: u32 = 64;
    const REFINING_STEPS: u32 = 40;
    // |v|³ (1 - k d): has no denominator.
    let room = |t: f64| {
        let velocity = cubic::velocity(c, t);
        let speed = velocity.length();
        speed * speed * speed - d * velocity.cross(cubic::bend(c, t))
    };
    let at = |i: u32| f64::from(i) / f64::from(SAMPLES);
    let values: Vec<f64> = (0..=SAMPLES).map(|i| room(at(i))).collect();
    if values.iter().any(|v| *v < 0.0) {
        return true;
    }
    // Between the neighbours of a low sample the interval is cut to a third of two parts, towards the lower side.
    (1..SAMPLES).filter(|i| values[*i as usize] <= values[*i as usize - 1].min(values[*i as usize + 1])).any(|i| {
        let (mut low, mut high) = (at(i - 1), at(i + 1));
        (0..REFINING_STEPS).any(|_| {
            let (a, b) = (low + (high - low) / 3.0, high - (high - low) / 3.0);
            let (at_a, at_b) = (room(a), room(b));
            if at_a < at_b {
                high = b;
            } else {
                low = a;
            }
            at_a.min(at_b) < 0.0
        })
    })
}
