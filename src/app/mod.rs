//! The window: what a person does becomes commands, what was computed becomes a picture.
//!
//! Rooms read what is open and say what a person wishes; the wishes are granted after the last pass of a frame, so that
//! a pass that is thrown away loses and doubles nothing. Nothing in this folder computes a shape or a finding.

mod act;
mod ask;
mod blocks;
mod booklet;
mod canvas;
mod card;
mod chart;
mod cloth;
mod contents;
mod disk;
mod field;
mod finder;
mod findings;
mod grant;
mod guide;
mod help;
mod job;
mod listed;
mod look;
mod menus;
mod notices;
mod offers;
mod own;
mod palettes;
mod pencil;
mod pictures;
mod preferences;
mod print;
mod publish;
mod pulls;
mod release;
mod roll;
mod scene;
mod screen;
mod shapes;
mod sheets;
mod state;
mod strip;
mod tape;
mod times;
mod trace;
mod underlay;
mod versus;
mod view;
mod welcome;

use std::panic::{AssertUnwindSafe, catch_unwind, resume_unwind, set_hook, take_hook};
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};
use std::time::Instant;

use egui::{
    CentralPanel, Context, Frame, IconData, Margin, Panel, Sense, Ui, UiBuilder, ViewportBuilder, ViewportCommand,
};

use crate::base::Language;
use crate::file::OpenedFile;
use crate::session::{LeftBehind, OpenDraft, Own, Preferences, RecoveryFolder, Wake};
use crate::texts::{self, say, set_own};
use ask::Then;
use disk::Browsing;
use job::PrintJob;
use look::Look;
use scene::Scene;
use state::{Room, Shown, Tone, Wish};
use times::Times;

/// Size of the window at its start, and the least, px.
const SIZE: [f32; 2] = [1440.0, 900.0];
const LEAST: [f32; 2] = [980.0, 620.0];
/// Widths of contents and card, px.
const CONTENTS: f32 = 215.0;
const CARD: f32 = 310.0;
/// Height of the findings while the first few are told, px.
const FINDINGS: f32 = 154.0;
/// The same in a window lower than this, px.
const FINDINGS_LOW: f32 = 104.0;
const LOW: f32 = 760.0;

/// With what the window begins.
#[derive(Default)]
pub struct Start {
    /// A draft and the file it came from; none: an empty draft.
    pub file: Option<(PathBuf, OpenedFile)>,
    /// Where unsaved work is kept; none: nowhere.
    pub recovery: Option<PathBuf>,
    /// The file that holds what is the person's own; none: nothing is kept.
    pub own: Option<PathBuf>,
    /// When the program began, for those who want to know how long it takes.
    pub begun: Option<Instant>,
}

/// The icon in the frame of the window; none where its picture cannot be read.
fn icon() -> IconData {
    eframe::icon_data::from_png_bytes(include_bytes!("../../assets/desktop/tracewheel.png")).unwrap_or_default()
}

/// Opens the window and returns when it is closed.
///
/// # Errors
/// Why no window could be opened, as part of a sentence: no display, or no way to draw on it.
pub fn show(start: Start) -> Result<(), String> {
    let viewport = ViewportBuilder::default()
        .with_title("Tracewheel")
        .with_app_id("tracewheel")
        .with_icon(icon())
        .with_inner_size(SIZE)
        .with_min_inner_size(LEAST);
    // Who measures wants to know what the window can do, not what the screen shows of it.
    // There is no shading that dithering could smooth, and it costs a processor without a graphics card much.
    let mut options = eframe::NativeOptions { viewport, centered: true, dithering: false, ..Default::default() };
    options.glow_options.vsync = !Times::wanted();

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
                let ctx = creation.egui_ctx.clone();
                look::dress(&ctx);
                let wake: Wake = Arc::new(move || ctx.request_repaint());
                Ok(Box::new(Window::new(start, Some(wake))))
            }),
        )
    }));
    set_hook(Box::new(move |panic| hook(panic)));
    match ran {
        Ok(done) => done.map_err(|e| reason(&e)),
        Err(panic) if is_open.load(Ordering::Relaxed) => resume_unwind(panic),
        Err(_) => Err(say!("window-no-drawing")),
    }
}

