//! Drafts on the disk: opening one, and saving one so that the old file survives every failure.

use std::fs::{self, File, OpenOptions, TryLockError};
use std::io::{self, ErrorKind, Read, Write};
use std::path::{Path, PathBuf};
use std::thread;
use std::time::Duration;

use super::file_error::FileError;
use super::limits;
use super::read::read;
use super::write::write;
use serde::{Deserialize, Serialize};

use crate::base::system::{keep_owner, sync_folder};
use crate::document::Draft;

/// What a file holds, in short: enough to notice that another program changed it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Fingerprint {
    length: u64,
    hash: u64,
}

impl Fingerprint {
    /// Its hash in sixteen hexadecimal digits.
    pub fn digest(&self) -> String {
        format!("{:016x}", self.hash)
    }

    /// The fingerprint of these bytes: their count and their FNV-1a hash of 64 bits.
    pub fn of(bytes: &[u8]) -> Self {
        let hash = bytes
            .iter()
            .fold(0xcbf2_9ce4_8422_2325_u64, |hash, byte| (hash ^ u64::from(*byte)).wrapping_mul(0x0100_0000_01b3));
        Self { length: bytes.len() as u64, hash }
    }
}

/// A draft that was opened from the disk.
#[derive(Clone, Debug, PartialEq)]
pub struct OpenedFile {
    /// The draft.
    pub draft: Draft,
    /// The text as it stands in the file.
    pub text: String,
    /// Whether it holds comments, which saving takes out.
    pub had_comments: bool,
    /// What is on the disk, to be given to [`save`].
    pub fingerprint: Fingerprint,
}

/// Opens a draft. The file is not touched.
///
/// # Errors
/// When there is no such file, when it cannot be read, and when it is no draft: then with its text.
pub fn open(path: &Path) -> Result<OpenedFile, FileError> {
    let fail = |error| FileError::reading(path, error);
    let about = fs::metadata(path).map_err(fail)?;
    check_plain(path, &about)?;
    let most = limits::FILE.most as u64;
    let mut bytes = Vec::new();
    File::open(path).map_err(fail)?.take(most + 1).read_to_end(&mut bytes).map_err(fail)?;
    if bytes.len() as u64 > most {
        return Err(FileError::TooLong { path: path.into(), most });
    }
    let fingerprint = Fingerprint::of(&bytes);
    let text = String::from_utf8(bytes)
        .map_err(|error| FileError::NoText { path: path.into(), at: error.utf8_error().valid_up_to() })?;
    match read(&text) {
        Ok(opened) => Ok(OpenedFile { draft: opened.draft, had_comments: opened.had_comments, text, fingerprint }),
        Err(error) => Err(FileError::Refused { path: path.into(), error: Box::new(error), text }),
    }
}

/// Saves a draft in its standard form and tells what is then on the disk.
///
/// The new text goes to a temporary file in the same folder, is read back and compared, and takes the place of the old
/// file in one step; links are followed, permissions kept. `seen` is what was on the disk when it was last opened or
/// saved; `None` writes whatever is there.
///
/// # Errors
/// See [`FileError`]. But for [`FileError::NotConfirmed`] the old file is as it was, and the temporary file is gone.
pub fn save(path: &Path, draft: &Draft, seen: Option<&Fingerprint>) -> Result<Fingerprint, FileError> {
    let text = write(draft);
    check_readable(path, draft, &text)?;
    let target = follow(path)?;
    let fail = |error| FileError::writing(path, error);
    let old = match fs::metadata(&target) {
        Ok(about) => Some(about),
        Err(error) if matches!(error.kind(), ErrorKind::NotFound | ErrorKind::NotADirectory) => None,
        Err(error) => return Err(fail(error)),
    };
    if let Some(about) = &old {
        check_plain(path, about)?;
        if about.permissions().readonly() {
            return Err(FileError::Protected { path: path.into() });
        }
    }
    let folder = match target.parent() {
        Some(folder) if !folder.as_os_str().is_empty() => folder.to_owned(),
        _ => PathBuf::from("."),
    };
    let mut temporary = Temporary::create(&folder).map_err(|error| FileError::in_folder(path, &folder, error))?;
    temporary.fill(text.as_bytes(), old.as_ref()).map_err(fail)?;
    if fs::read(&temporary.path).map_err(fail)? != text.as_bytes() {
        return Err(FileError::NotAsWritten { path: path.into() });
    }
    let turn = take_turn(&folder);
    if let Some(seen) = seen {
        check_unchanged(path, &target, seen)?;
    }
    fs::rename(&temporary.path, &target).map_err(fail)?;
    temporary.gone = true;
    drop(turn);
    sync_folder(&folder).map_err(|error| FileError::NotConfirmed { path: path.into(), error })?;
    Ok(Fingerprint::of(text.as_bytes()))
}

