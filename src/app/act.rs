//! Carrying out actions and dialogs.

use std::path::{Path, PathBuf};

use egui::{Context, Theme};

use super::Window;
use super::ask::{Ask, Purpose, Then};
use super::chart::Page;
use super::disk::{Browsing, Kind};
use super::finder::Finder;
use super::guide::GuideWish;
use super::help::HelpWish;
use super::menus;
use super::own::OwnWish;
use super::roll::Rolling;
use super::scene::Scene;
use super::state::{Field, Room, Shown};
use crate::base::system::home;
use crate::document::{Address, Axis, Part, RowKind};
use crate::file;
use crate::language::tidy;
use crate::session::{
    Act, ChartCommand, Command, Deletion, NewSize, OpenDraft, PartCommand, PieceCommand, Reach, StepCommand,
    TextCommand, ViewCommand, part_named, place_of,
};
use crate::texts::say;

impl Window {
    /// Carries out an action.
    pub(super) fn act(&mut self, ctx: &Context, act: Act) {
        if act == Act::Help {
            return self.help_here(ctx);
        }
        self.finish_typing();
        if !menus::can(act, &self.open, &self.scene, &self.shown) {
            let words = format!("{}: {}", act.action().name().trim_end_matches(" …"), menus::why_not(act, &self.shown));
            return self.refuse(words);
        }
        match act {
            Act::New => self.leave_for(Then::New),
            Act::Open => self.leave_for(Then::Open),
            Act::Save => self.save(None, false),
            Act::SaveAs => self.shown.ask = Some(Ask::file(Purpose::SaveAs, &self.open)),
            Act::Quit => self.leave_for(Then::Quit),
            Act::Undo => {
                let told = self.undo_by_hand(false).or_else(|| self.open.undo());
                let told = told.map(|label| say!("done-undone", label));
                self.told(told);
            }
            Act::Redo => {
                let told = self.undo_by_hand(true).or_else(|| self.open.redo());
                let told = told.map(|label| say!("done-again", label));
                self.told(told);
            }
            Act::RenameSize => self.shown.ask = Some(Ask::renaming_size(Axis::Girth, &self.shown.case)),
            Act::DeleteSize => {
                self.shown.ask = Some(Ask::deleting_size(self.open.work().draft(), Axis::Girth, &self.shown.case));
            }
            Act::Base => self.run(&Command::Chart(ChartCommand::Base(self.shown.case.clone()))),
            Act::Rename => {
                let draft = self.open.work().draft();
                self.shown.ask = self.shown.part.as_ref().map(|part| Ask::renaming(draft, part));
            }
            Act::Delete => {
                let draft = self.open.work().draft();
                self.shown.ask = self.shown.part.as_ref().map(|part| Ask::deleting(draft, part));
            }
            Act::UsedBy => {
                let draft = self.open.work().draft();
                self.shown.ask = self.shown.part.as_ref().map(|part| Ask::using(draft, part));
            }
            Act::ReachAll => self.shown.reach = Reach::All,
            Act::ReachOne => self.shown.reach = Reach::One,
            Act::ReachUp => self.shown.reach = Reach::FromHereUp,
            Act::Confirm => self.run(&Command::Chart(ChartCommand::Confirm(String::new(), String::new()))),
            Act::Find => self.shown.finder = Some(Finder::default()),
            Act::SeeAll => self.see_all(),
            Act::Nearer => self.zoom(1.25),
            Act::Further => self.zoom(0.8),
            Act::NextSize => self.step_size(1),
            Act::PreviousSize => self.step_size(-1),
            Act::Others => self.shown.behind = !self.shown.behind,
            Act::Chart => self.toggle(Room::Chart),
            Act::PasteNumbers | Act::Proposals | Act::ChartSizes | Act::Steps => self.chart_act(act),
            Act::RowUp | Act::RowDown => self.move_in_order(act),
            Act::ReadTable | Act::WriteTable => self.chart_act(act),
            Act::Sheets => self.toggle(Room::Sheets),
            Act::Booklet => self.toggle(Room::Booklet),
            Act::Cloth => self.toggle(Room::Cloth),
            Act::PlanAll
            | Act::StopPlanning
            | Act::ImprovePlan
            | Act::KeepPlan
            | Act::KeepPlans
            | Act::TakePlan
            | Act::TakeStalePlans
            | Act::TurnHalf
            | Act::TurnOver
            | Act::LockPiece
            | Act::AddGroup
            | Act::AddWidth
            | Act::Longest => self.cloth_act(ctx, act),
            Act::Roll => self.shown.room = self.rolled_or_not(),
            Act::Print => self.shown.ask = Some(Ask::printing(&self.open)),
            Act::Publish => self.ask_publish(),
            Act::Release => self.ask_release(),
            Act::MoveBy => self.ask_move(),
            Act::Arrange => {
                self.run(&Command::Part(PartCommand::OnTable(String::new(), None)));
                self.scene.shapes = std::mem::take(&mut self.scene.shapes).arranged();
                self.shown.view = None;
            }
            Act::Bends => {
                self.shown.bends = !self.shown.bends;
                if self.shown.bends && self.shown.frame().is_none() {
                    self.tell(say!("done-bends-choose"));
                }
            }
            Act::Pencil => self.take_pencil(),
            Act::Tape => self.take_tape(),
            Act::TakeBlock => self.shown.ask = Some(super::blocks::asking()),
            Act::Compare => self.shown.ask = Some(Ask::file(Purpose::Compare, &self.open)),
            Act::Differences => self.toggle(Room::Differences),
            Act::EndCompare => self.end_comparing(),
            Act::NextFinding => self.step_finding(1),
            Act::PreviousFinding => self.step_finding(-1),
            Act::AllFindings => self.shown.all_findings = !self.shown.all_findings,
            Act::TrueScale => self.true_scale(ctx),
            Act::Theme => self.own(OwnWish::Light(ctx.theme() == Theme::Dark)),
            Act::Preferences => self.toggle(Room::Preferences),
            Act::Help => {}
            Act::Keys => self.help(HelpWish::Open("keys".to_owned())),
            Act::Guide => self.guide(ctx, GuideWish::Toggle),
            Act::Welcome => {
                self.shown.welcomed = self.open.work().revision();
                self.toggle(Room::Welcome);
            }
            Act::Trace => self.shown.trace = Some(Default::default()),
            Act::Picture => self.ask_for_picture(),
            Act::AddFitting => self.add_fitting(),
            Act::AddSize
            | Act::AddPerson
            | Act::AddRow
            | Act::AddSet
            | Act::AddValue
            | Act::AddFound
            | Act::AddPiece
            | Act::DerivePiece
            | Act::AddPoint
            | Act::AddEdge
            | Act::Close
            | Act::AddSeam
            | Act::AddStrip
            | Act::AddNotion
            | Act::AddMaterial
            | Act::AddStep
            | Act::AddCondition
            | Act::AddView => {
                self.shown.ask = Ask::adding(act, &self.scene, &self.shown);
            }
        }
    }

