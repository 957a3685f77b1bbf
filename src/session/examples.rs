//! The drafts that come with the program, to be opened as copies.

use crate::document::Draft;
use crate::file::{ReadError, read};
use crate::texts::{id, own, said};

/// A draft that comes with the program.
#[derive(Clone, Copy, Debug)]
pub struct Example {
    /// Its name.
    pub name: &'static str,
    what: &'static str,
    text: &'static str,
}

impl Example {
    /// What can be seen in it, in a few words.
    pub fn what(&self) -> String {
        said(own(), self.what, &[])
    }

    /// The draft itself.
    ///
    /// # Errors
    /// When it cannot be read.
    pub fn draft(&self) -> Result<Draft, ReadError> {
        read(self.text).map(|opened| opened.draft)
    }
}

macro_rules! examples {
    ($($name:literal $what:expr;)*) => {
        /// All of them, the easiest first.
        pub const EXAMPLES: &[Example] = &[$(Example {
            name: $name, what: $what, text: include_str!(concat!("../../examples/", $name, ".ron")),
        },)*];
    };
}

examples! {
    "straight-skirt" id!("example-straight-skirt");
    "circle-skirt" id!("example-circle-skirt");
    "bodice-sleeve" id!("example-bodice-sleeve");
    "bodice-finished" id!("example-bodice-finished");
    "skirt-finished" id!("example-skirt-finished");
    "market-apron" id!("example-market-apron");
    "flat-collar" id!("example-flat-collar");
    "chest-bodice" id!("example-chest-bodice");
    "sleeve-head" id!("example-sleeve-head");
    "top-in-views" id!("example-top-in-views");
    "panel-top" id!("example-panel-top");
    "yoke-skirt" id!("example-yoke-skirt");
    "trousers" id!("example-trousers");
    "work-smock" id!("example-work-smock");
    "childs-smock" id!("example-childs-smock");
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
