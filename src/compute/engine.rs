//! The engine: draft in, model out, and only what changed is computed anew.

use std::panic::{AssertUnwindSafe, catch_unwind};
use std::sync::Arc;

use super::build::build;
use super::build::patch::{Patched, patch};
use super::chart::ChartRun;
use super::compile::ParseCache;
use super::derive::Whole;
use super::item::Stop;
use super::model::{
    Affected, CaseModel, Earlier, Model, affected, compute_case, node_findings, system_findings, two_solutions,
};
use super::plan::{NodeId, Plan};
use super::told::told_once;
use super::views;
use crate::base::{Code, Finding};
use crate::document::Draft;
use crate::texts::{carried, say};

/// Keeps what was read and computed last, so that a small change costs little.
#[derive(Debug, Default)]
pub struct Engine {
    cache: ParseCache,
    last: Option<Last>,
    count: usize,
}

/// What was computed last.
#[derive(Debug)]
struct Last {
    whole: Whole,
    /// The plan in which those of the views are made; that of the model where the draft has no views.
    base: Arc<Plan>,
    model: Model,
    /// What is to be said of the chart.
    chart: Vec<Finding>,
    /// Whether formulas were computed beside the draft.
    has_extras: bool,
}

/// The plans of all views, each with the nodes that say something else than before.
type Touched = Vec<(Arc<Plan>, Vec<NodeId>)>;

impl Engine {
    /// An engine that knows nothing yet.
    pub fn new() -> Self {
        Self::default()
    }

    /// How many nodes the last draft took, over all its cases: what hangs on nothing that changed is not computed again, and what two
    /// views have in common is computed once.
    pub fn count(&self) -> usize {
        self.count
    }

    /// Computes a draft. The result is the same, bit for bit, whatever was computed before.
    pub fn compute(&mut self, draft: &Draft) -> Model {
        self.compute_with(draft, &[])
    }

    /// Computes a draft and further formulas beside it (see [`super::measure()`]).
    pub fn compute_with(&mut self, draft: &Draft, extras: &[&str]) -> Model {
        let whole = Whole::of(draft);
        let last = self.last.take();
        let is_plain = extras.is_empty() && last.as_ref().is_some_and(|l| !l.has_extras);
        let patched = last.as_ref().filter(|_| is_plain).and_then(|last| self.patched(last, &whole));
        let (base, model, chart) = match (patched, last) {
            (Some((patched, touched)), Some(last)) => self.of_patched(&whole, patched, touched, last),
            (_, last) => self.read_whole(&whole, extras, last.map(|last| last.model)),
        };
        let has_extras = !extras.is_empty();
        self.last = Some(Last { whole, base, model: model.clone(), chart, has_extras });
        model
    }

    /// The last plan with a few formulas read anew, and those of the views; none where more than that may differ.
    fn patched(&mut self, last: &Last, whole: &Whole) -> Option<(Patched, Touched)> {
        let mut patched = patch(&last.whole, whole, &last.base, &mut self.cache)?;
        let plans: Vec<Arc<Plan>> = last.model.of_views().iter().map(|m| Arc::clone(&m.plan)).collect();
        let touched = std::mem::take(&mut patched.touched);
        let plans = views::patched(&last.base, &patched.plan, &plans, &touched)?;
        Some((patched, plans))
    }

    /// The model of a patched plan.
    fn of_patched(&mut self, whole: &Whole, patched: Patched, plans: Touched, last: Last) -> Computed {
        let Patched { plan: base, is_other_chart, .. } = patched;
        let Last { model, mut chart, .. } = last;
        let rows;
        if is_other_chart {
            (rows, chart) = chart_of(&base, &whole.draft);
        } else {
            rows = model.cases.iter().map(|c| Arc::clone(&c.rows)).collect();
        }
        let plans = plans.into_iter().map(|(plan, touched)| (plan, Some(touched))).collect();
        let model = self.computed(whole, plans, &rows, Some(model), &chart);
        (base, model, chart)
    }

