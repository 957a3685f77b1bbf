//! Parts that the file keeps but nothing computes yet: said once for each kind of part, so that nobody relies on them.

use crate::base::{Code, Finding};
use crate::document::Draft;
use crate::texts::say;

pub(super) fn check(draft: &Draft) -> Vec<Finding> {
    let mut out = Vec::new();
    if draft.table.iter().any(|t| !["", "pages"].contains(&t.sheet.as_str())) {
        out.push(Finding::new(Code::NotUsedYet).at("table").word("what", say!("unused-sheets")));
    }
    out
}
