//! Parts that the file keeps but nothing computes yet: said once for each kind of part, so that nobody relies on them.

use crate::base::{Code, Finding};
use crate::document::{Draft, Material, Nap};

pub(super) fn check(draft: &Draft) -> Vec<Finding> {
    let mut out = Vec::new();
    let mut tell = |there: bool, at: &str, what: &str| {
        if there {
            out.push(Finding::new(Code::NotUsedYet).at(at).word("what", what));
        }
    };
    let is_bought = |m: &Material| !m.widths.is_empty() || m.nap != Nap::Without || !m.selvedge.is_empty();
    tell(draft.materials.iter().any(is_bought), "materials", "widths, selvedges and nap of materials");
    tell(!draft.strips.is_empty(), "strips", "how strips are cut and joined");
    tell(!draft.notions.is_empty(), "notions", "notions");
    tell(
        draft.table.iter().any(|t| !["", "pages"].contains(&t.sheet.as_str())),
        "table",
        "places on sheets of their own",
    );
    tell(!draft.plans.is_empty(), "plans", "lay plans");
    out
}
