//! Adding and moving what is published beside the pieces: parts that stand in lists with an order of their own.

use super::Window;
use super::state::Room;
use crate::document::{MaterialKind, Part};
use crate::session::{Act, Command, PublishCommand, place_of};
use crate::texts::say;

impl Window {
    /// Chooses a part and shows it where it is seen.
    pub(super) fn choose(&mut self, part: Part) {
        if self.shown.room != Room::Booklet || !matches!(part, Part::Step(_)) {
            self.shown.room = Room::Table;
        }
        self.shown.part = Some(part);
        self.shown.scroll_to_part = true;
    }

    /// Moves the chosen part one place up or down in its list.
    pub(super) fn move_in_order(&mut self, act: Act) {
        let draft = self.open.work().draft();
        let Some(part) = self.shown.part.clone() else { return };
        let Some(place) = place_of(draft, &part) else { return self.chart_act(act) };
        let last = match part {
            Part::Strip(_) => draft.strips.len(),
            Part::Notion(_) => draft.notions.len(),
            Part::Material(_) => draft.materials.len(),
            _ => draft.booklet.len(),
        };
        let to = if act == Act::RowUp { place.saturating_sub(1) } else { (place + 1).min(last - 1) };
        if to == place {
            return self.tell(say!("done-end-of-list", part = part.words()));
        }
        self.run(&Command::Publish(PublishCommand::Place(part.clone(), to)));
        self.choose(if let Part::Step(_) = part { Part::Step(to) } else { part });
    }

    /// What is added by the dialog of an action, and the part that it becomes. A step comes behind the chosen one.
    pub(super) fn added(&self, act: Act, name: String, formula: String, choice: usize) -> (PublishCommand, Part) {
        match act {
            Act::AddStrip => (PublishCommand::AddStrip(name.clone(), formula), Part::Strip(name)),
            Act::AddNotion => (PublishCommand::AddNotion(name.clone(), formula), Part::Notion(name)),
            Act::AddMaterial => {
                let kinds = [MaterialKind::Cloth, MaterialKind::Lining, MaterialKind::Interfacing];
                (PublishCommand::AddMaterial(name.clone(), kinds[choice.min(2)]), Part::Material(name))
            }
            _ => {
                let last = self.open.work().draft().booklet.len();
                let place = if let Some(Part::Step(i)) = self.shown.part { (i + 1).min(last) } else { last };
                (PublishCommand::AddStep(place, name), Part::Step(place))
            }
        }
    }

    /// Notes a fitting of the chosen size.
    pub(super) fn add_fitting(&mut self) {
        self.run(&Command::Publish(PublishCommand::AddFitting(self.shown.case.clone())));
        self.choose(Part::Kept);
    }
}
