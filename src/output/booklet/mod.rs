//! The booklet: what whoever buys the pattern reads, with every number from the draft.
//!
//! Cautions come first, then how to choose a size, what is needed, the pieces, the allowances, the steps in the designer's words. One
//! booklet speaks of one view. How it becomes pages or a file is `writing`'s.

mod allowances;
mod figure;
mod lays;
mod steps;

use std::collections::BTreeMap;
use std::ops::Range;
use std::sync::Arc;

pub use allowances::{allowance_in_short, allowance_words, allowances};
pub use figure::{Drawn, pieces_figure};
pub use steps::steps_of_view;

use super::photo::Photo;
use super::writing::{Block, Table, Writing};
use crate::compute::Model;
use crate::document::Draft;
use crate::finish::Finished;

/// What a booklet is made of.
pub struct BookletOrder<'a> {
    /// The draft.
    pub draft: &'a Draft,
    /// Its model: of one view, or of a draft without views.
    pub model: &'a Model,
    /// The same, finished.
    pub finished: &'a Finished,
    /// The sizes it speaks of: places of cases.
    pub cases: &'a [usize],
    /// Its title.
    pub title: String,
    /// Edition and date; may be empty.
    pub edition: String,
    /// Where the garment can hurt.
    pub cautions: Vec<Block>,
    /// Tables of this view: body chart, finished measures, strips, notions, cutting list.
    pub tables: Vec<Table>,
    /// Pictures of its steps, by the names of their files.
    pub photos: &'a BTreeMap<String, Arc<Photo>>,
    /// What else a person should know, in sentences: sizes that are not true.
    pub notes: Vec<String>,
}

impl BookletOrder<'_> {
    /// The case that is drawn and told of where one must do: the base size, if it is one of the booklet's, else its first.
    fn shown(&self) -> Option<usize> {
        self.model.plan.cases.base.filter(|b| self.cases.contains(b)).or(self.cases.first().copied())
    }
}

/// Tables by which a size is chosen, by their names.
const FOR_SIZE: [&str; 2] = ["body-chart", "finished-measures"];
/// Lines of the tables of strips that only the tables have.
const OF_STRIPS_LEFT_OUT: [&str; 5] = [
    "finished length",
    "added at each end",
    "finished width",
    "longest piece from selvedge to selvedge",
    "whole strips side by side",
];
/// The table that stands with the pieces.
const FOR_PIECES: &str = "cutting-list";

/// The chapter of the steps.
const SEWING: &str = "Sewing";

/// Which of the headings of a booklet are those of its steps, counted through all of them.
pub fn step_headings(writing: &Writing) -> Range<usize> {
    let headings = writing.blocks.iter().filter_map(|b| match b {
        Block::Heading { level, text } => Some((*level, text.as_str())),
        _ => None,
    });
    let headings: Vec<(u8, &str)> = headings.collect();
    // The last chapter of that name: what stands before the steps is not of the designer's choosing.
    let first = headings.iter().rposition(|h| *h == (2, SEWING)).map_or(headings.len(), |i| i + 1);
    let many = headings[first..].iter().take_while(|(level, _)| *level > 2).count();
    first..first + many
}

/// The booklet.
pub fn booklet(order: &BookletOrder<'_>) -> Writing {
    let mut blocks = order.cautions.clone();
    let is_for_size = |t: &Table| FOR_SIZE.iter().any(|name| t.name.starts_with(name));
    let is_for_pieces = |t: &Table| t.name.starts_with(FOR_PIECES);
    let tables = |fits: &dyn Fn(&Table) -> bool| -> Vec<Block> {
        let all = order.tables.iter().filter(|t| fits(t));
        all.map(|t| Block::Table(within(t))).collect()
    };
    chapter(&mut blocks, "Your size", tables(&is_for_size));
    chapter(&mut blocks, "What you need", tables(&|t| !is_for_size(t) && !is_for_pieces(t)));
    let mut pieces = drawn_pieces(order);
    pieces.extend(tables(&is_for_pieces));
    chapter(&mut blocks, "The pieces", pieces);
    chapter(&mut blocks, "How the pieces lie on the cloth", lays::lays(order));
    chapter(&mut blocks, "Seam allowances", allowances(order));
    chapter(&mut blocks, SEWING, steps::steps(order));
    chapter(&mut blocks, "About this pattern", about(order));
    let about = [order.edition.clone(), sizes_words(order)];
    Writing {
        title: order.title.clone(),
        about: about.into_iter().filter(|a| !a.is_empty()).chain(order.notes.iter().cloned()).collect(),
        blocks,
    }
}

