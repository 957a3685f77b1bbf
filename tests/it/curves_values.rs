//! Curves against values that others computed: `tests/outside/math-values.json`, `cubic_lengths.json`, `splines.json`; each
//! file names its sources.

use serde_json::Value;
use std::f64::consts::TAU;
use tracewheel::curves::{Curve, CurveError, Pt, Segment, spline};

pub fn outside(file: &str) -> Value {
    let path = format!("{}/tests/outside/{file}", env!("CARGO_MANIFEST_DIR"));
    serde_json::from_str(&std::fs::read_to_string(path).unwrap()).unwrap()
}

pub fn rows(table: &str) -> Vec<Value> {
    let rows = outside("math-values.json")["tables"][table]["rows"].as_array().unwrap().clone();
    assert!(!rows.is_empty());
    rows
}

pub fn pt(v: &Value) -> Pt<f64> {
    Pt::new(v[0].as_f64().unwrap(), v[1].as_f64().unwrap())
}

pub fn cubic(v: &Value) -> Curve<f64> {
    Curve::new(vec![Segment::Cubic(std::array::from_fn(|i| pt(&v[i])))]).unwrap()
}

#[track_caller]
pub fn near(got: f64, want: f64, tolerance: f64, what: &str) {
    assert!((got - want).abs() <= tolerance, "{what}: {got}, should be {want} (off by {:e})", got - want);
}

#[track_caller]
pub fn near_point(got: Pt<f64>, want: Pt<f64>, tolerance: f64, what: &str) {
    assert!((got - want).length() <= tolerance, "{what}: {got:?}, should be {want:?}");
}

#[test]
fn arcs_of_circles() {
    for row in rows("math.circle_arcs") {
        let n = |key: &str| row[key].as_f64().unwrap();
        let (r, angle) = (n("radius"), n("angle_deg").to_radians());
        let centre = Pt::new(31.0, -17.0);
        for (clockwise, sense) in [(true, 1.0), (false, -1.0)] {
            let from = centre + Pt::heading(0.4).scaled(r);
            let to = centre + Pt::heading(0.4 + sense * angle).scaled(r);
            let arc = Segment::arc(from, to, centre, clockwise).unwrap();
            let curve = Curve::new(vec![arc]).unwrap();
            near(curve.length(), n("arc_length"), 1e-11, "length");
            near((to - from).length(), n("chord"), 1e-11, "chord");
            let middle = curve.point_at(curve.length() / 2.0).unwrap();
            near_point(middle, centre + Pt::heading(0.4 + sense * angle / 2.0).scaled(r), 1e-11, "middle");
            // At the middle of a full turn the chord is a mere point.
            let halfway = from.towards(to, 0.5);
            near((middle - halfway).length(), n("sagitta"), 1e-11, "sagitta");
            let sector =
                curve.area_under() + Segment::Line(to, centre).area_under() + Segment::Line(centre, from).area_under();
            near(sector, sense * n("sector_area"), 1e-9, "sector");
            let whole = Curve::new(vec![Segment::arc(from, from, centre, clockwise).unwrap()]).unwrap();
            near(whole.length(), TAU * r, 1e-11, "full turn");
            let box_ = whole.bounds();
            near(box_.width(), 2.0 * r, 1e-11, "width of the circle");
            near(box_.y0, centre.y - r, 1e-11, "top of the circle");
            // Drawn within 1e-4 mm.
            let drawn = curve.to_path();
            let mut worst: f64 = 0.0;
            for piece in drawn.segments() {
                for k in 0..=50 {
                    let p = kurbo::ParamCurve::eval(&piece, f64::from(k) / 50.0);
                    worst = worst.max((p.distance(centre.value()) - r).abs());
                }
            }
            assert!(worst <= 1e-4, "radius {r}: drawn {worst} beside it");
            let end = drawn.elements().last().unwrap().end_point().unwrap();
            near_point(Pt::new(end.x, end.y), to, 0.0, "end of the drawing");
        }
    }
}

