//! Kinds of values, and what the checker needs to know about names.

use crate::base::Unit;
use crate::texts::{id, own, said, say};

/// A drawing or piece in whose coordinates a point stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Frame(pub u32);

/// What a formula gives.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// A power of length: 0 is a plain number, 1 a length, 2 an area.
    Quantity(i8),
    /// An angle.
    Angle,
    /// A pair of lengths.
    Offset,
    /// A point of a frame.
    Point(Frame),
    /// An endless line of a frame.
    Line(Frame),
    /// A bounded line or curve of a frame.
    Edge(Frame),
    /// A whole piece.
    Piece(Frame),
    /// Yes or no.
    Truth,
}

impl Kind {
    /// A plain number.
    pub const NUMBER: Self = Self::Quantity(0);
    /// A length.
    pub const LENGTH: Self = Self::Quantity(1);

    /// Whether it can be compared, rounded and so on.
    pub fn is_quantity(self) -> bool {
        matches!(self, Self::Quantity(_) | Self::Angle)
    }

    /// The frame it belongs to.
    pub fn frame(self) -> Option<Frame> {
        match self {
            Self::Point(f) | Self::Line(f) | Self::Edge(f) | Self::Piece(f) => Some(f),
            _ => None,
        }
    }

    /// In words: "a length".
    pub fn words(self) -> String {
        let id = match self {
            Self::Quantity(0) => id!("kind-number"),
            Self::Quantity(1) => id!("kind-length"),
            Self::Quantity(2) => id!("kind-area"),
            Self::Quantity(3) => id!("kind-volume"),
            Self::Quantity(-1) => id!("kind-per-length"),
            Self::Quantity(_) => id!("kind-power"),
            Self::Angle => id!("kind-angle"),
            Self::Offset => id!("kind-offset"),
            Self::Point(_) => id!("kind-point"),
            Self::Line(_) => id!("kind-line"),
            Self::Edge(_) => id!("kind-edge"),
            Self::Piece(_) => id!("kind-piece"),
            Self::Truth => id!("kind-truth"),
        };
        said(own(), id, &[])
    }
}

/// A group of kinds that fits somewhere, in words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum What {
    /// Exactly this kind, in whatever frame.
    Kind(Kind),
    /// A number, a power of length or an angle.
    Quantity,
    /// A length or a fraction: a place on an edge.
    Place,
    /// A point or an offset.
    PointOrOffset,
    /// A line or an edge.
    Path,
    /// A point, a line or an edge: what can be moved.
    Thing,
    /// Anything.
    Any,
}

impl What {
    /// Whether `kind` fits; frames are not looked at.
    pub fn fits(self, kind: Kind) -> bool {
        match self {
            Self::Kind(wanted) => {
                std::mem::discriminant(&wanted) == std::mem::discriminant(&kind) && {
                    !matches!(wanted, Kind::Quantity(_)) || wanted == kind
                }
            }
            Self::Quantity => kind.is_quantity(),
            Self::Place => matches!(kind, Kind::Quantity(0 | 1)),
            Self::PointOrOffset => matches!(kind, Kind::Point(_) | Kind::Offset),
            Self::Path => matches!(kind, Kind::Line(_) | Kind::Edge(_)),
            Self::Thing => matches!(kind, Kind::Point(_) | Kind::Line(_) | Kind::Edge(_)),
            Self::Any => true,
        }
    }

    /// Whether it belongs to a frame.
    pub fn is_of_a_frame(self) -> bool {
        matches!(self, Self::Kind(Kind::Point(_) | Kind::Line(_) | Kind::Edge(_)) | Self::Path | Self::Thing)
    }

    /// In words.
    pub fn words(self) -> String {
        let id = match self {
            Self::Kind(kind) => return kind.words(),
            Self::Quantity => id!("kind-quantity"),
            Self::Place => id!("kind-place"),
            Self::PointOrOffset => id!("kind-point-or-offset"),
            Self::Path => id!("kind-path"),
            Self::Thing => id!("kind-thing"),
            Self::Any => id!("kind-any"),
        };
        said(own(), id, &[])
    }
}

/// What a name turned out to be.
#[derive(Clone, Debug, PartialEq)]
pub enum Found {
    /// A value of this kind, loaded by this number.
    Symbol(u32, Kind),
    /// More than one thing; the spellings that say which.
    Ambiguous(Vec<String>),
    /// Nothing; the nearest name, if one is near.
    Unknown(Option<String>),
    /// A thing whose own formula is broken, which is reported there.
    Broken,
}

/// What the checker asks about the place where a formula stands.
pub trait Scope {
    /// What a dotted name means here.
    fn look_up(&self, parts: &[&str]) -> Found;
    /// The frame in which the formula stands.
    fn frame(&self) -> Option<Frame>;
    /// The name of a frame.
    fn frame_name(&self, frame: Frame) -> String;
    /// The unit proposed where one is missing.
    fn unit(&self) -> Unit;
    /// The symbol of a row in another size, or why there is none.
    fn row_in(&self, _symbol: u32, _size: &str) -> Result<u32, String> {
        Err(say!("in-size-nowhere"))
    }
    /// The symbol of a frame's outline, and how many copies of it are cut; `None` for what has no outline.
    fn outline(&self, _frame: Frame) -> Option<(u32, f64)> {
        None
    }
    /// The symbol of an edge as it lies on paper, for what does not look at its darts.
    fn on_paper(&self, edge: u32) -> u32 {
        edge
    }
}
