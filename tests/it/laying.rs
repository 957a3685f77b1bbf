//! Lay plans: what comes on the cloth, how it may lie, how much must be bought. The search itself has tests of its own.
//!
//! reason: all of it is told of the same few small drafts, which are made here.

use std::sync::Arc;

use kurbo::{BezPath, ParamCurve, ParamCurveNearest, Point, Shape};
use proptest::prelude::*;
use tracewheel::base::Code;
use tracewheel::compute::{Engine, Model};
use tracewheel::document::{ClothLaid, Draft};
use tracewheel::file;
use tracewheel::finish::{ClothBook, ClothCall, Finished, OnCloth, PlanState, finish, outward, plan_state};
use tracewheel::output::lay::packing::{LayFault, Touch};
use tracewheel::output::lay::{Lay, LayError, fresh_lay, kept_lays, yards};
use tracewheel::output::{Cell, tables};
use tracewheel::proof::proof;
use tracewheel::session::{
    Command, LayCommand, LayEffort, LayHand, LayWish, Laying, Work, job_of, lays, longest, usual_wishes,
};

/// A piece with straight edges between these corners, cm, and its cut.
fn piece(name: &str, corners: &[(f64, f64)], cut: &str) -> String {
    let n = corners.len();
    let points: String =
        corners.iter().enumerate().map(|(i, (x, y))| format!("(name: \"p{i}\", at: \"({x} cm, {y} cm)\"),")).collect();
    let edges: String =
        (0..n).map(|i| format!("(name: \"e{i}\", from: \"p{i}\", by: [straight(\"p{}\")]),", (i + 1) % n)).collect();
    format!("(name: \"{name}\", points: [{points}], edges: [{edges}], cuts: [({cut})]),")
}

fn rectangle(name: &str, wide: f64, high: f64, cut: &str) -> String {
    piece(name, &[(0.0, 0.0), (wide, 0.0), (wide, high), (0.0, high)], cut)
}

/// A draft of one size without allowances.
fn draft(pieces: &str, material: &str, rest: &str) -> String {
    format!(
        "(format: \"tracewheel draft\", version: 0, display: cm, chart: (girth: [\"one\"]), pieces: [{pieces}], \
         materials: [(name: \"main\", {material})], {rest})"
    )
}

const DOWN: &str = "grain: (heading: \"90 deg\")";

struct Made {
    model: Model,
    finished: Finished,
}

fn made(text: &str) -> Made {
    let opened = file::read(text).unwrap_or_else(|e| panic!("{e}\n{text}")).draft;
    let model = Engine::new().compute(&opened);
    let finished = finish(&model.draft, &model);
    Made { model, finished }
}

impl Made {
    fn wish(&self, width: f64) -> LayWish {
        let call =
            ClothCall { material: "main".into(), width, laid: None, nap: None, folded_part: None, sizes: vec![(0, 1)] };
        LayWish { view: 0, width: format!("{width} mm"), call }
    }

    fn on(&self, width: f64) -> OnCloth {
        ClothBook::new(&self.model, &self.finished).on_cloth(&self.wish(width).call).unwrap()
    }

    fn lay(&self, wish: &LayWish) -> Result<Arc<Lay>, LayError> {
        let effort = LayEffort { moves: 400, seed: 1, time: None };
        let row = lays((&self.model, &self.finished), std::slice::from_ref(wish), &[], &effort).remove(0);
        match (row.best, row.failed) {
            (Some(lay), _) => {
                assert_eq!(lay.faults(), Vec::new());
                Ok(lay)
            }
            (None, why) => Err(why.unwrap()),
        }
    }

    fn laid(&self, width: f64) -> Arc<Lay> {
        self.lay(&self.wish(width)).unwrap()
    }
}

#[track_caller]
fn near(have: f64, wanted: f64) {
    assert!((have - wanted).abs() < 0.02, "{have} and not {wanted}");
}

/// All pieces of a lay: name, turned, mirrored, copies that come of it, box.
fn pieces(lay: &Lay) -> Vec<(String, f64, bool, u32, kurbo::Rect)> {
    let mut out = Vec::new();
    for (s, layout) in lay.layouts.iter().enumerate() {
        for laid in &layout.laid {
            let (about, pose) = (&lay.job.stretches[s].shapes[laid.shape], lay.pose(s, laid).unwrap());
            out.push((about.name.clone(), pose.turned, pose.mirrored, about.gives, lay.room(s, laid)));
        }
    }
    out
}

/// C081: 20 x 30 in, its grain along the length, is 30 in of cloth, 0.833 yd, sold as 7/8 yd; published wrongly as 14 yd.
#[test]
fn c081_a_piece_takes_its_length_not_its_area() {
    let text =
        draft(&rectangle("a", 50.8, 76.2, &format!("material: \"main\", count: 1, {DOWN}")), "widths: [\"45 in\"]", "");
    let need = made(&text).laid(45.0 * 25.4).need();
    near(need.exact, 762.0);
    assert_eq!((yards(need.buy_yards).as_str(), need.buy), ("7/8 yd", 800.0));
}

/// Four of 50 x 30 cm lie two by two on 100 cm, exactly: outlines lose nothing and gain nothing.
#[test]
fn rectangles_fill_the_cloth() {
    let text = draft(
        &rectangle("a", 50.0, 30.0, &format!("material: \"main\", count: 4, face: right_side_up, {DOWN}")),
        "",
        "",
    );
    let lay = made(&text).laid(1000.0);
    near(lay.need().exact, 600.0);
    near(lay.covered(), 1.0);
    // A hair narrower and nothing lies side by side.
    let made = made(&text);
    near(made.laid(999.9).need().exact, 1200.0);
    // With 2 cm between them neither.
    let text = text.replace("(name: \"main\", ", "(name: \"main\", gap: \"2 cm\", ");
    let apart = self::made(&text).laid(1021.0).need().exact;
    assert!((620.0..621.0).contains(&apart), "{apart}");
}

