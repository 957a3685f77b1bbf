//! Two drafts compared: what was changed by hand or by seed is told, with amounts known from the change itself, and nothing else is.
#![allow(clippy::print_stdout, reason = "the hit rate is printed")]

use std::collections::BTreeSet;
use std::sync::Arc;

use serde_json::Value as Json;
use tempfile::TempDir;
use tracewheel::compute::{Engine, Model};
use tracewheel::document::{Draft, Inner, Part, Role};
use tracewheel::file;
use tracewheel::finish::finish;
use tracewheel::output::{Change, Comparison, Side, Thing, compare};

use super::dice::Dice;
use super::oracle::{Ran, tracewheel};
use super::seeds::generate;

const SKIRT: &str = "examples/straight-skirt.ron";
const FINISHED: &str = "examples/skirt-finished.ron";

fn example(name: &str) -> String {
    std::fs::read_to_string(name).unwrap()
}

/// A text with one place in it changed, which must be there just once.
fn changed(text: &str, from: &str, to: &str) -> String {
    assert_eq!(text.matches(from).count(), 1, "`{from}`");
    text.replace(from, to)
}

/// Runs `compare` on two texts.
fn run(old: &str, new: &str, more: &[&str]) -> Ran {
    let folder = tempfile::tempdir().unwrap();
    let path = |name: &str, text: &str, folder: &TempDir| {
        let path = folder.path().join(name);
        std::fs::write(&path, text).unwrap();
        path.to_str().unwrap().to_owned()
    };
    let (old, new) = (path("old.ron", old, &folder), path("new.ron", new, &folder));
    let mut args = vec!["compare", old.as_str(), new.as_str()];
    args.extend(more);
    tracewheel(&args)
}

fn json(old: &str, new: &str) -> Json {
    let ran = run(old, new, &["--json"]);
    assert!(ran.exit < 2, "{}", ran.err);
    serde_json::from_str(&ran.out).unwrap()
}

/// The difference of this name and kind.
fn told<'a>(all: &'a Json, name: &str, what: &str) -> &'a Json {
    let list = all["differences"].as_array().unwrap();
    let found =
        list.iter().find(|d| d["name"] == name && (d["what"] == what || what.is_empty() && d["what"].is_null()));
    found.unwrap_or_else(|| panic!("{name}: {what}: {list:#?}"))
}

fn names(all: &Json) -> Vec<String> {
    let list = all["differences"].as_array().unwrap();
    list.iter().map(|d| format!("{} {}", d["name"].as_str().unwrap(), d["what"].as_str().unwrap_or("-"))).collect()
}

