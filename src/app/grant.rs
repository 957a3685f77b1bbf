//! Doing what was wished for in a frame.

use std::sync::Arc;

use egui::Context;

use super::Window;
use super::ask::{Ask, Then, split_list};
use super::disk::Answer;
use super::finder::{self, Found};
use super::help::HelpWish;
use super::own::OwnWish;
use super::state::{Field, Room, Tone, Typing, Wish};
use crate::document::{Part, Side};
use crate::language::tidy;
use crate::session::{ChartCommand, Command, Deletion, PartCommand, StepCommand, TextCommand, part_of_finding};
use crate::texts::say;

impl Window {
    /// Does what was wished for; the next frame shows it.
    pub(super) fn grant(&mut self, ctx: &Context) {
        if self.wishes.is_empty() {
            return;
        }
        for wish in std::mem::take(&mut self.wishes) {
            self.grant_one(ctx, wish);
        }
        self.follow();
        self.put_back();
        ctx.request_repaint();
    }

    fn grant_one(&mut self, ctx: &Context, wish: Wish) {
        match wish {
            Wish::Act(act) => self.act(ctx, act),
            Wish::Run(command) => self.run(&command),
            Wish::SeeView(view) => self.see_view(&view),
            Wish::Choose(case) => self.shown.case = case,
            Wish::Alone(case) => {
                let again = self.shown.case == case && !self.shown.behind;
                self.shown.behind = again;
                self.shown.case = case;
            }
            Wish::Part(part) => {
                let aside = matches!(self.shown.room, Room::Help(_) | Room::Preferences | Room::Welcome)
                    || self.shown.room == Room::Booklet && !matches!(part, Part::Step(_));
                let of_chart = matches!(part, Part::Row(_) | Part::Person(_) | Part::SizeSet(_));
                if aside || self.shown.room == Room::Chart && !of_chart {
                    self.shown.room = Room::Table;
                }
                self.shown.part = Some(part);
                self.shown.also.clear();
                self.shown.scroll_to_part = true;
            }
            Wish::Nothing => {
                self.shown.part = None;
                self.shown.also.clear();
            }
            Wish::Printing(printing) => self.shown.printing = printing,
            Wish::Publish(wish) => self.publish_wish(ctx, wish),
            Wish::Edition(wish) => self.release_wish(ctx, wish),
            Wish::Cloth(wish) => self.cloth_wish(ctx, wish),
            Wish::StopPrinting => {
                if let Some(job) = &self.job {
                    job.stop();
                }
            }
            Wish::OnPagesFrom(piece, at) => {
                self.finish_typing();
                self.open.begin(say!("step-on-pages", piece));
                self.shown.on_pages = Some((piece, at));
            }
            Wish::OnPagesTo(piece, at) => {
                let put = Command::Part(PartCommand::OnPages(piece, Some(at)));
                if let Err(problem) = self.open.run(&put) {
                    self.refuse(problem.to_string());
                }
            }
            Wish::Trace(wish) => self.trace_wish(ctx, wish),
            Wish::Lay(wish) => self.picture_wish(wish),
            Wish::Room(room) => self.shown.room = room,
            Wish::Chart(wish) => self.chart_wish(wish),
            Wish::Look(None) => self.see_all(),
            Wish::Look(view) => self.shown.view = view,
            Wish::Finding(i) => self.go_to_finding(i),
            Wish::Difference(i) => self.go_to_difference(i),
            Wish::Mend(i) => self.mend(i),
            Wish::Reach(reach) => self.shown.reach = reach,
            Wish::Hover(at) => self.hover(at),
            Wish::Also(at) => self.also(at),
            Wish::OnTableFrom(piece, at) => self.on_table_from(piece, at),
            Wish::OnTableTo(at) => self.on_table_to(at),
            Wish::Grab(what, from) => self.grab(what, from),
            Wish::PullTo(to, loose) => self.pull_to(to, loose),
            Wish::Nudge(at, by, loose) => self.nudge(at, by, loose),
            Wish::Release => {
                self.let_go_of_picture();
                if self.shown.on_pages.take().is_some() || self.shown.on_table.take().is_some() {
                    self.open.finish();
                }
                if self.shown.held.take().is_some() {
                    self.scene.take(Arc::clone(&self.scene.whole), false);
                    self.open.finish();
                }
            }
            Wish::Pencil(stroke) => self.stroke(stroke),
            Wish::Tape(hold) => self.hold(hold),
            Wish::TakeOut(piece, step) => {
                self.shown.ask = Ask::taking_out(self.open.work().draft(), &piece, step);
                if self.shown.ask.is_none() {
                    self.run(&Command::Step(StepCommand::Remove(piece, step, Deletion::IfUnused)));
                }
            }
            Wish::Cancel => self.cancel(ctx),
            Wish::Enter(field) => self.enter(field),
            Wish::Typed(field, text) => self.typed(field, text),
            Wish::Cursor(spot, text, at, asked) => self.offer(spot, text, at, asked),
            Wish::OfferedAt(at) => {
                if let Some(offered) = &mut self.shown.offered {
                    offered.at = at;
                }
            }
            Wish::NoOffers => {
                if let Some(offered) = &mut self.shown.offered {
                    offered.what.list.clear();
                    offered.at = None;
                }
            }
            Wish::Want(field) => self.shown.wanted = Some(field),
            Wish::Pointed(name) => self.shown.named = name,
            Wish::Leave(field, text) => {
                self.shown.left = Some(field.clone());
                self.leave_field(field, &text);
            }
            Wish::AskTyped(i, text) => {
                if let Some(field) = self.shown.ask.as_mut().and_then(|a| a.fields.get_mut(i)) {
                    field.text = text;
                }
                if let Some(ask) = &mut self.shown.ask {
                    ask.at = i;
                }
            }
            Wish::AskDone(choice) => self.asked(ctx, choice),
            Wish::FinderTyped(text) => {
                if let Some(finder) = &mut self.shown.finder {
                    finder.text = text;
                    finder.at = 0;
                }
            }
            Wish::FinderAt(at) => {
                if let Some(finder) = &mut self.shown.finder {
                    finder.at = at;
                }
            }
            Wish::FinderTake(i) => self.take_found(ctx, i),
            Wish::Chosen(path) => {
                self.chosen_for_trace(path.as_deref());
                if let (Some(path), Some(field)) = (path, self.shown.ask.as_mut().and_then(|a| a.fields.first_mut())) {
                    field.text = path.display().to_string();
                }
            }
            Wish::FoldValues => self.shown.values_open = !self.shown.values_open,
            Wish::Recover(i, take_up) => self.recover(i, take_up),
            Wish::Outside(load) => self.outside(load),
            Wish::Help(wish) => self.help(wish),
            Wish::Guide(wish) => self.guide(ctx, wish),
            Wish::Block(wish) => self.block_wish(wish),
            Wish::Own(wish) => self.own(wish),
        }
    }

