//! Geometry of edges: points, segments, curves, their lengths and places.
//!
//! Generic over [`Scalar`](crate::base::Scalar), so that a length inside an equation carries its exact derivatives. Search
//! (which parameter, which root) happens on plain values; one step of Newton's then carries the derivatives.
//! Millimetres and radians; x to the right, y down, angles clockwise as seen. Knows no document and no language: names,
//! darts and allowances are for `compute` and `finish`.

mod arc;
mod cubic;
mod curve;
mod error;
mod feet;
mod locate;
mod meet;
mod parallel;
mod place;
mod point;
mod quadrature;
mod rigid;
mod roots;
mod segment;
mod set_off;
mod spline;

pub use arc::Arc;
pub use curve::Curve;
pub use error::CurveError;
pub use locate::Located;
pub use meet::{Endless, Met};
pub use parallel::NoParallel;
pub use point::Pt;
pub use rigid::Rigid;
pub use segment::Segment;
pub use set_off::SetOff;
pub use spline::spline;
