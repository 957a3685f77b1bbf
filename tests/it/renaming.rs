//! Renaming, "used by" and deleting: nothing that is computed changes, and nothing is forgotten.

use std::collections::BTreeSet;

use tracewheel::compute::{Engine, Model};
use tracewheel::document::{Axis, Draft, Inner, Part, Role};
use tracewheel::file;
use tracewheel::session::{
    DeleteError, Deleting, delete, delete_size, fresh_name, inner_parts, qualify_for, rename, rename_size, used_by,
    uses,
};

use crate::seeds::generate;

const DRAFT: &str = r#"(
    format: "tracewheel draft", version: 0, display: cm,
    chart: (
        girth: ["S", "M", "L"], base: "M",
        rows: [
            (name: "bust", by: [girth], cells: [("S", "84 cm"), ("M", "88 cm"), ("L", "92 cm")]),
            (name: "shoulder", by: [girth], is: "bust / 7"),
        ],
        persons: [(name: "somebody", cells: [("bust", "90 cm")])],
    ),
    values: [
        (name: "ease", is: "4 cm"),
        (name: "width", is: "bust / 4 + ease"),
        (name: "drop", start: "1 cm", least: "-5 cm", most: "30 cm"),
        (name: "in_large", is: "in_size(bust, \"L\")"),
        (name: "given", is: "main.stretch_across * 1 cm + material.main.selvedge"),
        (name: "paper", is: "area(back) / width(piece.front, level(front.a.down(1 cm))) + girth(level(front.a.down(2 cm)))"),
    ],
    pieces: [
        (
            name: "back",
            points: [
                (name: "a", at: "(0 cm, 0 cm)"),
                (name: "b", at: "a.right(width)"),
                (name: "c", at: "(b.x, 40 cm)"),
                (name: "d", at: "a.down(40 cm)"),
            ],
            edges: [
                (name: "top", from: "a", by: [straight("b")]),
                (name: "side", from: "b", by: [curve("on_way(b, c, 1/3)", "on_way(c, b, 1/3)", "c")]),
                (name: "hem", from: "c", by: [straight("d")]),
                (name: "centre", from: "d", by: [straight("a")]),
            ],
            darts: [(name: "dart", on: "top", centre: "1/2", intake: "2 cm", tip: "10 cm")],
            stack: ["b"],
        ),
        (
            name: "front",
            points: [
                (name: "a", at: "(0 cm, 0 cm)"),
                (name: "b", at: "a.right(bust / 4 + back.dart.intake)"),
                (name: "c", at: "b.down(30 cm + drop)"),
                (name: "d", at: "a.down(30 cm + drop)"),
            ],
            edges: [
                (name: "top", from: "a", by: [straight("b")]),
                (name: "side", from: "b", by: [straight("c")]),
                (name: "hem", from: "c", by: [straight("d")]),
                (name: "centre", from: "d", by: [straight("a")]),
            ],
        ),
    ],
    materials: [(name: "main", kind: cloth, selvedge: "1 cm", stretch_across: "20 %")],
    placements: [(name: "back_on_front", lay: "back", on: "front", point: "b", onto: "b", towards: "c", along: "c")],
    seams: [(name: "side", one: ["back.side"], two: ["front.side"], found_by: ["drop"]), (name: "other", one: ["back.top"], two: ["front.top"], order: "after side")],
    conditions: [(name: "wide", must: "gap(back.a, front.b) >= 20 cm"), (name: "laid", must: "length(back.side) + seam.side.difference > 1 cm")],
    booklet: [(title: "Hem", text: "Turn up {length(back.hem)} at {ease}.", pieces: ["back"])],
    silenced: [(code: "seam-length", at: "seam.other", number: "3 cm", reason: "a fixture")],
)"#;

fn draft(text: &str) -> Draft {
    file::read(text).unwrap().draft
}

fn model(draft: &Draft) -> Model {
    Engine::new().compute(draft)
}

/// Everything that is computed, node by node and case by case; names are not looked at.
fn computed(draft: &Draft) -> Vec<String> {
    slots(&model(draft))
}

