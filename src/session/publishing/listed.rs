//! What each file is for, in words for who gets them: a buyer with ten files must not take a wide sheet for one to project.

use std::fmt::Write as _;

use super::{Outputs, PrintFor, Published, What, clean, purpose_name};

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
    let mut out = String::from("What each file is for\n");
    for what in What::ALL {
        let of_kind: Vec<&Listed<'_>> = files.iter().filter(|f| f.kind == what.word()).collect();
        if of_kind.is_empty() {
            continue;
        }
        let _ = writeln!(out, "\n{}: {}.", what.word(), what.says());
        for file in of_kind {
            let sizes = match file.sizes {
                [] => String::new(),
                [one] if one.is_empty() => String::new(),
                [one] => format!(" – size {one}"),
                [first, .., last] if file.sizes.len() > 6 => format!(" – sizes {first} to {last}"),
                some => format!(" – sizes {}", some.join(", ")),
            };
            let view = if file.view.is_empty() { String::new() } else { format!(", view {}", file.view) };
            let pages = match file.pages {
                0 => String::new(),
                1 => ", 1 page".to_owned(),
                n => format!(", {n} pages"),
            };
            let _ = writeln!(out, "- {}{sizes}{view}{pages}", file.name);
        }
    }
    out.push_str(
        "\nYou need the pages or the wide sheet of your own size only. Print one page first, measure its marks, and go on when they are right.\n",
    );
    out
}

impl Outputs {
    /// A list of what each file is for, as a file; none where all are of one kind.
    pub fn list(&self, stem: &str, title: &str, (purpose, edition): (PrintFor, &str)) -> Option<(String, Vec<u8>)> {
        let first = self.files.first()?.what;
        if self.files.iter().all(|f| f.what == first) {
            return None;
        }
        let all: Vec<Listed<'_>> = self.files.iter().map(Published::listed).collect();
        let text = format!("{title}\n\n{}", what_files_are_for(&all));
        Some((format!("{}-{}-read-me-first.txt", clean(stem), purpose_name(purpose, edition)), text.into_bytes()))
    }
}

impl Published {
    fn listed(&self) -> Listed<'_> {
        let Self { what, name, view, sizes, pages, .. } = self;
        Listed { kind: what.word(), name, view, sizes, pages: pages.len() }
    }
}
