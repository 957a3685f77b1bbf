//! The examples against numbers from outside, asked as a user would: through the built program.
//!
//! Check block: `tests/outside/expected.json` and `styles.json`, made by `bodice_sleeve.py` (scipy), which shares no code
//! with the program. Skirt: `skirt-handout.json`, a published handout.

use serde_json::Value as Json;
use tempfile::TempDir;

const MM: f64 = 0.001;

pub struct Ran {
    pub exit: i32,
    pub out: String,
    pub err: String,
}

pub fn tracewheel(args: &[&str]) -> Ran {
    let output = crate::program().args(args).output().unwrap();
    let text = |bytes| String::from_utf8(bytes).unwrap();
    Ran { exit: output.status.code().unwrap(), out: text(output.stdout), err: text(output.stderr) }
}

fn read(name: &str) -> Json {
    serde_json::from_str(&std::fs::read_to_string(format!("tests/outside/{name}")).unwrap()).unwrap()
}

/// The formula that measures what a key of the oracle means.
fn formula(key: &str) -> String {
    let piece = key.split('.').next().unwrap();
    match key {
        "joint_waist_at_side_deg" => "corner_angle(back.underarm, back.waist_side, back.waist_centre) \
             + corner_angle(front.underarm, front.waist_side, front.waist_centre)"
            .to_owned(),
        _ if key.ends_with(".x") || key.ends_with(".y") || !key.contains('.') => key.to_owned(),
        _ if key.ends_with("waist_flat") => format!("flat_length({piece}.waist)"),
        _ if key.ends_with("dart_leg") => format!("{piece}.waist_dart.leg"),
        _ => format!("length({key})"),
    }
}

/// Compares all keys of `expected` (size, key, number or null) with the program; returns how many numbers agreed.
fn compare(file: &str, expected: &Json, extra: &[String]) -> usize {
    let sizes = expected.as_object().unwrap();
    let keys: Vec<&String> =
        sizes.values().max_by_key(|v| v.as_object().unwrap().len()).unwrap().as_object().unwrap().keys().collect();
    let formulas: Vec<String> = keys.iter().map(|k| formula(k)).collect();
    let mut args = vec!["measure", file, "--json"];
    args.extend(formulas.iter().map(String::as_str));
    args.extend(extra.iter().map(String::as_str));
    let ran = tracewheel(&args);
    let found: Json = serde_json::from_str(&ran.out).unwrap_or_else(|e| panic!("{e}: {}", ran.err));
    let mut count = 0;
    let mut nulls = 0;
    for (size, wanted) in sizes {
        for (key, formula) in keys.iter().zip(&formulas) {
            let got = &found[formula][size];
            match wanted.get(key.as_str()).and_then(Json::as_f64) {
                None => {
                    assert!(got.is_null(), "{key} in {size}: {got}, meant null");
                    nulls += 1;
                }
                Some(wanted) => {
                    let got = got.as_f64().unwrap_or_else(|| panic!("{key} in {size} is {got}: {}", ran.err));
                    let near = if key.ends_with("_deg") { MM / 10.0 } else { MM };
                    assert!((got - wanted).abs() <= near, "{key} in {size}: {got}, meant {wanted}");
                    count += 1;
                }
            }
        }
    }
    assert_eq!(ran.exit, i32::from(nulls > 0), "{}", ran.err);
    count
}

const BLOCK: &str = "examples/bodice-sleeve.ron";

#[test]
fn check_block_agrees_in_all_sizes() {
    assert_eq!(compare(BLOCK, &read("expected.json")["expected_mm"], &[]), 26 * 12);
}

#[test]
fn check_block_agrees_with_other_style_values() {
    let styles = read("styles.json");
    let styles = styles["styles"].as_array().unwrap();
    assert_eq!(styles.len(), 7);
    for style in styles {
        let mut extra = Vec::new();
        for (name, mm) in style["style_mm"].as_object().unwrap() {
            extra.push("--set".to_owned());
            extra.push(format!("{name}={mm} mm"));
        }
        assert!(compare(BLOCK, &style["expected_mm"], &extra) >= 20 * 12, "{extra:?}");
    }
}

#[test]
fn check_block_agrees_on_ten_bodies() {
    let persons = read("styles.json")["persons"].clone();
    let mut extra = Vec::new();
    for name in persons.as_object().unwrap().keys() {
        extra.extend(["--size".to_owned(), name.clone()]);
    }
    assert_eq!(extra.len(), 20);
    assert_eq!(compare(BLOCK, &persons, &extra), 26 * 10);
}

/// A copy of the check block with a change of its text.
fn changed(from: &str, to: &str) -> (TempDir, String) {
    let text = std::fs::read_to_string(BLOCK).unwrap();
    assert!(text.contains(from), "{from}");
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("draft.ron");
    std::fs::write(&path, text.replace(from, to)).unwrap();
    let name = path.to_str().unwrap().to_owned();
    (folder, name)
}

