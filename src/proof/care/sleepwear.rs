//! Children's sleepwear: what fits close is held against the most of the rules; what does not calls for cloth that resists flames.

use super::rules::{SLEEPWEAR, SLEEPWEAR_SIZES, TIGHT, TightRow, USUAL};
use super::wearer::Wearer;
use super::{Found, both, gathered};
use crate::base::{Code, Finding, tolerance};
use crate::compute::Model;
use crate::document::{Draft, GirthPlace, Wearers, WornAs};
use crate::proof::tally::Tally;

pub(super) fn look(draft: &Draft, model: &Model, wearers: &[Wearer<'_>], found: &mut Found) {
    let of_rule: Vec<&Wearer<'_>> = wearers.iter().filter(|w| w.is_in(SLEEPWEAR_SIZES) != Some(false)).collect();
    if of_rule.is_empty() {
        return;
    }
    match draft.care.worn_as {
        WornAs::TightSleepwear => close(draft, model, &of_rule, found),
        WornAs::Sleepwear => loose(&of_rule, found),
        _ => {}
    }
}

fn loose(wearers: &[&Wearer<'_>], found: &mut Found) {
    let sizes: Vec<String> = wearers.iter().map(|w| w.size.to_owned()).collect();
    let mut told = Finding::new(Code::SleepwearLoose).at("care").word("rule", SLEEPWEAR).word("usual", USUAL);
    told.sizes.clone_from(&sizes);
    found.findings.push(told);
    found.caution(
        "Loose sleepwear for children",
        SLEEPWEAR.to_owned(),
        sizes,
        vec![
            "Loose sleepwear catches fire more easily than what fits close.".to_owned(),
            format!("{SLEEPWEAR}: cloth, seams and trimmings of children’s sleepwear must resist flames, unless it fits close."),
            "Cloth is not looked at here: ask its maker, and keep the garment away from fire.".to_owned(),
        ],
    );
    found.not_checked("whether cloth and trimmings of the sleepwear resist flames");
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
    let mut told = Vec::new();
    let mut missing: Vec<String> = Vec::new();
    for place in GirthPlace::ALL {
        let name = place.word();
        let formulas: Vec<_> =
            model.plan.publishing.girths.iter().filter(|(p, _)| *p == place).map(|(_, f)| f).collect();
        if formulas.is_empty() {
            missing.push(name.to_owned());
            continue;
        }
        for formula in formulas {
            let words = Finding::new(Code::SleepwearGirth).at("care").word("place", name).word("rule", SLEEPWEAR);
            let mut over = Tally::new(words.word("usual", USUAL), &[("is", "mm"), ("most", "mm"), ("over", "mm")]);
            let mut sizes = Vec::new();
            let mut lost = Vec::new();
            for (wearer, row) in &rows {
                let Ok(is) = model.real(wearer.case, formula) else {
                    lost.push(wearer.size.to_owned());
                    continue;
                };
                let most = row.most(place);
                if is > most + tolerance::EQUAL {
                    over.add(wearer.size, &[is, most, is - most]);
                }
                let (cm, inches) = row.printed(place);
                sizes.push(format!(
                    "{}: {}, at most {cm} cm and {inches} in in size {}",
                    wearer.size,
                    both(is),
                    row.size
                ));
            }
            found.findings.extend(over.done(|f, _| f));
            if !sizes.is_empty() {
                told.push(format!("Around the {name}, by size – {}.", sizes.join("; ")));
            }
            if !lost.is_empty() {
                found.not_checked(format!("the {name} in {}: it cannot be computed there", gathered(&lost)));
            }
        }
    }
    let mut text = vec![format!(
        "{SLEEPWEAR}: sleepwear that fits close is at most so much around, all round, laid flat; of cm and inches the smaller counts. \
         Sleepwear that is wider is loose, and its cloth must resist flames."
    )];
    text.extend(told);
    let sizes = wearers.iter().map(|w| w.size.to_owned()).collect();
    found.caution("Close-fitting sleepwear for children", SLEEPWEAR.to_owned(), sizes, text);
    if !missing.is_empty() {
        found.not_checked(format!("the sleepwear around {}: no such girth is in `care.girths`", gathered(&missing)));
    }
    if !without.is_empty() {
        let which = gathered(&without);
        found.not_checked(format!("the girths in {which}: no one size of the rules for sleepwear is told for them"));
    }
    found.not_checked(
        "that sleeve, leg and body are nowhere wider than at these places and narrow as the rules for sleepwear say; how far trimmings stand \
         off; where the lowest fastening sits; what its labels say; the cloth",
    );
}
