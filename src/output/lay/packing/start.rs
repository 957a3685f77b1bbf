//! Where a search begins: pieces that are locked, and a layout that is told.

use super::check::{LayFault, faults};
use super::kind::Spot;
use super::strip::Strip;
use super::{Job, Laid, Layout, PackError};

/// Whether locked pieces lie as they may: in their ranges, apart, and no more than there are.
pub(super) fn check_locks(job: &Job) -> Result<(), PackError> {
    if job.locked.is_empty() {
        return Ok(());
    }
    // On a strip that is long enough for all of them.
    let length = job
        .locked
        .iter()
        .filter_map(|l| super::outline::laid(job, l))
        .map(|o| super::outline::bounds(&o).x1)
        .fold(0.0, f64::max);
    let layout = Layout { laid: job.locked.clone(), length };
    let few = |f: &LayFault| matches!(f, LayFault::Count { laid, asked, .. } if laid <= asked);
    if faults(job, &layout).iter().all(few) { Ok(()) } else { Err(PackError::Locked) }
}

/// Lays the locked pieces.
pub(super) fn lock(strip: &mut Strip) {
    for i in 0..strip.pieces.len() {
        if let Some(laid) = strip.pieces[i].locked
            && let Some(spot) = spot(strip, i, &laid)
        {
            strip.put(i, spot);
        }
    }
}

/// Where a told piece lies, if its pose fits; clamped to its range.
fn spot(strip: &Strip, i: usize, laid: &Laid) -> Option<Spot> {
    let kind = &strip.kinds[strip.pieces[i].kind];
    let stance =
        kind.stances.iter().position(|s| s.pose == laid.pose).or(strip.pieces[i].locked.is_none().then_some(0))?;
    let (x, y) = kind.stances.get(stance)?.middle(laid);
    if !x.is_finite() || !y.is_finite() {
        return None;
    }
    let (x, y) = if strip.pieces[i].locked.is_some() { (x, y) } else { kind.stances[stance].clamped(x, y, f32::MAX) };
    Some(Spot { stance, x, y })
}

/// Where a told layout lays each piece; none for those that it does not tell. A told piece that lies at a locked one's place stands for that.
pub(super) fn spots(strip: &Strip, layout: &Layout) -> Vec<Option<Spot>> {
    let mut left: Vec<Laid> = layout.laid.clone();
    let mut found = vec![None; strip.pieces.len()];
    for (i, piece) in strip.pieces.iter().enumerate() {
        if let Some(lock) = piece.locked {
            found[i] = Some(piece.spot);
            let off = |l: &Laid| (l.x - lock.x).abs() + (l.y - lock.y).abs();
            let near = (0..left.len())
                .filter(|k| left[*k].shape == lock.shape)
                .min_by(|a, b| off(&left[*a]).total_cmp(&off(&left[*b])));
            if let Some(near) = near {
                left.remove(near);
            }
        }
    }
    for (i, piece) in strip.pieces.iter().enumerate().filter(|(_, p)| p.locked.is_none()) {
        if let Some(k) = left.iter().position(|l| l.shape == piece.kind) {
            found[i] = spot(strip, i, &left.remove(k));
        }
    }
    found
}
