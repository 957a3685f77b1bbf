//! The booklet: steps of a view in sequence, numbers from the draft, allowances, pictures.

use std::collections::BTreeMap;
use std::path::Path;
use std::sync::Arc;

use tracewheel::compute::{Engine, Model};
use tracewheel::document::{Allowance, Cut, Draft};
use tracewheel::file;
use tracewheel::finish::{Finished, finish};
use tracewheel::output::{Block, BookletOrder, Cell, Photo, Table, Writing, booklet};
use tracewheel::session::photos;

/// A rectangle that grows with the chest, with hem and seams, and the steps that a test puts in.
fn draft(booklet: &str) -> Draft {
    file::read(&format!(
        r#"(
        format: "tracewheel draft", version: 0, title: "Box", edition: "3", date: "2026-02", author: "A studio", contact: "ask at the shop",
        chart: (
            girth: ["S", "M", "L"], base: "M",
            rows: [(name: "bust", kind: body, by: [girth], cells: [("S", "84 cm"), ("M", "88 cm"), ("L", "93 cm")])],
        ),
        values: [(name: "drop", is: "5/8 in"), (name: "turn", is: "30 deg"), (name: "folds", is: "3")],
        pieces: [
            (name: "front",
                points: [
                    (name: "a", at: "(0 cm, 0 cm)"), (name: "b", at: "a.right(bust / 4)"),
                    (name: "c", at: "b.down(40 cm)"), (name: "d", at: "a.down(40 cm)"),
                ],
                edges: [
                    (name: "top", from: "a", by: [straight("b")]), (name: "side", from: "b", by: [straight("c")]),
                    (name: "hem", from: "c", by: [straight("d")]), (name: "centre_front", from: "d", by: [straight("a")]),
                ],
                allowances: [
                    (edge: "top", width: "1 cm"), (edge: "side", width: "1 cm"),
                    (edge: "hem", width: "3 cm", turns: 2, turn_in: "1 cm"),
                ],
                cuts: [(material: "main", count: 1, on_fold: "centre_front", grain: (heading: "90 deg"))],
            ),
            (name: "back", of: "front", steps: []),
        ],
        materials: [(name: "main")],
        views: [(name: "long"), (name: "short", pieces: ["front"])],
        booklet: [{booklet}],
    )"#
    ))
    .unwrap()
    .draft
}

fn computed(draft: &Draft) -> (Model, Finished) {
    let model = Engine::new().compute(draft);
    let finished = finish(&model.draft, &model);
    (model, finished)
}

fn made(draft: &Draft, view: usize, cases: &[usize]) -> Writing {
    let (model, finished) = computed(draft);
    booklet(&BookletOrder {
        draft,
        model: &model.of_views()[view],
        finished: &finished.of_views()[view],
        cases,
        title: "Box".into(),
        edition: "edition 3".into(),
        cautions: Vec::new(),
        tables: Vec::new(),
        photos: &BTreeMap::new(),
        notes: Vec::new(),
    })
}

fn said(writing: &Writing) -> Vec<String> {
    let one = |block: &Block| match block {
        Block::Heading { text, .. } | Block::Paragraph(text) => vec![text.clone()],
        Block::List { items, .. } => items.clone(),
        Block::Figure { says, .. } => vec![says.clone()],
        _ => Vec::new(),
    };
    writing.blocks.iter().flat_map(one).collect()
}

fn tables(writing: &Writing) -> Vec<&Table> {
    let one = |block: &'_ Block| matches!(block, Block::Table(_));
    let all = writing.blocks.iter().filter(|b| one(b));
    all.filter_map(|b| if let Block::Table(t) = b { Some(t) } else { None }).collect()
}

#[test]
fn c107_each_view_has_its_own_steps_in_sequence() {
    let draft = draft(
        r#"(title: "All", text: "a"), (title: "Long only", text: "b", views: ["long"]),
           (title: "Short only", text: "c", views: ["short"]), (title: "Both", text: "d", views: ["long", "short"])"#,
    );
    let steps = |view| {
        let all = said(&made(&draft, view, &[0, 1, 2]));
        all.into_iter().filter(|t| t.starts_with(|c: char| c.is_ascii_digit())).collect::<Vec<_>>()
    };
    assert_eq!(steps(0), ["1. All", "2. Long only", "3. Both"]);
    assert_eq!(steps(1), ["1. All", "2. Short only", "3. Both"]);
}

