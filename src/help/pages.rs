//! The pages: their names, where they stand in the list, and how they are found.

use std::sync::OnceLock;

use super::glossary::{Word, glossary};
use super::made;
use crate::session::{ACTIONS, Menu};
use crate::texts::{Language, own, say};

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
    pub fn word(self) -> String {
        match self {
            Self::Begin => say!("help-group-begin"),
            Self::Window => say!("help-group-window"),
            Self::Draft => say!("help-group-draft"),
            Self::Functions => say!("help-group-functions"),
            Self::Actions => say!("help-group-actions"),
            Self::Findings => say!("help-group-findings"),
            Self::Words => say!("help-group-words"),
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

/// A page that is written: its name, where it stands, what it says.
type Written = (&'static str, Group, &'static str);

macro_rules! written {
    ($folder:literal) => {
        written!($folder:
            Begin "start"
            Begin "guide"
            Begin "help"
            Window "table"
            Window "pencil"
            Window "tape"
            Window "pictures"
            Window "outlines"
            Window "sizes"
            Window "contents"
            Window "card"
            Window "proof"
            Window "chart"
            Window "compare"
            Window "sheets"
            Window "lays"
            Window "booklet"
            Window "publishing"
            Window "roll"
            Window "finder"
            Window "preferences"
            Draft "about-sizes"
            Draft "formulas"
            Draft "points"
            Draft "edges"
            Draft "pieces"
            Draft "derived"
            Draft "blocks"
            Draft "views"
            Draft "strips"
            Draft "cloth"
            Draft "values"
            Draft "about-seams"
            Draft "about-darts"
            Draft "about-found"
            Draft "about-folds"
            Draft "about-hems"
            Draft "about-marks"
            Draft "cautions"
            Draft "releases"
            Draft "file"
            Functions "language"
        )
    };
    ($folder:literal: $($group:ident $id:literal)*) => {
        &[$(($id, Group::$group, include_str!(concat!("../../assets/help/", $folder, "/", $id, ".md")))),*]
    };
}

fn written(language: Language) -> &'static [Written] {
    match language {
        Language::English => written!("en"),
        Language::German => written!("de"),
    }
}

/// Licences are told in the words that they are given in.
const LICENCES: Written = ("licences", Group::Begin, include_str!("../../assets/help/licences.md"));

/// All pages in the language of whoever is at the program, in the order of the list; made once.
pub fn pages() -> &'static [Page] {
    static MADE: [OnceLock<Vec<Page>>; Language::ALL.len()] = [const { OnceLock::new() }; Language::ALL.len()];
    MADE[own() as usize].get_or_init(all_pages)
}

fn all_pages() -> Vec<Page> {
    let written = written(own()).iter().chain([&LICENCES]).map(|(id, group, text)| {
        let title = text.lines().next().unwrap_or(id).trim_start_matches('#').trim();
        Page { id: (*id).to_owned(), title: title.to_owned(), group: *group, text: with_names(text) }
    });
    let mut all: Vec<Page> = written.chain(made::pages()).chain(words()).collect();
    all.sort_by_key(|p| p.group);
    all
}

/// A page with the names that actions and menus have in the window: it writes `{action ID}` and `{menu ID}`.
fn with_names(text: &str) -> String {
    let actions = ACTIONS.iter().map(|a| (format!("{{action {}}}", a.id), made::bare(a).to_owned()));
    let menus = Menu::ALL.iter().map(|menu| (format!("{{menu {menu:?}}}"), menu.words()));
    actions.chain(menus).fold(text.to_owned(), |text, (mark, name)| text.replace(&mark, &name))
}

/// A page for each word of the trade, and one with all of them.
fn words() -> Vec<Page> {
    let all = glossary();
    let (head, all_words) = (say!("help-words"), say!("help-words-all"));
    let mut list = format!("# {head}\n\n{}\n\n", say!("help-words-intro"));
    let mut out = Vec::new();
    for word in &all {
        let Word { name, sentence, .. } = word;
        let (id, other) = (format!("word/{}", word.uk.replace(' ', "-")), elsewhere(word));
        list.push_str(&format!("- [{name}]({id}){other}: {sentence}\n"));
        let text = format!("# {name}\n\n{sentence}\n\n{}\n\n{all_words}\n", in_english(word));
        out.push(Page { id, title: format!("{name}{other}"), group: Group::Words, text });
    }
    out.insert(0, Page { id: "glossary".to_owned(), title: head, group: Group::Words, text: list });
    out
}

