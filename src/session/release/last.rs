//! The release before: where it lies, and its draft.

use std::path::{Path, PathBuf};

use super::ReleaseStop;
use super::again::look;
use super::manifest::{DRAFT, MANIFEST, Manifest};
use crate::document::Draft;
use crate::file::{self, sha256};
use crate::texts::say;

/// Where the release before is to be looked for.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Last {
    /// In the folder that is written to: see [`last_beside`].
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
        Last::At(folder) => folder.clone(),
        Last::Beside => {
            let mut unread = Vec::new();
            let found = last_beside(out, draft, &mut unread);
            match (found, draft.log.releases.last()) {
                (Some((folder, _)), _) => {
                    notes.append(&mut unread);
                    folder
                }
                (None, None) => {
                    notes.append(&mut unread);
                    return Ok(None);
                }
                // What changed belongs to the edition and cannot be put into its folder later.
                (None, Some(logged)) => {
                    let (edition, date, folder) = (&logged.edition, &logged.date, out.display().to_string());
                    let mut problem = say!("last-not-there", edition, date, folder);
                    for passed in unread {
                        problem.push_str(&format!(" ({passed})"));
                    }
                    return Err(ReleaseStop::Changes { problem });
                }
            }
        }
    };
    let looked = look(&folder)?;
    if !looked.faults.is_empty() {
        return Err(ReleaseStop::Damaged { folder, faults: looked.faults });
    }
    let problem = |problem: String| ReleaseStop::Manifest { path: folder.join(DRAFT), problem };
    let bytes = looked.files.into_iter().find(|(name, _)| name == DRAFT);
    let bytes = bytes.ok_or_else(|| problem(say!("last-no-draft")))?.1;
    let text = String::from_utf8(bytes).map_err(|_| problem(say!("manifest-utf8")))?;
    let draft = file::read(&text).map_err(|e| problem(e.to_string()))?.draft;
    Ok(Some(Before { folder, manifest: looked.manifest, draft }))
}

/// The release before that lies in a folder: the one that the draft's log tells last, by the digest of its list, whatever the folder or the
/// pattern was called then (an entry without one: by title and edition). Where the log tells none, the youngest of the same title, by its date, then by the number or name of its
/// edition. Folders that cannot be read are told in `notes`.
pub fn last_beside(out: &Path, draft: &Draft, notes: &mut Vec<String>) -> Option<(PathBuf, Manifest)> {
    let mut found: Vec<(PathBuf, Manifest)> = Vec::new();
    let is_it = |m: &Manifest, text: &str| match draft.log.releases.last() {
        Some(logged) if logged.digest.is_empty() => m.title == draft.title && m.edition == logged.edition,
        Some(logged) => logged.digest == sha256(text.as_bytes()),
        None => m.title == draft.title,
    };
    for entry in std::fs::read_dir(out).ok()?.flatten() {
        let folder = entry.path();
        let is_part = entry.file_name().to_string_lossy().starts_with('.');
        if is_part || !folder.join(MANIFEST).is_file() {
            continue;
        }
        match Manifest::read(&folder) {
            Ok((m, text)) => found.extend(is_it(&m, &text).then_some((folder, m))),
            Err(error) => notes.push(say!("last-passed-over", error = error.to_string())),
        }
    }
    notes.sort();
    let age = |(folder, m): &(PathBuf, Manifest)| {
        // Editions that are numbers go by number.
        (m.date.clone(), m.edition.trim().parse().unwrap_or(0_u64), m.edition.clone(), folder.clone())
    };
    found.into_iter().max_by_key(age)
}
