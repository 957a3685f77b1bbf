//! Cloth: what comes on it, how it may lie, how much must be bought. Plans that are kept, found and laid by hand are `laying_plans`; the packer
//! has tests of its own.
//!
//! reason: all of it is told of the same few small drafts, which are made here.

use std::sync::Arc;

use kurbo::{BezPath, ParamCurve, ParamCurveNearest, Point, Shape};
use proptest::prelude::*;
use tracewheel::compute::{Engine, Model};
use tracewheel::document::{ClothLaid, Draft};
use tracewheel::file;
use tracewheel::finish::{ClothBook, ClothCall, Finished, OnCloth, PlanState, finish, outward, plan_state};
use tracewheel::output::lay::packing::Touch;
use tracewheel::output::lay::{Lay, LayError, fresh_lay, kept_lays, yards};
use tracewheel::output::{Cell, tables};
use tracewheel::session::{Command, LayCommand, LayEffort, LayHand, LayWish, Work, job_of, jobs_of, lays};

/// A piece with straight edges between these corners, cm, and its cut.
pub(super) fn piece(name: &str, corners: &[(f64, f64)], cut: &str) -> String {
    let n = corners.len();
    let points: String =
        corners.iter().enumerate().map(|(i, (x, y))| format!("(name: \"p{i}\", at: \"({x} cm, {y} cm)\"),")).collect();
    let edges: String =
        (0..n).map(|i| format!("(name: \"e{i}\", from: \"p{i}\", by: [straight(\"p{}\")]),", (i + 1) % n)).collect();
    format!("(name: \"{name}\", points: [{points}], edges: [{edges}], cuts: [({cut})]),")
}

pub(super) fn rectangle(name: &str, wide: f64, high: f64, cut: &str) -> String {
    piece(name, &[(0.0, 0.0), (wide, 0.0), (wide, high), (0.0, high)], cut)
}

/// A draft of one size without allowances.
pub(super) fn draft(pieces: &str, material: &str, rest: &str) -> String {
    format!(
        "(format: \"tracewheel draft\", version: 0, display: cm, chart: (girth: [\"one\"]), pieces: [{pieces}], \
         materials: [(name: \"main\", {material})], {rest})"
    )
}

pub(super) const DOWN: &str = "grain: (heading: \"90 deg\")";

pub(super) struct Made {
    pub(super) model: Model,
    pub(super) finished: Finished,
}

pub(super) fn made(text: &str) -> Made {
    let opened = file::read(text).unwrap_or_else(|e| panic!("{e}\n{text}")).draft;
    let model = Engine::new().compute(&opened);
    let finished = finish(&model.draft, &model);
    Made { model, finished }
}

impl Made {
    pub(super) fn wish(&self, width: f64) -> LayWish {
        let call =
            ClothCall { material: "main".into(), width, laid: None, nap: None, folded_part: None, sizes: vec![(0, 1)] };
        LayWish { view: 0, width: format!("{width} mm"), call }
    }

    pub(super) fn on(&self, width: f64) -> OnCloth {
        ClothBook::new(&self.model, &self.finished).on_cloth(&self.wish(width).call).unwrap()
    }

