//! What names mean, and where.

use std::collections::BTreeMap;

use crate::base::{Code, Finding};
use crate::document::{NameFault, check_name, fold};
use crate::texts::{id, own, said, say};

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
    seen: BTreeMap<String, (&'static str, String)>,
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
    pub fn add(&mut self, name: &str, what: &'static str, findings: &mut Vec<Finding>) -> bool {
        // Names of the program's own are made of such that were looked at.
        let fault = if super::derive::is_hidden(name) && self.is_told { Ok(()) } else { check_name(name) };
        if let Err(fault) = fault {
            findings.push(bad_name(name, what, fault));
            return false;
        }
        match self.seen.get(&fold(name)) {
            Some((kind, first)) => {
                let place = if self.of.is_empty() { format!("{what} {name}") } else { format!("{}.{name}", self.of) };
                findings.push(
                    Finding::new(Code::NameTwice)
                        .at(place)
                        .piece(&self.of)
                        .word("name", format!("`{name}`"))
                        .word("first", say!("noun-named", what = thing(kind), name = first))
                        .word("second", say!("noun-named", what = thing(what), name)),
                );
                false
            }
            None => {
                self.seen.insert(fold(name), (what, name.to_owned()));
                true
            }
        }
    }
}

/// What a kind of thing is called by the person at the program; its word here is that of findings for other programs.
pub(crate) fn thing(word: &str) -> String {
    let id = match word {
        "row" => id!("noun-row"),
        "value" => id!("noun-value"),
        "placement" => id!("noun-placement"),
        "material" => id!("noun-material"),
        "seam" => id!("noun-seam"),
        "condition" => id!("noun-condition"),
        "measure" => id!("noun-measure"),
        "strip" => id!("noun-strip"),
        "view" => id!("noun-view"),
        "piece" => id!("noun-piece"),
        "drawing" => id!("noun-drawing"),
        "dart" => id!("noun-dart"),
        "pleat" => id!("noun-pleat"),
        "tuck" => id!("noun-tuck"),
        "mark" => id!("noun-mark"),
        "fold" => id!("noun-fold"),
        "line" => id!("noun-line"),
        "lengthen-shorten line" => id!("noun-lengthen"),
        "slit" => id!("noun-slit"),
        "point" => id!("noun-point"),
        "edge" => id!("noun-edge"),
        "corner" => id!("noun-corner"),
        "size" => id!("noun-size"),
        "inner line" => id!("noun-inner-line"),
        "piece or drawing" => id!("noun-piece-or-drawing"),
        "edge or line" => id!("noun-edge-or-line"),
        "joint inside the edge" => id!("noun-joint"),
        "value that is found" => id!("noun-found-value"),
        "value (a row of the chart is one for all views)" => id!("noun-value-not-row"),
        other => return other.to_owned(),
    };
    said(own(), id, &[])
}

fn bad_name(name: &str, what: &str, fault: NameFault) -> Finding {
    let problem = match fault {
        NameFault::Empty => say!("bad-name-empty"),
        NameFault::TooLong => say!("bad-name-too-long", most = crate::document::MAX_NAME_LETTERS),
        NameFault::Start => say!("bad-name-starts-with-digit"),
        NameFault::Letter(letter) if letter.is_whitespace() => {
            say!("bad-name-space")
        }
        NameFault::Letter(letter) => say!("bad-name-letter", letter = letter.to_string()),
        NameFault::Reserved => say!("bad-name-reserved"),
    };
    let short: String = name.chars().take(40).collect();
    Finding::new(Code::NameBad)
        .at(format!("{what} {short}"))
        .word("name", format!("`{short}`"))
        .word("problem", problem)
}
