//! Allowances, corners, cuts, folds, marks, finished measures: their formulas.

use std::sync::Arc;

use super::publishing::braced;
use super::{FormulaScope, World};
use crate::base::{Code, Finding};
use crate::compute::cases::part_unknown;
use crate::compute::compile::FormulaReader;
use crate::compute::finishing::{
    AllowancePlan, CornerPlan, CutPlan, FoldPlan, LinePlan, MarkPlan, MeasurePlan, PieceFinishing,
};
use crate::compute::names::Global;
use crate::compute::plan::{Def, Formula, FramePlan, NodeId, Part};
use crate::compute::publishing::Braced;
use crate::document::{DartForm, Piece, Seam};
use crate::language::{Frame, Kind, What};
use crate::texts::say;

const POINT: What = What::Kind(Kind::Point(Frame(0)));
const LENGTH: What = What::Kind(Kind::LENGTH);
const NUMBER: What = What::Kind(Kind::NUMBER);
const ANGLE: What = What::Kind(Kind::Angle);

/// Reads what is made of each piece.
pub(super) fn pieces(world: &World<'_>, reader: &mut FormulaReader<'_>) -> Vec<Arc<PieceFinishing>> {
    let pieces = world.draft.pieces.iter().zip(world.frames.iter()).enumerate();
    pieces
        .map(|(i, (piece, plan))| {
            Arc::new(PieceReader { world, reader: &mut *reader, frame: i as u32, plan, piece }.all())
        })
        .collect()
}

struct PieceReader<'a, 'b> {
    world: &'a World<'a>,
    reader: &'a mut FormulaReader<'b>,
    frame: u32,
    plan: &'a FramePlan,
    piece: &'a Piece,
}

impl PieceReader<'_, '_> {
    /// A formula; nothing where the text is empty or cannot be read.
    fn read(&mut self, text: &str, what: What, edge: &str, name: &str) -> Option<Formula> {
        if text.is_empty() {
            return None;
        }
        let scope = FormulaScope { world: self.world, frame: Some(self.frame) };
        let piece = &self.plan.name;
        let frame = what.is_of_a_frame().then_some(Frame(self.frame));
        self.reader.read_as(text, &scope, what, frame, |f| f.piece(&**piece).edge(edge).at(format!("{piece}.{name}")))
    }

    /// A formula that has to be there.
    fn needed(&mut self, text: &str, what: What, edge: &str, name: &str) -> Option<Formula> {
        let scope = FormulaScope { world: self.world, frame: Some(self.frame) };
        let piece = &self.plan.name;
        let frame = what.is_of_a_frame().then_some(Frame(self.frame));
        self.reader.read_as(text, &scope, what, frame, |f| f.piece(&**piece).edge(edge).at(format!("{piece}.{name}")))
    }

    /// Words with formulas in braces.
    fn braced(&mut self, text: &str, name: &str) -> Braced {
        let scope = FormulaScope { world: self.world, frame: Some(self.frame) };
        let piece = Arc::clone(&self.plan.name);
        braced(text, &scope, &|f| f.piece(&*piece).at(format!("{piece}.{name}")), self.reader)
    }

    fn unknown(&mut self, what: &str, asked: &str, known: &[&str], at: &str) {
        let finding = part_unknown(what, asked, known).piece(&*self.plan.name).at(format!("{}.{at}", self.plan.name));
        self.reader.findings.push(finding);
    }

    fn edge(&mut self, name: &str, at: &str) -> Option<usize> {
        let found = self.piece.edges.iter().position(|e| e.name == name);
        if found.is_none() {
            let known: Vec<&str> = self.piece.edges.iter().map(|e| e.name.as_str()).collect();
            self.unknown("edge", name, &known, at);
        }
        found
    }

    /// An edge or an inner line, with its node.
    fn line(&mut self, name: &str, at: &str) -> Option<(Arc<str>, NodeId)> {
        let edges = self.piece.edges.iter().zip(&self.plan.edges);
        let lines = self.piece.lines.iter().zip(&self.plan.lines);
        let found = edges.chain(lines).find(|(e, _)| e.name == name).map(|(e, n)| (e.name.as_str().into(), *n));
        if found.is_none() {
            let known: Vec<&str> = self.piece.edges.iter().chain(&self.piece.lines).map(|e| e.name.as_str()).collect();
            self.unknown("edge or line", name, &known, at);
        }
        found
    }

