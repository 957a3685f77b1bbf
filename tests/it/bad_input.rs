//! Whatever is thrown at it: a clear message, no panic, no hang, and the draft is whole.

use tracewheel::base::{Code, Finding};
use tracewheel::compute::{Engine, guarded};
use tracewheel::document::Draft;
use tracewheel::file;
use tracewheel::proof::proof;

const BLOCK: &str = include_str!("../../examples/bodice-sleeve.ron");

/// A draft with one size, these values and one row `bust`.
fn with_values(values: &str) -> Draft {
    let text = format!(
        "(format: \"tracewheel draft\", version: 0, chart: (girth: [\"88\"], rows: [(name: \"bust\", by: [girth], \
         cells: [(\"88\", \"88 cm\")])]), values: [{values}])"
    );
    file::read(&text).unwrap().draft
}

fn findings(draft: &Draft) -> Vec<Finding> {
    let model = Engine::new().compute_guarded(draft, &[]).unwrap();
    proof(draft, &model)
}

fn codes(draft: &Draft) -> Vec<Code> {
    findings(draft).iter().map(|f| f.code).collect()
}

fn value(name: &str, is: &str) -> String {
    format!("(name: \"{name}\", is: {is:?}),")
}

#[test]
fn a_ring_of_a_thousand_values_is_told_once() {
    let ring: String = (0..1000).map(|i| value(&format!("v{i}"), &format!("v{} + 1 cm", (i + 1) % 1000))).collect();
    let found = findings(&with_values(&ring));
    assert_eq!(found.iter().map(|f| f.code).collect::<Vec<_>>(), [Code::Circular]);
}

#[test]
fn a_ring_of_a_thousand_rows_is_told_once() {
    let mut draft = with_values("");
    for i in 0..1000 {
        let is = format!("r{} + 1 cm", (i + 1) % 1000);
        draft.chart.rows.push(tracewheel::document::Row { name: format!("r{i}"), is, ..Default::default() });
    }
    assert_eq!(codes(&draft), [Code::Circular]);
}

#[test]
fn a_ring_through_points_is_told_once_with_its_members() {
    let mut draft = file::read(BLOCK).unwrap().draft;
    let piece = std::sync::Arc::make_mut(&mut draft.pieces[0]);
    let names: Vec<String> = piece.points[..3].iter().map(|p| p.name.clone()).collect();
    for i in 0..3 {
        piece.points[i].at = format!("{}.up(1 cm)", names[(i + 1) % 3]);
    }
    let circles: Vec<Finding> = findings(&draft).into_iter().filter(|f| f.code == Code::Circular).collect();
    assert_eq!(circles.len(), 1);
    let members = &circles[0].words.iter().find(|w| w.0 == "members").unwrap().1;
    assert!(names.iter().all(|n| members.contains(&format!("back.{n}"))), "{members}");
}

#[test]
fn a_chain_of_five_thousand_values_is_fine() {
    let chain: String = std::iter::once(value("v0", "bust"))
        .chain((1..5000).map(|i| value(&format!("v{i}"), &format!("v{} + 1 mm", i - 1))))
        .collect();
    let draft = with_values(&chain);
    let model = Engine::new().compute(&draft);
    let last = model.plan.node_named("v4999").unwrap();
    assert_eq!(model.item(0, last).unwrap().real(), Some(880.0 + 4999.0));
}

#[test]
fn long_and_deep_formulas_are_read_or_refused() {
    let sum = vec!["1 cm"; 285].join("+");
    for (formula, wanted) in [
        (sum, None),
        (vec!["1"; 990].join("+"), None),
        ("1+".repeat(2000) + "1", Some(Code::FormulaLong)),
        ("(".repeat(900) + "1" + &")".repeat(900), Some(Code::FormulaDeep)),
        ("-".repeat(1000) + "1", Some(Code::FormulaDeep)),
        ("not ".repeat(400) + "yes", Some(Code::FormulaDeep)),
        ("2^".repeat(900) + "1", Some(Code::FormulaDeep)),
        ("abs(".repeat(400) + "1", Some(Code::FormulaDeep)),
        ("a.".repeat(900) + "b", Some(Code::UnknownName)),
        ("9".repeat(400), Some(Code::NumberBad)),
        ("1e308".into(), Some(Code::Unexpected)),
        ("10^400".into(), Some(Code::NotFinite)),
        ("bust^3 * bust^3".into(), Some(Code::KindsDiffer)),
        ("ä".repeat(1990), Some(Code::UnknownName)),
        ("\u{0}".into(), Some(Code::UnknownSign)),
        (String::new(), Some(Code::FormulaEmpty)),
    ] {
        let draft = with_values(&value("v", &formula.replace('\u{0}', "\u{1}")));
        let short: String = formula.chars().take(20).collect();
        assert_eq!(codes(&draft), Vec::from_iter(wanted), "{short}");
    }
}

#[test]
fn long_names_are_told() {
    let draft = with_values(&value(&"n".repeat(10_000), "1 cm"));
    let found = findings(&draft);
    assert_eq!(found[0].code, Code::NameBad);
    assert!(found[0].place.name.chars().count() < 60);
}

