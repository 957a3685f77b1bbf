//! Lay plans that a person keeps.

use crate::document::{Draft, LayPlan};
use crate::finish::{ClothBook, plan_view};
use crate::output::lay::fresh_lay;
use crate::session::{Computed, EditError};
use crate::texts::say;

/// A change of the plans that are kept.
#[derive(Clone, Debug, PartialEq)]
pub enum LayCommand {
    /// These are kept; one of the same view, cloth and sizes takes the place of the one that was there, however far that was folded.
    Keep(Vec<LayPlan>),
    /// Plans, by their places, are taken out.
    Take(Vec<usize>),
    /// All plans that are not of the draft as it stands are taken out.
    TakeStale,
}

impl LayCommand {
    pub(in crate::session) fn label(&self) -> String {
        match self {
            Self::Keep(plans) => say!("undo-keep-plans", count = plans.len()),
            Self::Take(places) => say!("undo-take-plans", count = places.len()),
            Self::TakeStale => say!("undo-take-stale"),
        }
    }

    pub(in crate::session) fn apply(&self, draft: &mut Draft, computed: &Computed) -> Result<String, EditError> {
        match self {
            Self::Keep(plans) => {
                for plan in plans {
                    sound(computed, plan)?;
                    match draft.plans.iter_mut().find(|p| same_cloth(p, plan)) {
                        Some(own) => own.clone_from(plan),
                        None => draft.plans.push(plan.clone()),
                    }
                }
            }
            Self::Take(places) if places.iter().all(|p| *p < draft.plans.len()) => {
                let mut at = 0..;
                draft.plans.retain(|_| at.next().is_some_and(|i| !places.contains(&i)));
            }
            Self::Take(_) => return Err(EditError::refused(say!("gone-plan"))),
            Self::TakeStale => {
                let Some((model, finished)) = computed.model.as_ref().zip(computed.finished.as_ref()) else {
                    return Err(EditError::refused(say!("refused-stale-unknown")));
                };
                let fresh = |plan: &LayPlan| {
                    plan_view(model, plan).is_some_and(|v| {
                        fresh_lay(&ClothBook::new(&model.of_views()[v], &finished.of_views()[v]), plan).is_ok()
                    })
                };
                draft.plans.retain(fresh);
            }
        }
        Ok(String::new())
    }
}

/// Whether two plans answer the same question.
fn same_cloth(a: &LayPlan, b: &LayPlan) -> bool {
    let key = |p: &LayPlan| {
        let LayPlan { name: _, places: _, digest: _, folded_part: _, view, material, width, laid, nap, sizes } =
            p.clone();
        (view, material, width, laid, nap, sizes)
    };
    key(a) == key(b)
}

/// A plan that cannot be cut is not kept: lengths to buy come of it.
fn sound(computed: &Computed, plan: &LayPlan) -> Result<(), EditError> {
    let Some((model, finished)) = computed.model.as_ref().zip(computed.finished.as_ref()) else {
        return Err(EditError::refused(say!("refused-keep-uncomputed")));
    };
    let Some(view) = plan_view(model, plan) else {
        return Err(EditError::refused(say!("refused-plan-view", view = plan.view)));
    };
    fresh_lay(&ClothBook::new(&model.of_views()[view], &finished.of_views()[view]), plan)
        .map(|_| ())
        .map_err(|why| EditError::refused(say!("refused-plan", plan = plan.name, why = why.to_string())))
}
