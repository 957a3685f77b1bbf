//! Steps by which a piece is derived from another one.

use serde::{Deserialize, Serialize};

use super::{Dart, Edge, Mark, Point, Segment, is_default};

/// A step of a derived piece. Bare names in it mean the piece as it is before the step; it writes down the names of all that it makes.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Step {
    /// Its name, one set for each piece.
    pub name: String,
    /// The person for whom alone it is done; empty: for everybody.
    pub person: String,
    /// What is done.
    pub does: Does,
    /// Anything worth telling.
    pub note: String,
}

/// What a step does.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Does {
    /// Closes a dart, or a share of it, and opens its amount elsewhere.
    MoveDart(MoveDart),
    /// Slashes from edge to edge and spreads, hinged or parallel; below zero: laps.
    Spread(Spread),
    /// Cuts in two and keeps one part.
    Cut(CutOff),
    /// Joins another piece along an edge.
    Join(Join),
    /// Mirrors the piece in an edge and keeps both halves as one.
    Unfold(Unfold),
    /// Turns the piece over, left to right.
    TurnOver,
    /// Adds a strip along an edge: a button stand, a grown-on facing, a casing.
    AddStrip(AddStrip),
    /// Moves an edge inwards; below zero: outwards. Its neighbours are cut or prolonged straight.
    MoveEdge(MoveEdge),
    /// Moves several edges by shares of one amount.
    Share(Share),
    /// Moves edges out to their cut line, by their allowances.
    ToCutLine(ToCutLine),
    /// Draws an edge anew between the same ends.
    Redraw(Redraw),
    /// Draws points, lines, darts and marks.
    Draw(Draw),
    /// Leaves out lines, darts, marks and points.
    LeaveOut(Vec<String>),
}

impl Default for Does {
    fn default() -> Self {
        Self::LeaveOut(Vec::new())
    }
}

/// How what is opened is finished.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Opening {
    /// A dart that is moved as a dart, a slash with a straight line across.
    #[default]
    Usual,
    /// As a dart.
    Dart,
    /// Left open, with a straight line across: gathers, ease, flare.
    Straight,
    /// Left open, with a curve across that runs on smoothly at both ends.
    Curve,
}

/// Closes a dart and opens it elsewhere. It is turned about its tip.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct MoveDart {
    /// The dart that is closed.
    pub close: String,
    /// The part of it that is closed, from 0 to 1; empty: all of it.
    pub share: String,
    /// The edge on which it opens, another than its own; or a corner of the outline.
    pub on: String,
    /// Where on that edge: a length or a fraction of its sewn length.
    pub at: String,
    /// An edge or corner of the part that stays where it is; the other part is turned.
    pub stays: String,
    /// How the opening is finished.
    #[serde(skip_serializing_if = "is_default")]
    pub opening: Opening,
    /// Name of the dart that it makes, or of the line across the opening.
    pub makes: String,
}

/// Slashes and spreads, once or several times.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Spread {
    /// The edge that opens, or a corner.
    pub from: String,
    /// Where on it.
    pub from_at: String,
    /// The edge at which the slash ends, or a corner: the hinge, unless it is spread in parallel.
    pub to: String,
    /// Where on it.
    pub to_at: String,
    /// How often it is slashed, at equal shares between two places of each edge; 0: once, at `from_at` and `to_at`. The amount is shared.
    #[serde(skip_serializing_if = "is_default")]
    pub count: u32,
    /// The other place of the edge that opens, where there are several; empty: its end (and `from_at`: its start).
    #[serde(skip_serializing_if = "is_default")]
    pub from_until: String,
    /// The other place of the edge at which they end; empty: its start (and `to_at`: its end), so that they do not cross.
    #[serde(skip_serializing_if = "is_default")]
    pub to_until: String,
    /// How wide it opens on the edge.
    pub by: String,
    /// Or the angle by which it opens.
    pub angle: String,
    /// Whether both ends open by the same amount, square to the slash.
    pub parallel: bool,
    /// An edge or corner of the part that stays; of a slash within one edge, that edge itself: what lies between its ends.
    pub stays: String,
    /// How the opening is finished.
    #[serde(skip_serializing_if = "is_default")]
    pub opening: Opening,
    /// Name of the dart that it makes.
    pub makes: String,
}

