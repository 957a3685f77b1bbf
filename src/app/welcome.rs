//! Where to begin: the guided draft, an example, a file, an empty draft, or one of the drafts that were open last.

use egui::{Button, Frame, Label, Margin, RichText, Role, ScrollArea, Ui, WidgetInfo, vec2};

use super::guide::GuideWish;
use super::look::{self, Look, letters};
use super::own::OwnWish;
use super::state::{Room, Shown, Wish};
use super::{Window, help};
use crate::session::{Act, EXAMPLES};
use crate::texts::say;

/// Width of the buttons, px.
const WIDE: f32 = 190.0;

/// Paints the room.
pub(super) fn show(ui: &mut Ui, look: &Look, shown: &Shown, wishes: &mut Vec<Wish>) {
    Frame::new().fill(look.sheet).inner_margin(Margin::same(26)).corner_radius(6).show(ui, |ui| {
        ui.set_min_size(ui.available_size());
        ScrollArea::vertical().auto_shrink([false, false]).show(ui, |ui| {
            ui.horizontal(|ui| {
                ui.label(RichText::new(say!("welcome-title")).font(letters(look::LARGE)).color(look.ink));
                help::question(ui, &say!("welcome-about"), "start", wishes);
                if ui.button(say!("show-the-pieces")).clicked() {
                    wishes.push(Wish::Room(Room::Table));
                }
            });
            ui.label(RichText::new(say!("welcome-note")).color(look.soft));
            ui.add_space(12.0);
            begin(ui, look, wishes);
            if !shown.own.recent.is_empty() {
                heading(ui, look, say!("welcome-again"));
                recents(ui, look, shown, wishes);
            }
            heading(ui, look, say!("welcome-example"));
            ui.label(RichText::new(say!("welcome-example-note")).color(look.soft));
            for (i, example) in EXAMPLES.iter().enumerate() {
                let called = say!("welcome-open-example", example = example.name);
                if line(ui, look, example.name, &called, &example.what()) {
                    wishes.push(Wish::Own(OwnWish::Example(i)));
                }
            }
        });
    });
}

fn heading(ui: &mut Ui, look: &Look, words: String) {
    ui.add_space(16.0);
    ui.label(RichText::new(words).color(look.ink).strong());
}

fn begin(ui: &mut Ui, look: &Look, wishes: &mut Vec<Wish>) {
    let all = [
        (say!("welcome-guide"), say!("welcome-guide-about"), Wish::Guide(GuideWish::Begin)),
        (say!("welcome-file"), say!("welcome-file-about"), Wish::Act(Act::Open)),
        (say!("welcome-empty"), say!("welcome-empty-about"), Wish::Room(Room::Table)),
    ];
    for (word, about, wish) in all {
        if line(ui, look, &word, &word, &about) {
            wishes.push(wish);
        }
    }
}

/// A button with a few words beside it.
fn line(ui: &mut Ui, look: &Look, word: &str, called: &str, about: &str) -> bool {
    let mut clicked = false;
    ui.horizontal(|ui| {
        let button = Button::new(word).truncate().corner_radius(look::ROUND);
        let response = ui.add_sized(vec2(WIDE, look::BUTTON), button);
        response.widget_info(|| WidgetInfo::labeled(Role::Button, true, called));
        clicked = response.clicked();
        ui.add(Label::new(RichText::new(about).color(look.soft)).truncate());
    });
    clicked
}

fn recents(ui: &mut Ui, look: &Look, shown: &Shown, wishes: &mut Vec<Wish>) {
    for recent in &shown.own.recent {
        let (name, folder) = recent.words();
        let path = recent.path.display().to_string();
        ui.horizontal(|ui| {
            let button = Button::new(&name).truncate().corner_radius(look::ROUND);
            let response = ui.add_sized(vec2(WIDE, look::BUTTON), button);
            response.widget_info(|| WidgetInfo::labeled(Role::Button, true, say!("open-again", path)));
            if response.clicked() {
                wishes.push(Wish::Own(OwnWish::Open(recent.path.clone())));
            }
            let response = ui.small_button(say!("welcome-forget"));
            response.widget_info(|| WidgetInfo::labeled(Role::Button, true, say!("welcome-forget-called", path)));
            if response.clicked() {
                wishes.push(Wish::Own(OwnWish::Forget(recent.path.clone())));
            }
            let about = say!("welcome-recent", ago = recent.ago(), folder);
            ui.add(Label::new(RichText::new(about).color(look.soft)).truncate());
        });
    }
}

impl Window {
    /// What was put aside comes back once nothing is in its way: the dialog that was open before help, and the table once
    /// something was done on the first page.
    pub(super) fn put_back(&mut self) {
        if self.shown.room == Room::Welcome && self.shown.welcomed != self.open.work().revision() {
            self.shown.room = Room::Table;
        }
        let shown = &mut self.shown;
        if !matches!(shown.room, Room::Help(_)) && shown.ask.is_none() {
            let (ask, publish, release) = std::mem::take(&mut shown.help.aside);
            shown.ask = ask;
            shown.publish = publish.or(shown.publish.take());
            shown.release = release.or(shown.release.take());
            shown.cloth.longest = shown.help.longest.take().or(shown.cloth.longest.take());
        }
    }
}
