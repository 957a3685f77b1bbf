//! What the reader refuses, with the words in which it does, and what it passes over.

use std::time::{Duration, Instant};

use tracewheel::document::{Draft, FORMAT, Row};
use tracewheel::file::{Refusal, comments, limits, read, write};

/// A draft with this after its head; it begins in line 4, column 5.
fn with(body: &str) -> String {
    format!("(\n    format: \"{FORMAT}\",\n    version: 0,\n    {body}\n)\n")
}

/// The message with which a text is refused.
fn refused(text: &str) -> String {
    match read(text) {
        Ok(_) => panic!("was read:\n{text}"),
        Err(error) => error.to_string(),
    }
}

fn check(text: &str, refusal: Refusal, message: &str) {
    assert_eq!(refused(text), message, "\n{text}");
    assert_eq!(read(text).unwrap_err().refusal, refusal, "\n{text}");
}

#[test]
fn refuses_what_is_no_draft() {
    let table = [
        ("", "it is empty"),
        (" \n\t // only a comment\n", "it begins with `// only a comment`"),
        ("\u{0}\u{1}PK\u{3}\u{4}", "it begins with `··PK··`"),
        ("{\"format\": \"tracewheel draft\"}", "it begins with `{\"format\": \"tracewhe`"),
        ("<svg width=\"3\"/>", "it begins with `<svg width=\"3\"/>`"),
        ("size,bust\n76,76\n", "it begins with `size,bust·76,76`"),
        ("(name: \"x\")", "it does not say its format"),
        ("(this is prose)", "it does not say its format"),
        ("(format: \"other\", version: 0)", "its format is the text \"other\""),
        ("(format: 3, version: 0)", "its format is the number `3`"),
    ];
    for (text, found) in table {
        let message = format!("this is not a draft: {found}, expected `(format: \"tracewheel draft\"`");
        check(text, Refusal::NotADraft, &message);
    }
}

#[test]
fn refuses_newer_versions_before_anything_else() {
    let newer = |n: &str| {
        format!("written by a newer version {n}; this one reads up to version 0; open it with a newer Tracewheel")
    };
    let table = [
        ("(format: \"tracewheel draft\", version: 1)", "1"),
        ("(format: \"tracewheel draft\", version: 7, unheard_of: [(a: 1)])", "7"),
        ("(version: 7, format: \"tracewheel draft\", {new} signs)", "7"),
        ("(format: \"tracewheel draft\", version: 99999999999)", "99999999999"),
    ];
    for (text, version) in table {
        check(text, Refusal::Newer, &newer(version));
    }
    check(
        "(format: \"tracewheel draft\", version: \"0\")",
        Refusal::Shape,
        "line 1, column 39, at `version`: found the text \"0\", expected a whole number from 0 to 4294967295; \
         write it without quotes: 0",
    );
    check(
        "(format: \"tracewheel draft\")",
        Refusal::Shape,
        "line 1, column 1, at `version`: found no `version`, expected `version: 0`",
    );
    check(
        "(format: \"tracewheel draft\", version: 0.5)",
        Refusal::Shape,
        "line 1, column 39, at `version`: found `0.5`, expected a text or a whole number; \
         counts are whole numbers; anything else is a text in quotes: \"0.5\"",
    );
}

