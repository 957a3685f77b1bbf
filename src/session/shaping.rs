//! The shape of a chart: the order of its rows and sizes, its axes, by which of them a row varies, its size sets.
//!
//! Numbers are never made up here: where a row comes to vary by another axis its numbers are repeated or kept from the base,
//! and what goes with it is counted.

use super::EditError;
use super::naming::check_free;
use crate::document::{Address, Axis, Cell, Chart, Draft, Part, Role, RowKind, SizeSet};
use crate::texts::say;

type Told = Result<String, EditError>;

fn refused<T>(words: impl Into<String>) -> Result<T, EditError> {
    Err(EditError::refused(words))
}

fn row_at(chart: &Chart, name: &str) -> Result<usize, EditError> {
    let found = chart.rows.iter().position(|r| r.name == name);
    found.ok_or_else(|| EditError::refused(say!("gone-row", name)))
}

/// Moves a thing to another place of its list.
fn place<T>(list: &mut Vec<T>, from: usize, to: usize) {
    let thing = list.remove(from);
    list.insert(to.min(list.len()), thing);
}

/// Cells in the order of the chart; those without a place stay behind.
fn sort_cells(chart: &mut Chart) {
    let keys: Vec<Vec<String>> = chart.rows.iter().map(|r| chart.keys(&r.by)).collect();
    for (row, keys) in chart.rows.iter_mut().zip(keys) {
        row.cells.sort_by_key(|c| keys.iter().position(|k| *k == c.0).unwrap_or(usize::MAX));
    }
}

/// Puts a row at this place among the rows.
pub(super) fn place_row(draft: &mut Draft, name: &str, to: usize) -> Told {
    let from = row_at(&draft.chart, name)?;
    place(&mut draft.chart.rows, from, to);
    Ok(String::new())
}

/// Puts a size at this place on its axis.
pub(super) fn place_size(draft: &mut Draft, axis: Axis, label: &str, to: usize) -> Told {
    let Some(from) = draft.chart.labels(axis).iter().position(|l| l == label) else {
        return refused(say!("gone-size", size = label));
    };
    place(draft.chart.labels_mut(axis), from, to);
    sort_cells(&mut draft.chart);
    Ok(String::new())
}

/// Makes a row one of bodies or of the house.
pub(super) fn set_kind(draft: &mut Draft, name: &str, kind: RowKind) -> Told {
    let at = row_at(&draft.chart, name)?;
    draft.chart.rows[at].kind = kind;
    Ok(String::new())
}

/// The label of the base on an axis, else the first one.
fn base_label(chart: &Chart, axis: Axis) -> Option<&String> {
    let labels = chart.labels(axis);
    labels.iter().find(|l| chart.base.split('/').any(|p| p == l.as_str())).or_else(|| labels.first())
}

