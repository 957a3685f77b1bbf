//! The command line: what is printed where, and the exits.

use std::path::Path;

use super::oracle::tracewheel;
use tempfile::TempDir;

const BLOCK: &str = "examples/bodice-sleeve.ron";

fn copy(name: &str) -> (TempDir, String) {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("draft.ron");
    std::fs::copy(name, &path).unwrap();
    let path = path.to_str().unwrap().to_owned();
    (folder, path)
}

#[test]
fn one_failing_formula_among_ten_leaves_nine() {
    let formulas =
        ["bust", "waist", "hip", "neck", "nck", "shoulder + 1 cm", "wrist", "cap_height", "back.tip", "2 + 3"];
    let mut args = vec!["measure", BLOCK, "--size", "88", "--json"];
    args.extend(formulas);
    let ran = tracewheel(&args);
    assert_eq!(ran.exit, 1);
    let found: serde_json::Value = serde_json::from_str(&ran.out).unwrap();
    assert_eq!(found.as_object().unwrap().keys().collect::<Vec<_>>(), formulas);
    assert_eq!(found.as_object().unwrap().values().filter(|v| v["88"].is_null()).count(), 1);
    assert!(ran.err.contains("did you mean `neck`?"), "{}", ran.err);
}

#[test]
fn every_kind_of_finding_is_listed() {
    let rows: serde_json::Value = serde_json::from_str(&tracewheel(&["findings", "--json"]).out).unwrap();
    let rows = rows.as_array().unwrap();
    assert_eq!(rows.len(), tracewheel::base::Code::ALL.len());
    assert!(rows.iter().any(|r| r["code"] == "not-true" && r["can_be_silenced"] == false && r["severity"] == "error"));
    let text = tracewheel(&["findings"]).out;
    assert!(text.contains("notch-apart (error, can be silenced, or switched off in `settings.unchecked`)"), "{text}");
}

#[test]
fn cut_lines_and_rolled_seams_are_printed() {
    let ran = tracewheel(&["finish", "examples/skirt-finished.ron", "--size", "88"]);
    assert_eq!((ran.exit, ran.out.lines().count()), (0, 3), "{}", ran.err);
    let ran = tracewheel(&["roll", "examples/skirt-finished.ron", "waist", "--size", "88"]);
    assert_eq!(ran.exit, 0, "{}", ran.err);
    assert!(ran.out.contains("centre_front") && ran.out.contains("centre_back"), "{}", ran.out);
    // A strip has no shape that could be rolled along.
    let ran = tracewheel(&["roll", "examples/bodice-finished.ron", "neck_binding"]);
    assert_eq!((ran.exit, ran.out.as_str()), (1, ""));
    assert!(ran.err.contains("cannot be rolled"), "{}", ran.err);
}

#[test]
fn wrong_calls_exit_two_and_say_why() {
    for (args, word) in [
        (vec!["measure", BLOCK], "required arguments"),
        (vec!["measure", "nowhere.ron", "bust"], "nowhere.ron"),
        (vec!["measure", BLOCK, "bust", "--size", "89"], "did you mean 88?"),
        (vec!["measure", BLOCK, "bust", "--set", "bust_ease"], "NAME=FORMULA"),
        (vec!["measure", BLOCK, "bust", "--set", "bust_es=1 cm"], "did you mean bust_ease?"),
        (vec!["proof", "README.md"], "this is not a draft"),
        (vec!["finish", "nowhere.ron"], "nowhere.ron"),
        (vec!["finish", BLOCK, "--size", "89"], "did you mean 88?"),
        (vec!["roll", BLOCK, "shuolder"], "did you mean shoulder?"),
        (vec!["roll", BLOCK, "side", "--to", "far"], "invalid value"),
        (vec!["publish", BLOCK, "--out", "target", "--width", "wide"], "--width wide"),
        (vec!["publish", BLOCK, "--out", "README.md"], "README.md"),
        (vec!["chart", BLOCK, "add", "86", "bust"], "ROW=LENGTH"),
        (vec!["chart", BLOCK, "import", "nowhere.csv"], "nowhere.csv"),
        (vec!["nowhere.ron"], "nowhere.ron"),
    ] {
        let ran = tracewheel(&args);
        assert_eq!((ran.exit, ran.out.as_str()), (2, ""), "{args:?}: {}", ran.err);
        assert!(ran.err.contains(word), "{args:?}: {}", ran.err);
    }
}

