//! Changes to a draft, each all or nothing, and what is computed of it.
//!
//! The window's commands, undo and autosave will live here; so far there are the changes that the command line makes.

mod literal;
mod set;
mod size;
mod table;

pub use literal::length_typed;
pub use set::{SetError, set_for_run};
pub use size::{NewSize, SizeError, add_size};
pub use table::{TableError, export_chart, import_chart};
