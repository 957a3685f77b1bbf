//! The pictures under the pieces, and the panel of the one that belongs to what is chosen.

use egui::{
    Button, Color32, CornerRadius, CursorIcon, Frame, Id, Margin, Mesh, Pos2, Rect, RichText, Role, Sense, Shape,
    Slider, Stroke, TextEdit, Ui, UiBuilder, WidgetInfo, pos2, vec2,
};
use kurbo::{Point, Vec2};

use super::sheet::Sheet;
use crate::app::look::{self, Look, letters};
use crate::app::scene::Scene;
use crate::app::state::{Shown, Wish};
use crate::app::underlay::{Doing, LayWish, Laying, picture_of, under_words};
use crate::document::Picture;
use crate::session::Lie;
use crate::texts::say;

/// Free border of the panel, px.
const BORDER: f32 = 12.0;
/// Width of the panel, px.
const WIDTH: f32 = 600.0;

/// From the frame of a picture to the table; none where its piece has no place.
fn shift(scene: &Scene, picture: &Picture, case: usize) -> Option<Vec2> {
    if picture.under.is_empty() {
        return Some(Vec2::ZERO);
    }
    Some(scene.shapes.shift(case, scene.shapes.slot(&picture.under)?))
}

fn corners(lie: &Lie, size: [u32; 2], shift: Vec2) -> [Point; 4] {
    let (w, h) = (f64::from(size[0]), f64::from(size[1]));
    [(0.0, 0.0), (w, 0.0), (w, h), (0.0, h)].map(|(x, y)| lie.map() * Point::new(x, y) + shift)
}

/// The room that pictures take on the table.
pub(super) fn room(scene: &Scene, shown: &Shown) -> Option<kurbo::Rect> {
    let case = scene.case_of(&shown.case);
    let own = scene.draft().pictures.iter().filter(|p| !p.hidden).filter_map(|picture| {
        let painted = shown.under.pictures.get(&shown.under.path(picture)).ok()?;
        let all = corners(&Lie::of(picture, painted.size), painted.size, shift(scene, picture, case)?);
        let first = kurbo::Rect::from_points(all[0], all[1]);
        Some(all.iter().fold(first, |r, p| r.union_pt(*p)))
    });
    own.reduce(|a, b| a.union(b))
}

/// Paints the pictures.
pub(super) fn paint(ui: &Ui, sheet: &Sheet<'_>, scene: &Scene, shown: &Shown, case: usize) {
    for picture in scene.draft().pictures.iter().filter(|p| !p.hidden) {
        let Ok(painted) = shown.under.pictures.get(&shown.under.path(picture)) else { continue };
        let Some(shift) = shift(scene, picture, case) else { continue };
        let lie = Lie::of(picture, painted.size);
        let at = corners(&lie, painted.size, shift).map(|p| sheet.view.screen_from_table(sheet.canvas, p));
        let mut mesh = Mesh::with_texture(painted.texture.id());
        let seen = (100 - picture.fade.min(100)) as f32 / 100.0;
        let tint = Color32::WHITE.gamma_multiply(seen);
        for (place, uv) in at.iter().zip([pos2(0.0, 0.0), pos2(1.0, 0.0), pos2(1.0, 1.0), pos2(0.0, 1.0)]) {
            mesh.vertices.push(egui::epaint::Vertex { pos: *place, uv, color: tint });
        }
        mesh.add_triangle(0, 1, 2);
        mesh.add_triangle(0, 2, 3);
        sheet.painter.add(Shape::mesh(mesh));
        let line = Stroke::new(1.0, sheet.look.soft);
        sheet.painter.add(Shape::closed_line(at.to_vec(), line));
        if !lie.is_scaled {
            let words = say!("canvas-picture-unscaled");
            sheet.painter.text(
                at[0] + vec2(6.0, 4.0),
                egui::Align2::LEFT_TOP,
                words,
                letters(look::SMALL),
                sheet.look.error,
            );
        }
        let bounds = Rect::from_points(&at).intersect(sheet.canvas);
        if bounds.is_positive() {
            let (file, place) = (picture.file.as_str(), under_words(&picture.under));
            let called = match lie.is_scaled {
                true => say!("canvas-picture-called", file, place),
                false => say!("canvas-picture-called-unscaled", file, place),
            };
            let response = ui.interact(bounds, Id::unique(("picture", &picture.under)), Sense::hover());
            response.widget_info(|| WidgetInfo::labeled(Role::Image, true, &called));
        }
    }
}

