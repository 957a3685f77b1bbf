//! What each fuzz target does with its bytes, and what must hold. The ordinary tests run the corpus through the same.
#![allow(dead_code, clippy::unwrap_used, reason = "a fuzz target ends by panicking")]

mod brought;
mod packed;
mod published;

pub use brought::brought;
pub use packed::packed;
pub use published::published;

use std::sync::Arc;

use tracewheel::base::Finding;
use tracewheel::compute::Engine;
use tracewheel::document::{Address, Axis, Draft, Inner, Part, RowKind};
use tracewheel::file;
use tracewheel::language::{FUNCTIONS, How, SIDES, TURNS, Takes, literals, parse, parse_condition, tidy};
use tracewheel::proof::proof;
use tracewheel::session::{
    ChartCommand, Command, Deletion, NewSize, PartCommand, PieceCommand, TextCommand, Work, inner_parts,
};

/// A little of everything: three sizes, a dart, a curve, an arc, a drawing, a placement, a found value, a seam.
pub const FIXTURE: &str = r#"(
    format: "tracewheel draft", version: 0, display: cm,
    chart: (
        girth: ["S", "M", "L"],
        rows: [
            (name: "bust", by: [girth], cells: [("S", "80 cm"), ("M", "88 cm"), ("L", "96 cm")]),
            (name: "count", is: "3"),
        ],
    ),
    values: [(name: "ease", is: "4 cm"), (name: "slope", is: "20 deg"), (name: "drop", start: "1 cm", least: "-5 cm", most: "30 cm")],
    drawings: [(name: "ground", points: [(name: "o", at: "(0 cm, 0 cm)")])],
    pieces: [
        (
            name: "back",
            points: [
                (name: "a", at: "(0 cm, 0 cm)"), (name: "b", at: "a.right(bust / 4)"),
                (name: "c", at: "b.down(40 cm)"), (name: "d", at: "a.down(40 cm)"),
            ],
            edges: [
                (name: "top", from: "a", by: [curve("a.right(8 cm)", "b.up(5 cm)", "b")]),
                (name: "side", from: "b", by: [straight("c")]),
                (name: "hem", from: "c", by: [straight("d")]),
                (name: "centre", from: "d", by: [straight("a")]),
            ],
            lines: [(name: "round", from: "a", by: [arc(centre: "halfway(a, b)", turn: anticlockwise, to: "b")])],
            darts: [(name: "dart", on: "hem", centre: "1/2", intake: "3 cm", tip: "9 cm")],
        ),
        (
            name: "front",
            points: [
                (name: "a", at: "(0 cm, 0 cm)"), (name: "b", at: "a.right(bust / 4)"),
                (name: "c", at: "b.down(30 cm + drop)"), (name: "d", at: "a.down(30 cm + drop)"),
            ],
            edges: [
                (name: "top", from: "a", by: [straight("b")]), (name: "side", from: "b", by: [straight("c")]),
                (name: "hem", from: "c", by: [straight("d")]), (name: "centre", from: "d", by: [straight("a")]),
            ],
        ),
    ],
    placements: [(name: "laid", lay: "front", on: "back", point: "a", onto: "b", turned: "10 deg", mirrored: true)],
    seams: [(name: "side", one: ["back.side"], two: ["front.side"], found_by: ["drop"])],
)"#;

/// Bytes used up one after the other; zeros when there are none left.
pub struct Bytes<'a>(pub &'a [u8]);

impl Bytes<'_> {
    fn next(&mut self) -> usize {
        match self.0.split_first() {
            Some((first, rest)) => {
                self.0 = rest;
                usize::from(*first)
            }
            None => 0,
        }
    }
    fn below(&mut self, n: usize) -> usize {
        self.next() % n.max(1)
    }
    fn one<'b, T>(&mut self, list: &'b [T]) -> &'b T {
        &list[self.below(list.len())]
    }
}

const LEAVES: &[&str] = &[
    "3 cm",
    "1 1/2 in",
    "3/8 in",
    "0",
    "-1",
    "2.5",
    "15 %",
    "22.5 deg",
    "-90°",
    "1e9 m",
    "0.0001 mm",
    "bust",
    "ease",
    "slope",
    "count",
    "drop",
    "yes",
    "no",
    "pi",
    "back.a",
    "back.b",
    "a",
    "b",
    "c",
    "d",
    "back.top",
    "back.round",
    "hem",
    "round",
    "front.side",
    "dart.tip",
    "back.dart.leg",
    "laid.a",
    "laid.hem",
    "ground.o",
    "seam.side.one",
    "chart.bust",
    "value.ease",
    "piece.back",
    "back",
    "front",
    "nothing",
    "a.x",
    "(0 cm, 0 cm)",
    "(3 cm, -4 cm)",
    "level(a)",
    "plumb(b)",
    "\"M\"",
];

