//! Parts of the program beside other libraries, for `tests/bench/figures.py`: `against solver|cuts|pages|drafts [ROUNDS] [FOLDER]`.
//!
//! A crate of its own, so that the program itself hangs on none of them. Each line that is printed is JSON; times are those of runs in
//! turn, ours first. What is compared with what stands at the head of each part.
#![allow(dead_code, clippy::unwrap_used, clippy::print_stdout, missing_docs, reason = "a bench")]

mod cuts;
#[path = "../../it/dice.rs"]
mod dice;
mod drafts;
#[path = "../../../examples/generate.rs"]
mod generate;
#[path = "../../it/numeric_systems.rs"]
mod numeric_systems;
mod pages;
mod ring;
mod solver;

use std::path::PathBuf;
use std::time::Instant;

/// Prints what was measured.
fn told(what: &serde_json::Value) {
    println!("{what}");
}

/// Milliseconds of one run.
fn millis(run: impl FnOnce()) -> f64 {
    let begin = Instant::now();
    run();
    begin.elapsed().as_secs_f64() * 1e3
}

/// Something short, so often that it takes a few milliseconds; each call gives microseconds of one run.
fn batch(mut run: impl FnMut()) -> impl FnMut() -> f64 {
    let once = millis(&mut run).max(1e-6);
    let times = ((10.0 / once) as usize).clamp(3, 20_000);
    move || millis(|| (0..times).for_each(|_| run())) * 1e3 / times as f64
}

fn main() {
    let mut asked = std::env::args().skip(1);
    let part = asked.next().unwrap_or_default();
    let rounds = asked.next().map_or(5, |n| n.parse().expect("how many rounds"));
    let folder = asked.next().map(PathBuf::from);
    let folder = || folder.clone().expect("a folder to write into");
    match part.as_str() {
        "solver" => solver::run(rounds),
        "cuts" => cuts::run(rounds, &folder()),
        "pages" => pages::run(rounds, &folder()),
        "drafts" => drafts::run(rounds),
        _ => panic!("solver, cuts, pages or drafts"),
    }
}
