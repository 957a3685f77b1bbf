//! The window: it shows what was computed.
//!
//! Rooms read what is open and say what a person wishes; the wishes are granted here, after the last pass of a frame, so that
//! a pass that is thrown away loses and doubles nothing. Nothing in this folder computes a shape or a finding.

mod canvas;
mod findings;
mod look;
mod opened;
mod shapes;
mod strip;
mod view;

use std::panic::{AssertUnwindSafe, catch_unwind, resume_unwind, set_hook, take_hook};
use std::path::Path;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};

use egui::{CentralPanel, Frame, IconData, Key, Margin, Modifiers, Panel, RichText, Theme, Ui, ViewportBuilder};

use crate::document::Draft;
use look::Look;
use opened::Opened;
use view::View;

/// Size of the window at its start, and the least, px.
const SIZE: [f32; 2] = [1280.0, 800.0];
const LEAST: [f32; 2] = [560.0, 420.0];

/// The reason where there is a display but no way to draw on it.
const NO_DRAWING: &str = "this display offers no OpenGL to draw with";

/// Opens the window and returns when it is closed.
///
/// # Errors
/// Why no window could be opened, as part of a sentence: no display, or no way to draw on it.
pub fn show(file: Option<&Path>, draft: Option<Draft>) -> Result<(), String> {
    let name = file.and_then(Path::file_name).map(|n| n.to_string_lossy().into_owned());
    let title = name.map_or_else(|| "Tracewheel".to_owned(), |n| format!("{n} – Tracewheel"));
    let viewport = ViewportBuilder::default()
        .with_title(title)
        .with_app_id("tracewheel")
        .with_icon(IconData::default())
        .with_inner_size(SIZE)
        .with_min_inner_size(LEAST);
    let options = eframe::NativeOptions { viewport, centered: true, ..Default::default() };

    // The toolkit panics on some displays without drawing: until the window is there, that is a reason like any other.
    let is_open = Arc::new(AtomicBool::new(false));
    let (opening, hook) = (Arc::clone(&is_open), Arc::new(take_hook()));
    let told = Arc::clone(&hook);
    let quiet = Arc::clone(&is_open);
    set_hook(Box::new(move |panic| {
        if quiet.load(Ordering::Relaxed) {
            told(panic);
        }
    }));
    let ran = catch_unwind(AssertUnwindSafe(|| {
        eframe::run_native(
            "tracewheel",
            options,
            Box::new(move |creation| {
                opening.store(true, Ordering::Relaxed);
                look::dress(&creation.egui_ctx);
                Ok(Box::new(Window::new(draft)))
            }),
        )
    }));
    set_hook(Box::new(move |panic| hook(panic)));
    match ran {
        Ok(done) => done.map_err(|e| reason(&e)),
        Err(panic) if is_open.load(Ordering::Relaxed) => resume_unwind(panic),
        Err(_) => Err(NO_DRAWING.to_owned()),
    }
}

/// Why there is no window, in plain words; the toolkit's own hold places in its source.
fn reason(error: &eframe::Error) -> String {
    match error {
        eframe::Error::Winit(_) | eframe::Error::WinitEventLoop(_) => "there is no display".to_owned(),
        _ => NO_DRAWING.to_owned(),
    }
}

/// What a person asks for in a frame.
#[derive(Clone, Debug, PartialEq)]
enum Wish {
    /// Show this case.
    Choose(usize),
    /// Draw the other sizes too, or not.
    Behind(bool),
    /// See this part of the table; none: all of it.
    Look(Option<View>),
    /// List all findings, or the first few.
    AllFindings(bool),
    /// Be light or dark from now on.
    Theme(Theme),
}

/// What is shown and how, apart from what was computed.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Shown {
    /// The chosen case.
    case: usize,
    /// Whether the other sizes are drawn too.
    behind: bool,
    /// The part of the table that is seen; none: all of it, whatever the window's size.
    view: Option<View>,
    /// Whether all findings are listed.
    all_findings: bool,
}

/// The window's contents.
enum Contents {
    /// No draft.
    Nothing,
    /// The program failed on the draft.
    Failed(String),
    /// A draft.
    Draft(Box<Opened>),
}

struct Window {
    contents: Contents,
    shown: Shown,
    wishes: Vec<Wish>,
}

