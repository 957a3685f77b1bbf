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

/// Lines of the field for the words of a step.
const LINES: usize = 7;

impl Card<'_> {
    pub(super) fn booklet_step(&mut self, ui: &mut Ui, i: usize) {
        let scene = self.scene;
        let Some(step) = scene.draft().booklet.get(i) else { return };
        let part = Part::Step(i);
        self.braced(ui, Address::new(part.clone(), "title"), "heading", 1, "such as Join the shoulders");
        let hint = "What is done. A formula in braces becomes a number: { length(front.hem) }. Lines with - are points of a list.";
        self.braced(ui, Address::new(part.clone(), "text"), "words", LINES, hint);
        let plan = scene.model().and_then(|m| m.plan.publishing.booklet.iter().find(|p| p.place == i));
        if let Some(plan) = plan {
            self.reads(ui, &plan.title, &plan.text);
        }
        field::caption(ui, self.look, "pieces drawn beside it");
        for piece in &scene.draft().pieces {
            let has = step.pieces.contains(&piece.name);
            if self.tick(ui, has, &piece.name, format!("{} drawn in {part}", piece.name)) {
                self.publish(PublishCommand::StepPiece(i, piece.name.clone(), !has));
            }
        }
        if !scene.draft().views.is_empty() {
            field::caption(ui, self.look, "views that it belongs to");
        }
        for view in &scene.draft().views {
            let has = step.views.is_empty() || step.views.contains(&view.name);
            if self.tick(ui, has, &view.name, format!("{part} in view {}", view.name)) {
                self.publish(PublishCommand::StepView(i, view.name.clone(), !has));
            }
        }
        for k in 0..step.pictures.len() {
            let number = if k == 0 { String::new() } else { format!(" {}", k + 1) };
            let at = |field: &'static str| Address::nth(part.clone(), field, k);
            let hint = "a PNG or JPEG in the folder of the draft";
            self.text(ui, at("picture file"), &format!("file of picture{number}"), false, hint);
            self.text(
                ui,
                at("picture says"),
                &format!("what picture{number} shows"),
                false,
                "for whoever does not see it",
            );
            self.text(ui, at("picture caption"), &format!("words under picture{number}"), false, "none");
            if self.small(ui, "Take it out", format!("take out picture{number}")) {
                self.publish(PublishCommand::TakeItem(part.clone(), "pictures", k));
            }
        }
        ui.add_space(4.0);
        if ui.small_button("Add a picture").clicked() {
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
        let called = format!("{caption} of {}", at.part);
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
        field::caption(ui, self.look, &format!("how it reads in {}", self.scene.called(self.case)));
        let frame = Frame::new().fill(self.look.sheet).inner_margin(Margin::same(8)).corner_radius(6);
        frame.show(ui, |ui| {
            ui.set_width(ui.available_width() - 12.0);
            let title = words_of(model, self.case, title);
            if !title.is_empty() {
                ui.label(RichText::new(title).font(letters(look::TEXT)).strong().color(self.look.ink));
            }
            for line in words_of(model, self.case, text).lines().filter(|l| !l.trim().is_empty()) {
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
        self.say_line(ui, "Which sizes were sewn, and when. A release tells the sizes that never were.");
        for (i, fitting) in log.fittings.iter().enumerate() {
            ui.add_space(8.0);
            let number = i + 1;
            let size = if fitting.size.is_empty() { "a size" } else { &fitting.size };
            ui.label(RichText::new(format!("Fitting {number}: {size}")).color(self.look.ink));
            let at = |field: &'static str| Address::nth(Part::Kept, field, i);
            for (field, caption, hint) in [
                ("fitting date", "date", "such as 2025-03-14"),
                ("fitting size", "size that was sewn", ""),
                ("fitting cloth", "in which cloth", ""),
                ("fitting note", "what was changed", "nothing"),
            ] {
                self.text(ui, at(field), &format!("{caption}, fitting {number}"), false, hint);
            }
            if self.small(ui, "Take it out", format!("take out fitting {number}")) {
                self.publish(PublishCommand::TakeItem(Part::Kept, "fittings", i));
            }
        }
        ui.add_space(6.0);
        let act = Act::AddFitting.action();
        if ui.button(act.name()).on_hover_text(act.what()).clicked() {
            self.wishes.push(Wish::Act(Act::AddFitting));
        }
        if !log.releases.is_empty() {
            field::caption(ui, self.look, "released");
        }
        for release in &log.releases {
            self.say_line(ui, &format!("edition {}, {}", release.edition, release.date));
        }
    }
}