/// Two gores of 20 and 60 cm, 100 cm long, lie head to tail on 110 cm (20 + 60 + half of 40 is 100); with nap both heads lie one way, 120 cm
/// are not there, and it takes more.
#[test]
fn gores_head_to_tail() {
    let gore = piece(
        "gore",
        &[(20.0, 0.0), (40.0, 0.0), (60.0, 100.0), (0.0, 100.0)],
        &format!("material: \"main\", count: 2, {DOWN}"),
    );
    let text = draft(&gore, "", "");
    let without = made(&text).laid(1100.0);
    near(without.need().exact, 1000.0);
    let turns: Vec<f64> = pieces(&without).iter().map(|p| p.1).collect();
    assert_eq!(
        {
            let mut t = turns.clone();
            t.sort_by(f64::total_cmp);
            t
        },
        [0.0, 180.0]
    );
    let napped = text.replace("(name: \"main\", ", "(name: \"main\", nap: with, ");
    let with = made(&napped).laid(1100.0);
    assert!(with.need().exact > 1200.0, "{}", with.need().exact);
    assert!(pieces(&with).iter().all(|p| p.1 == 0.0));
    assert!(with.reasons().iter().any(|r| r.starts_with("With nap")));
    // A piece of its own may be one-way too.
    let one_way = text.replace("heading: \"90 deg\"", "heading: \"90 deg\", ways: one");
    let alone = made(&one_way).laid(1100.0);
    near(alone.need().exact, with.need().exact);
    assert!(alone.reasons().iter().any(|r| r.contains("one way only: gore")), "{:?}", alone.reasons());
}

/// C073: not symmetric, cut 2: one face up and one face down on a single layer, both at once on a fold.
#[test]
fn c073_pairs_are_one_and_one_mirrored_or_one_place_on_a_fold() {
    let sleeve = |cut: &str| piece("sleeve", &[(0.0, 0.0), (20.0, 0.0), (24.0, 30.0), (0.0, 30.0)], cut);
    let text = draft(&sleeve(&format!("material: \"main\", count: 2, {DOWN}")), "", "");
    let open = made(&text).laid(1000.0);
    let mut mirrored: Vec<bool> = pieces(&open).iter().map(|p| p.2).collect();
    mirrored.sort_unstable();
    assert_eq!(mirrored, [false, true]);
    let folded = made(&text.replace("(name: \"main\", ", "(name: \"main\", laid: folded, ")).laid(1000.0);
    let all = pieces(&folded);
    assert_eq!((all.len(), all[0].3), (1, 2));
    near(folded.need().exact, 300.0);
    // C074: what must have the right side up never comes on a fold, and never face down.
    let single =
        draft(&sleeve(&format!("material: \"main\", count: 1, face: right_side_up, {DOWN}")), "laid: folded", "");
    let lay = made(&single).laid(1000.0);
    assert_eq!(lay.job.stretches.len(), 1);
    assert_eq!(lay.job.stretches[0].laid, ClothLaid::Open);
    assert!(pieces(&lay).iter().all(|p| !p.2 && p.3 == 1));
    assert!(lay.job.notes.iter().any(|n| n == "sleeve lies on a single layer of cloth."), "{:?}", lay.job.notes);
    let wrong = draft(&sleeve(&format!("material: \"main\", count: 2, face: wrong_side_up, {DOWN}")), "", "");
    assert!(pieces(&made(&wrong).laid(1000.0)).iter().all(|p| p.2));
}

/// Of an odd number one is left over, which goes on a stretch of its own behind the folded cloth.
#[test]
fn what_is_left_of_pairs_lies_on_a_stretch_of_its_own() {
    let text = draft(&rectangle("a", 20.0, 30.0, &format!("material: \"main\", count: 3, {DOWN}")), "laid: folded", "");
    let lay = made(&text).laid(1000.0);
    let kinds: Vec<ClothLaid> = lay.job.stretches.iter().map(|s| s.laid).collect();
    assert_eq!(kinds, [ClothLaid::Folded, ClothLaid::Open]);
    near(lay.need().exact, 600.0);
    assert_eq!(pieces(&lay).iter().map(|p| p.3).sum::<u32>(), 3);
}

fn on_fold(material: &str) -> String {
    // Half of a front, its fold at x = 0, wider below.
    let half = piece(
        "front",
        &[(0.0, 0.0), (15.0, 0.0), (25.0, 50.0), (0.0, 50.0)],
        &format!("material: \"main\", count: 1, on_fold: \"e3\", {DOWN}"),
    );
    draft(&half, material, "")
}

/// On a real fold the half touches it; on open cloth the whole lies there; either way it is one piece.
#[test]
fn pieces_on_the_fold() {
    let open = made(&on_fold("")).laid(1000.0);
    near(pieces(&open)[0].4.height(), 500.0);
    let folded = made(&on_fold("laid: folded")).laid(1000.0);
    let all = pieces(&folded);
    assert_eq!((all.len(), all[0].3), (1, 1));
    near(all[0].4.y0, 0.0);
    near(all[0].4.height(), 250.0);
    assert_eq!(folded.pose(0, &folded.layouts[0].laid[0]).unwrap().across.touch, Touch::From);
    // Too wide for the folded cloth is too wide for the open one as well: 48 cm are not there.
    let why = made(&on_fold("laid: folded")).lay(&made(&on_fold("")).wish(480.0)).unwrap_err();
    let LayError::TooWide { sold, .. } = &why else { panic!("{why}") };
    near(*sold, 500.0);
}

