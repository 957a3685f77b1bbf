//! A small tag at each seam of the chosen piece (of all pieces where none is chosen): how its sides stand, live.

use std::collections::BTreeMap;

use egui::{Align2, CornerRadius, Id, Rect, Role, Sense, Stroke, StrokeKind, Ui, WidgetInfo, vec2};
use kurbo::Point;

use super::sheet::Sheet;
use crate::app::look::{self, letters};
use crate::app::scene::Scene;
use crate::app::state::{Shown, Wish};
use crate::base::{DisplayUnit, Severity};
use crate::compute::{Def, Model, SeamPlan};
use crate::document::Part;
use crate::finish::Limits;
use crate::proof::seam_state;
use crate::texts::{self, say};

/// Below this scale only seams that are wrong have a tag, px per mm.
const FAR: f64 = 0.45;

/// How a seam stands.
pub(in crate::app) struct State {
    /// In the chosen size, in words.
    pub words: String,
    /// In a word or two.
    pub short: String,
    /// How bad it is, in any size.
    pub bad: Option<Severity>,
    /// Whether it could be measured in the chosen size.
    pub measured: bool,
    /// Whether its words say that it is too long or too short.
    is_off: bool,
}

/// The states of all seams in a case, and whether they are off in any.
pub(in crate::app) fn states(scene: &Scene, model: &Model, case: usize) -> Vec<State> {
    let draft = scene.draft();
    let limit = Limits::of(draft, &mut Vec::new()).seam;
    let mut bad: BTreeMap<&str, Severity> = BTreeMap::new();
    for (_, finding) in scene.findings().filter(|(_, f)| !f.place.seam.is_empty()) {
        let worst = bad.entry(&finding.place.seam).or_insert(finding.severity());
        *worst = (*worst).min(finding.severity());
    }
    let one = |(i, seam): (usize, &SeamPlan)| match model.plan.has_seam(i) {
        true => state(draft.display, model, seam, case, limit, bad.get(&*seam.name).copied()),
        false => {
            let words = say!("canvas-seam-not-in-view");
            State { short: words.clone(), words, bad: None, measured: false, is_off: false }
        }
    };
    model.plan.seams.iter().enumerate().map(one).collect()
}

fn state(unit: DisplayUnit, model: &Model, seam: &SeamPlan, case: usize, limit: f64, bad: Option<Severity>) -> State {
    let mut equations = seam.stretches.iter().filter_map(|s| s.equation);
    let untrue = equations.any(|e| model.is_untrue(case, model.plan.equations[e].node));
    let measure = seam_state(model, seam, case);
    let is_off = measure.as_ref().is_some_and(|s| s.excess.abs() > limit || untrue);
    let long = |mm: f64| texts::owned(|| texts::length(mm.abs(), unit));
    let words = match &measure {
        None => say!("canvas-seam-not-measurable"),
        Some(s) if is_off && s.excess > 0.0 => say!("canvas-seam-too-long", by = long(s.excess)),
        Some(s) if is_off => say!("canvas-seam-too-short", by = long(s.excess)),
        Some(s) if s.meant == 0.0 => say!("canvas-seam-equal"),
        Some(s) if s.meant > 0.0 => say!("canvas-seam-longer", by = long(s.meant)),
        Some(s) => say!("canvas-seam-shorter", by = long(s.meant)),
    };
    let short = match &measure {
        Some(s) if !is_off && s.meant != 0.0 => format!("{}{}", if s.meant > 0.0 { "+" } else { "−" }, long(s.meant)),
        None => say!("canvas-seam-not-measured"),
        _ => words.clone(),
    };
    State { words, short, bad, measured: measure.is_some(), is_off }
}

