//! Derived pieces against `tests/outside/derived.json`, made by `derived.py` (shapely, numpy), which shares no code with the program; and
//! steps left out and put in another order at random.

use serde_json::Value;
use tracewheel::base::{Code, DisplayUnit};
use tracewheel::compute::Engine;
use tracewheel::document::{Does, Draft, Step};
use tracewheel::file;
use tracewheel::texts::message;

/// Places and lengths, mm.
const WITHIN: f64 = 1e-3;

fn pair(value: &Value) -> [f64; 2] {
    [0, 1].map(|i| value[i].as_f64().unwrap())
}

fn at(p: [f64; 2]) -> String {
    format!("({:?} mm, {:?} mm)", p[0], p[1])
}

fn number(case: &Value, name: &str) -> f64 {
    case[name].as_f64().unwrap_or_else(|| panic!("{name} of {case}"))
}

/// The piece of a case, and those that are derived from it.
fn draft(case: &Value) -> Draft {
    let corners = &case["corners"];
    let points: Vec<String> = ["nw", "ne", "se", "sw"]
        .iter()
        .map(|name| format!(r#"(name: "{name}", at: "{}")"#, at(pair(&corners[name]))))
        .collect();
    let edges: Vec<String> = [("top", "nw", "ne"), ("side", "ne", "se"), ("hem", "se", "sw"), ("centre", "sw", "nw")]
        .iter()
        .map(|(name, from, to)| {
            let by = match &case["curves"][name] {
                Value::Null => format!(r#"straight("{to}")"#),
                handles => format!(r#"curve("{}", "{}", "{to}")"#, at(pair(&handles[0])), at(pair(&handles[1]))),
            };
            format!(r#"(name: "{name}", from: "{from}", by: [{by}])"#)
        })
        .collect();
    let mm = |name: &str| format!("{:?} mm", number(case, name));
    let share = |edge: &str| format!("{:?}", case["at"][edge].as_f64().unwrap());
    let (darts, pieces) = match case["does"].as_str().unwrap() {
        "cut" => {
            let part = |name: &str, keep: &str| {
                format!(
                    r#"(name: "{name}", of: "block", steps: [(name: "c", does: cut(from: "top", from_at: "{}", to: "hem", to_at: "{}", keep: "{keep}", makes: "line", start: "u", end: "v"))])"#,
                    share("top"),
                    share("hem")
                )
            };
            (String::new(), format!("{}, {}", part("west", "centre"), part("east", "side")))
        }
        "spread" => (
            String::new(),
            format!(
                r#"(name: "made", of: "block", steps: [(name: "s", does: spread(from: "hem", from_at: "{}", to: "top", to_at: "{}", angle: "{:?} deg", stays: "centre"))])"#,
                share("hem"),
                share("top"),
                number(case, "degrees")
            ),
        ),
        _ => (
            format!(
                r#"(name: "d", on: "top", centre: "{}", intake: "{}", tip: "{}")"#,
                mm("middle"),
                mm("intake"),
                mm("deep")
            ),
            format!(
                r#"(name: "made", of: "block", steps: [(name: "m", does: move_dart(close: "d", on: "side", at: "{:?}", stays: "centre", makes: "e"))])"#,
                number(case, "at")
            ),
        ),
    };
    let text = format!(
        r#"(format: "tracewheel draft", version: 0, chart: (girth: ["1"]), pieces: [(name: "block", points: [{}], edges: [{}], darts: [{darts}]), {pieces}])"#,
        points.join(", "),
        edges.join(", ")
    );
    file::read(&text).unwrap_or_else(|e| panic!("{e}: {text}")).draft
}

#[test]
fn cut_spread_and_turned_as_another_library_says() {
    let cases: Vec<Value> =
        serde_json::from_str(&std::fs::read_to_string("tests/outside/derived.json").unwrap()).unwrap();
    assert_eq!(cases.len(), 90);
    let mut compared = 0;
    for case in &cases {
        let place = |name: &str, point: &str| {
            let [x, y] = pair(&case[name]);
            [(format!("{point}.x"), x, WITHIN), (format!("{point}.y"), y, WITHIN)]
        };
        let long = |name: &str, edge: &str| (edge.to_owned(), number(case, name), WITHIN);
        // An outline that lies off by so much all around encloses so much more.
        let large = |name: &str, piece: &str| (format!("area({piece})"), number(case, name), 1000.0 * WITHIN);
        let mut want = Vec::new();
        match case["does"].as_str().unwrap() {
            "cut" => {
                want.extend([large("west", "west"), large("east", "east"), large("area", "block")]);
                want.extend([long("line", "length(west.line)"), long("line", "length(east.line)")]);
                want.extend([long("top", "length(west.top)"), long("hem", "length(east.hem)")]);
                want.push(long("side", "length(east.side)"));
                want.extend(place("start", "west.u").into_iter().chain(place("end", "east.v")));
            }
            "spread" => {
                want.extend([large("area", "made"), long("hem", "length(made.hem)"), long("top", "length(made.top)")]);
                want.push(long("side", "length(made.side)"));
                want.extend(["ne", "se", "sw"].iter().flat_map(|c| place(c, &format!("made.{c}"))));
            }
            _ => {
                want.extend([
                    large("area", "made"),
                    long("top", "length(made.top)"),
                    long("side", "length(made.side)"),
                ]);
                want.push(long("opened", "made.e.intake"));
                want.extend(place("tip", "made.e.tip"));
                want.extend(["ne", "se"].iter().flat_map(|c| place(c, &format!("made.{c}"))));
            }
        }
        let formulas: Vec<&str> = want.iter().map(|w| w.0.as_str()).collect();
        let model = Engine::new().compute_with(&draft(case), &formulas);
        assert_eq!(model.findings, Vec::new(), "{case}");
        for (i, (formula, value, within)) in want.iter().enumerate() {
            let found = model.plan.extras[i].and_then(|node| model.item(0, node)?.real());
            let found = found.unwrap_or_else(|| panic!("{formula} has no value, seed {}", case["seed"]));
            assert!(
                (found - value).abs() <= *within,
                "seed {} {}: {formula} is {found}, outside {value}",
                case["seed"],
                case["does"]
            );
            compared += 1;
        }
    }
    assert_eq!(compared, 30 * (12 + 10 + 10));
}

/// Steps that hang on each other, on a piece with a dart, a line, a mark and an allowance.
const CHAIN: &str = r#"(format: "tracewheel draft", version: 0,
    chart: (girth: ["1", "2"], base: "1", rows: [(name: "side", kind: house, by: [girth], cells: [("1", "20 cm"), ("2", "24 cm")])]),
    pieces: [(name: "block", points: [(name: "nw", at: "(0 cm, 0 cm)"), (name: "ne", at: "nw.right(chart.side)"), (name: "se", at: "ne.down(30 cm)"),
        (name: "sw", at: "nw.down(30 cm)"), (name: "tip", at: "(10 cm, 15 cm)")],
      edges: [(name: "top", from: "nw", by: [curve("nw.right(5 cm)", "ne.left(5 cm)", "ne")]), (name: "side", from: "ne", by: [straight("se")]),
        (name: "hem", from: "se", by: [straight("sw")]), (name: "centre", from: "sw", by: [straight("nw")])],
      lines: [(name: "pocket", from: "tip", by: [straight("ne")])],
      darts: [(name: "bust", on: "top", centre: "10 cm", intake: "3 cm", tip: "tip")],
      marks: [(name: "hole", kind: drill_hole, at: "tip.right(4 cm)")], allowances: [(edge: "hem", width: "2 cm")]),
    (name: "other", of: "block", steps: [(name: "no_dart", does: leave_out(["bust"]))]),
    (name: "made", of: "block", steps: [
        (name: "narrow", does: move_edge(edge: "side", by: "1 cm", to_by: "-1 cm")),
        (name: "shared", does: share(by: "1 cm", over: [(edge: "side", share: "1/3"), (edge: "centre")])),
        (name: "cut_line", does: to_cut_line(edges: ["hem"])),
        (name: "marked", does: draw(points: [(name: "p", at: "side.at(1/4)")], lines: [(name: "welt", from: "p", by: [straight("tip")])])),
        (name: "away", does: move_dart(close: "bust", on: "side", at: "1/2", stays: "centre", makes: "side_dart")),
        (name: "stand", does: add_strip(edge: "centre", width: "3 cm", makes: "outer", start: "lower", end: "upper")),
        (name: "flare", does: spread(from: "hem", from_at: "1/3", to: "top", to_at: "1/2", by: "3 cm", stays: "outer")),
        (name: "longer", does: spread(from: "outer", from_at: "10 cm", to: "side", to_at: "3/4", by: "-2 cm", parallel: true, stays: "top")),
        (name: "panel", does: cut(from: "side_dart", to: "hem", along: "between(side_dart.tip, (8 cm, 60 cm))", keep: "outer", makes: "panel", start: "u", end: "v")),
        (name: "round", does: redraw(edge: "hem", by: [curve("v.down(2 cm)", "sw.down(2 cm)", "sw")])),
        (name: "joined", does: join(edge: "panel", piece: "other", to: "side", reversed: true, prefix: "o_")),
        (name: "whole", does: unfold(over: "lower", prefix: "l_")),
        (name: "no_pocket", does: leave_out(["pocket", "hole"])),
        (name: "over", does: turn_over)])])"#;

/// A small generator of numbers by seed.
struct Dice(u64);

impl Dice {
    fn below(&mut self, n: usize) -> usize {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 33) as usize % n
    }
}

fn steps(draft: &mut Draft) -> &mut Vec<Step> {
    let piece = draft.pieces.iter_mut().find(|p| p.name == "made").unwrap();
    &mut std::sync::Arc::make_mut(piece).steps
}

#[test]
fn steps_in_any_order_are_told_by_their_names() {
    let draft = file::read(CHAIN).unwrap().draft;
    assert_eq!(Engine::new().compute(&draft).findings, Vec::new());
    let (mut undone, mut done) = (0, 0);
    for seed in 0..300 {
        let (mut dice, mut draft) = (Dice(seed), draft.clone());
        let list = steps(&mut draft);
        for _ in 0..dice.below(5) {
            list.remove(dice.below(list.len()));
        }
        for _ in 0..dice.below(6) {
            let (a, b) = (dice.below(list.len()), dice.below(list.len()));
            list.swap(a, b);
        }
        if dice.below(4) == 0 {
            let from = dice.below(list.len());
            list[from].does = Does::LeaveOut(vec!["nothing_of_this_name".to_owned()]);
        }
        let names: Vec<String> = list.iter().map(|s| format!("made, step {}", s.name)).collect();
        let model = Engine::new().compute(&draft);
        assert_eq!(model.cases.len(), 2);
        for finding in &model.findings {
            let text = message(finding, DisplayUnit::Cm);
            let shown = format!("{seed}: {:?} {text} {}", finding.place, finding.formula);
            assert!(!shown.contains('ǀ'), "a name of the program's own: {shown}");
            assert_eq!(finding.place.piece, "made", "{shown}");
            if finding.code == Code::StepFails {
                assert!(names.contains(&finding.place.name), "{shown}");
                undone += 1;
            }
        }
        done += usize::from(model.findings.is_empty());
    }
    assert!(undone > 100 && done > 5, "{undone} steps undone, {done} drafts without findings");
}
