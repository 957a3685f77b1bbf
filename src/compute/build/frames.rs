//! Pieces and drawings: their names, nodes and formulas.

use std::sync::Arc;

use super::{FormulaScope, FrameParts, World, part_of};
use crate::base::{Code, Finding};
use crate::compute::cases::part_unknown;
use crate::compute::compile::FormulaReader;
use crate::compute::derive::is_hidden;
use crate::compute::names::{DART_MEMBERS, FrameNames, Global, Local, NameSet};
use crate::compute::plan::{Def, Formula, FramePlan, MouthDef, NodeId, Part, SegmentDef};
use crate::document::{DartForm, Drawing, Edge, Piece, Point, Pressed, Segment, Turn};
use crate::language::{Frame, Kind, What, check, parse};
use crate::texts::say;

const POINT: What = What::Kind(Kind::Point(Frame(0)));
const LENGTH: What = What::Kind(Kind::LENGTH);

pub(super) fn enumerate_piece(world: &mut World<'_>, piece: &Piece, set: &mut NameSet, reader: &mut FormulaReader<'_>) {
    set.add(&piece.name, "piece", &mut reader.findings);
    let parts = FrameParts { points: &piece.points, edges: &piece.edges, lines: &piece.lines };
    let mut names = enumerate(world, &piece.name, true, &parts, reader);
    let frame = (world.frames.len() - 1) as u32;
    let kind = Some(Kind::LENGTH);
    let point = Some(Kind::Point(Frame(frame)));
    let name: Arc<str> = world.frames[frame as usize].name.clone();
    for dart in &piece.darts {
        names.1.add(&dart.name, "dart", &mut reader.findings);
        let mouth = world.push(part_of(&name, &dart.on, &dart.name), None);
        // The formula of the tip stands right behind the mouth.
        world.push(part_of(&name, &dart.on, &dart.name), None);
        world.frames.to_mut()[frame as usize].mouths.push((mouth, true));
        let mut first = None;
        for (i, member) in DART_MEMBERS.iter().enumerate() {
            let part = part_of(&name, &dart.on, &format!("{}.{member}", dart.name));
            let node = world.push(part, if i < 2 { kind } else { point });
            world.define(node, Def::Member(mouth, i as u8));
            first = first.or(Some(node));
        }
        if let Some(first) = first {
            names.0.locals.entry(dart.name.clone()).or_insert(Local::Dart(first));
        }
    }
    for (tucks, what) in [(&piece.pleats, "pleat"), (&piece.tucks, "tuck")] {
        for tuck in tucks {
            names.1.add(&tuck.name, what, &mut reader.findings);
            let mouth = world.push(part_of(&name, &tuck.on, &tuck.name), None);
            world.frames.to_mut()[frame as usize].mouths.push((mouth, false));
            names.0.locals.entry(tuck.name.clone()).or_insert(Local::Mark);
        }
    }
    let marks = piece.marks.iter().map(|m| (&m.name, "mark"));
    let others = piece.folds.iter().map(|f| (&f.name, "fold"));
    let lines = piece.lengthen.iter().chain(&piece.slits).map(|l| (&l.name, "line"));
    for (name, what) in marks.chain(others).chain(lines) {
        names.1.add(name, what, &mut reader.findings);
        names.0.locals.entry(name.clone()).or_insert(Local::Mark);
    }
    finish(world, &piece.name, names.0);
}

pub(super) fn enumerate_drawing(
    world: &mut World<'_>,
    drawing: &Drawing,
    set: &mut NameSet,
    reader: &mut FormulaReader<'_>,
) {
    set.add(&drawing.name, "drawing", &mut reader.findings);
    let parts = FrameParts { points: &drawing.points, edges: &[], lines: &drawing.lines };
    let names = enumerate(world, &drawing.name, false, &parts, reader);
    finish(world, &drawing.name, names.0);
}

fn finish(world: &mut World<'_>, name: &str, names: FrameNames) {
    let frame = world.names.frames.len() as u32;
    world.names.to_mut().frames.push(names);
    world.names.to_mut().globals.entry(name.to_owned()).or_insert(Global::Frame(frame));
}

