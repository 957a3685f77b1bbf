//! Preferences, true scale, and drafts that were open, driven by events.

use egui::{Key, Modifiers, Theme, vec2};

use super::stage::Stage;

const CTRL_SHIFT: Modifiers = Modifiers { alt: false, ctrl: true, shift: true, mac_cmd: false, command: true };

/// Closes the window as a person does, and opens another one in the same folder.
fn again(mut stage: Stage, on_file: bool) -> Stage {
    stage.ctrl(Key::Q);
    assert!(stage.is_closing(), "{}", stage.all());
    let (folder, file) = stage.vanish();
    Stage::start(folder, on_file.then_some(file))
}

#[test]
fn light_and_dark_are_kept() {
    let mut stage = Stage::on("bodice-sleeve.ron");
    stage.ctrl(Key::Comma);
    assert!(stage.seen("look: as the system").chosen);
    stage.click("look: dark");
    assert_eq!(stage.ctx.theme(), Theme::Dark);
    assert!(stage.seen("look: dark").chosen);
    let mut stage = again(stage, true);
    assert_eq!(stage.ctx.theme(), Theme::Dark);
    stage.find_and_do("Light or dark");
    assert_eq!(stage.ctx.theme(), Theme::Light);
    assert!(stage.own_text().contains("light"), "{}", stage.own_text());
}

#[test]
fn the_size_of_text_is_kept_and_changes_no_number() {
    let mut stage = Stage::on("bodice-sleeve.ron");
    let before = stage.text();
    stage.ctrl(Key::Comma);
    for (word, factor) in [("text: 150 %", 1.5), ("text: 80 %", 0.8), ("text: 200 %", 2.0)] {
        stage.click(word);
        assert!((stage.ctx.zoom_factor() - factor).abs() < 0.001, "{word}: {}", stage.ctx.zoom_factor());
    }
    stage.click("text: 125 %");
    let stage = again(stage, true);
    assert!((stage.ctx.zoom_factor() - 1.25).abs() < 0.001);
    assert_eq!(stage.text(), before);
}

#[test]
fn spacing_changes_how_far_lines_lie_apart() {
    let mut stage = Stage::on("bodice-sleeve.ron");
    let apart = |s: &Stage| s.rect("seam side").top() - s.rect("seam shoulder").top();
    stage.ctrl(Key::Comma);
    let usual = apart(&stage).abs();
    stage.click("spacing: dense");
    let dense = apart(&stage).abs();
    stage.click("spacing: roomy");
    let roomy = apart(&stage).abs();
    assert!(dense < usual && usual < roomy, "{dense} {usual} {roomy}");
}

#[test]
fn contrast_and_colours_are_worn_at_once() {
    let mut stage = Stage::on("bodice-sleeve.ron");
    let of = |s: &Stage| {
        let v = s.ctx.style_of(Theme::Light).visuals.clone();
        (v.error_fg_color, v.widgets.noninteractive.fg_stroke.color)
    };
    let before = of(&stage);
    stage.ctrl(Key::Comma);
    stage.click("High contrast");
    let contrast = of(&stage);
    assert_ne!(before.1, contrast.1, "the ink is blacker");
    stage.click("Colours for colour-blind eyes");
    let both = of(&stage);
    assert!(both.0 != contrast.0 && both.1 == contrast.1, "other severities, the same ink");
    let text = stage.own_text();
    assert!(text.contains("contrast: true") && text.contains("apart: true"), "{text}");
    stage.click("High contrast");
    stage.click("Colours for colour-blind eyes");
    assert_eq!(of(&stage), before);
}

#[test]
fn a_preference_is_no_step_of_the_draft() {
    let mut stage = Stage::on("bodice-sleeve.ron");
    stage.ctrl(Key::Comma);
    stage.click("spacing: roomy");
    stage.click("High contrast");
    assert!(!stage.says("not saved"));
    stage.ctrl(Key::Z);
    assert!(!stage.says("undone"), "{}", stage.all());
    stage.click("Show the pieces");
    assert_eq!(stage.pieces().len(), 3);
}

#[test]
fn damaged_preferences_are_told_and_set_aside() {
    let stage = Stage::on("bodice-sleeve.ron");
    let own = stage.own();
    let (folder, file) = stage.vanish();
    std::fs::write(&own, "(version: 1, preferences: (text: big").unwrap();
    let mut stage = Stage::start(folder, Some(file));
    assert!(stage.says("cannot be read") && stage.says("set aside"), "{}", stage.all());
    assert_eq!(stage.pieces().len(), 3, "the draft is open all the same");
    let aside = own.with_extension("set-aside-1.ron");
    assert_eq!(std::fs::read_to_string(aside).unwrap(), "(version: 1, preferences: (text: big");
    stage.ctrl(Key::Comma);
    stage.click("spacing: dense");
    assert!(stage.own_text().contains("spacing: dense"));
}

