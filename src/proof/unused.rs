//! Parts that the file keeps but nothing computes yet: said once for each kind of part, so that nobody relies on them.

use crate::base::{Code, Finding};
use crate::document::{Audience, Draft, Piece, Seam};

pub(super) fn check(draft: &Draft) -> Vec<Finding> {
    let mut out = Vec::new();
    let mut tell = |there: bool, at: &str, what: &str| {
        if there {
            out.push(Finding::new(Code::NotUsedYet).at(at).word("what", what));
        }
    };
    tell(draft.audience != Audience::Unstated, "audience", "who it is for");
    tell(!draft.views.is_empty(), "views", "views");
    tell(!draft.measures.is_empty(), "measures", "finished measures");
    tell(!draft.materials.is_empty(), "materials", "materials");
    tell(!draft.strips.is_empty(), "strips", "strips");
    tell(!draft.notions.is_empty(), "notions", "notions");
    tell(!draft.booklet.is_empty(), "booklet", "the booklet");
    tell(!draft.sheets.is_empty(), "sheets", "sheets");
    tell(draft.table.iter().any(|t| t.sheet != "pages"), "table", "places on the table");
    tell(!draft.plans.is_empty(), "plans", "lay plans");
    tell(draft.log != crate::document::Log::default(), "log", "the log");
    let s = &draft.settings;
    let idle = [&s.notch_limit, &s.notch_margin, &s.allowance];
    tell(idle.iter().any(|t| !t.is_empty()), "settings", "settings of notches and allowances");
    let pieces = |f: &dyn Fn(&Piece) -> bool| draft.pieces.iter().any(|p| f(p));
    tell(pieces(&|p| !p.of.is_empty() || !p.steps.is_empty()), "pieces.steps", "deriving a piece from another");
    tell(pieces(&|p| !p.folds.is_empty()), "pieces.folds", "folds");
    tell(pieces(&|p| !p.lengthen.is_empty()), "pieces.lengthen", "lengthen-shorten lines");
    tell(pieces(&|p| !p.slits.is_empty()), "pieces.slits", "slits");
    tell(pieces(&|p| !p.marks.is_empty()), "pieces.marks", "marks");
    tell(pieces(&|p| !p.allowances.is_empty() || !p.corners.is_empty()), "pieces.allowances", "seam allowances");
    tell(pieces(&|p| !p.cuts.is_empty()), "pieces.cuts", "how pieces are cut");
    tell(pieces(&|p| p.label != crate::document::Label::default()), "pieces.label", "places of labels");
    let seams = |f: &dyn Fn(&Seam) -> bool| draft.seams.iter().any(|p| f(p));
    tell(seams(&|s| !s.stretches.is_empty()), "seams.stretches", "stretches of a seam with a fit of their own");
    tell(seams(&|s| !s.notches.is_empty()), "seams.notches", "notches");
    tell(seams(&|s| !s.order.is_empty()), "seams.order", "the order of sewing");
    tell(seams(&|s| !s.allowance.is_empty()), "seams.allowance", "allowances of seams");
    out
}
