//! Findings of seams in detail, of finishing, cutting, finished measures and the range: for each a draft in which it fires; the draft
//! from which it is made is finished and clean.

use tracewheel::base::{Code, DisplayUnit, Severity};
use tracewheel::compute::Engine;
use tracewheel::file;
use tracewheel::proof::proof;
use tracewheel::texts::message;

use crate::finishing::{made, polygon};

/// What all fixtures stand in: finished, and clean in four sizes.
const DRAFT: &str = r#"(
    format: "tracewheel draft", version: 0, display: cm, settings: (allowance: "15 mm"),
    chart: (
        girth: ["S", "M", "L", "XL"], base: "M",
        rows: [
            (name: "bust", kind: body, by: [girth], cells: [("S", "84 cm"), ("M", "88 cm"), ("L", "92 cm"), ("XL", "96 cm")]),
            (name: "head", kind: body, by: [girth], cells: [("S", "55 cm"), ("M", "56 cm"), ("L", "57 cm"), ("XL", "58 cm")]),
            (name: "odd", kind: house, by: [girth], cells: [("S", "0 cm"), ("M", "0 cm"), ("L", "0 cm"), ("XL", "0 cm")]),
        ],
    ),
    pieces: [
        (
            name: "back",
            points: [
                (name: "a", at: "(0 cm, 0 cm)"), (name: "b", at: "a.right(bust / 4 + 2 cm)"), (name: "c", at: "b.down(40 cm + odd)"), (name: "d", at: "a.down(40 cm + odd)"),
                (name: "mid", at: "b.down(20 cm)"),
            ],
            edges: [
                (name: "top", from: "a", by: [straight("b")]), (name: "side", from: "b", by: [straight("c")]),
                (name: "hem", from: "c", by: [straight("d")]), (name: "centre", from: "d", by: [straight("a")]),
            ],
            darts: [(name: "dart", on: "top", centre: "1/2", intake: "2 cm", tip: "10 cm")],
            allowances: [(edge: "hem", width: "3 cm", turns: 1)],
            cuts: [(material: "main", count: 2, grain: (heading: "90°", along: "centre"))],
            label: (at: "a.right(5 cm).down(20 cm)"),
        ),
        (
            name: "front",
            points: [
                (name: "a", at: "(0 cm, 0 cm)"), (name: "b", at: "a.right(bust / 4 + 1 cm)"), (name: "c", at: "b.down(40 cm + odd)"), (name: "d", at: "a.down(40 cm + odd)"),
                (name: "fold_a", at: "a.down(2 cm)"), (name: "fold_b", at: "b.down(2 cm)"), (name: "sewn_a", at: "a.down(4 cm)"), (name: "sewn_b", at: "b.down(4 cm)"),
            ],
            edges: [
                (name: "top", from: "a", by: [straight("b")]), (name: "side", from: "b", by: [straight("c")]),
                (name: "hem", from: "c", by: [straight("d")]), (name: "centre", from: "d", by: [straight("a")]),
            ],
            lines: [(name: "fold_line", from: "fold_a", by: [straight("fold_b")]), (name: "sewn", from: "sewn_a", by: [straight("sewn_b")])],
            folds: [(name: "casing", line: "fold_line", over: ["top"], onto: ["sewn"], turns: 1)],
            marks: [(name: "buttons", kind: button, at: "a.right(2 cm).down(5 cm)", to: "a.right(2 cm).down(35 cm)", count: 4, fixed: "a.right(2 cm).down(15 cm)")],
            allowances: [(edge: "top", width: "0 cm"), (edge: "hem", width: "3 cm", turns: 1)],
            cuts: [(material: "main", count: 1, on_fold: "centre", grain: (heading: "90°"))],
        ),
    ],
    seams: [
        (name: "side", one: ["back.side"], two: ["front.side"], fit: equal, notches: [(name: "n", at: "10 cm", strokes: 1)], order: "1"),
        (name: "top", one: ["back.top"], two: ["strip.band / 2"], fit: gathered(longer: one, least: "1", most: "1.5"), order: "2", closure: "5 cm"),
    ],
    measures: [
        (name: "round", is: "2 * (gap(back.a, back.b) + gap(front.a, front.b))", body: "bust", ease_least: "5 cm", ease_most: "7 cm", drift_most: "5 mm"),
        (name: "neck", is: "28 cm + head / 2 - 1 mm", passes: "head", stretch: "5 %"),
    ],
    materials: [(name: "main")],
    strips: [(name: "band", length: "2 * (gap(back.a, back.b) - 2 cm)")],
)"#;