    fn all(mut self) -> PieceFinishing {
        let piece = self.piece;
        let mut out = PieceFinishing::default();
        for a in &piece.allowances {
            let at = a.edge.as_str();
            let Some(edge) = self.edge(&a.edge, "allowances") else { continue };
            let width = self.needed(&a.width, LENGTH, at, at);
            let from = self.read(&a.from, What::Any, at, at).filter(|f| self.is_place(f, &a.from, at));
            let to_width = self.read(&a.to_width, LENGTH, at, at);
            let turn_in = self.read(&a.turn_in, LENGTH, at, at);
            if a.turns > 2 || (a.turns > 0 && (!a.to_width.is_empty() || !a.from.is_empty())) {
                let problem = match a.turns {
                    1 | 2 => say!("read-part-hem-runs", edge = at),
                    turns => say!("read-part-hem-turns", edge = at, turns = turns.to_string()),
                };
                self.missing(problem, at);
                continue;
            }
            let Some(width) = width else { continue };
            let set = a.set.as_str().into();
            out.allowances.push(AllowancePlan { edge, set, width, from, to_width, turns: a.turns, turn_in });
        }
        for corner in &piece.corners {
            let starts = piece.edges.iter().position(|e| e.from == corner.at);
            let width = self.read(&corner.width, LENGTH, "", &corner.at);
            match starts {
                Some(edge) => out.corners.push(CornerPlan { edge, form: corner.form, width }),
                None => {
                    let known: Vec<&str> = piece.edges.iter().map(|e| e.from.as_str()).collect();
                    self.unknown("corner", &corner.at, &known, "corners");
                }
            }
        }
        for cut in &piece.cuts {
            let first = match self.world.names.globals.get(&cut.material) {
                Some(Global::Material(first)) => Some(*first),
                _ if cut.material.is_empty() => None,
                _ => {
                    let known: Vec<&str> = self.world.draft.materials.iter().map(|m| m.name.as_str()).collect();
                    self.unknown("material", &cut.material, &known, "cuts");
                    None
                }
            };
            let on_fold = if cut.on_fold.is_empty() { None } else { self.edge(&cut.on_fold, "cuts") };
            let border = if cut.border.is_empty() { None } else { self.edge(&cut.border, "cuts") };
            let heading = self.read(&cut.grain.heading, ANGLE, "", "cuts");
            let along = if cut.grain.along.is_empty() { None } else { self.line(&cut.grain.along, "cuts") };
            out.cuts.push(CutPlan {
                material: cut.material.as_str().into(),
                members: first,
                count: cut.count.max(1),
                on_fold,
                border,
                heading,
                along,
                both_ways: cut.grain.ways == crate::document::GrainWays::Both,
                face: cut.face,
                outline: cut.outline,
                set: cut.allowances.as_str().into(),
            });
        }
        for fold in &piece.folds {
            let Some(line) = self.line(&fold.line, &fold.name) else { continue };
            let over = fold.over.iter().filter_map(|n| self.line(n, &fold.name)).collect();
            let onto = fold.onto.iter().filter_map(|n| self.line(n, &fold.name)).collect();
            out.folds.push(FoldPlan { name: fold.name.as_str().into(), line, over, onto });
        }
        for mark in &piece.marks {
            let Some(at) = self.needed(&mark.at, POINT, "", &mark.name) else { continue };
            let to = self.read(&mark.to, POINT, "", &mark.name);
            let is_row = mark.kind != crate::document::MarkKind::Place;
            if is_row && to.is_none() != (mark.count < 2) && mark.to.is_empty() == (mark.count > 1) {
                let problem = say!("read-part-mark-row", mark = mark.name);
                self.missing(problem, &mark.name);
            }
            let known = || self.world.draft.pieces.iter().map(|p| p.name.as_str()).collect::<Vec<_>>();
            let piece = match known().contains(&mark.piece.as_str()) {
                true => Some(mark.piece.as_str().into()),
                false if mark.piece.is_empty() => None,
                false => {
                    let known = known();
                    self.unknown("piece", &mark.piece, &known, &mark.name);
                    None
                }
            };
            let fixed = self.read(&mark.fixed, POINT, "", &mark.name);
            let size = self.read(&mark.size, LENGTH, "", &mark.name);
            let text = self.braced(&mark.text, &mark.name);
            out.marks.push(MarkPlan {
                name: mark.name.as_str().into(),
                kind: mark.kind,
                at,
                to,
                count: mark.count,
                fixed,
                fixed_as: mark.fixed_as,
                size,
                piece,
                text,
            });
        }
        for (lines, slit) in [(&piece.lengthen, false), (&piece.slits, true)] {
            for line in lines {
                if let Some(formula) = self.needed(&line.line, What::Path, "", &line.name) {
                    out.lines.push(LinePlan { name: line.name.as_str().into(), line: formula, slit });
                }
            }
        }
        for dart in &piece.darts {
            let two_ended = dart.form == DartForm::TwoEnded;
            let name = &dart.name;
            if two_ended && !(dart.tip.is_empty() && dart.foot.is_empty()) {
                let problem = say!("read-part-two-ended", name);
                self.missing(problem, name);
            }
            if !dart.bow.is_empty() && matches!(dart.form, DartForm::Slashed | DartForm::CutOut) {
                self.missing(say!("read-part-bowed", name), name);
            }
        }
        out.legs = piece.darts.iter().map(|d| self.read(&d.allowance, LENGTH, &d.on, &d.name)).collect();
        let tucks = piece.pleats.iter().chain(&piece.tucks);
        out.depths = tucks.map(|t| self.read(&t.depth, LENGTH, &t.on, &t.name)).collect();
        out.label = self.read(&piece.label.at, POINT, "", "label");
        out.label_turn = self.read(&piece.label.turn, ANGLE, "", "label");
        out
    }

