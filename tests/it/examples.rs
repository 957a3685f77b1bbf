//! Every example opens, is in its standard form, proofs as meant, can be published in every size, and round-trips.

use tracewheel::base::Severity;
use tracewheel::compute::Engine;
use tracewheel::{file, output, proof};

/// Examples with the errors and warnings that they show on purpose.
const SHOWN: [(&str, &[&str]); 15] = [
    ("bodice-finished.ron", &[]),
    ("bodice-sleeve.ron", &["joint-bent"]),
    ("chest-bodice.ron", &[]),
    ("childs-smock.ron", &[]),
    ("circle-skirt.ron", &[]),
    ("flat-collar.ron", &[]),
    ("market-apron.ron", &[]),
    ("panel-top.ron", &[]),
    ("skirt-finished.ron", &[]),
    ("sleeve-head.ron", &[]),
    ("straight-skirt.ron", &["seam-length"]),
    ("top-in-views.ron", &[]),
    ("trousers.ron", &[]),
    ("work-smock.ron", &[]),
    ("yoke-skirt.ron", &[]),
];

#[test]
fn every_example_is_listed() {
    let mut names: Vec<String> = std::fs::read_dir("examples")
        .unwrap()
        .map(|e| e.unwrap().file_name().to_string_lossy().into_owned())
        .filter(|n| n.ends_with(".ron"))
        .collect();
    names.sort();
    assert_eq!(names, SHOWN.map(|s| s.0));
}

#[test]
fn examples_open_proof_publish_and_round_trip() {
    for (name, shown) in SHOWN {
        let text = std::fs::read_to_string(format!("examples/{name}")).unwrap();
        let opened = file::read(&text).unwrap();
        assert_eq!(file::write(&opened.draft), text, "{name} is not in its standard form");
        let model = Engine::new().compute(&opened.draft);
        let finished = tracewheel::finish::finish(&model.draft, &model);
        let codes: Vec<&str> = proof::proof_of(&model.draft, &model, &finished)
            .iter()
            .filter(|f| f.severity() != Severity::Note)
            .map(|f| f.code.word())
            .collect();
        assert_eq!(codes, shown, "{name}");
        let views = model.of_views().iter().zip(finished.of_views());
        for (model, finished, case) in views.flat_map(|(m, f)| (0..m.cases.len()).map(move |case| (m, f, case))) {
            let (pieces, missing) = output::sheet_pieces(&model.draft, model, finished, case, false);
            assert_eq!(missing, Vec::<String>::new(), "{name}");
            assert!(pieces.iter().all(|p| !p.faded), "{name}");
            let pdf = crate::output_demo::wide_pdf("test", &pieces, output::WideSettings::default()).unwrap();
            assert!(pdf.starts_with(b"%PDF-"), "{name}");
        }
    }
}

#[test]
fn the_draft_in_the_help_is_true() {
    let help = std::fs::read_to_string("assets/help/en/file.md").unwrap();
    let text = help.split("```ron\n").nth(1).unwrap().split("```").next().unwrap();
    let draft = file::read(text).unwrap().draft;
    let model = Engine::new().compute(&draft);
    assert_eq!(proof::proof(&draft, &model), Vec::new());
}
