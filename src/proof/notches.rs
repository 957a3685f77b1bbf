//! Notches: that they have a place, meet their mates, keep off the stitching, and tell seams apart.

use std::collections::BTreeMap;

use super::judged;
use super::tally::Tally;
use crate::base::{Code, Finding, tolerance};
use crate::compute::{Model, SeamPlan};
use crate::finish::{Finished, NotchFault, PlacedNotch};
use crate::texts::{decimal, owned, say};

pub(super) fn check(model: &Model, finished: &Finished) -> Vec<Finding> {
    let mut out = Vec::new();
    for (i, seam) in model.plan.seams.iter().enumerate() {
        for (k, notch) in seam.notches.iter().enumerate() {
            faults(model, finished, (i, seam), (k, &notch.name), &mut out);
        }
        closure(model, finished, i, seam, &mut out);
    }
    near(model, finished, &mut out);
    out.extend(alike(model, finished));
    out
}

fn said(seam: &SeamPlan) -> (String, String) {
    (format!("seam.{}", seam.name), say!("found-seam", seam = seam.name.to_string()))
}

fn side_word(side: usize) -> String {
    if side == 0 { say!("side-word-one") } else { say!("side-word-two") }
}

/// The notch with this place among those that the draft tells of a seam.
fn told(finished: &Finished, case: usize, seam: usize, k: usize) -> Option<&PlacedNotch> {
    finished.notches.get(case)?.iter().filter(|n| n.seam == seam).nth(k)
}

fn faults(
    model: &Model,
    finished: &Finished,
    (i, seam): (usize, &SeamPlan),
    (k, name): (usize, &str),
    out: &mut Vec<Finding>,
) {
    let (at, words) = said(seam);
    let finding = |code: Code| {
        Finding::new(code).seam(&*seam.name).at(at.clone()).word("notch", name).word("seam", words.clone())
    };
    for side in 0..2 {
        let side_word = side_word(side);
        // One finding for each kind of trouble.
        let mut troubles: Vec<(String, Tally)> = Vec::new();
        for (case, size, _) in judged(model) {
            let Some(Some(Err(fault))) = told(finished, case, i, k).map(|n| n.sides[side].as_ref()) else { continue };
            let (problem, numbers) = match fault {
                NotchFault::Beyond(place, length) => (say!("notch-beyond"), [place - length.clamp(0.0, *length), 0.0]),
                NotchFault::InMouth(dart) => (say!("notch-in-mouth", dart), [0.0, 0.0]),
                NotchFault::Away(distance) => (say!("notch-point-off"), [*distance, 0.0]),
                NotchFault::OtherPiece => (say!("notch-other-piece"), [0.0, 0.0]),
                NotchFault::NotComputed => continue,
            };
            let known = troubles.iter().position(|(p, _)| *p == problem);
            let place = known.unwrap_or_else(|| {
                let finding = finding(Code::NotchOff).word("side", side_word.clone()).word("problem", problem.clone());
                troubles.push((problem, Tally::new(finding, &[("by", "mm")])));
                troubles.len() - 1
            });
            troubles[place].1.add(size, &numbers[..1]);
        }
        for (_, tally) in troubles {
            out.extend(tally.done(|mut f, numbers| {
                if numbers[0].abs() > 0.0
                    && let Some((_, problem)) = f.words.iter_mut().find(|(n, _)| *n == "problem")
                {
                    let by = owned(|| decimal(&format!("{:.1}", numbers[0].abs())));
                    *problem = say!("notch-away", problem = &*problem, by);
                }
                f
            }));
        }
    }
    let numbers = [("told", "mm"), ("meets", "mm"), ("limit", "mm"), ("apart", "mm")];
    let mut tally = Tally::new(finding(Code::NotchApart), &numbers);
    let mut of_side = 1;
    for (case, size, _) in judged(model) {
        let Some(notch) = told(finished, case, i, k) else { continue };
        let Some((side, meets)) = notch.meets else { continue };
        let Some(Some(Ok(place))) = notch.sides.get(side) else { continue };
        of_side = side;
        let apart = place.sewn - meets;
        if apart.abs() > finished.limits.notch + tolerance::EQUAL {
            tally.add(size, &[place.sewn, meets, finished.limits.notch, apart]);
        }
    }
    out.extend(tally.done(|f, _| f.word("side", side_word(of_side))));
}

/// A closure longer than its seam.
fn closure(model: &Model, finished: &Finished, i: usize, seam: &SeamPlan, out: &mut Vec<Finding>) {
    if seam.closure.is_none() {
        return;
    }
    let (at, words) = said(seam);
    let finding = Finding::new(Code::ClosureOff).seam(&*seam.name).at(at).word("seam", words);
    let mut tally = Tally::new(finding, &[("length", "mm"), ("at", "mm")]);
    for (case, size, _) in judged(model) {
        let Some(notch) = told(finished, case, i, seam.notches.len()) else { continue };
        let beyond = notch.sides.iter().flatten().find_map(|s| match s {
            Err(NotchFault::Beyond(place, length)) => Some((*place, *length)),
            _ => None,
        });
        if let Some((place, length)) = beyond {
            tally.add(size, &[length, place]);
        }
    }
    out.extend(tally.done(|f, _| f));
}

