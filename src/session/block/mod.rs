//! A block of numbers from a spreadsheet: read, laid on the chart, looked at, and taken.
//!
//! Nothing is guessed about numbers: a bare one needs a unit that the person says. Right cells are taken, wrong ones stay listed
//! with the reason. The preview and the change are one piece of code, so that what is shown is what happens.

mod lay;
mod read;
mod typed;

pub use lay::{Fate, Home, Laid, LaidCell, LaidRow, lay};
pub use read::Parted;

use crate::base::Unit;
use crate::document::{Axis, Draft, Part, Row, RowKind};

use super::EditError;
use super::commands::put_cell;
use super::size::{NewSize, add_size};
use crate::texts::say;

/// A block of text and what the person said of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Block {
    /// As it was pasted.
    pub text: String,
    /// What parts its columns.
    pub parted: Parted,
    /// The unit of numbers that have none.
    pub unit: Option<Unit>,
    /// Whether its first line names sizes.
    pub head: bool,
    /// Whether its first column names rows.
    pub names: bool,
    /// Row and column of the first number, where nothing names them; the first of the chart if empty.
    pub at: (String, String),
    /// Whether sizes that are not in the chart are added, and along which axis.
    pub add_sizes: bool,
    /// Along which axis.
    pub axis: Axis,
    /// Labels of sizes that are added for columns without a name.
    pub new_sizes: Vec<String>,
    /// Whether rows that are not in the chart are added.
    pub add_rows: bool,
    /// Names of rows that are added for lines without a name.
    pub new_rows: Vec<String>,
}

impl Block {
    /// A block as it was pasted. Its shape is read from the text; units are not.
    pub fn of(draft: &Draft, text: &str, at: (String, String)) -> Self {
        let axis = Axis::ALL.into_iter().find(|a| !draft.chart.labels(*a).is_empty()).unwrap_or(Axis::Girth);
        let mut block = Self {
            text: text.strip_prefix('\u{feff}').unwrap_or(text).to_owned(),
            parted: Parted::of(text),
            unit: None,
            head: false,
            names: false,
            at,
            add_sizes: false,
            axis,
            new_sizes: Vec::new(),
            add_rows: false,
            new_rows: Vec::new(),
        };
        block.look_at_shape(draft);
        block
    }

    /// Reads anew whether there are a head and names.
    pub fn look_at_shape(&mut self, draft: &Draft) {
        (self.head, self.names) = read::shape(&draft.chart, &self.text, self.parted);
    }
}

/// Takes the right cells of a block into the draft. Returns what was done.
pub(super) fn take(draft: &mut Draft, block: &Block) -> Result<String, EditError> {
    let laid = lay(draft, block);
    if let Some(fault) = &laid.fault {
        return Err(EditError::refused(fault.clone()));
    }
    let (takes, wrong) = (laid.takes(), laid.wrong().count());
    if takes == 0 && wrong > 0 {
        return Err(EditError::refused(say!("refused-nothing-taken", why = told_wrong(wrong))));
    }
    let mut next = draft.clone();
    let mut added = Vec::new();
    for home in &laid.head {
        if let Home::New(label) = home {
            let size = NewSize { label: label.clone(), axis: block.axis, between: None, cells: Vec::new() };
            add_size(&mut next, &size)?;
            added.push(say!("thing-called", kind = say!("word-size"), name = label));
        }
    }
    for line in &laid.rows {
        let name = match &line.home {
            Home::Known(name) => name,
            Home::New(name) => {
                let by = line.by.clone();
                next.chart.rows.push(Row { name: name.clone(), kind: line.kind, by, ..Row::default() });
                super::qualify_for(&mut next, &Part::Row(name.clone()));
                added.push(Part::Row(name.clone()).words());
                name
            }
            Home::Nowhere { .. } => continue,
        };
        for (home, cell) in laid.head.iter().zip(&line.cells) {
            let (Fate::Takes(text), Home::Known(column) | Home::New(column)) = (&cell.fate, home) else { continue };
            if let Some(row) = next.chart.rows.iter_mut().find(|r| r.name == *name)
                && row.by.is_empty()
            {
                row.by.clone_from(&line.by);
            }
            put_cell(&mut next, name, column, text)?;
        }
    }
    *draft = next;
    let mut told = match takes {
        0 => say!("told-all-there"),
        takes => say!("told-taken", count = takes),
    };
    if !added.is_empty() {
        told.push_str(&say!("told-added-too", parts = added.join(", ")));
    }
    if wrong > 0 {
        told.push_str(&format!("; {}", told_wrong(wrong)));
    }
    Ok(told)
}

fn told_wrong(many: usize) -> String {
    say!("told-not-taken", count = many)
}

/// The kind of a row by its word in a table.
fn kind_of(word: &str) -> Option<RowKind> {
    match word {
        "" | "body" => Some(RowKind::Body),
        "house" => Some(RowKind::House),
        _ => None,
    }
}
