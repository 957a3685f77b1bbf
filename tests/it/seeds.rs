//! Two hundred generated drafts against what the second evaluator (`tests/outside/evaluate.py`, Python, scipy) said of them.
//!
//! Kept in `tests/outside/seeds.json`, written by `seeds.py --store`: values that are found, lengths, differences of seams.

#[path = "../../examples/generate.rs"]
#[allow(dead_code, clippy::unwrap_used, missing_docs)]
pub mod generate;

use serde_json::Value as Json;
use tracewheel::compute::{Engine, measure};
use tracewheel::language::Value;

#[test]
fn generated_drafts_agree_with_the_second_evaluator() {
    let kept: Json = serde_json::from_str(&std::fs::read_to_string("tests/outside/seeds.json").unwrap()).unwrap();
    let kept = kept.as_object().unwrap();
    assert_eq!(kept.len(), 200);
    let mut count = 0;
    for (seed, formulas) in kept {
        let options = generate::Options { seed: seed.parse().unwrap(), ..generate::Options::default() };
        let draft = generate::draft(&options);
        let formulas = formulas.as_object().unwrap();
        let texts: Vec<&str> = formulas.keys().map(String::as_str).collect();
        let measured = measure(&mut Engine::new(), &draft, &texts).unwrap();
        for (i, (text, sizes)) in formulas.iter().enumerate() {
            for (size, wanted) in sizes.as_object().unwrap() {
                let case = measured.model.plan.cases.find(size).unwrap();
                let found = match measured.value(i, case) {
                    Some(Value::Real(v)) => Some(v),
                    _ => None,
                };
                let near = match (found, wanted.as_f64()) {
                    (Some(a), Some(b)) => (a - b).abs() <= 0.001,
                    (a, b) => a.is_none() && b.is_none(),
                };
                assert!(near, "seed {seed}, {text} in {size}: {found:?}, meant {wanted}");
                count += 1;
            }
        }
    }
    assert!(count > 40_000, "{count}");
}
