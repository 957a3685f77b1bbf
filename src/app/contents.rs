//! The contents at the left: what the draft holds, by name; a click shows it.

use egui::{Align, Button, CornerRadius, Role, ScrollArea, Ui, WidgetInfo, vec2};

use super::look::{self, Look};
use super::scene::Scene;
use super::state::{Room, Shown, Wish};
use super::{guide, help};
use crate::document::{Inner, Part};
use crate::session::Act;
use crate::texts::say;

/// More values than this are folded until they are asked for.
const FEW: usize = 8;
/// Points and edges are listed only of the chosen piece: more names than this are not listed.
const MOST: usize = 400;

/// Paints the contents.
pub(super) fn show(ui: &mut Ui, look: &Look, scene: &Scene, shown: &Shown, wishes: &mut Vec<Wish>) {
    ScrollArea::vertical().auto_shrink([false, false]).show(ui, |ui| {
        ui.spacing_mut().item_spacing.y = 1.0;
        ui.set_max_width(ui.available_width() - 4.0);
        let draft = scene.draft();
        let sizes = scene.cases().map_or(0, |c| c.range);
        let heading = Line {
            name: &say!("contents-draft"),
            about: "",
            depth: 0,
            chosen: shown.part == Some(Part::Draft) && shown.room != Room::Chart,
        };
        ui.add_space(5.0);
        ui.horizontal(|ui| {
            ui.spacing_mut().item_spacing.x = 2.0;
            let width = ui.available_width() - 38.0;
            if heading.button(ui, look, heading.name, width).clicked() {
                wishes.push(Wish::Room(Room::Table));
                wishes.push(Wish::Part(Part::Draft));
            }
            help::question(ui, &say!("contents-about"), "contents", wishes);
        });
        let about = format!(
            "{} · {}",
            say!("contents-sizes", count = sizes),
            say!("contents-rows", count = draft.chart.rows.len())
        );
        let chart = say!("contents-chart");
        if (Line { name: &chart, about: &about, depth: 0, chosen: shown.room == Room::Chart }).show(ui, look) {
            wishes.push(Wish::Act(Act::Chart));
        }
        let found = draft.values.iter().filter(|v| v.is_found()).count();
        let about = match (draft.values.len(), found) {
            (all, 0) => all.to_string(),
            (all, found) => say!("contents-some-found", all, found),
        };
        let open = shown.values_open || matches!(shown.part, Some(Part::Value(_))) || draft.values.len() <= FEW;
        group(ui, look, shown, (&say!("contents-values"), &about), Some(open), Act::AddValue, wishes);
        for value in draft.values.iter().filter(|_| open) {
            let about = if value.is_found() { say!("contents-found") } else { String::new() };
            part(ui, look, shown, Part::Value(value.name.clone()), 1, &about, wishes);
        }
        if !draft.drawings.is_empty() {
            plain(ui, look, &say!("contents-drawings"), &draft.drawings.len().to_string());
            for drawing in &draft.drawings {
                part(ui, look, shown, Part::Drawing(drawing.name.clone()), 1, "", wishes);
                inside(ui, look, scene, shown, &drawing.name, wishes);
            }
        }
        group(
            ui,
            look,
            shown,
            (&say!("contents-pieces"), &draft.pieces.len().to_string()),
            None,
            Act::AddPiece,
            wishes,
        );
        for piece in &draft.pieces {
            let about = if scene.has(&piece.name) { String::new() } else { say!("contents-not-in-view") };
            part(ui, look, shown, Part::Piece(piece.name.clone()), 1, &about, wishes);
            inside(ui, look, scene, shown, &piece.name, wishes);
        }
        let off = scene.findings().filter(|(_, f)| !f.place.seam.is_empty()).count();
        let about = match (draft.seams.len(), off) {
            (0, _) => "0".to_owned(),
            (n, 0) => say!("contents-seams-fine", count = n),
            (n, off) => say!("contents-seams-off", count = n, off),
        };
        group(ui, look, shown, (&say!("contents-seams"), &about), None, Act::AddSeam, wishes);
        let states = scene.seams(scene.case_of(&shown.case));
        for (i, seam) in draft.seams.iter().enumerate() {
            let about = states.get(i).map_or("", |s| s.short.as_str());
            part(ui, look, shown, Part::Seam(seam.name.clone()), 1, about, wishes);
        }
        let about = draft.conditions.len().to_string();
        group(ui, look, shown, (&say!("contents-conditions"), &about), None, Act::AddCondition, wishes);
        for condition in &draft.conditions {
            part(ui, look, shown, Part::Condition(condition.name.clone()), 1, "", wishes);
        }
        if !draft.views.is_empty() {
            let about = draft.views.len().to_string();
            group(ui, look, shown, (&say!("contents-views"), &about), None, Act::AddView, wishes);
            for view in &draft.views {
                part(ui, look, shown, Part::View(view.name.clone()), 1, "", wishes);
            }
        }
        published(ui, look, scene, shown, wishes);
        let later =
            [(say!("contents-placements"), draft.placements.len()), (say!("contents-sheets"), draft.sheets.len())];
        for (name, many) in later.into_iter().filter(|(_, many)| *many > 0) {
            plain(ui, look, &name, &say!("contents-in-file", count = many));
        }
    });
}

