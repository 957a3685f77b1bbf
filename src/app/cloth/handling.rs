//! A plan in the hand: pieces that are carried, pushed, turned and locked, with steps of undo that end where the plan is kept.

use egui::Context;
use kurbo::Point;

use super::{Carried, ClothWish, Hand, STEPS, steps};
use crate::app::Window;
use crate::app::state::Room;
use crate::base::DisplayUnit;
use crate::session::{Act, Command, LayCommand, LayHand};
use crate::texts::{readable, say};

/// At most so many steps by hand are undone.
const MOST_STEPS: usize = 200;

impl Hand {
    /// `unit`: in which lengths are told.
    pub(super) fn of(hand: LayHand, unit: DisplayUnit) -> Self {
        let (faults, need) = (hand.faults(unit), hand.need());
        Self { hand, done: Vec::new(), undone: Vec::new(), faults, need, changed: false, unit }
    }

    /// What is told of it follows what lies in it.
    fn told(&mut self) {
        (self.faults, self.need) = (self.hand.faults(self.unit), self.hand.need());
    }

    /// Before a step: it can be taken back.
    pub(super) fn begin(&mut self, label: String) {
        self.done.push((label, self.hand.clone()));
        self.undone.clear();
        if self.done.len() > MOST_STEPS {
            self.done.remove(0);
        }
    }

    /// After a step: one that changed nothing is none.
    pub(super) fn end(&mut self) {
        if self.done.last().is_some_and(|(_, before)| *before == self.hand) {
            self.done.pop();
        } else {
            self.changed = true;
        }
        self.told();
    }

    fn undo(&mut self) -> Option<String> {
        let (label, before) = self.done.pop()?;
        let after = std::mem::replace(&mut self.hand, before);
        self.undone.push((label.clone(), after));
        self.changed = !self.done.is_empty();
        self.told();
        Some(label)
    }

    fn redo(&mut self) -> Option<String> {
        let (label, after) = self.undone.pop()?;
        let before = std::mem::replace(&mut self.hand, after);
        self.done.push((label.clone(), before));
        self.changed = true;
        self.told();
        Some(label)
    }
}

impl Window {
    /// Whether the plan that is seen may be moved by hand now; else that is told.
    fn may_handle(&mut self) -> bool {
        let sought = self.shown.cloth.at.as_ref().is_some_and(|k| self.shown.cloth.sought(k).is_some());
        if sought {
            self.refuse(say!("cloth-sought"));
        }
        !sought
    }

    /// Turns, turns over or locks the chosen piece.
    pub(super) fn handle(&mut self, act: Act) {
        let Some((s, i)) = self.shown.cloth.piece else { return };
        if !self.may_handle() {
            return;
        }
        let Some(own) = self.shown.cloth.take_in_hand(self.scene.draft().display) else { return };
        let name = own.hand.shape(s, i).map_or_else(String::new, |a| readable(&a.name));
        let locked = own.hand.is_locked(s, i);
        let label = match act {
            Act::TurnHalf => say!("cloth-step-half", name),
            Act::TurnOver => say!("cloth-step-over", name),
            _ if locked => say!("cloth-step-unlock", name),
            _ => say!("cloth-step-lock", name),
        };
        own.begin(label);
        let done = match act {
            Act::TurnHalf => own.hand.turn_half(s, i),
            Act::TurnOver => own.hand.turn_over(s, i),
            _ => {
                own.hand.lock(s, i, !locked);
                Ok(())
            }
        };
        own.end();
        self.answer(done);
    }

    fn answer(&mut self, done: Result<(), String>) {
        match done {
            Ok(()) => self.shown.message = None,
            Err(words) => self.refuse(words),
        }
    }

    /// Takes the last step by hand back, or does it again; none: there is none, and the draft's is meant.
    pub(in crate::app) fn undo_by_hand(&mut self, again: bool) -> Option<String> {
        if self.shown.room != Room::Cloth {
            return None;
        }
        let own = self.shown.cloth.hand_mut()?;
        if again { own.redo() } else { own.undo() }
    }

