//! What a piece says of itself beside its name: how often it is cut from what, grain and nap, of which garment and edition it is.

use kurbo::Point;

use super::booklet::allowance_in_short;
use crate::base::tolerance::limit::JOINT_ANGLE;
use crate::compute::{CutPlan, Model, PieceFinishing};
use crate::document::{Draft, Nap};
use crate::finish::{FinishedPiece, Symmetry, cut_words, outline_words, pair_words, unfolded};
use crate::texts::{date, decimal, t};

/// Garment, edition and date, as they stand on every piece; what is not told is left out.
pub(super) fn about(draft: &Draft) -> Vec<String> {
    [draft.title.clone(), edition_words(draft)].into_iter().filter(|w| !w.is_empty()).collect()
}

/// Edition and date, as printed: `edition 2, 2026-11-01`.
pub fn edition_words(draft: &Draft) -> String {
    match (draft.edition.as_str(), draft.date.as_str()) {
        ("", told) => date(told),
        (edition, "") => t!("edition", edition),
        (edition, told) => t!("edition-of", edition, date = date(told)),
    }
}

/// How a piece is cut, a line for each material: count, pairs, and what its arrow cannot say of grain and nap. `fold`: the piece is
/// drawn whole over this line, so it does not lie on the fold.
pub(super) fn cut_notes(
    (draft, model): (&Draft, &Model),
    case: usize,
    finishing: &PieceFinishing,
    made: &FinishedPiece,
    fold: Option<(Point, Point)>,
) -> Vec<String> {
    let stitch = fold.map_or_else(|| made.stitch.clone(), |fold| unfolded(&made.stitch, fold));
    let symmetry = Symmetry::of(&stitch, 0.0);
    let heading = |cut: &CutPlan| cut.heading.as_ref().and_then(|f| model.real(case, f).ok());
    let drawn = finishing.cuts.iter().find_map(heading);
    let mut out: Vec<String> = Vec::new();
    let mut last = String::new();
    for cut in &finishing.cuts {
        let own = CutPlan { on_fold: cut.on_fold.filter(|_| fold.is_none()), ..cut.clone() };
        let pairs = pair_words(&own, symmetry).map_or_else(String::new, |w| format!(", {w}"));
        let outline =
            Some(outline_words(cut.outline)).filter(|w| !w.is_empty()).map_or_else(String::new, |w| format!(", {w}"));
        out.push(format!("{}{outline}{pairs}", cut_words(&own, symmetry)));
        let grain = grain_words(draft, cut, heading(cut), drawn);
        if grain != last && !grain.is_empty() {
            out.push(grain.clone());
        }
        last = grain;
    }
    // Of the line that is drawn; where several cuts differ, the booklet says how.
    if let Some(cut) = made.cuts.first() {
        out.push(allowance_in_short(cut));
    }
    if fold.is_some() {
        out.push(t!("label-whole"));
    }
    out
}

/// What the arrow cannot say, or says only to whoever knows.
fn grain_words(draft: &Draft, cut: &CutPlan, heading: Option<f64>, drawn: Option<f64>) -> String {
    let Some(heading) = heading else { return String::new() };
    let mut words: Vec<String> = Vec::new();
    // Only one arrow is drawn.
    let off = drawn.map_or(0.0, |drawn| between(heading, drawn));
    if off > JOINT_ANGLE {
        let degrees = crate::base::round_half_away(off.to_degrees(), 1.0);
        words.push(t!("label-thread-off", degrees = decimal(&degrees.to_string())));
    }
    let eighth = std::f64::consts::FRAC_PI_4;
    let bias = [heading, heading + std::f64::consts::FRAC_PI_2].iter().any(|h| between(*h, eighth) <= JOINT_ANGLE);
    if bias {
        words.push(t!("grain-bias"));
    }
    let nap = draft.materials.iter().any(|m| m.name == *cut.material && m.nap == Nap::With);
    match (nap, cut.both_ways) {
        (true, _) if bias => words.push(t!("label-nap-along")),
        (true, _) if off <= JOINT_ANGLE => words.push(t!("label-nap-arrow", way = way_words(heading))),
        (true, _) => words.push(t!("label-nap", way = way_words(heading))),
        (false, true) => words.push(t!("label-either-way")),
        (false, false) => words.push(t!("label-one-way")),
    }
    words.join(", ")
}

/// The angle between two threads, 0 to a quarter turn.
fn between(a: f64, b: f64) -> f64 {
    let half = std::f64::consts::PI;
    let off = (a - b).rem_euclid(half);
    off.min(half - off)
}

/// Which way a heading points on the piece as it is drawn.
fn way_words(heading: f64) -> String {
    let (x, y) = (libm::cos(heading), libm::sin(heading));
    match (y.abs() >= x.abs(), y > 0.0, x > 0.0) {
        (true, true, _) => t!("way-down"),
        (true, false, _) => t!("way-up"),
        (false, _, true) => t!("way-right"),
        (false, _, false) => t!("way-left"),
    }
}