    fn told(&mut self, told: Option<String>) {
        if let Some(words) = told {
            self.tell(words);
        }
        if let Some(part) = self.shown.part.clone()
            && !is_there(&self.open, &part)
        {
            self.shown.part = self.whole_of(&part);
        }
    }

    /// The piece or drawing in which a part was, if that is still there.
    fn whole_of(&self, part: &Part) -> Option<Part> {
        let Part::Inner(frame, ..) = part else { return None };
        part_named(self.open.work().draft(), frame)
    }

    /// Shows a room, or the pieces again.
    fn toggle(&mut self, room: Room) {
        self.shown.room = if self.shown.room == room { Room::Table } else { room };
    }

    /// The chosen seam rolled, or the pieces again.
    fn rolled_or_not(&self) -> Room {
        match (&self.shown.room, &self.shown.part) {
            (Room::Roll(_), _) => Room::Table,
            (_, Some(Part::Seam(seam))) => Room::Roll(Rolling { seam: seam.clone(), share: 0.0 }),
            _ => Room::Table,
        }
    }

    /// Sees all that is there now.
    pub(super) fn see_all(&mut self) {
        self.shown.view = None;
        self.scene.shapes.refit();
    }

    fn zoom(&mut self, by: f64) {
        let sheet = self.shown.sheet;
        let view = super::canvas::view_of(&self.scene, &self.shown, sheet);
        self.shown.view = Some(view.zoomed(sheet, sheet.center(), by));
    }

