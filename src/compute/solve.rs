//! Finding the values of one system in one case.

use std::cell::RefCell;
use std::collections::BTreeMap;
use std::sync::Arc;

use super::item::{EdgeShape, Item, Stop};
use super::machine::{Access, Runner};
use super::model::{CaseAccess, Slot, Solved};
use super::plan::{Def, NodeId, Plan, System};
use crate::base::{Dual, Scalar, tolerance};
use crate::curves::{Curve, Pt, Rigid};
use crate::language::{Kind, Value};
use crate::numeric::{Chosen, Ending, Equations, Settled, Unknowns, conflict, effect, settle, settle_from};

/// Steps of the found values, constants of the format: 10 mm, 5°, a tenth of the start (at least of 1).
pub(super) fn scale_of(kind: Option<Kind>, start: f64) -> f64 {
    match kind {
        Some(Kind::Angle) => tolerance::step::ANGLE,
        Some(Kind::NUMBER) => tolerance::step::NUMBER * start.abs().max(1.0),
        _ => tolerance::step::LENGTH,
    }
}

/// Nodes of a system while it is solved; what lies outside is lifted from plain numbers.
struct Inside<'a, S> {
    plan: &'a Plan,
    system: u32,
    outer: &'a CaseAccess<'a>,
    items: Vec<Option<Item<S>>>,
    lifted: RefCell<BTreeMap<NodeId, Item<S>>>,
}

impl<'a, S: Scalar> Inside<'a, S> {
    fn new(plan: &'a Plan, system: u32, outer: &'a CaseAccess<'a>) -> Self {
        Self { plan, system, outer, items: Vec::new(), lifted: RefCell::default() }
    }

    /// Computes everything inside from the found values.
    fn compute(&mut self, x: &[S]) -> bool {
        let system = &self.plan.systems[self.system as usize];
        self.items.clear();
        self.items.extend(x.iter().map(|v| Some(Item::Value(Value::Real(*v)))));
        for &node in &system.inner {
            let runner = Runner { plan: self.plan, access: &*self };
            let item = runner.node(node).ok();
            self.items.push(item);
        }
        true
    }

    fn residual(&self, equation: usize) -> Option<S> {
        self.item(self.plan.equations[equation].node)?.real()
    }
}

impl<S: Scalar> Access<S> for Inside<'_, S> {
    fn item(&self, node: NodeId) -> Option<Item<S>> {
        let (system, place) = self.plan.homes[node as usize];
        if system == self.system {
            return self.items.get(place as usize)?.clone();
        }
        if let Some(item) = self.lifted.borrow().get(&node) {
            return Some(item.clone());
        }
        let item = lift(&self.outer.item(node)?);
        if item.edge().is_some() {
            self.lifted.borrow_mut().insert(node, item.clone());
        }
        Some(item)
    }
    fn row(&self, row: u32, case: Option<u32>) -> Result<f64, Stop> {
        self.outer.row(row, case)
    }
}

/// A plain item as one that does not depend on anything.
fn lift<S: Scalar>(item: &Item<f64>) -> Item<S> {
    let c = S::constant;
    let point = |p: Pt<f64>| Pt::new(c(p.x), c(p.y));
    match item {
        Item::Value(value) => Item::Value(match value {
            Value::Real(v) => Value::Real(c(*v)),
            Value::Share(v) => Value::Share(c(*v)),
            Value::Pair(x, y) => Value::Pair(c(*x), c(*y)),
            Value::Line(p, d) => Value::Line(p.map(c), d.map(c)),
            Value::Truth(t) => Value::Truth(*t),
            Value::Edge(edge) => Value::Edge(Arc::new(EdgeShape {
                curve: Arc::new(Curve::lifted(&edge.curve)),
                mouths: edge
                    .mouths
                    .iter()
                    .map(|m| super::item::Folded { first: c(m.first), second: c(m.second), name: m.name.clone() })
                    .collect(),
                home: edge.home,
                folded: edge.folded.iter().map(|t| t.map(point)).collect(),
            })),
        }),
        Item::Mouth(m) => Item::Mouth(Arc::new(super::item::Mouth {
            first: c(m.first),
            second: c(m.second),
            first_foot: point(m.first_foot),
            second_foot: point(m.second_foot),
            intake: c(m.intake),
            tip: m.tip.map(point),
            other_tip: m.other_tip.map(point),
            bow: m.bow.map(c),
            leg: m.leg.map(c),
        })),
        Item::Rigid(r) => Item::Rigid(Rigid::lifted(r)),
    }
}

struct SystemEquations<'a> {
    plan: &'a Plan,
    system: u32,
    outer: &'a CaseAccess<'a>,
    plain: Inside<'a, f64>,
}

