//! Pulling, pushing and moving: points, handles, edges, several at once, and pieces on the table.

use std::sync::Arc;

use kurbo::{Point, Vec2};

use super::Window;
use super::ask::{Ask, Purpose};
use super::state::{Grabbed, Held, Hint};
use crate::compute::unit_of;
use crate::document::{Address, Inner, Part};
use crate::session::{Command, EditError, Grip, PartCommand, Pull, edge_grips, signed_length};
use crate::texts::say;

impl Window {
    pub(super) fn hover(&mut self, at: Option<Address>) {
        self.shown.hint = at.map(|at| {
            let grip = self.grip(&at);
            Hint { revision: self.scene.computed.revision, grip, at }
        });
    }

    fn grip(&self, at: &Address) -> Result<Grip, String> {
        let case = self.scene.case_of(&self.shown.case);
        Grip::take(self.open.work().draft(), &self.scene.computed, at, case).map_err(|e| e.to_string())
    }

    /// Chooses a point or handle beside the others, or no more. The chosen point is the first of them.
    pub(super) fn also(&mut self, at: Address) {
        if let Some(Part::Inner(frame, Inner::Point, name)) = &self.shown.part {
            let first = Address::new(Part::point(frame, name), "at");
            if self.shown.also.is_empty() && first != at {
                self.shown.also.push(first);
            }
        }
        match self.shown.also.iter().position(|a| *a == at) {
            Some(i) => drop(self.shown.also.remove(i)),
            None => self.shown.also.push(at),
        }
    }

    /// All that moves with a point or handle.
    fn with_others(&self, at: &Address) -> Vec<(Address, f64)> {
        let all = if self.shown.also.contains(at) { self.shown.also.clone() } else { Vec::new() };
        let others = all.into_iter().filter(|a| a != at);
        std::iter::once(at.clone()).chain(others).map(|a| (a, 1.0)).collect()
    }

    pub(super) fn grab(&mut self, what: Grabbed, from: Point) {
        self.finish_typing();
        let case = self.scene.case_of(&self.shown.case);
        let (part, wanted) = match what {
            Grabbed::Grip(at) => (at.part.clone(), Ok(self.with_others(&at))),
            Grabbed::Edge(part) => {
                let slot = part.frame().and_then(|f| self.scene.shapes.slot(f));
                let place = slot.map_or(from, |s| from - self.scene.shapes.shift(case, s));
                let grips = edge_grips(&self.scene.computed, &part, case, place).map_err(|e| e.to_string());
                (part, grips)
            }
        };
        let taken: Result<Vec<(Grip, f64)>, String> =
            wanted.and_then(|all| all.into_iter().map(|(at, share)| Ok((self.grip(&at)?, share))).collect());
        match taken {
            Err(problem) => self.refuse(problem),
            Ok(grips) => {
                let grips: Vec<_> = grips.into_iter().map(|(g, s)| (g.settle(&self.scene.computed), s)).collect();
                let called = match &grips[..] {
                    [_] => say!("step-pull", part = part.words()),
                    _ if matches!(part, Part::Inner(_, Inner::Point, _)) => {
                        say!("step-pull-points", count = grips.len())
                    }
                    _ => say!("step-pull", part = part.words()),
                };
                self.open.begin(called.clone());
                let slots = 0..self.scene.shapes.slots.len();
                let ghost = slots.filter_map(|i| self.scene.shapes.get(case, i)).cloned().collect();
                if let [(grip, _), ..] = &grips[..] {
                    let revision = self.scene.computed.revision;
                    self.shown.hint = Some(Hint { at: grip.at.clone(), revision, grip: Ok(grip.clone()) });
                }
                self.shown.part = Some(part);
                let computed = Arc::clone(&self.scene.computed);
                self.shown.held = Some(Held { grips, called, from, computed, ghost });
            }
        }
    }

    pub(super) fn pull_to(&mut self, to: Point, loose: bool) {
        let Some(held) = &self.shown.held else { return };
        let by = to - held.from;
        let pulls =
            held.grips.iter().map(|(grip, share)| grip.pulled(&held.computed, by * *share, self.shown.reach, loose));
        let (command, left) = together(&held.called, pulls);
        self.do_pull(command, left);
    }

