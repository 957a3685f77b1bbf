//! Parallel curves: lengths against computed values, drawings against the distance.

use crate::curves_places::curve;
use crate::curves_values::{cubic, near, outside, pt, quarter_ellipse, rows};
use kurbo::ParamCurve;
use proptest::prelude::*;
use tracewheel::curves::{Curve, Pt, Segment};

fn drawn_length(path: &kurbo::BezPath) -> f64 {
    path.segments().map(|s| kurbo::ParamCurveArclen::arclen(&s, 1e-9)).sum()
}

#[test]
fn open_curves() {
    let beziers = rows("math.beziers");
    for row in rows("math.offset_open_curves") {
        let name = row["curve"].as_str().unwrap();
        let base = beziers.iter().find(|b| b["name"].as_str().unwrap().starts_with(name.trim_end_matches("-curve")));
        let base = base.or_else(|| beziers.iter().find(|b| b["name"].as_str().unwrap().contains("S-curve")));
        let c = cubic(&base.unwrap()["control_points"]);
        near(c.length(), row["length"].as_f64().unwrap(), 1e-9, name);
        let d = row["offset"].as_f64().unwrap();
        // The table has y up, where its left is the right-hand side here: it names the sides the other way round.
        let (left, right) = (row["left_offset_length"].as_f64().unwrap(), row["right_offset_length"].as_f64().unwrap());
        let mut sides = [c.set_off_length(d, d), c.set_off_length(-d, -d)];
        near(sides[0], left, 1e-9, name);
        near(sides[1], right, 1e-9, name);
        for (length, distance) in sides.iter_mut().zip([d, -d]) {
            let drawn = c.set_off(distance);
            assert!(!drawn.folds, "{name}");
            near(drawn_length(&drawn.path), *length, 2e-3, name);
            near(c.parallel(distance, distance).unwrap().length(), *length, 5e-6, name);
        }
        let radius = row["min_radius_of_curvature"].as_f64().unwrap();
        let inside = if left < right { 1.0 } else { -1.0 };
        // The radius of the table is too large by up to 3e-3 mm: it was sampled (scipy's minimize_scalar gives 652.54672 for its 652.54958).
        assert!(!c.set_off(inside * (radius - 4e-3)).folds, "{name}");
        assert!(c.set_off(inside * (radius + 1e-6)).folds, "{name}");
        assert!(c.parallel(inside * (radius - 4e-3), inside * (radius - 4e-3)).is_ok(), "{name}");
        assert!(c.parallel(inside * (radius + 1.0), inside * (radius + 1.0)).is_err(), "{name}");
        assert!(!c.set_off(-inside * (radius + 1e-3)).folds || name.contains('S'), "{name}");
    }
}

#[test]
fn ellipses() {
    for row in rows("math.offset_ellipse") {
        let n = |key: &str| row[key].as_f64().unwrap();
        let quarter = quarter_ellipse(n("a"), n("b"), 1000);
        // Clockwise as seen the outside is on the left.
        near(quarter.set_off_length(-n("offset"), -n("offset")) * 4.0, n("offset_perimeter"), 1e-6, "perimeter");
    }
}

