//! The card of the draft itself: its head, its unit, its limits.

use egui::{Role, Ui, WidgetInfo};

use super::Card;
use crate::app::state::Wish;
use crate::app::{blocks, field};
use crate::base::DisplayUnit;
use crate::document::{Address, Part};
use crate::session::{Command, TextCommand};
use crate::texts::{id, own, said, say};

impl Card<'_> {
    pub(super) fn draft(&mut self, ui: &mut Ui) {
        blocks::card(ui, self.look, self.scene, self.shown, self.wishes);
        let at = |field: &'static str| Address::new(Part::Draft, field);
        for (field, caption) in [
            ("title", id!("card-title")),
            ("note", id!("card-note")),
            ("author", id!("card-author")),
            ("licence", id!("card-licence")),
            ("contact", id!("card-contact")),
            ("edition", id!("card-edition")),
            ("date", id!("card-date")),
        ] {
            self.text(ui, at(field), &said(own(), caption, &[]), false, "");
        }
        self.care(ui);
        field::caption(ui, self.look, &say!("card-unit"));
        ui.horizontal_wrapped(|ui| {
            for (unit, word) in [
                (DisplayUnit::Cm, "cm".to_owned()),
                (DisplayUnit::Mm, "mm".to_owned()),
                (DisplayUnit::InchEighths, say!("card-unit-eighths")),
                (DisplayUnit::InchSixteenths, say!("card-unit-sixteenths")),
            ] {
                let chosen = self.draft_unit() == unit;
                let response = ui.selectable_label(chosen, &word);
                let called = say!("card-unit-show", unit = word);
                response.widget_info(|| WidgetInfo::selected(Role::RadioButton, true, chosen, called.as_str()));
                if response.clicked() {
                    self.wishes.push(Wish::Run(Command::Text(TextCommand::Display(unit))));
                }
            }
        });
        for (field, caption, hint) in [
            ("seam_limit", say!("card-seam-limit"), "1 mm"),
            ("notch_limit", say!("card-notch-limit"), "1 mm"),
            ("joint_angle", say!("card-joint-angle"), "1 deg"),
            ("joint_gap", say!("card-joint-gap"), "0.5 mm"),
            ("allowance", say!("card-allowance"), &say!("card-none")),
        ] {
            self.text(ui, at(field), &caption, true, hint);
        }
    }
}
