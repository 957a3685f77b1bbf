//! The card of a row of the chart: its kind, by which axes it varies, its place, its words.

use egui::{Role, Ui, WidgetInfo};

use super::Card;
use crate::app::field;
use crate::app::state::Wish;
use crate::document::{Address, Axis, Part, RowKind};
use crate::session::{Act, ChartCommand, Command};
use crate::texts::say;

impl Card<'_> {
    pub(super) fn row(&mut self, ui: &mut Ui, name: &str) {
        self.row_shape(ui, name);
        let part = Part::Row(name.to_owned());
        let at = |field: &'static str| Address::new(part.clone(), field);
        self.text(ui, at("is"), &say!("card-row-formula"), true, &say!("card-row-formula-hint"));
        for (field, caption) in [
            ("what", say!("card-row-what")),
            ("level", say!("card-row-level")),
            ("how", say!("card-row-how")),
            ("source", say!("card-row-source")),
            ("note", say!("card-note")),
        ] {
            self.text(ui, at(field), &caption, false, "");
        }
        if ui.small_button(say!("card-show-chart")).clicked() {
            self.wishes.push(Wish::Act(Act::Chart));
        }
        self.number(ui, &format!("chart.{name}"), &say!("card-by-size"));
    }

    /// What can be chosen about a row.
    fn row_shape(&mut self, ui: &mut Ui, name: &str) {
        let scene = self.scene;
        let chart = &scene.draft().chart;
        let Some(row) = chart.rows.iter().find(|r| r.name == name) else { return };
        ui.horizontal_wrapped(|ui| {
            for (kind, word, called, what) in [
                (RowKind::Body, say!("card-row-body"), say!("card-row-body-called"), say!("card-row-body-about")),
                (RowKind::House, say!("card-row-house"), say!("card-row-house-called"), say!("card-row-house-about")),
            ] {
                let chosen = row.kind == kind;
                let response = ui.selectable_label(chosen, word).on_hover_text(what);
                response.widget_info(|| WidgetInfo::selected(Role::RadioButton, true, chosen, called.as_str()));
                if response.clicked() {
                    self.run(ChartCommand::Kind(name.to_owned(), kind));
                }
            }
            for act in [Act::RowUp, Act::RowDown] {
                let word = if act == Act::RowUp { say!("card-row-up") } else { say!("card-row-down") };
                let response =
                    ui.small_button(word).on_hover_text(format!("{} ({})", act.action().what(), act.action().key));
                response.widget_info(|| WidgetInfo::labeled(Role::Button, true, act.action().name()));
                if response.clicked() {
                    self.wishes.push(Wish::Act(act));
                }
            }
        });
        field::caption(ui, self.look, &say!("card-varies"));
        ui.horizontal_wrapped(|ui| {
            for axis in Axis::ALL {
                let (word, own) = (axis.words(), row.by.contains(&axis));
                let response = ui.selectable_label(own, if own { format!("✓ {word}") } else { word.clone() });
                let called = say!("card-varies-by", axis = word);
                response.widget_info(|| WidgetInfo::selected(Role::CheckBox, true, own, called.as_str()));
                if response.clicked() {
                    let wanted = |a: &Axis| if *a == axis { !own } else { row.by.contains(a) };
                    let by = Axis::ALL.into_iter().filter(wanted).collect();
                    self.run(ChartCommand::By(name.to_owned(), by));
                }
            }
        });
    }

    fn run(&mut self, command: ChartCommand) {
        self.wishes.push(Wish::Run(Command::Chart(command)));
    }
}
