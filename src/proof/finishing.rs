//! Cut lines, hems, marks, legs of darts: what came out of finishing.

use super::judged;
use super::publishing::without_value;
use super::tally::Tally;
use crate::base::{Code, Finding, tolerance};
use crate::compute::{AllowancePlan, Formula, Item, Model};
use crate::curves::Pt;
use crate::document::{Draft, Piece};
use crate::finish::{Finished, row_miss};
use crate::texts::{id, own, said, say};

pub(super) fn check(draft: &Draft, model: &Model, finished: &Finished) -> Vec<Finding> {
    let mut out = Vec::new();
    formulas(model, &mut out);
    for frame in 0..draft.pieces.len() {
        legs(draft, model, finished, frame, &mut out);
        cut_lines(model, finished, frame, &mut out);
        hems(model, finished, frame, &mut out);
        marks(draft, model, finished, frame, &mut out);
        darts(draft, model, finished, frame, &mut out);
    }
    out
}

/// Formulas that have no value in some size, and allowances below zero.
fn formulas(model: &Model, out: &mut Vec<Finding>) {
    let plan = &model.plan;
    let tell = |formula: &Formula, dress: &dyn Fn(Finding) -> Finding, out: &mut Vec<Finding>| {
        without_value(model, formula, dress, out);
    };
    for frame in plan.frames().iter().filter(|f| f.is_piece) {
        for (edge, formula) in frame.finishing.formulas() {
            let part = edge.map(|e| &plan.nodes[frame.edges[e] as usize].part);
            let name = part.map_or_else(|| frame.name.to_string(), |p| p.name.to_string());
            let edge = part.map_or("", |p| &*p.edge);
            tell(formula, &|f| f.piece(&*frame.name).edge(edge).at(name.clone()), out);
        }
        for allowance in &frame.finishing.allowances {
            let part = &plan.nodes[frame.edges[allowance.edge] as usize].part;
            let widths = std::iter::once(&allowance.width).chain(&allowance.to_width);
            let finding = Finding::new(Code::AllowanceBad).piece(&*frame.name).edge(&*part.edge).at(&*part.name);
            if let Some(turn_in) = &allowance.turn_in {
                let edge = say!("hem-second-turn", edge = part.name.to_string());
                below_zero(model, std::iter::once(turn_in), finding.clone().word("edge", edge), out);
            }
            below_zero(model, widths, finding.word("edge", &*part.name), out);
            second_turn(model, allowance, &part.name, out);
        }
    }
    for seam in &plan.seams {
        let at = format!("seam.{}", seam.name);
        let told = seam.notches.iter().flat_map(|n| std::iter::once(&n.at).chain(&n.other));
        for formula in told.chain(&seam.allowance).chain(&seam.closure) {
            tell(formula, &|f| f.seam(&*seam.name).at(at.clone()), out);
        }
        let finding = Finding::new(Code::AllowanceBad).seam(&*seam.name).at(at.clone());
        if let Some(allowance) = &seam.allowance {
            let edge = say!("found-seam", seam = seam.name.to_string());
            below_zero(model, std::iter::once(allowance), finding.word("edge", edge), out);
        }
    }
}

/// A second turn that is deeper than its hem.
fn second_turn(model: &Model, allowance: &AllowancePlan, name: &str, out: &mut Vec<Finding>) {
    let Some(turn_in) = &allowance.turn_in else { return };
    let real = |case: usize, f: &Formula| model.evaluate(&model.plan, case, f).ok()?.real();
    let deeper = |case: usize| {
        real(case, turn_in).zip(real(case, &allowance.width)).is_some_and(|(t, w)| t > w + tolerance::EQUAL)
    };
    let sizes: Vec<String> =
        judged(model).filter(|(case, ..)| deeper(*case)).map(|(_, size, _)| size.to_owned()).collect();
    if allowance.turns < 2 || !sizes.is_empty() {
        let problem = match allowance.turns {
            2 => say!("hem-turn-deep", name),
            _ => say!("hem-turn-in", name),
        };
        let finding = Finding { sizes, ..Finding::new(Code::PartMissing).at(name).word("problem", problem) };
        out.push(finding);
    }
}

/// Darts of which something lies outside their piece.
fn darts(draft: &Draft, model: &Model, finished: &Finished, frame: usize, out: &mut Vec<Finding>) {
    let (plan, piece) = (&model.plan.frames()[frame], &draft.pieces[frame]);
    for (dart, (node, _)) in piece.darts.iter().zip(&plan.mouths) {
        let name = format!("{}.{}", piece.name, dart.name);
        let finding = Finding::new(Code::MarkOutside).piece(&piece.name).at(name.clone());
        let finding = finding.word("mark", name).word("piece", piece.name.clone());
        let mut outside = Tally::new(finding, &[("distance", "mm")]);
        for (case, size, _) in judged(model) {
            let (Some(Some(made)), Some(Item::Mouth(mouth))) =
                (finished.cases[case].get(frame), model.item(case, *node))
            else {
                continue;
            };
            let legs = mouth.legs().into_iter().flat_map(|legs| legs.segments().collect::<Vec<_>>());
            let points = legs.flat_map(|leg| [0.25, 0.5, 0.75, 1.0].map(|t| kurbo::ParamCurve::eval(&leg, t)));
            let worst = points.map(|at| outside_by(&made.stitch, at)).fold(0.0, f64::max);
            if worst > finished.limits.seam {
                outside.add(size, &[worst]);
            }
        }
        out.extend(outside.done(|f, _| f));
    }
}