    fn missing(&mut self, problem: String, at: &str) {
        let finding = Finding::new(Code::PartMissing).piece(&*self.plan.name).at(format!("{}.{at}", self.plan.name));
        self.reader.findings.push(finding.word("problem", problem));
    }

    /// A place on an edge: a length, a fraction or a point of this piece.
    fn is_place(&mut self, formula: &Formula, text: &str, at: &str) -> bool {
        let fits = match formula.kind {
            Kind::LENGTH | Kind::NUMBER => true,
            Kind::Point(Frame(f)) => f == self.frame,
            _ => false,
        };
        if !fits {
            self.reader.findings.push(Finding {
                formula: text.to_owned(),
                span: Some(formula.program.span),
                ..Finding::new(Code::WrongKind)
                    .piece(&*self.plan.name)
                    .edge(at)
                    .at(format!("{}.{at}", self.plan.name))
                    .word("found", formula.kind.words())
                    .word("expected", say!("read-part-place"))
            });
        }
        fits
    }
}

/// Reads finished measures.
pub(super) fn measures(world: &World<'_>, reader: &mut FormulaReader<'_>) -> Vec<MeasurePlan> {
    let scope = FormulaScope { world, frame: None };
    let mut out = Vec::new();
    for measure in &world.draft.measures {
        let Some(&named) = world.names.measures.get(&measure.name) else { continue };
        let mut node = named;
        let name = format!("measure.{}", measure.name);
        let mut read = |text: &str, what: What| match text.is_empty() {
            true => None,
            false => reader.read_as(text, &scope, what, None, |f| f.at(name.clone())),
        };
        let (least, most) = (read(&measure.ease_least, LENGTH), read(&measure.ease_most, LENGTH));
        let (drift, stretch) = (read(&measure.drift_most, LENGTH), read(&measure.stretch, NUMBER));
        if let Some(formula) = reader.read_in(&measure.is, &scope, |f| f.at(name.clone())) {
            match formula.kind {
                Kind::LENGTH => {}
                // Formulas name lengths only.
                Kind::Quantity(_) | Kind::Angle => {
                    node = world.push(Part { name: name.as_str().into(), ..Part::default() }, None);
                }
                other => {
                    reader.findings.push(Finding {
                        formula: measure.is.clone(),
                        span: Some(formula.program.span),
                        ..Finding::new(Code::WrongKind)
                            .at(name.clone())
                            .word("found", other.words())
                            .word("expected", say!("read-part-measure"))
                    });
                    continue;
                }
            }
            world.define(node, Def::Formula(formula));
        }
        let mut row = |asked: &str| -> Option<(Arc<str>, NodeId)> {
            if asked.is_empty() {
                return None;
            }
            match world.names.globals.get(asked.strip_prefix("chart.").unwrap_or(asked)) {
                Some(Global::Row(node)) => Some((asked.into(), *node)),
                _ => {
                    let known: Vec<&String> = world.draft.chart.rows.iter().map(|r| &r.name).collect();
                    let finding = part_unknown("row", asked, known);
                    reader.findings.push(finding.at(name.clone()));
                    None
                }
            }
        };
        let (body, passes) = (row(&measure.body), row(&measure.passes));
        out.push(MeasurePlan { name: measure.name.as_str().into(), node, body, least, most, drift, passes, stretch });
    }
    out
}

