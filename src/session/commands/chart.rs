//! Changing the body chart: sizes, rows, persons, cells.

use crate::base::Code;
use crate::document::{Axis, Cell, Draft, Part, Person, Row, RowKind, check_label};
use crate::language::{literal_text, tidy};
use crate::session::computed::Computed;
use crate::session::naming::check_free;
use crate::session::size::{NewSize, add_size, read_cell};
use crate::session::{Block, EditError, block, delete_size, qualify_for, rename_size, shaping};
use crate::texts::say;

/// A change of the chart.
#[derive(Clone, Debug, PartialEq)]
pub enum ChartCommand {
    /// A size is added.
    AddSize(NewSize),
    /// A single body is added.
    AddPerson(String),
    /// A row is added.
    AddRow(String, RowKind),
    /// A cell: row, label, what was typed. `+2 cm` is a step from the size before; nothing takes the cell out.
    Cell(String, String, String),
    /// A person's number: person, row, what was typed.
    PersonCell(String, String, String),
    /// The proposed numbers of a size become typed ones: row (all if empty), label (all if empty).
    Confirm(String, String),
    /// The base size.
    Base(String),
    /// A size gets another label: axis, old, new.
    RenameSize(Axis, String, String),
    /// A size is taken out, with its numbers.
    DeleteSize(Axis, String),
    /// A size is put at this place of its axis.
    PlaceSize(Axis, String, usize),
    /// A row is put at this place among the rows.
    PlaceRow(String, usize),
    /// A row is one of bodies or of the house.
    Kind(String, RowKind),
    /// By which axes a row varies.
    By(String, Vec<Axis>),
    /// An axis is taken out.
    RemoveAxis(Axis),
    /// A size set is added.
    AddSet(String),
    /// The labels of a set along an axis.
    SetLabels(String, Axis, Vec<String>),
    /// The base of a set.
    SetBase(String, String),
    /// The right cells of a block of numbers are taken.
    Paste(Box<Block>),
}

impl ChartCommand {
    pub(in crate::session) fn label(&self) -> String {
        match self {
            Self::AddSize(new) => say!("undo-add-size", size = new.label),
            Self::AddPerson(name) => say!("undo-add-person", name),
            Self::AddRow(name, _) => say!("undo-add-row", name),
            Self::Cell(row, label, _) => say!("undo-change-cell", row, size = label),
            Self::PersonCell(person, row, _) => say!("undo-change-person", row, person),
            Self::Confirm(..) => say!("undo-confirm"),
            Self::Base(label) => say!("undo-base", size = label),
            Self::RenameSize(_, old, new) => say!("undo-rename-size", old, new),
            Self::DeleteSize(_, label) => say!("undo-delete-size", size = label),
            Self::PlaceSize(_, label, _) => say!("undo-move-size", size = label),
            Self::PlaceRow(name, _) => say!("undo-move-row", name),
            Self::Kind(name, _) => say!("undo-row-kind", name),
            Self::By(name, _) => say!("undo-row-axes", name),
            Self::RemoveAxis(axis) => say!("undo-remove-axis", axis = axis.words()),
            Self::AddSet(name) => say!("undo-add-set", name),
            Self::SetLabels(name, ..) => say!("undo-set-sizes", name),
            Self::SetBase(name, _) => say!("undo-set-base", name),
            Self::Paste(_) => say!("undo-paste"),
        }
    }

