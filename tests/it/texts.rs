//! The words for readers: catalogues that are whole, a second language in all that is published, and numbers as it writes them.

use std::collections::{BTreeMap, BTreeSet};

use tracewheel::base::{Amount, Code, DisplayUnit, Finding, Language};
use tracewheel::compute::Engine;
use tracewheel::document::Draft;
use tracewheel::file;
use tracewheel::finish::{ClothBook, finish, letters};
use tracewheel::output::lay::{Lay, cloth_words, kept_lays, lay_page, lay_pages, sizes_words};
use tracewheel::output::{Block, Item, Picture, Writing, missing_signs, tables_of};
use tracewheel::proof::{Caution, cautions};
use tracewheel::session::{Order, Outputs, PrintWish, Progress, What, booklet_of, outputs};
use tracewheel::texts::{message, set_own, speaking, template};

use crate::house::sources;
use crate::labels::{Made, made};

/// The texts of a catalogue by their ids, read without the crate that the program reads them with.
fn catalogue(language: Language) -> BTreeMap<String, String> {
    let folder = std::fs::read_dir(format!("assets/texts/{}", language.word())).unwrap();
    parsed(&folder.map(|f| std::fs::read_to_string(f.unwrap().path()).unwrap()).collect::<String>())
}

fn parsed(text: &str) -> BTreeMap<String, String> {
    let mut out: BTreeMap<String, String> = BTreeMap::new();
    let mut last = String::new();
    for line in text.lines().filter(|l| !l.starts_with('#') && !l.is_empty()) {
        match line.split_once('=').filter(|_| !line.starts_with(' ')) {
            Some((id, rest)) => {
                last = id.trim().to_owned();
                assert!(out.insert(last.clone(), rest.to_owned()).is_none(), "{last} stands twice");
            }
            None => out.get_mut(&last).unwrap().push_str(&format!("\n{line}")),
        }
    }
    out
}

/// The same in English and in German.
#[cfg(feature = "window")]
pub fn catalogues() -> [BTreeMap<String, String>; 2] {
    Language::ALL.map(catalogue)
}

/// The names behind `$` in a text.
fn variables(text: &str) -> BTreeSet<String> {
    let names = text.split('$').skip(1);
    names.map(|n| n.chars().take_while(|c| c.is_alphanumeric() || matches!(c, '_' | '-')).collect()).collect()
}

/// The calls of `t!`, `say!` and `id!` in Rust: id, and the names that are given; none are told of `id!`. In `work` comments and the insides of strings are blanked.
fn calls(text: &str, work: &str) -> Vec<(String, Option<BTreeSet<String>>)> {
    let mut out = Vec::new();
    let macros =
        ["t!(", "say!(", "id!("].map(|open| work.match_indices(open).map(move |(at, _)| (at, at + open.len())));
    for (at, end) in macros.into_iter().flatten() {
        let Some(quote) = text[end..].find(|c: char| !c.is_whitespace()).filter(|q| text[end + q..].starts_with('"'))
        else {
            continue;
        };
        if text[..at].ends_with(|c: char| c.is_alphanumeric() || c == '_') {
            continue;
        }
        let rest = &text[end + 1 + quote..];
        let (id, rest) = rest.split_once('"').unwrap();
        let (mut depth, mut parts, mut part, mut quoted) = (1, Vec::new(), String::new(), false);
        let mut before = ' ';
        for sign in rest.chars() {
            match sign {
                '"' if before != '\\' => quoted = !quoted,
                '(' | '[' | '{' if !quoted => depth += 1,
                ')' | ']' | '}' if !quoted => depth -= 1,
                _ => {}
            }
            if depth == 0 || depth == 1 && sign == ',' && !quoted {
                parts.push(std::mem::take(&mut part));
            } else {
                part.push(sign);
            }
            if depth == 0 {
                break;
            }
            before = sign;
        }
        let names = parts.iter().map(|p| p.split('=').next().unwrap_or_default().trim().to_owned());
        let given = names.filter(|n| !n.is_empty()).collect();
        out.push((id.to_owned(), (!work[at..].starts_with("id!(")).then_some(given)));
    }
    out
}

