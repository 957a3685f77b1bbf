//! Notches, marks, pleats and places on finished pieces, rolling, and what is kept from before.

use kurbo::{PathEl, Point, Shape};
use tracewheel::compute::Engine;
use tracewheel::document::Draft;
use tracewheel::file;
use tracewheel::finish::{Finished, finish};

use super::finishing::{has, made, near, polygon};

#[test]
fn match_marks_are_made_where_a_corner_falls_into_a_run() {
    let yoke = polygon("yoke", &[(0.0, 0.0), (0.0, 60.0), (-200.0, 60.0), (-200.0, 0.0)], &[10.0; 4], "");
    let left = polygon("left", &[(0.0, 0.0), (120.0, 0.0), (120.0, 200.0), (0.0, 200.0)], &[10.0; 4], "");
    let right = polygon("right", &[(0.0, 0.0), (80.0, 0.0), (80.0, 200.0), (0.0, 200.0)], &[10.0; 4], "");
    let m = made(&format!(
        "pieces: [{yoke}, {left}, {right}], seams: [
        (name: \"panel\", one: [\"left.e1\"], two: [\"reversed(right.e3)\"], order: \"1\"),
        (name: \"yoke\", one: [\"reversed(yoke.e1)\"], two: [\"left.e0\", \"right.e0\"], order: \"2\", notches: [(name: \"n\", at: \"1/4\", strokes: 2)])]"
    ));
    assert_eq!(m.loud(), Vec::<String>::new());
    let marks = &m.piece(0).notches;
    let made = marks.iter().find(|n| n.name.is_empty()).unwrap();
    // 120 mm from the yoke's left end, on its cut line.
    assert!(made.strokes[0][0].distance(Point::new(-80.0, 70.0)) < 1e-9, "{made:?}");
    // A notch of two strokes, 5 mm apart about its place, 6.35 mm deep, so more than 3.175 mm off the stitching.
    let told = marks.iter().find(|n| &*n.name == "n").unwrap();
    assert_eq!(told.strokes.len(), 2);
    near(told.strokes[0][0].distance(told.strokes[1][0]), 5.0, 1e-9);
    near(told.strokes[0][1].y, 70.0 - 6.35, 1e-9);
    assert!(m.piece(1).notches.iter().any(|n| &*n.name == "n"));
    assert!(m.piece(2).notches.iter().all(|n| &*n.name != "n"));
}

#[test]
fn notches_share_an_eased_stretch_by_fractions_and_the_rest_by_distances() {
    let long = polygon("long", &[(0.0, 0.0), (310.0, 0.0), (310.0, 90.0), (0.0, 90.0)], &[10.0; 4], "");
    let short = polygon("short", &[(0.0, 0.0), (300.0, 0.0), (300.0, 90.0), (0.0, 90.0)], &[10.0; 4], "")
        .replace("points: [", "points: [(name: \"mark\", at: \"(100 mm, 0 mm)\"), ");
    let long = long.replace("points: [", "points: [(name: \"mark\", at: \"(100 mm, 0 mm)\"), ");
    let m = made(&format!(
        "pieces: [{long}, {short}], seams: [(name: \"s\", one: [\"long.e0\"], two: [\"short.e0\"], fit: eased(longer: one, by: \"10 mm\"),
        stretches: [(to_one: \"long.mark\", to_two: \"short.mark\", share: \"0\"), (share: \"1\")],
        notches: [(name: \"even\", on: two, at: \"40 mm\", strokes: 1), (name: \"eased\", on: two, at: \"200 mm\", strokes: 1)])]"
    ));
    assert_eq!(m.loud(), Vec::<String>::new());
    let x =
        |piece: usize, name: &str| m.piece(piece).notches.iter().find(|n| &*n.name == name).unwrap().strokes[0][0].x;
    near(x(1, "even"), 40.0, 1e-9);
    near(x(0, "even"), 40.0, 1e-9);
    near(x(1, "eased"), 200.0, 1e-9);
    near(x(0, "eased"), 205.0, 1e-9);
}

#[test]
fn the_place_of_a_pocket_is_carried_over_a_dart_and_over_a_seam() {
    let pocket = polygon("pocket", &[(0.0, 0.0), (60.0, 0.0), (60.0, 30.0), (0.0, 30.0)], &[10.0; 4], "");
    let dart = "darts: [(name: \"dart\", on: \"e0\", centre: \"100 mm\", intake: \"40 mm\", tip: \"120 mm\")], marks: [(name: \"here\", kind: place, at: \"p0.right(70 mm).down(40 mm)\", piece: \"pocket\")]";
    let front = polygon("front", &[(0.0, 0.0), (200.0, 0.0), (200.0, 300.0), (0.0, 300.0)], &[10.0; 4], dart);
    let m = made(&format!("pieces: [{front}, {pocket}]"));
    assert_eq!(m.loud(), Vec::<String>::new());
    let drawn = &m.piece(0).places[0];
    // Nothing of its outline is lost: it lies on the closed body, whose dart is opened again.
    near(drawn.segments().map(|s| kurbo::ParamCurveArclen::arclen(&s, 1e-9)).sum(), 180.0, 1e-6);
    // Left of the dart it lies as it is told; its right corner turns about the tip by the whole angle of the dart.
    has(drawn, 70.0, 40.0);
    has(drawn, 70.0, 70.0);
    let turn = 2.0 * (20.0f64).atan2(120.0);
    let (x, y) = (130.0 - 100.0, 40.0 - 120.0);
    has(drawn, 100.0 + x * turn.cos() - y * turn.sin(), 120.0 + x * turn.sin() + y * turn.cos());
    // It is drawn up to the legs, on both sides: at 40 mm down they are 40/3 mm from the middle.
    has(drawn, 100.0 - 20.0 * 80.0 / 120.0, 40.0);

    let mark = "marks: [(name: \"here\", kind: place, at: \"p0.right(180 mm).down(100 mm)\", piece: \"pocket\")]";
    let left = polygon("left", &[(0.0, 0.0), (200.0, 0.0), (200.0, 300.0), (0.0, 300.0)], &[10.0; 4], mark);
    let right = polygon("right", &[(0.0, 0.0), (150.0, 0.0), (150.0, 300.0), (0.0, 300.0)], &[10.0; 4], "");
    let seam = "seams: [(name: \"s\", one: [\"left.e1\"], two: [\"reversed(right.e3)\"])]";
    let m = made(&format!("pieces: [{left}, {right}, {pocket}], {seam}"));
    let (on_left, on_right) = (&m.piece(0).places[0], &m.piece(1).places[0]);
    for (x, y) in [(180.0, 100.0), (200.0, 100.0), (200.0, 130.0), (180.0, 130.0)] {
        has(on_left, x, y);
    }
    for (x, y) in [(0.0, 100.0), (40.0, 100.0), (40.0, 130.0), (0.0, 130.0)] {
        has(on_right, x, y);
    }
}

/// A generated draft with allowances, and the same with one number changed.
fn generated(seed: u64) -> (Draft, Draft) {
    use crate::seeds::generate::{Options, draft};
    let mut draft = draft(&Options { pieces: 3, points: 14, sizes: 4, found: 2, broken: 0.0, views: 0, seed });
    draft.settings.allowance = format!("{} mm", 4 + seed % 17);
    let mut other = draft.clone();
    let piece = std::sync::Arc::make_mut(&mut other.pieces[0]);
    let point = piece.points.last_mut().unwrap();
    point.at = format!("({}).right(3 mm)", point.at);
    (draft, other)
}

#[test]
fn generated_pieces_are_finished_whatever_their_shape() {
    let (mut cut, mut trimmed) = (0, 0);
    for seed in 1..=60 {
        let (draft, other) = generated(seed);
        let mut engine = Engine::new();
        let model = engine.compute(&draft);
        let finished = finish(&draft, &model);
        for piece in finished.cases.iter().flatten().flatten() {
            for made in &piece.cuts {
                let outline = made.outline.as_ref().unwrap_or_else(|| panic!("seed {seed}: no cut line"));
                assert!(outline.is_finite(), "seed {seed}");
                cut += 1;
                trimmed += usize::from(made.trimmed.is_some());
                if made.trimmed.is_none() {
                    assert!(outline.area().abs() > piece.stitch.area().abs(), "seed {seed}: the cut line is smaller");
                }
            }
        }
        // What is kept from before is what would be made anew.
        let later = engine.compute(&other);
        let before = tracewheel::finish::Before { draft: &draft, model: &model, finished: &finished };
        let followed = tracewheel::finish::finish_after(&other, &later, Some(before));
        let anew = finish(&other, &later);
        assert_eq!(followed.cases, anew.cases, "seed {seed}");
        assert_eq!(followed.notches, anew.notches, "seed {seed}");
    }
    assert!(cut > 300 && trimmed < cut, "{cut} cut lines, {trimmed} trimmed");
}

#[test]
fn what_hangs_on_nothing_that_changed_is_the_very_same() {
    let square = [(0.0, 0.0), (90.0, 0.0), (90.0, 70.0), (0.0, 70.0)];
    let pieces: String = ["one", "two", "three"].iter().map(|n| polygon(n, &square, &[10.0; 4], "") + ", ").collect();
    let seam = "seams: [(name: \"s\", one: [\"one.e1\"], two: [\"reversed(two.e3)\"])]";
    let text =
        format!("(format: \"tracewheel draft\", version: 0, chart: (girth: [\"one\"]), pieces: [{pieces}], {seam})");
    let read = |text: &str| file::read(text).unwrap().draft;
    let (draft, changed) = (read(&text), read(&text.replacen("(90 mm, 70 mm)", "(90 mm, 72 mm)", 1)));
    let mut engine = Engine::new();
    let model = engine.compute(&draft);
    let finished = finish(&draft, &model);
    let later = engine.compute(&changed);
    let before = tracewheel::finish::Before { draft: &draft, model: &model, finished: &finished };
    let followed = tracewheel::finish::finish_after(&changed, &later, Some(before));
    assert_eq!(followed.cases, finish(&changed, &later).cases);
    let piece = |f: &Finished, i: usize| f.cases[0][i].clone().unwrap();
    // The first has changed, the second is sewn to it, the third is by itself.
    assert!(*piece(&finished, 0) != *piece(&followed, 0));
    assert!(std::sync::Arc::ptr_eq(&piece(&finished, 2), &piece(&followed, 2)));
    // Another setting is another draft: everything is made anew.
    let wider = read(&text.replacen("version: 0,", "version: 0, settings: (notch_depth: \"2 mm\"),", 1));
    let later = engine.compute(&wider);
    let again = tracewheel::finish::finish_after(&wider, &later, Some(before));
    assert!(!std::sync::Arc::ptr_eq(&piece(&finished, 2), &piece(&again, 2)));
}

#[test]
fn pieces_of_one_side_are_joined_beside_each_other_when_they_are_rolled() {
    let text = std::fs::read_to_string("examples/skirt-finished.ron").unwrap();
    let draft = file::read(&text).unwrap().draft;
    let model = Engine::new().compute(&draft);
    let finished = finish(&draft, &model);
    let seam = model.plan.seams.iter().position(|s| &*s.name == "waist").unwrap();
    let point = |case: usize, name: &str| {
        let node = model.plan.node_named(name).unwrap();
        model.item(case, node).unwrap().point().unwrap().value()
    };
    for case in [0, 5, 11] {
        for to in [0.0, 120.0, 5_000.0] {
            let rolled =
                tracewheel::finish::roll(&model, case, seam, &finished.sewing, &finished.notches[case], to).unwrap();
            let at = |name: &str| {
                let frame = model.plan.frames().iter().position(|f| &*f.name == name).unwrap();
                rolled.pieces.iter().find(|p| p.frame == frame).unwrap()
            };
            let (back, front, band) = (at("back"), at("front"), at("waistband"));
            assert!(!back.rolled && !front.rolled && band.rolled, "{rolled:?}");
            // Both halves meet at the side of the waist, and their side seams start out in one line.
            let meets =
                (back.motion * point(case, "back.waist_side")).distance(front.motion * point(case, "front.waist_side"));
            assert!(meets < 1e-6, "{meets}");
            let way = |piece: &tracewheel::finish::RolledPiece, name: &str| {
                let node = model.plan.node_named(&format!("{name}.side")).unwrap();
                let edge = model.item(case, node).unwrap().edge().unwrap().curve.clone();
                let (end, before) = (edge.end().value(), edge.point_at(edge.length() - 0.001).unwrap().value());
                let (a, b) = (piece.motion * end, piece.motion * before);
                (b - a).normalize()
            };
            assert!((way(back, "back") - way(front, "front")).hypot() < 1e-3);
            // The band touches at the same distance from its centre back.
            let sewn = point(case, "waistband.centre_back");
            let touched = Point::new(sewn.x + rolled.at[1], sewn.y);
            assert!((band.motion * touched).distance(rolled.contact) < 1e-6);
        }
    }
}

/// 100 mm sewn to 110 mm eased over all of it: a notch lies at the same share of both, so 2.5 mm apart at a quarter.
#[test]
fn a_notch_of_an_eased_seam_is_rolled_to_its_place_on_either_side() {
    let one = polygon("one", &[(0.0, 0.0), (80.0, 0.0), (80.0, 100.0), (0.0, 100.0)], &[10.0; 4], "");
    let two = polygon("two", &[(0.0, 0.0), (80.0, 0.0), (80.0, 110.0), (0.0, 110.0)], &[10.0; 4], "");
    let m = made(&format!(
        "pieces: [{one}, {two}], seams: [(name: \"s\", one: [\"one.e1\"], two: [\"reversed(two.e3)\"],
        fit: eased(longer: two, by: \"10 mm\"), notches: [(name: \"n\", at: \"1/4\")])]"
    ));
    assert_eq!(m.loud(), Vec::<String>::new());
    let rolled = tracewheel::finish::roll(&m.model, 0, 0, &m.finished.sewing, &m.finished.notches[0], 0.0).unwrap();
    let notch = &rolled.notches[0];
    near(notch.places[0], 25.0, 1e-9);
    near(notch.places[1], 27.5, 1e-9);
    near(notch.gap, -2.5, 1e-9);
    let [a, b] = notch.points.map(Option::unwrap);
    assert!(a.distance(Point::new(80.0, 25.0)) < 1e-9 && b.distance(Point::new(0.0, 27.5)) < 1e-9, "{a} {b}");
}

#[test]
fn pleats_are_drawn_with_their_folds_and_an_arrow_and_their_mouths_lie_flush() {
    let pleat = |pressed: &str| {
        let p = polygon(
            "p",
            &[(0.0, 0.0), (200.0, 0.0), (200.0, 200.0), (0.0, 200.0)],
            &[10.0; 4],
            &format!(
                "pleats: [(name: \"fold\", on: \"e0\", centre: \"1/2\", intake: \"40 mm\", depth: \"60 mm\", pressed: {pressed})]"
            ),
        );
        made(&format!("pieces: [{p}]"))
    };
    for (pressed, head) in [("to_start", 80.0), ("to_end", 120.0)] {
        let m = pleat(pressed);
        assert_eq!(m.loud(), Vec::<String>::new());
        let piece = m.piece(0);
        has(&piece.pleats[0], 80.0, 0.0);
        has(&piece.pleats[0], 80.0, 60.0);
        has(&piece.pleats[1], 120.0, 60.0);
        assert_eq!(piece.pleats[2].elements().last().and_then(PathEl::end_point), Some(Point::new(head, 20.0)));
        // Square to a straight edge nothing has to be shaped.
        near(m.cut(0).area().abs(), 220.0 * 220.0, 1e-6);
    }
}
