//! Corners that meet in the sewn garment.
//!
//! *Line joint*: a line that is free, or sewn later, runs over a seam (front + yoke + back); the corners' angles sum to 180° or
//! what is declared. *T-joint*: the same where a seam ends within the run of another one, which must run on over it. *Inner
//! joint*: corners that are sewn all round; what is missing to 360° is shaping, told and not judged.

use super::judged;
use super::tally::Tally;
use crate::base::{Code, Finding, tolerance};
use crate::compute::{Def, Model, unit_of};
use crate::document::Draft;
use crate::finish::{EdgeEnd, Finished, Sewing, literal};
use crate::language::Kind;
use crate::texts::say;

/// More corners than this do not meet in one place.
const MOST_CORNERS: usize = 64;

pub(super) fn check(draft: &Draft, model: &Model, finished: &Finished) -> Vec<Finding> {
    let look = Look { draft, model, finished, sewing: &finished.sewing };
    let mut out = Vec::new();
    let mut seen: Vec<Vec<(usize, usize)>> = Vec::new();
    let corners: Vec<EdgeEnd> = model
        .plan
        .frames()
        .iter()
        .enumerate()
        .flat_map(|(frame, plan)| (0..plan.edges.len()).map(move |edge| EdgeEnd { frame, edge, at_end: true }))
        .collect();
    for inner in [false, true] {
        for end in &corners {
            for line in [*end, look.across(*end)] {
                let chain = if inner { look.ring(line) } else { look.line(line) };
                let Some(chain) = chain else { continue };
                let mut key: Vec<(usize, usize)> = chain.corners.iter().map(|c| look.place(*c)).collect();
                key.sort_unstable();
                if !seen.contains(&key) {
                    seen.push(key);
                    out.extend(if inner { look.shaping(&chain) } else { look.judge(&chain) });
                }
            }
        }
    }
    out
}

/// Corners that meet, each by one of its ends, and the seams between them.
struct Chain {
    corners: Vec<EdgeEnd>,
    seams: Vec<usize>,
    last: EdgeEnd,
}

struct Look<'a> {
    draft: &'a Draft,
    model: &'a Model,
    finished: &'a Finished,
    sewing: &'a Sewing,
}

