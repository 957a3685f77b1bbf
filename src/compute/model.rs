//! The plan evaluated for each case, and what was found while doing so. Long, reason: findings of computing stand beside what they are of.

use std::collections::BTreeSet;
use std::sync::Arc;

use super::item::{Item, NodeTrouble, Stop};
use super::machine::{Access, Runner};
use super::plan::{Def, Formula, NodeId, Plan, Task};
use super::slots::Slots;
use super::solve;
use crate::base::{Amount, Code, Finding, tolerance};
use crate::document::Draft;
use crate::language::{Kind, Trouble, Value};
use crate::numeric::{Bound, Ending};
use crate::texts::{decimal, own, owned, said, say};

/// The value of a node in one case, or why it has none.
#[derive(Clone, Debug, PartialEq)]
pub enum Slot {
    /// A value.
    Good(Item<f64>),
    /// None.
    Failed(Stop),
}

impl Slot {
    /// The value, if there is one.
    pub fn good(&self) -> Option<&Item<f64>> {
        match self {
            Self::Good(item) => Some(item),
            Self::Failed(_) => None,
        }
    }
}

/// How a system ended in one case.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Solved {
    /// The found values.
    pub values: Vec<NodeId>,
    /// What they became.
    pub x: Vec<f64>,
    /// The equations, as places in the plan's list.
    pub equations: Vec<usize>,
    /// What is left of each, mm.
    pub residuals: Vec<f64>,
    /// How the search ended.
    pub ending: Option<Ending>,
    /// Which values rest at a limit.
    pub at_limit: Vec<Option<Bound>>,
    /// Whether everything would be true without the limits.
    pub limit_in_way: bool,
    /// Which values would have to pass their limit for that.
    pub stopping: Vec<bool>,
    /// A smallest set of equations that contradict each other, as places among its equations: without any one of them the
    /// others can hold.
    pub conflict: Vec<usize>,
    /// Which values change nothing.
    pub without_effect: Vec<bool>,
    /// Which starts lay outside their limits.
    pub outside: Vec<bool>,
    /// Which limits are crossed.
    pub crossed: Vec<bool>,
    /// Steps of the search.
    pub iterations: u32,
    /// Evaluations of the search.
    pub evaluations: u32,
}

impl Solved {
    /// Whether all its equations hold.
    pub fn is_true(&self) -> bool {
        self.ending.is_none_or(|e| e == Ending::True)
    }
}

/// Everything that is known in one case.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct CaseModel {
    /// The slot of each node.
    pub slots: Slots,
    /// Nodes that hang on equations that do not hold: computed from the nearest fit.
    pub untrue: Vec<bool>,
    /// How each system ended; found values without a system come after, where there is something to say.
    pub solved: Vec<Arc<Solved>>,
    /// Numbers of the chart's rows.
    pub rows: Arc<[Result<f64, Stop>]>,
}

/// What formulas see in one case.
pub(super) struct CaseAccess<'a> {
    pub slots: &'a Slots,
    pub rows: &'a [Result<f64, Stop>],
    /// The rows of all cases, where they are at hand.
    pub all_rows: &'a [Arc<[Result<f64, Stop>]>],
}

impl Access<f64> for CaseAccess<'_> {
    fn item(&self, node: NodeId) -> Option<Item<f64>> {
        self.slots.get(node as usize)?.good().cloned()
    }
    fn row(&self, row: u32, case: Option<u32>) -> Result<f64, Stop> {
        let rows = match case {
            None => Some(self.rows),
            Some(case) => self.all_rows.get(case as usize).map(|r| &**r),
        };
        rows.and_then(|r| r.get(row as usize)).cloned().unwrap_or_else(|| Err(Stop::upstream()))
    }
}

/// A draft computed in all its cases.
#[derive(Clone, Debug)]
pub struct Model {
    /// The draft that was computed; derived pieces are told in it like ordinary ones.
    pub draft: Arc<Draft>,
    /// Names of the pieces of which others are made, by deriving or joining.
    pub bases: Arc<BTreeSet<String>>,
    /// What it was computed from.
    pub plan: Arc<Plan>,
    /// One for each of the plan's cases.
    pub cases: Vec<Arc<CaseModel>>,
    /// What computing found, in the order of the plan; where there are views, in all of them.
    pub findings: Vec<Finding>,
    /// One for each view, in their order; this one has the plan and cases of the first. Empty where the draft has no views.
    pub views: Vec<Self>,
}

