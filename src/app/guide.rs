//! The guided first draft: a strip that tells what to do next, and sees in the draft itself whether it was done.
//!
//! It changes nothing and blocks nothing. A step is a line of `STEPS`: its words, how it is seen in the draft, which control
//! it needs. Steps may be done in any order and by any way that leads there.

use egui::{
    Align, Button, Context, Frame, Label, Layout, Margin, Panel, Response, RichText, Role, Stroke, StrokeKind, Ui,
    WidgetInfo, vec2,
};

use super::card::outline_is_open;
use super::look::{self, Look};
use super::scene::Scene;
use super::state::{Field, Room, Shown, Wish};
use super::{Window, field, help};
use crate::document::{Address, Draft, Part, Piece, Row};
use crate::language::parse;
use crate::session::{Act, OpenDraft, Preferences, unit_missing};
use crate::texts::{id, own, said, say};

/// Height of the strip, px.
const HEIGHT: f32 = 68.0;

/// What a person asks of the guide.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum GuideWish {
    /// Begin, or go on.
    Begin,
    /// Take the strip away.
    Leave,
    /// One or the other.
    Toggle,
    /// Show this step.
    Step(usize),
    /// Show where this step is done.
    Where(usize),
}

/// What a step looks at.
struct Seen<'a> {
    draft: &'a Draft,
    errors: usize,
    is_saved: bool,
}

impl Seen<'_> {
    fn closed(&self) -> usize {
        self.draft.pieces.iter().filter(|p| p.edges.len() > 2 && !outline_is_open(self.draft, &p.name)).count()
    }
}

/// Where a step is shown.
#[derive(Clone, Copy)]
enum Place {
    /// At its control alone.
    Control,
    /// In the first empty cell of a body row, if there is one.
    Cell,
    /// At its control, with the card of the piece that is worked on.
    Piece,
    /// In the field of a second point, if there is one.
    Point,
    /// At its control, with the first finding.
    Finding,
}

/// A step; of its texts the ids.
struct Step {
    title: &'static str,
    words: &'static str,
    control: Act,
    place: Place,
    done: fn(&Seen<'_>) -> bool,
}

impl Step {
    fn title(&self) -> String {
        said(own(), self.title, &[])
    }

    fn words(&self) -> String {
        said(own(), self.words, &[])
    }
}

const STEPS: &[Step] = &[
    Step {
        title: id!("guide-sizes"),
        words: id!("guide-sizes-words"),
        control: Act::AddSize,
        place: Place::Control,
        done: |s| s.draft.chart.girth.len() >= 2,
    },
    Step {
        title: id!("guide-row"),
        words: id!("guide-row-words"),
        control: Act::AddRow,
        place: Place::Cell,
        done: |s| s.draft.chart.rows.iter().any(|r| row_is_full(s.draft, r)),
    },
    Step {
        title: id!("guide-piece"),
        words: id!("guide-piece-words"),
        control: Act::AddPiece,
        place: Place::Control,
        done: |s| !s.draft.pieces.is_empty(),
    },
    Step {
        title: id!("guide-points"),
        words: id!("guide-points-words"),
        control: Act::AddPoint,
        place: Place::Piece,
        done: |s| s.draft.pieces.iter().any(|p| p.points.len() >= 4),
    },
    Step {
        title: id!("guide-follow"),
        words: id!("guide-follow-words"),
        control: Act::AddPoint,
        place: Place::Point,
        done: |s| a_point_follows_the_body(s.draft),
    },
    Step {
        title: id!("guide-edges"),
        words: id!("guide-edges-words"),
        control: Act::AddEdge,
        place: Place::Piece,
        done: |s| s.draft.pieces.iter().any(|p| p.edges.len() >= 3),
    },
    Step {
        title: id!("guide-close"),
        words: id!("guide-close-words"),
        control: Act::Close,
        place: Place::Piece,
        done: |s| s.closed() >= 1,
    },
    Step {
        title: id!("guide-second"),
        words: id!("guide-second-words"),
        control: Act::AddPiece,
        place: Place::Control,
        done: |s| s.closed() >= 2,
    },
    Step {
        title: id!("guide-seam"),
        words: id!("guide-seam-words"),
        control: Act::AddSeam,
        place: Place::Control,
        done: |s| s.draft.seams.iter().any(|m| !m.one.is_empty() && !m.two.is_empty()),
    },
    Step {
        title: id!("guide-proof"),
        words: id!("guide-proof-words"),
        control: Act::NextFinding,
        place: Place::Finding,
        done: |s| !s.draft.seams.is_empty() && s.errors == 0,
    },
    Step {
        title: id!("guide-save"),
        words: id!("guide-save-words"),
        control: Act::Save,
        place: Place::Control,
        done: |s| s.is_saved && !s.draft.pieces.is_empty(),
    },
];

fn row_is_full(draft: &Draft, row: &Row) -> bool {
    !draft.chart.girth.is_empty() && draft.chart.girth.iter().all(|label| cell_is_full(row, label))
}

/// Whether a cell holds a measure: a number without a unit, or what cannot be read, is none.
fn cell_is_full(row: &Row, label: &str) -> bool {
    row.cells.iter().any(|c| c.0 == label && parse(&c.1).is_ok() && unit_missing(&c.1).is_none())
}

/// Whether a formula names one of these.
fn names_one(formula: &str, names: &[&str]) -> bool {
    formula.split(|c: char| c != '_' && !c.is_alphanumeric()).any(|w| names.contains(&w))
}

/// Whether a point hangs on a row of the chart, by its own formula or by way of values.
fn a_point_follows_the_body(draft: &Draft) -> bool {
    let mut names: Vec<&str> = draft.chart.rows.iter().map(|r| r.name.as_str()).collect();
    // Each time round at least one more value is known to hang on a row, or it ends.
    for _ in 0..draft.values.len() {
        let more: Vec<&str> = draft
            .values
            .iter()
            .filter(|v| !names.contains(&v.name.as_str()) && names_one(&v.is, &names))
            .map(|v| v.name.as_str())
            .collect();
        if more.is_empty() {
            break;
        }
        names.extend(more);
    }
    draft.pieces.iter().any(|p| p.points.iter().any(|q| names_one(&q.at, &names)))
}

fn seen<'a>(open: &'a OpenDraft, scene: &Scene) -> Seen<'a> {
    let is_saved = open.path().is_some() && !open.work().is_unsaved();
    Seen { draft: open.work().draft(), errors: scene.computed.counts.errors, is_saved }
}

