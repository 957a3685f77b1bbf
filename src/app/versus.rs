//! Another draft beside the open one: what differs, as a list, and the way to each of the places.

use std::path::Path;
use std::sync::Arc;

use egui::text::LayoutJob;
use egui::{CornerRadius, Frame, Id, Label, Margin, RichText, Role, ScrollArea, Sense, TextFormat, Ui, WidgetInfo};

use super::Window;
use super::help;
use super::look::{self, Look, letters};
use super::scene::Scene;
use super::shapes::Shapes;
use super::state::{Room, Shown, Wish};
use crate::document::Part;
use crate::file;
use crate::output::{Change, Comparison, Difference};
use crate::session::{Act, Comparing, Computed, part_named};
use crate::texts::say;

/// The most errors that are listed.
const MOST_WRONG: usize = 6;
/// The most differences that are listed.
const MOST: usize = 400;

/// The other draft, as it is shown.
pub(super) struct Versus {
    pub work: Comparing,
    /// Its shapes in the sizes that were chosen.
    pub shapes: Shapes,
    /// The other draft, the view of it that is shown, and what was computed of that.
    pub seen: Option<(Arc<Computed>, usize, Arc<Computed>)>,
    /// The difference that was gone to.
    pub at: Option<usize>,
}

impl Versus {
    /// What differs, if that is known and can be said.
    pub fn found(&self) -> Option<&Comparison> {
        self.work.last()?.found.as_ref().ok()
    }

    /// What a piece or drawing of the open draft is called in the other one.
    pub fn name_there<'a>(&'a self, name: &'a str) -> &'a str {
        let renamed = self.found().and_then(|found| {
            found.differences.iter().find_map(|d| match (&d.part, &d.change) {
                (Part::Piece(now) | Part::Drawing(now), Change::Renamed(then)) if now == name => Some(then.as_str()),
                _ => None,
            })
        });
        renamed.unwrap_or(name)
    }

    /// The case of this address in the other draft.
    pub fn case(&self, address: &str) -> Option<usize> {
        let model = self.work.other()?.model.as_ref()?;
        model.plan.cases.list.iter().position(|c| c.address == address)
    }

    /// How it stands, in a few words.
    pub fn state(&self) -> String {
        match self.work.last().map(|last| &last.found) {
            None => say!("compare-going"),
            Some(Err(problem)) => problem.clone(),
            Some(Ok(found)) => found.summary().lines().next().unwrap_or_default().to_owned(),
        }
    }
}

impl Window {
    /// Begins to compare with the draft of a file.
    pub(super) fn compare_with(&mut self, path: &Path) {
        match file::open(path) {
            Err(problem) => self.problem(&problem.to_string()),
            Ok(opened) => {
                let name =
                    path.file_name().map_or_else(|| path.display().to_string(), |n| n.to_string_lossy().into_owned());
                self.shown.ask = None;
                let work = Comparing::start(name, opened.draft, self.wake.clone());
                self.shown.versus = Some(Versus { work, seen: None, shapes: Shapes::default(), at: None });
                self.shown.room = Room::Differences;
                self.follow_other();
            }
        }
    }

    /// Takes the other draft away again.
    pub(super) fn end_comparing(&mut self) {
        self.shown.versus = None;
        if self.shown.room == Room::Differences {
            self.shown.room = Room::Table;
        }
        self.tell(say!("compare-taken-away"));
    }

    /// Asks what differs now, and reads the shapes of the other draft in the chosen size.
    pub(super) fn follow_other(&mut self) {
        let Some(versus) = &mut self.shown.versus else { return };
        versus.work.follow(&self.scene.whole);
        let Some(other) = versus.work.other().map(Arc::clone) else { return };
        // In the view of the same name, if the other draft has one.
        let name = self.scene.model().map_or("", |m| m.view());
        let view = other.views().position(|v| v == name).unwrap_or(0);
        let same = |seen: &(Arc<Computed>, usize, Arc<Computed>)| Arc::ptr_eq(&seen.0, &other) && seen.1 == view;
        if !versus.seen.as_ref().is_some_and(same) {
            versus.seen = Some((Arc::clone(&other), view, other.in_view(view)));
            versus.shapes = Shapes::default();
        }
        let case = versus.case(&self.shown.case);
        if let (Some((.., seen)), Some(case)) = (&versus.seen, case)
            && let Some(model) = &seen.model
        {
            versus.shapes.add(&seen.draft, model, case, &Shapes::default(), false);
        }
    }

