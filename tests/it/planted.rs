//! Faults planted by seed into clean drafts: proof reports just that fault, in its sizes, with its numbers, and nothing else.
#![allow(clippy::print_stdout, reason = "the hit rate is printed")]

use tracewheel::base::{Code, Finding, Severity};
use tracewheel::compute::Engine;
use tracewheel::file;
use tracewheel::proof::proof;

use super::dice::Dice;

/// What is planted.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Fault {
    /// A notch told by so many tenths of a millimetre beside its place.
    Notch(i64),
    /// An edge longer by 0.3 %.
    Scaled,
    /// The number of a size is missing: which one.
    Cell(usize),
    /// An edge of a side is run the wrong way.
    Flipped(bool),
}

const SIZES: usize = 5;

/// Two pieces with a curved seam of two edges between them, notched, in five sizes; with a fault, or clean.
fn draft(seed: u64, fault: Option<Fault>) -> (String, Vec<f64>) {
    let mut dice = Dice(seed);
    let (first, step) = (dice.from(420, 600), dice.from(6, 20));
    let longs: Vec<i64> = (0..SIZES as i64).map(|i| first + step * i).collect();
    let wide = dice.from(120, 300);
    let (x, y) = (dice.from(-18, 18), dice.from(-18, 18));
    let notch = dice.from(80, 180);
    let labels: Vec<String> = (0..SIZES).map(|i| format!("\"{}\"", 36 + 2 * i)).collect();
    let cells: Vec<String> = longs
        .iter()
        .enumerate()
        .filter(|(i, _)| fault != Some(Fault::Cell(*i)))
        .map(|(i, l)| format!("({}, \"{l} mm\")", labels[i]))
        .collect();
    let long = if fault == Some(Fault::Scaled) { "long * 1.003" } else { "long" };
    let told = match fault {
        Some(Fault::Notch(off)) => format!("{notch} mm + {off} mm / 10"),
        _ => format!("{notch} mm"),
    };
    let run = |edge: &str, upper: bool| match fault {
        Some(Fault::Flipped(which)) if which == upper => format!("\"two.{edge}\""),
        _ => format!("\"reversed(two.{edge})\""),
    };
    let text = format!(
        r#"(format: "tracewheel draft", version: 0,
        chart: (girth: [{labels}], rows: [(name: "long", kind: body, by: [girth], cells: [{cells}])]),
        pieces: [
            (name: "one", points: [(name: "a", at: "(0 mm, 0 mm)"), (name: "b", at: "a.right({wide} mm)"), (name: "m", at: "b.down(long / 2)"), (name: "c", at: "b.down(long)"), (name: "d", at: "a.down(long)")],
             edges: [(name: "top", from: "a", by: [straight("b")]), (name: "upper", from: "b", by: [curve("b.down(long / 6).right({x} mm)", "m.up(long / 6)", "m")]),
                (name: "lower", from: "m", by: [curve("m.down(long / 6)", "c.up(long / 6).right({y} mm)", "c")]), (name: "hem", from: "c", by: [straight("d")]), (name: "left", from: "d", by: [straight("a")])]),
            (name: "two", points: [(name: "a", at: "(0 mm, 0 mm)"), (name: "b", at: "a.right({wide} mm)"), (name: "c", at: "b.down({long})"), (name: "d", at: "a.down({long})"), (name: "m", at: "a.down({long} / 2)")],
             edges: [(name: "top", from: "a", by: [straight("b")]), (name: "side", from: "b", by: [straight("c")]), (name: "hem", from: "c", by: [straight("d")]),
                (name: "lower", from: "d", by: [curve("d.up({long} / 6).right({y} mm)", "m.down({long} / 6)", "m")]), (name: "upper", from: "m", by: [curve("m.up({long} / 6)", "a.down({long} / 6).right({x} mm)", "a")])]),
        ],
        seams: [(name: "panel", one: ["one.upper", "one.lower"], two: [{upper}, {lower}], fit: equal, notches: [(name: "n", at: "{notch} mm", other: "{told}", strokes: 1)], order: "1")],
        )"#,
        labels = labels.join(", "),
        cells = cells.join(", "),
        upper = run("upper", true),
        lower = run("lower", false),
    )
    .replace("name: \"m\"", "name: \"mid\"")
    .replace("\"m\")", "\"mid\")")
    .replace("\"m.", "\"mid.")
    .replace("from: \"m\"", "from: \"mid\"");
    (text, longs.iter().map(|l| *l as f64).collect())
}