/// What stands behind a word in a list: what it is called elsewhere.
fn elsewhere(word: &Word) -> String {
    let Word { uk, us, .. } = word;
    match (word.name == word.uk, word.is_shared()) {
        (true, true) => String::new(),
        (true, false) => say!("help-word-us", us),
        (false, true) => say!("help-word-english", uk),
        (false, false) => say!("help-word-english-us", uk, us),
    }
}

/// What a word is called in the two kinds of English, in a sentence.
fn in_english(word: &Word) -> String {
    let Word { uk, us, .. } = word;
    match (word.name == word.uk, word.is_shared()) {
        (true, true) => say!("help-word-is-shared"),
        (false, true) => say!("help-word-is-english", uk),
        (_, false) => say!("help-word-is-two", uk, us),
    }
}

/// The page of this name in the language of whoever is at the program.
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
    use crate::texts::{advice, means, set_own, severity};
    use std::collections::BTreeSet;

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

    /// In each language.
    fn each(test: impl Fn(&'static [Page])) {
        for language in Language::ALL {
            set_own(language);
            test(pages());
        }
        set_own(Language::English);
    }

    #[test]
    fn every_link_leads_to_a_page_and_every_page_begins_with_its_title() {
        each(|all| {
            let ids: BTreeSet<&str> = all.iter().map(|p| p.id.as_str()).collect();
            assert_eq!(ids.len(), all.len(), "two pages of one name");
            let mut many = 0;
            for page in all {
                assert!(matches!(blocks(&page.text).first(), Some(Block::Heading(1, _))), "{}", page.id);
                assert!(!["{action", "{menu"].iter().any(|mark| page.text.contains(mark)), "{}", page.text);
                for to in links(&page.text) {
                    many += 1;
                    assert!(ids.contains(to.as_str()), "{} leads to {to}, which is no page", page.id);
                }
            }
            assert!(many > 200, "{many}");
        });
    }

    #[test]
    fn everything_the_program_knows_of_itself_has_its_page() {
        each(|_| {
            for f in FUNCTIONS {
                let page = page(&format!("function/{}", f.name)).expect("a page");
                assert!(page.text.contains(f.sentence().as_str()) && page.text.contains(f.example), "{}", f.name);
            }
            for code in Code::ALL {
                let page = page(&format!("finding/{}", code.word())).expect("a page");
                assert!(page.text.contains(&means(*code)) && page.text.contains(&advice(*code)));
                let bad = severity(code.severity()).to_lowercase();
                assert!(page.text.to_lowercase().contains(&bad), "{}", page.text);
            }
            let keys = &page("keys").expect("a page").text;
            for action in ACTIONS {
                let own = page(&format!("action/{}", action.id)).expect("a page").text.as_str();
                assert!(own.contains(action.what()) && own.contains(action.key), "{own}");
                assert!(keys.contains(made::bare(action)), "{}", action.name());
            }
        });
    }

    /// What a page holds that is the same in every language: kinds of blocks, where links lead, what is typed.
    fn frame(text: &str) -> (Vec<String>, BTreeSet<String>, BTreeSet<String>) {
        let read = blocks(text);
        let kinds = read.iter().map(|block| match block {
            Block::Heading(level, _) => format!("heading {level}"),
            Block::Words(_) => "words".to_owned(),
            Block::Item(_) => "item".to_owned(),
            Block::Row(cells) => format!("row of {}", cells.len()),
            Block::Code(code) => code.clone(),
        });
        let typed = text.split('`').skip(1).step_by(2).map(str::to_owned);
        (kinds.collect(), links(text).into_iter().collect(), typed.collect())
    }

    #[test]
    fn written_pages_are_of_one_frame_in_every_language() {
        let english = written(Language::English);
        for language in Language::ALL.into_iter().filter(|l| *l != Language::English) {
            let others = written(language);
            assert_eq!(english.len(), others.len());
            for ((id, _, english), (_, _, other)) in english.iter().zip(others) {
                let (english, other) = (frame(english), frame(other));
                assert_eq!(english.0, other.0, "{language:?}, {id}");
                assert_eq!(english.1, other.1, "{language:?}, {id}");
                assert_eq!(english.2, other.2, "{language:?}, {id}");
            }
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
        set_own(Language::German);
        let all = pages();
        let first = |words: &str| search(all, words).first().map(|i| all[*i].id.clone());
        for words in ["Probeteil", "muslin", "toile"] {
            assert_eq!(first(words).as_deref(), Some("word/toile"), "{words}");
        }
        assert_eq!(first("Abnäher").as_deref(), Some("about-darts"));
        set_own(Language::English);
    }
}
