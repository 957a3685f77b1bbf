//! Match marks of strips: how far along a strip the marks of its seams lie.

use super::{Finished, NotchPlace, Sewing};
use crate::base::tolerance;
use crate::compute::{Def, Model, NodeId, RunPart, run_of};
use crate::language::Op;
use crate::texts::t;

/// A mark on a strip in one case.
#[derive(Clone, Debug, PartialEq)]
pub struct StripMark {
    /// The seam.
    pub seam: usize,
    /// What it is.
    pub kind: StripMarkKind,
    /// Its distance from the start of the finished strip, mm.
    pub at: f64,
}

/// What a mark on a strip is.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum StripMarkKind {
    /// The seam starts there.
    Start,
    /// The seam ends there.
    End,
    /// A notch of this name.
    Notch(String),
    /// Two pieces of the other side meet there.
    Meeting(String),
    /// A stretch of the seam ends there; which one, from 1.
    Stretch(usize),
}

/// How a seam takes a strip.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Taken {
    /// The seam.
    seam: usize,
    /// Its side.
    side: usize,
    /// The part of the side.
    part: usize,
    /// How many times that part makes the strip; `None` where the seam takes another length than a whole part of it.
    times: Option<u32>,
}

/// The marks of a strip, given by the node of its length, in a case: in the order of their distance.
///
/// A seam takes the strip, or a whole part of it (`strip.band / 2`). The strip then starts where the seam does; where the seam is a
/// half of the garment the strip goes back along the other half, mirrored, and ends where it started.
pub fn strip_marks(model: &Model, finished: &Finished, case: usize, strip: NodeId) -> Vec<StripMark> {
    let mut out = Vec::new();
    for taken in takers(model, strip) {
        let Some(times) = taken.times else { continue };
        let seam = &model.plan.seams[taken.seam];
        let Some(run) = run_of(model, &model.plan, case, seam.sides[taken.side]) else { continue };
        let Some(RunPart::Strip(length)) = run.parts.get(taken.part) else { continue };
        let before: f64 = run.parts[..taken.part].iter().map(RunPart::sewn_length).sum();
        let mut told: Vec<(StripMarkKind, f64)> =
            vec![(StripMarkKind::Start, before), (StripMarkKind::End, before + length)];
        for notch in finished.notches[case].iter().filter(|n| n.seam == taken.seam) {
            let Some(Ok(place)) = &notch.sides[taken.side] else { continue };
            told.push((kind(model, finished, case, (taken, place), &notch.name), place.sewn));
        }
        let stretches = seam.stretches.iter().enumerate();
        told.extend(stretches.filter_map(|(i, stretch)| {
            let place = model.item(case, stretch.ends[taken.side]?)?.real()?;
            Some((StripMarkKind::Stretch(i + 1), place))
        }));
        for (kind, sewn) in told {
            let at = sewn - before;
            if at < -tolerance::EQUAL || at > length + tolerance::EQUAL {
                continue;
            }
            for turn in 0..times {
                let start = f64::from(turn) * length;
                let at = if turn % 2 == 0 { start + at } else { start + length - at };
                let is_known = |m: &StripMark| (m.at - at).abs() <= tolerance::ON_EDGE && m.seam == taken.seam;
                // Where both halves meet there is one mark, and a named one goes before what the program sees itself.
                if !out.iter().any(is_known) {
                    out.push(StripMark { seam: taken.seam, kind: kind.clone(), at });
                }
            }
        }
    }
    out.sort_by(|a, b| (a.seam, a.at).partial_cmp(&(b.seam, b.at)).unwrap_or(std::cmp::Ordering::Equal));
    out
}

/// The seams of a view that take a strip by a length of which its marks cannot be told, by name.
pub fn unmarked(model: &Model, strip: NodeId) -> Vec<String> {
    let of = takers(model, strip).into_iter().filter(|t| t.times.is_none());
    of.map(|t| model.plan.seams[t.seam].name.to_string()).collect()
}

/// The seams of the view that take a strip, in the order of the draft.
pub fn seams_of_strip(model: &Model, strip: NodeId) -> Vec<usize> {
    let mut seams: Vec<usize> = takers(model, strip).into_iter().map(|t| t.seam).collect();
    seams.dedup();
    seams
}

/// Whether a seam of the view is to stretch the strip: it is the shorter side.
pub fn is_stretched(model: &Model, strip: NodeId) -> bool {
    takers(model, strip).iter().any(|t| {
        let stretches = &model.plan.seams[t.seam].stretches;
        stretches.iter().any(|s| match &s.fit {
            Some(crate::compute::Fit::Times(side, ..)) => {
                let shorter = usize::from(*side == crate::document::Side::Two);
                shorter == t.side && shortens(model, t.seam, t.side)
            }
            _ => false,
        })
    })
}

