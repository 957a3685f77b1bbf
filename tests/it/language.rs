//! Formula texts with what they give, or with the finding, its place and its mend.

use tracewheel::base::DisplayUnit;
use tracewheel::compute::{Engine, measure};
use tracewheel::file;
use tracewheel::language::{Value, tidy};
use tracewheel::texts::message;

/// A draft with a little of everything in it.
const DRAFT: &str = r#"(
    format: "tracewheel draft", version: 0, display: cm,
    chart: (
        girth: ["84", "88"],
        rows: [
            (name: "bust", by: [girth], cells: [("84", "84 cm"), ("88", "88 cm")]),
            (name: "shoulder", by: [girth], cells: [("84", "12 cm"), ("88", "13 cm")]),
        ],
    ),
    values: [(name: "ease", is: "4 cm"), (name: "slope", is: "20 deg"), (name: "share", is: "15 %"), (name: "wrong", is: "1 +")],
    pieces: [
        (
            name: "back",
            points: [
                (name: "a", at: "(0 cm, 0 cm)"),
                (name: "b", at: "a.right(30 cm)"),
                (name: "c", at: "b.down(40 cm)"),
                (name: "d", at: "a.down(40 cm)"),
            ],
            edges: [
                (name: "shoulder", from: "a", by: [straight("b")]),
                (name: "side", from: "b", by: [straight("c")]),
                (name: "hem", from: "c", by: [straight("d")]),
                (name: "centre", from: "d", by: [straight("a")]),
            ],
            darts: [(name: "dart", on: "hem", centre: "1/2", intake: "4 cm", tip: "12 cm")],
        ),
        (name: "front", points: [(name: "tip", at: "(1 cm, 2 cm)")]),
    ],
    placements: [(name: "front_on_back", lay: "front", on: "back", point: "tip", onto: "b", turned: "90 deg")],
    seams: [(name: "middle", one: ["back.side"], two: ["reversed(back.centre)"])],
)"#;

fn ask(formula: &str) -> Result<String, String> {
    let draft = file::read(DRAFT).unwrap().draft;
    let measured = measure(&mut Engine::new(), &draft, &[formula]).unwrap();
    let case = measured.model.plan.cases.find("88").unwrap();
    match measured.value(0, case) {
        Some(Value::Real(v)) => Ok(format!("{:?} {}", measured.columns[0].unwrap().1, round(v))),
        Some(Value::Pair(x, y)) => Ok(format!("({}, {})", round(x), round(y))),
        Some(Value::Truth(t)) => Ok(t.to_string()),
        Some(Value::Line(p, d)) => {
            Ok(format!("line ({}, {}) ({}, {})", round(p[0]), round(p[1]), round(d[0]), round(d[1])))
        }
        Some(other) => Ok(format!("{other:?}")),
        None => {
            let own = |f: &&tracewheel::base::Finding| f.place.name == "asked";
            let finding = measured.model.findings.iter().find(own).ok_or("nothing is told")?;
            let mut only = finding.clone();
            only.sizes.clear();
            let span = finding.span.map_or(String::new(), |s| format!(" @ `{}`", s.of(formula)));
            let mend = finding.mend.as_ref().map_or(String::new(), |m| {
                let mut text = formula.to_owned();
                text.replace_range(m.span.start..m.span.end, &m.by);
                format!(" -> {text}")
            });
            Err(format!("{}: {}{span}{mend}", finding.code.word(), message(&only, DisplayUnit::Cm)))
        }
    }
}

fn round(v: f64) -> f64 {
    let r = (v * 1e6).round() / 1e6;
    if r == 0.0 { 0.0 } else { r }
}

