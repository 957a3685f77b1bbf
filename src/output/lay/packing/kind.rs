//! The kinds of pieces of a job, made ready for the search: each pose with its form, its box and where it may lie.
//!
//! The search tells places by the middle of a shape's box, in single precision; here that is turned into places of the shape's origin, and
//! back.

use kurbo::{Point, Rect, Vec2};

use super::engine::{Circle, Form};
use super::outline::{area, bounds, posed};
use super::{Job, Laid, PackError, Pose, Touch};
use crate::base::tolerance::lay;

/// A shape of the job.
#[derive(Clone, Debug)]
pub(super) struct Kind {
    /// The poses in which it fits on the strip; at least one if any piece of it is to be laid.
    pub(super) stances: Vec<Stance>,
    /// Its true area, mm².
    pub(super) area: f64,
    /// The area of its hull, mm².
    pub(super) hull: f32,
    /// Its diameter, mm.
    pub(super) diameter: f32,
    /// Whether it is free to go anywhere across the strip: no stance must touch anything.
    pub(super) free: bool,
    /// Whether it fills its box nearly, so that it is worth trying to lay it flush with others.
    pub(super) boxy: bool,
}

/// A shape in one of its poses.
#[derive(Clone, Debug)]
pub(super) struct Stance {
    /// The pose, by its place in the job.
    pub(super) pose: usize,
    /// What is tried on the field.
    pub(super) form: Form,
    /// To be moved about while it is tried.
    pub(super) try_on: Form,
    /// The circles of the form.
    pub(super) circles: Vec<Circle>,
    /// Half of the length and of the width of its box, mm.
    pub(super) half: (f32, f32),
    /// Where its middle may lie across the strip: least and most, mm. Both are the same where it must touch.
    pub(super) across: (f32, f32),
    /// From the shape's origin to the middle of its box, mm.
    middle: Vec2,
    /// Its box about the origin.
    exact: Rect,
    /// Where the box's lower side may lie, in full precision, mm.
    room: (f64, f64),
}

/// Where a piece lies: its stance, by its place, and the middle of its box.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Spot {
    /// The stance.
    pub(super) stance: usize,
    /// Along the strip, mm.
    pub(super) x: f32,
    /// Across it, mm.
    pub(super) y: f32,
}

/// All shapes of a job made ready; the error is that of the first which cannot be.
pub(super) fn kinds(job: &Job) -> Result<Vec<Kind>, PackError> {
    (0..job.shapes.len()).map(|shape| kind(job, shape)).collect()
}

fn kind(job: &Job, shape: usize) -> Result<Kind, PackError> {
    let (told, no_outline) = (&job.shapes[shape], PackError::NoOutline { shape });
    let numbers =
        told.poses.iter().all(|p| p.turned.is_finite() && p.across.from.is_finite() && p.across.to.is_finite());
    if told.outline.len() < 3 || !told.outline.iter().all(|p| p.is_finite()) || !numbers {
        return Err(no_outline);
    }
    let middle = bounds(&told.outline).center().to_vec2();
    let mut about: Vec<Point> = told.outline.iter().map(|p| *p - middle).collect();
    about.dedup_by(|a, b| a.distance(*b) <= f64::from(lay::TOUCHING));
    while about.len() > 3 && about[0].distance(about[about.len() - 1]) <= f64::from(lay::TOUCHING) {
        about.pop();
    }
    let plain: Vec<(f64, f64)> = about.iter().map(|p| (p.x, p.y)).collect();
    let grown = if job.gap > 0.0 { job.gap / 2.0 * (1.0 + lay::ROUND) } else { 0.0 };
    let base = Form::new(&plain, grown).ok_or(no_outline)?;
    let (mut stances, mut nearest) = (Vec::new(), None::<(f64, f64)>);
    for (place, pose) in told.poses.iter().enumerate() {
        match stance(job, &told.outline, &base, place, pose, middle) {
            Ok(stance) => stances.push(stance),
            Err(tight) if nearest.is_none_or(|n| tight.0 - tight.1 < n.0 - n.1) => nearest = Some(tight),
            Err(_) => {}
        }
    }
    if stances.is_empty() && told.count > 0 {
        let (least, room) = nearest.unwrap_or((0.0, 0.0));
        return Err(PackError::TooWide { shape, least, room: room.max(0.0) });
    }
    let area = area(&told.outline);
    let filled = |s: &Stance| area >= s.exact.area() * 0.98;
    Ok(Kind {
        area,
        hull: base.hull_area(),
        diameter: base.diameter(),
        free: told.poses.iter().all(|p| p.across.touch == Touch::Free),
        boxy: stances.iter().any(filled),
        stances,
    })
}

