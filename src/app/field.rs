//! Fields in which a person types, and the words under them.

use egui::text::{CCursor, CCursorRange};
use egui::{Align2, FontSelection, Id, Key, Label, Modifiers, Response, RichText, ScrollArea, TextEdit, Ui};

use super::look::{self, Look};
use super::offers;
use super::scene::Scene;
use super::state::{Field, Shown, Spot, Wish};
use crate::base::Finding;
use crate::texts::{message, say};

/// Height of the room for what stands in the way of a dialog, px.
pub(super) const PROBLEM: f32 = 76.0;

/// How a field looks.
#[derive(Clone, Copy, Default)]
pub(super) struct Form<'a> {
    /// How it is called, for those who do not see it and for tests.
    pub called: &'a str,
    /// What stands in it while it is empty.
    pub hint: &'a str,
    pub width: f32,
    /// Whether it holds a formula.
    pub formula: bool,
    /// Whether all of it is chosen when it is entered, as in a table.
    pub choose_all: bool,
    /// Words with formulas in braces: over how many lines they are seen at least; 0: no such words.
    pub lines: usize,
}

/// The field's own name among the widgets.
pub(super) fn id(field: &Field) -> Id {
    Id::unique(("field", field))
}

/// A field. What is typed goes to the draft at once; leaving it makes that one step of undo, Escape takes it back.
pub(super) fn line(
    ui: &mut Ui,
    shown: &Shown,
    field: Field,
    text: &str,
    form: Form<'_>,
    wishes: &mut Vec<Wish>,
) -> Response {
    let typed = shown.typing.as_ref().filter(|t| t.field == field);
    let mut buffer = typed.map_or_else(|| text.to_owned(), |t| t.text.clone());
    let font = if form.formula { look::code(look::CODE) } else { look::letters(look::TEXT) };
    let own = id(&field);
    if shown.wanted.as_ref() == Some(&field) {
        ui.memory_mut(|m| m.request_focus(own));
    }
    let is_formula = form.formula && !form.choose_all || form.lines > 0;
    let has_focus = ui.memory(|m| m.has_focus(own));
    let spot = Spot::Field(field.clone());
    let mut taken = if is_formula { offers::keys(ui, shown, &spot, has_focus, wishes) } else { None };
    // A formula shows itself whole; Enter still leaves the field.
    let edit = match is_formula {
        true if form.lines > 1 => TextEdit::multiline(&mut buffer).desired_rows(form.lines),
        true => TextEdit::multiline(&mut buffer).desired_rows(1).return_key(None),
        false => TextEdit::singleline(&mut buffer),
    };
    let edit = if is_formula { edit.event_filter(offers::filter(shown, &spot)) } else { edit };
    // A number of a table stands at the right, as those above and below it.
    let edit = if form.choose_all && !form.formula { edit.align(Align2::RIGHT_CENTER) } else { edit };
    let mut output = edit
        .id(own)
        .hint_text(form.hint.to_owned())
        .font(FontSelection::FontId(font))
        .desired_width(form.width)
        .show(ui);
    let response = output.response.response.clone();
    ui.ctx().accesskit_node_builder(response.id, |node| node.set_label(form.called));
    ring(ui, &response);
    if is_formula && response.has_focus() {
        taken = taken.or_else(|| offers::show(ui, shown, &spot, &response));
    }
    if is_formula && response.lost_focus() {
        taken = taken.or_else(|| offers::pointed(ui, shown, &spot));
    }
    if let Some(taken) = taken {
        let cursor = CCursor::new(taken.text[..taken.cursor].chars().count());
        output.state.cursor.set_char_range(Some(CCursorRange::one(cursor)));
        output.state.store(ui.ctx(), response.id);
        response.request_focus();
        wishes.push(Wish::Typed(field.clone(), taken.text.clone()));
        wishes.push(Wish::Cursor(spot, taken.text, taken.cursor, false));
        return response;
    }
    if response.gained_focus() {
        if form.choose_all {
            let all = CCursorRange::two(CCursor::new(0), CCursor::new(buffer.chars().count()));
            output.state.cursor.set_char_range(Some(all));
            output.state.store(ui.ctx(), response.id);
        }
        wishes.push(Wish::Enter(field.clone()));
    }
    if response.changed() {
        buffer.retain(|c| c != '\r' && (c != '\n' || form.lines > 1));
        wishes.push(Wish::Typed(field.clone(), buffer.clone()));
    }
    if is_formula && response.has_focus() {
        let cursor = output.cursor_range.map_or(0, |r| r.primary.index.0);
        let at = buffer.char_indices().nth(cursor).map_or(buffer.len(), |(i, _)| i);
        let asked = ui.input_mut(|i| i.consume_key(Modifiers::CTRL, Key::Space));
        let now = (spot.clone(), buffer.clone(), at);
        if asked || shown.offered.as_ref().is_none_or(|o| o.of != now) {
            wishes.push(Wish::Cursor(spot, buffer.clone(), at, asked));
        }
    }
    if (form.formula || form.lines == 1) && response.has_focus() && ui.input(|i| i.key_pressed(Key::Enter)) {
        response.surrender_focus();
        wishes.push(Wish::Leave(field, buffer));
    } else if response.lost_focus() {
        let given_up = ui.input(|i| i.key_pressed(Key::Escape));
        wishes.push(if given_up { Wish::Cancel } else { Wish::Leave(field, buffer) });
    }
    response
}

