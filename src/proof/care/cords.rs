//! Cords, ties and drawstrings of children's garments.

use super::rules::{CORDS_EUROPE, FREE_END, NECK_SIZES, WAIST_SIZES, cords, usual};
use super::wearer::Wearers;
use super::{Found, both, excess};
use crate::base::{Code, Finding, tolerance};
use crate::compute::{Formula, Model, NodeId, StripPlan};
use crate::document::{Draft, Strip, StripKind, StripPlace, WornAs};
use crate::proof::tally::Tally;
use crate::texts::{gathered, readable, t};

pub(super) fn look(draft: &Draft, model: &Model, wearers: &Wearers<'_>, found: &mut Found) {
    let mut any = draft.care.worn_as == WornAs::Outerwear;
    for plan in &model.plan.publishing.strips {
        let strip = &draft.strips[plan.place];
        if strip.kind != StripKind::Cord {
            if is_loose(model, plan, strip) {
                found.not_checked(match strip.kind {
                    StripKind::Binding => t!("care-loose-binding", strip = readable(&strip.name)),
                    _ => t!("care-loose-band", strip = readable(&strip.name)),
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
                let strip = readable(&strip.name);
                found.not_checked(t!("care-cord-elsewhere", strip, rule = cords(), europe = CORDS_EUROPE))
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

/// The words for a garment of which the rule for outerwear may not speak.
fn worn(draft: &Draft) -> String {
    match draft.care.worn_as {
        WornAs::Outerwear => String::new(),
        WornAs::Unstated => format!("; {}", t!("care-worn-unsaid")),
        _ => format!("; {}", t!("care-worn-otherwise")),
    }
}

/// None at hood or neck.
fn neck(draft: &Draft, strip: &Strip, wearers: &Wearers<'_>, found: &mut Found) {
    let sizes: Vec<String> = wearers.of_rule(NECK_SIZES, found).iter().map(|w| w.size.to_owned()).collect();
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
            t!("care-neck-is", strip = readable(&strip.name), sizes = wearers.sized(&sizes)),
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
    wearers: &Wearers<'_>,
    found: &mut Found,
) {
    let numbers = [("is", "mm"), ("most", "mm"), ("over", "mm")];
    let words = finding(Code::CordEnds, strip).word("rule", format!("{}{}", cords(), worn(draft)));
    let mut over = Tally::new(words, &numbers);
    let mut sizes = Vec::new();
    let mut ends = BySize::default();
    let mut too_much = BySize::default();
    let mut lost = Vec::new();
    for wearer in wearers.of_rule(WAIST_SIZES, found) {
        sizes.push(wearer.size.to_owned());
        let Some(formula) = free_end else { continue };
        match model.real(wearer.case, formula) {
            Ok(is) => {
                if is > FREE_END + tolerance::EQUAL {
                    over.add(wearer.size, &[is, FREE_END, is - FREE_END]);
                    too_much.add(excess(is - FREE_END), wearer.size);
                }
                ends.add(both(is), wearer.size);
            }
            Err(_) => lost.push(wearer.size.to_owned()),
        }
    }
    if sizes.is_empty() {
        return;
    }
    let name = readable(&strip.name);
    let is_untold = strip.free_end.trim().is_empty();
    if !lost.is_empty() {
        found.not_checked(t!("care-ends-lost", strip = name, sizes = wearers.sized(&lost)));
    }
    if !is_untold && free_end.is_none() {
        found.not_checked(t!("care-ends-unread", strip = name));
    }
    if is_untold {
        found.not_checked(t!("care-ends-untold", strip = name, rule = cords()));
    }
    found.findings.extend(over.done(|f, _| f));
    if !strip.fastened {
        let mut told = finding(Code::CordLoose, strip).word("rule", format!("{}{}", cords(), worn(draft)));
        told.sizes.clone_from(&sizes);
        found.findings.push(told);
    }
    let mut text = vec![match ends.of.is_empty() {
        true if is_untold => t!("care-ends-look", strip = name),
        true => t!("care-ends-look-lost", strip = name),
        false => t!(
            "care-ends-are",
            strip = name,
            ends = ends.words(wearers, |length, sizes| t!("care-end-in", length, sizes))
        ),
    }];
    if !too_much.of.is_empty() {
        let over = too_much.words(wearers, |over, sizes| t!("care-end-over", over, sizes));
        text.push(t!("care-ends-over", over, rule = cords()));
    }
    if !strip.fastened {
        text.push(t!("care-cord-loose", strip = name, rule = cords()));
    }
    text.push(t!("care-waist-rule", rule = cords(), worn = worn(draft)));
    text.push(t!("care-waist-europe", europe = CORDS_EUROPE));
    found.caution(t!("care-waist-title"), format!("{}; {CORDS_EUROPE}", cords()), sizes, text);
}

/// Words that hold in some sizes; those that read alike are told once.
#[derive(Default)]
struct BySize {
    of: Vec<(String, Vec<String>)>,
}

impl BySize {
    fn add(&mut self, words: String, size: &str) {
        match self.of.iter_mut().find(|(known, _)| *known == words) {
            Some((_, sizes)) => sizes.push(size.to_owned()),
            None => self.of.push((words, vec![size.to_owned()])),
        }
    }

    fn words(&self, wearers: &Wearers<'_>, one: impl Fn(&str, String) -> String) -> String {
        let all: Vec<String> = self.of.iter().map(|(words, sizes)| one(words, wearers.sized(sizes))).collect();
        gathered(&all)
    }
}
