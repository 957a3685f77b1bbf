//! Laying a block on the chart: where each line and column belongs, and what becomes of each cell.

use super::read::cells;
use super::typed::{Holds, cell_text};
use super::{Block, kind_of};
use crate::document::{Axis, Chart, Draft, Part, Row, RowKind, check_label, fold};
use crate::session::check_free;
use crate::texts::say;

/// Where a line or column of a block belongs.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Home {
    /// In this row, size or person of the chart.
    Known(String),
    /// In one that is added.
    New(String),
    /// Nowhere: how it is called in the block, if it is, and why.
    Nowhere {
        /// Its name in the block.
        called: String,
        /// Why it has no place.
        why: String,
    },
}

impl Home {
    /// Its name.
    pub fn name(&self) -> &str {
        match self {
            Self::Known(name) | Self::New(name) => name,
            Self::Nowhere { called, .. } => called,
        }
    }
}

/// What becomes of a cell.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Fate {
    /// It is empty, and changes nothing.
    Empty,
    /// It stands in the chart already.
    Same,
    /// It is taken, as this text.
    Takes(String),
    /// It cannot be taken, and why.
    Wrong(String),
}

/// A cell of the block.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LaidCell {
    /// As it was typed.
    pub typed: String,
    /// What stands in the chart now.
    pub now: String,
    /// What becomes of it.
    pub fate: Fate,
}

/// A line of the block.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LaidRow {
    /// Its number in the text.
    pub line: usize,
    /// Where it belongs.
    pub home: Home,
    /// The kind of a row that is added.
    pub kind: RowKind,
    /// By which axes it varies, also once it is added.
    pub by: Vec<Axis>,
    /// Its cells.
    pub cells: Vec<LaidCell>,
}

/// A block laid on the chart.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Laid {
    /// Where the columns belong.
    pub head: Vec<Home>,
    /// The lines.
    pub rows: Vec<LaidRow>,
    /// Why there is nothing to lay.
    pub fault: Option<String>,
}

impl Laid {
    /// How many cells are taken.
    pub fn takes(&self) -> usize {
        let cells = self.rows.iter().flat_map(|r| &r.cells);
        cells.filter(|c| matches!(c.fate, Fate::Takes(_))).count()
    }

    /// The cells that cannot be taken: line, row, column, as typed, why.
    pub fn wrong(&self) -> impl Iterator<Item = (&LaidRow, &Home, &LaidCell, &str)> {
        self.rows.iter().flat_map(move |row| {
            row.cells.iter().zip(&self.head).filter_map(move |(cell, home)| match &cell.fate {
                Fate::Wrong(why) => Some((row, home, cell, why.as_str())),
                _ => None,
            })
        })
    }

    /// Columns that have no place.
    pub fn columns_nowhere(&self) -> usize {
        self.head.iter().filter(|h| matches!(h, Home::Nowhere { .. })).count()
    }

    /// Lines that have no place.
    pub fn rows_nowhere(&self) -> usize {
        self.rows.iter().filter(|r| matches!(r.home, Home::Nowhere { .. })).count()
    }

    /// Whether a bare number waits for its unit.
    pub fn waits_for_unit(&self) -> bool {
        let words = say!("cell-no-unit");
        self.wrong().any(|(_, _, _, why)| why == words)
    }
}

