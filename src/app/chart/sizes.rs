//! The axes of the chart, the labels along them, the base, and size sets.

use egui::{RichText, Role, ScrollArea, Ui, WidgetInfo};

use super::ChartWish;
use crate::app::look::{self, Look, letters};
use crate::app::scene::Scene;
use crate::app::state::{Shown, Wish};
use crate::document::{Axis, Chart, Part, SizeSet};
use crate::session::{Act, ChartCommand, Command, base_with};
use crate::texts::say;

/// Paints the page.
pub(super) fn show(ui: &mut Ui, look: &Look, scene: &Scene, _: &Shown, wishes: &mut Vec<Wish>) {
    let chart = &scene.draft().chart;
    ScrollArea::vertical().id_salt("sizes").auto_shrink([false, false]).show(ui, |ui| {
        let words = say!("chart-sizes-about");
        ui.label(RichText::new(words).font(letters(look::SMALL)).color(look.soft));
        for axis in Axis::ALL {
            of_axis(ui, look, chart, axis, wishes);
        }
        sets(ui, look, chart, wishes);
    });
}

fn run(wishes: &mut Vec<Wish>, command: ChartCommand) {
    wishes.push(Wish::Run(Command::Chart(command)));
}

/// A small button with a short word, called by a longer name.
fn small(ui: &mut Ui, enabled: bool, word: &str, called: String) -> bool {
    let response = ui.add_enabled(enabled, egui::Button::new(word).small());
    response.widget_info(|| WidgetInfo::labeled(Role::Button, enabled, called.as_str()));
    response.clicked()
}

fn of_axis(ui: &mut Ui, look: &Look, chart: &Chart, axis: Axis, wishes: &mut Vec<Wish>) {
    let (labels, word) = (chart.labels(axis), axis.words());
    let others = Axis::ALL.into_iter().any(|a| a != axis && !chart.labels(a).is_empty());
    ui.add_space(8.0);
    ui.horizontal(|ui| {
        let along = match labels.is_empty() {
            true => say!("chart-along-unused", axis = word),
            false => say!("chart-along", axis = word),
        };
        ui.label(RichText::new(along).font(letters(look::TEXT)).color(look.ink));
        if ui.small_button(say!("chart-add-label", axis = word)).clicked() {
            wishes.push(Wish::Chart(ChartWish::AddLabel(axis)));
        }
        if !labels.is_empty() && others && ui.small_button(say!("chart-take-axis", axis = word)).clicked() {
            run(wishes, ChartCommand::RemoveAxis(axis));
        }
    });
    egui::Grid::new(("labels", axis as usize)).spacing([6.0, 3.0]).show(ui, |ui| {
        for (i, label) in labels.iter().enumerate() {
            let base = chart.base.split('/').any(|p| p == label);
            ui.label(RichText::new(label).color(look.ink));
            if small(ui, i > 0, &say!("card-earlier"), say!("chart-put-earlier", label)) {
                run(wishes, ChartCommand::PlaceSize(axis, label.clone(), i - 1));
            }
            if small(ui, i + 1 < labels.len(), &say!("card-later"), say!("chart-put-later", label)) {
                run(wishes, ChartCommand::PlaceSize(axis, label.clone(), i + 1));
            }
            if small(ui, true, &say!("chart-rename"), say!("chart-rename-size", size = label)) {
                wishes.push(Wish::Chart(ChartWish::RenameLabel(axis, label.clone())));
            }
            if small(ui, labels.len() > 1, &say!("chart-delete"), say!("chart-delete-size", size = label)) {
                wishes.push(Wish::Chart(ChartWish::DeleteLabel(axis, label.clone())));
            }
            if base {
                ui.label(RichText::new(say!("chart-base")).font(letters(look::SMALL)).color(look.soft));
            } else if small(ui, true, &say!("chart-make-base"), say!("chart-make-base-of", label)) {
                run(wishes, ChartCommand::Base(base_with(chart, axis, label)));
            }
            ui.end_row();
        }
    });
}

fn sets(ui: &mut Ui, look: &Look, chart: &Chart, wishes: &mut Vec<Wish>) {
    ui.add_space(10.0);
    ui.horizontal(|ui| {
        ui.label(RichText::new(say!("chart-sets")).font(letters(look::TEXT)).color(look.ink));
        if ui.small_button(Act::AddSet.action().name().trim_end_matches(" …")).clicked() {
            wishes.push(Wish::Act(Act::AddSet));
        }
    });
    let words = match chart.sets.is_empty() {
        true => say!("chart-no-sets"),
        false => say!("chart-sets-hold"),
    };
    ui.label(RichText::new(words).font(letters(look::SMALL)).color(look.soft));
    for set in &chart.sets {
        one_set(ui, look, chart, set, wishes);
    }
}

fn one_set(ui: &mut Ui, look: &Look, chart: &Chart, set: &SizeSet, wishes: &mut Vec<Wish>) {
    let name = &set.name;
    ui.add_space(6.0);
    ui.horizontal(|ui| {
        ui.label(RichText::new(name).font(letters(look::TEXT)).color(look.ink));
        for (act, word, called) in [
            (Act::Rename, say!("chart-rename"), say!("chart-rename-set", set = name)),
            (Act::Delete, say!("chart-delete"), say!("chart-delete-set", set = name)),
        ] {
            if small(ui, true, &word, called) {
                wishes.push(Wish::Part(Part::SizeSet(name.clone())));
                wishes.push(Wish::Act(act));
            }
        }
    });
    let held = |axis: Axis, label: &String| set.labels(axis).is_empty() || set.labels(axis).contains(label);
    for axis in Axis::ALL.into_iter().filter(|a| !chart.labels(*a).is_empty()) {
        ui.horizontal_wrapped(|ui| {
            ui.label(RichText::new(axis.words()).font(letters(look::SMALL)).color(look.soft));
            for label in chart.labels(axis) {
                let own = held(axis, label);
                let response = ui.selectable_label(own, if own { format!("✓ {label}") } else { label.clone() });
                let called = say!("chart-label-in-set", label, set = name);
                response.widget_info(|| WidgetInfo::selected(Role::CheckBox, true, own, called.as_str()));
                if response.clicked() {
                    let wanted = |l: &String| if l == label { !own } else { held(axis, l) };
                    let labels = chart.labels(axis).iter().filter(|l| wanted(l)).cloned().collect();
                    run(wishes, ChartCommand::SetLabels(name.clone(), axis, labels));
                }
            }
        });
    }
    let used: Vec<Axis> = Axis::ALL.into_iter().filter(|a| chart.labels(*a).len() > 1).collect();
    let holds = |key: &String| key.split('/').zip(&used).all(|(part, axis)| held(*axis, &part.to_owned()));
    let word = match set.base.as_str() {
        "" => say!("chart-set-no-base"),
        base => say!("chart-set-base", base),
    };
    let menu = ui.menu_button(word, |ui| {
        ScrollArea::vertical().max_height(320.0).show(ui, |ui| {
            for key in chart.keys(&used).into_iter().filter(|k| holds(k)) {
                let chosen = set.base == key;
                let response = ui.selectable_label(chosen, &key);
                let called = say!("chart-set-base-choice", set = name, base = key);
                response.widget_info(|| WidgetInfo::selected(Role::RadioButton, true, chosen, called.as_str()));
                if response.clicked() {
                    run(wishes, ChartCommand::SetBase(name.clone(), key));
                    ui.close();
                }
            }
        });
    });
    menu.response.widget_info(|| WidgetInfo::labeled(Role::Button, true, say!("chart-base-of-set", set = name)));
}
