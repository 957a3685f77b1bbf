//! Unsaved work that outlives a crash.
//!
//! The work of each open draft lies in one file in a folder of the person's, written a moment after each step, under a lock
//! that the system frees when the process dies. What lies there without a lock was left behind and is offered at the next
//! start; it is opened before anything is computed.
#![allow(clippy::disallowed_methods, reason = "work is kept a moment after a step, in the person's own folder")]

use std::fs::{self, File, TryLockError};
use std::io::{self, Write};
use std::path::{Path, PathBuf};
use std::sync::{Arc, Condvar, Mutex, MutexGuard, PoisonError};
use std::thread::{self, JoinHandle};
use std::time::{Duration, Instant, SystemTime};

use serde::{Deserialize, Serialize};

use crate::base::system::{OwnThings, own_folder};
use crate::document::Draft;
use crate::file::{Fingerprint, read, write};
use crate::texts::{carried, say};

/// A state is written this long after the last one came in …
const QUIET: Duration = Duration::from_millis(150);
/// … and at the latest this long after the first that was not written.
const LATEST: Duration = Duration::from_millis(400);
/// The most names that are tried for a new work.
const MOST_NAMES: u32 = 1_000;
/// Works longer than this are not read.
const MOST_BYTES: u64 = 64 * 1024 * 1024;
/// Endings of the file of a work and of its lock.
const WORK: &str = "kept";
const LOCK: &str = "lock";

/// What is known of kept work beside the draft itself.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct KeptAbout {
    /// The file it came from.
    pub origin: Option<PathBuf>,
    /// What was in that file when it was opened or saved last.
    pub fingerprint: Option<Fingerprint>,
    /// Which step of the work it is.
    pub step: u64,
}

/// Why nothing can be kept.
#[derive(Debug, thiserror::Error)]
pub enum KeepError {
    /// The folder cannot be used.
    #[error("{}", say!("work-unkept", folder = folder.display().to_string(), error = error.to_string()))]
    Folder {
        /// The folder.
        folder: PathBuf,
        /// Why.
        error: io::Error,
    },
    /// Kept work cannot be read.
    #[error("{}", say!("work-unread", path = path.display().to_string(), problem))]
    Unreadable {
        /// The file.
        path: PathBuf,
        /// Why.
        problem: String,
    },
    /// Another window has it.
    #[error("{}", say!("work-taken", path = path.display().to_string()))]
    Taken {
        /// The file.
        path: PathBuf,
    },
}

/// A folder that holds unsaved work.
#[derive(Clone, Debug)]
pub struct RecoveryFolder {
    path: PathBuf,
}

impl RecoveryFolder {
    /// Opens a folder; it is made if it is not there.
    ///
    /// # Errors
    /// When it cannot be made.
    pub fn open(path: PathBuf) -> Result<Self, KeepError> {
        match fs::create_dir_all(&path) {
            Ok(()) => Ok(Self { path }),
            Err(error) => Err(KeepError::Folder { folder: path, error }),
        }
    }

    /// Where the system wants such things of this person to lie.
    pub fn of_system() -> Option<PathBuf> {
        Some(own_folder(OwnThings::Work, &|name| std::env::var_os(name))?.join("recovery"))
    }

    /// Work that nobody has open, the oldest first as far as clocks tell. What its file holds already is not offered again: it was saved, and
    /// only the end of that was missed.
    pub fn left_behind(&self) -> Vec<LeftBehind> {
        let Ok(entries) = fs::read_dir(&self.path) else { return Vec::new() };
        let mut out: Vec<LeftBehind> = entries
            .filter_map(|entry| {
                let path = entry.ok()?.path();
                (path.extension()? == WORK).then_some(())?;
                let lock = lock(&path.with_extension(LOCK)).ok()??;
                let written = fs::metadata(&path).and_then(|m| m.modified()).ok();
                let (about, title) = match parts(&path) {
                    Ok((about, text)) if is_saved(&about, &text) => {
                        // Should it not go, it is found out again next time.
                        let _ = fs::remove_file(&path);
                        return None;
                    }
                    Ok((about, text)) => (about, read(&text).map(|o| o.draft.title).map_err(|e| e.to_string())),
                    Err(problem) => (KeptAbout::default(), Err(problem)),
                };
                drop(lock);
                Some(LeftBehind { path, written, about, title })
            })
            .collect();
        out.sort_by(|a, b| (a.written, &a.path).cmp(&(b.written, &b.path)));
        out
    }
}

/// Takes a lock, if nobody has it. The lock file itself stays: removing it would let two processes lock two files of one name.
fn lock(path: &Path) -> io::Result<Option<File>> {
    let file = File::options().create(true).truncate(false).write(true).open(path)?;
    match file.try_lock() {
        Ok(()) => Ok(Some(file)),
        Err(TryLockError::WouldBlock) => Ok(None),
        Err(TryLockError::Error(error)) => Err(error),
    }
}

