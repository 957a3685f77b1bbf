//! The dialog for outlines of an SVG file: which become pieces, how they are called, and how large one unit of the file is.

use std::path::Path;
use std::sync::Arc;

use egui::{Context, Id, Key, Modal, RichText, ScrollArea, TextEdit, Ui};

use super::act::path_of;
use super::disk::{Browsing, Kind};
use super::look::{self, Look, letters};
use super::scene::Scene;
use super::state::{Room, Shown, Wish};
use super::{Window, field};
use crate::base::tolerance;
use crate::compute::unit_of;
use crate::document::Part;
use crate::file::svg::{Outlines, Scale, open_svg};
use crate::session::{Command, OutlineCommand, StatedScale, TracedOutline, Tracing, closed_outlines, trace};
use crate::texts::{decimal, length as length_text, owned, say};

/// Width of the dialog, px.
const WIDTH: f32 = 560.0;

/// An outline in the dialog.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Row {
    pub outline: TracedOutline,
    pub is_wanted: bool,
}

/// The dialog.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct TraceAsk {
    pub path: String,
    found: Option<Arc<Outlines>>,
    rows: Vec<Row>,
    /// How many lines are open.
    open: usize,
    scale: StatedScale,
    /// The limit of corners, degrees.
    corner: String,
    problem: String,
}

impl Default for TraceAsk {
    fn default() -> Self {
        Self {
            path: String::new(),
            found: None,
            rows: Vec::new(),
            open: 0,
            scale: StatedScale::File,
            corner: format!("{:.0}", tolerance::TRACED_CORNER.to_degrees()),
            problem: String::new(),
        }
    }
}

impl TraceAsk {
    /// The outlines that are wanted.
    fn wanted(&self) -> impl Iterator<Item = &TracedOutline> {
        self.rows.iter().filter(|r| r.is_wanted).map(|r| &r.outline)
    }
}

/// What a person wishes in the dialog.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum TraceWish {
    Path(String),
    Browse,
    /// Read the file.
    Read,
    Tick(usize, bool),
    Name(usize, String),
    Scale(StatedScale),
    Corner(String),
    /// Make the pieces.
    Take,
    Close,
}

impl Window {
    /// Does what is wished in the dialog.
    pub(super) fn trace_wish(&mut self, ctx: &Context, wish: TraceWish) {
        let Some(ask) = &mut self.shown.trace else { return };
        match wish {
            TraceWish::Path(text) => ask.path = text,
            TraceWish::Browse => {
                if self.browsing.is_none() {
                    self.browsing = Some(Browsing::start(ctx, None, Kind::Outlines));
                }
            }
            TraceWish::Read => self.read_outlines(),
            TraceWish::Tick(i, wanted) => {
                if let Some(row) = ask.rows.get_mut(i) {
                    row.is_wanted = wanted;
                }
            }
            TraceWish::Name(i, name) => {
                if let Some(row) = ask.rows.get_mut(i) {
                    row.outline.name = name;
                }
            }
            TraceWish::Scale(scale) => ask.scale = scale,
            TraceWish::Corner(text) => ask.corner = text,
            TraceWish::Take => self.take_outlines(),
            TraceWish::Close => self.shown.trace = None,
        }
    }

    /// A file was chosen in the system's dialog.
    pub(super) fn chosen_for_trace(&mut self, path: Option<&Path>) {
        let Some(ask) = &mut self.shown.trace else { return };
        match path {
            Some(path) => {
                ask.path = path.display().to_string();
                self.read_outlines();
            }
            None => ask.problem = say!("done-nothing-chosen-file"),
        }
    }

    fn read_outlines(&mut self) {
        let taken: Vec<String> = self.open.work().draft().pieces.iter().map(|p| p.name.clone()).collect();
        let Some(ask) = &mut self.shown.trace else { return };
        let path = path_of(ask.path.trim());
        let own = std::mem::take(&mut ask.path);
        *ask = TraceAsk { path: own, ..TraceAsk::default() };
        match open_svg(&path) {
            Err(problem) => ask.problem = problem.to_string(),
            Ok(found) => {
                let (closed, open) = closed_outlines(&found, &taken);
                if closed.is_empty() {
                    ask.problem = say!("trace-none-closed", count = open);
                    return;
                }
                ask.rows = closed.into_iter().map(|outline| Row { is_wanted: !outline.crosses, outline }).collect();
                ask.open = open;
                if matches!(found.scale, Scale::Unknown(_)) {
                    ask.scale = StatedScale::Unit(String::new());
                }
                ask.found = Some(Arc::new(found));
            }
        }
    }

