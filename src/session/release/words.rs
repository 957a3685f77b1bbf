//! What is written beside the outputs of a release: what each file is for, what changed, which pages are to be printed again.

use std::fmt::Write as _;

use super::last::Before;
use super::manifest::{Manifest, ReleasedFile};
use super::{ReleaseStop, Whole};
use crate::document::Draft;
use crate::output::{Side, compare};
use crate::proof::{Caution, cautions};
use crate::session::What;
use crate::session::publishing::{Listed, PrintFor, purpose_name, title_of, what_files_are_for};
use crate::texts::{Language, date, speaking, t};

/// What changed since the release before, for buyers: by piece and size, then by file and page.
pub(super) fn changes(
    before: &Before,
    (now, cautions): (&Whole, &Cautions),
    files: &[ReleasedFile],
) -> Result<String, ReleaseStop> {
    let old = Whole::of(&before.draft)?;
    let side = |whole: &Whole| -> Result<String, ReleaseStop> {
        let old = Side { draft: &old.draft, model: &old.model, finished: &old.finished };
        let new = Side { draft: &whole.draft, model: &whole.model, finished: &whole.finished };
        let found = compare(old, new, &[], &[]).map_err(|e| ReleaseStop::Changes { problem: e.to_string() })?;
        Ok(found.errata(old.draft, new.draft))
    };
    let mut out = side(now)?;
    out.push_str(&cautions_changed(&before.manifest, &Cautions::of(&old, now.draft.language), cautions));
    out.push_str(&pages(&before.manifest, files, &now.draft.edition));
    Ok(out)
}

/// The cautions of a draft, each in two languages.
pub(super) struct Cautions {
    /// In English, as manifests hold their titles: whatever language an edition speaks, they can be compared.
    pub plain: Vec<Caution>,
    /// The same as buyers read them.
    pub told: Vec<Caution>,
}

impl Cautions {
    pub(super) fn of(whole: &Whole, language: Language) -> Self {
        let of = |language| speaking(language, || cautions(&whole.draft, &whole.model));
        Self { plain: of(Language::English), told: of(language) }
    }

    /// A title of the manifest as buyers read it; one that is of another version of the program stays as it is.
    fn told_title<'a>(&'a self, title: &'a str) -> &'a str {
        let place = self.plain.iter().position(|c| c.title == title);
        place.and_then(|i| self.told.get(i)).map_or(title, |c| &c.title)
    }
}

/// Cautions that are new, gone, or say something else.
fn cautions_changed(before: &Manifest, old: &Cautions, now: &Cautions) -> String {
    let mut lines = Vec::new();
    for caution in &now.plain {
        let title = now.told_title(&caution.title);
        if !before.cautions.contains(&caution.title) {
            lines.push(t!("caution-new", title));
        } else if old.plain.iter().any(|o| o.title == caution.title && o.text != caution.text) {
            lines.push(t!("caution-other", title));
        }
    }
    let gone = before.cautions.iter().filter(|title| now.plain.iter().all(|c| c.title != **title));
    lines.extend(gone.map(|title| t!("caution-gone", title = old.told_title(title))));
    let lines: String = lines.iter().map(|line| format!("- {line}\n")).collect();
    if lines.is_empty() { lines } else { format!("\n{}\n{lines}", t!("cautions-heading")) }
}

/// The name of a file without what an edition adds to it.
fn bare(name: &str, edition: &str) -> String {
    let own = format!("-{}-", purpose_name(PrintFor::Release, edition));
    match name.rfind(&own) {
        Some(at) => format!("{}-{}-{}", &name[..at], PrintFor::Release.short(), &name[at + own.len()..]),
        None => name.to_owned(),
    }
}

