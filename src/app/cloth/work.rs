//! The searches of the room of cloth, beside the window, and the actions that begin and end them.

use std::sync::Arc;
use std::sync::mpsc::{TryRecvError, channel};
use std::thread;
use std::time::Duration;

use egui::Context;

use super::{ClothShown, Found, Hand, Search, Standing, called};
use crate::app::Window;
use crate::app::ask::{Ask, Purpose};
use crate::app::state::Room;
use crate::base::DisplayUnit;
use crate::document::Part;
use crate::output::lay::Lay;
use crate::session::{
    Act, Command, LayCell, LayCommand, LayEffort, LayHand, LayKey, LayTable, Laying, Wake, lay_table,
};
use crate::texts::{carried, say};

/// One plan is looked for no longer than this.
const ONE: Duration = Duration::from_secs(20);
/// What wakes the window from beside it.
pub(super) fn wake(ctx: &Context) -> Wake {
    let ctx = ctx.clone();
    Arc::new(move || ctx.request_repaint())
}

impl ClothShown {
    /// The locked pieces of what is seen of a cell: of the lay in the hand, that was found, or that is kept.
    pub(super) fn locks(&self, key: &LayKey) -> Vec<(usize, usize)> {
        let kept = self.table.as_ref().and_then(|t| t.cell(key)?.kept.as_ref()?.lay.as_ref().ok());
        let kept = kept.map(|k| (&*k.0, &k.1));
        let found = self.found(key).and_then(|f| Some((&**f.lay.as_ref()?, &f.locked)));
        let hand = self.hands.iter().find(|(k, _)| k == key).map(|(_, h)| (&h.hand.lay, &h.hand.locked));
        let seen = self.lay(key);
        let own =
            [kept, found, hand].into_iter().flatten().find(|(lay, _)| seen.is_some_and(|s| std::ptr::eq(s, *lay)));
        own.map_or_else(Vec::new, |own| own.1.clone())
    }

    pub(super) fn cell(&self, key: &LayKey) -> Option<&LayCell> {
        self.table.as_ref()?.cell(key)
    }

    pub(super) fn hand_mut(&mut self) -> Option<&mut Hand> {
        let key = self.at.as_ref()?;
        self.hands.iter_mut().find(|(k, _)| k == key).map(|(_, h)| h)
    }

    /// The lay of the chosen cell in the hand, taken into it if it is not yet.
    pub(super) fn take_in_hand(&mut self, unit: DisplayUnit) -> Option<&mut Hand> {
        if self.hand().is_none() {
            let key = self.at.clone()?;
            let lay = self.lay(&key)?.clone();
            let locked = self.locks(&key);
            self.hands.push((key, Hand::of(LayHand { lay, locked }, unit)));
        }
        self.hand_mut()
    }

    pub(super) fn put_found(&mut self, key: &LayKey, found: Found) {
        match self.found.iter_mut().find(|(k, _)| k == key) {
            Some((_, own)) => *own = found,
            None => self.found.push((key.clone(), found)),
        }
    }

    /// What was found is held against another table.
    fn follow_table(&mut self) {
        let Some(table) = self.table.clone() else { return };
        let is_of = |key: &LayKey, job: &crate::output::lay::LayJob| {
            table.cell(key).and_then(|c| c.job.as_ref().ok()).is_some_and(|own| own.is_of(job))
        };
        for (key, found) in &mut self.found {
            found.stale = found.lay.as_ref().is_some_and(|l| !is_of(key, &l.job));
        }
        if let Some(search) = &self.search {
            let other = |(key, row): (&LayKey, &crate::session::LayRow)| {
                row.best.as_ref().is_some_and(|b| !is_of(key, &b.job)) || table.cell(key).is_none()
            };
            if search.keys.iter().zip(&search.rows).any(other) {
                search.laying.stop();
            }
        }
        if self.at.as_ref().is_none_or(|k| table.cell(k).is_none()) {
            (self.at, self.piece, self.carried) = (None, None, None);
        }
    }
}

impl Window {
    /// Takes in what goes on beside the window, and has the table made anew where the draft is another one.
    pub(in crate::app) fn follow_cloth(&mut self, ctx: &Context) {
        self.follow_longest();
        let is_done = self.shown.cloth.search.as_mut().map(|search| {
            // Asked first: what was told before the end is in the rows.
            let done = search.laying.is_done();
            search.rows = search.laying.rows();
            done
        });
        if is_done == Some(true) {
            self.end_search();
        }
        if let Some((of, making)) = &self.shown.cloth.making {
            match making.try_recv() {
                Err(TryRecvError::Empty) => return,
                Err(TryRecvError::Disconnected) => {
                    self.shown.cloth.of = *of;
                    self.shown.cloth.making = None;
                    self.refuse(say!("cloth-table-failed"));
                }
                Ok(table) => {
                    self.shown.cloth.of = *of;
                    self.shown.cloth.making = None;
                    self.take_table(table);
                }
            }
        }
        let wanted = (self.scene.whole.revision, self.shown.cloth.generation);
        let is_seen = self.shown.room == Room::Cloth || self.shown.cloth.search.is_some();
        if is_seen && self.shown.cloth.of != wanted && self.scene.whole.model.is_some() {
            let (sender, receiver) = channel();
            let (computed, groups) = (Arc::clone(&self.scene.whole), self.shown.cloth.groups.clone());
            let wake = wake(ctx);
            let work = move || {
                if let (Some(model), Some(finished)) = (&computed.model, &computed.finished) {
                    // The window may be closed by now.
                    let _ = sender.send(lay_table(model, finished, &groups));
                }
                drop(sender);
                wake();
            };
            if thread::Builder::new().name("cloth table".to_owned()).spawn(carried(work)).is_ok() {
                self.shown.cloth.making = Some((wanted, receiver));
            }
        }
    }

