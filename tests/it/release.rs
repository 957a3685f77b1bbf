//! Releases: one folder, all or nothing, the same bytes twice; what changed is told by piece, size and page; nothing is released that
//! should not be. Digests are judged by `sha256sum` of coreutils. Long, reason: one desk for all of it.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

use tempfile::TempDir;
use tracewheel::document::Draft;
use tracewheel::file;
use tracewheel::output::{FolderError, save_folder};
use tracewheel::session::{MANIFEST, Manifest, look_at_release};

use super::oracle::{Ran, tracewheel};

/// A skirt of two pieces in four sizes; `drop` is how much longer its front is in the three larger ones.
pub fn skirt(edition: &str, drop: &str, more: &str) -> String {
    let piece = |name: &str, length: &str| {
        format!(
            r#"(name: "{name}", points: [(name: "a", at: "(0 cm, 0 cm)"), (name: "b", at: "a.right(hip / 4)"), (name: "c", at: "b.down({length})"),
            (name: "d", at: "a.down({length})")], edges: [(name: "waist", from: "a", by: [straight("b")]), (name: "side", from: "b", by: [straight("c")]),
            (name: "hem", from: "c", by: [straight("d")]), (name: "centre", from: "d", by: [straight("a")])],
            cuts: [(material: "main", count: 2, grain: (heading: "90°", along: "centre"))])"#
        )
    };
    format!(
        r#"(format: "tracewheel draft", version: 0, title: "Plain skirt", author: "us", licence: "for one sewer", contact: "ask@example.org", edition: "{edition}",
        date: "2026-03-01", audience: adult, settings: (allowance: "1.5 cm"), chart: (girth: ["14", "16", "18", "20"], base: "14", rows: [
            (name: "hip", by: [girth], cells: [("14", "100 cm"), ("16", "104 cm"), ("18", "108 cm"), ("20", "112 cm")]),
            (name: "drop", kind: house, by: [girth], cells: [("14", "0 cm"), ("16", "{drop}"), ("18", "{drop}"), ("20", "{drop}")])]),
        materials: [(name: "main")], pieces: [{}, {}], {more})"#,
        piece("skirt front", "50 cm + drop").replace("skirt front", "skirt_front"),
        piece("skirt_back", "50 cm")
    )
}

/// A folder with a draft in it.
struct Desk {
    dir: TempDir,
}

impl Desk {
    fn of(text: &str) -> Self {
        let desk = Self { dir: tempfile::tempdir().unwrap() };
        desk.write(text);
        desk
    }

    fn write(&self, text: &str) {
        // In its standard form, so that saving the log changes nothing else.
        let draft = file::read(text).unwrap().draft;
        fs::write(self.draft(), file::write(&draft)).unwrap();
    }

    fn draft(&self) -> PathBuf {
        self.dir.path().join("skirt.ron")
    }

    fn out(&self) -> PathBuf {
        self.dir.path().join("out")
    }

    fn read(&self) -> Draft {
        file::read(&fs::read_to_string(self.draft()).unwrap()).unwrap().draft
    }

    /// Changes the draft in its file, keeping its log.
    fn change(&self, text: &str) {
        let log = self.read().log;
        let draft = Draft { log, ..file::read(text).unwrap().draft };
        fs::write(self.draft(), file::write(&draft)).unwrap();
    }

    fn release(&self, more: &[&str]) -> Ran {
        let (draft, out) = (self.draft(), self.out());
        let mut args = vec!["release", draft.to_str().unwrap(), "--out", out.to_str().unwrap()];
        args.extend(more);
        tracewheel(&args)
    }

    fn edition(&self, edition: &str) -> PathBuf {
        self.out().join(format!("Plain-skirt-edition-{edition}"))
    }
}

/// All files in a folder, hidden ones too, with their bytes.
fn files(folder: &Path) -> BTreeMap<String, Vec<u8>> {
    fn walk(folder: &Path, before: &str, out: &mut BTreeMap<String, Vec<u8>>) {
        for entry in fs::read_dir(folder).unwrap() {
            let entry = entry.unwrap();
            let name = format!("{before}{}", entry.file_name().to_string_lossy());
            if entry.path().is_dir() {
                walk(&entry.path(), &format!("{name}/"), out);
            } else {
                out.insert(name, fs::read(entry.path()).unwrap());
            }
        }
    }
    let mut out = BTreeMap::new();
    if folder.is_dir() {
        walk(folder, "", &mut out);
    }
    out
}

fn is_fine(ran: &Ran) {
    assert_eq!(ran.exit, 0, "{}{}", ran.out, ran.err);
}

