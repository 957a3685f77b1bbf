//! A lengthen-shorten line that works: everything beyond it hangs on one value and moves as a block.

use super::frozen::Frozen;
use super::moved::{TRIED, Work};
use super::{EditError, check_free, meant};
use crate::base::{Finding, tolerance};
use crate::compute::{Engine, Item, Model, NodeId};
use crate::curves::{Pt, Segment as Drawn};
use crate::document::{Address, Draft, Edge, Inner, Part, Piece, Segment};
use crate::finish::finish;
use crate::language::{Kind, Value as Found, nearest};
use crate::texts::{length, message, owned, say};

/// The value on which everything beyond a line hangs.
pub fn lengthening(piece: &str, line: &str) -> String {
    format!("{piece}_{line}_by")
}

/// Lengthens a piece at one of its lines, or shortens it with an amount below zero: once the points, handles and marks beyond the line
/// hang on one value, which is made the first time, that value says how much. What comes
/// back says what was done, and which darts and notches do not go with the rest.
///
/// # Errors
/// What cannot move as a block, and why. The draft is then as it was.
pub fn lengthen(draft: &mut Draft, piece: &str, line: &str, by: &str) -> Result<String, EditError> {
    // Tried with all pieces; in a view the same formulas hold.
    let mut plain = Draft { views: Vec::new(), ..draft.clone() };
    let told = lengthen_plain(&mut plain, piece, line, by)?;
    *draft = Draft { views: std::mem::take(&mut draft.views), ..plain };
    Ok(told)
}

fn lengthen_plain(draft: &mut Draft, piece: &str, line: &str, by: &str) -> Result<String, EditError> {
    let name = lengthening(piece, line);
    if draft.values.iter().any(|v| v.name == name) {
        *draft = set(draft.clone(), &name, by)?.0;
        return Ok(say!("told-lengthen-again", name, by));
    }
    let frame = draft.pieces.iter().position(|p| p.name == *piece);
    let pieces = draft.pieces.iter().map(|p| p.name.as_str());
    let frame = frame
        .ok_or_else(|| EditError::refused(say!("refused-lengthen-piece", name = piece, hint = hint(piece, pieces))))?;
    let of = &draft.pieces[frame].of;
    if !of.is_empty() {
        // Its own marks would move, and nothing else.
        return Err(EditError::refused(say!("refused-lengthen-derived", piece, of)));
    }
    let start = Start::of(draft, frame, line)?;
    check_free(draft, &Part::Value(name.clone()))?;
    let one = start.moved(draft, 1.0, &name);
    let other = start.moved(draft, -1.0, &name);
    let Moved { draft: made, changed: count, notes, reach } = match (one, other) {
        (Ok(a), Ok(b)) if b.changed < a.changed => b,
        (Ok(a), Ok(_)) => a,
        (Ok(made), Err(_)) | (Err(_), Ok(made)) => made,
        (Err(a), Err(b)) => return Err(if a.1 >= b.1 { a.0 } else { b.0 }),
    };
    let (made, amounts) = set(made, &name, by)?;
    // What is shortened by more than there is would run over itself.
    if let Some((case, reach)) = amounts.iter().zip(&reach).position(|(a, r)| -a >= *r).map(|c| (c, reach[c])) {
        let size = &start.model.plan.cases.list[case].address;
        let far = owned(|| length(reach, draft.display));
        return Err(EditError::refused(say!("refused-shorten", far, line, size)));
    }
    *draft = made;
    let mut told = say!("told-lengthened", piece, by, line, name, count);
    for note in notes {
        told.push_str("; ");
        told.push_str(&note);
    }
    Ok(told)
}