    fn take_table(&mut self, table: LayTable) {
        let is_first = self.shown.cloth.table.is_none();
        let table = Arc::new(table);
        self.shown.cloth.table = Some(Arc::clone(&table));
        self.shown.cloth.follow_table();
        // What is in the hand follows its pieces; what was kept is seen as such.
        let hands = std::mem::take(&mut self.shown.cloth.hands);
        for (key, hand) in hands {
            let Some((cell, Ok(job))) = table.cell(&key).map(|c| (c, &c.job)) else { continue };
            if !hand.changed && hand.done.is_empty() && hand.undone.is_empty() {
                continue;
            }
            if hand.hand.lay.job.is_of(job) {
                self.shown.cloth.hands.push((key, hand));
                continue;
            }
            let Some(model) = self.model_of(cell.wish.view) else { continue };
            let plan = hand.hand.lay.to_plan(model, ("", &key.width), &hand.hand.locked);
            let mut other = Hand::of(LayHand::of_plan(model, Arc::clone(job), &plan), self.scene.draft().display);
            other.changed = true;
            self.shown.cloth.hands.push((key, other));
        }
        if is_first && self.shown.cloth.at.is_none() {
            let view = self.scene.view();
            let own = |c: &&LayCell| c.key.view == view;
            let case = [(self.shown.case.clone(), 1)];
            let cells = || table.cells.iter().filter(own);
            let cell = cells().find(|c| c.key.sizes == case).or_else(|| cells().next());
            self.shown.cloth.at = cell.map(|c| c.key.clone());
        }
    }

    pub(super) fn model_of(&self, view: usize) -> Option<&crate::compute::Model> {
        let all = self.scene.whole.model.as_ref()?.of_views();
        all.get(view.min(all.len().saturating_sub(1)))
    }

    /// Begins to look for plans.
    fn search(&mut self, ctx: &Context, cells: Vec<(LayCell, Option<LayHand>)>, one: bool) {
        if self.shown.cloth.search.is_some() {
            return self.refuse(say!("cloth-search-goes-on"));
        }
        if self.shown.cloth.of.0 != self.scene.whole.revision {
            return self.refuse(say!("cloth-still-looking"));
        }
        let keys = cells.iter().map(|(c, _)| c.key.clone()).collect();
        let (wishes, starts): (Vec<_>, Vec<_>) = cells.into_iter().map(|(c, start)| (c.wish, start)).unzip();
        let effort = LayEffort { time: one.then_some(ONE), ..LayEffort::default() };
        let laying = Laying::start(Arc::clone(&self.scene.whole), wishes, starts.clone(), effort, Some(wake(ctx)));
        let rows = laying.rows();
        self.shown.cloth.search = Some(Search { laying, keys, rows, starts, one });
        self.shown.cloth.carried = None;
    }

    /// What a search of a cell begins with.
    fn start_of(&self, cell: &LayCell) -> Option<LayHand> {
        let cloth = &self.shown.cloth;
        if let Some((_, hand)) = cloth.hands.iter().find(|(k, _)| *k == cell.key) {
            return Some(hand.hand.clone());
        }
        if let Some(lay) = cloth.lay(&cell.key) {
            return Some(LayHand { lay: lay.clone(), locked: cloth.locks(&cell.key) });
        }
        // A stale plan is still something to begin with.
        let place = cell.kept.as_ref()?.place;
        let plan = self.scene.draft().plans.get(place)?;
        let hand = LayHand::of_plan(self.model_of(cell.wish.view)?, Arc::clone(cell.job.as_ref().ok()?), plan);
        Some(LayHand::of(hand.lay))
    }

