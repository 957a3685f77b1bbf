//! How a picture lies under a piece: its place, scale and turn, and how they are found from points that are clicked on it.

use kurbo::{Affine, Point, Vec2};

use super::literal::number_typed;
use crate::base::{Unit, round_half_away, tolerance};
use crate::document::Picture;
use crate::language::literal_text;
use crate::texts::{decimal, owned, say};

/// The longest side of a picture that is not scaled yet is shown so long, mm.
const UNSCALED_MM: f64 = 400.0;

/// How a picture lies in a frame.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Lie {
    /// Its upper left corner, mm.
    pub at: Point,
    /// The length of one of its points, mm.
    pub scale: f64,
    /// Whether a person said that scale; else it is only shown so.
    pub is_scaled: bool,
    /// Turned clockwise about its corner, radians.
    pub turned: f64,
}

/// A length or angle as typed, below zero too.
fn typed(text: &str) -> Option<f64> {
    let (sign, rest) = match text.trim().strip_prefix('-') {
        Some(rest) => (-1.0, rest),
        None => (1.0, text),
    };
    let (value, unit) = number_typed(rest)?;
    let (times, over) = unit?.inside();
    Some(sign * value * times / over)
}

impl Lie {
    /// As it stands in the draft, for a picture of so many points.
    pub fn of(picture: &Picture, size: [u32; 2]) -> Self {
        let scale = typed(&picture.scale).filter(|s| *s > 0.0);
        let longest = f64::from(size[0].max(size[1]).max(1));
        Self {
            at: Point::new(typed(&picture.x).unwrap_or(0.0), typed(&picture.y).unwrap_or(0.0)),
            scale: scale.unwrap_or(UNSCALED_MM / longest),
            is_scaled: scale.is_some(),
            turned: typed(&picture.turned).unwrap_or(0.0),
        }
    }

    /// From points of the picture to the frame.
    pub fn map(&self) -> Affine {
        let (sin, cos) = (libm::sin(self.turned) * self.scale, libm::cos(self.turned) * self.scale);
        Affine::new([cos, sin, -sin, cos, self.at.x, self.at.y])
    }

    /// The point of the picture that lies at a place of the frame.
    pub fn under(&self, at: Point) -> Point {
        self.map().inverse() * at
    }

    /// The distance of two of its points, mm.
    pub fn distance(&self, a: Point, b: Point) -> f64 {
        (b - a).hypot() * self.scale
    }

    /// With the scale at which two of its points are `real` mm apart; the first stays where it lies.
    ///
    /// # Errors
    /// Why there is no such scale.
    pub fn scaled(self, [a, b]: [Point; 2], real: f64) -> Result<Self, String> {
        const NEAREST: f64 = 2.0;
        let apart = (b - a).hypot();
        if apart < NEAREST {
            return Err(say!("underlay-too-near"));
        }
        let place = self.map() * a;
        let scale = real / apart;
        if !(tolerance::CURVE..=LARGEST_POINT).contains(&scale) {
            return Err(say!("underlay-pixel", mm = owned(|| decimal(&format!("{scale:.4}")))));
        }
        Ok(Self { scale, is_scaled: true, ..self }.with(a, place))
    }

    /// Turned so that two of its points lie level or plumb, by the shorter way; the first stays where it lies.
    ///
    /// # Errors
    /// Where the points lie on each other.
    pub fn straightened(self, [a, b]: [Point; 2], plumb: bool) -> Result<Self, String> {
        use std::f64::consts::{FRAC_PI_2, PI};
        let place = self.map() * a;
        let way = self.map() * b - place;
        if (b - a).hypot() < 2.0 {
            return Err(say!("underlay-too-near"));
        }
        let wanted = if plumb { FRAC_PI_2 } else { 0.0 };
        let off = libm::atan2(way.y, way.x) - wanted;
        let off = off - PI * (off / PI).round();
        Ok(Self { turned: self.turned - off, ..self }.with(a, place))
    }

    /// Moved along.
    pub fn moved(self, by: Vec2) -> Self {
        Self { at: self.at + by, ..self }
    }

    /// With a point of the picture at a place of the frame.
    fn with(self, point: Point, place: Point) -> Self {
        self.moved(place - self.map() * point)
    }

    /// Written down: places to 0.01 mm, in the draft's unit.
    pub fn write(&self, picture: &mut Picture, unit: Unit) {
        let text = |mm: f64| literal_text(round_half_away(mm, tolerance::TRACED_STEP), Some(unit));
        picture.x = text(self.at.x);
        picture.y = text(self.at.y);
        picture.scale = if self.is_scaled { trimmed(self.scale, 6, "mm") } else { String::new() };
        let degrees = self.turned.to_degrees();
        let degrees = degrees - 360.0 * (degrees / 360.0).round();
        picture.turned = if self.turned == 0.0 { String::new() } else { trimmed(degrees, 4, "deg") };
    }
}

/// One point of a picture is no larger than this, mm.
const LARGEST_POINT: f64 = 100.0;

fn trimmed(value: f64, places: usize, unit: &str) -> String {
    let text = format!("{value:.places$}");
    format!("{} {unit}", text.trim_end_matches('0').trim_end_matches('.'))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    #[test]
    fn two_points_scale_and_straighten_and_the_first_stays() {
        let start = Lie::of(&Picture { x: "-3 cm".into(), y: "2 cm".into(), ..Picture::default() }, [800, 400]);
        assert!(!start.is_scaled && start.at == Point::new(-30.0, 20.0) && start.scale == 0.5);
        let (a, b) = (Point::new(100.0, 50.0), Point::new(400.0, 450.0));
        let place = start.map() * a;
        let scaled = start.scaled([a, b], 250.0).unwrap();
        assert!((scaled.scale - 0.5).abs() < 1e-12 && scaled.is_scaled);
        for (plumb, x, y) in [(false, 250.0, 0.0), (true, 0.0, 250.0)] {
            let now = scaled.straightened([a, b], plumb).unwrap();
            let (one, other) = (now.map() * a, now.map() * b);
            assert!((one - place).hypot() < 1e-9);
            assert!(((other - one).x.abs() - x).abs() < 1e-9 && ((other - one).y.abs() - y).abs() < 1e-9);
            // What is written reads the same.
            let mut picture = Picture::default();
            now.write(&mut picture, Unit::Centimetre);
            let read = Lie::of(&picture, [800, 400]);
            assert!((read.map() * b - other).hypot() < 0.05, "{picture:?}");
            assert!((read.under(other) - b).hypot() < 0.2);
        }
        assert!(start.scaled([a, a], 10.0).is_err() && start.straightened([a, a], true).is_err());
        assert!(start.scaled([a, b], 1e9).is_err());
    }
}
