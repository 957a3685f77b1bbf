//! The sheet in the middle: pieces in all sizes, what of them can be pulled, and how their seams stand.

mod bends;
mod flat;
pub(super) mod grips;
mod hand;
mod near;
mod other;
mod pencil;
mod sheet;
pub(super) mod tags;
mod tape;
mod underlay;

use egui::{CornerRadius, CursorIcon, Rect, Role, Sense, Stroke, StrokeKind, Ui, WidgetInfo, vec2};
use kurbo::Vec2;

pub(super) use flat::{Flat, straight};
pub(super) use tags::State;

use super::look::{self, Look};
use super::scene::Scene;
use super::state::{Grabbed, Shown, Wish};
use super::view::{View, factor};
use crate::document::Part;
use crate::texts::say;
use sheet::Sheet;

/// Paints the sheet and says where it is. `asked` is the case that the pointer asks for in the strip.
pub(super) fn show(
    ui: &mut Ui,
    look: &Look,
    scene: &Scene,
    shown: &Shown,
    asked: Option<usize>,
    wishes: &mut Vec<Wish>,
) -> Rect {
    let response = ui.allocate_response(ui.available_size(), Sense::click_and_drag());
    let canvas = response.rect;
    if !canvas.is_positive() {
        return canvas; // a window so low that strip and findings fill it
    }
    let view = view_of(scene, shown, canvas);
    ui.painter().rect(canvas, CornerRadius::same(6), look.sheet, Stroke::new(1.0, look.border), StrokeKind::Inside);
    let crowded = shown.behind && scene.shapes.behind.len() * scene.shapes.slots.len() > MANY;
    let sheet = Sheet { painter: ui.painter_at(canvas.shrink(1.0)), canvas, view, look, crowded };
    let step = sheet.grid(scene.draft().display);
    let chosen = scene.case_of(&shown.case);
    underlay::paint(ui, &sheet, scene, shown, chosen);
    other::paint(&sheet, scene, shown, chosen);
    paint_pieces(&sheet, scene, shown, chosen, asked);
    response
        .widget_info(|| WidgetInfo::labeled(Role::Canvas, true, say!("canvas-pieces", size = scene.called(chosen))));
    let near = near::edge_under(ui, &sheet, scene, shown, chosen, &response)
        .filter(|_| shown.pencil.is_none() && shown.tape.is_none());
    if let Some(near) = &near {
        sheet.edge(scene, chosen, near, look.touched_line());
    }
    if let Some(part) = &shown.part {
        sheet.edge(scene, chosen, part, look.chosen_line());
    }
    for piece in 0..scene.shapes.slots.len() {
        sheet.name(ui, scene, piece, chosen, wishes);
    }
    loose_points(&sheet, scene, shown, chosen);
    // Tags would stand in the way of what is in the hand, and of combs.
    if !shown.bends && shown.pencil.is_none() && shown.tape.is_none() {
        tags::show(ui, &sheet, scene, shown, chosen, wishes);
    }
    if shown.tape.is_some() {
        tape::show(ui, &sheet, scene, shown, chosen, &response, wishes);
        sheet.foot(scene, step);
        steer(ui, &response, view, false, wishes);
        return canvas;
    }
    if shown.pencil.is_some() {
        pencil::show(ui, &sheet, scene, shown, chosen, &response, wishes);
        sheet.foot(scene, step);
        steer(ui, &response, view, true, wishes);
        return canvas;
    }
    // The bar that tells of another draft has its own.
    if shown.versus.is_none() {
        let corner = Rect::from_min_size(canvas.right_top() + vec2(-36.0, 10.0), vec2(26.0, 24.0));
        let mut child = ui.new_child(egui::UiBuilder::new().max_rect(corner));
        crate::app::help::question(&mut child, &say!("canvas-table"), "table", wishes);
    }
    if let Some(wanted) = shown.offered.as_ref().filter(|o| o.wants_name && shown.typing.is_some()) {
        let at = ui.input(|i| i.pointer.hover_pos()).filter(|_| response.contains_pointer());
        let name = at.and_then(|at| near::name_under(&sheet, scene, chosen, at, wanted.frame()));
        if shown.named != name {
            wishes.push(Wish::Pointed(name.clone()));
        }
        sheet.foot(scene, step);
        if let (Some(name), Some(at)) = (name, at) {
            sheet.word_at(at, &say!("canvas-puts-name", name));
            return canvas;
        }
    }
    other::bar(ui, &sheet, scene, shown, chosen, wishes);
    let on_grip = grips::show(ui, &sheet, scene, shown, chosen, wishes);
    if shown.bends {
        bends::show(ui, &sheet, scene, shown, chosen);
    }
    underlay::show(ui, &sheet, scene, shown, chosen, wishes);
    sheet.foot(scene, step);
    let on_edge = (!on_grip || shown.held.is_some())
        && pulls_edge(ui, &sheet, (scene, shown, chosen), &response, near.as_ref(), wishes);
    if !on_grip && !on_edge {
        if shown.hint.is_some() && shown.held.is_none() && response.contains_pointer() {
            wishes.push(Wish::Hover(None));
        }
        steer(ui, &response, view, false, wishes);
        if response.clicked() {
            wishes.push(near.map_or(Wish::Nothing, Wish::Part));
        }
    }
    canvas
}

/// Points of pieces that have no line yet: without them nothing of such a piece would be seen while it is not chosen.
fn loose_points(sheet: &Sheet<'_>, scene: &Scene, shown: &Shown, case: usize) {
    let Some(model) = scene.model() else { return };
    let frames = model.plan.frames().iter().enumerate();
    for (i, frame) in frames.filter(|(_, f)| f.edges.is_empty() && f.lines.is_empty() && shown.frame() != Some(&f.name))
    {
        for grip in grips::of_frame(model, case, &frame.name) {
            let at = sheet.view.screen_from_table(sheet.canvas, grip.place + scene.shapes.shift(case, i));
            grips::mark(sheet, &grip, at, false);
        }
    }
}