#[test]
fn formulas_give_what_is_written_beside_them() {
    for (formula, wanted) in [
        // Literals: 1 in = 25.4 mm exactly.
        ("3 cm", "Quantity(1) 30"),
        ("3cm", "Quantity(1) 30"),
        ("3/8 in", "Quantity(1) 9.525"),
        ("1 1/2 in", "Quantity(1) 38.1"),
        ("1 yd", "Quantity(1) 914.4"),
        ("1 ft", "Quantity(1) 304.8"),
        ("0.5 m", "Quantity(1) 500"),
        ("15 %", "Quantity(0) 0.15"),
        ("pi", "Quantity(0) 3.141593"),
        ("2 * pi * 3 cm", "Quantity(1) 188.495559"),
        ("180°", "Angle 3.141593"),
        ("90 deg / 45 deg", "Quantity(0) 2"),
        ("1/2", "Quantity(0) 0.5"),
        ("bust/2-1/2 in", "Quantity(1) 427.3"),
        ("bust / 2 1/2 in", "Quantity(0) 13.858268"),
        // Precedence.
        ("2 + 3 * 4", "Quantity(0) 14"),
        ("(2 + 3) * 4", "Quantity(0) 20"),
        ("-2^2", "Quantity(0) -4"),
        ("2^3^2", "Quantity(0) 512"),
        ("2^-1", "Quantity(0) 0.5"),
        ("10 - 4 - 3", "Quantity(0) 3"),
        ("24 / 4 / 3", "Quantity(0) 2"),
        ("not 1 > 2 and 2 > 1", "true"),
        ("yes or no and no", "true"),
        // Kinds.
        ("3 cm * 4 cm", "Quantity(2) 1200"),
        ("12 cm^2 / 3 cm", "Err wanted"),
        ("(3 cm)^2", "Quantity(2) 900"),
        ("(3 cm)^-1", "Quantity(-1) 0.033333"),
        ("sqrt(9 cm * 4 cm)", "Quantity(1) 60"),
        ("slope * 2", "Angle 0.698132"),
        ("bust * share", "Quantity(1) 132"),
        // Names.
        ("chart.shoulder", "Quantity(1) 130"),
        ("shoulder", "Quantity(1) 130"),
        ("value.ease + chart.bust", "Quantity(1) 920"),
        ("piece.back.c.y", "Quantity(1) 400"),
        ("back.c", "(300, 400)"),
        ("back.shoulder", "Edge(Frame(0)) 300"),
        ("back.dart.intake", "Quantity(1) 40"),
        ("back.dart.tip", "(150, 280)"),
        ("back.dart.leg", "Quantity(1) 121.655251"),
        ("length(back.hem)", "Quantity(1) 260"),
        ("flat_length(back.hem)", "Quantity(1) 300"),
        ("seam.middle.one", "Quantity(1) 400"),
        ("seam.middle.difference", "Quantity(1) 0"),
        ("front_on_back.tip", "(300, 0)"),
        // Points, offsets and angles: x right, y down, clockwise.
        ("back.a.polar(90 deg, 5 cm)", "(0, 50)"),
        ("back.c - back.a", "(300, 400)"),
        ("back.a + offset(1 cm, -2 cm)", "(10, -20)"),
        ("gap(back.a, back.c)", "Quantity(1) 500"),
        ("heading(back.a, back.d)", "Angle 1.570796"),
        ("heading(back.b, back.a)", "Angle 3.141593"),
        ("angle(back.b, back.a, back.d)", "Angle 1.570796"),
        ("angle(back.d, back.a, back.b)", "Angle 4.712389"),
        ("corner_angle(back.d, back.a, back.b)", "Angle 1.570796"),
        ("on_way(back.a, back.b, 1/3)", "(100, 0)"),
        ("on_way(back.a, back.b, 5 cm)", "(50, 0)"),
        ("back.hem.at(1/2)", "(170, 400)"),
        ("back.hem.at(20 cm)", "(60, 400)"),
        ("back.hem.off(1/4, 3 cm)", "(235, 370)"),
        ("reversed(back.hem).at(0 cm)", "(0, 400)"),
        ("length(part(back.side, back.b, back.side.at(10 cm)))", "Quantity(1) 100"),
        ("cross(level(back.c), plumb(back.a))", "(0, 400)"),
        ("parallel(level(back.a), 2 cm)", "line (0, 20) (1, 0)"),
        ("back.b.turned(back.a, from: back.b, to: back.d)", "(0, 300)"),
        ("if(bust > 86 cm, 1 cm, 2 cm)", "Quantity(1) 10"),
        ("if(bust > 86 cm, 1 cm, 2 cm / 0)", "Quantity(1) 10"),
        ("round(17.3 cm, 5 mm)", "Quantity(1) 175"),
        ("round(-2.5)", "Quantity(0) -3"),
        ("graded(bust, at: [84 cm, 92 cm], give: [1 cm, 3 cm])", "Quantity(1) 20"),
        ("graded(bust, at: [90 cm, 92 cm], give: [1, 3])", "Quantity(0) 1"),
    ] {
        match ask(formula) {
            Ok(found) => assert_eq!(found, wanted, "{formula}"),
            Err(why) => assert_eq!("Err wanted", wanted, "{formula}: {why}"),
        }
    }
}

