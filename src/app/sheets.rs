//! The pages of a home printer as they will print, joined: how many there are, and where the pieces lie on them.

use std::rc::Rc;

use egui::{
    Align2, Color32, CornerRadius, CursorIcon, Frame, Id, Margin, Painter, Pos2, Rect, RichText, Role, Sense, Shape,
    Stroke, StrokeKind, Ui, WidgetInfo, pos2, vec2,
};
use kurbo::{Point, Vec2};

use super::look::{self, Look, letters};
use super::scene::Scene;
use super::state::{Shown, Wish};
use super::{help, pictures, screen};
use crate::output::{Align, HomeSheets, Ink, Item, MOST_SIZES, Paper, Picture};
use crate::session::{Act, Command, PartCommand, PrintFor, PrintWish, What, home_print};
use crate::texts::say;

/// Lines flattened to this, px.
const FLATNESS: f64 = 0.25;
/// Words smaller than this are not painted, px.
const LEAST_WORDS: f64 = 4.0;
/// Between the first page and the joined ones, mm.
const BESIDE: f64 = 20.0;
/// Free room around the pages, px.
const AROUND: f32 = 18.0;

/// What is to be printed.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Printing {
    pub wish: PrintWish,
    /// The sizes that come together, by address; none: the chosen one.
    pub sizes: Vec<String>,
    /// Whether the pages are shown as large as they will be.
    pub true_scale: bool,
    /// The kinds of files that were published last, and how wide the paper of a wide sheet was.
    pub published: Option<(Vec<What>, String)>,
}

/// Pages of one revision, or why there are none.
pub(super) type Made = Rc<Result<HomeSheets, String>>;

/// Makes the pages that are wanted.
pub(super) fn make(scene: &Scene, printing: &Printing, chosen: &str) -> Result<HomeSheets, String> {
    let model = scene.model().ok_or_else(|| say!("cannot-be-computed"))?;
    let finished = scene.computed.finished.as_ref().ok_or_else(|| say!("cannot-be-computed"))?;
    let cases = &model.plan.cases;
    let find = |address: &str| cases.list.iter().position(|c| c.address == *address);
    let mut wanted: Vec<usize> = printing.sizes.iter().filter_map(|s| find(s)).collect();
    if wanted.is_empty() {
        wanted.extend(find(chosen));
    }
    wanted.sort_unstable();
    // A piece says for which view it is where it is not in all of them the same.
    let whole = scene.whole.model.as_ref().zip(scene.whole.finished.as_ref()).unwrap_or((model, finished));
    let (sheets, missing) =
        home_print(scene.draft(), whole, scene.view(), &wanted, &printing.wish).map_err(|e| e.to_string())?;
    let mut sheets = sheets;
    for (piece, size) in missing {
        sheets.notes.push(say!("piece-left-out", piece, size));
    }
    Ok(sheets)
}

/// A room of pages: paper around what stands in it.
pub(super) fn framed(ui: &mut Ui, look: &Look, inside: impl FnOnce(&mut Ui)) {
    Frame::new().fill(look.sheet).inner_margin(Margin::same(14)).corner_radius(6).show(ui, |ui| {
        ui.set_min_size(ui.available_size());
        inside(ui);
    });
}

/// Pages that were made, or else why there are none, in words.
pub(super) fn or_problem<'a, T>(ui: &mut Ui, look: &Look, made: &'a Result<T, String>) -> Option<&'a T> {
    match made {
        Ok(pages) => Some(pages),
        Err(problem) => {
            ui.add_space(20.0);
            ui.label(RichText::new(format!("■ {problem}")).color(look.error));
            None
        }
    }
}

/// Paints the room.
pub(super) fn show(ui: &mut Ui, look: &Look, scene: &Scene, shown: &Shown, wishes: &mut Vec<Wish>) {
    let made = scene.sheets(&shown.printing, &shown.case);
    framed(ui, look, |ui| {
        head(ui, look, scene, shown, &made, wishes);
        if let Some(sheets) = or_problem(ui, look, &made) {
            pages(ui, look, sheets, shown, wishes);
        }
    });
}

/// The paper of pages.
pub(super) fn paper_choice(ui: &mut Ui, wish: &mut PrintWish) {
    let own = |name: &str| name.to_owned();
    for (paper, word) in
        [(Paper::Both, say!("publish-both-papers")), (Paper::A4, own("A4")), (Paper::Letter, own("Letter"))]
    {
        let chosen = wish.paper == paper;
        let response = ui.selectable_label(chosen, &word);
        let called = say!("paper-called", paper = word);
        response.widget_info(|| WidgetInfo::selected(Role::RadioButton, true, chosen, &called));
        if response.clicked() {
            wish.paper = paper;
        }
    }
}

