//! The lay plans that a draft keeps, laid out again and looked at.

use std::sync::Arc;

use super::job::lay_job;
use super::plan::Lay;
use crate::document::LayPlan;
use crate::finish::{ClothBook, plan_call, plan_digest};
use crate::texts::say;

/// A plan of a draft.
#[derive(Clone, Debug)]
pub struct KeptLay {
    /// Its place among the plans of the draft.
    pub place: usize,
    /// How it lies, where it is a plan of the draft as it stands and nothing is wrong with it; else why not, in words.
    pub lay: Result<Lay, String>,
    /// The pieces that stay where they are, as stretch and place.
    pub locked: Vec<(usize, usize)>,
}

/// One plan of a view.
///
/// # Errors
/// Why no number may come of it, in words.
pub fn fresh_lay(book: &ClothBook<'_>, plan: &LayPlan) -> Result<(Lay, Vec<(usize, usize)>), String> {
    let model = book.model();
    let call = plan_call(model, plan)?;
    let on = book.on_cloth(&call).map_err(|e| e.to_string())?;
    if plan_digest(model, &on, plan) != plan.digest {
        return Err(say!("lay-stale"));
    }
    let job = lay_job(model, on, &[]).map_err(|e| e.to_string())?;
    let (lay, locked) = Lay::of_plan(model, Arc::new(job), plan);
    let faults = lay.faults();
    if faults.is_empty() { Ok((lay, locked)) } else { Err(say!("lay-faulty", count = faults.len())) }
}

/// All plans of a view.
pub fn kept_lays(book: &ClothBook<'_>) -> Vec<KeptLay> {
    kept_lays_of(book, &|_| true)
}

/// Those plans of a view that are wanted: the rest is not looked at.
pub fn kept_lays_of(book: &ClothBook<'_>, is_wanted: &dyn Fn(&LayPlan) -> bool) -> Vec<KeptLay> {
    let model = book.model();
    let own = model.draft.plans.iter().enumerate().filter(|(_, p)| p.view == model.view() && is_wanted(p));
    own.map(|(place, plan)| match fresh_lay(book, plan) {
        Ok((lay, locked)) => KeptLay { place, lay: Ok(lay), locked },
        Err(why) => KeptLay { place, lay: Err(why), locked: Vec::new() },
    })
    .collect()
}
