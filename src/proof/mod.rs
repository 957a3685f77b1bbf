//! Judging a computed draft: what a careful person would find with tape and ruler, in every size.
//!
//! What cannot be computed or is not true comes with the model; this adds what is computed but not as meant. The range
//! is judged; persons only where there is no range.

mod absent;
mod blocks;
mod care;
mod conditions;
mod cutting;
mod finishing;
mod folds;
mod joints;
mod laying;
mod measures;
mod notches;
mod publishing;
mod range;
mod seams;
mod silence;
mod smooth;
mod tally;
mod unused;

use crate::base::{Code, DisplayUnit, Finding, Severity};
use crate::compute::{CaseModel, Model, told_once};
use crate::document::Draft;
use crate::finish::{Finished, finish};
use crate::texts::{message, say};

pub use care::{Caution, cautions};
pub use seams::{SeamState, seam_state};

/// How many findings of each severity, silenced ones left out.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Counts {
    /// Something published would be wrong or missing.
    pub errors: usize,
    /// A person must look.
    pub warnings: usize,
    /// Told once.
    pub notes: usize,
}

/// All findings of a draft: errors first, each kind in the order of the draft.
pub fn proof(draft: &Draft, model: &Model) -> Vec<Finding> {
    proof_of(draft, model, &finish(draft, model))
}

/// The same for a draft that is finished already.
pub fn proof_of(draft: &Draft, model: &Model, finished: &Finished) -> Vec<Finding> {
    let views = model.of_views().iter().zip(finished.of_views());
    let mut lists: Vec<Vec<Finding>> = views.map(|(model, finished)| of_view(draft, model, finished)).collect();
    let mut findings = match lists.len() {
        1 if model.views.is_empty() => lists.remove(0),
        _ => told_once(model.of_views(), lists),
    };
    findings.extend(absent::check(draft, model, &findings));
    findings.extend(laying::check(draft, model, finished));
    findings.extend(blocks::check(draft));
    findings.extend(unused::check(draft));
    switched_off(draft, &mut findings);
    silence::apply(draft, &mut findings);
    findings.sort_by_key(Finding::severity);
    findings
}

/// What is found in one view, or in a draft without any.
fn of_view(draft: &Draft, model: &Model, finished: &Finished) -> Vec<Finding> {
    let limits = &finished.limits;
    let mut findings = finished.findings.clone();
    findings.extend(seams::check(draft, model, limits));
    findings.extend(joints::check(draft, model, finished));
    findings.extend(smooth::check(draft, model, limits));
    findings.extend(conditions::check(model));
    findings.extend(notches::check(model, finished));
    findings.extend(finishing::check(draft, model, finished));
    findings.extend(folds::check(draft, model, finished));
    findings.extend(cutting::check(draft, model, finished));
    findings.extend(measures::check(model));
    findings.extend(publishing::check(draft, model));
    findings.extend(care::check(draft, model));
    findings.extend(range::check(draft, model, limits));
    // A piece that is computed for others alone is not judged.
    findings.retain(|f| model.plan.knows(&f.place));
    findings.splice(0..0, model.findings.iter().cloned());
    findings
}

/// Takes out the findings of checks that the draft switches off; what cannot be silenced cannot be switched off either.
fn switched_off(draft: &Draft, findings: &mut Vec<Finding>) {
    for (i, (code, reason)) in draft.settings.unchecked.iter().enumerate() {
        let known = Code::of(code).filter(|c| c.can_be_silenced());
        let problem = match known {
            None => Some(say!("unchecked-unknown", code)),
            Some(_) if reason.trim().is_empty() => Some(say!("unchecked-no-reason", code)),
            Some(_) => None,
        };
        match (problem, known) {
            (Some(problem), _) => {
                let at = format!("settings.unchecked {}", i + 1);
                findings.push(Finding::new(Code::PartMissing).at(at).word("problem", problem));
            }
            (None, Some(off)) => findings.retain(|f| f.code != off),
            (None, None) => {}
        }
    }
}

/// What is wrong, in words, each with its place.
pub fn errors(findings: &[Finding], unit: DisplayUnit) -> Vec<String> {
    let errors = findings.iter().filter(|f| f.severity() == Severity::Error && f.silenced.is_none());
    errors.map(|f| format!("{}: {}", f.place.name, message(f, unit))).collect()
}

/// Counts findings.
pub fn count(findings: &[Finding]) -> Counts {
    let of = |severity| findings.iter().filter(|f| f.silenced.is_none() && f.severity() == severity).count();
    Counts { errors: of(Severity::Error), warnings: of(Severity::Warning), notes: of(Severity::Note) }
}

/// The cases that are judged, with their addresses.
fn judged(model: &Model) -> impl Iterator<Item = (usize, &str, &CaseModel)> {
    let cases = &model.plan.cases;
    let many = if cases.range > 0 { cases.range } else { cases.list.len() };
    (0..many).map(|i| (i, cases.list[i].address.as_str(), &*model.cases[i]))
}

/// What was looked at, for the words under a clean proof.
pub fn looked_at(draft: &Draft, model: &Model) -> String {
    let plan = &model.plan;
    let views = model.of_views();
    let cuts: usize = (0..plan.frames().len())
        .filter(|f| views.iter().any(|v| v.plan.has_frame(*f)))
        .map(|f| plan.frames()[f].finishing.cuts.len())
        .sum();
    let seams = (0..plan.seams.len()).filter(|s| views.iter().any(|v| v.plan.has_seam(*s))).count();
    let named = |names: &dyn Fn(&Model) -> Vec<std::sync::Arc<str>>| {
        views.iter().flat_map(names).collect::<std::collections::BTreeSet<_>>().len()
    };
    let conditions = named(&|v| v.plan.conditions.iter().map(|c| c.name.clone()).collect());
    let measures = named(&|v| v.plan.measures.iter().map(|m| m.name.clone()).collect());
    let plans = match draft.plans.len() {
        0 => String::new(),
        count => say!("looked-at-plans", count),
    };
    let off: Vec<&str> = draft.settings.unchecked.iter().map(|(code, _)| code.as_str()).collect();
    let off = if off.is_empty() { String::new() } else { say!("looked-at-off", codes = off.join(", ")) };
    let of_views = if model.views.is_empty() { String::new() } else { say!("looked-at-views", count = views.len()) };
    let sizes = if plan.cases.range > 0 { plan.cases.range } else { plan.cases.list.len() };
    say!("looked-at", seams, conditions, cuts, measures, sizes, views = of_views, off, plans)
}
