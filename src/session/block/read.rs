//! From text to cells: what parts columns, whether there is a head, whether rows are named.

use crate::document::{Axis, Chart};
use crate::language::tidy;
use crate::session::literal::number_typed;
use crate::session::table::records;
use crate::texts::say;

/// The most lines, columns, cells and bytes that are read.
const MAX_LINES: usize = 2_000;
const MAX_COLUMNS: usize = 500;
const MAX_CELLS: usize = 20_000;
const MAX_BYTES: usize = 2_000_000;

/// What parts the columns of a block.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Parted {
    /// Tabs, as spreadsheets copy.
    Tab,
    /// Semicolons.
    Semicolon,
    /// Commas; then a comma is no decimal sign unless the cell is quoted.
    Comma,
    /// There is one column.
    Nothing,
}

impl Parted {
    /// All of them.
    pub const ALL: [Self; 4] = [Self::Tab, Self::Semicolon, Self::Comma, Self::Nothing];

    /// Its word for whoever is at the program.
    pub fn words(self) -> String {
        match self {
            Self::Tab => say!("parted-tabs"),
            Self::Semicolon => say!("parted-semicolons"),
            Self::Comma => say!("parted-commas"),
            Self::Nothing => say!("parted-nothing"),
        }
    }

    /// What parts this text. A single comma between two digits is a decimal sign where nothing says otherwise.
    pub fn of(text: &str) -> Self {
        let lines = || text.lines().take(MAX_LINES).filter(|l| !l.trim().is_empty());
        if lines().any(|l| l.contains('\t')) {
            Self::Tab
        } else if lines().any(|l| l.contains(';')) {
            Self::Semicolon
        } else if lines().any(|l| {
            let letters: Vec<char> = l.chars().collect();
            let digit = |i: Option<usize>| i.and_then(|i| letters.get(i)).is_some_and(char::is_ascii_digit);
            let commas: Vec<usize> = (0..letters.len()).filter(|i| letters[*i] == ',').collect();
            commas.len() > 1 || commas.iter().any(|i| !digit(i.checked_sub(1)) || !digit(Some(i + 1)))
        }) {
            Self::Comma
        } else {
            Self::Nothing
        }
    }
}

/// The cells of a text, with the line of each row; lines without anything in them are left out.
pub(super) fn cells(text: &str, parted: Parted) -> Result<Vec<(usize, Vec<String>)>, String> {
    if text.len() > MAX_BYTES {
        return Err(say!("block-bytes", bytes = text.len(), most = MAX_BYTES));
    }
    let delimiter = match parted {
        Parted::Tab => b'\t',
        Parted::Semicolon => b';',
        Parted::Comma => b',',
        Parted::Nothing => b'\x1f',
    };
    let mut lines = Vec::new();
    for record in records(text, delimiter) {
        let (line, cells) = record?;
        if cells.len() > MAX_COLUMNS {
            return Err(say!("block-columns", line, columns = cells.len(), most = MAX_COLUMNS));
        }
        if cells.iter().any(|c| !c.is_empty()) {
            lines.push((line, cells));
        }
        if lines.len() > MAX_LINES {
            return Err(say!("block-lines", most = MAX_LINES));
        }
    }
    if lines.is_empty() {
        return Err(say!("block-empty"));
    }
    // Columns that hold nothing at all stand at the end only.
    let used = |cells: &Vec<String>| cells.iter().rposition(|c| !c.is_empty()).map_or(0, |i| i + 1);
    let wide = lines.iter().map(|(_, c)| used(c)).max().unwrap_or(0);
    if wide * lines.len() > MAX_CELLS {
        return Err(say!("block-cells", cells = wide * lines.len(), most = MAX_CELLS));
    }
    lines.iter_mut().for_each(|(_, cells)| cells.resize(wide, String::new()));
    Ok(lines)
}

/// Whether the first line names sizes, and the first column rows. The person can say otherwise.
pub(super) fn shape(chart: &Chart, text: &str, parted: Parted) -> (bool, bool) {
    let Ok(lines) = cells(text, parted) else { return (false, false) };
    let first = &lines[0].1;
    let is_number = |c: &str| number_typed(&tidy(c)).is_some() || number_typed(&format!("{} in", tidy(c))).is_some();
    let is_label = |c: &String| {
        let one = |p: &str| {
            Axis::ALL.into_iter().any(|a| chart.labels(a).iter().any(|l| l == p))
                || chart.persons.iter().any(|x| x.name == p)
        };
        c.split('/').all(|p| one(p.trim()))
    };
    let below = lines.len() > 1;
    let behind: Vec<&String> = first.iter().skip(1).filter(|c| !c.is_empty()).collect();
    let named = lines.iter().skip(1).any(|(_, c)| !c[0].is_empty() && !is_number(&c[0]));
    let words = first.iter().skip(1).any(|c| !c.is_empty() && !is_number(c));
    let labels = !behind.is_empty() && behind.iter().filter(|c| is_label(c)).count() * 2 > behind.len();
    let corner = first[0].is_empty() || first[0] == "row";
    let all_labels = first.iter().all(is_label);
    let head = below && (corner && !behind.is_empty() || named && (labels || words) || all_labels);
    let lone_name = !below && !first[0].is_empty() && !is_number(&first[0]) && first.len() > 1;
    (head, named || lone_name || head && corner)
}
