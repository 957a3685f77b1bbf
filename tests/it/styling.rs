//! Styled pieces against `tests/outside/styling.json`, made by `styling.py` from closed forms and published values: circle and gored skirts from a
//! straight one, a lining, a pocket over a seam, turn of cloth, pieces laid together. The drafts are those of `tests/cases`.

use serde_json::Value;
use tracewheel::compute::Engine;
use tracewheel::document::Draft;
use tracewheel::file;

/// Places and lengths, mm.
const WITHIN: f64 = 1e-3;

fn draft(name: &str, with: &Value) -> Draft {
    let text = std::fs::read_to_string(format!("tests/cases/{name}.ron")).unwrap();
    let mut draft = file::read(&text).unwrap_or_else(|e| panic!("{name}: {e}")).draft;
    for (value, to) in with.as_object().unwrap() {
        let of = draft.values.iter_mut().find(|v| v.name == *value).unwrap_or_else(|| panic!("no value {value}"));
        of.is = to.as_str().unwrap().to_owned();
    }
    draft
}

#[test]
fn styled_pieces_measure_what_closed_forms_say() {
    let all: Value = serde_json::from_str(&std::fs::read_to_string("tests/outside/styling.json").unwrap()).unwrap();
    let mut compared = 0;
    for (name, runs) in all.as_object().unwrap() {
        for run in runs.as_array().unwrap() {
            let measures = run["measures"].as_array().unwrap();
            let formulas: Vec<&str> = measures.iter().map(|m| m["formula"].as_str().unwrap()).collect();
            let model = Engine::new().compute_with(&draft(name, &run["with"]), &formulas);
            assert_eq!(model.findings, Vec::new(), "{name}");
            for (i, measure) in measures.iter().enumerate() {
                let by_size = measure["by_size"].as_object().unwrap();
                assert_eq!(by_size.len(), model.cases.len(), "{name} {}", formulas[i]);
                // An outline that lies off by so much all around encloses so much more.
                let within = if formulas[i].ends_with("/ 1 mm") { 1000.0 * WITHIN } else { WITHIN };
                for (size, want) in by_size {
                    let case = model.plan.cases.find(size).unwrap();
                    let found = model.plan.extras[i].and_then(|node| model.item(case, node)?.real());
                    let found = found.unwrap_or_else(|| panic!("{name}: {} has no value in {size}", formulas[i]));
                    let want = want.as_f64().unwrap();
                    let close = (found - want).abs() <= within;
                    assert!(close, "{name} {}: {} is {found} in {size}, outside {want}", run["with"], formulas[i]);
                    compared += 1;
                }
            }
        }
    }
    // 32 rows of the published table, 14 formulas; two sizes of the others.
    assert_eq!(compared, 32 * 14 + 2 * (3 * 12 + 5 + 7 + 11 + 6 + 6 + 3));
}
