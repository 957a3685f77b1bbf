//! Drawing by pointing: what a place is read as, where each reading puts its point, what typed numbers do.
//! Places are judged by plane geometry worked out by hand, and by the whole engine with the point in the draft.

use kurbo::Point;
use tracewheel::compute::Engine;
use tracewheel::document::{Draft, Inner};
use tracewheel::file;
use tracewheel::session::{
    Command, Computed, Joined, PieceCommand, Pointing, Reading, Sight, Work, fresh_inner, joined,
};

use super::dice::Dice;

/// A panel of 20 by 60 cm with a slanting side, a curve over its hem and a line across.
const PANEL: &str = "(format: \"tracewheel draft\", version: 0, chart: (girth: [\"S\", \"M\"], rows: [(name: \"bust\", by: [girth], cells: [(\"S\", \"80 cm\"), (\"M\", \"88 cm\")])]),
    pieces: [(name: \"panel\", points: [(name: \"a\", at: \"(0 cm, 0 cm)\"), (name: \"b\", at: \"a.right(bust / 4)\"), (name: \"c\", at: \"(24 cm, 60 cm)\"),
    (name: \"d\", at: \"a.down(60 cm)\"), (name: \"l\", at: \"(0 cm, 20 cm)\"), (name: \"r\", at: \"(20 cm, 30 cm)\")],
    edges: [(name: \"top\", from: \"a\", by: [straight(\"b\")]), (name: \"side\", from: \"b\", by: [straight(\"c\")]),
    (name: \"hem\", from: \"c\", by: [curve(\"(16 cm, 64 cm)\", \"(8 cm, 64 cm)\", \"d\")]), (name: \"centre\", from: \"d\", by: [straight(\"a\")])],
    lines: [(name: \"across\", from: \"l\", by: [straight(\"r\")])])])";

fn work(text: &str) -> Work {
    Work::here(file::read(text).unwrap().draft)
}

fn ask(sight: &Sight<'_>, at: (f64, f64), from: &[&str]) -> Vec<Reading> {
    let from = from.iter().map(|n| (*n).to_owned()).collect();
    sight.readings(&Pointing {
        at: Point::new(at.0, at.1),
        reach: 4.0,
        from,
        snap: true,
        rounding: sight.rounding(2.0),
    })
}

fn sees(computed: &Computed) -> Sight<'_> {
    Sight::of(computed, "panel", 0).unwrap()
}

#[test]
fn a_place_is_read_as_what_lies_there() {
    let work = work(PANEL);
    let sight = sees(work.computed());
    // Where, measured from which points; what is meant first; where that is (by hand, mm).
    for (at, from, formula, place) in [
        ((1.0, 2.0), &[][..], "a", (0.0, 0.0)),
        ((101.0, 1.0), &[], "top.at(1/2)", (100.0, 0.0)),
        ((68.0, -2.0), &[], "top.at(1/3)", (200.0 / 3.0, 0.0)),
        ((121.0, 1.0), &["b"], "reversed(top).at(7.9 cm)", (121.0, 0.0)),
        ((41.0, 1.0), &[], "top.at(4.1 cm)", (41.0, 0.0)),
        ((81.0, 241.0), &["l"], "across.at(", (0.0, 0.0)),
        ((61.0, 2.5), &["l"], "top.at(6.1 cm)", (61.0, 0.0)),
        ((52.0, 120.0), &["l"], "l.right(5.2 cm).up(8 cm)", (52.0, 120.0)),
        ((52.0, 201.0), &["l"], "l.right(5.2 cm)", (52.0, 200.0)),
        ((185.0, 121.0), &["a"], "a.right(18.5 cm).down(12.1 cm)", (185.0, 121.0)),
        ((52.0, 120.0), &[], "(5.2 cm, 12 cm)", (52.0, 120.0)),
        ((101.0, 149.0), &["l", "b"], "halfway(l, b)", (100.0, 100.0)),
    ] {
        let readings = ask(&sight, at, from);
        let first = &readings[0];
        if formula == "halfway(l, b)" {
            // Half way between (0, 200) and (200, 0), which is (100, 100): not where the pointer is.
            assert!(readings.iter().all(|r| r.formula != formula), "{readings:#?}");
            assert_eq!(ask(&sight, (101.0, 99.0), from)[0].formula, formula);
            continue;
        }
        assert!(first.formula.starts_with(formula), "{at:?} from {from:?}: {readings:#?}");
        if place != (0.0, 0.0) {
            assert!((first.place - Point::from(place)).hypot() < 1e-9, "{at:?}: {first:?}");
        }
    }
}

#[test]
fn constructions_are_among_the_readings_and_lie_where_geometry_says() {
    let work = work(PANEL);
    let sight = sees(work.computed());
    let (sin, cos) = (200.0f64.hypot(100.0).recip() * 100.0, 200.0f64.hypot(100.0).recip() * 200.0);
    let root: f64 = 150.0f64.powi(2) - 100.0f64.powi(2);
    for (at, from, formula, place) in [
        // Square to the leaning line at its end: 40 mm along its normal (-sin, cos).
        (
            (-40.0 * sin, 200.0 + 40.0 * cos),
            &["l"][..],
            "l.polar(heading(l, r) + 90°, 4 cm)",
            (-40.0 * sin, 200.0 + 40.0 * cos),
        ),
        // Its foot from another point: d = (0, 600), so (d - l)·u = 400 sin along it.
        (
            (400.0 * sin * cos, 200.0 + 400.0 * sin * sin),
            &["d"],
            "foot(d, across)",
            (400.0 * sin * cos, 200.0 + 400.0 * sin * sin),
        ),
        // Mirrored in it: a = (0, 0) lies 200 cos off the line.
        (
            (-400.0 * cos * sin, 400.0 * cos * cos),
            &["a"],
            "a.mirrored(line(l, r))",
            (-400.0 * cos * sin, 400.0 * cos * cos),
        ),
        // An arc of 15 cm swung from l, 20 cm down, 10 cm beside... onto the top: it does not reach; onto the side it does.
        ((root.sqrt(), 100.0), &["l"], "l.right(11.2 cm).up(10 cm)", (112.0, 100.0)),
        // Level with one, plumb with another.
        ((200.0, 200.0), &["d"], "(b.x, l.y)", (200.0, 200.0)),
        // Beyond an edge.
        (
            (200.0 + 50.0 * cos, 300.0 + 50.0 * sin),
            &["a"],
            "r.polar(heading(l, r), 5 cm)",
            (200.0 + 50.0 * cos, 300.0 + 50.0 * sin),
        ),
        // As another line runs.
        ((60.0 * cos, 600.0 + 60.0 * sin), &["d"], "d.polar(heading(l, r), 6 cm)", (60.0 * cos, 600.0 + 60.0 * sin)),
        // Turned by 90° about a: b = (200, 0) comes to (0, 200), where l lies; so by 45°.
        ((141.4, 141.4), &["a", "b"], "b.turned(a, 45°)", (200.0 / 2f64.sqrt(), 200.0 / 2f64.sqrt())),
        // 13 cm from a and 15 cm from (140, 0)-like points: by the compass from a and b, 120 and 160 make a right angle at 200.
        ((72.0, 96.0), &["a", "b"], "cross(circle(a, 12 cm), circle(b, 16 cm), side: below)", (72.0, 96.0)),
        ((72.0, -96.0), &["a", "b"], "cross(circle(a, 12 cm), circle(b, 16 cm), side: above)", (72.0, -96.0)),
        // Square off an outline's edge at a point that lies on it: l on the centre edge, inside is to the right.
        ((70.0, 200.0), &["l"], "centre.off(place(centre, l), 7 cm)", (70.0, 200.0)),
        // Level with a point on a leaning edge: a third of the way down, by similar triangles.
        ((214.0, 201.0), &["l"], "cross(level(l), side)", (200.0 + 40.0 / 3.0, 200.0)),
        // On an edge, swung: from l, 25 cm, onto the top: sqrt(250² - 200²) = 150.
        ((150.0, 0.0), &["l"], "swing(l, 25 cm, top)", (150.0, 0.0)),
    ] {
        let readings = ask(&sight, at, from);
        let found = readings.iter().find(|r| r.formula == formula);
        let found = found.unwrap_or_else(|| panic!("{formula} at {at:?} from {from:?}: {readings:#?}"));
        assert!((found.place - Point::from(place)).hypot() < 1e-6, "{found:?}");
    }
}

#[test]
fn a_corner_is_halved_and_lines_meet_beyond_their_ends() {
    let work = work(PANEL);
    let sight = sees(work.computed());
    let readings = ask(&sight, (30.0, 30.0), &["a"]);
    let halved =
        readings.iter().find(|r| r.formula == "bisect(d, a, b, 4.2 cm)").unwrap_or_else(|| panic!("{readings:#?}"));
    assert!((halved.place - Point::new(42.0 / 2f64.sqrt(), 42.0 / 2f64.sqrt())).hypot() < 1e-9);
    // The line across prolonged meets the side prolonged: x = 200 + 40 t, y = 600 t; y = 200 + x / 2.
    let t: f64 = 300.0 / 580.0;
    let readings = ask(&sight, (200.0 + 40.0 * t, 600.0 * t), &[]);
    let crossing = readings
        .iter()
        .find(|r| r.formula == "cross(line(b, c), line(l, r))")
        .unwrap_or_else(|| panic!("{readings:#?}"));
    assert!((crossing.place - Point::new(200.0 + 40.0 * t, 600.0 * t)).hypot() < 1e-9);
    // The tangent from a point to the curve of the hem: its place lies on the curve and the way there runs as the curve does.
    let below = fresh(&work, "e", "(-10 cm, 62 cm)");
    let sight = Sight::of(below.computed(), "panel", 0).unwrap();
    let touch = sight.place("touch(e, hem)").unwrap();
    let readings = ask(&sight, (touch.x + 1.0, touch.y), &["e"]);
    assert!(readings.iter().any(|r| r.formula == "touch(e, hem)"), "{readings:#?}");
}

/// The same work with one more point.
fn fresh(work: &Work, name: &str, at: &str) -> Work {
    let mut work = Work::here(Draft::clone(work.draft()));
    work.run(&Command::Piece(PieceCommand::AddPoint("panel".into(), name.into(), at.into()))).unwrap();
    work
}

#[test]
fn without_snapping_only_free_places_are_offered() {
    let work = work(PANEL);
    let sight = sees(work.computed());
    let at = Point::new(1.0, 1.0);
    let free = |from: Vec<String>| {
        let pointing = Pointing { at, reach: 4.0, from, snap: false, rounding: sight.rounding(2.0) };
        sight.readings(&pointing).into_iter().map(|r| r.formula).collect::<Vec<_>>()
    };
    assert_eq!(free(vec![]), ["(0.1 cm, 0.1 cm)"]);
    assert_eq!(free(vec!["d".into()]), ["d.right(0.1 cm).up(59.9 cm)", "d.polar(-90°, 59.9 cm)"]);
}

#[test]
fn typed_numbers_take_over_and_wrong_ones_are_told() {
    let work = work(PANEL);
    let sight = sees(work.computed());
    let readings = ask(&sight, (52.0, 120.0), &["l"]);
    let free = &readings[0];
    let typed = |texts: &[&str]| free.with(&sight, &texts.iter().map(|t| (*t).to_owned()).collect::<Vec<_>>());
    let both = typed(&["6", "1 1/2 in"]).unwrap();
    assert_eq!(both.formula, "l.right(6 cm).up(1 1/2 in)");
    assert!((both.place - Point::new(60.0, 200.0 - 38.1)).hypot() < 1e-9);
    assert_eq!(both.numbers.iter().map(|n| n.of(&both.formula)).collect::<Vec<_>>(), ["6 cm", "1 1/2 in"]);
    assert_eq!(typed(&["", "7,5"]).unwrap().formula, "l.right(5.2 cm).up(7.5 cm)");
    assert_eq!(typed(&["=bust / 8"]).unwrap().formula, "l.right(bust / 8).up(8 cm)");
    assert!(typed(&["= bst / 8"]).unwrap_err().contains("bust"), "{:?}", typed(&["= bst / 8"]));
    assert!(typed(&["30°"]).unwrap_err().contains("a length"), "{:?}", typed(&["30°"]));
    let polar = readings.iter().find(|r| r.formula.contains("polar")).unwrap();
    assert!(polar.with(&sight, &["-45".into()]).unwrap().formula.starts_with("l.polar(-45°, "));
    // A place on an edge: a fraction stays one, a bare number is a length.
    let half = &ask(&sight, (100.0, 0.0), &[])[0];
    assert_eq!(half.with(&sight, &["2/5".into()]).unwrap().formula, "top.at(2/5)");
    assert_eq!(half.with(&sight, &["5".into()]).unwrap().formula, "top.at(5 cm)");
    assert!(half.with(&sight, &["50".into()]).unwrap_err().contains("no answer"), "beyond the edge");
}

#[test]
fn every_reading_is_where_the_whole_engine_puts_it() {
    let file = |name: &str| std::fs::read_to_string(format!("{}/examples/{name}", env!("CARGO_MANIFEST_DIR"))).unwrap();
    let mut dice = Dice(7);
    let mut seen = 0;
    for name in ["bodice-sleeve.ron", "bodice-finished.ron", "market-apron.ron", "trousers.ron"] {
        let Ok(opened) = file::read(&file(name)) else { panic!("{name}") };
        let work = Work::here(opened.draft);
        let computed = work.computed();
        let model = computed.model.as_ref().unwrap();
        for frame in model.plan.frames() {
            let case = dice.below(model.plan.cases.range as u64) as usize;
            let sight = Sight::of(computed, &frame.name, case).unwrap();
            let places: Vec<(String, Point)> = frame
                .points
                .iter()
                .filter_map(|n| {
                    let p = model.item(case, *n)?.point()?;
                    let name = model.plan.nodes[*n as usize].part.name.split_once('.')?.1.to_owned();
                    Some((name, Point::new(p.x, p.y)))
                })
                .collect();
            for _ in 0..6 {
                // Near a point, or between two, where something lies; measured from two others.
                let pick = |dice: &mut Dice| places[dice.below(places.len() as u64) as usize].clone();
                let (a, b) = (pick(&mut dice), pick(&mut dice));
                let share = dice.below(5) as f64 / 4.0;
                let off = (dice.from(-20, 20) as f64 / 10.0, dice.from(-20, 20) as f64 / 10.0);
                let at = a.1 + (b.1 - a.1) * share + kurbo::Vec2::new(off.0, off.1);
                let from = vec![pick(&mut dice).0, pick(&mut dice).0];
                let pointing = Pointing { at, reach: 5.0, from, snap: true, rounding: sight.rounding(2.0) };
                let readings = sight.readings(&pointing);
                assert!(!readings.is_empty() && readings.len() <= 14);
                for reading in readings.into_iter().filter(|r| r.there.is_none()) {
                    let mut draft = Draft::clone(work.draft());
                    let point = fresh_inner(&draft, &frame.name, Inner::Point, &[]);
                    let piece = draft.pieces.iter_mut().find(|p| *p.name == *frame.name);
                    let made = tracewheel::document::Point {
                        name: point.clone(),
                        at: reading.formula.clone(),
                        ..Default::default()
                    };
                    match piece {
                        Some(piece) => std::sync::Arc::make_mut(piece).points.push(made),
                        None => {
                            let drawing = draft.drawings.iter_mut().find(|d| *d.name == *frame.name).unwrap();
                            std::sync::Arc::make_mut(drawing).points.push(made);
                        }
                    }
                    let model = Engine::new().compute(&draft);
                    let node = model.plan.node_named(&format!("{}.{point}", frame.name)).unwrap();
                    let p = model.item(case, node).and_then(|i| i.point());
                    let p = p.unwrap_or_else(|| panic!("{name} {}: {reading:?}", frame.name));
                    assert!(
                        (Point::new(p.x, p.y) - reading.place).hypot() < 1e-9,
                        "{name} {}: {reading:?}",
                        frame.name
                    );
                    seen += 1;
                }
            }
        }
    }
    assert!(seen > 200, "{seen}");
}

#[test]
fn a_line_goes_on_with_the_outline_or_lies_inside() {
    let draft = |edges: &str| {
        let text = format!(
            "(format: \"tracewheel draft\", version: 0, pieces: [(name: \"p\", points: [(name: \"a\", at: \"(0 cm, 0 cm)\"), (name: \"b\", at: \"(1 cm, 0 cm)\"), (name: \"c\", at: \"(1 cm, 1 cm)\"), (name: \"d\", at: \"(2 cm, 1 cm)\")], edges: [{edges}])])"
        );
        file::read(&text).unwrap().draft
    };
    let line = |from: &str, to: &str| Joined::Line(from.into(), to.into());
    let outline = |from: &str, to: &str| Joined::Outline(from.into(), to.into());
    let none = draft("");
    assert_eq!(joined(&none, "p", "c", "a"), outline("c", "a"));
    assert_eq!(joined(&none, "gone", "c", "a"), line("c", "a"));
    let open = draft("(name: \"e\", from: \"a\", by: [straight(\"b\"), straight(\"c\")])");
    assert_eq!(joined(&open, "p", "c", "d"), outline("c", "d"));
    assert_eq!(joined(&open, "p", "d", "c"), outline("c", "d"), "the outline keeps its sense");
    assert_eq!(joined(&open, "p", "a", "d"), outline("d", "a"));
    assert_eq!(joined(&open, "p", "a", "c"), outline("c", "a"), "it is closed");
    assert_eq!(joined(&open, "p", "b", "d"), line("b", "d"));
    let closed = draft("(name: \"e\", from: \"a\", by: [straight(\"b\"), straight(\"c\"), straight(\"a\")])");
    assert_eq!(joined(&closed, "p", "a", "d"), line("a", "d"));
}

#[test]
fn several_changes_are_one_and_all_or_nothing() {
    let mut work = work(PANEL);
    let before = file::write(work.draft());
    let point = |name: &str, at: &str| Command::Piece(PieceCommand::AddPoint("panel".into(), name.into(), at.into()));
    let line =
        |to: &str| Command::Piece(PieceCommand::AddLine("panel".into(), "dart_line".into(), ["a".into(), to.into()]));
    let refused = work.run(&Command::Several("draw".into(), vec![point("e", "top.at(1/2)"), line("f")]));
    assert!(refused.unwrap_err().to_string().contains("no point `f`"));
    assert_eq!(file::write(work.draft()), before);
    work.run(&Command::Several("draw".into(), vec![point("e", "top.at(1/2)"), line("e")])).unwrap();
    assert!(file::write(work.draft()).contains("(name: \"dart_line\", from: \"a\", by: [straight(\"e\")])"));
    assert_eq!(work.undo(), Some("draw".into()));
    assert_eq!(file::write(work.draft()), before);
}
