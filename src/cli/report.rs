//! Printing: the only place that does.

use std::fmt::Write as _;
use std::io::Write as _;

use serde_json::{Map, Value as Json, json};

use super::{Done, TROUBLE, named};
use crate::base::{DisplayUnit, Finding};
use crate::texts::{message, say, severity};

/// Prints data and messages; the exit. A reader that went away is no trouble, a disk that is full is.
pub(super) fn print(done: &Done) -> u8 {
    let mut out = std::io::stdout().lock();
    let printed = out.write_all(done.data.as_bytes()).and_then(|()| out.flush());
    // There is no third place to tell that this failed.
    let _ = std::io::stderr().lock().write_all(done.messages.as_bytes());
    match printed {
        Err(error) if error.kind() != std::io::ErrorKind::BrokenPipe => {
            let words = named(&say!("cli-unprinted", problem = error.to_string()));
            let _ = std::io::stderr().lock().write_all(words.as_bytes());
            TROUBLE
        }
        _ => done.exit,
    }
}

/// A finding as lines of text: what, the formula with the place underlined, and the mend.
pub(super) fn lines(finding: &Finding, unit: DisplayUnit) -> String {
    let mut out = String::new();
    let name = &finding.place.name;
    let view = if finding.place.view.is_empty() || name.starts_with("view ") {
        String::new()
    } else {
        format!("{}, ", say!("cli-in-view", view = finding.place.view))
    };
    let place = if name.is_empty() { view } else { format!("{view}{name}: ") };
    let silenced =
        finding.silenced.as_ref().map_or(String::new(), |reason| format!(" [{}]", say!("cli-silenced", reason)));
    let _ = writeln!(
        out,
        "{:<7} {}  {place}{}{silenced}",
        severity(finding.severity()),
        finding.code.word(),
        message(finding, unit)
    );
    if !finding.formula.is_empty() {
        let text: String = finding.formula.chars().take(200).map(|c| if c.is_control() { ' ' } else { c }).collect();
        let _ = writeln!(out, "          {text}");
        if let Some(span) = finding.span {
            let (start, end) = span.in_letters(&finding.formula);
            if start < 200 {
                let _ =
                    writeln!(out, "          {}{}", " ".repeat(start), "^".repeat((end - start).clamp(1, 200 - start)));
            }
        }
    }
    if let Some(mend) = &finding.mend {
        let mut text = finding.formula.clone();
        if text.get(mend.span.start..mend.span.end).is_some() {
            text.replace_range(mend.span.start..mend.span.end, &mend.by);
            let _ = writeln!(out, "          {}", say!("cli-perhaps", formula = text));
        }
    }
    out
}

/// A finding by the machine contract.
pub(super) fn json(finding: &Finding, unit: DisplayUnit) -> Json {
    let mut numbers = Map::new();
    for amount in &finding.amounts {
        let value = if amount.by_size.len() == finding.sizes.len() && finding.sizes.len() > 1 {
            let pairs = finding.sizes.iter().zip(&amount.by_size).map(|(s, v)| (s.clone(), json!(v)));
            Json::Object(pairs.collect())
        } else {
            json!(amount.by_size.first())
        };
        numbers.insert(amount.name.to_owned(), value);
    }
    let text = |s: &str| if s.is_empty() { Json::Null } else { json!(s) };
    let span = |span: crate::base::Span| {
        let (start, end) = span.in_letters(&finding.formula);
        json!([start, end])
    };
    json!({
        "code": finding.code.word(),
        "severity": finding.severity().word(),
        "name": text(&finding.place.name),
        "piece": text(&finding.place.piece),
        "edge": text(&finding.place.edge),
        "seam": text(&finding.place.seam),
        "view": text(&finding.place.view),
        "sizes": finding.sizes,
        "numbers": numbers,
        "formula": text(&finding.formula),
        "span": finding.span.map(span),
        "message": message(finding, unit),
        "mend": finding.mend.as_ref().map(|m| json!({ "span": span(m.span), "by": m.by })),
        "silenced": finding.silenced,
    })
}

/// A table with its columns set flush: the first to the left, the others to the right.
pub(super) fn table(rows: &[Vec<String>]) -> String {
    let columns = rows.iter().map(Vec::len).max().unwrap_or(0);
    let wide = |c: usize| rows.iter().filter_map(|r| r.get(c)).map(|t| t.chars().count()).max().unwrap_or(0);
    let widths: Vec<usize> = (0..columns).map(wide).collect();
    let mut out = String::new();
    for row in rows {
        let cells: Vec<String> = row
            .iter()
            .enumerate()
            .map(|(c, text)| {
                let gap = " ".repeat(widths[c] - text.chars().count());
                if c == 0 { format!("{text}{gap}") } else { format!("{gap}{text}") }
            })
            .collect();
        out.push_str(cells.join("  ").trim_end());
        out.push('\n');
    }
    out
}
