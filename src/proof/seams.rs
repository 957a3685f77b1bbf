//! Stitch line against stitch line: do the two sides of each seam fit as meant?

use super::tally::Tally;
use super::{Limits, judged};
use crate::base::{Code, Finding, tolerance};
use crate::compute::{Fit, Model, SeamPlan};
use crate::document::{Draft, Side};

/// The two sides of a seam in one case, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SeamState {
    /// Sewn length of side one.
    pub one: f64,
    /// Sewn length of side two.
    pub two: f64,
    /// By how much side one is meant to be longer.
    pub meant: f64,
    /// By how much it is too long.
    pub excess: f64,
}

/// How a seam stands in a case; `None` where that cannot be computed.
pub fn seam_state(model: &Model, seam: &SeamPlan, case: usize) -> Option<SeamState> {
    let length = |i: usize| model.item(case, seam.sides[i]).and_then(|v| v.real());
    let (one, two) = (length(0)?, length(1)?);
    let value = |f| model.evaluate(&model.plan, case, f).ok().and_then(|item| item.real());
    let meant = match seam.fit.as_ref()? {
        Fit::Equal => 0.0,
        Fit::Eased(Side::One, by) => value(by)?,
        Fit::Eased(Side::Two, by) => -value(by)?,
        Fit::Times(Side::One, times) => two * value(times)? - two,
        Fit::Times(Side::Two, times) => one - one * value(times)?,
    };
    Some(SeamState { one, two, meant, excess: one - two - meant })
}

pub(super) fn check(draft: &Draft, model: &Model, limits: &Limits) -> Vec<Finding> {
    let plan = &model.plan;
    let mut out = Vec::new();
    for seam in &plan.seams {
        let told = draft.seams.iter().find(|s| s.name == *seam.name);
        // What is meant of the whole is not told where stretches have fits of their own.
        if seam.fit.is_none() || told.is_some_and(|s| !s.stretches.is_empty()) {
            continue;
        }
        let sides = told.map(|s| (s.one.join(" + "), s.two.join(" + ")));
        let (one_name, two_name) = sides.unwrap_or_default();
        let finding = Finding::new(Code::SeamLength).seam(&*seam.name).at(format!("seam.{}", seam.name));
        let numbers = [
            ("one", "mm"),
            ("two", "mm"),
            ("meant_by", "mm"),
            ("difference_by", "mm"),
            ("limit", "mm"),
            ("excess", "mm"),
        ];
        let mut tally = Tally::new(finding, &numbers);
        for (case, size, _) in judged(model) {
            // What is not true is told once, by the system it hangs on.
            if seam.equation.is_some_and(|e| model.is_untrue(case, plan.equations[e].node)) {
                continue;
            }
            let Some(SeamState { one, two, meant, excess }) = seam_state(model, seam, case) else { continue };
            if excess.abs() > limits.seam + tolerance::EQUAL {
                tally.add(size, &[one, two, meant, one - two, limits.seam, excess]);
            }
        }
        out.extend(tally.done(|finding, numbers| {
            let one_longer = numbers[3] >= 0.0;
            let (longer, shorter) = if one_longer { (&one_name, &two_name) } else { (&two_name, &one_name) };
            let sign = if one_longer { 1.0 } else { -1.0 };
            let say = |v: f64| {
                crate::base::plain_amount(
                    &crate::base::Amount { name: "", unit: "mm", by_size: vec![v] },
                    0,
                    draft.display,
                )
            };
            let meant = numbers[2] * sign;
            let excess = numbers[5] * sign;
            finding
                .word("longer", longer.clone())
                .word("shorter", shorter.clone())
                .word("difference", say(numbers[3].abs()))
                .word("meant", if numbers[2] == 0.0 { "equal".to_owned() } else { say(meant) })
                .word("excess", format!("{} too {}", say(excess.abs()), if excess >= 0.0 { "long" } else { "short" }))
                .word("seam", format!("seam {}", seam.name))
        }));
    }
    out
}
