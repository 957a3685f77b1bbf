//! The scale of a drawing file as it is stated: by the file, or by the person where the file leaves it open.

use super::{EditError, TracedOutline, length_with_unit, told_scale};
use crate::file::svg::{CSS_PER_INCH, Scale};
use crate::texts::say;

/// How the scale of a drawing file is said.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum StatedScale {
    /// As the file says.
    File,
    /// One unit of the file is so long.
    Unit(String),
    /// The first chosen outline is so wide.
    Width(String),
    /// One unit is a CSS pixel, of which there are 96 in an inch.
    Css,
}

impl StatedScale {
    /// Millimetres of one unit. A bare number is refused; `first` is the outline of which the width is told.
    ///
    /// # Errors
    /// What is missing or wrong.
    pub fn scale(&self, file: &Scale, first: Option<&TracedOutline>) -> Result<f64, EditError> {
        let length =
            |text: &str, of: &str| length_with_unit(text).map_err(|why| EditError::refused(say!("scale-of", of, why)));
        match self {
            Self::File => told_scale(file),
            Self::Unit(text) => length(text, &say!("scale-unit")),
            Self::Css => Ok(25.4 / CSS_PER_INCH),
            Self::Width(text) => {
                let first = first.ok_or_else(|| EditError::refused(say!("scale-no-outline")))?;
                Ok(length(text, &say!("scale-width", name = first.name))? / first.size.0)
            }
        }
    }
}
