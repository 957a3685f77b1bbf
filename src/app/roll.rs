//! The room in which one side of a seam is rolled along the other, with the pieces of both sides joined into one picture.

use egui::{
    Align2, CornerRadius, Frame, Id, Margin, Pos2, Rect, RichText, Role, Sense, Shape, Slider, Stroke, StrokeKind, Ui,
    WidgetInfo, pos2, vec2,
};
use kurbo::{Affine, Point, Shape as _};

use super::help;
use super::look::{self, Look, letters};
use super::scene::Scene;
use super::state::{Room, Shown, Wish};
use crate::finish::{Rolled, roll};
use crate::session::Act;
use crate::texts::{decimal, length as length_text, owned, say};

/// A seam that is rolled, and how far.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Rolling {
    /// The seam.
    pub seam: String,
    /// The part of the way, from 0 to 1.
    pub share: f64,
}

/// Free border around the picture, px.
const AROUND: f32 = 30.0;
/// Curves are drawn as straight lines that leave them by no more than this, px.
const FLATNESS: f64 = 0.2;

/// Paints the room.
pub(super) fn show(ui: &mut Ui, look: &Look, scene: &Scene, shown: &Shown, rolling: &Rolling, wishes: &mut Vec<Wish>) {
    Frame::new().fill(look.sheet).inner_margin(Margin::same(14)).corner_radius(6).show(ui, |ui| {
        ui.set_min_size(ui.available_size());
        let case = scene.case_of(&shown.case);
        let at = |share: f64| rolled(scene, case, rolling, share);
        match at(rolling.share) {
            None => {
                head(ui, look, scene, shown, rolling, None, wishes);
                let words = format!("■ {}", say!("roll-cannot", seam = rolling.seam, size = scene.called(case)));
                ui.label(RichText::new(words).color(look.error));
            }
            Some(now) => {
                head(ui, look, scene, shown, rolling, Some(&now), wishes);
                // The room of the whole way, so that the picture keeps its scale.
                let all: Vec<Rolled> = [0.0, 0.25, 0.5, 0.75, 1.0].into_iter().filter_map(at).collect();
                picture(ui, look, scene, case, &now, &all);
            }
        }
    });
}

fn rolled(scene: &Scene, case: usize, rolling: &Rolling, share: f64) -> Option<Rolled> {
    let model = scene.model()?;
    let finished = scene.computed.finished.as_ref()?;
    let seam = model.plan.seams.iter().position(|s| *s.name == *rolling.seam)?;
    let longest =
        model.plan.seams[seam].sides[..2].iter().filter_map(|n| model.item(case, *n)?.real()).fold(0.0, f64::max);
    roll(model, case, seam, &finished.sewing, finished.notches.get(case)?, share * longest)
}

fn head(
    ui: &mut Ui,
    look: &Look,
    scene: &Scene,
    shown: &Shown,
    rolling: &Rolling,
    now: Option<&Rolled>,
    wishes: &mut Vec<Wish>,
) {
    let unit = scene.draft().display;
    let case = scene.case_of(&shown.case);
    let to = |share: f64| Wish::Room(Room::Roll(Rolling { share: share.clamp(0.0, 1.0), ..rolling.clone() }));
    ui.horizontal_wrapped(|ui| {
        ui.label(RichText::new(say!("roll-title", seam = rolling.seam)).font(letters(look::LARGE)).color(look.ink));
        help::question(ui, &say!("roll-about"), "roll", wishes);
        if ui.button(say!("show-the-pieces")).on_hover_text(Act::Roll.action().what()).clicked() {
            wishes.push(Wish::Act(Act::Roll));
        }
        let Some(now) = now else { return };
        let longest = now.lengths[0].max(now.lengths[1]);
        let mut share = rolling.share;
        ui.spacing_mut().slider_width = 260.0;
        // A rail that is seen on the sheet.
        ui.visuals_mut().widgets.inactive.bg_fill = look.border;
        let slider = ui.add(Slider::new(&mut share, 0.0..=1.0).show_value(false));
        slider.widget_info(|| WidgetInfo::labeled(Role::Slider, true, say!("roll-slider", seam = rolling.seam)));
        if slider.changed() {
            wishes.push(to(share));
        }
        if ui.button(say!("roll-to-start")).clicked() {
            wishes.push(to(0.0));
        }
        // The next notch of side one, else the end.
        let places =
            now.notches.iter().map(|n| n.places[0]).filter(|p| *p > now.at[0] + crate::base::tolerance::ON_EDGE);
        let next = places.fold(longest, f64::min);
        if ui.button(say!("roll-to-notch")).clicked() {
            wishes.push(to(next / longest));
        }
        if ui.button(say!("roll-to-end")).clicked() {
            wishes.push(to(1.0));
        }
    });
    let Some(now) = now else { return };
    let length = |mm: f64| owned(|| length_text(mm, unit));
    let small = |mm: f64| owned(|| decimal(&format!("{:.1}", mm.abs())));
    let far = now.at[0].max(now.at[1]);
    let left = now.lengths[0] - now.lengths[1];
    let [one, two] = now.lengths.map(length);
    let words = say!("roll-state", size = scene.called(case), far = length(far), one, two);
    ui.label(RichText::new(words).color(look.ink));
    let mut told: Vec<String> = now
        .notches
        .iter()
        .map(|n| {
            let notch = if n.name.is_empty() { say!("roll-match-mark") } else { n.name.to_string() };
            let [one, two] = n.places.map(length);
            say!("roll-notch", notch, one, two, apart = small(n.gap))
        })
        .collect();
    let by = small(left);
    told.push(if left >= 0.0 { say!("roll-longer", by) } else { say!("roll-shorter", by) });
    ui.label(RichText::new(told.join(" · ")).font(letters(look::SMALL)).color(look.soft));
}

