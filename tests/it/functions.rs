//! The functions of the language: every example of the table with what it gives, worked out by hand; and what has no answer.

use std::f64::consts::{FRAC_PI_2, PI};

use tracewheel::base::DisplayUnit;
use tracewheel::compute::{Engine, Model, Trial};
use tracewheel::document::Draft;
use tracewheel::file;
use tracewheel::language::{FUNCTIONS, Value, What};
use tracewheel::texts::{message, own, said};

/// Two halves with a hip, one cut as a pair, one on the fold; `back` runs against the clock and has a dart.
const DRAFT: &str = r#"(
    format: "tracewheel draft", version: 0, display: cm,
    chart: (
        girth: ["84", "88"],
        rows: [
            (name: "bust", by: [girth], cells: [("84", "84 cm"), ("88", "88 cm")]),
            (name: "step", by: [girth], cells: [("84", "bust - in_size(bust, \"88\")"), ("88", "1 cm")]),
        ],
    ),
    values: [(name: "leg", is: "length(back.side)"), (name: "border", is: "set_off(back.hem, 1 cm)")],
    drawings: [(name: "ground", points: [(name: "o", at: "(0 cm, 0 cm)")])],
    materials: [(name: "main", kind: cloth, stretch_across: "40 %", selvedge: "1 cm")],
    pieces: [
        (
            name: "front",
            points: [
                (name: "a", at: "(0 cm, 0 cm)"), (name: "b", at: "a.right(20 cm)"),
                (name: "c", at: "b.down(40 cm)"), (name: "d", at: "a.down(40 cm)"),
                (name: "hip", at: "a.down(20 cm)"),
            ],
            edges: [
                (name: "waist", from: "a", by: [straight("b")]), (name: "side", from: "b", by: [straight("c")]),
                (name: "hem", from: "c", by: [straight("d")]), (name: "centre", from: "d", by: [straight("a")]),
            ],
            cuts: [(material: "main", count: 1, on_fold: "centre", grain: (heading: "90 deg"))],
        ),
        (
            name: "back",
            points: [
                (name: "a", at: "(0 cm, 0 cm)"), (name: "b", at: "a.right(24 cm)"),
                (name: "c", at: "b.down(40 cm)"), (name: "d", at: "a.down(40 cm)"),
                (name: "hip", at: "a.down(6 cm)"),
            ],
            edges: [
                (name: "centre", from: "a", by: [straight("d")]), (name: "hem", from: "d", by: [straight("c")]),
                (name: "side", from: "c", by: [straight("b")]), (name: "waist", from: "b", by: [straight("a")]),
            ],
            lines: [
                (name: "wave", from: "a", by: [curve("(8 cm, -20 cm)", "(16 cm, 20 cm)", "b")]),
                (name: "round", from: "a", by: [arc(centre: "(12 cm, 0 cm)", turn: clockwise, to: "b")]),
                (name: "bent", from: "a", by: [straight("hip"), straight("c")]),
            ],
            darts: [(name: "dart", on: "waist", centre: "1/2", intake: "4 cm", tip: "12 cm")],
            cuts: [(material: "main", count: 2, grain: (heading: "90 deg"))],
        ),
    ],
    placements: [
        (name: "front_on_back", lay: "front", on: "back", point: "a", onto: "b", turned: "0 deg"),
        (name: "front_over", lay: "front", on: "back", point: "a", onto: "a", turned: "0 deg", mirrored: true),
    ],
)"#;

struct Bench {
    draft: Draft,
    model: Model,
}

impl Bench {
    fn new() -> Self {
        let draft = file::read(DRAFT).unwrap().draft;
        let model = Engine::new().compute(&draft);
        let told: Vec<String> = model.findings.iter().map(|f| message(f, DisplayUnit::Cm)).collect();
        assert!(told.iter().all(|t| t.contains("kept in the file")), "{told:?}");
        Self { draft, model }
    }

