//! Rounding, which happens at display only.

use super::DisplayUnit;
use super::tolerance::EQUAL;

/// `value` to the nearest multiple of `step`, half away from zero; a value within 1e-6 of a tie counts as the tie.
pub fn round_half_away(value: f64, step: f64) -> f64 {
    let steps = (value / step).abs();
    let below = steps.floor();
    let up = steps - below >= 0.5 - EQUAL / step.abs().max(EQUAL);
    let rounded = (if up { below + 1.0 } else { below }) * step.abs();
    if value < 0.0 { -rounded } else { rounded }
}

/// `value` up to the next multiple of `step`; what lies above one by no more than `within` stays there.
pub fn rounded_up(value: f64, step: f64, within: f64) -> f64 {
    let nearest = round_half_away(value, step);
    if nearest + within >= value { nearest } else { nearest + step }
}

/// A length in millimetres as text in the draft's unit, with the unit's sign.
pub fn shown(mm: f64, unit: DisplayUnit) -> String {
    match unit {
        DisplayUnit::Mm => format!("{} mm", decimal(mm, 1)),
        DisplayUnit::Cm => format!("{} cm", decimal(mm / 10.0, 2)),
        DisplayUnit::InchEighths => inches(mm, 8),
        DisplayUnit::InchSixteenths => inches(mm, 16),
    }
}

/// A length too small for the fractions of an inch, as text: in millimetres, or in hundredths of an inch where the draft is in inches.
pub fn shown_small(mm: f64, unit: DisplayUnit) -> String {
    match unit {
        DisplayUnit::Mm | DisplayUnit::Cm => format!("{} mm", decimal(mm, 1)),
        DisplayUnit::InchEighths | DisplayUnit::InchSixteenths => format!("{} in", decimal(mm / 25.4, 2)),
    }
}

/// `value` with at most `places` decimals, trailing zeros dropped.
fn decimal(value: f64, places: i32) -> String {
    let step = libm::pow(10.0, f64::from(-places));
    let count = (round_half_away(value, step) / step).round();
    let text = format!("{:.*}", places as usize, count * step);
    let text = text.trim_end_matches('0').trim_end_matches('.');
    if text == "-0" { "0".to_owned() } else { text.to_owned() }
}

/// `mm` in inches as a whole number and a fraction in lowest terms.
fn inches(mm: f64, parts: i64) -> String {
    let step = 25.4 / parts as f64;
    let count = (round_half_away(mm, step) / step).round() as i64;
    let sign = if count < 0 { "-" } else { "" };
    let (whole, mut over) = (count.abs() / parts, count.abs() % parts);
    let mut under = parts;
    while over != 0 && over % 2 == 0 {
        over /= 2;
        under /= 2;
    }
    match (whole, over) {
        (_, 0) => format!("{sign}{whole} in"),
        (0, _) => format!("{sign}{over}/{under} in"),
        _ => format!("{sign}{whole} {over}/{under} in"),
    }
}