/// Code, what is replaced in the draft, by what, where it is told, a part of the message.
pub const FIRING: &[(Code, &str, &str, &str, &str)] = &[
    (
        Code::StretchOff,
        "fit: equal, notches",
        "fit: equal, stretches: [(to_one: \"back.mid\", to_two: \"front.c\"), (to_one: \"back.b\", to_two: \"\"), ()], notches",
        "seam.side",
        "stretch 2 ends before it starts on side one",
    ),
    (
        Code::SharesOff,
        "fit: equal, notches",
        "fit: eased(longer: one, by: \"0 mm\"), stretches: [(to_one: \"back.mid\", to_two: \"front.b.down(20 cm)\", share: \"1/2\"), (share: \"1/4\")], notches",
        "seam.side",
        "the shares of its stretches add up to 0.75, not to 1",
    ),
    (
        Code::NoFullness,
        "gathered(longer: one, least: \"1\", most: \"1.5\")",
        "gathered(longer: one, times: \"1\")",
        "seam.top",
        "seam top is said to be gathered, but back.top is 1 times as long as strip.band / 2; say how many times it is meant to be, such as `times: \"1.5\"`",
    ),
    (
        Code::FullnessOff,
        "least: \"1\", most: \"1.5\"",
        "least: \"1.2\"",
        "seam.top",
        "seam top: back.top is 1 times as long as strip.band / 2, meant at least 1.2",
    ),
    (
        Code::NotchOff,
        "at: \"10 cm\"",
        "at: \"50 cm\"",
        "seam.side",
        "notch n of seam side has no place on side one: it would lie beyond the end, 100.0 mm away",
    ),
    (
        Code::NotchApart,
        "at: \"10 cm\"",
        "at: \"10 cm\", other: \"10.4 cm\"",
        "seam.side",
        "notch n of seam side is told at 10.4 cm on side two and would meet its mate at 10 cm: 4 mm off, limit 1 mm",
    ),
    (
        Code::NotchNear,
        "settings: (",
        "settings: (notch_depth: \"13 mm\", ",
        "",
        "notch n of seam side is cut 13 mm deep into an allowance of 15 mm on back.side: 2 mm left, limit 3.18 mm",
    ),
    (
        Code::ClosureOff,
        "closure: \"5 cm\"",
        "closure: \"25 cm\"",
        "seam.top",
        "the closure of seam top ends at 25 cm, but the side is only 21 cm long (4 sizes",
    ),
    (
        Code::DartLegs,
        "tip: \"10 cm\"",
        "tip: \"halfway(a, b).down(10 cm).right(3 cm)\"",
        "back.dart",
        "the legs of back.dart are 10.77 cm and 10.2 cm: 5.72 mm apart, limit 1 mm; swing the shorter one about the tip, or move the tip",
    ),
    (
        Code::FoldBent,
        "from: \"fold_a\", by: [straight(\"fold_b\")]",
        "from: \"fold_a\", by: [curve(\"fold_a.right(5 cm).down(1 cm)\", \"fold_b.left(5 cm).down(1 cm)\", \"fold_b\")]",
        "front.casing",
        "front.casing folds along front.fold_line, which is bent by 7.5 mm: cloth folds along a straight line only, so make it an edge and a seam",
    ),
    (
        Code::FoldApart,
        "a.down(4 cm)\"), (name: \"sewn_b\"",
        "a.down(4.3 cm)\"), (name: \"sewn_b\"",
        "front.casing",
        "front.casing: folded over, top lies 3 mm away from sewn, limit 1 mm",
    ),
    (
        Code::FoldNotSquare,
        "(name: \"d\", at: \"a.down(40 cm + odd)\"),\n                (name: \"fold_a\"",
        "(name: \"d\", at: \"a.down(41 cm + odd)\"),\n                (name: \"fold_a\"",
        "front.d",
        "front.hem meets front.centre at 87.",
    ),
    (
        Code::HemFull,
        "from: \"c\", by: [straight(\"d\")]), (name: \"centre\", from: \"d\", by: [straight(\"a\")]),\n            ],\n            darts",
        "from: \"c\", by: [curve(\"c.left(5 cm).down(3 cm)\", \"d.right(5 cm).down(3 cm)\", \"d\")]), (name: \"centre\", from: \"d\", by: [straight(\"a\")]),\n            ],\n            darts",
        "back.hem",
        "the turned edge of back.hem has",
    ),
    (
        Code::NotCut,
        "cuts: [(material: \"main\", count: 2, grain: (heading: \"90°\", along: \"centre\"))],",
        "",
        "back",
        "nothing says from which cloth back is cut, and how often",
    ),
    (
        Code::GrainMissing,
        "grain: (heading: \"90°\", along: \"centre\")",
        "grain: (along: \"centre\")",
        "back",
        "back has no grain line for main: give the heading of its lengthwise thread",
    ),
    (
        Code::GrainOff,
        "heading: \"90°\", along",
        "heading: \"91°\", along",
        "back",
        "the grain of back is 1° off back.centre: 6.98 mm over its length, limit 0.25°; its heading would be `heading` of back.centre",
    ),
    (
        Code::FaceOnFold,
        "on_fold: \"centre\",",
        "on_fold: \"centre\", face: right_side_up,",
        "front",
        "front lies on a fold of main and shows one face: cut on the fold it comes as both halves",
    ),
    (
        Code::AllowanceMissing,
        "settings: (allowance: \"15 mm\"),",
        "",
        "back.top",
        "nothing tells the allowance of back.top: it is cut on its stitch line; give a width, also where it is meant to be 0",
    ),
    (
        Code::AllowanceBad,
        "(edge: \"top\", width: \"0 cm\")",
        "(edge: \"top\", width: \"0 cm - bust / 88\")",
        "front.top",
        "the allowance of front.top is -10.91 mm: it must be 0 or more (4 sizes: S, M, L, XL, worst in XL)",
    ),
    (
        Code::CutCrosses,
        "by: [straight(\"c\")]),\n                (name: \"hem\", from: \"c\", by: [straight(\"d\")]), (name: \"centre\", from: \"d\", by: [straight(\"a\")]),\n            ],\n            darts",
        "by: [curve(\"b.left(30 cm).down(9.5 cm)\", \"b.left(30 cm).down(10.5 cm)\", \"mid\"), straight(\"c\")]),\n                (name: \"hem\", from: \"c\", by: [straight(\"d\")]), (name: \"centre\", from: \"d\", by: [straight(\"a\")]),\n            ],\n            darts",
        "back",
        "the cut line of back would cross itself where its allowance is wider than the place leaves room for, and was trimmed, near",
    ),
    (
        Code::CutFailed,
        "(name: \"main\")",
        "(name: \"main\", shrinkage_along: \"60 %\")",
        "back",
        "no cut line can be made for back: its cloth would shrink by less than nothing or by more than half",
    ),
    (
        Code::LabelOutside,
        "a.right(5 cm).down(20 cm)\"),\n        ),",
        "a.left(5 cm).down(20 cm)\"),\n        ),",
        "back.label",
        "the label of back would stand outside of it",
    ),
    (
        Code::MarkOutside,
        "to: \"a.right(2 cm).down(35 cm)\"",
        "to: \"a.right(2 cm).down(45 cm)\"",
        "front.buttons",
        "front.buttons lies 5 cm outside of front",
    ),
    (
        Code::PlaceFlat,
        "marks: [(name: \"buttons\"",
        "marks: [(name: \"shown\", kind: place, at: \"a\", piece: \"back\"), (name: \"buttons\"",
        "front.shown",
        "front.shown shows back as it is cut, the darts in it open: sewn it is smaller; mark its corners where they come to lie instead",
    ),
    (
        Code::RowMissesLevel,
        "fixed: \"a.right(2 cm).down(15 cm)\"",
        "fixed: \"a.right(2 cm).down(13 cm)\"",
        "front.buttons",
        "spread evenly, the nearest of front.buttons lies 20 mm from a.right(2 cm).down(13 cm): steps of 10 cm; with number 2 level with it the steps would be 8 cm and the row 24 cm long",
    ),
    (
        Code::EaseOff,
        "ease_most: \"7 cm\"",
        "ease_most: \"5.5 cm\"",
        "measure.round",
        "round is 90 cm over a body of 84 cm: ease 6 cm, meant 5 cm to 5.5 cm",
    ),
    (Code::OpeningSmall, "stretch: \"5 %\"", "stretch: \"0 %\"", "measure.neck", ""),
    (
        Code::EaseDrifts,
        "is: \"2 * (gap",
        "is: \"(bust - 84 cm) / 5 + 2 * (gap",
        "measure.round",
        "round differs from the base by 9.6 cm, the body by 8 cm: 16 mm of drift, limit 5 mm (3 sizes: S, L, XL, worst in XL)",
    ),
    (
        Code::OddSize,
        "(\"L\", \"0 cm\")",
        "(\"L\", \"1 cm\")",
        "back.side",
        "the length of back.side is 41 cm here; its neighbours suggest 40 cm, limit 3 mm (size L)",
    ),
];

