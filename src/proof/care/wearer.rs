//! Which size of the rules each size of the draft is: as the draft says it, else by the ages of those who wear it; and of which sizes a
//! rule speaks.

use super::Found;
use super::rules::{LETTERS, SIX_X, TIGHT};
use crate::base::{Code, Finding};
use crate::compute::Model;
use crate::document::Draft;
use crate::proof::judged;
use crate::texts::{decimal, gathered, runs, say, t};

/// Months in a year.
const MONTHS: f64 = 12.0;
/// The oldest that is read as an age, years; beyond, something else was meant.
const OLDEST: f64 = 21.0;

/// A size of the draft, as the rules see it.
#[derive(Debug)]
pub(super) struct Wearer<'a> {
    /// The case.
    pub case: usize,
    /// Its address.
    pub size: &'a str,
    /// Sizes of the rules, in years, from and to; none: cannot be said.
    pub years: Option<(f64, f64)>,
    /// The size of the rules by name: only where there is one.
    pub rule: Option<String>,
}

/// All who wear it.
#[derive(Debug)]
pub(super) struct Wearers<'a> {
    /// The sizes that are judged.
    list: Vec<Wearer<'a>>,
    /// The ages for which the draft says that it is, in years, from and to; none: they cannot be read.
    ages: Option<(f64, f64)>,
}

impl<'a> Wearers<'a> {
    /// Those of whom a rule for these sizes speaks, or may speak: of a range it does if any size in it does. Where the draft is said to be
    /// for such ages and no size of it is said to be, it contradicts itself: then the rule is taken to speak of all, and that is told.
    pub fn of_rule(&self, rule: (f64, f64), found: &mut Found) -> Vec<&Wearer<'a>> {
        let meets = |(least, most): (f64, f64)| least <= rule.1 && most >= rule.0;
        let of_rule: Vec<&Wearer<'a>> = self.list.iter().filter(|w| w.years.is_none_or(meets)).collect();
        match self.ages {
            Some((from, to)) if of_rule.is_empty() && !self.list.is_empty() && meets((from, to)) => {
                let years = self.list.iter().filter_map(|w| w.years);
                let (least, most) = years.fold((f64::INFINITY, 0.0_f64), |all, y| (all.0.min(y.0), all.1.max(y.1)));
                let [from, to, least, most] = [from, to, least, most].map(in_words);
                found.not_checked(t!("care-ages-apart", from, to, least, most));
                self.list.iter().collect()
            }
            _ => of_rule,
        }
    }

    /// Sizes in words, neighbours as a run.
    pub fn sized(&self, sizes: &[String]) -> String {
        let list: Vec<&str> = self.list.iter().map(|w| w.size).collect();
        let places: Vec<usize> = (0..list.len()).filter(|i| sizes.iter().any(|s| s == list[*i])).collect();
        t!("care-sizes", count = places.len(), sizes = gathered(&runs(&list, &places)))
    }
}

/// Years with at most two decimals.
fn in_words(years: f64) -> String {
    let text = format!("{years:.2}");
    decimal(text.trim_end_matches('0').trim_end_matches('.'))
}

/// The sizes that are judged.
pub(super) fn wearers<'a>(
    draft: &'a Draft,
    model: &'a Model,
    ages: Option<(f64, f64)>,
    found: &mut Found,
) -> Wearers<'a> {
    let mut unknown: Vec<String> = Vec::new();
    let all: Vec<&str> = judged(model).map(|(_, size, _)| size).collect();
    for (size, rule) in &draft.care.rule_sizes {
        let problem = if rule_size(rule).is_none() {
            say!("care-rule-size")
        } else if all.iter().all(|a| !is_of(a, size)) {
            say!("care-no-size")
        } else {
            continue;
        };
        let finding = Finding::new(Code::RuleSizeUnread).at("care").word("size", size).word("rule", rule);
        found.findings.push(finding.word("problem", problem));
    }
    let cases = judged(model).map(|(case, size, _)| {
        let said = draft.care.rule_sizes.iter().find(|(s, _)| is_of(size, s)).map(|(_, rule)| rule);
        let said = said.and_then(|rule| Some((rule_size(rule)?, Some(normal(rule)))));
        // One age is one size; of more than one age it cannot be said which size is which.
        let by_age = || ages.map(|a| (a, (a.0 == a.1).then(|| format!("{}", a.0))));
        let (years, rule) = said.or_else(by_age).map_or((None, None), |(y, r)| (Some(y), r));
        if years.is_none() {
            unknown.push(size.to_owned());
        }
        Wearer { case, size, years, rule }
    });
    let list = cases.collect();
    if !unknown.is_empty() {
        let which = gathered(&unknown);
        found.not_checked(t!("care-size-unknown", sizes = which));
    }
    Wearers { list, ages }
}

