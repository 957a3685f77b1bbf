//! The letters of pieces: the same on sheets, in tables and in the booklet.

use crate::compute::Model;

/// The letter of each piece of the draft, in its order, the same in all views: the one that is typed, of which the first piece with it
/// keeps it (a derived piece has that of its base), else the next of A, B, … that no piece has. Empty for a block that others are made of
/// and that is not cut itself: it is no part of the garment.
pub fn letters(model: &Model) -> Vec<String> {
    let pieces = &model.draft.pieces;
    let is_cut: Vec<bool> = pieces.iter().map(|p| !is_block(model, &p.name)).collect();
    let typed: Vec<&str> = pieces.iter().map(|p| p.letter.trim()).collect();
    let taken = |letter: &str, before: usize| (0..before).any(|i| is_cut[i] && typed[i] == letter);
    let mut free = (0..).map(letter).filter(|l| !taken(l, pieces.len()));
    (0..pieces.len())
        .map(|i| match typed[i] {
            _ if !is_cut[i] => String::new(),
            letter if !letter.is_empty() && !taken(letter, i) => letter.to_owned(),
            _ => free.next().unwrap_or_default(),
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
