//! Garments derived from blocks (`examples/panel-top.ron`, `examples/yoke-skirt.ron`): mates agree in every size, they follow their block
//! and come back with it, what cannot follow is said, panels are the block.

use std::sync::Arc;

use tracewheel::base::{Code, Finding, Severity};
use tracewheel::compute::{Engine, Model};
use tracewheel::document::{Address, Draft, Inner, Part};
use tracewheel::file;
use tracewheel::session::{Command, Deletion, PartCommand, TextCommand, Work};

/// How far lengths that must be equal may differ, mm.
const WITHIN: f64 = 1e-3;

fn garment(name: &str) -> (String, Draft) {
    let text = std::fs::read_to_string(format!("examples/{name}.ron")).unwrap();
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
const TOP: [&str; 8] = [
    "length(back_centre_panel.panel) - length(back_side_panel.panel)",
    "length(front_centre_panel.panel) - length(front_side_panel.panel)",
    "length(back_centre_panel.armhole) + length(back_side_panel.armhole) - length(back_facing.armhole)",
    "length(front_side_panel.armhole) - length(front_facing.armhole)",
    "place(back_centre_panel.panel, back_centre_panel.blade) - (length(back_side_panel.panel) - place(back_side_panel.panel, back_side_panel.blade))",
    "length(back_side_panel.waist) + length(back_centre_panel.waist) - length(back_hem_facing.side_waist) - length(back_hem_facing.waist)",
    "length(back_hem_facing.side_side) - length(front_hem_facing.side_side)",
    "length(front_side_panel.waist) - length(front_hem_facing.side_waist)",
];
const SKIRT: [&str; 8] = [
    "length(back_yoke.yoke) - length(back_skirt.yoke)",
    "length(front_yoke.yoke) - length(front_skirt.yoke)",
    "length(back_skirt.side) - length(front_skirt.side)",
    "length(back_yoke.side) - length(front_yoke.side)",
    "length(back_yoke.waist) - length(back_facing.waist)",
    "length(front_yoke.waist) - length(front_facing.waist)",
    "length(back_facing.inner) - length(back_lining.inner)",
    "length(front_facing.inner) - length(front_lining.inner)",
];

fn mates_agree(draft: &Draft, mates: [&str; 8]) -> usize {
    let found = values(draft, mates);
    for (size, apart) in &found {
        for (mate, apart) in mates.iter().zip(apart) {
            assert!(apart.abs() <= WITHIN, "{size}: {mate} is {apart}");
        }
    }
    found.len()
}

#[test]
fn mates_agree_in_every_size() {
    for (name, mates) in [("panel-top", TOP), ("yoke-skirt", SKIRT)] {
        let (_, draft) = garment(name);
        assert_eq!(mates_agree(&draft, mates), draft.chart.girth.len() + draft.chart.persons.len());
        assert!(draft.chart.girth.len() >= 12);
    }
    for (size, [ease, side, facings]) in values(
        &garment("panel-top").1,
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

/// The skirt's lining ends as far above its hem as is said, its facing is as deep, and the hem hangs as the block's did.
#[test]
fn lining_and_facing_of_the_skirt_are_taken_from_its_shell() {
    for (size, [lining, facing, back, front]) in values(
        &garment("yoke-skirt").1,
        [
            "length(back_skirt.side) + length(back_yoke.side) - length(back_facing.side) - length(back_lining.side)",
            "length(front_facing.centre)",
            "gap(back_skirt.hem_side, back_skirt.hip_side) - gap(back.hem_side, back.hip_side)",
            "length(front_skirt.centre) + length(front_yoke.centre) - length(front.centre)",
        ],
    ) {
        assert!((lining - 20.0).abs() <= WITHIN, "{size}: {lining}");
        assert!((facing - 40.0).abs() <= WITHIN, "{size}: {facing}");
        assert!(back.abs() <= WITHIN && front.abs() <= WITHIN, "{size}: {back} {front}");
    }
}

/// What is wrong with seams and with whatever cannot be computed; not what the garment then measures.
fn wrong(work: &Work) -> Vec<&Finding> {
    let loud = |f: &&Finding| f.severity() == Severity::Error && f.code != Code::EaseOff;
    work.computed().findings.iter().filter(loud).collect()
}

/// How far the outline of each derived piece has moved at its corners and in the middle of its edges, by size, mm.
fn moved(before: &Model, after: &Model, piece: &str) -> Vec<f64> {
    let find = |m: &Model| m.plan.frames().iter().position(|f| &*f.name == piece).unwrap();
    let (a, b) = (&before.plan.frames()[find(before)], &after.plan.frames()[find(after)]);
    assert_eq!(a.edges.len(), b.edges.len());
    (0..before.cases.len())
        .map(|case| {
            let places = |m: &Model, node: u32| {
                let edge = m.item(case, node).and_then(|i| i.edge()).unwrap_or_else(|| panic!("{piece} in {case}"));
                [0.0, 0.5].map(|share| edge.curve.point_at(share * edge.flat_length()).unwrap())
            };
            let pairs =
                a.edges.iter().zip(&b.edges).flat_map(|(e, f)| places(before, *e).into_iter().zip(places(after, *f)));
            pairs.map(|(p, q)| (q - p).length()).fold(0.0, f64::max)
        })
        .collect()
}

/// A change of the block: the garment, what is changed (piece, point, how), the pieces that must follow.
const CHANGES: [(&str, &[(&str, &str, &str)], &[&str]); 3] = [
    // The shoulder.
    (
        "panel-top",
        &[("back", "tip", "offset(4 mm, -3 mm)"), ("front", "tip", "offset(4 mm, -3 mm)")],
        &["back_centre_panel", "back_side_panel", "back_facing", "front_side_panel", "front_facing"],
    ),
    // The side at the waist.
    (
        "panel-top",
        &[("back", "waist_side", "offset(6 mm, 4 mm)"), ("front", "waist_side", "offset(6 mm, 4 mm)")],
        &[
            "back_side_panel",
            "front_side_panel",
            "back_hem_facing",
            "front_hem_facing",
            "back_centre_panel",
            "front_centre_panel",
        ],
    ),
    // The hip line and the side.
    (
        "yoke-skirt",
        &[("back", "hip_side", "offset(5 mm, 10 mm)"), ("front", "hip_side", "offset(5 mm, 10 mm)")],
        &[
            "back_yoke",
            "back_skirt",
            "back_lining",
            "back_facing",
            "front_yoke",
            "front_skirt",
            "front_lining",
            "front_facing",
        ],
    ),
];

#[test]
fn garments_follow_their_block_and_come_back() {
    for (name, changes, pieces) in CHANGES {
        let (text, draft) = garment(name);
        let mates = if name == "panel-top" { TOP } else { SKIRT };
        let mut work = Work::here(draft);
        let first = Arc::clone(work.computed());
        assert_eq!(wrong(&work), Vec::<&Finding>::new());
        for (piece, point, by) in changes {
            let at = Address::new(Part::Inner((*piece).to_owned(), Inner::Point, (*point).to_owned()), "at");
            let now = format!("({}).moved({by})", work.draft().text(&at).unwrap());
            work.run(&Command::Text(TextCommand::Set(at, now))).unwrap();
        }
        let changed = work.draft().clone();
        assert_ne!(file::write(&changed), text);
        // Every seam is true still, in every size; whatever is derived has followed in every size.
        assert_eq!(wrong(&work), Vec::<&Finding>::new(), "{name}");
        mates_agree(&changed, mates);
        let (before, after) = (first.model.as_ref().unwrap(), work.computed().model.as_ref().unwrap());
        for piece in pieces {
            for (case, by) in moved(before, after, piece).into_iter().enumerate() {
                assert!(by > 0.3, "{piece} moved by {by} in case {case}");
            }
        }
        while work.undo().is_some() {}
        assert_eq!(file::write(work.draft()), text);
        // The very same model, bit for bit.
        let again = work.computed().model.as_ref().unwrap();
        assert_eq!(again.cases.len(), before.cases.len());
        for (a, b) in again.cases.iter().zip(&before.cases) {
            assert_eq!(a.slots, b.slots, "{name}");
        }
        assert_eq!(work.computed().findings, first.findings);
    }
}

/// What is only cut moves as the block does; what is turned with a dart moves as far, in its own direction.
#[test]
fn a_shoulder_moves_as_its_block_does() {
    let (_, draft) = garment("panel-top");
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
    for ((size, a), (_, b)) in before.iter().zip(values(work.draft(), places)) {
        let way = |i: usize| (b[i] - a[i], b[i + 1] - a[i + 1]);
        for i in [0, 2, 4, 6] {
            let (x, y) = way(i);
            assert!((x - 4.0).abs() <= 1e-9 && (y + 3.0).abs() <= 1e-9, "{size}: {} moves by {x}, {y}", places[i]);
        }
        let (x, y) = way(8);
        assert!((x.hypot(y) - 5.0).abs() <= 1e-9, "{size}: the turned tip moves by {x}, {y}");
        assert!((x - 4.0).hypot(y + 3.0) > 0.1, "{size}: it is turned");
    }
}

/// A block without its dart: the step is named, what comes later sees the piece as it was before it.
#[test]
fn a_dart_that_is_gone_is_told_with_its_step() {
    let (text, draft) = garment("yoke-skirt");
    let mut work = Work::here(draft);
    let dart = Part::Inner("back".to_owned(), Inner::Dart, "waist_dart".to_owned());
    work.run(&Command::Part(PartCommand::Delete(dart, Deletion::LeaveBroken))).unwrap();
    let told: Vec<(Code, &str)> = wrong(&work).iter().map(|f| (f.code, f.place.name.as_str())).collect();
    assert_eq!(told, [(Code::StepFails, "back_shell, step to_the_hem")]);
    let formulas = ["length(back_yoke.waist) - length(back.waist)", "length(back_skirt.hem) - length(back.hem)"];
    let model = Engine::new().compute_with(work.draft(), &formulas);
    for case in 0..model.cases.len() {
        let value = |i: usize| model.item(case, model.plan.extras[i].unwrap()).and_then(|i| i.real()).unwrap();
        // The waist is drawn anew by the next step; the hem is not opened any more.
        assert!(value(0).abs() < 3.0 && value(1).abs() <= WITHIN, "{} {}", value(0), value(1));
    }
    work.undo();
    assert_eq!(file::write(work.draft()), text);
    assert_eq!(wrong(&work), Vec::<&Finding>::new());
}

/// A block that is too short for the yoke in three sizes: the step and the sizes are named, the other nine are whole.
#[test]
fn a_step_that_some_sizes_cannot_have_names_them() {
    let (_, draft) = garment("yoke-skirt");
    let mut work = Work::here(draft);
    let at = Address::new(Part::Value("skirt_length".to_owned()), "is");
    let short = "graded(hip, at: [120 cm, 121 cm], give: [58 cm, 5 cm])".to_owned();
    work.run(&Command::Text(TextCommand::Set(at, short))).unwrap();
    let told = wrong(&work);
    let of = |piece: &str| told.iter().filter(|f| f.place.piece == piece).collect::<Vec<_>>();
    for (piece, step) in
        [("back_shell", "style_lines"), ("back_yoke", "yoke"), ("front_skirt", "yoke"), ("back_lining", "shorter")]
    {
        let found = of(piece);
        assert_eq!(found.len(), 1, "{piece}: {found:#?}");
        assert_eq!(found[0].place.name, format!("{piece}, step {step}"));
        assert_eq!(found[0].sizes, ["116", "122", "128"], "{piece}");
    }
    let model = Engine::new().compute_with(work.draft(), &["area(back_yoke)"]);
    let area = |case: usize| model.item(case, model.plan.extras[0].unwrap()).and_then(|i| i.real());
    for (case, size) in
        ["76", "80", "84", "88", "92", "96", "100", "104", "110", "116", "122", "128"].iter().enumerate()
    {
        assert_eq!(area(case).is_some(), case < 9, "{size}");
    }
}

/// Panels as they are cut, before anything else is done to them.
fn as_cut(draft: &Draft) -> Draft {
    let mut draft = draft.clone();
    draft.pieces.retain(|p| !p.name.ends_with("_hem") && !p.name.ends_with("_hem_facing"));
    for piece in draft.pieces.iter_mut().filter(|p| p.steps.iter().any(|s| s.name == "panel")) {
        Arc::make_mut(piece).steps.retain(|s| s.name == "panel");
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
    let draft = as_cut(&garment("panel-top").1);
    let triangle = |leg: f64, radians: f64| leg * leg * radians.sin() / 2.0;
    for (size, [back, centre, side, leg, angle]) in values(
        &draft,
        [
            "area(back)",
            "area(back_centre_panel)",
            "area(back_side_body)",
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
            "area(front_centre_body)",
            "area(front_side_body)",
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
