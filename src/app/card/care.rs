//! What the card of the draft says of who is to wear the garment: what cautions hang on.

use egui::{Role, Ui, WidgetInfo};

use super::Card;
use crate::app::field;
use crate::document::{Address, Audience, GirthPlace, Part, WornAs};
use crate::session::PublishCommand;
use crate::texts::say;

impl Card<'_> {
    pub(super) fn care(&mut self, ui: &mut Ui) {
        let draft = self.scene.draft();
        let at = |field: &'static str| Address::new(Part::Draft, field);
        self.choice(ui, &Part::Draft, "language", &say!("card-language"));
        self.choice(ui, &Part::Draft, "audience", &say!("card-audience"));
        if let Audience::Child { .. } = draft.audience {
            self.text(ui, at("youngest"), &say!("card-youngest"), false, &say!("card-youngest-hint"));
            self.text(ui, at("oldest"), &say!("card-oldest"), false, &say!("card-oldest-hint"));
        }
        self.choice(ui, &Part::Draft, "worn_as", &say!("card-worn-as"));
        let care = &draft.care;
        let is_tight = care.worn_as == WornAs::TightSleepwear;
        if is_tight || !care.girths.is_empty() || !care.rule_sizes.is_empty() {
            self.choice(ui, &Part::Draft, "wearers", &say!("card-wearers"));
            self.rule_sizes(ui);
            self.girths(ui);
        }
        self.choice(ui, &Part::Draft, "survey", &say!("card-survey"));
    }

    fn rule_sizes(&mut self, ui: &mut Ui) {
        let draft = self.scene.draft();
        for (i, (size, _)) in draft.care.rule_sizes.iter().enumerate() {
            let at = Address::nth(Part::Draft, "rule size", i);
            self.text(ui, at, &say!("card-rule-size", size), false, &say!("card-not-said"));
        }
        let all = draft.chart.girth.iter().all(|l| draft.care.rule_sizes.iter().any(|(own, _)| own == l));
        if !all && ui.small_button(say!("card-rule-sizes")).clicked() {
            self.publish(PublishCommand::RuleSizes);
        }
    }

    fn girths(&mut self, ui: &mut Ui) {
        let girths = &self.scene.draft().care.girths;
        for (i, girth) in girths.iter().enumerate() {
            let word = girth.place.words();
            let at = Address::nth(Part::Draft, "rule girth", i);
            self.formula(ui, at, &say!("card-girth", place = word), &say!("card-girth-hint"));
            if self.small(ui, &say!("card-take-out"), say!("card-girth-take", place = word)) {
                self.publish(PublishCommand::TakeItem(Part::Draft, "girths", i));
            }
        }
        field::caption(ui, self.look, &say!("card-girths"));
        let mut add = None;
        ui.menu_button(say!("card-girth-say"), |ui| {
            for place in GirthPlace::ALL.into_iter().filter(|p| girths.iter().all(|g| g.place != *p)) {
                let word = place.words();
                let response = ui.button(&word);
                response
                    .widget_info(|| WidgetInfo::labeled(Role::Button, true, say!("card-girth-called", place = word)));
                if response.clicked() {
                    add = Some(place);
                    ui.close();
                }
            }
        });
        if let Some(place) = add {
            self.publish(PublishCommand::AddGirth(place));
        }
    }
}
