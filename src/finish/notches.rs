//! Notches: where they lie on both sides of their seam, and the strokes that are cut.

use std::sync::Arc;

use kurbo::Point;

use super::limits::Limits;
use super::piece::Known;
use super::piece::Work;
use super::sewing::Sewing;
use crate::base::tolerance;
use crate::compute::{Fit, Formula, Model, NodeId, Run, RunPart, SeamPlan, run_of};
use crate::curves::Pt;
use crate::document::Side;
use crate::language::{Kind, Trouble};

/// From one stroke of a notch to the next, mm: common practice, no source.
const BETWEEN_STROKES: f64 = 5.0;

/// A notch of a seam in one case.
#[derive(Clone, Debug, PartialEq)]
pub struct PlacedNotch {
    /// The seam.
    pub seam: usize,
    /// Its name; empty for a match mark that the program makes.
    pub name: Arc<str>,
    /// How many strokes.
    pub strokes: u32,
    /// Its place on side one and two: sewn from the start of the seam, mm, or why there is none. Where only one side needs
    /// a mark, the other has none and no fault.
    pub sides: [Option<Result<NotchPlace, NotchFault>>; 2],
    /// Where it would meet its mate, mm, for a place that is told on both sides: the side that tells it second, the place.
    pub meets: Option<(usize, f64)>,
}

/// A place on a side of a seam.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NotchPlace {
    /// Sewn from the start of the seam, mm.
    pub sewn: f64,
    /// The piece and the edge that carry it; none on a strip or on what is not a whole edge of a piece.
    pub on: Option<(usize, usize)>,
    /// Flat place on that edge as it runs, mm; not a number where the side names a part of it: then `at` says where.
    pub flat: f64,
    /// The point on the stitch line, in the frame of its piece.
    pub at: Option<Pt<f64>>,
}

/// Why a notch has no place.
#[derive(Clone, Debug, PartialEq)]
pub enum NotchFault {
    /// The place told lies beyond the end: where, and how long the side is, mm.
    Beyond(f64, f64),
    /// It lies in the mouth of this dart, pleat or tuck.
    InMouth(String),
    /// The point does not lie on the side: how far away, mm.
    Away(f64),
    /// The point is one of a piece that is not on that side.
    OtherPiece,
    /// The formula cannot be computed there.
    NotComputed,
}

/// A notch as it is cut into a piece.
#[derive(Clone, Debug, PartialEq)]
pub struct NotchMark {
    /// The seam.
    pub seam: usize,
    /// Its name.
    pub name: Arc<str>,
    /// The edge.
    pub edge: usize,
    /// Each stroke from the cut line inwards.
    pub strokes: Vec<[Point; 2]>,
    /// Its depth, mm.
    pub depth: f64,
    /// The allowance there, mm.
    pub allowance: f64,
}

/// A side of a seam with its stretches.
struct Sides<'a> {
    seam: &'a SeamPlan,
    runs: [Run; 2],
    lengths: [f64; 2],
    /// Ends of the stretches on both sides.
    ends: Vec<[f64; 2]>,
}

