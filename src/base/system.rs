//! All that differs by operating system: where a person's own things lie, whose a file is, what makes a name outlast a power cut.
//!
//! Tried on Linux. Of Windows and macOS the places of folders are from memory and nothing was checked there. The environment is handed in
//! by whoever may read it.

use std::ffi::OsString;
use std::fs::{File, Metadata};
use std::io::{self, ErrorKind};
use std::path::{Path, PathBuf};

use super::Language;

/// The folder of this program among those of others.
const FOLDER: &str = "tracewheel";

/// A kind of things that belong to a person.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum OwnThings {
    /// Preferences: worth a copy.
    Preferences,
    /// Work that is not saved yet: of this machine only.
    Work,
    /// What other programs look for: entries of menus, icons, kinds of files. It has no folder of this program alone.
    Shared,
}

/// Where things of a person lie; `from` reads the environment. `None` where the system does not tell.
pub fn own_folder(things: OwnThings, from: &dyn Fn(&str) -> Option<OsString>) -> Option<PathBuf> {
    let from = |name: &str| from(name).filter(|v| !v.is_empty()).map(PathBuf::from);
    let base = if cfg!(windows) {
        from(if things == OwnThings::Preferences { "APPDATA" } else { "LOCALAPPDATA" })?
    } else if cfg!(target_os = "macos") {
        from("HOME")?.join("Library/Application Support")
    } else {
        // The XDG Base Directory Specification: paths that are not absolute count for nothing.
        let (name, usual) = match things {
            OwnThings::Preferences => ("XDG_CONFIG_HOME", ".config"),
            OwnThings::Work => ("XDG_STATE_HOME", ".local/state"),
            OwnThings::Shared => ("XDG_DATA_HOME", ".local/share"),
        };
        from(name).filter(|p| p.is_absolute()).or_else(|| Some(from("HOME")?.join(usual)))?
    };
    Some(if things == OwnThings::Shared { base } else { base.join(FOLDER) })
}

/// The language that the system speaks, of those that are here; English where it speaks another one or does not tell.
///
/// As POSIX has it: the first of `LC_ALL`, `LC_MESSAGES` and `LANG` that says something. Windows and macOS are not asked.
pub fn language(from: &dyn Fn(&str) -> Option<OsString>) -> Language {
    let told = ["LC_ALL", "LC_MESSAGES", "LANG"].iter().find_map(|name| from(name).filter(|v| !v.is_empty()));
    let told = told.and_then(|v| v.into_string().ok()).unwrap_or_default();
    let word = told.split(['_', '.', '@', '-']).next().unwrap_or_default();
    Language::ALL.into_iter().find(|l| l.word().eq_ignore_ascii_case(word)).unwrap_or_default()
}

/// The person's own folder, for which `~` stands where it is typed.
pub fn home(from: &dyn Fn(&str) -> Option<OsString>) -> Option<PathBuf> {
    from("HOME").map(PathBuf::from)
}

/// Whether menus and kinds of files are told to the system as free desktops have them (desktop entries, shared MIME information).
pub const HAS_DESKTOP_ENTRIES: bool = cfg!(all(unix, not(target_os = "macos")));

/// Gives a file to whom the old one belongs. Only the administrator may give it to somebody else; for all others it stays the saver's.
#[cfg(unix)]
pub fn keep_owner(file: &File, old: &Metadata) {
    use std::os::unix::fs::{MetadataExt, fchown};
    let _ = fchown(file, Some(old.uid()), Some(old.gid()));
}

/// Owners are not kept here.
#[cfg(not(unix))]
pub fn keep_owner(_: &File, _: &Metadata) {}

/// Makes the new names in a folder outlast a power cut, where the system can.
///
/// # Errors
/// What the system says, where it should be able to.
#[cfg(unix)]
pub fn sync_folder(folder: &Path) -> io::Result<()> {
    match File::open(folder).and_then(|f| f.sync_all()) {
        // Some file systems cannot, and have nothing to make sure of; a folder may be written but not read.
        Err(error)
            if matches!(
                error.kind(),
                ErrorKind::InvalidInput | ErrorKind::Unsupported | ErrorKind::PermissionDenied
            ) =>
        {
            Ok(())
        }
        result => result,
    }
}

/// Nothing to be done here.
///
/// # Errors
/// None.
#[cfg(not(unix))]
pub fn sync_folder(_: &Path) -> io::Result<()> {
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_language_of_the_system_is_the_first_that_is_told() {
        let of = |told: &[(&str, &str)]| {
            language(&|name| told.iter().find(|(n, _)| *n == name).map(|(_, value)| OsString::from(value)))
        };
        let (en, de) = (Language::English, Language::German);
        assert_eq!(of(&[]), en);
        for word in ["de", "de_AT.UTF-8", "de_DE@euro", "DE-CH"] {
            assert_eq!(of(&[("LANG", word)]), de, "{word}");
        }
        for word in ["C", "C.UTF-8", "POSIX", "fr_FR.UTF-8", "dense", ""] {
            assert_eq!(of(&[("LANG", word)]), en, "{word}");
        }
        assert_eq!(of(&[("LANG", "en_GB.UTF-8"), ("LC_MESSAGES", "de_DE.UTF-8")]), de);
        assert_eq!(of(&[("LANG", "de_DE.UTF-8"), ("LC_ALL", "C")]), en);
        assert_eq!(of(&[("LANG", "de_DE.UTF-8"), ("LC_ALL", "")]), de);
    }
}