impl Window {
    fn new(draft: Option<Draft>) -> Self {
        let contents = match draft.map(Opened::compute) {
            None => Contents::Nothing,
            Some(Err(problem)) => Contents::Failed(problem),
            Some(Ok(opened)) => Contents::Draft(Box::new(opened)),
        };
        let case = match &contents {
            Contents::Draft(opened) => opened.first(),
            _ => 0,
        };
        let shown = Shown { case, behind: true, view: None, all_findings: false };
        Self { contents, shown, wishes: Vec::new() }
    }

    fn paint(&mut self, ui: &mut Ui) {
        let look = Look::of(ui.theme());
        match &self.contents {
            Contents::Nothing => sentence(
                ui,
                &look,
                "No draft is open.",
                "Start the program with one: tracewheel examples/bodice-sleeve.ron",
            ),
            Contents::Failed(problem) => sentence(ui, &look, "This draft could not be computed.", problem),
            Contents::Draft(opened) => {
                keys(ui, opened, &self.shown, &mut self.wishes);
                let ground = Frame::new().fill(look.panel).inner_margin(Margin::symmetric(18, 12));
                let top = Panel::top("strip").frame(ground).show_separator_line(false);
                let asked = top.show(ui, |ui| strip::show(ui, &look, opened, &self.shown, &mut self.wishes)).inner;
                let bottom = Panel::bottom("findings").frame(ground).show_separator_line(false);
                bottom.show(ui, |ui| findings::show(ui, &look, opened, &self.shown, &mut self.wishes));
                let desk = Frame::new().fill(look.desk).inner_margin(Margin::same(12));
                CentralPanel::default().frame(desk).show(ui, |ui| {
                    canvas::show(ui, &look, opened, &self.shown, asked, &mut self.wishes);
                });
            }
        }
        if !ui.ctx().will_discard() {
            self.grant(ui);
        }
    }

    /// Does what was wished for in this frame; the next one shows it.
    fn grant(&mut self, ui: &Ui) {
        let before = self.shown;
        for wish in self.wishes.drain(..) {
            match wish {
                Wish::Choose(case) => {
                    if let Contents::Draft(opened) = &mut self.contents {
                        opened.shapes.add(&opened.model, case);
                    }
                    self.shown.case = case;
                }
                Wish::Behind(behind) => self.shown.behind = behind,
                Wish::Look(view) => self.shown.view = view,
                Wish::AllFindings(all) => self.shown.all_findings = all,
                Wish::Theme(theme) => ui.ctx().set_theme(theme),
            }
        }
        if self.shown != before {
            ui.ctx().request_repaint();
        }
    }
}

impl eframe::App for Window {
    fn ui(&mut self, ui: &mut Ui, _frame: &mut eframe::Frame) {
        self.paint(ui);
    }
}

/// Left and right go through the sizes.
fn keys(ui: &mut Ui, opened: &Opened, shown: &Shown, wishes: &mut Vec<Wish>) {
    let pressed = |key| ui.input_mut(|i| i.consume_key(Modifiers::NONE, key));
    let (back, on) = (pressed(Key::ArrowLeft), pressed(Key::ArrowRight));
    let last = opened.model.plan.cases.list.len().saturating_sub(1);
    if back && shown.case > 0 {
        wishes.push(Wish::Choose(shown.case - 1));
    }
    if on && shown.case < last {
        wishes.push(Wish::Choose(shown.case + 1));
    }
}

