//! How long the engine takes: `cargo bench --no-default-features --bench engine`. Times are printed, never asserted.
//!
//! `-- --once NAME` runs one fixed case once, for counting instructions: `block`, `literal`, `large`; `joined`, `garment`, `publishing` and `memory` print figures; `waits`, `growth` and `counted-…` are for `figures.py`.
#![allow(clippy::disallowed_methods, clippy::unwrap_used, clippy::print_stdout, missing_docs, reason = "a bench")]

#[path = "../it/dice.rs"]
#[allow(dead_code, missing_docs)]
mod dice;
#[path = "../../examples/generate.rs"]
#[allow(dead_code, missing_docs)]
mod generate;
mod growth;

use std::sync::Arc;
use std::time::Instant;

use tracewheel::compute::Engine;
use tracewheel::document::{Address, Condition, Draft, Edge, Inner, Part, Point, Segment, Value};
use tracewheel::finish::{Before, finish, finish_after};
use tracewheel::output::{MAX_SIDE, Side, compare, save_folder};
use tracewheel::session::{
    ChartCommand, Command, Order, Outputs, PrintWish, Progress, TextCommand, What, Work, outputs,
};
use tracewheel::{file, proof};

use dice::Dice;

fn block() -> Draft {
    file::read(include_str!("../../examples/bodice-sleeve.ron")).unwrap().draft
}

/// The check block with another number in the handle at the front's underarm.
fn pulled(draft: &Draft, share: &str) -> Draft {
    let mut draft = draft.clone();
    let piece = draft.pieces.iter_mut().find(|p| p.name == "front").unwrap();
    let edge = Arc::make_mut(piece).edges.iter_mut().find(|e| e.name == "armhole").unwrap();
    let Some(Segment::Curve(_, handle, _)) = edge.by.last_mut() else { unreachable!() };
    let at = handle.rfind("0.5").unwrap();
    let end = at + handle[at..].find(' ').unwrap();
    handle.replace_range(at..end, share);
    draft
}

/// A garment derived from the check block, without its persons.
fn garment() -> Draft {
    let mut draft = file::read(include_str!("../../examples/panel-top.ron")).unwrap().draft;
    draft.chart.persons.clear();
    draft
}

/// The block of a garment pulled, with all that is derived from it.
fn garment_figures() {
    let draft = garment();
    let derived = draft.pieces.iter().filter(|p| !p.of.is_empty()).count();
    let (a, b) = (pulled(&draft, "0.52"), pulled(&draft, "0.48"));
    let mut engine = Engine::new();
    assert!(engine.compute(&a).findings.is_empty());
    let pull = |i: usize| drop(engine.compute(if i.is_multiple_of(2) { &b } else { &a }));
    let [middle, best] = median_and_best(200, pull);
    println!(
        "a block with {derived} derived pieces, one literal of it changed, 12 sizes: {middle:.2} ms, best {best:.2} ms"
    );
    // A value on which every piece hangs.
    let eased = |text: &str| {
        let mut draft = a.clone();
        draft.values.iter_mut().filter(|v| v.name == "bust_ease").for_each(|v| text.clone_into(&mut v.is));
        draft
    };
    let (c, d) = (eased("8.2 cm"), eased("7.8 cm"));
    let all = |i: usize| drop(engine.compute(if i.is_multiple_of(2) { &c } else { &d }));
    let [middle, best] = median_and_best(100, all);
    println!("  a value on which all of it hangs: {middle:.2} ms, best {best:.2} ms");
    println!("  from scratch: {:.2} ms", median(20, |_| drop(Engine::new().compute(&a))));
}

fn large(pieces: usize, sizes: usize) -> Draft {
    generate::draft(&generate::Options { pieces, points: 60, sizes, found: 2 * pieces, broken: 0.0, views: 0, seed: 7 })
}

