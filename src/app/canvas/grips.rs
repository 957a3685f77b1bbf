//! Points and handles of the chosen piece: they light up under the pointer, say their formula, and can be pulled.

use egui::text::LayoutJob;
use egui::{
    Align2, Color32, CornerRadius, CursorIcon, EventFilter, FontFamily, FontId, Id, Key, Pos2, Rect, Role, Sense,
    Shape, Stroke, TextFormat, Ui, Vec2, WidgetInfo, vec2,
};
use kurbo::Point;

use super::nudge;
use super::sheet::Sheet;
use crate::app::look::{self, letters};
use crate::app::scene::Scene;
use crate::app::state::{Grabbed, Hint, Shown, Wish};
use crate::compute::{Def, Item, Model, SegmentDef};
use crate::document::{Address, OWN_LETTER, Part};
use crate::session::Reach;
use crate::texts::say;

/// Half the side of a mark, and of the place that can be taken, px.
const HALF: f32 = 5.0;
const TAKEN: f32 = 9.0;

/// Something that can be pulled.
pub(in crate::app) struct Grippable {
    pub at: Address,
    /// For what belongs to an edge, the point that it leaves or goes to.
    beside: String,
    /// Its place, mm, in its frame.
    pub place: Point,
    /// For a handle, the point it belongs to.
    pub knot: Option<Point>,
}

impl Grippable {
    /// How it is called: `front.tip`, `front.armhole, handle leaving tip`.
    pub fn called(&self) -> String {
        let name = format!("{}.{}", self.at.part.frame().unwrap_or_default(), self.at.part.name());
        let point = self.beside.as_str();
        let what = match self.at.field {
            "leaving" => say!("card-handle-leaving", point),
            "arriving" => say!("card-handle-arriving", point),
            "centre" => say!("canvas-arc-centre", point),
            "through" => say!("canvas-way-point", number = self.at.inner + 1, point),
            _ => return name,
        };
        say!("canvas-grip", edge = name, what)
    }
}

/// Everything in a piece or drawing that can be pulled, in a case.
pub(in crate::app) fn of_frame(model: &Model, case: usize, name: &str) -> Vec<Grippable> {
    let Some(frame) = model.plan.frames().iter().find(|f| *f.name == *name) else { return Vec::new() };
    let place = |item: &Item<f64>| item.point().map(|p| Point::new(p.x, p.y)).filter(|p| p.is_finite());
    let local = |node: u32| {
        let name = &*model.plan.nodes[node as usize].part.name;
        name.split_once('.').map_or(name, |(_, l)| l).to_owned()
    };
    let mut out = Vec::new();
    for &node in &frame.points {
        let Some(at) = model.item(case, node).and_then(place) else { continue };
        let point = local(node);
        if point.contains(OWN_LETTER) {
            continue;
        }
        let own = Address::new(Part::point(name, &point), "at");
        out.push(Grippable { at: own, beside: String::new(), place: at, knot: None });
    }
    for (node, inner) in super::near::edges(frame) {
        let Some(Def::Flat { points, segments }) = model.plan.nodes.get(node as usize + 1).map(|n| &n.def) else {
            continue;
        };
        let edge = model.plan.nodes[node as usize].part.edge.to_string();
        let part = Part::Inner(name.to_owned(), inner, edge.clone());
        let evaluated = |f| model.evaluate(&model.plan, case, f).ok().as_ref().and_then(place);
        let mut add = |field: &'static str, at: usize, inner: usize, beside: u32, formula, knot: Option<Point>| {
            let Some(place) = evaluated(formula) else { return };
            let at = Address { part: part.clone(), field, at, inner };
            out.push(Grippable { at, beside: local(beside), place, knot });
        };
        for (i, segment) in segments.iter().enumerate() {
            let (from, to) = (points[i], points[i + 1]);
            let knot = |node: u32| model.item(case, node).and_then(place);
            match segment {
                SegmentDef::Curve(leaving, arriving) => {
                    add("leaving", i, 0, from, leaving, knot(from));
                    add("arriving", i, 0, to, arriving, knot(to));
                }
                SegmentDef::Arc(centre, _) => add("centre", i, 0, to, centre, None),
                SegmentDef::Smooth(through, ..) => {
                    for (k, formula) in through.iter().enumerate() {
                        add("through", i, k, to, formula, None);
                    }
                }
                SegmentDef::Straight | SegmentDef::Taken(..) => {}
            }
        }
    }
    out
}

