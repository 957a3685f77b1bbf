//! What goes from the room of cloth into the draft: plans that are kept, widths; and groups of sizes, which stand in the table.

use std::sync::Arc;

use super::{Found, called};
use crate::app::Window;
use crate::document::{Address, LayPlan, Part};
use crate::session::{
    Command, LayCommand, LayHand, LayKey, PublishCommand, TextCommand, plan_name, sizes_called, sizes_typed,
    unit_missing,
};
use crate::texts::say;

impl Window {
    /// The sizes of the range, by their addresses.
    pub(super) fn sizes(&self) -> Vec<String> {
        let cases = self.scene.cases().into_iter().flat_map(|c| c.list.iter().take(c.range));
        cases.map(|c| c.address.clone()).collect()
    }

    /// A group was named in the dialog.
    pub(in crate::app) fn add_group(&mut self, text: &str) {
        match sizes_typed(text, &self.sizes()) {
            Err(words) => self.problem(&words),
            Ok(group) => {
                self.shown.ask = None;
                let cloth = &mut self.shown.cloth;
                let is_there =
                    cloth.table.as_ref().is_some_and(|t| t.rows.contains(&group)) || cloth.groups.contains(&group);
                if let Some(key) = &mut cloth.at {
                    key.sizes.clone_from(&group);
                }
                (cloth.piece, cloth.view) = (None, None);
                if !is_there {
                    cloth.groups.push(group.clone());
                    cloth.generation += 1;
                }
                self.tell(say!("cloth-group-stands", sizes = sizes_called(&group)));
            }
        }
    }

    /// A width was named in the dialog.
    pub(in crate::app) fn add_width(&mut self, cloth: &str, width: &str) {
        let Some(own) = self.scene.draft().materials.iter().find(|m| m.name == cloth) else {
            let known: Vec<&str> = self.scene.draft().materials.iter().map(|m| m.name.as_str()).collect();
            let words = match known.is_empty() {
                true => say!("cloth-none-yet"),
                false => say!("cloth-unknown", cloth, known = known.join(", ")),
            };
            return self.problem(&words);
        };
        let (part, at) = (Part::Material(cloth.to_owned()), own.widths.len());
        let width = crate::language::tidy(width);
        if width.is_empty() {
            return self.problem(&say!("cloth-width-needed"));
        }
        // A formula may be a width too; a number alone could be meant in any unit.
        if let Some(words) = unit_missing(&width) {
            return self.problem(&words);
        }
        let add = Command::Publish(PublishCommand::AddItem(part.clone(), "widths"));
        let set = Command::Text(TextCommand::Set(Address::nth(part.clone(), "widths", at), width));
        if self.try_ask(&Command::Several(say!("cloth-step-width", cloth), vec![add, set])) {
            self.shown.part = Some(part);
        }
    }

    /// Writes plans into the draft, as one step.
    pub(super) fn keep_plans(&mut self, keys: Vec<LayKey>) {
        let mut plans: Vec<(LayKey, LayPlan, LayHand)> = Vec::new();
        for key in keys {
            let cloth = &self.shown.cloth;
            let Some(cell) = cloth.cell(&key) else { continue };
            let Some(lay) = cloth.lay(&key) else { continue };
            let hand = cloth.hands.iter().find(|(k, _)| *k == key).map(|(_, h)| h);
            if let Some(fault) = hand.and_then(|h| h.faults.first()) {
                return self.refuse(say!("cloth-cannot-keep", plan = called(cloth, &key), why = fault.says));
            }
            let locked = hand.map_or_else(|| cloth.locks(&key), |h| h.hand.locked.clone());
            let Some(model) = self.model_of(cell.wish.view) else { continue };
            let name = plan_name(model, &cell.wish);
            let plan = lay.to_plan(model, (&name, &key.width), &locked);
            plans.push((key, plan, LayHand { lay: lay.clone(), locked }));
        }
        if plans.is_empty() {
            return self.refuse(say!("cloth-no-plan"));
        }
        let many = plans.len();
        let command = Command::Lay(LayCommand::Keep(plans.iter().map(|(_, plan, _)| plan.clone()).collect()));
        match self.open.run(&command) {
            Err(problem) => self.refuse(problem.to_string()),
            Ok(_) => {
                for (key, _, hand) in plans {
                    let odd = self.shown.cloth.found(&key).and_then(|f| f.odd.clone());
                    let (lay, locked) = (Some(Arc::new(hand.lay)), hand.locked);
                    self.shown.cloth.put_found(&key, Found { lay, locked, failed: None, odd, stale: false });
                    if let Some((_, own)) = self.shown.cloth.hands.iter_mut().find(|(k, _)| *k == key) {
                        own.changed = false;
                        own.done.clear();
                        own.undone.clear();
                    }
                }
                self.tell(say!("cloth-kept-plans", count = many));
            }
        }
    }
}
