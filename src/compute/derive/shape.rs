//! A piece by its names: how its outline runs, and what lies on it.

use std::collections::BTreeSet;

use crate::document::{Dart, Edge, Piece, Segment};
use crate::language::{nearest, parse};
use crate::texts::say;

pub(in crate::compute) use crate::document::OWN_LETTER as OWN;

/// An edge or line by its name and ends.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Side {
    pub name: String,
    pub from: String,
    pub to: String,
    /// Whether it is straight, as far as the draft tells without numbers.
    pub is_straight: bool,
}

/// A point that is no corner of the outline.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Spot {
    pub name: String,
    /// The edge inside which it lies, if it is one of its joints.
    pub on: Option<String>,
    /// Whether it is left out where it does not lie on the piece: the place of a mark.
    pub is_mark: bool,
}

/// A piece by its names.
#[derive(Clone, Debug, Default)]
pub(super) struct Shape {
    /// The outline, in order.
    pub edges: Vec<Side>,
    pub lines: Vec<Side>,
    pub spots: Vec<Spot>,
    /// Darts: what they open on, and all that is no place.
    pub darts: Vec<Dart>,
    /// Marks, allowances, cuts and whatever else is told by names.
    pub rest: Piece,
}

impl Shape {
    /// A piece as it is typed, or told by formulas; the first text of `free` is how its own names are said outside of it.
    pub fn of(piece: &Piece, link: &str) -> (Self, Vec<(String, String)>) {
        let mut shape = Self::default();
        let side = |edge: &Edge| Side {
            name: edge.name.clone(),
            from: edge.from.clone(),
            to: edge.by.last().map_or_else(String::new, |s| s.end().to_owned()),
            is_straight: matches!(edge.by.as_slice(), [Segment::Straight(_)]),
        };
        shape.edges = piece.edges.iter().map(side).collect();
        shape.lines = piece.lines.iter().map(side).collect();
        let corners: BTreeSet<&String> = piece.edges.iter().map(|e| &e.from).collect();
        for point in piece.points.iter().filter(|p| !corners.contains(&p.name) && !p.name.contains(OWN)) {
            let inside = |e: &&Edge| e.by.iter().rev().skip(1).any(|s| s.end() == point.name);
            let on = piece.edges.iter().find(inside).map(|e| e.name.clone());
            shape.spots.push(Spot { name: point.name.clone(), on, is_mark: false });
        }
        let names = Names::of(piece);
        // Numbers are the same in every frame; places come through the link.
        let (free, placed) = (|t: &str| names.said(t, &piece.name), |t: &str| names.said(t, link));
        shape.darts = piece
            .darts
            .iter()
            .map(|d| Dart {
                bow: free(&d.bow),
                allowance: free(&d.allowance),
                centre: free(&d.centre),
                intake: free(&d.intake),
                ..d.clone()
            })
            .collect();
        let mut rest = Piece { letter: piece.letter.clone(), ..Piece::default() };
        let mut places = Vec::new();
        let mut place = |text: &str| match text.is_empty() {
            true => String::new(),
            false => {
                let name = format!("{OWN}m{}", places.len());
                places.push((name.clone(), placed(text)));
                name
            }
        };
        for mark in &piece.marks {
            let (at, to, fixed) = (place(&mark.at), place(&mark.to), place(&mark.fixed));
            let text = in_braces(&mark.text, &free);
            rest.marks.push(crate::document::Mark { at, to, fixed, size: free(&mark.size), text, ..mark.clone() });
        }
        for a in &piece.allowances {
            rest.allowances.push(crate::document::Allowance {
                width: free(&a.width),
                from: free(&a.from),
                to_width: free(&a.to_width),
                turn_in: free(&a.turn_in),
                ..a.clone()
            });
        }
        for c in &piece.corners {
            rest.corners.push(crate::document::Corner { width: free(&c.width), ..c.clone() });
        }
        for cut in &piece.cuts {
            let mut cut = cut.clone();
            cut.grain.heading = free(&cut.grain.heading);
            rest.cuts.push(cut);
        }
        rest.label.turn = free(&piece.label.turn);
        for (to, from) in [(&mut rest.pleats, &piece.pleats), (&mut rest.tucks, &piece.tucks)] {
            for t in from {
                let (centre, intake, depth) = (free(&t.centre), free(&t.intake), free(&t.depth));
                to.push(crate::document::Tuck { centre, intake, depth, ..t.clone() });
            }
        }
        rest.folds.clone_from(&piece.folds);
        rest.stack.clone_from(&piece.stack);
        shape.rest = rest;
        shape.spots.extend(places.iter().map(|(name, _)| Spot { name: name.clone(), on: None, is_mark: true }));
        (shape, places)
    }

