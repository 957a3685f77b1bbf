//! The three moments that decide: pulling a curve, adding a size, drafting by hand.

use egui::{Key, Modifiers, vec2};

use super::stage::{Stage, example};

const CTRL_SHIFT: Modifiers = Modifiers { alt: false, ctrl: true, shift: true, mac_cmd: false, command: true };

/// Lines that differ between two texts.
fn changed(a: &str, b: &str) -> Vec<(String, String)> {
    assert_eq!(a.lines().count(), b.lines().count());
    a.lines().zip(b.lines()).filter(|(a, b)| a != b).map(|(a, b)| (a.trim().into(), b.trim().into())).collect()
}

fn sizes(value: &serde_json::Value) -> Vec<(String, f64)> {
    let map = value.as_object().unwrap();
    map.iter().filter_map(|(k, v)| Some((k.clone(), v.as_f64()?))).collect()
}

const HANDLE: &str = "front.armhole, handle arriving at underarm";

#[test]
fn a_curve_is_pulled_and_the_seams_are_true_again_in_all_sizes() {
    let mut stage = Stage::on("bodice-sleeve.ron");
    let before = stage.text();
    let lengths = stage.measure(&["length(front.armhole)", "seam.front_armhole.difference", "cap_height"]);
    stage.click("piece front");
    // What will change is said before anything is taken.
    let at = stage.rect(HANDLE).center();
    stage.point(at);
    stage.rest();
    stage.pull_from(at, vec2(-30.0, 12.0));
    // While the hand moves, the seam is fine in all sizes.
    assert!(stage.says("seam front_armhole: 0.8 cm longer, as meant, fine in all sizes"), "{}", stage.all());
    stage.button(at + vec2(-30.0, 12.0), false);
    stage.rest();
    let after = stage.saved();
    let lines = changed(&before, &after);
    assert_eq!(lines.len(), 1, "{lines:?}");
    assert!(lines[0].0.contains("underarm.polar(heading(underarm, waist_side) + 90°, 0.50 * gap(pitch, underarm))"));
    assert!(lines[0].1.contains("underarm.polar(heading(underarm, waist_side) +"), "{lines:?}");
    // The command line finds the seam true in all twelve sizes, at other lengths and another cap height.
    let now = stage.measure(&["length(front.armhole)", "seam.front_armhole.difference", "cap_height"]);
    let difference = sizes(&now["seam.front_armhole.difference"]);
    assert_eq!(difference.len(), 12);
    for (size, mm) in difference {
        assert!((mm - 8.0).abs() < 1e-6, "{size}: {mm}");
    }
    for name in ["length(front.armhole)", "cap_height"] {
        for ((size, was), (_, is)) in sizes(&lengths[name]).into_iter().zip(sizes(&now[name])) {
            assert!((was - is).abs() > 0.5, "{name} in {size}: {was} and {is}");
        }
    }
}

#[test]
fn escape_gives_the_very_same_draft_back_and_one_pull_is_one_undo() {
    let mut stage = Stage::on("bodice-sleeve.ron");
    let before = stage.text();
    stage.click("piece front");
    let at = stage.rect(HANDLE).center();
    stage.pull_from(at, vec2(-30.0, 12.0));
    assert!(stage.says("not saved"));
    stage.press(Key::Escape);
    assert!(!stage.says("not saved"), "{}", stage.all());
    stage.button(at, false);
    stage.rest();
    assert!(!stage.says("not saved"));
    stage.pull(HANDLE, vec2(-30.0, 12.0));
    let pulled = stage.saved();
    assert_ne!(pulled, before);
    stage.ctrl(Key::Z);
    assert!(stage.says("undone: pull edge front.armhole"));
    assert_eq!(stage.saved(), before);
    stage.key(Modifiers::COMMAND | Modifiers::CTRL | Modifiers::SHIFT, Key::Z);
    assert_eq!(stage.saved(), pulled);
}

#[test]
fn a_pull_goes_to_one_size_or_from_there_up() {
    for (reach, changes) in [
        ("pull this size only", vec!["92"]),
        ("pull from here up", vec!["92", "96", "100", "104", "110", "116", "122", "128"]),
    ] {
        let mut stage = Stage::on("bodice-sleeve.ron");
        let before = stage.measure(&["length(front.armhole)", "seam.front_armhole.difference"]);
        stage.click("size 92");
        stage.click(reach);
        stage.click("piece front");
        stage.pull("front.pitch", vec2(-12.0, 6.0));
        let text = stage.saved();
        assert!(text.contains("0.5 cm + pitch_1") || text.contains("+ pitch_1"), "{reach}");
        let after = stage.measure(&["length(front.armhole)", "seam.front_armhole.difference"]);
        for ((size, was), (_, is)) in
            sizes(&before["length(front.armhole)"]).into_iter().zip(sizes(&after["length(front.armhole)"]))
        {
            assert_eq!((was - is).abs() > 1e-6, changes.contains(&size.as_str()), "{reach} {size}: {was} {is}");
        }
        for (size, mm) in sizes(&after["seam.front_armhole.difference"]) {
            assert!((mm - 8.0).abs() < 1e-6, "{size}: {mm}");
        }
        // Pulling again changes the same house row.
        let rows = text.matches("kind: house").count();
        stage.pull("front.pitch", vec2(-5.0, 6.0));
        assert_eq!(stage.saved().matches("kind: house").count(), rows);
    }
}

