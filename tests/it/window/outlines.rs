//! Outlines from SVG files and pictures underneath: every gesture by events, judged by the saved text or by what is told.

use std::path::PathBuf;

use egui::{Key, Modifiers, Pos2, Rect, pos2, vec2};

use super::stage::Stage;

const HEAD: &str =
    "format: \"tracewheel draft\", version: 0, display: cm, chart: (girth: [\"88\", \"92\"], base: \"88\")";
const CTRL_SHIFT: Modifiers = Modifiers { alt: false, ctrl: true, shift: true, mac_cmd: false, command: true };

fn empty() -> Stage {
    Stage::on_text(&format!("({HEAD})"))
}

/// A window on a draft with a square of 20 cm, chosen, and a picture of 200 by 100 points beside the file.
fn square(more: &str) -> Stage {
    let points = "(name: \"a\", at: \"(0 cm, 0 cm)\"), (name: \"b\", at: \"(20 cm, 0 cm)\"), (name: \"c\", at: \"(20 cm, 20 cm)\"), (name: \"d\", at: \"(0 cm, 20 cm)\")";
    let edges =
        "(name: \"top\", from: \"a\", by: [straight(\"b\"), straight(\"c\"), straight(\"d\"), straight(\"a\")])";
    let piece = format!("(name: \"shape\", points: [{points}], edges: [{edges}])");
    let mut stage = Stage::on_text(&format!("({HEAD}, pieces: [{piece}]{more})"));
    scan(&stage);
    stage.find_and_do("shape");
    stage
}

fn scan(stage: &Stage) -> PathBuf {
    let path = stage.folder.path().join("scan.png");
    image::RgbImage::from_fn(200, 100, |x, y| image::Rgb([x as u8, y as u8, 99])).save(&path).unwrap();
    path
}

/// A window on the square with the picture underneath.
fn laid() -> Stage {
    let mut stage = square("");
    let path = scan(&stage);
    stage.find_and_do("Lay a picture");
    stage.answer(&[("file", path.to_str().unwrap())], "Lay it underneath");
    stage
}

fn svg_file(stage: &Stage, head: &str, inside: &str) -> PathBuf {
    let path = stage.folder.path().join("lines.svg");
    std::fs::write(&path, format!("<svg xmlns=\"http://www.w3.org/2000/svg\" {head}>{inside}</svg>")).unwrap();
    path
}

const SCALED: &str = "width=\"200mm\" height=\"200mm\" viewBox=\"0 0 400 400\"";
const TWO: &str = "<path id=\"front\" d=\"M10 10 H210 V110 H10 Z\"/><circle id=\"pocket\" cx=\"300\" cy=\"300\" r=\"40\"/><line x1=\"20\" y1=\"20\" x2=\"90\" y2=\"90\"/>";

fn read(stage: &mut Stage, head: &str, inside: &str) {
    let path = svg_file(stage, head, inside);
    stage.find_and_do("Trace an outline");
    stage.answer(&[("outline file", path.to_str().unwrap())], "Read it");
}

/// A number in the saved text behind these words.
fn number(text: &str, before: &str) -> f64 {
    let rest = text.split_once(before).unwrap_or_else(|| panic!("{before} is not in {text}")).1;
    let end = rest.find(|c: char| !(c.is_ascii_digit() || c == '.' || c == '-')).unwrap();
    rest[..end].parse().unwrap()
}

fn picture(stage: &Stage) -> Rect {
    let told = stage.told.iter().find(|t| t.name.starts_with("picture scan.png"));
    told.unwrap_or_else(|| panic!("no picture: {}", stage.all())).rect.unwrap()
}

/// The place on the screen of a point of the picture, by the rectangle that was told.
fn at(room: Rect, x: f32, y: f32) -> Pos2 {
    pos2(room.left() + room.width() * x / 200.0, room.top() + room.height() * y / 100.0)
}

