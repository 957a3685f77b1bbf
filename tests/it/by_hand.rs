//! Drafts that were made by hand in the window by people who had only the README and the help, judged from outside.

use tracewheel::compute::Engine;
use tracewheel::file;

/// The back of the check block, drafted from its words (`tests/hand/back.ron`), against scipy's results for it (`tests/outside/expected.json`).
#[test]
fn the_back_that_was_drafted_by_hand_measures_as_the_other_program_says() {
    let root = env!("CARGO_MANIFEST_DIR");
    let text = std::fs::read_to_string(format!("{root}/tests/hand/back.ron")).unwrap();
    let draft = file::read(&text).unwrap().draft;
    assert_eq!(file::write(&draft), text, "it is in standard form, as the window saved it");
    let expected = std::fs::read_to_string(format!("{root}/tests/outside/expected.json")).unwrap();
    let expected: serde_json::Value = serde_json::from_str(&expected).unwrap();
    let model = Engine::new().compute(&draft);
    assert!(model.findings.is_empty(), "{:?}", model.findings);
    let trial = tracewheel::compute::Trial::new(&draft, &model.plan);
    let any = tracewheel::language::What::Quantity;
    let mut seen = 0;
    for (case, size) in model.plan.cases.list.iter().enumerate() {
        for (formula, key) in [
            ("length(back.neckline)", "back.neckline"),
            ("length(back.armhole)", "back.armhole"),
            ("length(back.shoulder)", "back.shoulder"),
            ("length(back.side)", "back.side"),
            ("flat_length(back.waist)", "back.waist_flat"),
            ("back.tip.x", "back.tip.x"),
            ("back.tip.y", "back.tip.y"),
        ] {
            let read = trial.read(None, formula, any).unwrap();
            let mm = trial.value(&model, case, &read).unwrap().real().unwrap();
            let meant = expected["expected_mm"][&size.address][key].as_f64().unwrap();
            assert!((mm - meant).abs() < 0.001, "{key} in {}: {mm}, meant {meant}", size.address);
            seen += 1;
        }
    }
    assert_eq!(seen, 7 * 12);
}