/// Where a piece was drawn says nothing of where it lies: the same half, its fold 10 cm off the middle of its frame.
#[test]
fn a_fold_off_the_middle_of_its_frame_lies_on_the_fold_of_the_cloth() {
    let half = |x: f64| {
        let corners = [(x, 0.0), (x + 15.0, 0.0), (x + 25.0, 50.0), (x, 50.0)];
        let half = piece("front", &corners, &format!("material: \"main\", count: 1, on_fold: \"e3\", {DOWN}"));
        made(&draft(&half, "laid: folded", "")).on(1000.0).pieces[0].half.clone().unwrap()
    };
    for x in [0.0, 10.0, -40.0] {
        let room = half(x)
            .outline
            .iter()
            .fold((f64::INFINITY, f64::NEG_INFINITY), |r, p| (r.0.min(p.y.abs()), r.1.max(p.y.abs())));
        near(room.0, 0.0);
        near(room.1, 250.0);
        assert_eq!(half(x).below, half(0.0).below);
    }
}

/// Two folds: selvedges meet in the middle, and nothing lies across that line; selvedges are not used.
#[test]
fn nothing_lies_where_selvedges_meet() {
    let pair = rectangle("pair", 20.0, 30.0, &format!("material: \"main\", count: 4, {DOWN}"));
    let half = piece(
        "front",
        &[(0.0, 0.0), (15.0, 0.0), (25.0, 50.0), (0.0, 50.0)],
        &format!("material: \"main\", count: 2, on_fold: \"e3\", {DOWN}"),
    );
    let text = draft(&format!("{half}{pair}"), "laid: folded_to_middle, selvedge: \"1 cm\"", "");
    let lay = made(&text).laid(1200.0);
    assert_eq!(lay.job.stretches.len(), 1);
    for (name, .., room) in pieces(&lay) {
        assert!(room.y1 <= 290.01 || room.y0 >= 309.99, "{name} lies at {room:?}");
        assert!(name != "front" || room.y0.abs() < 0.01 || (room.y1 - 600.0).abs() < 0.01);
    }
    // Wider than a quarter of the cloth: on a single layer.
    let text = draft(
        &rectangle("wide", 40.0, 30.0, &format!("material: \"main\", count: 2, {DOWN}")),
        "laid: folded_to_middle",
        "",
    );
    let lay = made(&text).laid(1200.0);
    assert_eq!(lay.job.stretches[0].laid, ClothLaid::Open);
    assert!(lay.job.notes.iter().any(|n| n.contains("too wide for the folded cloth")));
}

/// Folded as far as the half on the fold needs it: 25 cm and a selvedge of 1 cm; what is single lies beside it.
#[test]
fn a_part_of_the_cloth_is_folded() {
    let single = rectangle("back", 40.0, 50.0, &format!("material: \"main\", count: 1, face: right_side_up, {DOWN}"));
    let half = piece(
        "front",
        &[(0.0, 0.0), (15.0, 0.0), (25.0, 50.0), (0.0, 50.0)],
        &format!("material: \"main\", count: 1, on_fold: \"e3\", {DOWN}"),
    );
    let text = draft(&format!("{half}{single}"), "laid: folded_part, selvedge: \"1 cm\"", "");
    let lay = made(&text).laid(1000.0);
    near(lay.job.stretches[0].folded_part, 260.0);
    near(lay.need().exact, 500.0);
    for (name, .., room) in pieces(&lay) {
        if name == "front" { near(room.y0, 0.0) } else { assert!(room.y0 >= 259.99 && room.y1 <= 730.01, "{room:?}") }
    }
}

/// C080: only flagged pieces lie at the border, and the length follows the flags.
#[test]
fn c080_the_border_is_the_reason_for_the_length() {
    let panel = |name: &str, border: &str| {
        rectangle(name, 20.0, 60.0, &format!("material: \"main\", count: 2, face: right_side_up, {border} {DOWN}"))
    };
    let text = |flag: &str| draft(&(panel("a", flag) + &panel("b", flag)), "", "");
    let free = made(&text("")).laid(800.0);
    near(free.need().exact, 600.0);
    assert!(free.reasons().iter().all(|r| !r.contains("border")));
    // Side e1 looks away from the origin: turned to the thread it is the lesser side, so pieces are turned by half.
    let flagged = made(&text("border: \"e1\",")).laid(800.0);
    // One behind the other; so short a search leaves a little between them.
    assert!((2399.98..2410.0).contains(&flagged.need().exact), "{}", flagged.need().exact);
    assert!(flagged.reasons().iter().any(|r| r == "At the border lie: a, b."), "{:?}", flagged.reasons());
    for (_, turned, _, _, room) in pieces(&flagged) {
        near(room.y1, 800.0);
        assert_eq!(turned, 180.0);
    }
    let other = made(&text("border: \"e3\",")).laid(800.0);
    assert!(pieces(&other).iter().all(|p| p.1 == 0.0));
    // With nap a piece cannot be turned to its border.
    let napped = text("border: \"e1\",").replace("(name: \"main\", ", "(name: \"main\", nap: with, ");
    let why = made(&napped).lay(&made(&napped).wish(800.0)).unwrap_err();
    assert!(matches!(why, LayError::Border { .. }), "{why}");
}

