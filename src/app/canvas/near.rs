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
    let model = scene.model()?;
    let table = sheet.view.table_from_screen(sheet.canvas, at);
    let reach = REACH / sheet.view.scale;
    let mut best: Option<(f64, Part)> = None;
    let mut inside = None;
    for (i, frame) in model.plan.frames.iter().enumerate() {
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

/// Edges and lines of a frame.
pub(super) fn edges(frame: &FramePlan) -> impl Iterator<Item = (u32, Inner)> {
    let lines = frame.lines.iter().map(|l| (*l, Inner::Line));
    frame.edges.iter().map(|e| (*e, Inner::Edge)).chain(lines)
}

fn distance(model: &Model, case: usize, node: u32, at: Point) -> Option<f64> {
    let path = model.item(case, node)?.edge()?.curve.to_path();
    path.segments().map(|s| s.nearest(at, ACCURACY).distance_sq).reduce(f64::min).map(f64::sqrt)
}