/// Listens to clicks on the picture and shows its panel.
pub(super) fn show(ui: &mut Ui, sheet: &Sheet<'_>, scene: &Scene, shown: &Shown, case: usize, wishes: &mut Vec<Wish>) {
    let under = shown.frame().unwrap_or_default();
    let Some(picture) = picture_of(scene.draft(), under) else { return };
    let laying = shown.under.laying.as_ref().filter(|l| l.under == under);
    if let (Some(laying), Some(shift), Some(lie)) = (laying, shift(scene, picture, case), shown.under.lie(picture)) {
        listen(ui, sheet, laying, &lie, shift, wishes);
    }
    let wide = (sheet.canvas.width() - 2.0 * BORDER).min(WIDTH);
    let room =
        Rect::from_min_size(sheet.canvas.min + vec2(BORDER, BORDER), vec2(wide, sheet.canvas.height() - 2.0 * BORDER));
    let mut child =
        ui.new_child(UiBuilder::new().max_rect(room).id_salt("picture panel").sense(Sense::click_and_drag()));
    let ground =
        Frame::new().fill(sheet.look.panel).inner_margin(Margin::symmetric(10, 8)).corner_radius(CornerRadius::same(8));
    let ground = ground.stroke(Stroke::new(1.0, sheet.look.border));
    ground.show(&mut child, |ui| panel(ui, sheet, shown, picture, laying, wishes));
}

/// Clicks and pulls while something is done with the picture.
fn listen(ui: &Ui, sheet: &Sheet<'_>, laying: &Laying, lie: &Lie, shift: Vec2, wishes: &mut Vec<Wish>) {
    let response = ui.interact(sheet.canvas, Id::unique("laying"), Sense::click_and_drag());
    response.widget_info(|| WidgetInfo::labeled(Role::Canvas, true, say!("canvas-picture-laid")));
    let frame = |p: Pos2| sheet.view.table_from_screen(sheet.canvas, p) - shift;
    if response.hovered() {
        let cursor = if laying.doing == Doing::Move { CursorIcon::Move } else { CursorIcon::Crosshair };
        ui.ctx().set_cursor_icon(cursor);
    }
    let places: Vec<Pos2> =
        laying.points.iter().map(|p| sheet.view.screen_from_table(sheet.canvas, lie.map() * *p + shift)).collect();
    let line = Stroke::new(1.5, sheet.look.handle);
    for at in &places {
        sheet.painter.line_segment([*at - vec2(7.0, 0.0), *at + vec2(7.0, 0.0)], line);
        sheet.painter.line_segment([*at - vec2(0.0, 7.0), *at + vec2(0.0, 7.0)], line);
    }
    if let [a, b] = places[..] {
        sheet.painter.line_segment([a, b], line);
    }
    if laying.doing != Doing::Move {
        if response.clicked()
            && let Some(at) = response.interact_pointer_pos()
        {
            wishes.push(Wish::Lay(LayWish::Click(frame(at))));
        }
        return;
    }
    if response.drag_started()
        && let Some(from) = ui.input(|i| i.pointer.press_origin())
    {
        wishes.push(Wish::Lay(LayWish::From(laying.under.clone(), frame(from))));
    }
    if response.dragged()
        && let Some(now) = response.interact_pointer_pos()
    {
        wishes.push(Wish::Lay(LayWish::To(frame(now))));
    }
    if response.drag_stopped() {
        wishes.push(Wish::Release);
    }
}

fn panel(
    ui: &mut Ui,
    sheet: &Sheet<'_>,
    shown: &Shown,
    picture: &Picture,
    laying: Option<&Laying>,
    wishes: &mut Vec<Wish>,
) {
    let look = sheet.look;
    let under = || picture.under.clone();
    let painted = shown.under.pictures.get(&shown.under.path(picture));
    let is_here = !picture.hidden && painted.is_ok();
    let (words, color) = match painted {
        _ if picture.hidden => (say!("canvas-picture-hidden"), look.soft),
        Ok(painted) if Lie::of(picture, painted.size).is_scaled => (say!("canvas-picture-scaled"), look.soft),
        Ok(_) => (say!("canvas-picture-unscaled"), look.error),
        Err(None) => (say!("canvas-picture-read"), look.soft),
        Err(Some(problem)) => (format!("■ {}", say!("canvas-picture-not-shown", problem)), look.error),
    };
    ui.horizontal_wrapped(|ui| {
        ui.label(RichText::new(say!("canvas-picture", file = &*picture.file)).color(look.ink));
        ui.label(RichText::new(words).color(color));
        if is_here {
            fade(ui, look, picture, wishes);
        }
    });
    ui.horizontal_wrapped(|ui| {
        if is_here {
            for (doing, words) in [
                (Doing::Scale, say!("canvas-picture-scale")),
                (Doing::Level, say!("canvas-picture-level")),
                (Doing::Plumb, say!("canvas-picture-plumb")),
                (Doing::Measure, say!("canvas-picture-measure")),
                (Doing::Move, say!("canvas-picture-move")),
            ] {
                let is_on = laying.is_some_and(|l| l.doing == doing);
                if ui.add(Button::new(words).selected(is_on)).clicked() {
                    wishes.push(Wish::Lay(LayWish::Do(under(), (!is_on).then_some(doing))));
                }
            }
        }
        let (hide, called) = match picture.hidden {
            true => (say!("canvas-picture-show"), say!("canvas-picture-show-called")),
            false => (say!("canvas-picture-hide"), say!("canvas-picture-hide-called")),
        };
        if named(ui, &hide, &called) {
            wishes.push(Wish::Lay(LayWish::Hide(under(), !picture.hidden)));
        }
        if named(ui, &say!("canvas-picture-remove"), &say!("canvas-picture-remove-called")) {
            wishes.push(Wish::Lay(LayWish::Remove(under())));
        }
    });
    if let Some(laying) = laying {
        steps(ui, sheet, laying, wishes);
    } else if !shown.under.told.is_empty() {
        ui.label(RichText::new(&shown.under.told).color(look.ink));
    }
}

