//! The table: names at the left and sizes at the top stay where they are while the numbers roll. Only what is seen is painted.

use egui::{
    Align2, Pos2, Rect, Role, ScrollArea, Sense, Stroke, StrokeKind, Ui, UiBuilder, WidgetInfo, pos2,
    style::ScrollAnimation, vec2,
};

use super::ChartWish;
use super::cell::{self, Place, ROW};
use super::sight::{Column, Sight, step_words};
use crate::app::field;
use crate::app::look::{self, Look, letters};
use crate::app::state::{Shown, Wish};
use crate::document::{Part, RowKind};
use crate::session::{Step, row_steps};
use crate::texts::say;

/// Width of a row's name, px.
const NAME: f32 = 150.0;
/// Width of a cell, px.
const CELL: f32 = 96.0;
/// What a line of steps adds to the height of a row, px.
const STEP: f32 = 16.0;
/// Height of the line of sizes, px.
const HEAD: f32 = 26.0;
/// Between rows that vary by different axes, px.
const GAP: f32 = 20.0;

/// Where things stand.
struct Ground {
    /// The corner of the whole table on the screen.
    origin: Pos2,
    /// The part of the screen in which the table is seen.
    seen: Rect,
    row: f32,
    /// The top of each section, from the origin.
    tops: Vec<f32>,
}

impl Ground {
    fn cell(&self, (s, r, c): Place) -> Rect {
        let at = vec2(NAME + c as f32 * CELL, self.tops[s] + HEAD + r as f32 * self.row);
        Rect::from_min_size(self.origin + at, vec2(CELL, self.row))
    }

    /// The line of sizes of a section: at its top, or at the top of what is seen while its rows are.
    fn head(&self, s: usize, rows: usize) -> Rect {
        let top = self.origin.y + self.tops[s];
        let last = top + rows as f32 * self.row;
        let y = top.max(self.seen.top().min(last));
        Rect::from_min_size(pos2(self.seen.left(), y), vec2(self.seen.width(), HEAD))
    }

    /// The rows, or columns, from the first to behind the last that are seen.
    fn range(from: f32, to: f32, each: f32, many: usize) -> std::ops::Range<usize> {
        let first = (from / each).floor().max(0.0) as usize;
        let last = (to / each).ceil().max(0.0) as usize;
        first.min(many)..last.min(many)
    }
}

/// Paints the table.
pub(super) fn show(ui: &mut Ui, look: &Look, sight: &Sight<'_>, shown: &Shown, wishes: &mut Vec<Wish>) {
    let chart = &sight.scene.draft().chart;
    if chart.rows.is_empty() || crate::document::Axis::ALL.into_iter().all(|a| chart.labels(a).is_empty()) {
        ui.label(egui::RichText::new(say!("chart-empty")).color(look.soft));
    }
    let from = cell::focused(ui, sight);
    cell::pasted(ui, sight, shown, from, wishes);
    let to = from
        .and_then(|from| cell::keys(ui, sight, shown, from, wishes))
        .or_else(|| sent(ui, sight, shown, from, wishes));
    // Fields: the one that has the focus, and one that is being left.
    let fields: Vec<Place> = [to.or(from), cell::typed(sight, shown)].into_iter().flatten().collect();
    let row = if shown.chart.steps { ROW + STEP } else { ROW };
    let mut tops = Vec::new();
    let (mut height, mut wide) = (0.0, 0);
    for section in &sight.sections {
        tops.push(height);
        height += HEAD + section.rows.len() as f32 * row + GAP;
        wide = wide.max(section.columns.len());
    }
    let size = vec2(NAME + wide as f32 * CELL, height);
    ScrollArea::both().id_salt("chart").auto_shrink([false, false]).show_viewport(ui, |ui, view| {
        let origin = ui.max_rect().min;
        ui.allocate_rect(Rect::from_min_size(origin, size), Sense::hover());
        let ground = Ground { origin, seen: Rect::from_min_size(origin + view.min.to_vec2(), view.size()), row, tops };
        if let Some(place) = to {
            // Names and sizes lie over the edge: the cell is to be seen beside them.
            let rect = ground.cell(place);
            let whole = Rect::from_min_max(rect.min - vec2(NAME, HEAD), rect.max);
            ui.scroll_to_rect_animation(whole, None, ScrollAnimation::none());
        }
        for s in 0..sight.sections.len() {
            section(ui, look, sight, shown, &ground, (s, &fields), wishes);
        }
    });
}

/// The cell to which the keyboard was sent from elsewhere, while it is not there.
fn sent(ui: &Ui, sight: &Sight<'_>, shown: &Shown, from: Option<Place>, wishes: &mut Vec<Wish>) -> Option<Place> {
    let field = shown.chart.go.as_ref()?;
    let place = cell::find(sight, |f| f == field)?;
    if from == Some(place) {
        wishes.push(Wish::Chart(ChartWish::Arrived));
        return None;
    }
    ui.memory_mut(|m| m.request_focus(field::id(field)));
    ui.ctx().request_repaint();
    Some(place)
}

