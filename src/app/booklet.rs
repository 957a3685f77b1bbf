//! The booklet as it will print, page under page, in the view that is shown. A click on a step chooses it.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::rc::Rc;
use std::sync::Arc;

use egui::{
    Color32, CornerRadius, CursorIcon, Id, Rect, RichText, Role, ScrollArea, Sense, Stroke, StrokeKind, Ui, WidgetInfo,
    pos2, vec2,
};

use super::look::{self, Look, letters};
use super::scene::Scene;
use super::sheets::{framed, or_problem, paper_choice, picture, purpose_choice};
use super::state::{Shown, Wish};
use super::{guide, help};
use crate::document::Part;
use crate::output::{Item, Photo, Picture, pages_and_headings, steps_of_view};
use crate::session::{Act, Order, PrintWish, booklet_of, photos};
use crate::texts::say;

/// The widest that a page is shown, px.
const WIDEST: f32 = 860.0;
/// Between two pages, px.
const BETWEEN: f32 = 14.0;

/// Pages of one revision in one view, or why there are none.
pub(super) type Made = Rc<Result<Pages, String>>;

/// The pages of a booklet.
pub(super) struct Pages {
    pages: Vec<Picture>,
    steps: Vec<StepPlace>,
    /// Pictures that should be there and are not.
    lacking: Vec<String>,
}

/// Where a step stands: its place in the draft, and on which page from where to where, mm. A long one stands on several pages.
struct StepPlace {
    step: usize,
    page: usize,
    from: f64,
    to: f64,
}

/// Pictures of the steps: they are read again when another file is named, not with every change of a formula.
#[derive(Default)]
pub(super) struct Photos {
    of: (Option<PathBuf>, Vec<String>),
    read: Arc<BTreeMap<String, Arc<Photo>>>,
    lacking: Vec<String>,
}

impl Photos {
    fn follow(&mut self, scene: &Scene, folder: Option<&Path>) {
        let pictures = scene.draft().booklet.iter().flat_map(|s| &s.pictures);
        let of = (folder.map(Path::to_owned), pictures.map(|p| p.file.clone()).collect());
        if self.of != of {
            let (read, lacking) = photos(scene.draft(), folder);
            *self = Self { of, read: Arc::new(read), lacking };
        }
    }
}

/// Makes the pages.
pub(super) fn make(
    scene: &Scene,
    wish: &PrintWish,
    known: &mut Photos,
    folder: Option<&Path>,
) -> Result<Pages, String> {
    known.follow(scene, folder);
    let whole = &scene.whole;
    let model = whole.model.as_ref().ok_or_else(|| say!("cannot-be-computed"))?;
    let finished = whole.finished.as_ref().ok_or_else(|| say!("cannot-be-computed"))?;
    let draft = scene.draft();
    let view = scene.view();
    let cases: Vec<usize> = (0..model.plan.cases.range).collect();
    let order = Order { draft, model, finished, stem: "", what: &[], groups: &[], wish, width: 0.0, folder };
    let writing = booklet_of(&order, view, &cases, &known.read);
    let (pages, headings) = pages_and_headings(&writing, wish.paper);
    let own = &model.of_views()[view];
    let range = writing.steps.clone();
    let foot = wish.paper.page().height;
    let mut steps = Vec::new();
    for (i, plan) in range.clone().zip(steps_of_view(draft, own)) {
        let Some(at) = headings.get(i) else { continue };
        let next = headings.get(i + 1);
        let last = next.map_or(pages.len() - 1, |n| n.page);
        for (page, picture) in pages.iter().enumerate().take(last + 1).skip(at.page) {
            let from = if page == at.page { at.down } else { 0.0 };
            let to = next.filter(|n| n.page == page).map_or(foot, |n| n.down);
            // What ends where a page begins has nothing on it.
            if page == at.page || words_between(picture, from, to) {
                steps.push(StepPlace { step: plan.place, page, from, to });
            }
        }
    }
    Ok(Pages { pages, steps, lacking: known.lacking.clone() })
}

/// Whether words stand on a page between two heights.
fn words_between(page: &Picture, from: f64, to: f64) -> bool {
    page.items.iter().any(|i| matches!(i, Item::Text(t) if t.at.y > from && t.at.y < to))
}

/// Paints the room.
pub(super) fn show(
    ui: &mut Ui,
    look: &Look,
    scene: &Scene,
    shown: &Shown,
    folder: Option<&Path>,
    wishes: &mut Vec<Wish>,
) {
    let made = scene.booklet(&shown.printing.wish, folder);
    framed(ui, look, |ui| {
        head(ui, look, scene, shown, &made, wishes);
        if let Some(pages) = or_problem(ui, look, &made) {
            show_pages(ui, look, scene, shown, pages, wishes);
        }
    });
}