impl Model {
    /// Itself, or one for each view.
    pub fn of_views(&self) -> &[Self] {
        if self.views.is_empty() { std::slice::from_ref(self) } else { &self.views }
    }

    /// The name of its view; empty where the draft has none.
    pub fn view(&self) -> &str {
        self.plan.view.as_deref().unwrap_or("")
    }

    /// The value of a node in a case.
    pub fn item(&self, case: usize, node: NodeId) -> Option<&Item<f64>> {
        self.cases.get(case)?.slots.get(node as usize)?.good()
    }

    /// Whether a node's value hangs on something that is not true.
    pub fn is_untrue(&self, case: usize, node: NodeId) -> bool {
        self.cases.get(case).and_then(|c| c.untrue.get(node as usize)).copied().unwrap_or(false)
    }

    /// A formula of the plan, evaluated in a case.
    pub fn evaluate(&self, plan: &Plan, case: usize, formula: &Formula) -> Result<Item<f64>, Stop> {
        let Some(model) = self.cases.get(case) else { return Err(Stop::upstream()) };
        let access = CaseAccess { slots: &model.slots, rows: &model.rows, all_rows: &[] };
        Runner { plan, access: &access }.formula(formula)
    }
}

/// What may be kept of an earlier model of the same shape.
pub(super) struct Earlier<'a> {
    pub model: &'a CaseModel,
    pub affected: &'a Affected,
}

/// What may have another value than in an earlier model.
pub(super) struct Affected {
    /// The tasks, in the order of the plan.
    pub tasks: Vec<usize>,
    /// Nodes that are computed anew in any case.
    anew: Vec<bool>,
}

/// All that hangs on these nodes, and on rows with another number in any case.
pub(super) fn affected(plan: &Plan, last: &Model, touched: &[NodeId], rows: &[Arc<[Result<f64, Stop>]>]) -> Affected {
    let mut anew = vec![false; plan.nodes.len()];
    touched.iter().for_each(|node| anew[*node as usize] = true);
    let is_other = |row: usize| last.cases.iter().zip(rows).any(|(a, b)| a.rows.get(row) != b.get(row));
    let others: Vec<bool> = (0..rows.first().map_or(0, |r| r.len())).map(is_other).collect();
    if others.contains(&true) {
        for (node, anew) in plan.nodes.iter().zip(&mut anew) {
            if let Def::Row(row) | Def::RowIn(row, _) = node.def {
                *anew |= others.get(row as usize) == Some(&true);
            }
        }
    }
    let mut reached = anew.clone();
    let mut tasks = Vec::new();
    let hangs = |node: NodeId, reached: &[bool]| {
        reached[node as usize] || plan.nodes[node as usize].deps.iter().any(|d| reached[*d as usize])
    };
    for (i, task) in plan.tasks.iter().enumerate() {
        match task {
            Task::Node(node) => {
                reached[*node as usize] = hangs(*node, &reached);
                // What is said of a value that nothing finds is kept nowhere.
                if reached[*node as usize] || matches!(plan.nodes[*node as usize].def, Def::Found(..)) {
                    tasks.push(i);
                }
            }
            Task::System(s) => {
                let members = || plan.systems[*s].found.iter().chain(&plan.systems[*s].inner);
                if members().any(|m| hangs(*m, &reached)) {
                    members().for_each(|m| reached[*m as usize] = true);
                    tasks.push(i);
                }
            }
        }
    }
    Affected { tasks, anew }
}