/// Why there is no window, in plain words; the toolkit's own hold places in its source.
fn reason(error: &eframe::Error) -> String {
    match error {
        eframe::Error::Winit(_) | eframe::Error::WinitEventLoop(_) => say!("window-no-display"),
        _ => say!("window-no-drawing"),
    }
}

/// The window, with or without a screen.
pub struct Window {
    open: OpenDraft,
    scene: Scene,
    shown: Shown,
    wishes: Vec<Wish>,
    wake: Option<Wake>,
    recovery: Option<RecoveryFolder>,
    /// Work that was left behind and is offered.
    left: Vec<LeftBehind>,
    /// The system's dialog for files.
    browsing: Option<Browsing>,
    /// Something is being published.
    job: Option<PrintJob>,
    /// A release is being made.
    making: Option<release::Making>,
    /// What is done once the draft was saved.
    then: Option<Then>,
    /// The window was asked to close and nothing stands in the way any more.
    closing: bool,
    /// The preferences that the window wears.
    worn: Option<Preferences>,
    /// The language of the system, and the one that is spoken.
    system: Language,
    spoken: Language,
    times: Times,
    title: String,
}

/// Gives a context the fonts and colours of the window.
pub fn dress(ctx: &Context) {
    look::dress(ctx);
}

impl Window {
    /// A window on a draft. Without `wake` everything is computed at once, in the same thread.
    pub fn new(start: Start, wake: Option<Wake>) -> Self {
        let system = texts::own();
        let (own, trouble) = Own::open(start.own);
        let spoken = own.preferences.language.unwrap_or(system);
        set_own(spoken);
        let mut message = trouble.map(|words| (Tone::Refused, words));
        let recovery = start.recovery.and_then(|path| match RecoveryFolder::open(path) {
            Ok(folder) => Some(folder),
            Err(problem) => {
                message = Some((Tone::Refused, problem.to_string()));
                None
            }
        });
        let left = recovery.as_ref().map_or_else(Vec::new, RecoveryFolder::left_behind);
        let open = match start.file {
            Some((path, opened)) => OpenDraft::of_file(&path, opened, wake.clone()),
            None => OpenDraft::empty(wake.clone()),
        };
        let scene = Scene::of(Arc::clone(open.work().computed()));
        let mut shown = Shown::new(scene.first());
        shown.message = message;
        shown.own = own;
        if open.path().is_none() {
            shown.room = Room::Welcome;
            shown.welcomed = open.work().revision();
        }
        let mut window = Self {
            open,
            scene,
            shown,
            wishes: Vec::new(),
            wake,
            recovery,
            left,
            browsing: None,
            job: None,
            making: None,
            then: None,
            closing: false,
            worn: None,
            system,
            spoken,
            times: Times::since(start.begun),
            title: String::new(),
        };
        window.keep();
        window.back_to_where_it_was_left();
        window
    }

    /// Keeps the work that is open now.
    fn keep(&mut self) {
        if let Some(folder) = &self.recovery
            && let Err(problem) = self.open.keep_in(folder)
        {
            self.shown.message = Some((Tone::Refused, problem));
        }
    }

    /// Takes in what was computed, and another draft if one was opened.
    fn follow(&mut self) {
        self.open.poll();
        let computed = self.open.work().computed();
        if !Arc::ptr_eq(computed, &self.scene.whole) {
            let old = self.scene.take(Arc::clone(computed), self.shown.held.is_some());
            self.open.work().give_back(old);
            if let Some(pencil) = &mut self.shown.pencil {
                pencil.keep_to(&self.scene.computed.draft);
            }
            self.measure_again();
            if self.shown.case.is_empty()
                || self.scene.cases().is_some_and(|c| !c.list.iter().any(|c| c.address == self.shown.case))
            {
                self.shown.case = self.scene.first();
            }
        }
        self.follow_other();
        self.follow_blocks();
        let case = self.scene.case_of(&self.shown.case);
        let Scene { computed, shapes, .. } = &mut self.scene;
        if let Some(model) = &computed.model {
            let nothing = shapes::Shapes::default();
            shapes.add(&computed.draft, model, case, &nothing, false);
        }
    }

