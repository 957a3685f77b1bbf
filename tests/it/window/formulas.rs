//! Typing formulas: what is offered, how it is taken, and names taken from the sheet.

use egui::{Key, Modifiers};

use super::stage::Stage;

const CTRL: Modifiers = Modifiers { alt: false, ctrl: true, shift: false, mac_cmd: false, command: true };

/// The block with the point `tip` of the front on its card, its field empty and in the hand.
fn typing() -> Stage {
    let mut stage = Stage::on("bodice-sleeve.ron");
    stage.click("piece front");
    stage.click("point front.tip");
    stage.write("place of point front.tip", "");
    stage
}

fn formula(stage: &mut Stage) -> String {
    let text = stage.saved();
    let front = text.split("name: \"front\"").nth(1).unwrap();
    front.split("(name: \"tip\", at: \"").nth(1).unwrap().split('"').next().unwrap().to_owned()
}

#[test]
fn an_offer_is_taken_with_the_keys() {
    let mut stage = typing();
    stage.write("place of point front.tip", "underar");
    assert!(stage.says("offer underarm: a point"), "{}", stage.all());
    stage.press(Key::ArrowDown);
    assert!(stage.told.iter().any(|t| t.name.starts_with("offer underarm") && t.chosen), "{}", stage.all());
    stage.press(Key::Enter);
    assert_eq!(stage.field("place of point front.tip").value, "underarm");
    stage.type_text(".u");
    assert!(stage.says("offer up(by)"), "{}", stage.all());
    stage.press(Key::ArrowDown);
    stage.press(Key::Enter);
    stage.type_text("21 cm)");
    stage.press(Key::Enter);
    assert_eq!(formula(&mut stage), "underarm.up(21 cm)");
}

#[test]
fn enter_leaves_the_field_while_nothing_is_chosen_in_the_list() {
    let mut stage = typing();
    stage.type_text("underarm.up(bus");
    assert!(stage.says("offer bust: a length, 88 cm"), "{}", stage.all());
    stage.press(Key::Enter);
    assert!(!stage.says("offer "), "{}", stage.all());
    assert_eq!(formula(&mut stage), "underarm.up(bus", "nothing is taken unasked");
    stage.write("place of point front.tip", "underarm.up(bus");
    stage.type_text("t / 4)");
    stage.press(Key::Enter);
    assert!(!stage.says("offer "), "{}", stage.all());
    assert_eq!(formula(&mut stage), "underarm.up(bust / 4)");
}

#[test]
fn an_offer_is_taken_by_a_click() {
    let mut stage = typing();
    stage.type_text("underarm.up(shoul");
    let name =
        stage.told.iter().find(|t| t.name.starts_with("offer ") && t.name.contains("shoulder")).unwrap().name.clone();
    stage.click(&name);
    stage.type_text(")");
    stage.press(Key::Enter);
    let made = formula(&mut stage);
    assert!(made.starts_with("underarm.up(") && made.contains("shoulder"), "{made}");
    // The keys of the list do not go astray: the field was left, the next key is the window's.
    stage.press(Key::ArrowRight);
    assert!(stage.seen("size 92").chosen, "{}", stage.all());
}

#[test]
fn pointing_at_the_sheet_puts_a_name_in_where_one_may_stand() {
    let mut stage = Stage::on("bodice-sleeve.ron");
    stage.click("piece front");
    stage.click("point front.tip");
    stage.write("place of point front.tip", "");
    let pitch = stage.rect("front.pitch").center();
    stage.point(pitch);
    stage.rest();
    stage.click_at(pitch);
    assert_eq!(stage.field("place of point front.tip").value, "pitch", "{}", stage.all());
    assert_eq!(stage.focus.as_deref(), Some("place of point front.tip"));
    stage.type_text(".up(gap(");
    stage.click_at(pitch);
    assert_eq!(stage.field("place of point front.tip").value, "pitch.up(gap(pitch");
    stage.type_text(", underarm))");
    stage.press(Key::Enter);
    assert_eq!(formula(&mut stage), "pitch.up(gap(pitch, underarm))");
    // Behind something whole a click is a click: it chooses the point.
    stage.click("point front.tip");
    stage.write("place of point front.tip", "underarm.up(21 cm)");
    let pitch = stage.rect("front.pitch").center();
    stage.click_at(pitch);
    assert!(stage.find("place of point front.pitch").is_some(), "{}", stage.all());
}

#[test]
fn control_space_asks_what_may_stand_there() {
    let mut stage = typing();
    assert!(!stage.says("offer "), "{}", stage.all());
    stage.key(CTRL, Key::Space);
    assert!(stage.told.iter().filter(|t| t.name.starts_with("offer ")).count() > 5, "{}", stage.all());
    // The first Escape closes the list and keeps what was typed; the next gives it up.
    stage.press(Key::Escape);
    assert!(!stage.says("offer ") && stage.says("not saved"), "{}", stage.all());
    stage.press(Key::Escape);
    assert!(!stage.says("offer ") && !stage.says("not saved"), "{}", stage.all());
}

#[test]
fn dialogs_offer_what_may_follow_too() {
    let mut stage = Stage::on("bodice-sleeve.ron");
    stage.click("piece front");
    stage.ctrl(Key::P);
    // Letters for which a formula would have offers.
    stage.write("name", "bus");
    assert!(!stage.says("offer "), "a name is no formula: {}", stage.all());
    stage.write("name", "dart_end");
    // The frame's own names, as the point will stand in it.
    stage.write("place", "underar");
    assert!(stage.says("offer underarm: a point"), "{}", stage.all());
    stage.press(Key::ArrowDown);
    stage.press(Key::Enter);
    assert_eq!(stage.field("place").value, "underarm");
    stage.type_text(".u");
    let offer = stage.told.iter().find(|t| t.name.starts_with("offer up(by)")).unwrap().name.clone();
    stage.click(&offer);
    stage.type_text("3 cm)");
    stage.press(Key::Enter);
    assert!(stage.saved().contains("(name: \"dart_end\", at: \"underarm.up(3 cm)\")"), "{}", stage.text());
    // Outside of pieces their names need the piece in front.
    stage.click("Add a value");
    stage.write("name", "far");
    stage.write("formula", "gap(front.unde");
    assert!(stage.says("offer front.underarm: a point"), "{}", stage.all());
}