    fn take_outlines(&mut self) {
        let unit = unit_of(self.open.work().draft());
        let Some(ask) = &self.shown.trace else { return };
        let Some(found) = ask.found.clone() else { return };
        let made = (|| {
            let scale = ask.scale.scale(&found.scale, ask.wanted().next()).map_err(|e| e.to_string())?;
            let corner = ask.corner.trim().trim_end_matches('°').replace(',', ".");
            let corner = corner.parse::<f64>().ok().filter(|c| *c > 0.0 && *c < 180.0);
            let corner = corner.ok_or_else(|| say!("trace-corner-range"))?.to_radians();
            let pieces = ask.wanted().map(|o| (o.at, o.name.trim().to_owned())).collect();
            trace(&found, &Tracing { scale, corner, pieces }, unit).map_err(|e| e.to_string())
        })();
        let done = made.and_then(|(pieces, mut notes): (Vec<crate::document::Piece>, Vec<String>)| {
            if !found.notes.is_empty() {
                notes.push(say!("trace-left-out", what = found.notes.join("; ")));
            }
            let first = pieces.first().map(|p| p.name.clone());
            let add = Command::Outline(Box::new(OutlineCommand::AddPieces(pieces, notes)));
            let told = self.open.run(&add).map_err(|e| e.to_string())?;
            Ok((told, first))
        });
        match done {
            Ok((told, first)) => {
                self.shown.trace = None;
                self.shown.room = Room::Table;
                self.shown.part = first.map(Part::Piece);
                self.shown.scroll_to_part = true;
                self.tell(told);
            }
            Err(problem) => {
                if let Some(ask) = &mut self.shown.trace {
                    ask.problem = problem;
                }
            }
        }
    }
}

/// Paints the dialog, if it is open.
pub(super) fn show(ui: &mut Ui, look: &Look, scene: &Scene, shown: &Shown, wishes: &mut Vec<Wish>) {
    let Some(ask) = &shown.trace else { return };
    let mut wish = |w: TraceWish| wishes.push(Wish::Trace(w));
    let modal = Modal::new(Id::unique("trace")).backdrop_color(look.backdrop()).frame(look.dialog());
    let modal = modal.show(ui.ctx(), |ui| {
        ui.set_width(WIDTH);
        ui.label(RichText::new(say!("trace-title")).font(letters(look::LARGE)).color(look.ink));
        ui.label(RichText::new(say!("trace-note")).color(look.soft));
        ui.horizontal(|ui| {
            let (text, entered) =
                text(ui, &say!("trace-file-called"), &ask.path, say!("path-to-hint", ending = ".svg"), WIDTH - 170.0);
            if let Some(text) = text {
                wish(TraceWish::Path(text));
            }
            if ui.button(say!("trace-read")).clicked() || entered {
                wish(TraceWish::Read);
            }
            if ui.button(say!("browse")).clicked() {
                wish(TraceWish::Browse);
            }
        });
        if let Some(found) = &ask.found {
            outlines(ui, look, scene, ask, found, &mut wish);
            scale(ui, look, ask, found, &mut wish);
            ui.horizontal(|ui| {
                ui.label(RichText::new(say!("trace-corner-before")).color(look.soft));
                if let (Some(text), _) = text(ui, &say!("trace-corner-called"), &ask.corner, "15".to_owned(), 60.0) {
                    wish(TraceWish::Corner(text));
                }
                ui.label(RichText::new(say!("trace-corner-behind")).color(look.soft));
            });
        }
        if !ask.problem.is_empty() {
            ui.label(RichText::new(format!("■ {}", ask.problem)).color(look.error));
        }
        ui.add_space(6.0);
        ui.horizontal(|ui| {
            if ask.found.is_some() && ui.button(say!("trace-make")).clicked() {
                wish(TraceWish::Take);
            }
            if ui.button(say!("cancel")).clicked() {
                wish(TraceWish::Close);
            }
        });
    });
    if modal.should_close() {
        wish(TraceWish::Close);
    }
}