/// The picture scaled to 1 mm a point, by 100 points that are 10 cm.
fn scaled() -> Stage {
    let mut stage = laid();
    stage.click("Scale …");
    let room = picture(&stage);
    stage.click_at(at(room, 50.0, 80.0));
    stage.click_at(at(room, 150.0, 80.0));
    stage.write("real distance", "10 cm");
    stage.click("Set the scale");
    stage
}

#[test]
fn outlines_of_a_file_that_tells_its_scale_become_pieces() {
    let mut stage = empty();
    read(&mut stage, SCALED, TWO);
    assert!(stage.says("one unit is 0.5000 mm") && stage.says("10 cm × 5 cm"), "{}", stage.all());
    stage.click("Make the pieces");
    assert!(stage.says("traced: front and pocket") && stage.says("rounded to 0.01 mm"), "{}", stage.all());
    let text = stage.saved();
    assert!(text.contains("(name: \"p2\", at: \"(10 cm, 0 cm)\")"), "{text}");
    let measured = stage.measure(&["area(front)", "length(pocket.edge_1) + length(pocket.edge_2)"]);
    assert!((measured["area(front)"]["88"].as_f64().unwrap() - 5_000.0).abs() < 1e-6, "{measured}");
    let round = measured["length(pocket.edge_1) + length(pocket.edge_2)"]["92"].as_f64().unwrap();
    assert!((round - 40.0 * std::f64::consts::PI).abs() < 0.02, "{measured}");
}

#[test]
fn tracing_is_one_step_of_undo() {
    let mut stage = empty();
    let before = stage.saved();
    read(&mut stage, SCALED, TWO);
    stage.click("Make the pieces");
    assert!(stage.saved().contains("pocket"));
    stage.ctrl(Key::Z);
    assert_eq!(stage.saved(), before);
    stage.key(CTRL_SHIFT, Key::Z);
    assert!(stage.saved().contains("pocket"));
}

#[test]
fn a_scale_that_is_not_told_is_asked_for() {
    let mut stage = empty();
    let before = stage.saved();
    read(&mut stage, "width=\"400\" height=\"400\"", TWO);
    assert!(stage.says("has no unit") && stage.says("200.0 units"), "{}", stage.all());
    stage.click("Make the pieces");
    assert!(stage.says("one unit of the file: `` is no length above zero"), "{}", stage.all());
    stage.write("length of one unit", "2 mm");
    assert!(stage.says("40 cm × 20 cm"), "{}", stage.all());
    assert_eq!(stage.text(), before);
    stage.click("Make the pieces");
    assert!(stage.saved().contains("(40 cm, 0 cm)"));
}

#[test]
fn the_width_of_the_first_outline_gives_the_scale() {
    let mut stage = empty();
    read(&mut stage, "", TWO);
    stage.write("width of the first outline", "30 cm");
    stage.click("Make the pieces");
    let text = stage.saved();
    assert!(text.contains("(30 cm, 0 cm)") && text.contains("(30 cm, 15 cm)"), "{text}");
}

#[test]
fn css_pixels_are_96_to_the_inch() {
    let mut stage = empty();
    read(&mut stage, "width=\"400\" height=\"400\"", "<rect id=\"inch\" width=\"96\" height=\"192\"/>");
    stage.click("one unit is a CSS pixel, 96 to the inch");
    stage.click("Make the pieces");
    assert!(stage.saved().contains("(2.54 cm, 5.08 cm)"));
}

#[test]
fn outlines_are_chosen_and_named() {
    let mut stage = empty();
    read(&mut stage, SCALED, TWO);
    stage.click("outline 1");
    stage.write("name of outline 2", "patch");
    stage.click("Make the pieces");
    let text = stage.saved();
    assert!(text.contains("name: \"patch\"") && !text.contains("front") && !text.contains("pocket"), "{text}");
}

