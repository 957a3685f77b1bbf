//! Bounded nonlinear least squares: what values make equations true, nearest to where they started?
//!
//! [`settle()`] finds the *settled* solution: the local minimiser, reached from the start, of
//! `sum(((x - start) / scale)^2)` subject to the equations and the limits. Two phases:
//!
//! 1. `reach.rs`: a bounded Levenberg-Marquardt (full Gauss-Newton steps inside a trust radius, damped only where they
//!    fail) brings the residuals to [`SOLVED`](crate::base::tolerance::SOLVED), or to a least-squares point;
//! 2. `nearest.rs`: where the equations leave freedom, sequential quadratic programming slides along it to the point
//!    nearest the start, limits included.
//!
//! Knows nothing of garments or documents: who the unknowns are, where the limits come from and how a failure is
//! worded belongs to `compute` and `proof`. Counts bound every loop, never a clock, and the same input gives the same
//! bits. All linear algebra of the program is behind `factor.rs`.

mod boxed;
mod diagnosis;
mod factor;
mod nearest;
mod program;
mod reach;
mod settle;
mod system;

pub use diagnosis::{Chosen, conflict, effect};
pub use settle::{Bound, Ending, Settled, settle, settle_from};
pub use system::{EVALUATIONS, Equations, ITERATIONS, Unknowns};
