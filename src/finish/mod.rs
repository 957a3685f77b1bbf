//! From the stitch line to a piece that can be cut: cut lines with their corners, hems, mouths of darts, notches, marks, grain.
//!
//! Lengths and seams are `compute`'s, judging is `proof`'s, pages are `output`'s. Everything here is made anew from a model; what
//! cannot be made is a finding.

mod body;
mod corner;
mod cutting;
mod hem;
mod kept_plan;
mod letters;
mod limits;
mod marks;
mod mouth;
mod notches;
mod notions;
mod on_cloth;
mod outward;
mod piece;
mod places;
mod ring;
mod roll;
mod sewing;
mod shared;
mod strip_marks;
mod strips;
mod trim;
mod unfold;
mod widths;

use std::sync::Arc;

use crate::base::Finding;
use crate::compute::{Item, Model, NodeId};
use crate::document::{Draft, Piece};
use crate::language::Value;
use crate::texts::carried;

pub use cutting::{Symmetry, cut_words, outline_words, pair_words, same_turned_over, symmetry};
pub use hem::HemState;
pub use kept_plan::{
    PlanState, case_of, case_of_size, plan_call, plan_cloth, plan_digest, plan_length, plan_need, plan_state,
    plan_turn, plan_view,
};
pub use letters::{is_block, letter, letters};
pub use limits::{Limits, literal};
pub use marks::{PlacedLine, PlacedMark, RowMiss, row_miss};
pub use notches::{NotchFault, NotchMark, NotchPlace, PlacedNotch};
pub use notions::NotionSize;
pub use on_cloth::{Cloth, ClothBook, ClothCall, ClothError, ClothHalf, ClothPiece, ClothStrip, OnCloth};
pub use outward::outward;
pub use piece::{FinishedCut, FinishedPiece};
pub use ring::{EdgeWidths, Hem, Width};
pub use roll::{Rolled, RolledNotch, RolledPiece, roll};
pub use sewing::{EdgeEnd, Sewing, Sewn};
pub use strip_marks::{StripMark, StripMarkKind, is_stretched, seams_of_strip, strip_marks, unmarked};
pub use strips::{CutStrip, NoYield, SHORTEST_PIECE, StripYield, bias_strip, widths};
pub use unfold::{doubled, unfolded};

use piece::Known;
use shared::Shared;

/// A draft finished in all its cases.
#[derive(Clone, Debug)]
pub struct Finished {
    /// For each case its pieces, in the order of the draft; `None` where a piece cannot be drawn.
    pub cases: Vec<Vec<Option<Arc<FinishedPiece>>>>,
    /// For each case the places of the notches of all seams.
    pub notches: Vec<Arc<Vec<PlacedNotch>>>,
    /// Which edges are sewn where.
    pub sewing: Arc<Sewing>,
    /// The limits of the draft.
    pub limits: Limits,
    /// What is wrong with the draft's settings.
    pub findings: Vec<Finding>,
    /// One for each view, in their order; this one is of the first. Empty where the draft has no views.
    pub views: Vec<Self>,
    /// For each piece the nodes on which it hangs.
    needs: Arc<Vec<Vec<NodeId>>>,
}

impl Finished {
    /// Itself, or one for each view.
    pub fn of_views(&self) -> &[Self] {
        if self.views.is_empty() { std::slice::from_ref(self) } else { &self.views }
    }
}

/// What was finished before, and from what.
#[derive(Clone, Copy, Debug)]
pub struct Before<'a> {
    /// The draft.
    pub draft: &'a Draft,
    /// Its model.
    pub model: &'a Model,
    /// What came of it.
    pub finished: &'a Finished,
}

/// Finishes a draft.
pub fn finish(draft: &Draft, model: &Model) -> Finished {
    finish_after(draft, model, None)
}

/// Finishes a draft; a piece that hangs on nothing that has changed since is the very same. The result is the same as without
/// what was before.
pub fn finish_after(draft: &Draft, model: &Model, before: Option<Before<'_>>) -> Finished {
    let mut done: Vec<Finished> = Vec::new();
    for (i, view) in model.of_views().iter().enumerate() {
        let earlier = before.and_then(|b| {
            let (model, finished) = (b.model.of_views().get(i)?, b.finished.of_views().get(i)?);
            Some(Before { model, finished, ..b })
        });
        let finished = finish_view(draft, view, earlier, model.of_views().iter().zip(&done));
        done.push(finished);
    }
    let first = done.swap_remove(0);
    if model.views.is_empty() {
        return first;
    }
    done.push(first.clone());
    let last = done.len() - 1;
    done.swap(0, last);
    Finished { views: done, ..first }
}