/// Points, edges and lines; the frame is the last of the world's.
fn enumerate(
    world: &mut World<'_>,
    name: &str,
    is_piece: bool,
    parts: &FrameParts<'_>,
    reader: &mut FormulaReader<'_>,
) -> (FrameNames, NameSet) {
    let frame = world.frames.len() as u32;
    let arc: Arc<str> = name.into();
    let mut plan = FramePlan { name: arc.clone(), is_piece, ..FramePlan::default() };
    let is_stage = world.links.iter().any(|l| l.on == name);
    let mut names = FrameNames { name: name.to_owned(), is_piece, is_told: is_stage, ..FrameNames::default() };
    let is_told = is_hidden(name) || parts.points.iter().any(|p| is_hidden(&p.name));
    let mut set = NameSet::of(name, is_told);
    for point in parts.points {
        set.add(&point.name, "point", &mut reader.findings);
        let node = world.push(part_of(&arc, "", &point.name), Some(Kind::Point(Frame(frame))));
        names.locals.entry(point.name.clone()).or_insert(Local::Point(node));
        plan.points.push(node);
    }
    for (list, what) in [(parts.edges, "edge"), (parts.lines, "line")] {
        for edge in list {
            set.add(&edge.name, what, &mut reader.findings);
            let node = world.push(part_of(&arc, &edge.name, &edge.name), Some(Kind::Edge(Frame(frame))));
            // The edge as drawn stands right behind the sewn one.
            let flat = Part { name: format!("{arc}.{} as drawn", edge.name).into(), ..part_of(&arc, &edge.name, "") };
            let flat = world.push(flat, None);
            world.flats.to_mut().insert(flat);
            names.locals.entry(edge.name.clone()).or_insert(Local::Edge(node));
            if what == "edge" { plan.edges.push(node) } else { plan.lines.push(node) }
        }
    }
    let sense = Part { piece: arc.clone(), name: format!("{arc} outline").into(), ..Part::default() };
    plan.sense = world.push(sense, None);
    let whole = Part { piece: arc.clone(), name: arc.clone(), ..Part::default() };
    plan.outline = world.push(whole, is_piece.then_some(Kind::Piece(Frame(frame))));
    world.frames.to_mut().push(plan);
    (names, set)
}

/// Reads all formulas of all frames.
pub(super) fn compile(world: &World<'_>, reader: &mut FormulaReader<'_>) {
    for (i, plan) in world.frames.iter().enumerate() {
        let mut reading = FrameReader { world, reader, frame: i as u32, plan };
        let stage = || world.stages.get(i.checked_sub(world.draft.pieces.len() + world.draft.drawings.len())?);
        match world.draft.pieces.get(i).or_else(stage) {
            Some(piece) => reading.piece(piece),
            None => {
                if let Some(parts) = FrameParts::of(world.draft, world.stages, i) {
                    reading.parts(&parts);
                }
            }
        }
    }
}

/// Reads one point of a frame again.
pub(super) fn point(world: &World<'_>, frame: u32, point: &Point, node: NodeId, reader: &mut FormulaReader<'_>) {
    FrameReader { world, reader, frame, plan: &world.frames[frame as usize] }.point(point, node);
}

/// Reads one edge or line of a frame again.
pub(super) fn edge(world: &World<'_>, frame: u32, edge: &Edge, node: NodeId, reader: &mut FormulaReader<'_>) {
    FrameReader { world, reader, frame, plan: &world.frames[frame as usize] }.flat(edge, node);
}

/// Reads one dart, pleat or tuck of a piece again, by its place among them.
pub(super) fn mouth(
    world: &World<'_>,
    frame: u32,
    piece: &Piece,
    i: usize,
    reader: &mut FormulaReader<'_>,
) -> Option<NodeId> {
    let plan = &world.frames[frame as usize];
    let mut reading = FrameReader { world, reader, frame, plan };
    let (takers, mouth) = (takers(piece), plan.mouths.get(i)?.0);
    let taker = takers.get(i)?;
    let edge = reading.edge_of(piece, taker)?;
    reading.mouth(taker, edge, mouth);
    Some(mouth)
}

