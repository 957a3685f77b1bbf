//! `release`: an edition in a folder of its own, copies of it, and whether it is as it was written.

use std::path::Path;

use super::{Done, FINE, NO, ReleaseCall, ReleaseWhat, Stopped, mind_comments, named, open, save};
use crate::session::{Last, ReleaseOrder, ReleaseStop, look_at_release, release, release_again};
use crate::texts::say;

pub(super) fn run(call: &ReleaseCall) -> Result<Done, Stopped> {
    match (&call.what, &call.file, &call.out) {
        (Some(ReleaseWhat::Again { folder, out }), ..) => again(folder, out),
        (Some(ReleaseWhat::Check { folder }), ..) => check(folder),
        (None, Some(file), Some(out)) => new(call, file, out),
        _ => Err(Stopped::trouble(say!("cli-release-call"))),
    }
}

/// What the draft or a release says no to, against what cannot be read or written.
fn stopped(stop: ReleaseStop) -> Stopped {
    match stop {
        ReleaseStop::Manifest { .. } | ReleaseStop::Folder(_) | ReleaseStop::Date { .. } => {
            Stopped::trouble(stop.to_string())
        }
        _ => Stopped::no(stop.to_string()),
    }
}

fn new(call: &ReleaseCall, path: &Path, out: &Path) -> Result<Done, Stopped> {
    let mut opened = open(path)?;
    let text = opened.text.clone();
    let draft = opened.draft.clone();
    // Asked before anything is written: afterwards the log is written into the file.
    mind_comments(&mut opened, path, call.comments)?;
    let last = match &call.last {
        Some(folder) => Last::At(folder.clone()),
        None if call.first => Last::None,
        None => Last::Beside,
    };
    let date = call.date.as_deref().unwrap_or_default();
    let order = ReleaseOrder { draft: &draft, text: &text, path, out, date, last };
    let released = release(&order).map_err(stopped)?;
    let mut messages: String = released.notes.iter().map(|note| named(note)).collect();
    let files = say!("cli-release-files", count = released.manifest.files.len() + 1);
    let mut data = format!("{}\n{files}\n", released.folder.display());
    if !released.changes.is_empty() {
        data.push('\n');
        data.push_str(&released.changes);
    }
    let mut logged = released.draft;
    logged.note = std::mem::take(&mut opened.draft.note);
    if let Err(error) = save(path, &logged, &opened) {
        messages.push_str(&named(&say!("cli-release-unlogged", problem = error.message)));
        return Ok(Done { data, messages, exit: error.exit });
    }
    Ok(Done { data, messages, exit: FINE })
}

fn again(folder: &Path, out: &Path) -> Result<Done, Stopped> {
    let (copied, strangers) = release_again(folder, out).map_err(stopped)?;
    let messages = strangers.iter().map(|file| named(&say!("cli-release-left-out", file)));
    Ok(Done { data: format!("{}\n", copied.display()), messages: messages.collect(), exit: FINE })
}

fn check(folder: &Path) -> Result<Done, Stopped> {
    let looked = look_at_release(folder).map_err(stopped)?;
    let mut data: String = looked.faults.iter().map(|fault| format!("{fault}\n")).collect();
    data.extend(looked.strangers.iter().map(|file| format!("{}\n", say!("cli-release-stranger", file))));
    if data.is_empty() {
        let manifest = &looked.manifest;
        let of =
            format!("{}, {}", manifest.title, say!("edition-of", edition = manifest.edition, date = manifest.date));
        let checked = say!("cli-release-checked", release = of, count = manifest.files.len() + 1);
        return Ok(Done { data: format!("{checked}\n"), ..Done::default() });
    }
    Ok(Done { data, exit: NO, ..Done::default() })
}