    fn do_pull(&mut self, command: Option<Command>, left: Vec<String>) {
        let Some(command) = command else { return self.refuse(left.join("; ")) };
        match self.open.run(&command) {
            Ok(told) => match (told.is_empty(), left.is_empty()) {
                (true, true) => self.shown.message = None,
                (false, true) => self.tell(told),
                (_, false) => self.refuse(left.join("; ")),
            },
            Err(problem) => self.refuse(problem.to_string()),
        }
    }

    pub(super) fn nudge(&mut self, at: Address, by: Vec2, loose: bool) {
        self.finish_typing();
        let all = self.with_others(&at);
        self.move_all(&all, by, loose);
    }

    /// Moves points and handles by so much, as one step.
    fn move_all(&mut self, all: &[(Address, f64)], by: Vec2, loose: bool) {
        let pulls: Vec<_> = all
            .iter()
            .map(|(at, share)| {
                let grip = self.grip(at).map_err(EditError::refused)?;
                grip.settle(&self.scene.computed).pulled(&self.scene.computed, by * *share, self.shown.reach, loose)
            })
            .collect();
        let called = match all {
            [(at, _)] => say!("step-pull", part = at.part.words()),
            _ => say!("step-move-points", count = all.len()),
        };
        let (command, left) = together(&called, pulls.into_iter());
        self.do_pull(command, left);
        // The next push by keys starts from what this one made.
        self.open.settle();
        self.follow();
    }

    /// Moves what is chosen by lengths that were typed.
    pub(super) fn move_by(&mut self, ask: &Ask) {
        let unit = unit_of(self.open.work().draft());
        let typed = |i: usize| match ask.text(i) {
            "" => Some(0.0),
            text => signed_length(text, unit),
        };
        let (Some(right), Some(down)) = (typed(0), typed(1)) else {
            if let Some(ask) = &mut self.shown.ask {
                ask.problem = say!("pull-needs-length");
            }
            return;
        };
        let all = self.chosen_points();
        self.shown.ask = None;
        self.move_all(&all, Vec2::new(right, down), false);
    }

    /// The points and handles that are chosen.
    fn chosen_points(&self) -> Vec<(Address, f64)> {
        match (&self.shown.also[..], &self.shown.part) {
            ([], Some(Part::Inner(frame, Inner::Point, name))) => {
                vec![(Address::new(Part::point(frame, name), "at"), 1.0)]
            }
            (all, _) => all.iter().map(|a| (a.clone(), 1.0)).collect(),
        }
    }

    /// Asks by how much what is chosen is moved.
    pub(super) fn ask_move(&mut self) {
        let all = self.chosen_points();
        if all.is_empty() {
            return self.refuse(say!("pull-choose-point"));
        }
        let names: Vec<String> = all.iter().map(|(at, _)| at.part.name().to_owned()).collect();
        let note = say!("pull-ask-note", points = names.join(", "));
        let ask = Ask::new(Purpose::MoveBy, say!("pull-ask-title"), note, &[say!("pull-ask-do")]);
        self.shown.ask = Some(ask.field(say!("pull-right"), "0", "").field(say!("pull-down"), "0", ""));
    }

    /// A piece is taken on the table.
    pub(super) fn on_table_from(&mut self, piece: String, at: Point) {
        self.finish_typing();
        let Some(slot) = self.scene.shapes.slot(&piece) else { return };
        let lay = self.scene.shapes.slots[slot].shift.to_point();
        self.open.begin(say!("step-on-table", piece));
        self.shown.on_table = Some((piece, lay, at));
    }

    /// It is moved there.
    pub(super) fn on_table_to(&mut self, to: Point) {
        let Some((piece, lay, from)) = self.shown.on_table.clone() else { return };
        let put = Command::Part(PartCommand::OnTable(piece, Some(lay + (to - from))));
        if let Err(problem) = self.open.run(&put) {
            self.refuse(problem.to_string());
        }
    }
}

/// Several pulls as one change; what cannot move is told, unless nothing can.
fn together(called: &str, pulls: impl Iterator<Item = Result<Pull, EditError>>) -> (Option<Command>, Vec<String>) {
    let (mut all, mut left) = (Vec::new(), Vec::new());
    for pull in pulls {
        match pull {
            Ok(pull) => all.push(Command::Pull(Box::new(pull))),
            Err(problem) => left.push(problem.to_string()),
        }
    }
    match all.len() {
        0 => (None, left),
        1 => (all.pop(), left),
        _ => (Some(Command::Several(called.to_owned(), all)), left),
    }
}
