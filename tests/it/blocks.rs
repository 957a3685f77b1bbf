//! Blocks taken from other drafts: what comes along computes as it did there, what changes there is noticed and told with its amounts, what
//! was changed here is not lost, and the files may move together.

use std::path::PathBuf;

use tempfile::TempDir;
use tracewheel::base::{Code, Severity};
use tracewheel::compute::{Engine, Model};
use tracewheel::document::{Draft, Inner, Part};
use tracewheel::file;
use tracewheel::proof::proof;
use tracewheel::session::{
    Command, Deleting, Keep, LookedAt, Taking, TextCommand, There, Work, accept_block, delete, look_at_blocks, rename,
    standing, take_block, users,
};

use super::oracle::{Ran, tracewheel};

const BLOCK: &str = "examples/bodice-sleeve.ron";
const EXAMPLES: [&str; 6] =
    ["bodice-sleeve", "bodice-finished", "skirt-finished", "panel-top", "market-apron", "trousers"];

fn draft(path: &str) -> Draft {
    file::read(&std::fs::read_to_string(path).unwrap()).unwrap().draft
}

fn taking(pieces: &[&str], prefix: &str) -> Taking {
    Taking {
        name: "base".to_owned(),
        file: "block.ron".to_owned(),
        pieces: pieces.iter().map(|p| (*p).to_owned()).collect(),
        prefix: prefix.to_owned(),
    }
}

/// Sewn length and area of everything in a piece, in every size of the range: formula and bits.
fn numbers(draft: &Draft, piece: &str, called: &str) -> Vec<(String, Vec<u64>)> {
    let own = draft.pieces.iter().find(|p| p.name == called).unwrap();
    let edges: Vec<String> = own.edges.iter().chain(&own.lines).map(|e| e.name.clone()).collect();
    let formula = |e: &String| format!("length({called}.{e})");
    let formulas: Vec<String> = edges.iter().map(formula).chain([format!("area({called})")]).collect();
    let asked: Vec<&str> = formulas.iter().map(String::as_str).collect();
    let model = Engine::new().compute_with(draft, &asked);
    formulas
        .iter()
        .enumerate()
        .map(|(i, f)| {
            let value = |case: usize| {
                let item = model.plan.extras[i].and_then(|node| model.item(case, node));
                item.and_then(|i| i.real()).map_or(u64::MAX, f64::to_bits)
            };
            (f.replace(called, piece), (0..model.plan.cases.range).map(value).collect())
        })
        .collect()
}

fn findings(draft: &Draft) -> Vec<(Code, String)> {
    let model = Engine::new().compute(draft);
    let found = proof(&model.draft, &model);
    found.into_iter().filter(|f| f.severity() == Severity::Error).map(|f| (f.code, f.place.name)).collect()
}

#[test]
fn every_piece_taken_alone_computes_as_it_did_there() {
    let mut many = 0;
    for example in EXAMPLES {
        let source = draft(&format!("examples/{example}.ron"));
        let errors = findings(&source);
        // Of the garment with many pieces every third.
        let step = if source.pieces.len() > 10 { 3 } else { 1 };
        for piece in source.pieces.iter().step_by(step) {
            for prefix in ["", "b_"] {
                let mut own = Draft::default();
                take_block(&mut own, &source, &taking(&[&piece.name], prefix)).unwrap();
                let called = format!("{prefix}{}", piece.name);
                let (was, is) = (numbers(&source, "piece", &piece.name), numbers(&own, "piece", &called));
                assert_eq!(was, is, "{example}: {called}");
                assert!(is.iter().flat_map(|(_, v)| v).all(|v| *v != u64::MAX) || piece.edges.is_empty());
                let new: Vec<_> =
                    findings(&own).into_iter().filter(|f| !errors.contains(f) && prefix.is_empty()).collect();
                assert_eq!(new, Vec::new(), "{example}: {}", piece.name);
                many += is.len();
            }
        }
    }
    assert!(many > 150, "{many}");
}

