//! Edges taken from others: whole, a part, reversed, laid, mirrored, set off evenly or from one distance to another. They follow their source.

use tracewheel::base::DisplayUnit;
use tracewheel::compute::{Engine, Model};
use tracewheel::curves::Pt;
use tracewheel::file;
use tracewheel::texts::message;

/// `new` takes from `old` by this formula and distances; its ends are the formula's own.
fn model(curve: &str, off: &str, bow: &str) -> Model {
    let set = match off.split_once("..") {
        Some((from, to)) => format!("set_off({curve}, from: {from}, to: {to})"),
        None if off.is_empty() => curve.to_owned(),
        None => format!("set_off({curve}, {off})"),
    };
    let told = match off.split_once("..") {
        Some((from, to)) => format!("off: \"{from}\", off_end: \"{to}\", "),
        None if off.is_empty() => String::new(),
        None => format!("off: \"{off}\", "),
    };
    let text = format!(
        r#"(format: "tracewheel draft", version: 0, display: cm,
        chart: (girth: ["S", "L"], rows: [(name: "bust", by: [girth], cells: [("S", "80 cm"), ("L", "104 cm")])]),
        values: [(name: "bow", is: "{bow}")],
        pieces: [(name: "old", points: [(name: "a", at: "(0 cm, 0 cm)"), (name: "b", at: "a.right(bust / 4)"), (name: "c", at: "b.down(30 cm)"),
            (name: "d", at: "a.down(30 cm)")], edges: [(name: "top", from: "a", by: [curve("a.right(5 cm).down(bow)", "b.left(5 cm).down(bow)", "b")]),
            (name: "side", from: "b", by: [straight("c")]), (name: "hem", from: "c", by: [straight("d")]), (name: "centre", from: "d", by: [straight("a")])]),
        (name: "new", points: [(name: "p", at: "at({set}, 0)"), (name: "q", at: "at({set}, 1)")],
            lines: [(name: "line", from: "p", by: [taken(curve: "{curve}", {told}to: "q")])])],
        placements: [(name: "laid", lay: "old", on: "new", point: "a", onto: "(3 cm, 4 cm)", turned: "30 deg"),
            (name: "over", lay: "old", on: "new", point: "a", onto: "(3 cm, 4 cm)", turned: "0 deg", mirrored: true)])"#
    );
    Engine::new().compute(&file::read(&text).unwrap().draft)
}

/// The taken line at this fraction of its length, and its length, in a size.
fn taken(model: &Model, size: &str, share: f64) -> (Pt<f64>, f64) {
    let told: Vec<String> = model.findings.iter().map(|f| message(f, DisplayUnit::Cm)).collect();
    assert!(told.is_empty(), "{told:?}");
    let case = model.plan.cases.find(size).unwrap();
    let node = model.plan.node_named("new.line").unwrap();
    let edge = model.cases[case].slots[node as usize].good().unwrap().edge().unwrap();
    (edge.curve.point_at(share * edge.flat_length()).unwrap(), edge.flat_length())
}

fn old(model: &Model, size: &str, share: f64) -> (Pt<f64>, Pt<f64>, f64) {
    let case = model.plan.cases.find(size).unwrap();
    let node = model.plan.node_named("old.top").unwrap();
    let edge = model.cases[case].slots[node as usize].good().unwrap().edge().unwrap();
    let at = share * edge.flat_length();
    (edge.curve.point_at(at).unwrap(), edge.curve.tangent_at(at).unwrap(), edge.flat_length())
}

fn close(a: Pt<f64>, b: Pt<f64>) {
    assert!((a - b).length() < 1e-5, "{a:?} for {b:?}");
}

/// A point of `old` as it is laid in `new`.
fn laid(p: Pt<f64>) -> Pt<f64> {
    let (sin, cos) = 30f64.to_radians().sin_cos();
    Pt::new(30.0 + p.x * cos - p.y * sin, 40.0 + p.x * sin + p.y * cos)
}

