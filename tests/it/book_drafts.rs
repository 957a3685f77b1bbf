//! Steps of drafting books against published numbers: `tests/outside/draft-values.json`, with a source for each table. Asked as a
//! user would, through the built program; lengths in mm within 0.001.

use serde_json::Value as Json;

use crate::oracle::tracewheel;

const WITHIN: f64 = 0.001;

struct Table {
    name: &'static str,
    rows: Vec<Json>,
}

impl Table {
    fn of(name: &'static str) -> Self {
        let text = std::fs::read_to_string("tests/outside/draft-values.json").unwrap();
        let all: Json = serde_json::from_str(&text).unwrap();
        assert!(all[name]["source"].as_str().is_some_and(|s| !s.is_empty()), "{name} names no source");
        Self { name, rows: all[name]["rows"].as_array().unwrap().clone() }
    }

    /// For each row: the formulas measured in a size of an example, against fields of the row, counted in a unit of so many mm.
    fn check(&self, ask: &dyn Fn(&Json) -> Asked) {
        assert!(!self.rows.is_empty());
        for row in &self.rows {
            let asked = ask(row);
            let mut args = vec!["measure", &asked.draft, "--json", "--size", &asked.size];
            for set in &asked.sets {
                args.extend(["--set", set]);
            }
            args.push("--");
            args.extend(asked.wanted.iter().map(|(formula, ..)| formula.as_str()));
            let ran = tracewheel(&args);
            assert_eq!(ran.exit, 0, "{}: {}", self.name, ran.err);
            let told: Json = serde_json::from_str(&ran.out).unwrap();
            for (formula, field, unit) in &asked.wanted {
                let wanted = row[field].as_f64().unwrap_or_else(|| panic!("{}: no {field}", self.name)) * unit;
                let have = told[formula][&asked.size].as_f64().unwrap();
                let within = WITHIN * unit.max(1.0);
                assert!(
                    (have - wanted).abs() <= within,
                    "{} {row}: {formula} gives {have}, {field} is {wanted}",
                    self.name
                );
            }
        }
    }
}