/// All numbers and places of a model.
pub fn slots(model: &Model) -> Vec<String> {
    let slots = model.cases.iter().flat_map(|c| c.slots.iter());
    slots
        .map(|slot| match slot.good() {
            None => "none".to_owned(),
            Some(item) => match (item.real(), item.point(), item.edge()) {
                (Some(v), ..) => format!("{:x}", v.to_bits()),
                (_, Some(p), _) => format!("{:x} {:x}", p.x.to_bits(), p.y.to_bits()),
                (.., Some(e)) => format!("{:x}", e.sewn_length().to_bits()),
                _ => "other".to_owned(),
            },
        })
        .collect()
}

/// All parts of a draft that have a name.
fn parts(draft: &Draft) -> Vec<Part> {
    let mut out: BTreeSet<Part> = BTreeSet::new();
    draft.clone().each_text(&mut |at, role, _| {
        if *role == Role::OwnName {
            out.insert(at.part.clone());
        }
    });
    out.into_iter().collect()
}

fn check_all_renames(draft: &Draft, what: &str, every: usize) {
    let (text, before) = (file::write(draft), computed(draft));
    let all = parts(draft);
    assert!(all.len() > 4, "{what}");
    for part in all.iter().step_by(every) {
        let fresh = fresh_name(draft, "quite_new");
        let mut renamed = draft.clone();
        rename(&mut renamed, part, &fresh).unwrap_or_else(|e| panic!("{what}, {part}: {e}"));
        assert_ne!(file::write(&renamed), text, "{what}, {part}");
        assert_eq!(computed(&renamed), before, "{what}, {part}");
        let back = part.renamed(&fresh);
        let back = match (&back, part) {
            (Part::Inner(..), _) => back,
            _ => part.renamed(&fresh),
        };
        rename(&mut renamed, &back, part.name()).unwrap_or_else(|e| panic!("{what}, {part} back: {e}"));
        assert_eq!(file::write(&renamed), text, "{what}, {part} and back");
    }
}

#[test]
fn renaming_any_part_changes_no_number_and_renaming_back_gives_the_same_file() {
    check_all_renames(&draft(DRAFT), "the fixture", 1);
    for example in ["bodice-sleeve", "straight-skirt", "market-apron", "flat-collar", "trousers", "chest-bodice"] {
        let text = std::fs::read_to_string(format!("examples/{example}.ron")).unwrap();
        check_all_renames(&draft(&text), example, 1);
    }
    for seed in 1..=12 {
        let options = generate::Options { seed, ..generate::Options::default() };
        check_all_renames(&generate::draft(&options), &format!("seed {seed}"), 5);
    }
}

#[test]
fn every_kind_of_text_follows() {
    let mut d = draft(DRAFT);
    rename(&mut d, &Part::Piece("back".into()), "rear").unwrap();
    rename(&mut d, &Part::point("rear", "b"), "tip").unwrap();
    rename(&mut d, &Part::edge("rear", "hem"), "bottom").unwrap();
    rename(&mut d, &Part::Value("ease".into()), "room").unwrap();
    rename(&mut d, &Part::Material("main".into()), "shell").unwrap();
    rename(&mut d, &Part::Inner("rear".into(), Inner::Dart, "dart".into()), "waist_dart").unwrap();
    rename(&mut d, &Part::Seam("side".into()), "flank").unwrap();
    rename(&mut d, &Part::Seam("other".into()), "second").unwrap();
    let text = file::write(&d);
    for expected in [
        "bust / 4 + room",
        "(tip.x, 40 cm)",
        "on_way(tip, c, 1/3)",
        "a.right(bust / 4 + rear.waist_dart.intake)",
        "lay: \"rear\"",
        "shell.stretch_across * 1 cm + material.shell.selvedge",
        "area(rear) / width(piece.front, ",
        "point: \"tip\"",
        "onto: \"b\"",
        "one: [\"rear.side\"]",
        "order: \"after flank\"",
        "gap(rear.a, front.b) >= 20 cm",
        "length(rear.side) + seam.flank.difference > 1 cm",
        "Turn up {length(rear.bottom)} at {room}.",
        "pieces: [\"rear\"]",
        "stack: [\"tip\"]",
        "at: \"seam.second\"",
    ] {
        assert!(text.contains(expected), "{expected}\n{text}");
    }
}

