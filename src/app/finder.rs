//! The finder: commands and parts of the draft by their names.

use std::path::PathBuf;

use egui::{Align, Id, Key, Modal, Modifiers, RichText, ScrollArea, TextEdit, Ui};

use super::look::{self, Look, letters};
use super::menus;
use super::scene::Scene;
use super::state::{Shown, Wish};
use crate::document::Part;
use crate::help;
use crate::session::{ACTIONS, Act, OpenDraft};
use crate::texts::say;

/// The most lines that are shown.
const MOST: usize = 12;

/// What is typed, and on which line the person is.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Finder {
    pub text: String,
    pub at: usize,
}

/// Something that was found.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Found {
    Act(Act),
    Part(Part),
    Size(String),
    Page(String),
    Recent(PathBuf),
}

/// What fits a text, best first.
pub(super) fn search(text: &str, open: &OpenDraft, scene: &Scene, shown: &Shown) -> Vec<(Found, String, String)> {
    let mut all: Vec<(Found, String, String)> = Vec::new();
    for action in ACTIONS.iter().filter(|a| menus::can(a.act, open, scene, shown)) {
        let about = if action.key.is_empty() { action.menu.words() } else { action.key.to_owned() };
        all.push((Found::Act(action.act), action.name().to_owned(), about));
    }
    let draft = scene.draft();
    let mut part = |part: Part| {
        let name = match &part {
            Part::Inner(frame, _, name) => format!("{frame}.{name}"),
            other => other.name().to_owned(),
        };
        let word = part.kind_words();
        all.push((Found::Part(part), name, word));
    };
    draft.values.iter().for_each(|v| part(Part::Value(v.name.clone())));
    draft.chart.rows.iter().for_each(|r| part(Part::Row(r.name.clone())));
    let frames = draft.pieces.iter().map(|p| Part::Piece(p.name.clone()));
    let frames = frames.chain(draft.drawings.iter().map(|d| Part::Drawing(d.name.clone())));
    for frame in frames {
        let name = frame.name().to_owned();
        part(frame);
        scene.parts_in(&name).into_iter().for_each(&mut part);
    }
    draft.seams.iter().for_each(|s| part(Part::Seam(s.name.clone())));
    draft.conditions.iter().for_each(|c| part(Part::Condition(c.name.clone())));
    draft.strips.iter().for_each(|s| part(Part::Strip(s.name.clone())));
    draft.notions.iter().for_each(|n| part(Part::Notion(n.name.clone())));
    draft.materials.iter().for_each(|m| part(Part::Material(m.name.clone())));
    for (i, step) in draft.booklet.iter().enumerate() {
        let part = Part::Step(i);
        let word = part.words();
        all.push((Found::Part(part), step.title.clone(), word));
    }
    for case in scene.cases().into_iter().flat_map(|c| &c.list) {
        let word = if case.person.is_some() { say!("finder-person") } else { say!("finder-size") };
        all.push((Found::Size(case.address.clone()), case.address.clone(), word));
    }
    for recent in &shown.own.recent {
        all.push((Found::Recent(recent.path.clone()), recent.words().0, say!("finder-recent")));
    }
    // Actions are in the list themselves; pages come when something is typed.
    for page in help::pages().iter().filter(|p| !text.is_empty() && p.group != help::Group::Actions) {
        all.push((Found::Page(page.id.clone()), page.title.clone(), say!("finder-help")));
    }
    let wanted: Vec<String> = text.to_lowercase().split_whitespace().map(str::to_owned).collect();
    let rank = |(found, name, about): &(Found, String, String)| {
        let aside = matches!(found, Found::Page(_) | Found::Recent(_));
        let (name, about) = (name.to_lowercase(), about.to_lowercase());
        let fits = wanted.iter().all(|w| name.contains(w.as_str()) || about.contains(w.as_str()));
        let first = wanted.first().map_or("", String::as_str);
        fits.then(|| (aside, !name.starts_with(first), !name.contains(first), name.len()))
    };
    let mut fitting: Vec<_> = all.iter().filter_map(|f| Some((rank(f)?, f))).collect();
    if !wanted.is_empty() {
        fitting.sort_by_key(|f| f.0);
    }
    fitting.into_iter().take(MOST).map(|(_, f)| f.clone()).collect()
}

/// Paints the finder, if it is open.
pub(super) fn show(ui: &mut Ui, look: &Look, open: &OpenDraft, scene: &Scene, shown: &Shown, wishes: &mut Vec<Wish>) {
    let Some(finder) = &shown.finder else { return };
    let found = search(&finder.text, open, scene, shown);
    let modal =
        Modal::new(Id::unique("finder")).backdrop_color(look.backdrop()).frame(look.dialog()).show(ui.ctx(), |ui| {
            ui.set_width(460.0);
            let mut text = finder.text.clone();
            let id = Id::unique("finder text");
            let pressed = |ui: &Ui, key| ui.input_mut(|i| i.consume_key(Modifiers::NONE, key));
            let (down, up) = (pressed(ui, Key::ArrowDown), pressed(ui, Key::ArrowUp));
            let response =
                ui.add(TextEdit::singleline(&mut text).id(id).hint_text(say!("finder-hint")).desired_width(460.0));
            ui.ctx().accesskit_node_builder(response.id, |node| node.set_label(say!("finder-called")));
            let taken = response.lost_focus() && ui.input(|i| i.key_pressed(Key::Enter));
            if response.changed() {
                wishes.push(Wish::FinderTyped(text));
            }
            if taken {
                wishes.push(Wish::FinderTake(finder.at));
            } else if !response.has_focus() {
                response.request_focus();
            }
            let last = found.len().saturating_sub(1);
            if down || up {
                let at = if down { (finder.at + 1).min(last) } else { finder.at.saturating_sub(1) };
                wishes.push(Wish::FinderAt(at));
            }
            ui.add_space(4.0);
            if found.is_empty() {
                ui.label(RichText::new(say!("finder-nothing")).color(look.soft));
            }
            ScrollArea::vertical().max_height(380.0).show(ui, |ui| {
                for (i, (_, name, about)) in found.iter().enumerate() {
                    ui.horizontal(|ui| {
                        let words = RichText::new(name).font(letters(look::TEXT));
                        let button = egui::Button::new(words).selected(i == finder.at).frame(i == finder.at);
                        if ui.add(button).clicked() {
                            wishes.push(Wish::FinderTake(i));
                        }
                        ui.with_layout(egui::Layout::right_to_left(Align::Center), |ui| {
                            ui.label(RichText::new(about).font(letters(look::SMALL)).color(look.soft));
                        });
                    });
                }
            });
        });
    if modal.should_close() {
        wishes.push(Wish::Cancel);
    }
}
