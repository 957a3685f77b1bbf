//! Adding, renaming and deleting whole parts; how seams fit.

use std::sync::Arc;

use kurbo::Point;

use crate::document::{Condition, Draft, Drawing, Fit, Part, Piece, Seam, Side, Value};
use crate::session::computed::Computed;
use crate::session::delete::{Deleting, delete};
use crate::session::naming::check_free;
use crate::session::shaping::name_sets;
use crate::session::{EditError, PAGES, put_on, qualify_for, rename};
use crate::texts::say;

/// A change of whole parts.
#[derive(Clone, Debug, PartialEq)]
pub enum PartCommand {
    /// A value is added: name, formula.
    AddValue(String, String),
    /// A value that is found is added: name, start, least, most.
    AddFound(String, [String; 3]),
    /// A given value is to be found from its formula on, or a found one is given.
    MakeFound(String, bool),
    /// A piece without anything is added.
    AddPiece(String),
    /// A drawing without anything is added.
    AddDrawing(String),
    /// A seam is added: name, edges of both sides, the values that keep it true.
    AddSeam(String, [Vec<String>; 2], Vec<String>),
    /// The edges of a seam's side.
    SeamSide(String, Side, Vec<String>),
    /// How the sides of a seam fit.
    SeamFit(String, Fit),
    /// The values that keep a seam or condition true.
    FoundBy(Part, Vec<String>),
    /// A condition is added: name, what must hold, the values that keep it true.
    AddCondition(String, String, Vec<String>),
    /// A piece is put at a place of the pages of a home printer, mm; `None`: wherever there is room. All pieces if no name.
    OnPages(String, Option<Point>),
    /// A piece or drawing is put at a place of the table, mm, where its coordinates begin; `None`: all of them wherever there is room.
    OnTable(String, Option<Point>),
    /// A part gets another name, everywhere.
    Rename(Part, String),
    /// A part is taken out.
    Delete(Part, Deletion),
}

/// What becomes of what names a part that is taken out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Deletion {
    /// Nothing may name it.
    IfUnused,
    /// They get its present value.
    PutValue,
    /// They stay as they are and become findings.
    LeaveBroken,
}

impl PartCommand {
    pub(in crate::session) fn label(&self) -> String {
        match self {
            Self::AddValue(name, _) | Self::AddFound(name, _) => say!("undo-add-value", name),
            Self::MakeFound(name, true) => say!("undo-find-value", name),
            Self::MakeFound(name, false) => say!("undo-give-value", name),
            Self::AddPiece(name) => say!("undo-add-piece", name),
            Self::AddDrawing(name) => say!("undo-add-drawing", name),
            Self::AddSeam(name, ..) => say!("undo-add-seam", name),
            Self::SeamSide(name, ..) => say!("undo-seam-edges", name),
            Self::SeamFit(name, _) => say!("undo-seam-fit", name),
            Self::FoundBy(part, _) => say!("undo-found-by", part = part.words()),
            Self::AddCondition(name, ..) => say!("undo-add-condition", name),
            Self::OnPages(piece, Some(_)) => say!("undo-on-pages", piece),
            Self::OnPages(..) => say!("undo-arrange-pages"),
            Self::OnTable(piece, Some(_)) => say!("undo-on-table", piece),
            Self::OnTable(..) => say!("undo-arrange-table"),
            Self::Rename(part, to) => say!("undo-rename", part = part.words(), name = to),
            Self::Delete(part, _) => say!("undo-delete", part = part.words()),
        }
    }

