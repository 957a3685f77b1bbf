//! How short a strip can be at the least, and the steps by which it is sold.

use super::Job;
use super::kind::Kind;
use crate::base::tolerance::lay;

/// No layout is shorter than this, mm: by area, by the longest piece, by what is locked. It is seldom reached.
pub(super) fn least(job: &Job, kinds: &[Kind]) -> f64 {
    let counted = || kinds.iter().zip(&job.shapes).filter(|(_, shape)| shape.count > 0);
    let longest = counted().map(|(kind, _)| kind.shortest()).fold(0.0, f64::max);
    let locked =
        job.locked.iter().filter_map(|l| kinds.get(l.shape)?.stance(l.pose).map(|s| s.right(l))).fold(0.0, f64::max);
    // Pieces that must lie in one part of the width fill at least that part.
    let parts: Vec<(f64, f64)> = counted().map(|(kind, _)| kind.part()).chain([(0.0, job.width)]).collect();
    let by_area = |(from, to): &(f64, f64)| {
        let inside = counted().filter(|(kind, _)| kind.part().0 >= *from && kind.part().1 <= *to);
        let area: f64 = inside.map(|(kind, shape)| kind.area * shape.count as f64).sum();
        if to > from { area / (to - from) } else { 0.0 }
    };
    // Outlines may overlap a little, so that a hundredth of a mm is let go.
    (parts.iter().map(by_area).fold(0.0, f64::max).max(longest) - lay::DEEP).max(locked).max(0.0)
}

/// The length that is bought for a strip of this length, mm: the sum with what is bought before, rounded up to a step, less that.
pub(super) fn sold(job: &Job, length: f64) -> f64 {
    if job.step > 0.0 { ((length + job.before - lay::STEP) / job.step).ceil() * job.step - job.before } else { length }
}

/// Whether nothing is to be gained any more: the length is the least, or no step is in reach.
pub(super) fn is_least(job: &Job, length: f64, bound: f64) -> bool {
    length <= bound * (1.0 + lay::LEAST) || job.step > 0.0 && sold(job, length) <= sold(job, bound)
}