#[test]
fn names_that_would_be_double_get_the_longer_spelling() {
    // A point called as a value is: formulas of the piece that mean the value say so.
    let mut d = draft(DRAFT);
    let before = computed(&d);
    rename(&mut d, &Part::point("back", "d"), "width").unwrap();
    let text = file::write(&d);
    assert!(text.contains("a.right(value.width)") && text.contains("straight(\"width\")"), "{text}");
    assert_eq!(computed(&d), before);
    // A value called as a point is: formulas that mean the point say so.
    let mut d = draft(DRAFT);
    rename(&mut d, &Part::Value("ease".into()), "b").unwrap();
    let text = file::write(&d);
    assert!(text.contains("(back.b.x, 40 cm)") && text.contains("bust / 4 + b"), "{text}");
    assert_eq!(computed(&d), before);
    // The same when such a part is added.
    let mut d = draft(DRAFT);
    std::sync::Arc::make_mut(&mut d.pieces[0]).points.push(tracewheel::document::Point {
        name: "width".into(),
        at: "(0 cm, 0 cm)".into(),
        ..Default::default()
    });
    qualify_for(&mut d, &Part::point("back", "width"));
    assert!(file::write(&d).contains("a.right(value.width)"));
    let unclear = model(&d).findings.iter().filter(|f| f.code == tracewheel::base::Code::AmbiguousName).count();
    assert_eq!(unclear, 0);
}

#[test]
fn what_cannot_be_a_name_is_refused_and_nothing_changes() {
    let d = draft(DRAFT);
    for (part, to, says) in [
        (Part::Value("ease".into()), "bust", "there is row bust already"),
        (Part::Value("ease".into()), "Bust", "there is row bust already"),
        (Part::Value("ease".into()), "back", "there is piece back already"),
        (Part::Value("ease".into()), "1st", "starts with a digit"),
        (Part::Value("ease".into()), "my ease", "holds a space"),
        (Part::Value("ease".into()), "", "a name is needed"),
        (Part::Value("ease".into()), "cm", "is a word of the language"),
        (Part::point("back", "a"), "side", "there is edge back.side already"),
        (Part::Value("gone".into()), "here", "it is not there"),
        (Part::Person("somebody".into()), "a/b", "cannot name a person"),
    ] {
        let mut tried = d.clone();
        let problem = rename(&mut tried, &part, to).unwrap_err().to_string();
        assert!(problem.contains(says), "{part} to {to}: {problem}");
        assert_eq!(tried, d);
    }
    // Only capitals: that is no other name.
    let mut tried = d.clone();
    rename(&mut tried, &Part::Value("ease".into()), "Ease").unwrap();
    assert!(file::write(&tried).contains("bust / 4 + Ease"));
}

#[test]
fn used_by_names_exactly_what_breaks_without_the_part() {
    let d = draft(DRAFT);
    let users = |part: &Part| -> Vec<String> {
        let mut all: Vec<String> = used_by(&d, part).iter().map(|u| u.at.part.to_string()).collect();
        all.dedup();
        all
    };
    assert_eq!(users(&Part::Value("ease".into())), ["value width", "booklet step 1"]);
    assert_eq!(users(&Part::Value("drop".into())), ["seam side", "point front.c", "point front.d"]);
    assert_eq!(
        users(&Part::point("back", "a")),
        ["condition wide", "point back.b", "point back.d", "edge back.top", "edge back.centre"]
    );
    assert_eq!(
        users(&Part::Piece("back".into())),
        [
            "value paper",
            "placement back_on_front",
            "seam side",
            "seam other",
            "condition wide",
            "condition laid",
            "booklet step 1",
            "point front.b"
        ]
    );
    assert_eq!(users(&Part::Seam("side".into())), ["seam other", "condition laid"]);
    assert_eq!(uses(&d, &Part::point("back", "b")), [Part::point("back", "a"), Part::Value("width".into())]);
    // What names a value in a formula of its own fails when it goes; what does not, stays.
    let m = model(&d);
    let failing = |d: &Draft| -> BTreeSet<String> {
        let m = model(d);
        m.findings
            .iter()
            .filter(|f| f.code == tracewheel::base::Code::UnknownName)
            .map(|f| f.place.name.clone())
            .collect()
    };
    let mut without = d.clone();
    delete(&mut without, &m, &Part::Value("ease".into()), Deleting::LeaveBroken).unwrap();
    assert_eq!(failing(&without), BTreeSet::from(["booklet step 1".to_owned(), "value width".to_owned()]));
    // A text that cannot be read may use it: that is said.
    let mut broken = d.clone();
    broken.values[1].is = "bust / (4 + ease".into();
    let perhaps: Vec<bool> = used_by(&broken, &Part::Value("ease".into())).iter().map(|u| u.perhaps).collect();
    assert_eq!(perhaps, [false, true]);
}

