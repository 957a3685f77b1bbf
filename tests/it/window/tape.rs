//! The tape in the window, judged by what the command line measures.

use egui::Key;

use super::stage::Stage;

fn on_block() -> Stage {
    let mut stage = Stage::on("bodice-sleeve.ron");
    stage.press(Key::T);
    assert!(stage.says("Tape: click a point or an edge"), "{}", stage.all());
    stage
}

/// What the tape says in a size, mm.
fn said(stage: &Stage, size: &str) -> f64 {
    let start = format!("tape in size {size}: ");
    let told = stage.told.iter().find(|t| t.name.starts_with(&start)).unwrap_or_else(|| panic!("{}", stage.all()));
    told.name[start.len()..].trim_end_matches(" cm").parse::<f64>().unwrap() * 10.0
}

fn hold(stage: &mut Stage, point: &str) {
    let at = stage.rect(point).center();
    stage.point(at);
    stage.rest();
    stage.click_at(at);
}

#[test]
fn along_an_edge_then_straight_and_around_in_every_size() {
    let mut stage = on_block();
    hold(&mut stage, "front.tip");
    hold(&mut stage, "front.underarm");
    assert!(stage.says("along: length(front.armhole)"), "{}", stage.all());
    let truth = stage.measure(&["length(front.armhole)", "gap(front.tip, front.underarm)"]);
    for size in ["76", "88", "128"] {
        let mm = truth["length(front.armhole)"][size].as_f64().unwrap();
        assert!((said(&stage, size) - mm).abs() <= 0.06, "{size}: {} and {mm}", said(&stage, size));
    }
    // Another way: around the other side, then straight.
    stage.point(egui::pos2(5.0, 5.0));
    stage.rest();
    stage.press(Key::Space);
    assert!(stage.says("along: length(front.side) +"), "{}", stage.all());
    stage.press(Key::Space);
    assert!(stage.says("straight: gap(front.tip, front.underarm)"), "{}", stage.all());
    let mm = truth["gap(front.tip, front.underarm)"]["96"].as_f64().unwrap();
    assert!((said(&stage, "96") - mm).abs() <= 0.06);
    // Backspace lets the last place go, Escape all of them, then the tape.
    stage.press(Key::Backspace);
    assert!(stage.says("Tape from the point tip"), "{}", stage.all());
    stage.press(Key::Escape);
    assert!(stage.says("Tape: click"), "{}", stage.all());
    stage.press(Key::Escape);
    assert!(!stage.says("Tape: "), "{}", stage.all());
}

#[test]
fn what_is_measured_follows_the_draft() {
    let mut stage = on_block();
    hold(&mut stage, "front.tip");
    hold(&mut stage, "front.underarm");
    let before = said(&stage, "88");
    stage.click("unfold Values");
    stage.click("value bust_ease");
    stage.fill("formula of value bust_ease", "12 cm");
    let after = said(&stage, "88");
    stage.saved();
    let mm = stage.measure(&["length(front.armhole)"])["length(front.armhole)"]["88"].as_f64().unwrap();
    assert!(after > before + 3.0 && (after - mm).abs() <= 0.06, "{before} {after} {mm}");
}

#[test]
fn over_two_pieces_and_kept_as_a_value() {
    let mut stage = on_block();
    for point in ["front.tip", "front.underarm", "back.underarm", "back.tip"] {
        hold(&mut stage, point);
    }
    stage.press(Key::Enter);
    stage.answer(&[("name", "armhole_round")], "Add the value");
    let text = stage.saved();
    assert!(text.contains("(name: \"armhole_round\", is: \"length(front.armhole) + length(back.armhole)\")"), "{text}");
    let told = stage.measure(&["armhole_round", "length(front.armhole) + length(back.armhole)"]);
    assert_eq!(told["armhole_round"], told["length(front.armhole) + length(back.armhole)"]);
}

#[test]
fn nothing_held_is_nothing_to_keep() {
    let mut stage = on_block();
    stage.press(Key::Enter);
    assert!(stage.says("Tape: hold it at two places first"), "{}", stage.all());
    assert!(!stage.seen("Keep as a value …").enabled);
    stage.frame(vec![]);
    assert!(!stage.repaint);
}