#[test]
fn a_piece_brings_what_it_needs_and_no_more() {
    let source = draft(BLOCK);
    let mut own = Draft::default();
    let told = take_block(&mut own, &source, &taking(&["sleeve"], "")).unwrap();
    // The sleeve is found from the armholes, so front and back come along, and the two seams that find it.
    let pieces: Vec<&str> = own.pieces.iter().map(|p| p.name.as_str()).collect();
    assert_eq!(pieces, ["back", "front", "sleeve"]);
    assert!(told.contains("the sizes of its chart came along"), "{told}");
    assert!(own.chart.persons.is_empty(), "persons stay out of what is shared");
    let mut own = Draft::default();
    take_block(&mut own, &source, &taking(&["back"], "")).unwrap();
    assert_eq!(own.pieces.len(), 1);
    assert!(own.seams.is_empty() && own.values.iter().all(|v| v.start.is_empty()), "no seam of one piece alone");
    let block = &own.blocks[0];
    assert_eq!((block.author.as_str(), block.licence.as_str()), (source.author.as_str(), source.licence.as_str()));
}

/// All pieces of a garment bring all that is told of them: every seam, also those with strips.
#[test]
fn a_whole_garment_comes_whole() {
    for example in EXAMPLES {
        let source = draft(&format!("examples/{example}.ron"));
        let mut own = Draft::default();
        take_block(&mut own, &source, &taking(&[], "")).unwrap();
        let names = |d: &Draft| {
            let seams = d.seams.iter().map(|s| s.name.clone());
            seams.chain(d.conditions.iter().map(|c| c.name.clone())).collect::<Vec<_>>()
        };
        assert_eq!(names(&own), names(&source), "{example}");
    }
}

#[test]
fn rows_of_the_draft_stay_its_own() {
    let source = draft(BLOCK);
    let mut own = draft("examples/skirt-finished.ron");
    let (bodies, before) = (own.chart.clone(), own.clone());
    let told = take_block(&mut own, &source, &taking(&["front", "back"], "top_")).unwrap();
    for row in &bodies.rows {
        assert!(own.chart.rows.contains(row), "{}", row.name);
    }
    assert_eq!(own.chart.girth, bodies.girth);
    assert!(!own.chart.rows.iter().any(|r| r.name == "top_waist"), "one waist");
    assert!(bodies.rows.iter().any(|r| r.name == "waist") && source.chart.rows.iter().any(|r| r.name == "waist"));
    assert!(own.pieces.iter().any(|p| p.name == "top_front"));
    // The skirt computes as before, bit for bit.
    for piece in &before.pieces {
        assert_eq!(numbers(&before, "p", &piece.name), numbers(&own, "p", &piece.name), "{}", piece.name);
    }
    assert!(told.starts_with("block base was taken: "), "{told}");
}

#[test]
fn names_in_the_way_are_refused_with_the_list() {
    let source = draft(BLOCK);
    let mut own = source.clone();
    let told = take_block(&mut own, &source, &taking(&["front"], "")).unwrap_err().to_string();
    assert!(told.contains("piece front") && told.contains("with a prefix, such as `base_`"), "{told}");
    assert_eq!(own, source);
    take_block(&mut own, &source, &taking(&["front"], "base_")).unwrap();
    let again = take_block(&mut own, &source, &taking(&["back"], "x_")).unwrap_err().to_string();
    assert!(again.contains("a block base already"), "{again}");
    let none = take_block(&mut own, &source, &Taking { name: "b".to_owned(), ..taking(&["frnt"], "x_") });
    assert!(none.unwrap_err().to_string().contains("its pieces are back, front, sleeve"));
    let bad = take_block(&mut own, &source, &Taking { name: "a b".to_owned(), ..taking(&[], "x_") });
    assert!(bad.unwrap_err().to_string().contains("cannot be the name of a block"));
}