/// A dart, pleat or tuck.
struct Taker<'a> {
    name: &'a str,
    on: &'a str,
    place: &'a str,
    by_foot: bool,
    intake: &'a str,
    tip: Option<&'a str>,
    second_kept: bool,
    bow: &'a str,
    /// Whether it lies on an inner line instead of opening on an edge.
    two_ended: bool,
}

/// All of a piece, in the order of their nodes.
fn takers(piece: &Piece) -> Vec<Taker<'_>> {
    let darts = piece.darts.iter().map(|d| {
        let (place, by_foot) = if d.foot.is_empty() { (&d.centre, false) } else { (&d.foot, true) };
        let second_kept = d.kept == Pressed::ToEnd;
        let two_ended = d.form == DartForm::TwoEnded;
        let tip = if two_ended { None } else { Some(d.tip.as_str()) };
        let (name, on, intake, bow) = (&d.name, &d.on, &d.intake, &d.bow);
        Taker { name, on, place, by_foot, intake, tip, second_kept, bow, two_ended }
    });
    let tucks = piece.pleats.iter().chain(&piece.tucks).map(|t| Taker {
        name: &t.name,
        on: &t.on,
        place: &t.centre,
        by_foot: false,
        intake: &t.intake,
        tip: None,
        second_kept: false,
        bow: "",
        two_ended: false,
    });
    darts.chain(tucks).collect()
}

struct FrameReader<'a, 'b> {
    world: &'a World<'a>,
    reader: &'a mut FormulaReader<'b>,
    frame: u32,
    plan: &'a FramePlan,
}

impl FrameReader<'_, '_> {
    fn read(&mut self, text: &str, what: What, edge: &str, name: &str) -> Option<Formula> {
        let scope = FormulaScope { world: self.world, frame: Some(self.frame) };
        let piece = &self.plan.name;
        let frame = what.is_of_a_frame().then_some(Frame(self.frame));
        self.reader.read_as(text, &scope, what, frame, |f| f.piece(&**piece).edge(edge).at(format!("{piece}.{name}")))
    }

    fn parts(&mut self, parts: &FrameParts<'_>) {
        for (point, &node) in parts.points.iter().zip(&self.plan.points) {
            self.point(point, node);
        }
        for (edge, &node) in parts.edges.iter().zip(&self.plan.edges) {
            self.edge(edge, node);
        }
        for (line, &node) in parts.lines.iter().zip(&self.plan.lines) {
            self.edge(line, node);
        }
    }

    fn point(&mut self, point: &Point, node: NodeId) {
        if let Some(formula) = self.read(&point.at, POINT, "", &point.name) {
            self.world.define(node, Def::Formula(formula));
        }
    }

    fn piece(&mut self, piece: &Piece) {
        self.parts(&FrameParts { points: &piece.points, edges: &piece.edges, lines: &piece.lines });
        self.ring(piece);
        let flats: Vec<NodeId> = self.plan.edges.iter().map(|e| e + 1).collect();
        self.world.define(self.plan.sense, Def::Sense(flats.clone()));
        if !flats.is_empty() {
            let darts = self.plan.mouths.iter().filter(|m| m.1).map(|m| m.0).collect();
            self.world.define(self.plan.outline, Def::Outline { edges: flats, darts });
        }
        for (taker, &(mouth, _)) in takers(piece).iter().zip(&self.plan.mouths) {
            let (on, name) = (taker.on, taker.name);
            let Some(edge) = self.edge_of(piece, taker) else {
                let (what, lines) = if taker.two_ended { ("inner line", &piece.lines) } else { ("edge", &piece.edges) };
                let known: Vec<&String> = lines.iter().map(|e| &e.name).collect();
                let finding =
                    part_unknown(what, on, known).piece(&*self.plan.name).at(format!("{}.{name}", piece.name));
                self.reader.findings.push(finding);
                continue;
            };
            self.mouth(taker, edge, mouth);
            if taker.two_ended {
                continue;
            }
            // An edge waits for its mouths, so that no wrong length is told for it.
            let sewn = self.world.nodes.borrow()[edge as usize].def.clone();
            if let Def::Sewn { flat, mut mouths, outline } = sewn {
                mouths.push((mouth, name.into()));
                self.world.define(edge, Def::Sewn { flat, mouths, outline });
            }
        }
    }