/// The large draft with 60 found values in 20 systems of three: in 20 pieces a curve with two loose handles and a loose end.
fn joined() -> Draft {
    let mut draft = generate::draft(&generate::Options {
        pieces: 30,
        points: 60,
        sizes: 20,
        found: 0,
        broken: 0.0,
        views: 0,
        seed: 7,
    });
    let row = draft.chart.rows[0].name.clone();
    for k in 0..20 {
        let piece = Arc::make_mut(&mut draft.pieces[k]);
        let (name, first) = (piece.name.clone(), piece.points[0].name.clone());
        let point = |name: &str, at: String| Point { name: name.into(), at, note: String::new() };
        piece.points.push(point("loose_end", format!("{first}.moved(offset({row} / 4, loose_a{k}))")));
        piece.lines.push(Edge {
            name: "loose".into(),
            from: first.clone(),
            by: vec![Segment::Curve(
                format!("{first}.right(loose_b{k})"),
                format!("loose_end.up(loose_c{k})"),
                "loose_end".into(),
            )],
            ..Edge::default()
        });
        for v in ["a", "b", "c"] {
            draft.values.push(Value { name: format!("loose_{v}{k}"), start: "9 cm".into(), ..Value::default() });
        }
        let by: Vec<String> = ["a", "b", "c"].iter().map(|v| format!("loose_{v}{k}")).collect();
        for (i, must) in [
            format!("length({name}.loose) = {row} / 3"),
            format!("gap({name}.{first}, {name}.loose_end) = {row} / 3.4 + 0.1 mm * {k}"),
            format!("loose_b{k} + loose_c{k} / 2 = {row} / 5"),
        ]
        .into_iter()
        .enumerate()
        {
            let name = format!("loose_{k}_{i}");
            draft.conditions.push(Condition { name, must, found_by: by.clone(), ..Condition::default() });
        }
    }
    draft
}

/// The finished bodice ten times over, in twenty sizes: thirty pieces as they are in practice.
fn wardrobe() -> Draft {
    let text = std::fs::read_to_string("examples/bodice-finished.ron").unwrap();
    let mut draft = file::read(&text).unwrap().draft;
    draft.chart.girth.extend((1..=8).map(|i| format!("{}", 128 + 6 * i)));
    let (pieces, seams) = (draft.pieces.clone(), draft.seams.clone());
    for k in 1..10 {
        for piece in &pieces {
            let mut copy = (**piece).clone();
            copy.name += &format!("_{k}");
            draft.pieces.push(Arc::new(copy));
        }
        for seam in &seams {
            let mut copy = (**seam).clone();
            copy.name += &format!("_{k}");
            copy.found_by.clear();
            let own = |text: &mut String| {
                for name in ["back", "front", "sleeve"] {
                    *text = text.replace(&format!("{name}."), &format!("{name}_{k}."));
                }
            };
            copy.one.iter_mut().chain(&mut copy.two).for_each(own);
            copy.notches.iter_mut().for_each(|n| own(&mut n.at));
            draft.seams.push(Arc::new(copy));
        }
    }
    draft
}

/// Cut lines, notches and proof of a large draft, and of one piece of nine edges with widths of their own.
fn finishing_figures() {
    let mut rough = large(30, 20);
    rough.settings.allowance = "1 cm".to_owned();
    for (name, draft) in
        [("the finished bodice ten times", wardrobe()), ("generated, bends tighter than its allowance", rough)]
    {
        let model = Engine::new().compute(&draft);
        let finished = finish(&draft, &model);
        let cuts = || finished.cases.iter().flatten().flatten().flat_map(|p| &p.cuts);
        let (made, trimmed) =
            (cuts().filter(|c| c.outline.is_some()).count(), cuts().filter(|c| c.trimmed.is_some()).count());
        println!(
            "30 pieces x {} sizes ({name}), {made} cut lines, {trimmed} trimmed: {:.1} ms; all findings besides: {:.1} ms",
            finished.cases.len(),
            median(10, |_| drop(finish(&draft, &model))),
            median(5, |_| drop(proof::proof_of(&draft, &model, &finished)))
        );
    }
    let draft = wardrobe();
    let pulled = |share: &str| {
        let mut other = draft.clone();
        let piece = Arc::make_mut(&mut other.pieces[3]);
        let edge = piece.edges.iter_mut().find(|e| e.name == "neckline").unwrap();
        let Some(Segment::Curve(handle, ..)) = edge.by.first_mut() else { unreachable!() };
        *handle = format!("centre_neck.right({share} * neck_w)");
        other
    };
    let (a, b) = (pulled("0.58"), pulled("0.59"));
    let mut engine = Engine::new();
    let (of_a, of_b) = (engine.compute(&a), engine.compute(&b));
    let first = finish(&a, &of_a);
    let before = Before { draft: &a, model: &of_a, finished: &first };
    assert!(finish_after(&b, &of_b, Some(before)).cases == finish(&b, &of_b).cases);
    println!(
        "  one neckline pulled, in all sizes: {:.2} ms",
        median(60, |_| drop(finish_after(&b, &of_b, Some(before))))
    );
    let own = "(format: \"tracewheel draft\", version: 0, chart: (girth: [\"one\"]), pieces: [(name: \"p\", points: [POINTS], edges: [EDGES], allowances: [WIDTHS])])";
    let (mut points, mut edges, mut widths) = (String::new(), String::new(), String::new());
    for i in 0..9 {
        let (turn, next) = (40 * i, (i + 1) % 9);
        points += &format!("(name: \"p{i}\", at: \"(0 cm, 0 cm).polar({turn}°, 25 cm)\"), ");
        let by = if i % 2 == 0 {
            format!("straight(\"p{next}\")")
        } else {
            format!(
                "curve(\"on_way(p{i}, p{next}, 1/3).polar({}°, 2 cm)\", \"on_way(p{i}, p{next}, 2/3).polar({}°, 1 cm)\", \"p{next}\")",
                turn + 20,
                turn + 20
            )
        };
        edges += &format!("(name: \"e{i}\", from: \"p{i}\", by: [{by}]), ");
        widths += &format!("(edge: \"e{i}\", width: \"{} mm\"), ", 6 + i);
    }
    let text = own.replace("POINTS", &points).replace("EDGES", &edges).replace("WIDTHS", &widths);
    let one = file::read(&text).unwrap().draft;
    let model = Engine::new().compute(&one);
    assert!(finish(&one, &model).cases[0][0].as_ref().is_some_and(|p| p.cuts[0].outline.is_some()));
    println!(
        "one piece of 9 edges, each with its own width: {:.0} us",
        1e3 * median(200, |_| drop(finish(&one, &model)))
    );
}

