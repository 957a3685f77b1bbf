//! The strip at the top: menus, title and file, a button for each size, where a pull goes.

use egui::text::LayoutJob;
use egui::{
    Align, Button, Color32, CornerRadius, EventFilter, Label, Layout, Response, RichText, Role, ScrollArea, Sense,
    Stroke, TextFormat, Ui, UiBuilder, WidgetInfo, vec2,
};

use super::look::{self, Look, letters};
use super::scene::Scene;
use super::state::{Shown, Tone, Wish};
use super::{guide, help, menus};
use crate::session::{Act, OpenDraft, Reach};
use crate::texts::say;

/// The most height that the sizes take, as a part of the window's; more of them scroll.
const MOST_HEIGHT: f32 = 0.14;
/// Width of the word before the sizes, px.
const WORD: f32 = 78.0;

/// Paints the strip; says which case the pointer is on.
pub(super) fn show(
    ui: &mut Ui,
    look: &Look,
    open: &OpenDraft,
    scene: &Scene,
    shown: &Shown,
    wishes: &mut Vec<Wish>,
) -> Option<usize> {
    let head = vec2(ui.available_width(), look::HEAD);
    ui.allocate_ui_with_layout(head, Layout::right_to_left(Align::Center), |ui| {
        controls(ui, open, shown, wishes);
        ui.with_layout(Layout::left_to_right(Align::Center), |ui| {
            menus::show(ui, open, scene, shown, wishes);
            ui.add_space(6.0);
            let title = RichText::new(scene.title()).font(letters(look::LARGE)).color(look.ink);
            ui.add(Label::new(title).truncate());
            let (state, color) = match open.work().is_unsaved() {
                true => (say!("top-not-saved", file = open.file_name()), look.warning),
                false => (open.file_name(), look.soft),
            };
            ui.add(Label::new(RichText::new(state).font(letters(look::SMALL)).color(color)).truncate());
        });
    });
    ui.add_space(4.0);
    let mut asked = None;
    let most = ui.ctx().content_rect().height() * MOST_HEIGHT;
    ScrollArea::vertical().max_height(most).min_scrolled_height(most).show(ui, |ui| {
        ui.set_min_width(ui.available_width());
        views(ui, look, scene, wishes);
        let (range, all) = scene.cases().map_or((0, 0), |c| (c.range, c.list.len()));
        asked = row(ui, look, scene, shown, (&say!("top-sizes"), 0, range), Act::AddSize, wishes);
        if all > range {
            let persons = say!("top-persons");
            asked = asked.or(row(ui, look, scene, shown, (&persons, range, all), Act::AddPerson, wishes));
        }
    });
    // Of one height whatever is said: a taller letter in a message must not move the sheet.
    let (row, _) = ui.allocate_exact_size(vec2(ui.available_width(), look::BUTTON + 2.0), Sense::hover());
    let mut line = ui.new_child(UiBuilder::new().max_rect(row).layout(Layout::left_to_right(Align::Center)));
    {
        let ui = &mut line;
        reach(ui, look, shown, wishes);
        ui.add_space(14.0);
        hand(ui, look, shown, wishes);
        // Told here, where it moves nothing: a pull must not slip because a line of words came or went.
        if let Some((tone, words)) = &shown.message {
            let (sign, color) = match tone {
                Tone::Told => ("✓", look.ink),
                Tone::Refused => ("■", look.error),
            };
            ui.add_space(14.0);
            let line = RichText::new(format!("{sign} {words}")).color(color);
            ui.add(Label::new(line).truncate()).on_hover_text(words);
        }
    }
    asked
}

