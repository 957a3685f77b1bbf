//! A small finished draft with some of its texts changed: finished, proved and published.

use std::sync::Arc;

use tracewheel::compute::Engine;
use tracewheel::document::{Address, Draft, Role};
use tracewheel::file;
use tracewheel::finish::finish;
use tracewheel::output::{Side, compare};
use tracewheel::proof::proof_of;
use tracewheel::session::{Order, PrintFor, PrintWish, Progress, What, outputs};

use super::{Bytes, sentence, spans_are_sound};

/// A little of everything that is finished and published, in two sizes.
pub const FINISHED: &str = r#"(
    format: "tracewheel draft", version: 0, title: "Skirt", author: "us", edition: "1", date: "2026-03-01", display: cm, audience: adult,
    settings: (allowance: "1.5 cm"),
    chart: (girth: ["S", "M"], rows: [
        (name: "hip", by: [girth], cells: [("S", "96 cm"), ("M", "104 cm")]),
        (name: "waist", by: [girth], cells: [("S", "72 cm"), ("M", "80 cm")]),
    ]),
    values: [(name: "long", is: "58 cm"), (name: "dart_in", is: "2 cm"), (name: "rise", start: "-1 cm", least: "-4 cm", most: "4 cm")],
    pieces: [
        (
            name: "back", letter: "A",
            points: [
                (name: "wc", at: "(0 cm, 0 cm)"), (name: "hc", at: "(0 cm, long)"), (name: "hs", at: "hc.right(hip / 4 + 1 cm)"),
                (name: "ws", at: "(waist / 4 + dart_in, -1 cm)"),
            ],
            edges: [
                (name: "centre", from: "wc", by: [straight("hc")]),
                (name: "hem", from: "hc", by: [curve("hc.right(8 cm)", "hs.polar(170°, 8 cm)", "hs")]),
                (name: "side", from: "hs", by: [curve("hs.up(20 cm)", "ws.polar(80°, 10 cm)", "ws")]),
                (name: "waist", from: "ws", by: [straight("wc")]),
            ],
            darts: [(name: "dart", on: "waist", centre: "1/2", intake: "dart_in", tip: "13 cm", pressed: to_end)],
            lengthen: [(name: "here", line: "level((0 cm, 35 cm))")],
            marks: [(name: "drill", kind: drill_hole, at: "dart.tip.up(1 cm)"), (name: "button", kind: button, at: "(3 cm, 9 cm)", size: "15 mm")],
            allowances: [(edge: "hem", width: "3 cm", turns: 1), (edge: "waist", width: "1 cm")],
            cuts: [(material: "main", count: 2, grain: (heading: "90°", along: "centre"))],
            label: (at: "(8 cm, 30 cm)"),
        ),
        (
            name: "front", letter: "B",
            points: [
                (name: "wc", at: "(0 cm, 0 cm)"), (name: "hc", at: "(0 cm, long)"), (name: "hs", at: "hc.right(hip / 4 + 3 cm)"),
                (name: "ws", at: "(waist / 4 + 3 cm, rise)"),
            ],
            edges: [
                (name: "centre", from: "wc", by: [straight("hc")]),
                (name: "hem", from: "hc", by: [straight("hs")]),
                (name: "side", from: "hs", by: [smooth(through: ["(hip / 4 + 2 cm, 25 cm)"], to: "ws")]),
                (name: "waist", from: "ws", by: [straight("wc")]),
            ],
            pleats: [(name: "pleat", on: "waist", centre: "1/2", intake: "3 cm", depth: "5 cm", pressed: to_end)],
            allowances: [(edge: "hem", width: "4 cm", turns: 2, turn_in: "1 cm"), (edge: "side", width: "2 cm")],
            cuts: [(material: "main", count: 1, on_fold: "centre", grain: (heading: "90°", along: "centre"))],
        ),
    ],
    seams: [
        (name: "side", one: ["back.side"], two: ["front.side"], fit: equal, found_by: ["rise"], notches: [(name: "half", at: "1/2", strokes: 2)], order: "1"),
        (name: "centre", one: ["back.centre"], two: ["copy(back.centre)"], fit: equal, order: "2"),
    ],
    measures: [(name: "hem", is: "2 * (length(back.hem) + length(front.hem))", body: "hip", ease_least: "3 cm", ease_most: "40 cm")],
    materials: [(name: "main", kind: cloth, widths: ["140 cm"], selvedge: "1 cm")],
    strips: [(name: "band", material: "main", length: "waist + 3 cm", ends: "1 cm", width: "3 cm", layers: 2, grain: bias, join: "1 cm")],
    notions: [(name: "zip", count: 1, size: "20 cm", sold: ["20 cm", "22 cm"])],
    booklet: [(title: "Side", text: "Sew the {seam.side.one} of the side, turn up {back.hem}.\n\n- {1/2 in} at the waist", pieces: ["back", "front"])],
)"#;