    /// Makes a change; what was refused is told.
    pub(super) fn run(&mut self, command: &Command) {
        self.finish_typing();
        match self.open.run(command) {
            Ok(told) if told.is_empty() => self.shown.message = None,
            Ok(told) => self.tell(told),
            Err(problem) => self.refuse(problem.to_string()),
        }
    }

    pub(super) fn tell(&mut self, words: impl Into<String>) {
        self.shown.message = Some((Tone::Told, words.into()));
    }

    pub(super) fn refuse(&mut self, words: impl Into<String>) {
        self.shown.message = Some((Tone::Refused, words.into()));
    }

    fn take_found(&mut self, ctx: &Context, i: usize) {
        let Some(finder) = self.shown.finder.take() else { return };
        let mut found = finder::search(&finder.text, &self.open, &self.scene, &self.shown);
        if i >= found.len() {
            return;
        }
        match found.swap_remove(i).0 {
            Found::Act(act) => self.act(ctx, act),
            Found::Part(part) => self.grant_one(ctx, Wish::Part(part)),
            Found::Size(case) => self.shown.case = case,
            Found::Page(id) => self.help(HelpWish::Open(id)),
            Found::Recent(path) => self.own(OwnWish::Open(path)),
        }
    }

    /// Goes to the place that a finding speaks of, in the size in which it is worst.
    pub(super) fn go_to_finding(&mut self, i: usize) {
        let Some(finding) = self.scene.computed.findings.get(i) else { return };
        self.shown.finding = Some(i);
        let part = part_of_finding(self.scene.draft(), finding);
        let views: Vec<&str> = finding.place.view.split(", ").filter(|v| !v.is_empty()).collect();
        let shown = self.scene.model().map_or("", |m| m.view());
        let view = views.first().filter(|_| !views.contains(&shown)).map(|v| (*v).to_owned());
        if let Some(worst) = finding.sizes.get(finding.worst)
            && self.scene.cases().is_some_and(|c| c.list.iter().any(|c| c.address == *worst))
        {
            self.shown.case.clone_from(worst);
        }
        self.shown.room = match part {
            Some(Part::Row(_) | Part::Person(_)) => Room::Chart,
            _ => Room::Table,
        };
        self.shown.part = part.or(Some(Part::Draft));
        self.shown.scroll_to_part = true;
        if let Some(view) = view {
            self.see_view(&view);
        }
    }

