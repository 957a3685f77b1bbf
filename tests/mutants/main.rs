//! Draws small faults ("mutants") over the sources and writes sources that hold all of them, each behind a switch.
//!
//! `mutants TOP TREE --seed N --count N [--without FILE]` reads the rooms below of the checkout TOP and writes the changed
//! files into TREE, a copy of it, with a list (`mutants.tsv`) beside. One build of TREE has all mutants; the environment says
//! which one is on. What does not compile is told in FILE, one key a line, and the next one is drawn instead.
//! `run.py` does the rest: the copy, the build, the tests.

#[path = "../it/dice.rs"]
#[allow(dead_code)]
mod dice;
mod places;
mod written;

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

use dice::Dice;
use places::{Place, places};
use written::{SWITCH, Span, write};

/// The rooms over which is drawn.
const ROOMS: [&str; 4] = ["language", "compute", "numeric", "finish"];

/// A place with the file in which it is.
struct Drawn {
    file: String,
    room: usize,
    place: Place,
}

impl Drawn {
    /// What names it while the sources stay the same.
    fn key(&self) -> String {
        let Place { start, end, kind, after, .. } = &self.place;
        format!("{}:{start}-{end}:{kind}:{}", self.file, on_one_line(after))
    }
}

fn main() -> Result<(), String> {
    let mut words = std::env::args().skip(1);
    let mut next = |what: &str| words.next().ok_or(format!("{what} is missing"));
    let (top, tree) = (PathBuf::from(next("TOP")?), PathBuf::from(next("TREE")?));
    let (mut seed, mut count, mut without) = (None, None, BTreeSet::new());
    while let Ok(word) = next("") {
        let value = next(&word)?;
        let number = || value.parse::<u64>().map_err(|e| format!("{word} {value}: {e}"));
        match word.as_str() {
            "--seed" => seed = Some(number()?),
            "--count" => count = Some(number()? as usize),
            "--without" => without = read(Path::new(&value))?.lines().map(str::to_owned).collect(),
            _ => return Err(format!("{word} is not known")),
        }
    }
    let (seed, count) = (seed.ok_or("--seed is missing")?, count.ok_or("--count is missing")?);
    let all = collect(&top)?;
    let shares = shares(&all, count);
    for (room, name) in ROOMS.iter().enumerate() {
        let places = all.iter().filter(|d| d.room == room).count();
        println!("{name}: {places} places, {} drawn", shares[room]);
    }
    let drawn = draw(&all, &shares, seed, &without);
    put_down(&top, &tree, &drawn)
}

/// All places of all rooms, in the order of files and lines.
fn collect(top: &Path) -> Result<Vec<Drawn>, String> {
    let mut all = Vec::new();
    for (room, name) in ROOMS.iter().enumerate() {
        let mut files = sources(&top.join("src").join(name))?;
        files.sort();
        for path in files {
            let text = read(&path)?;
            let file = path.strip_prefix(top).map_err(|e| e.to_string())?.to_string_lossy().into_owned();
            let found = places(&text).map_err(|e| format!("{file}: {e}"))?;
            all.extend(found.into_iter().map(|place| Drawn { file: file.clone(), room, place }));
        }
    }
    Ok(all)
}

fn sources(folder: &Path) -> Result<Vec<PathBuf>, String> {
    let mut found = Vec::new();
    for entry in fs::read_dir(folder).map_err(|e| format!("{}: {e}", folder.display()))? {
        let path = entry.map_err(|e| e.to_string())?.path();
        if path.is_dir() {
            found.extend(sources(&path)?);
        } else if path.extension().is_some_and(|e| e == "rs") && !path.ends_with("tests.rs") {
            found.push(path);
        }
    }
    Ok(found)
}

fn read(path: &Path) -> Result<String, String> {
    fs::read_to_string(path).map_err(|e| format!("{}: {e}", path.display()))
}

/// How many of `count` fall to each room, by its places: whole parts first, then the largest rests.
fn shares(all: &[Drawn], count: usize) -> Vec<usize> {
    let places: Vec<usize> = (0..ROOMS.len()).map(|r| all.iter().filter(|d| d.room == r).count()).collect();
    let mut shares: Vec<usize> = places.iter().map(|p| p * count / all.len()).collect();
    let mut order: Vec<usize> = (0..ROOMS.len()).collect();
    order.sort_by_key(|r| std::cmp::Reverse(places[*r] * count % all.len()));
    let rest = count - shares.iter().sum::<usize>();
    order.iter().take(rest).for_each(|r| shares[*r] += 1);
    shares
}

/// Each room's places shuffled by the seed, the first ones taken that are not among `without`.
fn draw<'a>(all: &'a [Drawn], shares: &[usize], seed: u64, without: &BTreeSet<String>) -> Vec<&'a Drawn> {
    let mut dice = Dice(seed);
    let mut drawn = Vec::new();
    for (room, share) in shares.iter().enumerate() {
        let mut places: Vec<&Drawn> = all.iter().filter(|d| d.room == room).collect();
        for i in (1..places.len()).rev() {
            places.swap(i, dice.below(i as u64 + 1) as usize);
        }
        let mut taken: Vec<&Drawn> = places.into_iter().filter(|d| !without.contains(&d.key())).take(*share).collect();
        taken.sort_by_key(|d| (&d.file, d.place.start, d.place.end));
        drawn.extend(taken);
    }
    drawn
}

/// Writes the sources with their switches, and the list. Files without a mutant are written as they are, since an earlier draw
/// may have changed them.
fn put_down(top: &Path, tree: &Path, drawn: &[&Drawn]) -> Result<(), String> {
    let save = |path: &Path, text: &str| {
        // What stays the same keeps its date, so that it is not compiled again.
        if fs::read_to_string(path).is_ok_and(|old| old == text) {
            return Ok(());
        }
        fs::write(path, text).map_err(|e| format!("{}: {e}", path.display()))
    };
    let mut spans = vec![Span::default(); drawn.len()];
    for room in ROOMS {
        for path in sources(&top.join("src").join(room))? {
            let file = path.strip_prefix(top).map_err(|e| e.to_string())?;
            let here: Vec<(usize, &Place)> =
                (0..drawn.len()).filter(|i| Path::new(&drawn[*i].file) == file).map(|i| (i, &drawn[i].place)).collect();
            save(&tree.join(file), &write(&read(&path)?, &here, &mut spans))?;
        }
    }
    save(&tree.join("src/mutants.rs"), &SWITCH.replace("COUNT", &drawn.len().to_string()))?;
    let door = read(&top.join("src/lib.rs"))?;
    // A choice stands in brackets wherever it is, and nothing but the mutants is told of this copy.
    let allowed = "#![allow(unused_parens)]\n";
    let door = door.replacen("\n\n", &format!("\n\n{allowed}\n"), 1);
    save(&tree.join("src/lib.rs"), &format!("{door}\n#[allow(missing_docs)]\npub mod mutants;\n"))?;
    let mut list = String::from("number\tfile\tline\tkind\tbefore\tafter\tfrom\tto\tkey\n");
    for (i, (one, span)) in drawn.iter().zip(&spans).enumerate() {
        let Place { line, kind, before, after, .. } = &one.place;
        let (before, after) = (on_one_line(before), on_one_line(after));
        let Span { from, to } = span;
        list += &format!("{i}\t{}\t{line}\t{kind}\t{before}\t{after}\t{from}\t{to}\t{}\n", one.file, one.key());
    }
    save(&tree.join("mutants.tsv"), &list)
}

fn on_one_line(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}
