//! The chart: every gesture and action of it, judged by the saved text.

use egui::{Event, Key, Modifiers};

use super::stage::Stage;

const ALT: Modifiers = Modifiers { alt: true, ..Modifiers::NONE };
const SHIFT: Modifiers = Modifiers { shift: true, ..Modifiers::NONE };
const CTRL_SHIFT: Modifiers = Modifiers { alt: false, ctrl: true, shift: true, mac_cmd: false, command: true };

/// Three sizes, three rows, a person; `hip` has a gap and `ease` is the same in all sizes.
const SMALL: &str = r#"(
    format: "tracewheel draft",
    version: 0,
    display: cm,
    chart: (
        girth: ["84", "88", "92"],
        base: "88",
        rows: [
            (name: "bust", by: [girth], cells: [("84", "84 cm"), ("88", "88 cm"), ("92", "92 cm")]),
            (name: "waist", by: [girth], cells: [("84", "68 cm"), ("88", "72 cm"), ("92", "76 cm")]),
            (name: "hip", by: [girth], cells: [("84", "92 cm"), ("92", "100 cm")]),
            (name: "ease", kind: house, is: "4 cm"),
        ],
        persons: [(name: "Ada", cells: [("bust", "90 cm")])],
    ),
)"#;

/// The chart of a draft.
pub fn chart(text: &str) -> Stage {
    let mut stage = Stage::on_text(text);
    stage.ctrl(Key::T);
    stage
}

/// The keyboard's paste key with this on the clipboard.
fn paste(stage: &mut Stage, text: &str) {
    stage.frame(vec![Event::Paste(text.to_owned())]);
    stage.rest();
}

pub fn enter(stage: &mut Stage, cell: &str) {
    let at = stage.field(cell).rect.unwrap().center();
    stage.click_at(at);
    assert_eq!(stage.focus.as_deref(), Some(cell));
}

/// The button of the dialog, not the one on the card behind it.
fn confirm_delete(stage: &mut Stage) {
    let all = stage.told.iter().filter(|t| t.name == "Delete" && !t.is_words).filter_map(|t| t.rect);
    let at = all.map(|r| r.center()).find(|c| c.x > 400.0 && c.x < 1200.0 && c.y > 300.0).unwrap();
    stage.click_at(at);
}

#[test]
fn a_cell_is_typed_in_and_escape_takes_it_back() {
    let mut stage = chart(SMALL);
    let before = stage.saved();
    stage.write("waist in 88", "73");
    stage.press(Key::Escape);
    assert_eq!(stage.field("waist in 88").value, "72 cm");
    assert_eq!(stage.focus.as_deref(), Some("waist in 88"), "the person is still in the cell");
    assert_eq!(stage.saved(), before);
    stage.write("waist in 88", "73,5 cm");
    stage.press(Key::Enter);
    assert!(stage.saved().contains("(\"88\", \"73.5 cm\")"));
}

#[test]
fn arrows_enter_and_tab_go_from_cell_to_cell() {
    let mut stage = chart(SMALL);
    let before = stage.saved();
    enter(&mut stage, "bust in 84");
    for (modifiers, key, cell) in [
        (Modifiers::NONE, Key::ArrowRight, "bust in 88"),
        (Modifiers::NONE, Key::ArrowDown, "waist in 88"),
        (Modifiers::NONE, Key::Enter, "hip in 88"),
        (Modifiers::NONE, Key::Tab, "hip in 92"),
        (Modifiers::NONE, Key::Tab, "hip in Ada"),
        (SHIFT, Key::Tab, "hip in 92"),
        (SHIFT, Key::Enter, "waist in 92"),
        (Modifiers::NONE, Key::ArrowUp, "bust in 92"),
        (Modifiers::NONE, Key::ArrowLeft, "bust in 88"),
        (Modifiers::NONE, Key::Enter, "waist in 88"),
    ] {
        stage.key(modifiers, key);
        assert_eq!(stage.focus.as_deref(), Some(cell), "{key:?}");
    }
    // Behind the last cell of a row comes the first of the next.
    enter(&mut stage, "bust in Ada");
    stage.press(Key::Tab);
    assert_eq!(stage.focus.as_deref(), Some("waist in 84"));
    assert!(stage.seen("row waist").chosen, "its row is marked");
    // Within a text that is typed, Left goes through it.
    stage.type_text("7");
    stage.type_text("0 cm");
    stage.press(Key::ArrowLeft);
    assert_eq!(stage.focus.as_deref(), Some("waist in 84"));
    stage.press(Key::Escape);
    assert_eq!(stage.saved(), before, "going about changes nothing");
}

