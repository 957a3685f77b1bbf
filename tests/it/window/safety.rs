//! Nothing is lost: wrong formulas, half-done dialogs, unsaved work, files that change or cannot be read.

use egui::{Key, Modifiers, vec2};

use super::stage::{Stage, example};

#[test]
fn a_wrong_formula_is_kept_told_where_it_stands_and_mended() {
    let mut stage = Stage::on("bodice-sleeve.ron");
    stage.click("piece front");
    stage.click("point front.tip");
    stage.write("place of point front.tip", "neck_pint.polar(20°, 11 cm)");
    // While it is typed already.
    assert!(stage.says("nothing is called `neck_pint` here; did you mean `neck_point`?"), "{}", stage.all());
    assert!(stage.says("piece front cannot be drawn in size 88"), "the last good shape is shown as such");
    stage.press(Key::Enter);
    assert!(stage.saved().contains("neck_pint.polar(20°, 11 cm)"), "what was typed is kept");
    stage.click("Put neck_point");
    let text = stage.saved();
    assert!(text.contains("neck_point.polar(20°, 11 cm)"), "{}", stage.all());
    assert!(stage.says("piece front, size 88"));
    stage.ctrl(Key::Z);
    stage.ctrl(Key::Z);
    assert!(!stage.saved().contains("11 cm)"), "typing is one step, mending another");
}

#[test]
fn five_wrong_texts_are_told_each_in_its_own_words() {
    let mut stage = Stage::on("bodice-sleeve.ron");
    stage.click("unfold Values");
    stage.click("value bust_ease");
    for (typed, says) in [
        ("10", "this number has no unit here"),
        ("10 cm +", "the end"),
        ("bust_ease + 1 cm", "bust_ease"),
        ("10 cm * 22.5°", "an angle times a length"),
        ("if(bust > 3, 1 cm, 2 cm)", "`3`"),
    ] {
        stage.fill("formula of value bust_ease", typed);
        assert!(stage.says("■ "), "{typed}: {}", stage.all());
        let found = stage.names().iter().any(|n| n.starts_with("■ ") && n.contains(says));
        assert!(found || stage.says(says), "{typed}: {}", stage.all());
        assert!(stage.saved().contains(typed), "{typed} is kept");
    }
}

#[test]
fn escape_in_a_field_takes_back_what_was_typed_in_it() {
    let mut stage = Stage::on("bodice-sleeve.ron");
    let before = stage.text();
    stage.click("piece front");
    stage.click("point front.tip");
    stage.write("place of point front.tip", "(1 cm, 1 cm)");
    assert!(stage.says("not saved"));
    stage.press(Key::Escape);
    assert!(!stage.says("not saved"), "{}", stage.all());
    assert_eq!(stage.text(), before);
    stage.ctrl(Key::Z);
    assert!(!stage.says("undone"), "there is nothing to take back");
}

#[test]
fn what_is_refused_stays_in_the_dialog() {
    let mut stage = Stage::on("bodice-sleeve.ron");
    stage.key(Modifiers::COMMAND | Modifiers::CTRL | Modifiers::SHIFT, Key::N);
    for (label, says) in
        [("88", "there is a size 88 already"), ("", "cannot be the label of a size"), ("3/4", "cannot be the label")]
    {
        stage.answer(&[("label", label)], "Add the size");
        assert!(stage.says(says), "{label}: {}", stage.all());
    }
    stage.answer(&[("label", "87"), ("after which size", "nowhere")], "Add the size");
    assert!(stage.says("there is no size nowhere to stand after"));
    stage.press(Key::Escape);
    assert!(stage.find("Add the size").is_none());
    stage.click("piece front");
    stage.ctrl(Key::E);
    stage.answer(&[("name", "edge"), ("from", "tip"), ("to", "nowhere")], "Add the edge");
    assert!(stage.says("front has no point `nowhere`"), "{}", stage.all());
    stage.answer(&[("name", "tip")], "Add the edge");
    assert!(stage.says("there is point front.tip already"), "{}", stage.all());
    stage.press(Key::Escape);
    assert!(!stage.says("not saved"), "nothing of it changed the draft");
}

