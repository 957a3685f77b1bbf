//! How the pieces lie on the cloth: the lay plans that the draft keeps, each drawn small with what it needs.

use std::sync::Arc;

use kurbo::Size;

use super::BookletOrder;
use crate::document::LayPlan;
use crate::finish::{ClothBook, letters};
use crate::output::lay::{kept_lays, lay_figure, lay_words};
use crate::output::writing::Block;

/// The room of a figure, mm: the column of a page, and no more than three on one.
const ROOM: Size = Size::new(174.0, 84.0);

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
    let mut out = Vec::new();
    for one in kept_lays(&ClothBook::new(model, order.finished)) {
        let plan = &draft.plans[one.place];
        let Some(lay) = one.lay.ok().filter(|_| is_told(plan)) else { continue };
        let (picture, scale) = lay_figure(&lay, &signs, ROOM);
        let words = lay_words(&lay, &signs);
        out.push(Block::Heading { level: 3, text: plan.name.replace('_', " ") });
        out.push(Block::Figure {
            picture: Arc::new(picture),
            says: format!("Lay plan {}: {}", plan.name, words.join(" ")),
            caption: format!("{} Drawn 1 : {}.", words.join(" "), scale.ceil()),
        });
    }
    out
}
