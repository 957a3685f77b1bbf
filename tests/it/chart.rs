//! The chart without a window: blocks from spreadsheets, axes, sets, tables.

use tracewheel::base::Unit;
use tracewheel::compute::Engine;
use tracewheel::document::{Axis, Draft, RowKind};
use tracewheel::file;
use tracewheel::session::{Block, ChartCommand, Command, Fate, Home, Parted, Work, export_chart, import_chart, lay};

fn draft(chart: &str) -> Draft {
    file::read(&format!("(format: \"tracewheel draft\", version: 0, chart: ({chart}))")).unwrap().draft
}

fn small() -> Draft {
    draft(
        r#"girth: ["84", "88", "92"], base: "88",
        rows: [
            (name: "bust", by: [girth], cells: [("84", "84 cm"), ("88", "88 cm"), ("92", "92 cm")]),
            (name: "waist", by: [girth], cells: [("84", "68 cm"), ("88", "72 cm"), ("92", "76 cm")]),
            (name: "slope", kind: house, by: [girth], cells: [("84", "20 deg")]),
            (name: "share", kind: house, by: [girth], cells: [("84", "0.25")]),
        ],
        persons: [(name: "Ada")]"#,
    )
}

fn block(draft: &Draft, text: &str) -> Block {
    Block::of(draft, text, Default::default())
}

/// What becomes of each cell, in short.
fn fates(draft: &Draft, block: &Block) -> Vec<String> {
    let laid = lay(draft, block);
    assert_eq!(laid.fault, None);
    let cells = laid.rows.iter().flat_map(|r| &r.cells);
    cells
        .map(|c| match &c.fate {
            Fate::Empty => "-".to_owned(),
            Fate::Same => "same".to_owned(),
            Fate::Takes(text) => text.clone(),
            Fate::Wrong(why) => format!("! {why}"),
        })
        .collect()
}

fn run(draft: &Draft, command: ChartCommand) -> Result<(Draft, String), String> {
    let mut work = Work::here(draft.clone());
    let told = work.run(&Command::Chart(command)).map_err(|e| e.to_string())?;
    Ok(((**work.draft()).clone(), told))
}

fn cells<'a>(draft: &'a Draft, row: &str) -> Vec<(&'a str, &'a str)> {
    let row = draft.chart.rows.iter().find(|r| r.name == row).unwrap();
    row.cells.iter().map(|c| (c.0.as_str(), c.1.as_str())).collect()
}

#[test]
fn numbers_are_read_as_spreadsheets_and_tapes_write_them() {
    let d = small();
    let text = "\t84\t88\t92\nwaist\t33,5 cm\t33 1/8\"\t33½ in\nbust\t 84 cm \t880 mm\t";
    assert_eq!(fates(&d, &block(&d, text)), ["33.5 cm", "33 1/8 in", "33 1/2 in", "same", "880 mm", "-"]);
}

#[test]
fn a_bare_number_takes_the_unit_that_is_said_and_no_other() {
    let d = small();
    let mut b = block(&d, "\t84\t88\t92\nwaist\t69,5\t33 1/8\t70 cm");
    let found = fates(&d, &b);
    assert!(found[0].starts_with("! it has no unit") && found[1].starts_with("! it has no unit"), "{found:?}");
    assert_eq!(found[2], "70 cm");
    assert!(lay(&d, &b).waits_for_unit());
    b.unit = Some(Unit::Centimetre);
    let found = fates(&d, &b);
    assert_eq!((found[0].as_str(), found[2].as_str()), ("69.5 cm", "70 cm"));
    assert!(found[1].contains("a fraction is read in inches only"), "{found:?}");
    b.unit = Some(Unit::Inch);
    assert_eq!(fates(&d, &b), ["69.5 in", "33 1/8 in", "70 cm"]);
}

#[test]
fn a_row_of_angles_or_plain_numbers_takes_its_own_kind_only() {
    let d = small();
    let mut b = block(&d, "\t84\t88\nslope\t21 deg\t22\nshare\t0,3\t3 cm\nbust\t3 deg\t20 %");
    b.unit = Some(Unit::Centimetre);
    let found = fates(&d, &b);
    assert_eq!((found[0].as_str(), found[2].as_str()), ("21 deg", "0.3"));
    for (i, why) in [(1, "holds angles"), (3, "holds plain numbers"), (4, "holds lengths"), (5, "holds lengths")] {
        assert!(found[i].starts_with("! ") && found[i].contains(why), "{i}: {found:?}");
    }
}