/// C086: a waistband of 121 cm across cloth of 112 cm does not fit; along the thread, in two pieces or on wider cloth it does.
#[test]
fn c086_what_does_not_fit_says_what_could_be_done() {
    let text = draft(
        &rectangle("waistband", 121.0, 8.0, &format!("material: \"main\", count: 1, {DOWN}")),
        "selvedge: \"1 cm\"",
        "",
    );
    let made = made(&text);
    let why = made.lay(&made.wish(1120.0)).unwrap_err().to_string();
    assert_eq!(
        why,
        "waistband does not fit in size one: it is 121 cm (47 5/8 in) across in its narrowest way and has 110 cm (43 1/4 in); \
         take cloth at least 123 cm (48 1/2 in) wide, or cut it with its length along the cloth, where it is 8 cm (3 1/8 in) across, \
         or join it of 2 pieces"
    );
    assert!(made.lay(&made.wish(1230.0)).is_ok());
}

/// Washed before it is cut: pieces are as drawn, the cloth is narrower, and what it loses is bought too. Else pieces are cut larger.
#[test]
fn shrinking_is_allowed_for_once() {
    let a = rectangle("a", 50.0, 90.0, &format!("material: \"main\", count: 2, face: right_side_up, {DOWN}"));
    let text = |how: &str| draft(&a, &format!("shrinkage_along: \"10 %\", shrinkage_across: \"20 %\", {how}"), "");
    // 125 cm less a fifth are 100 cm; 90 cm are nine tenths of 100 cm.
    let washed = made(&text("shrinks: before_cutting")).laid(1250.0);
    near(washed.need().exact, 1000.0);
    near(pieces(&washed)[0].4.height(), 500.0);
    assert!(washed.reasons().iter().any(|r| r.starts_with("Washed")));
    let narrower = made(&text("shrinks: before_cutting")).laid(1249.0);
    near(narrower.need().exact, 2000.0);
    let larger = made(&text("")).laid(1250.0);
    near(pieces(&larger)[0].4.height(), 625.0);
    near(larger.need().exact, 1000.0);
}

/// Strips that are counted add their cloth; strips that are laid lie there at their grain, on the bias at 45°.
#[test]
fn strips_are_counted_or_laid() {
    let a = rectangle("a", 50.0, 60.0, &format!("material: \"main\", count: 1, {DOWN}"));
    let strip = |rest: &str| {
        format!("strips: [(name: \"tie\", material: \"main\", length: \"50 cm\", width: \"5 cm\", count: 4, {rest})]")
    };
    let counted = made(&draft(&a, "", &strip("grain: across, in_lay: counted"))).laid(1000.0);
    near(counted.need().exact, 700.0);
    assert_eq!(counted.job.on.count(), 1);
    let laid = made(&draft(&a, "", &strip("grain: along"))).laid(1000.0);
    near(laid.need().exact, 600.0);
    assert_eq!(laid.job.on.count(), 5);
    let bias = made(&draft(&a, "", &strip("grain: bias"))).laid(1000.0);
    for (name, turned, .., room) in pieces(&bias).into_iter().filter(|p| p.0 == "tie") {
        assert!(turned == 45.0 || turned == 135.0, "{name} {turned}");
        near(room.width(), 550.0 / std::f64::consts::SQRT_2);
    }
}

/// Several garments together: counts are those of all.
#[test]
fn several_garments_lie_together() {
    let text = draft(&rectangle("a", 25.0, 40.0, &format!("material: \"main\", count: 2, {DOWN}")), "", "")
        .replace("[\"one\"]", "[\"S\", \"M\"]");
    let made = made(&text);
    let mut wish = made.wish(1000.0);
    wish.call.sizes = vec![(0, 2), (1, 4)];
    let lay = made.lay(&wish).unwrap();
    assert_eq!((lay.job.on.count(), pieces(&lay).len()), (12, 12));
    near(lay.need().exact, 1200.0);
}

fn examples() -> Vec<(String, Draft)> {
    let mut out = Vec::new();
    for entry in std::fs::read_dir(concat!(env!("CARGO_MANIFEST_DIR"), "/examples")).unwrap() {
        let path = entry.unwrap().path();
        if path.extension().is_some_and(|e| e == "ron") {
            out.push((path.display().to_string(), file::open(&path).unwrap().draft));
        }
    }
    out.sort_by(|a, b| a.0.cmp(&b.0));
    out
}