#[test]
fn a_chart_of_ten_thousand_columns_is_refused_and_four_hundred_are_computed() {
    let labels = |n: usize| (0..n).map(|i| format!("\"{i}\",")).collect::<String>();
    let text = |n| format!("(format: \"tracewheel draft\", version: 0, chart: (girth: [{}]))", labels(n));
    let refused = file::read(&text(10_000)).unwrap_err();
    assert!(refused.to_string().contains("chart.girth"), "{refused}");
    assert_eq!(Engine::new().compute(&file::read(&text(400)).unwrap().draft).cases.len(), 400);
}

#[test]
fn too_many_sizes_together_are_told() {
    let mut draft = with_values("");
    let labels: Vec<String> = (0..100).map(|i| format!("s{i}")).collect();
    draft.chart.girth = labels.clone();
    draft.chart.cup = labels;
    draft.chart.rows.clear();
    assert!(codes(&draft).contains(&Code::PartMissing));
}

#[test]
fn a_file_cut_off_anywhere_is_refused_with_its_place() {
    let mut count = 0;
    for end in (1..BLOCK.len() - 3).step_by(97).filter(|e| BLOCK.is_char_boundary(*e)) {
        let refused = file::read(&BLOCK[..end]).map(|_| ()).unwrap_err();
        assert!(refused.line >= 1 && !refused.to_string().is_empty());
        count += 1;
    }
    assert!(count > 100, "{count}");
}

#[test]
fn damaged_formulas_never_fail_the_program() {
    // Every formula of the block in turn loses, doubles or changes a letter, by a fixed rule.
    let draft = file::read(BLOCK).unwrap().draft;
    let mut engine = Engine::new();
    let mut count = 0;
    for piece in 0..draft.pieces.len() {
        for point in 0..draft.pieces[piece].points.len() {
            let letters: Vec<char> = draft.pieces[piece].points[point].at.chars().collect();
            for i in (0..letters.len()).step_by(5) {
                let mut changed = letters.clone();
                match i % 3 {
                    0 => drop(changed.remove(i)),
                    1 => changed.insert(i, letters[i]),
                    _ => changed[i] = ['(', ')', '.', ',', '/', '0', 'x', '°'][i % 8],
                }
                let mut damaged = draft.clone();
                std::sync::Arc::make_mut(&mut damaged.pieces[piece]).points[point].at = changed.into_iter().collect();
                let model = engine.compute_guarded(&damaged, &[]).unwrap();
                proof(&damaged, &model);
                count += 1;
            }
        }
    }
    assert!(count > 100, "{count}");
}

#[test]
fn a_failure_inside_is_a_finding() {
    let draft = file::read(BLOCK).unwrap().draft;
    let before = draft.clone();
    let hook = std::panic::take_hook();
    std::panic::set_hook(Box::new(|_| {}));
    let result = guarded(|| -> usize { [1, 2, 3].into_iter().find(|i| *i > 3).expect("nothing above three") });
    std::panic::set_hook(hook);
    let finding = result.unwrap_err();
    assert_eq!(finding.code, Code::Internal);
    let text = tracewheel::texts::message(&finding, Default::default());
    assert_eq!(
        text,
        "the program failed here (nothing above three); the draft is whole. Please report it with the file"
    );
    assert_eq!(draft, before);
}

/// Only what lies within each other is deep: two hundred brackets side by side are not.
#[test]
fn what_stands_side_by_side_is_not_deep() {
    let draft = with_values(&value("v", &vec!["(1 cm)"; 200].join("+")));
    let model = Engine::new().compute(&draft);
    let node = model.plan.node_named("v").unwrap();
    assert_eq!(model.item(0, node).unwrap().real(), Some(2000.0));
}

/// Values stand in any order: what names another one may stand before it.
#[test]
fn a_value_may_name_those_behind_it() {
    let draft = with_values(&[value("a", "b / 2 + 1 cm"), value("b", "c * 3"), value("c", "4 cm")].concat());
    assert_eq!(codes(&draft), []);
    let model = Engine::new().compute(&draft);
    let told = |name: &str| model.item(0, model.plan.node_named(name).unwrap()).unwrap().real();
    assert_eq!(["a", "b", "c"].map(told), [70.0, 120.0, 40.0].map(Some));
}

/// Points, marks, folds and lines of a piece share their names.
#[test]
fn a_mark_may_not_be_called_as_a_point_is() {
    let text = |mark: &str| {
        format!(
            r#"(format: "tracewheel draft", version: 0, chart: (girth: ["1"]), pieces: [(name: "p", points: [(name: "a", at: "(0 cm, 0 cm)")],
            marks: [(name: "{mark}", kind: drill_hole, at: "a")])])"#
        )
    };
    let told = |mark: &str| {
        Vec::from_iter(codes(&file::read(&text(mark)).unwrap().draft).into_iter().filter(|c| *c == Code::NameTwice))
    };
    assert_eq!((told("hole"), told("a"), told("A")), (vec![], vec![Code::NameTwice], vec![Code::NameTwice]));
}