/// Reads the lengths of strips.
pub(super) fn strips(world: &World<'_>, reader: &mut FormulaReader<'_>) {
    let scope = FormulaScope { world, frame: None };
    for strip in &world.draft.strips {
        let Some(&node) = world.names.strips.get(&strip.name) else { continue };
        let name = format!("strip.{}", strip.name);
        if let Some(formula) = reader.read_as(&strip.length, &scope, LENGTH, None, |f| f.at(name.clone())) {
            world.define(node, Def::Formula(formula));
        }
    }
}

/// The places of seams in the order of sewing: the number that each has, or that it waits for, and how many it waits for.
pub(super) fn orders(seams: &[Arc<Seam>], reader: &mut FormulaReader<'_>) -> Vec<Option<(f64, u32)>> {
    let before = |seam: &Seam| seam.order.trim().strip_prefix("after ").map(|n| n.trim().to_owned());
    let mut out = Vec::with_capacity(seams.len());
    let mut told: Vec<Vec<usize>> = Vec::new();
    for (i, seam) in seams.iter().enumerate() {
        let at = format!("seam.{}", seam.name);
        let (mut now, mut steps, mut path) = (i, 0, vec![i]);
        let place = loop {
            let Some(name) = before(&seams[now]) else {
                let text = seams[now].order.trim();
                let number = text.parse::<f64>().ok().filter(|n| n.is_finite());
                if number.is_none() && !text.is_empty() && now == i {
                    let problem = say!("read-part-order", text);
                    reader
                        .findings
                        .push(Finding::new(Code::PartMissing).seam(&seam.name).at(at.clone()).word("problem", problem));
                }
                // What waits for a seam without an order comes after all that have none.
                break number.or((steps > 0).then_some(0.0)).map(|n| (n, steps));
            };
            let Some(next) = seams.iter().position(|s| s.name == name) else {
                if now == i {
                    let known: Vec<&String> = seams.iter().map(|s| &s.name).collect();
                    reader.findings.push(part_unknown("seam", &name, known).seam(&seam.name).at(at.clone()));
                }
                break None;
            };
            if let Some(from) = path.iter().position(|p| *p == next) {
                let mut circle = path[from..].to_vec();
                circle.sort_unstable();
                if !told.contains(&circle) {
                    let members: Vec<&str> = circle.iter().map(|c| seams[*c].name.as_str()).collect();
                    let finding = Finding::new(Code::OrderCircular).seam(members[0]);
                    let finding = finding.at(format!("seam.{}", members[0])).word("members", members.join(", "));
                    reader.findings.push(finding);
                    told.push(circle);
                }
                break None;
            }
            path.push(next);
            (now, steps) = (next, steps + 1);
        };
        out.push(place);
    }
    out
}
