//! One cell of a block: what it becomes in the draft, or why it cannot.

use crate::base::{DisplayUnit, Unit};
use crate::document::Chart;
use crate::language::{parse, tidy};
use crate::session::literal::number_typed;
use crate::texts::{message, say};

/// What the numbers of a row are, as far as those that were typed tell.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Holds {
    /// Lengths, or nothing yet.
    Lengths,
    /// Angles.
    Angles,
    /// Plain numbers and shares.
    Plain,
}

impl Holds {
    /// What a row's texts hold.
    pub fn of<'a>(texts: impl Iterator<Item = &'a str>) -> Self {
        match texts.filter_map(number_typed).next() {
            Some((_, Some(Unit::Degree))) => Self::Angles,
            Some((_, None | Some(Unit::Percent))) => Self::Plain,
            _ => Self::Lengths,
        }
    }

    /// What cannot stand in such a row.
    fn refused(self) -> String {
        match self {
            Self::Lengths => say!("cell-lengths"),
            Self::Angles => say!("cell-angles"),
            Self::Plain => say!("cell-plain"),
        }
    }
}

/// The text that a cell gets. `unit`: of numbers without one. `rows`: names that a formula may hold.
pub(super) fn cell_text(
    typed: &str,
    unit: Option<Unit>,
    holds: Holds,
    chart: &Chart,
    new_rows: &[String],
) -> Result<String, String> {
    let text = tidy(typed);
    if let Some((_, own)) = number_typed(&text) {
        let is = match own {
            None => None,
            Some(Unit::Degree) => Some(Holds::Angles),
            Some(Unit::Percent) => Some(Holds::Plain),
            Some(_) => Some(Holds::Lengths),
        };
        return match is {
            Some(is) if is != holds => Err(holds.refused()),
            Some(_) => Ok(text),
            None if holds == Holds::Plain => Ok(text),
            None => with_unit(&text, unit, holds),
        };
    }
    // `33 1/8` is a number once a unit stands behind it.
    if number_typed(&format!("{text} in")).is_some() {
        return with_unit(&text, unit, holds);
    }
    if let Some(rest) = text.strip_prefix('-').or_else(|| text.strip_prefix('+'))
        && number_typed(rest).is_some()
    {
        return Err(say!("cell-sign"));
    }
    let expr = parse(&text).map_err(|f| message(&f, DisplayUnit::Cm))?;
    let mut unknown = None;
    expr.each_name(&mut |parts| {
        let name = match parts {
            [word, name, ..] if word.text == "chart" => &name.text,
            [name, ..] => &name.text,
            [] => return,
        };
        if !chart.rows.iter().any(|r| r.name == *name) && !new_rows.contains(name) {
            unknown = Some(name.clone());
        }
    });
    match unknown {
        Some(name) => Err(say!("cell-no-row", name)),
        None => Ok(text),
    }
}

fn with_unit(text: &str, unit: Option<Unit>, holds: Holds) -> Result<String, String> {
    match unit {
        _ if holds == Holds::Angles => Err(say!("cell-angle-unit")),
        None => Err(say!("cell-no-unit")),
        Some(unit) if number_typed(text).is_none() && unit != Unit::Inch => {
            Err(say!("cell-fraction", unit = unit.sign()))
        }
        Some(unit) => Ok(format!("{text} {}", unit.sign())),
    }
}