fn section(
    ui: &mut Ui,
    look: &Look,
    sight: &Sight<'_>,
    shown: &Shown,
    ground: &Ground,
    (s, fields): (usize, &[Place]),
    wishes: &mut Vec<Wish>,
) {
    let section = &sight.sections[s];
    let head = ground.head(s, section.rows.len());
    let body = Rect::from_min_max(pos2(ground.seen.left() + NAME, head.bottom()), ground.seen.max);
    let first = ground.origin + vec2(NAME, ground.tops[s] + HEAD);
    let rows = Ground::range(body.top() - first.y, body.bottom() - first.y, ground.row, section.rows.len());
    let columns = Ground::range(body.left() - first.x, body.right() - first.x, CELL, section.columns.len());
    let chosen: Vec<bool> = columns.clone().map(|c| sight.is_chosen(s, &section.columns[c], &shown.case)).collect();
    let row_chosen = |r: usize| shown.part == Some(Part::Row(section.rows[r].name.clone()));

    let mut inner = ui.new_child(UiBuilder::new().max_rect(body).id_salt(("cells", s)));
    inner.set_clip_rect(body.intersect(ui.clip_rect()));
    for r in rows.clone() {
        let steps = if shown.chart.steps { steps(sight, s, r) } else { Vec::new() };
        for (i, c) in columns.clone().enumerate() {
            let rect = ground.cell((s, r, c));
            if row_chosen(r) || chosen[i] {
                inner.painter().rect_filled(rect, 0.0, look.touched.gamma_multiply(0.55));
            }
            inner.painter().rect_stroke(rect, 0.0, Stroke::new(0.5, look.border), StrokeKind::Middle);
            if !fields.contains(&(s, r, c)) {
                cell::show(&mut inner, look, sight, shown, (s, r, c), rect, wishes);
            }
            if let Some(Some(step)) = steps.get(c) {
                step_line(&inner, look, sight, (s, r, c), *step, rect.with_min_y(rect.top() + ROW - 3.0));
            }
        }
    }
    // The cell that is typed in is there also while it is rolled out of sight.
    for (i, place) in fields.iter().enumerate().filter(|(_, p)| p.0 == s) {
        if !fields[..i].contains(place) {
            cell::show(&mut inner, look, sight, shown, *place, ground.cell(*place), wishes);
        }
    }
    names(ui, look, sight, shown, ground, (s, head, rows), wishes);
    heads(ui, look, sight, ground, (s, head, columns, &chosen), wishes);
}

/// The steps of a row, one for each column of sizes.
fn steps(sight: &Sight<'_>, s: usize, r: usize) -> Vec<Option<Step>> {
    let row = sight.sections[s].rows[r];
    let number = |key: &str| sight.number(s, row, &Column::Size(key.to_owned())).map(|(n, _)| n);
    row_steps(&sight.scene.draft().chart, row, &number)
}

fn step_line(ui: &Ui, look: &Look, sight: &Sight<'_>, (s, r, c): Place, step: Step, rect: Rect) {
    let section = &sight.sections[s];
    let (row, column) = (section.rows[r], &section.columns[c]);
    let kind = sight.number(s, row, column).and_then(|(_, kind)| kind);
    let words = step_words(row, step.by, kind, sight.scene);
    let (name, to) = (&*row.name, column.words());
    let told = match step.uneven {
        true => say!("chart-step-uneven", row = name, size = to, step = words),
        false => say!("chart-step", row = name, size = to, step = words),
    };
    let response = ui.interact(rect, ui.scope_id().with(("step", r, c)), Sense::hover());
    response.widget_info(|| WidgetInfo::labeled(Role::Label, true, &told));
    let (words, color) = if step.uneven { (format!("≠ {words}"), look.warning) } else { (words, look.soft) };
    let at = pos2(rect.right() - 8.0, rect.center().y);
    ui.painter().text(at, Align2::RIGHT_CENTER, words, letters(look::SMALL - 1.0), color);
}