/// Computes one case; gives also how many nodes it took. `before`: the same size in the views before this one.
pub(super) fn compute_case(
    plan: &Plan,
    all_rows: &[Arc<[Result<f64, Stop>]>],
    case: usize,
    earlier: Option<&Earlier<'_>>,
    before: &[Arc<CaseModel>],
) -> (CaseModel, usize) {
    let rows = &all_rows[case];
    let count = plan.nodes.len();
    let start = plan.shared.start.filter(|_| earlier.is_none());
    let (slots, untrue, solved) = match (earlier, start) {
        (Some(e), _) => (e.model.slots.clone(), e.model.untrue.clone(), e.model.solved[..plan.systems.len()].to_vec()),
        (None, Some(view)) => {
            (before[view].slots.clone(), before[view].untrue.clone(), vec![Arc::default(); plan.systems.len()])
        }
        (None, None) => (Slots::new(count), vec![false; count], vec![Arc::default(); plan.systems.len()]),
    };
    let moved = vec![earlier.is_none(); count];
    let model = CaseModel { slots, untrue, solved, rows: Arc::clone(rows) };
    let mut run =
        CaseRun { plan, all_rows, earlier: earlier.map(|e| e.affected), before, start, model, moved, count: 0 };
    if start.is_some() {
        plan.shared.gone.iter().for_each(|node| run.leave_out(*node));
    }
    let idle: Vec<Arc<Solved>> = match earlier {
        Some(e) => e.affected.tasks.iter().filter_map(|i| run.task(*i)).map(Arc::new).collect(),
        None => (0..plan.tasks.len()).filter_map(|i| run.task(i)).map(Arc::new).collect(),
    };
    run.model.solved.extend(idle);
    (run.model, run.count)
}

/// A case while it is computed.
struct CaseRun<'a> {
    plan: &'a Plan,
    all_rows: &'a [Arc<[Result<f64, Stop>]>],
    earlier: Option<&'a Affected>,
    /// The same size in the views before this one.
    before: &'a [Arc<CaseModel>],
    /// The view among them from which it began.
    start: Option<usize>,
    model: CaseModel,
    /// Nodes whose value is another one than in the earlier model.
    moved: Vec<bool>,
    /// Nodes that were computed.
    count: usize,
}

impl CaseRun<'_> {
    fn access(&self) -> CaseAccess<'_> {
        CaseAccess { slots: &self.model.slots, rows: &self.model.rows, all_rows: self.all_rows }
    }

    /// Whether a node is computed anew: for itself, or for what it needs.
    fn is_needed(&self, node: NodeId) -> bool {
        let itself = self.earlier.is_none_or(|e| e.anew[node as usize]);
        itself || self.plan.nodes[node as usize].deps.iter().any(|d| self.moved[*d as usize])
    }

    fn needs_untrue(&self, node: NodeId) -> bool {
        self.plan.nodes[node as usize].deps.iter().any(|d| self.model.untrue[*d as usize])
    }

    fn put(&mut self, node: NodeId, slot: Slot) {
        let i = node as usize;
        self.moved[i] = self.earlier.is_none() || slot != self.model.slots[i];
        if self.moved[i] {
            self.model.slots.set(i, slot);
        }
    }

    /// A node that is not of this view.
    fn leave_out(&mut self, node: NodeId) {
        self.model.slots.set(node as usize, Slot::Failed(Stop::upstream()));
        self.model.untrue[node as usize] = false;
    }

    /// Takes what an earlier view computed.
    fn take(&mut self, task: &Task, view: usize, their_system: usize) {
        let theirs = &self.before[view];
        if let Task::System(s) = task {
            self.model.solved[*s] = Arc::clone(&theirs.solved[their_system]);
        }
        // Where it began from that view, it has the rest already.
        if self.start == Some(view) {
            return;
        }
        let members: Vec<NodeId> = match task {
            Task::Node(node) => vec![*node],
            Task::System(s) => {
                let system = &self.plan.systems[*s];
                system.found.iter().chain(&system.inner).copied().collect()
            }
        };
        for node in members {
            self.model.untrue[node as usize] = theirs.untrue[node as usize];
            self.put(node, theirs.slots[node as usize].clone());
        }
    }

    /// Does a task; gives what is to be said of a found value without a system.
    fn task(&mut self, place: usize) -> Option<Solved> {
        let plan = self.plan;
        let task = &plan.tasks[place];
        if let Some((view, system)) = plan.shared.of_task(place) {
            self.take(task, view, system);
            return None;
        }
        match task {
            Task::Node(node) => {
                self.model.untrue[*node as usize] = self.needs_untrue(*node);
                if matches!(plan.nodes[*node as usize].def, Def::Found(..)) {
                    let (slot, told) = solve::idle(plan, *node, &self.access());
                    self.count += 1;
                    self.put(*node, slot);
                    return told;
                }
                if self.is_needed(*node) {
                    let slot = match (Runner { plan, access: &self.access() }).node(*node) {
                        Ok(item) => Slot::Good(item),
                        Err(stop) => Slot::Failed(stop),
                    };
                    self.count += 1;
                    self.put(*node, slot);
                }
            }
            Task::System(s) => {
                let members = || plan.systems[*s].found.iter().chain(&plan.systems[*s].inner);
                // Its own members are marked below; from an earlier model they may be marked still.
                let outside = |d: &&NodeId| plan.homes[**d as usize].0 != *s as u32;
                let mut needed = members().flat_map(|m| &plan.nodes[*m as usize].deps).filter(outside);
                let outside_untrue = needed.any(|d| self.model.untrue[*d as usize]);
                if members().any(|m| self.is_needed(*m)) {
                    let (new, how) = solve::solve(plan, *s as u32, &self.access());
                    self.model.solved[*s] = Arc::new(how.unwrap_or_default());
                    self.count += new.len();
                    new.into_iter().for_each(|(node, slot)| self.put(node, slot));
                }
                let wrong = outside_untrue || !self.model.solved[*s].is_true();
                members().for_each(|m| self.model.untrue[*m as usize] = wrong);
            }
        }
        None
    }
}

