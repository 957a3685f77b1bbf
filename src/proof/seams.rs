//! Stitch line against stitch line: do the two sides of each seam fit as meant, stretch by stretch?

use super::judged;
use super::tally::Tally;
use crate::base::{Amount, Code, Finding, tolerance};
use crate::compute::{Fit, Model, SeamPlan, StretchPlan};
use crate::document::{self, Draft, Side};
use crate::finish::Limits;
use crate::texts::{decimal, owned, plain_amount, say};

/// The two sides of a seam, or of a stretch of it, in one case, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SeamState {
    /// Sewn length of side one.
    pub one: f64,
    /// Sewn length of side two.
    pub two: f64,
    /// By how much side one is meant to be longer.
    pub meant: f64,
    /// By how much it is too long; of several stretches the worst.
    pub excess: f64,
}

/// How a seam stands in a case; `None` where that cannot be computed.
pub fn seam_state(model: &Model, seam: &SeamPlan, case: usize) -> Option<SeamState> {
    let length = |i: usize| model.item(case, seam.sides[i]).and_then(|v| v.real());
    let mut whole = SeamState { one: length(0)?, two: length(1)?, meant: 0.0, excess: 0.0 };
    for stretch in &seam.stretches {
        let state = stretch_state(model, stretch, case)?;
        whole.meant += state.meant;
        if state.excess.abs() > whole.excess.abs() {
            whole.excess = state.excess;
        }
    }
    Some(whole)
}

/// How a stretch stands in a case.
fn stretch_state(model: &Model, stretch: &StretchPlan, case: usize) -> Option<SeamState> {
    let length = |i: usize| model.item(case, stretch.lengths[i]).and_then(|v| v.real());
    let (one, two) = (length(0)?, length(1)?);
    let value = |f| model.evaluate(&model.plan, case, f).ok().and_then(|item| item.real());
    let signed = |side: &Side, by: f64| if *side == Side::One { by } else { -by };
    let meant = match stretch.fit.as_ref()? {
        Fit::Equal => 0.0,
        Fit::Eased(side, by, None) => signed(side, value(by)?),
        Fit::Eased(side, by, Some(share)) => signed(side, value(by)? * value(share)?),
        Fit::Times(side, times, limits) => {
            let (full, other) = if *side == Side::One { (one, two) } else { (two, one) };
            let [least, most] = limits.each_ref().map(|l| l.as_ref().map(value));
            let times = match (times, least, most) {
                (Some(times), None, None) => value(times)?,
                // Within its limits any fullness is as meant.
                (_, least, most) => {
                    let now = full / other;
                    now.max(least.unwrap_or(Some(now))?).min(most.unwrap_or(Some(now))?)
                }
            };
            signed(side, other * times - other)
        }
    };
    Some(SeamState { one, two, meant, excess: one - two - meant })
}

pub(super) fn check(draft: &Draft, model: &Model, limits: &Limits) -> Vec<Finding> {
    let mut out = Vec::new();
    for seam in &model.plan.seams {
        let Some(told) = draft.seams.iter().find(|s| s.name == *seam.name) else { continue };
        let sides = [told.one.join(" + "), told.two.join(" + ")];
        shares(model, seam, &mut out);
        in_order(model, seam, &mut out);
        for (i, stretch) in seam.stretches.iter().enumerate() {
            let said = if seam.stretches.len() == 1 {
                say!("found-seam", seam = seam.name.to_string())
            } else {
                say!("found-stretch", number = (i + 1).to_string(), seam = seam.name.to_string())
            };
            let fit = told.stretches.get(i).filter(|s| s.share.is_empty()).map_or(&told.fit, |s| &s.fit);
            let asked = Asked { draft, model, limits, seam, stretch, sides: &sides, said };
            match stretch.fit {
                None => {}
                Some(Fit::Times(..)) if !asked.fullness(fit, &mut out) => {}
                Some(_) => out.extend(asked.length()),
            }
        }
    }
    out
}

