//! What everything else stands on: scalars, units, spans, tolerances, findings.
//!
//! Millimetres and radians inside, everywhere. Knows nothing of drafts.

mod digest;
mod dual;
mod finding;
mod finding_codes;
mod rounding;
mod scalar;
mod span;
mod spoken;
pub mod system;
pub mod tolerance;
mod unit;

pub use digest::digest;
pub use dual::Dual;
pub use finding::{Amount, Finding, Mend, Place, Severity, Words};
pub use finding_codes::Code;
pub use rounding::{round_half_away, rounded_up, shown, shown_small};
pub use scalar::Scalar;
pub use span::Span;
pub use spoken::Language;
pub use unit::{DisplayUnit, Unit};
