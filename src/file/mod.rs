//! Drafts as files: reading, writing, saving.
//!
//! The only place that knows RON and the disk. What a draft means is `compute`'s; that comments would be lost, or that
//! a file changed, is told to the caller, who asks the person.

mod digest;
mod explain;
mod file_error;
mod layout;
pub mod limits;
mod nearest;
mod own;
mod read;
mod read_error;
mod save;
pub mod svg;
mod token;
mod tree;
mod walk;
mod write;

pub use digest::sha256;
pub use file_error::FileError;
pub use layout::LINE;
pub use own::{OwnFile, from_ron, read_own, set_aside, to_ron, write_own};
pub use read::{Opened, read};
pub use read_error::{ReadError, Refusal};
pub use save::{Fingerprint, OpenedFile, open, save};
pub use token::comments;
pub use write::write;