/// A name that means something in the draft and another thing in the block goes on to mean both.
#[test]
fn formulas_that_become_double_get_the_longer_spelling() {
    let text = r#"(format: "tracewheel draft", version: 0, chart: (girth: ["S"]),
        values: [(name: "a", is: "5 cm"), (name: "w", is: "2 * a")],
        pieces: [(name: "own", points: [(name: "p", at: "(0 cm, 0 cm)"), (name: "wide", at: "p.right(a)")])])"#;
    let block = r#"(format: "tracewheel draft", version: 0, chart: (girth: ["S"]), values: [(name: "wide", is: "7 cm")],
        pieces: [(name: "other", points: [(name: "a", at: "(0 cm, 0 cm)"), (name: "b", at: "a.right(wide)")])])"#;
    let (mut own, source) = (file::read(text).unwrap().draft, file::read(block).unwrap().draft);
    take_block(&mut own, &source, &taking(&[], "")).unwrap();
    assert_eq!(findings(&own), Vec::new());
    let model = Engine::new().compute_with(&own, &["gap(own.p, own.wide)", "gap(other.a, other.b)", "w"]);
    let value = |i: usize| model.item(0, model.plan.extras[i].unwrap()).unwrap().real().unwrap();
    assert_eq!([value(0), value(1), value(2)], [50.0, 70.0, 100.0]);
    assert_eq!(own.pieces[1].points[1].at, "other.a.right(wide)");
}

/// A garment on a block in another file: both in one folder.
struct Files {
    folder: TempDir,
}

impl Files {
    /// The block, and a draft that took it and has a piece derived from it.
    fn new() -> Self {
        let files = Self { folder: tempfile::tempdir().unwrap() };
        std::fs::create_dir(files.path("blocks")).unwrap();
        std::fs::copy(BLOCK, files.path("blocks/bodice.ron")).unwrap();
        let garment = r#"(format: "tracewheel draft", version: 0, title: "Top", display: cm)"#;
        std::fs::write(files.path("top.ron"), garment).unwrap();
        let ran = files.run(&["take", &files.text("blocks/bodice.ron")]);
        assert_eq!((ran.exit, ran.out.as_str()), (0, ""), "{}", ran.err);
        assert!(ran.err.starts_with("block bodice was taken: "), "{}", ran.err);
        let text = std::fs::read_to_string(files.path("top.ron")).unwrap();
        let mut draft = file::read(&text).unwrap().draft;
        let top = r#"(format: "tracewheel draft", version: 0, pieces: [(name: "shell", of: "front", steps: [
            (name: "shorter", does: move_edge(edge: "waist", by: "3 cm"))])])"#;
        draft.pieces.extend(file::read(top).unwrap().draft.pieces);
        std::fs::write(files.path("top.ron"), file::write(&draft)).unwrap();
        assert_eq!(findings(&draft), Vec::new());
        files
    }

    fn path(&self, name: &str) -> PathBuf {
        self.folder.path().join(name)
    }

    fn text(&self, name: &str) -> String {
        self.path(name).to_str().unwrap().to_owned()
    }

    fn draft(&self, name: &str) -> Draft {
        draft(self.path(name).to_str().unwrap())
    }

    /// `block top.ron …`.
    fn run(&self, args: &[&str]) -> Ran {
        let top = self.text("top.ron");
        let mut all = vec!["block", top.as_str()];
        all.extend(args);
        tracewheel(&all)
    }

    fn edit(&self, name: &str, from: &str, to: &str) {
        let text = std::fs::read_to_string(self.path(name)).unwrap();
        assert_eq!(text.matches(from).count(), 1, "`{from}`");
        std::fs::write(self.path(name), text.replace(from, to)).unwrap();
    }

    fn looked(&self) -> LookedAt {
        let top = self.draft("top.ron");
        look_at_blocks(&top, &self.path("top.ron")).remove(0)
    }
}

fn model(draft: &Draft) -> Model {
    Engine::new().compute(draft)
}

