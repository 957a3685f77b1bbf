//! A release that stands: whether it is as it was written, and copies of it.

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};

use super::ReleaseStop;
use super::manifest::{MANIFEST, Manifest};
use crate::file::sha256;
use crate::output::save_folder;
use crate::texts::say;

/// How many folders inside one another are looked through.
const DEEP: usize = 8;

/// A release as it lies on the disk.
#[derive(Debug)]
pub struct Looked {
    /// What it is made of.
    pub manifest: Manifest,
    /// Its files as they are, that of what it is made of among them.
    pub(super) files: Vec<(String, Vec<u8>)>,
    /// What is not as it was written, in sentences.
    pub faults: Vec<String>,
    /// Files that do not belong to it.
    pub strangers: Vec<String>,
}

/// Looks at every file of a release.
///
/// # Errors
/// When the folder is none of a release. A damaged file is no error but a fault that is told.
pub fn look(folder: &Path) -> Result<Looked, ReleaseStop> {
    let (manifest, text) = Manifest::read(folder)?;
    let mut files = Vec::new();
    let mut faults = Vec::new();
    for file in &manifest.files {
        match std::fs::read(folder.join(&file.name)) {
            Err(e) if e.kind() == std::io::ErrorKind::NotFound => faults.push(say!("look-missing", file = file.name)),
            Err(e) => faults.push(say!("look-unread", file = file.name, error = e.to_string())),
            Ok(bytes) if bytes.len() != file.bytes => {
                faults.push(say!("look-bytes", file = file.name, bytes = bytes.len(), told = file.bytes));
            }
            Ok(bytes) if sha256(&bytes) != file.sha256 => {
                faults.push(say!("look-digest", file = file.name));
            }
            Ok(bytes) => files.push((file.name.clone(), bytes)),
        }
    }
    files.push((MANIFEST.to_owned(), text.into_bytes()));
    let known: BTreeSet<&str> = manifest.files.iter().map(|f| f.name.as_str()).chain([MANIFEST]).collect();
    let mut strangers = Vec::new();
    walk(folder, "", DEEP, &mut |name| {
        if !known.contains(name) {
            strangers.push(name.to_owned());
        }
    });
    strangers.sort();
    Ok(Looked { manifest, files, faults, strangers })
}

/// Tells the names of all files in a folder.
fn walk(folder: &Path, before: &str, deep: usize, told: &mut dyn FnMut(&str)) {
    let Ok(entries) = std::fs::read_dir(folder) else { return };
    for entry in entries.flatten() {
        let name = format!("{before}{}", entry.file_name().to_string_lossy());
        let is_folder = entry.file_type().is_ok_and(|t| t.is_dir());
        if is_folder && deep > 0 {
            walk(&entry.path(), &format!("{name}/"), deep - 1, told);
        } else {
            told(&name);
        }
    }
}

/// Copies a release into another folder, byte for byte; tells where, and which files do not belong to it and were left out.
///
/// # Errors
/// When anything of it is damaged: then nothing is copied.
pub fn release_again(folder: &Path, out: &Path) -> Result<(PathBuf, Vec<String>), ReleaseStop> {
    let looked = look(folder)?;
    if !looked.faults.is_empty() {
        return Err(ReleaseStop::Damaged { folder: folder.to_owned(), faults: looked.faults });
    }
    let name = super::folder_name(&looked.manifest.title, &looked.manifest.edition);
    let copied = save_folder(out, &name, &looked.files)?;
    Ok((copied, looked.strangers))
}
