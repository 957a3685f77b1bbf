//! Why a file was not opened or saved: what, where, what to do.

use std::io::{self, ErrorKind};
use std::path::{Path, PathBuf};

use super::read_error::ReadError;
use crate::texts::say;

/// Why a file was not opened or saved. Shown, it is one line in lower case.
#[derive(Debug, thiserror::Error)]
pub enum FileError {
    /// There is no file.
    #[error("{}", say!("file-error-missing", path = shown(path)))]
    Missing {
        /// Where it was looked for.
        path: PathBuf,
    },
    /// There is no folder in which to save.
    #[error("{}", say!("file-error-no-folder", folder = shown(folder)))]
    NoFolder {
        /// What was to be saved.
        path: PathBuf,
        /// The folder.
        folder: PathBuf,
    },
    /// It is a folder.
    #[error("{}", say!("file-error-is-folder", path = shown(path)))]
    IsFolder {
        /// The folder.
        path: PathBuf,
    },
    /// It is a device, a pipe or the like.
    #[error("{}", say!("file-error-not-plain", path = shown(path)))]
    NotAFile {
        /// What it is.
        path: PathBuf,
    },
    /// Links that lead to one another.
    #[error("{}", say!("file-error-links", path = shown(path)))]
    LinksInCircle {
        /// The first of them.
        path: PathBuf,
    },
    /// The system does not let this person read or write there.
    #[error("{}", say!("file-error-denied", path = shown(path)))]
    Denied {
        /// The file, or the folder to save in.
        path: PathBuf,
    },
    /// The file itself is protected against writing.
    #[error("{}", say!("file-error-protected", path = shown(path)))]
    Protected {
        /// The file.
        path: PathBuf,
    },
    /// The disk, or this person's share of it, is full.
    #[error("{}", say!("file-error-full", path = shown(path)))]
    Full {
        /// The file.
        path: PathBuf,
    },
    /// The file was changed by another program since it was opened or saved.
    #[error("{}", match gone {
        true => say!("file-error-removed-outside", path = shown(path)),
        false => say!("file-error-changed-outside", path = shown(path)),
    })]
    ChangedOutside {
        /// The file.
        path: PathBuf,
        /// Whether it is no longer there at all.
        gone: bool,
    },
    /// Longer than any draft.
    #[error("{}", say!("file-error-too-long", path = shown(path), most = most.to_string()))]
    TooLong {
        /// The file.
        path: PathBuf,
        /// The limit.
        most: u64,
    },
    /// Its bytes are no text.
    #[error("{}", say!("file-error-no-text", path = shown(path), at = at.to_string()))]
    NoText {
        /// The file.
        path: PathBuf,
        /// The first byte that is none, from 0.
        at: usize,
    },
    /// Its text is no draft that this program reads.
    #[error("`{}`: {error}", path.display())]
    Refused {
        /// The file.
        path: PathBuf,
        /// Why.
        error: Box<ReadError>,
        /// Its text, to be shown.
        text: String,
    },
    /// The draft could not be opened again once saved.
    #[error("{}", say!("file-error-unreadable", path = shown(path), error = error.to_string()))]
    Unreadable {
        /// The file.
        path: PathBuf,
        /// Why.
        error: Box<ReadError>,
    },
    /// What was read back is not what was written.
    #[error("{}", say!("file-error-not-as-written", path = shown(path)))]
    NotAsWritten {
        /// The file.
        path: PathBuf,
    },
    /// It is saved, but the system did not confirm that a power cut would spare it.
    #[error("{}", say!("file-error-not-confirmed", path = shown(path), error = error.to_string()))]
    NotConfirmed {
        /// The file.
        path: PathBuf,
        /// What the system said.
        error: io::Error,
    },
    /// Anything else that the system says.
    #[error("{}", match saving {
        true => say!("file-error-not-saved", path = shown(path), error = error.to_string()),
        false => say!("file-error-not-read", path = shown(path), error = error.to_string()),
    })]
    Other {
        /// The file.
        path: PathBuf,
        /// Whether it was to be saved; else read.
        saving: bool,
        /// What the system said.
        error: io::Error,
    },
}

fn shown(path: &Path) -> String {
    path.display().to_string()
}

impl FileError {
    pub(super) fn reading(path: &Path, error: io::Error) -> Self {
        match error.kind() {
            ErrorKind::NotFound | ErrorKind::NotADirectory => Self::Missing { path: path.into() },
            ErrorKind::PermissionDenied => Self::Denied { path: path.into() },
            _ => Self::Other { path: path.into(), saving: false, error },
        }
    }

    pub(super) fn writing(path: &Path, error: io::Error) -> Self {
        match error.kind() {
            ErrorKind::StorageFull | ErrorKind::QuotaExceeded => Self::Full { path: path.into() },
            ErrorKind::PermissionDenied | ErrorKind::ReadOnlyFilesystem => Self::Denied { path: path.into() },
            _ => Self::Other { path: path.into(), saving: true, error },
        }
    }

    /// When no file can be made in the folder of what is to be saved.
    pub(super) fn in_folder(path: &Path, folder: &Path, error: io::Error) -> Self {
        match error.kind() {
            ErrorKind::NotFound | ErrorKind::NotADirectory => {
                Self::NoFolder { path: path.into(), folder: folder.into() }
            }
            ErrorKind::PermissionDenied | ErrorKind::ReadOnlyFilesystem => Self::Denied { path: folder.into() },
            _ => Self::writing(path, error),
        }
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    /// What a full disk says, from the device that is always full.
    #[cfg(target_os = "linux")]
    #[test]
    fn tells_a_full_disk() {
        use std::io::Write;
        let error = std::fs::OpenOptions::new().write(true).open("/dev/full").unwrap().write_all(b"x").unwrap_err();
        let told = FileError::writing(Path::new("cuff.draft"), error).to_string();
        assert_eq!(
            told,
            "the disk is full, `cuff.draft` was not saved and is as it was; free some room, or save elsewhere"
        );
    }

    #[test]
    fn tells_a_folder_that_may_not_be_written() {
        for kind in [ErrorKind::PermissionDenied, ErrorKind::ReadOnlyFilesystem] {
            let told = FileError::in_folder(Path::new("a/cuff.draft"), Path::new("a"), kind.into()).to_string();
            assert_eq!(told, "no permission for `a`; change the permissions, or choose another place");
        }
    }
}