/// Finishes a draft in one view; `others`: the views that are finished already.
fn finish_view<'a>(
    draft: &Draft,
    model: &Model,
    before: Option<Before<'_>>,
    others: impl Iterator<Item = (&'a Model, &'a Finished)>,
) -> Finished {
    let mut findings = Vec::new();
    let limits = Limits::of(draft, &mut findings);
    let before = before.filter(|b| is_same_plan(b, draft, model));
    let (sewing, needs) = match before {
        Some(b) => (Arc::clone(&b.finished.sewing), Arc::clone(&b.finished.needs)),
        None => (Arc::new(Sewing::of(&model.plan)), Arc::new(model.plan.finishing_needs())),
    };
    let others: Vec<Shared<'_>> = others.map(|o| Shared::of(model, (&sewing, &needs), o)).collect();
    let count = model.cases.len();
    let one = |case: usize| {
        let kept = |b: Before<'_>| {
            let same = |f: usize| needs[f].iter().all(|n| is_same_item(b.model, model, case, *n));
            (0..draft.pieces.len()).map(same).collect()
        };
        let mut known: Vec<Known<'_>> = Vec::new();
        if let Some(b) = before {
            known.push(Known { kept: kept(b), pieces: &b.finished.cases[case], notches: &b.finished.notches[case] });
        }
        known.extend(others.iter().map(|o| o.known(model, case)));
        match known.iter().find(|k| k.kept.iter().all(|k| *k)) {
            Some(known) => (known.pieces.to_vec(), Arc::clone(known.notches)),
            None => piece::finish_case(draft, model, case, (&sewing, &limits), &known),
        }
    };
    let work = count * draft.pieces.len();
    let both = std::thread::available_parallelism().map_or(1, std::num::NonZero::get) > 1 && work >= WORTH_A_THREAD;
    let turns = |first: usize, step: usize| (first..count).step_by(step).map(one).collect::<Vec<_>>();
    let done = if both {
        std::thread::scope(|scope| {
            let odd = scope.spawn(carried(|| turns(1, 2)));
            let even = turns(0, 2);
            match odd.join() {
                Ok(odd) => {
                    let mut odd = odd.into_iter();
                    even.into_iter().flat_map(|case| [Some(case), odd.next()]).flatten().collect()
                }
                Err(panic) => std::panic::resume_unwind(panic),
            }
        })
    } else {
        turns(0, 1)
    };
    let (cases, notches) = done.into_iter().unzip();
    Finished { cases, notches, sewing, limits, findings, views: Vec::new(), needs }
}

/// Whether nodes, seams and what is told of pieces are what they were, so that only values can differ.
fn is_same_plan(before: &Before<'_>, draft: &Draft, model: &Model) -> bool {
    let (old, new) = (&before.model.plan, &model.plan);
    before.draft.settings == draft.settings
        && old.nodes.len() == new.nodes.len()
        && old.cases == new.cases
        && before.model.cases.len() == model.cases.len()
        && old.frames().len() == new.frames().len()
        && before.draft.pieces.len() == draft.pieces.len()
        // A plan that was read anew has made all of these anew.
        && old.frames().iter().zip(new.frames()).all(|(a, b)| Arc::ptr_eq(&a.finishing, &b.finishing))
        && before.draft.pieces.iter().zip(&draft.pieces).all(|(a, b)| Arc::ptr_eq(a, b) || same_darts(a, b))
}

/// Which side darts are pressed to, and how they are sewn, are no formulas.
fn same_darts(a: &Piece, b: &Piece) -> bool {
    a.darts.len() == b.darts.len()
        && a.darts.iter().zip(&b.darts).all(|(x, y)| (x.pressed, x.kept, x.form) == (y.pressed, y.kept, y.form))
        && a.pleats.iter().chain(&a.tucks).map(|t| t.pressed).eq(b.pleats.iter().chain(&b.tucks).map(|t| t.pressed))
}

fn is_same_item(before: &Model, now: &Model, case: usize, node: NodeId) -> bool {
    match (before.item(case, node), now.item(case, node)) {
        (Some(Item::Value(Value::Edge(a))), Some(Item::Value(Value::Edge(b)))) => Arc::ptr_eq(a, b),
        (Some(Item::Mouth(a)), Some(Item::Mouth(b))) => Arc::ptr_eq(a, b) || a == b,
        (Some(a), Some(b)) => a == b,
        (None, None) => true,
        _ => false,
    }
}

/// Pieces of all cases together from which a second thread pays.
const WORTH_A_THREAD: usize = 40;
