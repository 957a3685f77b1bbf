//! Lengths as a person types them.

use crate::base::Unit;
use crate::language::{Form, parse, tidy};
use crate::texts::say;

/// A single literal length, in mm; a bare number is in `unit`. Zero and less is none.
pub fn length_typed(text: &str, unit: Unit) -> Option<f64> {
    let (value, own) = number_typed(text)?;
    let unit = own.unwrap_or(unit);
    let (times, over) = unit.inside();
    (unit.is_length() && value > 0.0).then_some(value * times / over)
}

/// A single literal length with a unit of its own, in mm, above zero: where a bare number could be taken for another unit than is meant.
///
/// # Errors
/// What is missing.
pub fn length_with_unit(text: &str) -> Result<f64, String> {
    let text = text.trim();
    match number_typed(text) {
        Some((value, Some(unit))) if unit.is_length() && value > 0.0 => {
            let (times, over) = unit.inside();
            Ok(value * times / over)
        }
        Some((value, None)) if value > 0.0 => Err(without_unit(text)),
        _ => Err(say!("refused-typed-length", text)),
    }
}

fn without_unit(text: &str) -> String {
    say!("refused-typed-unit", text)
}

/// What to ask where a number alone was typed for a length; nothing where it is something else, such as a formula.
pub fn unit_missing(text: &str) -> Option<String> {
    let text = text.trim();
    matches!(number_typed(text), Some((_, None))).then(|| without_unit(text))
}

/// A length as a literal, maybe with a minus before it, in mm; a bare number is in `unit`.
pub fn signed_length(text: &str, unit: Unit) -> Option<f64> {
    let text = text.trim();
    let (sign, rest) = text.strip_prefix(['-', '−']).map_or((1.0, text), |rest| (-1.0, rest));
    let (value, own) = number_typed(rest.trim_start_matches('+'))?;
    let unit = own.unwrap_or(unit);
    let (times, over) = unit.inside();
    unit.is_length().then_some(sign * value * times / over)
}

/// A single literal with its unit.
pub(super) fn number_typed(text: &str) -> Option<(f64, Option<Unit>)> {
    match parse(&tidy(text)).ok()?.form {
        Form::Number(value, unit) => Some((value, unit)),
        _ => None,
    }
}
