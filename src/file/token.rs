//! The signs of which a draft's text is made: brackets, commas, words, numbers, texts and the comments between them.
//!
//! A part of RON's signs: what a draft never holds (byte strings, single letters, maps, attributes) is left out, so
//! that it is refused before the RON reader sees it. Where this reads a sign, the RON reader reads the same one.

/// What a sign is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Kind {
    /// `(` or `[`.
    Open(char),
    /// `)` or `]`.
    Close(char),
    /// `,`.
    Comma,
    /// `:`.
    Colon,
    /// A plain word.
    Word,
    /// Anything that begins like a number.
    Number,
    /// A text in quotes, with the count of its letters.
    Text(usize),
    /// Nothing more.
    End,
}

/// A sign and where it stands, in bytes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Token {
    pub kind: Kind,
    pub start: usize,
    pub end: usize,
}

/// What cannot be a sign, and where.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Fault {
    pub kind: FaultKind,
    pub at: usize,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum FaultKind {
    /// A letter that begins nothing.
    Letter(char),
    /// A text without its closing quote.
    OpenText,
    /// A comment without its `*/`.
    OpenComment,
    /// A backslash before a letter that means nothing after one.
    Escape(char),
}

/// Reads one sign after the other.
#[derive(Clone)]
pub(super) struct Tokens<'a> {
    text: &'a str,
    at: usize,
    /// Comments passed so far.
    pub comments: usize,
}

impl<'a> Tokens<'a> {
    pub(super) fn new(text: &'a str) -> Self {
        Self { text, at: 0, comments: 0 }
    }

    /// The next sign; the comments before it are counted.
    pub(super) fn next(&mut self) -> Result<Token, Fault> {
        while self.comment()?.is_some() {
            self.comments += 1;
        }
        let start = self.at;
        let Some(letter) = self.peek() else { return Ok(Token { kind: Kind::End, start, end: start }) };
        let kind = match letter {
            '(' | '[' => self.one(Kind::Open(letter)),
            ')' | ']' => self.one(Kind::Close(letter)),
            ',' => self.one(Kind::Comma),
            ':' => self.one(Kind::Colon),
            '"' => self.quoted()?,
            'r' if self.hashes_of_raw().is_some() => self.raw()?,
            '0'..='9' | '+' | '-' | '.' => self.run(Kind::Number),
            _ if letter == '_' || letter.is_alphabetic() => self.run(Kind::Word),
            _ => return Err(Fault { kind: FaultKind::Letter(letter), at: start }),
        };
        Ok(Token { kind, start, end: self.at })
    }

    /// Passes white space; if a comment follows, passes it and gives its range.
    pub(super) fn comment(&mut self) -> Result<Option<(usize, usize)>, Fault> {
        let rest = self.rest();
        self.at += rest.len() - rest.trim_start_matches(is_space).len();
        let start = self.at;
        if self.rest().starts_with("//") {
            self.at += self.rest().find('\n').unwrap_or(self.rest().len());
            return Ok(Some((start, self.at)));
        }
        if !self.rest().starts_with("/*") {
            return Ok(None);
        }
        let (bytes, mut depth) = (self.text.as_bytes(), 0usize);
        while self.at < bytes.len() {
            match bytes.get(self.at..self.at + 2) {
                Some(b"/*") => (depth, self.at) = (depth + 1, self.at + 2),
                Some(b"*/") => (depth, self.at) = (depth - 1, self.at + 2),
                _ => self.at += 1,
            }
            if depth == 0 {
                return Ok(Some((start, self.at)));
            }
        }
        Err(Fault { kind: FaultKind::OpenComment, at: start })
    }

    fn rest(&self) -> &'a str {
        self.text.get(self.at..).unwrap_or("")
    }

    fn peek(&self) -> Option<char> {
        self.rest().chars().next()
    }

    fn one(&mut self, kind: Kind) -> Kind {
        self.at += 1;
        kind
    }

    /// A word or number goes on over letters that end neither, so that `5cm` and `smooth-at` are reported whole.
    fn run(&mut self, kind: Kind) -> Kind {
        let rest = self.rest();
        let goes_on = |c: char| c.is_alphanumeric() || matches!(c, '_' | '.' | '+' | '-' | '°' | '%');
        self.at += rest.find(|c| !goes_on(c)).unwrap_or(rest.len());
        kind
    }

    fn quoted(&mut self) -> Result<Kind, Fault> {
        let start = self.at;
        let mut letters = 0;
        let mut rest = self.rest().char_indices().skip(1).peekable();
        while let Some((i, letter)) = rest.next() {
            match letter {
                '"' => {
                    self.at = start + i + 1;
                    return Ok(Kind::Text(letters));
                }
                '\\' => match rest.next() {
                    Some((_, '\'' | '"' | '\\' | 'n' | 'r' | 't' | '0' | 'x' | 'u' | '\n' | '\r')) => {
                        // `\u{1F9F5}` is one letter.
                        if self.text[start + i..].starts_with("\\u{") {
                            while rest.next_if(|(_, c)| *c == '{' || c.is_ascii_hexdigit()).is_some() {}
                            rest.next_if(|(_, c)| *c == '}');
                        }
                    }
                    Some((_, other)) => return Err(Fault { kind: FaultKind::Escape(other), at: start + i }),
                    None => break,
                },
                _ => {}
            }
            letters += 1;
        }
        Err(Fault { kind: FaultKind::OpenText, at: start })
    }

    /// How many `#` stand between `r` and `"`, if this begins a raw text.
    fn hashes_of_raw(&self) -> Option<usize> {
        let rest = self.rest().strip_prefix('r')?;
        let after = rest.trim_start_matches('#');
        after.starts_with('"').then_some(rest.len() - after.len())
    }

    fn raw(&mut self) -> Result<Kind, Fault> {
        let hashes = self.hashes_of_raw().unwrap_or(0);
        let from = self.at + hashes + 2;
        let close = format!("\"{}", "#".repeat(hashes));
        let inside = self.text.get(from..).unwrap_or("");
        match inside.find(&close) {
            Some(len) => {
                self.at = from + len + close.len();
                Ok(Kind::Text(inside[..len].chars().count()))
            }
            None => Err(Fault { kind: FaultKind::OpenText, at: self.at }),
        }
    }
}

/// White space as RON has it.
fn is_space(letter: char) -> bool {
    matches!(letter, ' ' | '\t' | '\n' | '\r' | '\u{b}' | '\u{c}' | '\u{85}')
        || matches!(letter, '\u{200e}' | '\u{200f}' | '\u{2028}' | '\u{2029}')
}

/// The comments of a text, each without its signs; empty ones are left out. What follows a fault is not read.
pub fn comments(text: &str) -> Vec<String> {
    let mut tokens = Tokens::new(text);
    let mut found = Vec::new();
    loop {
        match tokens.comment() {
            Ok(Some((start, end))) => {
                let inside = text[start..end].trim_end_matches('\r');
                let inside = match inside.strip_prefix("//") {
                    Some(line) => line,
                    None => &inside[2..inside.len() - 2],
                };
                if !inside.trim().is_empty() {
                    found.push(inside.trim().to_owned());
                }
            }
            Ok(None) => match tokens.next() {
                Ok(Token { kind: Kind::End, .. }) | Err(_) => return found,
                Ok(_) => {}
            },
            Err(_) => return found,
        }
    }
}
