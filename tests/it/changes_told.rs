//! What is said to the person at the program about changes: the same draft in each language, words of that language, numbers as it writes them.

use std::collections::BTreeSet;

use tracewheel::base::Language;
use tracewheel::document::{Address, Axis, Draft, Inner, Part, RowKind};
use tracewheel::file;
use tracewheel::session::{
    ACTIONS, Block, ChartCommand, Choosing, Command, Deletion, EXAMPLES, FinishCommand, LayCommand, Menu, NewSize,
    PartCommand, PieceCommand, PublishCommand, STEP_KINDS, StepCommand, TextCommand, ViewCommand, Work, choices,
    completions, length_with_unit, sizes_typed,
};
use tracewheel::texts::{own, said, set_own};

fn skirt() -> Draft {
    file::read(include_str!("../../examples/straight-skirt.ron")).unwrap().draft
}

/// Runs `what` for a person of each language, English first.
fn in_both<T: Send>(what: impl Fn() -> T + Sync) -> [T; 2] {
    let what = &what;
    Language::ALL.map(|language| {
        std::thread::scope(|scope| {
            let work = move || {
                set_own(language);
                what()
            };
            scope.spawn(work).join().unwrap()
        })
    })
}

/// Commands of every noun: some are carried out, some refused.
fn script() -> Vec<Command> {
    let name = |n: &str| n.to_owned();
    let size = |label: &str| NewSize { label: name(label), axis: Axis::Girth, between: None, cells: Vec::new() };
    let paste = |text: &str| Box::new(Block::of(&skirt(), text, (String::new(), String::new())));
    let front = Part::Piece(name("front"));
    vec![
        Command::Chart(ChartCommand::AddSize(size("XXL"))),
        Command::Chart(ChartCommand::AddSize(size("a/b"))),
        Command::Chart(ChartCommand::AddPerson(name("somebody"))),
        Command::Chart(ChartCommand::AddPerson(name("somebody"))),
        Command::Chart(ChartCommand::AddRow(name("arm"), RowKind::House)),
        Command::Chart(ChartCommand::AddRow(name("2arm"), RowKind::House)),
        Command::Chart(ChartCommand::Cell(name("nowhere"), name("XXL"), name("3 cm"))),
        Command::Chart(ChartCommand::Confirm(name("none"), String::new())),
        Command::Chart(ChartCommand::RemoveAxis(Axis::Girth)),
        Command::Chart(ChartCommand::By(name("arm"), vec![Axis::Cup])),
        Command::Chart(ChartCommand::AddSet(name("small"))),
        Command::Chart(ChartCommand::RenameSize(Axis::Girth, name("XXL"), name("XL2"))),
        Command::Chart(ChartCommand::DeleteSize(Axis::Girth, name("XL2"))),
        Command::Chart(ChartCommand::Paste(paste("12\t13"))),
        Command::Part(PartCommand::AddValue(name("extra"), name("3 cm"))),
        Command::Part(PartCommand::AddValue(name("extra"), name("3 cm"))),
        Command::Part(PartCommand::AddValue(name("two words"), name("3 cm"))),
        Command::Part(PartCommand::AddFound(name("search"), [String::new(), String::new(), String::new()])),
        Command::Part(PartCommand::MakeFound(name("extra"), true)),
        Command::Part(PartCommand::AddPiece(name("back"))),
        Command::Part(PartCommand::AddPiece(name("pocket"))),
        Command::Part(PartCommand::Delete(front.clone(), Deletion::IfUnused)),
        Command::Part(PartCommand::Rename(front, name("vorn"))),
        Command::Part(PartCommand::Delete(Part::Piece(name("pocket")), Deletion::IfUnused)),
        Command::Piece(PieceCommand::AddPoint(name("vorn"), name("p"), name("(1 cm, 2 cm)"))),
        Command::Piece(PieceCommand::AddLine(name("vorn"), name("l"), [name("p"), name("q")])),
        Command::Piece(PieceCommand::Close(name("vorn"), name("last"))),
        Command::Step(StepCommand::Derive(name("facing"), name("nothing"))),
        Command::Step(StepCommand::Derive(name("facing"), name("vorn"))),
        Command::Step(StepCommand::Move(name("facing"), 0, true)),
        Command::View(ViewCommand::Add(name("short"))),
        Command::View(ViewCommand::Piece(name("short"), name("gone"), true)),
        Command::Publish(PublishCommand::AddStrip(name("tie"), name("1 m"))),
        Command::Publish(PublishCommand::AddStep(0, name("Sew"))),
        Command::Publish(PublishCommand::Place(Part::Notion(name("zip")), 0)),
        Command::Finish(FinishCommand::AddNotch(name("none"))),
        Command::Finish(FinishCommand::Lengthen(name("vorn"), name("none"), name("2 cm"))),
        Command::Lay(LayCommand::Take(vec![7])),
        Command::Text(TextCommand::Set(Address::new(Part::Value(name("gone")), "is"), name("1 cm"))),
        Command::Text(TextCommand::Set(Address::new(Part::Value(name("extra")), "start"), name("4.5 cm"))),
    ]
}

