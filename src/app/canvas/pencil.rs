//! The pencil on the sheet: what it would write at this place, and what a person does with it.

use egui::text::LayoutJob;
use egui::{
    CursorIcon, Event, FontFamily, FontId, Id, PointerButton, Rect, Role, Sense, Shape, TextFormat, Ui, Vec2,
    WidgetInfo,
};

use super::grips;
use super::hand::{self, HandKey, REACH};
use super::sheet::Sheet;
use crate::app::help;
use crate::app::look::{self, letters};
use crate::app::pencil::{Pencil, Stroke};
use crate::app::scene::Scene;
use crate::app::state::{Shown, Wish};
use crate::session::Act;
use crate::texts::say;

/// Paints what the pencil would write and listens to it.
pub(super) fn show(
    ui: &mut Ui,
    sheet: &Sheet<'_>,
    scene: &Scene,
    shown: &Shown,
    case: usize,
    response: &egui::Response,
    wishes: &mut Vec<Wish>,
) {
    let (Some(pencil), Some(model)) = (&shown.pencil, scene.model()) else { return };
    let Some(slot) = scene.shapes.slot(&pencil.frame) else { return };
    let shift = scene.shapes.shift(case, slot);
    let screen = |p: kurbo::Point| sheet.view.screen_from_table(sheet.canvas, p + shift);
    let all = grips::of_frame(model, case, &pencil.frame);
    let points: Vec<_> = all.into_iter().filter(|g| g.at.field == "at").collect();
    for point in &points {
        let at = screen(point.place);
        if !sheet.canvas.contains(at) {
            continue;
        }
        let is_from = pencil.from.iter().any(|n| n == point.at.part.name());
        grips::mark(sheet, point, at, is_from);
        let rect = Rect::from_center_size(at, Vec2::splat(8.0));
        let told = ui.interact(rect, Id::unique(("pencil", &point.at)), Sense::hover());
        told.widget_info(|| WidgetInfo::labeled(Role::GraphicsObject, true, point.called()));
    }
    grips::names(sheet, &points, &screen);
    // Away from the sheet it writes nothing, unless a number is being typed.
    let is_over = response.contains_pointer() || response.dragged();
    if let Some(reading) = pencil.reading().filter(|_| is_over || pencil.typed.is_some()) {
        let line = egui::Stroke::new(1.0, sheet.look.handle);
        for [from, to] in &reading.guides {
            sheet.painter.extend(Shape::dashed_line(&[screen(*from), screen(*to)], line, 5.0, 4.0));
        }
        let from = pencil.from.last().and_then(|n| points.iter().find(|p| p.at.part.name() == n));
        if let (Some(from), true) = (from, pencil.drawing || pencil.join) {
            let line = egui::Stroke::new(look::STRONG, sheet.look.handle);
            sheet.painter.line_segment([screen(from.place), screen(reading.place)], line);
        }
        let at = screen(reading.place);
        sheet.painter.circle(at, 5.0, sheet.look.sheet, egui::Stroke::new(2.0, sheet.look.handle));
        tip(ui, sheet, pencil, at, elsewhere(ui, sheet, scene, pencil, case));
    }
    bar(ui, sheet, pencil, wishes);
    listen(ui, sheet, response, (scene, shown, case, shift), wishes);
}

fn listen(
    ui: &Ui,
    sheet: &Sheet<'_>,
    response: &egui::Response,
    (scene, shown, case, shift): (&Scene, &Shown, usize, kurbo::Vec2),
    wishes: &mut Vec<Wish>,
) {
    let Some(pencil) = &shown.pencil else { return };
    let mut tell = |stroke| wishes.push(Wish::Pencil(stroke));
    let modifiers = ui.input(|i| i.modifiers);
    let point_at = |at: egui::Pos2| {
        let place = sheet.view.table_from_screen(sheet.canvas, at) - shift;
        Stroke::At(place, REACH / sheet.view.scale, sheet.view.scale, !modifiers.command)
    };
    if let Some(at) = ui.input(|i| i.pointer.latest_pos()).filter(|p| sheet.canvas.contains(*p)) {
        if response.contains_pointer() || response.dragged_by(PointerButton::Primary) {
            ui.ctx().set_cursor_icon(CursorIcon::Crosshair);
            if response.drag_started_by(PointerButton::Primary) {
                // The line begins where the button went down.
                let origin = ui.input(|i| i.pointer.press_origin()).unwrap_or(at);
                tell(point_at(origin));
                tell(Stroke::Press);
            }
            let place = sheet.view.table_from_screen(sheet.canvas, at) - shift;
            if !pencil.knows(scene.computed.revision, case, place, !modifiers.command) {
                tell(point_at(at));
            }
        }
        if response.clicked_by(PointerButton::Primary) {
            tell(Stroke::Place(modifiers.shift));
        }
        if response.drag_stopped_by(PointerButton::Primary) {
            tell(Stroke::Drop(modifiers.shift));
        }
    }
    let Some(keys) = hand::keys(ui, shown) else { return };
    for key in keys {
        tell(match key {
            HandKey::Before => Stroke::Next(false),
            HandKey::Next => Stroke::Next(true),
            HandKey::Enter => Stroke::Enter,
            HandKey::Back => Stroke::Back,
        });
    }
    let typed = ui.input(|i| {
        let texts = i.events.iter().filter_map(|e| if let Event::Text(t) = e { Some(t.clone()) } else { None });
        texts.collect::<String>()
    });
    let typed = typed.trim_start_matches(' ').to_owned();
    if !typed.is_empty() {
        tell(Stroke::Type(typed));
    }
}

