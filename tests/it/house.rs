//! The rules of the house that a machine can judge, each with a small bad text that shows that it can fail. Long, reason: one rule after
//! the other.
//!
//! Lints that the compiler and clippy know stand in `Cargo.toml` and `.clippy.toml`. The reasons for all of them are in
//! `DEVELOPERS.md`.

mod reading;

use reading::{Fault, Text, entries, everything, followers, is_word, places, top};

/// The layers, each with those that it may use.
const LAYERS: &[(&str, &[&str])] = &[
    ("base", &[]),
    ("texts", &["base"]),
    ("document", &["base", "texts"]),
    ("language", &["base", "texts", "document"]), // of `document` only the rules of names, see NAMES
    ("curves", &["base", "texts"]),
    ("numeric", &["base", "texts"]),
    ("compute", &["base", "texts", "document", "language", "curves", "numeric"]),
    ("finish", &["base", "texts", "document", "language", "curves", "numeric", "compute"]),
    ("proof", &["base", "texts", "document", "language", "curves", "numeric", "compute", "finish"]),
    ("output", &["base", "texts", "document", "language", "curves", "numeric", "compute", "finish", "proof"]),
    ("file", &["base", "texts", "document"]),
    (
        "session",
        &["base", "texts", "document", "language", "curves", "numeric", "compute", "finish", "proof", "output", "file"],
    ),
    ("help", &["base", "texts", "language", "session"]),
    (
        "cli",
        &[
            "base", "texts", "document", "language", "curves", "compute", "finish", "proof", "output", "file",
            "session", "help",
        ],
    ),
    ("kit", &["base", "texts"]),
    (
        "app",
        &[
            "base", "texts", "document", "language", "curves", "compute", "finish", "proof", "output", "file",
            "session", "help", "kit",
        ],
    ),
];

/// What `language` may use of `document`.
const NAMES: &[&str] = &["MAX_NAME_LETTERS", "NameFault", "check_label", "check_name", "fold", "normal"];

/// The outside crates, each with the only places that may name it; none: everywhere.
const DOORS: &[(&str, &[&str])] = &[
    ("caseless", &["src/document/name.rs"]),
    ("clap", &["src/cli", "src/main.rs"]),
    ("csv", &["src/session/table.rs", "src/output/writing/csv.rs"]),
    ("eframe", &["src/app", "src/kit", "src/main.rs"]),
    ("egui", &["src/app", "src/kit", "src/main.rs"]),
    (
        "kurbo",
        &[
            "src/curves",
            "src/compute",
            "src/finish",
            "src/proof",
            "src/output",
            "src/session",
            "src/app",
            "src/cli/finish.rs",
            "src/file/svg",
        ],
    ),
    ("fluent_bundle", &["src/texts/catalogue.rs"]),
    ("image", &["src/app/pictures.rs", "src/output/photo.rs"]),
    ("jagua_rs", &["src/output/lay/packing/engine.rs"]),
    ("libm", &[]),
    ("linesweeper", &["src/finish/trim.rs"]),
    ("mimalloc", &["src/lib.rs"]),
    ("nalgebra", &["src/numeric"]),
    ("pdf_writer", &["src/output"]),
    ("rfd", &["src/app/disk.rs"]),
    ("ron", &["src/file"]),
    ("roxmltree", &["src/file/svg"]),
    (
        "serde",
        &[
            "src/base",
            "src/document",
            "src/file",
            "src/session/actions.rs",
            "src/session/preferences.rs",
            "src/session/release/manifest.rs",
            "src/session/recovery.rs",
            "src/cli",
        ],
    ),
    ("serde_json", &["src/session/recovery.rs", "src/cli"]),
    ("serde_path_to_error", &["src/file"]),
    ("sha2", &["src/file/digest.rs"]),
    ("skrifa", &["src/output"]),
    ("subsetter", &["src/output"]),
    ("svgtypes", &["src/file/svg"]),
    ("thiserror", &[]),
    ("unicode_normalization", &["src/document/name.rs", "src/language/lexer.rs", "src/output/font.rs"]),
    ("zlib_rs", &["src/output/pdf_stream.rs"]),
];