/// Whether a side is shorter than its mate in some case.
fn shortens(model: &Model, seam: usize, side: usize) -> bool {
    let sides = model.plan.seams[seam].sides;
    let of = |case: usize, side: usize| model.item(case, sides[side]).and_then(|i| i.real());
    (0..model.cases.len())
        .any(|case| of(case, side).zip(of(case, 1 - side)).is_some_and(|(own, other)| own < other - tolerance::EQUAL))
}

/// Where seams of the view take a strip.
fn takers(model: &Model, strip: NodeId) -> Vec<Taken> {
    let mut out = Vec::new();
    for (seam, plan) in model.plan.own_seams() {
        for side in 0..2 {
            let Def::Side(runs) = &model.plan.nodes[plan.sides[side] as usize].def else { continue };
            for (part, run) in runs.iter().enumerate() {
                let mut names = false;
                run.program.root.each(&mut |op| names |= matches!(op, Op::Load(node) if *node == strip));
                if names {
                    out.push(Taken { seam, side, part, times: times(&run.program.root, strip) });
                }
            }
        }
    }
    out
}

/// How many times what a formula gives makes the strip.
fn times(op: &Op, strip: NodeId) -> Option<u32> {
    let share = share(op, strip)?;
    let times = 1.0 / share;
    let whole = times.round();
    let is_whole = (times - whole).abs() <= tolerance::EQUAL && (1.0..=f64::from(u8::MAX)).contains(&whole);
    is_whole.then_some(whole as u32)
}

/// The part of the strip that a formula takes, where it is nothing but that.
fn share(op: &Op, strip: NodeId) -> Option<f64> {
    match op {
        Op::Load(node) => (*node == strip).then_some(1.0),
        Op::Divide(a, b, _) => Some(share(a, strip)? / constant(b)?),
        Op::Multiply(a, b) => match share(a, strip) {
            Some(share) => Some(share * constant(b)?),
            None => Some(constant(a)? * share(b, strip)?),
        },
        _ => None,
    }
}

/// A number that hangs on nothing.
fn constant(op: &Op) -> Option<f64> {
    match op {
        Op::Constant(value) => Some(*value),
        Op::Divide(a, b, _) => Some(constant(a)? / constant(b)?),
        Op::Multiply(a, b) => Some(constant(a)? * constant(b)?),
        _ => None,
    }
}

/// What a notch of a strip is: one that has a name, or what the program saw on the other side.
fn kind(
    model: &Model,
    finished: &Finished,
    case: usize,
    (taken, place): (Taken, &NotchPlace),
    name: &str,
) -> StripMarkKind {
    if !name.is_empty() {
        return StripMarkKind::Notch(name.to_owned());
    }
    StripMarkKind::Meeting(meeting(model, &finished.sewing, case, taken, place.sewn).unwrap_or_default())
}

/// The pieces that meet on the other side of a seam at about this place of this side.
fn meeting(model: &Model, sewing: &Sewing, case: usize, taken: Taken, sewn: f64) -> Option<String> {
    let seam = &model.plan.seams[taken.seam];
    let run = |side: usize| run_of(model, &model.plan, case, seam.sides[side]);
    let (own, other) = (run(taken.side)?.sewn_length(), run(1 - taken.side)?);
    let joints = other.joints();
    // The sides may be of different length; the nearest corner by its share of the whole is meant.
    let share = |at: f64, whole: f64| if whole > 0.0 { at / whole } else { 0.0 };
    let off = |joint: f64| (share(joint, other.sewn_length()) - share(sewn, own)).abs();
    let nearest = (0..joints.len()).min_by(|a, b| off(joints[*a]).total_cmp(&off(joints[*b])))?;
    let name = |part: usize| {
        let (frame, edge, ..) = (*sewing.parts(taken.seam, 1 - taken.side).get(part)?)?;
        let frame = &model.plan.frames()[frame];
        let edge = &model.plan.nodes[*frame.edges.get(edge)? as usize].part.edge;
        Some((frame.name.to_string(), edge.to_string()))
    };
    let ((a, edge_a), (b, edge_b)) = (name(nearest)?, name(nearest + 1)?);
    Some(match a == b {
        true => t!("list-and", first = format!("{a} {edge_a}"), last = edge_b),
        false => t!("list-and", first = a, last = b),
    })
}