#[test]
fn a_release_has_everything_and_its_digests_are_those_that_sha256sum_tells() {
    let desk = Desk::of(&skirt("1", "0 cm", ""));
    let before = fs::read_to_string(desk.draft()).unwrap();
    let ran = desk.release(&[]);
    is_fine(&ran);
    let folder = desk.edition("1");
    assert!(ran.out.starts_with(folder.to_str().unwrap()), "{}", ran.out);
    let (manifest, text) = Manifest::read(&folder).unwrap();
    let all = files(&folder);
    // Every file is listed, and every listed file is there.
    let mut listed: Vec<&str> = manifest.files.iter().map(|f| f.name.as_str()).chain([MANIFEST]).collect();
    listed.sort_unstable();
    assert_eq!(all.keys().map(String::as_str).collect::<Vec<_>>(), listed);
    let sum = |name: &str| {
        let ran = Command::new("sha256sum").arg(folder.join(name)).output().unwrap();
        String::from_utf8(ran.stdout).unwrap()[..64].to_owned()
    };
    for file in &manifest.files {
        assert_eq!((sum(&file.name), all[&file.name].len()), (file.sha256.clone(), file.bytes), "{}", file.name);
    }
    // The draft is the text as it stood, and the log in the draft's own file holds the digest of it all.
    assert_eq!(String::from_utf8(all["draft.ron"].clone()).unwrap(), before);
    let log = desk.read().log.releases;
    assert_eq!(log.len(), 1);
    assert_eq!(
        (log[0].edition.as_str(), log[0].date.as_str(), log[0].digest.clone()),
        ("1", "2026-03-01", sum(MANIFEST))
    );
    assert_eq!((manifest.program.as_str(), manifest.version.as_str()), ("tracewheel", env!("CARGO_PKG_VERSION")));
    assert_eq!(manifest.sizes, ["14", "16", "18", "20"]);
    // No path of this machine.
    assert!(!text.contains(desk.dir.path().to_str().unwrap()));
    for kind in ["pages", "wide", "booklet"] {
        assert!(manifest.files.iter().any(|f| f.kind == kind), "{kind}");
    }
}

#[test]
fn the_same_bytes_twice_and_printed_again_by_copying() {
    let desk = Desk::of(&skirt("1", "0 cm", ""));
    is_fine(&desk.release(&[]));
    let other = Desk::of(&skirt("1", "0 cm", ""));
    is_fine(&other.release(&[]));
    let one = files(&desk.edition("1"));
    assert!(one.len() > 8);
    assert_eq!(one, files(&other.edition("1")));

    let copies = desk.dir.path().join("copies");
    let folder = desk.edition("1");
    let again =
        |out: &Path| tracewheel(&["release", "again", folder.to_str().unwrap(), "--out", out.to_str().unwrap()]);
    fs::write(folder.join("notes.txt"), "a stranger").unwrap();
    let ran = again(&copies);
    is_fine(&ran);
    assert!(ran.err.contains("notes.txt does not belong"), "{}", ran.err);
    assert_eq!(files(&copies.join("Plain-skirt-edition-1")), one);
    assert_eq!(again(&copies).exit, 2, "a copy is never written over");

    // Damaged in every way: named, and nothing is copied.
    let page = one.keys().find(|n| n.contains("pages/")).unwrap();
    let check = || tracewheel(&["release", "check", folder.to_str().unwrap()]);
    assert_eq!(check().exit, 1);
    fs::remove_file(folder.join("notes.txt")).unwrap();
    is_fine(&check());
    let spoil: [(&str, Vec<u8>, &str); 3] = [
        (
            page,
            {
                let mut b = one[page].clone();
                let i = b.len() / 2;
                b[i] ^= 1;
                b
            },
            "its digest is another",
        ),
        (page, one[page][..100].to_vec(), "it has 100 bytes"),
        ("draft.ron", b"(".to_vec(), "it has 1 bytes"),
    ];
    for (name, bytes, words) in spoil {
        fs::write(folder.join(name), bytes).unwrap();
        let (told, ran) = (check(), again(&desk.dir.path().join("more")));
        assert_eq!((told.exit, ran.exit), (1, 1));
        assert!(told.out.contains(name) && told.out.contains(words), "{}", told.out);
        assert!(ran.err.contains(name) && ran.err.contains("nothing was written"), "{}", ran.err);
        fs::write(folder.join(name), &one[name]).unwrap();
    }
    fs::remove_file(folder.join(page)).unwrap();
    assert!(check().out.contains(&format!("{page} is missing")));
    fs::write(folder.join(page), &one[page]).unwrap();
    // The list itself.
    let text = String::from_utf8(one[MANIFEST].clone()).unwrap();
    fs::write(folder.join(MANIFEST), text.replacen("edition: \"1\"", "edition: \"7\"", 1)).unwrap();
    let told = check();
    assert_eq!(told.exit, 2);
    assert!(told.err.contains("its seal does not fit"), "{}", told.err);
    assert!(files(&desk.dir.path().join("more")).is_empty());
}

/// A list that leads out of its folder is refused, however well it is sealed.
#[test]
fn a_list_that_leads_elsewhere_is_refused() {
    for name in ["../draft.ron", "a/../../b", "", "C:draft.ron", "..\\b"] {
        let dir = tempfile::tempdir().unwrap();
        let file = tracewheel::session::ReleasedFile::of(name.to_owned(), b"x");
        let manifest = Manifest { files: vec![file], ..Manifest::default() };
        fs::write(dir.path().join(MANIFEST), manifest.text().unwrap()).unwrap();
        let error = look_at_release(dir.path()).unwrap_err().to_string();
        assert!(error.contains("which is not in its folder"), "{name}: {error}");
    }
    let dir = tempfile::tempdir().unwrap();
    let error = look_at_release(dir.path()).unwrap_err().to_string();
    assert!(error.contains("no folder of a release"), "{error}");
    fs::write(dir.path().join(MANIFEST), "(((").unwrap();
    assert!(look_at_release(dir.path()).unwrap_err().to_string().contains("line 1"));
}

