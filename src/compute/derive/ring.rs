//! Places on an outline, and what lies between two of them.

use super::copy::{Fate, Gap, Moves, point, taken};
use super::shape::{OWN, Shape};
use crate::document::{Edge, Opening, Piece, Segment};
use crate::texts::say;

/// A place on the outline. Points are names of the stage.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Place {
    /// The corner at which this edge starts.
    Corner(usize, String),
    /// In the course of an edge; at a dart the outline ends at its first foot and goes on at its second.
    On {
        edge: usize,
        before: String,
        after: String,
        /// The dart's tip.
        tip: Option<String>,
    },
}

impl Place {
    /// Corners have even numbers, edges odd ones.
    fn number(&self) -> usize {
        match self {
            Self::Corner(i, _) => 2 * i,
            Self::On { edge, .. } => 2 * edge + 1,
        }
    }

    /// Where the outline ends that comes before it.
    pub fn before(&self) -> &str {
        match self {
            Self::Corner(_, name) => name,
            Self::On { before, .. } => before,
        }
    }

    /// Where the outline goes on.
    pub fn after(&self) -> &str {
        match self {
            Self::Corner(_, name) => name,
            Self::On { after, .. } => after,
        }
    }

    /// The place itself, or the tip of its dart.
    pub fn inner(&self) -> &str {
        match self {
            Self::On { tip: Some(tip), .. } => tip,
            _ => self.before(),
        }
    }

    pub fn tip(&self) -> Option<&str> {
        match self {
            Self::On { tip, .. } => tip.as_deref(),
            Self::Corner(..) => None,
        }
    }

    pub fn edge(&self) -> Option<usize> {
        match self {
            Self::On { edge, .. } => Some(*edge),
            Self::Corner(..) => None,
        }
    }
}

/// A part of the outline between two places, as it runs.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Arc {
    pub from: Place,
    pub to: Place,
    /// Both places lie on one edge, and it is what lies beyond them: it has the last stretch of that edge, all others, and its first stretch.
    pub is_outer: bool,
}

impl Arc {
    /// The part between two places that has (or, if not `with`, has not) the edge or corner of this name. Of two places on one edge the first
    /// comes first on it; then the name of the edge itself is that of what lies between them.
    pub fn of(shape: &Shape, one: Place, two: Place, name: &str, with: bool) -> Result<Self, String> {
        let is_one_edge = one.edge().is_some() && one.edge() == two.edge();
        if one.number() == two.number() && (!is_one_edge || one.tip().is_some() || two.tip().is_some()) {
            return Err(say!("step-one-edge"));
        }
        let number = shape.edge(name).map(|i| 2 * i + 1).or_else(|| shape.corner(name).map(|i| 2 * i));
        let Some(number) = number else {
            return Err(match name {
                "" => say!("step-stays-unsaid"),
                _ => say!("step-no-edge-or-corner", name, hint = shape.instead(name)),
            });
        };
        if is_one_edge {
            let has_middle = (number == one.number()) == with;
            return Ok(match has_middle {
                true => Self { from: one, to: two, is_outer: false },
                false => Self { from: two, to: one, is_outer: true },
            });
        }
        if [one.number(), two.number()].contains(&number) {
            return Err(say!("step-cut-itself", name));
        }
        let arc = Self { from: one, to: two, is_outer: false };
        let other = |arc: Self| Self { from: arc.to, to: arc.from, is_outer: false };
        Ok(if arc.has(shape, number) == with { arc } else { other(arc) })
    }

    fn has(&self, shape: &Shape, number: usize) -> bool {
        if self.is_outer {
            return number != self.from.number();
        }
        let round = 2 * shape.edges.len();
        let far = |n: usize| (n + round - self.from.number()) % round;
        far(number) > 0 && far(number) < far(self.to.number())
    }

    /// Its edges in order.
    pub fn edges(&self, shape: &Shape) -> Vec<usize> {
        let round = shape.edges.len();
        let first = match &self.from {
            Place::Corner(i, _) | Place::On { edge: i, .. } => *i,
        };
        let mut out: Vec<usize> = (0..round).map(|k| (first + k) % round).collect();
        if self.is_outer {
            out.push(first);
            return out;
        }
        let last = self.to.number() / 2;
        let keep = out.iter().position(|i| *i == last).unwrap_or(round);
        out.truncate(if self.to.edge().is_some() { keep + 1 } else { keep });
        out
    }