/// A window with nothing but a heading and a sentence.
fn sentence(ui: &mut Ui, look: &Look, heading: &str, text: &str) {
    let desk = Frame::new().fill(look.desk).inner_margin(Margin::same(40));
    CentralPanel::default().frame(desk).show(ui, |ui| {
        ui.add_space(ui.available_height() * 0.35);
        ui.vertical_centered(|ui| {
            ui.heading(heading);
            ui.add_space(6.0);
            ui.label(RichText::new(text).color(look.soft));
        });
    });
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;
    use egui::{
        Context, Event, MouseWheelSource, MouseWheelUnit, PointerButton, Pos2, RawInput, Rect, TouchPhase, pos2, vec2,
    };

    const SCREEN: Rect = Rect::from_min_max(Pos2::ZERO, pos2(1600.0, 1000.0));

    /// A window without a screen, and what accessibility is told of it.
    struct Stage {
        ctx: Context,
        window: Window,
        told: Vec<(String, Option<Rect>)>,
        repaint: bool,
    }

    impl Stage {
        fn new(draft: Option<Draft>) -> Self {
            let ctx = Context::default();
            look::dress(&ctx);
            ctx.enable_accesskit();
            let mut stage = Self { ctx, window: Window::new(draft), told: Vec::new(), repaint: false };
            (0..4).for_each(|_| stage.frame(SCREEN, vec![]));
            stage
        }

        fn frame(&mut self, screen: Rect, events: Vec<Event>) {
            let input = RawInput { screen_rect: Some(screen), events, ..Default::default() };
            let output = self.ctx.clone().run_ui(input, |ui| self.window.paint(ui));
            self.repaint = output.viewport_output.values().any(|v| v.repaint_delay.is_zero());
            if let Some(update) = &output.platform_output.accesskit_update {
                let nodes = update.nodes.iter().map(|(_, node)| node);
                self.told = nodes
                    .filter_map(|node| {
                        let rect = node.bounds().map(|b| {
                            let corner = |x: f64, y: f64| pos2(x as f32, y as f32);
                            Rect::from_min_max(corner(b.x0, b.y0), corner(b.x1, b.y1))
                        });
                        Some((node.label().or(node.value())?.to_owned(), rect))
                    })
                    .collect();
            }
            output.drop_without_applying_deltas();
        }

        fn press(&mut self, key: Key) {
            let modifiers = Modifiers::NONE;
            let event = |pressed| Event::Key { key, physical_key: None, pressed, repeat: false, modifiers };
            self.frame(SCREEN, vec![event(true), event(false)]);
            self.frame(SCREEN, vec![]);
        }

        fn click(&mut self, name: &str) {
            let (pos, modifiers) = (self.rect(name).center(), Modifiers::NONE);
            let button = |pressed| Event::PointerButton { pos, button: PointerButton::Primary, pressed, modifiers };
            self.frame(SCREEN, vec![Event::PointerMoved(pos)]);
            self.frame(SCREEN, vec![button(true)]);
            self.frame(SCREEN, vec![button(false)]);
            // The panels come to rest.
            (0..4).for_each(|_| self.frame(SCREEN, vec![]));
        }

        fn rect(&self, name: &str) -> Rect {
            let told = self.told.iter().find(|(n, _)| n == name);
            told.unwrap_or_else(|| panic!("{name} is not told: {:?}", self.names())).1.unwrap()
        }

        fn window_findings(&self) -> usize {
            match &self.window.contents {
                Contents::Draft(opened) => opened.findings.iter().filter(|f| f.silenced.is_none()).count(),
                _ => 0,
            }
        }

        fn names(&self) -> Vec<&str> {
            self.told.iter().map(|(n, _)| n.as_str()).collect()
        }

        fn pieces(&self) -> Vec<&str> {
            self.names().into_iter().filter(|n| n.starts_with("piece ")).collect()
        }
    }

    fn bodice() -> Draft {
        let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("examples/bodice-sleeve.ron");
        crate::file::open(&path).unwrap().draft
    }

    fn value<'a>(draft: &'a mut Draft, name: &str) -> &'a mut crate::document::Value {
        draft.values.iter_mut().find(|v| v.name == name).unwrap()
    }

    #[test]
    fn pieces_are_told_by_name_and_size() {
        let mut stage = Stage::new(Some(bodice()));
        assert_eq!(stage.pieces(), ["piece back, size 88", "piece front, size 88", "piece sleeve, size 88"]);
        assert!(stage.names().contains(&"size 88, base"), "{:?}", stage.names());
        stage.click("size 104");
        assert_eq!(stage.pieces()[0], "piece back, size 104");
        stage.click("subject 28249");
        assert_eq!(stage.pieces()[0], "piece back, subject 28249");
    }

    #[test]
    fn left_and_right_go_through_the_sizes_and_stop_at_the_ends() {
        let mut stage = Stage::new(Some(bodice()));
        stage.press(Key::ArrowRight);
        assert_eq!(stage.pieces()[1], "piece front, size 92");
        (0..30).for_each(|_| stage.press(Key::ArrowLeft));
        assert_eq!(stage.pieces()[1], "piece front, size 76");
        (0..40).for_each(|_| stage.press(Key::ArrowRight));
        assert_eq!(stage.pieces()[1], "piece front, subject 10027");
    }

    #[test]
    fn the_other_sizes_can_be_switched_off() {
        let mut stage = Stage::new(Some(bodice()));
        assert!(stage.window.shown.behind);
        stage.click("other sizes");
        assert!(!stage.window.shown.behind);
    }

    #[test]
    fn scrolling_comes_nearer_and_show_all_goes_back() {
        let mut stage = Stage::new(Some(bodice()));
        let before = stage.rect("piece front, size 88");
        let at = before.center();
        let wheel = Event::MouseWheel {
            unit: MouseWheelUnit::Point,
            delta: vec2(0.0, 60.0),
            phase: TouchPhase::Move,
            source: MouseWheelSource::Wheel,
            modifiers: Modifiers::NONE,
        };
        stage.frame(SCREEN, vec![Event::PointerMoved(at)]);
        stage.frame(SCREEN, vec![wheel]);
        (0..60).for_each(|_| stage.frame(SCREEN, vec![]));
        let after = stage.rect("piece front, size 88");
        assert!(after.width() > before.width() * 1.1, "{before:?} {after:?}");
        // Above and below it is cut off by the sheet's edges.
        assert!((after.center().x - at.x).abs() < 2.0, "{before:?} {after:?}");
        stage.click("Show all");
        assert!((stage.rect("piece front, size 88").width() - before.width()).abs() < 0.5);
    }

    #[test]
    fn what_is_missing_or_not_true_is_told() {
        let mut draft = bodice();
        value(&mut draft, "wrist_w").is = "wrist + sqrt((100 cm - bust) * 1 cm)".into();
        let mut stage = Stage::new(Some(draft));
        stage.click("size 128");
        assert_eq!(stage.pieces()[2], "piece sleeve cannot be drawn in size 128");
        let mut draft = bodice();
        value(&mut draft, "cap_height").most = "11 cm".into();
        let stage = Stage::new(Some(draft));
        assert_eq!(stage.pieces()[2], "piece sleeve, size 88, not true");
        assert_eq!(stage.pieces()[0], "piece back, size 88");
    }

    #[test]
    fn all_findings_can_be_listed() {
        let mut draft = bodice();
        for (n, name) in ["arm_ease", "bust_ease", "neck_ease", "waist_ease"].iter().enumerate() {
            value(&mut draft, name).is = format!("nothing_{n}");
        }
        let mut stage = Stage::new(Some(draft));
        let many = stage.window_findings();
        let fourth = |stage: &Stage| stage.names().iter().any(|n| n.contains("nothing_0"));
        assert!(many > 4 && !fourth(&stage), "{many}");
        stage.click(&format!("All {many} findings"));
        assert!(fourth(&stage), "{:?}", stage.names());
        stage.click("First findings");
        assert!(!fourth(&stage));
    }

    #[test]
    fn nothing_is_painted_again_once_it_is_still() {
        for draft in [None, Some(bodice())] {
            let mut stage = Stage::new(draft);
            (0..3).for_each(|_| stage.frame(SCREEN, vec![]));
            assert!(!stage.repaint);
            stage.frame(SCREEN, vec![Event::PointerMoved(pos2(5.0, 5.0))]);
            (0..30).for_each(|_| stage.frame(SCREEN, vec![]));
            assert!(!stage.repaint);
        }
    }

    #[test]
    fn no_draft_and_no_size_of_the_window_is_too_little() {
        for draft in [None, Some(Draft::default()), Some(bodice())] {
            let mut stage = Stage::new(draft);
            for size in [vec2(1.0, 1.0), vec2(80.0, 2000.0), vec2(2000.0, 60.0), vec2(300.0, 300.0)] {
                (0..3).for_each(|_| stage.frame(Rect::from_min_size(Pos2::ZERO, size), vec![]));
            }
        }
        let stage = Stage::new(None);
        let told = stage.names().iter().any(|n| n.contains("tracewheel examples/bodice-sleeve.ron"));
        assert!(told, "{:?}", stage.names());
    }
}
