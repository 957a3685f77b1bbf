//! Lengthening and shortening a piece at its line: what lies beyond moves as a block, in every size, and nothing else moves.

use std::collections::BTreeMap;
use std::fs;

use tracewheel::base::Severity;
use tracewheel::compute::{Engine, Model};
use tracewheel::document::Draft;
use tracewheel::file;
use tracewheel::proof;
use tracewheel::session::lengthen;

fn example(name: &str) -> Draft {
    let path = format!("{}/examples/{name}", env!("CARGO_MANIFEST_DIR"));
    file::read(&fs::read_to_string(path).unwrap()).unwrap().draft
}

fn read(body: &str) -> Draft {
    file::read(&format!("(format: \"tracewheel draft\", version: 0, {body})")).unwrap().draft
}

/// Corners and control points of everything drawn of a piece, by name, mm; points made for lengthening are left out.
fn places(draft: &Draft, model: &Model, piece: &str, case: usize) -> BTreeMap<String, (f64, f64)> {
    let frame = draft.pieces.iter().position(|p| p.name == piece).unwrap();
    let (plan, of) = (&model.plan.frames()[frame], &draft.pieces[frame]);
    let mut out = BTreeMap::new();
    for (point, node) in of.points.iter().zip(&plan.points).filter(|(p, _)| !p.name.contains("_before")) {
        let p = model.item(case, *node).unwrap().point().unwrap();
        out.insert(point.name.clone(), (p.x, p.y));
    }
    for (edge, node) in of.edges.iter().zip(&plan.edges) {
        let path = model.item(case, *node).unwrap().edge().unwrap().curve.to_path();
        for (i, element) in path.elements().iter().enumerate() {
            if let kurbo::PathEl::CurveTo(a, b, _) = element {
                out.insert(format!("{}:{i}a", edge.name), (a.x, a.y));
                out.insert(format!("{}:{i}b", edge.name), (b.x, b.y));
            }
        }
    }
    out
}

/// Each place that moved and each that did not, judged in all sizes: by exactly (right, down) or not at all.
fn block(before: &Draft, after: &Draft, piece: &str, (right, down): (f64, f64)) -> (Vec<String>, Vec<String>) {
    let (was, is) = (Engine::new().compute(before), Engine::new().compute(after));
    let (mut moved, mut stayed) = (Vec::new(), Vec::new());
    for case in 0..was.cases.len() {
        let (old, new) = (places(before, &was, piece, case), places(after, &is, piece, case));
        assert_eq!(old.keys().collect::<Vec<_>>(), new.keys().collect::<Vec<_>>());
        for (name, (x, y)) in old {
            let (dx, dy) = (new[&name].0 - x, new[&name].1 - y);
            if (dx - right).abs() < 1e-5 && (dy - down).abs() < 1e-5 {
                moved.push(name);
            } else {
                assert!(dx.abs() < 1e-5 && dy.abs() < 1e-5, "{piece}.{name} moves by {dx}, {dy}");
                stayed.push(name);
            }
        }
    }
    let tidy = |mut list: Vec<String>| {
        list.sort();
        list.dedup();
        list
    };
    (tidy(moved), tidy(stayed))
}

#[test]
fn a_skirt_is_shortened_below_its_hip_in_all_sizes() {
    let before = example("skirt-finished.ron");
    for by in ["-2 in", "7 cm"] {
        let mm = if by == "7 cm" { 70.0 } else { -50.8 };
        let mut after = before.clone();
        for piece in ["front", "back"] {
            lengthen(&mut after, piece, "lengthen_here", by).unwrap();
        }
        for piece in ["front", "back"] {
            let (moved, stayed) = block(&before, &after, piece, (0.0, mm));
            // The hem with both its handles; the waist, the curve of the hip and the handle that ran towards the hem stay.
            assert_eq!(moved, ["hem:1a", "hem:1b", "hem_centre", "hem_side"], "{piece} by {by}");
            assert_eq!(stayed.len(), 7, "{stayed:?}");
        }
        let model = Engine::new().compute(&after);
        let loud = proof::proof(&after, &model).into_iter().filter(|f| f.severity() != Severity::Note).count();
        assert_eq!(loud, 0);
        // A second time the amount is changed and nothing else.
        let told = lengthen(&mut after, "front", "lengthen_here", "0 cm").unwrap();
        assert_eq!(told, "front_lengthen_here_by is 0 cm now");
        lengthen(&mut after, "back", "lengthen_here", "0 cm").unwrap();
        let (_, all) = block(&before, &after, "front", (1.0, 1.0));
        assert_eq!(all.len(), 11);
    }
}

