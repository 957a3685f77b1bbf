//! What a line drawn from one point to another becomes: the next edge of an outline, or a line inside.

use crate::document::{Draft, Piece, Segment};

/// What a line from one point to another becomes.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Joined {
    /// An edge of the outline, from and to these points: the sense in which the outline runs.
    Outline(String, String),
    /// A line inside the piece or drawing.
    Line(String, String),
}

/// What a line from one point to another becomes in a piece or drawing: it goes on with an outline that is open, at either end of
/// it, or begins one; else it is a line inside.
pub fn joined(draft: &Draft, frame: &str, from: &str, to: &str) -> Joined {
    let (from, to) = (from.to_owned(), to.to_owned());
    let Some(piece) = draft.pieces.iter().find(|p| p.name == frame) else { return Joined::Line(from, to) };
    let Some((first, last)) = open_ends(piece) else {
        return if piece.edges.is_empty() { Joined::Outline(from, to) } else { Joined::Line(from, to) };
    };
    if from == last || to == first {
        Joined::Outline(from, to)
    } else if to == last || from == first {
        Joined::Outline(to, from)
    } else {
        Joined::Line(from, to)
    }
}

/// Where an open outline starts and ends; none if there is none, or it is closed.
fn open_ends(piece: &Piece) -> Option<(&str, &str)> {
    let first = piece.edges.first()?;
    let last = piece.edges.last()?;
    let end = last.by.last().map_or(last.from.as_str(), Segment::end);
    (first.from != end).then_some((first.from.as_str(), end))
}
