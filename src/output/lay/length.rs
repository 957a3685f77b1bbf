//! How much cloth must be bought for a lay: with what strips take, with what is lost in washing, rounded up to the step in which it is sold.

use crate::base::{self, DisplayUnit, round_half_away, tolerance};
use crate::document::ClothLaid;
use crate::texts;

/// Cloth is sold in steps of so much where nothing else is told, mm: common practice, no source.
const STEP_CM: f64 = 100.0;
/// A yard, mm.
pub(super) const YARD: f64 = 914.4;
/// The same where lengths are in inches: an eighth of a yard.
const STEP_YARD: f64 = YARD / 8.0;
/// Steps of the yard are whole eighths of an inch, mm.
pub(super) const EIGHTH: f64 = 3.175;

/// How much cloth a lay needs, mm.
#[derive(Clone, Debug, PartialEq)]
pub struct Need {
    /// Each stretch: how the cloth lies, and its length.
    pub stretches: Vec<(ClothLaid, f64)>,
    /// For strips that are counted.
    pub counted: f64,
    /// All of it, before washing.
    pub exact: f64,
    /// To buy where cloth is sold by centimetres.
    pub buy: f64,
    /// To buy where it is sold by yards.
    pub buy_yards: f64,
}

/// The usual step, mm.
pub(super) fn usual_step(unit: DisplayUnit) -> f64 {
    if is_inches(unit) { STEP_YARD } else { STEP_CM }
}

fn is_inches(unit: DisplayUnit) -> bool {
    matches!(unit, DisplayUnit::InchEighths | DisplayUnit::InchSixteenths)
}

/// A length rounded up to a step, mm; what is above a step by no more than pieces may overlap stays.
pub fn rounded_up(mm: f64, step: f64) -> f64 {
    base::rounded_up(mm, step, tolerance::lay::STEP)
}

impl Need {
    /// Of stretches that are so long, with strips, for cloth that loses this part of its length and is sold in these steps.
    pub fn of(stretches: Vec<(ClothLaid, f64)>, counted: f64, shrinks: f64, sold_in: Option<f64>) -> Self {
        let laid: f64 = stretches.iter().map(|s| s.1).sum();
        let exact = (laid + counted) / (1.0 - shrinks);
        // A step that is told is one of centimetres or one of the yard; the other is the usual one.
        let of_yard = |step: f64| (step / EIGHTH - (step / EIGHTH).round()).abs() * EIGHTH <= tolerance::EQUAL;
        let buy = rounded_up(exact, sold_in.filter(|s| !of_yard(*s)).unwrap_or(STEP_CM));
        let buy_yards = rounded_up(exact, sold_in.filter(|s| of_yard(*s)).unwrap_or(STEP_YARD));
        Self { stretches, counted, exact, buy, buy_yards }
    }

    /// What is bought, mm: in the unit of the draft.
    pub fn bought(&self, unit: DisplayUnit) -> f64 {
        if is_inches(unit) { self.buy_yards } else { self.buy }
    }
}

/// A length in yards and their sixteenths or eighths: `1 1/8 yd`.
pub fn yards(mm: f64) -> String {
    let parts = (round_half_away(mm, YARD / 16.0) / (YARD / 16.0)).round() as i64;
    let (whole, mut over, mut under) = (parts / 16, parts % 16, 16);
    while over != 0 && over % 2 == 0 {
        over /= 2;
        under /= 2;
    }
    match (whole, over) {
        (_, 0) => format!("{whole} yd"),
        (0, _) => format!("{over}/{under} yd"),
        _ => format!("{whole} {over}/{under} yd"),
    }
}

/// A length in yards with three decimals, for what is not rounded yet: `0.833 yd`.
pub fn yards_exact(mm: f64) -> String {
    format!("{} yd", texts::decimal(&format!("{:.3}", mm / YARD)))
}

/// A length in cm and in inches.
pub(super) fn both(mm: f64) -> String {
    format!("{} ({})", texts::length(mm, DisplayUnit::Cm), texts::length(mm, DisplayUnit::InchEighths))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A piece of 20 x 30 in with its grain along the length: 30 in, that is 0.833 yd, sold as 7/8 yd. Published wrongly as 14 yd.
    #[test]
    fn thirty_inches_are_seven_eighths_of_a_yard() {
        let need = Need::of(vec![(ClothLaid::Open, 30.0 * 25.4)], 0.0, 0.0, None);
        assert_eq!(yards_exact(need.exact), "0.833 yd");
        assert_eq!(yards(need.buy_yards), "7/8 yd");
        assert_eq!(need.buy, 800.0);
    }

    /// Planned 1.10 yd is sold as 1 1/8, never as the 3/4 that was printed.
    #[test]
    fn what_is_sold_is_never_less_than_what_is_planned() {
        let need = Need::of(vec![(ClothLaid::Open, 1.1 * YARD)], 0.0, 0.0, None);
        assert_eq!(yards(need.buy_yards), "1 1/8 yd");
        let exact = Need::of(vec![(ClothLaid::Open, 1000.0)], 0.0, 0.0, None);
        assert_eq!(exact.buy, 1000.0);
        let more = Need::of(vec![(ClothLaid::Open, 1000.02)], 0.0, 0.0, None);
        assert_eq!(more.buy, 1100.0);
        assert_eq!(yards(2.0 * YARD), "2 yd");
    }

    /// Cloth that loses a twentieth: 95 cm laid are 100 cm bought; a told step counts in its own unit alone.
    #[test]
    fn washing_and_steps() {
        let need = Need::of(vec![(ClothLaid::Folded, 900.0)], 50.0, 0.05, Some(50.0));
        assert!((need.exact - 1000.0).abs() < tolerance::EQUAL);
        assert_eq!((need.buy, yards(need.buy_yards).as_str()), (1000.0, "1 1/8 yd"));
        let need = Need::of(vec![(ClothLaid::Open, 1010.0)], 0.0, 0.0, Some(50.0));
        assert_eq!(need.buy, 1050.0);
        let need = Need::of(vec![(ClothLaid::Open, 850.0)], 0.0, 0.0, Some(YARD / 4.0));
        assert_eq!((need.buy, yards(need.buy_yards).as_str()), (900.0, "1 yd"));
    }
}
