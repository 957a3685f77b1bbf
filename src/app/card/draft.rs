//! The card of the draft itself: its head, its unit, its limits.

use egui::{Role, Ui, WidgetInfo};

use super::Card;
use crate::app::state::Wish;
use crate::app::{blocks, field};
use crate::base::DisplayUnit;
use crate::document::{Address, Part};
use crate::session::{Command, TextCommand};

impl Card<'_> {
    pub(super) fn draft(&mut self, ui: &mut Ui) {
        blocks::card(ui, self.look, self.scene, self.shown, self.wishes);
        let at = |field: &'static str| Address::new(Part::Draft, field);
        for (field, caption) in [
            ("title", "title"),
            ("note", "note"),
            ("author", "author"),
            ("licence", "licence"),
            ("contact", "contact"),
            ("edition", "edition"),
            ("date", "date"),
        ] {
            self.text(ui, at(field), caption, false, "");
        }
        self.care(ui);
        field::caption(ui, self.look, "lengths are shown in");
        ui.horizontal_wrapped(|ui| {
            for (unit, word) in [
                (DisplayUnit::Cm, "cm"),
                (DisplayUnit::Mm, "mm"),
                (DisplayUnit::InchEighths, "in, eighths"),
                (DisplayUnit::InchSixteenths, "in, sixteenths"),
            ] {
                let chosen = self.draft_unit() == unit;
                let response = ui.selectable_label(chosen, word);
                response.widget_info(|| WidgetInfo::selected(Role::RadioButton, true, chosen, format!("show {word}")));
                if response.clicked() {
                    self.wishes.push(Wish::Run(Command::Text(TextCommand::Display(unit))));
                }
            }
        });
        for (field, caption, hint) in [
            ("seam_limit", "how far seams may be off", "1 mm"),
            ("notch_limit", "how far notches may be apart", "1 mm"),
            ("joint_angle", "how far lines may bend at a seam", "1 deg"),
            ("joint_gap", "how far they may be off 10 mm beside it", "0.5 mm"),
            ("allowance", "seam allowance where none is said", "none"),
        ] {
            self.text(ui, at(field), caption, true, hint);
        }
    }
}