/// C090: hem +1.0 cm in sizes 16, 18, 20 of the skirt's front; the list that goes to testers and buyers, with pages to print again.
#[test]
fn c090_what_changed_by_piece_size_and_page() {
    let desk = Desk::of(&skirt("1", "0 cm", ""));
    is_fine(&desk.release(&[]));
    desk.change(&skirt("2", "1 cm", ""));
    let ran = desk.release(&["--date", "2026-04-01"]);
    is_fine(&ran);
    let text = fs::read_to_string(desk.edition("2").join("pattern/what-changed.txt")).unwrap();
    assert!(ran.out.ends_with(&text));
    assert!(text.contains("What changed: Plain skirt, edition 2 (before: Plain skirt, edition 1)"), "{text}");
    assert!(text.contains("skirt_front") && !text.contains("skirt_back"), "{text}");
    assert!(text.contains("1 cm longer") && text.contains("16 to 20"), "{text}");
    let pages = text.split("Pages to print again").nth(1).unwrap().split("\n\n").next().unwrap();
    let told = |size: &str| pages.lines().filter(|l| l.contains(&format!("skirt-{size}-"))).count();
    assert_eq!(["14", "16", "18", "20"].map(told), [0, 2, 2, 2], "pages and wide sheet of each size: {pages}");
    // Edition and date stand on every page, and yet only those pages are told that look otherwise besides.
    let (old, new) = (Manifest::read(&desk.edition("1")).unwrap().0, Manifest::read(&desk.edition("2")).unwrap().0);
    assert_eq!((new.after.as_str(), new.date.as_str()), ("1", "2026-04-01"));
    let of_14 = |m: &Manifest| m.files.iter().find(|f| f.kind == "pages" && f.sizes == ["14"]).unwrap().clone();
    assert_ne!(of_14(&old).sha256, of_14(&new).sha256);
    assert_eq!(of_14(&old).pages, of_14(&new).pages);
    assert!(of_14(&new).pages.len() > 1);
    // The release before is left as it was, and the log has both.
    is_fine(&tracewheel(&["release", "check", desk.edition("1").to_str().unwrap()]));
    let editions: Vec<String> = desk.read().log.releases.into_iter().map(|r| r.edition).collect();
    assert_eq!(editions, ["1", "2"]);
}

/// Pages are told by the names that stand on them, as poppler reads them: those that are told hold what is other, and no others are told.
#[test]
fn pages_to_print_again_are_called_as_they_call_themselves() {
    let desk = Desk::of(&skirt("1", "0 cm", ""));
    is_fine(&desk.release(&[]));
    desk.change(&skirt("2", "1 cm", ""));
    is_fine(&desk.release(&[]));
    let text = fs::read_to_string(desk.edition("2").join("pattern/what-changed.txt")).unwrap();
    let start = "- pages/skirt-16-edition-2-";
    let line = text.lines().find(|l| l.starts_with(start)).unwrap_or_else(|| panic!("{text}"));
    let (name, told) = line.trim_start_matches("- ").split_once(": ").unwrap();
    let (before, told) = told.rsplit_once("pages ").unwrap_or_else(|| panic!("{line}"));
    let told: Vec<&str> = told.split(", ").collect();
    let release = Manifest::read(&desk.edition("2")).unwrap().0;
    let file = release.files.iter().find(|f| f.name.ends_with(name)).unwrap();
    assert!(!told.is_empty() && told.len() < file.pages.len() && !line.contains(" of "), "{line}");
    let foot = |page: usize| {
        let path = desk.edition("2").join("pattern").join(name);
        let number = page.to_string();
        let ran = Command::new("pdftotext").args(["-f", &number, "-l", &number]).arg(path).arg("-").output().unwrap();
        String::from_utf8(ran.stdout).unwrap()
    };
    let old = Manifest::read(&desk.edition("1")).unwrap().0;
    let known: Vec<String> = old.files.iter().filter(|f| f.kind == "pages").flat_map(|f| f.pages.clone()).collect();
    for (i, digest) in file.pages.iter().enumerate() {
        let words = foot(i + 1);
        let is_told = match i {
            0 => before.contains("the first page"),
            _ => told.iter().any(|n| words.contains(&format!("page {n} ({i} of {})", file.pages.len() - 1))),
        };
        assert_eq!(is_told, !known.contains(digest), "page {}: {line}: {words}", i + 1);
    }
}

/// The contact stands at the foot of every page of tables, and a new one makes none of them other; it is told in words.
#[test]
fn a_new_contact_makes_no_page_other() {
    let desk = Desk::of(&skirt("1", "0 cm", ""));
    is_fine(&desk.release(&[]));
    desk.change(&skirt("2", "0 cm", "").replace("ask@example.org", "pattern-questions@shop.example.org"));
    is_fine(&desk.release(&[]));
    let text = fs::read_to_string(desk.edition("2").join("pattern/what-changed.txt")).unwrap();
    assert!(text.contains("No page of the files needs to be printed again."), "{text}");
    assert!(text.contains("contact") && text.contains("pattern-questions@shop.example.org"), "{text}");
    assert!(under(&text, "Files that are not printed and are other").is_empty(), "{text}");
}

