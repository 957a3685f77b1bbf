//! What stands on pieces: that it is true, that it can be read, that it lies inside or has a line to its piece.

use std::sync::Arc;

use kurbo::{Point, Rect, Shape};
use tracewheel::compute::{Engine, Model};
use tracewheel::document::Draft;
use tracewheel::finish::{Finished, finish, letter, letters};
use tracewheel::output::{
    CAPITAL, Cell, HOME_MARGIN, HomeSettings, Item, Paper, Picture, SheetPiece, Text, WideSettings, both_units,
    home_sheets, sheet_pieces, text_width, wide_sheet,
};
use tracewheel::{file, proof};

/// A draft with its model and its finished pieces.
pub struct Made {
    pub draft: Arc<Draft>,
    pub model: Model,
    pub finished: Finished,
}

pub fn made(text: &str) -> Made {
    let draft = file::read(text).unwrap().draft;
    let model = Engine::new().compute(&draft);
    let draft = Arc::clone(&model.draft);
    let finished = finish(&draft, &model);
    Made { draft, model, finished }
}

pub fn example(name: &str) -> Made {
    made(&std::fs::read_to_string(format!("examples/{name}.ron")).unwrap())
}

impl Made {
    pub fn case(&self, size: &str) -> usize {
        self.model.plan.cases.find(size).unwrap()
    }

    pub fn pieces(&self, size: &str, whole: bool) -> Vec<SheetPiece> {
        let (pieces, missing) = sheet_pieces(&self.draft, &self.model, &self.finished, self.case(size), whole);
        assert_eq!(missing, Vec::<String>::new());
        pieces
    }
}

fn texts(items: &[Item], by: kurbo::Vec2, out: &mut Vec<Text>) {
    for item in items {
        match item {
            Item::Text(text) => out.push(Text { at: text.at + by, ..text.clone() }),
            Item::Group { items, .. } | Item::Clip { items, .. } => texts(items, by, out),
            Item::Shared { what, at } => texts(&what.items, by + *at, out),
            _ => {}
        }
    }
}

fn all_texts(picture: &Picture) -> Vec<Text> {
    let mut out = Vec::new();
    texts(&picture.items, kurbo::Vec2::ZERO, &mut out);
    out
}

/// The corners of a text's letters: capitals and what hangs below.
fn corners(text: &Text) -> [Point; 4] {
    let width = text_width(&text.text, text.size);
    let turn = kurbo::Affine::translate(text.at.to_vec2()) * kurbo::Affine::rotate(text.angle);
    let (half, up, down) = (width / 2.0, -0.74 * text.size, 0.2 * text.size);
    [(-half, up), (half, up), (half, down), (-half, down)].map(|p| turn * Point::from(p))
}

/// A strip cut twice, a square cut once, a half on the fold, all from one cloth.
fn three(cloth: &str, face: &str) -> String {
    let rectangle = |name: &str, letter: &str, w: &str, h: &str, skew: &str, cut: &str| {
        format!(
            r#"(name: "{name}", letter: "{letter}", points: [(name: "a", at: "(0 cm, 0 cm)"), (name: "b", at: "a.right({w})"), (name: "c", at: "b.down({h}).right({skew})"), (name: "d", at: "a.down({h})")],
            edges: [(name: "top", from: "a", by: [straight("b")]), (name: "side", from: "b", by: [straight("c")]), (name: "hem", from: "c", by: [straight("d")]), (name: "middle", from: "d", by: [straight("a")])],
            marks: [(name: "m", kind: text, at: "a.right(3 cm).down(3 cm)", text: "{{1 cm}} wide")],
            cuts: [{cut}])"#
        )
    };
    format!(
        r#"(format: "tracewheel draft", version: 0, title: "A shirt", edition: "3", date: "2026-05-01", chart: (girth: ["S", "M"], rows: [(name: "bust", by: [girth], cells: [("S", "80 cm"), ("M", "90 cm")])]),
        materials: [(name: "main", {cloth})], settings: (allowance: "1 cm"),
        pieces: [{}, {}, {}])"#,
        rectangle(
            "left_front",
            "",
            "20 cm",
            "30 cm",
            "5 cm",
            &format!(r#"(material: "main", count: 2, grain: (heading: "90 deg", ways: one){face})"#)
        ),
        rectangle(
            "pocket",
            "A",
            "bust / 8",
            "12 cm",
            "0 cm",
            r#"(material: "main", count: 1, grain: (heading: "45 deg"))"#
        ),
        rectangle(
            "band",
            "",
            "12 in",
            "1.5 in",
            "0 cm",
            r#"(material: "main", count: 1, on_fold: "middle", grain: (heading: "0 deg"))"#
        ),
    )
}

