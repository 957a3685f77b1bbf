//! Painting on the sheet: lines, pieces, the grid, names.

use std::sync::Arc;

use egui::text::LayoutJob;
use egui::{
    Align, Align2, Color32, Id, Mesh, Painter, Pos2, Rect, Role, Sense, Shape, Stroke, Ui, WidgetInfo, pos2, vec2,
};
use kurbo::Vec2;

use super::flat;
use crate::app::look::{self, Look, letters};
use crate::app::scene::Scene;
use crate::app::shapes::Drawn;
use crate::app::state::Wish;
use crate::app::view::View;
use crate::base::DisplayUnit;
use crate::document::Part;
use crate::output;
use crate::texts::{self, say};

/// Lines of the grid are no closer than this, px.
const GRID_GAP: f64 = 42.0;
/// Words under a piece are not broken narrower than this, px.
const NARROWEST: f32 = 150.0;
/// How far a name may reach beyond its piece, and the width that it always has, px.
const NAME_BESIDE: f32 = 14.0;
const NAME_LEAST: f32 = 84.0;
/// A sheet narrower than this has no room for hints, px.
const WIDE: f32 = 800.0;
/// A sheet lower than this has none either, px.
const LOW: f32 = 260.0;
/// Points of a line that are closer than this are one, where very much is drawn, px.
const NEAR: f32 = 3.0;
/// There, points that lie no further off the way from the one before to the next are left out, px …
const ASIDE: f32 = 0.5;
/// … up to this distance from the one before, px.
const FAR: f32 = 24.0;
/// A dash and a gap, px.
const DASHES: (f32, f32) = (8.0, 5.0);
/// The most dashes of one line; longer ones get longer dashes.
const MOST_DASHES: f32 = 2_000.0;

/// What all parts of the sheet need.
pub(super) struct Sheet<'a> {
    pub painter: Painter,
    pub canvas: Rect,
    pub view: View,
    pub look: &'a Look,
    /// Whether so much is drawn that thin lines go without soft edges.
    pub crowded: bool,
}

