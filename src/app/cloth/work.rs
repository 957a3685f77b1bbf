//! Granting what is wished in the room of cloth: searches beside the window, plans that are kept, the hand and its steps of undo.

use std::sync::Arc;
use std::sync::mpsc::{TryRecvError, channel};
use std::thread;
use std::time::Duration;

use egui::Context;
use kurbo::Point;

use super::{Carried, ClothShown, ClothWish, Found, Hand, STEPS, Search, Standing, called};
use crate::app::Window;
use crate::app::ask::{Ask, Purpose};
use crate::app::state::Room;
use crate::document::{Address, LayPlan, Part};
use crate::session::{
    Act, Command, LayCell, LayCommand, LayEffort, LayHand, LayKey, LayTable, Laying, PublishCommand, TextCommand, Wake,
    lay_table, plan_name, sizes_called, sizes_typed,
};

/// All plans are looked for no longer than this.
const ALL: Duration = Duration::from_secs(60);
/// One plan is looked for no longer than this.
const ONE: Duration = Duration::from_secs(20);
/// At most so many steps by hand are undone.
const MOST_STEPS: usize = 200;

/// What wakes the window from beside it.
pub(super) fn wake(ctx: &Context) -> Wake {
    let ctx = ctx.clone();
    Arc::new(move || ctx.request_repaint())
}

impl Hand {
    fn of(hand: LayHand) -> Self {
        let (faults, need) = (hand.faults(), hand.need());
        Self { hand, done: Vec::new(), undone: Vec::new(), faults, need, changed: false }
    }

    /// What is told of it follows what lies in it.
    fn told(&mut self) {
        (self.faults, self.need) = (self.hand.faults(), self.hand.need());
    }

    /// Before a step: it can be taken back.
    fn begin(&mut self, label: String) {
        self.done.push((label, self.hand.clone()));
        self.undone.clear();
        if self.done.len() > MOST_STEPS {
            self.done.remove(0);
        }
    }

