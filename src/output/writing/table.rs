//! Tables: one for every thing that is counted or measured, sizes across.

use crate::base::DisplayUnit;
use crate::base::{round_half_away, rounded_up, shown, tolerance};
use crate::texts::{decimal, inch};

/// A table that can be used as a page alone: its title says of what it is, its notes all that is needed to read it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Table {
    /// Its name in names of files: letters, digits and `-` ("body-chart").
    pub name: String,
    /// Its title.
    pub title: String,
    /// Sentences that stand before it: what is measured, by which rule.
    pub before: Vec<String>,
    /// Heads of the columns; the first is that of the lines' names.
    pub head: Vec<String>,
    /// Its lines, each with one cell less than the head.
    pub lines: Vec<Line>,
    /// Sentences that stand under it.
    pub notes: Vec<String>,
}

/// A line of a table.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Line {
    /// What stands before it over the whole width, where it differs from the line before: lines of one group belong together.
    pub group: String,
    /// Its name.
    pub name: String,
    /// Its cells.
    pub cells: Vec<Cell>,
}

/// A cell of a table.
#[derive(Clone, Debug, Default, PartialEq)]
pub enum Cell {
    /// Nothing is told here.
    #[default]
    Empty,
    /// It cannot be computed in this size: shown as a dash, never as a number.
    Missing,
    /// Words.
    Words(String),
    /// How many.
    Count(u64),
    /// A number without a unit.
    Number(f64),
    /// An angle, radians.
    Angle(f64),
    /// A length, mm: shown in centimetres and in inches, each from this value.
    Length(f64),
    /// A length to buy, mm: in whole centimetres, and in eighths of an inch, each rounded up from what is needed.
    ToBuy([f64; 2]),
    /// Any of these with a sign behind it that a note of the table explains.
    Signed(Box<Self>, &'static str),
}

/// A unit in which a line is shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Shown {
    /// Without a unit.
    Plain,
    /// Centimetres, one decimal.
    Cm,
    /// Inches, to the nearest eighth.
    Inches,
}

impl Shown {
    /// Its sign.
    pub fn word(self) -> String {
        match self {
            Self::Plain => String::new(),
            Self::Cm => "cm".to_owned(),
            Self::Inches => inch(),
        }
    }
}

impl Table {
    /// Whether any of its lines is shown once for each unit.
    pub fn has_units(&self) -> bool {
        self.lines.iter().any(Line::has_units)
    }
}

impl Line {
    /// Whether it is shown once for each unit.
    pub fn has_units(&self) -> bool {
        self.cells.iter().any(Cell::has_units)
    }

    /// In which units it is shown, one row each.
    pub fn units(&self) -> &'static [Shown] {
        if self.has_units() { &[Shown::Cm, Shown::Inches] } else { &[Shown::Plain] }
    }
}

impl Cell {
    /// What is bought where so much is needed, mm.
    pub fn to_buy(mm: f64) -> Self {
        Self::ToBuy([10.0, 25.4 / 8.0].map(|step| rounded_up(mm, step, tolerance::EQUAL)))
    }

    /// With a sign behind it.
    pub fn signed(self, sign: &'static str) -> Self {
        Self::Signed(Box::new(self), sign)
    }

    /// Without a sign.
    pub fn unsigned(&self) -> &Self {
        match self {
            Self::Signed(cell, _) => cell.unsigned(),
            other => other,
        }
    }

    /// Its sign; empty where it has none.
    pub fn sign(&self) -> &'static str {
        match self {
            Self::Signed(_, sign) => sign,
            _ => "",
        }
    }

    /// As it is shown in a unit, without its sign.
    pub fn shown(&self, unit: Shown) -> String {
        match unit {
            Shown::Inches => self.in_inches(),
            Shown::Cm | Shown::Plain => self.in_cm(),
        }
    }

    /// Whether it is shown once for each unit.
    pub fn has_units(&self) -> bool {
        match self {
            Self::Length(_) | Self::ToBuy(_) => true,
            Self::Signed(cell, _) => cell.has_units(),
            _ => false,
        }
    }

    /// As it is shown in centimetres, one decimal, without the unit.
    pub fn in_cm(&self) -> String {
        match self {
            // One decimal always, so that columns of numbers stand under each other.
            Self::Length(mm) | Self::ToBuy([mm, _]) => {
                let tenths = round_half_away(*mm, 1.0).round();
                let text = format!("{:.1}", tenths / 10.0);
                decimal(if text == "-0.0" { "0.0" } else { &text })
            }
            Self::Signed(cell, sign) => format!("{}{sign}", cell.in_cm()),
            other => other.plain(),
        }
    }

    /// As it is shown in inches, to the nearest eighth, without the unit.
    pub fn in_inches(&self) -> String {
        match self {
            Self::Length(mm) | Self::ToBuy([_, mm]) => {
                shown(*mm, DisplayUnit::InchEighths).trim_end_matches(" in").to_owned()
            }
            Self::Signed(cell, sign) => format!("{}{sign}", cell.in_inches()),
            other => other.plain(),
        }
    }

    /// Anything but a length.
    fn plain(&self) -> String {
        match self {
            Self::Empty => String::new(),
            Self::Missing | Self::Length(_) | Self::ToBuy(_) => "–".to_owned(),
            Self::Words(words) => words.clone(),
            Self::Count(count) => count.to_string(),
            Self::Number(number) => trimmed(*number, 3),
            Self::Angle(radians) => format!("{}°", trimmed(radians.to_degrees(), 1)),
            Self::Signed(cell, sign) => format!("{}{sign}", cell.plain()),
        }
    }
}

/// At most so many decimals.
pub(super) fn trimmed(value: f64, places: usize) -> String {
    let step = libm::pow(10.0, -(places as f64));
    let text = format!("{:.places$}", round_half_away(value, step));
    let text = text.trim_end_matches('0').trim_end_matches('.');
    decimal(if text == "-0" { "0" } else { text })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// 9.9 mm are not had from 3/8 in, which are 9.525 mm.
    #[test]
    fn what_is_bought_is_never_less_than_what_is_needed_in_either_unit() {
        let told = |mm: f64| (Cell::to_buy(mm).in_cm(), Cell::to_buy(mm).in_inches());
        assert_eq!(told(9.9), ("1.0".to_owned(), "1/2".to_owned()));
        assert_eq!(told(440.0), ("44.0".to_owned(), "17 3/8".to_owned()));
        assert_eq!(told(254.0 + 1e-9), ("26.0".to_owned(), "10".to_owned()));
        assert_eq!(told(0.0), ("0.0".to_owned(), "0".to_owned()));
    }
}
