//! Packing: shapes on a strip of a given width, which is to be as short as possible.
//!
//! It knows no garments: what a shape is, how it may be turned and where across the strip it may lie is told by a [`Job`]. The strip begins at
//! x = 0 and runs on along x; y goes from 0 to its width. All lengths are in mm. It reads no clock: whoever asks is called back once for every
//! move and says how to go on. The same job, seed and moves give the same layout, bit for bit.

mod bound;
mod chance;
mod check;
mod disturb;
mod engine;
mod first;
mod kind;
mod outline;
mod overlap;
mod search;
mod slide;
mod start;
mod strip;

pub use check::{LayFault, faults};
pub(super) use outline::{area, bounds, posed};

use kurbo::Point;
use thiserror::Error;

use crate::base::tolerance::lay;

/// What is to be packed.
#[derive(Clone, Debug, PartialEq)]
pub struct Job {
    /// Width of the strip, mm.
    pub width: f64,
    /// What is laid on it.
    pub shapes: Vec<Shape>,
    /// The least distance between two pieces, mm.
    pub gap: f64,
    /// Pieces that stay where they are; they count among the copies of their shapes.
    pub locked: Vec<Laid>,
    /// The strip is sold by lengths of so much, mm; 0: any length. Nothing is gained by less than a step.
    pub step: f64,
    /// A length that is bought together with this strip, mm: steps are those of the sum.
    pub before: f64,
}

/// A shape, and how many of it are laid.
#[derive(Clone, Debug, PartialEq)]
pub struct Shape {
    /// Its outline, a simple polygon that contains the piece; either sense, not repeated at its end.
    pub outline: Vec<Point>,
    /// How many.
    pub count: usize,
    /// The ways in which each of them may lie; at least one.
    pub poses: Vec<Pose>,
}

impl Shape {
    /// Its area, mm².
    pub fn area(&self) -> f64 {
        area(&self.outline)
    }
}

/// A way in which a shape may lie: turned over, then turned, both about its origin; then it is moved.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pose {
    /// Turned over about the length of the strip: y becomes -y.
    pub mirrored: bool,
    /// Turned by so much, degrees, from x to y; quarter turns are exact.
    pub turned: f64,
    /// Where across the strip it may lie.
    pub across: Across,
}

/// The part of the strip's width in which the box of a piece must lie, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Across {
    /// From here …
    pub from: f64,
    /// … to here.
    pub to: f64,
    /// Whether it must touch one of them: an edge on the fold, or at a border.
    pub touch: Touch,
}

/// Which end of its range a piece must touch.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Touch {
    /// None.
    Free,
    /// The lesser one.
    From,
    /// The greater one.
    To,
}

/// A piece that is laid.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Laid {
    /// Its shape, by its place.
    pub shape: usize,
    /// Its pose, by its place.
    pub pose: usize,
    /// Where the shape's origin comes to lie, mm along the strip …
    pub x: f64,
    /// … and across.
    pub y: f64,
}

/// All pieces as they lie. Ordered by shape.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Layout {
    /// The pieces.
    pub laid: Vec<Laid>,
    /// How long the strip is, mm.
    pub length: f64,
}

/// What is done at the moment.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Phase {
    /// A first layout.
    First,
    /// Shorter lengths are tried.
    Explore,
    /// The best layout is pressed together.
    Compress,
}

/// How far a search is; told once for every move.
#[derive(Clone, Copy, Debug)]
pub struct Progress<'a> {
    /// What is done.
    pub phase: Phase,
    /// Moves of single pieces so far.
    pub moves: u64,
    /// The best layout so far.
    pub best: &'a Layout,
    /// Whether the best has changed since the last time.
    pub is_new: bool,
    /// No layout is shorter than this, mm.
    pub bound: f64,
}

/// How to go on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Go {
    /// As it is.
    On,
    /// To the next phase.
    Next,
    /// Stop with the best so far.
    Stop,
}

/// Why a search ended.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ended {
    /// It was told to.
    Told,
    /// All moves are used.
    Moves,
    /// The least length there can be, or no step less is in reach of it.
    Least,
}

/// How a search is made.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Effort<'a> {
    /// No more than so many moves of single pieces.
    pub moves: u64,
    /// Where chance begins.
    pub seed: u64,
    /// A layout to begin with: of shapes like these, or put together by hand. It may overlap.
    pub start: Option<&'a Layout>,
}

/// What was found.
#[derive(Clone, Debug, PartialEq)]
pub struct Packed {
    /// The layout; checked.
    pub layout: Layout,
    /// Moves that were used.
    pub moves: u64,
    /// Places that were tried in them.
    pub evaluations: u64,
    /// No layout is shorter than this, mm.
    pub bound: f64,
    /// Why it ended.
    pub ended: Ended,
}

/// Why there is no layout.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum PackError {
    /// A shape is wider than the strip, or than its part of it, in every pose.
    #[error("shape {shape} is at least {least:.1} mm wide and has {room:.1} mm")]
    TooWide {
        /// The shape, by its place.
        shape: usize,
        /// Its width in its narrowest pose, mm.
        least: f64,
        /// The room that it has, mm.
        room: f64,
    },
    /// An outline is no simple polygon with an area, or a number is not finite.
    #[error("shape {shape} is no outline")]
    NoOutline {
        /// The shape, by its place.
        shape: usize,
    },
    /// Locked pieces overlap, lie beyond the strip, or are more than there are.
    #[error("locked pieces do not lie as they may")]
    Locked,
    /// Width, gap or step is no number, or the strip has no width.
    #[error("the width of the strip, its gap or its step is not a number that can be")]
    Numbers,
    /// It was told to stop before there was a first layout.
    #[error("stopped before there was a layout")]
    Stopped,
    /// No layout without overlap was found.
    #[error("no layout was found")]
    NotFound,
    /// What was found did not stand the check on the true outlines, however far apart pieces were searched for.
    #[error("what was found overlaps")]
    Refused,
}

/// Looks for a short layout. `watch` is called once for every move, and for every piece of the first layout; what it answers counts at once.
/// Where it says stop before the first layout stands, there is none: pieces laid one behind the other would be no answer.
///
/// Its effort is bounded by `effort.moves`; besides, a strip is not made shorter than is possible or, where it is sold by steps, useful.
pub fn pack(job: &Job, effort: &Effort<'_>, watch: &mut dyn FnMut(&Progress<'_>) -> Go) -> Result<Packed, PackError> {
    let told = [job.width, job.gap, job.step, job.before];
    if told.iter().any(|n| !n.is_finite()) || job.width <= 0.0 {
        return Err(PackError::Numbers);
    }
    start::check_locks(job)?;
    let mut done = Err(PackError::Refused);
    for apart in lay::APART {
        if done != Err(PackError::Refused) {
            break;
        }
        let wider = Job { gap: job.gap + apart, ..job.clone() };
        let kinds = kind::kinds(&wider)?;
        done = search::search((job, &wider), kinds, effort, watch);
    }
    done
}
