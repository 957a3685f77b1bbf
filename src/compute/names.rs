//! What names mean, and where.

use std::collections::BTreeMap;

use crate::base::{Code, Finding};
use crate::document::{NameFault, check_name, fold};

use super::plan::NodeId;

/// A global thing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Global {
    Row(NodeId),
    Value(NodeId),
    Frame(u32),
    Placement(u32),
    /// The first of its member nodes.
    Material(NodeId),
}

/// A thing of a frame.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Local {
    Point(NodeId),
    Edge(NodeId),
    /// The first of its five member nodes.
    Dart(NodeId),
    /// Something that formulas cannot name.
    Mark,
}

/// Members of a dart in the order of their nodes.
pub(super) const DART_MEMBERS: [&str; 5] = ["leg", "intake", "tip", "first_foot", "second_foot"];

/// Members of a material in the order of their nodes.
pub(crate) const MATERIAL_MEMBERS: [&str; 5] =
    ["selvedge", "stretch_along", "stretch_across", "shrinkage_along", "shrinkage_across"];

/// Names of a frame.
#[derive(Clone, Debug, Default)]
pub(super) struct FrameNames {
    pub name: String,
    pub is_piece: bool,
    /// Whether it is told by the program: a stage of a derived piece, or its last one. Its own names come before those of rows
    /// and values there, since its formulas are not all typed; a place is never taken for a number.
    pub is_told: bool,
    pub locals: BTreeMap<String, Local>,
}

/// All names of a draft.
#[derive(Clone, Debug, Default)]
pub(super) struct Names {
    pub globals: BTreeMap<String, Global>,
    pub frames: Vec<FrameNames>,
    /// The first of the three member nodes (`one`, `two`, `difference`) of each seam.
    pub seams: BTreeMap<String, NodeId>,
    /// The length of each strip.
    pub strips: BTreeMap<String, NodeId>,
    /// The value of each finished measure.
    pub measures: BTreeMap<String, NodeId>,
}

/// A set of names in which no two may agree after case folding.
#[derive(Default)]
pub(super) struct NameSet {
    seen: BTreeMap<String, String>,
    /// The piece or drawing whose names they are; empty: none.
    of: String,
    /// Whether it is of something that the program tells by formulas: a derived piece, a stage.
    is_told: bool,
}

impl NameSet {
    /// The names of a piece or drawing; whether the program made some itself.
    pub fn of(of: &str, is_told: bool) -> Self {
        Self { of: of.to_owned(), is_told, ..Self::default() }
    }

    /// Takes a name in, or says why not. `what` is the thing as it would be written (`value bust_ease`).
    pub fn add(&mut self, name: &str, what: &str, findings: &mut Vec<Finding>) -> bool {
        // Names of the program's own are made of such that were looked at.
        let fault = if super::derive::is_hidden(name) && self.is_told { Ok(()) } else { check_name(name) };
        if let Err(fault) = fault {
            findings.push(bad_name(name, what, fault));
            return false;
        }
        let what = format!("{what} {name}");
        match self.seen.get(&fold(name)) {
            Some(first) => {
                let place = if self.of.is_empty() { what.clone() } else { format!("{}.{name}", self.of) };
                findings.push(
                    Finding::new(Code::NameTwice)
                        .at(place)
                        .piece(&self.of)
                        .word("name", format!("`{name}`"))
                        .word("first", first.clone())
                        .word("second", what),
                );
                false
            }
            None => {
                self.seen.insert(fold(name), what);
                true
            }
        }
    }
}

fn bad_name(name: &str, what: &str, fault: NameFault) -> Finding {
    let problem = match fault {
        NameFault::Empty => "it is empty".to_owned(),
        NameFault::TooLong => format!("it has more than {} letters", crate::document::MAX_NAME_LETTERS),
        NameFault::Start => "it starts with a digit".to_owned(),
        NameFault::Letter(letter) if letter.is_whitespace() => {
            "it holds a space; an underscore may stand there".to_owned()
        }
        NameFault::Letter(letter) => format!("it holds `{letter}`; letters, digits and `_` may stand there"),
        NameFault::Reserved => "it is a word of the language".to_owned(),
    };
    let short: String = name.chars().take(40).collect();
    Finding::new(Code::NameBad)
        .at(format!("{what} {short}"))
        .word("name", format!("`{short}`"))
        .word("problem", problem)
}
