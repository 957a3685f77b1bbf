//! Help, the first page and the guided first draft, driven by events.

use egui::{Key, Modifiers};

use super::stage::{Stage, example};

const CTRL_SHIFT: Modifiers = Modifiers { alt: false, ctrl: true, shift: true, mac_cmd: false, command: true };

/// The title of the page that is shown.
fn page(stage: &Stage) -> String {
    let shown = stage.told.iter().find(|t| t.name.starts_with("page ") && t.chosen);
    shown.unwrap_or_else(|| panic!("no page is shown: {}", stage.all())).name["page ".len()..].to_owned()
}

/// The title of a page, as the command line prints it.
fn title(id: &str) -> String {
    let out = crate::program().args(["help", id]).output().unwrap();
    let text = String::from_utf8(out.stdout).unwrap();
    let lines: Vec<&str> = text.lines().take_while(|l| !l.starts_with("==")).collect();
    assert!(!lines.is_empty() && lines.len() < 4, "{id}: {text}");
    lines.join(" ")
}

/// What a page is called in the list: its title, not the name of its file.
pub fn listed(id: &str) -> String {
    format!("page {}", title(id))
}

/// What a link to a page is called.
fn link(id: &str) -> String {
    format!("to {}", title(id))
}

fn in_help(stage: &Stage) -> bool {
    stage.find("search help").is_some()
}

#[test]
fn the_key_opens_help_on_the_function_under_the_cursor() {
    let mut stage = Stage::on("bodice-sleeve.ron");
    let before = stage.text();
    stage.click("piece front");
    stage.click("point front.tip");
    stage.write("place of point front.tip", "neck_point.polar(20°, 11 cm)");
    stage.press(Key::F1);
    assert_eq!(page(&stage), title("formulas"), "behind the last bracket there is no function");
    stage.press(Key::F1);
    let field = stage.field("place of point front.tip").rect.unwrap();
    stage.click_at(field.center());
    stage.press(Key::End);
    stage.press(Key::ArrowLeft);
    stage.press(Key::ArrowLeft);
    stage.press(Key::F1);
    assert_eq!(page(&stage), title("function/polar"), "in its brackets");
    assert!(stage.says("at a distance"), "{}", stage.all());
    // Nothing of what was typed is lost by it.
    stage.click("Close help");
    assert!(stage.saved().contains("neck_point.polar(20°, 11 cm)"));
    assert_ne!(stage.text(), before);
}

#[test]
fn the_key_opens_help_on_the_chosen_part_and_the_room() {
    let mut stage = Stage::on("bodice-sleeve.ron");
    for (part, wanted) in [
        ("piece front", "pieces"),
        ("point front.tip", "points"),
        ("edge front.armhole", "edges"),
        ("seam shoulder", "about-seams"),
    ] {
        stage.click(part);
        stage.press(Key::F1);
        assert_eq!(page(&stage), title(wanted), "{part}");
        stage.click("Close help");
        assert!(!in_help(&stage));
    }
    stage.ctrl(Key::T);
    stage.press(Key::F1);
    assert_eq!(page(&stage), title("chart"));
    stage.press(Key::Escape);
    assert!(stage.find("waist in 88").is_some(), "the chart is back");
    stage.key(CTRL_SHIFT, Key::P);
    stage.press(Key::F1);
    assert_eq!(page(&stage), title("sheets"));
}

#[test]
fn the_key_tells_what_to_do_about_a_finding() {
    let mut stage = Stage::on("bodice-sleeve.ron");
    stage.press(Key::F8);
    stage.press(Key::F1);
    assert_eq!(page(&stage), title("finding/joint-bent"));
    assert!(stage.says("What to do: Move the corner"), "{}", stage.all());
    // Somewhere else it is about that.
    stage.click("seam side");
    stage.press(Key::F1);
    assert_eq!(page(&stage), title("about-seams"));
}