/// Paints them and listens to them; says whether the pointer is on one.
pub(super) fn show(
    ui: &mut Ui,
    sheet: &Sheet<'_>,
    scene: &Scene,
    shown: &Shown,
    case: usize,
    wishes: &mut Vec<Wish>,
) -> bool {
    let (Some(frame), Some(model)) = (shown.frame(), scene.model()) else { return false };
    let Some(slot) = scene.shapes.slot(frame) else { return false };
    let shift = scene.shapes.shift(case, slot);
    let all = of_frame(model, case, frame);
    let at = |p: Point| sheet.view.screen_from_table(sheet.canvas, p + shift);
    for grip in &all {
        if let Some(knot) = grip.knot {
            sheet.painter.line_segment([at(knot), at(grip.place)], Stroke::new(1.0, sheet.look.handle));
        }
    }
    names(sheet, &all, &at);
    let held = shown.held.as_ref();
    let mut on_one = held.is_some();
    let mut words = None;
    for grip in &all {
        let place = at(grip.place);
        let is_held = held.is_some_and(|h| h.grip(&grip.at).is_some());
        if !is_held && !sheet.canvas.contains(place) {
            continue;
        }
        let rect = Rect::from_center_size(place, Vec2::splat(2.0 * TAKEN)).intersect(sheet.canvas.expand(1e4));
        let response = ui.interact(rect, Id::unique(("grip", &grip.at)), Sense::click_and_drag());
        response.widget_info(|| WidgetInfo::labeled(Role::Button, true, grip.called()));
        let is_chosen = shown.part.as_ref() == Some(&grip.at.part) && grip.knot.is_none();
        let lit = is_held || response.hovered() || response.has_focus() || is_chosen || shown.also.contains(&grip.at);
        mark(sheet, grip, place, lit);
        let leads = held.and_then(|h| h.grips.first()).is_some_and(|(g, _)| g.at == grip.at);
        if response.hovered() && held.is_none() || leads || response.has_focus() {
            on_one = on_one || response.hovered();
            words = Some((grip, place));
            let known = shown.hint.as_ref().is_some_and(|h| h.at == grip.at && h.revision == scene.computed.revision);
            if !known && held.is_none() {
                wishes.push(Wish::Hover(Some(grip.at.clone())));
            }
        }
        listen(ui, sheet, grip, &response, wishes);
    }
    if let Some((grip, place)) = words {
        tip(ui, sheet, scene, shown, grip, place);
    }
    on_one
}

/// The names of the points, where there is room for them.
pub(super) fn names(sheet: &Sheet<'_>, all: &[Grippable], at: &dyn Fn(Point) -> Pos2) {
    let mut taken: Vec<Rect> =
        all.iter().map(|g| Rect::from_center_size(at(g.place), Vec2::splat(HALF * 2.0))).collect();
    for grip in all.iter().filter(|g| g.at.field == "at") {
        let name = sheet.painter.layout_no_wrap(grip.at.part.name().to_owned(), letters(look::SMALL), sheet.look.soft);
        let place = at(grip.place);
        let ways = [
            (Align2::LEFT_BOTTOM, vec2(7.0, -4.0)),
            (Align2::RIGHT_BOTTOM, vec2(-7.0, -4.0)),
            (Align2::LEFT_TOP, vec2(7.0, 4.0)),
            (Align2::RIGHT_TOP, vec2(-7.0, 4.0)),
        ];
        let free = ways
            .iter()
            .map(|(align, off)| align.anchor_size(place + *off, name.size()))
            .find(|rect| sheet.canvas.contains_rect(*rect) && !taken.iter().any(|t| t.intersects(*rect)));
        if let Some(rect) = free {
            sheet.painter.rect_filled(rect, CornerRadius::same(3), sheet.look.sheet.gamma_multiply(0.75));
            sheet.painter.galley(rect.min, name, sheet.look.soft);
            taken.push(rect);
        }
    }
}

/// A point is a diamond, a handle a dot.
pub(super) fn mark(sheet: &Sheet<'_>, grip: &Grippable, at: Pos2, lit: bool) {
    let look = sheet.look;
    let half = if lit { HALF + 2.0 } else { HALF };
    if grip.knot.is_some() || grip.at.field != "at" {
        let fill = if lit { look.handle } else { look.sheet };
        sheet.painter.circle(at, half - 0.5, fill, Stroke::new(1.5, look.handle));
        return;
    }
    let corners = [vec2(0.0, -half), vec2(half, 0.0), vec2(0.0, half), vec2(-half, 0.0)].map(|v| at + v).to_vec();
    let fill = if lit { look.ink } else { look.sheet };
    sheet.painter.add(Shape::convex_polygon(corners, fill, Stroke::new(1.5, look.ink)));
}