    pub(in crate::session) fn apply(&self, draft: &mut Draft, computed: &Computed) -> Result<String, EditError> {
        match self {
            Self::AddValue(name, is) => {
                let value = Value { name: name.clone(), is: is.clone(), ..Value::default() };
                add(draft, Part::Value(name.clone()), |d| d.values.push(value))
            }
            Self::AddFound(name, [start, least, most]) => {
                if start.is_empty() {
                    return Err(EditError::refused(say!("refused-no-start")));
                }
                let (start, least, most) = (start.clone(), least.clone(), most.clone());
                let value = Value { name: name.clone(), start, least, most, ..Value::default() };
                add(draft, Part::Value(name.clone()), |d| d.values.push(value))
            }
            Self::MakeFound(name, found) => make_found(draft, name, *found),
            Self::AddPiece(name) => {
                let piece = Piece { name: name.clone(), ..Piece::default() };
                add(draft, Part::Piece(name.clone()), |d| d.pieces.push(Arc::new(piece)))
            }
            Self::AddDrawing(name) => {
                let drawing = Drawing { name: name.clone(), ..Drawing::default() };
                add(draft, Part::Drawing(name.clone()), |d| d.drawings.push(Arc::new(drawing)))
            }
            Self::AddSeam(name, [one, two], found_by) => {
                let (one, two, found_by) = (one.clone(), two.clone(), found_by.clone());
                let seam = Seam { name: name.clone(), one, two, found_by, ..Seam::default() };
                add(draft, Part::Seam(name.clone()), |d| d.seams.push(Arc::new(seam)))
            }
            Self::SeamSide(name, side, edges) => {
                let seam = seam_of(draft, name)?;
                match side {
                    Side::One => seam.one.clone_from(edges),
                    Side::Two => seam.two.clone_from(edges),
                }
                Ok(String::new())
            }
            Self::SeamFit(name, fit) => {
                seam_of(draft, name)?.fit.clone_from(fit);
                Ok(String::new())
            }
            Self::FoundBy(Part::Condition(name), values) => {
                let gone = || EditError::refused(say!("gone-condition", name));
                let condition = draft.conditions.iter_mut().find(|c| c.name == *name).ok_or_else(gone)?;
                condition.found_by.clone_from(values);
                Ok(String::new())
            }
            Self::FoundBy(part, values) => {
                seam_of(draft, part.name())?.found_by.clone_from(values);
                Ok(String::new())
            }
            Self::AddCondition(name, must, found_by) => {
                let (must, found_by) = (must.clone(), found_by.clone());
                let condition = Condition { name: name.clone(), must, found_by, ..Condition::default() };
                add(draft, Part::Condition(name.clone()), |d| d.conditions.push(condition))
            }
            Self::OnPages(piece, at) => {
                let all: Vec<String> = draft.pieces.iter().map(|p| p.name.clone()).collect();
                for name in all.iter().filter(|n| piece.is_empty() || *n == piece) {
                    put_on(draft, PAGES, name, *at);
                }
                Ok(String::new())
            }
            Self::OnTable(piece, Some(at)) => {
                put_on(draft, "", piece, Some(*at));
                Ok(String::new())
            }
            Self::OnTable(_, None) => {
                draft.table.retain(|t| !t.sheet.is_empty());
                Ok(String::new())
            }
            Self::Rename(part, to) => {
                let told = rename(draft, part, to).map_err(|e| EditError::refused(e.to_string()))?;
                if let Part::SizeSet(old) = part {
                    name_sets(draft, Some((old, to)));
                }
                Ok(told)
            }
            Self::Delete(part, how) => {
                let Some(model) = &computed.model else {
                    return Err(EditError::refused(say!("refused-uses-unknown")));
                };
                let how = match how {
                    Deletion::IfUnused => Deleting::IfUnused,
                    Deletion::PutValue => Deleting::PutValue,
                    Deletion::LeaveBroken => Deleting::LeaveBroken,
                };
                delete(draft, model, part, how).map_err(|e| EditError::refused(e.to_string()))
            }
        }
    }
}

pub(super) fn add(draft: &mut Draft, part: Part, put: impl FnOnce(&mut Draft)) -> Result<String, EditError> {
    check_free(draft, &part)?;
    put(draft);
    qualify_for(draft, &part);
    Ok(String::new())
}

fn seam_of<'a>(draft: &'a mut Draft, name: &str) -> Result<&'a mut Seam, EditError> {
    let gone = || EditError::refused(say!("gone-seam", name));
    draft.seams.iter_mut().find(|s| s.name == name).map(Arc::make_mut).ok_or_else(gone)
}

fn make_found(draft: &mut Draft, name: &str, found: bool) -> Result<String, EditError> {
    let gone = || EditError::refused(say!("gone-value", name));
    let value = draft.values.iter_mut().find(|v| v.name == name).ok_or_else(gone)?;
    if found == value.is_found() {
        return Ok(String::new());
    }
    if found {
        value.start = std::mem::take(&mut value.is);
        return Ok(say!("told-found", name));
    }
    let keeping = draft.seams.iter().filter(|s| s.found_by.iter().any(|n| n == name)).map(|s| s.name.as_str());
    let keeping: Vec<&str> = keeping.collect();
    if !keeping.is_empty() {
        return Err(EditError::refused(say!("refused-keeps-seams", name, seams = keeping.join(", "))));
    }
    value.is = std::mem::take(&mut value.start);
    value.least.clear();
    value.most.clear();
    Ok(String::new())
}
