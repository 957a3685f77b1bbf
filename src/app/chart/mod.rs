//! The body chart in the middle: rows of measures, a column for each size and person; its axes and sets; numbers that wait to
//! be confirmed; blocks from a spreadsheet before they are taken.

mod cell;
mod grants;
mod grid;
mod paste;
mod proposals;
mod sight;
mod sizes;
mod state;

pub(super) use state::{ChartShown, ChartWish, Page};

use egui::{Frame, Margin, RichText, Role, Ui, WidgetInfo};

use super::look::{self, Look, letters};
use super::scene::Scene;
use super::state::{Room, Shown, Wish};
use super::{guide, help};
use crate::session::{Act, step_rule};
use crate::texts::say;
use sight::Sight;

/// Paints the chart.
pub(super) fn show(ui: &mut Ui, look: &Look, scene: &Scene, shown: &Shown, wishes: &mut Vec<Wish>) {
    let ground = Frame::new().fill(look.sheet).inner_margin(Margin::same(14)).corner_radius(6);
    ground.show(ui, |ui| {
        ui.set_min_size(ui.available_size());
        let sight = Sight::of(scene);
        head(ui, look, &sight, shown, wishes);
        match shown.chart.page {
            Page::Numbers => {
                tools(ui, look, shown, wishes);
                grid::show(ui, look, &sight, shown, wishes);
            }
            Page::Sizes => sizes::show(ui, look, scene, shown, wishes),
            Page::Proposals => proposals::show(ui, look, &sight, shown, wishes),
            Page::Paste => paste::show(ui, look, scene, shown, wishes),
        }
    });
}

/// The title and the pages.
fn head(ui: &mut Ui, look: &Look, sight: &Sight<'_>, shown: &Shown, wishes: &mut Vec<Wish>) {
    ui.horizontal_wrapped(|ui| {
        ui.label(RichText::new(say!("chart-title")).font(letters(look::LARGE)).color(look.ink));
        let waiting = match sight.waiting.len() {
            0 => say!("chart-proposals"),
            many => say!("chart-proposals-many", many),
        };
        for (page, word) in [
            (Page::Numbers, say!("chart-numbers")),
            (Page::Sizes, say!("chart-sizes")),
            (Page::Proposals, waiting),
            (Page::Paste, say!("chart-paste")),
        ] {
            let chosen = shown.chart.page == page;
            let response = ui.selectable_label(chosen, &word);
            let called = say!("chart-page", page = word);
            response.widget_info(|| WidgetInfo::selected(Role::RadioButton, true, chosen, called.as_str()));
            if response.clicked() {
                wishes.push(Wish::Chart(ChartWish::Page(page)));
            }
        }
        ui.add_space(10.0);
        if ui.button(say!("chart-show-pieces")).clicked() {
            wishes.push(Wish::Room(Room::Table));
        }
        help::question(ui, &say!("chart-question"), "chart", wishes);
    });
    ui.add_space(2.0);
}

/// What can be done with the numbers, and how to type them.
fn tools(ui: &mut Ui, look: &Look, shown: &Shown, wishes: &mut Vec<Wish>) {
    ui.horizontal_wrapped(|ui| {
        for act in [Act::AddSize, Act::AddRow, Act::AddPerson, Act::PasteNumbers, Act::ReadTable, Act::WriteTable] {
            let response = ui.button(act.action().name().trim_end_matches(" …")).on_hover_text(act.action().what());
            guide::mark(ui, shown, act, &response);
            if response.clicked() {
                wishes.push(Wish::Act(act));
            }
        }
        let steps = shown.chart.steps;
        let response = ui.selectable_label(steps, say!("chart-steps")).on_hover_text(step_rule());
        let called = say!("chart-steps-called");
        response.widget_info(|| WidgetInfo::selected(Role::CheckBox, true, steps, called.as_str()));
        if response.clicked() {
            wishes.push(Wish::Act(Act::Steps));
        }
    });
    let words = match shown.chart.steps {
        true => step_rule(),
        false => say!("chart-how"),
    };
    ui.label(RichText::new(words).font(letters(look::SMALL)).color(look.soft));
    ui.add_space(4.0);
}
