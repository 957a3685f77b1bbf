//! What must hold in every room: names that are told once, fields that Tab reaches, dialogs that Escape closes, words that can be read.

use std::collections::BTreeSet;

use egui::{Key, Modifiers};

use super::stage::{Stage, Told};

const CTRL_SHIFT: Modifiers = Modifiers { alt: false, ctrl: true, shift: true, mac_cmd: false, command: true };

/// The main states of the window: what they are called, and a window in each.
fn states() -> Vec<(&'static str, Stage)> {
    let on = |act: &dyn Fn(&mut Stage)| {
        let mut stage = Stage::on("bodice-finished.ron");
        act(&mut stage);
        stage.rest();
        stage
    };
    vec![
        ("first page", Stage::empty()),
        ("table", on(&|_| {})),
        ("piece", on(&|s| s.click("piece front"))),
        (
            "point",
            on(&|s| {
                s.click("piece front");
                s.click("point front.tip");
            }),
        ),
        (
            "edge",
            on(&|s| {
                s.click("piece front");
                s.click("edge front.armhole");
                s.press(Key::C);
            }),
        ),
        ("seam", on(&|s| s.click("seam side"))),
        (
            "pencil",
            on(&|s| {
                s.click("piece front");
                s.press(Key::D);
                let at = s.rect("front.pitch").center();
                s.point(at + egui::vec2(30.0, 40.0));
            }),
        ),
        (
            "tape",
            on(&|s| {
                s.press(Key::T);
                let at = s.rect("front.pitch").center();
                s.click_at(at);
                let to = s.rect("front.underarm").center();
                s.point(to);
            }),
        ),
        (
            "roll",
            on(&|s| {
                s.click("seam shoulder");
                s.ctrl(Key::R);
            }),
        ),
        (
            "compare",
            on(&|s| {
                let other = super::stage::example("bodice-finished.ron").to_str().unwrap().to_owned();
                s.find_and_do("Compare with another draft");
                s.answer(&[("file", &other)], "Compare");
            }),
        ),
        (
            "beside another",
            on(&|s| {
                let other = super::stage::example("bodice-finished.ron").to_str().unwrap().to_owned();
                s.find_and_do("Compare with another draft");
                s.answer(&[("file", &other)], "Compare");
                s.click("Show the pieces");
            }),
        ),
        ("chart", on(&|s| s.ctrl(Key::T))),
        ("sheets", on(&|s| s.key(CTRL_SHIFT, Key::P))),
        ("booklet", on(&|s| s.key(CTRL_SHIFT, Key::B))),
        ("cloth", {
            let mut stage = Stage::on("market-apron.ron");
            stage.ctrl(Key::L);
            stage.wait_for("canvas 45 in, M: ");
            stage.rest();
            stage
        }),
        ("publish", on(&|s| s.key(CTRL_SHIFT, Key::U))),
        ("help", on(&|s| s.press(Key::F1))),
        ("preferences", on(&|s| s.ctrl(Key::Comma))),
        ("dialog", on(&|s| s.find_and_do("Add a seam"))),
        ("finder", on(&|s| s.ctrl(Key::K))),
    ]
}

/// Whether words at a place are surely seen in a state: not scrolled away, not under a dialog, not on the drawing.
fn is_seen(state: &str, rect: egui::Rect) -> bool {
    let rooms = ["first page", "chart", "sheets", "booklet", "cloth", "help", "preferences", "roll", "compare"];
    let within = |left: f32, top: f32, right: f32, bottom: f32| {
        egui::Rect::from_min_max(egui::pos2(left, top), egui::pos2(right, bottom)).contains_rect(rect)
    };
    if is_dialog(state) {
        return within(590.0, 420.0, 1010.0, 560.0);
    }
    let aside = within(0.0, 195.0, 200.0, 785.0) || within(1300.0, 195.0, 1570.0, 785.0);
    let middle = rooms.contains(&state) && within(235.0, 165.0, 1270.0, 815.0);
    within(0.0, 0.0, 1600.0, 108.0) || within(220.0, 860.0, 1290.0, 1000.0) || aside || middle
}

/// In which panel something stands, by its place.
fn panel(told: &Told, middle: egui::Rect) -> &'static str {
    let at = told.rect.unwrap().center();
    match at {
        // Lines of the contents that are rolled away lie behind the strip, and are wider than its buttons.
        _ if at.y < middle.top() && told.rect.unwrap().width() < 140.0 => "strip",
        _ if at.y > middle.bottom() + 10.0 => "findings",
        _ if at.x < middle.left() => "contents",
        _ if at.x > middle.right() => "card",
        _ => "middle",
    }
}

#[test]
fn no_two_controls_of_a_panel_have_one_name() {
    for (state, stage) in states() {
        // The strip ends under the line that says where pulls go.
        let top = stage.rect("pull all sizes").bottom() + 6.0;
        let middle = egui::Rect::from_min_max(egui::pos2(215.0, top), egui::pos2(1290.0, 840.0));
        let mut seen = BTreeSet::new();
        let controls =
            stage.told.iter().filter(|t| t.can_be_used && t.enabled && t.rect.is_some_and(|r| r.is_positive()));
        let mut many = 0;
        for told in controls {
            many += 1;
            let place = panel(told, middle);
            assert!(!told.name.trim().is_empty(), "{state}: a control of the {place} has no name: {told:?}");
            assert!(
                seen.insert((place, told.name.clone())),
                "{state}: two controls of the {place} are called {}",
                told.name
            );
        }
        assert!(many > 5, "{state}: {many}");
    }
}

