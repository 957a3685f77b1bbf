//! What formulas, computing, files and proof say to the person at the program, in German: no English is left, no number is another one, and
//! what is found is the same.

use std::collections::BTreeSet;

use tracewheel::base::{Finding, Language};
use tracewheel::compute::Engine;
use tracewheel::document::Draft;
use tracewheel::file;
use tracewheel::language::{FUNCTIONS, Kind, What};
use tracewheel::proof::{looked_at, proof};
use tracewheel::session::OpenDraft;
use tracewheel::texts::set_own;

/// English words that no German sentence holds.
const TELLTALE: [&str; 26] = [
    "the", "of", "and", "with", "from", "each", "size", "sizes", "cut", "sewn", "its", "it", "not", "are", "is", "be",
    "to", "at", "on", "one", "all", "or", "no", "has", "that", "than",
];

/// English words outside of backticks: what stands in these is a word of the file or of formulas, or the designer's.
fn english(text: &str) -> Vec<&str> {
    let outside = text.split('`').step_by(2);
    let words = outside.flat_map(str::split_whitespace).map(|w| w.trim_matches(|c: char| !c.is_alphanumeric()));
    words.filter(|w| TELLTALE.contains(w)).collect()
}

/// What `what` gives where the person at the program reads this language.
fn said<T: Send + 'static>(language: Language, what: impl FnOnce() -> T + Send + 'static) -> T {
    let work = move || {
        set_own(language);
        what()
    };
    std::thread::spawn(work).join().unwrap()
}

#[test]
fn a_new_draft_is_published_in_the_language_of_whoever_begins_it() {
    for language in [Language::English, Language::German] {
        let draft = said(language, || Draft::clone(OpenDraft::empty(None).work().draft()));
        assert_eq!(draft.language, language);
        assert_eq!(file::write(&draft).contains("language: de"), language == Language::German);
    }
}

fn all_found(draft: &Draft) -> (Vec<Finding>, String) {
    let model = Engine::new().compute(draft);
    (proof(&model.draft, &model), looked_at(&model.draft, &model))
}

/// Drafts in which things go wrong: those of practice, and some with what a hand types wrongly.
fn wrong_drafts() -> Vec<(String, Draft)> {
    let files = std::fs::read_dir("tests/cases").unwrap().map(|f| f.unwrap().path());
    let mut paths: Vec<_> = files.filter(|p| p.extension().is_some_and(|e| e == "ron")).collect();
    paths.sort();
    let read = |p: &std::path::PathBuf| file::read(&std::fs::read_to_string(p).unwrap()).ok().map(|o| o.draft);
    let mut out: Vec<(String, Draft)> =
        paths.iter().filter_map(|p| Some((p.display().to_string(), read(p)?))).collect();
    let formulas = [
        "",
        "1 +",
        "(1 cm",
        "2 kg",
        "bust +",
        "1 cm * (",
        "buist",
        "bust + 3",
        "bust + 3 deg",
        "-yes",
        "1 cm ^ 4",
        "sqrt(bust)",
        "bust ^ 0.5",
        "round(bust)",
        "min(1)",
        "abs(1, 2)",
        "abs(1, to: 2)",
        "1 / 0",
        "sqrt(0 - 1)",
        "asin(2)",
        "graded(bust, at: [2 cm, 1 cm], give: [1, 2])",
        "in_size(bust, \"99\")",
        "swing(1)",
        "1 cm < 2 deg",
        "graded(bust, at: [1 cm], give: [1, 2])",
        "round(bust, 0 cm)",
        "in_size(1 cm, \"88\")",
        "0.1,5 cm",
        "x or",
        "piece.none.hem",
        "area(1 cm)",
        "1/0 cm",
        "(1 cm, 2 cm)",
        "width(1, 2)",
        "ab#c",
        "a.b.c",
    ];
    let values = formulas.iter().enumerate().map(|(i, f)| format!("(name: \"v{i}\", is: {f:?}), ")).collect::<String>();
    let typed = [
        format!("values: [{values}]"),
        "values: [(name: \"1x\", is: \"1 cm\"), (name: \"a b\", is: \"1 cm\"), (name: \"and\", is: \"1 cm\"), (name: \"c\", is: \"1 cm\"), (name: \"c\", is: \"1 cm\"), (name: \"e\", is: \"1 cm\", least: \"0 cm\"), (name: \"f\", start: \"e\", least: \"f\")]".to_owned(),
        "values: [(name: \"a\", start: \"1 cm\")], conditions: [(name: \"k\", must: \"a < 2 cm\", found_by: [\"a\"]), (name: \"l\", must: \"1 cm\"), (name: \"m\", must: \"bust = 3 cm\", found_by: [\"a\"])]".to_owned(),
        "values: [(name: \"a\", start: \"1 cm\"), (name: \"b\", start: \"1 cm\")], conditions: [(name: \"k\", must: \"a = 2 cm\", found_by: [\"a\"]), (name: \"l\", must: \"a = 3 cm\", found_by: [\"b\"])]".to_owned(),
        "seams: [(name: \"s\", one: [], two: [\"p.e\"], order: \"x\", notches: [(name: \"n\", at: \"1\", strokes: 9)])], views: [(name: \"v\", pieces: [\"none\"], values: [(\"bust\", \"1 cm\")])], measures: [(name: \"m\", is: \"yes\", body: \"none\")]".to_owned(),
        "pieces: [(name: \"p\", of: \"none\", steps: [(name: \"s\"), (name: \"s\")])], placements: [(name: \"q\", lay: \"x\", on: \"y\")]".to_owned(),
        "settings: (unchecked: [(\"no-such\", \"why\"), (\"seam-length\", \"\")], seam_limit: \"x\"), strips: [(name: \"t\", material: \"none\", length: \"1 cm\")], booklet: [(title: \"{yes}\", pieces: [\"none\"])]".to_owned(),
    ];
    for rest in typed {
        let text = format!(
            "(format: \"tracewheel draft\", version: 0, chart: (girth: [\"88\", \"92\"], base: \"89\", rows: [(name: \"bust\", kind: body, by: [girth], cells: [(\"88\", \"88 cm\"), (\"90\", \"1 cm\")]), (name: \"even\", cells: [(\"88\", \"1 cm\")])]), {rest})"
        );
        out.push((rest, file::read(&text).unwrap_or_else(|e| panic!("{e}: {text}")).draft));
    }
    out
}

