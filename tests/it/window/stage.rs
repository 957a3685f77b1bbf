//! A window without a screen: driven by pointer and keys only, seen only through what accessibility is told.

use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicU32, Ordering};

use super::painted::{Picture, Textures};
use egui::{
    Context, Event, Key, Modifiers, MouseWheelUnit, PointerButton, Pos2, RawInput, Rect, TouchPhase, pos2, vec2,
};
use tracewheel::app::{Start, Window, dress};

/// Where the card begins, and how far down it is seen.
const CARD: f32 = 1290.0;
const LOW: f32 = 800.0;
/// How far up.
const HIGH: f32 = 175.0;
const SCREEN: Rect = Rect::from_min_max(Pos2::ZERO, pos2(1600.0, 1000.0));

/// What accessibility is told of one widget.
#[derive(Clone, Debug)]
pub struct Told {
    pub name: String,
    /// Whether it is a field, and whether it is only words.
    pub is_field: bool,
    pub is_words: bool,
    /// Whether a person can do something with it.
    pub can_be_used: bool,
    pub value: String,
    pub chosen: bool,
    pub enabled: bool,
    pub rect: Option<Rect>,
}

pub struct Stage {
    pub ctx: Context,
    window: Window,
    pub told: Vec<Told>,
    /// What has the focus.
    pub focus: Option<String>,
    /// The folder of this test; removed at the end.
    pub folder: tempfile::TempDir,
    /// The file that is open.
    pub file: PathBuf,
    pub title: String,
    pub repaint: bool,
    modifiers: Modifiers,
    /// The modifiers that the window knows of.
    held: Modifiers,
    passes: AtomicU32,
    /// Whether the first pass of each frame is thrown away.
    pub discard: bool,
    /// Whether there is no pointer: what would be clicked is come to with Tab and done with Space.
    pub keys_only: bool,
    textures: Textures,
    shapes: Vec<egui::epaint::ClippedShape>,
}

pub fn example(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("examples").join(name)
}

impl Stage {
    /// A window on a copy of an example.
    pub fn on(name: &str) -> Self {
        Self::on_text(&std::fs::read_to_string(example(name)).unwrap())
    }

    /// A window on a draft of this text.
    pub fn on_text(text: &str) -> Self {
        let folder = tempfile::tempdir().unwrap();
        let file = folder.path().join("draft.ron");
        std::fs::write(&file, text).unwrap();
        Self::start(folder, Some(file))
    }

    /// A window on nothing.
    pub fn empty() -> Self {
        Self::start(tempfile::tempdir().unwrap(), None)
    }

    /// A window in a folder that may hold work that was left behind.
    pub fn start(folder: tempfile::TempDir, file: Option<PathBuf>) -> Self {
        let ctx = Context::default();
        dress(&ctx);
        ctx.enable_accesskit();
        let opened = file.clone().map(|f| {
            let opened = tracewheel::file::open(&f).unwrap();
            (f, opened)
        });
        let recovery = Some(folder.path().join("recovery"));
        let own = Some(folder.path().join("own/preferences.ron"));
        let window = Window::new(Start { file: opened, recovery, own, begun: None }, None);
        let mut stage = Self {
            ctx,
            window,
            told: Vec::new(),
            focus: None,
            file: file.unwrap_or_else(|| folder.path().join("draft.ron")),
            folder,
            title: String::new(),
            repaint: false,
            modifiers: Modifiers::NONE,
            held: Modifiers::NONE,
            passes: AtomicU32::new(0),
            discard: false,
            keys_only: false,
            textures: Textures::default(),
            shapes: Vec::new(),
        };
        stage.rest();
        stage
    }