/// The places of all notches of a case; seams that cannot be computed have none.
///
/// Those of seams all of whose pieces are kept are the known ones.
pub(super) fn places(model: &Model, case: usize, sewing: &Sewing, known: &[Known<'_>]) -> Vec<PlacedNotch> {
    let mut out = Vec::new();
    for (i, seam) in model.plan.own_seams() {
        let pieces = || (0..2).flat_map(|side| sewing.parts(i, side)).map(|p| p.map(|(frame, ..)| frame));
        let keeps = |known: &&Known<'_>| pieces().all(|frame| frame.is_some_and(|f| known.kept[f]));
        if let Some(known) = known.iter().find(keeps) {
            out.extend(known.notches.iter().filter(|n| n.seam == i).cloned());
            continue;
        }
        let run = |side: usize| run_of(model, &model.plan, case, seam.sides[side]);
        let (Some(one), Some(two)) = (run(0), run(1)) else { continue };
        let lengths = [one.sewn_length(), two.sewn_length()];
        let place = |node: NodeId| model.item(case, node).and_then(|v| v.real());
        let ends: Option<Vec<[f64; 2]>> = seam
            .stretches
            .iter()
            .map(|s| {
                let end = |side: usize| s.ends[side].map_or(Some(lengths[side]), place);
                Some([end(0)?, end(1)?])
            })
            .collect();
        let Some(ends) = ends else { continue };
        let sides = Sides { seam, runs: [one, two], lengths, ends };
        sides.told(model, case, i, sewing, &mut out);
        sides.made(i, sewing, &mut out);
    }
    out
}

impl Sides<'_> {
    /// The place on a side that a formula tells.
    fn place(&self, model: &Model, case: usize, side: usize, formula: &Formula) -> Result<f64, NotchFault> {
        let item = model.evaluate(&model.plan, case, formula).map_err(|_| NotchFault::NotComputed)?;
        if let Some(point) = item.point() {
            return self.runs[side].place_of(point, formula.kind.frame()).map_err(|trouble| match trouble {
                Trouble::NotOnEdge(distance) => NotchFault::Away(distance),
                Trouble::InsideMouth(dart) => NotchFault::InMouth(dart),
                Trouble::NoAnswer(_) => NotchFault::OtherPiece,
                _ => NotchFault::NotComputed,
            });
        }
        let number = item.real().ok_or(NotchFault::NotComputed)?;
        let place = if formula.kind == Kind::NUMBER { number * self.lengths[side] } else { number };
        self.within(side, place)
    }

    fn within(&self, side: usize, place: f64) -> Result<f64, NotchFault> {
        let length = self.lengths[side];
        match place >= -tolerance::EQUAL && place <= length + tolerance::EQUAL {
            true => Ok(place.clamp(0.0, length)),
            false => Err(NotchFault::Beyond(place, length)),
        }
    }

    /// Where a place of one side falls on the other: at the same distance on a stretch that is sewn evenly, at the same fraction
    /// on one that is fulled.
    fn across(&self, side: usize, place: f64) -> f64 {
        let i = self.ends.iter().position(|e| place <= e[side] + tolerance::EQUAL).unwrap_or(self.ends.len() - 1);
        let start = i.checked_sub(1).map_or([0.0, 0.0], |k| self.ends[k]);
        let end = self.ends[i];
        let (own, other) = (end[side] - start[side], end[1 - side] - start[1 - side]);
        let into = place - start[side];
        match self.seam.stretches[i].fit {
            Some(Fit::Equal) | None => start[1 - side] + into,
            _ if own.abs() <= tolerance::EQUAL => start[1 - side],
            _ => start[1 - side] + into / own * other,
        }
    }

    /// Notches that the draft tells.
    fn told(&self, model: &Model, case: usize, seam: usize, sewing: &Sewing, out: &mut Vec<PlacedNotch>) {
        for notch in &self.seam.notches {
            let on = usize::from(notch.on == Side::Two);
            let first = self.place(model, case, on, &notch.at);
            let mut meets = None;
            let second = match (&notch.other, &first) {
                (Some(other), first) => {
                    if let Ok(place) = first {
                        meets = Some((1 - on, self.across(on, *place)));
                    }
                    self.place(model, case, 1 - on, other)
                }
                (None, Ok(place)) => self.within(1 - on, self.across(on, *place)),
                (None, Err(_)) => Err(NotchFault::NotComputed),
            };
            let mut sides = [None, None];
            let is_told = |fault: &NotchFault| *fault != NotchFault::NotComputed;
            // A place that follows from another that is missing says nothing of its own.
            sides[on] = Some(first.and_then(|p| self.stand(on, p, seam, sewing)));
            sides[1 - on] = match second {
                Err(fault) if notch.other.is_none() && !is_told(&fault) => None,
                second => Some(second.and_then(|p| self.stand(1 - on, p, seam, sewing))),
            };
            out.push(PlacedNotch { seam, name: notch.name.clone(), strokes: notch.strokes, sides, meets });
        }
        if let Some(closure) = &self.seam.closure
            && let Ok(item) = model.evaluate(&model.plan, case, closure)
            && let Some(length) = item.real()
        {
            let sides = [0, 1].map(|side| {
                let place = if side == 0 { length } else { self.across(0, length) };
                Some(self.within(side, place).and_then(|p| self.stand(side, p, seam, sewing)))
            });
            out.push(PlacedNotch { seam, name: "closure".into(), strokes: 1, sides, meets: None });
        }
    }

    /// Match marks: where a corner of one side falls within a run of the other.
    fn made(&self, seam: usize, sewing: &Sewing, out: &mut Vec<PlacedNotch>) {
        let joints = [self.runs[0].joints(), self.runs[1].joints()];
        for side in 0..2 {
            for joint in &joints[side] {
                let place = self.across(side, *joint);
                let near = |other: &f64| (other - place).abs() <= tolerance::limit::NOTCH;
                let told = out.iter().any(|n: &PlacedNotch| {
                    let there = n.sides[1 - side].as_ref().and_then(|s| s.as_ref().ok());
                    n.seam == seam && there.is_some_and(|p| near(&p.sewn))
                });
                if joints[1 - side].iter().any(near) || told {
                    continue;
                }
                let Ok(mark) = self.within(1 - side, place).and_then(|p| self.stand(1 - side, p, seam, sewing)) else {
                    continue;
                };
                let mut sides = [None, None];
                sides[1 - side] = Some(Ok(mark));
                out.push(PlacedNotch { seam, name: "".into(), strokes: 1, sides, meets: None });
            }
        }
    }

    /// A sewn place on a side as a place of a piece.
    fn stand(&self, side: usize, sewn: f64, seam: usize, sewing: &Sewing) -> Result<NotchPlace, NotchFault> {
        let none = NotchPlace { sewn, on: None, flat: 0.0, at: None };
        let Some((part, rest)) = self.runs[side].part_at(sewn, false) else { return Ok(none) };
        let RunPart::Edge(edge, ..) = &self.runs[side].parts[part] else { return Ok(none) };
        let flat = edge.flat_place(rest).map_err(|_| NotchFault::NotComputed)?;
        let on = sewing.parts(seam, side).get(part).copied().flatten();
        let at = edge.curve.point_at(flat);
        match on {
            Some((frame, place, against, partial)) => {
                // Of a part of an edge the place on the whole edge is looked for where it is drawn.
                let along = if against { edge.flat_length() - flat } else { flat };
                let flat = if partial { f64::NAN } else { along };
                Ok(NotchPlace { sewn, on: Some((frame, place)), flat, at })
            }
            None => Ok(NotchPlace { at, ..none }),
        }
    }
}