/// On every example, in every view and size, on open cloth and folded in every way, as many pieces are laid as the cutting list counts.
#[test]
fn as_many_are_laid_as_the_cutting_list_counts() {
    let mut compared = 0;
    for (path, draft) in examples() {
        let model = Engine::new().compute(&draft);
        let finished = finish(&model.draft, &model);
        for (view, (own, done)) in model.of_views().iter().zip(finished.of_views()).enumerate() {
            let lists = tables(&model.draft, &model, &finished, view);
            let Some(list) = lists.iter().find(|t| t.name == "cutting-list") else { continue };
            for material in &own.draft.materials {
                let is_it = |l: &&tracewheel::output::Line| {
                    l.name == "in all"
                        && (l.group == material.name || l.group.starts_with(&format!("{} (", material.name)))
                };
                let Some(line) = list.lines.iter().find(is_it) else { continue };
                let Cell::Count(wanted) = line.cells[1] else { panic!("{line:?}") };
                for case in 0..own.plan.cases.range {
                    for laid in [ClothLaid::Open, ClothLaid::Folded, ClothLaid::FoldedToMiddle, ClothLaid::FoldedPart] {
                        let call = ClothCall {
                            material: material.name.clone(),
                            width: 3000.0,
                            laid: Some(laid),
                            nap: None,
                            folded_part: None,
                            sizes: vec![(case, 1)],
                        };
                        let on = ClothBook::new(own, done).on_cloth(&call).unwrap_or_else(|e| panic!("{path}: {e}"));
                        let strips: u64 = on.strips.iter().filter(|s| !s.laid).map(|s| u64::from(s.count)).sum();
                        assert_eq!(on.count() + strips, wanted, "{path} {}", material.name);
                        let wish = LayWish { view, width: "3 m".into(), call };
                        let job = job_of(&model, &finished, &wish).unwrap_or_else(|e| panic!("{path}: {e}"));
                        let of = |s: &tracewheel::output::lay::LayStretch| -> u64 {
                            s.shapes
                                .iter()
                                .zip(&s.job.shapes)
                                .map(|(about, shape)| u64::from(about.gives) * shape.count as u64)
                                .sum()
                        };
                        assert_eq!(job.stretches.iter().map(of).sum::<u64>(), job.on.count(), "{path} {laid:?}");
                        compared += 1;
                    }
                }
            }
        }
    }
    assert!(compared > 100, "{compared}");
}

/// A digest is another as soon as something counts, and the same where nothing does.
#[test]
fn a_digest_is_of_all_that_counts_and_of_nothing_else() {
    let cut = format!("material: \"main\", count: 2, {DOWN}");
    let text = draft(
        &(piece("a", &[(0.0, 0.0), (20.0, 0.0), (24.0, 30.0), (0.0, 30.0)], &cut) + &rectangle("b", 10.0, 10.0, &cut)),
        "selvedge: \"1 cm\"",
        "",
    );
    let of = |text: &str| made(text).on(1000.0).digest();
    let first = of(&text);
    let same = [
        ("\"a\"", "\"sleeve\""),
        ("display: cm", "display: inch_eighths"),
        ("selvedge: \"1 cm\"", "selvedge: \"10 mm\""),
        ("selvedge: \"1 cm\"", "selvedge: \"1 cm\", note: \"red\""),
        ("selvedge: \"1 cm\"", "selvedge: \"1 cm\", sold_in: \"5 cm\""),
    ];
    for (from, to) in same {
        assert!(text.contains(from));
        assert_eq!(of(&text.replace(from, to)), first, "{from} -> {to}");
    }
    let other = [
        ("24 cm", "24.1 cm"),
        ("count: 2", "count: 4"),
        ("heading: \"90 deg\"", "heading: \"89 deg\""),
        ("heading: \"90 deg\"", "heading: \"90 deg\", ways: one"),
        ("count: 2", "count: 2, face: right_side_up"),
        ("count: 2", "count: 2, border: \"e1\""),
        ("selvedge: \"1 cm\"", "selvedge: \"2 cm\""),
        ("selvedge: \"1 cm\"", "selvedge: \"1 cm\", gap: \"1 mm\""),
        ("selvedge: \"1 cm\"", "selvedge: \"1 cm\", nap: with"),
        ("selvedge: \"1 cm\"", "selvedge: \"1 cm\", laid: folded"),
        ("selvedge: \"1 cm\"", "selvedge: \"1 cm\", shrinkage_along: \"5 %\""),
        ("selvedge: \"1 cm\"", "selvedge: \"1 cm\", shrinkage_along: \"5 %\", shrinks: before_cutting"),
        (
            "materials: [",
            "strips: [(name: \"tie\", material: \"main\", length: \"9 cm\", width: \"1 cm\")], materials: [",
        ),
        ("version: 0,", "version: 0, settings: (allowance: \"1 cm\"),"),
    ];
    for (from, to) in other {
        assert!(text.contains(from));
        assert_ne!(of(&text.replacen(from, to, 1)), first, "{from} -> {to}");
    }
    assert_ne!(made(&text).on(1001.0).digest(), first);
}

/// Beside a fold of 30 cm on cloth of 100 cm are 40 cm in a single layer: what is wider lies on open cloth behind, and is laid there.
#[test]
fn what_is_too_wide_beside_the_fold_lies_behind_it() {
    let cut = |count: u32| format!("material: \"main\", count: {count}, face: right_side_up, {DOWN}");
    let both = [rectangle("narrow", 40.0, 30.0, &cut(1)), rectangle("wide", 50.0, 60.0, &cut(1))].concat();
    let lay = made(&draft(&both, "laid: folded_part, folded_part: \"30 cm\"", "")).laid(1000.0);
    let stretches = &lay.need().stretches;
    assert_eq!(stretches.iter().map(|s| s.0).collect::<Vec<_>>(), [ClothLaid::FoldedPart, ClothLaid::Open]);
    near(stretches[0].1, 300.0);
    near(stretches[1].1, 600.0);
    near(lay.need().exact, 900.0);
}

/// Where there is no time at all, there is neither a lay nor a reason: nothing in a row is passed off as a lay.
#[test]
fn without_time_nothing_is_laid() {
    let made = made(&draft(&rectangle("a", 50.0, 60.0, &format!("material: \"main\", count: 2, {DOWN}")), "", ""));
    let effort = LayEffort { moves: 400, seed: 1, time: Some(std::time::Duration::ZERO) };
    let row = lays((&made.model, &made.finished), &[made.wish(1000.0)], &[], &effort).remove(0);
    assert!(row.best.is_none() && row.failed.is_none() && row.done, "{row:?}");
}

