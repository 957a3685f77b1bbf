//! Parts that the file keeps but nothing computes yet: said once for each kind of part, so that nobody relies on them.

use crate::base::{Code, Finding};
use crate::document::Draft;

pub(super) fn check(draft: &Draft) -> Vec<Finding> {
    let mut out = Vec::new();
    let mut tell = |there: bool, at: &str, what: &str| {
        if there {
            out.push(Finding::new(Code::NotUsedYet).at(at).word("what", what));
        }
    };
    tell(
        draft.table.iter().any(|t| !["", "pages"].contains(&t.sheet.as_str())),
        "table",
        "places on sheets of their own",
    );
    out
}
