//! Finished measures beside the body: ease, drift over the range, openings.

use super::judged;
use super::tally::Tally;
use crate::base::{Amount, Code, DisplayUnit, Finding, tolerance};
use crate::compute::{MeasurePlan, Model};
use crate::texts::{decimal, owned, plain_amount, say};

pub(super) fn check(model: &Model) -> Vec<Finding> {
    model.plan.measures.iter().flat_map(|m| [ease(model, m), drift(model, m), opening(model, m)]).flatten().collect()
}

fn finding(measure: &MeasurePlan, code: Code) -> Finding {
    let name = format!("measure.{}", measure.name);
    Finding::new(code).at(name).word("measure", measure.name.to_string())
}

/// Garment minus body against the least and the most.
fn ease(model: &Model, measure: &MeasurePlan) -> Option<Finding> {
    let (_, body) = measure.body.as_ref()?;
    let numbers =
        [("finished", "mm"), ("body", "mm"), ("least", "mm"), ("most", "mm"), ("ease", "mm"), ("beyond", "mm")];
    let mut tally = Tally::new(finding(measure, Code::EaseOff), &numbers);
    for (case, size, _) in judged(model) {
        let value = |f| model.evaluate(&model.plan, case, f).ok().and_then(|i| i.real());
        let node = |n| model.item(case, n).and_then(|i| i.real());
        let (Some(finished), Some(body)) = (node(measure.node), node(*body)) else { continue };
        let (least, most) = (measure.least.as_ref().and_then(value), measure.most.as_ref().and_then(value));
        let ease = finished - body;
        let under = least.map_or(0.0, |l| (l - ease).max(0.0));
        let over = most.map_or(0.0, |m| (ease - m).max(0.0));
        if under.max(over) > tolerance::EQUAL {
            let nan = f64::NAN;
            tally.add(size, &[finished, body, least.unwrap_or(nan), most.unwrap_or(nan), ease, under.max(over)]);
        }
    }
    tally.done(|mut f, numbers| {
        let amount = |v: f64| Amount { name: "", unit: "mm", by_size: vec![v] };
        let told = |v: f64| owned(|| decimal(&plain_amount(&amount(v), 0, DisplayUnit::Cm)));
        let meant = match (numbers[2].is_nan(), numbers[3].is_nan()) {
            (false, true) => say!("meant-least", least = told(numbers[2])),
            (true, _) => say!("meant-most", most = told(numbers[3])),
            _ => say!("meant-between", least = told(numbers[2]), most = told(numbers[3])),
        };
        f.amounts.retain(|a| a.by_size.iter().all(|v| v.is_finite()));
        f.word("meant", meant)
    })
}

/// The ease against that of the base size.
fn drift(model: &Model, measure: &MeasurePlan) -> Option<Finding> {
    let ((_, body), limit) = (measure.body.as_ref()?, measure.drift.as_ref()?);
    let node = |case: usize, n| model.item(case, n).and_then(|i| i.real());
    let base = model.plan.cases.base?;
    let (base_is, base_body) = (node(base, measure.node)?, node(base, *body)?);
    let numbers = [("grows", "mm"), ("body_grows", "mm"), ("limit", "mm"), ("drift", "mm")];
    let mut tally = Tally::new(finding(measure, Code::EaseDrifts), &numbers);
    for (case, size, _) in judged(model) {
        let (Some(is), Some(of_body)) = (node(case, measure.node), node(case, *body)) else { continue };
        let Some(limit) = model.evaluate(&model.plan, case, limit).ok().and_then(|i| i.real()) else { continue };
        let (grows, body_grows) = (is - base_is, of_body - base_body);
        let drift = grows - body_grows;
        if drift.abs() > limit + tolerance::EQUAL {
            tally.add(size, &[grows, body_grows, limit, drift]);
        }
    }
    tally.done(|f, _| f)
}

/// An opening against what must pass through.
fn opening(model: &Model, measure: &MeasurePlan) -> Option<Finding> {
    let (name, row) = measure.passes.as_ref()?;
    let numbers = [("opening", "mm"), ("needed", "mm"), ("short", "mm")];
    let mut tally = Tally::new(finding(measure, Code::OpeningSmall), &numbers);
    for (case, size, _) in judged(model) {
        let node = |n| model.item(case, n).and_then(|i| i.real());
        let (Some(is), Some(needed)) = (node(measure.node), node(*row)) else { continue };
        let stretch = measure.stretch.as_ref().and_then(|f| model.evaluate(&model.plan, case, f).ok()?.real());
        let opening = is * (1.0 + stretch.unwrap_or(0.0));
        if opening < needed - tolerance::EQUAL {
            tally.add(size, &[opening, needed, needed - opening]);
        }
    }
    tally.done(|f, _| f.word("body", name.to_string()))
}
