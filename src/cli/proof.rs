//! `proof`: everything that was found.

use std::sync::Arc;

use std::path::Path;

use serde_json::{Value as Json, json};

use super::{Done, FINE, NO, Stopped, internal, open, report};
use crate::base::Finding;
use crate::compute::{Engine, Model};
use crate::proof::{count, looked_at, proof};
use crate::session::{LookedAt, look_at_blocks};
use crate::texts::say;

pub(super) fn run(path: &Path, views: &[String], as_json: bool) -> Result<Done, Stopped> {
    let draft = open(path)?.draft;
    let blocks = look_at_blocks(&draft, path);
    let model = Engine::new().compute_guarded(&draft, &[]).map_err(|f| internal(&f))?;
    let draft = Arc::clone(&model.draft);
    let chosen = views.iter().map(|v| model.view_named(v)).collect::<Result<Vec<_>, _>>();
    let chosen = chosen.map_err(|e| Stopped::trouble(e.to_string()))?;
    let mut findings = proof(&draft, &model);
    findings.extend(blocks.iter().filter_map(LookedAt::finding));
    findings.sort_by_key(Finding::severity);
    if !chosen.is_empty() {
        findings.retain(|f| chosen.iter().any(|v| concerns(f, &model.views[*v])));
    }
    let counts = count(&findings);
    let exit = if counts.errors == 0 { FINE } else { NO };
    if as_json {
        let list: Vec<Json> = findings.iter().map(|f| report::json(f, draft.display)).collect();
        let whole = json!({
            "version": 1,
            "counts": { "error": counts.errors, "warning": counts.warnings, "note": counts.notes },
            "findings": list,
        });
        let data = serde_json::to_string_pretty(&whole).unwrap_or_default() + "\n";
        return Ok(Done { data, exit, ..Done::default() });
    }
    let mut data = String::new();
    for finding in &findings {
        data.push_str(&report::lines(finding, draft.display));
    }
    let counted = say!("cli-proof-counts", errors = counts.errors, warnings = counts.warnings, notes = counts.notes);
    data.push_str(&format!("{counted}\n{}\n", looked_at(&draft, &model)));
    Ok(Done { data, exit, ..Done::default() })
}

/// Whether a finding is said of a view, or of its things in every view.
fn concerns(finding: &Finding, view: &Model) -> bool {
    match finding.place.view.as_str() {
        "" => view.plan.knows(&finding.place),
        names => names.split(", ").any(|name| name == view.view()),
    }
}
