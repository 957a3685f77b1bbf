//! Figures for `tests/bench/figures.py`, each a line of JSON: what a person waits for, with the times of several runs, and how they grow.

use std::sync::Arc;

use serde_json::{Value, json};
use tracewheel::compute::Engine;
use tracewheel::document::{Address, Inner, Part};
use tracewheel::finish::finish;
use tracewheel::output::MAX_SIDE;
use tracewheel::session::{Command, Order, PrintWish, Progress, TextCommand, What, Work, outputs};
use tracewheel::{file, proof};

use crate::{block, garment, generate, joined, large, pulled, times, told_memory, wardrobe};

fn told(what: &Value) {
    println!("{what}");
}

/// What a person waits for.
pub fn waits() {
    let row = |what: &str, times: Vec<f64>| told(&json!({ "what": what, "ms": times }));
    let mut bare = block();
    bare.chart.persons.clear();
    row("check block, 12 sizes, from scratch", times(31, |_| drop(Engine::new().compute(&bare))));
    let (a, b) = (pulled(&bare, "0.52"), pulled(&bare, "0.48"));
    let mut engine = Engine::new();
    engine.compute(&a);
    let by_turns = |i: usize| if i.is_multiple_of(2) { &b } else { &a };
    row("check block, one literal changed, 12 sizes true again", times(101, |i| drop(engine.compute(by_turns(i)))));
    let model = engine.compute(&a);
    row("its proof", times(31, |_| drop(proof::proof(&a, &model))));
    let made = garment();
    row("a block with 15 pieces derived from it, from scratch", times(11, |_| drop(Engine::new().compute(&made))));
    let (a, b) = (pulled(&made, "0.52"), pulled(&made, "0.48"));
    let mut engine = Engine::new();
    engine.compute(&a);
    let by_turns = |i: usize| if i.is_multiple_of(2) { &b } else { &a };
    row("the same, a handle of the block pulled", times(61, |i| drop(engine.compute(by_turns(i)))));
    let draft = joined();
    row(
        "30 pieces x 60 points x 20 sizes, 60 found values, from scratch",
        times(7, |_| drop(Engine::new().compute(&draft))),
    );
    let grown = |mm: f64| {
        let mut other = draft.clone();
        for cell in &mut other.chart.rows[0].cells {
            cell.1 = format!("{} + {mm} mm", cell.1);
        }
        other
    };
    let (a, b) = (grown(1.0), grown(2.0));
    let mut engine = Engine::new();
    engine.compute(&a);
    let by_turns = |i: usize| if i.is_multiple_of(2) { &b } else { &a };
    row("the same, a row of the chart on which all hangs", times(11, |i| drop(engine.compute(by_turns(i)))));
    let draft = wardrobe();
    let model = Engine::new().compute(&draft);
    row("600 cut lines of 30 pieces in 20 sizes", times(7, |_| drop(finish(&draft, &model))));
    let finished = finish(&draft, &model);
    let groups: Vec<(usize, Vec<usize>)> = (0..20).map(|case| (0, vec![case])).collect();
    let (wish, what) = (PrintWish::default(), What::ALL);
    let order = Order {
        draft: &draft,
        model: &model,
        finished: &finished,
        stem: "x",
        what: &what,
        groups: &groups,
        wish: &wish,
        width: MAX_SIDE,
        folder: None,
    };
    let make = || outputs(&order, &Progress::default(), &|_| ()).unwrap();
    let files = make().files;
    let bytes: usize = files.iter().map(|f| f.bytes.len()).sum();
    let what = format!("those 30 pieces in 20 sizes published, {} files of {:.0} MB", files.len(), bytes as f64 / 1e6);
    row(&what, times(3, |_| drop(make())));
}

/// How times and memory grow: one thing made larger at a time.
pub fn grown() {
    for pieces in [5, 15, 30, 60] {
        for sizes in [5, 10, 20, 40] {
            let draft = large(pieces, sizes);
            let ms = times(3, |_| drop(Engine::new().compute(&draft)));
            told(&json!({ "curve": "pieces x sizes", "pieces": pieces, "sizes": sizes, "ms": ms }));
        }
    }
    for points in [15, 30, 60, 120, 240] {
        let options = generate::Options { pieces: 10, points, sizes: 10, found: 20, broken: 0.0, views: 0, seed: 7 };
        let draft = generate::draft(&options);
        let ms = times(5, |_| drop(Engine::new().compute(&draft)));
        told(&json!({ "curve": "points", "points": points, "ms": ms }));
    }
    undo();
}