    /// What a formula in the piece `back` gives in size 88: numbers, or what is told.
    fn ask(&self, text: &str) -> Result<Vec<f64>, String> {
        let trial = Trial::new(&self.draft, &self.model.plan);
        let case = self.model.plan.cases.find("88").unwrap();
        let formula = trial
            .read(Some("back"), text, What::Any)
            .map_err(|f| f.map_or("broken elsewhere".into(), |f| message(&f, DisplayUnit::Cm)))?;
        match trial.evaluate(&self.model, case, &formula) {
            Ok(tracewheel::compute::Item::Value(value)) => Ok(match value {
                Value::Real(v) | Value::Share(v) => vec![v],
                Value::Pair(x, y) => vec![x, y],
                Value::Line(p, d) => vec![p[0], p[1], d[0], d[1]],
                Value::Truth(t) => vec![f64::from(u8::from(t))],
                Value::Edge(e) => vec![e.sewn_length()],
            }),
            Ok(_) => Err("no value".into()),
            Err(stop) => {
                let trouble = format!("{:?}", stop.trouble);
                // Why there is no answer is kept as the id of a text.
                let id = trouble.strip_prefix("Formula(NoAnswer(\"").and_then(|t| t.strip_suffix("\"))"));
                Err(id.map_or(trouble.clone(), |id| said(own(), id, &[])))
            }
        }
    }
}

