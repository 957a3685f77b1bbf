//! Steps of a chart, and which of them are uneven.

use tracewheel::document::{Axis, Cell, Chart, Row};
use tracewheel::session::{rounded_to, row_steps, steps};

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
