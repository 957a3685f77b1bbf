//! Several slashes in one step, and slashes and cuts within one edge: closed forms of plane geometry, in every size.

use std::f64::consts::PI;

use tracewheel::compute::Engine;
use tracewheel::document::Draft;
use tracewheel::file;

use crate::derived::{SIZES, close, draft, told, values};

/// The block without its dart, and a piece made of that by one step.
fn one_step(step: &str) -> Draft {
    draft(&format!(
        r#"(name: "plain", of: "block", steps: [(name: "no_dart", does: leave_out(["bust"]))]),
        (name: "s", of: "plain", steps: [(name: "f", does: {step})])"#
    ))
}

fn several(count: u32, rest: &str) -> Draft {
    one_step(&format!(r#"spread(from: "hem", to: "top", count: {count}, stays: "centre", {rest})"#))
}

/// Hinged at the top the hem grows by just the amount and the top not at all; the more slashes, the nearer to a ring sector.
#[test]
fn a_hem_fans_out_to_a_ring_sector() {
    for (size, w) in SIZES {
        let mut last = f64::INFINITY;
        for n in [1, 2, 4, 8, 16] {
            let [hem, top, area] =
                values(&several(n, r#"by: "6 cm""#), size, ["length(s.hem)", "length(s.top)", "area(s)"]);
            close(hem, w + 60.0, 1e-9, "hem");
            close(top, w, 1e-9, "top");
            // Gores of equal legs, 300 mm long: base times height over two.
            let base = 60.0 / f64::from(n);
            let gores = f64::from(n) * base * (300.0 * 300.0 - base * base / 4.0).sqrt() / 2.0;
            close(area, w * 300.0 + gores, 1e-6, "area");
            // A ring sector of height h whose outer arc is longer than its inner one by d: h times their mean.
            let off = (w + 30.0) * 300.0 - area;
            assert!(off > 0.0 && off < last / 3.9, "{n}: {off} after {last}");
            last = off;
        }
    }
}

#[test]
fn a_total_angle_is_shared() {
    let (n, total) = (5u32, 50f64.to_radians());
    for (size, w) in SIZES {
        let [hem, turned] = values(
            &several(n, r#"angle: "50 deg""#),
            size,
            ["length(s.hem)", "abs(heading(s.ne, s.se) - heading(block.ne, block.se))"],
        );
        let step = total / f64::from(n);
        close(hem, w + f64::from(n) * 600.0 * (step / 2.0).sin(), 1e-9, "hem");
        close(turned, total, 1e-9, "the side");
    }
}

/// In parallel both edges grow by the amount, the area by amount x height.
#[test]
fn a_rectangle_is_widened_for_gathers() {
    for (size, w) in SIZES {
        for n in [1, 3, 12] {
            let [hem, top, area, side] = values(
                &several(n, r#"by: "6 cm", parallel: true"#),
                size,
                ["length(s.hem)", "length(s.top)", "area(s)", "s.ne.x - block.ne.x"],
            );
            close(hem, w + 60.0, 1e-9, "hem");
            close(top, w + 60.0, 1e-9, "top");
            close(area, (w + 60.0) * 300.0, 1e-9 * area, "area");
            close(side, 60.0, 1e-9, "side");
        }
    }
}

/// Between two places of each edge; the amount is that of the hem before the first slash, whatever the slashes do to it.
#[test]
fn slashes_lie_between_two_places() {
    let step = r#"spread(from: "hem", from_at: "2 cm", from_until: "1/2", to: "top", to_at: "length(top) - 4 cm", to_until: "1/2", count: 3, by: "length(hem) / 10", stays: "centre")"#;
    for (size, w) in SIZES {
        let [hem, area] = values(&one_step(step), size, ["length(s.hem)", "area(s)"]);
        close(hem, 1.1 * w, 1e-9, "hem");
        // The hem runs from the side, the top towards it.
        let places = |from: f64, i: f64| from + (w / 2.0 - from) * i / 4.0;
        let gore = |i: f64| {
            let slash = f64::hypot(300.0, places(20.0, i) - places(40.0, i));
            let base = w / 30.0;
            base * (slash * slash - base * base / 4.0).sqrt() / 2.0
        };
        close(area, w * 300.0 + gore(1.0) + gore(2.0) + gore(3.0), 1e-6, "area");
    }
}

#[test]
fn slashes_may_end_at_one_corner_and_be_for_one_person() {
    let step = r#"spread(from: "hem", to: "nw", count: 4, by: "4 cm", stays: "centre")"#;
    for (size, w) in SIZES {
        let [hem, area, top] = values(&one_step(step), size, ["length(s.hem)", "area(s)", "length(s.top)"]);
        close(hem, w + 40.0, 1e-9, "hem");
        close(top, w, 1e-9, "top");
        let gores = (1..=4).map(|i| {
            let slash = f64::hypot(300.0, w * f64::from(i) / 5.0);
            10.0 * (slash * slash - 25.0).sqrt() / 2.0
        });
        close(area, w * 300.0 + gores.sum::<f64>(), 1e-6, "area");
    }
    let hers = draft(
        r#"(name: "s", of: "block", steps: [(name: "f", person: "Ada", does: spread(from: "hem", to: "side", to_at: "1/2", to_until: "1/4", count: 4, by: "6 cm", stays: "centre"))])"#,
    );
    for (size, w) in SIZES {
        let [hem] = values(&hers, size, ["length(s.hem)"]);
        close(hem, if size == "Ada" { w + 60.0 } else { w }, 1e-9, size);
    }
}

/// A half circle cut out of the hem, a quarter of it from each end: both parts are the whole; what is called how hangs on no number.
#[test]
fn a_cut_within_one_edge() {
    for (from, to) in [("1/4", "3/4"), ("3/4", "1/4")] {
        let cut = |keep: &str| {
            format!(
                r#"cut(from: "hem", from_at: "{from}", to: "hem", to_at: "{to}", along: "arc(hem.at(1/2), hem.at(3/4), hem.at(1/4), turn: clockwise)", keep: "{keep}", makes: "scoop", start: "u", end: "v", rest: "hem_end")"#
            )
        };
        for (size, w) in SIZES {
            let half_disc = PI * w * w / 32.0;
            let [area, hem, rest, scoop, start, end, allowed] = values(
                &one_step(&cut("top")),
                size,
                [
                    "area(s)",
                    "length(s.hem)",
                    "length(s.hem_end)",
                    "length(s.scoop)",
                    "s.se.x - s.u.x",
                    "s.v.x - s.sw.x",
                    "s.hole.x",
                ]
                .map(|f| if f == "s.hole.x" { "s.tip.x" } else { f }),
            );
            close(area, w * 300.0 - half_disc, 1e-3, "area");
            for (have, what) in [(hem, "hem"), (rest, "its last stretch"), (start, "start"), (end, "end")] {
                close(have, w / 4.0, 1e-9, what);
            }
            close(scoop, PI * w / 4.0, 1e-3, "scoop");
            close(allowed, 100.0, 1e-9, "what is inside stays");
            let [area, hem, scoop] =
                values(&one_step(&cut("hem")), size, ["area(s)", "length(s.hem)", "length(s.scoop)"]);
            close(area, half_disc, 1e-3, "what is cut out");
            close(hem, w / 2.0, 1e-9, "hem of it");
            close(scoop, PI * w / 4.0, 1e-3, "scoop of it");
        }
        // Both stretches of the hem have its allowance.
        let model = Engine::new().compute(&one_step(&cut("top")));
        let piece = model.draft.pieces.iter().find(|p| p.name == "s").unwrap();
        let allowed: Vec<&str> = piece.allowances.iter().map(|a| a.edge.as_str()).collect();
        assert_eq!(allowed, ["hem", "hem_end"]);
    }
}

/// The block with a hem that is let down by 10 cm: along the side, across, and up again.
fn deep(step: &str) -> Draft {
    draft(&format!(
        r#"(name: "plain", of: "block", steps: [(name: "no_dart", does: leave_out(["bust"])), (name: "low", does: draw(points: [(name: "a", at: "se.down(10 cm)"), (name: "b", at: "sw.down(10 cm)")])),
            (name: "deep", does: redraw(edge: "hem", by: [straight("a"), straight("b"), straight("sw")]))]),
        (name: "s", of: "plain", steps: [(name: "f", does: spread({step}))])"#
    ))
}

#[test]
fn a_slash_within_one_edge() {
    let ends = [("5 cm", "length(hem) - 5 cm"), ("length(hem) - 5 cm", "5 cm")];
    for (from, to) in ends {
        let slash =
            |rest: &str| deep(&format!(r#"from: "hem", from_at: "{from}", to: "hem", to_at: "{to}", by: {rest}"#));
        for (size, w) in SIZES {
            let formulas = ["area(s)", "length(s.hem)", "gap(s.a, plain_a) ", "s.nw.y", "length(s.top)"]
                .map(|f| if f.starts_with("gap") { "abs(s.a.x - plain.a.x) + abs(s.a.y - plain.a.y)" } else { f });
            let whole = 400.0 * w;
            let gore = 40.0 * (w * w - 400.0).sqrt() / 2.0;
            // Hinged at its end: what lies below it is turned, or all that lies above.
            for (stays, below_moves) in [("top", true), ("hem", false)] {
                let [area, hem, moved, up, top] =
                    values(&slash(&format!(r#""4 cm", stays: "{stays}""#)), size, formulas);
                close(area, whole + gore, 1e-6, "area");
                close(hem, 200.0 + w + 40.0, 1e-9, "hem");
                close(top, w, 1e-9, "top");
                assert_eq!((moved > 1.0, up.abs() > 1.0), (below_moves, !below_moves), "{stays}: {moved} {up}");
            }
            // In parallel, opened and lapped.
            for by in [40.0, -40.0] {
                let [area, hem, moved, up, _] =
                    values(&slash(&format!(r#""{} mm", parallel: true, stays: "top""#, by)), size, formulas);
                close(area, whole + by * w, 1e-6, "area");
                close(hem, 200.0 + w + 2.0 * by, 1e-9, "hem");
                close(moved, by.abs(), 1e-9, "what lies below");
                close(up, 0.0, 1e-9, "what lies above");
            }
            let [area, up] = values(&slash(r#""-4 cm", parallel: true, stays: "hem""#), size, ["area(s)", "s.nw.y"]);
            close(area, whole - 40.0 * w, 1e-6, "area, lapped from above");
            close(up, 40.0, 1e-9, "what lies above");
            // As a dart the hem is sewn as long as it was.
            let [intake, sewn, flat] = values(
                &slash(r#""4 cm", stays: "top", opening: dart, makes: "pinch""#),
                size,
                ["s.pinch.intake", "length(s.hem)", "flat_length(s.hem)"],
            );
            close(intake, 40.0, 1e-9, "intake");
            close(flat - sewn, 40.0, 1e-9, "what the dart takes");
        }
    }
}

#[test]
fn what_cannot_be_slashed_is_told() {
    for (step, said) in [
        (
            r#"cut(from: "hem", from_at: "1/4", to: "hem", to_at: "3/4", keep: "top", makes: "m", start: "u", end: "v")"#,
            "how its last stretch is called",
        ),
        (r#"spread(from: "hem", to: "hem", count: 2, by: "1 cm", stays: "top")"#, "from one edge to another"),
        (r#"spread(from: "hem", to: "top", count: 61, by: "1 cm", stays: "centre")"#, "61 slashes are too many"),
        (
            r#"spread(from: "hem", to: "top", count: 2, by: "1 cm", stays: "centre", opening: dart, makes: "d")"#,
            "a single one",
        ),
        (r#"spread(from: "hem", to: "top", count: 2, stays: "centre")"#, "by how much it is spread"),
        (r#"spread(from: "hem", to: "top", count: 2, by: "1 cm", stays: "hem")"#, "hem is cut itself"),
    ] {
        let told = told(&one_step(step));
        assert_eq!(told.len(), 1, "{told:#?}");
        assert!(told[0].0 == "s, step f" && told[0].1.contains(said), "{told:?}");
    }
    // A place that is not there is said of the formula as it was typed.
    let draft = several(2, r#"by: "1 cm", from_at: "70 cm""#);
    let model = Engine::new().compute(&draft);
    assert!(
        model.findings.iter().any(|f| f.place.name == "s, step f" && f.formula == "70 cm"),
        "{:#?}",
        model.findings
    );
}

/// The two ways of computing an edit give the same, bit for bit.
#[test]
fn an_edit_of_several_slashes_is_what_computing_from_nothing_gives() {
    let base = file::write(&several(3, r#"by: "6 cm""#));
    let mut engine = Engine::new();
    for (from, to) in
        [("", ""), ("\"6 cm\"", "\"7 cm\""), ("count: 3", "count: 4"), ("\"24 cm\"", "\"25 cm\""), ("", "")]
    {
        let text = if from.is_empty() { base.clone() } else { base.replace(from, to) };
        assert!(from.is_empty() || text != base, "{from}");
        let draft = file::read(&text).unwrap().draft;
        let (quick, whole) = (engine.compute(&draft), Engine::new().compute(&draft));
        assert_eq!(quick.findings, whole.findings, "{from}");
        for (a, b) in quick.cases.iter().zip(&whole.cases) {
            assert_eq!(a.slots, b.slots, "{from}");
        }
    }
}
