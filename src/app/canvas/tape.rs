//! The tape on the sheet.

use egui::{Align2, CornerRadius, CursorIcon, Id, Pos2, Rect, Role, Sense, Shape, Stroke, Ui, WidgetInfo, pos2, vec2};
use kurbo::Point;

use super::hand::{self, HandKey, REACH};
use super::sheet::Sheet;
use crate::app::help;
use crate::app::look::{self, letters};
use crate::app::scene::Scene;
use crate::app::state::{Shown, Wish};
use crate::app::tape::{Hold, Tape};
use crate::base::DisplayUnit;
use crate::session::Act;
use crate::texts::{self, say};

/// The most sizes whose lengths are listed.
const MOST: usize = 24;

/// Paints the tape and listens to it.
pub(super) fn show(
    ui: &mut Ui,
    sheet: &Sheet<'_>,
    scene: &Scene,
    shown: &Shown,
    case: usize,
    response: &egui::Response,
    wishes: &mut Vec<Wish>,
) {
    let (Some(tape), Some(model)) = (&shown.tape, scene.model()) else { return };
    let line = Stroke::new(look::STRONG + 0.5, sheet.look.handle);
    let shift = |frame: &str| scene.shapes.slot(frame).map(|slot| scene.shapes.shift(case, slot));
    let screen = |frame: &str, p: Point| shift(frame).map(|by| sheet.view.screen_from_table(sheet.canvas, p + by));
    // Points of all pieces can be held.
    for frame in model.plan.frames() {
        for grip in super::grips::of_frame(model, case, &frame.name).into_iter().filter(|g| g.at.field == "at") {
            let Some(at) = screen(&frame.name, grip.place).filter(|at| sheet.canvas.contains(*at)) else { continue };
            super::grips::mark(sheet, &grip, at, false);
            let told =
                ui.interact(Rect::from_center_size(at, vec2(8.0, 8.0)), Id::unique(("tape", &grip.at)), Sense::hover());
            told.widget_info(|| WidgetInfo::labeled(Role::GraphicsObject, true, grip.called()));
        }
    }
    let held: Vec<_> = tape.stops.iter().chain(tape.over.as_ref().map(|(stop, _)| stop)).collect();
    for (pair, leg) in held.windows(2).zip(tape.all_legs()) {
        let (Some(from), Some(to)) = (screen(&pair[0].frame, pair[0].place), screen(&pair[1].frame, pair[1].place))
        else {
            continue;
        };
        match (leg.ways.is_empty(), leg.paths.is_empty()) {
            (true, _) => {
                sheet.painter.extend(Shape::dashed_line(&[from, to], Stroke::new(1.0, sheet.look.soft), 4.0, 5.0))
            }
            (false, true) => drop(sheet.painter.line_segment([from, to], line)),
            (false, false) => {
                leg.paths.iter().for_each(|p| sheet.path(p, shift(&pair[1].frame).unwrap_or_default(), line))
            }
        }
    }
    for stop in &held {
        if let Some(at) = screen(&stop.frame, stop.place) {
            sheet.painter.circle(at, 4.5, sheet.look.sheet, Stroke::new(2.0, sheet.look.handle));
        }
    }
    bar(ui, sheet, scene, tape, case, wishes);
    sizes(ui, sheet, scene, tape, case);
    listen(ui, sheet, (scene, shown, case), response, wishes);
}

/// The piece or drawing nearest to a place on the screen: one whose room holds it, as it is drawn.
fn frame_at(sheet: &Sheet<'_>, scene: &Scene, case: usize, at: Pos2) -> Option<(String, Point)> {
    let table = sheet.view.table_from_screen(sheet.canvas, at);
    let reach = REACH / sheet.view.scale;
    let slots = scene.shapes.slots.iter().enumerate();
    let holding = slots.filter_map(|(i, slot)| {
        let own = table - scene.shapes.shift(case, i);
        let bounds = scene.shapes.get(case, i)?.bounds?;
        bounds.inflate(reach, reach).contains(own).then(|| (bounds.area(), slot.name.clone(), own))
    });
    holding.min_by(|a, b| a.0.total_cmp(&b.0)).map(|(_, name, own)| (name, own))
}

fn listen(
    ui: &Ui,
    sheet: &Sheet<'_>,
    (scene, shown, case): (&Scene, &Shown, usize),
    response: &egui::Response,
    wishes: &mut Vec<Wish>,
) {
    let Some(tape) = &shown.tape else { return };
    let at = ui.input(|i| i.pointer.latest_pos()).filter(|p| response.contains_pointer() && sheet.canvas.contains(*p));
    if let Some(at) = at {
        ui.ctx().set_cursor_icon(CursorIcon::Crosshair);
        match frame_at(sheet, scene, case, at) {
            Some((frame, own)) if !tape.knows(scene.computed.revision, &frame, own) => {
                let over = (frame, own, REACH / sheet.view.scale, sheet.view.scale);
                wishes.push(Wish::Tape(Hold::Over(Some(over))));
            }
            None if tape.over.is_some() => wishes.push(Wish::Tape(Hold::Over(None))),
            _ => {}
        }
        if response.clicked() {
            wishes.push(Wish::Tape(Hold::Here));
        }
    } else if tape.over.is_some() {
        wishes.push(Wish::Tape(Hold::Over(None)));
    }
    for key in hand::keys(ui, shown).into_iter().flatten() {
        wishes.push(Wish::Tape(match key {
            HandKey::Before | HandKey::Next => Hold::Next,
            HandKey::Enter => Hold::Keep,
            HandKey::Back => Hold::Back,
        }));
    }
}