#[test]
fn a_bodice_with_darts_and_a_sleeve_move_as_blocks() {
    let before = example("bodice-finished.ron");
    let mut after = before.clone();
    let told = lengthen(&mut after, "back", "lengthen_here", "2 cm").unwrap();
    // All that stands above moves up, the handles of the armhole with it, or all that stands below moves down.
    let (moved, stayed) = block(&before, &after, "back", (0.0, -20.0));
    assert!(moved.contains(&"armhole:2b".to_owned()) && moved.contains(&"tip".to_owned()), "{moved:?}");
    assert!(stayed.contains(&"waist_side".to_owned()) && stayed.contains(&"waist:1a".to_owned()), "{stayed:?}");
    assert!(
        told.contains("notch waist_level of seam side is measured along an edge that runs over the line"),
        "{told}"
    );
    let mut sleeve = before.clone();
    lengthen(&mut sleeve, "sleeve", "lengthen_here", "2 cm").unwrap();
    let (moved, stayed) = block(&before, &sleeve, "sleeve", (0.0, 20.0));
    assert!(moved.contains(&"back_wrist".to_owned()) && moved.contains(&"front_wrist".to_owned()), "{moved:?}");
    assert!(stayed.contains(&"back_underarm".to_owned()), "{stayed:?}");
}

