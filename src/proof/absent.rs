//! Seams, conditions and finished measures that no view has: nothing judges them, which is told rather than passed over.

use crate::base::{Code, Finding, Severity};
use crate::compute::Model;
use crate::document::Draft;
use crate::texts::say;

/// What is in no view. `found`: what was found already; a part that is broken is told there.
pub(super) fn check(draft: &Draft, model: &Model, found: &[Finding]) -> Vec<Finding> {
    if model.views.is_empty() {
        return Vec::new();
    }
    let views = model.of_views();
    let has_seam = |name: &str| views.iter().any(|v| v.plan.own_seams().any(|(_, s)| *s.name == *name));
    let has_condition = |place: &str| views.iter().any(|v| v.plan.conditions.iter().any(|c| *c.name == *place));
    let has_measure = |name: &str| views.iter().any(|v| v.plan.measures.iter().any(|m| *m.name == *name));
    let seams = draft.seams.iter().map(|s| ("seam", &s.name, has_seam(&s.name)));
    let conditions =
        draft.conditions.iter().map(|c| ("condition", &c.name, has_condition(&format!("condition.{}", c.name))));
    let measures = draft.measures.iter().map(|m| ("measure", &m.name, has_measure(&m.name)));
    let absent = seams.chain(conditions).chain(measures).filter(|(.., is_there)| !is_there);
    let one = |(kind, name, _): (&str, &String, bool)| {
        let place = format!("{kind}.{name}");
        let is_broken = found.iter().any(|f| f.severity() == Severity::Error && f.place.name == place);
        let finding = Finding::new(Code::InNoView).at(place).word("what", said(kind, name));
        (!is_broken).then(|| if kind == "seam" { finding.seam(name) } else { finding })
    };
    absent.filter_map(one).collect()
}

fn said(kind: &str, name: &str) -> String {
    match kind {
        "seam" => say!("found-seam", seam = name),
        "condition" => say!("found-condition", name),
        _ => say!("found-measure", name),
    }
}
