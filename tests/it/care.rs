//! Cautions: at both sides of every limit, in every size of the rules; silent for adults; what was not looked at is named. Long, reason: one draft for each
//! limit and for each thing that a draft may leave out.
//!
//! The numbers are those of `tests/outside/safety-values.json`, read in 16 CFR 1120, 1615 and 1616 independently of the program's table.

use serde_json::Value as Json;
use tracewheel::base::{Code, DisplayUnit, Finding};
use tracewheel::compute::{Engine, Model};
use tracewheel::document::Draft;
use tracewheel::file;
use tracewheel::proof::{Caution, cautions, proof};
use tracewheel::texts::message;

struct Looked {
    findings: Vec<Finding>,
    cautions: Vec<Caution>,
}

fn draft(body: &str) -> Draft {
    file::read(&format!("(format: \"tracewheel draft\", version: 0, {body})")).unwrap().draft
}

fn looked(body: &str) -> Looked {
    let draft = draft(body);
    let model: Model = Engine::new().compute(&draft);
    Looked { findings: proof(&model.draft, &model), cautions: cautions(&model.draft, &model) }
}

impl Looked {
    /// The sizes in which a finding of this kind is told at a part (or about a place).
    fn sizes(&self, code: Code, word: &str) -> Vec<String> {
        let about = |f: &&Finding| f.code == code && (word.is_empty() || f.words.iter().any(|(_, w)| w == word));
        self.findings.iter().filter(about).flat_map(|f| f.sizes.clone()).collect()
    }

    fn codes(&self) -> Vec<&str> {
        self.findings.iter().map(|f| f.code.word()).collect()
    }

    /// What is named as not checked.
    fn unchecked(&self) -> String {
        let mut found = self.findings.iter().filter(|f| f.code == Code::CareNotChecked);
        let what = found.next().map_or("", |f| f.words.iter().find(|(n, _)| *n == "what").map_or("", |(_, w)| w));
        assert!(found.next().is_none(), "told twice");
        what.to_owned()
    }
}

fn values() -> Json {
    serde_json::from_str(&std::fs::read_to_string("tests/outside/safety-values.json").unwrap()).unwrap()
}

const PLACES: [(&str, &str); 7] = [
    ("chest", "chest"),
    ("waist", "waist"),
    ("seat", "seat"),
    ("upper_arm", "upper arm"),
    ("thigh", "thigh"),
    ("wrist", "wrist"),
    ("ankle", "ankle"),
];

/// A size of the rules: its name, and the most in mm at each place.
type Row = (String, [f64; 7]);

/// The rows that hold for these wearers, as published; of cm and inches the smaller.
fn rows(wearers: &str) -> Vec<Row> {
    let values = values();
    let rows = values["tables"]["safety.cfr_sleepwear_max"]["rows"].as_array().unwrap();
    let row_for = if wearers == "girls" { "girls" } else { "boys" };
    let mine = rows.iter().filter(|r| r["sex"] == "both" || r["sex"] == row_for);
    mine.map(|r| {
        let most = PLACES.map(|(place, _)| {
            let of = |unit: &str| r[unit][place].as_f64().unwrap();
            (of("max_cm") * 10.0).min(of("max_in") * 25.4)
        });
        (r["size"].as_str().unwrap().to_owned(), most)
    })
    .collect()
}

/// Close-fitting sleepwear in all sizes of the rules; at each place it is wider by `over` mm than allowed there.
fn pyjama(wearers: &str, over: f64) -> (String, Vec<Row>) {
    let rows = rows(wearers);
    let labels: Vec<String> = (0..rows.len()).map(|i| format!("\"c{i}\"")).collect();
    let rules: Vec<String> = rows.iter().enumerate().map(|(i, (size, _))| format!("(\"c{i}\", \"{size}\")")).collect();
    let house = |k: usize| {
        let cell = |(i, row): (usize, &Row)| format!("(\"c{i}\", \"{:.4} mm\")", row.1[k] + over);
        let cells: Vec<String> = rows.iter().enumerate().map(cell).collect();
        format!("(name: \"g{k}\", kind: house, by: [girth], cells: [{}])", cells.join(", "))
    };
    let chart: Vec<String> = (0..7).map(house).collect();
    let girths: Vec<String> =
        PLACES.iter().enumerate().map(|(k, (place, _))| format!("(place: {place}, is: \"g{k}\")")).collect();
    let body = format!(
        "audience: child(from: \"9 months\", to: \"14 years\"), care: (worn_as: tight_sleepwear, wearers: {wearers}, rule_sizes: [{}], girths: [{}]), \
         chart: (girth: [{}], rows: [{}])",
        rules.join(", "),
        girths.join(", "),
        labels.join(", "),
        chart.join(", ")
    );
    (body, rows)
}

