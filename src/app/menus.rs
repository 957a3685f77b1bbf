//! Menus, keys and when an action can be done: all from the one table of actions.

use egui::{Button, Key, KeyboardShortcut, Modifiers, Role, Ui, WidgetInfo};

use super::card::outline_is_open;
use super::guide;
use super::own;
use super::scene::Scene;
use super::state::{Room, Shown, Wish};
use crate::base::Code;
use crate::document::Part;
use crate::session::{ACTIONS, Act, Menu, OpenDraft, When, place_of};
use crate::texts::say;

/// Whether an action can be done now.
pub(super) fn can(act: Act, open: &OpenDraft, scene: &Scene, shown: &Shown) -> bool {
    match act.action().when {
        When::Always => true,
        When::CanUndo => undo_label(open, shown).is_some(),
        When::CanRedo => redo_label(open, shown).is_some(),
        When::PartChosen => shown.part.as_ref().is_some_and(|p| !p.name().is_empty()),
        When::CanDelete => shown.part.as_ref().is_some_and(|p| !p.name().is_empty() || matches!(p, Part::Step(_))),
        When::InOrder => {
            let draft = scene.draft();
            shown.part.as_ref().is_some_and(|p| matches!(p, Part::Row(_)) || place_of(draft, p).is_some())
        }
        When::PieceChosen => shown.frame().is_some(),
        When::OutlineOpen => shown.frame().is_some_and(|f| outline_is_open(scene.draft(), f)),
        When::SeamChosen => matches!(shown.room, Room::Roll(_)) || matches!(shown.part, Some(Part::Seam(_))),
        When::SizeChosen => scene.draft().chart.girth.contains(&shown.case),
        When::HasSizes => scene.cases().is_some_and(|c| !c.list.is_empty()),
        When::Planning => shown.cloth.is_searching(),
        When::PlanSeen => shown.room == Room::Cloth && shown.cloth.has_cell(),
        When::LaidChosen => shown.room == Room::Cloth && shown.cloth.has_piece(),
        When::HasPlans => !scene.draft().plans.is_empty(),
        When::Comparing => shown.versus.is_some(),
        When::HasFindings => scene.findings().next().is_some(),
        When::HasProposals => scene.findings().any(|(_, f)| matches!(f.code, Code::CellGuessed | Code::CellBeyond)),
    }
}

/// What undoing takes back: in the room of cloth a step by hand first, which is no change of the draft.
pub(super) fn undo_label<'a>(open: &'a OpenDraft, shown: &'a Shown) -> Option<&'a str> {
    let by_hand = shown.cloth.undo_label().filter(|_| shown.room == Room::Cloth);
    by_hand.or_else(|| open.work().undo_label())
}

/// What is done again.
pub(super) fn redo_label<'a>(open: &'a OpenDraft, shown: &'a Shown) -> Option<&'a str> {
    let by_hand = shown.cloth.redo_label().filter(|_| shown.room == Room::Cloth);
    by_hand.or_else(|| open.work().redo_label())
}

/// Paints the menus.
pub(super) fn show(ui: &mut Ui, open: &OpenDraft, scene: &Scene, shown: &Shown, wishes: &mut Vec<Wish>) {
    for menu in Menu::ALL {
        let button = ui.menu_button(menu.words(), |ui| {
            ui.set_min_width(250.0);
            for action in ACTIONS.iter().filter(|a| a.menu == menu) {
                let name = match (action.act, undo_label(open, shown), redo_label(open, shown)) {
                    (Act::Undo, Some(label), _) | (Act::Redo, _, Some(label)) => format!("{}: {label}", action.name()),
                    _ => action.name().to_owned(),
                };
                let button = Button::new(name).shortcut_text(action.key).corner_radius(6).wrap();
                let response = ui.add_enabled(can(action.act, open, scene, shown), button);
                response.widget_info(|| WidgetInfo::labeled(Role::MenuItem, response.enabled(), action.name()));
                if response.on_hover_text(action.what()).clicked() {
                    wishes.push(Wish::Act(action.act));
                    ui.close();
                }
            }
            if menu == Menu::Draft {
                own::recents(ui, open, shown, wishes);
            }
        });
        if menu == Menu::Draft {
            guide::mark(ui, shown, Act::Save, &button.response);
        }
    }
}

