//! Cords, ties and drawstrings of children's garments.

use super::rules::{CORDS_EUROPE, FREE_END, NECK_SIZES, WAIST_SIZES, cords, usual};
use super::wearer::Wearer;
use super::{Found, both};
use crate::base::{Code, Finding, tolerance};
use crate::compute::{Formula, Model, NodeId, StripPlan};
use crate::document::{Draft, Strip, StripKind, StripPlace, WornAs};
use crate::proof::tally::Tally;
use crate::texts::{gathered, t};

pub(super) fn look(draft: &Draft, model: &Model, wearers: &[Wearer<'_>], found: &mut Found) {
    let mut any = draft.care.worn_as == WornAs::Outerwear;
    for plan in &model.plan.publishing.strips {
        let strip = &draft.strips[plan.place];
        if strip.kind != StripKind::Cord {
            if is_loose(model, plan, strip) {
                found.not_checked(match strip.kind {
                    StripKind::Binding => t!("care-loose-binding", strip = strip.name),
                    _ => t!("care-loose-band", strip = strip.name),
                });
                any = true;
            }
            continue;
        }
        any = true;
        match strip.place {
            StripPlace::Neck => neck(draft, strip, wearers, found),
            StripPlace::Waist | StripPlace::Hem => waist(draft, model, strip, plan.free_end.as_ref(), wearers, found),
            StripPlace::Unstated => found.findings.push(finding(Code::CordUnplaced, strip)),
            StripPlace::Elsewhere => {
                found.not_checked(t!("care-cord-elsewhere", strip = strip.name, rule = cords(), europe = CORDS_EUROPE))
            }
        }
    }
    if any {
        found.not_checked(t!("care-cords-europe", europe = CORDS_EUROPE));
        found.not_checked(t!("care-cords-unchecked"));
    }
}

/// Whether a band or binding may hang loose as far as the draft tells: it is no part of a side of a seam, and not told to be elsewhere than
/// where cords are spoken of.
fn is_loose(model: &Model, plan: &StripPlan, strip: &Strip) -> bool {
    let is_sewn = |side: &NodeId| model.plan.nodes[*side as usize].deps.contains(&plan.length);
    matches!(strip.kind, StripKind::Band | StripKind::Binding)
        && strip.place != StripPlace::Elsewhere
        && !model.plan.seams.iter().any(|seam| seam.sides[..2].iter().any(is_sewn))
}

fn finding(code: Code, strip: &Strip) -> Finding {
    Finding::new(code).at(format!("strip.{}", strip.name)).word("strip", &strip.name).word("usual", usual())
}

/// Of which sizes a rule speaks, or may speak.
fn of_rule<'a>(wearers: &'a [Wearer<'a>], sizes: (f64, f64)) -> impl Iterator<Item = &'a Wearer<'a>> {
    wearers.iter().filter(move |w| w.is_in(sizes) != Some(false))
}

/// The words for a garment of which the rule for outerwear may not speak.
fn worn(draft: &Draft) -> String {
    match draft.care.worn_as {
        WornAs::Outerwear => String::new(),
        WornAs::Unstated => format!("; {}", t!("care-worn-unsaid")),
        _ => format!("; {}", t!("care-worn-otherwise")),
    }
}

/// None at hood or neck.
fn neck(draft: &Draft, strip: &Strip, wearers: &[Wearer<'_>], found: &mut Found) {
    let sizes: Vec<String> = of_rule(wearers, NECK_SIZES).map(|w| w.size.to_owned()).collect();
    if sizes.is_empty() {
        return;
    }
    let rule = t!("care-neck-allows", rule = cords(), worn = worn(draft));
    let mut told = finding(Code::CordAtNeck, strip).word("rule", rule);
    told.sizes.clone_from(&sizes);
    found.findings.push(told);
    found.caution(
        t!("care-neck-title"),
        format!("{}; {CORDS_EUROPE}", cords()),
        sizes.clone(),
        vec![
            t!("care-neck-is", strip = strip.name, sizes = sized(&sizes)),
            t!("care-neck-do"),
            t!("care-neck-rule", rule = cords(), worn = worn(draft), europe = CORDS_EUROPE),
        ],
    );
}

/// At waist or lower edge: short ends, sewn fast.
fn waist(
    draft: &Draft,
    model: &Model,
    strip: &Strip,
    free_end: Option<&Formula>,
    wearers: &[Wearer<'_>],
    found: &mut Found,
) {
    let numbers = [("is", "mm"), ("most", "mm"), ("over", "mm")];
    let words = finding(Code::CordEnds, strip).word("rule", format!("{}{}", cords(), worn(draft)));
    let mut over = Tally::new(words, &numbers);
    let mut sizes = Vec::new();
    let mut ends: Vec<String> = Vec::new();
    let mut lost = Vec::new();
    for wearer in of_rule(wearers, WAIST_SIZES) {
        sizes.push(wearer.size.to_owned());
        let Some(formula) = free_end else { continue };
        match model.real(wearer.case, formula) {
            Ok(is) => {
                if is > FREE_END + tolerance::EQUAL {
                    over.add(wearer.size, &[is, FREE_END, is - FREE_END]);
                }
                ends.push(t!("care-end-in", length = both(is), size = wearer.size));
            }
            Err(_) => lost.push(wearer.size.to_owned()),
        }
    }
    if sizes.is_empty() {
        return;
    }
    let is_untold = strip.free_end.trim().is_empty();
    if !lost.is_empty() {
        found.not_checked(t!("care-ends-lost", strip = strip.name, sizes = sized(&lost)));
    }
    if !is_untold && free_end.is_none() {
        found.not_checked(t!("care-ends-unread", strip = strip.name));
    }
    if is_untold {
        found.not_checked(t!("care-ends-untold", strip = strip.name, rule = cords()));
    }
    found.findings.extend(over.done(|f, _| f));
    if !strip.fastened {
        let mut told = finding(Code::CordLoose, strip).word("rule", format!("{}{}", cords(), worn(draft)));
        told.sizes.clone_from(&sizes);
        found.findings.push(told);
    }
    let told = match ends.is_empty() {
        true if is_untold => t!("care-ends-look", strip = strip.name),
        true => t!("care-ends-look-lost", strip = strip.name),
        false => t!("care-ends-are", strip = strip.name, ends = ends.join(", ")),
    };
    found.caution(
        t!("care-waist-title"),
        format!("{}; {CORDS_EUROPE}", cords()),
        sizes,
        vec![
            told,
            t!("care-waist-rule", rule = cords(), worn = worn(draft)),
            t!("care-waist-europe", europe = CORDS_EUROPE),
        ],
    );
}

/// Sizes in words.
fn sized(sizes: &[String]) -> String {
    t!("care-sizes", count = sizes.len(), sizes = gathered(sizes))
}
