//! What is shown and told.

use egui::{Key, Modifiers, vec2};

use super::stage::Stage;

#[test]
fn pieces_are_told_by_name_and_size() {
    let mut stage = Stage::on("bodice-sleeve.ron");
    assert_eq!(stage.pieces(), ["piece back, size 88", "piece front, size 88", "piece sleeve, size 88"]);
    stage.seen("size 88, base");
    stage.click("size 104");
    assert_eq!(stage.pieces()[0], "piece back, size 104");
    stage.click("subject 28249");
    assert_eq!(stage.pieces()[0], "piece back, subject 28249");
}

#[test]
fn left_and_right_go_through_the_sizes_and_stop_at_the_ends() {
    let mut stage = Stage::on("bodice-sleeve.ron");
    stage.press(Key::ArrowRight);
    assert_eq!(stage.pieces()[1], "piece front, size 92");
    (0..30).for_each(|_| stage.press(Key::ArrowLeft));
    assert_eq!(stage.pieces()[1], "piece front, size 76");
    (0..40).for_each(|_| stage.press(Key::ArrowRight));
    assert_eq!(stage.pieces()[1], "piece front, subject 10027");
}

#[test]
fn the_other_sizes_can_be_switched_off_and_a_size_shown_alone() {
    let mut stage = Stage::on("bodice-sleeve.ron");
    assert!(stage.seen("other sizes").chosen);
    stage.click("other sizes");
    assert!(!stage.seen("other sizes").chosen);
    stage.ctrl(Key::B);
    assert!(stage.seen("other sizes").chosen);
    stage.with(Modifiers::COMMAND | Modifiers::CTRL, |s| s.click("size 104"));
    assert!(!stage.seen("other sizes").chosen && stage.seen("size 104").chosen);
    stage.with(Modifiers::COMMAND | Modifiers::CTRL, |s| s.click("size 104"));
    assert!(stage.seen("other sizes").chosen);
}

#[test]
fn scrolling_comes_nearer_dragging_moves_and_see_all_goes_back() {
    let mut stage = Stage::on("bodice-sleeve.ron");
    let before = stage.rect("piece front, size 88");
    let at = before.center();
    stage.scroll(at, 60.0);
    let after = stage.rect("piece front, size 88");
    assert!(after.width() > before.width() * 1.1, "{before:?} {after:?}");
    assert!((after.center().x - at.x).abs() < 3.0, "{before:?} {after:?}");
    stage.ctrl(Key::Num0);
    assert!((stage.rect("piece front, size 88").width() - before.width()).abs() < 0.5);
    // An empty place of the sheet is taken and pulled: everything moves along.
    let empty = before.left_bottom() + vec2(-20.0, 30.0);
    stage.pull_from(empty, vec2(40.0, -10.0));
    stage.button(empty + vec2(40.0, -10.0), false);
    let moved = stage.rect("piece front, size 88");
    assert!((moved.left() - before.left() - 40.0).abs() < 1.5, "{before:?} {moved:?}");
    stage.key(Modifiers::COMMAND | Modifiers::CTRL, Key::Plus);
    assert!(stage.rect("piece front, size 88").width() > moved.width() * 1.1);
    stage.key(Modifiers::COMMAND | Modifiers::CTRL, Key::Minus);
    stage.key(Modifiers::COMMAND | Modifiers::CTRL, Key::Minus);
    assert!(stage.rect("piece front, size 88").width() < moved.width());
    assert!(!stage.says("not saved"), "looking is no change");
}

#[test]
fn what_is_missing_or_not_true_is_told() {
    let mut stage = Stage::on("bodice-sleeve.ron");
    stage.click("unfold Values");
    stage.click("value wrist_w");
    stage.fill("formula of value wrist_w", "wrist + sqrt((100 cm - bust) * 1 cm)");
    stage.click("size 128");
    assert!(stage.says("piece sleeve cannot be drawn in size 128"), "{}", stage.all());
    stage.ctrl(Key::Z);
    assert!(!stage.says("cannot be drawn"));
    stage.click("value cap_height");
    stage.fill("most of value cap_height", "11 cm");
    assert!(stage.says("piece sleeve, size 128, not true"), "{:?}", stage.pieces());
    assert_eq!(stage.pieces()[0], "piece back, size 128");
}

#[test]
fn all_findings_can_be_listed_and_each_leads_to_its_place() {
    let mut stage = Stage::on("bodice-sleeve.ron");
    stage.click("unfold Values");
    for name in ["arm_ease", "bust_ease", "neck_ease"] {
        stage.click(&format!("value {name}"));
        stage.fill(&format!("formula of value {name}"), "1 cm + nowhere");
    }
    let lines = |s: &Stage| s.names().iter().filter(|n| n.starts_with("error: ")).count();
    assert!(stage.says("4 errors"), "{}", stage.all());
    assert_eq!(lines(&stage), 3, "the first few");
    stage.press(Key::F8);
    assert!(stage.find("formula of value bust_ease").is_some(), "the first finding is of the value that comes first");
    stage.press(Key::F8);
    assert!(stage.find("formula of value neck_ease").is_some());
    stage.key(Modifiers::SHIFT, Key::F8);
    assert!(stage.find("formula of value bust_ease").is_some());
    let all = stage.told.iter().filter(|t| t.name.starts_with("note: ")).count();
    stage.ctrl(Key::J);
    assert!(stage.told.iter().filter(|t| t.name.starts_with("note: ")).count() > all);
    let warning = stage.names().iter().find(|n| n.starts_with("warning: back.waist_side")).map(|n| (*n).to_owned());
    if let Some(warning) = warning {
        stage.click(&warning);
        assert!(stage.says("place of point back.waist_side"), "{}", stage.all());
        assert!(stage.seen("size 76").chosen, "the size in which it is worst");
    }
}

#[test]
fn the_window_rests_when_nothing_happens() {
    let mut stage = Stage::on("bodice-sleeve.ron");
    stage.click("piece front");
    (0..30).for_each(|_| stage.frame(vec![]));
    assert!(!stage.repaint, "{:?}", stage.ctx.repaint_causes());
}

#[test]
fn the_finder_finds_parts_commands_and_sizes() {
    let mut stage = Stage::on("bodice-sleeve.ron");
    stage.find_and_do("front.pitch");
    stage.seen("place of point front.pitch");
    stage.find_and_do("116");
    assert!(stage.seen("size 116").chosen);
    stage.find_and_do("cap_ease_back");
    stage.seen("formula of value cap_ease_back");
    stage.ctrl(Key::K);
    stage.type_text("zzz");
    assert!(stage.says("Nothing of that name."));
    stage.press(Key::Escape);
    assert!(stage.find("find").is_none());
}