fn listen(ui: &Ui, sheet: &Sheet<'_>, grip: &Grippable, response: &egui::Response, wishes: &mut Vec<Wish>) {
    let table = |p: Pos2| sheet.view.table_from_screen(sheet.canvas, p);
    let loose = ui.input(|i| i.modifiers.shift);
    if response.hovered() {
        ui.ctx().set_cursor_icon(CursorIcon::Grab);
    }
    if response.clicked() {
        let several = ui.input(|i| i.modifiers.shift);
        wishes.push(if several { Wish::Also(grip.at.clone()) } else { Wish::Part(grip.at.part.clone()) });
    }
    if response.drag_started() {
        let from = ui.input(|i| i.pointer.press_origin());
        wishes.push(Wish::Grab(Grabbed::Grip(grip.at.clone()), table(from.unwrap_or(response.rect.center()))));
    }
    if response.dragged()
        && let Some(now) = response.interact_pointer_pos()
    {
        ui.ctx().set_cursor_icon(CursorIcon::Grabbing);
        wishes.push(Wish::PullTo(table(now), loose));
    }
    if response.drag_stopped() {
        wishes.push(Wish::Release);
    }
    if response.has_focus() {
        // Arrow keys push what has the focus.
        let filter = EventFilter { horizontal_arrows: true, vertical_arrows: true, ..EventFilter::default() };
        ui.memory_mut(|m| m.set_focus_lock_filter(response.id, filter));
        let ways = [
            (Key::ArrowRight, 1.0, 0.0),
            (Key::ArrowLeft, -1.0, 0.0),
            (Key::ArrowDown, 0.0, 1.0),
            (Key::ArrowUp, 0.0, -1.0),
        ];
        for (key, right, down) in ways {
            for modifiers in [egui::Modifiers::SHIFT, egui::Modifiers::ALT, egui::Modifiers::NONE] {
                if ui.input_mut(|i| i.consume_key(modifiers, key)) {
                    let by = nudge(right, down, modifiers.shift);
                    wishes.push(Wish::Nudge(grip.at.clone(), by, modifiers.alt));
                }
            }
        }
        if ui.input_mut(|i| i.consume_key(egui::Modifiers::NONE, Key::Enter)) {
            wishes.push(Wish::Part(grip.at.part.clone()));
        }
    }
}

/// The name of what is under the pointer, its formula with the numbers that a pull changes, and where the pull goes.
fn tip(ui: &Ui, sheet: &Sheet<'_>, scene: &Scene, shown: &Shown, grip: &Grippable, at: Pos2) {
    let look = sheet.look;
    let held = shown.held.as_ref().and_then(|h| h.grip(&grip.at));
    let hint = shown.hint.as_ref().filter(|h| h.at == grip.at);
    let text = scene.draft().text(&grip.at).unwrap_or_default();
    let (plain, strong, soft) = (look.sheet, look.number, look.sheet.gamma_multiply(0.75));
    let code = |color: Color32| TextFormat::simple(FontId::new(look::TEXT, FontFamily::Monospace), color);
    let mut words = LayoutJob::default();
    words.append(&grip.called(), 0.0, TextFormat::simple(letters(look::TEXT), plain));
    words.append("\n", 0.0, TextFormat::simple(letters(look::SMALL), plain));
    let numbers = match (held, hint) {
        (Some(held), _) => held.numbers_in(&text),
        (None, Some(Hint { grip: Ok(grip), .. })) if grip.text == text => grip.numbers(),
        _ => Vec::new(),
    };
    let mut from = 0;
    for span in &numbers {
        words.append(text.get(from..span.start).unwrap_or_default(), 0.0, code(plain));
        words.append(span.of(&text), 0.0, TextFormat { underline: Stroke::new(1.5, strong), ..code(strong) });
        from = span.end;
    }
    words.append(text.get(from..).unwrap_or_default(), 0.0, code(plain));
    let note = match (held, hint.map(|h| &h.grip)) {
        (_, Some(Err(why))) => why.clone(),
        (_, Some(Ok(grip))) if grip.held_by().is_some() => {
            say!("canvas-no-number")
        }
        (None, Some(Ok(grip))) if !grip.is_free() => say!("canvas-slides", reach = reach_words(shown)),
        _ => reach_words(shown),
    };
    words.append("\n", 0.0, TextFormat::simple(letters(look::SMALL), plain));
    words.append(&note, 0.0, TextFormat::simple(letters(look::SMALL), soft));
    sheet.tip(ui, words, at);
}

/// Where a pull goes.
pub(in crate::app) fn reach_words(shown: &Shown) -> String {
    match shown.reach {
        Reach::All => say!("canvas-reach-all"),
        Reach::One => say!("canvas-reach-one", size = &*shown.case),
        Reach::FromHereUp => say!("canvas-reach-up", size = &*shown.case),
    }
}
