//! What a draft says beyond stitch lines, as formulas: allowances, corners, cuts, folds, marks, finished measures.
//!
//! Nothing in the graph hangs on these, so they are no nodes: whoever finishes a piece evaluates them.

use std::sync::Arc;

use super::plan::{Formula, NodeId};
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
    /// Where its label stands.
    pub label: Option<Formula>,
    /// By which angle the label is turned.
    pub label_turn: Option<Formula>,
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
    /// Words beside it.
    pub text: Arc<str>,
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
