//! Why a file gives no outlines.

use crate::texts::say;
use std::path::PathBuf;

/// Why no outlines could be read from a file.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum SvgError {
    /// The file cannot be read.
    #[error("{}", say!("svg-not-read", path = path.display().to_string(), problem))]
    File {
        /// The file.
        path: PathBuf,
        /// What the system says.
        problem: String,
    },
    /// It is too large.
    #[error("{}", say!("svg-too-large", most = most.to_string()))]
    TooLarge {
        /// The most that is read.
        most: u64,
    },
    /// It is packed.
    #[error("{}", say!("svg-packed"))]
    Packed,
    /// It is no text.
    #[error("{}", say!("svg-letters", byte = _0.to_string()))]
    Letters(usize),
    /// It is no XML.
    #[error("{}", say!("svg-xml", problem = _0))]
    Xml(String),
    /// It is XML of another kind.
    #[error("{}", say!("svg-kind", word = _0))]
    Kind(String),
    /// There is too much in it.
    #[error("{0}")]
    TooMuch(String),
    /// There are no outlines.
    #[error("{}", say!("svg-nothing", left_out = _0))]
    Nothing(String),
}
