//! Views: versions of one garment, each with a plan of its own over the same nodes.
//!
//! A view has some of the pieces and formulas of its own for some values. In its plan those values say other things, and what hangs on
//! pieces that it does not have is left out: seams, conditions, finished measures, found values that only such things fix. A piece that
//! is not in a view can still be named there; then it is computed for that, and no more.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use super::build::{FormulaScope, World};
use super::cases::{MAX_CASES, part_unknown};
use super::compile::FormulaReader;
use super::derive::OWN;
use super::graph::{break_circles, depend, deps_of, name_values_reached, named_by, order};
use super::names::Global;
use super::plan::{Def, NodeId, Plan, SeamPlan};
use super::shared::Shared;
use crate::base::{Code, Finding};
use crate::document::View;
use crate::language::What;
use crate::texts::say;

/// What a view says, with the names looked up.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Version {
    /// Its name.
    pub name: Arc<str>,
    /// For each piece whether it belongs to the view.
    pub pieces: Vec<bool>,
    /// Values that are other in it.
    pub values: BTreeMap<NodeId, Def>,
}

/// Reads the views of a draft. `bases`: pieces that others are made of, which may be there for those alone.
pub(super) fn read(world: &World<'_>, bases: &BTreeSet<String>, reader: &mut FormulaReader<'_>) -> Vec<Version> {
    let draft = world.draft;
    let mut out: Vec<Version> = Vec::new();
    // A second one of the same name is told where names are.
    let is_new = |(i, v): &(usize, &View)| draft.views[..*i].iter().all(|earlier| earlier.name != v.name);
    for (_, view) in draft.views.iter().enumerate().filter(is_new) {
        if !out.is_empty() && (out.len() + 1) * world.cases.list.len() > MAX_CASES {
            let problem = say!("read-part-too-many-views", most = MAX_CASES, view = view.name);
            reader.findings.push(Finding::new(Code::PartMissing).at("views").word("problem", problem));
            break;
        }
        let pieces = pieces(world, view, reader);
        let values = values(world, view, reader);
        out.push(Version { name: view.name.as_str().into(), pieces, values });
    }
    if !out.is_empty() {
        for (i, piece) in draft.pieces.iter().enumerate() {
            if !bases.contains(&piece.name) && !out.iter().any(|v| v.pieces[i]) {
                let finding = Finding::new(Code::PieceInNoView).piece(&piece.name).at(&piece.name);
                reader.findings.push(finding.word("piece", &piece.name));
            }
        }
    }
    for (i, b) in out.iter().enumerate() {
        if let Some(a) = out[..i].iter().find(|a| a.pieces == b.pieces && same_values(&a.values, &b.values)) {
            reader.findings.push(about(&b.name, Code::ViewsAlike).word("view", &*b.name).word("other", &*a.name));
        }
    }
    out
}

fn about(view: &str, code: Code) -> Finding {
    let mut finding = Finding::new(code).at(format!("view {view}"));
    view.clone_into(&mut finding.place.view);
    finding
}

/// Broken ones may say anything.
fn same_values(a: &BTreeMap<NodeId, Def>, b: &BTreeMap<NodeId, Def>) -> bool {
    let text = |def: &Def| match def {
        Def::Formula(formula) => Some(Arc::clone(&formula.text)),
        _ => None,
    };
    a.len() == b.len() && a.iter().zip(b).all(|(a, b)| a.0 == b.0 && text(a.1).is_some() && text(a.1) == text(b.1))
}

fn pieces(world: &World<'_>, view: &View, reader: &mut FormulaReader<'_>) -> Vec<bool> {
    let all = &world.draft.pieces;
    let known: Vec<&String> = all.iter().map(|p| &p.name).collect();
    let is_known = |name: &String| known.contains(&name);
    if all.is_empty() || (!view.pieces.is_empty() && !view.pieces.iter().any(is_known)) {
        let named = if view.pieces.is_empty() { String::new() } else { format!(": {}", view.pieces.join(", ")) };
        reader.findings.push(about(&view.name, Code::ViewEmpty).word("view", &view.name).word("named", named));
        return vec![false; all.len()];
    }
    for name in view.pieces.iter().filter(|n| !is_known(n)) {
        let mut finding = part_unknown("piece", name, known.iter().copied()).at(format!("view {}", view.name));
        finding.place.view.clone_from(&view.name);
        reader.findings.push(finding);
    }
    known.iter().map(|name| view.pieces.is_empty() || view.pieces.contains(name)).collect()
}

