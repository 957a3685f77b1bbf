//! What comes along with pieces of a draft: all that they need, and what is said between them.

use std::collections::{BTreeMap, BTreeSet};

use crate::document::{Address, Draft, Inner, Part, TakenBlock, TakenPart};
use crate::file::{Fingerprint, write};
use crate::session::EditError;
use crate::session::references::references;
use crate::session::rename;
use crate::texts::say;

/// Pieces with all that they need.
pub(super) struct Gathered {
    /// The draft that they come from, under the names that they get here.
    pub draft: Draft,
    /// Each part as it is called there, and here; in the order of the draft.
    pub parts: Vec<(Part, Part)>,
}

impl Gathered {
    /// `known`: what was taken before, with the names that it has here. `is_free`: whether a row or material can keep its name here.
    pub fn of(
        source: &Draft,
        pieces: &[String],
        prefix: &str,
        known: &[TakenPart],
        is_free: &dyn Fn(&Part) -> bool,
    ) -> Result<Self, EditError> {
        for name in pieces {
            if !source.pieces.iter().any(|p| p.name == *name) {
                let all: Vec<&str> = source.pieces.iter().map(|p| p.name.as_str()).collect();
                return Err(EditError::refused(say!("block-no-piece", name, pieces = all.join(", "))));
            }
        }
        let needed = needed(source, pieces);
        let mut draft = source.clone();
        let mut parts = Vec::new();
        for there in in_order(source).into_iter().filter(|p| needed.contains(p)) {
            let is_common = matches!(there, Part::Row(_) | Part::Material(_)) && is_free(&there);
            let known = known.iter().find(|t| t.part == there.to_string());
            let name = known.map(|t| t.name.clone()).unwrap_or_else(|| {
                if is_common { there.name().to_owned() } else { format!("{prefix}{}", there.name()) }
            });
            rename(&mut draft, &there, &name)
                .map_err(|e| EditError::refused(say!("block-part", part = there.words(), problem = e.to_string())))?;
            let here = there.renamed(&name);
            for (inner, name) in known.map_or(&[][..], |t| &t.names) {
                // What is gone there has no name to be kept.
                if let Some(inner) = inner_of(here.name(), inner) {
                    let _ = rename(&mut draft, &inner, name);
                }
            }
            parts.push((there, here));
        }
        Ok(Self { draft, parts })
    }
}

/// A point, edge or whatever else of a piece, by its word and name.
fn inner_of(frame: &str, words: &str) -> Option<Part> {
    let (word, name) = words.rsplit_once(' ')?;
    let inner = Inner::ALL.into_iter().find(|i| i.word() == word)?;
    Some(Part::Inner(frame.to_owned(), inner, name.to_owned()))
}

/// The draft under the names that what was taken had when it was taken.
pub(super) fn as_taken(draft: &Draft, block: &TakenBlock) -> Draft {
    let mut out = draft.clone();
    for taken in &block.parts {
        let Some(there) = Part::of_words(&taken.part) else { continue };
        for (inner, here) in &taken.names {
            if let (Some(was), Some((_, name))) = (inner_of(&taken.name, inner), inner.rsplit_once(' ')) {
                // Where that name is taken by now, the part counts as changed.
                let _ = rename(&mut out, &was.renamed(here), name);
            }
        }
        let _ = rename(&mut out, &there.renamed(&taken.name), &first_name(block, taken, &there));
    }
    out
}

/// The name that a part got here when it was taken.
pub(super) fn first_name(block: &TakenBlock, taken: &TakenPart, there: &Part) -> String {
    let with = format!("{}{}", block.prefix, there.name());
    let is_common = matches!(there, Part::Row(_) | Part::Material(_));
    if taken.name == with || !is_common { with } else { there.name().to_owned() }
}

/// The part of a draft in which something stands.
fn whole(draft: &Draft, part: &Part) -> Option<Part> {
    Some(match part {
        Part::Inner(frame, ..) if draft.drawings.iter().any(|d| d.name == *frame) => Part::Drawing(frame.clone()),
        Part::Inner(frame, ..) => Part::Piece(frame.clone()),
        Part::Draft | Part::Kept | Part::View(_) | Part::Step(_) | Part::Sheet(_) => return None,
        Part::SizeSet(_) | Part::Person(_) | Part::Notion(_) => return None,
        other => other.clone(),
    })
}

