//! Outlines from SVG files: against what another reader measures, and files that are wrong.
//!
//! `tests/outside/outlines.json` holds lengths and sizes by svgelements and numpy (see `tests/outside/outlines.py`).

use std::path::{Path, PathBuf};

use tracewheel::base::{Unit, tolerance};
use tracewheel::document::Segment;
use tracewheel::file::svg::{Outlines, Scale, SvgError, open_svg, read_svg};
use tracewheel::output::outline;
use tracewheel::session::{Tracing, Work, closed_outlines, trace};

use kurbo::Shape;

const FILES: [&str; 5] = ["centimetres.svg", "inches.svg", "millimetres.svg", "picas.svg", "points.svg"];

fn outside() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/outside")
}

fn known() -> serde_json::Value {
    serde_json::from_str(&std::fs::read_to_string(outside().join("outlines.json")).unwrap()).unwrap()
}

fn mm(found: &Outlines) -> f64 {
    match found.scale {
        Scale::Known(mm) => mm,
        Scale::Unknown(ref why) => panic!("{why}"),
    }
}

fn near(ours: f64, theirs: &serde_json::Value, limit: f64, what: &str) {
    let theirs = theirs.as_f64().unwrap();
    assert!((ours - theirs).abs() <= limit, "{what}: {ours} here, {theirs} outside");
}

fn svg(inside: &str) -> String {
    format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"100mm\" height=\"100mm\" viewBox=\"0 0 100 100\">{inside}</svg>"
    )
}

/// All closed outlines with the names that are proposed.
fn all_of(found: &Outlines, scale: f64) -> Tracing {
    let pieces = closed_outlines(found, &[]).0.into_iter().map(|o| (o.at, o.name)).collect();
    Tracing { scale, corner: tolerance::TRACED_CORNER, pieces }
}

#[test]
fn outlines_are_as_long_and_as_large_as_another_reader_says() {
    let known = known();
    let mut many = 0;
    for file in FILES {
        let found = open_svg(&outside().join("svg").join(file)).unwrap();
        let theirs = known[file].as_array().unwrap();
        assert_eq!(found.all.len(), theirs.len(), "{file}");
        let scale = mm(&found);
        for (own, theirs) in found.all.iter().zip(theirs) {
            let what = format!("{file}, {}", own.name);
            let length: f64 = own.path(1e-6).segments().map(|s| kurbo::ParamCurveArclen::arclen(&s, 1e-9)).sum();
            near(length * scale, &theirs["length"], 0.001, &what);
            near(own.bounds().width() * scale, &theirs["width"], 0.001, &what);
            near(own.bounds().height() * scale, &theirs["height"], 0.001, &what);
            many += 1;
        }
    }
    assert_eq!(many, 22);
}

/// By the standard (SVG 2, 8.6: without another word a drawing is fitted whole into its room, in the middle): units of 2, as 20 is
/// the shorter side, and (40 - 20) / 2 = 10 left at both sides.
#[test]
fn a_drawing_within_a_drawing_lies_where_the_standard_says() {
    let found = read_svg(&svg(
        "<svg x=\"10\" y=\"20\" width=\"40\" height=\"20\" viewBox=\"5 0 10 10\"><rect x=\"5\" width=\"10\" height=\"10\"/></svg>",
    ))
    .unwrap();
    let bounds = found.all[0].bounds();
    let corners = [bounds.x0, bounds.y0, bounds.x1, bounds.y1];
    assert!(corners.iter().zip([20.0, 20.0, 40.0, 40.0]).all(|(is, meant)| (is - meant).abs() < 1e-9), "{bounds:?}");
}