    fn step_size(&mut self, by: isize) {
        let Some(cases) = self.scene.cases() else { return };
        let now = self.scene.case_of(&self.shown.case);
        let next = now.saturating_add_signed(by).min(cases.list.len().saturating_sub(1));
        self.shown.case.clone_from(&cases.list[next].address);
    }

    fn step_finding(&mut self, by: isize) {
        let all: Vec<usize> = self.scene.findings().map(|(i, _)| i).collect();
        let now = self.shown.finding.and_then(|f| all.iter().position(|i| *i == f));
        let next = match now {
            Some(now) => (now as isize + by).rem_euclid(all.len() as isize) as usize,
            None if by > 0 => 0,
            None => all.len() - 1,
        };
        self.go_to_finding(all[next]);
    }

    /// Does something that leaves the draft, once unsaved work is dealt with.
    pub(super) fn leave_for(&mut self, then: Then) {
        if self.open.work().is_unsaved() { self.leave(then) } else { self.go_on(then) }
    }

    /// Asks what becomes of unsaved work.
    pub(super) fn leave(&mut self, then: Then) {
        self.finish_typing();
        self.shown.ask = Some(Ask::unsaved(&self.open, then));
    }

    /// Does what comes after leaving the draft.
    pub(super) fn go_on(&mut self, then: Then) {
        match then {
            Then::New => self.put(OpenDraft::empty(self.wake.clone())),
            Then::Open => self.shown.ask = Some(Ask::file(Purpose::Open, &self.open)),
            Then::Quit => self.closing = true,
            Then::File(path) => self.open_file(&path),
            Then::Example(i) => self.open_example(i),
            Then::Reload => {
                if let Some(path) = self.open.path().map(Path::to_owned) {
                    self.open_file(&path);
                }
            }
            Then::Recover(i) => {
                if i >= self.left.len() {
                    return;
                }
                match self.left[i].take_up() {
                    Err(problem) => self.refuse(problem.to_string()),
                    Ok(taken) => {
                        self.left.remove(i);
                        self.put(OpenDraft::recovered(taken.draft.clone(), &taken.about, self.wake.clone()));
                        if let Some(keeper) = self.open.keeper() {
                            taken.kept_by(keeper);
                        }
                        self.tell(say!("done-taken-up"));
                    }
                }
            }
        }
    }

    /// Works on another draft from now on.
    pub(super) fn put(&mut self, open: OpenDraft) {
        self.note_left();
        self.open.let_go();
        self.open = open;
        self.scene = Scene::of(self.open.work().computed().clone());
        let own = std::mem::take(&mut self.shown.own);
        self.shown = Shown { reach: self.shown.reach, own, ..Shown::new(self.scene.first()) };
        self.keep();
    }

    pub(super) fn open_file(&mut self, path: &Path) {
        match file::open(path) {
            Ok(opened) => {
                self.put(OpenDraft::of_file(path, opened, self.wake.clone()));
                self.back_to_where_it_was_left();
            }
            Err(problem) => {
                let mut ask = Ask::file(Purpose::Open, &self.open);
                ask.fields[0].text = path.display().to_string();
                ask.problem = problem.to_string();
                self.shown.ask = Some(ask);
            }
        }
    }