/// Lines that may break a rule: file, a part of the line, why.
const ALLOWED: &[(&str, &str, &str)] = &[
    ("src/output/pdf.rs", "const STEP", "the step to which written coordinates are rounded"),
    ("src/output/pdf.rs", "const TURN_STEP", "the step to which written turns are rounded"),
    ("src/output/pdf.rs", "1e-3) as f32", "the step to which written colours are rounded"),
    ("src/output/pdf_text.rs", "1e-3) as f32", "the step to which written letter widths are rounded"),
];

/// Fails with all faults that are not allowed.
fn none(faults: Vec<Fault>) {
    let (texts, _) = everything();
    let line = |fault: &Fault| {
        let text = texts.iter().find(|t| t.path == fault.path);
        text.and_then(|t| t.text.lines().nth(fault.line.wrapping_sub(1))).unwrap_or_default().to_string()
    };
    let allowed = |f: &Fault| ALLOWED.iter().any(|(path, part, _)| f.path == *path && line(f).contains(part));
    let said: Vec<String> = faults
        .iter()
        .filter(|f| !allowed(f))
        .map(|f| format!("{}:{}: {}\n    {}", f.path, f.line, f.what, line(f).trim()))
        .collect();
    assert!(said.is_empty(), "\n{}\n", said.join("\n"));
}

/// The rule asked of the whole project, which must hold enough of `kind` that the rule is really asked.
fn of_all(rule: fn(&Text) -> Vec<Fault>, kind: &str) {
    let (texts, unread) = everything();
    assert!(texts.iter().filter(|t| t.path.ends_with(kind)).count() > 5, "hardly any file ends with {kind}");
    none(texts.iter().flat_map(rule).chain(unread).collect());
}

/// How many faults the rule finds in a small text.
fn faults(rule: fn(&Text) -> Vec<Fault>, path: &str, text: &str) -> usize {
    rule(&Text::new(path, text)).len()
}

/// A word that this file may not hold itself: its parts put together.
fn joined(parts: &str) -> String {
    parts.replace('|', "")
}

/// The layer of a source file; the doors `lib.rs` and `main.rs` are above all.
fn layer(path: &str) -> Option<&str> {
    let inside = path.strip_prefix("src/")?;
    let name = inside.split('/').next()?;
    (!matches!(name, "lib.rs" | "main.rs")).then(|| name.trim_end_matches(".rs"))
}

fn arrows(text: &Text) -> Vec<Fault> {
    let Some(from) = layer(&text.path) else { return Vec::new() };
    let Some((_, below)) = LAYERS.iter().find(|(name, _)| *name == from) else {
        return vec![Fault::of(
            &text.path,
            format!("there is no layer {from}: give it its place in tests/it/house.rs"),
        )];
    };
    let code = &text.code;
    let mut found = Vec::new();
    let mut say = |at: usize, what: String| found.push(Fault::at(&text.path, code, at, what));
    for at in places(code, "crate") {
        let Some(behind) = code[at + 5..].trim_start().strip_prefix("::") else { continue };
        for (to, rest) in followers(behind).into_iter().filter(|(to, _)| *to != from) {
            if !below.contains(&to) {
                say(at, format!("{from} may not use {to}: arrows point down"));
            } else if from == "language" && to == "document" {
                let named = followers(rest.trim_start().trim_start_matches("::"));
                for (name, _) in named.iter().filter(|(name, _)| !NAMES.contains(name)) {
                    say(at, format!("language knows of document only the rules of names, not {name}"));
                }
            }
        }
    }
    for at in places(code, "super") {
        let behind = code[at + 5..].trim_start().trim_start_matches("::");
        let (next, _) = followers(behind)[0];
        if next == "super" || (next != from && LAYERS.iter().any(|(name, _)| *name == next) && is_door(&text.path)) {
            say(at, "write what is outside this folder as crate::…, so that arrows can be read".into());
        }
    }
    found
}

