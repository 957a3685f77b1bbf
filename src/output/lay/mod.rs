//! Cloth: how pieces are laid on it, and how much of it must be bought.
//!
//! `finish::on_cloth` says what comes on a cloth, `job` how it may lie, `packing` looks for a short layout and checks any, `plan` is such a
//! lay and its kept form, `length` what must be bought, `picture` and `pages` what is drawn. Which lays are wanted, and when, is `session::laying`'s.

mod error;
mod job;
mod kept;
mod length;
pub mod packing;
mod pages;
mod picture;
mod plan;

pub use error::LayError;
pub use job::{LayJob, LayNote, LayShape, LayStretch, OddOne, lay_job};
pub use kept::{KeptLay, fresh_lay, kept_lays, kept_lays_of};
pub use length::{Need, rounded_up, yards, yards_exact};
pub use pages::{Named, cloth_words, common_words, lay_page, lay_pages, lay_rows, lay_words, need_words, sizes_words};
pub use picture::{Letters, SMALLEST, laid_briefly, laid_words, lay_figure, legend};
pub use plan::{Lay, StretchFault};