fn values(world: &World<'_>, view: &View, reader: &mut FormulaReader<'_>) -> BTreeMap<NodeId, Def> {
    let mut out = BTreeMap::new();
    let at = |name: &str| format!("view {}, value {name}", view.name);
    for (name, text) in &view.values {
        let short = name.strip_prefix("value.").unwrap_or(name);
        let of_view = |mut f: Finding| {
            f.place.view.clone_from(&view.name);
            f.at(at(short))
        };
        let Some(Global::Value(node)) = world.names.globals.get(short) else {
            let known: Vec<&String> = world.draft.values.iter().map(|v| &v.name).collect();
            let is_row = matches!(world.names.globals.get(short), Some(Global::Row(_)));
            let what = if is_row { "value (a row of the chart is one for all views)" } else { "value" };
            reader.findings.push(of_view(part_unknown(what, name, known)));
            continue;
        };
        if out.contains_key(node) {
            let finding = Finding::new(Code::ViewValueTwice).word("value", short).word("view", &view.name);
            reader.findings.push(of_view(finding));
            continue;
        }
        // A value that is broken itself is told there.
        let Some(kind) = world.kind(*node) else { continue };
        let scope = FormulaScope { world, frame: None };
        let read = reader.read_as(text, &scope, What::Kind(kind), kind.frame(), of_view);
        out.insert(*node, read.map_or(Def::Broken, Def::Formula));
    }
    out
}

/// The plans of all views, or the one plan of a draft without views.
pub(super) fn plans(base: &Arc<Plan>) -> Vec<Arc<Plan>> {
    if base.versions.is_empty() {
        return vec![Arc::clone(base)];
    }
    let mut out: Vec<Arc<Plan>> = Vec::new();
    for version in 0..base.versions.len() {
        let mut plan = of_version(base, version);
        plan.shared = Arc::new(Shared::of(&plan, &out));
        out.push(Arc::new(plan));
    }
    out
}

/// The plans of all views after a few nodes of the base were defined otherwise, with the nodes that each view sees changed; none where
/// more than that may differ.
pub(super) fn patched(
    before: &Plan,
    base: &Arc<Plan>,
    plans: &[Arc<Plan>],
    touched: &[NodeId],
) -> Option<Vec<(Arc<Plan>, Vec<NodeId>)>> {
    if base.versions.is_empty() {
        return Some(vec![(Arc::clone(base), touched.to_vec())]);
    }
    let one = |(plan, version): (&Arc<Plan>, &Version)| {
        let mut nodes = plan.nodes.clone();
        let mut own = Vec::with_capacity(touched.len());
        for &node in touched.iter().filter(|n| !version.values.contains_key(n)) {
            // Where a view sees a node otherwise than the base does, all is read anew.
            if !Arc::ptr_eq(&nodes[node as usize], &before.nodes[node as usize]) {
                return None;
            }
            nodes[node as usize] = Arc::clone(&base.nodes[node as usize]);
            own.push(node);
        }
        let plan = Plan { nodes, chart: Arc::clone(&base.chart), ..Plan::clone(plan) };
        let same_deps = |n: &NodeId| deps_of(&plan.nodes[*n as usize].def, &plan) == plan.nodes[*n as usize].deps;
        own.iter().all(same_deps).then(|| (Arc::new(plan), own))
    };
    plans.iter().zip(base.versions.iter()).map(one).collect()
}