/// By which axes a row varies. New axes repeat its numbers; of an axis that goes, the base's numbers stay.
pub(super) fn set_axes(draft: &mut Draft, name: &str, by: &[Axis]) -> Told {
    let at = row_at(&draft.chart, name)?;
    let by: Vec<Axis> = Axis::ALL.into_iter().filter(|a| by.contains(a)).collect();
    if let Some(empty) = by.iter().find(|a| draft.chart.labels(**a).is_empty()) {
        return refused(say!("refused-empty-axis", axis = empty.words()));
    }
    let chart = &draft.chart;
    let row = &chart.rows[at];
    if row.by == by {
        return Ok(String::new());
    }
    // Which old cell stands at a place of the new shape: by its labels where it has them, by the base's elsewhere.
    let old_key = |key: &[&str]| -> Option<String> {
        let labels = row.by.iter().map(|axis| match by.iter().position(|a| a == axis) {
            Some(i) => key.get(i).copied(),
            None => base_label(chart, *axis).map(String::as_str),
        });
        labels.collect::<Option<Vec<&str>>>().map(|l| l.join("/"))
    };
    let cell = |key: &[&str]| {
        let old = old_key(key)?;
        row.cells.iter().find(|c| c.0 == old).map(|c| c.1.clone())
    };
    let mut is = row.is.clone();
    let mut cells = Vec::new();
    if by.is_empty() {
        is = cell(&[]).unwrap_or(is);
    }
    for key in chart.keys(&by) {
        let parts: Vec<&str> = key.split('/').collect();
        if let Some(text) = cell(&parts) {
            cells.push(Cell(key, text));
        }
    }
    // A number is lost where another one, or none, stands at its place now.
    let stays = |old: &Cell| {
        let parts: Vec<&str> = old.0.split('/').collect();
        let common: Vec<(usize, &str)> = by
            .iter()
            .enumerate()
            .filter_map(|(i, axis)| Some((i, *parts.get(row.by.iter().position(|a| a == axis)?)?)))
            .collect();
        let same = |c: &Cell| {
            let now: Vec<&str> = c.0.split('/').collect();
            common.iter().all(|(i, label)| now.get(*i) == Some(label)) && c.1 == old.1
        };
        if by.is_empty() { is == old.1 } else { cells.iter().any(same) }
    };
    let lost = row.cells.iter().filter(|c| !stays(c)).count();
    let replaced = !row.is.is_empty() && row.is != is;
    let row = &mut draft.chart.rows[at];
    row.by = by;
    row.cells = cells;
    row.is = is;
    let mut told = Vec::new();
    if lost > 0 {
        told.push(say!("told-axis-lost", count = lost, name));
    }
    if replaced {
        told.push(say!("told-formula-gave-way", name));
    }
    Ok(told.join("; "))
}

/// Takes an axis out of the chart; rows keep the base's numbers along it.
pub(super) fn remove_axis(draft: &mut Draft, axis: Axis) -> Told {
    if Axis::ALL.into_iter().all(|a| a == axis || draft.chart.labels(a).is_empty()) {
        return refused(say!("refused-only-axis", axis = axis.words()));
    }
    let mut next = draft.clone();
    let mut told = vec![say!("told-axis-taken", axis = axis.words())];
    for row in draft.chart.rows.iter().filter(|r| r.by.contains(&axis)) {
        let rest: Vec<Axis> = row.by.iter().copied().filter(|a| *a != axis).collect();
        let words = set_axes(&mut next, &row.name, &rest)?;
        if !words.is_empty() {
            told.push(words);
        }
    }
    let gone = std::mem::take(next.chart.labels_mut(axis));
    next.chart.sets.iter_mut().for_each(|s| s.labels_mut(axis).clear());
    each_address(&mut next, &mut |text| {
        let parts: Vec<&str> = text.split('/').filter(|p| !gone.iter().any(|l| l == p)).collect();
        if !parts.is_empty() {
            *text = parts.join("/");
        }
    });
    *draft = next;
    Ok(told.join("; "))
}

/// Every text that names a size by its address.
fn each_address(draft: &mut Draft, change: &mut dyn FnMut(&mut String)) {
    let persons: Vec<String> = draft.chart.persons.iter().map(|p| p.name.clone()).collect();
    draft.each_text(&mut |at: &Address, role, text| {
        let is_address = *role == Role::Label
            && matches!(at.field, "base" | "sizes" | "fitting size" | "plan size" | "plan piece size");
        if is_address && !text.is_empty() && !persons.contains(text) {
            change(text);
        }
    });
}

/// Addresses that left a single label of an axis out name it from now on.
pub(super) fn complete_addresses(draft: &mut Draft, axis: Axis, label: &str) {
    let later: Vec<String> =
        Axis::ALL.into_iter().filter(|a| *a > axis).flat_map(|a| draft.chart.labels(a).clone()).collect();
    let labels = draft.chart.labels(axis).clone();
    each_address(draft, &mut |text| {
        let mut parts: Vec<&str> = text.split('/').collect();
        if !parts.iter().any(|p| labels.iter().any(|l| l == p)) {
            let at = parts.iter().position(|p| later.iter().any(|l| l == p)).unwrap_or(parts.len());
            parts.insert(at, label);
            *text = parts.join("/");
        }
    });
}