/// Notches that are cut too near to the stitching.
fn near(model: &Model, finished: &Finished, out: &mut Vec<Finding>) {
    let plan = &model.plan;
    let limit = finished.limits.notch_margin;
    for (frame, of) in plan.frames().iter().enumerate().filter(|(_, f)| f.is_piece) {
        let mut tallies: BTreeMap<(usize, String, usize), Tally> = BTreeMap::new();
        for (case, size, _) in judged(model) {
            let Some(Some(piece)) = finished.cases[case].get(frame) else { continue };
            if !piece.has_allowances {
                continue;
            }
            for notch in piece.notches.iter().filter(|n| n.allowance > 0.0) {
                let left = notch.allowance - notch.depth;
                if left >= limit - tolerance::EQUAL {
                    continue;
                }
                let seam = &plan.seams[notch.seam];
                let (at, words) = said(seam);
                let edge = plan.nodes[of.edges[notch.edge] as usize].part.name.to_string();
                let name = if notch.name.is_empty() { say!("notch-made") } else { notch.name.to_string() };
                let tally = tallies.entry((notch.seam, notch.name.to_string(), notch.edge)).or_insert_with(|| {
                    let finding =
                        Finding::new(Code::NotchNear).piece(&*of.name).edge(edge.rsplit('.').next().unwrap_or(""));
                    let finding = finding.seam(&*seam.name).at(at).word("seam", words);
                    let finding = finding.word("notch", name).word("edge", edge.clone());
                    Tally::new(finding, &[("depth", "mm"), ("allowance", "mm"), ("limit", "mm"), ("left", "mm")])
                });
                tally.add(size, &[notch.depth, notch.allowance, limit, left]);
            }
        }
        out.extend(tallies.into_values().filter_map(|t| t.done(|f, _| f)));
    }
}

/// Seams that one could take for each other: of one length, with the same notches. Each group is told once.
fn alike(model: &Model, finished: &Finished) -> Vec<Finding> {
    let plan = &model.plan;
    let same = |a: f64, b: f64| (a - b).abs() <= finished.limits.notch;
    // In one case: what a seam shows on side one, if both sides show the same.
    let shows = |case: usize, seam: usize| -> Option<(f64, Vec<(f64, u32)>)> {
        let notches = finished.notches.get(case)?.iter().filter(|n| n.seam == seam && !n.name.is_empty());
        let marks: Option<Vec<(f64, u32)>> =
            notches.map(|n| n.sides[0].as_ref()?.as_ref().ok().map(|p| (p.sewn, n.strokes))).collect();
        let length = model.item(case, plan.seams[seam].sides[0])?.real()?;
        Some((length, marks?))
    };
    let pieces = |seam: usize| -> Vec<usize> {
        (0..2).flat_map(|side| finished.sewing.parts(seam, side)).flatten().map(|(frame, ..)| *frame).collect()
    };
    let mut group_of: Vec<usize> = (0..plan.seams.len()).collect();
    for b in 0..plan.seams.len() {
        for a in 0..b {
            // Parts of one seam that are told besides it are no other seam.
            let overlap = pieces(a).iter().any(|p| pieces(b).contains(p)) && shares_an_edge(finished, a, b);
            let alike_in = |case: usize| match (shows(case, a), shows(case, b)) {
                (Some((la, na)), Some((lb, nb))) => {
                    same(la, lb)
                        && !na.is_empty()
                        && na.len() == nb.len()
                        && na.iter().zip(&nb).all(|(x, y)| same(x.0, y.0) && x.1 == y.1)
                }
                _ => false,
            };
            let cases: Vec<usize> = judged(model).map(|(case, _, _)| case).collect();
            if !overlap && !cases.is_empty() && cases.iter().all(|c| alike_in(*c)) {
                group_of[b] = group_of[a];
                break;
            }
        }
    }
    let mut out = Vec::new();
    for (head, first) in plan.seams.iter().enumerate() {
        let members: Vec<&str> =
            (head..plan.seams.len()).filter(|s| group_of[*s] == head).map(|s| &*plan.seams[s].name).collect();
        if members.len() > 1 {
            let (at, _) = said(first);
            let finding = Finding::new(Code::SeamsAlike).seam(&*first.name).at(at);
            let mut finding = finding.word("seams", say!("notch-seams-alike", seams = members.join(", ")));
            finding.amounts.push(crate::base::Amount { name: "count", unit: "", by_size: vec![members.len() as f64] });
            out.push(finding);
        }
    }
    out
}

fn shares_an_edge(finished: &Finished, a: usize, b: usize) -> bool {
    let edges = |seam: usize| {
        (0..2)
            .flat_map(move |side| finished.sewing.parts(seam, side))
            .flatten()
            .map(|(f, e, ..)| (*f, *e))
            .collect::<Vec<_>>()
    };
    let of_a = edges(a);
    edges(b).iter().any(|e| of_a.contains(e))
}
