//! What cards say of allowances, cuts, notches and the order of sewing.

use egui::{Role, Ui, WidgetInfo};

use super::Card;
use crate::app::field;
use crate::app::state::Wish;
use crate::compute::unit_of;
use crate::document::{Address, Part, Piece, Seam, SeamPressed};
use crate::finish::{Symmetry, cut_words};
use crate::language::literal_text;
use crate::session::{Act, Command, FinishCommand, lengthening};
use crate::texts::{self, say};

impl Card<'_> {
    fn finish(&mut self, command: FinishCommand) {
        self.wishes.push(Wish::Run(Command::Finish(command)));
    }

    /// The allowances of an edge of a piece.
    pub(super) fn allowances(&mut self, ui: &mut Ui, piece: &str, edge: &str) {
        let Some(of) = self.scene.draft().pieces.iter().find(|p| p.name == *piece).cloned() else { return };
        let part = Part::Piece(piece.to_owned());
        ui.add_space(6.0);
        let own: Vec<usize> = (0..of.allowances.len()).filter(|i| of.allowances[*i].edge == *edge).collect();
        for i in &own {
            let allowance = &of.allowances[*i];
            let at = |field: &'static str| Address::nth(part.clone(), field, *i);
            let hem = allowance.turns > 0;
            let from = allowance.from.as_str();
            let (caption, word) = match (hem, from) {
                (true, _) => (say!("card-hem-depth"), say!("card-no-hem", edge)),
                (false, "") => (say!("card-allowance-of", edge), say!("card-no-allowance", edge)),
                (false, _) => (say!("card-allowance-from", edge, from), say!("card-no-allowance-from", edge, from)),
            };
            self.text(ui, at("allowance width"), &caption, true, "");
            if hem {
                if allowance.turns > 1 {
                    let (caption, hint) = (say!("card-second-turn"), say!("card-second-turn-hint"));
                    self.text(ui, at("allowance turn_in"), &caption, true, &hint);
                }
            } else {
                let (caption, hint) = (say!("card-holds-from", edge), say!("card-holds-from-hint"));
                self.text(ui, at("allowance from"), &caption, true, &hint);
                self.text(ui, at("allowance to_width"), &say!("card-runs-to", edge), true, &say!("card-the-same"));
            }
            if ui.small_button(word).clicked() {
                self.finish(FinishCommand::TakeAllowance(piece.to_owned(), *i));
            }
        }
        let add = |turns: u32| FinishCommand::AddAllowance(piece.to_owned(), edge.to_owned(), turns);
        ui.horizontal_wrapped(|ui| {
            let is_hem = own.iter().any(|i| of.allowances[*i].turns > 0);
            let word = if own.is_empty() { say!("card-own-allowance") } else { say!("card-further-width") };
            if !is_hem && ui.small_button(word).clicked() {
                self.finish(add(0));
            }
            if own.is_empty() {
                for (word, turns) in [(say!("card-hem"), 1), (say!("card-hem-twice"), 2)] {
                    if ui.small_button(word).clicked() {
                        self.finish(add(turns));
                    }
                }
            }
        });
        if own.is_empty() {
            field::caption(ui, self.look, &say!("card-allowance-else"));
        }
    }

    /// How a piece is cut.
    pub(super) fn cuts(&mut self, ui: &mut Ui, piece: &str) {
        let Some(of) = self.scene.draft().pieces.iter().find(|p| p.name == *piece).cloned() else { return };
        let part = Part::Piece(piece.to_owned());
        let frame = self.scene.draft().pieces.iter().position(|p| p.name == *piece);
        for (i, cut) in of.cuts.iter().enumerate() {
            ui.add_space(6.0);
            let made = frame.and_then(|f| self.scene.computed.finished.as_ref()?.cases.get(self.case)?.get(f)?.clone());
            let plan = frame.and_then(|f| self.scene.model()?.plan.frames().get(f)?.finishing.cuts.get(i));
            if let (Some(made), Some(plan)) = (made, plan) {
                self.say_line(ui, &texts::owned(|| cut_words(plan, Symmetry::of(&made.stitch, 0.0))));
            }
            let at = |field: &'static str| Address::nth(part.clone(), field, i);
            let number = if of.cuts.len() > 1 { format!(" {}", i + 1) } else { String::new() };
            let (caption, hint) = (say!("card-cut-material", number), say!("card-cut-material-hint"));
            self.text(ui, at("cut material"), &caption, false, &hint);
            let (caption, hint) = (say!("card-cut-heading", number), say!("card-cut-heading-hint"));
            self.text(ui, at("cut heading"), &caption, true, &hint);
            let (caption, hint) = (say!("card-cut-along", number), say!("card-cut-along-hint"));
            self.text(ui, at("cut along"), &caption, false, &hint);
            ui.horizontal_wrapped(|ui| {
                for count in [1_u32, 2, 4] {
                    let chosen = cut.count.max(1) == count;
                    let response = ui.selectable_label(chosen, format!("{count}"));
                    let called = say!("card-cut-count", count, piece, number);
                    response.widget_info(|| WidgetInfo::selected(Role::RadioButton, true, chosen, &called));
                    if response.clicked() && !chosen {
                        self.finish(FinishCommand::CutCount(piece.to_owned(), i, count));
                    }
                }
                let folds =
                    of.edges.iter().filter(|e| e.by.iter().all(|s| matches!(s, crate::document::Segment::Straight(_))));
                let word = |edge: &str| if edge.is_empty() { say!("card-no-fold") } else { say!("card-fold-at", edge) };
                egui::ComboBox::from_id_salt(("fold", piece, i)).selected_text(word(&cut.on_fold)).show_ui(ui, |ui| {
                    if ui.selectable_label(cut.on_fold.is_empty(), word("")).clicked() {
                        self.finish(FinishCommand::OnFold(piece.to_owned(), i, None));
                    }
                    for edge in folds {
                        if ui.selectable_label(cut.on_fold == edge.name, word(&edge.name)).clicked() {
                            self.finish(FinishCommand::OnFold(piece.to_owned(), i, Some(edge.name.clone())));
                        }
                    }
                });
            });
            if ui.small_button(say!("card-cut-take", number)).clicked() {
                self.finish(FinishCommand::TakeCut(piece.to_owned(), i));
            }
        }
        ui.add_space(4.0);
        let word = if of.cuts.is_empty() { say!("card-cut-say") } else { say!("card-cut-another") };
        if ui.small_button(word).clicked() {
            self.finish(FinishCommand::AddCut(piece.to_owned()));
        }
        self.text(ui, Address::new(part, "label at"), &say!("card-label"), true, &say!("card-label-hint"));
        self.lengthening(ui, &of);
    }

    /// Where a piece is lengthened, and by how much.
    fn lengthening(&mut self, ui: &mut Ui, of: &Piece) {
        for line in &of.lengthen {
            let value = lengthening(&of.name, &line.name);
            if self.scene.draft().values.iter().any(|v| v.name == value) {
                let (caption, hint) = (say!("card-longer", line = &*line.name), say!("card-longer-hint"));
                self.text(ui, Address::new(Part::Value(value), "is"), &caption, true, &hint);
            } else if ui
                .small_button(say!("card-lengthen", line = &*line.name))
                .on_hover_text(say!("card-lengthen-about"))
                .clicked()
            {
                let none = literal_text(0.0, Some(unit_of(self.scene.draft())));
                self.finish(FinishCommand::Lengthen(of.name.clone(), line.name.clone(), none));
            }
        }
    }

    /// Notches, order and pressing of a seam.
    pub(super) fn sewing(&mut self, ui: &mut Ui, seam: &Seam) {
        let part = Part::Seam(seam.name.clone());
        for i in 0..seam.notches.len() {
            let name = &seam.notches[i].name;
            let (caption, hint) = (say!("card-notch", name), say!("card-notch-hint"));
            self.text(ui, Address::nth(part.clone(), "notch at", i), &caption, true, &hint);
            if ui.small_button(say!("card-notch-take", name)).clicked() {
                self.finish(FinishCommand::TakeNotch(seam.name.clone(), i));
            }
        }
        ui.horizontal_wrapped(|ui| {
            if ui.small_button(say!("card-notch-add")).clicked() {
                self.finish(FinishCommand::AddNotch(seam.name.clone()));
            }
            if ui.small_button(say!("card-roll")).on_hover_text(Act::Roll.action().what()).clicked() {
                self.wishes.push(Wish::Act(Act::Roll));
            }
        });
        let (caption, hint) = (say!("card-order"), say!("card-order-hint"));
        self.text(ui, Address::new(part.clone(), "order"), &caption, false, &hint);
        field::caption(ui, self.look, &say!("card-pressed"));
        ui.horizontal_wrapped(|ui| {
            for (word, pressed) in [
                (say!("card-pressed-open"), SeamPressed::Open),
                (say!("card-pressed-one"), SeamPressed::ToOne),
                (say!("card-pressed-two"), SeamPressed::ToTwo),
            ] {
                let chosen = seam.pressed == pressed;
                let response = ui.selectable_label(chosen, &word);
                let called = say!("card-pressed-called", way = word);
                response.widget_info(|| WidgetInfo::selected(Role::RadioButton, true, chosen, called.as_str()));
                if response.clicked() && !chosen {
                    self.finish(FinishCommand::Press(seam.name.clone(), pressed));
                }
            }
        });
        let (caption, hint) = (say!("card-seam-allowance"), say!("card-seam-allowance-hint"));
        self.text(ui, Address::new(part.clone(), "allowance"), &caption, true, &hint);
        let (caption, hint) = (say!("card-closure"), say!("card-closure-hint"));
        self.text(ui, Address::new(part, "closure"), &caption, true, &hint);
    }
}
