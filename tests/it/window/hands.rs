//! Pulling edges, several points at once, moving by typed lengths, pieces on the table, curvature, sizes over each other.

use egui::{Key, Modifiers, vec2};

use super::stage::Stage;

const CTRL_SHIFT: Modifiers = Modifiers { alt: false, ctrl: true, shift: true, mac_cmd: false, command: true };

fn mm(value: &serde_json::Value, formula: &str, size: &str) -> f64 {
    value[formula][size].as_f64().unwrap_or_else(|| panic!("{formula} in {size}: {value}"))
}

/// A click with Shift.
fn also(stage: &mut Stage, name: &str) {
    let at = stage.rect(name).center();
    stage.modifiers_held(Modifiers::SHIFT);
    stage.click_at(at);
    stage.modifiers_held(Modifiers::NONE);
}

#[test]
fn a_curve_is_pulled_at_its_middle_and_follows_the_pointer() {
    let mut stage = Stage::on_text(BENT);
    let before = stage.saved();
    stage.click("piece panel");
    let (p, j) = (stage.rect("panel.p").center(), stage.rect("panel.j").center());
    let scale = p.distance(j) / 100.0f32.hypot(50.0);
    stage.click("edge panel.top");
    // The cubic (0, 0), (4, 0), (9, 4), (10, 5) at half its way: (49/8, 17/8) cm.
    let at = p + vec2(61.25, 21.25) * scale;
    stage.pull_from(at, vec2(12.0, -30.0) * scale);
    stage.button(at + vec2(12.0, -30.0) * scale, false);
    stage.rest();
    let text = stage.saved();
    // At half the way both handles count 3/8: by (12, -30) mm the place moves if each moves by 4/3 of that, (16, -40) mm.
    let curve = text.split("curve(\"(").nth(1).unwrap();
    let numbers: Vec<f64> = curve
        .split(|c: char| !(c.is_ascii_digit() || c == '.' || c == '-'))
        .filter_map(|n| n.parse().ok())
        .take(4)
        .collect();
    for (is, meant) in numbers.iter().zip([4.0 + 1.6, -4.0, 9.0 + 1.6, 4.0 - 4.0]) {
        assert!(
            (is - meant).abs() < 0.06,
            "{numbers:?}: {p:?} {j:?} {scale} {at:?} {:?}",
            stage.rect("the pieces in size S")
        );
    }
    stage.ctrl(Key::Z);
    assert!(stage.says("undone: pull edge panel.top"), "{}", stage.all());
    assert_eq!(stage.saved(), before);
    // In the block the handles of the neckline keep their directions: it gives way as far as its formulas let it.
    let mut block = Stage::on("bodice-sleeve.ron");
    block.click("piece front");
    block.click("edge front.neckline");
    let (a, b) = (
        block.rect("front.neckline, handle leaving centre_neck"),
        block.rect("front.neckline, handle arriving at neck_point"),
    );
    let middle =
        (block.rect("front.centre_neck").center().to_vec2() + block.rect("front.neck_point").center().to_vec2()) / 8.0
            + (a.center().to_vec2() + b.center().to_vec2()) * 3.0 / 8.0;
    block.pull_from(middle.to_pos2(), vec2(9.0, 9.0));
    block.button(middle.to_pos2() + vec2(9.0, 9.0), false);
    block.rest();
    let moved =
        [("front.neckline, handle leaving centre_neck", a), ("front.neckline, handle arriving at neck_point", b)]
            .map(|(name, was)| block.rect(name).center() - was.center());
    assert!(moved.iter().all(|m| m.length() > 2.0), "{moved:?}");
}

