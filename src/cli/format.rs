//! `format`: the file in its standard form.

use std::path::Path;

use super::{Comments, Done, Stopped, mind_comments, open, save};
use crate::file;
use crate::texts::say;

pub(super) fn run(path: &Path, comments: Option<Comments>) -> Result<Done, Stopped> {
    let mut opened = open(path)?;
    mind_comments(&mut opened, path, comments)?;
    if file::write(&opened.draft) == opened.text {
        let messages = format!("{}\n", say!("cli-format-is", file = path.display().to_string()));
        return Ok(Done { messages, ..Done::default() });
    }
    let draft = opened.draft.clone();
    save(path, &draft, &opened)?;
    let messages = format!("{}\n", say!("cli-format-done", file = path.display().to_string()));
    Ok(Done { messages, ..Done::default() })
}
