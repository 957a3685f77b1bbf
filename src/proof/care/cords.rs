//! Cords, ties and drawstrings of children's garments.

use super::rules::{CORDS, CORDS_EUROPE, FREE_END, NECK_SIZES, USUAL, WAIST_SIZES};
use super::wearer::Wearer;
use super::{Found, both, gathered};
use crate::base::{Code, Finding, tolerance};
use crate::compute::{Formula, Model, NodeId, StripPlan};
use crate::document::{Draft, Strip, StripKind, StripPlace, WornAs};
use crate::proof::tally::Tally;

/// How far free ends may hang out at waist and lower edge, as the rule prints it.
const MOST_OUT: &str = "75 mm (3 in)";

pub(super) fn look(draft: &Draft, model: &Model, wearers: &[Wearer<'_>], found: &mut Found) {
    let mut any = draft.care.worn_as == WornAs::Outerwear;
    for plan in &model.plan.publishing.strips {
        let strip = &draft.strips[plan.place];
        if strip.kind != StripKind::Cord {
            if is_loose(model, plan, strip) {
                found.not_checked(format!(
                    "{} is a {} that no seam sews on: if its ends hang free it is a cord: say so by its kind",
                    strip.name,
                    if strip.kind == StripKind::Binding { "binding" } else { "band" }
                ));
                any = true;
            }
            continue;
        }
        any = true;
        match strip.place {
            StripPlace::Neck => neck(draft, strip, wearers, found),
            StripPlace::Waist | StripPlace::Hem => waist(draft, model, strip, plan.free_end.as_ref(), wearers, found),
            StripPlace::Unstated => found.findings.push(finding(Code::CordUnplaced, strip)),
            StripPlace::Elsewhere => found.not_checked(format!(
                "the cord {}, which is neither at hood or neck nor at waist or lower edge: {CORDS} does not speak of it, {CORDS_EUROPE} may",
                strip.name
            )),
        }
    }
    if any {
        found.not_checked(format!(
            "{CORDS_EUROPE} on cords of children’s clothes, whose numbers differ between editions"
        ));
        found.not_checked(
            "knots, toggles and anything else at the ends of cords; ties and tapes that are no strips of the draft",
        );
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
    Finding::new(code).at(format!("strip.{}", strip.name)).word("strip", &strip.name).word("usual", USUAL)
}

/// Of which sizes a rule speaks, or may speak.
fn of_rule<'a>(wearers: &'a [Wearer<'a>], sizes: (f64, f64)) -> impl Iterator<Item = &'a Wearer<'a>> {
    wearers.iter().filter(move |w| w.is_in(sizes) != Some(false))
}

/// The words for a garment of which the rule for outerwear may not speak.
fn worn(draft: &Draft) -> &'static str {
    match draft.care.worn_as {
        WornAs::Outerwear => "",
        WornAs::Unstated => "; whether it is worn over other clothes is not said",
        _ => "; the rule speaks of clothes that are worn over others, the caution is the same for these",
    }
}

/// None at hood or neck.
fn neck(draft: &Draft, strip: &Strip, wearers: &[Wearer<'_>], found: &mut Found) {
    let sizes: Vec<String> = of_rule(wearers, NECK_SIZES).map(|w| w.size.to_owned()).collect();
    if sizes.is_empty() {
        return;
    }
    let rule = format!("{CORDS} allows none there in sizes 2T to 12{}", worn(draft));
    let mut told = finding(Code::CordAtNeck, strip).word("rule", rule);
    told.sizes.clone_from(&sizes);
    found.findings.push(told);
    found.caution(
        "A cord at hood or neck of a child’s garment",
        format!("{CORDS}; {CORDS_EUROPE}"),
        sizes.clone(),
        vec![
            format!("{} is a cord at hood or neck, in {}.", strip.name, sized(&sizes)),
            "A child can be caught by it and strangled; leave it out, and close the hood or neck another way."
                .to_owned(),
            format!("{CORDS}: none there in sizes 2T to 12{}; by name also {CORDS_EUROPE}.", worn(draft)),
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
    let words = finding(Code::CordEnds, strip).word("rule", format!("{CORDS}{}", worn(draft)));
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
                ends.push(format!("{} in {}", both(is), wearer.size));
            }
            Err(_) => lost.push(wearer.size.to_owned()),
        }
    }
    if sizes.is_empty() {
        return;
    }
    let is_untold = strip.free_end.trim().is_empty();
    if !lost.is_empty() {
        found.not_checked(format!(
            "the free ends of {} in {}: they cannot be computed there",
            strip.name,
            sized(&lost)
        ));
    }
    if !is_untold && free_end.is_none() {
        found.not_checked(format!("the free ends of {}: their formula cannot be read", strip.name));
    }
    if is_untold {
        found.not_checked(format!(
            "how far the free ends of {} hang out, which is not said: say it by `free_end`, `0 cm` where no end is free; {CORDS} wants at most \
             {MOST_OUT}",
            strip.name
        ));
    }
    found.findings.extend(over.done(|f, _| f));
    if !strip.fastened {
        let mut told = finding(Code::CordLoose, strip).word("rule", format!("{CORDS}{}", worn(draft)));
        told.sizes.clone_from(&sizes);
        found.findings.push(told);
    }
    let told = match ends.is_empty() {
        true if is_untold => {
            format!("How far the free ends of {} hang out is not said: look at them, at most {MOST_OUT}.", strip.name)
        }
        true => format!(
            "How far the free ends of {} hang out cannot be computed: look at them, at most {MOST_OUT}.",
            strip.name
        ),
        false => format!("The free ends of {} hang out: {}.", strip.name, ends.join(", ")),
    };
    found.caution(
        "A cord at waist or lower edge of a child’s garment",
        format!("{CORDS}; {CORDS_EUROPE}"),
        sizes,
        vec![
            told,
            format!(
                "{CORDS}, in sizes 2T to 16: at most {MOST_OUT} outside the channel with the garment opened to its full width; nothing at the free \
                 ends, no knot and no toggle; one continuous cord is sewn fast by a bar tack, at the middle of the back{}.",
                worn(draft)
            ),
            format!("By name also {CORDS_EUROPE}, whose numbers differ between editions."),
        ],
    );
}

/// Sizes in words.
fn sized(sizes: &[String]) -> String {
    format!("size{} {}", if sizes.len() == 1 { "" } else { "s" }, gathered(sizes))
}
