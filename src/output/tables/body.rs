//! The body chart: what the wearer measures.

use super::{BEYOND, GUESSED, Page, number, sentence};
use crate::base::Code;
use crate::document::{Row, RowKind};
use crate::language::Kind;
use crate::output::{Cell, Table};
use crate::texts::{readable, t};

/// The rows of the body. House rows are never published.
pub(super) fn table(page: &Page<'_>) -> Option<Table> {
    let mut table = page.table("body-chart", t!("table-body"));
    table.before.push(t!("body-before"));
    if page.draft.chart.survey {
        table.before.push(t!("body-survey"));
    }
    let rows = page.draft.chart.rows.iter().enumerate().filter(|(_, row)| row.kind == RowKind::Body);
    let rows: Vec<(usize, &Row)> = rows.collect();
    for (i, row) in &rows {
        table.lines.push(page.line("", readable(&row.name), |case| cell(page, *i, row, case)));
        table.notes.extend(explained(row));
    }
    table.notes.extend(sources(&rows));
    page.explain(&mut table);
    (!table.lines.is_empty()).then_some(table)
}

fn cell(page: &Page<'_>, i: usize, row: &Row, case: usize) -> Cell {
    let node = page.model.plan.node_named(&format!("chart.{}", row.name));
    let kind = node.and_then(|n| page.model.plan.nodes[n as usize].kind).unwrap_or(Kind::LENGTH);
    let Some(Ok(value)) = page.model.cases[case].rows.get(i) else { return Cell::Missing };
    let cell = number(kind, *value);
    match proposal(page, row, case) {
        Some(Code::CellGuessed) => cell.signed(GUESSED),
        Some(_) => cell.signed(BEYOND),
        None => cell,
    }
}

/// Whether a number is a proposal, and of which kind.
fn proposal(page: &Page<'_>, row: &Row, case: usize) -> Option<Code> {
    let case = &page.model.plan.cases.list[case];
    let chart = &page.draft.chart;
    let labels = row.by.iter().filter_map(|axis| {
        let place = case.labels[*axis as usize]?;
        chart.labels(*axis).get(place as usize).map(String::as_str)
    });
    let label = labels.collect::<Vec<_>>().join("/");
    let label = if label.is_empty() { case.address.clone() } else { label };
    let at = format!("chart.{}", row.name);
    let is_it = |code: Code| matches!(code, Code::CellGuessed | Code::CellBeyond);
    let told = page.all.findings.iter().find(|f| is_it(f.code) && f.place.name == at && f.sizes.contains(&label));
    told.map(|f| f.code)
}

/// What a row measures and how, in a sentence.
fn explained(row: &Row) -> Option<String> {
    let level = if row.level.is_empty() { String::new() } else { t!("body-level", level = row.level) };
    let parts: Vec<&str> = [&*row.what, &*level, &*row.how, &*row.note].into_iter().filter(|p| !p.is_empty()).collect();
    (!parts.is_empty()).then(|| sentence(&format!("{}: {}", readable(&row.name), parts.join("; "))))
}

/// Where the numbers come from, once for all rows of one source.
fn sources(rows: &[(usize, &Row)]) -> Vec<String> {
    let mut of: Vec<(&str, Vec<String>)> = Vec::new();
    for (_, row) in rows.iter().filter(|(_, r)| !r.source.is_empty()) {
        match of.iter_mut().find(|(source, _)| *source == row.source) {
            Some((_, names)) => names.push(readable(&row.name)),
            None => of.push((&row.source, vec![readable(&row.name)])),
        }
    }
    match of.as_slice() {
        [(source, names)] if names.len() == rows.len() => vec![sentence(&t!("body-source", source))],
        _ => {
            of.iter().map(|(source, names)| sentence(&t!("body-source-of", rows = names.join(", "), source))).collect()
        }
    }
}