    /// Saves; asks where the file has no name, holds comments, or was changed outside.
    pub(super) fn save(&mut self, to: Option<&Path>, over: bool) {
        self.finish_typing();
        if to.is_none() && self.open.path().is_none() {
            self.shown.ask = Some(Ask::file(Purpose::SaveAs, &self.open));
            return;
        }
        if !self.open.comments().is_empty() {
            let many = self.open.comments().len();
            let note = say!("comments-note", count = many);
            let choices = [say!("comments-keep"), say!("comments-drop")];
            self.shown.ask = Some(Ask::new(Purpose::Comments, say!("comments-title"), note, &choices));
            return;
        }
        match self.open.save(to, over) {
            Ok(()) => {
                self.tell(say!("done-saved", file = self.open.file_name()));
                self.note_left();
                if let Some(then) = self.then.take() {
                    self.go_on(then);
                }
            }
            Err(file::FileError::ChangedOutside { path, gone }) => {
                let at = path.display().to_string();
                let note = if gone { say!("over-removed", path = at) } else { say!("over-changed", path = at) };
                self.shown.ask = Some(Ask::over(path, note));
            }
            Err(problem) => {
                self.then = None;
                match &mut self.shown.ask {
                    Some(ask) => ask.problem = problem.to_string(),
                    None => self.refuse(problem.to_string()),
                }
            }
        }
    }

    /// Opens the system's dialog for files.
    pub(super) fn browse(&mut self, ctx: &Context) {
        let Some(ask) = &self.shown.ask else { return };
        let saving = (ask.purpose == Purpose::SaveAs).then(|| PathBuf::from(ask.text(0)));
        if self.browsing.is_none() {
            let kind = if matches!(ask.purpose, Purpose::Picture(_)) { Kind::Pictures } else { Kind::Drafts };
            self.browsing = Some(Browsing::start(ctx, saving, kind));
        }
    }

    /// A choice in the dialog.
    pub(super) fn asked(&mut self, ctx: &Context, choice: usize) {
        let Some(ask) = self.shown.ask.clone() else { return };
        match &ask.purpose {
            Purpose::Uses => self.shown.ask = None,
            Purpose::Group => self.add_group(ask.text(0)),
            Purpose::Width => self.add_width(ask.text(0), ask.text(1)),
            Purpose::MoveBy => self.move_by(&ask),
            Purpose::Add(act) => self.add(*act, &ask, choice),
            Purpose::Rename(part) => {
                let to = ask.text(0).to_owned();
                if self.try_ask(&Command::Part(PartCommand::Rename(part.clone(), to.clone()))) {
                    self.shown.part = Some(part.renamed(&to));
                    if let Some(pencil) = &mut self.shown.pencil {
                        pencil.renamed(part, &to);
                    }
                }
            }
            Purpose::Delete(part, ways) => {
                let Some(how) = ways.get(choice) else { return };
                if self.try_ask(&Command::Part(PartCommand::Delete(part.clone(), *how))) {
                    self.shown.part = self.whole_of(part);
                }
            }
            Purpose::TakeOut(piece, step) => {
                let remove = StepCommand::Remove(piece.clone(), *step, Deletion::LeaveBroken);
                self.try_ask(&Command::Step(remove));
            }
            Purpose::RenameSize(axis, old) => {
                let new = ask.text(0).to_owned();
                if self.try_ask(&Command::Chart(ChartCommand::RenameSize(*axis, old.clone(), new.clone()))) {
                    self.shown.case = new;
                }
            }
            Purpose::DeleteSize(axis, label) => {
                self.try_ask(&Command::Chart(ChartCommand::DeleteSize(*axis, label.clone())));
            }
            Purpose::Open
            | Purpose::SaveAs
            | Purpose::Compare
            | Purpose::Picture(_)
            | Purpose::TakeBlock
            | Purpose::BlockFile(_)
                if choice == 1 =>
            {
                self.browse(ctx);
            }
            Purpose::TakeBlock => self.take_other_block(&ask),
            Purpose::BlockFile(name) => self.move_block(name, &path_of(ask.text(0))),
            Purpose::Picture(under) => self.lay(under, &path_of(ask.text(0))),
            Purpose::Open => {
                let path = path_of(ask.text(0));
                self.shown.ask = None;
                self.open_file(&path);
            }
            Purpose::Compare => self.compare_with(&path_of(ask.text(0))),
            Purpose::Print => self.print(&path_of(ask.text(0))),
            Purpose::ReadTable => self.read_table(&path_of(ask.text(0))),
            Purpose::WriteTable => self.write_table(&path_of(ask.text(0))),
            Purpose::SaveAs => {
                let path = path_of(ask.text(0));
                if path.as_os_str().is_empty() {
                    return self.problem(&say!("file-needs-name"));
                }
                if path.exists() && self.open.path() != Some(path.as_path()) {
                    let note = say!("over-there", path = path.display().to_string());
                    self.shown.ask = Some(Ask::over(path, note));
                    return;
                }
                self.save(Some(&path), false);
                if self.open.path() == Some(path.as_path()) && !self.open.work().is_unsaved() {
                    self.shown.ask = None;
                }
            }
            Purpose::Over(path) => {
                self.shown.ask = match choice {
                    0 => Some(Ask::file(Purpose::SaveAs, &self.open)),
                    _ => None,
                };
                if choice == 1 {
                    self.save(Some(path), true);
                }
            }
            Purpose::Unsaved(then) => {
                self.shown.ask = None;
                if choice == 0 {
                    self.then = Some(then.clone());
                    self.save(None, false);
                } else {
                    self.go_on(then.clone());
                }
            }
            Purpose::Comments => {
                self.shown.ask = None;
                if choice == 0 {
                    let at = Address::new(Part::Draft, "note");
                    let note = self.open.work().draft().note.clone();
                    let all = self.open.comments().join(" ");
                    let to = if note.is_empty() { all } else { format!("{note} {all}") };
                    self.run(&Command::Text(TextCommand::Set(at, to)));
                }
                self.open.comments_told();
                self.save(None, false);
            }
        }
    }