/// The release before is the one of which the log has the digest, whatever the pattern and the folder were called then; where it does not
/// lie there, nothing is released that would say nothing of what changed.
#[test]
fn the_release_before_is_found_by_the_log_or_asked_for() {
    let desk = Desk::of(&skirt("1", "0 cm", ""));
    is_fine(&desk.release(&[]));
    fs::rename(desk.edition("1"), desk.out().join("the first one")).unwrap();
    // Another draft of the title that this one gets, and younger: it is none of its editions.
    let renamed = |edition: &str| {
        skirt(edition, "1 cm", "").replace("Plain skirt", "Fine skirt").replace("2026-03-01", "2026-05")
    };
    let other = Desk::of(&renamed("7"));
    is_fine(&tracewheel(&["release", other.draft().to_str().unwrap(), "--out", desk.out().to_str().unwrap()]));
    desk.change(&renamed("2"));
    is_fine(&desk.release(&[]));
    let folder = desk.out().join("Fine-skirt-edition-2");
    let text = fs::read_to_string(folder.join("pattern/what-changed.txt")).unwrap();
    assert!(text.contains("Fine skirt, edition 2 (before: Plain skirt, edition 1)"), "{text}");
    assert_eq!(Manifest::read(&folder).unwrap().0.after, "1");

    let away = desk.dir.path().join("away");
    fs::rename(&folder, &away).unwrap();
    desk.change(&renamed("3"));
    let (draft, there) = (fs::read_to_string(desk.draft()).unwrap(), files(&desk.out()));
    let ran = desk.release(&[]);
    let words = "the log of the draft tells edition 2 of 2026-05 last, and that release does not lie in";
    assert!(
        ran.exit == 1 && ran.err.contains(words) && ran.err.contains("(`--first`). Nothing was written"),
        "{}",
        ran.err
    );
    assert_eq!((fs::read_to_string(desk.draft()).unwrap(), files(&desk.out())), (draft, there));
    is_fine(&desk.release(&["--last", away.to_str().unwrap()]));
    assert!(desk.out().join("Fine-skirt-edition-3/pattern/what-changed.txt").is_file());
    // `--first` is a word of its own.
    fs::rename(desk.out(), desk.dir.path().join("gone")).unwrap();
    desk.change(&renamed("4"));
    assert_eq!(desk.release(&[]).exit, 1);
    is_fine(&desk.release(&["--first"]));
    assert!(!desk.out().join("Fine-skirt-edition-4/pattern/what-changed.txt").exists());
}

/// The part of what changed that stands under a heading; empty where there is none.
fn under<'a>(text: &'a str, heading: &str) -> &'a str {
    text.split(&format!("\n{heading}\n")).nth(1).map_or("", |rest| rest.split("\n\n").next().unwrap())
}

/// An edition in which nothing but edition and date is other, both longer: no page is told, and every file that is not printed is told to
/// be other by these alone. Two editions lie in one folder without a name in common.
#[test]
fn edition_and_date_alone_make_nothing_other() {
    let text = fs::read_to_string("examples/market-apron.ron").unwrap();
    let apron = |edition: &str, date: &str| {
        let draft = file::read(&text).unwrap().draft;
        file::write(&Draft { edition: edition.into(), date: date.into(), ..draft })
    };
    let desk = Desk::of(&apron("1", "2026-11-30"));
    is_fine(&desk.release(&["--first"]));
    desk.change(&apron("2 for markets", "2026-12-05"));
    let one = fs::read_dir(desk.out()).unwrap().next().unwrap().unwrap().path();
    let ran = desk.release(&["--last", one.to_str().unwrap()]);
    is_fine(&ran);
    let two = fs::read_dir(desk.out()).unwrap().map(|e| e.unwrap().path()).find(|p| *p != one).unwrap();
    let text = fs::read_to_string(two.join("pattern/what-changed.txt")).unwrap();
    assert!(text.contains("No page of the files needs to be printed again.") && !text.contains(": new"), "{text}");
    assert!(
        !text.contains("no longer there") && under(&text, "Files that are not printed and are other").is_empty(),
        "{text}"
    );
    let alone = under(&text, "Files that are not printed and are other by edition, date and contact alone");
    for kind in ["projector/", "dxf/", "tables/", "booklet/"] {
        assert!(alone.contains(&format!("- {kind}")), "{kind}: {text}");
    }
    let names = |folder: &Path| {
        Manifest::read(folder).unwrap().0.files.into_iter().filter(|f| !f.kind.is_empty()).map(|f| f.name)
    };
    let (old, new): (Vec<String>, Vec<String>) = (names(&one).collect(), names(&two).collect());
    assert!(!old.is_empty() && old.len() == new.len());
    assert!(
        old.iter().all(|n| n.contains("-edition-1-")) && new.iter().all(|n| n.contains("-edition-2-for-markets-")),
        "{new:?}"
    );
}