#[test]
fn traced_pieces_measure_what_another_reader_measures() {
    let known = known();
    let mut many = 0;
    for file in FILES {
        let found = open_svg(&outside().join("svg").join(file)).unwrap();
        let folder = tempfile::tempdir().unwrap();
        let draft = folder.path().join("draft.ron");
        let text = "(format: \"tracewheel draft\", version: 0, display: mm, chart: (girth: [\"88\"], base: \"88\"))";
        std::fs::write(&draft, text).unwrap();
        let (draft, svg_file) = (draft.to_str().unwrap(), outside().join("svg").join(file));
        let made = tracewheel(&["trace", svg_file.to_str().unwrap(), "--into", draft]);
        assert_eq!(made.0, 0, "{}", made.2);
        let opened = tracewheel::file::open(Path::new(draft)).unwrap().draft;
        let work = Work::here(opened.clone());
        let model = work.computed().model.as_ref().unwrap();
        assert!(
            model.findings.iter().all(|f| f.severity() != tracewheel::base::Severity::Error),
            "{:?}",
            model.findings
        );
        for own in closed_outlines(&found, &[]).0 {
            let piece = opened.pieces.iter().find(|p| p.name == own.name).unwrap();
            let lengths: Vec<String> =
                piece.edges.iter().map(|e| format!("length({}.{})", piece.name, e.name)).collect();
            let (exit, data, problem) = tracewheel(&["measure", draft, &lengths.join(" + "), "--json"]);
            assert_eq!(exit, 0, "{problem}");
            let measured: serde_json::Value = serde_json::from_str(&data).unwrap();
            let length = measured[lengths.join(" + ")]["88"].as_f64().unwrap();
            let theirs = &known[file][own.at];
            let what = format!("{file}, {}", own.name);
            // Both ends of each stretch are rounded to 0.01 mm.
            let stretches = piece.edges.iter().map(|e| e.by.len()).sum::<usize>() as f64;
            near(length, &theirs["length"], 0.01_f64.max(0.005 * stretches), &what);
            let frame = model.plan.frames().iter().find(|f| *f.name == *piece.name).unwrap();
            let ring = outline(model, 0, frame).unwrap();
            near(ring.bounding_box().width(), &theirs["width"], 0.01, &what);
            near(ring.bounding_box().height(), &theirs["height"], 0.01, &what);
            assert!(ring.bounding_box().origin().to_vec2().hypot() < 0.02, "{what} begins at its corner");
            many += 1;
        }
    }
    assert_eq!(many, 19);
}

fn tracewheel(arguments: &[&str]) -> (i32, String, String) {
    let out = crate::program().args(arguments).output().unwrap();
    let text = |bytes: &[u8]| String::from_utf8_lossy(bytes).into_owned();
    (out.status.code().unwrap(), text(&out.stdout), text(&out.stderr))
}

#[test]
fn a_scale_is_told_or_asked_for_and_never_guessed() {
    let of = |head: &str| {
        let text = format!("<svg xmlns=\"http://www.w3.org/2000/svg\" {head}><path d=\"M0 0H50V50Z\"/></svg>");
        read_svg(&text).unwrap().scale
    };
    assert_eq!(of("width=\"210mm\" height=\"297mm\" viewBox=\"0 0 420 594\""), Scale::Known(0.5));
    assert_eq!(of("width=\"2in\" height=\"1in\" viewBox=\"0 0 4 2\""), Scale::Known(12.7));
    for (head, why) in [
        ("width=\"210\" height=\"297\" viewBox=\"0 0 420 594\"", "has no unit"),
        ("width=\"210px\" height=\"297px\" viewBox=\"0 0 420 594\"", "is in px"),
        ("width=\"100%\" height=\"100%\" viewBox=\"0 0 420 594\"", "tells no size"),
        ("viewBox=\"0 0 420 594\"", "gives no width"),
        ("width=\"210mm\" viewBox=\"0 0 420 594\"", "gives no height"),
        ("width=\"210mm\" height=\"297mm\"", "no viewBox"),
        ("width=\"210mm\" height=\"297.4mm\" viewBox=\"0 0 210 297\"", "by the height"),
        ("width=\"0mm\" height=\"297mm\" viewBox=\"0 0 210 297\"", "tells no size"),
    ] {
        let Scale::Unknown(told) = of(head) else { panic!("{head} gives a scale") };
        assert!(told.contains(why), "{head}: {told}");
    }
    // 0.1 % apart is the same.
    assert_eq!(of("width=\"210mm\" height=\"297.2mm\" viewBox=\"0 0 210 297\""), Scale::Known(1.0));
}

