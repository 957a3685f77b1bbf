//! One side of a seam rolled along the other: where the pieces lie, and how far notches are apart.
//!
//! Rolling does not slip: both sides touch at the same sewn distance from the start of the seam. The pieces of each side are joined
//! beside each other along the seams between them, so that a whole neckline or hem is seen at once.

use kurbo::{Affine, Point};

use super::notches::{NotchPlace, PlacedNotch};
use super::sewing::{EdgeEnd, Sewing, SidePart};
use crate::base::tolerance;
use crate::compute::{EdgeShape, Model, Run, RunPart, run_of};
use crate::curves::{Pt, Rigid};

/// A piece in the picture.
#[derive(Clone, Debug, PartialEq)]
pub struct RolledPiece {
    /// The piece, as its place among the plan's frames.
    pub frame: usize,
    /// Whether it belongs to side two, which is rolled.
    pub rolled: bool,
    /// From its frame to the picture, which is the frame of the piece of side one that is touched.
    pub motion: Affine,
}

/// A notch as both sides have it.
#[derive(Clone, Debug, PartialEq)]
pub struct RolledNotch {
    /// Its name; empty for a mark that the program makes.
    pub name: String,
    /// Sewn from the start of the seam on both sides, mm.
    pub places: [f64; 2],
    /// In the frames of their pieces.
    pub points: [Option<Point>; 2],
    /// By how much it lies farther on side one, mm: what is to be eased in until there.
    pub gap: f64,
}

/// A seam that is rolled.
#[derive(Clone, Debug, PartialEq)]
pub struct Rolled {
    /// All pieces of both sides.
    pub pieces: Vec<RolledPiece>,
    /// Where both sides touch, sewn from the start, mm: each side is touched no farther than its end.
    pub at: [f64; 2],
    /// Their sewn lengths, mm.
    pub lengths: [f64; 2],
    /// The point where they touch.
    pub contact: Point,
    /// Notches that both sides have.
    pub notches: Vec<RolledNotch>,
}

/// A side of the seam.
struct Track<'a> {
    model: &'a Model,
    case: usize,
    run: Run,
    parts: &'a [Option<SidePart>],
}

/// An edge where it is touched.
struct Touch {
    part: usize,
    at: Pt<f64>,
    way: Pt<f64>,
    /// Whether the inside is on the right of the way.
    right: bool,
}

/// Rolls a seam to a sewn distance from its start; none where a side cannot be computed or is not an edge there.
pub fn roll(
    model: &Model,
    case: usize,
    seam: usize,
    sewing: &Sewing,
    notches: &[PlacedNotch],
    to: f64,
) -> Option<Rolled> {
    let plan = model.plan.seams.get(seam)?;
    let track = |side: usize| {
        let run = run_of(model, &model.plan, case, plan.sides[side])?;
        Some(Track { model, case, run, parts: sewing.parts(seam, side) })
    };
    let (one, two) = (track(0)?, track(1)?);
    let lengths = [one.run.sewn_length(), two.run.sewn_length()];
    let at = lengths.map(|l| to.clamp(0.0, l));
    let (a, b) = (one.touch(at[0])?, two.touch(at[1])?);
    let over = Rigid::laying(b.at, b.at + b.way, a.at, a.at + a.way, a.right == b.right)?;
    let mut pieces: Vec<RolledPiece> = Vec::new();
    let mut add = |placed: Vec<(usize, Rigid<f64>)>, rolled: bool| {
        for (frame, motion) in placed {
            let motion = affine(&motion);
            let piece = RolledPiece { frame, rolled, motion };
            if !pieces.contains(&piece) {
                pieces.push(piece);
            }
        }
    };
    let still = Rigid::shifting(Pt::new(0.0, 0.0));
    add(one.joined(a.part, still), false);
    add(two.joined(b.part, over), true);
    let both = notches.iter().filter(|n| n.seam == seam).filter_map(|n| {
        let place = |side: usize| n.sides[side].as_ref().and_then(|s| s.as_ref().ok()).copied();
        let (p, q): (NotchPlace, NotchPlace) = (place(0)?, place(1)?);
        let points = [p.at.map(Pt::value), q.at.map(Pt::value)];
        Some(RolledNotch { name: n.name.to_string(), places: [p.sewn, q.sewn], points, gap: p.sewn - q.sewn })
    });
    let notches = both.collect();
    Some(Rolled { pieces, at, lengths, contact: a.at.value(), notches })
}

