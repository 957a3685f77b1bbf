//! The command line in the language of the system: the same answers, the same exits, other words.

use std::fs;

use serde_json::Value as Json;

use crate::texts::has_english;

const DRAFT: &str = "examples/work-smock.ron";
const APRON: &str = "examples/market-apron.ron";

/// Exit, stdout, stderr.
fn run(language: &str, args: &[&str]) -> (i32, String, String) {
    let output = crate::program().args(args).env("LC_ALL", language).output().unwrap();
    let text = |bytes| String::from_utf8(bytes).unwrap();
    (output.status.code().unwrap(), text(output.stdout), text(output.stderr))
}

/// The same call in English and in German.
fn both(args: &[&str]) -> [(i32, String, String); 2] {
    ["C", "de_DE.UTF-8"].map(|language| run(language, args))
}

#[test]
fn refusals_are_told_in_the_language_of_the_system() {
    let dir = tempfile::tempdir().unwrap();
    let path = |name: &str| dir.path().join(name).display().to_string();
    let commented = path("commented.ron");
    fs::write(&commented, format!("// of one hand\n{}", fs::read_to_string(DRAFT).unwrap())).unwrap();
    let (out, svg) = (path("out"), path("open.svg"));
    let lines = "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"10mm\" height=\"10mm\" viewBox=\"0 0 10 10\"><path d=\"M1 1 L5 5\"/></svg>";
    fs::write(&svg, lines).unwrap();
    let calls: [(&[&str], i32); 16] = [
        (&["lay", DRAFT, "--material", "silk"], 2),
        (&["lay", DRAFT, "--moves", "0"], 2),
        (&["lay", DRAFT, "--group", "2 x"], 2),
        (&["publish", DRAFT, "--out", &out, "--piece", "frotn"], 2),
        (&["publish", APRON, "--out", &out, "--sheet", "none"], 2),
        (&["publish", DRAFT, "--out", &out, "--pixels", "many"], 2),
        (&["publish", DRAFT, "--out", &out, "--what", "projector", "--line", "0.1 mm"], 1),
        (&["roll", DRAFT, "no_such_seam"], 2),
        (&["compare", DRAFT, DRAFT, "--piece", "lid"], 2),
        (&["chart", DRAFT, "add", "60", "--axis", "width"], 2),
        (&["chart", DRAFT, "add", "60", "bust"], 2),
        (&["measure", DRAFT, "1", "--set", "bust"], 2),
        (&["format", &commented], 1),
        (&["help", "qqqq"], 1),
        (&["trace", &svg, "--into", DRAFT], 1),
        (&["tables", DRAFT, "--csv", DRAFT], 2),
    ];
    for (args, exit) in calls {
        let [(own, _, english), (other, _, german)] = both(args);
        assert_eq!((own, other), (exit, exit), "{args:?}: {english}{german}");
        assert!(english.starts_with("tracewheel: ") && german.starts_with("tracewheel: "), "{args:?}: {german}");
        assert!(has_english(&english) && !has_english(&german), "{args:?}: {english}{german}");
    }
    assert!(!dir.path().join("out").exists(), "nothing was written");
}

#[test]
fn what_is_printed_has_german_words_and_a_comma_and_json_is_the_same() {
    let [(_, english, _), (_, german, _)] = both(&["measure", "examples/bodice-sleeve.ron", "1 cm + 2.5 mm", "2 > 1"]);
    let rows = |text: &str| text.lines().count();
    assert!(english.starts_with("size") && english.contains("1.25 cm") && english.contains("yes"), "{english}");
    assert!(german.starts_with("Größe") && german.contains("1,25 cm") && german.contains(" ja"), "{german}");
    assert_eq!(rows(&english), rows(&german));
    let [(_, english, _), (_, german, _)] = both(&["chart", DRAFT, "list"]);
    assert!(english.starts_with("row ") && german.starts_with("Zeile "), "{german}");
    assert_eq!(rows(&english), rows(&german));
    let [(_, english, _), (_, german, _)] = both(&["block", DRAFT, "list"]);
    assert_ne!(english, german);
    // Two drafts: the designer is told in their own language, buyers in that of the draft, scripts always in the same words.
    let dir = tempfile::tempdir().unwrap();
    let text = fs::read_to_string(DRAFT).unwrap();
    let other = dir.path().join("other.ron").display().to_string();
    fs::write(
        &other,
        text.replacen("selvedge: \"1 cm\")", "selvedge: \"1 cm\", laid: folded_to_middle, nap: with)", 1),
    )
    .unwrap();
    let [(exit, english, _), (same, german, _)] = both(&["compare", DRAFT, &other]);
    assert_eq!((exit, same), (1, 1));
    assert!(english.contains("folded to middle") && english.contains("differences"), "{english}");
    assert!(
        german.contains("zur Mitte gefaltet") && german.contains("Unterschiede") && !has_english(&german),
        "{german}"
    );
    let [(_, english, _), (_, german, _)] = both(&["compare", DRAFT, &other, "--errata"]);
    assert_eq!(english, german, "the draft is in English");
    let [english, german] = both(&["compare", DRAFT, &other, "--json"]);
    assert_eq!(english, german);
    assert!(english.1.contains("folded to middle"), "{}", english.1);
    let [english, german] = both(&["measure", DRAFT, "1 cm", "--json"]);
    assert_eq!(english, german);
    // What is found in words is told in words; numbers and names are the same.
    let lay: &[&str] =
        &["lay", DRAFT, "--material", "main", "--size", "80", "--laid", "folded", "--moves", "20", "--json"];
    let [english, german] = both(lay).map(|ran| serde_json::from_str::<Json>(&ran.1).unwrap());
    let needed =
        |all: &Json| all["plans"].as_array().unwrap().iter().map(|p| p["lay"]["needed"].clone()).collect::<Vec<_>>();
    assert!(!needed(&english).is_empty() && needed(&english) == needed(&german), "{english}");
    assert_ne!(english["plans"][0]["lay"]["reasons"], german["plans"][0]["lay"]["reasons"]);
}
