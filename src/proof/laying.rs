//! Lay plans that are kept: whether they are still of these pieces, and whether a size needs more cloth than a larger one.
//!
//! Whether pieces of a plan overlap is looked at where its length is told (`output::lay`); a plan is kept only when none do, and its digest
//! holds its places.

use crate::base::{Code, Finding, tolerance};
use crate::compute::Model;
use crate::document::{ClothLaid, Draft, LayPlan, Nap};
use crate::finish::{ClothBook, Finished, PlanState, case_of_size, plan_cloth, plan_need, plan_view};
use crate::texts::{length, owned, say};

/// Looks at all plans; `model` and `finished` are of the whole draft.
pub(super) fn check(draft: &Draft, model: &Model, finished: &Finished) -> Vec<Finding> {
    if draft.plans.is_empty() {
        return Vec::new();
    }
    let books: Vec<ClothBook<'_>> =
        model.of_views().iter().zip(finished.of_views()).map(|(m, f)| ClothBook::new(m, f)).collect();
    // What is wrong alike on one cloth is told once, with all sizes.
    let mut stale: Vec<(String, String, Vec<String>)> = Vec::new();
    let mut fresh: Vec<(usize, &LayPlan, f64)> = Vec::new();
    for plan in &draft.plans {
        let view = plan_view(model, plan);
        let on = match view {
            Some(view) => plan_cloth(&books[view], plan).map(|on| (view, on)),
            None => Err(PlanState::Lost(match plan.view.is_empty() {
                true => say!("kept-plan-no-view-without-name"),
                false => say!("kept-plan-no-view", view = plan.view),
            })),
        };
        let why = match on {
            Ok((view, on)) => {
                fresh.extend(plan_need(books[view].model(), &on, plan).map(|need| (view, plan, need)));
                continue;
            }
            Err(PlanState::Lost(why)) => why,
            Err(_) => say!("kept-plan-others-now"),
        };
        let cloth = cloth_of(plan);
        let sizes = plan.sizes.iter().map(|s| s.size.clone());
        match stale.iter_mut().find(|(c, w, _)| *c == cloth && *w == why) {
            Some((.., all)) => sizes.for_each(|s| {
                if !all.contains(&s) {
                    all.push(s);
                }
            }),
            None => stale.push((cloth, why, sizes.collect())),
        }
    }
    let told = stale.into_iter().map(|(cloth, why, sizes)| {
        let at = format!("cloth {cloth}");
        let mut finding = Finding::new(Code::LayStale).at(at).word("cloth", cloth).word("why", why);
        finding.sizes = sizes;
        finding
    });
    told.chain(odd_sizes(draft, &books, &fresh)).collect()
}

/// The cloth of a plan in words.
fn cloth_of(plan: &LayPlan) -> String {
    let mut out = format!("{} {}", plan.material.replace('_', " "), plan.width);
    if plan.laid != ClothLaid::Open {
        out = say!("kept-plan-cloth-laid", cloth = out, laid = plan.laid.words());
    }
    if plan.nap == Nap::With {
        out = say!("kept-plan-cloth-nap", cloth = out);
    }
    if !plan.view.is_empty() {
        out = say!("kept-plan-cloth-view", cloth = out, view = plan.view);
    }
    out
}

/// A size: its place, its name, how much cloth it needs, mm.
type Needed<'a> = (usize, &'a str, f64);

/// Sizes that need more than a larger one on the same cloth: one finding for a cloth, about the worst. Only where sizes have one order.
fn odd_sizes(draft: &Draft, books: &[ClothBook<'_>], fresh: &[(usize, &LayPlan, f64)]) -> Vec<Finding> {
    if !draft.chart.cup.is_empty() || !draft.chart.length.is_empty() {
        return Vec::new();
    }
    let mut cloths: Vec<(String, Vec<Needed<'_>>)> = Vec::new();
    for (view, plan, need) in fresh {
        let [size] = plan.sizes.as_slice() else { continue };
        let Some(case) = case_of_size(books[*view].model(), &size.size).filter(|_| size.count <= 1) else { continue };
        let (cloth, own) = (cloth_of(plan), (case, size.size.as_str(), *need));
        match cloths.iter_mut().find(|(c, _)| *c == cloth) {
            Some((_, all)) => all.push(own),
            None => cloths.push((cloth, vec![own])),
        }
    }
    let mut out = Vec::new();
    for (cloth, mut all) in cloths {
        all.sort_by_key(|(case, ..)| *case);
        // From the largest down: what needs more than the least of those above.
        let mut least: Option<(&str, f64)> = None;
        let mut odd: Vec<(&str, f64, (&str, f64))> = Vec::new();
        for (_, size, need) in all.iter().rev() {
            match least {
                Some(less) if *need > less.1 + tolerance::lay::ODD => odd.push((size, *need, less)),
                _ => least = Some((size, *need)),
            }
        }
        odd.reverse();
        let more = |o: &(&str, f64, (&str, f64))| o.1 - o.2.1;
        let Some(worst) = (0..odd.len()).max_by(|a, b| more(&odd[*a]).total_cmp(&more(&odd[*b]))) else { continue };
        let (size, own, (larger, less)) = odd[worst];
        let mut finding = Finding::new(Code::LayOddSize)
            .at(format!("cloth {cloth}"))
            .word("cloth", cloth)
            .word("size", size)
            .word("own", owned(|| length(own, draft.display)))
            .word("larger", larger)
            .word("less", owned(|| length(less, draft.display)));
        finding.sizes = odd.iter().map(|o| o.0.to_owned()).collect();
        finding.worst = worst;
        out.push(finding);
    }
    out
}