/// Strips, notions, cloth, the steps of the booklet, the log.
fn published(ui: &mut Ui, look: &Look, scene: &Scene, shown: &Shown, wishes: &mut Vec<Wish>) {
    let draft = scene.draft();
    let lists: [(String, Act, Vec<Part>); 3] = [
        (say!("contents-strips"), Act::AddStrip, draft.strips.iter().map(|s| Part::Strip(s.name.clone())).collect()),
        (
            say!("contents-notions"),
            Act::AddNotion,
            draft.notions.iter().map(|n| Part::Notion(n.name.clone())).collect(),
        ),
        (
            say!("contents-cloth"),
            Act::AddMaterial,
            draft.materials.iter().map(|m| Part::Material(m.name.clone())).collect(),
        ),
    ];
    for (name, add, parts) in lists {
        group(ui, look, shown, (&name, &parts.len().to_string()), None, add, wishes);
        for own in parts {
            part(ui, look, shown, own, 1, "", wishes);
        }
    }
    let steps = draft.booklet.len().to_string();
    if group(ui, look, shown, (&say!("contents-booklet"), &steps), None, Act::AddStep, wishes) {
        wishes.push(Wish::Act(Act::Booklet));
    }
    let view = scene.model().map_or("", |m| m.view());
    for (i, step) in draft.booklet.iter().enumerate() {
        let is_here = view.is_empty() || step.views.is_empty() || step.views.iter().any(|v| v == view);
        let about = if is_here { String::new() } else { say!("contents-not-in-view") };
        let title = step.title.trim();
        let name = if title.is_empty() { format!("{}.", i + 1) } else { format!("{}. {title}", i + 1) };
        line(ui, look, shown, Part::Step(i), (&name, 1, &about), wishes);
    }
    let many = draft.log.fittings.len();
    let fittings = say!("contents-fittings", count = many);
    group(ui, look, shown, (&say!("contents-log"), &fittings), None, Act::AddFitting, wishes);
    if many > 0 || !draft.log.releases.is_empty() {
        line(ui, look, shown, Part::Kept, (&say!("contents-kept"), 1, ""), wishes);
    }
}

/// Points, edges, darts of the piece in which something is chosen.
fn inside(ui: &mut Ui, look: &Look, scene: &Scene, shown: &Shown, frame: &str, wishes: &mut Vec<Wish>) {
    if shown.frame() != Some(frame) {
        return;
    }
    for inner in scene.parts_in(frame).into_iter().take(MOST) {
        let about = match &inner {
            Part::Inner(_, Inner::Point, _) => String::new(),
            Part::Inner(_, what, _) => what.words(),
            _ => String::new(),
        };
        part(ui, look, shown, inner.clone(), 2, &about, wishes);
    }
}

/// A heading with a button that adds one; a click on one that can be folded opens or folds it. Says whether it was clicked.
fn group(
    ui: &mut Ui,
    look: &Look,
    shown: &Shown,
    (name, about): (&str, &str),
    open: Option<bool>,
    add: Act,
    wishes: &mut Vec<Wish>,
) -> bool {
    ui.add_space(5.0);
    ui.horizontal(|ui| {
        ui.spacing_mut().item_spacing.x = 2.0;
        let called = match open {
            Some(true) => say!("contents-fold", name),
            Some(false) => say!("contents-unfold", name),
            None => name.to_owned(),
        };
        let width = ui.available_width() - 38.0;
        let line = Line { name, about, depth: 0, chosen: false };
        let response = line.button(ui, look, &called, width);
        let clicked = response.clicked();
        if let Some(open) = open {
            arrow(ui, look, response.rect, open);
            if clicked {
                wishes.push(Wish::FoldValues);
            }
        }
        let button = Button::new("+").corner_radius(look::ROUND).min_size(vec2(30.0, 22.0)).small();
        let response = ui.add(button).on_hover_text(add.action().what());
        response.widget_info(|| WidgetInfo::labeled(Role::Button, true, add.action().name().trim_end_matches(" …")));
        guide::mark(ui, shown, add, &response);
        if response.clicked() {
            wishes.push(Wish::Act(add));
        }
        clicked
    })
    .inner
}

