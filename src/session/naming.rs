//! Whether a name is free.

use super::EditError;
use crate::document::{Draft, Inner, NameFault, Part, check_name, fold};

/// Refuses a name that cannot be one, or that is taken in its set.
///
/// # Errors
/// What is wrong with it and what to do.
pub fn check_free(draft: &Draft, part: &Part) -> Result<(), EditError> {
    let name = part.name();
    if let Err(fault) = check_name(name) {
        let problem = match fault {
            NameFault::Empty => "a name is needed".to_owned(),
            NameFault::TooLong => format!("a name has at most {} letters", crate::document::MAX_NAME_LETTERS),
            NameFault::Start => format!("`{name}` starts with a digit; put a letter first"),
            NameFault::Letter(l) if l.is_whitespace() => format!("`{name}` holds a space; write `_` instead"),
            NameFault::Letter(l) => format!("`{name}` holds `{l}`; letters, digits and `_` may stand there"),
            NameFault::Reserved => format!("`{name}` is a word of the language; choose another name"),
        };
        return Err(EditError::refused(problem));
    }
    let folded = fold(name);
    match set_of(draft, part).into_iter().find(|other| fold(other.name()) == folded) {
        Some(other) => Err(EditError::refused(format!("there is {other} already; choose another name"))),
        None => Ok(()),
    }
}

/// All parts that share a set of names with this one.
pub fn set_of(draft: &Draft, part: &Part) -> Vec<Part> {
    match part {
        Part::Inner(frame, ..) => inner_parts(draft, frame),
        Part::Seam(_) => draft.seams.iter().map(|s| Part::Seam(s.name.clone())).collect(),
        Part::Condition(_) => draft.conditions.iter().map(|c| Part::Condition(c.name.clone())).collect(),
        Part::Measure(_) => draft.measures.iter().map(|m| Part::Measure(m.name.clone())).collect(),
        Part::Strip(_) => draft.strips.iter().map(|s| Part::Strip(s.name.clone())).collect(),
        Part::View(_) => draft.views.iter().map(|v| Part::View(v.name.clone())).collect(),
        Part::Joint(_) => draft.joints.iter().map(|j| Part::Joint(j.name.clone())).collect(),
        Part::Notion(_) => draft.notions.iter().map(|n| Part::Notion(n.name.clone())).collect(),
        Part::Sheet(_) => draft.sheets.iter().map(|s| Part::Sheet(s.name.clone())).collect(),
        Part::SizeSet(_) => draft.chart.sets.iter().map(|s| Part::SizeSet(s.name.clone())).collect(),
        Part::Person(_) => draft.chart.persons.iter().map(|p| Part::Person(p.name.clone())).collect(),
        _ => {
            let rows = draft.chart.rows.iter().map(|r| Part::Row(r.name.clone()));
            let values = draft.values.iter().map(|v| Part::Value(v.name.clone()));
            let pieces = draft.pieces.iter().map(|p| Part::Piece(p.name.clone()));
            let drawings = draft.drawings.iter().map(|d| Part::Drawing(d.name.clone()));
            let placements = draft.placements.iter().map(|p| Part::Placement(p.name.clone()));
            let materials = draft.materials.iter().map(|m| Part::Material(m.name.clone()));
            rows.chain(values).chain(pieces).chain(drawings).chain(placements).chain(materials).collect()
        }
    }
}

/// The named parts of a piece or drawing.
pub fn inner_parts(draft: &Draft, frame: &str) -> Vec<Part> {
    let mut out = Vec::new();
    let mut add = |inner: Inner, name: &String| out.push(Part::Inner(frame.to_owned(), inner, name.clone()));
    if let Some(piece) = draft.pieces.iter().find(|p| p.name == frame) {
        piece.points.iter().for_each(|p| add(Inner::Point, &p.name));
        piece.edges.iter().for_each(|e| add(Inner::Edge, &e.name));
        piece.lines.iter().for_each(|l| add(Inner::Line, &l.name));
        piece.darts.iter().for_each(|d| add(Inner::Dart, &d.name));
        piece.pleats.iter().for_each(|t| add(Inner::Pleat, &t.name));
        piece.tucks.iter().for_each(|t| add(Inner::Tuck, &t.name));
        piece.folds.iter().for_each(|f| add(Inner::Fold, &f.name));
        piece.lengthen.iter().for_each(|l| add(Inner::Lengthen, &l.name));
        piece.slits.iter().for_each(|l| add(Inner::Slit, &l.name));
        piece.marks.iter().for_each(|m| add(Inner::Mark, &m.name));
    } else if let Some(drawing) = draft.drawings.iter().find(|d| d.name == frame) {
        drawing.points.iter().for_each(|p| add(Inner::Point, &p.name));
        drawing.lines.iter().for_each(|l| add(Inner::Line, &l.name));
    }
    out
}

/// A name for a new part of a piece or drawing: of a point the first free letter, else the first of `stem_1`, `stem_2`, … It means
/// nothing anywhere yet.
pub fn fresh_inner(draft: &Draft, frame: &str, inner: Inner, taken: &[String]) -> String {
    let mut known = known_names(draft, std::iter::once(frame));
    known.extend(taken.iter().map(|n| fold(n)));
    let letters = ('a'..='z').filter(|_| inner == Inner::Point).map(String::from);
    let counted = (1..).map(|i| format!("{}_{i}", inner.word()));
    letters.chain(counted).find(|name| !known.contains(&fold(name))).unwrap_or_default()
}

/// The first of `stem_1`, `stem_2`, … that means nothing anywhere: not globally, and not in any piece.
pub fn fresh_name(draft: &Draft, stem: &str) -> String {
    let frames = draft.pieces.iter().map(|p| p.name.as_str()).chain(draft.drawings.iter().map(|d| d.name.as_str()));
    let known = known_names(draft, frames);
    (1..).map(|i| format!("{stem}_{i}")).find(|name| !known.contains(&fold(name))).unwrap_or_default()
}

/// The names that mean something outside of all pieces and drawings, or within these, folded.
fn known_names<'a>(draft: &Draft, frames: impl Iterator<Item = &'a str>) -> Vec<String> {
    let inner = frames.flat_map(|frame| inner_parts(draft, frame));
    set_of(draft, &Part::Value(String::new())).into_iter().chain(inner).map(|p| fold(p.name())).collect()
}