/// Whether `super` in this file is the whole crate.
fn is_door(path: &str) -> bool {
    path.matches('/').count() == 1 || (path.matches('/').count() == 2 && path.ends_with("/mod.rs"))
}

#[test]
fn arrows_point_down() {
    of_all(arrows, ".rs");
}

#[test]
fn an_arrow_up_is_found() {
    let in_base = |text| faults(arrows, "src/base/span.rs", text);
    assert_eq!(in_base("use crate::document::Draft;"), 1);
    assert_eq!(in_base("fn f() -> crate::compute::Model { todo() }"), 1);
    assert_eq!(in_base("use crate::{base::{Span, Unit}, proof::{a, b}, file};"), 2);
    assert_eq!(in_base("use super::super::document::Draft;"), 1);
    assert_eq!(in_base("use crate::*;"), 1);
    assert_eq!(in_base("use crate::base::Unit; // crate::app\nlet s = \"crate::app\";"), 0);
    assert_eq!(faults(arrows, "src/base/mod.rs", "use super::document::Draft;"), 1);
    assert_eq!(faults(arrows, "src/curves/cubic.rs", "use crate::document::Draft;"), 1);
    assert_eq!(faults(arrows, "src/language/check.rs", "use crate::curves::Cubic;"), 1);
    assert_eq!(faults(arrows, "src/language/check.rs", "use crate::document::{Draft, check_name};"), 1);
    assert_eq!(faults(arrows, "src/language/check.rs", "use crate::{base::Span, document::{fold, normal}};"), 0);
    assert_eq!(faults(arrows, "src/proof/seam.rs", "use crate::output::Page;"), 1);
    assert_eq!(faults(arrows, "src/cellar/wine.rs", ""), 1);
    assert_eq!(faults(arrows, "src/lib.rs", "pub use crate::app::run;"), 0);
}

#[test]
fn the_layers_are_in_order() {
    for (i, (name, below)) in LAYERS.iter().enumerate() {
        for lower in *below {
            assert!(LAYERS[..i].iter().any(|(n, _)| n == lower), "{name} uses {lower}, which does not stand before it");
        }
    }
}

fn doors(text: &Text) -> Vec<Fault> {
    let code = &text.code;
    let inside = |door: &str| text.path == door || text.path.starts_with(&format!("{door}/"));
    let mut found = Vec::new();
    for (name, doors) in DOORS.iter().filter(|(_, doors)| !doors.is_empty()) {
        if layer(&text.path).is_none() && text.path != "src/main.rs" || doors.iter().any(|d| inside(d)) {
            continue;
        }
        for at in places(code, name) {
            let before = code[..at].trim_end();
            let used = before.ends_with("use") || before.ends_with("extern crate");
            if used || code[at + name.len()..].starts_with("::") && !before.ends_with("::") {
                let what = format!("{name} is named outside its door ({})", doors.join(", "));
                found.push(Fault::at(&text.path, code, at, what));
            }
        }
    }
    found
}

#[test]
fn outside_crates_stay_behind_their_doors() {
    of_all(doors, ".rs");
}

#[test]
fn a_crate_outside_its_door_is_found() {
    assert_eq!(faults(doors, "src/session/run.rs", "use egui::Ui;"), 1);
    assert_eq!(faults(doors, "src/document/draft.rs", "fn f() { let x = ron::from_str(t); }"), 1);
    assert_eq!(faults(doors, "src/compute/solve.rs", "use nalgebra as na;"), 1);
    assert_eq!(faults(doors, "src/language/tree.rs", "use kurbo::{Point, Vec2};"), 1);
    assert_eq!(faults(doors, "src/app/window.rs", "use rfd::FileDialog;"), 1);
    assert_eq!(faults(doors, "src/app/window.rs", "use egui::Ui; // ron::x"), 0);
    assert_eq!(faults(doors, "src/file/read.rs", "use ron::Options;"), 0);
    assert_eq!(faults(doors, "src/compute/solve.rs", "use crate::numeric::nalgebra_free;"), 0);
}

