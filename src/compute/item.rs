//! What a node has as its value.

use std::sync::Arc;

use crate::base::{Scalar, Span};
use crate::curves::{Curve, Pt, Rigid};
use crate::language::{Trouble, Value};

/// An edge with the mouths that are folded out of its sewn length.
#[derive(Clone, Debug, PartialEq)]
pub struct EdgeShape<S> {
    /// The line as drawn.
    pub curve: Arc<Curve<S>>,
    /// The mouths on it, in order, not overlapping.
    pub mouths: Vec<Folded<S>>,
    /// The frame whose outline it belongs to, and whether it runs against it: by that inside and outside are known.
    pub home: Option<Home>,
    /// Of a whole outline: the triangles of its darts, tip and feet.
    pub folded: Vec<[Pt<S>; 3]>,
}

/// The outline to which an edge belongs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Home {
    /// The frame.
    pub frame: u32,
    /// Whether the edge runs against the outline, or is mirrored.
    pub against: bool,
}

impl Home {
    /// The same edge run the other way.
    pub fn turned(self) -> Self {
        Self { against: !self.against, ..self }
    }
}

/// A stretch of an edge that is folded away, with the name of what folds it.
#[derive(Clone, Debug, PartialEq)]
pub struct Folded<S> {
    /// Flat place of the first foot.
    pub first: S,
    /// Flat place of the second foot.
    pub second: S,
    /// The dart, pleat or tuck.
    pub name: Arc<str>,
}

/// A dart, pleat or tuck on its flat edge.
#[derive(Clone, Debug, PartialEq)]
pub struct Mouth<S> {
    /// Flat place of its first foot.
    pub first: S,
    /// Flat place of its second foot.
    pub second: S,
    /// Its first foot.
    pub first_foot: Pt<S>,
    /// Its second foot.
    pub second_foot: Pt<S>,
    /// Straight distance of the feet.
    pub intake: S,
    /// Its tip; pleats and tucks have none, nor a dart whose tip cannot be computed.
    pub tip: Option<Pt<S>>,
    /// The other tip of a dart with two ends.
    pub other_tip: Option<Pt<S>>,
    /// How far its legs bow; none: they are straight.
    pub bow: Option<S>,
    /// Length of its legs, where there is a tip.
    pub leg: Option<S>,
}

/// What a node has as its value.
#[derive(Clone, Debug, PartialEq)]
pub enum Item<S> {
    /// Something that formulas can name.
    Value(Value<S, Arc<EdgeShape<S>>>),
    /// A dart, pleat or tuck.
    Mouth(Arc<Mouth<S>>),
    /// A placement.
    Rigid(Rigid<S>),
}

/// Why a node has no value in one case.
#[derive(Clone, Debug, PartialEq)]
pub struct Stop {
    /// The trouble; `Upstream` is reported elsewhere.
    pub trouble: NodeTrouble,
    /// The formula in which it came up, and where in it.
    pub formula: Option<(Arc<str>, Span)>,
}

/// Trouble of formulas, and of the things made from them.
#[derive(Clone, Debug, PartialEq)]
pub enum NodeTrouble {
    /// A formula's.
    Formula(Trouble),
    /// The ends of an arc are unequally far from its centre.
    ArcUneven {
        /// Of its start, mm.
        start: f64,
        /// Of its end, mm.
        end: f64,
    },
    /// A taken curve does not reach a named point.
    TakenApart {
        /// The id of `start` or `end`.
        which: &'static str,
        /// The point that it should reach.
        point: Arc<str>,
        /// How far it is away, mm.
        distance: f64,
    },
    /// A curve cannot be made: the id of the words that say why.
    Curve(&'static str),
    /// A mouth does not lie on its edge: the id of the words that say why.
    MouthOff(&'static str),
    /// Two mouths overlap.
    MouthOverlap(Arc<str>, Arc<str>),
    /// The edges of a seam's side do not follow one another.
    RunBroken {
        /// Place of the edge before the gap.
        before: usize,
        /// The gap, mm.
        distance: f64,
        /// Whether one of the two would fit the other way round.
        turned_fits: bool,
    },
}

impl Stop {
    /// Something that the node needs has no value.
    pub fn upstream() -> Self {
        Self { trouble: NodeTrouble::Formula(Trouble::Upstream), formula: None }
    }

    /// Trouble of the thing itself.
    pub fn own(trouble: NodeTrouble) -> Self {
        Self { trouble, formula: None }
    }

    /// Whether it is reported elsewhere, or no fault.
    pub fn is_upstream(&self) -> bool {
        matches!(self.trouble, NodeTrouble::Formula(Trouble::Upstream | Trouble::Nothing))
    }
}

impl<S: Scalar> Item<S> {
    /// The number, if it is one.
    pub fn real(&self) -> Option<S> {
        match self {
            Self::Value(Value::Real(v)) => Some(*v),
            _ => None,
        }
    }

    /// The point, if it is one.
    pub fn point(&self) -> Option<Pt<S>> {
        match self {
            Self::Value(Value::Pair(x, y)) => Some(Pt::new(*x, *y)),
            _ => None,
        }
    }

    /// The edge, if it is one.
    pub fn edge(&self) -> Option<&Arc<EdgeShape<S>>> {
        match self {
            Self::Value(Value::Edge(e)) => Some(e),
            _ => None,
        }
    }
}
