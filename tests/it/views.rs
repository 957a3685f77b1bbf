//! Views: each is what a draft without views would be that says the same; what views have in common is computed once. Long, reason: one draft.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use serde_json::Value as Json;
use tracewheel::base::{Code, DisplayUnit, Finding};
use tracewheel::compute::{Engine, Model, Slot};
use tracewheel::document::{Draft, Part, View};
use tracewheel::file;
use tracewheel::finish::finish;
use tracewheel::proof::proof;
use tracewheel::session::{Command, Deletion, PartCommand, ViewCommand, Work, pieces_of_view, set_for_run, title_of};
use tracewheel::texts::message;

use super::oracle::tracewheel;
use crate::seeds::generate;

/// A bodice half, a sleeve sewn to it with a found cap, a pocket that hangs on nothing of them. A view is added by each test.
const DRAFT: &str = r#"(
    format: "tracewheel draft", version: 0, display: cm, settings: (unchecked: [("joint-bent", "boxes are sewn here")]),
    chart: (
        girth: ["S", "M", "L"], base: "M",
        rows: [(name: "bust", by: [girth], cells: [("S", "84 cm"), ("M", "88 cm"), ("L", "92 cm")])],
        persons: [(name: "somebody", cells: [("bust", "90 cm")])],
    ),
    values: [
        (name: "body_length", is: "40 cm"),
        (name: "sleeve_length", is: "60 cm"),
        (name: "cap", start: "10 cm", least: "1 cm", most: "60 cm"),
        (name: "side_length", is: "body_length - 20 cm"),
        (name: "sleeve_area", is: "sleeve_length * 2 * cap"),
    ],
    drawings: [(name: "plan", points: [(name: "o", at: "(0 cm, 0 cm)"), (name: "c", at: "o.down(cap)")])],
    pieces: [
        (name: "body",
            points: [
                (name: "a", at: "(0 cm, 0 cm)"), (name: "b", at: "a.right(bust / 4)"),
                (name: "c", at: "b.down(20 cm)"), (name: "d", at: "b.down(body_length)"), (name: "e", at: "a.down(body_length)"),
            ],
            edges: [
                (name: "top", from: "a", by: [straight("b")]), (name: "armhole", from: "b", by: [straight("c")]),
                (name: "side", from: "c", by: [straight("d")]), (name: "hem", from: "d", by: [straight("e")]),
                (name: "centre", from: "e", by: [straight("a")]),
            ]),
        (name: "sleeve",
            points: [
                (name: "a", at: "(0 cm, 0 cm)"), (name: "b", at: "a.right(cap)"),
                (name: "c", at: "b.down(sleeve_length)"), (name: "d", at: "a.down(sleeve_length)"),
            ],
            edges: [
                (name: "head", from: "a", by: [straight("b")]), (name: "under", from: "b", by: [straight("c")]),
                (name: "wrist", from: "c", by: [straight("d")]), (name: "fold", from: "d", by: [straight("a")]),
            ]),
        (name: "pocket",
            points: [
                (name: "a", at: "(0 cm, 0 cm)"), (name: "b", at: "a.right(12 cm)"), (name: "c", at: "b.down(14 cm)"),
            ],
            edges: [
                (name: "top", from: "a", by: [straight("b")]), (name: "side", from: "b", by: [straight("c")]),
                (name: "rest", from: "c", by: [straight("a")]),
            ]),
    ],
    seams: [(name: "head", one: ["sleeve.head"], two: ["body.armhole"], fit: eased(longer: one, by: "1 cm"), found_by: ["cap"])],
    conditions: [(name: "long", must: "length(sleeve.under) >= 50 cm"), (name: "wide", must: "cap >= 15 cm")],
    measures: [(name: "sleeve", is: "length(sleeve.under)"), (name: "length", is: "length(body.centre)")],
    views: [VIEWS],
)"#;

const TWO: &str =
    r#"(name: "long", pieces: []), (name: "short", pieces: ["body", "pocket"], values: [("body_length", "35 cm")])"#;

fn draft(views: &str) -> Draft {
    file::read(&DRAFT.replace("VIEWS", views)).unwrap().draft
}

fn named(model: &Model, name: &str) -> u32 {
    model.plan.node_named(name).unwrap_or_else(|| panic!("{name}"))
}

fn mm(model: &Model, name: &str, size: &str) -> Option<f64> {
    let case = model.plan.cases.find(size).unwrap();
    let item = model.item(case, named(model, name))?;
    item.real().or_else(|| item.edge().map(|e| e.sewn_length()))
}

/// The draft without views that says what one of its views says.
fn typed_in(draft: &Draft, view: &View) -> Draft {
    let mut out = draft.clone();
    out.views.clear();
    for (name, formula) in &view.values {
        set_for_run(&mut out, name, formula).unwrap();
    }
    out
}

