//! Changing texts of parts that are there: formulas, notes, the head of the draft.

use crate::base::DisplayUnit;
use crate::document::{Address, Draft};
use crate::session::EditError;
use crate::session::rename::rename_given;
use crate::texts::say;

/// A change of texts. A wrong formula is kept as it was typed: what is wrong with it is a finding.
#[derive(Clone, Debug, PartialEq)]
pub enum TextCommand {
    /// A text gets another wording.
    Set(Address, String),
    /// Lengths are shown in another unit. Changes no formula.
    Display(DisplayUnit),
}

impl TextCommand {
    pub(in crate::session) fn label(&self) -> String {
        match self {
            Self::Set(at, _) => say!("undo-change", part = at.part.words()),
            Self::Display(_) => say!("undo-display"),
        }
    }

    pub(in crate::session) fn apply(&self, draft: &mut Draft) -> Result<String, EditError> {
        match self {
            Self::Set(at, _) if at.field == "name" => {
                Err(EditError::refused(say!("refused-by-renaming", part = at.part.words())))
            }
            Self::Set(at, to) => match rename_given(draft, at, to) {
                // What a step makes is called otherwise, and everything that names it follows.
                Some(done) => done.map_err(|e| EditError::refused(e.to_string())),
                None if draft.set_text(at, to) => Ok(String::new()),
                None => Err(EditError::refused(say!("gone-from-draft", part = at.part.words()))),
            },
            Self::Display(unit) => {
                draft.display = *unit;
                Ok(String::new())
            }
        }
    }
}