/// A finding for trouble, without a place yet.
pub(super) fn trouble_finding(stop: &Stop) -> Finding {
    let words = |id: &str| said(own(), id, &[]);
    let mut f = match &stop.trouble {
        NodeTrouble::Formula(trouble) => match trouble {
            Trouble::Upstream | Trouble::Nothing => Finding::new(Code::NoAnswer),
            Trouble::NotFinite(problem) => Finding::new(Code::NotFinite).word("problem", words(problem)),
            Trouble::OffTheEdge(at, length) => Finding::new(Code::OffTheEdge)
                .mm("at", *at)
                .mm("length", *length)
                .word("edge", say!("trouble-the-edge")),
            Trouble::NotOnEdge(distance) => {
                Finding::new(Code::NotOnEdge).mm("distance", *distance).word("edge", say!("trouble-the-edge"))
            }
            Trouble::NoAnswer(problem) => Finding::new(Code::NoAnswer).word("problem", words(problem)),
            Trouble::Several(count) => Finding::new(Code::SeveralAnswers).word("count", count.to_string()),
            Trouble::InsideMouth(dart) => Finding::new(Code::InsideMouth).word("dart", dart.clone()),
        },
        NodeTrouble::ArcUneven { start, end } => Finding::new(Code::ArcUneven).mm("start", *start).mm("end", *end),
        NodeTrouble::TakenApart { which, point, distance } => {
            Finding::new(Code::TakenApart).word("which", words(which)).word("point", &**point).mm("distance", *distance)
        }
        NodeTrouble::Curve(problem) => Finding::new(Code::EdgeBroken).word("problem", words(problem)),
        NodeTrouble::MouthOff(problem) => Finding::new(Code::DartOff).word("problem", words(problem)),
        NodeTrouble::MouthOverlap(a, b) => Finding::new(Code::DartOverlap).word("dart", &**a).word("other", &**b),
        NodeTrouble::RunBroken { distance, turned_fits, .. } => {
            let hint = if *turned_fits { say!("trouble-run-turned") } else { String::new() };
            Finding::new(Code::RunBroken).mm("distance", *distance).word("hint", hint)
        }
    };
    if let Some((text, span)) = &stop.formula {
        f.formula = text.to_string();
        f.span = Some(*span);
    }
    f
}

