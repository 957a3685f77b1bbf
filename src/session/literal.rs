//! Lengths as a person types them.

use crate::base::Unit;
use crate::language::{Form, parse, tidy};

/// A single literal length, in mm; a bare number is in `unit`. Zero and less is none.
pub fn length_typed(text: &str, unit: Unit) -> Option<f64> {
    let (value, own) = number_typed(text)?;
    let unit = own.unwrap_or(unit);
    let (times, over) = unit.inside();
    (unit.is_length() && value > 0.0).then_some(value * times / over)
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
