//! Pages of help on the command line.

use super::oracle::tracewheel;

#[test]
fn a_page_is_printed_by_its_name_and_all_pages_are_listed() {
    let ran = tracewheel(&["help", "function/swing"]);
    assert_eq!(ran.exit, 0, "{}", ran.err);
    assert!(ran.out.starts_with("swing\n=====\n"), "{}", ran.out);
    assert!(ran.out.contains("swing((0 cm, 0 cm), 5 cm, level((0 cm, 3 cm)), side: right)"), "{}", ran.out);
    for id in ["start", "about-seams", "language"] {
        let page = tracewheel(&["help", id]).out;
        let wide = |most| page.lines().any(|l| !l.starts_with("    ") && l.chars().count() > most);
        assert!(wide(80) && !wide(96), "lines are filled and broken: {page}");
    }
    let all = tracewheel(&["help"]);
    assert_eq!(all.exit, 0);
    for id in ["about-seams", "finding/seam-length", "action/undo", "word/toile", "keys", "preferences"] {
        assert!(all.out.contains(&format!("  {id} ")), "{id}: {}", all.out);
    }
}

#[test]
fn words_find_their_page_or_the_choices() {
    let muslin = tracewheel(&["help", "muslin"]);
    assert!(muslin.out.starts_with("toile\n"), "{}", muslin.out);
    assert!(muslin.out.contains("In the UK toile, in the US muslin."), "{}", muslin.out);
    // One page of this title among many that hold the word.
    assert!(tracewheel(&["help", "seams"]).out.starts_with("Seams\n"));
    let several = tracewheel(&["help", "handle"]);
    assert_eq!(several.exit, 0);
    assert!(several.out.contains("pages hold `handle`") && several.out.contains("  edges "), "{}", several.out);
    let nothing = tracewheel(&["help", "zzz", "qqq"]);
    assert_eq!((nothing.exit, nothing.out.as_str()), (1, ""));
    assert!(nothing.err.contains("no page of help holds `zzz qqq`"), "{}", nothing.err);
}

#[test]
fn the_usage_of_a_command_is_still_printed() {
    let ran = tracewheel(&["help", "measure"]);
    assert!(ran.out.contains("Usage: tracewheel measure") && ran.out.contains("--size"), "{}", ran.out);
    assert!(tracewheel(&["--help"]).out.contains("  help "), "the list of commands names help");
}

#[test]
fn every_finding_says_what_to_do() {
    let rows: serde_json::Value = serde_json::from_str(&tracewheel(&["findings", "--json"]).out).unwrap();
    for row in rows.as_array().unwrap() {
        let code = row["code"].as_str().unwrap();
        if ["not-true", "seam-length", "odd-size", "cell-guessed"].contains(&code) {
            let page = tracewheel(&["help", &format!("finding/{code}")]).out;
            assert!(page.contains("What to do: ") && page.contains(row["what"].as_str().unwrap()), "{page}");
        }
    }
}
