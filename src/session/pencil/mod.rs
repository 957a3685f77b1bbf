//! Drawing by pointing: what a place on the table could mean as a formula.
//!
//! A [`Sight`] is what can be pointed at in one piece or drawing, in one size. For a place it gives [`Reading`]s, the likeliest
//! first: each a formula, where that formula puts the point (never where the pointer is), why, and the numbers that may be
//! typed instead. Nothing here changes a draft.

mod candidates;
mod joining;
mod numbers;
mod sight;

pub use joining::{Joined, joined};
pub use numbers::Rounding;
pub(super) use sight::SeenEdge;
pub use sight::Sight;

use kurbo::Point;

use crate::base::Span;
use crate::texts::say;

/// A place as a formula.
#[derive(Clone, Debug, PartialEq)]
pub struct Reading {
    /// What would be written.
    pub formula: String,
    /// Why, in a few words: "on hem, half way".
    pub words: String,
    /// Where the formula puts the point, mm, in the frame.
    pub place: Point,
    /// The numbers that can be typed instead, in the order of the text.
    pub numbers: Vec<Span>,
    /// Straight lines that show what it follows from, mm.
    pub guides: Vec<[Point; 2]>,
    /// The point that lies there already, if that is meant.
    pub there: Option<String>,
}

/// What the pointer is asked about.
#[derive(Clone, Debug, PartialEq)]
pub struct Pointing {
    /// Its place, mm, in the frame.
    pub at: Point,
    /// How near something must be, mm.
    pub reach: f64,
    /// The points from which is measured: the one before last, and the last.
    pub from: Vec<String>,
    /// Whether anything but free places is offered.
    pub snap: bool,
    /// How numbers are rounded.
    pub rounding: Rounding,
}

impl Reading {
    /// The reading with other numbers: those that were typed, in their order; what is empty stays as it is. The place is asked anew.
    ///
    /// # Errors
    /// What is wrong with a number or with the whole, in words.
    pub fn with(&self, sight: &Sight<'_>, typed: &[String]) -> Result<Self, String> {
        let (mut formula, mut numbers, mut from) = (String::new(), Vec::new(), 0);
        for (i, span) in self.numbers.iter().enumerate() {
            let own = span.of(&self.formula);
            let to = match typed.get(i).map(|t| t.trim()).filter(|t| !t.is_empty()) {
                Some(text) => sight.number(text, own)?,
                None => own.to_owned(),
            };
            formula.push_str(&self.formula[from..span.start]);
            numbers.push(Span::new(formula.len(), formula.len() + to.len()));
            formula.push_str(&to);
            from = span.end;
        }
        formula.push_str(&self.formula[from..]);
        let place = sight.place(&formula).map_err(|why| why.unwrap_or_else(|| say!("formula-no-answer")))?;
        Ok(Self { formula, numbers, place, there: None, ..self.clone() })
    }
}