#[test]
fn letters_come_by_themselves_and_keep_off_those_that_are_typed() {
    let made = made(&three("nap: with", ""));
    assert_eq!(letters(&made.model), ["B", "A", "C"]);
    assert_eq!([letter(0), letter(25), letter(26), letter(51), letter(52)], ["A", "Z", "AA", "AZ", "BA"]);
    // A block that others are made of has none, and no piece on the sheet.
    let top = example("panel-top");
    let all = letters(&top.model);
    let named: Vec<&String> = all.iter().filter(|l| !l.is_empty()).collect();
    let different: std::collections::BTreeSet<&&String> = named.iter().collect();
    assert!(different.len() == named.len() && named.len() > 5, "{all:?}");
}

#[test]
fn a_label_says_all_that_a_cutter_asks() {
    // Case C108: letter, name, size, count with mirrored, cloth, grain, nap; garment, edition and date.
    let pieces = made(&three("nap: with", "")).pieces("M", false);
    let front = &pieces[0];
    assert_eq!((front.name.as_str(), front.letter.as_str(), front.size.as_str()), ("left_front", "B", "M"));
    // 1 cm = 0.394 in, to the nearest eighth 3/8; what has none says so.
    let notes: Vec<String> = front.notes.iter().map(|n| n.replace('\u{a0}', " ")).collect();
    assert_eq!(
        notes,
        [
            "cut 2 (1 + 1 mirrored) from main, 2 = 1 pair",
            "nap down, as the arrow points",
            "with allowance 1 cm (3/8 in)"
        ]
    );
    assert_eq!(front.about, ["A shirt", "edition 3, 2026-05-01"]);
    assert_eq!(pieces[1].notes[..2], ["cut 1 from main", "on the bias, nap along the thread"]);
    assert_eq!(pieces[2].notes[0], "cut 1 on the fold from main");
    let without = made(&three("", "")).pieces("M", false);
    assert_eq!(without[0].notes[1], "grain one way on all pieces");
    assert_eq!(without[1].notes[1], "on the bias, grain either way");
    let picture = wide_sheet("A shirt", &pieces, WideSettings::default()).unwrap();
    let said: Vec<String> = all_texts(&picture).into_iter().map(|t| t.text).collect();
    let said = said.join(" ");
    for words in
        ["B · left front", "size M", "cut 2 (1 + 1 mirrored) from main", "nap down", "A shirt", "edition 3, 2026-05-01"]
    {
        assert!(said.contains(words), "{words}: {said}");
    }
}

#[test]
fn c074_a_single_one_sided_piece_says_which_side_is_up() {
    let with = |face: &str| made(&three("", face).replace("count: 2", "count: 1"));
    let up = with(", face: right_side_up");
    assert_eq!(up.pieces("M", false)[0].notes[0], "cut 1, right side of the cloth up from main");
    let blocked = |made: &Made| {
        let findings = proof::proof(&made.draft, &made.model);
        findings.iter().any(|f| {
            f.code.word() == "face-missing"
                && f.place.name == "left_front"
                && f.severity() == tracewheel::base::Severity::Error
        })
    };
    // Without it a release is refused.
    assert!(!blocked(&up) && blocked(&with("")));
}

