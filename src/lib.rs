//! Tracewheel: a drafting table for garment patterns.
//!
//! Pieces whose points are formulas over a body chart, seams that are kept true in every size, a plain text file, and
//! sheets at the end. See `DEVELOPERS.md` for the map of the house.

#[cfg(feature = "window")]
pub mod app;
pub mod base;
pub mod cli;
pub mod compute;
pub mod curves;
pub mod document;
pub mod file;
pub mod finish;
pub mod help;
pub mod language;
pub mod numeric;
pub mod output;
pub mod proof;
pub mod session;
pub mod texts;

/// A frame of the window takes and gives back much memory; this one keeps it at hand. Measured: half the time of a frame at rest.
#[cfg(feature = "window")]
#[global_allocator]
static MEMORY: mimalloc::MiMalloc = mimalloc::MiMalloc;
