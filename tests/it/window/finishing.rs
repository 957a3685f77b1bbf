//! Allowances, cuts, notches and rolling in the window, judged by the saved file.

use egui::{Key, Modifiers};

use super::stage::Stage;

const CTRL: Modifiers = Modifiers { alt: false, ctrl: true, shift: false, mac_cmd: false, command: true };

#[test]
fn an_edge_gets_an_allowance_or_a_hem_and_loses_it_again() {
    let mut stage = Stage::on("bodice-sleeve.ron");
    let start = stage.text();
    stage.find_and_do("front.shoulder");
    stage.click("Own allowance");
    assert!(stage.saved().contains("allowances: [(edge: \"shoulder\", width: \"1 cm\")]"), "{}", stage.text());
    stage.write("allowance of shoulder of piece front", "1,5 cm");
    assert!(stage.saved().contains("(edge: \"shoulder\", width: \"1.5 cm\")"));
    stage.click("A further width");
    assert_eq!(stage.saved().matches("edge: \"shoulder\"").count(), 2);
    stage.press(Key::Escape);
    for _ in 0..3 {
        stage.key(CTRL, Key::Z);
    }
    assert_eq!(stage.saved(), start);
    stage.find_and_do("sleeve.wrist");
    stage.click("Hem, turned twice");
    assert!(stage.saved().contains("(edge: \"wrist\", width: \"3 cm\", turns: 2)"));
    stage.click("No hem at wrist");
    assert_eq!(stage.saved(), start);
}

#[test]
fn a_piece_is_told_how_it_is_cut() {
    let mut stage = Stage::on("bodice-finished.ron");
    let start = stage.text();
    // From an edge of the piece to the piece itself: Escape goes outwards.
    stage.find_and_do("sleeve");
    if stage.find("Cut it from another cloth too").is_none() {
        stage.find_and_do("piece sleeve");
    }
    assert!(stage.says("cut 2 (1 + 1 mirrored) from main"), "{}", stage.all());
    stage.click("cut 4 of sleeve");
    assert!(stage.says("cut 4 (2 + 2 mirrored) from main"), "{}", stage.all());
    assert!(stage.saved().contains("count: 4"));
    stage.key(CTRL, Key::Z);
    stage.click("Cut it from another cloth too");
    stage.click("Take out this cut 2");
    assert_eq!(stage.saved(), start);
}

#[test]
fn a_piece_is_lengthened_at_its_line() {
    let mut stage = Stage::on("skirt-finished.ron");
    let start = stage.text();
    stage.find_and_do("piece back");
    stage.click("Lengthen or shorten at lengthen_here");
    assert!(stage.saved().contains("(name: \"back_lengthen_here_by\", is: \"0 cm\")"), "{}", stage.text());
    stage.write("longer at lengthen_here by of value back_lengthen_here_by", "-2 in");
    assert!(stage.saved().contains("(name: \"back_lengthen_here_by\", is: \"-2 in\")"));
    stage.press(Key::Escape);
    for _ in 0..2 {
        stage.key(CTRL, Key::Z);
    }
    assert_eq!(stage.saved(), start);
}

#[test]
fn a_seam_gets_notches_an_order_and_a_side_to_press_to() {
    let mut stage = Stage::on("bodice-sleeve.ron");
    stage.find_and_do("sleeve_seam");
    stage.click("Add a notch");
    assert!(stage.saved().contains("(name: \"n1\", at: \"1/2\", strokes: 1)"), "{}", stage.text());
    stage.write("notch n1 at of seam sleeve_seam", "12 cm");
    assert!(stage.saved().contains("(name: \"n1\", at: \"12 cm\", strokes: 1)"));
    stage.click("pressed to side one");
    stage.write("sewn as number, or after of seam sleeve_seam", "after side");
    stage.write("allowance of both sides of seam sleeve_seam", "12 mm");
    let saved = stage.saved();
    assert!(
        saved.contains("order: \"after side\"")
            && saved.contains("pressed: to_one")
            && saved.contains("allowance: \"12 mm\""),
        "{saved}"
    );
    // A notch beyond the seam is told at once.
    stage.write("notch n1 at of seam sleeve_seam", "90 cm");
    assert!(stage.says("it would lie beyond the end"), "{}", stage.all());
    stage.click("Take out notch n1");
    assert!(!stage.saved().contains("n1"));
}

#[test]
fn a_seam_is_rolled_from_notch_to_notch() {
    let mut stage = Stage::on("bodice-finished.ron");
    let start = stage.text();
    stage.find_and_do("back_armhole");
    stage.click("Roll it");
    assert!(stage.says("size 88: rolled to 0 cm of 21.71 cm (side one) and 20.51 cm (side two)"), "{}", stage.all());
    assert!(stage.find("sleeve, side one, rolled").is_some() && stage.find("back, side two, rolled").is_some());
    stage.click("To the next notch");
    assert!(stage.says("rolled to 11.1 cm"), "{}", stage.all());
    assert!(stage.says("back: 11.1 cm and 10.49 cm, 6.1 mm apart"), "{}", stage.all());
    stage.click("To the end");
    assert!(stage.says("rolled to 21.71 cm") && stage.says("at the end side one is 12.0 mm longer"), "{}", stage.all());
    stage.click("To the start");
    assert!(stage.says("rolled to 0 cm"));
    // In another size other numbers; the key takes the pieces back.
    stage.press(Key::ArrowRight);
    assert!(stage.says("size 92: rolled to 0 cm"), "{}", stage.all());
    stage.key(CTRL, Key::R);
    assert!(stage.find("piece front, size 92").is_some(), "{}", stage.all());
    // A neckline of several pieces is one picture.
    stage.find_and_do("waist_band");
    stage.key(CTRL, Key::R);
    assert!(stage.says("cannot be rolled"), "{}", stage.all());
    stage.key(CTRL, Key::R);
    assert_eq!(stage.text(), start);
}