/// The fixtures of `file_refused.txt`.
#[test]
fn says_what_is_wrong_and_where() {
    let mut body: Vec<&str> = Vec::new();
    let (mut checked, mut wrong) = (0, Vec::new());
    for line in
        include_str!("file_refused.txt").lines().skip(2).filter(|line| !line.is_empty() && !line.starts_with('#'))
    {
        let Some(expected) = line.strip_prefix("=> ") else {
            body.push(line);
            continue;
        };
        let text = with(&body.join("\n"));
        let error = read(&text).map(|_| ()).expect_err(&text);
        let found = format!("{:?}: {error}", error.refusal);
        if found != expected {
            wrong.push(format!("{}\n   {found}\nnot {expected}", body.join("\n")));
        }
        checked += 1;
        body.clear();
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n\n"));
    assert!(checked >= 79 && body.is_empty(), "{checked} {body:?}");
}

/// What cannot be seen in a file of fixtures.
#[test]
fn names_letters_that_are_not_seen() {
    check(
        &with("title: \u{a0}\"a\","),
        Refusal::Syntax,
        "line 4, column 12, at `title`: found the letter U+00A0, expected a sign of a draft; it is no blank although \
         it looks like one: replace it",
    );
    check(
        &with("title: \"a\",\u{0}\u{0}"),
        Refusal::Syntax,
        "line 4, column 16: found the letter U+0000, expected a sign of a draft; the file is damaged",
    );
}

#[test]
fn says_where_a_file_is_cut_off() {
    let whole = with("pieces: [(name: \"a\", points: [(name: \"b\")])],");
    let cut = |behind: &str| &whole[..whole.find(behind).unwrap() + behind.len()];
    let open = |at: &str, column: usize| {
        format!(
            "found the end of the file, expected {at}; the `(` of line 4, column {column} is still open: \
             is the file cut off?"
        )
    };
    check(
        cut("(name: \"a\""),
        Refusal::Syntax,
        &format!("line 4, column 24, at `pieces[0].name`: {}", open("`,` or `)`", 14)),
    );
    check(
        cut("points: [(name:"),
        Refusal::Syntax,
        &format!(
            "line 4, column 41, at `pieces[0].points[0].name`: {}",
            open("a text, a word, a whole number, `(` or `[`", 35)
        ),
    );
    check(
        cut("(name: \"a"),
        Refusal::Syntax,
        "line 4, column 21, at `pieces[0].name`: found a text that never ends, expected a closing quote `\"`; \
         is the file cut off, or a quote missing?",
    );
    // Every beginning of a draft is refused, down to the last bracket.
    for end in (0..whole.trim_end().len()).filter(|end| whole.is_char_boundary(*end)) {
        assert!(read(&whole[..end]).is_err(), "{}", &whole[..end]);
    }
    assert!(read(&whole).is_ok());
}

#[test]
fn stops_at_its_limits() {
    let list = |field: &str, n: usize| with(&format!("{field}: [{}],", "(),".repeat(n)));
    let inner = |before: &str, n: usize, behind: &str| with(&format!("{before}{}{behind}", "(),".repeat(n)));
    type Filled<'a> = &'a dyn Fn(usize) -> String;
    let at_and_over: [(Filled, limits::Limit, &str); 8] = [
        (&|n| list("pieces", n), limits::PIECES, "pieces[2000]"),
        (&|n| inner("pieces: [(points: [", n, "])],"), limits::POINTS, "pieces[0].points[5000]"),
        (&|n| inner("pieces: [(edges: [", n, "])],"), limits::EDGES, "pieces[0].edges[1000]"),
        (&|n| list("seams", n), limits::SEAMS, "seams[5000]"),
        (&|n| inner("chart: (rows: [", n, "]),"), limits::ROWS, "chart.rows[2000]"),
        (&|n| with(&format!("chart: (girth: [{}]),", "\"1\",".repeat(n))), limits::SIZES, "chart.girth[400]"),
        (&|n| list("log: (fittings", n).replace("],\n", "]),\n"), limits::OTHER, "log.fittings[2000]"),
        (&|n| with(&format!("pieces: [(name: \"{}\")],", "é".repeat(n))), limits::FORMULA, "pieces[0].name"),
    ];
    for (text, limit, path) in at_and_over {
        assert!(read(&text(limit.most)).is_ok(), "{path}: {}", refused(&text(limit.most)));
        let error = read(&text(limit.most + 1)).unwrap_err();
        assert_eq!((error.refusal, error.path.as_str(), error.line), (Refusal::OverLimit, path, 4));
        let message =
            format!(", at `{path}`: found {} {}, at most {}; {}", limit.most + 1, limit.of(), limit.most, limit.hint());
        assert!(error.to_string().ends_with(&message), "{error}");
    }
    let prose = |n: usize| with(&format!("note: \"{}\",", "x".repeat(n)));
    assert!(read(&prose(limits::TEXT.most)).is_ok());
    check(
        &prose(limits::TEXT.most + 1),
        Refusal::OverLimit,
        "line 4, column 11, at `note`: found 200001 letters in a text, at most 200000; shorten it",
    );
    // An escaped letter is one letter.
    let escaped = |n: usize| with(&format!("pieces: [(name: \"{}\")],", "\\u{1F9F5}\\n".repeat(n)));
    assert!(read(&escaped(limits::FORMULA.most / 2)).is_ok());
    assert_eq!(read(&escaped(limits::FORMULA.most / 2 + 1)).unwrap_err().refusal, Refusal::OverLimit);
    let many = with(&format!("drawings: [{}],", format!("(points: [{}]),", "(),".repeat(5_000)).repeat(101)));
    let error = read(&many).unwrap_err();
    assert_eq!(error.found, "500001 groups and lists in the file");
    assert!(error.path.starts_with("drawings[99].points["), "{error}");
}

#[test]
fn stops_at_deep_brackets() {
    let deep = format!("(format: \"{FORMAT}\", version: 0, pieces: {}", "[".repeat(10_000));
    check(
        &deep,
        Refusal::OverLimit,
        &format!(
            "line 1, column 81, at `pieces{}`: found 33 brackets inside one another, at most 32; \
             take out the superfluous brackets",
            "[0]".repeat(31)
        ),
    );
    for sign in ["(", "[(", "a(", "a: (", "/*", "((("] {
        for text in [sign.repeat(10_000), with(&sign.repeat(10_000)), with(&format!("seams: {}", sign.repeat(10_000)))]
        {
            assert!(read(&text).is_err());
        }
    }
}

/// Long inputs come to an end soon: ten million bytes in far less than the ten seconds that are allowed here.
#[test]
fn reads_large_texts_in_time() {
    let over = limits::FILE.most + 1;
    let long = format!("(format: \"{FORMAT}\", version: 0, note: \"{}\")", "a".repeat(over));
    let error = read(&long).unwrap_err();
    assert_eq!((error.refusal, error.found), (Refusal::OverLimit, format!("{} bytes", long.len())));
    let ten = 10_000_000;
    let row = format!("(name: \"{}\"),", "n".repeat(4_900));
    let inputs = [
        (with(&format!("chart: (rows: [{}]),", row.repeat(1_990))), true),
        (with(&format!("note: \"{}\",", "\\n".repeat(ten / 2))), false),
        (with(&"title: \"a\",\n".repeat(ten / 12)), false),
        (with(&"\"a\n".repeat(ten / 3)), false),
        (with(&format!("{}x", "/* a */ // b\n".repeat(ten / 13))), false),
        (with(&"r#".repeat(ten / 2)), false),
    ];
    for (text, fine) in inputs {
        assert!(text.len() > 9_000_000);
        let start = Instant::now();
        let result = read(&text);
        assert!(start.elapsed() < Duration::from_secs(10), "{:?} for {}…", start.elapsed(), &text[..90]);
        assert_eq!(result.is_ok(), fine, "{}…", &text[..90]);
    }
}

#[test]
fn passes_over_a_byte_order_mark() {
    let text = with("title: \"Cuff\",");
    let marked = format!("\u{feff}{text}");
    assert_eq!(read(&marked), read(&text));
    assert_eq!(read(&marked).unwrap().draft.title, "Cuff");
    let error = refused(&format!("\u{feff}{}", text.replace("title", "titel")));
    assert!(error.starts_with("line 4, column 5, at `titel`"), "{error}");
    assert!(refused(&format!("\u{feff}\u{feff}{text}")).starts_with("this is not a draft"));
}

#[test]
fn reads_what_hands_write() {
    let text = "Draft(version:0,format:\"tracewheel draft\",\r\n\ttitle:r#\"a \"b\" \\c\"#,chart:(rows:[\
                Row(is:\"2 cm\",\
                name:\"a\\u{e9}\\x41\\\n   b\",),],),)";
    let row = Row { name: "aéAb".into(), is: "2 cm".into(), ..Row::default() };
    let mut expected = Draft { format: FORMAT.into(), title: "a \"b\" \\c".into(), ..Draft::default() };
    expected.chart.rows = vec![row];
    let opened = read(text).unwrap();
    assert_eq!(opened.draft, expected);
    assert!(!opened.had_comments);
    assert_eq!(read(&write(&expected)).unwrap().draft, expected);
}

#[test]
fn counts_comments_exactly() {
    let table: [(&str, &[&str]); 10] = [
        ("title: \"a // b /* c */\",", &[]),
        ("title: r#\"a \" // b\"#,", &[]),
        ("title: \"\\\" // b\",", &[]),
        ("title: \"a\", // b", &["b"]),
        ("title: \"a\", // b\r\n    // c", &["b", "c"]),
        ("title: /* b */ \"a\",", &["b"]),
        ("title: \"a\", /* b /* c */ \" */ // d \"", &["b /* c */ \"", "d \""]),
        ("/* b // c */", &["b // c"]),
        ("// title: \"a\",\n    /* two\n   lines */", &["title: \"a\",", "two\n   lines"]),
        ("/**/", &[]),
    ];
    for (body, expected) in table {
        let text = with(body);
        assert_eq!(comments(&text), expected, "{body}");
        let empty = body == "/**/";
        assert_eq!(read(&text).unwrap().had_comments, empty || !expected.is_empty(), "{body}");
    }
    let around = format!("// before\n{}// behind", with(""));
    assert_eq!(comments(&around), ["before", "behind"]);
    assert!(read(&around).unwrap().had_comments);
    assert_eq!(comments(&format!("{around}\n\"never ends // no")), ["before", "behind"]);
}
