//! Lay plans: searched, laid by hand, kept in the draft and told of; and how large a value may be with the cloth at hand.

use std::sync::Arc;

use tracewheel::base::{Code, DisplayUnit};
use tracewheel::compute::{Engine, Model};
use tracewheel::document::Draft;
use tracewheel::file;
use tracewheel::finish::{ClothBook, ClothCall, Finished, finish, plan_cloth, plan_need};
use tracewheel::output::lay::packing::LayFault;
use tracewheel::output::lay::{Lay, fresh_lay, kept_lays};
use tracewheel::output::{Cell, tables};
use tracewheel::proof::proof;
use tracewheel::session::{
    Command, LayCommand, LayEffort, LayHand, LayWish, Laying, Work, lay_table, lays, longest, longest_until,
    usual_wishes,
};

use super::laying::{DOWN, Made, draft, made, near, on_fold, piece, pieces, rectangle};

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
    let again = super::laying::made(&written);
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
        let m = super::laying::made(text);
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
    assert!(hand.faults(DisplayUnit::Cm).is_empty());
    hand.put(0, 0, 0.0, 0.0);
    // 300 mm along the cloth: 50 of them lie on the other one.
    hand.put(0, 1, 250.0, 0.0);
    let faults = hand.faults(DisplayUnit::Cm);
    let [fault] = faults.as_slice() else { panic!("{faults:?}") };
    assert_eq!(fault.pieces, [0, 1]);
    assert!((24.0..51.0).contains(&fault.mm), "{fault:?}");
    assert!(hand.lay.faults().iter().any(|(_, f)| matches!(f, LayFault::Overlap { .. })));
    let plan = hand.lay.to_plan(&made.model, ("x", "100 cm"), &[]);
    let mut work = Work::here(file::read(&text).unwrap().draft);
    let why = work.run(&Command::Lay(LayCommand::Keep(vec![plan]))).unwrap_err().to_string();
    assert!(why.contains("1 place of it cannot be cut as it lies"), "{why}");
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

/// Laid by hand one behind the other, eight pieces of 24 x 30 cm take 240 cm; a search goes on from nothing as well, around a locked piece, and
/// has less than half of that at once.
#[test]
fn a_long_lay_by_hand_gives_way_to_a_short_one() {
    let text = draft(
        &piece(
            "a",
            &[(0.0, 0.0), (24.0, 0.0), (14.0, 30.0), (0.0, 30.0)],
            &format!("material: \"main\", count: 8, {DOWN}"),
        ),
        "",
        "",
    );
    let made = made(&text);
    let fresh = made.laid(1000.0);
    let mut hand = LayHand::of(Lay::clone(&fresh));
    for i in 0..8 {
        hand.put(0, i, 10_000.0, 0.0);
    }
    for i in 0..8 {
        hand.put(0, i, 300.0 * i as f64, if i % 2 == 0 { 0.0 } else { 5000.0 });
    }
    assert!(hand.faults(DisplayUnit::Cm).is_empty());
    near(hand.need().exact, 2400.0);
    hand.lock(0, 0, true);
    let stays = hand.lay.room(0, &hand.lay.layouts[0].laid[0]);
    // So few moves make nothing of the long lay itself.
    let effort = LayEffort { moves: 5, seed: 1, time: None };
    let row = lays((&made.model, &made.finished), &[made.wish(1000.0)], &[Some(hand)], &effort).remove(0);
    let lay = row.best.unwrap();
    assert!(lay.need().exact < 1200.0, "{} and {}", lay.need().exact, fresh.need().exact);
    assert!(pieces(&lay).iter().any(|p| (p.4.x0 - stays.x0).abs() < 0.01 && (p.4.y0 - stays.y0).abs() < 0.01));
}

