//! Why a text was not read as a draft: what stands where, what should stand there, what to do.

use crate::texts::say;
use std::fmt;

/// What kind of refusal it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Refusal {
    /// It is something else than a draft.
    NotADraft,
    /// A newer program wrote it.
    Newer,
    /// The signs do not make a whole: a bracket, a comma, a quote.
    Syntax,
    /// Something else stands where a text, a number, a word, a list or a group belongs.
    Shape,
    /// A field, or a word, that does not exist there.
    Unknown,
    /// More or longer than this program reads.
    OverLimit,
}

/// Why a text was not read. Shown, it is one line in lower case.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub struct ReadError {
    /// What kind of refusal it is.
    pub refusal: Refusal,
    /// The line, from 1.
    pub line: usize,
    /// The letter in that line, from 1.
    pub column: usize,
    /// The place in the draft (`pieces[2].edges[0].by`); empty: the draft as a whole.
    pub path: String,
    /// What stands there.
    pub found: String,
    /// What should stand there.
    pub expected: String,
    /// What to do; may be empty.
    pub hint: String,
}

impl fmt::Display for ReadError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Self { refusal, path, found, expected, hint, .. } = self;
        let (line, column) = (self.line.to_string(), self.column.to_string());
        let is_most = *refusal == Refusal::OverLimit;
        let told = match refusal {
            Refusal::NotADraft => say!("refused-no-draft", found, expected),
            Refusal::Newer => say!("refused-newer", found, expected),
            _ if path.is_empty() && is_most => say!("refused-most", line, column, found, expected),
            _ if path.is_empty() => say!("refused", line, column, found, expected),
            _ if is_most => say!("refused-most-at", line, column, path, found, expected),
            _ => say!("refused-at", line, column, path, found, expected),
        };
        f.write_str(&told)?;
        if hint.is_empty() { Ok(()) } else { write!(f, "; {hint}") }
    }
}

/// Line and column, both from 1, of a byte of the text.
pub(super) fn line_and_column(text: &str, at: usize) -> (usize, usize) {
    let before = text.get(..at).unwrap_or(text);
    let start = before.rfind('\n').map_or(0, |i| i + 1);
    (1 + before.matches('\n').count(), 1 + before[start..].chars().count())
}
