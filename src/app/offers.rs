//! What may follow in a formula that is typed: a short list under its field, and names taken from the sheet.

use egui::{
    Area, EventFilter, Frame, Id, Key, Margin, Modifiers, Order, Response, RichText, Role, Sense, Stroke, Ui,
    WidgetInfo, vec2,
};

use super::Window;
use super::ask::Purpose;
use super::look::{self, Look};
use super::state::{Field, Offered, Shown, Spot, Wish};
use crate::base::Span;
use crate::session::{Act, completions, wants_name};
use crate::texts::say;

/// Width of the list, px.
const WIDTH: f32 = 330.0;

/// What a key did to the text of the field.
pub(super) struct Taken {
    /// The new text.
    pub text: String,
    /// Where the cursor comes to stand, in bytes.
    pub cursor: usize,
}

impl Offered {
    /// The text with a line of the list put in.
    fn taken(&self, line: usize) -> Option<Taken> {
        let (_, text, _) = &self.of;
        let (span, own) = (self.what.span?, self.what.list.get(line)?);
        Some(put(text, span.start, span.end, &own.text))
    }

    /// The text with a name put in where the cursor stands.
    fn with_name(&self, name: &str) -> Taken {
        let (_, text, at) = &self.of;
        put(text, *at, *at, name)
    }
}

fn put(text: &str, from: usize, to: usize, new: &str) -> Taken {
    let (head, tail) = (text.get(..from).unwrap_or(text), text.get(to..).unwrap_or(""));
    Taken { text: format!("{head}{new}{tail}"), cursor: head.len() + new.len() }
}

/// A click on the sheet took the focus away while a name was wanted: what it pointed at is put in.
pub(super) fn pointed(ui: &Ui, shown: &Shown, spot: &Spot) -> Option<Taken> {
    let offered = shown.offered.as_ref().filter(|o| o.of.0 == *spot && o.wants_name)?;
    let name = shown.named.as_ref()?;
    ui.input(|i| i.pointer.interact_pos().is_some_and(|p| shown.sheet.contains(p))).then(|| offered.with_name(name))
}

/// Keys that stay with a field in which formulas are typed: Escape too, while the list is open, for that it closes.
pub(super) fn filter(shown: &Shown, spot: &Spot) -> EventFilter {
    let is_open = shown.offered.as_ref().is_some_and(|o| o.of.0 == *spot && !o.what.list.is_empty());
    EventFilter { horizontal_arrows: true, vertical_arrows: true, escape: is_open, ..EventFilter::default() }
}

/// Before the field is shown: keys that are the list's.
pub(super) fn keys(ui: &Ui, shown: &Shown, spot: &Spot, has_focus: bool, wishes: &mut Vec<Wish>) -> Option<Taken> {
    let offered = shown.offered.as_ref().filter(|o| o.of.0 == *spot && has_focus)?;
    let last = offered.what.list.len().checked_sub(1)?;
    let pressed = |key| ui.input_mut(|i| i.consume_key(Modifiers::NONE, key));
    if pressed(Key::Escape) {
        wishes.push(Wish::NoOffers);
        return None;
    }
    if pressed(Key::ArrowDown) {
        wishes.push(Wish::OfferedAt(Some(offered.at.map_or(0, |at| (at + 1).min(last)))));
    }
    if offered.at.is_some() && pressed(Key::ArrowUp) {
        wishes.push(Wish::OfferedAt(offered.at.and_then(|at| at.checked_sub(1))));
    }
    let at = offered.at?;
    (pressed(Key::Enter) || pressed(Key::Tab)).then(|| offered.taken(at)).flatten()
}