#[test]
fn close_sleepwear_is_held_against_the_rule_in_every_size_at_every_place() {
    let mut tried = 0;
    for wearers in ["anyone", "boys", "girls"] {
        let (at, rows) = pyjama(wearers, 0.0);
        assert_eq!(rows.len(), 17);
        assert_eq!(looked(&at).sizes(Code::SleepwearGirth, ""), Vec::<String>::new(), "{wearers}, at the limit");
        let over = looked(&pyjama(wearers, 0.01).0);
        let under = looked(&pyjama(wearers, -0.01).0);
        assert_eq!(under.sizes(Code::SleepwearGirth, ""), Vec::<String>::new(), "{wearers}, under it");
        let all: Vec<String> = (0..rows.len()).map(|i| format!("c{i}")).collect();
        for (k, (_, place)) in PLACES.iter().enumerate() {
            assert_eq!(over.sizes(Code::SleepwearGirth, place), all, "{wearers}, {place}");
            let finding = over.findings.iter().find(|f| f.words.iter().any(|(_, w)| w == place)).unwrap();
            let most = &finding.amounts.iter().find(|a| a.name == "most").unwrap().by_size;
            for (row, most) in rows.iter().zip(most) {
                assert!((row.1[k] - most).abs() < 1e-9, "{wearers}, {place}, {}: {most} for {}", row.0, row.1[k]);
                tried += 1;
            }
        }
    }
    assert_eq!(tried, 3 * 17 * 7);
}

#[test]
fn where_cm_and_inches_of_the_rule_disagree_the_smaller_counts() {
    let values = values();
    let odd = values["tables"]["safety.cfr_sleepwear_unit_mismatch"]["rows"].as_array().unwrap();
    assert_eq!(odd.len(), 5);
    for row in odd {
        let (size, place) = (row["size"].as_str().unwrap(), row["dim"].as_str().unwrap());
        let smaller = row["cm"].as_f64().unwrap().min(row["inches_as_cm"].as_f64().unwrap());
        let wearers = if row["sex"] == "girls" { "girls" } else { "anyone" };
        let body = |mm: f64| {
            format!(
                "audience: child(from: \"1\", to: \"14\"), chart: (girth: [\"a\"]), \
                 care: (worn_as: tight_sleepwear, wearers: {wearers}, rule_sizes: [(\"a\", \"{size}\")], girths: [(place: {place}, is: \"{mm} mm\")])"
            )
        };
        // Inches are told there to the hundredth of a millimetre.
        assert!(looked(&body(smaller * 10.0 - 0.01)).sizes(Code::SleepwearGirth, "").is_empty(), "{size} {place}");
        assert_eq!(looked(&body(smaller * 10.0 + 0.01)).sizes(Code::SleepwearGirth, ""), ["a"], "{size} {place}");
    }
}

#[test]
fn girls_rows_are_for_girls_alone() {
    let (girls, rows) = pyjama("girls", 0.0);
    let boys = self::rows("boys");
    let anyone = looked(&girls.replacen("wearers: girls", "wearers: anyone", 1));
    for (k, (_, place)) in PLACES.iter().enumerate() {
        let wider: Vec<String> =
            (0..17).filter(|i| rows[*i].1[k] > boys[*i].1[k] + 1e-6).map(|i| format!("c{i}")).collect();
        assert_eq!(anyone.sizes(Code::SleepwearGirth, place), wider, "{place}");
        assert!(rows.iter().zip(&boys).all(|(g, b)| g.1[k] >= b.1[k] - 1e-9), "{place}: the boys' row is the stricter");
    }
    assert!(!anyone.sizes(Code::SleepwearGirth, "seat").is_empty());
}

#[test]
fn what_close_sleepwear_does_not_say_is_named() {
    let found = looked(
        "audience: child(from: \"2 years\", to: \"4 years\"), chart: (girth: [\"92\", \"98\", \"104\"]), \
         care: (worn_as: tight_sleepwear, rule_sizes: [(\"98\", \"3T\"), (\"104\", \"4-5\")], girths: [(place: chest, is: \"50 cm\")])",
    );
    let unchecked = found.unchecked();
    assert!(unchecked.contains("around waist, seat, upper arm, thigh, wrist and ankle"), "{unchecked}");
    assert!(unchecked.contains("the girths in 92 and 104"), "{unchecked}");
    assert!(unchecked.contains("how far trimmings stand off"), "{unchecked}");
    let told = &found.cautions.iter().find(|c| c.title.starts_with("Close-fitting")).unwrap().text;
    assert!(told.iter().any(|t| t.contains("98: 50 cm (19 5/8 in), at most 53.3 cm and 21 in in size 3")), "{told:?}");
    // The rules for sleepwear end at 14.
    let old = looked("audience: child(from: \"15\", to: \"16\"), chart: (girth: [\"a\"]), care: (worn_as: sleepwear)");
    assert_eq!((old.codes(), old.cautions.len()), (Vec::<&str>::new(), 0));
}