    pub fn frame(&mut self, events: Vec<Event>) {
        let mut all = Vec::new();
        if self.modifiers != self.held {
            self.held = self.modifiers;
            all.push(Event::ModifiersChanged(self.modifiers));
        }
        all.extend(events);
        let input = RawInput { screen_rect: Some(SCREEN), events: all, ..Default::default() };
        let (window, passes, discard) = (&mut self.window, &self.passes, self.discard);
        passes.store(0, Ordering::Relaxed);
        let output = self.ctx.clone().run_ui(input, |ui| {
            if discard && passes.fetch_add(1, Ordering::Relaxed) == 0 {
                ui.ctx().request_discard("a test wants a second pass");
            }
            window.paint(ui);
        });
        for view in output.viewport_output.values() {
            self.repaint = view.repaint_delay.is_zero();
            for command in &view.commands {
                if let egui::ViewportCommand::Title(title) = command {
                    self.title.clone_from(title);
                }
            }
        }
        if let Some(update) = &output.platform_output.accesskit_update {
            let focus = update.nodes.iter().find(|(id, _)| *id == update.focus);
            self.focus = focus.and_then(|(_, n)| n.label().map(str::to_owned));
            let nodes = update.nodes.iter().map(|(_, node)| node);
            self.told = nodes
                .filter_map(|node| {
                    let rect = node.bounds().map(|b| {
                        let corner = |x: f64, y: f64| pos2(x as f32, y as f32);
                        Rect::from_min_max(corner(b.x0, b.y0), corner(b.x1, b.y1))
                    });
                    let chosen = format!("{:?}", node.toggled()).contains("True");
                    let role = format!("{:?}", node.role());
                    let is_field = role.contains("TextInput");
                    let is_words = role == "Label" || role == "TextRun";
                    let used = [
                        "Button",
                        "CheckBox",
                        "RadioButton",
                        "MenuItem",
                        "Slider",
                        "ListBoxOption",
                        "Link",
                        "ComboBox",
                    ];
                    let can_be_used = is_field || used.contains(&role.as_str());
                    let name = node.label().or(node.value())?.to_owned();
                    let value = node.value().unwrap_or("").to_owned();
                    Some(Told {
                        name,
                        is_field,
                        is_words,
                        can_be_used,
                        value,
                        chosen,
                        enabled: !node.is_disabled(),
                        rect,
                    })
                })
                .collect();
            // From top to bottom, as it is read.
            let key = |t: &Told| t.rect.map_or((0, 0), |r| (r.top() as i32, r.left() as i32));
            self.told.sort_by(|a, b| (key(a), &a.name).cmp(&(key(b), &b.name)));
        }
        for (id, deltas) in &output.textures_delta.set {
            deltas.iter().for_each(|delta| self.textures.take(*id, delta));
        }
        self.shapes.clone_from(&output.shapes);
        output.drop_without_applying_deltas();
    }

    /// The window as a picture, in a theme and at so many pixels for a point.
    pub fn picture(&mut self, theme: egui::Theme, scale: f32) -> Picture {
        self.ctx.set_theme(theme);
        self.ctx.set_pixels_per_point(scale);
        self.rest();
        let primitives = self.ctx.tessellate(std::mem::take(&mut self.shapes), scale);
        Picture::of(&primitives, &self.textures, SCREEN.size(), scale)
    }

    /// Some frames without anything, until panels have come to rest.
    pub fn rest(&mut self) {
        (0..5).for_each(|_| self.frame(vec![]));
    }

    pub fn names(&self) -> Vec<&str> {
        self.told.iter().map(|t| t.name.as_str()).collect()
    }

    pub fn find(&self, name: &str) -> Option<&Told> {
        let mut all = self.told.iter().filter(|t| t.name == name && t.rect.is_some());
        all.clone().find(|t| !t.is_words).or_else(|| all.next())
    }

    /// A field, not the words over it.
    pub fn field(&self, name: &str) -> &Told {
        let found = self.told.iter().find(|t| t.name == name && t.is_field);
        found.unwrap_or_else(|| panic!("there is no field {name}: {}", self.all()))
    }

    /// Frames until these words are told by something that goes on beside the window.
    pub fn wait_for(&mut self, words: &str) {
        for _ in 0..3_000 {
            self.frame(vec![]);
            if self.says(words) {
                return;
            }
            std::thread::sleep(std::time::Duration::from_millis(10));
        }
        panic!("{words} is never told: {}", self.all());
    }

    /// Everything that is told, in short.
    pub fn all(&self) -> String {
        let mut all: Vec<&str> = self.names().into_iter().filter(|n| !n.is_empty()).collect();
        all.sort_unstable();
        all.dedup();
        all.join(" | ").chars().take(5_000).collect()
    }