/// Paints the tags.
pub(super) fn show(ui: &Ui, sheet: &Sheet<'_>, scene: &Scene, shown: &Shown, case: usize, wishes: &mut Vec<Wish>) {
    let Some(model) = scene.model() else { return };
    let look = sheet.look;
    // What can be pulled stays free.
    let mut taken = grip_rects(sheet, scene, shown, model, case);
    let states = scene.seams(case);
    for (seam, state) in model.plan.own_seams().filter_map(|(i, seam)| Some((seam, states.get(i)?))) {
        let is_chosen = matches!(&shown.part, Some(Part::Seam(name)) if **name == *seam.name);
        let places = places(model, seam, case);
        let own = match shown.frame() {
            Some(frame) if !is_chosen => places.iter().find(|(f, _)| f == frame),
            _ => places.first(),
        };
        let Some((frame, place)) = own else { continue };
        let Some(slot) = scene.shapes.slot(frame) else { continue };
        let at = sheet.view.screen_from_table(sheet.canvas, *place + scene.shapes.shift(case, slot));
        if !sheet.canvas.contains(at) {
            continue;
        }
        // From afar only what is wrong speaks.
        if sheet.view.scale < FAR && state.bad.is_none() && !is_chosen {
            continue;
        }
        let (sign, color) = match state.bad {
            None if !state.measured => ("?", look.soft),
            None => ("✓", look.size(Some(0.3))),
            Some(severity) => (look::sign(severity), look.severity(severity)),
        };
        let (name, told) = (&*seam.name, &*state.words);
        let words = match state.bad.is_some() && !state.is_off {
            true => say!("canvas-tag-see-proof", seam = name, state = told),
            false => say!("canvas-tag", seam = name, state = told),
        };
        let words = format!("{sign} {words}");
        let galley = sheet.painter.layout_no_wrap(words.clone(), letters(look::SMALL), look.ink);
        let mut rect = Align2::LEFT_CENTER.anchor_size(at + vec2(10.0, 0.0), galley.size() + vec2(16.0, 6.0));
        // On the other side where the sheet ends.
        if rect.right() > sheet.canvas.right() - 4.0 {
            rect = Align2::RIGHT_CENTER.anchor_size(at - vec2(10.0, 0.0), rect.size());
        }
        // Tags do not lie on each other.
        for _ in 0..8 {
            match taken.iter().find(|t| t.intersects(rect)) {
                Some(other) => rect = rect.translate(vec2(0.0, other.bottom() + 3.0 - rect.top())),
                None => break,
            }
        }
        taken.push(rect);
        let round = CornerRadius::same(look::ROUND);
        let end = if rect.left() > at.x { rect.left_center() } else { rect.right_center() };
        sheet.painter.line_segment([at, end], Stroke::new(1.0, color));
        let ground = if is_chosen { look.touched } else { look.sheet };
        sheet.painter.rect(rect, round, ground, Stroke::new(1.0, color), StrokeKind::Inside);
        sheet.painter.galley(rect.min + vec2(8.0, 3.0), galley, look.ink);
        let response = ui.interact(rect.intersect(sheet.canvas), Id::unique(("tag", &*seam.name)), Sense::click());
        let called = match (state.bad, state.measured) {
            (Some(_), _) => say!("canvas-seam-see-proof", seam = name, state = told),
            (None, true) => say!("canvas-seam-fine", seam = name, state = told),
            (None, false) => say!("canvas-seam", seam = name, state = told),
        };
        response.widget_info(|| WidgetInfo::labeled(Role::Button, true, called.as_str()));
        if response.clicked() {
            wishes.push(Wish::Part(Part::Seam(seam.name.to_string())));
        }
    }
}

/// Where points and handles of the chosen piece lie.
fn grip_rects(sheet: &Sheet<'_>, scene: &Scene, shown: &Shown, model: &Model, case: usize) -> Vec<Rect> {
    let Some((frame, slot)) = shown.frame().and_then(|f| Some((f, scene.shapes.slot(f)?))) else { return Vec::new() };
    let shift = scene.shapes.shift(case, slot);
    let grips = super::grips::of_frame(model, case, frame);
    let at = |p: Point| sheet.view.screen_from_table(sheet.canvas, p + shift);
    grips.into_iter().map(|g| Rect::from_center_size(at(g.place), vec2(14.0, 14.0))).collect()
}

/// The middle of the first edge of each side, with its frame.
fn places(model: &Model, seam: &SeamPlan, case: usize) -> Vec<(String, Point)> {
    let mut out = Vec::new();
    for side in [seam.sides[1], seam.sides[0]] {
        let Def::Side(runs) = &model.plan.nodes[side as usize].def else { continue };
        let Some(run) = runs.get(runs.len() / 2) else { continue };
        let Some(frame) = run.kind.frame().and_then(|f| model.plan.frames().get(f.0 as usize)) else { continue };
        let Ok(item) = model.evaluate(&model.plan, case, run) else { continue };
        let Some(edge) = item.edge() else { continue };
        let half = edge.curve.length() / 2.0;
        if let Some(place) = edge.curve.point_at(half) {
            out.push((frame.name.to_string(), Point::new(place.x, place.y)));
        }
    }
    out
}
