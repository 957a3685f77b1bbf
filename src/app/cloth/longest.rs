//! The dialog that asks what is the most that comes out of the cloth at hand: a value is the unknown. It is looked for beside the window.

use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::mpsc::{Receiver, TryRecvError, channel};
use std::thread;

use egui::{Button, Context, Id, Modal, RichText, Role, Ui, WidgetInfo};

use super::table::lies;
use super::work::wake;
use super::{ClothWish, called};
use crate::app::look::{self, Look, letters};
use crate::app::scene::Scene;
use crate::app::state::{Room, Shown, Wish};
use crate::app::{Window, field, help};
use crate::compute::unit_of;
use crate::document::{Address, Part};
use crate::language::{Kind, literal_text};
use crate::session::{Command, LayEffort, LayKey, Longest, LongestStop, TextCommand, length_typed, longest_until};
use crate::texts::{carried, readable, say};

/// Width of the dialog, px.
const WIDTH: f32 = 520.0;
/// Moves of single pieces for each lay that is tried.
const MOVES: u64 = 3_000;
/// So many values are named as a hint.
const MOST_NAMED: usize = 14;

/// The dialog.
#[derive(Clone, Debug, PartialEq)]
pub(in crate::app) struct LongestAsk {
    pub value: String,
    pub have: String,
    /// Of which cloth and sizes.
    pub key: Option<LayKey>,
    pub problem: String,
    /// What came of it, in words, and the value that was found.
    pub answer: Option<(String, Option<String>)>,
}

/// What a person wishes in the dialog.
#[derive(Clone, Debug, PartialEq)]
pub(in crate::app) enum LongestWish {
    /// It is filled in so.
    Change(Box<LongestAsk>),
    Look,
    Stop,
    /// The value that was found goes into the draft.
    Set,
    Close,
}

/// It is being looked for.
pub(in crate::app) struct Seeking {
    stop: Arc<AtomicBool>,
    news: Receiver<Result<Longest, LongestStop>>,
}

impl Drop for Seeking {
    fn drop(&mut self) {
        self.stop.store(true, Ordering::Relaxed);
    }
}

impl Window {
    /// Opens the dialog.
    pub(super) fn ask_longest(&mut self) {
        self.shown.room = Room::Cloth;
        let lengths = lengths(&self.scene);
        let likely = lengths.iter().find(|n| n.contains("length")).or(lengths.first());
        self.shown.cloth.longest = Some(LongestAsk {
            value: likely.cloned().unwrap_or_default(),
            have: String::new(),
            key: self.shown.cloth.at.clone(),
            problem: String::new(),
            answer: None,
        });
    }

    /// Does what is wished in the dialog.
    pub(super) fn longest_wish(&mut self, ctx: &Context, wish: LongestWish) {
        match wish {
            LongestWish::Change(ask) => {
                self.shown.cloth.longest = Some(LongestAsk { problem: String::new(), answer: None, ..*ask });
            }
            LongestWish::Close => {
                self.shown.cloth.longest = None;
                self.shown.cloth.seeking = None;
            }
            LongestWish::Stop => self.stop_longest(),
            LongestWish::Set => self.set_longest(),
            LongestWish::Look => {
                let begun = self.seek_longest(ctx);
                if let Some(ask) = &mut self.shown.cloth.longest {
                    (ask.problem, ask.answer) = (begun.err().unwrap_or_default(), None);
                }
            }
        }
    }

    /// Ends the search; the best so far is the answer.
    pub(super) fn stop_longest(&self) {
        if let Some(seeking) = &self.shown.cloth.seeking {
            seeking.stop.store(true, Ordering::Relaxed);
        }
    }

