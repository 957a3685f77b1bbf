//! Cards of values and persons.

use egui::Ui;

use super::Card;
use super::by_size::Said;
use crate::app::field::{self, Form};
use crate::app::state::{Field, Room, Wish};
use crate::document::{Address, Draft, Part};
use crate::session::{Command, PartCommand};
use crate::texts::say;

/// The views in which a value has a formula of its own, each with its place there.
fn views_of(draft: &Draft, value: &str) -> Vec<(String, usize)> {
    let is_it = |(n, _): &(String, String)| n.strip_prefix("value.").unwrap_or(n) == value;
    draft.views.iter().filter_map(|v| Some((v.name.clone(), v.values.iter().position(is_it)?))).collect()
}

impl Card<'_> {
    pub(super) fn value(&mut self, ui: &mut Ui, name: &str) {
        let part = Part::Value(name.to_owned());
        let Some(value) = self.scene.draft().values.iter().find(|v| v.name == *name) else { return };
        let found = value.is_found();
        let at = |field: &'static str| Address::new(part.clone(), field);
        if found {
            self.text(ui, at("start"), &say!("card-start"), true, &say!("card-start-hint"));
            self.text(ui, at("least"), &say!("card-least"), true, &say!("card-no-limit"));
            self.text(ui, at("most"), &say!("card-most"), true, &say!("card-no-limit"));
        } else {
            self.text(ui, at("is"), &say!("card-formula"), true, &say!("card-formula-hint"));
        }
        for (view, i) in views_of(self.scene.draft(), name) {
            let at = Address::nth(Part::View(view.clone()), "value is", i);
            self.text(ui, at, &say!("card-in-view", view), true, "");
        }
        let (word, what) = match found {
            true => (say!("card-give"), say!("card-give-about")),
            false => (say!("card-find"), say!("card-find-about")),
        };
        if ui.small_button(word).on_hover_text(what).clicked() {
            self.wishes.push(Wish::Run(Command::Part(PartCommand::MakeFound(name.to_owned(), !found))));
        }
        self.text(ui, at("note"), &say!("card-note"), false, "");
        self.number(ui, name, &say!("card-by-size"));
    }

    /// The number of a node by its name.
    pub(super) fn number(&mut self, ui: &mut Ui, name: &str, caption: &str) {
        let scene = self.scene;
        let Some(model) = scene.model() else { return };
        let Some(node) = model.plan.node_named(name) else { return };
        let Some(said) = Said::of(model.plan.nodes[node as usize].kind) else { return };
        self.by_size(ui, caption, said, &|case| {
            let item = model.item(case, node)?;
            item.real().or_else(|| item.edge().map(|e| e.sewn_length()))
        });
    }

    pub(super) fn person(&mut self, ui: &mut Ui, name: &str) {
        let draft = self.scene.draft();
        let Some(person) = draft.chart.persons.iter().find(|p| p.name == *name) else { return };
        self.text(ui, Address::new(Part::Person(name.to_owned()), "note"), &say!("card-note"), false, "");
        if self.shown.room == Room::Chart {
            // A field is in one place only.
            return self.say_line(ui, &say!("card-person-numbers", name));
        }
        for row in &draft.chart.rows {
            let text = person.cells.iter().find(|c| c.0 == row.name).map_or("", |c| c.1.as_str());
            field::caption(ui, self.look, &row.name);
            let called = say!("card-called", caption = &*row.name, part = name);
            let width = ui.available_width() - 12.0;
            let form = Form { called: &called, hint: &row.is, width, formula: true, choose_all: true, lines: 0 };
            let field = Field::PersonCell(name.to_owned(), row.name.clone());
            field::line(ui, self.shown, field, text, form, self.wishes);
            self.found(ui, text);
        }
    }
}