    /// Shows another view of the garment.
    pub(super) fn see_view(&mut self, view: &str) {
        self.scene.see_view(view);
        self.measure_again();
    }

    /// Puts the proposal of a finding in its formula.
    fn mend(&mut self, i: usize) {
        let Some(finding) = self.scene.computed.findings.get(i) else { return };
        let (Some(mend), Some(part)) = (&finding.mend, part_of_finding(self.scene.draft(), finding)) else { return };
        let mut to = finding.formula.clone();
        if to.get(mend.span.start..mend.span.end).is_none() {
            return;
        }
        to.replace_range(mend.span.start..mend.span.end, &mend.by);
        let mut at = None;
        self.scene.draft().clone().each_text(&mut |address, _, text| {
            if address.part == part && *text == finding.formula && at.is_none() {
                at = Some(address.clone());
            }
        });
        if let Some(at) = at {
            self.run(&Command::Text(TextCommand::Set(at, to)));
        }
    }

    /// Gives up the innermost thing that is going on.
    fn cancel(&mut self, ctx: &Context) {
        if self.give_up_laying() {
            return;
        }
        if self.shown.ask.is_none()
            && self.shown.finder.is_none()
            && self.shown.typing.is_none()
            && self.give_up_carrying()
        {
            return;
        }
        let held = self.shown.held.take().is_some();
        if self.shown.on_pages.take().is_some() || self.shown.on_table.take().is_some() {
            self.open.abort();
        } else if held || self.shown.typing.take().is_some() {
            if held {
                self.scene.take(Arc::clone(&self.scene.whole), false);
            }
            self.open.abort();
            self.shown.message = None;
        } else if self.shown.finder.take().is_some() {
        } else if self.shown.ask.take().is_some() {
            self.then = None;
        } else if matches!(self.shown.room, Room::Help(_)) {
            self.help(HelpWish::Close);
        } else if let Some(tape) = &mut self.shown.tape {
            if !tape.give_up() {
                self.shown.tape = None;
            }
        } else if let Some(pencil) = &mut self.shown.pencil {
            if !pencil.give_up() {
                self.shown.pencil = None;
            }
        } else if self.shown.message.is_some() {
            self.shown.message = None;
        } else {
            self.shown.part = None;
            ctx.memory_mut(|m| {
                if let Some(id) = m.focused() {
                    m.surrender_focus(id);
                }
            });
        }
    }

    fn enter(&mut self, field: Field) {
        self.finish_typing();
        self.shown.wanted = None;
        self.open.begin(match &field {
            Field::Text(at, _) => say!("step-change", part = at.part.words()),
            Field::Cell(row, label) => say!("step-change-cell", row, size = label),
            Field::PersonCell(person, row) => say!("step-change-person", row, person),
            Field::SeamSide(name, _) => say!("step-change-seam", seam = name),
            Field::FoundBy(part) => say!("step-change", part = part.words()),
        });
        let text = self.text_of(&field);
        self.shown.typing = Some(Typing { field, text });
    }