/// What is to be said of trouble that came up while a formula was evaluated; none where its cause is told elsewhere.
pub fn told_of(stop: &Stop) -> Option<Finding> {
    (!stop.is_upstream()).then(|| trouble_finding(stop))
}

/// What computing found: trouble of nodes, joined over the sizes, in the order of the plan.
pub(super) fn node_findings(plan: &Plan, cases: &[Arc<CaseModel>]) -> Vec<Finding> {
    let mut out: Vec<Finding> = Vec::new();
    let failed = cases.iter().flat_map(|c| c.slots.failed()).filter(|(_, stop)| !stop.is_upstream());
    let mut failed: Vec<usize> = failed.map(|(node, _)| node).collect();
    failed.sort_unstable();
    failed.dedup();
    for i in failed {
        let (node, from) = (&plan.nodes[i], out.len());
        for (case, model) in plan.cases.list.iter().zip(cases) {
            let Some(Slot::Failed(stop)) = model.slots.get(i) else { continue };
            if stop.is_upstream() || matches!(node.def, Def::Row(_) | Def::RowIn(..)) {
                continue;
            }
            let mut finding = trouble_finding(stop);
            if let (Def::Side(runs), NodeTrouble::RunBroken { before, .. }) = (&node.def, &stop.trouble) {
                finding = finding.word("before", &*runs[*before].text).word("edge", &*runs[before + 1].text);
            }
            if matches!(finding.code, Code::DartOff | Code::DartOverlap) {
                let dart = node.part.name.rsplit('.').next().unwrap_or_default();
                finding = finding.word("dart", dart).word("edge", &*node.part.edge);
            }
            let same = out[from..].iter_mut().find(|f| {
                f.code == finding.code
                    && f.formula == finding.formula
                    && f.span == finding.span
                    && f.words == finding.words
            });
            match same {
                Some(known) => join(known, &finding, &case.address),
                None => {
                    let name = node.part.name.strip_suffix(" as drawn").unwrap_or(&node.part.name);
                    let mut finding =
                        finding.piece(&*node.part.piece).edge(&*node.part.edge).seam(&*node.part.seam).at(name);
                    finding.sizes.push(case.address.clone());
                    out.push(finding);
                }
            }
        }
    }
    out
}

/// Takes one more size into a finding; numbers go along.
pub(super) fn join(known: &mut Finding, one: &Finding, size: &str) {
    let count = known.sizes.len();
    for (a, b) in known.amounts.iter_mut().zip(&one.amounts) {
        if a.by_size.len() < count {
            let first = a.by_size.first().copied().unwrap_or(f64::NAN);
            a.by_size.resize(count, first);
        }
        a.by_size.push(b.by_size.first().copied().unwrap_or(f64::NAN));
    }
    known.sizes.push(size.to_owned());
    known.worst = worst_of(&known.amounts);
}

/// The size in which the last of the numbers is largest.
fn worst_of(amounts: &[Amount]) -> usize {
    let Some(last) = amounts.last() else { return 0 };
    let mut worst = 0;
    for (i, v) in last.by_size.iter().enumerate() {
        if v.abs() > last.by_size[worst].abs() {
            worst = i;
        }
    }
    worst
}

