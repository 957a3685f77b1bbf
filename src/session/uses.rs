//! What uses a part, and what a part uses.

use super::naming::meant;
use super::references::references;
use crate::compute::{Lineage, Owner};
use crate::document::{Address, Draft, Part};
use crate::texts::say;

/// A use of a part.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Use {
    /// The text in which it is named.
    pub at: Address,
    /// Whether that text cannot be read, so that it is only known that the word is in it.
    pub perhaps: bool,
}

impl Use {
    /// Whose text it is, in words: `point front.tip`, `step panel of front_panel`.
    pub fn place(&self, draft: &Draft) -> String {
        let step = self.at.part.frame().filter(|_| self.at.field.starts_with("step ")).and_then(|frame| {
            let piece = draft.pieces.iter().find(|p| p.name == frame)?;
            Some(say!("place-step", step = piece.steps.get(self.at.at)?.name, piece = frame))
        });
        let place = step.unwrap_or_else(|| self.at.part.words());
        if self.perhaps { say!("place-perhaps", place) } else { place }
    }
}

/// Where a part is named, also through pieces that are made of its piece. Of a piece or drawing: where anything in it is named from outside of it.
pub fn used_by(draft: &Draft, part: &Part) -> Vec<Use> {
    let part = &meant(&Lineage::of(draft), part);
    let whole = match part {
        Part::Piece(name) | Part::Drawing(name) => Some(name.as_str()),
        _ => None,
    };
    let found = references(draft);
    let mut out: Vec<Use> = Vec::new();
    let mut add = |at: &Address, perhaps: bool| {
        let inside = whole.is_some() && at.part.frame() == whole;
        let own = at.part == *part && !matches!(part, Part::Inner(..) | Part::Value(_) | Part::Row(_));
        if !inside && !own && !out.iter().any(|u| u.at == *at) {
            out.push(Use { at: at.clone(), perhaps });
        }
    };
    for occurrence in found.all.iter().filter(|o| !o.gives) {
        let mut parts = occurrence.meanings.iter().flat_map(|m| m.parts().map(|(_, p)| p));
        let inner_of =
            |p: &Part| whole.is_some() && matches!(p, Part::Inner(frame, ..) if Some(frame.as_str()) == whole);
        if parts.any(|p| p == part || inner_of(p)) {
            add(&occurrence.at, false);
        }
    }
    for unread in &found.unread {
        if has_word(&unread.text, part.name()) {
            add(&unread.at, true);
        }
    }
    out
}

/// Where that is named which a step of a derived piece makes.
pub fn used_of_step(draft: &Draft, piece: &str, step: usize) -> Vec<Use> {
    let lineage = Lineage::of(draft);
    let made = lineage.pieces.get(piece).and_then(|p| p.made.get(step)).map_or(&[][..], Vec::as_slice);
    let only_here = made.iter().filter(|part| lineage.makers(part).len() == 1);
    let mut owners: Vec<Owner> = only_here.cloned().map(Owner::Part).collect();
    owners.push(Owner::Prefix(piece.to_owned(), step));
    let mut out: Vec<Use> = Vec::new();
    for occurrence in references(draft).all.iter().filter(|o| !o.gives && owners.iter().any(|own| o.means(own))) {
        let at = &occurrence.at;
        let own = matches!(&at.part, Part::Piece(p) if p == piece) && at.field.starts_with("step ") && at.at == step;
        if !own && !out.iter().any(|u| u.at == *at) {
            out.push(Use { at: at.clone(), perhaps: false });
        }
    }
    out
}

/// The parts that the texts of a part name.
pub fn uses(draft: &Draft, part: &Part) -> Vec<Part> {
    let part = &meant(&Lineage::of(draft), part);
    let mut out: Vec<Part> = Vec::new();
    for occurrence in references(draft).all.iter().filter(|o| o.at.part == *part) {
        for (_, named) in occurrence.meanings.iter().flat_map(|m| m.parts()) {
            if named != part && !out.contains(named) {
                out.push(named.clone());
            }
        }
    }
    out
}

/// Whether a word stands in a text, not as a part of a longer one.
fn has_word(text: &str, word: &str) -> bool {
    let is_letter = |c: char| c == '_' || c.is_alphanumeric();
    text.match_indices(word).any(|(i, _)| {
        let before = text[..i].chars().next_back().is_some_and(is_letter);
        let after = text[i + word.len()..].chars().next().is_some_and(is_letter);
        !word.is_empty() && !before && !after
    })
}