#[test]
fn delete_empties_a_cell() {
    let mut stage = chart(SMALL);
    enter(&mut stage, "waist in 92");
    stage.press(Key::Delete);
    stage.press(Key::Enter);
    let text = stage.saved();
    assert!(text.contains("(\"88\", \"72 cm\")") && !text.contains("76 cm"), "{text}");
    assert_eq!(stage.focus.as_deref(), Some("hip in 92"));
    stage.find_and_do("Undo");
    assert!(stage.saved().contains("76 cm"));
}

#[test]
fn a_step_is_typed_from_the_size_before() {
    let mut stage = chart(SMALL);
    stage.fill("waist in 92", "+4,5 cm");
    assert!(stage.saved().contains("(\"92\", \"76.5 cm\")"));
    let before = stage.text();
    stage.fill("bust in 84", "+4 cm");
    assert!(stage.says("a step needs a size before it"), "{}", stage.all());
    stage.press(Key::Escape);
    stage.press(Key::Escape);
    assert_eq!(stage.saved(), before);
}

#[test]
fn steps_are_shown_and_an_uneven_one_has_a_sign() {
    let text = SMALL
        .replace("\"84\", \"88\", \"92\"]", "\"84\", \"88\", \"92\", \"96\", \"100\"]")
        .replace("(\"92\", \"92 cm\")]", "(\"92\", \"92 cm\"), (\"96\", \"97 cm\"), (\"100\", \"101 cm\")]");
    let mut stage = chart(&text);
    assert!(!stage.says("step of bust"));
    stage.click("steps under the numbers");
    stage.seen("step of bust to 88: +4 cm");
    stage.seen("step of bust to 96: +5 cm, uneven");
    assert!(stage.says("Common practice, no source"), "the rule is told");
    assert!(stage.find("step of bust to 84").is_none(), "the first has no step");
    let below = stage.rect("step of bust to 96: +5 cm, uneven").center();
    stage.click_at(below);
    assert_eq!(stage.focus.as_deref(), Some("bust in 96"), "the whole cell is taken by a click");
    stage.fill("bust in 96", "96 cm");
    stage.fill("bust in 100", "+4 cm");
    stage.seen("step of bust to 96: +4 cm");
    assert!(stage.saved().contains("(\"100\", \"100 cm\")"));
    stage.click("steps under the numbers");
    assert!(!stage.says("step of bust"));
}

#[test]
fn a_block_with_head_and_names_is_taken_in_one_step() {
    let mut stage = chart(SMALL);
    let before = stage.saved();
    enter(&mut stage, "bust in 84");
    paste(&mut stage, "\t84\t88\t92\nwaist\t66 cm\t70,5 cm\t74 cm\nhip\t90 cm\t94 cm\t33 1/8\"\n");
    assert!(stage.find("page Paste").is_some_and(|p| p.chosen), "{}", stage.all());
    stage.seen("waist in 88: takes 70.5 cm");
    assert!(stage.seen("first line names sizes").chosen && stage.seen("first column names rows").chosen);
    assert_eq!(stage.saved(), before, "nothing changes before it is taken");
    stage.click("take the numbers");
    assert!(stage.says("6 numbers were taken"), "{}", stage.all());
    let text = stage.saved();
    assert!(text.contains("(\"88\", \"70.5 cm\")") && text.contains("(\"92\", \"33 1/8 in\")"), "{text}");
    assert!(stage.find("waist in 88").is_some(), "back at the numbers");
    stage.ctrl(Key::Z);
    assert!(stage.says("undone: take numbers into the chart"));
    assert_eq!(stage.saved(), before);
}

