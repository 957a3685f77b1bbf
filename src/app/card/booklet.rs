//! The card of a step of the booklet: its words with formulas in braces, how they read, its pieces, views and pictures; and the log.

use egui::{Frame, Margin, RichText, Role, Ui, WidgetInfo};

use super::Card;
use crate::app::field::{self, Form};
use crate::app::look::{self, letters};
use crate::app::state::{Field, Wish};
use crate::compute::{Braced, BracedPart};
use crate::document::{Address, Part};
use crate::output::words_of;
use crate::session::{Act, PublishCommand};
use crate::texts::{self, say};

/// Lines of the field for the words of a step.
const LINES: usize = 7;

impl Card<'_> {
    pub(super) fn booklet_step(&mut self, ui: &mut Ui, i: usize) {
        let scene = self.scene;
        let Some(step) = scene.draft().booklet.get(i) else { return };
        let part = Part::Step(i);
        self.braced(
            ui,
            Address::new(part.clone(), "title"),
            &say!("card-step-heading"),
            1,
            &say!("card-step-heading-hint"),
        );
        let at = Address::new(part.clone(), "text");
        self.braced(ui, at, &say!("card-step-words"), LINES, &say!("card-step-words-hint"));
        let plan = scene.model().and_then(|m| m.plan.publishing.booklet.iter().find(|p| p.place == i));
        if let Some(plan) = plan {
            self.reads(ui, &plan.title, &plan.text);
        }
        field::caption(ui, self.look, &say!("card-step-pieces"));
        for piece in &scene.draft().pieces {
            let has = step.pieces.contains(&piece.name);
            if self.tick(ui, has, &piece.name, say!("card-step-piece", piece = &*piece.name, part = part.words())) {
                self.publish(PublishCommand::StepPiece(i, piece.name.clone(), !has));
            }
        }
        if !scene.draft().views.is_empty() {
            field::caption(ui, self.look, &say!("card-step-views"));
        }
        for view in &scene.draft().views {
            let has = step.views.is_empty() || step.views.contains(&view.name);
            if self.tick(ui, has, &view.name, say!("card-step-view", part = part.words(), view = &*view.name)) {
                self.publish(PublishCommand::StepView(i, view.name.clone(), !has));
            }
        }
        for k in 0..step.pictures.len() {
            let number = numbered(k);
            let at = |field: &'static str| Address::nth(part.clone(), field, k);
            let (caption, hint) = (say!("card-picture-file", number), say!("card-picture-file-hint"));
            self.text(ui, at("picture file"), &caption, false, &hint);
            let (caption, hint) = (say!("card-picture-says", number), say!("card-picture-says-hint"));
            self.text(ui, at("picture says"), &caption, false, &hint);
            let (caption, hint) = (say!("card-picture-caption", number), say!("card-picture-caption-hint"));
            self.text(ui, at("picture caption"), &caption, false, &hint);
            if self.small(ui, &say!("card-take-out"), say!("card-picture-take", number)) {
                self.publish(PublishCommand::TakeItem(part.clone(), "pictures", k));
            }
        }
        ui.add_space(4.0);
        if ui.small_button(say!("card-picture-add")).clicked() {
            let file = Address::nth(part.clone(), "picture file", step.pictures.len());
            self.publish(PublishCommand::AddItem(part, "pictures"));
            self.wishes.push(Wish::Want(Field::Text(file, false)));
        }
    }

    fn tick(&self, ui: &mut Ui, is: bool, word: &str, called: String) -> bool {
        let mut ticked = is;
        let response = ui.checkbox(&mut ticked, word);
        response.widget_info(|| WidgetInfo::selected(Role::CheckBox, true, is, called.as_str()));
        response.clicked()
    }

    /// Words with formulas in braces, over some lines.
    fn braced(&mut self, ui: &mut Ui, at: Address, caption: &str, lines: usize, hint: &str) {
        let Some(text) = self.scene.draft().text(&at) else { return };
        field::caption(ui, self.look, caption);
        let called = say!("card-called", caption, part = at.part.words());
        let form = Form { called: &called, hint, width: ui.available_width() - 12.0, lines, ..Form::default() };
        field::line(ui, self.shown, Field::Text(at, false), &text, form, self.wishes);
        // What was found stands in braces, so it is known by being in the text.
        let (own, rest): (Vec<_>, Vec<_>) =
            self.open.drain(..).partition(|(_, f)| !f.formula.is_empty() && text.contains(&f.formula));
        self.open = rest;
        field::findings(ui, self.look, self.scene, own.into_iter(), self.wishes);
    }

    /// How the words read in the chosen size.
    fn reads(&mut self, ui: &mut Ui, title: &Braced, text: &Braced) {
        let Some(model) = self.scene.model() else { return };
        let has_formula = |b: &Braced| b.parts.iter().any(|p| matches!(p, BracedPart::Formula(_)));
        if !has_formula(title) && !has_formula(text) {
            return;
        }
        field::caption(ui, self.look, &say!("card-step-reads", size = self.scene.called(self.case)));
        let frame = Frame::new().fill(self.look.sheet).inner_margin(Margin::same(8)).corner_radius(6);
        frame.show(ui, |ui| {
            ui.set_width(ui.available_width() - 12.0);
            // As buyers read it, in the language of the draft.
            let words = |of: &Braced| texts::speaking(model.draft.language, || words_of(model, self.case, of));
            let title = words(title);
            if !title.is_empty() {
                ui.label(RichText::new(title).font(letters(look::TEXT)).strong().color(self.look.ink));
            }
            for line in words(text).lines().filter(|l| !l.trim().is_empty()) {
                let line = line.trim();
                let words = line.strip_prefix("- ").map_or_else(|| line.to_owned(), |point| format!("• {point}"));
                ui.label(RichText::new(words).font(letters(look::TEXT)).color(self.look.ink));
            }
        });
    }

    /// Fittings, and what was released.
    pub(super) fn log(&mut self, ui: &mut Ui) {
        let scene = self.scene;
        let log = &scene.draft().log;
        self.say_line(ui, &say!("card-log-about"));
        for (i, fitting) in log.fittings.iter().enumerate() {
            ui.add_space(8.0);
            let number = i + 1;
            let heading = match fitting.size.as_str() {
                "" => say!("card-fitting-unsized", number),
                size => say!("card-fitting", number, size),
            };
            ui.label(RichText::new(heading).color(self.look.ink));
            let at = |field: &'static str| Address::nth(Part::Kept, field, i);
            for (field, caption, hint) in [
                ("fitting date", say!("card-fitting-date", number), say!("card-fitting-date-hint")),
                ("fitting size", say!("card-fitting-size", number), String::new()),
                ("fitting cloth", say!("card-fitting-cloth", number), String::new()),
                ("fitting note", say!("card-fitting-note", number), say!("card-nothing")),
            ] {
                self.text(ui, at(field), &caption, false, &hint);
            }
            if self.small(ui, &say!("card-take-out"), say!("card-fitting-take", number)) {
                self.publish(PublishCommand::TakeItem(Part::Kept, "fittings", i));
            }
        }
        ui.add_space(6.0);
        let act = Act::AddFitting.action();
        if ui.button(act.name()).on_hover_text(act.what()).clicked() {
            self.wishes.push(Wish::Act(Act::AddFitting));
        }
        if !log.releases.is_empty() {
            field::caption(ui, self.look, &say!("card-released"));
        }
        for release in &log.releases {
            let date = texts::owned(|| texts::date(&release.date));
            self.say_line(ui, &say!("card-release", edition = &*release.edition, date));
        }
    }
}

/// What stands behind the name of one of several: nothing for the first.
fn numbered(place: usize) -> String {
    if place == 0 { String::new() } else { format!(" {}", place + 1) }
}