/// The draft with another amount, which must be a length in every size.
fn set(mut draft: Draft, name: &str, by: &str) -> Result<(Draft, Vec<f64>), EditError> {
    if let Some(value) = draft.values.iter_mut().find(|v| v.name == name) {
        value.is = by.to_owned();
    }
    let model = compute(&mut Engine::new(), &draft)?;
    let node = model.plan.node_named(name);
    let is_length = node.is_some_and(|n| model.plan.nodes[n as usize].kind == Some(Kind::LENGTH));
    let amount = |case: usize| model.item(case, node?)?.real();
    let amounts: Option<Vec<f64>> = (0..model.cases.len()).map(amount).collect();
    match amounts.filter(|_| is_length) {
        Some(amounts) => Ok((draft, amounts)),
        None => Err(EditError::refused(say!("refused-no-length", text = by))),
    }
}

fn hint<'a>(asked: &str, known: impl Iterator<Item = &'a str>) -> String {
    let known: Vec<&str> = known.collect();
    match nearest(asked, known.iter().copied()) {
        Some(near) => meant(Some(near)),
        None if known.is_empty() => say!("hint-write-lengthen"),
        None => say!("hint-there-is", names = known.join(", ")),
    }
}

fn compute(engine: &mut Engine, draft: &Draft) -> Result<Model, EditError> {
    let told = |f: &Finding| EditError::refused(message(f, draft.display));
    engine.compute_guarded(draft, &[]).map_err(|f| told(&f))
}

/// Something with a formula that gives a point.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Spot {
    Point(usize),
    /// A handle, a point or the centre of a segment: edge or line by its place among both, segment, which.
    Handle(usize, usize, usize),
    /// A mark: `at`, `to`, `fixed`.
    Mark(usize, usize),
    Label,
}

fn edges(piece: &Piece) -> impl Iterator<Item = &Edge> {
    piece.edges.iter().chain(&piece.lines)
}

impl Spot {
    fn all(piece: &Piece) -> Vec<Self> {
        let mut out: Vec<Self> = (0..piece.points.len()).map(Self::Point).collect();
        for (e, edge) in edges(piece).enumerate() {
            for (s, segment) in edge.by.iter().enumerate() {
                let count = match segment {
                    Segment::Curve(..) => 2,
                    Segment::Arc { .. } => 1,
                    Segment::Smooth { through, .. } => through.len(),
                    Segment::Straight(_) | Segment::Taken { .. } => 0,
                };
                out.extend((0..count).map(|k| Self::Handle(e, s, k)));
            }
        }
        for (m, mark) in piece.marks.iter().enumerate() {
            let texts = [&mark.at, &mark.to, &mark.fixed];
            out.extend((0..3).filter(|k| !texts[*k].is_empty()).map(|k| Self::Mark(m, k)));
        }
        out.extend((!piece.label.at.is_empty()).then_some(Self::Label));
        out
    }

    fn words(self, piece: &Piece) -> String {
        let name = &piece.name;
        match self {
            Self::Point(i) => format!("{name}.{}", piece.points[i].name),
            Self::Handle(e, ..) => {
                say!("spot-handle", piece = name, edge = edges(piece).nth(e).map_or("", |e| e.name.as_str()))
            }
            Self::Mark(m, _) => say!("spot-mark", piece = name, mark = piece.marks[m].name),
            Self::Label => say!("spot-label", piece = name),
        }
    }

    fn address(self, piece: &Piece) -> Address {
        let own = |what: Inner, name: &str| Part::Inner(piece.name.clone(), what, name.to_owned());
        match self {
            Self::Point(i) => Address::new(own(Inner::Point, &piece.points[i].name), "at"),
            Self::Handle(e, s, k) => {
                let what = if e < piece.edges.len() { Inner::Edge } else { Inner::Line };
                let name = edges(piece).nth(e).map_or("", |e| e.name.as_str());
                let field = match (edges(piece).nth(e).and_then(|e| e.by.get(s)), k) {
                    (Some(Segment::Curve(..)), 0) => "leaving",
                    (Some(Segment::Curve(..)), _) => "arriving",
                    (Some(Segment::Arc { .. }), _) => "centre",
                    _ => "through",
                };
                let inner = if field == "through" { k } else { 0 };
                Address { part: own(what, name), field, at: s, inner }
            }
            Self::Mark(m, k) => Address::new(own(Inner::Mark, &piece.marks[m].name), ["at", "to", "fixed"][k]),
            Self::Label => Address::new(Part::Piece(piece.name.clone()), "label at"),
        }
    }