/// The texts of a kind of finding, whose ids are made in the program: its message, what it means, what to do about it.
fn of_finding(code: Code) -> [String; 3] {
    ["", "-means", "-advice"].map(|what| format!("finding-{}{what}", code.word()))
}

#[test]
fn every_text_that_is_used_is_there_and_every_one_there_is_used() {
    let english = catalogue(Language::English);
    assert!(english.len() > 300, "{}", english.len());
    let mut used: BTreeSet<String> = Code::ALL.iter().flat_map(|code| of_finding(*code)).collect();
    let lacking: Vec<&String> = used.iter().filter(|id| !english.contains_key(*id)).collect();
    assert_eq!(lacking, [""; 0], "each kind of finding has these");
    for (path, text, work) in sources() {
        for (id, given) in calls(&text, &work) {
            let known = english.get(&id).unwrap_or_else(|| panic!("{path}: no text {id}"));
            given.inspect(|given| assert_eq!(variables(known), *given, "{path}: {id}"));
            used.insert(id);
        }
    }
    let unused: Vec<&String> = english.keys().filter(|id| !used.contains(*id)).collect();
    assert_eq!(unused, [""; 0], "no code uses these");
}

#[test]
fn german_has_the_same_texts_with_the_same_names_and_all_its_letters_are_in_the_font() {
    let (english, german) = (catalogue(Language::English), catalogue(Language::German));
    assert_eq!(english.keys().collect::<Vec<_>>(), german.keys().collect::<Vec<_>>());
    for (id, text) in &english {
        assert_eq!(variables(text), variables(&german[id]), "{id}");
        // Forms are chosen by the same counts.
        let chosen = |text: &str| text.matches("->").count();
        assert_eq!(chosen(text), chosen(&german[id]), "{id}");
    }
    let missing = missing_signs(german.values().map(String::as_str));
    let seen: Vec<char> = missing.into_iter().filter(|c| !c.is_control()).collect();
    assert_eq!(seen, [' '; 0]);
    assert!(german.values().any(|t| t.contains('ß')) && german.values().any(|t| t.contains('ü')));
}

#[test]
fn every_kind_of_finding_has_a_meaning_and_an_advice_of_its_own_in_each_language() {
    let [english, german] = Language::ALL.map(catalogue);
    for texts in [&english, &german] {
        let mut own = BTreeSet::new();
        for [_, means, advice] in Code::ALL.iter().map(|code| of_finding(*code)) {
            for id in [means, advice] {
                let text = texts[&id].trim();
                assert!(text.len() > 10 && text.ends_with('.') && variables(text).is_empty(), "{id}: {text}");
                assert!(own.insert(text), "{id}: a kind of finding says this too: {text}");
            }
        }
    }
    // Numbers and what is typed are the same in both.
    let typed = |text: &str| text.split('`').skip(1).step_by(2).map(str::to_owned).collect::<Vec<_>>();
    for id in Code::ALL.iter().flat_map(|code| of_finding(*code)) {
        let (a, b) = (&english[&id], &german[&id]);
        assert_eq!(numbers(a), numbers(b), "{id}");
        assert!(typed(a).iter().all(|t| typed(b).contains(t)), "{id}: {b}");
    }
}