#[test]
fn findings_say_what_where_and_how_to_mend() {
    for (formula, wanted) in [
        ("bust/2 + 3", "unit-missing: `3` has no unit here; did you mean `3 cm`? @ `3` -> bust/2 + 3 cm"),
        ("sin(45)", "unit-missing: `45` has no unit here; did you mean `45 deg`? @ `45` -> sin(45 deg)"),
        ("bst / 4", "unknown-name: nothing is called `bst` here; did you mean `bust`? @ `bst` -> bust / 4"),
        (
            "back.shouldr",
            "unknown-name: nothing is called `back.shouldr` here; did you mean `back.shoulder`? @ `back.shouldr` -> back.shoulder",
        ),
        ("tip.x", "unknown-name: nothing is called `tip.x` here @ `tip.x`"),
        ("tip", "unknown-name: nothing is called `tip` here; did you mean `front.tip`? @ `tip` -> front.tip"),
        ("3,5 cm", "unexpected: `,` stands where a decimal point is needed @ `,` -> 3.5 cm"),
        // Within brackets a comma parts things: what was meant is proposed.
        (
            "max(3,5 cm, bust)",
            "wrong-kind: this is a length; a plain number is needed here @ `5 cm` -> max(3.5 cm, bust)",
        ),
        ("max(3,5 cm; bust / 4,5)", "unknown-sign: the sign `;` has no meaning here @ `;` -> max(3.5 cm, bust / 4.5)"),
        (
            "(bust + 12,5 cm) / 2",
            "kinds-differ: coordinates say a point only inside a piece or drawing @ `(bust + 12,5 cm)` -> (bust + 12.5 cm) / 2",
        ),
        ("(3 cm", "bracket-open: this bracket is never closed @ `(`"),
        ("3 cm)", "unexpected: `)` stands where an operator or the end of the formula is needed @ `)`"),
        ("3 +", "unexpected: the end stands where a number, a name or a bracket is needed @ ``"),
        ("gap(m, back.a)", "unexpected: the unit `m` stands where a number, a name or a bracket is needed @ `m`"),
        ("3 $ 4", "unknown-sign: the sign `$` has no meaning here @ `$`"),
        ("3 cmm", "unexpected: `cmm` stands where a unit or an operator is needed @ `cmm`"),
        ("1/0 in", "number-bad: 1/0 is not a number that can be read: nothing can be divided by zero @ `1`"),
        ("1e308", "unexpected: `e308` stands where a unit or an operator is needed @ `e308`"),
        (
            "lenght(back.hem)",
            "unknown-function: there is no function `lenght`; did you mean `length`? @ `lenght` -> length(back.hem)",
        ),
        ("gap(back.a)", "wrong-arguments: `gap(one, other)`: `other` is missing @ `gap(back.a)`"),
        ("gap(back.a, back.b, back.c)", "wrong-arguments: `gap(one, other)`: this is one too many @ `back.c`"),
        (
            "back.a + back.b",
            "kinds-differ: two points have no sum; `halfway(a, b)` is the point between them @ `back.a + back.b`",
        ),
        ("back.a + 3 cm", "kinds-differ: a point and a length cannot be added @ `back.a + 3 cm`"),
        (
            "20 deg * 3 cm",
            "kinds-differ: an angle times a length is not a length; for the length of an arc write `angle / 180 deg * pi * radius` @ `20 deg * 3 cm`",
        ),
        (
            "gap(back.a, front.tip)",
            "other-frame: `front.tip` lies on front, not on back; lay front on back by a placement first @ `front.tip`",
        ),
        ("(1 cm, 2 cm)", "kinds-differ: coordinates say a point only inside a piece or drawing @ `(1 cm, 2 cm)`"),
        ("length(bust)", "wrong-kind: this is a length; an edge is needed here @ `bust`"),
        (
            "round(3 cm)",
            "wrong-arguments: `round(value, [step])`: what has a unit is rounded to a step, as `round(length, 5 mm)` @ `round(3 cm)`",
        ),
        ("bust^0.5", "kinds-differ: a length can only be raised to a whole number @ `0.5`"),
        ("3 cm / (bust - 88 cm)", "not-finite: this has no finite result: it divides by zero @ `(bust - 88 cm)`"),
        ("sqrt(-1)", "not-finite: this has no finite result: there is no square root below zero @ `sqrt(-1)`"),
        ("back.hem.at(50 cm)", "off-the-edge: 50 cm is outside the edge, which is 26 cm long @ `back.hem.at(50 cm)`"),
        (
            "part(back.hem, back.a, back.c)",
            "not-on-edge: the point is 40 cm away from the edge @ `part(back.hem, back.a, back.c)`",
        ),
        (
            "cross(level(back.a), level(back.b))",
            "no-answer: the two lines are parallel and never cross @ `cross(level(back.a), level(back.b))`",
        ),
        (
            "heading(back.a, back.a)",
            "no-answer: two points lie in one place, so there is no direction between them @ `heading(back.a, back.a)`",
        ),
        (
            "part(back.hem, back.hem.at(1 cm), back.dart.tip.down(12 cm))",
            "inside-mouth: the place falls into the mouth of dart @ `part(back.hem, back.hem.at(1 cm), back.dart.tip.down(12 cm))`",
        ),
    ] {
        assert_eq!(ask(formula), Err(wanted.to_owned()), "{formula}");
    }
    // What is broken itself is told there, not here.
    assert_eq!(ask("wrong + 1 cm"), Err("nothing is told".to_owned()));
}