#[test]
fn a_bare_block_goes_where_the_person_is_and_needs_a_unit() {
    let mut stage = chart(SMALL);
    let before = stage.saved();
    enter(&mut stage, "waist in 88");
    paste(&mut stage, "70\t74\n98\t102\n");
    assert!(stage.says("Say in which unit the bare numbers are"), "{}", stage.all());
    assert!(stage.says("line 1, waist, 88: `70`: it has no unit"), "{}", stage.all());
    assert!(!stage.seen("take the numbers").enabled);
    stage.click("take the numbers");
    assert_eq!(stage.saved(), before);
    stage.click("bare numbers in cm");
    stage.seen("hip in 92: takes 102 cm");
    stage.click("take the numbers");
    let text = stage.saved();
    for cell in ["(\"88\", \"70 cm\")", "(\"92\", \"74 cm\")", "(\"88\", \"98 cm\")", "(\"92\", \"102 cm\")"] {
        assert!(text.contains(cell), "{cell}: {text}");
    }
}

#[test]
fn wrong_cells_are_marked_and_stay_listed_after_the_right_ones_are_taken() {
    let mut stage = chart(SMALL);
    stage.find_and_do("Paste numbers");
    stage.write("numbers to be pasted", "row,84,88\nbust,83 cm,8 8\nwaist,\"67,5 cm\",n/a\n");
    stage.seen("waist in 84: takes 67.5 cm");
    assert!(stage.says("bust in 88: wrong"), "{}", stage.all());
    assert!(stage.says("line 3, waist, 88: `n/a`: it is no number"), "{}", stage.all());
    stage.click("take the numbers");
    assert!(stage.says("2 numbers were taken; 2 cells could not be taken and stay listed"), "{}", stage.all());
    let text = stage.saved();
    assert!(text.contains("(\"84\", \"83 cm\")") && text.contains("(\"84\", \"67.5 cm\")"));
    // Still there: put right in the text, they are taken too.
    assert!(stage.says("waist in 84: already there") && stage.says("line 2, bust, 88: `8 8`"), "{}", stage.all());
    stage.write("numbers to be pasted", "row,84,88\nbust,83 cm,87 cm\n");
    stage.click("take the numbers");
    assert!(stage.saved().contains("(\"88\", \"87 cm\")"));
}

#[test]
fn a_block_larger_than_the_chart_says_so_and_offers_to_add() {
    let mut stage = chart(SMALL);
    let before = stage.saved();
    paste(&mut stage, "\t88\t96\nbust\t88 cm\t96 cm\nankle\t22 cm\t23 cm\n");
    assert!(stage.says("columns without a place: 1; lines without a place: 1"), "{}", stage.all());
    assert!(stage.says("the chart has no row ankle"), "{}", stage.all());
    assert!(!stage.seen("take the numbers").enabled, "what is left is there already");
    assert_eq!(stage.saved(), before);
    stage.click("add the new sizes");
    stage.click("add the new rows");
    stage.seen("ankle in 96: takes 23 cm");
    stage.click("take the numbers");
    assert!(stage.says("added: size 96, row ankle"), "{}", stage.all());
    let text = stage.saved();
    assert!(text.contains("girth: [\"84\", \"88\", \"92\", \"96\"]"), "{text}");
    assert!(text.contains("name: \"ankle\"") && text.contains("(\"96\", \"23 cm\")"), "{text}");
    stage.ctrl(Key::Z);
    assert_eq!(stage.saved(), before, "one step");
}