    /// Where it is in a case.
    fn place(self, piece: &Piece, frame: usize, model: &Model, case: usize) -> Option<Pt<f64>> {
        let plan = &model.plan.frames()[frame];
        let formula = |f| model.evaluate(&model.plan, case, f).ok()?.point();
        match self {
            Self::Point(i) => model.item(case, *plan.points.get(i)?)?.point(),
            Self::Handle(e, s, k) => {
                let node = plan.edges.iter().chain(&plan.lines).nth(e)?;
                let curve = &model.item(case, *node)?.edge()?.curve;
                let before = &edges(piece).nth(e)?.by[..s];
                let skipped: Option<usize> = before.iter().map(drawn).sum();
                let at = |i: usize| curve.segments().get(i);
                match (edges(piece).nth(e)?.by.get(s)?, skipped?) {
                    (Segment::Curve(..), i) => match at(i)? {
                        Drawn::Cubic(c) => Some(c[1 + k]),
                        _ => None,
                    },
                    (Segment::Arc { .. }, i) => match at(i)? {
                        Drawn::Arc(arc) => Some(arc.centre()),
                        _ => None,
                    },
                    (Segment::Smooth { .. }, i) => at(i + k).map(Drawn::end),
                    _ => None,
                }
            }
            Self::Mark(m, k) => {
                let mark = &plan.finishing.marks.get(m)?;
                match k {
                    0 => formula(&mark.at),
                    1 => formula(mark.to.as_ref()?),
                    _ => formula(mark.fixed.as_ref()?),
                }
            }
            Self::Label => formula(plan.finishing.label.as_ref()?),
        }
    }
}

/// How many segments are drawn for one that is told; a taken one has as many as its curve.
fn drawn(segment: &Segment) -> Option<usize> {
    match segment {
        Segment::Straight(_) | Segment::Curve(..) | Segment::Arc { .. } => Some(1),
        Segment::Smooth { through, .. } => Some(through.len() + 1),
        Segment::Taken { .. } => None,
    }
}

/// A piece as it was, and the line.
struct Start {
    frame: usize,
    line: String,
    /// What is found stays as it was, so that no solver moves anything while the piece is tried.
    found: Frozen,
    model: Model,
    /// For each case a point of the line.
    at: Vec<Pt<f64>>,
    /// Square to the line.
    square: Pt<f64>,
    spots: Vec<Spot>,
}

/// A draft in which one side hangs on the value.
struct Moved {
    draft: Draft,
    /// How many formulas were changed for it.
    changed: usize,
    /// What does not go with it.
    notes: Vec<String>,
    /// For each case how much can be taken out.
    reach: Vec<f64>,
}

/// A side that cannot move: why, and after how many formulas.
type Refused = (EditError, usize);

impl Start {
    fn of(draft: &Draft, frame: usize, line: &str) -> Result<Self, EditError> {
        let piece = &draft.pieces[frame];
        let found = Frozen::of(draft, &compute(&mut Engine::new(), draft)?);
        let model = compute(&mut Engine::new(), &found.in_draft(draft))?;
        let plans = &model.plan.frames()[frame].finishing.lines;
        let plan = plans.iter().find(|l| *l.name == *line && !l.slit).ok_or_else(|| {
            let near = hint(line, piece.lengthen.iter().map(|l| l.name.as_str()));
            EditError::refused(say!("refused-no-lengthen-line", piece = piece.name, line, hint = near))
        })?;
        let (mut at, mut square): (Vec<Pt<f64>>, Option<Pt<f64>>) = (Vec::new(), None);
        for case in 0..model.cases.len() {
            let found = model.evaluate(&model.plan, case, &plan.line).ok();
            let (from, way) = match &found {
                Some(Item::Value(Found::Line(p, way))) => (Pt::new(p[0], p[1]), Pt::new(way[0], way[1]).unit()),
                Some(Item::Value(Found::Edge(e))) => (e.curve.start(), (e.curve.end() - e.curve.start()).unit()),
                _ => {
                    let size = &model.plan.cases.list[case].address;
                    return Err(EditError::refused(say!("refused-line-place", line, size)));
                }
            };
            let way = way.ok_or_else(|| EditError::refused(say!("refused-line-direction", line)))?;
            if square.is_some_and(|s| s.dot(way).abs() > tolerance::LEVEL) {
                let size = &model.plan.cases.list[case].address;
                return Err(EditError::refused(say!("refused-line-turns", line, size)));
            }
            square = square.or(Some(way.square()));
            at.push(from);
        }
        let square = square.ok_or_else(|| EditError::refused(say!("refused-no-sizes")))?;
        Ok(Self { frame, line: line.to_owned(), found, model, at, square, spots: Spot::all(piece) })
    }

