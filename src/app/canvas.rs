//! The sheet: pieces beside each other, the chosen size strong, the others thin behind it.

use egui::text::LayoutJob;
use egui::{
    Align, Align2, Color32, CornerRadius, CursorIcon, Id, Painter, Pos2, Rect, Role, Sense, Shape, Stroke, StrokeKind,
    Ui, WidgetInfo, pos2, vec2,
};
use kurbo::{BezPath, PathEl, Shape as _, Vec2};

use super::look::{self, Look, letters};
use super::opened::Opened;
use super::shapes::{Drawn, Slot};
use super::view::{View, factor};
use super::{Shown, Wish};
use crate::base::{DisplayUnit, shown as length_text};

/// Curves are drawn by straight lines that leave them by no more than this, px.
const FLATNESS: f64 = 0.2;
/// Lines of the grid are no closer than this, px.
const GRID_GAP: f64 = 42.0;
/// Words under a piece are not broken narrower than this, px.
const NARROWEST: f32 = 72.0;
/// A sheet lower than this has no room for hints, px.
const LOW: f32 = 260.0;
/// A dash and a gap, px.
const DASHES: (f32, f32) = (8.0, 5.0);
/// The most dashes of one line; longer ones get longer dashes.
const MOST_DASHES: f32 = 2_000.0;

/// What all parts of the sheet need.
struct Sheet<'a> {
    painter: Painter,
    canvas: Rect,
    view: View,
    look: &'a Look,
}

/// Paints the sheet. `asked` is the case that the pointer asks for in the strip.
pub(super) fn show(
    ui: &mut Ui,
    look: &Look,
    opened: &Opened,
    shown: &Shown,
    asked: Option<usize>,
    wishes: &mut Vec<Wish>,
) {
    let response = ui.allocate_response(ui.available_size(), Sense::click_and_drag());
    let canvas = response.rect;
    if !canvas.is_positive() {
        return; // a window so low that strip and findings fill it
    }
    let whole = opened.shapes.room().unwrap_or(kurbo::Rect::new(0.0, 0.0, 100.0, 100.0));
    let view = shown.view.unwrap_or_else(|| View::fitting(whole, canvas));
    ui.painter().rect(canvas, CornerRadius::same(6), look.sheet, Stroke::new(1.0, look.border), StrokeKind::Inside);
    let sheet = Sheet { painter: ui.painter_at(canvas.shrink(1.0)), canvas, view, look };
    let step = sheet.grid(opened.draft.display);

    let chosen = shown.case;
    for (piece, slot) in opened.shapes.slots.iter().enumerate() {
        let others = opened.shapes.behind.iter().filter(|c| shown.behind && **c != chosen && Some(**c) != asked);
        for case in others {
            sheet.piece(opened, slot, (*case, piece), look::THIN, look.faded(look.size(opened.part(*case))));
        }
        if let Some(case) = asked.filter(|c| shown.behind && *c != chosen) {
            sheet.piece(opened, slot, (case, piece), look::ASKED, look.size(opened.part(case)));
        }
        sheet.piece(opened, slot, (chosen, piece), look::STRONG, look.size(opened.part(chosen)));
    }
    response
        .widget_info(|| WidgetInfo::labeled(Role::Canvas, true, format!("the pieces in {}", opened.called(chosen))));
    for (piece, slot) in opened.shapes.slots.iter().enumerate() {
        sheet.name(ui, opened, slot, (chosen, piece));
    }
    sheet.foot(opened, step);
    steer(ui, &response, view, wishes);
}

/// Drag to move, scroll to zoom, double click to see all.
fn steer(ui: &Ui, response: &egui::Response, view: View, wishes: &mut Vec<Wish>) {
    if response.double_clicked() {
        wishes.push(Wish::Look(None));
        return;
    }
    let mut wanted = view;
    if response.dragged() {
        ui.ctx().set_cursor_icon(CursorIcon::Grabbing);
        wanted = wanted.pushed(response.drag_delta());
    }
    // Pieces lie on the sheet: the pointer is over it also where it is over one of them.
    if let Some(at) = ui.input(|i| i.pointer.hover_pos()).filter(|_| response.contains_pointer()) {
        let (scroll, pinch) = ui.input(|i| (i.smooth_scroll_delta().y, f64::from(i.zoom_delta())));
        wanted = wanted.zoomed(response.rect, at, factor(scroll) * pinch);
    }
    if wanted != view {
        wishes.push(Wish::Look(Some(wanted)));
    }
}

