//! How large the screen really is: px in a millimetre, measured by the person with a ruler or a card.

use egui::{Context, CornerRadius, Role, Sense, Stroke, StrokeKind, Ui, WidgetInfo, vec2};

use super::look::Look;
use super::own::OwnWish;
use super::state::{Room, Wish};
use super::view::View;
use super::{Window, canvas};
use crate::session::Preferences;
use crate::texts::say;

/// px to the inch of a screen that was not measured.
const USUAL: f64 = 96.0;
/// Width and height of a bank card, mm: ISO/IEC 7810, ID-1.
pub(super) const CARD: (f64, f64) = (85.60, 53.98);

/// Points of the window in a millimetre of the screen.
pub(super) fn points_per_mm(ctx: &Context, preferences: &Preferences) -> f64 {
    match preferences.screen {
        0 => USUAL / 25.4 / f64::from(ctx.zoom_factor()),
        measured => f64::from(measured) / 1_000.0 / f64::from(ctx.pixels_per_point()),
    }
}

/// The preferences of a screen that has `by` times as many px in a millimetre.
fn changed(ctx: &Context, preferences: &Preferences, by: f64) -> Preferences {
    let per_mm = points_per_mm(ctx, preferences) * f64::from(ctx.pixels_per_point()) * by;
    Preferences { screen: (per_mm * 1_000.0).round() as u32, ..preferences.clone() }
}

/// A bar that is so long, by what is known of the screen.
pub(super) fn bar(ui: &mut Ui, look: &Look, mm: f64, preferences: &Preferences) {
    let long = (mm * points_per_mm(ui.ctx(), preferences)) as f32;
    let (bar, response) = ui.allocate_exact_size(vec2(long, 14.0), Sense::hover());
    response
        .widget_info(|| WidgetInfo::labeled(Role::GraphicsObject, true, say!("screen-bar", length = mm.to_string())));
    let line = Stroke::new(1.0, look.ink);
    ui.painter().hline(bar.x_range(), bar.center().y, line);
    for x in [bar.left(), bar.right()] {
        ui.painter().vline(x, bar.y_range(), line);
    }
}

/// The outline of a bank card, as large as one by what is known of the screen.
pub(super) fn card(ui: &mut Ui, look: &Look, preferences: &Preferences) {
    let per_mm = points_per_mm(ui.ctx(), preferences);
    let size = vec2((CARD.0 * per_mm) as f32, (CARD.1 * per_mm) as f32);
    let (card, response) = ui.allocate_exact_size(size, Sense::hover());
    response.widget_info(|| WidgetInfo::labeled(Role::GraphicsObject, true, say!("screen-card")));
    let line = Stroke::new(1.0, look.ink);
    ui.painter().rect(card, CornerRadius::same(10), look.desk, line, StrokeKind::Inside);
}

/// Buttons that make bar and card shorter or longer.
pub(super) fn buttons(ui: &mut Ui, preferences: &Preferences, wishes: &mut Vec<Wish>) {
    for (word, by) in [
        (say!("screen-shorter"), 0.99),
        (say!("screen-longer"), 1.01),
        (say!("screen-hair-shorter"), 0.999),
        (say!("screen-hair-longer"), 1.001),
    ] {
        if ui.small_button(word).clicked() {
            wishes.push(Wish::Own(OwnWish::Prefer(changed(ui.ctx(), preferences, by))));
        }
    }
}

impl Window {
    /// Shows the table as large as it is; all of it, where that is shown already.
    pub(super) fn true_scale(&mut self, ctx: &Context) {
        let scale = points_per_mm(ctx, &self.shown.own.preferences);
        let view = canvas::view_of(&self.scene, &self.shown, self.shown.sheet);
        let is_true = self.shown.room == Room::Table && self.shown.view.is_some_and(|v| v.scale == scale);
        self.shown.room = Room::Table;
        if is_true {
            self.shown.view = None;
            return;
        }
        self.shown.view = Some(View { scale, ..view });
        match self.shown.own.preferences.screen {
            0 => self.tell(say!("screen-usual")),
            _ => self.tell(say!("screen-measured")),
        }
    }
}