#[test]
fn findings_in_german_are_the_same_ones_without_english_words() {
    let [english_ones, german] = Language::ALL.map(|language| {
        said(language, || wrong_drafts().into_iter().map(|(p, d)| (p, all_found(&d))).collect::<Vec<_>>())
    });
    let (mut codes, mut translated) = (BTreeSet::new(), BTreeSet::new());
    for ((path, (plain, looked)), (_, (told, other))) in english_ones.iter().zip(&german) {
        assert_eq!(plain.len(), told.len(), "{path}");
        assert!(english(other).is_empty() && looked != other, "{other}");
        for (a, b) in plain.iter().zip(told) {
            assert_eq!((a.code, &a.place, &a.sizes, &a.amounts), (b.code, &b.place, &b.sizes, &b.amounts), "{path}");
            assert_eq!((&a.formula, a.span, &a.mend), (&b.formula, b.span, &b.mend), "{path}");
            for ((name, x), (_, y)) in a.words.iter().zip(&b.words) {
                // A word that is the same in both is the designer's or a number: it stands in the draft's text.
                translated.extend((x != y).then(|| y.clone()));
                assert!(x == y || english(y).is_empty(), "{path}: {:?} {name}: {y}", a.code);
                assert!(english(y).is_empty() || !x.contains(' '), "{path}: {:?} {name} is English: {y}", a.code);
            }
            codes.insert(a.code);
        }
    }
    assert!(codes.len() > 40 && translated.len() > 90, "{} kinds, {} words", codes.len(), translated.len());
}

