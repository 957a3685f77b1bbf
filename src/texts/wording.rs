//! The words of findings in the language of whoever is at the program: the message, and what is said of each kind (what it means, what to
//! do about it). Texts of a kind are called by its code: `finding-CODE`, `finding-CODE-means`, `finding-CODE-advice`.

use super::{Told, catalogue, decimal, length, own, owned, said, say};
use crate::base::{Amount, Code, DisplayUnit, Finding, Severity, round_half_away};

/// The message of a finding, with lengths in the draft's unit.
pub fn message(finding: &Finding, unit: DisplayUnit) -> String {
    let amounts = finding.amounts.iter().map(|a| (a.name, plain_amount(a, finding.worst, unit)));
    let amounts: Vec<(&str, String)> = amounts.collect();
    // Where a word has the name of a number, the word is told: the last one of a name counts.
    let numbers = amounts.iter().map(|(name, text)| (*name, Told::Words(text)));
    let words = finding.words.iter().rev().map(|(name, text)| (*name, Told::Words(text)));
    let values: Vec<(&str, Told<'_>)> = numbers.rev().chain(words).collect();
    with_sizes(finding, said(own(), &id(finding.code, ""), &values))
}

/// What a kind of finding means, in one sentence.
pub fn means(code: Code) -> String {
    said(own(), &id(code, "-means"), &[])
}

/// What to do about a kind of finding.
pub fn advice(code: Code) -> String {
    said(own(), &id(code, "-advice"), &[])
}

/// The message of a kind of finding before anything is put in: `{name}` stands for what will be.
pub fn template(code: Code) -> String {
    let id = id(code, "");
    catalogue::unfilled(own(), &id).unwrap_or(id)
}

fn id(code: Code, of: &str) -> String {
    format!("finding-{}{of}", code.word())
}

/// How bad it is, in a word.
pub fn severity(severity: Severity) -> String {
    match severity {
        Severity::Error => say!("severity-error"),
        Severity::Warning => say!("severity-warning"),
        Severity::Note => say!("severity-note"),
    }
}

/// A number of a finding in size `i`. Small differences are told in millimetres whatever the unit, to 0.01.
pub fn plain_amount(amount: &Amount, i: usize, unit: DisplayUnit) -> String {
    let value = amount.by_size.get(i).or(amount.by_size.first()).copied().unwrap_or(f64::NAN);
    let short = |suffix: &str| {
        let text = format!("{:.2}", round_half_away(value, 0.01));
        format!("{}{suffix}", decimal(text.trim_end_matches('0').trim_end_matches('.')))
    };
    owned(|| match amount.unit {
        "mm" if value.abs() < 30.0 => short(" mm"),
        "mm" => length(value, unit),
        "deg" => short("°"),
        _ => short(""),
    })
}

/// So many sizes are named, each; of more the first and the last.
const NAMED: usize = 6;

/// The message, and in which sizes it holds.
fn with_sizes(finding: &Finding, message: String) -> String {
    match finding.sizes.as_slice() {
        [] => message,
        [size] => say!("finding-in-size", message, size),
        [first, .., last] => {
            let many = &finding.sizes;
            let list = if many.len() <= NAMED { many.join(", ") } else { format!("{first} … {last}") };
            let differing = finding.amounts.iter().any(|a| a.by_size.len() > 1);
            match many.get(finding.worst).filter(|_| differing) {
                Some(worst) => say!("finding-in-sizes-worst", message, count = many.len(), list, worst),
                None => say!("finding-in-sizes", message, count = many.len(), list),
            }
        }
    }
}
