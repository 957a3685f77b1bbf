//! Laying by hand: pieces are moved, turned and locked; what overlaps is told at once, by how much, and how long the cloth is then.

use std::sync::Arc;

use crate::base::{DisplayUnit, shown_small};
use crate::compute::Model;
use crate::document::LayPlan;
use crate::output::lay::packing::{Laid, LayFault, Touch};
use crate::output::lay::{Lay, LayJob, Need};

use super::search::fitted;
use crate::texts::{owned, say, typed};

/// A lay in the hand of a person.
#[derive(Clone, Debug, PartialEq)]
pub struct LayHand {
    /// The lay; it may overlap.
    pub lay: Lay,
    /// Pieces that stay where they are when the rest is laid anew: stretch and place.
    pub locked: Vec<(usize, usize)>,
}

/// Something wrong with a lay, by stretch and places in it.
#[derive(Clone, Debug, PartialEq)]
pub struct HandFault {
    /// The stretch.
    pub stretch: usize,
    /// The pieces that it is about: one, or two.
    pub pieces: Vec<usize>,
    /// How much it is, mm.
    pub mm: f64,
    /// In words.
    pub says: String,
}

impl LayHand {
    /// A lay with nothing locked.
    pub fn of(lay: Lay) -> Self {
        Self { lay, locked: Vec::new() }
    }

    /// A kept plan, as far as its pieces are still laid. `model` is its view's.
    pub fn of_plan(model: &Model, job: Arc<LayJob>, plan: &LayPlan) -> Self {
        let (lay, locked) = Lay::of_plan(model, job, plan);
        Self { lay, locked }
    }

    /// The same pieces for one of these jobs, the one in which odd ones lie as they do here, and for each of its stretches those that stay.
    pub(super) fn over_to(&self, jobs: &[Arc<LayJob>]) -> Option<(Lay, Vec<Vec<Laid>>)> {
        let job = jobs.iter().find(|job| job.lies_like(&self.lay.job)).or(jobs.first())?;
        let lay = if *self.lay.job == **job {
            Lay { job: Arc::clone(job), layouts: self.lay.layouts.clone() }
        } else {
            fitted(&self.lay, job)
        };
        let same = lay.layouts.len() == self.lay.layouts.len()
            && lay.layouts.iter().zip(&self.lay.layouts).all(|(a, b)| a.laid.len() == b.laid.len());
        let locked = (0..lay.layouts.len()).map(|s| {
            let own = self.locked.iter().filter(|(stretch, _)| *stretch == s && same);
            own.filter_map(|(_, i)| lay.layouts[s].laid.get(*i).copied()).collect()
        });
        let locked = locked.collect();
        Some((lay, locked))
    }

    fn piece(&mut self, stretch: usize, piece: usize) -> Option<&mut Laid> {
        self.lay.layouts.get_mut(stretch)?.laid.get_mut(piece)
    }

    /// Puts the first corner of a piece's box at a place, mm. It stays on the part of the width in which it may lie; what must touch a fold or
    /// a border goes on touching it. A piece that is locked stays.
    pub fn put(&mut self, stretch: usize, piece: usize, x: f64, y: f64) {
        let Some(laid) = self.lay.layouts.get(stretch).and_then(|l| l.laid.get(piece)).copied() else { return };
        if self.locked.contains(&(stretch, piece)) || !x.is_finite() || !y.is_finite() {
            return;
        }
        let room = self.lay.room(stretch, &laid);
        let Some(across) = self.lay.pose(stretch, &laid).map(|p| p.across) else { return };
        let most = (across.to - room.height()).max(across.from);
        let y = match across.touch {
            Touch::Free => y.clamp(across.from, most),
            Touch::From => across.from,
            Touch::To => most,
        };
        let by = (x.max(0.0) - room.x0, y - room.y0);
        if let Some(own) = self.piece(stretch, piece) {
            own.x += by.0;
            own.y += by.1;
        }
        self.settle();
    }

