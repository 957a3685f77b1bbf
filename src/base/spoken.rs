//! The languages in which a pattern can be published.

use serde::{Deserialize, Serialize};

macro_rules! languages {
    ($($(#[$note:meta])* $language:ident $word:literal $own:literal;)*) => {
        /// A language for readers.
        #[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, Serialize, Deserialize)]
        pub enum Language { $($(#[$note])* #[serde(rename = $word)] $language,)* }

        impl Language {
            /// All of them.
            pub const ALL: [Self; [$($word),*].len()] = [$(Self::$language),*];

            /// Its name in itself.
            pub fn own_name(self) -> &'static str {
                match self { $(Self::$language => $own,)* }
            }

            /// Its word in files and in HTML, as BCP 47 has it.
            pub fn word(self) -> &'static str {
                match self { $(Self::$language => $word,)* }
            }
        }
    };
}

languages! {
    /// English, the one in which everything is there.
    #[default]
    English "en" "English";
    /// German.
    German "de" "Deutsch";
}
