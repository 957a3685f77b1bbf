//! Sides of seams: runs of edges, and lengths of strips.

use std::sync::Arc;

use super::item::{EdgeShape, NodeTrouble, Stop};
use crate::base::{Scalar, tolerance};
use crate::curves::Pt;
use crate::language::{Frame, Function, Op, Trouble};
use crate::texts::id;

/// A part of a side of a seam.
#[derive(Clone, Debug)]
pub enum RunPart<S> {
    /// An edge with its frame, and whether it stands for the mirrored copy.
    Edge(Arc<EdgeShape<S>>, Option<Frame>, bool),
    /// A strip of this length, mm.
    Strip(S),
}

impl<S: Scalar> RunPart<S> {
    /// Its sewn length, mm.
    pub fn sewn_length(&self) -> S {
        match self {
            Self::Edge(edge, ..) => edge.sewn_length(),
            Self::Strip(length) => *length,
        }
    }
}

/// A side of a seam in one case.
#[derive(Clone, Debug)]
pub struct Run {
    /// Its parts in order, run in the sense of the seam.
    pub parts: Vec<RunPart<f64>>,
}

impl Run {
    /// Its sewn length, mm.
    pub fn sewn_length(&self) -> f64 {
        self.parts.iter().map(RunPart::sewn_length).sum()
    }

    /// Sewn places at which one part ends and the next one starts.
    pub fn joints(&self) -> Vec<f64> {
        let mut sum = 0.0;
        let ends = self.parts.iter().map(|p| {
            sum += p.sewn_length();
            sum
        });
        let mut ends: Vec<f64> = ends.collect();
        ends.pop();
        ends
    }

    /// The part at a sewn place and the sewn place within it; at a joint the part that ends there, unless `leaving`.
    pub fn part_at(&self, place: f64, leaving: bool) -> Option<(usize, f64)> {
        let mut rest = place;
        if rest < -tolerance::EQUAL {
            return None;
        }
        for (i, part) in self.parts.iter().enumerate() {
            let length = part.sewn_length();
            let last = i + 1 == self.parts.len();
            let within =
                if leaving && !last { rest < length - tolerance::EQUAL } else { rest <= length + tolerance::EQUAL };
            if within {
                return Some((i, rest.clamp(0.0, length)));
            }
            rest -= length;
        }
        None
    }

    /// How far along it a point lies, sewn; edges themselves go before copies of them.
    pub fn place_of(&self, point: Pt<f64>, frame: Option<Frame>) -> Result<f64, Trouble> {
        place_on(&self.parts, point, frame)
    }
}

/// Whether a formula of a side names the copy of an edge.
pub(super) fn is_copy(op: &Op) -> bool {
    match op {
        Op::Call(Function::Copy, ..) => true,
        Op::Call(Function::Reversed, args, _) => args.first().is_some_and(is_copy),
        _ => false,
    }
}

/// The side of a seam that a model holds; `None` where it could not be computed.
pub fn run_of(model: &super::Model, plan: &super::Plan, case: usize, side: super::NodeId) -> Option<Run> {
    let super::Def::Side(runs) = &plan.nodes[side as usize].def else { return None };
    let mut parts = Vec::with_capacity(runs.len());
    for run in runs {
        let item = model.evaluate(plan, case, run).ok()?;
        parts.push(match (item.edge(), item.real()) {
            (Some(edge), _) => RunPart::Edge(edge.clone(), run.kind.frame(), is_copy(&run.program.root)),
            (None, length) => RunPart::Strip(length?),
        });
    }
    Some(Run { parts })
}

/// Edges of one piece must follow one another. Where the piece changes nothing is said: they meet in the sewn garment.
pub(super) fn check_run<S: Scalar>(parts: &[RunPart<S>]) -> Result<(), Stop> {
    for (i, pair) in parts.windows(2).enumerate() {
        let [RunPart::Edge(a, fa, copied), RunPart::Edge(b, fb, copied_too)] = pair else { continue };
        if fa != fb || copied != copied_too {
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

/// How far along a side a point of one of its frames lies, sewn. Edges themselves go before copies of them.
pub(super) fn place_on<S: Scalar>(parts: &[RunPart<S>], point: Pt<S>, frame: Option<Frame>) -> Result<S, Trouble> {
    let mut nearest = f64::INFINITY;
    for wanted in [false, true] {
        let mut before = S::zero();
        for part in parts {
            if let RunPart::Edge(edge, of, copied) = part
                && *of == frame
                && *copied == wanted
            {
                match edge.place_of(point) {
                    Ok(flat) => return Ok(before + edge.sewn_place(flat)?),
                    Err(Trouble::NotOnEdge(distance)) => nearest = nearest.min(distance),
                    Err(other) => return Err(other),
                }
            }
            before = before + part.sewn_length();
        }
    }
    match nearest.is_finite() {
        true => Err(Trouble::NotOnEdge(nearest)),
        false => Err(Trouble::NoAnswer(id!("answer-other-piece"))),
    }
}