/// Every example of the table, with what it gives: mm, radians; an edge its length; a line its point and direction.
fn examples() -> Vec<(&'static str, Vec<f64>)> {
    let root = 2.0f64.sqrt() / 2.0;
    vec![
        ("abs(3 cm - 5 cm)", vec![20.0]),
        ("min(3 cm, 1 in)", vec![25.4]),
        ("max(3 cm, 1 in)", vec![30.0]),
        ("round(17.3 cm, 5 mm)", vec![175.0]),
        ("sqrt(3 cm * 12 cm)", vec![60.0]),
        ("sin(30 deg)", vec![0.5]),
        ("cos(60 deg)", vec![0.5]),
        ("tan(45 deg)", vec![1.0]),
        ("asin(1/2)", vec![PI / 6.0]),
        ("acos(1/2)", vec![PI / 3.0]),
        ("atan(1)", vec![PI / 4.0]),
        ("if(3 cm > 1 in, 8 mm, 5 mm)", vec![8.0]),
        ("near(25.4 mm, 1 in, 0.1 mm)", vec![1.0]),
        ("graded(92 cm, at: [88 cm, 110 cm], give: [2 cm, 3 cm])", vec![20.0 + 10.0 * 4.0 / 22.0]),
        ("offset(3 cm, -5 mm)", vec![30.0, -5.0]),
        ("(0 cm, 0 cm).right(3 cm)", vec![30.0, 0.0]),
        ("(0 cm, 0 cm).left(3 cm)", vec![-30.0, 0.0]),
        ("(0 cm, 0 cm).down(8 cm)", vec![0.0, 80.0]),
        ("(0 cm, 0 cm).up(2 cm)", vec![0.0, -20.0]),
        ("(0 cm, 0 cm).polar(20 deg, 13 cm)", vec![130.0 * (PI / 9.0).cos(), 130.0 * (PI / 9.0).sin()]),
        ("(0 cm, 0 cm).moved(offset(3 cm, 1 cm))", vec![30.0, 10.0]),
        ("on_way((0 cm, 0 cm), (9 cm, 0 cm), 1/3)", vec![30.0, 0.0]),
        ("halfway((0 cm, 0 cm), (9 cm, 0 cm))", vec![45.0, 0.0]),
        ("(5 cm, 0 cm).turned((0 cm, 0 cm), 90 deg)", vec![0.0, 50.0]),
        ("(5 cm, 0 cm).turned((0 cm, 0 cm), from: (1 cm, 0 cm), to: (0 cm, 1 cm))", vec![0.0, 50.0]),
        ("(5 cm, 2 cm).mirrored(level((0 cm, 0 cm)))", vec![50.0, -20.0]),
        ("(5 cm, 2 cm).foot(plumb((0 cm, 0 cm)))", vec![0.0, 20.0]),
        ("line((0 cm, 0 cm), (5 cm, 2 cm))", vec![0.0, 0.0, 5.0 / 29f64.sqrt(), 2.0 / 29f64.sqrt()]),
        ("level((0 cm, 3 cm))", vec![0.0, 30.0, 1.0, 0.0]),
        ("plumb((3 cm, 0 cm))", vec![30.0, 0.0, 0.0, 1.0]),
        ("through((3 cm, 0 cm), square_to: level((0 cm, 0 cm)))", vec![30.0, 0.0, 0.0, 1.0]),
        ("through((3 cm, 0 cm), parallel_to: level((0 cm, 0 cm)))", vec![30.0, 0.0, 1.0, 0.0]),
        ("through((3 cm, 0 cm), heading: 20 deg)", vec![30.0, 0.0, (PI / 9.0).cos(), (PI / 9.0).sin()]),
        ("between((0 cm, 0 cm), (3 cm, 4 cm)).along(1/2)", vec![15.0, 20.0, 0.6, 0.8]),
        ("bisect((4 cm, 0 cm), (0 cm, 0 cm), (0 cm, 4 cm), 3 cm)", vec![30.0 * root, 30.0 * root]),
        ("parallel(level((0 cm, 0 cm)), 2 cm)", vec![0.0, 20.0, 1.0, 0.0]),
        ("swing((0 cm, 0 cm), 5 cm, level((0 cm, 3 cm)), side: right)", vec![40.0, 30.0]),
        // The radius 3, the way 5, the tangent 4: the right angle lies at the place of touching.
        ("touch((5 cm, 0 cm), circle((0 cm, 0 cm), 3 cm), side: below)", vec![18.0, 24.0]),
        ("cross(level((0 cm, 3 cm)), plumb((2 cm, 0 cm)))", vec![20.0, 30.0]),
        ("(3 cm, 1 cm).x", vec![30.0]),
        ("(3 cm, 1 cm).y", vec![10.0]),
        ("gap((0 cm, 0 cm), (3 cm, 4 cm))", vec![50.0]),
        ("heading((0 cm, 0 cm), (0 cm, 4 cm))", vec![FRAC_PI_2]),
        ("heading(plumb((0 cm, 0 cm)))", vec![FRAC_PI_2]),
        ("angle((1 cm, 0 cm), (0 cm, 0 cm), (0 cm, 1 cm))", vec![FRAC_PI_2]),
        ("corner_angle((1 cm, 0 cm), (0 cm, 0 cm), (0 cm, 1 cm))", vec![FRAC_PI_2]),
        ("between((0 cm, 0 cm), (3 cm, 4 cm))", vec![50.0]),
        ("arc((0 cm, 0 cm), (3 cm, 0 cm), (0 cm, 3 cm))", vec![15.0 * PI]),
        ("circle((0 cm, 0 cm), 3 cm)", vec![60.0 * PI]),
        ("set_off(between((0 cm, 0 cm), (3 cm, 4 cm)), 5 mm)", vec![50.0]),
        ("set_off(between((0 cm, 0 cm), (3 cm, 4 cm)), from: 0 mm, to: 2 mm)", vec![2504f64.sqrt()]),
        ("length(between((0 cm, 0 cm), (3 cm, 4 cm)))", vec![50.0]),
        ("flat_length(between((0 cm, 0 cm), (3 cm, 4 cm)))", vec![50.0]),
        ("between((0 cm, 0 cm), (3 cm, 4 cm)).at(1/2)", vec![15.0, 20.0]),
        // Inside is up: the back lies over its hem.
        ("hem.off(1/2, 4 cm)", vec![120.0, 360.0]),
        ("place(between((0 cm, 0 cm), (9 cm, 0 cm)), (3 cm, 0 cm))", vec![30.0]),
        ("bend(circle((0 cm, 0 cm), 3 cm), 1/2)", vec![1.0 / 30.0]),
        ("area(front)", vec![200.0 * 400.0]),
        ("width(front, level(front.hip))", vec![200.0]),
        // 20 cm twice on the fold; two of 24 cm less 2 cm of the dart half way down to its tip.
        ("girth(level(front.hip), level(back.hip))", vec![2.0 * 200.0 + 2.0 * (240.0 - 20.0)]),
        ("in_size(bust, \"88\")", vec![880.0]),
        ("copy(between((0 cm, 0 cm), (3 cm, 4 cm)))", vec![50.0]),
        ("reversed(between((0 cm, 0 cm), (3 cm, 4 cm)))", vec![50.0]),
        ("lies_in((1 cm, 0 cm), circle((0 cm, 0 cm), 3 cm))", vec![1.0]),
        ("kept_in(between((-5 cm, 0 cm), (0 cm, 0 cm)), circle((0 cm, 0 cm), 3 cm))", vec![30.0]),
        ("part(between((0 cm, 0 cm), (9 cm, 0 cm)), (3 cm, 0 cm), (5 cm, 0 cm))", vec![20.0]),
    ]
}

