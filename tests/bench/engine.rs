//! How long the engine takes: `cargo bench --no-default-features --bench engine`. Times are printed, never asserted.
//!
//! `-- --once NAME` runs one fixed case once, for counting instructions: `block`, `literal`, `large`.
#![allow(clippy::disallowed_methods, clippy::unwrap_used, clippy::print_stdout, missing_docs, reason = "a bench")]

#[path = "../../examples/generate.rs"]
#[allow(dead_code, missing_docs)]
mod generate;

use std::sync::Arc;
use std::time::Instant;

use tracewheel::compute::Engine;
use tracewheel::document::{Draft, Segment};
use tracewheel::{file, proof};

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

fn large(pieces: usize, sizes: usize) -> Draft {
    generate::draft(&generate::Options { pieces, points: 60, sizes, found: 2 * pieces, broken: 0.0, seed: 7 })
}

/// Median of milliseconds over some runs.
fn median(runs: usize, mut work: impl FnMut(usize)) -> f64 {
    let mut times: Vec<f64> = (0..runs)
        .map(|i| {
            let begun = Instant::now();
            work(i);
            begun.elapsed().as_secs_f64() * 1e3
        })
        .collect();
    times.sort_by(f64::total_cmp);
    times[runs / 2]
}

fn once(name: &str) {
    match name {
        "block" => assert!(!Engine::new().compute(&block()).cases.is_empty()),
        "literal" => {
            let (a, mut engine) = (block(), Engine::new());
            engine.compute(&a);
            assert!(!engine.compute(&pulled(&a, "0.52")).cases.is_empty());
        }
        "large" => assert!(!Engine::new().compute(&large(6, 6)).cases.is_empty()),
        other => panic!("{other} is not known: block, literal, large"),
    }
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
    let step = median(200, |i| drop(engine.compute(if i % 2 == 0 { &b } else { &a })));
    println!("check block, one literal changed, 12 sizes true again: {step:.2} ms");
    let model = engine.compute(&a);
    println!("  full proof of it: {:.2} ms", median(50, |_| drop(proof::proof(&a, &model))));
    let big = large(30, 20);
    println!(
        "30 pieces x 60 points x 20 sizes, 60 found values, from scratch: {:.0} ms",
        median(5, |_| drop(Engine::new().compute(&big)))
    );
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
