//! Killed at any moment: a scripted session of edits, saves and exports in a process of its own is ended by a signal that it cannot hear, at
//! moments by seed, and what is left is looked at as the next start would.
//!
//! What this cannot show: a power cut. What was written lies with the system when the process is killed; that it is on the disk too rests on
//! `sync_all`, which nothing here judges.
#![allow(clippy::print_stdout, clippy::print_stderr, reason = "what was measured, or could not be, is told")]

use std::collections::{BTreeMap, BTreeSet};
use std::fs::{self, File};
use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::sync::mpsc::{Receiver, Sender, channel};
use std::sync::{Arc, Mutex};
use std::time::{Duration, SystemTime, UNIX_EPOCH};

use tracewheel::document::{Address, Draft, Part};
use tracewheel::file::{self, sha256};
use tracewheel::output::save_all;
use tracewheel::session::{
    ChartCommand, Command as Change, Computed, Last, OpenDraft, Order, Outputs, PrintWish, Progress, PublishCommand,
    RecoveryFolder, ReleaseOrder, Released, TextCommand, What, look_at_release, outputs, release,
};

use super::dice::Dice;
use super::release::skirt;

/// Where moments and scripts begin.
const SEED: u64 = 20_261_130;
/// What may be lost: edits of the last two seconds, as the release asks.
const MOST_LOST: u128 = 2_000;

/// By what a process is known to have held something: the digest of a draft's text.
fn hash(draft: &Draft) -> String {
    sha256(file::write(draft).as_bytes())
}

fn now() -> u128 {
    SystemTime::now().duration_since(UNIX_EPOCH).unwrap().as_millis()
}

/// One edit of the script: a cell, a note, a value, a point; sometimes a wrong formula, which blocks releases until it is mended.
fn edit(draft: &Draft, dice: &mut Dice) -> Change {
    let text = |at: Address, to: String| Change::Text(TextCommand::Set(at, to));
    match dice.below(5) {
        0 => {
            let label = &draft.chart.girth[dice.below(draft.chart.girth.len() as u64) as usize];
            Change::Chart(ChartCommand::Cell("hip".into(), label.clone(), format!("{} mm", 1000 + dice.below(120))))
        }
        1 => text(Address::new(Part::Draft, "note"), format!("note {}", dice.below(1_000_000))),
        2 => text(Address::new(Part::point("skirt_back", "d"), "at"), format!("a.down({} mm)", 400 + dice.below(400))),
        3 => text(Address::new(Part::Draft, "edition"), format!("{}", dice.below(1_000_000))),
        _ => {
            let wrong = if dice.below(8) == 0 { " +" } else { "" };
            text(Address::new(Part::point("skirt_front", "a"), "at"), format!("(0 cm, {} mm{wrong})", dice.below(90)))
        }
    }
}

/// What the process says of itself, a line at a time, each whole before what it tells of begins.
struct Log(Mutex<File>);

impl Log {
    fn say(&self, line: &str) {
        self.0.lock().unwrap().write_all(format!("{line}\n").as_bytes()).unwrap();
    }
}