/// A draft with one piece, 60 mm wide and 40 mm high.
const LABEL: &str = r#"(
    format: "tracewheel draft",
    version: 0,
    chart: (girth: ["88"], base: "88"),
    pieces: [
        (
            name: "label",
            points: [
                (name: "a", at: "(0 mm, 0 mm)"),
                (name: "b", at: "a.right(60 mm)"),
                (name: "c", at: "b.down(40 mm)"),
                (name: "d", at: "a.down(40 mm)"),
            ],
            edges: [
                (name: "top", from: "a", by: [straight("b")]),
                (name: "right_side", from: "b", by: [straight("c")]),
                (name: "base", from: "c", by: [straight("d")]),
                (name: "left_side", from: "d", by: [straight("a")]),
            ],
        ),
    ],
)
"#;

/// px on the screen for a millimetre of the label.
fn px_per_mm(stage: &Stage) -> f64 {
    let rect = stage.rect("piece label, size 88");
    assert!((rect.width() / rect.height() - 1.5).abs() < 0.02, "{rect:?}");
    f64::from(rect.width()) / 60.0
}

#[test]
fn true_scale_shows_a_millimetre_as_it_was_measured() {
    let mut stage = Stage::on_text(LABEL);
    let fitting = px_per_mm(&stage);
    stage.ctrl(Key::Num1);
    assert!(stage.says("measure yours in Preferences"), "{}", stage.all());
    let usual = px_per_mm(&stage);
    assert!((usual / (96.0 / 25.4) - 1.0).abs() < 0.01, "{usual}");
    stage.ctrl(Key::Num1);
    assert!((px_per_mm(&stage) - fitting).abs() < 0.01 && fitting != usual, "all is seen again");
    // Ten per cent longer.
    stage.ctrl(Key::Comma);
    let card = stage.rect("the outline of a bank card");
    assert!((f64::from(card.width()) - 85.60 * 96.0 / 25.4).abs() < 1.0, "{card:?}");
    assert!((card.width() / card.height() - 85.60 / 53.98).abs() < 0.01, "{card:?}");
    (0..10).for_each(|_| stage.click("longer"));
    assert!(stage.says("measured: 4.17"), "{}", stage.all());
    let longer = stage.rect("the outline of a bank card");
    assert!((longer.width() / card.width() - 1.1046).abs() < 0.005, "{longer:?}");
    assert!((stage.rect("a bar of 100 mm").width() / longer.width() - 100.0 / 85.60).abs() < 0.005);
    stage.ctrl(Key::Comma);
    stage.ctrl(Key::Num1);
    assert!((px_per_mm(&stage) / usual - 1.1046).abs() < 0.01);
    assert!(!stage.says("not saved"));
}

#[test]
fn one_measuring_holds_for_table_and_sheets() {
    let mut stage = Stage::on("bodice-sleeve.ron");
    stage.key(CTRL_SHIFT, Key::P);
    stage.click("paper A4");
    stage.click("true scale");
    stage.click("shorter");
    stage.click("a hair longer");
    let bar = stage.rect("a bar of 100 mm").width();
    stage.ctrl(Key::Comma);
    assert!((stage.rect("a bar of 100 mm").width() - bar).abs() < 0.2);
    assert!((bar / (100.0 * 96.0 / 25.4) - 0.99 * 1.001).abs() < 0.001, "{bar}");
    stage.click("Forget the measuring");
    assert!(stage.says("not measured") && stage.find("Forget the measuring").is_none());
    // The slider goes by keys too.
    stage.tab_to("px in a millimetre");
    stage.press(Key::ArrowRight);
    assert!(stage.says("measured: ") && !stage.says("not measured"), "{}", stage.all());
}

#[test]
fn a_millimetre_stays_one_whatever_the_size_of_text() {
    let mut stage = Stage::on("bodice-sleeve.ron");
    stage.ctrl(Key::Comma);
    (0..5).for_each(|_| stage.click("longer"));
    let real = |s: &Stage| s.rect("a bar of 100 mm").width() * s.ctx.pixels_per_point();
    let before = real(&stage);
    stage.click("text: 125 %");
    stage.rest();
    assert!((stage.ctx.pixels_per_point() - 1.25).abs() < 0.001);
    assert!((real(&stage) - before).abs() < 1.0, "{} {before}", real(&stage));
}