#[test]
fn nothing_is_made_where_a_name_is_taken_or_none_is_chosen() {
    let mut stage = square("");
    let before = stage.saved();
    read(&mut stage, SCALED, TWO);
    stage.write("name of outline 1", "shape");
    stage.click("Make the pieces");
    assert!(stage.says("there is piece shape already"), "{}", stage.all());
    stage.click("outline 1");
    stage.click("outline 2");
    stage.click("Make the pieces");
    assert!(stage.says("no outline is chosen"), "{}", stage.all());
    stage.press(Key::Escape);
    assert!(stage.find("Make the pieces").is_none());
    assert_eq!(stage.saved(), before);
}

#[test]
fn a_file_that_is_wrong_is_told_in_the_dialog() {
    let mut stage = empty();
    let before = stage.saved();
    for (inside, words) in [
        ("<path d=\"M0 0", "no well-formed XML"),
        ("<text>words</text>", "no outline in the file"),
        ("<line x2=\"30\" y2=\"30\"/>", "none of the 1 lines in the file is closed"),
    ] {
        read(&mut stage, SCALED, inside);
        assert!(stage.says(words), "{words}: {}", stage.all());
        assert!(stage.find("Make the pieces").is_none());
        stage.press(Key::Escape);
    }
    stage.find_and_do("Trace an outline");
    stage.answer(
        &[("outline file", stage.folder.path().join("none.svg").to_str().unwrap().to_owned().as_str())],
        "Read it",
    );
    assert!(stage.says("cannot be read"), "{}", stage.all());
    stage.click("Cancel");
    assert_eq!(stage.saved(), before);
}

#[test]
fn the_turn_of_a_corner_can_be_told() {
    let bent = "<path id=\"bent\" d=\"M0 0 L100 0 L200 20 L200 200 L0 200 Z\"/>";
    let edges = |turn: &str| {
        let mut stage = empty();
        read(&mut stage, SCALED, bent);
        stage.write("corner, degrees", turn);
        stage.click("Make the pieces");
        stage.saved().matches("name: \"edge_").count()
    };
    // It turns by 11.3 degrees after the first stretch.
    assert_eq!((edges("15"), edges("10")), (4, 5));
    let mut stage = empty();
    read(&mut stage, SCALED, bent);
    stage.write("corner, degrees", "0");
    stage.click("Make the pieces");
    assert!(stage.says("between 0 and 180 degrees"), "{}", stage.all());
}

#[test]
fn what_crosses_itself_is_told_and_not_taken_unasked() {
    let mut stage = empty();
    read(
        &mut stage,
        SCALED,
        "<path id=\"bow\" d=\"M10 10 L90 90 V10 L10 90 Z\"/><rect id=\"plain\" width=\"90\" height=\"90\"/>",
    );
    assert!(stage.says("crosses itself") && !stage.seen("outline 1").chosen && stage.seen("outline 2").chosen);
    stage.click("Make the pieces");
    let text = stage.saved();
    assert!(text.contains("plain") && !text.contains("bow"), "{text}");
}

#[test]
fn open_lines_go_into_their_piece_and_what_is_left_out_is_told() {
    let mut stage = empty();
    read(
        &mut stage,
        SCALED,
        &format!("{TWO}<text>a</text><line id=\"far\" x1=\"390\" y1=\"10\" x2=\"390\" y2=\"90\"/>"),
    );
    assert!(stage.says("Open lines: 2") && stage.says("texts: 1"), "{}", stage.all());
    stage.click("Make the pieces");
    assert!(stage.says("1 open line") && stage.says("texts: 1"), "{}", stage.all());
    let text = stage.saved();
    assert!(text.contains("lines: [(name: \"front_2\"") || text.contains("lines: [(name: \"line\""), "{text}");
    assert!(!text.contains("far"));
}

