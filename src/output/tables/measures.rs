//! What the garment measures when it is sewn, beside the body and the ease that is meant.

use super::{Page, sentence};
use crate::compute::MeasurePlan;
use crate::output::{Cell, Line, Table};
use crate::texts::{readable, t};

/// Each declared measure with its lines. They are of the whole garment, darts and allowances left out, as their formulas say.
pub(super) fn table(page: &Page<'_>) -> Option<Table> {
    let mut table = page.table("finished-measures", t!("table-measures"));
    table.before.push(t!("measures-before"));
    for measure in &page.model.plan.measures {
        table.lines.extend(lines(page, measure));
        let told = page.draft.measures.iter().find(|m| *m.name == *measure.name).filter(|m| !m.note.is_empty());
        table.notes.extend(told.map(|m| sentence(&format!("{}: {}", readable(&m.name), m.note))));
    }
    page.explain(&mut table);
    (!table.lines.is_empty()).then_some(table)
}

fn lines(page: &Page<'_>, measure: &MeasurePlan) -> Vec<Line> {
    let group = readable(&measure.name);
    let finished = |case: usize| page.node(case, measure.node);
    let mut out = vec![page.line(&group, t!("measure-finished"), finished)];
    if let Some((name, node)) = &measure.body {
        out.push(page.line(&group, t!("measure-body", row = readable(name)), |case| page.node(case, *node)));
        out.push(page.line(&group, t!("measure-ease"), |case| less(&finished(case), &page.node(case, *node))));
        for (words, meant) in [(t!("measure-least"), &measure.least), (t!("measure-most"), &measure.most)] {
            out.extend(meant.as_ref().map(|f| page.line(&group, words, |case| page.formula(case, f))));
        }
    }
    if let Some((name, node)) = &measure.passes {
        if let Some(stretch) = &measure.stretch {
            let opens = |case: usize| match (finished(case), page.model.real(case, stretch)) {
                (Cell::Length(mm), Ok(stretch)) => Cell::Length(mm * (1.0 + stretch)),
                _ => Cell::Missing,
            };
            out.push(page.line(&group, t!("measure-stretches"), opens));
        }
        out.push(page.line(&group, t!("measure-passes", row = readable(name)), |case| page.node(case, *node)));
    }
    out
}

/// The difference of two numbers of one kind, with the sign of either.
fn less(a: &Cell, b: &Cell) -> Cell {
    let cell = match (a.unsigned(), b.unsigned()) {
        (Cell::Length(a), Cell::Length(b)) => Cell::Length(a - b),
        (Cell::Number(a), Cell::Number(b)) => Cell::Number(a - b),
        (Cell::Angle(a), Cell::Angle(b)) => Cell::Angle(a - b),
        _ => return Cell::Missing,
    };
    match [a.sign(), b.sign()].into_iter().find(|s| !s.is_empty()) {
        Some(sign) => cell.signed(sign),
        None => cell,
    }
}