#[test]
fn a_draft_with_views_is_computed_in_each() {
    let model = Engine::new().compute(&draft(TWO));
    let [long, short] = model.of_views() else { panic!() };
    assert_eq!((long.view(), short.view()), ("long", "short"));
    assert_eq!((long.cases.len(), short.cases.len()), (4, 4));
    assert!(short.plan.cases.list.iter().all(|c| c.view == 1));
    assert_eq!((mm(long, "body.centre", "M"), mm(short, "body.centre", "M")), (Some(400.0), Some(350.0)));
    // What hangs on the value follows in its view alone; a person has both views.
    assert_eq!((mm(long, "side_length", "S"), mm(short, "side_length", "S")), (Some(200.0), Some(150.0)));
    assert_eq!((mm(long, "body.hem", "somebody"), mm(short, "body.centre", "somebody")), (Some(225.0), Some(350.0)));
    // The sleeve is not there, nor the seam, nor what is found by it.
    assert_eq!(mm(long, "sleeve.head", "M"), Some(210.0));
    for name in ["sleeve.head", "cap", "sleeve_area", "seam.head.difference", "measure.sleeve"] {
        assert_eq!(mm(short, name, "M"), None, "{name}");
    }
    assert!(long.plan.has_seam(0) && !short.plan.has_seam(0));
    assert_eq!(short.plan.conditions.len() + short.plan.measures.len(), 1);
    // A drawing of nothing but the sleeve's cap belongs to the view that has it.
    let point = |m: &Model| m.item(1, named(m, "plan.c")).is_some();
    assert!(point(long) && !point(short));
    assert_eq!(model.findings, Vec::new());
    assert_eq!((long.findings.len(), short.findings.len()), (0, 0));
    // Asked by the whole model, its first view answers.
    assert!(Arc::ptr_eq(&model.plan, &long.plan) && Arc::ptr_eq(&model.cases[0], &long.cases[0]));
}

/// The first piece hangs on a drawing as any other one does: a view without it has not that drawing.
#[test]
fn a_drawing_of_the_first_piece_alone_belongs_to_views_that_have_it() {
    let text = r#"(format: "tracewheel draft", version: 0, chart: (girth: ["S", "M"]),
        drawings: [(name: "plan", points: [(name: "o", at: "(3 cm, 0 cm)")])],
        pieces: [(name: "first", points: [(name: "a", at: "(plan.o.x, 0 cm)")]), (name: "second", points: [(name: "a", at: "(1 cm, 0 cm)")])],
        views: [(name: "all", pieces: []), (name: "rest", pieces: ["second"])])"#;
    let model = Engine::new().compute(&file::read(text).unwrap().draft);
    let has = |view: usize, name: &str| model.views[view].item(1, named(&model.views[view], name)).is_some();
    assert_eq!(["first.a", "second.a", "plan.o"].map(|n| has(0, n)), [true; 3]);
    assert_eq!(["first.a", "second.a", "plan.o"].map(|n| has(1, n)), [false, true, false]);
}

/// Every generated draft in every view against the draft in which the view's values are typed in.
#[test]
fn a_view_is_what_a_draft_is_that_says_the_same() {
    let (mut whole, mut parts, mut slots) = (0, 0, 0);
    for seed in 1..=24 {
        let options =
            generate::Options { seed, pieces: 4, points: 9, sizes: 3, found: 4, ..generate::Options::default() };
        let draft = generate::draft(&generate::Options { views: 3, ..options });
        let model = Engine::new().compute(&draft);
        assert_eq!(model.views.len(), 3);
        for (view, said) in model.views.iter().zip(&draft.views) {
            let typed = Engine::new().compute(&typed_in(&draft, said));
            let pairs = pairs(view, &typed);
            let is_whole = said.pieces.is_empty();
            if is_whole {
                // That two views say the same is told of views alone.
                let own: Vec<_> = view.findings.iter().filter(|f| f.code != Code::ViewsAlike).cloned().collect();
                assert_eq!(own, typed.findings, "seed {seed}");
            }
            whole += usize::from(is_whole);
            parts += usize::from(!is_whole);
            // Without its seams a system may come out otherwise, so what it moves is compared in whole views alone.
            let moved = moved(&typed);
            for (case, (a, b)) in view.cases.iter().zip(&typed.cases).enumerate() {
                for &(i, k) in &pairs {
                    let skipped = !is_whole && (!view.plan.is_needed(i as u32) || moved.contains(&(k as u32)));
                    if !skipped {
                        let name = &view.plan.nodes[i].part.name;
                        assert_eq!(
                            good(&a.slots[i]),
                            good(&b.slots[k]),
                            "seed {seed}, {}, case {case}: {name}",
                            said.name
                        );
                        assert_eq!(a.untrue[i], b.untrue[k] && is_whole, "seed {seed}: {name}");
                        slots += 1;
                    }
                }
            }
        }
    }
    assert!(whole > 24 && parts > 10 && slots > 40_000, "{whole} {parts} {slots}");
}