/// The crates of the section `[dependencies]`.
fn dependencies(cargo: &str) -> Vec<String> {
    let lines = cargo.lines().skip_while(|l| *l != "[dependencies]").skip(1).take_while(|l| !l.starts_with('['));
    lines.filter_map(|l| l.split_once(" =")).map(|(name, _)| name.trim().replace('-', "_")).collect()
}

#[test]
fn every_crate_has_a_door() {
    let cargo = std::fs::read_to_string(top().join("Cargo.toml")).unwrap();
    let names = dependencies(&cargo);
    assert!(names.len() > 5, "{names:?}");
    for name in names {
        assert!(DOORS.iter().any(|(n, _)| *n == name), "{name}: say in DOORS where it may be named");
    }
    assert_eq!(dependencies("[a]\nx = 1\n[dependencies]\npdf-writer = \"1\"\n\n[b]\ny = 1"), ["pdf_writer"]);
}

fn rooms(text: &Text) -> Vec<Fault> {
    let lines = text.text.lines().count();
    let head: Vec<&str> = text.text.lines().take_while(|l| l.starts_with("//!")).collect();
    let mut found = Vec::new();
    if !text.path.ends_with(".rs") {
        return found;
    }
    if text.path.starts_with("src/") && head.is_empty() {
        found.push(Fault::of(&text.path, "open it with //!: what it is for, and what it leaves to others"));
    }
    if lines > 900 {
        found.push(Fault::of(&text.path, format!("{lines} lines; at most 900: split it by noun")));
    } else if lines > 600 && !head.iter().any(|l| l.contains("reason:")) {
        found.push(Fault::of(&text.path, format!("{lines} lines; above 600 its head says why, behind \"reason:\"")));
    }
    for part in text.path.split('/') {
        if ["utils", "util", "common", "helpers", "helper", "manager", "misc"].contains(&part.trim_end_matches(".rs")) {
            found.push(Fault::of(&text.path, format!("{part} says nothing: a module is a noun of the trade")));
        }
    }
    found
}

#[test]
fn rooms_are_small_and_have_a_sign() {
    of_all(rooms, ".rs");
}

#[test]
fn a_large_room_is_found() {
    let long = |lines: usize, head: &str| format!("{head}\n{}", "fn f() {}\n".repeat(lines - 1));
    assert_eq!(faults(rooms, "src/base/span.rs", &long(600, "//! Spans.")), 0);
    assert_eq!(faults(rooms, "src/base/span.rs", &long(601, "//! Spans.")), 1);
    assert_eq!(faults(rooms, "src/base/span.rs", &long(900, "//! Spans. Long, reason: one table.")), 0);
    assert_eq!(faults(rooms, "src/base/span.rs", &long(901, "//! Spans. Long, reason: one table.")), 1);
    assert_eq!(faults(rooms, "tests/it/file.rs", &long(901, "use x;")), 1);
    assert_eq!(faults(rooms, "src/base/span.rs", "// Spans.\n"), 1);
    assert_eq!(faults(rooms, "src/base/utils.rs", "//! Things.\n"), 1);
    assert_eq!(faults(rooms, "src/common/mod.rs", "//! Things.\n"), 1);
}