#[test]
fn columns_and_lines_without_a_name_get_one_from_the_person() {
    let mut stage = chart(SMALL);
    enter(&mut stage, "hip in 92");
    paste(&mut stage, "100 cm\t104 cm\t108 cm\n22 cm\t23 cm\t24 cm\n");
    // Behind 92 stands a person; what is further has no place, nor has the line below hip.
    assert!(stage.says("columns without a place: 1; lines without a place: 1"), "{}", stage.all());
    assert!(stage.says("there is no column behind Ada") && stage.says("there is no row below hip"), "{}", stage.all());
    stage.click("add the new rows");
    stage.write("names of new rows", "ankle");
    stage.seen("ankle in 92: takes 22 cm");
    stage.click("take the numbers");
    assert!(stage.says("2 cells could not be taken"), "{}", stage.all());
    let text = stage.saved();
    assert!(text.contains("name: \"ankle\"") && text.contains("(\"ankle\", \"23 cm\")"), "{text}");
}

#[test]
fn a_single_number_is_pasted_into_the_cell_itself() {
    let mut stage = chart(SMALL);
    enter(&mut stage, "waist in 88");
    paste(&mut stage, "71,5 cm");
    stage.press(Key::Enter);
    assert!(stage.saved().contains("(\"88\", \"71.5 cm\")"), "{}", stage.all());
    assert!(!stage.seen("page Paste").chosen);
}

#[test]
fn what_parts_the_columns_can_be_said() {
    let mut stage = chart(SMALL);
    stage.find_and_do("Paste numbers");
    stage.write("numbers to be pasted", "84,5\n68,5\n");
    assert!(stage.seen("parted by nothing").chosen, "a decimal sign, until something else is said");
    stage.click("bare numbers in cm");
    stage.seen("bust in 84: takes 84.5 cm");
    stage.click("parted by commas");
    stage.seen("bust in 88: takes 5 cm");
    stage.click("parted by nothing");
    let before = stage.text();
    stage.click("Put it away");
    assert!(stage.find("bust in 84").is_some() && stage.saved() != before);
    assert!(!stage.text().contains("84.5"), "nothing was taken");
}

#[test]
fn the_chart_is_written_as_a_table_and_read_again() {
    let mut stage = chart(SMALL);
    let before = stage.saved();
    let table = stage.folder.path().join("chart.csv");
    stage.click("Write the chart as a table");
    stage.answer(&[("file", table.to_str().unwrap())], "Write");
    let text = std::fs::read_to_string(&table).unwrap();
    assert!(text.starts_with("row,kind,84,88,92,Ada\nbust,body,84 cm,88 cm,92 cm,90 cm\n"), "{text}");
    std::fs::write(&table, text.replace("72 cm", "71 cm")).unwrap();
    stage.click("Read numbers from a table");
    stage.answer(&[("file", table.to_str().unwrap())], "Read");
    assert!(stage.says("From chart.csv"), "{}", stage.all());
    stage.seen("waist in 88: takes 71 cm");
    assert_eq!(stage.saved(), before);
    stage.click("take the numbers");
    assert_eq!(stage.saved(), before.replace("72 cm", "71 cm"));
    // A file that is not there is told in the dialog, which stays.
    stage.click("Read numbers from a table");
    stage.answer(&[("file", stage.folder.path().join("none.csv").to_str().unwrap().to_owned().as_str())], "Read");
    assert!(
        stage.says("none.csv cannot be read") && stage.field("file").value.ends_with("none.csv"),
        "{}",
        stage.all()
    );
}

#[test]
fn proposals_are_listed_and_confirmed_one_by_one() {
    let mut stage = chart(SMALL);
    stage.click("page Proposals: 1");
    assert!(stage.says("between two numbers") && stage.field("hip in 88").is_field, "{}", stage.all());
    stage.click("confirm hip in 88");
    assert!(
        stage.saved().contains("(\"84\", \"92 cm\"), (\"88\", \"96 cm\"), (\"92\", \"100 cm\")"),
        "{}",
        stage.text()
    );
    assert!(stage.says("nothing waits to be confirmed"));
}