/// Nodes of one name, by their places: a value that is given has no equation, so the numbers of nodes differ.
fn pairs(a: &Model, b: &Model) -> Vec<(usize, usize)> {
    let of = |model: &Model| {
        let mut out: BTreeMap<String, Vec<usize>> = BTreeMap::new();
        let names = model.plan.nodes.iter().enumerate().map(|(i, n)| (n.part.name.to_string(), i));
        names.for_each(|(name, i)| out.entry(name).or_default().push(i));
        out
    };
    let (a, b) = (of(a), of(b));
    let same = a.iter().filter_map(|(name, own)| Some((own, b.get(name).filter(|other| other.len() == own.len())?)));
    same.flat_map(|(own, other)| own.iter().copied().zip(other.iter().copied())).collect()
}

fn good(slot: &Slot) -> Option<String> {
    slot.good().map(|item| format!("{item:?}"))
}

/// Found values and all that hangs on them.
fn moved(model: &Model) -> BTreeSet<u32> {
    let start = model.plan.systems.iter().flat_map(|s| s.found.iter().copied());
    hanging_on(model, start.collect())
}

/// All that hangs on some nodes, systems as a whole.
fn hanging_on(model: &Model, mut out: BTreeSet<u32>) -> BTreeSet<u32> {
    loop {
        let mut more = out.clone();
        for (i, node) in model.plan.nodes.iter().enumerate() {
            if node.deps.iter().any(|d| out.contains(d)) {
                more.insert(i as u32);
            }
        }
        for system in &model.plan.systems {
            let members = || system.found.iter().chain(&system.inner).copied();
            if members().any(|m| more.contains(&m)) {
                more.extend(members());
            }
        }
        if more == out {
            return out;
        }
        out = more;
    }
}

