//! Findings that a person has looked at. They speak again when their number grows.

use crate::base::{Finding, tolerance};
use crate::compute::unit_of;
use crate::document::Draft;
use crate::finish::literal;
use crate::language::Kind;

pub(super) fn apply(draft: &Draft, findings: &mut [Finding]) {
    let unit = unit_of(draft);
    for silence in draft.silenced.iter().filter(|s| !s.reason.trim().is_empty()) {
        for finding in findings.iter_mut() {
            let same = finding.code.word() == silence.code && finding.place.name == silence.at;
            if !same || !finding.code.can_be_silenced() {
                continue;
            }
            let within = match finding.amounts.last() {
                None => true,
                Some(amount) => {
                    let kind = match amount.unit {
                        "mm" => Kind::LENGTH,
                        "deg" => Kind::Angle,
                        _ => Kind::NUMBER,
                    };
                    let worst = amount.by_size.iter().fold(0.0f64, |w, v| w.max(v.abs()));
                    literal(&silence.number, kind, unit).is_ok_and(|seen| {
                        let seen = if kind == Kind::Angle { seen.to_degrees() } else { seen };
                        worst <= seen.abs() + tolerance::ON_EDGE
                    })
                }
            };
            if within {
                finding.silenced = Some(silence.reason.clone());
            }
        }
    }
}
