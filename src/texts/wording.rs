//! Turning a finding into a sentence. All wording is in the table of codes, so that it can be translated there.

use crate::base::{Amount, DisplayUnit, Finding, round_half_away, shown};

/// The message of a finding, with lengths in the draft's unit.
pub fn message(finding: &Finding, unit: DisplayUnit) -> String {
    let template = finding.code.template();
    let mut out = String::with_capacity(template.len() + 40);
    let mut rest = template;
    while let Some(open) = rest.find('{') {
        let Some(close) = rest[open..].find('}').map(|i| i + open) else { break };
        out.push_str(&rest[..open]);
        out.push_str(&filled(finding, &rest[open + 1..close], unit));
        rest = &rest[close + 1..];
    }
    out.push_str(rest);
    if !finding.sizes.is_empty() {
        out.push_str(&sizes(finding));
    }
    out
}

fn filled(finding: &Finding, name: &str, unit: DisplayUnit) -> String {
    if let Some((_, text)) = finding.words.iter().find(|(n, _)| *n == name) {
        return text.clone();
    }
    match finding.amounts.iter().find(|a| a.name == name) {
        Some(amount) => plain_amount(amount, finding.worst, unit),
        None => {
            debug_assert!(false, "{:?} has nothing for {{{name}}}", finding.code);
            String::new()
        }
    }
}

/// A number of a finding in size `i`. Small differences are told in millimetres whatever the unit, to 0.01.
pub fn plain_amount(amount: &Amount, i: usize, unit: DisplayUnit) -> String {
    let value = amount.by_size.get(i).or(amount.by_size.first()).copied().unwrap_or(f64::NAN);
    let short = |v: f64, suffix: &str| {
        let text = format!("{:.2}", round_half_away(v, 0.01));
        format!("{}{suffix}", text.trim_end_matches('0').trim_end_matches('.'))
    };
    match amount.unit {
        "mm" if value.abs() < 30.0 => short(value, " mm"),
        "mm" => shown(value, unit),
        "deg" => short(value, "°"),
        _ => short(value, ""),
    }
}

fn sizes(finding: &Finding) -> String {
    match finding.sizes.as_slice() {
        [] => String::new(),
        [one] => format!(" (size {one})"),
        many => {
            let worst = many.get(finding.worst).map_or("", String::as_str);
            let differing = finding.amounts.iter().any(|a| a.by_size.len() > 1);
            let list =
                if many.len() <= 6 { many.join(", ") } else { format!("{} … {}", many[0], many[many.len() - 1]) };
            let said = if differing { format!(", worst in {worst}") } else { String::new() };
            format!(" ({} sizes: {list}{said})", many.len())
        }
    }
}
