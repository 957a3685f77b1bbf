//! The changes that can be made to a draft, by noun.

use super::commands::{
    ChartCommand, FinishCommand, LayCommand, OutlineCommand, PartCommand, PieceCommand, PublishCommand, StepCommand,
    TextCommand, ViewCommand,
};
use super::computed::Computed;
use super::pull::Pull;
use super::size::SizeError;
use super::taken::BlockCommand;
use crate::document::Draft;

/// A change.
#[derive(Clone, Debug, PartialEq)]
pub enum Command {
    /// Texts of parts that are there.
    Text(TextCommand),
    /// Sizes, rows, persons, cells.
    Chart(ChartCommand),
    /// Points, edges and outlines of pieces.
    Piece(PieceCommand),
    /// Derived pieces and their steps.
    Step(StepCommand),
    /// Values, pieces, seams, conditions as a whole.
    Part(PartCommand),
    /// Views: their pieces, what values say in them.
    View(ViewCommand),
    /// Strips, notions, cloth, booklet, fittings, what is chosen of them.
    Publish(PublishCommand),
    /// Allowances, cuts, notches.
    Finish(FinishCommand),
    /// Lay plans that are kept.
    Lay(LayCommand),
    /// Traced pieces, pictures underneath.
    Outline(Box<OutlineCommand>),
    /// Blocks taken from other drafts.
    Block(Box<BlockCommand>),
    /// A point or handle that is pulled.
    Pull(Box<Pull>),
    /// Several, one after the other, as one change; and what it is called.
    Several(String, Vec<Command>),
}

/// Why a change was not made. The draft is as it was.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum EditError {
    /// A size could not be added.
    #[error(transparent)]
    Size(#[from] SizeError),
    /// In words.
    #[error("{0}")]
    Refused(String),
}

impl EditError {
    /// In words.
    pub fn refused(words: impl Into<String>) -> Self {
        Self::Refused(words.into())
    }
}

impl Command {
    /// What it does, for undo and redo: "change front.tip".
    pub fn label(&self) -> String {
        match self {
            Self::Text(c) => c.label(),
            Self::Chart(c) => c.label(),
            Self::Piece(c) => c.label(),
            Self::Step(c) => c.label(),
            Self::Part(c) => c.label(),
            Self::View(c) => c.label(),
            Self::Publish(c) => c.label(),
            Self::Finish(c) => c.label(),
            Self::Lay(c) => c.label(),
            Self::Outline(c) => c.label(),
            Self::Block(c) => c.label(),
            Self::Pull(c) => c.label(),
            Self::Several(label, _) => label.clone(),
        }
    }

    /// Makes the change. `computed` is what is known of the draft, maybe of an earlier revision.
    pub(super) fn apply(&self, draft: &mut Draft, computed: &Computed) -> Result<String, EditError> {
        match self {
            Self::Text(c) => c.apply(draft),
            Self::Chart(c) => c.apply(draft, computed),
            Self::Piece(c) => c.apply(draft),
            Self::Step(c) => c.apply(draft),
            Self::Part(c) => c.apply(draft, computed),
            Self::View(c) => c.apply(draft),
            Self::Publish(c) => c.apply(draft),
            Self::Finish(c) => c.apply(draft),
            Self::Lay(c) => c.apply(draft, computed),
            Self::Outline(c) => c.apply(draft),
            Self::Block(c) => c.apply(draft),
            Self::Pull(c) => c.apply(draft),
            Self::Several(_, all) => {
                let told: Result<Vec<String>, _> = all.iter().map(|c| c.apply(draft, computed)).collect();
                Ok(told?.into_iter().filter(|t| !t.is_empty()).collect::<Vec<_>>().join("; "))
            }
        }
    }
}
