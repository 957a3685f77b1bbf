//! Edges of derived pieces in outlines that are not the usual four: a triangle, a fold that only one cut has, an edge that is round.

use tracewheel::compute::Engine;

use crate::derived::{SIZES, close, draft, told, values};

/// A right angle with legs of `w` and 30 cm; its long side comes nearer by 1 cm, so it is a smaller triangle of the same angles.
#[test]
fn an_edge_of_a_triangle_moves_between_the_other_two() {
    let pieces = r#"(name: "sail", points: [(name: "a", at: "(0 cm, 0 cm)"), (name: "b", at: "a.right(w)"), (name: "c", at: "a.down(30 cm)")],
          edges: [(name: "top", from: "a", by: [straight("b")]), (name: "long", from: "b", by: [straight("c")]), (name: "back", from: "c", by: [straight("a")])]),
        (name: "low", of: "sail", steps: [(name: "s", does: move_edge(edge: "long", by: "1 cm"))])"#;
    for (size, w) in SIZES {
        let [whole, low] = values(&draft(pieces), size, ["area(sail)", "area(low)"]);
        let high = w * 300.0 / w.hypot(300.0);
        close(whole, w * 300.0 / 2.0, 1e-6, "whole");
        close(low, whole * ((high - 10.0) / high).powi(2), 1e-6, "low");
    }
}

/// Where one cut lies on a fold and another does not, the folded edge stays where it is.
#[test]
fn an_edge_on_the_fold_of_one_cut_stays_at_the_stitch_line() {
    let pieces = r#"(name: "half", points: [(name: "a", at: "(0 cm, 0 cm)"), (name: "b", at: "a.right(w)"), (name: "c", at: "b.down(30 cm)"), (name: "d", at: "a.down(30 cm)")],
          edges: [(name: "top", from: "a", by: [straight("b")]), (name: "side", from: "b", by: [straight("c")]), (name: "hem", from: "c", by: [straight("d")]),
            (name: "middle", from: "d", by: [straight("a")])],
          allowances: [(edge: "top", width: "1 cm"), (edge: "side", width: "1.5 cm"), (edge: "hem", width: "2 cm"), (edge: "middle", width: "1 cm")],
          cuts: [(material: "cloth", count: 1, on_fold: "middle"), (material: "cloth", count: 2)]),
        (name: "made", of: "half", steps: [(name: "s", does: to_cut_line(edges: []))])"#;
    for (size, w) in SIZES {
        let [area, left] = values(&draft(pieces), size, ["area(made)", "made.a.x"]);
        close(area, (w + 15.0) * (300.0 + 10.0 + 20.0), 1e-6, "area");
        close(left, 0.0, 1e-9, "fold");
    }
}

/// A facing turned in along a round edge would not lie flat.
#[test]
fn a_strip_along_a_round_edge_is_not_mirrored() {
    let pieces = r#"(name: "p", of: "block", steps: [
        (name: "round", does: redraw(edge: "hem", by: [curve("se.down(2 cm).left(w / 4)", "sw.down(2 cm).right(w / 4)", "sw")])),
        (name: "faced", does: add_strip(edge: "hem", width: "3 cm", ends: mirrored, makes: "outer", start: "upper", end: "lower"))])"#;
    let told = told(&draft(pieces));
    assert_eq!(told.len(), 1, "{told:#?}");
    assert_eq!(told[0].0, "p, step faced");
    assert!(
        told[0].1.contains("edge hem is not straight: what is turned in there cannot be mirrored"),
        "{}",
        told[0].1
    );
}

/// What a step does elsewhere leaves the fold of a cut where it is; a step that takes the edge away takes its fold along.
#[test]
fn a_cut_stays_on_the_fold_of_its_edge() {
    let half = r#"(name: "half", points: [(name: "a", at: "(0 cm, 0 cm)"), (name: "b", at: "a.right(w)"), (name: "c", at: "b.down(30 cm)"), (name: "d", at: "a.down(30 cm)")],
          edges: [(name: "top", from: "a", by: [straight("b")]), (name: "side", from: "b", by: [straight("c")]), (name: "hem", from: "c", by: [straight("d")]),
            (name: "middle", from: "d", by: [straight("a")])],
          cuts: [(material: "cloth", count: 1, on_fold: "middle")]),"#;
    for (step, fold) in
        [(r#"move_edge(edge: "hem", by: "-2 cm")"#, "middle"), (r#"unfold(over: "middle", prefix: "l_")"#, "")]
    {
        let pieces = format!(r#"{half} (name: "made", of: "half", steps: [(name: "s", does: {step})])"#);
        let model = Engine::new().compute(&draft(&pieces));
        assert!(model.findings.is_empty(), "{:#?}", model.findings);
        let made = model.draft.pieces.iter().find(|p| p.name == "made").unwrap();
        assert_eq!(made.cuts[0].on_fold, fold, "{step}");
    }
}

/// The side runs into a hem that bulges out below it, so that its cut line, run on, meets that of the hem twice: the corner is where the
/// edges have theirs.
#[test]
fn a_cut_line_that_meets_its_neighbour_twice_turns_at_the_corner() {
    let pieces = r#"(name: "half", points: [(name: "a", at: "(0 cm, 0 cm)"), (name: "b", at: "a.right(w)"), (name: "c", at: "b.down(30 cm)"), (name: "d", at: "a.down(30 cm)")],
          edges: [(name: "top", from: "a", by: [straight("b")]), (name: "side", from: "b", by: [straight("c")]),
            (name: "hem", from: "c", by: [curve("c.right(20 cm).down(5 cm)", "d.down(10 cm)", "d")]), (name: "middle", from: "d", by: [straight("a")])],
          allowances: [(edge: "side", width: "1 cm"), (edge: "hem", width: "1 cm")]),
        (name: "made", of: "half", steps: [(name: "s", does: to_cut_line(edges: ["side", "hem"]))])"#;
    assert_eq!(told(&draft(pieces)), []);
    for (size, w) in SIZES {
        let [x, y] = values(&draft(pieces), size, ["made.c.x", "made.c.y"]);
        // On the side's line 1 cm out; on a line 1 cm above one that starts out at (20, 5): both within the curve's bend there.
        close(x, w + 10.0, 1e-6, "side");
        let straight = 300.0 + 10.0 * 5.0 / 20.0 - 10.0 * 425f64.sqrt() / 20.0;
        close(y, straight, 1.0, "hem");
    }
}
