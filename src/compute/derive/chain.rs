//! A piece on its way through its steps.

use std::collections::BTreeMap;

use super::lineage::Made;
use super::shape::{OWN, Shape};
use super::{Link, Typed};
use crate::base::{Code, Finding};
use crate::document::{Does, Piece, Placement, Segment, Step};
use crate::texts::say;

/// A piece on its way through its steps.
#[derive(Clone)]
pub(super) struct Chain {
    pub name: String,
    /// The piece as it lies now, and what is known of it that its formulas do not tell.
    pub stage: Piece,
    pub shape: Shape,
    /// The stages before.
    pub stages: Vec<Piece>,
    pub links: Vec<Link>,
    /// By the number of the stage, and the name in it.
    pub typed: BTreeMap<(usize, String), Typed>,
    pub placements: Vec<Placement>,
    /// What must be looked at.
    pub looks: Vec<Finding>,
    /// What the step makes that is done.
    pub made: Vec<Made>,
}

impl Chain {
    /// What failed leaves the piece as it was: stage, shape, how many stages there were before.
    pub fn back_to(&mut self, (stage, shape, count): (Piece, Shape, usize)) {
        (self.stage, self.shape) = (stage, shape);
        self.stages.truncate(count);
        self.links.truncate(count + 1);
        self.typed.retain(|(place, _), _| *place <= count);
    }
}

/// Tells what must be looked at after a step: what is counted on an edge that is another now, a fold that may be bent.
pub(super) fn look(chain: &mut Chain, step: &Step, new: &Piece, link: &str) {
    let mut looks = Vec::new();
    let mut tell = |problem: String| {
        let finding = Finding::new(Code::StepLook).piece(&chain.name).at(format!("{}, step {}", chain.name, step.name));
        looks.push(finding.word("problem", problem));
    };
    let rest = &chain.shape.rest;
    for tuck in rest.pleats.iter().chain(&rest.tucks) {
        let Some(edge) = new.edges.iter().find(|e| e.name == tuck.on) else { continue };
        let whole = format!("{link}.{}", tuck.on);
        let same =
            |curve: &str| curve.strip_prefix(&whole).is_some_and(|rest| rest.is_empty() || rest.starts_with('.'));
        if !matches!(edge.by.as_slice(), [Segment::Taken { curve, .. }] if same(curve)) {
            tell(say!("step-keeps-place", edge = tuck.on, tuck = tuck.name));
        }
    }
    if let Does::Unfold(unfold) = &step.does
        && chain.shape.edges.iter().any(|e| e.name == unfold.over && !e.is_straight)
    {
        tell(say!("step-mirrored-in", edge = unfold.over));
    }
    chain.looks.append(&mut looks);
}

pub(super) fn link_to(name: &str, k: usize) -> String {
    format!("{OWN}{name}{OWN}{k}")
}

pub(super) fn frame_of(name: &str, k: usize) -> String {
    format!("{name}{OWN}{k}")
}
