//! How edges bend: a comb of short lines square to each, as long as it bends there, and the bend at each joint.

use egui::{Align2, Id, Rect, Role, Sense, Stroke, Ui, WidgetInfo, vec2};
use kurbo::{ParamCurve, ParamCurveCurvature, ParamCurveDeriv, PathSeg, Point, Vec2};

use super::near::edges;
use super::sheet::Sheet;
use crate::app::look::{self, letters};
use crate::app::scene::Scene;
use crate::app::state::Shown;
use crate::base::tolerance;
use crate::compute::{FramePlan, Model};
use crate::curves::Pt;
use crate::document::{Inner, Part};
use crate::texts::{self, say};

/// Lines of the comb on each segment.
const TEETH: usize = 24;
/// The longest line, px.
const LONGEST: f64 = 46.0;

/// Paints combs on the chosen edge, or on all edges of the chosen piece.
pub(super) fn show(ui: &Ui, sheet: &Sheet<'_>, scene: &Scene, shown: &Shown, case: usize) {
    let (Some(frame), Some(model)) = (shown.frame(), scene.model()) else { return };
    let (Some(slot), Some(plan)) = (scene.shapes.slot(frame), model.plan.frames().iter().find(|f| *f.name == *frame))
    else {
        return;
    };
    let only = match &shown.part {
        Some(Part::Inner(_, Inner::Edge | Inner::Line, name)) => Some(name.as_str()),
        _ => None,
    };
    let shift = scene.shapes.shift(case, slot);
    let mut all: Vec<(String, Vec<PathSeg>)> = Vec::new();
    for (node, _) in edges(plan) {
        let name = model.plan.nodes[node as usize].part.edge.to_string();
        let Some(shape) = model.item(case, node).and_then(|i| i.edge()).filter(|_| only.is_none_or(|o| o == name))
        else {
            continue;
        };
        all.push((name, shape.curve.to_path().segments().collect()));
    }
    let teeth: Vec<Vec<(Point, Vec2, f64)>> = all.iter().map(|(_, segments)| comb(segments)).collect();
    // All combs to one scale, so that edges can be compared.
    let most = teeth.iter().flatten().map(|t| t.2.abs()).fold(0.0, f64::max);
    let unit = scene.draft().display;
    let screen = |p: Point| sheet.view.screen_from_table(sheet.canvas, p + shift);
    let line = Stroke::new(1.0, sheet.look.note);
    for ((name, segments), comb) in all.iter().zip(&teeth) {
        let tips: Vec<_> = comb
            .iter()
            .map(|(at, square, bend)| {
                let long = if most > 0.0 { bend / most * LONGEST } else { 0.0 };
                screen(*at) + vec2((square.x * long) as f32, (square.y * long) as f32)
            })
            .collect();
        for ((at, _, bend), tip) in comb.iter().zip(&tips) {
            if bend.abs() > tolerance::EQUAL {
                sheet.painter.line_segment([screen(*at), *tip], line);
            }
        }
        sheet.painter.add(egui::Shape::line(tips, line));
        let own = comb.iter().map(|t| t.2.abs()).fold(0.0, f64::max);
        let tightest = match own > tolerance::EQUAL {
            true => say!("canvas-tightest", radius = texts::owned(|| texts::length(1.0 / own, unit))),
            false => say!("canvas-straight"),
        };
        let joints: Vec<(Point, f64)> = segments.windows(2).filter_map(|p| joint(&p[0], &p[1])).collect();
        let words = joints.iter().map(|(_, bend)| say!("canvas-bends-at-joint", angle = degrees(*bend)));
        let words = std::iter::once(tightest.clone()).chain(words).collect::<Vec<_>>().join(", ");
        let told = say!("canvas-curvature", edge = name, words);
        for (at, angle) in &joints {
            let word = match *angle < SMOOTH {
                true => format!("✓ {}", say!("canvas-smooth")),
                false => format!("▲ {}", say!("canvas-bends", angle = degrees(*angle))),
            };
            let color = if *angle < SMOOTH { sheet.look.soft } else { sheet.look.warning };
            sheet.painter.text(screen(*at) + vec2(10.0, 0.0), Align2::LEFT_CENTER, word, letters(look::SMALL), color);
        }
        if only.is_some() {
            corners(ui, sheet, model, plan, case, name, segments, &screen);
        }
        let Some((middle, ..)) = comb.get(comb.len() / 2) else { continue };
        let at = screen(*middle);
        if own > tolerance::EQUAL {
            sheet.painter.text(
                at + vec2(12.0, 10.0),
                Align2::LEFT_TOP,
                &tightest,
                letters(look::SMALL),
                sheet.look.note,
            );
        }
        let place = ui.interact(Rect::from_center_size(at, vec2(4.0, 4.0)), Id::unique(("bend", name)), Sense::hover());
        place.widget_info(|| WidgetInfo::labeled(Role::Label, true, &told));
    }
}

