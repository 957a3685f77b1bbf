//! Pointer and keys over a plan: pieces are taken, pushed and chosen, the cloth is moved and seen nearer.

use egui::{CursorIcon, EventFilter, Id, Key, Modifiers, Pos2, Ui};
use kurbo::{Point, Vec2};

use super::fill::inside;
use super::plan::{Spread, id_of};
use super::{ClothShown, ClothWish};
use crate::app::state::Wish;
use crate::app::view::{View, factor};
use crate::output::lay::Lay;
use crate::session::Act;

/// The piece at a place of the table, the one painted last first.
pub(super) fn piece_at(cloth: &ClothShown, lay: &Lay, spreads: &[Spread], at: Point) -> Option<(usize, usize)> {
    let mut painted = cloth.painted.borrow_mut();
    for (s, layout) in lay.layouts.iter().enumerate() {
        for (i, piece) in layout.laid.iter().enumerate().rev() {
            let own = at - spreads[s].origin - Vec2::new(piece.x, piece.y);
            if inside(&painted.of(lay, s, piece).outline, own) {
                return Some((s, i));
            }
        }
    }
    None
}

/// Keys of the piece that has the focus.
pub(super) fn keys(ui: &Ui, id: Id, wishes: &mut Vec<Wish>) {
    let filter = EventFilter { horizontal_arrows: true, vertical_arrows: true, ..Default::default() };
    ui.memory_mut(|m| m.set_focus_lock_filter(id, filter));
    let pressed = |key: Key| ui.input_mut(|i| i.consume_key(Modifiers::NONE, key));
    for (key, along, across) in [
        (Key::ArrowLeft, -1.0, 0.0),
        (Key::ArrowRight, 1.0, 0.0),
        (Key::ArrowUp, 0.0, -1.0),
        (Key::ArrowDown, 0.0, 1.0),
    ] {
        if pressed(key) {
            wishes.push(Wish::Cloth(ClothWish::Push(along, across)));
        }
    }
    for (key, act) in [(Key::R, Act::TurnHalf), (Key::O, Act::TurnOver), (Key::L, Act::LockPiece)] {
        if pressed(key) {
            wishes.push(Wish::Act(act));
        }
    }
}

/// Drag a piece to carry it; beside the pieces the cloth moves; scroll to come nearer.
pub(super) fn hand(
    ui: &Ui,
    response: &egui::Response,
    cloth: &ClothShown,
    lay: &Lay,
    spreads: &[Spread],
    view: View,
    wishes: &mut Vec<Wish>,
) {
    let canvas = response.rect;
    let table = |p: Pos2| view.table_from_screen(canvas, p);
    let origin = ui.input(|i| i.pointer.press_origin());
    let taken = origin.and_then(|p| piece_at(cloth, lay, spreads, table(p)));
    let primary = response.dragged_by(egui::PointerButton::Primary);
    if response.drag_started()
        && let (Some(own), Some(from), true) = (taken, origin, primary)
    {
        // However long the cloth gets, it stays where it is under the hand.
        wishes.push(Wish::Cloth(ClothWish::Look(Some(view))));
        wishes.push(Wish::Cloth(ClothWish::Take(own, table(from) - spreads[own.0].origin)));
        ui.memory_mut(|m| m.request_focus(id_of(own.0, own.1)));
    }
    if let Some(carried) = cloth.carried {
        ui.ctx().set_cursor_icon(CursorIcon::Grabbing);
        if let Some(now) = response.interact_pointer_pos().filter(|_| response.dragged()) {
            wishes.push(Wish::Cloth(ClothWish::Carry(table(now) - spreads[carried.stretch].origin)));
        }
        if response.drag_stopped() {
            wishes.push(Wish::Cloth(ClothWish::LetGo));
        }
        return;
    }
    if response.clicked() {
        let at = response.interact_pointer_pos().and_then(|p| piece_at(cloth, lay, spreads, table(p)));
        wishes.push(Wish::Cloth(ClothWish::Piece(at)));
        if let Some((s, i)) = at {
            ui.memory_mut(|m| m.request_focus(id_of(s, i)));
        }
    }
    if response.double_clicked() {
        wishes.push(Wish::Cloth(ClothWish::Look(None)));
        return;
    }
    let mut wanted = view;
    if response.dragged() && !response.drag_started() {
        ui.ctx().set_cursor_icon(CursorIcon::Grabbing);
        wanted = wanted.pushed(response.drag_delta());
    }
    if let Some(at) = ui.input(|i| i.pointer.hover_pos()).filter(|_| response.contains_pointer()) {
        let (scroll, pinch) = ui.input(|i| (i.smooth_scroll_delta().y, f64::from(i.zoom_delta())));
        if scroll != 0.0 || pinch != 1.0 {
            wanted = wanted.zoomed(canvas, at, factor(scroll) * pinch);
        }
    }
    if wanted != view {
        wishes.push(Wish::Cloth(ClothWish::Look(Some(wanted))));
    }
}