/// Shares of the ease that do not add up.
fn shares(model: &Model, seam: &SeamPlan, out: &mut Vec<Finding>) {
    let shares: Vec<_> = seam
        .stretches
        .iter()
        .filter_map(|s| match &s.fit {
            Some(Fit::Eased(_, _, Some(share))) => Some(share),
            _ => None,
        })
        .collect();
    if shares.is_empty() {
        return;
    }
    let finding = Finding::new(Code::SharesOff).seam(&*seam.name).at(format!("seam.{}", seam.name));
    let mut tally = Tally::new(finding.word("seam", say!("found-seam", seam = seam.name.to_string())), &[("sum", "")]);
    for (case, size, _) in judged(model) {
        let value = |f| model.evaluate(&model.plan, case, f).ok().and_then(|item| item.real());
        let all: Option<Vec<f64>> = shares.iter().map(|s| value(s)).collect();
        let Some(sum) = all.map(|all| all.iter().sum::<f64>()) else { continue };
        if (sum - 1.0).abs() > tolerance::EQUAL {
            tally.add(size, &[sum]);
        }
    }
    out.extend(tally.done(|f, _| f));
}

/// Stretches that end before they start.
fn in_order(model: &Model, seam: &SeamPlan, out: &mut Vec<Finding>) {
    for (i, stretch) in seam.stretches.iter().enumerate().filter(|_| seam.stretches.len() > 1) {
        for side in 0..2 {
            let number = (i + 1).to_string();
            let problem = match side {
                0 => say!("seam-stretch-one", number),
                _ => say!("seam-stretch-two", number),
            };
            let finding = Finding::new(Code::StretchOff).seam(&*seam.name).at(format!("seam.{}", seam.name));
            let finding =
                finding.word("seam", say!("found-seam", seam = seam.name.to_string())).word("problem", problem);
            let mut tally = Tally::new(finding, &[("by", "mm")]);
            for (case, size, _) in judged(model) {
                let length = model.item(case, stretch.lengths[side]).and_then(|v| v.real());
                if let Some(length) = length.filter(|l| *l < -tolerance::EQUAL) {
                    tally.add(size, &[-length]);
                }
            }
            out.extend(tally.done(|f, _| f));
        }
    }
}

/// A stretch that is looked at.
struct Asked<'a> {
    draft: &'a Draft,
    model: &'a Model,
    limits: &'a Limits,
    seam: &'a SeamPlan,
    stretch: &'a StretchPlan,
    sides: &'a [String; 2],
    said: String,
}

