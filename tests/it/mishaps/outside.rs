//! Other programs at the same file: an editor, and this program twice.
#![allow(clippy::print_stdout, clippy::print_stderr, reason = "what was measured, or could not be, is told")]

use std::fs;
use std::io::{BufRead, BufReader, Write};
use std::path::Path;
use std::process::{Command, Stdio};
use std::sync::Arc;
use std::sync::mpsc::{Receiver, channel};
use std::time::Duration;

use tracewheel::file::{self, FileError};
use tracewheel::session::{OpenDraft, RecoveryFolder};

use super::{can_be_saved_elsewhere, inner_folder, open, put_skirt, retitle, title_in};

/// A draft that is open and watched, and what is heard of the watch.
fn watched(path: &Path) -> (OpenDraft, Receiver<()>) {
    let (sender, woken) = channel();
    let sender = std::sync::Mutex::new(sender);
    let wake = Arc::new(move || sender.lock().unwrap().send(()).unwrap_or(()));
    (OpenDraft::of_file(path, file::open(path).unwrap(), Some(wake)), woken)
}

/// Waits until it is told what another program did.
fn told(open: &OpenDraft, woken: &Receiver<()>) -> String {
    for _ in 0..200 {
        if let Some(words) = open.changed_outside() {
            return words;
        }
        let _ = woken.recv_timeout(Duration::from_millis(100));
    }
    panic!("nothing was told of the change");
}

/// Another program puts another title into the file, written over it as editors do that keep the file.
fn change(path: &Path, title: &str) {
    let text = fs::read_to_string(path).unwrap();
    fs::write(path, text.replace("Plain skirt", title)).unwrap();
}

#[test]
fn a_file_that_changes_without_unsaved_work() {
    let folder = tempfile::tempdir().unwrap();
    let draft = folder.path().join("skirt.ron");
    put_skirt(&draft);
    let (work, woken) = watched(&draft);
    assert_eq!(work.changed_outside(), None);
    change(&draft, "Their skirt");
    assert_eq!(told(&work, &woken), "skirt.ron was changed by another program");
    // Nothing is unsaved: loaded again, it is theirs, and there is nothing to tell.
    assert!(!work.work().is_unsaved());
    let (mut again, _woken) = watched(&draft);
    assert_eq!((again.work().draft().title.as_str(), again.changed_outside()), ("Their skirt", None));
    retitle(&mut again, "Ours after theirs");
    again.save(None, false).unwrap();
    assert_eq!(title_in(&draft), "Ours after theirs");
}

#[test]
fn a_file_that_changes_beside_unsaved_work() {
    let folder = tempfile::tempdir().unwrap();
    let draft = folder.path().join("skirt.ron");
    put_skirt(&draft);
    let (mut work, woken) = watched(&draft);
    retitle(&mut work, "Our skirt");
    change(&draft, "Their skirt");
    assert_eq!(told(&work, &woken), "skirt.ron was changed by another program");
    let error = work.save(None, false).unwrap_err();
    assert!(matches!(error, FileError::ChangedOutside { gone: false, .. }));
    assert!(error.to_string().ends_with("; save under another name, or save over it"), "{error}");
    assert_eq!(title_in(&draft), "Their skirt");
    can_be_saved_elsewhere(&mut work, "Our skirt", &folder.path().join("ours.ron"));
    // By will it is written over: known and accepted, or told to the save.
    let (mut work, woken) = watched(&draft);
    retitle(&mut work, "Accepted");
    fs::remove_file(&draft).unwrap();
    assert_eq!(told(&work, &woken), "skirt.ron was removed by another program");
    assert!(matches!(work.save(None, false), Err(FileError::ChangedOutside { gone: true, .. })));
    work.save(None, true).unwrap();
    assert_eq!(title_in(&draft), "Accepted");
    // Something that is no draft, and no text.
    retitle(&mut work, "After rubbish");
    fs::write(&draft, [0xff, 0xfe, 0]).unwrap();
    told(&work, &woken);
    work.accept_outside();
    work.save(None, false).unwrap();
    assert_eq!(title_in(&draft), "After rubbish");
}

