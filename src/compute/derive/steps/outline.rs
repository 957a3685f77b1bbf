//! Steps at one edge: a strip, a moved edge, an edge drawn anew.

use super::{After, Before};
use crate::compute::derive::copy::{Copy, Moves, point, taken};
use crate::compute::derive::lineage::Made;
use crate::compute::derive::shape::{OWN, Side};
use crate::document::{AddStrip, DartForm, Edge, Inner, MoveEdge, Redraw, Segment, StripEnds};
use crate::texts::{id, own, said, say};

impl Before<'_> {
    pub(super) fn add_strip(&mut self, step: &AddStrip) -> After {
        self.for_all(id!("step-adding"))?;
        let Some(i) = self.shape.edge(&step.edge) else { return Err(self.no_edge(&step.edge)) };
        for (name, unsaid) in [
            (&step.makes, id!("step-outer-unnamed")),
            (&step.start, id!("step-outer-start-unnamed")),
            (&step.end, id!("step-outer-end-unnamed")),
        ] {
            if name.is_empty() {
                return Err(said(own(), unsaid, &[]));
            }
        }
        let width = self.length("width", &step.width, id!("step-width-unsaid"))?;
        let width = self.was(&width);
        for made in [&step.makes, &step.start, &step.end] {
            self.makes(Inner::Edge, made);
        }
        // Its corners are called after it.
        for tail in ["_start", "_end"] {
            self.made.push(Made { inner: Inner::Edge, name: step.makes.clone(), tail });
        }
        let side = self.shape.edges[i].clone();
        let moves = Moves::none(self.shape);
        let copy = Copy { shape: self.shape, link: self.link, moves: &moves };
        let (mut piece, mut shape) = copy.piece();
        let outer = format!("set_off({}, -({width}))", self.was(&side.name));
        let (from, to) = (format!("{}_start", step.makes), format!("{}_end", step.makes));
        let straight = |name: &str, from: &str, to: &str| Edge {
            name: name.to_owned(),
            from: from.to_owned(),
            by: vec![Segment::Straight(to.to_owned())],
            ..Edge::default()
        };
        let edges = match step.ends {
            StripEnds::Square => {
                piece.points.push(point(&from, format!("{outer}.at(0)")));
                piece.points.push(point(&to, format!("{outer}.at(1)")));
                let makes = Edge { by: vec![taken(outer, &to)], ..straight(&step.makes, &from, &to) };
                [straight(&step.start, &side.from, &from), makes, straight(&step.end, &to, &side.to)]
            }
            StripEnds::Mirrored => {
                if !side.is_straight {
                    return Err(say!("step-not-straight", edge = step.edge));
                }
                let count = self.shape.edges.len();
                let over = format!(".mirrored(line({}, {}))", self.was(&side.from), self.was(&side.to));
                let mirrored = [(i + count - 1) % count, (i + 1) % count]
                    .map(|k| format!("{}{over}", self.was(&self.shape.edges[k].name)));
                let line = format!("line({outer}.at(0), {outer}.at(1))");
                for (name, edge, at) in [(&from, &mirrored[0], 0), (&to, &mirrored[1], 1)] {
                    piece.points.push(point(name, format!("cross({edge}, {line}, nearest: {outer}.at({at}))")));
                }
                let start = taken(format!("part({}, {}, {from})", mirrored[0], side.from), &from);
                let end = taken(format!("part({}, {to}, {})", mirrored[1], side.to), &side.to);
                [
                    Edge { by: vec![start], ..straight(&step.start, &side.from, &from) },
                    straight(&step.makes, &from, &to),
                    Edge { by: vec![end], ..straight(&step.end, &to, &side.to) },
                ]
            }
        };
        let sides = edges.each_ref().map(|e| Side {
            name: e.name.clone(),
            from: e.from.clone(),
            to: e.by[0].end().to_owned(),
            is_straight: matches!(e.by[0], Segment::Straight(_)) || (e.name == step.makes && side.is_straight),
        });
        piece.edges.splice(i..=i, edges);
        shape.edges.splice(i..=i, sides);
        let line = copy.line(&side, &self.was(&side.name), &mut piece.points);
        shape.lines.push(Side { from: line.from.clone(), to: line.by[0].end().to_owned(), ..side });
        piece.lines.push(line);
        piece.darts.retain(|d| d.on != step.edge);
        shape.darts.retain(|d| d.on != step.edge);
        Ok((piece, shape))
    }

    pub(super) fn move_edge(&mut self, step: &MoveEdge) -> After {
        let Some(i) = self.shape.edge(&step.edge) else { return Err(self.no_edge(&step.edge)) };
        let by = self.length("by", &step.by, id!("step-moved-unsaid"))?;
        let to_by = if step.to_by.trim().is_empty() {
            by.clone()
        } else {
            self.length("to_by", &step.to_by, id!("step-moved-unsaid"))?
        };
        let count = self.shape.edges.len();
        if count < 3 {
            return Err(say!("step-edge-between"));
        }
        let side = self.shape.edges[i].clone();
        let off = match step.to_by.trim() {
            "" => format!("set_off({}, {by})", side.name),
            _ => format!("set_off({}, from: {by}, to: {to_by})", side.name),
        };
        // Set off it may end short of its neighbours: it runs on straight as far as that can be.
        let line = format!("{OWN}off");
        let reach = format!("3 * max(abs({by}), abs({to_by})) + 1 mm");
        let ends = ["0", "1", "2", "3"].map(|k| format!("{OWN}off{k}"));
        let set = format!("{OWN}set");
        self.piece.points.push(point(&ends[1], format!("{}.off(0, {by})", side.name)));
        self.piece.points.push(point(&ends[2], format!("{}.off(1, {to_by})", side.name)));
        // Setting off costs most of the step: once, and whatever needs it takes it from there.
        self.piece.lines.push(Edge {
            name: set.clone(),
            from: ends[1].clone(),
            by: vec![taken(off, &ends[2])],
            ..Edge::default()
        });
        self.piece.points.push(point(&ends[0], format!("{}.polar(heading({set}.along(0)) + 180°, {reach})", ends[1])));
        self.piece.points.push(point(&ends[3], format!("{}.polar(heading({set}.along(1)), {reach})", ends[2])));
        let segments =
            vec![Segment::Straight(ends[1].clone()), taken(set, &ends[2]), Segment::Straight(ends[3].clone())];
        self.piece.lines.push(Edge { name: line.clone(), from: ends[0].clone(), by: segments, ..Edge::default() });
        let (by, to_by) = (self.was(&by), self.was(&to_by));
        let (was, own) = (|n: &str| self.was(n), |end: &str| format!("{OWN}{end}"));
        let endless = format!("line({}, {})", was(&ends[1]), was(&ends[2]));
        let off = was(&line);
        let reach = if side.is_straight { &endless } else { &off };
        let near = |corner: &str| if side.is_straight { String::new() } else { format!(", nearest: {}", was(corner)) };
        let moves = Moves::none(self.shape);
        let (mut piece, mut shape) = self.carried(&moves);
        let mut set = |name: &str, at: String| {
            if let Some(p) = piece.points.iter_mut().find(|p| p.name == name) {
                p.at = at;
            }
        };
        let (before, after) = ((i + count - 1) % count, (i + 1) % count);
        for (k, corner, by, is_end) in [(before, &side.from, &by, true), (after, &side.to, &to_by, false)] {
            let next = &self.shape.edges[k];
            let edge = was(&next.name);
            let at = if next.is_straight {
                format!("cross(line({}, {}), {reach}{})", was(&next.from), was(&next.to), near(corner))
            } else {
                let end = u8::from(is_end);
                format!(
                    "if({by} < 0 mm, cross({edge}.along({end}), {reach}), cross({edge}, {reach}, nearest: {}))",
                    was(corner)
                )
            };
            set(corner, at);
        }
        for (k, corner, by, is_end) in [(before, &side.from, &by, true), (after, &side.to, &to_by, false)] {
            let next = &self.shape.edges[k];
            let edge = was(&next.name);
            if next.is_straight {
                piece.edges[k].by = vec![Segment::Straight(next.to.clone())];
                continue;
            }
            // Cut where it is met, or prolonged straight.
            let joint = own(&format!("{}joint", next.name));
            let at = format!("if({by} < 0 mm, {}, {corner})", was(corner));
            piece.points.push(point(&joint, at));
            let (a, b) = if is_end { (next.from.as_str(), joint.as_str()) } else { (joint.as_str(), next.to.as_str()) };
            let cut = taken(format!("part({edge}, {a}, {b})"), if is_end { &joint } else { &next.to });
            piece.edges[k].by = match is_end {
                true => vec![cut, Segment::Straight(corner.clone())],
                false => vec![Segment::Straight(joint.clone()), cut],
            };
            shape.edges[k].is_straight = false;
        }
        piece.edges[i].by = vec![match side.is_straight {
            true => Segment::Straight(side.to.clone()),
            false => taken(format!("part({off}, {}, {})", side.from, side.to), &side.to),
        }];
        for dart in piece.darts.iter_mut().filter(|d| d.on == side.name && d.form != DartForm::TwoEnded) {
            let member = |m: &str| format!("{}.{}.{m}", self.link, dart.name);
            let foot =
                |m: &str| format!("cross(line({}, {}), {reach}, nearest: {})", member("tip"), member(m), member(m));
            (dart.foot, dart.intake) =
                (foot("first_foot"), format!("gap({}, {})", foot("first_foot"), foot("second_foot")));
        }
        for spot in shape.spots.iter_mut().filter(|s| s.on.as_ref() == Some(&side.name)) {
            spot.on = None;
        }
        Ok((piece, shape))
    }

    pub(super) fn redraw(&mut self, step: &Redraw) -> After {
        self.for_all(id!("step-drawing"))?;
        let Some(i) = self.shape.edge(&step.edge) else { return Err(self.no_edge(&step.edge)) };
        let side = self.shape.edges[i].clone();
        if step.by.last().is_none_or(|s| s.end() != side.to) {
            return Err(say!("step-new-end", point = side.to, edge = side.name));
        }
        let line = format!("{OWN}new");
        self.piece.lines.push(Edge {
            name: line.clone(),
            from: side.from.clone(),
            by: step.by.clone(),
            smooth_at: step.smooth_at.clone(),
            ..Edge::default()
        });
        let moves = Moves::none(self.shape);
        let (mut piece, mut shape) = self.carried(&moves);
        piece.edges[i].by = vec![taken(self.was(&line), &side.to)];
        shape.edges[i].is_straight = matches!(step.by.as_slice(), [Segment::Straight(_)]);
        for dart in piece.darts.iter_mut().filter(|d| d.on == side.name && d.form != DartForm::TwoEnded) {
            dart.foot = format!("{}.{}.first_foot.foot({})", self.link, dart.name, self.was(&line));
        }
        for spot in shape.spots.iter_mut().filter(|s| s.on.as_ref() == Some(&side.name)) {
            spot.on = None;
        }
        for point in step.by[..step.by.len() - 1].iter().map(Segment::end) {
            if let Some(spot) = shape.spots.iter_mut().find(|s| s.name == point) {
                spot.on = Some(side.name.clone());
            }
        }
        Ok((piece, shape))
    }
}
