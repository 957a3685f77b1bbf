//! Strips, notions, cloth, booklet: formulas without a value.

use super::judged;
use crate::base::Finding;
use crate::compute::{Formula, Model, told_of};
use crate::document::Draft;

pub(super) fn check(draft: &Draft, model: &Model) -> Vec<Finding> {
    let mut out = Vec::new();
    for (at, formula) in model.plan.publishing.formulas(draft) {
        without_value(model, formula, &|f| f.at(at.clone()), &mut out);
    }
    out
}

/// Tells in which sizes a formula that nothing in the graph hangs on has no value, each reason once.
pub(super) fn without_value(
    model: &Model,
    formula: &Formula,
    dress: &dyn Fn(Finding) -> Finding,
    out: &mut Vec<Finding>,
) {
    let mut told: Vec<Finding> = Vec::new();
    for (case, size, _) in judged(model) {
        let Err(stop) = model.evaluate(&model.plan, case, formula) else { continue };
        let Some(mut finding) = told_of(&stop).map(dress) else { continue };
        match told.iter_mut().find(|f| f.code == finding.code && f.words == finding.words) {
            Some(known) => known.sizes.push(size.to_owned()),
            None => {
                finding.sizes = vec![size.to_owned()];
                told.push(finding);
            }
        }
    }
    out.append(&mut told);
}