    fn seek_longest(&mut self, ctx: &Context) -> Result<(), String> {
        let Some(ask) = self.shown.cloth.longest.clone() else { return Ok(()) };
        if self.shown.cloth.seeking.is_some() {
            return Err(say!("cloth-longest-already"));
        }
        let unit = unit_of(self.scene.draft());
        let have = yards_typed(&ask.have).or_else(|| length_typed(&ask.have, unit));
        let have = have.ok_or_else(|| say!("cloth-longest-have", text = ask.have.trim()))?;
        let table = self.shown.cloth.table.as_ref();
        let cell = ask.key.as_ref().and_then(|k| table?.cell(k)).ok_or_else(|| say!("cloth-longest-choose"))?;
        let (wish, name) = (cell.wish.clone(), ask.value.trim().to_owned());
        let draft = Arc::clone(&self.scene.whole.draft);
        let stop = Arc::new(AtomicBool::new(false));
        let (sender, news) = channel();
        let (halt, wake) = (Arc::clone(&stop), wake(ctx));
        let work = move || {
            let effort = LayEffort { moves: MOVES, ..LayEffort::default() };
            let found = longest_until(&draft, (&name, &wish, have), &effort, &|| halt.load(Ordering::Relaxed));
            // The window may be closed by now.
            let _ = sender.send(found);
            wake();
        };
        thread::Builder::new().name("longest".to_owned()).spawn(carried(work)).map_err(|e| e.to_string())?;
        self.shown.cloth.seeking = Some(Seeking { stop, news });
        Ok(())
    }

    /// Hears what came of it.
    pub(super) fn follow_longest(&mut self) {
        let Some(seeking) = &self.shown.cloth.seeking else { return };
        let found = match seeking.news.try_recv() {
            Err(TryRecvError::Empty) => return,
            Err(TryRecvError::Disconnected) => Err(say!("cloth-longest-lost")),
            Ok(found) => found.map_err(|e| e.to_string()),
        };
        let unit = self.scene.draft().display;
        self.shown.cloth.seeking = None;
        let Some(ask) = &mut self.shown.cloth.longest else { return };
        match found {
            Err(problem) => ask.problem = problem,
            Ok(found) => {
                let value = literal_text(found.value, Some(crate::base::Unit::Millimetre));
                let words = found.words(ask.value.trim(), unit);
                let tries = say!("cloth-longest-tries", count = found.tries);
                ask.answer = Some((format!("{words} {tries}"), Some(value)));
            }
        }
    }

    fn set_longest(&mut self) {
        let Some(ask) = self.shown.cloth.longest.clone() else { return };
        let Some((_, Some(value))) = ask.answer else { return };
        let at = Address::new(Part::Value(ask.value.trim().to_owned()), "is");
        self.run(&Command::Text(TextCommand::Set(at, value)));
        self.shown.cloth.longest = None;
    }
}

/// A length in yards, which formulas do not know: `4 yd`, `1.5 yd`.
fn yards_typed(text: &str) -> Option<f64> {
    let number = text.trim().strip_suffix("yd")?.trim().replace(',', ".");
    number.parse::<f64>().ok().filter(|n| n.is_finite() && *n > 0.0).map(|n| n * 914.4)
}

/// The values of the draft that are lengths and typed, in its order.
fn lengths(scene: &Scene) -> Vec<String> {
    let Some(model) = scene.model() else { return Vec::new() };
    let is_length = |name: &str| {
        let node = model.plan.node_named(name).or_else(|| model.plan.node_named(&format!("value.{name}")));
        node.is_some_and(|n| model.plan.nodes[n as usize].kind == Some(Kind::LENGTH))
    };
    scene.draft().values.iter().map(|v| v.name.clone()).filter(|n| is_length(n)).collect()
}

