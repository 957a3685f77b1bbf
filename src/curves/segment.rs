//! One stretch of a curve: straight, cubic or arc.

use kurbo::{BezPath, ParamCurveNearest, Rect, Shape};

use super::cubic::{self, Cubic};
use super::{Arc, CurveError, Pt, Rigid};
use crate::base::{Scalar, tolerance};

/// One stretch of a curve.
///
/// Each kind has a parameter from 0 to 1: the fraction of the length of a line, of the angle of an arc, Bézier's of a cubic.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Segment<S> {
    /// Straight, from the first to the second point.
    Line(Pt<S>, Pt<S>),
    /// Cubic Bézier: start, two handles, end.
    Cubic(Cubic<S>),
    /// An arc of a circle.
    Arc(Arc<S>),
}

impl<S: Scalar> Segment<S> {
    /// The arc from `from` to `to` about `centre`, clockwise as seen or counter to it.
    ///
    /// # Errors
    /// As [`Arc::new`]: the radii may differ by 0.01 mm.
    pub fn arc(from: Pt<S>, to: Pt<S>, centre: Pt<S>, clockwise: bool) -> Result<Self, CurveError> {
        Arc::new(from, to, centre, clockwise).map(Self::Arc)
    }
    /// A plain segment as one that does not depend on anything.
    pub fn lifted(plain: &Segment<f64>) -> Self {
        match plain {
            Segment::Line(a, b) => Self::Line(Pt::constant(*a), Pt::constant(*b)),
            Segment::Cubic(p) => Self::Cubic(p.map(Pt::constant)),
            Segment::Arc(arc) => Self::Arc(Arc::lifted(arc)),
        }
    }
    /// Where it starts.
    pub fn start(&self) -> Pt<S> {
        match self {
            Self::Line(a, _) => *a,
            Self::Cubic(c) => c[0],
            Self::Arc(a) => a.from(),
        }
    }
    /// Where it ends.
    pub fn end(&self) -> Pt<S> {
        match self {
            Self::Line(_, b) => *b,
            Self::Cubic(c) => c[3],
            Self::Arc(a) => a.to(),
        }
    }
    /// Length, mm: a cubic's within 1e-9 mm, the others' in closed form.
    pub fn length(&self) -> S {
        match self {
            Self::Line(a, b) => (*b - *a).length(),
            Self::Cubic(c) => cubic::length(c, 0.0, 1.0),
            Self::Arc(a) => a.length(),
        }
    }
    /// Point at the parameter `u`, 0 to 1.
    pub fn point(&self, u: S) -> Pt<S> {
        match self {
            Self::Line(a, b) => a.towards(*b, u),
            Self::Cubic(c) => cubic::point(c, u),
            Self::Arc(a) => a.point(u),
        }
    }
    /// Unit direction of travel at the parameter `u`; none on a segment that is a mere point.
    pub fn tangent(&self, u: S) -> Option<Pt<S>> {
        match self {
            Self::Line(a, b) => (*b - *a).unit(),
            Self::Cubic(c) => cubic::tangent(c, u),
            Self::Arc(a) => a.velocity(u).unit(),
        }
    }
    /// The same stretch run the other way.
    pub fn reversed(&self) -> Self {
        match self {
            Self::Line(a, b) => Self::Line(*b, *a),
            Self::Cubic([a, b, c, d]) => Self::Cubic([*d, *c, *b, *a]),
            Self::Arc(a) => Self::Arc(a.reversed()),
        }
    }
    /// After a rigid motion.
    pub fn moved(&self, motion: &Rigid<S>) -> Self {
        match self {
            Self::Line(a, b) => Self::Line(motion.of(*a), motion.of(*b)),
            Self::Cubic(c) => Self::Cubic(c.map(|p| motion.of(p))),
            Self::Arc(a) => Self::Arc(a.moved(motion)),
        }
    }
    /// Integral of (x dy - y dx) / 2, exactly; summed over a ring its area, positive if it runs clockwise as seen.
    pub fn area_under(&self) -> S {
        match self {
            Self::Line(a, b) => a.cross(*b).times(0.5),
            Self::Cubic(c) => cubic::area_under(c),
            Self::Arc(a) => a.area_under(),
        }
    }
    /// Whether every coordinate is a number.
    pub fn is_finite(&self) -> bool {
        match self {
            Self::Line(a, b) => a.is_finite() && b.is_finite(),
            Self::Cubic(c) => c.iter().all(|p| p.is_finite()),
            Self::Arc(a) => a.is_finite(),
        }
    }

