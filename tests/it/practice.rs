//! What goes wrong in practice, each case a draft of its own in `tests/cases`, run through the program as a person would, with the
//! outcome that is right beside it. Numbers of the cases are as each says; what is judged is what the program makes of them.
//!
//! `loud` lists every error and warning, no more and no fewer.

use std::fs;
use std::path::PathBuf;

use kurbo::{BezPath, PathEl, Point};
use serde_json::Value as Json;

fn folder() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("tests/cases")
}

/// What the program prints, as JSON.
fn said(words: &[&str]) -> Json {
    let out = crate::program().args(words).output().unwrap();
    serde_json::from_slice(&out.stdout).unwrap_or_else(|e| {
        panic!("{words:?}: {e}\n{}\n{}", String::from_utf8_lossy(&out.stdout), String::from_utf8_lossy(&out.stderr))
    })
}

fn near(have: f64, wanted: f64, within: f64) -> bool {
    (have - wanted).abs() <= within
}

/// Whether a finding is the one that is wanted: every number told, in mm, degrees or plain.
fn fits(finding: &Json, wanted: &Json) -> Result<(), String> {
    for key in ["code", "name", "piece"] {
        if let Some(w) = wanted.get(key).filter(|w| finding[key] != **w) {
            return Err(format!("{key} is {} and not {w}", finding[key]));
        }
    }
    if finding["sizes"] != wanted["sizes"] {
        return Err(format!("sizes are {} and not {}", finding["sizes"], wanted["sizes"]));
    }
    if let Some(words) = wanted.get("says").and_then(Json::as_str)
        && !finding["message"].as_str().unwrap().contains(words)
    {
        return Err(format!("{} does not say {words}", finding["message"]));
    }
    for (name, number) in wanted.get("numbers").and_then(Json::as_object).into_iter().flatten() {
        let have = &finding["numbers"][name];
        let pairs: Vec<(f64, f64)> = match (number, have) {
            (Json::Object(by_size), Json::Object(have)) => {
                by_size.iter().map(|(s, w)| (have[s].as_f64().unwrap(), w.as_f64().unwrap())).collect()
            }
            (one, Json::Object(have)) => have.values().map(|h| (h.as_f64().unwrap(), one.as_f64().unwrap())).collect(),
            (one, have) => vec![(have.as_f64().unwrap_or(f64::NAN), one.as_f64().unwrap_or(f64::NAN))],
        };
        if let Some((have, wanted)) = pairs.into_iter().find(|(h, w)| !near(*h, *w, 0.01)) {
            return Err(format!("{name} is {have} and not {wanted}"));
        }
    }
    Ok(())
}

fn proof(file: &str, wanted: &Json) {
    let told = said(&["proof", file, "--json"]);
    let is_loud = |f: &&Json| f["severity"] != "note" && f["silenced"].is_null();
    let mut loud: Vec<&Json> = told["findings"].as_array().unwrap().iter().filter(is_loud).collect();
    for one in wanted.as_array().unwrap() {
        let tries: Vec<Result<(), String>> = loud.iter().map(|f| fits(f, one)).collect();
        let place = tries.iter().position(Result::is_ok);
        let place = place.unwrap_or_else(|| panic!("{file}: {one} is not told; {tries:#?}\n{loud:#?}"));
        loud.remove(place);
    }
    assert!(loud.is_empty(), "{file}: told besides what is right: {loud:#?}");
}

fn vertices(path: &str) -> Vec<Point> {
    let path = BezPath::from_svg(path).unwrap();
    path.elements().iter().filter_map(PathEl::end_point).collect()
}

fn at(pair: &Json) -> Point {
    Point::new(pair[0].as_f64().unwrap(), pair[1].as_f64().unwrap())
}