/// Whether a kept work is, to the letter, what the file that it came from holds now.
fn is_saved(about: &KeptAbout, text: &str) -> bool {
    about.origin.as_ref().is_some_and(|origin| {
        fs::metadata(origin).is_ok_and(|m| m.is_file() && m.len() == text.len() as u64)
            && fs::read(origin).is_ok_and(|bytes| bytes == text.as_bytes())
    })
}

/// First line and rest of a work's file.
fn parts(path: &Path) -> Result<(KeptAbout, String), String> {
    let long = fs::metadata(path).map_err(|e| e.to_string())?.len();
    if long > MOST_BYTES {
        return Err(say!("work-bytes", bytes = long));
    }
    let text = fs::read_to_string(path).map_err(|e| e.to_string())?;
    let (about, draft) = text.split_once('\n').ok_or_else(|| say!("work-cut-off"))?;
    let about = serde_json::from_str(about).map_err(|e| say!("work-first-line", error = e.to_string()))?;
    Ok((about, draft.to_owned()))
}

/// Work that was left behind.
#[derive(Clone, Debug)]
pub struct LeftBehind {
    /// Its file.
    pub path: PathBuf,
    /// When it was written.
    pub written: Option<SystemTime>,
    /// What is known of it.
    pub about: KeptAbout,
    /// The draft's title, or why it cannot be read.
    pub title: Result<String, String>,
}

/// Work that was taken up again. Its file stays until the new work is kept.
pub struct TakenUp {
    /// The draft.
    pub draft: Draft,
    /// What is known of it.
    pub about: KeptAbout,
    path: PathBuf,
    _lock: File,
}

impl LeftBehind {
    /// Takes the work up. Nothing is computed.
    ///
    /// # Errors
    /// When another window has it, or it cannot be read: it is left as it is.
    pub fn take_up(&self) -> Result<TakenUp, KeepError> {
        let unreadable = |problem: String| KeepError::Unreadable { path: self.path.clone(), problem };
        let lock = lock(&self.path.with_extension(LOCK)).map_err(|e| unreadable(e.to_string()))?;
        let lock = lock.ok_or_else(|| KeepError::Taken { path: self.path.clone() })?;
        let (about, text) = parts(&self.path).map_err(unreadable)?;
        let opened = read(&text).map_err(|e| unreadable(e.to_string()))?;
        Ok(TakenUp { draft: opened.draft, about, path: self.path.clone(), _lock: lock })
    }

    /// Throws the work away.
    ///
    /// # Errors
    /// When another window has it, or the system does not let it go.
    pub fn throw_away(&self) -> Result<(), KeepError> {
        let fail = |error| KeepError::Folder { folder: self.path.clone(), error };
        let lock = lock(&self.path.with_extension(LOCK)).map_err(fail)?;
        let _lock = lock.ok_or_else(|| KeepError::Taken { path: self.path.clone() })?;
        fs::remove_file(&self.path).map_err(fail)
    }
}

impl TakenUp {
    /// The work is kept by another keeper now: its old file goes. Stays, if that has not written anything yet.
    pub fn kept_by(self, keeper: &Keeper) {
        keeper.flush();
        if keeper.trouble().is_none() && keeper.written() > 0 {
            // Should it not go, it is offered once more: better twice than never.
            let _ = fs::remove_file(&self.path);
        }
    }
}

#[derive(Default)]
struct Desk {
    wanted: Option<(Arc<Draft>, KeptAbout)>,
    first: Option<Instant>,
    last: Option<Instant>,
    /// The file is to go.
    forget: bool,
    flush: bool,
    closed: bool,
    busy: bool,
    written: u64,
    trouble: Option<String>,
}

#[derive(Default)]
struct Shared {
    desk: Mutex<Desk>,
    changed: Condvar,
}

impl Shared {
    fn desk(&self) -> MutexGuard<'_, Desk> {
        self.desk.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

/// Keeps the work of one open draft. Dropped without [`Keeper::forget`], it leaves the work behind.
pub struct Keeper {
    shared: Arc<Shared>,
    thread: Option<JoinHandle<()>>,
    path: PathBuf,
    _lock: File,
}

impl Keeper {
    /// Begins to keep a work in a folder.
    ///
    /// # Errors
    /// When no file can be made there.
    pub fn start(folder: &RecoveryFolder) -> Result<Self, KeepError> {
        let fail = |error| KeepError::Folder { folder: folder.path.clone(), error };
        for i in 0..MOST_NAMES {
            let path = folder.path.join(format!("work-{i}.{WORK}"));
            let Some(lock) = lock(&path.with_extension(LOCK)).map_err(fail)? else { continue };
            if path.exists() {
                continue; // left behind by somebody, and not ours
            }
            let shared = Arc::new(Shared::default());
            let (own, file) = (Arc::clone(&shared), path.clone());
            let thread = thread::Builder::new()
                .name("keeper".to_owned())
                .spawn(carried(move || work(&own, &file)))
                .map_err(fail)?;
            return Ok(Self { shared, thread: Some(thread), path, _lock: lock });
        }
        Err(fail(io::Error::other(say!("work-too-much"))))
    }

