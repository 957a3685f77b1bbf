//! The order in which nodes are computed, circles, and the systems that hang together through found values.

use std::sync::Arc;

use super::plan::{Def, Fit, Formula, NodeId, Plan, SegmentDef, System, Task};
use crate::base::{Code, Finding};
use crate::language::{Function, Kind, Op};
use crate::texts::{id, own, said, say};

/// Groups of things that need each other, each group after those that it needs: Tarjan's algorithm, without recursion.
fn components(count: usize, needs: impl Fn(usize) -> Vec<usize>) -> Vec<Vec<usize>> {
    const NEW: usize = usize::MAX;
    let mut index = vec![NEW; count];
    let mut low = vec![0; count];
    let mut on_stack = vec![false; count];
    let mut stack = Vec::new();
    let mut out = Vec::new();
    let mut next = 0;
    for root in 0..count {
        if index[root] != NEW {
            continue;
        }
        let mut work: Vec<(usize, Vec<usize>, usize)> = Vec::new();
        let mut enter = |v: usize,
                         work: &mut Vec<_>,
                         stack: &mut Vec<usize>,
                         on_stack: &mut Vec<bool>,
                         low: &mut Vec<usize>,
                         index: &mut Vec<usize>| {
            index[v] = next;
            low[v] = next;
            next += 1;
            stack.push(v);
            on_stack[v] = true;
            work.push((v, needs(v), 0));
        };
        enter(root, &mut work, &mut stack, &mut on_stack, &mut low, &mut index);
        while let Some((v, needed, at)) = work.last_mut() {
            let v = *v;
            if let Some(&w) = needed.get(*at) {
                *at += 1;
                if index[w] == NEW {
                    enter(w, &mut work, &mut stack, &mut on_stack, &mut low, &mut index);
                } else if on_stack[w] {
                    low[v] = low[v].min(index[w]);
                }
                continue;
            }
            work.pop();
            if let Some((parent, _, _)) = work.last() {
                low[*parent] = low[*parent].min(low[v]);
            }
            if low[v] == index[v] {
                let mut group = Vec::new();
                while let Some(w) = stack.pop() {
                    on_stack[w] = false;
                    group.push(w);
                    if w == v {
                        break;
                    }
                }
                group.reverse();
                out.push(group);
            }
        }
    }
    out
}

/// An order in which each thing stands after those that it needs, and the circles.
pub(super) fn order_of(count: usize, needs: impl Fn(usize) -> Vec<usize>) -> (Vec<usize>, Vec<Vec<usize>>) {
    let groups = components(count, &needs);
    let circles = groups.iter().filter(|g| g.len() > 1 || needs(g[0]).contains(&g[0])).cloned().collect();
    (groups.into_iter().flatten().collect(), circles)
}

/// Works out dependencies, circles, systems and the order of computing.
pub(super) fn arrange(plan: &mut Plan) {
    depend(plan);
    // Each round breaks at least one circle by marking its members as broken.
    while break_circles(plan) {}
    name_values_reached(plan, &[]);
    order(plan);
}

/// Works out what each node needs.
pub(super) fn depend(plan: &mut Plan) {
    for i in 0..plan.nodes.len() {
        let deps = deps_of(&plan.nodes[i].def, plan);
        if deps != plan.nodes[i].deps {
            Arc::make_mut(&mut plan.nodes[i]).deps = deps;
        }
    }
}

