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

/// A skirt whose outline was traced from an SVG file and then graded by two rows (`tests/hand/skirt.ron`): what was asked was that its
/// hem grows by a quarter of the hip's steps, 6 cm, and its waist by a quarter of the waist's, 6 cm: 15 mm from size to size.
#[test]
fn the_outline_that_was_traced_and_graded_by_hand_grows_as_it_was_asked_to() {
    let root = env!("CARGO_MANIFEST_DIR");
    let text = std::fs::read_to_string(format!("{root}/tests/hand/skirt.ron")).unwrap();
    let draft = file::read(&text).unwrap().draft;
    let model = Engine::new().compute(&draft);
    assert!(model.findings.is_empty(), "{:?}", model.findings);
    let trial = tracewheel::compute::Trial::new(&draft, &model.plan);
    let mm = |formula: &str, case: usize| {
        let read = trial.read(None, formula, tracewheel::language::What::Quantity).unwrap();
        trial.value(&model, case, &read).unwrap().real().unwrap()
    };
    let sizes: Vec<&str> = model.plan.cases.list.iter().map(|c| c.address.as_str()).collect();
    assert_eq!(sizes, ["S", "M", "L"]);
    for larger in 1..3 {
        let step = |formula: &str| mm(formula, larger) - mm(formula, larger - 1);
        for point in ["front.p2.x", "front.p3.x", "front.p4.x"] {
            assert!((step(point) - 15.0).abs() < 1e-9, "{point}: {}", step(point));
        }
        // Waist and hem are curves that are moved at one end: they grow by the step as far as they run level.
        for edge in ["length(front.waist)", "length(front.hem)"] {
            assert!((step(edge) - 15.0).abs() < 0.1, "{edge}: {}", step(edge));
        }
    }
}