#[test]
fn every_panel_has_a_button_that_opens_its_page() {
    let mut stage = Stage::on("bodice-sleeve.ron");
    for (button, wanted) in [
        ("help about the sizes", "sizes"),
        ("help about the contents", "contents"),
        ("help about the card", "card"),
        ("help about proof", "proof"),
        ("help about the table", "table"),
    ] {
        assert_eq!(stage.names().iter().filter(|n| **n == button).count(), 1, "{button}");
        stage.click(button);
        assert!(in_help(&stage), "{button} at {:?}", stage.rect(button));
        assert_eq!(page(&stage), title(wanted));
        stage.click("Close help");
    }
    stage.ctrl(Key::T);
    stage.click("help about the chart");
    assert_eq!(page(&stage), title("chart"));
    stage.click("Close help");
    stage.key(CTRL_SHIFT, Key::P);
    stage.click("help about the sheets");
    assert_eq!(page(&stage), title("sheets"));
    stage.click("Close help");
    stage.click("seam shoulder");
    stage.ctrl(Key::R);
    stage.click("help about rolling");
    assert_eq!(page(&stage), title("roll"));
    stage.click("help about this help");
    assert_eq!(page(&stage), title("help"));
    stage.click("Close help");
    assert!(stage.says("rolled to 0 cm"), "back where the person was: {}", stage.all());
    stage.ctrl(Key::R);
    stage.ctrl(Key::Comma);
    stage.click("help about preferences");
    assert_eq!(page(&stage), title("preferences"));
}

#[test]
fn links_lead_on_and_back_leads_back() {
    let mut stage = Stage::on("bodice-sleeve.ron");
    stage.click("help about the table");
    assert!(!stage.seen("back to the page before").enabled);
    stage.click(&link("preferences"));
    assert_eq!(page(&stage), title("preferences"));
    stage.click(&listed("chart"));
    stage.click(&link("about-sizes"));
    stage.click(&link("function/graded"));
    assert_eq!(page(&stage), title("function/graded"));
    for before in ["about-sizes", "chart", "preferences", "table"] {
        stage.click("back to the page before");
        assert_eq!(page(&stage), title(before));
    }
    assert!(!stage.seen("back to the page before").enabled);
}

#[test]
fn search_goes_over_all_pages() {
    let mut stage = Stage::on("bodice-sleeve.ron");
    stage.click("help about the table");
    stage.write("search help", "muslin");
    assert!(
        stage.find("page toile (US: muslin)").is_some() && stage.find(&listed("sheets")).is_none(),
        "{}",
        stage.all()
    );
    stage.click("page toile (US: muslin)");
    assert!(stage.says("trial garment"), "{}", stage.all());
    stage.write("search help", "zzzz");
    assert!(stage.says("No page holds these words."));
    stage.write("search help", "");
    assert!(stage.find("unfold Functions").is_some());
    stage.click("unfold Functions");
    stage.click(&listed("language"));
    assert_eq!(page(&stage), title("language"));
    assert!(stage.find("page toile (US: muslin)").is_none(), "the other heading is folded");
}

#[test]
fn a_dialog_comes_back_as_it_was_after_help() {
    let mut stage = Stage::on("bodice-sleeve.ron");
    stage.click("piece front");
    stage.ctrl(Key::P);
    stage.write("name", "new_one");
    stage.write("place", "neck_point.down(8 cm)");
    stage.press(Key::ArrowLeft);
    stage.press(Key::F1);
    assert_eq!(page(&stage), title("function/down"));
    assert!(stage.find("Add the point").is_none());
    stage.press(Key::Escape);
    assert_eq!(stage.field("name").value, "new_one");
    assert_eq!(stage.field("place").value, "neck_point.down(8 cm)");
    stage.click("help about this dialog");
    assert_eq!(page(&stage), title("points"));
    // Leaving help by another way brings it back too.
    stage.click("piece back");
    assert_eq!(stage.field("name").value, "new_one");
    stage.press(Key::Escape);
    assert!(!stage.says("not saved"));
}

#[test]
fn the_finder_finds_pages_behind_actions() {
    let mut stage = Stage::on("bodice-sleeve.ron");
    stage.find_and_do("corner_angle");
    assert_eq!(page(&stage), title("function/corner_angle"));
    stage.press(Key::Escape);
    // A page of that title would fit better by its first letters.
    stage.find_and_do("seam");
    assert!(!in_help(&stage) && stage.find("note of seam sleeve_seam").is_some(), "{}", stage.all());
    stage.press(Key::Escape);
    stage.find_and_do("undo");
    assert!(!in_help(&stage), "nothing was changed yet, so nothing is undone, and its action has no page here");
}

