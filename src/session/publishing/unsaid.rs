//! What words and tables lack: formulas that cannot be read, or that have no value in a size. It is told when they are written, so that
//! no brace or dash goes out without a word.

use crate::compute::{BracedPart, Formula, Model};
use crate::document::{Draft, Part};
use crate::output::{Cell, cell_of, cloth_without_plan, steps_of_view};
use crate::texts::say;

/// What is lacking in the tables of a view, and in the steps of its booklet if that is written too, in sentences. `own` is the model of
/// the view, `cases` are the sizes that are written.
pub(super) fn unsaid(draft: &Draft, own: &Model, cases: &[usize], with_steps: bool) -> Vec<String> {
    let mut out = Vec::new();
    for step in steps_of_view(draft, own).into_iter().filter(|_| with_steps) {
        let at = Part::Step(step.place).words();
        for part in step.title.parts.iter().chain(&step.text.parts) {
            match part {
                BracedPart::Words(_) => {}
                BracedPart::Unread(text) => {
                    out.push(say!("unsaid-unread", at, text = &**text));
                }
                BracedPart::Formula(formula) => out.extend(without_value(own, cases, &at, formula)),
            }
        }
    }
    for (at, formula) in own.plan.publishing.formulas(draft) {
        let is_of_table = at != "care" && !at.starts_with("booklet step ");
        if is_of_table && own.plan.has_all_of(formula) {
            out.extend(without_value(own, cases, &at, formula));
        }
    }
    out
}

/// Which cloth of a view nobody is told to buy, in a sentence; none where a lay plan of one garment is kept for each material and size.
pub(super) fn unplanned(draft: &Draft, own: &Model, cases: &[usize]) -> Option<String> {
    let unplanned = cloth_without_plan(draft, own, cases);
    let one = |(material, sizes, all): &(String, Vec<String>, bool)| match all {
        true => material.clone(),
        false => say!("unsaid-cloth-in", material, sizes = sizes.join(", ")),
    };
    let told: Vec<String> = unplanned.iter().map(one).collect();
    let cloth = told.join(", ");
    (!told.is_empty()).then(|| match own.view() {
        "" => say!("unsaid-no-plan", cloth),
        view => say!("unsaid-no-plan-in-view", view, cloth),
    })
}

fn without_value(own: &Model, cases: &[usize], at: &str, formula: &Formula) -> Option<String> {
    let list = &own.plan.cases.list;
    let lacks = cases.iter().filter(|case| cell_of(own, **case, formula) == Cell::Missing);
    let sizes: Vec<&str> = lacks.filter_map(|case| list.get(*case)).map(|c| c.address.as_str()).collect();
    let words = say!("unsaid-no-value", at, text = &*formula.text, sizes = sizes.join(", "));
    (!sizes.is_empty()).then_some(words)
}