#[test]
fn kinds_that_do_not_go_together_are_told() {
    for (formula, wanted) in [
        ("bust > 3", "unit-missing: `3` has no unit here; did you mean `3 cm`? @ `3` -> bust > 3 cm"),
        ("30 <= slope", "unit-missing: `30` has no unit here; did you mean `30 deg`? @ `30` -> 30 deg <= slope"),
        ("bust < slope", "kinds-differ: a length cannot be compared with an angle @ `bust < slope`"),
        ("back.a * 2", "kinds-differ: a point and a plain number cannot be multiplied @ `back.a * 2`"),
        ("back.a / 2", "kinds-differ: a point cannot be divided by a plain number @ `back.a / 2`"),
        ("bust / slope", "kinds-differ: a length cannot be divided by an angle @ `bust / slope`"),
    ] {
        assert_eq!(ask(formula), Err(wanted.to_owned()), "{formula}");
    }
}

#[test]
fn a_local_name_that_is_global_too_offers_both() {
    let draft = file::read(&DRAFT.replace("a.right(30 cm)", "a.right(length(shoulder))")).unwrap().draft;
    let model = Engine::new().compute(&draft);
    let finding = model.findings.iter().find(|f| f.place.name == "back.b").unwrap();
    assert_eq!(
        message(finding, DisplayUnit::Cm),
        "`shoulder` could mean `back.shoulder` or `chart.shoulder`; write which one"
    );
}

#[test]
fn typed_signs_become_those_of_files() {
    for (typed, kept) in [
        ("3,5 cm", "3.5 cm"),
        ("gap(a, b) + 1,5 cm", "gap(a, b) + 1.5 cm"),
        ("(3,5)", "(3,5)"),
        ("3/8\"", "3/8 in"),
        ("1½\"", "1 1/2 in"),
        ("½ in", "1/2 in"),
        ("2×3·4", "2*3*4"),
        ("5 − 2", "5 - 2"),
        ("1-1/2 in", "1 1/2 in"),
        ("bust-1/2 in", "bust-1/2 in"),
        ("½,½", "1/2, 1/2"),
        ("3,½ cm", "3, 1/2 cm"),
        ("in_size(bust, \"46\")", "in_size(bust, \"46\")"),
    ] {
        assert_eq!(tidy(typed), kept, "{typed}");
    }
}