/// A field; what was typed, and whether it was left with Enter.
fn text(ui: &mut Ui, called: &str, own: &str, hint: String, width: f32) -> (Option<String>, bool) {
    let mut text = own.to_owned();
    let edit = TextEdit::singleline(&mut text).id(Id::unique(("trace", called))).hint_text(hint);
    let response = ui.add(edit.desired_width(width));
    ui.ctx().accesskit_node_builder(response.id, |node| node.set_label(called));
    field::ring(ui, &response);
    if ui.memory(|m| m.focused().is_none()) && !response.lost_focus() {
        response.request_focus();
    }
    let entered = response.lost_focus() && ui.input(|i| i.key_pressed(Key::Enter));
    (response.changed().then_some(text), entered)
}

/// The outlines that were found.
fn outlines(
    ui: &mut Ui,
    look: &Look,
    scene: &Scene,
    ask: &TraceAsk,
    found: &Outlines,
    wish: &mut dyn FnMut(TraceWish),
) {
    let display = scene.draft().display;
    let known = ask.scale.scale(&found.scale, ask.wanted().next()).ok();
    let size = |units: f64| match known {
        Some(mm) => owned(|| length_text(units * mm, display)),
        None => say!("trace-units", number = owned(|| decimal(&format!("{units:.1}")))),
    };
    ScrollArea::vertical().max_height(220.0).show(ui, |ui| {
        for (i, row) in ask.rows.iter().enumerate() {
            ui.horizontal(|ui| {
                let mut is_wanted = row.is_wanted;
                let number = row.outline.at + 1;
                let words = say!("trace-outline", number);
                if ui.checkbox(&mut is_wanted, words).changed() {
                    wish(TraceWish::Tick(i, is_wanted));
                }
                if let (Some(name), _) = text(ui, &say!("trace-name", number), &row.outline.name, String::new(), 150.0)
                {
                    wish(TraceWish::Name(i, name));
                }
                let (w, h) = row.outline.size;
                ui.label(RichText::new(say!("trace-size", width = size(w), height = size(h))).color(look.ink));
                if row.outline.crosses {
                    ui.label(RichText::new(say!("trace-crosses")).color(look.error));
                }
            });
        }
    });
    let small = |words: String| RichText::new(words).font(letters(look::SMALL)).color(look.soft);
    if ask.open > 0 {
        ui.label(small(say!("trace-open", count = ask.open)));
    }
    if !found.notes.is_empty() {
        ui.label(small(say!("trace-odd", what = found.notes.join("; "))));
    }
}

/// The question of the scale.
fn scale(ui: &mut Ui, look: &Look, ask: &TraceAsk, found: &Outlines, wish: &mut dyn FnMut(TraceWish)) {
    match &found.scale {
        Scale::Known(mm) => {
            let words = say!("trace-scale-file", millimetres = owned(|| decimal(&format!("{mm:.4}"))));
            if ui.radio(ask.scale == StatedScale::File, words).clicked() {
                wish(TraceWish::Scale(StatedScale::File));
            }
        }
        Scale::Unknown(why) => {
            ui.label(RichText::new(say!("trace-scale-unknown", why)).color(look.ink));
        }
    }
    ui.horizontal(|ui| {
        let own = if let StatedScale::Unit(own) = &ask.scale { own } else { "" };
        if ui.radio(matches!(ask.scale, StatedScale::Unit(_)), say!("trace-unit")).clicked() {
            wish(TraceWish::Scale(StatedScale::Unit(own.to_owned())));
        }
        if let (Some(text), _) = text(ui, &say!("trace-unit-called"), own, say!("such-as", example = "0.5 mm"), 150.0) {
            wish(TraceWish::Scale(StatedScale::Unit(text)));
        }
    });
    ui.horizontal(|ui| {
        let own = if let StatedScale::Width(own) = &ask.scale { own } else { "" };
        let first = ask.wanted().next().map_or_else(|| say!("trace-the-first"), |o| o.name.clone());
        if ui.radio(matches!(ask.scale, StatedScale::Width(_)), say!("trace-width", outline = first)).clicked() {
            wish(TraceWish::Scale(StatedScale::Width(own.to_owned())));
        }
        if let (Some(text), _) = text(ui, &say!("trace-width-called"), own, say!("such-as", example = "24 cm"), 150.0) {
            wish(TraceWish::Scale(StatedScale::Width(text)));
        }
    });
    if ui.radio(ask.scale == StatedScale::Css, say!("trace-css")).clicked() {
        wish(TraceWish::Scale(StatedScale::Css));
    }
}