#[test]
fn a_size_is_added_between_two_and_its_seams_are_true() {
    let mut stage = Stage::on("bodice-sleeve.ron");
    let before = stage.measure(&["length(front.armhole)"]);
    stage.click("Add a size");
    stage.answer(&[("label", "86")], "Add the size");
    assert!(stage.says("size 86 was added; proposed, to be confirmed: bust, waist"), "{}", stage.all());
    assert!(stage.find("size 86").is_some_and(|t| t.chosen));
    // A measured number takes the place of a proposal; the rest is confirmed.
    stage.ctrl(Key::T);
    stage.fill("waist in 86", "70.5");
    assert!(stage.says("chart.waist: this cell is a plain number"), "{}", stage.all());
    stage.fill("waist in 86", "+6.5 cm");
    assert_eq!(stage.field("waist in 86").value, "74.5 cm");
    stage.fill("waist in 86", "70,5 cm");
    stage.find_and_do("Confirm proposed numbers");
    let text = stage.saved();
    assert!(text.contains("\"84\", \"86\", \"88\"") && text.contains("(\"86\", \"86 cm\")"), "{text}");
    assert!(text.contains("(\"86\", \"70.5 cm\")"));
    let after =
        stage.measure(&["length(front.armhole)", "seam.side.difference", "seam.front_armhole.difference", "bust"]);
    assert_eq!(after["bust"]["86"].as_f64(), Some(860.0));
    assert!(after["seam.side.difference"]["86"].as_f64().unwrap().abs() < 1e-6);
    assert!((after["seam.front_armhole.difference"]["86"].as_f64().unwrap() - 8.0).abs() < 1e-6);
    // No other size has moved.
    for (size, was) in sizes(&before["length(front.armhole)"]) {
        assert_eq!(after["length(front.armhole)"][&size].as_f64(), Some(was), "{size}");
    }
    let (_, proof) = stage.proof();
    let guessed = proof["findings"].as_array().unwrap().iter().filter(|f| f["code"] == "cell-guessed").count();
    assert_eq!(guessed, 0, "{proof}");
}

#[test]
fn a_block_is_drafted_by_hand_from_nothing() {
    let mut stage = Stage::empty();
    draft_a_block(&mut stage);
}

/// The same without a pointer, and on to what is sold: allowances, cloth, files in a folder.
#[test]
fn the_whole_job_is_done_with_the_keyboard_alone() {
    let mut stage = Stage::empty();
    stage.keys_only = true;
    draft_a_block(&mut stage);
    stage.find_and_do("Add a cloth");
    stage.answer(&[("name", "cotton")], "Add an outer cloth");
    stage.key(CTRL_SHIFT, Key::U);
    let out = stage.folder.path().join("out");
    stage.write("folder", out.to_str().unwrap());
    // Pages, tables and booklet are ticked from the start.
    stage.click("write svg");
    stage.click("Write them");
    stage.wait_for("written to");
    let mut names: Vec<String> =
        std::fs::read_dir(&out).unwrap().map(|f| f.unwrap().file_name().into_string().unwrap()).collect();
    names.sort();
    for kind in [".svg", "-booklet.html", "-body-chart.csv", ".pdf"] {
        assert!(names.iter().any(|n| n.ends_with(kind)), "{kind}: {names:?}");
    }
}