    /// A piece that is carried goes back to where it was taken.
    pub(in crate::app) fn give_up_carrying(&mut self) -> bool {
        if self.shown.room != Room::Cloth {
            return false;
        }
        if self.shown.cloth.carried.take().is_some() {
            if let Some(own) = self.shown.cloth.hand_mut() {
                own.undo();
                own.undone.pop();
            }
            return true;
        }
        self.shown.cloth.piece.take().is_some()
    }

    /// Does what is wished in the room.
    pub(in crate::app) fn cloth_wish(&mut self, ctx: &Context, wish: ClothWish) {
        match wish {
            ClothWish::See(key) => {
                let cloth = &mut self.shown.cloth;
                (cloth.at, cloth.piece, cloth.carried, cloth.view) = (Some(key), None, None, None);
            }
            ClothWish::Piece(piece) => self.shown.cloth.piece = piece,
            ClothWish::Take(at, from) => self.take_piece(at, from),
            ClothWish::Carry(to) => {
                let Some(carried) = self.shown.cloth.carried else { return };
                let Some(own) = self.shown.cloth.hand_mut() else { return };
                let corner = carried.corner + (to - carried.from);
                let done = own.hand.carry(carried.stretch, carried.piece, corner.x, corner.y);
                own.told();
                self.answer(done);
            }
            ClothWish::LetGo => {
                if self.shown.cloth.carried.take().is_some()
                    && let Some(own) = self.shown.cloth.hand_mut()
                {
                    own.end();
                }
            }
            ClothWish::Push(along, across) => {
                let Some((s, i)) = self.shown.cloth.piece else { return };
                if !self.may_handle() {
                    return;
                }
                let step = steps(self.scene.draft().display)[self.shown.cloth.step % STEPS];
                let Some(own) = self.shown.cloth.take_in_hand(self.scene.draft().display) else { return };
                let Some(laid) = own.hand.lay.layouts.get(s).and_then(|l| l.laid.get(i)).copied() else { return };
                let name = own.hand.shape(s, i).map_or_else(String::new, |a| readable(&a.name));
                let corner = own.hand.lay.room(s, &laid).origin();
                own.begin(say!("cloth-step-push", name));
                let done = own.hand.carry(s, i, corner.x + along * step, corner.y + across * step);
                own.end();
                // A push across is small: that it did nothing is told too.
                let stays = across != 0.0 && own.hand.lay.layouts[s].laid.get(i) == Some(&laid);
                let done = match done {
                    Ok(()) if stays => Err(say!("cloth-no-further", name)),
                    done => done,
                };
                self.answer(done);
            }
            ClothWish::Step(step) => self.shown.cloth.step = step,
            ClothWish::Look(view) => self.shown.cloth.view = view,
            ClothWish::DropGroup(group) => {
                self.shown.cloth.groups.retain(|g| *g != group);
                self.shown.cloth.generation += 1;
            }
            ClothWish::TakePlans(places) => self.run(&Command::Lay(LayCommand::Take(places))),
            ClothWish::Longest(wish) => self.longest_wish(ctx, wish),
        }
    }

    fn take_piece(&mut self, (stretch, piece): (usize, usize), from: Point) {
        if !self.may_handle() {
            return;
        }
        self.shown.cloth.piece = Some((stretch, piece));
        // The picture stays where it is while the piece is carried, however long the cloth gets.
        let Some(own) = self.shown.cloth.take_in_hand(self.scene.draft().display) else { return };
        if own.hand.is_locked(stretch, piece) {
            let name = own.hand.shape(stretch, piece).map_or_else(String::new, |a| readable(&a.name));
            return self.refuse(say!("cloth-is-locked", name));
        }
        let Some(laid) = own.hand.lay.layouts.get(stretch).and_then(|l| l.laid.get(piece)).copied() else { return };
        let corner = own.hand.lay.room(stretch, &laid).origin();
        let name = own.hand.shape(stretch, piece).map_or_else(String::new, |a| readable(&a.name));
        own.begin(say!("cloth-step-move", name));
        self.shown.cloth.carried = Some(Carried { stretch, piece, from, corner });
    }
}