#[test]
fn a_changed_block_is_noticed_told_in_millimetres_and_taken_over() {
    let files = Files::new();
    let listed = files.run(&["list"]);
    assert_eq!(listed.exit, 0, "{}{}", listed.out, listed.err);
    assert!(
        listed.out.contains("bodice: from blocks/bodice.ron") && listed.out.contains("nothing changed there"),
        "{}",
        listed.out
    );
    assert_eq!(files.looked().finding(), None);

    // Four centimetres more around, a quarter of it on the front.
    let source = files.draft("blocks/bodice.ron");
    let ease = source.values.iter().find(|v| v.name == "bust_ease").unwrap();
    files.edit(
        "blocks/bodice.ron",
        &format!("(name: \"bust_ease\", is: \"{}\"", ease.is),
        "(name: \"bust_ease\", is: \"12 cm\"",
    );
    let listed = files.run(&["list"]);
    assert_eq!(listed.exit, 1);
    assert!(listed.out.contains("changed there: value bust_ease changed"), "{}", listed.out);
    assert!(listed.out.contains("value bust_ease: +4 cm (from 8 cm to 12 cm) in all sizes"), "{}", listed.out);
    // The piece that is derived here is told, too.
    assert!(listed.out.contains("    shell\n      edge "), "{}", listed.out);
    let warned = tracewheel(&["proof", &files.text("top.ron")]);
    assert!(warned.out.contains("block-changed") && warned.out.contains("value bust_ease changed"), "{}", warned.out);

    let before = files.draft("top.ron");
    let ran = files.run(&["accept"]);
    assert_eq!(ran.exit, 0, "{}", ran.err);
    let after = files.draft("top.ron");
    assert_ne!(before, after);
    assert_eq!(files.looked().finding(), None);
    // As if it had been taken today.
    let (there, here) = (files.draft("blocks/bodice.ron"), &after);
    for piece in ["front", "back", "sleeve"] {
        assert_eq!(numbers(&there, "p", piece), numbers(here, "p", piece), "{piece}");
    }
    let width = |d: &Draft| model(d).cases.len();
    assert_eq!(width(&before), width(&after));
    assert_ne!(numbers(&before, "p", "shell"), numbers(&after, "p", "shell"));
    assert_eq!(files.run(&["accept"]).exit, 0, "twice does no harm");
    assert_eq!(files.draft("top.ron"), after);
}

#[test]
fn what_was_changed_on_both_sides_is_asked_about() {
    let files = Files::new();
    let source = files.draft("blocks/bodice.ron");
    let is = &source.values.iter().find(|v| v.name == "bust_ease").unwrap().is;
    let old = format!("(name: \"bust_ease\", is: \"{is}\"");
    files.edit("blocks/bodice.ron", &old, "(name: \"bust_ease\", is: \"12 cm\"");
    files.edit("top.ron", &old, "(name: \"bust_ease\", is: \"9 cm\"");
    let (_, seen) = files.looked().found.unwrap();
    assert_eq!(seen.changes.len(), 1);
    assert!(seen.changes[0].here_too && seen.changes[0].there == There::Changed);
    let before = std::fs::read(files.path("top.ron")).unwrap();
    let ran = files.run(&["accept", "bodice"]);
    assert_eq!(ran.exit, 1);
    assert!(
        ran.err.contains("changed here and in the block: value bust_ease") && ran.err.contains("--keep here"),
        "{}",
        ran.err
    );
    assert_eq!(std::fs::read(files.path("top.ron")).unwrap(), before);

    let ease = |d: &Draft| d.values.iter().find(|v| v.name == "bust_ease").unwrap().is.clone();
    let (mut mine, mut theirs) = (files.draft("top.ron"), files.draft("top.ron"));
    let source = files.draft("blocks/bodice.ron");
    accept_block(&mut mine, "bodice", &source, Some(Keep::Here)).unwrap();
    assert_eq!(ease(&mine), "9 cm");
    assert!(standing(&mine, &mine.blocks[0], &source).unwrap().is_same(), "told once");
    accept_block(&mut theirs, "bodice", &source, Some(Keep::There)).unwrap();
    assert_eq!(ease(&theirs), "12 cm");
    // What was kept is still known as changed here.
    let mut newer = source.clone();
    newer.values.iter_mut().find(|v| v.name == "bust_ease").unwrap().is = "13 cm".to_owned();
    let again = standing(&mine, &mine.blocks[0], &newer).unwrap();
    assert!(again.changes.len() == 1 && again.changes[0].here_too, "{again:?}");
}