fn check(bench: &Bench, text: &str, wanted: &[f64], within: f64) {
    let got = bench.ask(text);
    let close = matches!(&got, Ok(got) if got.len() == wanted.len() && got.iter().zip(wanted).all(|(a, b)| (a - b).abs() <= within));
    assert!(close, "{text}: {got:?}, expected {wanted:?}");
}

#[test]
fn every_example_of_the_table_gives_what_was_worked_out() {
    let (bench, known) = (Bench::new(), examples());
    for function in FUNCTIONS {
        let found = known.iter().find(|(text, _)| *text == function.example);
        let (text, wanted) = found.unwrap_or_else(|| panic!("{} has no number here", function.example));
        check(&bench, text, wanted, 1e-9);
    }
    assert_eq!(known.len(), FUNCTIONS.len());
}

#[test]
fn what_a_function_takes_has_a_name_each() {
    for function in FUNCTIONS {
        let names: std::collections::BTreeSet<&str> = function.parameters.iter().map(|p| p.name).collect();
        assert_eq!(names.len(), function.parameters.len(), "{}", function.name);
    }
}

#[test]
fn the_help_has_a_line_for_every_function() {
    let help = include_str!("../../assets/help/en/language.md");
    for function in FUNCTIONS {
        let open = format!("{}(", function.name);
        let listed = help.contains(&open) || help.contains(&format!("{} ", function.name));
        assert!(listed, "{} is not in the help", function.name);
    }
}

