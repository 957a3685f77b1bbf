//! An engine that has computed the draft before gives what one that knows nothing gives, bit for bit: formulas with other numbers, with other
//! names, broken and mended, cells of the chart, values, points, edges.

use std::sync::Arc;

use tracewheel::compute::{Engine, Model};
use tracewheel::document::{Draft, Role, Segment};
use tracewheel::language::literals;

use crate::seeds::generate;

/// A small generator of numbers; the same for the same seed.
struct Dice(u64);

impl Dice {
    fn below(&mut self, n: usize) -> usize {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        ((self.0 >> 33) as usize) % n.max(1)
    }
}

/// The text with one of its numbers another.
fn nudged(text: &str, dice: &mut Dice) -> String {
    let all = literals(text);
    if all.is_empty() {
        return text.to_owned();
    }
    let span = all[dice.below(all.len())].span;
    let number: f64 = text[span.start..span.end]
        .split(|c: char| !c.is_ascii_digit() && c != '.')
        .next()
        .unwrap()
        .parse()
        .unwrap_or(1.0);
    let unit =
        text[span.start..span.end].trim_start_matches(|c: char| c.is_ascii_digit() || "./ ".contains(c)).to_owned();
    format!("{}{:.3} {unit}{}", &text[..span.start], number * 1.01 + 0.001, &text[span.end..])
}

/// Changes a text somewhere; says what it did.
fn change(draft: &mut Draft, dice: &mut Dice) -> String {
    let how = dice.below(12);
    let edit = |text: &mut String, dice: &mut Dice| match how {
        0 => text.push_str(" +"),
        1 => *text = text.replace("right", "left"),
        2 => *text = text.trim_end_matches(" +").to_owned(),
        _ => *text = nudged(text, dice),
    };
    match dice.below(6) {
        0 if !draft.values.is_empty() => {
            let i = dice.below(draft.values.len());
            let value = &mut draft.values[i];
            let field = if value.is_found() {
                [&mut value.start, &mut value.least, &mut value.most]
            } else {
                return {
                    edit(&mut value.is, dice);
                    format!("value {}: {}", value.name, value.is)
                };
            };
            let text = field.into_iter().find(|t| !t.is_empty()).unwrap();
            edit(text, dice);
            format!("found value: {text}")
        }
        1 => {
            let i = dice.below(draft.chart.rows.len());
            let row = &mut draft.chart.rows[i];
            if row.cells.is_empty() {
                edit(&mut row.is, dice);
                return format!("row {}: {}", row.name, row.is);
            }
            let k = dice.below(row.cells.len());
            edit(&mut row.cells[k].1, dice);
            format!("cell of {}: {}", row.name, row.cells[k].1)
        }
        2 => {
            let mut texts = Vec::new();
            draft.each_text(&mut |at, role, text| {
                if *role == Role::Formula && !text.is_empty() {
                    texts.push((at.clone(), text.to_owned()));
                }
            });
            let (at, mut text) = texts[dice.below(texts.len())].clone();
            edit(&mut text, dice);
            draft.set_text(&at, &text);
            format!("{at:?}: {text}")
        }
        3 => {
            let i = dice.below(draft.pieces.len());
            let piece = Arc::make_mut(&mut draft.pieces[i]);
            if let (Some(dart), true) = (piece.darts.first_mut(), how > 5) {
                edit(if how.is_multiple_of(2) { &mut dart.intake } else { &mut dart.tip }, dice);
                return format!("dart in {}: {} {}", piece.name, dart.intake, dart.tip);
            }
            let k = dice.below(piece.edges.len());
            let Some(Segment::Curve(a, b, _)) = piece.edges[k].by.first_mut() else { return "nothing".into() };
            if how.is_multiple_of(2) {
                std::mem::swap(a, b)
            } else {
                edit(a, dice)
            }
            format!("handle in {}: {a}", piece.name)
        }
        _ => {
            let i = dice.below(draft.pieces.len());
            let piece = Arc::make_mut(&mut draft.pieces[i]);
            let k = dice.below(piece.points.len());
            // Now and then it hangs on another point.
            if how == 3 && k > 0 {
                let other = piece.points[dice.below(k)].name.clone();
                piece.points[k].at = format!("{other}.right({k} mm)");
            } else {
                edit(&mut piece.points[k].at, dice);
            }
            format!("point {}.{}: {}", piece.name, piece.points[k].name, piece.points[k].at)
        }
    }
}

/// Everything of a model is that of another one.
fn same(have: &Model, wanted: &Model, what: &str) {
    assert_eq!(have.findings, wanted.findings, "{what}");
    for (a, b) in have.cases.iter().zip(&wanted.cases) {
        for (i, (x, y)) in a.slots.iter().zip(b.slots.iter()).enumerate() {
            assert_eq!(x, y, "{what}: {}", have.plan.nodes[i].part.name);
        }
        assert_eq!((&a.untrue, &a.rows), (&b.untrue, &b.rows), "{what}");
        // As text: a residual may be no number, which is unlike itself.
        assert_eq!(format!("{:?}", a.solved), format!("{:?}", b.solved), "{what}");
    }
    assert_eq!(have.cases.len(), wanted.cases.len(), "{what}");
    assert_eq!(have.plan.nodes, wanted.plan.nodes, "{what}");
    assert_eq!(have.plan.tasks, wanted.plan.tasks, "{what}");
    assert_eq!(have.views.len(), wanted.views.len(), "{what}");
    have.views.iter().zip(&wanted.views).for_each(|(a, b)| same(a, b, &format!("{what}, view {}", b.view())));
}

