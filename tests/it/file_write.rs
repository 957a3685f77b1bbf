//! The standard form: what it looks like, and that nothing is lost in it.

use std::sync::Arc;

use proptest::prelude::*;
use tracewheel::document::*;
use tracewheel::file::{LINE, comments, read, write};

use crate::drafts;

fn some(text: &str) -> String {
    text.to_owned()
}

fn small() -> Draft {
    let edge =
        |name: &str, from: &str, by: Vec<Segment>| Edge { name: some(name), from: some(from), by, ..Edge::default() };
    let point = |name: &str, at: &str| Point { name: some(name), at: some(at), ..Point::default() };
    let long = "centre_top.down(12 cm).right(bust / 4 + ease - 5 mm)";
    Draft {
        title: some("Cuff \"A\\B\""),
        note: some("two\nlines\tand a \u{202e}\u{7}\r"),
        chart: Chart {
            girth: vec![some("76"), some("80")],
            base: some("76"),
            rows: vec![Row {
                name: some("wrist"),
                by: vec![Axis::Girth],
                cells: vec![Cell(some("76"), some("15 cm")), Cell(some("80"), some(""))],
                ..Row::default()
            }],
            ..Chart::default()
        },
        values: vec![Value { name: some("ease"), is: some("2 cm"), ..Value::default() }, Value::default()],
        pieces: vec![Arc::new(Piece {
            name: some("cuff"),
            points: vec![point("a", "(0 cm, 0 cm)"), point("b", "a.right(wrist + ease)"), point("c", "b.down(6 cm)")],
            edges: vec![
                edge("top", "a", vec![Segment::Straight(some("b"))]),
                edge("side", "b", vec![Segment::Curve(some(long), some(long), some("c"))]),
                edge(
                    "rest",
                    "c",
                    vec![
                        Segment::Arc { centre: some("m"), turn: Turn::Clockwise, to: some("d") },
                        Segment::Smooth { through: vec![], leaving: some(""), arriving: some("90°"), to: some("a") },
                    ],
                ),
            ],
            cuts: vec![Cut { material: some("main"), count: 2, ..Cut::default() }],
            ..Piece::default()
        })],
        placements: vec![
            Placement { name: some("laid"), mirrored: true, ..Placement::default() },
            Placement { name: some("flat"), ..Placement::default() },
        ],
        seams: vec![Arc::new(Seam {
            name: some("closing"),
            one: vec![some("cuff.top")],
            two: vec![some("cuff.side")],
            fit: Fit::Eased { longer: Side::Two, by: some("5 mm") },
            notches: vec![Notch { at: some("1/2"), strokes: 1, ..Notch::default() }],
            ..Seam::default()
        })],
        ..Draft::default()
    }
}

const SMALL: &str = r#"(
    format: "tracewheel draft",
    version: 0,
    title: "Cuff \"A\\B\"",
    note: "two\nlines\tand a \u{202e}\u{7}\r",
    display: cm,
    chart: (
        girth: ["76", "80"],
        base: "76",
        rows: [(name: "wrist", kind: body, by: [girth], cells: [("76", "15 cm"), ("80", "")])],
    ),
    values: [(name: "ease", is: "2 cm"), ()],
    pieces: [
        (
            name: "cuff",
            points: [
                (name: "a", at: "(0 cm, 0 cm)"),
                (name: "b", at: "a.right(wrist + ease)"),
                (name: "c", at: "b.down(6 cm)"),
            ],
            edges: [
                (name: "top", from: "a", by: [straight("b")]),
                (
                    name: "side",
                    from: "b",
                    by: [
                        curve(
                            "centre_top.down(12 cm).right(bust / 4 + ease - 5 mm)",
                            "centre_top.down(12 cm).right(bust / 4 + ease - 5 mm)",
                            "c",
                        ),
                    ],
                ),
                (
                    name: "rest",
                    from: "c",
                    by: [
                        arc(centre: "m", turn: clockwise, to: "d"),
                        smooth(through: [], arriving: "90°", to: "a"),
                    ],
                ),
            ],
            cuts: [(material: "main", count: 2)],
        ),
    ],
    placements: [(name: "laid", mirrored: true), (name: "flat")],
    seams: [
        (
            name: "closing",
            one: ["cuff.top"],
            two: ["cuff.side"],
            fit: eased(longer: two, by: "5 mm"),
            notches: [(at: "1/2", strokes: 1)],
        ),
    ],
)
"#;

#[test]
fn lays_a_small_draft_out() {
    let written = write(&small());
    assert!(written == SMALL, "{written}");
}

#[test]
fn writes_an_empty_draft() {
    let empty = "(\n    format: \"tracewheel draft\",\n    version: 0,\n    display: cm,\n)\n";
    assert_eq!(write(&Draft::default()), empty);
}

