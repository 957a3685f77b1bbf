//! The room of cloth: planned beside the window, stopped, kept, undone, moved by hand; judged by the saved file.

use egui::{Key, Modifiers, vec2};

use super::stage::Stage;

const CTRL: Modifiers = Modifiers { alt: false, ctrl: true, shift: false, mac_cmd: false, command: true };
const CTRL_SHIFT: Modifiers = Modifiers { shift: true, ..CTRL };

/// An apron with two sizes, so that searches end soon: the front cut whole, pockets in a pair.
fn apron() -> String {
    let text = std::fs::read_to_string(super::stage::example("market-apron.ron")).unwrap();
    text.replacen("widths: [\"45 in\", \"60 in\"]", "widths: [\"45 in\"]", 1)
}

/// A window in the room of cloth, its table made.
fn room(text: &str) -> Stage {
    let mut stage = Stage::on_text(text);
    stage.ctrl(Key::L);
    stage.wait_for("Lengths to buy");
    stage.wait_for("canvas 45 in, M: ");
    stage
}

/// How a cell is told: its length and how it stands.
fn cell(stage: &Stage, of: &str) -> String {
    let told = stage.told.iter().find(|t| t.name.starts_with(&format!("{of}: ")));
    told.unwrap_or_else(|| panic!("no cell {of}: {}", stage.all())).name.clone()
}

/// Plans the chosen cell and waits for the first lay.
fn plan(stage: &mut Stage, of: &str) {
    let name = cell(stage, of);
    stage.click(&name);
    stage.click("Plan it");
    for _ in 0..6_000 {
        stage.frame(vec![]);
        if stage.says(", on the cloth") || !stage.says("Searching: ") {
            break;
        }
        std::thread::sleep(std::time::Duration::from_millis(10));
    }
    if stage.says("Searching: ") && stage.seen("Stop").enabled {
        stage.click("Stop");
    }
    for _ in 0..3_000 {
        stage.frame(vec![]);
        if !stage.says("Searching: ") {
            break;
        }
        std::thread::sleep(std::time::Duration::from_millis(10));
    }
    stage.rest();
    assert!(cell(stage, of).ends_with(", found"), "{}: {}", cell(stage, of), stage.all());
}

/// The plans in the saved file, as the program reads them.
fn plans(text: &str) -> usize {
    text.matches("digest: \"").count()
}

/// Pieces on the cloth, by their names.
fn laid(stage: &Stage) -> Vec<String> {
    let names = stage.told.iter().filter(|t| t.name.contains(", on the cloth") && t.can_be_used);
    names.map(|t| t.name.clone()).collect()
}

#[test]
fn a_plan_is_found_kept_undone_and_stale_after_an_edit() {
    let mut stage = room(&apron());
    let start = stage.text();
    assert!(cell(&stage, "canvas 45 in, M").ends_with(": not planned"), "{}", cell(&stage, "canvas 45 in, M"));
    plan(&mut stage, "canvas 45 in, M");
    assert!(stage.says("buy ") && stage.says(" yd"), "{}", stage.all());
    assert!(!laid(&stage).is_empty());
    // What is found is no part of the draft.
    assert_eq!(stage.saved(), start);
    stage.key(CTRL_SHIFT, Key::K);
    stage.wait_for(", kept");
    let kept = stage.saved();
    assert_eq!(plans(&kept), 1, "{kept}");
    assert!(kept.contains("material: \"canvas\"") && kept.contains("width: \"45 in\""), "{kept}");
    stage.ctrl(Key::Z);
    assert_eq!(stage.saved(), start, "keeping is one step of undo");
    stage.key(CTRL_SHIFT, Key::Z);
    assert_eq!(stage.saved(), kept);
    stage.wait_for(", kept");
    // A piece is longer: the plan is not one of it any more.
    stage.find_and_do("skirt_length");
    stage.fill("formula of value skirt_length", "21 in");
    stage.wait_for("canvas 45 in, M: stale");
    assert!(stage.find("Plan again").is_some() && stage.says("This plan is stale"), "{}", stage.all());
    stage.find_and_do("Take stale plans out");
    assert_eq!(plans(&stage.saved()), 0);
}