#[test]
fn what_is_no_number_is_wrong_and_a_formula_over_rows_is_not() {
    let d = small();
    let b = block(&d, "\t84\t88\t92\nwaist\tbust - 16 cm\tn/a\t-3 cm");
    let found = fates(&d, &b);
    assert_eq!(found[0], "bust - 16 cm");
    assert!(found[1].contains("`n` is no row") || found[1].contains("`a` is no row"), "{found:?}");
    assert!(found[2].contains("has no sign"), "{found:?}");
}

#[test]
fn the_shape_of_a_block_is_read_from_it() {
    let d = small();
    for (text, head, names) in [
        ("\t84\t88\nbust\t1 cm\t2 cm", true, true),
        ("row,kind,84\nbust,body,1 cm", true, true),
        ("84\t88\t92\n1 cm\t2 cm\t3 cm", true, false),
        ("bust\t1 cm\t2 cm", false, true),
        ("bust\t1\t2\nwaist\t3\t4", false, true),
        ("70\t74\n98\t102", false, false),
        ("70 cm", false, false),
    ] {
        let b = block(&d, text);
        assert_eq!((b.head, b.names), (head, names), "{text:?}");
    }
    assert_eq!(Parted::of("84,5\n68,5"), Parted::Nothing);
    assert_eq!(Parted::of("84,88\n68,"), Parted::Comma);
    assert_eq!(Parted::of("84,88,92"), Parted::Comma);
    assert_eq!(Parted::of("84,5;88,5"), Parted::Semicolon);
}

#[test]
fn what_has_no_place_is_told_and_persons_are_columns() {
    let d = small();
    let mut b = block(&d, "\t88\tAda\t96\tover/all\nwaist\t73 cm\t70 cm\t80 cm\t1 cm\nankle\t22 cm\t21 cm\t\t");
    let laid = lay(&d, &b);
    assert_eq!((laid.columns_nowhere(), laid.rows_nowhere(), laid.takes(), laid.wrong().count()), (2, 1, 2, 4));
    assert_eq!(laid.head[1], Home::Known("Ada".to_owned()));
    (b.add_sizes, b.add_rows) = (true, true);
    let laid = lay(&d, &b);
    assert_eq!((laid.columns_nowhere(), laid.rows_nowhere(), laid.takes()), (1, 0, 5));
    let (after, told) = run(&d, ChartCommand::Paste(Box::new(b))).unwrap();
    assert!(told.contains("added: size 96, row ankle") && told.contains("1 cell could not be taken"), "{told}");
    assert_eq!(after.chart.girth, ["84", "88", "92", "96"]);
    assert_eq!(cells(&after, "waist").last(), Some(&("96", "80 cm")));
    assert_eq!(after.chart.persons[0].cells.iter().map(|c| c.1.as_str()).collect::<Vec<_>>(), ["70 cm", "21 cm"]);
}

#[test]
fn a_block_that_is_too_large_or_empty_is_refused_whole() {
    let d = small();
    for (text, word) in [
        ("\n \n".to_owned(), "no number in it"),
        ("1\n".repeat(2_001), "more than 2000 lines"),
        ("1\t".repeat(501), "at most 500 are read"),
        (format!("{}\n", "1\t".repeat(300)).repeat(100), "at most 20000 are read"),
        ("1".repeat(2_000_001), "at most 2000000 are read"),
    ] {
        let laid = lay(&d, &block(&d, &text));
        assert!(laid.fault.as_ref().is_some_and(|f| f.contains(word)), "{word}: {:?}", laid.fault);
    }
}

#[test]
fn an_axis_comes_and_goes_and_the_base_numbers_stay() {
    let mut d = small();
    for label in ["B", "C"] {
        let new = tracewheel::session::NewSize { label: label.into(), axis: Axis::Cup, between: None, cells: vec![] };
        d = run(&d, ChartCommand::AddSize(new)).unwrap().0;
    }
    assert_eq!((d.chart.base.as_str(), d.chart.cup.len()), ("88/B", 2));
    let (mut d, _) = run(&d, ChartCommand::By("bust".into(), vec![Axis::Cup, Axis::Girth])).unwrap();
    assert_eq!(cells(&d, "bust")[..3], [("84/B", "84 cm"), ("84/C", "84 cm"), ("88/B", "88 cm")]);
    // Every size is still computed, with the same numbers as before.
    let model = Engine::new().compute_guarded(&d, &[]).unwrap();
    assert_eq!(model.plan.cases.range, 6);
    let bust = model.plan.node_named("chart.bust").unwrap();
    let numbers: Vec<f64> = (0..6).map(|c| model.item(c, bust).unwrap().real().unwrap()).collect();
    assert_eq!(numbers, [840.0, 840.0, 880.0, 880.0, 920.0, 920.0]);
    d = run(&d, ChartCommand::Cell("bust".into(), "88/C".into(), "+2 cm".into())).unwrap().0;
    assert!(cells(&d, "bust").contains(&("88/C", "86 cm")), "a step along the first axis: {:?}", cells(&d, "bust"));
    let (after, told) = run(&d, ChartCommand::RemoveAxis(Axis::Cup)).unwrap();
    assert_eq!(cells(&after, "bust"), [("84", "84 cm"), ("88", "88 cm"), ("92", "92 cm")]);
    assert!(told.contains("1 number of bust that differs"), "{told}");
    assert_eq!(after.chart.base, "88");
    assert!(run(&after, ChartCommand::RemoveAxis(Axis::Girth)).unwrap_err().contains("the only axis"));
}