    /// Whether a place lies beyond the line, to the side of `way`.
    fn is_beyond(&self, case: usize, place: Pt<f64>, way: Pt<f64>) -> bool {
        (place - self.at[case]).dot(way) > tolerance::ON_EDGE
    }

    /// Whether something moves: alike in all cases.
    fn moves(&self, piece: &Piece, spot: Spot, way: Pt<f64>) -> Result<bool, EditError> {
        // Handles go with their ends, so that no corner changes.
        if let Spot::Handle(e, s, k) = spot
            && let Some(edge) = edges(piece).nth(e)
        {
            let named = |n: &str| piece.points.iter().position(|p| p.name == n).map(Spot::Point);
            let from = if s == 0 { edge.from.as_str() } else { edge.by[s - 1].end() };
            let ends = [named(from), named(edge.by[s].end())];
            let moves = |i: usize| ends[i].map_or(Ok(false), |spot| self.moves(piece, spot, way));
            match &edge.by[s] {
                Segment::Curve(..) => return moves(k),
                Segment::Arc { .. } if moves(0)? == moves(1)? => return moves(0),
                Segment::Arc { .. } => {
                    let (piece, edge) = (&piece.name, &edge.name);
                    return Err(EditError::refused(say!("refused-arc-over-line", piece, edge, line = self.line)));
                }
                _ => {}
            }
        }
        let cases = 0..self.model.cases.len();
        let sides = cases.filter_map(|c| Some((c, spot.place(piece, self.frame, &self.model, c)?)));
        let sides: Vec<(usize, bool)> = sides.map(|(c, p)| (c, self.is_beyond(c, p, way))).collect();
        match sides.iter().find(|s| s.1 != sides[0].1) {
            None => Ok(sides.first().is_some_and(|s| s.1)),
            // A label may stand on either side.
            Some(_) if spot == Spot::Label => Ok(false),
            Some((case, _)) => {
                let (spot, line, cases) = (spot.words(piece), &self.line, &self.model.plan.cases.list);
                let (size, other) = (&cases[*case].address, &cases[sides[0].0].address);
                Err(EditError::refused(say!("refused-beyond-in-some", spot, line, size, other)))
            }
        }
    }

