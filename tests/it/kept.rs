//! Unsaved work outlives the program and is found again; a file that another program changes is noticed. `killed` ends whole sessions.

use std::path::Path;
use std::sync::Arc;
use std::time::Duration;

use tracewheel::document::{Address, Draft, Part};
use tracewheel::file::{self, Fingerprint};
use tracewheel::session::{Command as Change, Keeper, KeptAbout, OpenDraft, RecoveryFolder, Seen, TextCommand, Watch};

fn skirt() -> Arc<Draft> {
    Arc::new(file::open(Path::new("examples/straight-skirt.ron")).unwrap().draft)
}

#[test]
fn kept_work_is_offered_once_and_goes_when_it_is_saved() {
    let folder = tempfile::tempdir().unwrap();
    let recovery = RecoveryFolder::open(folder.path().join("deep/recovery")).unwrap();
    let keeper = Keeper::start(&recovery).unwrap();
    assert!(recovery.left_behind().is_empty());
    keeper.keep(skirt(), KeptAbout { step: 7, ..KeptAbout::default() });
    keeper.flush();
    assert_eq!(keeper.written(), 7);
    assert!(recovery.left_behind().is_empty(), "it is open: nobody else may have it");
    let second = Keeper::start(&recovery).unwrap();
    assert_ne!(second.path(), keeper.path());
    drop(second);
    let path = keeper.path().to_owned();
    drop(keeper);
    let left = recovery.left_behind();
    assert_eq!(left.len(), 1);
    assert_eq!(left[0].title.as_deref(), Ok(skirt().title.as_str()));
    let taken = left[0].take_up().unwrap();
    assert!(left[0].take_up().is_err(), "two windows cannot take up one work");
    assert!(recovery.left_behind().is_empty());
    assert_eq!(taken.draft, *skirt());
    let next = Keeper::start(&recovery).unwrap();
    next.keep(Arc::new(taken.draft.clone()), KeptAbout { step: 1, ..KeptAbout::default() });
    taken.kept_by(&next);
    assert!(!path.exists());
    next.forget();
    drop(next);
    assert!(recovery.left_behind().is_empty());
}

#[test]
fn work_that_cannot_be_read_is_told_and_left() {
    let folder = tempfile::tempdir().unwrap();
    let recovery = RecoveryFolder::open(folder.path().to_owned()).unwrap();
    let good = {
        let keeper = Keeper::start(&recovery).unwrap();
        keeper.keep(skirt(), KeptAbout::default());
        keeper.flush();
        std::fs::read(keeper.path()).unwrap()
    };
    let put = |name: &str, bytes: &[u8]| std::fs::write(folder.path().join(name), bytes).unwrap();
    put("cut.kept", &good[..good.len() / 2]);
    put("binary.kept", &[0, 159, 146, 150, 10, 255]);
    put("newer.kept", String::from_utf8_lossy(&good).replace("version: 0", "version: 99").as_bytes());
    put("empty.kept", b"");
    put("work-9.writing", b"half");
    let left = recovery.left_behind();
    assert_eq!(left.len(), 5);
    let unread: Vec<_> = left.iter().filter(|l| l.title.is_err()).collect();
    assert_eq!(unread.len(), 4);
    for work in unread {
        let problem = work.take_up().err().unwrap().to_string();
        assert!(problem.contains("is left as it is"), "{problem}");
        assert!(work.path.exists());
        work.throw_away().unwrap();
        assert!(!work.path.exists());
    }
    assert_eq!(recovery.left_behind().len(), 1);
}

#[test]
fn a_folder_that_cannot_be_used_is_told() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("a_file");
    std::fs::write(&file, "x").unwrap();
    let problem = RecoveryFolder::open(file.join("recovery")).unwrap_err().to_string();
    assert!(problem.starts_with("unsaved work cannot be kept in"), "{problem}");
    // The folder goes while the work is open: told, and tried again with the next state.
    let recovery = RecoveryFolder::open(folder.path().join("r")).unwrap();
    let keeper = Keeper::start(&recovery).unwrap();
    std::fs::remove_dir_all(folder.path().join("r")).unwrap();
    keeper.keep(skirt(), KeptAbout { step: 1, ..KeptAbout::default() });
    keeper.flush();
    assert!(keeper.trouble().unwrap().starts_with("unsaved work is not kept"));
    std::fs::create_dir_all(folder.path().join("r")).unwrap();
    keeper.keep(skirt(), KeptAbout { step: 2, ..KeptAbout::default() });
    keeper.flush();
    assert_eq!((keeper.trouble(), keeper.written()), (None, 2));
}

#[test]
fn a_panic_leaves_the_work_behind() {
    let folder = tempfile::tempdir().unwrap();
    let recovery = RecoveryFolder::open(folder.path().to_owned()).unwrap();
    let inside = recovery.clone();
    let result = std::thread::spawn(move || {
        let mut open = OpenDraft::new(Draft::clone(&skirt()), None);
        open.keep_in(&inside).unwrap();
        let at = Address::new(Part::Draft, "title");
        open.run(&Change::Text(TextCommand::Set(at, "Changed".into()))).unwrap();
        panic!("on purpose");
    })
    .join();
    assert!(result.is_err());
    assert_eq!(recovery.left_behind()[0].title.as_deref(), Ok("Changed"));
}

#[test]
fn another_program_that_changes_the_file_is_noticed() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("draft.ron");
    std::fs::write(&path, "one").unwrap();
    let (sender, woken) = std::sync::mpsc::channel();
    let watch = Watch::start(path.clone(), Box::new(move || sender.send(()).unwrap_or(()))).unwrap();
    let wait = || woken.recv_timeout(Duration::from_secs(20)).is_ok();
    let until = |what: Seen| {
        (0..4_000).any(|_| {
            watch.seen() == what || {
                std::thread::sleep(Duration::from_millis(5));
                false
            }
        })
    };
    assert!(until(Seen::Content(Fingerprint::of(b"one"))));
    std::fs::write(&path, "another").unwrap();
    watch.look_now();
    assert!(wait() && until(Seen::Content(Fingerprint::of(b"another"))));
    // We saved ourselves: that wakes nobody.
    watch.expect(Fingerprint::of(b"own"));
    std::fs::write(&path, "own").unwrap();
    watch.look_now();
    assert!(woken.recv_timeout(Duration::from_millis(300)).is_err());
    std::fs::remove_file(&path).unwrap();
    watch.look_now();
    assert!(wait() && until(Seen::Gone));
}