/// Two gaps in `hip` and one in `waist`.
fn gaps() -> String {
    SMALL
        .replace("\"84\", \"88\", \"92\"]", "\"84\", \"86\", \"88\", \"90\", \"92\"]")
        .replace("(\"88\", \"88 cm\"), ", "(\"86\", \"86 cm\"), (\"88\", \"88 cm\"), (\"90\", \"90 cm\"), ")
}

#[test]
fn proposals_are_confirmed_by_row_typed_over_or_all() {
    let mut stage = chart(&gaps());
    stage.find_and_do("Proposed numbers");
    stage.click("Confirm 3 of hip");
    let text = stage.saved();
    assert!(text.contains("(\"86\", \"94 cm\")") && text.contains("(\"90\", \"98 cm\")"), "{text}");
    assert!(!text.contains("(\"86\", \"70 cm\")"), "only that row");
    // Typed over: the line stays while it is typed in.
    stage.write("waist in 86", "69");
    stage.type_text(",5 cm");
    stage.press(Key::Enter);
    assert!(stage.saved().contains("(\"86\", \"69.5 cm\")"), "{}", stage.all());
    stage.click("Confirm all 1");
    assert!(stage.saved().contains("(\"90\", \"74 cm\")"));
}

#[test]
fn a_second_axis_is_added_and_a_row_varies_by_it() {
    let mut stage = chart(SMALL);
    stage.click("page Sizes and sets");
    for label in ["B", "C"] {
        stage.click("Add a label to cup");
        stage.answer(&[("label", label)], "Add the size");
    }
    let text = stage.saved();
    assert!(text.contains("cup: [\"B\", \"C\"]") && text.contains("base: \"88/B\""), "{text}");
    stage.click("page Numbers");
    stage.click("row bust");
    stage.click("varies by cup");
    let text = stage.saved();
    assert!(text.contains("by: [girth, cup]") && text.contains("(\"88/C\", \"88 cm\")"), "{text}");
    stage.fill("bust in 88/C", "90 cm");
    assert!(stage.saved().contains("(\"88/C\", \"90 cm\")"));
    // Taken back: the base's numbers stay, and what goes is counted.
    stage.click("row bust");
    stage.click("varies by cup");
    assert!(stage.says("1 number of bust that differs"), "{}", stage.all());
    assert!(stage.saved().contains("(\"88\", \"88 cm\")"));
}

#[test]
fn labels_are_moved_renamed_removed_and_the_axis_is_taken_out() {
    let mut stage = chart(SMALL);
    stage.find_and_do("Sizes and sets");
    stage.click("put 84 later");
    let text = stage.saved();
    assert!(text.contains("girth: [\"88\", \"84\", \"92\"]"), "{text}");
    assert!(text.contains("cells: [(\"88\", \"72 cm\"), (\"84\", \"68 cm\")"), "cells follow: {text}");
    stage.click("put 84 earlier");
    assert!(stage.saved().contains("girth: [\"84\", \"88\", \"92\"]"));
    for (axis, label) in [("length", "short"), ("length", "tall")] {
        stage.click(&format!("Add a label to {axis}"));
        stage.answer(&[("label", label)], "Add the size");
    }
    stage.click("rename size tall");
    stage.answer(&[("label", "long")], "Rename it");
    assert!(stage.saved().contains("length: [\"short\", \"long\"]"));
    stage.click("make long the base");
    assert!(stage.saved().contains("base: \"88/long\""));
    stage.click("make 92 the base");
    assert!(stage.saved().contains("base: \"92/long\""));
    stage.click("delete size short");
    stage.answer(&[], "Delete the size");
    assert!(stage.saved().contains("length: [\"long\"]"));
    stage.click("Take out length");
    let text = stage.saved();
    assert!(!text.contains("length:") && text.contains("base: \"92\""), "{text}");
    assert!(stage.find("Take out girth").is_none(), "a chart keeps one axis");
}

