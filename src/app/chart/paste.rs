//! A block of numbers before it is taken: its text, what is said of it, how it lies on the chart, what cannot be taken and why.

use egui::{
    Align2, Id, Rect, RichText, Role, ScrollArea, Sense, Stroke, StrokeKind, TextEdit, Ui, WidgetInfo, pos2, vec2,
};

use super::ChartWish;
use super::cell::number;
use crate::app::field;
use crate::app::look::{self, Look, letters};
use crate::app::scene::Scene;
use crate::app::state::{Shown, Wish};
use crate::base::{Severity, Unit};
use crate::document::Axis;
use crate::session::{Block, Fate, Home, Laid, Parted};
use crate::texts::say;

/// Width of a name and of a cell, height of a row, px.
const NAME: f32 = 150.0;
const CELL: f32 = 92.0;
const ROW: f32 = 24.0;
/// Height of the text, px; the preview and the list of what is wrong share the rest.
const TEXT: f32 = 96.0;
/// The most wrong cells that are listed; how many more there are is told.
const MOST_LISTED: usize = 200;

/// Paints the page.
pub(super) fn show(ui: &mut Ui, look: &Look, scene: &Scene, shown: &Shown, wishes: &mut Vec<Wish>) {
    let nothing = || Block::of(scene.draft(), "", Default::default());
    let block = shown.chart.block.clone().unwrap_or_else(nothing);
    text(ui, look, scene, shown, &block, wishes);
    let Some(laid) = shown.chart.laid(scene).filter(|_| !block.text.trim().is_empty()) else { return };
    said(ui, look, scene, &block, &laid, wishes);
    summary(ui, look, &laid, wishes);
    if laid.fault.is_some() {
        return;
    }
    let wrong = laid.wrong().count();
    let room = ui.available_height();
    let list = if wrong == 0 { 0.0 } else { (wrong as f32 * 20.0 + 30.0).min(room * 0.4) };
    preview(ui, look, &laid, room - list);
    if wrong > 0 {
        listed(ui, look, &laid, wrong);
    }
}

fn say(wishes: &mut Vec<Wish>, block: Block) {
    wishes.push(Wish::Chart(ChartWish::Say(Box::new(block))));
}

fn text(ui: &mut Ui, look: &Look, scene: &Scene, shown: &Shown, block: &Block, wishes: &mut Vec<Wish>) {
    let words = match shown.chart.source.as_str() {
        "" => say!("chart-paste-here"),
        file => say!("chart-paste-from", file),
    };
    ui.label(RichText::new(words).font(letters(look::SMALL)).color(look.soft));
    let mut buffer = block.text.clone();
    let response = ScrollArea::both()
        .id_salt("block")
        .max_height(TEXT)
        .show(ui, |ui| {
            let edit = TextEdit::multiline(&mut buffer)
                .id(Id::unique("pasted block"))
                .font(egui::FontSelection::FontId(look::code(look::CODE)));
            ui.add(edit.desired_rows(4).desired_width(f32::INFINITY))
        })
        .inner;
    ui.ctx().accesskit_node_builder(response.id, |node| node.set_label(say!("chart-pasted")));
    field::ring(ui, &response);
    if response.changed() {
        let mut next = Block::of(scene.draft(), &buffer, block.at.clone());
        next.unit = block.unit;
        say(wishes, next);
    }
}

/// A choice of one in a row of words.
fn choice(ui: &mut Ui, chosen: bool, word: &str, called: String, role: Role) -> bool {
    let response = ui.selectable_label(chosen, word);
    response.widget_info(|| WidgetInfo::selected(role, true, chosen, called.as_str()));
    response.clicked()
}