    /// How it runs, as segments from `from.after()` to `to.before()`, told in the stage itself.
    pub fn segments(&self, shape: &Shape) -> Vec<Segment> {
        let edges = self.edges(shape);
        let mut out = Vec::with_capacity(edges.len());
        for (k, i) in edges.iter().copied().enumerate() {
            let side = &shape.edges[i];
            let (is_first, is_last) = (k == 0, k + 1 == edges.len());
            let start = if is_first && self.from.edge().is_some() { self.from.after() } else { side.from.as_str() };
            let end = if is_last && self.to.edge().is_some() { self.to.before() } else { side.to.as_str() };
            out.push(if start == side.from && end == side.to {
                taken(side.name.clone(), end)
            } else {
                taken(format!("part({}, {start}, {end})", side.name), end)
            });
        }
        out
    }

    /// A closed line of the stage: along the outline, then on through `back` to where it began.
    pub fn closed(&self, shape: &Shape, name: &str, back: Vec<Segment>) -> Edge {
        let mut by = self.segments(shape);
        by.extend(back);
        Edge { name: name.to_owned(), from: self.from.after().to_owned(), by, ..Edge::default() }
    }

    /// What becomes of the outline where this part of it moves. `across` says how its two ends are bridged, and with which names.
    pub fn moves(&self, shape: &Shape, how: String, region: &str, ends: [End; 2]) -> Moves {
        let mut moves = Moves::none(shape);
        moves.how = how;
        region.clone_into(&mut moves.region);
        for (i, fate) in moves.fates.iter_mut().enumerate() {
            *fate = Fate::Whole { moves: self.has(shape, 2 * i + 1) };
        }
        for (i, corner) in moves.corners.iter_mut().enumerate() {
            *corner = self.has(shape, 2 * i);
        }
        let gap = |place: &Place, end: End| Gap {
            cut: end.cut.unwrap_or([place.before().to_owned(), place.after().to_owned()]),
            across: end.across,
            names: end.names,
        };
        let [from, to] = ends;
        if let Some(edge) = self.from.edge().filter(|_| self.from.edge() == self.to.edge()) {
            let (one, two) = (gap(&self.from, from), gap(&self.to, to));
            let gaps = if self.is_outer { vec![two, one] } else { vec![one, two] };
            let outer = self.is_outer;
            moves.fates[edge] = Fate::Split { gaps, moves: vec![outer, !outer, outer] };
            return moves;
        }
        for (place, end, starts) in [(&self.from, from, true), (&self.to, to, false)] {
            if let Some(edge) = place.edge() {
                moves.fates[edge] = Fate::Split { gaps: vec![gap(place, end)], moves: vec![!starts, starts] };
            }
        }
        moves
    }
}

/// How an end of a part that moves goes over into the part that stays.
pub(super) struct End {
    pub across: Opening,
    /// Names of the two points there afterwards.
    pub names: [String; 2],
    /// Where the two parts end and begin, if that is not the place itself.
    pub cut: Option<[String; 2]>,
}

impl End {
    pub fn new(tag: &str, across: Opening) -> Self {
        Self { across, names: ["a", "b"].map(|end| format!("{OWN}{tag}{end}")), cut: None }
    }
}

/// The place that a step names: an edge with a place on it, a corner, or a dart.
pub(super) fn place(
    piece: &mut Piece,
    shape: &Shape,
    name: &str,
    at: Option<String>,
    tag: &str,
) -> Result<Place, String> {
    let own = |end: &str| format!("{OWN}{tag}{end}");
    if let Some(edge) = shape.edge(name) {
        let Some(at) = at else { return Err(say!("step-where-unsaid", name)) };
        piece.points.push(point(&own(""), at));
        return Ok(Place::On { edge, before: own(""), after: own(""), tip: None });
    }
    if let Some(i) = shape.corner(name) {
        return Ok(Place::Corner(i, name.to_owned()));
    }
    if let Some(dart) = shape.dart(name) {
        let Some(edge) = shape.edge(&dart.on) else {
            return Err(say!("step-dart-inside", name));
        };
        for (end, member) in [("1", "first_foot"), ("2", "second_foot"), ("t", "tip")] {
            piece.points.push(point(&own(end), format!("{name}.{member}")));
        }
        return Ok(Place::On { edge, before: own("1"), after: own("2"), tip: Some(own("t")) });
    }
    Err(match name {
        "" => say!("step-edge-unsaid"),
        _ => say!("step-no-edge-corner-or-dart", name, hint = shape.instead(name)),
    })
}
