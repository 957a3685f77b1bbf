//! The release before: where it lies, and its draft.

use std::path::{Path, PathBuf};

use super::ReleaseStop;
use super::again::look;
use super::manifest::{DRAFT, MANIFEST, Manifest};
use crate::document::Draft;
use crate::file;

/// Where the release before is to be looked for.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Last {
    /// In the folder that is written to: the one that the draft's log tells last, else the youngest of the same title.
    Beside,
    /// In this folder.
    At(PathBuf),
    /// Nowhere: no changes are told.
    None,
}

/// A release before.
#[derive(Clone, Debug)]
pub(super) struct Before {
    /// Its folder.
    pub folder: PathBuf,
    /// What it is made of.
    pub manifest: Manifest,
    /// Its draft.
    pub draft: Draft,
}

/// Finds the release before; what was passed over is told in `notes`.
pub(super) fn before(
    last: &Last,
    out: &Path,
    draft: &Draft,
    notes: &mut Vec<String>,
) -> Result<Option<Before>, ReleaseStop> {
    let folder = match last {
        Last::None => return Ok(None),
        Last::At(folder) => Some(folder.clone()),
        Last::Beside => last_beside(out, draft, notes).map(|(folder, _)| folder),
    };
    let Some(folder) = folder else {
        if *last == Last::Beside && !draft.log.releases.is_empty() {
            notes.push(format!(
                "the log tells of an earlier release, but none lies in {}: what changed is not told; name its folder by `--last`",
                out.display()
            ));
        }
        return Ok(None);
    };
    let looked = look(&folder)?;
    if !looked.faults.is_empty() {
        return Err(ReleaseStop::Damaged { folder, faults: looked.faults });
    }
    let problem = |problem: String| ReleaseStop::Manifest { path: folder.join(DRAFT), problem };
    let bytes = looked.files.into_iter().find(|(name, _)| name == DRAFT);
    let bytes = bytes.ok_or_else(|| problem("the release has no draft".to_owned()))?.1;
    let text = String::from_utf8(bytes).map_err(|_| problem("it is not text in UTF-8".to_owned()))?;
    let draft = file::read(&text).map_err(|e| problem(e.to_string()))?.draft;
    Ok(Some(Before { folder, manifest: looked.manifest, draft }))
}

/// The release before that lies in a folder: the one that the draft's log tells last, else the youngest of the same title, by its date,
/// then by the number or name of its edition. Folders that cannot be read are told in `notes`.
pub fn last_beside(out: &Path, draft: &Draft, notes: &mut Vec<String>) -> Option<(PathBuf, Manifest)> {
    let mut found: Vec<(bool, PathBuf, Manifest)> = Vec::new();
    let logged = draft.log.releases.last().map(|r| r.edition.as_str());
    for entry in std::fs::read_dir(out).ok()?.flatten() {
        let folder = entry.path();
        let is_part = entry.file_name().to_string_lossy().starts_with('.');
        if is_part || !folder.join(MANIFEST).is_file() {
            continue;
        }
        match Manifest::read(&folder) {
            Ok((m, _)) if m.title == draft.title => {
                let is_logged = logged == Some(m.edition.as_str());
                found.push((is_logged, folder, m));
            }
            Ok(_) => {}
            Err(error) => notes.push(format!("passed over: {error}")),
        }
    }
    notes.sort();
    let age = |(is_logged, folder, m): &(bool, PathBuf, Manifest)| {
        // Editions that are numbers go by number.
        (*is_logged, m.date.clone(), m.edition.trim().parse().unwrap_or(0_u64), m.edition.clone(), folder.clone())
    };
    found.into_iter().max_by_key(age).map(|(_, folder, manifest)| (folder, manifest))
}