    /// After a step: one that changed nothing is none.
    fn end(&mut self) {
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

impl ClothShown {
    /// The locked pieces of the plan that is kept for a cell, where that is what is seen.
    pub(super) fn kept_locks(&self, key: &LayKey) -> Vec<(usize, usize)> {
        let kept = self.table.as_ref().and_then(|t| t.cell(key)?.kept.as_ref()?.lay.as_ref().ok());
        let seen = self.lay(key);
        kept.filter(|k| seen.is_some_and(|s| *s == *k.0)).map_or_else(Vec::new, |k| k.1.clone())
    }

    fn cell(&self, key: &LayKey) -> Option<&LayCell> {
        self.table.as_ref()?.cell(key)
    }

    fn hand_mut(&mut self) -> Option<&mut Hand> {
        let key = self.at.as_ref()?;
        self.hands.iter_mut().find(|(k, _)| k == key).map(|(_, h)| h)
    }

    /// The lay of the chosen cell in the hand, taken into it if it is not yet.
    fn take_in_hand(&mut self) -> Option<&mut Hand> {
        if self.hand().is_none() {
            let key = self.at.clone()?;
            let lay = self.lay(&key)?.clone();
            let locked = self.kept_locks(&key);
            self.hands.push((key, Hand::of(LayHand { lay, locked })));
        }
        self.hand_mut()
    }

    fn put_found(&mut self, key: &LayKey, found: Found) {
        match self.found.iter_mut().find(|(k, _)| k == key) {
            Some((_, own)) => *own = found,
            None => self.found.push((key.clone(), found)),
        }
    }

    /// What was found is held against another table.
    fn follow_table(&mut self) {
        let Some(table) = self.table.clone() else { return };
        let is_of = |key: &LayKey, job: &crate::output::lay::LayJob| {
            table.cell(key).and_then(|c| c.job.as_ref().ok()).is_some_and(|own| **own == *job)
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
                    self.refuse("the table of cloth could not be made: the program failed on it");
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
            if thread::Builder::new().name("cloth table".to_owned()).spawn(work).is_ok() {
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
            if *hand.hand.lay.job == **job {
                self.shown.cloth.hands.push((key, hand));
                continue;
            }
            let Some(model) = self.model_of(cell.wish.view) else { continue };
            let plan = hand.hand.lay.to_plan(model, ("", &key.width), &hand.hand.locked);
            let mut other = Hand::of(LayHand::of_plan(model, Arc::clone(job), &plan));
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

    fn model_of(&self, view: usize) -> Option<&crate::compute::Model> {
        let all = self.scene.whole.model.as_ref()?.of_views();
        all.get(view.min(all.len().saturating_sub(1)))
    }

    /// Begins to look for plans.
    fn search(&mut self, ctx: &Context, cells: Vec<(LayCell, Option<LayHand>)>, one: bool) {
        if self.shown.cloth.search.is_some() {
            return self.refuse("a search goes on; stop it first");
        }
        if self.shown.cloth.of.0 != self.scene.whole.revision {
            return self.refuse("the pieces are still being looked at; try again in a moment");
        }
        let keys = cells.iter().map(|(c, _)| c.key.clone()).collect();
        let (wishes, starts) = cells.into_iter().map(|(c, start)| (c.wish, start)).unzip();
        let effort = LayEffort { time: Some(if one { ONE } else { ALL }), ..LayEffort::default() };
        let laying = Laying::start(Arc::clone(&self.scene.whole), wishes, starts, effort, Some(wake(ctx)));
        let rows = laying.rows();
        self.shown.cloth.search = Some(Search { laying, keys, rows, one });
        self.shown.cloth.carried = None;
    }

    /// What a search of a cell begins with.
    fn start_of(&self, cell: &LayCell) -> Option<LayHand> {
        let cloth = &self.shown.cloth;
        if let Some((_, hand)) = cloth.hands.iter().find(|(k, _)| *k == cell.key) {
            return Some(hand.hand.clone());
        }
        if let Some(lay) = cloth.lay(&cell.key) {
            return Some(LayHand { lay: lay.clone(), locked: cloth.kept_locks(&cell.key) });
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
        for (key, row) in search.keys.iter().zip(&search.rows) {
            let cloth = &mut self.shown.cloth;
            let hand = cloth.hands.iter_mut().find(|(k, _)| k == key).map(|(_, h)| h);
            if let (Some(hand), Some(best)) = (hand, &row.best) {
                if !hand.faults.is_empty() || best.need().exact < hand.need.exact - super::TOLD {
                    hand.begin("improve the plan".to_owned());
                    hand.hand = hand.hand.taken_over((**best).clone());
                    hand.end();
                } else if search.one {
                    words = Some(format!("{}: nothing shorter was found", called(key)));
                }
                cloth.piece = None;
                continue;
            }
            let found = Found { lay: row.best.clone(), failed: row.failed.clone(), odd: row.odd.clone(), stale: false };
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
                self.tell(format!("{many} of {} plans are found; Keep all writes them into the draft", search.rows.len()));
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
                    return self.tell("the pieces are being looked at; plan all once the table is there");
                };
                let cells: Vec<_> = table.cells.iter().filter(|c| c.job.is_ok()).cloned().collect();
                if cells.is_empty() {
                    return self.refuse("there is nothing that could be laid");
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
                let Some(cell) = self.shown.cloth.at.as_ref().and_then(|k| self.shown.cloth.cell(k)).cloned() else { return };
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
                let place = self.shown.cloth.at.as_ref().and_then(|k| self.shown.cloth.cell(k)?.kept.as_ref()).map(|k| k.place);
                match place {
                    Some(place) => self.run(&Command::Lay(LayCommand::Take(place))),
                    None => self.refuse("no plan is kept for this"),
                }
            }
            Act::TakeStalePlans => self.run(&Command::Lay(LayCommand::TakeStale)),
            Act::TurnHalf | Act::TurnOver | Act::LockPiece => self.handle(act),
            Act::AddGroup => {
                self.shown.room = Room::Cloth;
                let known = self.sizes().join(", ");
                let note = format!("Several garments laid together take less cloth than one by one. The sizes are {known}.");
                let ask = Ask::new(Purpose::Group, "Sizes laid together", note, &["Add the row"]);
                self.shown.ask = Some(ask.field("sizes", "such as 2 x S, 4 x M", ""));
            }
            Act::AddWidth => {
                let draft = self.scene.draft();
                let chosen = match (&self.shown.part, &self.shown.cloth.at) {
                    (Some(Part::Material(name)), _) => name.clone(),
                    (_, Some(key)) => key.material.clone(),
                    _ => draft.materials.first().map_or_else(String::new, |m| m.name.clone()),
                };
                let note = "From selvedge to selvedge, as it is sold. How it lies, its nap and the rest stand on the card of the cloth.";
                let ask = Ask::new(Purpose::Width, "Another width of a cloth", note, &["Add the width"]);
                self.shown.ask = Some(ask.field("cloth", "its name", chosen).field("width", "such as 140 cm", ""));
            }
            Act::Longest => self.ask_longest(),
            _ => {}
        }
    }

    /// The sizes of the range, by their addresses.
    fn sizes(&self) -> Vec<String> {
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
                let is_there = cloth.table.as_ref().is_some_and(|t| t.rows.contains(&group)) || cloth.groups.contains(&group);
                if let Some(key) = &mut cloth.at {
                    key.sizes.clone_from(&group);
                }
                (cloth.piece, cloth.view) = (None, None);
                if !is_there {
                    cloth.groups.push(group.clone());
                    cloth.generation += 1;
                }
                self.tell(format!("{} stands in the table; plan it", sizes_called(&group)));
            }
        }
    }

    /// A width was named in the dialog.
    pub(in crate::app) fn add_width(&mut self, cloth: &str, width: &str) {
        let Some(own) = self.scene.draft().materials.iter().find(|m| m.name == cloth) else {
            let known: Vec<&str> = self.scene.draft().materials.iter().map(|m| m.name.as_str()).collect();
            let words = match known.is_empty() {
                true => "the draft has no cloth yet; add one first".to_owned(),
                false => format!("there is no cloth called {cloth}; there are {}", known.join(", ")),
            };
            return self.problem(&words);
        };
        let (part, at) = (Part::Material(cloth.to_owned()), own.widths.len());
        let width = crate::language::tidy(width);
        if width.is_empty() {
            return self.problem("a width is needed, such as 140 cm");
        }
        let add = Command::Publish(PublishCommand::AddItem(part.clone(), "widths"));
        let set = Command::Text(TextCommand::Set(Address::nth(part.clone(), "widths", at), width));
        if self.try_ask(&Command::Several(format!("add a width of {cloth}"), vec![add, set])) {
            self.shown.part = Some(part);
        }
    }

    /// Writes plans into the draft, as one step.
    fn keep_plans(&mut self, keys: Vec<LayKey>) {
        let mut plans: Vec<(LayKey, LayPlan, LayHand)> = Vec::new();
        for key in keys {
            let cloth = &self.shown.cloth;
            let Some(cell) = cloth.cell(&key) else { continue };
            let Some(lay) = cloth.lay(&key) else { continue };
            let hand = cloth.hands.iter().find(|(k, _)| *k == key).map(|(_, h)| h);
            if let Some(fault) = hand.and_then(|h| h.faults.first()) {
                return self.refuse(format!("{}: it cannot be kept so, {}", called(&key), fault.says));
            }
            let locked = hand.map_or_else(|| cloth.kept_locks(&key), |h| h.hand.locked.clone());
            let Some(model) = self.model_of(cell.wish.view) else { continue };
            let name = plan_name(model, &cell.wish);
            let plan = lay.to_plan(model, (&name, &key.width), &locked);
            plans.push((key, plan, LayHand { lay: lay.clone(), locked }));
        }
        if plans.is_empty() {
            return self.refuse("there is no plan that could be kept; plan first");
        }
        let many = plans.len();
        let command = Command::Lay(LayCommand::Keep(plans.iter().map(|(_, plan, _)| plan.clone()).collect()));
        match self.open.run(&command) {
            Err(problem) => self.refuse(problem.to_string()),
            Ok(_) => {
                for (key, _, hand) in plans {
                    let odd = self.shown.cloth.found(&key).and_then(|f| f.odd.clone());
                    let lay = Some(Arc::new(hand.lay));
                    self.shown.cloth.put_found(&key, Found { lay, failed: None, odd, stale: false });
                    if let Some((_, own)) = self.shown.cloth.hands.iter_mut().find(|(k, _)| *k == key) {
                        own.changed = false;
                        own.done.clear();
                        own.undone.clear();
                    }
                }
                let are = if many == 1 { "plan is" } else { "plans are" };
                self.tell(format!("{many} {are} in the draft"));
            }
        }
    }

    /// Whether the plan that is seen may be moved by hand now; else that is told.
    fn may_handle(&mut self) -> bool {
        let sought = self.shown.cloth.at.as_ref().is_some_and(|k| self.shown.cloth.sought(k).is_some());
        if sought {
            self.refuse("this plan is being looked for; stop the search first");
        }
        !sought
    }

    /// Turns, turns over or locks the chosen piece.
    fn handle(&mut self, act: Act) {
        let Some((s, i)) = self.shown.cloth.piece else { return };
        if !self.may_handle() {
            return;
        }
        let Some(own) = self.shown.cloth.take_in_hand() else { return };
        let name = own.hand.shape(s, i).map_or_else(String::new, |a| a.name.replace('_', " "));
        let locked = own.hand.is_locked(s, i);
        let label = match act {
            Act::TurnHalf => format!("turn {name} by half"),
            Act::TurnOver => format!("turn {name} over"),
            _ if locked => format!("unlock {name}"),
            _ => format!("lock {name}"),
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
                let step = STEPS[self.shown.cloth.step.min(STEPS.len() - 1)];
                let Some(own) = self.shown.cloth.take_in_hand() else { return };
                let Some(laid) = own.hand.lay.layouts.get(s).and_then(|l| l.laid.get(i)).copied() else { return };
                let name = own.hand.shape(s, i).map_or_else(String::new, |a| a.name.replace('_', " "));
                let corner = own.hand.lay.room(s, &laid).origin();
                own.begin(format!("push {name}"));
                let done = own.hand.carry(s, i, corner.x + along * step, corner.y + across * step);
                own.end();
                // A push across is small: that it did nothing is told too.
                let stays = across != 0.0 && own.hand.lay.layouts[s].laid.get(i) == Some(&laid);
                let done = match done {
                    Ok(()) if stays => Err(format!("{name} can go no further across the cloth")),
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
            ClothWish::Longest(wish) => self.longest_wish(ctx, wish),
        }
    }

    fn take_piece(&mut self, (stretch, piece): (usize, usize), from: Point) {
        if !self.may_handle() {
            return;
        }
        self.shown.cloth.piece = Some((stretch, piece));
        // The picture stays where it is while the piece is carried, however long the cloth gets.
        let Some(own) = self.shown.cloth.take_in_hand() else { return };
        if own.hand.is_locked(stretch, piece) {
            let name = own.hand.shape(stretch, piece).map_or_else(String::new, |a| a.name.replace('_', " "));
            return self.refuse(format!("{name} is locked; unlock it first"));
        }
        let Some(laid) = own.hand.lay.layouts.get(stretch).and_then(|l| l.laid.get(piece)).copied() else { return };
        let corner = own.hand.lay.room(stretch, &laid).origin();
        let name = own.hand.shape(stretch, piece).map_or_else(String::new, |a| a.name.replace('_', " "));
        own.begin(format!("move {name} on the cloth"));
        self.shown.cloth.carried = Some(Carried { stretch, piece, from, corner });
    }
}
