//! What can be wrong with the data of a curve.

use thiserror::Error;

/// Why a curve could not be made.
#[derive(Clone, Copy, Debug, PartialEq, Error)]
pub enum CurveError {
    /// No segments.
    #[error("a curve needs at least one segment")]
    Empty,
    /// A coordinate is infinite or not a number.
    #[error("a coordinate of segment {segment} is not a finite number")]
    NotFinite {
        /// Counted from 0.
        segment: usize,
    },
    /// A segment does not start where the one before it ends.
    #[error("segment {segment} starts {gap} mm away from the end of the one before it")]
    Gap {
        /// Counted from 0.
        segment: usize,
        /// mm
        gap: f64,
    },
    /// The ends of an arc are not equally far from its centre.
    #[error("the ends of the arc differ by {difference} mm in their distance from its centre")]
    RadiiDiffer {
        /// Radius at the end less radius at the start, mm.
        difference: f64,
    },
    /// An end of an arc lies on its centre.
    #[error("the arc has no radius")]
    NoRadius,
    /// A spline through fewer than two points.
    #[error("a spline needs at least two points")]
    TooFewPoints,
    /// Two neighbouring points of a spline lie on each other.
    #[error("point {point} of the spline lies on the one before it")]
    PointsCoincide {
        /// The second of the two, counted from 0.
        point: usize,
    },
}