#[test]
fn all_are_planned_beside_the_window_and_stopped_with_the_best_so_far() {
    let mut stage = room(&apron());
    stage.key(CTRL_SHIFT, Key::L);
    stage.wait_for("Searching: ");
    // Once every cell has something, it is enough.
    for _ in 0..12_000 {
        stage.frame(vec![]);
        let cells = stage.told.iter().filter(|t| t.can_be_used && t.name.contains(" in, ") && t.name.contains(": "));
        let lengths = cells.filter(|t| t.name.contains(" yd, ")).count();
        if lengths >= 8 || !stage.says("Searching: ") {
            break;
        }
        std::thread::sleep(std::time::Duration::from_millis(10));
    }
    if stage.says("Searching: ") {
        assert!(stage.says(" moves"), "{}", stage.all());
        stage.key(CTRL, Key::Period);
    }
    stage.wait_for("Lengths to buy");
    stage.click("Keep all");
    stage.wait_for("8 of 8 kept");
    let text = stage.saved();
    assert_eq!(plans(&text), 8, "four sizes, two cloths: {}", stage.all());
    stage.ctrl(Key::Z);
    assert_eq!(plans(&stage.saved()), 0, "all of them are one step");
}

#[test]
fn pieces_are_moved_by_hand_with_overlaps_told_and_steps_undone() {
    let mut stage = room(&apron());
    plan(&mut stage, "canvas 45 in, M");
    let own = laid(&stage);
    assert!(own.len() > 2, "{own:?}");
    let (first, rect) =
        own.iter().map(|n| (n.clone(), stage.rect(n))).max_by(|a, b| a.1.area().total_cmp(&b.1.area())).unwrap();
    let (other, to) = own.iter().map(|n| (n.clone(), stage.rect(n))).find(|(n, _)| *n != first).unwrap();
    // Another piece is laid in the middle of the large one.
    stage.pull(&other, rect.center() - to.center());
    assert!(stage.says("overlap by "), "{}", stage.all());
    let deep = stage.told.iter().find(|t| t.name.contains("overlap by ")).unwrap().name.clone();
    assert!(deep.ends_with(" in"), "{deep}");
    assert!(stage.says("cannot be cut so"), "{}", stage.all());
    assert!(cell(&stage, "canvas 45 in, M").ends_with(", by hand"), "{}", cell(&stage, "canvas 45 in, M"));
    assert!(!stage.seen("Keep").enabled, "what overlaps is not kept");
    stage.key(CTRL_SHIFT, Key::K);
    assert!(stage.says("it cannot be kept so"), "{}", stage.all());
    stage.ctrl(Key::Z);
    assert!(stage.says("undone: move ") && !stage.says("overlap by "), "press to release is one step: {}", stage.all());
    assert_eq!(stage.rect(&other), to);
    assert_eq!(plans(&stage.saved()), 0);
    // By keys: the end of the cloth moves with what is pushed beyond it.
    stage.tab_to(&other);
    // In the unit of the draft, like how deep pieces overlap.
    stage.click("Arrows: 1/8 in");
    stage.click("Arrows: 1/4 in");
    stage.tab_to(&other);
    let before = stage.rect(&other);
    stage.press(Key::ArrowRight);
    stage.press(Key::L);
    assert!(stage.says(", locked"), "{}", stage.all());
    stage.press(Key::ArrowRight);
    assert!(stage.says("is locked; unlock it first"), "{}", stage.all());
    stage.press(Key::L);
    stage.ctrl(Key::Z);
    stage.ctrl(Key::Z);
    stage.ctrl(Key::Z);
    assert!(stage.says("undone: push "), "{}", stage.all());
    assert!((stage.rect(&other).left() - before.left()).abs() < 0.5);
}

/// Waits for a search to end.
fn searched(stage: &mut Stage) {
    for _ in 0..4_000 {
        stage.frame(vec![]);
        if !stage.says("Searching: ") {
            break;
        }
        std::thread::sleep(std::time::Duration::from_millis(10));
    }
    stage.rest();
}

/// A plan whose last piece is pulled away and locked there; the name of that piece.
fn with_one_locked() -> (Stage, String) {
    let mut stage = room(&apron());
    plan(&mut stage, "canvas 45 in, M");
    let own = laid(&stage);
    let far = own.iter().max_by(|a, b| stage.rect(a).right().total_cmp(&stage.rect(b).right())).unwrap().clone();
    stage.pull(&far, vec2(40.0, 0.0));
    stage.tab_to(&far);
    stage.press(Key::L);
    let locked = laid(&stage).into_iter().find(|n| n.contains(", locked")).unwrap();
    (stage, locked)
}