    /// The file in which the work is kept.
    pub fn path(&self) -> &Path {
        &self.path
    }

    /// Hands over the newest state. Returns at once; it is written a moment later.
    pub fn keep(&self, draft: Arc<Draft>, about: KeptAbout) {
        let mut desk = self.shared.desk();
        let now = Instant::now();
        desk.wanted = Some((draft, about));
        desk.first.get_or_insert(now);
        desk.last = Some(now);
        desk.forget = false;
        self.shared.changed.notify_all();
    }

    /// Nothing of it need be kept any more: it is saved, or thrown away on purpose. Waits until the file is gone.
    pub fn forget(&self) {
        let mut desk = self.shared.desk();
        desk.wanted = None;
        desk.first = None;
        desk.forget = true;
        self.shared.changed.notify_all();
        while desk.forget || desk.busy {
            desk = self.shared.changed.wait(desk).unwrap_or_else(PoisonError::into_inner);
        }
    }

    /// Writes what is not written yet, and waits for it.
    pub fn flush(&self) {
        let mut desk = self.shared.desk();
        desk.flush = true;
        self.shared.changed.notify_all();
        while desk.flush || desk.busy {
            desk = self.shared.changed.wait(desk).unwrap_or_else(PoisonError::into_inner);
        }
    }

    /// The step that was written last; 0: none.
    pub fn written(&self) -> u64 {
        self.shared.desk().written
    }

    /// Why the last state could not be written. It is tried again with the next one.
    pub fn trouble(&self) -> Option<String> {
        self.shared.desk().trouble.clone()
    }
}

impl Drop for Keeper {
    fn drop(&mut self) {
        self.shared.desk().closed = true;
        self.shared.changed.notify_all();
        if let Some(thread) = self.thread.take() {
            // A keeper that failed has told its trouble.
            let _ = thread.join();
        }
    }
}

/// The keeper's thread: sleeps until there is something to write.
fn work(shared: &Shared, path: &Path) {
    loop {
        let mut desk = shared.desk();
        let job = loop {
            if desk.forget {
                break None;
            }
            let now = Instant::now();
            let due = match (desk.first, desk.last) {
                (Some(first), Some(last)) => Some((last + QUIET).min(first + LATEST)),
                _ => None,
            };
            match (due, &desk.wanted) {
                (Some(due), Some(_)) if desk.flush || desk.closed || due <= now => break desk.wanted.take(),
                (Some(due), Some(_)) => {
                    desk = shared.changed.wait_timeout(desk, due - now).unwrap_or_else(PoisonError::into_inner).0;
                }
                _ if desk.closed => return,
                _ => {
                    if desk.flush {
                        desk.flush = false;
                        shared.changed.notify_all();
                    }
                    desk = shared.changed.wait(desk).unwrap_or_else(PoisonError::into_inner);
                }
            }
        };
        desk.busy = true;
        desk.first = None;
        drop(desk);
        let done = match &job {
            Some((draft, about)) => put(path, draft, about).map(|()| about.step),
            None => match fs::remove_file(path) {
                Err(error) if error.kind() != io::ErrorKind::NotFound => Err(error),
                _ => Ok(0),
            },
        };
        let mut desk = shared.desk();
        desk.busy = false;
        if job.is_none() {
            desk.forget = false;
        }
        match done {
            Ok(step) => {
                desk.written = step;
                desk.trouble = None;
            }
            Err(error) => {
                let folder = path.parent().unwrap_or(path).display();
                desk.trouble = Some(say!("work-trouble", folder = folder.to_string(), error = error.to_string()));
            }
        }
        if desk.wanted.is_none() {
            desk.flush = false;
        }
        shared.changed.notify_all();
    }
}

/// Writes a work in one step: a half-written one is never seen under its name.
fn put(path: &Path, draft: &Draft, about: &KeptAbout) -> io::Result<()> {
    let about = serde_json::to_string(about).map_err(io::Error::other)?;
    let text = write(draft);
    let temporary = path.with_extension("writing");
    let mut file = File::create(&temporary)?;
    let written = file
        .write_all(about.as_bytes())
        .and_then(|()| file.write_all(b"\n"))
        .and_then(|()| file.write_all(text.as_bytes()))
        .and_then(|()| file.sync_all());
    if let Err(error) = written {
        let _ = fs::remove_file(&temporary);
        return Err(error);
    }
    fs::rename(&temporary, path)
}