#[test]
fn a_traced_handle_can_be_pulled() {
    let mut stage = empty();
    read(&mut stage, SCALED, "<path id=\"leaf\" d=\"M0 200 C20 60 180 40 200 200 Z\"/>");
    stage.click("Make the pieces");
    let before = stage.saved();
    let handle = stage.names().iter().find(|n| n.contains("handle leaving")).map(|n| (*n).to_owned()).unwrap();
    let from = stage.rect(&handle).center();
    stage.pull(&handle, vec2(40.0, 25.0));
    let after = stage.saved();
    assert_ne!(before, after);
    // It lies where the hand let it go, and the points stay.
    let moved = stage.rect(&handle).center() - from;
    assert!((moved - vec2(40.0, 25.0)).length() < 2.0, "{moved:?}");
    let points = |text: &str| text.lines().find(|l| l.contains("points: [(name: \"p1\"")).map(str::to_owned);
    assert!(points(&before).is_some() && points(&before) == points(&after), "{after}");
    assert_eq!(before.matches("curve(").count(), after.matches("curve(").count());
}

#[test]
fn a_picture_is_laid_underneath_and_says_that_it_is_not_scaled() {
    let mut stage = laid();
    assert!(stage.says("picture scan.png under shape, not scaled yet"), "{}", stage.all());
    let text = stage.saved();
    assert!(text.contains("pictures: [(under: \"shape\", file: \"scan.png\", fade: 40)]"), "{text}");
    stage.ctrl(Key::Z);
    assert!(!stage.says("scan.png under shape, not scaled"), "{}", stage.all());
}

#[test]
fn two_points_and_a_distance_scale_it_and_a_second_distance_can_be_checked() {
    let mut stage = scaled();
    assert!(stage.says("perspective is not corrected") && !stage.says("not scaled yet"), "{}", stage.all());
    let text = stage.saved();
    assert!((number(&text, "scale: \"") - 1.0).abs() < 0.01, "{text}");
    stage.click("Measure");
    let room = picture(&stage);
    stage.click_at(at(room, 20.0, 90.0));
    stage.click_at(at(room, 180.0, 90.0));
    let told = stage.names().iter().find(|n| n.contains("between the two points")).map(|n| (*n).to_owned()).unwrap();
    assert!((number(&told, "") - 16.0).abs() < 0.15, "{told}");
    assert_eq!(stage.saved(), text, "measuring changes nothing");
}

#[test]
fn the_first_point_stays_where_it_lies() {
    let mut stage = laid();
    stage.click("Scale …");
    let room = picture(&stage);
    let first = at(room, 50.0, 80.0);
    stage.click_at(first);
    stage.click_at(at(room, 150.0, 80.0));
    stage.write("real distance", "12 cm");
    stage.press(Key::Enter);
    let now = picture(&stage);
    assert!((at(now, 50.0, 80.0) - first).length() < 1.5, "{now:?}");
    assert!((now.width() / room.width() - 0.6).abs() < 0.01);
}

#[test]
fn a_distance_that_cannot_be_is_refused() {
    let mut stage = laid();
    let before = stage.saved();
    stage.click("Scale …");
    let room = picture(&stage);
    stage.click_at(at(room, 50.0, 80.0));
    stage.click_at(at(room, 150.0, 80.0));
    for (text, words) in
        [("0 cm", "is no length above zero"), ("far", "is no length"), ("9000 m", "is the distance right?")]
    {
        stage.write("real distance", text);
        stage.click("Set the scale");
        assert!(stage.says(words), "{text}: {}", stage.all());
    }
    assert_eq!(stage.saved(), before);
    // Escape gives the gesture up.
    stage.press(Key::Escape);
    assert!(stage.find("Set the scale").is_none());
}