/// Files that are not printed are told to be other where they are: in the sizes that changed, and the tables that hold the numbers.
#[test]
fn files_that_are_not_printed_are_told_by_what_they_hold() {
    let desk = Desk::of(&skirt("1", "0 cm", ""));
    is_fine(&desk.release(&[]));
    desk.change(&skirt("2", "1 cm", r#"booklet: [(text: "Sew {drop}.")]"#));
    is_fine(&desk.release(&["--date", "2026-02-01"]));
    let text = fs::read_to_string(desk.edition("2").join("pattern/what-changed.txt")).unwrap();
    let others = under(&text, "Files that are not printed and are other");
    let alone = under(&text, "Files that are not printed and are other by edition, date and contact alone");
    for kind in ["svg", "dxf", "projector"] {
        for (size, is_other) in [("14", false), ("16", true), ("20", true)] {
            let start = format!("- {kind}/skirt-{size}-edition-2-");
            assert_eq!(others.contains(&start), is_other, "{start}: {text}");
            // An SVG holds neither edition nor date: it is the same to the byte.
            assert_eq!(alone.contains(&start), !is_other && kind != "svg", "{start}: {text}");
        }
    }
    assert!(others.contains("booklet/skirt-edition-2-booklet.html"), "{text}");
}

#[test]
fn what_changed_tells_of_cautions_and_steps_in_the_words_of_buyers() {
    let strips = r#"strips: [(name: "tie", kind: cord, length: "60 cm", place: hem, free_end: "9 cm")],"#;
    let body = |edition: &str, care: &str, text: &str| {
        skirt(edition, "0 cm", &format!(r#"{strips} care: ({care}), booklet: [(text: "{text}")]"#)).replacen(
            "audience: adult",
            "audience: child(from: \"4 years\", to: \"9 years\")",
            1,
        )
    };
    let desk = Desk::of(&body("1", "", "Fold {hip / 4} of it."));
    is_fine(&desk.release(&[]));
    desk.change(&body("2", "worn_as: tight_sleepwear", "Fold {hip / 8} of it."));
    let ran = desk.release(&["--date", "2026-02-01"]);
    is_fine(&ran);
    let text = fs::read_to_string(desk.edition("2").join("pattern/what-changed.txt")).unwrap();
    assert!(text.contains("step 1 of the booklet says something else"), "{text}");
    assert!(
        !text.contains(['{', '}', '…']) && !text.contains("unstated") && !text.contains("tight_sleepwear"),
        "{text}"
    );
    assert!(text.contains("was “not told”, is now “in bed, close to the body”"), "{text}");
    let told = under(&text, "Cautions, which stand in read-me-first.txt and in the booklet");
    assert!(told.contains("- new: Close-fitting"), "{text}");
    assert!(told.contains("- says something else: A cord at waist or lower edge"), "{text}");
    // The warnings are counted, all of them, and a date that goes back is told.
    let warnings = Manifest::read(&desk.edition("2")).unwrap().0.warnings;
    assert!(warnings >= 2 && ran.err.contains(&format!("proof tells {warnings} warnings")), "{}", ran.err);
    assert!(
        ran.err.contains("2026-02-01 is before that of the release before, edition 1 of 2026-03-01"),
        "{}",
        ran.err
    );
    desk.change(&body("3", "", "Fold {hip / 8} of it."));
    let ran = desk.release(&["--date", "2026-02-02"]);
    is_fine(&ran);
    assert!(!ran.err.contains("before that of"), "{}", ran.err);
    let text = fs::read_to_string(desk.edition("3").join("pattern/what-changed.txt")).unwrap();
    assert!(
        under(&text, "Cautions, which stand in read-me-first.txt and in the booklet").contains("- gone: Close-fitting"),
        "{text}"
    );
    assert!(!text.contains("step 1"), "{text}");
}

/// The first edition in English, the second in German with a longer front: its buyers read German, its cautions are the same ones as before, and
/// the list that the program keeps can be compared whatever language an edition speaks.
#[test]
fn an_edition_in_another_language_tells_its_changes_in_it() {
    let child = |text: String| {
        text.replace(
            "audience: adult",
            "audience: child(from: \"2 years\", to: \"8 years\"), care: (worn_as: outerwear)",
        )
        .replace("materials:", "strips: [(name: \"tie\", kind: cord, length: \"60 cm\", place: neck)], materials:")
    };
    let desk = Desk::of(&child(skirt("1", "0 cm", "")));
    is_fine(&desk.release(&[]));
    let german = child(skirt("2", "1 cm", "")).replace("audience:", "language: de, audience:");
    desk.change(&german);
    is_fine(&desk.release(&[]));
    let read = |name: &str| fs::read_to_string(desk.edition("2").join(name)).unwrap();
    let changes = read("pattern/what-changed.txt");
    for line in [
        "Was sich geändert hat: Plain skirt, Ausgabe 2 (vorher: Plain skirt, Ausgabe 1)",
        "- side: 1 cm länger (von 50 cm auf 51 cm) in den Größen 16 bis 20",
        "Neu drucken: skirt_front in den Größen 16 bis 20.",
        "Neu zu druckende Seiten",
    ] {
        assert!(changes.contains(line), "{line}: {changes}");
    }
    for word in ["neu: Eine Kordel", "entfallen", "sagt etwas anderes", " longer", "Print again", " cord "] {
        assert!(!changes.contains(word), "{word}: {changes}");
    }
    let read_me = read("pattern/read-me-first.txt");
    assert!(read_me.contains("Ausgabe 2, 01.03.2026") && read_me.contains("Achtung: Eine Kordel"), "{read_me}");
    assert!(read_me.contains("16 CFR 1120.3(b) mit ASTM F1816") && !read_me.contains("Caution"), "{read_me}");
    let titles = |edition: &str| Manifest::read(&desk.edition(edition)).unwrap().0.cautions;
    assert_eq!(titles("1"), titles("2"));
    assert!(titles("2").iter().any(|t| t.starts_with("A cord at hood or neck")), "{:?}", titles("2"));
    // A caution that goes is told by the name under which German buyers know it.
    desk.change(&german.replace("edition: \"2\"", "edition: \"3\"").replace("place: neck", "place: elsewhere"));
    is_fine(&desk.release(&[]));
    let changes = fs::read_to_string(desk.edition("3").join("pattern/what-changed.txt")).unwrap();
    assert!(changes.contains("- entfallen: Eine Kordel an Kapuze oder Hals"), "{changes}");
}

#[test]
fn help_of_the_command_names_its_page() {
    let ran = tracewheel(&["help", "release"]);
    assert!(ran.exit == 0 && ran.out.contains("tracewheel help releases"), "{}", ran.out);
    assert!(ran.out.contains("--last"), "the usage is still there");
}

/// C089: a bag of a pocket whose halves are 24.0 and 22.5 cm fails before it is released; what is released afterwards says in its list that the
/// piece changed, and edition and date are told.
#[test]
fn c089_a_fault_blocks_and_the_corrected_edition_tells_of_it() {
    let bag = |edition: &str, back: &str, seams: &str| {
        let piece = |name: &str, letter: &str, length: &str| {
            format!(
                r#"(name: "{name}", letter: "{letter}", points: [(name: "a", at: "(0 cm, 0 cm)"), (name: "b", at: "a.right(15 cm)"), (name: "c", at: "b.down({length})"),
                (name: "d", at: "a.down({length})")], edges: [(name: "top", from: "a", by: [straight("b")]), (name: "outer", from: "b", by: [straight("c")]),
                (name: "bottom", from: "c", by: [straight("d")]), (name: "inner", from: "d", by: [straight("a")])],
                cuts: [(material: "main", count: 2, grain: (heading: "90°", along: "inner"))])"#
            )
        };
        format!(
            r#"(format: "tracewheel draft", version: 0, title: "Plain skirt", edition: "{edition}", date: "2026-03-01", audience: adult, settings: (allowance: "1 cm"),
            chart: (girth: ["one"]), materials: [(name: "main")], pieces: [{}, {}], seams: [{seams}])"#,
            piece("bag_front", "D", "24 cm"),
            piece("bag_back", "E", back)
        )
    };
    let seam = r#"(name: "bag", one: ["bag_front.outer"], two: ["bag_back.outer"], fit: equal)"#;
    let desk = Desk::of(&bag("1.0", "22.5 cm", seam));
    let before = fs::read_to_string(desk.draft()).unwrap();
    let ran = desk.release(&[]);
    assert_eq!(ran.exit, 1);
    assert!(
        ran.err.contains("blocked by an error") && ran.err.contains("seam.bag") && ran.err.contains("15 mm"),
        "{}",
        ran.err
    );
    assert!(!desk.out().exists() && fs::read_to_string(desk.draft()).unwrap() == before);
    // Nobody told the program of the seam: the first edition goes out with the fault.
    desk.write(&bag("1.0", "22.5 cm", ""));
    is_fine(&desk.release(&[]));
    desk.change(&bag("1.1", "24 cm", seam));
    is_fine(&desk.release(&["--date", "2026-05-31"]));
    let text = fs::read_to_string(desk.edition("1-1").join("pattern/what-changed.txt")).unwrap();
    assert!(text.contains("bag_back") && text.contains("Print again: bag_back"), "{text}");
    assert!(!text.contains("Print again: bag_front"), "{text}");
    let read_me = fs::read_to_string(desk.edition("1-1").join("pattern/read-me-first.txt")).unwrap();
    assert!(read_me.starts_with("Plain skirt\nEdition 1.1, 2026-05-31\n"), "{read_me}");
}