#[test]
fn numbers_come_from_the_draft_in_both_units_or_as_a_table_over_the_sizes() {
    let draft = draft(
        r#"(title: "Turn {drop}", text: "Turn {turn}, fold {folds} times, {drop > 1 cm}. Cut {bust / 4 + 1 cm} and {bust / 4 + 1 cm}, then {bust}.\n\n- one\n- two")"#,
    );
    let all = made(&draft, 0, &[0, 1, 2]);
    let words = said(&all);
    // 5/8 in = 15.875 mm: 1.6 cm and 5/8 in, each from the value.
    assert!(
        words.contains(&"1. Turn 1.6 cm (5/8 in)".replace(' ', "\u{a0}").replacen("1.\u{a0}Turn\u{a0}", "1. Turn ", 1))
            || words.contains(&"1. Turn 1.6 cm (5/8 in)".to_owned()),
        "{words:?}"
    );
    assert!(words.contains(&"Turn 30°, fold 3 times, yes. Cut [a] and [a], then [b].".to_owned()), "{words:?}");
    let table = tables(&all)[0];
    assert_eq!(table.head, ["", "S", "M", "L"]);
    let lengths = |line: usize| -> Vec<Cell> { table.lines[line].cells.clone() };
    assert_eq!(lengths(0), [Cell::Length(220.0), Cell::Length(230.0), Cell::Length(242.5)]);
    assert_eq!(lengths(1), [Cell::Length(840.0), Cell::Length(880.0), Cell::Length(930.0)]);
    // For one size there is no table.
    let one = made(&draft, 0, &[2]);
    assert!(tables(&one).is_empty());
    let words = said(&one).join("\n").replace('\u{a0}', " ");
    assert!(words.contains("Cut 24.3 cm (9 1/2 in) and 24.3 cm (9 1/2 in), then 93 cm (36 5/8 in)."), "{words}");
}

