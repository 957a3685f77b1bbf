//! The texts of lay plans: names that follow when a piece, a strip, a material, a view or a size is renamed. Places are no texts.

use super::In;
use crate::document::{LayPlan, Part, Role};

/// The texts of one plan.
pub(super) fn plan(to: &mut In<'_, '_>, i: usize, plan: &mut LayPlan) {
    to.nth("plan name", i, Role::Words, &mut plan.name);
    to.nth("plan view", i, Role::View, &mut plan.view);
    to.nth("plan material", i, Role::Material, &mut plan.material);
    for (k, size) in plan.sizes.iter_mut().enumerate() {
        to.within("plan size", i, k, Role::Label, &mut size.size);
    }
    for (k, place) in plan.places.iter_mut().enumerate() {
        let role = if place.strip { Role::NameOf(Part::Strip(place.piece.clone())) } else { Role::Frame };
        to.within("plan piece", i, k, role, &mut place.piece);
        to.within("plan piece size", i, k, Role::Label, &mut place.size);
    }
}