#[test]
fn constructions_of_paper_without_points_in_between() {
    let bench = Bench::new();
    // The wave is y = 60 (1 - t)² t (-20/…): by its polynomial y(t) = 3 (1-t)² t (-200) + 3 (1-t) t² 200 mm, zero at 0, 1/2 and 1.
    for (text, wanted) in [
        // Square across from a point to meet a line.
        ("cross(through(hip, square_to: centre.along(1/2)), side)", vec![240.0, 60.0]),
        // The places where a level meets a curve: by name, by the way along it, by the side.
        ("cross(wave, level(a), nearest: (12 cm, 1 cm))", vec![120.0, 0.0]),
        ("cross(level(a), wave, side: right)", vec![240.0, 0.0]),
        ("cross(wave, level(a), from: b)", vec![240.0, 0.0]),
        ("cross(wave, plumb((12 cm, 0 cm)))", vec![120.0, 0.0]),
        // An edge and an edge.
        ("cross(round, between((12 cm, -20 cm), (12 cm, 1 cm)))", vec![120.0, -120.0]),
        ("cross(round, wave, nearest: (1 cm, 1 cm))", vec![0.0, 0.0]),
        ("cross(circle((0 cm, 0 cm), 5 cm), circle((6 cm, 0 cm), 5 cm), side: below)", vec![30.0, 40.0]),
        // A length swung from a point onto an edge, and from another length.
        ("swing(a, 25 cm, side)", vec![240.0, 70.0]),
        ("swing((0 cm, 0 cm), 5 cm, circle((6 cm, 0 cm), 5 cm), side: above)", vec![30.0, -40.0]),
        ("swing(a, 12 cm, round)", vec![60.0, -60.0 * 3f64.sqrt()]),
        // Just reached: the foot itself.
        ("swing(a, 24 cm, side)", vec![240.0, 0.0]),
        ("swing(hip, 24 cm, side)", vec![240.0, 60.0]),
        // From a point to touch a curve.
        ("touch((12 cm, -24 cm), round, side: left)", vec![120.0 - 60.0 * 3f64.sqrt(), -60.0]),
        ("touch((12 cm, -24 cm), reversed(round), side: right)", vec![120.0 + 60.0 * 3f64.sqrt(), -60.0]),
        // An end counts: straight down from above the end of the half circle.
        ("touch((0 cm, -30 cm), round, side: left)", vec![0.0, 0.0]),
        // A line divided in five, a quarter circle exact, the leg of a dart turned onto its mate.
        ("on_way(a, b, 2/5)", vec![96.0, 0.0]),
        ("arc((0 cm, 0 cm), (3 cm, 0 cm), (0 cm, 3 cm)).at(1/2)", vec![30.0 / 2f64.sqrt(), 30.0 / 2f64.sqrt()]),
        ("arc((0 cm, 0 cm), (3 cm, 0 cm), (0 cm, 3 cm), turn: anticlockwise)", vec![45.0 * PI]),
        ("arc((0 cm, 0 cm), (3 cm, 0 cm), (-3 cm, 0 cm), turn: clockwise)", vec![30.0 * PI]),
        ("dart.first_foot.turned(dart.tip, from: dart.first_foot, to: dart.second_foot)", vec![100.0, 0.0]),
        // Lengths of parts, places of points, bends.
        ("length(part(waist, b, dart.first_foot))", vec![100.0]),
        ("place(waist, a)", vec![200.0]),
        ("foot((30 cm, 7 cm), side)", vec![240.0, 70.0]),
        ("foot((30 cm, -7 cm), side)", vec![240.0, 0.0]),
        ("bend(round, 1/3)", vec![1.0 / 120.0]),
        ("bend(reversed(round), 1/3)", vec![-1.0 / 120.0]),
        ("bend(hem, 1/2)", vec![0.0]),
        // At the middle of the wave x' = 240, y' = 300, x'' = 0, y'' = 0 by its symmetry.
        ("bend(wave, 1/2)", vec![0.0]),
        // Inside and outside, whichever way the edge is taken.
        ("off(reversed(hem), 1/2, 4 cm)", vec![120.0, 360.0]),
        ("off(part(hem, c, d), 1/2, 4 cm)", vec![120.0, 360.0]),
        ("off(front_on_back.hem, 1/2, 4 cm)", vec![340.0, 360.0]),
        ("off(front_over.hem, 1/2, 4 cm)", vec![-100.0, 360.0]),
        ("off(mirrored(hem, level(d)), 1/2, 4 cm)", vec![120.0, 440.0]),
        ("set_off(hem, 4 cm).at(0)", vec![0.0, 360.0]),
        ("set_off(reversed(hem), 4 cm).at(0)", vec![240.0, 360.0]),
        ("off(border, 1/2, 1 cm)", vec![120.0, 380.0]),
        ("set_off(round, 2 cm)", vec![100.0 * PI]),
        ("set_off(reversed(round), 2 cm)", vec![140.0 * PI]),
        ("set_off(round, from: 0 cm, to: 0 cm)", vec![120.0 * PI]),
        // Edges and lines moved.
        ("turned(hem, d, -90 deg).at(1)", vec![0.0, 160.0]),
        ("moved(hem, offset(1 cm, 2 cm)).at(0)", vec![10.0, 420.0]),
        ("turned(level(a), a, 90 deg)", vec![0.0, 0.0, 0.0, 1.0]),
        ("mirrored(plumb((3 cm, 0 cm)), level(a))", vec![30.0, 0.0, 0.0, -1.0]),
        // Widths through the dart: whole above its tip's level only where it ends.
        ("width(back, level(hip))", vec![220.0]),
        ("width(back, level((0 cm, 12 cm)))", vec![240.0]),
        ("width(back, level((0 cm, 30 cm)))", vec![240.0]),
        ("width(back, plumb((12 cm, 0 cm)))", vec![280.0]),
        ("area(back)", vec![240.0 * 400.0]),
        ("main.stretch_across", vec![0.4]),
        ("main.selvedge * 2", vec![20.0]),
        ("in_size(bust, \"84\")", vec![840.0]),
        ("in_size(step, \"84\")", vec![-40.0]),
    ] {
        check(&bench, text, &wanted, 1e-6);
    }
}

