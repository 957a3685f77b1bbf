//! Pieces, drawings and placements.

use serde::{Deserialize, Serialize};

use super::{Inner, Step, is_default};

/// A frame of points and lines without an outline.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Drawing {
    /// Its name in formulas.
    pub name: String,
    /// Anything worth telling.
    pub note: String,
    /// Its points.
    pub points: Vec<Point>,
    /// Its lines and curves.
    pub lines: Vec<Edge>,
}

/// A piece of the garment: points, a closed ring of edges and all that is drawn on it.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Piece {
    /// Its name in formulas.
    pub name: String,
    /// Its letter on sheets.
    pub letter: String,
    /// Anything worth telling.
    pub note: String,
    /// The piece that this one is derived from.
    pub of: String,
    /// What is done to that piece, in order.
    pub steps: Vec<Step>,
    /// Points.
    pub points: Vec<Point>,
    /// The outline: edges in order, each ending where the next one starts.
    pub edges: Vec<Edge>,
    /// Lines drawn inside.
    pub lines: Vec<Edge>,
    /// Darts.
    pub darts: Vec<Dart>,
    /// Pleats: folded, held at one end.
    pub pleats: Vec<Tuck>,
    /// Tucks: folded and stitched.
    pub tucks: Vec<Tuck>,
    /// Folds.
    pub folds: Vec<Fold>,
    /// Lines at which the piece may be lengthened or shortened.
    pub lengthen: Vec<PinnedLine>,
    /// Slits.
    pub slits: Vec<PinnedLine>,
    /// Drill holes, circles, buttons, texts.
    pub marks: Vec<Mark>,
    /// Seam allowances.
    pub allowances: Vec<Allowance>,
    /// Corners of the cut line that are shaped otherwise than the order of sewing says.
    pub corners: Vec<Corner>,
    /// How it is cut, from which cloth.
    pub cuts: Vec<Cut>,
    /// Where its label stands.
    pub label: Label,
    /// Points on which its sizes are laid over each other to be compared: none, its origin; one, that point; two, the first
    /// across and the second down.
    pub stack: Vec<String>,
}

/// A named point.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Point {
    /// Its name.
    pub name: String,
    /// Its formula.
    pub at: String,
    /// Anything worth telling.
    pub note: String,
}

/// A named edge or line: segments from one point to another.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Edge {
    /// Its name.
    pub name: String,
    /// The name of the point at which it starts.
    pub from: String,
    /// Its segments; each starts where the one before ends.
    pub by: Vec<Segment>,
    /// Points inside it at which it must run on smoothly.
    pub smooth_at: Vec<String>,
    /// Anything worth telling.
    pub note: String,
}

/// A segment of an edge. The last text (or `to`) is the name of the point at which it ends.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Segment {
    /// A straight line to a point.
    Straight(String),
    /// A cubic: formula of the handle leaving, of the handle arriving, name of the end.
    Curve(String, String, String),
    /// A circular arc.
    Arc {
        /// Formula of the centre; both ends must lie equally far from it.
        centre: String,
        /// Which way round, as seen on paper.
        turn: Turn,
        /// Name of the end.
        to: String,
    },
    /// A smooth curve through points: cubic spline, second derivative continuous, centripetal parameters.
    Smooth {
        /// Formulas of the points between the ends, in order.
        through: Vec<String>,
        /// Formula of the heading in which it leaves; empty: no bending at that end.
        #[serde(default, skip_serializing_if = "String::is_empty")]
        leaving: String,
        /// Formula of the heading in which it arrives; empty: no bending at that end.
        #[serde(default, skip_serializing_if = "String::is_empty")]
        arriving: String,
        /// Name of the end.
        to: String,
    },
    /// A curve taken from elsewhere by a formula; it must start and end at the named points.
    Taken {
        /// Formula of the curve.
        curve: String,
        /// Set off to the inside by this much; empty: not at all.
        #[serde(default, skip_serializing_if = "String::is_empty")]
        off: String,
        /// Running to this much at its end; empty: constant.
        #[serde(default, skip_serializing_if = "String::is_empty")]
        off_end: String,
        /// Name of the end.
        to: String,
    },
}