#[test]
fn parts_that_come_and_go_there_come_and_go_here() {
    let files = Files::new();
    let (mut source, top) = (files.draft("blocks/bodice.ron"), files.draft("top.ron"));
    let seam = source.seams.iter().position(|s| s.name == "shoulder").unwrap();
    source.seams.remove(seam);
    let mut new = source.values[0].clone();
    (new.name, new.is) = ("extra".to_owned(), "1 cm".to_owned());
    source.values.push(new);
    let front = source.pieces.iter_mut().find(|p| p.name == "front").unwrap();
    let point =
        tracewheel::document::Point { name: "spot".to_owned(), at: "(extra, extra)".to_owned(), note: String::new() };
    std::sync::Arc::make_mut(front).points.push(point);
    source.edition = "2".to_owned();
    let seen = standing(&top, &top.blocks[0], &source).unwrap();
    let kinds: Vec<(String, There)> = seen.changes.iter().map(|c| (c.part.to_string(), c.there)).collect();
    let wanted = [("value extra", There::Came), ("piece front", There::Changed), ("seam shoulder", There::Went)];
    assert_eq!(kinds, wanted.map(|(p, t)| (p.to_owned(), t)));
    assert_eq!(seen.head, ["edition: “2” instead of “1”"]);
    let mut after = top.clone();
    accept_block(&mut after, "bodice", &source, None).unwrap();
    assert!(after.values.iter().any(|v| v.name == "extra") && !after.seams.iter().any(|s| s.name == "shoulder"));
    assert_eq!(after.blocks[0].edition, "2");
    assert_eq!(findings(&after), findings(&top));
    // A new name that is taken here already is refused, and nothing is lost.
    let mut taken = top.clone();
    taken.values.push(tracewheel::document::Value {
        name: "extra".to_owned(),
        is: "2 cm".to_owned(),
        ..Default::default()
    });
    let kept = taken.clone();
    let told = accept_block(&mut taken, "bodice", &source, None).unwrap_err().to_string();
    assert!(told.contains("a new value extra") && told.contains("rename it here first"), "{told}");
    assert_eq!(taken, kept);
    // A piece that was asked for and is gone there: said, with what there is.
    source.pieces.retain(|p| p.name != "sleeve");
    let told = standing(&top, &top.blocks[0], &source).unwrap_err().to_string();
    assert!(told.contains("no piece sleeve") && told.contains("back, front"), "{told}");
}

#[test]
fn a_part_renamed_here_is_still_known() {
    let files = Files::new();
    let (mut source, mut top) = (files.draft("blocks/bodice.ron"), files.draft("top.ron"));
    rename(&mut top, &Part::Value("bust_ease".to_owned()), "ease_round").unwrap();
    rename(&mut top, &Part::Piece("front".to_owned()), "front_block").unwrap();
    let seen = standing(&top, &top.blocks[0], &source).unwrap();
    assert!(seen.is_same(), "{}", seen.words());
    source.values.iter_mut().find(|v| v.name == "bust_ease").unwrap().is = "12 cm".to_owned();
    accept_block(&mut top, "bodice", &source, Some(Keep::There)).unwrap();
    assert_eq!(top.values.iter().find(|v| v.name == "ease_round").unwrap().is, "12 cm");
    assert!(!top.values.iter().any(|v| v.name == "bust_ease"));
    assert_eq!(numbers(&source, "p", "front"), numbers(&top, "p", "front_block"));
}