#[test]
fn c076_a_strip_on_the_fold_is_printed_whole_on_request() {
    let made = made(&three("", ""));
    let [half, whole] = [false, true].map(|whole| made.pieces("M", whole)[2].clone());
    let stitch = |p: &SheetPiece| p.stitch.as_ref().unwrap().bounding_box().size();
    assert!((stitch(&half).width - 12.0 * 25.4).abs() < 1e-9 && (stitch(&half).height - 38.1).abs() < 1e-9);
    assert!((stitch(&whole).width - 24.0 * 25.4).abs() < 1e-9 && (stitch(&whole).height - 38.1).abs() < 1e-9);
    assert_eq!(half.notes[0], "cut 1 on the fold from main");
    assert_eq!(whole.notes[0], "cut 1 from main");
    assert_eq!(whole.notes.last().unwrap(), "drawn whole: not on the fold");
    assert!(half.words.iter().any(|w| w.2.contains("fold")) && !whole.words.iter().any(|w| w.2.contains("fold")));
}

#[test]
fn c077_the_label_says_what_the_draft_says_of_cloth_and_count() {
    let mut checked = 0;
    for name in ["panel-top", "skirt-finished", "market-apron"] {
        let made = example(name);
        let size = made.model.plan.cases.list[0].address.clone();
        let pieces = made.pieces(&size, false);
        for piece in &made.draft.pieces {
            let Some(sheet) = pieces.iter().find(|p| p.name == piece.name) else { continue };
            for cut in &piece.cuts {
                let wanted = format!("cut {}", cut.count.max(1));
                let cloth = format!("from {}", cut.material);
                assert!(
                    sheet.notes.iter().any(|n| n.starts_with(&wanted) && n.contains(&cloth)),
                    "{name} {:?}",
                    sheet.notes
                );
                checked += 1;
            }
        }
    }
    assert!(checked > 10, "{checked}");
}

/// All labels and words of a sheet of single pieces: inside their piece, or off every piece with a line into it; nothing off the sheet.
fn judged(pieces: &[SheetPiece], width: f64) -> (usize, usize) {
    let picture = wide_sheet("x", pieces, WideSettings { width }).unwrap();
    let page = Rect::new(0.0, 0.0, picture.width, picture.height).inset(-10.0);
    let mut strokes = Vec::new();
    let mut dots = Vec::new();
    let mut open = vec![&picture.items];
    while let Some(items) = open.pop() {
        for item in items {
            match item {
                Item::Group { items, .. } => open.push(items),
                Item::Stroke { path, pen } => strokes.push((path.clone(), pen.width)),
                Item::Fill { path, .. } => dots.push(path.bounding_box().center()),
                _ => {}
            }
        }
    }
    let closed = |p: &kurbo::BezPath| matches!(p.elements().last(), Some(kurbo::PathEl::ClosePath));
    let outlines: Vec<_> = strokes.iter().filter(|(p, w)| *w == 0.35 && closed(p)).map(|s| s.0.clone()).collect();
    let (mut inside, mut beside) = (0, 0);
    for piece in pieces {
        let name = piece.name.replace('_', " ");
        let head = if piece.letter.is_empty() { name } else { format!("{} · {name}", piece.letter) };
        let texts = all_texts(&picture);
        // The head may be broken or joined: its beginning is looked for.
        let start: String = head.chars().take(6).collect();
        let found = texts.iter().find(|t| t.text.starts_with(&start)).unwrap_or_else(|| panic!("{head} is nowhere"));
        let own = corners(found);
        assert!(own.iter().all(|c| page.contains(*c)), "{head} leaves the sheet");
        assert!(found.size * 0.727 >= CAPITAL - 0.01, "{head}: {} mm", found.size);
        let around: Vec<usize> = own.iter().map(|c| outlines.iter().filter(|o| o.winding(*c) != 0).count()).collect();
        if around.iter().all(|n| *n == 1) {
            inside += 1;
        } else {
            assert!(around.iter().all(|n| *n == 0), "{head} lies over an outline: {around:?}");
            beside += 1;
        }
    }
    assert_eq!(dots.len(), beside, "each label beside its piece has one line with a dot");
    for dot in dots {
        assert!(outlines.iter().any(|o| o.winding(dot) != 0), "a leading line ends outside: {dot:?}");
    }
    (inside, beside)
}