    /// What stands in the draft where a field is.
    fn text_of(&self, field: &Field) -> String {
        let draft = self.open.work().draft();
        let cell = |cells: &[crate::document::Cell], name: &str| {
            cells.iter().find(|c| c.0 == name).map_or_else(String::new, |c| c.1.clone())
        };
        match field {
            Field::Text(at, _) => draft.text(at).unwrap_or_default(),
            Field::Cell(row, label) => {
                draft.chart.rows.iter().find(|r| r.name == *row).map_or_else(String::new, |r| cell(&r.cells, label))
            }
            Field::PersonCell(person, row) => {
                let person = draft.chart.persons.iter().find(|p| p.name == *person);
                person.map_or_else(String::new, |p| cell(&p.cells, row))
            }
            Field::SeamSide(name, two) => {
                let seam = draft.seams.iter().find(|s| s.name == *name);
                seam.map_or_else(String::new, |s| if *two { s.two.join(", ") } else { s.one.join(", ") })
            }
            Field::FoundBy(Part::Condition(name)) => {
                let condition = draft.conditions.iter().find(|c| c.name == *name);
                condition.map_or_else(String::new, |c| c.found_by.join(", "))
            }
            Field::FoundBy(part) => {
                let seam = draft.seams.iter().find(|s| s.name == part.name());
                seam.map_or_else(String::new, |s| s.found_by.join(", "))
            }
        }
    }

    fn typed(&mut self, field: Field, text: String) {
        if self.shown.typing.as_ref().is_none_or(|t| t.field != field) {
            self.enter(field.clone());
        }
        // What cannot be done half typed is told when the field is left.
        let done = self.open.run(&command(&field, &text)).is_ok();
        // What was told belongs to the change before.
        if done && matches!(self.shown.message, Some((Tone::Told, _))) {
            self.shown.message = None;
        }
        self.shown.typing = Some(Typing { field, text });
    }

    fn leave_field(&mut self, field: Field, text: &str) {
        if self.shown.typing.as_ref().is_some_and(|t| t.field == field) {
            (self.shown.typing, self.shown.offered, self.shown.named) = (None, None, None);
            if text != self.text_of(&field) {
                match self.open.run(&command(&field, text)) {
                    Ok(told) if told.is_empty() => self.shown.message = None,
                    Ok(told) => self.tell(told),
                    Err(problem) => {
                        // What was half typed before, and could be done, goes too.
                        self.open.abort();
                        self.refuse(problem.to_string());
                    }
                }
            }
            self.open.finish();
        }
    }

    /// Ends the field that is typed in, as if it were left.
    pub(super) fn finish_typing(&mut self) {
        if let Some(typing) = self.shown.typing.clone() {
            self.leave_field(typing.field, &typing.text);
        }
    }

    /// What became of the system's dialog for files.
    pub(super) fn browsed(&mut self, ctx: &Context) {
        if let Some(Answer::Closed(chosen)) = self.browsing.as_ref().map(super::Browsing::answer) {
            self.browsing = None;
            if chosen.is_none()
                && let Some(ask) = &mut self.shown.ask
            {
                ask.problem = say!("done-nothing-chosen-file");
            }
            self.wishes.push(Wish::Chosen(chosen));
            ctx.request_repaint();
        }
    }

    fn recover(&mut self, i: usize, take_up: bool) {
        if !take_up {
            if i < self.left.len() {
                match self.left[i].throw_away() {
                    Ok(()) => drop(self.left.remove(i)),
                    Err(problem) => self.refuse(problem.to_string()),
                }
            }
        } else if self.open.work().is_unsaved() {
            self.leave(Then::Recover(i));
        } else {
            self.go_on(Then::Recover(i));
        }
    }

    fn outside(&mut self, load: bool) {
        if !load {
            self.open.accept_outside();
        } else if self.open.work().is_unsaved() {
            self.leave(Then::Reload);
        } else {
            self.go_on(Then::Reload);
        }
    }
}

/// The change that a text in a field makes.
fn command(field: &Field, text: &str) -> Command {
    match field {
        Field::Text(at, formula) => {
            let to = if *formula { tidy(text) } else { text.to_owned() };
            Command::Text(TextCommand::Set(at.clone(), to))
        }
        Field::Cell(row, label) => Command::Chart(ChartCommand::Cell(row.clone(), label.clone(), text.to_owned())),
        Field::PersonCell(person, row) => {
            Command::Chart(ChartCommand::PersonCell(person.clone(), row.clone(), text.to_owned()))
        }
        Field::SeamSide(name, two) => {
            let side = if *two { Side::Two } else { Side::One };
            Command::Part(PartCommand::SeamSide(name.clone(), side, split_list(text)))
        }
        Field::FoundBy(part) => Command::Part(PartCommand::FoundBy(part.clone(), split_list(text))),
    }
}