#[test]
fn a_draft_is_opened_where_it_was_left() {
    let mut stage = Stage::on("bodice-sleeve.ron");
    stage.click("size 104");
    stage.click("piece sleeve");
    stage.click("edge sleeve.wrist");
    stage.key(Modifiers::COMMAND | Modifiers::CTRL, Key::Plus);
    let seen = stage.rect("piece front, size 104");
    let stage = again(stage, true);
    assert!(stage.seen("size 104").chosen);
    assert!(stage.says("sleeve · wrist"), "{}", stage.all());
    let now = stage.rect("piece front, size 104");
    assert!((now.width() - seen.width()).abs() < 1.0 && (now.left() - seen.left()).abs() < 1.5, "{seen:?} {now:?}");
    // Another room, another part.
    let mut stage = stage;
    stage.ctrl(Key::T);
    let mut stage = again(stage, true);
    assert!(stage.find("waist in 88").is_some(), "the chart");
    stage.ctrl(Key::T);
    stage.click("seam shoulder");
    stage.ctrl(Key::R);
    let stage = again(stage, true);
    assert!(stage.says("Roll seam shoulder") || stage.says("rolled to 0 cm"), "{}", stage.all());
}

#[test]
fn what_is_gone_is_not_gone_back_to() {
    let mut stage = Stage::on("bodice-sleeve.ron");
    stage.click("size 128");
    stage.click("seam shoulder");
    stage.ctrl(Key::Q);
    let (folder, file) = stage.vanish();
    let text = std::fs::read_to_string(super::stage::example("straight-skirt.ron")).unwrap();
    std::fs::write(&file, text).unwrap();
    let stage = Stage::start(folder, Some(file));
    assert_eq!(stage.pieces().len(), 2);
    assert!(stage.told.iter().any(|t| t.name.starts_with("size ") && t.name.ends_with(", base") && t.chosen));
    assert!(stage.find("title of draft").is_some(), "{}", stage.all());
}

#[test]
fn recent_drafts_are_on_the_first_page_in_the_menu_and_in_the_finder() {
    let mut stage = Stage::on("bodice-sleeve.ron");
    let other = stage.folder.path().join("other-one.ron");
    stage.key(CTRL_SHIFT, Key::S);
    stage.answer(&[("file", other.to_str().unwrap())], "Save");
    let first = stage.file.canonicalize().unwrap();
    let other = other.canonicalize().unwrap();
    let called = |path: &std::path::Path| format!("open again {}", path.display());
    stage.click("Draft");
    assert!(stage.find(&called(&other)).is_none(), "the one that is open is not offered");
    stage.click(&called(&first));
    assert_eq!(stage.open_path(), Some(first.as_path()), "{}", stage.all());
    stage.find_and_do("other-one");
    assert_eq!(stage.open_path(), Some(other.as_path()));
    let mut stage = again(stage, false);
    assert!(stage.says("Open again") && stage.find(&called(&first)).is_some(), "{}", stage.all());
    stage.click(&format!("forget {}", first.display()));
    assert!(stage.find(&called(&first)).is_none());
    stage.click(&called(&other));
    assert_eq!(stage.open_path(), Some(other.as_path()));
    assert_eq!(stage.pieces().len(), 3);
}

#[test]
fn a_recent_draft_that_is_gone_is_told_and_nothing_is_lost() {
    let mut stage = Stage::on("bodice-sleeve.ron");
    let other = stage.folder.path().join("gone.ron");
    stage.key(CTRL_SHIFT, Key::S);
    stage.answer(&[("file", other.to_str().unwrap())], "Save");
    let first = stage.file.canonicalize().unwrap();
    std::fs::remove_file(&first).unwrap();
    stage.fill("title of draft", "Still here");
    stage.click("Draft");
    stage.click(&format!("open again {}", first.display()));
    assert!(stage.says("Save first?"), "unsaved work is asked about");
    stage.click("Go on without saving");
    assert!(stage.says("there is no file"), "{}", stage.all());
    stage.press(Key::Escape);
    assert!(stage.says("Still here") && stage.says("not saved"));
}

#[test]
fn the_sheet_keeps_its_place_while_preferences_are_read() {
    let mut stage = Stage::on("bodice-sleeve.ron");
    let empty = stage.rect("piece front, size 88").left_bottom() + vec2(-20.0, 30.0);
    stage.pull_from(empty, vec2(40.0, -10.0));
    stage.button(empty + vec2(40.0, -10.0), false);
    stage.rest();
    let before = stage.rect("piece front, size 88");
    stage.ctrl(Key::Comma);
    assert!(stage.find("look: dark").is_some() && stage.find("piece front, size 88").is_none());
    stage.ctrl(Key::Comma);
    assert_eq!(stage.rect("piece front, size 88"), before);
}
