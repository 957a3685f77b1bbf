//! The dialog for a release: edition, date, folder, what blocks it; it is made beside the window, and what is to be known of it is told
//! in the dialog.
#![allow(clippy::disallowed_methods, reason = "today's date, which is offered as that of the edition")]

use std::path::PathBuf;
use std::sync::mpsc::{Receiver, TryRecvError, channel};
use std::thread;
use std::time::{SystemTime, UNIX_EPOCH};

use egui::{Context, Id, Modal, RichText, Role, ScrollArea, Ui, WidgetInfo};

use super::act::path_of;
use super::look::{Look, letters};
use super::publish::{blocking, errors};
use super::scene::Scene;
use super::state::{Shown, Wish};
use super::{Window, field, help, look};
use crate::document::{Address, Draft, Part};
use crate::file;
use crate::session::{
    Command, Last, Manifest, PublishCommand, ReleaseOrder, Released, TextCommand, last_beside, never_sewn, release,
    untold,
};
use crate::texts::{carried, say};

/// Width of the dialog, px.
const WIDTH: f32 = 600.0;
/// Days of four hundred years, after which the calendar repeats itself.
const DAYS_OF_400_YEARS: i64 = 146_097;

/// Where the release before is looked for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Before {
    Beside,
    At,
    None,
}

/// The dialog.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct ReleaseAsk {
    pub edition: String,
    pub date: String,
    pub folder: String,
    /// The release that lies there last: edition and date.
    pub found: Option<String>,
    pub before: Before,
    /// The folder of the release before, where it lies elsewhere.
    pub before_at: String,
    /// Why it was not made.
    pub problem: String,
    /// It is being made.
    pub going: bool,
    /// What is told of it, when it is made: first where it lies.
    pub done: Vec<String>,
    /// What changed since the release before.
    pub changes: String,
}

/// What a person wishes in the dialog.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum ReleaseWish {
    /// It is filled in so.
    Change(Box<ReleaseAsk>),
    Make,
    Close,
}

/// A release that is being made.
pub(super) type Making = Receiver<Result<Box<Released>, String>>;

impl Window {
    /// Opens the dialog.
    pub(super) fn ask_release(&mut self) {
        let draft = self.open.work().draft();
        let folder = self.open.path().and_then(|p| p.parent()).map(|p| p.join("releases"));
        let folder = folder.map_or_else(|| "releases".to_owned(), |p| p.display().to_string());
        let found = found(draft, &folder);
        // A number that was released already is raised.
        let number = |edition: &str| edition.trim().parse::<u64>().ok();
        let raised =
            found.as_ref().and_then(|m| number(&m.edition)).filter(|last| number(&draft.edition) <= Some(*last));
        let is_number = draft.edition.trim().is_empty() || number(&draft.edition).is_some();
        let raised = raised.filter(|_| is_number).and_then(|last| last.checked_add(1));
        let is_first = draft.log.releases.is_empty() && found.is_none();
        self.shown.release = Some(ReleaseAsk {
            edition: raised.map_or_else(|| draft.edition.clone(), |n| n.to_string()),
            date: today(),
            folder,
            found: found.as_ref().map(edition_words),
            before: if is_first { Before::None } else { Before::Beside },
            before_at: String::new(),
            problem: String::new(),
            going: self.making.is_some(),
            done: Vec::new(),
            changes: String::new(),
        });
    }

    /// Does what is wished in the dialog.
    pub(super) fn release_wish(&mut self, ctx: &Context, wish: ReleaseWish) {
        match wish {
            ReleaseWish::Change(mut ask) => {
                if self.shown.release.as_ref().is_some_and(|old| old.folder != ask.folder) {
                    let there = found(self.open.work().draft(), &ask.folder);
                    // What was offered as the first is none where one is found.
                    if ask.found.is_none() && there.is_some() && ask.before == Before::None {
                        ask.before = Before::Beside;
                    }
                    ask.found = there.as_ref().map(edition_words);
                }
                self.shown.release = Some(ReleaseAsk { problem: String::new(), ..*ask });
            }
            ReleaseWish::Close => self.shown.release = None,
            ReleaseWish::Make => {
                let Some(ask) = self.shown.release.clone() else { return };
                let made = self.make_release(ctx, &ask);
                if let Some(ask) = &mut self.shown.release {
                    match made {
                        Ok(()) => ask.going = true,
                        Err(problem) => ask.problem = problem,
                    }
                }
            }
        }
    }

