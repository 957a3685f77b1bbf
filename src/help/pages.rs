//! The pages: their names, where they stand in the list, and how they are found.

use std::sync::OnceLock;

use super::glossary::glossary;
use super::made;

/// Under which heading a page stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Group {
    /// Where to begin, and this help.
    Begin,
    /// Panels and ways of looking.
    Window,
    /// How things are said in a draft.
    Draft,
    /// The language and its functions.
    Functions,
    /// Actions and keys.
    Actions,
    /// Kinds of findings.
    Findings,
    /// Words of the trade.
    Words,
}

impl Group {
    /// All of them, in the order in which they stand.
    pub const ALL: [Self; 7] =
        [Self::Begin, Self::Window, Self::Draft, Self::Functions, Self::Actions, Self::Findings, Self::Words];

    /// Its heading.
    pub fn word(self) -> &'static str {
        match self {
            Self::Begin => "To begin",
            Self::Window => "The window",
            Self::Draft => "The draft",
            Self::Functions => "Functions",
            Self::Actions => "Actions and keys",
            Self::Findings => "Findings",
            Self::Words => "Words of the trade",
        }
    }
}

/// A page.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Page {
    /// Its name, as links write it.
    pub id: String,
    /// Its title, as lists show it.
    pub title: String,
    /// Where it stands.
    pub group: Group,
    /// What it says.
    pub text: String,
}

macro_rules! written {
    ($($group:ident $id:literal,)*) => {
        const WRITTEN: &[(&str, Group, &str)] =
            &[$(($id, Group::$group, include_str!(concat!("../../assets/help/", $id, ".md"))),)*];
    };
}

written! {
    Begin "start",
    Begin "guide",
    Begin "help",
    Begin "licences",
    Window "table",
    Window "pencil",
    Window "tape",
    Window "pictures",
    Window "outlines",
    Window "sizes",
    Window "contents",
    Window "card",
    Window "proof",
    Window "chart",
    Window "compare",
    Window "sheets",
    Window "lays",
    Window "booklet",
    Window "publishing",
    Window "roll",
    Window "finder",
    Window "preferences",
    Draft "about-sizes",
    Draft "formulas",
    Draft "points",
    Draft "edges",
    Draft "pieces",
    Draft "derived",
    Draft "blocks",
    Draft "views",
    Draft "strips",
    Draft "cloth",
    Draft "values",
    Draft "about-seams",
    Draft "about-darts",
    Draft "about-found",
    Draft "about-folds",
    Draft "about-hems",
    Draft "about-marks",
    Draft "cautions",
    Draft "releases",
    Draft "file",
    Functions "language",
}

/// All pages, in the order of the list; made once.
pub fn pages() -> &'static [Page] {
    static PAGES: OnceLock<Vec<Page>> = OnceLock::new();
    PAGES.get_or_init(all_pages)
}

fn all_pages() -> Vec<Page> {
    let written = WRITTEN.iter().map(|(id, group, text)| {
        let title = text.lines().next().unwrap_or(id).trim_start_matches('#').trim();
        Page { id: (*id).to_owned(), title: title.to_owned(), group: *group, text: (*text).to_owned() }
    });
    let mut all: Vec<Page> = written.chain(made::pages()).chain(words()).collect();
    all.sort_by_key(|p| p.group);
    all
}

/// A page for each word of the trade, and one with all of them.
fn words() -> Vec<Page> {
    let all = glossary();
    let mut list =
        "# Words of the trade\n\nAs they are said in the UK, with the US word where it is another.\n\n".to_owned();
    let mut out = Vec::new();
    for word in &all {
        let id = format!("word/{}", word.uk.replace(' ', "-"));
        let other = if word.is_shared() { String::new() } else { format!(" (US: {})", word.us) };
        list.push_str(&format!("- [{}]({id}){other}: {}\n", word.uk, word.sentence));
        let both = match word.is_shared() {
            true => "It is called so in the UK and in the US.".to_owned(),
            false => format!("In the UK **{}**, in the US **{}**.", word.uk, word.us),
        };
        let text = format!("# {}\n\n{}\n\n{both}\n\nAll words: [glossary](glossary).\n", word.uk, word.sentence);
        out.push(Page { id, title: format!("{}{other}", word.uk), group: Group::Words, text });
    }
    out.insert(
        0,
        Page { id: "glossary".to_owned(), title: "Words of the trade".to_owned(), group: Group::Words, text: list },
    );
    out
}

