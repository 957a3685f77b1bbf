//! Drawing by hand: every gesture of the pencil, judged by what is in the saved file.

use egui::{Key, Modifiers, Pos2, pos2, vec2};

use super::stage::Stage;

/// A square panel of 20 cm in two sizes.
const PANEL: &str = "(format: \"tracewheel draft\", version: 0, title: \"Panel\", chart: (girth: [\"S\", \"M\"], base: \"S\", rows: [(name: \"bust\", by: [girth], cells: [(\"S\", \"80 cm\"), (\"M\", \"88 cm\")])]),
    pieces: [(name: \"panel\", points: [(name: \"p\", at: \"(0 cm, 0 cm)\"), (name: \"q\", at: \"p.right(bust / 4)\"), (name: \"r\", at: \"q.down(20 cm)\"), (name: \"s\", at: \"p.down(20 cm)\")],
    edges: [(name: \"top\", from: \"p\", by: [straight(\"q\")]), (name: \"side\", from: \"q\", by: [straight(\"r\")]), (name: \"hem\", from: \"r\", by: [straight(\"s\")])])])";

/// The panel with the pencil in the hand; where its corner lies on the screen, and px per mm.
fn panel() -> (Stage, Pos2, f32) {
    let mut stage = Stage::on_text(PANEL);
    stage.click("piece panel");
    stage.press(Key::D);
    let corner = stage.rect("panel.p").center();
    let scale = (stage.rect("panel.q").center().x - corner.x) / 200.0;
    (stage, corner, scale)
}

/// A new point's formula in the saved file.
fn written(stage: &mut Stage, point: &str) -> String {
    let text = stage.saved();
    let start = format!("(name: \"{point}\", at: \"");
    let at = text.find(&start).unwrap_or_else(|| panic!("no point {point}: {text}"));
    text[at + start.len()..].split('"').next().unwrap().to_owned()
}

#[test]
fn a_click_writes_what_was_read_and_the_next_measures_from_it() {
    let (mut stage, corner, scale) = panel();
    let at = |x: f32, y: f32| corner + vec2(x, y) * scale;
    stage.click_at(at(100.0, 1.0));
    assert_eq!(written(&mut stage, "a"), "top.at(1/2)");
    assert!(stage.says("measures from a"), "{}", stage.all());
    stage.click_at(at(100.5, 83.0));
    let second = written(&mut stage, "b");
    assert!(second.starts_with("a.down(8.") && second.ends_with("cm)"), "{second}");
    assert!(stage.says("measures from b, before it a"), "{}", stage.all());
    let told = stage.measure(&["gap(panel.p, panel.a)", "panel.b.x"]);
    assert!((told["gap(panel.p, panel.a)"]["M"].as_f64().unwrap() - 110.0).abs() < 1e-9, "{told}");
    // Undo takes one point, not both.
    stage.ctrl(Key::Z);
    assert!(stage.says("undone: draw panel.b") && !stage.saved().contains("name: \"b\""));
}

#[test]
fn space_picks_the_next_reading_and_back() {
    let (mut stage, corner, scale) = panel();
    stage.click_at(corner);
    // On an edge there are more than two: the next, the one after it, back by one, back by one.
    stage.point(corner + vec2(80.0, 1.0) * scale);
    stage.rest();
    let read = |stage: &Stage| {
        let told = stage.told.iter().find(|t| t.name.starts_with("pencil would write ")).map(|t| t.name.clone());
        told.unwrap_or_else(|| panic!("{}", stage.all()))
    };
    let mut seen = vec![read(&stage)];
    for _ in 0..2 {
        stage.press(Key::Space);
        assert!(!seen.contains(&read(&stage)), "{seen:?}");
        seen.push(read(&stage));
    }
    for before in [&seen[1], &seen[0]] {
        stage.key(Modifiers::SHIFT, Key::Space);
        assert_eq!(read(&stage), *before);
    }
    let at = corner + vec2(60.0, 90.0) * scale;
    stage.point(at);
    stage.rest();
    assert!(stage.says("pencil would write measured from p: p.right(6"), "{}", stage.all());
    stage.press(Key::Space);
    assert!(stage.says("a direction from p, clockwise from the right: p.polar("), "{}", stage.all());
    stage.key(Modifiers::SHIFT, Key::Space);
    assert!(stage.says("pencil would write measured from p: p.right(6"), "{}", stage.all());
    stage.press(Key::Space);
    stage.click_at(at);
    assert!(written(&mut stage, "a").starts_with("p.polar(56"), "{}", stage.text());
}

#[test]
fn a_typed_number_takes_over_one_after_the_other() {
    let (mut stage, corner, scale) = panel();
    stage.click_at(corner);
    stage.point(corner + vec2(60.0, 90.0) * scale);
    stage.rest();
    stage.type_text("7");
    assert!(stage.says("typed 7: p.right(7 cm).down(9"), "{}", stage.all());
    // The pointer may go on: what is typed stays, and where it is typed.
    stage.point(corner + vec2(10.0, 20.0) * scale);
    stage.rest();
    stage.type_text(".5");
    assert!(stage.says("typed 7.5: p.right(7.5 cm).down(9"), "{}", stage.all());
    stage.press(Key::Enter);
    stage.type_text("1 1/2 in");
    stage.press(Key::Backspace);
    stage.press(Key::Backspace);
    stage.type_text("cm");
    stage.press(Key::Enter);
    assert_eq!(written(&mut stage, "a"), "p.right(7.5 cm).down(1 1/2 cm)");
    // A formula may stand there too.
    stage.point(corner + vec2(60.0, 150.0) * scale);
    stage.rest();
    stage.type_text("=bust / 20");
    stage.press(Key::Enter);
    stage.press(Key::Enter);
    assert!(written(&mut stage, "b").starts_with("a.left(bust / 20).down("), "{}", stage.text());
}

#[test]
fn a_wrong_number_is_told_and_nothing_is_written() {
    let (mut stage, corner, scale) = panel();
    stage.click_at(corner);
    stage.point(corner + vec2(60.0, 90.0) * scale);
    stage.rest();
    stage.type_text("=bst / 4");
    assert!(stage.says("did you mean `bust`?"), "{}", stage.all());
    stage.press(Key::Enter);
    assert!(!stage.says("not saved"), "{}", stage.all());
    // Escape takes back what was typed, then the points to measure from, then the pencil.
    stage.press(Key::Escape);
    assert!(!stage.says("typed") && stage.says("measures from p"), "{}", stage.all());
    stage.press(Key::Escape);
    assert!(stage.says("click a point to measure from it"), "{}", stage.all());
    stage.press(Key::Escape);
    assert!(!stage.says("Pencil in panel"), "{}", stage.all());
}

#[test]
fn a_modifier_switches_snapping_off() {
    let (mut stage, corner, scale) = panel();
    stage.modifiers_held(Modifiers::COMMAND | Modifiers::CTRL);
    stage.click_at(corner + vec2(100.0, 1.0) * scale);
    stage.modifiers_held(Modifiers::NONE);
    let formula = written(&mut stage, "a");
    assert!(formula.starts_with("(10 cm, 0"), "{formula}");
}

#[test]
fn dragging_from_point_to_point_closes_the_outline() {
    let (mut stage, corner, scale) = panel();
    let foot = stage.rect("panel.s").center();
    stage.pull_from(foot, corner - foot);
    stage.button(corner, false);
    stage.rest();
    assert!(stage.saved().contains("(name: \"edge_1\", from: \"s\", by: [straight(\"p\")])"), "{}", stage.text());
    let (exit, proof) = stage.proof();
    assert_eq!((exit, &proof["counts"]["error"]), (0, &serde_json::json!(0)), "{proof:#}");
    // From a new point on the top to a new one on the hem: a line inside, with both ends tied to their edges.
    let (from, to) = (corner + vec2(50.0, 0.0) * scale, corner + vec2(100.0, 200.0) * scale);
    stage.pull_from(from, to - from);
    stage.button(to, false);
    stage.rest();
    let text = stage.saved();
    assert!(text.contains("(name: \"line_1\", from: \"a\", by: [straight(\"b\")])"), "{text}");
    assert_eq!(written(&mut stage, "a"), "top.at(1/4)");
    assert_eq!(written(&mut stage, "b"), "hem.at(1/2)");
}

#[test]
fn with_shift_the_line_is_a_curve() {
    let (mut stage, corner, _) = panel();
    let foot = stage.rect("panel.s").center();
    stage.pull_from(foot, corner - foot);
    stage.modifiers_held(Modifiers::SHIFT);
    stage.button(corner, false);
    stage.modifiers_held(Modifiers::NONE);
    stage.rest();
    let wanted = "(name: \"edge_1\", from: \"s\", by: [curve(\"on_way(s, p, 1/3)\", \"on_way(p, s, 1/3)\", \"p\")])";
    assert!(stage.saved().contains(wanted), "{}", stage.text());
}

#[test]
fn joined_clicks_draw_an_outline_from_nothing() {
    let mut stage = Stage::empty();
    stage.click("Add a size");
    stage.answer(&[("label", "M")], "Add the size");
    // Without a piece the pencil begins one.
    stage.find_and_do("Pencil");
    assert!(stage.says("Pencil in piece_1"), "{}", stage.all());
    stage.click("join points");
    assert!(stage.seen("join points").chosen);
    let middle = stage.rect("the pieces in size M").center();
    stage.click_at(middle);
    let origin = stage.rect("piece_1.a").center();
    for (x, y) in [(120.0, 0.0), (120.0, 160.0), (0.0, 160.0)] {
        stage.click_at(origin + vec2(x, y));
    }
    stage.click_at(stage.rect("piece_1.a").center());
    stage.ctrl(Key::S);
    let path = stage.file.clone();
    stage.answer(&[("file", path.to_str().unwrap())], "Save");
    let text = stage.text();
    assert_eq!(text.matches("straight(").count(), 4, "{text}");
    assert!(text.contains("a.right(") && text.contains("b.down(") && text.contains("(a.x, c.y)"), "{text}");
    let (exit, proof) = stage.proof();
    assert_eq!(exit, 0, "{proof:#}");
    let area = stage.measure(&["area(piece_1)", "gap(piece_1.a, piece_1.b) * gap(piece_1.b, piece_1.c)"]);
    assert_eq!(area["area(piece_1)"], area["gap(piece_1.a, piece_1.b) * gap(piece_1.b, piece_1.c)"]);
}

#[test]
fn the_pencil_goes_on_after_a_point_was_renamed_or_taken_back() {
    let (mut stage, corner, scale) = panel();
    stage.click_at(corner + vec2(100.0, 1.0) * scale);
    stage.press(Key::F2);
    stage.answer(&[("name", "mid")], "Rename it");
    assert!(stage.says("measures from mid"), "{}", stage.all());
    stage.click_at(corner + vec2(100.5, 83.0) * scale);
    assert!(written(&mut stage, "a").starts_with("mid.down("), "{}", stage.text());
    stage.ctrl(Key::Z);
    stage.point(corner + vec2(60.0, 90.0) * scale);
    stage.rest();
    assert!(stage.says("measures from mid"), "{}", stage.all());
}

#[test]
fn nothing_is_painted_again_while_the_pencil_rests() {
    let (mut stage, corner, scale) = panel();
    stage.point(corner + vec2(60.0, 90.0) * scale);
    stage.rest();
    stage.frame(vec![]);
    assert!(!stage.repaint, "the pencil keeps the window busy");
    assert!(stage.rect("the pieces in size S").contains(pos2(corner.x, corner.y)));
}
