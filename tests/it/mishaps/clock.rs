//! Clocks that are wrong, go back or stand: no decision hangs on the time of a file.

use std::fs::{self, File};
use std::path::Path;
use std::sync::mpsc::channel;
use std::time::{Duration, SystemTime};

use tracewheel::file::{self, FileError, Fingerprint};
use tracewheel::session::{OpenDraft, RecoveryFolder, Seen, Watch};

use super::{open, put_skirt, retitle, title_in};

/// Some two hundred years.
const AGES: Duration = Duration::from_secs(200 * 365 * 86_400);
const DAY: Duration = Duration::from_secs(86_400);

fn set_time(path: &Path, time: SystemTime) {
    File::options().write(true).open(path).unwrap().set_modified(time).unwrap();
}

#[test]
fn saving_goes_by_what_is_in_the_file() {
    let folder = tempfile::tempdir().unwrap();
    let draft = folder.path().join("skirt.ron");
    put_skirt(&draft);
    for (i, time) in
        [SystemTime::now() + AGES / 10, SystemTime::UNIX_EPOCH, SystemTime::now() - DAY].into_iter().enumerate()
    {
        // Another time alone is no change.
        let mut work = open(&draft);
        set_time(&draft, time);
        retitle(&mut work, &format!("Title {i}"));
        work.save(None, false).unwrap();
        assert_eq!(title_in(&draft), format!("Title {i}"));
        // A change of the same length at the same time is one.
        set_time(&draft, time);
        let text = fs::read_to_string(&draft).unwrap();
        fs::write(&draft, text.replace("Title", "Tytle")).unwrap();
        set_time(&draft, time);
        retitle(&mut work, "Ours");
        assert!(matches!(work.save(None, false), Err(FileError::ChangedOutside { gone: false, .. })));
        assert_eq!(title_in(&draft), format!("Tytle {i}"));
    }
}

#[test]
fn the_watch_sees_a_change_that_has_the_length_and_the_time_of_before() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("draft.ron");
    let then = SystemTime::now() - DAY;
    fs::write(&path, "one").unwrap();
    set_time(&path, then);
    let (sender, woken) = channel();
    let watch = Watch::start(path.clone(), Box::new(move || sender.send(()).unwrap_or(()))).unwrap();
    let until = |bytes: &[u8]| {
        (0..4_000).any(|_| {
            watch.seen() == Seen::Content(Fingerprint::of(bytes)) || {
                std::thread::sleep(Duration::from_millis(5));
                false
            }
        })
    };
    assert!(until(b"one"));
    fs::write(&path, "two").unwrap();
    set_time(&path, then);
    watch.look_now();
    assert!(until(b"two") && woken.recv_timeout(Duration::from_secs(20)).is_ok());
    // The same again, put in its place under another name, as many editors save.
    fs::write(folder.path().join("new"), "six").unwrap();
    set_time(&folder.path().join("new"), then);
    fs::rename(folder.path().join("new"), &path).unwrap();
    watch.look_now();
    assert!(until(b"six") && woken.recv_timeout(Duration::from_secs(20)).is_ok());
}

/// Leaves unsaved work behind, as a crash does, and says in which file it lies.
fn leave_behind(draft: &Path, recovery: &RecoveryFolder, titles: &[&str]) -> std::path::PathBuf {
    let mut work = open(draft);
    work.keep_in(recovery).unwrap();
    for title in titles {
        retitle(&mut work, title);
        work.keeper().unwrap().flush();
        // The clock goes back by a day between any two states.
        set_time(work.keeper().unwrap().path(), SystemTime::now() - DAY);
    }
    work.keeper().unwrap().path().to_owned()
}

#[test]
fn work_is_found_again_whatever_the_clock_says() {
    let folder = tempfile::tempdir().unwrap();
    let draft = folder.path().join("skirt.ron");
    put_skirt(&draft);
    let recovery = RecoveryFolder::open(folder.path().join("recovery")).unwrap();
    // The last of several states, though it is older than the one before by the clock.
    let first = leave_behind(&draft, &recovery, &["Once", "Twice", "Three times"]);
    // A second one, which the clock tells to be from before the first, and one from the future.
    let second = leave_behind(&draft, &recovery, &["Second"]);
    let third = leave_behind(&draft, &recovery, &["Third"]);
    for (times, file_time) in [
        ([SystemTime::now(), SystemTime::UNIX_EPOCH, SystemTime::now() + AGES / 10], SystemTime::now() + AGES / 10),
        ([SystemTime::UNIX_EPOCH; 3], SystemTime::now()),
        ([SystemTime::now() + AGES / 10; 3], SystemTime::UNIX_EPOCH),
    ] {
        for (path, time) in [&first, &second, &third].into_iter().zip(times) {
            set_time(path, time);
        }
        // The file itself may be newer by the clock than all that was kept: what was not saved is offered all the same.
        set_time(&draft, file_time);
        let mut found: Vec<String> = recovery.left_behind().iter().map(|l| l.title.clone().unwrap()).collect();
        found.sort();
        assert_eq!(found, ["Second", "Third", "Three times"]);
    }
    // Each is taken up as what it is, and saved in its file, which is as it was then.
    let left = recovery.left_behind();
    let one = left.iter().find(|l| l.path == first).unwrap();
    let taken = one.take_up().unwrap();
    let mut work = OpenDraft::recovered(taken.draft.clone(), &taken.about, None);
    work.save(None, false).unwrap();
    assert_eq!(title_in(&draft), "Three times");
}

/// Ended between the save and the end of what was kept: by what it holds, not by any time, that is known to be saved.
#[test]
fn what_was_saved_is_not_offered_again() {
    for (kept_time, file_time) in [
        (SystemTime::now() + AGES / 10, SystemTime::UNIX_EPOCH),
        (SystemTime::UNIX_EPOCH, SystemTime::now()),
        (SystemTime::now(), SystemTime::now()),
    ] {
        let folder = tempfile::tempdir().unwrap();
        let draft = folder.path().join("skirt.ron");
        put_skirt(&draft);
        let recovery = RecoveryFolder::open(folder.path().join("recovery")).unwrap();
        let kept = leave_behind(&draft, &recovery, &["Saved"]);
        // The save itself, of which the keeper heard nothing any more.
        let opened = file::open(&draft).unwrap();
        let saved = tracewheel::document::Draft { title: "Saved".into(), ..opened.draft };
        file::save(&draft, &saved, Some(&opened.fingerprint)).unwrap();
        set_time(&kept, kept_time);
        set_time(&draft, file_time);
        assert!(recovery.left_behind().is_empty());
        assert!(!kept.exists());
        // Changed since by another program, it would be offered: it is no longer what the file holds.
        let kept = leave_behind(&draft, &recovery, &["Saved once more"]);
        let other = tracewheel::document::Draft { title: "Theirs".into(), ..saved };
        file::save(&draft, &other, None).unwrap();
        set_time(&kept, kept_time);
        set_time(&draft, file_time);
        assert_eq!(recovery.left_behind().len(), 1);
    }
}
