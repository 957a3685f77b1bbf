//! Strips, notions, cloth, booklet: formulas without a value, strips that do not come out of their cloth, notions that are not sold.

use super::judged;
use super::tally::Tally;
use crate::base::{Code, Finding};
use crate::compute::{Formula, Model, StripPlan, told_of};
use crate::document::{Draft, StripGrain, StripKind};
use crate::finish::{CutStrip, NoYield, NotionSize, is_stretched, widths};
use crate::language::Kind;
use crate::texts::{decimal, id, length, own, owned, said, say};

pub(super) fn check(draft: &Draft, model: &Model) -> Vec<Finding> {
    let mut out = Vec::new();
    for (at, formula) in model.plan.publishing.formulas(draft) {
        without_value(model, formula, &|f| f.at(at.clone()), &mut out);
    }
    let plan = &model.plan;
    for strip in plan.publishing.strips.iter().filter(|s| plan.is_needed(s.length)) {
        out.extend(cloth_of(draft, model, strip));
        out.extend(grain_of(draft, model, strip));
    }
    out.extend(notions(draft, model));
    out
}

/// A strip against the widths in which its cloth is sold.
fn cloth_of(draft: &Draft, model: &Model, plan: &StripPlan) -> Vec<Finding> {
    let strip = &draft.strips[plan.place];
    let finding = |code: Code| {
        let at = format!("strip.{}", strip.name);
        Finding::new(code).at(at).word("strip", strip.name.clone()).word("material", strip.material.clone())
    };
    if strip.material.is_empty() {
        return Vec::new();
    }
    let Some(material) =
        model.plan.publishing.materials.iter().find(|m| draft.materials[m.place].name == strip.material)
    else {
        let problem = say!("strip-no-material", material = strip.material);
        return vec![finding(Code::PartMissing).word("problem", problem)];
    };
    if draft.materials[material.place].widths.is_empty() {
        return vec![finding(Code::StripNoWidth)];
    }
    let numbers = |what| [("length", "mm"), ("wide", "mm"), ("sold", "mm"), (what, "mm"), ("beyond", "mm")];
    let mut out = Vec::new();
    for (i, width) in material.widths.iter().enumerate() {
        let mut long =
            Tally::new(finding(Code::StripNotJoined).word("width", width.text.to_string()), &numbers("most"));
        let mut wide =
            Tally::new(finding(Code::StripTooWide).word("width", width.text.to_string()), &numbers("usable"));
        for (case, size, _) in judged(model) {
            let cut = CutStrip::of(model, case, plan, strip);
            let Some(Some((sold, usable))) = widths(model, case, material).get(i).map(|w| w.1) else { continue };
            let (length, across) = (cut.cut.unwrap_or(f64::NAN), cut.cut_width.unwrap_or(f64::NAN));
            match cut.from_cloth(usable) {
                Some(Err(NoYield::NotJoined(most))) => long.add(size, &[length, across, sold, most, length - most]),
                Some(Err(_)) => wide.add(size, &[length, across, sold, usable, across - usable]),
                _ => {}
            }
        }
        out.extend([long, wide].into_iter().filter_map(|t| t.done(|f, _| f)));
    }
    out
}

/// A strip that is to stretch, cut along or across the thread of cloth of which nothing says that it stretches.
fn grain_of(draft: &Draft, model: &Model, plan: &StripPlan) -> Option<Finding> {
    let strip = &draft.strips[plan.place];
    let material = draft.materials.iter().find(|m| m.name == strip.material)?;
    let (way, stretch) = match strip.grain {
        StripGrain::Along => (id!("strip-along"), &material.stretch_along),
        StripGrain::Across => (id!("strip-across"), &material.stretch_across),
        StripGrain::Bias => return None,
    };
    if strip.kind == StripKind::Elastic || !stretch.is_empty() || !is_stretched(model, plan.length) {
        return None;
    }
    let finding =
        Finding::new(Code::StripGrainOff).at(format!("strip.{}", strip.name)).word("strip", strip.name.clone());
    Some(finding.word("way", said(own(), way, &[])).word("material", strip.material.clone()))
}

/// Notions of which no size that is sold is large enough.
fn notions(draft: &Draft, model: &Model) -> Vec<Finding> {
    let mut out = Vec::new();
    for plan in &model.plan.publishing.notions {
        let Some(kind) = plan.size.as_ref().map(|f| f.kind) else { continue };
        let name = &draft.notions[plan.place].name;
        let finding = Finding::new(Code::NotionTooLong).at(format!("notion {name}")).word("notion", name.clone());
        let unit = if kind == Kind::LENGTH { "mm" } else { "" };
        let mut tally = Tally::new(finding, &[("size", unit), ("largest", unit), ("short", unit)]);
        for (case, size, _) in judged(model) {
            let of = NotionSize::of(model, case, plan);
            if let (true, Some(needed), Some(largest)) = (of.is_too_long(), of.needed, of.largest) {
                tally.add(size, &[needed, largest, needed - largest]);
            }
        }
        let say = |value: f64| match kind {
            Kind::LENGTH => owned(|| length(value, draft.display)),
            _ => owned(|| decimal(&value.to_string())),
        };
        out.extend(tally.done(|f, numbers| f.word("needed", say(numbers[0])).word("sold", say(numbers[1]))));
    }
    out
}

/// Tells in which sizes a formula that nothing in the graph hangs on has no value, each reason once.
pub(super) fn without_value(
    model: &Model,
    formula: &Formula,
    dress: &dyn Fn(Finding) -> Finding,
    out: &mut Vec<Finding>,
) {
    let mut told: Vec<Finding> = Vec::new();
    for (case, size, _) in judged(model) {
        let Err(stop) = model.evaluate(&model.plan, case, formula) else { continue };
        let Some(mut finding) = told_of(&stop).map(dress) else { continue };
        match told.iter_mut().find(|f| f.code == finding.code && f.words == finding.words) {
            Some(known) => known.sizes.push(size.to_owned()),
            None => {
                finding.sizes = vec![size.to_owned()];
                told.push(finding);
            }
        }
    }
    out.append(&mut told);
}