#[test]
fn a_finding_is_worded_for_whoever_is_at_the_program() {
    let amount = |name, by_size: &[f64]| Amount { name, unit: "mm", by_size: by_size.to_vec() };
    let mut finding = Finding::new(Code::DartLegs).word("dart", "`front.waist_dart`");
    finding.amounts = vec![amount("one", &[101.0, 102.5]), amount("two", &[100.0, 100.0])];
    finding.amounts.extend([amount("difference", &[1.0, 2.5]), amount("limit", &[0.5])]);
    (finding.sizes, finding.worst) = (vec!["36".into(), "38".into()], 1);
    // In a thread, whose language ends with it. What is being published meanwhile is in another one.
    let told = |own: Language, other: Language, unit: DisplayUnit| {
        let finding = finding.clone();
        let said = move || {
            set_own(own);
            speaking(other, || [message(&finding, unit), template(Code::OffTheEdge)])
        };
        std::thread::spawn(said).join().unwrap()
    };
    let (en, de) = (Language::English, Language::German);
    assert_eq!(
        told(en, de, DisplayUnit::Cm),
        [
            "the legs of `front.waist_dart` are 10.25 cm and 10 cm: 2.5 mm apart, limit 0.5 mm; swing the shorter one about the tip, or move the tip (2 sizes: 36, 38, worst in 38)",
            "{at} is outside {edge}, which is {length} long"
        ]
    );
    let [said, template] = told(de, en, DisplayUnit::Cm);
    assert!(said.contains("10,25 cm und 10 cm: 2,5 mm Unterschied, Grenze 0,5 mm"), "{said}");
    assert!(said.ends_with("(2 Größen: 36, 38, am stärksten in 38)") && said.contains("`front.waist_dart`"), "{said}");
    assert!(["{at}", "{edge}", "{length}"].iter().all(|name| template.contains(name)), "{template}");
    let inches = told(de, en, DisplayUnit::InchEighths);
    assert!(inches[0].contains("sind 4 Zoll und 3 7/8 Zoll:"), "{inches:?}");
}

/// What the window shows in English under these words is quoted in the German help as the window shows it in German.
#[test]
fn german_help_quotes_the_window_as_it_is_in_german() {
    let bare = |text: &str| text.trim().trim_end_matches(" …").to_owned();
    let [english, german] = Language::ALL.map(catalogue);
    let mut quoted = 0;
    for file in std::fs::read_dir("assets/help/en").unwrap() {
        let name = file.unwrap().file_name().into_string().unwrap();
        let [page, other] = ["en", "de"].map(|l| std::fs::read_to_string(format!("assets/help/{l}/{name}")).unwrap());
        let said: String = page.split('`').step_by(2).collect();
        for words in said.split('"').skip(1).step_by(2).map(bare) {
            // The step `join` on a page; the field of that name is another thing.
            if (name.as_str(), words.as_str()) == ("derived.md", "join") {
                continue;
            }
            let same = english.iter().filter(|(_, text)| bare(text) == words);
            let here: Vec<String> = same.map(|(id, _)| bare(&german[id])).collect();
            quoted += usize::from(!here.is_empty());
            let is_quoted = here.is_empty() || here.iter().any(|text| other.contains(&format!("„{text}")));
            assert!(is_quoted, "{name}: {words} is {here:?}");
        }
    }
    assert!(quoted > 20, "{quoted}");
}

/// A draft as if its file said so.
fn in_language(name: &str, language: Language) -> (String, Made) {
    let text = std::fs::read_to_string(format!("examples/{name}.ron")).unwrap();
    let mut draft = file::read(&text).unwrap().draft;
    draft.language = language;
    let written = file::write(&draft);
    assert_eq!(written.contains("language: de"), language == Language::German, "English is not written");
    (text, made(&written))
}

fn order<'a>(made: &'a Made, what: &'a [What], groups: &'a [(usize, Vec<usize>)], wish: &'a PrintWish) -> Order<'a> {
    let (draft, model, finished) = (&*made.draft, &made.model, &made.finished);
    Order { draft, model, finished, stem: "x", what, groups, wish, width: 1500.0, folder: None }
}

