//! The drafts that come with the program, to be opened as copies.

use crate::document::Draft;
use crate::file::{ReadError, read};

/// A draft that comes with the program.
#[derive(Clone, Copy, Debug)]
pub struct Example {
    /// Its name.
    pub name: &'static str,
    /// What can be seen in it, in a few words.
    pub what: &'static str,
    text: &'static str,
}

impl Example {
    /// The draft itself.
    ///
    /// # Errors
    /// When it cannot be read.
    pub fn draft(&self) -> Result<Draft, ReadError> {
        read(self.text).map(|opened| opened.draft)
    }
}

macro_rules! examples {
    ($($name:literal $what:literal;)*) => {
        /// All of them, the easiest first.
        pub const EXAMPLES: &[Example] = &[$(Example {
            name: $name, what: $what, text: include_str!(concat!("../../examples/", $name, ".ron")),
        },)*];
    };
}

examples! {
    "straight-skirt" "a block of two pieces, with a flaw that proof finds";
    "circle-skirt" "arcs, and one value that makes it full or half";
    "bodice-sleeve" "a bodice and a sleeve kept true in twelve sizes";
    "bodice-finished" "the same with cut lines, notches and marks";
    "skirt-finished" "a skirt with a band, a zip and hems, to the last mark";
    "market-apron" "inches, a pleat, laid pieces, an edge taken over";
    "flat-collar" "a collar drawn on laid necklines";
    "chest-bodice" "a bodice by fractions of the chest";
    "sleeve-head" "a sleeve head from its two legs";
    "top-in-views" "a top with a long sleeve, or sleeveless and shorter";
    "panel-top" "a top of panels and facings derived from the check block";
    "yoke-skirt" "a flared skirt with yoke, facings and lining derived from the skirt block";
    "trousers" "front and back of plain trousers";
    "work-smock" "a whole pattern to be sold: a smock with long or short sleeves, lined pockets, booklet";
    "childs-smock" "the same for children, with the caution about cords that it calls for";
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_example_of_the_folder_can_be_opened() {
        for example in EXAMPLES {
            let draft = example.draft().unwrap_or_else(|e| panic!("{}: {e}", example.name));
            assert!(!draft.pieces.is_empty() && !draft.title.is_empty(), "{}", example.name);
        }
        let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/examples");
        let files = std::fs::read_dir(folder).expect("a folder").filter_map(|f| f.ok()?.file_name().into_string().ok());
        assert_eq!(files.filter(|f| f.ends_with(".ron")).count(), EXAMPLES.len(), "one is not in the table");
    }
}
