//! The booklet: what whoever buys the pattern reads, with every number from the draft.
//!
//! Cautions come first, then how to choose a size, what is needed, the pieces, the allowances, the steps in the designer's words. One
//! booklet speaks of one view. How it becomes pages or a file is `writing`'s.

mod allowances;
mod figure;
mod lays;
mod steps;

use std::collections::BTreeMap;
use std::sync::Arc;

pub use allowances::{allowance_in_short, allowance_words, allowances};
pub use figure::{Drawn, pieces_figure};
pub use steps::steps_of_view;

use super::photo::Photo;
use super::writing::{Block, Table, Writing};
use crate::compute::Model;
use crate::document::Draft;
use crate::finish::Finished;
use crate::texts::t;

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
fn of_strips_left_out() -> [String; 5] {
    [
        t!("strip-finished-length"),
        t!("strip-ends"),
        t!("strip-finished-width"),
        t!("strip-longest"),
        t!("strip-side-by-side"),
    ]
}
/// The table that stands with the pieces.
const FOR_PIECES: &str = "cutting-list";

/// How many headings there are in blocks.
fn headings(blocks: &[Block]) -> usize {
    blocks.iter().filter(|b| matches!(b, Block::Heading { .. })).count()
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
    chapter(&mut blocks, t!("chapter-size"), tables(&is_for_size));
    chapter(&mut blocks, t!("chapter-needs"), tables(&|t| !is_for_size(t) && !is_for_pieces(t)));
    let mut pieces = drawn_pieces(order);
    pieces.extend(tables(&is_for_pieces));
    chapter(&mut blocks, t!("chapter-pieces"), pieces);
    chapter(&mut blocks, t!("chapter-lays"), lays::lays(order));
    chapter(&mut blocks, t!("chapter-allowances"), allowances(order));
    let told = steps::steps(order);
    // The chapter's own heading stands before them.
    let first = headings(&blocks) + 1;
    let steps = first..first + headings(&told);
    chapter(&mut blocks, t!("chapter-sewing"), told);
    chapter(&mut blocks, t!("chapter-about"), about(order));
    let about = [order.edition.clone(), sizes_words(order)];
    Writing {
        title: order.title.clone(),
        about: about.into_iter().filter(|a| !a.is_empty()).chain(order.notes.iter().cloned()).collect(),
        blocks,
        steps,
    }
}

/// A table within the booklet, whose own title says of which garment it is.
fn within(table: &Table) -> Table {
    let title = table.title.rsplit_once(" – ").map_or(table.title.as_str(), |(title, _)| title);
    let mut out = Table { title: title.to_owned(), ..table.clone() };
    if table.name.starts_with("strip-") {
        // Whoever sews needs what is cut; how that comes about stands in the tables.
        let left_out = of_strips_left_out();
        out.lines.retain(|l| !left_out.contains(&l.name));
    }
    out
}

/// A heading and what stands under it; nothing where nothing does.
fn chapter(blocks: &mut Vec<Block>, title: String, inside: Vec<Block>) {
    if !inside.is_empty() {
        blocks.push(Block::Heading { level: 2, text: title });
        blocks.extend(inside);
    }
}

fn sizes_words(order: &BookletOrder<'_>) -> String {
    let list = &order.model.plan.cases.list;
    let sizes: Vec<&str> = order.cases.iter().filter_map(|c| Some(list.get(*c)?.address.as_str())).collect();
    match sizes.as_slice() {
        [] | [""] => String::new(),
        [one] => t!("size-head", size = one),
        many => t!("sizes-head", sizes = many.join(", ")),
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
        0 => String::new(),
        n if n == drawn.len() => t!("figure-lines-all"),
        _ => t!("figure-lines-some"),
    };
    let pieces = all.join(", ");
    let (says, caption) = match size {
        "" => (t!("figure-says", pieces), t!("figure-caption")),
        size => (t!("figure-says-in", size, pieces), t!("figure-caption-in", size)),
    };
    let caption = if lines.is_empty() { caption } else { format!("{caption} {lines}") };
    Some(Block::Figure { picture: Arc::new(picture), says, caption })
}

fn about(order: &BookletOrder<'_>) -> Vec<Block> {
    let draft = order.draft;
    let told = [
        (t!("about-author"), &draft.author),
        (t!("about-licence"), &draft.licence),
        (t!("about-contact"), &draft.contact),
    ];
    let items: Vec<String> =
        told.iter().filter(|(_, words)| !words.is_empty()).map(|(what, words)| format!("{what}: {words}")).collect();
    if items.is_empty() { Vec::new() } else { vec![Block::List { numbered: false, items }] }
}