/// All that is read of something written, each with whether it is of the designer's steps.
fn read(writing: &Writing) -> Vec<(String, bool)> {
    let mut out: Vec<(String, bool)> = vec![(writing.title.clone(), false)];
    out.extend(writing.about.iter().map(|a| (a.clone(), false)));
    let mut heading = 0;
    for block in &writing.blocks {
        if matches!(block, Block::Heading { .. }) {
            heading += 1;
        }
        let is_step = (writing.steps.start + 1..=writing.steps.end).contains(&heading);
        let mut put = |text: &str| out.push((text.to_owned(), is_step));
        match block {
            Block::Heading { text, .. } | Block::Paragraph(text) => put(text),
            Block::List { items, .. } => items.iter().for_each(|t| put(t)),
            Block::Figure { says, caption, picture } => {
                [says, caption].into_iter().for_each(|t| put(t));
                drawn(picture).iter().for_each(|t| put(t));
            }
            Block::Caution { title, text } => std::iter::once(title).chain(text).for_each(|t| put(t)),
            Block::Table(table) => {
                std::iter::once(&table.title)
                    .chain(&table.before)
                    .chain(&table.head)
                    .chain(&table.notes)
                    .for_each(|t| put(t));
                for line in &table.lines {
                    [&line.group, &line.name].into_iter().for_each(|t| put(t));
                    line.cells.iter().for_each(|c| put(&c.in_cm()));
                }
            }
            _ => {}
        }
    }
    out
}

/// The words of a drawing.
pub fn drawn(picture: &Picture) -> Vec<String> {
    fn of(items: &[Item], out: &mut Vec<String>) {
        for item in items {
            match item {
                Item::Text(text) => out.push(text.text.to_string()),
                Item::Group { items, .. } | Item::Clip { items, .. } => of(items, out),
                Item::Shared { what, .. } => of(&what.items, out),
                _ => {}
            }
        }
    }
    let mut out = Vec::new();
    of(&picture.items, &mut out);
    out
}

/// Words as they are compared with the draft's: small, `_` as a space.
fn plain(text: &str) -> String {
    text.replace('_', " ").to_lowercase()
}

/// English words that no German sentence holds.
const TELLTALE: [&str; 22] = [
    "the", "of", "and", "with", "from", "each", "size", "sizes", "cut", "sewn", "page", "pages", "not", "are", "is",
    "be", "to", "at", "on", "one", "all", "or",
];

pub fn has_english(text: &str) -> bool {
    plain(text).split(|c: char| !c.is_alphabetic()).any(|word| TELLTALE.contains(&word))
}

#[test]
fn the_german_booklet_of_the_apron_has_no_english_sentence_but_the_designers() {
    let [english, german] = Language::ALL.map(|language| {
        let (typed, made) = in_language("market-apron", language);
        let cases: Vec<usize> = (0..made.model.plan.cases.range).collect();
        let wish = PrintWish::default();
        let order = order(&made, &[], &[], &wish);
        (typed, read(&booklet_of(&order, 0, &cases, &BTreeMap::new())))
    });
    let typed = plain(&english.0);
    assert_eq!(english.1.len(), german.1.len());
    assert!(german.1.len() > 100 && german.1.iter().any(|(t, _)| t == "Was du brauchst"), "{:?}", german.1);
    // A letter or number of the program's stands before a name, and a name before what is told of it: the rest is the designer's.
    let is_typed = |text: &str| {
        let rest = text.split_once(' ').map_or("", |(_, rest)| rest);
        typed.contains(text) || !rest.is_empty() && typed.contains(rest)
    };
    // A formula or sentence of the draft within one of the program's is the designer's too.
    let mut own: Vec<&str> = typed.split('"').skip(1).step_by(2).filter(|t| t.contains(['(', ' '])).collect();
    own.sort_by_key(|t| std::cmp::Reverse(t.len()));
    let without_own = |text: &str| own.iter().fold(plain(text), |rest, own| rest.replace(own, ""));
    let of_designer = |text: &str| plain(text).split(": ").all(|part| is_typed(part.trim_end_matches('.')));
    let mut same = 0;
    for ((english, is_step), (german, _)) in english.1.iter().zip(&german.1) {
        let is_words = german.chars().any(char::is_alphabetic);
        if english == german && is_words {
            same += 1;
            assert!(*is_step || of_designer(german), "the same in both: {german}");
        }
        assert!(*is_step || of_designer(german) || !has_english(&without_own(german)), "English in: {german}");
    }
    assert!(same > 10, "names stay: {same}");
}

