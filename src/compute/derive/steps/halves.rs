//! Pieces that become one: joined, unfolded; a piece that is turned over.

use super::{After, Before};
use crate::compute::derive::copy::{Copy, Moves, point, taken, through};
use crate::compute::derive::shape::{OWN, Shape, Side, Spot};
use crate::document::{
    Allowance, Corner, Dart, DartForm, Edge, Join, Mark, Piece, Placement, Pressed, Segment, Unfold,
};
use crate::texts::{id, say};

impl Before<'_> {
    pub(super) fn join(&mut self, step: &Join) -> After {
        self.for_all(id!("step-joining"))?;
        let Some(i) = self.shape.edge(&step.edge) else { return Err(self.no_edge(&step.edge)) };
        let laid = format!("{}j", self.link);
        let (other, places) = (self.other)(&step.piece, &laid)?;
        let Some(j) = other.edge(&step.to) else {
            return Err(say!("step-piece-no-edge", piece = step.piece, edge = step.to));
        };
        let (mine, theirs) = (self.shape.edges[i].clone(), other.edges[j].clone());
        let (meets_start, meets_end) =
            if step.reversed { (&theirs.to, &theirs.from) } else { (&theirs.from, &theirs.to) };
        self.placements.push(Placement {
            name: laid.clone(),
            lay: step.piece.clone(),
            on: self.next.to_owned(),
            point: meets_start.clone(),
            onto: self.was(&mine.from),
            towards: meets_end.clone(),
            along: self.was(&mine.to),
            ..Placement::default()
        });
        let moves = Moves::none(self.shape);
        let (mut piece, mut shape) = self.carried(&moves);
        rotate(&mut piece.edges, i);
        rotate(&mut shape.edges, i);
        let gone = piece.edges.remove(0);
        shape.edges.remove(0);
        shape.darts.retain(|d| d.on != gone.name);
        piece.darts.retain(|d| d.on != gone.name);
        let name = |n: &str| match n {
            n if n == meets_start => mine.from.clone(),
            n if n == meets_end => mine.to.clone(),
            n => match n.strip_prefix(OWN) {
                Some(rest) => format!("{OWN}{}{rest}", step.prefix),
                None => format!("{}{n}", step.prefix),
            },
        };
        let count = other.edges.len();
        let order: Vec<usize> =
            (1..count).map(|k| if step.reversed { (j + k) % count } else { (j + count - k) % count }).collect();
        for (k, e) in order.iter().enumerate() {
            let side = &other.edges[*e];
            let (from, to) = if step.reversed { (&side.from, &side.to) } else { (&side.to, &side.from) };
            let curve = through(&laid, &side.name);
            let curve = if step.reversed { curve } else { format!("reversed({curve})") };
            let (from, to) = (name(from), name(to));
            let by = if k + 1 == order.len() {
                // The two edges may be unequally long.
                let end = format!("{OWN}{}end", step.prefix);
                piece.points.push(point(&end, format!("({curve}).at(1)")));
                vec![taken(curve, &end), Segment::Straight(to.clone())]
            } else {
                vec![taken(curve, &to)]
            };
            if k > 0 {
                let corner = if step.reversed { &side.from } else { &side.to };
                piece.points.push(point(&from, through(&laid, corner)));
            }
            let called = format!("{}{}", step.prefix, side.name);
            piece.edges.push(Edge { name: called.clone(), from: from.clone(), by, ..Edge::default() });
            shape.edges.push(Side { name: called, from, to, is_straight: false });
        }
        for spot in &other.spots {
            let place = places.iter().find(|(n, _)| *n == spot.name);
            let at = place.map_or_else(|| through(&laid, &spot.name), |(_, at)| at.clone());
            piece.points.push(point(&name(&spot.name), at));
            let on = spot.on.as_ref().map(|e| format!("{}{e}", step.prefix));
            shape.spots.push(Spot { name: name(&spot.name), on, is_mark: spot.is_mark });
        }
        let moves = Moves::none(&other);
        let copy = Copy { shape: &other, link: &laid, moves: &moves };
        for line in &other.lines {
            let called = Side { name: format!("{}{}", step.prefix, line.name), ..line.clone() };
            let new = copy.line(&called, &through(&laid, &line.name), &mut piece.points);
            shape.lines.push(Side { from: new.from.clone(), to: new.by[0].end().to_owned(), ..called });
            piece.lines.push(new);
        }
        for dart in other.darts.iter().filter(|d| d.on != step.to) {
            let was = |member: &str| format!("{laid}.{}.{member}", dart.name);
            let swap = |p: Pressed| if step.reversed { p } else { turned(p) };
            let foot = was(if step.reversed { "first_foot" } else { "second_foot" });
            let mut new = Dart {
                name: format!("{}{}", step.prefix, dart.name),
                on: format!("{}{}", step.prefix, dart.on),
                ..dart.clone()
            };
            if dart.form != DartForm::TwoEnded {
                new = Dart {
                    centre: String::new(),
                    foot,
                    intake: was("intake"),
                    tip: was("tip"),
                    pressed: swap(dart.pressed),
                    kept: swap(dart.kept),
                    ..new
                };
            }
            shape.darts.push(new.clone());
            piece.darts.push(new);
        }
        for a in other.rest.allowances.iter().filter(|a| a.edge != step.to) {
            shape.rest.allowances.push(Allowance { edge: format!("{}{}", step.prefix, a.edge), ..a.clone() });
        }
        for mark in &other.rest.marks {
            let place = |n: &String| if n.is_empty() { String::new() } else { name(n) };
            let (at, to, fixed) = (place(&mark.at), place(&mark.to), place(&mark.fixed));
            let called = format!("{}{}", step.prefix, mark.name);
            shape.rest.marks.push(Mark { name: called, at, to, fixed, ..mark.clone() });
        }
        Ok((piece, shape))
    }

    pub(super) fn unfold(&mut self, step: &Unfold) -> After {
        self.for_all(id!("step-unfolding"))?;
        let Some(i) = self.shape.edge(&step.over) else { return Err(self.no_edge(&step.over)) };
        let fold = self.shape.edges[i].clone();
        let over = format!(".mirrored(line({}, {}))", self.was(&fold.from), self.was(&fold.to));
        let moves = Moves::none(self.shape);
        let (mut piece, mut shape) = self.carried(&moves);
        rotate(&mut piece.edges, i);
        rotate(&mut shape.edges, i);
        piece.edges.remove(0);
        let own: Vec<Side> = shape.edges.split_off(1);
        shape.edges = own.clone();
        shape.darts.retain(|d| d.on != fold.name);
        piece.darts.retain(|d| d.on != fold.name);
        let mut line = Vec::new();
        let new =
            Copy { shape: self.shape, link: self.link, moves: &moves }.line(&fold, &self.was(&fold.name), &mut line);
        piece.points.extend(line);
        shape.lines.push(Side { from: new.from.clone(), to: new.by[0].end().to_owned(), ..fold.clone() });
        piece.lines.push(new);
        let name = |n: &str| match n {
            n if n == fold.from || n == fold.to => n.to_owned(),
            n => match n.strip_prefix(OWN) {
                Some(rest) => format!("{OWN}{}{rest}", step.prefix),
                None => format!("{}{n}", step.prefix),
            },
        };
        for side in own.iter().rev() {
            let (from, to) = (name(&side.to), name(&side.from));
            let called = format!("{}{}", step.prefix, side.name);
            let curve = format!("reversed({}{over})", self.was(&side.name));
            if to != fold.to {
                piece.points.push(point(&to, format!("{}{over}", self.was(&side.from))));
            }
            piece.edges.push(Edge {
                name: called.clone(),
                from: from.clone(),
                by: vec![taken(curve, &to)],
                ..Edge::default()
            });
            shape.edges.push(Side { name: called, from, to, is_straight: side.is_straight });
        }
        for spot in &self.shape.spots {
            let called = name(&spot.name);
            piece.points.push(point(&called, format!("{}{over}", self.was(&spot.name))));
            let on = spot.on.as_ref().map(|e| format!("{}{e}", step.prefix));
            shape.spots.push(Spot { name: called, on, is_mark: spot.is_mark });
        }
        for line in &self.shape.lines {
            let called = Side { name: format!("{}{}", step.prefix, line.name), ..line.clone() };
            let curve = format!("{}{over}", self.was(&line.name));
            let new =
                Copy { shape: self.shape, link: self.link, moves: &moves }.line(&called, &curve, &mut piece.points);
            shape.lines.push(Side { from: new.from.clone(), to: new.by[0].end().to_owned(), ..called });
            piece.lines.push(new);
        }
        for dart in self.shape.darts.iter().filter(|d| d.on != fold.name) {
            let was = |member: &str| format!("{}.{}.{member}", self.link, dart.name);
            let mut new = Dart {
                name: format!("{}{}", step.prefix, dart.name),
                on: format!("{}{}", step.prefix, dart.on),
                ..dart.clone()
            };
            if dart.form != DartForm::TwoEnded {
                new = Dart {
                    centre: String::new(),
                    foot: format!("{}{over}", was("second_foot")),
                    intake: was("intake"),
                    tip: format!("{}{over}", was("tip")),
                    pressed: turned(dart.pressed),
                    kept: turned(dart.kept),
                    ..new
                };
            }
            shape.darts.push(new.clone());
            piece.darts.push(new);
        }
        let rest = self.shape.rest.clone();
        for a in rest.allowances.iter().filter(|a| a.edge != fold.name) {
            shape.rest.allowances.push(Allowance { edge: format!("{}{}", step.prefix, a.edge), ..a.clone() });
        }
        for c in rest.corners.iter().filter(|c| c.at != fold.from && c.at != fold.to) {
            shape.rest.corners.push(Corner { at: name(&c.at), ..c.clone() });
        }
        for mark in &rest.marks {
            let place = |n: &String| if n.is_empty() { String::new() } else { name(n) };
            let (at, to, fixed) = (place(&mark.at), place(&mark.to), place(&mark.fixed));
            let called = format!("{}{}", step.prefix, mark.name);
            shape.rest.marks.push(Mark { name: called, at, to, fixed, ..mark.clone() });
        }
        Ok((piece, shape))
    }

    pub(super) fn turn_over(&self) -> (Piece, Shape) {
        let moves = Moves::all(self.shape, ".mirrored(plumb((0 mm, 0 mm)))".to_owned());
        let (piece, mut shape) = self.carried(&moves);
        for cut in &mut shape.rest.cuts {
            if !cut.grain.heading.is_empty() {
                cut.grain.heading = format!("180° - ({})", cut.grain.heading);
            }
        }
        (piece, shape)
    }
}

/// Brings a member of a ring to its head.
fn rotate<T>(ring: &mut [T], head: usize) {
    ring.rotate_left(head);
}

fn turned(pressed: Pressed) -> Pressed {
    match pressed {
        Pressed::ToStart => Pressed::ToEnd,
        Pressed::ToEnd => Pressed::ToStart,
    }
}
