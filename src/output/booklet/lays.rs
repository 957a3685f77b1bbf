//! How the pieces lie on the cloth: the lay plans that the draft keeps, drawn small with what they need, those of one cloth together.

use std::sync::Arc;

use kurbo::Size;

use super::BookletOrder;
use crate::document::LayPlan;
use crate::finish::{ClothBook, letters};
use crate::output::lay::{Lay, Named, cloth_words, common_words, kept_lays_of, lay_rows, need_words, sizes_words};
use crate::output::writing::Block;
use crate::texts::t;

/// The room of a row of lays, mm: the column of a page, and no more than two long ones on one.
const ROOM: Size = Size::new(174.0, 100.0);

/// The plans of the sizes of the booklet, and of several garments together; none where no plan is kept. A plan that is not of these pieces any
/// more is left out here: its error stands in the way of a release.
pub(super) fn lays(order: &BookletOrder<'_>) -> Vec<Block> {
    let (draft, model) = (order.draft, order.model);
    if draft.plans.iter().all(|p| p.view != model.view()) {
        return Vec::new();
    }
    let addresses: Vec<&str> =
        order.cases.iter().filter_map(|c| Some(model.plan.cases.list.get(*c)?.address.as_str())).collect();
    let is_told = |plan: &LayPlan| plan.sizes.iter().all(|s| addresses.contains(&s.size.as_str()));
    let signs = letters(model);
    let mut cloths: Vec<(String, Vec<(String, Lay)>)> = Vec::new();
    for one in kept_lays_of(&ClothBook::new(model, order.finished), &is_told) {
        let plan = &draft.plans[one.place];
        let Ok(lay) = one.lay else { continue };
        let sizes: Vec<(String, u32)> = plan.sizes.iter().map(|s| (s.size.clone(), s.count)).collect();
        let (cloth, own) = (cloth_words(&lay), (sizes_words(&sizes), lay));
        match cloths.iter_mut().find(|(c, _)| *c == cloth) {
            Some((_, all)) => all.push(own),
            None => cloths.push((cloth, vec![own])),
        }
    }
    let mut out = Vec::new();
    for (cloth, all) in cloths {
        let named: Vec<Named<'_>> = all.iter().map(|(name, lay)| (name.clone(), lay)).collect();
        out.push(Block::Heading { level: 3, text: cloth.clone() });
        out.push(Block::Paragraph(common_words(&named, &signs).join(" ")));
        for (picture, places) in lay_rows(&named, &signs, ROOM) {
            let one = |k: &usize| format!("{}: {}", named[*k].0, need_words(named[*k].1));
            let says = places.iter().map(one).collect::<Vec<_>>().join(" ");
            let says = t!("lay-figure-says", cloth, plans = says);
            out.push(Block::Figure { picture: Arc::new(picture), says, caption: String::new() });
        }
    }
    out
}