/// What a print is for.
pub(super) fn purpose_choice(ui: &mut Ui, wish: &mut PrintWish) {
    for (purpose, word) in [
        (PrintFor::Toile, say!("purpose-toile")),
        (PrintFor::Testers, say!("purpose-testers")),
        (PrintFor::Release, say!("purpose-release")),
    ] {
        let chosen = wish.purpose == purpose;
        let response = ui.selectable_label(chosen, &word);
        let called = say!("purpose-called", purpose = word);
        response.widget_info(|| WidgetInfo::selected(Role::RadioButton, true, chosen, &called));
        if response.clicked() {
            wish.purpose = purpose;
        }
    }
}

fn head(ui: &mut Ui, look: &Look, scene: &Scene, shown: &Shown, made: &Made, wishes: &mut Vec<Wish>) {
    let printing = &shown.printing;
    let mut next = printing.clone();
    ui.horizontal_wrapped(|ui| {
        ui.label(RichText::new(say!("sheets-title")).font(letters(look::LARGE)).color(look.ink));
        help::question(ui, &say!("sheets-about"), "sheets", wishes);
        if let Ok(sheets) = &**made {
            let many = sheets.pages.len();
            let words = say!("sheets-pages", all = many, count = many - 1);
            ui.label(RichText::new(words).color(look.ink).strong());
        }
        paper_choice(ui, &mut next.wish);
        ui.separator();
        purpose_choice(ui, &mut next.wish);
        if let Some(piece) = shown.frame() {
            ui.separator();
            let only = printing.wish.pieces == [piece];
            let response = ui.selectable_label(only, say!("sheets-only", piece));
            response
                .widget_info(|| WidgetInfo::selected(Role::CheckBox, true, only, say!("sheets-only-called", piece)));
            if response.clicked() {
                next.wish.pieces = if only { Vec::new() } else { vec![piece.to_owned()] };
            }
        } else if !printing.wish.pieces.is_empty() {
            next.wish.pieces.clear();
        }
        ui.separator();
        let response = ui.selectable_label(printing.true_scale, say!("sheets-true"));
        response.widget_info(|| WidgetInfo::selected(Role::CheckBox, true, printing.true_scale, say!("sheets-true")));
        if response.clicked() {
            next.true_scale = !printing.true_scale;
        }
        let response = ui.selectable_label(printing.wish.whole, say!("publish-whole-called"));
        response.widget_info(|| {
            WidgetInfo::selected(Role::CheckBox, true, printing.wish.whole, say!("publish-whole-called"))
        });
        if response.on_hover_text(say!("sheets-whole-hint")).clicked() {
            next.wish.whole = !printing.wish.whole;
        }
        if ui.button(say!("sheets-arrange")).on_hover_text(say!("sheets-arrange-hint")).clicked() {
            wishes.push(Wish::Run(Command::Part(PartCommand::OnPages(String::new(), None))));
        }
        for act in [Act::Print, Act::Publish, Act::Sheets] {
            let word = if act == Act::Sheets { say!("show-the-pieces") } else { act.action().name().to_owned() };
            if ui.button(word).on_hover_text(act.action().what()).clicked() {
                wishes.push(Wish::Act(act));
            }
        }
    });
    ui.horizontal_wrapped(|ui| {
        ui.label(RichText::new(say!("sheets-sizes")).color(look.soft));
        for case in scene.cases().into_iter().flat_map(|c| &c.list) {
            let alone = printing.sizes.is_empty() && case.address == shown.case;
            let chosen = alone || printing.sizes.contains(&case.address);
            let response = ui.selectable_label(chosen, &case.address);
            let called = say!("sheets-size", size = case.address);
            response.widget_info(|| WidgetInfo::selected(Role::CheckBox, true, chosen, &called));
            if response.clicked() {
                if next.sizes.is_empty() {
                    next.sizes.push(shown.case.clone());
                }
                match next.sizes.iter().position(|s| *s == case.address) {
                    Some(i) if next.sizes.len() > 1 => drop(next.sizes.remove(i)),
                    None if next.sizes.len() < MOST_SIZES => next.sizes.push(case.address.clone()),
                    _ => {}
                }
            }
        }
    });
    if printing.true_scale {
        ui.horizontal(|ui| {
            screen::bar(ui, look, 100.0, &shown.own.preferences);
            screen::buttons(ui, &shown.own.preferences, wishes);
            ui.label(RichText::new(say!("sheets-ruler")).color(look.soft));
        });
    }
    if let Ok(sheets) = &**made {
        for note in &sheets.notes {
            ui.label(RichText::new(format!("● {note}")).font(letters(look::SMALL)).color(look.note));
        }
    }
    if next != *printing {
        wishes.push(Wish::Printing(next));
    }
}

