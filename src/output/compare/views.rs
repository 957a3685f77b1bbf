//! Drafts with views: view by view, and what all views say alike is told once.

use super::{Comparison, Difference, Side, Sizes, in_view};
use crate::compute::{CaseError, Model};
use crate::document::Part;
use crate::texts::{current, t};

impl<'a> Side<'a> {
    /// The same draft in one of its views.
    fn of_view(&self, view: usize) -> Self {
        Self { model: &self.model.of_views()[view], finished: &self.finished.of_views()[view], ..*self }
    }
}

/// A view of both drafts: its name, and its places there.
type Both = (String, usize, usize);

/// Views of one name; a draft without views is set beside each view of the other; where no names agree, views go by their order.
fn both(old: &Model, new: &Model) -> Vec<Both> {
    let names = |m: &Model| m.of_views().iter().map(|v| v.view().to_owned()).collect::<Vec<_>>();
    let (was, is) = (names(old), names(new));
    let place = |list: &[String], name: &str| list.iter().position(|n| *n == *name);
    match (old.views.is_empty(), new.views.is_empty()) {
        (true, _) => is.into_iter().enumerate().map(|(i, name)| (name, 0, i)).collect(),
        (false, true) => was.into_iter().enumerate().map(|(i, name)| (name, i, 0)).collect(),
        (false, false) => {
            let same = is.iter().enumerate().filter_map(|(i, name)| Some((name.clone(), place(&was, name)?, i)));
            let same: Vec<Both> = same.collect();
            if same.is_empty() {
                let count = was.len().min(is.len());
                return is.into_iter().take(count).enumerate().map(|(i, name)| (name, i, i)).collect();
            }
            same
        }
    }
}

/// Compares two drafts in these views (none: in all that both have).
pub(super) fn compare(
    old: Side<'_>,
    new: Side<'_>,
    asked: &[String],
    views: &[String],
) -> Result<Comparison, CaseError> {
    let has = |model: &Model, name: &String| model.view_named(name).is_ok();
    for name in views {
        if !has(old.model, name) && !has(new.model, name) {
            let draft = if new.model.views.is_empty() { old.model } else { new.model };
            draft.view_named(name)?;
        }
    }
    let mut pairs = both(old.model, new.model);
    if let [(name, 0, 0)] = &pairs[..]
        && name.is_empty()
    {
        return in_view(old, new, asked);
    }
    if !views.is_empty() {
        pairs.retain(|(name, ..)| views.iter().any(|v| v.trim() == name));
    }
    let sizes = Sizes { language: current(), ..Sizes::default() };
    let mut out = Comparison { sizes, ..Comparison::default() };
    let mut told: Vec<(Difference, Vec<usize>)> = Vec::new();
    for (i, (_, was, is)) in pairs.iter().enumerate() {
        let found = in_view(old.of_view(*was), new.of_view(*is), asked)?;
        out.sizes = Sizes { ..found.sizes };
        for missing in found.not_compared {
            if !out.not_compared.contains(&missing) {
                out.not_compared.push(missing);
            }
        }
        // Each behind what stood before it in this view, and behind what only earlier views say there.
        let mut place = 0;
        for (n, difference) in found.differences.iter().enumerate() {
            if let Some(known) = told.iter().position(|(d, said)| d == difference && !said.contains(&i)) {
                told[known].1.push(i);
                place = known + 1;
                continue;
            }
            while told.get(place).is_some_and(|(d, _)| !found.differences[n + 1..].contains(d)) {
                place += 1;
            }
            told.insert(place, (difference.clone(), vec![i]));
            place += 1;
        }
    }
    let knows = |i: usize, part: &Part| {
        let (_, was, is) = &pairs[i];
        !lacks(&old.model.of_views()[*was], part) || !lacks(&new.model.of_views()[*is], part)
    };
    let dressed = told.into_iter().map(|(mut d, said)| {
        let all = (0..pairs.len()).all(|i| said.contains(&i) || !knows(i, &d.part));
        if !all && !matches!(d.part, Part::View(_)) {
            let names: Vec<&str> = said.iter().map(|i| pairs[*i].0.as_str()).collect();
            d.view = names.join(", ");
            d.called = format!("{}, {}", d.called, t!("of-view", view = d.view));
        }
        d
    });
    out.differences = dressed.collect();
    Ok(out)
}

/// Whether a view does not have a part, so that nothing is to be said of it there.
pub(super) fn lacks(model: &Model, part: &Part) -> bool {
    let plan = &model.plan;
    let is_named = |name: &str| plan.nodes.iter().position(|n| *n.part.name == *name);
    match part {
        Part::Piece(name) | Part::Drawing(name) | Part::Inner(name, ..) => {
            plan.frames().iter().position(|f| *f.name == **name).is_some_and(|f| !plan.has_frame(f))
        }
        Part::Seam(name) => plan.seams.iter().position(|s| *s.name == **name).is_some_and(|s| !plan.has_seam(s)),
        Part::Condition(name) => {
            let full = format!("condition.{name}");
            plan.view.is_some()
                && is_named(&format!("{full}.left")).is_some()
                && !plan.conditions.iter().any(|c| *c.name == *full)
        }
        Part::Measure(name) => is_named(&format!("measure.{name}")).is_some_and(|n| !plan.is_needed(n as u32)),
        Part::Value(name) => is_named(name).is_some_and(|n| !plan.is_needed(n as u32)),
        Part::Placement(name) => is_named(&format!("placement {name}")).is_some_and(|n| !plan.is_needed(n as u32)),
        _ => false,
    }
}

/// Whether it is a view other than the model's own: what it says of values is compared there.
pub(super) fn is_other_view(model: &Model, part: &Part) -> bool {
    matches!(part, Part::View(name) if *name != model.view())
}