/// C104: ten files, and a buyer who does not know which is for what.
/// A sheet of a kind that a release makes anyway stands in place of it: it used to come twice, and nothing was written.
#[test]
fn a_sheet_for_a_projector_is_released_once() {
    let sheet = r#"sheets: [(name: "thrown", paper: "projector", sizes: ["14", "16"])], "#;
    let desk = Desk::of(&skirt("1", "0 cm", sheet));
    is_fine(&desk.release(&[]));
    let all = files(&desk.edition("1"));
    let thrown: Vec<&String> = all.keys().filter(|n| n.contains("projector")).collect();
    assert!(!thrown.is_empty(), "{:?}", all.keys());
    assert!(thrown.iter().all(|n| n.contains("-14+16-")), "{thrown:?}");
    assert!(all.keys().any(|n| n.ends_with(".dxf")), "{:?}", all.keys());
}

#[test]
fn c104_every_file_says_what_it_is_for() {
    let desk = Desk::of(&skirt("1", "0 cm", ""));
    is_fine(&desk.release(&[]));
    let folder = desk.edition("1");
    let (manifest, _) = Manifest::read(&folder).unwrap();
    let read_me = fs::read_to_string(folder.join("pattern/read-me-first.txt")).unwrap();
    let for_buyers: Vec<_> =
        manifest.files.iter().filter(|f| f.name.starts_with("pattern/") && !f.kind.is_empty()).collect();
    assert!(for_buyers.len() >= 9, "{}", for_buyers.len());
    for file in for_buyers {
        let name = file.name.strip_prefix("pattern/").unwrap();
        assert_eq!(
            read_me.matches(&format!("- {name} ")).count() + read_me.matches(&format!("- {name},")).count(),
            1,
            "{name}: {read_me}"
        );
        let (use_, base) = name.split_once('/').unwrap();
        assert_eq!(use_, file.kind);
        match use_ {
            "pages" => {
                assert!(base.contains(&format!("-{}-", file.sizes[0])) && base.contains("A4-or-Letter"), "{base}")
            }
            "wide" => assert!(base.contains(&format!("-{}-", file.sizes[0])) && base.contains("sheet-"), "{base}"),
            _ => {}
        }
    }
    assert!(read_me.contains("pages: pieces in true size on pages of a home printer"), "{read_me}");
    assert!(read_me.contains("Licence: for one sewer") && read_me.contains("ask@example.org"), "{read_me}");
}

#[test]
fn sizes_never_sewn_are_told_to_who_publishes_alone() {
    let log = r#"log: (fittings: [(date: "2026-02-01", size: "16", note: "fits")])"#;
    let desk = Desk::of(&skirt("1", "0 cm", log));
    let ran = desk.release(&[]);
    is_fine(&ran);
    assert!(ran.err.contains("never sewn: the log tells of no fitting in 14, 18 and 20"), "{}", ran.err);
    let folder = desk.edition("1");
    assert_eq!(Manifest::read(&folder).unwrap().0.never_sewn, ["14", "18", "20"]);
    for (name, bytes) in files(&folder.join("pattern")) {
        assert!(!String::from_utf8_lossy(&bytes).contains("never sewn"), "{name}");
    }
    let sewn: Vec<String> = ["14", "16", "18", "20"].iter().map(|s| format!("(size: \"{s}\")")).collect();
    let desk = Desk::of(&skirt("1", "0 cm", &format!("log: (fittings: [{}])", sewn.join(", "))));
    let ran = desk.release(&[]);
    is_fine(&ran);
    assert!(!ran.err.contains("never sewn"), "{}", ran.err);
}