/// Two sizes of 20 x 30 and 20 x 31 cm.
fn two_sizes() -> String {
    let one = rectangle("a", 20.0, 30.0, &format!("material: \"main\", count: 4, {DOWN}")).replace("30 cm", "tall");
    let rows = "chart: (girth: [\"S\", \"M\"], rows: [(name: \"tall\", by: [girth], cells: [(\"S\", \"30 cm\"), (\"M\", \"31 cm\")])])";
    draft(&one, "widths: [\"100 cm\"]", "").replace("chart: (girth: [\"one\"])", rows)
}

/// A smaller size needs more, since a locked piece lies far off; the larger one's lay is shorter and lies there as well, but the lock stays.
#[test]
fn a_lock_is_not_lost_to_the_lay_of_a_larger_size() {
    let made = made(&two_sizes());
    let of = |case: usize| {
        let wish = made.wish(1000.0);
        LayWish { call: ClothCall { sizes: vec![(case, 1)], ..wish.call.clone() }, ..wish }
    };
    let mut hand = LayHand::of(Lay::clone(&made.lay(&of(0)).unwrap()));
    hand.put(0, 0, 1500.0, 0.0);
    hand.lock(0, 0, true);
    let effort = LayEffort { moves: 700, seed: 1, time: None };
    let rows = lays((&made.model, &made.finished), &[of(0), of(1)], &[Some(hand)], &effort);
    let (small, large) = (rows[0].best.as_ref().unwrap(), rows[1].best.as_ref().unwrap());
    assert!(large.need().exact < 700.0, "{}", large.need().exact);
    near(small.need().exact, 1800.0);
    assert!(rows[0].odd.is_some());
}

/// What is kept of one cloth and is stale is told once, with its sizes; and a size that needs more than a larger one is told with both.
#[test]
fn what_is_told_of_kept_plans_is_told_by_cloth() {
    let text = two_sizes();
    let made = made(&text);
    let of = |case: usize| {
        let wish = made.wish(1000.0);
        LayWish { call: ClothCall { sizes: vec![(case, 1)], ..wish.call.clone() }, ..wish }
    };
    let short = made.lay(&of(1)).unwrap();
    let mut long = LayHand::of(Lay::clone(&made.lay(&of(0)).unwrap()));
    let proven = |text: &str, code: Code| {
        let draft = file::read(text).unwrap().draft;
        let model = Engine::new().compute(&draft);
        let found = proof(&model.draft, &model).into_iter().filter(|f| f.code == code);
        found.map(|f| (tracewheel::texts::message(&f, DisplayUnit::Cm), f.sizes)).collect::<Vec<_>>()
    };
    let kept = |hand: &LayHand| {
        let mut work = Work::here(file::read(&text).unwrap().draft);
        let plans =
            vec![hand.lay.to_plan(&made.model, ("", "100 cm"), &[]), short.to_plan(&made.model, ("", "100 cm"), &[])];
        work.run(&Command::Lay(LayCommand::Keep(plans))).unwrap();
        file::write(work.draft())
    };
    let even = kept(&long);
    assert_eq!(proven(&even, Code::LayOddSize), []);
    long.put(0, 0, 650.0, 0.0);
    let odd = kept(&long);
    let told = proven(&odd, Code::LayOddSize);
    let [(words, sizes)] = told.as_slice() else { panic!("{told:?}") };
    assert!(words.starts_with("on main 100 cm S needs 95 cm and the larger M only "), "{words}");
    assert_eq!(sizes, &["S"]);
    assert_eq!(proven(&odd, Code::LayStale), []);
    let stale = proven(&odd.replace("count: 4", "count: 6"), Code::LayStale);
    let [(words, sizes)] = stale.as_slice() else { panic!("{stale:?}") };
    assert!(words.starts_with("kept lay plans on main 100 cm are not ones of this draft any more"), "{words}");
    assert!(words.ends_with("(2 sizes: S, M)"), "{words}");
    assert_eq!(sizes, &["S", "M"]);
}

