//! What each step makes of a piece.

mod cut;
mod edges;
mod halves;
mod open;
mod outline;

pub(super) use open::mark_slashes;

use super::copy::{Copy, Moves, point, through};
use super::lineage::Made;
use super::ring::{Place, place};
use super::shape::{OWN, Shape, Side, Spot};
use crate::document::{Does, Draw, Edge, Inner, Piece, Placement};
use crate::texts::{own, said, say};

/// A piece as it lies before a step, told in its stage.
pub(super) struct Before<'a> {
    /// Its stage; a step adds to it what it needs.
    pub piece: &'a mut Piece,
    pub shape: &'a Shape,
    /// How the next stage sees this one.
    pub link: &'a str,
    /// The name of the next stage.
    pub next: &'a str,
    /// What an amount is multiplied by, if the step is for one person: behind the amount.
    pub share: String,
    /// Which one of several slashes it is.
    pub slash: Option<Slash>,
    /// Formulas of the step as they were typed, by the names of the points that hold them.
    pub typed: Vec<Typed>,
    /// The names of what the step makes.
    pub made: Vec<Made>,
    /// Placements of other pieces.
    pub placements: Vec<Placement>,
    /// Another piece, by its name.
    pub other: &'a dyn Fn(&str, &str) -> Result<Seen, String>,
    /// The allowance of an edge that tells none itself; empty: none.
    pub usual_width: &'a dyn Fn(&str) -> String,
}

/// A piece by its names, as it is seen through a link, and the places of its marks.
pub(super) type Seen = (Shape, Vec<(String, String)>);

/// One of several slashes of a step.
#[derive(Clone, Debug)]
pub(super) struct Slash {
    /// Which, from 0.
    pub round: u32,
    /// The stage before the first one, in which amounts are computed.
    pub stage: String,
}

/// A formula of a step within one that was made of it.
pub(super) struct Typed {
    pub name: String,
    pub text: String,
    /// How many bytes stand in front of it.
    pub before: usize,
}

/// A piece after a step: what stands in its next frame.
pub(super) type After = Result<(Piece, Shape), String>;

/// Does a step that makes a further stage.
pub(super) fn done(before: &mut Before<'_>, does: &Does) -> After {
    match does {
        Does::MoveDart(step) => before.move_dart(step),
        Does::Spread(step) => before.spread(step),
        Does::Cut(step) => before.cut(step),
        Does::Join(step) => before.join(step),
        Does::Unfold(step) => before.unfold(step),
        Does::TurnOver => Ok(before.turn_over()),
        Does::AddStrip(step) => before.add_strip(step),
        Does::MoveEdge(step) => before.move_edge(step),
        Does::Redraw(step) => before.redraw(step),
        Does::Share(step) => before.share(step),
        Does::ToCutLine(step) => before.out_to_cut_line(step),
        Does::Draw(_) | Does::LeaveOut(_) => Err(say!("step-no-stage")),
    }
}

/// Draws in the stage itself. Gives the names of what it draws.
pub(super) fn draw(piece: &mut Piece, shape: &mut Shape, step: &Draw) -> Vec<Made> {
    let side = |e: &Edge| Side {
        name: e.name.clone(),
        from: e.from.clone(),
        to: e.by.last().map_or_else(String::new, |s| s.end().to_owned()),
        is_straight: false,
    };
    shape.spots.extend(step.points.iter().map(|p| Spot { name: p.name.clone(), on: None, is_mark: false }));
    shape.lines.extend(step.lines.iter().map(side));
    shape.darts.extend(step.darts.iter().cloned());
    for mark in &step.marks {
        let mut place = |text: &String, end: &str| match text.is_empty() {
            true => String::new(),
            false => {
                let name = format!("{OWN}{}{end}", mark.name);
                piece.points.push(point(&name, text.clone()));
                shape.spots.push(Spot { name: name.clone(), on: None, is_mark: true });
                name
            }
        };
        let (at, to, fixed) = (place(&mark.at, "m"), place(&mark.to, "n"), place(&mark.fixed, "f"));
        shape.rest.marks.push(crate::document::Mark { at, to, fixed, ..mark.clone() });
    }
    piece.points.extend(step.points.iter().cloned());
    piece.lines.extend(step.lines.iter().cloned());
    piece.darts.extend(step.darts.iter().cloned());
    let drawn = Piece {
        points: step.points.clone(),
        lines: step.lines.clone(),
        darts: step.darts.clone(),
        marks: step.marks.clone(),
        ..Piece::default()
    };
    drawn.named().map(|(inner, name)| Made { inner, name: name.clone(), tail: "" }).collect()
}