#[test]
fn c108_every_label_lies_inside_its_piece_or_has_a_line_to_it_in_every_size() {
    let (mut inside, mut beside) = (0, 0);
    for name in ["panel-top", "skirt-finished", "market-apron", "bodice-finished", "trousers"] {
        let made = example(name);
        for case in 0..made.model.plan.cases.list.len() {
            let (pieces, _) = sheet_pieces(&made.draft, &made.model, &made.finished, case, false);
            let found = judged(&pieces, 1600.0);
            inside += found.0;
            beside += found.1;
        }
    }
    assert!(inside > 400 && beside > 0, "{inside} inside, {beside} beside");
    // What is too small for any letter that can be read.
    let tiny = crate::output_demo::piece("Tab", "36", "M 0 0 L 20 0 L 20 12 L 0 12 Z", &[]);
    assert_eq!(judged(std::slice::from_ref(&tiny), 600.0), (0, 1));
    // A strip as wide as the page: its label stands below or above, not beyond the page.
    let strip = crate::output_demo::piece("Strip", "36", "M 0 0 L 560 0 L 560 3 L 0 3 Z", &[]);
    assert_eq!(judged(std::slice::from_ref(&strip), 600.0), (0, 1));
}

/// C079: a front was printed in two parts on a crowded sheet, and cut without what joins them. A piece is split by the pages of a home
/// printer only; everywhere else its cut line stands once and whole, with one label.
#[test]
fn c079_no_sheet_splits_a_piece_and_each_has_one_label() {
    let made = example("panel-top");
    // Blocks that others are made of have no letter and come on no sheet.
    let pieces: Vec<SheetPiece> = made.pieces("88", false).into_iter().filter(|p| !p.letter.is_empty()).collect();
    assert!(pieces.len() > 5);
    // Closed lines of a drawing, with what is drawn elsewhere, each by its length and box.
    fn closed(items: &[Item], out: &mut Vec<(f64, kurbo::Size)>) {
        for item in items {
            match item {
                Item::Group { items, .. } | Item::Clip { items, .. } => closed(items, out),
                Item::Shared { what, .. } => closed(&what.items, out),
                Item::Stroke { path, .. } if matches!(path.elements().last(), Some(kurbo::PathEl::ClosePath)) => {
                    out.push((path.perimeter(0.01), path.bounding_box().size()));
                }
                _ => {}
            }
        }
    }
    let measured = |piece: &SheetPiece| {
        let mut line = piece.outline.clone();
        if !matches!(line.elements().last(), Some(kurbo::PathEl::ClosePath)) {
            line.close_path();
        }
        (line.perimeter(0.01), line.bounding_box().size())
    };
    let whole = |items: &[Item], what: &str| {
        let mut found = Vec::new();
        closed(items, &mut found);
        let close = |of: (f64, kurbo::Size), other: (f64, kurbo::Size)| {
            let apart = of.1 - other.1;
            (of.0 - other.0).abs() < 0.05 && apart.width.hypot(apart.height) < 1e-6
        };
        let own: Vec<(f64, kurbo::Size)> = pieces.iter().map(measured).collect();
        for (piece, own_line) in pieces.iter().zip(&own) {
            // Two pieces may have one shape.
            let count = |all: &[(f64, kurbo::Size)]| all.iter().filter(|o| close(*own_line, **o)).count();
            assert_eq!(count(&found), count(&own), "{what}: {}", piece.name);
        }
    };
    // Narrow paper, so that the sheet is crowded.
    for width in [700.0, 1500.0] {
        let sheet = wide_sheet("x", &pieces, WideSettings { width }).unwrap();
        whole(&sheet.items, "wide");
        let said: Vec<String> = all_texts(&sheet).into_iter().map(|t| t.text).collect();
        for piece in &pieces {
            let head = format!("{} · {}", piece.letter, piece.name.replace('_', " "));
            // A long name is broken into lines.
            let of_it = |t: &&String| {
                t.starts_with(&format!("{} · ", piece.letter)) && (head.starts_with(t.as_str()) || t.starts_with(&head))
            };
            let label = said.iter().filter(of_it).count();
            assert_eq!(label, 1, "{head}: {said:?}");
        }
    }
    let open = tracewheel::output::open_pieces(&made.model, &made.finished, made.case("88")).0;
    let open: Vec<_> = open.into_iter().filter(|o| pieces.iter().any(|p| p.name == o.name)).collect();
    let drawing = tracewheel::output::interchange_drawing(&open);
    whole(&drawing.items, "drawing");
}