/// A pose made ready; where it does not fit, how wide it is and the room that it has.
fn stance(
    job: &Job,
    outline: &[Point],
    base: &Form,
    place: usize,
    pose: &Pose,
    middle: Vec2,
) -> Result<Stance, (f64, f64)> {
    let exact = bounds(&posed(outline, pose));
    let (from, to) = match pose.across.touch {
        Touch::Free => (pose.across.from.max(0.0), pose.across.to.min(job.width)),
        Touch::From | Touch::To => (pose.across.from, pose.across.to),
    };
    let wide = exact.height();
    let within = from >= -lay::DEEP && to <= job.width + lay::DEEP;
    if wide > to - from + lay::DEEP || !within {
        return Err((wide, to - from));
    }
    let last = (to - wide).max(from);
    let room = match pose.across.touch {
        Touch::Free => (from, last),
        Touch::From => (from, from),
        Touch::To => (to - wide, to - wide),
    };
    let turned = posed(&[middle.to_point()], pose)[0].to_vec2();
    let form = base.turned(pose.mirrored, pose.turned.rem_euclid(360.0).to_radians() as f32);
    let box_middle = exact.center().to_vec2();
    // The form's origin is the turned middle of the shape; that of quarter turns is the middle of the box, others are off it.
    let off = turned - box_middle;
    let form = if off.hypot() > f64::from(lay::TOUCHING) { form.moved(off.x as f32, off.y as f32) } else { form };
    Ok(Stance {
        pose: place,
        circles: form.circles(),
        try_on: form.clone(),
        form,
        half: ((exact.width() / 2.0) as f32, (wide / 2.0) as f32),
        across: ((room.0 + wide / 2.0) as f32, (room.1 + wide / 2.0) as f32),
        middle: box_middle,
        exact,
        room,
    })
}

impl Stance {
    /// Where its middle may lie on a strip of this length: least and most along, least and most across, mm.
    pub(super) fn allowed(&self, length: f32) -> [f32; 4] {
        [self.half.0, (length - self.half.0).max(self.half.0), self.across.0, self.across.1]
    }

    /// The same place, moved as little as needed to lie where it may.
    pub(super) fn clamped(&self, x: f32, y: f32, length: f32) -> (f32, f32) {
        let [x0, x1, y0, y1] = self.allowed(length);
        (x.clamp(x0, x1), y.clamp(y0, y1))
    }

    /// The shorter side of its box, mm.
    pub(super) fn least_side(&self) -> f32 {
        2.0 * self.half.0.min(self.half.1)
    }

    /// The piece as it is told, in full precision: exactly inside its range, and exactly touching.
    pub(super) fn laid(&self, shape: usize, spot: &Spot) -> Laid {
        let x = (f64::from(spot.x) - self.middle.x).max(-self.exact.x0);
        let y = f64::from(spot.y) - self.middle.y + self.exact.y0;
        let y = y.clamp(self.room.0, self.room.1) - self.exact.y0;
        Laid { shape, pose: self.pose, x, y }
    }

    /// The right end of a piece that is told, mm.
    pub(super) fn right(&self, laid: &Laid) -> f64 {
        laid.x + self.exact.x1
    }

    /// The middle of the box of a piece that is told.
    pub(super) fn middle(&self, laid: &Laid) -> (f32, f32) {
        ((laid.x + self.middle.x) as f32, (laid.y + self.middle.y) as f32)
    }
}

impl Kind {
    /// The least length of any of its stances, mm.
    pub(super) fn shortest(&self) -> f64 {
        let least = self.stances.iter().map(|s| s.exact.width()).fold(f64::INFINITY, f64::min);
        if least.is_finite() { least } else { 0.0 }
    }

    /// The part of the width in which it must lie in one stance or another, mm.
    pub(super) fn part(&self) -> (f64, f64) {
        let part = |s: &Stance| (s.room.0, s.room.1 + s.exact.height());
        self.stances.iter().map(part).fold((f64::INFINITY, f64::NEG_INFINITY), |a, b| (a.0.min(b.0), a.1.max(b.1)))
    }

    /// The stance of a pose of the job, if it fits.
    pub(super) fn stance(&self, pose: usize) -> Option<&Stance> {
        self.stances.iter().find(|s| s.pose == pose)
    }
}
