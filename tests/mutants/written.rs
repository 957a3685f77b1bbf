//! Sources in which each mutant stands beside what it takes the place of, and a switch between them.

use crate::places::{Form, Place};

/// The bytes of the written file that belong to a mutant: an error of the compiler that lies there is its.
#[derive(Clone, Default)]
pub struct Span {
    pub from: usize,
    pub to: usize,
}

/// The text with all its mutants, each told with its number.
pub fn write(text: &str, mutants: &[(usize, &Place)], spans: &mut [Span]) -> String {
    let mut sorted = mutants.to_vec();
    sorted.sort_by_key(|(number, place)| (place.start, std::cmp::Reverse(place.end), *number));
    let mut out = String::new();
    part(text, (0, text.len()), &sorted, spans, &mut out);
    out
}

/// Only one mutant is on at a time, so what lies within another one is switched in the untouched branch alone.
fn part(text: &str, (from, to): (usize, usize), mutants: &[(usize, &Place)], spans: &mut [Span], out: &mut String) {
    let (mut at, mut i) = (from, 0);
    while let Some((number, place)) = mutants.get(i) {
        let inner = mutants[i + 1..].iter().take_while(|(_, other)| other.start < place.end).count();
        out.push_str(&text[at..place.start]);
        let start = out.len();
        match place.form {
            Form::Expression => {
                let after = &place.after;
                out.push_str(&format!("(if crate::mutants::on({number}) {{ {after} }} else {{ "));
            }
            Form::Statement => out.push_str(&format!("if !crate::mutants::on({number}) {{ ")),
        }
        part(text, (place.start, place.end), &mutants[i + 1..i + 1 + inner], spans, out);
        out.push_str(if place.form == Form::Expression { " })" } else { " }" });
        spans[*number] = Span { from: start, to: out.len() };
        (at, i) = (place.end, i + 1 + inner);
    }
    out.push_str(&text[at..to]);
}

/// Which mutant is on is read once from the environment; `record` writes down which places are reached instead.
pub const SWITCH: &str = r#"//! Written by tests/mutants: which mutant is on.

use std::io::Write;
use std::sync::atomic::{AtomicBool, AtomicU32, Ordering};

const UNREAD: u32 = u32::MAX;
const RECORD: u32 = u32::MAX - 1;
const NONE: u32 = u32::MAX - 2;

static ACTIVE: AtomicU32 = AtomicU32::new(UNREAD);
static SEEN: [AtomicBool; COUNT] = [const { AtomicBool::new(false) }; COUNT];

#[inline]
pub fn on(number: u32) -> bool {
    let now = ACTIVE.load(Ordering::Relaxed);
    now == number || now >= RECORD && asked(number, now)
}

#[cold]
#[inline(never)]
fn asked(number: u32, now: u32) -> bool {
    if now == UNREAD {
        let word = std::env::var("MUTANT").unwrap_or_default();
        let told = if word == "record" { RECORD } else { word.parse().unwrap_or(NONE) };
        ACTIVE.store(told, Ordering::Relaxed);
        return on(number);
    }
    if !SEEN[number as usize].swap(true, Ordering::Relaxed) {
        let file = std::env::var("MUTANTS_SEEN").unwrap_or_default();
        let file = std::fs::OpenOptions::new().append(true).create(true).open(file);
        let written = file.and_then(|mut f| f.write_all(format!("{number}\n").as_bytes()));
        if let Err(error) = written {
            panic!("where mutants are seen cannot be written: {error}");
        }
    }
    false
}
"#;
