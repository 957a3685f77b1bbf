//! Joints inside an edge that are declared smooth.

use super::judged;
use super::tally::Tally;
use crate::base::{Code, Finding, tolerance};
use crate::compute::Model;
use crate::document::{Draft, Edge};
use crate::finish::Limits;

pub(super) fn check(draft: &Draft, model: &Model, limits: &Limits) -> Vec<Finding> {
    let mut out = Vec::new();
    let pieces = draft.pieces.iter().map(|p| (&p.name, p.edges.iter().chain(&p.lines).collect::<Vec<&Edge>>()));
    let drawings = draft.drawings.iter().map(|d| (&d.name, d.lines.iter().collect()));
    for (frame, (name, edges)) in pieces.chain(drawings).enumerate() {
        let plan = &model.plan.frames()[frame];
        for (edge, node) in edges.into_iter().zip(plan.edges.iter().chain(&plan.lines)) {
            for joint in &edge.smooth_at {
                let Some(point) = model.plan.node_named(&format!("{name}.{joint}")) else { continue };
                let finding = Finding::new(Code::NotSmooth)
                    .piece(name)
                    .edge(&edge.name)
                    .at(format!("{name}.{}", edge.name))
                    .word("edge", format!("{name}.{}", edge.name))
                    .word("point", joint.clone());
                let mut tally = Tally::new(finding, &[("angle", "deg")]);
                for (case, size, _) in judged(model) {
                    let at = model.item(case, point).and_then(|p| p.point());
                    let shape = model.item(case, *node).and_then(|e| e.edge().cloned());
                    let (Some(at), Some(shape)) = (at, shape) else { continue };
                    for pair in shape.curve.segments().windows(2) {
                        if (pair[0].end() - at).length() > tolerance::EQUAL {
                            continue;
                        }
                        let (from, to) = (pair[0].reversed(), &pair[1]);
                        let (Some(a), Some(b)) = (from.tangent(0.0), to.tangent(0.0)) else { continue };
                        let bend = (-a).cross(b).abs();
                        let angle = libm::atan2(bend, (-a).dot(b));
                        if angle > limits.joint_angle {
                            tally.add(size, &[angle.to_degrees()]);
                        }
                    }
                }
                out.extend(tally.done(|f, _| f));
            }
        }
    }
    out
}