/// Where it is held, what it says, and what can be done.
fn bar(ui: &mut Ui, sheet: &Sheet<'_>, scene: &Scene, tape: &Tape, case: usize, wishes: &mut Vec<Wish>) {
    let mut ui = sheet.bar(ui);
    ui.horizontal_centered(|ui| {
        ui.with_layout(egui::Layout::right_to_left(egui::Align::Center), |ui| {
            if ui.button(say!("canvas-put-away")).on_hover_text(Act::Tape.action().what()).clicked() {
                wishes.push(Wish::Act(Act::Tape));
            }
            help::question(ui, &say!("canvas-tape"), "tape", wishes);
            let can = !tape.formula.is_empty();
            if ui.add_enabled(can, egui::Button::new(say!("canvas-tape-keep"))).clicked() {
                wishes.push(Wish::Tape(Hold::Keep));
            }
            if ui
                .add_enabled(can, egui::Button::new(say!("canvas-tape-way")))
                .on_hover_text(say!("canvas-tape-way-about"))
                .clicked()
            {
                wishes.push(Wish::Tape(Hold::Next));
            }
            ui.with_layout(egui::Layout::left_to_right(egui::Align::Center), |ui| {
                let words = words(scene, tape, case);
                ui.add(egui::Label::new(words).truncate());
            });
        });
    });
}

fn words(scene: &Scene, tape: &Tape, case: usize) -> String {
    let unit = scene.draft().display;
    let over = tape.over.as_ref().map(|(stop, _)| stop);
    match (tape.stops.last(), over) {
        (None, None) => say!("canvas-tape-click"),
        (None, Some(over)) => say!("canvas-tape-holds", place = &*over.words),
        (Some(last), None) if tape.formula.is_empty() => say!("canvas-tape-from", place = &*last.words),
        _ => {
            let long = tape.lengths.get(case).copied().flatten();
            let length = long.map_or_else(|| say!("canvas-tape-no-length"), |l| length_text(l, unit));
            let formula = tape.formula.as_str();
            match tape.all_legs().last() {
                Some(leg) if leg.ways.is_empty() => say!("canvas-tape-lifted", length, formula),
                Some(leg) if leg.paths.is_empty() => say!("canvas-tape-straight", length, formula),
                _ => say!("canvas-tape-along", length, formula),
            }
        }
    }
}

/// Its length in every size with the step between.
fn sizes(ui: &Ui, sheet: &Sheet<'_>, scene: &Scene, tape: &Tape, case: usize) {
    let Some(cases) = scene.cases().filter(|_| !tape.formula.is_empty()) else { return };
    let unit = scene.draft().display;
    let look = sheet.look;
    let many = cases.range.min(MOST);
    let room = Rect::from_min_size(
        pos2(sheet.canvas.right() - 214.0, sheet.canvas.top() + 50.0),
        vec2(204.0, 10.0 + 17.0 * many as f32),
    );
    sheet.painter.rect(
        room,
        CornerRadius::same(6),
        look.panel,
        Stroke::new(1.0, look.border),
        egui::StrokeKind::Inside,
    );
    let mut before: Option<f64> = None;
    for i in 0..many {
        let y = room.top() + 13.0 + 17.0 * i as f32;
        let long = tape.lengths.get(i).copied().flatten();
        let said = long.map_or_else(|| "–".to_owned(), |l| length_text(l, unit));
        let step = long.zip(before).map_or_else(String::new, |(l, b)| {
            format!("{}{}", if l >= b { "+" } else { "−" }, length_text((l - b).abs(), unit))
        });
        before = long;
        let color = if i == case { look.ink } else { look.size(scene.part(i)) };
        let word =
            |x: f32, align, text: &str, color| sheet.painter.text(pos2(x, y), align, text, letters(look::SMALL), color);
        word(room.left() + 10.0, Align2::LEFT_CENTER, &cases.list[i].address, color);
        word(room.left() + 128.0, Align2::RIGHT_CENTER, &said, look.ink);
        word(room.right() - 10.0, Align2::RIGHT_CENTER, &step, look.soft);
        let told = ui.interact(
            Rect::from_min_size(pos2(room.left(), y - 8.0), vec2(204.0, 16.0)),
            Id::unique(("tape size", i)),
            Sense::hover(),
        );
        told.widget_info(|| {
            WidgetInfo::labeled(Role::Label, true, say!("canvas-tape-in", size = scene.called(i), length = said))
        });
    }
}

/// A length as it is read.
fn length_text(mm: f64, unit: DisplayUnit) -> String {
    texts::owned(|| texts::length(mm, unit))
}