    /// Paints one frame and does what was wished for in it.
    pub fn paint(&mut self, ui: &mut Ui) {
        self.speak();
        self.follow();
        self.follow_cloth(ui.ctx());
        self.wear(ui.ctx());
        self.tab_on(ui);
        let look = Look::of(ui.theme(), &self.shown.own.preferences);
        let asking = self.shown.ask.is_some() || self.shown.trace.is_some();
        let asking = asking || self.shown.publish.is_some() || self.shown.release.is_some();
        let asking = asking || self.shown.cloth.longest.is_some();
        if !asking && self.shown.finder.is_none() {
            menus::keys(ui, &self.open, &self.scene, &self.shown, &mut self.wishes);
        } else {
            help::key(ui, &mut self.wishes);
        }
        let ground = |x: i8, y: i8| Frame::new().fill(look.panel).inner_margin(Margin::symmetric(x, y));
        let (open, scene, shown, wishes) = (&self.open, &self.scene, &self.shown, &mut self.wishes);
        let top = Panel::top("strip").frame(ground(18, 10)).show_separator_line(false);
        let asked = top.show(ui, |ui| strip::show(ui, &look, open, scene, shown, wishes)).inner;
        guide::show(ui, &look, open, scene, shown, wishes);
        notices::show(ui, &look, open, (&self.left, self.job.as_ref()), shown, wishes);
        // Of one height, so that the sheet keeps its place while findings come and go.
        let most = ui.ctx().content_rect().height();
        let few = if most < LOW { FINDINGS_LOW } else { FINDINGS };
        let height = if shown.all_findings { most * 0.42 } else { few };
        let bottom = Panel::bottom("findings").frame(ground(18, 10)).show_separator_line(false).exact_size(height);
        bottom.show(ui, |ui| within(ui, |ui| findings::show(ui, &look, scene, shown, wishes)));
        let narrow = (ui.ctx().content_rect().width() / SIZE[0]).clamp(0.8, 1.0);
        let left = Panel::left("contents").frame(ground(8, 4)).show_separator_line(false).exact_size(CONTENTS * narrow);
        left.show(ui, |ui| within(ui, |ui| contents::show(ui, &look, scene, shown, wishes)));
        let right = Panel::right("card").frame(ground(14, 8)).show_separator_line(false).exact_size(CARD * narrow);
        right.show(ui, |ui| within(ui, |ui| card::show(ui, &look, scene, shown, wishes)));
        let desk = Frame::new().fill(look.desk).inner_margin(Margin::same(10));
        let sheet = CentralPanel::default().frame(desk).show(ui, |ui| {
            if shown.room == Room::Table {
                return canvas::show(ui, &look, scene, shown, asked, wishes);
            }
            within(ui, |ui| match &shown.room {
                Room::Table => {}
                Room::Chart => chart::show(ui, &look, scene, shown, wishes),
                Room::Sheets => sheets::show(ui, &look, scene, shown, wishes),
                Room::Cloth => cloth::show(ui, &look, scene, shown, wishes),
                Room::Booklet => booklet::show(ui, &look, scene, shown, open.path().and_then(Path::parent), wishes),
                Room::Roll(rolling) => roll::show(ui, &look, scene, shown, rolling, wishes),
                Room::Differences => versus::show(ui, &look, scene, shown, wishes),
                Room::Help(page) => help::show(ui, &look, shown, page, wishes),
                Room::Preferences => preferences::show(ui, &look, shown, wishes),
                Room::Welcome => welcome::show(ui, &look, shown, wishes),
            });
            shown.sheet
        });
        ask::show(ui, &look, shown, wishes);
        trace::show(ui, &look, scene, shown, wishes);
        publish::show(ui, &look, scene, shown, wishes);
        release::show(ui, &look, scene, shown, wishes);
        cloth::show_longest(ui, &look, scene, shown, wishes);
        finder::show(ui, &look, open, scene, shown, wishes);
        if !ui.ctx().will_discard() {
            self.shown.sheet = sheet.inner;
            self.after(ui);
        }
    }