/// What files hold that are read, by name: HTML, tables for spreadsheets, the words of pages.
fn published(made: &Made, language: Language) -> (Outputs, BTreeMap<String, String>) {
    let groups: Vec<(usize, Vec<usize>)> = (0..made.model.of_views().len()).map(|view| (view, vec![0, 1])).collect();
    let wish = PrintWish::default();
    let out = outputs(&order(made, &What::ALL, &groups, &wish), &Progress::default(), &|_| ()).unwrap();
    let list = out.list("x", &made.draft, wish.purpose).unwrap();
    let texts = out.files.iter().filter(|f| f.name.ends_with(".csv") || f.name.ends_with(".html"));
    let mut all: BTreeMap<String, String> =
        texts.map(|f| (f.name.clone(), String::from_utf8(f.bytes.clone()).unwrap())).collect();
    all.insert("list".to_owned(), String::from_utf8(list.1).unwrap());
    assert!(
        all.values().filter(|t| t.contains("<html ")).all(|t| t.contains(&format!("lang=\"{}\"", language.word())))
    );
    (out, all)
}

#[test]
fn the_smock_in_german_has_the_same_files_without_one_english_text_of_the_catalogue() {
    let [english, german] = Language::ALL.map(|language| {
        let (_, made) = in_language("work-smock", language);
        published(&made, language)
    });
    // Names of the draft are read without their `_`.
    let typed = std::fs::read_to_string("examples/work-smock.ron").unwrap().replace('_', " ");
    // How many pages there are, and how wide a sheet is, hangs on the words of labels.
    let bare = |name: &str| name.replace(|c: char| c.is_ascii_digit(), "");
    let names = |out: &Outputs| out.files.iter().map(|f| bare(&f.name)).collect::<Vec<_>>();
    assert_eq!(names(&english.0), names(&german.0), "names of files are the same in every language");
    // What is told to who publishes is no part of what is published.
    assert_eq!((&english.0.notes, &english.0.lacking), (&german.0.notes, &german.0.lacking));
    let catalogue = std::fs::read_to_string("assets/texts/en/published.ftl").unwrap();
    let texts: Vec<(String, String)> = parsed(&catalogue)
        .into_iter()
        .map(|(id, text)| (id, text.trim().to_owned()))
        .filter(|(_, text)| !text.contains('{') && text.contains(' ') && !typed.contains(&**text))
        .collect();
    assert!(texts.len() > 80, "{}", texts.len());
    let in_any = |all: &BTreeMap<String, String>, text: &str| all.values().any(|t| t.contains(text));
    let told = texts.iter().filter(|(_, text)| in_any(&english.1, text)).count();
    assert!(told > 30, "{told}");
    for (id, text) in &texts {
        assert!(!in_any(&german.1, text), "{id}: {text}");
    }
    // Tables for spreadsheets: semicolons, decimal commas, the mark of UTF-8, and the same numbers.
    for (name, table) in german.1.iter().filter(|(name, _)| name.ends_with(".csv")) {
        let (rows, other) = (csv_rows(table, b';'), csv_rows(&english.1[name], b','));
        assert!(table.starts_with('\u{feff}') && !english.1[name].starts_with('\u{feff}'), "{name}");
        assert_eq!(rows.len(), other.len(), "{name}");
        for (row, other) in rows.iter().zip(&other) {
            assert_eq!(row.len(), other.len(), "{name}: {row:?}");
            for (cell, other) in row.iter().zip(other).filter(|(_, o)| o.parse::<f64>().is_ok()) {
                assert_eq!(cell, &other.replace('.', ","), "{name}");
            }
        }
    }
    let chart = german.1.iter().find(|(name, _)| name.contains("body-chart")).unwrap().1;
    assert!(chart.contains("Größe;Einheit;") && chart.contains(";cm;") && chart.contains(";Zoll;"), "{chart}");
}