/// Which pages of which files must be printed again.
fn pages(before: &Manifest, files: &[ReleasedFile], edition: &str) -> String {
    let (was, is) = (|name: &str| bare(name, &before.edition), |name: &str| bare(name, edition));
    let old: Vec<&ReleasedFile> = before.files.iter().filter(|f| !f.kind.is_empty()).collect();
    let mut used = vec![false; old.len()];
    let mut lines = Vec::new();
    let mut others = Vec::new();
    let mut by_edition = Vec::new();
    let ending = |name: &str| name.rsplit('.').next().unwrap_or_default().to_owned();
    for file in files.iter().filter(|f| !f.kind.is_empty()) {
        // The number of pages stands in a name, so a file may have another name than before; what it is for is the same.
        let same_name = (0..old.len()).find(|i| !used[*i] && was(&old[*i].name) == is(&file.name));
        let same_use = || {
            (0..old.len()).find(|i| {
                let o = old[*i];
                !used[*i]
                    && (&o.kind, &o.view, &o.sizes) == (&file.kind, &file.view, &file.sizes)
                    && ending(&o.name) == ending(&file.name)
                    && files.iter().all(|f| is(&f.name) != was(&o.name))
            })
        };
        let Some(known) = same_name.or_else(same_use) else {
            lines.push(t!("file-new", name = file.name));
            continue;
        };
        used[known] = true;
        let known = old[known];
        if known.sha256 == file.sha256 {
            continue;
        }
        if file.pages.is_empty() || file.kind == What::Projector.word() {
            let is_same = !file.content.is_empty() && file.content == known.content;
            if is_same { &mut by_edition } else { &mut others }.push(file.name.clone());
            continue;
        }
        // Whoever has a page that looks the same has this page.
        let again: Vec<usize> = (0..file.pages.len()).filter(|i| !known.pages.contains(&file.pages[*i])).collect();
        if again.len() == file.pages.len() {
            lines.push(t!("file-all-pages", name = file.name, count = again.len()));
        } else if !again.is_empty() {
            lines.push(match file.page_names.is_empty() {
                true => t!("file-some-pages", name = file.name, pages = which(file, &again), count = file.pages.len()),
                // They say their place of those with pieces, which the first page is none of.
                false => t!("file-named-pages", name = file.name, pages = which(file, &again)),
            });
        }
    }
    let gone: Vec<String> = old.iter().zip(&used).filter(|(_, used)| !**used).map(|(f, _)| f.name.clone()).collect();
    let mut out = String::new();
    match lines.is_empty() {
        true => out.push_str(&format!("\n{}\n", t!("pages-none-again"))),
        false => {
            out.push_str(&format!("\n{}\n", t!("pages-again")));
            for line in lines {
                let _ = writeln!(out, "- {}", line.trim_start_matches("pattern/"));
            }
        }
    }
    let lists = [(t!("files-other"), others), (t!("files-by-edition"), by_edition), (t!("files-gone"), gone)];
    for (heading, names) in lists.iter().filter(|(_, names)| !names.is_empty()) {
        let _ = writeln!(out, "\n{heading}");
        for name in names {
            let _ = writeln!(out, "- {}", name.trim_start_matches("pattern/"));
        }
    }
    out
}

/// Which pages of a file, in words: the first one by that name, because it is the one that is printed first; the others by what stands at
/// their feet.
fn which(file: &ReleasedFile, pages: &[usize]) -> String {
    let rest = pages.strip_prefix(&[0]);
    let others = rest.unwrap_or(pages);
    let count = others.len();
    let names: Vec<&str> = others.iter().filter_map(|i| Some(file.page_names.get(*i)?.as_str())).collect();
    let called = if names.len() == count { names.join(", ") } else { runs(others) };
    match (rest, others) {
        (Some(_), []) => t!("pages-first"),
        (Some(_), _) => t!("pages-first-and", count, pages = called),
        (None, _) => t!("pages-which", count, pages = called),
    }
}

/// Numbers of pages, counted from 1, neighbours joined: "1-3, 7".
fn runs(pages: &[usize]) -> String {
    let mut runs: Vec<(usize, usize)> = Vec::new();
    for page in pages {
        match runs.last_mut() {
            Some((_, end)) if *end + 1 == *page => *end = *page,
            _ => runs.push((*page, *page)),
        }
    }
    let one = |(a, b): &(usize, usize)| if a == b { format!("{}", a + 1) } else { format!("{}-{}", a + 1, b + 1) };
    runs.iter().map(one).collect::<Vec<_>>().join(", ")
}

