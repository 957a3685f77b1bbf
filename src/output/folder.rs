//! Writing a whole folder all or nothing.
//!
//! It is written under another name beside its place and renamed when every file of it is safely on the disk, so that under its own name
//! there is all of it or none. What a run that was ended left behind is cleared by the next one; one that is still running holds a
//! lock and is left alone.

use std::collections::BTreeSet;
use std::fs::{self, File, OpenOptions};
use std::io::{self, ErrorKind, Write};
use std::path::{Path, PathBuf};

use thiserror::Error;

use super::save::{reason, several_at_once};
use crate::base::system::sync_folder;
use crate::texts::say;

/// The file that is locked while a folder is written.
const LOCK: &str = ".writing";

/// Why a folder was not written.
#[derive(Debug, Error)]
pub enum FolderError {
    /// There is one already: it is never written over.
    #[error("{}", say!("output-folder-exists", folder = folder.display().to_string()))]
    Exists {
        /// Which.
        folder: PathBuf,
    },
    /// A name that is none, leads elsewhere, or stands twice.
    #[error("{}", say!("output-name-bad-in-folder", name = format!("{name:?}"), problem))]
    NameBad {
        /// The name.
        name: String,
        /// What is wrong, in words.
        problem: String,
    },
    /// The system refused.
    #[error("{}", say!("output-unwritten-file", file = path.display().to_string(), why = reason(source)))]
    Write {
        /// What.
        path: PathBuf,
        /// What the system said.
        source: io::Error,
    },
}

/// Writes a folder of this name in another, which is made if it is not there. Names of files have `/` between folder and file.
///
/// # Errors
/// See [`FolderError`]; then there is no folder of that name, or the one that was there.
pub fn save_folder(parent: &Path, name: &str, files: &[(String, Vec<u8>)]) -> Result<PathBuf, FolderError> {
    let fail = |path: &Path| {
        let path = path.to_owned();
        move |source| FolderError::Write { path, source }
    };
    check_part(name)?;
    let mut known = BTreeSet::new();
    for (file, _) in files {
        file.split('/').try_for_each(check_part)?;
        if !known.insert(file.to_lowercase()) {
            return Err(bad(file, say!("output-name-twice")));
        }
    }
    let target = parent.join(name);
    if fs::symlink_metadata(&target).is_ok() {
        return Err(FolderError::Exists { folder: target });
    }
    fs::create_dir_all(parent).map_err(fail(parent))?;
    let begin = format!(".{name}.");
    clear(parent, &begin);
    let temporary = Temporary { path: parent.join(format!("{begin}{}.part", std::process::id())), gone: false };
    fs::create_dir(&temporary.path).map_err(fail(&target))?;
    let lock_path = temporary.path.join(LOCK);
    let lock = File::create(&lock_path).map_err(fail(&target))?;
    // Where a system has no locks, a run beside this one could clear it: then this one fails and says so.
    let _ = lock.try_lock();
    let mut folders = BTreeSet::new();
    for (file, _) in files {
        if let Some(folder) = temporary.path.join(file).parent()
            && folders.insert(folder.to_owned())
        {
            fs::create_dir_all(folder).map_err(fail(&target.join(file)))?;
        }
    }
    several_at_once(files, |(file, bytes)| {
        let written = OpenOptions::new().write(true).create_new(true).open(temporary.path.join(file));
        let safe = written.and_then(|mut out| {
            out.write_all(bytes)?;
            out.sync_all()
        });
        safe.map_err(fail(&target.join(file)))
    })?;
    drop(lock);
    fs::remove_file(&lock_path).map_err(fail(&target))?;
    // What is written is complete either way.
    for folder in folders.iter().chain([&temporary.path]) {
        let _ = sync_folder(folder);
    }
    if fs::symlink_metadata(&target).is_ok() {
        return Err(FolderError::Exists { folder: target });
    }
    fs::rename(&temporary.path, &target).map_err(fail(&target))?;
    let mut temporary = temporary;
    temporary.gone = true;
    let _ = sync_folder(parent);
    Ok(target)
}

fn bad(name: &str, problem: String) -> FolderError {
    FolderError::NameBad { name: name.to_owned(), problem }
}

/// A part of a name must name something in the folder itself.
fn check_part(part: &str) -> Result<(), FolderError> {
    if part.is_empty() || part == "." || part == ".." {
        Err(bad(part, say!("output-name-leads-elsewhere")))
    } else if part.contains(['/', '\\', '\0', ':']) {
        Err(bad(part, say!("output-name-separates")))
    } else if part == LOCK {
        Err(bad(part, say!("output-name-kept")))
    } else {
        Ok(())
    }
}

/// Removes what ended runs left of this folder.
fn clear(parent: &Path, begin: &str) {
    let Ok(entries) = fs::read_dir(parent) else { return };
    for entry in entries.flatten() {
        let name = entry.file_name().to_string_lossy().into_owned();
        let number = name.strip_prefix(begin).and_then(|rest| rest.strip_suffix(".part"));
        let is_ours = number.is_some_and(|n| !n.is_empty() && n.bytes().all(|b| b.is_ascii_digit()));
        if !is_ours || !entry.path().is_dir() {
            continue;
        }
        let is_free = match File::open(entry.path().join(LOCK)) {
            Ok(lock) => lock.try_lock().is_ok(),
            Err(error) => error.kind() == ErrorKind::NotFound,
        };
        if is_free {
            // If it cannot be removed, it is in nobody's way.
            let _ = fs::remove_dir_all(entry.path());
        }
    }
}

/// The folder under its other name: removed again unless it took its place.
struct Temporary {
    path: PathBuf,
    gone: bool,
}

impl Drop for Temporary {
    fn drop(&mut self) {
        if !self.gone {
            // The error that led here is told already.
            let _ = fs::remove_dir_all(&self.path);
        }
    }
}