impl Sheet<'_> {
    /// A line on the screen. Where very much is drawn, points without which it looks the same are left out.
    fn on_screen(&self, line: &[kurbo::Point], shift: Vec2) -> Vec<Pos2> {
        let at = |p: &kurbo::Point| self.view.screen_from_table(self.canvas, *p + shift);
        if !self.crowded {
            return line.iter().map(at).collect();
        }
        let mut out: Vec<Pos2> = Vec::with_capacity(line.len());
        let mut all = line.iter().map(at).peekable();
        while let Some(here) = all.next() {
            let (Some(last), Some(next)) = (out.last(), all.peek()) else {
                out.push(here);
                continue;
            };
            let (way, off) = (*next - *last, here - *last);
            let aside = (way.x * off.y - way.y * off.x).abs();
            if off.length_sq() >= NEAR * NEAR && (off.length_sq() > FAR * FAR || aside > ASIDE * way.length()) {
                out.push(here);
            }
        }
        out
    }

    /// Paints a line of straight stretches, mm, moved by `shift`.
    fn stroke(&self, lines: &[Vec<kurbo::Point>], shift: Vec2, stroke: Stroke, dashed: bool) {
        for line in lines {
            let mut line = self.on_screen(line, shift);
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
    pub fn piece(&self, scene: &Scene, (case, piece): (usize, usize), width: f32, color: Color32) {
        if let Some(drawn) = scene.shapes.get(case, piece) {
            self.drawn(scene, drawn, scene.shapes.shift(case, piece), width, color, false);
        }
    }

    /// A shape at a place; a ghost is dashed.
    pub fn drawn(&self, scene: &Scene, drawn: &Arc<Drawn>, shift: Vec2, width: f32, color: Color32, ghost: bool) {
        if !drawn.bounds.is_some_and(|b| self.sees(b + shift)) {
            return;
        }
        let dashed = drawn.untrue || ghost;
        let color = if drawn.untrue { self.look.faded(color) } else { color };
        let color = if drawn.is_past { color.gamma_multiply(0.4) } else { color };
        let flat = scene.flat.borrow_mut().of(drawn, self.view.scale);
        if self.crowded && !dashed && width <= look::THIN {
            let origin = self.view.screen_from_table(self.canvas, kurbo::Point::ZERO + shift);
            let mesh = flat.mesh((origin, self.view.scale, width, color), || {
                let mut mesh = Mesh::default();
                for line in flat.outline.iter().chain(&flat.lines) {
                    flat::strip(&mut mesh, &self.on_screen(line, shift), width, color);
                }
                mesh
            });
            self.painter.add(Shape::Mesh(mesh));
            return;
        }
        self.stroke(&flat.outline, shift, Stroke::new(width, color), dashed);
        self.stroke(&flat.lines, shift, Stroke::new((width * 0.6).max(look::THIN), color), dashed);
    }

    /// The cut line of a piece with its notches and marks.
    pub fn cut(&self, scene: &Scene, (case, piece): (usize, usize), color: Color32) {
        let Some(finished) = &scene.computed.finished else { return };
        let Some(Some(made)) = finished.cases.get(case).and_then(|c| c.get(piece)) else { return };
        let shift = scene.shapes.shift(case, piece);
        let outline = made.cuts.first().and_then(|c| c.outline.as_ref());
        let stroke = Stroke::new(look::ASKED, color.gamma_multiply(0.75));
        for path in outline.into_iter().cloned().chain(output::signs(made)) {
            self.stroke(&flat::lines(&path, self.view.scale), shift, stroke, false);
        }
    }

    /// A strip at the top of the sheet for what is in the hand.
    pub fn bar(&self, ui: &mut Ui) -> Ui {
        let place = Rect::from_min_size(self.canvas.min + vec2(10.0, 8.0), vec2(self.canvas.width() - 20.0, 36.0));
        let line = Stroke::new(1.0, self.look.border);
        self.painter.rect(place, look::ROUND, self.look.panel, line, egui::StrokeKind::Inside);
        let mut ui = ui.new_child(egui::UiBuilder::new().max_rect(place.shrink2(vec2(10.0, 3.0))));
        ui.set_clip_rect(place);
        ui
    }

    /// A line, mm, in a frame that lies there on the table.
    pub fn path(&self, path: &kurbo::BezPath, shift: Vec2, stroke: Stroke) {
        self.stroke(&flat::lines(path, self.view.scale), shift, stroke, false);
    }

    /// A dashed line, mm, in a frame that lies there on the table.
    pub fn dashed(&self, path: &kurbo::BezPath, shift: Vec2, stroke: Stroke) {
        self.stroke(&flat::lines(path, self.view.scale), shift, stroke, true);
    }

    /// Words on a ground of ink beside what they speak of, where the sheet has room for them.
    pub fn tip(&self, ui: &Ui, mut words: LayoutJob, at: Pos2) {
        words.wrap.max_width = (self.canvas.width() - 40.0).clamp(120.0, 520.0);
        let galley = ui.ctx().fonts_mut(|f| f.layout_job(words));
        let room = galley.size() + vec2(20.0, 14.0);
        let x = (at.x + 16.0).min(self.canvas.right() - room.x - 6.0).max(self.canvas.left() + 6.0);
        let below = at.y + 18.0;
        let y = if below + room.y > self.canvas.bottom() { at.y - 18.0 - room.y } else { below };
        let rect = Rect::from_min_size(pos2(x, y), room);
        self.painter.rect_filled(rect, 6.0, self.look.ink);
        self.painter.galley(rect.min + vec2(10.0, 7.0), galley, self.look.sheet);
    }

    /// A few words beside the pointer.
    pub fn word_at(&self, at: Pos2, words: &str) {
        let galley = self.painter.layout_no_wrap(words.to_owned(), letters(look::TEXT), self.look.sheet);
        let room = galley.size() + vec2(16.0, 8.0);
        let x = (at.x + 16.0).min(self.canvas.right() - room.x - 6.0);
        let rect = Rect::from_min_size(pos2(x, at.y + 16.0), room);
        self.painter.rect_filled(rect, 6.0, self.look.ink);
        self.painter.galley(rect.min + vec2(8.0, 4.0), galley, self.look.sheet);
    }

    /// An edge or line of a piece in a case, in a colour of its own.
    pub fn edge(&self, scene: &Scene, case: usize, part: &Part, stroke: Stroke) {
        let Part::Inner(frame, _, name) = part else { return };
        let (Some(model), Some(slot)) = (scene.model(), scene.shapes.slot(frame)) else { return };
        let Some(node) = model.plan.node_named(&format!("{frame}.{name}")) else { return };
        if let Some(edge) = model.item(case, node).and_then(|i| i.edge()) {
            let path = flat::lines(&edge.curve.to_path(), self.view.scale);
            self.stroke(&path, scene.shapes.shift(case, slot), stroke, false);
        }
    }

    /// Faint lines at round lengths; says how far apart they are, mm.
    pub fn grid(&self, unit: DisplayUnit) -> f64 {
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
    pub fn name(&self, ui: &Ui, scene: &Scene, piece: usize, case: usize, wishes: &mut Vec<Wish>) {
        let slot = &scene.shapes.slots[piece];
        if slot.absent {
            return;
        }
        let room = self.view.screen_rect(self.canvas, slot.room());
        let seen = room.intersect(self.canvas);
        if !seen.is_positive() && slot.bounds.area() > 0.0 {
            return;
        }
        let called = scene.called(case);
        // What is said of it: in sight under its name, and in one sentence with it.
        let told = |state: String| match slot.is_piece {
            true => say!("canvas-piece-told", piece = &*slot.name, state),
            false => say!("canvas-drawing-told", drawing = &*slot.name, state),
        };
        let noted = |note: &str| say!("canvas-size-note", size = &*called, note);
        let past = |state: String| match slot.is_piece {
            true => say!("canvas-piece-past", piece = &*slot.name, state),
            false => say!("canvas-drawing-past", drawing = &*slot.name, state),
        };
        let drawn = scene.shapes.get(case, piece).filter(|d| !d.is_empty() || d.bounds.is_some());
        let (rect, second, color, spoken) = match drawn {
            Some(drawn) => {
                let bounds = drawn.bounds.unwrap_or(slot.bounds) + scene.shapes.shift(case, piece);
                let rect = self.view.screen_rect(self.canvas, bounds).intersect(self.canvas);
                let own = self.look.size(scene.part(case));
                let with_note = |note: String, color: Color32| {
                    let seen = say!("canvas-size-noted", size = &*called, note = &*note);
                    (rect, seen, color, told(noted(&note)))
                };
                if drawn.is_past {
                    let note = say!("canvas-not-drawn", size = &*called);
                    (rect, say!("canvas-as-it-was", note = &*note), self.look.error, past(note))
                } else if drawn.untrue {
                    with_note(say!("canvas-not-true"), self.look.error)
                } else if scene.step_fails(&slot.name) {
                    with_note(say!("canvas-step-fails"), self.look.error)
                } else if !drawn.is_whole && slot.is_piece {
                    with_note(say!("canvas-open"), self.look.warning)
                } else {
                    (rect, called.clone(), own, told(called.clone()))
                }
            }
            None if is_empty(scene, &slot.name) => {
                let note = say!("canvas-empty");
                (seen, note.clone(), self.look.soft, told(note))
            }
            None => {
                let note = say!("canvas-not-drawn", size = &*called);
                self.empty(room, &note);
                (seen, note.clone(), self.look.error, past(note))
            }
        };
        // Under the piece, or as near to that as the sheet allows.
        let half = 60.0_f32.min(self.canvas.width() / 2.0);
        let at = pos2(
            room.center().x.min(self.canvas.right() - half).max(self.canvas.left() + half),
            (room.bottom() + 8.0).min(self.canvas.bottom() - 66.0).max(self.canvas.top() + 8.0),
        );
        let widest = (room.width() + NAME_BESIDE).max(NAME_LEAST);
        let lines = |font, width| {
            let mut words = LayoutJob::simple(slot.name.clone(), font, self.look.ink, width);
            (words.wrap.max_rows, words.halign) = (2, Align::Center);
            self.painter.layout_job(words)
        };
        let mut name = lines(letters(look::LARGE), f32::INFINITY);
        if name.size().x > widest {
            // Smaller, and in two lines, so that it does not lie on that of the neighbour.
            name = lines(letters(look::SMALL), widest);
        }
        let mut words = LayoutJob::simple(second, letters(look::SMALL), color, room.width().max(NARROWEST));
        words.halign = Align::Center;
        let second = self.painter.layout_job(words);
        let size = vec2(name.size().x.max(second.size().x), name.size().y + second.size().y);
        let ground = Align2::CENTER_TOP.anchor_size(at, size);
        self.painter.rect_filled(ground.expand2(vec2(6.0, 2.0)), 4.0, self.look.sheet.gamma_multiply(0.85));
        let below = at + vec2(0.0, name.size().y);
        self.painter.galley(at, name, self.look.ink);
        self.painter.galley(below, second, color);
        self.handle(ui, &slot.name, ground, wishes);
        let rect = if rect.is_positive() { rect } else { Rect::from_center_size(at, vec2(20.0, 20.0)) };
        let response = ui.interact(rect, Id::unique(("piece", piece)), Sense::hover());
        response.widget_info(|| WidgetInfo::labeled(Role::GraphicsObject, true, &spoken));
    }

    /// The name of a piece is what it is moved by on the table.
    fn handle(&self, ui: &Ui, name: &str, ground: Rect, wishes: &mut Vec<Wish>) {
        let response = ui.interact(ground.intersect(self.canvas), Id::unique(("move", name)), Sense::click_and_drag());
        response.widget_info(|| WidgetInfo::labeled(Role::Button, true, say!("canvas-move-piece", piece = name)));
        let table = |p: Pos2| self.view.table_from_screen(self.canvas, p);
        if response.hovered() {
            ui.ctx().set_cursor_icon(egui::CursorIcon::Grab);
        }
        if response.drag_started() {
            let from = ui.input(|i| i.pointer.press_origin()).unwrap_or(ground.center());
            wishes.push(Wish::OnTableFrom(name.to_owned(), table(from)));
        }
        if let (true, Some(now)) = (response.dragged(), response.interact_pointer_pos()) {
            ui.ctx().set_cursor_icon(egui::CursorIcon::Grabbing);
            wishes.push(Wish::OnTableTo(table(now)));
        }
        if response.drag_stopped() {
            wishes.push(Wish::Release);
        }
        if response.clicked() {
            wishes.push(Wish::Part(Part::Piece(name.to_owned())));
        }
    }

    /// The place of a piece that has no shape.
    fn empty(&self, room: Rect, note: &str) {
        let corners = [room.left_top(), room.right_top(), room.right_bottom(), room.left_bottom(), room.left_top()];
        let stroke = Stroke::new(1.0, self.look.soft);
        self.painter.extend(Shape::dashed_line(&corners, stroke, DASHES.0, DASHES.1));
        let words = format!("{note};\n{}", say!("canvas-why-not"));
        let galley = self.painter.layout(words, letters(look::TEXT), self.look.ink, (room.width() - 16.0).max(80.0));
        if room.size().min_elem() > 16.0 && galley.size().x <= room.width() && galley.size().y <= room.height() {
            self.painter.galley(room.center() - galley.size() / 2.0, galley, self.look.ink);
        }
    }

    /// The scale of the grid, and how to move about; or that there is nothing to see.
    pub fn foot(&self, scene: &Scene, step: f64) {
        let text = |at: Pos2, align: Align2, words: String| {
            let galley = self.painter.layout_no_wrap(words, letters(look::SMALL), self.look.soft);
            let rect = align.anchor_size(at, galley.size());
            self.painter.rect_filled(rect.expand(3.0), 4.0, self.look.sheet.gamma_multiply(0.85));
            self.painter.galley(rect.min, galley, self.look.soft);
        };
        let edge = self.canvas.shrink(12.0);
        let unit = scene.draft().display;
        let grid = say!("canvas-grid", step = texts::owned(|| texts::length(step, unit)));
        text(edge.right_bottom(), Align2::RIGHT_BOTTOM, grid);
        if self.canvas.height() > LOW && self.canvas.width() > WIDE {
            text(edge.left_bottom(), Align2::LEFT_BOTTOM, say!("canvas-hint"));
        }
        let nothing = match scene.cases() {
            None => say!("canvas-not-computed"),
            Some(cases) if cases.list.is_empty() => say!("canvas-no-sizes"),
            Some(_) if scene.shapes.slots.is_empty() => say!("canvas-no-pieces"),
            Some(_) => return,
        };
        self.painter.text(self.canvas.center(), Align2::CENTER_CENTER, nothing, letters(look::LARGE), self.look.ink);
    }
}

/// Whether nothing was put in a piece or drawing yet.
fn is_empty(scene: &Scene, name: &str) -> bool {
    let draft = scene.draft();
    let piece = draft.pieces.iter().find(|p| p.name == name);
    let drawing = draft.drawings.iter().find(|d| d.name == name);
    piece.is_none_or(|p| p.points.is_empty() && p.edges.is_empty()) && drawing.is_none_or(|d| d.points.is_empty())
}
