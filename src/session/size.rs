//! Adding a size.

use super::literal::number_typed;
use super::shaping::complete_addresses;
use crate::base::Unit;
use crate::document::{Axis, Cell, Draft, Part, check_label};
use crate::language::{nearest, parse};
use crate::session::meant;
use crate::texts::say;

/// A size to be added.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NewSize {
    /// Its label.
    pub label: String,
    /// On which axis.
    pub axis: Axis,
    /// Between these neighbours; `None`: where its label belongs if all labels are numbers, else at the end.
    pub between: Option<(String, String)>,
    /// Row and formula; `+2 cm` or `-2 cm` is a step from the size before.
    pub cells: Vec<(String, String)>,
}

/// Why a size could not be added. The draft is as it was.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum SizeError {
    /// The label cannot be used.
    #[error("{}", say!("refused-label", label = .0))]
    Label(String),
    /// It is there already.
    #[error("{}", say!("refused-taken", part = .0))]
    Taken(String),
    /// A neighbour is unknown.
    #[error("{}", say!("refused-neighbour", name, hint = meant(hint.as_deref())))]
    Neighbour {
        /// What was asked for.
        name: String,
        /// The nearest one.
        hint: Option<String>,
    },
    /// The neighbours are not beside each other.
    #[error("{}", say!("refused-not-beside", a, b))]
    NotBeside {
        /// One.
        a: String,
        /// The other.
        b: String,
    },
    /// A row is unknown.
    #[error("{}", say!("refused-no-row", name, hint = meant(hint.as_deref())))]
    Row {
        /// What was asked for.
        name: String,
        /// The nearest one.
        hint: Option<String>,
    },
    /// A row does not vary by this axis alone.
    #[error("{}", say!("refused-size-axes", row, axis = axis.words(), label))]
    Axes {
        /// The row.
        row: String,
        /// The axis.
        axis: Axis,
        /// The new size.
        label: String,
    },
    /// A number cannot be read.
    #[error("{}", say!("refused-size-cell", row, text, problem))]
    Cell {
        /// The row.
        row: String,
        /// As typed.
        text: String,
        /// Why.
        problem: String,
    },
}

/// Adds a size. Returns what was done, in a sentence or two. Rows without a number get a proposal when computed.
pub fn add_size(draft: &mut Draft, new: &NewSize) -> Result<String, SizeError> {
    check_label(&new.label).map_err(|_| SizeError::Label(new.label.clone()))?;
    let chart = &draft.chart;
    let labels = chart.labels(new.axis);
    if Axis::ALL.into_iter().any(|a| chart.labels(a).contains(&new.label)) {
        return Err(SizeError::Taken(say!("thing-called", kind = say!("word-size"), name = new.label)));
    }
    if chart.persons.iter().any(|p| p.name == new.label) {
        return Err(SizeError::Taken(Part::Person(new.label.clone()).words()));
    }
    let place = place_of(labels, new)?;
    let before = place.checked_sub(1).and_then(|i| labels.get(i)).cloned();
    let mut typed: Vec<(usize, String)> = Vec::new();
    for (name, text) in &new.cells {
        let Some(i) = chart.rows.iter().position(|r| r.name == *name || format!("chart.{}", r.name) == *name) else {
            let hint = nearest(name, chart.rows.iter().map(|r| r.name.as_str())).map(str::to_owned);
            return Err(SizeError::Row { name: name.clone(), hint });
        };
        if chart.rows[i].by != [new.axis] {
            return Err(SizeError::Axes { row: name.clone(), axis: new.axis, label: new.label.clone() });
        }
        let neighbour = before.as_ref().and_then(|b| chart.rows[i].cells.iter().find(|c| c.0 == *b));
        let cell = read_cell(text, neighbour.map(|c| c.1.as_str()), before.as_deref())
            .map_err(|problem| SizeError::Cell { row: name.clone(), text: text.clone(), problem })?;
        typed.retain(|(k, _)| *k != i);
        typed.push((i, cell));
    }
    let proposed: Vec<String> = chart
        .rows
        .iter()
        .enumerate()
        .filter(|(i, r)| r.by.contains(&new.axis) && r.is.is_empty() && !typed.iter().any(|(k, _)| k == i))
        .map(|(_, r)| r.name.clone())
        .collect();
    let sets: Vec<String> =
        chart.sets.iter().filter(|s| !s.labels(new.axis).is_empty()).map(|s| s.name.clone()).collect();
    let single = if labels.len() == 1 { labels.first().cloned() } else { None };
    if let Some(single) = single {
        // What was single was left out of addresses, and is named from now on.
        complete_addresses(draft, new.axis, &single);
    }
    let chart = &mut draft.chart;
    let labels = chart.labels_mut(new.axis);
    labels.insert(place, new.label.clone());
    let order = labels.clone();
    for (i, text) in typed {
        let cells = &mut chart.rows[i].cells;
        let at = |label: &str| order.iter().position(|l| l == label).unwrap_or(usize::MAX);
        let behind = cells.iter().position(|c| at(&c.0) > place).unwrap_or(cells.len());
        cells.insert(behind, Cell(new.label.clone(), text));
    }
    let others = Axis::ALL.into_iter().any(|a| a != new.axis && !chart.labels(a).is_empty());
    if chart.base.is_empty() && order.len() == 1 && !others {
        chart.base = new.label.clone();
    }
    let mut told = say!("told-size-added", size = new.label);
    if !proposed.is_empty() {
        told.push_str(&say!("told-proposed", rows = proposed.join(", ")));
    }
    if !sets.is_empty() {
        told.push_str(&say!("told-not-in-sets", sets = sets.join(", ")));
    }
    Ok(told)
}

