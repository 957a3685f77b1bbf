//! A cell of the chart, and the keys that go from cell to cell.

use egui::text::{CCursor, CCursorRange};
use egui::text_edit::TextEditState;
use egui::{
    Align2, EventFilter, FocusDirection, Id, Key, Modifiers, Rect, Sense, Ui, UiBuilder, WidgetInfo, pos2, vec2,
};

use super::sight::Sight;
use super::{ChartWish, Page};
use crate::app::field::{self, Form};
use crate::app::look::{self, Look, letters};
use crate::app::state::{Field, Room, Shown, Wish};
use crate::document::{Part, Row};
use crate::session::{ChartCommand, Command};
use crate::texts::say;

/// Height of a number, px; below it a step may stand.
pub(super) const ROW: f32 = 28.0;

/// A place of the chart: section, row, column.
pub(super) type Place = (usize, usize, usize);

/// The field at a place.
pub(super) fn field_at(sight: &Sight<'_>, (s, r, c): Place) -> Option<Field> {
    let section = sight.sections.get(s)?;
    section.columns.get(c)?.field(section.rows.get(r)?)
}

/// The cell that has the focus.
pub(super) fn focused(ui: &Ui, sight: &Sight<'_>) -> Option<Place> {
    let focus = ui.memory(|m| m.focused())?;
    find(sight, |field| field::id(field) == focus)
}

/// The cell that is typed in; it may have lost the focus in this frame.
pub(super) fn typed(sight: &Sight<'_>, shown: &Shown) -> Option<Place> {
    let typing = shown.typing.as_ref()?;
    find(sight, |field| *field == typing.field)
}

/// The place of a field.
pub(super) fn find(sight: &Sight<'_>, is_it: impl Fn(&Field) -> bool) -> Option<Place> {
    for (s, section) in sight.sections.iter().enumerate() {
        for (r, row) in section.rows.iter().enumerate() {
            for (c, column) in section.columns.iter().enumerate() {
                if column.field(row).is_some_and(|f| is_it(&f)) {
                    return Some((s, r, c));
                }
            }
        }
    }
    None
}

/// Listens to the keys that go to another cell. Gives the cell that has the focus from now on, if it is another one.
pub(super) fn keys(ui: &Ui, sight: &Sight<'_>, shown: &Shown, from: Place, wishes: &mut Vec<Wish>) -> Option<Place> {
    let field = field_at(sight, from)?;
    let id = field::id(&field);
    let typed = shown.typing.as_ref().filter(|t| t.field == field).map(|t| t.text.as_str());
    let text = typed.unwrap_or_else(|| text_at(sight, from));
    let (first, last) = caret(ui, id, text);
    let to = ui.input_mut(|i| {
        let mut key = |modifiers, key| i.consume_key(modifiers, key);
        if key(Modifiers::SHIFT, Key::Enter) || key(Modifiers::NONE, Key::ArrowUp) {
            Some(below(sight, from, -1))
        } else if key(Modifiers::NONE, Key::Enter) || key(Modifiers::NONE, Key::ArrowDown) {
            Some(below(sight, from, 1))
        } else if key(Modifiers::SHIFT, Key::Tab) {
            Some(beside(sight, from, -1, true))
        } else if key(Modifiers::NONE, Key::Tab) {
            Some(beside(sight, from, 1, true))
        } else if first && !i.modifiers.any() && i.consume_key(Modifiers::NONE, Key::ArrowLeft) {
            Some(beside(sight, from, -1, false))
        } else if last && !i.modifiers.any() && i.consume_key(Modifiers::NONE, Key::ArrowRight) {
            Some(beside(sight, from, 1, false))
        } else {
            None
        }
    })?;
    // The toolkit would go to the next widget by itself.
    ui.memory_mut(|m| m.move_focus(FocusDirection::None));
    match to.and_then(|to| Some((to, field_at(sight, to)?))) {
        Some((to, next)) => {
            ui.memory_mut(|m| m.request_focus(field::id(&next)));
            Some(to)
        }
        None => {
            // At the end of the table what was typed is taken, and the cell keeps the focus.
            wishes.push(Wish::Enter(field));
            choose_all(ui, id, text);
            None
        }
    }
}

/// Whether the caret is at the start and at the end of the text; all of it chosen is both.
fn caret(ui: &Ui, id: Id, text: &str) -> (bool, bool) {
    let many = text.chars().count();
    let range = TextEditState::load(ui.ctx(), id).and_then(|s| s.cursor.char_range());
    let Some(range) = range.map(|r| r.as_sorted_char_range()) else { return (true, true) };
    let (from, to) = (range.start.0, range.end.0.min(many));
    if from == 0 && to >= many { (true, true) } else { (from == to && from == 0, from == to && to == many) }
}