    /// The draft in which one side hangs on the value, how many formulas were changed for it, and what does not go with it.
    fn moved(&self, draft: &Draft, side: f64, name: &str) -> Result<Moved, Refused> {
        let way = self.square.scaled(side);
        let old = &draft.pieces[self.frame];
        let mut wanted: Vec<bool> = Vec::with_capacity(self.spots.len());
        for spot in &self.spots {
            wanted.push(self.moves(old, *spot, way).map_err(|e| (e, 0))?);
        }
        if !wanted.contains(&true) || !wanted.contains(&false) {
            let problem = say!("refused-nothing-beyond", piece = old.name, line = self.line);
            return Err((EditError::refused(problem), 0));
        }
        let moving = self.spots.iter().zip(&wanted).filter_map(|(spot, moves)| match spot {
            Spot::Point(i) if *moves => Some(old.points[*i].name.clone()),
            _ => None,
        });
        let moving = moving.collect();
        let mut work = Work::of(draft, old, name, moving);
        work.keep_as_drawn(old, &self.line);
        let mut engine = Engine::new();
        let mut tries = vec![0u8; self.spots.len()];
        loop {
            let model = compute(&mut engine, &self.found.in_draft(&work.draft)).map_err(|e| (e, work.changed))?;
            let off: Vec<usize> =
                (0..self.spots.len()).filter(|i| !self.is_right(old, *i, wanted[*i], &model, way)).collect();
            let Some(next) = self.first_of(&off, &model) else {
                if let Some(edge) = self.lost(old, &model) {
                    let problem = say!("refused-edge-lost", piece = old.name, edge);
                    return Err((EditError::refused(problem), work.changed));
                }
                let notes = self.left_behind(draft, &model, way);
                return Ok(Moved {
                    draft: work.draft,
                    changed: work.changed,
                    notes,
                    reach: self.reach(old, &wanted, way),
                });
            };
            // First it is moved as it is told, then as it was told before anything else moved.
            if tries[next] == 0 && !wanted[next] {
                tries[next] = 1;
            }
            let at = self.spots[next].address(old);
            let text = match tries[next] {
                0 => draft.text(&at).unwrap_or_default(),
                1 => work.as_before(&at),
                _ => {
                    let (spot, why) = (self.spots[next].words(old), say!("lengthen-hangs"));
                    let problem = match wanted[next] {
                        true => say!("refused-stays", spot, why),
                        false => say!("refused-moves", spot, why),
                    };
                    return Err((EditError::refused(problem), work.changed));
                }
            };
            tries[next] += 1;
            work.write(&at, &if wanted[next] { further(&text, way, name) } else { text });
        }
    }