/// The key of an action as the toolkit knows it.
fn shortcut(key: &str) -> Option<KeyboardShortcut> {
    let mut modifiers = Modifiers::NONE;
    let mut rest = key;
    loop {
        match rest.split_once('+') {
            Some(("Ctrl", tail)) => (modifiers, rest) = (modifiers | Modifiers::COMMAND, tail),
            Some(("Shift", tail)) => (modifiers, rest) = (modifiers | Modifiers::SHIFT, tail),
            Some(("Alt", tail)) => (modifiers, rest) = (modifiers | Modifiers::ALT, tail),
            _ => break,
        }
    }
    let key = match rest {
        "+" => Key::Plus,
        "-" => Key::Minus,
        "Left" => Key::ArrowLeft,
        "Right" => Key::ArrowRight,
        other => Key::from_name(other)?,
    };
    Some(KeyboardShortcut::new(modifiers, key))
}

/// Listens to the keys of all actions. Keys without a modifier belong to whatever has the focus first.
pub(super) fn keys(ui: &mut Ui, open: &OpenDraft, scene: &Scene, shown: &Shown, wishes: &mut Vec<Wish>) {
    let typing = shown.typing.is_some();
    let focused = ui.ctx().egui_wants_keyboard_input();
    // Those with more modifiers first, so that Ctrl+Shift+S is not taken for Ctrl+S.
    let mut all: Vec<_> = ACTIONS.iter().filter_map(|a| Some((a, shortcut(a.key)?))).collect();
    all.sort_by_key(|(_, s)| {
        std::cmp::Reverse([s.modifiers.command, s.modifiers.shift, s.modifiers.alt].iter().filter(|m| **m).count())
    });
    for (action, shortcut) in all {
        let plain = shortcut.modifiers.is_none() && !shortcut.logical_key.name().starts_with('F');
        // A field has an undo of its own; what has the focus has the first word about plain keys.
        let own = match action.act {
            Act::Undo | Act::Redo => typing,
            _ => plain && (focused || shown.pencil.as_ref().is_some_and(|p| p.typed.is_some())),
        };
        if own {
            continue;
        }
        if ui.input_mut(|i| i.consume_shortcut(&shortcut)) && can(action.act, open, scene, shown) {
            wishes.push(Wish::Act(action.act));
        }
    }
    // A menu that is open has the first word.
    let menu_is_open = egui::Popup::is_any_open(ui.ctx());
    if !typing && !menu_is_open && ui.input_mut(|i| i.consume_key(Modifiers::NONE, Key::Escape)) {
        wishes.push(Wish::Cancel);
    }
    if ui.input_mut(|i| i.consume_key(Modifiers::COMMAND, Key::Y)) && can(Act::Redo, open, scene, shown) && !typing {
        wishes.push(Wish::Act(Act::Redo));
    }
}

/// What is chosen, in words, for actions that speak of it.
pub(super) fn chosen(shown: &Shown) -> String {
    shown.part.as_ref().map_or_else(|| say!("why-nothing-chosen"), Part::words)
}

/// Why an action cannot be done now, in words.
pub(super) fn why_not(act: Act, shown: &Shown) -> String {
    match act.action().when {
        When::CanUndo => say!("why-no-change"),
        When::CanRedo => say!("why-nothing-undone"),
        When::PartChosen | When::CanDelete => say!("why-choose-part", chosen = chosen(shown)),
        When::InOrder => say!("why-choose-in-order"),
        When::PieceChosen => say!("why-choose-piece"),
        When::OutlineOpen => say!("why-outline-closed"),
        When::SeamChosen => say!("why-choose-seam"),
        When::SizeChosen => say!("why-choose-size"),
        When::HasSizes => say!("why-no-sizes"),
        When::HasFindings => say!("why-no-findings"),
        When::HasProposals => say!("why-no-proposals"),
        When::Comparing => say!("why-not-comparing"),
        When::Planning => say!("why-not-planning"),
        When::PlanSeen => say!("why-choose-plan"),
        When::LaidChosen => say!("why-choose-laid"),
        When::HasPlans => say!("why-no-plans"),
        When::Always => String::new(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_key_of_the_table_is_one() {
        for action in ACTIONS.iter().filter(|a| !a.key.is_empty()) {
            assert!(shortcut(action.key).is_some(), "{}: {}", action.id, action.key);
        }
    }
}