/// Widths below zero.
fn below_zero<'a>(model: &Model, widths: impl Iterator<Item = &'a Formula>, finding: Finding, out: &mut Vec<Finding>) {
    for formula in widths {
        let mut tally = Tally::new(finding.clone(), &[("width", "mm")]);
        for (case, size, _) in judged(model) {
            let width = model.evaluate(&model.plan, case, formula).ok().and_then(|i| i.real());
            if let Some(width) = width.filter(|w| *w < -tolerance::EQUAL) {
                tally.add(size, &[width]);
            }
        }
        out.extend(tally.done(|f, _| f));
    }
}

/// Legs that are not equally long, on paper as drawn.
fn legs(draft: &Draft, model: &Model, finished: &Finished, frame: usize, out: &mut Vec<Finding>) {
    let (piece, plan) = (&draft.pieces[frame], &model.plan.frames()[frame]);
    let limit = finished.limits.seam;
    for (dart, (node, _)) in piece.darts.iter().zip(&plan.mouths) {
        let name = format!("{}.{}", piece.name, dart.name);
        let finding =
            Finding::new(Code::DartLegs).piece(&piece.name).edge(&dart.on).at(name.clone()).word("dart", name);
        let numbers = [("one", "mm"), ("two", "mm"), ("limit", "mm"), ("difference", "mm")];
        let mut tally = Tally::new(finding, &numbers);
        for (case, size, _) in judged(model) {
            let Some(Item::Mouth(mouth)) = model.item(case, *node) else { continue };
            let legs = |tip: Pt<f64>| ((tip - mouth.first_foot).length(), (tip - mouth.second_foot).length());
            let off = |(one, two): &(f64, f64)| (one - two).abs();
            let tips = mouth.tip.into_iter().chain(mouth.other_tip).map(legs);
            if let Some(worst) =
                tips.max_by(|a, b| off(a).total_cmp(&off(b))).filter(|l| off(l) > limit + tolerance::EQUAL)
            {
                tally.add(size, &[worst.0, worst.1, limit, off(&worst)]);
            }
        }
        out.extend(tally.done(|f, _| f));
    }
}

fn cut_lines(model: &Model, finished: &Finished, frame: usize, out: &mut Vec<Finding>) {
    let plan = &model.plan.frames()[frame];
    let name = plan.name.to_string();
    let finding = |code: Code| Finding::new(code).piece(&*name).at(name.clone()).word("piece", name.clone());
    let mut crossing = Tally::new(finding(Code::CutCrosses), &[("right", "mm"), ("down", "mm")]);
    let mut failed = Tally::new(finding(Code::CutFailed), &[]);
    let mut problem = id!("cut-not-set-off");
    let mut untold: Vec<usize> = Vec::new();
    for (case, size, _) in judged(model) {
        let Some(Some(piece)) = finished.cases[case].get(frame) else {
            // What cannot be drawn at all is told where that comes from.
            if is_drawn(model, case, frame) {
                failed.add(size, &[]);
            }
            continue;
        };
        for edge in &piece.untold {
            if !untold.contains(edge) {
                untold.push(*edge);
            }
        }
        if let Some(cut) = piece.cuts.iter().find(|c| c.outline.is_none()) {
            problem = cut.problem.unwrap_or(problem);
            failed.add(size, &[]);
        }
        if let Some(at) = piece.cuts.iter().find_map(|c| c.trimmed) {
            crossing.add(size, &[at.x, at.y]);
        }
    }
    out.extend(failed.done(|f, _| f.word("problem", said(own(), problem, &[]))));
    out.extend(crossing.done(|f, numbers| f.word("where", near(numbers[0], numbers[1]))));
    for edge in untold {
        let part = &model.plan.nodes[plan.edges[edge] as usize].part;
        let finding = Finding::new(Code::AllowanceMissing).piece(&*name).edge(&*part.edge).at(&*part.name);
        out.push(finding.word("edge", &*part.name));
    }
}

/// Whether a piece has a closed outline whose darts are known.
fn is_drawn(model: &Model, case: usize, frame: usize) -> bool {
    let plan = &model.plan.frames()[frame];
    let edges: Option<Vec<_>> = plan.edges.iter().map(|e| model.item(case, *e)?.edge().cloned()).collect();
    let Some(edges) = edges.filter(|e| !e.is_empty()) else { return false };
    let closed = (0..edges.len()).all(|i| {
        let gap = edges[i].curve.end() - edges[(i + 1) % edges.len()].curve.start();
        gap.length() <= tolerance::ON_EDGE
    });
    closed && plan.mouths.iter().all(|(m, _)| model.item(case, *m).is_some())
}