impl Sheet<'_> {
    fn screen_path(&self, path: &BezPath, shift: Vec2) -> Vec<Vec<Pos2>> {
        let mut lines: Vec<Vec<Pos2>> = Vec::new();
        let at = |p: kurbo::Point| self.view.screen_from_table(self.canvas, p + shift);
        kurbo::flatten(path, FLATNESS / self.view.scale, |element| match element {
            PathEl::MoveTo(p) => lines.push(vec![at(p)]),
            PathEl::ClosePath => {
                if let Some(line) = lines.last_mut() {
                    line.extend(line.first().copied());
                }
            }
            PathEl::LineTo(p) | PathEl::QuadTo(_, p) | PathEl::CurveTo(_, _, p) => {
                if let Some(line) = lines.last_mut() {
                    line.push(at(p));
                }
            }
        });
        lines
    }

    fn stroke(&self, path: &BezPath, shift: Vec2, stroke: Stroke, dashed: bool) {
        if !self.sees(path.bounding_box() + shift) {
            return;
        }
        for mut line in self.screen_path(path, shift) {
            if dashed {
                let long: f32 = line.windows(2).map(|p| p[0].distance(p[1])).sum();
                let times = (long / (DASHES.0 + DASHES.1) / MOST_DASHES).max(1.0);
                self.painter.extend(Shape::dashed_line(&line, stroke, DASHES.0 * times, DASHES.1 * times));
            } else if line.len() > 2 && line.first() == line.last() {
                line.pop();
                self.painter.add(Shape::closed_line(line, stroke));
            } else {
                self.painter.add(Shape::line(line, stroke));
            }
        }
    }

    fn sees(&self, room: kurbo::Rect) -> bool {
        self.canvas.expand(8.0).intersects(self.view.screen_rect(self.canvas, room))
    }

    /// A piece in a case; what is not true is dashed and steps back.
    fn piece(&self, opened: &Opened, slot: &Slot, (case, piece): (usize, usize), width: f32, color: Color32) {
        let Some(Drawn::Shape { outline, lines, untrue, .. }) = opened.shapes.get(case, piece) else { return };
        let color = if *untrue { self.look.faded(color) } else { color };
        self.stroke(outline, slot.shift, Stroke::new(width, color), *untrue);
        let inner = Stroke::new((width * 0.6).max(look::THIN), color);
        for line in lines {
            self.stroke(line, slot.shift, inner, *untrue);
        }
    }

    /// Faint lines at round lengths; says how far apart they are, mm.
    fn grid(&self, unit: DisplayUnit) -> f64 {
        const METRIC: &[f64] = &[1.0, 5.0, 10.0, 50.0, 100.0, 500.0, 1_000.0, 5_000.0, 10_000.0];
        const INCHES: &[f64] = &[3.175, 12.7, 25.4, 101.6, 304.8, 914.4, 3_048.0, 9_144.0];
        let steps = match unit {
            DisplayUnit::Cm | DisplayUnit::Mm => METRIC,
            DisplayUnit::InchEighths | DisplayUnit::InchSixteenths => INCHES,
        };
        let last = steps[steps.len() - 1];
        let step = steps.iter().copied().find(|s| s * self.view.scale >= GRID_GAP).unwrap_or(last);
        let stroke = Stroke::new(1.0, self.look.grid);
        let from = self.view.table_from_screen(self.canvas, self.canvas.min);
        let to = self.view.table_from_screen(self.canvas, self.canvas.max);
        let lines = |from: f64, to: f64| {
            (((from / step).ceil() as i64)..=((to / step).floor() as i64)).map(move |i| i as f64 * step)
        };
        for x in lines(from.x, to.x) {
            let x = self.view.screen_from_table(self.canvas, kurbo::Point::new(x, 0.0)).x;
            self.painter.vline(x, self.canvas.y_range(), stroke);
        }
        for y in lines(from.y, to.y) {
            let y = self.view.screen_from_table(self.canvas, kurbo::Point::new(0.0, y)).y;
            self.painter.hline(self.canvas.x_range(), y, stroke);
        }
        step
    }

    /// The name of a piece under its room, and what is wrong with it in this case; also for those who do not see it.
    fn name(&self, ui: &Ui, opened: &Opened, slot: &Slot, (case, piece): (usize, usize)) {
        let room = self.view.screen_rect(self.canvas, slot.room());
        let seen = room.intersect(self.canvas);
        if !seen.is_positive() {
            return;
        }
        let called = opened.called(case);
        let (rect, second, color, spoken) = match opened.shapes.get(case, piece) {
            Some(Drawn::Shape { untrue, bounds, .. }) => {
                let rect = self.view.screen_rect(self.canvas, *bounds + slot.shift).intersect(self.canvas);
                let own = self.look.size(opened.part(case));
                if *untrue {
                    let spoken = format!("piece {}, {called}, not true", slot.name);
                    (rect, format!("{called} · not true"), self.look.error, spoken)
                } else {
                    (rect, called.clone(), own, format!("piece {}, {called}", slot.name))
                }
            }
            _ => {
                let note = format!("cannot be drawn in {called}");
                self.empty(room, &note);
                (seen, note.clone(), self.look.error, format!("piece {} {note}", slot.name))
            }
        };
        // Under the piece, or as near to that as the sheet allows.
        let half = 60.0_f32.min(self.canvas.width() / 2.0);
        let at = pos2(
            room.center().x.min(self.canvas.right() - half).max(self.canvas.left() + half),
            (room.bottom() + 8.0).min(self.canvas.bottom() - 66.0).max(self.canvas.top() + 8.0),
        );
        let name = self.painter.layout_no_wrap(slot.name.clone(), letters(look::LARGE), self.look.ink);
        let mut words = LayoutJob::simple(second, letters(look::SMALL), color, room.width().max(NARROWEST));
        words.halign = Align::Center;
        let second = self.painter.layout_job(words);
        let size = vec2(name.size().x.max(second.size().x), name.size().y + second.size().y);
        let ground = Align2::CENTER_TOP.anchor_size(at, size);
        self.painter.rect_filled(ground.expand2(vec2(6.0, 2.0)), 4.0, self.look.sheet.gamma_multiply(0.85));
        let below = at + vec2(0.0, name.size().y);
        self.painter.galley(at - vec2(name.size().x / 2.0, 0.0), name, self.look.ink);
        self.painter.galley(below, second, color);
        if rect.is_positive() {
            let response = ui.interact(rect, Id::unique(("piece", piece)), Sense::hover());
            response.widget_info(|| WidgetInfo::labeled(Role::GraphicsObject, true, &spoken));
        }
    }

    /// The place of a piece that has no shape.
    fn empty(&self, room: Rect, note: &str) {
        let corners = [room.left_top(), room.right_top(), room.right_bottom(), room.left_bottom(), room.left_top()];
        let stroke = Stroke::new(1.0, self.look.soft);
        self.painter.extend(Shape::dashed_line(&corners, stroke, DASHES.0, DASHES.1));
        let words = format!("{note};\nthe findings below say why");
        let galley = self.painter.layout(words, letters(look::TEXT), self.look.ink, (room.width() - 16.0).max(80.0));
        if room.size().min_elem() > 16.0 && galley.size().x <= room.width() && galley.size().y <= room.height() {
            self.painter.galley(room.center() - galley.size() / 2.0, galley, self.look.ink);
        }
    }

    /// The scale of the grid, and how to move about; or that there is nothing to see.
    fn foot(&self, opened: &Opened, step: f64) {
        let text = |at: Pos2, align: Align2, words: String| {
            let galley = self.painter.layout_no_wrap(words, letters(look::SMALL), self.look.soft);
            let rect = align.anchor_size(at, galley.size());
            self.painter.rect_filled(rect.expand(3.0), 4.0, self.look.sheet.gamma_multiply(0.85));
            self.painter.galley(rect.min, galley, self.look.soft);
        };
        let edge = self.canvas.shrink(12.0);
        let grid = format!("grid {}", length_text(step, opened.draft.display));
        text(edge.right_bottom(), Align2::RIGHT_BOTTOM, grid);
        if self.canvas.height() > LOW {
            let hint = "Drag to move, scroll to zoom, double click to see all; ← and → change the size";
            text(edge.left_bottom(), Align2::LEFT_BOTTOM, hint.to_owned());
        }
        let nothing = match (opened.model.plan.cases.list.is_empty(), opened.shapes.slots.is_empty()) {
            (true, _) => "This draft has no sizes: its chart needs at least one.",
            (_, true) => "This draft has no pieces yet.",
            _ => return,
        };
        self.painter.text(self.canvas.center(), Align2::CENTER_CENTER, nothing, letters(look::LARGE), self.look.ink);
    }
}
