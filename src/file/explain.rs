//! What the RON reader refused, in words that help a person who edited a draft by hand.
//!
//! The reader stops behind the fault more often than at it; so the place is looked up by its path.

use ron::Error;

use super::nearest::nearest;
use super::read_error::{ReadError, Refusal, line_and_column};
use super::token::{Kind, Token};
use super::walk::{Event, Walk};
use crate::texts::say;

/// Turns an error of the RON reader into one with line, column, path, found and expected.
///
/// `path` is where in the draft the reader was, `stopped` the byte of the text at which it stopped.
pub(super) fn explain(text: &str, path: &str, stopped: usize, error: &Error) -> ReadError {
    let within_group = path.ends_with(".?");
    let path = path.trim_end_matches('?').trim_end_matches('.');
    let case = Case { text, path, stopped };
    match error {
        Error::NoSuchStructField { expected, found, .. } => {
            // The reader stops right behind a name that it does not know.
            let behind = stopped.saturating_sub(found.len());
            let at = case.keys(path).first().map_or(behind, |key| key.start);
            case.unknown(at, say!("refused-unknown-field", found), found, expected)
        }
        Error::NoSuchEnumVariant { expected, found, .. } => {
            let at = case.value(path).map_or(stopped, |place| place.token.start);
            case.unknown(at, say!("refused-unknown-word", found), found, expected)
        }
        Error::DuplicateStructField { field, .. } => {
            let path = if path.is_empty() { (*field).to_owned() } else { format!("{path}.{field}") };
            let keys = case.keys(&path);
            let at = keys.get(1).map_or(stopped, |key| key.start);
            let first = keys.first().map_or(0, |key| line_and_column(text, key.start).0);
            let error = case.error(at, say!("refused-field-twice", field), say!("refused-once"));
            ReadError { path, ..error }.hint(say!("refused-stands-already", line = first.to_string()))
        }
        Error::MissingStructField { field, .. } => {
            let place = case.value(path);
            let at = place.as_ref().map_or(stopped, |place| place.token.start);
            let group = place.map_or(say!("refused-a-group"), |place| place.described);
            case.error(at, say!("refused-field-missing", group, field), format!("`{field}: …`"))
        }
        Error::ExpectedString => case.wrong(say!("refused-wants-text"), |token, slice| match token.kind {
            Kind::Word | Kind::Number => say!("refused-write-quoted", word = slice),
            _ => String::new(),
        }),
        Error::ExpectedInteger | Error::IntegerOutOfBounds | Error::InvalidIntegerDigit { .. } => {
            case.wrong(say!("refused-wants-whole"), unquoted)
        }
        Error::ExpectedBoolean => case.wrong(say!("refused-wants-truth"), unquoted),
        Error::ExpectedArray => case.wrong(say!("refused-wants-list"), |_, _| say!("refused-single-entry")),
        Error::ExpectedDifferentStructName { .. } => case.wrong(say!("refused-wants-bare-group"), |_, _| String::new()),
        Error::ExpectedStructLike | Error::ExpectedNamedStructLike(_) => {
            case.wrong(say!("refused-wants-group"), |token, slice| match token.kind {
                Kind::Word => say!("refused-write-group", word = slice),
                _ => String::new(),
            })
        }
        Error::ExpectedIdentifier if within_group => {
            let token = case.sign_at(stopped);
            case.error(token.start, case.described(token), say!("refused-wants-field"))
        }
        Error::ExpectedIdentifier | Error::SuggestRawIdentifier(_) | Error::InvalidIdentifier(_) => {
            case.wrong(say!("refused-wants-word"), unquoted)
        }
        Error::ExpectedDifferentLength { expected, found } => {
            let wanted: String = expected.chars().filter(char::is_ascii_digit).collect();
            let at = case.value(path).map_or(stopped, |place| place.token.start);
            case.error(at, say!("refused-entries", given = found.to_string()), wanted)
        }
        Error::ExpectedStructLikeEnd => {
            let token = case.sign_at(stopped);
            case.error(token.start, say!("refused-too-many", sign = case.described(token)), "`)`".into())
        }
        Error::ExpectedComma => {
            let token = case.sign_at(stopped);
            case.error(
                token.start,
                say!("refused-behind-word", sign = case.described(token)),
                say!("refused-comma-or", close = ")"),
            )
        }
        Error::InvalidEscape(_) => {
            let at = case.value(path).map_or(stopped, |place| place.token.start);
            let found = say!("refused-escape-letter");
            let error = case.error(at, found, say!("refused-wants-letter-number"));
            ReadError { refusal: Refusal::Syntax, ..error }.hint(say!("refused-backslash"))
        }
        other => {
            case.error(stopped, say!("refused-unreadable", problem = other.to_string()), say!("refused-wants-draft"))
        }
    }
}