impl SystemEquations<'_> {
    fn rows<const N: usize>(&mut self, x: &[f64], out: &mut [f64], rows: &mut [f64]) -> bool {
        let n = x.len();
        let system = &self.plan.systems[self.system as usize];
        let mut inside = Inside::<Dual<N>>::new(self.plan, self.system, self.outer);
        // More unknowns than a dual number carries are taken in turns.
        for from in (0..n).step_by(N) {
            let duals: Vec<Dual<N>> = x
                .iter()
                .enumerate()
                .map(
                    |(i, v)| {
                        if (from..from + N).contains(&i) { Dual::unknown(*v, i - from) } else { Dual::constant(*v) }
                    },
                )
                .collect();
            inside.compute(&duals);
            for (e, equation) in system.equations.iter().enumerate() {
                let Some(r) = inside.residual(*equation) else { return false };
                if !r.value.is_finite() || r.slopes.iter().any(|s| !s.is_finite()) {
                    return false;
                }
                out[e] = r.value;
                for k in 0..N.min(n - from) {
                    rows[e * n + from + k] = r.slopes[k];
                }
            }
        }
        true
    }
}

impl Equations for SystemEquations<'_> {
    fn count(&self) -> usize {
        self.plan.systems[self.system as usize].equations.len()
    }

    fn residuals(&mut self, x: &[f64], out: &mut [f64]) -> bool {
        self.plain.compute(x);
        let system = &self.plan.systems[self.system as usize];
        for (e, equation) in system.equations.iter().enumerate() {
            match self.plain.residual(*equation) {
                Some(r) if r.is_finite() => out[e] = r,
                _ => return false,
            }
        }
        true
    }

    fn jacobian(&mut self, x: &[f64], out: &mut [f64], rows: &mut [f64]) -> bool {
        match x.len() {
            1 => self.rows::<1>(x, out, rows),
            2 => self.rows::<2>(x, out, rows),
            3 | 4 => self.rows::<4>(x, out, rows),
            _ => self.rows::<8>(x, out, rows),
        }
    }
}

/// Start, least and most of the found values of a system; `None` where one of them has no value.
struct Start {
    start: Vec<f64>,
    least: Vec<f64>,
    most: Vec<f64>,
    scale: Vec<f64>,
    outside: Vec<bool>,
    crossed: Vec<bool>,
}

fn start_of(plan: &Plan, found: &[NodeId], outer: &CaseAccess<'_>) -> Result<Start, (NodeId, Stop)> {
    let runner = Runner { plan, access: outer };
    let mut s = Start {
        start: Vec::new(),
        least: Vec::new(),
        most: Vec::new(),
        scale: Vec::new(),
        outside: Vec::new(),
        crossed: Vec::new(),
    };
    for &node in found {
        let Def::Found(start, least, most) = &plan.nodes[node as usize].def else {
            return Err((node, Stop::upstream()));
        };
        let real = |f: &super::plan::Formula| -> Result<f64, (NodeId, Stop)> {
            let item: Item<f64> = runner.formula(f).map_err(|stop| (node, stop))?;
            item.real().ok_or((node, Stop::upstream()))
        };
        let value = real(start)?;
        let low = least.as_ref().map_or(Ok(f64::NEG_INFINITY), real)?;
        let high = most.as_ref().map_or(Ok(f64::INFINITY), real)?;
        s.scale.push(scale_of(plan.nodes[node as usize].kind, value));
        s.outside.push(value < low - tolerance::EQUAL || value > high + tolerance::EQUAL);
        s.crossed.push(low > high);
        s.start.push(value);
        s.least.push(low);
        s.most.push(high.max(low));
    }
    Ok(s)
}

/// A found value that no system moves: its start, within its limits.
pub(super) fn idle(plan: &Plan, node: NodeId, outer: &CaseAccess<'_>) -> (Slot, Option<Solved>) {
    match start_of(plan, &[node], outer) {
        Err((_, stop)) => (Slot::Failed(stop), None),
        Ok(s) => {
            let x = s.start[0].clamp(s.least[0], s.most[0]);
            let told = s.outside[0] || s.crossed[0];
            let solved = told.then(|| Solved {
                values: vec![node],
                x: vec![x],
                outside: s.outside,
                crossed: s.crossed,
                ..Solved::default()
            });
            (Slot::Good(Item::Value(Value::Real(x))), solved)
        }
    }
}