/// The program in a process of its own: it opens the draft, changes it, and does as it is told.
#[test]
#[ignore = "is started by the test below"]
fn another_program() {
    let Some(folder) = inner_folder() else { return };
    let mut work = open(&folder.join("skirt.ron"));
    work.keep_in(&RecoveryFolder::open(folder.join("recovery")).unwrap()).unwrap();
    retitle(&mut work, "Theirs, saved");
    for line in std::io::stdin().lines() {
        match line.unwrap().as_str() {
            "save" => work.save(None, false).unwrap(),
            _ => {
                retitle(&mut work, "Theirs, unsaved");
                work.keeper().unwrap().flush();
            }
        }
        println!("\nDONE");
    }
}

#[test]
fn two_programs_on_one_file() {
    let folder = tempfile::tempdir().unwrap();
    let draft = folder.path().join("skirt.ron");
    put_skirt(&draft);
    let recovery = RecoveryFolder::open(folder.path().join("recovery")).unwrap();
    let (mut work, woken) = watched(&draft);
    work.keep_in(&recovery).unwrap();
    retitle(&mut work, "Ours");
    work.keeper().unwrap().flush();
    let mut other = Command::new(std::env::current_exe().unwrap())
        .args(["--exact", "mishaps::outside::another_program", "--ignored", "--nocapture"])
        .env(super::FOLDER, folder.path())
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .spawn()
        .unwrap();
    let (mut ears, mut mouth) = (BufReader::new(other.stdout.take().unwrap()).lines(), other.stdin.take().unwrap());
    let mut ask = |what: &str| {
        writeln!(mouth, "{what}").unwrap();
        assert!(ears.any(|line| line.unwrap() == "DONE"), "the other program ended");
    };
    ask("save");
    assert_eq!(title_in(&draft), "Theirs, saved");
    assert_eq!(told(&work, &woken), "skirt.ron was changed by another program");
    assert!(matches!(work.save(None, false), Err(FileError::ChangedOutside { gone: false, .. })));
    assert_eq!(title_in(&draft), "Theirs, saved");
    // Each keeps its unsaved work in a file of its own, and nobody is offered what another has open.
    ask("change");
    assert!(recovery.left_behind().is_empty());
    other.kill().unwrap();
    other.wait().unwrap();
    let left = recovery.left_behind();
    assert_eq!(left.iter().map(|l| l.title.as_deref()).collect::<Vec<_>>(), [Ok("Theirs, unsaved")]);
    assert_eq!(left[0].take_up().unwrap().draft.title, "Theirs, unsaved");
    can_be_saved_elsewhere(&mut work, "Ours", &folder.path().join("ours.ron"));
    assert_eq!(title_in(&draft), "Theirs, saved");
}

/// The built program several times at once on one file: every run either put its size in or said that it did not, and the file is whole at any time.
#[test]
fn runs_at_once_lose_nothing_of_each_other() {
    let folder = tempfile::tempdir().unwrap();
    let draft = folder.path().join("skirt.ron");
    put_skirt(&draft);
    let at = draft.to_str().unwrap();
    let (mut added, mut refused) = (Vec::new(), 0);
    for round in 0..8 {
        let runs = (0..4).map(|i| {
            let size = format!("{}", 100 + 10 * round + i);
            let run = crate::program()
                .args(["chart", at, "add", &size, "hip=1 m"])
                .stdout(Stdio::null())
                .stderr(Stdio::piped())
                .spawn()
                .unwrap();
            (size, run)
        });
        let mut runs: Vec<_> = runs.collect();
        while runs.iter_mut().any(|(_, run)| run.try_wait().unwrap().is_none()) {
            file::open(&draft).unwrap();
        }
        for (size, run) in runs {
            let ended = run.wait_with_output().unwrap();
            let told = String::from_utf8(ended.stderr).unwrap();
            match ended.status.code() {
                Some(0) => added.push(size),
                Some(2) => {
                    assert!(told.contains("was changed by another program since it was opened"), "{told}");
                    refused += 1;
                }
                other => panic!("{other:?}: {told}"),
            }
        }
    }
    let sizes = file::open(&draft).unwrap().draft.chart.girth;
    for size in &added {
        assert!(sizes.contains(size), "{size} was said to be added, and is not in {sizes:?}");
    }
    assert_eq!(sizes.len(), 4 + added.len(), "what was refused is in the file: {sizes:?}");
    println!("{} added, {refused} refused", added.len());
    assert!(added.len() >= 8 && fs::read_dir(folder.path()).unwrap().count() == 1);
}
