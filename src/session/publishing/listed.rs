//! What each file is for, in words for who gets them: a buyer with ten files must not take a wide sheet for one to project.

use std::fmt::Write as _;

use crate::texts::{readable, speaking, t};

use super::{Outputs, PrintFor, Published, What, clean, purpose_name, title_of};
use crate::document::Draft;

/// A file in such a list.
pub struct Listed<'a> {
    /// The word of its kind.
    pub kind: &'a str,
    /// Its name, with the folders that it lies in.
    pub name: &'a str,
    /// The view, if there are any.
    pub view: &'a str,
    /// The sizes in it.
    pub sizes: &'a [String],
    /// How many pages it has; 0: none are counted.
    pub pages: usize,
}

/// The files, kind by kind, with what each kind is for.
pub fn what_files_are_for(files: &[Listed<'_>]) -> String {
    let mut out = format!("{}\n", t!("files-title"));
    for what in What::ALL {
        let of_kind: Vec<&Listed<'_>> = files.iter().filter(|f| f.kind == what.word()).collect();
        if of_kind.is_empty() {
            continue;
        }
        let _ = writeln!(out, "\n{}: {}.", what.heading(), what.says());
        for file in of_kind {
            let mut line = file.name.to_owned();
            let sizes = match file.sizes {
                [] => String::new(),
                [one] if one.is_empty() => String::new(),
                [one] => t!("of-size", size = one),
                [first, .., last] if file.sizes.len() > 6 => t!("of-sizes-to", first, last),
                some => t!("of-sizes", sizes = some.join(", ")),
            };
            if !sizes.is_empty() {
                let _ = write!(line, " – {sizes}");
            }
            if !file.view.is_empty() {
                let _ = write!(line, ", {}", t!("of-view", view = readable(file.view)));
            }
            if file.pages > 0 {
                let _ = write!(line, ", {}", t!("pages", count = file.pages));
            }
            let _ = writeln!(out, "- {line}");
        }
    }
    let _ = writeln!(out, "\n{}", t!("files-need"));
    out
}

impl Outputs {
    /// A list of what each file is for, as a file; none where all are of one kind.
    pub fn list(&self, stem: &str, draft: &Draft, purpose: PrintFor) -> Option<(String, Vec<u8>)> {
        let first = self.files.first()?.what;
        if self.files.iter().all(|f| f.what == first) {
            return None;
        }
        let all: Vec<Listed<'_>> = self.files.iter().map(Published::listed).collect();
        let text = speaking(draft.language, || format!("{}\n\n{}", title_of(draft, ""), what_files_are_for(&all)));
        let name = format!("{}-{}-read-me-first.txt", clean(stem), purpose_name(purpose, &draft.edition));
        Some((name, text.into_bytes()))
    }
}

impl Published {
    fn listed(&self) -> Listed<'_> {
        let Self { what, name, view, sizes, pages, .. } = self;
        Listed { kind: what.word(), name, view, sizes, pages: pages.len() }
    }
}