#[test]
fn other_starts_give_the_same() {
    let text = std::fs::read_to_string(BLOCK).unwrap();
    let start = text.split("name: \"cap_height\"").nth(1).unwrap().split("start: \"").nth(1).unwrap();
    let start = start.split('"').next().unwrap();
    for other in ["2", "0.5"] {
        let (_folder, path) = changed(&format!("start: \"{start}\""), &format!("start: \"({start}) * {other}\""));
        assert_eq!(compare(&path, &read("expected.json")["expected_mm"], &[]), 26 * 12, "{other}");
    }
}

#[test]
fn a_sleeve_too_wide_for_any_cap_is_said_so() {
    let ran =
        tracewheel(&["measure", BLOCK, "cap_height", "length(back.armhole)", "--json", "--set", "arm_ease=260 mm"]);
    assert_eq!(ran.exit, 1);
    let found: Json = serde_json::from_str(&ran.out).unwrap();
    assert!(found["cap_height"].as_object().unwrap().values().all(Json::is_null));
    assert!(found["length(back.armhole)"].as_object().unwrap().values().all(Json::is_number));
    for word in ["not-true", "seam.back_armhole, seam.front_armhole", "cm off", "12 sizes: 76 … 128"] {
        assert!(ran.err.contains(word), "{word}: {}", ran.err);
    }
}

#[test]
fn a_found_value_can_be_given_for_a_run() {
    let ran = tracewheel(&[
        "measure",
        BLOCK,
        "front_side_drop",
        "seam.side.difference",
        "--json",
        "--size",
        "88",
        "--set",
        "front_side_drop=3 cm",
    ]);
    let found: Json = serde_json::from_str(&ran.out).unwrap();
    assert_eq!(found["front_side_drop"]["88"], 30.0);
    assert!(found["seam.side.difference"]["88"].as_f64().unwrap() < -20.0, "{}", ran.out);
}

#[test]
fn the_waist_bends_over_the_side_seam_as_the_oracle_says() {
    let ran = tracewheel(&["proof", BLOCK, "--json"]);
    assert_eq!(ran.exit, 0);
    let proof: Json = serde_json::from_str(&ran.out).unwrap();
    let bent: Vec<&Json> = proof["findings"].as_array().unwrap().iter().filter(|f| f["severity"] != "note").collect();
    assert_eq!(bent.len(), 1);
    assert_eq!(bent[0]["code"], "joint-bent");
    let expected = read("expected.json");
    let angles = bent[0]["numbers"]["angle"].as_object().unwrap();
    assert_eq!(angles.len(), 12);
    for (size, angle) in angles {
        let wanted = expected["expected_mm"][size]["joint_waist_at_side_deg"].as_f64().unwrap();
        assert!((angle.as_f64().unwrap() - wanted).abs() < 1e-4, "{size}: {angle}, meant {wanted}");
    }
}

const SKIRT: &str = "examples/straight-skirt.ron";

#[test]
fn the_skirt_has_the_numbers_of_the_handout() {
    let formulas = [
        "part(back.side, back.hip_side, back.waist_side)",
        "part(front.side, front.hip_side, front.waist_side)",
        "back_hip",
        "front_hip",
        "finished_hip",
        "seam.side.difference",
    ];
    let mut args = vec!["measure", SKIRT, "--json"];
    args.extend(formulas);
    let ran = tracewheel(&args);
    assert_eq!(ran.exit, 0, "{}", ran.err);
    let found: Json = serde_json::from_str(&ran.out).unwrap();
    let handout = read("skirt-handout.json");
    for row in handout["rows"].as_array().unwrap() {
        let size = row["waist"].to_string();
        let keys = [
            "side_seam_chord_back",
            "side_seam_chord_front",
            "back_hip_half",
            "front_hip_half",
            "finished_hip",
            "side_seam_mismatch",
        ];
        for (key, formula) in keys.iter().zip(formulas) {
            let (got, wanted) = (found[formula][&size].as_f64().unwrap(), row[*key].as_f64().unwrap() * 10.0);
            assert!((got - wanted).abs() <= MM, "{key} in {size}: {got}, meant {wanted}");
        }
    }
}

#[test]
fn proof_finds_the_flaw_of_the_handout() {
    let ran = tracewheel(&["proof", SKIRT, "--json"]);
    assert_eq!(ran.exit, 1);
    let proof: Json = serde_json::from_str(&ran.out).unwrap();
    let flaw = &proof["findings"][0];
    assert_eq!(flaw["code"], "seam-length");
    assert_eq!(flaw["sizes"], serde_json::json!(["64", "72", "80"]));
    let excess = flaw["numbers"]["excess"]["72"].as_f64().unwrap();
    assert!((excess - 0.64856).abs() < MM, "{excess}");
    // Fine at 1/16 in, the careful drafter's limit (common practice, no source).
    let text = std::fs::read_to_string(SKIRT).unwrap().replace("seam_limit: \"0.5 mm\"", "seam_limit: \"1/16 in\"");
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("skirt.ron");
    std::fs::write(&path, text).unwrap();
    assert_eq!(tracewheel(&["proof", path.to_str().unwrap()]).exit, 0);
}
