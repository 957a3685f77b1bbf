//! Why a system cannot be true: the message, judged by mending the draft as it says.

use tracewheel::base::{Code, DisplayUnit, Finding};
use tracewheel::compute::{Engine, Model};
use tracewheel::document::Draft;
use tracewheel::file;
use tracewheel::texts::message;

fn draft(values: &str, conditions: &[&str]) -> Draft {
    let rows: Vec<String> =
        conditions.iter().enumerate().map(|(i, c)| format!("(name: \"c{i}\", must: \"{c}\")")).collect();
    let text = format!(
        "(format: \"tracewheel draft\", version: 0, chart: (girth: [\"S\", \"M\", \"L\"], rows: [(name: \"bust\", by: [girth], \
         cells: [(\"S\", \"80 cm\"), (\"M\", \"88 cm\"), (\"L\", \"96 cm\")])]), values: [{values}], conditions: [{}])",
        rows.join(", ")
    );
    file::read(&text).unwrap().draft
}

fn found(names: &[&str]) -> String {
    names.iter().map(|n| format!("(name: \"{n}\", start: \"10 cm\"), ")).collect()
}

fn model(draft: &Draft) -> Model {
    Engine::new().compute(draft)
}

fn of(model: &Model, code: Code) -> Vec<&Finding> {
    model.findings.iter().filter(|f| f.code == code).collect()
}

/// The members that a finding of what cannot hold names, as places in the list of conditions.
fn named(finding: &Finding) -> Vec<usize> {
    let list = &finding.words.iter().find(|(n, _)| *n == "conditions").unwrap().1;
    list.split(", ").map(|c| c.trim_start_matches("condition.c").parse().unwrap()).collect()
}

#[test]
fn a_smallest_conflicting_set_is_named_and_any_one_left_out_makes_the_rest_true() {
    for (names, conditions, members) in [
        // Two that say two things of one value, beside one that has nothing to do with them.
        (&["a", "b"][..], &["a + b = 30 cm", "a = 12 cm", "b = 19 cm", "a = 11 cm"][..], 2),
        // Three around a ring, with two that agree with everything.
        (
            &["a", "b", "c"],
            &["a - b = 1 cm", "b - c = 1 cm", "a - c = 3 cm", "a + b + c = 40 cm", "2 * (a - b) = 2 cm"],
            3,
        ),
        // Five in a chain that closes wrongly.
        (&["a", "b", "c", "d"], &["a = 11 cm", "b - a = 2 cm", "c - b = 3 cm", "d - c = 4 cm", "d = 21 cm"], 5),
        // Curved: three distances that no point has.
        (&["x", "y"], &["x * x + y * y = 100 cm * cm * 1", "(x - 26 cm)^2 + y^2 = (12 cm)^2", "x - y = 1 cm"], 2),
    ] {
        let one = draft(&found(names), conditions);
        let model_of_one = model(&one);
        let told = of(&model_of_one, Code::NotTrue);
        assert_eq!(told.len(), 1, "{conditions:?}");
        let set = named(told[0]);
        assert_eq!(set.len(), members, "{conditions:?}: {set:?}");
        assert_eq!(told[0].sizes, ["S", "M", "L"]);
        let only = |keep: &dyn Fn(usize) -> bool| {
            let list: Vec<&str> = conditions.iter().enumerate().filter(|(i, _)| keep(*i)).map(|(_, c)| *c).collect();
            model(&draft(&found(names), &list))
        };
        // The set by itself cannot hold; without any one of its members it can.
        assert_eq!(of(&only(&|i| set.contains(&i)), Code::NotTrue).len(), 1, "{set:?}");
        for left in &set {
            let rest = only(&|i| set.contains(&i) && i != *left);
            assert!(of(&rest, Code::NotTrue).is_empty(), "{set:?} without {left}");
        }
    }
}

#[test]
fn what_cannot_hold_is_said_in_mm_sizes_and_the_names_of_the_designer() {
    let one = draft(&found(&["cap"]), &["cap = 12 cm", "cap = bust / 8"]);
    let model = model(&one);
    let told = of(&model, Code::NotTrue);
    assert_eq!(
        message(told[0], DisplayUnit::Cm),
        // In L 96 / 8 is 12; in S it is 10, and the nearest fit 11.
        "condition.c0, condition.c1 cannot hold together: 10 mm off at the nearest fit of cap; without either of them the other \
         would hold (2 sizes: S, M, worst in S)"
    );
}

