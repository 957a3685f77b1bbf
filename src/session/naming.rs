//! Whether a name is free.

use std::sync::Arc;

use super::EditError;
use crate::compute::{Lineage, Named};
use crate::document::{Draft, Inner, NameFault, Part, Point, check_name, fold};
use crate::texts::say;

/// Refuses a name that cannot be one, or that is taken in its set or in that of a piece that is made of its piece.
///
/// # Errors
/// What is wrong with it and what to do.
pub fn check_free(draft: &Draft, part: &Part) -> Result<(), EditError> {
    check_typed(draft, part)?;
    let Part::Inner(frame, _, name) = part else { return Ok(()) };
    let lineage = Lineage::of(draft);
    if lineage.beyond(frame).next().is_none() {
        return Ok(());
    }
    // It is tried with a point: what is cut off takes along edges and lines, but no points.
    let mut tried = draft.clone();
    let point = Point { name: name.clone(), at: "(0 mm, 0 mm)".to_owned(), ..Point::default() };
    if let Some(piece) = tried.pieces.iter_mut().find(|p| p.name == *frame) {
        Arc::make_mut(piece).points.push(point);
    }
    match Lineage::of(&tried).doubles.iter().find(|d| !lineage.doubles.contains(d)) {
        Some(double) => Err(EditError::refused(double.to_string())),
        None => Ok(()),
    }
}

/// Refuses a name that cannot be one, or that is taken in its set, as far as that is typed.
pub(super) fn check_typed(draft: &Draft, part: &Part) -> Result<(), EditError> {
    let name = part.name();
    if let Err(fault) = check_name(name) {
        let problem = match fault {
            NameFault::Empty => say!("name-empty"),
            NameFault::TooLong => say!("name-long", most = crate::document::MAX_NAME_LETTERS),
            NameFault::Start => say!("name-digit", name),
            NameFault::Letter(l) if l.is_whitespace() => say!("name-space", name),
            NameFault::Letter(l) => say!("name-letter", name, letter = l.to_string()),
            NameFault::Reserved => say!("name-reserved", name),
        };
        return Err(EditError::refused(problem));
    }
    let folded = fold(name);
    match set_of(draft, part).into_iter().find(|other| fold(other.name()) == folded) {
        Some(other) => Err(EditError::refused(say!("name-taken", part = other.words()))),
        None => Ok(()),
    }
}

/// The part that is meant where one is seen in a derived piece: what passes is a part of the piece that it comes from.
pub(super) fn meant(lineage: &Lineage, part: &Part) -> Part {
    let named = if let Part::Inner(frame, _, name) = part { lineage.last(frame, name) } else { None };
    named.and_then(Named::part).unwrap_or(part).clone()
}

/// What is to be known of a part that is seen in a derived piece and comes from elsewhere, in a sentence.
pub fn comes_from(draft: &Draft, part: &Part) -> Option<String> {
    let lineage = Lineage::of(draft);
    let own = meant(&lineage, part);
    if own.frame() != part.frame() {
        return Some(say!("comes-from-part", part = own.words(), frame = part.frame()?));
    }
    let step = lineage.makers(&own).first().copied()?;
    let piece = draft.pieces.iter().find(|p| Some(p.name.as_str()) == own.frame())?;
    Some(say!("comes-from-step", step = piece.steps.get(step)?.name, piece = piece.name))
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
    let part = |(inner, name): (Inner, &String)| Part::Inner(frame.to_owned(), inner, name.clone());
    if let Some(piece) = draft.pieces.iter().find(|p| p.name == frame) {
        return piece.named().map(part).collect();
    }
    let Some(drawing) = draft.drawings.iter().find(|d| d.name == frame) else { return Vec::new() };
    let points = drawing.points.iter().map(|p| (Inner::Point, &p.name));
    points.chain(drawing.lines.iter().map(|l| (Inner::Line, &l.name))).map(part).collect()
}

/// A name for a new part of a piece or drawing: of a point the first free letter, else the first of `stem_1`, `stem_2`, … It means
/// nothing anywhere yet.
pub fn fresh_inner(draft: &Draft, frame: &str, inner: Inner, taken: &[String]) -> String {
    let mut known = known_names(draft, std::iter::once(frame));
    let lineage = Lineage::of(draft);
    known.extend(lineage.beyond(frame).flat_map(|(_, names)| names.all()).map(|(name, _)| fold(name)));
    known.extend(taken.iter().map(|n| fold(n)));
    let letters = ('a'..='z').filter(|_| inner == Inner::Point).map(String::from);
    let counted = (1..).map(|i| format!("{}_{i}", inner.word()));
    letters.chain(counted).find(|name| !known.contains(&fold(name))).unwrap_or_default()
}

/// The first of `stem_1`, `stem_2`, … that means nothing anywhere: not globally, and not in any piece.
pub fn fresh_name(draft: &Draft, stem: &str) -> String {
    let frames = draft.pieces.iter().map(|p| p.name.as_str()).chain(draft.drawings.iter().map(|d| d.name.as_str()));
    let mut known = known_names(draft, frames);
    let lineage = Lineage::of(draft);
    known.extend(lineage.pieces.values().flat_map(|names| names.all()).map(|(name, _)| fold(name)));
    (1..).map(|i| format!("{stem}_{i}")).find(|name| !known.contains(&fold(name))).unwrap_or_default()
}

/// The names that mean something outside of all pieces and drawings, or within these, folded.
fn known_names<'a>(draft: &Draft, frames: impl Iterator<Item = &'a str>) -> Vec<String> {
    let inner = frames.flat_map(|frame| inner_parts(draft, frame));
    set_of(draft, &Part::Value(String::new())).into_iter().chain(inner).map(|p| fold(p.name())).collect()
}
