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
            let from = if allowance.from.is_empty() { String::new() } else { format!(" from {}", allowance.from) };
            let caption = if hem { "depth of the hem".to_owned() } else { format!("allowance of {edge}{from}") };
            self.text(ui, at("allowance width"), &caption, true, "");
            if hem {
                if allowance.turns > 1 {
                    self.text(ui, at("allowance turn_in"), "second turn", true, "as deep as the first");
                }
            } else {
                self.text(ui, at("allowance from"), &format!("holds from, on {edge}"), true, "its start");
                self.text(ui, at("allowance to_width"), &format!("runs to, at the end of {edge}"), true, "the same");
            }
            let word = if hem { format!("No hem at {edge}") } else { format!("No own allowance at {edge}{from}") };
            if ui.small_button(word).clicked() {
                self.finish(FinishCommand::TakeAllowance(piece.to_owned(), *i));
            }
        }
        let add = |turns: u32| FinishCommand::AddAllowance(piece.to_owned(), edge.to_owned(), turns);
        ui.horizontal_wrapped(|ui| {
            let is_hem = own.iter().any(|i| of.allowances[*i].turns > 0);
            if !is_hem && ui.small_button(if own.is_empty() { "Own allowance" } else { "A further width" }).clicked() {
                self.finish(add(0));
            }
            if own.is_empty() {
                for (word, turns) in [("Hem", 1), ("Hem, turned twice", 2)] {
                    if ui.small_button(word).clicked() {
                        self.finish(add(turns));
                    }
                }
            }
        });
        if own.is_empty() {
            field::caption(ui, self.look, "its seam's allowance holds, else that of the draft");
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
                self.say_line(ui, &cut_words(plan, Symmetry::of(&made.stitch, 0.0)));
            }
            let at = |field: &'static str| Address::nth(part.clone(), field, i);
            let number = if of.cuts.len() > 1 { format!(" {}", i + 1) } else { String::new() };
            self.text(ui, at("cut material"), &format!("material{number}"), false, "the name of a material");
            self.text(ui, at("cut heading"), &format!("heading of the grain{number}"), true, "90°: down the piece");
            self.text(ui, at("cut along"), &format!("grain must follow{number}"), false, "an edge or line");
            ui.horizontal_wrapped(|ui| {
                for count in [1, 2, 4] {
                    let chosen = cut.count.max(1) == count;
                    let response = ui.selectable_label(chosen, format!("{count}"));
                    let called = format!("cut {count} of {piece}{number}");
                    response.widget_info(|| WidgetInfo::selected(Role::RadioButton, true, chosen, &called));
                    if response.clicked() && !chosen {
                        self.finish(FinishCommand::CutCount(piece.to_owned(), i, count));
                    }
                }
                let folds =
                    of.edges.iter().filter(|e| e.by.iter().all(|s| matches!(s, crate::document::Segment::Straight(_))));
                egui::ComboBox::from_id_salt(("fold", piece, i))
                    .selected_text(if cut.on_fold.is_empty() {
                        "no fold".to_owned()
                    } else {
                        format!("fold at {}", cut.on_fold)
                    })
                    .show_ui(ui, |ui| {
                        if ui.selectable_label(cut.on_fold.is_empty(), "no fold").clicked() {
                            self.finish(FinishCommand::OnFold(piece.to_owned(), i, None));
                        }
                        for edge in folds {
                            if ui.selectable_label(cut.on_fold == edge.name, format!("fold at {}", edge.name)).clicked()
                            {
                                self.finish(FinishCommand::OnFold(piece.to_owned(), i, Some(edge.name.clone())));
                            }
                        }
                    });
            });
            if ui.small_button(format!("Take out this cut{number}")).clicked() {
                self.finish(FinishCommand::TakeCut(piece.to_owned(), i));
            }
        }
        ui.add_space(4.0);
        let word = if of.cuts.is_empty() { "Say how it is cut" } else { "Cut it from another cloth too" };
        if ui.small_button(word).clicked() {
            self.finish(FinishCommand::AddCut(piece.to_owned()));
        }
        self.text(ui, Address::new(part, "label at"), "place of its label", true, "where there is room");
        self.lengthening(ui, &of);
    }

    /// Where a piece is lengthened, and by how much.
    fn lengthening(&mut self, ui: &mut Ui, of: &Piece) {
        for line in &of.lengthen {
            let value = lengthening(&of.name, &line.name);
            if self.scene.draft().values.iter().any(|v| v.name == value) {
                let caption = format!("longer at {} by", line.name);
                self.text(ui, Address::new(Part::Value(value), "is"), &caption, true, "a length; below 0: shorter");
            } else if ui
                .small_button(format!("Lengthen or shorten at {}", line.name))
                .on_hover_text("Everything beyond the line gets to hang on one value and moves as a block")
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
            self.text(
                ui,
                Address::nth(part.clone(), "notch at", i),
                &format!("notch {name} at"),
                true,
                "a length, a fraction or a point",
            );
            if ui.small_button(format!("Take out notch {name}")).clicked() {
                self.finish(FinishCommand::TakeNotch(seam.name.clone(), i));
            }
        }
        ui.horizontal_wrapped(|ui| {
            if ui.small_button("Add a notch").clicked() {
                self.finish(FinishCommand::AddNotch(seam.name.clone()));
            }
            if ui.small_button("Roll it").on_hover_text(Act::Roll.action().what()).clicked() {
                self.wishes.push(Wish::Act(Act::Roll));
            }
        });
        self.text(
            ui,
            Address::new(part.clone(), "order"),
            "sewn as number, or after",
            false,
            "such as 2, or after side",
        );
        field::caption(ui, self.look, "allowances pressed");
        ui.horizontal(|ui| {
            for (word, pressed) in
                [("open", SeamPressed::Open), ("to side one", SeamPressed::ToOne), ("to side two", SeamPressed::ToTwo)]
            {
                let chosen = seam.pressed == pressed;
                let response = ui.selectable_label(chosen, word);
                response
                    .widget_info(|| WidgetInfo::selected(Role::RadioButton, true, chosen, format!("pressed {word}")));
                if response.clicked() && !chosen {
                    self.finish(FinishCommand::Press(seam.name.clone(), pressed));
                }
            }
        });
        self.text(ui, Address::new(part.clone(), "allowance"), "allowance of both sides", true, "that of the draft");
        self.text(ui, Address::new(part, "closure"), "open for a closure, from its start", true, "sewn all along");
    }
}