#[test]
fn unsaved_work_is_asked_about_before_it_is_left() {
    let mut stage = Stage::on("bodice-sleeve.ron");
    let before = stage.text();
    stage.fill("title of draft", "Another title");
    assert!(stage.title.starts_with("* "), "{}", stage.title);
    stage.ctrl(Key::Q);
    assert!(stage.says("Save first?") && !stage.is_closing());
    stage.click("Cancel");
    assert!(!stage.is_closing() && stage.says("not saved"));
    assert_eq!(stage.text(), before);
    stage.ctrl(Key::Q);
    stage.click("Save");
    assert!(stage.is_closing());
    assert!(stage.text().contains("Another title"));
    // Without saving: only where it was said so.
    let mut stage = Stage::on("bodice-sleeve.ron");
    stage.fill("title of draft", "Another title");
    stage.ctrl(Key::Q);
    stage.click("Go on without saving");
    assert!(stage.is_closing());
    assert_eq!(stage.text(), before);
    // Undone to what was saved: nothing to ask.
    let mut stage = Stage::on("bodice-sleeve.ron");
    stage.fill("title of draft", "Another title");
    stage.ctrl(Key::Z);
    stage.ctrl(Key::Q);
    assert!(stage.is_closing());
}

#[test]
fn files_that_cannot_be_opened_are_told_and_the_draft_stays() {
    let mut stage = Stage::on("bodice-sleeve.ron");
    let folder = stage.folder.path().to_owned();
    let put = |name: &str, bytes: &[u8]| {
        let path = folder.join(name);
        std::fs::write(&path, bytes).unwrap();
        path.to_str().unwrap().to_owned()
    };
    let good = stage.text();
    for (path, says) in [
        (folder.join("missing.ron").to_str().unwrap().to_owned(), "there is no file"),
        (folder.to_str().unwrap().to_owned(), "is a folder"),
        (put("cut.ron", &good.as_bytes()[..good.len() / 2]), "line"),
        (put("binary.ron", &[0, 159, 146, 150]), "is not text in UTF-8"),
        (put("newer.ron", good.replace("version: 0", "version: 99").as_bytes()), "version"),
        (put("other.ron", b"(a: 1)"), "tracewheel draft"),
        (String::new(), "there is no file"),
    ] {
        stage.ctrl(Key::O);
        stage.answer(&[("file", &path)], "Open");
        assert!(stage.says(says), "{path}: {}", stage.all());
        assert_eq!(stage.pieces().len(), 3, "the draft is still there");
        stage.press(Key::Escape);
    }
    // Saving where nothing can be saved.
    stage.fill("title of draft", "Kept");
    stage.find_and_do("Save as");
    stage.answer(&[("file", folder.join("no/such/folder.ron").to_str().unwrap())], "Save");
    assert!(stage.says("there is no folder"), "{}", stage.all());
    stage.press(Key::Escape);
    assert!(stage.says("not saved"));
    assert!(stage.saved().contains("Kept"));
    // Over another file only when asked.
    stage.find_and_do("Save as");
    stage.answer(&[("file", folder.join("other.ron").to_str().unwrap())], "Save");
    assert!(stage.says("Save over it?"));
    assert_eq!(std::fs::read(folder.join("other.ron")).unwrap(), b"(a: 1)");
    stage.click("Save over it");
    assert!(std::fs::read_to_string(folder.join("other.ron")).unwrap().contains("Kept"));
}

#[test]
fn a_file_that_changed_outside_is_not_written_over_unasked() {
    let mut stage = Stage::on("bodice-sleeve.ron");
    let other = stage.text().replace("Check block: bodice and sleeve", "Changed outside");
    std::fs::write(&stage.file, &other).unwrap();
    stage.fill("title of draft", "Changed here");
    stage.ctrl(Key::S);
    assert!(stage.says("was changed by another program since it was opened"), "{}", stage.all());
    assert_eq!(stage.text(), other);
    stage.press(Key::Escape);
    assert_eq!(stage.text(), other);
    stage.ctrl(Key::S);
    stage.click("Save over it");
    assert!(stage.text().contains("Changed here"));
}

