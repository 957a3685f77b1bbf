//! All tests in one binary: a second one would link everything again.
#![allow(clippy::unwrap_used, missing_docs)]

mod numeric_diagnosis;
mod numeric_projection;
mod numeric_settle;
mod numeric_systems;