/// A line of what the system tells of this process's memory, MB; none where it tells nothing.
fn told_memory(name: &str) -> Option<f64> {
    let status = std::fs::read_to_string("/proc/self/status").ok()?;
    let line = status.lines().find(|l| l.starts_with(name))?;
    Some(line.split_whitespace().nth(1)?.parse::<f64>().ok()? / 1024.0)
}

fn joined_figures() {
    let draft = joined();
    let mut engine = Engine::new();
    let model = engine.compute(&draft);
    let solved: Vec<usize> = model.plan.systems.iter().map(|s| s.found.len()).collect();
    assert!(
        solved.iter().filter(|n| **n == 3).count() == 20
            && model.cases.iter().all(|c| c.solved.iter().all(|s| s.is_true()))
    );
    println!(
        "30 x 60 x 20, 60 found values in 20 systems, from scratch: {:.1} ms",
        median(5, |_| drop(Engine::new().compute(&draft)))
    );
    let with = |text: &str| {
        let mut other = draft.clone();
        let piece = Arc::make_mut(&mut other.pieces[3]);
        let line = piece.lines.iter_mut().find(|l| l.name == "loose").unwrap();
        let Some(Segment::Curve(handle, ..)) = line.by.last_mut() else { unreachable!() };
        *handle = format!("{handle}.down({text})");
        other
    };
    let (a, b) = (with("3 mm"), with("4 mm"));
    engine.compute(&a);
    println!(
        "  a literal in one system: {:.2} ms",
        median(60, |i| drop(engine.compute(if i.is_multiple_of(2) { &b } else { &a })))
    );
    let grown = |mm: f64| {
        let mut other = draft.clone();
        for cell in &mut other.chart.rows[0].cells {
            cell.1 = format!("{} + {mm} mm", cell.1);
        }
        other
    };
    let (a, b) = (grown(1.0), grown(2.0));
    engine.compute(&a);
    println!(
        "  a whole row of the chart, everything touched: {:.2} ms",
        median(20, |i| drop(engine.compute(if i.is_multiple_of(2) { &b } else { &a })))
    );
}

/// The most that five hundred random edits of the large draft may need, MB, all that ever was at once. No standard sets it: three times what
/// the README tells of five hundred steps at one point (101 MB), so that growth is seen and another allocator is not taken for it.
const MOST_MEMORY: f64 = 300.0;