    /// Begins to make the release beside the window. It is made of the file, so the draft is saved first.
    fn make_release(&mut self, ctx: &Context, ask: &ReleaseAsk) -> Result<(), String> {
        if self.making.is_some() {
            return Err(say!("release-going-on"));
        }
        if ask.folder.trim().is_empty() {
            return Err(say!("publish-needs-folder"));
        }
        let Some(path) = self.open.path().map(PathBuf::from) else {
            return Err(say!("release-no-file"));
        };
        if !self.open.comments().is_empty() {
            return Err(say!("release-comments"));
        }
        let at = Address::new(Part::Draft, "edition");
        if self.open.work().draft().edition != ask.edition.trim() {
            let set = Command::Text(TextCommand::Set(at, ask.edition.trim().to_owned()));
            self.open.run(&set).map_err(|e| e.to_string())?;
        }
        if self.open.work().is_unsaved() {
            self.open.save(None, false).map_err(|e| e.to_string())?;
        }
        let opened = file::open(&path).map_err(|e| e.to_string())?;
        let (out, date) = (path_of(ask.folder.trim()), ask.date.trim().to_owned());
        let last = match ask.before {
            Before::Beside => Last::Beside,
            Before::At => Last::At(path_of(ask.before_at.trim())),
            Before::None => Last::None,
        };
        let (sender, making) = channel();
        let ctx = ctx.clone();
        let work = move || {
            let order =
                ReleaseOrder { draft: &opened.draft, text: &opened.text, path: &path, out: &out, date: &date, last };
            let made = release(&order).map(Box::new).map_err(|e| e.to_string());
            // The window may be closed by now.
            let _ = sender.send(made);
            ctx.request_repaint();
        };
        thread::Builder::new().name("release".to_owned()).spawn(carried(work)).map_err(|e| e.to_string())?;
        self.making = Some(making);
        Ok(())
    }

    /// Hears whether the release is made, and notes it in the log of the draft.
    pub(super) fn follow_release(&mut self) {
        let made = match self.making.as_ref().map(Receiver::try_recv) {
            None | Some(Err(TryRecvError::Empty)) => return,
            Some(Err(TryRecvError::Disconnected)) => Err(say!("release-ended")),
            Some(Ok(made)) => made,
        };
        self.making = None;
        let (problem, done, changes) = match made {
            Err(problem) => (problem, Vec::new(), String::new()),
            Ok(released) => {
                let many = released.manifest.files.len() + 1;
                let mut done = vec![say!("job-written", count = many, folder = released.folder.display().to_string())];
                done.extend(released.notes.iter().cloned());
                done.extend(self.log_release(&released));
                (String::new(), done, released.changes.clone())
            }
        };
        match &mut self.shown.release {
            Some(ask) => *ask = ReleaseAsk { going: false, problem, done, changes, ..ask.clone() },
            None if problem.is_empty() => self.tell(done.join("; ")),
            None => self.refuse(problem),
        }
    }

    /// Writes the release into the log of the draft; what went wrong with that.
    fn log_release(&mut self, released: &Released) -> Option<String> {
        let unsaved = self.open.work().is_unsaved();
        let own = released.draft.log.releases.last()?.clone();
        let note = Command::Publish(PublishCommand::Released(own));
        if let Err(problem) = self.open.run(&note) {
            return Some(say!("release-not-logged", problem = problem.to_string()));
        }
        if unsaved {
            return Some(say!("release-log-unsaved"));
        }
        let saved = self.open.save(None, false);
        saved.err().map(|e| say!("release-log-not-saved", problem = e.to_string()))
    }
}

fn edition_words(last: &Manifest) -> String {
    say!("release-found", edition = last.edition, date = last.date)
}

/// The release before that lies in a folder, by the rule of the command line.
fn found(draft: &Draft, folder: &str) -> Option<Manifest> {
    last_beside(&path_of(folder.trim()), draft, &mut Vec::new()).map(|(_, manifest)| manifest)
}

/// Today, as `YYYY-MM-DD` (UTC).
fn today() -> String {
    let seconds = SystemTime::now().duration_since(UNIX_EPOCH).map_or(0, |d| d.as_secs());
    day(i64::try_from(seconds / 86_400).unwrap_or(0))
}

/// The day so many days after 1970-01-01, in the Gregorian calendar.
fn day(since: i64) -> String {
    let leap = |year: i64| year % 4 == 0 && (year % 100 != 0 || year % 400 == 0);
    let mut year = 1970 + since.div_euclid(DAYS_OF_400_YEARS) * 400;
    let mut left = since.rem_euclid(DAYS_OF_400_YEARS);
    while left >= 365 + i64::from(leap(year)) {
        left -= 365 + i64::from(leap(year));
        year += 1;
    }
    let mut month = 1;
    for days in [31, 28 + i64::from(leap(year)), 31, 30, 31, 30, 31, 31, 30, 31, 30] {
        if left < days {
            break;
        }
        left -= days;
        month += 1;
    }
    format!("{year:04}-{month:02}-{:02}", left + 1)
}

