//! Another draft beside the open one: its list, its lines on the table, and that both follow what is edited.

#![allow(clippy::print_stdout, reason = "the contrast is printed")]

use egui::Key;

use super::stage::{Stage, example};

/// A window on a skirt, and beside it on the disk the same skirt with another length.
fn stage() -> (Stage, String) {
    let stage = Stage::on("straight-skirt.ron");
    let text = std::fs::read_to_string(example("straight-skirt.ron")).unwrap();
    let other = text.replace("is: \"60 cm\"", "is: \"if(hip > 100 cm, 59 cm, 60 cm)\"");
    assert_ne!(text, other);
    let path = stage.folder.path().join("before.ron");
    std::fs::write(&path, other).unwrap();
    (stage, path.to_str().unwrap().to_owned())
}

#[test]
fn differences_are_listed_followed_and_gone_to() {
    let (mut stage, path) = stage();
    let start = stage.text();
    stage.find_and_do("Compare with another draft");
    stage.answer(&[("file", "nowhere.ron")], "Compare");
    assert!(stage.says("nowhere.ron"), "{}", stage.all());
    stage.answer(&[("file", &path)], "Compare");
    assert!(stage.says("Differences from before.ron") && stage.says("15 differences"), "{}", stage.all());
    assert!(stage.says("difference: back, edge hem: moved 1 cm down in sizes 80, 100"), "{}", stage.all());
    assert!(!stage.says("edge waist"), "{}", stage.all());
    // A click goes to the edge, in a size in which it differs: 72 was shown, in which it does not.
    stage.click("difference: back, edge hem: moved 1 cm down in sizes 80, 100");
    assert!(stage.find("piece back, size 80").is_some(), "{}", stage.all());
    assert!(stage.says("whole line: this draft") && stage.says("dashed line: before.ron"), "{}", stage.all());
    assert!(stage.says("back · hem"), "{}", stage.all());
    // It follows: with the same length there, nothing is left of it.
    stage.find_and_do("skirt_length");
    stage.fill("formula of value skirt_length", "if(hip > 100 cm, 59 cm, 60 cm)");
    assert!(stage.says("no differences"), "{}", stage.all());
    stage.ctrl(Key::Z);
    assert!(stage.says("15 differences"), "{}", stage.all());
    // The key takes the list back, and again the pieces.
    stage.ctrl(Key::D);
    assert!(stage.says("Differences from before.ron"), "{}", stage.all());
    stage.click("End comparing");
    assert!(!stage.says("before.ron") && !stage.says("dashed line"), "{}", stage.all());
    assert!(stage.find("piece back, size 80").is_some());
    assert_eq!(stage.text(), start);
}

#[test]
fn the_lines_of_the_other_draft_are_seen_where_they_differ() {
    let folder = std::path::Path::new(env!("CARGO_TARGET_TMPDIR")).join("pictures");
    std::fs::create_dir_all(&folder).unwrap();
    let (mut stage, path) = stage();
    stage.find_and_do("Compare with another draft");
    stage.answer(&[("file", &path)], "Compare");
    stage.click("Show the pieces");
    // Lines under the hem of the back, where in size 100 the hem of the other draft lies 1 cm higher, and in size 72 just there.
    let mut inks = Vec::new();
    for (size, called) in [("size 72, base", "size 72"), ("size 100", "size 100")] {
        stage.click(size);
        let piece = stage.rect(&format!("piece back, {called}"));
        // Just above the hem, clear of the centre and the side.
        let at = egui::Rect::from_min_max(
            egui::pos2(piece.left() + 20.0, piece.bottom() - 9.0),
            egui::pos2(piece.right() - 20.0, piece.bottom() - 3.0),
        );
        for theme in [egui::Theme::Light, egui::Theme::Dark] {
            let word = if theme == egui::Theme::Light { "light" } else { "dark" };
            let picture = stage.picture(theme, 1.0);
            std::fs::write(folder.join(format!("beside-{called}-{word}.ppm")), picture.ppm()).unwrap();
            inks.push(picture.contrast_in(at, 1.0));
        }
    }
    println!("contrast just above the hem, light and dark: the same {:?}, apart {:?}", &inks[..2], &inks[2..]);
    assert!(inks[2] > inks[0] + 0.5 && inks[3] > inks[1] + 0.5, "{inks:?}");
    assert!(stage.says("dashed line: before.ron"), "{}", stage.all());
}
