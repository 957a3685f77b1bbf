//! A curve: segments one after the other, with their lengths.

use kurbo::{BezPath, Rect};

use super::{CurveError, Pt, Rigid, Segment};
use crate::base::{Scalar, tolerance};

/// Segments end to start, at least one, all finite; lengths are computed once.
///
/// A *flat place* is a length along the curve from its start, mm.
#[derive(Clone, Debug, PartialEq)]
pub struct Curve<S> {
    segments: Vec<Segment<S>>,
    lengths: Vec<S>,
    total: S,
}

impl<S: Scalar> Curve<S> {
    /// The curve of these segments.
    ///
    /// # Errors
    /// No segments; a coordinate that is not finite; a gap of more than 0.01 mm between two of them.
    pub fn new(segments: Vec<Segment<S>>) -> Result<Self, CurveError> {
        Self::check(&segments)?;
        let lengths: Vec<S> = segments.iter().map(Segment::length).collect();
        match lengths.iter().position(|length| !length.value().is_finite()) {
            Some(segment) => Err(CurveError::NotFinite { segment }),
            None => Ok(Self::with_lengths(segments, lengths)),
        }
    }
    /// Whether segments make a curve.
    fn check(segments: &[Segment<S>]) -> Result<(), CurveError> {
        if segments.is_empty() {
            return Err(CurveError::Empty);
        }
        if let Some(segment) = segments.iter().position(|s| !s.is_finite()) {
            return Err(CurveError::NotFinite { segment });
        }
        for (i, pair) in segments.windows(2).enumerate() {
            let gap = (pair[1].start().plain() - pair[0].end().plain()).length();
            if gap > tolerance::ON_EDGE {
                return Err(CurveError::Gap { segment: i + 1, gap });
            }
        }
        Ok(())
    }
    /// The closed path that these segments draw; where nothing else is asked, their lengths need not be computed.
    ///
    /// # Errors
    /// As [`Curve::new`].
    pub fn ring(segments: &[Segment<S>]) -> Result<BezPath, CurveError> {
        Self::check(segments)?;
        let mut path = drawn(segments);
        path.close_path();
        Ok(path)
    }
    /// The straight curve between two points.
    ///
    /// # Errors
    /// A coordinate that is not finite.
    pub fn straight(a: Pt<S>, b: Pt<S>) -> Result<Self, CurveError> {
        Self::new(vec![Segment::Line(a, b)])
    }
    /// Without derivatives.
    pub fn plain(&self) -> Curve<f64> {
        let lengths = self.lengths.iter().map(|l| l.value()).collect();
        Curve::with_lengths(self.segments.iter().map(Segment::plain).collect(), lengths)
    }
    pub(super) fn with_lengths(segments: Vec<Segment<S>>, lengths: Vec<S>) -> Self {
        let total = lengths.iter().fold(S::zero(), |sum, l| sum + *l);
        Self { segments, lengths, total }
    }
    /// A plain curve as one that does not depend on anything.
    pub fn lifted(plain: &Curve<f64>) -> Self {
        let segments = plain.segments.iter().map(Segment::lifted).collect();
        let lengths = plain.lengths.iter().map(|l| S::constant(*l)).collect();
        Self { segments, lengths, total: S::constant(plain.total) }
    }
    /// Its segments.
    pub fn segments(&self) -> &[Segment<S>] {
        &self.segments
    }
    /// The length of each segment, mm.
    pub fn lengths(&self) -> &[S] {
        &self.lengths
    }
    /// The whole (flat) length, mm; each cubic's within 1e-9 mm.
    pub fn length(&self) -> S {
        self.total
    }
    /// Where it starts.
    pub fn start(&self) -> Pt<S> {
        self.segments[0].start()
    }
    /// Where it ends.
    pub fn end(&self) -> Pt<S> {
        self.segments[self.segments.len() - 1].end()
    }
    /// Unit direction in which it leaves its start; none if the first segment is a mere point.
    pub fn start_tangent(&self) -> Option<Pt<S>> {
        self.segments[0].tangent(S::zero())
    }
    /// Unit direction in which it arrives at its end; none if the last segment is a mere point.
    pub fn end_tangent(&self) -> Option<Pt<S>> {
        self.segments[self.segments.len() - 1].tangent(S::constant(1.0))
    }
    /// The same curve run the other way.
    pub fn reversed(&self) -> Self {
        let segments = self.segments.iter().rev().map(Segment::reversed).collect();
        Self::with_lengths(segments, self.lengths.iter().rev().copied().collect())
    }
    /// After a rigid motion, which keeps the lengths.
    pub fn moved(&self, motion: &Rigid<S>) -> Self {
        let segments = self.segments.iter().map(|s| s.moved(motion)).collect();
        Self { segments, lengths: self.lengths.clone(), total: self.total }
    }
    /// Integral of (x dy - y dx) / 2, exactly: summed over the edges of a ring its area in mm², positive if the ring runs clockwise as
    /// seen.
    pub fn area_under(&self) -> S {
        self.segments.iter().fold(S::zero(), |sum, s| sum + s.area_under())
    }
    /// The smallest upright rectangle around it, mm.
    pub fn bounds(&self) -> Rect {
        let first = self.segments[0].bounds();
        self.segments.iter().skip(1).fold(first, |r, s| r.union(s.bounds()))
    }
    /// For drawing: arcs become cubics within 1e-4 mm, all else is exact.
    pub fn to_path(&self) -> BezPath {
        drawn(&self.segments)
    }
    /// The curve that a path draws, without its closing line.
    ///
    /// # Errors
    /// As [`Curve::new`].
    pub fn from_path(path: &BezPath) -> Result<Curve<f64>, CurveError> {
        let at = |p: kurbo::Point| Pt::new(p.x, p.y);
        let segments = path.segments().map(|s| match s {
            kurbo::PathSeg::Line(l) => Segment::Line(at(l.p0), at(l.p1)),
            kurbo::PathSeg::Quad(q) => {
                let c = q.raise();
                Segment::Cubic([at(c.p0), at(c.p1), at(c.p2), at(c.p3)])
            }
            kurbo::PathSeg::Cubic(c) => Segment::Cubic([at(c.p0), at(c.p1), at(c.p2), at(c.p3)]),
        });
        Curve::new(segments.collect())
    }
    /// After a motion of the plane that keeps straight lines straight, such as a shrinkage. Arcs become cubics within 1e-4 mm.
    ///
    /// # Errors
    /// As [`Curve::new`].
    pub fn warped(&self, warp: kurbo::Affine) -> Result<Curve<f64>, CurveError> {
        Self::from_path(&(warp * self.to_path()))
    }
    /// Whether every coordinate and length is a number. A new curve's are; derivatives may have been infinite on the way.
    pub fn is_finite(&self) -> bool {
        self.total.value().is_finite() && self.segments.iter().all(Segment::is_finite)
    }
}

impl Curve<f64> {
    /// Run straight on by `before` at its start and by `more` at its end; none where it has no direction there.
    pub fn run_on(&self, before: f64, more: f64) -> Option<Self> {
        let (mut segments, mut lengths) = (self.segments.clone(), self.lengths.clone());
        if before > 0.0 {
            let line = Segment::Line(self.start() - self.start_tangent()?.scaled(before), self.start());
            segments.insert(0, line);
            lengths.insert(0, line.length());
        }
        if more > 0.0 {
            let line = Segment::Line(self.end(), self.end() + self.end_tangent()?.scaled(more));
            segments.push(line);
            lengths.push(line.length());
        }
        let curve = Self::with_lengths(segments, lengths);
        curve.is_finite().then_some(curve)
    }
}

fn drawn<S: Scalar>(segments: &[Segment<S>]) -> BezPath {
    let mut path = BezPath::new();
    if let Some(first) = segments.first() {
        path.move_to(first.start().value());
    }
    segments.iter().for_each(|segment| segment.draw(&mut path));
    path
}