#[test]
fn an_axis_that_does_not_exist_is_refused_in_the_dialog() {
    let mut stage = chart(SMALL);
    let before = stage.saved();
    stage.click("Add a size");
    stage.answer(&[("label", "96"), ("along which axis", "width")], "Add the size");
    assert!(stage.says("the axes are girth, cup and length"), "{}", stage.all());
    stage.press(Key::Escape);
    assert_eq!(stage.saved(), before);
}

#[test]
fn size_sets_are_added_chosen_named_and_removed() {
    let mut stage = chart(SMALL);
    stage.click("page Sizes and sets");
    stage.click("Add a size set");
    stage.answer(&[("name", "petite")], "Add the set");
    assert!(stage.saved().contains("sets: [(name: \"petite\")]"), "{}", stage.text());
    stage.click("92 in set petite");
    assert!(stage.saved().contains("(name: \"petite\", girth: [\"84\", \"88\"])"), "{}", stage.text());
    stage.click("base of set petite");
    stage.click("base of petite: 84");
    assert!(stage.saved().contains("base: \"84\")"), "{}", stage.text());
    stage.click("rename set petite");
    stage.answer(&[("name", "small")], "Rename it");
    assert!(stage.saved().contains("name: \"small\""), "{}", stage.text());
    // The last size of a set is not taken out of it.
    stage.click("84 in set small");
    let before = stage.saved();
    stage.click("88 in set small");
    assert!(stage.says("needs at least one size"), "{}", stage.all());
    assert_eq!(stage.saved(), before);
    stage.click("delete set small");
    confirm_delete(&mut stage);
    assert!(!stage.saved().contains("sets:"), "{}", stage.text());
}

#[test]
fn persons_are_added_measured_noted_and_removed() {
    let mut stage = chart(SMALL);
    stage.click("Add a person");
    stage.answer(&[("name", "Tester")], "Add the person");
    stage.fill("bust in Tester", "91 cm");
    assert!(stage.saved().contains("(name: \"Tester\", cells: [(\"bust\", \"91 cm\")])"), "{}", stage.text());
    stage.click("column Tester");
    stage.fill("note of person Tester", "measured twice");
    assert!(stage.saved().contains("note: \"measured twice\""));
    stage.click("column Ada");
    stage.press(Key::Delete);
    confirm_delete(&mut stage);
    assert!(!stage.saved().contains("Ada"));
}

#[test]
fn rows_are_added_moved_and_described() {
    let mut stage = chart(SMALL);
    stage.click("Add a row");
    stage.answer(&[("name", "wrist")], "Add a body row");
    stage.type_text("15 cm");
    stage.press(Key::Enter);
    assert!(
        stage.saved().contains("(name: \"wrist\", kind: body, by: [girth], cells: [(\"84\", \"15 cm\")])"),
        "{}",
        stage.text()
    );
    stage.click("row waist");
    stage.key(ALT, Key::ArrowUp);
    let at = |text: &str, name: &str| text.find(&format!("name: \"{name}\"")).unwrap();
    let text = stage.saved();
    assert!(at(&text, "waist") < at(&text, "bust"), "{text}");
    stage.key(ALT, Key::ArrowUp);
    assert!(stage.says("waist is the first row already"), "{}", stage.all());
    assert_eq!(stage.saved(), text);
    stage.key(ALT, Key::ArrowDown);
    stage.click("Move down");
    let text = stage.saved();
    assert!(at(&text, "hip") < at(&text, "waist"), "{text}");
    stage.fill("what is measured of row waist", "around the waist");
    stage.fill("level of row waist", "the narrowest");
    stage.fill("how to take it of row waist", "tape level");
    stage.fill("source of row waist", "own");
    stage.fill("note of row waist", "snug");
    stage.click("house row");
    let text = stage.saved();
    for words in ["around the waist", "the narrowest", "tape level", "\"own\"", "\"snug\""] {
        assert!(text.contains(words), "{words}: {text}");
    }
    assert_eq!(text.matches("kind: house").count(), 2, "{text}");
    stage.click("body row");
    assert_eq!(stage.saved().matches("kind: house").count(), 1);
}

