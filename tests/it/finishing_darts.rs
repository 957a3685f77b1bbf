//! Darts with two ends and with bowed legs: their legs on paper, what they take out, what stays as it is drawn.

use kurbo::{ParamCurveArclen, Shape};
use tracewheel::compute::Engine;
use tracewheel::finish::{Before, Finished, finish, finish_after};
use tracewheel::output;

use super::finishing::{Made, has, made, near, polygon};

const BOX: [(f64, f64); 4] = [(0.0, 0.0), (200.0, 0.0), (200.0, 300.0), (0.0, 300.0)];

/// A box of 200 by 300 mm with one dart, and measures of it.
fn front(dart: &str, measures: &[&str]) -> Made {
    let piece = polygon(
        "front",
        &BOX,
        &[10.0; 4],
        &format!("darts: [{dart}], lines: [(name: \"axis\", from: \"up\", by: [straight(\"low\")])]"),
    );
    let piece = piece.replace(
        "points: [",
        "points: [(name: \"up\", at: \"(100 mm, 60 mm)\"), (name: \"low\", at: \"(100 mm, 240 mm)\"), ",
    );
    let measures: String =
        measures.iter().enumerate().map(|(i, m)| format!("(name: \"m{i}\", is: \"{m}\"), ")).collect();
    made(&format!("pieces: [{piece}], measures: [{measures}]"))
}

fn measure(m: &Made, i: usize) -> f64 {
    m.model.item(0, m.model.plan.measures[i].node).unwrap().real().unwrap()
}

const SLIM: &str = "(name: \"slim\", on: \"axis\", centre: \"80 mm\", intake: \"30 mm\", form: two_ended)";

#[test]
fn a_dart_with_two_ends_is_drawn_and_taken_out_of_the_width() {
    let at = |y: f64| format!("width(front, level(front.p0.down({y} mm)))");
    // Through its middle, half way to its upper tip, half way to its lower one, at a tip, beside it.
    let measures = [at(140.0), at(100.0), at(190.0), at(60.0), at(30.0)];
    let mut told: Vec<&str> = measures.iter().map(String::as_str).collect();
    told.extend(["length(front.e0)", "front.slim.leg", "length(between(front.slim.first_foot, front.p2))"]);
    let m = front(SLIM, &told);
    assert_eq!(m.loud(), Vec::<String>::new());
    let triangles = [170.0, 185.0, 185.0, 200.0, 200.0];
    for (i, wanted) in triangles.into_iter().enumerate() {
        near(measure(&m, i), wanted, 1e-9);
    }
    near(measure(&m, 5), 200.0, 1e-9);
    near(measure(&m, 6), 80f64.hypot(15.0), 1e-9);
    // A line that runs down has its left, as seen, at the larger x.
    near(measure(&m, 7), (200.0f64 - 115.0).hypot(160.0), 1e-9);
    let lines = output::lines(&m.model, 0, &m.model.plan.frames()[0]);
    let legs = &lines[1];
    for (x, y) in [(115.0, 140.0), (100.0, 60.0), (85.0, 140.0), (100.0, 240.0)] {
        has(legs, x, y);
    }
    near(legs.perimeter(1e-9), 2.0 * (80f64.hypot(15.0) + 100f64.hypot(15.0)), 1e-9);
    // The cut line knows nothing of it.
    near(m.cut(0).area().abs(), 220.0 * 320.0, 1e-6);
}

