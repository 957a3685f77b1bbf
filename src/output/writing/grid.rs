//! A table laid out: how wide its columns are, which of them come together on a page.

use super::{Cell, Table};
use crate::output::font;

/// Size of the em, mm.
pub(super) const SIZE: f64 = 3.0;
/// From line to line within a cell, in sizes.
pub(super) const LEADING: f64 = 1.3;
/// Room around the words of a cell, mm.
pub(super) const ROOM: f64 = 1.1;
/// Room that the words over a group of lines take, mm.
pub(super) const GROUP: f64 = 2.0 * ROOM + SIZE * 1.2;
/// The widest that a column of words becomes before its words are broken, mm; the first column may be wider.
const WORDS: f64 = 46.0;
const NAMES: f64 = 58.0;

/// The words of a cell, in lines.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Words {
    pub lines: Vec<String>,
    /// Whether it stands at the right, so that numbers stand under each other.
    pub is_number: bool,
}

/// A row of cells as it is drawn: a line with lengths has one for each unit.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Row {
    /// What stands over it; empty: nothing.
    pub group: String,
    pub cells: Vec<Words>,
    /// Whether it belongs to the row before it.
    pub follows: bool,
}

impl Row {
    /// How high it is with what stands over it, mm.
    pub fn height(&self, columns: &[usize]) -> f64 {
        let over = if self.group.is_empty() { 0.0 } else { GROUP };
        over + height(&self.cells, columns)
    }
}

/// How high a row of cells is, mm.
pub(super) fn height(cells: &[Words], columns: &[usize]) -> f64 {
    let most = columns.iter().map(|c| cells[*c].lines.len()).max().unwrap_or(1).max(1);
    2.0 * ROOM + SIZE * LEADING * (most as f64 - 1.0) + font::cap_height(SIZE)
}

/// A table laid out.
pub(super) struct Grid {
    pub head: Vec<Words>,
    pub rows: Vec<Row>,
    pub widths: Vec<f64>,
    /// How many columns stand first in each part: the names, and the units where there are any.
    first: usize,
}

impl Grid {
    /// Lays out a table on a page of this width, mm.
    pub fn of(table: &Table, page: f64) -> Self {
        let with_units = table.has_units();
        let first = if with_units { 2 } else { 1 };
        let columns = table.head.len() + first - 1;
        let text = |words: &str| Words { lines: vec![words.to_owned()], is_number: false };
        let mut head: Vec<Words> = table.head.iter().map(|h| text(h)).collect();
        if with_units && !head.is_empty() {
            head.insert(1, Words::default());
        }
        let mut rows = Vec::new();
        let mut group = "";
        for line in &table.lines {
            for (k, unit) in line.units().iter().enumerate() {
                let mut cells = vec![if k == 0 { text(&line.name) } else { Words::default() }];
                if with_units {
                    cells.push(text(&unit.word()));
                }
                cells.extend(line.cells.iter().map(|cell| Words {
                    // What has no unit is told once.
                    lines: if k > 0 && !cell.has_units() || *cell == Cell::Empty {
                        Vec::new()
                    } else {
                        vec![cell.shown(*unit)]
                    },
                    is_number: !matches!(cell.unsigned(), Cell::Words(_)),
                }));
                cells.resize(columns, Words::default());
                let over = if k == 0 && line.group != group { line.group.clone() } else { String::new() };
                rows.push(Row { group: over, cells, follows: k > 0 });
            }
            group = &line.group;
        }
        // A head stands over its column as the numbers in it do.
        for (i, cell) in head.iter_mut().enumerate().skip(first) {
            cell.is_number = rows.iter().any(|r| r.cells[i].is_number && !r.cells[i].lines.is_empty());
        }
        let mut out = Self { head, rows, widths: vec![0.0; columns], first };
        out.spread(page);
        out
    }

    /// Gives each column the width of its words, breaks those that are too wide.
    fn spread(&mut self, page: f64) {
        for column in 0..self.widths.len() {
            // A table with few columns has room for longer words.
            let most = match column {
                0 => NAMES,
                _ => WORDS.max((page - NAMES - 12.0) / (self.widths.len().saturating_sub(1).max(1)) as f64),
            };
            let cells = || std::iter::once(&self.head[column]).chain(self.rows.iter().map(|r| &r.cells[column]));
            let natural =
                cells().flat_map(|c| &c.lines).map(|l| font::text_width(l, SIZE)).fold(0.0, f64::max).min(most);
            let wrap = |words: &mut Words| {
                words.lines = words
                    .lines
                    .iter()
                    .flat_map(|l| font::wrapped(l, SIZE, natural + crate::base::tolerance::EQUAL))
                    .collect();
            };
            wrap(&mut self.head[column]);
            self.rows.iter_mut().for_each(|r| wrap(&mut r.cells[column]));
            self.widths[column] = natural + 2.0 * ROOM;
        }
        // What is left over is shared, so that a table ends where the words do.
        let used: f64 = self.widths.iter().sum();
        if used < page && !self.widths.is_empty() {
            let rest = (page - used) / self.widths.len() as f64;
            // Numbers far apart are hard to follow.
            let more = rest.min(6.0);
            self.widths.iter_mut().for_each(|w| *w += more);
        }
    }

    /// Which columns come together: each part has the first ones.
    pub fn parts(&self, page: f64) -> Vec<Vec<usize>> {
        let first: Vec<usize> = (0..self.first.min(self.widths.len())).collect();
        let names: f64 = first.iter().map(|c| self.widths[*c]).sum();
        let mut out: Vec<Vec<usize>> = Vec::new();
        let mut used = 0.0;
        for column in first.len()..self.widths.len() {
            let width = self.widths[column];
            if out.is_empty() || names + used + width > page + crate::base::tolerance::EQUAL {
                out.push(first.clone());
                used = 0.0;
            }
            if let Some(part) = out.last_mut() {
                part.push(column);
            }
            used += width;
        }
        if out.is_empty() { vec![first] } else { out }
    }

    /// How high the head is, mm.
    pub fn head_height(&self, columns: &[usize]) -> f64 {
        height(&self.head, columns)
    }
}
