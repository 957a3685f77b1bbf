//! The tables that a buyer gets: body chart, finished measures, strips, notions, cutting list. All numbers are the model's; nothing is
//! rounded here. What cannot be computed is missing, never 0.

mod body;
mod check_list;
mod cloth;
mod cutting;
mod measures;
mod notions;
mod strips;

pub use check_list::{cloth_without_plan, lines_open};

use super::{Cell, Line, Table, cell_of};
use crate::compute::{Formula, Model, NodeId};
use crate::document::Draft;
use crate::finish::Finished;
use crate::language::Kind;
use crate::texts::{readable, t};

/// Behind a number that nobody measured: proposed between its neighbours.
const GUESSED: &str = "?";
/// Behind a number that nobody measured: beyond its neighbours.
const BEYOND: &str = "??";
/// Behind a number that hangs on an equation that does not hold.
const UNTRUE: &str = "!";

/// All tables of a view (its place; 0 where the draft has none), for all sizes of the range. `model` and `finished` are of the whole draft.
///
/// Where the chart has several size sets each has tables of its own, but for those that no size changes. Persons are in none.
pub fn tables(draft: &Draft, model: &Model, finished: &Finished, view: usize) -> Vec<Table> {
    tables_of(draft, (model, finished), view, &[])
}

/// The same for some cases; none: all sizes of the range. Persons are passed over.
pub fn tables_of(draft: &Draft, (model, finished): (&Model, &Finished), view: usize, cases: &[usize]) -> Vec<Table> {
    let (Some(own), Some(done)) = (model.of_views().get(view), finished.of_views().get(view)) else {
        return Vec::new();
    };
    let range = own.plan.cases.range;
    let cases: Vec<usize> = (0..range).filter(|c| cases.is_empty() || cases.contains(c)).collect();
    let whole = Page { draft, all: model, model: own, finished: done, set: String::new(), cases };
    let mut out = Vec::new();
    for page in whole.by_sets() {
        out.extend(body::table(&page));
        out.extend(measures::table(&page));
        out.extend(strips::tables(&page));
        out.extend(notions::by_size(&page));
        out.extend(cloth::tables(&page));
    }
    out.extend(notions::alike(&whole));
    out.extend(cutting::table(&whole));
    out
}

/// The check list of a view (its place): each piece with its mates, notches, grain, counts and the steps that mention it. Not for buyers.
pub fn check_list(draft: &Draft, (model, finished): (&Model, &Finished), view: usize) -> Option<Table> {
    let (own, done) = (model.of_views().get(view)?, finished.of_views().get(view)?);
    let cases = (0..own.plan.cases.range).collect();
    Some(check_list::table(&Page { draft, all: model, model: own, finished: done, set: String::new(), cases }))
}

/// What tables are made of: a view, some of its sizes, perhaps those of one set.
struct Page<'a> {
    draft: &'a Draft,
    /// Of the whole draft.
    all: &'a Model,
    /// Of the view.
    model: &'a Model,
    finished: &'a Finished,
    /// The size set; empty where there is only one.
    set: String,
    cases: Vec<usize>,
}

impl<'a> Page<'a> {
    /// One for each size set that has any of the sizes.
    fn by_sets(&self) -> Vec<Page<'a>> {
        let list = &self.model.plan.cases.list;
        let sets = &self.draft.chart.sets;
        let of = |set: String, cases: Vec<usize>| Page { set, cases, ..*self };
        if sets.len() < 2 {
            return vec![of(String::new(), self.cases.clone())];
        }
        let is_in = |case: usize, set: &str| list[case].parts.first().is_some_and(|p| p == set);
        let own = |set: &str| self.cases.iter().copied().filter(|c| is_in(*c, set)).collect();
        let pages = sets.iter().map(|s| of(s.name.clone(), own(&s.name)));
        pages.filter(|p| !p.cases.is_empty()).collect()
    }

    /// An empty table with sizes across.
    fn table(&self, name: &str, title: impl Into<String>) -> Table {
        let sizes = self.cases.iter().map(|c| {
            let address = &self.model.plan.cases.list[*c].address;
            // The set stands in the title.
            let own = (!self.set.is_empty()).then(|| address.strip_prefix(&*self.set)?.strip_prefix('/')).flatten();
            own.unwrap_or(address).to_owned()
        });
        let head = std::iter::once(t!("table-size")).chain(sizes).collect();
        Table { head, ..self.titled(name, title) }
    }

    /// An empty table without a head.
    fn titled(&self, name: &str, title: impl Into<String>) -> Table {
        let garment = if self.draft.title.is_empty() { t!("table-untitled") } else { self.draft.title.clone() };
        let mut title = format!("{} – {garment}", title.into());
        let view = self.model.view();
        if !view.is_empty() {
            title.push_str(&format!(", {}", t!("of-view", view = readable(view))));
        }
        if !self.set.is_empty() {
            title.push_str(&format!(", {}", t!("of-set", set = self.set)));
        }
        let parts = [name, &*self.set].into_iter().filter(|p| !p.is_empty()).map(file_word);
        Table { name: parts.collect::<Vec<_>>().join("-"), title, ..Table::default() }
    }

    /// A line with a cell for each size.
    fn line(&self, group: &str, name: impl Into<String>, cell: impl Fn(usize) -> Cell) -> Line {
        Line { group: group.to_owned(), name: name.into(), cells: self.cases.iter().map(|c| cell(*c)).collect() }
    }

    /// A formula's value.
    fn formula(&self, case: usize, formula: &Formula) -> Cell {
        cell_of(self.model, case, formula)
    }

    /// A node's value; one that hangs on an equation that does not hold is signed.
    fn node(&self, case: usize, node: NodeId) -> Cell {
        let kind = self.model.plan.nodes[node as usize].kind.unwrap_or(Kind::LENGTH);
        let value = self.model.item(case, node).and_then(|item| item.real());
        let cell = value.map_or(Cell::Missing, |value| number(kind, value));
        if value.is_some() && self.model.is_untrue(case, node) { cell.signed(UNTRUE) } else { cell }
    }

    /// Puts a note where a sign needs one.
    fn explain(&self, table: &mut Table) {
        let used = |sign: &str| table.lines.iter().flat_map(|l| &l.cells).any(|c| c.sign() == sign);
        let notes = [(GUESSED, t!("sign-guessed")), (BEYOND, t!("sign-beyond")), (UNTRUE, t!("sign-untrue"))];
        let told = notes.iter().filter(|(sign, _)| used(sign)).map(|(sign, words)| format!("{sign}  {words}."));
        let told: Vec<String> = told.collect();
        table.notes.extend(told);
    }
}

/// A length in mm; nothing is missing.
fn length(mm: Option<f64>) -> Cell {
    mm.map_or(Cell::Missing, Cell::Length)
}

/// A number of a kind: mm, radians or plain.
fn number(kind: Kind, value: f64) -> Cell {
    match kind {
        _ if !value.is_finite() => Cell::Missing,
        Kind::LENGTH => Cell::Length(value),
        Kind::NUMBER => Cell::Number(value),
        Kind::Angle => Cell::Angle(value),
        _ => Cell::Missing,
    }
}

/// A name as part of a file's name.
fn file_word(name: &str) -> String {
    name.chars().map(|c| if c.is_alphanumeric() { c } else { '-' }).collect()
}

/// Words as a sentence: a full stop, where there is none.
fn sentence(words: &str) -> String {
    let words = words.trim();
    if words.ends_with(['.', '!', '?']) { words.to_owned() } else { format!("{words}.") }
}