/// Kept, written, read and laid out again a plan is what it was; whatever is changed in file or draft makes it stale, and a stale plan tells
/// no length.
#[test]
fn a_kept_plan_comes_back_and_is_told_when_it_is_stale() {
    let cut = format!("material: \"main\", count: 2, {DOWN}");
    let text = draft(
        &(piece("a", &[(0.0, 0.0), (20.0, 0.0), (24.0, 30.0), (0.0, 30.0)], &cut) + &rectangle("b", 10.0, 10.0, &cut)),
        "widths: [\"100 cm\"]",
        "",
    );
    let made = made(&text);
    let lay = made.laid(1000.0);
    let plan = lay.to_plan(&made.model, ("main", "100 cm"), &[(0, 1)]);
    let mut work = Work::here(file::read(&text).unwrap().draft);
    work.run(&Command::Lay(LayCommand::Keep(vec![plan.clone()]))).unwrap();
    let written = file::write(work.draft());
    let again = self::made(&written);
    let book = ClothBook::new(&again.model, &again.finished);
    let kept = kept_lays(&book);
    let back = kept[0].lay.as_ref().unwrap();
    assert_eq!(kept[0].locked, [(0, 1)]);
    for (a, b) in pieces(back).iter().zip(pieces(&lay)) {
        assert_eq!((&a.0, a.1, a.2), (&b.0, b.1, b.2));
        near(a.4.x0, b.4.x0);
        near(a.4.y0, b.4.y0);
    }
    near(back.need().exact, lay.need().exact);
    let stale = |text: &str| {
        let opened = file::read(text).unwrap().draft;
        let model = Engine::new().compute(&opened);
        proof(&model.draft, &model).iter().any(|f| f.code == Code::LayStale)
    };
    let needed = |text: &str| {
        let m = self::made(text);
        let all = tables(&m.model.draft, &m.model, &m.finished, 0);
        let table = all.iter().find(|t| t.name == "cloth").unwrap();
        table.lines.iter().find(|l| l.name == "needed").unwrap().cells[0].clone()
    };
    assert!(!stale(&written));
    let Cell::Length(mm) = needed(&written) else { panic!() };
    near(mm, lay.need().exact);
    let first = &plan.places[0];
    for (from, to) in [
        ("24 cm", "26 cm"),
        ("widths: [\"100 cm\"]", "selvedge: \"1 mm\", widths: [\"100 cm\"]"),
        ("count: 2", "count: 4"),
        (&*format!("x: \"{}\"", first.x), "x: \"1 mm\""),
        ("width: \"100 cm\"", "width: \"90 cm\""),
    ] {
        assert!(written.contains(from), "{from}\n{written}");
        let changed = written.replacen(from, to, 1);
        assert!(stale(&changed), "{from} -> {to}");
        assert_eq!(needed(&changed), Cell::Missing, "{from} -> {to}");
    }
    // One step of undo; and renamed parts take the plan with them.
    work.undo();
    assert!(work.draft().plans.is_empty());
    work.redo();
    let mut renamed = Draft::clone(work.draft());
    tracewheel::session::rename(&mut renamed, &tracewheel::document::Part::Piece("a".into()), "sleeve").unwrap();
    tracewheel::session::rename(&mut renamed, &tracewheel::document::Part::Material("main".into()), "cloth").unwrap();
    assert!(renamed.plans[0].places.iter().any(|p| p.piece == "sleeve"));
    assert!(!stale(&file::write(&renamed)));
}

/// What cannot be cut is not kept.
#[test]
fn a_plan_that_overlaps_is_refused() {
    let text = draft(
        &rectangle("a", 50.0, 30.0, &format!("material: \"main\", count: 2, {DOWN}")),
        "widths: [\"100 cm\"]",
        "",
    );
    let made = made(&text);
    let mut hand = LayHand::of(Lay::clone(&made.laid(1000.0)));
    assert!(hand.faults().is_empty());
    hand.put(0, 0, 0.0, 0.0);
    // 300 mm along the cloth: 50 of them lie on the other one.
    hand.put(0, 1, 250.0, 0.0);
    let faults = hand.faults();
    let [fault] = faults.as_slice() else { panic!("{faults:?}") };
    assert_eq!(fault.pieces, [0, 1]);
    assert!((24.0..51.0).contains(&fault.mm), "{fault:?}");
    assert!(hand.lay.faults().iter().any(|(_, f)| matches!(f, LayFault::Overlap { .. })));
    let plan = hand.lay.to_plan(&made.model, ("x", "100 cm"), &[]);
    let mut work = Work::here(file::read(&text).unwrap().draft);
    let why = work.run(&Command::Lay(LayCommand::Keep(vec![plan]))).unwrap_err().to_string();
    assert!(why.contains("cannot be cut as they lie"), "{why}");
    assert!(work.draft().plans.is_empty());
}