fn of_version(base: &Plan, place: usize) -> Plan {
    let version = &base.versions[place];
    let mut plan = base.clone();
    plan.versions = Arc::default();
    plan.view = Some(Arc::clone(&version.name));
    plan.replaced = version.values.keys().copied().collect();
    for case in &mut plan.cases.list {
        case.view = place as u32;
    }
    for (node, def) in &version.values {
        Arc::make_mut(&mut plan.nodes[*node as usize]).def = def.clone();
    }
    depend(&mut plan);
    while break_circles(&mut plan) {}
    // A value that is found elsewhere and given here fixes what it was found by.
    for equation in &mut plan.equations {
        equation.found_by.retain(|v| !version.values.contains_key(v));
    }
    let given: Vec<bool> = base
        .equations
        .iter()
        .zip(&plan.equations)
        .map(|(a, b)| !a.found_by.is_empty() && b.found_by.is_empty())
        .collect();
    name_values_reached(&mut plan, &given);
    if version.pieces.iter().any(|has| !has) {
        let left = Absent::of(&plan, version).left();
        left.into_plan(&mut plan);
    }
    order(&mut plan);
    plan
}

/// What a view does not have.
struct Absent<'a> {
    plan: &'a Plan,
    /// For each node the frame that it belongs to.
    frame_of: Vec<Option<usize>>,
    /// For each node those that need it.
    users: Vec<Vec<NodeId>>,
    /// For each frame whether the view has it.
    has: Vec<bool>,
    /// Nodes that hang on pieces that the view does not have, by names alone: not through other pieces.
    reached: Vec<bool>,
}

impl<'a> Absent<'a> {
    fn of(plan: &'a Plan, version: &Version) -> Self {
        let mut frames = BTreeMap::new();
        for (i, frame) in plan.all_frames.iter().enumerate() {
            frames.entry(&*frame.name).or_insert(i);
        }
        let frame_of = plan.nodes.iter().map(|n| match n.def {
            Def::Laid(..) => None,
            _ => frames.get(&*n.part.piece).copied(),
        });
        let mut users = vec![Vec::new(); plan.nodes.len()];
        for (i, node) in plan.nodes.iter().enumerate() {
            node.deps.iter().for_each(|d| users[*d as usize].push(i as NodeId));
        }
        let piece = |name: &str| frames.get(name).and_then(|i| version.pieces.get(*i)).copied();
        let has = plan.all_frames.iter().enumerate().map(|(i, f)| match version.pieces.get(i) {
            Some(has) => *has,
            // A stage belongs to the piece that it becomes; drawings come below.
            None => f.name.split_once(OWN).and_then(|(name, _)| piece(name)).unwrap_or(true),
        });
        let (frame_of, has) = (frame_of.collect(), has.collect());
        let mut out = Self { plan, frame_of, users, has, reached: Vec::new() };
        out.drawings();
        out.reached = out.reach(&BTreeSet::new());
        out
    }

    /// A drawing on which pieces hang belongs to the view if one of its pieces does. One on which none hangs is like values: whatever of
    /// it does not hang on what the view has not is there.
    fn drawings(&mut self) {
        let is_drawing = |f: usize| f < self.plan.shown && !self.plan.all_frames[f].is_piece;
        let of_pieces = |which: &dyn Fn(usize) -> bool| {
            let frames = (0..self.has.len()).filter(|f| !is_drawing(*f) && which(*f));
            self.closure(frames.flat_map(|f| self.roots_of(f)).collect())
        };
        let (own, any) = (of_pieces(&|f| self.has[f]), of_pieces(&|_| true));
        for drawing in (0..self.has.len()).filter(|f| is_drawing(*f)).collect::<Vec<_>>() {
            let is_own = |n: &usize| self.frame_of[*n] == Some(drawing);
            let nodes: Vec<usize> = (0..self.frame_of.len()).filter(is_own).collect();
            if nodes.iter().any(|n| any[*n]) {
                self.has[drawing] = nodes.iter().any(|n| own[*n]);
            } else {
                self.has[drawing] = false;
                nodes.iter().for_each(|n| self.frame_of[*n] = None);
            }
        }
    }

    /// What a frame needs: its nodes, and those that its finishing names.
    fn roots_of(&self, frame: usize) -> Vec<NodeId> {
        let own = (0..self.frame_of.len()).filter(|n| self.frame_of[*n] == Some(frame)).map(|n| n as NodeId);
        own.chain(self.plan.own_needs(&self.plan.all_frames[frame])).collect()
    }

