//! Steps of a chart's row from size to size, and which of them are uneven.
//!
//! The rule is common practice, no source: charts keep a step over several sizes and change it once or twice, so a step that is
//! larger, or smaller, than both its neighbours is worth a look. What the row is rounded to is no fault of a step.

use crate::base::Unit;
use crate::base::tolerance::steps as limits;
use crate::document::{Axis, Chart, Row};

use super::literal::number_typed;
use crate::texts::say;

/// The step to a size from the one before.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Step {
    /// By how much, in what the numbers are in.
    pub by: f64,
    /// Whether it differs from both its neighbours by more than it should.
    pub uneven: bool,
}

/// The rule in words.
pub fn step_rule() -> String {
    say!("chart-rule-of-steps")
}

/// The steps between numbers along one axis, one for each number; none where there is no number before.
pub fn steps(numbers: &[Option<f64>], rounded_to: f64) -> Vec<Option<Step>> {
    let by: Vec<Option<f64>> = (0..numbers.len()).map(|i| Some(numbers[i]? - numbers[i.checked_sub(1)?]?)).collect();
    let near = |i: Option<usize>| i.and_then(|i| by.get(i).copied().flatten());
    by.iter()
        .enumerate()
        .map(|(i, own)| {
            let own = (*own)?;
            let uneven = match (near(i.checked_sub(1)), near(i.checked_add(1))) {
                (Some(before), Some(after)) => {
                    let most =
                        (limits::SHARE * before.abs().max(after.abs())).max(rounded_to.min(limits::ROUNDED_MOST));
                    // A hair more, so that what is exactly one rounding apart is not.
                    let most = most * (1.0 + limits::ON_GRID);
                    let (a, b) = (own - before, own - after);
                    a.abs() > most && b.abs() > most && (a > 0.0) == (b > 0.0)
                }
                _ => false,
            };
            Some(Step { by: own, uneven })
        })
        .collect()
}

/// The unit of the first length that was typed in a row.
pub fn length_unit(row: &Row) -> Option<Unit> {
    row.cells.iter().find_map(|c| number_typed(&c.1)?.1.filter(|u| u.is_length()))
}

/// What the lengths that were typed in a row are rounded to, mm: the coarsest of the usual ones that all of them keep. Zero
/// where none was typed, or they keep none.
pub fn rounded_to(row: &Row) -> f64 {
    let typed: Vec<f64> = row
        .cells
        .iter()
        .filter_map(|c| match number_typed(&c.1)? {
            (value, Some(unit)) if unit.is_length() => Some(value * unit.inside().0 / unit.inside().1),
            _ => None,
        })
        .collect();
    let keeps = |grid: f64| {
        typed.iter().all(|v| {
            let times = v / grid;
            (times - times.round()).abs() < limits::ON_GRID
        })
    };
    if typed.is_empty() { 0.0 } else { limits::ROUNDED.into_iter().find(|g| keeps(*g)).unwrap_or(0.0) }
}

/// The steps of a row at each of its places, in the order of [`Chart::keys`]; along its first axis, other labels held.
pub fn row_steps(chart: &Chart, row: &Row, number: &dyn Fn(&str) -> Option<f64>) -> Vec<Option<Step>> {
    let keys = chart.keys(&row.by);
    let along = row.by.first().map_or(0, |axis: &Axis| chart.labels(*axis).len());
    let beside = keys.len().checked_div(along).unwrap_or(0);
    let mut out = vec![None; keys.len()];
    let rounded = rounded_to(row);
    for k in 0..beside {
        let numbers: Vec<Option<f64>> = (0..along).map(|i| number(&keys[i * beside + k])).collect();
        for (i, step) in steps(&numbers, rounded).into_iter().enumerate() {
            out[i * beside + k] = step;
        }
    }
    out
}