/// Whether the chosen edge is pulled, or the pointer lies on it.
fn pulls_edge(
    ui: &Ui,
    sheet: &Sheet<'_>,
    (scene, shown, case): (&Scene, &Shown, usize),
    response: &egui::Response,
    near: Option<&Part>,
    wishes: &mut Vec<Wish>,
) -> bool {
    let table = |p: egui::Pos2| sheet.view.table_from_screen(sheet.canvas, p);
    let held = shown.held.is_some();
    // What was pressed counts, not where the pointer has come since.
    let pressed = ui
        .input(|i| i.pointer.any_down().then(|| i.pointer.press_origin()))
        .map(|p| p.filter(|p| sheet.canvas.contains(*p)));
    let chosen = shown.part.as_ref().filter(|p| matches!(p, Part::Inner(..)) && !held);
    let edge = chosen.filter(|chosen| match pressed {
        None => near == Some(*chosen),
        Some(at) => at.and_then(|at| near::part_at(sheet, scene, case, at)).as_ref() == Some(*chosen),
    });
    if let (Some(edge), Some(Some(from)), true) = (edge, pressed, response.drag_started()) {
        wishes.push(Wish::Grab(Grabbed::Edge(edge.clone()), table(from)));
    }
    if let (true, Some(now)) = (held && response.dragged(), response.interact_pointer_pos()) {
        wishes.push(Wish::PullTo(table(now), ui.input(|i| i.modifiers.shift)));
    }
    if held && response.drag_stopped() {
        wishes.push(Wish::Release);
    }
    if edge.is_some() {
        ui.ctx().set_cursor_icon(CursorIcon::Grab);
    }
    held || edge.is_some() && (response.dragged() || response.drag_started())
}

/// The part of the table that is seen.
pub(super) fn view_of(scene: &Scene, shown: &Shown, canvas: Rect) -> View {
    shown.view.unwrap_or_else(|| View::fitting(whole(scene, shown), canvas))
}

/// The room that is seen where all is to be seen; a first point alone does not fill the sheet.
fn whole(scene: &Scene, shown: &Shown) -> kurbo::Rect {
    const LEAST: f64 = 400.0;
    let rooms = [scene.shapes.fit(), underlay::room(scene, shown)];
    let room = rooms.into_iter().flatten().reduce(|a, b| a.union(b)).unwrap_or(kurbo::Rect::ZERO);
    let (x, y) = ((LEAST - room.width()).max(0.0), (LEAST - room.height()).max(0.0));
    room.inflate(x / 2.0, y / 2.0)
}

fn paint_pieces(sheet: &Sheet<'_>, scene: &Scene, shown: &Shown, chosen: usize, asked: Option<usize>) {
    let look = sheet.look;
    for piece in 0..scene.shapes.slots.len() {
        let others = scene.shapes.behind.iter().filter(|c| shown.behind && **c != chosen && Some(**c) != asked);
        for case in others {
            sheet.piece(scene, (*case, piece), look::THIN, look.faded(look.size(scene.part(*case))));
        }
        if let Some(case) = asked.filter(|c| shown.behind && *c != chosen) {
            sheet.piece(scene, (case, piece), look::ASKED, look.size(scene.part(case)));
        }
        if let Some(ghost) = shown.held.as_ref().and_then(|h| h.ghost.get(piece)) {
            let shift = scene.shapes.slots[piece].shift + ghost.stack;
            sheet.drawn(scene, ghost, shift, look::THIN, look.soft, true);
        }
        sheet.piece(scene, (chosen, piece), look::STRONG, look.size(scene.part(chosen)));
        sheet.cut(scene, (chosen, piece), look.size(scene.part(chosen)));
    }
}

/// Drag to move, scroll to zoom, double click to see all. While the pencil draws, its button is its own: another one moves.
fn steer(ui: &Ui, response: &egui::Response, view: View, drawing: bool, wishes: &mut Vec<Wish>) {
    if response.double_clicked() && !drawing {
        wishes.push(Wish::Look(None));
        return;
    }
    let mut wanted = view;
    let own = drawing && response.dragged_by(egui::PointerButton::Primary);
    if response.dragged() && !own {
        ui.ctx().set_cursor_icon(CursorIcon::Grabbing);
        // The way before it was clear that this is a drag counts too.
        let origin = ui.input(|i| i.pointer.press_origin()).filter(|_| response.drag_started());
        let by = origin.zip(response.interact_pointer_pos()).map_or(response.drag_delta(), |(from, to)| to - from);
        wanted = wanted.pushed(by);
    }
    // Pieces lie on the sheet: the pointer is over it also where it is over one of them.
    if let Some(at) = ui.input(|i| i.pointer.hover_pos()).filter(|_| response.contains_pointer()) {
        let (scroll, pinch) = ui.input(|i| (i.smooth_scroll_delta().y, f64::from(i.zoom_delta())));
        if scroll != 0.0 || pinch != 1.0 {
            wanted = wanted.zoomed(response.rect, at, factor(scroll) * pinch);
        }
    }
    if wanted != view {
        wishes.push(Wish::Look(Some(wanted)));
    }
}

/// With more outlines than this thin lines are drawn without soft edges.
const MANY: usize = 200;
/// The millimetres that a key pushes by.
pub(super) const NUDGE: f64 = 1.0;

/// What a push by keys is, mm.
pub(super) fn nudge(right: f64, down: f64, far: bool) -> Vec2 {
    Vec2::new(right, down) * NUDGE * if far { 10.0 } else { 1.0 }
}