fn set_at<'a>(draft: &'a mut Draft, name: &str) -> Result<&'a mut SizeSet, EditError> {
    let found = draft.chart.sets.iter_mut().find(|s| s.name == name);
    found.ok_or_else(|| EditError::refused(say!("gone-set", name)))
}

/// Adds a size set of all sizes.
pub(super) fn add_set(draft: &mut Draft, name: &str) -> Told {
    check_free(draft, &Part::SizeSet(name.to_owned()))?;
    draft.chart.sets.push(SizeSet { name: name.to_owned(), ..SizeSet::default() });
    name_sets(draft, None);
    Ok(match draft.chart.sets.len() {
        1 => say!("told-set-added", name),
        _ => String::new(),
    })
}

/// With more than one set, the base names its set; with one, it does not. `renamed`: a set's old and new name.
pub(super) fn name_sets(draft: &mut Draft, renamed: Option<(&str, &str)>) {
    let sets = draft.chart.sets.clone();
    let Some(first) = sets.first() else { return };
    let base = draft.chart.base.clone();
    let holds = |s: &SizeSet| {
        base.split('/').all(|p| {
            let axis = Axis::ALL.into_iter().find(|a| draft.chart.labels(*a).iter().any(|l| l == p));
            axis.is_none_or(|a| s.labels(a).is_empty() || s.labels(a).iter().any(|l| l == p))
        })
    };
    let home = sets.iter().find(|s| holds(s)).unwrap_or(first).name.clone();
    each_address(draft, &mut |text| {
        if let Some((old, new)) = renamed
            && let Some(rest) = text.strip_prefix(old).and_then(|r| r.strip_prefix('/'))
        {
            *text = format!("{new}/{rest}");
        }
    });
    let base = &mut draft.chart.base;
    let named = sets.iter().any(|s| base.split('/').next() == Some(&s.name));
    if sets.len() > 1 && !named && !base.is_empty() {
        *base = format!("{home}/{base}");
    }
}

/// The labels of a set along an axis; all of the chart's is the same as none.
pub(super) fn set_labels(draft: &mut Draft, name: &str, axis: Axis, labels: &[String]) -> Told {
    let all = draft.chart.labels(axis).clone();
    let chosen: Vec<String> = all.iter().filter(|l| labels.contains(l)).cloned().collect();
    if chosen.is_empty() {
        return refused(say!("refused-empty-set", name, axis = axis.words()));
    }
    let set = set_at(draft, name)?;
    let lost_base = !set.base.is_empty() && {
        let own = all.iter().find(|l| set.base.split('/').any(|p| p == l.as_str()));
        own.is_some_and(|l| !chosen.contains(l))
    };
    *set.labels_mut(axis) = if chosen.len() == all.len() { Vec::new() } else { chosen };
    if lost_base {
        set.base.clear();
        return Ok(say!("told-set-base", name));
    }
    Ok(String::new())
}

/// The base of a set.
pub(super) fn set_base(draft: &mut Draft, name: &str, base: &str) -> Told {
    set_at(draft, name)?.base = base.to_owned();
    Ok(String::new())
}

/// The address of the base once it has this label on this axis.
pub fn base_with(chart: &Chart, axis: Axis, label: &str) -> String {
    let set = chart.sets.iter().find(|s| chart.base.split('/').next() == Some(&s.name)).map(|s| s.name.as_str());
    let parts = Axis::ALL.into_iter().filter_map(|a| match a == axis {
        true => Some(label),
        false if chart.labels(a).len() > 1 => base_label(chart, a).map(String::as_str),
        false => None,
    });
    set.into_iter().chain(parts).collect::<Vec<&str>>().join("/")
}