#[test]
fn what_is_used_is_not_deleted_unasked() {
    let d = draft(DRAFT);
    let m = model(&d);
    let mut tried = d.clone();
    let problem = delete(&mut tried, &m, &Part::Value("ease".into()), Deleting::IfUnused).unwrap_err();
    assert_eq!(problem.to_string(), "value ease is used by value width, booklet step 1");
    assert_eq!(tried, d);
    delete(&mut tried, &m, &Part::Condition("wide".into()), Deleting::IfUnused).unwrap();
    assert_eq!(tried.conditions.len(), 1);
    assert!(matches!(
        delete(&mut tried, &m, &Part::Condition("wide".into()), Deleting::LeaveBroken),
        Err(DeleteError::Missing(_))
    ));
    delete(&mut tried, &m, &Part::Piece("front".into()), Deleting::LeaveBroken).unwrap();
    assert_eq!(tried.pieces.len(), 1);
}

#[test]
fn a_value_can_stay_as_a_number_or_a_house_row() {
    let d = draft(DRAFT);
    let m = model(&d);
    let numbers = |d: &Draft, name: &str| -> Vec<f64> {
        let m = model(d);
        let node = m.plan.node_named(name).unwrap();
        (0..m.plan.cases.list.len()).map(|c| m.item(c, node).unwrap().real().unwrap()).collect()
    };
    let before = numbers(&d, "width");
    let mut same = d.clone();
    let told = delete(&mut same, &m, &Part::Value("ease".into()), Deleting::PutValue).unwrap();
    assert_eq!(told, "value ease was taken out; 4 cm stands in its place");
    assert_eq!(same.values[0].is, "bust / 4 + 4 cm");
    assert_eq!(numbers(&same, "width"), before);
    // The sizes differ: a house row with a number for each of them and for the person.
    let mut rows = d.clone();
    delete(&mut rows, &m, &Part::Value("width".into()), Deleting::PutValue).unwrap();
    let text = file::write(&rows);
    assert!(text.contains("a.right(width_1)") && text.contains("kind: house"), "{text}");
    let after = numbers(&rows, "chart.width_1");
    for (a, b) in after.iter().zip(&before) {
        assert!((a - b).abs() < 1e-6, "{a} {b}");
    }
    // A found value may go too: what it kept true is watched from then on.
    let mut found = d.clone();
    delete(&mut found, &m, &Part::Value("drop".into()), Deleting::PutValue).unwrap();
    assert!(found.seams[0].found_by.is_empty());
    assert!(matches!(
        delete(&mut found, &m, &Part::point("back", "a"), Deleting::PutValue),
        Err(DeleteError::NoValue(_))
    ));
}

#[test]
fn sizes_are_renamed_and_deleted_with_all_that_is_theirs() {
    let mut d = draft(DRAFT);
    let before = computed(&d);
    rename_size(&mut d, Axis::Girth, "L", "42").unwrap();
    let text = file::write(&d);
    assert!(text.contains("girth: [\"S\", \"M\", \"42\"]") && text.contains("(\"42\", \"92 cm\")"), "{text}");
    assert!(text.contains("in_size(bust, \\\"42\\\")"), "{text}");
    assert_eq!(computed(&d), before);
    assert!(rename_size(&mut d, Axis::Girth, "S", "M").is_err());
    assert!(rename_size(&mut d, Axis::Girth, "XS", "36").is_err());
    assert!(rename_size(&mut d, Axis::Girth, "S", "3/6").is_err());
    delete_size(&mut d, Axis::Girth, "M").unwrap();
    assert_eq!((d.chart.girth.len(), d.chart.base.as_str()), (2, "42"));
    assert!(!file::write(&d).contains("88 cm"));
    delete_size(&mut d, Axis::Girth, "S").unwrap();
    assert!(delete_size(&mut d, Axis::Girth, "42").is_err(), "the last one stays");
}

#[test]
fn inner_parts_are_all_of_them() {
    let d = draft(DRAFT);
    assert_eq!(inner_parts(&d, "back").len(), 4 + 4 + 1);
    assert!(inner_parts(&d, "nowhere").is_empty());
}
