//! Lay plans that are kept in a draft: of what they are, and whether they still are.
//!
//! How pieces lie on the cloth is `output::lay`'s; here stand only the numbers as they were written down.

use std::collections::BTreeMap;

use super::limits::literal;
use super::{ClothBook, ClothCall, ClothPiece, ClothStrip, OnCloth};
use crate::base::{digest, round_half_away, tolerance};
use crate::compute::{Model, unit_of};
use crate::document::{LaidPiece, LayPlan, Nap};
use crate::language::Kind;
use crate::texts::say;

/// Where a plan and its draft stand to each other.
#[derive(Clone, Debug, PartialEq)]
pub enum PlanState {
    /// It is a plan of these pieces.
    Fresh,
    /// Outlines, counts, the cloth or the places are others.
    Stale,
    /// It names what is not there, or cannot be computed: in words.
    Lost(String),
}

/// A length of a plan, mm.
pub fn plan_length(model: &Model, text: &str) -> Option<f64> {
    literal(text, Kind::LENGTH, unit_of(&model.draft)).ok().filter(|v| v.is_finite())
}

/// A turn of a plan, degrees; empty is none.
pub fn plan_turn(model: &Model, text: &str) -> Option<f64> {
    if text.is_empty() {
        return Some(0.0);
    }
    let radians = literal(text, Kind::Angle, unit_of(&model.draft)).ok()?;
    let degrees = radians.to_degrees();
    // Turns are whole degrees or written with decimals; a sine of them is taken from the rounded one.
    let near = degrees.round();
    Some(if (degrees - near).abs() <= tolerance::EQUAL { near } else { degrees })
}

/// The view of a plan, by its place. `model` is of the whole draft.
pub fn plan_view(model: &Model, plan: &LayPlan) -> Option<usize> {
    if model.views.is_empty() {
        return plan.view.is_empty().then_some(0);
    }
    model.of_views().iter().position(|v| v.view() == plan.view)
}

/// What a plan is a plan of; `model` is its view's.
///
/// # Errors
/// What it names and is not there, in words.
pub fn plan_call(model: &Model, plan: &LayPlan) -> Result<ClothCall, String> {
    let mut sizes = Vec::new();
    for size in &plan.sizes {
        let Some(case) = case_of_size(model, &size.size) else {
            return Err(say!("kept-plan-no-size", size = size.size));
        };
        sizes.push((case, size.count.max(1)));
    }
    let width = plan_length(model, &plan.width).filter(|w| *w > 0.0);
    let width = width.ok_or_else(|| say!("kept-plan-width", width = plan.width))?;
    let folded_part = if plan.folded_part.is_empty() {
        None
    } else {
        let told = plan_length(model, &plan.folded_part);
        Some(told.ok_or_else(|| say!("kept-plan-folded", width = plan.folded_part))?)
    };
    Ok(ClothCall {
        material: plan.material.clone(),
        width,
        laid: Some(plan.laid),
        nap: Some(plan.nap == Nap::With),
        folded_part,
        sizes,
    })
}

/// Digest of what is laid and where. Names do not count, so that renaming a piece makes no plan another; a place that was changed by other
/// means than laying does.
pub fn plan_digest(model: &Model, on: &OnCloth, plan: &LayPlan) -> String {
    let mut all: Vec<u128> = plan.places.iter().map(|p| place_digest(model, on, plan, p)).collect();
    all.sort_unstable();
    let mut bytes: Vec<u8> = on.digest().to_be_bytes().to_vec();
    bytes.extend(all.iter().flat_map(|d| d.to_be_bytes()));
    format!("{:032x}", digest(&[&bytes]))
}

/// What lies at a place of a plan.
enum Placed<'a> {
    Piece(&'a ClothPiece),
    Strip(&'a ClothStrip),
}

fn placed<'a>(model: &Model, on: &'a OnCloth, plan: &LayPlan, place: &LaidPiece) -> Option<Placed<'a>> {
    let case = case_of(model, plan, place)?;
    if place.strip {
        let is_it = |s: &&ClothStrip| model.draft.strips[s.place].name == place.piece && s.case == case;
        return on.strips.iter().find(is_it).map(Placed::Strip);
    }
    let is_it = |p: &&ClothPiece| {
        model.draft.pieces[p.frame].name == place.piece && p.cut == place.cut as usize && p.case == case
    };
    on.pieces.iter().find(is_it).map(Placed::Piece)
}