#[test]
fn an_engine_that_knows_gives_what_one_gives_that_does_not() {
    let mut patched = 0;
    for seed in 1..=36 {
        let options = generate::Options {
            seed,
            pieces: 3,
            points: 14,
            sizes: 4,
            found: 3,
            broken: if seed % 4 == 0 { 0.1 } else { 0.0 },
            views: if seed > 24 { 1 + seed as usize % 3 } else { 0 },
        };
        let mut draft = generate::draft(&options);
        let mut dice = Dice(seed);
        let mut engine = Engine::new();
        let mut before = engine.compute(&draft);
        for step in 0..40 {
            let said = change(&mut draft, &mut dice);
            let (have, wanted) = (engine.compute(&draft), Engine::new().compute(&draft));
            same(&have, &wanted, &format!("seed {seed}, step {step}: {said}"));
            // A patched plan shares its nodes with the one before.
            patched += usize::from(Arc::ptr_eq(&before.plan.nodes[0], &have.plan.nodes[0]));
            before = have;
        }
    }
    assert!(patched > 36 * 40 / 2, "{patched}");
}

#[test]
fn what_was_untrue_is_true_again() {
    let text = std::fs::read_to_string("examples/bodice-sleeve.ron").unwrap();
    let fine = tracewheel::file::read(&text).unwrap().draft;
    let mut broken = fine.clone();
    broken.values.iter_mut().find(|v| v.name == "arm_ease").unwrap().is = "26 cm".into();
    let untrue = |engine: &mut Engine, draft: &Draft| -> Vec<Vec<bool>> {
        engine.compute(draft).cases.iter().map(|c| c.untrue.clone()).collect()
    };
    let mut engine = Engine::new();
    for draft in [&fine, &broken, &fine] {
        let (have, wanted) = (untrue(&mut engine, draft), untrue(&mut Engine::new(), draft));
        assert_eq!(have, wanted);
        assert_eq!(wanted.iter().flatten().any(|u| *u), draft == &broken);
    }
}

/// A row that is a number now and was a length: everything that names it is read anew.
#[test]
fn a_row_of_another_kind_is_read_anew() {
    let text = |wide: &str| {
        format!(
            r#"(format: "tracewheel draft", version: 0, chart: (girth: ["1", "2"], rows: [
                (name: "bust", by: [girth], cells: [("1", "84 cm"), ("2", "88 cm")]), (name: "wide", is: "{wide}")]),
            pieces: [(name: "p", points: [(name: "a", at: "(0 cm, 0 cm)"), (name: "b", at: "a.right(wide)"), (name: "c", at: "a.down(bust / 4)")])])"#
        )
    };
    let read = |wide: &str| tracewheel::file::read(&text(wide)).unwrap().draft;
    let mut engine = Engine::new();
    for (wide, troubles) in [("20 cm", 0), ("20", 1), ("21 cm", 0)] {
        let have = engine.compute(&read(wide));
        same(&have, &Engine::new().compute(&read(wide)), wide);
        assert_eq!(have.findings.len(), troubles, "{wide}: {:#?}", have.findings);
    }
}

/// Of two blocks that are drawn by the same words, with other values of their own behind them.
#[test]
fn a_piece_of_another_block_is_made_anew() {
    let block = |name: &str, at: &str| {
        format!(
            r#"(name: "{name}", points: [(name: "o", at: "({at}, 0 cm)"), (name: "a", at: "o.right(10 cm)"), (name: "b", at: "o.down(10 cm)")],
            edges: [(name: "top", from: "o", by: [straight("a")]), (name: "long", from: "a", by: [straight("b")]), (name: "back", from: "b", by: [straight("o")])])"#
        )
    };
    let text = |of: &str| {
        format!(
            r#"(format: "tracewheel draft", version: 0, chart: (girth: ["1"]), pieces: [{}, {},
            (name: "made", of: "{of}", steps: [(name: "s", does: move_edge(edge: "long", by: "1 cm"))])])"#,
            block("one", "0 cm"),
            block("two", "50 cm")
        )
    };
    let mut engine = Engine::new();
    for (of, x) in [("one", 0.0), ("two", 500.0), ("one", 0.0)] {
        let draft = tracewheel::file::read(&text(of)).unwrap().draft;
        let have = engine.compute(&draft);
        same(&have, &Engine::new().compute(&draft), of);
        let node = have.plan.node_named("made.o").unwrap();
        let place = have.item(0, node).unwrap().point().unwrap();
        assert_eq!((place.x, place.y), (x, 0.0), "{of}");
    }
}

/// What a step draws that is not the last one: a round hem, by other handles.
#[test]
fn a_step_before_the_last_is_read_again() {
    let pieces = |deep: &str| {
        format!(
            r#"(name: "p", of: "block", steps: [
            (name: "round", does: redraw(edge: "hem", by: [curve("se.down({deep}).left(5 cm)", "sw.down({deep}).right(5 cm)", "sw")])),
            (name: "over", does: turn_over)])"#
        )
    };
    let mut engine = Engine::new();
    let mut areas = Vec::new();
    for deep in ["2 cm", "3 cm", "2 cm"] {
        let draft = crate::derived::draft(&pieces(deep));
        let have = engine.compute_with(&draft, &["area(p)"]);
        same(&have, &Engine::new().compute_with(&draft, &["area(p)"]), deep);
        areas.push(have.item(0, have.plan.extras[0].unwrap()).unwrap().real().unwrap());
    }
    // 20 cm wide, handles h below and a quarter in from the ends: y = 3 h t (1 - t), dx = -150 mm (1 + 2 t (1 - t)) dt, so 105 mm h.
    assert!((areas[1] - areas[0] - 105.0 * 10.0).abs() < 1e-6, "{areas:?}");
    assert_eq!(areas[0], areas[2]);
}