fn hems(model: &Model, finished: &Finished, frame: usize, out: &mut Vec<Finding>) {
    let plan = &model.plan.frames()[frame];
    for (edge, node) in plan.edges.iter().enumerate() {
        let part = &model.plan.nodes[*node as usize].part;
        let finding = |code: Code| {
            Finding::new(code).piece(&*part.piece).edge(&*part.edge).at(&*part.name).word("edge", &*part.name)
        };
        let mut short = Tally::new(finding(Code::HemShort), &[("have", "mm"), ("needed", "mm"), ("short", "mm")]);
        let mut full = Tally::new(finding(Code::HemFull), &[("have", "mm"), ("needed", "mm"), ("full", "mm")]);
        for (case, size, _) in judged(model) {
            let Some(Some(piece)) = finished.cases[case].get(frame) else { continue };
            let Some(hem) = piece.cuts.first().and_then(|c| c.hems.iter().find(|h| h.edge == edge)) else { continue };
            let over = hem.have - hem.needed;
            if over < -finished.limits.seam - tolerance::EQUAL {
                short.add(size, &[hem.have, hem.needed, -over]);
            } else if hem.curved && over > finished.limits.seam + tolerance::EQUAL {
                full.add(size, &[hem.have, hem.needed, over]);
            }
        }
        out.extend(short.done(|f, _| f));
        out.extend(full.done(|f, _| f));
    }
}

fn near(right: f64, down: f64) -> String {
    say!("cut-near", right = format!("{right:.0}"), down = format!("{down:.0}"))
}

/// What takes cloth up in a piece, in words.
fn takes_of(piece: &Piece) -> String {
    match (piece.darts.is_empty(), piece.pleats.is_empty() && piece.tucks.is_empty()) {
        (false, false) => say!("takes-darts-and-pleats"),
        (false, true) => say!("takes-darts"),
        _ => say!("takes-pleats"),
    }
}

fn marks(draft: &Draft, model: &Model, finished: &Finished, frame: usize, out: &mut Vec<Finding>) {
    let plans = model.plan.frames();
    let (plan, piece) = (&plans[frame], &draft.pieces[frame]);
    let stitch = |case: usize| finished.cases[case].get(frame).and_then(Option::as_ref);
    for (place, mark) in plan.finishing.marks.iter().enumerate() {
        let name = format!("{}.{}", piece.name, mark.name);
        let finding = |code: Code| Finding::new(code).piece(&piece.name).at(name.clone()).word("mark", name.clone());
        // A piece that is sewn on lies there with its mouths closed.
        let placed =
            mark.piece.as_ref().and_then(|p| plans.iter().find(|f| f.name == *p)).filter(|f| !f.mouths.is_empty());
        if let Some(placed) = placed {
            let takes = draft
                .pieces
                .iter()
                .find(|p| p.name == *placed.name)
                .map_or_else(|| say!("takes-darts"), |p| takes_of(p));
            out.push(finding(Code::PlaceFlat).word("piece", placed.name.to_string()).word("takes", takes));
        }
        let mut outside =
            Tally::new(finding(Code::MarkOutside).word("piece", piece.name.clone()), &[("distance", "mm")]);
        let numbers = [("step", "mm"), ("number", ""), ("other", "mm"), ("ends", "mm"), ("off", "mm")];
        let mut missed = Tally::new(finding(Code::RowMissesLevel), &numbers);
        for (case, size, _) in judged(model) {
            if let Some(miss) = row_miss(model, case, mark, finished.limits.seam) {
                missed.add(size, &[miss.step, f64::from(miss.number), miss.other, miss.ends, miss.off]);
            }
            let Some(made) = stitch(case) else { continue };
            let away = made.marks.iter().filter(|m| m.place == place).map(|m| outside_by(&made.stitch, m.at));
            let worst = away.fold(0.0, f64::max);
            if worst > tolerance::ON_EDGE {
                outside.add(size, &[worst]);
            }
        }
        out.extend(outside.done(|f, _| f));
        let fixed = mark.fixed.as_ref().map_or_else(String::new, |f| f.text.to_string());
        out.extend(missed.done(|f, _| f.word("fixed", fixed)));
    }
    let name = piece.name.clone();
    let finding = Finding::new(Code::LabelOutside).piece(&name).at(format!("{name}.label")).word("piece", name.clone());
    let mut label = Tally::new(finding, &[("distance", "mm")]);
    for (case, size, _) in judged(model) {
        let Some(made) = stitch(case) else { continue };
        let away = made.label.map_or(0.0, |at| outside_by(&made.stitch, at));
        if away > tolerance::ON_EDGE {
            label.add(size, &[away]);
        }
    }
    out.extend(label.done(|f, _| f));
}

/// How far a point lies outside of a closed path, mm; 0 inside of it.
fn outside_by(path: &kurbo::BezPath, at: kurbo::Point) -> f64 {
    use kurbo::{ParamCurveNearest, Shape};
    if path.winding(at) != 0 {
        return 0.0;
    }
    path.segments().map(|s| s.nearest(at, tolerance::CURVE).distance_sq).fold(f64::INFINITY, f64::min).sqrt()
}