#[test]
fn without_a_file_the_first_page_says_where_to_begin() {
    let mut stage = Stage::empty();
    for name in ["Begin the guided draft", "Open a file …", "An empty draft", "open example trousers"] {
        stage.seen(name);
    }
    assert!(!stage.says("Open again"), "nothing was open yet");
    stage.press(Key::F1);
    assert_eq!(page(&stage), title("start"));
    stage.press(Key::Escape);
    stage.click("help about the first steps");
    stage.press(Key::Escape);
    stage.click("An empty draft");
    assert!(stage.find("open example trousers").is_none() && stage.find("piece front").is_none());
    // With a file it is not in the way.
    let stage = Stage::on("bodice-sleeve.ron");
    assert!(stage.find("Begin the guided draft").is_none() && stage.pieces().len() == 3);
}

#[test]
fn an_example_is_opened_as_a_copy() {
    let mut stage = Stage::empty();
    let original = std::fs::read(example("straight-skirt.ron")).unwrap();
    stage.click("open example straight-skirt");
    assert!(stage.says("Straight skirt block") && stage.pieces().len() == 2, "{}", stage.all());
    assert_eq!(stage.open_path(), None);
    stage.fill("title of draft", "Mine");
    assert!(stage.says("not saved"));
    // Leaving it asks; saving it asks for a name.
    stage.find_and_do("First page");
    stage.click("open example trousers");
    assert!(stage.says("Save first?"));
    stage.click("Save");
    let path = stage.file.clone();
    stage.answer(&[("file", path.to_str().unwrap())], "Save");
    assert!(stage.text().contains("title: \"Mine\""));
    assert!(stage.says("Plain trousers"), "then it goes on: {}", stage.all());
    assert_eq!(std::fs::read(example("straight-skirt.ron")).unwrap(), original);
}

#[test]
fn the_first_page_gives_way_to_what_is_done() {
    let mut stage = Stage::empty();
    stage.click("Add a size");
    stage.answer(&[("label", "88")], "Add the size");
    assert!(stage.find("open example trousers").is_none(), "{}", stage.all());
    stage.find_and_do("First page");
    assert!(stage.find("open example trousers").is_some(), "it can be had again");
    stage.find_and_do("First page");
    assert!(stage.find("open example trousers").is_none());
}

/// How many steps of the guide are done.
fn done(stage: &Stage) -> usize {
    stage.names().iter().filter(|n| n.starts_with("step ") && n.contains(", done: ")).count()
}

/// Points at the control of the step that is shown, and presses it.
fn where_and_press(stage: &mut Stage, control: &str) {
    stage.click("Show me where");
    assert_eq!(stage.focus.as_deref(), Some(control), "{}", stage.all());
    stage.press(Key::Enter);
}