/// Works out systems and the order of computing, of what is needed.
pub(super) fn order(plan: &mut Plan) {
    let equations_of = equations_by_value(plan);
    let groups = components(plan.nodes.len(), |i| needs(plan, &equations_of, i));
    let is_found = |i: &usize| matches!(plan.nodes[*i].def, Def::Found(..));
    let mut systems = Vec::new();
    let mut tasks = Vec::new();
    for group in groups.into_iter().filter(|g| plan.is_needed(g[0] as NodeId)) {
        let mut found: Vec<NodeId> = group.iter().filter(|i| is_found(i)).map(|i| *i as NodeId).collect();
        if group.len() == 1 || found.is_empty() {
            tasks.extend(group.iter().map(|i| Task::Node(*i as NodeId)));
            continue;
        }
        found.sort_unstable();
        let equations: Vec<usize> = plan
            .equations
            .iter()
            .enumerate()
            .filter(|(_, e)| group.contains(&(e.node as usize)))
            .map(|(i, _)| i)
            .collect();
        let inner: Vec<usize> = group.iter().copied().filter(|i| !is_found(i)).collect();
        let place = |node: NodeId| inner.iter().position(|i| *i == node as usize);
        let (order, _) =
            order_of(inner.len(), |k| plan.nodes[inner[k]].deps.iter().filter_map(|d| place(*d)).collect());
        let inner = order.into_iter().map(|k| inner[k] as NodeId).collect();
        tasks.push(Task::System(systems.len()));
        systems.push(System { found, equations, inner });
    }
    plan.homes = vec![(u32::MAX, 0); plan.nodes.len()];
    for (s, system) in systems.iter().enumerate() {
        let system: &System = system;
        for (place, node) in system.found.iter().chain(&system.inner).enumerate() {
            plan.homes[*node as usize] = (s as u32, place as u32);
        }
    }
    plan.systems = systems;
    plan.tasks = tasks;
    tell_idle_values(plan);
}

/// A condition that names no found values may use all that it depends on; not one whose values are all `given`.
pub(super) fn name_values_reached(plan: &mut Plan, given: &[bool]) {
    for e in 0..plan.equations.len() {
        if !plan.equations[e].found_by.is_empty() || given.get(e) == Some(&true) {
            continue;
        }
        let mut seen = vec![false; plan.nodes.len()];
        let mut work = vec![plan.equations[e].node];
        let mut found = Vec::new();
        while let Some(node) = work.pop() {
            if std::mem::replace(&mut seen[node as usize], true) {
                continue;
            }
            if matches!(plan.nodes[node as usize].def, Def::Found(..)) {
                found.push(node);
            }
            work.extend(&plan.nodes[node as usize].deps);
        }
        found.sort_unstable();
        plan.equations[e].found_by = found;
    }
}

fn equations_by_value(plan: &Plan) -> Vec<Vec<usize>> {
    let mut out = vec![Vec::new(); plan.nodes.len()];
    for equation in &plan.equations {
        for value in &equation.found_by {
            out[*value as usize].push(equation.node as usize);
        }
    }
    out
}

fn needs(plan: &Plan, equations_of: &[Vec<usize>], i: usize) -> Vec<usize> {
    let mut needed: Vec<usize> = plan.nodes[i].deps.iter().map(|d| *d as usize).collect();
    needed.extend(&equations_of[i]);
    needed
}

/// Breaks circles that no found value cuts, and found values whose start hangs on themselves. `true` if there were any.
pub(super) fn break_circles(plan: &mut Plan) -> bool {
    let n = plan.nodes.len();
    // Without the way from a value to its equations, what is left must have no circle.
    let (_, circles) = order_of(n, |i| match plan.nodes[i].def {
        Def::Found(..) => Vec::new(),
        _ => plan.nodes[i].deps.iter().map(|d| *d as usize).collect(),
    });
    for circle in &circles {
        let names: Vec<&str> = named_members(plan, circle);
        let finding = Finding::new(Code::Circular).word("members", names.join(", "));
        let part = plan.nodes[circle[0]].part.clone();
        plan.findings.push(
            finding.piece(&*part.piece).edge(&*part.edge).seam(&*part.seam).at(names.first().copied().unwrap_or("")),
        );
        for &member in circle {
            break_node(plan, member);
        }
    }
    if !circles.is_empty() {
        return true;
    }
    let equations_of = equations_by_value(plan);
    let groups = components(n, |i| needs(plan, &equations_of, i));
    let mut broken = Vec::new();
    for group in groups.iter().filter(|g| g.len() > 1 || plan.nodes[g[0]].deps.contains(&(g[0] as NodeId))) {
        for &value in group {
            let Def::Found(start, least, most) = &plan.nodes[value].def else { continue };
            let parts = [
                (id!("found-start"), Some(start)),
                (id!("found-least"), least.as_ref()),
                (id!("found-most"), most.as_ref()),
            ];
            let culprit = parts
                .into_iter()
                .find(|(_, f)| f.is_some_and(|f| formula_deps(f, plan).iter().any(|d| group.contains(&(*d as usize)))));
            if let Some((part, _)) = culprit {
                broken.push((value, part, named_members(plan, group).join(", ")));
            }
        }
    }
    for (value, part, members) in &broken {
        let name = plan.nodes[*value].part.name.clone();
        plan.findings.push(
            Finding::new(Code::CircularFound)
                .at(format!("value {name}"))
                .word("part", said(own(), part, &[]))
                .word("name", &*name)
                .word("members", members.clone()),
        );
        break_node(plan, *value);
    }
    !broken.is_empty()
}

