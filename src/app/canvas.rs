//! The canvas: pieces beside each other, all sizes over each other, the chosen one strong.

use eframe::egui::{self, Align2, FontId, Pos2, Rect, Role, Sense, Shape, Stroke, Vec2, WidgetInfo};

use super::look;
use super::shown::{Drawn, Shown};

/// How much of the canvas stays free around what is fitted.
const RIM: f32 = 36.0;
/// Least and most pixels for a millimetre.
const ZOOM: std::ops::RangeInclusive<f32> = 0.02..=40.0;

/// Where one looks: pixels for a millimetre, and the canvas point at the panel's corner.
pub(super) struct Canvas {
    zoom: f32,
    corner: Vec2,
    /// To be fitted at the next frame.
    unfitted: bool,
    /// The panel's size for which it was fitted; a window that grows is fitted again until the person moves the view.
    fitted_for: Option<Vec2>,
}

impl Default for Canvas {
    fn default() -> Self {
        Self { zoom: 1.0, corner: Vec2::ZERO, unfitted: true, fitted_for: None }
    }
}

impl Canvas {
    /// Shows everything at the next frame.
    pub fn fit(&mut self) {
        self.unfitted = true;
    }

    fn fit_into(&mut self, room: Rect, shown: &Shown) {
        let all = shown.bounds();
        let free = room.size() - Vec2::splat(2.0 * RIM);
        self.zoom = (free.x / all.width() as f32).min(free.y / all.height() as f32).clamp(*ZOOM.start(), *ZOOM.end());
        let size = Vec2::new(all.width() as f32, all.height() as f32) * self.zoom;
        let left = (room.size() - size) * 0.5;
        self.corner = Vec2::new(all.x0 as f32, all.y0 as f32) - left / self.zoom;
        self.unfitted = false;
        self.fitted_for = Some(room.size());
    }

    /// Draws, and moves the view: drag to push, scroll to zoom at the pointer.
    pub fn show(&mut self, ui: &mut egui::Ui, shown: &Shown, others: bool) {
        let (room, response) = ui.allocate_exact_size(ui.available_size(), Sense::click_and_drag());
        if self.unfitted || self.fitted_for.is_some_and(|f| f != room.size()) {
            self.fit_into(room, shown);
        }
        if response.dragged() {
            self.corner -= response.drag_delta() / self.zoom;
            self.fitted_for = None;
        }
        if let Some(pointer) = response.hover_pos() {
            let (scroll, pinch) = ui.input(|i| (i.smooth_scroll_delta().y, i.zoom_delta()));
            let factor = pinch * (scroll * 0.003).exp2();
            if factor != 1.0 {
                let under = self.corner + (pointer - room.min) / self.zoom;
                self.zoom = (self.zoom * factor).clamp(*ZOOM.start(), *ZOOM.end());
                self.corner = under - (pointer - room.min) / self.zoom;
                self.fitted_for = None;
            }
        }
        let paint = ui.painter_at(room);
        let colours = look::colours(ui.visuals().dark_mode);
        paint.rect_filled(room, 4.0, colours.paper);
        let screen = |p: &[f64; 2]| room.min + (Vec2::new(p[0] as f32, p[1] as f32) - self.corner) * self.zoom;
        if others {
            for (i, size) in shown.sizes.iter().enumerate().filter(|(i, _)| *i != shown.chosen) {
                let colour = look::size_colour(i, shown.sizes.len(), ui.visuals().dark_mode);
                for drawn in size.pieces.iter().flatten() {
                    draw(&paint, drawn, &screen, Stroke::new(0.8, colour));
                }
            }
        }
        let Some(size) = shown.sizes.get(shown.chosen) else { return };
        for (p, name) in shown.names.iter().enumerate() {
            let place = shown.rooms[p];
            let corners = [[place.x0, place.y0], [place.x1, place.y1]];
            let rect = Rect::from_two_pos(screen(&corners[0]), screen(&corners[1]));
            let state = match &size.pieces[p] {
                Some(drawn) => {
                    draw(
                        &paint,
                        drawn,
                        &screen,
                        Stroke::new(2.2, if drawn.untrue { colours.wrong } else { colours.ink }),
                    );
                    if drawn.untrue { "not true" } else { "" }
                }
                None => "cannot be computed",
            };
            let text = if state.is_empty() { name.clone() } else { format!("{name}: {state}") };
            let at = Pos2::new(rect.center().x, rect.min.y - 4.0);
            let colour = if state.is_empty() { colours.words } else { colours.wrong };
            paint.text(at, Align2::CENTER_BOTTOM, &text, FontId::proportional(15.0), colour);
            // Told to screen readers; the pointer still moves the whole canvas.
            let told = ui.interact(rect.intersect(room), egui::Id::unique(("piece", p)), Sense::hover());
            let label = format!("piece {text}, size {}", size.label);
            told.widget_info(|| WidgetInfo::labeled(Role::GraphicsObject, true, &label));
        }
    }
}

fn draw(paint: &egui::Painter, drawn: &Drawn, screen: &dyn Fn(&[f64; 2]) -> Pos2, stroke: Stroke) {
    let points = |line: &Vec<[f64; 2]>| line.iter().map(screen).collect::<Vec<Pos2>>();
    if drawn.untrue {
        paint.extend(Shape::dashed_line(&points(&drawn.outline), stroke, 8.0, 5.0));
    } else {
        paint.add(Shape::line(points(&drawn.outline), stroke));
    }
    let thin = Stroke::new((stroke.width * 0.6).max(0.8), stroke.color);
    for line in &drawn.lines {
        paint.add(Shape::line(points(line), thin));
    }
}
