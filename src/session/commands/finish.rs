//! What is said of pieces and seams beyond their stitch lines: allowances, cuts, notches, pressing.

use std::sync::Arc;

use crate::compute::unit_of;
use crate::document::{Allowance, Cut, Draft, Grain, Notch, Piece, Seam, SeamPressed};
use crate::language::literal_text;
use crate::session::EditError;
use crate::texts::say;

/// A change of how pieces are finished. Widths and places are texts and are changed as such.
#[derive(Clone, Debug, PartialEq)]
pub enum FinishCommand {
    /// An edge gets an allowance of its own, or with turns a hem: piece, edge, turns.
    AddAllowance(String, String, u32),
    /// An allowance is taken out, by its place in the list of its piece.
    TakeAllowance(String, usize),
    /// A piece is cut from a material (the first one, or none).
    AddCut(String),
    /// A cut is taken out, by its place.
    TakeCut(String, usize),
    /// A cut lies on a fold along an edge; none: on none.
    OnFold(String, usize, Option<String>),
    /// How often it is cut.
    CutCount(String, usize, u32),
    /// A seam gets a notch in its middle.
    AddNotch(String),
    /// A notch is taken out, by its place.
    TakeNotch(String, usize),
    /// To which side the allowances of a seam are pressed.
    Press(String, SeamPressed),
    /// A piece is lengthened at a line: piece, line, by how much.
    Lengthen(String, String, String),
}

impl FinishCommand {
    pub(in crate::session) fn label(&self) -> String {
        match self {
            Self::AddAllowance(piece, edge, 0) => say!("undo-allowance", piece, edge),
            Self::AddAllowance(piece, edge, _) => say!("undo-hem", piece, edge),
            Self::TakeAllowance(piece, _) => say!("undo-take-allowance", piece),
            Self::AddCut(piece) | Self::OnFold(piece, ..) | Self::CutCount(piece, ..) => say!("undo-cut", piece),
            Self::TakeCut(piece, _) => say!("undo-take-cut", piece),
            Self::AddNotch(seam) => say!("undo-add-notch", seam),
            Self::TakeNotch(seam, _) => say!("undo-take-notch", seam),
            Self::Lengthen(piece, line, _) => say!("undo-lengthen", piece, line),
            Self::Press(seam, _) => say!("undo-press", seam),
        }
    }

    pub(in crate::session) fn apply(&self, draft: &mut Draft) -> Result<String, EditError> {
        let unit = unit_of(draft);
        let length = |mm: f64| literal_text(mm, Some(unit));
        let material = draft.materials.first().map_or_else(String::new, |m| m.name.clone());
        match self {
            Self::AddAllowance(name, edge, turns) => {
                let piece = piece(draft, name)?;
                if !piece.edges.iter().any(|e| e.name == *edge) {
                    return Err(EditError::refused(say!("refused-no-edge", piece = name, edge)));
                }
                let width = length(if *turns > 0 { 30.0 } else { 10.0 });
                let (edge, turns) = (edge.clone(), *turns);
                piece.allowances.push(Allowance { edge, width, turns, ..Allowance::default() });
            }
            Self::TakeAllowance(name, i) => take(&mut piece(draft, name)?.allowances, *i)?,
            Self::AddCut(name) => {
                let grain = Grain { heading: "90°".to_owned(), ..Grain::default() };
                piece(draft, name)?.cuts.push(Cut { material, count: 2, grain, ..Cut::default() });
            }
            Self::TakeCut(name, i) => take(&mut piece(draft, name)?.cuts, *i)?,
            Self::OnFold(name, i, edge) => {
                let cut = nth(&mut piece(draft, name)?.cuts, *i)?;
                cut.on_fold = edge.clone().unwrap_or_default();
                cut.count = if cut.on_fold.is_empty() { 2 } else { 1 };
            }
            Self::CutCount(name, i, count) => nth(&mut piece(draft, name)?.cuts, *i)?.count = (*count).max(1),
            Self::AddNotch(name) => {
                let notches = &mut seam(draft, name)?.notches;
                let free = (1..).map(|i| format!("n{i}")).find(|n| notches.iter().all(|k| k.name != *n));
                let name = free.unwrap_or_default();
                notches.push(Notch { name, at: "1/2".to_owned(), strokes: 1, ..Notch::default() });
            }
            Self::TakeNotch(name, i) => take(&mut seam(draft, name)?.notches, *i)?,
            Self::Lengthen(piece, line, by) => return crate::session::lengthen(draft, piece, line, by),
            Self::Press(name, pressed) => seam(draft, name)?.pressed = *pressed,
        }
        Ok(self.label())
    }
}

fn piece<'a>(draft: &'a mut Draft, name: &str) -> Result<&'a mut Piece, EditError> {
    let found = draft.pieces.iter_mut().find(|p| p.name == name);
    found.map(Arc::make_mut).ok_or_else(|| EditError::refused(say!("refused-no-piece", name)))
}

fn seam<'a>(draft: &'a mut Draft, name: &str) -> Result<&'a mut Seam, EditError> {
    let found = draft.seams.iter_mut().find(|s| s.name == name);
    found.map(Arc::make_mut).ok_or_else(|| EditError::refused(say!("refused-no-seam", name)))
}

fn nth<T>(list: &mut [T], i: usize) -> Result<&mut T, EditError> {
    list.get_mut(i).ok_or_else(|| EditError::refused(say!("gone-it")))
}

fn take<T>(list: &mut Vec<T>, i: usize) -> Result<(), EditError> {
    nth(list, i)?;
    list.remove(i);
    Ok(())
}
