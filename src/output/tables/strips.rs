//! Strips: a table for each, so that its rule stands beside its numbers.

use std::collections::BTreeMap;

use super::{Page, UNTRUE, length, sentence};
use crate::compute::{MaterialPlan, StripPlan};
use crate::document::{Strip, StripGrain, StripKind};
use crate::finish::{CutStrip, NoYield, StripMarkKind, StripYield, strip_marks, unmarked, widths};
use crate::output::{Cell, Line, Table};
use crate::texts::{readable, t, typed};

/// A table for each strip of the view.
pub(super) fn tables(page: &Page<'_>) -> Vec<Table> {
    let plan = &page.model.plan;
    let own = plan.publishing.strips.iter().filter(|s| plan.is_needed(s.length));
    own.map(|s| table(page, s, &page.draft.strips[s.place])).collect()
}

fn table(page: &Page<'_>, plan: &StripPlan, strip: &Strip) -> Table {
    let name = readable(&strip.name);
    let mut table = page.table(&format!("strip-{}", strip.name), t!("table-strip", strip = name));
    table.before = rule(strip);
    let of = |case: usize| CutStrip::of(page.model, case, plan, strip);
    let untrue = |case: usize, cell: Cell| {
        if page.model.is_untrue(case, plan.length) && cell != Cell::Missing { cell.signed(UNTRUE) } else { cell }
    };
    let mut line = |words: String, cell: &dyn Fn(usize) -> Cell| {
        table.lines.push(page.line("", words, |case| untrue(case, cell(case))));
    };
    line(t!("how-many"), &|case| Cell::Count(u64::from(of(case).count)));
    line(t!("strip-finished-length"), &|case| length(of(case).finished));
    if !strip.ends.is_empty() {
        line(t!("strip-ends"), &|case| length(of(case).ends));
    }
    line(t!("strip-cut-length"), &|case| length(of(case).cut));
    line(t!("strip-total"), &|case| length(of(case).total()));
    if !strip.width.is_empty() {
        line(t!("strip-finished-width"), &|case| length(of(case).width));
        line(t!("strip-cut-width"), &|case| length(of(case).cut_width));
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
            line(t!("strip-to-buy"), &|case| of(case).total().map_or(Cell::Missing, Cell::to_buy));
            table.notes.push(t!("strip-rounded"));
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
        StripKind::Band => t!("strip-band"),
        StripKind::Binding => t!("strip-binding"),
        StripKind::Elastic => t!("strip-elastic"),
        StripKind::Cord => t!("strip-cord"),
    };
    let from = match (&*strip.material, strip.grain) {
        ("", _) => t!("strip-bought"),
        (material, StripGrain::Along) => t!("strip-from-along", material),
        (material, StripGrain::Across) => t!("strip-from-across", material),
        (material, StripGrain::Bias) => t!("strip-from-bias", material),
    };
    let mut out = vec![if strip.material.is_empty() {
        t!("strip-rule-bought", kind, from)
    } else {
        t!("strip-rule", kind, from)
    }];
    let length = typed(&strip.length.replace('_', " ").replace(" * ", " × "));
    out.push(match (&*strip.ends, is_plain(&strip.length)) {
        ("", true) => t!("strip-length-rule", length),
        (ends, true) => t!("strip-length-rule-ends", length, ends = typed(ends)),
        ("", false) => t!("strip-length-by-size"),
        (ends, false) => t!("strip-length-by-size-ends", ends = typed(ends)),
    });
    if !strip.width.is_empty() {
        let layers = strip.layers.max(1);
        out.push(match &*strip.allowance {
            "" => t!("strip-width-rule", layers),
            allowance => t!("strip-width-rule-more", layers, allowance = typed(allowance)),
        });
    }
    if !strip.join.is_empty() && !strip.material.is_empty() {
        out.push(match strip.grain {
            StripGrain::Bias => t!("strip-joined-bias", join = typed(&strip.join)),
            _ => t!("strip-joined", join = typed(&strip.join)),
        });
    }
    out
}

/// Whether a rule can be read by who sews: names, numbers and signs of reckoning. What names parts of the draft or its functions cannot.
fn is_plain(rule: &str) -> bool {
    let signs: Vec<char> = rule.chars().collect();
    signs.iter().enumerate().all(|(i, sign)| match sign {
        '.' => signs.get(i + 1).is_some_and(char::is_ascii_digit),
        _ => sign.is_alphanumeric() || "_ +-*/".contains(*sign),
    })
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
        let group = t!("strip-cloth", material = strip.material, width = typed(&sold.text));
        let usable = |case: usize| widths(page.model, case, material).get(i).and_then(|w| w.1).map(|w| w.1);
        let result = |case: usize| of(case).from_cloth(usable(case)?);
        let got = |case: usize| result(case)?.ok();
        let mut line = |words: String, cell: &dyn Fn(StripYield) -> Cell| {
            out.push(page.line(&group, words, |case| got(case).map_or(Cell::Missing, cell)));
        };
        if strip.grain != StripGrain::Along {
            line(t!("strip-longest"), &|y| length(y.longest));
        }
        line(t!("strip-side-by-side"), &|y| Cell::Count(u64::from(y.side_by_side)));
        // Rows of nothing but 0 are no help.
        let is_joined = page.cases.iter().any(|c| got(*c).is_none_or(|y| y.joins > 0));
        if !strip.join.is_empty() && strip.grain != StripGrain::Along && is_joined {
            line(t!("strip-joins"), &|y| Cell::Count(u64::from(y.joins)));
            line(t!("strip-joins-take"), &|y| Cell::Length(y.lost));
        }
        line(t!("strip-cloth-for-all"), &|y| Cell::to_buy(y.cloth));
        let failed = page.cases.iter().filter_map(|c| result(*c)?.err());
        for why in failed {
            let words = match why {
                NoYield::TooNarrow => t!("strip-too-narrow", cloth = group),
                NoYield::NotJoined(_) => t!("strip-not-joined", cloth = group),
                NoYield::TooMuch => t!("strip-too-much", cloth = group),
            };
            if !notes.contains(&words) {
                notes.push(words);
            }
        }
    }
    if material.widths.is_empty() {
        notes.push(t!("strip-width-untold", material = strip.material));
    } else {
        notes.push(t!("strip-alone"));
    }
    if strip.grain == StripGrain::Bias && !material.widths.is_empty() {
        notes.push(t!("strip-bias"));
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
        let group = t!("strip-marks", seam = readable(&seams[*seam].name));
        let ends = |case: usize| CutStrip::of(page.model, case, plan, strip).ends;
        let cell = |case: usize| length(at.get(&(case, place)).copied().zip(ends(case)).map(|(at, ends)| at + ends));
        table.lines.push(page.line(&group, mark_words(kind), cell));
    }
    if !order.is_empty() {
        table.notes.push(t!("strip-starts"));
    }
    for seam in unmarked(page.model, plan.length) {
        let name = readable(&seam);
        table.notes.push(t!("strip-unmarked", seam = name));
    }
}

fn mark_words(kind: &StripMarkKind) -> String {
    match kind {
        StripMarkKind::Start => t!("mark-start"),
        StripMarkKind::End => t!("mark-end"),
        StripMarkKind::Notch(name) => t!("mark-notch", name = readable(name)),
        StripMarkKind::Meeting(pieces) if pieces.is_empty() => t!("mark-meeting"),
        StripMarkKind::Meeting(pieces) => t!("mark-meeting-of", pieces = readable(pieces)),
        StripMarkKind::Stretch(which) => t!("mark-stretch", which),
    }
}
