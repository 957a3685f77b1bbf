//! Views: adding one, which pieces it has, what values say in it.

use crate::document::{Draft, Part, View};
use crate::session::EditError;
use crate::session::commands::part::add;
use crate::texts::say;

/// A change of views. Renaming and deleting are those of parts.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum ViewCommand {
    /// A view with all pieces is added.
    Add(String),
    /// Whether a view has a piece: view, piece.
    Piece(String, String, bool),
    /// What a value says in a view: view, value, formula; none: what it says elsewhere.
    Value(String, String, Option<String>),
}

impl ViewCommand {
    pub(in crate::session) fn label(&self) -> String {
        match self {
            Self::Add(name) => say!("undo-add-view", name),
            Self::Piece(view, piece, true) => say!("undo-view-piece", piece, view),
            Self::Piece(view, piece, false) => say!("undo-view-no-piece", piece, view),
            Self::Value(view, value, Some(_)) => say!("undo-view-value", value, view),
            Self::Value(view, value, None) => say!("undo-view-no-value", value, view),
        }
    }

    pub(in crate::session) fn apply(&self, draft: &mut Draft) -> Result<String, EditError> {
        match self {
            Self::Add(name) => {
                let view = View { name: name.clone(), ..View::default() };
                add(draft, Part::View(name.clone()), |d| d.views.push(view))
            }
            Self::Piece(name, piece, has) => {
                let all: Vec<String> = draft.pieces.iter().map(|p| p.name.clone()).collect();
                if !all.contains(piece) {
                    return Err(EditError::refused(say!("gone-piece", name = piece)));
                }
                let view = view_of(draft, name)?;
                // An empty list means all of them.
                if view.pieces.is_empty() {
                    view.pieces.clone_from(&all);
                }
                view.pieces.retain(|p| p != piece);
                if *has {
                    view.pieces.push(piece.clone());
                }
                if view.pieces.is_empty() {
                    let words = say!("refused-only-piece", piece, view = name);
                    return Err(EditError::refused(words));
                }
                let place = |p: &String| all.iter().position(|a| a == p).unwrap_or(all.len());
                view.pieces.sort_by_key(place);
                if view.pieces == all {
                    view.pieces.clear();
                }
                Ok(String::new())
            }
            Self::Value(name, value, formula) => {
                if !draft.values.iter().any(|v| v.name == *value) {
                    return Err(EditError::refused(say!("gone-value", name = value)));
                }
                let view = view_of(draft, name)?;
                let is_it = |(n, _): &(String, String)| n.strip_prefix("value.").unwrap_or(n) == value;
                match (view.values.iter().position(is_it), formula) {
                    (Some(i), Some(formula)) => view.values[i].1.clone_from(formula),
                    (None, Some(formula)) => view.values.push((value.clone(), formula.clone())),
                    (_, None) => view.values.retain(|v| !is_it(v)),
                }
                Ok(String::new())
            }
        }
    }
}

fn view_of<'a>(draft: &'a mut Draft, name: &str) -> Result<&'a mut View, EditError> {
    let gone = || EditError::refused(say!("gone-view", name));
    draft.views.iter_mut().find(|v| v.name == name).ok_or_else(gone)
}