#[test]
fn lay_plans_and_their_tables_are_in_german_too() {
    let mut lays = 0;
    for name in ["childs-smock", "work-smock"] {
        let (typed, made) = in_language(name, Language::German);
        let typed = plain(&typed);
        let signs = letters(&made.model);
        let all = speaking(Language::German, || {
            let mut out = Vec::new();
            for (view, own) in made.model.of_views().iter().enumerate() {
                let finished = &made.finished.of_views()[view];
                let kept: Vec<Lay> =
                    kept_lays(&ClothBook::new(own, finished)).into_iter().map(|k| k.lay.unwrap()).collect();
                lays += kept.len();
                let named = |lay| (cloth_words(lay), (sizes_words(&[("8".into(), 1)]), lay));
                let named: Vec<_> = kept.iter().map(named).collect();
                out.extend(lay_pages("x", &named, &signs).iter().flat_map(drawn));
                out.extend(kept.iter().flat_map(|lay| drawn(&lay_page("x", lay, &signs))));
                let cases: Vec<usize> = (0..own.plan.cases.range).collect();
                let tables = tables_of(&made.draft, (&made.model, &made.finished), view, &cases);
                for table in tables.iter().filter(|t| t.name.starts_with("cloth")) {
                    out.extend([&table.before, &table.notes, &table.head].into_iter().flatten().cloned());
                    out.extend(table.lines.iter().map(|l| format!("{}: {}", l.group, l.name)));
                }
            }
            out
        });
        assert!(all.iter().any(|t| t == "Größe 8"), "{all:?}");
        assert!(all.iter().any(|t| t.contains(" cm (") && t.contains("Zoll")), "{all:?}");
        for text in &all {
            assert!(typed.contains(&plain(text)) || !has_english(text), "{name}: {text}");
        }
    }
    assert!(lays == 180, "{lays}");
}

fn csv_rows(text: &str, separator: u8) -> Vec<Vec<String>> {
    let mut rows = vec![vec![String::new()]];
    let mut quoted = false;
    for sign in text.trim_start_matches('\u{feff}').trim_end().chars() {
        let row = rows.last_mut().unwrap();
        match sign {
            '"' => quoted = !quoted,
            '\r' => {}
            '\n' if !quoted => rows.push(vec![String::new()]),
            sign if sign == char::from(separator) && !quoted => row.push(String::new()),
            sign => row.last_mut().unwrap().push(sign),
        }
    }
    rows
}

/// The numbers of words, a comma within one as a point, in no order.
fn numbers(words: &str) -> Vec<String> {
    let signs: Vec<char> = words.chars().collect();
    let mut out: Vec<String> = Vec::new();
    let mut number = String::new();
    for (i, sign) in signs.iter().enumerate() {
        let within = !number.is_empty() && signs.get(i + 1).is_some_and(char::is_ascii_digit);
        match sign {
            digit if digit.is_ascii_digit() => number.push(*digit),
            ',' | '.' | '/' if within => number.push(if *sign == ',' { '.' } else { *sign }),
            _ if !number.is_empty() => out.push(std::mem::take(&mut number)),
            _ => {}
        }
    }
    out.extend(Some(number).filter(|n| !n.is_empty()));
    out.sort();
    out
}

fn told(draft: &Draft, language: Language) -> Vec<Caution> {
    let model = Engine::new().compute(draft);
    speaking(language, || cautions(&model.draft, &model))
}

