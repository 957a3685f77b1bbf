//! Derived pieces in the window: made, given steps, steps changed, moved and taken out; the base pulled, and all follow.

use egui::vec2;

use super::stage::Stage;

const BLOCK: &str = r#"(format: "tracewheel draft", version: 0, display: cm, chart: (girth: ["88", "92"], base: "88", rows: [(name: "w", kind: house, by: [girth], cells: [("88", "20 cm"), ("92", "24 cm")])]),
pieces: [(name: "block", points: [(name: "nw", at: "(0 cm, 0 cm)"), (name: "ne", at: "nw.right(w)"), (name: "se", at: "ne.down(30 cm)"), (name: "sw", at: "nw.down(30 cm)")],
  edges: [(name: "top", from: "nw", by: [straight("ne")]), (name: "side", from: "ne", by: [straight("se")]), (name: "hem", from: "se", by: [straight("sw")]), (name: "centre", from: "sw", by: [straight("nw")])],
  darts: [(name: "bust", on: "top", centre: "1/2", intake: "3 cm", tip: "15 cm")])])"#;

fn derived() -> Stage {
    let mut stage = Stage::on_text(BLOCK);
    stage.find_and_do("block");
    stage.find_and_do("Derive a piece");
    stage.answer(&[("name", "panel")], "Derive the piece");
    stage
}

fn mm(stage: &mut Stage, formula: &str, size: &str) -> f64 {
    stage.saved();
    stage.measure(&[formula])[formula][size].as_f64().unwrap_or_else(|| panic!("{formula}: {}", stage.all()))
}

fn near(have: f64, want: f64) {
    assert!((have - want).abs() < 1e-6, "{have}, wanted {want}");
}

#[test]
fn a_piece_is_derived_and_is_the_same_as_its_base() {
    let mut stage = derived();
    assert!(stage.saved().contains("(name: \"panel\", of: \"block\")"), "{}", stage.text());
    for (size, w) in [("88", 200.0), ("92", 240.0)] {
        near(mm(&mut stage, "area(panel)", size), w * 300.0);
    }
    assert!(stage.says("made of block"));
    // Undone, it is gone.
    stage.ctrl(egui::Key::Z);
    assert!(!stage.saved().contains("panel"));
}

#[test]
fn a_piece_can_only_be_made_of_one_that_is_there() {
    let mut stage = Stage::on_text(BLOCK);
    stage.find_and_do("Derive a piece");
    stage.answer(&[("name", "panel"), ("made of", "sleeve")], "Derive the piece");
    assert!(stage.says("there is no piece sleeve to be made of"), "{}", stage.all());
    stage.press(egui::Key::Escape);
    assert!(!stage.saved().contains("panel"));
}

#[test]
fn a_dart_is_moved_by_a_step_with_proposals() {
    let mut stage = derived();
    stage.click("Move a dart");
    let text = stage.saved();
    assert!(
        text.contains("move_dart(close: \"bust\", on: \"side\", at: \"1/2\", stays: \"centre\", makes: \"dart\")"),
        "{text}"
    );
    // A third of the way down instead, and the centre stays.
    stage.write("step_1: at of piece panel", "1/3");
    stage.write("step_1: stays of piece panel", "centre");
    let text = stage.saved();
    assert!(text.contains("at: \"1/3\", stays: \"centre\""), "{text}");
    near(mm(&mut stage, "panel.nw.x", "88"), 0.0);
    near(mm(&mut stage, "length(panel.top)", "88"), 170.0);
    assert_eq!(stage.proof().1["counts"]["error"], 0, "{}", stage.proof().1);
}

#[test]
fn what_is_wrong_in_a_step_is_told_where_it_stands() {
    let mut stage = derived();
    stage.click("Move a dart");
    stage.write("step_1: on of piece panel", "hemm");
    assert!(stage.says("the piece has no edge, corner or dart hemm before this step"), "{}", stage.all());
    stage.write("step_1: on of piece panel", "side");
    assert!(!stage.says("hemm before this step"));
}