#[test]
fn the_one_limit_in_the_way_is_named() {
    // Both values rest at a limit; only that of `a` stops what must hold.
    let values = "(name: \"a\", start: \"10 cm\", most: \"15 cm\"), (name: \"b\", start: \"10 cm\", most: \"12 cm\")";
    let model = model(&draft(values, &["a = 20 cm", "b = 12 cm"]));
    let told = of(&model, Code::LimitInWay);
    assert_eq!(told.len(), 1);
    assert_eq!(
        message(told[0], DisplayUnit::Cm),
        "condition.c0 cannot hold: a stops at its most, 5 cm off (3 sizes: S, M, L, worst in S)"
    );
}

#[test]
fn what_cannot_change_and_what_nothing_fixes_are_told() {
    let values = "(name: \"a\", start: \"10 cm\"), (name: \"idle\", start: \"3 cm\")";
    let text = file::write(&draft(values, &["a = 20 cm"]))
        .replace("must: \"a = 20 cm\"", "must: \"a + 0 * idle = 20 cm\", found_by: [\"a\", \"idle\"]");
    let one = model(&file::read(&text).unwrap().draft);
    let told: Vec<String> = of(&one, Code::NoEffect).iter().map(|f| message(f, DisplayUnit::Cm)).collect();
    assert_eq!(
        told,
        ["idle cannot change condition.c0: however it is changed, they stay as they are (3 sizes: S, M, L)"]
    );
    let other = model(&draft(values, &["a = 20 cm"]));
    let told: Vec<String> = of(&other, Code::NothingFixes).iter().map(|f| message(f, DisplayUnit::Cm)).collect();
    assert_eq!(told, ["nothing fixes idle; it stays at its start"]);
}

#[test]
fn a_second_solution_that_goes_on_from_a_neighbour_is_told() {
    // A square has two roots; in M the start lies nearer to the other one.
    let start = "if(near(bust, 88 cm, 1 mm), -5 cm, 5 cm)";
    let values = |start: &str| format!("(name: \"a\", start: \"{start}\")");
    let one = draft(&values(start), &["a * a = bust * 1 cm"]);
    let model_of_one = model(&one);
    let told: Vec<String> = of(&model_of_one, Code::TwoSolutions).iter().map(|f| message(f, DisplayUnit::Cm)).collect();
    assert!(!told.is_empty());
    assert!(
        told[0].starts_with(
            "a has two solutions here: -9.38 cm is taken, reached from its start; 9.38 cm would go on from size"
        ),
        "{told:?}"
    );
    assert!(of(&model(&draft(&values("5 cm"), &["a * a = bust * 1 cm"])), Code::TwoSolutions).is_empty());
    // A jump without a second solution is none.
    assert!(
        of(&model(&draft(&values("5 cm"), &["a = if(near(bust, 88 cm, 1 mm), 40 cm, 10 cm)"])), Code::TwoSolutions)
            .is_empty()
    );
}

/// The range that is graded in uneven steps: what jumps no more than three times as far as usual is no other solution, whatever
/// roots there are; the step that is usual is not the smallest one.
#[test]
fn a_step_like_the_usual_ones_is_no_second_solution() {
    let told = |roots: [i32; 5]| {
        let cells: String = ["A", "B", "C", "D", "E"]
            .iter()
            .zip(roots)
            .map(|(size, root)| format!("(\"{size}\", \"{root} mm\"),"))
            .collect();
        let text = format!(
            "(format: \"tracewheel draft\", version: 0, chart: (girth: [\"A\", \"B\", \"C\", \"D\", \"E\"], rows: [(name: \"root\", by: [girth], \
             cells: [{cells}])]), values: [(name: \"a\", start: \"root\")], conditions: [(name: \"c\", must: \"a * a = root * root\")])"
        );
        let model = model(&file::read(&text).unwrap().draft);
        of(&model, Code::TwoSolutions).iter().flat_map(|f| f.sizes.clone()).collect::<Vec<_>>()
    };
    // Steps of 0, 100, 100 and 290 mm: a quarter of the way up, 100 mm are usual.
    assert_eq!(told([50, 50, 150, 250, -40]), [""; 0]);
    // Steps of 0, 100, 100 and 310 mm.
    assert_eq!(told([50, 50, 150, 250, -60]), ["E"]);
}
