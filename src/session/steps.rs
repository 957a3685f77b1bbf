//! Steps of a chart's row from size to size, and which of them are uneven.
//!
//! The rule is common practice, no source: charts keep a step over several sizes and change it once or twice, so a step that is
//! larger, or smaller, than both its neighbours is worth a look. What the row is rounded to is no fault of a step.

use crate::base::Unit;
use crate::base::tolerance::steps as limits;
use crate::document::{Axis, Chart, Row};

use super::literal::number_typed;

/// The step to a size from the one before.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Step {
    /// By how much, in what the numbers are in.
    pub by: f64,
    /// Whether it differs from both its neighbours by more than it should.
    pub uneven: bool,
}

/// The rule in words.
pub const STEP_RULE: &str = "A step is marked ≠ where it is larger, or smaller, than the step before it and the step after it, by \
    more than a tenth of the larger of the two and by more than the row is rounded to (a quarter inch at most). Common practice, \
    no source.";

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
    let beside = if along == 0 { 0 } else { keys.len() / along };
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::Cell;

    fn uneven(numbers: &[f64], rounded: f64) -> Vec<usize> {
        let numbers: Vec<Option<f64>> = numbers.iter().copied().map(Some).collect();
        let steps = steps(&numbers, rounded);
        steps.iter().enumerate().filter(|(_, s)| s.is_some_and(|s| s.uneven)).map(|(i, _)| i).collect()
    }

    #[test]
    fn a_step_unlike_both_neighbours_is_uneven_and_a_change_of_step_is_not() {
        assert_eq!(uneven(&[840.0, 880.0, 920.0, 970.0, 1010.0, 1050.0], 5.0), [3]);
        // 4 cm up to a size, 6 cm beyond it: as charts do.
        assert_eq!(uneven(&[840.0, 880.0, 920.0, 980.0, 1040.0], 5.0), [0usize; 0]);
        // A typing mistake makes two: too far there and too near back.
        assert_eq!(uneven(&[840.0, 880.0, 920.0, 990.0, 1000.0, 1040.0, 1080.0], 5.0), [3, 4]);
        // Ends have one neighbour and are not judged.
        assert_eq!(uneven(&[700.0, 880.0, 920.0, 960.0, 1200.0], 5.0), [0usize; 0]);
    }

    #[test]
    fn rounding_is_no_uneven_step() {
        // Steps of 7.5 mm in a row of half centimetres: 5, 10, 5, 10.
        assert_eq!(uneven(&[360.0, 365.0, 375.0, 380.0, 390.0, 395.0], 5.0), [0usize; 0]);
        // The same numbers in a row of millimetres are odd.
        assert_eq!(uneven(&[360.0, 365.0, 375.0, 380.0, 390.0, 395.0], 1.0), [2, 3, 4]);
    }

    #[test]
    fn the_first_and_what_stands_behind_a_gap_have_no_step() {
        let found = steps(&[Some(1.0), Some(2.0), None, Some(4.0)], 0.0);
        assert_eq!(found.iter().map(Option::is_some).collect::<Vec<_>>(), [false, true, false, false]);
    }

    #[test]
    fn what_a_row_is_rounded_to_is_read_from_what_was_typed() {
        let row = |texts: &[&str]| Row {
            cells: texts.iter().map(|t| Cell(String::new(), (*t).to_owned())).collect(),
            ..Row::default()
        };
        assert_eq!(rounded_to(&row(&["84 cm", "88.5 cm"])), 5.0);
        assert_eq!(rounded_to(&row(&["84 cm", "88.3 cm"])), 1.0);
        assert_eq!(rounded_to(&row(&["33 1/8 in", "34 in"])), 3.175);
        assert_eq!(rounded_to(&row(&["bust / 2"])), 0.0);
    }

    #[test]
    fn steps_go_along_the_first_axis_with_the_others_held() {
        let labels = |l: &[&str]| l.iter().map(|s| (*s).to_owned()).collect::<Vec<_>>();
        let chart = Chart { girth: labels(&["84", "88", "92"]), cup: labels(&["A", "B"]), ..Chart::default() };
        let row = Row { by: vec![Axis::Girth, Axis::Cup], ..Row::default() };
        let number = |key: &str| {
            let (girth, cup) = key.split_once('/')?;
            Some(girth.parse::<f64>().ok()? + if cup == "B" { 100.0 } else { 0.0 })
        };
        let found = row_steps(&chart, &row, &number);
        assert_eq!(
            found.iter().map(|s| s.map(|s| s.by)).collect::<Vec<_>>(),
            [None, None, Some(4.0), Some(4.0), Some(4.0), Some(4.0)]
        );
    }
}