/// An error and where the reader was.
struct Case<'a> {
    text: &'a str,
    path: &'a str,
    stopped: usize,
}

/// A word, number, text or group of the draft.
struct Place {
    token: Token,
    described: String,
    group: bool,
    /// It was found by the path that goes on with its word, as in `by[0].curve`.
    variant: bool,
}

impl Case<'_> {
    fn error(&self, at: usize, found: String, expected: String) -> ReadError {
        let (line, column) = line_and_column(self.text, at);
        let path = self.path.to_owned();
        ReadError { refusal: Refusal::Shape, line, column, path, found, expected, hint: String::new() }
    }

    fn unknown(&self, at: usize, found: String, word: &str, known: &[&str]) -> ReadError {
        let error = self.error(at, found, say!("refused-one-of", words = known.join(", ")));
        let error = ReadError { refusal: Refusal::Unknown, ..error };
        match nearest(word, known) {
            Some(near) => error.hint(say!("refused-meant", near)),
            None => error,
        }
    }

    /// Something of the wrong kind stands at the path.
    fn wrong(&self, expected: String, hint: impl Fn(Token, &str) -> String) -> ReadError {
        let place = match self.value(self.path) {
            // The one entry of `straight("b")` has no path of its own.
            Some(place) if place.variant => self.value(&format!("{}[0]", self.path)).or(Some(place)),
            place => place,
        };
        let Some(Place { token, described, group, .. }) = place else {
            let token = self.sign_at(self.stopped);
            return self.error(token.start, self.described(token), expected);
        };
        // The word before a bracket is no word by itself.
        let token = if group { Token { kind: Kind::Open('('), ..token } } else { token };
        let hint = hint(token, self.text.get(token.start..token.end).unwrap_or(""));
        self.error(token.start, described, expected).hint(hint)
    }

    /// The sign at which the reader stopped.
    fn sign_at(&self, at: usize) -> Token {
        let mut walk_to = super::token::Tokens::new(self.text);
        loop {
            match walk_to.next() {
                Ok(token) if token.end > at || token.kind == Kind::End => return token,
                Ok(_) => {}
                Err(fault) => return Token { kind: Kind::End, start: fault.at, end: fault.at },
            }
        }
    }

    fn described(&self, token: Token) -> String {
        Walk::new(self.text).describe(token)
    }

    /// The value that stands at a path.
    fn value(&self, path: &str) -> Option<Place> {
        let mut walk = Walk::new(self.text);
        loop {
            let event = walk.next().ok()?;
            let (Event::Value(token) | Event::Open(token)) = event else {
                if event == Event::End {
                    return None;
                }
                continue;
            };
            let (here, slice) = (walk.path(), walk.slice(token));
            let word = format!(".{slice}");
            let found = match event {
                _ if here == path => true,
                Event::Value(_) => token.kind == Kind::Word && path.strip_suffix(&word) == Some(&here),
                _ => here.strip_suffix(&word) == Some(path),
            };
            if found {
                let described = match (event, token.kind) {
                    (Event::Open(_), Kind::Word) => format!("`{slice}(…)`"),
                    _ => walk.describe(token),
                };
                let group = matches!(event, Event::Open(_));
                return Some(Place {
                    token,
                    described,
                    group,
                    variant: group && token.kind == Kind::Word && here == path,
                });
            }
        }
    }

    /// Where the names of the field at this path stand: more than one if it is doubled.
    fn keys(&self, path: &str) -> Vec<Token> {
        let mut walk = Walk::new(self.text);
        let mut keys = Vec::new();
        while let Ok(event) = walk.next() {
            match event {
                Event::Key(token) if walk.path() == path => keys.push(token),
                Event::End => break,
                _ => {}
            }
        }
        keys
    }
}

fn unquoted(token: Token, slice: &str) -> String {
    let word = slice.trim_matches('"');
    match token.kind {
        Kind::Text(_) if word.chars().all(|c| c == '_' || c.is_alphanumeric()) => say!("refused-write-bare", word),
        _ => String::new(),
    }
}