    pub fn seen(&self, name: &str) -> &Told {
        self.find(name).unwrap_or_else(|| panic!("{name} is not told: {}", self.all()))
    }

    /// Whether any words that are told hold these.
    pub fn says(&self, words: &str) -> bool {
        self.told.iter().any(|t| t.name.contains(words) || t.value.contains(words))
    }

    pub fn rect(&self, name: &str) -> Rect {
        self.seen(name).rect.unwrap()
    }

    pub fn button(&mut self, pos: Pos2, pressed: bool) {
        assert!(!self.keys_only, "there is no pointer here");
        let modifiers = self.modifiers;
        self.frame(vec![Event::PointerButton { pos, button: PointerButton::Primary, pressed, modifiers }]);
    }

    pub fn point(&mut self, pos: Pos2) {
        self.frame(vec![Event::PointerMoved(pos)]);
    }

    pub fn click_at(&mut self, pos: Pos2) {
        self.point(pos);
        self.button(pos, true);
        self.button(pos, false);
        self.rest();
    }

    pub fn click(&mut self, name: &str) {
        if self.keys_only {
            self.tab_to(name);
            self.press(Key::Space);
            return;
        }
        // What lies below the edge of a list is rolled to first.
        for _ in 0..40 {
            let rect = self.rect(name);
            if rect.center().y < 995.0 && rect.center().y > 0.0 && rect.width() > 1.0 {
                break;
            }
            self.rest();
        }
        let at = self.rect(name).center();
        self.click_at(at);
    }

    pub fn with(&mut self, modifiers: Modifiers, act: impl FnOnce(&mut Self)) {
        self.modifiers = modifiers;
        act(self);
        self.modifiers = Modifiers::NONE;
        self.frame(vec![]);
    }

    /// Holds modifiers down until they are changed again.
    pub fn modifiers_held(&mut self, modifiers: Modifiers) {
        self.modifiers = modifiers;
        self.frame(vec![]);
    }

    /// Tab until this has the focus.
    pub fn tab_to(&mut self, name: &str) {
        let mut passed = std::collections::BTreeSet::new();
        for _ in 0..400 {
            if self.focus.as_deref() == Some(name) {
                return;
            }
            passed.insert(self.focus.clone());
            self.press(Key::Tab);
        }
        panic!("Tab never comes to {name}, only to {passed:?}; there are: {}", self.all());
    }

    pub fn scroll(&mut self, at: Pos2, by: f32) {
        let wheel = Event::MouseWheel {
            unit: MouseWheelUnit::Point,
            delta: vec2(0.0, by),
            phase: TouchPhase::Move,
            source: egui::MouseWheelSource::Wheel,
            modifiers: self.modifiers,
        };
        self.frame(vec![Event::PointerMoved(at)]);
        self.frame(vec![wheel]);
        (0..60).for_each(|_| self.frame(vec![]));
    }

    pub fn key(&mut self, modifiers: Modifiers, key: Key) {
        self.modifiers = modifiers;
        let event = |pressed| Event::Key { key, physical_key: None, pressed, repeat: false, modifiers };
        self.frame(vec![event(true)]);
        self.frame(vec![event(false)]);
        self.modifiers = Modifiers::NONE;
        self.rest();
    }

    pub fn press(&mut self, key: Key) {
        self.key(Modifiers::NONE, key);
    }

    /// Ctrl and a key.
    pub fn ctrl(&mut self, key: Key) {
        self.key(Modifiers::COMMAND | Modifiers::CTRL, key);
    }

    pub fn type_text(&mut self, text: &str) {
        self.frame(vec![Event::Text(text.to_owned())]);
        self.rest();
    }

    /// Puts another text in a field and leaves it with Enter.
    pub fn fill(&mut self, name: &str, text: &str) {
        self.write(name, text);
        self.press(Key::Enter);
    }

    /// Puts another text in a field and stays in it.
    pub fn write(&mut self, name: &str, text: &str) {
        if self.keys_only {
            self.tab_to(name);
        } else {
            self.reach(name);
            let at = self.field(name).rect.unwrap().center();
            self.click_at(at);
        }
        self.ctrl(Key::A);
        if text.is_empty() {
            self.press(Key::Backspace);
        } else {
            self.type_text(text);
        }
    }