    pub(in crate::session) fn apply(&self, draft: &mut Draft, computed: &Computed) -> Result<String, EditError> {
        match self {
            Self::AddSize(new) => Ok(add_size(draft, new)?),
            Self::AddPerson(name) => add_person(draft, name),
            Self::AddRow(name, kind) => {
                let part = Part::Row(name.clone());
                check_free(draft, &part)?;
                draft.chart.rows.push(Row { name: name.clone(), kind: *kind, by: axes(draft), ..Row::default() });
                qualify_for(draft, &part);
                Ok(String::new())
            }
            Self::Cell(row, label, text) => set_cell(draft, row, label, text),
            Self::PersonCell(person, row, text) => set_person_cell(draft, person, row, text),
            Self::Confirm(row, label) => confirm(draft, computed, row, label),
            Self::RenameSize(axis, old, new) => {
                rename_size(draft, *axis, old, new).map_err(|e| EditError::refused(e.to_string()))
            }
            Self::DeleteSize(axis, label) => {
                delete_size(draft, *axis, label).map_err(|e| EditError::refused(e.to_string()))
            }
            Self::PlaceSize(axis, label, to) => shaping::place_size(draft, *axis, label, *to),
            Self::PlaceRow(name, to) => shaping::place_row(draft, name, *to),
            Self::Kind(name, kind) => shaping::set_kind(draft, name, *kind),
            Self::By(name, by) => shaping::set_axes(draft, name, by),
            Self::RemoveAxis(axis) => shaping::remove_axis(draft, *axis),
            Self::AddSet(name) => shaping::add_set(draft, name),
            Self::SetLabels(name, axis, labels) => shaping::set_labels(draft, name, *axis, labels),
            Self::SetBase(name, base) => shaping::set_base(draft, name, base),
            Self::Paste(block) => block::take(draft, block),
            Self::Base(label) => {
                draft.chart.base.clone_from(label);
                Ok(String::new())
            }
        }
    }
}

/// The axes by which a new row varies: those that the chart uses.
fn axes(draft: &Draft) -> Vec<Axis> {
    let chart = &draft.chart;
    let many: Vec<Axis> = Axis::ALL.into_iter().filter(|a| chart.labels(*a).len() > 1).collect();
    match Axis::ALL.into_iter().find(|a| !chart.labels(*a).is_empty()) {
        _ if !many.is_empty() => many,
        Some(axis) => vec![axis],
        None => vec![Axis::Girth],
    }
}

fn add_person(draft: &mut Draft, name: &str) -> Result<String, EditError> {
    if check_label(name).is_err() {
        return Err(EditError::refused(say!("refused-person-name", name)));
    }
    let chart = &mut draft.chart;
    let sizes = chart.girth.iter().chain(&chart.cup).chain(&chart.length);
    if sizes.chain(chart.persons.iter().map(|p| &p.name)).any(|n| n == name) {
        return Err(EditError::refused(say!("refused-size-or-person", name)));
    }
    chart.persons.push(Person { name: name.to_owned(), ..Person::default() });
    let body = chart.rows.iter().filter(|r| r.is.is_empty()).map(|r| r.name.as_str()).collect::<Vec<_>>();
    Ok(match body.is_empty() {
        true => say!("told-person-added", name),
        false => say!("told-person-measure", name, rows = body.join(", ")),
    })
}

/// The row with this name.
fn row_of<'a>(draft: &'a mut Draft, name: &str) -> Result<&'a mut Row, EditError> {
    let gone = || EditError::refused(say!("gone-row", name));
    draft.chart.rows.iter_mut().find(|r| r.name == name).ok_or_else(gone)
}

/// Puts a text where a row and a column meet: the column is a place of sizes or a person.
pub(in crate::session) fn put_cell(draft: &mut Draft, row: &str, column: &str, text: &str) -> Result<(), EditError> {
    let person = draft.chart.persons.iter().any(|p| p.name == column);
    if person { set_person_cell(draft, column, row, text) } else { set_cell(draft, row, column, text) }.map(|_| ())
}