fn place_of(labels: &[String], new: &NewSize) -> Result<usize, SizeError> {
    let find = |name: &String| {
        labels.iter().position(|l| l == name).ok_or_else(|| SizeError::Neighbour {
            name: name.clone(),
            hint: nearest(name, labels.iter().map(String::as_str)).map(str::to_owned),
        })
    };
    if let Some((a, b)) = &new.between {
        let (i, j) = (find(a)?, find(b)?);
        return match i.abs_diff(j) {
            1 => Ok(i.max(j)),
            _ => Err(SizeError::NotBeside { a: a.clone(), b: b.clone() }),
        };
    }
    let numbers: Option<Vec<f64>> = labels.iter().map(|l| l.parse().ok()).collect();
    Ok(match (numbers, new.label.parse::<f64>()) {
        (Some(numbers), Ok(own)) if numbers.is_sorted() => {
            numbers.iter().position(|n| *n > own).unwrap_or(labels.len())
        }
        _ => labels.len(),
    })
}

/// The text that the cell gets: as typed, or the sum for a step.
pub(super) fn read_cell(text: &str, neighbour: Option<&str>, before: Option<&str>) -> Result<String, String> {
    let text = text.trim();
    let step = text.strip_prefix('+').map(|t| (1.0, t)).or_else(|| text.strip_prefix('-').map(|t| (-1.0, t)));
    let Some((sign, step)) = step else {
        return match parse(text) {
            Ok(_) => Ok(text.to_owned()),
            Err(finding) => Err(crate::texts::message(&finding, crate::base::DisplayUnit::Cm)),
        };
    };
    let before = before.ok_or_else(|| say!("refused-step-first"))?;
    let neighbour = neighbour.ok_or_else(|| say!("refused-step-untyped", size = before))?;
    let (Some((start, unit)), Some((by, by_unit))) = (number_typed(neighbour), number_typed(step)) else {
        return Err(say!("refused-step-formula", size = before, text = neighbour));
    };
    let inside = |v: f64, u: Option<Unit>| u.map_or(v, |u| v * u.inside().0 / u.inside().1);
    let both = (unit.map(Unit::is_length), by_unit.map(Unit::is_length));
    if both.0 != both.1 {
        return Err(say!("refused-step-kind", text = neighbour));
    }
    let sum = inside(start, unit) + sign * inside(by, by_unit);
    let (times, over) = unit.map_or((1.0, 1.0), Unit::inside);
    // To a billionth, so that 13.55 + 0.1 does not show the binary rest.
    let value = (sum * over / times * 1e9).round() / 1e9;
    Ok(unit.map_or(format!("{value}"), |u| format!("{value} {}", u.sign())))
}