/// The names of the rows, at the left of what is seen.
fn names(
    ui: &mut Ui,
    look: &Look,
    sight: &Sight<'_>,
    shown: &Shown,
    ground: &Ground,
    (s, head, rows): (usize, Rect, std::ops::Range<usize>),
    wishes: &mut Vec<Wish>,
) {
    let left = Rect::from_min_max(
        pos2(ground.seen.left(), head.bottom()),
        pos2(ground.seen.left() + NAME, ground.seen.bottom()),
    );
    let mut inner = ui.new_child(UiBuilder::new().max_rect(left).id_salt(("names", s)));
    inner.set_clip_rect(left.intersect(ui.clip_rect()));
    for r in rows {
        let row = sight.sections[s].rows[r];
        let cell = ground.cell((s, r, 0));
        let rect = Rect::from_min_size(pos2(left.left(), cell.top()), vec2(NAME, cell.height()));
        let response = inner.interact(rect, inner.scope_id().with(&row.name), Sense::click());
        let chosen = shown.part == Some(Part::Row(row.name.clone()));
        let called = say!("chart-row", row = &*row.name);
        response.widget_info(|| WidgetInfo::selected(Role::Button, true, chosen, called.as_str()));
        let ground = if chosen || response.hovered() { look.touched } else { look.sheet };
        inner.painter().rect_filled(rect, 0.0, ground);
        inner.painter().hline(rect.x_range(), rect.bottom(), Stroke::new(0.5, look.border));
        if chosen {
            // Not by its ground alone.
            inner.painter().rect_filled(rect.with_max_x(rect.left() + 3.0), 0.0, look.ink);
        }
        let house = row.kind == RowKind::House;
        let mut job = egui::text::LayoutJob::single_section(
            row.name.clone(),
            egui::TextFormat { font_id: letters(look::TEXT), color: look.ink, italics: house, ..Default::default() },
        );
        job.wrap = egui::text::TextWrapping::truncate_at_width(NAME - 10.0);
        let galley = inner.painter().layout_job(job);
        let at = pos2(rect.left() + 8.0, rect.center().y - galley.size().y / 2.0);
        inner.painter().galley(at, galley, look.ink);
        let about = match (house, row.what.as_str()) {
            (true, "") => say!("card-row-house-called"),
            (true, what) => say!("chart-house-row", what),
            (false, what) => what.to_owned(),
        };
        let response = if about.is_empty() { response } else { response.on_hover_text(about) };
        if response.clicked() {
            wishes.push(Wish::Part(Part::Row(row.name.clone())));
        }
    }
}

/// The sizes and persons, at the top of what is seen.
fn heads(
    ui: &mut Ui,
    look: &Look,
    sight: &Sight<'_>,
    ground: &Ground,
    (s, head, columns, chosen): (usize, Rect, std::ops::Range<usize>, &[bool]),
    wishes: &mut Vec<Wish>,
) {
    let section = &sight.sections[s];
    let by: Vec<String> = section.by.iter().map(|a| a.words()).collect();
    let words = if by.is_empty() { say!("chart-same-in-all") } else { say!("chart-by", axes = by.join(", ")) };
    let base = sight.scene.cases().and_then(|c| c.base);
    let clip = head.intersect(ui.clip_rect());
    let mut inner = ui.new_child(UiBuilder::new().max_rect(head).id_salt(("sizes", s)));
    inner.set_clip_rect(clip);
    inner.painter().rect_filled(head, 0.0, look.panel);
    for (i, c) in columns.enumerate() {
        let column = &section.columns[c];
        let x = ground.cell((s, 0, c)).left();
        let rect = Rect::from_min_size(pos2(x, head.top()), vec2(CELL, HEAD));
        // Names lie over the line of sizes.
        inner.set_clip_rect(clip.with_min_x(head.left() + NAME));
        let case = sight.case(s, column);
        let is_base = case.is_some() && case == base;
        let (name, rows) = (column.words(), &*words);
        // Persons stand behind the sizes of every section.
        let called = match (is_base, s > 0) {
            (false, false) => say!("chart-column", name),
            (true, false) => say!("chart-base-column", name),
            (false, true) => say!("chart-column-of", name, rows),
            (true, true) => say!("chart-base-column-of", name, rows),
        };
        let response = inner.interact(rect, inner.scope_id().with(c), Sense::click());
        response.widget_info(|| WidgetInfo::selected(Role::Button, true, chosen[i], called.as_str()));
        if chosen[i] || response.hovered() {
            inner.painter().rect_filled(rect, 0.0, look.touched);
        }
        let color = case.map_or(look.ink, |case| look.size(sight.scene.part(case)));
        let name = if is_base { say!("chart-base-of", name) } else { name };
        cell::number(&inner, rect, &name, color);
        if chosen[i] {
            let line = Stroke::new(2.0, color);
            inner.painter().hline((rect.left() + 6.0)..=(rect.right() - 6.0), rect.bottom() - 2.0, line);
        }
        if response.clicked() {
            if let Some(case) = case.and_then(|i| sight.scene.cases()?.list.get(i)) {
                wishes.push(Wish::Choose(case.address.clone()));
            }
            if let Column::Person(name) = column {
                wishes.push(Wish::Part(Part::Person(name.clone())));
            }
        }
    }
    inner.set_clip_rect(clip);
    let corner = head.with_max_x(head.left() + NAME);
    inner.painter().rect_filled(corner, 0.0, look.panel);
    if sight.sections.len() > 1 {
        let at = pos2(corner.left() + 4.0, corner.center().y);
        inner.painter().text(at, Align2::LEFT_CENTER, words, letters(look::SMALL), look.soft);
    }
    inner.painter().hline(head.x_range(), head.bottom(), Stroke::new(1.0, look.border));
}