/// Paints the strip, if the guide is followed.
pub(super) fn show(ui: &mut Ui, look: &Look, open: &OpenDraft, scene: &Scene, shown: &Shown, wishes: &mut Vec<Wish>) {
    if !shown.own.preferences.guide {
        return;
    }
    let seen = seen(open, scene);
    let done: Vec<bool> = STEPS.iter().map(|s| (s.done)(&seen)).collect();
    let first = done.iter().position(|d| !d);
    let at = shown.step.filter(|i| *i < STEPS.len()).or(first);
    let ground = Frame::new().fill(look.touched).inner_margin(Margin::symmetric(18, 6));
    Panel::top("guide").frame(ground).show_separator_line(false).exact_size(HEIGHT).show(ui, |ui| {
        ui.with_layout(Layout::right_to_left(Align::Min), |ui| {
            if ui.button(say!("guide-leave")).clicked() {
                wishes.push(Wish::Guide(GuideWish::Leave));
            }
            help::question(ui, &say!("guide-about"), "guide", wishes);
            if let Some(i) = at
                && ui.button(say!("guide-where")).clicked()
            {
                wishes.push(Wish::Guide(GuideWish::Where(i)));
            }
            ui.with_layout(Layout::top_down(Align::Min), |ui| {
                numbers(ui, &done, at, wishes);
                let words = match at {
                    Some(i) => {
                        let (number, all, title, words) = (i + 1, STEPS.len(), STEPS[i].title(), STEPS[i].words());
                        match done[i] {
                            true => say!("guide-at-done", number, all, title, words),
                            false => say!("guide-at", number, all, title, words),
                        }
                    }
                    None => say!("guide-all-done"),
                };
                ui.add(Label::new(RichText::new(words).color(look.ink)).wrap());
            });
        });
    });
}

/// A small button for each step.
fn numbers(ui: &mut Ui, done: &[bool], at: Option<usize>, wishes: &mut Vec<Wish>) {
    ui.horizontal(|ui| {
        ui.spacing_mut().item_spacing.x = 3.0;
        for (i, step) in STEPS.iter().enumerate() {
            let word = if done[i] { "✓".to_owned() } else { (i + 1).to_string() };
            let words = RichText::new(word).font(look::letters(look::SMALL));
            let response = ui.add(Button::new(words).small().selected(at == Some(i)).min_size(vec2(22.0, 18.0)));
            let (number, title) = (i + 1, step.title());
            let called = match done[i] {
                true => say!("guide-step-done", number, title),
                false => say!("guide-step-to-do", number, title),
            };
            response.widget_info(|| WidgetInfo::selected(Role::RadioButton, true, at == Some(i), &called));
            if response.on_hover_text(title).clicked() {
                wishes.push(Wish::Guide(GuideWish::Step(i)));
            }
        }
    });
}