    /// Behind a sentence that there is no edge of this name: what could be meant.
    pub fn instead(&self, name: &str) -> String {
        let known = self.edges.iter().map(|e| e.name.as_str());
        let corners = self.edges.iter().map(|e| e.from.as_str());
        let all = known.clone().chain(corners).chain(self.darts.iter().map(|d| d.name.as_str()));
        match nearest(name, all) {
            Some(name) => say!("step-hint", name),
            None => say!("step-edges", edges = known.collect::<Vec<_>>().join(", ")),
        }
    }

    pub fn edge(&self, name: &str) -> Option<usize> {
        self.edges.iter().position(|e| e.name == name)
    }

    pub fn corner(&self, name: &str) -> Option<usize> {
        self.edges.iter().position(|e| e.from == name)
    }

    pub fn dart(&self, name: &str) -> Option<&Dart> {
        self.darts.iter().find(|d| d.name == name)
    }

    /// Leaves out what is told of edges, lines and points that are not there any more.
    pub fn tidy(&mut self) {
        let edges: BTreeSet<String> = self.edges.iter().map(|e| e.name.clone()).collect();
        let lines: BTreeSet<String> = self.lines.iter().map(|e| e.name.clone()).collect();
        let corners: BTreeSet<String> = self.edges.iter().map(|e| e.from.clone()).collect();
        let spots: BTreeSet<String> = self.spots.iter().map(|s| s.name.clone()).collect();
        let known = |n: &String| edges.contains(n) || lines.contains(n);
        let rest = &mut self.rest;
        rest.allowances.retain(|a| edges.contains(&a.edge));
        rest.corners.retain(|c| corners.contains(&c.at));
        rest.folds.retain(|f| known(&f.line) && f.over.iter().chain(&f.onto).all(known));
        rest.pleats.retain(|t| edges.contains(&t.on));
        rest.tucks.retain(|t| edges.contains(&t.on));
        rest.stack.retain(|p| corners.contains(p) || spots.contains(p));
        rest.marks.retain(|m| [&m.at, &m.to, &m.fixed].into_iter().all(|p| p.is_empty() || spots.contains(p)));
        for cut in &mut rest.cuts {
            if !cut.on_fold.is_empty() && !edges.contains(&cut.on_fold) {
                cut.on_fold.clear();
            }
            if !edges.contains(&cut.border) {
                cut.border.clear();
            }
            if !cut.grain.along.is_empty() && !known(&cut.grain.along) {
                cut.grain.along.clear();
            }
        }
        self.darts.retain(|d| known(&d.on));
    }
}

/// Words with what stands in braces said otherwise.
fn in_braces(text: &str, said: &dyn Fn(&str) -> String) -> String {
    let mut out = String::with_capacity(text.len());
    let mut rest = text;
    while let Some((before, behind)) = rest.split_once('{') {
        let Some((inner, after)) = behind.split_once('}') else { break };
        out += &format!("{before}{{{}}}", said(inner));
        rest = after;
    }
    out + rest
}

/// The names of a piece that formulas can say.
struct Names<'a> {
    piece: &'a str,
    own: BTreeSet<&'a str>,
}

impl<'a> Names<'a> {
    fn of(piece: &'a Piece) -> Self {
        let points = piece.points.iter().map(|p| p.name.as_str());
        let edges = piece.edges.iter().chain(&piece.lines).map(|e| e.name.as_str());
        let own = points.chain(edges).chain(piece.darts.iter().map(|d| d.name.as_str())).collect();
        Self { piece: &piece.name, own }
    }

    /// A formula of the piece as it is said outside of it: `prefix` in front of its own names.
    fn said(&self, text: &str, prefix: &str) -> String {
        let Ok(expr) = parse(text) else { return text.to_owned() };
        let mut edits: Vec<(usize, usize)> = Vec::new();
        expr.each_name(&mut |parts| match parts {
            [word, name, inner, ..]
                if word.text == "piece" && name.text == self.piece && self.own.contains(inner.text.as_str()) =>
            {
                edits.push((word.span.start, inner.span.start));
            }
            [name, inner, ..] if name.text == self.piece && self.own.contains(inner.text.as_str()) => {
                edits.push((name.span.start, inner.span.start));
            }
            [first, ..] if self.own.contains(first.text.as_str()) => edits.push((first.span.start, first.span.start)),
            _ => {}
        });
        let mut out = text.to_owned();
        edits.sort_unstable();
        for (from, to) in edits.into_iter().rev() {
            out.replace_range(from..to, &format!("{prefix}."));
        }
        out
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::Point;

    #[test]
    fn names_of_a_piece_are_said_outside_of_it() {
        let point = |name: &str| Point { name: name.into(), ..Point::default() };
        let piece = Piece { name: "front".into(), points: vec![point("tip"), point("nape")], ..Piece::default() };
        let names = Names::of(&piece);
        assert_eq!(
            names.said("tip.down(bust / 10).right(gap(front.tip, piece.front.nape))", "x"),
            "x.tip.down(bust / 10).right(gap(x.tip, x.nape))"
        );
        assert_eq!(names.said("1/2", "x"), "1/2");
        assert_eq!(names.said("back.tip", "x"), "back.tip");
    }
}