struct Asked {
    draft: String,
    size: String,
    sets: Vec<String>,
    /// Formula, field of the row, millimetres (or square ones) in its unit.
    wanted: Vec<(String, &'static str, f64)>,
}

fn asked(draft: &str, size: &str, sets: &[String], wanted: &[(&str, &'static str, f64)]) -> Asked {
    let wanted = wanted.iter().map(|(formula, field, unit)| ((*formula).to_owned(), *field, *unit)).collect();
    Asked { draft: draft.to_owned(), size: size.to_owned(), sets: sets.to_vec(), wanted }
}

const INCH: f64 = 25.4;

#[test]
fn circle_skirts_of_every_fullness() {
    let table = Table::of("circle_skirts");
    assert!(table.rows.len() >= 30, "{}", table.rows.len());
    table.check(&|row| {
        let unit = row["unit"].as_str().unwrap();
        let mm = if unit == "in" { INCH } else { 10.0 };
        let sets = [
            format!("waist={} {unit}", row["waist"]),
            format!("skirt_length={} {unit}", row["length"]),
            format!("fullness={}", row["fraction"]),
        ];
        // A whole circle's two halves each have 180° at the centre, which an arc can do.
        let wanted = [
            ("waist_radius", "waist_radius", mm),
            ("hem_radius", "hem_radius", mm),
            ("2 * length(skirt.hem)", "hem_arc", mm),
            ("2 * length(skirt.waist)", "waist", mm),
            ("2 * area(skirt)", "ring_area", mm * mm),
        ];
        asked("examples/circle-skirt.ron", "72", &sets, &wanted)
    });
}

#[test]
fn a_bodice_by_fractions_of_the_chest() {
    Table::of("bodice_chest_fraction").check(&|row| {
        let wanted = [
            ("gap(ground.nape, ground.scye)", "scye_depth", INCH),
            ("gap(ground.scye, ground.underarm)", "quarter_width", INCH),
            ("ground.shoulder_point.x", "half_shoulder", INCH),
            ("back.neck_side.x", "neck_width", INCH),
            ("front.centre_neck.y", "front_neck_depth", INCH),
            ("ground.waist_side.y", "waist_line", INCH),
            ("length(front.shoulder)", "shoulder_seam", INCH),
            ("heading(back.neck_side, back.shoulder_point)", "shoulder_angle_deg", 1.0),
        ];
        asked("examples/chest-bodice.ron", &row["chest"].to_string(), &[], &wanted)
    });
}

#[test]
fn trousers_of_a_cutters_worked_example() {
    let mut table = Table::of("trouser_tailor");
    table.rows = table.rows.iter().map(|row| row["derived"].clone()).collect();
    table.check(&|_| {
        let wanted = [
            ("rise", "rise", 10.0),
            ("gap(front.waist_level, front.fork_level)", "p1_p2_rise_minus_3", 10.0),
            ("gap(front.fork_level, front.bottom_level)", "p2_p3", 10.0),
            ("gap(front.bottom_level, front.knee_level)", "p3_p4_knee_up", 10.0),
            ("gap(front.fork_level, front.fork_tip)", "fork_total_2_to_5", 10.0),
            ("gap(front.fork_level, front.centre_foot)", "half_point_2_to_7", 10.0),
            ("gap(front.centre_foot, front.centre_seat)", "p7_to_11", 10.0),
            ("length(front.seat_line)", "front_seat_11_to_12", 10.0),
            (
                "gap(front.side_waist, cross(plumb(front.centre_foot), level(front.side_waist)))",
                "front_waist_8_to_9",
                10.0,
            ),
            ("front.centre_waist.x - front.centre_foot.x", "cf_offset_7_to_10", 10.0),
            ("gap(front.centre_foot, front.fork_hollow)", "fork_diagonal_7_to_13", 10.0),
            ("gap(front.knee_level, front.knee_out)", "half_knee_each_side", 10.0),
            ("gap(front.bottom_level, front.bottom_in)", "half_bottom_each_side", 10.0),
            (
                "gap(front.knee_level, back.knee_out) - gap(front.knee_level, front.knee_out)",
                "back_widening_each_side",
                10.0,
            ),
        ]
        .map(|(formula, field, unit)| {
            (formula.replace("front.knee_level, back.knee_out", "back.knee_level, back.knee_out"), field, unit)
        });
        Asked { wanted: wanted.to_vec(), ..asked("examples/trousers.ron", "100", &[], &[]) }
    });
}

#[test]
fn the_head_of_a_sleeve_from_its_legs() {
    Table::of("sleeve_cap_triangle").check(&|row| {
        let small = row["front_leg"].as_f64().unwrap() < 15.0;
        let (unit, mm) = if small { ("in", INCH) } else { ("cm", 10.0) };
        let sets = ["front_leg", "back_leg", "bicep_line"].map(|name| format!("{name}={} {unit}", row[name]));
        let wanted = [
            ("gap(sleeve.crown, sleeve.crown_foot)", "cap_height", mm),
            ("gap(sleeve.front_end, sleeve.crown_foot)", "foot_from_front_end", mm),
        ];
        asked("examples/sleeve-head.ron", "B", &sets, &wanted)
    });
}

/// A draft with nothing but values, for constructions that need no piece.
fn scratch(values: &[(&str, String)]) -> tempfile::NamedTempFile {
    let values: Vec<String> = values.iter().map(|(name, is)| format!("(name: \"{name}\", is: \"{is}\")")).collect();
    let text = format!(
        "(format: \"tracewheel draft\", version: 0, chart: (girth: [\"one\"]), values: [{}], pieces: [(name: \"p\", points: [\
         (name: \"a\", at: \"(0 cm, 0 cm)\"), (name: \"b\", at: \"a.right(40 cm)\"), (name: \"c\", at: \"b.down(40 cm)\"), \
         (name: \"d\", at: \"a.down(40 cm)\")], edges: [(name: \"top\", from: \"a\", by: [straight(\"b\")]), \
         (name: \"side\", from: \"b\", by: [straight(\"c\")]), (name: \"hem\", from: \"c\", by: [straight(\"d\")]), \
         (name: \"centre\", from: \"d\", by: [straight(\"a\")])], darts: [(name: \"dart\", on: \"hem\", centre: \"1/2\", \
         intake: \"intake\", tip: \"depth\")])])",
        values.join(", ")
    );
    let file = tempfile::Builder::new().suffix(".ron").tempfile().unwrap();
    std::fs::write(file.path(), text).unwrap();
    file
}

#[test]
fn darts_and_what_stands_over_them() {
    let file = scratch(&[("intake", "1 cm".into()), ("depth", "9 cm".into())]);
    let path = file.path().to_str().unwrap().to_owned();
    Table::of("darts").check(&|row| {
        let sets = [format!("intake={} cm", row["intake"]), format!("depth={} cm", row["length"])];
        let (tip, foot, other) = ("p.dart.tip", "p.dart.first_foot", "p.dart.second_foot");
        let wanted = [
            ("p.dart.leg".to_owned(), "leg", 10.0),
            (format!("corner_angle({foot}, {tip}, {other})"), "full_angle_deg", 1.0),
            (format!("corner_angle({foot}, {tip}, halfway({foot}, {other}))"), "half_angle_deg", 1.0),
            // The seam mirrored in the leg, to where it meets the middle of the dart.
            (
                format!("gap({tip}, cross(mirrored(level({foot}), line({tip}, {foot})), plumb({tip})))"),
                "cap_peak_from_apex_straight_open_seam",
                10.0,
            ),
            (
                format!("gap({tip}, cross(through({foot}, square_to: line({tip}, {foot})), plumb({tip})))"),
                "cap_peak_from_apex_seam_square_to_closed_dart",
                10.0,
            ),
            (format!("gap(on_way({tip}, {foot}, 2), on_way({tip}, {other}, 2))"), "moved_intake_at_leg_x2", 10.0),
        ];
        Asked { wanted: wanted.to_vec(), ..asked(&path, "one", &sets, &[]) }
    });
}

#[test]
fn proportions_and_foundations_of_old_books() {
    let file = scratch(&[
        ("intake", "1 cm".into()),
        ("depth", "9 cm".into()),
        ("size", "1 in".into()),
        ("armhole", "1 in".into()),
    ]);
    let path = file.path().to_str().unwrap().to_owned();
    Table::of("rosenfeld_width_proportions").check(&|row| {
        let sets = [format!("size={} in", row["size"])];
        let (a, b, d) = ("p.a", "p.a.right(size / 3)", "halfway(p.a, p.a.right(size / 3)).up(size / 3)");
        let quarter = |n: u32| format!("gap({d}, on_way({a}, {b}, {n}/4))");
        let wanted = [
            (format!("gap({a}, {b})"), "base_AB", INCH),
            (format!("pi * gap({a}, {b})"), "circle_circumference_pi_AB", INCH),
            (format!("length(circle({a}, size / 6))"), "circle_circumference_pi_AB", INCH),
            (format!("gap({a}, {b}) + gap({a}, {d}) + gap({b}, {d})"), "bust_AB_AD_BD", INCH),
            (format!("{} + {}", quarter(1), quarter(3)), "waist_ED_FD", INCH),
        ];
        Asked { wanted: wanted.to_vec(), ..asked(&path, "one", &sets, &[]) }
    });
    Table::of("school_sewing_sleeve").check(&|row| {
        let sets = [format!("armhole={} in", row["armhole"])];
        let line = "p.a, p.a.down(armhole)";
        let wanted = [
            ("armhole / 2 + 1/2 in".to_owned(), "half_width_LM", INCH),
            (format!("gap(p.a, on_way({line}, 1/5))"), "M_to_N", INCH),
            (format!("gap(p.a, on_way({line}, 2/5))"), "M_to_O", INCH),
        ];
        Asked { wanted: wanted.to_vec(), ..asked(&path, "one", &sets, &[]) }
    });
    Table::of("rosenfeld_child_skirt_1911").check(&|row| {
        let sets = [format!("size={} in", row["waist"]), format!("armhole={} in", row["hip"])];
        let wanted = [
            ("size / 2", "half_waist_A_C", INCH),
            ("armhole / 2", "half_hip_E_F", INCH),
            ("30 in / 2 / 3", "hip_depth_A_E", INCH),
        ];
        asked(&path, "one", &sets, &wanted)
    });
}
