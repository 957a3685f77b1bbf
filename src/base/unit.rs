//! Units of length: as typed and as shown.

use serde::{Deserialize, Serialize};

/// A unit that can stand behind a number in a formula.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unit {
    /// Millimetre.
    Millimetre,
    /// Centimetre.
    Centimetre,
    /// Metre.
    Metre,
    /// Inch, 25.4 mm exactly.
    Inch,
    /// Foot, 12 in.
    Foot,
    /// Yard, 36 in.
    Yard,
    /// Degree.
    Degree,
    /// Hundredth.
    Percent,
}

impl Unit {
    /// The unit whose sign is `text`.
    pub fn of(text: &str) -> Option<Self> {
        Some(match text {
            "mm" => Self::Millimetre,
            "cm" => Self::Centimetre,
            "m" => Self::Metre,
            "in" => Self::Inch,
            "ft" => Self::Foot,
            "yd" => Self::Yard,
            "deg" | "°" => Self::Degree,
            "%" => Self::Percent,
            _ => return None,
        })
    }

    /// Its sign in files.
    pub fn sign(self) -> &'static str {
        match self {
            Self::Millimetre => "mm",
            Self::Centimetre => "cm",
            Self::Metre => "m",
            Self::Inch => "in",
            Self::Foot => "ft",
            Self::Yard => "yd",
            Self::Degree => "deg",
            Self::Percent => "%",
        }
    }

    /// Whether it is a unit of length.
    pub fn is_length(self) -> bool {
        !matches!(self, Self::Degree | Self::Percent)
    }

    /// What one of it is inside: mm, radians or a plain number.
    ///
    /// Returned as a multiplier and a divisor, so that `3 mm`, `0.1 in` and `15 %` are as exact as their decimals allow.
    pub fn inside(self) -> (f64, f64) {
        match self {
            Self::Millimetre => (1.0, 1.0),
            Self::Centimetre => (10.0, 1.0),
            Self::Metre => (1000.0, 1.0),
            Self::Inch => (254.0, 10.0),
            Self::Foot => (3048.0, 10.0),
            Self::Yard => (9144.0, 10.0),
            Self::Degree => (std::f64::consts::PI, 180.0),
            Self::Percent => (1.0, 100.0),
        }
    }
}

/// The unit in which a draft shows lengths.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum DisplayUnit {
    /// Centimetres, to a tenth of a millimetre.
    #[default]
    Cm,
    /// Millimetres, to a tenth.
    Mm,
    /// Inches, to the nearest eighth.
    InchEighths,
    /// Inches, to the nearest sixteenth.
    InchSixteenths,
}
