//! The odd size out: a corner or an edge that in one size is not what its neighbours suggest.
//!
//! A size is odd where it is farther from what its neighbours suggest than the limit, while without it they agree among
//! themselves. Only ranges of one axis are looked at, and only where nothing is graded by steps on purpose (`graded`).

use super::judged;
use super::tally::Tally;
use crate::base::{Code, Finding, tolerance};
use crate::compute::Model;
use crate::document::Draft;
use crate::finish::Limits;
use crate::texts::say;

/// Fewer sizes than this have no odd one.
const FEWEST: usize = 4;
/// The others count as agreeing when they are this many times nearer to each other than the odd one is to them.
const CLEAR: f64 = 3.0;

pub(super) fn check(draft: &Draft, model: &Model, limits: &Limits) -> Vec<Finding> {
    let mut out = Vec::new();
    if model.plan.cases.range < FEWEST || !draft.chart.cup.is_empty() || !draft.chart.length.is_empty() {
        return out;
    }
    let sizes: Vec<&str> = judged(model).map(|(_, size, _)| size).collect();
    let count = sizes.len();
    // How far apart sizes are, by the first row that grows: even steps where none does.
    let at = places(model, count);
    for (frame, piece) in draft.pieces.iter().enumerate() {
        let plan = &model.plan.frames()[frame];
        let n = plan.edges.len();
        let edge = |case: usize, e: usize| model.item(case, plan.edges[e]).and_then(|i| i.edge().cloned());
        for e in 0..n {
            let name = format!("{}.{}", piece.name, piece.edges[e].name);
            let lengths = (0..count).map(|c| edge(c, e).map(|s| s.sewn_length())).collect::<Option<Vec<_>>>();
            let finding = || Finding::new(Code::OddSize).piece(&piece.name).edge(&piece.edges[e].name).at(name.clone());
            let found = lengths.and_then(|l| odd(finding(), &sizes, &at, &l, limits.odd_length, ("mm", 1.0)));
            out.extend(found.map(|f| f.word("what", say!("odd-length", edge = name))));
            let corner = format!("{}.{}", piece.name, piece.edges[e].from);
            let sense = |c: usize| model.item(c, plan.sense).and_then(|i| i.real());
            let angle = |c: usize| {
                let (before, after) = (edge(c, (e + n - 1) % n)?, edge(c, e)?);
                let (a, b) = (before.curve.end_tangent()?, after.curve.start_tangent()?);
                Some(std::f64::consts::PI - libm::atan2(a.cross(b), a.dot(b)) * sense(c)?)
            };
            let angles = (0..count).map(angle).collect::<Option<Vec<_>>>();
            let finding = || Finding::new(Code::OddSize).piece(&piece.name).at(corner.clone());
            let degrees = 180.0 / std::f64::consts::PI;
            let found = angles.and_then(|a| odd(finding(), &sizes, &at, &a, limits.odd_angle, ("deg", degrees)));
            out.extend(found.map(|f| f.word("what", say!("odd-corner", corner))));
        }
    }
    out
}

/// Where the sizes stand on their axis: the numbers of the first row that grows all along.
fn places(model: &Model, count: usize) -> Vec<f64> {
    let rows = model.plan.nodes.iter().enumerate().filter(|(_, n)| n.part.name.starts_with("chart."));
    for (node, _) in rows {
        let values: Option<Vec<f64>> = (0..count).map(|c| model.item(c, node as u32).and_then(|i| i.real())).collect();
        if let Some(values) = values.filter(|v| v.windows(2).all(|p| p[1] > p[0] + tolerance::EQUAL)) {
            return values;
        }
    }
    (0..count).map(|i| i as f64).collect()
}

/// What two others say of a place, in a straight line through them.
fn line_through((xa, ya): (f64, f64), (xb, yb): (f64, f64), x: f64) -> f64 {
    ya + (yb - ya) * (x - xa) / (xb - xa)
}

fn odd(
    finding: Finding,
    sizes: &[&str],
    at: &[f64],
    values: &[f64],
    limit: f64,
    (unit, times): (&'static str, f64),
) -> Option<Finding> {
    let n = values.len();
    let mut tally = Tally::new(finding, &[("value", unit), ("expected", unit), ("limit", unit), ("off", unit)]);
    let suggested = |i: usize, without: usize| -> Option<f64> {
        // The nearest two on both sides, or on the one side there is, leaving one size out.
        let before = (0..i).rev().find(|k| *k != without);
        let after = (i + 1..n).find(|k| *k != without);
        let (a, b) = match (before, after) {
            (Some(a), Some(b)) => (a, b),
            (Some(a), None) => ((0..a).rev().find(|k| *k != without)?, a),
            (None, Some(b)) => (b, (b + 1..n).find(|k| *k != without)?),
            (None, None) => return None,
        };
        Some(line_through((at[a], values[a]), (at[b], values[b]), at[i]))
    };
    // The first and the last have neighbours on one side only: what they suggest is no more than a guess.
    for i in 1..n - 1 {
        let Some(expected) = suggested(i, i) else { continue };
        let off = values[i] - expected;
        if off.abs() <= limit + tolerance::EQUAL {
            continue;
        }
        // Without it the others agree: then it is the odd one, and not one next to it or a step of the grading.
        let rest = (0..n).filter(|k| *k != i).filter_map(|k| suggested(k, i).map(|s| (values[k] - s).abs()));
        let worst = rest.fold(0.0, f64::max);
        if worst * CLEAR <= off.abs() {
            tally.add(sizes[i], &[values[i] * times, expected * times, limit * times, off * times]);
        }
    }
    tally.done(|f, _| f)
}
