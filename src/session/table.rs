//! The chart as a table for spreadsheets.

use super::block::{Block, Parted, lay, take};
use crate::base::Unit;
use crate::document::{Axis, Draft, RowKind};
use crate::texts::say;

/// Why a table could not be taken in or made. The draft is as it was.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum TableError {
    /// It is no table.
    #[error("{}", say!("table-line", line, problem))]
    Shape {
        /// The line.
        line: usize,
        /// Why.
        problem: String,
    },
    /// It cannot be read as a whole.
    #[error("{0}")]
    Whole(String),
    /// Cells that cannot be read: all of them.
    #[error("{}", say!("table-cells", count = .0.len(), cells = .0.join("\n")))]
    Cells(Vec<String>),
}

/// The chart as comma separated text: `row,kind`, then the sizes, joined by `/` where rows vary by several axes, and persons;
/// cells as typed, empty where none is. Rows' formulas are not in it.
pub fn export_chart(draft: &Draft) -> Result<String, TableError> {
    let chart = &draft.chart;
    let mut columns: Vec<String> = chart.keys(&[Axis::Girth]);
    for row in &chart.rows {
        for key in chart.keys(&row.by) {
            if !columns.contains(&key) {
                columns.push(key);
            }
        }
    }
    let persons = chart.persons.iter().map(|p| p.name.clone());
    let mut writer = csv::Writer::from_writer(Vec::new());
    let broken = |e: csv::Error| TableError::Whole(e.to_string());
    let head = ["row", "kind"].into_iter().map(str::to_owned).chain(columns.iter().cloned()).chain(persons);
    writer.write_record(head).map_err(broken)?;
    for row in &chart.rows {
        let of = |cells: &[crate::document::Cell], name: &str| {
            cells.iter().find(|c| c.0 == name).map_or_else(String::new, |c| c.1.clone())
        };
        let kind = if row.kind == RowKind::Body { "body" } else { "house" };
        let cells = columns.iter().map(|key| of(&row.cells, key));
        let own = chart.persons.iter().map(|p| of(&p.cells, &row.name));
        writer.write_record([row.name.clone(), kind.to_owned()].into_iter().chain(cells).chain(own)).map_err(broken)?;
    }
    let bytes = writer.into_inner().map_err(|e| TableError::Whole(e.to_string()))?;
    Ok(String::from_utf8(bytes).unwrap_or_default())
}

/// Takes rows and cells from a table; unknown rows and sizes are added. All or nothing. Returns what was done.
///
/// The first line names the columns: `row`, `kind` (may be absent), then sizes and persons. Comma, semicolon or tab separated.
/// A cell without a unit is in `unit`, and wrong where none is given. Empty cells change nothing.
pub fn import_chart(draft: &mut Draft, text: &str, unit: Option<&str>) -> Result<String, TableError> {
    let unit = match unit {
        None => None,
        Some(u) => {
            Some(Unit::of(u).ok_or_else(|| TableError::Shape { line: 1, problem: say!("table-unit", unit = u) })?)
        }
    };
    let mut block = Block::of(draft, text, Default::default());
    // The first line says what parts columns: it holds no numbers.
    block.parted = Parted::of(block.text.lines().next().unwrap_or_default());
    if block.text.split(['\t', ';', ',', '\n', '\r']).next().map(str::trim) != Some("row") {
        let problem = say!("table-head");
        return Err(TableError::Shape { line: 1, problem });
    }
    block = Block { unit, head: true, names: true, add_sizes: true, add_rows: true, ..block };
    let laid = lay(draft, &block);
    if let Some(fault) = laid.fault {
        return Err(TableError::Whole(fault));
    }
    let wrong: Vec<String> = laid
        .wrong()
        .map(|(row, column, cell, why)| {
            let (row_name, size, typed) = (row.home.name(), column.name(), &cell.typed);
            format!("  {}", say!("table-cell", line = row.line, row = row_name, size, typed, why))
        })
        .collect();
    if !wrong.is_empty() {
        return Err(TableError::Cells(wrong));
    }
    take(draft, &block).map_err(|e| TableError::Whole(e.to_string()))
}

/// The records of a text with this sign between columns: each with its line, or why it cannot be read.
pub(super) fn records(
    text: &str,
    delimiter: u8,
) -> impl Iterator<Item = Result<(usize, Vec<String>), String>> + use<'_> {
    let reader =
        csv::ReaderBuilder::new().delimiter(delimiter).has_headers(false).flexible(true).from_reader(text.as_bytes());
    reader.into_records().map(|record| match record {
        Ok(record) => {
            let line = record.position().map_or(0, |p| p.line() as usize);
            Ok((line, record.iter().map(|c| c.trim().to_owned()).collect()))
        }
        Err(e) => {
            let line = e.position().map_or(0, |p| p.line() as usize);
            Err(say!("table-broken", line))
        }
    })
}