/// Paints the dialog, if it is open.
pub(in crate::app) fn show(ui: &mut Ui, look: &Look, scene: &Scene, shown: &Shown, wishes: &mut Vec<Wish>) {
    let Some(ask) = &shown.cloth.longest else { return };
    let mut next = ask.clone();
    let mut wish = None;
    let going = shown.cloth.seeking.is_some();
    let modal = Modal::new(Id::unique("longest")).backdrop_color(look.backdrop()).frame(look.dialog());
    let modal = modal.show(ui.ctx(), |ui| {
        ui.set_width(WIDTH);
        ui.horizontal(|ui| {
            ui.label(RichText::new(say!("cloth-longest-title")).font(letters(look::LARGE)).color(look.ink));
            help::question(ui, &say!("cloth-longest-help-of"), "lays", wishes);
        });
        ui.label(RichText::new(say!("cloth-longest-about")).color(look.soft));
        text(ui, look, &say!("cloth-longest-value"), &say!("cloth-its-name"), &mut next.value);
        let known = lengths(scene);
        let more = if known.len() > MOST_NAMED { " …" } else { "" };
        let named = known.iter().take(MOST_NAMED).cloned().collect::<Vec<_>>().join(", ");
        let named = say!("cloth-longest-lengths", names = format!("{named}{more}"));
        ui.label(RichText::new(named).font(letters(look::SMALL)).color(look.soft));
        text(ui, look, &say!("cloth-longest-at-hand"), &say!("cloth-longest-as"), &mut next.have);
        field::caption(ui, look, &say!("cloth-longest-which"));
        let table = shown.cloth.table.as_ref();
        let columns = table.iter().flat_map(|t| &t.columns).filter(|c| c.view == scene.view());
        ui.horizontal_wrapped(|ui| {
            for column in columns {
                let chosen = next.key.as_ref().is_some_and(|k| k.same_cloth(column));
                let word = format!("{} {}, {}", readable(&column.material), column.width, lies(column));
                let response = ui.selectable_label(chosen, &word);
                let name = say!("cloth-longest-of", cloth = word);
                response.widget_info(|| WidgetInfo::selected(Role::RadioButton, true, chosen, &name));
                if response.clicked() {
                    let sizes = next.key.take().map_or_else(Vec::new, |k| k.sizes);
                    next.key = Some(LayKey { sizes, ..column.clone() });
                }
            }
        });
        field::caption(ui, look, &say!("cloth-longest-size"));
        ui.horizontal_wrapped(|ui| {
            for row in table.iter().flat_map(|t| &t.rows) {
                let Some(key) = &mut next.key else { break };
                let chosen = key.sizes == *row;
                let own = LayKey { sizes: row.clone(), ..key.clone() };
                let response = ui.selectable_label(chosen, own.sizes_called());
                let name = say!("cloth-longest-in-size", sizes = own.sizes_called());
                response.widget_info(|| WidgetInfo::selected(Role::RadioButton, true, chosen, &name));
                if response.clicked() {
                    *key = own;
                }
            }
        });
        match &ask.answer {
            Some((words, _)) => drop(ui.label(RichText::new(format!("● {words}")).color(look.ink))),
            None if going => {
                let what = ask.key.as_ref().map_or_else(String::new, |key| called(&shown.cloth, key));
                ui.label(RichText::new(format!("… {}", say!("cloth-longest-looking", cloth = what))).color(look.soft));
            }
            None => field::problem(ui, look, &ask.problem),
        }
        ui.add_space(6.0);
        ui.horizontal(|ui| {
            if ui.add_enabled(!going, Button::new(say!("cloth-longest-look"))).clicked() {
                wish = Some(LongestWish::Look);
            }
            if going && ui.button(say!("cloth-stop")).clicked() {
                wish = Some(LongestWish::Stop);
            }
            let own = scene.draft().values.iter().find(|v| v.name == ask.value.trim());
            let can_set = own.is_some_and(|v| !v.is_found());
            if let (Some((_, Some(_))), true) = (&ask.answer, can_set) {
                let hint = say!("cloth-longest-put-hint");
                if ui.button(say!("cloth-longest-put")).on_hover_text(hint).clicked() {
                    wish = Some(LongestWish::Set);
                }
            }
            let word = if ask.answer.is_some() { say!("cloth-good") } else { say!("cloth-cancel") };
            if ui.button(word).clicked() {
                wish = Some(LongestWish::Close);
            }
        });
    });
    if modal.should_close() {
        wish = Some(LongestWish::Close);
    }
    if next != *ask {
        wishes.push(Wish::Cloth(ClothWish::Longest(LongestWish::Change(Box::new(next)))));
    }
    wishes.extend(wish.map(|w| Wish::Cloth(ClothWish::Longest(w))));
}

fn text(ui: &mut Ui, look: &Look, label: &str, hint: &str, text: &mut String) {
    field::caption(ui, look, label);
    field::typed(ui, ("longest", label), hint, text, WIDTH - 40.0);
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn yards_are_read() {
        assert_eq!(yards_typed("4 yd"), Some(4.0 * 914.4));
        assert_eq!(yards_typed("1,5yd"), Some(1.5 * 914.4));
        for wrong in ["4", "4 m", "-1 yd", "yd", "nan yd"] {
            assert_eq!(yards_typed(wrong), None, "{wrong}");
        }
    }
}