    /// Tab after Enter goes on from the field that was left.
    fn tab_on(&self, ui: &Ui) {
        let Some(left) = &self.shown.left else { return };
        let tab = ui.input(|i| i.key_pressed(egui::Key::Tab));
        // A field that is not there any more, in a room that was left, would swallow every Tab from there on.
        let is_there = ui.ctx().read_response(field::id(left)).is_some();
        if tab && is_there && ui.memory(|m| m.focused().is_none()) {
            ui.memory_mut(|m| m.request_focus(field::id(left)));
        }
    }

    /// What comes after the last pass of a frame.
    fn after(&mut self, ui: &Ui) {
        let ctx = ui.ctx().clone();
        if ctx.input(|i| i.viewport().close_requested()) && !self.closing && self.open.work().is_unsaved() {
            ctx.send_viewport_cmd(ViewportCommand::CancelClose);
            self.leave(Then::Quit);
            ctx.request_repaint();
        } else if ctx.input(|i| i.viewport().close_requested()) && !self.closing {
            self.note_left();
        }
        self.browsed(&ctx);
        self.follow_pictures(&ctx);
        self.follow_release();
        match self.job.as_mut().and_then(PrintJob::hear) {
            None => {}
            Some(Ok(words)) => {
                self.job = None;
                self.tell(words);
            }
            Some(Err(problem)) => {
                let ask = self.job.take().and_then(|job| job.ask_again(&problem));
                // Another dialog that is open by now keeps its place.
                let is_free = self.shown.ask.is_none() && self.shown.publish.is_none() && self.shown.release.is_none();
                match ask.filter(|_| is_free) {
                    Some(ask) => self.shown.publish = Some(ask),
                    None => self.refuse(problem),
                }
            }
        }
        self.shown.scroll_to_part = false;
        if ctx.input(|i| i.pointer.any_pressed()) {
            self.shown.left = None;
            self.shown.wanted = None;
        }
        self.shown.pointed = self.shown.pointed.map(|(act, _)| (act, false));
        self.grant(&ctx);
        let mark = if self.open.work().is_unsaved() { "* " } else { "" };
        let title = format!("{mark}{} – Tracewheel", self.open.file_name());
        if title != self.title {
            ctx.send_viewport_cmd(ViewportCommand::Title(title.clone()));
            self.title = title;
        }
        if self.closing {
            self.note_left();
            self.open.let_go();
            ctx.send_viewport_cmd(ViewportCommand::Close);
        }
        self.times.frame(self.shown.held.is_some());
        if self.shown.held.is_some() && self.times.is_on() {
            ctx.request_repaint();
        }
    }

    /// Whether the window wants to be closed: there is nothing unsaved, or that was dealt with.
    pub fn is_closing(&self) -> bool {
        self.closing
    }

    /// The file that is open, if there is one.
    pub fn path(&self) -> Option<&Path> {
        self.open.path()
    }
}

/// Paints in just the room that there is: what is too wide is cut off instead of pushing the sheet about.
fn within(ui: &mut Ui, paint: impl FnOnce(&mut Ui)) {
    let room = ui.max_rect();
    let mut child = ui.new_child(UiBuilder::new().max_rect(room));
    child.set_clip_rect(room.expand(4.0).intersect(ui.clip_rect()));
    paint(&mut child);
    ui.allocate_rect(room, Sense::hover());
}

impl eframe::App for Window {
    fn ui(&mut self, ui: &mut Ui, _frame: &mut eframe::Frame) {
        self.paint(ui);
    }
}