    fn end_search(&mut self) {
        let Some(search) = self.shown.cloth.search.take() else { return };
        let mut words = None;
        for ((key, row), start) in search.keys.iter().zip(&search.rows).zip(&search.starts) {
            let cloth = &mut self.shown.cloth;
            let hand = cloth.hands.iter_mut().find(|(k, _)| k == key).map(|(_, h)| h);
            if let (Some(hand), Some(best)) = (hand, &row.best) {
                if !hand.faults.is_empty() || best.need().exact < hand.need.exact - super::TOLD {
                    hand.begin(say!("cloth-step-improve"));
                    hand.hand = hand.hand.taken_over((**best).clone());
                    hand.end();
                } else if search.one {
                    words = Some(say!("cloth-nothing-shorter", plan = called(cloth, key)));
                }
                cloth.piece = None;
                continue;
            }
            // What was locked in what the search began with stays locked in what it found.
            let stay = start.as_ref().zip(row.best.as_ref()).map(|(s, best)| s.taken_over(Lay::clone(best)).locked);
            let (lay, locked) = (row.best.clone(), stay.unwrap_or_default());
            let found = Found { lay, locked, failed: row.failed.clone(), odd: row.odd.clone(), stale: false };
            if found.lay.is_some() || cloth.found(key).is_none_or(|f| f.stale || f.lay.is_none()) {
                cloth.put_found(key, found);
            }
        }
        let failed = search.rows.iter().find_map(|r| r.failed.clone()).filter(|_| search.one);
        self.shown.cloth.follow_table();
        match (failed, words) {
            (Some(why), _) => self.refuse(why.to_string()),
            (None, Some(words)) => self.tell(words),
            (None, None) if search.one => {}
            (None, None) => {
                let many = search.rows.iter().filter(|r| r.best.is_some()).count();
                let rest = search.rows.iter().filter(|r| r.best.is_none() && r.failed.is_none()).count();
                let all = search.rows.len();
                self.tell(match rest {
                    0 => say!("cloth-found-all", many, all),
                    _ => say!("cloth-found-some", many, all, rest),
                });
            }
        }
    }

    /// Does an action of the room.
    pub(in crate::app) fn cloth_act(&mut self, ctx: &Context, act: Act) {
        match act {
            Act::PlanAll => {
                self.shown.room = Room::Cloth;
                let Some(table) = self.shown.cloth.table.clone() else {
                    self.follow_cloth(ctx);
                    return self.tell(say!("cloth-plan-later"));
                };
                let planned = |c: &&LayCell| c.job.is_ok() && table.is_told(&c.key);
                let cells: Vec<_> = table.cells.iter().filter(planned).cloned().collect();
                if cells.is_empty() {
                    return self.refuse(say!("cloth-nothing-to-lay"));
                }
                let cells = cells.into_iter().map(|c| {
                    let start = self.start_of(&c);
                    (c, start)
                });
                let cells = cells.collect();
                self.search(ctx, cells, false);
            }
            Act::StopPlanning => {
                if let Some(search) = &self.shown.cloth.search {
                    search.laying.stop();
                }
                self.stop_longest();
            }
            Act::ImprovePlan => {
                let Some(cell) = self.shown.cloth.at.as_ref().and_then(|k| self.shown.cloth.cell(k)).cloned() else {
                    return;
                };
                if let Err(why) = &cell.job {
                    return self.refuse(why.to_string());
                }
                let start = self.start_of(&cell);
                self.search(ctx, vec![(cell, start)], true);
            }
            Act::KeepPlan => {
                let keys = self.shown.cloth.at.clone().into_iter().collect();
                self.keep_plans(keys);
            }
            Act::KeepPlans => {
                let cells = self.shown.cloth.table.iter().flat_map(|t| &t.cells);
                let keys: Vec<LayKey> = cells
                    .map(|c| c.key.clone())
                    .filter(|k| matches!(self.shown.cloth.standing(k), Standing::Found | Standing::ByHand))
                    .collect();
                self.keep_plans(keys);
            }
            Act::TakePlan => {
                let place =
                    self.shown.cloth.at.as_ref().and_then(|k| self.shown.cloth.cell(k)?.kept.as_ref()).map(|k| k.place);
                match place {
                    Some(place) => self.run(&Command::Lay(LayCommand::Take(vec![place]))),
                    None => self.refuse(say!("cloth-none-kept")),
                }
            }
            Act::TakeStalePlans => self.run(&Command::Lay(LayCommand::TakeStale)),
            Act::TurnHalf | Act::TurnOver | Act::LockPiece => self.handle(act),
            Act::AddGroup => {
                self.shown.room = Room::Cloth;
                let known = self.sizes().join(", ");
                let (title, note) = (say!("cloth-group-title"), say!("cloth-group-note", sizes = known));
                let ask = Ask::new(Purpose::Group, title, note, &[say!("cloth-group-add").as_str()]);
                self.shown.ask = Some(ask.field(say!("cloth-group-sizes"), say!("cloth-group-hint"), ""));
            }
            Act::AddWidth => {
                let draft = self.scene.draft();
                let chosen = match (&self.shown.part, &self.shown.cloth.at) {
                    (Some(Part::Material(name)), _) => name.clone(),
                    (_, Some(key)) => key.material.clone(),
                    _ => draft.materials.first().map_or_else(String::new, |m| m.name.clone()),
                };
                let (title, note) = (say!("cloth-width-title"), say!("cloth-width-note"));
                let ask = Ask::new(Purpose::Width, title, note, &[say!("cloth-width-add").as_str()]);
                let ask = ask.field(say!("cloth-width-cloth"), say!("cloth-its-name"), chosen);
                self.shown.ask = Some(ask.field(say!("cloth-width-field"), say!("cloth-width-hint"), ""));
            }
            Act::Longest => self.ask_longest(),
            _ => {}
        }
    }
}