/// A child's jacket whose one size is `rule` of the rules, with a cord, for these ages.
fn jacket_for((from, to): (&str, &str), rule: &str, cord: &str) -> Looked {
    looked(&format!(
        "audience: child(from: \"{from}\", to: \"{to}\"), chart: (girth: [\"one\"]), \
         care: (worn_as: outerwear, rule_sizes: [(\"one\", \"{rule}\")]), strips: [(name: \"cord\", kind: cord, length: \"60 cm\", {cord})]"
    ))
}

/// The same for the ages that its size stands for.
fn jacket(rule: &str, cord: &str) -> Looked {
    let text = rule.replace("6X", "6").replace("XL", "16").replace('L', "12").replace('T', "");
    let (ages, unit) = text.strip_suffix(" mo").map_or((text.as_str(), "years"), |months| (months, "months"));
    let (from, to) = ages.split_once('-').unwrap_or((ages, ages));
    jacket_for((&format!("{from} {unit}"), &format!("{to} {unit}")), rule, cord)
}

/// 16 CFR 1120.2(c), 1120.3(b): hood and neck 2T to 12, waist and lower edge 2T to 16; L is 12, XL is 16; a range counts if any size in it
/// does (12-14 for the neck, 13-15 for the waist only).
#[test]
fn cords_of_outerwear_by_size() {
    let values = values();
    let fact = |id: &str| values["facts"].as_array().unwrap().iter().find(|f| f["id"] == id).unwrap().clone();
    assert_eq!(fact("safety.us.size_equiv")["value"], serde_json::json!({ "L": 12, "XL": 16 }));
    let mut cases = vec![
        ("12-18 mo".to_owned(), false, false),
        ("18-24 mo".to_owned(), true, true),
        ("6X".to_owned(), true, true),
        ("L".to_owned(), true, true),
        ("XL".to_owned(), false, true),
        ("12-14".to_owned(), true, true),
        ("13-15".to_owned(), false, true),
        ("16-18".to_owned(), false, true),
        ("17-18".to_owned(), false, false),
        ("1".to_owned(), false, false),
    ];
    cases.extend((2..=4).map(|n| (format!("{n}T"), true, true)));
    cases.extend((5..=18).map(|n| (format!("{n}"), n <= 12, n <= 16)));
    for (rule, neck, waist) in cases {
        let told = jacket(&rule, "place: neck");
        assert_eq!(!told.sizes(Code::CordAtNeck, "").is_empty(), neck, "{rule} at the neck");
        assert_eq!(told.cautions.iter().any(|c| c.title.contains("hood or neck")), neck, "{rule}");
        for place in ["waist", "hem"] {
            let told = jacket(&rule, &format!("place: {place}, free_end: \"80 mm\""));
            assert_eq!(!told.sizes(Code::CordEnds, "").is_empty(), waist, "{rule} at the {place}");
            assert_eq!(!told.sizes(Code::CordLoose, "").is_empty(), waist, "{rule} at the {place}");
        }
    }
}