    /// The whole draft read; what has not changed since is not computed again.
    fn read_whole(&mut self, whole: &Whole, extras: &[&str], last: Option<Model>) -> Computed {
        let base = Arc::new(build(whole, extras, &mut self.cache));
        let (rows, chart) = chart_of(&base, &whole.draft);
        let plans = views::plans(&base);
        let before = last.as_ref().map(Model::of_views).filter(|v| v.len() == plans.len());
        let touched = |(i, plan): (usize, &Arc<Plan>)| {
            let earlier = &before?[i].plan;
            let pairs = earlier.nodes.iter().zip(&plan.nodes).enumerate();
            let differs = || pairs.filter(|(_, (a, b))| a.def != b.def).map(|(i, _)| i as NodeId).collect();
            same_shape(earlier, plan).then(differs)
        };
        let touched: Vec<Option<Vec<NodeId>>> = plans.iter().enumerate().map(touched).collect();
        let model = self.computed(whole, plans.into_iter().zip(touched).collect(), &rows, last, &chart);
        (base, model, chart)
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

/// The plan in which those of the views are made, the model, what is to be said of the chart.
type Computed = (Arc<Plan>, Model, Vec<Finding>);

type Rows = Vec<Arc<[Result<f64, Stop>]>>;

/// The numbers of the chart in all cases, and what is to be said of it.
fn chart_of(plan: &Plan, draft: &Draft) -> (Rows, Vec<Finding>) {
    let chart = ChartRun::new(&plan.chart, &draft.chart, &plan.cases.list);
    let rows = plan.cases.list.iter().map(|c| chart.rows(c).into()).collect();
    (rows, chart.findings(&plan.cases.list, draft.display))
}

/// Tasks of all cases together from which a second thread pays.
const WORTH_A_THREAD: usize = 4_000;

/// A size in all views.
type OneSize = Vec<Arc<CaseModel>>;
/// Computes a size; what it was before is given up with it, whose memory the next can have.
type One<'a> = dyn Fn(usize, Option<OneSize>) -> (OneSize, usize) + Sync + 'a;

impl Engine {
    /// All cases of the plans of all views. Of an earlier model is kept what does not hang on what was touched; a plan without is not that
    /// of before.
    fn computed(
        &mut self,
        whole: &Whole,
        plans: Vec<(Arc<Plan>, Option<Vec<NodeId>>)>,
        rows: &Rows,
        last: Option<Model>,
        chart: &[Finding],
    ) -> Model {
        let count = rows.len();
        let before = last.as_ref().map(Model::of_views);
        let affected: Vec<Option<Affected>> = plans
            .iter()
            .enumerate()
            .map(|(i, (plan, touched))| {
                let touched = touched.as_ref()?;
                // Where nearly everything is touched, keeping the rest costs more than it spares.
                let affected = affected(plan, before?.get(i)?, touched, rows);
                (4 * affected.tasks.len() < 3 * plan.tasks.len()).then_some(affected)
            })
            .collect();
        let old = last.map_or_else(Vec::new, |last| by_size(last, count));
        let one = |i: usize, old: Option<OneSize>| {
            let mut done: OneSize = Vec::with_capacity(plans.len());
            let mut nodes = 0;
            for (v, ((plan, _), affected)) in plans.iter().zip(&affected).enumerate() {
                let model = old.as_ref().and_then(|o| o.get(v));
                let earlier = model.zip(affected.as_ref()).map(|(model, affected)| Earlier { model, affected });
                let (case, count) = compute_case(plan, rows, i, earlier.as_ref(), &done);
                done.push(Arc::new(case));
                nodes += count;
            }
            (done, nodes)
        };
        let tasks = |(plan, affected): (&(Arc<Plan>, _), &Option<Affected>)| {
            affected.as_ref().map_or(plan.0.tasks.len(), |a| a.tasks.len())
        };
        let work = plans.iter().zip(&affected).map(tasks).sum::<usize>() * count;
        let sizes = in_turns(count, work, old, &one);
        self.count = sizes.iter().map(|(_, nodes)| nodes).sum();
        let model = |(v, (plan, _)): (usize, (Arc<Plan>, _))| {
            let cases: Vec<Arc<CaseModel>> = sizes.iter().map(|(views, _)| Arc::clone(&views[v])).collect();
            let mut findings = plan.findings.clone();
            findings.extend_from_slice(chart);
            findings.extend(node_findings(&plan, &cases));
            findings.extend(system_findings(&plan, &cases));
            findings.extend(two_solutions(&plan, &cases, rows));
            whole.told(&mut findings);
            let (draft, bases) = (Arc::clone(&whole.draft), Arc::clone(&whole.bases));
            Model { draft, bases, plan, cases, findings, views: Vec::new() }
        };
        let mut models: Vec<Model> = plans.into_iter().enumerate().map(model).collect();
        let first = models.swap_remove(0);
        if first.plan.view.is_none() {
            return first;
        }
        models.push(first.clone());
        let last = models.len() - 1;
        models.swap(0, last);
        let findings = told_once(&models, models.iter().map(|m| m.findings.clone()).collect());
        Model { findings, views: models, ..first }
    }
}

/// The cases of a model by size, each in all views.
fn by_size(model: Model, count: usize) -> Vec<OneSize> {
    let mut out: Vec<OneSize> = (0..count).map(|_| Vec::new()).collect();
    let views = if model.views.is_empty() { vec![model] } else { model.views };
    for view in views {
        out.iter_mut().zip(view.cases).for_each(|(size, case)| size.push(case));
    }
    out
}

/// The sizes in order, where there is much to do by two threads: the even ones by one, the odd ones by the other.
fn in_turns(count: usize, work: usize, old: Vec<OneSize>, one: &One<'_>) -> Vec<(OneSize, usize)> {
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
    let turns = |first: usize, old: Vec<OneSize>| {
        let mut old = old.into_iter();
        (first..count).step_by(2).map(|i| one(i, old.next())).collect::<Vec<_>>()
    };
    std::thread::scope(|scope| {
        let odd = scope.spawn(carried(|| turns(1, odd_old)));
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
            .map_or_else(|| say!("internal-no-reason"), |text| text.chars().take(200).collect());
        Box::new(Finding::new(Code::Internal).word("problem", text))
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
