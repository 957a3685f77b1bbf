//! Views in the window: chosen beside the sizes, made, given pieces and values; what is not in a view is not on the table.

use egui::Key;

use super::stage::Stage;

fn near(have: f64, want: f64) {
    assert!((have - want).abs() < 1e-6, "{have}, wanted {want}");
}

#[test]
fn the_chosen_view_is_seen_and_the_others_are_not() {
    let mut stage = Stage::on("top-in-views.ron");
    assert!(stage.seen("see view long_sleeve").chosen && !stage.seen("see view sleeveless").chosen);
    assert_eq!(stage.pieces().len(), 3, "{}", stage.all());
    let long = stage.rect("piece front, size 92");
    stage.click("see view sleeveless");
    assert!(stage.seen("see view sleeveless").chosen);
    assert_eq!(stage.pieces().len(), 2, "{}", stage.all());
    assert!(stage.find("piece sleeve, size 92").is_none());
    // Shorter, in its place.
    let short = stage.rect("piece front, size 92");
    assert!(short.height() < long.height() * 0.95, "{short:?} {long:?}");
    // The card tells the numbers of this view.
    stage.click("unfold Values");
    stage.click("value body_length");
    assert!(stage.says("54 cm"), "{}", stage.all());
    assert_eq!(stage.field("in view sleeveless of view sleeveless").value, "54 cm");
    stage.click("see view long_sleeve");
    assert_eq!(stage.pieces().len(), 3);
    assert_eq!(stage.rect("piece front, size 92"), long);
    // A draft without views has no choice.
    assert!(!Stage::on("bodice-sleeve.ron").names().iter().any(|n| n.starts_with("see view")));
}

#[test]
fn a_view_is_made_on_its_card() {
    let mut stage = Stage::on("bodice-sleeve.ron");
    let start = stage.text();
    stage.find_and_do("Add a view");
    stage.answer(&[("name", "vest")], "Add the view");
    stage.click("sleeve in view vest");
    assert!(stage.saved().contains(r#"views: [(name: "vest", pieces: ["back", "front"])]"#), "{}", stage.text());
    assert_eq!(stage.pieces().len(), 2, "{}", stage.all());
    stage.click("Another value …");
    stage.click("bust_ease is other");
    assert!(stage.saved().contains(r#"values: [("bust_ease", "8 cm")]"#), "{}", stage.text());
    stage.write("bust_ease of view vest", "4 cm");
    stage.saved();
    let found = stage.measure(&["bust_ease"]);
    near(found["bust_ease"]["vest//88"].as_f64().unwrap(), 40.0);
    // What is wrong is told under the field.
    stage.write("bust_ease of view vest", "4 deg");
    assert!(stage.says("this is an angle; a length is needed here"), "{}", stage.all());
    stage.write("bust_ease of view vest", "3 cm");
    assert!(!stage.says("this is an angle"));
    stage.click("bust_ease as elsewhere");
    assert!(stage.saved().contains(r#"views: [(name: "vest", pieces: ["back", "front"])]"#), "{}", stage.text());
    // The last two pieces cannot both go.
    stage.click("back in view vest");
    stage.click("front in view vest");
    assert!(stage.says("front is the only piece of the view vest"), "{}", stage.all());
    // All of it undone, step by step.
    let mut left = 12;
    while stage.saved() != start && left > 0 {
        stage.ctrl(Key::Z);
        left -= 1;
    }
    assert_eq!(stage.saved(), start);
    assert_eq!(stage.pieces().len(), 3);
}

#[test]
fn a_finding_of_one_view_leads_there() {
    let mut stage = Stage::on("top-in-views.ron");
    stage.click("view sleeveless");
    stage.write("body_length of view sleeveless", "1 cm / (2 cm - 20 mm)");
    assert!(stage.seen("see view long_sleeve").chosen);
    assert_eq!(stage.pieces().len(), 3, "{}", stage.all());
    stage.press(Key::F8);
    assert!(stage.seen("see view sleeveless").chosen, "{}", stage.all());
}