#[test]
fn it_is_made_level_and_plumb_by_two_points() {
    let mut stage = scaled();
    stage.click("Make level");
    let room = picture(&stage);
    stage.click_at(at(room, 50.0, 90.0));
    stage.click_at(at(room, 150.0, 70.0));
    let text = stage.saved();
    // 20 up over 100: turned back by atan(1/5) = 11.3099 degrees.
    assert!((number(&text, "turned: \"") - 11.31).abs() < 0.5, "{text}");
    stage.ctrl(Key::Z);
    stage.click("Make plumb");
    stage.click_at(at(room, 150.0, 95.0));
    stage.click_at(at(room, 160.0, 45.0));
    let text = stage.saved();
    assert!((number(&text, "turned: \"") + 11.31).abs() < 0.8, "{text}");
}

#[test]
fn it_is_moved_in_one_step() {
    let mut stage = scaled();
    let before = stage.saved();
    stage.click("Move");
    let room = picture(&stage);
    let from = at(room, 100.0, 90.0);
    stage.pull_from(from, vec2(60.0, 30.0));
    stage.button(from + vec2(60.0, 30.0), false);
    stage.rest();
    let now = picture(&stage);
    assert!(((now.min - room.min) - vec2(60.0, 30.0)).length() < 2.0, "{room:?} {now:?}");
    let moved = stage.saved();
    assert_ne!(moved, before);
    stage.ctrl(Key::Z);
    assert_eq!(stage.saved(), before);
}

#[test]
fn escape_gives_a_move_up() {
    let mut stage = scaled();
    let before = stage.saved();
    stage.click("Move");
    let from = at(picture(&stage), 100.0, 90.0);
    stage.pull_from(from, vec2(60.0, 30.0));
    stage.press(Key::Escape);
    stage.button(from + vec2(60.0, 30.0), false);
    stage.rest();
    assert_eq!(stage.saved(), before);
}

#[test]
fn it_is_faded_by_a_slider_in_one_step() {
    let mut stage = laid();
    let before = stage.saved();
    let rail = stage.rect("how faded the picture is");
    stage.pull_from(rail.center(), vec2(rail.width() * 0.3, 0.0));
    stage.button(rail.center() + vec2(rail.width() * 0.3, 0.0), false);
    stage.rest();
    let fade = number(&stage.saved(), "fade: ");
    assert!((70.0..=95.0).contains(&fade), "{fade}");
    stage.ctrl(Key::Z);
    assert_eq!(stage.saved(), before);
}

#[test]
fn it_is_hidden_shown_and_removed() {
    let mut stage = laid();
    let before = stage.saved();
    stage.click("Hide the picture");
    assert!(
        stage.saved().contains("hidden: true")
            && !stage.names().iter().any(|n| n.starts_with("picture scan.png under"))
    );
    stage.click("Show the picture");
    assert_eq!(stage.saved(), before);
    stage.click("Remove the picture");
    assert!(!stage.saved().contains("pictures"));
}

/// Where the picture begins, and how wide it is, seen from the square's corner in sides of the square.
fn in_square(stage: &Stage) -> [f32; 3] {
    let (a, b) = (stage.rect("shape.a").center(), stage.rect("shape.b").center());
    let (room, side) = (picture(stage), a.distance(b));
    [(room.left() - a.x) / side, (room.top() - a.y) / side, room.width() / side]
}

#[test]
fn what_was_decided_is_there_when_the_draft_is_opened_again() {
    let mut stage = scaled();
    let text = stage.saved();
    let lies = in_square(&stage);
    assert!((lies[0] - 0.25).abs() < 0.02 && (lies[2] - 1.0).abs() < 0.02, "{lies:?}");
    let (folder, file) = stage.vanish();
    let mut again = Stage::start(folder, Some(file));
    again.find_and_do("shape");
    assert!(!again.says("not scaled yet"), "{}", again.all());
    let same = |now: [f32; 3]| now.iter().zip(&lies).all(|(now, then)| (now - then).abs() < 0.01);
    assert!(same(in_square(&again)), "{lies:?} {:?}", in_square(&again));
    assert_eq!(again.saved(), text);
    // In another size it lies in the same frame.
    again.click("size 92");
    assert!(again.seen("size 92").chosen && same(in_square(&again)), "{lies:?} {:?}", in_square(&again));
}

