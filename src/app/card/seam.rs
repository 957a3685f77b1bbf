//! Cards of seams and conditions.

use egui::{Role, Ui, WidgetInfo};

use super::Card;
use super::by_size::Said;
use crate::app::field::{self, Form};
use crate::app::state::{Field, Wish};
use crate::base::tolerance;
use crate::document::{Address, Fit, Part, Seam, Side};
use crate::proof::seam_state as measured;
use crate::session::{Command, PartCommand};

impl Card<'_> {
    pub(super) fn seam(&mut self, ui: &mut Ui, name: &str) {
        let Some(seam) = self.scene.draft().seams.iter().find(|s| s.name == *name).cloned() else { return };
        let part = Part::Seam(name.to_owned());
        for (two, edges, caption) in [(false, &seam.one, "side one"), (true, &seam.two, "side two")] {
            let called = format!("{caption} of seam {name}");
            let hint = "edges one behind the other, such as front.side";
            self.listed(ui, caption, Field::SeamSide(name.to_owned(), two), edges, &called, hint);
            for edge in edges {
                self.found(ui, edge);
            }
        }
        self.fit(ui, &seam);
        self.listed(
            ui,
            "kept true by these values (none: it is watched)",
            Field::FoundBy(part.clone()),
            &seam.found_by,
            &format!("kept true by, of seam {name}"),
            "watched only",
        );
        self.sewing(ui, &seam);
        self.text(ui, Address::new(part, "note"), "note", false, "");
        let scene = self.scene;
        let place = scene.model().and_then(|m| m.plan.seams.iter().position(|s| *s.name == *seam.name));
        if let (Some(model), Some(i)) = (scene.model(), place) {
            let plan = &model.plan.seams[i];
            let words = scene.seams(self.case).get(i).map_or_else(String::new, |s| s.words.clone());
            self.say_line(ui, &format!("{words} in {}", scene.called(self.case)));
            self.by_size(ui, "side one less side two", Said::Length, &|case| {
                measured(model, plan, case).map(|s| s.one - s.two)
            });
            self.by_size(ui, "too long or too short", Said::Length, &|case| {
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
        field::caption(ui, self.look, "how the sides fit");
        let (longer, amount) = match &seam.fit {
            Fit::Equal => (Side::One, String::new()),
            Fit::Eased { longer, by } => (*longer, by.clone()),
            Fit::Gathered { longer, times, .. } => (*longer, times.clone()),
            Fit::Stretched { shorter, times } => (*shorter, times.clone()),
        };
        let is = |kind: &str| match &seam.fit {
            Fit::Equal => kind == "equal",
            Fit::Eased { .. } => kind == "eased",
            Fit::Gathered { .. } => kind == "gathered",
            Fit::Stretched { .. } => kind == "stretched",
        };
        let or = |text: &str| if amount.is_empty() { text.to_owned() } else { amount.clone() };
        let choices = [
            ("equal", Fit::Equal),
            ("eased", Fit::Eased { longer, by: if is("eased") { amount.clone() } else { "1 cm".to_owned() } }),
            (
                "gathered",
                Fit::Gathered {
                    longer,
                    times: if is("gathered") { or("1.5") } else { "1.5".to_owned() },
                    least: String::new(),
                    most: String::new(),
                },
            ),
            (
                "stretched",
                Fit::Stretched { shorter: longer, times: if is("stretched") { or("0.9") } else { "0.9".to_owned() } },
            ),
        ];
        let name = seam.name.clone();
        ui.horizontal_wrapped(|ui| {
            for (word, fit) in choices {
                let chosen = is(word);
                let response = ui.selectable_label(chosen, word);
                response.widget_info(|| WidgetInfo::selected(Role::RadioButton, true, chosen, format!("fit {word}")));
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
            Fit::Eased { by, .. } => ("longer by", Fit::Eased { longer: other, by: by.clone() }),
            Fit::Gathered { times, least, most, .. } => (
                "times as long",
                Fit::Gathered { longer: other, times: times.clone(), least: least.clone(), most: most.clone() },
            ),
            Fit::Stretched { times, .. } => ("times as long", Fit::Stretched { shorter: other, times: times.clone() }),
        };
        let side = if longer == Side::One { "side one" } else { "side two" };
        ui.horizontal(|ui| {
            self.say_line(ui, &format!("{side} is {}", if is("stretched") { "shorter" } else { "longer" }));
            if ui.small_button("The other side").clicked() {
                self.wishes.push(Wish::Run(Command::Part(PartCommand::SeamFit(name, swapped))));
            }
        });
        self.text(ui, Address::new(Part::Seam(seam.name.clone()), "fit"), caption, true, "");
    }

    pub(super) fn condition(&mut self, ui: &mut Ui, name: &str) {
        let part = Part::Condition(name.to_owned());
        let Some(condition) = self.scene.draft().conditions.iter().find(|c| c.name == *name).cloned() else { return };
        self.text(ui, Address::new(part.clone(), "must"), "must hold", true, "a = b, or a >= b");
        self.listed(
            ui,
            "kept true by these values",
            Field::FoundBy(part.clone()),
            &condition.found_by,
            &format!("kept true by, of condition {name}"),
            "all that it depends on",
        );
        self.text(ui, Address::new(part, "note"), "note", false, "");
        let scene = self.scene;
        let Some(model) = scene.model() else { return };
        for (side, caption) in [("left", "left side by size"), ("right", "right side by size")] {
            self.number(ui, &format!("condition.{name}.{side}"), caption);
        }
        let _ = model;
    }
}
