//! The strip at the top: title, what is drawn, and a button for each size.

use egui::text::LayoutJob;
use egui::{
    Align, Button, Color32, CornerRadius, EventFilter, Label, Layout, Response, RichText, Role, ScrollArea, Stroke,
    TextFormat, Theme, Ui, WidgetInfo, vec2,
};

use super::look::{self, Look, letters};
use super::opened::Opened;
use super::{Shown, Wish};

/// The most height that the sizes take, as a part of the window's; more of them scroll.
const MOST_HEIGHT: f32 = 0.3;
/// Width of the word before the sizes, px.
const WORD: f32 = 62.0;

/// Paints the strip; says which case the pointer is on.
pub(super) fn show(ui: &mut Ui, look: &Look, opened: &Opened, shown: &Shown, wishes: &mut Vec<Wish>) -> Option<usize> {
    let head = vec2(ui.available_width(), look::HEAD);
    ui.allocate_ui_with_layout(head, Layout::right_to_left(Align::Center), |ui| {
        controls(ui, shown, wishes);
        ui.with_layout(Layout::left_to_right(Align::Center), |ui| {
            let title = RichText::new(opened.title()).font(letters(look::LARGE)).color(look.ink);
            ui.add(Label::new(title).truncate());
        });
    });
    ui.add_space(4.0);
    let mut asked = None;
    let most = ui.ctx().content_rect().height() * MOST_HEIGHT;
    ScrollArea::vertical().max_height(most).min_scrolled_height(most).show(ui, |ui| {
        ui.set_min_width(ui.available_width());
        let cases = &opened.model.plan.cases;
        for (word, from, to) in [("Sizes", 0, cases.range), ("Persons", cases.range, cases.list.len())] {
            if from < to {
                asked = asked.or(row(ui, look, opened, shown, (word, from, to), wishes));
            }
        }
    });
    asked
}

fn controls(ui: &mut Ui, shown: &Shown, wishes: &mut Vec<Wish>) {
    let (word, other) = match ui.theme() {
        Theme::Light => ("Dark", Theme::Dark),
        Theme::Dark => ("Light", Theme::Light),
    };
    if ui.add(plain(word)).on_hover_text("Change between the light and the dark look").clicked() {
        wishes.push(Wish::Theme(other));
    }
    if ui.add(plain("Show all")).on_hover_text("Fit all pieces to the window").clicked() {
        wishes.push(Wish::Look(None));
    }
    let word = if shown.behind { "✓ Other sizes" } else { "Other sizes" };
    let response = ui.add(plain(word)).on_hover_text("Draw the other sizes thin behind the chosen one");
    response.widget_info(|| WidgetInfo::selected(Role::CheckBox, true, shown.behind, "other sizes"));
    if response.clicked() {
        wishes.push(Wish::Behind(!shown.behind));
    }
}

fn plain(word: &str) -> Button<'_> {
    Button::new(word).corner_radius(look::ROUND).min_size(vec2(0.0, look::BUTTON))
}

/// A row of cases, as many lines as it needs.
fn row(
    ui: &mut Ui,
    look: &Look,
    opened: &Opened,
    shown: &Shown,
    (word, from, to): (&str, usize, usize),
    wishes: &mut Vec<Wish>,
) -> Option<usize> {
    let mut asked = None;
    ui.horizontal_top(|ui| {
        ui.allocate_ui_with_layout(vec2(WORD, look::BUTTON), Layout::left_to_right(Align::Center), |ui| {
            ui.set_min_width(WORD);
            ui.label(RichText::new(word).color(look.soft));
        });
        ui.vertical(|ui| {
            ui.horizontal_wrapped(|ui| {
                ui.spacing_mut().item_spacing.x = 6.0;
                for case in from..to {
                    let response = size(ui, look, opened, case, case == shown.case);
                    if response.has_focus() {
                        // Left and right are the sizes' own here; the focus goes along.
                        let filter = EventFilter { horizontal_arrows: true, ..Default::default() };
                        ui.memory_mut(|m| m.set_focus_lock_filter(response.id, filter));
                    }
                    if response.hovered() {
                        asked = Some(case);
                    }
                    if response.clicked() && case != shown.case {
                        wishes.push(Wish::Choose(case));
                    }
                }
            });
        });
    });
    asked
}

/// The button of a case.
fn size(ui: &mut Ui, look: &Look, opened: &Opened, case: usize, is_chosen: bool) -> Response {
    let own = look.size(opened.part(case));
    let is_base = opened.model.plan.cases.base == Some(case);
    let label = opened.case(case).map_or("", |c| c.address.as_str());
    let (ink, soft) = if is_chosen { (look.sheet, look.sheet) } else { (look.ink, look.soft) };
    let mut text = LayoutJob::default();
    let format =
        |size: f32, color: Color32| TextFormat { valign: Align::Center, ..TextFormat::simple(letters(size), color) };
    text.append(label, 0.0, format(look::TEXT, ink));
    if is_base {
        text.append("base", 5.0, format(look::SMALL, soft));
    }
    let border = opened.part(case).map_or(look.soft, |_| own);
    let mut button = Button::new(text)
        .corner_radius(CornerRadius::same(look::ROUND))
        .stroke(Stroke::new(if is_chosen { 0.0 } else { 1.25 }, border))
        .min_size(vec2(44.0, look::BUTTON));
    if is_chosen {
        button = button.fill(own);
    }
    let response = ui.add(button);
    response.widget_info(|| {
        let base = if is_base { ", base" } else { "" };
        WidgetInfo::selected(Role::Button, true, is_chosen, format!("{}{base}", opened.called(case)))
    });
    if is_chosen && response.has_focus() {
        ui.painter().rect_stroke(
            response.rect.expand(2.0),
            look::ROUND + 2,
            Stroke::new(1.5, look.ink),
            egui::StrokeKind::Outside,
        );
    }
    response
}
