//! Sides of seams: runs of edges.

use std::sync::Arc;

use super::item::{EdgeShape, NodeTrouble, Stop};
use crate::base::{Scalar, tolerance};
use crate::curves::Pt;
use crate::language::Frame;

/// An edge of a side with its frame.
pub type RunEdge<S> = (Arc<EdgeShape<S>>, Option<Frame>);

/// A side of a seam in one case.
#[derive(Clone, Debug)]
pub struct Run {
    /// Its edges in order, run in the sense of the seam.
    pub edges: Vec<RunEdge<f64>>,
}

/// The side of a seam that a model holds, as edges; empty where it could not be computed.
pub fn run_of(model: &super::Model, plan: &super::Plan, case: usize, side: super::NodeId) -> Option<Run> {
    let super::Def::Side(runs) = &plan.nodes[side as usize].def else { return None };
    let mut edges = Vec::with_capacity(runs.len());
    for run in runs {
        let item = model.evaluate(plan, case, run).ok()?;
        edges.push((item.edge()?.clone(), run.kind.frame()));
    }
    Some(Run { edges })
}

/// Edges of one piece must follow one another. Where the piece changes nothing is said: they meet in the sewn garment.
pub(super) fn check_run<S: Scalar>(edges: &[RunEdge<S>]) -> Result<(), Stop> {
    for (i, pair) in edges.windows(2).enumerate() {
        let ((a, fa), (b, fb)) = (&pair[0], &pair[1]);
        if fa != fb {
            continue;
        }
        let gap = |p: Pt<S>, q: Pt<S>| (p - q).length().value();
        let distance = gap(a.curve.end(), b.curve.start());
        if distance > tolerance::ON_EDGE {
            let turned_fits = gap(a.curve.end(), b.curve.end()) <= tolerance::ON_EDGE
                || gap(a.curve.start(), b.curve.start()) <= tolerance::ON_EDGE;
            return Err(Stop::own(NodeTrouble::RunBroken { before: i, distance, turned_fits }));
        }
    }
    Ok(())
}
