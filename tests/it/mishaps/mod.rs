//! What disks, folders, clocks and other programs do to a draft that is open. In each case there is a clear message (what, where, what to do),
//! nothing is lost, and saving elsewhere works.
//!
//! Some of it needs circumstances that only the system can make: a small disk, a disk that became read-only, a person without rights. Those
//! parts are ignored tests, which others here start again within such circumstances. Where the system does not allow that, the test
//! says loudly that it did not run, and fails if `TRACEWHEEL_EVERY_MEANS` is set, as `.ci/run` does.
#![allow(clippy::print_stdout, clippy::print_stderr, reason = "what was measured, or could not be, is told")]

mod clock;
mod disk;
mod folder;
mod outside;
mod rights;

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use tracewheel::document::{Address, Draft, Part};
use tracewheel::file;
use tracewheel::session::{Command as Change, OpenDraft, TextCommand};

use super::release::skirt;

/// Where an inner test finds its folder.
const FOLDER: &str = "TRACEWHEEL_TEST_FOLDER";
/// Set, everything must run.
const EVERY_MEANS: &str = "TRACEWHEEL_EVERY_MEANS";

/// Runs an ignored test of this binary with these words in front of it; it must have run, and passed.
fn run_within(before: &[&str], test: &str, folder: &Path) {
    let own = std::env::current_exe().unwrap();
    let own = own.to_str().unwrap();
    let mut words = before.to_vec();
    words.extend([own, "--exact", test, "--ignored", "--nocapture"]);
    let ran = Command::new(words[0]).args(&words[1..]).env(FOLDER, folder).output().unwrap();
    let text = |bytes: &[u8]| String::from_utf8_lossy(bytes).into_owned();
    let (out, err) = (text(&ran.stdout), text(&ran.stderr));
    assert!(ran.status.success() && out.contains("1 passed"), "{test} failed:\n{out}\n{err}");
}

/// The folder of an inner test; none where it was not started by another.
fn inner_folder() -> Option<PathBuf> {
    std::env::var_os(FOLDER).map(PathBuf::from)
}

/// Whether the system lets these words be put in front of a program; if not, that is told.
fn is_allowed(before: &[&str], what: &str) -> bool {
    let ran = Command::new(before[0]).args(&before[1..]).arg("true").output();
    let why = match ran {
        Ok(ran) if ran.status.success() => return true,
        Ok(ran) => String::from_utf8_lossy(&ran.stderr).trim().to_owned(),
        Err(error) => error.to_string(),
    };
    let words = format!("NOT RUN: {what} needs `{}`, which is not to be had here: {why}", before.join(" "));
    assert!(std::env::var_os(EVERY_MEANS).is_none(), "{words}");
    eprintln!("{words}");
    false
}

/// A skirt of two pieces in four sizes, in a file.
fn put_skirt(path: &Path) -> Draft {
    let draft = file::read(&skirt("1", "0 cm", "")).unwrap().draft;
    fs::write(path, file::write(&draft)).unwrap();
    draft
}

fn open(path: &Path) -> OpenDraft {
    OpenDraft::of_file(path, file::open(path).unwrap(), None)
}

/// Changes the draft's title.
fn retitle(open: &mut OpenDraft, title: &str) {
    open.run(&Change::Text(TextCommand::Set(Address::new(Part::Draft, "title"), title.into()))).unwrap();
}

fn title_in(path: &Path) -> String {
    file::open(path).unwrap().draft.title
}

/// All that lies in a folder and below, hidden things too; files with what they hold.
fn everything(folder: &Path) -> BTreeMap<String, Option<Vec<u8>>> {
    fn walk(folder: &Path, before: &str, out: &mut BTreeMap<String, Option<Vec<u8>>>) {
        for entry in fs::read_dir(folder).unwrap().map(|e| e.unwrap()) {
            let name = format!("{before}{}", entry.file_name().to_string_lossy());
            if entry.path().is_dir() {
                out.insert(name.clone(), None);
                walk(&entry.path(), &format!("{name}/"), out);
            } else {
                out.insert(name, Some(fs::read(entry.path()).unwrap()));
            }
        }
    }
    let mut out = BTreeMap::new();
    walk(folder, "", &mut out);
    out
}

/// What could not be saved is still there, and can be saved elsewhere.
fn can_be_saved_elsewhere(open: &mut OpenDraft, title: &str, elsewhere: &Path) {
    assert!(open.work().is_unsaved());
    assert_eq!(open.work().draft().title, title);
    open.save(Some(elsewhere), false).unwrap();
    assert!(!open.work().is_unsaved());
    assert_eq!(open.path(), Some(elsewhere));
    assert_eq!(title_in(elsewhere), title);
}
