//! Folds: straight, what folds over lies on its target, edges cross a fold that is opened squarely.

use super::judged;
use super::tally::Tally;
use crate::base::{Code, Finding, tolerance};
use crate::compute::{FoldPlan, Model, NodeId};
use crate::curves::{Curve, Pt, Rigid};
use crate::document::Draft;
use crate::finish::Finished;

/// Places of a folded edge that are compared with its target.
const SAMPLES: u32 = 16;

pub(super) fn check(draft: &Draft, model: &Model, finished: &Finished) -> Vec<Finding> {
    let mut out = Vec::new();
    for (frame, piece) in draft.pieces.iter().enumerate() {
        let plan = &model.plan.frames()[frame];
        for fold in &plan.finishing.folds {
            straight(model, &piece.name, &fold.name, &fold.line, &mut out);
            lies(model, finished, &piece.name, fold, &mut out);
        }
        for edge in plan.finishing.cuts.iter().filter_map(|c| c.on_fold) {
            let node = plan.edges[edge];
            let name: std::sync::Arc<str> = piece.edges[edge].name.as_str().into();
            let before = out.len();
            straight(model, &piece.name, &name, &(name.clone(), node), &mut out);
            if out.len() == before {
                square(draft, model, finished, frame, edge, &mut out);
            }
        }
    }
    out
}

fn curve(model: &Model, case: usize, node: NodeId) -> Option<std::sync::Arc<Curve<f64>>> {
    Some(model.item(case, node)?.edge()?.curve.clone())
}

/// How far a line is from straight, mm.
fn bent_by(line: &Curve<f64>) -> f64 {
    let (from, to) = (line.start(), line.end());
    let Some(way) = (to - from).unit() else { return 0.0 };
    let at = |i: u32| line.point_at(line.length() * f64::from(i) / f64::from(SAMPLES));
    (0..=SAMPLES).filter_map(at).map(|p| (p - from).cross(way).abs()).fold(0.0, f64::max)
}

fn straight(model: &Model, piece: &str, fold: &str, line: &(std::sync::Arc<str>, NodeId), out: &mut Vec<Finding>) {
    let name = format!("{piece}.{}", line.0);
    let finding = Finding::new(Code::FoldBent).piece(piece).edge(&*line.0).at(format!("{piece}.{fold}"));
    let mut tally = Tally::new(finding.word("fold", format!("{piece}.{fold}")).word("line", name), &[("off", "mm")]);
    for (case, size, _) in judged(model) {
        let Some(line) = curve(model, case, line.1) else { continue };
        let off = bent_by(&line);
        if off > tolerance::PRINT {
            tally.add(size, &[off]);
        }
    }
    out.extend(tally.done(|f, _| f));
}

/// What is folded over a line must lie on its target, and end where that ends.
fn lies(model: &Model, finished: &Finished, piece: &str, fold: &FoldPlan, out: &mut Vec<Finding>) {
    if fold.onto.is_empty() {
        return;
    }
    let list = |names: &[(std::sync::Arc<str>, NodeId)]| names.iter().map(|n| &*n.0).collect::<Vec<_>>().join(", ");
    let name = format!("{piece}.{}", fold.name);
    let finding = Finding::new(Code::FoldApart).piece(piece).at(name.clone()).word("fold", name);
    let finding = finding.word("over", list(&fold.over)).word("onto", list(&fold.onto));
    let mut tally =
        Tally::new(finding, &[("over_length", "mm"), ("onto_length", "mm"), ("limit", "mm"), ("apart", "mm")]);
    for (case, size, _) in judged(model) {
        let Some(line) = curve(model, case, fold.line.1) else { continue };
        let Some(over) = Rigid::mirroring(line.start(), line.end()) else { continue };
        let all = |of: &[(std::sync::Arc<str>, NodeId)]| {
            of.iter().map(|(_, n)| curve(model, case, *n)).collect::<Option<Vec<_>>>()
        };
        let (Some(folded), Some(target)) = (all(&fold.over), all(&fold.onto)) else { continue };
        let folded: Vec<Curve<f64>> = folded.iter().map(|c| c.moved(&over)).collect();
        let target: Vec<Curve<f64>> = target.iter().map(|c| (**c).clone()).collect();
        let apart = far(&folded, &target).max(far(&target, &folded));
        if apart > finished.limits.seam + tolerance::EQUAL {
            let length = |of: &[Curve<f64>]| of.iter().map(Curve::length).sum();
            tally.add(size, &[length(&folded), length(&target), finished.limits.seam, apart]);
        }
    }
    out.extend(tally.done(|f, _| f));
}

/// The farthest that places of some curves lie from others, mm.
fn far(from: &[Curve<f64>], to: &[Curve<f64>]) -> f64 {
    let places = from
        .iter()
        .flat_map(|c| (0..=SAMPLES).filter_map(move |i| c.point_at(c.length() * f64::from(i) / f64::from(SAMPLES))));
    let near = |p: Pt<f64>| to.iter().map(|c| c.locate(p).distance).fold(f64::INFINITY, f64::min);
    places.map(near).fold(0.0, f64::max)
}

/// Edges that cross a fold which is opened out meet it squarely, unless the corner is declared.
fn square(draft: &Draft, model: &Model, finished: &Finished, frame: usize, edge: usize, out: &mut Vec<Finding>) {
    let plan = &model.plan.frames()[frame];
    let piece = &draft.pieces[frame];
    let n = plan.edges.len();
    for (corner, neighbour) in [(edge, (edge + n - 1) % n), ((edge + 1) % n, (edge + 1) % n)] {
        let point = &piece.edges[corner].from;
        let address = format!("{}.{point}", piece.name);
        if draft.joints.iter().any(|j| j.corners.len() == 1 && j.corners[0] == address) {
            continue;
        }
        let (fold_name, edge_name) = (&piece.edges[edge].name, &piece.edges[neighbour].name);
        let finding = Finding::new(Code::FoldNotSquare).piece(&piece.name).edge(edge_name).at(address.clone());
        let finding = finding
            .word("edge", format!("{}.{edge_name}", piece.name))
            .word("line", format!("{}.{fold_name}", piece.name));
        let mut tally = Tally::new(finding, &[("angle", "deg"), ("limit", "deg"), ("gap", "mm")]);
        for (case, size, _) in judged(model) {
            let (Some(fold), Some(other)) =
                (curve(model, case, plan.edges[edge]), curve(model, case, plan.edges[neighbour]))
            else {
                continue;
            };
            let ways = if neighbour == corner {
                fold.end_tangent().map(|w| -w).zip(other.start_tangent())
            } else {
                fold.start_tangent().zip(other.end_tangent().map(|w| -w))
            };
            let Some((a, b)) = ways else { continue };
            let angle = libm::atan2(a.cross(b).abs(), a.dot(b));
            let off = (angle - std::f64::consts::FRAC_PI_2).abs();
            let gap = tolerance::limit::JOINT_REACH * 2.0 * libm::sin(off).abs();
            if 2.0 * off > finished.limits.joint_angle + tolerance::EQUAL {
                tally.add(size, &[angle.to_degrees(), finished.limits.joint_angle.to_degrees(), gap]);
            }
        }
        out.extend(tally.done(|f, _| f));
    }
}