fn place_digest(model: &Model, on: &OnCloth, plan: &LayPlan, place: &LaidPiece) -> u128 {
    let what = placed(model, on, plan, place).map(|placed| match placed {
        Placed::Strip(strip) => strip.digest(),
        Placed::Piece(piece) => piece.digest(),
    });
    let mut bytes: Vec<u8> = what.unwrap_or(0).to_be_bytes().to_vec();
    bytes.extend(place.stretch.to_be_bytes());
    bytes.push(u8::from(place.mirrored));
    // Only where it is so, so that plans that know nothing of it keep their digests.
    bytes.extend(place.one_layer.then_some(1));
    let turned = plan_turn(model, &place.turned);
    for number in [plan_length(model, &place.x), plan_length(model, &place.y), turned] {
        // What cannot be read is no place.
        let steps =
            number.map_or(i64::MIN, |v| (round_half_away(v, tolerance::COMPARED) / tolerance::COMPARED).round() as i64);
        bytes.extend(steps.to_be_bytes());
    }
    digest(&[&bytes])
}

/// The case of a place: told, or that of the plan's only size.
pub fn case_of(model: &Model, plan: &LayPlan, place: &LaidPiece) -> Option<usize> {
    let size = match (place.size.as_str(), plan.sizes.as_slice()) {
        ("", [only]) => &only.size,
        (size, _) => size,
    };
    case_of_size(model, size)
}

/// The case of a size of a view.
pub fn case_of_size(model: &Model, size: &str) -> Option<usize> {
    model.plan.cases.list.iter().position(|c| c.address == *size)
}

/// Whether a plan of a view is still one of its draft.
pub fn plan_state(book: &ClothBook<'_>, plan: &LayPlan) -> PlanState {
    plan_cloth(book, plan).map_or_else(|state| state, |_| PlanState::Fresh)
}

/// What a plan of a view lies of, while it is one of its draft.
///
/// # Errors
/// Where it is none any more: how it stands.
pub fn plan_cloth(book: &ClothBook<'_>, plan: &LayPlan) -> Result<OnCloth, PlanState> {
    let call = plan_call(book.model(), plan).map_err(PlanState::Lost)?;
    let on = book.on_cloth(&call).map_err(|why| PlanState::Lost(why.to_string()))?;
    if plan_digest(book.model(), &on, plan) == plan.digest { Ok(on) } else { Err(PlanState::Stale) }
}

/// How much cloth a plan of a view needs that lies of this, mm, as its places say: what `output::lay` measures of a sound one. None where it
/// cannot be told.
pub fn plan_need(model: &Model, on: &OnCloth, plan: &LayPlan) -> Option<f64> {
    let mut ends: BTreeMap<u32, f64> = BTreeMap::new();
    for place in &plan.places {
        let (long, wide) = match placed(model, on, plan, place)? {
            Placed::Strip(strip) => (strip.cut.cut?, strip.cut.cut_width?),
            Placed::Piece(piece) => {
                let xs = piece.outline.iter().map(|p| p.x);
                let (least, most) = xs.fold((f64::MAX, f64::MIN), |(l, m), x| (l.min(x), m.max(x)));
                // Pieces lie along their thread, turned by nothing or by half, and a half is as long as the whole.
                (most - least, 0.0)
            }
        };
        let turned = plan_turn(model, &place.turned)?.to_radians();
        let long = long * libm::cos(turned).abs() + wide * libm::sin(turned).abs();
        let end = ends.entry(place.stretch).or_insert(0.0);
        *end = end.max(plan_length(model, &place.x)? + long);
    }
    let counted = on.strips.iter().filter(|s| !s.laid);
    let counted = counted.map(|s| Some(s.from_cloth(on.cloth.usable)?.ok()?.cloth)).sum::<Option<f64>>()?;
    Some((ends.values().sum::<f64>() + counted) / (1.0 - on.cloth.shrinks))
}