#[test]
fn pages_keep_room_for_labels_and_words() {
    let made = example("panel-top");
    let pieces: Vec<SheetPiece> = ["76", "88", "100"].iter().flat_map(|s| made.pieces(s, false)).collect();
    let settings = HomeSettings {
        paper: Paper::A4,
        margin: HOME_MARGIN,
        title: "A top".into(),
        purpose: String::new(),
        edition: String::new(),
        body: None,
        places: Vec::new(),
        unit: tracewheel::base::DisplayUnit::Cm,
    };
    let sheets = home_sheets(&pieces, &settings).unwrap();
    let mut seen = 0;
    for page in &sheets.pages[1..] {
        let mut open = vec![&page.items];
        while let Some(items) = open.pop() {
            for item in items {
                match item {
                    Item::Group { items, .. } | Item::Clip { items, .. } => open.push(items),
                    Item::Shared { what, .. } => {
                        let mut own = Vec::new();
                        texts(&what.items, kurbo::Vec2::ZERO, &mut own);
                        for text in own.iter().filter(|t| t.align == tracewheel::output::Align::Middle && t.size > 3.0)
                        {
                            assert!(corners(text).iter().all(|c| what.room.contains(*c)), "{} is cut off", text.text);
                            seen += 1;
                        }
                    }
                    _ => {}
                }
            }
        }
    }
    assert!(seen > 40, "{seen}");
    // The name of each piece and its sizes, once in each of its rooms.
    let label =
        pieces.iter().filter(|p| !p.letter.is_empty()).map(|p| format!("{} · {}", p.letter, p.name.replace('_', " ")));
    let said: String = sheets.pages.iter().flat_map(all_texts).map(|t| t.text + " ").collect();
    for label in label {
        assert!(said.contains(&label), "{label}");
    }
    assert!(said.contains("sizes 76 · 88 · 100"));
}

#[test]
fn words_of_marks_have_numbers_of_their_size_in_both_units() {
    let text = three("", "").replace("{1 cm} wide", "{bust / 8} wide, {2 * 3} times, {bust > 85 cm}");
    let made = made(&text);
    let words =
        |size: &str| made.pieces(size, false)[0].words.iter().map(|w| w.2.replace('\u{a0}', " ")).next().unwrap();
    // 80 cm / 8 = 10 cm = 31.50 eighths of an inch (31.496), so 31; 90 / 8 = 11.25 cm = 35.43 of them, so 35.
    assert_eq!(words("S"), "10 cm (3 7/8 in) wide, 6 times, no");
    assert_eq!(words("M"), "11.3 cm (4 3/8 in) wide, 6 times, yes");
    // What cannot be computed is a dash and a finding, never a number.
    let broken = text.replace("{bust / 8}", "{bust / 0}");
    let broken = self::made(&broken);
    assert!(broken.pieces("M", false)[0].words[0].2.starts_with("– wide"), "{:?}", broken.pieces("M", false)[0].words);
    assert!(!proof::proof(&broken.draft, &broken.model).iter().all(|f| f.place.name != "left_front"));
    let unread = self::made(&text.replace("{bust / 8}", "{bust / }"));
    assert!(unread.pieces("M", false)[0].words[0].2.starts_with("{bust / } wide"));
    assert!(!unread.model.findings.is_empty());
}

#[test]
fn lengths_in_words_are_rounded_once() {
    // Worked by hand from the definition 1 in = 25.4 mm: 33.34 mm is 10.5008 eighths, so 11 of them; by way of 3.3 cm it would be 10.39, so 10.
    for (mm, words) in [
        (25.4, "2.5 cm (1 in)"),
        (25.0, "2.5 cm (1 in)"),
        (31.75, "3.2 cm (1 1/4 in)"),
        (33.34, "3.3 cm (1 3/8 in)"),
        (100.0, "10 cm (3 7/8 in)"),
        (0.0, "0 cm (0 in)"),
        (1.0, "0.1 cm (under 1/16 in)"),
        (-25.4, "-2.5 cm (-1 in)"),
    ] {
        assert_eq!(both_units(mm).replace('\u{a0}', " "), words);
    }
    assert_eq!(Cell::Length(100.0).in_cm(), "10.0");
}