fn pages(ui: &mut Ui, look: &Look, sheets: &HomeSheets, shown: &Shown, wishes: &mut Vec<Wish>) {
    if !shown.printing.true_scale {
        let size = ui.available_size();
        return joined(ui, look, sheets, shown, size, wishes);
    }
    let per_mm = screen::points_per_mm(ui.ctx(), &shown.own.preferences) as f32;
    let (wide, high) = extent(sheets);
    let size = vec2(wide as f32 * per_mm, high as f32 * per_mm) + vec2(2.0, 2.0) * AROUND;
    egui::ScrollArea::both().auto_shrink([false, false]).show(ui, |ui| joined(ui, look, sheets, shown, size, wishes));
}

/// What the first page and the joined ones take beside each other, mm.
fn extent(sheets: &HomeSheets) -> (f64, f64) {
    let tile = sheets.layout.tile;
    let first = sheets.pages.first().map_or((0.0, 0.0), |p| (p.width, p.height));
    let (columns, rows) = (sheets.layout.columns as f64, sheets.layout.rows as f64);
    (first.0 + BESIDE + columns * tile.width, first.1.max(rows * tile.height))
}

fn joined(ui: &mut Ui, look: &Look, sheets: &HomeSheets, shown: &Shown, size: egui::Vec2, wishes: &mut Vec<Wish>) {
    let (room, _) = ui.allocate_exact_size(size, Sense::hover());
    ui.painter().rect(room, CornerRadius::same(4), look.desk, Stroke::new(1.0, look.border), StrokeKind::Inside);
    let (Some(first), Some(second)) = (sheets.pages.first(), sheets.pages.get(1)) else { return };
    let tile = sheets.layout.tile;
    let margin = Vec2::new((second.width - tile.width) / 2.0, (second.height - tile.height) / 2.0);
    // The first page stands at the left, the joined ones beside it.
    let (wide, high) = extent(sheets);
    let inner = room.shrink(AROUND);
    let scale = (f64::from(inner.width()) / wide).min(f64::from(inner.height()) / high);
    let at = |x: f64, y: f64| inner.min + vec2((x * scale) as f32, (y * scale) as f32);
    let painter = ui.painter_at(room.intersect(ui.clip_rect()));
    let paper = |rect: Rect| painter.rect_filled(rect, 0.0, Color32::WHITE);
    let own = Rect::from_min_max(at(0.0, 0.0), at(first.width, first.height));
    paper(own);
    picture(&painter.with_clip_rect(own), first, own.min, scale);
    let start = first.width + BESIDE;
    for (part, page) in sheets.parts.iter().zip(&sheets.pages[1..]) {
        let (x, y) = (start + part.column as f64 * tile.width, part.row as f64 * tile.height);
        let rect = Rect::from_min_max(at(x, y), at(x + tile.width, y + tile.height));
        paper(rect);
        picture(&painter.with_clip_rect(rect.intersect(room)), page, at(x - margin.x, y - margin.y), scale);
        painter.rect_stroke(rect, 0.0, Stroke::new(1.0, look.soft), StrokeKind::Inside);
        let response = ui.interact(rect.shrink(1.0), Id::unique(("page", &part.name)), Sense::hover());
        let called = say!("sheets-page", page = part.name, pieces = part.pieces.join(", "));
        response.widget_info(|| WidgetInfo::labeled(Role::GraphicsObject, true, &called));
    }
    for (name, place) in &sheets.rooms {
        let rect = Rect::from_min_max(at(start + place.x0, place.y0), at(start + place.x1, place.y1));
        let response = ui.interact(rect, Id::unique(("on pages", name)), Sense::drag());
        response.widget_info(|| WidgetInfo::labeled(Role::Button, true, say!("sheets-piece", piece = name)));
        if response.hovered() || response.dragged() {
            ui.ctx().set_cursor_icon(CursorIcon::Move);
            painter.rect_stroke(rect, 3.0, Stroke::new(1.5, look.handle), StrokeKind::Outside);
        }
        if response.drag_started() {
            wishes.push(Wish::OnPagesFrom(name.clone(), place.origin()));
        }
        let origin = ui.input(|i| i.pointer.press_origin());
        if response.dragged()
            && let Some((from, (origin, now))) = shown
                .on_pages
                .as_ref()
                .filter(|p| p.0 == *name)
                .map(|p| p.1)
                .zip(origin.zip(response.interact_pointer_pos()))
        {
            let by = now - origin;
            let to = from + Vec2::new(f64::from(by.x), f64::from(by.y)) / scale;
            wishes.push(Wish::OnPagesTo(name.clone(), Point::new(to.x.max(0.0), to.y.max(0.0))));
        }
        if response.drag_stopped() {
            wishes.push(Wish::Release);
        }
    }
    let hint = say!("sheets-drag");
    painter.text(room.right_bottom() - vec2(10.0, 8.0), Align2::RIGHT_BOTTOM, hint, letters(look::SMALL), look.soft);
}

