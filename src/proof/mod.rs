//! Judging a computed draft: what a careful person would find with tape and ruler, in every size.
//!
//! What cannot be computed or is not true comes with the model; this adds what is computed but not as meant. The range
//! is judged; persons only where there is no range.

mod conditions;
mod joints;
mod limits;
mod seams;
mod silence;
mod smooth;
mod tally;
mod unused;

use crate::base::{Finding, Severity};
use crate::compute::{CaseModel, Model};
use crate::document::Draft;

pub use limits::Limits;
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
    let mut findings = model.findings.clone();
    let limits = Limits::of(draft, &mut findings);
    findings.extend(seams::check(draft, model, &limits));
    findings.extend(joints::check(draft, model, &limits));
    findings.extend(smooth::check(draft, model, &limits));
    findings.extend(conditions::check(model));
    findings.extend(unused::check(draft));
    silence::apply(draft, &mut findings);
    findings.sort_by_key(Finding::severity);
    findings
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
pub fn looked_at(model: &Model) -> String {
    let plan = &model.plan;
    let counted = |n: usize, word: &str| format!("{n} {word}{}", if n == 1 { "" } else { "s" });
    format!(
        "looked at: {}, {}, the lines that run over seams, in {}; not looked at yet: allowances, notches, grain, folds, \
         cloth, text",
        counted(plan.seams.len(), "seam"),
        counted(plan.conditions.len(), "condition"),
        counted(if plan.cases.range > 0 { plan.cases.range } else { plan.cases.list.len() }, "size")
    )
}
