//! Formulas asked from outside, in every size.

use super::asked::InView;
use super::engine::Engine;
use super::model::{Model, plain};
use super::plan::NodeId;
use crate::base::Finding;
use crate::document::Draft;
use crate::language::{Kind, Value};

/// Formulas evaluated beside a draft.
#[derive(Debug)]
pub struct Measured {
    /// The model they were evaluated over.
    pub model: Model,
    /// One for each formula: its node and kind, or `None` if it cannot be read.
    pub columns: Vec<Option<(NodeId, Kind)>>,
}

impl Measured {
    /// The value of the `i`th formula in a case (of the first view, where there are views): mm, mm2, radians, plain; an edge counts as its
    /// sewn length. `None` if it has none, or hangs on something that is not true.
    pub fn value(&self, i: usize, case: usize) -> Option<Value<f64, ()>> {
        self.value_in(i, InView { view: 0, case })
    }

    /// The same in any view.
    pub fn value_in(&self, i: usize, at: InView) -> Option<Value<f64, ()>> {
        let (node, _) = (*self.columns.get(i)?)?;
        let model = self.model.of_views().get(at.view)?;
        if model.is_untrue(at.case, node) {
            return None;
        }
        model.item(at.case, node).and_then(plain)
    }

    /// Whether the `i`th formula speaks of what a view does not have.
    pub fn is_absent(&self, i: usize, view: usize) -> bool {
        let node = self.columns.get(i).copied().flatten();
        node.is_some_and(|(node, _)| self.model.of_views().get(view).is_some_and(|m| !m.plan.is_needed(node)))
    }
}

/// Evaluates formulas beside a draft. They stand outside all pieces: names are written in full.
pub fn measure(engine: &mut Engine, draft: &Draft, formulas: &[&str]) -> Result<Measured, Box<Finding>> {
    let model = engine.compute_guarded(draft, formulas)?;
    let columns = model
        .plan
        .extras
        .iter()
        .map(|node| {
            let node = (*node)?;
            Some((node, model.plan.nodes[node as usize].kind?))
        })
        .collect();
    Ok(Measured { model, columns })
}
