//! Overriding a value or row for one run.

use std::sync::Arc;

use crate::document::Draft;
use crate::language::nearest;
use crate::session::meant;
use crate::texts::say;

/// Why nothing could be overridden.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum SetError {
    /// No value or row of that name.
    #[error("{}", say!("refused-no-value-or-row", name, hint = meant(hint.as_deref())))]
    Unknown {
        /// The name.
        name: String,
        /// The nearest one.
        hint: Option<String>,
    },
}

/// Gives a value or a whole row this formula. A value that is found is thereby given: nothing is found by it any more.
pub fn set_for_run(draft: &mut Draft, name: &str, formula: &str) -> Result<(), SetError> {
    let short = name.strip_prefix("value.").or(name.strip_prefix("chart.")).unwrap_or(name);
    if let Some(value) = draft.values.iter_mut().find(|v| v.name == short && !name.starts_with("chart.")) {
        value.is = formula.to_owned();
        value.start.clear();
        value.least.clear();
        value.most.clear();
        // In every view.
        draft.views.iter_mut().for_each(|v| v.values.retain(|(n, _)| n.strip_prefix("value.").unwrap_or(n) != short));
        let keeps = |names: &[String]| names.iter().any(|n| n == short || n.strip_prefix("value.") == Some(short));
        let is_other = |n: &String| n != short && n.strip_prefix("value.") != Some(short);
        for seam in draft.seams.iter_mut().filter(|s| keeps(&s.found_by)) {
            Arc::make_mut(seam).found_by.retain(is_other);
        }
        for condition in draft.conditions.iter_mut().filter(|c| keeps(&c.found_by)) {
            condition.found_by.retain(is_other);
        }
        return Ok(());
    }
    if let Some(row) = draft.chart.rows.iter_mut().find(|r| r.name == short && !name.starts_with("value.")) {
        row.is = formula.to_owned();
        row.cells.clear();
        for person in &mut draft.chart.persons {
            person.cells.retain(|c| c.0 != short);
        }
        return Ok(());
    }
    let known = draft.values.iter().map(|v| v.name.as_str()).chain(draft.chart.rows.iter().map(|r| r.name.as_str()));
    Err(SetError::Unknown { name: name.to_owned(), hint: nearest(short, known).map(str::to_owned) })
}