/// A button whose name says more than its word.
fn named(ui: &mut Ui, word: &str, called: &str) -> bool {
    let response = ui.button(word);
    response.widget_info(|| WidgetInfo::labeled(Role::Button, true, called));
    response.clicked()
}

/// How much the picture steps back.
fn fade(ui: &mut Ui, look: &Look, picture: &Picture, wishes: &mut Vec<Wish>) {
    ui.label(RichText::new(say!("canvas-picture-faded")).font(letters(look::SMALL)).color(look.soft));
    let mut fade = picture.fade.min(100);
    ui.visuals_mut().widgets.inactive.bg_fill = look.border;
    let slider = ui.add(Slider::new(&mut fade, 0..=100).show_value(false));
    slider.widget_info(|| WidgetInfo::labeled(Role::Slider, true, say!("canvas-picture-fade")));
    if slider.drag_started() {
        wishes.push(Wish::Lay(LayWish::From(picture.under.clone(), Point::ZERO)));
    }
    if slider.changed() {
        wishes.push(Wish::Lay(LayWish::Fade(picture.under.clone(), fade)));
    }
    if slider.drag_stopped() {
        wishes.push(Wish::Release);
    }
}

/// What is to be done next.
fn steps(ui: &mut Ui, sheet: &Sheet<'_>, laying: &Laying, wishes: &mut Vec<Wish>) {
    let look = sheet.look;
    let is_second = laying.points.len() == 1;
    let words = match (laying.doing, is_second) {
        (Doing::Move, _) => say!("canvas-lay-move"),
        (Doing::Scale, _) if laying.points.len() == 2 => say!("canvas-lay-apart"),
        (Doing::Scale, false) => say!("canvas-lay-scale-first"),
        (Doing::Scale, true) => say!("canvas-lay-scale-second"),
        (Doing::Level, false) => say!("canvas-lay-level-first"),
        (Doing::Level, true) => say!("canvas-lay-level-second"),
        (Doing::Plumb, false) => say!("canvas-lay-plumb-first"),
        (Doing::Plumb, true) => say!("canvas-lay-plumb-second"),
        (Doing::Measure, false) => say!("canvas-lay-measure-first"),
        (Doing::Measure, true) => say!("canvas-lay-measure-second"),
    };
    ui.label(RichText::new(words).color(look.ink));
    if laying.doing == Doing::Scale && laying.points.len() == 2 {
        ui.horizontal(|ui| {
            let mut text = laying.text.clone();
            let edit = TextEdit::singleline(&mut text)
                .id(Id::unique("real distance"))
                .hint_text(say!("canvas-distance-hint"))
                .desired_width(140.0);
            let response = ui.add(edit);
            ui.ctx().accesskit_node_builder(response.id, |node| node.set_label(say!("canvas-distance")));
            crate::app::field::ring(ui, &response);
            if response.changed() {
                wishes.push(Wish::Lay(LayWish::Distance(text)));
            }
            let entered = response.lost_focus() && ui.input(|i| i.key_pressed(egui::Key::Enter));
            if ui.button(say!("canvas-set-scale")).clicked() || entered {
                wishes.push(Wish::Lay(LayWish::SetScale));
            }
        });
        ui.label(RichText::new(crate::app::underlay::not_flat()).font(letters(look::SMALL)).color(look.soft));
    }
    if !laying.problem.is_empty() {
        ui.label(RichText::new(format!("■ {}", laying.problem)).color(look.error));
    }
}
