//! The chart as a table for spreadsheets.

use std::fmt::Write as _;

use super::literal::number_typed;
use super::size::{NewSize, add_size};
use crate::base::{DisplayUnit, Unit, message};
use crate::document::{Axis, Cell, Draft, Row, RowKind, check_name};
use crate::language::{parse, tidy};

/// Why a table could not be taken in or made. The draft is as it was.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum TableError {
    /// It is no table.
    #[error("line {line}: {problem}")]
    Shape {
        /// The line.
        line: usize,
        /// Why.
        problem: String,
    },
    /// Cells that cannot be read: all of them.
    #[error("cells that cannot be read ({}), so nothing was taken:\n{}", .0.len(), .0.join("\n"))]
    Cells(Vec<String>),
    /// Rows that vary by several axes have no place in a flat table.
    #[error("{0} varies by more than one axis, which a flat table cannot hold")]
    Axes(String),
}

/// The chart as comma separated text: `row,kind`, then the sizes of the girth axis; cells as typed, empty where none is.
pub fn export_chart(draft: &Draft) -> Result<String, TableError> {
    let chart = &draft.chart;
    let mut writer = csv::Writer::from_writer(Vec::new());
    let head = ["row", "kind"].into_iter().chain(chart.girth.iter().map(String::as_str));
    let broken = |e: csv::Error| TableError::Shape { line: 0, problem: e.to_string() };
    writer.write_record(head).map_err(broken)?;
    for row in &chart.rows {
        if row.by.iter().any(|a| *a != Axis::Girth) {
            return Err(TableError::Axes(row.name.clone()));
        }
        let cell = |label: &String| row.cells.iter().find(|c| c.0 == *label).map_or("", |c| c.1.as_str());
        let kind = if row.kind == RowKind::Body { "body" } else { "house" };
        writer
            .write_record([row.name.as_str(), kind].into_iter().chain(chart.girth.iter().map(cell)))
            .map_err(broken)?;
    }
    let bytes = writer.into_inner().map_err(|e| TableError::Shape { line: 0, problem: e.to_string() })?;
    Ok(String::from_utf8(bytes).unwrap_or_default())
}