impl Look<'_> {
    fn across(&self, end: EdgeEnd) -> EdgeEnd {
        end.across(self.model.plan.frames()[end.frame].edges.len())
    }

    /// A corner by its piece and the edge that starts there.
    fn place(&self, end: EdgeEnd) -> (usize, usize) {
        let start = if end.at_end { self.across(end) } else { end };
        (start.frame, start.edge)
    }

    /// Whether a line runs over a seam: it is free, or sewn later.
    fn runs_over(&self, line: EdgeEnd, seam: usize) -> bool {
        match self.sewing.at(self.model, line) {
            None => true,
            Some((own, Some(order))) => {
                own.seam != seam && self.model.plan.seams[seam].order.is_some_and(|first| order > first)
            }
            Some((_, None)) => false,
        }
    }

    /// Whether two ends follow one another in one side of a seam.
    fn one_run(&self, a: EdgeEnd, b: EdgeEnd) -> bool {
        let (of_a, of_b) = (self.sewing.of_edge(a.frame, a.edge), self.sewing.of_edge(b.frame, b.edge));
        of_a.iter().any(|x| {
            of_b.iter().any(|y| {
                let follow = |p: &crate::finish::Sewn, pe: EdgeEnd, q: &crate::finish::Sewn, qe: EdgeEnd| {
                    p.part + 1 == q.part && pe.at_end != p.against && qe.at_end == q.against
                };
                x.seam == y.seam && x.side == y.side && (follow(x, a, y, b) || follow(y, b, x, a))
            })
        })
    }

    /// From a line over the seam at its corner, corner by corner, to where the line goes on.
    fn line(&self, line: EdgeEnd) -> Option<Chain> {
        let mut chain = Chain { corners: vec![line], seams: Vec::new(), last: line };
        let mut at = self.across(line);
        for _ in 0..MOST_CORNERS {
            let (sewn, _) = self.sewing.at(self.model, at)?;
            let partner = self.sewing.partner(at, &sewn)?;
            let on = self.across(partner);
            if sewn.copied || chain.corners.iter().any(|c| self.place(*c) == self.place(on)) {
                return None;
            }
            chain.corners.push(on);
            chain.seams.push(sewn.seam);
            let goes_on = self.runs_over(on, sewn.seam);
            let free = |end: EdgeEnd| self.sewing.at(self.model, end).is_none();
            if self.one_run(line, on) || (goes_on && self.runs_over(line, chain.seams[0]) && free(line) == free(on)) {
                chain.last = on;
                return Some(chain);
            }
            if goes_on {
                return None;
            }
            at = on;
        }
        None
    }

    /// All corners around a place that is sewn all round.
    fn ring(&self, start: EdgeEnd) -> Option<Chain> {
        self.sewing.at(self.model, start)?;
        let mut chain = Chain { corners: vec![start], seams: Vec::new(), last: start };
        let mut at = self.across(start);
        for _ in 0..MOST_CORNERS {
            let (sewn, _) = self.sewing.at(self.model, at)?;
            let partner = self.sewing.partner(at, &sewn)?;
            chain.seams.push(sewn.seam);
            let on = self.across(partner);
            if sewn.copied {
                return None;
            }
            if self.place(partner) == self.place(start) {
                return (chain.corners.len() > 2).then_some(chain);
            }
            if chain.corners.iter().any(|c| self.place(*c) == self.place(on)) {
                return None;
            }
            chain.corners.push(on);
            at = on;
        }
        None
    }

    /// The inside angle of a corner in one case, radians.
    fn angle(&self, case: usize, end: EdgeEnd) -> Option<f64> {
        let (frame, after) = self.place(end);
        let plan = &self.model.plan.frames()[frame];
        let before = (after + plan.edges.len() - 1) % plan.edges.len();
        let edge = |i: usize| self.model.item(case, plan.edges[i]).and_then(|i| i.edge().cloned());
        let (before, after) = (edge(before)?, edge(after)?);
        let (a, b) = (before.curve.end_tangent()?, after.curve.start_tangent()?);
        let sense = self.model.item(case, plan.sense)?.real()?;
        Some(std::f64::consts::PI - libm::atan2(a.cross(b), a.dot(b)) * sense)
    }

    /// A corner as it is written: `front.tip`.
    fn point(&self, end: EdgeEnd) -> String {
        let (frame, edge) = self.place(end);
        let plan = &self.model.plan;
        match &plan.nodes[plan.frames()[frame].edges[edge] as usize + 1].def {
            Def::Flat { points, .. } => plan.nodes[points[0] as usize].part.name.to_string(),
            _ => String::new(),
        }
    }

    /// What the draft declares of these corners: `None`: nothing; `Some(None)`: any angle.
    fn declared(&self, points: &[String]) -> Option<Option<f64>> {
        let same = |corners: &[String]| corners.len() == points.len() && points.iter().all(|p| corners.contains(p));
        let joint = self.draft.joints.iter().find(|j| same(&j.corners))?;
        match joint.meant.trim() {
            "corner" | "" => Some(None),
            text => Some(literal(text, Kind::Angle, unit_of(self.draft)).ok()),
        }
    }

    fn names(&self, chain: &Chain) -> (String, String, Vec<&str>) {
        let plan = &self.model.plan;
        let name = |e: EdgeEnd| plan.nodes[plan.frames()[e.frame].edges[e.edge] as usize].part.name.to_string();
        let seams = chain.seams.iter().map(|s| &*plan.seams[*s].name).collect();
        (name(chain.corners[0]), name(chain.last), seams)
    }

    fn sums(&self, chain: &Chain) -> Vec<(&str, f64)> {
        let sum = |case: usize| {
            let angles = chain.corners.iter().map(|c| self.angle(case, *c));
            angles.collect::<Option<Vec<f64>>>().map(|all| all.iter().sum())
        };
        // Where a side is broken that is told; what would come together there is anybody's guess.
        let whole = |case: usize| {
            let sides = chain.seams.iter().flat_map(|s| &self.model.plan.seams[*s].sides[..2]);
            sides.copied().all(|side| self.model.item(case, side).is_some())
        };
        let cases = judged(self.model).filter(|(case, _, _)| whole(*case));
        cases.filter_map(|(case, size, _)| Some((size, sum(case)?))).collect()
    }

    fn judge(&self, chain: &Chain) -> Option<Finding> {
        let limits = &self.finished.limits;
        let points: Vec<String> = chain.corners.iter().map(|c| self.point(*c)).collect();
        let meant = match self.declared(&points) {
            None => std::f64::consts::PI,
            Some(meant) => meant?,
        };
        let (first, last, seams) = self.names(chain);
        let (piece, edge) = first.split_once('.').unwrap_or((&first, ""));
        let finding = Finding::new(Code::JointBent)
            .piece(piece)
            .edge(edge)
            .seam(seams.first().copied().unwrap_or(""))
            .at(points.first().cloned().unwrap_or_default())
            .word("seam", say!("found-seam", seam = seams.join(", ")))
            .word("lines", format!("{first} – {last}"));
        let mut tally = Tally::new(finding, &[("angle", "deg"), ("meant", "deg"), ("limit", "deg"), ("gap", "mm")]);
        for (size, sum) in self.sums(chain) {
            let off = (sum - meant).abs();
            let gap = tolerance::limit::JOINT_REACH * libm::sin(off.min(std::f64::consts::FRAC_PI_2));
            if off > limits.joint_angle || gap > limits.joint_gap {
                tally.add(size, &[sum.to_degrees(), meant.to_degrees(), limits.joint_angle.to_degrees(), gap]);
            }
        }
        tally.done(|f, _| f)
    }

    fn shaping(&self, chain: &Chain) -> Option<Finding> {
        let points: Vec<String> = chain.corners.iter().map(|c| self.point(*c)).collect();
        let meant = match self.declared(&points) {
            None => std::f64::consts::TAU,
            Some(meant) => meant?,
        };
        let (first, _, seams) = self.names(chain);
        let piece = first.split('.').next().unwrap_or("");
        let finding = Finding::new(Code::JointShaping)
            .piece(piece)
            .seam(seams.first().copied().unwrap_or(""))
            .at(points.first().cloned().unwrap_or_default())
            .word("points", points.join(", "));
        let mut tally = Tally::new(finding, &[("angle", "deg"), ("shaping", "deg")]);
        for (size, sum) in self.sums(chain) {
            if (meant - sum).abs() > self.finished.limits.joint_angle {
                tally.add(size, &[sum.to_degrees(), (meant - sum).to_degrees()]);
            }
        }
        tally.done(|f, _| f)
    }
}