/// A small triangle before the words: down where it is open, right where it is folded.
fn arrow(ui: &Ui, look: &Look, rect: egui::Rect, open: bool) {
    let at = egui::pos2(rect.left() + 2.0, rect.center().y);
    let corners = match open {
        true => [vec2(-3.0, -2.0), vec2(3.0, -2.0), vec2(0.0, 3.0)],
        false => [vec2(-2.0, -3.5), vec2(3.0, 0.0), vec2(-2.0, 3.5)],
    };
    let corners = corners.map(|c| at + c).to_vec();
    ui.painter().add(egui::Shape::convex_polygon(corners, look.soft, egui::Stroke::NONE));
}

fn plain(ui: &mut Ui, look: &Look, name: &str, about: &str) {
    ui.add_space(5.0);
    let width = ui.available_width();
    (Line { name, about, depth: 0, chosen: false }).button(ui, look, name, width);
}

fn part(ui: &mut Ui, look: &Look, shown: &Shown, part: Part, depth: usize, about: &str, wishes: &mut Vec<Wish>) {
    let name = part.name().to_owned();
    line(ui, look, shown, part, (&name, depth, about), wishes);
}

/// A part under a name that may be another than its own.
fn line(
    ui: &mut Ui,
    look: &Look,
    shown: &Shown,
    part: Part,
    (name, depth, about): (&str, usize, &str),
    wishes: &mut Vec<Wish>,
) {
    let chosen = shown.part.as_ref() == Some(&part) && shown.room != Room::Chart;
    let width = ui.available_width();
    let response = (Line { name, about, depth, chosen }).button(ui, look, &part.words(), width);
    if chosen && shown.scroll_to_part {
        response.scroll_to_me(Some(Align::Center));
    }
    if response.clicked() {
        if shown.room != Room::Booklet || !matches!(part, Part::Step(_)) {
            wishes.push(Wish::Room(Room::Table));
        }
        wishes.push(Wish::Part(part));
    }
}

/// A line of the contents.
struct Line<'a> {
    name: &'a str,
    about: &'a str,
    depth: usize,
    chosen: bool,
}

impl Line<'_> {
    fn show(&self, ui: &mut Ui, look: &Look) -> bool {
        ui.add_space(5.0);
        let width = ui.available_width();
        self.button(ui, look, self.name, width).clicked()
    }

    fn button(&self, ui: &mut Ui, look: &Look, called: &str, width: f32) -> egui::Response {
        let size = vec2(width, look.row);
        let (rect, response) = ui.allocate_exact_size(size, egui::Sense::click());
        response.widget_info(|| WidgetInfo::selected(Role::Button, true, self.chosen, called));
        if ui.is_rect_visible(rect) {
            let fill = match (self.chosen, response.hovered()) {
                (true, _) => Some(look.border),
                (false, true) => Some(look.touched),
                _ => None,
            };
            if let Some(fill) = fill {
                ui.painter().rect_filled(rect, CornerRadius::same(6), fill);
            }
            if response.has_focus() {
                let line = egui::Stroke::new(1.5, look.ink);
                ui.painter().rect_stroke(rect, CornerRadius::same(6), line, egui::StrokeKind::Inside);
            }
            let left = rect.left() + 8.0 + 12.0 * self.depth as f32;
            let painter = ui.painter_at(rect);
            let size = if self.depth == 0 { look::TEXT + 0.5 } else { look::TEXT };
            let name = painter.layout_no_wrap(self.name.to_owned(), look::letters(size), look.ink);
            let about = painter.layout_no_wrap(self.about.to_owned(), look::letters(look::SMALL), look.soft);
            let y = rect.center().y;
            let room = rect.right() - 6.0 - (left + name.size().x + 8.0);
            painter.galley(egui::pos2(left, y - name.size().y / 2.0), name, look.ink);
            if about.size().x <= room {
                let at = egui::pos2(rect.right() - 6.0 - about.size().x, y - about.size().y / 2.0);
                painter.galley(at, about, look.soft);
            }
        }
        response.on_hover_text_at_pointer_if(self.about)
    }
}

/// A hint only where there is something to say.
trait HintIf {
    fn on_hover_text_at_pointer_if(self, words: &str) -> Self;
}

impl HintIf for egui::Response {
    fn on_hover_text_at_pointer_if(self, words: &str) -> Self {
        if words.is_empty() { self } else { self.on_hover_text(words) }
    }
}
