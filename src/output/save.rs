//! Writing files all or nothing.
//!
//! Every file is first written in full beside its place, and put there only when all of them are safely on the disk:
//! whatever goes wrong before that leaves the folder as it was. The files of a draft are `file`'s.

use std::fs::{self, File, OpenOptions};
use std::io::{self, ErrorKind, Write};
use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicUsize, Ordering};
use std::sync::{Mutex, PoisonError};

use thiserror::Error;

use crate::base::system::sync_folder;
use crate::texts::{carried, say};

/// How many names are tried for a temporary file before it is given up.
const TRIES: usize = 100;
/// So many files are written at once: most of the time is waiting until one is safely on the disk.
const AT_ONCE: usize = 4;

/// Why files were not written.
#[derive(Debug, Error)]
pub enum SaveError {
    /// No such folder.
    #[error("{}", say!("output-folder-missing", folder = folder.display().to_string()))]
    FolderMissing {
        /// The folder.
        folder: PathBuf,
    },
    /// Something else is there.
    #[error("{}", say!("output-no-folder", folder = folder.display().to_string()))]
    NotAFolder {
        /// What was named.
        folder: PathBuf,
    },
    /// It cannot be made.
    #[error("{}", say!("output-folder-not-made", folder = folder.display().to_string(), why = reason(source)))]
    FolderNotMade {
        /// What was named.
        folder: PathBuf,
        /// What the system said.
        source: io::Error,
    },
    /// A name that is none, leads elsewhere, or stands twice.
    #[error("{}", say!("output-name-bad", name = format!("{name:?}"), problem))]
    NameBad {
        /// The name.
        name: String,
        /// What is wrong, in words.
        problem: String,
    },
    /// A folder stands where the file should be.
    #[error("{}", say!("output-in-the-way", file = path.display().to_string()))]
    InTheWay {
        /// Where.
        path: PathBuf,
    },
    /// The system refused while temporary files were written.
    #[error("{}", say!("output-unchanged", file = path.display().to_string(), why = reason(source)))]
    Write {
        /// Which file.
        path: PathBuf,
        /// What the system said.
        source: io::Error,
    },
    /// The system refused while the finished files were put into place.
    #[error("{}", not_replaced(path, source, replaced))]
    Replace {
        /// Which file.
        path: PathBuf,
        /// What the system said.
        source: io::Error,
        /// The files that are already in place.
        replaced: Vec<PathBuf>,
    },
}

pub(super) fn reason(error: &io::Error) -> String {
    match error.kind() {
        ErrorKind::StorageFull | ErrorKind::QuotaExceeded => {
            say!("output-disk-full")
        }
        ErrorKind::PermissionDenied => say!("output-no-rights"),
        ErrorKind::ReadOnlyFilesystem => say!("output-read-only"),
        _ => error.to_string(),
    }
}

fn not_replaced(path: &Path, source: &io::Error, replaced: &[PathBuf]) -> String {
    let (file, why) = (path.display().to_string(), reason(source));
    match replaced {
        [] => say!("output-none-replaced", file, why),
        some => {
            let names: Vec<_> = some.iter().map(|p| p.display().to_string()).collect();
            say!("output-some-replaced", file, why, files = names.join(", "))
        }
    }
}

/// Writes these files (name and content) into a folder that exists; returns their paths in the same order.
///
/// Old files of the same names are replaced, each in one step, links are followed. On an error before that last step
/// nothing has changed; a failure within it says which files are already new.
pub fn save_all(dir: &Path, files: &[(String, Vec<u8>)]) -> Result<Vec<PathBuf>, SaveError> {
    match fs::metadata(dir) {
        Ok(there) if there.is_dir() => {}
        Ok(_) => return Err(SaveError::NotAFolder { folder: dir.to_owned() }),
        Err(e) if matches!(e.kind(), ErrorKind::NotFound) => {
            return Err(SaveError::FolderMissing { folder: dir.to_owned() });
        }
        Err(e) if matches!(e.kind(), ErrorKind::NotADirectory) => {
            return Err(SaveError::NotAFolder { folder: dir.to_owned() });
        }
        Err(source) => return Err(SaveError::Write { path: dir.to_owned(), source }),
    }
    for (i, (name, _)) in files.iter().enumerate() {
        check_name(name, &files[..i])?;
        let path = dir.join(name);
        if path.is_dir() {
            return Err(SaveError::InTheWay { path });
        }
    }
    let waiting = several_at_once(files, |(name, content)| Waiting::written(dir.join(name), content))?;
    let mut done = Vec::with_capacity(files.len());
    for file in waiting {
        if let Err(source) = fs::rename(&file.temporary, &file.target) {
            return Err(SaveError::Replace { path: file.path.clone(), source, replaced: done });
        }
        done.push(file.path.clone());
    }
    // The files are complete either way.
    let _ = sync_folder(dir);
    Ok(done)
}

