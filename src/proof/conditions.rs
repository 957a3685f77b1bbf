//! Conditions: equations that no found value keeps, and comparisons that are watched.

use super::judged;
use super::tally::Tally;
use crate::base::{Code, Finding, tolerance};
use crate::compute::Model;
use crate::language::{Binary, Kind, Relation};

pub(super) fn check(model: &Model) -> Vec<Finding> {
    let plan = &model.plan;
    let mut out = Vec::new();
    for condition in &plan.conditions {
        let kind = plan.nodes[condition.sides[0] as usize].kind;
        let (unit, times) = match kind {
            Some(Kind::Angle) => ("deg", 180.0 / std::f64::consts::PI),
            Some(Kind::LENGTH) => ("mm", 1.0),
            _ => ("", 1.0),
        };
        let code = if condition.relation == Relation::Equal { Code::ConditionFails } else { Code::WatchFails };
        let finding = Finding::new(code).at(&*condition.name).word("condition", format!("`{}`", condition.text));
        let mut tally = Tally::new(finding, &[("left", unit), ("right", unit), ("difference", unit)]);
        for (case, size, _) in judged(model) {
            // What is to be solved is told by its system.
            let solved = condition.equation.is_some_and(|e| plan.systems.iter().any(|s| s.equations.contains(&e)));
            let side = |i: usize| model.item(case, condition.sides[i]).and_then(|v| v.real());
            let (Some(left), Some(right)) = (side(0), side(1)) else { continue };
            let holds = match condition.relation {
                Relation::Equal => solved || (left - right).abs() <= tolerance::EQUAL,
                Relation::Compared(Binary::Less) => left < right,
                Relation::Compared(Binary::LessEqual) => left <= right + tolerance::EQUAL,
                Relation::Compared(Binary::More) => left > right,
                Relation::Compared(_) => left + tolerance::EQUAL >= right,
            };
            if !holds {
                tally.add(size, &[left * times, right * times, (left - right) * times]);
            }
        }
        out.extend(tally.done(|f, _| f));
    }
    out
}