/// A back and a front in three sizes, a curved hip, a seam that is kept true: saved, proved, measured and opened again.
fn draft_a_block(stage: &mut Stage) {
    for size in ["S", "M", "L"] {
        stage.click("Add a size");
        stage.answer(&[("label", size)], "Add the size");
    }
    stage.find_and_do("Add a row");
    stage.answer(&[("name", "hip")], "Add a body row");
    for (size, cm) in [("S", "92 cm"), ("M", "98 cm"), ("L", "104 cm")] {
        // The first cell has the keyboard; Tab goes on to the next.
        stage.write(&format!("hip in {size}"), cm);
        stage.press(Key::Tab);
    }
    // Tab goes from cell to cell there; the key that shows the chart leaves it as well.
    if stage.keys_only {
        stage.ctrl(Key::T);
    } else {
        stage.click("Show the pieces");
    }
    stage.click("Add a value");
    stage.answer(&[("name", "ease"), ("formula", "2 cm")], "Add the value");
    stage.find_and_do("to be found");
    stage.answer(&[("name", "drop"), ("start", "1 cm"), ("least", "-5 cm"), ("most", "5 cm")], "Add the value");
    for (piece, side) in [("back", "0 cm"), ("front", "drop")] {
        stage.click("Add a piece");
        stage.answer(&[("name", piece)], "Add the piece");
        assert!(stage.says(&format!("piece {piece}, nothing in it yet")), "{}", stage.all());
        let slant = if piece == "back" { "3 cm" } else { "1 cm" };
        for (point, at) in [
            ("waist_centre", "(0 cm, 0 cm)"),
            ("waist_side", &*format!("waist_centre.right((hip + ease) / 4 - {slant}).down({side})")),
            ("hem_side", "hem_centre.right((hip + ease) / 4)"),
            ("hem_centre", "waist_centre.down(60 cm)"),
        ] {
            // A point may name another that comes later: until then it is a finding, and nothing is lost.
            stage.ctrl(Key::P);
            stage.answer(&[("name", point), ("place", at)], "Add the point");
        }
        for (edge, from, to) in
            [("waist", "waist_centre", "waist_side"), ("side", "", "hem_side"), ("hem", "", "hem_centre")]
        {
            stage.click(&format!("piece {piece}"));
            stage.ctrl(Key::E);
            let fields = [("name", edge), ("from", from), ("to", to)];
            // What is proposed for the start is taken where nothing is typed.
            let fields: Vec<_> = fields.into_iter().filter(|(_, text)| !text.is_empty()).collect();
            stage.answer(&fields, "Add the edge");
        }
        stage.click(&format!("piece {piece}"));
        stage.click("Close the outline");
        stage.answer(&[("name of the edge", "centre")], "Close it");
    }
    // A curved hip: the handles are said, not drawn.
    stage.click("piece back");
    stage.click("edge back.side");
    stage.click("Curve it waist_side – hem_side");
    stage.fill("handle leaving waist_side of edge back.side", "on_way(waist_side, hem_side, 1/3).right(1 cm)");
    stage.click("Add a seam");
    stage.answer(
        &[("name", "side"), ("side one", "back.side"), ("side two", "front.side"), ("kept true by", "drop")],
        "Add the seam",
    );
    // Save asks for a name where there is none.
    stage.ctrl(Key::S);
    let path = stage.file.clone();
    stage.answer(&[("file", path.to_str().unwrap())], "Save");
    assert!(stage.says("draft.ron is saved"), "{}", stage.all());
    let (exit, proof) = stage.proof();
    assert_eq!(proof["counts"]["error"], 0, "{proof:#}");
    assert_eq!(exit, 0, "{proof:#}");
    let told = stage.measure(&[
        "seam.side.difference",
        "length(front.side)",
        "drop",
        "length(back.hem)",
        "length(front.waist)",
    ]);
    for (size, hip) in [("S", 920.0), ("M", 980.0), ("L", 1040.0)] {
        assert!(told["seam.side.difference"][size].as_f64().unwrap().abs() < 1e-6);
        let at = |name: &str| told[name][size].as_f64().unwrap();
        // Pythagoras: the front side runs 1 cm across and 60 cm less the drop down.
        let side = (600.0 - at("drop")).hypot(10.0);
        assert!((at("length(front.side)") - side).abs() < 1e-6, "{size}");
        assert!((at("length(back.hem)") - (hip + 20.0) / 4.0).abs() < 1e-9, "{size}");
        let waist = ((hip + 20.0) / 4.0 - 10.0).hypot(at("drop"));
        assert!((at("length(front.waist)") - waist).abs() < 1e-6, "{size}");
    }
    // It opens again as it is.
    let text = stage.text();
    let again = Stage::on_text(&text);
    assert_eq!(again.pieces(), ["piece back, size S", "piece front, size S"]);
}

#[test]
fn the_example_is_what_these_tests_think() {
    let text = std::fs::read_to_string(example("bodice-sleeve.ron")).unwrap();
    assert!(text.contains("by: \"cap_ease_front\"") && text.contains("stack: [\"crown\", \"back_underarm\"]"));
}

#[test]
fn what_is_pulled_follows_the_pointer() {
    let mut stage = Stage::on("bodice-sleeve.ron");
    stage.click("piece front");
    for name in [
        "front.pitch",
        HANDLE,
        "front.armhole, handle leaving tip",
        "sleeve.cap_front, handle arriving at front_underarm",
    ] {
        stage.click(&format!("piece {}", name.split('.').next().unwrap()));
        let Some(told) = stage.find(name) else { panic!("{name}: {}", stage.all()) };
        let from = told.rect.unwrap().center();
        for by in [vec2(10.0, 10.0), vec2(-24.0, 7.0), vec2(3.0, -18.0)] {
            stage.pull_from(from, by);
            let there = stage.rect(name).center();
            stage.press(Key::Escape);
            stage.button(from + by, false);
            stage.rest();
            assert!((stage.rect(name).center() - from).length() < 0.1, "{name}: Escape puts it back");
            assert!((there - from - by).length() < 1.0, "{name}: pulled by {by:?}, moved by {:?}", there - from);
        }
    }
}