#[test]
fn an_edition_is_released_once() {
    let desk = Desk::of(&skirt("1", "0 cm", ""));
    is_fine(&desk.release(&[]));
    let (one, text) = (files(&desk.out()), fs::read_to_string(desk.draft()).unwrap());
    let same = desk.release(&[]);
    assert_eq!(same.exit, 1);
    assert!(same.err.contains("edition 1 was released already") && same.err.contains("release again"), "{}", same.err);
    desk.change(&skirt("1", "1 cm", ""));
    let other = desk.release(&[]);
    assert_eq!(other.exit, 1);
    assert!(other.err.contains("needs a new edition"), "{}", other.err);
    // Also where the folder is not there any more, and where nothing but the folder tells of it.
    fs::rename(desk.out(), desk.dir.path().join("away")).unwrap();
    let logged = desk.release(&[]);
    assert!(logged.exit == 1 && logged.err.contains("as the log of the draft tells"), "{}", logged.err);
    assert!(!desk.out().exists());
    fs::rename(desk.dir.path().join("away"), desk.out()).unwrap();
    desk.write(&skirt("1", "1 cm", ""));
    let first = desk.release(&["--first"]);
    assert_eq!(first.exit, 1);
    let told = ["edition 1 was released already", "is never written over: raise the edition"];
    assert!(told.iter().all(|words| first.err.contains(words)), "{}", first.err);
    assert_eq!(files(&desk.out()), one);
    assert_ne!(fs::read_to_string(desk.draft()).unwrap(), text);
    assert!(desk.read().log.releases.is_empty());
}

#[test]
fn what_is_not_told_or_not_right_is_refused() {
    let try_it = |text: &str, more: &[&str]| {
        let desk = Desk::of(text);
        let before = fs::read_to_string(desk.draft()).unwrap();
        let ran = desk.release(more);
        assert!(!desk.out().exists() && fs::read_to_string(desk.draft()).unwrap() == before, "{}", ran.err);
        (ran.exit, ran.err)
    };
    let good = skirt("1", "0 cm", "");
    let in_draft = "the `date` at the head of the draft, `soon`, is no date: write 2026, 2026-05 or 2026-05-31 there";
    let cases: [(String, &[&str], i32, &str); 11] = [
        (good.replacen("2026-03-01", "soon", 1), &[], 1, in_draft),
        (good.replacen("2026-03-01", "2026-02-30", 1), &[], 1, "`2026-02-30`, is no date"),
        (skirt("", "0 cm", ""), &[], 1, "does not tell its edition"),
        (good.replacen("2026-03-01", "", 1), &[], 1, "does not tell its date"),
        (good.clone(), &["--date", "2026-02-30"], 2, "`2026-02-30` is no date"),
        (good.clone(), &["--date", "1.5.2026"], 2, "is no date"),
        (good.clone(), &["--last", "nowhere"], 2, "no folder of a release"),
        (good.replacen("girth: [", "survey: true, girth: [", 1), &[], 1, "cannot be released as a fitting chart"),
        (good.replacen("hip / 4", "hop / 4", 1), &[], 1, "nothing is called"),
        (skirt("1", "0 cm", "sheets: [(name: \"x\", paper: \"papyrus\")]"), &[], 1, "sheet x"),
        (skirt("1", "0 cm", "booklet: [(text: \"see\", pictures: [(file: \"no.png\")])]"), &[], 1, "no.png"),
    ];
    for (text, more, exit, words) in cases {
        let (code, err) = try_it(&text, more);
        assert!(code == exit && err.contains(words), "{words}: {code}: {err}");
    }
    assert!(try_it(&skirt("1", "0 cm", "").replacen("hip / 4", "hop / 4", 2), &[]).1.contains("blocked by"));
}

#[test]
fn a_survey_is_not_published_for_release_either() {
    let dir = tempfile::tempdir().unwrap();
    let out = dir.path().join("out");
    let publish = |purpose: &str| {
        tracewheel(&[
            "publish",
            "examples/bodice-sleeve.ron",
            "--out",
            out.to_str().unwrap(),
            "--size",
            "88",
            "--for",
            purpose,
        ])
    };
    let ran = publish("release");
    assert!(ran.exit == 1 && ran.err.contains("cannot be released as a fitting chart"), "{}", ran.err);
    assert!(!out.exists());
    is_fine(&publish("toile"));
}

#[test]
fn a_date_that_is_told_is_that_of_the_edition() {
    let desk = Desk::of(&skirt("1", "0 cm", ""));
    is_fine(&desk.release(&["--date", "2028-02-29"]));
    let folder = desk.edition("1");
    assert_eq!(Manifest::read(&folder).unwrap().0.date, "2028-02-29");
    let released = file::read(&fs::read_to_string(folder.join("draft.ron")).unwrap()).unwrap().draft;
    assert_eq!((released.date.as_str(), released.log.releases.len()), ("2028-02-29", 0));
    assert_eq!((desk.read().date.as_str(), desk.read().log.releases.len()), ("2028-02-29", 1));
}