/// A box whose upper part leans to one side; its line lies at 30°.
const LEANING: &str = "chart: (girth: [\"S\", \"M\"], rows: [(name: \"bust\", by: [girth], cells: [(\"S\", \"80 cm\"), (\"M\", \"88 cm\")])]),
    pieces: [(name: \"panel\", points: [(name: \"a\", at: \"(0 cm, 0 cm)\"), (name: \"b\", at: \"a.right(bust / 4)\"), (name: \"c\", at: \"b.down(60 cm)\"),
    (name: \"d\", at: \"a.down(60 cm)\"), (name: \"middle\", at: \"on_way(a, c, 1/2)\"), (name: \"low\", at: \"on_way(d, c, 1/2)\")],
    edges: [(name: \"top\", from: \"a\", by: [straight(\"b\")]), (name: \"side\", from: \"b\", by: [straight(\"c\")]),
    (name: \"hem\", from: \"c\", by: [straight(\"d\")]), (name: \"centre\", from: \"d\", by: [straight(\"a\")])],
    lengthen: [(name: \"knee\", line: \"line((0 cm, 25 cm), (0 cm, 25 cm).polar(30°, 10 cm))\")])]";

#[test]
fn a_leaning_line_moves_the_block_square_to_it() {
    let before = read(LEANING);
    let mut after = before.clone();
    lengthen(&mut after, "panel", "knee", "4 cm").unwrap();
    let (sin, cos) = 30f64.to_radians().sin_cos();
    let (down, up) = ((-40.0 * sin, 40.0 * cos), (40.0 * sin, -40.0 * cos));
    let (one, other) = (block_or(&before, &after, down), block_or(&before, &after, up));
    let moved = one.or(other).unwrap();
    assert!(
        moved == ["a", "b", "middle"] || moved == ["c", "d", "low"] || moved == ["c", "d", "low", "middle"],
        "{moved:?}"
    );
}

#[test]
fn a_second_line_keeps_what_the_first_one_moved() {
    // Between the lines `a_third` hangs on both ends, `lifted` on the lower end alone: each line keeps that end as it was for another one.
    let lines = "points: [(name: \"a_third\", at: \"on_way(a, d, 35/60)\"), (name: \"lifted\", at: \"d.up(25 cm)\"), ";
    let two =
        "lengthen: [(name: \"knee\", line: \"level((0 cm, 30 cm))\"), (name: \"shin\", line: \"level((0 cm, 40 cm))\")";
    let one = "lengthen: [(name: \"knee\", line: \"line((0 cm, 25 cm), (0 cm, 25 cm).polar(30°, 10 cm))\")";
    let before = read(&LEANING.replace("points: [", lines).replace(one, two));
    let mut after = before.clone();
    for line in ["knee", "shin"] {
        lengthen(&mut after, "panel", line, "3 cm").unwrap();
    }
    let kept = |name: &str| after.pieces[0].points.iter().any(|p| p.name == name);
    assert!(kept("d_before") && kept("d_before_2"), "{:#?}", after.pieces[0].points);
    let (was, is) = (Engine::new().compute(&before), Engine::new().compute(&after));
    for case in 0..was.cases.len() {
        let (old, new) = (places(&before, &was, "panel", case), places(&after, &is, "panel", case));
        for (name, by) in
            [("a", 0.0), ("b", 0.0), ("a_third", 30.0), ("lifted", 30.0), ("c", 60.0), ("d", 60.0), ("low", 60.0)]
        {
            let moved = (new[name].0 - old[name].0, new[name].1 - old[name].1);
            assert!(moved.0.abs() < 1e-5 && (moved.1 - by).abs() < 1e-5, "{name} moves by {moved:?}");
        }
    }
}

#[test]
fn handles_of_a_curve_over_the_line_go_with_their_ends() {
    // Both handles lie above the line, which is level; the lower one belongs to the corner below it.
    let curved = "by: [curve(\"b.down(8 cm).right(3 cm)\", \"b.down(12 cm).right(2 cm)\", \"c\")]";
    let before = read(&LEANING.replace("by: [straight(\"c\")]", curved).replace("polar(30°, 10 cm)", "right(10 cm)"));
    let mut after = before.clone();
    lengthen(&mut after, "panel", "knee", "4 cm").unwrap();
    let (up, down) = (block_or(&before, &after, (0.0, -40.0)), block_or(&before, &after, (0.0, 40.0)));
    match (up, down) {
        (Some(moved), None) => assert_eq!(moved, ["a", "b", "side:1a"]),
        (None, Some(moved)) => assert_eq!(moved, ["c", "d", "low", "middle", "side:1b"]),
        other => panic!("{other:?}"),
    }
}

fn block_or(before: &Draft, after: &Draft, by: (f64, f64)) -> Option<Vec<String>> {
    let found = std::panic::catch_unwind(|| block(before, after, "panel", by).0).ok()?;
    (!found.is_empty()).then_some(found)
}

#[test]
fn what_cannot_move_as_a_block_is_told_and_nothing_changes() {
    let refused = |text: &str, line: &str, by: &str| {
        let before = read(text);
        let mut draft = before.clone();
        let said = lengthen(&mut draft, "panel", line, by).unwrap_err().to_string();
        assert_eq!(draft, before);
        said
    };
    assert!(refused(LEANING, "hip", "2 cm").contains("no line hip"));
    assert!(refused(LEANING, "kneee", "2 cm").contains("did you mean knee?"));
    assert!(refused(LEANING, "knee", "2").contains("gives no length in every size"));
    assert!(refused(LEANING, "knee", "2 cm +").contains("gives no length in every size"));
    let some = LEANING.replace("b.down(60 cm)", "b.down(bust - 45 cm)");
    assert!(refused(&some, "knee", "2 cm").contains("in some sizes only"), "{}", refused(&some, "knee", "2 cm"));
    let level = LEANING.replace("polar(30°, 10 cm)", "right(10 cm)");
    assert!(
        refused(&level, "knee", "-40 cm").contains("only 25 cm lies beyond")
            || refused(&level, "knee", "-40 cm").contains("only 5 cm lies beyond"),
        "{}",
        refused(&level, "knee", "-40 cm")
    );
    let off = LEANING.replace("(0 cm, 25 cm), (0 cm, 25 cm)", "(0 cm, 125 cm), (0 cm, 125 cm)");
    assert!(refused(&off, "knee", "2 cm").contains("nothing of panel lies beyond"));
    let round = "by: [arc(centre: \"(bust / 4, 30 cm)\", turn: clockwise, to: \"c\")]";
    let arc = LEANING.replace("by: [straight(\"c\")]", round);
    assert!(refused(&arc, "knee", "2 cm").contains("the arc of panel.side runs over the line knee"));
    // With both ends taken from elsewhere neither side can move: their edges would not follow.
    let taken = LEANING.replace("polar(30°, 10 cm)", "right(10 cm)");
    let head = "by: [taken(curve: \"between((0 cm, 0 cm), (bust / 4, 0 cm))\", to: \"b\")]";
    let taken = taken.replace("by: [straight(\"b\")]", head);
    let foot = "by: [taken(curve: \"between((bust / 4, 60 cm), (0 cm, 60 cm))\", to: \"d\")]";
    let one = taken.replace("by: [straight(\"d\")]", foot);
    assert!(refused(&one, "knee", "2 cm").contains("would have no shape"), "{}", refused(&one, "knee", "2 cm"));
    let mut free = read(&taken);
    lengthen(&mut free, "panel", "knee", "2 cm").unwrap();
    // What hangs on a length of an edge that is cut through cannot be told as it was.
    let round = LEANING.replace("on_way(d, c, 1/2)", "d.right(length(centre) / 10)");
    assert!(refused(&round, "knee", "2 cm").contains("low"), "{}", refused(&round, "knee", "2 cm"));
}

/// The outline of a derived piece stands in its block: only its own marks would move.
#[test]
fn a_derived_piece_is_lengthened_at_its_block() {
    let before = example("work-smock.ron");
    let mut draft = before.clone();
    let told = lengthen(&mut draft, "front", "lengthen_here", "2 cm").unwrap_err().to_string();
    assert!(told.contains("front is made of front_block by steps") && told.contains("lengthen that"), "{told}");
    assert!(draft == before);
}

#[test]
fn the_command_writes_the_draft_and_says_what_it_did() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("skirt.ron");
    fs::copy(format!("{}/examples/skirt-finished.ron", env!("CARGO_MANIFEST_DIR")), &path).unwrap();
    let run = |by: &str| {
        let mut call = crate::program();
        call.arg("lengthen").arg(&path).args(["back", "lengthen_here", by]).output().unwrap()
    };
    let out = run("-2 in");
    assert!(out.status.success());
    assert!(
        String::from_utf8_lossy(&out.stderr)
            .contains("back is -2 in longer at lengthen_here: back_lengthen_here_by, written into 6 formulas")
    );
    let text = fs::read_to_string(&path).unwrap();
    assert!(text.contains("(name: \"back_lengthen_here_by\", is: \"-2 in\")"));
    assert_eq!(run("two").status.code(), Some(1));
    assert_eq!(fs::read_to_string(&path).unwrap(), text);
    assert!(run("3 cm").status.success());
    assert_eq!(fs::read_to_string(&path).unwrap(), text.replace("-2 in", "3 cm"));
}
