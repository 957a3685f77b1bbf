//! What is wanted to be laid: which sizes of which view on which cloth.

use crate::compute::Model;
use crate::document::{ClothLaid, LayPlan, Nap};
use crate::finish::{ClothBook, ClothCall, Finished, plan_call, plan_view, widths};
use crate::output::lay::{LayError, LayJob, lay_job};
use crate::texts::say;

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

/// All ways in which a wish is laid: the first is that of [`job_of`], in the others odd ones lie on two layers and are cut from one of them.
///
/// # Errors
/// See [`LayError`].
pub fn jobs_of(model: &Model, finished: &Finished, wish: &LayWish) -> Result<Vec<LayJob>, LayError> {
    jobs_from(&books(model, finished), wish)
}

/// What is known of the pieces of each view.
pub(super) fn books<'a>(model: &'a Model, finished: &'a Finished) -> Vec<ClothBook<'a>> {
    model.of_views().iter().zip(finished.of_views()).map(|(m, f)| ClothBook::new(m, f)).collect()
}

/// What is to be laid for a wish, odd ones on a single layer.
pub(super) fn job_from(books: &[ClothBook<'_>], wish: &LayWish) -> Result<LayJob, LayError> {
    let book = &books[wish.view.min(books.len() - 1)];
    lay_job(book.model(), book.on_cloth(&wish.call)?, &[])
}

/// The same in all ways: the first is that of [`job_from`].
pub(super) fn jobs_from(books: &[ClothBook<'_>], wish: &LayWish) -> Result<Vec<LayJob>, LayError> {
    let model = books[wish.view.min(books.len() - 1)].model();
    let first = job_from(books, wish)?;
    let more: Vec<LayJob> =
        first.ways().iter().skip(1).map(|way| lay_job(model, first.on.clone(), way)).collect::<Result<_, _>>()?;
    Ok(std::iter::once(first).chain(more).collect())
}

/// What a plan is called: material, width, sizes, how it is laid if it is not open, nap if there is any. It says so also where the card of the
/// cloth does: that may say otherwise some day. `model` is its view's.
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
    let laid = call.laid.or(told.map(|m| m.laid)).unwrap_or_default();
    if laid != ClothLaid::Open {
        out.push_str(&format!(", {}", laid.words()));
    }
    if call.nap.unwrap_or_else(|| told.is_some_and(|m| m.nap == Nap::With)) {
        out.push_str(&format!(", {}", say!("lies-with-nap")));
    }
    out
}