    /// These nodes and all that they need.
    fn closure(&self, mut work: Vec<NodeId>) -> Vec<bool> {
        let mut out = vec![false; self.plan.nodes.len()];
        while let Some(node) = work.pop() {
            if !std::mem::replace(&mut out[node as usize], true) {
                work.extend(&self.plan.nodes[node as usize].deps);
            }
        }
        out
    }

    /// Nodes of no frame that name one that the view does not have, or one of these, through any others of no frame.
    fn reach(&self, idle: &BTreeSet<NodeId>) -> Vec<bool> {
        let mut out = vec![false; self.plan.nodes.len()];
        let lacking = |n: &usize| self.frame_of[*n].is_some_and(|f| !self.has[f]) || idle.contains(&(*n as NodeId));
        let mut work: Vec<usize> = (0..out.len()).filter(lacking).collect();
        while let Some(node) = work.pop() {
            for &user in &self.users[node] {
                let user = user as usize;
                if self.frame_of[user].is_none() && !std::mem::replace(&mut out[user], true) {
                    work.push(user);
                }
            }
        }
        idle.iter().for_each(|n| out[*n as usize] = true);
        out
    }

    /// What a seam needs.
    fn of_seam(&self, seam: &SeamPlan) -> Vec<NodeId> {
        let plan = self.plan;
        let stretches = seam.stretches.iter().flat_map(|s| s.lengths.into_iter().chain(s.ends.into_iter().flatten()));
        let equations = seam.stretches.iter().filter_map(|s| s.equation).map(|e| plan.equations[e].node);
        let all = seam.sides.into_iter().chain(stretches).chain(equations);
        all.chain(named_by(seam.told(), plan)).collect()
    }

    /// Seams and conditions on pieces that the view does not have, but that find what it needs: leaving a piece out changes no shape of
    /// another. They are computed, and not judged. Adds to `roots` what they need.
    fn finding(&self, seams: &[bool], roots: &mut Vec<NodeId>) -> (Vec<bool>, Vec<bool>) {
        let own = self.plan;
        let (mut of_seams, mut of_conditions) = (vec![false; seams.len()], vec![false; own.conditions.len()]);
        loop {
            let needed = self.closure(roots.clone());
            let finds = |e: usize| own.equations[e].found_by.iter().any(|v| needed[*v as usize]);
            let before = roots.len();
            for (i, seam) in own.seams.iter().enumerate().filter(|(i, _)| !seams[*i]) {
                if !of_seams[i] && seam.stretches.iter().filter_map(|s| s.equation).any(finds) {
                    of_seams[i] = true;
                    roots.extend(self.of_seam(seam));
                }
            }
            for (i, condition) in own.conditions.iter().enumerate() {
                if let Some(e) = condition.equation.filter(|e| !of_conditions[i] && finds(*e)) {
                    of_conditions[i] = true;
                    roots.extend(condition.sides.iter().copied().chain([own.equations[e].node]));
                }
            }
            if roots.len() == before {
                return (of_seams, of_conditions);
            }
        }
    }

