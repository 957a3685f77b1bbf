//! Why a file was not opened or saved: what, where, what to do.

use std::io::{self, ErrorKind};
use std::path::{Path, PathBuf};

use super::read_error::ReadError;

/// Why a file was not opened or saved. Shown, it is one line in lower case.
#[derive(Debug, thiserror::Error)]
pub enum FileError {
    /// There is no file.
    #[error("there is no file `{}`; look for its name and folder", path.display())]
    Missing {
        /// Where it was looked for.
        path: PathBuf,
    },
    /// There is no folder in which to save.
    #[error("there is no folder `{}`; make it, or save elsewhere", folder.display())]
    NoFolder {
        /// What was to be saved.
        path: PathBuf,
        /// The folder.
        folder: PathBuf,
    },
    /// It is a folder.
    #[error("`{}` is a folder; give the name of a file in it", path.display())]
    IsFolder {
        /// The folder.
        path: PathBuf,
    },
    /// It is a device, a pipe or the like.
    #[error("`{}` is not a plain file; choose another one", path.display())]
    NotAFile {
        /// What it is.
        path: PathBuf,
    },
    /// Links that lead to one another.
    #[error("the links from `{}` lead nowhere; choose the file itself", path.display())]
    LinksInCircle {
        /// The first of them.
        path: PathBuf,
    },
    /// The system does not let this person read or write there.
    #[error("no permission for `{}`; change the permissions, or choose another place", path.display())]
    Denied {
        /// The file, or the folder to save in.
        path: PathBuf,
    },
    /// The file itself is protected against writing.
    #[error("`{}` is protected against writing; take the protection off, or save under another name", path.display())]
    Protected {
        /// The file.
        path: PathBuf,
    },
    /// The disk, or this person's share of it, is full.
    #[error("the disk is full, `{}` was not saved and is as it was; free some room, or save elsewhere", path.display())]
    Full {
        /// The file.
        path: PathBuf,
    },
    /// The file was changed by another program since it was opened or saved.
    #[error(
        "`{}` was {} by another program since it was opened; save under another name, or save over it",
        path.display(),
        if *gone { "removed" } else { "changed" }
    )]
    ChangedOutside {
        /// The file.
        path: PathBuf,
        /// Whether it is no longer there at all.
        gone: bool,
    },
    /// Longer than any draft.
    #[error("`{}` is longer than {most} bytes, the most that is read; it is hardly a draft", path.display())]
    TooLong {
        /// The file.
        path: PathBuf,
        /// The limit.
        most: u64,
    },
    /// Its bytes are no text.
    #[error("`{}` is not a draft: byte {at} is not text in UTF-8; choose another file", path.display())]
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
    #[error("`{}` was not saved and is as it was: the draft could not be opened again ({error})", path.display())]
    Unreadable {
        /// The file.
        path: PathBuf,
        /// Why.
        error: Box<ReadError>,
    },
    /// What was read back is not what was written.
    #[error("`{}` was not saved and is as it was: reading back gave another text; save elsewhere", path.display())]
    NotAsWritten {
        /// The file.
        path: PathBuf,
    },
    /// It is saved, but the system did not confirm that a power cut would spare it.
    #[error("`{}` is saved, but the system did not confirm it ({error}); save once more", path.display())]
    NotConfirmed {
        /// The file.
        path: PathBuf,
        /// What the system said.
        error: io::Error,
    },
    /// Anything else that the system says.
    #[error("`{}` could not be {doing}: {error}; try again, or choose another place", path.display())]
    Other {
        /// The file.
        path: PathBuf,
        /// `read` or `saved`.
        doing: &'static str,
        /// What the system said.
        error: io::Error,
    },
}

impl FileError {
    pub(super) fn reading(path: &Path, error: io::Error) -> Self {
        match error.kind() {
            ErrorKind::NotFound | ErrorKind::NotADirectory => Self::Missing { path: path.into() },
            ErrorKind::PermissionDenied => Self::Denied { path: path.into() },
            _ => Self::Other { path: path.into(), doing: "read", error },
        }
    }

    pub(super) fn writing(path: &Path, error: io::Error) -> Self {
        match error.kind() {
            ErrorKind::StorageFull | ErrorKind::QuotaExceeded => Self::Full { path: path.into() },
            ErrorKind::PermissionDenied | ErrorKind::ReadOnlyFilesystem => Self::Denied { path: path.into() },
            _ => Self::Other { path: path.into(), doing: "saved", error },
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