#[test]
fn a_picture_that_is_gone_or_no_picture_is_told_and_the_draft_is_open() {
    for (bytes, words) in [
        (None, "cannot be shown"),
        (Some("no picture"), "neither PNG nor JPEG"),
        (Some("\u{89}PNG"), "neither PNG nor JPEG"),
    ] {
        let folder = tempfile::tempdir().unwrap();
        let file = folder.path().join("draft.ron");
        let piece = "(name: \"shape\", points: [(name: \"a\", at: \"(0 cm, 0 cm)\")])";
        let text =
            format!("({HEAD}, pieces: [{piece}], pictures: [(under: \"shape\", file: \"gone.png\", scale: \"1 mm\")])");
        std::fs::write(&file, text).unwrap();
        if let Some(bytes) = bytes {
            std::fs::write(folder.path().join("gone.png"), bytes).unwrap();
        }
        let mut stage = Stage::start(folder, Some(file));
        assert!(stage.says("gone.png cannot be shown") && stage.says(words), "{}", stage.all());
        stage.find_and_do("shape");
        assert!(stage.says("■ cannot be shown"), "{}", stage.all());
        stage.click("Remove the picture");
        assert!(!stage.saved().contains("pictures"));
    }
}

#[test]
fn what_is_no_picture_is_refused_and_a_second_one_too() {
    let mut stage = square("");
    let before = stage.saved();
    let words = stage.folder.path().join("words.png");
    std::fs::write(&words, "words").unwrap();
    stage.find_and_do("Lay a picture");
    stage.answer(&[("file", words.to_str().unwrap())], "Lay it underneath");
    assert!(stage.says("neither PNG nor JPEG"), "{}", stage.all());
    stage.answer(&[("file", "")], "Lay it underneath");
    assert!(stage.says("a file is needed"), "{}", stage.all());
    stage.press(Key::Escape);
    assert_eq!(stage.saved(), before);
    let mut stage = laid();
    let before = stage.saved();
    let path = scan(&stage);
    stage.find_and_do("Lay a picture");
    stage.answer(&[("file", path.to_str().unwrap())], "Lay it underneath");
    assert!(stage.says("there is a picture under shape already"), "{}", stage.all());
    stage.press(Key::Escape);
    assert_eq!(stage.saved(), before);
}

#[test]
fn no_number_hangs_on_a_picture_and_it_follows_the_name_of_its_piece() {
    let mut stage = square("");
    let formulas = ["area(shape)", "length(shape.top)"];
    let before = stage.measure(&formulas);
    let path = scan(&stage);
    stage.find_and_do("Lay a picture");
    stage.answer(&[("file", path.to_str().unwrap())], "Lay it underneath");
    stage.saved();
    assert_eq!(stage.measure(&formulas), before);
    stage.press(Key::F2);
    stage.answer(&[("name", "board")], "Rename it");
    let text = stage.saved();
    assert!(text.contains("under: \"board\"") && !text.contains("shape"), "{text}");
    // Without the piece there is no picture.
    stage.press(Key::Delete);
    assert!(stage.says("Nothing names it."), "{}", stage.all());
    let dialog = stage.told.iter().rfind(|t| t.name == "Delete" && !t.is_words).unwrap().rect.unwrap();
    stage.click_at(dialog.center());
    assert!(!stage.saved().contains("pictures"));
}

#[test]
fn without_a_piece_it_lies_on_the_table() {
    let mut stage = empty();
    let path = scan(&stage);
    stage.find_and_do("Lay a picture");
    stage.answer(&[("file", path.to_str().unwrap())], "Lay it underneath");
    assert!(stage.says("picture scan.png on the table, not scaled yet"), "{}", stage.all());
    assert!(stage.saved().contains("pictures: [(file: \"scan.png\", fade: 40)]"));
}
