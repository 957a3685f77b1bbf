//! Lines above the sheet that want an answer: work that was left behind, a file that changed outside, trouble.
#![allow(clippy::disallowed_methods, reason = "how long ago work was left behind")]

use std::time::SystemTime;

use egui::{Align, Frame, Layout, Margin, Panel, RichText, Ui, vec2};

use super::blocks::BlockWish;
use super::job::PrintJob;
use super::look::{self, Look};
use super::state::{Room, Shown, Tone, Wish};
use crate::session::{Act, Keep, LeftBehind, OpenDraft};
use crate::texts::say;

/// Paints the lines, if there is anything to say.
pub(super) fn show(
    ui: &mut Ui,
    look: &Look,
    open: &OpenDraft,
    (left, job): (&[LeftBehind], Option<&PrintJob>),
    shown: &Shown,
    wishes: &mut Vec<Wish>,
) {
    let outside = open.changed_outside();
    let trouble = open.keeper().and_then(|k| k.trouble());
    let failure = open.work().computed().failure();
    let changed = shown.blocks.notices();
    // In its own room the search tells more of itself.
    let laying = shown.cloth.is_searching() && shown.room != Room::Cloth;
    let any =
        laying || !changed.is_empty() || job.is_some() || outside.is_some() || trouble.is_some() || failure.is_some();
    if left.is_empty() && !any {
        return;
    }
    let ground = Frame::new().fill(look.touched).inner_margin(Margin::symmetric(18, 6));
    Panel::top("notices").frame(ground).show_separator_line(false).show(ui, |ui| {
        for (i, work) in left.iter().enumerate() {
            let words = left_words(work);
            line(ui, look, Tone::Told, &words, |ui| {
                if ui.button(say!("notice-throw-away")).clicked() {
                    wishes.push(Wish::Recover(i, false));
                }
                if work.title.is_ok() && ui.button(say!("notice-take-up")).clicked() {
                    wishes.push(Wish::Recover(i, true));
                }
            });
        }
        if let Some(job) = job {
            let words = say!("notice-published", done = job.done, all = job.all);
            line(ui, look, Tone::Told, &words, |ui| {
                if ui.button(say!("notice-stop")).clicked() {
                    wishes.push(Wish::StopPrinting);
                }
            });
        }
        if laying {
            line(ui, look, Tone::Told, &say!("notice-laying"), |ui| {
                let all = [(Act::StopPlanning, say!("notice-stop-search")), (Act::Cloth, say!("notice-see-cloth"))];
                for (act, word) in all {
                    if ui.button(word).clicked() {
                        wishes.push(Wish::Act(act));
                    }
                }
            });
        }
        if let Some(words) = outside {
            line(ui, look, Tone::Refused, &say!("notice-outside", what = words), |ui| {
                if ui.button(say!("notice-keep-here")).clicked() {
                    wishes.push(Wish::Outside(false));
                }
                if ui.button(say!("notice-load-again")).clicked() {
                    wishes.push(Wish::Outside(true));
                }
            });
        }
        for (name, words, clash) in changed {
            line(ui, look, Tone::Told, &words, |ui| {
                let mut button = |ui: &mut Ui, word: String, wish: fn(String) -> BlockWish| {
                    if ui.button(word).clicked() {
                        wishes.push(Wish::Block(wish(name.to_owned())));
                    }
                };
                button(ui, say!("notice-not-now"), BlockWish::Later);
                match clash {
                    None => button(ui, say!("notice-where"), BlockWish::Where),
                    Some(false) => button(ui, say!("notice-take-over"), |name| BlockWish::Accept(name, None)),
                    Some(true) => {
                        button(ui, say!("notice-take-all"), |name| BlockWish::Accept(name, Some(Keep::There)));
                        button(ui, say!("notice-keep-changes"), |name| BlockWish::Accept(name, Some(Keep::Here)));
                    }
                }
                if clash.is_some() {
                    button(ui, say!("notice-show-change"), BlockWish::Show);
                }
            });
        }
        for words in trouble.into_iter().chain(failure) {
            line(ui, look, Tone::Refused, &words, |_| {});
        }
    });
}

fn line(ui: &mut Ui, look: &Look, tone: Tone, words: &str, buttons: impl FnOnce(&mut Ui)) {
    let (sign, color) = match tone {
        Tone::Told => ("●", look.ink),
        Tone::Refused => ("■", look.error),
    };
    // As high as it must be: a layout alone would take all the height that there is.
    let row = vec2(ui.available_width(), look::BUTTON);
    ui.allocate_ui_with_layout(row, Layout::right_to_left(Align::Center), |ui| {
        buttons(ui);
        ui.with_layout(Layout::left_to_right(Align::Center).with_main_wrap(true), |ui| {
            ui.label(RichText::new(format!("{sign} {words}")).color(color));
        });
    });
}

fn left_words(work: &LeftBehind) -> String {
    let ago = work.written.and_then(|t| SystemTime::now().duration_since(t).ok()).map(|d| match d.as_secs() / 60 {
        0 => say!("ago-now"),
        m if m < 120 => say!("ago-minutes", count = m),
        m if m < 60 * 48 => say!("ago-hours", count = m / 60),
        m => say!("ago-days", count = m / 60 / 24),
    });
    let ago = ago.unwrap_or_else(|| say!("ago-some-time"));
    match &work.title {
        Ok(title) => {
            let from = work.about.origin.as_ref().and_then(|p| p.file_name());
            let from = from.map_or_else(|| say!("left-never-saved"), |n| n.to_string_lossy().into_owned());
            say!("left-behind", ago, title, from)
        }
        Err(problem) => {
            let (problem, path) = (problem.to_string(), work.path.display().to_string());
            say!("left-unreadable", ago, problem, path)
        }
    }
}