/// English words that no German sentence of these holds; names of the script hold none of them.
const ENGLISH: [&str; 19] = [
    "the", "of", "and", "with", "there", "this", "that", "not", "any", "more", "were", "is", "are", "size", "piece",
    "row", "value", "add", "no",
];

fn has_english(words: &str) -> bool {
    words.split(|c: char| !c.is_alphabetic()).any(|w| ENGLISH.contains(&w))
}

#[test]
fn commands_make_the_same_draft_in_every_language_and_tell_of_it_in_that_of_the_person() {
    let [english, german] = in_both(|| {
        let mut work = Work::here(skirt());
        let mut told = Vec::new();
        for command in script() {
            let done = work.run(&command).unwrap_or_else(|refused| format!("! {refused}"));
            told.push((command.label(), done));
        }
        (told, file::write(work.draft()))
    });
    assert_eq!(english.1, german.1);
    let refused = english.0.iter().filter(|t| t.1.starts_with('!')).count();
    assert!(refused > 12 && refused + 12 < english.0.len(), "{refused} of {}: {:?}", english.0.len(), english.0);
    for ((label, told), (other, other_told)) in english.0.iter().zip(&german.0) {
        assert_eq!((told.is_empty(), told.starts_with('!')), (other_told.is_empty(), other_told.starts_with('!')));
        assert!(label != other && !has_english(other), "{label} | {other}");
        assert!(told.is_empty() || told != other_told && !has_english(other_told), "{told} | {other_told}");
    }
    let all: BTreeSet<&str> = german.0.iter().flat_map(|(a, b)| [a.as_str(), b.as_str()]).collect();
    for words in [
        "Person somebody hinzufügen",
        "! eine Größe oder Person somebody gibt es schon",
        "! schon da: Wert extra; einen anderen Namen wählen",
        "! `two words` enthält ein Leerzeichen; stattdessen `_` schreiben",
        "Schnittteil front in vorn umbenennen",
        "herausgenommen: Schnittteil pocket",
        "! vorn hat keinen Punkt `q`; gemeint war vielleicht `p`",
    ] {
        assert!(all.contains(words), "{words}: {all:#?}");
    }
}

#[test]
fn actions_choices_and_examples_have_words_of_their_own_in_each_language() {
    let [english, german] = in_both(|| {
        let mut all: Vec<String> = Menu::ALL.into_iter().map(Menu::words).collect();
        all.extend(ACTIONS.iter().flat_map(|a| [a.name().to_owned(), a.what().to_owned()]));
        all.extend(EXAMPLES.iter().map(|e| e.what()));
        all.extend(STEP_KINDS.iter().map(|id| said(own(), id, &[])));
        all.extend(Inner::ALL.into_iter().map(Inner::words));
        all.extend(choices(&skirt(), &Part::Draft).into_iter().flat_map(|c| match c.how {
            Choosing::Words(ids) => ids.iter().map(|id| said(own(), id, &[])).collect(),
            _ => Vec::new(),
        }));
        let rows = serde_json::to_value(ACTIONS).unwrap();
        (all, rows)
    });
    assert!(english.0.len() > 230, "{}", english.0.len());
    for (a, b) in english.0.iter().zip(&german.0) {
        assert!(a != b && !has_english(b), "{a} | {b}");
        assert_eq!(a.ends_with('…'), b.ends_with('…'), "what asks for more says so: {b}");
    }
    // For machines each action is called the same.
    let (rows, others) = (english.1.as_array().unwrap(), german.1.as_array().unwrap());
    for (a, b) in rows.iter().zip(others) {
        for key in ["id", "key", "menu", "when"] {
            assert_eq!(a[key], b[key]);
        }
        assert_ne!(a["name"], b["name"]);
    }
    assert_eq!(rows[0]["name"], "New draft");
    assert_eq!(others[0]["name"], "Neuer Entwurf");
    // What is read from files is the same in all.
    let tip = Part::point("front", "tip");
    assert_eq!(in_both(|| tip.words()), ["point front.tip", "Punkt front.tip"]);
    assert_eq!(in_both(|| tip.to_string()), ["point front.tip"; 2]);
}

#[test]
fn numbers_that_are_read_are_written_as_the_person_does_and_typed_ones_stay() {
    let [english, german] = in_both(|| {
        let work = Work::here(skirt());
        let list = completions(work.computed(), None, 0, "back_w", 6, true).list;
        let about: Vec<String> = list.into_iter().map(|c| c.about).collect();
        (about, length_with_unit("12.5").unwrap_err(), sizes_typed("3 x nowhere", &["S".to_owned()]).unwrap_err())
    });
    // A quarter of the waist of 64 cm, the dart, and 1.2 cm.
    let ends = |all: &[String], end: &str| all.iter().any(|a| a.ends_with(end));
    assert!(ends(&english.0, ", 19.2 cm") && ends(&german.0, ", 19,2 cm"), "{:?} {:?}", english.0, german.0);
    assert_eq!(german.1, "`12.5` hat keine Einheit: ist es `12.5 mm`, `12.5 cm` oder `12.5 in`?");
    assert_eq!(german.2, "es gibt keine Größe nowhere; die Größen sind S");
    assert_ne!(english.1, german.1);
}