#[test]
fn running_distances() {
    for row in outside("cubic_lengths.json")["parallels"].as_array().unwrap() {
        let points: [Pt<f64>; 4] = std::array::from_fn(|i| pt(&row["points"][i]));
        let (d0, d1) = (row["d0"].as_f64().unwrap(), row["d1"].as_f64().unwrap());
        let whole = Curve::new(vec![Segment::Cubic(points)]).unwrap();
        near(whole.set_off_length(d0, d1), row["length"].as_f64().unwrap(), 1e-9, "in one");
        // The same curve cut in two: the distance runs on across the joint.
        let middle = whole.length() * 0.37;
        let (a, b) = (whole.between(0.0, middle).unwrap(), whole.between(middle, whole.length()).unwrap());
        let two = Curve::new([a.segments(), b.segments()].concat()).unwrap();
        near(two.set_off_length(d0, d1), row["length"].as_f64().unwrap(), 1e-8, "in two");
    }
    let line = Curve::straight(Pt::new(0.0, 0.0), Pt::new(30.0, 0.0)).unwrap();
    near(line.set_off_length(10.0, 50.0), 50.0, 1e-12, "3-4-5");
    // An arc whose distance grows evenly with the angle is a spiral of Archimedes about the same centre: r = 50 - a θ, closed form
    // (textbook): a/2 [θ sqrt(1 + θ²) + asinh θ] between θ = r/a at both ends.
    let (from, to) = (Pt::new(50.0, 0.0), Pt::new(0.0, 50.0));
    let arc = Curve::new(vec![Segment::arc(from, to, Pt::new(0.0, 0.0), true).unwrap()]).unwrap();
    let a = 20.0 / std::f64::consts::FRAC_PI_2;
    let spiral = |r: f64| {
        let t = r / a;
        a / 2.0 * (t * (1.0 + t * t).sqrt() + libm::asinh(t))
    };
    near(arc.set_off_length(0.0, 20.0), spiral(50.0) - spiral(30.0), 1e-9, "spiral inwards");
    near(arc.set_off_length(10.0, 10.0), 40.0 * std::f64::consts::FRAC_PI_2, 1e-12, "inwards: clockwise turns right");
    near(arc.set_off_length(60.0, 60.0), 10.0 * std::f64::consts::FRAC_PI_2, 1e-12, "beyond the centre");
}

#[test]
fn folding_is_told() {
    let arc = |clockwise: bool| {
        let (from, to) = (Pt::new(50.0, 0.0), Pt::new(0.0, 50.0));
        Curve::new(vec![Segment::arc(from, to, Pt::new(0.0, 0.0), clockwise).unwrap()]).unwrap()
    };
    assert!(!arc(true).set_off(49.0).folds && arc(true).set_off(51.0).folds);
    assert!(!arc(false).set_off(51.0).folds && arc(false).set_off(-51.0).folds);
    let turn = Curve::new(vec![Segment::Cubic([0.0, 150.0, -50.0, 100.0].map(|x| Pt::new(x, 2.0 * x)))]).unwrap();
    let drawn = turn.set_off(5.0);
    assert!(drawn.folds && !turn.set_off(0.0).folds);
    // Three legs on lines 5 mm beside, two joins of 10 mm.
    near(drawn_length(&drawn.path), turn.length() + 20.0, 1e-6, "there and back");
    let straight = Curve::new(vec![Segment::Cubic([0.0, 10.0, 20.0, 30.0].map(|x| Pt::new(x, 0.0)))]).unwrap();
    let drawn = straight.set_off(5.0);
    assert!(!drawn.folds);
    assert_eq!(drawn.path.to_svg(), "M0,5 L30,5", "right of \"to the right\" is down");
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 400, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn drawings_keep_their_distance(c in curve(), d in -30.0..30.0) {
        let drawn = c.set_off(d);
        prop_assert!(drawn.path.is_finite());
        prop_assert!(drawn.path.elements().len() < 4000);
        let length = c.set_off_length(d, d);
        prop_assert!(length.is_finite() && length >= 0.0);
        for segment in c.segments() {
            let one = Curve::new(vec![*segment]).unwrap();
            let off = one.set_off(d);
            if off.folds {
                continue;
            }
            let mut nearest = f64::INFINITY;
            let mut farthest: f64 = 0.0;
            for piece in off.path.segments() {
                for k in 0..=20 {
                    let q = piece.eval(f64::from(k) / 20.0);
                    let found = one.locate(Pt::new(q.x, q.y));
                    nearest = nearest.min(found.distance);
                    farthest = farthest.max(found.distance);
                }
            }
            // Without folds another part of the curve may still be nearer; nothing may be farther.
            prop_assert!(farthest <= d.abs() + 1e-3, "{farthest} for {d}: {segment:?}");
            if one.set_off_length(d, d) < 1.2 * one.length() && matches!(segment, Segment::Line(..)) {
                prop_assert!(nearest >= d.abs() - 1e-9);
            }
        }
    }
}