    /// Turns the card until a field far down on it can be reached.
    fn reach(&mut self, name: &str) {
        self.turn_to(|stage| stage.field(name).rect.unwrap().center());
    }

    /// Turns the card until a place on it is seen.
    fn turn_to(&mut self, place: impl Fn(&Self) -> Pos2) {
        for _ in 0..40 {
            let at = place(self);
            if at.x < CARD || (HIGH..LOW).contains(&at.y) {
                return;
            }
            let by = if at.y < HIGH { 80.0 } else { -80.0 };
            self.scroll(pos2(at.x, LOW - 150.0), by);
        }
    }

    /// Clicks on something on the card, which may be far down on it or rolled away.
    pub fn click_on_card(&mut self, name: &str) {
        self.turn_to(|stage| stage.rect(name).center());
        self.click(name);
    }

    /// Fills the dialog that is open, and does its first choice.
    pub fn answer(&mut self, fields: &[(&str, &str)], choice: &str) {
        for (name, text) in fields {
            self.write(name, text);
        }
        self.click(choice);
    }

    /// Pulls something by its name, in steps; `end` is what happens at last.
    pub fn pull(&mut self, name: &str, by: egui::Vec2) {
        let from = self.rect(name).center();
        self.pull_from(from, by);
        self.button(from + by, false);
        self.rest();
    }

    /// Takes something and pulls it, without letting go.
    pub fn pull_from(&mut self, from: Pos2, by: egui::Vec2) {
        self.point(from);
        self.frame(vec![]);
        self.button(from, true);
        for i in 1..=8 {
            self.point(from + by * (i as f32 / 8.0));
        }
        self.rest();
    }

    /// Does an action by its name in the finder.
    pub fn find_and_do(&mut self, name: &str) {
        self.ctrl(Key::K);
        self.type_text(name);
        self.press(Key::Enter);
    }

    /// Saves with the key and gives the text of the file.
    pub fn saved(&mut self) -> String {
        self.ctrl(Key::S);
        assert!(self.says("is saved"), "not saved: {}", self.all());
        std::fs::read_to_string(&self.file).unwrap()
    }

    /// What is in the file now.
    pub fn text(&self) -> String {
        std::fs::read_to_string(&self.file).unwrap()
    }

    /// Measures in the saved file on the command line: JSON of formulas and sizes.
    pub fn measure(&self, formulas: &[&str]) -> serde_json::Value {
        let file = self.file.to_str().unwrap();
        let out = crate::program().args([&["measure", file][..], formulas, &["--json"]].concat()).output().unwrap();
        assert!(out.status.code() != Some(2), "{}", String::from_utf8_lossy(&out.stderr));
        serde_json::from_slice(&out.stdout).unwrap()
    }

    /// Proof of the saved file on the command line: its exit and its findings.
    pub fn proof(&self) -> (i32, serde_json::Value) {
        let out = crate::program().args(["proof", self.file.to_str().unwrap(), "--json"]).output().unwrap();
        (out.status.code().unwrap(), serde_json::from_slice(&out.stdout).unwrap())
    }

    pub fn pieces(&self) -> Vec<&str> {
        let mut all: Vec<&str> =
            self.told.iter().map(|t| t.name.as_str()).filter(|n| n.starts_with("piece ") && n.contains(", ")).collect();
        all.sort_unstable();
        all
    }

    /// The file of the person's own.
    pub fn own(&self) -> PathBuf {
        self.folder.path().join("own/preferences.ron")
    }

    /// What stands in the file of the person's own.
    pub fn own_text(&self) -> String {
        std::fs::read_to_string(self.own()).unwrap()
    }

    pub fn is_closing(&self) -> bool {
        self.window.is_closing()
    }

    pub fn open_path(&self) -> Option<&Path> {
        self.window.path()
    }

    /// Ends the window without any farewell, and gives the folder back.
    pub fn vanish(self) -> (tempfile::TempDir, PathBuf) {
        let Self { window, folder, file, .. } = self;
        drop(window);
        (folder, file)
    }
}
