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
        ui.label(RichText::new("Chart").font(letters(look::LARGE)).color(look.ink));
        let waiting = match sight.waiting.len() {
            0 => "Proposals".to_owned(),
            many => format!("Proposals: {many}"),
        };
        for (page, word) in [
            (Page::Numbers, "Numbers".to_owned()),
            (Page::Sizes, "Sizes and sets".to_owned()),
            (Page::Proposals, waiting),
            (Page::Paste, "Paste".to_owned()),
        ] {
            let chosen = shown.chart.page == page;
            let response = ui.selectable_label(chosen, &word);
            response.widget_info(|| WidgetInfo::selected(Role::RadioButton, true, chosen, format!("page {word}")));
            if response.clicked() {
                wishes.push(Wish::Chart(ChartWish::Page(page)));
            }
        }
        ui.add_space(10.0);
        if ui.button("Show the pieces").clicked() {
            wishes.push(Wish::Room(Room::Table));
        }
        help::question(ui, "the chart", "chart", wishes);
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
        let response = ui.selectable_label(steps, "Steps").on_hover_text(step_rule());
        response.widget_info(|| WidgetInfo::selected(Role::CheckBox, true, steps, "steps under the numbers"));
        if response.clicked() {
            wishes.push(Wish::Act(Act::Steps));
        }
    });
    let words = match shown.chart.steps {
        true => step_rule(),
        false => {
            "Type a number with its unit, or +2 cm for a step from the size before. Enter, Tab and arrows go from cell to cell. \
             Numbers with a question mark are proposals until they are confirmed."
                .to_owned()
        }
    };
    ui.label(RichText::new(words).font(letters(look::SMALL)).color(look.soft));
    ui.add_space(4.0);
}