fn loud(text: &str) -> Vec<Finding> {
    let draft = file::read(text).unwrap_or_else(|e| panic!("{e}\n{text}")).draft;
    let model = Engine::new().compute(&draft);
    proof(&draft, &model).into_iter().filter(|f| f.severity() != Severity::Note).collect()
}

/// Whether what is told is just the fault that was planted.
fn is_hit(fault: Fault, found: &[Finding], longs: &[f64]) -> bool {
    let number = |f: &Finding, name: &str, i: usize| {
        let amount = f.amounts.iter().find(|a| a.name == name);
        amount.and_then(|a| a.by_size.get(i).or(a.by_size.first())).copied().unwrap_or(f64::NAN)
    };
    let [one] = found else { return false };
    let near = |a: f64, b: f64, by: f64| (a - b).abs() <= by;
    match fault {
        Fault::Notch(off) => {
            one.code == Code::NotchApart
                && one.sizes.len() == SIZES
                && (0..SIZES).all(|i| near(number(one, "apart", i), off as f64 / 10.0, 1e-6))
        }
        Fault::Scaled => {
            one.code == Code::SeamLength
                && one.place.seam == "panel"
                && one.sizes.len() == SIZES
                // A curve is a little longer than its height, and grows a little less than it where it bends.
                && (0..SIZES).all(|i| near(-number(one, "excess", i), 0.003 * longs[i], 0.06))
        }
        Fault::Cell(i) => {
            let code = if i == 0 || i == SIZES - 1 { Code::CellBeyond } else { Code::CellGuessed };
            one.code == code && one.place.name == "chart.long" && one.sizes == [format!("{}", 36 + 2 * i)]
        }
        Fault::Flipped(_) => {
            one.code == Code::RunBroken && one.place.name == "seam.panel.two" && one.sizes.len() == SIZES
        }
    }
}

#[test]
fn faults_by_seed_are_reported_and_nothing_else_is() {
    let (mut hits, mut missed) = ([0; 4], Vec::new());
    for seed in 1..=200 {
        let (clean, longs) = draft(seed, None);
        assert!(loud(&clean).is_empty(), "seed {seed}: the clean draft is not: {:#?}", loud(&clean));
        let mut dice = Dice(seed ^ 0xFA17);
        let fault = match seed % 4 {
            0 => Fault::Notch(dice.from(12, 70) * if dice.from(0, 1) == 0 { 1 } else { -1 }),
            1 => Fault::Scaled,
            2 => Fault::Cell(dice.from(0, SIZES as i64 - 1) as usize),
            _ => Fault::Flipped(dice.from(0, 1) == 0),
        };
        let found = loud(&draft(seed, Some(fault)).0);
        if is_hit(fault, &found, &longs) {
            hits[(seed % 4) as usize] += 1;
        } else {
            let told: Vec<String> = found.iter().map(|f| format!("{} {:?}", f.code.word(), f.sizes)).collect();
            missed.push(format!("seed {seed}, {fault:?}: {told:?}"));
        }
    }
    println!(
        "planted faults reported: notch {} of 50, scaled {} of 50, cell {} of 50, flipped {} of 50",
        hits[0], hits[1], hits[2], hits[3]
    );
    assert!(missed.is_empty(), "{} of 200 missed:\n{}", missed.len(), missed.join("\n"));
}