fn picture(ui: &mut Ui, look: &Look, scene: &Scene, case: usize, now: &Rolled, all: &[Rolled]) {
    let (room, _) = ui.allocate_exact_size(ui.available_size(), Sense::hover());
    ui.painter().rect(room, CornerRadius::same(4), look.desk, Stroke::new(1.0, look.border), StrokeKind::Inside);
    let Some(finished) = &scene.computed.finished else { return };
    let stitch = |frame: usize| finished.cases.get(case)?.get(frame)?.as_ref().map(|p| &p.stitch);
    let boxes =
        all.iter().flat_map(|r| &r.pieces).filter_map(|p| Some((p.motion * stitch(p.frame)?.clone()).bounding_box()));
    let Some(bounds) = boxes.reduce(|a, b| a.union(b)) else { return };
    let inner = room.shrink(AROUND);
    let scale = (f64::from(inner.width()) / bounds.width()).min(f64::from(inner.height()) / bounds.height());
    let place = |p: Point| -> Pos2 {
        let from = p - bounds.center();
        room.center() + vec2((from.x * scale) as f32, (from.y * scale) as f32)
    };
    let painter = ui.painter_at(room);
    for piece in &now.pieces {
        let Some(path) = stitch(piece.frame) else { continue };
        let (width, color) = if piece.rolled { (look::STRONG, look.handle) } else { (look::STRONG, look.ink) };
        let moved = piece.motion * path.clone();
        for line in super::canvas::straight(&moved, FLATNESS / scale) {
            painter.add(Shape::line(line.into_iter().map(place).collect(), Stroke::new(width, color)));
        }
        let name = &scene.shapes.slots[piece.frame].name;
        let middle = place(moved.bounding_box().center());
        painter.text(middle, Align2::CENTER_CENTER, name, letters(look::TEXT), color);
        let called =
            if piece.rolled { say!("roll-piece-two", piece = name) } else { say!("roll-piece-one", piece = name) };
        let response = ui.interact(
            Rect::from_center_size(middle, vec2(60.0, 20.0)),
            Id::unique(("rolled", piece.frame, piece.rolled)),
            Sense::hover(),
        );
        response.widget_info(|| WidgetInfo::labeled(Role::GraphicsObject, true, &called));
    }
    let motion = |rolled: bool, frame: usize| {
        now.pieces.iter().find(|p| p.rolled == rolled && p.frame == frame).map(|p| p.motion)
    };
    for notch in finished.notches[case].iter() {
        for (side, place_of) in notch.sides.iter().enumerate() {
            let Some(Ok(on)) = place_of else { continue };
            let is_shown = now.notches.iter().any(|n| n.places[side] == on.sewn && n.name == *notch.name);
            let (Some((frame, _)), Some(at), true) = (on.on, on.at.map(crate::curves::Pt::value), is_shown) else {
                continue;
            };
            let Some(motion): Option<Affine> = motion(side == 1, frame) else { continue };
            let color = if side == 1 { look.handle } else { look.ink };
            painter.circle_filled(place(motion * at), 3.5, color);
        }
    }
    painter.circle_stroke(place(now.contact), 7.0, Stroke::new(2.0, look.warning));
    painter.text(
        pos2(room.right() - 10.0, room.bottom() - 8.0),
        Align2::RIGHT_BOTTOM,
        say!("roll-hint"),
        letters(look::SMALL),
        look.soft,
    );
}
