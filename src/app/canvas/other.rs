//! The other draft on the sheet: its lines dashed under the pieces, frame on frame, and a bar that says which is which.

use egui::{Align, Button, Label, Layout, Role, Sense, Shape, Stroke, Ui, WidgetInfo, pos2, vec2};
use kurbo::BezPath;

use super::sheet::Sheet;
use crate::app::help;
use crate::app::look;
use crate::app::scene::Scene;
use crate::app::state::{Shown, Wish};
use crate::session::Act;
use crate::texts::say;

/// Length of a line in the legend, px.
const SAMPLE: f32 = 34.0;

/// Paints the lines of the other draft in the chosen size.
pub(super) fn paint(sheet: &Sheet<'_>, scene: &Scene, shown: &Shown, chosen: usize) {
    let Some(versus) = &shown.versus else { return };
    let Some(case) = versus.case(&shown.case) else { return };
    let Some((.., other)) = &versus.seen else { return };
    let Some(model) = &other.model else { return };
    let line = Stroke::new(look::STRONG, sheet.look.handle);
    let thin = Stroke::new(look::THIN, sheet.look.handle);
    for (piece, slot) in scene.shapes.slots.iter().enumerate().filter(|(_, s)| !s.absent) {
        let there = versus.name_there(&slot.name);
        let Some(frame) = model.plan.frames().iter().position(|f| *f.name == *there) else { continue };
        let shift = scene.shapes.shift(chosen, piece);
        if let Some(drawn) = versus.shapes.get(case, frame) {
            sheet.dashed(&drawn.outline, shift, line);
            drawn.lines.iter().for_each(|path| sheet.dashed(path, shift, thin));
        }
        let made = other.finished.as_ref().and_then(|f| f.cases.get(case)?.get(frame)?.as_ref());
        let cut: Option<&BezPath> = made.and_then(|m| m.cuts.first()?.outline.as_ref());
        if let Some(cut) = cut {
            sheet.dashed(cut, shift, thin);
        }
    }
}

/// Says which line is which, how much differs, and how to end it.
pub(super) fn bar(ui: &mut Ui, sheet: &Sheet<'_>, scene: &Scene, shown: &Shown, chosen: usize, wishes: &mut Vec<Wish>) {
    let Some(versus) = &shown.versus else { return };
    let mut ui = sheet.bar(ui);
    let look = sheet.look;
    ui.horizontal_centered(|ui| {
        ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
            if ui.button(say!("canvas-end-comparing")).on_hover_text(Act::EndCompare.action().what()).clicked() {
                wishes.push(Wish::Act(Act::EndCompare));
            }
            help::question(ui, &say!("canvas-comparing"), "compare", wishes);
            if ui.add(Button::new(say!("canvas-differences"))).on_hover_text(Act::Differences.action().what()).clicked()
            {
                wishes.push(Wish::Act(Act::Differences));
            }
            ui.with_layout(Layout::left_to_right(Align::Center), |ui| {
                let sample = |ui: &mut Ui, dashed: bool, words: &str| {
                    let (rect, response) = ui.allocate_exact_size(vec2(SAMPLE, 14.0), Sense::hover());
                    let ends = [rect.left_center() + vec2(2.0, 0.0), pos2(rect.right() - 2.0, rect.center().y)];
                    if dashed {
                        let stroke = Stroke::new(look::STRONG, look.handle);
                        ui.painter().extend(Shape::dashed_line(&ends, stroke, 8.0, 5.0));
                    } else {
                        ui.painter().line_segment(ends, Stroke::new(look::STRONG, look.size(scene.part(chosen))));
                    }
                    let called = match dashed {
                        true => say!("canvas-dashed-line", of = words),
                        false => say!("canvas-whole-line", of = words),
                    };
                    response.widget_info(|| WidgetInfo::labeled(Role::GraphicsObject, true, called.as_str()));
                    ui.add(Label::new(words).truncate());
                };
                let name = versus.work.name();
                let is_there = versus.work.other().is_none() || versus.case(&shown.case).is_some();
                let there = match is_there {
                    true => name.to_owned(),
                    false => say!("canvas-not-in", size = scene.called(chosen), draft = name),
                };
                sample(ui, false, &say!("canvas-this-draft"));
                sample(ui, true, &there);
                ui.add(Label::new(versus.state()).truncate());
            });
        });
    });
}