/// Cloth that is laid otherwise than its plans: they are no columns, but stand together by their cloth; a width of which no card knows does too.
#[test]
fn plans_of_cloth_that_no_card_tells_stand_by_themselves() {
    let text = two_sizes();
    let made = made(&text);
    let mut work = Work::here(file::read(&text).unwrap().draft);
    let plan = made.laid(1000.0).to_plan(&made.model, ("", "100 cm"), &[]);
    work.run(&Command::Lay(LayCommand::Keep(vec![plan]))).unwrap();
    let kept = file::write(work.draft());
    let table = |text: &str| {
        let m = super::laying::made(text);
        lay_table(&m.model, &m.finished, &[])
    };
    let of = |text: &str| {
        let t = table(text);
        let untold: Vec<usize> = t.untold().iter().map(Vec::len).collect();
        (t.columns.len(), t.cells.len(), untold, t.lost.len())
    };
    assert_eq!(of(&kept), (1, 2, vec![], 0));
    for (from, to) in [
        ("name: \"main\",", "name: \"main\", laid: folded,"),
        ("name: \"main\",", "name: \"main\", nap: with,"),
        ("widths: [\"100 cm\"]", "widths: [\"90 cm\"]"),
    ] {
        assert!(kept.contains(from), "{kept}");
        let other = kept.replacen(from, to, 1);
        assert_eq!(of(&other), (1, 3, vec![1], 0), "{to}");
        let told = table(&other);
        assert_eq!(told.untold()[0][0].key.sizes_called(), "S");
    }
    // A cloth without widths is one of its plans.
    assert_eq!(of(&kept.replacen("widths: [\"100 cm\"]", "widths: []", 1)).0, 1);
}

/// Folded farther, the plan of before gives way to the new one.
#[test]
fn how_far_a_cloth_is_folded_makes_no_second_plan() {
    let half = on_fold("laid: folded_part, folded_part: \"30 cm\"");
    let keep = |text: &str| {
        let made = made(text);
        let mut work = Work::here(file::read(text).unwrap().draft);
        let plan = made.laid(1000.0).to_plan(&made.model, ("", "100 cm"), &[]);
        work.run(&Command::Lay(LayCommand::Keep(vec![plan]))).unwrap();
        file::write(work.draft())
    };
    let first = keep(&half);
    assert_eq!(first.matches("digest: \"").count(), 1);
    let farther = first.replacen("folded_part: \"30 cm\"", "folded_part: \"40 cm\"", 1);
    assert_ne!(first, farther);
    let again = keep(&farther);
    assert_eq!(again.matches("digest: \"").count(), 1, "{again}");
    assert!(again.contains("folded_part: \"400 mm\""), "{again}");
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
    assert_eq!((found.now, found.now_fits()), (500.0, true));
    let short = longest(&made.model.draft, "long", &made.wish(900.0), 321.0, &effort).unwrap();
    assert_eq!((short.value, short.now_fits()), (321.0, false));
    assert!(longest(&made.model.draft, "wide", &made.wish(900.0), 321.0, &effort).is_err());
}

/// What is too long now is told with what it needs; values that read alike are told once.
#[test]
fn what_is_too_long_now_says_what_it_needs() {
    let panel =
        rectangle("panel", 40.0, 50.0, &format!("material: \"main\", count: 2, {DOWN}")).replace("50 cm", "long");
    let text = draft(&panel, "widths: [\"90 cm\"]", "values: [(name: \"long\", is: \"50 cm\")]");
    let made = made(&text);
    let effort = LayEffort { moves: 60, seed: 1, time: None };
    let of = |have: f64| longest(&made.model.draft, "long", &made.wish(900.0), have, &effort);
    let words = of(321.0).unwrap().words("long", DisplayUnit::Cm);
    assert!(words.contains("Now it is 50 cm, which needs 50 cm of cloth, 17.9 cm more than there is."), "{words}");
    // In eighths of an inch 32.1 and 32.2 cm are one.
    let inches = of(321.0).unwrap().words("long", DisplayUnit::InchEighths);
    assert!(inches.starts_with("long can be 12 5/8 in: the lay then takes all of 12 5/8 in."), "{inches}");
    assert!(inches.ends_with("With more of it no lay was found."), "{inches}");
    let fits = of(823.4).unwrap().words("long", DisplayUnit::Cm);
    assert!(fits.contains("Now it is 50 cm, which fits.") && fits.contains("For 82.4 cm no lay was found."), "{fits}");
    let nothing = of(0.5).unwrap_err().to_string();
    assert!(nothing.contains("50 cm is what it is now, and then 50 cm of cloth are needed"), "{nothing}");
}