/// Codes of this room with a test of their own, because they need more than one change; `face-missing` is `tests/cases/C074.ron`.
pub const BY_THEMSELVES: &[Code] =
    &[Code::SeamsAlike, Code::OrderCircular, Code::JointShaping, Code::HemShort, Code::FaceMissing];

fn told(text: &str) -> Vec<(Code, String, String)> {
    let draft = file::read(text).unwrap_or_else(|e| panic!("{e}")).draft;
    let model = Engine::new().compute(&draft);
    proof(&draft, &model).into_iter().map(|f| (f.code, f.place.name.clone(), message(&f, DisplayUnit::Cm))).collect()
}

/// What is not only told because a part is not used yet.
fn said(text: &str) -> Vec<(Code, String, String)> {
    told(text).into_iter().filter(|f| f.0 != Code::NotUsedYet).collect()
}

#[test]
fn the_draft_is_clean() {
    assert_eq!(said(DRAFT), Vec::new());
}

#[test]
fn every_finding_fires_where_it_should() {
    let mut wrong = Vec::new();
    for (code, from, to, at, text) in FIRING {
        assert!(DRAFT.contains(from), "{}: {from}", code.word());
        let found = said(&DRAFT.replacen(from, to, 1));
        let fits = |f: &&(Code, String, String)| f.0 == *code && (at.is_empty() || f.1 == *at) && f.2.contains(text);
        if !found.iter().any(|f| fits(&f)) {
            wrong.push(format!("{} at {at}: {text}\n     {found:?}", code.word()));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

fn both(from: &[(&str, &str)]) -> Vec<(Code, String, String)> {
    let mut text = DRAFT.to_owned();
    for (a, b) in from {
        assert!(text.contains(a), "{a}");
        text = text.replacen(a, b, 1);
    }
    said(&text)
}

#[test]
fn formulas_of_finishing_that_have_no_value_are_told_where_they_stand() {
    let cases = [
        ("a.right(5 cm).down(20 cm)\"),\n        ),", "swing(a, 9 m, top)\"),\n        ),", Code::NoAnswer, "back"),
        ("at: \"10 cm\"", "at: \"length(part(back.side, back.b, back.a))\"", Code::NotOnEdge, "seam.side"),
        ("closure: \"5 cm\"", "closure: \"5 cm / (bust - bust) * 1 cm\"", Code::NotFinite, "seam.top"),
        (
            "width: \"3 cm\", turns: 1)],\n            cuts: [(material: \"main\", count: 2",
            "width: \"place(hem, b)\", turns: 1)],\n            cuts: [(material: \"main\", count: 2",
            Code::NotOnEdge,
            "back.hem",
        ),
    ];
    for (from, to, code, at) in cases {
        let found = both(&[(from, to)]);
        let one: Vec<_> = found.iter().filter(|f| f.0 == code).collect();
        assert!(one.len() == 1 && one[0].1 == at && one[0].2.contains("4 sizes"), "{to}: {found:?}");
    }
    // A point of the other side is no place on this one.
    let found = both(&[("at: \"10 cm\"", "at: \"front.c\"")]);
    assert!(
        found.iter().any(|f| f.0 == Code::NotchOff && f.2.contains("not on that side; say `on` the other side")),
        "{found:?}"
    );
}

/// Darts and pleats of a piece that is shown on another are named; a piece without any is shown as it is sewn, and nothing is said.
#[test]
fn the_place_of_a_piece_with_darts_or_pleats_is_told() {
    let mark = |on: &str, shown: &str| {
        let place = format!("(name: \"shown\", kind: place, at: \"{on}.a\", piece: \"{shown}\")");
        if on == "front" {
            ("marks: [(name: \"buttons\"", format!("marks: [{place}, (name: \"buttons\""))
        } else {
            ("            label: (at", format!("            marks: [{place}],\n            label: (at"))
        }
    };
    let dart = "            darts: [(name: \"dart\", on: \"top\", centre: \"1/2\", intake: \"2 cm\", tip: \"10 cm\")],";
    let pleat = "pleats: [(name: \"pleat\", on: \"hem\", centre: \"1/2\", intake: \"2 cm\", depth: \"5 cm\")],";
    let told = |changes: &[(&str, &str)]| -> Vec<String> {
        both(changes).into_iter().filter(|f| f.0 == Code::PlaceFlat).map(|f| f.2).collect()
    };
    let (at, on_front) = mark("front", "back");
    let shown = (at, on_front.as_str());
    for (takes, more) in [
        ("the darts", String::from(dart)),
        ("the darts and pleats", format!("{dart} {pleat}")),
        ("the pleats", pleat.into()),
    ] {
        let found = told(&[shown, (dart, &more)]);
        let words = format!("front.shown shows back as it is cut, {takes} in it open: sewn it is smaller");
        assert!(found.len() == 1 && found[0].starts_with(&words), "{words}: {found:?}");
    }
    assert_eq!(told(&[shown, (dart, "")]), Vec::<String>::new(), "no darts, no pleats");
    let (at, on_back) = mark("back", "front");
    assert_eq!(told(&[(at, &on_back)]), Vec::<String>::new(), "the front has none, whatever the back has");
}

#[test]
fn seams_that_look_alike_are_told_once() {
    let second = "    measures: [";
    let seam = "(name: \"other\", one: [\"third.side\"], two: [\"fourth.side\"], fit: equal, notches: [(name: \"m\", at: \"10 cm\", strokes: 1)], order: \"1\"),";
    let piece = |name: &str| {
        format!("(name: \"{name}\", points: [(name: \"a\", at: \"(0 cm, 0 cm)\"), (name: \"b\", at: \"(9 cm, 0 cm)\"), (name: \"c\", at: \"(9 cm, 40 cm)\"), (name: \"d\", at: \"(0 cm, 40 cm)\")],
        edges: [(name: \"top\", from: \"a\", by: [straight(\"b\")]), (name: \"side\", from: \"b\", by: [straight(\"c\")]), (name: \"hem\", from: \"c\", by: [straight(\"d\")]), (name: \"front\", from: \"d\", by: [straight(\"a\")])],
        cuts: [(material: \"main\", count: 2, grain: (heading: \"90°\"))]),")
    };
    let pieces = format!("    pieces: [{}{}", piece("third"), piece("fourth"));
    let changes = [
        ("    pieces: [", pieces.as_str()),
        ("        (name: \"top\", one", &format!("        {seam}\n        (name: \"top\", one")),
        (second, second),
    ];
    let found = both(&changes);
    let alike: Vec<_> = found.iter().filter(|f| f.0 == Code::SeamsAlike).collect();
    assert_eq!(alike.len(), 1, "{found:?}");
    assert!(alike[0].2.starts_with("the seams side, other are equally long and notched alike"), "{alike:?}");
    // Two strokes instead of one tell them apart.
    let twice = seam.replace("strokes: 1", "strokes: 2");
    let changes = [
        ("    pieces: [", pieces.as_str()),
        ("        (name: \"top\", one", &format!("        {twice}\n        (name: \"top\", one")),
    ];
    assert!(both(&changes).iter().all(|f| f.0 != Code::SeamsAlike));
}

#[test]
fn seams_that_wait_for_each_other_are_told_once() {
    let found = both(&[("order: \"1\"", "order: \"after top\""), ("order: \"2\"", "order: \"after side\"")]);
    let circles: Vec<_> = found.iter().filter(|f| f.0 == Code::OrderCircular).collect();
    assert_eq!(circles.len(), 1, "{found:?}");
    assert_eq!(circles[0].2, "these seams wait for each other: side, top");
    // One after the other is an order.
    assert_eq!(both(&[("order: \"2\"", "order: \"after side\"")]), Vec::new());
}

#[test]
fn corners_sewn_all_round_are_told_as_shaping() {
    // Four wedges around a point: three of 90° and one of 80°.
    let wedge = |name: &str, deg: &str| {
        format!("(name: \"{name}\", points: [(name: \"a\", at: \"(0 cm, 0 cm)\"), (name: \"b\", at: \"(20 cm, 0 cm)\"), (name: \"c\", at: \"a.polar({deg}, 20 cm)\")],
        edges: [(name: \"one\", from: \"a\", by: [straight(\"b\")]), (name: \"out\", from: \"b\", by: [straight(\"c\")]), (name: \"two\", from: \"c\", by: [straight(\"a\")])]),")
    };
    let text = |last: &str| {
        let pieces: String =
            [("p", "90°"), ("q", "90°"), ("r", "90°"), ("s", last)].iter().map(|(n, d)| wedge(n, d)).collect();
        let seams: String = [("p", "q"), ("q", "r"), ("r", "s"), ("s", "p")]
            .iter()
            .map(|(a, b)| format!("(name: \"{a}{b}\", one: [\"reversed({a}.two)\"], two: [\"{b}.one\"]),"))
            .collect();
        let outs: String = [("p", "q"), ("q", "r"), ("r", "s"), ("s", "p")]
            .iter()
            .map(|(a, b)| format!("(name: \"{a}_{b}\", corners: [\"{a}.c\", \"{b}.b\"], meant: \"corner\"),"))
            .collect();
        format!(
            "(format: \"tracewheel draft\", version: 0, chart: (girth: [\"one\"]), pieces: [{pieces}], seams: [{seams}], joints: [{outs}])"
        )
    };
    let found = told(&text("80°"));
    assert_eq!(found.len(), 1, "{found:?}");
    assert_eq!(found[0].0.severity(), Severity::Note);
    assert!(found[0].2.contains("add up to 350°: 10° of shaping"), "{}", found[0].2);
    assert_eq!(told(&text("90°")), Vec::new());
}

#[test]
fn a_hem_with_plain_corners_on_a_tapered_piece_is_short() {
    let tapered = (
        "(name: \"c\", at: \"b.down(40 cm + odd)\"), (name: \"d\", at: \"a.down(40 cm + odd)\"),\n                (name: \"mid\"",
        "(name: \"c\", at: \"b.down(40 cm + odd).left(3 cm)\"), (name: \"d\", at: \"a.down(40 cm + odd)\"),\n                (name: \"mid\"",
    );
    let plain = (
        "            cuts: [(material: \"main\", count: 2",
        "            corners: [(at: \"c\", form: plain), (at: \"d\", form: plain)],\n            cuts: [(material: \"main\", count: 2",
    );
    let found = both(&[tapered, plain]);
    // 3 cm in 40 cm: 2.25 mm on 3 cm, mirrored and not.
    let short = found.iter().find(|f| f.0 == Code::HemShort).unwrap_or_else(|| panic!("{found:?}"));
    assert_eq!(short.1, "back.hem");
    assert!(short.2.contains("4.5 mm short on the piece"), "{}", short.2);
    assert!(both(&[tapered]).iter().all(|f| f.0 != Code::HemShort));
}

#[test]
fn a_check_can_be_switched_off_with_a_reason_and_is_then_named() {
    let moved = ("at: \"10 cm\"", "at: \"10 cm\", other: \"10.4 cm\"");
    let apart = |found: &[(Code, String, String)]| found.iter().any(|f| f.0 == Code::NotchApart);
    assert!(apart(&both(&[moved])));
    let off = ("settings: (", "settings: (unchecked: [(\"notch-apart\", \"marked by hand\")], ");
    assert!(!apart(&both(&[moved, off])));
    let without = ("settings: (", "settings: (unchecked: [(\"notch-apart\", \"\")], ");
    let found = both(&[moved, without]);
    assert!(apart(&found) && found.iter().any(|f| f.2.contains("is switched off without a reason")), "{found:?}");
    // What is wrong for certain cannot be switched off.
    let never = ("settings: (", "settings: (unchecked: [(\"not-true\", \"never mind\")], ");
    assert!(both(&[never]).iter().any(|f| f.2.contains("is not the code of a check that can be switched off")));
    let draft = file::read(&DRAFT.replacen(off.0, off.1, 1)).unwrap().draft;
    let model = Engine::new().compute(&draft);
    assert!(tracewheel::proof::looked_at(&draft, &model).contains("switched off: notch-apart"));
}

/// A strip is told off for its grain where a seam stretches it, on any stretch, and where it really is the shorter side.
#[test]
fn a_strip_is_stretched_where_any_stretch_of_its_seam_does_so() {
    let told = |length: &str, seam: &str| {
        let piece = polygon("p", &[(0.0, 0.0), (400.0, 0.0), (400.0, 300.0), (0.0, 300.0)], &[10.0; 4], "");
        let m = made(&format!(
            "pieces: [{piece}], materials: [(name: \"main\", widths: [\"150 cm\"])], strips: [(name: \"band\", material: \"main\", length: \"{length}\", width: \"1 cm\")],
            seams: [(name: \"band\", one: [\"p.e0\"], two: [\"strip.band\"], {seam})]"
        ));
        let findings = proof(&m.draft, &m.model);
        findings.iter().filter(|f| f.code == Code::StripGrainOff).count()
    };
    let stretched = "fit: stretched(shorter: two, times: \"0.9\")";
    assert_eq!(told("360 mm", stretched), 1);
    // As long as its edge, or longer: whatever the seam says, nothing stretches it.
    assert_eq!((told("400 mm", stretched), told("440 mm", stretched)), (0, 0));
    // Shorter, but the other side is the one that is gathered.
    assert_eq!(told("200 mm", "fit: gathered(longer: one, times: \"2\")"), 0);
    // Sewn flat over the first 100 mm, stretched behind.
    let in_part = format!(
        "fit: equal, stretches: [(to_one: \"p.e0.at(100 mm)\", to_two: \"100 mm\", fit: equal), ({stretched})]"
    );
    assert_eq!(told("370 mm", &in_part), 1);
}
