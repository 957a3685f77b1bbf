//! Lines of which nothing is left, which is no fault.

use super::Model;
use super::item::NodeTrouble;
use super::plan::NodeId;
use crate::compute::Slot;
use crate::language::Trouble;

/// How far back a line is followed to see whether it is nothing: stages of a derived piece, a few nodes each.
const MOST_STAGES: usize = 400;

impl Model {
    /// Whether a line has no value because nothing of it lies where it was kept, which is no fault.
    pub fn is_nothing(&self, case: usize, line: NodeId) -> bool {
        self.hangs_on_nothing(case, line, MOST_STAGES)
    }

    /// Whether all that keeps a node from having a value is in the end such a nothing.
    fn hangs_on_nothing(&self, case: usize, node: NodeId, left: usize) -> bool {
        let stop = |node: NodeId| match self.cases.get(case).and_then(|c| c.slots.get(node as usize)) {
            Some(Slot::Failed(stop)) => Some(stop),
            _ => None,
        };
        match stop(node).map(|s| &s.trouble) {
            Some(NodeTrouble::Formula(Trouble::Nothing)) => true,
            Some(NodeTrouble::Formula(Trouble::Upstream)) if left > 0 => {
                let mut causes = self.plan.nodes[node as usize].deps.iter().filter(|d| stop(**d).is_some()).peekable();
                causes.peek().is_some() && causes.all(|d| self.hangs_on_nothing(case, *d, left - 1))
            }
            _ => false,
        }
    }
}