/// A group of exactly as many columns as a line has stays whole; one more breaks it.
#[test]
fn breaks_behind_the_last_column() {
    let with = |letters: usize| {
        let values = vec![Value { name: "a".repeat(letters), ..Value::default() }];
        write(&Draft { values, ..Draft::default() })
    };
    let shell = "    values: [(name: \"\")],".len();
    let whole = with(LINE - shell);
    assert_eq!(whole.lines().map(|line| line.chars().count()).max(), Some(LINE), "{whole}");
    assert_eq!(whole.lines().count(), 6, "{whole}");
    let broken = with(LINE - shell + 1);
    assert_eq!(broken.lines().count(), 8, "{broken}");
}

#[test]
fn keeps_every_letter_in_texts() {
    // All letters of the first plane and a few beyond, in pieces that stay below the limit of a text.
    let letters: Vec<char> =
        (0..=0xffff).chain(0x1f9f5..0x1f9f8).chain([0x10_ffff]).filter_map(char::from_u32).collect();
    assert!(letters.len() > 60_000);
    for some in letters.chunks(10_000) {
        let title: String = some.iter().collect();
        let written = write(&Draft { title: title.clone(), ..Draft::default() });
        assert_eq!(written.lines().count(), 6);
        let opened = read(&written).unwrap();
        assert!(opened.draft.title == title, "{:?}…", &some[..5]);
        assert!(!opened.had_comments);
    }
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, cases: 128, ..ProptestConfig::default() })]

    #[test]
    fn reads_back_what_it_writes(draft in drafts::draft()) {
        let written = write(&draft);
        let opened = read(&written);
        prop_assert!(opened.is_ok(), "{}\n{written}", opened.unwrap_err());
        let opened = opened.unwrap();
        prop_assert_eq!(&opened.draft, &draft);
        prop_assert!(!opened.had_comments);
        prop_assert_eq!(write(&opened.draft), written);
    }

    /// Line breaks, blanks and comments between the signs change nothing, and the comments are counted.
    #[test]
    fn layout_does_not_matter(draft in drafts::draft(), seed in any::<u64>()) {
        let written = write(&draft);
        let (loose, put_in) = loosened(&written, seed);
        let opened = read(&loose);
        prop_assert!(opened.is_ok(), "{}\n{loose}", opened.unwrap_err());
        let opened = opened.unwrap();
        prop_assert_eq!(write(&opened.draft), written);
        prop_assert_eq!(opened.had_comments, put_in > 0);
        prop_assert_eq!(comments(&loose).len(), put_in);
    }

    /// A draft that is cut off, or lost or gained a letter, is refused or read, never a panic; what is refused names a
    /// place within the text.
    #[test]
    fn survives_damage(
        draft in drafts::draft(),
        at in any::<prop::sample::Index>(),
        by in "[\\[\\](),:\"'/*\\\\ar0-9.#{}-]{0,3}",
    ) {
        let letters: Vec<char> = write(&draft).chars().collect();
        let at = at.index(letters.len());
        let (before, after) = letters.split_at(at);
        let cut: String = before.iter().collect();
        let torn: String = before.iter().copied().chain(by.chars()).chain(after.iter().skip(1).copied()).collect();
        for damaged in [cut, torn] {
            if let Err(error) = read(&damaged) {
                let lines = damaged.split('\n').count();
                prop_assert!((1..=lines).contains(&error.line), "{error}");
                let width = damaged.split('\n').nth(error.line - 1).unwrap().chars().count();
                prop_assert!((1..=width + 1).contains(&error.column), "{error}");
                prop_assert!(!error.found.is_empty() && !error.expected.is_empty());
                prop_assert!(!error.to_string().contains("unreadable"), "{error}\n{damaged}");
            }
        }
    }
}

/// The same signs with other blanks and some comments, and how many.
fn loosened(written: &str, seed: u64) -> (String, usize) {
    let (mut out, mut put_in, mut state) = (String::new(), 0, seed | 1);
    let mut within = false;
    let mut escaped = false;
    for letter in written.chars() {
        out.push(letter);
        match letter {
            _ if escaped => escaped = false,
            '\\' if within => escaped = true,
            '"' => within = !within,
            '(' | ')' | '[' | ']' | ',' | ':' if !within => {
                state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
                let choice = state >> 60;
                match choice {
                    0 => out.push_str(" // a \"line\" /* \n"),
                    1 => out.push_str("/* a /* nested \" */ one // */"),
                    2 => out.push_str("\r\n\t  "),
                    _ => {}
                }
                put_in += usize::from(choice < 2);
            }
            _ => {}
        }
    }
    (out, put_in)
}
