//! What is wanted to be laid: which sizes of which view on which cloth.

use crate::compute::Model;
use crate::document::{ClothLaid, LayPlan, Nap};
use crate::finish::{ClothBook, ClothCall, Finished, plan_call, plan_view, widths};
use crate::output::lay::{LayError, LayJob, lay_job};

/// A lay that is wanted.
#[derive(Clone, Debug, PartialEq)]
pub struct LayWish {
    /// The view, by its place; 0 where the draft has none.
    pub view: usize,
    /// The width as it is typed, such as `45 in`.
    pub width: String,
    /// What comes on which cloth.
    pub call: ClothCall,
}

/// The lays that a draft wants of itself: each size of the range on each width of each material from which anything is cut, view by view.
/// Where a width hangs on the size it is the one of that size.
pub fn usual_wishes(model: &Model) -> Vec<LayWish> {
    let mut out = Vec::new();
    for (view, own) in model.of_views().iter().enumerate() {
        let plan = &own.plan;
        for material in &plan.publishing.materials {
            let Some(told) = own.draft.materials.get(material.place) else { continue };
            let frames = (0..own.draft.pieces.len()).filter(|f| plan.has_frame(*f));
            let cuts = frames.flat_map(|f| &plan.frames()[f].finishing.cuts).any(|c| *c.material == *told.name);
            let strips = plan.publishing.strips.iter().filter(|s| plan.is_needed(s.length));
            if !cuts && !strips.into_iter().any(|s| own.draft.strips[s.place].material == told.name) {
                continue;
            }
            for which in 0..material.widths.len() {
                for case in 0..plan.cases.range {
                    let Some((formula, Some((width, _)))) = widths(own, case, material).into_iter().nth(which) else {
                        continue;
                    };
                    let call = ClothCall {
                        material: told.name.clone(),
                        width,
                        laid: None,
                        nap: None,
                        folded_part: None,
                        sizes: vec![(case, 1)],
                    };
                    out.push(LayWish { view, width: formula.text.to_string(), call });
                }
            }
        }
    }
    out
}

/// The wish that a kept plan is an answer to. `model` is of the whole draft.
pub fn wish_of_plan(model: &Model, plan: &LayPlan) -> Option<LayWish> {
    let view = plan_view(model, plan)?;
    let call = plan_call(&model.of_views()[view], plan).ok()?;
    Some(LayWish { view, width: plan.width.clone(), call })
}

/// What is to be laid for a wish. `model` and `finished` are of the whole draft.
///
/// # Errors
/// See [`LayError`].
pub fn job_of(model: &Model, finished: &Finished, wish: &LayWish) -> Result<LayJob, LayError> {
    let books = books(model, finished);
    job_from(&books, wish)
}

/// What is known of the pieces of each view.
pub(super) fn books<'a>(model: &'a Model, finished: &'a Finished) -> Vec<ClothBook<'a>> {
    model.of_views().iter().zip(finished.of_views()).map(|(m, f)| ClothBook::new(m, f)).collect()
}

/// What is to be laid for a wish.
pub(super) fn job_from(books: &[ClothBook<'_>], wish: &LayWish) -> Result<LayJob, LayError> {
    let book = &books[wish.view.min(books.len() - 1)];
    lay_job(book.model(), book.on_cloth(&wish.call)?)
}

/// What a plan is called: material, width, sizes, and what is unusual. `model` is its view's.
pub fn plan_name(model: &Model, wish: &LayWish) -> String {
    let call = &wish.call;
    let told = model.draft.materials.iter().find(|m| m.name == call.material);
    let sizes = call.sizes.iter().map(|(case, count)| {
        let address = model.plan.cases.list.get(*case).map_or("", |c| c.address.as_str());
        if *count == 1 { address.to_owned() } else { format!("{count} x {address}") }
    });
    let sizes: Vec<String> = sizes.collect();
    let mut out = format!("{} {}, {}", call.material, wish.width, sizes.join(" + "));
    if !model.view().is_empty() {
        out = format!("{}, {out}", model.view());
    }
    if let Some(laid) = call.laid.filter(|l| told.is_none_or(|m| m.laid != *l)) {
        let words = match laid {
            ClothLaid::Open => "open",
            ClothLaid::Folded => "folded",
            ClothLaid::FoldedToMiddle => "folded to the middle",
            ClothLaid::FoldedPart => "folded in part",
        };
        out.push_str(&format!(", {words}"));
    }
    if let Some(nap) = call.nap.filter(|n| told.is_none_or(|m| (m.nap == Nap::With) != *n)) {
        out.push_str(if nap { ", with nap" } else { ", without nap" });
    }
    out
}