#[test]
fn comments_are_told_before_they_are_lost() {
    let text = std::fs::read_to_string(example("bodice-sleeve.ron")).unwrap();
    let mut stage = Stage::on_text(&text.replacen('(', "( // remember the lining\n", 1));
    stage.fill("title of draft", "With comments");
    stage.ctrl(Key::S);
    assert!(stage.says("Comments would be lost"), "{}", stage.all());
    assert!(stage.text().contains("// remember the lining"));
    stage.click("Keep them as the draft's note");
    let saved = stage.text();
    assert!(
        saved.contains("remember the lining\"") && saved.contains("With comments") && !saved.contains("//"),
        "{saved}"
    );
}

/// What is told above the sheet takes a line each, and gives the room back.
#[test]
fn notices_take_no_more_room_than_their_lines() {
    let mut stage = Stage::on("bodice-sleeve.ron");
    let top = |stage: &Stage| stage.rect("piece front").top();
    let without = top(&stage);
    stage.find_and_do("Guided first draft");
    stage.rest();
    stage.fill("title of draft", "Left behind");
    let (folder, file) = stage.vanish();
    let mut stage = Stage::start(folder, Some(file));
    stage.rest();
    stage.click("Leave the guide");
    stage.rest();
    let one = top(&stage) - without;
    assert!((20.0..50.0).contains(&one), "{one}");
    stage.find_and_do("Guided first draft");
    stage.rest();
    assert!(top(&stage) > without + one + 20.0, "{}", top(&stage));
    stage.click("Leave the guide");
    stage.rest();
    assert_eq!(top(&stage), without + one);
}

#[test]
fn work_survives_the_end_of_the_program_and_is_offered() {
    let mut stage = Stage::on("bodice-sleeve.ron");
    let before = stage.text();
    stage.click("piece front");
    stage.pull("front.armhole, handle arriving at underarm", vec2(-30.0, 12.0));
    let (folder, file) = stage.vanish();
    assert_eq!(std::fs::read_to_string(&file).unwrap(), before);
    let mut stage = Stage::start(folder, Some(file));
    assert!(
        stage.says("Unsaved work was left behind just now: Check block: bodice and sleeve (draft.ron)."),
        "{}",
        stage.all()
    );
    stage.click("Take it up");
    assert!(stage.says("not saved") && !stage.says("left behind just now"), "{}", stage.all());
    let saved = stage.saved();
    assert_ne!(saved, before);
    assert!(saved.contains("underarm.polar(heading(underarm, waist_side) +"));
    let (folder, file) = stage.vanish();
    let stage = Stage::start(folder, Some(file));
    assert!(!stage.says("left behind"), "what was saved is not offered again: {}", stage.all());
    // What is thrown away is gone.
    let mut stage = stage;
    stage.fill("title of draft", "Not worth keeping");
    let (folder, file) = stage.vanish();
    let mut stage = Stage::start(folder, Some(file));
    stage.click("Throw it away");
    let (folder, file) = stage.vanish();
    assert!(!Stage::start(folder, Some(file)).says("left behind"));
}

#[test]
fn a_click_in_a_discarded_pass_counts_once() {
    let mut stage = Stage::on("bodice-sleeve.ron");
    stage.discard = true;
    stage.click("other sizes");
    assert!(!stage.seen("other sizes").chosen, "twice would be as before");
    stage.discard = false;
    stage.click("piece front");
    stage.discard = true;
    stage.pull("front.pitch", vec2(10.0, 10.0));
    stage.discard = false;
    let once = stage.saved();
    stage.ctrl(Key::Z);
    stage.pull("front.pitch", vec2(10.0, 10.0));
    let twice = stage.saved();
    let differ: Vec<_> = once.lines().zip(twice.lines()).filter(|(a, b)| a != b).collect();
    assert!(differ.is_empty(), "{differ:?}");
}