fn affine(motion: &Rigid<f64>) -> Affine {
    let (o, x, y) =
        (motion.of(Pt::new(0.0, 0.0)), motion.of_vector(Pt::new(1.0, 0.0)), motion.of_vector(Pt::new(0.0, 1.0)));
    Affine::new([x.x, x.y, y.x, y.y, o.x, o.y])
}

impl Track<'_> {
    fn edge(&self, part: usize) -> Option<&EdgeShape<f64>> {
        match self.run.parts.get(part)? {
            RunPart::Edge(edge, ..) => Some(edge),
            RunPart::Strip(_) => None,
        }
    }

    fn touch(&self, sewn: f64) -> Option<Touch> {
        let (part, rest) = self.run.part_at(sewn, sewn <= tolerance::EQUAL)?;
        let edge = self.edge(part)?;
        let flat = edge.flat_place(rest).ok()?;
        let end = flat >= edge.curve.length() - tolerance::EQUAL;
        let way = if end { edge.curve.end_tangent() } else { edge.curve.tangent_at(flat) }?;
        Some(Touch { part, at: edge.curve.point_at(flat)?, way, right: self.right(edge)? })
    }

    /// Whether the inside lies on the right as an edge runs.
    fn right(&self, edge: &EdgeShape<f64>) -> Option<bool> {
        let home = edge.home?;
        let sense = self.model.item(self.case, self.model.plan.all_frames.get(home.frame as usize)?.sense)?.real()?;
        Some((sense > 0.0) != home.against)
    }

    /// All pieces of the side, the one that is touched moved by `first`, the others beside it.
    fn joined(&self, touched: usize, first: Rigid<f64>) -> Vec<(usize, Rigid<f64>)> {
        let frame = |part: usize| self.parts.get(part).copied().flatten().map(|p| p.0);
        let mut out: Vec<(usize, Rigid<f64>)> = frame(touched).map(|f| (f, first)).into_iter().collect();
        let mut last = first;
        for part in touched..self.run.parts.len().saturating_sub(1) {
            let Some(lay) = self.beside(part, part + 1, true) else { break };
            last = lay.then(&last);
            out.extend(frame(part + 1).map(|f| (f, last)));
        }
        let mut last = first;
        for part in (1..=touched).rev() {
            let Some(lay) = self.beside(part, part - 1, false) else { break };
            last = lay.then(&last);
            out.extend(frame(part - 1).map(|f| (f, last)));
        }
        out
    }

    /// From the frame of a part's piece to that of its neighbour `a`: their corners lie on each other, and so do the edges that are sewn
    /// there; `after`: the part comes after its neighbour.
    fn beside(&self, a: usize, b: usize, after: bool) -> Option<Rigid<f64>> {
        let end = |part: usize, run_end: bool| {
            let (frame, edge, against, partial) = (*self.parts.get(part)?)?;
            (!partial).then_some(EdgeEnd { frame, edge, at_end: run_end != against })
        };
        let (on_a, on_b) = (end(a, after)?, end(b, !after)?);
        if on_a.frame == on_b.frame {
            return Some(Rigid::shifting(Pt::new(0.0, 0.0)));
        }
        let (corner_a, way_a, right_a) = self.leaving(on_a)?;
        let (corner_b, way_b, right_b) = self.leaving(on_b)?;
        Rigid::laying(corner_b, corner_b + way_b, corner_a, corner_a + way_a, right_a == right_b)
    }

    /// The edge across the corner at an end: the corner, the direction in which it leaves it, whether the inside is on its right.
    fn leaving(&self, end: EdgeEnd) -> Option<(Pt<f64>, Pt<f64>, bool)> {
        let plan = &self.model.plan.frames()[end.frame];
        let across = end.across(plan.edges.len());
        let edge = self.model.item(self.case, plan.edges[across.edge])?.edge()?.clone();
        let right = self.right(&edge)?;
        match across.at_end {
            true => Some((edge.curve.end(), -edge.curve.end_tangent()?, !right)),
            false => Some((edge.curve.start(), edge.curve.start_tangent()?, right)),
        }
    }
}
