//! Numbers within words: a formula in braces becomes what it is in a size.

use super::Cell;
use super::table::trimmed;
use crate::compute::{Braced, BracedPart, Formula, Item, Model};
use crate::language::{Kind, Value};
use crate::texts::{decimal, t};

/// One square centimetre and one square inch in mm².
const SQUARES: [f64; 2] = [100.0, 645.16];

/// What a formula of this model's plan is in a case.
pub fn cell_of(model: &Model, case: usize, formula: &Formula) -> Cell {
    let Ok(item) = model.evaluate(&model.plan, case, formula) else { return Cell::Missing };
    match (&item, formula.kind) {
        (Item::Value(Value::Truth(yes)), _) => Cell::Words(if *yes { t!("yes") } else { t!("no") }),
        (Item::Value(Value::Real(n)), _) if !n.is_finite() => Cell::Missing,
        (Item::Value(Value::Real(n)), Kind::NUMBER) => Cell::Number(*n),
        (Item::Value(Value::Real(n)), Kind::LENGTH) => Cell::Length(*n),
        (Item::Value(Value::Real(n)), Kind::Angle) => Cell::Angle(*n),
        (Item::Value(Value::Real(n)), Kind::Quantity(2)) => {
            let [cm, inches] = SQUARES.map(|one| tenths(n / one));
            Cell::Words(t!("area-both", cm, inches))
        }
        _ => Cell::Missing,
    }
}

/// A length in both units, each rounded once from the millimetres: `2.5 cm (1 in)`. Centimetres have up to one decimal, inches go in
/// eighths. Its parts are held together by spaces at which no line is broken.
pub fn both_units(mm: f64) -> String {
    // Less than half a millimetre is not "0 cm".
    let small = trimmed(mm, 1);
    if mm.abs() < 0.5 && small != "0" {
        return t!("length-small", mm = small).replace(' ', "\u{a0}");
    }
    let cell = Cell::Length(mm);
    let (cm, inches) = (cell.in_cm(), cell.in_inches());
    let cm = cm.strip_suffix(&decimal(".0")).unwrap_or(&cm).to_owned();
    // What is there and no eighth of an inch is not "0 in".
    let inches = if inches == "0" && cm != "0" { t!("under-a-sixteenth") } else { inches };
    t!("length-both", cm, inches).replace(' ', "\u{a0}")
}

/// Words with formulas in braces as they read in a case: lengths in both units, a dash for what cannot be computed there, and what
/// cannot be read as it was typed (both are findings).
pub fn words_of(model: &Model, case: usize, words: &Braced) -> String {
    let part = |part: &BracedPart| match part {
        BracedPart::Words(text) | BracedPart::Unread(text) => text.to_string(),
        BracedPart::Formula(formula) => match cell_of(model, case, formula) {
            Cell::Length(mm) => both_units(mm),
            other => other.in_cm(),
        },
    };
    words.parts.iter().map(part).collect()
}

fn tenths(value: f64) -> String {
    Cell::Length(10.0 * value).in_cm().trim_end_matches(&decimal(".0")).to_owned()
}