#[test]
fn what_cannot_be_computed_is_a_dash_and_never_a_number() {
    let draft =
        draft(r#"(title: "Cut", text: "{sqrt(bust - 90 cm) * 1}"), (title: "Bad", text: "{nothing} and {bust")"#);
    let (model, _) = computed(&draft);
    let codes: Vec<&str> = model.findings.iter().map(|f| f.code.word()).collect();
    assert!(codes.contains(&"unknown-name") && codes.contains(&"brace-open"), "{codes:?}");
    let all = made(&draft, 0, &[0, 1, 2]);
    let words = said(&all);
    assert!(words.contains(&"{nothing} and {bust".to_owned()), "as it was typed: {words:?}");
    // A brace that is left open before another one takes nothing of that one.
    let draft = self::draft(r#"(title: "Fold", text: "{bust / 4 and {folds} times")"#);
    let (model, _) = computed(&draft);
    let open: Vec<&str> =
        model.findings.iter().filter(|f| f.code.word() == "brace-open").map(|f| &*f.formula).collect();
    assert_eq!(open, ["{bust / 4 and "]);
    let words = said(&made(&draft, 0, &[0, 1, 2]));
    assert!(words.contains(&"{bust / 4 and 3 times".to_owned()), "{words:?}");
    // One that closes nothing stays too, and takes nothing of its neighbours.
    let draft = self::draft(r#"(title: "Fold", text: "a} {folds} times}")"#);
    let (model, _) = computed(&draft);
    assert_eq!(model.findings.iter().filter(|f| f.code.word() == "brace-stray").count(), 2);
    let words = said(&made(&draft, 0, &[0, 1, 2]));
    assert!(words.contains(&"a} 3 times}".to_owned()), "{words:?}");
}

/// What is there is not told as nothing: cloth as thick as a hair's breadth still has a number.
#[test]
fn a_length_of_less_than_half_a_millimetre_is_told_in_millimetres() {
    let draft = draft(r#"(title: "Ease", text: "{0.4 mm}, {-0.04 cm}, {0.5 mm}, {0 cm}")"#);
    let words = said(&made(&draft, 0, &[0])).join("\n").replace('\u{a0}', " ");
    let told = "0.4 mm (under 1/16 in), -0.4 mm (under 1/16 in), 0.1 cm (under 1/16 in), 0 cm (0 in)";
    assert!(words.contains(told), "{words}");
}

#[test]
fn allowances_are_told_for_every_piece_as_its_cut_line_has_them() {
    let draft = draft("");
    let words = said(&made(&draft, 0, &[0, 1, 2])).join("\n").replace('\u{a0}', " ");
    // 3 cm + 1 cm turned in; the fold has none and is not named.
    let line = "A front: 1 cm (3/8 in), but 3 cm (1 1/8 in) hem and 1 cm (3/8 in) turned in at hem";
    assert!(words.lines().any(|l| l == line), "{words}");
    // A piece without any is named, with what to do.
    let mut bare = draft;
    Arc::make_mut(&mut bare.pieces[0]).allowances.clear();
    let words = said(&made(&bare, 0, &[0, 1, 2])).join("\n");
    assert!(words.contains("No allowance is included in: A front") && words.contains("Add what you need"), "{words}");
    assert!(!words.contains("Allowances are included"), "{words}");
}

/// A piece that is cut from two materials with other allowances: both are told, each with its material; one that has none is told so too.
#[test]
fn every_cut_of_a_piece_tells_its_own_allowances() {
    let two = |set: &str| {
        let mut draft = draft("");
        let piece = Arc::make_mut(&mut draft.pieces[0]);
        let mut stiff = piece.cuts[0].clone();
        (stiff.material, stiff.allowances) = ("stiff_stuff".into(), "inner".into());
        // A third one is cut like the first: it is named with it.
        let lining = Cut { material: "lining".into(), ..piece.cuts[0].clone() };
        piece.cuts.extend([stiff, lining]);
        for (edge, width) in [("top", set), ("side", set), ("hem", "0 cm")] {
            let allowance =
                Allowance { edge: edge.into(), set: "inner".into(), width: width.into(), ..Allowance::default() };
            piece.allowances.push(allowance);
        }
        said(&made(&draft, 0, &[0, 1, 2])).join("\n").replace('\u{a0}', " ")
    };
    let main = "A front: main, lining: 1 cm (3/8 in), but 3 cm (1 1/8 in) hem and 1 cm (3/8 in) turned in at hem";
    for (width, stiff) in [("5 mm", "0.5 cm (1/4 in), but none at hem"), ("0 cm", "none")] {
        let words = two(width);
        let line = format!("{main}; stiff stuff: {stiff}");
        assert!(words.lines().any(|l| l == line), "{line}\n{words}");
    }
}

#[test]
fn a_step_has_its_points_its_pieces_and_a_table_where_only_the_inches_differ() {
    // 14.2 and 14.4 mm are both 1.4 cm; 4.47 and 4.54 eighths of an inch are 1/2 and 5/8.
    let draft = draft(
        r#"(title: "Turn", text: "Turn {14.2 mm + (bust - 84 cm) / 200}.\n- one\n- two\n- three", pieces: ["front"])"#,
    );
    let all = made(&draft, 0, &[0, 1]);
    let from = all.blocks.iter().position(|b| matches!(b, Block::Heading { text, .. } if text == "1. Turn")).unwrap();
    let step = &all.blocks[from..];
    assert_eq!(step[1], Block::Paragraph("Turn [a].".into()));
    let items = ["one", "two", "three"].map(str::to_owned).to_vec();
    assert_eq!(step[2], Block::List { numbered: false, items });
    let Block::Table(table) = &step[3] else { panic!("{:?}", step[3]) };
    assert_eq!(table.head, ["", "S", "M"]);
    let shown = |i: usize| (table.lines[0].cells[i].in_cm(), table.lines[0].cells[i].in_inches());
    assert_eq!((shown(0), shown(1)), (("1.4".into(), "1/2".into()), ("1.4".into(), "5/8".into())));
    assert!(
        matches!(&step[4], Block::Figure { says, .. } if says == "Pieces drawn in size M: A front"),
        "{:?}",
        step[4]
    );
}

#[test]
fn pictures_lie_beside_the_draft_and_nowhere_else() {
    let folder = tempfile::tempdir().unwrap();
    let image = image::RgbImage::from_pixel(4, 3, image::Rgb([1, 2, 3]));
    image.save_with_format(folder.path().join("a.png"), image::ImageFormat::Png).unwrap();
    std::fs::write(folder.path().join("b.png"), "no picture").unwrap();
    let draft = draft(
        r#"(title: "x", pictures: [(file: "a.png", says: "a box", caption: "So"), (file: "b.png"), (file: "c.png"), (file: "../a.png"), (file: "")])"#,
    );
    let (found, problems) = photos(&draft, Some(folder.path()));
    assert_eq!(found.keys().collect::<Vec<_>>(), ["a.png"]);
    let told = problems.join("\n");
    for words in [
        "booklet step 1: the picture b.png is left out: it cannot be read as a PNG or JPEG picture",
        "the picture c.png is left out: there is no such file in the folder of the draft",
        "the picture ../a.png is left out: a picture lies in the folder of the draft or below it",
        "no file is named",
    ] {
        assert!(told.contains(words), "{words} in {told}");
    }
    assert_eq!(problems.len(), 4);
    let (none, problems) = photos(&draft, None);
    assert!(none.is_empty() && problems[0].contains("save it first"), "{problems:?}");
    let (model, finished) = computed(&draft);
    let writing = booklet(&BookletOrder {
        draft: &draft,
        model: &model.of_views()[0],
        finished: &finished.of_views()[0],
        cases: &[0],
        title: "Box".into(),
        edition: String::new(),
        cautions: Vec::new(),
        tables: Vec::new(),
        photos: &found,
        notes: Vec::new(),
    });
    let photo: Vec<&Arc<Photo>> = writing
        .blocks
        .iter()
        .filter_map(|b| if let Block::Photo { photo, .. } = b { Some(photo) } else { None })
        .collect();
    assert_eq!(photo.len(), 1);
    let told = |b: &Block| matches!(b, Block::Photo { says, caption, .. } if says == "a box" && caption == "So");
    assert!(writing.blocks.iter().any(told), "with its words");
    assert_eq!((photo[0].width, photo[0].height), (4, 3));
}

/// The program on a draft, with what it said.
fn publish(file: &Path, out: &Path, more: &[&str]) -> (i32, String) {
    let mut command = crate::program();
    command.arg("publish").arg(file).arg("--out").arg(out).args(more);
    let done = command.output().unwrap();
    let said = format!("{}{}", String::from_utf8_lossy(&done.stdout), String::from_utf8_lossy(&done.stderr));
    (done.status.code().unwrap(), said)
}

#[test]
fn a_missing_picture_is_told_and_the_rest_is_written() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("box.ron");
    std::fs::write(&file, file::write(&draft(r#"(title: "x", pictures: [(file: "gone.jpg")])"#))).unwrap();
    let out = folder.path().join("out");
    let (exit, said) = publish(&file, &out, &["--what", "booklet", "--view", "long"]);
    assert_eq!(exit, 1, "{said}");
    assert!(said.contains("the picture gone.jpg is left out: there is no such file"), "{said}");
    assert!(out.join("box-long-toile-booklet-A4-or-Letter.pdf").exists(), "{said}");
}

#[test]
fn formulas_that_say_nothing_are_told_and_the_rest_is_written() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("box.ron");
    let put = |text: &str| {
        let step = format!(r#"(title: "x", text: "{text}")"#);
        std::fs::write(&file, file::write(&draft(&step))).unwrap();
    };
    let out = folder.path().join("out");
    let asked = ["--what", "booklet", "--view", "long"];
    put("Take {bust / 4}.");
    assert_eq!(publish(&file, &out, &asked).0, 0);
    // What is no formula, and what has no value in one of three sizes.
    put("Take {bust +} and {5 cm / (bust - 88 cm) * 1 cm}.");
    let (exit, said) = publish(&file, &folder.path().join("more"), &asked);
    assert_eq!(exit, 1, "{said}");
    assert!(said.contains("booklet step 1: `{bust +}` cannot be read"), "{said}");
    assert!(said.contains("* 1 cm` has no value in size M and a dash stands there"), "{said}");
    assert!(folder.path().join("more/box-long-toile-booklet-A4-or-Letter.pdf").exists(), "{said}");
    // Tables alone do not hold the words of a step.
    let (exit, said) = publish(&file, &folder.path().join("tables"), &["--what", "tables", "--view", "long"]);
    assert_eq!(exit, 0, "{said}");
}

#[test]
fn a_sheet_is_as_wide_as_its_paper_and_has_no_more_sizes_than_can_be_told_apart() {
    let mut draft = draft("");
    draft.chart.girth = (0..8).map(|i| format!("s{i}")).collect();
    draft.chart.base = "s0".into();
    draft.chart.rows[0].cells =
        draft.chart.girth.iter().map(|s| tracewheel::document::Cell(s.clone(), "84 cm".to_owned())).collect();
    let model = computed(&draft).0;
    let sheet = |paper: &str, sizes: &[&str]| tracewheel::document::Sheet {
        name: "one".into(),
        paper: paper.into(),
        sizes: sizes.iter().map(|s| (*s).to_owned()).collect(),
        pieces: Vec::new(),
    };
    for (paper, width) in [("roll 36 in", 914.4), ("wide 914 mm", 914.0), ("wide", 0.0)] {
        let plan = tracewheel::session::sheet_plan(&model, &sheet(paper, &["s2"])).unwrap();
        assert!((plan.width - width).abs() < 1e-9, "{paper}: {}", plan.width);
    }
    let six = ["s0", "s1", "s2", "s3", "s4", "s5"];
    let plan = tracewheel::session::sheet_plan(&model, &sheet("A4", &six)).unwrap();
    assert!(plan.groups.iter().all(|g| g.1 == [0, 1, 2, 3, 4, 5]), "{:?}", plan.groups);
    let seven = [&six[..], &["s6"]].concat();
    let told = tracewheel::session::sheet_plan(&model, &sheet("A4", &seven)).unwrap_err();
    assert!(told.contains("7 sizes together cannot be told apart; at most 6"), "{told}");
}

#[test]
fn sheets_that_the_draft_tells_of_are_published_by_name() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("box.ron");
    let mut draft = draft("");
    draft.views.clear();
    let sheet = |name: &str, paper: &str, sizes: &[&str], pieces: &[&str]| tracewheel::document::Sheet {
        name: name.into(),
        paper: paper.into(),
        sizes: sizes.iter().map(|s| (*s).to_owned()).collect(),
        pieces: pieces.iter().map(|s| (*s).to_owned()).collect(),
    };
    draft.sheets = vec![
        sheet("home", "A4", &["S", "M"], &["front"]),
        sheet("roll", "roll 36 in", &[], &[]),
        sheet("odd", "parchment", &[], &[]),
        sheet("gone", "A4", &["XL"], &[]),
    ];
    std::fs::write(&file, file::write(&draft)).unwrap();
    let out = folder.path().join("out");
    let (exit, said) = publish(&file, &out, &["--sheet", "home", "--sheet", "roll"]);
    assert_eq!(exit, 0, "{said}");
    let mut names: Vec<String> =
        std::fs::read_dir(&out).unwrap().map(|e| e.unwrap().file_name().to_string_lossy().into_owned()).collect();
    names.sort();
    // Several kinds come with a list of what each file is for (case C104).
    let list = names.iter().position(|n| n == "box-toile-read-me-first.txt").map(|i| names.remove(i)).unwrap();
    let list = std::fs::read_to_string(out.join(list)).unwrap();
    assert!(list.starts_with("Box\n\nWhat each file is for\n\npages: pieces in true size on pages"), "{list}");
    assert!(names.iter().all(|n| list.contains(&format!("- {n} – size"))), "{list}");
    assert_eq!(names.len(), 4, "{names:?}");
    assert!(names[0].starts_with("box-L-toile-sheet-") && names[3].starts_with("box-S-toile-sheet-"), "{names:?}");
    assert!(names[2].starts_with("box-S+M-front-toile-A4-"), "{names:?}");
    for (name, words) in [
        ("odd", "sheet odd: the paper `parchment` is not known; write one of `A4`"),
        ("gone", "sheet gone: there is no size XL"),
        ("none", "there is no sheet none; there are home, roll, odd, gone"),
    ] {
        let (exit, said) = publish(&file, &out, &["--sheet", name]);
        assert!(exit != 0 && said.contains(words), "{said}");
    }
}