/// Lays a block on the chart, without changing anything.
pub fn lay(draft: &Draft, block: &Block) -> Laid {
    let lines = match cells(&block.text, block.parted) {
        Ok(lines) => lines,
        Err(fault) => return Laid { fault: Some(fault), ..Laid::default() },
    };
    let (head, body) = if block.head { lines.split_at(1) } else { lines.split_at(0) };
    let wide = lines[0].1.len();
    let kinds = block.head && block.names && head.first().is_some_and(|h| h.1.get(1).is_some_and(|c| c == "kind"));
    let from = usize::from(block.names) + usize::from(kinds);
    if from >= wide || body.is_empty() {
        let fault = say!("block-no-numbers");
        return Laid { fault: Some(fault), ..Laid::default() };
    }
    let chart = &draft.chart;
    let start = start(chart, block);
    let columns = match head.first() {
        Some((_, labels)) => {
            let mut seen: Vec<&str> = Vec::new();
            labels[from..].iter().map(|label| named_column(chart, block, label, &mut seen)).collect()
        }
        None => counted_columns(chart, block, start, wide - from),
    };
    let mut out = Laid { head: columns, ..Laid::default() };
    let new_by = new_axes(chart, block, &out.head);
    let new_rows: Vec<String> = if block.names && block.add_rows {
        body.iter().map(|(_, c)| c[0].clone()).collect()
    } else {
        block.new_rows.clone()
    };
    let names = row_names(draft, block, start, body);
    for ((line, cells), home) in body.iter().zip(names) {
        let (kind, kind_fault) = match kinds.then(|| kind_of(&cells[1])) {
            Some(None) => (RowKind::Body, Some(say!("block-row-kind", word = cells[1]))),
            Some(Some(kind)) => (kind, None),
            None => (RowKind::Body, None),
        };
        let row = chart.rows.iter().find(|r| r.name == home.name());
        let by = row.filter(|r| !r.by.is_empty()).map_or_else(|| new_by.clone(), |r| r.by.clone());
        let place = LinePlace { chart, block, row, by: &by, home: &home, new_rows: &new_rows, fault: kind_fault };
        let laid = cells[from..].iter().zip(&out.head).map(|(typed, column)| place.cell(typed, column)).collect();
        out.rows.push(LaidRow { line: *line, home, kind, by, cells: laid });
    }
    out
}

/// The row at which a block without names begins.
fn start<'a>(chart: &'a Chart, block: &Block) -> Option<&'a Row> {
    chart.rows.iter().find(|r| r.name == block.at.0).or_else(|| chart.rows.first())
}

/// The columns of rows that vary so: their places, then persons.
fn columns_of(chart: &Chart, by: &[Axis]) -> Vec<String> {
    chart.keys(by).into_iter().chain(chart.persons.iter().map(|p| p.name.clone())).collect()
}

fn named_column<'a>(chart: &Chart, block: &Block, label: &'a str, seen: &mut Vec<&'a str>) -> Home {
    let nowhere = |why: String| Home::Nowhere { called: label.to_owned(), why };
    if label.is_empty() {
        return nowhere(say!("block-no-label"));
    }
    if seen.contains(&label) {
        return nowhere(say!("block-two-columns", label));
    }
    seen.push(label);
    let parts: Vec<&str> = label.split('/').map(str::trim).collect();
    let is_label = |p: &str| Axis::ALL.into_iter().any(|a| chart.labels(a).iter().any(|l| l == p));
    if chart.persons.iter().any(|p| p.name == label) || parts.iter().all(|p| is_label(p)) {
        Home::Known(parts.join("/"))
    } else if parts.len() > 1 {
        nowhere(say!("block-no-place", label))
    } else if check_label(label).is_err() {
        nowhere(say!("refused-label", label))
    } else if block.add_sizes {
        Home::New(label.to_owned())
    } else {
        nowhere(say!("block-no-size", label))
    }
}

/// Columns without a head: one behind the other from where the block is put.
fn counted_columns(chart: &Chart, block: &Block, start: Option<&Row>, many: usize) -> Vec<Home> {
    let default = new_axes(chart, block, &[]);
    let by = start.filter(|r| !r.by.is_empty()).map_or(default, |r| r.by.clone());
    let all = columns_of(chart, &by);
    let first = all.iter().position(|c| *c == block.at.1).unwrap_or(0);
    let mut new = block.new_sizes.iter();
    (0..many)
        .map(|i| {
            if let Some(known) = all.get(first + i) {
                return Home::Known(known.clone());
            }
            match new.next() {
                Some(label) if block.add_sizes && by == [block.axis] => {
                    named_column(chart, block, label, &mut Vec::new())
                }
                _ => Home::Nowhere {
                    called: String::new(),
                    why: all
                        .last()
                        .map_or_else(|| say!("block-no-column"), |last| say!("block-no-column-behind", column = last)),
                },
            }
        })
        .collect()
}