/// An edge of a taken piece that is renamed here keeps that name, and steps go on to find it, when the piece changes there.
#[test]
fn an_edge_renamed_here_keeps_its_name_when_its_piece_is_taken_over() {
    let files = Files::new();
    let (mut source, mut top) = (files.draft("blocks/bodice.ron"), files.draft("top.ron"));
    let waist = Part::edge("front", "waist");
    rename(&mut top, &waist, "lower_edge").unwrap();
    rename(&mut top, &Part::point("front", "underarm"), "pit").unwrap();
    assert!(standing(&top, &top.blocks[0], &source).unwrap().is_same());
    let front = source.pieces.iter_mut().find(|p| p.name == "front").unwrap();
    std::sync::Arc::make_mut(front)
        .points
        .iter_mut()
        .find(|p| p.name == "underarm")
        .unwrap()
        .at
        .push_str(".down(1 cm)");
    let seen = standing(&top, &top.blocks[0], &source).unwrap();
    assert!(seen.changes.len() == 1 && seen.clashes().is_empty() && seen.here.is_empty(), "{seen:?}");
    let errors = findings(&top);
    accept_block(&mut top, "bodice", &source, None).unwrap();
    assert_eq!(findings(&top), errors, "steps find what they name");
    let front = top.pieces.iter().find(|p| p.name == "front").unwrap();
    assert!(front.edges.iter().any(|e| e.name == "lower_edge") && front.points.iter().any(|p| p.name == "pit"));
    assert!(standing(&top, &top.blocks[0], &source).unwrap().is_same());
    // What was changed here, and kept, is still said.
    let front = top.pieces.iter_mut().find(|p| p.name == "front").unwrap();
    std::sync::Arc::make_mut(front).points.iter_mut().find(|p| p.name == "pit").unwrap().at.push_str(".up(2 mm)");
    let seen = standing(&top, &top.blocks[0], &source).unwrap();
    assert_eq!((seen.is_same(), seen.own_words().as_str()), (true, "changed here: piece front"));
}

/// What would be wrong after taking over stands before what would change.
#[test]
fn what_would_break_is_told_first() {
    let files = Files::new();
    let mut source = files.draft("blocks/bodice.ron");
    rename(&mut source, &Part::edge("front", "waist"), "another").unwrap();
    std::fs::write(files.path("blocks/bodice.ron"), file::write(&source)).unwrap();
    let listed = files.run(&["list"]);
    let wrong = listed.out.find("then this would be wrong:").unwrap_or_else(|| panic!("{}", listed.out));
    assert!(wrong < listed.out.find("taking it over would change:").unwrap());
    assert!(listed.out[wrong..].contains("shell, step shorter"), "{}", listed.out);
}

#[test]
fn a_block_is_no_user_of_its_parts() {
    let mut top = Files::new().draft("top.ron");
    let seam = Part::Seam("shoulder".to_owned());
    assert_eq!(users(&top, &seam), Vec::<String>::new());
    let known = model(&top);
    delete(&mut top, &known, &seam, Deleting::IfUnused).unwrap();
    assert!(!top.seams.iter().any(|s| s.name == "shoulder"));
}

#[test]
fn files_move_together_and_a_missing_one_is_told() {
    let files = Files::new();
    let other = tempfile::tempdir().unwrap();
    let to = other.path().join("elsewhere");
    std::fs::rename(files.folder.path(), &to).unwrap();
    let top = to.join("top.ron");
    let listed = tracewheel(&["block", top.to_str().unwrap(), "list"]);
    assert_eq!(listed.exit, 0, "{}", listed.out);
    std::fs::rename(to.join("blocks/bodice.ron"), to.join("bodice.ron")).unwrap();
    let proofed = tracewheel(&["proof", top.to_str().unwrap()]);
    assert!(proofed.out.contains("block-missing"), "{}", proofed.out);
    let moved =
        tracewheel(&["block", top.to_str().unwrap(), "move", "bodice", to.join("bodice.ron").to_str().unwrap()]);
    assert_eq!(moved.exit, 0, "{}", moved.err);
    assert_eq!(draft(top.to_str().unwrap()).blocks[0].file, "bodice.ron");
    assert_eq!(tracewheel(&["block", top.to_str().unwrap(), "list"]).exit, 0);
    // A file that is no draft is told with its place, and the garment still computes.
    std::fs::write(to.join("bodice.ron"), "no draft").unwrap();
    let listed = tracewheel(&["block", top.to_str().unwrap(), "list"]);
    assert_eq!(listed.exit, 1);
    assert!(listed.out.contains("it begins with `no draft`"), "{}", listed.out);
    assert_eq!(tracewheel(&["measure", top.to_str().unwrap(), "area(shell)"]).exit, 0);
    let untied = tracewheel(&["block", top.to_str().unwrap(), "untie", "bodice"]);
    assert_eq!(untied.exit, 0);
    assert!(draft(top.to_str().unwrap()).blocks.is_empty());
    // Put back for the folder that is removed at the end.
    std::fs::rename(&to, files.folder.path()).unwrap();
}