const PANEL: &str = "(format: \"tracewheel draft\", version: 0, title: \"Panel\", chart: (girth: [\"S\", \"M\"], base: \"S\", rows: [(name: \"bust\", by: [girth], cells: [(\"S\", \"80 cm\"), (\"M\", \"88 cm\")])]),
    pieces: [(name: \"panel\", points: [(name: \"p\", at: \"(0 cm, 0 cm)\"), (name: \"q\", at: \"(20 cm, 0 cm)\"), (name: \"r\", at: \"(20 cm, 30 cm)\"), (name: \"s\", at: \"(0 cm, 30 cm)\")],
    edges: [(name: \"top\", from: \"p\", by: [straight(\"q\")]), (name: \"side\", from: \"q\", by: [straight(\"r\")]), (name: \"hem\", from: \"r\", by: [straight(\"s\")]), (name: \"centre\", from: \"s\", by: [straight(\"p\")])]),
    (name: \"second\", points: [(name: \"a\", at: \"(0 cm, 0 cm)\"), (name: \"b\", at: \"(10 cm, 0 cm)\"), (name: \"c\", at: \"(10 cm, 30 cm)\")],
    edges: [(name: \"top\", from: \"a\", by: [straight(\"b\")]), (name: \"side\", from: \"b\", by: [straight(\"c\")]), (name: \"slant\", from: \"c\", by: [straight(\"a\")])])])";

#[test]
fn a_straight_edge_takes_both_its_ends_along() {
    let mut stage = Stage::on_text(PANEL);
    stage.click("piece panel");
    stage.click("edge panel.side");
    let (q, r) = (stage.rect("panel.q").center(), stage.rect("panel.r").center());
    let scale = q.distance(r) / 300.0;
    let middle = q + (r - q) / 2.0;
    stage.pull_from(middle, vec2(20.0 * scale, 0.0));
    stage.button(middle + vec2(20.0 * scale, 0.0), false);
    stage.rest();
    stage.saved();
    let told = stage.measure(&["panel.q.x", "panel.r.x", "panel.q.y", "panel.r.y"]);
    assert!((mm(&told, "panel.q.x", "S") - 220.0).abs() < 1.0, "{told} {}", stage.all());
    assert!((mm(&told, "panel.q.x", "S") - mm(&told, "panel.r.x", "S")).abs() < 1e-9, "{told}");
    assert!(mm(&told, "panel.q.y", "S").abs() < 1.0 && (mm(&told, "panel.r.y", "S") - 300.0).abs() < 1.0);
}

#[test]
fn several_points_are_pulled_and_pushed_as_one() {
    let mut stage = Stage::on_text(PANEL);
    stage.click("piece panel");
    stage.click("panel.r");
    also(&mut stage, "panel.s");
    let scale = stage.rect("panel.p").center().distance(stage.rect("panel.q").center()) / 200.0;
    stage.pull("panel.r", vec2(0.0, 40.0 * scale));
    stage.saved();
    let told = stage.measure(&["panel.r.y", "panel.s.y", "panel.q.y"]);
    let down = mm(&told, "panel.r.y", "S");
    assert!((down - 340.0).abs() < 1.0 && (mm(&told, "panel.s.y", "S") - down).abs() < 1e-9, "{told}");
    assert_eq!(mm(&told, "panel.q.y", "S"), 0.0);
    stage.ctrl(Key::Z);
    assert!(stage.says("undone: pull 2 points"), "{}", stage.all());
    // A key pushes them all; another click with Shift lets one of them go.
    stage.tab_to("panel.r");
    stage.press(Key::ArrowDown);
    stage.saved();
    let told = stage.measure(&["panel.r.y", "panel.s.y"]);
    assert_eq!((mm(&told, "panel.r.y", "S"), mm(&told, "panel.s.y", "S")), (301.0, 301.0));
    also(&mut stage, "panel.s");
    stage.tab_to("panel.r");
    stage.press(Key::ArrowDown);
    stage.saved();
    let told = stage.measure(&["panel.r.y", "panel.s.y"]);
    assert_eq!((mm(&told, "panel.r.y", "S"), mm(&told, "panel.s.y", "S")), (302.0, 301.0));
}

#[test]
fn chosen_points_are_moved_by_typed_lengths() {
    let mut stage = Stage::on_text(PANEL);
    stage.click("piece panel");
    stage.click("panel.q");
    also(&mut stage, "panel.r");
    stage.press(Key::M);
    stage.answer(&[("right", "wide")], "Move");
    assert!(stage.says("a length such as 1.5 cm or -3/8 in is needed"), "{}", stage.all());
    stage.answer(&[("right", "-1 1/2 in"), ("down", "0.5")], "Move");
    stage.saved();
    let told = stage.measure(&["panel.q.x", "panel.r.x", "panel.q.y", "panel.r.y"]);
    let places = ["panel.q.x", "panel.r.x", "panel.q.y", "panel.r.y"].map(|f| mm(&told, f, "M"));
    for (is, meant) in places.iter().zip([200.0 - 38.1, 200.0 - 38.1, 5.0, 305.0]) {
        assert!((is - meant).abs() < 0.06, "{places:?}");
    }
    // Without a point there is nothing to move.
    stage.click("piece second");
    stage.press(Key::M);
    assert!(stage.says("Move by: choose a point first"), "{}", stage.all());
}

#[test]
fn a_piece_lies_on_the_table_where_it_was_put() {
    let mut stage = Stage::on_text(PANEL);
    let before = stage.saved();
    stage.click("piece second");
    let (was, other) = (stage.rect("second.a"), stage.rect("piece panel, size S"));
    stage.pull("move second on the table", vec2(60.0, 45.0));
    let is = stage.rect("second.a");
    assert!((is.center() - was.center() - vec2(60.0, 45.0)).length() < 2.0, "{was:?} {is:?}");
    assert_eq!(stage.rect("piece panel, size S"), other, "the others stay");
    let text = stage.saved();
    assert!(text.contains("table: [(piece: \"second\", x: \""), "{text}");
    // It lies there when it is opened again, and computing knows nothing of it.
    let mut again = Stage::on_text(&text);
    again.click("piece second");
    // From the corner of the panel, in widths of it.
    let lies = |stage: &Stage| {
        let (corner, side) = (stage.rect("second.a").center(), stage.rect("piece panel, size S"));
        (corner - side.left_top()) / side.width()
    };
    let (there, here) = (lies(&again), lies(&stage));
    assert!((there - here).length() < 0.02, "{there:?} {here:?}");
    stage.ctrl(Key::Z);
    assert!((stage.rect("second.a").center() - was.center()).length() < 2.0);
    assert_eq!(stage.saved(), before);
    stage.key(CTRL_SHIFT, Key::Z);
    stage.find_and_do("Arrange the table anew");
    assert_eq!(stage.saved(), before);
}

#[test]
fn curvature_tells_radius_and_joints_and_a_joint_is_made_smooth() {
    let mut stage = Stage::on("bodice-sleeve.ron");
    stage.click("piece front");
    stage.click("edge front.armhole");
    stage.press(Key::C);
    assert!(stage.says("curvature of armhole: tightest radius"), "{}", stage.all());
    let told = |stage: &Stage| {
        stage.told.iter().find(|t| t.name.starts_with("curvature of armhole")).map(|t| t.name.clone()).unwrap()
    };
    // Its ends tell the corners that it makes; the block's armhole meets the shoulder and the side square.
    assert!(stage.says("start of armhole: 90.0° at the corner"), "{}", stage.all());
    assert!(stage.says("end of armhole: 90.0° at the corner"), "{}", stage.all());
    // The radius is that of the language at the place that bends most: the comb's longest line.
    let radius: f64 = told(&stage).split("radius ").nth(1).unwrap().split(' ').next().unwrap().parse().unwrap();
    let asked: Vec<String> = (1..40).map(|i| format!("bend(front.armhole, {i}/40)")).collect();
    let bends = stage.measure(&asked.iter().map(String::as_str).collect::<Vec<_>>());
    let most = asked.iter().map(|f| mm(&bends, f, "88").abs()).fold(0.0, f64::max);
    assert!((radius * 10.0 * most - 1.0).abs() < 0.1, "{radius} cm against {} mm", 1.0 / most);
    stage.press(Key::C);
    assert!(!stage.says("curvature of"));
}

/// A line of two curves that meet at a corner of 45°.
const BENT: &str = "(format: \"tracewheel draft\", version: 0, chart: (girth: [\"S\"], rows: []), pieces: [(name: \"panel\", points: [(name: \"p\", at: \"(0 cm, 0 cm)\"), (name: \"j\", at: \"(10 cm, 5 cm)\"), (name: \"q\", at: \"(20 cm, 0 cm)\"), (name: \"r\", at: \"(5 cm, 20 cm)\")],
    edges: [(name: \"top\", from: \"p\", by: [curve(\"(4 cm, 0 cm)\", \"(9 cm, 4 cm)\", \"j\"), curve(\"(12 cm, 5 cm)\", \"(16 cm, 0 cm)\", \"q\")]), (name: \"right\", from: \"q\", by: [straight(\"r\")]), (name: \"left\", from: \"r\", by: [straight(\"p\")])])])";

#[test]
fn a_joint_is_made_smooth_on_request() {
    let mut stage = Stage::on_text(BENT);
    stage.click("piece panel");
    stage.click("edge panel.top");
    stage.press(Key::C);
    assert!(stage.says("bends 45.0° at a joint"), "{}", stage.all());
    // The inside angles: the line leaves and arrives level; r lies (5, 20) cm from p and (-15, 20) from q, atan(4) and atan(4/3).
    assert!(stage.says("start of top: 76.0° at the corner"), "{}", stage.all());
    assert!(stage.says("end of top: 53.1° at the corner"), "{}", stage.all());
    stage.click("Make it smooth at j");
    assert!(stage.says("bends 0.0° at a joint"), "{}", stage.all());
    let text = stage.saved();
    assert!(text.contains("curve(\"j.polar(heading((9 cm, 4 cm), j), 2 cm)\", \"(16 cm, 0 cm)\", \"q\")"), "{text}");
    assert!(text.contains("smooth_at: [\"j\"]"), "{text}");
    let (_, proof) = stage.proof();
    assert_eq!(proof["counts"]["error"], 0, "{proof:#}");
    assert!(proof["findings"].as_array().unwrap().iter().all(|f| f["edge"] != "top"), "{proof:#}");
    stage.press(Key::C);
    assert!(!stage.says("curvature of"));
}

#[test]
fn sizes_lie_over_each_other_at_a_point_or_one_way_only() {
    let mut stage = Stage::on("bodice-sleeve.ron");
    stage.click("piece front");
    let of = |stage: &mut Stage, size: &str| {
        stage.click(size);
        stage.rect("front.underarm").center()
    };
    let (small, large) = (of(&mut stage, "size 76"), of(&mut stage, "size 128"));
    assert!(small.distance(large) > 20.0);
    stage.click("point front.underarm");
    stage.click("stack both ways at underarm");
    let (small, large) = (of(&mut stage, "size 76"), of(&mut stage, "size 128"));
    assert!(small.distance(large) < 0.5, "{small:?} {large:?}");
    assert!(stage.saved().contains("stack: [\"underarm\", \"underarm\"]"));
    stage.click("point front.tip");
    stage.click("stack across only at tip");
    assert!(stage.saved().contains("stack: [\"tip\", \"underarm\"]"), "{}", stage.text());
    let (small, large) = (of(&mut stage, "size 76"), of(&mut stage, "size 128"));
    assert!((small.y - large.y).abs() < 0.5 && (small.x - large.x).abs() > 1.0, "{small:?} {large:?}");
}