fn set_cell(draft: &mut Draft, row: &str, label: &str, text: &str) -> Result<String, EditError> {
    let own = draft.chart.rows.iter().find(|r| r.name == row).map(|r| r.by.as_slice()).unwrap_or_default();
    let order = draft.chart.keys(own);
    // The size before is the one before on the row's first axis, other labels held.
    let beside = own.first().map_or(1, |axis| order.len() / draft.chart.labels(*axis).len().max(1));
    let row = row_of(draft, row)?;
    if row.by.is_empty() {
        return Err(EditError::refused(say!("refused-row-everywhere", row = row.name)));
    }
    let here = order.iter().position(|l| l == label);
    let before = here.and_then(|i| i.checked_sub(beside)).and_then(|i| order.get(i));
    let neighbour = before.and_then(|b| row.cells.iter().find(|c| c.0 == *b)).map(|c| c.1.clone());
    let typed = tidy(text);
    let to = if typed.starts_with('+') {
        read_cell(&typed, neighbour.as_deref(), before.map(String::as_str))
            .map_err(|problem| EditError::refused(say!("refused-cell", row = row.name, typed, problem)))?
    } else {
        typed
    };
    let own = row.cells.iter().position(|c| c.0 == label);
    match (own, to.is_empty()) {
        (Some(i), true) => drop(row.cells.remove(i)),
        (None, true) => {}
        (Some(i), false) => row.cells[i].1 = to,
        (None, false) => {
            let place = |l: &str| order.iter().position(|o| o == l).unwrap_or(usize::MAX);
            let behind = row.cells.iter().position(|c| here.is_some_and(|h| place(&c.0) > h));
            row.cells.insert(behind.unwrap_or(row.cells.len()), Cell(label.to_owned(), to));
        }
    }
    Ok(String::new())
}

fn set_person_cell(draft: &mut Draft, person: &str, row: &str, text: &str) -> Result<String, EditError> {
    let order: Vec<String> = draft.chart.rows.iter().map(|r| r.name.clone()).collect();
    let gone = || EditError::refused(say!("gone-person", name = person));
    let cells = &mut draft.chart.persons.iter_mut().find(|p| p.name == person).ok_or_else(gone)?.cells;
    let to = tidy(text);
    match (cells.iter().position(|c| c.0 == row), to.is_empty()) {
        (Some(i), true) => drop(cells.remove(i)),
        (None, true) => {}
        (Some(i), false) => cells[i].1 = to,
        (None, false) => {
            let place = |n: &str| order.iter().position(|o| o == n).unwrap_or(usize::MAX);
            let behind = cells.iter().position(|c| place(&c.0) > place(row)).unwrap_or(cells.len());
            cells.insert(behind, Cell(row.to_owned(), to));
        }
    }
    Ok(String::new())
}

/// Proposals are read from what was found: row, label and number.
fn confirm(draft: &mut Draft, computed: &Computed, row: &str, label: &str) -> Result<String, EditError> {
    let unit = crate::compute::unit_of(draft);
    let mut many = 0_usize;
    for finding in computed.findings.iter().filter(|f| matches!(f.code, Code::CellGuessed | Code::CellBeyond)) {
        let Some(name) = finding.place.name.strip_prefix("chart.") else { continue };
        let (Some(size), Some(number)) = (finding.sizes.first(), finding.amounts.first()) else { continue };
        if (!row.is_empty() && row != name) || (!label.is_empty() && label != size) {
            continue;
        }
        let Some(kind) = draft.chart.rows.iter().find(|r| r.name == name) else { continue };
        if kind.cells.iter().any(|c| c.0 == *size) {
            continue;
        }
        let (Some(value), Some(of_row)) = (number.by_size.first(), cell_unit(kind, number.unit, unit)) else {
            continue;
        };
        // To a thousandth of the unit: a proposal is no finer than the tape.
        set_cell(draft, name, size, &literal_text(of_row.1(*value), of_row.0))?;
        many += 1;
    }
    match many {
        0 => Err(EditError::refused(say!("refused-no-proposal"))),
        many => Ok(say!("told-confirmed", count = many)),
    }
}

type Rounded = fn(f64) -> f64;

/// The unit of a row's cells, and how its numbers are rounded inside.
fn cell_unit(row: &Row, unit: &str, display: crate::base::Unit) -> Option<(Option<crate::base::Unit>, Rounded)> {
    use crate::base::Unit;
    let own = row.cells.first().and_then(|c| crate::session::literal::number_typed(&c.1)).and_then(|(_, unit)| unit);
    match (unit, own) {
        ("mm", Some(own)) => Some((Some(own), |v| (v * 100.0).round() / 100.0)),
        ("mm", None) => Some((Some(display), |v| (v * 100.0).round() / 100.0)),
        (_, Some(Unit::Degree)) => Some((Some(Unit::Degree), |v| (v.to_degrees() * 1e4).round().to_radians() / 1e4)),
        (_, own) => Some((own, |v| (v * 1e6).round() / 1e6)),
    }
}
