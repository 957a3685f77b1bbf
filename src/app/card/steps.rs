//! The steps of a derived piece: their texts, what is chosen among words, their order.

use egui::{RichText, Role, Ui, WidgetInfo};

use super::Card;
use super::fields::field_words;
use crate::app::field;
use crate::app::look::{self, letters};
use crate::app::state::Wish;
use crate::compute::unit_of;
use crate::document::{Address, Does, Opening, Part, Piece, Role as TextRole, Step, StripEnds};
use crate::session::{Command, STEP_KINDS, StepCommand, Switch, new_step};
use crate::texts::{own, said, say};

impl Card<'_> {
    /// What a derived piece is made of, its steps, and what can be done next.
    pub(super) fn steps(&mut self, ui: &mut Ui, piece: &Piece) {
        field::caption(ui, self.look, &say!("card-made-of", piece = &*piece.of));
        for (i, step) in piece.steps.iter().enumerate() {
            self.step(ui, piece, i, step);
        }
        field::caption(ui, self.look, &say!("card-further-step"));
        ui.horizontal_wrapped(|ui| {
            for (kind, word) in STEP_KINDS.iter().enumerate() {
                if ui.small_button(said(own(), word, &[])).clicked() {
                    self.add(piece, kind);
                }
            }
        });
        ui.add_space(8.0);
    }

    fn add(&mut self, piece: &Piece, kind: usize) {
        // The piece as it is told by now has the names that the steps before leave.
        let told = self.scene.model().and_then(|m| m.draft.pieces.iter().find(|p| p.name == piece.name).cloned());
        let told = told.as_deref().unwrap_or(piece);
        let unit = unit_of(self.scene.draft()).sign();
        let numbered = (piece.steps.len() + 1..).map(|n| format!("step_{n}"));
        let name = numbered.into_iter().find(|n| piece.steps.iter().all(|s| s.name != *n)).unwrap_or_default();
        let step = Step { name, ..new_step(self.scene.draft(), told, kind, unit) };
        self.wishes.push(Wish::Run(Command::Step(StepCommand::Add(piece.name.clone(), Box::new(step)))));
    }

    fn step(&mut self, ui: &mut Ui, piece: &Piece, i: usize, step: &Step) {
        ui.add_space(6.0);
        ui.horizontal_wrapped(|ui| {
            let (number, does) = (i + 1, kind(&step.does));
            let words = match &step.does {
                Does::Spread(spread) if spread.count > 0 => {
                    say!("card-step-times", number, does, count = spread.count)
                }
                _ => say!("card-step", number, does),
            };
            ui.label(RichText::new(words).font(letters(look::TEXT)).color(self.look.ink));
            let run = |command: StepCommand| Wish::Run(Command::Step(command));
            let orders = [
                (say!("card-earlier"), i > 0, run(StepCommand::Move(piece.name.clone(), i, true))),
                (say!("card-later"), i + 1 < piece.steps.len(), run(StepCommand::Move(piece.name.clone(), i, false))),
                (say!("card-take-step-out"), true, Wish::TakeOut(piece.name.clone(), i)),
            ];
            for (word, enabled, wish) in orders {
                let response = ui.add_enabled(enabled, egui::Button::new(&word).small());
                let called = say!("card-step-called", word, step = &*step.name);
                response.widget_info(|| WidgetInfo::labeled(Role::Button, enabled, called.as_str()));
                if response.clicked() {
                    self.wishes.push(wish);
                }
            }
        });
        // What is wrong with the step as a whole, before its fields.
        let place = format!("{}, step {}", piece.name, step.name);
        let (own, rest): (Vec<_>, Vec<_>) =
            self.open.drain(..).partition(|(_, f)| f.place.name == place && f.formula.is_empty());
        self.open = rest;
        field::findings(ui, self.look, self.scene, own.into_iter(), self.wishes);
        self.switches(ui, piece, i, step);
        let mut texts = texts_of(piece, i);
        // For whom, and notes, come after what is done.
        texts.sort_by_key(|(at, _)| ["step person", "step note"].contains(&at.field));
        for (at, formula) in texts {
            let which = if at.inner > 0 { format!(" {}", at.inner + 1) } else { String::new() };
            let caption = format!("{}: {}{which}", step.name, field_words(at.field.trim_start_matches("step ")));
            self.text(ui, at, &caption, formula, "");
        }
    }

    fn switches(&mut self, ui: &mut Ui, piece: &Piece, i: usize, step: &Step) {
        let opening = |now: Opening| {
            [
                (say!("card-opening-usual"), Opening::Usual),
                (say!("card-opening-dart"), Opening::Dart),
                (say!("card-opening-straight"), Opening::Straight),
                (say!("card-opening-curve"), Opening::Curve),
            ]
            .map(|(word, to)| (word, now == to, Switch::Opening(to)))
        };
        let all: Vec<(String, bool, Switch)> = match &step.does {
            Does::MoveDart(m) => opening(m.opening).to_vec(),
            Does::Spread(s) => {
                let mut all = opening(s.opening).to_vec();
                all.push((say!("card-parallel"), s.parallel, Switch::Parallel(!s.parallel)));
                all.push((say!("card-more-slashes"), false, Switch::Count(s.count.max(1) + 1)));
                if s.count > 1 {
                    all.push((say!("card-fewer-slashes"), false, Switch::Count(s.count - 1)));
                }
                all
            }
            Does::Join(j) => vec![(say!("card-other-way"), j.reversed, Switch::Reversed(!j.reversed))],
            Does::AddStrip(a) => {
                let all =
                    [(say!("card-square-ends"), StripEnds::Square), (say!("card-mirrored-ends"), StripEnds::Mirrored)];
                all.map(|(word, to)| (word, a.ends == to, Switch::Ends(to))).to_vec()
            }
            _ => return,
        };
        ui.horizontal_wrapped(|ui| {
            for (word, is_on, switch) in all {
                let response = ui.selectable_label(is_on, &word);
                let called = say!("card-switch-called", word, step = &*step.name);
                response.widget_info(|| WidgetInfo::selected(Role::Button, true, is_on, called.as_str()));
                if response.clicked() {
                    self.wishes.push(Wish::Run(Command::Step(StepCommand::Switch(piece.name.clone(), i, switch))));
                }
            }
        });
    }
}

