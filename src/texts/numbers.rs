//! Numbers, lengths, dates and lists as readers of a language write them.

use super::{Language, current, owned, t};
use crate::base::{DisplayUnit, shown};

/// A number that is written with a point, as the language writes it: `12.5` is `12,5` in German.
pub fn decimal(text: &str) -> String {
    match current() {
        Language::English => text.to_owned(),
        Language::German => text.replace('.', ","),
    }
}

/// A number as whoever is at the program reads it.
pub fn own_number(number: impl std::fmt::Display) -> String {
    owned(|| decimal(&number.to_string()))
}

/// A length as whoever is at the program reads it.
pub fn own_length(mm: f64, unit: DisplayUnit) -> String {
    owned(|| length(mm, unit))
}

/// A length in a unit, with the unit's sign.
pub fn length(mm: f64, unit: DisplayUnit) -> String {
    let text = shown(mm, unit);
    match text.rsplit_once(' ') {
        Some((number, "in")) => format!("{number} {}", inch()),
        Some((number, sign)) => format!("{} {sign}", decimal(number)),
        None => text,
    }
}

/// What separates the cells of a table for spreadsheets, and what such a file begins with.
///
/// Where numbers have a decimal comma, spreadsheets take files with semicolons. In German they also want the mark of UTF-8, or take
/// umlauts for letters of an older table when a file is opened by a double click (from memory).
pub fn spreadsheet() -> (u8, &'static str) {
    match current() {
        Language::English => (b',', ""),
        Language::German => (b';', "\u{feff}"),
    }
}

/// The sign of an inch.
pub fn inch() -> String {
    t!("unit-inch")
}

/// A length that was typed as a number with a unit, as the language writes it; a formula stays as it is.
pub fn typed(text: &str) -> String {
    let is_number = |number: &str| {
        number.contains(|c: char| c.is_ascii_digit())
            && number.chars().all(|c| c.is_ascii_digit() || ".,/ ".contains(c))
    };
    match text.trim().rsplit_once(' ') {
        Some((number, "in")) if is_number(number) => format!("{number} {}", inch()),
        Some((number, sign @ ("mm" | "cm" | "m"))) if is_number(number) => format!("{} {sign}", decimal(number)),
        _ => text.to_owned(),
    }
}

/// A date that was typed: one of year, month and perhaps day as the language writes it, any other as it is.
pub fn date(text: &str) -> String {
    let is_number = |part: &str, letters: usize| part.len() == letters && part.bytes().all(|b| b.is_ascii_digit());
    match (current(), text.trim().split('-').collect::<Vec<_>>().as_slice()) {
        (Language::German, [year, month, day]) if is_number(year, 4) && is_number(month, 2) && is_number(day, 2) => {
            format!("{day}.{month}.{year}")
        }
        (Language::German, [year, month]) if is_number(year, 4) && is_number(month, 2) => format!("{month}/{year}"),
        _ => text.to_owned(),
    }
}

/// Names as a list in a sentence: `a, b and c`.
pub fn gathered<T: AsRef<str>>(names: &[T]) -> String {
    match names {
        [] => String::new(),
        [one] => one.as_ref().to_owned(),
        [rest @ .., last] => {
            let first = rest.iter().map(AsRef::as_ref).collect::<Vec<&str>>().join(", ");
            t!("list-and", first, last = last.as_ref())
        }
    }
}

/// A name of the draft as it is read: names have no spaces.
pub fn readable(name: &str) -> String {
    name.replace('_', " ")
}

/// So many neighbours are told as a run.
const RUN: usize = 3;

/// Those of a list that stand at these places, which rise: neighbours as a run, `8, 12 to 16`.
pub fn runs<T: AsRef<str>>(list: &[T], places: &[usize]) -> Vec<String> {
    let mut out = Vec::new();
    let mut rest = places;
    while let [first, ..] = rest {
        let many = rest.iter().enumerate().take_while(|(k, place)| **place == first + k).count();
        let taken = if many >= RUN { many } else { 1 };
        let name = |i: usize| list[rest[i]].as_ref();
        out.push(match taken {
            1 => name(0).to_owned(),
            _ => t!("sizes-run", first = name(0), last = name(taken - 1)),
        });
        rest = &rest[taken..];
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::texts::speaking;

    #[test]
    fn numbers_lengths_and_dates_are_of_the_language() {
        let all = || {
            [
                decimal("12.5"),
                length(125.0, DisplayUnit::Cm),
                length(12.5, DisplayUnit::Mm),
                length(28.575, DisplayUnit::InchEighths),
                date("2026-11-30"),
                date("im Mai 2026"),
                date("2026-11"),
                typed("1.5 cm"),
                typed("1 1/4 in"),
                typed("seam + 1.5 cm"),
                date("2026-11-3"),
                gathered(&["a", "b", "c"]),
            ]
        };
        let english = [
            "12.5",
            "12.5 cm",
            "12.5 mm",
            "1 1/8 in",
            "2026-11-30",
            "im Mai 2026",
            "2026-11",
            "1.5 cm",
            "1 1/4 in",
            "seam + 1.5 cm",
            "2026-11-3",
            "a, b and c",
        ];
        assert_eq!(all(), english);
        let german = [
            "12,5",
            "12,5 cm",
            "12,5 mm",
            "1 1/8 Zoll",
            "30.11.2026",
            "im Mai 2026",
            "11/2026",
            "1,5 cm",
            "1 1/4 Zoll",
            "seam + 1.5 cm",
            "2026-11-3",
            "a, b und c",
        ];
        assert_eq!(speaking(Language::German, all), german);
    }
}
