//! What a draft means, without numbers.

use std::collections::BTreeSet;
use std::sync::Arc;

use super::build::Heard;
use super::cases::Cases;
use super::chart::ChartPlan;
use super::finishing::{MeasurePlan, PieceFinishing};
use super::shared::Shared;
use super::views::Version;
use crate::base::{Finding, Place};
use crate::document::{SeamPressed, Side};
use crate::language::{Kind, Program};

/// The number of a node.
pub type NodeId = u32;

/// A formula that could be checked, with its text.
#[derive(Clone, Debug, PartialEq)]
pub struct Formula {
    /// As typed.
    pub text: Arc<str>,
    /// What is run.
    pub program: Arc<Program>,
    /// What it gives.
    pub kind: Kind,
}

/// A segment of an edge.
#[derive(Clone, Debug, PartialEq)]
pub enum SegmentDef {
    /// Straight to a point.
    Straight,
    /// A cubic with two handles.
    Curve(Formula, Formula),
    /// An arc about a centre; `true` clockwise.
    Arc(Formula, bool),
    /// A spline through points with headings at its ends.
    Smooth(Vec<Formula>, Option<Formula>, Option<Formula>),
    /// A curve from elsewhere, set off by a length, which may run to another.
    Taken(Formula, Option<(Formula, Option<Formula>)>),
}

/// How a seam's sides fit.
#[derive(Clone, Debug, PartialEq)]
pub enum Fit {
    /// Equally long.
    Equal,
    /// One side longer by a length, or by a share of it.
    Eased(Side, Formula, Option<Formula>),
    /// The first named side is so many times as long as the other; without a number it is only watched, for the least and
    /// the most that follow.
    Times(Side, Option<Formula>, [Option<Formula>; 2]),
}

/// What a node is.
#[derive(Clone, Debug, PartialEq)]
pub enum Def {
    /// It cannot be computed; the reason is reported.
    Broken,
    /// A row of the chart.
    Row(u32),
    /// A value or point: one formula.
    Formula(Formula),
    /// A value that is found: start, least, most.
    Found(Formula, Option<Formula>, Option<Formula>),
    /// An edge as drawn: the points it passes by name, and its segments.
    Flat {
        /// Ends of the segments in order, one more than segments.
        points: Vec<NodeId>,
        /// The segments.
        segments: Vec<SegmentDef>,
    },
    /// The mouth of a dart, pleat or tuck.
    Mouth(Box<MouthDef>),
    /// An edge with its mouths folded out.
    Sewn {
        /// The edge as drawn.
        flat: NodeId,
        /// What is folded out of it, with names.
        mouths: Vec<(NodeId, Arc<str>)>,
        /// The frame, where it is an edge of its outline.
        outline: Option<u32>,
    },
    /// A placement that moves nothing: from one stage of a derived piece to the next.
    Still,
    /// A row of the chart in another size: the row, the case.
    RowIn(u32, u32),
    /// A whole outline: the edges as drawn, and the mouths of darts.
    Outline {
        /// The edges as drawn.
        edges: Vec<NodeId>,
        /// The mouths of its darts.
        darts: Vec<NodeId>,
    },
    /// A member of a dart.
    Member(NodeId, u8),
    /// The sense of an outline: 1 if the inside is on the right as it runs, else -1.
    Sense(Vec<NodeId>),
    /// A placement.
    Placement(Box<PlacementDef>),
    /// A point or edge through a placement.
    Laid(NodeId, NodeId),
    /// A side of a seam: its edges in order, or the length of a strip. Its value is its sewn length.
    Side(Vec<Formula>),
    /// How far along a side of a seam (its node) a point lies, sewn.
    Along(NodeId, Formula),
    /// Sewn length of one less that of two.
    Difference(NodeId, NodeId),
    /// The residual of a kept-true seam: its two sides.
    SeamEquation(NodeId, NodeId, Fit),
    /// The residual of a condition: its two sides, and what one unit of them counts.
    ConditionEquation(NodeId, NodeId, f64),
}

/// A mouth on an edge.
#[derive(Clone, Debug, PartialEq)]
pub struct MouthDef {
    /// The edge as drawn.
    pub flat: NodeId,
    /// Sense of its piece, where the tip is told by a length.
    pub sense: Option<NodeId>,
    /// Place of its middle, or of its first foot.
    pub place: Formula,
    /// Whether `place` is that of the first foot.
    pub by_foot: bool,
    /// Straight distance of its feet.
    pub intake: Formula,
    /// The node of its tip, and whether that is a length (else a point). The feet do not hang on it.
    pub tip: Option<(NodeId, bool)>,
    /// Whether the leg is measured at the second foot.
    pub second_kept: bool,
    /// How far its legs bow.
    pub bow: Option<Formula>,
    /// Whether it has two ends: those of its line.
    pub two_ended: bool,
}

