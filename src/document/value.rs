//! Named style values.

use serde::{Deserialize, Serialize};

/// A named value: a formula (`is`), or one that is found in every size (`start`, `least`, `most`).
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Value {
    /// Its name in formulas.
    pub name: String,
    /// The formula of a value that is given.
    pub is: String,
    /// Where the search starts, for a value that is found.
    pub start: String,
    /// The least that it may become.
    pub least: String,
    /// The most that it may become.
    pub most: String,
    /// Anything worth telling.
    pub note: String,
}

impl Value {
    /// Whether the program is to find it.
    pub fn is_found(&self) -> bool {
        !self.start.is_empty()
    }
}