#[test]
fn whole_laid_reversed_and_mirrored() {
    for bow in ["2 cm", "-1 cm"] {
        for size in ["S", "L"] {
            let m = model("laid.top", "", bow);
            let (at, _, length) = old(&m, size, 0.3);
            let (have, taken_length) = taken(&m, size, 0.3);
            close(have, laid(at));
            assert!((taken_length - length).abs() < 1e-9);
            let m = model("reversed(laid.top)", "", bow);
            close(taken(&m, size, 0.7).0, laid(at));
            let m = model("over.top", "", bow);
            close(taken(&m, size, 0.3).0, Pt::new(30.0 - at.x, 40.0 + at.y));
            let m = model("mirrored(laid.top, plumb((3 cm, 4 cm)))", "", bow);
            close(taken(&m, size, 0.3).0, Pt::new(60.0 - laid(at).x, laid(at).y));
        }
    }
}

#[test]
fn a_part_of_it() {
    for size in ["S", "L"] {
        let m = model("part(laid.top, at(laid.top, 1/4), at(laid.top, 3/4))", "", "2 cm");
        let (at, _, length) = old(&m, size, 0.5);
        let (have, taken_length) = taken(&m, size, 0.5);
        close(have, laid(at));
        assert!((taken_length - length / 2.0).abs() < 1e-6);
    }
}

#[test]
fn set_off_to_the_inside_however_it_is_laid() {
    for (curve, back) in [("laid.top", false), ("reversed(laid.top)", true)] {
        for size in ["S", "L"] {
            let m = model(curve, "1 cm", "-2 cm");
            let (at, way, _) = old(&m, size, 0.0);
            let inside = Pt::new(-way.y, way.x);
            close(taken(&m, size, if back { 1.0 } else { 0.0 }).0, laid(at + inside.times(10.0)));
            // All of it lies a centimetre from its source.
            let case = m.plan.cases.find(size).unwrap();
            let node = m.plan.node_named("old.top").unwrap();
            let source = m.cases[case].slots[node as usize].good().unwrap().edge().unwrap();
            for k in 0..=10 {
                let p = taken(&m, size, f64::from(k) / 10.0).0 - Pt::new(30.0, 40.0);
                let (sin, cos) = 30f64.to_radians().sin_cos();
                let p = Pt::new(p.x * cos + p.y * sin, p.y * cos - p.x * sin);
                let away = (source.curve.point_at(source.curve.locate(p).along).unwrap() - p).length();
                assert!((away - 10.0).abs() < 1e-4, "{k}: {away}");
            }
        }
    }
    // Mirrored: to its own inside, which is then the other way about.
    let m = model("over.top", "1 cm", "-2 cm");
    let (at, way, _) = old(&m, "L", 1.0);
    let p = at + Pt::new(-way.y, way.x).times(10.0);
    close(taken(&m, "L", 1.0).0, Pt::new(30.0 - p.x, 40.0 + p.y));
}

#[test]
fn set_off_from_one_distance_to_another() {
    for size in ["S", "L"] {
        let m = model("laid.top", "0 cm..3 cm", "-2 cm");
        close(taken(&m, size, 0.0).0, laid(old(&m, size, 0.0).0));
        let (at, way, _) = old(&m, size, 1.0);
        close(taken(&m, size, 1.0).0, laid(at + Pt::new(-way.y, way.x).times(30.0)));
    }
}

#[test]
fn what_cannot_be_taken_says_why() {
    for (curve, off, words) in [
        ("laid.top", "-50 cm", "bends tighter than it is set off"),
        ("old.top", "", "lies on old, not on new"),
        ("part(laid.top, at(laid.top, 1/4), (0 cm, 0 cm))", "", "away from the edge"),
    ] {
        let m = model(curve, off, "9 cm");
        let told: Vec<String> = m.findings.iter().map(|f| message(f, DisplayUnit::Cm)).collect();
        assert!(told.iter().any(|t| t.contains(words)), "{curve} {off}: {told:#?}");
    }
    // Ends that lie elsewhere are named.
    let text = r#"(format: "tracewheel draft", version: 0, chart: (girth: ["S"]), pieces: [(name: "p", points: [(name: "a", at: "(0 cm, 0 cm)"),
        (name: "b", at: "(9 cm, 0 cm)"), (name: "c", at: "(9 cm, 1 cm)")], lines: [(name: "one", from: "a", by: [straight("b")]),
        (name: "two", from: "a", by: [taken(curve: "one", to: "c")])])])"#;
    let m = Engine::new().compute(&file::read(text).unwrap().draft);
    let told: Vec<String> = m.findings.iter().map(|f| message(f, DisplayUnit::Cm)).collect();
    assert!(told.iter().any(|t| t.contains("10 mm") && t.contains('c')), "{told:?}");
}
