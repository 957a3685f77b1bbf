//! The next stage of a piece, told by formulas over the one before.

use super::shape::{OWN, Shape, Side, Spot};
use crate::document::{Dart, DartForm, Edge, Opening, Piece, Point, Segment};

/// What becomes of an edge of the outline.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Fate {
    /// It stays, or moves as a whole.
    Whole {
        /// Whether it moves.
        moves: bool,
    },
    /// It is cut, and opened or closed there.
    Split {
        /// Where, in its order.
        gaps: Vec<Gap>,
        /// Which of its stretches move: one more than there are cuts.
        moves: Vec<bool>,
    },
}

/// Where an edge is cut.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Gap {
    /// Names of the points before: where the stretch before it ends and the next one begins.
    pub cut: [String; 2],
    /// What comes between them.
    pub across: Opening,
    /// Names of the two points afterwards.
    pub names: [String; 2],
}

/// What moves, and how.
pub(super) struct Moves {
    /// Said behind whatever moves: `.turned(…)`; empty: nothing moves.
    pub how: String,
    /// For each edge of the outline.
    pub fates: Vec<Fate>,
    /// For each corner of the outline, by the edge that starts there.
    pub corners: Vec<bool>,
    /// The closed line, a name of the stage before, inside which points and lines move.
    pub region: String,
}

impl Moves {
    /// Nothing moves.
    pub fn none(shape: &Shape) -> Self {
        Self::all(shape, String::new())
    }

    /// Everything moves.
    pub fn all(shape: &Shape, how: String) -> Self {
        let moves = !how.is_empty();
        let fates = shape.edges.iter().map(|_| Fate::Whole { moves }).collect();
        Self { how, fates, corners: vec![moves; shape.edges.len()], region: String::new() }
    }
}

/// Something seen through a link.
pub(super) fn through(link: &str, name: &str) -> String {
    format!("{link}.{name}")
}

/// A point.
pub(super) fn point(name: &str, at: impl Into<String>) -> Point {
    Point { name: name.to_owned(), at: at.into(), ..Point::default() }
}

/// A segment that is a curve from elsewhere.
pub(super) fn taken(curve: String, to: &str) -> Segment {
    Segment::Taken { curve, off: String::new(), off_end: String::new(), to: to.to_owned() }
}

/// A part of an edge of the stage before.
pub(super) fn part(link: &str, edge: &str, from: &str, to: &str) -> String {
    format!("part({link}.{edge}, {link}.{from}, {link}.{to})")
}

/// A copy of a piece in which some of it moves.
pub(super) struct Copy<'a> {
    pub shape: &'a Shape,
    pub link: &'a str,
    pub moves: &'a Moves,
}