fn head(ui: &mut Ui, look: &Look, scene: &Scene, shown: &Shown, made: &Made, wishes: &mut Vec<Wish>) {
    let mut next = shown.printing.clone();
    ui.horizontal_wrapped(|ui| {
        ui.label(RichText::new(say!("booklet-title")).font(letters(look::LARGE)).color(look.ink));
        help::question(ui, &say!("booklet-about"), "booklet", wishes);
        if let Ok(pages) = &**made {
            ui.label(RichText::new(say!("pages", count = pages.pages.len())).color(look.ink).strong());
        }
        paper_choice(ui, &mut next.wish);
        ui.separator();
        purpose_choice(ui, &mut next.wish);
        ui.separator();
        for act in [Act::AddStep, Act::Publish, Act::Booklet] {
            let word = if act == Act::Booklet { say!("show-the-pieces") } else { act.action().name().to_owned() };
            let response = ui.button(word).on_hover_text(act.action().what());
            guide::mark(ui, shown, act, &response);
            if response.clicked() {
                wishes.push(Wish::Act(act));
            }
        }
    });
    let small = |ui: &mut Ui, sign: &str, words: &str, color| {
        ui.label(RichText::new(format!("{sign} {words}")).font(letters(look::SMALL)).color(color));
    };
    if scene.draft().booklet.is_empty() {
        small(ui, "●", &say!("booklet-no-steps"), look.note);
    }
    if let Ok(pages) = &**made {
        for words in &pages.lacking {
            small(ui, "▲", words, look.warning);
        }
    }
    if next != shown.printing {
        wishes.push(Wish::Printing(next));
    }
}

fn show_pages(ui: &mut Ui, look: &Look, scene: &Scene, shown: &Shown, pages: &Pages, wishes: &mut Vec<Wish>) {
    ui.add_space(4.0);
    ScrollArea::vertical().auto_shrink([false, false]).id_salt("booklet pages").show(ui, |ui| {
        ui.painter().rect_filled(ui.clip_rect(), CornerRadius::same(4), look.desk);
        let width = (ui.available_width() - 24.0).clamp(200.0, WIDEST);
        ui.spacing_mut().item_spacing.y = BETWEEN;
        ui.vertical_centered(|ui| {
            ui.add_space(2.0);
            for (i, page) in pages.pages.iter().enumerate() {
                let scale = f64::from(width) / page.width;
                let (rect, _) = ui.allocate_exact_size(vec2(width, (page.height * scale) as f32), Sense::hover());
                if ui.is_rect_visible(rect) {
                    let painter = ui.painter_at(rect);
                    painter.rect_filled(rect, 0.0, Color32::WHITE);
                    picture(&painter, page, rect.min, scale);
                }
                let told = ui.interact(rect, Id::unique(("booklet page", i)), Sense::hover());
                let called = say!("booklet-page", number = i + 1, words = words_of_page(page));
                told.widget_info(|| WidgetInfo::labeled(Role::Label, true, &called));
                for place in pages.steps.iter().filter(|p| p.page == i) {
                    step(ui, look, scene, shown, place, (rect, scale), wishes);
                }
            }
        });
    });
}

fn step(
    ui: &mut Ui,
    look: &Look,
    scene: &Scene,
    shown: &Shown,
    place: &StepPlace,
    (page, scale): (Rect, f64),
    wishes: &mut Vec<Wish>,
) {
    let down = |mm: f64| page.top() + (mm * scale) as f32;
    let side = (10.0 * scale) as f32;
    let rect = Rect::from_min_max(
        pos2(page.left() + side, down(place.from) - 9.0),
        pos2(page.right() - side, down(place.to).min(page.bottom() - side) - 11.0),
    );
    let part = Part::Step(place.step);
    let chosen = shown.part.as_ref() == Some(&part);
    let response = ui.interact(rect, Id::unique(("booklet step", place.step, place.page)), Sense::click());
    let title = scene.draft().booklet.get(place.step).map_or("", |s| s.title.as_str());
    let called = say!("booklet-step", step = place.step + 1, page = place.page + 1, title);
    response.widget_info(|| WidgetInfo::selected(Role::Button, true, chosen, &called));
    if response.hovered() {
        ui.ctx().set_cursor_icon(CursorIcon::PointingHand);
    }
    if chosen || response.hovered() || response.has_focus() {
        let width = if chosen || response.has_focus() { 2.0 } else { 1.0 };
        let line = Stroke::new(width, look.handle);
        ui.painter().rect_stroke(rect.intersect(ui.clip_rect()), 4.0, line, StrokeKind::Inside);
    }
    if chosen && shown.scroll_to_part {
        ui.scroll_to_rect(rect, None);
    }
    if response.clicked() {
        wishes.push(Wish::Part(part));
    }
}

/// The words of a page, for those who do not see it.
fn words_of_page(page: &Picture) -> String {
    let words = page.items.iter().filter_map(|i| match i {
        Item::Text(text) => Some(text.text.as_str()),
        _ => None,
    });
    words.collect::<Vec<_>>().join(" ")
}