/// What a person says of the block.
fn said(ui: &mut Ui, look: &Look, scene: &Scene, block: &Block, laid: &Laid, wishes: &mut Vec<Wish>) {
    let caption = |ui: &mut Ui, words: &str| {
        ui.label(RichText::new(words).font(letters(look::SMALL)).color(look.soft));
    };
    let mut next = block.clone();
    ui.horizontal_wrapped(|ui| {
        caption(ui, &say!("chart-parted"));
        for parted in Parted::ALL {
            let called = say!("chart-parted-by", sign = parted.words());
            if choice(ui, block.parted == parted, &parted.words(), called, Role::RadioButton) {
                next.parted = parted;
                next.look_at_shape(scene.draft());
            }
        }
        ui.add_space(14.0);
        caption(ui, &say!("chart-bare"));
        for unit in [Unit::Centimetre, Unit::Millimetre, Unit::Inch] {
            let sign = unit.sign();
            if choice(ui, block.unit == Some(unit), sign, say!("chart-bare-in", unit = sign), Role::RadioButton) {
                next.unit = Some(unit);
            }
        }
    });
    ui.horizontal_wrapped(|ui| {
        if choice(ui, block.head, &say!("chart-first-line"), say!("chart-first-line-called"), Role::CheckBox) {
            next.head = !block.head;
        }
        if choice(ui, block.names, &say!("chart-first-column"), say!("chart-first-column-called"), Role::CheckBox) {
            next.names = !block.names;
        }
        let (columns, rows) = (laid.columns_nowhere(), laid.rows_nowhere());
        if columns > 0 || block.add_sizes {
            let word = say!("chart-add-sizes", axis = block.axis.words());
            if choice(ui, block.add_sizes, &word, say!("chart-add-sizes-called"), Role::CheckBox) {
                next.add_sizes = !block.add_sizes;
            }
        }
        if (rows > 0 || block.add_rows)
            && choice(ui, block.add_rows, &say!("chart-add-rows"), say!("chart-add-rows-called"), Role::CheckBox)
        {
            next.add_rows = !block.add_rows;
        }
    });
    if block.add_sizes {
        ui.horizontal_wrapped(|ui| {
            caption(ui, &say!("chart-new-sizes"));
            for axis in Axis::ALL {
                let called = say!("chart-new-sizes-along", axis = axis.words());
                if choice(ui, block.axis == axis, &axis.words(), called, Role::RadioButton) {
                    next.axis = axis;
                }
            }
            if !block.head {
                let (called, hint) = (say!("chart-new-labels"), say!("chart-new-labels-hint"));
                names(ui, "labels of new sizes", (&called, &hint), &mut next.new_sizes);
            }
        });
    }
    if block.add_rows && !block.names {
        let (called, hint) = (say!("chart-new-names"), say!("chart-new-names-hint"));
        ui.horizontal_wrapped(|ui| names(ui, "names of new rows", (&called, &hint), &mut next.new_rows));
    }
    if next != *block {
        say(wishes, next);
    }
}

/// A field with names and commas between.
fn names(ui: &mut Ui, id: &str, (called, hint): (&str, &str), list: &mut Vec<String>) {
    let mut text = list.join(",");
    let edit = TextEdit::singleline(&mut text).id(Id::unique(id)).hint_text(hint.to_owned()).desired_width(280.0);
    let response = ui.add(edit);
    ui.ctx().accesskit_node_builder(response.id, |node| node.set_label(called));
    field::ring(ui, &response);
    if response.changed() {
        *list = if text.trim().is_empty() {
            Vec::new()
        } else {
            text.split(',').map(|t| t.trim_start().to_owned()).collect()
        };
    }
}

/// What would happen, and the button that does it.
fn summary(ui: &mut Ui, look: &Look, laid: &Laid, wishes: &mut Vec<Wish>) {
    let (takes, wrong) = (laid.takes(), laid.wrong().count());
    let same = laid.rows.iter().flat_map(|r| &r.cells).filter(|c| c.fate == Fate::Same).count();
    ui.horizontal_wrapped(|ui| {
        let response = ui.add_enabled(takes > 0, egui::Button::new(say!("chart-take", count = takes)));
        response.widget_info(|| WidgetInfo::labeled(Role::Button, takes > 0, say!("chart-take-called")));
        if response.clicked() {
            wishes.push(Wish::Chart(ChartWish::Take));
        }
        if ui.button(say!("chart-put-away")).clicked() {
            wishes.push(Wish::Chart(ChartWish::Close));
        }
        let mut told = Vec::new();
        let (columns, rows) = (laid.columns_nowhere(), laid.rows_nowhere());
        if columns > 0 {
            told.push(say!("chart-columns-nowhere", count = columns));
        }
        if rows > 0 {
            told.push(say!("chart-lines-nowhere", count = rows));
        }
        if same > 0 {
            told.push(say!("chart-already", count = same));
        }
        if wrong > 0 {
            told.push(say!("chart-wrong", count = wrong));
        }
        ui.label(RichText::new(told.join("; ")).color(look.soft));
    });
    let words = match &laid.fault {
        Some(fault) => fault.clone(),
        None if laid.waits_for_unit() => say!("chart-say-unit"),
        None => return,
    };
    ui.label(RichText::new(format!("{} {words}", look::sign(Severity::Error))).color(look.error));
}

