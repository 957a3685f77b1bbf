//! What is published, in the window: strips, notions, cloth, the booklet and its room, fittings, the dialog that writes it all.

use egui::{Key, Modifiers};

use super::stage::Stage;

const CTRL_SHIFT: Modifiers = Modifiers { alt: false, ctrl: true, shift: true, mac_cmd: false, command: true };

/// Names of the files in a folder.
fn files(folder: &std::path::Path) -> Vec<String> {
    let all = std::fs::read_dir(folder).map(|d| d.map(|f| f.unwrap().file_name().into_string().unwrap()).collect());
    let mut all: Vec<String> = all.unwrap_or_default();
    all.sort();
    all
}

/// Whether an error is told on the card.
fn error_on_card(stage: &Stage) -> bool {
    stage.told.iter().any(|t| t.name.starts_with("■ ") && t.rect.is_some_and(|r| r.left() > 1_290.0))
}

/// A text with one space between any two words.
fn flat(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// Whether undoing as often as anything here was done gives the draft of the start.
fn is_undone(stage: &mut Stage, start: &str) {
    for _ in 0..15 {
        stage.ctrl(Key::Z);
    }
    assert_eq!(stage.saved(), start);
}

#[test]
fn a_strip_is_made_on_its_card_and_tells_its_length_in_every_size() {
    let mut stage = Stage::on("bodice-sleeve.ron");
    let start = stage.text();
    stage.find_and_do("Add a cloth");
    stage.answer(&[("name", "cotton")], "Add an outer cloth");
    stage.click("Another width in which it is sold");
    stage.fill("sold in the width of material cotton", "140 cm");
    stage.find_and_do("Add a strip");
    stage.answer(&[("name", "neck_tie"), ("length", "bust / 4")], "Add the strip");
    stage.click_on_card("what it is, of strip neck_tie: cord or tie");
    stage.click_on_card("how it lies on the cloth, of strip neck_tie: on the bias");
    stage.click_on_card("where on the body (cautions hang on it), of strip neck_tie: hood or neck");
    stage.click_on_card("sewn fast at its middle, of strip neck_tie");
    // One is what is meant where nothing is said; the next is two.
    assert!(stage.find("1: how many, of strip neck_tie").is_some(), "{}", stage.all());
    assert!(stage.find("1: layers of it, of strip neck_tie").is_some(), "{}", stage.all());
    stage.click_on_card("more: how many, of strip neck_tie");
    assert!(stage.find("2: how many, of strip neck_tie").is_some(), "{}", stage.all());
    stage.fill("finished width of strip neck_tie", "1 cm");
    stage.fill("how far each free end hangs out of strip neck_tie", "bust / 20");
    let text = stage.saved();
    let wanted = [
        "materials: [(name: \"cotton\", kind: cloth, widths: [\"140 cm\"])]",
        "kind: cord",
        "count: 2",
        "grain: bias",
        "place: neck",
        "fastened: true",
        "width: \"1 cm\"",
        "free_end: \"bust / 20\"",
    ];
    for words in wanted {
        assert!(text.contains(words), "{words}: {text}");
    }
    // The live values are those of the command line: base size 88 by hand, another one by measuring the file.
    assert!(stage.says("4.4 cm in size 88"), "{}", stage.all());
    let found = stage.measure(&["strip.neck_tie"]);
    assert!(found.to_string().contains("220"), "{found}");
    assert!(stage.says("size 88: 22 cm") && stage.says("size 92: 23 cm"), "{}", stage.all());
    // A wrong formula is told where it stands, and kept.
    assert!(!error_on_card(&stage), "{}", stage.all());
    stage.fill("finished length, from seam to seam of strip neck_tie", "bust +");
    assert!(error_on_card(&stage), "{}", stage.all());
    assert!(stage.saved().contains("length: \"bust +\""));
    // All of it is undone, step by step.
    is_undone(&mut stage, &start);
}

#[test]
fn steps_of_the_booklet_are_written_read_moved_and_taken_out() {
    let mut stage = Stage::on("bodice-sleeve.ron");
    let start = stage.text();
    stage.find_and_do("Add a booklet step");
    stage.answer(&[("heading", "Sew the sides")], "Add the step");
    stage.find_and_do("Add a booklet step");
    stage.answer(&[("heading", "Set the sleeves")], "Add the step");
    // Names are offered inside of braces, and only there.
    stage.write("words of booklet step 2", "The wrist measures bus");
    assert!(!stage.names().iter().any(|n| n.starts_with("offer ")), "{}", stage.all());
    stage.write("words of booklet step 2", "The chest is {bus");
    let offers = stage.names().iter().filter(|n| n.starts_with("offer ")).count();
    assert!(offers > 0, "{}", stage.all());
    stage.press(Key::ArrowDown);
    stage.press(Key::Enter);
    stage.type_text("} around.");
    // It is read in the chosen size, in both units, while it is typed: 88 cm are 34.65 in, by hand.
    assert!(stage.says("The chest is 88\u{a0}cm\u{a0}(34\u{a0}5/8\u{a0}in) around."), "{}", stage.all());
    stage.press(Key::Enter);
    stage.type_text("- A point.");
    stage.press(Key::Tab);
    stage.press(Key::Escape);
    let text = stage.saved();
    assert!(text.contains("text: \"The chest is {bust} around.\\n- A point.\""), "{text}");
    stage.find_and_do("Set the sleeves");
    stage.click_on_card("front drawn in booklet step 2");
    stage.click_on_card("sleeve drawn in booklet step 2");
    assert!(stage.saved().contains("pieces: [\"front\", \"sleeve\"]"), "{}", stage.text());
    stage.click("Move up");
    let at = |text: &str, title: &str| text.find(title).unwrap();
    let text = stage.saved();
    assert!(at(&text, "Set the sleeves") < at(&text, "Sew the sides"), "{text}");
    assert!(stage.seen("booklet step 1").chosen, "the step that was moved stays chosen");
    // A brace that cannot be read is told at the field.
    stage.fill("heading of booklet step 1", "Set the {sleeve");
    assert!(error_on_card(&stage), "{}", stage.all());
    stage.fill("heading of booklet step 1", "Set the sleeves");
    assert!(!error_on_card(&stage), "{}", stage.all());
    stage.find_and_do("Set the sleeves");
    stage.press(Key::Delete);
    assert!(stage.says("Delete booklet step 1"), "{}", stage.all());
    // The card behind has a button of this name too; the dialog holds the focus.
    stage.tab_to("Delete");
    stage.press(Key::Space);
    let text = stage.saved();
    assert!(text.contains("booklet: [(title: \"Sew the sides\")]"), "{text}");
    is_undone(&mut stage, &start);
}

#[test]
fn the_booklet_is_seen_as_it_will_print_and_a_click_chooses_a_step() {
    let mut stage = Stage::on("market-apron.ron");
    stage.key(CTRL_SHIFT, Key::B);
    let page = |stage: &Stage, words: &str| {
        stage.told.iter().any(|t| t.name.starts_with("booklet page ") && t.name.contains(words))
    };
    assert!(page(&stage, "Market apron") && page(&stage, "Licence: MIT"), "{}", stage.all());
    let step = |stage: &Stage, words: &str| {
        let all = stage.names();
        let found = all.iter().find(|n| n.starts_with("step ") && n.contains(" of the booklet") && n.ends_with(words));
        found.unwrap_or_else(|| panic!("{words}: {}", stage.all())).to_string()
    };
    let facing = step(&stage, ": Facing");
    assert!(facing.starts_with("step 3 of the booklet"), "{facing}");
    stage.find_and_do("Bind the hollow sides");
    let hollow = step(&stage, ": Bind the hollow sides");
    assert!(stage.seen(&hollow).chosen, "chosen elsewhere it is seen on its page: {}", stage.all());
    // The room rolls there for a while.
    (0..20).for_each(|_| stage.rest());
    let pocket = step(&stage, ": Pocket");
    for _ in 0..40 {
        if stage.rect(&pocket).center().y > 300.0 {
            break;
        }
        stage.scroll(egui::pos2(750.0, 500.0), 80.0);
    }
    stage.click(&pocket);
    assert!(
        stage.find("heading of booklet step 2").is_some() && page(&stage, "Market apron"),
        "the room stays: {}",
        stage.all()
    );
    // What is typed is seen on the page at once.
    stage.fill("heading of booklet step 2", "The large pocket");
    assert!(page(&stage, "2. The large pocket"), "{}", stage.all());
    // Another part has its place on the table.
    stage.find_and_do("binding");
    assert!(stage.find("heading of booklet step 2").is_none() && !page(&stage, "Market apron"));
}

#[test]
fn what_is_ticked_is_published_and_an_error_blocks_a_release() {
    let mut stage = Stage::on("market-apron.ron");
    let into = stage.folder.path().join("out");
    stage.key(CTRL_SHIFT, Key::U);
    stage.click("write pages");
    stage.click("write tables");
    stage.write("folder", into.to_str().unwrap());
    stage.click("Write them");
    stage.wait_for("written to");
    let all = files(&into);
    assert!(!all.is_empty() && all.iter().all(|f| f.contains("booklet")), "{all:?}");
    assert!(all.iter().any(|f| f.ends_with(".pdf")), "{all:?}");
    // Chosen sizes together, one of them taken out again.
    let pages = stage.folder.path().join("pages");
    // The dialog still has the booklet alone.
    stage.key(CTRL_SHIFT, Key::U);
    stage.click("write booklet");
    stage.click("write pages");
    stage.click("chosen sizes together");
    stage.click("publish size S");
    stage.click("publish size XL");
    stage.click("publish size XL");
    stage.click("paper A4");
    stage.write("folder", pages.to_str().unwrap());
    stage.press(Key::Enter);
    stage.wait_for("file is written to");
    let all = files(&pages);
    assert!(all.len() == 1 && all[0].starts_with("draft-S+M-toile-A4"), "{all:?}");
    // Nothing chosen is told, and the dialog stays.
    stage.key(CTRL_SHIFT, Key::U);
    stage.click("write pages");
    stage.click("Write them");
    assert!(stage.says("nothing is chosen to be written") && stage.find("Write them").is_some(), "{}", stage.all());
    // What a projector needs is asked where one is wanted, and what cannot be read is told.
    assert!(stage.find("pixels across").is_none());
    stage.click("write projector");
    stage.write("pixels across", "many");
    stage.click("Write them");
    assert!(stage.says("`many` is no number of pixels"), "{}", stage.all());
    stage.press(Key::Escape);
    assert!(stage.find("Write them").is_none());
    // A release of a draft with errors: the errors are listed, nothing is written, a click goes to one.
    let mut skirt = Stage::on("straight-skirt.ron");
    let none = skirt.folder.path().join("none");
    skirt.key(CTRL_SHIFT, Key::U);
    skirt.click("for release");
    skirt.write("folder", none.to_str().unwrap());
    skirt.click("Write them");
    assert!(skirt.says("a release is blocked by errors") && !none.exists(), "{}", skirt.all());
    let (_, found) = skirt.proof();
    let errors = found["findings"].as_array().map_or(0, |f| f.iter().filter(|f| f["severity"] == "error").count());
    let listed: Vec<String> =
        skirt.told.iter().filter(|t| t.can_be_used && t.name.starts_with("■ ")).map(|t| t.name.clone()).collect();
    assert!(errors > 0 && listed.len() == errors, "{errors}: {listed:?}");
    skirt.click(&listed[0]);
    assert!(skirt.find("Write them").is_none(), "{}", skirt.all());
}

#[test]
fn fittings_and_who_it_is_for_are_typed_on_cards() {
    let mut stage = Stage::on("bodice-sleeve.ron");
    let start = stage.text();
    stage.find_and_do("Add a fitting");
    stage.fill("date, fitting 1 of what is kept", "2025-03-14");
    stage.fill("in which cloth, fitting 1 of what is kept", "calico");
    let text = stage.saved();
    assert!(text.contains("fittings: [(date: \"2025-03-14\", size: \"88\", cloth: \"calico\")]"), "{text}");
    stage.click("take out fitting 1");
    assert!(!stage.saved().contains("fittings"), "{}", stage.text());
    stage.press(Key::Escape);
    stage.press(Key::Escape);
    let who = "who is to wear it (cautions hang on it), of draft: ";
    stage.click_on_card(&format!("{who}children"));
    stage.fill("the youngest of draft", "2 years");
    stage.fill("the oldest of draft", "8 years");
    stage.click_on_card("worn as, of draft: tight sleepwear");
    stage.click_on_card("Say a girth …");
    stage.click("girth of the chest");
    stage.fill("garment around the chest of draft", "bust + 1 cm");
    let text = stage.saved();
    assert!(text.contains("child(from: \"2 years\", to: \"8 years\")"), "{text}");
    assert!(
        text.contains("worn_as: tight_sleepwear") && text.contains("girths: [(place: chest, is: \"bust + 1 cm\")]"),
        "{text}"
    );
    assert!(stage.says("89 cm in size 88"), "{}", stage.all());
    is_undone(&mut stage, &start);
}

#[test]
fn a_release_is_made_once_noted_in_the_log_and_blocked_by_errors() {
    let mut stage = Stage::on("market-apron.ron");
    let into = stage.folder.path().join("out");
    let asked =
        |edition: &'static str| [("edition", edition), ("date", "2026-05-31"), ("folder", into.to_str().unwrap())];
    // A size that was sewn is not told any more.
    stage.find_and_do("Add a fitting");
    stage.find_and_do("Release …");
    assert!(stage.says("Never sewn, as far as the log tells: S, L, XL."), "{}", stage.all());
    assert!(stage.says("the draft tells no contact for questions"), "{}", stage.all());
    // A date that is none leaves nothing, no folder either.
    stage.answer(&[("edition", "7"), ("date", "2026-02-30"), ("folder", into.to_str().unwrap())], "Release it");
    stage.wait_for("`2026-02-30` is no date");
    assert!(!into.exists());
    stage.answer(&asked("7"), "Release it");
    stage.wait_for("files are written to");
    // It is told again when it is made.
    assert!(stage.says("never sewn: the log tells of no fitting in S, L and XL"), "{}", stage.all());
    stage.rest();
    stage.click("Good");
    let made = into.join("Market-apron-edition-7");
    assert!(files(&made).contains(&"pattern".to_owned()), "{:?}", files(&into));
    let text = flat(&stage.text());
    assert!(text.contains("releases: [ ( date: \"2026-05-31\", edition: \"7\", digest: \""), "{text}");
    assert!(text.contains("edition: \"7\", date: \"2026-05-31\", display"), "{text}");
    // The same edition again is refused, and nothing is written.
    stage.find_and_do("Release …");
    assert!(stage.says("Released last: edition 7, 2026-05-31."), "{}", stage.all());
    stage.answer(&asked("7"), "Release it");
    stage.wait_for("edition 7 was released already");
    assert_eq!(files(&into).len(), 1);
    // Another one tells what changed: a value that was changed in between.
    stage.press(Key::Escape);
    stage.ctrl(Key::T);
    stage.fill("bib_drop in M", "11 1/4 in");
    stage.find_and_do("Release …");
    stage.answer(&asked("8"), "Release it");
    stage.wait_for("files are written to");
    assert!(stage.says("Pages to print again") && !stage.says("Nothing changed"), "{}", stage.all());
    stage.rest();
    stage.click("Good");
    assert_eq!(files(&into).len(), 2);
    // Errors block it: they are listed, and nothing is written.
    let mut skirt = Stage::on("straight-skirt.ron");
    let none = skirt.folder.path().join("none");
    skirt.find_and_do("Release …");
    assert!(skirt.says("Errors block a release ("), "{}", skirt.all());
    skirt.answer(&[("edition", "1"), ("folder", none.to_str().unwrap())], "Release it");
    skirt.wait_for("a release is blocked by");
    assert!(!none.exists());
}

#[test]
fn escape_closes_the_offers_first_and_a_picture_is_named_at_once() {
    let mut stage = Stage::on("bodice-sleeve.ron");
    stage.find_and_do("Add a booklet step");
    stage.answer(&[("heading", "Sew the sides")], "Add the step");
    let offers = |stage: &Stage| stage.names().iter().any(|n| n.starts_with("offer "));
    let words = "words of booklet step 1";
    stage.write(words, "The chest is {bus");
    assert!(offers(&stage), "{}", stage.all());
    stage.press(Key::Escape);
    assert!(!offers(&stage) && stage.field(words).value.contains("{bus"), "{}", stage.all());
    // It goes on where it was, and the list comes again.
    stage.type_text("t");
    assert!(offers(&stage), "{}", stage.all());
    stage.press(Key::Escape);
    stage.type_text("} around.");
    assert!(stage.field(words).value.contains("The chest is {bust} around."), "{}", stage.all());
    stage.press(Key::Tab);
    assert!(stage.saved().contains("The chest is {bust} around."), "{}", stage.text());
    // Without a list Escape gives up what was typed, as in all fields.
    stage.write(words, "Gone");
    stage.press(Key::Escape);
    assert!(stage.saved().contains("The chest is {bust} around."), "{}", stage.text());
    // What was undone is told until the next change, one that is typed too.
    stage.ctrl(Key::Z);
    assert!(stage.says("✓ undone"), "{}", stage.all());
    stage.write(words, "The chest.");
    assert!(!stage.says("✓ undone"), "{}", stage.all());
    stage.press(Key::Tab);
    stage.click_on_card("Add a picture");
    stage.type_text("seam.png");
    stage.press(Key::Enter);
    assert!(stage.saved().contains("file: \"seam.png\""), "{}", stage.text());
}

#[test]
fn what_cannot_be_published_is_told_in_the_dialog_as_it_was_filled_in() {
    let mut stage = Stage::on("market-apron.ron");
    let into = stage.folder.path().join("out");
    stage.key(CTRL_SHIFT, Key::U);
    stage.click("write pages");
    stage.click("write tables");
    stage.click("write booklet");
    stage.click("write projector");
    stage.write("projection across", "10 mm");
    stage.write("projection down", "10 mm");
    stage.write("folder", into.to_str().unwrap());
    let button = stage.rect("Write them");
    stage.click("Write them");
    stage.wait_for("Write them");
    stage.rest();
    assert!(!into.exists(), "{:?}", files(&into));
    assert_eq!(stage.rect("Write them"), button, "the dialog does not jump");
    assert_eq!(stage.field("projection across").value, "10 mm");
    assert_eq!(stage.field("folder").value, into.to_str().unwrap());
    // The whole of it, within the dialog.
    let problem = stage.told.iter().find(|t| t.name.starts_with("■ ") && t.name.contains("projec"));
    let problem = problem.unwrap_or_else(|| panic!("{}", stage.all()));
    let (rect, folder) = (problem.rect.unwrap(), stage.field("folder").rect.unwrap());
    assert!(!problem.name.ends_with('…') && rect.right() <= folder.right() + 20.0, "{rect} {}", problem.name);
    assert!(rect.top() > folder.bottom() && rect.bottom() <= button.top(), "{rect} {}", problem.name);
    // Mended, it is written.
    stage.write("projection across", "36 in");
    stage.write("projection down", "24 in");
    stage.click("Write them");
    stage.wait_for("written to");
    assert!(!files(&into).is_empty());
}

#[test]
fn the_youngest_release_in_the_folder_is_offered_as_the_one_before() {
    let mut stage = Stage::on("market-apron.ron");
    let start = stage.text();
    let into = stage.folder.path().join("releases");
    for edition in ["9", "10"] {
        stage.find_and_do("Release …");
        let asked = [("edition", edition), ("date", "2026-05-31"), ("folder", into.to_str().unwrap())];
        stage.answer(&asked, "Release it");
        stage.wait_for("files are written to");
        stage.rest();
        stage.click("Good");
    }
    assert_eq!(files(&into).len(), 2);
    // A draft whose log tells of neither, beside them.
    let text = start.replace("edition: \"1\"", "edition: \"9\"");
    let mut other = Stage::on_text(&text);
    let there = other.folder.path().join("releases");
    std::fs::rename(&into, &there).unwrap();
    other.find_and_do("Release …");
    assert!(other.seen("the last release in that folder").chosen, "{}", other.all());
    assert!(other.says("That is edition 10, 2026-05-31."), "{}", other.all());
    assert_eq!(other.field("edition").value, "11");
    // An edition that is there says what to do, and nothing jumps.
    other.write("edition", "9");
    let button = other.rect("Release it");
    other.click("Release it");
    other.wait_for("raise the edition");
    other.rest();
    assert_eq!(other.rect("Release it"), button);
    assert_eq!(files(&there).len(), 2);
}

#[test]
fn a_booklet_with_a_broken_brace_is_not_written_without_a_word() {
    let mut stage = Stage::on("bodice-sleeve.ron");
    let into = stage.folder.path().join("out");
    stage.find_and_do("Add a booklet step");
    stage.answer(&[("heading", "Set the {sleeve")], "Add the step");
    stage.key(CTRL_SHIFT, Key::U);
    stage.click("write pages");
    stage.click("write tables");
    stage.write("folder", into.to_str().unwrap());
    stage.click("Write them");
    stage.wait_for("written to");
    assert!(stage.says("booklet step 1: `{sleeve` cannot be read"), "{}", stage.all());
    assert!(!files(&into).is_empty());
}
