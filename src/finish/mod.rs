//! From the stitch line to a piece that can be cut: cut lines with their corners, hems, mouths of darts, notches, marks, grain.
//!
//! Lengths and seams are `compute`'s, judging is `proof`'s, pages are `output`'s. Everything here is made anew from a model; what
//! cannot be made is a finding.

mod body;
mod corner;
mod cutting;
mod limits;
mod marks;
mod mouth;
mod notches;
mod piece;
mod ring;
mod sewing;
mod trim;
mod widths;

use std::sync::Arc;

use crate::base::Finding;
use crate::compute::Model;
use crate::document::Draft;

pub use cutting::{Symmetry, cut_words};
pub use limits::{Limits, literal};
pub use marks::{PlacedLine, PlacedMark, RowMiss, row_miss};
pub use notches::{NotchFault, NotchMark, NotchPlace, PlacedNotch};
pub use piece::{FinishedCut, FinishedPiece, HemState};
pub use sewing::{EdgeEnd, Sewing, Sewn};

/// A draft finished in all its cases.
#[derive(Clone, Debug)]
pub struct Finished {
    /// For each case its pieces, in the order of the draft; `None` where a piece cannot be drawn.
    pub cases: Vec<Vec<Option<Arc<FinishedPiece>>>>,
    /// For each case the places of the notches of all seams.
    pub notches: Vec<Vec<PlacedNotch>>,
    /// Which edges are sewn where.
    pub sewing: Arc<Sewing>,
    /// The limits of the draft.
    pub limits: Limits,
    /// What is wrong with the draft's settings.
    pub findings: Vec<Finding>,
}

/// Finishes a draft.
pub fn finish(draft: &Draft, model: &Model) -> Finished {
    let mut findings = Vec::new();
    let limits = Limits::of(draft, &mut findings);
    let sewing = Arc::new(Sewing::of(&model.plan));
    let count = model.cases.len();
    let one = |case: usize| piece::finish_case(draft, model, case, &sewing, &limits);
    let work = count * draft.pieces.len();
    let both = std::thread::available_parallelism().map_or(1, std::num::NonZero::get) > 1 && work >= WORTH_A_THREAD;
    let turns = |first: usize, step: usize| (first..count).step_by(step).map(one).collect::<Vec<_>>();
    let done = if both {
        std::thread::scope(|scope| {
            let odd = scope.spawn(|| turns(1, 2));
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
    Finished { cases, notches, sewing, limits, findings }
}

/// Pieces of all cases together from which a second thread pays.
const WORTH_A_THREAD: usize = 40;
