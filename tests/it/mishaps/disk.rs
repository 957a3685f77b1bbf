//! A disk that is full, and one that can only be read: a small one that is mounted for the test, in a space of names of its own.

use std::fs::{self, File};
use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

use tracewheel::output::{save_all, save_folder};
use tracewheel::session::{Own, Preferences, RecoveryFolder};

use super::super::oracle::{Ran, tracewheel};
use super::{
    can_be_saved_elsewhere, everything, inner_folder, is_allowed, open, put_skirt, retitle, run_within, title_in,
};

/// A space of names in which disks may be mounted: as the administrator of just that, or as the one of the machine.
const SPACES: [&[&str]; 2] = [&["unshare", "--map-root-user", "--mount"], &["unshare", "--mount"]];

/// Starts an inner test beside a small disk.
fn with_a_small_disk(test: &str, kilobytes: usize) {
    let folder = tempfile::tempdir().unwrap();
    let small = folder.path().join("small");
    fs::create_dir(&small).unwrap();
    let mount = format!("mount -t tmpfs -o size={kilobytes}k small '{}' && exec \"$@\"", small.display());
    let with = |space: &'static [&'static str]| {
        let mut words = space.to_vec();
        words.extend(["sh", "-c", &mount, "sh"]);
        words.iter().map(|w| (*w).to_owned()).collect::<Vec<_>>()
    };
    let all: Vec<Vec<String>> = SPACES.into_iter().map(with).collect();
    let is_quiet = |words: &Vec<String>| {
        Command::new(&words[0]).args(&words[1..]).arg("true").output().is_ok_and(|r| r.status.success())
    };
    // None of them: the last one tells why.
    let words = all.iter().find(|w| is_quiet(w)).unwrap_or(&all[SPACES.len() - 1]);
    let words: Vec<&str> = words.iter().map(String::as_str).collect();
    if is_allowed(&words, "a small disk") {
        run_within(&words, test, folder.path());
    }
}

/// Fills a disk to the last byte.
fn fill(disk: &Path) -> PathBuf {
    let ballast = disk.join("ballast");
    let mut file = File::create(&ballast).unwrap();
    let mut block = 4096;
    while block > 0 {
        if file.write_all(&vec![7; block]).is_err() {
            block /= 2;
        }
    }
    assert_eq!(
        File::create(disk.join("probe")).unwrap().write(b"x").unwrap_err().kind(),
        std::io::ErrorKind::StorageFull
    );
    fs::remove_file(disk.join("probe")).unwrap();
    ballast
}

fn refused(ran: &Ran, words: &[&str]) {
    assert_eq!(ran.exit, 2, "{}{}", ran.out, ran.err);
    for word in words {
        assert!(ran.err.contains(word), "{word}: {}", ran.err);
    }
}

#[test]
fn a_full_disk() {
    with_a_small_disk("mishaps::disk::on_a_full_disk", 1024);
}

#[test]
#[ignore = "is started by the test above, beside a small disk"]
fn on_a_full_disk() {
    let Some(folder) = inner_folder() else { return };
    let (small, draft) = (folder.join("small"), folder.join("small/skirt.ron"));
    put_skirt(&draft);
    let mut work = open(&draft);
    work.keep_in(&RecoveryFolder::open(small.join("recovery")).unwrap()).unwrap();
    retitle(&mut work, "Kept before");
    work.keeper().unwrap().flush();
    let (mut own, _) = Own::open(Some(small.join("own.ron")));
    own.prefer(Preferences::default()).unwrap();
    let kept = work.keeper().unwrap().path().to_owned();
    fs::create_dir(small.join("out")).unwrap();
    let ballast = fill(&small);
    let before = everything(&small);

    // Saving.
    retitle(&mut work, "Typed on a full disk");
    work.keeper().unwrap().flush();
    let told = work.save(None, false).unwrap_err().to_string();
    assert_eq!(
        told,
        format!(
            "the disk is full, `{}` was not saved and is as it was; free some room, or save elsewhere",
            draft.display()
        )
    );
    // What is kept against a crash: told, and the state before is still there.
    let trouble = work.keeper().unwrap().trouble().unwrap();
    assert!(trouble.starts_with("unsaved work is not kept in `") && trouble.contains("save the draft"), "{trouble}");
    assert!(fs::read_to_string(&kept).unwrap().contains("Kept before"));
    // Preferences.
    let told = own.prefer(Preferences { text: 150, ..Preferences::default() }).unwrap_err();
    assert!(told.contains("cannot be written to") && told.contains("own.ron"), "{told}");
    assert_eq!(everything(&small), before, "nothing is damaged, nothing is left about");

    // Files and folders for buyers.
    let files = [("a.pdf".to_owned(), vec![1; 100]), ("b.pdf".to_owned(), vec![2; 100_000])];
    let told = save_all(&small.join("out"), &files).unwrap_err().to_string();
    assert!(told.contains("could not be written: the disk is full") && told.contains("nothing was changed"), "{told}");
    let told = save_folder(&small, "edition", &files).unwrap_err().to_string();
    assert!(told.contains("could not be written: the disk is full") && told.contains("nothing was written"), "{told}");
    let (at, out) = (draft.to_str().unwrap(), small.join("out"));
    let out = out.to_str().unwrap();
    refused(
        &tracewheel(&["publish", at, "--out", out, "--what", "all"]),
        &["the disk is full", out, "nothing was changed"],
    );
    refused(&tracewheel(&["release", at, "--out", out]), &["the disk is full", out, "nothing was written"]);
    refused(&tracewheel(&["tables", at, "--csv", out]), &["the disk is full", out]);
    refused(&tracewheel(&["chart", at, "add", "15", "hip=102cm"]), &["the disk is full", at, "save elsewhere"]);
    assert_eq!(everything(&small), before);
    // A release beside the full disk stands; that its draft could not be written is told.
    let beside = folder.join("beside");
    let ran = tracewheel(&["release", at, "--out", beside.to_str().unwrap()]);
    refused(&ran, &["the release stands, but it could not be written into the log", "the disk is full"]);
    assert_eq!(everything(&small), before);

    can_be_saved_elsewhere(&mut work, "Typed on a full disk", &folder.join("elsewhere.ron"));
    // With room again, it can be saved where it was, and is kept again.
    fs::remove_file(ballast).unwrap();
    retitle(&mut work, "With room");
    work.keeper().unwrap().flush();
    assert_eq!(work.keeper().unwrap().trouble(), None);
    work.save(Some(&draft), true).unwrap();
    assert_eq!(title_in(&draft), "With room");
}

