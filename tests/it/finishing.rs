//! Cut lines against closed forms and published values (`tests/outside/math-values.json`, each table with its source).

use kurbo::{BezPath, PathEl, Point, Shape};
use serde_json::Value as Json;
use std::f64::consts::{PI, TAU};
use tracewheel::compute::{Engine, Model};
use tracewheel::document::Draft;
use tracewheel::file;
use tracewheel::finish::{Finished, FinishedPiece, finish};
use tracewheel::proof;

fn rows(table: &str) -> Vec<Json> {
    let text = std::fs::read_to_string("tests/outside/math-values.json").unwrap();
    let all: Json = serde_json::from_str(&text).unwrap();
    all["tables"][table]["rows"].as_array().unwrap().clone()
}

pub struct Made {
    pub draft: Draft,
    pub model: Model,
    pub finished: Finished,
}

pub fn made(body: &str) -> Made {
    let head = "(format: \"tracewheel draft\", version: 0, chart: (girth: [\"one\"]),";
    let draft = file::read(&format!("{head}{body})")).unwrap().draft;
    let model = Engine::new().compute(&draft);
    let finished = finish(&draft, &model);
    Made { draft, model, finished }
}

impl Made {
    pub fn piece(&self, place: usize) -> &FinishedPiece {
        self.finished.cases[0][place].as_ref().unwrap()
    }

    pub fn cut(&self, place: usize) -> BezPath {
        self.piece(place).cuts[0].outline.clone().unwrap()
    }

    pub fn loud(&self) -> Vec<String> {
        let findings = proof::proof(&self.draft, &self.model);
        let loud = findings.iter().filter(|f| f.severity() != tracewheel::base::Severity::Note);
        loud.map(|f| tracewheel::texts::message(f, self.draft.display)).collect()
    }
}

fn vertices(path: &BezPath) -> Vec<Point> {
    let mut out: Vec<Point> = path.elements().iter().filter_map(PathEl::end_point).collect();
    out.dedup_by(|a, b| a.distance(*b) < 1e-9);
    out
}

pub fn has(path: &BezPath, x: f64, y: f64) {
    let near = vertices(path).iter().map(|v| v.distance(Point::new(x, y))).fold(f64::INFINITY, f64::min);
    assert!(near < 1e-6, "no corner at {x}, {y}: nearest {near}: {:?}", vertices(path));
}

pub fn near(have: f64, wanted: f64, within: f64) {
    assert!((have - wanted).abs() <= within, "{have} for {wanted}");
}

fn length(path: &BezPath) -> f64 {
    path.perimeter(1e-9)
}

/// A piece of straight edges with allowances, its corners as told.
pub fn polygon(name: &str, vertices: &[(f64, f64)], widths: &[f64], more: &str) -> String {
    let n = vertices.len();
    let points: String = vertices
        .iter()
        .enumerate()
        .map(|(i, (x, y))| format!("(name: \"p{i}\", at: \"({x} mm, {y} mm)\"), "))
        .collect();
    let edges: String =
        (0..n).map(|i| format!("(name: \"e{i}\", from: \"p{i}\", by: [straight(\"p{}\")]), ", (i + 1) % n)).collect();
    let allowances: String =
        widths.iter().enumerate().map(|(i, w)| format!("(edge: \"e{i}\", width: \"{w} mm\"), ")).collect();
    format!("(name: \"{name}\", points: [{points}], edges: [{edges}], allowances: [{allowances}], {more})")
}

fn plain_corners(n: usize) -> String {
    let corners: String = (0..n).map(|i| format!("(at: \"p{i}\", form: plain), ")).collect();
    format!("corners: [{corners}]")
}

fn pairs(list: &Json) -> Vec<(f64, f64)> {
    list.as_array().unwrap().iter().map(|p| (p[0].as_f64().unwrap(), p[1].as_f64().unwrap())).collect()
}

#[test]
fn published_polygons_set_off_and_mitred() {
    let convex = rows("math.offset_convex_polygons");
    let concave: Vec<Json> =
        rows("math.offset_concave_L").into_iter().filter(|r| r["offset"].as_f64().unwrap() > 0.0).collect();
    assert!(convex.len() >= 6 && concave.len() == 1);
    for row in convex.iter().chain(&concave) {
        let corners = pairs(&row["vertices"]);
        let n = corners.len();
        let width = row["offset"].as_f64().unwrap();
        let m = made(&format!("pieces: [{}]", polygon("p", &corners, &vec![width; n], &plain_corners(n))));
        near(m.cut(0).area().abs(), row["mitred_area"].as_f64().unwrap(), 1e-3);
        near(length(&m.cut(0)), row["mitred_perimeter"].as_f64().unwrap(), 1e-6);
        assert_eq!(m.loud(), Vec::<String>::new());
    }
}

