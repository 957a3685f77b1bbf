//! From the rule of a strip to strips that are cut: lengths with ends, widths with allowances, and how they come out of cloth.
//!
//! Bias strips by geometry: they lie at 45°, so one across cloth of width w is w·√2 long, strips lie their width times √2 apart along the
//! selvedge, and a join on the diagonal with allowance a takes 2·√2·a of their length.

use std::f64::consts::SQRT_2;

use crate::base::tolerance;
use crate::compute::{Formula, MaterialPlan, Model, StripPlan};
use crate::document::{Strip, StripGrain};

/// No piece shorter than this is joined into a bias strip, mm: common practice, no source.
pub const SHORTEST_PIECE: f64 = 300.0;
/// Cloth for joined strips is looked for in steps of so much, mm …
const CLOTH_STEP: f64 = 10.0;
/// … up to so many steps.
const MOST_STEPS: u32 = 10_000;

/// A strip in one case, lengths in mm. `None`: not told, or it cannot be computed there.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CutStrip {
    /// How many.
    pub count: u32,
    /// Finished length.
    pub finished: Option<f64>,
    /// Added at each end.
    pub ends: Option<f64>,
    /// Length as cut: finished, and both ends.
    pub cut: Option<f64>,
    /// Finished width.
    pub width: Option<f64>,
    /// Width as cut: finished times layers, and the allowance on both sides.
    pub cut_width: Option<f64>,
    /// Allowance on each side of a join; `None` where it is not joined.
    pub join: Option<f64>,
    /// How it lies on the cloth.
    pub grain: StripGrain,
}

/// How strips come out of cloth of one width, lengths in mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StripYield {
    /// The longest piece from selvedge to selvedge: on the bias with slanting ends; `None` along the thread.
    pub longest: Option<f64>,
    /// How many whole strips lie side by side; 0 where they must be joined.
    pub side_by_side: u32,
    /// Joins in all strips together, at the least.
    pub joins: u32,
    /// What the joins take of the length of strips, together.
    pub lost: f64,
    /// Length of cloth for all of them, exact.
    pub cloth: f64,
}

/// Why strips do not come out of a cloth.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum NoYield {
    /// The cloth is narrower than the strip is wide, or its selvedges leave nothing.
    TooNarrow,
    /// The strip is longer than the longest piece, mm, and nothing tells how it is joined.
    NotJoined(f64),
    /// It would take more cloth than is looked for.
    TooMuch,
}

impl CutStrip {
    /// A strip in a case.
    pub fn of(model: &Model, case: usize, plan: &StripPlan, strip: &Strip) -> Self {
        let told = |formula: &Option<Formula>, text: &str| match formula {
            Some(formula) => model.real(case, formula).ok(),
            // Empty is nothing; what was typed and cannot be read is missing.
            None => text.is_empty().then_some(0.0),
        };
        let finished = model.item(case, plan.length).and_then(|item| item.real());
        let (ends, allowance) = (told(&plan.ends, &strip.ends), told(&plan.allowance, &strip.allowance));
        let width = plan.width.as_ref().and_then(|f| model.real(case, f).ok());
        Self {
            count: strip.count.max(1),
            finished,
            ends,
            cut: finished.zip(ends).map(|(length, ends)| length + 2.0 * ends),
            width,
            cut_width: width.zip(allowance).map(|(w, a)| w * f64::from(strip.layers.max(1)) + 2.0 * a),
            join: plan.join.as_ref().and_then(|f| model.real(case, f).ok()),
            grain: strip.grain,
        }
    }

    /// Length of all of them together.
    pub fn total(&self) -> Option<f64> {
        Some(self.cut? * f64::from(self.count))
    }

    /// How they come out of cloth of this usable width, mm; nothing where a length or width is missing.
    pub fn from_cloth(&self, usable: f64) -> Option<Result<StripYield, NoYield>> {
        let (cut, wide) = (self.cut?, self.cut_width?);
        if !(cut > 0.0 && wide > 0.0) {
            return None;
        }
        if wide > usable + tolerance::EQUAL {
            return Some(Err(NoYield::TooNarrow));
        }
        Some(match self.grain {
            StripGrain::Along => Ok(self.along(cut, wide, usable)),
            StripGrain::Across => self.across(cut, wide, usable),
            StripGrain::Bias => self.bias(cut, wide, usable),
        })
    }

    /// Along the thread: side by side, in as many rows as it takes. Never joined.
    fn along(&self, cut: f64, wide: f64, usable: f64) -> StripYield {
        let side_by_side = whole(usable / wide);
        let cloth = f64::from(self.count.div_ceil(side_by_side)) * cut;
        StripYield { longest: None, side_by_side, joins: 0, lost: 0.0, cloth }
    }

