//! Lines that run over seams: where corners meet through seams between two free edges, they must run on or be declared.
//!
//! Walks from a free edge over the seams at its corner to the next free edge (front, yoke, back …) and sums the corners'
//! angles. Corners that are sewn all round and seams that end within another's run come with the order on truing.

use std::collections::BTreeMap;

use super::tally::Tally;
use super::{Limits, judged};
use crate::base::{Code, Finding, tolerance};
use crate::compute::{Def, Model, NodeId};
use crate::document::Draft;
use crate::language::{Function, Op};

/// An end of an edge: the edge's sewn node, and whether it is its end (else its start).
type EdgeEnd = (NodeId, bool);

/// A corner of a piece: the edge that ends there and the one that starts there.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct Corner {
    frame: usize,
    before: NodeId,
    after: NodeId,
}

pub(super) fn check(draft: &Draft, model: &Model, limits: &Limits) -> Vec<Finding> {
    let ends = seam_ends(model);
    let mut out = Vec::new();
    let mut seen: Vec<Vec<(NodeId, NodeId)>> = Vec::new();
    for corner in corners(model) {
        for free_first in [true, false] {
            let (free, sewn) = if free_first {
                ((corner.before, true), (corner.after, false))
            } else {
                ((corner.after, false), (corner.before, true))
            };
            if is_sewn(&ends, free.0) {
                continue;
            }
            let Some(chain) = walk(model, &ends, corner, sewn) else { continue };
            let mut key: Vec<(NodeId, NodeId)> = chain.corners.iter().map(|c| (c.before, c.after)).collect();
            key.sort_unstable();
            if seen.contains(&key) {
                continue;
            }
            seen.push(key);
            out.extend(judge(draft, model, limits, free.0, &chain));
        }
    }
    out
}

/// Corners between two free edges, and the seams between them.
struct Chain {
    corners: Vec<Corner>,
    seams: Vec<usize>,
    last_free: NodeId,
}

/// Where each end of an edge is sewn at the end of a seam: seam, side, whether at the seam's end.
type SeamEnds = BTreeMap<EdgeEnd, (usize, usize, bool)>;

/// The edge that a side's formula names whole, and whether it runs the other way.
fn whole_edge(op: &Op) -> Option<(NodeId, bool)> {
    match op {
        Op::Load(node) => Some((*node, false)),
        Op::Call(Function::Reversed, args, _) => args.first().and_then(whole_edge).map(|(n, r)| (n, !r)),
        _ => None,
    }
}

fn runs_of(model: &Model, seam: usize, side: usize) -> Vec<Option<(NodeId, bool)>> {
    match &model.plan.nodes[model.plan.seams[seam].sides[side] as usize].def {
        Def::Side(runs) => runs.iter().map(|r| whole_edge(&r.program.root)).collect(),
        _ => Vec::new(),
    }
}

fn seam_ends(model: &Model) -> SeamEnds {
    let mut out = BTreeMap::new();
    for seam in 0..model.plan.seams.len() {
        for side in 0..2 {
            let runs = runs_of(model, seam, side);
            let count = runs.len();
            for (i, run) in runs.into_iter().enumerate() {
                let Some((node, reversed)) = run else { continue };
                // Ends inside the run are sewn too, but no corner opens there.
                if i == 0 {
                    out.entry((node, reversed)).or_insert((seam, side, false));
                }
                if i + 1 == count {
                    out.entry((node, !reversed)).or_insert((seam, side, true));
                }
                out.entry((node, false)).or_insert((seam, usize::MAX, false));
                out.entry((node, true)).or_insert((seam, usize::MAX, false));
            }
        }
    }
    out
}

fn is_sewn(ends: &SeamEnds, node: NodeId) -> bool {
    ends.contains_key(&(node, false)) || ends.contains_key(&(node, true))
}

fn corners(model: &Model) -> Vec<Corner> {
    let mut out = Vec::new();
    for (frame, plan) in model.plan.frames.iter().enumerate() {
        let n = plan.edges.len();
        for i in 0..n {
            out.push(Corner { frame, before: plan.edges[i], after: plan.edges[(i + 1) % n] });
        }
    }
    out
}

