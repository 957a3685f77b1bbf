//! A garment derived from a block (`examples/panel-top.ron`): its mates agree in every size, it follows the block, its panels are the block.

use std::sync::Arc;

use tracewheel::compute::Engine;
use tracewheel::document::{Address, Draft, Inner, Part};
use tracewheel::file;
use tracewheel::session::{Command, TextCommand, Work};

/// How far lengths that must be equal may differ, mm.
const WITHIN: f64 = 1e-3;

fn garment() -> (String, Draft) {
    let text = std::fs::read_to_string("examples/panel-top.ron").unwrap();
    let draft = file::read(&text).unwrap().draft;
    (text, draft)
}

/// The values of formulas in every case, persons too: mm, mm2, radians.
fn values<const N: usize>(draft: &Draft, formulas: [&str; N]) -> Vec<(String, [f64; N])> {
    let model = Engine::new().compute_with(draft, &formulas);
    assert_eq!(model.findings, Vec::new());
    (0..model.cases.len())
        .map(|case| {
            let value = |i: usize| {
                let node = model.plan.extras[i].unwrap_or_else(|| panic!("{} cannot be read", formulas[i]));
                model.item(case, node).and_then(|i| i.real()).unwrap_or_else(|| panic!("{} has no value", formulas[i]))
            };
            (model.plan.cases.list[case].address.to_string(), std::array::from_fn(value))
        })
        .collect()
}

/// Differences of what is sewn to each other, each nothing where the mates agree.
const MATES: [&str; 5] = [
    "length(back_centre_panel.panel) - length(back_side_panel.panel)",
    "length(front_centre_panel.panel) - length(front_side_panel.panel)",
    "length(back_centre_panel.armhole) + length(back_side_panel.armhole) - length(back_facing.armhole)",
    "length(front_side_panel.armhole) - length(front_facing.armhole)",
    "place(back_centre_panel.panel, back_centre_panel.blade) - (length(back_side_panel.panel) - place(back_side_panel.panel, back_side_panel.blade))",
];

fn mates_agree(draft: &Draft) -> usize {
    let found = values(draft, MATES);
    for (size, apart) in &found {
        for (mate, apart) in MATES.iter().zip(apart) {
            assert!(apart.abs() <= WITHIN, "{size}: {mate} is {apart}");
        }
    }
    found.len()
}

#[test]
fn mates_agree_in_every_size() {
    let (_, draft) = garment();
    assert_eq!(mates_agree(&draft), draft.chart.girth.len() + draft.chart.persons.len());
    for (size, [ease, side, facings]) in values(
        &draft,
        [
            "length(back_centre_panel.shoulder) - length(front_centre_panel.shoulder) - length(front_side_panel.shoulder)",
            "length(back_side_panel.side) - length(front_side_panel.side)",
            "length(back_facing.shoulder) - length(front_facing.shoulder)",
        ],
    ) {
        assert!((ease - 5.0).abs() <= WITHIN, "{size}: shoulder ease {ease}");
        assert!(side.abs() <= WITHIN && facings.abs() <= WITHIN, "{size}: side {side}, facings {facings}");
    }
}

#[test]
fn the_garment_follows_its_block_and_comes_back() {
    let (text, draft) = garment();
    let places = [
        "back.tip.x",
        "back.tip.y",
        "back_centre_panel.tip.x",
        "back_centre_panel.tip.y",
        "back_facing.tip.x",
        "back_facing.tip.y",
        "front.tip.x",
        "front.tip.y",
        "front_side_panel.tip.x",
        "front_side_panel.tip.y",
    ];
    let before = values(&draft, places);
    let mut work = Work::here(draft);
    for piece in ["back", "front"] {
        let at = Address::new(Part::Inner(piece.to_owned(), Inner::Point, "tip".to_owned()), "at");
        let now = format!("{}.moved(offset(4 mm, -3 mm))", work.draft().text(&at).unwrap());
        work.run(&Command::Text(TextCommand::Set(at, now))).unwrap();
    }
    let moved = work.draft().clone();
    assert_ne!(file::write(&moved), text);
    for ((size, a), (_, b)) in before.iter().zip(values(&moved, places)) {
        let way = |i: usize| (b[i] - a[i], b[i + 1] - a[i + 1]);
        // What is only cut moves as the block does; what is turned with a dart moves as far, in its own direction.
        for i in [0, 2, 4, 6] {
            let (x, y) = way(i);
            assert!((x - 4.0).abs() <= 1e-9 && (y + 3.0).abs() <= 1e-9, "{size}: {} moves by {x}, {y}", places[i]);
        }
        let (x, y) = way(8);
        assert!((x.hypot(y) - 5.0).abs() <= 1e-9, "{size}: the turned tip moves by {x}, {y}");
        assert!((x - 4.0).hypot(y + 3.0) > 0.1, "{size}: it is turned");
    }
    mates_agree(&moved);
    while work.undo().is_some() {}
    assert_eq!(file::write(work.draft()), text);
}

/// Panels as they are cut, before anything else is done to them.
fn as_cut(draft: &Draft) -> Draft {
    let mut draft = draft.clone();
    for piece in draft.pieces.iter_mut().filter(|p| p.name.ends_with("_panel")) {
        let piece = Arc::make_mut(piece);
        piece.steps.truncate(1);
        piece.folds.clear();
        piece.marks.clear();
        piece.allowances.clear();
        piece.cuts.clear();
    }
    // What stands on later steps would be told as missing.
    draft.seams.clear();
    draft.measures.clear();
    draft.strips.clear();
    draft
}

/// A dart on a straight edge is an equal-legged triangle: half the square of its leg times the sine of its angle.
#[test]
fn panels_are_the_block_less_its_darts() {
    let draft = as_cut(&garment().1);
    let triangle = |leg: f64, radians: f64| leg * leg * radians.sin() / 2.0;
    for (size, [back, centre, side, leg, angle]) in values(
        &draft,
        [
            "area(back)",
            "area(back_centre_panel)",
            "area(back_side_panel)",
            "gap(back.waist_dart.tip, back.waist_dart.first_foot)",
            "corner_angle(back.waist_dart.first_foot, back.waist_dart.tip, back.waist_dart.second_foot)",
        ],
    ) {
        let want = back - triangle(leg, angle);
        assert!((centre + side - want).abs() <= 1e-6 * want, "{size}: back {} of {want}", centre + side);
    }
    for (size, [front, body, centre, side, leg, angle, far]) in values(
        &draft,
        [
            "area(front)",
            "area(front_body)",
            "area(front_centre_panel)",
            "area(front_side_panel)",
            "gap(front.waist_dart.tip, front.waist_dart.first_foot)",
            "corner_angle(front.waist_dart.first_foot, front.waist_dart.tip, front.waist_dart.second_foot)",
            "gap(front.waist_dart.tip, front.shoulder.at(1/2))",
        ],
    ) {
        let want = front - triangle(leg, angle);
        assert!((centre + side - want).abs() <= 1e-6 * want, "{size}: front {} of {want}", centre + side);
        // A third of the angle went to the shoulder.
        let whole = want + triangle(leg, angle * 2.0 / 3.0) + triangle(far, angle / 3.0);
        assert!((body - whole).abs() <= 1e-6 * whole, "{size}: turned {body}, wanted {whole}");
    }
}
