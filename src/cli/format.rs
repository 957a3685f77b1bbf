//! `format`: the file in its standard form.

use std::path::Path;

use super::{Comments, Done, Stopped, mind_comments, open, save};
use crate::file;

pub(super) fn run(path: &Path, comments: Option<Comments>) -> Result<Done, Stopped> {
    let mut opened = open(path)?;
    mind_comments(&mut opened, path, comments)?;
    if file::write(&opened.draft) == opened.text {
        let messages = format!("{} is in its standard form already\n", path.display());
        return Ok(Done { messages, ..Done::default() });
    }
    let draft = opened.draft.clone();
    save(path, &draft, &opened)?;
    Ok(Done { messages: format!("{} was rewritten in its standard form\n", path.display()), ..Done::default() })
}
