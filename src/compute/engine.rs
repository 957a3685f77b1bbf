//! The engine: draft in, model out, and only what changed is computed anew.

use std::panic::{AssertUnwindSafe, catch_unwind};
use std::sync::Arc;

use super::build::build;
use super::chart::ChartRun;
use super::compile::ParseCache;
use super::model::{CaseModel, Earlier, Model, compute_case, node_findings, system_findings, two_solutions};
use super::plan::Plan;
use crate::base::{Code, Finding};
use crate::document::Draft;

/// Keeps what was read and computed last, so that a small change costs little.
#[derive(Debug, Default)]
pub struct Engine {
    cache: ParseCache,
    last: Option<Model>,
}

impl Engine {
    /// An engine that knows nothing yet.
    pub fn new() -> Self {
        Self::default()
    }

    /// Computes a draft. The result is the same, bit for bit, whatever was computed before.
    pub fn compute(&mut self, draft: &Draft) -> Model {
        self.compute_with(draft, &[])
    }

    /// Computes a draft and further formulas beside it (see [`super::measure()`]).
    pub fn compute_with(&mut self, draft: &Draft, extras: &[&str]) -> Model {
        let plan = Arc::new(build(draft, extras, &mut self.cache));
        let chart = ChartRun::new(&plan.chart, &draft.chart, &plan.cases.list);
        let last = self.last.take().filter(|m| same_shape(&m.plan, &plan));
        let changed: Vec<bool> = match &last {
            Some(last) => last.plan.nodes.iter().zip(&plan.nodes).map(|(a, b)| a.def != b.def).collect(),
            None => Vec::new(),
        };
        let rows: Vec<Vec<_>> = plan.cases.list.iter().map(|c| chart.rows(c)).collect();
        let cases: Vec<Arc<CaseModel>> = (0..plan.cases.list.len())
            .map(|i| {
                let earlier = last.as_ref().map(|l| Earlier { model: &l.cases[i], changed: &changed });
                Arc::new(compute_case(&plan, &rows, i, earlier.as_ref()))
            })
            .collect();
        let mut findings = plan.findings.clone();
        findings.extend(chart.findings(&plan.cases.list, draft.display));
        findings.extend(node_findings(&plan, &cases));
        findings.extend(system_findings(&plan, &cases));
        findings.extend(two_solutions(&plan, &cases, &rows));
        let model = Model { plan, cases, findings };
        self.last = Some(model.clone());
        model
    }

    /// Computes a draft; should the program fail while doing so, that is a finding and the draft is whole.
    pub fn compute_guarded(&mut self, draft: &Draft, extras: &[&str]) -> Result<Model, Box<Finding>> {
        let result = guarded(AssertUnwindSafe(|| self.compute_with(draft, extras)));
        if result.is_err() {
            *self = Self::new();
        }
        result
    }
}

/// Runs `work`; a failure of the program in it becomes a finding.
pub fn guarded<T>(work: impl FnOnce() -> T + std::panic::UnwindSafe) -> Result<T, Box<Finding>> {
    catch_unwind(work).map_err(|panic| {
        let text = panic
            .downcast_ref::<String>()
            .map(String::as_str)
            .or_else(|| panic.downcast_ref::<&str>().copied())
            .unwrap_or("no reason given");
        Box::new(Finding::new(Code::Internal).word("problem", text.chars().take(200).collect::<String>()))
    })
}

/// Whether nodes, cases and systems stand where they stood, so that values can be kept by their numbers.
fn same_shape(a: &Plan, b: &Plan) -> bool {
    a.cases == b.cases
        && a.systems == b.systems
        && a.tasks == b.tasks
        && a.nodes.len() == b.nodes.len()
        && a.nodes.iter().zip(&b.nodes).all(|(x, y)| x.part.name == y.part.name && x.kind == y.kind && x.deps == y.deps)
}
