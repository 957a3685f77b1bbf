//! Children's sleepwear: what fits close is held against the most of the rules; what does not calls for cloth that resists flames.

use super::rules::{SLEEPWEAR_SIZES, TIGHT, TightRow, sleepwear, usual};
use super::wearer::{Wearer, Wearers as Worn};
use super::{Found, both, excess};
use crate::base::{Code, Finding, tolerance};
use crate::compute::Model;
use crate::document::{Draft, GirthPlace, Wearers, WornAs};
use crate::proof::tally::Tally;
use crate::texts::{decimal, gathered, say, t};

pub(super) fn look(draft: &Draft, model: &Model, wearers: &Worn<'_>, found: &mut Found) {
    let is_close = match draft.care.worn_as {
        WornAs::TightSleepwear => true,
        WornAs::Sleepwear => false,
        _ => return,
    };
    match wearers.of_rule(SLEEPWEAR_SIZES, found).as_slice() {
        [] => {}
        of_rule if is_close => close(draft, model, of_rule, found),
        of_rule => loose(of_rule, found),
    }
}

fn loose(wearers: &[&Wearer<'_>], found: &mut Found) {
    let sizes: Vec<String> = wearers.iter().map(|w| w.size.to_owned()).collect();
    let mut told = Finding::new(Code::SleepwearLoose).at("care").word("rule", sleepwear()).word("usual", usual());
    told.sizes.clone_from(&sizes);
    found.findings.push(told);
    found.caution(
        t!("care-loose-title"),
        sleepwear(),
        sizes,
        vec![t!("care-loose-fire"), t!("care-loose-rule", rule = sleepwear()), t!("care-loose-cloth")],
    );
    found.not_checked(t!("care-loose-unchecked"));
}

/// The row of a size for these wearers.
fn row(rule: &str, wearers: Wearers) -> Option<&'static TightRow> {
    TIGHT.iter().find(|row| row.size == rule && row.is_for(wearers))
}

fn close(draft: &Draft, model: &Model, wearers: &[&Wearer<'_>], found: &mut Found) {
    let mut rows: Vec<(&Wearer<'_>, &TightRow)> = Vec::new();
    let mut without: Vec<String> = Vec::new();
    for wearer in wearers {
        match wearer.rule.as_deref().and_then(|rule| row(rule, draft.care.wearers)) {
            Some(row) => rows.push((wearer, row)),
            None => without.push(wearer.size.to_owned()),
        }
    }
    let mut text = vec![t!("care-close-rule", rule = sleepwear())];
    let mut missing: Vec<String> = Vec::new();
    for place in GirthPlace::ALL {
        let name = girth(place);
        let formulas: Vec<_> =
            model.plan.publishing.girths.iter().filter(|(p, _)| *p == place).map(|(_, f)| f).collect();
        if formulas.is_empty() {
            if !rows.is_empty() {
                let most = |(wearer, row): &(&Wearer<'_>, &TightRow)| {
                    let [cm, inches] = printed(row, place);
                    t!("care-girth-most", size = wearer.size, cm, inches, rule_size = row.size)
                };
                let sizes: Vec<String> = rows.iter().map(most).collect();
                text.push(t!("care-girth-untold", place = name, sizes = sizes.join("; ")));
            }
            missing.push(name);
            continue;
        }
        for formula in formulas {
            let words = Finding::new(Code::SleepwearGirth).at("care").word("place", &name).word("rule", sleepwear());
            let mut over = Tally::new(words.word("usual", usual()), &[("is", "mm"), ("most", "mm"), ("over", "mm")]);
            let mut sizes = Vec::new();
            let mut lost = Vec::new();
            for (wearer, row) in &rows {
                let Ok(is) = model.real(wearer.case, formula) else {
                    lost.push(wearer.size.to_owned());
                    continue;
                };
                let most = row.most(place);
                let [cm, inches] = printed(row, place);
                let told = t!("care-girth-size", size = wearer.size, is = both(is), cm, inches, rule_size = row.size);
                if is > most + tolerance::EQUAL {
                    over.add(wearer.size, &[is, most, is - most]);
                    sizes.push(t!("care-girth-over", told, over = excess(is - most)));
                } else {
                    sizes.push(told);
                }
            }
            found.findings.extend(over.done(|f, _| f));
            if !sizes.is_empty() {
                text.push(t!("care-girth", place = name, sizes = sizes.join("; ")));
            }
            if !lost.is_empty() {
                found.not_checked(t!("care-girth-lost", place = name, sizes = gathered(&lost)));
            }
        }
    }
    if rows.is_empty() {
        text.push(t!("care-girths-unsized"));
    }
    let sizes = wearers.iter().map(|w| w.size.to_owned()).collect();
    found.caution(t!("care-close-title"), sleepwear(), sizes, text);
    untold(&missing, &without, found);
    if !missing.is_empty() {
        found.not_checked(t!("care-girths-missing", places = gathered(&missing)));
    }
    if !without.is_empty() {
        let which = gathered(&without);
        found.not_checked(t!("care-girths-without", sizes = which));
    }
    found.not_checked(t!("care-close-unchecked"));
}

/// That it fits close is what the draft says of it: where it does not say enough to hold that against the rule, it must not pass for
/// something that was looked at.
fn untold(missing: &[String], without: &[String], found: &mut Found) {
    let mut what = Vec::new();
    if !missing.is_empty() {
        what.push(say!("care-no-girths", places = gathered(missing)));
    }
    if !without.is_empty() {
        what.push(say!("care-no-rule-sizes", sizes = gathered(without)));
    }
    let both = what.into_iter().reduce(|first, last| say!("care-and-also", first, last));
    if let Some(what) = both {
        let told = Finding::new(Code::SleepwearUntold).at("care").word("what", what);
        found.findings.push(told.word("rule", sleepwear()).word("usual", usual()));
    }
}

/// The most of the rule at a place, in cm and in inches as they are printed there.
fn printed(row: &TightRow, place: GirthPlace) -> [String; 2] {
    let (cm, inches) = row.printed(place);
    [cm, inches].map(|n| decimal(&n.to_string()))
}

/// A place around which the rules measure.
fn girth(place: GirthPlace) -> String {
    match place {
        GirthPlace::Chest => t!("girth-chest"),
        GirthPlace::Waist => t!("girth-waist"),
        GirthPlace::Seat => t!("girth-seat"),
        GirthPlace::UpperArm => t!("girth-upper-arm"),
        GirthPlace::Thigh => t!("girth-thigh"),
        GirthPlace::Wrist => t!("girth-wrist"),
        GirthPlace::Ankle => t!("girth-ankle"),
    }
}
