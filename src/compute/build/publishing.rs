//! Strips, notions, cloth, booklet, girths of rules: their formulas.

use super::{FormulaScope, World};
use crate::base::{Code, Finding};
use crate::compute::cases::part_unknown;
use crate::compute::compile::FormulaReader;
use crate::compute::names::{Global, MATERIAL_MEMBERS};
use crate::compute::plan::{Formula, NodeId};
use crate::compute::publishing::{Braced, BracedPart, MaterialPlan, NotionPlan, Publishing, StepPlan, StripPlan};
use crate::language::{Kind, What};
use crate::texts::say;

/// Reads what is published.
pub(super) fn publishing(world: &World<'_>, reader: &mut FormulaReader<'_>) -> Publishing {
    let draft = world.draft;
    let scope = FormulaScope { world, frame: None };
    let mut out = Publishing::default();
    let is_first = |names: Vec<&String>, i: usize| names.iter().position(|n| *n == names[i]) == Some(i);
    for (place, strip) in draft.strips.iter().enumerate() {
        let Some(&length) = world.names.strips.get(&strip.name) else { continue };
        if !is_first(draft.strips.iter().map(|s| &s.name).collect(), place) {
            continue;
        }
        let at = format!("strip.{}", strip.name);
        let mut read = |text: &str| optional(text, What::Kind(Kind::LENGTH), &scope, &at, reader);
        let [ends, width, allowance, join, free_end] =
            [&strip.ends, &strip.width, &strip.allowance, &strip.join, &strip.free_end].map(|text| read(text));
        out.strips.push(StripPlan { place, length, ends, width, allowance, join, free_end });
    }
    for (place, notion) in draft.notions.iter().enumerate() {
        let at = format!("notion {}", notion.name);
        let size = optional(&notion.size, What::Any, &scope, &at, reader).filter(|f| fits(f, &at, reader));
        let kind = size.as_ref().map_or(What::Any, |f| What::Kind(f.kind));
        let sold = notion.sold.iter().filter_map(|text| optional(text, kind, &scope, &at, reader)).collect();
        out.notions.push(NotionPlan { place, size, sold });
    }
    for (place, material) in draft.materials.iter().enumerate() {
        let Some(Global::Material(first)) = world.names.globals.get(&material.name) else { continue };
        let length = What::Kind(Kind::LENGTH);
        let widths = material.widths.iter().filter_map(|t| optional(t, length, &scope, &material.name, reader));
        let widths = widths.collect();
        let mut read = |text: &str| optional(text, length, &scope, &material.name, reader);
        let [folded_part, gap, sold_in] =
            [&material.folded_part, &material.gap, &material.sold_in].map(|text| read(text));
        let member = |name: &str, text: &str| {
            let place = MATERIAL_MEMBERS.iter().position(|m| *m == name).filter(|_| !text.is_empty());
            place.map(|m| first + m as NodeId)
        };
        let selvedge = member("selvedge", &material.selvedge);
        let shrinkage = [
            member("shrinkage_along", &material.shrinkage_along),
            member("shrinkage_across", &material.shrinkage_across),
        ];
        out.materials.push(MaterialPlan { place, widths, selvedge, shrinkage, folded_part, gap, sold_in });
    }
    for (place, step) in draft.booklet.iter().enumerate() {
        let at = format!("booklet step {}", place + 1);
        let [title, text] = [&step.title, &step.text].map(|text| braced(text, &scope, &|f| f.at(at.clone()), reader));
        out.booklet.push(StepPlan { place, title, text });
        let pieces = draft.pieces.iter().map(|p| &p.name).collect::<Vec<_>>();
        let views = draft.views.iter().map(|v| &v.name).collect::<Vec<_>>();
        for (what, named, known) in [("piece", &step.pieces, pieces), ("view", &step.views, views)] {
            let unknown = named.iter().filter(|n| !known.contains(n));
            reader.findings.extend(unknown.map(|n| part_unknown(what, n, known.iter().copied()).at(at.clone())));
        }
    }
    for girth in &draft.care.girths {
        if let Some(formula) = optional(&girth.is, What::Kind(Kind::LENGTH), &scope, "care", reader) {
            out.girths.push((girth.place, formula));
        }
    }
    out
}

/// A formula; nothing where the text is empty or cannot be read.
fn optional(
    text: &str,
    what: What,
    scope: &FormulaScope<'_>,
    at: &str,
    reader: &mut FormulaReader<'_>,
) -> Option<Formula> {
    if text.is_empty() { None } else { reader.read_as(text, scope, what, None, |f| f.at(at)) }
}

/// Whether a formula gives something that can be written down: a number, a length, an angle.
fn fits(formula: &Formula, at: &str, reader: &mut FormulaReader<'_>) -> bool {
    let fits = matches!(formula.kind, Kind::Quantity(_) | Kind::Angle | Kind::Truth);
    if !fits {
        reader.findings.push(Finding {
            formula: formula.text.to_string(),
            span: Some(formula.program.span),
            ..Finding::new(Code::WrongKind)
                .at(at)
                .word("found", formula.kind.words())
                .word("expected", say!("read-part-written"))
        });
    }
    fits
}

/// Words with formulas in braces. A brace that is not closed, or closes nothing, is a finding and stays as it was typed.
pub(super) fn braced(
    text: &str,
    scope: &FormulaScope<'_>,
    dress: &dyn Fn(Finding) -> Finding,
    reader: &mut FormulaReader<'_>,
) -> Braced {
    let mut parts = Vec::new();
    let mut rest = text;
    while let Some(open) = rest.find('{') {
        words(&rest[..open], dress, reader, &mut parts);
        let close = rest[open + 1..].find(['{', '}']).map_or(rest.len(), |i| open + 1 + i);
        if !rest[close..].starts_with('}') {
            let unclosed = &rest[open..close];
            reader.findings.push(dress(Finding { formula: unclosed.to_owned(), ..Finding::new(Code::BraceOpen) }));
            parts.push(BracedPart::Unread(unclosed.into()));
            rest = &rest[close..];
            continue;
        }
        let inner = &rest[open + 1..close];
        let read = reader.read_in(inner, scope, dress);
        let at = dress(Finding::new(Code::WrongKind)).place.name;
        parts.push(match read.filter(|f| fits(f, &at, reader)) {
            Some(formula) => BracedPart::Formula(formula),
            None => BracedPart::Unread(rest[open..=close].into()),
        });
        rest = &rest[close + 1..];
    }
    words(rest, dress, reader, &mut parts);
    Braced { parts }
}

/// Words in which no formula begins.
fn words(text: &str, dress: &dyn Fn(Finding) -> Finding, reader: &mut FormulaReader<'_>, parts: &mut Vec<BracedPart>) {
    for (i, part) in text.split('}').enumerate() {
        if i > 0 {
            reader.findings.push(dress(Finding::new(Code::BraceStray)));
            parts.push(BracedPart::Unread("}".into()));
        }
        if !part.is_empty() {
            parts.push(BracedPart::Words(part.into()));
        }
    }
}