fn controls(ui: &mut Ui, open: &OpenDraft, shown: &Shown, wishes: &mut Vec<Wish>) {
    help::question(ui, &say!("top-sizes-about"), "sizes", wishes);
    let word = say!("top-others");
    let word = if shown.behind { format!("✓ {word}") } else { word };
    let response = ui.add(plain(&word)).on_hover_text(Act::Others.action().what());
    response.widget_info(|| WidgetInfo::selected(Role::CheckBox, true, shown.behind, say!("top-others-called")));
    if response.clicked() {
        wishes.push(Wish::Act(Act::Others));
    }
    if ui.add(plain(&format!("{}  Ctrl+K", say!("top-find")))).on_hover_text(Act::Find.action().what()).clicked() {
        wishes.push(Wish::Act(Act::Find));
    }
    for (act, label) in [(Act::Redo, menus::redo_label(open, shown)), (Act::Undo, menus::undo_label(open, shown))] {
        let button = Button::new(act.action().name()).corner_radius(look::ROUND).min_size(vec2(0.0, look::BUTTON));
        let response = ui.add_enabled(label.is_some(), button);
        let response = match label {
            Some(label) => response.on_hover_text(say!("top-label", action = act.action().name(), label)),
            None => response,
        };
        if response.clicked() {
            wishes.push(Wish::Act(act));
        }
    }
}

/// Where a pull goes: three words beside each other.
fn reach(ui: &mut Ui, look: &Look, shown: &Shown, wishes: &mut Vec<Wish>) {
    let all = [
        (Reach::All, say!("top-reach-all"), say!("top-reach-all-called")),
        (Reach::One, say!("top-reach-one", size = shown.case), say!("top-reach-one-called")),
        (Reach::FromHereUp, say!("top-reach-up", size = shown.case), say!("top-reach-up-called")),
    ];
    ui.allocate_ui_with_layout(vec2(WORD, look::BUTTON), Layout::left_to_right(Align::Center), |ui| {
        ui.set_min_width(WORD);
        ui.label(RichText::new(say!("top-pulls")).color(look.soft));
    });
    // Without a size there is nothing to choose from.
    for (reach, word, called) in all.into_iter().filter(|(reach, ..)| *reach == Reach::All || !shown.case.is_empty()) {
        let chosen = shown.reach == reach;
        let response = ui.add(plain(&word).selected(chosen)).on_hover_text(say!("top-pulls-hint"));
        response.widget_info(|| WidgetInfo::selected(Role::RadioButton, true, chosen, &called));
        if response.clicked() {
            wishes.push(Wish::Reach(reach));
        }
    }
}

/// What is in the hand on the table.
fn hand(ui: &mut Ui, look: &Look, shown: &Shown, wishes: &mut Vec<Wish>) {
    ui.label(RichText::new(say!("top-hand")).color(look.soft));
    for (act, chosen) in
        [(Act::Pencil, shown.pencil.is_some()), (Act::Tape, shown.tape.is_some()), (Act::Bends, shown.bends)]
    {
        let action = act.action();
        let response =
            ui.add(plain(action.name()).selected(chosen)).on_hover_text(format!("{} ({})", action.what(), action.key));
        response.widget_info(|| {
            WidgetInfo::selected(Role::CheckBox, true, chosen, say!("top-hand-called", what = action.name()))
        });
        guide::mark(ui, shown, act, &response);
        if response.clicked() {
            wishes.push(Wish::Act(act));
        }
    }
}

fn plain(word: &str) -> Button<'_> {
    Button::new(word).corner_radius(look::ROUND).min_size(vec2(0.0, look::BUTTON))
}

