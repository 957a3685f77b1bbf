//! Which edges are sewn where: the seams of a plan, seen from the edges.

use std::collections::BTreeMap;

use crate::compute::{Def, Model, NodeId, Plan};
use crate::language::{Function, Op};

/// An end of an edge of a piece.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct EdgeEnd {
    /// The piece, as its place among the plan's frames.
    pub frame: usize,
    /// The edge, by its place in the outline.
    pub edge: usize,
    /// Its end (else its start).
    pub at_end: bool,
}

impl EdgeEnd {
    /// The end of the other edge that meets this one at the corner, in an outline of so many edges.
    pub fn across(self, count: usize) -> Self {
        let edge = if self.at_end { (self.edge + 1) % count } else { (self.edge + count - 1) % count };
        Self { frame: self.frame, edge, at_end: !self.at_end }
    }
}

/// Where an edge is sewn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Sewn {
    /// The seam.
    pub seam: usize,
    /// Its side: 0 or 1.
    pub side: usize,
    /// Its place among the parts of that side.
    pub part: usize,
    /// Whether the side runs against the edge.
    pub against: bool,
    /// Whether the side speaks of the edge's copy.
    pub copied: bool,
    /// Whether only a part of the edge is meant.
    pub partial: bool,
}

/// An edge that a part of a side names.
#[derive(Clone, Copy, Debug)]
struct Named {
    node: NodeId,
    against: bool,
    copied: bool,
    partial: bool,
}

/// A part of a side: the piece, its edge, whether the side runs against it, whether only a part of it is meant.
pub type SidePart = (usize, usize, bool, bool);

/// The seams of a plan, seen from the edges.
#[derive(Clone, Debug, Default)]
pub struct Sewing {
    /// Where each edge is sewn, by frame and edge.
    edges: BTreeMap<(usize, usize), Vec<Sewn>>,
    /// The parts of each side of each seam; `None` for what is no edge of a piece.
    parts: Vec<[Vec<Option<SidePart>>; 2]>,
}

/// The edge that a formula of a side names.
fn named(op: &Op) -> Option<Named> {
    let Op::Call(function, args, _) = op else {
        let Op::Load(node) = op else { return None };
        return Some(Named { node: *node, against: false, copied: false, partial: false });
    };
    let inner = args.first().and_then(named)?;
    match function {
        Function::Reversed => Some(Named { against: !inner.against, ..inner }),
        Function::Copy => Some(Named { copied: true, ..inner }),
        Function::Part => Some(Named { partial: true, ..inner }),
        _ => None,
    }
}

impl Sewing {
    /// Of a plan.
    pub fn of(plan: &Plan) -> Self {
        let mut places: BTreeMap<NodeId, (usize, usize)> = BTreeMap::new();
        for (frame, of) in plan.frames().iter().enumerate() {
            for (edge, node) in of.edges.iter().enumerate() {
                places.insert(*node, (frame, edge));
            }
        }
        let mut out = Self::default();
        for (seam, of) in plan.seams.iter().enumerate() {
            let mut sides = [Vec::new(), Vec::new()];
            for (side, parts) in sides.iter_mut().enumerate().filter(|_| plan.has_seam(seam)) {
                let Def::Side(runs) = &plan.nodes[of.sides[side] as usize].def else { continue };
                for (part, run) in runs.iter().enumerate() {
                    let found = named(&run.program.root).and_then(|w| Some((w, *places.get(&w.node)?)));
                    parts.push(found.map(|(w, (frame, edge))| (frame, edge, w.against, w.partial)));
                    if let Some((Named { against, copied, partial, .. }, place)) = found {
                        let sewn = Sewn { seam, side, part, against, copied, partial };
                        out.edges.entry(place).or_default().push(sewn);
                    }
                }
            }
            out.parts.push(sides);
        }
        out
    }

    /// Where an edge is sewn.
    pub fn of_edge(&self, frame: usize, edge: usize) -> &[Sewn] {
        self.edges.get(&(frame, edge)).map_or(&[], Vec::as_slice)
    }

    /// The pieces that a seam joins.
    pub fn pieces(&self, seam: usize) -> impl Iterator<Item = usize> {
        self.parts[seam].iter().flatten().flatten().map(|(frame, ..)| *frame)
    }

    /// The edges of a side in order; `None` for what is no edge of a piece.
    pub fn parts(&self, seam: usize, side: usize) -> &[Option<SidePart>] {
        &self.parts[seam][side]
    }

    /// The end of an edge to which this end is sewn, if both sides have a corner there.
    pub fn partner(&self, end: EdgeEnd, sewn: &Sewn) -> Option<EdgeEnd> {
        let (own, other) = (self.parts(sewn.seam, sewn.side), self.parts(sewn.seam, 1 - sewn.side));
        let run_end = end.at_end != sewn.against;
        let part = match (sewn.part, run_end) {
            (part, true) if part + 1 == own.len() => other.len().checked_sub(1)?,
            (0, false) => 0,
            (part, _) if own.len() == other.len() => part,
            _ => return None,
        };
        let (frame, edge, against, partial) = (*other.get(part)?)?;
        if partial {
            return None;
        }
        Some(EdgeEnd { frame, edge, at_end: run_end != against })
    }

    /// The seam at an end of an edge, the earliest of several; those without an order in the order of the draft, last. Seams of a
    /// part of the edge do not count.
    pub fn at(&self, model: &Model, end: EdgeEnd) -> Option<(Sewn, Option<(f64, u32)>)> {
        let order = |s: &Sewn| model.plan.seams[s.seam].order;
        let mut all: Vec<&Sewn> = self.of_edge(end.frame, end.edge).iter().filter(|s| !s.partial).collect();
        all.sort_by(|a, b| match (order(a), order(b)) {
            (Some(a), Some(b)) => a.partial_cmp(&b).unwrap_or(std::cmp::Ordering::Equal),
            (Some(_), None) => std::cmp::Ordering::Less,
            (None, Some(_)) => std::cmp::Ordering::Greater,
            (None, None) => std::cmp::Ordering::Equal,
        });
        all.first().map(|s| (**s, order(s)))
    }
}
