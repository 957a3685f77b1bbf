//! All tests in one binary: a second one would link everything again.
#![allow(clippy::unwrap_used, clippy::disallowed_methods, clippy::disallowed_types, missing_docs)]
mod house;