/// A draft that could not be opened again must not take the place of one that can.
fn check_readable(path: &Path, draft: &Draft, text: &str) -> Result<(), FileError> {
    match read(text) {
        Ok(mut opened) => {
            // The head is the program's own, see `write`.
            opened.draft.format.clone_from(&draft.format);
            opened.draft.version = draft.version;
            if opened.draft == *draft { Ok(()) } else { Err(FileError::NotAsWritten { path: path.into() }) }
        }
        Err(error) => Err(FileError::Unreadable { path: path.into(), error: Box::new(error) }),
    }
}

fn check_plain(path: &Path, about: &fs::Metadata) -> Result<(), FileError> {
    if about.is_dir() {
        return Err(FileError::IsFolder { path: path.into() });
    }
    if !about.is_file() {
        return Err(FileError::NotAFile { path: path.into() });
    }
    Ok(())
}

fn check_unchanged(path: &Path, target: &Path, seen: &Fingerprint) -> Result<(), FileError> {
    // One byte more than was seen tells the difference as well as all of them.
    let now = File::open(target).and_then(|file| {
        let mut bytes = Vec::new();
        file.take(seen.length + 1).read_to_end(&mut bytes).map(|_| bytes)
    });
    match now {
        Ok(bytes) if Fingerprint::of(&bytes) == *seen => Ok(()),
        Ok(_) => Err(FileError::ChangedOutside { path: path.into(), gone: false }),
        Err(error) if error.kind() == ErrorKind::NotFound => {
            Err(FileError::ChangedOutside { path: path.into(), gone: true })
        }
        Err(error) => Err(FileError::reading(path, error)),
    }
}

/// Waits until no other run of this program is putting a draft of this folder in its place: between looking whether a file is still the one
/// that was seen and replacing it nobody else may do the same. Where the system has no such lock, or one is held for much longer than
/// that takes, it is done without.
fn take_turn(folder: &Path) -> Option<File> {
    const TRIES: u32 = 200;
    const PAUSE: Duration = Duration::from_millis(10);
    let lock = File::open(folder).ok()?;
    for _ in 0..TRIES {
        match lock.try_lock() {
            Ok(()) => return Some(lock),
            Err(TryLockError::WouldBlock) => thread::sleep(PAUSE),
            Err(TryLockError::Error(_)) => break,
        }
    }
    None
}

/// The file that a path means in the end. Unlike `canonicalize` this also works where that file does not exist yet.
fn follow(path: &Path) -> Result<PathBuf, FileError> {
    const MOST_LINKS: usize = 40;
    let mut target = path.to_owned();
    for _ in 0..MOST_LINKS {
        match fs::read_link(&target) {
            Ok(link) => target = target.parent().unwrap_or(Path::new("")).join(link),
            Err(_) => return Ok(target),
        }
    }
    Err(FileError::LinksInCircle { path: path.into() })
}

/// A file beside the draft that is removed again unless it took the draft's place.
struct Temporary {
    path: PathBuf,
    file: File,
    gone: bool,
}

impl Temporary {
    fn create(folder: &Path) -> io::Result<Self> {
        const MOST_TRIES: usize = 100;
        let mut last = io::Error::from(ErrorKind::AlreadyExists);
        for i in 0..MOST_TRIES {
            let path = folder.join(format!(".tracewheel-{}-{i}.saving", std::process::id()));
            match OpenOptions::new().write(true).create_new(true).open(&path) {
                Ok(file) => return Ok(Self { path, file, gone: false }),
                Err(error) if error.kind() == ErrorKind::AlreadyExists => last = error,
                Err(error) => return Err(error),
            }
        }
        Err(last)
    }

    fn fill(&mut self, bytes: &[u8], old: Option<&fs::Metadata>) -> io::Result<()> {
        self.file.write_all(bytes)?;
        if let Some(old) = old {
            keep_owner(&self.file, old);
            self.file.set_permissions(old.permissions())?;
        }
        self.file.sync_all()
    }
}

impl Drop for Temporary {
    fn drop(&mut self) {
        if !self.gone {
            // There is nobody left to tell; the error that led here is told already.
            let _ = fs::remove_file(&self.path);
        }
    }
}
