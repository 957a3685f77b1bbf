//! Small files of the person's own beside the drafts: read if they can be, set aside if not, written in one step.

use std::fs::{self, File};
use std::io::{self, ErrorKind, Read, Write};
use std::path::{Path, PathBuf};

use serde::Serialize;
use serde::de::DeserializeOwned;

use super::limits::OWN;
use crate::texts::say;

/// What became of reading a file of the person's own.
#[derive(Debug)]
pub enum OwnFile<T> {
    /// There is none yet.
    Missing,
    /// It was read.
    Read(T),
    /// It cannot be read; why.
    Damaged(String),
}

/// Reads a file of the person's own.
pub fn read_own<T: DeserializeOwned>(path: &Path) -> OwnFile<T> {
    let mut bytes = Vec::new();
    let most = OWN.most as u64;
    match File::open(path).and_then(|f| f.take(most + 1).read_to_end(&mut bytes)) {
        Err(error) if error.kind() == ErrorKind::NotFound => return OwnFile::Missing,
        Err(error) => return OwnFile::Damaged(error.to_string()),
        Ok(_) if bytes.len() as u64 > most => return OwnFile::Damaged(say!("own-too-long", most = most.to_string())),
        Ok(_) => {}
    }
    let Ok(text) = String::from_utf8(bytes) else { return OwnFile::Damaged(say!("own-no-text")) };
    match from_ron(&text) {
        Ok(own) => OwnFile::Read(own),
        Err(problem) => OwnFile::Damaged(problem),
    }
}

/// What a RON text that is no draft holds.
///
/// # Errors
/// Why it cannot be read, with the line.
pub fn from_ron<T: DeserializeOwned>(text: &str) -> Result<T, String> {
    ron::from_str(text).map_err(|error| {
        let (line, problem) = (error.span.start.line.to_string(), error.code.to_string());
        say!("own-line", line, problem)
    })
}

/// The same as text, ended by a new line.
///
/// # Errors
/// A type that RON has not.
pub fn to_ron<T: Serialize>(value: &T) -> io::Result<String> {
    let form = ron::ser::PrettyConfig::new().new_line("\n").struct_names(false);
    Ok(ron::ser::to_string_pretty(value, form).map_err(io::Error::other)? + "\n")
}

/// Gives a file another name beside it that is free, and says which.
///
/// # Errors
/// When it cannot be renamed.
pub fn set_aside(path: &Path) -> io::Result<PathBuf> {
    const MOST: usize = 1_000;
    for i in 1..=MOST {
        let aside = path.with_extension(format!("set-aside-{i}.ron"));
        if !aside.exists() {
            fs::rename(path, &aside)?;
            return Ok(aside);
        }
    }
    Err(io::Error::other(say!("own-too-many-aside")))
}

/// Writes a file of the person's own in one step: a half-written one is never seen under its name.
///
/// # Errors
/// When it cannot be written; what was there before is still there.
pub fn write_own<T: Serialize>(path: &Path, own: &T) -> io::Result<()> {
    let text = to_ron(own)?;
    if let Some(folder) = path.parent() {
        fs::create_dir_all(folder)?;
    }
    let temporary = path.with_extension(format!("writing-{}", std::process::id()));
    let written = File::create(&temporary)
        .and_then(|mut file| file.write_all(text.as_bytes()).and_then(|()| file.sync_all()))
        .and_then(|()| fs::rename(&temporary, path));
    if written.is_err() {
        // The error itself is told; a file that is left over does no harm.
        let _ = fs::remove_file(&temporary);
    }
    written
}