/// Told to stop it stops within a lay, not behind it: each would take ten million moves.
#[test]
fn the_longest_stops_within_a_lay() {
    let panel = piece(
        "panel",
        &[(0.0, 0.0), (40.0, 0.0), (31.0, 50.0), (3.0, 44.0)],
        &format!("material: \"main\", count: 6, {DOWN}"),
    );
    let text = draft(
        &panel.replace("50 cm", "long"),
        "widths: [\"90 cm\"], sold_in: \"1 mm\"",
        "values: [(name: \"long\", is: \"50 cm\")]",
    );
    let made = made(&text);
    let asked = std::sync::atomic::AtomicUsize::new(0);
    let stop = || asked.fetch_add(1, std::sync::atomic::Ordering::Relaxed) > 200;
    let effort = LayEffort { moves: 10_000_000, seed: 1, time: None };
    let found = longest_until(&made.model.draft, ("long", &made.wish(900.0), 300.0), &effort, &stop);
    assert!(matches!(found, Err(tracewheel::session::LongestStop::Told)), "{found:?}");
    assert!(asked.into_inner() < 260, "it was asked on and on");
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
        super::laying::made(&file::write(work.draft()))
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

/// Proof compares the cloth of sizes by the places of kept plans; it stands below what lays them out and tells their length, so both are held together
/// here: by 100 and 80 plans of both patterns, and by lays with washing and with strips that are counted, laid along and on the bias.
#[test]
fn proof_takes_as_much_cloth_for_a_kept_plan_as_is_told() {
    for name in ["work-smock", "childs-smock"] {
        let text = std::fs::read_to_string(format!("examples/{name}.ron")).unwrap();
        let model = Engine::new().compute(&file::read(&text).unwrap().draft);
        let finished = finish(&model.draft, &model);
        let mut looked = 0;
        for (model, finished) in model.of_views().iter().zip(finished.of_views()) {
            let book = ClothBook::new(model, finished);
            for kept in kept_lays(&book) {
                let plan = &model.draft.plans[kept.place];
                let on = plan_cloth(&book, plan).unwrap();
                let (proofs, told) = (plan_need(model, &on, plan).unwrap(), kept.lay.unwrap().need().exact);
                assert!((proofs - told).abs() < 0.01, "{name}, plan {}: {proofs} and {told} mm", kept.place);
                looked += 1;
            }
        }
        assert!(looked >= 80, "{name}: {looked}");
    }
    for strips in ["across, in_lay: counted", "along", "bias"] {
        let text = draft(
            &rectangle("a", 50.0, 60.0, &format!("material: \"main\", count: 2, {DOWN}")),
            "widths: [\"100 cm\"], shrinkage_along: \"10 %\", shrinks: before_cutting",
            &format!(
                "strips: [(name: \"tie\", material: \"main\", length: \"50 cm\", width: \"5 cm\", count: 4, grain: {strips})]"
            ),
        );
        let made = made(&text);
        let lay = made.laid(1000.0);
        let plan = lay.to_plan(&made.model, ("main", "100 cm"), &[]);
        let on = plan_cloth(&ClothBook::new(&made.model, &made.finished), &plan).unwrap();
        near(plan_need(&made.model, &on, &plan).unwrap(), lay.need().exact);
    }
}