fn break_node(plan: &mut Plan, node: usize) {
    let node = Arc::make_mut(&mut plan.nodes[node]);
    node.def = Def::Broken;
    node.deps.clear();
}

/// Names of a circle's members that a person has given, each once, at most twelve.
fn named_members<'a>(plan: &'a Plan, circle: &[usize]) -> Vec<&'a str> {
    let mut names: Vec<&str> = Vec::new();
    for &i in circle {
        let node = &plan.nodes[i];
        let name: &str = &node.part.name;
        if node.kind.is_some() && !name.is_empty() && !names.contains(&name) {
            names.push(name);
        }
    }
    if names.len() > 12 {
        names.truncate(11);
        names.push("…");
    }
    if names.is_empty() {
        names.extend(circle.first().map(|i| &*plan.nodes[*i].part.name));
    }
    names
}

/// Found values that no equation names or reaches, and equations that do not hang on a value named for them.
fn tell_idle_values(plan: &mut Plan) {
    let mut findings = Vec::new();
    for (i, node) in plan.nodes.iter().enumerate() {
        let value = i as NodeId;
        if !matches!(node.def, Def::Found(..)) || !plan.is_needed(value) {
            continue;
        }
        let solved = plan.systems.iter().any(|s| s.found.contains(&value));
        let named: Vec<&str> =
            plan.equations.iter().filter(|e| e.found_by.contains(&value)).map(|e| &*e.name).collect();
        let broken = plan
            .equations
            .iter()
            .any(|e| e.found_by.contains(&value) && matches!(plan.nodes[e.node as usize].def, Def::Broken));
        if solved || broken {
            continue;
        }
        let at = format!("value {}", node.part.name);
        findings.push(if named.is_empty() {
            Finding::new(Code::NothingFixes).at(at).word("value", &*node.part.name)
        } else {
            let problem = say!("found-nothing-depends");
            Finding::new(Code::NoEffect)
                .at(at)
                .word("value", &*node.part.name)
                .word("conditions", named.join(", "))
                .word("problem", problem)
        });
    }
    plan.findings.extend(findings);
}

fn formula_deps(formula: &Formula, plan: &Plan) -> Vec<NodeId> {
    let mut out = Vec::new();
    op_deps(&formula.program.root, plan, &mut out);
    out
}

fn op_deps(op: &Op, plan: &Plan, out: &mut Vec<NodeId>) {
    op.each(&mut |op| match op {
        Op::Load(symbol) => out.push(*symbol),
        // Only here the sense of an outline is needed: of those to which the edge may belong.
        Op::Call(Function::Off | Function::SetOff | Function::SetOffRunning, arguments, _) => {
            if let Some(edge) = arguments.first() {
                edge.each(&mut |op| {
                    if let Op::Load(symbol) = op {
                        senses_of(*symbol, plan, 0, out);
                    }
                });
            }
        }
        _ => {}
    });
}