#[test]
fn what_is_wrong_in_a_file_is_told() {
    let entity = |i: usize| format!("<!ENTITY e{i} \"{}\">", format!("&e{};", i - 1).repeat(10));
    let bomb: String = (1..12).map(entity).collect();
    let bomb = format!(
        "<!DOCTYPE svg [<!ENTITY e0 \"x\">{bomb}]><svg xmlns=\"http://www.w3.org/2000/svg\"><title>&e11;</title></svg>"
    );
    let many = svg(&"<rect width=\"1\" height=\"1\"/>".repeat(1_001));
    let deep = svg(&format!("{}<rect width=\"1\" height=\"1\"/>{}", "<g>".repeat(80), "</g>".repeat(80)));
    let cases: [(&str, &str); 9] = [
        ("<svg><path", "no well-formed XML"),
        ("nothing", "no well-formed XML"),
        ("<html><body/></html>", "`html`"),
        (&bomb, "no well-formed XML"),
        (&many, "more than 1000 outlines"),
        (&deep, "deep in one another"),
        (&svg("<text>words</text><image href=\"x.png\"/>"), "no outline in the file; left out: pictures: 1; texts: 1"),
        (&svg("<use href=\"other.svg#a\"/>"), "nothing outside is read"),
        (&svg("<g id=\"a\"><use href=\"#a\"/></g>"), "within itself"),
    ];
    for (text, words) in cases {
        let problem = read_svg(text).unwrap_err().to_string();
        assert!(problem.contains(words), "{problem} does not say {words}");
    }
    // 10 uses of 10 uses … of a rectangle: stopped by a count, not by the clock.
    let level = |i: usize| format!("<g id=\"l{i}\">{}</g>", format!("<use href=\"#l{}\"/>", i - 1).repeat(10));
    let nested: String = (1..9).map(level).collect();
    let text = svg(&format!("<defs><rect id=\"l0\" width=\"1\" height=\"1\"/>{nested}</defs><use href=\"#l8\"/>"));
    assert!(matches!(read_svg(&text), Err(SvgError::TooMuch(_))));
}

#[test]
fn what_is_odd_is_left_out_and_counted() {
    let found = read_svg(&svg(
        "<style>.a { fill: red }</style><path class=\"a\" d=\"M0 0H50V50Z\"/><path d=\"M0 0 L oops\"/>\
         <path d=\"M5 5\"/><line x1=\"3\" y1=\"3\" x2=\"3\" y2=\"3\"/><g display=\"none\"><rect width=\"4\" height=\"4\"/></g>\
         <rect width=\"2em\" height=\"4\"/><rect style=\"transform: rotate(3deg)\" width=\"4\" height=\"4\"/><text>a</text><text>b</text>",
    ))
    .unwrap();
    assert_eq!(found.all.len(), 1);
    let notes = found.notes.join("\n");
    for words in [
        "texts: 2",
        "style sheets: 1",
        "styles of elements: 1",
        "outlines without any size: 1",
        "hidden elements: 1",
        "hangs on the size of letters",
        "moved by a style",
        "a path that cannot be read",
    ] {
        assert!(notes.contains(words), "{words} is not in\n{notes}");
    }
}

#[test]
fn a_quadratic_is_the_same_curve_as_its_cubic() {
    let found = read_svg(&svg("<path d=\"M10 10 Q 60 -30 90 40 T 20 90 Z\"/>")).unwrap();
    let own = found.all[0].path(1e-9);
    let theirs = kurbo::QuadBez::new((10.0, 10.0), (60.0, -30.0), (90.0, 40.0));
    let first = own.segments().next().unwrap();
    for i in 0..=20 {
        let t = f64::from(i) / 20.0;
        let (a, b) = (kurbo::ParamCurve::eval(&first, t), kurbo::ParamCurve::eval(&theirs, t));
        assert!((a - b).hypot() < 1e-12, "{a:?} {b:?}");
    }
}

#[test]
fn corners_make_edges_and_smooth_joints_are_marked() {
    let found = read_svg(&svg("<path d=\"M10 10 H90 V60 C90 80 70 90 50 90 S10 80 10 60 Z\"/>")).unwrap();
    let (pieces, _) = trace(&found, &all_of(&found, 1.0), Unit::Centimetre).unwrap();
    let edges = &pieces[0].edges;
    // Both sides run into the curve without a corner.
    assert_eq!(edges.len(), 2, "{edges:?}");
    assert_eq!(edges[1].by.len(), 4);
    assert_eq!(edges[1].smooth_at.len(), 3, "{edges:?}");
    assert!(
        matches!(&edges[1].by[1], Segment::Curve(a, b, _) if a == "p3.down(2 cm)" && b == "p4.right(2 cm)"),
        "{edges:?}"
    );
    // With another limit for corners nothing changes here; a bend of 90 degrees is none where 100 are asked for.
    let blunt = Tracing { corner: 100_f64.to_radians(), ..all_of(&found, 1.0) };
    let (pieces, _) = trace(&found, &blunt, Unit::Centimetre).unwrap();
    assert_eq!(pieces[0].edges.iter().map(|e| e.smooth_at.len()).sum::<usize>(), 2, "{:?}", pieces[0].edges);
}