#[test]
fn a_hem_lowered_in_some_sizes_is_told_with_that_amount_in_just_that_run() {
    let old = example(SKIRT);
    // The hip is 104 cm in size 80 and 117 cm in size 100.
    let new = changed(&old, r#"is: "60 cm""#, r#"is: "if(hip > 100 cm, 61 cm, 60 cm)""#);
    let all = json(&old, &new);
    for piece in ["back", "front"] {
        for (edge, what) in [("centre", "sewn length"), ("side", "sewn length")] {
            let sizes = told(&all, &format!("{piece}.{edge}"), what)["sizes"].as_object().unwrap();
            assert_eq!(sizes.keys().collect::<Vec<_>>(), ["80", "100"], "{piece}.{edge}");
            for size in sizes.values() {
                assert!((size["amount"].as_f64().unwrap() - 10.0).abs() < 1e-6, "{size}");
            }
        }
        let hem = told(&all, &format!("{piece}.hem"), "line");
        for size in hem["sizes"].as_object().unwrap().values() {
            assert!((size["apart"].as_f64().unwrap() - 10.0).abs() <= 0.01, "{size}");
            assert_eq!(size["start_moved"], serde_json::json!([0.0, 10.0]));
        }
        assert_eq!(hem["message"], serde_json::json!(["moved 1 cm down in sizes 80, 100"]));
    }
    // Nothing is told of what did not move: the waists, the hip, the hem's length, the chart.
    assert!(
        names(&all).iter().all(|n| !n.contains("waist") && !n.contains("hip") && !n.contains("hem sewn")),
        "{all:#}"
    );
    let ran = run(&old, &new, &[]);
    assert_eq!(ran.exit, 1);
    assert!(ran.out.contains("  value skirt_length: +1 cm (from 60 cm to 61 cm) in sizes 80, 100\n"), "{}", ran.out);
    let ran = run(&old, &new, &["--size", "64"]);
    assert_eq!(ran.exit, 0, "{}", ran.out);
    assert!(ran.out.starts_with("values\n  note: value skirt_length: formula is written otherwise"), "{}", ran.out);
}

#[test]
fn runs_of_sizes_are_told_by_their_ends() {
    let old = example(FINISHED);
    // Sizes go from 76 to 128; the hip is 104 cm in size 96 and 108 cm in size 100.
    let new = changed(&old, r#""58 cm""#, r#""if(hip > 107 cm, 59 cm, 58 cm)""#);
    let ran = run(&old, &new, &["--piece", "back"]);
    assert!(ran.out.contains("edge hem: moved 1 cm down in sizes 100 to 128\n"), "{}", ran.out);
    let ran = run(&old, &new, &["--errata"]);
    assert!(ran.out.contains("- centre: 1 cm longer (from 57.3 cm to 58.3 cm) in sizes 100 to 128\n- hem: moved 1 cm down in sizes 100 to 128\n- side: 1 cm longer in sizes 100 to 128\n"), "{}", ran.out);
    assert!(ran.out.contains("Print again: back in sizes 100 to 128; front in sizes 100 to 128.\n"), "{}", ran.out);
    assert!(!ran.out.contains("skirt_length"), "{}", ran.out);
    let ran = run(&old, &changed(&old, r#""58 cm""#, r#""60 cm""#), &["--piece", "front"]);
    assert!(ran.out.contains("point hem_centre: moved 2 cm down in all sizes\n"), "{}", ran.out);
}

#[test]
fn a_draft_with_itself_gives_nothing() {
    let mut seen = 0;
    for entry in std::fs::read_dir("examples").unwrap() {
        let path = entry.unwrap().path();
        let Some(path) = path.to_str().filter(|p| p.ends_with(".ron")) else { continue };
        let ran = tracewheel(&["compare", path, path]);
        assert_eq!((ran.exit, ran.err.as_str()), (0, ""), "{path}: {}", ran.out);
        let lines: Vec<&str> = ran.out.lines().filter(|l| !l.starts_with("not compared: ")).collect();
        assert_eq!(lines, ["no differences"], "{path}");
        seen += 1;
    }
    assert!(seen >= 10);
    for seed in 1..=20 {
        let draft = generated(seed, 0.1);
        let told = compared(&draft, &draft);
        assert!(told.differences.is_empty(), "seed {seed}: {:#?}", told.differences);
    }
}

#[test]
fn how_a_file_is_laid_out_and_the_order_in_it_give_nothing() {
    for name in [SKIRT, FINISHED, "examples/bodice-finished.ron"] {
        let old = example(name);
        // Everything on long lines, no commas at ends.
        let flat: String = old.lines().map(str::trim).collect::<Vec<_>>().join(" ");
        assert!(json(&old, &flat)["differences"].as_array().unwrap().is_empty(), "{name}");
        let mut draft = file::read(&old).unwrap().draft;
        draft.values.reverse();
        draft.seams.reverse();
        draft.chart.rows.iter_mut().for_each(|r| r.cells.reverse());
        for piece in &mut draft.pieces {
            let piece = Arc::make_mut(piece);
            piece.points.reverse();
            piece.marks.reverse();
            piece.allowances.reverse();
        }
        draft.pieces.reverse();
        assert!(json(&old, &file::write(&draft))["differences"].as_array().unwrap().is_empty(), "{name}");
    }
}

#[test]
fn text_that_changes_nothing_is_a_note() {
    let old = example(SKIRT);
    let new = changed(&old, r#"is: "60 cm""#, r#"is: "600 mm""#);
    let ran = run(&old, &new, &[]);
    assert_eq!(ran.exit, 0, "{}", ran.out);
    assert_eq!(
        ran.out,
        "values\n  note: value skirt_length: formula is written otherwise: was “60 cm”, is now “600 mm”\nno differences, 1 note\n"
    );
    let all = json(&old, &changed(&old, r#"title: "Straight skirt block""#, r#"title: "Another skirt""#));
    assert_eq!(names(&all), [" title"]);
    assert_eq!(
        (&all["differences"][0]["old"], &all["differences"][0]["new"]),
        (&"Straight skirt block".into(), &"Another skirt".into())
    );
}

#[test]
fn what_came_and_went_is_told_once() {
    let old = example(SKIRT);
    let with_dart = changed(&old, r#"(name: "finished_hip", is: "2 * rect_width"),"#, "");
    let all = json(&old, &with_dart);
    assert_eq!((names(&all), &all["differences"][0]["change"]), (vec!["finished_hip -".to_owned()], &"went".into()));
    assert_eq!(json(&with_dart, &old)["differences"][0]["change"], "came");
    // A whole piece: not each of its edges and points.
    let mut draft = file::read(&old).unwrap().draft;
    let mut copy = (*draft.pieces[0]).clone();
    copy.name = "lining".into();
    draft.pieces.push(Arc::new(copy));
    assert_eq!(names(&json(&old, &file::write(&draft))), ["lining -"]);
    // A size, and with it nothing else.
    let mut draft = file::read(&old).unwrap().draft;
    draft.chart.girth.push("110".into());
    draft.chart.rows[0].cells.push(tracewheel::document::Cell("110".into(), "110 cm".into()));
    draft.chart.rows[1].cells.push(tracewheel::document::Cell("110".into(), "127 cm".into()));
    let all = json(&old, &file::write(&draft));
    let changes: Vec<&Json> = all["differences"].as_array().unwrap().iter().filter(|d| d["note"] == false).collect();
    assert_eq!(changes.len(), 1, "{all:#}");
    assert_eq!(
        (&changes[0]["part"], &changes[0]["name"], &changes[0]["change"]),
        (&"size".into(), &"110".into(), &"came".into())
    );
}

#[test]
fn another_name_is_told_as_one() {
    let old = example("examples/bodice-sleeve.ron");
    let text = old.replace("crown_x", "KEEP").replace("crown", "gipfel").replace("KEEP", "crown_x");
    let all = json(&old, &text);
    assert_eq!(names(&all), ["sleeve.gipfel -"], "{all:#}");
    assert_eq!((&all["differences"][0]["change"], &all["differences"][0]["old"]), (&"renamed".into(), &"crown".into()));
    // A piece, everywhere it is named.
    let old = example(FINISHED);
    let text = old.replace("waistband", "girdle");
    let all = json(&old, &text);
    assert_eq!(names(&all), ["girdle -"], "{all:#}");
}

#[test]
fn a_piece_that_only_lies_elsewhere_says_so() {
    let old = generated(3, 0.0);
    let mut new = old.clone();
    let piece = Arc::make_mut(&mut new.pieces[1]);
    assert_eq!(piece.points[0].name, "mid");
    piece.points[0].at = "(3 cm, -2 cm)".into();
    let told = compared(&old, &new);
    let names: Vec<String> = told.differences.iter().map(|d| format!("{} {}", d.part, d.what)).collect();
    // A placement says where the frame of what is laid comes to lie, and the frame is where the piece came from.
    assert_eq!(names, ["piece piece1 the whole piece", "placement laid1 place"]);
    let words = told.differences[0].sentences(&told.sizes, new.display);
    assert_eq!(words.len(), 1);
    assert!(
        words[0].starts_with("the whole piece moved 30 mm to the right and 20 mm up in all sizes")
            || words[0].starts_with("the whole piece moved 3 cm to the right and 2 cm up in all sizes"),
        "{words:?}"
    );
}

#[test]
fn what_cannot_be_computed_is_told() {
    let old = example(SKIRT);
    let new = changed(&old, r#"(name: "side_rise", is: "1 cm""#, r#"(name: "side_rise", is: "1 cm / (hip - 96 cm)""#);
    let ran = run(&old, &new, &[]);
    assert_eq!(ran.exit, 1);
    assert!(ran.out.contains("value side_rise: "), "{}", ran.out);
    let all = json(&old, &new);
    let waist = told(&all, "back.waist", "sewn length");
    assert_eq!(waist["sizes"]["64"]["new_missing"], "not computed", "{waist:#}");
    assert_eq!(names(&json(&new, &new)), Vec::<String>::new());
    assert!(!json(&new, &new)["not_compared"].as_array().unwrap().is_empty());
}

#[test]
fn calls_and_exits_are_those_of_the_contract() {
    let none = tracewheel(&["compare", SKIRT, "nowhere.ron"]);
    assert_eq!((none.exit, none.out.as_str()), (2, ""));
    assert!(none.err.contains("nowhere.ron"), "{}", none.err);
    assert_eq!(tracewheel(&["compare", SKIRT, SKIRT, "--size", "65"]).exit, 2);
    let none = tracewheel(&["compare", SKIRT, SKIRT, "--piece", "sleeve"]);
    assert_eq!(none.exit, 2);
    assert!(none.err.contains("neither draft has a piece or drawing sleeve; there are back, front"), "{}", none.err);
    assert_eq!(tracewheel(&["compare", SKIRT]).exit, 2);
    let all: Json = serde_json::from_str(&tracewheel(&["compare", SKIRT, SKIRT, "--json"]).out).unwrap();
    let keys: Vec<&String> = all.as_object().unwrap().keys().collect();
    assert_eq!(keys, ["version", "counts", "sizes", "differences", "not_compared"]);
    assert_eq!((&all["version"], &all["counts"]["difference"]), (&1.into(), &0.into()));
}

fn generated(seed: u64, broken: f64) -> Draft {
    generate::draft(&generate::Options { pieces: 3, points: 10, sizes: 5, found: 3, broken, views: 0, seed })
}

fn compared(old: &Draft, new: &Draft) -> Comparison {
    let (a, b) = (Engine::new().compute(old), Engine::new().compute(new));
    let (f, g) = (finish(old, &a), finish(new, &b));
    let old = Side { draft: old, model: &a, finished: &f };
    compare(old, Side { draft: new, model: &b, finished: &g }, &[], &[]).unwrap()
}

/// Part and size.
type Seen = BTreeSet<(String, String)>;

/// How a node is called in the list; none: it is told elsewhere.
fn part_of_node(name: &str, pieces: &[String]) -> Option<String> {
    let mut words = name.split('.');
    let (first, second, third) = (words.next()?, words.next(), words.next());
    match (first, second, third) {
        ("chart", Some(row), None) => Some(format!("row {row}")),
        ("seam", Some(seam), Some("difference")) => Some(format!("seam {seam}")),
        ("condition", Some(condition), Some(_)) => Some(format!("condition {condition}")),
        (piece, Some(inner), _) if pieces.iter().any(|p| p == piece) => Some(format!("{piece}.{inner}")),
        (value, None, None) if !pieces.iter().any(|p| p == value) => Some(format!("value {value}")),
        _ => None,
    }
}

/// What differs between two models by their nodes: parts that surely do, and parts that may (too near to what counts as equal, or without a number on a side).
fn moved(old: &Model, new: &Model, pieces: &[String]) -> (Seen, Seen) {
    let (mut sure, mut may) = (Seen::new(), Seen::new());
    let numbers = |model: &Model, case: usize, node: usize| -> Option<Vec<f64>> {
        if model.is_untrue(case, node as u32) {
            return None;
        }
        let item = model.item(case, node as u32)?;
        if let Some(v) = item.real() {
            return Some(vec![v]);
        }
        if let Some(p) = item.point() {
            return Some(vec![p.x, p.y]);
        }
        let edge = item.edge()?;
        let mut out = vec![edge.sewn_length()];
        // Places all along it: where none differs by much, the line does not.
        for i in 0..=40 {
            let p = edge.curve.point_at(edge.curve.length() * f64::from(i) / 40.0)?;
            out.extend([p.x, p.y]);
        }
        Some(out)
    };
    for (c, case) in old.plan.cases.list.iter().enumerate() {
        for (i, node) in old.plan.nodes.iter().enumerate().filter(|(_, n)| n.kind.is_some()) {
            let Some(part) = part_of_node(&node.part.name, pieces) else { continue };
            let key = (part, case.address.clone());
            match (numbers(old, c, i), numbers(new, c, i)) {
                (Some(a), Some(b)) => {
                    let off = a.iter().zip(&b).map(|(a, b)| (a - b).abs()).fold(0.0, f64::max);
                    let angle_or_number = !node.part.name.contains('.') || node.part.name.starts_with("condition");
                    let (least, most) = if angle_or_number { (1e-9, 1e-3) } else { (5e-4, 3e-2) };
                    if off > most {
                        sure.insert(key.clone());
                    }
                    if off > least {
                        may.insert(key);
                    }
                }
                (None, None) => {}
                _ => {
                    may.insert(key);
                }
            }
        }
    }
    (sure, may)
}

#[test]
fn single_edits_by_seed_are_told_and_nothing_else_is() {
    let (mut hits, mut missed, mut changes) = (0, Vec::new(), 0);
    const EDITS: u64 = 120;
    for seed in 1..=EDITS {
        let old = generated(1 + seed % 12, 0.0);
        let mut dice = Dice(seed ^ 0xC0FFEE);
        let mut formulas = Vec::new();
        old.clone().each_text(&mut |at, role, text| {
            let wanted = match &at.part {
                Part::Row(_) => at.field == "cell",
                Part::Value(_) => at.field == "is",
                Part::Inner(_, Inner::Point, name) => at.field == "at" && name != "mid",
                Part::Inner(_, Inner::Edge | Inner::Line, _) => matches!(at.field, "leaving" | "arriving"),
                Part::Inner(_, Inner::Dart, _) => at.field == "intake",
                _ => false,
            };
            if wanted && *role == Role::Formula && !text.is_empty() {
                formulas.push((at.clone(), text.clone()));
            }
        });
        let (at, text) = formulas[dice.below(formulas.len() as u64) as usize].clone();
        let by = dice.from(2, 30);
        let text = match &at.part {
            Part::Inner(_, Inner::Point | Inner::Edge | Inner::Line, _) => format!("({text}).right({by} mm)"),
            _ => format!("({text}) * (1 + {by} / 1000)"),
        };
        let mut new = old.clone();
        assert!(new.set_text(&at, &text));
        let (a, b) = (Engine::new().compute(&old), Engine::new().compute(&new));
        assert_eq!(a.plan.nodes.len(), b.plan.nodes.len());
        let pieces: Vec<String> = old.pieces.iter().map(|p| p.name.clone()).collect();
        let (sure, may) = moved(&a, &b, &pieces);
        let told: Seen = compared(&old, &new)
            .differences
            .iter()
            .filter(|d| !matches!(d.part, Part::Placement(_) | Part::Inner(_, Inner::Pleat, _)) && !d.is_note)
            .flat_map(|d| {
                let part = match &d.part {
                    Part::Inner(piece, _, name) => format!("{piece}.{name}"),
                    other => other.to_string(),
                };
                let Change::Other(pairs) = &d.change else { panic!("seed {seed}: {d:?}") };
                pairs.iter().map(|p| (part.clone(), p.size.clone())).collect::<Vec<_>>()
            })
            // Finished things and formulas evaluated besides are no nodes of their own.
            .filter(|(part, _)| !part.starts_with("piece ") && !part.starts_with("draft"))
            .collect();
        let lost: Vec<_> = sure.difference(&told).collect();
        let extra: Vec<_> = told.difference(&may).filter(|(p, _)| !is_beside(p, &may)).collect();
        changes += sure.len();
        if lost.is_empty() && extra.is_empty() && !(sure.is_empty() && told.is_empty()) {
            hits += 1;
        } else if sure.is_empty() && told.is_empty() && may.is_empty() {
            // A handle of a size in which the branch of an `if` is not taken, and the like: nothing moved and nothing is told.
            hits += 1;
        } else {
            missed.push(format!("seed {seed}, {at:?}: lost {lost:?}, extra {extra:?}"));
        }
    }
    println!("single edits told with just what moved: {hits} of {EDITS} ({changes} parts in sizes moved)");
    assert!(missed.is_empty(), "{} of {EDITS} missed:\n{}", missed.len(), missed.join("\n"));
    assert!(changes > 1000);
}

/// Whether a seam hangs on a formula of its fit only: those are no nodes.
fn is_beside(part: &str, _may: &Seen) -> bool {
    part.starts_with("seam ")
}

#[test]
fn there_and_back_are_opposite() {
    for seed in 1..=12 {
        let old = generated(seed, 0.0);
        let mut new = old.clone();
        let by = Dice(seed).from(2, 20);
        Arc::make_mut(&mut new.pieces[0]).points[2].at += &format!(".right({by} mm)");
        new.chart.rows[0].cells[1].1 = format!("({}) * 1.01", new.chart.rows[0].cells[1].1);
        let (there, back) = (compared(&old, &new), compared(&new, &old));
        assert_eq!(there.differences.len(), back.differences.len());
        let mut numbers = 0;
        for (a, b) in there.differences.iter().zip(&back.differences) {
            assert_eq!((&a.part, &a.what, a.is_note), (&b.part, &b.what, b.is_note));
            let (Change::Other(a), Change::Other(b)) = (&a.change, &b.change) else { continue };
            for (p, q) in a.iter().zip(b) {
                assert_eq!((&p.size, &p.old, &p.new), (&q.size, &q.new, &q.old));
                assert_eq!(p.amount().map(|v| -v), q.amount());
                if let (Some(far), Some(back)) = (p.apart, q.apart) {
                    assert!((far - back).abs() <= 0.01, "{far} and {back}");
                }
                numbers += 1;
                assert!(p.old.is_ok() || p.new.is_ok());
                assert!(!matches!((&p.old, &p.new), (Ok(Thing::Number(a, _)), Ok(Thing::Number(b, _))) if a == b));
            }
        }
        assert!(numbers > 20, "seed {seed}: {numbers}");
    }
}