/// Makes a folder to write into, with those above it.
///
/// # Errors
/// Where it cannot be made, and why.
pub fn make_folder(folder: &Path) -> Result<(), SaveError> {
    fs::create_dir_all(folder).map_err(|source| match source.kind() {
        ErrorKind::NotADirectory | ErrorKind::AlreadyExists => SaveError::NotAFolder { folder: folder.to_owned() },
        _ => SaveError::FolderNotMade { folder: folder.to_owned(), source },
    })
}

/// Does something with each of these, a few at once; what came of it in their order, or the error of the first that failed.
pub(super) fn several_at_once<T: Sync, R: Send, E: Send>(
    all: &[T],
    work: impl Fn(&T) -> Result<R, E> + Sync,
) -> Result<Vec<R>, E> {
    let next = AtomicUsize::new(0);
    let made = Mutex::new(Vec::with_capacity(all.len()));
    let own = || {
        loop {
            let i = next.fetch_add(1, Ordering::Relaxed);
            let Some(one) = all.get(i) else { break };
            let result = work(one);
            if result.is_err() {
                // The rest would be thrown away.
                next.store(all.len(), Ordering::Relaxed);
            }
            made.lock().unwrap_or_else(PoisonError::into_inner).push((i, result));
        }
    };
    std::thread::scope(|scope| {
        for _ in 1..AT_ONCE.min(all.len()) {
            scope.spawn(carried(own));
        }
        own();
    });
    let mut made = made.into_inner().unwrap_or_else(PoisonError::into_inner);
    made.sort_unstable_by_key(|(i, _)| *i);
    made.into_iter().map(|(_, result)| result).collect()
}

fn check_name(name: &str, before: &[(String, Vec<u8>)]) -> Result<(), SaveError> {
    let problem = if name.is_empty() || name == "." || name == ".." {
        say!("output-names-nothing")
    } else if name.contains(['/', '\\', '\0']) {
        say!("output-name-separates")
    } else if before.iter().any(|(n, _)| n == name) {
        say!("output-name-twice")
    } else {
        return Ok(());
    };
    Err(SaveError::NameBad { name: name.to_owned(), problem })
}

/// A finished file beside its place. Dropped before it was put there, it is removed.
struct Waiting {
    path: PathBuf,
    /// `path` with links followed.
    target: PathBuf,
    temporary: PathBuf,
}

impl Waiting {
    fn written(path: PathBuf, content: &[u8]) -> Result<Self, SaveError> {
        let target = fs::canonicalize(&path).unwrap_or_else(|_| path.clone());
        let result = free_name(&target).and_then(|(file, temporary)| {
            let waiting = Self { path: path.clone(), target, temporary };
            waiting.fill(file, content)?;
            Ok(waiting)
        });
        result.map_err(|source| SaveError::Write { path, source })
    }

    fn fill(&self, mut file: File, content: &[u8]) -> io::Result<()> {
        if let Ok(old) = fs::metadata(&self.target) {
            file.set_permissions(old.permissions())?;
        }
        file.write_all(content)?;
        file.sync_all()
    }
}

impl Drop for Waiting {
    fn drop(&mut self) {
        // After the rename it is gone; if it cannot be removed there is nothing better to do.
        let _ = fs::remove_file(&self.temporary);
    }
}

/// A new empty file in the folder of `target`.
fn free_name(target: &Path) -> io::Result<(File, PathBuf)> {
    let name = target.file_name().unwrap_or_default().to_string_lossy().into_owned();
    let mut last = io::Error::from(ErrorKind::AlreadyExists);
    for i in 0..TRIES {
        let path = target.with_file_name(format!(".{name}.{i}.part"));
        match OpenOptions::new().write(true).create_new(true).open(&path) {
            Ok(file) => return Ok((file, path)),
            Err(e) if e.kind() == ErrorKind::AlreadyExists => last = e,
            Err(e) => return Err(e),
        }
    }
    Err(last)
}