    /// Across: from selvedge to selvedge, joined by straight seams where they are longer.
    fn across(&self, cut: f64, wide: f64, usable: f64) -> Result<StripYield, NoYield> {
        let fit = whole(usable / cut);
        if fit > 0 {
            let cloth = f64::from(self.count.div_ceil(fit)) * wide;
            return Ok(StripYield { longest: Some(usable), side_by_side: fit, joins: 0, lost: 0.0, cloth });
        }
        let join = self.join.ok_or(NoYield::NotJoined(usable))?;
        // Each piece beyond the first gives its length less a join.
        let gain = usable - 2.0 * join;
        if gain <= 0.0 {
            return Err(NoYield::TooNarrow);
        }
        let more = ((cut - usable) / gain - tolerance::EQUAL).ceil().max(0.0) as u32;
        let joins = more.saturating_mul(self.count);
        let cloth = f64::from((more + 1).saturating_mul(self.count)) * wide;
        let lost = f64::from(joins) * 2.0 * join;
        Ok(StripYield { longest: Some(usable), side_by_side: 0, joins, lost, cloth })
    }

    /// On the bias. Ends are cut square, which takes the strip's width once. Whole where the cloth is wide enough, else joined.
    fn bias(&self, cut: f64, wide: f64, usable: f64) -> Result<StripYield, NoYield> {
        let longest = usable * SQRT_2;
        let slant = cut + wide;
        if slant <= longest + tolerance::EQUAL {
            let (high, apart) = (slant / SQRT_2, wide * SQRT_2);
            // A strip with square ends needs a square of this height; each further one beside it only its own way along the edge. Row over
            // row along the weft, or column by column along the selvedge.
            let row = if usable + tolerance::EQUAL < high { 0 } else { whole((usable - high) / apart) + 1 };
            let column = whole(usable / high);
            let by_column = high + f64::from(self.count.div_ceil(column.max(1)).saturating_sub(1)) * apart;
            let by_row = high * f64::from(self.count.div_ceil(row.max(1)));
            let (side_by_side, cloth) =
                if row > 0 && by_row <= by_column { (row, by_row) } else { (column, by_column) };
            return Ok(StripYield { longest: Some(longest), side_by_side, joins: 0, lost: 0.0, cloth });
        }
        let join = self.join.ok_or(NoYield::NotJoined(longest - wide))?;
        let needed = cut * f64::from(self.count);
        // No less than the area.
        let first = (needed * wide / usable / CLOTH_STEP).floor() as u32;
        for step in first..first.saturating_add(MOST_STEPS) {
            let cloth = f64::from(step) * CLOTH_STEP;
            let (length, pieces) = bias_strip(cloth, usable, wide, join, SHORTEST_PIECE);
            if pieces > 0 && length >= needed - tolerance::EQUAL {
                let joins = pieces - 1;
                let lost = f64::from(joins) * 2.0 * SQRT_2 * join;
                return Ok(StripYield { longest: Some(longest), side_by_side: 0, joins, lost, cloth });
            }
        }
        Err(NoYield::TooMuch)
    }
}

/// How long a bias strip of this width comes out of a rectangle of cloth, all diagonals of it joined with this allowance, pieces under
/// `shortest` left out, its ends cut square; and of how many pieces. All in mm.
///
/// From corner to corner the diagonals are cut one beside the other; one that does not run from side to side loses its slanting end. A
/// published chart of strips from a yard has 0.75 to 0.88 of the area, this 0.76 to 0.93 (`tests/outside/strips.py`, which names it).
pub fn bias_strip(cloth: f64, usable: f64, wide: f64, join: f64, shortest: f64) -> (f64, u32) {
    let reach = (cloth + usable) / SQRT_2;
    let full = cloth.min(usable) * SQRT_2;
    let chord = |at: f64| (2.0 * at).min(full).min(2.0 * (reach - at));
    let (mut length, mut pieces) = (-wide, 0);
    for i in 0..whole(reach / wide) {
        let at = f64::from(i) * wide;
        let piece = chord(at).min(chord(at + wide));
        if piece >= shortest {
            length += piece - if pieces > 0 { 2.0 * SQRT_2 * join } else { 0.0 };
            pieces += 1;
        }
    }
    (length.max(0.0), pieces)
}

/// The widths of a material in a case less both selvedges: as sold and usable, mm. `None` where one cannot be computed.
pub fn widths(model: &Model, case: usize, material: &MaterialPlan) -> Vec<(Formula, Option<(f64, f64)>)> {
    let selvedge = match material.selvedge {
        Some(node) => model.item(case, node).and_then(|item| item.real()),
        None => Some(0.0),
    };
    let of = |width: &Formula| {
        let sold = model.real(case, width).ok()?;
        Some((sold, sold - 2.0 * selvedge?))
    };
    material.widths.iter().map(|w| (w.clone(), of(w))).collect()
}

/// How many whole ones; a hair's breadth short counts as whole.
fn whole(times: f64) -> u32 {
    (times + tolerance::EQUAL).floor().max(0.0) as u32
}
