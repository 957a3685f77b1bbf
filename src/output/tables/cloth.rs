//! How much cloth to buy, from the lay plans that the draft keeps: for each size and width, and for several garments together.
//!
//! No number is typed here: a plan that is not of the draft as it stands, or cannot be cut as it lies, tells none.

use std::collections::BTreeMap;

use super::{Page, sentence};
use crate::document::{ClothLaid, LayPlan, Nap};
use crate::finish::{ClothBook, plan_length};
use crate::output::lay::{KeptLay, Need, kept_lays_of, laid_briefly, yards};
use crate::output::{Cell, Line, Table};
use crate::texts::{outward, readable, t, typed};

/// Plans of one cloth: material, width in steps, how it is laid, nap.
type Cloth = (String, u64, u8, bool);

/// One table by size, and one of several garments together; none where no plans are kept.
pub(super) fn tables(page: &Page<'_>) -> Vec<Table> {
    let own = page.draft.plans.iter().any(|p| p.view == page.model.view());
    if !own {
        return Vec::new();
    }
    let is_shown = |plan: &LayPlan| !is_single(plan) || case_of_single(page, plan).is_some();
    // Why a plan tells nothing stands in the table.
    let kept = outward(|| kept_lays_of(&ClothBook::new(page.model, page.finished), &is_shown));
    [by_size(page, &kept), together(page, &kept)].into_iter().flatten().collect()
}

fn key(page: &Page<'_>, plan: &LayPlan) -> Cloth {
    let width = plan_length(page.model, &plan.width).unwrap_or(0.0);
    // To a thousandth of a millimetre: widths are told, not computed.
    (
        plan.material.clone(),
        (width / crate::base::tolerance::COMPARED).round() as u64,
        plan.laid as u8,
        plan.nap == Nap::With,
    )
}

fn is_single(plan: &LayPlan) -> bool {
    matches!(plan.sizes.as_slice(), [one] if one.count <= 1)
}

/// The size of a plan of one garment, if the table has it.
fn case_of_single(page: &Page<'_>, plan: &LayPlan) -> Option<usize> {
    let size = plan.sizes.first().filter(|_| is_single(plan))?;
    let case = page.model.plan.cases.list.iter().position(|c| c.address == size.size)?;
    page.cases.contains(&case).then_some(case)
}

fn by_size(page: &Page<'_>, kept: &[KeptLay]) -> Option<Table> {
    let mut table = page.table("cloth", t!("lay-table"));
    // The least of several plans of one size; in the order in which they are kept.
    let mut cloths: Vec<(Cloth, &LayPlan)> = Vec::new();
    let mut needs: BTreeMap<(Cloth, usize), Need> = BTreeMap::new();
    let mut reasons: Vec<String> = Vec::new();
    for one in kept {
        let plan = &page.draft.plans[one.place];
        let Some(case) = case_of_single(page, plan) else { continue };
        let cloth = key(page, plan);
        if cloths.iter().all(|(c, _)| *c != cloth) {
            cloths.push((cloth.clone(), plan));
        }
        match &one.lay {
            Ok(lay) => {
                let need = lay.need();
                for words in lay.reasons() {
                    let words = t!("lay-said-of", names = heading(plan), words);
                    if !reasons.contains(&words) {
                        reasons.push(words);
                    }
                }
                let known = needs.get(&(cloth.clone(), case)).is_some_and(|n| n.exact <= need.exact);
                if !known {
                    needs.insert((cloth, case), need);
                }
            }
            Err(why) => table.notes.push(nothing(plan, why)),
        }
    }
    for (cloth, plan) in &cloths {
        let group = heading(plan);
        let of = |case: usize| needs.get(&(cloth.clone(), case));
        let length = |mm: Option<f64>| mm.map_or(Cell::Missing, Cell::Length);
        table.lines.push(page.line(&group, t!("lay-table-needed"), |c| length(of(c).map(|n| n.exact))));
        table.lines.push(page.line(&group, t!("lay-table-metre"), |c| length(of(c).map(|n| n.buy))));
        let in_yards = |c| of(c).map_or(Cell::Missing, |n| Cell::Words(yards(n.buy_yards)));
        table.lines.push(page.line(&group, t!("lay-table-yard"), in_yards));
    }
    if table.lines.is_empty() {
        return None;
    }
    table.before.push(t!("lay-table-before"));
    table.notes.extend(reasons);
    Some(table)
}

fn together(page: &Page<'_>, kept: &[KeptLay]) -> Option<Table> {
    let mut table = page.titled("cloth-together", t!("lay-table-together"));
    table.head = vec![t!("lay-table-garments"), t!("lay-table-needed"), t!("lay-table-metre"), t!("lay-table-yard")];
    for one in kept {
        let plan = &page.draft.plans[one.place];
        if is_single(plan) {
            continue;
        }
        let sizes =
            plan.sizes.iter().map(|s| format!("{} x {}", s.count.max(1), s.size)).collect::<Vec<_>>().join(", ");
        let cells = match &one.lay {
            Ok(lay) => {
                let need = lay.need();
                vec![Cell::Length(need.exact), Cell::Length(need.buy), Cell::Words(yards(need.buy_yards))]
            }
            Err(why) => {
                table.notes.push(nothing(plan, why));
                vec![Cell::Missing; 3]
            }
        };
        table.lines.push(Line { group: heading(plan), name: sizes, cells });
    }
    (!table.lines.is_empty()).then_some(table)
}

/// That no number of a plan is told, and why.
fn nothing(plan: &LayPlan, why: &str) -> String {
    sentence(&t!("lay-tells-nothing", plan = plan.name, why))
}

/// The cloth of a plan in words.
fn heading(plan: &LayPlan) -> String {
    let mut out = vec![t!("lay-table-cloth", cloth = readable(&plan.material), width = typed(&plan.width))];
    if plan.laid != ClothLaid::Open {
        out.push(laid_briefly(plan.laid));
    }
    if plan.nap == Nap::With {
        out.push(t!("lay-table-nap"));
    }
    out.join(", ")
}