/// The large draft with more and more steps of undo: what a step adds to the memory, what an edit and its undo take with so many before it.
fn undo() {
    let draft = joined();
    let mut points = Vec::new();
    for piece in &draft.pieces {
        points.extend(piece.points.iter().map(|p| Part::Inner(piece.name.clone(), Inner::Point, p.name.clone())));
    }
    let mut work = Work::here(draft);
    let mut done = 0;
    let edit = |work: &mut Work, i: usize| {
        let at = Address::new(points[(i * 7) % points.len()].clone(), "at");
        // So little that no outline crosses itself: what is broken is not finished, and costs nothing.
        let to = format!("{}.moved(offset(0.0{} mm, 0 mm))", work.draft().text(&at).unwrap(), 1 + i % 5);
        work.run(&Command::Text(TextCommand::Set(at, to))).unwrap();
    };
    for steps in [0, 125, 250, 500, 1000] {
        while done < steps {
            edit(&mut work, done);
            done += 1;
        }
        let memory = told_memory("VmRSS");
        let before = Arc::clone(work.draft());
        let (mut edits, mut undos) = (Vec::new(), Vec::new());
        for i in 0..15 {
            edits.extend(times(1, |_| edit(&mut work, 11 * i)));
            undos.extend(times(1, |_| drop(work.undo())));
        }
        assert!(Arc::ptr_eq(work.draft(), &before), "undone to the very same draft");
        told(&json!({ "curve": "undo", "steps": steps, "memory_mb": memory, "edit_ms": edits, "undo_ms": undos }));
    }
}

/// Fixed work for counting instructions; what is counted stands in a function of its own, which `figures.py` names to callgrind.
pub fn counted(name: &str) {
    match name {
        "publishing" => {
            let draft = file::read(include_str!("../../examples/work-smock.ron")).unwrap().draft;
            let model = Engine::new().compute(&draft);
            let finished = finish(&draft, &model);
            let (wish, what) = (PrintWish::default(), What::ALL);
            let groups = [(0, vec![3])];
            counted_publishing(&Order {
                draft: &draft,
                model: &model,
                finished: &finished,
                stem: "x",
                what: &what,
                groups: &groups,
                wish: &wish,
                width: 900.0,
                folder: None,
            });
        }
        "pulling" => {
            let made = garment();
            let (a, b) = (pulled(&made, "0.52"), pulled(&made, "0.48"));
            let commands = [handle(&made, &a), handle(&made, &b)];
            counted_pulling(&mut Work::here(made), &commands);
        }
        "opening" => counted_opening(include_str!("../../examples/work-smock.ron")),
        other => panic!("{other} is not known: publishing, pulling, opening"),
    }
}

/// The command that makes of one draft the other, which differs from it in one text of the front's armhole.
fn handle(from: &tracewheel::document::Draft, to: &tracewheel::document::Draft) -> Command {
    let edge = Part::Inner("front".into(), Inner::Edge, "armhole".into());
    let differs = (0..9)
        .map(|i| Address::nth(edge.clone(), "arriving", i))
        .chain((0..9).map(|i| Address::nth(edge.clone(), "leaving", i)));
    let mut differs = differs.filter(|at| from.text(at).is_some() && from.text(at) != to.text(at));
    let at = differs.next().expect("a handle that differs");
    let text = to.text(&at).unwrap().to_owned();
    Command::Text(TextCommand::Set(at, text))
}

#[inline(never)]
fn counted_publishing(order: &Order<'_>) {
    let made = outputs(order, &Progress::default(), &|_| ()).unwrap();
    assert!(made.files.len() > 8, "{} files", made.files.len());
}

#[inline(never)]
fn counted_pulling(work: &mut Work, commands: &[Command]) {
    work.begin("pull");
    for i in 0..20 {
        work.run(&commands[i % commands.len()]).unwrap();
    }
    work.finish();
    assert!(work.computed().model.is_some());
}

#[inline(never)]
fn counted_opening(text: &str) {
    let work = Work::here(file::read(text).unwrap().draft);
    assert!(work.computed().model.is_some());
}
