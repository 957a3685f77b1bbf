//! Noticing that another program changed a file.

use std::fs::{self, File};
use std::io::{self, Read};
use std::path::{Path, PathBuf};
use std::sync::{Arc, Condvar, Mutex, MutexGuard, PoisonError};
use std::thread;
use std::time::Duration;

use crate::file::{Fingerprint, limits};

/// How often the file is looked at.
const EVERY: Duration = Duration::from_secs(2);

/// What is on the disk.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Seen {
    /// It was not looked at yet.
    Nothing,
    /// It holds this.
    Content(Fingerprint),
    /// It is gone.
    Gone,
}

struct Desk {
    seen: Seen,
    /// How often we wrote the file ourselves.
    written: u64,
    closed: bool,
}

struct Shared {
    desk: Mutex<Desk>,
    changed: Condvar,
}

impl Shared {
    fn desk(&self) -> MutexGuard<'_, Desk> {
        self.desk.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

/// Looks at one file from time to time.
pub struct Watch {
    shared: Arc<Shared>,
}

impl Watch {
    /// Begins to watch; `wake` is called after each change of what the file holds.
    ///
    /// # Errors
    /// When the system gives no thread.
    pub fn start(path: PathBuf, wake: Box<dyn Fn() + Send>) -> io::Result<Self> {
        let desk = Mutex::new(Desk { seen: Seen::Nothing, written: 0, closed: false });
        let shared = Arc::new(Shared { desk, changed: Condvar::new() });
        let own = Arc::clone(&shared);
        thread::Builder::new().name("watch".to_owned()).spawn(move || {
            let mut desk = own.desk();
            while !desk.closed {
                // Nobody waits for a slow disk: the desk is free while the file is read.
                let written = desk.written;
                drop(desk);
                let now = look(&path);
                desk = own.desk();
                // What was read before we wrote ourselves says nothing any more.
                if let Some(now) = now.filter(|_| desk.written == written) {
                    let is_other = desk.seen != now && desk.seen != Seen::Nothing;
                    desk.seen = now;
                    if is_other {
                        drop(desk);
                        wake();
                        desk = own.desk();
                    }
                }
                if !desk.closed {
                    desk = own.changed.wait_timeout(desk, EVERY).unwrap_or_else(PoisonError::into_inner).0;
                }
            }
        })?;
        Ok(Self { shared })
    }

    /// What was seen last.
    pub fn seen(&self) -> Seen {
        self.shared.desk().seen
    }

    /// We wrote this ourselves.
    pub fn expect(&self, fingerprint: Fingerprint) {
        let mut desk = self.shared.desk();
        desk.seen = Seen::Content(fingerprint);
        desk.written += 1;
    }

    /// Looks now, not only when the time has come.
    pub fn look_now(&self) {
        self.shared.changed.notify_all();
    }
}

impl Drop for Watch {
    fn drop(&mut self) {
        self.shared.desk().closed = true;
        self.shared.changed.notify_all();
    }
}

/// What the file holds; none where that cannot be told now. It is read each time: length and time of a change may be those of before, where a
/// clock was set back or two changes fell into one tick of it.
fn look(path: &Path) -> Option<Seen> {
    match fs::metadata(path) {
        // Whatever else stands there is never read: it could keep this waiting for ever.
        Ok(about) if about.is_file() => {
            let mut bytes = Vec::new();
            // One byte more than a draft may have tells it from all drafts.
            File::open(path).ok()?.take(limits::FILE.most as u64 + 1).read_to_end(&mut bytes).ok()?;
            Some(Seen::Content(Fingerprint::of(&bytes)))
        }
        Err(error) if matches!(error.kind(), io::ErrorKind::NotFound | io::ErrorKind::NotADirectory) => {
            Some(Seen::Gone)
        }
        _ => None,
    }
}
