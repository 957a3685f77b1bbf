//! Tracewheel: a drafting table for garment patterns.
//!
//! Pieces whose points are formulas over a body chart, seams that are kept true in every size, a plain text file, and
//! sheets at the end. See `DEVELOPERS.md` for the map of the house.

pub mod base;
pub mod document;
pub mod numeric;
