//! Numbers as a person would write them: rounded to what the eye can point at, in the draft's unit.

use crate::base::{DisplayUnit, Unit};
use crate::language::literal_text;

/// How numbers are rounded that come from pointing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rounding {
    unit: DisplayUnit,
    /// Lengths are multiples of this, mm.
    step: f64,
    /// Angles are multiples of this, degrees.
    degrees: f64,
}

impl Rounding {
    /// Rounding for a screen that shows a millimetre as so many pixels: no coarser than about two of them.
    pub fn of(unit: DisplayUnit, scale: f64) -> Self {
        const PIXELS: f64 = 2.0;
        const METRIC: &[f64] = &[10.0, 5.0, 2.0, 1.0, 0.5, 0.2, 0.1];
        const INCHES: &[f64] = &[25.4, 12.7, 6.35, 3.175, 1.5875];
        let steps = match unit {
            DisplayUnit::Cm | DisplayUnit::Mm => METRIC,
            DisplayUnit::InchEighths | DisplayUnit::InchSixteenths => INCHES,
        };
        let fine = steps.iter().copied().find(|s| s * scale <= PIXELS).unwrap_or(steps[steps.len() - 1]);
        Self { unit, step: fine, degrees: if scale < 1.0 { 1.0 } else { 0.5 } }
    }

    /// A length, rounded, as a literal; `0` keeps its unit.
    pub fn length(&self, mm: f64) -> String {
        let steps = (mm / self.step).round();
        match self.unit {
            DisplayUnit::Cm => literal_text(steps * self.step, Some(Unit::Centimetre)),
            DisplayUnit::Mm => literal_text(steps * self.step, Some(Unit::Millimetre)),
            DisplayUnit::InchEighths | DisplayUnit::InchSixteenths => inches(steps * self.step),
        }
    }

    /// An angle, rounded, as a literal.
    pub fn angle(&self, radians: f64) -> String {
        let steps = (radians.to_degrees() / self.degrees).round();
        format!("{}°", steps * self.degrees + 0.0)
    }
}

/// Inches as a fraction of sixteenths: `1 3/8 in`.
fn inches(mm: f64) -> String {
    const SIXTEENTH: f64 = 1.5875;
    let all = (mm / SIXTEENTH).round() as i64;
    let (sign, all) = if all < 0 { ("-", -all) } else { ("", all) };
    let (whole, mut over, mut under) = (all / 16, all % 16, 16);
    while over > 0 && over % 2 == 0 {
        (over, under) = (over / 2, under / 2);
    }
    match (whole, over) {
        (whole, 0) => format!("{sign}{whole} in"),
        (0, over) => format!("{sign}{over}/{under} in"),
        (whole, over) => format!("{sign}{whole} {over}/{under} in"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lengths_are_written_as_a_person_would() {
        let cm = Rounding::of(DisplayUnit::Cm, 1.0);
        assert_eq!(cm.length(123.4), "12.4 cm");
        assert_eq!(cm.length(-0.4), "0 cm");
        assert_eq!(Rounding::of(DisplayUnit::Mm, 10.0).length(7.26), "7.2 mm");
        let inch = Rounding::of(DisplayUnit::InchEighths, 1.0);
        assert_eq!(inch.length(25.4 * 1.375), "1 3/8 in");
        assert_eq!(inch.length(25.4 * -0.25), "-1/4 in");
        assert_eq!(inch.length(50.8), "2 in");
        assert_eq!(cm.angle(0.5), "28.5°");
        assert_eq!(cm.angle(-1e-9), "0°");
    }

    #[test]
    fn rounding_follows_the_scale() {
        for (scale, step) in [(0.1, 10.0), (0.5, 2.0), (2.0, 1.0), (4.0, 0.5), (40.0, 0.1)] {
            assert_eq!(Rounding::of(DisplayUnit::Cm, scale).step, step, "{scale}");
        }
    }
}
