//! The tape: places, what lies between them, and the formulas that measure it.

use kurbo::Point;
use tracewheel::file;
use tracewheel::session::{Sight, TapeStop, Work, tape_between};

/// A panel of 30 by 40 cm in a frame of its own, with a line from corner to corner.
const PANEL: &str = "(format: \"tracewheel draft\", version: 0, pieces: [(name: \"panel\", points: [(name: \"a\", at: \"(0 cm, 0 cm)\"), (name: \"b\", at: \"(30 cm, 0 cm)\"), (name: \"c\", at: \"(30 cm, 40 cm)\"), (name: \"d\", at: \"(0 cm, 40 cm)\")],
    edges: [(name: \"top\", from: \"a\", by: [straight(\"b\")]), (name: \"side\", from: \"b\", by: [straight(\"c\")]), (name: \"hem\", from: \"c\", by: [straight(\"d\")]), (name: \"centre\", from: \"d\", by: [straight(\"a\")])],
    lines: [(name: \"slant\", from: \"a\", by: [straight(\"c\")])])],
    chart: (girth: [\"S\"], rows: []))";

fn stops(work: &Work, places: &[(f64, f64)]) -> Vec<TapeStop> {
    let sight = Sight::of(work.computed(), "panel", 0).unwrap();
    places.iter().map(|(x, y)| sight.stop(Point::new(*x, *y), 5.0, 2.0).unwrap_or_else(|| panic!("{x}, {y}"))).collect()
}

/// What a way measures, mm.
fn measured(work: &Work, way: &str) -> f64 {
    let model = work.computed().model.as_ref().unwrap();
    let trial = tracewheel::compute::Trial::new(work.draft(), &model.plan);
    let formula = trial.read(None, way, tracewheel::language::What::Kind(tracewheel::language::Kind::LENGTH));
    trial.value(model, 0, &formula.unwrap()).unwrap().real().unwrap()
}

#[test]
fn straight_along_an_edge_and_both_ways_around() {
    let work = Work::here(file::read(PANEL).unwrap().draft);
    // Where, the ways, and what each measures: a rectangle of 300 by 400, so by hand.
    for (places, ways) in [
        // A whole edge, and the other way around.
        (
            [(0.0, 0.0), (300.0, 0.0)],
            vec![
                ("gap(panel.a, panel.b)", 300.0),
                ("length(panel.top)", 300.0),
                ("length(panel.side) + length(panel.hem) + length(panel.centre)", 1100.0),
            ],
        ),
        // Corner to corner: the line between, and around two corners.
        (
            [(0.0, 0.0), (300.0, 400.0)],
            vec![
                ("gap(panel.a, panel.c)", 500.0),
                ("length(panel.slant)", 500.0),
                ("length(panel.top) + length(panel.side)", 700.0),
                ("length(panel.hem) + length(panel.centre)", 700.0),
            ],
        ),
        // Within an edge, both directions.
        (
            [(50.0, 1.0), (151.0, 2.0)],
            vec![
                ("gap(panel.top.at(5 cm), panel.top.at(1/2))", 100.0),
                ("length(part(panel.top, panel.top.at(5 cm), panel.top.at(1/2)))", 100.0),
                (
                    "length(part(panel.top, panel.top.at(1/2), panel.b)) + length(panel.side) + length(panel.hem) + length(panel.centre) + length(part(panel.top, panel.a, panel.top.at(5 cm)))",
                    1300.0,
                ),
            ],
        ),
        (
            [(151.0, 2.0), (50.0, 1.0)],
            vec![
                ("gap(panel.top.at(1/2), panel.top.at(5 cm))", 100.0),
                (
                    "length(part(panel.top, panel.top.at(1/2), panel.b)) + length(panel.side) + length(panel.hem) + length(panel.centre) + length(part(panel.top, panel.a, panel.top.at(5 cm)))",
                    1300.0,
                ),
                ("length(part(panel.top, panel.top.at(5 cm), panel.top.at(1/2)))", 100.0),
            ],
        ),
        // Around one corner, from within an edge to within the next.
        (
            [(250.0, 0.0), (299.0, 60.0)],
            vec![
                ("gap(panel.top.at(25 cm), panel.side.at(6 cm))", 50.0f64.hypot(60.0)),
                (
                    "length(part(panel.top, panel.top.at(25 cm), panel.b)) + length(part(panel.side, panel.b, panel.side.at(6 cm)))",
                    110.0,
                ),
                (
                    "length(part(panel.side, panel.side.at(6 cm), panel.c)) + length(panel.hem) + length(panel.centre) + length(part(panel.top, panel.a, panel.top.at(25 cm)))",
                    1290.0,
                ),
            ],
        ),
    ] {
        let stops = stops(&work, &places);
        let found = tape_between(work.draft(), &stops[0], &stops[1]);
        // These ways and no others.
        assert_eq!(found, ways.iter().map(|w| w.0).collect::<Vec<_>>(), "{places:?}");
        for (way, mm) in ways {
            assert!((measured(&work, way) - mm).abs() < 1e-6, "{way}: {}", measured(&work, way));
        }
    }
}

#[test]
fn between_two_pieces_the_tape_is_lifted_and_nowhere_is_no_place() {
    let two = PANEL.replace("pieces: [", "pieces: [(name: \"other\", points: [(name: \"a\", at: \"(0 cm, 0 cm)\")]), ");
    let work = Work::here(file::read(&two).unwrap().draft);
    let here = stops(&work, &[(0.0, 0.0)]).remove(0);
    let there = Sight::of(work.computed(), "other", 0).unwrap().stop(Point::ZERO, 5.0, 2.0).unwrap();
    assert!(tape_between(work.draft(), &here, &there).is_empty());
    assert!(tape_between(work.draft(), &here, &here).is_empty());
    let sight = Sight::of(work.computed(), "panel", 0).unwrap();
    assert_eq!(sight.stop(Point::new(100.0, 80.0), 5.0, 2.0), None);
    assert!(Sight::of(work.computed(), "gone", 0).is_none());
}
