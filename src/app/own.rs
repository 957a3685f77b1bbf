//! What is the person's own, in the window: preferences that are worn, drafts that were open and where they were left, examples.

use std::path::PathBuf;

use egui::{Button, Context, Role, Ui, WidgetInfo};
use kurbo::Point;

use super::Window;
use super::ask::Then;
use super::look;
use super::roll::Rolling;
use super::state::{Room, Shown, Wish};
use super::view::View;
use crate::document::{Draft, Part};
use crate::session::{EXAMPLES, Left, LightWish, OpenDraft, Preferences, part_named};
use crate::texts::{say, set_own};

/// The most drafts in the menu.
const MOST: usize = 8;
/// What is written in whole numbers is so many times as large.
const THOUSAND: f64 = 1_000.0;

/// What a person asks for of their own.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum OwnWish {
    /// The window is to look like this.
    Prefer(Preferences),
    /// Light, or dark.
    Light(bool),
    /// Open a draft that was open before.
    Open(PathBuf),
    /// Forget it.
    Forget(PathBuf),
    /// Open a copy of an example, by its place in the list.
    Example(usize),
}

impl Window {
    /// Does what was asked for.
    pub(super) fn own(&mut self, wish: OwnWish) {
        let own = &mut self.shown.own;
        let done = match wish {
            OwnWish::Prefer(wanted) => own.prefer(wanted),
            OwnWish::Light(light) => {
                let light = if light { LightWish::Light } else { LightWish::Dark };
                own.prefer(Preferences { light, ..own.preferences.clone() })
            }
            OwnWish::Forget(path) => own.forget(&path),
            OwnWish::Open(path) => return self.leave_for(Then::File(path)),
            OwnWish::Example(i) => return self.leave_for(Then::Example(i)),
        };
        if let Err(problem) = done {
            self.refuse(problem);
        }
    }

    /// Gives the window the look that is preferred, if it has another one.
    pub(super) fn wear(&mut self, ctx: &Context) {
        let wanted = &self.shown.own.preferences;
        if self.worn.as_ref() != Some(wanted) {
            look::wear(ctx, wanted);
            self.worn = Some(wanted.clone());
            ctx.request_repaint();
        }
    }

    /// Speaks the language that is preferred, else the system's. After a change what was worded in the other one is worded anew or goes;
    /// only the names of steps that can be undone stay as they were.
    pub(super) fn speak(&mut self) {
        let wanted = self.shown.own.preferences.language.unwrap_or(self.system);
        set_own(wanted);
        if std::mem::replace(&mut self.spoken, wanted) == wanted {
            return;
        }
        let is_untouched = self.shown.welcomed == self.open.work().revision();
        self.open.reword();
        if is_untouched {
            self.shown.welcomed = self.open.work().revision();
        }
        self.shown.message = None;
        self.shown.blocks.tell_again();
        self.shown.under.pictures.tell_again();
        self.shown.under.told.clear();
    }

    /// Opens a copy of an example.
    pub(super) fn open_example(&mut self, i: usize) {
        let Some(example) = EXAMPLES.get(i) else { return };
        match example.draft() {
            Ok(draft) => {
                self.put(OpenDraft::copy(draft, self.wake.clone()));
                self.tell(say!("done-copy-open", example = example.name));
            }
            Err(problem) => self.refuse(problem.to_string()),
        }
    }

    /// Remembers where the draft is left now.
    pub(super) fn note_left(&mut self) {
        let Some(path) = self.open.path().map(PathBuf::from) else { return };
        let left = left(&self.shown);
        if let Err(problem) = self.shown.own.note(&path, Some(left)) {
            self.refuse(problem);
        }
    }

    /// Goes to where the draft was left, if it was open before; from now on it is one of those that were.
    pub(super) fn back_to_where_it_was_left(&mut self) {
        let Some(path) = self.open.path().map(PathBuf::from) else { return };
        if let Some(left) = self.shown.own.left(&path).cloned() {
            restore(&mut self.shown, self.open.work().draft(), &left);
        }
        if let Err(problem) = self.shown.own.note(&path, None) {
            self.refuse(problem);
        }
    }
}