#[test]
fn sizes_and_rows_change_places_and_cells_follow() {
    let d = small();
    let (after, _) = run(&d, ChartCommand::PlaceSize(Axis::Girth, "92".into(), 0)).unwrap();
    assert_eq!(after.chart.girth, ["92", "84", "88"]);
    assert_eq!(cells(&after, "waist").iter().map(|c| c.0).collect::<Vec<_>>(), ["92", "84", "88"]);
    // Twice is the same as once.
    let again = run(&after, ChartCommand::PlaceSize(Axis::Girth, "92".into(), 0)).unwrap().0;
    assert_eq!(again, after);
    let (after, _) = run(&d, ChartCommand::PlaceRow("share".into(), 0)).unwrap();
    assert_eq!(after.chart.rows[0].name, "share");
    assert!(run(&d, ChartCommand::PlaceRow("none".into(), 0)).is_err());
    assert!(run(&d, ChartCommand::PlaceSize(Axis::Cup, "92".into(), 0)).is_err());
    assert_eq!(
        run(&d, ChartCommand::Kind("bust".into(), RowKind::House)).unwrap().0.chart.rows[0].kind,
        RowKind::House
    );
}

#[test]
fn with_a_second_set_the_base_names_its_set_and_stays_found() {
    let d = small();
    let (d, told) = run(&d, ChartCommand::AddSet("one".into())).unwrap();
    assert!(told.contains("holds every size"), "{told}");
    let (d, _) = run(&d, ChartCommand::SetLabels("one".into(), Axis::Girth, vec!["92".into()])).unwrap();
    let (d, _) = run(&d, ChartCommand::AddSet("two".into())).unwrap();
    assert_eq!(d.chart.base, "two/88");
    let model = Engine::new().compute_guarded(&d, &[]).unwrap();
    assert_eq!(model.plan.cases.list[model.plan.cases.base.unwrap()].address, "two/88");
    let all: Vec<&str> = model.plan.cases.list[..model.plan.cases.range].iter().map(|c| c.address.as_str()).collect();
    assert_eq!(all, ["one/92", "two/84", "two/88", "two/92"]);
    assert!(run(&d, ChartCommand::AddSet("one".into())).unwrap_err().contains("already"));
    assert!(run(&d, ChartCommand::SetLabels("one".into(), Axis::Girth, vec![])).unwrap_err().contains("at least one"));
}

#[test]
fn a_chart_of_several_axes_goes_out_as_a_table_and_comes_back() {
    let before = draft(
        r#"girth: ["84", "88"], cup: ["B", "C"], base: "88/B",
        rows: [
            (name: "bust", by: [girth, cup], cells: [("84/B", "84 cm"), ("84/C", "86 cm"), ("88/B", "88 cm")]),
            (name: "waist", by: [girth], cells: [("84", "68 cm"), ("88", "72 cm")]),
        ],
        persons: [(name: "Ada", cells: [("waist", "70 cm")])]"#,
    );
    let text = export_chart(&before).unwrap();
    assert!(text.starts_with("row,kind,84,88,84/B,84/C,88/B,88/C,Ada\n"), "{text}");
    let mut empty = before.clone();
    empty.chart.rows.iter_mut().for_each(|r| r.cells.clear());
    empty.chart.persons[0].cells.clear();
    import_chart(&mut empty, &text, None).unwrap();
    assert_eq!(empty, before);
    // All or nothing, and a wrong kind of cell says where.
    let wrong = text.replace("72 cm", "7 2");
    let problem = import_chart(&mut empty, &wrong, None).unwrap_err().to_string();
    assert!(problem.contains("line 3, waist, 88"), "{problem}");
    assert_eq!(empty, before);
}