fn choose_all(ui: &Ui, id: Id, text: &str) {
    let mut state = TextEditState::load(ui.ctx(), id).unwrap_or_default();
    let all = CCursorRange::two(CCursor::new(0), CCursor::new(text.chars().count()));
    state.cursor.set_char_range(Some(all));
    state.store(ui.ctx(), id);
}

fn text_at<'a>(sight: &Sight<'a>, (s, r, c): Place) -> &'a str {
    let Some(section) = sight.sections.get(s) else { return "" };
    match (section.rows.get(r), section.columns.get(c)) {
        (Some(row), Some(column)) => sight.typed(row, column),
        _ => "",
    }
}

/// The cell above or below, over the borders of sections.
fn below(sight: &Sight<'_>, (s, r, c): Place, by: isize) -> Option<Place> {
    let rows: Vec<(usize, usize)> = sight
        .sections
        .iter()
        .enumerate()
        .flat_map(|(s, section)| (0..section.rows.len()).map(move |r| (s, r)))
        .collect();
    let mut at = rows.iter().position(|p| *p == (s, r))?;
    loop {
        at = at.checked_add_signed(by)?;
        let (s, r) = *rows.get(at)?;
        let c = c.min(sight.sections[s].columns.len().checked_sub(1)?);
        if field_at(sight, (s, r, c)).is_some() {
            return Some((s, r, c));
        }
    }
}

/// The cell at the left or right; `on`: behind the last one, the first of the next row.
fn beside(sight: &Sight<'_>, (s, r, c): Place, by: isize, on: bool) -> Option<Place> {
    let mut place = (s, r, c);
    loop {
        let section = &sight.sections[place.0];
        place = match place.2.checked_add_signed(by) {
            Some(c) if c < section.columns.len() => (place.0, place.1, c),
            _ if !on => return None,
            _ => {
                let (s, r) = match (by > 0, place.1, place.0) {
                    (true, r, s) if r + 1 < section.rows.len() => (s, r + 1),
                    (true, _, s) => (s + 1, 0),
                    (false, 0, s) => (s.checked_sub(1)?, sight.sections[s - 1].rows.len() - 1),
                    (false, r, s) => (s, r - 1),
                };
                let next = sight.sections.get(s)?;
                (s, r, if by > 0 { 0 } else { next.columns.len().checked_sub(1)? })
            }
        };
        if field_at(sight, place).is_some() {
            return Some(place);
        }
    }
}

/// A block on the clipboard goes to the page where it is looked at; a single number goes into the cell.
pub(super) fn pasted(ui: &Ui, sight: &Sight<'_>, shown: &Shown, at: Option<Place>, wishes: &mut Vec<Wish>) {
    if shown.room != Room::Chart || shown.chart.page != Page::Numbers || shown.ask.is_some() || shown.finder.is_some() {
        return;
    }
    if at.is_none() && ui.memory(|m| m.focused()).is_some() {
        return;
    }
    let text = ui.input_mut(|i| {
        let mut found = None;
        i.events.retain(|event| match event {
            egui::Event::Paste(text) if at.is_none() || is_block(text) => {
                found = Some(text.clone());
                false
            }
            _ => true,
        });
        found
    });
    if let Some(text) = text {
        let place = at.and_then(|(s, r, c)| {
            let section = sight.sections.get(s)?;
            Some((section.rows.get(r)?.name.clone(), section.columns.get(c)?.name().to_owned()))
        });
        let chosen = match &shown.part {
            Some(Part::Row(row)) => row.clone(),
            _ => String::new(),
        };
        wishes.push(Wish::Chart(ChartWish::Look(text, place.unwrap_or((chosen, String::new())))));
    }
}

/// Whether a text is more than one cell: several lines or columns.
fn is_block(text: &str) -> bool {
    let text = text.trim_end_matches(['\n', '\r']);
    text.contains(['\t', '\n', ';']) || text.matches(',').count() > 1
}