fn literals(text: &Text) -> Vec<Fault> {
    // What `numeric` compares are shares and rounding floors of its own algebra, each beside its reason; the rest stands in
    // one place.
    let own = ["src/base/tolerance.rs", "src/numeric/"];
    if !text.path.starts_with("src/") || own.iter().any(|o| text.path.starts_with(o)) {
        return Vec::new();
    }
    let code = &text.work;
    let mut found = Vec::new();
    for (at, value) in floats(code) {
        let compared = code[..at].trim_end().trim_end_matches(['=', '-']).trim_end().ends_with(['<', '>']);
        if value > 0.0 && (value <= 1e-3 || compared && value <= 0.1) {
            found.push(Fault::at(&text.path, code, at, format!("{value:e} looks like a tolerance: base::tolerance")));
        }
    }
    let algebra = text.path.starts_with("src/numeric/"); // where it is the rounding of the arithmetic itself
    for at in places(code, "EPSILON").into_iter().filter(|_| !algebra) {
        found.push(Fault::at(&text.path, code, at, "EPSILON is a tolerance nobody chose: base::tolerance".into()));
    }
    found
}

/// The literals with a point or an exponent, and where they stand.
fn floats(code: &str) -> Vec<(usize, f64)> {
    let bytes = code.as_bytes();
    let digit = |i: usize| bytes.get(i).is_some_and(|b| b.is_ascii_digit() || *b == b'_');
    let mut found = Vec::new();
    let mut i = 0;
    while i < bytes.len() {
        if !bytes[i].is_ascii_digit() || (i > 0 && (is_word(bytes[i - 1]) || bytes[i - 1] == b'.')) {
            i += 1;
            continue;
        }
        let start = i;
        while digit(i)
            || (bytes.get(i) == Some(&b'.') && bytes.get(i + 1).is_some_and(u8::is_ascii_digit))
            || matches!(bytes.get(i), Some(b'e' | b'E'))
            || (bytes.get(i) == Some(&b'-') && matches!(bytes[i - 1], b'e' | b'E'))
        {
            i += 1;
        }
        let literal = code[start..i].replace('_', "");
        if let (true, Ok(value)) = (literal.contains(['.', 'e', 'E']), literal.parse()) {
            found.push((start, value));
        }
    }
    found
}

#[test]
fn tolerances_stand_in_one_place() {
    of_all(literals, ".rs");
}

#[test]
fn a_literal_tolerance_is_found() {
    let in_curves = |text| faults(literals, "src/curves/cubic.rs", text);
    assert_eq!(in_curves("if a.abs() > 1e-6 { let b = 0.000_1; }"), 2);
    assert_eq!(in_curves("if a <= 0.05 || b<-0.1 || x == f64::EPSILON {}"), 3);
    assert_eq!(in_curves("let a = 0.5 * b + 25.4 + 1e6; for i in 0..1 { c[0].0 } // 1e-9"), 0);
    assert_eq!(in_curves("if a < 0.5 || t.1 > 30.0 { \"1e-9\" }"), 0);
    assert_eq!(in_curves("fn f() {}\n#[cfg(test)]\nmod tests { fn g() { near(1e-9); } }\nconst A: f64 = 1e-9;"), 1);
    assert_eq!(faults(literals, "src/base/tolerance.rs", "const A: f64 = 1e-9;"), 0);
    assert_eq!(faults(literals, "src/numeric/rank.rs", "let floor = f64::EPSILON * largest;"), 0);
    assert_eq!(faults(literals, "tests/it/cubic.rs", "near(1e-9);"), 0);
}

fn panics(text: &Text) -> Vec<Fault> {
    if !text.path.starts_with("src/") {
        return Vec::new();
    }
    let mut found = Vec::new();
    for part in [".unwrap()", ".expect(\"", "panic!(", "unreachable!("] {
        for (at, _) in text.work.match_indices(part) {
            found.push(Fault::at(&text.path, &text.work, at, format!("{part} can end the program: hand the error on")));
        }
    }
    found
}

#[test]
fn nothing_ends_the_program() {
    of_all(panics, ".rs");
}