/// A formula from the grammar, with arguments that mostly fit.
fn sentence(bytes: &mut Bytes<'_>, depth: usize) -> String {
    if depth == 0 || bytes.0.is_empty() {
        return (*bytes.one(LEAVES)).to_owned();
    }
    let sub = |bytes: &mut Bytes<'_>| sentence(bytes, depth - 1);
    match bytes.below(10) {
        0 => (*bytes.one(LEAVES)).to_owned(),
        1 => {
            let (a, b) = (sub(bytes), sub(bytes));
            format!("{a} {} {b}", bytes.one(&["+", "-", "*", "/", "^", "<", ">=", "and", "or"]))
        }
        2 => format!("({})", sub(bytes)),
        3 => format!("-{}", sub(bytes)),
        4 => format!("({}, {})", sub(bytes), sub(bytes)),
        _ => {
            let row = bytes.one(FUNCTIONS);
            let mut arguments = Vec::new();
            for parameter in row.parameters {
                let value = match parameter.takes {
                    Takes::Word(words) => (*bytes.one(words)).to_owned(),
                    Takes::Words => "\"M\"".to_owned(),
                    Takes::ListAsFirst | Takes::ListAlongside => format!("[{}, {}]", sub(bytes), sub(bytes)),
                    _ => sub(bytes),
                };
                match parameter.how {
                    How::Named => arguments.push(format!("{}: {value}", parameter.name)),
                    How::Choice | How::Optional if bytes.below(2) == 0 => {}
                    How::Choice => arguments.push(format!("{}: {value}", parameter.name)),
                    _ => arguments.push(value),
                }
            }
            format!("{}({})", row.name, arguments.join(", "))
        }
    }
}

fn spans_are_sound(findings: &[Finding]) {
    for f in findings {
        for span in f.span.iter().chain(f.mend.iter().map(|m| &m.span)) {
            let whole = f.formula.get(span.start..span.end).is_some();
            assert!(whole, "{:?}: {span:?} of {:?}", f.code, f.formula);
        }
    }
}

/// Texts as formulas: read, tidied, checked and computed without a panic; spans lie in the text.
pub fn formula(data: &[u8]) {
    let Some((how, rest)) = data.split_first() else { return };
    let text = match how % 2 {
        0 => String::from_utf8_lossy(&rest[..rest.len().min(400)]).into_owned(),
        _ => sentence(&mut Bytes(rest), usize::from(how / 2 % 5) + 1),
    };
    let tidied = tidy(&text);
    assert_eq!(tidy(&tidied), tidied, "{text:?}");
    for literal in literals(&text) {
        assert!(text.get(literal.span.start..literal.span.end).is_some(), "{text:?}");
    }
    if let Err(finding) = parse(&text) {
        spans_are_sound(&[Finding { formula: text.clone(), ..*finding }]);
    }
    let _ = parse_condition(&text);
    let mut draft = file::read(FIXTURE).unwrap().draft;
    let piece = Arc::make_mut(&mut draft.pieces[0]);
    piece.points.push(tracewheel::document::Point { name: "asked".into(), at: text.clone(), note: String::new() });
    draft.values.push(tracewheel::document::Value { name: "asked_too".into(), is: text.clone(), ..Default::default() });
    let model = Engine::new().compute(&draft);
    spans_are_sound(&model.findings);
    for case in &model.cases {
        for slot in case.slots.iter() {
            if let Some(real) = slot.good().and_then(|i| i.real()) {
                assert!(real.is_finite(), "{text:?}");
            }
        }
    }
    proof(&draft, &model);
}

/// Texts as files: what opens is written, opened again as the same draft, and written to the same bytes.
pub fn file(data: &[u8]) {
    let text = String::from_utf8_lossy(data);
    let Ok(opened) = file::read(&text) else { return };
    let written = file::write(&opened.draft);
    let again = match file::read(&written) {
        Ok(again) => again.draft,
        Err(error) => panic!("{error}\n{written}"),
    };
    assert!(again == opened.draft, "{written}");
    assert_eq!(file::write(&again), written);
    if data.len() < 30_000 {
        let model = Engine::new().compute(&again);
        spans_are_sound(&model.findings);
        proof(&again, &model);
    }
}