impl Piece {
    /// All of it that has a name: what it is, and the name.
    pub fn named(&self) -> impl Iterator<Item = (Inner, &String)> {
        let points = self.points.iter().map(|p| (Inner::Point, &p.name));
        let edges = self.edges.iter().map(|e| (Inner::Edge, &e.name));
        let lines = self.lines.iter().map(|l| (Inner::Line, &l.name));
        let darts = self.darts.iter().map(|d| (Inner::Dart, &d.name));
        let pleats = self.pleats.iter().map(|t| (Inner::Pleat, &t.name));
        let tucks = self.tucks.iter().map(|t| (Inner::Tuck, &t.name));
        let folds = self.folds.iter().map(|f| (Inner::Fold, &f.name));
        let lengthen = self.lengthen.iter().map(|l| (Inner::Lengthen, &l.name));
        let slits = self.slits.iter().map(|l| (Inner::Slit, &l.name));
        let marks = self.marks.iter().map(|m| (Inner::Mark, &m.name));
        let outline = points.chain(edges).chain(lines).chain(darts);
        outline.chain(pleats).chain(tucks).chain(folds).chain(lengthen).chain(slits).chain(marks)
    }
}

impl Segment {
    /// Name of the point at which it ends.
    pub fn end(&self) -> &str {
        match self {
            Self::Straight(to) | Self::Curve(_, _, to) => to,
            Self::Arc { to, .. } | Self::Smooth { to, .. } | Self::Taken { to, .. } => to,
        }
    }
}

/// Which way an arc goes round, as seen on paper.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Turn {
    /// With the clock.
    Clockwise,
    /// Against it.
    Anticlockwise,
}

/// A dart. The edge is drawn with the dart open.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Dart {
    /// Its name.
    pub name: String,
    /// The edge it opens on; with two ends, the inner line from tip to tip.
    pub on: String,
    /// Place of its middle on the flat edge or line: a length or a fraction of it, from its start.
    pub centre: String,
    /// Place of its first foot instead of the middle.
    pub foot: String,
    /// Straight distance of its feet.
    pub intake: String,
    /// Its tip: a point, or a length square to the edge, inside.
    pub tip: String,
    /// How far each leg bows out of the straight, in its middle, away from the dart's middle; below zero: towards it; empty: straight.
    pub bow: String,
    /// Towards which end of the edge it is pressed.
    #[serde(skip_serializing_if = "is_default")]
    pub pressed: Pressed,
    /// Which leg keeps its foot as drawn; the other one swings about the tip until both are equally long.
    #[serde(skip_serializing_if = "is_default")]
    pub kept: Pressed,
    /// How it is sewn.
    #[serde(skip_serializing_if = "is_default")]
    pub form: DartForm,
    /// The allowance of each leg, where it is slashed or cut out; empty: that of the draft.
    pub allowance: String,
    /// Anything worth telling.
    pub note: String,
}

/// Towards which end of its edge a dart, pleat or tuck is pressed.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Pressed {
    /// Where the edge starts.
    #[default]
    ToStart,
    /// Where the edge ends.
    ToEnd,
}

/// How a dart is sewn.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum DartForm {
    /// Folded.
    #[default]
    Folded,
    /// Slashed open, with an allowance on each leg.
    Slashed,
    /// Cut out, with an allowance on each leg.
    CutOut,
    /// With two ends, inside the piece.
    TwoEnded,
}

/// A pleat or tuck that takes up an edge.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Tuck {
    /// Its name.
    pub name: String,
    /// The edge it crosses.
    pub on: String,
    /// Place of its middle on the flat edge: a length or a fraction, from its start.
    pub centre: String,
    /// How much of the edge it takes up.
    pub intake: String,
    /// How long it is.
    pub depth: String,
    /// Towards which end of the edge it is pressed.
    #[serde(skip_serializing_if = "is_default")]
    pub pressed: Pressed,
    /// Anything worth telling.
    pub note: String,
}

/// A fold: waistband, grown-on facing, cuff, hem, casing, roll line, cut on fold.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Fold {
    /// Its name.
    pub name: String,
    /// The edge or line that is folded.
    pub line: String,
    /// The edges that fold over it.
    pub over: Vec<String>,
    /// The edges on which they must then lie.
    pub onto: Vec<String>,
    /// How many turns.
    pub turns: u32,
    /// Anything worth telling.
    pub note: String,
}

/// A line given by a formula, with a name.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct PinnedLine {
    /// Its name.
    pub name: String,
    /// Its formula.
    pub line: String,
    /// Anything worth telling.
    pub note: String,
}

/// What a mark is.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum MarkKind {
    /// A circle.
    #[default]
    Circle,
    /// A punched hole.
    DrillHole,
    /// A button.
    Button,
    /// A buttonhole.
    Buttonhole,
    /// The end of a zip.
    ZipEnd,
    /// The place of another piece.
    Place,
    /// Words.
    Text,
}