#[test]
fn a_way_to_end_the_program_is_found() {
    let in_file = |text| faults(panics, "src/file/read.rs", text);
    assert_eq!(in_file("fn f() { a.unwrap(); b.expect(\"x\"); panic!(\"y\"); unreachable!() }"), 4);
    assert_eq!(in_file("fn f() { a.unwrap_or(1); self.expect(Sign::Close)?; } // .unwrap()"), 0);
    assert_eq!(in_file("#[cfg(test)]\nmod tests { fn f() { a.unwrap() } }"), 0);
    assert_eq!(faults(panics, "tests/it/read.rs", "fn f() { a.unwrap() }"), 0);
}

fn words(text: &Text) -> Vec<Fault> {
    let found_at = |at, what| Fault::at(&text.path, &text.text, at, what);
    let mut found = Vec::new();
    for (at, sign) in text.text.char_indices() {
        let hidden = matches!(sign, '\u{200b}'..='\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}');
        if hidden || sign.is_control() && !matches!(sign, '\n' | '\t') || matches!(sign, '\u{feff}' | '\u{fffd}') {
            found.push(found_at(at, format!("the sign {} cannot be seen: take it out", sign.escape_unicode())));
        }
    }
    let lock = text.path.ends_with("Cargo.lock"); // names where its crates come from, as it must
    for host in ["crates|.io", "pypi|.org", "python|hosted.org", "npm|js.org", "deb|.debian.org", "go|lang.org"] {
        for (at, host) in text.text.match_indices(&joined(host)).filter(|_| !lock) {
            found.push(found_at(at, format!("{host}: name packages, not where they are fetched from")));
        }
    }
    for folder in ["/ho|me/", "/ro|ot/", "/Us|ers/", "C:\\Us|ers", "/wo|rk/", "/tm|p/", "/mn|t/"] {
        for (at, _) in text.text.match_indices(&joined(folder)) {
            let begins = text.text[..at].bytes().last().is_none_or(|b| !is_word(b) && !b"./-*})".contains(&b));
            if begins {
                found.push(found_at(at, "a folder of one machine: write paths from the top of the project".into()));
            }
        }
    }
    let small = text.text.to_ascii_lowercase();
    for word in ["assist|ant", "assist|ants", "l|lm", "l|lms", "prom|pt", "prom|pts", "chat|bot", "sub|agent"] {
        for at in places(&small, &joined(word)) {
            found.push(found_at(at, format!("{}: tell what the program is, not how it was written", joined(word))));
        }
    }
    for phrase in ["ai ag|ent", "language mod|el", "co-authored|-by"] {
        for (at, phrase) in small.match_indices(&joined(phrase)) {
            found.push(found_at(at, format!("{phrase}: tell what the program is, not how it was written")));
        }
    }
    found
}

#[test]
fn words_are_our_own() {
    of_all(words, "");
}

#[test]
fn a_foreign_word_is_found() {
    let in_text = |parts: &str| faults(words, "README.md", &joined(parts));
    assert_eq!(in_text("see /ho|me/ann/draft.ron and `/tm|p/x`"), 2);
    assert_eq!(in_text("C:\\Us|ers\\ann"), 1);
    assert_eq!(in_text("get it from https://static.crates|.io/x"), 1);
    assert_eq!(in_text("The Assist|ant wrote this pro|mpt with an L|LM, an AI Ag|ent."), 4);
    assert_eq!(in_text("promptly; a session; assistance; src/home/x; $dir/tmp/x"), 0);
    assert_eq!(in_text("a\u{0}b\r\n\u{feff}c\u{202e}d\u{fffd}"), 5);
    assert_eq!(in_text("Größe ½ ″ →\t日本\n"), 0);
    assert_eq!(faults(words, "Cargo.lock", &joined("registry crates|.io")), 0);
}

/// The sources: path, text, and the same with comments, strings and test modules blanked.
pub fn sources() -> Vec<(String, String, String)> {
    let (texts, unread) = everything();
    assert!(unread.is_empty());
    texts.into_iter().filter(|t| t.path.starts_with("src/")).map(|t| (t.path, t.text, t.work)).collect()
}