/// A table within the booklet, whose own title says of which garment it is.
fn within(table: &Table) -> Table {
    let title = table.title.rsplit_once(" – ").map_or(table.title.as_str(), |(title, _)| title);
    let mut out = Table { title: title.to_owned(), ..table.clone() };
    if table.name.starts_with("strip-") {
        // Whoever sews needs what is cut; how that comes about stands in the tables.
        out.lines.retain(|l| !OF_STRIPS_LEFT_OUT.contains(&l.name.as_str()));
    }
    out
}

/// A heading and what stands under it; nothing where nothing does.
fn chapter(blocks: &mut Vec<Block>, title: &str, inside: Vec<Block>) {
    if !inside.is_empty() {
        blocks.push(Block::Heading { level: 2, text: title.to_owned() });
        blocks.extend(inside);
    }
}

fn sizes_words(order: &BookletOrder<'_>) -> String {
    let list = &order.model.plan.cases.list;
    let sizes: Vec<&str> = order.cases.iter().filter_map(|c| Some(list.get(*c)?.address.as_str())).collect();
    match sizes.as_slice() {
        [] | [""] => String::new(),
        [one] => format!("Size {one}"),
        many => format!("Sizes {}", many.join(", ")),
    }
}

/// All pieces in the base size, beside each other.
fn drawn_pieces(order: &BookletOrder<'_>) -> Vec<Block> {
    let names: Vec<String> = order.draft.pieces.iter().map(|p| p.name.clone()).collect();
    figure(order, &names, 66.0).into_iter().collect()
}

/// A figure of some pieces in the base size, if it is one of the booklet's, else in its first.
fn figure(order: &BookletOrder<'_>, names: &[String], height: f64) -> Option<Block> {
    let model = order.model;
    let base = order.shown()?;
    let letters = crate::finish::letters(model);
    let (found, _) = super::sheet_pieces(order.draft, model, order.finished, base, false);
    let drawn: Vec<Drawn> = found
        .into_iter()
        .filter(|p| names.contains(&p.name) && !crate::finish::is_block(model, &p.name))
        .map(|piece| {
            let place = order.draft.pieces.iter().position(|p| p.name == piece.name);
            let letter = place.and_then(|i| letters.get(i).cloned()).unwrap_or_default();
            Drawn { piece, letter }
        })
        .collect();
    let picture = pieces_figure(&drawn, height)?;
    let size = model.plan.cases.list.get(base).map_or("", |c| c.address.as_str());
    let all: Vec<String> = drawn.iter().map(Drawn::words).collect();
    let lines = match drawn.iter().filter(|d| d.piece.stitch.is_some()).count() {
        0 => "",
        n if n == drawn.len() => " Outer line: where it is cut; dotted line: where it is sewn.",
        _ => " Where there is a dotted line, that is where it is sewn, and the outer line where it is cut.",
    };
    let of_size = if size.is_empty() { String::new() } else { format!(" in size {size}") };
    Some(Block::Figure {
        picture: Arc::new(picture),
        says: format!("Pieces drawn{of_size}: {}", all.join(", ")),
        caption: format!("Drawn{of_size}, all to one scale.{lines}"),
    })
}

fn about(order: &BookletOrder<'_>) -> Vec<Block> {
    let draft = order.draft;
    let told = [
        ("Drafted by", &draft.author),
        ("Licence", &draft.licence),
        ("Questions, and mistakes that you find", &draft.contact),
    ];
    let items: Vec<String> =
        told.iter().filter(|(_, words)| !words.is_empty()).map(|(what, words)| format!("{what}: {words}")).collect();
    if items.is_empty() { Vec::new() } else { vec![Block::List { numbered: false, items }] }
}