    pub(super) fn problem(&mut self, words: &str) {
        if let Some(ask) = &mut self.shown.ask {
            words.clone_into(&mut ask.problem);
        }
    }

    /// Makes the change of a dialog; what is refused is told in it.
    pub(super) fn try_ask(&mut self, command: &Command) -> bool {
        match self.open.run(command) {
            Ok(told) => {
                self.shown.ask = None;
                self.shown.message = None;
                if !told.is_empty() {
                    self.tell(told);
                }
                true
            }
            Err(problem) => {
                self.problem(&problem.to_string());
                false
            }
        }
    }

    fn add(&mut self, act: Act, ask: &Ask, choice: usize) {
        let name = ask.text(0).to_owned();
        let text = |i: usize| tidy(ask.text(i));
        let frame = self.shown.frame().unwrap_or_default().to_owned();
        let (command, part) = match act {
            Act::AddSize => {
                let Some(axis) = Axis::of(ask.text(2)) else {
                    return self.problem(&say!("done-no-axis"));
                };
                let labels = self.open.work().draft().chart.labels(axis);
                let after = ask.text(1);
                let next = labels.iter().position(|l| l == after).and_then(|i| labels.get(i + 1));
                if !after.is_empty() && !labels.iter().any(|l| l == after) {
                    return self.problem(&say!("done-no-size-before", size = after));
                }
                let between = next.map(|n| (after.to_owned(), n.clone()));
                let new = NewSize { label: name.clone(), axis, between, cells: Vec::new() };
                (Command::Chart(ChartCommand::AddSize(new)), None)
            }
            Act::AddPerson => (Command::Chart(ChartCommand::AddPerson(name.clone())), Some(Part::Person(name.clone()))),
            Act::AddRow => {
                let kind = if choice == 0 { RowKind::Body } else { RowKind::House };
                (Command::Chart(ChartCommand::AddRow(name.clone(), kind)), Some(Part::Row(name.clone())))
            }
            Act::AddSet => (Command::Chart(ChartCommand::AddSet(name.clone())), Some(Part::SizeSet(name.clone()))),
            Act::AddValue => {
                (Command::Part(PartCommand::AddValue(name.clone(), text(1))), Some(Part::Value(name.clone())))
            }
            Act::AddFound => {
                let add = PartCommand::AddFound(name.clone(), [text(1), text(2), text(3)]);
                (Command::Part(add), Some(Part::Value(name.clone())))
            }
            Act::AddPiece => (Command::Part(PartCommand::AddPiece(name.clone())), Some(Part::Piece(name.clone()))),
            Act::DerivePiece => {
                let derive = StepCommand::Derive(name.clone(), ask.text(1).to_owned());
                (Command::Step(derive), Some(Part::Piece(name.clone())))
            }
            Act::AddPoint => {
                let add = PieceCommand::AddPoint(frame.clone(), name.clone(), text(1));
                (Command::Piece(add), Some(Part::point(&frame, &name)))
            }
            Act::AddEdge => {
                let from = ask.text(1).to_owned();
                let add = PieceCommand::AddEdge { piece: frame.clone(), name: name.clone(), from, to: ask.list(2) };
                (Command::Piece(add), Some(Part::edge(&frame, &name)))
            }
            Act::Close => {
                (Command::Piece(PieceCommand::Close(frame.clone(), name.clone())), Some(Part::edge(&frame, &name)))
            }
            Act::AddSeam => {
                let add = PartCommand::AddSeam(name.clone(), [ask.list(1), ask.list(2)], ask.list(3));
                (Command::Part(add), Some(Part::Seam(name.clone())))
            }
            Act::AddCondition => {
                let add = PartCommand::AddCondition(name.clone(), text(1), ask.list(2));
                (Command::Part(add), Some(Part::Condition(name.clone())))
            }
            Act::AddStrip | Act::AddNotion | Act::AddMaterial | Act::AddStep => {
                let (add, part) = self.added(act, name.clone(), text(1), choice);
                (Command::Publish(add), Some(part))
            }
            Act::AddView => (Command::View(ViewCommand::Add(name.clone())), Some(Part::View(name.clone()))),
            _ => return,
        };
        if !self.try_ask(&command) {
            return;
        }
        match (act, part) {
            (Act::AddSize, _) => self.shown.case = name,
            (Act::AddSet, part) => {
                self.chart_page(Page::Sizes);
                self.shown.part = part;
            }
            (Act::AddRow | Act::AddPerson, part) => {
                self.chart_page(Page::Numbers);
                self.shown.part = part;
                let chart = &self.open.work().draft().chart;
                let row = chart.rows.iter().find(|r| r.name == name).filter(|_| act == Act::AddRow);
                if let Some(first) = row.and_then(|r| chart.keys(&r.by).into_iter().next()) {
                    self.shown.chart.go = Some(Field::Cell(name, first));
                }
            }
            (_, Some(part)) => self.choose(part),
            _ => {}
        }
    }
}

fn is_there(open: &OpenDraft, part: &Part) -> bool {
    let draft = open.work().draft();
    if matches!(part, Part::Strip(_) | Part::Notion(_) | Part::Material(_) | Part::Step(_)) {
        return place_of(draft, part).is_some();
    }
    let called = match part {
        Part::Inner(frame, _, name) => format!("{frame}.{name}"),
        Part::Draft => return true,
        Part::Value(_) | Part::Piece(_) | Part::Drawing(_) => {
            return part_named(draft, part.name()).is_some();
        }
        _ => return true,
    };
    part_named(draft, &called).as_ref() == Some(part)
}

#[allow(clippy::disallowed_methods, reason = "the person's own folder")]
/// A path as it is typed: `~` is the person's own folder.
pub(super) fn path_of(text: &str) -> PathBuf {
    match (text.strip_prefix("~/"), home(&|name| std::env::var_os(name))) {
        (Some(rest), Some(home)) => home.join(rest),
        _ => PathBuf::from(text),
    }
}