/// Another piece on which the pointer lies: what is written there belongs to the pencil's own piece all the same.
fn elsewhere(ui: &Ui, sheet: &Sheet<'_>, scene: &Scene, pencil: &Pencil, case: usize) -> Option<String> {
    let at = ui.input(|i| i.pointer.latest_pos())?;
    let table = sheet.view.table_from_screen(sheet.canvas, at);
    let others = scene.shapes.slots.iter().enumerate().filter(|(_, slot)| slot.name != pencil.frame);
    let mut over = others.filter(|(i, _)| {
        let own = table - scene.shapes.shift(case, *i);
        scene.shapes.get(case, *i).is_some_and(|drawn| kurbo::Shape::contains(&drawn.outline, own))
    });
    over.next().map(|(_, slot)| slot.name.clone())
}

/// What would be written, why, and what can be done.
fn tip(ui: &Ui, sheet: &Sheet<'_>, pencil: &Pencil, at: egui::Pos2, over: Option<String>) {
    let Some(reading) = pencil.reading() else { return };
    let look = sheet.look;
    let (plain, strong, soft) = (look.sheet, look.number, look.sheet.gamma_multiply(0.75));
    let code = |color| TextFormat::simple(FontId::new(look::TEXT, FontFamily::Monospace), color);
    let mut words = LayoutJob::default();
    words.append(&reading.words, 0.0, TextFormat::simple(letters(look::TEXT), plain));
    words.append("\n", 0.0, TextFormat::simple(letters(look::SMALL), plain));
    let mut from = 0;
    for span in &reading.numbers {
        words.append(&reading.formula[from..span.start], 0.0, code(plain));
        words.append(span.of(&reading.formula), 0.0, code(strong));
        from = span.end;
    }
    words.append(&reading.formula[from..], 0.0, code(plain));
    let note = match (&pencil.typed, pencil.readings.len()) {
        (Some(_), _) => say!("canvas-pencil-typed"),
        (None, 0 | 1) => say!("canvas-pencil-click"),
        (None, all) => say!("canvas-pencil-several", number = pencil.at + 1, all),
    };
    if let Some(other) = over {
        let words_over = format!("\n{}", say!("canvas-pencil-elsewhere", other, piece = &*pencil.frame));
        words.append(&words_over, 0.0, TextFormat::simple(letters(look::SMALL), strong));
    }
    words.append("\n", 0.0, TextFormat::simple(letters(look::SMALL), plain));
    words.append(&note, 0.0, TextFormat::simple(letters(look::SMALL), soft));
    sheet.tip(ui, words, at);
}

/// A strip at the top of the sheet: where it draws, from where, what is typed.
fn bar(ui: &mut Ui, sheet: &Sheet<'_>, pencil: &Pencil, wishes: &mut Vec<Wish>) {
    let look = sheet.look;
    let mut ui = sheet.bar(ui);
    ui.horizontal_centered(|ui| {
        let from = match &pencil.from[..] {
            [] => say!("canvas-pencil-from-none"),
            [one] => say!("canvas-pencil-from", point = one),
            [.., before, point] => say!("canvas-pencil-from-two", point, before),
        };
        ui.label(say!("canvas-pencil-in", piece = &*pencil.frame, from));
        let told = match (&pencil.typed, pencil.reading()) {
            (Some(typed), _) => {
                let state = match &typed.made {
                    Ok(reading) => reading.formula.clone(),
                    Err(problem) => problem.clone(),
                };
                say!("canvas-pencil-told", typed = typed.texts.join("; "), state)
            }
            (None, Some(reading)) => format!("{}: {}", reading.words, reading.formula),
            (None, None) => String::new(),
        };
        let is_wrong = pencil.typed.as_ref().is_some_and(|t| t.made.is_err());
        // Said for those who do not see the words at the pointer; seen where a number is wrong.
        let said =
            ui.label(egui::RichText::new(if is_wrong { format!("■ {told}") } else { String::new() }).color(look.error));
        said.widget_info(|| WidgetInfo::labeled(Role::Label, true, say!("canvas-pencil-would", told)));
        ui.with_layout(egui::Layout::right_to_left(egui::Align::Center), |ui| {
            let leave = ui.button(say!("canvas-put-down")).on_hover_text(Act::Pencil.action().what());
            if leave.clicked() {
                wishes.push(Wish::Act(Act::Pencil));
            }
            help::question(ui, &say!("canvas-pencil"), "pencil", wishes);
            let join = ui.selectable_label(pencil.join, say!("canvas-join")).on_hover_text(say!("canvas-join-about"));
            let called = say!("canvas-join-called");
            join.widget_info(|| WidgetInfo::selected(Role::CheckBox, true, pencil.join, called.as_str()));
            if join.clicked() {
                wishes.push(Wish::Pencil(Stroke::Join));
            }
        });
    });
}