    /// Goes to the place of a difference, in a size in which there is one.
    pub(super) fn go_to_difference(&mut self, i: usize) {
        let Some(versus) = &mut self.shown.versus else { return };
        let Some(difference) = versus.found().and_then(|f| f.differences.get(i)).cloned() else { return };
        versus.at = Some(i);
        let name = versus.work.name().to_owned();
        if let Change::Other(pairs) = &difference.change
            && pairs.iter().all(|p| !p.size.is_empty() && p.size != self.shown.case)
            && let Some(first) = pairs.first()
        {
            self.shown.case.clone_from(&first.size);
        }
        let draft = self.open.work().draft();
        let part = match (&difference.change, &difference.part) {
            (Change::Went, Part::Inner(frame, ..)) => part_named(draft, frame),
            (Change::Went, _) => None,
            (_, part) => Some(part.clone()),
        };
        self.shown.room = match &difference.part {
            Part::Row(_) | Part::Person(_) | Part::SizeSet(_) => Room::Chart,
            _ => Room::Table,
        };
        if difference.change == Change::Went {
            self.tell(say!("compare-only-in", part = difference.called, draft = name));
        }
        self.shown.part = part.or(Some(Part::Draft));
        self.shown.also.clear();
        self.shown.scroll_to_part = true;
    }
}

/// Paints the room.
pub(super) fn show(ui: &mut Ui, look: &Look, scene: &Scene, shown: &Shown, wishes: &mut Vec<Wish>) {
    Frame::new().fill(look.sheet).inner_margin(Margin::same(14)).corner_radius(6).show(ui, |ui| {
        ui.set_min_size(ui.available_size());
        let Some(versus) = &shown.versus else { return };
        ui.horizontal_wrapped(|ui| {
            let title = match versus.work.is_towards() {
                true => say!("compare-would-change", draft = versus.work.name()),
                false => say!("compare-from", draft = versus.work.name()),
            };
            ui.label(RichText::new(title).font(letters(look::LARGE)).color(look.ink));
            help::question(ui, &say!("compare-about"), "compare", wishes);
            if ui.button(say!("show-the-pieces")).on_hover_text(Act::Differences.action().what()).clicked() {
                wishes.push(Wish::Act(Act::Differences));
            }
            if ui.button(say!("compare-end")).on_hover_text(Act::EndCompare.action().what()).clicked() {
                wishes.push(Wish::Act(Act::EndCompare));
            }
        });
        ui.label(RichText::new(versus.state()).color(look.ink));
        let Some(found) = versus.found() else { return };
        let wrong = versus.work.last().map_or(&[][..], |last| &last.wrong);
        if !wrong.is_empty() {
            let word = match versus.work.is_towards() {
                true => say!("compare-then-wrong"),
                false => say!("compare-now-wrong"),
            };
            ui.label(RichText::new(format!("■ {word}")).color(look.error));
            for words in wrong.iter().take(MOST_WRONG) {
                ui.label(RichText::new(words).color(look.error));
            }
            if wrong.len() > MOST_WRONG {
                ui.label(RichText::new(say!("and-more", count = wrong.len() - MOST_WRONG)).color(look.error));
            }
        }
        ScrollArea::vertical().auto_shrink([false, false]).show(ui, |ui| {
            ui.set_min_width(ui.available_width());
            let mut last = String::new();
            for (i, difference) in found.differences.iter().enumerate().take(MOST) {
                let heading = difference.part.frame().map_or_else(|| say!("compare-the-draft"), str::to_owned);
                if heading != last {
                    ui.add_space(6.0);
                    ui.label(RichText::new(&heading).font(letters(look::LARGE)).color(look.ink));
                    last = heading;
                }
                line(ui, look, scene, found, (i, difference), versus.at == Some(i), wishes);
            }
            if found.differences.len() > MOST {
                let words = say!("compare-rest", count = found.differences.len() - MOST);
                ui.label(RichText::new(words).color(look.soft));
            }
            for words in found.summary().lines().skip(1) {
                ui.label(RichText::new(words).color(look.soft));
            }
        });
    });
}

/// A difference: its part, and what is told of it; a click goes there.
fn line(
    ui: &mut Ui,
    look: &Look,
    scene: &Scene,
    found: &Comparison,
    (i, difference): (usize, &Difference),
    chosen: bool,
    wishes: &mut Vec<Wish>,
) {
    let said = difference.sentences(&found.sizes, scene.draft().display).join("; ");
    let called = match difference.is_note {
        true => say!("compare-line-note", part = difference.called),
        false => say!("compare-line", part = difference.called),
    };
    let called = format!("{called} ");
    let mut text = LayoutJob::default();
    text.append(&called, 0.0, TextFormat::simple(letters(look::TEXT), look.soft));
    text.append(&said, 0.0, TextFormat::simple(letters(look::TEXT), look.ink));
    let response = ui.add(Label::new(text).selectable(false).wrap());
    let response = ui.interact(response.rect, Id::unique(("difference", i)), Sense::click());
    let line = format!("{called}{said}");
    let called = match difference.part.frame() {
        Some(piece) => say!("compare-called-in", piece, line),
        None => say!("compare-called", line),
    };
    response.widget_info(|| WidgetInfo::labeled(Role::Button, true, &called));
    if chosen || response.hovered() || response.has_focus() {
        let stroke = egui::Stroke::new(1.0, if chosen { look.ink } else { look.border });
        let rect = response.rect.expand2(egui::vec2(4.0, 1.0));
        ui.painter().rect_stroke(rect, CornerRadius::same(4), stroke, egui::StrokeKind::Inside);
    }
    if response.clicked() {
        wishes.push(Wish::Difference(i));
    }
}
