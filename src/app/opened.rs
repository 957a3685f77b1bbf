//! A draft with everything that was computed of it.

use super::shapes::Shapes;
use crate::base::{Finding, message};
use crate::compute::{Case, Engine, Model};
use crate::document::Draft;
use crate::proof::{Counts, count, proof};

/// An open draft.
pub struct Opened {
    /// As it stands in its file.
    pub draft: Draft,
    /// Evaluated in all sizes.
    pub model: Model,
    /// What was found, errors first.
    pub findings: Vec<Finding>,
    /// How many of each severity.
    pub counts: Counts,
    /// What is drawn.
    pub shapes: Shapes,
}

impl Opened {
    /// Computes a draft.
    ///
    /// # Errors
    /// The message of the finding that the program failed on it.
    pub fn compute(draft: Draft) -> Result<Self, String> {
        let model = Engine::new().compute_guarded(&draft, &[]).map_err(|f| message(&f, draft.display))?;
        let findings = proof(&draft, &model);
        let counts = count(&findings);
        let mut opened = Self { shapes: Shapes::of(&model), draft, model, findings, counts };
        opened.shapes.add(&opened.model, opened.first());
        Ok(opened)
    }

    /// The case that is shown first: the base, or else the first one.
    pub fn first(&self) -> usize {
        self.model.plan.cases.base.unwrap_or(0)
    }

    /// A case of the draft.
    pub fn case(&self, case: usize) -> Option<&Case> {
        self.model.plan.cases.list.get(case)
    }

    /// How a case is called: `size 88`, or a person's name.
    pub fn called(&self, case: usize) -> String {
        self.case(case).map_or_else(String::new, |c| match c.person {
            Some(_) => c.address.clone(),
            None => format!("size {}", c.address),
        })
    }

    /// Which part of the range a case stands at: 0 for the first size, 1 for the last; none for a person.
    pub fn part(&self, case: usize) -> Option<f32> {
        let range = self.model.plan.cases.range;
        (case < range).then(|| case as f32 / range.saturating_sub(1).max(1) as f32)
    }

    /// The title, or a word where there is none.
    pub fn title(&self) -> &str {
        if self.draft.title.is_empty() { "Untitled draft" } else { &self.draft.title }
    }
}