#[test]
fn the_guide_leads_to_a_whole_draft_and_sees_each_step() {
    let mut stage = Stage::empty();
    stage.click("Begin the guided draft");
    assert!(stage.says("1 of 11: Add two sizes") && done(&stage) == 0, "{}", stage.all());
    for size in ["88", "96"] {
        where_and_press(&mut stage, "Add a size");
        stage.answer(&[("label", size)], "Add the size");
    }
    assert!(stage.says("2 of 11") && done(&stage) == 1, "{}", stage.all());
    where_and_press(&mut stage, "Add a row");
    stage.answer(&[("name", "hip")], "Add a body row");
    stage.write("hip in 88", "94 cm");
    stage.press(Key::Tab);
    assert_eq!(done(&stage), 1, "a row without all its numbers is not done");
    stage.click("Show me where");
    assert_eq!(stage.focus.as_deref(), Some("hip in 96"));
    stage.type_text("102 cm");
    stage.press(Key::Enter);
    assert!(stage.says("3 of 11") && done(&stage) == 2, "{}", stage.all());
    for piece in ["front", "back"] {
        where_and_press(&mut stage, "Add a piece");
        stage.answer(&[("name", piece)], "Add the piece");
        for (i, (point, at)) in
            [("a", "(0 cm, 0 cm)"), ("b", "a.right(20 cm)"), ("c", "b.down(50 cm)"), ("d", "a.down(50 cm)")]
                .into_iter()
                .enumerate()
        {
            match piece {
                "front" if i == 0 => where_and_press(&mut stage, "Add a point"),
                _ => stage.ctrl(Key::P),
            }
            stage.answer(&[("name", point), ("place", at)], "Add the point");
        }
        if piece == "front" {
            assert!(stage.says("5 of 11") && done(&stage) == 4, "{}", stage.all());
            stage.click("Show me where");
            assert_eq!(stage.focus.as_deref(), Some("place of point front.b"));
        }
        stage.click(&format!("point {piece}.b"));
        stage.fill(&format!("place of point {piece}.b"), "a.right(hip / 4)");
        for (i, (edge, from, to)) in
            [("waist", "a", "b"), ("side", "b", "c"), ("hem", "c", "d")].into_iter().enumerate()
        {
            stage.click(&format!("piece {piece}"));
            match piece {
                "front" if i == 0 => where_and_press(&mut stage, "Add an edge"),
                _ => stage.ctrl(Key::E),
            }
            stage.answer(&[("name", edge), ("from", from), ("to", to)], "Add the edge");
        }
        if piece == "front" {
            where_and_press(&mut stage, "Close the outline");
        } else {
            stage.find_and_do("Close the outline");
        }
        stage.answer(&[("name of the edge", "centre")], "Close it");
    }
    assert!(stage.says("9 of 11: Sew a seam") && done(&stage) == 8, "{}", stage.all());
    where_and_press(&mut stage, "Add a seam");
    stage.answer(&[("name", "side"), ("side one", "front.side"), ("side two", "back.side")], "Add the seam");
    assert!(stage.says("11 of 11: Save it") && done(&stage) == 10, "no error is left: {}", stage.all());
    stage.click("Show me where");
    assert_eq!(stage.focus.as_deref(), Some("Draft"));
    stage.ctrl(Key::S);
    let path = stage.file.clone();
    stage.answer(&[("file", path.to_str().unwrap())], "Save");
    assert!(done(&stage) == 11 && stage.says("Everything was done."), "{}", stage.all());
    let (exit, proof) = stage.proof();
    assert_eq!(exit, 0, "{proof}");
    // What is undone is to do again.
    stage.ctrl(Key::Z);
    assert!(done(&stage) < 11);
}

#[test]
fn the_guide_can_be_left_and_taken_up_where_the_draft_stands() {
    let mut stage = Stage::empty();
    stage.click("Begin the guided draft");
    for size in ["S", "L"] {
        stage.click("Add a size");
        stage.answer(&[("label", size)], "Add the size");
    }
    stage.click("step 9, to do: Sew a seam");
    assert!(stage.says("9 of 11") && stage.seen("step 9, to do: Sew a seam").chosen, "any step can be read");
    stage.click("Leave the guide");
    assert!(stage.find("Show me where").is_none());
    stage.find_and_do("Guided first draft");
    assert!(stage.says("2 of 11: Add a row"), "{}", stage.all());
    stage.click("help about the guide");
    assert_eq!(page(&stage), title("guide"));
    stage.press(Key::Escape);
    // It is no step of the draft: undo knows nothing of it.
    stage.ctrl(Key::Z);
    assert!(stage.says("undone: ") && stage.says("1 of 11"), "{}", stage.all());
}

#[test]
fn the_step_of_proof_leads_to_the_first_finding() {
    let mut stage = Stage::on("straight-skirt.ron");
    stage.find_and_do("Guided first draft");
    assert!(stage.says("10 of 11: Read what proof says"), "{}", stage.all());
    stage.click("Show me where");
    assert!(stage.focus.as_deref().is_some_and(|f| f.starts_with("error: seam.side")), "{:?}", stage.focus);
    stage.press(Key::F1);
    assert_eq!(page(&stage), title("finding/seam-length"));
}
