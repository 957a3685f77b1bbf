//! Strips: a table for each, so that its rule stands beside its numbers.

use std::collections::BTreeMap;

use super::{Page, UNTRUE, length, readable, sentence};
use crate::base::round_half_away;
use crate::compute::{MaterialPlan, StripPlan};
use crate::document::{Strip, StripGrain, StripKind};
use crate::finish::{CutStrip, NoYield, StripMarkKind, StripYield, strip_marks, unmarked, widths};
use crate::output::{Cell, Line, Table};

/// Lengths to buy are rounded up to so much, mm.
const TO_BUY_STEP: f64 = 10.0;

/// A table for each strip of the view.
pub(super) fn tables(page: &Page<'_>) -> Vec<Table> {
    let plan = &page.model.plan;
    let own = plan.publishing.strips.iter().filter(|s| plan.is_needed(s.length));
    own.map(|s| table(page, s, &page.draft.strips[s.place])).collect()
}

fn table(page: &Page<'_>, plan: &StripPlan, strip: &Strip) -> Table {
    let name = readable(&strip.name);
    let mut table = page.table(&format!("strip-{}", strip.name), &format!("Strip: {name}"));
    table.before = rule(strip);
    let of = |case: usize| CutStrip::of(page.model, case, plan, strip);
    let untrue = |case: usize, cell: Cell| {
        if page.model.is_untrue(case, plan.length) && cell != Cell::Missing { cell.signed(UNTRUE) } else { cell }
    };
    let mut line = |words: &str, cell: &dyn Fn(usize) -> Cell| {
        table.lines.push(page.line("", words, |case| untrue(case, cell(case))));
    };
    line("how many", &|case| Cell::Count(u64::from(of(case).count)));
    line("finished length", &|case| length(of(case).finished));
    if !strip.ends.is_empty() {
        line("added at each end", &|case| length(of(case).ends));
    }
    line("length of each as cut", &|case| length(of(case).cut));
    line("length of all together", &|case| length(of(case).total()));
    if !strip.width.is_empty() {
        line("finished width", &|case| length(of(case).width));
        line("width as cut", &|case| length(of(case).cut_width));
    }
    let material = page
        .model
        .plan
        .publishing
        .materials
        .iter()
        .find(|m| !strip.material.is_empty() && page.draft.materials[m.place].name == strip.material);
    match material {
        Some(material) => table.lines.extend(cloth(page, &of, strip, material, &mut table.notes)),
        None if strip.material.is_empty() => {
            line("length to buy", &|case| length(of(case).total().map(rounded_up)));
            table.notes.push("Lengths to buy are rounded up to whole centimetres.".to_owned());
        }
        None => {}
    }
    marks(page, plan, strip, &mut table);
    if !strip.note.is_empty() {
        table.notes.push(sentence(&strip.note));
    }
    page.explain(&mut table);
    table
}

/// What the strip is and the rule of its length, in sentences.
fn rule(strip: &Strip) -> Vec<String> {
    let kind = match strip.kind {
        StripKind::Band => "A band",
        StripKind::Binding => "A binding",
        StripKind::Elastic => "Elastic",
        StripKind::Cord => "A cord",
    };
    let from = match (&*strip.material, strip.grain) {
        ("", _) => "bought by length".to_owned(),
        (material, StripGrain::Along) => format!("cut from {material} along the thread"),
        (material, StripGrain::Across) => format!("cut from {material} across the thread"),
        (material, StripGrain::Bias) => format!("cut from {material} on the bias, at 45° to the thread"),
    };
    let mut out = vec![format!("{kind}, {from}. Its numbers hold for this grain only.")];
    if strip.material.is_empty() {
        out[0] = format!("{kind}, {from}.");
    }
    let ends = if strip.ends.is_empty() { String::new() } else { format!("; each end gets {} more", strip.ends) };
    out.push(format!(
        "The rule of its finished length, the same in all sizes: {}{ends}.",
        strip.length.replace('_', " ")
    ));
    if !strip.width.is_empty() {
        let layers = strip.layers.max(1);
        let layers = if layers == 1 { "once".to_owned() } else { format!("{layers} times") };
        let more = if strip.allowance.is_empty() {
            String::new()
        } else {
            format!(" and {} along each side", strip.allowance)
        };
        out.push(format!("Its width as cut: {layers} the finished width{more}."));
    }
    if !strip.join.is_empty() && !strip.material.is_empty() {
        let how = if strip.grain == StripGrain::Bias { "on the diagonal" } else { "straight across" };
        out.push(format!("Joined {how} where the cloth is too narrow, with {} on each side of a join.", strip.join));
    }
    out
}