#[test]
#[cfg(not(feature = "window"))]
fn without_a_window_it_says_how_to_go_on() {
    let ran = tracewheel(&[BLOCK]);
    assert_eq!(ran.exit, 3);
    assert_eq!(ran.err.lines().count(), 1);
    assert!(ran.err.contains("tracewheel proof examples/bodice-sleeve.ron"), "{}", ran.err);
}

#[test]
fn a_size_is_added_late_and_the_seams_are_true_in_it() {
    let (_folder, path) = copy(BLOCK);
    let ran = tracewheel(&["chart", &path, "add", "86", "bust=+2 cm", "waist=70cm"]);
    assert_eq!(ran.exit, 0, "{}", ran.err);
    assert!(ran.err.contains("proposed, to be confirmed: hip, neck"), "{}", ran.err);
    let text = std::fs::read_to_string(&path).unwrap();
    assert!(
        text.contains("(\"84\", \"84 cm\"), (\"86\", \"86 cm\"), (\"88\", \"88 cm\")")
            || text.contains("(\"86\", \"86 cm\")")
    );
    let ran = tracewheel(&[
        "measure",
        &path,
        "seam.side.difference",
        "seam.back_armhole.difference",
        "bust",
        "hip",
        "--size",
        "86",
        "--json",
    ]);
    let found: serde_json::Value = serde_json::from_str(&ran.out).unwrap();
    let number = |f: &str| found[f]["86"].as_f64().unwrap();
    assert!(
        number("seam.side.difference").abs() < 1e-6
            && (number("seam.back_armhole.difference").abs() - 12.0).abs() < 1e-6
    );
    // Halfway between 92 and 96: the proposal.
    assert_eq!((number("bust"), number("hip")), (860.0, 940.0));
    let proof = tracewheel(&["proof", &path]);
    assert_eq!(proof.exit, 0);
    assert_eq!(proof.out.matches("cell-guessed").count(), 8);
}

#[test]
fn a_wrong_addition_changes_nothing() {
    let (_folder, path) = copy(BLOCK);
    let before = std::fs::read(&path).unwrap();
    for (args, word) in [
        (vec!["add", "88"], "already"),
        (vec!["add", "8/8"], "without `/`"),
        (vec!["add", "86", "bst=86 cm"], "did you mean bust?"),
        (vec!["add", "86", "bust=86 cmm"], "cmm"),
        (vec!["add", "86", "bust=eighty"], "chart.bust: nothing is called `eighty`"),
        (vec!["add", "86", "bust=+2 deg"], "not of one kind"),
        (vec!["add", "86", "--between", "84", "92"], "not beside each other"),
        (vec!["add", "86", "--between", "84", "89"], "did you mean 88?"),
    ] {
        let mut all = vec!["chart", path.as_str()];
        all.extend(args);
        let ran = tracewheel(&all);
        assert_eq!(ran.exit, 1, "{all:?}");
        assert!(ran.err.contains(word), "{all:?}: {}", ran.err);
    }
    assert_eq!(std::fs::read(&path).unwrap(), before);
}

#[test]
fn the_chart_goes_out_and_comes_back() {
    let (folder, path) = copy(BLOCK);
    let before = std::fs::read_to_string(&path).unwrap();
    let out = tracewheel(&["chart", &path, "export"]).out;
    assert!(out.starts_with("row,kind,76,80,84,88,"), "{out}");
    let table = folder.path().join("chart.csv");
    std::fs::write(&table, &out).unwrap();
    let ran = tracewheel(&["chart", &path, "import", table.to_str().unwrap()]);
    assert_eq!(ran.exit, 0, "{}", ran.err);
    assert_eq!(std::fs::read_to_string(&path).unwrap(), before);
    // All wrong cells are told, and nothing is taken.
    std::fs::write(&table, "row\tkind\t84\t88\nbust\tbody\t84\t8 8\nnew\thouse\t1 cm\t2 cm\n").unwrap();
    let ran = tracewheel(&["chart", &path, "import", table.to_str().unwrap()]);
    assert_eq!(ran.exit, 1);
    assert!(
        ran.err.contains("(2)") && ran.err.contains("no unit") && ran.err.contains("line 2, bust, 88"),
        "{}",
        ran.err
    );
    assert_eq!(std::fs::read_to_string(&path).unwrap(), before);
    let listed = tracewheel(&["chart", &path, "list"]).out;
    assert!(listed.contains("88*") && listed.lines().count() == 12, "{listed}");
}

