//! What may be done with a piece in the hand, and in words why something may not: turned by half, turned over, carried to another place.

use super::hand::LayHand;
use crate::base::tolerance;
use crate::document::Face;
use crate::output::lay::packing::{Laid, Pose, Touch};
use crate::output::lay::{Lay, LayShape};
use crate::texts::say;

/// A piece that is carried away from its fold or border by more than this is told that it stays there, mm.
const PULLED: f64 = 8.0;

impl LayHand {
    /// What a piece is.
    pub fn shape(&self, stretch: usize, piece: usize) -> Option<&LayShape> {
        let laid = self.lay.layouts.get(stretch)?.laid.get(piece)?;
        self.lay.job.stretches.get(stretch)?.shapes.get(laid.shape)
    }

    /// Turns a piece by half about the middle of its box.
    ///
    /// # Errors
    /// Why it may not lie so.
    pub fn turn_half(&mut self, stretch: usize, piece: usize) -> Result<(), String> {
        let (name, about) = self.free(stretch, piece)?;
        let why = if self.lay.job.on.cloth.nap {
            say!("turn-nap", name)
        } else if about.at_border {
            say!("turn-border", name)
        } else {
            say!("turn-one-way", name)
        };
        self.repose(stretch, piece, &|now, to| far_turned(now, to) == 180.0).then_some(()).ok_or(why)
    }

    /// Turns a piece over about the length of the cloth.
    ///
    /// # Errors
    /// Why it may not lie so.
    pub fn turn_over(&mut self, stretch: usize, piece: usize) -> Result<(), String> {
        let (name, about) = self.free(stretch, piece)?;
        let why = if about.on_fold {
            say!("turn-fold", name)
        } else if about.at_border {
            say!("turn-border", name)
        } else if about.face == Face::Pairs {
            say!("turn-second", name)
        } else {
            say!("turn-face", name)
        };
        let over = |now: &Pose, to: &Pose| now.mirrored != to.mirrored && far_turned(now, to) == 0.0;
        self.repose(stretch, piece, &over).then_some(()).ok_or(why)
    }

    /// Puts the first corner of a piece's box at a place, mm, or as near to it as it may lie; where its cloth is folded on both sides, on the
    /// side that is nearer.
    ///
    /// # Errors
    /// Why it does not lie there; it is as near as it may.
    pub fn carry(&mut self, stretch: usize, piece: usize, x: f64, y: f64) -> Result<(), String> {
        let (name, about) = self.free(stretch, piece)?;
        let Some(laid) = self.laid(stretch, piece) else { return Ok(()) };
        let high = self.lay.room(stretch, &laid).height();
        let off = |pose: &Pose| {
            let most = (pose.across.to - high).max(pose.across.from);
            match pose.across.touch {
                Touch::Free => (y.clamp(pose.across.from, most) - y).abs(),
                Touch::From => (y - pose.across.from).abs(),
                Touch::To => (y - most).abs(),
            }
        };
        let Some(now) = self.lay.pose(stretch, &laid).copied() else { return Ok(()) };
        let poses = &self.lay.job.stretches[stretch].job.shapes[laid.shape].poses;
        let alike = |p: &Pose| p.turned == now.turned && (p.mirrored == now.mirrored || about.on_fold);
        let near = (0..poses.len())
            .filter(|k| alike(&poses[*k]) && off(&poses[*k]) + tolerance::LAID < off(&now))
            .min_by(|a, b| off(&poses[*a]).total_cmp(&off(&poses[*b])));
        if let Some(pose) = near {
            self.lay.layouts[stretch].laid[piece].pose = pose;
        }
        self.put(stretch, piece, x, y);
        let touch = self.lay.pose(stretch, &laid).map(|p| p.across.touch);
        let far = self.laid(stretch, piece).map_or(0.0, |l| (self.lay.room(stretch, &l).y0 - y).abs());
        match touch {
            Some(Touch::From | Touch::To) if far > PULLED && about.on_fold => Err(say!("turn-on-fold", name)),
            Some(Touch::From | Touch::To) if far > PULLED => Err(say!("turn-at-border", name)),
            _ => Ok(()),
        }
    }

    /// Another lay of the same job in the hand: pieces that lie as they were locked stay locked.
    pub fn taken_over(&self, lay: Lay) -> Self {
        let mut out = Self::of(lay);
        for (stretch, piece) in &self.locked {
            let Some(was) = self.laid(*stretch, *piece) else { continue };
            let is_it = |l: &Laid| {
                let off = (l.x - was.x).abs().max((l.y - was.y).abs());
                (l.shape, l.pose) == (was.shape, was.pose) && off <= tolerance::LAID
            };
            let all = out.lay.layouts.get(*stretch).map_or(&[][..], |l| &l.laid);
            let found = (0..all.len()).find(|i| is_it(&all[*i]) && !out.is_locked(*stretch, *i));
            if let Some(found) = found {
                out.lock(*stretch, found, true);
            }
        }
        out
    }

    fn laid(&self, stretch: usize, piece: usize) -> Option<Laid> {
        self.lay.layouts.get(stretch)?.laid.get(piece).copied()
    }

    /// A piece that is not locked: its name in words, and what it is.
    fn free(&self, stretch: usize, piece: usize) -> Result<(String, LayShape), String> {
        let about = self.shape(stretch, piece).ok_or_else(|| say!("turn-no-piece"))?.clone();
        let name = about.name.replace('_', " ");
        if self.is_locked(stretch, piece) {
            return Err(say!("turn-locked", name));
        }
        Ok((name, about))
    }

    /// Lays a piece in a pose that stands so to the one it has, about the middle of its box; whether there is one.
    fn repose(&mut self, stretch: usize, piece: usize, wanted: &dyn Fn(&Pose, &Pose) -> bool) -> bool {
        let Some(laid) = self.laid(stretch, piece) else { return false };
        let Some(now) = self.lay.pose(stretch, &laid).copied() else { return false };
        let poses = &self.lay.job.stretches[stretch].job.shapes[laid.shape].poses;
        // Not turned over and on the same part of the width, if that can be.
        let rank = |p: &Pose| (p.mirrored != now.mirrored, p.across != now.across);
        let Some(pose) = (0..poses.len()).filter(|k| wanted(&now, &poses[*k])).min_by_key(|k| rank(&poses[*k])) else {
            return false;
        };
        let middle = self.lay.room(stretch, &laid).center();
        self.lay.layouts[stretch].laid[piece].pose = pose;
        let after = self.lay.room(stretch, &Laid { pose, ..laid });
        let corner = middle - (after.center() - after.origin());
        self.put(stretch, piece, corner.x, corner.y);
        true
    }
}

/// By how much one pose is turned against another, degrees.
fn far_turned(now: &Pose, to: &Pose) -> f64 {
    (to.turned - now.turned).rem_euclid(360.0)
}
