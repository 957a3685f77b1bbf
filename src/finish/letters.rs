//! The letters of pieces: the same on sheets, in tables and in the booklet.

use crate::compute::Model;

/// The letter of each piece of the draft, in its order, the same in all views: the one that is typed, else the next of A, B, … that
/// no piece has. Empty for a block that others are made of and that is not cut itself: it is no part of the garment.
pub fn letters(model: &Model) -> Vec<String> {
    let pieces = &model.draft.pieces;
    let is_typed = |letter: &String| pieces.iter().any(|p| p.letter.trim() == letter);
    let mut free = (0..).map(letter).filter(|l| !is_typed(l));
    pieces
        .iter()
        .map(|piece| match piece.letter.trim() {
            "" if is_block(model, &piece.name) => String::new(),
            "" => free.next().unwrap_or_default(),
            typed => typed.to_owned(),
        })
        .collect()
}

/// Whether a piece is there for others alone, which are made of it, and is cut from nothing itself.
pub fn is_block(model: &Model, name: &str) -> bool {
    model.bases.contains(name) && model.draft.pieces.iter().any(|p| p.name == name && p.cuts.is_empty())
}

/// The letter of a number from 0: A to Z, then AA and on.
pub fn letter(number: usize) -> String {
    let mut out = String::new();
    let mut left = number + 1;
    while left > 0 {
        left -= 1;
        out.insert(0, char::from(b'A' + (left % 26) as u8));
        left /= 26;
    }
    out
}