impl Asked<'_> {
    fn finding(&self, code: Code) -> Finding {
        let name = &self.seam.name;
        Finding::new(code).seam(&**name).at(format!("seam.{name}")).word("seam", self.said.clone())
    }

    /// Cases in which it is judged: what is not true is told once, by the system it hangs on.
    fn cases(&self) -> impl Iterator<Item = (usize, &str)> {
        let plan = &self.model.plan;
        let untrue =
            |case: usize| self.stretch.equation.is_some_and(|e| self.model.is_untrue(case, plan.equations[e].node));
        judged(self.model).filter(move |(case, _, _)| !untrue(*case)).map(|(case, size, _)| (case, size))
    }

    /// The difference of its sides against what is meant.
    fn length(&self) -> Option<Finding> {
        let numbers = [
            ("one", "mm"),
            ("two", "mm"),
            ("meant_by", "mm"),
            ("difference_by", "mm"),
            ("limit", "mm"),
            ("excess", "mm"),
        ];
        let mut tally = Tally::new(self.finding(Code::SeamLength), &numbers);
        for (case, size) in self.cases() {
            let Some(SeamState { one, two, meant, excess }) = stretch_state(self.model, self.stretch, case) else {
                continue;
            };
            if excess.abs() > self.limits.seam + tolerance::EQUAL {
                tally.add(size, &[one, two, meant, one - two, self.limits.seam, excess]);
            }
        }
        let [one_name, two_name] = self.sides;
        tally.done(|finding, numbers| {
            let one_longer = numbers[3] >= 0.0;
            let (longer, shorter) = if one_longer { (one_name, two_name) } else { (two_name, one_name) };
            let sign = if one_longer { 1.0 } else { -1.0 };
            let amount = |v: f64| Amount { name: "", unit: "mm", by_size: vec![v] };
            let told = |v: f64| owned(|| decimal(&plain_amount(&amount(v), 0, self.draft.display)));
            let meant = numbers[2] * sign;
            let excess = numbers[5] * sign;
            finding
                .word("longer", longer.clone())
                .word("shorter", shorter.clone())
                .word("difference", told(numbers[3].abs()))
                .word("meant", if numbers[2] == 0.0 { say!("seam-equal") } else { told(meant) })
                .word(
                    "excess",
                    match excess >= 0.0 {
                        true => say!("seam-too-long", by = told(excess.abs())),
                        false => say!("seam-too-short", by = told(excess.abs())),
                    },
                )
        })
    }

    /// Fullness told by times. Whether the lengths are to be compared besides.
    fn fullness(&self, fit: &document::Fit, out: &mut Vec<Finding>) -> bool {
        let Some(Fit::Times(side, times, limits)) = &self.stretch.fit else { return true };
        let gathered = matches!(fit, document::Fit::Gathered { .. });
        let (code, numbers): (_, &[(&str, &str)]) = (Code::NoFullness, &[("times", "")]);
        let mut none = Tally::new(self.finding(code), numbers);
        let mut off = Tally::new(self.finding(Code::FullnessOff), &[("least", ""), ("most", ""), ("times", "")]);
        let value = |case, f| self.model.evaluate(&self.model.plan, case, f).ok().and_then(|item| item.real());
        for (case, size) in self.cases() {
            let Some(state) = stretch_state(self.model, self.stretch, case) else { continue };
            let (full, other) = if *side == Side::One { (state.one, state.two) } else { (state.two, state.one) };
            let told = times.as_ref().and_then(|t| value(case, t));
            if told.is_some_and(|t| if gathered { t <= 1.0 + tolerance::EQUAL } else { t >= 1.0 - tolerance::EQUAL }) {
                none.add(size, &[told.unwrap_or(f64::NAN)]);
                continue;
            }
            let [least, most] = limits.each_ref().map(|l| l.as_ref().and_then(|l| value(case, l)));
            let now = full / other;
            let outside =
                least.is_some_and(|l| now < l - tolerance::EQUAL) || most.is_some_and(|m| now > m + tolerance::EQUAL);
            if outside {
                off.add(size, &[least.unwrap_or(f64::NAN), most.unwrap_or(f64::NAN), now]);
            }
        }
        let [one, two] = self.sides;
        let (longer, shorter) = if *side == Side::One { (one, two) } else { (two, one) };
        let had = none.done(|finding, _| {
            let (fit, example) =
                if gathered { (say!("seam-gathered"), "1.5") } else { (say!("seam-stretched"), "0.9") };
            finding
                .word("fit", fit)
                .word("longer", longer.clone())
                .word("shorter", shorter.clone())
                .word("example", format!("`times: \"{example}\"`"))
        });
        let is_told = had.is_some();
        out.extend(had);
        out.extend(off.done(|mut finding, numbers| {
            let told = |v: f64| owned(|| decimal(&v.to_string()));
            let meant = match (numbers[0].is_nan(), numbers[1].is_nan()) {
                (false, true) => say!("meant-least", least = told(numbers[0])),
                (true, false) => say!("meant-most", most = told(numbers[1])),
                _ => say!("meant-between", least = told(numbers[0]), most = told(numbers[1])),
            };
            finding.amounts.retain(|a| a.by_size.iter().all(|v| v.is_finite()));
            finding.word("longer", longer.clone()).word("shorter", shorter.clone()).word("meant", meant)
        }));
        // Limits judge alone; a number alone is compared.
        !is_told && limits.iter().all(Option::is_none)
    }
}