/// What the search for found values found, joined over the sizes.
pub(super) fn system_findings(plan: &Plan, cases: &[Arc<CaseModel>]) -> Vec<Finding> {
    let mut out: Vec<Finding> = Vec::new();
    let name = |node: NodeId| plan.nodes[node as usize].part.name.to_string();
    let add = |mut finding: Finding, size: &str, out: &mut Vec<Finding>| {
        let same =
            out.iter_mut().find(|f| f.code == finding.code && f.words == finding.words && f.place == finding.place);
        match same {
            Some(known) => join(known, &finding, size),
            None => {
                finding.sizes.push(size.to_owned());
                out.push(finding);
            }
        }
    };
    for (case, model) in plan.cases.list.iter().zip(cases) {
        for solved in &model.solved {
            let size = case.address.as_str();
            let at = |code: Code, value: NodeId| {
                Finding::new(code).at(format!("value {}", name(value))).word("value", name(value))
            };
            for (i, &value) in solved.values.iter().enumerate() {
                if solved.crossed.get(i) == Some(&true) {
                    add(at(Code::LimitsCrossed, value), size, &mut out);
                } else if solved.outside.get(i) == Some(&true) {
                    add(at(Code::StartOutside, value), size, &mut out);
                }
                if solved.without_effect.get(i) == Some(&true) {
                    let named = solved.equations.iter().filter(|e| plan.equations[**e].found_by.contains(&value));
                    let list: Vec<&str> = named.map(|e| &*plan.equations[*e].name).collect();
                    let finding = at(Code::NoEffect, value)
                        .word("conditions", list.join(", "))
                        .word("problem", say!("found-no-effect"));
                    add(finding, size, &mut out);
                }
            }
            // What keeps a system from being computed at all is told where it happens.
            if !solved.is_true() && solved.ending != Some(Ending::StartNotComputable) {
                add(untrue_finding(plan, solved), size, &mut out);
            }
        }
    }
    out
}

/// Found values that move so many times as far as usual from one size to the next jump.
const JUMP_TIMES: f64 = 3.0;
/// So many steps show which is usual.
const FEW_STEPS: usize = 4;

/// Sizes in which found values jump away from those of a neighbour although its solution leads to another one here.
pub(super) fn two_solutions(
    plan: &Plan,
    cases: &[Arc<CaseModel>],
    all_rows: &[Arc<[Result<f64, Stop>]>],
) -> Vec<Finding> {
    let mut out: Vec<Finding> = Vec::new();
    let range = plan.cases.range.min(cases.len());
    for s in 0..plan.systems.len() {
        // From each size to the next, in steps of the values' scales.
        let step = |case: usize| -> f64 {
            let (a, b) = (&cases[case].solved[s], &cases[case + 1].solved[s]);
            if !a.is_true() || !b.is_true() || a.x.len() != b.x.len() {
                return 0.0;
            }
            let scale = |i: usize| solve::scale_of(plan.nodes[a.values[i] as usize].kind, a.x[i]);
            (0..a.x.len()).map(|i| ((a.x[i] - b.x[i]) / scale(i)).abs()).fold(0.0, f64::max)
        };
        let steps: Vec<f64> = (1..range).map(|case| step(case - 1)).collect();
        let mut sorted = steps.clone();
        sorted.sort_by(f64::total_cmp);
        // Of few steps none is the usual one.
        let usual = if sorted.len() < FEW_STEPS { 0.0 } else { sorted[sorted.len() / 4] };
        let is_jump = |i: usize| steps.get(i).is_some_and(|s| *s > tolerance::step::JUMP.max(JUMP_TIMES * usual));
        // Of two sizes between which there is a jump the one that jumps on its other side too, or stands at an end, is the odd one.
        let odd = |i: usize| match i {
            i if i > 0 && is_jump(i - 1) => (i, i + 1),
            i if is_jump(i + 1) || i > 0 => (i + 1, i),
            i => (i, i + 1),
        };
        let mut told = Vec::new();
        for (case, near) in (0..range).filter(|i| is_jump(*i)).map(odd) {
            if told.contains(&case) {
                continue;
            }
            told.push(case);
            let model = &cases[case];
            let own = &model.solved[s];
            if !own.is_true() || own.x.is_empty() {
                continue;
            }
            let other = &cases[near].solved[s];
            if !other.is_true() || other.x.len() != own.x.len() {
                continue;
            }
            let access = CaseAccess { slots: &model.slots, rows: &model.rows, all_rows };
            let Some(x) = solve::other_solution(plan, s as u32, &access, &own.x, &other.x) else { continue };
            let most = |i: &usize, k: &usize| (x[*i] - own.x[*i]).abs().total_cmp(&(x[*k] - own.x[*k]).abs());
            let Some(i) = (0..x.len()).max_by(most) else { continue };
            let node = &plan.nodes[own.values[i] as usize];
            let finding = Finding::new(Code::TwoSolutions)
                .at(format!("value {}", node.part.name))
                .word("value", &*node.part.name)
                .word("neighbour", plan.cases.list[near].address.clone());
            let mut finding = match node.kind {
                Some(Kind::LENGTH) => finding.mm("taken", own.x[i]).mm("other", x[i]),
                Some(Kind::Angle) => {
                    let degrees = |a: f64| owned(|| decimal(&format!("{:.2}°", a.to_degrees())));
                    finding.word("taken", degrees(own.x[i])).word("other", degrees(x[i]))
                }
                _ => {
                    let number = |v: f64| owned(|| decimal(&format!("{v:.4}")));
                    finding.word("taken", number(own.x[i])).word("other", number(x[i]))
                }
            };
            finding.sizes.push(plan.cases.list[case].address.clone());
            out.push(finding);
        }
    }
    out
}