/// The page of this name.
pub fn page(id: &str) -> Option<&'static Page> {
    pages().iter().find(|p| p.id == id)
}

/// Pages that hold all these words: those that are called so first, then those with the words in their title.
pub fn search(all: &[Page], words: &str) -> Vec<usize> {
    let wanted: Vec<String> = words.to_lowercase().split_whitespace().map(str::to_owned).collect();
    let whole = wanted.join(" ");
    let rank = |page: &Page| {
        let (id, title) = (page.id.to_lowercase(), page.title.to_lowercase());
        let called = id == whole || title == whole || id.rsplit('/').next() == Some(whole.as_str());
        let in_title = wanted.iter().all(|w| title.contains(w.as_str()) || id.contains(w.as_str()));
        let fits = in_title || {
            let text = page.text.to_lowercase();
            wanted.iter().all(|w| title.contains(w.as_str()) || text.contains(w.as_str()))
        };
        fits.then_some((!called, !in_title))
    };
    let mut found: Vec<((bool, bool), usize)> =
        all.iter().enumerate().filter_map(|(i, p)| Some((rank(p)?, i))).collect();
    found.sort();
    found.into_iter().map(|(_, i)| i).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::base::Code;
    use crate::help::{Block, Span, blocks};
    use crate::language::FUNCTIONS;
    use crate::session::{ACTIONS, Action};
    use std::collections::BTreeSet;

    fn bare(action: &Action) -> &str {
        action.name().trim_end_matches(" …")
    }

    /// Where the links of a page lead.
    fn links(text: &str) -> Vec<String> {
        let mut out = Vec::new();
        let mut add = |spans: &[Span]| {
            for span in spans {
                if let Span::Link(_, to) = span {
                    out.push(to.clone());
                }
            }
        };
        for block in blocks(text) {
            match block {
                Block::Heading(_, s) | Block::Words(s) | Block::Item(s) => add(&s),
                Block::Row(cells) => cells.iter().for_each(|c| add(c)),
                Block::Code(_) => {}
            }
        }
        out
    }

    #[test]
    fn every_link_leads_to_a_page_and_every_page_begins_with_its_title() {
        let all = pages();
        let ids: BTreeSet<&str> = all.iter().map(|p| p.id.as_str()).collect();
        assert_eq!(ids.len(), all.len(), "two pages of one name");
        let mut many = 0;
        for page in all {
            assert!(matches!(blocks(&page.text).first(), Some(Block::Heading(1, _))), "{}", page.id);
            for to in links(&page.text) {
                many += 1;
                assert!(ids.contains(to.as_str()), "{} leads to {to}, which is no page", page.id);
            }
        }
        assert!(many > 200, "{many}");
    }

    #[test]
    fn everything_the_program_knows_of_itself_has_its_page() {
        for f in FUNCTIONS {
            let page = page(&format!("function/{}", f.name)).expect("a page");
            assert!(page.text.contains(f.sentence) && page.text.contains(f.example), "{}", f.name);
        }
        for code in Code::ALL {
            let page = page(&format!("finding/{}", code.word())).expect("a page");
            assert!(page.text.contains(code.sentence()) && page.text.contains(crate::help::advice(*code)));
            assert!(page.text.to_lowercase().contains(code.severity().word()), "{}", page.text);
        }
        let keys = &page("keys").expect("a page").text;
        for action in ACTIONS {
            let own = page(&format!("action/{}", action.id)).expect("a page").text.as_str();
            assert!(own.contains(action.what()) && own.contains(action.key), "{own}");
            assert!(keys.contains(bare(action)), "{}", action.name());
        }
    }

    #[test]
    fn pages_are_found_by_their_words() {
        let all = pages();
        let first = |words: &str| search(all, words).first().map(|i| all[*i].id.clone());
        assert_eq!(first("swing").as_deref(), Some("function/swing"));
        assert_eq!(first("muslin").as_deref(), Some("word/toile"));
        assert_eq!(first("seam-length").as_deref(), Some("finding/seam-length"));
        assert_eq!(first("bank card").as_deref(), Some("preferences"));
        assert_eq!(first("Darts").as_deref(), Some("about-darts"));
        assert_eq!(first("zzz nothing"), None);
        assert_eq!(search(all, "").len(), all.len());
    }
}