/// What is exported beside the edits, as the window does it.
enum Job {
    /// Some kinds of files into a folder.
    Files(Arc<Computed>, &'static str, Vec<What>),
    /// A release, of the draft as it was saved.
    Release(Box<Draft>),
}

/// Exports one after the other; what was released goes back.
fn export(folder: &Path, log: &Log, jobs: &Receiver<Job>, back: &Sender<Option<Released>>) {
    for job in jobs {
        let released = match job {
            Job::Files(computed, to, what) => {
                let (model, finished) = (computed.model.as_ref().unwrap(), computed.finished.as_ref().unwrap());
                let groups: Vec<_> = (0..model.cases.len()).map(|case| (0, vec![case])).collect();
                let order = Order {
                    draft: &computed.draft,
                    model,
                    finished,
                    stem: "skirt",
                    what: &what,
                    groups: &groups,
                    wish: &PrintWish::default(),
                    width: 900.0,
                    folder: None,
                };
                let made = outputs(&order, &Progress::default(), &|_| ()).unwrap_or_else(|_| Outputs::default());
                let files: Vec<_> = made.files.into_iter().map(|f| (f.name, f.bytes)).collect();
                for (name, bytes) in &files {
                    log.say(&format!("makes {to}/{name} {}", sha256(bytes)));
                }
                fs::create_dir_all(folder.join(to)).unwrap();
                save_all(&folder.join(to), &files).unwrap();
                log.say(&format!("made {to} {}", files.len()));
                None
            }
            Job::Release(draft) => {
                let text = file::write(&draft);
                let (path, out) = (folder.join("skirt.ron"), folder.join("releases"));
                let order =
                    ReleaseOrder { draft: &draft, text: &text, path: &path, out: &out, date: "", last: Last::None };
                log.say("releases");
                let made = release(&order);
                log.say(if made.is_ok() { "made releases 1" } else { "refused" });
                made.ok()
            }
        };
        if back.send(released).is_err() {
            return;
        }
    }
}

/// The session, in a process of its own.
#[test]
#[ignore = "is started by the tests below, with the folder in its environment"]
fn child() {
    let Some(folder) = std::env::var_os("TRACEWHEEL_TEST_FOLDER").map(PathBuf::from) else { return };
    let mut dice = Dice(std::env::var("TRACEWHEEL_TEST_SEED").unwrap().parse().unwrap());
    let log = Log(Mutex::new(File::create(folder.join("log")).unwrap()));
    let path = folder.join("skirt.ron");
    let mut open = OpenDraft::of_file(&path, file::open(&path).unwrap(), None);
    open.keep_in(&RecoveryFolder::open(folder.join("recovery")).unwrap()).unwrap();
    let (jobs, work) = channel();
    let (back, ended) = channel();
    std::thread::scope(|scope| {
        let (log, folder) = (&log, folder.as_path());
        scope.spawn(move || export(folder, log, &work, &back));
        let mut is_busy = false;
        loop {
            let change = edit(open.work().draft(), &mut dice);
            act(&mut open, log, &change);
            if let Ok(released) = ended.try_recv() {
                is_busy = false;
                if let Some(released) = released {
                    let own = released.draft.log.releases.last().unwrap().clone();
                    act(&mut open, log, &Change::Publish(PublishCommand::Released(own)));
                    save(&mut open, log);
                }
            }
            match dice.below(120) {
                0..2 => save(&mut open, log),
                2 if !is_busy => {
                    save(&mut open, log);
                    jobs.send(Job::Release(Box::new(Draft::clone(open.work().draft())))).unwrap();
                    is_busy = true;
                }
                n @ 3..9 if !is_busy => {
                    let computed = Arc::clone(open.work().computed());
                    let single =
                        Job::Files(Arc::clone(&computed), "single", vec![[What::Pages, What::Svg][n as usize % 2]]);
                    let all = Job::Files(computed, "published", What::ALL.to_vec());
                    jobs.send(if n == 8 { all } else { single }).unwrap();
                    is_busy = true;
                }
                _ => {}
            }
            std::thread::sleep(Duration::from_millis(dice.below(12)));
        }
    });
}

/// Makes a change. The state is in the log before the keeper can have it.
fn act(open: &mut OpenDraft, log: &Log, change: &Change) {
    open.begin("a test looks ahead");
    open.run(change).unwrap();
    log.say(&format!("step {} {} {}", open.work().revision(), now(), hash(open.work().draft())));
    open.finish();
}

fn save(open: &mut OpenDraft, log: &Log) {
    log.say(&format!("saves {} {}", open.work().revision(), hash(open.work().draft())));
    open.save(None, false).unwrap();
    log.say("saved");
}

/// What the log of a process tells.
#[derive(Default)]
struct Told {
    /// Revision, moment and digest of each state.
    steps: Vec<(u64, u128, String)>,
    /// Revision and digest of what was saved last, and of what was being saved.
    saved: Option<(u64, String)>,
    saving: Option<(u64, String)>,
    /// By name the digests that an exported file may have.
    made: BTreeMap<String, BTreeSet<String>>,
    /// How many exports of each kind were done to the end.
    exports: BTreeMap<String, usize>,
}

impl Told {
    fn read(text: &str) -> Self {
        let mut told = Self::default();
        // A line that was cut off tells of something that had not begun.
        for line in text.split_inclusive('\n').filter_map(|l| l.strip_suffix('\n')) {
            let (word, rest) = line.split_once(' ').unwrap_or((line, ""));
            let words: Vec<&str> = rest.split(' ').collect();
            match word {
                "step" => {
                    told.steps.push((words[0].parse().unwrap(), words[1].parse().unwrap(), words[2].to_owned()));
                }
                "saves" => told.saving = Some((words[0].parse().unwrap(), words[1].to_owned())),
                "saved" => told.saved = told.saving.take(),
                "makes" => {
                    let (name, digest) = rest.rsplit_once(' ').unwrap();
                    told.made.entry(name.to_owned()).or_default().insert(digest.to_owned());
                }
                "made" => *told.exports.entry(words[0].to_owned()).or_default() += 1,
                _ => {}
            }
        }
        told
    }
}

/// What a run had to show.
#[derive(Clone, Debug, Default)]
struct Seen {
    unsaved: usize,
    saved: usize,
    exports: BTreeMap<String, usize>,
    /// Temporary files and folders that lay about before the next start.
    leftovers: usize,
    /// How long before the end the oldest lost edit was made, ms.
    lost: u128,
}

/// One session that is killed.
fn kill_one((run, seed, after): (u64, u64, u64)) -> Seen {
    let folder = tempfile::tempdir().unwrap();
    let here = folder.path();
    let first = file::read(&skirt("1", "0 cm", "")).unwrap().draft;
    fs::write(here.join("skirt.ron"), file::write(&first)).unwrap();
    let mut child = Command::new(std::env::current_exe().unwrap())
        .args(["--exact", "killed::child", "--ignored", "--nocapture"])
        .env("TRACEWHEEL_TEST_FOLDER", here)
        .env("TRACEWHEEL_TEST_SEED", seed.to_string())
        .stdout(Stdio::null())
        .stderr(File::create(here.join("said")).unwrap())
        .spawn()
        .unwrap();
    std::thread::sleep(Duration::from_millis(after));
    let killed = now();
    assert!(child.try_wait().unwrap().is_none(), "run {run}: {}", fs::read_to_string(here.join("said")).unwrap());
    child.kill().unwrap();
    child.wait().unwrap();
    fs::remove_file(here.join("said")).unwrap();
    let told = Told::read(&fs::read_to_string(here.join("log")).unwrap_or_default());
    let mut seen = Seen { exports: told.exports.clone(), ..Seen::default() };

    // The saved draft opens, and is the one before or after the save that was going on, whole.
    let opened = file::open(&here.join("skirt.ron")).unwrap_or_else(|e| panic!("run {run}: {e}"));
    let in_file = sha256(opened.text.as_bytes());
    let start = (0, hash(&first));
    let may_be = [told.saved.as_ref().unwrap_or(&start), told.saving.as_ref().unwrap_or(&start)];
    // The last state of which nothing is lost: that of the file, or what is found again.
    let mut held = may_be.iter().filter(|(_, digest)| *digest == in_file).map(|(step, _)| *step).max();
    assert!(held.is_some(), "run {run}: the file holds {in_file}, not one of {may_be:?}");
    assert!(may_be[0].1 == in_file || told.saving.is_some(), "run {run}: an older draft is in the file");
    seen.saved = usize::from(held > Some(0));

    seen.leftovers = look_at_outputs(run, here, &told);

    // What is found again is newer than the file, and at most two seconds of edits behind.
    let recovery = RecoveryFolder::open(here.join("recovery")).unwrap();
    let left = recovery.left_behind();
    assert!(left.len() <= 1, "run {run}: {left:?}");
    let mut open = OpenDraft::of_file(&here.join("skirt.ron"), opened, None);
    if let Some(left) = left.first() {
        let taken = left.take_up().unwrap_or_else(|e| panic!("run {run}: {e}"));
        let step = taken.about.step;
        let logged = told.steps.iter().find(|(n, ..)| *n == step);
        let logged = logged.unwrap_or_else(|| panic!("run {run}: step {step} is not in the log"));
        assert_eq!(logged.2, hash(&taken.draft), "run {run}, step {step}");
        assert!(Some(step) > held, "run {run}: step {step} is offered, and {held:?} is in the file");
        held = Some(step);
        seen.unsaved = 1;
        open = OpenDraft::recovered(taken.draft.clone(), &taken.about, None);
        open.keep_in(&recovery).unwrap();
        taken.kept_by(open.keeper().unwrap());
    }
    let lost = told.steps.iter().find(|(n, ..)| Some(*n) > held);
    seen.lost = lost.map_or(0, |(_, moment, _)| killed.saturating_sub(*moment));
    assert!(seen.lost <= MOST_LOST, "run {run}: edits of the last {} ms are lost", seen.lost);

    go_on(run, here, open);
    seen
}

/// Every file under a final name is one that was meant, whole; what lies beside is hidden and known by its name. How many of these there are.
fn look_at_outputs(run: u64, here: &Path, told: &Told) -> usize {
    let mut leftovers = 0;
    let entries = |folder: &Path| -> Vec<(String, PathBuf)> {
        let Ok(all) = fs::read_dir(folder) else { return Vec::new() };
        all.map(|e| e.unwrap()).map(|e| (e.file_name().into_string().unwrap(), e.path())).collect()
    };
    let mut is_leftover = |name: &str| {
        let is_one = name.starts_with('.') && (name.ends_with(".part") || name.ends_with(".saving"));
        assert!(is_one || !name.starts_with('.'), "run {run}: {name}");
        leftovers += usize::from(is_one);
        is_one
    };
    for (name, _) in entries(here) {
        let known = ["skirt.ron", "log", "recovery", "single", "published", "releases"];
        assert!(is_leftover(&name) || known.contains(&name.as_str()), "run {run}: {name}");
    }
    for folder in ["single", "published"] {
        for (name, path) in entries(&here.join(folder)) {
            if !is_leftover(&name) {
                let digest = sha256(&fs::read(&path).unwrap());
                let meant = told.made.get(&format!("{folder}/{name}"));
                assert!(meant.is_some_and(|m| m.contains(&digest)), "run {run}: {folder}/{name} is not as it was made");
            }
        }
    }
    for (name, path) in entries(&here.join("releases")) {
        if !is_leftover(&name) {
            let looked = look_at_release(&path).unwrap_or_else(|e| panic!("run {run}: {e}"));
            assert!(looked.faults.is_empty() && looked.strangers.is_empty(), "run {run}: {name}: {:?}", looked.faults);
        }
    }
    leftovers
}

/// The next start: what was found again is saved, exported and released, and nothing that lies about is in the way.
fn go_on(run: u64, here: &Path, mut open: OpenDraft) {
    let mended = Address::new(Part::point("skirt_front", "a"), "at");
    open.run(&Change::Text(TextCommand::Set(mended, "(0 cm, 0 cm)".into()))).unwrap();
    let edition = Address::new(Part::Draft, "edition");
    open.run(&Change::Text(TextCommand::Set(edition, "the next".into()))).unwrap();
    open.save(None, false).unwrap_or_else(|e| panic!("run {run}: {e}"));
    let draft = Draft::clone(open.work().draft());
    let path = here.join("skirt.ron");
    assert_eq!(file::open(&path).unwrap().draft, draft);
    let text = file::write(&draft);
    let out = here.join("releases");
    let order = ReleaseOrder { draft: &draft, text: &text, path: &path, out: &out, date: "", last: Last::Beside };
    let released = release(&order).unwrap_or_else(|e| panic!("run {run}: {e}"));
    assert_eq!(look_at_release(&released.folder).unwrap().faults, [""; 0]);
    for folder in ["single", "published"] {
        fs::create_dir_all(here.join(folder)).unwrap();
        save_all(&here.join(folder), &[("skirt.svg".to_owned(), b"whole".to_vec())]).unwrap();
        assert_eq!(fs::read(here.join(folder).join("skirt.svg")).unwrap(), b"whole");
    }
    drop(open);
    let recovery = RecoveryFolder::open(here.join("recovery")).unwrap();
    assert_eq!(recovery.left_behind().len(), 0, "run {run}: what was saved is offered again");
}

/// Kills so many sessions, a few at once, and tells what they had to show.
fn kill(many: u64) {
    let mut dice = Dice(SEED);
    let runs: Vec<(u64, u64, u64)> = (0..many).map(|run| (run, dice.roll(), 300 + dice.below(2_500))).collect();
    let mut sum = Seen::default();
    for some in runs.chunks(5) {
        std::thread::scope(|scope| {
            let all: Vec<_> = some.iter().map(|run| scope.spawn(|| kill_one(*run))).collect();
            for seen in all.into_iter().map(|t| t.join().unwrap()) {
                sum.unsaved += seen.unsaved;
                sum.saved += seen.saved;
                sum.leftovers += seen.leftovers;
                sum.lost = sum.lost.max(seen.lost);
                for (kind, many) in seen.exports {
                    *sum.exports.entry(kind).or_default() += many;
                }
            }
        });
    }
    println!("{many} kills, seed {SEED}: {sum:?}");
    let many = many as usize;
    assert!(sum.unsaved >= many / 10, "hardly any run had anything to lose: {sum:?}");
    assert!(sum.saved >= many / 4, "hardly any run had saved: {sum:?}");
    // A busy machine does not get to every kind of export in a few runs.
    assert!(!sum.exports.is_empty(), "no run exported anything: {sum:?}");
    for kind in ["single", "published", "releases"] {
        assert!(many < 200 || sum.exports.contains_key(kind), "no run exported to {kind}: {sum:?}");
    }
}

#[test]
fn nothing_is_lost_or_damaged_by_being_killed_at_any_moment() {
    kill(20);
}

/// As many as the release asks for: `.ci/run` starts it.
#[test]
#[ignore = "takes a minute or two"]
fn two_hundred_kills() {
    kill(200);
}
