//! What a draft says beyond stitch lines, as formulas: allowances, corners, cuts, folds, marks, finished measures.
//!
//! Nothing in the graph hangs on these, so they are no nodes: whoever finishes a piece evaluates them.

use std::sync::Arc;

use super::names::MATERIAL_MEMBERS;
use super::plan::{Fit, Formula, FramePlan, NodeId, Plan, SeamPlan};
use super::publishing::Braced;
use crate::document::{CornerForm, Face, MarkKind, Outline};

/// What is made of a piece.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct PieceFinishing {
    /// Allowances of its edges.
    pub allowances: Vec<AllowancePlan>,
    /// Corners that are shaped otherwise than the order of sewing says.
    pub corners: Vec<CornerPlan>,
    /// How it is cut.
    pub cuts: Vec<CutPlan>,
    /// Its folds.
    pub folds: Vec<FoldPlan>,
    /// Its marks.
    pub marks: Vec<MarkPlan>,
    /// Lines that are only drawn: to lengthen or shorten at, slits.
    pub lines: Vec<LinePlan>,
    /// Allowances of the legs of its darts, in the order of its mouths.
    pub legs: Vec<Option<Formula>>,
    /// How long its pleats and tucks are, in the order of its mouths behind its darts.
    pub depths: Vec<Option<Formula>>,
    /// Where its label stands.
    pub label: Option<Formula>,
    /// By which angle the label is turned.
    pub label_turn: Option<Formula>,
}

impl PieceFinishing {
    /// All its formulas, each with the place of the edge it belongs to, if it is one of an edge.
    pub fn formulas(&self) -> impl Iterator<Item = (Option<usize>, &Formula)> {
        let allowances = self.allowances.iter().flat_map(|a| {
            let all = std::iter::once(&a.width).chain(&a.from).chain(&a.to_width).chain(&a.turn_in);
            all.map(|f| (Some(a.edge), f))
        });
        let marks = self
            .marks
            .iter()
            .flat_map(|m| std::iter::once(&m.at).chain(&m.to).chain(&m.fixed).chain(&m.size).chain(m.text.formulas()));
        let corners = self.corners.iter().filter_map(|c| c.width.as_ref());
        let cuts = self.cuts.iter().filter_map(|c| c.heading.as_ref());
        let lines = self.lines.iter().map(|l| &l.line);
        let legs = self.legs.iter().chain(&self.depths).flatten();
        let others =
            marks.chain(corners).chain(cuts).chain(lines).chain(legs).chain(&self.label).chain(&self.label_turn);
        allowances.chain(others.map(|f| (None, f)))
    }
}

impl SeamPlan {
    /// The formulas that are told of a seam.
    pub(super) fn told(&self) -> impl Iterator<Item = &Formula> {
        let fits = self.stretches.iter().flat_map(|s| match &s.fit {
            Some(Fit::Eased(_, by, share)) => std::iter::once(by).chain(share).collect::<Vec<_>>(),
            Some(Fit::Times(_, times, limits)) => times.iter().chain(limits.iter().flatten()).collect(),
            _ => Vec::new(),
        });
        let notches = self.notches.iter().flat_map(|n| std::iter::once(&n.at).chain(&n.other));
        fits.chain(notches).chain(&self.allowance).chain(&self.closure)
    }
}

impl Plan {
    /// For each piece the nodes on which its finished form hangs: its own edges, darts and formulas, and those of what is sewn to it.
    pub fn finishing_needs(&self) -> Vec<Vec<NodeId>> {
        let own: Vec<Vec<NodeId>> = self.frames().iter().map(|f| self.own_needs(f)).collect();
        let mut out = own.clone();
        for (_, seam) in self.own_seams() {
            let sides = seam.sides[..2].iter().flat_map(|side| self.nodes[*side as usize].deps.iter().copied());
            let ends = seam.stretches.iter().flat_map(|s| s.ends).flatten();
            let mut all: Vec<NodeId> = sides.chain(ends).chain(super::graph::named_by(seam.told(), self)).collect();
            let touched: Vec<usize> =
                (0..self.frames().len()).filter(|f| self.frames()[*f].edges.iter().any(|e| all.contains(e))).collect();
            all.extend(touched.iter().flat_map(|f| own[*f].iter().copied()));
            touched.iter().for_each(|f| out[*f].extend_from_slice(&all));
        }
        // A piece that is sewn on another one is seen there and, over a seam, on any other.
        let placed = |f: &FramePlan| f.finishing.marks.iter().filter_map(|m| m.piece.clone()).collect::<Vec<_>>();
        let any: Vec<NodeId> = self
            .frames()
            .iter()
            .enumerate()
            .filter(|(_, f)| !placed(f).is_empty())
            .flat_map(|(i, f)| {
                let shown = self.frames().iter().enumerate().filter(|(_, g)| placed(f).contains(&g.name));
                let shown: Vec<NodeId> = shown.flat_map(|(k, _)| own[k].iter().copied()).collect();
                own[i].iter().copied().chain(shown).collect::<Vec<_>>()
            })
            .collect();
        for needs in &mut out {
            needs.extend_from_slice(&any);
            needs.sort_unstable();
            needs.dedup();
        }
        out
    }