/// A mark on a piece.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Mark {
    /// Its name.
    pub name: String,
    /// What it is.
    pub kind: MarkKind,
    /// Its formula, a point.
    pub at: String,
    /// For a row of them: its other end.
    pub to: String,
    /// How many, for a row.
    pub count: u32,
    /// A point with which one of a row is to be level, measured along the row.
    pub fixed: String,
    /// Which of the row that is, from 1; 0: the row is spread evenly from end to end.
    pub fixed_as: u32,
    /// The piece whose place it is: its origin lies here, and `to` tells where its first direction points.
    pub piece: String,
    /// Its size, where it has one.
    pub size: String,
    /// The words that stand beside it.
    pub text: String,
}

/// A seam allowance on an edge.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Allowance {
    /// The edge.
    pub edge: String,
    /// The name of the set it belongs to, for pieces cut differently from several cloths.
    pub set: String,
    /// Its width.
    pub width: String,
    /// From where on the edge it holds; empty: from its start.
    pub from: String,
    /// Running to this width at its end; empty: constant.
    pub to_width: String,
    /// How many turns, where it is a hem: one or two; 0: a seam allowance.
    #[serde(skip_serializing_if = "is_default")]
    pub turns: u32,
    /// How far the second turn goes in; empty: as far as the first.
    pub turn_in: String,
}

/// A corner of the cut line.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Corner {
    /// The point.
    pub at: String,
    /// How it is shaped.
    #[serde(skip_serializing_if = "is_default")]
    pub form: CornerForm,
    /// What is left beyond the mitre, or beyond the point where it is cut across; empty: nothing, or the wider allowance.
    pub width: String,
}

/// How a corner of the cut line is shaped.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum CornerForm {
    /// As the order of sewing says.
    #[default]
    BySewing,
    /// Both cut lines run on until they meet.
    Plain,
    /// Both allowances are turned in and meet on the line that halves the corner.
    Mitred,
    /// Straight across the point.
    Across,
}

/// How a piece is cut from one material.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Cut {
    /// The material.
    pub material: String,
    /// How many are cut in all.
    pub count: u32,
    /// The edge that lies on the fold of the cloth.
    pub on_fold: String,
    /// The edge that lies at the border of the cloth, its selvedge; empty: none.
    pub border: String,
    /// The lengthwise thread.
    pub grain: Grain,
    /// Which side of the cloth is up.
    #[serde(skip_serializing_if = "is_default")]
    pub face: Face,
    /// Which outline is cut.
    #[serde(skip_serializing_if = "is_default")]
    pub outline: Outline,
    /// The set of allowances that is used.
    pub allowances: String,
}

/// The lengthwise thread of a cut piece.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Grain {
    /// Formula of a heading.
    pub heading: String,
    /// The edge or line of the piece to which it must be parallel; empty: none.
    pub along: String,
    /// Whether the piece may also be turned by half.
    #[serde(skip_serializing_if = "is_default")]
    pub ways: GrainWays,
}

/// Whether a piece may be turned by half on the cloth.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum GrainWays {
    /// It may.
    #[default]
    Both,
    /// It may not.
    One,
}

/// Which side of the cloth is up when a piece is cut.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Face {
    /// Either: copies come in mirrored pairs.
    #[default]
    Pairs,
    /// The right side, for every copy.
    RightSideUp,
    /// The wrong side, for every copy.
    WrongSideUp,
}

/// Which outline is cut.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Outline {
    /// With its allowances.
    #[default]
    Full,
    /// The stitch line.
    LessAllowance,
    /// A rough block, to be fused before cutting.
    Block,
}

/// Where a piece's label stands.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Label {
    /// Formula of a point.
    pub at: String,
    /// Formula of an angle.
    pub turn: String,
}

/// A drawing or piece laid rigidly on another. Its points are then `placement.point`.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Placement {
    /// Its name in formulas.
    pub name: String,
    /// What is laid.
    pub lay: String,
    /// On what.
    pub on: String,
    /// A point of what is laid (formula in its frame) …
    pub point: String,
    /// … and the point of the other on which it comes to lie (formula in that frame).
    pub onto: String,
    /// A second point of what is laid …
    pub towards: String,
    /// … and the point of the other in whose direction it then lies.
    pub along: String,
    /// Instead of the second points: the angle by which it is turned.
    pub turned: String,
    /// By how much it is then pushed along that direction, so that it overlaps.
    pub overlap: String,
    /// Whether it is turned over first, left to right.
    pub mirrored: bool,
}
