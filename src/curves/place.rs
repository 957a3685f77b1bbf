//! Places on a curve by their flat length from its start, and parts between two of them.

use super::{Curve, Pt, Segment};
use crate::base::{Scalar, tolerance};

impl<S: Scalar> Curve<S> {
    /// The point at the flat place `s`, within 1e-9 mm; none outside the curve by more than 1e-6 mm, the end within that.
    pub fn point_at(&self, s: S) -> Option<Pt<S>> {
        let (i, rest) = self.segment_at(self.clamped(s)?, true);
        Some(self.segments()[i].point_at(rest, self.lengths()[i]))
    }
    /// Unit direction of travel at the flat place `s`; where two segments meet, of the one that starts there. None outside the curve,
    /// or on a segment that is a mere point.
    pub fn tangent_at(&self, s: S) -> Option<Pt<S>> {
        let (i, rest) = self.segment_at(self.clamped(s)?, true);
        let segment = &self.segments()[i];
        segment.tangent(segment.parameter_at(rest, self.lengths()[i]))
    }
    /// The part from the flat place `s0` to `s1`, in the curve's direction; none unless 0 <= `s0` <= `s1` <= length, within 1e-6 mm. Of no
    /// length: a line of no length.
    pub fn between(&self, s0: S, s1: S) -> Option<Self> {
        let (s0, s1) = (self.clamped(s0)?, self.clamped(s1)?);
        if (s1 - s0).value() < -tolerance::EQUAL {
            return None;
        }
        if (s1 - s0).value() <= tolerance::SOLVED {
            let (a, b) = (self.point_at(s0)?, self.point_at(s1)?);
            return Some(Self::with_lengths(vec![Segment::Line(a, b)], vec![s1 - s0]));
        }
        let (first, rest0) = self.segment_at(s0, true);
        let (last, rest1) = self.segment_at(s1, false);
        let (mut segments, mut lengths) = (Vec::new(), Vec::new());
        for i in first..=last {
            let (segment, length) = (&self.segments()[i], self.lengths()[i]);
            let from = if i == first { segment.parameter_at(rest0, length) } else { S::zero() };
            let to = if i == last { segment.parameter_at(rest1, length) } else { S::constant(1.0) };
            let part = segment.part(from, to);
            lengths.push(part.length());
            segments.push(part);
        }
        Some(Self::with_lengths(segments, lengths))
    }
    /// Point and tangent at once.
    pub(super) fn ray_at(&self, s: S) -> Option<(Pt<S>, Pt<S>)> {
        let (i, rest) = self.segment_at(self.clamped(s)?, true);
        let segment = &self.segments()[i];
        let u = segment.parameter_at(rest, self.lengths()[i]);
        Some((segment.point(u), segment.tangent(u)?))
    }
    /// The segment of a flat place, and the parameter in it; none outside the curve.
    pub(super) fn parameter_of(&self, s: S) -> Option<(&Segment<S>, S)> {
        let (i, rest) = self.segment_at(self.clamped(s)?, true);
        let segment = &self.segments()[i];
        Some((segment, segment.parameter_at(rest, self.lengths()[i])))
    }
    /// The flat place at which segment `i` starts.
    pub(super) fn start_of(&self, i: usize) -> S {
        self.lengths()[..i].iter().fold(S::zero(), |sum, l| sum + *l)
    }

    /// The place moved onto the curve if it is outside by no more than 1e-6 mm; its derivatives stay.
    pub(super) fn clamped(&self, s: S) -> Option<S> {
        let (at, end) = (s.value(), self.length().value());
        if at >= -tolerance::EQUAL && at <= end + tolerance::EQUAL {
            Some(s.plus(at.clamp(0.0, end) - at))
        } else {
            None
        }
    }
    /// The segment of a place on the curve, and the length within it. A place less than 1e-9 mm from where two segments meet belongs to
    /// the one that starts there (`leaving`) or that ends there: so no part ever begins or ends with a sliver.
    fn segment_at(&self, s: S, leaving: bool) -> (usize, S) {
        let reach = if leaving { -tolerance::SOLVED } else { tolerance::SOLVED };
        let mut rest = s;
        for (i, length) in self.lengths().iter().enumerate() {
            let over = (rest - *length).value();
            if i + 1 == self.lengths().len() || if leaving { over < reach } else { over <= reach } {
                return (i, rest);
            }
            rest = rest - *length;
        }
        (0, s)
    }
}