#[test]
fn bezier_curves() {
    for row in rows("math.beziers") {
        let name = row["name"].as_str().unwrap();
        let curve = cubic(&row["control_points"]);
        let n = |key: &str| row[key].as_f64().unwrap();
        near(curve.length(), n("length"), 1e-9, name);
        near_point(curve.segments()[0].point(0.5), pt(&row["point_t_0_5"]), 1e-12, name);
        near_point(curve.segments()[0].point(n("half_length_t")), pt(&row["half_length_point"]), 1e-12, name);
        near_point(curve.point_at(curve.length() / 2.0).unwrap(), pt(&row["half_length_point"]), 1e-9, name);
        let closing = Segment::Line(curve.end(), curve.start());
        near(curve.area_under() + closing.area_under(), n("area_to_chord_signed"), 1e-10, name);
        let b = curve.bounds();
        for (i, got) in [b.x0, b.y0, b.x1, b.y1].into_iter().enumerate() {
            near(got, row["bbox"][i].as_f64().unwrap(), 1e-12, name);
        }
    }
}

#[test]
fn cusps_zero_handles_and_turns() {
    for row in outside("cubic_lengths.json")["curves"].as_array().unwrap() {
        let name = row["name"].as_str().unwrap();
        let curve = cubic(&row["points"]);
        near(curve.length(), row["length"].as_f64().unwrap(), 1e-9, name);
        near_point(curve.point_at(curve.length() / 3.0).unwrap(), pt(&row["third"]), 2e-9, name);
    }
}

#[test]
fn circles_of_cubics() {
    for row in rows("math.circle_by_beziers") {
        let count = row["segments"].as_u64().unwrap() as u32;
        let kappa = row["kappa"].as_f64().unwrap();
        let r = 120.0;
        let at = |k: u32| {
            let out = Pt::heading(TAU * f64::from(k) / f64::from(count));
            (out.scaled(r), out.square().scaled(r * kappa))
        };
        let segments = (0..count).map(|k| {
            let ((a, va), (b, vb)) = (at(k), at(k + 1));
            Segment::Cubic([a, a + va, b - vb, b])
        });
        let circle = Curve::new(segments.collect()).unwrap();
        near(circle.length(), r * row["total_length_unit_circle"].as_f64().unwrap(), 1e-9, "length");
        near(
            circle.area_under(),
            r * r * row["total_area_unit_circle"].as_f64().unwrap(),
            1e-8,
            "area, clockwise positive",
        );
        near(circle.reversed().area_under(), -circle.area_under(), 1e-8, "area the other way");
        // The largest distance from the centre is found on both sides of it.
        let farthest = circle.segments()[0].point(row["max_at_t"].as_f64().unwrap()).length();
        near(farthest / r - 1.0, row["max_radial_error"].as_f64().unwrap(), 1e-12, "radial error");
    }
}

#[test]
fn polygons() {
    for row in rows("math.polygons") {
        let corners: Vec<Pt<f64>> = row["vertices"].as_array().unwrap().iter().map(pt).collect();
        let sides = (0..corners.len()).map(|i| Segment::Line(corners[i], corners[(i + 1) % corners.len()]));
        let ring = Curve::new(sides.collect()).unwrap();
        near(ring.length(), row["perimeter"].as_f64().unwrap(), 1e-10, "perimeter");
        near(ring.area_under(), row["signed_area"].as_f64().unwrap(), 1e-8, "area");
    }
}

/// The quarter ellipse from (a, 0) to (0, b), clockwise as seen, as a spline through `count` + 1 of its points.
pub fn quarter_ellipse(a: f64, b: f64, count: u32) -> Curve<f64> {
    let quarter = TAU / 4.0;
    let points: Vec<Pt<f64>> = (0..=count)
        .map(|k| Pt::heading(quarter * f64::from(k) / f64::from(count)))
        .map(|p| Pt::new(a * p.x, b * p.y))
        .collect();
    Curve::new(spline(&points, Some(quarter), Some(2.0 * quarter)).unwrap()).unwrap()
}

