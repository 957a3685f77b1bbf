//! Cutting in two.

use super::{After, Before, Typed};
use crate::compute::derive::copy::{Copy, Moves, part, point, taken};
use crate::compute::derive::ring::{Arc, Place, place};
use crate::compute::derive::shape::{OWN, Shape, Side};
use crate::document::{Allowance, CutOff, Edge, Inner, Piece, Segment};
use crate::texts::{id, own, said, say};

impl Before<'_> {
    pub(super) fn cut(&mut self, step: &CutOff) -> After {
        for (name, unsaid) in [
            (&step.makes, id!("step-cut-unnamed")),
            (&step.start, id!("step-cut-start-unnamed")),
            (&step.end, id!("step-cut-end-unnamed")),
        ] {
            if name.is_empty() {
                return Err(said(own(), unsaid, &[]));
            }
        }
        let shape = self.shape;
        let mut end = |name: &str, at: &str, tag: &str| {
            if shape.edge(name).is_some() && at.trim().is_empty() && !step.along.trim().is_empty() {
                let before = format!("cross({name}, (");
                let typed = Typed { name: format!("{OWN}{tag}"), text: step.along.clone(), before: before.len() };
                self.typed.push(typed);
                return place(self.piece, shape, name, Some(format!("{before}{}))", step.along)), tag);
            }
            self.place(name, at, tag)
        };
        let one = end(&step.from, &step.from_at, "a")?;
        let two = end(&step.to, &step.to_at, "b")?;
        let (one, two) = self.in_order(one, two);
        let arc = Arc::of(shape, one.clone(), two.clone(), &step.keep, true)?;
        if arc.is_outer && step.rest.is_empty() {
            return Err(say!("step-rest-unnamed"));
        }
        // The cut runs on from where the part that is kept ends to where it begins.
        let (first, last) = (&arc.to, &arc.from);
        let mut by = Vec::new();
        if first.tip().is_some() {
            by.push(Segment::Straight(first.inner().to_owned()));
        }
        by.push(match step.along.trim() {
            "" => Segment::Straight(last.inner().to_owned()),
            along => taken(format!("part(({along}), {}, {})", first.inner(), last.inner()), last.inner()),
        });
        if last.tip().is_some() {
            by.push(Segment::Straight(last.after().to_owned()));
        }
        let (line, kept) = (format!("{OWN}cut"), format!("{OWN}kept"));
        let is_straight = by.iter().all(|s| matches!(s, Segment::Straight(_))) && by.len() == 1;
        self.piece.lines.push(Edge { name: line.clone(), from: first.before().to_owned(), by, ..Edge::default() });
        self.piece.lines.push(arc.closed(shape, &kept, vec![taken(line.clone(), last.after())]));
        let called = |place: &Place, made: &str| match place {
            Place::Corner(_, name) => name.clone(),
            Place::On { .. } => made.to_owned(),
        };
        let (start, end) = (called(&one, &step.start), called(&two, &step.end));
        self.makes(Inner::Edge, &step.makes);
        for (place, made) in [(&one, &step.start), (&two, &step.end)] {
            if place.edge().is_some() {
                self.makes(Inner::Point, made);
            }
        }
        let (at_last, at_first) = if *last == one { (start, end) } else { (end, start) };
        // Names that pass are those of the part that is kept.
        let edges = arc.edges(shape);
        let mut after = shape.clone();
        after.edges = edges.iter().map(|i| shape.edges[*i].clone()).collect();
        if let (true, Some(i)) = (arc.is_outer, one.edge()) {
            self.makes(Inner::Edge, &step.rest);
            let cut = &shape.edges[i].name;
            step.rest.clone_into(&mut after.edges[0].name);
            at_last.clone_into(&mut after.edges[0].from);
            let both = shape.rest.allowances.iter().filter(|a| a.edge == *cut);
            let both = both.map(|a| Allowance { edge: step.rest.clone(), ..a.clone() });
            after.rest.allowances.extend(both.collect::<Vec<_>>());
            // On which of its stretches a joint lies hangs on numbers.
            for spot in after.spots.iter_mut().filter(|s| s.on.as_ref() == Some(cut)) {
                spot.on = None;
            }
        }
        let cut: Vec<&String> =
            [&one, &two].into_iter().filter_map(|p| p.edge()).map(|i| &shape.edges[i].name).collect();
        let is_kept = |edge: &String| edges.iter().any(|i| shape.edges[*i].name == *edge);
        after.darts.retain(|d| {
            let gone = [&step.from, &step.to].contains(&&d.name);
            let on_line = shape.edge(&d.on).is_none();
            !gone && (on_line || is_kept(&d.on) && (!cut.contains(&&d.on) || step.darts.contains(&d.name)))
        });
        after.spots.retain(|s| s.on.as_ref().is_none_or(is_kept));
        if let Some(missing) = step.darts.iter().find(|d| after.dart(d).is_none()) {
            return Err(say!("step-kept-dart", missing));
        }
        let moves = Moves::none(&after);
        let copy = Copy { shape: &after, link: self.link, moves: &moves };
        let (mut piece, mut next) = copy.piece();
        for (k, i) in edges.iter().enumerate() {
            let (old, edge, side) = (&shape.edges[*i], &mut piece.edges[k], &mut next.edges[k]);
            let (mut from, mut to) = (old.from.as_str(), old.to.as_str());
            if k == 0 && last.edge() == Some(*i) {
                from = last.after();
                at_last.clone_into(&mut side.from);
            }
            if k + 1 == edges.len() && first.edge() == Some(*i) {
                to = first.before();
                at_first.clone_into(&mut side.to);
            }
            if (from, to) != (old.from.as_str(), old.to.as_str()) {
                side.from.clone_into(&mut edge.from);
                edge.by = vec![taken(part(self.link, &old.name, from, to), &side.to)];
            }
        }
        // Corners as they are now.
        let corners: Vec<String> = after.edges.iter().map(|e| e.from.clone()).collect();
        piece.points.retain(|p| !corners.contains(&p.name) || next.corner(&p.name).is_some());
        if arc.is_outer {
            piece.points.retain(|p| p.name != at_last);
        }
        for (place, name, at) in [(last, &at_last, last.after()), (first, &at_first, first.before())] {
            if place.edge().is_some() || !piece.points.iter().any(|p| p.name == *name) {
                piece.points.push(point(name, self.was(at)));
            }
        }
        let side = Side { name: step.makes.clone(), from: at_first.clone(), to: at_last.clone(), is_straight };
        let by = vec![taken(self.was(&line), &at_last)];
        piece.edges.push(Edge { name: step.makes.clone(), from: at_first, by, ..Edge::default() });
        next.edges.push(side);
        self.clip(&mut piece, &next, &kept);
        Ok((piece, next))
    }

    /// Lines and marks end where the piece ends now.
    pub(super) fn clip(&self, piece: &mut Piece, shape: &Shape, outline: &str) {
        let outline = self.was(outline);
        for line in &mut piece.lines {
            let curve = format!("kept_in({}, {outline})", self.was(&line.name));
            for p in piece.points.iter_mut().filter(|p| p.name == line.from || p.name == line.by[0].end()) {
                let at = if p.name == line.from { 0 } else { 1 };
                p.at = format!("({curve}).at({at})");
            }
            let to = line.by[0].end().to_owned();
            line.by = vec![taken(curve, &to)];
        }
        for spot in shape.spots.iter().filter(|s| s.is_mark) {
            for p in piece.points.iter_mut().filter(|p| p.name == spot.name) {
                p.at = format!("kept_in({}, {outline})", self.was(&spot.name));
            }
        }
    }
}