#[test]
fn locked_pieces_stay_while_the_rest_is_improved() {
    let (mut stage, locked) = with_one_locked();
    // The rest is laid anew.
    stage.ctrl(Key::I);
    searched(&mut stage);
    assert!(laid(&stage).contains(&locked), "{:?}", laid(&stage));
    stage.key(CTRL_SHIFT, Key::K);
    stage.wait_for(", kept");
    let text = stage.saved();
    assert_eq!(text.matches("locked: true").count(), 1, "{text}");
}

#[test]
fn what_does_not_fit_is_told_with_its_width_and_what_could_be_done() {
    let text = apron().replacen("widths: [\"45 in\"]", "widths: [\"20 in\"]", 1);
    let mut stage = Stage::on_text(&text);
    stage.ctrl(Key::L);
    stage.wait_for("canvas 20 in, XL: does not fit");
    let own = cell(&stage, "canvas 20 in, XL");
    stage.click(&own);
    assert!(stage.says("does not fit in size XL") && stage.says("take cloth at least"), "{}", stage.all());
    assert!(!stage.seen("Plan it").enabled);
    // Another width, typed in the dialog with its unit; one undo takes it back.
    stage.click("Another width …");
    stage.answer(&[("cloth", "canvas"), ("width", "60")], "Add the width");
    assert!(stage.says("`60` has no unit: is it `60 mm`, `60 cm` or `60 in`?"), "{}", stage.all());
    stage.answer(&[("cloth", "canvas"), ("width", "60 in")], "Add the width");
    assert!(stage.saved().contains("widths: [\"20 in\", \"60 in\"]"), "{}", stage.text());
    stage.wait_for("canvas 60 in, XL: not planned");
    stage.ctrl(Key::Z);
    assert_eq!(stage.saved(), text);
}

#[test]
fn sizes_are_laid_together_and_wrong_ones_are_told() {
    let mut stage = room(&apron());
    stage.click("Sizes together …");
    stage.answer(&[("sizes", "2 x Q")], "Add the row");
    assert!(stage.says("there is no size Q; the sizes are S, M, L, XL"), "{}", stage.all());
    stage.answer(&[("sizes", "S, M")], "Add the row");
    stage.wait_for("canvas 45 in, S + M: not planned");
    stage.click("take S + M out of the table");
    stage.wait_for("Lengths to buy");
    for _ in 0..500 {
        stage.frame(vec![]);
        std::thread::sleep(std::time::Duration::from_millis(10));
        if !stage.says("S + M: not planned") {
            return;
        }
    }
    panic!("{}", stage.all());
}

#[test]
fn the_longest_from_so_much_cloth_is_told_in_words() {
    let mut stage = room(&apron());
    stage.click("Longest …");
    stage.answer(&[("value", "skirt_length"), ("cloth at hand", "soon")], "Look for it");
    assert!(stage.says("`soon` is no length of cloth"), "{}", stage.all());
    stage.click("of canvas 45 in, open");
    stage.click("in size M");
    stage.answer(&[("value", "nothing_such"), ("cloth at hand", "2 yd")], "Look for it");
    stage.wait_for("■ there is no");
    stage.answer(&[("value", "skirt_length"), ("cloth at hand", "4 yd")], "Look for it");
    // What is known to fit after a while is an answer.
    for _ in 0..800 {
        stage.frame(vec![]);
        std::thread::sleep(std::time::Duration::from_millis(10));
        if stage.says("skirt_length can be ") {
            break;
        }
    }
    if !stage.says("skirt_length can be ") {
        stage.click("Stop");
    }
    stage.wait_for("skirt_length can be ");
    assert!(stage.says("Now it is 20 in, which fits"), "{}", stage.all());
    stage.click("Put it in the draft");
    let text = stage.saved();
    assert!(!text.contains("skirt_length\", is: \"20 in\"") && text.contains("skirt_length\", is: \""), "{text}");
}