/// How the block lies on the chart. Only what is seen is painted.
fn preview(ui: &mut Ui, look: &Look, laid: &Laid, height: f32) {
    let size = vec2(NAME + laid.head.len() as f32 * CELL, (laid.rows.len() + 1) as f32 * ROW);
    let area = ScrollArea::both().id_salt("preview").auto_shrink([false, true]).max_height(height.max(80.0));
    area.show_viewport(ui, |ui, view| {
        let origin = ui.max_rect().min;
        ui.allocate_rect(Rect::from_min_size(origin, size), Sense::hover());
        let first = ((view.top() - ROW) / ROW).floor().max(0.0) as usize;
        let last = (view.bottom() / ROW).ceil().max(0.0) as usize;
        let left = ((view.left() - NAME) / CELL).floor().max(0.0) as usize;
        let right = ((view.right() - NAME) / CELL).ceil().max(0.0) as usize;
        let at = |r: usize, c: usize| {
            Rect::from_min_size(origin + vec2(NAME + c as f32 * CELL, r as f32 * ROW), vec2(CELL, ROW))
        };
        let columns: Vec<(usize, &Home)> = laid.head.iter().enumerate().take(right).skip(left).collect();
        for (c, home) in &columns {
            named(ui, look, at(0, *c), home, false);
        }
        for (r, row) in laid.rows.iter().enumerate().take(last).skip(first) {
            let name = Rect::from_min_size(origin + vec2(0.0, (r + 1) as f32 * ROW), vec2(NAME, ROW));
            named(ui, look, name, &row.home, true);
            for (c, home) in &columns {
                let Some(cell) = row.cells.get(*c) else { continue };
                let rect = at(r + 1, *c);
                let painter = ui.painter();
                painter.rect_stroke(rect, 0.0, Stroke::new(0.5, look.border), StrokeKind::Middle);
                let place = say!("chart-cell", row = row.home.name(), column = home.name());
                let (words, color, told) = match &cell.fate {
                    Fate::Empty => continue,
                    Fate::Same => (format!("= {}", cell.typed), look.soft, say!("chart-laid-same", place)),
                    Fate::Takes(text) => (text.clone(), look.ink, say!("chart-laid-takes", place, text)),
                    Fate::Wrong(why) => {
                        let words = format!("{} {}", look::sign(Severity::Error), cell.typed);
                        (words, look.error, say!("chart-laid-wrong", place, why))
                    }
                };
                let response = ui.interact(rect, ui.scope_id().with(("laid", r, c)), Sense::hover());
                response.widget_info(|| WidgetInfo::labeled(Role::Label, true, &told));
                number(ui, rect, &words, color);
                response.on_hover_text(match cell.now.as_str() {
                    "" => told,
                    now => say!("chart-laid-now", told, now),
                });
            }
        }
    });
}

/// The name of a line or column; what is new or has no place says so.
fn named(ui: &Ui, look: &Look, rect: Rect, home: &Home, is_row: bool) {
    let (words, color) = match home {
        Home::Known(name) => (name.clone(), look.ink),
        Home::New(name) => (format!("+ {name}"), look.note),
        Home::Nowhere { called, .. } => (format!("{} {called}", look::sign(Severity::Error)), look.error),
    };
    let told = match (home, is_row) {
        (Home::Known(name), true) => say!("chart-block-row", name),
        (Home::Known(name), false) => say!("chart-block-size", name),
        (Home::New(name), true) => say!("chart-block-new-row", name),
        (Home::New(name), false) => say!("chart-block-new-size", name),
        (Home::Nowhere { called, why }, true) => say!("chart-block-no-row", name = called, why),
        (Home::Nowhere { called, why }, false) => say!("chart-block-no-size", name = called, why),
    };
    let response =
        ui.interact(rect, ui.scope_id().with(("named", is_row, rect.min.x as i32, rect.min.y as i32)), Sense::hover());
    response.widget_info(|| WidgetInfo::labeled(Role::Label, true, &told));
    ui.painter().with_clip_rect(rect.intersect(ui.clip_rect())).text(
        match is_row {
            true => pos2(rect.left() + 4.0, rect.center().y),
            false => pos2(rect.right() - 8.0, rect.center().y),
        },
        if is_row { Align2::LEFT_CENTER } else { Align2::RIGHT_CENTER },
        words,
        letters(look::SMALL),
        color,
    );
    response.on_hover_text(told);
}

/// What cannot be taken, line by line.
fn listed(ui: &mut Ui, look: &Look, laid: &Laid, many: usize) {
    ui.label(RichText::new(say!("chart-not-taken")).font(letters(look::TEXT)).color(look.ink));
    ScrollArea::vertical().id_salt("wrong").auto_shrink([false, false]).show(ui, |ui| {
        for (row, home, cell, why) in laid.wrong().take(MOST_LISTED) {
            let place: Vec<&str> = [row.home.name(), home.name()].into_iter().filter(|n| !n.is_empty()).collect();
            let place = place.join(", ");
            let words = say!("chart-not-taken-line", number = row.line, place, typed = &*cell.typed, why);
            ui.label(RichText::new(words).font(letters(look::SMALL)).color(look.error));
        }
        if many > MOST_LISTED {
            ui.label(RichText::new(say!("chart-more", count = many - MOST_LISTED)).color(look.soft));
        }
    });
}
