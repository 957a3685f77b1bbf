//! Cards of seams and conditions.

use egui::{RichText, Role, Ui, WidgetInfo};

use super::Card;
use super::by_size::Said;
use crate::app::field::{self, Form};
use crate::app::look::{self, letters};
use crate::app::state::{Field, Wish};
use crate::base::tolerance;
use crate::document::{Address, Fit, Part, Seam, Side};
use crate::proof::seam_state as measured;
use crate::session::{Command, PartCommand};
use crate::texts::say;

impl Card<'_> {
    pub(super) fn seam(&mut self, ui: &mut Ui, name: &str) {
        let Some(seam) = self.scene.draft().seams.iter().find(|s| s.name == *name).cloned() else { return };
        let part = Part::Seam(name.to_owned());
        for (two, edges, caption, called) in [
            (false, &seam.one, say!("card-side-one"), say!("card-side-one-of", seam = name)),
            (true, &seam.two, say!("card-side-two"), say!("card-side-two-of", seam = name)),
        ] {
            let hint = say!("card-side-hint");
            self.listed(ui, &caption, Field::SeamSide(name.to_owned(), two), edges, &called, &hint);
            for edge in edges {
                self.found(ui, edge);
            }
        }
        self.fit(ui, &seam);
        self.listed(
            ui,
            &say!("card-seam-found-by"),
            Field::FoundBy(part.clone()),
            &seam.found_by,
            &say!("card-seam-found-by-of", seam = name),
            &say!("card-seam-found-by-hint"),
        );
        self.sewing(ui, &seam);
        self.text(ui, Address::new(part, "note"), &say!("card-note"), false, "");
        let scene = self.scene;
        let place = scene.model().and_then(|m| m.plan.seams.iter().position(|s| *s.name == *seam.name));
        if let (Some(model), Some(i)) = (scene.model(), place) {
            let plan = &model.plan.seams[i];
            let words = scene.seams(self.case).get(i).map_or_else(String::new, |s| s.words.clone());
            self.say_line(ui, &say!("card-seam-in", state = words, size = scene.called(self.case)));
            self.by_size(ui, &say!("card-seam-difference"), Said::Length, &|case| {
                measured(model, plan, case).map(|s| s.one - s.two)
            });
            self.by_size(ui, &say!("card-seam-excess"), Said::Length, &|case| {
                // What is true to the last digit is nothing.
                measured(model, plan, case).map(|s| if s.excess.abs() < tolerance::EQUAL { 0.0 } else { s.excess })
            });
        }
    }

    /// A list of names or edges in one field, with commas between.
    fn listed(&mut self, ui: &mut Ui, caption: &str, field: Field, list: &[String], called: &str, hint: &str) {
        field::caption(ui, self.look, caption);
        let width = ui.available_width() - 12.0;
        let form = Form { called, hint, width, formula: true, ..Form::default() };
        field::line(ui, self.shown, field, &list.join(", "), form, self.wishes);
    }

    fn fit(&mut self, ui: &mut Ui, seam: &Seam) {
        field::caption(ui, self.look, &say!("card-fit"));
        let longer = match &seam.fit {
            Fit::Equal => Side::One,
            Fit::Eased { longer, .. } | Fit::Gathered { longer, .. } => *longer,
            Fit::Stretched { shorter, .. } => *shorter,
        };
        let is_eased = matches!(seam.fit, Fit::Eased { .. });
        let is_gathered = matches!(seam.fit, Fit::Gathered { .. });
        let is_stretched = matches!(seam.fit, Fit::Stretched { .. });
        let choices = [
            (seam.fit == Fit::Equal, say!("card-fit-equal"), Fit::Equal),
            (is_eased, say!("card-fit-eased"), Fit::Eased { longer, by: "1 cm".to_owned() }),
            (
                is_gathered,
                say!("card-fit-gathered"),
                Fit::Gathered { longer, times: "1.5".to_owned(), least: String::new(), most: String::new() },
            ),
            (is_stretched, say!("card-fit-stretched"), Fit::Stretched { shorter: longer, times: "0.9".to_owned() }),
        ];
        let name = seam.name.clone();
        ui.horizontal_wrapped(|ui| {
            for (chosen, word, fit) in choices {
                let response = ui.selectable_label(chosen, &word);
                let called = say!("card-fit-called", fit = word);
                response.widget_info(|| WidgetInfo::selected(Role::RadioButton, true, chosen, called.as_str()));
                if response.clicked() && !chosen {
                    self.wishes.push(Wish::Run(Command::Part(PartCommand::SeamFit(name.clone(), fit))));
                }
            }
        });
        let other = match longer {
            Side::One => Side::Two,
            Side::Two => Side::One,
        };
        let (caption, swapped) = match &seam.fit {
            Fit::Equal => return,
            Fit::Eased { by, .. } => (say!("card-fit-by"), Fit::Eased { longer: other, by: by.clone() }),
            Fit::Gathered { times, least, most, .. } => (
                say!("card-fit-times"),
                Fit::Gathered { longer: other, times: times.clone(), least: least.clone(), most: most.clone() },
            ),
            Fit::Stretched { times, .. } => {
                (say!("card-fit-times"), Fit::Stretched { shorter: other, times: times.clone() })
            }
        };
        let words = match (longer, is_stretched) {
            (Side::One, false) => say!("card-one-longer"),
            (Side::One, true) => say!("card-one-shorter"),
            (Side::Two, false) => say!("card-two-longer"),
            (Side::Two, true) => say!("card-two-shorter"),
        };
        ui.horizontal_wrapped(|ui| {
            ui.label(RichText::new(words).font(letters(look::SMALL)).color(self.look.soft));
            if ui.small_button(say!("card-other-side")).clicked() {
                self.wishes.push(Wish::Run(Command::Part(PartCommand::SeamFit(name, swapped))));
            }
        });
        self.text(ui, Address::new(Part::Seam(seam.name.clone()), "fit"), &caption, true, "");
    }

    pub(super) fn condition(&mut self, ui: &mut Ui, name: &str) {
        let part = Part::Condition(name.to_owned());
        let Some(condition) = self.scene.draft().conditions.iter().find(|c| c.name == *name).cloned() else { return };
        self.text(ui, Address::new(part.clone(), "must"), &say!("card-must"), true, &say!("card-must-hint"));
        self.listed(
            ui,
            &say!("card-condition-found-by"),
            Field::FoundBy(part.clone()),
            &condition.found_by,
            &say!("card-condition-found-by-of", condition = name),
            &say!("card-condition-found-by-hint"),
        );
        self.text(ui, Address::new(part, "note"), &say!("card-note"), false, "");
        for (side, caption) in [("left", say!("card-left-side")), ("right", say!("card-right-side"))] {
            self.number(ui, &format!("condition.{name}.{side}"), &caption);
        }
    }
}