/// Room for the first files and not for the rest: none of them is changed.
#[test]
fn a_disk_that_fills_while_it_is_written() {
    with_a_small_disk("mishaps::disk::on_a_disk_that_fills", 256);
}

#[test]
#[ignore = "is started by the test above, beside a small disk"]
fn on_a_disk_that_fills() {
    let Some(folder) = inner_folder() else { return };
    let (small, draft) = (folder.join("small"), folder.join("small/skirt.ron"));
    put_skirt(&draft);
    let out = small.join("out");
    fs::create_dir(&out).unwrap();
    save_all(&out, &[("a.pdf".to_owned(), b"old".to_vec())]).unwrap();
    let before = everything(&small);
    let files: Vec<_> = ["a", "b", "c", "d"].iter().map(|n| (format!("{n}.pdf"), vec![1; 90_000])).collect();
    let told = save_all(&out, &files).unwrap_err().to_string();
    assert!(told.contains(".pdf could not be written: the disk is full"), "{told}");
    let told = save_folder(&small, "edition", &files).unwrap_err().to_string();
    assert!(told.contains("the disk is full") && told.contains("nothing was written"), "{told}");
    assert_eq!(everything(&small), before);
    let at = draft.to_str().unwrap();
    let to = out.to_str().unwrap();
    refused(&tracewheel(&["release", at, "--out", to]), &["the disk is full", "nothing was written"]);
    refused(&tracewheel(&["publish", at, "--out", to, "--what", "all"]), &["the disk is full", "nothing was changed"]);
    assert_eq!(everything(&small), before);
}

#[test]
fn a_disk_that_can_only_be_read() {
    with_a_small_disk("mishaps::disk::on_a_disk_that_can_only_be_read", 1024);
}

#[test]
#[ignore = "is started by the test above, beside a small disk"]
fn on_a_disk_that_can_only_be_read() {
    let Some(folder) = inner_folder() else { return };
    let (small, draft) = (folder.join("small"), folder.join("small/skirt.ron"));
    put_skirt(&draft);
    fs::create_dir(small.join("out")).unwrap();
    let mut work = open(&draft);
    // Kept on another disk: one on which a file is open for writing does not let itself be made read-only.
    work.keep_in(&RecoveryFolder::open(folder.join("recovery")).unwrap()).unwrap();
    let remount = |how: &str| {
        let ran = Command::new("mount").args(["-o", how]).arg(&small).output().unwrap();
        assert!(ran.status.success(), "{}", String::from_utf8_lossy(&ran.stderr));
    };
    remount("remount,ro");
    let before = everything(&small);

    retitle(&mut work, "Typed on a disk for reading");
    work.keeper().unwrap().flush();
    let told = work.save(None, false).unwrap_err().to_string();
    assert_eq!(
        told,
        format!("no permission for `{}`; change the permissions, or choose another place", small.display())
    );
    assert!(fs::read_to_string(work.keeper().unwrap().path()).unwrap().contains("Typed on a disk for reading"));
    let told = RecoveryFolder::open(small.join("another")).unwrap_err().to_string();
    assert!(told.starts_with("unsaved work cannot be kept in `"), "{told}");
    let (at, out) = (draft.to_str().unwrap(), small.join("out"));
    let out = out.to_str().unwrap();
    refused(&tracewheel(&["publish", at, "--out", out]), &["could not be written", out]);
    refused(&tracewheel(&["release", at, "--out", out]), &["could not be written", out, "nothing was written"]);
    refused(&tracewheel(&["chart", at, "add", "15", "hip=102cm"]), &["no permission for", "choose another place"]);
    // What only reads goes on.
    assert_eq!(tracewheel(&["measure", at, "hip", "--size", "16"]).exit, 0);
    assert_eq!(everything(&small), before);

    can_be_saved_elsewhere(&mut work, "Typed on a disk for reading", &folder.join("elsewhere.ron"));
    remount("remount,rw");
    retitle(&mut work, "Writable again");
    work.save(Some(&draft), true).unwrap();
    assert_eq!(title_in(&draft), "Writable again");
}

/// What is printed into a file on a full disk: cut off, and said so.
#[cfg(target_os = "linux")]
#[test]
fn what_cannot_be_printed_is_told() {
    let to = |path: &str| {
        let out = File::options().write(true).open(path).unwrap();
        let mut run = crate::program();
        let ran = run.arg("findings").stdout(out).stderr(Stdio::piped()).spawn().unwrap().wait_with_output().unwrap();
        (ran.status.code().unwrap(), String::from_utf8(ran.stderr).unwrap())
    };
    let (exit, told) = to("/dev/full");
    assert_eq!(exit, 2, "{told}");
    assert!(told.contains("could not be printed in full") && told.contains("print it elsewhere"), "{told}");
    assert_eq!(to("/dev/null"), (0, String::new()));
}