/// Where each line belongs.
fn row_names(draft: &Draft, block: &Block, start: Option<&Row>, body: &[(usize, Vec<String>)]) -> Vec<Home> {
    let chart = &draft.chart;
    let mut seen: Vec<String> = Vec::new();
    if block.names {
        return body
            .iter()
            .map(|(_, cells)| {
                let name = cells[0].as_str();
                let nowhere = |why: String| Home::Nowhere { called: name.to_owned(), why };
                if !name.is_empty() && seen.contains(&fold(name)) {
                    return nowhere(say!("block-two-lines", name));
                }
                seen.push(fold(name));
                named_row(draft, block, name)
            })
            .collect();
    }
    // As the chart shows them: rows that vary by the same axes stand together.
    let by = start.map(|r| &r.by);
    let all: Vec<&Row> = chart.rows.iter().filter(|r| Some(&r.by) == by).collect();
    let first = all.iter().position(|r| r.name == block.at.0).unwrap_or(0);
    let room = all.len().saturating_sub(first);
    (0..body.len())
        .map(|i| match (all.get(first + i), i.checked_sub(room).and_then(|i| block.new_rows.get(i))) {
            (Some(row), _) => Home::Known(row.name.clone()),
            (None, Some(name)) => named_row(draft, block, name),
            (None, None) => Home::Nowhere {
                called: String::new(),
                why: all.last().map_or_else(|| say!("block-no-row"), |r| say!("block-no-row-below", row = r.name)),
            },
        })
        .collect()
}

fn named_row(draft: &Draft, block: &Block, name: &str) -> Home {
    let nowhere = |why: String| Home::Nowhere { called: name.to_owned(), why };
    if draft.chart.rows.iter().any(|r| r.name == name) {
        return Home::Known(name.to_owned());
    }
    if name.is_empty() {
        return nowhere(say!("block-no-name"));
    }
    if let Err(problem) = check_free(draft, &Part::Row(name.to_owned())) {
        return nowhere(problem.to_string());
    }
    if block.add_rows { Home::New(name.to_owned()) } else { nowhere(say!("block-new-row", name)) }
}

/// By which axes a row of these columns varies.
fn new_axes(chart: &Chart, block: &Block, head: &[Home]) -> Vec<Axis> {
    let sizes = head.iter().filter_map(|h| match h {
        Home::Known(key) if !chart.persons.iter().any(|p| p.name == *key) => Some(key),
        _ => None,
    });
    for key in sizes {
        let axes: Vec<Axis> = key
            .split('/')
            .filter_map(|p| Axis::ALL.into_iter().find(|a| chart.labels(*a).iter().any(|l| l == p)))
            .collect();
        if chart.has_key(&axes, key) {
            return axes;
        }
    }
    vec![block.axis]
}

/// What the cells of a line have in common.
struct LinePlace<'a> {
    chart: &'a Chart,
    block: &'a Block,
    row: Option<&'a Row>,
    by: &'a [Axis],
    home: &'a Home,
    new_rows: &'a [String],
    fault: Option<String>,
}

impl LinePlace<'_> {
    fn cell(&self, typed: &str, column: &Home) -> LaidCell {
        let person = self.chart.persons.iter().find(|p| p.name == column.name());
        let now = match (person, self.row) {
            (Some(person), Some(row)) => person.cells.iter().find(|c| c.0 == row.name),
            (None, Some(row)) => row.cells.iter().find(|c| c.0 == column.name()),
            _ => None,
        };
        let now = now.map_or(String::new(), |c| c.1.clone());
        let fate = if typed.is_empty() { Fate::Empty } else { self.fate(typed, &now, column, person.is_some()) };
        LaidCell { typed: typed.to_owned(), now, fate }
    }

    fn fate(&self, typed: &str, now: &str, column: &Home, person: bool) -> Fate {
        if let Some(fault) = &self.fault {
            return Fate::Wrong(fault.clone());
        }
        for home in [self.home, column] {
            if let Home::Nowhere { why, .. } = home {
                return Fate::Wrong(why.clone());
            }
        }
        let new = matches!(column, Home::New(_)) && self.by == [self.block.axis];
        if !person && !new && !self.chart.has_key(self.by, column.name()) {
            let axes: Vec<String> = self.by.iter().map(|a| a.words()).collect();
            return Fate::Wrong(say!("block-other-axes", axes = axes.join("/"), place = column.name()));
        }
        let persons = self.chart.persons.iter().flat_map(|p| &p.cells).filter(|c| c.0 == self.home.name());
        let own = self.row.map(|r| r.cells.iter().map(|c| c.1.as_str()).chain(std::iter::once(r.is.as_str())));
        let holds = Holds::of(own.into_iter().flatten().chain(persons.map(|c| c.1.as_str())));
        match cell_text(typed, self.block.unit, holds, self.chart, self.new_rows) {
            Ok(text) if text == now => Fate::Same,
            Ok(text) => Fate::Takes(text),
            Err(why) => Fate::Wrong(why),
        }
    }
}
