//! What two views have in common: computed once, in the first of them.
//!
//! A node is the same in two views if it says the same and all that it needs is the same; a system of found values if all its members and
//! equations are. This hangs on no number, so it is looked up once for a plan.

use std::sync::Arc;

use super::plan::{Def, NodeId, Plan, Task};

/// What of a view's tasks an earlier view does.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Shared {
    /// For each task of the plan the earlier view that does it; for a system besides its place there. Empty: none.
    pub tasks: Vec<Option<(usize, usize)>>,
    /// The earlier view from which most is taken.
    pub start: Option<usize>,
    /// Nodes that it has and this one has not.
    pub gone: Vec<NodeId>,
}

impl Shared {
    /// Of a plan and those of the views before it.
    pub fn of(plan: &Plan, before: &[Arc<Plan>]) -> Self {
        let mut tasks = vec![None; plan.tasks.len()];
        let mut counts = vec![0_usize; before.len()];
        for (view, earlier) in before.iter().enumerate() {
            for (own, task) in tasks.iter_mut().zip(common(plan, earlier)) {
                counts[view] += usize::from(task.is_some());
                if own.is_none() {
                    *own = task.map(|system| (view, system));
                }
            }
        }
        let start = (0..before.len()).rev().max_by_key(|v| counts[*v]).filter(|v| counts[*v] > 0);
        let computes = |plan: &Plan| {
            let mut out = vec![false; plan.nodes.len()];
            plan.each_computed(&mut |n| out[n as usize] = true);
            out
        };
        let gone = start.map_or_else(Vec::new, |view| {
            let (own, theirs) = (computes(plan), computes(&before[view]));
            (0..own.len()).filter(|n| theirs[*n] && !own[*n]).map(|n| n as NodeId).collect()
        });
        Self { tasks, start, gone }
    }

    /// The earlier view that does a task, and the place of its system there.
    pub fn of_task(&self, task: usize) -> Option<(usize, usize)> {
        self.tasks.get(task).copied().flatten()
    }
}

/// For each task of a plan whether another one does the very same, with the place of its system there.
fn common(plan: &Plan, other: &Plan) -> Vec<Option<usize>> {
    const ALONE: u32 = u32::MAX;
    let (own_values, other_values) = (&plan.replaced, &other.replaced);
    // A value that one view replaces is never the same, also where both happen to say the same now.
    let alike = |n: NodeId| {
        let (a, b) = (&plan.nodes[n as usize], &other.nodes[n as usize]);
        own_values.contains(&n) == other_values.contains(&n) && (Arc::ptr_eq(a, b) || a == b)
    };
    let mut same = vec![false; plan.nodes.len()];
    let mut out = Vec::with_capacity(plan.tasks.len());
    for task in &plan.tasks {
        out.push(match task {
            Task::Node(n) => {
                let i = *n as usize;
                let deps = |same: &[bool]| plan.nodes[i].deps.iter().all(|d| same[*d as usize]);
                same[i] = other.is_needed(*n) && other.homes[i].0 == ALONE && alike(*n) && deps(&same);
                // What is said of a value that nothing finds is kept nowhere, so it is said again.
                (same[i] && !matches!(plan.nodes[i].def, Def::Found(..))).then_some(0)
            }
            Task::System(s) => {
                let system = &plan.systems[*s];
                let members = || system.found.iter().chain(&system.inner).copied();
                let place = system.found.first().map_or(ALONE, |v| other.homes[*v as usize].0);
                let is_same = other.systems.get(place as usize).is_some_and(|theirs| {
                    let inside = |d: &NodeId| plan.homes[*d as usize].0 as usize == *s;
                    let needs = |n: NodeId| plan.nodes[n as usize].deps.iter().all(|d| inside(d) || same[*d as usize]);
                    theirs == system
                        && system.equations.iter().all(|e| plan.equations[*e] == other.equations[*e])
                        && members().all(|n| alike(n) && needs(n))
                });
                if is_same {
                    members().for_each(|n| same[n as usize] = true);
                }
                is_same.then_some(place as usize)
            }
        });
    }
    out
}
