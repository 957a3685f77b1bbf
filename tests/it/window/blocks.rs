//! Blocks taken from other drafts, by hand: taken, noticed when they change, looked at, taken over, moved, untied.

use egui::Key;

use super::stage::{Stage, example};

/// A garment that is saved, and the path of a block beside it.
fn stage() -> (Stage, std::path::PathBuf) {
    let stage = Stage::on("straight-skirt.ron");
    let path = stage.folder.path().join("bodice.ron");
    std::fs::copy(example("bodice-sleeve.ron"), &path).unwrap();
    (stage, path)
}

fn change(path: &std::path::Path, from: &str, to: &str) {
    let text = std::fs::read_to_string(path).unwrap();
    assert_eq!(text.matches(from).count(), 1, "{from}");
    std::fs::write(path, text.replace(from, to)).unwrap();
}

#[test]
fn a_block_is_taken_looked_at_and_taken_over() {
    let (mut stage, path) = stage();
    let start = stage.text();
    stage.find_and_do("Take a block from another draft");
    stage.answer(&[("file", "nowhere.ron")], "Take it");
    assert!(stage.says("nowhere.ron"), "{}", stage.all());
    stage.answer(&[("file", path.to_str().unwrap()), ("pieces", "frnt")], "Take it");
    assert!(stage.says("its pieces are back, front, sleeve"), "{}", stage.all());
    stage.answer(&[("file", path.to_str().unwrap()), ("pieces", "front")], "Take it");
    assert!(stage.says("take the block with a prefix, such as `bodice_`"), "{}", stage.all());
    assert_eq!(stage.text(), start, "nothing was changed so far");
    let fields = [("file", path.to_str().unwrap()), ("pieces", "front"), ("put in front of all names", "top_")];
    stage.answer(&fields, "Take it");
    assert!(stage.says("block bodice was taken: "), "{}", stage.all());
    let taken = stage.saved();
    assert!(taken.contains("name: \"top_front\"") && taken.contains("file: \"bodice.ron\""), "{taken}");
    assert!(!stage.says("was changed in bodice.ron"), "{}", stage.all());

    change(&path, "(name: \"bust_ease\", is: \"8 cm\"", "(name: \"bust_ease\", is: \"12 cm\"");
    stage.press(Key::Escape);
    stage.press(Key::Escape);
    stage.click("Look at the blocks again");
    assert!(stage.says("Block bodice was changed in bodice.ron: value top_bust_ease changed."), "{}", stage.all());
    stage.click("Show what would change");
    assert!(stage.says("What would change: block bodice taken over"), "{}", stage.all());
    assert!(stage.says("value top_bust_ease: +4 cm (from 8 cm to 12 cm)"), "{}", stage.all());
    assert!(stage.says("difference: top_front, "), "{}", stage.all());
    stage.click("Take it over");
    assert!(stage.says("block bodice was taken over: 1 change"), "{}", stage.all());
    assert!(!stage.says("was changed in bodice.ron") && !stage.says("What would change"), "{}", stage.all());
    assert!(stage.saved().contains("(name: \"top_bust_ease\", is: \"12 cm\""));
    stage.ctrl(Key::Z);
    assert_eq!(stage.saved(), taken);
    assert!(stage.says("was changed in bodice.ron"), "{}", stage.all());
    stage.click("Not now");
    assert!(!stage.says("was changed in bodice.ron"), "{}", stage.all());
}

#[test]
fn a_block_that_moved_is_found_again_and_one_can_be_untied() {
    let (mut stage, path) = stage();
    stage.find_and_do("Take a block from another draft");
    stage.answer(
        &[("file", path.to_str().unwrap()), ("pieces", "back"), ("put in front of all names", "top_")],
        "Take it",
    );
    let other = stage.folder.path().join("other.ron");
    std::fs::rename(&path, &other).unwrap();
    stage.press(Key::Escape);
    stage.press(Key::Escape);
    stage.click("Look at the blocks again");
    assert!(stage.says("Whether block bodice was changed cannot be said"), "{}", stage.all());
    stage.click("Say where it is …");
    stage.answer(&[("file", other.to_str().unwrap())], "Look there");
    assert!(stage.saved().contains("file: \"other.ron\""));
    assert!(!stage.says("cannot be said"), "{}", stage.all());
    stage.click("Untie of block bodice");
    assert!(!stage.saved().contains("other.ron") && stage.saved().contains("name: \"top_back\""));
}

/// A draft that lies nowhere yet has no folder from which a block could be found.
#[test]
fn a_draft_that_is_not_saved_is_to_be_saved_first() {
    let (mut stage, path) = stage();
    stage.ctrl(Key::N);
    stage.find_and_do("Take a block from another draft");
    stage.answer(&[("file", path.to_str().unwrap())], "Take it");
    assert!(stage.says("save this draft first"), "{}", stage.all());
}