/// The tangents at both ends of an edge of the outline, and the inside angle that it makes with its neighbour there.
#[allow(clippy::too_many_arguments, reason = "one step of the painting above")]
fn corners(
    ui: &Ui,
    sheet: &Sheet<'_>,
    model: &Model,
    plan: &FramePlan,
    case: usize,
    name: &str,
    segments: &[PathSeg],
    screen: &dyn Fn(Point) -> egui::Pos2,
) {
    let called = |node: &u32| &*model.plan.nodes[*node as usize].part.edge == name;
    let Some(i) = plan.edges.iter().position(called) else { return };
    let many = plan.edges.len();
    let of = |k: usize| -> Option<Vec<PathSeg>> {
        let shape = model.item(case, plan.edges[k % many])?.edge()?;
        Some(shape.curve.to_path().segments().collect())
    };
    let (before, after) = (of(i + many - 1), of(i + 1));
    let first = before.and_then(|b| b.last().copied()).zip(segments.first().copied());
    let last = segments.last().copied().zip(after.and_then(|a| a.first().copied()));
    for (is_start, own, pair) in [(true, segments.first(), first), (false, segments.last(), last)] {
        let (Some(own), Some((into, out))) = (own, pair) else { continue };
        let Some((at, bend)) = joint(&into, &out) else { continue };
        let own = if is_start { *own } else { own.reverse() };
        let Some(way) = leaving(&own) else { continue };
        let end = screen(at);
        let far = vec2(way.x as f32, way.y as f32) * TANGENT;
        let line = Stroke::new(1.0, sheet.look.note);
        sheet.painter.extend(egui::Shape::dashed_line(&[end - far * 0.4, end + far], line, 4.0, 3.0));
        let words = say!("canvas-corner", angle = degrees(180.0 - bend));
        let called = match is_start {
            true => say!("canvas-corner-start", edge = name, words),
            false => say!("canvas-corner-end", edge = name, words),
        };
        sheet.painter.text(end + vec2(10.0, -12.0), Align2::LEFT_CENTER, &words, letters(look::SMALL), sheet.look.note);
        let spot = Rect::from_center_size(end, vec2(4.0, 4.0));
        let told = ui.interact(spot, Id::unique(("corner", name, is_start)), Sense::hover());
        told.widget_info(|| WidgetInfo::labeled(Role::Label, true, called.as_str()));
    }
}

/// An angle as it is read.
fn degrees(angle: f64) -> String {
    texts::owned(|| texts::decimal(&format!("{angle:.1}°")))
}

/// How far a tangent is drawn, px.
const TANGENT: f32 = 60.0;

/// The direction in which a segment leaves its start.
fn leaving(segment: &PathSeg) -> Option<Vec2> {
    let cubic = segment.to_cubic();
    let handles = [cubic.p1, cubic.p2, cubic.p3];
    handles.into_iter().map(|h| h - cubic.p0).find(|v| v.hypot() > tolerance::EQUAL).map(|v| v / v.hypot())
}

/// A joint that bends by less than this runs on smoothly as far as can be seen, degrees.
const SMOOTH: f64 = 0.5;

/// Places on an edge, the direction square to it (towards the outside of the bend), and how much it bends there, one over mm.
fn comb(segments: &[PathSeg]) -> Vec<(Point, Vec2, f64)> {
    let mut out = Vec::new();
    for segment in segments {
        for i in 0..=TEETH {
            let t = i as f64 / TEETH as f64;
            let (at, way, bend) = match segment {
                PathSeg::Line(l) => (l.eval(t), l.deriv().eval(t).to_vec2(), 0.0),
                PathSeg::Quad(q) => (q.eval(t), q.deriv().eval(t).to_vec2(), q.curvature(t)),
                PathSeg::Cubic(c) => (c.eval(t), c.deriv().eval(t).to_vec2(), c.curvature(t)),
            };
            let long = way.hypot();
            if long > tolerance::EQUAL && bend.is_finite() {
                out.push((at, Vec2::new(way.y, -way.x) / long, bend));
            }
        }
    }
    out
}

/// Where two segments meet and by how much the line bends there, degrees.
fn joint(before: &PathSeg, after: &PathSeg) -> Option<(Point, f64)> {
    let [Some(back), Some(on)] = [PathSeg::reverse(before), *after].map(|s| leaving(&s)) else { return None };
    let angle = Pt::new((-back).dot(on), (-back).cross(on)).angle().to_degrees().abs();
    Some((after.start(), angle))
}