#[test]
fn splines_come_near_ellipses() {
    for row in rows("math.ellipses") {
        let n = |key: &str| row[key].as_f64().unwrap();
        let quarter = quarter_ellipse(n("a"), n("b"), 1000);
        near(quarter.length(), n("quarter_arc"), 1e-7, "quarter of the perimeter");
        near(quarter.area_under(), n("area") / 4.0, 1e-7 * n("area"), "quarter of the area");
    }
}

#[test]
fn splines_are_scipys() {
    for case in outside("splines.json")["cases"].as_array().unwrap() {
        let points: Vec<Pt<f64>> = case["points"].as_array().unwrap().iter().map(pt).collect();
        let segments = spline(&points, case["leaving"].as_f64(), case["arriving"].as_f64()).unwrap();
        let what = format!("{} points, {} {}", points.len(), case["leaving"], case["arriving"]);
        assert_eq!(segments.len(), case["beziers"].as_array().unwrap().len());
        for (segment, want) in segments.iter().zip(case["beziers"].as_array().unwrap()) {
            let Segment::Cubic(c) = segment else { panic!("not a cubic") };
            for (i, p) in c.iter().enumerate() {
                near_point(*p, pt(&want[i]), 1e-10, &what);
            }
        }
        near(Curve::new(segments).unwrap().length(), case["length"].as_f64().unwrap(), 1e-8, &what);
    }
}

#[test]
fn bad_data_is_named() {
    let p = |x: f64, y: f64| Pt::new(x, y);
    assert_eq!(spline(&[p(0.0, 0.0)], None, None), Err(CurveError::TooFewPoints));
    let twice = [p(0.0, 0.0), p(5.0, 0.0), p(5.0, 1e-7), p(9.0, 0.0)];
    assert_eq!(spline(&twice, None, None), Err(CurveError::PointsCoincide { point: 2 }));
    let lost = [p(0.0, 0.0), p(5.0, f64::NAN)];
    assert_eq!(spline(&lost, None, None), Err(CurveError::NotFinite { segment: 0 }));
    assert_eq!(spline(&twice[..2], Some(f64::INFINITY), None), Err(CurveError::NotFinite { segment: 0 }));
    assert_eq!(Curve::<f64>::new(vec![]), Err(CurveError::Empty));
    let gap = vec![Segment::Line(p(0.0, 0.0), p(1.0, 0.0)), Segment::Line(p(1.5, 0.0), p(2.0, 0.0))];
    assert_eq!(Curve::new(gap), Err(CurveError::Gap { segment: 1, gap: 0.5 }));
    let lost = Curve::straight(p(0.0, 0.0), p(f64::INFINITY, 0.0));
    assert_eq!(lost, Err(CurveError::NotFinite { segment: 0 }));
    let huge = Curve::straight(p(-1e308, 0.0), p(1e308, 0.0));
    assert_eq!(huge, Err(CurveError::NotFinite { segment: 0 }), "the length overflows");
    let arc = |x: f64| Segment::arc(p(10.0, 0.0), p(x, 0.0), p(0.0, 0.0), true);
    assert!(arc(-10.009).is_ok());
    let Err(CurveError::RadiiDiffer { difference }) = arc(-10.5) else { panic!() };
    near(difference, 0.5, 1e-12, "difference of the radii");
    assert_eq!(arc(0.0), Err(CurveError::NoRadius));
}

#[test]
fn arcs_with_unequal_radii_keep_both_ends() {
    let (from, to, centre) = (Pt::new(10.0, 0.0), Pt::new(0.0, 10.009), Pt::new(0.0, 0.0));
    let curve = Curve::new(vec![Segment::arc(from, to, centre, true).unwrap()]).unwrap();
    near_point(curve.point_at(0.0).unwrap(), from, 1e-12, "start");
    near_point(curve.point_at(curve.length()).unwrap(), to, 1e-12, "end");
    for s in [0.1, 3.0, 7.5, 15.0] {
        let (a, b) = (curve.between(0.0, s).unwrap(), curve.between(s, curve.length()).unwrap());
        near(a.length(), s, 1e-12, "first part");
        near(a.length() + b.length(), curve.length(), 1e-12, "both parts");
        near_point(a.end(), curve.point_at(s).unwrap(), 1e-12, "where they meet");
    }
}