#[test]
fn what_has_no_answer_says_why() {
    let bench = Bench::new();
    for (text, wanted) in [
        ("cross(wave, level(a))", "Several(3)"),
        ("cross(level(a), wave, side: above)", "equally near"),
        ("cross(level(a), waist)", "run along each other"),
        ("cross(hem, between(c, d))", "run along each other"),
        ("cross(wave, wave)", "run along each other"),
        ("cross(round, circle((12 cm, 0 cm), 12 cm))", "run along each other"),
        ("cross(hem, waist)", "do not cross"),
        ("cross(side, level((0 cm, 41 cm)))", "do not cross"),
        ("swing(a, 23 cm, side)", "does not reach"),
        ("swing(a, 100 cm, side)", "does not reach"),
        ("swing(a, 0 cm, side)", "above zero"),
        ("swing((12 cm, 0 cm), 12 cm, round)", "run along each other"),
        ("touch((12 cm, -5 cm), round)", "touches a curved stretch"),
        ("touch((30 cm, 0 cm), side)", "touches a curved stretch"),
        ("arc(a, b, c)", "equally far"),
        ("arc(a, b, b.left(48 cm))", "neither way round"),
        ("arc(a, a, b)", "no direction"),
        ("circle(a, 0 cm)", "above zero"),
        ("bisect(b, a, b.left(48 cm), 3 cm)", "straight on"),
        ("set_off(round, 12 cm)", "bends tighter"),
        ("set_off(wave, 20 cm)", "bends tighter"),
        ("set_off(bent, 1 cm)", "has a corner"),
        ("off(wave, 1/2, 1 cm)", "outline"),
        ("width(back, level((0 cm, 50 cm)))", "does not run through"),
        ("width(back, level(d))", "runs along the outline"),
        ("place(hem, a)", "NotOnEdge(400.0)"),
        ("in_size(bust, \"90\")", "no size is called `90`"),
        ("in_size(leg, \"88\")", "only a row of the chart"),
        ("in_size(bust + 1 cm, \"88\")", "by its name alone"),
        ("in_size(bust, 88)", "words in quotes"),
        ("cross(wave, level(a), side: up)", "`side:` is one of left, right, above, below"),
        ("cross(wave, level(a), side: left, nearest: a)", "only one of `nearest:`, `from:`, `side:`"),
        ("cross(wave, level(a), a)", "one too many"),
        ("cross(wave, level(front.a))", "lies on front, not on back"),
        ("width(front, level(hip))", "lies on back, not on front"),
        ("girth(level(ground.o))", "must lie in a piece"),
        ("back", "a whole piece"),
        ("area(hem)", "this is an edge; a whole piece is needed here"),
        ("main.stretch_along", "nothing is called `main.stretch_along`"),
    ] {
        let got = bench.ask(text);
        assert!(matches!(&got, Err(told) if told.contains(wanted)), "{text}: {got:?}, expected {wanted}");
    }
}
