//! The card at the right: the chosen thing, its formulas with what was found about them, its number in each size.

mod booklet;
mod by_size;
mod care;
mod draft;
mod fields;
mod finish;
mod piece;
mod published;
mod row;
mod seam;
mod steps;
mod value;
mod view;

pub(super) use piece::outline_is_open;

use egui::{Align, Layout, RichText, ScrollArea, TextStyle, TextWrapMode, Ui, WidgetText, vec2};

use super::field::{self, Form};
use super::help;
use super::look::{self, Look, letters};
use super::scene::Scene;
use super::state::{Field, Shown, Wish};
use crate::base::Finding;
use crate::document::{Address, Inner, Part, Role};
use crate::session::Act;
use crate::texts::say;

/// Between buttons at the head of a card, and behind them, px.
const ACT_GAP: f32 = 4.0;
const RIGHT: f32 = 8.0;

/// The name of an action, whether it asks for more or not.
fn bare(act: Act) -> &'static str {
    act.action().name().trim_end_matches(" …")
}

/// What every card needs.
struct Card<'a> {
    look: &'a Look,
    scene: &'a Scene,
    shown: &'a Shown,
    case: usize,
    wishes: &'a mut Vec<Wish>,
    /// Findings of the chosen part that no field has shown yet.
    open: Vec<(usize, &'a Finding)>,
}

/// Paints the card.
pub(super) fn show(ui: &mut Ui, look: &Look, scene: &Scene, shown: &Shown, wishes: &mut Vec<Wish>) {
    let part = shown.part.clone().unwrap_or(Part::Draft);
    let open = scene.findings_at(&part).collect();
    let case = scene.case_of(&shown.case);
    let mut card = Card { look, scene, shown, case, wishes, open };
    ScrollArea::vertical().auto_shrink([false, false]).id_salt(&part).show(ui, |ui| {
        ui.spacing_mut().item_spacing.y = 4.0;
        card.heading(ui, &part);
        match &part {
            Part::Draft => card.draft(ui),
            Part::Value(name) => card.value(ui, name),
            Part::Row(name) => card.row(ui, name),
            Part::Person(name) => card.person(ui, name),
            Part::Piece(name) => card.piece(ui, name),
            Part::Inner(frame, Inner::Point, name) => card.point(ui, frame, name),
            Part::Inner(frame, Inner::Edge | Inner::Line, name) => card.edge(ui, frame, name),
            Part::Seam(name) => card.seam(ui, name),
            Part::Condition(name) => card.condition(ui, name),
            Part::View(name) => card.view(ui, name),
            Part::Strip(name) => card.strip(ui, name),
            Part::Notion(name) => card.notion(ui, name),
            Part::Material(name) => card.material(ui, name),
            Part::Step(i) => card.booklet_step(ui, *i),
            Part::Kept => card.log(ui),
            other => card.texts(ui, other),
        }
        card.rest(ui);
        field::focus_in_sight(ui);
    });
}

impl Card<'_> {
    fn heading(&mut self, ui: &mut Ui, part: &Part) {
        let title = match part {
            Part::Draft => self.scene.title(),
            Part::Inner(frame, _, name) => format!("{frame} · {name}"),
            Part::Step(i) => say!("card-step-title", number = i + 1),
            Part::Kept => say!("card-log-title"),
            _ => part.name().to_owned(),
        };
        ui.horizontal_top(|ui| {
            let width = ui.available_width() - 40.0;
            ui.allocate_ui_with_layout(vec2(width, 0.0), Layout::top_down(Align::Min), |ui| {
                ui.set_width(width);
                ui.label(RichText::new(title).font(letters(look::LARGE)).color(self.look.ink));
            });
            help::question(ui, &say!("card-question"), "card", self.wishes);
        });
        let kind = if matches!(part, Part::Step(_)) { String::new() } else { part.kind_words() };
        let mut acts = match part {
            Part::Step(_) => [Act::Delete, Act::RowDown, Act::RowUp],
            _ => [Act::Delete, Act::UsedBy, Act::Rename],
        };
        let has_acts = !part.name().is_empty() || matches!(part, Part::Step(_));
        let padding = 2.0 * ui.spacing().button_padding.x;
        let kind = RichText::new(kind).font(letters(look::SMALL)).color(self.look.soft);
        let wide = |words: WidgetText| {
            words.into_galley(ui, Some(TextWrapMode::Extend), f32::INFINITY, TextStyle::Button).size().x
        };
        let taken = acts.iter().map(|act| wide(bare(*act).into()) + padding + ACT_GAP).sum::<f32>();
        let kind_width = wide(kind.clone().into());
        let beside = kind_width + taken <= ui.available_width();
        ui.horizontal(|ui| {
            if !kind.is_empty() {
                ui.label(kind);
            }
            if has_acts && beside {
                ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
                    ui.add_space(RIGHT);
                    self.acts(ui, &acts);
                });
            }
        });
        // Where a language has longer words they get lines of their own.
        if has_acts && !beside {
            acts.reverse();
            ui.horizontal_wrapped(|ui| self.acts(ui, &acts));
        }
        ui.add_space(4.0);
    }

    fn acts(&mut self, ui: &mut Ui, acts: &[Act]) {
        ui.spacing_mut().item_spacing.x = ACT_GAP;
        for act in acts {
            if ui.small_button(bare(*act)).on_hover_text(act.action().what()).clicked() {
                self.wishes.push(Wish::Act(*act));
            }
        }
    }

    /// A text of the draft in a field, with what was found about it.
    fn text(&mut self, ui: &mut Ui, at: Address, caption: &str, formula: bool, hint: &str) {
        let Some(text) = self.scene.draft().text(&at) else { return };
        field::caption(ui, self.look, caption);
        let called = say!("card-called", caption, part = at.part.words());
        let form = Form { called: &called, hint, width: ui.available_width() - 12.0, formula, ..Form::default() };
        field::line(ui, self.shown, Field::Text(at, formula), &text, form, self.wishes);
        if formula {
            self.found(ui, &text);
        }
    }

    /// What was found about a formula with this text.
    fn found(&mut self, ui: &mut Ui, text: &str) {
        if text.is_empty() {
            return;
        }
        let (own, rest): (Vec<_>, Vec<_>) = self.open.drain(..).partition(|(_, f)| f.formula == text);
        self.open = rest;
        field::findings(ui, self.look, self.scene, own.into_iter(), self.wishes);
    }

    /// What was found and has no field.
    fn rest(&mut self, ui: &mut Ui) {
        let rest = std::mem::take(&mut self.open);
        if rest.is_empty() || self.shown.part.is_none() {
            return;
        }
        field::caption(ui, self.look, &say!("card-found"));
        field::findings(ui, self.look, self.scene, rest.into_iter(), self.wishes);
    }

    /// All texts of a part, one under the other.
    fn texts(&mut self, ui: &mut Ui, part: &Part) {
        let mut all: Vec<(Address, bool)> = Vec::new();
        self.scene.draft().clone().each_text(&mut |at, role, _| {
            if at.part == *part && *role != Role::OwnName {
                let formula = !matches!(role, Role::Words | Role::Braces | Role::Makes(_) | Role::Prefix);
                all.push((at.clone(), formula));
            }
        });
        for (at, formula) in all {
            let caption = fields::field_words(at.field);
            self.text(ui, at, &caption, formula, "");
        }
    }

    fn draft_unit(&self) -> crate::base::DisplayUnit {
        self.scene.draft().display
    }
}