#[test]
fn a_row_comes_to_vary_by_no_axis_and_by_one_again() {
    let mut stage = chart(SMALL);
    stage.click("row bust");
    stage.click("varies by girth");
    assert!(stage.says("2 numbers of bust"), "{}", stage.all());
    let text = stage.saved();
    assert!(text.contains("(name: \"bust\", kind: body, is: \"88 cm\")"), "{text}");
    stage.ctrl(Key::Z);
    assert!(stage.saved().contains("(\"84\", \"84 cm\")"));
    stage.click("row bust");
    let before = stage.saved();
    stage.click("varies by cup");
    assert!(stage.says("the chart has no sizes along cup yet"), "{}", stage.all());
    assert_eq!(stage.saved(), before);
}

#[test]
fn rows_are_renamed_and_the_formula_of_a_row_is_on_its_card() {
    let mut stage = chart(SMALL);
    stage.click("row ease");
    stage.fill("formula for sizes without a number of row ease", "bust / 20");
    stage.click("row bust");
    stage.press(Key::F2);
    stage.answer(&[("name", "chest")], "Rename it");
    let text = stage.saved();
    assert!(text.contains("is: \"chest / 20\"") && text.contains("(\"chest\", \"90 cm\")"), "{text}");
    assert!(stage.says("ease in every size: chest / 20"), "{}", stage.all());
}

#[test]
fn every_field_and_button_of_a_page_has_a_name_of_its_own() {
    let mut stage = chart(&gaps().replace("girth: [", "cup: [\"B\", \"C\"], sets: [(name: \"one\")], girth: ["));
    for page in ["page Numbers", "page Sizes and sets", "page Proposals: 5", "page Paste"] {
        stage.click(page);
        if page == "page Paste" {
            stage.write("numbers to be pasted", "\t84\t88\t99\nwaist\t1 cm\tx\t2 cm\nmore\t1 cm\t2\t3 cm");
        }
        // The middle, between contents and card, over the findings.
        let top = stage.rect("page Numbers").top();
        let mut names: Vec<&str> = stage
            .told
            .iter()
            .filter(|t| !t.is_words && !t.name.is_empty())
            .filter(|t| {
                t.rect.is_some_and(|r| r.left() > 230.0 && r.right() < 1280.0 && r.top() >= top && r.bottom() < 840.0)
            })
            .map(|t| t.name.as_str())
            .collect();
        let many = names.len();
        names.sort_unstable();
        names.dedup();
        assert!(many > 5, "{page}: {names:?}");
        assert_eq!(names.len(), many, "{page}: {names:?}");
    }
}

#[test]
fn a_column_is_chosen_by_its_head_and_told() {
    let mut stage = chart(SMALL);
    let before = stage.saved();
    stage.click("column 92");
    assert!(stage.seen("size 92").chosen && stage.seen("column 92").chosen && !stage.seen("column 88, base").chosen);
    assert_eq!(stage.saved(), before);
}

#[test]
fn keys_are_not_written_into_the_cell_and_shortcuts_still_work_in_it() {
    let mut stage = chart(SMALL);
    enter(&mut stage, "waist in 88");
    stage.key(CTRL_SHIFT, Key::V);
    assert!(stage.seen("page Paste").chosen);
    stage.click("page Numbers");
    enter(&mut stage, "waist in 88");
    stage.key(ALT, Key::ArrowDown);
    let text = stage.saved();
    assert!(text.find("name: \"hip\"") < text.find("name: \"waist\""), "{text}");
    assert!(text.contains("(\"88\", \"72 cm\")"), "the cell is as it was");
}