#[test]
fn comments_are_minded_before_anything_is_written() {
    let desk = Desk::of(&skirt("1", "0 cm", ""));
    let text = format!("// of the skirt\n{}", fs::read_to_string(desk.draft()).unwrap());
    fs::write(desk.draft(), &text).unwrap();
    let ran = desk.release(&[]);
    assert!(ran.exit == 1 && ran.err.contains("holds comments"), "{}", ran.err);
    assert!(!desk.out().exists());
    is_fine(&desk.release(&["--comments", "keep"]));
    assert_eq!(fs::read_to_string(desk.edition("1").join("draft.ron")).unwrap(), text);
    assert!(desk.read().note.contains("of the skirt"));
}

#[test]
fn cautions_go_with_a_release() {
    let body = skirt("1", "0 cm", r#"care: (worn_as: outerwear), strips: [(name: "tie", kind: cord, length: "60 cm", place: hem, free_end: "9 cm")]"#)
        .replacen("audience: adult", "audience: child(from: \"4 years\", to: \"9 years\")", 1);
    let desk = Desk::of(&body);
    let ran = desk.release(&[]);
    is_fine(&ran);
    assert!(ran.err.contains("hang out 9 cm") && ran.err.contains("not sewn fast"), "{}", ran.err);
    let read_me = fs::read_to_string(desk.edition("1").join("pattern/read-me-first.txt")).unwrap();
    assert!(
        read_me.contains("Caution: A cord at waist or lower edge") && read_me.contains("16 CFR 1120.3(b)"),
        "{read_me}"
    );
    assert_eq!(Manifest::read(&desk.edition("1")).unwrap().0.cautions.len(), 2);
}

/// The draft can be sold as it stands while it is in a folder that cannot be written to: the release tells so and leaves nothing.
#[test]
fn where_nothing_can_be_written_nothing_is_left() {
    let desk = Desk::of(&skirt("1", "0 cm", ""));
    fs::write(desk.out(), "a file").unwrap();
    let before = fs::read_to_string(desk.draft()).unwrap();
    let ran = desk.release(&[]);
    assert_eq!(ran.exit, 2);
    assert!(ran.err.contains("could not be written") && ran.err.contains("nothing was written"), "{}", ran.err);
    assert_eq!(fs::read_to_string(desk.out()).unwrap(), "a file");
    assert_eq!(fs::read_to_string(desk.draft()).unwrap(), before);
}

fn some(pairs: &[(&str, &str)]) -> Vec<(String, Vec<u8>)> {
    pairs.iter().map(|(n, c)| ((*n).to_owned(), c.as_bytes().to_vec())).collect()
}

#[test]
fn a_folder_is_written_whole_or_not_at_all() {
    let dir = tempfile::tempdir().unwrap();
    let good = some(&[("a.txt", "a"), ("sub/b.txt", "b")]);
    // One name is longer than file systems allow, which shows only while it is written.
    let long = "x".repeat(300);
    let error = save_folder(dir.path(), "one", &some(&[("a.txt", "a"), (&long, "b")])).unwrap_err();
    assert!(matches!(error, FolderError::Write { .. }), "{error}");
    assert!(files(dir.path()).is_empty() && fs::read_dir(dir.path()).unwrap().count() == 0);
    for name in ["../a", "a//b", "", "a/..", "a\\b", ".writing"] {
        let error = save_folder(dir.path(), "one", &some(&[(name, "a")])).unwrap_err();
        assert!(matches!(error, FolderError::NameBad { .. }), "{name}: {error}");
    }
    let error = save_folder(dir.path(), "one", &some(&[("a", "1"), ("A", "2")])).unwrap_err();
    assert!(error.to_string().contains("stands twice"), "{error}");
    // What an ended run left is cleared; one that still holds its lock is left alone, and so is another folder's.
    let left = |name: &str| {
        let folder = dir.path().join(name);
        fs::create_dir(&folder).unwrap();
        fs::write(folder.join(".writing"), "").unwrap();
        folder
    };
    let (dead, alive, other) = (left(".one.1.part"), left(".one.2.part"), left(".other.1.part"));
    let lock = fs::File::open(alive.join(".writing")).unwrap();
    lock.lock().unwrap();
    let target = save_folder(dir.path(), "one", &good).unwrap();
    assert_eq!(files(&target), good.iter().cloned().collect());
    assert!(!dead.exists() && alive.exists() && other.exists());
    assert!(matches!(save_folder(dir.path(), "one", &good).unwrap_err(), FolderError::Exists { .. }));
}

/// Ended at any moment, there is the whole folder or none, and the next run succeeds.
#[test]
fn a_run_that_is_ended_leaves_nothing_or_all() {
    let whole = Desk::of(&skirt("1", "0 cm", ""));
    let start = Instant::now();
    is_fine(&whole.release(&[]));
    let takes = start.elapsed();
    let wanted = files(&whole.edition("1"));
    let (mut none, mut all) = (0, 0);
    const RUNS: u32 = 12;
    for run in 0..RUNS {
        let desk = Desk::of(&skirt("1", "0 cm", ""));
        let mut child = crate::program()
            .args(["release", desk.draft().to_str().unwrap(), "--out", desk.out().to_str().unwrap()])
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            .spawn()
            .unwrap();
        std::thread::sleep(takes * (run + 1) / RUNS + Duration::from_millis(u64::from(run % 3)));
        child.kill().unwrap();
        child.wait().unwrap();
        if desk.edition("1").exists() {
            assert_eq!(files(&desk.edition("1")), wanted);
            all += 1;
            continue;
        }
        none += 1;
        is_fine(&desk.release(&[]));
        assert_eq!(files(&desk.out()).len(), wanted.len(), "something is left over");
        assert_eq!(files(&desk.edition("1")), wanted);
    }
    assert_eq!(none + all, RUNS);
}