#[test]
fn what_views_have_in_common_is_computed_once() {
    let plain = draft("");
    let mut engine = Engine::new();
    let model = engine.compute(&plain);
    let once = engine.count();
    // In a draft without views every node is computed in every case.
    assert_eq!(once, model.plan.nodes.len() * 4);
    let again = r#"(name: "a"), (name: "b", values: [("body_length", "35 cm")]), (name: "c", values: [("sleeve_length", "30 cm")])"#;
    let model = engine.compute(&draft(again));
    let views = model.of_views();
    let of = |value: &str| hanging_on(&views[0], [named(&views[0], value)].into()).len();
    assert_eq!(engine.count(), once + (of("body_length") + of("sleeve_length")) * 4);
    // The pocket hangs on nothing of them, the cap on the armhole, which is as long in both: they are the very same.
    for name in ["pocket.rest", "sleeve.head", "cap"] {
        assert!(!hanging_on(&views[0], [named(&views[0], "body_length")].into()).contains(&named(&views[0], name)));
    }
    // Fewer pieces cost nothing.
    let mut engine = Engine::new();
    engine.compute(&draft(r#"(name: "a"), (name: "b", pieces: ["body"]), (name: "c", pieces: ["pocket"])"#));
    assert_eq!(engine.count(), once);
    // A value that comes to be what a view says is still not the same one.
    let mut same = draft(r#"(name: "a"), (name: "b", values: [("body_length", "35 cm")])"#);
    engine.compute(&same);
    for (typed, wanted) in [("35 cm", 350.0), ("36 cm", 360.0)] {
        same.values[0].is = typed.into();
        let model = engine.compute(&same);
        let lengths: Vec<_> = model.views.iter().map(|v| mm(v, "body.centre", "M").unwrap()).collect();
        assert_eq!(lengths, [wanted, 350.0]);
    }
    // An edit of what only a view says touches that view alone.
    let mut edited = draft(again);
    engine.compute(&edited);
    edited.values[0].is = "41 cm".into();
    engine.compute(&edited);
    assert_eq!(engine.count(), of("body_length") * 4);
}

#[test]
fn pieces_that_two_views_have_in_common_are_finished_once() {
    let text = std::fs::read_to_string("examples/bodice-finished.ron").unwrap();
    let mut draft = file::read(&text).unwrap().draft;
    let pieces: Vec<String> = draft.pieces.iter().map(|p| p.name.clone()).collect();
    let without: Vec<String> = pieces.iter().filter(|p| *p != "sleeve").cloned().collect();
    assert_eq!(without.len() + 1, pieces.len());
    let view = |name: &str, pieces: &[String]| View { name: name.into(), pieces: pieces.to_vec(), ..View::default() };
    draft.views = vec![view("all", &[]), view("again", &pieces), view("sleeveless", &without)];
    let model = Engine::new().compute(&draft);
    let finished = finish(&model.draft, &model);
    let [all, again, sleeveless] = finished.of_views() else { panic!() };
    let mut shared = BTreeMap::new();
    for case in 0..model.cases.len() {
        for (f, name) in pieces.iter().enumerate() {
            let piece = |of: &tracewheel::finish::Finished| of.cases[case][f].clone();
            let (a, b, c) = (piece(all).unwrap(), piece(again).unwrap(), piece(sleeveless));
            assert!(Arc::ptr_eq(&a, &b), "{name}");
            *shared.entry(name.as_str()).or_insert(true) &= c.as_ref().is_some_and(|c| Arc::ptr_eq(&a, c));
            assert_eq!(c.is_none(), name == "sleeve");
        }
    }
    // Front and back have no notches for the sleeve any more, so they are others; what is sewn to neither is the same.
    assert!(!shared["front"] && !shared["back"] && !shared["sleeve"], "{shared:?}");
    // The same as in a draft that has no sleeve at all.
    let mut typed = draft.clone();
    typed.views.clear();
    typed.pieces.retain(|p| p.name != "sleeve");
    let names_sleeve = |texts: &[String]| texts.iter().any(|t| t.contains("sleeve"));
    typed.seams.retain(|s| !names_sleeve(&s.one) && !names_sleeve(&s.two));
    let alone = Engine::new().compute(&typed);
    let made = finish(&alone.draft, &alone);
    for case in 0..alone.cases.len() {
        for (f, piece) in typed.pieces.iter().enumerate() {
            let place = pieces.iter().position(|p| *p == piece.name).unwrap();
            let (a, b) = (made.cases[case][f].as_ref().unwrap(), sleeveless.cases[case][place].as_ref().unwrap());
            assert_eq!((&a.stitch, &a.cuts, &a.marks), (&b.stitch, &b.cuts, &b.marks), "{}", piece.name);
            assert_eq!(a.notches.len(), b.notches.len(), "{}", piece.name);
        }
    }
}

fn told(views: &str) -> Vec<Finding> {
    let draft = draft(views);
    proof(&draft, &Engine::new().compute(&draft))
}

#[test]
fn what_is_wrong_with_a_view_is_told_once_and_there() {
    let cases = [
        ("", vec![]),
        (TWO, vec![]),
        (
            r#"(name: "a", pieces: ["body", "sleve", "pocket", "sleeve"])"#,
            vec![(Code::PartUnknown, "view a", "there is no piece called `sleve`; did you mean `sleeve`?")],
        ),
        (
            r#"(name: "a", pieces: ["skirt", "yoke"]), (name: "b")"#,
            vec![(Code::ViewEmpty, "view a", "the view a has none of the pieces of this draft: skirt, yoke")],
        ),
        (
            r#"(name: "a", values: [("body_lenght", "3 cm")])"#,
            vec![(
                Code::PartUnknown,
                "view a, value body_lenght",
                "there is no value called `body_lenght`; did you mean `body_length`?",
            )],
        ),
        (
            r#"(name: "a", values: [("bust", "90 cm")])"#,
            vec![(
                Code::PartUnknown,
                "view a, value bust",
                "there is no value (a row of the chart is one for all views) called `bust`",
            )],
        ),
        (
            r#"(name: "a", values: [("body_length", "50 cm"), ("value.body_length", "51 cm")])"#,
            vec![(
                Code::ViewValueTwice,
                "view a, value body_length",
                "body_length has two formulas in the view a; keep one",
            )],
        ),
        (
            r#"(name: "a", values: [("body_length", "5 deg")])"#,
            vec![(Code::WrongKind, "view a, value body_length", "this is an angle; a length is needed here")],
        ),
        (r#"(name: "a", values: [("body_length", "body_length + 5 cm")])"#, vec![(Code::Circular, "body_length", "")]),
        (
            r#"(name: "a", pieces: ["body", "sleeve"])"#,
            vec![(
                Code::PieceInNoView,
                "pocket",
                "pocket belongs to no view, so it is not drawn, judged or published; if that is meant, leave it",
            )],
        ),
        (
            r#"(name: "a", values: [("body_length", "50 cm")]), (name: "b", pieces: ["pocket", "body", "sleeve"], values: [("body_length", "50 cm")])"#,
            vec![(Code::ViewsAlike, "view b", "the view b has the same pieces and values as a")],
        ),
        (
            r#"(name: "a"), (name: "a", pieces: ["body"])"#,
            vec![(Code::NameTwice, "view a", "`a` is the name of two things: view a and view a; rename one")],
        ),
    ];
    for (views, wanted) in cases {
        let found = told(views);
        let said: Vec<(Code, &str, String)> =
            found.iter().map(|f| (f.code, f.place.name.as_str(), message(f, DisplayUnit::Cm))).collect();
        assert_eq!(said.len(), wanted.len(), "{views}: {said:?}");
        for ((code, at, words), (c, a, w)) in said.iter().zip(&wanted) {
            assert!(code == c && at == a && (w.is_empty() || words == w), "{views}: {said:?}");
        }
    }
}

#[test]
fn a_finding_names_its_view_only_where_views_differ() {
    let view = |views: &str, code: Code| -> Vec<(String, Vec<String>)> {
        let found = told(views);
        found.into_iter().filter(|f| f.code == code).map(|f| (f.place.view, f.sizes)).collect()
    };
    let all = || ["S", "M", "L"].map(str::to_owned).to_vec();
    // Too short a sleeve in all views that have one.
    let short = r#"values: [("sleeve_length", "40 cm")]"#;
    let both = format!(
        r#"(name: "a", {short}), (name: "b", {short}, pieces: ["body", "sleeve"]), (name: "c", pieces: ["body", "pocket"])"#
    );
    assert_eq!(view(&both, Code::WatchFails), [(String::new(), all())]);
    // In one of two.
    let one = format!(r#"(name: "a"), (name: "b", {short})"#);
    assert_eq!(view(&one, Code::WatchFails), [("b".to_owned(), all())]);
    // In both, but not alike.
    let other = format!(r#"(name: "a", values: [("sleeve_length", "45 cm")]), (name: "b", {short})"#);
    assert_eq!(view(&other, Code::WatchFails), [("a".to_owned(), all()), ("b".to_owned(), all())]);
    // Two of three.
    let two = format!(r#"(name: "a"), (name: "b", {short}), (name: "c", {short}, pieces: ["body", "sleeve"])"#);
    assert_eq!(view(&two, Code::WatchFails), [("b, c".to_owned(), all())]);
    // A value that is found, but given in a view: its seam is judged there as it comes.
    let given = r#"(name: "a"), (name: "b", values: [("cap", "25 cm")])"#;
    assert_eq!(view(given, Code::SeamLength), [("b".to_owned(), all())]);
    assert_eq!(view(r#"(name: "a"), (name: "b", values: [("cap", "21 cm")])"#, Code::SeamLength), []);
    // One that the seam of a piece finds which a view leaves out: where something needs it, it is found all the same.
    let needed = DRAFT.replace("a.right(12 cm)", "a.right(cap)");
    let draft = file::read(&needed.replace("VIEWS", TWO)).unwrap().draft;
    let model = Engine::new().compute(&draft);
    assert_eq!(proof(&draft, &model), Vec::new());
    let [long, short] = model.of_views() else { panic!() };
    for size in ["S", "M", "L"] {
        let cap = mm(long, "cap", size);
        assert!(cap.is_some() && cap == mm(short, "cap", size), "{size}: {cap:?}");
    }
}

#[test]
fn a_view_that_fails_spoils_only_itself() {
    let views = r#"(name: "a"), (name: "b", values: [("body_length", "1 cm / (2 cm - 20 mm)")]), (name: "c", values: [("body_length", "50 cm +")])"#;
    let model = Engine::new().compute(&draft(views));
    let [a, b, c] = model.of_views() else { panic!() };
    assert_eq!(mm(a, "body.centre", "L"), Some(400.0));
    for view in [b, c] {
        assert_eq!((mm(view, "body.centre", "L"), mm(view, "sleeve.head", "L")), (None, Some(210.0)));
    }
    let said: Vec<(Code, &str)> = model.findings.iter().map(|f| (f.code, f.place.view.as_str())).collect();
    assert_eq!(said.len(), 2, "{said:?}");
    assert!(said.contains(&(Code::Unexpected, "c")) && said.iter().any(|s| s.1 == "b"), "{said:?}");
}

fn on_disk(views: &str) -> (tempfile::TempDir, String) {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("top.ron");
    std::fs::write(&path, DRAFT.replace("VIEWS", views)).unwrap();
    let path = path.to_str().unwrap().to_owned();
    (folder, path)
}

#[test]
fn cases_are_asked_for_by_view_and_size() {
    let (_folder, path) = on_disk(TWO);
    let measured = |more: &[&str]| {
        let mut args = vec!["measure", &path, "length(body.centre)", "--json"];
        args.extend(more);
        let ran = tracewheel(&args);
        assert_eq!(ran.exit, 0, "{}", ran.err);
        let found: Json = serde_json::from_str(&ran.out).unwrap();
        let sizes = found["length(body.centre)"].as_object().unwrap().clone();
        sizes.into_iter().map(|(k, v)| (k, v.as_f64().unwrap())).collect::<Vec<_>>()
    };
    let row = |address: &str, mm: f64| (address.to_owned(), mm);
    let every = [("long//", 400.0), ("short//", 350.0)];
    let every: Vec<_> =
        every.iter().flat_map(|(v, mm)| ["S", "M", "L"].map(|s| row(&format!("{v}{s}"), *mm))).collect();
    assert_eq!(measured(&[]), every);
    assert_eq!(measured(&["--size", "short//"]), every[3..]);
    assert_eq!(measured(&["--view", "short"]), every[3..]);
    assert_eq!(measured(&["--size", "short//M"]), [row("short//M", 350.0)]);
    assert_eq!(measured(&["--size", "M"]), [row("long//M", 400.0), row("short//M", 350.0)]);
    assert_eq!(measured(&["--size", "M", "--view", "long"]), [row("long//M", 400.0)]);
    assert_eq!(measured(&["--size", "somebody"]), [row("long//somebody", 400.0), row("short//somebody", 350.0)]);
    // What is given for the run is so in every view.
    assert_eq!(measured(&["--size", "M", "--set", "body_length=50 cm"])[1], row("short//M", 500.0));
    for (more, word) in [
        (["--size", "shrt//M"], "there is no view shrt, did you mean short?; the views are long, short"),
        (["--size", "short//XL"], "there is no size or person XL"),
        (["--view", "middle"], "the views are long, short"),
    ] {
        let ran = tracewheel(&["measure", &path, "bust", more[0], more[1]]);
        assert_eq!((ran.exit, ran.out.as_str()), (2, ""));
        assert!(ran.err.contains(word), "{}", ran.err);
    }
    let ran = tracewheel(&["measure", &path, "length(sleeve.under)", "cap", "--size", "M"]);
    assert_eq!(ran.exit, 0, "{}", ran.err);
    assert!(ran.out.contains("short//M") && ran.out.contains('–'), "{}", ran.out);
    assert!(ran.err.contains("`cap` speaks of what is not in the view short"), "{}", ran.err);
    let ran = tracewheel(&["measure", &path, "cap", "--size", "short//M"]);
    assert_eq!(ran.exit, 1, "{}", ran.err);
    let (_folder, path) = on_disk("");
    let ran = tracewheel(&["measure", &path, "bust", "--size", "short//M"]);
    assert_eq!(ran.exit, 2);
    assert!(ran.err.contains("there is no view short: this draft has no views"), "{}", ran.err);
}

#[test]
fn proof_finish_and_roll_know_views() {
    let views =
        r#"(name: "long"), (name: "short", pieces: ["body", "pocket"]), (name: "tight", values: [("cap", "25 cm")])"#;
    let (_folder, path) = on_disk(views);
    let ran = tracewheel(&["proof", &path]);
    assert_eq!(ran.exit, 1);
    let line = "error   seam-length  in view tight, seam.head: seam head: sleeve.head is 5 cm longer than body.armhole";
    assert!(ran.out.starts_with(line), "{}", ran.out);
    assert!(ran.out.contains("in 3 sizes of 3 views"), "{}", ran.out);
    let proof = |view: &str| {
        let ran = tracewheel(&["proof", &path, "--view", view, "--json"]);
        let found: Json = serde_json::from_str(&ran.out).unwrap();
        (ran.exit, found["findings"].as_array().unwrap().clone())
    };
    assert_eq!(proof("long"), (0, vec![]));
    assert_eq!(proof("short"), (0, vec![]));
    let (exit, found) = proof("tight");
    assert_eq!((exit, found.len(), &found[0]["view"]), (1, 1, &Json::from("tight")));
    assert_eq!(found[0]["sizes"], serde_json::json!(["S", "M", "L"]));
    let ran = tracewheel(&["finish", &path, "--size", "M", "--json"]);
    let made: Json = serde_json::from_str(&ran.out).unwrap();
    let pieces = |address: &str| made[address].as_object().unwrap().keys().cloned().collect::<Vec<_>>();
    assert_eq!(
        (pieces("long//M"), pieces("short//M")),
        (vec!["body".into(), "sleeve".into(), "pocket".into()], vec!["body".to_owned(), "pocket".into()])
    );
    let ran = tracewheel(&["roll", &path, "head", "--view", "tight", "--size", "M"]);
    assert!(ran.exit == 0 && ran.out.contains("50.00 mm"), "{} {}", ran.out, ran.err);
    let ran = tracewheel(&["roll", &path, "head"]);
    assert!(ran.exit == 0 && ran.out.contains("10.00 mm"), "{} {}", ran.out, ran.err);
    let ran = tracewheel(&["roll", &path, "head", "--view", "short"]);
    assert_eq!(ran.exit, 2);
    assert!(ran.err.contains("the view short does not have the pieces of seam head"), "{}", ran.err);
}

#[test]
fn each_view_has_files_of_its_own() {
    let (_folder, path) = on_disk(TWO);
    let out = tempfile::tempdir().unwrap();
    let publish = |more: &[&str]| {
        let into = out.path().join(more.concat().replace([' ', '/'], "_"));
        let mut args = vec!["publish", &path, "--out", into.to_str().unwrap(), "--whole"];
        args.extend(more);
        let ran = tracewheel(&args);
        let names = ran.out.lines().map(|l| l.rsplit('/').next().unwrap().to_owned()).collect::<Vec<_>>();
        (ran.exit, names, ran.err)
    };
    let (exit, names, err) = publish(&["--size", "M"]);
    assert_eq!(exit, 0, "{err}");
    let heads: Vec<&str> = names.iter().map(|n| n.split("-toile").next().unwrap()).collect();
    assert_eq!(heads, ["top-long-M", "top-short-M"]);
    let (exit, names, ..) = publish(&["--view", "short"]);
    assert_eq!((exit, names.len()), (0, 3));
    assert!(names.iter().all(|n| n.starts_with("top-short-")), "{names:?}");
    let (exit, names, ..) = publish(&["--size", "short//M", "--size", "short//L", "--paper", "a4"]);
    assert_eq!((exit, names.len()), (0, 1));
    assert!(names[0].starts_with("top-short-M+L-toile-A4"), "{names:?}");
    // A piece that one view has not got: no file for that view.
    let (exit, names, ..) = publish(&["--piece", "sleeve", "--size", "M"]);
    assert_eq!((exit, names.len()), (0, 1));
    assert!(names[0].starts_with("top-long-M-sleeve"), "{names:?}");
    let (exit, names, ..) = publish(&["--piece", "sleeve", "--view", "short"]);
    assert_eq!((exit, names.len()), (1, 0));
}

#[test]
fn a_piece_says_its_view_where_it_is_not_the_same_in_all() {
    let model = Engine::new().compute(&draft(TWO));
    let finished = finish(&model.draft, &model);
    let pieces = |view: usize| {
        let (pieces, missing) = pieces_of_view((&model, &finished), view, &[1], (&[], false));
        assert_eq!(missing, []);
        let said = |p: &tracewheel::output::SheetPiece| p.notes.iter().find(|n| n.starts_with("view ")).cloned();
        pieces.iter().map(|p| (p.name.clone(), said(p).unwrap_or_default())).collect::<Vec<_>>()
    };
    let row = |piece: &str, said: &str| (piece.to_owned(), said.to_owned());
    // The sleeve is in one view only, the pocket the same in both.
    assert_eq!(pieces(0), [row("body", "view long"), row("sleeve", ""), row("pocket", "")]);
    assert_eq!(pieces(1), [row("body", "view short"), row("pocket", "")]);
    assert_eq!(title_of(&model.draft, model.views[1].view()), "Untitled draft, view short");
}

fn compared(old: &str, new: &str) -> Vec<(String, String, String)> {
    let write = |views: &str| on_disk(views);
    let ((_a, old), (_b, new)) = (write(old), write(new));
    let ran = tracewheel(&["compare", &old, &new, "--json"]);
    let found: Json = serde_json::from_str(&ran.out).unwrap();
    assert_eq!(ran.exit, i32::from(!found["differences"].as_array().unwrap().is_empty()), "{}", ran.err);
    let text = |v: &Json| v.as_str().unwrap_or("").to_owned();
    let one = |d: &Json| (format!("{} {}", text(&d["part"]), text(&d["name"])), text(&d["view"]), text(&d["what"]));
    found["differences"].as_array().unwrap().iter().map(one).collect()
}

#[test]
fn drafts_are_compared_view_by_view() {
    assert_eq!(compared(TWO, TWO), []);
    // A view that came, and one that went.
    let one = r#"(name: "long", pieces: [])"#;
    let has =
        |list: &[(String, String, String)], part: &str| list.iter().any(|(p, view, _)| p == part && view.is_empty());
    assert!(has(&compared(one, TWO), "view short"), "{:?}", compared(one, TWO));
    assert!(has(&compared(TWO, one), "view short"));
    // What changed in one view alone is said of that view.
    let other = TWO.replace("35 cm", "36 cm");
    let found = compared(TWO, &other);
    let of = |part: &str| found.iter().filter(|d| d.0 == part).map(|d| d.1.as_str()).collect::<BTreeSet<&str>>();
    assert_eq!(of("edge body.centre"), BTreeSet::from(["short"]), "{found:?}");
    assert_eq!(of("edge pocket.top"), BTreeSet::new());
    assert!(of("view short").contains(""), "{found:?}");
    // What changed in all views that have it is said without one.
    let (_folder, old) = on_disk(TWO);
    let new = std::path::Path::new(&old).with_file_name("new.ron");
    let text = std::fs::read_to_string(&old)
        .unwrap()
        .replace("b.down(14 cm)", "b.down(15 cm)")
        .replace("\"60 cm\"", "\"61 cm\"");
    std::fs::write(&new, text).unwrap();
    let ran = tracewheel(&["compare", &old, new.to_str().unwrap()]);
    assert!(ran.out.contains("edge side: sewn length +1 cm") && !ran.out.contains("view"), "{}", ran.out);
    assert!(ran.out.contains("edge under: sewn length +1 cm"), "{}", ran.out);
    let ran = tracewheel(&["compare", &old, new.to_str().unwrap(), "--view", "short"]);
    assert!(ran.out.contains("edge side") && !ran.out.contains("edge under"), "{}", ran.out);
    let ran = tracewheel(&["compare", &old, new.to_str().unwrap(), "--view", "shrt"]);
    assert_eq!(ran.exit, 2);
    assert!(ran.err.contains("did you mean short?"), "{}", ran.err);
    // Beside a draft without views each view is set.
    let found = compared("", TWO);
    assert!(found.contains(&("edge body.centre".into(), "short".into(), "sewn length".into())), "{found:?}");
    assert!(!found.iter().any(|d| d.0 == "edge body.centre" && d.1 != "short"), "{found:?}");
}

#[test]
fn views_are_changed_by_commands_and_each_is_one_step_of_undo() {
    let mut work = Work::here(draft(""));
    let start = file::write(work.draft());
    let view = |c: ViewCommand| Command::View(c);
    let name = || "short".to_owned();
    let mut texts = vec![start];
    for command in [
        view(ViewCommand::Add(name())),
        view(ViewCommand::Piece(name(), "sleeve".into(), false)),
        view(ViewCommand::Value(name(), "body_length".into(), Some("35 cm".into()))),
        view(ViewCommand::Value(name(), "body_length".into(), Some("36 cm".into()))),
        Command::Part(PartCommand::Rename(Part::Value("body_length".into()), "long".into())),
        Command::Part(PartCommand::Rename(Part::Piece("body".into()), "trunk".into())),
        Command::Part(PartCommand::Rename(Part::View(name()), "brief".into())),
    ] {
        work.run(&command).unwrap_or_else(|e| panic!("{e}"));
        texts.push(file::write(work.draft()));
    }
    let last = r#"views: [(name: "brief", pieces: ["trunk", "pocket"], values: [("long", "36 cm")])]"#;
    assert!(texts.last().unwrap().contains(last), "{}", texts.last().unwrap());
    assert!(texts[2].contains(r#"(name: "short", pieces: ["body", "pocket"])"#), "{}", texts[2]);
    // What deletes a piece or value takes it out of views too.
    for part in [Part::Piece("pocket".into()), Part::Value("sleeve_area".into())] {
        work.run(&Command::Part(PartCommand::Delete(part, Deletion::IfUnused))).unwrap_or_else(|e| panic!("{e}"));
        texts.push(file::write(work.draft()));
    }
    assert!(texts.last().unwrap().contains(r#"pieces: ["trunk"]"#));
    // Refused: the last piece; what is not there; a piece that is all that a view has.
    for (command, words) in [
        (view(ViewCommand::Piece("brief".into(), "trunk".into(), false)), "a view has at least one"),
        (view(ViewCommand::Piece("brief".into(), "coat".into(), true)), "there is no piece coat any more"),
        (view(ViewCommand::Piece("long".into(), "trunk".into(), true)), "there is no view long any more"),
        (view(ViewCommand::Value("brief".into(), "width".into(), None)), "there is no value width any more"),
        (view(ViewCommand::Add("brief".into())), "brief"),
        (
            Command::Part(PartCommand::Delete(Part::Piece("trunk".into()), Deletion::LeaveBroken)),
            "is all that the view brief has",
        ),
        (
            Command::Part(PartCommand::Delete(Part::Value("long".into()), Deletion::PutValue)),
            "it is another one in the view",
        ),
    ] {
        if words.contains("another one") {
            work.run(&view(ViewCommand::Add("whole".into()))).unwrap();
            texts.push(file::write(work.draft()));
        }
        let problem = work.run(&command).unwrap_err().to_string();
        assert!(problem.contains(words), "{problem}");
    }
    let whole = work.run(&Command::Part(PartCommand::Delete(Part::View("brief".into()), Deletion::IfUnused)));
    assert!(whole.is_ok(), "{whole:?}");
    texts.push(file::write(work.draft()));
    for text in texts.iter().rev().skip(1) {
        work.undo().unwrap();
        assert_eq!(file::write(work.draft()), *text);
    }
    assert!(work.undo().is_none());
}

/// A derived piece in one view only: its block is in no view, is computed for it, and is neither judged nor printed.
#[test]
fn a_block_that_is_in_no_view_is_there_for_what_is_made_of_it() {
    let text = std::fs::read_to_string("examples/panel-top.ron").unwrap();
    let mut draft = file::read(&text).unwrap().draft;
    let alone = Engine::new().compute(&draft);
    let derived: Vec<String> = draft.pieces.iter().filter(|p| !p.of.is_empty()).map(|p| p.name.clone()).collect();
    let bases: Vec<String> = draft.pieces.iter().filter(|p| p.of.is_empty()).map(|p| p.name.clone()).collect();
    assert!(derived.len() > 3 && bases.len() > 1, "{derived:?} {bases:?}");
    draft.views = vec![View { name: "panels".into(), pieces: derived.clone(), ..View::default() }];
    let model = Engine::new().compute(&draft);
    let [panels] = model.of_views() else { panic!() };
    for (frame, piece) in alone.plan.frames().iter().enumerate().filter(|(_, f)| f.is_piece) {
        assert_eq!(panels.plan.has_frame(frame), derived.contains(&piece.name.to_string()));
        for case in 0..alone.cases.len() {
            for node in piece.edges.iter().filter(|_| panels.plan.has_frame(frame)) {
                assert_eq!(alone.item(case, *node), panels.item(case, *node), "{}", piece.name);
            }
        }
    }
    let finished = finish(&model.draft, &model);
    let (drawn, missing) = tracewheel::output::sheet_pieces(&model.draft, panels, &finished, 0, false);
    assert_eq!((drawn.len(), missing.len()), (derived.len(), 0));
    assert!(!proof(&model.draft, &model).iter().any(|f| bases.contains(&f.place.piece)));
}
