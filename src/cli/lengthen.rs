//! `lengthen`: a piece at one of its lines.

use std::path::Path;

use super::{Comments, Done, Stopped, mind_comments, open, save};
use crate::language::tidy;
use crate::session;

/// Lengthens a piece at a line by so much in all, and writes the draft.
pub(super) fn run(path: &Path, [piece, line, by]: [&str; 3], comments: Option<Comments>) -> Result<Done, Stopped> {
    let mut opened = open(path)?;
    let told = session::lengthen(&mut opened.draft, piece, line, &tidy(by)).map_err(|e| Stopped::no(e.to_string()))?;
    mind_comments(&mut opened, path, comments)?;
    let draft = opened.draft.clone();
    save(path, &draft, &opened)?;
    Ok(Done { messages: told + "\n", ..Done::default() })
}