/// What is said about pieces from outside of them: it comes along if all of them do.
fn is_between(part: &Part) -> bool {
    matches!(part, Part::Placement(_) | Part::Seam(_) | Part::Joint(_) | Part::Condition(_) | Part::Measure(_))
}

fn needed(draft: &Draft, pieces: &[String]) -> BTreeSet<Part> {
    let mut needs: BTreeMap<Part, BTreeSet<Part>> = BTreeMap::new();
    let mut texts: BTreeMap<Address, String> = BTreeMap::new();
    draft.clone().each_text(&mut |at, _, text| {
        texts.insert(at.clone(), text.clone());
    });
    for occurrence in references(draft).all {
        let Some(owner) = whole(draft, &occurrence.at.part) else { continue };
        if occurrence.meanings.is_empty() {
            // What cannot be followed is at least in that piece.
            let name = texts.get(&occurrence.at).map(|text| occurrence.span.of(text));
            let first = name.and_then(|n| n.split('.').next());
            let piece = draft.pieces.iter().find(|p| first == Some(p.name.as_str()));
            needs.entry(owner.clone()).or_default().extend(piece.map(|p| Part::Piece(p.name.clone())));
        }
        let named = occurrence.meanings.iter().flat_map(|m| m.parts()).filter_map(|(_, p)| whole(draft, p));
        needs.entry(owner).or_default().extend(named);
    }
    // A value that is found needs what it is found by.
    let seams = draft.seams.iter().map(|s| (Part::Seam(s.name.clone()), &s.found_by));
    let conditions = draft.conditions.iter().map(|c| (Part::Condition(c.name.clone()), &c.found_by));
    for (equation, values) in seams.chain(conditions) {
        for value in values {
            needs.entry(Part::Value(value.clone())).or_default().insert(equation.clone());
        }
    }
    let mut out: BTreeSet<Part> = BTreeSet::new();
    let mut open: Vec<Part> = pieces.iter().map(|p| Part::Piece(p.clone())).collect();
    loop {
        while let Some(part) = open.pop() {
            if out.insert(part.clone()) {
                open.extend(needs.get(&part).into_iter().flatten().cloned());
            }
        }
        // Rows and cloth may always come along, and so may the strip that a seam sews on.
        let is_common = |p: &Part| matches!(p, Part::Row(_) | Part::Material(_) | Part::Strip(_));
        for (part, of) in needs.iter().filter(|(p, _)| is_between(p) && !out.contains(*p)) {
            let mut told = of.iter().filter(|p| **p != *part && !is_common(p)).peekable();
            if told.peek().is_some() && told.all(|p| out.contains(p)) {
                open.push(part.clone());
            }
        }
        if open.is_empty() {
            break;
        }
    }
    let all: BTreeSet<Part> = in_order(draft).into_iter().collect();
    out.retain(|p| all.contains(p));
    out
}

/// All parts that can come along, in the order of the draft.
fn in_order(draft: &Draft) -> Vec<Part> {
    let mut out: Vec<Part> = draft.chart.rows.iter().map(|r| Part::Row(r.name.clone())).collect();
    out.extend(draft.values.iter().map(|v| Part::Value(v.name.clone())));
    out.extend(draft.drawings.iter().map(|d| Part::Drawing(d.name.clone())));
    out.extend(draft.pieces.iter().map(|p| Part::Piece(p.name.clone())));
    out.extend(draft.placements.iter().map(|p| Part::Placement(p.name.clone())));
    out.extend(draft.seams.iter().map(|s| Part::Seam(s.name.clone())));
    out.extend(draft.joints.iter().map(|j| Part::Joint(j.name.clone())));
    out.extend(draft.conditions.iter().map(|c| Part::Condition(c.name.clone())));
    out.extend(draft.measures.iter().map(|m| Part::Measure(m.name.clone())));
    out.extend(draft.materials.iter().map(|m| Part::Material(m.name.clone())));
    out.extend(draft.strips.iter().map(|s| Part::Strip(s.name.clone())));
    out
}

/// Sixteen digits that are others when anything typed in a part is; empty if the part is not there.
pub(super) fn digest(draft: &Draft, part: &Part) -> String {
    let alone = draft.only(part);
    if alone == Draft::default() { String::new() } else { Fingerprint::of(write(&alone).as_bytes()).digest() }
}
