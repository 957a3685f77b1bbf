//! Putting what was gathered into a draft.

use super::gather::{Gathered, as_taken, digest, first_name};
use crate::document::{Axis, Draft, Part, TakenBlock, TakenPart};
use crate::session::rename::qualify_as;
use crate::texts::say;

/// Whether a part stays the draft's own where it has one of that name.
pub(super) fn is_shared(draft: &Draft, part: &Part) -> bool {
    match part {
        Part::Row(n) => draft.chart.rows.iter().any(|r| r.name == *n),
        Part::Material(n) => draft.materials.iter().any(|m| m.name == *n),
        _ => false,
    }
}

/// A draft without sizes gets those of the block; says whether it did.
pub(super) fn sizes(draft: &mut Draft, source: &Draft) -> bool {
    let (own, other) = (&mut draft.chart, &source.chart);
    let has = Axis::ALL.into_iter().any(|a| !own.labels(a).is_empty());
    if has || Axis::ALL.into_iter().all(|a| other.labels(a).is_empty()) {
        return false;
    }
    own.girth.clone_from(&other.girth);
    own.cup.clone_from(&other.cup);
    own.length.clone_from(&other.length);
    own.base.clone_from(&other.base);
    own.sets.clone_from(&other.sets);
    own.sets.iter_mut().for_each(|s| s.sheets.clear());
    true
}

/// Puts these of the gathered parts in, each in the place of the one that has its name, else behind its like. Formulas that would become
/// double get the longer spelling of what they meant.
pub(super) fn bring(draft: &mut Draft, gathered: &Gathered, parts: &[(Part, Part)]) {
    fn put<T: Clone>(list: &mut Vec<T>, new: Vec<T>, name: impl Fn(&T) -> String) {
        for one in new {
            match list.iter_mut().find(|t| name(t) == name(&one)) {
                Some(old) => *old = one,
                None => list.push(one),
            }
        }
    }
    let before = draft.clone();
    for (_, here) in parts {
        let mut new = gathered.draft.only(here);
        for row in &mut new.chart.rows {
            let chart = &draft.chart;
            let axes = row.by.clone();
            row.cells.retain(|c| {
                let known = |(label, axis): (&str, &Axis)| chart.labels(*axis).iter().any(|l| l == label.trim());
                c.0.split('/').zip(&axes).all(known)
            });
        }
        put(&mut draft.chart.rows, new.chart.rows, |r| r.name.clone());
        put(&mut draft.values, new.values, |v| v.name.clone());
        put(&mut draft.drawings, new.drawings, |d| d.name.clone());
        put(&mut draft.pieces, new.pieces, |p| p.name.clone());
        put(&mut draft.placements, new.placements, |p| p.name.clone());
        put(&mut draft.seams, new.seams, |s| s.name.clone());
        put(&mut draft.joints, new.joints, |j| j.name.clone());
        put(&mut draft.conditions, new.conditions, |c| c.name.clone());
        put(&mut draft.measures, new.measures, |m| m.name.clone());
        put(&mut draft.materials, new.materials, |m| m.name.clone());
        put(&mut draft.strips, new.strips, |s| s.name.clone());
    }
    let is_new = |part: &Part| parts.iter().any(|(_, p)| p == part || part.frame() == p.frame() && p.frame().is_some());
    qualify_as(draft, &before, &gathered.draft, &is_new);
}

/// What the head of the other draft says goes along.
pub(super) fn head(block: &mut TakenBlock, source: &Draft) {
    block.title.clone_from(&source.title);
    block.author.clone_from(&source.author);
    block.licence.clone_from(&source.licence);
    block.contact.clone_from(&source.contact);
    block.edition.clone_from(&source.edition);
    block.date.clone_from(&source.date);
}

/// What it says otherwise than it did.
pub(super) fn head_changes(block: &TakenBlock, source: &Draft) -> Vec<String> {
    let pairs = [
        (say!("field-title"), &block.title, &source.title),
        (say!("field-author"), &block.author, &source.author),
        (say!("field-licence"), &block.licence, &source.licence),
        (say!("field-contact"), &block.contact, &source.contact),
        (say!("field-edition"), &block.edition, &source.edition),
        (say!("field-date"), &block.date, &source.date),
    ];
    let quoted = |text: &str| if text.is_empty() { say!("head-none") } else { say!("head-quoted", text) };
    let changed = pairs.iter().filter(|(_, was, is)| was != is);
    changed.map(|(what, was, is)| say!("head-instead", what, now = quoted(is), was = quoted(was))).collect()
}

/// What is written down of a part that was taken; what it is here is told by [`digests`].
pub(super) fn taken(there: &Part, here: &Part, source: &Draft) -> TakenPart {
    TakenPart {
        part: there.to_string(),
        name: here.name().to_owned(),
        there: digest(source, there),
        ..TakenPart::default()
    }
}

/// What the parts of a block are here, each in the order of the block.
pub(super) fn digests(draft: &Draft, block: &TakenBlock) -> Vec<String> {
    let draft = as_taken(draft, block);
    let of = |t: &TakenPart| {
        let there = Part::of_words(&t.part);
        there.map_or_else(String::new, |p| digest(&draft, &p.renamed(&first_name(block, t, &p))))
    };
    block.parts.iter().map(of).collect()
}

/// "2 pieces, 1 seam".
pub(super) fn counted<'a>(parts: impl Iterator<Item = &'a Part>) -> String {
    let mut many: Vec<(&Part, usize)> = Vec::new();
    for part in parts {
        match many.iter_mut().find(|(first, _)| first.word() == part.word()) {
            Some((_, count)) => *count += 1,
            None => many.push((part, 1)),
        }
    }
    many.into_iter().map(|(part, count)| counted_kind(part, count)).collect::<Vec<_>>().join(", ")
}

/// So many of a kind; of what a block can bring.
fn counted_kind(part: &Part, count: usize) -> String {
    match part {
        Part::Row(_) => say!("count-rows", count),
        Part::Value(_) => say!("count-values", count),
        Part::Drawing(_) => say!("count-drawings", count),
        Part::Piece(_) => say!("count-pieces", count),
        Part::Placement(_) => say!("count-placements", count),
        Part::Seam(_) => say!("count-seams", count),
        Part::Joint(_) => say!("count-joints", count),
        Part::Condition(_) => say!("count-conditions", count),
        Part::Measure(_) => say!("count-measures", count),
        Part::Material(_) => say!("count-materials", count),
        Part::Strip(_) => say!("count-strips", count),
        other => say!("count-others", count, kind = other.kind_words()),
    }
}

/// Which rows and materials stay the draft's own though the block has others by that name.
pub(super) fn shared_words(draft: &Draft, other: &Draft, common: &[(Part, Part)]) -> String {
    let differ: Vec<String> = common
        .iter()
        .filter(|(_, here)| digest(draft, here) != digest(other, here))
        .map(|(_, here)| here.words())
        .collect();
    if differ.is_empty() {
        return String::new();
    }
    say!("told-own-stays", parts = differ.join(", "))
}