/// Called where the control of an action is painted: it gets the focus and a ring when the guide points at it.
pub(super) fn mark(ui: &Ui, shown: &Shown, act: Act, response: &Response) {
    let Some((pointed, now)) = shown.pointed else { return };
    if pointed != act {
        return;
    }
    if now {
        response.request_focus();
        response.scroll_to_me(Some(Align::Center));
    }
    if now || response.has_focus() {
        let ring = Stroke::new(2.5, ui.visuals().error_fg_color);
        ui.painter().rect_stroke(response.rect.expand(2.0), look::ROUND, ring, StrokeKind::Outside);
    }
}

impl Window {
    /// Does what was asked of the guide.
    pub(super) fn guide(&mut self, ctx: &Context, wish: GuideWish) {
        let follow = match wish {
            GuideWish::Begin => true,
            GuideWish::Leave => false,
            GuideWish::Toggle => !self.shown.own.preferences.guide,
            GuideWish::Step(i) => return self.shown.step = Some(i),
            GuideWish::Where(i) => return self.point_out(ctx, i),
        };
        let wanted = Preferences { guide: follow, ..self.shown.own.preferences.clone() };
        if let Err(problem) = self.shown.own.prefer(wanted) {
            self.refuse(problem);
        }
        self.shown.step = None;
        self.shown.pointed = None;
        if follow && self.shown.room == Room::Welcome {
            self.shown.room = Room::Table;
        }
    }

    /// Puts the focus on the control that a step needs, in the room where it is.
    fn point_out(&mut self, ctx: &Context, i: usize) {
        let Some(step) = STEPS.get(i) else { return };
        // Once a step was looked for, the guide goes on by itself.
        self.shown.step = None;
        let draft = self.open.work().draft().clone();
        self.shown.room = if step.control == Act::AddRow { Room::Chart } else { Room::Table };
        let mut field = None;
        match step.place {
            Place::Control => {}
            Place::Cell => {
                let empty = draft.chart.rows.iter().find(|r| !row_is_full(&draft, r));
                let label = empty.and_then(|r| draft.chart.girth.iter().find(|l| !cell_is_full(r, l)));
                field = empty.zip(label).map(|(row, label)| Field::Cell(row.name.clone(), label.clone()));
            }
            Place::Piece => self.shown.part = working(&draft).map(|p| Part::Piece(p.name.clone())),
            Place::Point => {
                let piece = draft.pieces.iter().find(|p| p.points.len() > 1);
                if let Some((piece, point)) = piece.and_then(|p| Some((p, p.points.get(1)?))) {
                    let part = Part::point(&piece.name, &point.name);
                    field = Some(Field::Text(Address::new(part.clone(), "at"), true));
                    self.shown.part = Some(part);
                }
            }
            Place::Finding => {
                let first = self.scene.findings().next().map(|(i, _)| i);
                if let Some(first) = first {
                    self.go_to_finding(first);
                }
            }
        }
        self.shown.scroll_to_part = true;
        match field {
            Some(field @ Field::Cell(..)) => self.shown.chart.go = Some(field),
            Some(field) => ctx.memory_mut(|m| m.request_focus(field::id(&field))),
            None => self.shown.pointed = Some((step.control, true)),
        }
    }
}

/// The piece that is worked on: the last one whose outline is not closed, else the last.
fn working(draft: &Draft) -> Option<&Piece> {
    let open = draft.pieces.iter().rev().find(|p| p.edges.len() < 3 || outline_is_open(draft, &p.name));
    open.or(draft.pieces.last()).map(|p| &**p)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::Cell;

    #[test]
    fn a_cell_is_a_measure_once_it_has_a_unit_or_a_formula() {
        let is_full = |text: &str| {
            let row = Row { cells: vec![Cell("S".to_owned(), text.to_owned())], ..Row::default() };
            cell_is_full(&row, "S")
        };
        assert!(["94 cm", "34 1/2 in", "waist + 10 cm"].into_iter().all(is_full));
        assert!(["", "94", "94.5 c", "94 cm +"].into_iter().all(|text| !is_full(text)));
    }
}
