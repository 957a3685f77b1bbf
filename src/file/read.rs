//! Reading a draft from its text.
//!
//! First a walk over the signs (brackets, limits, the head), then the RON reader for the shape. What is refused is
//! refused here; what a draft means is not looked at.

use serde::Deserialize;

use super::explain::explain;
use super::limits;
use super::read_error::{ReadError, Refusal};
use super::token::{Kind, Token};
use super::walk::{Event, Walk};
use crate::document::{Draft, FORMAT, VERSION};
use crate::texts::say;

/// A draft that was read.
#[derive(Clone, Debug, PartialEq)]
pub struct Opened {
    /// The draft.
    pub draft: Draft,
    /// Whether the text holds comments, which the written form cannot keep. See [`super::comments`].
    pub had_comments: bool,
}

/// Reads a draft. A byte order mark at the start is passed over.
///
/// # Errors
/// Whatever is not a draft of this version in form; see [`ReadError`]. Formulas, names and what they mean are not
/// looked at.
pub fn read(text: &str) -> Result<Opened, ReadError> {
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    if text.len() > limits::FILE.most {
        let limit = limits::FILE;
        let error = Walk::new(text).error(
            Refusal::OverLimit,
            limit.most,
            format!("{} {}", text.len(), limit.of()),
            limit.most.to_string(),
        );
        return Err(error.hint(limit.hint()));
    }
    let mut head = Head::default();
    let mut walk = Walk::new(text);
    let walked = head.walk(&mut walk);
    head.judge(&walk, text, walked)?;

    let options = ron::Options::default()
        .with_default_extension(ron::extensions::Extensions::IMPLICIT_SOME)
        .with_default_extension(ron::extensions::Extensions::UNWRAP_VARIANT_NEWTYPES);
    let mut reader =
        ron::Deserializer::from_str_with_options(text, &options).map_err(|error| explain(text, "", 0, &error.code))?;
    let mut track = serde_path_to_error::Track::new();
    let result = Draft::deserialize(serde_path_to_error::Deserializer::new(&mut reader, &mut track));
    let stopped = text.len() - reader.remainder().len();
    let draft = result.map_err(|error| explain(text, &track.path().to_string(), stopped, &error))?;
    reader.end().map_err(|error| explain(text, "", stopped, &error))?;
    Ok(Opened { draft, had_comments: walk.comments() > 0 })
}

/// What the head says.
#[derive(Default)]
struct Head {
    opened: bool,
    format: Option<Token>,
    version: Option<Token>,
}

impl Head {
    /// Walks to the end, or to the first error, keeping what the head says.
    fn walk(&mut self, walk: &mut Walk) -> Result<(), ReadError> {
        let mut key = "";
        loop {
            match walk.next()? {
                Event::Key(token) if walk.depth() == 1 => key = walk.slice(token),
                Event::Value(token) if walk.depth() == 1 => match key {
                    "format" => self.format = self.format.or(Some(token)),
                    "version" => self.version = self.version.or(Some(token)),
                    _ => {}
                },
                Event::Open(_) => self.opened = true,
                Event::End => return Ok(()),
                _ => {}
            }
        }
    }

    /// Which error comes first: another format or a newer version explains all others.
    fn judge(&self, walk: &Walk, text: &str, walked: Result<(), ReadError>) -> Result<(), ReadError> {
        let no_draft = |found: String| {
            let mut error = walk.error(Refusal::NotADraft, 0, found, format!("`(format: \"{FORMAT}\"`"));
            error.path.clear();
            error
        };
        let wanted = format!("\"{FORMAT}\"");
        match self.format {
            Some(token) if walk.slice(token) == wanted => {}
            Some(token) => return Err(no_draft(say!("refused-other-format", format = walk.describe(token)))),
            None if !self.opened => return Err(no_draft(beginning(text))),
            None => match walked {
                // A broken head of a draft is better told as what it is.
                Err(error) if text.contains(FORMAT) || error.refusal == Refusal::OverLimit => return Err(error),
                _ => return Err(no_draft(say!("refused-no-format"))),
            },
        }
        let Some(version) = self.version else {
            walked?;
            let error = walk.error(Refusal::Shape, 0, say!("refused-no-version"), format!("`version: {VERSION}`"));
            return Err(ReadError { path: "version".into(), ..error });
        };
        let number = walk.slice(version);
        let newer = match number.parse::<u32>() {
            Ok(number) => number > VERSION,
            Err(_) => version.kind == Kind::Number,
        };
        if newer {
            let error =
                walk.error(Refusal::Newer, version.start, number, say!("refused-up-to", version = VERSION.to_string()));
            return Err(ReadError { path: "version".into(), ..error }.hint(say!("refused-open-newer")));
        }
        walked
    }
}

/// How a text begins that is no draft.
fn beginning(text: &str) -> String {
    let shown: String = text.trim().chars().take(20).map(|c| if c.is_control() { '·' } else { c }).collect();
    if shown.is_empty() { say!("refused-empty") } else { say!("refused-begins", shown) }
}