/// A command that may or may not be possible.
fn command(draft: &Draft, bytes: &mut Bytes<'_>, step: usize) -> Option<Command> {
    let fresh = format!("new_{step}");
    let piece = bytes.one(&draft.pieces).clone();
    let inner = inner_parts(draft, &piece.name);
    let points: Vec<Part> = inner.into_iter().filter(|p| matches!(p, Part::Inner(_, Inner::Point, _))).collect();
    let rows: Vec<String> = draft.chart.rows.iter().map(|r| r.name.clone()).collect();
    Some(match bytes.below(16) {
        0 | 1 => {
            let part = if points.is_empty() { return None } else { bytes.one(&points).clone() };
            let text = sentence(bytes, 2);
            Command::Text(TextCommand::Set(Address::new(part, "at"), text))
        }
        2 | 3 => {
            let value = if draft.values.is_empty() { return None } else { bytes.one(&draft.values).clone() };
            let field = if value.is_found() { *bytes.one(&["start", "least", "most"]) } else { "is" };
            Command::Text(TextCommand::Set(Address::new(Part::Value(value.name), field), sentence(bytes, 1)))
        }
        4 | 5 => {
            let row = if rows.is_empty() { return None } else { bytes.one(&rows).clone() };
            let label = if draft.chart.girth.is_empty() { return None } else { bytes.one(&draft.chart.girth).clone() };
            let text = if bytes.below(3) == 0 { sentence(bytes, 1) } else { format!("{} cm", bytes.next()) };
            Command::Chart(ChartCommand::Cell(row, label, text))
        }
        6 => Command::Chart(ChartCommand::AddSize(NewSize {
            label: format!("size {step}"),
            axis: Axis::Girth,
            between: None,
            cells: Vec::new(),
        })),
        7 => Command::Chart(ChartCommand::AddRow(fresh, RowKind::House)),
        8 => Command::Part(PartCommand::AddValue(fresh, sentence(bytes, 1))),
        9 => Command::Piece(PieceCommand::AddPoint(piece.name.clone(), fresh, sentence(bytes, 1))),
        10 => {
            let part = if points.is_empty() { return None } else { bytes.one(&points).clone() };
            Command::Part(PartCommand::Rename(part, fresh))
        }
        11 => {
            let row = if rows.is_empty() { return None } else { bytes.one(&rows).clone() };
            let how = *bytes.one(&[Deletion::PutValue, Deletion::LeaveBroken, Deletion::IfUnused]);
            Command::Part(PartCommand::Delete(Part::Row(row), how))
        }
        12 => {
            let part = if points.is_empty() { return None } else { bytes.one(&points).clone() };
            Command::Part(PartCommand::Delete(part, *bytes.one(&[Deletion::IfUnused, Deletion::LeaveBroken])))
        }
        13 => {
            let edge = if piece.edges.is_empty() { return None } else { bytes.one(&piece.edges).name.clone() };
            Command::Piece(PieceCommand::Bend(piece.name.clone(), edge, 0, bytes.below(2) == 0))
        }
        14 => {
            let label = if draft.chart.girth.is_empty() { return None } else { bytes.one(&draft.chart.girth).clone() };
            Command::Chart(ChartCommand::DeleteSize(Axis::Girth, label))
        }
        _ => Command::Chart(ChartCommand::AddPerson(format!("somebody {step}"))),
    })
}

/// Scripts of edits: after each the model is the one from nothing; undoing all gives the first draft back.
pub fn edits(data: &[u8]) {
    const MOST: usize = 24;
    let first = file::read(FIXTURE).unwrap().draft;
    let mut work = Work::here(first.clone());
    let mut bytes = Bytes(data);
    let mut done = 0;
    for step in 0..MOST {
        if bytes.0.is_empty() {
            break;
        }
        let before = Arc::clone(work.draft());
        let Some(command) = command(&before, &mut bytes, step) else { continue };
        if work.run(&command).is_err() {
            assert!(**work.draft() == *before, "{command:?} was refused but changed something");
            continue;
        }
        done += 1;
        let model = Engine::new().compute(work.draft());
        let computed = work.computed();
        let now = computed.model.as_ref().unwrap();
        assert_eq!(now.cases.len(), model.cases.len(), "{command:?}");
        for (a, b) in now.cases.iter().zip(&model.cases) {
            assert!(a.slots == b.slots && a.untrue == b.untrue, "{command:?}");
        }
        assert_eq!(computed.findings, proof(work.draft(), &model), "{command:?}");
        spans_are_sound(&computed.findings);
    }
    let _ = (SIDES, TURNS);
    for _ in 0..done {
        if work.undo().is_none() {
            break;
        }
    }
    assert!(**work.draft() == first);
}