/// From one corner over its sewn edge end, corner by corner, until a free edge is reached.
fn walk(model: &Model, ends: &SeamEnds, start: Corner, sewn: EdgeEnd) -> Option<Chain> {
    let all = corners(model);
    let mut chain = Chain { corners: vec![start], seams: Vec::new(), last_free: 0 };
    let mut at = sewn;
    for _ in 0..=all.len() {
        let &(seam, side, at_end) = ends.get(&at)?;
        if side == usize::MAX {
            return None;
        }
        let partner = runs_of(model, seam, 1 - side);
        let (node, reversed) = (if at_end { partner.last() } else { partner.first() }).copied().flatten()?;
        let end: EdgeEnd = (node, at_end != reversed);
        let corner = *all.iter().find(|c| if end.1 { c.before == end.0 } else { c.after == end.0 })?;
        if chain.corners.contains(&corner) {
            return None;
        }
        chain.corners.push(corner);
        chain.seams.push(seam);
        let other: EdgeEnd = if end.1 { (corner.after, false) } else { (corner.before, true) };
        if !is_sewn(ends, other.0) {
            chain.last_free = other.0;
            return Some(chain);
        }
        at = other;
    }
    None
}

/// The inside angle of a corner in one case, radians.
fn angle(model: &Model, case: usize, corner: &Corner) -> Option<f64> {
    let edge = |n: NodeId| model.item(case, n).and_then(|i| i.edge().cloned());
    let (before, after) = (edge(corner.before)?, edge(corner.after)?);
    let (a, b) = (before.curve.end_tangent()?, after.curve.start_tangent()?);
    let sense = model.item(case, model.plan.frames[corner.frame].sense)?.real()?;
    let turn = libm::atan2(a.cross(b), a.dot(b)) * sense;
    Some(std::f64::consts::PI - turn)
}

fn judge(draft: &Draft, model: &Model, limits: &Limits, first_free: NodeId, chain: &Chain) -> Option<Finding> {
    let plan = &model.plan;
    let point_of = |c: &Corner| match &plan.nodes[c.after as usize + 1].def {
        Def::Flat { points, .. } => plan.nodes[points[0] as usize].part.name.to_string(),
        _ => String::new(),
    };
    let points: Vec<String> = chain.corners.iter().map(point_of).collect();
    let declared =
        draft.joints.iter().find(|j| j.corners.len() == points.len() && points.iter().all(|p| j.corners.contains(p)));
    let meant = match declared.map(|j| j.meant.trim()) {
        None => std::f64::consts::PI,
        Some("corner" | "") => return None,
        Some(text) => {
            super::limits::literal(text, crate::language::Kind::Angle, crate::compute::unit_of(draft)).ok()?
        }
    };
    let name = |n: NodeId| plan.nodes[n as usize].part.name.to_string();
    let seams: Vec<&str> = chain.seams.iter().map(|s| &*plan.seams[*s].name).collect();
    let piece = &plan.nodes[first_free as usize].part;
    let finding = Finding::new(Code::JointBent)
        .piece(&*piece.piece)
        .edge(&*piece.edge)
        .seam(seams.first().copied().unwrap_or(""))
        .at(points.first().cloned().unwrap_or_default())
        .word("seam", format!("seam {}", seams.join(", ")))
        .word("lines", format!("{} – {}", name(first_free), name(chain.last_free)));
    let mut tally = Tally::new(finding, &[("angle", "deg"), ("meant", "deg"), ("limit", "deg"), ("gap", "mm")]);
    for (case, size, _) in judged(model) {
        let angles: Option<Vec<f64>> = chain.corners.iter().map(|c| angle(model, case, c)).collect();
        let Some(angles) = angles else { continue };
        let sum: f64 = angles.iter().sum();
        let gap = tolerance::limit::JOINT_REACH * libm::sin((sum - meant).abs().min(std::f64::consts::FRAC_PI_2));
        if (sum - meant).abs() > limits.joint_angle || gap > limits.joint_gap {
            tally.add(size, &[sum.to_degrees(), meant.to_degrees(), limits.joint_angle.to_degrees(), gap]);
        }
    }
    tally.done(|f, _| f)
}