/// How the strip comes out of each width of its cloth.
fn cloth(
    page: &Page<'_>,
    of: &dyn Fn(usize) -> CutStrip,
    strip: &Strip,
    material: &MaterialPlan,
    notes: &mut Vec<String>,
) -> Vec<Line> {
    let mut out = Vec::new();
    for (i, sold) in material.widths.iter().enumerate() {
        let group = format!("from {} that is {} wide", strip.material, sold.text);
        let usable = |case: usize| widths(page.model, case, material).get(i).and_then(|w| w.1).map(|w| w.1);
        let result = |case: usize| of(case).from_cloth(usable(case)?);
        let got = |case: usize| result(case)?.ok();
        let mut line = |words: &str, cell: &dyn Fn(StripYield) -> Cell| {
            out.push(page.line(&group, words, |case| got(case).map_or(Cell::Missing, cell)));
        };
        if strip.grain != StripGrain::Along {
            line("longest piece from selvedge to selvedge", &|y| length(y.longest));
        }
        line("whole strips side by side", &|y| Cell::Count(u64::from(y.side_by_side)));
        // Rows of nothing but 0 are no help.
        let is_joined = page.cases.iter().any(|c| got(*c).is_none_or(|y| y.joins > 0));
        if !strip.join.is_empty() && strip.grain != StripGrain::Along && is_joined {
            line("joins in all", &|y| Cell::Count(u64::from(y.joins)));
            line("length that joins take", &|y| Cell::Length(y.lost));
        }
        line("cloth for all of them", &|y| Cell::Length(rounded_up(y.cloth)));
        let failed = page.cases.iter().filter_map(|c| result(*c)?.err());
        for why in failed {
            let words = match why {
                NoYield::TooNarrow => format!("The strip does not go into {group}: the cloth is too narrow."),
                NoYield::NotJoined(_) => {
                    format!("The strip is too long for one piece {group}, and nothing tells how it is joined.")
                }
                NoYield::TooMuch => format!("No reasonable length of cloth is enough {group}."),
            };
            if !notes.contains(&words) {
                notes.push(words);
            }
        }
    }
    if material.widths.is_empty() {
        notes.push(format!("Nothing tells how wide {} is sold, so what comes out of it is not told.", strip.material));
    } else {
        notes.push(
            "Cloth for strips alone, rounded up to whole centimetres; between pieces they often fit for less."
                .to_owned(),
        );
    }
    if strip.grain == StripGrain::Bias && !material.widths.is_empty() {
        notes.push(
            "A bias strip across the cloth is its width times √2 long, with slanting ends; strips lie their own width times √2 apart along the \
             selvedge, and ends that are cut square take the strip's width once."
                .to_owned(),
        );
    }
    out
}

/// The marks of its seams, as distances along it.
fn marks(page: &Page<'_>, plan: &StripPlan, strip: &Strip, table: &mut Table) {
    let seams = &page.model.plan.seams;
    // The same mark in all sizes: its seam, what it is, which one of several.
    let mut order: Vec<(usize, StripMarkKind, usize)> = Vec::new();
    let mut at: BTreeMap<(usize, usize), f64> = BTreeMap::new();
    for case in &page.cases {
        let mut seen: Vec<(usize, StripMarkKind, usize)> = Vec::new();
        for mark in strip_marks(page.model, page.finished, *case, plan.length) {
            let which = seen.iter().filter(|(s, k, _)| *s == mark.seam && *k == mark.kind).count();
            let key = (mark.seam, mark.kind, which);
            seen.push(key.clone());
            let place = order.iter().position(|o| *o == key).unwrap_or_else(|| {
                order.push(key);
                order.len() - 1
            });
            at.insert((*case, place), mark.at);
        }
    }
    for (place, (seam, kind, _)) in order.iter().enumerate() {
        let group = format!("marks for the seam {}, from the cut end", readable(&seams[*seam].name));
        let ends = |case: usize| CutStrip::of(page.model, case, plan, strip).ends;
        let cell = |case: usize| length(at.get(&(case, place)).copied().zip(ends(case)).map(|(at, ends)| at + ends));
        table.lines.push(page.line(&group, mark_words(kind), cell));
    }
    if !order.is_empty() {
        table.notes.push("The strip starts where its seam starts; where a seam is told for one half, the strip goes back along the other half.".to_owned());
    }
    for seam in unmarked(page.model, plan.length) {
        let name = readable(&seam);
        table.notes.push(format!("The marks for the seam {name} cannot be told: it takes another length than the strip or a whole part of it."));
    }
}

fn mark_words(kind: &StripMarkKind) -> String {
    match kind {
        StripMarkKind::Start => "start of the seam".to_owned(),
        StripMarkKind::End => "end of the seam".to_owned(),
        StripMarkKind::Notch(name) => format!("notch {}", readable(name)),
        StripMarkKind::Meeting(pieces) if pieces.is_empty() => "where two pieces meet".to_owned(),
        StripMarkKind::Meeting(pieces) => format!("where {} meet", readable(pieces)),
        StripMarkKind::Stretch(which) => format!("end of stretch {which}"),
    }
}

/// A length to buy, mm.
fn rounded_up(mm: f64) -> f64 {
    let nearest = round_half_away(mm, TO_BUY_STEP);
    // What is whole within a hair's breadth stays.
    if nearest + crate::base::tolerance::EQUAL >= mm { nearest } else { nearest + TO_BUY_STEP }
}