#[test]
fn free_ends_at_both_sides_of_the_limit() {
    let text = values()["facts"].to_string();
    assert!(text.contains("3 in") && text.contains("in (75 mm)"));
    let ends =
        |mm: &str, fastened: bool| jacket("6", &format!("place: hem, free_end: \"{mm} mm\", fastened: {fastened}"));
    assert!(ends("75", true).sizes(Code::CordEnds, "").is_empty());
    assert!(ends("74.99", true).sizes(Code::CordEnds, "").is_empty());
    assert_eq!(ends("75.01", true).sizes(Code::CordEnds, ""), ["one"]);
    assert_eq!(ends("0", false).sizes(Code::CordLoose, ""), ["one"]);
    assert!(ends("75", true).sizes(Code::CordLoose, "").is_empty());
    let caution = ends("76.2", true).cautions.into_iter().find(|c| c.title.contains("waist or lower edge")).unwrap();
    assert!(caution.text[0].contains("7.62 cm (3 in) in size one"), "{caution:?}");
    let over = "That is more than 16 CFR 1120.3(b) with ASTM F1816 allows: 1.2 mm too much in size one. Shorten them.";
    assert_eq!(caution.text[1], over);
    assert!(caution.text[2].contains("at most 75 mm (3 in)") && caution.rule.contains("EN 14682"), "{caution:?}");
    // A cord of which no end is free still has to be sewn fast.
    assert_eq!(jacket("6", "place: waist, free_end: \"0 cm\"").sizes(Code::CordLoose, ""), ["one"]);
    // An end of which nothing is said is not taken for none, and the limit stands beside it.
    for place in ["waist", "hem"] {
        let untold = jacket("6", &format!("place: {place}, fastened: true"));
        let caution = untold.cautions.iter().find(|c| c.title.contains("waist or lower edge")).unwrap();
        let said = "How far the free ends of cord hang out is not said: look at them, at most 75 mm (3 in).";
        assert_eq!(caution.text[0], said);
        assert!(untold.unchecked().contains("how far the free ends of cord hang out, which is not said"));
    }
    assert!(!ends("0", true).unchecked().contains("not said"), "{}", ends("0", true).unchecked());
    // What cannot be computed is not passed over.
    let lost = jacket("6", "place: waist, fastened: true, free_end: \"sqrt(0 - 1) * 1 cm\"");
    assert!(lost.unchecked().contains("the free ends of cord in size one"), "{}", lost.unchecked());
}

/// What of a caution at waist or lower edge speaks of the draft itself: its words before those of the rule.
fn of_draft(found: &Looked) -> Vec<String> {
    let caution = found.cautions.iter().find(|c| c.title.contains("waist or lower edge")).unwrap();
    caution.text.iter().take_while(|t| !t.starts_with("16 CFR 1120.3(b)")).cloned().collect()
}

#[test]
fn a_cord_that_is_not_sewn_fast_has_another_caution_than_one_that_is() {
    let tie = |fastened: bool| jacket("6", &format!("place: waist, free_end: \"7 cm\", fastened: {fastened}"));
    let ends = "The free ends of cord hang out: 7 cm (2 3/4 in) in size one.";
    assert_eq!(of_draft(&tie(true)), [ends]);
    let loose = "The cord cord is not sewn fast in this pattern and can be drawn out, so that one end grows long: 16 CFR 1120.3(b) with ASTM \
                 F1816 asks that it is sewn fast by a bar tack at the middle of the back.";
    assert_eq!(of_draft(&tie(false)), [ends, loose]);
}

/// Free ends of 7 cm in sizes 3 to 5 and 9 cm in 6 to 8: 1.5 cm over 75 mm, told once with its sizes.
#[test]
fn a_caution_says_by_how_much_ends_hang_out_too_far_and_in_which_sizes() {
    let coat = |long: &str| {
        let sizes = ["3", "4", "5", "6", "7", "8"];
        let cells = sizes.map(|s| format!("(\"{s}\", \"{}\")", if s < "6" { "7 cm" } else { long }));
        let rules = sizes.map(|s| format!("(\"{s}\", \"{s}\")"));
        looked(&format!(
            "audience: child(from: \"3 years\", to: \"8 years\"), care: (worn_as: outerwear, rule_sizes: [{}]), chart: (girth: [\"3\", \"4\", \"5\", \
             \"6\", \"7\", \"8\"], rows: [(name: \"end\", kind: house, by: [girth], cells: [{}])]), strips: [(name: \"hem_tie\", kind: cord, length: \
             \"60 cm\", place: hem, free_end: \"end\", fastened: true)]",
            rules.join(", "),
            cells.join(", ")
        ))
    };
    assert_eq!(of_draft(&coat("7 cm")), ["The free ends of hem tie hang out: 7 cm (2 3/4 in) in sizes 3 to 8."]);
    let over = "That is more than 16 CFR 1120.3(b) with ASTM F1816 allows: 1.5 cm (5/8 in) too much in sizes 6 to 8. Shorten them.";
    let are = "The free ends of hem tie hang out: 7 cm (2 3/4 in) in sizes 3 to 5 and 9 cm (3 1/2 in) in sizes 6 to 8.";
    assert_eq!(of_draft(&coat("9 cm")), [are, over]);
    assert_eq!(coat("9 cm").sizes(Code::CordEnds, ""), ["6", "7", "8"]);
    // Too little to be seen in centimetres and inches is not told as nothing.
    assert!(of_draft(&coat("75.01 mm"))[1].contains("allows: 0.1 mm too much in sizes 6 to 8"));
}

