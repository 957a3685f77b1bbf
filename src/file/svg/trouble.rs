//! Why a file gives no outlines.

use std::path::PathBuf;

/// Why no outlines could be read from a file.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum SvgError {
    /// The file cannot be read.
    #[error("{path} cannot be read: {problem}", path = .path.display())]
    File {
        /// The file.
        path: PathBuf,
        /// What the system says.
        problem: String,
    },
    /// It is too large.
    #[error("the file has more than {most} bytes; save the outlines alone, without pictures, in a file of their own")]
    TooLarge {
        /// The most that is read.
        most: u64,
    },
    /// It is packed.
    #[error("the file is packed (svgz): unpack it first, or save it as plain SVG")]
    Packed,
    /// It is no text.
    #[error("the file is no UTF-8 text from byte {0} on; save it as plain SVG in UTF-8")]
    Letters(usize),
    /// It is no XML.
    #[error("the file is no well-formed XML: {0}")]
    Xml(String),
    /// It is XML of another kind.
    #[error("the file begins with `{0}`, not with `svg`: it is no SVG drawing")]
    Kind(String),
    /// There is too much in it.
    #[error("{0}")]
    TooMuch(String),
    /// There are no outlines.
    #[error("there is no outline in the file{0}")]
    Nothing(String),
}