/// What lies in the folder and what for: the first thing that a buyer reads.
pub(super) fn read_me(draft: &Draft, files: &[ReleasedFile], cautions: &[Caution], has_changes: bool) -> String {
    let edition = t!("edition-head", edition = draft.edition, date = date(&draft.date));
    let mut out = format!("{}\n{edition}\n", title_of(draft, ""));
    let listed: Vec<Listed<'_>> = files
        .iter()
        .map(|f| Listed {
            kind: &f.kind,
            name: f.name.trim_start_matches("pattern/"),
            view: &f.view,
            sizes: &f.sizes,
            pages: f.pages.len(),
        })
        .collect();
    out.push('\n');
    out.push_str(&what_files_are_for(&listed));
    if has_changes {
        let _ = writeln!(out, "\nwhat-changed.txt: {}", t!("what-changed-is"));
    }
    for caution in cautions {
        let _ = writeln!(out, "\n{}", t!("caution-head", title = caution.title));
        for sentence in &caution.text {
            let _ = writeln!(out, "{sentence}");
        }
    }
    let told = [
        (t!("about-author"), &draft.author),
        (t!("about-licence"), &draft.licence),
        (t!("about-questions"), &draft.contact),
    ];
    for (i, (what, words)) in told.iter().filter(|(_, words)| !words.is_empty()).enumerate() {
        let _ = writeln!(out, "{}{what}: {words}", if i == 0 { "\n" } else { "" });
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_of_two_editions_are_one_name_without_them() {
        let one = bare("pattern/pages/skirt-88-edition-1-A4-9-pages.pdf", "1");
        assert_eq!(one, "pattern/pages/skirt-88-pattern-A4-9-pages.pdf");
        assert_eq!(one, bare("pattern/pages/skirt-88-edition-2-for-markets-A4-9-pages.pdf", "2 for markets"));
        assert_ne!(one, bare("pattern/pages/skirt-92-edition-1-A4-9-pages.pdf", "1"), "another size");
        // A draft that is called by its edition: the last one is the edition's.
        assert_eq!(bare("skirt-edition-1-88-edition-1-x.pdf", "1"), "skirt-edition-1-88-pattern-x.pdf");
        // Without an edition a name says what it is for, and one of another edition is left as it is.
        assert_eq!(bare("skirt-88-pattern-x.pdf", ""), "skirt-88-pattern-x.pdf");
        assert_eq!(bare("skirt-88-edition-1-x.pdf", "2"), "skirt-88-edition-1-x.pdf");
    }

    fn file(name: &str, content: &str, pages: &[&str]) -> ReleasedFile {
        ReleasedFile {
            kind: name.split('/').next().unwrap_or_default().to_owned(),
            sizes: vec!["88".to_owned()],
            content: content.to_owned(),
            pages: pages.iter().map(|p| (*p).to_owned()).collect(),
            ..ReleasedFile::of(name.to_owned(), format!("{name}{content}").as_bytes())
        }
    }

    fn told(old: Vec<ReleasedFile>, new: &[ReleasedFile]) -> String {
        pages(&Manifest { edition: "1".to_owned(), files: old, ..Manifest::default() }, new, "2")
    }

    #[test]
    fn files_are_matched_by_name_without_edition_then_by_use() {
        // Another number of pages in the name: the same use, so not new, and nothing is gone. Files of one use are told apart by their ending.
        let old = vec![
            file("booklet/x-edition-1-one.html", "a", &[]),
            file("booklet/x-edition-1-A4-4-pages.pdf", "a", &["1", "2", "3", "4"]),
        ];
        let new = [
            file("booklet/x-edition-2-A4-5-pages.pdf", "b", &["1", "2", "9", "3", "4"]),
            file("booklet/x-edition-2-two.html", "a", &[]),
        ];
        let words = told(old, &new);
        assert!(words.contains("- booklet/x-edition-2-A4-5-pages.pdf: page 3 of 5\n"), "{words}");
        assert!(
            words.contains("other by edition, date and contact alone\n- booklet/x-edition-2-two.html\n"),
            "{words}"
        );
        assert!(!words.contains("new") && !words.contains("no longer there"), "{words}");
        // Of two of one use each is the other's match once: one stays, one is new, none is told twice.
        let old = || vec![file("pages/x-88-edition-1-A4-2-pages.pdf", "a", &["1", "2"])];
        let new = [
            file("pages/x-88-edition-2-A4-3-pages.pdf", "b", &["1", "2", "3"]),
            file("pages/x-88-edition-2-A4-2-pages.pdf", "a", &["1", "2"]),
        ];
        let words = told(old(), &new);
        assert!(words.contains("- pages/x-88-edition-2-A4-3-pages.pdf: new\n"), "{words}");
        assert!(!words.contains("A4-2-pages") && !words.contains("no longer there"), "{words}");
        // What nothing is matched with is gone.
        let words = told(old(), &[]);
        assert!(words.contains("no longer there\n- pages/x-88-edition-1-A4-2-pages.pdf\n"), "{words}");
    }
}
