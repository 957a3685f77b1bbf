//! Which part of the table is seen: from millimetres on the table to points on the screen and back.

use egui::{Pos2, Rect as ScreenRect, Vec2 as ScreenVec};
use kurbo::{Point, Rect};

/// The least and the most that can be seen, px per mm.
const SCALES: (f64, f64) = (0.005, 40.0);
/// Room around the pieces, px: names stand in the lower one.
const AROUND: f64 = 52.0;
const UNDER: f64 = 88.0;
/// Scroll that doubles or halves, px.
const DOUBLING: f64 = 240.0;

/// A place and a scale.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct View {
    /// Pixels per millimetre.
    pub scale: f64,
    /// The point of the table that is seen at the middle of the canvas, mm.
    pub middle: Point,
}

impl View {
    /// The view in which `room` fills the canvas.
    pub fn fitting(room: Rect, canvas: ScreenRect) -> Self {
        let width = (f64::from(canvas.width()) - 2.0 * AROUND).max(1.0);
        let height = (f64::from(canvas.height()) - AROUND - UNDER).max(1.0);
        let scale = (width / room.width().max(1.0)).min(height / room.height().max(1.0)).clamp(SCALES.0, SCALES.1);
        // The names under the pieces belong to what is in the middle.
        let middle = room.center() + kurbo::Vec2::new(0.0, (UNDER - AROUND) / 2.0 / scale);
        Self { scale, middle }
    }

    /// The same, no nearer or further than can be seen.
    pub fn within_limits(self) -> Self {
        Self { scale: self.scale.clamp(SCALES.0, SCALES.1), ..self }
    }

    /// From the table to the screen.
    pub fn screen_from_table(&self, canvas: ScreenRect, p: Point) -> Pos2 {
        let off = (p - self.middle) * self.scale;
        canvas.center() + ScreenVec::new(off.x as f32, off.y as f32)
    }

    /// From the screen to the table.
    pub fn table_from_screen(&self, canvas: ScreenRect, p: Pos2) -> Point {
        let off = p - canvas.center();
        self.middle + kurbo::Vec2::new(f64::from(off.x), f64::from(off.y)) / self.scale
    }

    /// A rectangle of the table on the screen.
    pub fn screen_rect(&self, canvas: ScreenRect, r: Rect) -> ScreenRect {
        ScreenRect::from_min_max(
            self.screen_from_table(canvas, r.origin()),
            self.screen_from_table(canvas, Point::new(r.x1, r.y1)),
        )
    }

    /// Pushed along by so many pixels.
    pub fn pushed(self, by: ScreenVec) -> Self {
        let by = kurbo::Vec2::new(f64::from(by.x), f64::from(by.y)) / self.scale;
        Self { middle: self.middle - by, ..self }
    }

    /// Nearer or further by a factor; what lies under `at` stays there.
    pub fn zoomed(self, canvas: ScreenRect, at: Pos2, by: f64) -> Self {
        let scale = (self.scale * by).clamp(SCALES.0, SCALES.1);
        let kept = self.table_from_screen(canvas, at);
        Self { scale, middle: kept + (self.middle - kept) * (self.scale / scale) }
    }
}

/// The factor of so much scrolling; there and back is 1.
pub fn factor(scroll: f32) -> f64 {
    let part = f64::from(scroll.abs()) / DOUBLING;
    if scroll < 0.0 { 1.0 / (1.0 + part) } else { 1.0 + part }
}

#[cfg(test)]
mod tests {
    use super::*;
    use egui::pos2;

    const CANVAS: ScreenRect = ScreenRect::from_min_max(pos2(10.0, 80.0), pos2(1010.0, 680.0));

    #[test]
    fn all_is_seen_when_it_fits() {
        for room in [Rect::new(-50.0, 20.0, 900.0, 700.0), Rect::new(0.0, 0.0, 10.0, 4000.0), Rect::ZERO] {
            let seen = View::fitting(room, CANVAS).screen_rect(CANVAS, room);
            assert!(CANVAS.shrink(30.0).contains_rect(seen), "{room:?}: {seen:?}");
        }
    }

    #[test]
    fn what_lies_under_the_pointer_stays() {
        let view = View { scale: 0.8, middle: Point::new(120.0, -40.0) };
        let at = pos2(700.0, 130.0);
        let before = view.table_from_screen(CANVAS, at);
        for by in [1.7, 0.2, 1e9] {
            let after = view.zoomed(CANVAS, at, by);
            assert!((after.table_from_screen(CANVAS, at) - before).length() < 0.01, "{by}");
            assert!(after.scale <= SCALES.1);
        }
        assert!((factor(50.0) * factor(-50.0) - 1.0).abs() < 1e-12);
    }

    #[test]
    fn a_push_moves_the_picture_with_the_pointer() {
        let view = View { scale: 2.0, middle: Point::ZERO };
        let moved = view.pushed(egui::vec2(30.0, -8.0));
        let p = Point::new(5.0, 6.0);
        let by = moved.screen_from_table(CANVAS, p) - view.screen_from_table(CANVAS, p);
        assert!((by - egui::vec2(30.0, -8.0)).length() < 0.01, "{by:?}");
    }
}