/// Five hundred random edits of the joined draft with their undo, everything computed, finished and proved after each; alone in its process.
fn memory() {
    const EDITS: usize = 500;
    let draft = joined();
    let before = told_memory("VmRSS");
    let mut work = Work::here(draft.clone());
    let mut dice = Dice(20_261_130);
    let mut choose = |n: usize| dice.below(n as u64) as usize;
    let mut points = Vec::new();
    for piece in &draft.pieces {
        points.extend(piece.points.iter().map(|p| Part::Inner(piece.name.clone(), Inner::Point, p.name.clone())));
    }
    let rows: Vec<_> = draft.chart.rows.iter().filter(|r| !r.cells.is_empty()).collect();
    let mut wrong = 0;
    for i in 0..EDITS {
        let command = match choose(10) {
            // A cell of the chart: all that hangs on its row.
            0 => {
                let row = rows[choose(rows.len())];
                let cell = &row.cells[choose(row.cells.len())];
                let to = format!("{} + {} mm", cell.1, choose(9));
                Command::Chart(ChartCommand::Cell(row.name.clone(), cell.0.clone(), to))
            }
            // A formula that is wrong, until another edit happens to mend it.
            1 => {
                wrong += 1;
                Command::Text(TextCommand::Set(
                    Address::new(points[choose(points.len())].clone(), "at"),
                    "nowhere +".into(),
                ))
            }
            2 => Command::Text(TextCommand::Set(Address::new(Part::Draft, "note"), format!("edit {i}"))),
            _ => {
                let at = Address::new(points[choose(points.len())].clone(), "at");
                let to = format!("{}.moved(offset({} mm, {} mm))", draft.text(&at).unwrap(), choose(7), choose(7));
                Command::Text(TextCommand::Set(at, to))
            }
        };
        work.run(&command).unwrap();
    }
    assert!(work.computed().model.is_some() && work.revision() >= EDITS as u64 / 2 && wrong > 20);
    let (Some(before), Some(after), Some(peak)) = (before, told_memory("VmRSS"), told_memory("VmHWM")) else { return };
    println!(
        "30 x 60 x 20, {EDITS} random edits with their undo: {peak:.0} MB at most, {after:.0} MB at the end, {before:.0} MB with the \
         draft only; budget {MOST_MEMORY:.0} MB"
    );
    assert!(peak <= MOST_MEMORY, "more memory than the budget");
}

/// Median of milliseconds over some runs.
fn median(runs: usize, work: impl FnMut(usize)) -> f64 {
    median_and_best(runs, work)[0]
}

/// Median and least of milliseconds over some runs.
fn median_and_best(runs: usize, work: impl FnMut(usize)) -> [f64; 2] {
    let mut times = times(runs, work);
    times.sort_by(f64::total_cmp);
    [times[runs / 2], times[0]]
}

/// Milliseconds of each run.
fn times(runs: usize, mut work: impl FnMut(usize)) -> Vec<f64> {
    let one = |i| {
        let begun = Instant::now();
        work(i);
        begun.elapsed().as_secs_f64() * 1e3
    };
    (0..runs).map(one).collect()
}

fn once(name: &str) {
    match name {
        "block" => assert!(!Engine::new().compute(&block()).cases.is_empty()),
        "literal" => {
            let (a, mut engine) = (block(), Engine::new());
            engine.compute(&a);
            assert!(!engine.compute(&pulled(&a, "0.52")).cases.is_empty());
        }
        "joined" => joined_figures(),
        "memory" => memory(),
        "finishing" => finishing_figures(),
        "garment" => garment_figures(),
        "publishing" => publishing_figures(),
        "waits" => growth::waits(),
        "growth" => growth::grown(),
        "counted-publishing" | "counted-pulling" | "counted-opening" => growth::counted(&name["counted-".len()..]),
        "large" => assert!(!Engine::new().compute(&large(6, 6)).cases.is_empty()),
        other => panic!(
            "{other} is not known: block, literal, large, joined, finishing, garment, publishing, memory, waits, growth, counted-…"
        ),
    }
}

