//! Laying pieces on cloth: which lays are wanted, the search for them beside the window, and laying by hand.
//!
//! How a lay is found is `output::lay::packing`'s. What a person keeps goes into the draft by [`LayCommand`](crate::session::LayCommand);
//! what is found is no part of it until then.

mod hand;
mod longest;
mod search;
mod table;
mod turning;
mod wish;

use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use std::thread;

use super::computed::{Computed, Wake};
use crate::output::lay::packing::Phase;
use crate::output::lay::{Lay, LayError};
use crate::texts::carried;

pub use hand::{HandFault, LayHand};
pub use longest::{Longest, LongestStop, longest, longest_until};
pub use search::{LayEffort, QUICK_MOVES, USUAL_MOVES, lays, lays_until};
pub use table::{KeptLocked, KeptPlan, LayCell, LayKey, LayTable, lay_table, sizes_called, sizes_typed};
pub use wish::{LayWish, job_of, jobs_of, plan_name, usual_wishes, wish_of_plan};

/// A wanted lay and how far it is.
#[derive(Clone, Debug)]
pub struct LayRow {
    /// What is wanted.
    pub wish: LayWish,
    /// The best so far; none before the first.
    pub best: Option<Arc<Lay>>,
    /// Why there is none; neither, where there was no time for it.
    pub failed: Option<LayError>,
    /// What is done at the moment.
    pub phase: Option<Phase>,
    /// Moves of single pieces so far.
    pub moves: u64,
    /// Whether no more is looked for.
    pub done: bool,
    /// Why it needs more than a larger size does, if it does.
    pub odd: Option<String>,
}

impl LayRow {
    fn new(wish: LayWish) -> Self {
        Self { wish, best: None, failed: None, phase: None, moves: 0, done: false, odd: None }
    }
}

/// A search that goes on.
pub struct Laying {
    desk: Arc<Desk>,
    /// The revision of the draft whose pieces are laid.
    revision: u64,
}

/// What the search and whoever looks on hand each other.
struct Desk {
    rows: Mutex<Vec<LayRow>>,
    stop: AtomicBool,
    ended: AtomicBool,
}

impl Desk {
    fn rows(&self) -> MutexGuard<'_, Vec<LayRow>> {
        self.rows.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

/// What is looked for.
struct Work {
    computed: Arc<Computed>,
    wishes: Vec<LayWish>,
    starts: Vec<Option<LayHand>>,
    effort: LayEffort,
}

impl Desk {
    fn work(&self, work: &Work, wake: Option<&Wake>) {
        if let (Some(model), Some(finished)) = (&work.computed.model, &work.computed.finished) {
            let told = |i: usize, change: &dyn Fn(&mut LayRow)| {
                if let Some(row) = self.rows().get_mut(i) {
                    change(row);
                }
                if let Some(wake) = wake {
                    wake();
                }
            };
            let stop = || self.stop.load(Ordering::Relaxed);
            search::search((model, finished), (&work.wishes, &work.starts), &work.effort, &stop, &told);
        }
        self.rows().iter_mut().for_each(|r| r.done = true);
        self.ended.store(true, Ordering::Relaxed);
        if let Some(wake) = wake {
            wake();
        }
    }
}

impl Laying {
    /// Begins to look for lays of these pieces. `starts`: for each wish a lay to begin with (one that is kept, or was found before), with its
    /// pieces that stay where they are; may be shorter than the wishes. `wake`: beside this thread; it is called, a few times a second, when
    /// there is something new. Without it everything is done when this comes back.
    pub fn start(
        computed: Arc<Computed>,
        wishes: Vec<LayWish>,
        starts: Vec<Option<LayHand>>,
        effort: LayEffort,
        wake: Option<Wake>,
    ) -> Self {
        let rows = wishes.iter().cloned().map(LayRow::new).collect();
        let desk =
            Arc::new(Desk { rows: Mutex::new(rows), stop: AtomicBool::new(false), ended: AtomicBool::new(false) });
        let revision = computed.revision;
        let work = Arc::new(Work { computed, wishes, starts, effort });
        let beside = wake.is_some_and(|wake| {
            let (desk, work) = (Arc::clone(&desk), Arc::clone(&work));
            thread::Builder::new().name("lay".to_owned()).spawn(carried(move || desk.work(&work, Some(&wake)))).is_ok()
        });
        if !beside {
            desk.work(&work, None);
        }
        Self { desk, revision }
    }

    /// All wishes as they stand.
    pub fn rows(&self) -> Vec<LayRow> {
        self.desk.rows().clone()
    }

    /// The revision of the draft whose pieces are laid: of another one the lays may be stale.
    pub fn revision(&self) -> u64 {
        self.revision
    }

    /// Whether the search has come to its end.
    pub fn is_done(&self) -> bool {
        self.desk.ended.load(Ordering::Relaxed)
    }

    /// Ends the search; the best so far stays.
    pub fn stop(&self) {
        self.desk.stop.store(true, Ordering::Relaxed);
    }
}

impl Drop for Laying {
    fn drop(&mut self) {
        self.stop();
    }
}