    /// What it opens on, or lies on.
    fn edge_of(&self, piece: &Piece, taker: &Taker<'_>) -> Option<NodeId> {
        let (edges, nodes) = match taker.two_ended {
            true => (&piece.lines, &self.plan.lines),
            false => (&piece.edges, &self.plan.edges),
        };
        let i = edges.iter().position(|e| e.name == *taker.on)?;
        nodes.get(i).copied()
    }

    /// What a dart, pleat or tuck takes out of an edge.
    fn mouth(&mut self, taker: &Taker<'_>, edge: NodeId, mouth: NodeId) {
        let (on, name) = (taker.on, taker.name);
        let place = self.foot(taker, on, name);
        let intake = self.read(taker.intake, LENGTH, on, name);
        let tip = taker.tip.map(|tip| self.tip(tip, on, name));
        let bow = if taker.bow.is_empty() { None } else { self.read(taker.bow, LENGTH, on, name) };
        let (Some(place), Some(intake)) = (place, intake) else { return };
        let tip = tip.flatten().map(|tip| {
            let deep = tip.kind == Kind::LENGTH;
            self.world.define(mouth + 1, Def::Formula(tip));
            (mouth + 1, deep)
        });
        let sense = tip.filter(|t| t.1).map(|_| self.plan.sense);
        let (by_foot, second_kept, two_ended) = (taker.by_foot, taker.second_kept, taker.two_ended);
        let def = MouthDef { flat: edge + 1, sense, place, by_foot, intake, tip, second_kept, bow, two_ended };
        self.world.define(mouth, Def::Mouth(Box::new(def)));
    }

    /// Where a mouth lies: a place on its edge, or a point of this piece for a foot.
    fn foot(&mut self, taker: &Taker<'_>, on: &str, name: &str) -> Option<Formula> {
        let scope = FormulaScope { world: self.world, frame: Some(self.frame) };
        let is_point = taker.by_foot
            && parse(taker.place).is_ok_and(|e| {
                check(&e, &scope).is_ok_and(|c| matches!(c.kind, Kind::Point(Frame(f)) if f == self.frame))
            });
        self.read(taker.place, if is_point { POINT } else { What::Place }, on, name)
    }

    /// The tip of a dart: a point of this piece or a length.
    fn tip(&mut self, text: &str, on: &str, name: &str) -> Option<Formula> {
        let tip = self.read(text, What::Any, on, name)?;
        if matches!(tip.kind, Kind::Point(Frame(f)) if f == self.frame) || tip.kind == Kind::LENGTH {
            return Some(tip);
        }
        self.reader.findings.push(Finding {
            formula: text.to_owned(),
            span: Some(tip.program.span),
            ..Finding::new(Code::WrongKind)
                .piece(&*self.plan.name)
                .edge(on)
                .at(format!("{}.{name}", self.plan.name))
                .word(
                    "found",
                    if tip.kind.frame().is_some() { say!("read-part-other-piece") } else { tip.kind.words() },
                )
                .word("expected", say!("read-part-tip"))
        });
        None
    }

    /// Edges follow one another and close.
    fn ring(&mut self, piece: &Piece) {
        let ends = |edge: &Edge| edge.by.last().map(|s| s.end().to_owned());
        for (i, edge) in piece.edges.iter().enumerate() {
            let next = &piece.edges[(i + 1) % piece.edges.len()];
            if let Some(end) = ends(edge).filter(|end| *end != next.from) {
                self.reader.findings.push(
                    Finding::new(Code::RingOpen)
                        .piece(&*self.plan.name)
                        .edge(&edge.name)
                        .at(format!("{}.{}", piece.name, edge.name))
                        .word("edge", edge.name.clone())
                        .word("end", end)
                        .word("next", next.name.clone())
                        .word("start", next.from.clone()),
                );
            }
        }
    }

