//! The card of a view: its pieces to be ticked, its values with their formulas.

use egui::{Role, Ui, WidgetInfo};

use super::Card;
use crate::app::field;
use crate::app::state::Wish;
use crate::document::{Address, Part, Value};
use crate::session::{Command, ViewCommand};
use crate::texts::say;

impl Card<'_> {
    pub(super) fn view(&mut self, ui: &mut Ui, name: &str) {
        let draft = self.scene.draft().clone();
        let Some(view) = draft.views.iter().find(|v| v.name == *name) else { return };
        let is_seen = self.scene.model().is_some_and(|m| m.view() == name);
        if !is_seen && ui.small_button(say!("card-see-view")).clicked() {
            self.wishes.push(Wish::SeeView(name.to_owned()));
        }
        field::caption(ui, self.look, &say!("card-view-pieces"));
        for piece in &draft.pieces {
            let has = view.pieces.is_empty() || view.pieces.contains(&piece.name);
            let mut ticked = has;
            let response = ui.checkbox(&mut ticked, &piece.name);
            let called = say!("card-view-piece", piece = &*piece.name, view = name);
            response.widget_info(|| WidgetInfo::selected(Role::CheckBox, true, has, &called));
            if response.clicked() {
                self.change(ViewCommand::Piece(name.to_owned(), piece.name.clone(), !has));
            }
        }
        field::caption(ui, self.look, &say!("card-view-values"));
        for (i, (value, _)) in view.values.iter().enumerate() {
            let at = Address::nth(Part::View(name.to_owned()), "value is", i);
            self.text(ui, at, value, true, "");
            let response = ui.small_button(say!("card-elsewhere")).on_hover_text(say!("card-elsewhere-about"));
            response.widget_info(|| WidgetInfo::labeled(Role::Button, true, say!("card-value-elsewhere", value)));
            if response.clicked() {
                self.change(ViewCommand::Value(name.to_owned(), value.clone(), None));
            }
        }
        let own = |v: &&Value| !view.values.iter().any(|(n, _)| n.strip_prefix("value.").unwrap_or(n) == v.name);
        ui.menu_button(say!("card-another-value"), |ui| {
            for value in draft.values.iter().filter(own) {
                let response = ui.button(&value.name);
                response.widget_info(|| {
                    WidgetInfo::labeled(Role::Button, true, say!("card-value-other", value = &*value.name))
                });
                if response.clicked() {
                    let text = if value.is_found() { &value.start } else { &value.is };
                    self.change(ViewCommand::Value(name.to_owned(), value.name.clone(), Some(text.clone())));
                    ui.close();
                }
            }
        });
        self.text(ui, Address::new(Part::View(name.to_owned()), "note"), &say!("card-note"), false, "");
    }

    fn change(&mut self, command: ViewCommand) {
        self.wishes.push(Wish::Run(Command::View(command)));
    }
}
