//! Every action of the table and every gesture is driven once, and shows in the saved file or in what is told.

use std::collections::BTreeSet;

use egui::{Key, Modifiers, vec2};

use super::help::listed;
use super::stage::Stage;

const CTRL: Modifiers = Modifiers { alt: false, ctrl: true, shift: false, mac_cmd: false, command: true };
const CTRL_SHIFT: Modifiers = Modifiers { shift: true, ..CTRL };

/// Actions that were driven, against the table that the program prints.
struct Driven(BTreeSet<&'static str>);

impl Driven {
    fn saw(&mut self, id: &'static str, happened: bool, stage: &Stage) {
        assert!(happened, "{id}: {}", stage.all());
        self.0.insert(id);
    }
}

#[test]
fn every_action_does_what_it_says() {
    let mut done = Driven(BTreeSet::new());
    let mut stage = Stage::on("bodice-sleeve.ron");
    let start = stage.text();

    // Looking.
    stage.press(Key::ArrowRight);
    done.saw("next_size", stage.seen("size 92").chosen, &stage);
    stage.press(Key::ArrowLeft);
    done.saw("previous_size", stage.seen("size 88, base").chosen, &stage);
    stage.ctrl(Key::B);
    done.saw("other_sizes", !stage.seen("other sizes").chosen, &stage);
    stage.press(Key::C);
    done.saw("curvature", !stage.says("curvature of"), &stage);
    stage.click("piece front");
    done.saw("curvature", stage.says("curvature of armhole"), &stage);
    stage.press(Key::C);
    stage.press(Key::D);
    done.saw("pencil", stage.says("Pencil in front"), &stage);
    stage.press(Key::T);
    done.saw("tape", stage.says("Tape: ") && !stage.says("Pencil in front"), &stage);
    stage.press(Key::T);
    stage.click("point front.tip");
    stage.press(Key::M);
    done.saw("move_by", stage.says("Moves tip"), &stage);
    stage.press(Key::Escape);
    stage.pull("move front on the table", vec2(20.0, -30.0));
    let moved = stage.rect("piece front, size 88");
    stage.find_and_do("Arrange the table anew");
    done.saw("arrange", stage.rect("piece front, size 88") != moved && stage.saved() == start, &stage);
    stage.press(Key::Escape);
    stage.ctrl(Key::B);
    let width = stage.rect("piece front, size 88").width();
    stage.key(CTRL, Key::Plus);
    done.saw("nearer", stage.rect("piece front, size 88").width() > width * 1.1, &stage);
    stage.key(CTRL, Key::Minus);
    stage.key(CTRL, Key::Minus);
    done.saw("further", stage.rect("piece front, size 88").width() < width * 0.95, &stage);
    stage.ctrl(Key::Num0);
    done.saw("see_all", (stage.rect("piece front, size 88").width() - width).abs() < 1.0, &stage);
    stage.ctrl(Key::T);
    done.saw("chart", stage.find("waist in 88").is_some(), &stage);
    stage.ctrl(Key::T);
    stage.find_and_do("sleeve_seam");
    stage.ctrl(Key::R);
    done.saw("roll", stage.says("rolled to 0 cm"), &stage);
    stage.ctrl(Key::R);
    let same = stage.open_path().unwrap().to_str().unwrap().to_owned();
    stage.find_and_do("Compare with another draft");
    stage.answer(&[("file", &same)], "Compare");
    done.saw("compare", stage.says("Differences from") && stage.says("no differences"), &stage);
    stage.ctrl(Key::D);
    done.saw("differences", stage.says("dashed line: ") && !stage.says("Differences from"), &stage);
    stage.find_and_do("End comparing");
    done.saw("end_comparing", !stage.says("dashed line: "), &stage);
    let theme = stage.ctx.theme();
    stage.find_and_do("Light or dark");
    done.saw("theme", stage.ctx.theme() != theme, &stage);
    stage.ctrl(Key::Num1);
    let wide = stage.rect("piece front, size 88").width();
    done.saw("true_scale", (wide / width - 1.0).abs() > 0.05 && stage.says("true scale"), &stage);
    stage.ctrl(Key::Num1);
    stage.ctrl(Key::Comma);
    done.saw("preferences", stage.says("Size of text"), &stage);
    stage.ctrl(Key::Comma);
    stage.press(Key::F1);
    done.saw("help", stage.seen(&listed("about-seams")).chosen, &stage);
    stage.find_and_do("Keys");
    done.saw("keys", stage.seen(&listed("keys")).chosen && stage.says("Ctrl+Shift+Z"), &stage);
    stage.press(Key::Escape);
    stage.find_and_do("Guided first draft");
    done.saw("guide", stage.find("Leave the guide").is_some(), &stage);
    stage.find_and_do("Guided first draft");
    stage.find_and_do("First page");
    done.saw("first_page", stage.find("open example trousers").is_some(), &stage);
    stage.find_and_do("First page");
    stage.ctrl(Key::K);
    done.saw("find", stage.field("find").is_field, &stage);
    stage.press(Key::Escape);
    stage.press(Key::F8);
    done.saw("next_finding", stage.find("place of point back.waist_side").is_some(), &stage);
    stage.key(Modifiers::SHIFT, Key::F8);
    done.saw("previous_finding", stage.find("title of draft").is_some(), &stage);
    // There are three findings: all of them are seen already. One more makes the list longer than that.
    assert_eq!(stage.text(), start);

    // Adding.
    stage.key(CTRL_SHIFT, Key::N);
    stage.answer(&[("label", "86")], "Add the size");
    done.saw("add_size", stage.saved().contains("\"84\", \"86\", \"88\""), &stage);
    let listed = |s: &Stage| s.names().iter().filter(|n| n.starts_with("warning: ") || n.starts_with("note: ")).count();
    let few = listed(&stage);
    stage.ctrl(Key::J);
    done.saw("all_findings", listed(&stage) > few, &stage);
    stage.ctrl(Key::J);
    stage.find_and_do("Confirm proposed");
    done.saw("confirm", stage.saved().contains("(\"86\", \"86 cm\")"), &stage);
    stage.find_and_do("Add a person");
    stage.answer(&[("name", "Tester")], "Add the person");
    done.saw("add_person", stage.saved().contains("name: \"Tester\""), &stage);
    stage.find_and_do("Add a row");
    stage.answer(&[("name", "ankle")], "Add a house row");
    done.saw("add_row", stage.saved().contains("(name: \"ankle\", kind: house, by: [girth])"), &stage);
    stage.key(Modifiers::ALT, Key::ArrowUp);
    let above = |s: &str| s.find("name: \"ankle\"") < s.find("name: \"arm_length\"");
    done.saw("row_up", above(&stage.saved()), &stage);
    stage.key(Modifiers::ALT, Key::ArrowDown);
    done.saw("row_down", !above(&stage.saved()), &stage);
    stage.find_and_do("Steps in the chart");
    done.saw("steps", stage.says("step of waist to 80: +4 cm"), &stage);
    stage.find_and_do("Sizes and sets");
    done.saw("chart_sizes", stage.find("Add a label to cup").is_some(), &stage);
    stage.find_and_do("Add a size set");
    stage.answer(&[("name", "mine")], "Add the set");
    done.saw("add_set", stage.saved().contains("(name: \"mine\")"), &stage);
    stage.ctrl(Key::Z);
    stage.find_and_do("Proposed numbers");
    done.saw("proposals", stage.field("ankle in 84").is_field, &stage);
    stage.key(CTRL_SHIFT, Key::V);
    done.saw("paste_numbers", stage.field("numbers to be pasted").is_field, &stage);
    let table = stage.folder.path().join("table.csv");
    stage.find_and_do("Write the chart as a table");
    stage.answer(&[("file", table.to_str().unwrap())], "Write");
    done.saw("write_table", std::fs::read_to_string(&table).unwrap().starts_with("row,kind,76,"), &stage);
    stage.find_and_do("Read numbers from a table");
    stage.answer(&[("file", table.to_str().unwrap())], "Read");
    done.saw("read_table", stage.says("From table.csv") && stage.says("already there"), &stage);
    stage.click("Put it away");
    stage.ctrl(Key::T);
    stage.find_and_do("Add a value …");
    stage.answer(&[("name", "cuff"), ("formula", "2,5 cm")], "Add the value");
    done.saw("add_value", stage.saved().contains("(name: \"cuff\", is: \"2.5 cm\")"), &stage);
    stage.find_and_do("to be found");
    stage.answer(&[("name", "lift"), ("start", "1 cm"), ("least", "0 cm"), ("most", "3 cm")], "Add the value");
    done.saw(
        "add_found",
        stage.saved().contains("(name: \"lift\", start: \"1 cm\", least: \"0 cm\", most: \"3 cm\")"),
        &stage,
    );
    stage.find_and_do("Add a piece");
    stage.answer(&[("name", "pocket")], "Add the piece");
    done.saw("add_piece", stage.saved().contains("name: \"pocket\""), &stage);
    stage.find_and_do("Derive a piece");
    stage.answer(&[("name", "flap"), ("made of", "pocket")], "Derive the piece");
    done.saw("derive_piece", stage.saved().contains("(name: \"flap\", of: \"pocket\")"), &stage);
    stage.ctrl(Key::Z);
    let block = super::stage::example("straight-skirt.ron");
    stage.find_and_do("Take a block from another draft");
    stage.answer(&[("file", block.to_str().unwrap()), ("put in front of all names", "skirt_")], "Take it");
    done.saw("take_block", stage.saved().contains("(part: \"piece back\", name: \"skirt_back\""), &stage);
    stage.ctrl(Key::Z);
    stage.find_and_do("pocket");
    for (name, place) in [("a", "(0 cm, 0 cm)"), ("b", "a.right(cuff * 4)"), ("c", "b.down(12 cm)")] {
        stage.ctrl(Key::P);
        stage.answer(&[("name", name), ("place", place)], "Add the point");
    }
    done.saw("add_point", stage.saved().contains("(name: \"c\", at: \"b.down(12 cm)\")"), &stage);
    stage.ctrl(Key::E);
    stage.answer(&[("name", "top"), ("from", "a"), ("to", "b")], "Add the edge");
    stage.ctrl(Key::E);
    stage.answer(&[("name", "side"), ("to", "c")], "Add the edge");
    done.saw("add_edge", stage.saved().contains("(name: \"side\", from: \"b\", by: [straight(\"c\")])"), &stage);
    assert!(stage.says("piece pocket, size 86, outline open"), "{}", stage.all());
    stage.find_and_do("Close the outline");
    stage.answer(&[("name of the edge", "slant")], "Close it");
    done.saw("close_outline", stage.saved().contains("(name: \"slant\", from: \"c\", by: [straight(\"a\")])"), &stage);
    stage.find_and_do("Add a seam");
    stage.answer(
        &[("name", "hold"), ("side one", "pocket.top"), ("side two", "reversed(sleeve.wrist)")],
        "Add the seam",
    );
    done.saw("add_seam", stage.saved().contains("name: \"hold\""), &stage);
    stage.find_and_do("Add a condition");
    stage.answer(&[("name", "wide"), ("must hold", "gap(pocket.a, pocket.b) >= 5 cm")], "Add the condition");
    done.saw("add_condition", stage.saved().contains("must: \"gap(pocket.a, pocket.b) >= 5 cm\""), &stage);
    stage.find_and_do("Add a view");
    stage.answer(&[("name", "plain")], "Add the view");
    done.saw("add_view", stage.saved().contains("views: [(name: \"plain\")]"), &stage);
    stage.ctrl(Key::Z);

    stage.find_and_do("Add a cloth");
    stage.answer(&[("name", "twill")], "Add a lining");
    done.saw("add_cloth", stage.saved().contains("(name: \"twill\", kind: lining)"), &stage);
    stage.find_and_do("Add a strip");
    stage.answer(&[("name", "loop"), ("length", "cuff * 2")], "Add the strip");
    done.saw("add_strip", stage.saved().contains("(name: \"loop\", length: \"cuff * 2\")"), &stage);
    stage.ctrl(Key::Z);
    stage.find_and_do("Add a notion");
    stage.answer(&[("name", "zip"), ("length or size", "20 cm")], "Add the notion");
    done.saw("add_notion", stage.saved().contains("(name: \"zip\", count: 1, size: \"20 cm\")"), &stage);
    stage.find_and_do("Add a booklet step");
    stage.answer(&[("heading", "Join the sides")], "Add the step");
    done.saw("add_step", stage.saved().contains("booklet: [(title: \"Join the sides\")]"), &stage);
    stage.find_and_do("Add a fitting");
    done.saw("add_fitting", stage.saved().contains("fittings: [(size: \"86\")]"), &stage);

    stage.find_and_do("Trace an outline");
    stage.answer(&[("outline file", "none.svg")], "Read it");
    done.saw("trace", stage.says("none.svg cannot be read"), &stage);
    stage.press(Key::Escape);
    stage.find_and_do("Lay a picture");
    stage.answer(&[("file", "none.png")], "Lay it underneath");
    done.saw("picture", stage.says("none.png cannot be laid underneath"), &stage);
    stage.press(Key::Escape);

    // Changing.
    stage.find_and_do("pocket.b");
    stage.ctrl(Key::U);
    done.saw("used_by", stage.says("used by edge pocket.top") && stage.says("uses value cuff"), &stage);
    stage.click("Good");
    stage.press(Key::F2);
    stage.answer(&[("name", "corner")], "Rename it");
    let text = stage.saved();
    done.saw(
        "rename",
        text.contains("gap(pocket.a, pocket.corner) >= 5 cm") && text.contains("straight(\"corner\")"),
        &stage,
    );
    stage.find_and_do("cuff");
    stage.press(Key::Delete);
    stage.answer(&[], "Put its present value instead");
    done.saw("delete", stage.saved().contains("a.right(2.5 cm * 4)"), &stage);
    stage.ctrl(Key::Z);
    done.saw("undo", stage.saved().contains("a.right(cuff * 4)"), &stage);
    stage.key(CTRL_SHIFT, Key::Z);
    done.saw("redo", stage.saved().contains("a.right(2.5 cm * 4)"), &stage);
    stage.click("size 104");
    stage.find_and_do("Make it the base");
    done.saw("base", stage.saved().contains("base: \"104\""), &stage);
    stage.find_and_do("Rename the size");
    stage.answer(&[("label", "52")], "Rename it");
    let text = stage.saved();
    done.saw("rename_size", text.contains("base: \"52\"") && text.contains("(\"52\", \"104 cm\")"), &stage);
    stage.find_and_do("Delete the size");
    stage.answer(&[], "Delete the size");
    done.saw("delete_size", !stage.saved().contains("\"52\""), &stage);
    stage.ctrl(Key::Z);
    stage.key(Modifiers::ALT, Key::Num2);
    done.saw("reach_one", stage.seen("pull this size only").chosen, &stage);
    stage.key(Modifiers::ALT, Key::Num3);
    done.saw("reach_up", stage.seen("pull from here up").chosen, &stage);
    stage.key(Modifiers::ALT, Key::Num1);
    done.saw("reach_all", stage.seen("pull all sizes").chosen, &stage);

    // Printing.
    stage.key(CTRL_SHIFT, Key::P);
    done.saw("sheets", stage.says("pages: the first, and"), &stage);
    let pdf = stage.folder.path().join("pages.pdf");
    stage.key(CTRL_SHIFT, Key::W);
    stage.answer(&[("file", pdf.to_str().unwrap())], "Write");
    done.saw("print", std::fs::read(&pdf).unwrap().starts_with(b"%PDF"), &stage);
    let every = stage.folder.path().join("every");
    stage.click("Publish …");
    stage.answer(&[("folder", every.to_str().unwrap())], "Write them");
    stage.wait_for("files are written");
    let files = std::fs::read_dir(&every).unwrap().map(|f| f.unwrap().file_name().into_string().unwrap());
    done.saw("publish", files.filter(|f| f.ends_with("-pages.pdf")).count() == 13, &stage);
    stage.find_and_do("Release …");
    done.saw("release", stage.field("edition").is_field && stage.find("Release it").is_some(), &stage);
    stage.press(Key::Escape);
    stage.key(CTRL_SHIFT, Key::P);
    stage.key(CTRL_SHIFT, Key::B);
    done.saw("booklet", stage.says("booklet page 1: "), &stage);
    stage.key(CTRL_SHIFT, Key::B);

    cloth(&mut done);

    // Files.
    let other = stage.folder.path().join("other.ron");
    stage.key(CTRL_SHIFT, Key::S);
    stage.answer(&[("file", other.to_str().unwrap())], "Save");
    done.saw("save_as", other.exists() && stage.open_path() == Some(other.as_path()), &stage);
    stage.find_and_do("sleeve.crown");
    stage.fill("note of point sleeve.crown", "at the shoulder");
    stage.ctrl(Key::S);
    done.saw("save", std::fs::read_to_string(&other).unwrap().contains("at the shoulder"), &stage);
    stage.ctrl(Key::N);
    done.saw("new", stage.says("No pieces yet") || stage.pieces().is_empty(), &stage);
    stage.ctrl(Key::O);
    stage.answer(&[("file", other.to_str().unwrap())], "Open");
    done.saw("open", stage.pieces().len() == 4, &stage);
    stage.ctrl(Key::Q);
    done.saw("quit", stage.is_closing(), &stage);

    let out = crate::program().args(["actions", "--json"]).output().unwrap();
    let table: serde_json::Value = serde_json::from_slice(&out.stdout).unwrap();
    let ids: BTreeSet<&str> = table.as_array().unwrap().iter().map(|a| a["id"].as_str().unwrap()).collect();
    assert_eq!(done.0, ids, "every action of the table is driven");
}

/// Actions of the room of cloth, on a draft of which something is cut.
fn cloth(done: &mut Driven) {
    let mut stage = Stage::on("market-apron.ron");
    let start = stage.text();
    let cell =
        |s: &Stage, word: &str| s.names().iter().any(|n| n.starts_with("canvas 60 in, M: ") && n.ends_with(word));
    stage.ctrl(Key::L);
    stage.wait_for("canvas 60 in, M: not planned");
    done.saw("cloth", stage.says("Lengths to buy"), &stage);
    stage.find_and_do("Plan all cloth");
    done.saw("plan_all", stage.says("Searching: "), &stage);
    stage.key(CTRL, Key::Period);
    stage.wait_for("Lengths to buy");
    done.saw("stop_planning", !stage.says("Searching: "), &stage);
    let own = stage.names().into_iter().find(|n| n.starts_with("canvas 60 in, M: ")).unwrap().to_owned();
    stage.click(&own);
    stage.ctrl(Key::I);
    stage.wait_for("Searching: ");
    stage.wait_for("Lengths to buy");
    done.saw("improve_plan", cell(&stage, ", found"), &stage);
    stage.find_and_do("Keep the plan");
    stage.wait_for(", kept");
    let kept = stage.saved();
    done.saw("keep_plan", kept.matches("digest: \"").count() == 1, &stage);
    stage.find_and_do("Take the plan out");
    done.saw("take_plan", stage.saved() == start, &stage);
    stage.rest();
    stage.find_and_do("Keep all plans");
    done.saw("keep_plans", stage.saved().contains("digest: \""), &stage);
    let many = |s: &Stage| s.text().matches("digest: \"").count();
    let all = many(&stage);
    stage.find_and_do("skirt_length");
    stage.fill("formula of value skirt_length", "21 in");
    stage.find_and_do("Take stale plans out");
    stage.saved();
    done.saw("take_stale_plans", many(&stage) < all, &stage);
    stage.ctrl(Key::Z);
    stage.ctrl(Key::Z);
    stage.wait_for("canvas 60 in, M: ");
    stage.wait_for("pocket, 1, on the cloth");
    stage.click("pocket, 1, on the cloth");
    let turned = |s: &Stage, words: &str| {
        s.says(words) || s.names().iter().any(|n| n.starts_with("canvas 60 in, M: ") && n.ends_with("by hand"))
    };
    stage.find_and_do("Turn by half");
    done.saw("turn_half", turned(&stage, "pocket stays"), &stage);
    stage.find_and_do("Turn over");
    done.saw("turn_over", turned(&stage, "pocket stays"), &stage);
    stage.find_and_do("Lock or unlock");
    done.saw("lock_piece", stage.says("pocket, 1, on the cloth, locked"), &stage);
    stage.find_and_do("Lay sizes together");
    stage.answer(&[("sizes", "2 x S, M")], "Add the row");
    stage.wait_for("canvas 60 in, 2 x S + M: not planned");
    done.saw("add_group", true, &stage);
    stage.find_and_do("Add a width of cloth");
    stage.answer(&[("cloth", "canvas"), ("width", "150 cm")], "Add the width");
    done.saw("add_width", stage.saved().contains("\"60 in\", \"150 cm\"]"), &stage);
    stage.find_and_do("Longest from so much");
    done.saw("longest", stage.field("cloth at hand").is_field, &stage);
    stage.press(Key::Escape);
}

#[test]
fn menus_show_the_table_and_do_the_same() {
    let mut stage = Stage::on("bodice-sleeve.ron");
    stage.click("Look");
    assert!(stage.says("Next size") && stage.says("Light or dark"), "{}", stage.all());
    stage.click("Next size");
    assert!(stage.seen("size 92").chosen);
    stage.click("Change");
    let undo = stage.told.iter().filter(|t| t.name.starts_with("Undo")).all(|t| !t.enabled);
    assert!(undo, "nothing was changed yet");
}

#[test]
fn handles_are_pulled_by_an_offset_with_shift_and_pushed_with_keys() {
    let mut stage = Stage::on("bodice-sleeve.ron");
    stage.click("piece front");
    stage.modifiers_held(Modifiers::SHIFT);
    stage.pull("front.pitch", vec2(20.0, 0.0));
    stage.modifiers_held(Modifiers::NONE);
    let text = stage.saved();
    assert!(text.contains(".moved(offset("), "{}", stage.all());
    // A second pull with an offset changes the same one.
    stage.modifiers_held(Modifiers::SHIFT);
    stage.pull("front.pitch", vec2(-7.0, 5.0));
    stage.modifiers_held(Modifiers::NONE);
    let again = stage.saved();
    assert_eq!(again.matches(".moved(offset(").count(), 1, "one offset");
    assert_ne!(again, text);
    stage.ctrl(Key::Z);
    stage.ctrl(Key::Z);
    stage.saved();
    // By keys: a click gives the focus.
    stage.click("front.pitch");
    let before = stage.measure(&["front.pitch"]);
    stage.tab_to("front.pitch");
    stage.press(Key::ArrowDown);
    stage.key(Modifiers::SHIFT, Key::ArrowRight);
    stage.saved();
    let after = stage.measure(&["front.pitch"]);
    let at = |v: &serde_json::Value, i: usize| v["front.pitch"]["88"][i].as_f64().unwrap();
    assert!((at(&after, 0) - at(&before, 0) - 10.0).abs() < 0.06, "{after} {before}");
    assert!((at(&after, 1) - at(&before, 1) - 1.0).abs() < 0.06, "{after} {before}");
    stage.ctrl(Key::Z);
    assert!(stage.says("undone: pull point front.pitch"), "each push is one step");
}

#[test]
fn curves_are_made_and_taken_back_on_the_card() {
    let mut stage = Stage::on("straight-skirt.ron");
    let before = stage.text();
    let piece = stage.pieces()[0]["piece ".len()..].split(',').next().unwrap().to_owned();
    stage.click(&format!("piece {piece}"));
    stage.click(&format!("edge {piece}.hem"));
    let called =
        |stage: &Stage, word: &str| stage.names().into_iter().find(|n| n.starts_with(word)).unwrap().to_owned();
    let bend = called(&stage, "Curve it ");
    stage.click(&bend);
    let curved = stage.saved();
    assert!(curved.contains("1/3)"), "{}", stage.all());
    let (a, b) = (stage.measure(&[&format!("length({piece}.hem)")]), before.len());
    assert!(a.as_object().is_some() && b > 0);
    // A handle stands at a third; pulled, it changes its fraction or nothing at all is told.
    let straighten = called(&stage, "Make it straight ");
    stage.click(&straighten);
    assert_eq!(stage.saved(), before);
}

#[test]
fn a_seam_is_changed_on_its_card() {
    let mut stage = Stage::on("bodice-sleeve.ron");
    stage.click("seam sleeve_seam");
    stage.click("fit eased");
    assert!(stage.saved().contains("fit: eased(longer: one, by: \"1 cm\")"), "{}", stage.all());
    assert!(stage.says("too short"), "{}", stage.all());
    stage.fill("longer by of seam sleeve_seam", "0 cm");
    stage.click("The other side");
    assert!(stage.saved().contains("fit: eased(longer: two, by: \"0 cm\")"));
    stage.click("fit equal");
    stage.click("seam shoulder");
    stage.fill("kept true by, of seam shoulder", "nothing_such");
    assert!(stage.says("nothing_such"), "a value that is not there is told: {}", stage.all());
    stage.fill("side one of seam shoulder", "back.shoulder, front.neckline");
    assert!(stage.saved().contains("one: [\"back.shoulder\", \"front.neckline\"]"));
}

#[test]
fn the_head_of_the_draft_and_its_unit_are_changed_on_its_card() {
    let mut stage = Stage::on("bodice-sleeve.ron");
    let formulas = stage.text().matches(" cm\"").count();
    stage.click_on_card("show in, eighths");
    assert!(stage.says("in"), "{}", stage.all());
    let text = stage.saved();
    assert!(text.contains("display: inch_eighths"), "{text}");
    assert_eq!(text.matches(" cm\"").count(), formulas, "no formula changes");
    stage.fill("title of draft", "A block of my own");
    assert!(stage.saved().contains("title: \"A block of my own\""));
    stage.fill("how far seams may be off of draft", "1/16 in");
    assert!(stage.saved().contains("seam_limit: \"1/16 in\""));
}

#[test]
fn the_pages_are_seen_counted_and_arranged_by_hand() {
    let mut stage = Stage::on("bodice-sleeve.ron");
    stage.key(CTRL_SHIFT, Key::P);
    let count = |stage: &Stage| {
        let told = stage.told.iter().find(|t| t.name.contains(" pages: the first, and ")).unwrap();
        told.name.split(' ').next().unwrap().parse::<usize>().unwrap()
    };
    let both = count(&stage);
    assert_eq!(stage.names().iter().filter(|n| n.starts_with("page ") && n.contains(": ")).count(), both - 1);
    stage.click("paper A4");
    assert!(stage.seen("paper A4").chosen && count(&stage) <= both);
    stage.click("print size 92");
    stage.click("print size 84");
    assert!(stage.seen("print size 88").chosen && stage.seen("print size 84").chosen);
    assert!(stage.says("print its sizes one by one"), "{}", stage.all());
    // A piece is moved: the count follows, the draft keeps it, undo takes it back.
    let before = (stage.text(), stage.rect("back on the pages"));
    stage.pull("back on the pages", vec2(60.0, 14.0));
    let moved = stage.rect("back on the pages");
    assert!(moved.left() != before.1.left(), "{moved:?}");
    let saved = stage.saved();
    assert!(saved.contains("table: [(sheet: \"pages\", piece: \"back\", x: \""), "{saved}");
    stage.ctrl(Key::Z);
    assert_eq!(stage.saved(), before.0);
    stage.pull("back on the pages", vec2(60.0, 14.0));
    stage.click("Arrange anew");
    assert_eq!(stage.saved(), before.0);
    // One piece alone, and as large as it will be: a page of A4 is 210 mm at 96 px to the inch.
    let all = count(&stage);
    stage.click("piece front");
    stage.key(CTRL_SHIFT, Key::P);
    stage.click("print only front");
    assert!(count(&stage) < all && stage.find("back on the pages").is_none());
    stage.click("true scale");
    let wide = stage.rect("page A1: front").width();
    assert!((wide - 190.0 * 96.0 / 25.4).abs() < 3.0, "{wide}");
    stage.click("longer");
    assert!((stage.rect("page A1: front").width() / wide - 1.01).abs() < 0.005);
    // A release of a draft with errors is blocked, with the reason in the dialog.
    let mut skirt = Stage::on("straight-skirt.ron");
    skirt.key(CTRL_SHIFT, Key::P);
    skirt.click("for release");
    skirt.key(CTRL_SHIFT, Key::W);
    let pdf = skirt.folder.path().join("skirt.pdf");
    skirt.answer(&[("file", pdf.to_str().unwrap())], "Write");
    assert!(skirt.says("a release is blocked by errors") && !pdf.exists(), "{}", skirt.all());
    skirt.press(Key::Escape);
    skirt.click("for toile");
    skirt.key(CTRL_SHIFT, Key::W);
    skirt.answer(&[("file", skirt.folder.path().join("no/such/x.pdf").to_str().unwrap())], "Write");
    assert!(skirt.says("■ "), "a folder that is not there is told: {}", skirt.all());
}