#[test]
fn a_lock_outlives_keeping_undoing_and_improving() {
    let (mut stage, locked) = with_one_locked();
    stage.key(CTRL_SHIFT, Key::K);
    stage.wait_for(", kept");
    stage.ctrl(Key::Z);
    stage.wait_for("canvas 45 in, M: ");
    for _ in 0..300 {
        stage.frame(vec![]);
        if cell(&stage, "canvas 45 in, M").ends_with(", found") {
            break;
        }
        std::thread::sleep(std::time::Duration::from_millis(10));
    }
    assert!(laid(&stage).contains(&locked), "{:?}", laid(&stage));
    let before = stage.rect(&locked);
    stage.ctrl(Key::I);
    searched(&mut stage);
    assert!(laid(&stage).contains(&locked), "{:?}", laid(&stage));
    stage.ctrl(Key::I);
    searched(&mut stage);
    assert!(laid(&stage).contains(&locked), "once more: {:?}", laid(&stage));
    assert!((stage.rect(&locked).width() - before.width()).abs() < 40.0);
    stage.key(CTRL_SHIFT, Key::K);
    stage.wait_for(", kept");
    assert_eq!(stage.saved().matches("locked: true").count(), 1, "{}", stage.text());
}

#[test]
fn plans_of_cloth_that_its_card_does_not_say_stand_under_the_table() {
    let mut stage = room(&apron());
    plan(&mut stage, "canvas 45 in, M");
    stage.key(CTRL_SHIFT, Key::K);
    stage.wait_for(", kept");
    let text = stage.saved().replacen("(name: \"canvas\", ", "(name: \"canvas\", laid: folded, ", 1);
    assert!(text.contains("laid: folded"), "{text}");
    let mut stage = Stage::on_text(&text);
    stage.ctrl(Key::L);
    stage.wait_for("Kept for canvas 45 in, open, which its card does not say");
    assert!(cell(&stage, "canvas 45 in, M").ends_with(": not planned"));
    let heads = stage.told.iter().filter(|t| t.name.starts_with("cloth canvas") && t.name.ends_with(": its card"));
    assert_eq!(heads.count(), 1, "a column for the cloth as its card says, none for the plan: {}", stage.all());
    stage.click("canvas 45 in, open, M: kept");
    assert!(!laid(&stage).is_empty());
    stage.click("take the plans for canvas 45 in, open out");
    assert_eq!(plans(&stage.saved()), 0);
    stage.ctrl(Key::Z);
    assert_eq!(plans(&stage.saved()), plans(&text), "one step of undo");
}

/// With more widths than have room the sizes stay at the left, wherever the table is scrolled to.
#[test]
fn sizes_stay_in_sight_when_the_table_is_scrolled_sideways() {
    let widths: Vec<String> = (0..9).map(|k| format!("\"{} in\"", 45 + 3 * k)).collect();
    let text = std::fs::read_to_string(super::stage::example("market-apron.ron")).unwrap();
    let text = text.replacen("widths: [\"45 in\", \"60 in\"]", &format!("widths: [{}]", widths.join(", ")), 1);
    let mut stage = Stage::on_text(&text);
    stage.ctrl(Key::L);
    stage.wait_for("canvas 45 in, M: not planned");
    let own = |stage: &Stage| {
        let cell = stage.rect("canvas 45 in, XL: not planned");
        let near = |t: &&super::stage::Told| t.rect.is_some_and(|r| (r.center().y - cell.center().y).abs() < 6.0);
        let found =
            stage.told.iter().filter(|t| t.name == "XL").find(near).unwrap_or_else(|| panic!("{}", stage.all()));
        (found.rect.unwrap(), cell)
    };
    let (name, cell) = own(&stage);
    let at = cell.center();
    stage.modifiers_held(Modifiers::SHIFT);
    stage.scroll(at, -300.0);
    stage.modifiers_held(Modifiers::NONE);
    let (still, gone) = own(&stage);
    assert!(gone.left() < cell.left() - 100.0, "it is scrolled: {gone:?} {cell:?}");
    assert!((still.left() - name.left()).abs() < 3.0, "{still:?} {name:?}");
    // What lies under the names takes no click there.
    stage.click_at(still.center());
    assert!(!stage.says("the plan of canvas 45 in, XL"), "{}", stage.all());
}