/// Cuts in two. The cut runs from edge to edge; from or to a dart it runs along its legs, and the dart is gone.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct CutOff {
    /// The edge, corner or dart at which the cut starts.
    pub from: String,
    /// Where on that edge; empty: where `along` crosses it.
    pub from_at: String,
    /// The edge, corner or dart at which it ends.
    pub to: String,
    /// Where on that edge; empty: where `along` crosses it.
    pub to_at: String,
    /// A curve from there to there (from a dart: from its tip); empty: straight.
    pub along: String,
    /// An edge or corner of the part that is kept; of a cut within one edge, that edge itself: what lies between its ends.
    pub keep: String,
    /// Name of the edge that it makes.
    pub makes: String,
    /// Name of the point where the cut starts; within one edge: where it comes first on that.
    pub start: String,
    /// Name of the point where it ends.
    pub end: String,
    /// Of a cut within one edge that keeps what lies beyond its ends: name of the last stretch of that edge; the first one keeps its name.
    #[serde(skip_serializing_if = "is_default")]
    pub rest: String,
    /// Darts on the edges that are cut, as far as they lie on the part that is kept.
    pub darts: Vec<String>,
}

/// Joins another piece along an edge, the first ends together.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Join {
    /// Edge of this piece.
    pub edge: String,
    /// The other piece.
    pub piece: String,
    /// Its edge.
    pub to: String,
    /// Whether its edge is run the other way, so that its end meets the start of this one's.
    pub reversed: bool,
    /// What is put in front of all names that come from it.
    pub prefix: String,
}

/// Mirrors and unfolds.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Unfold {
    /// The straight edge in which it is mirrored; it is inside then, as a line.
    pub over: String,
    /// What is put in front of the names of the mirrored half.
    pub prefix: String,
}

/// How a strip ends.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum StripEnds {
    /// Square to the edge.
    #[default]
    Square,
    /// As the neighbouring edges mirrored in a straight edge, so that it can be turned in.
    Mirrored,
}

/// Adds a strip along an edge, which is inside then, as a line.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct AddStrip {
    /// The edge.
    pub edge: String,
    /// How wide.
    pub width: String,
    /// How it ends.
    #[serde(skip_serializing_if = "is_default")]
    pub ends: StripEnds,
    /// Name of the new outer edge.
    pub makes: String,
    /// Name of the edge and of the corner at its start.
    pub start: String,
    /// Name of the edge and of the corner at its end.
    pub end: String,
}

/// Moves an edge.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct MoveEdge {
    /// The edge.
    pub edge: String,
    /// By how much, inwards; at its start, where it runs to another amount.
    pub by: String,
    /// By how much at its end; empty: the same.
    pub to_by: String,
}

/// Shares an amount over edges: each is moved inwards by its part of it; below zero: outwards.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Share {
    /// The amount.
    pub by: String,
    /// The edges, in the order in which they are moved. The last one takes what the others leave.
    pub over: Vec<EdgeShare>,
}

/// An edge and its part of an amount.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct EdgeShare {
    /// The edge.
    pub edge: String,
    /// Its part, from 0 to 1; empty for the last edge.
    pub share: String,
}

/// Moves edges out by their allowances; corners are where the moved edges meet.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct ToCutLine {
    /// The edges; empty: all that do not lie on a fold of the cloth.
    pub edges: Vec<String>,
    /// The set of allowances; empty: the one without a name.
    pub set: String,
}

/// Draws an edge anew.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Redraw {
    /// The edge.
    pub edge: String,
    /// Its segments; the last ends where the edge ended.
    pub by: Vec<Segment>,
    /// Points inside it at which it must run on smoothly.
    pub smooth_at: Vec<String>,
}

/// Draws on a piece.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Draw {
    /// Points.
    pub points: Vec<Point>,
    /// Lines inside.
    pub lines: Vec<Edge>,
    /// Darts.
    pub darts: Vec<Dart>,
    /// Marks.
    pub marks: Vec<Mark>,
}