fn finished(file: &str, wanted: &Json) {
    let whole: &[&str] = if wanted.get("whole").is_some() { &["--whole"] } else { &[] };
    let made = said(&[&["finish", file, "--json"], whole].concat());
    let all = |key: &str| wanted.get(key).and_then(Json::as_array).cloned().unwrap_or_default();
    let of = |one: &Json| made[one["size"].as_str().unwrap()][one["piece"].as_str().unwrap()].clone();
    for one in all("through") {
        let piece = of(&one);
        let line = if one["what"] == "stitch" { &piece["stitch"] } else { &piece["cuts"][0]["outline"] };
        let corners = vertices(line.as_str().unwrap());
        for point in one["points"].as_array().unwrap() {
            let away = corners.iter().map(|c| c.distance(at(point))).fold(f64::INFINITY, f64::min);
            assert!(away <= 0.01, "{file}: no corner of the line at {point}, nearest {away}: {corners:?}");
        }
    }
    for one in all("extent") {
        let corners = vertices(of(&one)["cuts"][0]["outline"].as_str().unwrap());
        let span = |of: fn(&Point) -> f64| {
            let all = corners.iter().map(of);
            all.clone().fold(f64::NEG_INFINITY, f64::max) - all.fold(f64::INFINITY, f64::min)
        };
        let (wide, high) = (one["wide"].as_f64().unwrap(), one["high"].as_f64().unwrap());
        assert!(near(span(|p| p.x), wide, 0.001) && near(span(|p| p.y), high, 0.001), "{file}: {corners:?}");
    }
    for one in all("words") {
        let words = of(&one)["cuts"][0]["words"].clone();
        assert_eq!(words, one["says"], "{file}");
    }
    for one in all("marks") {
        let marks = of(&one)["marks"].as_array().unwrap().clone();
        let found = marks.iter().find(|m| m["name"] == one["name"] && m["number"] == one["number"]).unwrap();
        assert!(at(&found["at"]).distance(at(&one["at"])) <= 0.001, "{file}: {found} for {one}");
    }
    for one in all("notches") {
        let notches = of(&one)["notches"].as_array().unwrap().clone();
        let found = notches.iter().find(|n| n["name"] == one["name"]);
        let found = found.unwrap_or_else(|| panic!("{file}: no notch {one}: {notches:?}"));
        // The stroke starts on the cut line and points at its place on the stitch line.
        let (from, to) = (at(&found["strokes"][0][0]), at(&found["strokes"][0][1]));
        let foot = from + (to - from).normalize() * found["allowance"].as_f64().unwrap();
        assert!(foot.distance(at(&one["foot"])) <= 0.001, "{file}: {foot} for {one}");
    }
}

fn measured(file: &str, wanted: &Json) {
    for one in wanted.as_array().into_iter().flatten() {
        let formula = one["formula"].as_str().unwrap();
        let told = said(&["measure", file, formula, "--json"]);
        for (size, number) in one["by_size"].as_object().unwrap() {
            let (have, wanted) = (told[formula][size].as_f64().unwrap(), number.as_f64().unwrap());
            assert!(near(have, wanted, 0.001), "{file}: {formula} is {have} in {size} and not {wanted}");
        }
    }
}

/// The cases by their names, each with what is right.
fn cases() -> Vec<(String, String, Json)> {
    let mut out = Vec::new();
    for entry in fs::read_dir(folder()).unwrap() {
        let path = entry.unwrap().path();
        if path.extension().is_some_and(|e| e == "ron") {
            let wanted = fs::read_to_string(path.with_extension("json")).unwrap();
            let name = path.file_stem().unwrap().to_str().unwrap().to_owned();
            out.push((name, path.to_str().unwrap().to_owned(), serde_json::from_str(&wanted).unwrap()));
        }
    }
    out.sort_by(|a, b| a.0.cmp(&b.0));
    assert!(out.len() >= 60, "{}", out.len());
    out
}

#[test]
fn each_case_is_told_as_it_should_be() {
    let mut wrong = Vec::new();
    for (name, file, wanted) in cases() {
        let tried = std::panic::catch_unwind(|| {
            proof(&file, &wanted["loud"]);
            measured(&file, &wanted["measure"]);
            finished(&file, &wanted);
        });
        if tried.is_err() {
            wrong.push(name);
        }
    }
    assert!(wrong.is_empty(), "{wrong:?}");
}
