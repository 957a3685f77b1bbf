//! The engine: draft in, model out, and only what changed is computed anew.

use std::panic::{AssertUnwindSafe, catch_unwind};
use std::sync::Arc;

use super::build::build;
use super::build::patch::{Patched, patch};
use super::chart::ChartRun;
use super::compile::ParseCache;
use super::derive::Whole;
use super::item::Stop;
use super::model::{CaseModel, Earlier, Model, affected, compute_case, node_findings, system_findings, two_solutions};
use super::plan::{NodeId, Plan};
use crate::base::{Code, Finding};
use crate::document::Draft;

/// Keeps what was read and computed last, so that a small change costs little.
#[derive(Debug, Default)]
pub struct Engine {
    cache: ParseCache,
    last: Option<Last>,
}

/// What was computed last.
#[derive(Debug)]
struct Last {
    whole: Whole,
    model: Model,
    /// What is to be said of the chart.
    chart: Vec<Finding>,
    /// Whether formulas were computed beside the draft.
    has_extras: bool,
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
        let whole = Whole::of(draft);
        let last = self.last.take();
        let patched = match last {
            Some(last) if extras.is_empty() && !last.has_extras => {
                let Last { whole: before, model, chart, .. } = last;
                match patch(&before, &whole, &model.plan, &mut self.cache) {
                    Some(patched) => Ok((patched, model, chart)),
                    None => Err(Some(model)),
                }
            }
            last => Err(last.map(|last| last.model)),
        };
        let (model, chart) = match patched {
            Ok((patched, last, chart)) => of_patched(&whole, patched, last, chart),
            Err(last) => self.read_whole(&whole, extras, last),
        };
        self.last = Some(Last { whole, model: model.clone(), chart, has_extras: !extras.is_empty() });
        model
    }

    /// The whole draft read; what has not changed since is not computed again.
    fn read_whole(&mut self, whole: &Whole, extras: &[&str], last: Option<Model>) -> (Model, Vec<Finding>) {
        let plan = Arc::new(build(whole, extras, &mut self.cache));
        let (rows, chart) = chart_of(&plan, &whole.draft);
        let touched = last.as_ref().filter(|m| same_shape(&m.plan, &plan)).map(|m| {
            let pairs = m.plan.nodes.iter().zip(&plan.nodes).enumerate();
            pairs.filter(|(_, (a, b))| a.def != b.def).map(|(i, _)| i as NodeId).collect()
        });
        let model = computed(whole, plan, &rows, last.zip(touched), &chart);
        (model, chart)
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

/// The model of a patched plan.
fn of_patched(whole: &Whole, patched: Patched, last: Model, mut chart: Vec<Finding>) -> (Model, Vec<Finding>) {
    let Patched { plan, touched, is_other_chart } = patched;
    let plan = Arc::new(plan);
    let rows;
    if is_other_chart {
        (rows, chart) = chart_of(&plan, &whole.draft);
    } else {
        rows = last.cases.iter().map(|c| Arc::clone(&c.rows)).collect();
    }
    let model = computed(whole, plan, &rows, Some((last, touched)), &chart);
    (model, chart)
}

type Rows = Vec<Arc<[Result<f64, Stop>]>>;

/// The numbers of the chart in all cases, and what is to be said of it.
fn chart_of(plan: &Plan, draft: &Draft) -> (Rows, Vec<Finding>) {
    let chart = ChartRun::new(&plan.chart, &draft.chart, &plan.cases.list);
    let rows = plan.cases.list.iter().map(|c| chart.rows(c).into()).collect();
    (rows, chart.findings(&plan.cases.list, draft.display))
}

/// All cases of a plan. Of an earlier model of the same shape is kept what does not hang on what was touched.
fn computed(
    whole: &Whole,
    plan: Arc<Plan>,
    rows: &Rows,
    last: Option<(Model, Vec<NodeId>)>,
    chart: &[Finding],
) -> Model {
    let count = plan.cases.list.len();
    let affected = last.as_ref().map(|(last, touched)| affected(&plan, last, touched, rows));
    // Where nearly everything is touched, keeping the rest costs more than it spares.
    let affected = affected.filter(|a| 4 * a.tasks.len() < 3 * plan.tasks.len());
    let old = last.map_or_else(Vec::new, |(last, _)| last.cases);
    let one = |i: usize, old: Option<Arc<CaseModel>>| {
        let old = old.filter(|_| affected.is_some());
        let earlier = old.as_ref().zip(affected.as_ref()).map(|(model, affected)| Earlier { model, affected });
        Arc::new(compute_case(&plan, rows, i, earlier.as_ref()))
    };
    let work = affected.as_ref().map_or(plan.tasks.len(), |a| a.tasks.len()) * count;
    let cases = in_turns(count, work, old, &one);
    let mut findings = plan.findings.clone();
    findings.extend_from_slice(chart);
    findings.extend(node_findings(&plan, &cases));
    findings.extend(system_findings(&plan, &cases));
    findings.extend(two_solutions(&plan, &cases, rows));
    whole.told(&mut findings);
    Model { draft: Arc::clone(&whole.draft), bases: Arc::clone(&whole.bases), plan, cases, findings }
}

/// Tasks of all cases together from which a second thread pays.
const WORTH_A_THREAD: usize = 4_000;

/// Computes a case; the one before it is given up with it, whose memory the next can have.
type One<'a> = dyn Fn(usize, Option<Arc<CaseModel>>) -> Arc<CaseModel> + Sync + 'a;

/// The cases in order, where there is much to do by two threads: the even ones by one, the odd ones by the other.
fn in_turns(count: usize, work: usize, old: Vec<Arc<CaseModel>>, one: &One<'_>) -> Vec<Arc<CaseModel>> {
    let cores = || std::thread::available_parallelism().map_or(1, std::num::NonZero::get);
    let mut old = old.into_iter();
    if work < WORTH_A_THREAD || count < 2 || cores() < 2 {
        return (0..count).map(|i| one(i, old.next())).collect();
    }
    let (mut even_old, mut odd_old) = (Vec::new(), Vec::new());
    while let Some(even) = old.next() {
        even_old.push(even);
        odd_old.extend(old.next());
    }
    let turns = |first: usize, old: Vec<Arc<CaseModel>>| {
        let mut old = old.into_iter();
        (first..count).step_by(2).map(|i| one(i, old.next())).collect::<Vec<_>>()
    };
    std::thread::scope(|scope| {
        let odd = scope.spawn(|| turns(1, odd_old));
        let even = turns(0, even_old);
        match odd.join() {
            Ok(odd) => {
                let mut odd = odd.into_iter();
                even.into_iter().flat_map(|case| [Some(case), odd.next()]).flatten().collect()
            }
            Err(panic) => std::panic::resume_unwind(panic),
        }
    })
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