    /// What is left of the plan.
    fn left(mut self) -> Left {
        let own = self.plan;
        let seams: Vec<bool> =
            own.seams.iter().map(|s| !s.sides[..2].iter().any(|n| self.reached[*n as usize])).collect();
        let of_frames = (0..self.has.len()).filter(|f| self.has[*f]).flat_map(|f| self.roots_of(f));
        let of_seams = own.seams.iter().zip(&seams).filter(|(_, has)| **has).flat_map(|(s, _)| self.of_seam(s));
        let mut roots: Vec<NodeId> = of_frames.chain(of_seams).collect();
        let finding = self.finding(&seams, &mut roots);
        let needed = self.closure(roots.clone());
        let mut absent = vec![false; own.equations.len()];
        let is_gone = |i: usize| !seams[i] && !finding.0[i];
        let lacking = own.seams.iter().enumerate().filter(|(i, _)| is_gone(*i)).map(|(_, s)| s);
        lacking.flat_map(|s| &s.stretches).filter_map(|s| s.equation).for_each(|e| absent[e] = true);
        // All that is told of an absent seam is absent. A found value that only absent things fix, and that nothing of the view
        // needs, is absent too; so are conditions on it.
        let gone = own.seams.iter().enumerate().filter(|(i, _)| is_gone(*i));
        let gone = gone.map(|(_, s)| &s.name).collect::<Vec<_>>();
        let of_gone = |n: &usize| gone.contains(&&own.nodes[*n].part.seam);
        let mut idle: BTreeSet<NodeId> = (0..own.nodes.len()).filter(of_gone).map(|n| n as NodeId).collect();
        let mut conditions;
        loop {
            let fixes = |e: usize, value: NodeId| own.equations[e].found_by.contains(&value);
            let of_value = |value: NodeId| (0..absent.len()).filter(move |e| fixes(*e, value));
            let more = |n: &usize| {
                let value = *n as NodeId;
                let is_found = matches!(own.nodes[*n].def, Def::Found(..)) && !needed[*n] && !idle.contains(&value);
                is_found && of_value(value).next().is_some() && of_value(value).all(|e| absent[e])
            };
            let more: Vec<NodeId> = (0..own.nodes.len()).filter(more).map(|n| n as NodeId).collect();
            idle.extend(more.iter().copied());
            self.reached = self.reach(&idle);
            conditions =
                own.conditions.iter().map(|c| !c.sides.iter().any(|n| self.reached[*n as usize])).collect::<Vec<_>>();
            let lacking = own.conditions.iter().zip(&conditions).zip(&finding.1);
            let lacking = lacking.filter(|((_, has), finds)| !**has && !**finds).map(|(c, _)| c);
            let before = absent.iter().filter(|a| **a).count();
            lacking.filter_map(|(c, _)| c.equation).for_each(|e| absent[e] = true);
            if more.is_empty() && before == absent.iter().filter(|a| **a).count() {
                break;
            }
        }
        let measures: Vec<bool> = own.measures.iter().map(|m| !self.reached[m.node as usize]).collect();
        // Beside frames and seams: all that names nothing that is absent. What is laid is there for what names it.
        roots.extend((0..own.nodes.len()).filter_map(|n| {
            let node = &own.nodes[n];
            let is_seam = !node.part.seam.is_empty();
            let is_free = self.frame_of[n].is_none() && !is_seam && !matches!(node.def, Def::Laid(..));
            (is_free && !self.reached[n]).then_some(n as NodeId)
        }));
        let told = own
            .measures
            .iter()
            .zip(&measures)
            .filter(|(_, has)| **has)
            .flat_map(|(m, _)| m.least.iter().chain(&m.most).chain(&m.drift).chain(&m.stretch));
        roots.extend(named_by(told, own));
        roots.extend(
            own.equations.iter().zip(&absent).filter(|(_, a)| !**a).flat_map(|(e, _)| e.found_by.iter().copied()),
        );
        for (f, frame) in own.all_frames.iter().enumerate().filter(|(f, frame)| *f < own.shown && !frame.is_piece) {
            // A drawing like values.
            if self.frame_of[frame.sense as usize].is_none() {
                self.has[f] = !frame.points.iter().chain(&frame.lines).any(|n| self.reached[*n as usize]);
            }
        }
        Left { needed: self.closure(roots), has: self.has, seams, conditions, measures, absent }
    }
}

/// What is left of a plan in a view: flags for nodes, frames, seams, conditions, measures; and equations that are absent.
struct Left {
    needed: Vec<bool>,
    has: Vec<bool>,
    seams: Vec<bool>,
    conditions: Vec<bool>,
    measures: Vec<bool>,
    absent: Vec<bool>,
}

impl Left {
    fn into_plan(self, plan: &mut Plan) {
        plan.needed = self.needed;
        plan.has = self.has;
        plan.has_seams = self.seams;
        keep(&mut plan.conditions, &self.conditions);
        keep(&mut plan.measures, &self.measures);
        // Like seams they keep their places, by which they are known, but find nothing.
        let gone = plan.equations.iter_mut().zip(&self.absent).filter(|(_, a)| **a);
        gone.for_each(|(e, _)| e.found_by.clear());
    }
}

fn keep<T>(list: &mut Vec<T>, which: &[bool]) {
    let mut which = which.iter();
    list.retain(|_| which.next().copied().unwrap_or(true));
}