/// A field of a dialog, told by a name.
pub(super) fn typed(ui: &mut Ui, (dialog, called): (&str, &str), hint: &str, text: &mut String, width: f32) {
    let edit = TextEdit::singleline(text).id(Id::unique((dialog, called))).hint_text(hint.to_owned());
    let response = ui.add(edit.desired_width(width));
    ui.ctx().accesskit_node_builder(response.id, |node| node.set_label(called));
    ring(ui, &response);
}

/// A line around the field that is typed in.
pub(super) fn ring(ui: &Ui, response: &Response) {
    if response.has_focus() {
        let line = egui::Stroke::new(1.5, ui.visuals().text_color());
        ui.painter().rect_stroke(response.rect, look::ROUND, line, egui::StrokeKind::Inside);
    }
}

/// At the end of what can be scrolled: where the focus came to something in it just now, that is brought into sight.
pub(super) fn focus_in_sight(ui: &Ui) {
    let own = ui.scope_id().with("focus");
    let focused = ui.memory(|m| m.focused());
    if ui.data(|d| d.get_temp::<Option<Id>>(own)).flatten() == focused {
        return;
    }
    ui.data_mut(|d| d.insert_temp(own, focused));
    let response = focused.and_then(|id| ui.ctx().read_response(id));
    if let Some(response) = response.filter(|r| ui.min_rect().contains(r.rect.center())) {
        ui.scroll_to_rect(response.rect, None);
    }
}

/// What stands in the way of a dialog, whole, in room that is kept for it: nothing jumps under a hand when it comes.
pub(super) fn problem(ui: &mut Ui, look: &Look, words: &str) {
    let area = ScrollArea::vertical().id_salt("problem").auto_shrink(false);
    area.max_height(PROBLEM).min_scrolled_height(PROBLEM).show(ui, |ui| {
        if !words.is_empty() {
            ui.add(Label::new(RichText::new(format!("■ {words}")).color(look.error)).wrap());
        }
    });
}

/// What was found about a text, under its field.
pub(super) fn findings<'a>(
    ui: &mut Ui,
    look: &Look,
    scene: &Scene,
    found: impl Iterator<Item = (usize, &'a Finding)>,
    wishes: &mut Vec<Wish>,
) {
    for (i, finding) in found {
        let severity = finding.severity();
        let words = format!("{} {}", look::sign(severity), message(finding, scene.draft().display));
        ui.label(RichText::new(words).font(look::letters(look::SMALL)).color(look.severity(severity)));
        if let Some(mend) = &finding.mend
            && ui.small_button(say!("field-put", text = mend.by)).clicked()
        {
            wishes.push(Wish::Mend(i));
        }
    }
}

/// A word over a field.
pub(super) fn caption(ui: &mut Ui, look: &Look, words: &str) {
    ui.add_space(2.0);
    ui.label(RichText::new(words).font(look::letters(look::SMALL)).color(look.soft));
}