    fn point_named(&mut self, point: &str, edge: &Edge) -> Option<NodeId> {
        match self.world.names.frames[self.frame as usize].locals.get(point) {
            Some(Local::Point(node)) => Some(*node),
            _ => {
                let locals = &self.world.names.frames[self.frame as usize].locals;
                let known: Vec<&String> =
                    locals.iter().filter(|(_, l)| matches!(l, Local::Point(_))).map(|(n, _)| n).collect();
                let finding = part_unknown("point", point, known)
                    .piece(&*self.plan.name)
                    .edge(&edge.name)
                    .at(format!("{}.{}", self.plan.name, edge.name));
                self.reader.findings.push(finding);
                None
            }
        }
    }

    fn edge(&mut self, edge: &Edge, node: NodeId) {
        let outline = self.plan.edges.contains(&node).then_some(self.frame);
        self.world.define(node, Def::Sewn { flat: node + 1, mouths: Vec::new(), outline });
        self.flat(edge, node);
    }

    /// An edge as it is drawn; `node` is that of the sewn one.
    fn flat(&mut self, edge: &Edge, node: NodeId) {
        if edge.by.is_empty() {
            self.reader.findings.push(
                Finding::new(Code::PartMissing)
                    .piece(&*self.plan.name)
                    .edge(&edge.name)
                    .at(format!("{}.{}", self.plan.name, edge.name))
                    .word("problem", say!("read-part-no-segment", edge = edge.name)),
            );
            return;
        }
        let mut points = vec![self.point_named(&edge.from, edge)];
        let mut segments = Vec::new();
        for segment in &edge.by {
            segments.push(self.segment(segment, edge));
            points.push(self.point_named(segment.end(), edge));
        }
        for name in &edge.smooth_at {
            if !edge.by.iter().rev().skip(1).any(|s| s.end() == name) {
                let inner: Vec<&str> = edge.by.iter().rev().skip(1).map(Segment::end).collect();
                let finding = part_unknown("joint inside the edge", name, &inner)
                    .piece(&*self.plan.name)
                    .edge(&edge.name)
                    .at(format!("{}.{}", self.plan.name, edge.name));
                self.reader.findings.push(finding);
            }
        }
        let points: Option<Vec<NodeId>> = points.into_iter().collect();
        let segments: Option<Vec<SegmentDef>> = segments.into_iter().collect();
        if let (Some(points), Some(segments)) = (points, segments) {
            self.world.define(node + 1, Def::Flat { points, segments });
        }
    }

    fn segment(&mut self, segment: &Segment, edge: &Edge) -> Option<SegmentDef> {
        let e = edge.name.as_str();
        match segment {
            Segment::Straight(_) => Some(SegmentDef::Straight),
            Segment::Curve(leaving, arriving, _) => {
                let (a, b) = (self.read(leaving, POINT, e, e), self.read(arriving, POINT, e, e));
                Some(SegmentDef::Curve(a?, b?))
            }
            Segment::Arc { centre, turn, .. } => {
                Some(SegmentDef::Arc(self.read(centre, POINT, e, e)?, *turn == Turn::Clockwise))
            }
            Segment::Smooth { through, leaving, arriving, .. } => {
                let points: Vec<_> = through.iter().map(|p| self.read(p, POINT, e, e)).collect();
                let angle = What::Kind(Kind::Angle);
                let mut end = |text: &String| match text.is_empty() {
                    true => Some(None),
                    false => self.read(text, angle, e, e).map(Some),
                };
                let (leaving, arriving) = (end(leaving), end(arriving));
                Some(SegmentDef::Smooth(points.into_iter().collect::<Option<_>>()?, leaving?, arriving?))
            }
            Segment::Taken { curve, off, off_end, .. } => {
                let curve = self.read(curve, What::Kind(Kind::Edge(Frame(0))), e, e);
                let mut length = |text: &String| match text.is_empty() {
                    true => Some(None),
                    false => self.read(text, LENGTH, e, e).map(Some),
                };
                let (from, to) = (length(off)?, length(off_end)?);
                if from.is_none() && to.is_some() {
                    let problem = say!("read-part-runs-to", edge = edge.name);
                    let finding = Finding::new(Code::PartMissing).piece(&*self.plan.name).edge(e);
                    let finding = finding.at(format!("{}.{e}", self.plan.name)).word("problem", problem);
                    self.reader.findings.push(finding);
                    return None;
                }
                Some(SegmentDef::Taken(curve?, from.map(|from| (from, to))))
            }
        }
    }
}