/// Paints a cell and listens to it. `place`: where it stands on the screen.
pub(super) fn show(
    ui: &mut Ui,
    look: &Look,
    sight: &Sight<'_>,
    shown: &Shown,
    (s, r, c): Place,
    rect: Rect,
    wishes: &mut Vec<Wish>,
) {
    let section = &sight.sections[s];
    let upper = rect.with_max_y(rect.top() + ROW);
    let (row, column) = (section.rows[r], &section.columns[c]);
    let text = sight.typed(row, column);
    // Wanted of few cells only.
    let called = || say!("chart-cell", row = &*row.name, column = column.words());
    let instead = if text.is_empty() { sight.instead(s, row, column) } else { String::new() };
    let Some(field) = column.field(row) else {
        return formula(ui, look, row, text, &called(), rect, wishes);
    };
    let id = field::id(&field);
    // A field that lost the focus is a field once more, so that what was typed is taken, or taken back.
    let typing = shown.typing.as_ref().is_some_and(|t| t.field == field);
    if typing || ui.memory(|m| m.has_focus(id)) {
        let form = Form { called: &called(), hint: &instead, ..FORM };
        return edited(ui, shown, (field, row), text, form, upper, wishes);
    }
    let response = ui.interact(rect, id, Sense::click());
    response.widget_info(|| WidgetInfo::text_edit(true, text, text, &instead));
    ui.ctx().accesskit_node_builder(id, |node| node.set_label(called()));
    if response.clicked() {
        ui.memory_mut(|m| m.request_focus(id));
        choose_all(ui, id, text);
        wishes.push(Wish::Enter(field));
        wishes.push(Wish::Part(Part::Row(row.name.clone())));
    } else if response.secondary_clicked() && text.is_empty() {
        let confirm = ChartCommand::Confirm(row.name.clone(), column.name().to_owned());
        wishes.push(Wish::Run(Command::Chart(confirm)));
    }
    if !ui.is_rect_visible(rect) {
        return;
    }
    if response.hovered() {
        ui.painter().rect_filled(rect, 0.0, look.touched);
    }
    let (words, color) = if text.is_empty() { (instead.as_str(), look.soft) } else { (text, look.ink) };
    number(ui, upper, words, color);
    if let Some(severity) = sight.wrong(row, column) {
        let at = pos2(rect.left() + 4.0, upper.center().y);
        ui.painter().text(at, Align2::LEFT_CENTER, look::sign(severity), letters(9.0), look.severity(severity));
    }
}

const FORM: Form<'static> = Form { called: "", hint: "", width: 0.0, formula: false, choose_all: true, lines: 0 };

/// The cell that has the focus is a field.
fn edited(
    ui: &mut Ui,
    shown: &Shown,
    (field, row): (Field, &Row),
    text: &str,
    form: Form<'_>,
    rect: Rect,
    wishes: &mut Vec<Wish>,
) {
    let id = field::id(&field);
    let mut child = ui.new_child(UiBuilder::new().max_rect(rect.shrink2(vec2(1.0, 1.0))));
    let form = Form { width: rect.width() - 2.0, ..form };
    let typing = shown.typing.as_ref().is_some_and(|t| t.field == field);
    let response = field::line(&mut child, shown, field, text, form, wishes);
    if response.gained_focus() && shown.part != Some(Part::Row(row.name.clone())) {
        wishes.push(Wish::Part(Part::Row(row.name.clone())));
    }
    // Arrows and Tab are the table's.
    let filter = EventFilter { tab: true, horizontal_arrows: true, vertical_arrows: true, escape: false };
    ui.memory_mut(|m| m.set_focus_lock_filter(id, filter));
    if response.lost_focus() && typing && ui.input(|i| i.key_pressed(Key::Escape)) {
        // What was typed is taken back; the person is still in the cell.
        ui.memory_mut(|m| m.request_focus(id));
    }
}

/// The formula of a row that is the same in every size; it is typed on the row's card.
fn formula(ui: &mut Ui, look: &Look, row: &Row, text: &str, called: &str, rect: Rect, wishes: &mut Vec<Wish>) {
    let response = ui.interact(rect, ui.scope_id().with(("every", &row.name)), Sense::click());
    response.widget_info(|| WidgetInfo::labeled(egui::Role::Button, true, format!("{called}: {text}")));
    if response.clicked() {
        wishes.push(Wish::Part(Part::Row(row.name.clone())));
    }
    number(ui, rect.with_max_y(rect.top() + ROW), text, look.ink);
}

/// Words at the right of a cell, cut off where they are too long.
pub(super) fn number(ui: &Ui, rect: Rect, words: &str, color: egui::Color32) {
    let mut job = egui::text::LayoutJob::single_section(
        words.to_owned(),
        egui::TextFormat { font_id: letters(look::TEXT), color, ..Default::default() },
    );
    job.wrap = egui::text::TextWrapping::truncate_at_width(rect.width() - 16.0);
    let galley = ui.painter().layout_job(job);
    let at = pos2(rect.right() - 8.0 - galley.size().x, rect.center().y - galley.size().y / 2.0);
    ui.painter().galley(at, galley, color);
}