/// A placement's formulas.
#[derive(Clone, Debug, PartialEq)]
pub struct PlacementDef {
    /// The point that is laid.
    pub point: Formula,
    /// Where it comes to lie.
    pub onto: Formula,
    /// The two points that give the direction.
    pub towards: Option<(Formula, Formula)>,
    /// Or the angle.
    pub turned: Option<Formula>,
    /// Pushed along by.
    pub overlap: Option<Formula>,
    /// Turned over first.
    pub mirrored: bool,
}

/// What a node belongs to, for findings and pictures.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Part {
    /// The piece or drawing.
    pub piece: Arc<str>,
    /// The edge or line.
    pub edge: Arc<str>,
    /// The seam.
    pub seam: Arc<str>,
    /// As it is written in formulas: `front.tip`, `chart.bust`, `seam.side`.
    pub name: Arc<str>,
}

/// A node of the graph.
#[derive(Clone, Debug, PartialEq)]
pub struct Node {
    /// What it belongs to.
    pub part: Part,
    /// What it is.
    pub def: Def,
    /// The kind of its value, if formulas can name it.
    pub kind: Option<Kind>,
    /// What it needs.
    pub deps: Vec<NodeId>,
}

/// An equation: its node, and who may give way for it.
#[derive(Clone, Debug, PartialEq)]
pub struct Equation {
    /// Its node: the residual in mm.
    pub node: NodeId,
    /// As it is said: `seam.side`, `condition.balance`.
    pub name: Arc<str>,
    /// The found values named for it.
    pub found_by: Vec<NodeId>,
}

/// Values and equations that hang together.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct System {
    /// The found values.
    pub found: Vec<NodeId>,
    /// The equations, as places in [`Plan::equations`].
    pub equations: Vec<usize>,
    /// Everything between them, in the order in which it is computed; the equations' nodes are among them.
    pub inner: Vec<NodeId>,
}

/// A step of the computation.
#[derive(Clone, Debug, PartialEq)]
pub enum Task {
    /// One node.
    Node(NodeId),
    /// A system, as its place in [`Plan::systems`].
    System(usize),
}

/// Where the parts of a frame stand among the nodes.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct FramePlan {
    /// Its name.
    pub name: Arc<str>,
    /// Whether it is a piece.
    pub is_piece: bool,
    /// Its points.
    pub points: Vec<NodeId>,
    /// Its edges (sewn), in the order of the outline.
    pub edges: Vec<NodeId>,
    /// Its lines.
    pub lines: Vec<NodeId>,
    /// Its darts, pleats and tucks: the mouth and whether it is a dart.
    pub mouths: Vec<(NodeId, bool)>,
    /// Its sense.
    pub sense: NodeId,
    /// Its whole outline.
    pub outline: NodeId,
    /// What is made of it beyond its stitch line.
    pub finishing: Arc<PieceFinishing>,
}

/// Where the parts of a seam stand among the nodes.
#[derive(Clone, Debug, PartialEq)]
pub struct SeamPlan {
    /// Its name.
    pub name: Arc<str>,
    /// Side one, side two, their difference.
    pub sides: [NodeId; 3],
    /// How they fit, stretch by stretch from the start: one over the whole length where the draft tells none.
    pub stretches: Vec<StretchPlan>,
    /// Notches, with places on side one and two; the place on the other side is made where none is told.
    pub notches: Vec<NotchPlan>,
    /// Its place in the order of sewing: smaller is earlier; `None` where nothing is told.
    pub order: Option<(f64, u32)>,
    /// To which side its allowances are pressed.
    pub pressed: SeamPressed,
    /// Its allowance.
    pub allowance: Option<Formula>,
    /// The end of its closure, from the start.
    pub closure: Option<Formula>,
}

/// A stretch of a seam.
#[derive(Clone, Debug, PartialEq)]
pub struct StretchPlan {
    /// The lengths of both sides on it.
    pub lengths: [NodeId; 2],
    /// Where it ends on both sides; `None`: with the side.
    pub ends: [Option<NodeId>; 2],
    /// How they fit; `None` where that formula is broken.
    pub fit: Option<Fit>,
    /// Its equation, if the seam is kept true.
    pub equation: Option<usize>,
}

/// A notch of a seam.
#[derive(Clone, Debug, PartialEq)]
pub struct NotchPlan {
    /// Its name.
    pub name: Arc<str>,
    /// The side on which its place is told.
    pub on: Side,
    /// Where.
    pub at: Formula,
    /// Where on the other side, if that is told.
    pub other: Option<Formula>,
    /// How many strokes.
    pub strokes: u32,
}

/// Where the parts of a condition stand.
#[derive(Clone, Debug, PartialEq)]
pub struct ConditionPlan {
    /// Its name.
    pub name: Arc<str>,
    /// Its text.
    pub text: Arc<str>,
    /// The nodes of both sides.
    pub sides: [NodeId; 2],
    /// What is to hold.
    pub relation: crate::language::Relation,
    /// Its equation, if it is one that has found values.
    pub equation: Option<usize>,
}

