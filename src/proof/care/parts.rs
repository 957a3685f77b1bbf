//! Small parts on garments for children under three.

use super::Found;
use super::rules::{PARTS, PARTS_AGES, cylinder, usual};
use super::wearer::Wearers;
use crate::base::{Code, Finding};
use crate::compute::Model;
use crate::document::{Draft, MarkKind};
use crate::texts::{gathered, readable, t};

pub(super) fn look(draft: &Draft, model: &Model, wearers: &Wearers<'_>, found: &mut Found) {
    let (parts, said): (Vec<String>, Vec<String>) = parts(draft, model).into_iter().unzip();
    if parts.is_empty() {
        return;
    }
    let sizes: Vec<String> = wearers.of_rule(PARTS_AGES, found).iter().map(|w| w.size.to_owned()).collect();
    if sizes.is_empty() {
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
            t!("care-parts-on-it", parts = gathered(&said)),
            t!("care-parts-rule", rule = PARTS, cylinder = cylinder()),
            t!("care-parts-do"),
        ],
    );
    found.not_checked(t!("care-parts-unchecked", rule = PARTS));
}

/// What is sewn on that a child could swallow: marked buttons, and everything that is bought. Each as the draft calls it, and as it is said
/// to buyers.
fn parts(draft: &Draft, model: &Model) -> Vec<(String, String)> {
    let counted = |name: String, count: u32| if count > 1 { format!("{name} ({count})") } else { name };
    let mut out = Vec::new();
    for piece in &draft.pieces {
        let frame = model.plan.frames().iter().position(|f| f.is_piece && *f.name == *piece.name);
        // A block of which pieces are made, and which is cut from nothing itself, is no part of the garment.
        let is_block = model.bases.contains(&piece.name) && piece.cuts.is_empty();
        if is_block || !frame.is_some_and(|f| model.plan.has_frame(f)) {
            continue;
        }
        for mark in piece.marks.iter().filter(|m| m.kind == MarkKind::Button) {
            let said = t!("care-part-mark", mark = readable(&mark.name), piece = readable(&piece.name));
            let called = format!("{}.{}", piece.name, mark.name);
            out.push((counted(called, mark.count), counted(said, mark.count)));
        }
    }
    let notions = draft.notions.iter();
    out.extend(notions.map(|n| (counted(n.name.clone(), n.count), counted(readable(&n.name), n.count))));
    out
}