/// A row of cases, as many lines as it needs, with a button that adds one.
fn row(
    ui: &mut Ui,
    look: &Look,
    scene: &Scene,
    shown: &Shown,
    (word, from, to): (&str, usize, usize),
    add: Act,
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
                let chosen = scene.case_of(&shown.case);
                for case in from..to {
                    let response = size(ui, look, scene, case, case == chosen);
                    if response.has_focus() {
                        // Left and right are the sizes' own here; the focus goes along.
                        let filter = EventFilter { horizontal_arrows: true, ..Default::default() };
                        ui.memory_mut(|m| m.set_focus_lock_filter(response.id, filter));
                    }
                    if response.hovered() {
                        asked = Some(case);
                    }
                    if case < scene.cases().map_or(0, |c| c.range) {
                        response.context_menu(|ui| size_menu(ui, scene, case, wishes));
                    }
                    let address = scene.cases().and_then(|c| c.list.get(case)).map(|c| c.address.clone());
                    if let Some(address) = address.filter(|_| response.clicked()) {
                        let alone = ui.input(|i| i.modifiers.command);
                        wishes.push(if alone { Wish::Alone(address) } else { Wish::Choose(address) });
                    }
                }
                let button = Button::new("+").corner_radius(look::ROUND).min_size(vec2(34.0, look::BUTTON));
                let response = ui.add(button).on_hover_text(add.action().what());
                let called = add.action().name().trim_end_matches(" …");
                response.widget_info(|| WidgetInfo::labeled(Role::Button, true, called));
                guide::mark(ui, shown, add, &response);
                if response.clicked() {
                    wishes.push(Wish::Act(add));
                }
            });
        });
    });
    asked
}

/// The views of the garment, where it has any.
fn views(ui: &mut Ui, look: &Look, scene: &Scene, wishes: &mut Vec<Wish>) {
    if scene.whole.views().next().is_none() {
        return;
    }
    ui.horizontal_top(|ui| {
        ui.allocate_ui_with_layout(vec2(WORD, look::BUTTON), Layout::left_to_right(Align::Center), |ui| {
            ui.set_min_width(WORD);
            ui.label(RichText::new(say!("top-views")).color(look.soft));
        });
        ui.horizontal_wrapped(|ui| {
            ui.spacing_mut().item_spacing.x = 6.0;
            for (i, view) in scene.whole.views().enumerate() {
                let chosen = i == scene.view();
                let response = ui.add(plain(view).selected(chosen));
                response
                    .widget_info(|| WidgetInfo::selected(Role::RadioButton, true, chosen, say!("top-see-view", view)));
                if response.clicked() {
                    wishes.push(Wish::SeeView(view.to_owned()));
                }
            }
        });
    });
}

/// What can be done with a size.
fn size_menu(ui: &mut Ui, scene: &Scene, case: usize, wishes: &mut Vec<Wish>) {
    let Some(address) = scene.cases().and_then(|c| c.list.get(case)).map(|c| c.address.clone()) else { return };
    for act in [Act::Base, Act::RenameSize, Act::DeleteSize] {
        if ui.button(act.action().name()).clicked() {
            wishes.push(Wish::Choose(address.clone()));
            wishes.push(Wish::Act(act));
            ui.close();
        }
    }
}

/// The button of a case.
fn size(ui: &mut Ui, look: &Look, scene: &Scene, case: usize, is_chosen: bool) -> Response {
    let own = look.size(scene.part(case));
    let base = scene.cases().and_then(|c| c.base) == Some(case);
    let label = scene.cases().and_then(|c| c.list.get(case)).map_or("", |c| c.address.as_str());
    let (ink, soft) = if is_chosen { (look.sheet, look.sheet) } else { (look.ink, look.soft) };
    let mut text = LayoutJob::default();
    let format =
        |size: f32, color: Color32| TextFormat { valign: Align::Center, ..TextFormat::simple(letters(size), color) };
    text.append(label, 0.0, format(look::TEXT, ink));
    if base {
        text.append(&say!("top-base"), 5.0, format(look::SMALL, soft));
    }
    let border = scene.part(case).map_or(look.soft, |_| own);
    let mut button = Button::new(text)
        .corner_radius(CornerRadius::same(look::ROUND))
        .stroke(Stroke::new(if is_chosen { 0.0 } else { 1.25 }, border))
        .min_size(vec2(44.0, look::BUTTON));
    if is_chosen {
        button = button.fill(own);
    }
    let response = ui.add(button);
    response.widget_info(|| {
        let called = scene.called(case);
        let called = if base { say!("top-is-base", size = called) } else { called };
        WidgetInfo::selected(Role::Button, true, is_chosen, called)
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