/// A draft's meaning.
#[derive(Clone, Debug)]
pub struct Plan {
    /// The cases in which it is computed.
    pub cases: Cases,
    /// All nodes.
    pub nodes: Vec<Arc<Node>>,
    /// Their frames: pieces first, then drawings, then the stages of derived pieces.
    pub all_frames: Vec<FramePlan>,
    /// How many of them are pieces and drawings.
    pub shown: usize,
    /// The seams.
    pub seams: Vec<SeamPlan>,
    /// The conditions.
    pub conditions: Vec<ConditionPlan>,
    /// The finished measures.
    pub measures: Vec<MeasurePlan>,
    /// Strips, notions, cloth, words with formulas.
    pub publishing: Arc<super::publishing::Publishing>,
    /// The equations.
    pub equations: Vec<Equation>,
    /// What hangs together.
    pub systems: Vec<System>,
    /// The order of computing.
    pub tasks: Vec<Task>,
    /// For each node: the system it belongs to (`u32::MAX`: none) and its place in it, found values first.
    pub homes: Vec<(u32, u32)>,
    /// Formulas asked from outside; `None` where one cannot be read.
    pub extras: Vec<Option<NodeId>>,
    /// What is wrong whatever the size.
    pub findings: Vec<Finding>,
    /// The view that it is of; none where the draft has no views.
    pub view: Option<Arc<str>>,
    /// For each frame whether the view has it; empty: all.
    pub has: Vec<bool>,
    /// For each seam whether the view has it; empty: all.
    pub has_seams: Vec<bool>,
    /// For each node whether the view needs it; empty: all. What is not needed is not computed.
    pub(super) needed: Vec<bool>,
    /// Values for which the view has formulas of its own.
    pub(super) replaced: BTreeSet<NodeId>,
    /// What earlier views compute of it.
    pub(super) shared: Arc<Shared>,
    /// The views of the draft, in the plan of which theirs are made.
    pub(super) versions: Arc<Vec<Version>>,
    pub(super) chart: Arc<ChartPlan>,
    /// Names and what they mean, so that single formulas can be read later.
    pub(super) heard: Arc<Heard>,
}

impl Plan {
    /// Pieces, then drawings.
    pub fn frames(&self) -> &[FramePlan] {
        &self.all_frames[..self.shown]
    }

    /// Whether a piece or drawing belongs to the view.
    pub fn has_frame(&self, frame: usize) -> bool {
        self.has.get(frame).copied().unwrap_or(true)
    }

    /// Whether a seam belongs to the view: whether the pieces of both its sides do.
    pub fn has_seam(&self, seam: usize) -> bool {
        self.has_seams.get(seam).copied().unwrap_or(true)
    }

    /// The seams of the view.
    pub fn own_seams(&self) -> impl Iterator<Item = (usize, &SeamPlan)> {
        self.seams.iter().enumerate().filter(|(i, _)| self.has_seam(*i))
    }

    /// Whether something of the view hangs on a node, so that it is computed.
    pub fn is_needed(&self, node: NodeId) -> bool {
        self.needed.get(node as usize).copied().unwrap_or(true)
    }

    /// The nodes that are computed, in any order.
    pub(super) fn each_computed(&self, visit: &mut dyn FnMut(NodeId)) {
        for task in &self.tasks {
            match task {
                Task::Node(node) => visit(*node),
                Task::System(s) => {
                    let system = &self.systems[*s];
                    system.found.iter().chain(&system.inner).for_each(|n| visit(*n));
                }
            }
        }
    }

    /// Whether what a finding speaks of is there in this view.
    pub fn knows(&self, place: &Place) -> bool {
        let frame = self.frames().iter().position(|f| *f.name == *place.piece && f.is_piece);
        let node = |name: &str| self.nodes.iter().position(|n| *n.part.name == *name);
        let worded = |word: &str| place.name.strip_prefix(word);
        frame.is_none_or(|f| self.has_frame(f))
            && (place.seam.is_empty() || self.own_seams().any(|(_, s)| *s.name == *place.seam))
            && (worded("condition.").is_none() || self.conditions.iter().any(|c| *c.name == *place.name))
            && worded("measure.").is_none_or(|name| self.measures.iter().any(|m| *m.name == *name))
            && worded("value ").and_then(node).is_none_or(|n| self.is_needed(n as NodeId))
    }

    /// The node that a global formula would name so: `bust`, `front.tip`, `seam.side.difference`.
    pub fn node_named(&self, name: &str) -> Option<NodeId> {
        self.nodes.iter().position(|n| &*n.part.name == name && n.kind.is_some()).map(|i| i as NodeId)
    }
}
