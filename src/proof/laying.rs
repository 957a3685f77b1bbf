//! Lay plans that are kept: whether they are still of these pieces.
//!
//! Whether pieces of a plan overlap is looked at where its length is told (`output::lay`); a plan is kept only when none do, and its digest
//! holds its places.

use crate::base::{Code, Finding};
use crate::compute::Model;
use crate::document::Draft;
use crate::finish::{ClothBook, Finished, PlanState, plan_state, plan_view};

/// Looks at all plans; `model` and `finished` are of the whole draft.
pub(super) fn check(draft: &Draft, model: &Model, finished: &Finished) -> Vec<Finding> {
    if draft.plans.is_empty() {
        return Vec::new();
    }
    let books: Vec<ClothBook<'_>> =
        model.of_views().iter().zip(finished.of_views()).map(|(m, f)| ClothBook::new(m, f)).collect();
    let mut out = Vec::new();
    for (i, plan) in draft.plans.iter().enumerate() {
        let state = match plan_view(model, plan) {
            Some(view) => plan_state(&books[view], plan),
            None => PlanState::Lost(format!(
                "there is no view {}",
                if plan.view.is_empty() { "without a name" } else { &plan.view }
            )),
        };
        let why = match state {
            PlanState::Fresh => continue,
            PlanState::Stale => "outlines, counts, the cloth or the places in it are others now".to_owned(),
            PlanState::Lost(why) => why,
        };
        let name = if plan.name.is_empty() { format!("{}", i + 1) } else { plan.name.clone() };
        let mut finding = Finding::new(Code::LayStale).at(format!("plan {name}")).word("plan", name).word("why", why);
        finding.sizes = plan.sizes.iter().map(|s| s.size.clone()).collect();
        out.push(finding);
    }
    out
}