/// The most texts that are changed, and the most letters of a new one.
const MOST_TEXTS: usize = 4;
const MOST_LETTERS: usize = 60;

/// Each of the first bytes says what is made and for whom; then come texts: which, and what it is now.
pub fn published(data: &[u8]) {
    let [what, how, rest @ ..] = data else { return };
    let mut bytes = Bytes(rest);
    let first = file::read(FINISHED).unwrap().draft;
    let mut draft = first.clone();
    change(&mut draft, &mut bytes);
    let model = Engine::new().compute(&draft);
    let (first, draft) = (Arc::new(first), Arc::clone(&model.draft));
    let finished = finish(&draft, &model);
    let findings = proof_of(&draft, &model, &finished);
    spans_are_sound(&findings);
    let cases: Vec<usize> = (0..model.cases.len()).collect();
    let groups = if how % 2 == 0 { vec![(0, cases)] } else { cases.iter().map(|case| (0, vec![*case])).collect() };
    let wish = PrintWish {
        purpose: [PrintFor::Toile, PrintFor::Testers, PrintFor::Release][usize::from(how / 2 % 3)],
        whole: how & 64 != 0,
        ..PrintWish::default()
    };
    let kind = What::ALL[usize::from(*what) % What::ALL.len()];
    let order = Order {
        draft: &draft,
        model: &model,
        finished: &finished,
        stem: "skirt",
        what: &[kind],
        groups: &groups,
        wish: &wish,
        width: 900.0,
        folder: None,
    };
    if let Ok(made) = outputs(&order, &Progress::default(), &|_| {}) {
        for file in &made.files {
            assert!(!file.bytes.is_empty() && !file.name.contains(['/', '\\']), "{}", file.name);
            let begins = |with: &[u8]| file.bytes.starts_with(with);
            assert!(!file.name.ends_with(".pdf") || begins(b"%PDF-"), "{}", file.name);
            let is_text = [".html", ".csv", ".svg", ".dxf"].iter().any(|end| file.name.ends_with(end));
            let text = std::str::from_utf8(&file.bytes);
            assert!(!is_text || text.is_ok_and(|t| !t.contains("NaN")), "{}", file.name);
        }
    }
    if how & 128 != 0 {
        let model_before = Engine::new().compute(&first);
        let finished_before = finish(&first, &model_before);
        let before = Side { draft: &first, model: &model_before, finished: &finished_before };
        let now = Side { draft: &draft, model: &model, finished: &finished };
        let _ = compare(before, now, &[], &[]);
    }
}

/// Puts other texts in the places of some: sentences of the grammar, or letters as they come. Names stay, so that the draft hangs together.
fn change(draft: &mut Draft, bytes: &mut Bytes<'_>) {
    let mut places: Vec<Address> = Vec::new();
    draft.each_text(&mut |at, role, _| {
        if !matches!(role, Role::OwnName) {
            places.push(at.clone());
        }
    });
    for _ in 0..MOST_TEXTS {
        if bytes.0.is_empty() {
            break;
        }
        let at = bytes.one(&places).clone();
        let text = match bytes.below(4) {
            0 => {
                let letters = bytes.below(MOST_LETTERS).min(bytes.0.len());
                let (own, rest) = bytes.0.split_at(letters);
                bytes.0 = rest;
                String::from_utf8_lossy(own).into_owned()
            }
            1 => format!("{} {}", bytes.next(), ["cm", "mm", "in", "m", "deg", ""][bytes.below(6)]),
            depth => sentence(bytes, depth - 1),
        };
        draft.set_text(&at, &text);
    }
}
