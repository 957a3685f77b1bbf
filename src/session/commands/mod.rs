//! Changes, one file for each noun.

mod chart;
mod part;
mod piece;
mod text;

pub use chart::ChartCommand;
pub use part::{Deletion, PartCommand};
pub use piece::PieceCommand;
pub use text::TextCommand;