impl Copy<'_> {
    fn moved(&self, text: String, moves: bool) -> String {
        if moves { text + &self.moves.how } else { text }
    }

    /// Something that lies on an edge, at a point of it (a formula): it goes with its part.
    fn on_edge(&self, edge: usize, at: &str, thing: &str) -> String {
        let link = self.link;
        match &self.moves.fates[edge] {
            Fate::Whole { moves } => self.moved(thing.to_owned(), *moves),
            Fate::Split { moves, .. } if moves.iter().all(|m| *m == moves[0]) => self.moved(thing.to_owned(), moves[0]),
            Fate::Split { gaps, moves } => {
                let name = &self.shape.edges[edge].name;
                let stretch = |i: usize| self.moved(thing.to_owned(), moves[i]);
                gaps.iter().enumerate().rev().fold(stretch(gaps.len()), |beyond, (i, gap)| {
                    let before = stretch(i);
                    format!(
                        "if(place({link}.{name}, {at}) < place({link}.{name}, {link}.{}), {before}, {beyond})",
                        gap.cut[0]
                    )
                })
            }
        }
    }

    /// Something inside the piece, at a point of it.
    fn inside(&self, at: &str, thing: &str) -> String {
        if self.moves.how.is_empty() {
            return thing.to_owned();
        }
        if self.moves.region.is_empty() {
            return self.moved(thing.to_owned(), true);
        }
        format!(
            "if(lies_in({at}, {}.{}), {}, {thing})",
            self.link,
            self.moves.region,
            self.moved(thing.to_owned(), true)
        )
    }

    fn spot(&self, spot: &Spot) -> Point {
        let was = through(self.link, &spot.name);
        let on = spot.on.as_ref().and_then(|e| self.shape.edge(e));
        point(&spot.name, on.map_or_else(|| self.inside(&was, &was), |edge| self.on_edge(edge, &was, &was)))
    }

    fn edge(&self, i: usize, points: &mut Vec<Point>) -> Edge {
        let (side, link) = (&self.shape.edges[i], self.link);
        let by = match &self.moves.fates[i] {
            Fate::Whole { moves } => vec![taken(self.moved(through(link, &side.name), *moves), &side.to)],
            Fate::Split { gaps, moves } => {
                let stretch = |k: usize| {
                    let from = k.checked_sub(1).map_or(&side.from, |k| &gaps[k].cut[1]);
                    let to = gaps.get(k).map_or(&side.to, |gap| &gap.cut[0]);
                    self.moved(part(link, &side.name, from, to), moves[k])
                };
                let mut by = Vec::with_capacity(2 * gaps.len() + 1);
                for (k, gap) in gaps.iter().enumerate() {
                    for (end, moves) in [moves[k], moves[k + 1]].into_iter().enumerate() {
                        points.push(point(&gap.names[end], self.moved(through(link, &gap.cut[end]), moves)));
                    }
                    by.push(taken(stretch(k), &gap.names[0]));
                    by.push(bridge(gap.across, &[stretch(k), stretch(k + 1)], [&gap.names[0], &gap.names[1]]));
                }
                by.push(taken(stretch(gaps.len()), &side.to));
                by
            }
        };
        Edge { name: side.name.clone(), from: side.from.clone(), by, ..Edge::default() }
    }

    fn dart(&self, dart: &Dart) -> Dart {
        let was = |member: &str| format!("{}.{}.{member}", self.link, dart.name);
        if dart.form == DartForm::TwoEnded {
            return dart.clone(); // its line carries it
        }
        let (first, tip) = (was("first_foot"), was("tip"));
        let edge = self.shape.edge(&dart.on).unwrap_or(0);
        Dart {
            foot: self.on_edge(edge, &first, &first),
            centre: String::new(),
            intake: was("intake"),
            tip: self.on_edge(edge, &first, &tip),
            ..dart.clone()
        }
    }

    /// A line inside: it ends at points of its own, as the named ones may go another way.
    pub fn line(&self, line: &Side, curve: &str, points: &mut Vec<Point>) -> Edge {
        let ends = ["a", "b"].map(|end| format!("{OWN}{}{end}", line.name));
        points.push(point(&ends[0], format!("({curve}).at(0)")));
        points.push(point(&ends[1], format!("({curve}).at(1)")));
        let by = vec![taken(curve.to_owned(), &ends[1])];
        Edge { name: line.name.clone(), from: ends[0].clone(), by, ..Edge::default() }
    }

    /// The piece in the next frame. All names stay.
    pub fn piece(&self) -> (Piece, Shape) {
        let mut piece = Piece::default();
        let mut shape = self.shape.clone();
        for (side, moves) in self.shape.edges.iter().zip(&self.moves.corners) {
            piece.points.push(point(&side.from, self.moved(through(self.link, &side.from), *moves)));
        }
        piece.points.extend(self.shape.spots.iter().map(|s| self.spot(s)));
        for i in 0..self.shape.edges.len() {
            let edge = self.edge(i, &mut piece.points);
            shape.edges[i].is_straight &= edge.by.len() == 1;
            piece.edges.push(edge);
        }
        for (line, new) in self.shape.lines.iter().zip(&mut shape.lines) {
            let was = through(self.link, &line.name);
            let curve = self.inside(&format!("{was}.at(1/2)"), &was);
            let line = self.line(line, &curve, &mut piece.points);
            new.from.clone_from(&line.from);
            new.to = line.by[0].end().to_owned();
            piece.lines.push(line);
        }
        piece.darts = self.shape.darts.iter().map(|d| self.dart(d)).collect();
        (piece, shape)
    }
}

/// What lies across an opening: from the first part's end to the second's start.
pub(super) fn bridge(across: Opening, parts: &[String; 2], names: [&str; 2]) -> Segment {
    let [a, b] = names;
    match across {
        Opening::Curve => Segment::Curve(
            format!("{a}.polar(heading(({}).along(1)), gap({a}, {b}) / 3)", parts[0]),
            format!("{b}.polar(heading(({}).along(0)) + 180°, gap({a}, {b}) / 3)", parts[1]),
            b.to_owned(),
        ),
        Opening::Usual | Opening::Dart | Opening::Straight => Segment::Straight(b.to_owned()),
    }
}