/// A tie by another name: a band or binding that no seam sews on is named, with what it would be if its ends hang free.
#[test]
fn bands_that_no_seam_sews_on_are_named() {
    let coat = |audience: &str, strip: &str, seam: &str| {
        looked(&format!(
            r#"audience: {audience}, chart: (girth: ["a"]), care: (worn_as: outerwear), strips: [(name: "tie", length: "9 cm", {strip})],
            pieces: [(name: "p", points: [(name: "p", at: "(0 cm, 0 cm)"), (name: "q", at: "(9 cm, 0 cm)"), (name: "r", at: "(0 cm, 9 cm)")],
            edges: [(name: "e", from: "p", by: [straight("q")]), (name: "f", from: "q", by: [straight("r")]), (name: "g", from: "r", by: [straight("p")])])],
            seams: [{seam}]"#
        ))
    };
    let child = "child(from: \"4\", to: \"6\")";
    let said = |kind: &str| {
        format!(
            "tie is a {kind} that no seam sews on: if its ends hang free it is a cord, and what is said of cords holds for it"
        )
    };
    for kind in ["band", "binding"] {
        for place in ["neck", "waist", "hem", "unstated"] {
            let found = coat(child, &format!("kind: {kind}, place: {place}"), "");
            assert!(found.unchecked().contains(&said(kind)), "{kind} {place}: {}", found.unchecked());
            let told = found.cautions.iter().find(|c| c.title.starts_with("What was not checked")).unwrap();
            assert!(told.text.iter().any(|t| t.contains(&said(kind))), "{told:?}");
            // Sewn on, whole or as a half, it is no tie.
            for side in ["strip.tie", "strip.tie / 2"] {
                let seam = format!(r#"(name: "s", one: ["p.e"], two: ["{side}"], fit: equal)"#);
                let sewn = coat(child, &format!("kind: {kind}, place: {place}"), &seam);
                assert!(!sewn.unchecked().contains("no seam sews on"), "{}", sewn.unchecked());
            }
        }
    }
    for (audience, strip) in [
        (child, "kind: band, place: elsewhere"),
        (child, "kind: elastic, place: waist"),
        ("adult", "kind: band, place: neck"),
    ] {
        let found = coat(audience, strip, "");
        assert!(!found.unchecked().contains("no seam sews on"), "{strip}: {}", found.unchecked());
    }
}

/// What a rule wants is said first, then whether the rule speaks of this garment.
#[test]
fn what_is_wanted_is_a_whole_sentence_however_it_is_worn() {
    for (worn, after) in [
        ("unstated", "; whether it is worn over other clothes is not said."),
        ("outerwear", "."),
        ("other", "; the rule speaks of clothes that are worn over others, the caution is the same for these."),
    ] {
        let found = looked(&format!(
            "audience: child(from: \"4\", to: \"6\"), chart: (girth: [\"a\"]), care: (worn_as: {worn}), \
             strips: [(name: \"cord\", kind: cord, length: \"60 cm\", place: hem, free_end: \"1 cm\")]"
        ));
        let told = found.findings.iter().find(|f| f.code == Code::CordLoose).unwrap();
        let text = message(told, DisplayUnit::Cm);
        let wanted = format!("a bar tack is wanted by 16 CFR 1120.3(b) with ASTM F1816{after} This is the usual");
        assert!(text.contains(&wanted), "{text}");
        let caution = found.cautions.iter().find(|c| c.title.contains("waist or lower edge")).unwrap();
        assert!(caution.text[2].contains("in sizes 2T to 16: at most"), "{caution:?}");
        assert!(caution.text[2].ends_with(&format!("at the middle of the back{after}")), "{caution:?}");
    }
}

#[test]
fn ages_stand_for_sizes_where_none_are_told() {
    let jacket = |from: &str, to: &str| {
        looked(&format!(
            "audience: child(from: \"{from}\", to: \"{to}\"), chart: (girth: [\"a\", \"b\"]), care: (worn_as: outerwear), \
             strips: [(name: \"cord\", kind: cord, length: \"60 cm\", place: neck)]"
        ))
    };
    assert_eq!(jacket("2 years", "14 years").sizes(Code::CordAtNeck, ""), ["a", "b"]);
    assert!(jacket("13 years", "16 years").sizes(Code::CordAtNeck, "").is_empty());
    assert!(jacket("6 months", "18 months").sizes(Code::CordAtNeck, "").is_empty());
    // Ages that cannot be read make every rule speak, and are told.
    let unread = jacket("little", "big");
    assert_eq!(unread.sizes(Code::CordAtNeck, ""), ["a", "b"]);
    assert!(unread.codes().contains(&"ages-unread"));
    assert!(unread.unchecked().contains("which size of the rules a and b is"), "{}", unread.unchecked());
}

#[test]
fn small_parts_under_three_years() {
    let shirt = |from: &str| {
        looked(&format!(
            r#"audience: child(from: "{from}", to: "6 years"), care: (worn_as: other), chart: (girth: ["a"]),
            notions: [(name: "press studs", count: 3)], pieces: [(name: "front", points: [(name: "p", at: "(0 cm, 0 cm)"), (name: "q", at: "(9 cm, 0 cm)"),
            (name: "r", at: "(0 cm, 9 cm)")], edges: [(name: "e", from: "p", by: [straight("q")]), (name: "f", from: "q", by: [straight("r")]),
            (name: "g", from: "r", by: [straight("p")])], marks: [(name: "closing", kind: button, at: "(1 cm, 1 cm)", to: "(1 cm, 5 cm)", count: 4),
            (name: "dot", at: "(1 cm, 2 cm)")])]"#
        ))
    };
    for (from, wanted) in [("2 years", true), ("35 months", true), ("36 months", false), ("3 years", false)] {
        assert_eq!(!shirt(from).sizes(Code::SmallParts, "").is_empty(), wanted, "{from}");
    }
    let caution = shirt("2 years").cautions.into_iter().find(|c| c.rule == "16 CFR 1501").unwrap();
    assert!(caution.text[0].contains("closing on front (4) and press studs (3)"), "{caution:?}");
    assert!(
        !caution.text[0].contains("dot") && caution.text[1].contains("as commonly quoted: look it up"),
        "{caution:?}"
    );
}

/// A draft for children of one year on whose sizes begin at three: what it says of its children holds, and that it does not go together is
/// spoken of, whatever the rule.
#[test]
fn a_draft_for_small_children_is_one_whatever_its_sizes_say() {
    let shirt = |from: &str, second: &str| {
        looked(&format!(
            "audience: child(from: \"{from}\", to: \"4 years\"), care: (worn_as: other, rule_sizes: [(\"a\", \"3\"), (\"b\", \"{second}\")]), \
             chart: (girth: [\"a\", \"b\"]), notions: [(name: \"snap_buttons\", count: 3)]"
        ))
    };
    let apart = "which of its sizes is for whom: it is said to be for children from 1.5 to 4 years, and its sizes to be those of 3 to 4 years";
    let small = shirt("18 months", "4");
    assert_eq!(small.sizes(Code::SmallParts, ""), ["a", "b"]);
    assert!(small.unchecked().contains(apart), "{}", small.unchecked());
    let told = small.cautions.iter().find(|c| c.title.starts_with("Small parts")).unwrap();
    assert!(told.text[0].contains("On it are snap buttons (3)"), "{told:?}");
    // Where the ages say three there is none, and where a size is for two it is the one that is meant.
    let three = shirt("3 years", "4");
    assert!(three.sizes(Code::SmallParts, "").is_empty() && !three.unchecked().contains("for whom"));
    let two = shirt("18 months", "2");
    assert_eq!(two.sizes(Code::SmallParts, ""), ["b"]);
    assert!(!two.unchecked().contains("for whom"), "{}", two.unchecked());

    // The same for cords and for sleepwear.
    let cord = |ages: (&str, &str)| jacket_for(ages, "17-18", "place: neck");
    assert_eq!(cord(("4 years", "18 years")).sizes(Code::CordAtNeck, ""), ["one"]);
    assert!(
        cord(("4 years", "18 years")).unchecked().contains("from 4 to 18 years, and its sizes to be those of 17 to 18")
    );
    assert!(cord(("17 years", "18 years")).sizes(Code::CordAtNeck, "").is_empty());
    let gown = |from: &str| {
        looked(&format!(
            "audience: child(from: \"{from}\", to: \"16 years\"), care: (worn_as: sleepwear, rule_sizes: [(\"a\", \"16\")]), chart: (girth: [\"a\"])"
        ))
    };
    assert_eq!(gown("12 years").sizes(Code::SleepwearLoose, ""), ["a"]);
    assert!(gown("15 years").sizes(Code::SleepwearLoose, "").is_empty());
}

/// Sleepwear that is said to fit close, of which no girth is told: proof warns, and who sews it reads the most of the rule, by size.
#[test]
fn close_sleepwear_without_girths_is_warned_of_and_buyers_get_the_numbers() {
    let pyjama = |rules: &str, girths: &str| {
        looked(&format!(
            "audience: child(from: \"9 years\", to: \"10 years\"), care: (worn_as: tight_sleepwear, rule_sizes: [{rules}], girths: [{girths}]), \
             chart: (girth: [\"S\", \"M\"])"
        ))
    };
    let warned = |found: &Looked| -> Vec<String> {
        let all = found.findings.iter().filter(|f| f.code == Code::SleepwearUntold);
        all.map(|f| message(f, DisplayUnit::Cm)).collect()
    };
    let close =
        |found: &Looked| found.cautions.iter().find(|c| c.title.starts_with("Close-fitting")).unwrap().text.clone();
    let sized = r#"("S", "9"), ("M", "10")"#;
    let none = pyjama(sized, "");
    let words = "no girth is told around the chest, waist, seat, upper arm, thigh, wrist and ankle (`care.girths`): there nothing is held against 16 CFR";
    assert!(warned(&none).len() == 1 && warned(&none)[0].contains(words), "{:?}", warned(&none));
    // 16 CFR 1616.2(m), boys' rows, by the values that were read apart from the program.
    let rows = rows("anyone");
    for (k, (_, place)) in PLACES.iter().enumerate() {
        let text = close(&none);
        let told = text.iter().find(|t| t.starts_with(&format!("Around the {place} it was not checked"))).unwrap();
        for (size, rule) in [("S", "9"), ("M", "10")] {
            let most = rows.iter().find(|r| r.0 == rule).unwrap().1[k];
            let words = told.split([';', '–']).find(|part| part.trim().starts_with(&format!("{size}: "))).unwrap();
            let numbers: Vec<f64> = words.split(' ').filter_map(|w| w.parse().ok()).collect();
            let least = (numbers[0] * 10.0).min(numbers[1] * 25.4);
            assert!((least - most).abs() < 1e-9 && words.contains(&format!("in size {rule}")), "{words}: {most}");
        }
    }
    // No size of the rules: no number can be told, and that is said.
    let unsized_ = pyjama("", "");
    assert!(warned(&unsized_)[0].contains("and no one size of the rules is told for S and M (`care.rule_sizes`)"));
    assert!(close(&unsized_)[1].starts_with("How wide it is was not checked"), "{:?}", close(&unsized_));
    // Everything told: no such warning; what is too wide is called so in the caution too.
    let all: Vec<String> = PLACES.iter().map(|(place, _)| format!("(place: {place}, is: \"12 cm\")")).collect();
    assert!(warned(&pyjama(sized, &all.join(", "))).is_empty());
    let wide = pyjama(sized, "(place: chest, is: \"97.7 cm\")");
    let told = "M: 97.7 cm (38 1/2 in), at most 71.1 cm and 28 in in size 10, so 26.6 cm (10 1/2 in) too wide";
    assert!(close(&wide)[1].contains(told), "{:?}", close(&wide));
}

/// Buyers read no words of the program: no dots or underscores of names, nothing that stands for a field of the file.
#[test]
fn cautions_hold_no_words_of_the_program() {
    let strips = r#"(name: "hood_cord", kind: cord, length: "60 cm", place: neck), (name: "hem_cord", kind: cord, length: "60 cm", place: hem),
        (name: "arm_cord", kind: cord, length: "60 cm", place: elsewhere), (name: "lost_cord", kind: cord, length: "60 cm", place: hem, free_end: "sqrt(0 - 1) * 1 cm"),
        (name: "neck_tape", length: "9 cm"), (name: "edge_trim", kind: binding, length: "9 cm")"#;
    for worn in ["outerwear", "sleepwear", "tight_sleepwear", "unstated", "other"] {
        for rules in ["", r#"("a_b", "2T")"#] {
            let found = looked(&format!(
                r#"audience: child(from: "2", to: "4"), chart: (girth: ["a_b"]), care: (worn_as: {worn}, rule_sizes: [{rules}]), strips: [{strips}], notions: [(name: "press_studs")],
                pieces: [(name: "back_yoke", points: [(name: "p", at: "(0 cm, 0 cm)"), (name: "q", at: "(9 cm, 0 cm)"), (name: "r", at: "(0 cm, 9 cm)")],
                    edges: [(name: "e", from: "p", by: [straight("q")]), (name: "f", from: "q", by: [straight("r")]), (name: "g", from: "r", by: [straight("p")])],
                    marks: [(name: "back_closing", kind: button, at: "(1 cm, 1 cm)")])],
                views: [(name: "long_view", pieces: ["back_yoke"]), (name: "other_view", pieces: [])]"#
            ));
            assert!(found.cautions.len() >= 4, "{worn}");
            assert!(
                found.cautions.iter().any(|c| c.text[0].contains("back closing on back yoke")),
                "{:?}",
                found.cautions
            );
            for caution in &found.cautions {
                // The label of a size is the buyer's word.
                let text = format!("{} {}", caution.title, caution.text.join(" ")).replace("a_b", "");
                let is_dotted = |w: &str| {
                    w.trim_end_matches(['.', ',', ';', ':'])
                        .split_once('.')
                        .is_some_and(|(a, b)| a.ends_with(char::is_alphabetic) && b.starts_with(char::is_alphabetic))
                };
                assert!(!text.contains(['_', '`']) && !text.split(' ').any(is_dotted), "{text}");
            }
        }
    }
}

#[test]
fn adults_have_no_cautions_and_who_is_unsaid_is_asked() {
    let body = |audience: &str| {
        format!(
            "{audience} chart: (girth: [\"a\"]), care: (worn_as: outerwear), notions: [(name: \"buttons\", count: 5)], \
             strips: [(name: \"cord\", kind: cord, length: \"60 cm\", place: neck, free_end: \"30 cm\")]"
        )
    };
    let adult = looked(&body("audience: adult,"));
    assert!(
        adult.cautions.is_empty() && adult.findings.iter().all(|f| f.code == Code::NotUsedYet),
        "{:?}",
        adult.codes()
    );
    let unsaid = looked(&body(""));
    assert!(unsaid.cautions.is_empty() && unsaid.codes().contains(&"wearer-unsaid"), "{:?}", unsaid.codes());
}

#[test]
fn nothing_says_that_it_complies_and_all_say_who_decides() {
    let all = [
        jacket("6", "place: neck"),
        jacket("6", "place: hem, free_end: \"20 cm\""),
        looked(&pyjama("girls", 3.0).0),
        looked(
            "audience: child(from: \"1\", to: \"4\"), chart: (girth: [\"a\"]), care: (worn_as: sleepwear), notions: [(name: \"zip\")]",
        ),
    ];
    for found in &all {
        assert!(!found.cautions.is_empty());
        for caution in &found.cautions {
            let text = caution.text.join(" ").to_lowercase();
            assert!(!text.contains("compl") && !text.contains("conform") && !text.contains("is safe"), "{text}");
            assert!(text.ends_with("local rules, and a person who knows them, decide."), "{text}");
        }
        // A caution cannot be silenced.
        let loud = found.findings.iter().filter(|f| f.words.iter().any(|(n, _)| *n == "usual"));
        assert!(loud.clone().count() > 0 && loud.clone().all(|f| !f.code.can_be_silenced()));
    }
}

#[test]
fn a_cord_that_only_one_view_lets_hang_out_is_told_there() {
    let found = looked(
        r#"audience: child(from: "4", to: "6"), care: (worn_as: outerwear), chart: (girth: ["a"]), values: [(name: "end", is: "5 cm")],
        strips: [(name: "cord", kind: cord, length: "60 cm", place: hem, free_end: "end", fastened: true)],
        pieces: [(name: "p", points: [(name: "p", at: "(0 cm, 0 cm)"), (name: "q", at: "(9 cm, 0 cm)"), (name: "r", at: "(0 cm, 9 cm)")],
            edges: [(name: "e", from: "p", by: [straight("q")]), (name: "f", from: "q", by: [straight("r")]), (name: "g", from: "r", by: [straight("p")])])],
        views: [(name: "short", pieces: ["p"]), (name: "long", pieces: ["p"], values: [("end", "9 cm")])]"#,
    );
    let told: Vec<&Finding> = found.findings.iter().filter(|f| f.code == Code::CordEnds).collect();
    assert_eq!(told.len(), 1);
    assert_eq!(told[0].place.view, "long");
    let titles: Vec<&str> = found.cautions.iter().map(|c| c.title.as_str()).filter(|t| t.contains("waist")).collect();
    assert_eq!(titles.len(), 2);
    assert!(titles[0].ends_with("(view short)") && titles[1].ends_with("(view long)"), "{titles:?}");
}

/// What is drafted on a survey of bodies is told so, in the examples whose chart names such a survey as its source.
#[test]
fn charts_that_are_a_survey_say_so() {
    let mut surveys = 0;
    for entry in std::fs::read_dir("examples").unwrap() {
        let path = entry.unwrap().path();
        if path.extension().is_none_or(|e| e != "ron") {
            continue;
        }
        let draft = file::read(&std::fs::read_to_string(&path).unwrap()).unwrap().draft;
        let is_survey = draft
            .chart
            .rows
            .iter()
            .any(|r| r.source.contains("not for fitting") || r.source.contains("the check chart"));
        assert_eq!(draft.chart.survey, is_survey, "{}", path.display());
        let model = Engine::new().compute(&draft);
        let told = proof(&model.draft, &model).iter().any(|f| f.code == Code::SurveyChart);
        assert_eq!(told, is_survey, "{}", path.display());
        surveys += usize::from(is_survey);
    }
    assert_eq!(surveys, 4);
}
