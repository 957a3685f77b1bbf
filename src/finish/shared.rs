//! Pieces that two views have in common: finished once.
//!
//! A piece is finished by what it is itself, by the pieces that it is sewn to and, at corners, by what those are sewn to. Where all of that is
//! the same in another view, it is the very same piece.

use std::collections::BTreeSet;

use super::piece::Known;
use super::sewing::Sewing;
use super::{Finished, is_same_item};
use crate::compute::{Model, NodeId};
use crate::document::MarkKind;

/// Another view that is finished, and for each piece the nodes that must be the same there; none where more than numbers differs.
pub(super) struct Shared<'a> {
    model: &'a Model,
    finished: &'a Finished,
    needs: Vec<Option<BTreeSet<NodeId>>>,
}

impl<'a> Shared<'a> {
    pub fn of(
        own: &Model,
        (sewing, needs): (&Sewing, &[Vec<NodeId>]),
        (model, finished): (&'a Model, &'a Finished),
    ) -> Self {
        let plan = &own.plan;
        let pieces = (0..plan.frames().len()).filter(|f| plan.frames()[*f].is_piece);
        let same_presence = |name: &str| {
            let frame = plan.frames().iter().position(|f| *f.name == *name);
            frame.is_none_or(|f| plan.has_frame(f) == model.plan.has_frame(f))
        };
        // A piece that is sewn on another one is seen there and, over a seam, on any other.
        let placed = plan.frames().iter().flat_map(|f| f.finishing.marks.iter().map(move |m| (f, m)));
        let mut placed = placed.filter(|(_, m)| m.kind == MarkKind::Place);
        let places_differ =
            placed.any(|(f, m)| !same_presence(&f.name) || m.piece.as_ref().is_some_and(|name| !same_presence(name)));
        let one = |frame: usize| {
            let around = |sewing: &Sewing| {
                let seams_of = |pieces: &BTreeSet<usize>| {
                    let has = |s: &usize| sewing.pieces(*s).any(|p| pieces.contains(&p));
                    (0..plan.seams.len()).filter(has).collect::<BTreeSet<usize>>()
                };
                let sewn: BTreeSet<usize> =
                    seams_of(&BTreeSet::from([frame])).into_iter().flat_map(|s| sewing.pieces(s)).collect();
                let near: BTreeSet<usize> = sewn.into_iter().chain([frame]).collect();
                (seams_of(&near), near)
            };
            let (seams, near) = around(sewing);
            let is_same = !places_differ
                && plan.has_frame(frame)
                && model.plan.has_frame(frame)
                && (&seams, &near) == (&around(&finished.sewing).0, &around(&finished.sewing).1)
                && near.iter().all(|f| needs[*f] == finished.needs[*f]);
            is_same.then(|| near.iter().flat_map(|f| needs[*f].iter().copied()).collect())
        };
        Self { model, finished, needs: pieces.map(one).collect() }
    }

    /// What this view has of a case.
    pub fn known(&self, own: &Model, case: usize) -> Known<'_> {
        let same = |needs: &Option<BTreeSet<NodeId>>| {
            needs.as_ref().is_some_and(|all| all.iter().all(|n| is_same_item(self.model, own, case, *n)))
        };
        let (pieces, notches) = (&self.finished.cases[case], &self.finished.notches[case]);
        Known { kept: self.needs.iter().map(same).collect(), pieces, notches }
    }
}