/// How deep a notch is cut into an allowance, mm: as told, else as the allowance leaves.
pub(super) fn depth_in(allowance: f64, limits: &Limits) -> f64 {
    limits.notch_depth.unwrap_or_else(|| tolerance::limit::NOTCH_DEPTH.min(allowance - limits.notch_margin).max(0.0))
}

/// The strokes of the notches of a piece.
pub(super) fn marks(frame: usize, work: &Work, notches: &[PlacedNotch], limits: &Limits) -> Vec<NotchMark> {
    let mut out: Vec<NotchMark> = Vec::new();
    for notch in notches {
        for place in notch.sides.iter().flatten().filter_map(|s| s.as_ref().ok()) {
            let Some((_, edge)) = place.on.filter(|(f, _)| *f == frame) else { continue };
            let line = &work.body.edges[edge];
            let flat = match place.at {
                Some(at) if place.flat.is_nan() => line.locate(at).along,
                _ => place.flat,
            };
            let allowance = work.told[edge].at(flat, line.length(), false);
            let depth = depth_in(allowance, limits);
            let strokes = (0..notch.strokes).filter_map(|i| {
                let aside = BETWEEN_STROKES * (f64::from(i) - 0.5 * f64::from(notch.strokes - 1));
                let at = (flat + aside).clamp(0.0, line.length());
                let (foot, way) = (line.point_at(at)?, line.tangent_at(at)?);
                let out = way.square().scaled(-work.body.sense);
                // Without an allowance a short stroke crosses the line.
                let (from, to) = if allowance > 0.0 {
                    (allowance, allowance - depth)
                } else {
                    (0.0, -tolerance::limit::NOTCH_MARGIN)
                };
                Some([(foot + out.scaled(from)).value(), (foot + out.scaled(to)).value()])
            });
            let strokes: Vec<[Point; 2]> = strokes.collect();
            // A seam of a piece to its own copy marks one place twice.
            let twice = |m: &NotchMark| {
                m.edge == edge
                    && m.seam == notch.seam
                    && m.strokes
                        .first()
                        .zip(strokes.first())
                        .is_some_and(|(a, b)| a[0].distance(b[0]) <= tolerance::ON_EDGE)
            };
            if !out.iter().any(twice) {
                out.push(NotchMark { seam: notch.seam, name: notch.name.clone(), edge, strokes, depth, allowance });
            }
        }
    }
    out
}