/// By hand: pieces stay on the cloth, turn about their middle, and what is locked stays where it is when the rest is laid anew.
#[test]
fn laid_by_hand() {
    let text = draft(
        &rectangle("a", 20.0, 30.0, &format!("material: \"main\", count: 4, {DOWN}")),
        "widths: [\"100 cm\"]",
        "",
    );
    let made = made(&text);
    let mut hand = LayHand::of(Lay::clone(&made.laid(1000.0)));
    hand.put(0, 0, 500.0, 5000.0);
    let room = hand.lay.room(0, &hand.lay.layouts[0].laid[0]);
    near(room.x0, 500.0);
    near(room.y1, 1000.0);
    near(hand.need().exact, 800.0);
    assert!(hand.turn(0, 0));
    let turned = hand.lay.layouts[0].laid[0];
    assert_eq!(hand.lay.pose(0, &turned).unwrap().turned, 180.0);
    near(hand.lay.room(0, &turned).x0, 500.0);
    hand.lock(0, 0, true);
    hand.put(0, 0, 0.0, 0.0);
    near(hand.lay.room(0, &hand.lay.layouts[0].laid[0]).x0, 500.0);
    assert!(!hand.turn(0, 0));
    let effort = LayEffort { moves: 400, seed: 1, time: None };
    let row = lays((&made.model, &made.finished), &[made.wish(1000.0)], &[Some(hand)], &effort).remove(0);
    let lay = row.best.unwrap();
    assert!(pieces(&lay).iter().any(|p| (p.4.x0 - 500.0).abs() < 0.01 && (p.4.y1 - 1000.0).abs() < 0.01));
    near(lay.need().exact, 800.0);
}

/// The same seed and moves give the same lays, beside another thread and in this one.
#[test]
fn the_same_lays_whoever_makes_them() {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/examples/bodice-finished.ron");
    let draft = file::open(std::path::Path::new(path)).unwrap().draft;
    let work = Work::here(draft);
    let computed = Arc::clone(work.computed());
    let (model, finished) = (computed.model.as_ref().unwrap(), computed.finished.as_ref().unwrap());
    let all = usual_wishes(model);
    let wishes: Vec<LayWish> = all.iter().filter(|w| w.call.sizes[0].0 < 2).cloned().collect();
    assert_eq!(wishes.len(), 4);
    let effort = LayEffort { moves: 150, seed: 7, time: None };
    let here = lays((model, finished), &wishes, &[], &effort);
    let laying = Laying::start(Arc::clone(&computed), wishes.clone(), Vec::new(), effort, Some(Arc::new(|| {})));
    for _ in 0..6_000 {
        if laying.is_done() {
            break;
        }
        std::thread::sleep(std::time::Duration::from_millis(10));
    }
    assert!(laying.is_done());
    let beside = laying.rows();
    for (a, b) in here.iter().zip(&beside) {
        assert_eq!(a.best.as_ref().unwrap().layouts, b.best.as_ref().unwrap().layouts);
        assert!(b.done);
    }
    // Wider cloth never needs more.
    let need = |i: usize| here[i].best.as_ref().unwrap().need().exact;
    for (i, a) in wishes.iter().enumerate() {
        for (k, b) in wishes.iter().enumerate() {
            if a.call.sizes == b.call.sizes && a.call.width < b.call.width {
                assert!(need(k) <= need(i) + 0.01, "{} needs {}, {} needs {}", b.width, need(k), a.width, need(i));
            }
        }
    }
}

/// With nap never less is needed than without, even where the search found the other way round.
#[test]
fn nap_never_saves_cloth() {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/examples/bodice-finished.ron");
    let draft = file::open(std::path::Path::new(path)).unwrap().draft;
    let model = Engine::new().compute(&draft);
    let finished = finish(&model.draft, &model);
    let one = usual_wishes(&model).remove(0);
    let of = |nap: bool| LayWish { call: ClothCall { nap: Some(nap), ..one.call.clone() }, ..one.clone() };
    for seed in 1..4 {
        let effort = LayEffort { moves: 120, seed, time: None };
        let rows = lays((&model, &finished), &[of(true), of(false)], &[], &effort);
        let [with, without] = [0, 1].map(|i: usize| rows[i].best.as_ref().unwrap().need().exact);
        assert!(without <= with + 0.01, "{without} without, {with} with");
    }
}

/// C084: the longest skirt from what is at hand: two panels of 40 cm side by side on 90 cm, so as long as the cloth.
#[test]
fn c084_the_longest_that_comes_out_of_the_cloth() {
    let panel =
        rectangle("panel", 40.0, 50.0, &format!("material: \"main\", count: 2, {DOWN}")).replace("50 cm", "long");
    let text = draft(&panel, "widths: [\"90 cm\"]", "values: [(name: \"long\", is: \"50 cm\")]");
    let made = made(&text);
    let effort = LayEffort { moves: 60, seed: 1, time: None };
    let found = longest(&made.model.draft, "long", &made.wish(900.0), 823.4, &effort).unwrap();
    assert_eq!((found.value, found.beyond), (823.0, Some(824.0)));
    assert_eq!(found.now, (500.0, true));
    let short = longest(&made.model.draft, "long", &made.wish(900.0), 321.0, &effort).unwrap();
    assert_eq!((short.value, short.now.1), (321.0, false));
    assert!(longest(&made.model.draft, "wide", &made.wish(900.0), 321.0, &effort).is_err());
}

