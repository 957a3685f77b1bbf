//! Small parts on garments for children under three.

use super::Found;
use super::rules::{PARTS, PARTS_YEARS, cylinder, usual};
use super::wearer::Wearer;
use crate::base::{Code, Finding};
use crate::compute::Model;
use crate::document::{Draft, MarkKind};
use crate::texts::{gathered, t};

pub(super) fn look(draft: &Draft, model: &Model, wearers: &[Wearer<'_>], found: &mut Found) {
    let is_small = |w: &&Wearer<'_>| w.years.is_none_or(|(from, _)| from < PARTS_YEARS);
    let sizes: Vec<String> = wearers.iter().filter(is_small).map(|w| w.size.to_owned()).collect();
    let parts = parts(draft, model);
    if sizes.is_empty() || parts.is_empty() {
        return;
    }
    let mut told = Finding::new(Code::SmallParts).at("care").word("parts", gathered(&parts)).word("rule", PARTS);
    told.sizes.clone_from(&sizes);
    found.findings.push(told.word("usual", usual()));
    found.caution(
        t!("care-parts-title"),
        PARTS.to_owned(),
        sizes,
        vec![
            t!("care-parts-on-it", parts = gathered(&parts)),
            t!("care-parts-rule", rule = PARTS, cylinder = cylinder()),
            t!("care-parts-do"),
        ],
    );
    found.not_checked(t!("care-parts-unchecked", rule = PARTS));
}

/// What is sewn on that a child could swallow: marked buttons, and everything that is bought.
fn parts(draft: &Draft, model: &Model) -> Vec<String> {
    let mut out = Vec::new();
    for piece in &draft.pieces {
        let frame = model.plan.frames().iter().position(|f| f.is_piece && *f.name == *piece.name);
        // A block of which pieces are made, and which is cut from nothing itself, is no part of the garment.
        let is_block = model.bases.contains(&piece.name) && piece.cuts.is_empty();
        if is_block || !frame.is_some_and(|f| model.plan.has_frame(f)) {
            continue;
        }
        for mark in piece.marks.iter().filter(|m| m.kind == MarkKind::Button) {
            let many = if mark.count > 1 { format!(" ({})", mark.count) } else { String::new() };
            out.push(format!("{}.{}{many}", piece.name, mark.name));
        }
    }
    let many = |count: u32| if count > 1 { format!(" ({count})") } else { String::new() };
    out.extend(draft.notions.iter().map(|n| format!("{}{}", n.name, many(n.count))));
    out
}
