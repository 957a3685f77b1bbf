//! How pieces are cut: that it is said, with grain and face.

use super::judged;
use super::tally::Tally;
use crate::base::{Code, Finding, tolerance};
use crate::compute::{CutPlan, Model};
use crate::document::{Draft, Face};
use crate::finish::{Finished, Symmetry, symmetry};
use crate::texts::say;

pub(super) fn check(draft: &Draft, model: &Model, finished: &Finished) -> Vec<Finding> {
    let mut out = Vec::new();
    let any = model.plan.frames().iter().any(|f| !f.finishing.cuts.is_empty());
    for (frame, piece) in draft.pieces.iter().enumerate() {
        let cuts = &model.plan.frames()[frame].finishing.cuts;
        let finding =
            |code: Code| Finding::new(code).piece(&piece.name).at(piece.name.clone()).word("piece", piece.name.clone());
        // A piece that others are made of may be there for them alone.
        let is_base = model.bases.contains(&piece.name);
        if cuts.is_empty() && any && !is_base {
            out.push(finding(Code::NotCut));
        }
        for cut in cuts {
            let material = if cut.material.is_empty() { say!("cut-its-cloth") } else { cut.material.to_string() };
            if cut.heading.is_none() {
                out.push(finding(Code::GrainMissing).word("material", material));
                continue;
            }
            out.extend(grain(model, finished, frame, cut, finding(Code::GrainOff)));
            if cut.on_fold.is_some() && cut.face != Face::Pairs {
                out.push(finding(Code::FaceOnFold).word("material", material));
            } else if cut.on_fold.is_none()
                && cut.face == Face::Pairs
                && cut.count % 2 == 1
                && symmetry(model, finished, judged(model).map(|(case, ..)| case), (frame, cut)) == Symmetry::Handed
            {
                let finding = finding(Code::FaceMissing).word("material", material);
                out.push(finding.word("count", cut.count.to_string()));
            }
        }
    }
    out
}

/// The grain against the line that it must follow.
fn grain(model: &Model, finished: &Finished, frame: usize, cut: &CutPlan, finding: Finding) -> Option<Finding> {
    let (name, node) = cut.along.as_ref()?;
    let numbers = [("along", "deg"), ("off", "mm"), ("limit", "deg"), ("angle", "deg")];
    let mut tally = Tally::new(finding, &numbers);
    for (case, size, _) in judged(model) {
        let line = model.item(case, *node).and_then(|i| i.edge().map(|e| e.curve.clone()));
        let heading = cut.heading.as_ref().and_then(|f| model.evaluate(&model.plan, case, f).ok()?.real());
        let (Some(line), Some(heading)) = (line, heading) else { continue };
        let way = line.end() - line.start();
        let grain = crate::curves::Pt::heading(heading);
        let (side, ahead) = (way.cross(grain), way.dot(grain));
        let off = libm::atan2(side.abs(), ahead.abs());
        if off > finished.limits.grain_angle + tolerance::EQUAL {
            let placed = finished.cases[case].get(frame).and_then(Option::as_ref);
            let drawn = placed.and_then(|p| p.cuts.iter().find_map(|c| c.grain)).map(|[a, b]| a.distance(b));
            let length = way.length().max(drawn.unwrap_or(0.0));
            let along = libm::atan2(way.y, way.x).to_degrees();
            tally.add(
                size,
                &[along, length * libm::sin(off), finished.limits.grain_angle.to_degrees(), off.to_degrees()],
            );
        }
    }
    let line = format!("{}.{name}", model.plan.frames()[frame].name);
    tally.done(|f, _| f.word("line", line.clone()).word("heading", say!("cut-heading-of", line)))
}