/// Paints a page: its top left corner on the screen, px per mm.
pub(super) fn picture(painter: &Painter, page: &Picture, corner: Pos2, scale: f64) {
    items(painter, &page.items, corner, scale, Vec2::ZERO);
}

fn color(ink: Ink) -> Color32 {
    Color32::from_rgb(ink.red, ink.green, ink.blue)
}

fn items(painter: &Painter, all: &[Item], corner: Pos2, scale: f64, shift: Vec2) {
    let at = |p: Point| {
        let p = p + shift;
        pos2(corner.x + (p.x * scale) as f32, corner.y + (p.y * scale) as f32)
    };
    for item in all {
        match item {
            Item::Stroke { path, pen } => {
                let stroke = Stroke::new(((pen.width * scale) as f32).max(0.7), color(pen.ink));
                for line in super::canvas::straight(path, FLATNESS / scale) {
                    let line: Vec<Pos2> = line.into_iter().map(at).collect();
                    if pen.dashes.is_empty() {
                        painter.add(Shape::line(line, stroke));
                    } else {
                        let px = |i: usize| ((pen.dashes[i] * scale) as f32).max(1.0);
                        let dashes: Vec<f32> = (0..pen.dashes.len()).step_by(2).map(px).collect();
                        let gaps: Vec<f32> = (1..pen.dashes.len()).step_by(2).map(px).collect();
                        painter.extend(Shape::dashed_line_with_offset(&line, stroke, &dashes, &gaps, 0.0));
                    }
                }
            }
            Item::Fill { path, ink } => {
                for line in super::canvas::straight(path, FLATNESS / scale) {
                    painter.add(Shape::convex_polygon(line.into_iter().map(at).collect(), color(*ink), Stroke::NONE));
                }
            }
            Item::Text(text) if text.size * scale >= LEAST_WORDS && text.angle == 0.0 => {
                let anchor = match text.align {
                    Align::Start => Align2::LEFT_BOTTOM,
                    Align::Middle => Align2::CENTER_BOTTOM,
                    Align::End => Align2::RIGHT_BOTTOM,
                };
                let size = (text.size * scale) as f32;
                // The baseline stands a little above the bottom of a line of letters.
                let foot = at(text.at) + vec2(0.0, size * 0.22);
                painter.text(foot, anchor, &text.text, letters(size), color(text.ink));
            }
            Item::Text(_) => {}
            Item::Photo { photo, rect } => {
                let place = Rect::from_min_max(at(rect.origin()), at(Point::new(rect.x1, rect.y1)));
                match pictures::of_photo(painter.ctx(), photo) {
                    Some(texture) => {
                        let whole = Rect::from_min_max(pos2(0.0, 0.0), pos2(1.0, 1.0));
                        painter.image(texture.id(), place, whole, Color32::WHITE);
                    }
                    None => drop(painter.rect_filled(place, 0.0, Color32::from_gray(200))),
                }
            }
            Item::Clip { rect, items: inner } => {
                let seen = Rect::from_min_max(at(rect.origin()), at(Point::new(rect.x1, rect.y1)));
                items(&painter.with_clip_rect(seen.intersect(painter.clip_rect())), inner, corner, scale, shift);
            }
            Item::Shared { what, at } => items(painter, &what.items, corner, scale, shift + *at),
            Item::Group { items: inner, .. } => items(painter, inner, corner, scale, shift),
        }
    }
}