#[test]
fn format_keeps_comments_only_when_told() {
    let (_folder, path) = copy(BLOCK);
    let text = std::fs::read_to_string(&path).unwrap();
    let commented = text.replacen("(\n", "( // mind the neck\n", 1);
    std::fs::write(&path, &commented).unwrap();
    let ran = tracewheel(&["format", &path]);
    assert_eq!(ran.exit, 1);
    assert!(ran.err.contains("--comments keep"), "{}", ran.err);
    assert_eq!(std::fs::read_to_string(&path).unwrap(), commented);
    assert_eq!(tracewheel(&["format", &path, "--comments", "keep"]).exit, 0);
    assert!(std::fs::read_to_string(&path).unwrap().contains("mind the neck"));
    std::fs::write(&path, &commented).unwrap();
    assert_eq!(tracewheel(&["format", &path, "--comments", "drop"]).exit, 0);
    assert_eq!(std::fs::read_to_string(&path).unwrap(), text);
}

#[test]
fn sheets_are_written_all_or_none() {
    let folder = tempfile::tempdir().unwrap();
    let out = folder.path().join("sheets");
    let out = out.to_str().unwrap();
    let ran = tracewheel(&["publish", "examples/straight-skirt.ron", "--out", out, "--for", "release"]);
    assert_eq!((ran.exit, ran.out.as_str()), (1, ""));
    assert!(ran.err.contains("blocked by errors") && !Path::new(out).exists(), "{}", ran.err);
    let ran = tracewheel(&["publish", "examples/straight-skirt.ron", "--out", out]);
    assert_eq!((ran.exit, ran.out.lines().count()), (0, 4), "{}", ran.err);
    let first = std::fs::read(Path::new(out).join("straight-skirt-64-toile-sheet-639x640mm.pdf")).unwrap();
    let ran = tracewheel(&["publish", "examples/straight-skirt.ron", "--out", out, "--size", "64"]);
    assert_eq!(ran.exit, 0);
    assert_eq!(
        std::fs::read(Path::new(out).join("straight-skirt-64-toile-sheet-639x640mm.pdf")).unwrap(),
        first,
        "same input, other bytes"
    );
    let ran = tracewheel(&["publish", "examples/straight-skirt.ron", "--out", out, "--width", "16 cm"]);
    assert_eq!(ran.exit, 1);
    assert!(ran.err.contains("mm"), "{}", ran.err);
}

#[test]
fn the_functions_are_listed_with_examples_that_hold() {
    let ran = tracewheel(&["functions", "--json"]);
    assert_eq!(ran.exit, 0);
    let rows: serde_json::Value = serde_json::from_str(&ran.out).unwrap();
    let rows = rows.as_array().unwrap();
    assert_eq!(rows.len(), tracewheel::language::FUNCTIONS.len());
    // Those that need no piece and no coordinates can be asked as they stand.
    let examples = rows.iter().map(|r| r["example"].as_str().unwrap());
    let examples: Vec<&str> =
        examples.filter(|e| !["cm)", "(0 cm, ", "front", "hem."].iter().any(|w| e.contains(w))).collect();
    assert!(examples.len() > 10, "{examples:?}");
    let mut args = vec!["measure", BLOCK, "--size", "88", "--json", "--"];
    args.extend(&examples);
    let asked = tracewheel(&args);
    assert_eq!(asked.exit, 0, "{}", asked.err);
    let text = tracewheel(&["functions"]).out;
    assert!(text.contains("touch(point, edge, [nearest: …], [from: …], [side: …])\n    Where a straight line from a point touches a curve."), "{text}");
}