    pub(super) fn lay(&self, wish: &LayWish) -> Result<Arc<Lay>, LayError> {
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

    pub(super) fn laid(&self, width: f64) -> Arc<Lay> {
        self.lay(&self.wish(width)).unwrap()
    }
}

#[track_caller]
pub(super) fn near(have: f64, wanted: f64) {
    assert!((have - wanted).abs() < 0.02, "{have} and not {wanted}");
}

/// All pieces of a lay: name, turned, mirrored, copies that come of it, box.
pub(super) fn pieces(lay: &Lay) -> Vec<(String, f64, bool, u32, kurbo::Rect)> {
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
    assert!(lay.notes().iter().any(|n| n == "sleeve lies on a single layer of cloth."), "{:?}", lay.job.notes);
    let wrong = draft(&sleeve(&format!("material: \"main\", count: 2, face: wrong_side_up, {DOWN}")), "", "");
    assert!(pieces(&made(&wrong).laid(1000.0)).iter().all(|p| p.2));
}

/// Of an odd number one is left over. One that is the same turned over lies on the two layers beside the pair and is cut from one of them: 20 and
/// 20 of 50 cm. One that is handed never does, it goes on a stretch of its own behind.
#[test]
fn what_is_left_of_pairs_is_cut_from_one_layer_or_lies_behind() {
    let cut = format!("material: \"main\", count: 3, {DOWN}");
    let text = draft(&rectangle("a", 20.0, 30.0, &cut), "laid: folded", "");
    let lay = made(&text).laid(1000.0);
    assert_eq!(laid_so(&lay), [ClothLaid::Folded]);
    near(lay.need().exact, 300.0);
    let gives: Vec<u32> = pieces(&lay).iter().map(|p| p.3).collect();
    assert_eq!(gives, [2, 1]);
    assert_eq!(one_layer(&lay), ["a"]);
    let words = "Cut from one layer only, the other one stays whole: a.";
    assert!(lay.reasons().iter().any(|r| r == words), "{:?}", lay.reasons());
    let handed = piece("a", &[(0.0, 0.0), (20.0, 0.0), (24.0, 30.0), (0.0, 30.0)], &cut);
    let lay = made(&draft(&handed, "laid: folded", "")).laid(1000.0);
    assert_eq!(laid_so(&lay), [ClothLaid::Folded, ClothLaid::Open]);
    near(lay.need().exact, 600.0);
    assert_eq!(pieces(&lay).iter().map(|p| p.3).sum::<u32>(), 3);
    // What must show its right side, or lies at a border, neither.
    for more in ["face: right_side_up", "border: \"e1\""] {
        let cut = format!("material: \"main\", count: 1, {more}, {DOWN}");
        let lay = made(&draft(&rectangle("a", 20.0, 30.0, &cut), "laid: folded", "")).laid(1000.0);
        assert!(lay.job.odd.is_empty() && one_layer(&lay).is_empty(), "{more}");
    }
}

/// How the stretches of a lay lie.
fn laid_so(lay: &Lay) -> Vec<ClothLaid> {
    lay.job.stretches.iter().map(|s| s.laid).collect()
}

/// What is cut from one of two layers.
pub(super) fn one_layer(lay: &Lay) -> Vec<&str> {
    let of = |s: &tracewheel::output::lay::LayStretch, l: &tracewheel::output::lay::packing::Layout| {
        l.laid.iter().map(|l| l.shape).filter(|k| s.shapes[*k].one_layer).collect::<Vec<_>>()
    };
    let each = lay.job.stretches.iter().zip(&lay.layouts);
    each.flat_map(|(s, l)| of(s, l).into_iter().map(|k| s.shapes[k].name.as_str())).collect()
}

/// A strip of 60 x 8 cm, cut once: beside a pair of 35 x 60 cm on half of 100 cm, where 15 cm are free, it takes no cloth; on a single layer behind
/// it would take 60 cm more. A third of 45 cm is not free there.
#[test]
fn a_single_strip_lies_on_folded_cloth_where_that_is_shorter() {
    let text = |wide: f64| {
        let strip = format!(
            "strips: [(name: \"tie\", material: \"main\", length: \"60 cm\", width: \"{wide} cm\", count: 1, grain: along)]"
        );
        draft(&rectangle("a", 35.0, 60.0, &format!("material: \"main\", count: 2, {DOWN}")), "laid: folded", &strip)
    };
    let narrow = made(&text(8.0)).laid(1000.0);
    near(narrow.need().exact, 600.0);
    assert_eq!(one_layer(&narrow), ["tie"]);
    let behind = job_of(&made(&text(8.0)).model, &made(&text(8.0)).finished, &made(&text(8.0)).wish(1000.0)).unwrap();
    assert_eq!(behind.stretches.iter().map(|s| s.laid).collect::<Vec<_>>(), [ClothLaid::Folded, ClothLaid::Open]);
    let wide = made(&text(45.0)).laid(1000.0);
    near(wide.need().exact, 1200.0);
    assert!(one_layer(&wide).is_empty(), "no longer that way, so it is laid without a spare one");
}

/// Four single ones of 45 x 60 cm: two and two side by side on 100 cm in a single layer take 120 cm, on 50 cm of two layers 240.
#[test]
fn large_single_ones_lie_behind_where_that_is_shorter() {
    let one = |name: &str| rectangle(name, 45.0, 60.0, &format!("material: \"main\", count: 1, {DOWN}"));
    let text = draft(&["a", "b", "c", "d"].map(one).concat(), "laid: folded", "");
    let lay = made(&text).laid(1000.0);
    near(lay.need().exact, 1200.0);
    assert_eq!((one_layer(&lay).len(), lay.job.odd.len()), (0, 4));
}

/// The same from top to bottom but not from side to side: from the other layer it comes out turned by half, which nap forbids.
#[test]
fn what_may_be_cut_from_either_layer_hangs_on_nap() {
    let arrow = [(0.0, 0.0), (20.0, 0.0), (30.0, 15.0), (20.0, 30.0), (0.0, 30.0)];
    let text = draft(&piece("a", &arrow, &format!("material: \"main\", count: 1, {DOWN}")), "laid: folded", "");
    let odd = |text: &str| {
        let made = made(text);
        job_of(&made.model, &made.finished, &made.wish(1000.0)).unwrap().odd.len()
    };
    assert_eq!(odd(&text), 1);
    assert_eq!(odd(&text.replace("laid: folded", "laid: folded, nap: with")), 0);
    assert_eq!(odd(&text.replace("heading: \"90 deg\"", "heading: \"90 deg\", ways: one")), 0);
    // With its thread along the line about which it is the same, nap forbids nothing.
    let level = text.replace("heading: \"90 deg\"", "heading: \"0 deg\"");
    assert_eq!(odd(&level.replace("laid: folded", "laid: folded, nap: with")), 1);
}

/// Kept, written and read again it is still cut from one layer; said otherwise in the file it is no plan any more.
#[test]
fn one_layer_is_kept_and_a_change_of_it_is_seen() {
    let cut = format!("material: \"main\", count: 3, {DOWN}");
    let text = draft(&rectangle("a", 20.0, 30.0, &cut), "laid: folded, widths: [\"100 cm\"]", "");
    let made = made(&text);
    let plan = made.laid(1000.0).to_plan(&made.model, ("main", "100 cm"), &[]);
    let mut work = Work::here(file::read(&text).unwrap().draft);
    work.run(&Command::Lay(LayCommand::Keep(vec![plan]))).unwrap();
    let written = file::write(work.draft());
    assert_eq!(written.matches("one_layer: true").count(), 1, "{written}");
    let again = self::made(&written);
    let kept = kept_lays(&ClothBook::new(&again.model, &again.finished));
    let lay = kept[0].lay.as_ref().unwrap();
    assert_eq!(one_layer(lay), ["a"]);
    near(lay.need().exact, 300.0);
    let other = self::made(&written.replace("one_layer: true", "one_layer: false"));
    assert!(kept_lays(&ClothBook::new(&other.model, &other.finished))[0].lay.is_err());
    // By hand it stays what it is, and a search goes on from it.
    let (_, locked) = fresh_lay(&ClothBook::new(&again.model, &again.finished), &again.model.draft.plans[0]).unwrap();
    let hand = LayHand { lay: lay.clone(), locked };
    let effort = LayEffort { moves: 100, seed: 1, time: None };
    let row = lays((&again.model, &again.finished), &[again.wish(1000.0)], &[Some(hand)], &effort).remove(0);
    near(row.best.unwrap().need().exact, 300.0);
}

pub(super) fn on_fold(material: &str) -> String {
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
    assert!(lay.notes().iter().any(|n| n.contains("too wide for the folded cloth")));
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
    let (mut compared, mut ways) = (0, 0);
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
                        let jobs = jobs_of(&model, &finished, &wish).unwrap_or_else(|e| panic!("{path}: {e}"));
                        let of = |s: &tracewheel::output::lay::LayStretch| -> u64 {
                            s.shapes
                                .iter()
                                .zip(&s.job.shapes)
                                .map(|(about, shape)| u64::from(about.gives) * shape.count as u64)
                                .sum()
                        };
                        for job in &jobs {
                            assert_eq!(job.stretches.iter().map(of).sum::<u64>(), job.on.count(), "{path} {laid:?}");
                            ways += usize::from(!job.one_layer.is_empty());
                        }
                        compared += 1;
                    }
                }
            }
        }
    }
    assert!(compared > 100 && ways > 20, "{compared} {ways}");
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