    /// An edge or line that had a shape and has none any more.
    fn lost<'a>(&self, piece: &'a Piece, model: &Model) -> Option<&'a str> {
        let node = |m: &Model, e: usize| {
            m.plan.frames()[self.frame].edges.iter().chain(&m.plan.frames()[self.frame].lines).nth(e).copied()
        };
        let there = |m: &Model, e: usize, case: usize| node(m, e).is_some_and(|n| m.item(case, n).is_some());
        let lost = |e: usize| (0..model.cases.len()).any(|case| there(&self.model, e, case) && !there(model, e, case));
        edges(piece).enumerate().find(|(e, _)| lost(*e)).map(|(_, edge)| edge.name.as_str())
    }

    /// For each case how far from the line the nearest point lies that moves.
    fn reach(&self, piece: &Piece, wanted: &[bool], way: Pt<f64>) -> Vec<f64> {
        let moving = || self.spots.iter().zip(wanted).filter(|(s, moves)| **moves && matches!(s, Spot::Point(_)));
        let far = |case: usize, spot: &Spot| {
            spot.place(piece, self.frame, &self.model, case).map(|p| (p - self.at[case]).dot(way))
        };
        let nearest = |case: usize| moving().filter_map(|(s, _)| far(case, s)).fold(f64::INFINITY, f64::min);
        (0..self.model.cases.len()).map(nearest).collect()
    }

    fn is_right(&self, piece: &Piece, i: usize, moves: bool, model: &Model, way: Pt<f64>) -> bool {
        let by = if moves { way.scaled(TRIED) } else { Pt::new(0.0, 0.0) };
        (0..model.cases.len()).all(|case| {
            let was = self.spots[i].place(piece, self.frame, &self.model, case);
            let is = self.spots[i].place(piece, self.frame, model, case);
            match (was, is) {
                (Some(was), Some(is)) => (is - was - by).length() <= tolerance::CURVE,
                (was, is) => was.is_none() == is.is_none(),
            }
        })
    }

    /// The first that hangs on no other one of them.
    fn first_of(&self, off: &[usize], model: &Model) -> Option<usize> {
        let points = &model.plan.frames()[self.frame].points;
        let node = |i: usize| match self.spots[i] {
            Spot::Point(p) => points.get(p).copied(),
            _ => None,
        };
        let others: Vec<NodeId> = off.iter().filter_map(|i| node(*i)).collect();
        let free = |i: usize| node(i).is_none_or(|own| !hangs_on(model, own, &others));
        off.iter().copied().find(|i| free(*i)).or_else(|| off.first().copied())
    }

    /// Darts and notches that do not keep their place in the block.
    fn left_behind(&self, draft: &Draft, model: &Model, way: Pt<f64>) -> Vec<String> {
        let mut out = Vec::new();
        let (before, now) = (finish(draft, &self.model), finish(draft, model));
        let frame = self.frame;
        let piece = &draft.pieces[frame];
        let apart = |case: usize, was: Pt<f64>, is: Pt<f64>| {
            let by = if self.is_beyond(case, was, way) { way.scaled(TRIED) } else { Pt::new(0.0, 0.0) };
            (is - was - by).length()
        };
        let base = self.model.plan.cases.base.unwrap_or(0);
        for (i, dart) in piece.darts.iter().enumerate() {
            let mouth = |m: &Model| match m.item(base, m.plan.frames()[frame].mouths[i].0) {
                Some(Item::Mouth(mouth)) => Some((mouth.first_foot, mouth.tip)),
                _ => None,
            };
            if let (Some(was), Some(is)) = (mouth(&self.model), mouth(model)) {
                let tip = was.1.zip(is.1).map_or(0.0, |(was, is)| apart(base, was, is));
                if apart(base, was.0, is.0).max(tip) > tolerance::CURVE {
                    out.push(say!("told-dart-behind", dart = dart.name));
                }
            }
        }
        let notches = |f: &crate::finish::Finished| f.cases[base][frame].as_ref().map(|p| p.notches.clone());
        for (was, is) in notches(&before).into_iter().flatten().zip(notches(&now).into_iter().flatten()) {
            let foot = |n: &crate::finish::NotchMark| n.strokes.first().map(|s| Pt::new(s[0].x, s[0].y));
            let Some((a, b)) = foot(&was).zip(foot(&is)).filter(|(a, b)| apart(base, *a, *b) > tolerance::ON_EDGE)
            else {
                continue;
            };
            let seam = &*model.plan.seams[was.seam].name;
            let name = if was.name.is_empty() { say!("word-match-mark") } else { was.name.to_string() };
            let shown = |mm: f64| owned(|| length(mm, draft.display));
            let (far, each) = (shown(apart(base, a, b) / TRIED * 10.0), shown(10.0));
            let said = say!("told-notch-behind", name, seam, far, each);
            if !out.contains(&said) {
                out.push(said);
            }
        }
        out
    }
}

/// Whether a node hangs on one of others.
fn hangs_on(model: &Model, node: NodeId, others: &[NodeId]) -> bool {
    let mut seen = vec![false; model.plan.nodes.len()];
    let mut open = vec![node];
    while let Some(now) = open.pop() {
        for next in &model.plan.nodes[now as usize].deps {
            if *next != node && others.contains(next) {
                return true;
            }
            if !std::mem::replace(&mut seen[*next as usize], true) {
                open.push(*next);
            }
        }
    }
    false
}

/// A formula of a point, moved by a value.
fn further(text: &str, way: Pt<f64>, name: &str) -> String {
    let mut depth = 0;
    let mut is_sum = false;
    for letter in text.chars() {
        match letter {
            '(' | '[' => depth += 1,
            ')' | ']' => depth -= 1,
            '+' | '-' | '*' | '/' if depth == 0 => is_sum = true,
            _ => {}
        }
    }
    let text = if is_sum { format!("({text})") } else { text.to_owned() };
    let (right, down) = (way.x, way.y);
    if right.abs() <= tolerance::LEVEL {
        format!("{text}.{}({name})", if down > 0.0 { "down" } else { "up" })
    } else if down.abs() <= tolerance::LEVEL {
        format!("{text}.{}({name})", if right > 0.0 { "right" } else { "left" })
    } else {
        format!("{text}.polar({} deg, {name})", way.angle().to_degrees())
    }
}