fn untrue_finding(plan: &Plan, solved: &Solved) -> Finding {
    let name = |node: NodeId| plan.nodes[node as usize].part.name.to_string();
    let wrong: Vec<usize> = (0..solved.equations.len())
        .filter(|i| solved.residuals[*i].is_nan() || solved.residuals[*i].abs() > tolerance::EQUAL)
        .collect();
    let against = if solved.conflict.is_empty() || solved.limit_in_way { &wrong } else { &solved.conflict };
    let conditions: Vec<&str> = against.iter().map(|i| &*plan.equations[solved.equations[*i]].name).collect();
    let excess = solved.residuals.iter().fold(0.0f64, |worst, r| if r.abs() > worst.abs() { *r } else { worst });
    let values: Vec<String> = solved.values.iter().map(|v| name(*v)).collect();
    let first = against.first().map(|i| &plan.nodes[plan.equations[solved.equations[*i]].node as usize].part);
    let code = match solved.ending {
        Some(Ending::NotTrue) if solved.limit_in_way => Code::LimitInWay,
        Some(Ending::NotTrue) => Code::NotTrue,
        _ => Code::NotSolved,
    };
    let mut finding = Finding::new(code)
        .seam(first.map_or("", |p| &*p.seam))
        .at(first.map_or("", |p| &*p.name))
        .word("conditions", conditions.join(", "))
        .word("values", values.join(", "))
        .word("count", solved.evaluations.to_string());
    if code == Code::LimitInWay {
        let stops = |i: usize| solved.stopping.get(i).copied().unwrap_or(true);
        let at_limit = solved.at_limit.iter().enumerate();
        let stopped: Vec<_> = at_limit.filter(|(i, _)| stops(*i)).filter_map(|(i, b)| b.map(|b| (i, b))).collect();
        let which: Vec<String> = stopped.iter().map(|(i, _)| name(solved.values[*i])).collect();
        let limit = |bound: Bound| if bound == Bound::Least { say!("found-least") } else { say!("found-most") };
        let limits: Vec<String> = stopped.iter().map(|(_, bound)| limit(*bound)).collect();
        finding = finding.word("value", which.join(", ")).word("limit", limits.join(", "));
    }
    if code == Code::NotTrue {
        let hint = match solved.conflict.len() {
            0 | 1 => String::new(),
            2 => say!("found-without-either"),
            _ => say!("found-without-any"),
        };
        let together = if solved.conflict.len() > 1 { say!("found-together") } else { String::new() };
        finding = finding.word("together", together).word("hint", hint);
    }
    finding.words.retain(|(n, _)| *n != "count" || code == Code::NotSolved);
    finding.mm("excess", excess.abs())
}

/// A node's value as plain numbers, for tables: mm, mm2, radians, plain; an edge counts as its sewn length.
pub(super) fn plain(item: &Item<f64>) -> Option<Value<f64, ()>> {
    Some(match item {
        Item::Value(Value::Real(v)) => Value::Real(*v),
        Item::Value(Value::Pair(x, y)) => Value::Pair(*x, *y),
        Item::Value(Value::Truth(t)) => Value::Truth(*t),
        Item::Value(Value::Edge(e)) => Value::Real(e.sewn_length()),
        Item::Value(Value::Line(p, d)) => Value::Line(*p, *d),
        _ => return None,
    })
}