/// What a step does, in words.
fn kind(does: &Does) -> String {
    match does {
        Does::MoveDart(_) => say!("card-did-move-dart"),
        Does::Spread(_) => say!("card-did-spread"),
        Does::Cut(_) => say!("card-did-cut"),
        Does::Join(_) => say!("card-did-join"),
        Does::Unfold(_) => say!("card-did-unfold"),
        Does::TurnOver => say!("card-did-turn-over"),
        Does::AddStrip(_) => say!("card-did-add-strip"),
        Does::MoveEdge(_) => say!("card-did-move-edge"),
        Does::Share(_) => say!("card-did-share"),
        Does::ToCutLine(_) => say!("card-did-to-cut-line"),
        Does::Redraw(_) => say!("card-did-redraw"),
        Does::Draw(_) => say!("card-did-draw"),
        Does::LeaveOut(_) => say!("card-did-leave-out"),
    }
}

/// The texts of a step, and whether they are formulas.
fn texts_of(piece: &Piece, i: usize) -> Vec<(Address, bool)> {
    let part = Part::Piece(piece.name.clone());
    let mut draft = crate::document::Draft { pieces: vec![std::sync::Arc::new(piece.clone())], ..Default::default() };
    let mut out = Vec::new();
    draft.each_text(&mut |at, role, _| {
        if at.part == part && at.at == i && at.field.starts_with("step ") {
            out.push((at.clone(), matches!(role, TextRole::Formula)));
        }
    });
    out
}
