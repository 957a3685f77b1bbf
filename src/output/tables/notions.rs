//! Things that are bought: what is needed in each size, and the next size sold.

use super::{Page, number, sentence};
use crate::compute::NotionPlan;
use crate::document::Notion;
use crate::finish::NotionSize;
use crate::output::{Cell, Line, Table};
use crate::texts::{readable, t};

/// Notions that are the same in all sizes, one a line.
pub(super) fn alike(page: &Page<'_>) -> Option<Table> {
    let mut table = page.titled("notions", t!("table-notions"));
    table.head = vec![t!("notion"), t!("how-many"), t!("notion-size"), t!("notion-sold")];
    table.before.push(t!("notions-before"));
    for (notion, plan) in of_view(page).filter(|(_, plan)| is_alike(page, plan)) {
        let [needed, sold] = page.cases.first().map_or([Cell::Empty, Cell::Empty], |case| cells(page, *case, plan));
        let cells = vec![count(notion), needed, sold];
        table.lines.push(Line { name: readable(&notion.name), cells, ..Line::default() });
        table.notes.extend(note(notion));
    }
    (!table.lines.is_empty()).then_some(table)
}

/// Notions that differ, sizes across.
pub(super) fn by_size(page: &Page<'_>) -> Option<Table> {
    let mut table = page.table("notions-by-size", t!("table-notions-by-size"));
    for (notion, plan) in of_view(page).filter(|(_, plan)| !is_alike(page, plan)) {
        let group = readable(&notion.name);
        table.lines.push(page.line(&group, t!("how-many"), |_| count(notion)));
        for (i, words) in [t!("notion-needed"), t!("notion-sold")]
            .into_iter()
            .enumerate()
            .filter(|(i, _)| *i == 0 || !plan.sold.is_empty())
        {
            let cell = |case: usize| {
                let [needed, sold] = cells(page, case, plan);
                if i == 0 { needed } else { sold }
            };
            table.lines.push(page.line(&group, words, cell));
        }
        table.notes.extend(note(notion));
    }
    (!table.lines.is_empty()).then_some(table)
}

/// Notions of the view, with what the draft says.
pub(super) fn of_view<'a>(page: &'a Page<'_>) -> impl Iterator<Item = (&'a Notion, &'a NotionPlan)> {
    let plans = page.model.plan.publishing.notions.iter();
    let own = plans.filter(|n| n.size.as_ref().is_none_or(|f| page.model.plan.has_all_of(f)));
    own.map(|n| (&page.draft.notions[n.place], n))
}

/// What is needed, and what is bought for it.
fn cells(page: &Page<'_>, case: usize, plan: &NotionPlan) -> [Cell; 2] {
    let Some(formula) = &plan.size else {
        // Nothing is told of a size, or what is told cannot be read.
        let typed = !page.draft.notions[plan.place].size.is_empty();
        return [if typed { Cell::Missing } else { Cell::Empty }, Cell::Empty];
    };
    let size = NotionSize::of(page.model, case, plan);
    let of = |value: Option<f64>| value.map_or(Cell::Missing, |v| number(formula.kind, v));
    [of(size.needed), if plan.sold.is_empty() { Cell::Empty } else { of(size.sold) }]
}

/// Whether a notion is the same in all sizes of the range, whichever of them are asked for.
fn is_alike(page: &Page<'_>, plan: &NotionPlan) -> bool {
    let mut cells = (0..page.model.plan.cases.range).map(|case| cells(page, case, plan));
    let first = cells.next();
    cells.all(|c| Some(&c) == first.as_ref())
}

fn count(notion: &Notion) -> Cell {
    Cell::Count(u64::from(notion.count.max(1)))
}

fn note(notion: &Notion) -> Option<String> {
    (!notion.note.is_empty()).then(|| sentence(&format!("{}: {}", readable(&notion.name), notion.note)))
}
