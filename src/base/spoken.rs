//! The languages in which a pattern can be published.

use serde::{Deserialize, Serialize};

/// A language for readers.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum Language {
    /// English, the one in which everything is there.
    #[default]
    #[serde(rename = "en")]
    English,
    /// German.
    #[serde(rename = "de")]
    German,
}

impl Language {
    /// All of them.
    pub const ALL: [Self; 2] = [Self::English, Self::German];

    /// Its name in itself.
    pub fn own_name(self) -> &'static str {
        match self {
            Self::English => "English",
            Self::German => "Deutsch",
        }
    }

    /// Its word in files and in HTML, as BCP 47 has it.
    pub fn word(self) -> &'static str {
        match self {
            Self::English => "en",
            Self::German => "de",
        }
    }
}