#[test]
fn arcs_stay_arcs_and_open_lines_go_to_the_smallest_piece_that_holds_them() {
    let found = read_svg(&svg(
        "<rect id=\"large\" x=\"0\" y=\"0\" width=\"100\" height=\"100\"/><circle id=\"small\" cx=\"50\" cy=\"50\" r=\"20\"/>\
         <path id=\"in_small\" d=\"M45 45 L55 55\"/><path id=\"in_large\" d=\"M5 5 A10 10 0 0 1 15 15\"/><path d=\"M90 90 L130 90\"/>",
    ))
    .unwrap();
    let (pieces, notes) = trace(&found, &all_of(&found, 1.0), Unit::Millimetre).unwrap();
    let lines = |i: usize| pieces[i].lines.iter().map(|l| l.name.as_str()).collect::<Vec<_>>();
    assert_eq!((lines(0), lines(1)), (vec!["in_large"], vec!["in_small"]));
    assert!(pieces[1].edges.iter().flat_map(|e| &e.by).all(|s| matches!(s, Segment::Arc { .. })));
    assert!(matches!(pieces[0].lines[0].by[0], Segment::Arc { .. }));
    assert!(notes.iter().any(|n| n.contains("1 open line")), "{notes:?}");
}

#[test]
fn an_outline_that_crosses_itself_is_seen() {
    let found = read_svg(&svg("<path id=\"bow\" d=\"M10 10 L90 90 V10 L10 90 Z\"/><rect width=\"50\" height=\"50\"/>"))
        .unwrap();
    let (closed, _) = closed_outlines(&found, &["piece".to_owned()]);
    assert_eq!(
        closed.iter().map(|c| (c.name.as_str(), c.crosses)).collect::<Vec<_>>(),
        [("bow", true), ("piece_2", false)]
    );
    let (_, notes) = trace(&found, &all_of(&found, 1.0), Unit::Millimetre).unwrap();
    assert!(notes.iter().any(|n| n.contains("bow crosses itself")), "{notes:?}");
}

#[test]
fn the_command_line_writes_nothing_where_something_is_missing() {
    let folder = tempfile::tempdir().unwrap();
    let draft = folder.path().join("draft.ron");
    let text = "// a comment\n(format: \"tracewheel draft\", version: 0, pieces: [(name: \"front\")])\n";
    std::fs::write(&draft, text).unwrap();
    let file = folder.path().join("px.svg");
    std::fs::write(&file, "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"300\" height=\"300\"><rect id=\"front\" width=\"96\" height=\"192\"/></svg>").unwrap();
    let (draft, file) = (draft.to_str().unwrap(), file.to_str().unwrap());
    let into = |more: &[&str]| tracewheel(&[&["trace", file, "--into", draft][..], more].concat());
    let kept = || assert_eq!(std::fs::read_to_string(draft).unwrap(), text);
    for (more, exit, words) in [
        (&[][..], 1, "has no unit"),
        (&["--width", "0 cm"], 1, "is no length above zero"),
        (&["--unit", "1"], 1, "`1` has no unit: is it `1 mm`, `1 cm` or `1 in`?"),
        (&["--css-px"], 1, "holds comments"),
        (&["--css-px", "--piece", "9=a"], 1, "there is no closed outline 9"),
        (&["--css-px", "--piece", "1=front", "--comments", "drop"], 1, "there is piece front already"),
        (&["--css-px", "--piece", "1=1st", "--comments", "drop"], 1, "starts with a digit"),
        (&["--unit", "30 cm", "--piece", "1=a", "--comments", "drop"], 1, "is the scale right?"),
        (&["--css-px", "--corner", "200"], 2, "between 0 and 180"),
    ] {
        let (code, _, problem) = into(more);
        assert_eq!(code, exit, "{more:?}: {problem}");
        assert!(problem.contains(words), "{more:?}: {problem}");
        kept();
    }
    assert_eq!(tracewheel(&["trace", "none.svg"]).0, 2);
    // A name that is taken is proposed with a number; 96 CSS pixels are an inch.
    let (code, _, told) = into(&["--css-px", "--comments", "keep"]);
    assert_eq!(code, 0, "{told}");
    let now = std::fs::read_to_string(draft).unwrap();
    assert!(now.contains("a comment") && now.contains("front_2") && now.contains("(2.54 cm, 5.08 cm)"), "{now}");
    let (code, _, told) = into(&["--width", "10 cm", "--piece", "front=pocket"]);
    assert_eq!(code, 0, "{told}");
    assert!(std::fs::read_to_string(draft).unwrap().contains("(10 cm, 20 cm)"));
}