/// A thread that is begun where something is made for readers must speak the language that is spoken there.
fn bare_threads(text: &Text) -> Vec<Fault> {
    let speaks = ["src/finish/", "src/proof/", "src/output/", "src/session/publishing/", "src/session/release/"];
    if !speaks.iter().any(|room| text.path.starts_with(room)) {
        return Vec::new();
    }
    let begun =
        text.work.match_indices("spawn(").filter(|(at, begin)| !text.work[at + begin.len()..].starts_with("carried("));
    begun.map(|(at, _)| Fault::at(&text.path, &text.work, at, "hand its work to texts::carried".into())).collect()
}

#[test]
fn threads_carry_their_language_on() {
    of_all(bare_threads, ".rs");
    let (texts, _) = everything();
    let carried = texts.iter().filter(|t| t.work.contains("spawn(carried("));
    assert!(carried.count() >= 3, "the threads of publishing, finishing and saving");
    assert_eq!(faults(bare_threads, "src/output/x.rs", "scope.spawn(work); thread::spawn(|| 1);"), 2);
    assert_eq!(faults(bare_threads, "src/output/x.rs", "scope.spawn(carried(work));"), 0);
    assert_eq!(faults(bare_threads, "src/session/watch.rs", "thread::spawn(|| 1);"), 0);
}

/// What stands at the top and should not.
fn strangers<'a>(names: &[&'a str]) -> Vec<&'a str> {
    const KNOWN: [&str; 10] = [
        "Cargo.lock",
        "Cargo.toml",
        "DEVELOPERS.md",
        "LICENSE-APACHE",
        "LICENSE-MIT",
        "README.md",
        "assets",
        "examples",
        "src",
        "tests",
    ];
    names.iter().copied().filter(|n| !n.starts_with('.') && !KNOWN.contains(n)).collect()
}

#[test]
fn the_top_is_tidy() {
    let names = entries();
    assert!(names.iter().any(|n| n == "Cargo.toml") && names.iter().any(|n| n == "src"), "{names:?}");
    let names: Vec<&str> = names.iter().map(String::as_str).collect();
    assert_eq!(strangers(&names), [""; 0], "these do not belong at the top");
    assert_eq!(strangers(&["src", ".ci", "Cargo.lock", "docs", "notes.txt"]), ["docs", "notes.txt"]);
}

/// Files beside the outside scripts of which their page says nothing.
fn unnamed<'a>(files: &'a [String], page: &str) -> Vec<&'a str> {
    files.iter().map(String::as_str).filter(|f| *f != "README.md" && !page.contains(&format!("`{f}`"))).collect()
}

/// The names that a lock file lacks.
fn unlocked<'a>(names: &[&'a str], lock: &str) -> Vec<&'a str> {
    names.iter().copied().filter(|name| !lock.contains(&format!("\nname = \"{name}\"\n"))).collect()
}

#[test]
fn crates_beside_this_one_lock_what_it_is_built_of() {
    let manifest = std::fs::read_to_string("Cargo.toml").unwrap();
    let lines = manifest.lines().skip_while(|l| *l != "[dependencies]").skip(1).take_while(|l| !l.starts_with('['));
    let needed = lines.filter(|l| !l.contains("optional = true"));
    let names: Vec<&str> = needed.filter_map(|l| Some(l.split_once(" = ")?.0)).collect();
    assert!(names.len() > 15 && names.contains(&"kurbo"), "{names:?}");
    for lock in ["tests/fuzz/Cargo.lock", "tests/bench/against/Cargo.lock"] {
        let text = std::fs::read_to_string(lock).unwrap();
        assert_eq!(unlocked(&names, &text), [""; 0], "{lock} lacks these: `cargo metadata` there makes it anew");
        assert_eq!(unlocked(&["no-such-crate", "kurbo"], &text), ["no-such-crate"]);
    }
}

