//! Noticing that another program changed a file.

use std::io;
use std::path::{Path, PathBuf};
use std::sync::{Arc, Condvar, Mutex, MutexGuard, PoisonError};
use std::thread;
use std::time::{Duration, SystemTime};

use crate::file::Fingerprint;

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
    /// Length and time of change when it was last read.
    about: Option<(u64, SystemTime)>,
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
        let desk = Mutex::new(Desk { seen: Seen::Nothing, about: None, closed: false });
        let shared = Arc::new(Shared { desk, changed: Condvar::new() });
        let own = Arc::clone(&shared);
        thread::Builder::new().name("watch".to_owned()).spawn(move || {
            let mut desk = own.desk();
            while !desk.closed {
                if look(&path, &mut desk) {
                    drop(desk);
                    wake();
                    desk = own.desk();
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
        desk.about = None;
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

/// Looks at the file; says whether it holds something else than was seen before.
fn look(path: &Path, desk: &mut Desk) -> bool {
    let now = match std::fs::metadata(path) {
        Ok(about) => {
            let about = (about.len(), about.modified().unwrap_or(SystemTime::UNIX_EPOCH));
            if desk.about == Some(about) {
                return false;
            }
            match std::fs::read(path) {
                Ok(bytes) => {
                    desk.about = Some(about);
                    Seen::Content(Fingerprint::of(&bytes))
                }
                // It can be read again later, perhaps; nothing is known until then.
                Err(_) => return false,
            }
        }
        Err(error) if error.kind() == io::ErrorKind::NotFound => {
            desk.about = None;
            Seen::Gone
        }
        Err(_) => return false,
    };
    let other = desk.seen != now && desk.seen != Seen::Nothing;
    desk.seen = now;
    other
}