    /// Its own edges, darts and formulas.
    pub(super) fn own_needs(&self, frame: &FramePlan) -> Vec<NodeId> {
        let mut out = super::graph::named_by(frame.finishing.formulas().map(|(_, f)| f), self);
        out.extend(frame.edges.iter().copied());
        out.extend(frame.mouths.iter().map(|m| m.0));
        out.push(frame.sense);
        for cut in &frame.finishing.cuts {
            out.extend(cut.members.into_iter().flat_map(|first| first..first + MATERIAL_MEMBERS.len() as NodeId));
        }
        out
    }
}

/// An allowance of an edge.
#[derive(Clone, Debug, PartialEq)]
pub struct AllowancePlan {
    /// The edge, by its place in the outline.
    pub edge: usize,
    /// The set it belongs to.
    pub set: Arc<str>,
    /// Its width.
    pub width: Formula,
    /// From where on the edge it holds.
    pub from: Option<Formula>,
    /// Its width at its end.
    pub to_width: Option<Formula>,
    /// Turns of a hem; 0: a seam allowance.
    pub turns: u32,
    /// How far the second turn goes in.
    pub turn_in: Option<Formula>,
}

/// A corner of the cut line.
#[derive(Clone, Debug, PartialEq)]
pub struct CornerPlan {
    /// The edge that starts there, by its place in the outline.
    pub edge: usize,
    /// How it is shaped.
    pub form: CornerForm,
    /// What is left beyond.
    pub width: Option<Formula>,
}

/// How a piece is cut from one material.
#[derive(Clone, Debug, PartialEq)]
pub struct CutPlan {
    /// The material's name.
    pub material: Arc<str>,
    /// The first of the material's members.
    pub members: Option<NodeId>,
    /// How many.
    pub count: u32,
    /// The edge on the fold of the cloth, by its place in the outline.
    pub on_fold: Option<usize>,
    /// The edge at the border of the cloth, by its place in the outline.
    pub border: Option<usize>,
    /// Heading of the lengthwise thread.
    pub heading: Option<Formula>,
    /// The edge or line that it must be parallel to: name and node.
    pub along: Option<(Arc<str>, NodeId)>,
    /// Whether it may be turned by half.
    pub both_ways: bool,
    /// Which side is up.
    pub face: Face,
    /// Which outline is cut.
    pub outline: Outline,
    /// The set of allowances.
    pub set: Arc<str>,
}

/// A fold.
#[derive(Clone, Debug, PartialEq)]
pub struct FoldPlan {
    /// Its name.
    pub name: Arc<str>,
    /// The edge or line: name and node.
    pub line: (Arc<str>, NodeId),
    /// What folds over it.
    pub over: Vec<(Arc<str>, NodeId)>,
    /// On what it must then lie.
    pub onto: Vec<(Arc<str>, NodeId)>,
}

/// A mark, or a row of them.
#[derive(Clone, Debug, PartialEq)]
pub struct MarkPlan {
    /// Its name.
    pub name: Arc<str>,
    /// What it is.
    pub kind: MarkKind,
    /// Where it is, or where the row starts.
    pub at: Formula,
    /// Where the row ends.
    pub to: Option<Formula>,
    /// How many.
    pub count: u32,
    /// The point with which one of them is level.
    pub fixed: Option<Formula>,
    /// Which one, from 1; 0: none is moved.
    pub fixed_as: u32,
    /// Its size.
    pub size: Option<Formula>,
    /// The piece whose place it is.
    pub piece: Option<Arc<str>>,
    /// Words beside it.
    pub text: Braced,
}

/// A line that is only drawn.
#[derive(Clone, Debug, PartialEq)]
pub struct LinePlan {
    /// Its name.
    pub name: Arc<str>,
    /// Its formula: a line or an edge.
    pub line: Formula,
    /// Whether it is a slit (else one to lengthen or shorten at).
    pub slit: bool,
}

/// A finished measure.
#[derive(Clone, Debug, PartialEq)]
pub struct MeasurePlan {
    /// Its name.
    pub name: Arc<str>,
    /// The node of its value.
    pub node: NodeId,
    /// The body row beside it: name and node.
    pub body: Option<(Arc<str>, NodeId)>,
    /// Least ease that is meant.
    pub least: Option<Formula>,
    /// Most ease that is meant.
    pub most: Option<Formula>,
    /// How far the ease may drift from that of the base size.
    pub drift: Option<Formula>,
    /// The body row that must pass through: name and node.
    pub passes: Option<(Arc<str>, NodeId)>,
    /// By what part it stretches for that.
    pub stretch: Option<Formula>,
}