    /// Without derivatives.
    pub(super) fn plain(&self) -> Segment<f64> {
        match self {
            Self::Line(a, b) => Segment::Line(a.plain(), b.plain()),
            Self::Cubic(c) => Segment::Cubic(cubic::plain(c)),
            Self::Arc(a) => Segment::Arc(a.plain()),
        }
    }
    /// Derivative of the point by the parameter.
    pub(super) fn velocity(&self, u: S) -> Pt<S> {
        match self {
            Self::Line(a, b) => *b - *a,
            Self::Cubic(c) => cubic::velocity(c, u),
            Self::Arc(a) => a.velocity(u),
        }
    }
    /// Second derivative of the point by the parameter.
    pub(super) fn acceleration(&self, u: S) -> Pt<S> {
        match self {
            Self::Line(..) => Pt::new(S::zero(), S::zero()),
            Self::Cubic(c) => cubic::bend(c, u),
            Self::Arc(a) => (a.centre() - a.point(u)).times(a.sweep() * a.sweep()),
        }
    }
    /// The parameter up to which the length is `s`, given the whole length.
    pub(super) fn parameter_at(&self, s: S, length: S) -> S {
        if length.value() <= tolerance::ARC_LENGTH {
            return S::zero();
        }
        match self {
            Self::Line(..) => s / length,
            Self::Cubic(c) => {
                let t = cubic::parameter_at(&cubic::plain(c), s.value(), length.value());
                cubic::carried_parameter(c, s, t)
            }
            Self::Arc(a) => a.fraction_at(s),
        }
    }
    /// The point up to which the length is `s`.
    pub(super) fn point_at(&self, s: S, length: S) -> Pt<S> {
        let Self::Cubic(c) = self else { return self.point(self.parameter_at(s, length)) };
        // Not by the parameter: where the curve stands still that has no derivative, the point has.
        let (flat, s0) = (cubic::plain(c), s.value());
        let t = cubic::parameter_at(&flat, s0, length.value());
        let point = cubic::point(c, S::constant(t));
        let Some(tangent) = cubic::tangent(&flat, t) else { return point };
        point + Pt::constant(tangent).times(s - cubic::length(c, 0.0, t))
    }
    /// The length up to the parameter `u`.
    pub(super) fn length_to(&self, u: S) -> S {
        match self {
            Self::Line(a, b) => (*b - *a).length() * u,
            Self::Cubic(c) => {
                let (t, speed) = (u.value(), cubic::velocity(&cubic::plain(c), u.value()).length());
                cubic::length(c, 0.0, t) + u.plus(-t).times(speed)
            }
            Self::Arc(a) => a.length_to(u),
        }
    }
    /// The part between two parameters.
    pub(super) fn part(&self, u0: S, u1: S) -> Self {
        match self {
            Self::Line(a, b) => Self::Line(a.towards(*b, u0), a.towards(*b, u1)),
            Self::Cubic(c) => Self::Cubic(cubic::part(c, u0, u1)),
            Self::Arc(a) => Self::Arc(a.part(u0, u1)),
        }
    }
    /// The parameter at which it comes nearest to `p`.
    pub(super) fn nearest(&self, p: Pt<f64>) -> f64 {
        match self {
            Self::Line(a, b) => {
                let (a, way) = (a.plain(), b.plain() - a.plain());
                let square = way.dot(way);
                if square > 0.0 { ((p - a).dot(way) / square).clamp(0.0, 1.0) } else { 0.0 }
            }
            Self::Cubic(c) => nearest_on_cubic(&cubic::plain(c), p),
            Self::Arc(a) => a.nearest(p),
        }
    }
    /// The smallest upright rectangle around it.
    pub(super) fn bounds(&self) -> Rect {
        let ends = Rect::from_points(self.start().value(), self.end().value());
        match self {
            Self::Line(..) => ends,
            Self::Cubic(c) => cubic::to_kurbo(c).bounding_box(),
            Self::Arc(a) => {
                let arc = a.plain();
                arc.extremes().into_iter().fold(ends, |r, u| r.union_pt(arc.point(u).value()))
            }
        }
    }
    /// Added to a path that has reached its start.
    pub(super) fn draw(&self, path: &mut BezPath) {
        match self {
            Self::Line(_, b) => path.line_to(b.value()),
            Self::Cubic(c) => path.curve_to(c[1].value(), c[2].value(), c[3].value()),
            Self::Arc(a) => a.plain().draw(path),
        }
    }
}

/// The curve library finds all roots of the quintic; they are polished here and the ends looked at.
fn nearest_on_cubic(c: &Cubic<f64>, p: Pt<f64>) -> f64 {
    const POLISHING_STEPS: usize = 4;
    let distance = |t: f64| (cubic::point(c, t) - p).length();
    let mut best = to_range(cubic::to_kurbo(c).nearest(p.value(), tolerance::ARC_LENGTH).t);
    for _ in 0..POLISHING_STEPS {
        let (off, velocity) = (cubic::point(c, best) - p, cubic::velocity(c, best));
        let slope = velocity.dot(velocity) + off.dot(cubic::bend(c, best));
        let next = to_range(best - off.dot(velocity) / slope);
        if slope <= 0.0 || distance(next) >= distance(best) {
            break;
        }
        best = next;
    }
    let end = if distance(1.0) < distance(0.0) { 1.0 } else { 0.0 };
    if distance(end) <= distance(best) { end } else { best }
}

/// Also turns what is not a number into 0.
fn to_range(t: f64) -> f64 {
    if t > 0.0 { t.min(1.0) } else { 0.0 }
}
