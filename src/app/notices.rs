//! Lines above the sheet that want an answer: work that was left behind, a file that changed outside, trouble.
#![allow(clippy::disallowed_methods, reason = "how long ago work was left behind")]

use std::time::SystemTime;

use egui::{Align, Frame, Layout, Margin, Panel, RichText, Ui};

use super::blocks::BlockWish;
use super::job::PrintJob;
use super::look::Look;
use super::state::{Room, Shown, Tone, Wish};
use crate::session::{Act, Keep, LeftBehind, OpenDraft};

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
                if ui.button("Throw it away").clicked() {
                    wishes.push(Wish::Recover(i, false));
                }
                if work.title.is_ok() && ui.button("Take it up").clicked() {
                    wishes.push(Wish::Recover(i, true));
                }
            });
        }
        if let Some(job) = job {
            let words = format!("Being published: {} of {} files are made.", job.done, job.all);
            line(ui, look, Tone::Told, &words, |ui| {
                if ui.button("Stop").clicked() {
                    wishes.push(Wish::StopPrinting);
                }
            });
        }
        if laying {
            line(ui, look, Tone::Told, "Lay plans are being looked for.", |ui| {
                for (act, word) in [(Act::StopPlanning, "Stop the search"), (Act::Cloth, "See the cloth")] {
                    if ui.button(word).clicked() {
                        wishes.push(Wish::Act(act));
                    }
                }
            });
        }
        if let Some(words) = outside {
            line(ui, look, Tone::Refused, &format!("{words} since it was opened."), |ui| {
                if ui.button("Keep what is here").clicked() {
                    wishes.push(Wish::Outside(false));
                }
                if ui.button("Load it again").clicked() {
                    wishes.push(Wish::Outside(true));
                }
            });
        }
        for (name, words, clash) in changed {
            line(ui, look, Tone::Told, &words, |ui| {
                let mut button = |ui: &mut Ui, word: &str, wish: fn(String) -> BlockWish| {
                    if ui.button(word).clicked() {
                        wishes.push(Wish::Block(wish(name.to_owned())));
                    }
                };
                button(ui, "Not now", BlockWish::Later);
                match clash {
                    None => button(ui, "Say where it is …", BlockWish::Where),
                    Some(false) => button(ui, "Take it over", |name| BlockWish::Accept(name, None)),
                    Some(true) => {
                        button(ui, "Take all over", |name| BlockWish::Accept(name, Some(Keep::There)));
                        button(ui, "Keep what was changed here", |name| BlockWish::Accept(name, Some(Keep::Here)));
                    }
                }
                if clash.is_some() {
                    button(ui, "Show what would change", BlockWish::Show);
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
    ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
        buttons(ui);
        ui.with_layout(Layout::left_to_right(Align::Center).with_main_wrap(true), |ui| {
            ui.label(RichText::new(format!("{sign} {words}")).color(color));
        });
    });
}

fn left_words(work: &LeftBehind) -> String {
    let ago = work.written.and_then(|t| SystemTime::now().duration_since(t).ok()).map(|d| match d.as_secs() / 60 {
        0 => "just now".to_owned(),
        m if m < 120 => format!("{m} minutes ago"),
        m if m < 60 * 48 => format!("{} hours ago", m / 60),
        m => format!("{} days ago", m / 60 / 24),
    });
    let ago = ago.unwrap_or_else(|| "some time ago".to_owned());
    match &work.title {
        Ok(title) => {
            let from = work.about.origin.as_ref().and_then(|p| p.file_name());
            let from = from.map_or_else(|| "never saved".to_owned(), |n| n.to_string_lossy().into_owned());
            format!("Unsaved work was left behind {ago}: {title} ({from}).")
        }
        Err(problem) => format!(
            "Unsaved work was left behind {ago} that cannot be read ({problem}); it lies in {}.",
            work.path.display()
        ),
    }
}