    /// Lays a piece the next way in which it may lie, about the middle of its box; says whether there is another way.
    pub fn turn(&mut self, stretch: usize, piece: usize) -> bool {
        let Some(laid) = self.lay.layouts.get(stretch).and_then(|l| l.laid.get(piece)).copied() else { return false };
        let ways =
            self.lay.job.stretches.get(stretch).and_then(|s| s.job.shapes.get(laid.shape)).map_or(0, |s| s.poses.len());
        if ways < 2 || self.locked.contains(&(stretch, piece)) {
            return false;
        }
        let before = self.lay.room(stretch, &laid);
        if let Some(own) = self.piece(stretch, piece) {
            own.pose = (own.pose + 1) % ways;
        }
        let now = self.lay.layouts[stretch].laid[piece];
        let after = self.lay.room(stretch, &now);
        let corner = before.center() - (after.center() - after.origin());
        self.put(stretch, piece, corner.x, corner.y);
        true
    }

    /// Locks a piece where it is, or frees it.
    pub fn lock(&mut self, stretch: usize, piece: usize, locked: bool) {
        self.locked.retain(|l| *l != (stretch, piece));
        if locked {
            self.locked.push((stretch, piece));
            self.locked.sort_unstable();
        }
    }

    /// Whether a piece is locked.
    pub fn is_locked(&self, stretch: usize, piece: usize) -> bool {
        self.locked.contains(&(stretch, piece))
    }

    fn settle(&mut self) {
        let lay = Lay { job: Arc::clone(&self.lay.job), layouts: std::mem::take(&mut self.lay.layouts) };
        self.lay = lay.on_grid();
    }

    /// How much cloth it needs as it lies.
    pub fn need(&self) -> Need {
        self.lay.need()
    }

    /// What is wrong with it as it lies, in words with lengths in this unit.
    pub fn faults(&self, unit: DisplayUnit) -> Vec<HandFault> {
        self.lay.faults().into_iter().map(|(stretch, fault)| self.told(stretch, fault, unit)).collect()
    }

    fn told(&self, stretch: usize, fault: LayFault, unit: DisplayUnit) -> HandFault {
        let far = |mm: f64| owned(|| typed(&shown_small(mm, unit)));
        let name = |i: usize| {
            let shape = self.lay.layouts.get(stretch).and_then(|l| l.laid.get(i)).map(|l| l.shape);
            let about = self.lay.job.stretches.get(stretch).zip(shape).and_then(|(s, k)| s.shapes.get(k));
            about.map_or_else(String::new, |a| a.name.replace('_', " "))
        };
        let (pieces, mm, says) = match fault {
            LayFault::Overlap { one, other, deep } => {
                (vec![one, other], deep, say!("hand-overlap", one = name(one), other = name(other), far = far(deep)))
            }
            LayFault::Near { one, other, short } => {
                (vec![one, other], short, say!("hand-near", one = name(one), other = name(other), far = far(short)))
            }
            LayFault::Outside { piece, far: by } => {
                (vec![piece], by, say!("hand-outside", piece = name(piece), far = far(by)))
            }
            LayFault::Loose { piece, off } => {
                (vec![piece], off, say!("hand-loose", piece = name(piece), far = far(off)))
            }
            LayFault::Count { shape, laid, asked } => {
                let about = self.lay.job.stretches.get(stretch).and_then(|s| s.shapes.get(shape));
                let name = about.map_or_else(String::new, |a| a.name.replace('_', " "));
                (Vec::new(), 0.0, say!("hand-count", name, laid = laid.to_string(), asked = asked.to_string()))
            }
            LayFault::Unknown { piece } => (vec![piece], 0.0, say!("hand-unknown")),
            LayFault::Moved { .. } => (Vec::new(), 0.0, say!("hand-moved")),
        };
        HandFault { stretch, pieces, mm, says }
    }
}