/// The senses of the outlines to which what a symbol stands for may belong.
fn senses_of(symbol: NodeId, plan: &Plan, depth: usize, out: &mut Vec<NodeId>) {
    // Values that stand for edges may name one another.
    const MOST: usize = 32;
    let Some(node) = plan.nodes.get(symbol as usize).filter(|_| depth < MOST) else { return };
    match &node.def {
        Def::Sewn { outline: Some(frame), .. } => out.extend(plan.all_frames.get(*frame as usize).map(|f| f.sense)),
        Def::Laid(_, target) => senses_of(*target, plan, depth + 1, out),
        Def::Formula(formula) if matches!(formula.kind, Kind::Edge(_)) => {
            formula.program.root.each(&mut |op| {
                if let Op::Load(inner) = op {
                    senses_of(*inner, plan, depth + 1, out);
                }
            });
        }
        _ => {}
    }
}

/// The nodes that formulas name.
pub(super) fn named_by<'a>(formulas: impl Iterator<Item = &'a Formula>, plan: &Plan) -> Vec<NodeId> {
    let mut out = Vec::new();
    formulas.for_each(|f| op_deps(&f.program.root, plan, &mut out));
    out
}

pub(super) fn deps_of(def: &Def, plan: &Plan) -> Vec<NodeId> {
    let mut out = Vec::new();
    let mut all = |formulas: &[&Formula]| formulas.iter().for_each(|f| op_deps(&f.program.root, plan, &mut out));
    match def {
        Def::Broken | Def::Row(_) | Def::RowIn(..) | Def::Still => {}
        Def::Formula(f) => all(&[f]),
        Def::Found(start, least, most) => {
            all(&[start]);
            all(&least.iter().chain(most).collect::<Vec<_>>());
        }
        Def::Flat { points, segments } => {
            let mut taken = Vec::new();
            for segment in segments {
                match segment {
                    SegmentDef::Straight => {}
                    SegmentDef::Curve(a, b) => all(&[a, b]),
                    SegmentDef::Arc(a, _) | SegmentDef::Taken(a, None) => all(&[a]),
                    SegmentDef::Taken(a, Some((from, to))) => {
                        all(&[a, from]);
                        all(&to.iter().collect::<Vec<_>>());
                        taken.push(a);
                    }
                    SegmentDef::Smooth(through, a, b) => {
                        all(&through.iter().chain(a).chain(b).collect::<Vec<_>>());
                    }
                }
            }
            out.extend(points);
            for curve in taken {
                curve.program.root.each(&mut |op| {
                    if let Op::Load(symbol) = op {
                        senses_of(*symbol, plan, 0, &mut out);
                    }
                });
            }
        }
        Def::Mouth(m) => {
            all(&[&m.place, &m.intake]);
            all(&m.bow.iter().collect::<Vec<_>>());
            out.push(m.flat);
            out.extend(m.tip.map(|t| t.0));
            out.extend(m.sense);
        }
        Def::Sewn { flat, mouths, .. } => {
            out.push(*flat);
            out.extend(mouths.iter().map(|m| m.0));
        }
        Def::Member(a, _) => out.push(*a),
        Def::Sense(edges) => out.extend(edges),
        Def::Outline { edges, darts } => out.extend(edges.iter().chain(darts)),
        Def::Placement(p) => {
            all(&[&p.point, &p.onto]);
            all(&p.towards.iter().flat_map(|(a, b)| [a, b]).collect::<Vec<_>>());
            all(&p.turned.iter().chain(&p.overlap).collect::<Vec<_>>());
        }
        Def::Laid(a, b) | Def::Difference(a, b) | Def::ConditionEquation(a, b, _) => out.extend([*a, *b]),
        Def::Side(runs) => all(&runs.iter().collect::<Vec<_>>()),
        Def::Along(side, point) => {
            all(&[point]);
            if let Def::Side(runs) = &plan.nodes[*side as usize].def {
                all(&runs.iter().collect::<Vec<_>>());
            }
            out.push(*side);
        }
        Def::SeamEquation(a, b, fit) => {
            match fit {
                Fit::Equal => {}
                Fit::Eased(_, f, share) => all(&std::iter::once(f).chain(share).collect::<Vec<_>>()),
                Fit::Times(_, f, _) => all(&f.iter().collect::<Vec<_>>()),
            }
            out.extend([*a, *b]);
        }
    }
    out.sort_unstable();
    out.dedup();
    out
}
