//! Pieces that are traced from a file, and pictures that lie underneath.

use std::sync::Arc;

use crate::document::{Draft, Part, Picture, Piece};
use crate::session::naming::check_free;
use crate::session::{EditError, qualify_for};
use crate::texts::say;

/// A change of what is traced.
#[derive(Clone, Debug, PartialEq)]
pub enum OutlineCommand {
    /// Pieces from outlines of a file are added, all or none; and what is told about them.
    AddPieces(Vec<Piece>, Vec<String>),
    /// A picture lies under its piece or drawing like this; there is one under each.
    Picture(Picture),
    /// The picture under a piece, a drawing or on the table (no name) is taken out.
    NoPicture(String),
}

impl OutlineCommand {
    pub(in crate::session) fn label(&self) -> String {
        match self {
            Self::AddPieces(pieces, _) => match pieces.as_slice() {
                [one] => say!("undo-trace", piece = one.name),
                all => say!("undo-trace-pieces", count = all.len()),
            },
            Self::Picture(picture) if picture.under.is_empty() => say!("undo-picture-table"),
            Self::Picture(picture) => say!("undo-picture", name = picture.under),
            Self::NoPicture(name) if name.is_empty() => say!("undo-no-picture-table"),
            Self::NoPicture(name) => say!("undo-no-picture", name),
        }
    }

    pub(in crate::session) fn apply(&self, draft: &mut Draft) -> Result<String, EditError> {
        match self {
            Self::AddPieces(pieces, notes) => {
                for piece in pieces {
                    let part = Part::Piece(piece.name.clone());
                    check_free(draft, &part)?;
                    draft.pieces.push(Arc::new(piece.clone()));
                    qualify_for(draft, &part);
                    for inner in crate::session::inner_parts(draft, &piece.name) {
                        qualify_for(draft, &inner);
                    }
                }
                let names: Vec<String> = pieces.iter().map(|p| p.name.clone()).collect();
                let mut told = say!("told-traced", pieces = crate::session::gathered(&names));
                for note in notes {
                    told.push_str(&format!("; {note}"));
                }
                Ok(told)
            }
            Self::Picture(picture) => {
                let name = &picture.under;
                let is_there = name.is_empty()
                    || draft.pieces.iter().any(|p| p.name == *name)
                    || draft.drawings.iter().any(|d| d.name == *name);
                if !is_there {
                    return Err(EditError::refused(say!("gone-frame", name)));
                }
                match draft.pictures.iter_mut().find(|p| p.under == *name) {
                    Some(own) => own.clone_from(picture),
                    None => draft.pictures.push(picture.clone()),
                }
                Ok(String::new())
            }
            Self::NoPicture(name) => {
                draft.pictures.retain(|p| p.under != *name);
                Ok(String::new())
            }
        }
    }
}