#[test]
fn every_outside_check_is_told_with_its_source() {
    let page = std::fs::read_to_string("tests/outside/README.md").unwrap();
    let entries = std::fs::read_dir("tests/outside").unwrap();
    let files: Vec<String> = entries.map(|e| e.unwrap().file_name().into_string().unwrap()).collect();
    let files: Vec<String> =
        files.into_iter().filter(|f| f != "second" && f != "svg" && !f.starts_with(['_', '.'])).collect();
    assert!(files.len() > 30);
    assert_eq!(unnamed(&files, &page), [""; 0], "tests/outside/README.md lacks these");
    assert_eq!(unnamed(&["new.py".to_owned()], &page), ["new.py"]);
    // A row without a source is no row.
    let rows = page.lines().filter(|l| l.starts_with("| `"));
    let bare: Vec<&str> =
        rows.filter(|l| l.trim_end_matches('|').rsplit('|').next().unwrap().trim().is_empty()).collect();
    assert_eq!(bare, [""; 0]);
}

#[test]
fn what_is_allowed_is_needed() {
    let (texts, _) = everything();
    let rules: [fn(&Text) -> Vec<Fault>; 6] = [arrows, doors, rooms, literals, panics, words];
    for (path, part, reason) in ALLOWED {
        let text = texts.iter().find(|t| t.path == *path);
        let text = text.unwrap_or_else(|| panic!("{path} is not there: take it out of ALLOWED"));
        let faults = rules.iter().flat_map(|rule| rule(text));
        let needed = faults.filter_map(|f| text.text.lines().nth(f.line.wrapping_sub(1))).any(|l| l.contains(part));
        assert!(needed && !reason.is_empty(), "{path}: {part} is not needed any more: take it out of ALLOWED");
    }
}

#[test]
fn code_is_told_from_comments_and_strings() {
    let bare = |text: &str| reading::bare(text).split_whitespace().collect::<Vec<_>>().join(" ");
    assert_eq!(bare("a // b\nc"), "a c");
    assert_eq!(bare("a /* b /* c */ d */ e"), "a e");
    assert_eq!(bare("a \"b \\\" c\" d"), "a \" \" d");
    assert_eq!(bare("r#\"a \" b\"# c"), "r # c");
    assert_eq!(bare("b'\"' x '\\'' y '\u{b0}' z"), "b' ' x ' ' y ' ' z");
    assert_eq!(bare("fn f<'a>(x: &'a str) {} // '"), "fn f<'a>(x: &'a str) {}");
}

/// Window tests drive by events and see by accessibility: of the program they may name the window and the opening of a file,
/// and those only where the stage is built.
fn window_tests(text: &Text) -> Vec<Fault> {
    if !text.path.starts_with("tests/it/window/") {
        return Vec::new();
    }
    let code = &text.code;
    let mut found = Vec::new();
    for at in places(code, "tracewheel") {
        let behind = code[at + "tracewheel".len()..].trim_start();
        let Some(rest) = behind.strip_prefix("::") else { continue };
        let stage = text.path.ends_with("/stage.rs");
        let allowed = stage && (rest.starts_with("app::{Start, Window, dress}") || rest.starts_with("file::open("));
        if !allowed {
            found.push(Fault::at(&text.path, code, at, "a window test goes by events and accessibility only".into()));
        }
    }
    found
}

#[test]
fn window_tests_go_by_events_only() {
    let (texts, unread) = everything();
    assert!(texts.iter().filter(|t| t.path.starts_with("tests/it/window/")).count() >= 5);
    none(texts.iter().flat_map(window_tests).chain(unread).collect());
    let bad = "use tracewheel::session::Work;\nlet x = tracewheel::file::open(path);";
    assert_eq!(faults(window_tests, "tests/it/window/moments.rs", bad), 2);
    assert_eq!(faults(window_tests, "tests/it/window/stage.rs", bad), 1);
    assert_eq!(faults(window_tests, "tests/it/session.rs", bad), 0);
}
