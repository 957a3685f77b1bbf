//! Unsaved work outlives a crash: a script of edits is killed at random moments and reopened.

use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::sync::Arc;
use std::time::Duration;

use tracewheel::document::{Address, Draft, Part};
use tracewheel::file::{self, Fingerprint};
use tracewheel::session::{
    ChartCommand, Command as Change, Keeper, KeptAbout, OpenDraft, RecoveryFolder, Seen, TextCommand, Watch,
};

use super::dice::Dice;

fn hash(draft: &Draft) -> String {
    format!("{:?}", Fingerprint::of(file::write(draft).as_bytes()))
}

/// One edit of the script: a cell, a value or a point of the check block; sometimes a wrong formula.
fn edit(draft: &Draft, dice: &mut Dice) -> Change {
    let chart = &draft.chart;
    match dice.below(4) {
        0 => {
            let row = &chart.rows[dice.below(chart.rows.len() as u64) as usize];
            let label = &chart.girth[dice.below(chart.girth.len() as u64) as usize];
            let text = format!("{} mm", 300 + dice.below(900));
            Change::Chart(ChartCommand::Cell(row.name.clone(), label.clone(), text))
        }
        1 => {
            let at = Address::new(Part::Draft, "note");
            Change::Text(TextCommand::Set(at, format!("note {}", dice.below(1_000_000))))
        }
        2 => {
            let at = Address::new(Part::Value("bust_ease".into()), "is");
            let wrong = dice.below(3) == 0;
            let text = if wrong { format!("{} cm +", dice.below(20)) } else { format!("{} cm", 4 + dice.below(900)) };
            Change::Text(TextCommand::Set(at, text))
        }
        _ => {
            let at = Address::new(Part::point("front", "tip"), "at");
            Change::Text(TextCommand::Set(at, format!("neck_point.polar(20°, {} mm)", 90 + dice.below(5000))))
        }
    }
}

/// The script, in a process of its own: it writes in its log what it does, and is killed somewhere.
#[test]
#[ignore = "is started by the test below, with the folder in its environment"]
fn child() {
    let Some(folder) = std::env::var_os("TRACEWHEEL_TEST_FOLDER").map(PathBuf::from) else { return };
    let mut dice = Dice(std::env::var("TRACEWHEEL_TEST_SEED").unwrap().parse().unwrap());
    let mut log = std::fs::File::create(folder.join("log")).unwrap();
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("examples/bodice-sleeve.ron");
    let mut open = OpenDraft::of_file(&path, file::open(&path).unwrap(), None);
    open.keep_in(&RecoveryFolder::open(folder.join("recovery")).unwrap()).unwrap();
    let mut say = |line: String| {
        log.write_all(line.as_bytes()).unwrap();
        log.flush().unwrap();
    };
    let mut told = 0;
    loop {
        let change = edit(open.work().draft(), &mut dice);
        // The state is in the log before the keeper can have it.
        let mut next = Draft::clone(open.work().draft());
        let before = open.work().revision();
        open.begin("a test looks ahead");
        open.run(&change).unwrap();
        next.clone_from(open.work().draft());
        say(format!("step {} {}\n", open.work().revision(), hash(&next)));
        open.finish();
        assert!(open.work().revision() >= before);
        let written = open.keeper().unwrap().written();
        if written != told {
            told = written;
            say(format!("kept {written}\n"));
        }
        std::thread::sleep(Duration::from_millis(dice.below(12)));
    }
}

#[test]
fn work_is_found_again_after_being_killed_at_any_moment() {
    let mut dice = Dice(20_261_125);
    let runs: Vec<(u64, u64, u64)> = (0..20).map(|run| (run, dice.roll(), 300 + dice.below(2_000))).collect();
    let with_work: usize = runs
        .chunks(5)
        .map(|some| {
            std::thread::scope(|scope| {
                let all: Vec<_> = some.iter().map(|run| scope.spawn(|| usize::from(kill_one(*run)))).collect();
                all.into_iter().map(|t| t.join().unwrap()).sum::<usize>()
            })
        })
        .sum();
    assert!(with_work >= 12, "hardly any run had anything to lose: {with_work}");
}

/// One run that is killed; says whether there was work to find.
fn kill_one((run, seed, after): (u64, u64, u64)) -> bool {
    let folder = tempfile::tempdir().unwrap();
    let mut child = Command::new(std::env::current_exe().unwrap())
        .args(["--exact", "kept::child", "--ignored", "--nocapture"])
        .env("TRACEWHEEL_TEST_FOLDER", folder.path())
        .env("TRACEWHEEL_TEST_SEED", seed.to_string())
        .stdout(Stdio::null())
        .stderr(Stdio::null())
        .spawn()
        .unwrap();
    std::thread::sleep(Duration::from_millis(after));
    child.kill().unwrap();
    child.wait().unwrap();
    let log = std::fs::read_to_string(folder.path().join("log")).unwrap_or_default();
    let steps: Vec<(u64, &str)> = log
        .lines()
        .filter_map(|l| l.strip_prefix("step "))
        .filter_map(|l| l.split_once(' '))
        .filter_map(|(n, h)| Some((n.parse().ok()?, h)))
        .collect();
    let kept: u64 = log.lines().filter_map(|l| l.strip_prefix("kept ")?.parse().ok()).next_back().unwrap_or(0);
    let left = RecoveryFolder::open(folder.path().join("recovery")).unwrap().left_behind();
    assert!(left.len() <= 1, "run {run}: {left:?}");
    let Some(left) = left.first() else {
        assert_eq!(kept, 0, "run {run}: work was kept and is not there");
        return false;
    };
    let taken = left.take_up().unwrap();
    let found = hash(&taken.draft);
    let step = taken.about.step;
    let logged = steps.iter().find(|(n, _)| *n == step);
    let logged = logged.unwrap_or_else(|| panic!("run {run}: step {step} is not in the log"));
    assert_eq!(logged.1, found, "run {run}, step {step}");
    assert!(step >= kept, "run {run}: step {kept} was on the disk, {step} came back");
    // What came later is no older than a keeper waits (0.4 s), and some writing.
    let last = steps.last().unwrap().0;
    assert!(last - step < 400, "run {run}: {} steps were lost", last - step);
    assert!(taken.about.origin.as_ref().unwrap().ends_with("examples/bodice-sleeve.ron"));
    true
}

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
