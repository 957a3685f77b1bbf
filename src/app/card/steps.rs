//! The steps of a derived piece: their texts, what is chosen among words, their order.

use egui::{RichText, Role, Ui, WidgetInfo};

use super::Card;
use crate::app::field;
use crate::app::look::{self, letters};
use crate::app::state::Wish;
use crate::compute::unit_of;
use crate::document::{Address, Does, Opening, Part, Piece, Role as TextRole, Step, StripEnds};
use crate::session::{Command, STEP_KINDS, StepCommand, Switch, new_step};
use crate::texts::{own, said};

impl Card<'_> {
    /// What a derived piece is made of, its steps, and what can be done next.
    pub(super) fn steps(&mut self, ui: &mut Ui, piece: &Piece) {
        field::caption(ui, self.look, &format!("made of {}; it follows that piece in every size", piece.of));
        for (i, step) in piece.steps.iter().enumerate() {
            self.step(ui, piece, i, step);
        }
        field::caption(ui, self.look, "a further step");
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
            let many = match &step.does {
                Does::Spread(spread) if spread.count > 0 => format!(", {} times", spread.count),
                _ => String::new(),
            };
            let words = format!("{}. {}{many}", i + 1, kind(&step.does));
            ui.label(RichText::new(words).font(letters(look::TEXT)).color(self.look.ink));
            let run = |command: StepCommand| Wish::Run(Command::Step(command));
            let orders = [
                ("Earlier", i > 0, run(StepCommand::Move(piece.name.clone(), i, true))),
                ("Later", i + 1 < piece.steps.len(), run(StepCommand::Move(piece.name.clone(), i, false))),
                ("Take out", true, Wish::TakeOut(piece.name.clone(), i)),
            ];
            for (word, enabled, wish) in orders {
                let response = ui.add_enabled(enabled, egui::Button::new(word).small());
                response
                    .widget_info(|| WidgetInfo::labeled(Role::Button, enabled, format!("{word} step {}", step.name)));
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
            let word = at.field.trim_start_matches("step ");
            let which = if at.inner > 0 { format!(" {}", at.inner + 1) } else { String::new() };
            let caption = format!("{}: {}{which}", step.name, word.replace('_', " "));
            self.text(ui, at, &caption, formula, "");
        }
    }

    fn switches(&mut self, ui: &mut Ui, piece: &Piece, i: usize, step: &Step) {
        let opening = |now: Opening| {
            [
                ("As usual", Opening::Usual),
                ("A dart", Opening::Dart),
                ("Straight across", Opening::Straight),
                ("A curve across", Opening::Curve),
            ]
            .map(|(word, to)| (word, now == to, Switch::Opening(to)))
        };
        let all: Vec<(&str, bool, Switch)> = match &step.does {
            Does::MoveDart(m) => opening(m.opening).to_vec(),
            Does::Spread(s) => {
                let mut all = opening(s.opening).to_vec();
                all.push(("In parallel", s.parallel, Switch::Parallel(!s.parallel)));
                all.push(("One more slash", false, Switch::Count(s.count.max(1) + 1)));
                if s.count > 1 {
                    all.push(("One slash less", false, Switch::Count(s.count - 1)));
                }
                all
            }
            Does::Join(j) => vec![("The other way", j.reversed, Switch::Reversed(!j.reversed))],
            Does::AddStrip(a) => [("Square ends", StripEnds::Square), ("Mirrored ends", StripEnds::Mirrored)]
                .map(|(word, to)| (word, a.ends == to, Switch::Ends(to)))
                .to_vec(),
            _ => return,
        };
        ui.horizontal_wrapped(|ui| {
            for (word, is_on, switch) in all {
                let response = ui.selectable_label(is_on, word);
                response.widget_info(|| {
                    WidgetInfo::selected(Role::Button, true, is_on, format!("{word} in step {}", step.name))
                });
                if response.clicked() {
                    self.wishes.push(Wish::Run(Command::Step(StepCommand::Switch(piece.name.clone(), i, switch))));
                }
            }
        });
    }
}

/// What a step does, in words.
fn kind(does: &Does) -> &'static str {
    match does {
        Does::MoveDart(_) => "Dart moved",
        Does::Spread(_) => "Slashed and spread",
        Does::Cut(_) => "Cut in two",
        Does::Join(_) => "Joined",
        Does::Unfold(_) => "Unfolded",
        Does::TurnOver => "Turned over",
        Does::AddStrip(_) => "Strip added",
        Does::MoveEdge(_) => "Edge moved",
        Does::Share(_) => "Amount shared",
        Does::ToCutLine(_) => "To the cut line",
        Does::Redraw(_) => "Edge drawn anew",
        Does::Draw(_) => "Drawn",
        Does::LeaveOut(_) => "Left out",
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