/// C087: a hem of 7.5 cm added late: the requirement of the plan laid anew is told before and after, 7.5 cm more.
#[test]
fn c087_what_a_longer_piece_needs_is_told_before_and_after() {
    let text = |high: f64| {
        draft(
            &rectangle("panel", 60.0, high, &format!("material: \"main\", count: 1, {DOWN}")),
            "widths: [\"90 cm\"]",
            "",
        )
    };
    let kept = |high: f64| {
        let text = text(high);
        let made = made(&text);
        let plan = made.laid(900.0).to_plan(&made.model, ("panel on 90", "90 cm"), &[]);
        let mut work = Work::here(file::read(&text).unwrap().draft);
        work.run(&Command::Lay(LayCommand::Keep(vec![plan]))).unwrap();
        self::made(&file::write(work.draft()))
    };
    let (old, new) = (kept(70.0), kept(77.5));
    let side = |m: &'_ Made| -> (Arc<Draft>, Model, Finished) {
        (Arc::clone(&m.model.draft), m.model.clone(), m.finished.clone())
    };
    let (a, b) = (side(&old), side(&new));
    let sides = [&a, &b].map(|s| tracewheel::output::Side { draft: &s.0, model: &s.1, finished: &s.2 });
    let [was, is] = sides;
    let found = tracewheel::output::compare(was, is, &[], &[]).unwrap();
    let of_plan: Vec<_> = found.differences.iter().filter(|d| d.what.contains("cloth needed")).collect();
    assert_eq!(of_plan.len(), 1, "{:#?}", found.differences);
    assert!(!of_plan[0].is_note);
    let words = format!("{:?}", of_plan[0].change);
    for part in ["70 cm; to buy 70 cm or 7/8 yd", "77.5 cm; to buy 80 cm or 7/8 yd"] {
        assert!(words.contains(part), "{words}");
    }
}

/// The name of a piece, the count of sizes and so on come back from the file in the same form.
#[test]
fn a_plan_of_other_places_is_no_plan() {
    let text = draft(
        &rectangle("a", 20.0, 30.0, &format!("material: \"main\", count: 2, {DOWN}")),
        "widths: [\"100 cm\"]",
        "",
    );
    let made = made(&text);
    let plan = made.laid(1000.0).to_plan(&made.model, ("x", "100 cm"), &[]);
    let book = ClothBook::new(&made.model, &made.finished);
    assert!(fresh_lay(&book, &plan).is_ok());
    let mut moved = plan.clone();
    moved.places[0].x = "7 mm".into();
    assert!(fresh_lay(&book, &moved).unwrap_err().contains("lay it anew"));
    let mut lacking = plan;
    lacking.places.pop();
    assert!(fresh_lay(&book, &lacking).is_err());
}

/// Two strips of one size that are told for each other by hand: each place is another one.
#[test]
fn a_plan_whose_strips_are_told_for_each_other_is_stale() {
    let strip = |name: &str, long: f64| {
        format!(
            "(name: \"{name}\", material: \"main\", length: \"{long} cm\", width: \"5 cm\", count: 1, grain: along)"
        )
    };
    let a = rectangle("a", 50.0, 60.0, &format!("material: \"main\", count: 1, {DOWN}"));
    let made = made(&draft(&a, "", &format!("strips: [{}, {}]", strip("band", 50.0), strip("tie", 40.0))));
    let plan = made.laid(1000.0).to_plan(&made.model, ("x", "100 cm"), &[]);
    let book = ClothBook::new(&made.model, &made.finished);
    assert_eq!(plan_state(&book, &plan), PlanState::Fresh);
    let mut other = plan.clone();
    for place in other.places.iter_mut().filter(|p| p.strip) {
        place.piece = if place.piece == "tie" { "band".into() } else { "tie".into() };
    }
    assert_ne!(other.places, plan.places);
    assert_eq!(plan_state(&book, &other), PlanState::Stale);
}

/// How far a point is outside of a polygon; nothing inside.
fn outside(polygon: &[Point], p: Point) -> f64 {
    let mut path = BezPath::new();
    path.move_to(polygon[0]);
    polygon[1..].iter().for_each(|q| path.line_to(*q));
    path.close_path();
    if path.contains(p) {
        return 0.0;
    }
    path.segments().map(|s| s.nearest(p, 1e-9).distance_sq.sqrt()).fold(f64::INFINITY, f64::min)
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 300, ..ProptestConfig::default() })]

    /// A blob of cubics in any sense, with bays and inflections: no point of it lies outside of its polygon, and no corner of the polygon lies
    /// farther from it than 0.1 mm.
    #[test]
    fn a_polygon_contains_its_outline(
        radii in prop::collection::vec(200.0f64..300.0, 4..9),
        bends in prop::collection::vec((-0.5f64..0.9, -0.5f64..0.9), 9),
        straight in prop::collection::vec(any::<bool>(), 9),
        backwards in any::<bool>(),
    ) {
        let n = radii.len();
        let at = |i: usize, r: f64| {
            let a = std::f64::consts::TAU * i as f64 / n as f64;
            Point::new(r * a.cos(), r * a.sin())
        };
        let mut path = BezPath::new();
        path.move_to(at(0, radii[0]));
        for i in 0..n {
            let (a, b) = (at(i, radii[i]), at((i + 1) % n, radii[(i + 1) % n]));
            if straight[i] {
                path.line_to(b);
            } else {
                // Handles along and aside of the chord, at most 24° inward each, so that the ring stays simple.
                let way = b - a;
                let side = kurbo::Vec2::new(-way.y, way.x) * 0.15;
                path.curve_to(a + way * 0.3 + side * bends[i].0, b - way * 0.3 + side * bends[i].1, b);
            }
        }
        path.close_path();
        let path = if backwards { path.reverse_subpaths() } else { path };
        let polygon = outward(&path);
        prop_assert!(polygon.len() >= 3);
        for segment in path.segments() {
            for k in 0..=40 {
                let p = segment.eval(f64::from(k) / 40.0);
                prop_assert!(outside(&polygon, p) <= 1e-5, "{p:?} lies {} outside", outside(&polygon, p));
            }
        }
        for q in &polygon {
            let far = path.segments().map(|s| s.nearest(*q, 1e-9).distance_sq.sqrt()).fold(f64::INFINITY, f64::min);
            prop_assert!(far <= 0.1001, "{q:?} lies {far} off");
        }
    }
}
