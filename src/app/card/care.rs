//! What the card of the draft says of who is to wear the garment: what cautions hang on.

use egui::{Role, Ui, WidgetInfo};

use super::Card;
use crate::app::field;
use crate::document::{Address, Audience, GirthPlace, Part, WornAs};
use crate::session::PublishCommand;

impl Card<'_> {
    pub(super) fn care(&mut self, ui: &mut Ui) {
        let draft = self.scene.draft();
        let at = |field: &'static str| Address::new(Part::Draft, field);
        self.choice(ui, &Part::Draft, "language", "language of what is published");
        self.choice(ui, &Part::Draft, "audience", "who is to wear it (cautions hang on it)");
        if let Audience::Child { .. } = draft.audience {
            self.text(ui, at("youngest"), "the youngest", false, "such as 2 years");
            self.text(ui, at("oldest"), "the oldest", false, "such as 8 years");
        }
        self.choice(ui, &Part::Draft, "worn_as", "worn as");
        let care = &draft.care;
        let is_tight = care.worn_as == WornAs::TightSleepwear;
        if is_tight || !care.girths.is_empty() || !care.rule_sizes.is_empty() {
            self.choice(ui, &Part::Draft, "wearers", "whose sizes the rules are asked for");
            self.rule_sizes(ui);
            self.girths(ui);
        }
        self.choice(ui, &Part::Draft, "survey", "the chart is a survey of bodies, not a chart to fit by");
    }

    fn rule_sizes(&mut self, ui: &mut Ui) {
        let draft = self.scene.draft();
        for (i, (size, _)) in draft.care.rule_sizes.iter().enumerate() {
            let at = Address::nth(Part::Draft, "rule size", i);
            self.text(ui, at, &format!("size of the rules that {size} is"), false, "not said");
        }
        let all = draft.chart.girth.iter().all(|l| draft.care.rule_sizes.iter().any(|(own, _)| own == l));
        if !all && ui.small_button("Say which sizes of the rules they are").clicked() {
            self.publish(PublishCommand::RuleSizes);
        }
    }

    fn girths(&mut self, ui: &mut Ui) {
        let girths = &self.scene.draft().care.girths;
        for (i, girth) in girths.iter().enumerate() {
            let word = girth.place.words();
            let at = Address::nth(Part::Draft, "rule girth", i);
            self.formula(ui, at, &format!("garment around the {word}"), "all round, such as 2 * length(front.hem)");
            if self.small(ui, "Take it out", format!("take out the girth of the {word}")) {
                self.publish(PublishCommand::TakeItem(Part::Draft, "girths", i));
            }
        }
        field::caption(ui, self.look, "girths of the garment that rules speak of");
        let mut add = None;
        ui.menu_button("Say a girth …", |ui| {
            for place in GirthPlace::ALL.into_iter().filter(|p| girths.iter().all(|g| g.place != *p)) {
                let word = place.words();
                let response = ui.button(&word);
                response.widget_info(|| WidgetInfo::labeled(Role::Button, true, format!("girth of the {word}")));
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