#[test]
fn wrong_calls_change_nothing() {
    let files = Files::new();
    let before = std::fs::read(files.path("top.ron")).unwrap();
    let missing = files.text("nowhere.ron");
    for (args, exit, words) in [
        (vec!["take", missing.as_str()], 2, "nowhere.ron"),
        (vec!["accept", "bodyce"], 1, "there is no block bodyce; blocks: bodice"),
        (vec!["untie", "bodyce"], 1, "blocks: bodice"),
        (vec!["move", "bodice", missing.as_str()], 2, "cannot be found"),
    ] {
        let ran = files.run(&args);
        assert_eq!(ran.exit, exit, "{args:?}: {}", ran.err);
        assert!(ran.err.contains(words), "{args:?}: {}", ran.err);
    }
    assert_eq!(std::fs::read(files.path("top.ron")).unwrap(), before);
}

#[test]
fn a_block_without_rights_warns_and_a_release_says_so() {
    let files = Files::new();
    let rights = |draft: &Draft| {
        let model = model(draft);
        proof(&model.draft, &model).into_iter().filter(|f| f.code == Code::BlockRights).count()
    };
    let mut top = files.draft("top.ron");
    assert_eq!(rights(&top), 0);
    top.blocks[0].licence.clear();
    assert_eq!(rights(&top), 1);
    std::fs::write(files.path("top.ron"), file::write(&top)).unwrap();
    std::fs::remove_file(files.path("blocks/bodice.ron")).unwrap();
    let out = files.text("out");
    let ran = tracewheel(&[
        "publish",
        &files.text("top.ron"),
        "--out",
        &out,
        "--for",
        "release",
        "--size",
        "88",
        "--piece",
        "shell",
    ]);
    assert!(ran.err.contains("comes without a licence") && ran.err.contains("block-missing"), "{}", ran.err);
}

/// Taking, changing, taking over and undoing by the one door.
#[test]
fn everything_is_one_step_of_undo() {
    let source = std::sync::Arc::new(draft(BLOCK));
    let mut work = Work::here(Draft::default());
    let start = std::sync::Arc::clone(work.draft());
    let take = tracewheel::session::BlockCommand::Take(taking(&["front"], ""), std::sync::Arc::clone(&source));
    work.run(&Command::Block(Box::new(take))).unwrap();
    let taken = std::sync::Arc::clone(work.draft());
    assert_eq!(taken.blocks.len(), 1);
    let neck = Part::Inner("front".to_owned(), Inner::Point, taken.pieces[0].points[1].name.clone());
    let at = tracewheel::document::Address::new(neck, "at");
    let moved = format!("({}).right(1 mm)", taken.text(&at).unwrap());
    work.run(&Command::Text(TextCommand::Set(at, moved))).unwrap();
    let accept = tracewheel::session::BlockCommand::Accept("base".to_owned(), source, None);
    assert_eq!(work.run(&Command::Block(Box::new(accept))).unwrap(), "block base is as it was taken");
    while work.undo().is_some() {}
    assert_eq!(**work.draft(), *start);
}