/// Everything that is published of the large draft and of thirty pieces as they are in practice: each kind alone, all of them, and all on the disk.
fn publishing_figures() {
    for (words, draft) in
        [("30 pieces x 60 points x 20 sizes", large(30, 20)), ("the bodice ten times over", wardrobe())]
    {
        let model = Engine::new().compute(&draft);
        let finished = finish(&draft, &model);
        let groups: Vec<(usize, Vec<usize>)> = (0..20).map(|case| (0, vec![case])).collect();
        let wish = PrintWish::default();
        let make = |what: &[What]| {
            let (draft, model, finished, groups, wish) = (&draft, &model, &finished, &groups[..], &wish);
            // As wide as a PDF page may be, so that all pieces come on one sheet.
            let order = Order { draft, model, finished, stem: "x", what, groups, wish, width: MAX_SIDE, folder: None };
            outputs(&order, &Progress::default(), &|_| ()).unwrap()
        };
        println!("{words}, published:");
        for what in What::ALL {
            let mut out = Outputs::default();
            let ms = median(1, |_| out = make(&[what]));
            let bytes: usize = out.files.iter().map(|f| f.bytes.len()).sum();
            println!("  {}: {ms:.0} ms, {} files, {:.1} MB", what.word(), out.files.len(), bytes as f64 / 1e6);
        }
        let mut out = Outputs::default();
        let ms = median(3, |_| out = make(&What::ALL));
        println!("  all {} files in memory: {ms:.0} ms", out.files.len());
        let files: Vec<(String, Vec<u8>)> = out.files.into_iter().map(|f| (f.name, f.bytes)).collect();
        let folder = tempfile::tempdir().unwrap();
        let ms = median(1, |_| drop(save_folder(folder.path(), "all", &files).unwrap()));
        println!("  written to a folder: {ms:.0} ms");
    }
}

/// Two large drafts compared: with itself, and with one in which a row of the chart, and so nearly everything, is another.
fn comparing_figures() {
    let whole = |draft: Draft| {
        let model = Engine::new().compute(&draft);
        let finished = finish(&draft, &model);
        (draft, model, finished)
    };
    let old = whole(large(30, 20));
    let mut other = old.0.clone();
    other.chart.rows[0].cells.iter_mut().for_each(|c| c.1 = format!("({}) * 1.01", c.1));
    let new = whole(other);
    let side = |w: &'static str, of: &(Draft, tracewheel::compute::Model, tracewheel::finish::Finished)| {
        let a = Side { draft: &old.0, model: &old.1, finished: &old.2 };
        let b = Side { draft: &of.0, model: &of.1, finished: &of.2 };
        let mut counts = (0, 0);
        let ms = median(3, |_| counts = compare(a, b, &[], &[]).unwrap().counts());
        println!("30 pieces x 60 points x 20 sizes compared with {w}: {ms:.0} ms ({} differences)", counts.0);
    };
    side("itself", &old);
    side("one in which nearly all is other", &new);
}

fn main() {
    let arguments: Vec<String> = std::env::args().collect();
    if let Some(at) = arguments.iter().position(|a| a == "--once") {
        return once(&arguments[at + 1]);
    }
    let draft = block();
    let mut bare = draft.clone();
    bare.chart.persons.clear();
    println!("check block, 12 sizes, from scratch: {:.2} ms", median(30, |_| drop(Engine::new().compute(&bare))));
    println!("  with ten persons beside: {:.2} ms", median(30, |_| drop(Engine::new().compute(&draft))));
    let (a, b) = (pulled(&bare, "0.52"), pulled(&bare, "0.48"));
    let mut engine = Engine::new();
    engine.compute(&a);
    let step = median(200, |i| drop(engine.compute(if i.is_multiple_of(2) { &b } else { &a })));
    println!("check block, one literal changed, 12 sizes true again: {step:.2} ms");
    let model = engine.compute(&a);
    println!("  full proof of it: {:.2} ms", median(50, |_| drop(proof::proof(&a, &model))));
    let big = large(30, 20);
    println!(
        "30 pieces x 60 points x 20 sizes, 60 found values, from scratch: {:.0} ms",
        median(5, |_| drop(Engine::new().compute(&big)))
    );
    garment_figures();
    joined_figures();
    finishing_figures();
    comparing_figures();
    publishing_figures();
    println!("growth, ms from scratch (60 points a piece, 2 found values a piece):");
    println!("  pieces   5 sizes  10 sizes  20 sizes  40 sizes");
    for pieces in [5, 15, 30, 60] {
        let row: Vec<String> = [5, 10, 20, 40]
            .iter()
            .map(|sizes| {
                let draft = large(pieces, *sizes);
                format!("{:8.1}", median(3, |_| drop(Engine::new().compute(&draft))))
            })
            .collect();
        println!("  {pieces:6}  {}", row.join("  "));
    }
}