/// Paints the dialog, if it is open.
pub(super) fn show(ui: &mut Ui, look: &Look, scene: &Scene, shown: &Shown, wishes: &mut Vec<Wish>) {
    let Some(ask) = &shown.release else { return };
    let mut next = ask.clone();
    let mut wish = None;
    let modal = Modal::new(Id::unique("release")).backdrop_color(look.backdrop()).frame(look.dialog());
    let modal = modal.show(ui.ctx(), |ui| {
        ui.set_width(WIDTH);
        ui.horizontal(|ui| {
            ui.label(RichText::new(say!("release-title")).font(letters(look::LARGE)).color(look.ink));
            help::question(ui, &say!("ask-this-dialog"), "releases", wishes);
        });
        if !ask.done.is_empty() {
            return told(ui, look, ask, &mut wish);
        }
        fields(ui, look, scene, &mut next, wishes);
        field::problem(ui, look, &ask.problem);
        ui.add_space(6.0);
        ui.horizontal(|ui| {
            if ui.add_enabled(!ask.going, egui::Button::new(say!("release-do"))).clicked() {
                wish = Some(ReleaseWish::Make);
            }
            if ui.button(say!("cancel")).clicked() {
                wish = Some(ReleaseWish::Close);
            }
            if ask.going {
                ui.label(RichText::new(say!("release-in-making")).color(look.soft));
            }
        });
    });
    if modal.should_close() {
        wish = Some(ReleaseWish::Close);
    }
    if next != *ask {
        wishes.push(Wish::Edition(ReleaseWish::Change(Box::new(next))));
    }
    wishes.extend(wish.map(Wish::Edition));
}

fn fields(ui: &mut Ui, look: &Look, scene: &Scene, next: &mut ReleaseAsk, wishes: &mut Vec<Wish>) {
    let draft = scene.draft();
    ui.label(RichText::new(say!("release-note")).color(look.soft));
    if let Some(last) = draft.log.releases.last() {
        let words = say!("release-last", edition = last.edition, date = last.date);
        ui.label(RichText::new(words).color(look.ink));
    }
    text(ui, look, &say!("release-edition"), &say!("such-as", example = "1"), &mut next.edition);
    text(ui, look, &say!("release-date"), &say!("release-date-hint"), &mut next.date);
    text(ui, look, &say!("folder-label"), &say!("release-folder-hint"), &mut next.folder);
    field::caption(ui, look, &say!("release-against"));
    ui.horizontal_wrapped(|ui| {
        for (before, word) in [
            (Before::Beside, say!("release-beside")),
            (Before::At, say!("release-elsewhere")),
            (Before::None, say!("release-first")),
        ] {
            let chosen = next.before == before;
            let response = ui.selectable_label(chosen, &word);
            response.widget_info(|| WidgetInfo::selected(Role::RadioButton, true, chosen, &word));
            if response.clicked() {
                next.before = before;
            }
        }
    });
    if let (Before::Beside, Some(found)) = (next.before, &next.found) {
        ui.label(RichText::new(say!("release-that-is", found)).color(look.soft));
    }
    if next.before == Before::At {
        text(ui, look, &say!("release-before-at"), &say!("path-hint"), &mut next.before_at);
    }
    if draft.chart.survey {
        let words = format!("■ {}", say!("release-survey"));
        ui.label(RichText::new(words).color(look.error));
    }
    let unsewn = scene.whole.model.as_ref().map_or_else(Vec::new, |m| never_sewn(draft, m));
    if !unsewn.is_empty() {
        let words = format!("● {}", say!("release-unsewn", what = unsewn.join(", ")));
        ui.label(RichText::new(words).color(look.note));
    }
    for words in untold(draft) {
        ui.label(RichText::new(format!("● {words}.")).color(look.note));
    }
    let wrong = errors(scene);
    if !wrong.is_empty() {
        let words = format!("■ {}", say!("release-errors", count = wrong.len()));
        ui.label(RichText::new(words).color(look.error));
    }
    blocking(ui, look, scene, &wrong, wishes);
}

/// What is told of a release that was made.
fn told(ui: &mut Ui, look: &Look, ask: &ReleaseAsk, wish: &mut Option<ReleaseWish>) {
    let most = ui.ctx().content_rect().height() - 260.0;
    ScrollArea::vertical().max_height(most).min_scrolled_height(most).show(ui, |ui| {
        for (i, words) in ask.done.iter().enumerate() {
            let color = if i == 0 { look.ink } else { look.note };
            ui.label(RichText::new(format!("● {words}")).color(color));
        }
        for line in ask.changes.lines() {
            ui.label(RichText::new(line).color(look.ink));
        }
    });
    ui.add_space(6.0);
    if ui.button(say!("good")).clicked() {
        *wish = Some(ReleaseWish::Close);
    }
}

fn text(ui: &mut Ui, look: &Look, called: &str, hint: &str, text: &mut String) {
    field::caption(ui, look, called);
    field::typed(ui, ("release", called), hint, text, WIDTH - 20.0);
}

#[cfg(test)]
mod tests {
    use super::day;

    #[test]
    fn days_are_those_of_the_calendar() {
        // From memory: the calendar; 2000 was a leap year, 2100 is none.
        for (since, wanted) in [
            (0, "1970-01-01"),
            (58, "1970-02-28"),
            (59, "1970-03-01"),
            (11_016, "2000-02-29"),
            (11_017, "2000-03-01"),
            (19_723, "2024-01-01"),
            (20_088, "2024-12-31"),
            (47_540, "2100-02-28"),
            (47_541, "2100-03-01"),
        ] {
            assert_eq!(day(since), wanted);
        }
    }
}
