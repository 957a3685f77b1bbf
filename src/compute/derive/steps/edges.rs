//! Several edges moved at once: each is set off from where it lies, corners are where they meet then. An amount shared over edges, edges moved
//! out to their cut line.

use super::{After, Before};
use crate::compute::derive::copy::{Moves, point, taken};
use crate::compute::derive::shape::OWN;
use crate::document::{Allowance, DartForm, Edge, Segment, Share, ToCutLine};
use crate::texts::{id, say};

/// An edge and how far it is moved inwards, at its start and at its end (empty: as at its start), as it is typed.
type Way = (String, [String; 2]);

/// How the lines on which an edge comes to lie are called in the stage.
struct Lie {
    /// Moved, or prolonged straight where it is.
    line: String,
    /// Where the edge itself starts and ends on it.
    ends: [String; 2],
    is_moved: bool,
}

impl Before<'_> {
    pub(super) fn share(&mut self, step: &Share) -> After {
        let Some((last, others)) = step.over.split_last() else {
            return Err(say!("step-share-edges"));
        };
        let by = step.by.trim();
        if by.is_empty() {
            return Err(say!("step-share-amount"));
        }
        if !last.share.trim().is_empty() {
            return Err(say!("step-share-last", edge = last.edge));
        }
        let mut left = "1".to_owned();
        let mut ways: Vec<Way> = Vec::new();
        for one in others {
            let part = one.share.trim();
            if part.is_empty() {
                return Err(say!("step-share-unsaid", edge = one.edge));
            }
            left.push_str(&format!(" - ({part})"));
            ways.push((one.edge.clone(), [format!("({by}) * ({part})"), String::new()]));
        }
        ways.push((last.edge.clone(), [format!("({by}) * ({left})"), String::new()]));
        self.move_edges(&ways)
    }

    pub(super) fn out_to_cut_line(&mut self, step: &ToCutLine) -> After {
        let folded = |edge: &String| self.shape.rest.cuts.iter().any(|c| c.on_fold == *edge);
        let edges: Vec<String> = match step.edges.as_slice() {
            [] => self.shape.edges.iter().map(|e| e.name.clone()).filter(|e| !folded(e)).collect(),
            named => named.to_vec(),
        };
        let way = |edge: &String| {
            let out = |w: String| if w.is_empty() { w } else { format!("-({w})") };
            Ok((edge.clone(), self.width(edge, &step.set)?.map(out)))
        };
        let ways = edges.iter().map(way).collect::<Result<Vec<Way>, String>>()?;
        let (piece, mut shape) = self.move_edges(&ways)?;
        // There is nothing beyond a cut line, unless the piece itself says so.
        for edge in edges {
            shape.rest.allowances.retain(|a| a.edge != edge);
            shape.rest.allowances.push(Allowance { edge, width: "0 mm".to_owned(), ..Allowance::default() });
        }
        Ok((piece, shape))
    }

    /// How wide the allowance of an edge is, at its start and at its end; a hem with all its turns.
    fn width(&self, edge: &str, set: &str) -> Result<[String; 2], String> {
        if self.shape.edge(edge).is_none() {
            return Err(self.no_edge(edge));
        }
        let of = |set: &str| -> Vec<&Allowance> {
            self.shape.rest.allowances.iter().filter(|a| a.edge == edge && a.set == set).collect()
        };
        let mut told = of(set);
        if told.is_empty() {
            told = of("");
        }
        match told.as_slice() {
            [] => match (self.usual_width)(edge) {
                none if none.is_empty() => Err(say!("step-no-allowance", edge)),
                width => Ok([width, String::new()]),
            },
            [one] if one.from.trim().is_empty() => Ok(match (one.turns, one.turn_in.trim()) {
                (0, _) => [one.width.clone(), one.to_width.clone()],
                (1, _) => [one.width.clone(), String::new()],
                (_, "") => [format!("2 * ({})", one.width), String::new()],
                (_, turn) => [format!("({0}) + max(0 mm, min({0}, {turn}))", one.width), String::new()],
            }),
            _ => Err(say!("step-allowance-steps", edge)),
        }
    }

    fn move_edges(&mut self, ways: &[Way]) -> After {
        let count = self.shape.edges.len();
        if count < 3 {
            return Err(say!("step-edges-between"));
        }
        let mut by: Vec<Option<[String; 2]>> = vec![None; count];
        let mut reach = vec!["0 mm".to_owned()];
        for (k, (edge, [start, end])) in ways.iter().enumerate() {
            let Some(i) = self.shape.edge(edge) else { return Err(self.no_edge(edge)) };
            if by[i].is_some() {
                return Err(say!("step-edge-twice", edge));
            }
            let start = self.length(&format!("by{k}"), start, id!("step-moved-unsaid"))?;
            let end = match end.trim() {
                "" => start.clone(),
                text => self.length(&format!("to_by{k}"), text, id!("step-moved-unsaid"))?,
            };
            reach.extend([format!("abs({start})"), format!("abs({end})")]);
            by[i] = Some([start, end]);
        }
        // Far enough for corners of ten degrees.
        let far = format!("{OWN}reach");
        self.piece.points.push(point(&far, format!("(12 * max({}) + 1 mm, 0 mm)", reach.join(", "))));
        let reach = format!("{far}.x");
        let lies: Vec<Lie> = by.iter().enumerate().map(|(i, by)| self.lie(i, by.as_ref(), &reach)).collect();
        let moves = Moves::none(self.shape);
        let (mut piece, mut shape) = self.carried(&moves);
        let was = |name: &str| self.was(name);
        let sides = &self.shape.edges;
        // Where lines run on over a corner they need not meet: there is a step, if they are moved by different amounts.
        let runs_on = |j: usize| {
            let i = (j + count - 1) % count;
            let (a, b) = (was(&sides[i].name), was(&sides[j].name));
            format!("cos(heading({a}.along(1)) - heading({b}.along(0))) > cos(1 deg)")
        };
        let is_touched = |j: usize| lies[j].is_moved || lies[(j + count - 1) % count].is_moved;
        for j in (0..count).filter(|j| is_touched(*j)) {
            let i = (j + count - 1) % count;
            let line = |k: usize| match sides[k].is_straight {
                true => format!("line({}, {})", was(&lies[k].ends[0]), was(&lies[k].ends[1])),
                false => was(&lies[k].line),
            };
            let near = match sides[i].is_straight && sides[j].is_straight {
                true => String::new(),
                false => format!(", nearest: {}", was(&sides[j].from)),
            };
            let on = if sides[j].is_straight && !sides[i].is_straight { &lies[j].ends[0] } else { &lies[i].ends[1] };
            let at = format!("if({}, {}, cross({}, {}{near}))", runs_on(j), was(on), line(i), line(j));
            if let Some(p) = piece.points.iter_mut().find(|p| p.name == sides[j].from) {
                p.at = at;
            }
        }
        for i in (0..count).filter(|i| is_touched(*i) || is_touched((*i + 1) % count)) {
            let side = &sides[i];
            if side.is_straight {
                piece.edges[i].by = vec![Segment::Straight(side.to.clone())];
            } else {
                let [start, end] = ["from", "to"].map(|end| format!("{OWN}moved_{end}{i}"));
                for (name, j, corner, own) in
                    [(&start, i, &side.from, &lies[i].ends[0]), (&end, (i + 1) % count, &side.to, &lies[i].ends[1])]
                {
                    let at =
                        if is_touched(j) { format!("if({}, {}, {corner})", runs_on(j), was(own)) } else { was(own) };
                    piece.points.push(point(name, at));
                }
                let part = format!("part({}, {start}, {end})", was(&lies[i].line));
                piece.edges[i].by =
                    vec![Segment::Straight(start), taken(part, &end), Segment::Straight(side.to.clone())];
            }
            if !lies[i].is_moved {
                continue;
            }
            let onto = if side.is_straight {
                format!("line({}, {})", was(&lies[i].ends[0]), was(&lies[i].ends[1]))
            } else {
                was(&lies[i].line)
            };
            for dart in piece.darts.iter_mut().filter(|d| d.on == side.name && d.form != DartForm::TwoEnded) {
                let member = |m: &str| was(&format!("{}.{m}", dart.name));
                let foot =
                    |m: &str| format!("cross(line({}, {}), {onto}, nearest: {})", member("tip"), member(m), member(m));
                let (first, second) = (foot("first_foot"), foot("second_foot"));
                dart.intake = format!("gap({first}, {second})");
                dart.foot = first;
            }
            for spot in shape.spots.iter_mut().filter(|s| s.on.as_ref() == Some(&side.name)) {
                spot.on = None;
            }
        }
        Ok((piece, shape))
    }

    /// The line on which an edge comes to lie, prolonged straight at both ends.
    fn lie(&mut self, i: usize, by: Option<&[String; 2]>, reach: &str) -> Lie {
        let side = &self.shape.edges[i];
        let own = |what: &str| format!("{OWN}lies_{what}{i}");
        let is_moved = by.is_some();
        let (ends, on) = match by {
            None => ([side.from.clone(), side.to.clone()], side.name.clone()),
            Some([start, end]) => {
                let (ends, set) = ([own("a"), own("b")], own("set"));
                self.piece.points.push(point(&ends[0], format!("{}.off(0, {start})", side.name)));
                self.piece.points.push(point(&ends[1], format!("{}.off(1, {end})", side.name)));
                let off = match start == end {
                    true => format!("set_off({}, {start})", side.name),
                    false => format!("set_off({}, from: {start}, to: {end})", side.name),
                };
                let by = vec![taken(off, &ends[1])];
                self.piece.lines.push(Edge { name: set.clone(), from: ends[0].clone(), by, ..Edge::default() });
                (ends, set)
            }
        };
        let (line, far) = (own("on"), [own("c"), own("d")]);
        self.piece.points.push(point(&far[0], format!("{}.polar(heading({on}.along(0)) + 180°, {reach})", ends[0])));
        self.piece.points.push(point(&far[1], format!("{}.polar(heading({on}.along(1)), {reach})", ends[1])));
        let by = vec![Segment::Straight(ends[0].clone()), taken(on, &ends[1]), Segment::Straight(far[1].clone())];
        self.piece.lines.push(Edge { name: line.clone(), from: far[0].clone(), by, ..Edge::default() });
        Lie { line, ends, is_moved }
    }
}