/// Solves a system in one case: the slots of its found values and of all between, and how it ended.
pub(super) fn solve(plan: &Plan, system: u32, outer: &CaseAccess<'_>) -> (Vec<(NodeId, Slot)>, Option<Solved>) {
    let shape: &System = &plan.systems[system as usize];
    let members = shape.found.iter().chain(&shape.inner);
    let start = match start_of(plan, &shape.found, outer) {
        Ok(start) => start,
        Err((node, stop)) => {
            let slot = |n: NodeId| Slot::Failed(if n == node { stop.clone() } else { Stop::upstream() });
            return (members.map(|n| (*n, slot(*n))).collect(), None);
        }
    };
    let unknowns = Unknowns { start: &start.start, scale: &start.scale, least: &start.least, most: &start.most };
    let mut equations = SystemEquations { plan, system, outer, plain: Inside::new(plan, system, outer) };
    let settled = settle(&unknowns, &mut equations);
    let mut solved = Solved {
        values: shape.found.clone(),
        equations: shape.equations.clone(),
        outside: start.outside.clone(),
        crossed: start.crossed.clone(),
        iterations: settled.iterations,
        evaluations: settled.evaluations,
        ending: Some(settled.ending),
        at_limit: settled.at_limit.clone(),
        ..Solved::default()
    };
    diagnose(&unknowns, &mut equations, &settled, &mut solved);
    // The settled point once more in plain numbers: these are the values of the nodes.
    equations.plain.compute(&settled.x);
    solved.residuals = shape.equations.iter().map(|e| equations.plain.residual(*e).unwrap_or(f64::NAN)).collect();
    solved.x = settled.x;
    let runner_items = std::mem::take(&mut equations.plain.items);
    let mut slots = Vec::with_capacity(runner_items.len());
    for (node, item) in members.zip(runner_items) {
        slots.push((*node, item.map_or(Slot::Failed(Stop::upstream()), Slot::Good)));
    }
    if slots.iter().any(|(_, s)| matches!(s, Slot::Failed(_))) {
        tell_failures(plan, system, outer, &mut slots);
    }
    (slots, Some(solved))
}

/// Nodes inside that could not be computed at the settled point get their own reasons.
fn tell_failures(plan: &Plan, system: u32, outer: &CaseAccess<'_>, slots: &mut [(NodeId, Slot)]) {
    let mut inside = Inside::<f64>::new(plan, system, outer);
    let found = plan.systems[system as usize].found.len();
    for (i, (node, slot)) in slots.iter_mut().enumerate() {
        if i >= found {
            let runner = Runner { plan, access: &inside };
            *slot = match runner.node(*node) {
                Ok(item) => Slot::Good(item),
                Err(stop) => Slot::Failed(stop),
            };
        }
        inside.items.push(slot.good().cloned());
    }
}

/// What a person needs to know of a system that did not come out, and of values without effect.
fn diagnose(unknowns: &Unknowns<'_>, equations: &mut SystemEquations<'_>, settled: &Settled, solved: &mut Solved) {
    let (m, n) = (equations.count(), unknowns.start.len());
    let mut residuals = vec![0.0; m];
    let mut rows = vec![0.0; m * n];
    if settled.ending != Ending::True || settled.iterations > 0 {
        // At the very start nothing was moved; elsewhere the effect is looked at where the search ended.
        if equations.jacobian(&settled.x, &mut residuals, &mut rows) {
            let effects = effect(&rows, m, n, unknowns.scale);
            solved.without_effect = effects.iter().map(|e| *e < tolerance::NO_EFFECT).collect();
        }
    }
    if !matches!(settled.ending, Ending::NotTrue | Ending::RanOut) {
        return;
    }
    let stopped: Vec<usize> = (0..n).filter(|i| settled.at_limit[*i].is_some()).collect();
    if !stopped.is_empty() {
        let mut true_without = |lifted: &dyn Fn(usize) -> bool| {
            let pick = |i: usize, limit: f64, none: f64| if lifted(i) { none } else { limit };
            let least: Vec<f64> = (0..n).map(|i| pick(i, unknowns.least[i], f64::NEG_INFINITY)).collect();
            let most: Vec<f64> = (0..n).map(|i| pick(i, unknowns.most[i], f64::INFINITY)).collect();
            let free = Unknowns { start: unknowns.start, scale: unknowns.scale, least: &least, most: &most };
            settle(&free, equations).ending == Ending::True
        };
        solved.limit_in_way = true_without(&|_| true);
        if solved.limit_in_way {
            // The one limit that is enough, if one is.
            let alone = stopped.iter().find(|s| true_without(&|i| i == **s));
            solved.stopping = (0..n).map(|i| alone.map_or(stopped.contains(&i), |a| *a == i)).collect();
            return;
        }
    }
    if m <= MOST_EXPLAINED {
        solved.conflict = conflict(m, &mut |chosen| {
            chosen.is_empty() || settle(unknowns, &mut Chosen::new(equations, chosen)).ending == Ending::True
        });
    }
}

/// Where the solution of a neighbouring size leads in this one, if to another one than was taken: the found values.
pub(super) fn other_solution(
    plan: &Plan,
    system: u32,
    outer: &CaseAccess<'_>,
    own: &[f64],
    near: &[f64],
) -> Option<Vec<f64>> {
    let start = start_of(plan, &plan.systems[system as usize].found, outer).ok()?;
    let unknowns = Unknowns { start: &start.start, scale: &start.scale, least: &start.least, most: &start.most };
    let mut equations = SystemEquations { plan, system, outer, plain: Inside::new(plan, system, outer) };
    let begin: Vec<f64> = (0..near.len()).map(|i| near[i].clamp(start.least[i], start.most[i])).collect();
    let settled = settle_from(&unknowns, &begin, &mut equations);
    let apart = (0..own.len()).map(|i| (settled.x[i] - own[i]).abs()).fold(0.0, f64::max);
    (settled.ending == Ending::True && apart > tolerance::ON_EDGE).then_some(settled.x)
}

/// Systems with more equations are told without a smallest set.
const MOST_EXPLAINED: usize = 40;
