//! A chart that is larger than the window.

use egui::Key;

use super::chart::{chart, enter};

/// 60 rows in 40 sizes.
fn large() -> String {
    let sizes: Vec<String> = (0..40).map(|i| format!("\"{}\"", 60 + 2 * i)).collect();
    let rows = (0..60).map(|r| {
        let cells = (0..40).map(|i| format!("(\"{}\", \"{} cm\")", 60 + 2 * i, 10 + r + i));
        format!("(name: \"m{r}\", by: [girth], cells: [{}])", cells.collect::<Vec<_>>().join(", "))
    });
    let rows: Vec<String> = rows.collect();
    format!(
        "(format: \"tracewheel draft\", version: 0, chart: (girth: [{}], base: \"60\", rows: [{}]))",
        sizes.join(", "),
        rows.join(", ")
    )
}

#[test]
fn a_large_chart_keeps_names_and_sizes_in_sight_and_keys_reach_every_cell() {
    let mut stage = chart(&large());
    assert!(stage.find("m0 in 60").is_some() && stage.find("m59 in 138").is_none(), "only what is seen is painted");
    let (name, head) = (stage.rect("row m0"), stage.rect("column 60, base"));
    enter(&mut stage, "m0 in 60");
    // One row up and down again, then as far right as it goes.
    (0..45).for_each(|_| stage.press(Key::ArrowRight));
    assert_eq!(stage.focus.as_deref(), Some("m0 in 138"));
    assert_eq!(stage.rect("row m0").left(), name.left(), "the names stay");
    (0..65).for_each(|_| stage.press(Key::ArrowDown));
    assert_eq!(stage.focus.as_deref(), Some("m59 in 138"));
    let last = stage.rect("column 138");
    assert_eq!(last.top(), head.top(), "the sizes stay");
    let cell = stage.field("m59 in 138").rect.unwrap();
    assert!(cell.left() >= last.left() - 4.0 && cell.top() > last.bottom() - 1.0, "{cell:?} {last:?}");
    assert!(stage.find("m0 in 138").is_none());
    stage.type_text("123 cm");
    stage.press(Key::Enter);
    assert!(stage.saved().contains("\"123 cm\""));
    // Rolled away from, the cell that is typed in keeps what is typed.
    stage.type_text("124 cm");
    let at = stage.rect("row m59").center();
    stage.scroll(at, 4_000.0);
    assert!(stage.find("m0 in 138").is_some(), "{}", stage.all());
    assert_eq!(stage.focus.as_deref(), Some("m59 in 138"), "the keyboard is still there");
    stage.click("row m0");
    assert!(stage.saved().contains("\"124 cm\""), "{}", stage.all());
}