#[test]
fn bowed_legs_are_parabolas_of_one_length_and_leave_the_mouth_as_drawn() {
    for bow in [6.0f64, -6.0] {
        let dart = format!(
            "(name: \"d\", on: \"e0\", centre: \"1/2\", intake: \"40 mm\", tip: \"120 mm\", bow: \"{bow} mm\")"
        );
        let m = front(&dart, &["front.d.leg", "length(front.e0)"]);
        assert_eq!(m.loud(), Vec::<String>::new());
        // The length of a parabola over a chord L with rise b, in closed form: a = 4 b / L.
        let chord = 120f64.hypot(20.0);
        let a = 4.0 * bow.abs() / chord;
        let arc = chord / 2.0 * (1.0 + a * a).sqrt() + chord / (2.0 * a) * a.asinh();
        near(measure(&m, 0), arc, 1e-8);
        near(measure(&m, 1), 160.0, 1e-9);
        let lines = output::lines(&m.model, 0, &m.model.plan.frames()[0]);
        let legs: Vec<_> = lines[1].segments().collect();
        assert_eq!(legs.len(), 2);
        for (leg, x) in legs.iter().zip([-1.0, 1.0]) {
            near(leg.arclen(1e-10), arc, 1e-8);
            // Its middle stands off to the outside, square to the leg: (120, 20) turned by a quarter, for the leg to the left.
            let middle = kurbo::ParamCurve::eval(leg, 0.5);
            near(middle.x, 100.0 + x * (10.0 + bow * 120.0 / chord), 1e-9);
            near(middle.y, 60.0 + bow * 20.0 / chord, 1e-9);
        }
        // No peak above the edge: the cut line runs straight over the open mouth.
        near(m.cut(0).area().abs(), 220.0 * 320.0, 1e-6);
        near(m.cut(0).bounding_box().y0, -10.0, 1e-9);
    }
    let straight = front("(name: \"d\", on: \"e0\", centre: \"1/2\", intake: \"40 mm\", tip: \"120 mm\")", &[]);
    assert!(straight.cut(0).bounding_box().y0 < -16.0);
}

#[test]
fn darts_that_cannot_be_are_told_with_what_to_do() {
    let told = |dart: &str| front(dart, &[]).loud().join("\n");
    let two = "name: \"slim\", on: \"axis\", centre: \"80 mm\", intake: \"30 mm\", form: two_ended";
    assert!(told(&format!("({two}, tip: \"3 cm\")")).contains("no `tip` and no `foot`"));
    assert!(told(&format!("({})", two.replace("80 mm", "200 mm"))).contains("between the ends of its line"));
    assert!(told(&format!("({})", two.replace("30 mm", "-3 mm"))).contains("below zero"));
    assert!(told(&format!("({})", two.replace("axis", "e0"))).contains("inner line"));
    let open = "name: \"d\", on: \"e0\", centre: \"1/2\", intake: \"40 mm\", tip: \"120 mm\", bow: \"6 mm\"";
    // Too wide, too long, bowed too far: they would be drawn off the piece.
    assert!(told(&format!("({})", two.replace("30 mm", "300 mm"))).contains("front.slim lies 5 cm outside of front"));
    assert!(told(&format!("({})", open.replace("120 mm", "330 mm"))).contains("front.d lies 3 cm outside of front"));
    assert!(told(&format!("({})", open.replace("bow: \"6 mm\"", "bow: \"150 mm\""))).contains("front.d lies"));
    assert!(told(&format!("({open}, form: cut_out)")).contains("not slashed or cut out"));
    assert!(told(&format!("({})", open.replace("6 mm", "6"))).contains("no unit"));
}

/// A leg that becomes bowed changes neither the edge nor the dart's feet, but its mouth is left as drawn from then on.
#[test]
fn a_dart_whose_legs_become_bowed_is_finished_anew() {
    let dart = |bow: &str| {
        format!("(name: \"d\", on: \"e0\", centre: \"1/2\", intake: \"40 mm\", tip: \"120 mm\", bow: \"{bow}\")")
    };
    let [straight, bowed] = ["0 mm", "6 mm"].map(|bow| front(&dart(bow), &[]).draft);
    let mut engine = Engine::new();
    let model = engine.compute(&straight);
    let finished = finish(&straight, &model);
    let later = engine.compute(&bowed);
    let before = Before { draft: &straight, model: &model, finished: &finished };
    let followed = finish_after(&bowed, &later, Some(before));
    assert_eq!(followed.cases, finish(&bowed, &later).cases);
    let top = |f: &Finished| f.cases[0][0].as_ref().unwrap().cuts[0].outline.as_ref().unwrap().bounding_box().y0;
    assert!(top(&finished) < -16.0, "a peak above the edge");
    near(top(&followed), -10.0, 1e-9);
}
