//! Which edge the pointer is over.

use egui::{Response, Ui};
use kurbo::{ParamCurveNearest, Point};

use super::sheet::Sheet;
use crate::app::scene::Scene;
use crate::app::state::Shown;
use crate::compute::{FramePlan, Model};
use crate::document::{Inner, Part};

/// An edge is under the pointer when it is no further away than this, px.
const REACH: f64 = 8.0;
/// Accuracy of the distance, mm.
const ACCURACY: f64 = 0.01;

/// The edge, line or piece under the pointer, in the chosen case.
pub(super) fn edge_under(
    ui: &Ui,
    sheet: &Sheet<'_>,
    scene: &Scene,
    shown: &Shown,
    chosen: usize,
    response: &Response,
) -> Option<Part> {
    let at = ui.input(|i| i.pointer.hover_pos()).filter(|_| response.contains_pointer() && shown.held.is_none())?;
    part_at(sheet, scene, chosen, at)
}

/// The edge, line or piece at a place of the screen, in the chosen case.
pub(super) fn part_at(sheet: &Sheet<'_>, scene: &Scene, chosen: usize, at: egui::Pos2) -> Option<Part> {
    let model = scene.model()?;
    let table = sheet.view.table_from_screen(sheet.canvas, at);
    let reach = REACH / sheet.view.scale;
    let mut best: Option<(f64, Part)> = None;
    let mut inside = None;
    for (i, frame) in model.plan.frames().iter().enumerate() {
        let Some(drawn) = scene.shapes.get(chosen, i) else { continue };
        let own = table - scene.shapes.shift(chosen, i);
        if !drawn.bounds.is_some_and(|b| b.inflate(reach, reach).contains(own)) {
            continue;
        }
        for (node, inner) in edges(frame) {
            let Some(distance) = distance(model, chosen, node, own) else { continue };
            if distance <= reach && best.as_ref().is_none_or(|(least, _)| distance < *least) {
                let name = model.plan.nodes[node as usize].part.edge.to_string();
                best = Some((distance, Part::Inner(frame.name.to_string(), inner, name)));
            }
        }
        if kurbo::Shape::contains(&drawn.outline, own) {
            inside = Some(Part::Piece(frame.name.to_string()));
        }
    }
    best.map(|(_, part)| part).or(inside)
}

/// The name of the point or edge under the pointer, as a formula in this frame would write it.
pub(super) fn name_under(
    sheet: &Sheet<'_>,
    scene: &Scene,
    case: usize,
    at: egui::Pos2,
    frame: Option<&str>,
) -> Option<String> {
    let model = scene.model()?;
    let table = sheet.view.table_from_screen(sheet.canvas, at);
    let reach = REACH / sheet.view.scale;
    // Points lie on edges: they come first.
    let mut best: Option<(bool, f64, u32)> = None;
    for (i, own) in model.plan.frames().iter().enumerate() {
        let here = table - scene.shapes.shift(case, i);
        let points = own.points.iter().map(|node| (true, *node));
        for (is_edge, node) in points.chain(edges(own).map(|(node, _)| (false, node))).map(|(p, n)| (!p, n)) {
            let far = match is_edge {
                true => distance(model, case, node, here),
                false => model.item(case, node).and_then(|i| i.point()).map(|p| (Point::new(p.x, p.y) - here).hypot()),
            };
            let Some(far) = far.filter(|f| *f <= reach) else { continue };
            if best.is_none_or(|(edge, least, _)| (is_edge, far) < (edge, least)) {
                best = Some((is_edge, far, node));
            }
        }
    }
    let (_, _, node) = best?;
    let trial = crate::compute::Trial::new(scene.draft(), &model.plan);
    trial.known(frame).into_iter().find(|(_, n, _)| *n == node).map(|(name, ..)| name)
}

/// Edges and lines of a frame.
pub(super) fn edges(frame: &FramePlan) -> impl Iterator<Item = (u32, Inner)> {
    let lines = frame.lines.iter().map(|l| (*l, Inner::Line));
    frame.edges.iter().map(|e| (*e, Inner::Edge)).chain(lines)
}

fn distance(model: &Model, case: usize, node: u32, at: Point) -> Option<f64> {
    let path = model.item(case, node)?.edge()?.curve.to_path();
    path.segments().map(|s| s.nearest(at, ACCURACY).distance_sq).reduce(f64::min).map(f64::sqrt)
}