/// Leaves things out.
pub(super) fn leave_out(piece: &mut Piece, shape: &mut Shape, names: &[String]) -> Result<(), String> {
    for name in names {
        let had = shape.lines.len() + shape.darts.len() + shape.rest.marks.len() + shape.spots.len();
        shape.lines.retain(|l| l.name != *name);
        shape.darts.retain(|d| d.name != *name);
        shape.rest.marks.retain(|m| m.name != *name);
        shape.spots.retain(|s| s.name != *name);
        piece.lines.retain(|l| l.name != *name);
        piece.darts.retain(|d| d.name != *name);
        piece.points.retain(|p| p.name != *name || shape.corner(name).is_some());
        if had == shape.lines.len() + shape.darts.len() + shape.rest.marks.len() + shape.spots.len() {
            return Err(say!("step-nothing-inside", name));
        }
    }
    Ok(())
}

impl Before<'_> {
    /// Keeps a formula of the step in a point of the stage, whose name is given back.
    fn keep(&mut self, tag: &str, before: &str, text: &str, after: &str) -> String {
        let name = format!("{OWN}{tag}");
        self.typed.push(Typed { name: name.clone(), text: text.to_owned(), before: before.len() });
        self.piece.points.push(point(&name, format!("{before}{text}{after}")));
        name
    }

    /// Tells the name of something that the step makes.
    pub(super) fn makes(&mut self, inner: Inner, name: &str) {
        self.made.push(Made { inner, name: name.to_owned(), tail: "" });
    }

    /// Keeps a length; it is said by the text that is given back. Where none was typed, the words of this id say so.
    pub(super) fn length(&mut self, tag: &str, text: &str, unsaid: &str) -> Result<String, String> {
        if text.trim().is_empty() {
            return Err(said(own(), unsaid, &[]));
        }
        let after = format!("){}, 0 mm)", self.share);
        Ok(format!("{}.x", self.keep(tag, "((", text, &after)))
    }

    /// The place that the step names; `at` is a place on the sewn edge.
    fn place(&mut self, name: &str, at: &str, tag: &str) -> Result<Place, String> {
        let text = (!at.trim().is_empty()).then(|| format!("{name}.at({at})"));
        if text.is_some() && self.shape.edge(name).is_some() {
            let typed = Typed { name: format!("{OWN}{tag}"), text: at.to_owned(), before: name.len() + 4 };
            self.typed.push(typed);
        }
        place(self.piece, self.shape, name, text, tag)
    }

    /// Two places in the order in which they come on their edge, if they lie on one.
    pub(super) fn in_order(&mut self, one: Place, two: Place) -> (Place, Place) {
        let (Some(edge), true) = (one.edge(), one.edge() == two.edge()) else { return (one, two) };
        if one.tip().is_some() || two.tip().is_some() {
            return (one, two);
        }
        let (a, b) = (one.before(), two.before());
        let order = self.is_first(edge, a, b);
        let [first, second] = ["lo", "hi"].map(|end| format!("{OWN}{end}"));
        self.piece.points.push(point(&first, format!("if({order}, {a}, {b})")));
        self.piece.points.push(point(&second, format!("if({order}, {b}, {a})")));
        let on = |name: String| Place::On { edge, before: name.clone(), after: name, tip: None };
        (on(first), on(second))
    }

    /// Whether one point comes before another on an edge.
    pub(super) fn is_first(&self, edge: usize, a: &str, b: &str) -> String {
        let name = &self.shape.edges[edge].name;
        format!("place({name}, {a}) <= place({name}, {b})")
    }

    pub(super) fn was(&self, name: &str) -> String {
        through(self.link, name)
    }

    /// The next stage where a part of the outline moves.
    pub(super) fn carried(&self, moves: &Moves) -> (Piece, Shape) {
        Copy { shape: self.shape, link: self.link, moves }.piece()
    }

    pub(super) fn for_all(&self, what: &str) -> Result<(), String> {
        if self.share.is_empty() {
            return Ok(());
        }
        Err(say!("step-for-one", what = said(own(), what, &[])))
    }

    pub(super) fn no_edge(&self, name: &str) -> String {
        say!("step-no-edge", name, hint = self.shape.instead(name))
    }
}