#[test]
fn each_edge_with_its_own_width() {
    for row in rows("math.unequal_allowances") {
        let corners = pairs(&row["vertices"]);
        let widths: Vec<f64> =
            row["allowance_per_edge_starting_v0v1"].as_array().unwrap().iter().map(|w| w.as_f64().unwrap()).collect();
        let n = corners.len();
        let cut = made(&format!("pieces: [{}]", polygon("p", &corners, &widths, &plain_corners(n)))).cut(0);
        for (x, y) in pairs(&row["cut_vertices"]) {
            has(&cut, x, y);
        }
        near(cut.area().abs(), row["cut_area"].as_f64().unwrap(), 1e-6);
        near(length(&cut), row["cut_perimeter"].as_f64().unwrap(), 1e-6);
    }
}

#[test]
fn an_oval_grows_as_published() {
    for row in rows("math.offset_ellipse").iter().filter(|r| r["offset"].as_f64().unwrap() > 0.0) {
        let get = |key: &str| row[key].as_f64().unwrap();
        let (a, b, width) = (get("a"), get("b"), get("offset"));
        // Cubics through many places of the ellipse with its own tangents.
        const N: usize = 64;
        let place = |t: f64| (a * t.cos(), b * t.sin());
        let step = TAU / N as f64;
        let handle = step / 3.0;
        let (mut points, mut segments) = (String::new(), String::new());
        for i in 0..N {
            let (t, u) = (i as f64 * step, (i as f64 + 1.0) * step);
            let ((x, y), (x1, y1)) = (place(t), place(u));
            points += &format!("(name: \"p{i}\", at: \"({x:.12} mm, {y:.12} mm)\"), ");
            let (hx, hy) = (x - a * t.sin() * handle, y + b * t.cos() * handle);
            let (gx, gy) = (x1 + a * u.sin() * handle, y1 - b * u.cos() * handle);
            segments += &format!(
                "curve(\"({hx:.12} mm, {hy:.12} mm)\", \"({gx:.12} mm, {gy:.12} mm)\", \"p{}\"), ",
                (i + 1) % N
            );
        }
        let m = made(&format!(
            "pieces: [(name: \"oval\", points: [{points}], edges: [(name: \"round\", from: \"p0\", by: [{segments}])],
            allowances: [(edge: \"round\", width: \"{width} mm\")])]"
        ));
        near(m.cut(0).area().abs(), get("offset_area"), 0.5);
        near(length(&m.cut(0)), get("offset_perimeter"), 0.01);
    }
}

#[test]
fn mouths_of_darts_have_their_published_peaks() {
    let table = rows("draft.darts");
    assert!(table.len() >= 5);
    for row in table {
        let get = |key: &str| row[key].as_f64().unwrap();
        let (intake, deep) = (get("intake"), get("length"));
        for (pressed, allowance) in [("to_start", 0.0), ("to_end", 0.0), ("to_start", 1.5), ("to_end", 1.5)] {
            let m = made(&format!(
                "pieces: [(name: \"p\", points: [(name: \"a\", at: \"(0 cm, 0 cm)\"), (name: \"b\", at: \"(60 cm, 0 cm)\"), (name: \"c\", at: \"(60 cm, 40 cm)\"), (name: \"d\", at: \"(0 cm, 40 cm)\")],
                edges: [(name: \"waist\", from: \"a\", by: [straight(\"b\")]), (name: \"side\", from: \"b\", by: [straight(\"c\")]), (name: \"hem\", from: \"c\", by: [straight(\"d\")]), (name: \"front\", from: \"d\", by: [straight(\"a\")])],
                darts: [(name: \"dart\", on: \"waist\", centre: \"30 cm\", intake: \"{intake} cm\", tip: \"{deep} cm\", pressed: {pressed})],
                allowances: [(edge: \"waist\", width: \"{allowance} cm\"), (edge: \"side\", width: \"0 cm\"), (edge: \"hem\", width: \"0 cm\"), (edge: \"front\", width: \"0 cm\")])]"
            ));
            assert_eq!(m.loud(), Vec::<String>::new());
            let peak = get("cap_peak_above_open_seam") * 10.0;
            has(&m.piece(0).stitch, 300.0, -peak);
            has(&m.piece(0).stitch, 300.0 - intake * 5.0, 0.0);
            has(&m.piece(0).stitch, 300.0 + intake * 5.0, 0.0);
            // The cut line is shaped by itself: the same triangle on the legs' prolongation.
            let (h, l) = (intake * 5.0, deep * 10.0 + allowance * 10.0);
            let h = h * l / (deep * 10.0);
            has(&m.cut(0), 300.0, deep * 10.0 - l * (l * l + h * h) / (l * l - h * h));
        }
    }
}

#[test]
fn the_largest_dart_of_the_rules() {
    // Straight edge, 30 mm wide, 100 mm long: legs 101.12, peak 4.60 mm.
    let (h, l) = (15.0f64, 100.0f64);
    near(h.hypot(l), 101.12, 0.005);
    near(l * (l * l + h * h) / (l * l - h * h) - l, 4.60, 0.005);
}

/// Two pieces at a seam that runs down at x = 0 to (0, 300); the lower edges leave it at these inside angles.
fn at_a_seam(left: f64, right: f64, pressed: &str, width: f64) -> Made {
    let way = |deg: f64, sign: f64| {
        let turn = (90.0 - deg).to_radians();
        (-sign * 200.0 * turn.cos(), 300.0 - 200.0 * turn.sin())
    };
    let (a, b) = (way(left, 1.0), way(right, -1.0));
    let one = polygon("one", &[(0.0, 0.0), (0.0, 300.0), a, (-200.0, 0.0)], &[width; 4], "");
    let two = polygon("two", &[(0.0, 0.0), (0.0, 300.0), b, (200.0, 0.0)], &[width; 4], "");
    made(&format!(
        "pieces: [{one}, {two}], seams: [(name: \"side\", one: [\"one.e0\"], two: [\"two.e0\"], order: \"1\", pressed: {pressed})],
        joints: [(name: \"j\", corners: [\"one.p1\", \"two.p1\"], meant: \"corner\"), (name: \"k\", corners: [\"one.p0\", \"two.p0\"], meant: \"corner\")]"
    ))
}

/// How far below the seam's end the line lies at so much to the right.
fn corner_at(path: &BezPath, x: f64) -> f64 {
    let found = vertices(path).into_iter().filter(|v| (v.x - x).abs() < 1e-6).map(|v| v.y);
    found.fold(f64::NEG_INFINITY, f64::max)
}

#[test]
fn corners_by_order_of_sewing_have_their_closed_forms() {
    // 75° and 105°, 15 mm: a plain extension stands out, or falls short, by 2 w tan 15° = 8.04 mm.
    let step = 2.0 * 15.0 * (15.0f64).to_radians().tan();
    near(step, 8.04, 0.005);
    let (cos, tan) = ((15.0f64).to_radians().cos(), (15.0f64).to_radians().tan());
    let foot = 300.0 + 15.0 / cos;
    let (up, down) = (foot - 15.0 * tan, foot + 15.0 * tan);
    // A plain extension of the 75° piece ends at `down`, of the 105° piece at `up`; pressed open both are mirrored.
    let open = at_a_seam(75.0, 105.0, "open", 15.0);
    near(corner_at(&open.cut(0), 15.0), up, 1e-6);
    near(corner_at(&open.cut(1), -15.0), down, 1e-6);
    near(down - up, step, 1e-9);
    // Pressed to the 105° side, the allowance of the 75° piece ends on its line as laid together: its own extension.
    let to_two = at_a_seam(75.0, 105.0, "to_two", 15.0);
    near(corner_at(&to_two.cut(0), 15.0), down, 1e-6);
    near(corner_at(&to_two.cut(1), -15.0), down, 1e-6);
    let to_one = at_a_seam(75.0, 105.0, "to_one", 15.0);
    near(corner_at(&to_one.cut(0), 15.0), up, 1e-6);
    near(corner_at(&to_one.cut(1), -15.0), up, 1e-6);
    // At right angles nothing differs.
    for pressed in ["open", "to_one", "to_two"] {
        let m = at_a_seam(90.0, 90.0, pressed, 12.0);
        has(&m.cut(0), 12.0, 312.0);
        has(&m.cut(1), -12.0, 312.0);
        assert_eq!(m.loud(), Vec::<String>::new());
    }
}

/// An edge that is sewn three times counts as sewn when it is sewn first, wherever that seam stands in the draft.
#[test]
fn of_several_seams_of_an_edge_the_earliest_makes_its_corner() {
    let (cos, tan) = ((15.0f64).to_radians().cos(), (15.0f64).to_radians().tan());
    let way = (15.0f64).to_radians();
    let one = polygon(
        "one",
        &[(0.0, 0.0), (0.0, 300.0), (-200.0 * way.cos(), 300.0 - 200.0 * way.sin()), (-200.0, 0.0)],
        &[15.0; 4],
        "",
    );
    let long = |name: &str| polygon(name, &[(0.0, 0.0), (0.0, 300.0), (200.0, 300.0), (200.0, 0.0)], &[15.0; 4], "");
    let band = polygon("band", &[(0.0, 0.0), (0.0, 200.0), (50.0, 200.0), (50.0, 0.0)], &[15.0; 4], "");
    let seam = |name: &str, edge: &str, other: &str, order: u32| {
        format!("(name: \"{name}\", one: [\"one.{edge}\"], two: [\"{other}.e0\"], order: \"{order}\", pressed: open), ")
    };
    let (first, last) = (seam("side", "e0", "two", 1), seam("again", "e0", "lining", 3));
    let hem = seam("hem", "e1", "band", 2);
    for seams in [[&first, &hem, &last], [&last, &hem, &first]] {
        let m = made(&format!(
            "pieces: [{one}, {}, {}, {band}], seams: [{}{}{}]",
            long("two"),
            long("lining"),
            seams[0],
            seams[1],
            seams[2]
        ));
        // As at a seam that is pressed open: the later line mirrored in it.
        near(corner_at(&m.cut(0), 15.0), 300.0 + 15.0 / cos - 15.0 * tan, 1e-6);
    }
}

/// A slot of 20 mm between allowances of 5 mm, and a tooth in it whose own cut line just reaches the other side: touching is no crossing.
#[test]
fn cut_lines_that_touch_do_not_cross() {
    let trimmed = |over: f64, back: bool| {
        let high = 15.0 - 5.0 * 2f64.sqrt() + over;
        let mut outline = vec![
            (0.0, 0.0),
            (100.0, 0.0),
            (100.0, 40.0),
            (20.0, 40.0),
            (20.0, 60.0),
            (60.0 - high, 60.0),
            (60.0, 60.0 - high),
            (60.0 + high, 60.0),
            (100.0, 60.0),
            (100.0, 100.0),
            (0.0, 100.0),
        ];
        if back {
            outline.reverse();
        }
        let p = polygon("p", &outline, &[5.0; 11], "");
        made(&format!("pieces: [{p}]")).piece(0).cuts[0].trimmed.is_some()
    };
    for back in [false, true] {
        assert_eq!([-0.5, 0.0, 0.5].map(|over| trimmed(over, back)), [false, false, true], "{back}");
    }
}

#[test]
fn allowances_that_step_and_run() {
    let stepped =
        polygon("p", &[(0.0, 0.0), (0.0, 100.0), (-80.0, 100.0), (-80.0, 0.0)], &[10.0, 10.0, 10.0, 10.0], "").replace(
            "(edge: \"e0\", width: \"10 mm\")",
            "(edge: \"e0\", width: \"10 mm\"), (edge: \"e0\", width: \"25 mm\", from: \"60 mm\")",
        );
    let cut = made(&format!("pieces: [{stepped}]")).cut(0);
    // A clean square step.
    for (x, y) in [(10.0, -10.0), (10.0, 60.0), (25.0, 60.0), (25.0, 110.0)] {
        has(&cut, x, y);
    }
    let running = polygon("p", &[(0.0, 0.0), (0.0, 100.0), (-80.0, 100.0), (-80.0, 0.0)], &[10.0; 4], "")
        .replace("(edge: \"e0\", width: \"10 mm\")", "(edge: \"e0\", width: \"10 mm\", to_width: \"0 mm\")");
    let cut = made(&format!("pieces: [{running}]")).cut(0);
    // From 10 mm at the top to nothing at the bottom.
    let on = |x: f64, y: f64| {
        cut.segments()
            .map(|s| kurbo::ParamCurveNearest::nearest(&s, Point::new(x, y), 1e-9).distance_sq.sqrt())
            .fold(f64::INFINITY, f64::min)
    };
    near(on(5.0, 50.0), 0.0, 1e-6);
    near(on(2.0, 80.0), 0.0, 1e-6);
    // Resizing never scales an allowance; none lies on a fold.
    let folded = polygon(
        "p",
        &[(0.0, 0.0), (0.0, 100.0), (-80.0, 100.0), (-80.0, 0.0)],
        &[10.0; 4],
        "cuts: [(material: \"m\", on_fold: \"e0\", grain: (heading: \"90 deg\"))]",
    );
    let cut = made(&format!("materials: [(name: \"m\")], pieces: [{folded}]")).cut(0);
    for (x, y) in [(0.0, -10.0), (0.0, 110.0), (-90.0, -10.0), (-90.0, 110.0)] {
        has(&cut, x, y);
    }
}

#[test]
fn hems_turn_once_and_twice() {
    // A side that leaves the hem at a slope of 1 : 5.
    let body = |turns: &str| {
        let p = polygon("p", &[(0.0, 0.0), (40.0, 200.0), (-80.0, 200.0), (-80.0, 0.0)], &[0.0, 0.0, 0.0, 0.0], "")
            .replace("(edge: \"e1\", width: \"0 mm\")", &format!("(edge: \"e1\", width: \"30 mm\", {turns})"));
        made(&format!("pieces: [{p}]"))
    };
    let once = body("turns: 1");
    has(&once.cut(0), 34.0, 230.0);
    has(&once.cut(0), -80.0, 230.0);
    assert_eq!(once.loud(), Vec::<String>::new());
    let twice = body("turns: 2, turn_in: \"10 mm\"");
    has(&twice.cut(0), 34.0, 230.0);
    has(&twice.cut(0), 36.0, 240.0);
    has(&twice.cut(0), -80.0, 240.0);
    let as_deep = body("turns: 2");
    has(&as_deep.cut(0), 40.0, 260.0);
}

#[test]
fn enclosed_corners_mitred_and_cut_across() {
    let square = |form: &str| {
        let p = polygon(
            "p",
            &[(0.0, 0.0), (0.0, 100.0), (-100.0, 100.0), (-100.0, 0.0)],
            &[20.0; 4],
            &format!("corners: [(at: \"p1\", {form})]"),
        );
        made(&format!("pieces: [{p}]")).cut(0)
    };
    // Both turned lines meet at (-20, 80); unfolded over each edge the mitre leaves the cut lines there.
    let mitred = square("form: mitred");
    has(&mitred, 20.0, 80.0);
    has(&mitred, 0.0, 100.0);
    has(&mitred, -20.0, 120.0);
    // With 5 mm beyond it the whole leg is moved out.
    let beyond = square("form: mitred, width: \"5 mm\"");
    let off = 5.0 / (PI / 4.0).cos();
    has(&beyond, 20.0, 80.0 + off);
    has(&beyond, -20.0 + off, 120.0);
    let across = square("form: across, width: \"10 mm\"");
    let reach = 10.0 * 2f64.sqrt();
    has(&across, 20.0, 100.0 + reach - 20.0);
    has(&across, reach - 20.0, 120.0);
}

/// The same corner with its outline drawn either way round; what is cut off leaves nothing standing out.
#[test]
fn an_enclosed_corner_is_the_same_whichever_way_it_is_drawn() {
    let forth = [(0.0, 0.0), (0.0, 100.0), (-100.0, 100.0), (-100.0, 0.0)];
    let back = [(-100.0, 0.0), (-100.0, 100.0), (0.0, 100.0), (0.0, 0.0)];
    for (vertices, corner) in [(forth, "p1"), (back, "p2")] {
        let cut = |form: &str| {
            let p = polygon("p", &vertices, &[20.0; 4], &format!("corners: [(at: \"{corner}\", {form})]"));
            made(&format!("pieces: [{p}]")).cut(0)
        };
        let root = 2f64.sqrt();
        // Cut off an outline of 140 mm: an isosceles right angle from the corner at (20, 120). A mitre runs straight through (0, 100).
        for (form, leg) in [
            ("form: mitred", 40.0),
            ("form: mitred, width: \"5 mm\"", 40.0 - 5.0 * root),
            ("form: across, width: \"10 mm\"", 40.0 - 10.0 * root),
        ] {
            let cut = cut(form);
            has(&cut, 20.0, 120.0 - leg);
            has(&cut, 20.0 - leg, 120.0);
            near(length(&cut), 4.0 * 140.0 - 2.0 * leg + leg * root, 1e-6);
            near(cut.area().abs(), 140.0 * 140.0 - leg * leg / 2.0, 1e-6);
        }
    }
}

#[test]
fn a_sharp_point_is_cut_square_at_one_and_a_half_allowances() {
    let (half, width) = ((15.0f64).to_radians(), 10.0);
    let far = 200.0;
    let p = polygon("p", &[(0.0, 0.0), (-far, far * half.tan()), (-far, -far * half.tan())], &[width; 3], "");
    let m = made(&format!("pieces: [{p}]"));
    // Both corners of the square end lie 15 mm beyond the point, on the cut lines.
    let y = width / half.cos() - 15.0 * half.tan();
    has(&m.cut(0), 15.0, y);
    has(&m.cut(0), 15.0, -y);
    assert_eq!(m.loud(), Vec::<String>::new());
}

#[test]
fn cloth_that_shrinks_is_cut_larger_and_its_allowances_stay() {
    let p = polygon(
        "p",
        &[(0.0, 0.0), (0.0, 200.0), (-100.0, 200.0), (-100.0, 0.0)],
        &[10.0; 4],
        "cuts: [(material: \"m\", count: 2, grain: (heading: \"90 deg\"))]",
    );
    let m = made(&format!(
        "materials: [(name: \"m\", shrinkage_along: \"4 %\", shrinkage_across: \"2 %\")], pieces: [{p}]"
    ));
    let (along, across) = (200.0 / 0.96, 100.0 / 0.98);
    for (x, y) in [(10.0, -10.0), (10.0, along + 10.0), (-across - 10.0, along + 10.0)] {
        has(&m.cut(0), x, y);
    }
    // What is sewn is as long as ever.
    near(length(&m.piece(0).stitch), 600.0, 1e-6);
}

#[test]
fn a_tight_curve_is_trimmed_and_told() {
    // A slot narrower than two allowances.
    let slot = [
        (0.0, 0.0),
        (0.0, 100.0),
        (-45.0, 100.0),
        (-45.0, 30.0),
        (-55.0, 30.0),
        (-55.0, 100.0),
        (-100.0, 100.0),
        (-100.0, 0.0),
    ];
    let m = made(&format!("pieces: [{}]", polygon("p", &slot, &[10.0; 8], "")));
    let loud = m.loud();
    assert!(loud.len() == 1 && loud[0].contains("would cross itself"), "{loud:?}");
    // The slot is closed, all else is there.
    near(m.cut(0).area().abs(), 120.0 * 120.0, 1.0);
}

#[test]
fn a_leg_is_cut_out_or_slashed() {
    let dart = |form: &str| {
        let p = polygon(
            "p",
            &[(0.0, 0.0), (200.0, 0.0), (200.0, 200.0), (0.0, 200.0)],
            &[0.0; 4],
            &format!(
                "darts: [(name: \"dart\", on: \"e0\", centre: \"100 mm\", intake: \"60 mm\", tip: \"90 mm\", form: {form}, allowance: \"10 mm\")]"
            ),
        );
        made(&format!("pieces: [{p}]"))
    };
    let out = dart("cut_out").cut(0);
    // Each leg moved into the mouth by 10 mm: they meet above the tip by 10 / sin(half angle).
    let half = (30.0f64).atan2(90.0);
    has(&out, 100.0, 90.0 - 10.0 / half.sin());
    has(&out, 70.0 + 10.0 / half.cos(), 0.0);
    // Slashed, each half is turned back over its own side: the same triangle as folded, on a straight edge.
    let slashed = dart("slashed").cut(0);
    let peak = 90.0 * (90.0f64.powi(2) + 900.0) / (90.0f64.powi(2) - 900.0) - 90.0;
    has(&slashed, 100.0, -peak);
}

type V = (f64, f64);

fn mirrored(p: V, at: V, way: V) -> V {
    let square = way.0 * way.0 + way.1 * way.1;
    let along = ((p.0 - at.0) * way.0 + (p.1 - at.1) * way.1) / square;
    let foot = (at.0 + way.0 * along, at.1 + way.1 * along);
    (2.0 * foot.0 - p.0, 2.0 * foot.1 - p.1)
}

fn meet(p: V, u: V, q: V, w: V) -> V {
    let turn = u.0 * w.1 - u.1 * w.0;
    let t = ((q.0 - p.0) * w.1 - (q.1 - p.1) * w.0) / turn;
    (p.0 + u.0 * t, p.1 + u.1 * t)
}

/// A slanted dart: its mouth depends on the side to which it is pressed. Worked out with mirrored points and straight lines only.
#[test]
fn the_mouth_of_a_slanted_dart_depends_on_where_it_is_pressed() {
    let (a, b, tip): (V, V, V) = ((85.0, 0.0), (115.0, 0.0), (106.0, 100.0));
    let leg = (tip.0 - a.0).hypot(tip.1 - a.1);
    let other = (tip.0 - b.0).hypot(tip.1 - b.1);
    // The second leg swings until it is as long as the first.
    let b = (tip.0 + (b.0 - tip.0) * leg / other, tip.1 + (b.1 - tip.1) * leg / other);
    let (to_a, to_b) = ((a.0 - tip.0, a.1 - tip.1), (b.0 - tip.0, b.1 - tip.1));
    let middle = (to_a.0 + to_b.0, to_a.1 + to_b.1);
    let dart = |pressed: &str| {
        let p = polygon(
            "p",
            &[(0.0, 0.0), (200.0, 0.0), (200.0, 200.0), (0.0, 200.0)],
            &[0.0; 4],
            &format!(
                "darts: [(name: \"dart\", on: \"e0\", centre: \"100 mm\", intake: \"30 mm\", tip: \"(106 mm, 100 mm)\", pressed: {pressed})]"
            ),
        );
        made(&format!("settings: (seam_limit: \"9 mm\"), pieces: [{p}]")).piece(0).stitch.clone()
    };
    // Pressed to the start: the edge left of it, mirrored in its first leg, up to the middle; then that mirrored in the middle.
    let left = mirrored((0.0, 0.0), a, to_a);
    let peak = meet(a, (left.0 - a.0, left.1 - a.1), tip, middle);
    let to_start = dart("to_start");
    has(&to_start, peak.0, peak.1);
    has(&to_start, b.0, b.1);
    // Pressed to the end: the edge right of it, from where it crosses the swung leg.
    let corner = meet((200.0, 0.0), (1.0, 0.0), b, to_b);
    let right = mirrored((200.0, 0.0), b, to_b);
    let other_peak = meet(corner, (right.0 - corner.0, right.1 - corner.1), tip, middle);
    let to_end = dart("to_end");
    has(&to_end, other_peak.0, other_peak.1);
    assert!((peak.0 - other_peak.0).hypot(peak.1 - other_peak.1) > 0.5);
}

#[test]
fn hems_and_notches_that_cannot_be_are_told() {
    let told = |allowance: &str, strokes: u32| {
        let piece = polygon("front", &[(0.0, 0.0), (200.0, 0.0), (200.0, 300.0), (0.0, 300.0)], &[], "")
            .replace("allowances: []", &format!("allowances: [(edge: \"e2\", width: \"30 mm\", {allowance})]"));
        let seam = format!(
            "(name: \"s\", one: [\"front.e1\"], two: [\"reversed(front.e3)\"], notches: [(name: \"n\", at: \"1/3\", strokes: {strokes})])"
        );
        made(&format!("settings: (allowance: \"10 mm\"), pieces: [{piece}], seams: [{seam}]")).loud().join("\n")
    };
    assert_eq!(told("turns: 2, turn_in: \"10 mm\"", 3), "");
    assert!(told("turns: 2, turn_in: \"50 mm\"", 3).contains("the second turn of front.e2 is deeper than its hem"));
    assert!(told("turns: 2, turn_in: \"-5 mm\"", 3).contains("front.e2, second turn"));
    assert!(told("turns: 1, turn_in: \"10 mm\"", 3).contains("which is for hems with `turns: 2`"));
    assert!(told("turns: 3", 3).contains("has 3 turns"));
    assert!(told("turns: 1", 70).contains("notch n has 70 strokes"));
}