/// Under a dialog nothing else is reached.
fn in_reach(state: &str, rect: egui::Rect) -> bool {
    !is_dialog(state) || (560.0..1040.0).contains(&rect.center().x)
}

fn is_dialog(state: &str) -> bool {
    ["dialog", "finder", "publish"].contains(&state)
}

#[test]
fn tab_reaches_every_field_and_control() {
    for (state, mut stage) in states() {
        let wanted: BTreeSet<String> = stage
            .told
            .iter()
            .filter(|t| t.is_field && t.enabled && t.rect.is_some_and(|r| r.is_positive() && in_reach(state, r)))
            .map(|t| t.name.clone())
            .collect();
        let mut reached = BTreeSet::new();
        for _ in 0..500 {
            stage.frame(vec![egui::Event::Key {
                key: Key::Tab,
                physical_key: None,
                pressed: true,
                repeat: false,
                modifiers: Modifiers::NONE,
            }]);
            stage.frame(vec![]);
            if !stage.focus.clone().is_none_or(|f| reached.insert(f)) && wanted.is_subset(&reached) {
                break;
            }
        }
        let missed: Vec<_> = wanted.difference(&reached).collect();
        assert!(missed.is_empty(), "{state}: Tab never comes to {missed:?}");
        assert!(reached.len() > 5 || is_dialog(state), "{state}: {reached:?}");
    }
}

/// A row of the table of actions, as the program prints it.
struct Action {
    id: String,
    name: String,
    when: String,
}

fn actions() -> Vec<Action> {
    let out = crate::program().args(["actions", "--json"]).output().unwrap();
    let all: serde_json::Value = serde_json::from_slice(&out.stdout).unwrap();
    let text = |row: &serde_json::Value, key: &str| row[key].as_str().unwrap().to_owned();
    let rows = all.as_array().unwrap().iter();
    rows.map(|row| Action { id: text(row, "id"), name: text(row, "name"), when: text(row, "when") }).collect()
}

#[test]
fn escape_closes_every_dialog_and_changes_nothing() {
    let mut closed = 0;
    for action in actions().into_iter().filter(|a| a.name.ends_with('…')) {
        let mut stage = Stage::on("bodice-finished.ron");
        match action.when.as_str() {
            "size_chosen" | "always" | "has_sizes" => {}
            "outline_open" => continue,
            _ => {
                stage.click("piece front");
                stage.click("point front.tip");
            }
        }
        let before = stage.all();
        stage.find_and_do(action.name.trim_end_matches(" …"));
        assert!(stage.find("Cancel").is_some() || stage.all() != before, "{}: {}", action.id, stage.all());
        for _ in 0..4 {
            stage.press(Key::Escape);
        }
        assert!(stage.find("Cancel").is_none(), "{} is still open: {}", action.id, stage.all());
        assert!(!stage.says("not saved"), "{}", action.id);
        // The window goes on: a key does what it should.
        stage.ctrl(Key::K);
        assert!(stage.find("find").is_some(), "{}: {}", action.id, stage.all());
        closed += 1;
    }
    assert!(closed > 15, "{closed}");
}

#[test]
fn words_can_be_read_in_light_and_dark_at_one_and_two_pixels_a_point() {
    let folder = std::path::Path::new(env!("CARGO_TARGET_TMPDIR")).join("pictures");
    std::fs::create_dir_all(&folder).unwrap();
    let under: BTreeSet<String> = Stage::on("bodice-finished.ron").told.iter().map(|t| t.name.clone()).collect();
    for (state, mut stage) in states() {
        for (theme, word) in [(egui::Theme::Light, "light"), (egui::Theme::Dark, "dark")] {
            for scale in [1.0, 2.0] {
                let picture = stage.picture(theme, scale);
                assert_eq!((picture.width, picture.height), ((1600.0 * scale) as usize, (1000.0 * scale) as usize));
                std::fs::write(folder.join(format!("{state}-{word}-{scale}x.ppm")), picture.ppm()).unwrap();
                // Thin letters are grey at one pixel a point: the whole contrast is seen at two.
                let least = if scale > 1.5 { 4.5 } else { 3.0 };
                let words = stage.told.iter().filter(|t| t.enabled && (t.is_words || t.can_be_used));
                let mut many = 0;
                for told in words {
                    let Some(rect) = told.rect.filter(|r| r.height() > 12.0 && r.height() < 40.0 && r.width() > 12.0)
                    else {
                        continue;
                    };
                    // What lies under a dialog is dimmed on purpose; what is scrolled away or painted upon is not read.
                    if told.is_field || !is_seen(state, rect) || is_dialog(state) && under.contains(&told.name) {
                        continue;
                    }
                    let seen = picture.contrast_in(rect, scale);
                    assert!(
                        seen >= least,
                        "{state}, {word}, {scale}x: {:?} at {rect:?} has a contrast of {seen:.2}",
                        told.name
                    );
                    many += 1;
                }
                assert!(many > 10 || is_dialog(state), "{state}: {many}");
            }
        }
    }
}