#[test]
fn steps_change_places_and_go() {
    let mut stage = derived();
    stage.click("Move an edge");
    stage.click("Turn over");
    let order = |text: &str| (text.find("move_edge").unwrap(), text.find("turn_over").unwrap());
    let (a, b) = order(&stage.saved());
    assert!(a < b);
    stage.click("Later step step_1");
    let (a, b) = order(&stage.saved());
    assert!(b < a);
    near(mm(&mut stage, "area(panel)", "88"), 190.0 * 300.0);
    stage.click("Take out step step_1");
    assert!(!stage.saved().contains("move_edge"));
    near(mm(&mut stage, "area(panel)", "88"), 200.0 * 300.0);
    near(mm(&mut stage, "panel.ne.x", "88"), -200.0);
}

#[test]
fn names_follow_on_the_card() {
    let mut stage = derived();
    stage.click("Cut in two");
    stage.find_and_do("Add a value");
    stage.answer(&[("name", "long"), ("formula", "length(panel.cut) + length(panel.hem)")], "Add the value");
    // A field that gives a name renames; a half typed one that is taken already is given up.
    stage.find_and_do("panel");
    stage.write("step_1: makes of piece panel", "slope");
    assert!(stage.saved().contains("length(panel.slope)"), "{}", stage.text());
    stage.write("step_1: makes of piece panel", "hem");
    stage.press(egui::Key::Tab);
    assert!(stage.says("two things in panel, step step_1"), "{}", stage.all());
    assert!(stage.saved().contains("length(panel.slope)"), "{}", stage.text());
    // A name that passes is renamed where it comes from, and the card shows it.
    stage.find_and_do("block.hem");
    stage.find_and_do("Rename");
    stage.answer(&[("name", "low")], "Rename it");
    assert!(stage.saved().contains("length(panel.low)") && stage.text().contains("to: \"low\""), "{}", stage.text());
    stage.find_and_do("panel");
    assert_eq!(stage.field("step_1: to of piece panel").value, "low");
    // What a step makes is not taken away unasked.
    let before = stage.text();
    stage.click("Take out step step_1");
    assert!(stage.says("What it makes is used by value long."), "{}", stage.all());
    stage.click("Cancel");
    assert_eq!(stage.saved(), before);
    stage.click("Take out step step_1");
    stage.click("Take it out, and leave what uses it broken");
    assert!(!stage.saved().contains("does: cut("), "{}", stage.text());
}

#[test]
fn choices_of_a_step_are_switched() {
    let mut stage = derived();
    stage.click("Slash and spread");
    assert!(stage.saved().contains("from: \"hem\""), "{}", stage.text());
    stage.click("In parallel in step step_1");
    assert!(stage.saved().contains("parallel: true"));
    stage.click("A curve across in step step_1");
    assert!(stage.saved().contains("opening: curve"));
    let mut stage = derived();
    stage.click("Add a strip");
    stage.click("Mirrored ends in step step_1");
    assert!(stage.saved().contains("ends: mirrored"));
}

#[test]
fn the_block_is_pulled_and_the_panel_follows() {
    let mut stage = derived();
    stage.click("Cut in two");
    let before = mm(&mut stage, "panel.cut_end.y", "92");
    stage.find_and_do("block");
    let text = stage.saved();
    stage.pull("block.se", vec2(0.0, 20.0));
    assert_ne!(stage.saved(), text);
    let after = mm(&mut stage, "panel.cut_end.y", "92");
    assert!((after - before).abs() > 1.0, "{before} {after}");
    // A point of the panel itself follows from the block.
    stage.find_and_do("panel");
    stage.pull("panel.nw", vec2(10.0, 10.0));
    assert!(stage.says("it follows from block and the steps of panel; pull it there"), "{}", stage.all());
}

/// A line of which nothing is left on a panel is no hole in its outline, also after further steps.
#[test]
fn nothing_is_open_in_a_garment_of_panels() {
    let stage = Stage::on("panel-top.ron");
    assert!(stage.find("piece back_hem_facing, size 88").is_some(), "{}", stage.all());
    assert!(!stage.says("outline open"), "{}", stage.all());
}