#[test]
fn files_that_are_refused_are_refused_at_the_same_place_in_german() {
    let head = "(format: \"tracewheel draft\", version: 0";
    let texts: Vec<String> = [
        "",
        "hello",
        "(format: \"other\")",
        "(version: 0)",
        "(format: \"tracewheel draft\")",
        "(format: \"tracewheel draft\", version: 99)",
    ]
    .map(str::to_owned)
    .into_iter()
    .chain(
        [
            ", titel: \"x\")",
            ", title: x)",
            ", title: \"x\", title: \"y\")",
            ", pieces: (1))",
            ", display: yard)",
            ", pieces: [(name: 5)])",
            ", title: 1.5)",
            ", title: \"x)",
            ", /* x)",
            ", title \"x\")",
            ", title: \"\\q\")",
            ", pieces: [)",
            ") x",
            "",
            ", title: “x”)",
            ", title: \"a\" note: \"b\")",
            ", \"title\": \"x\")",
            ", a-b: 1)",
            ", settings: \"x\")",
            ", chart: (girth: \"88\"))",
            ", pieces: [(name: \"a\", cuts: [(count: x)])])",
            ", {)",
            ", chart: (rows: [(cells: [(\"a\", \"b\", \"c\")])]))",
            ", display: (x))",
            ", title: \"\\u{zz}\")",
        ]
        .map(|rest| format!("{head}{rest}")),
    )
    .collect();
    let refused = |language| {
        let texts = texts.clone();
        said(language, move || {
            let of = |text: &String| {
                file::read(text).err().map(|e| ((e.refusal, e.line, e.column, e.path.clone()), e.to_string()))
            };
            texts.iter().map(of).collect::<Vec<_>>()
        })
    };
    let [plain, german] = Language::ALL.map(refused);
    for ((text, a), b) in texts.iter().zip(&plain).zip(&german) {
        let (Some((at, a)), Some((there, b))) = (a, b) else { panic!("{text} is read") };
        assert_eq!(at, there, "{text}");
        assert_ne!(a, b, "{text}");
        assert_eq!(english(b), [""; 0], "{text}: {b}");
    }
}

#[test]
fn what_functions_are_for_and_take_is_said_in_german() {
    let table = || {
        let of = |f: &tracewheel::language::Signature| {
            let takes: Vec<String> = f.parameters.iter().map(|p| p.takes.words()).collect();
            (f.sentence(), f.gives.words(), takes.join("; "))
        };
        let kinds = (-3..=3).map(Kind::Quantity).chain([Kind::Angle, Kind::Offset, Kind::Truth]).map(Kind::words);
        let whats =
            [What::Quantity, What::Place, What::PointOrOffset, What::Path, What::Thing, What::Any].map(What::words);
        (FUNCTIONS.iter().map(of).collect::<Vec<_>>(), kinds.chain(whats).collect::<Vec<_>>())
    };
    let [plain, german] = Language::ALL.map(|language| said(language, table));
    for (a, b) in plain.0.iter().zip(&german.0) {
        assert!(a.0 != b.0 && a.1 != b.1, "{b:?}");
        assert!([&b.0, &b.1].into_iter().all(|t| english(t).is_empty()), "{b:?}");
    }
    assert!(plain.1.iter().zip(&german.1).all(|(a, b)| a != b && english(b).is_empty()), "{german:?}");
}

/// The texts of a catalogue's file, each with its id.
fn catalogue(language: Language, name: &str) -> Vec<(String, String)> {
    let text = std::fs::read_to_string(format!("assets/texts/{}/{name}.ftl", language.word())).unwrap();
    let mut out: Vec<(String, String)> = Vec::new();
    for line in text.lines().filter(|l| !l.starts_with('#') && !l.is_empty()) {
        match line.split_once(" = ").filter(|_| !line.starts_with(' ')) {
            Some((id, rest)) => out.push((id.to_owned(), rest.to_owned())),
            None => out.last_mut().unwrap().1.push_str(line),
        }
    }
    out
}

/// What stands in backticks, which no translation changes, and digits.
fn kept(text: &str) -> (BTreeSet<&str>, Vec<char>) {
    let mut digits: Vec<char> = text.chars().filter(char::is_ascii_digit).collect();
    digits.sort_unstable();
    (text.split('`').skip(1).step_by(2).collect(), digits)
}

#[test]
fn every_text_of_these_catalogues_is_translated_and_keeps_words_of_formulas_and_files() {
    for name in ["engine", "reading"] {
        let [plain, german] = Language::ALL.map(|language| catalogue(language, name));
        assert!(plain.len() > 200);
        for ((id, a), (_, b)) in plain.iter().zip(&german) {
            let words = |text: &str| text.split(['{', '}']).step_by(2).any(|t| t.contains(char::is_alphabetic));
            let same = ["either", "read-comma-or-close"];
            // An example of what is typed may name its point in the language.
            let is_kept = kept(a) == kept(b) || id == "read-part-no-segment";
            assert!(is_kept, "{id}:\n{a}\n{b}");
            assert!(a != b || !words(a) || same.contains(&id.as_str()), "{id} is the same in both: {a}");
            // Without names of values and forms.
            let bare = b.replace("{ $", "$");
            let words = bare.split(char::is_whitespace).filter(|w| !w.contains(['$', '[']));
            let bare = words.collect::<Vec<_>>().join(" ");
            assert_eq!(english(&bare), [""; 0], "{id}: {b}");
        }
    }
}