/// The list under the field; a click takes a line.
pub(super) fn show(ui: &Ui, shown: &Shown, spot: &Spot, response: &Response) -> Option<Taken> {
    let look = Look::of(ui.theme(), &shown.own.preferences);
    let offered = shown.offered.as_ref().filter(|o| o.of.0 == *spot && !o.what.list.is_empty())?;
    let mut taken = None;
    // Where it does not leave the window.
    let room = ui.ctx().content_rect();
    let height = offered.what.list.len() as f32 * 40.0;
    let left = response.rect.left().min(room.right() - WIDTH - 12.0).max(room.left());
    let below = response.rect.bottom() + 3.0;
    let top = if below + height > room.bottom() { (response.rect.top() - height - 6.0).max(room.top()) } else { below };
    Area::new(Id::unique("offers")).order(Order::Tooltip).fixed_pos(egui::pos2(left, top)).show(ui.ctx(), |ui| {
        let border = Stroke::new(1.0, look.border);
        Frame::new().fill(look.sheet).stroke(border).inner_margin(Margin::same(4)).corner_radius(6).show(ui, |ui| {
            ui.spacing_mut().item_spacing.y = 0.0;
            for (i, line) in offered.what.list.iter().enumerate() {
                let (rect, line_response) = ui.allocate_exact_size(vec2(WIDTH - 8.0, 38.0), Sense::click());
                let chosen = offered.at == Some(i);
                line_response.widget_info(|| {
                    WidgetInfo::selected(
                        Role::ListBoxOption,
                        true,
                        chosen,
                        say!("offers-line", name = line.name, about = line.about),
                    )
                });
                if chosen || line_response.hovered() {
                    ui.painter().rect_filled(rect, 4.0, look.touched);
                }
                let painter = ui.painter_at(rect);
                let name = painter.layout_no_wrap(line.name.clone(), look::code(look::CODE), look.ink);
                let about = painter.layout_no_wrap(line.about.clone(), look::letters(look::SMALL), look.soft);
                painter.galley(rect.min + vec2(6.0, 2.0), name, look.ink);
                painter.galley(rect.min + vec2(6.0, 20.0), about, look.soft);
                if line_response.clicked()
                    || line_response.is_pointer_button_down_on() && ui.input(|i| i.pointer.any_pressed())
                {
                    taken = offered.taken(i);
                }
            }
            if offered.at.is_none() {
                ui.label(RichText::new(say!("offers-hint")).font(look::letters(look::SMALL)).color(look.soft));
            }
        });
    });
    taken
}

/// The formula in braces in which a place of a text lies, without them.
fn in_braces(text: &str, at: usize) -> Option<(usize, usize)> {
    let open = text.get(..at)?.rfind('{')? + 1;
    let end = text[open..].find(['{', '}']).map_or(text.len(), |i| open + i);
    (at <= end).then_some((open, end))
}

impl Window {
    /// Looks up what may follow at the cursor.
    pub(super) fn offer(&mut self, spot: Spot, text: String, at: usize, asked: bool) {
        // In words, formulas stand in braces.
        let mut inside = (0, text.len());
        let frame = match &spot {
            Spot::Field(Field::Text(address, true)) => address.part.frame().map(str::to_owned),
            Spot::Field(Field::Text(..)) => {
                let Some(braces) = in_braces(&text, at) else {
                    self.shown.offered = None;
                    return;
                };
                inside = braces;
                None
            }
            Spot::Field(_) => return,
            Spot::Ask(i) => {
                let ask = self.shown.ask.as_ref().filter(|ask| ask.fields.get(*i).is_some_and(|f| f.is_formula));
                let Some(ask) = ask else { return };
                // A point stands in a piece; values and conditions stand outside of all.
                let is_inner = matches!(ask.purpose, Purpose::Add(Act::AddPoint));
                self.shown.frame().filter(|_| is_inner).map(str::to_owned)
            }
        };
        let case = self.scene.case_of(&self.shown.case);
        let (start, end) = inside;
        let formula = text.get(start..end).unwrap_or_default();
        let mut what = completions(&self.scene.computed, frame.as_deref(), case, formula, at - start, asked);
        what.span = what.span.map(|s| Span::new(s.start + start, s.end + start));
        let wants_name = text.get(start..at).is_some_and(wants_name);
        let revision = (self.scene.computed.revision, self.shown.case.clone());
        self.shown.offered = Some(Offered { of: (spot, text, at), revision, what, at: None, wants_name });
    }
}
