//! The steps, in the designer's words: numbers from the draft where braces stand, tables where they differ by size.

use std::sync::Arc;

use super::{BookletOrder, figure};
use crate::compute::{Braced, BracedPart, Formula, Model, StepPlan};
use crate::document::Draft;
use crate::output::writing::{Block, Cell, Line, Table, cell_of, words_of};
use crate::texts::t;

/// The steps that belong to the view of a model, in their order.
pub fn steps_of_view<'a>(draft: &Draft, model: &'a Model) -> Vec<&'a StepPlan> {
    let view = model.view();
    let belongs = |plan: &&StepPlan| {
        let views = draft.booklet.get(plan.place).map(|s| &s.views);
        views.is_some_and(|all| view.is_empty() || all.is_empty() || all.iter().any(|v| v == view))
    };
    model.plan.publishing.booklet.iter().filter(belongs).collect()
}

/// The steps of the view, counted through.
pub(super) fn steps(order: &BookletOrder<'_>) -> Vec<Block> {
    let mut out = Vec::new();
    for (plan, number) in steps_of_view(order.draft, order.model).into_iter().zip(1..) {
        let step = &order.draft.booklet[plan.place];
        let mut sized = Sized::default();
        let title = sized.words(order, &plan.title);
        let text = if title.is_empty() { t!("step", number) } else { format!("{number}. {title}") };
        out.push(Block::Heading { level: 3, text });
        let words = sized.words(order, &plan.text);
        out.extend(paragraphs(&words));
        if let Some(table) = sized.table(order, number) {
            out.push(Block::Table(table));
        }
        out.extend(figure(order, &step.pieces, 52.0));
        for picture in &step.pictures {
            if let Some(photo) = order.photos.get(&picture.file) {
                let (says, caption) = (picture.says.clone(), picture.caption.clone());
                out.push(Block::Photo { photo: Arc::clone(photo), says, caption });
            }
        }
    }
    out
}

/// Words as paragraphs, apart by empty lines, and points, which begin with `- `.
fn paragraphs(words: &str) -> Vec<Block> {
    let mut out: Vec<Block> = Vec::new();
    let mut text: Vec<&str> = Vec::new();
    let close = |text: &mut Vec<&str>, out: &mut Vec<Block>| {
        if !text.is_empty() {
            out.push(Block::Paragraph(std::mem::take(text).join(" ")));
        }
    };
    for line in words.lines().map(str::trim) {
        if let Some(point) = line.strip_prefix("- ") {
            close(&mut text, &mut out);
            match out.last_mut() {
                Some(Block::List { items, .. }) => items.push(point.trim().to_owned()),
                _ => out.push(Block::List { numbered: false, items: vec![point.trim().to_owned()] }),
            }
        } else if line.is_empty() {
            close(&mut text, &mut out);
        } else {
            text.push(line);
        }
    }
    close(&mut text, &mut out);
    out
}

/// Numbers of a step that differ by size: each has a letter in the words and a line in a table under them.
#[derive(Default)]
struct Sized {
    lines: Vec<(Formula, Vec<Cell>)>,
}

impl Sized {
    /// Words with what stands in braces: what is the same in all sizes as it is, else the letter of its line.
    fn words(&mut self, order: &BookletOrder<'_>, braced: &Braced) -> String {
        let mut out = String::new();
        for part in &braced.parts {
            let BracedPart::Formula(formula) = part else {
                let one = Braced { parts: vec![part.clone()] };
                out.push_str(&words_of(order.model, 0, &one));
                continue;
            };
            let cells: Vec<Cell> = order.cases.iter().map(|case| cell_of(order.model, *case, formula)).collect();
            let seen = |cell: &Cell| (cell.in_cm(), cell.in_inches());
            let is_same = cells.windows(2).all(|pair| seen(&pair[0]) == seen(&pair[1]));
            if let (true, Some(case)) = (is_same, order.cases.first()) {
                let one = Braced { parts: vec![part.clone()] };
                out.push_str(&words_of(order.model, *case, &one));
                continue;
            }
            let known = self.lines.iter().position(|(f, _)| f.text == formula.text);
            let place = known.unwrap_or_else(|| {
                self.lines.push((formula.clone(), cells));
                self.lines.len() - 1
            });
            out.push_str(&format!("[{}]", sign(place)));
        }
        out
    }

    /// The numbers in every size.
    fn table(self, order: &BookletOrder<'_>, step: usize) -> Option<Table> {
        if self.lines.is_empty() {
            return None;
        }
        let list = &order.model.plan.cases.list;
        let sizes = order.cases.iter().map(|c| list[*c].address.clone());
        let many = self.lines.len();
        let lines = self.lines.into_iter().enumerate();
        Some(Table {
            name: format!("step-{step}"),
            title: t!("step-numbers", step, many),
            head: std::iter::once(String::new()).chain(sizes).collect(),
            lines: lines
                .map(|(i, (_, cells))| Line { name: format!("[{}]", sign(i)), cells, ..Line::default() })
                .collect(),
            ..Table::default()
        })
    }
}

/// a, b, … z, then aa.
fn sign(place: usize) -> String {
    crate::finish::letter(place).to_lowercase()
}
