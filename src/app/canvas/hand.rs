//! What pencil and tape have in common: how near things must be, and their keys.

use egui::{Key, Modifiers, Ui};

use crate::app::state::Shown;

/// Something is meant when it is no further away than this, px.
pub(super) const REACH: f64 = 9.0;

/// A key of what is in the hand.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum HandKey {
    /// Shift and Space: what was meant before.
    Before,
    /// Space: what else could be meant.
    Next,
    /// Enter: it is right so.
    Enter,
    /// Backspace: the last thing is taken back.
    Back,
}

/// The keys that were pressed for what is in the hand. None while a field is typed in: Enter that leaves a field is the field's.
pub(super) fn keys(ui: &Ui, shown: &Shown) -> Option<Vec<HandKey>> {
    if ui.ctx().egui_wants_keyboard_input() || shown.typing.is_some() {
        return None;
    }
    // Shift first: a key without a modifier is heard with Shift too.
    let all = [
        (Modifiers::SHIFT, Key::Space, HandKey::Before),
        (Modifiers::NONE, Key::Space, HandKey::Next),
        (Modifiers::NONE, Key::Enter, HandKey::Enter),
        (Modifiers::NONE, Key::Backspace, HandKey::Back),
    ];
    let pressed = all.into_iter().filter(|(modifiers, key, _)| ui.input_mut(|i| i.consume_key(*modifiers, *key)));
    Some(pressed.map(|(.., own)| own).collect())
}