/// Where a draft is left.
fn left(shown: &Shown) -> Left {
    let room = match &shown.room {
        Room::Chart => "chart",
        Room::Sheets => "sheets",
        Room::Cloth => "cloth",
        Room::Booklet => "booklet",
        Room::Roll(_) => "roll",
        Room::Table | Room::Differences | Room::Help(_) | Room::Preferences | Room::Welcome => "table",
    };
    let part = match &shown.part {
        None | Some(Part::Draft) => String::new(),
        Some(Part::Condition(name)) => format!("condition.{name}"),
        Some(part) => part.to_string(),
    };
    let whole = |number: f64| (number * THOUSAND).round() as i64;
    let view = shown.view.map(|v| (whole(v.scale), whole(v.middle.x), whole(v.middle.y)));
    Left { case: shown.case.clone(), room: room.to_owned(), part, view }
}

/// Shows what was left, as far as it is still there.
fn restore(shown: &mut Shown, draft: &Draft, left: &Left) {
    let chart = &draft.chart;
    let known = |case: &str| {
        case.contains('/') || chart.girth.iter().any(|l| l == case) || chart.persons.iter().any(|p| p.name == case)
    };
    if known(&left.case) {
        shown.case.clone_from(&left.case);
    }
    shown.part = part_named(draft, &left.part).filter(|part| is_there(draft, part));
    shown.room = match (left.room.as_str(), &shown.part) {
        ("chart", _) => Room::Chart,
        ("sheets", _) if !chart.girth.is_empty() => Room::Sheets,
        ("cloth", _) if !chart.girth.is_empty() => Room::Cloth,
        ("booklet", _) if !chart.girth.is_empty() => Room::Booklet,
        ("roll", Some(Part::Seam(seam))) => Room::Roll(Rolling { seam: seam.clone(), share: 0.0 }),
        _ => Room::Table,
    };
    let part = |whole: i64| whole as f64 / THOUSAND;
    shown.view = left
        .view
        .filter(|v| v.0 > 0)
        .map(|(scale, x, y)| View { scale: part(scale), middle: Point::new(part(x), part(y)) }.within_limits());
}

fn is_there(draft: &Draft, part: &Part) -> bool {
    match part {
        Part::Seam(name) => draft.seams.iter().any(|s| s.name == *name),
        Part::Condition(name) => draft.conditions.iter().any(|c| c.name == *name),
        Part::Row(name) => draft.chart.rows.iter().any(|r| r.name == *name),
        Part::Person(name) => draft.chart.persons.iter().any(|p| p.name == *name),
        Part::Placement(name) => draft.placements.iter().any(|p| p.name == *name),
        Part::Inner(frame, _, name) => part_named(draft, &format!("{frame}.{name}")).as_ref() == Some(part),
        other => part_named(draft, other.name()).as_ref() == Some(part),
    }
}

/// The drafts that were open, at the end of a menu.
pub(super) fn recents(ui: &mut Ui, open: &OpenDraft, shown: &Shown, wishes: &mut Vec<Wish>) {
    let others: Vec<_> = shown.own.recent.iter().filter(|r| open.path() != Some(r.path.as_path())).take(MOST).collect();
    if others.is_empty() {
        return;
    }
    ui.separator();
    for recent in others {
        let (name, folder) = recent.words();
        let response = ui.add(Button::new(name).corner_radius(6).truncate());
        let called = say!("open-again", path = recent.path.display().to_string());
        response.widget_info(|| WidgetInfo::labeled(Role::MenuItem, true, &called));
        if response.on_hover_text(say!("welcome-recent-menu", folder, ago = recent.ago())).clicked() {
            wishes.push(Wish::Own(OwnWish::Open(recent.path.clone())));
            ui.close();
        }
    }
}
