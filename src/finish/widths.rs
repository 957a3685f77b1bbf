//! The allowance of each edge of a piece: its own, else its seam's, else the draft's.

use super::body::Body;
use super::limits::Limits;
use super::ring::{EdgeWidths, Hem, Width};
use super::sewing::Sewing;
use crate::base::tolerance;
use crate::compute::{Formula, Model, PieceFinishing};

/// A number of a formula in a case.
pub(super) fn real(model: &Model, case: usize, formula: &Formula) -> Option<f64> {
    model.evaluate(&model.plan, case, formula).ok()?.real()
}

/// A point of a formula in a case.
pub(super) fn point(model: &Model, case: usize, formula: &Formula) -> Option<crate::curves::Pt<f64>> {
    model.evaluate(&model.plan, case, formula).ok()?.point()
}

/// What is asked for.
pub(super) struct Asked<'a> {
    pub model: &'a Model,
    pub case: usize,
    pub frame: usize,
    pub finishing: &'a PieceFinishing,
    pub sewing: &'a Sewing,
    pub limits: &'a Limits,
}

impl Asked<'_> {
    /// The widths of all edges in a set of allowances; an edge on the fold has none.
    pub fn widths(&self, body: &Body, set: &str, on_fold: Option<usize>) -> Vec<EdgeWidths> {
        (0..body.edges.len())
            .map(|edge| match on_fold == Some(edge) {
                true => EdgeWidths { on_fold: true, told: true, ..EdgeWidths::default() },
                false => self.edge(body, edge, set),
            })
            .collect()
    }

    fn edge(&self, body: &Body, edge: usize, set: &str) -> EdgeWidths {
        let value = |f: &Formula| real(self.model, self.case, f);
        let of = |set: &str| {
            self.finishing.allowances.iter().filter(|a| a.edge == edge && *a.set == *set).collect::<Vec<_>>()
        };
        let mut told = of(set);
        if told.is_empty() && !set.is_empty() {
            told = of("");
        }
        let line = &body.edges[edge];
        let mut out = EdgeWidths { told: !told.is_empty(), ..EdgeWidths::default() };
        let mut ends = Vec::new();
        for allowance in told {
            let Some(width) = value(&allowance.width).filter(|w| w.is_finite() && *w >= 0.0) else { continue };
            if allowance.turns > 0 {
                let turn_in = match allowance.turns {
                    1 => 0.0,
                    _ => allowance.turn_in.as_ref().map_or(Some(width), value).unwrap_or(0.0).clamp(0.0, width),
                };
                let whole = width + turn_in;
                return EdgeWidths {
                    widths: vec![Width { from: 0.0, start: whole, end: whole }],
                    hem: Some(Hem { depth: width, turn_in }),
                    ..out
                };
            }
            let from = match &allowance.from {
                None => 0.0,
                Some(place) => {
                    let item = self.model.evaluate(&self.model.plan, self.case, place).ok();
                    let by_point = item.as_ref().and_then(|i| i.point()).map(|p| line.locate(p).along);
                    let number = item.as_ref().and_then(|i| i.real());
                    let fraction = place.kind == crate::language::Kind::NUMBER;
                    by_point.or(number.map(|n| if fraction { n * line.length() } else { n })).unwrap_or(0.0)
                }
            };
            let end = allowance.to_width.as_ref().map_or(Some(width), value).unwrap_or(width).max(0.0);
            ends.push(Width { from: from.clamp(0.0, line.length()), start: width, end });
        }
        ends.sort_by(|a, b| a.from.total_cmp(&b.from));
        let default = self.of_seam(edge).or(self.limits.allowance);
        out.told |= default.is_some();
        if ends.first().is_none_or(|w| w.from > tolerance::EQUAL) {
            let width = default.unwrap_or(0.0);
            ends.insert(0, Width { from: 0.0, start: width, end: width });
        }
        out.widths = ends;
        out
    }

    /// The allowance of the first seam of an edge that tells one.
    fn of_seam(&self, edge: usize) -> Option<f64> {
        let seams = self.sewing.of_edge(self.frame, edge).iter();
        let mut told = seams.filter_map(|s| self.model.plan.seams[s.seam].allowance.as_ref());
        real(self.model, self.case, told.next()?).filter(|w| w.is_finite() && *w >= 0.0)
    }
}