/// Drafts of children's clothes that between them call for every caution.
fn childrens() -> Vec<Draft> {
    let head = "format: \"tracewheel draft\", version: 0, chart: (girth: [\"98\", \"104\"], rows: [(name: \"chest\", kind: body, by: [girth], cells: [(\"98\", \"55 cm\"), (\"104\", \"56 cm\")])])";
    let ages = "audience: child(from: \"2 years\", to: \"8 years\")";
    let cords = |worn: &str| {
        format!(
            "({head}, {ages}, care: (worn_as: {worn}), strips: [(name: \"hood_cord\", kind: cord, length: \"60 cm\", place: neck), (name: \"tie\", kind: cord, length: \"90 cm\", place: waist, free_end: \"90.5 mm\"), (name: \"lace\", kind: cord, length: \"1 m\", place: hem), (name: \"loop\", kind: cord, length: \"8 cm\", place: elsewhere), (name: \"lost\", kind: cord, length: \"8 cm\", place: hem, free_end: \"1 cm / 0\"), (name: \"tape\", length: \"50 cm\"), (name: \"trim\", kind: binding, length: \"50 cm\")], notions: [(name: \"snaps\", count: 4)])"
        )
    };
    let one = "audience: child(from: \"2 years\", to: \"2 years\")";
    let mut texts: Vec<String> = ["outerwear", "other", "unstated", "sleepwear"].map(cords).to_vec();
    texts.push(format!(
        "({head}, {one}, care: (worn_as: tight_sleepwear, rule_sizes: [(\"104\", \"12-14\")], girths: [(place: chest, is: \"chest + 1.5 cm\"), (place: wrist, is: \"chest / 0\")]))"
    ));
    texts.iter().map(|text| file::read(text).unwrap_or_else(|e| panic!("{e}: {text}")).draft).collect()
}

#[test]
fn cautions_in_german_have_the_rules_and_numbers_of_the_english_ones() {
    let [plain, translated] = Language::ALL.map(|l| childrens().iter().flat_map(|d| told(d, l)).collect::<Vec<_>>());
    assert_eq!(plain.len(), translated.len());
    let mut rules = BTreeSet::new();
    for (english, german) in plain.iter().zip(&translated) {
        assert_eq!((english.text.len(), &english.sizes), (german.text.len(), &german.sizes), "{}", english.title);
        assert_ne!(english.title, german.title);
        for (a, b) in english.text.iter().zip(&german.text) {
            assert_eq!(numbers(a), numbers(b), "{a}\n{b}");
            for rule in ["16 CFR 1120.3(b)", "ASTM F1816", "EN 14682", "16 CFR 1615", "1616", "16 CFR 1501"] {
                assert_eq!(a.matches(rule).count(), b.matches(rule).count(), "{rule}: {a}\n{b}");
                rules.extend(a.contains(rule).then_some(rule));
            }
            assert!(!has_english(b), "{b}");
        }
        // It defers, in the last sentence of each, and nothing says that a garment keeps to a rule.
        assert!(english.text.last().is_some_and(|t| t.contains("a person who knows them, decide")), "{english:?}");
        assert!(
            german.text.last().is_some_and(|t| t.contains("es entscheiden die örtlichen Vorschriften")),
            "{german:?}"
        );
        let all = plain_words(german);
        for word in ["erfüllt", "entspricht", "konform", "zulässig", "ist sicher", "unbedenklich"] {
            assert!(!all.contains(word), "{word}: {all}");
        }
    }
    assert_eq!(rules.len(), 6, "{rules:?}");
    // By the catalogue, so that a text that none of these drafts calls for is held as well.
    let (english, german) = (catalogue(Language::English), catalogue(Language::German));
    for (id, text) in english.iter().filter(|(id, _)| id.starts_with("care-") || id.starts_with("rule-")) {
        assert_eq!(numbers(text), numbers(&german[id]), "{id}");
    }
}

fn plain_words(caution: &Caution) -> String {
    plain(&format!("{} {} {}", caution.title, caution.rule, caution.text.join(" ")))
}

#[test]
fn the_language_changes_no_number() {
    let [english, german] = Language::ALL.map(|language| in_language("childs-smock", language).1);
    let cases = english.model.plan.cases.list.len();
    assert_eq!(cases, german.model.plan.cases.list.len());
    for (a, b) in english.model.of_views().iter().zip(german.model.of_views()) {
        for case in 0..a.plan.cases.list.len() {
            for node in 0..a.plan.nodes.len() as u32 {
                assert_eq!(format!("{:?}", a.item(case, node)), format!("{:?}", b.item(case, node)));
            }
        }
    }
    let again = finish(&german.draft, &german.model);
    assert_eq!(format!("{:?}", english.finished.cases), format!("{:?}", again.cases));
}