/// Whether an address is of this size: itself, or one of its parts.
fn is_of(address: &str, size: &str) -> bool {
    address == size || address.split('/').any(|part| part == size)
}

/// Ages in years, of words like "2 years", "18 months"; a bare number is years.
pub(super) fn ages(from: &str, to: &str) -> Result<(f64, f64), String> {
    let age = |text: &str| -> Option<f64> {
        let text = text.trim().to_lowercase();
        let letters = text.find(|c: char| c.is_alphabetic()).unwrap_or(text.len());
        let number: f64 = text[..letters].trim().parse().ok()?;
        let years = match text[letters..].trim() {
            "" | "y" | "yr" | "yrs" | "year" | "years" => number,
            "m" | "mo" | "month" | "months" => number / MONTHS,
            _ => return None,
        };
        (0.0..=OLDEST).contains(&years).then_some(years)
    };
    match (age(from), age(to)) {
        (Some(from), Some(to)) if from <= to => Ok((from, to)),
        (Some(_), Some(_)) => Err(say!("care-youngest")),
        _ => Err(say!("care-write-ages")),
    }
}

/// A size of the rules as it is compared: 2T is 2, months are `mo`.
fn normal(text: &str) -> String {
    let text = text.trim().to_uppercase().replace(['–', '—'], "-");
    if let Some(row) = TIGHT.iter().find(|r| r.size.to_uppercase() == text) {
        return row.size.to_owned();
    }
    for months in ["MONTHS", "MONTH", "MO", "M"] {
        if let Some(number) = text.strip_suffix(months).filter(|n| n.contains(|c: char| c.is_ascii_digit())) {
            return format!("{} mo", number.trim());
        }
    }
    text.strip_suffix('T').unwrap_or(&text).to_owned()
}

/// The years that a size of the rules stands for, from and to.
fn rule_size(text: &str) -> Option<(f64, f64)> {
    let text = normal(text);
    let (sizes, by) = match text.strip_suffix(" mo") {
        Some(months) => (months, MONTHS),
        None => (text.as_str(), 1.0),
    };
    let one = |text: &str| -> Option<f64> {
        let text = text.trim().to_lowercase();
        if let Some((_, years)) = LETTERS.iter().find(|(letters, _)| *letters == text) {
            return Some(*years);
        }
        if text == "6x" {
            return Some(SIX_X);
        }
        let number: f64 = text.strip_suffix('t').unwrap_or(&text).parse().ok()?;
        Some(number / by).filter(|years| (0.0..=OLDEST).contains(years))
    };
    match sizes.split_once('-') {
        Some((from, to)) => Some((one(from)?, one(to)?)).filter(|(from, to)| from <= to),
        None => one(sizes).map(|years| (years, years)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn sizes_of_the_rules_are_read() {
        for (text, years) in [
            ("2T", Some((2.0, 2.0))),
            ("4", Some((4.0, 4.0))),
            ("6x", Some((6.5, 6.5))),
            ("12-14", Some((12.0, 14.0))),
            ("2T–4T", Some((2.0, 4.0))),
            ("L", Some((12.0, 12.0))),
            ("XL", Some((16.0, 16.0))),
            ("18-24 mo", Some((1.5, 2.0))),
            ("9-12 months", Some((0.75, 1.0))),
            ("98", None),
            ("S", None),
            ("14-12", None),
            ("", None),
        ] {
            assert_eq!(rule_size(text), years, "{text}");
        }
    }

    #[test]
    fn ages_are_read() {
        assert_eq!(ages("2 years", "14 years"), Ok((2.0, 14.0)));
        assert_eq!(ages("18 months", "3"), Ok((1.5, 3.0)));
        assert!(ages("two", "14 years").is_err() && ages("4 years", "2 years").is_err());
        assert!(ages("98 cm", "104 cm").is_err() && ages("-1", "3").is_err() && ages("NaN", "3").is_err());
    }
}