/// Takes rows and cells from a table; unknown rows and sizes are added. All or nothing. Returns what was done.
///
/// The first line names the columns: `row`, `kind` (may be absent), then sizes. Comma, semicolon or tab separated.
/// A cell without a unit is in `unit`, and wrong where none is given. Empty cells change nothing.
pub fn import_chart(draft: &mut Draft, text: &str, unit: Option<&str>) -> Result<String, TableError> {
    let unit = match unit {
        None => None,
        Some(u) => Some(Unit::of(u).ok_or_else(|| TableError::Shape {
            line: 1,
            problem: format!("`{u}` is not a unit; mm, cm, m, in, ft, yd, deg are"),
        })?),
    };
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let first = text.lines().next().unwrap_or("");
    let separator = [b'\t', b';', b','].into_iter().find(|s| first.as_bytes().contains(s)).unwrap_or(b',');
    let mut reader =
        csv::ReaderBuilder::new().delimiter(separator).has_headers(false).flexible(true).from_reader(text.as_bytes());
    let mut lines = Vec::new();
    for record in reader.records() {
        let record = record.map_err(|e| TableError::Shape {
            line: e.position().map_or(0, |p| p.line() as usize),
            problem: "this line cannot be read as a table".to_owned(),
        })?;
        let line = record.position().map_or(0, |p| p.line() as usize);
        lines.push((line, record.iter().map(|c| c.trim().to_owned()).collect::<Vec<String>>()));
    }
    let Some((_, head)) = lines.first().cloned() else {
        return Err(TableError::Shape { line: 1, problem: "the table is empty".to_owned() });
    };
    if head.first().map(String::as_str) != Some("row") {
        let problem = "the first column must be headed `row`, the others by sizes".to_owned();
        return Err(TableError::Shape { line: 1, problem });
    }
    let sizes_from = if head.get(1).map(String::as_str) == Some("kind") { 2 } else { 1 };
    let mut new = draft.clone();
    let mut wrong = Vec::new();
    let mut added = Vec::new();
    for label in &head[sizes_from..] {
        if !new.chart.girth.contains(label) {
            let size = NewSize { label: label.clone(), axis: Axis::Girth, between: None, cells: Vec::new() };
            add_size(&mut new, &size).map_err(|e| TableError::Shape { line: 1, problem: e.to_string() })?;
            added.push(format!("size {label}"));
        }
    }
    let mut count = 0;
    for (line, fields) in &lines[1..] {
        if fields.iter().all(String::is_empty) {
            continue;
        }
        if fields.len() > head.len() {
            let problem = format!("it has {} columns, the first line has {}", fields.len(), head.len());
            return Err(TableError::Shape { line: *line, problem });
        }
        let name = &fields[0];
        let kind = match (sizes_from, fields.get(1).map(String::as_str)) {
            (1, _) | (_, None | Some("" | "body")) => RowKind::Body,
            (_, Some("house")) => RowKind::House,
            (_, Some(other)) => {
                let problem = format!("`{other}` is not a kind of row; `body` and `house` are");
                return Err(TableError::Shape { line: *line, problem });
            }
        };
        let at = match new.chart.rows.iter().position(|r| r.name == *name) {
            Some(i) if new.chart.rows[i].by.iter().any(|a| *a != Axis::Girth) => {
                return Err(TableError::Axes(name.clone()));
            }
            Some(i) => i,
            None => {
                if check_name(name).is_err() {
                    let problem =
                        format!("`{name}` cannot be the name of a row: letters, digits and `_` may stand there");
                    return Err(TableError::Shape { line: *line, problem });
                }
                added.push(format!("row {name}"));
                new.chart.rows.push(Row { name: name.clone(), kind, by: vec![Axis::Girth], ..Row::default() });
                new.chart.rows.len() - 1
            }
        };
        if new.chart.rows[at].by.is_empty() {
            new.chart.rows[at].by = vec![Axis::Girth];
        }
        for (label, typed) in head[sizes_from..].iter().zip(&fields[sizes_from.min(fields.len())..]) {
            if typed.is_empty() {
                continue;
            }
            match cell_text(typed, unit) {
                Ok(text) => {
                    count += 1;
                    put(&mut new, at, label, text);
                }
                Err(problem) => wrong.push(format!("  line {line}, {name}, {label}: `{typed}`: {problem}")),
            }
        }
    }
    if !wrong.is_empty() {
        return Err(TableError::Cells(wrong));
    }
    *draft = new;
    let mut told = format!("{count} cells were taken");
    if !added.is_empty() {
        let _ = write!(told, "; added: {}", added.join(", "));
    }
    Ok(told)
}

fn cell_text(typed: &str, unit: Option<Unit>) -> Result<String, String> {
    let text = tidy(typed);
    parse(&text).map_err(|f| message(&f, DisplayUnit::Cm))?;
    match (number_typed(&text), unit) {
        (Some((_, None)), Some(unit)) => Ok(format!("{text} {}", unit.sign())),
        (Some((_, None)), None) => Err("it has no unit; write one into the cells or say `--unit cm`".to_owned()),
        _ => Ok(text),
    }
}

fn put(draft: &mut Draft, row: usize, label: &str, text: String) {
    let order = draft.chart.girth.clone();
    let cells = &mut draft.chart.rows[row].cells;
    if let Some(cell) = cells.iter_mut().find(|c| c.0 == label) {
        cell.1 = text;
        return;
    }
    let at = |l: &str| order.iter().position(|o| o == l).unwrap_or(usize::MAX);
    let behind = cells.iter().position(|c| at(&c.0) > at(label)).unwrap_or(cells.len());
    cells.insert(behind, Cell(label.to_owned(), text));
}
