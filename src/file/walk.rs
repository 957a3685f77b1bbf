//! A walk over a draft's text, sign by sign: finds what is wrong with brackets, commas and quotes, keeps to the limits,
//! and knows at every step where in the draft it is. Which fields there are is left to the document types.

use super::limits::{self, Limit};
use super::read_error::{ReadError, Refusal, line_and_column};
use super::token::{Fault, FaultKind, Kind, Token, Tokens};

/// A step of the walk.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Event {
    /// The name of a field.
    Key(Token),
    /// A word, number or text.
    Value(Token),
    /// A bracket opens; the token is the word before it, or the bracket itself.
    Open(Token),
    /// A bracket closes.
    Close,
    /// The draft is whole and nothing follows.
    End,
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum State {
    /// Nothing read yet.
    Start,
    /// Within brackets, before a member.
    Member,
    /// Behind the name of a field.
    Value,
    /// Behind a member.
    After,
    /// Behind the last bracket.
    Done,
}

/// Brackets that are open.
struct Frame {
    bracket: char,
    at: usize,
    /// The word before the bracket.
    word: Option<Token>,
    /// The field that is being read, if members have names here.
    key: Option<Token>,
    /// Whether they have; not known before the first.
    named: Option<bool>,
    /// Members begun.
    members: usize,
}

pub(super) struct Walk<'a> {
    text: &'a str,
    tokens: Tokens<'a>,
    ahead: Option<Token>,
    /// The last text that goes over several lines, and how many signs were read since.
    long: Option<Token>,
    since_long: usize,
    stack: Vec<Frame>,
    state: State,
    groups: usize,
}

impl<'a> Walk<'a> {
    pub(super) fn new(text: &'a str) -> Self {
        Self {
            text,
            tokens: Tokens::new(text),
            ahead: None,
            long: None,
            since_long: 0,
            stack: Vec::new(),
            state: State::Start,
            groups: 0,
        }
    }

    /// Brackets that are open.
    pub(super) fn depth(&self) -> usize {
        self.stack.len()
    }

    /// Comments passed so far.
    pub(super) fn comments(&self) -> usize {
        self.tokens.comments
    }

    /// Where the walk is, as `pieces[2].edges[0].by`.
    pub(super) fn path(&self) -> String {
        let mut path = String::new();
        for (i, frame) in self.stack.iter().enumerate() {
            if let (Some(word), true) = (frame.word, i > 0) {
                join(&mut path, self.slice(word));
            }
            match (frame.key, frame.named) {
                (Some(key), _) => join(&mut path, self.slice(key)),
                (None, Some(true)) => {}
                _ if frame.members > 0 => path.push_str(&format!("[{}]", frame.members - 1)),
                _ => {}
            }
        }
        path
    }

    /// The text of a sign.
    pub(super) fn slice(&self, token: Token) -> &'a str {
        self.text.get(token.start..token.end).unwrap_or("")
    }

    /// The next step.
    pub(super) fn next(&mut self) -> Result<Event, ReadError> {
        let token = self.take()?;
        match self.state {
            State::Start => match token.kind {
                Kind::Open('(') => self.open(token, None),
                Kind::Word if self.peek()?.kind == Kind::Open('(') => {
                    let bracket = self.take()?;
                    self.open(bracket, Some(token))
                }
                _ => Err(self.error(Refusal::Syntax, token.start, self.describe(token), "`(`")),
            },
            State::Member if matches!(token.kind, Kind::Close(_)) => self.close(token),
            State::Member => self.member(token),
            State::Value => self.value(token),
            State::After => match token.kind {
                Kind::Comma => {
                    self.state = State::Member;
                    self.leave_member();
                    self.next()
                }
                Kind::Close(_) => self.close(token),
                _ => Err(self.no_comma(token)),
            },
            State::Done if token.kind == Kind::End => Ok(Event::End),
            State::Done => Err(self
                .error(Refusal::Syntax, token.start, self.describe(token), "nothing more")
                .hint("the draft ends before it: is a bracket closed too early?")),
        }
    }

    fn member(&mut self, token: Token) -> Result<Event, ReadError> {
        let named = match self.stack.last() {
            Some(Frame { bracket: '(', named: None, .. }) => {
                token.kind == Kind::Word && self.peek()?.kind == Kind::Colon
            }
            Some(frame) => frame.named.unwrap_or(false),
            None => false,
        };
        if let Some(frame) = self.stack.last_mut() {
            frame.named = Some(named);
            frame.members += 1;
        }
        if !named {
            return self.value(token);
        }
        if token.kind != Kind::Word {
            let hint = if matches!(token.kind, Kind::Text(_)) { "it stands without quotes" } else { "" };
            return Err(self.unless_cut_off(token, "the name of a field", hint));
        }
        self.check_word(token)?;
        if self.peek()?.kind != Kind::Colon {
            let next = self.peek()?;
            let found = format!("{} after the word `{}`", self.describe(next), self.slice(token));
            return Err(self.error(Refusal::Syntax, next.start, found, "`:`"));
        }
        self.take()?;
        if let Some(frame) = self.stack.last_mut() {
            frame.key = Some(token);
        }
        self.state = State::Value;
        Ok(Event::Key(token))
    }

    fn value(&mut self, token: Token) -> Result<Event, ReadError> {
        self.count_members(token)?;
        match token.kind {
            Kind::Open(_) => return self.open(token, None),
            Kind::Word if self.peek()?.kind == Kind::Open('(') => {
                let bracket = self.take()?;
                return self.open(bracket, Some(token));
            }
            Kind::Word => self.check_word(token)?,
            Kind::Text(letters) => {
                let limit = limits::of_text(self.field());
                if letters > limit.most {
                    return Err(self.over(limit, letters, token.start));
                }
            }
            Kind::Number if self.slice(token).bytes().all(|b| b.is_ascii_digit()) => {}
            Kind::Number => {
                let found = format!("`{}`", self.slice(token));
                let hint =
                    format!("counts are whole numbers; anything else is a text in quotes: \"{}\"", self.slice(token));
                let expected = "a text or a whole number";
                return Err(self.error(Refusal::Shape, token.start, found, expected).hint(hint));
            }
            _ => return Err(self.unless_cut_off(token, "a text, a word, a whole number, `(` or `[`", "")),
        }
        self.state = State::After;
        Ok(Event::Value(token))
    }

    fn check_word(&self, token: Token) -> Result<(), ReadError> {
        let word = self.slice(token);
        let belongs = |c: char| c == '_' || c.is_alphabetic() || c.is_ascii_digit();
        if word.chars().all(belongs) {
            return Ok(());
        }
        let plain: String = word.chars().map(|c| if belongs(c) { c } else { '_' }).collect();
        let expected = "a word of letters, digits and `_`";
        let hint = format!("is `{plain}` meant, or a text in quotes?");
        Err(self.error(Refusal::Syntax, token.start, self.describe(token), expected).hint(hint))
    }

    fn open(&mut self, bracket: Token, word: Option<Token>) -> Result<Event, ReadError> {
        self.groups += 1;
        let first = word.unwrap_or(bracket);
        if self.stack.len() >= limits::DEPTH.most {
            return Err(self.over(limits::DEPTH, self.stack.len() + 1, first.start));
        }
        if self.groups > limits::GROUPS.most {
            return Err(self.over(limits::GROUPS, self.groups, first.start));
        }
        let Kind::Open(sign) = bracket.kind else {
            return Err(self.error(Refusal::Syntax, bracket.start, self.describe(bracket), "`(`"));
        };
        let named = (sign == '[').then_some(false);
        self.stack.push(Frame { bracket: sign, at: bracket.start, word, key: None, named, members: 0 });
        self.state = State::Member;
        Ok(Event::Open(first))
    }

    fn close(&mut self, token: Token) -> Result<Event, ReadError> {
        let Some(frame) = self.stack.last() else {
            return Err(self.error(Refusal::Syntax, token.start, self.describe(token), "`(`"));
        };
        if token.kind != Kind::Close(closing(frame.bracket)) {
            let (line, column) = line_and_column(self.text, frame.at);
            let expected = format!("`{}`", closing(frame.bracket));
            let hint = format!("the `{}` of line {line}, column {column} is still open", frame.bracket);
            return Err(self.error(Refusal::Syntax, token.start, self.describe(token), expected).hint(hint));
        }
        self.stack.pop();
        self.state = if self.stack.is_empty() { State::Done } else { State::After };
        Ok(Event::Close)
    }

    fn leave_member(&mut self) {
        if let Some(frame) = self.stack.last_mut() {
            frame.key = None;
        }
    }

    fn count_members(&self, token: Token) -> Result<(), ReadError> {
        let Some(Frame { bracket: '[', members, .. }) = self.stack.last() else { return Ok(()) };
        let limit = limits::of_list(self.field());
        if *members > limit.most { Err(self.over(limit, *members, token.start)) } else { Ok(()) }
    }

    /// The innermost field that is being read.
    fn field(&self) -> &'a str {
        self.stack.iter().rev().find_map(|frame| frame.key).map_or("", |key| self.slice(key))
    }

    fn take(&mut self) -> Result<Token, ReadError> {
        let token = self.peek()?;
        self.ahead = None;
        Ok(token)
    }

    fn peek(&mut self) -> Result<Token, ReadError> {
        match self.ahead {
            Some(token) => Ok(token),
            None => {
                let token = self.tokens.next().map_err(|fault| self.fault(fault))?;
                self.since_long += 1;
                if matches!(token.kind, Kind::Text(_)) && self.slice(token).contains('\n') {
                    (self.long, self.since_long) = (Some(token), 0);
                }
                self.ahead = Some(token);
                Ok(token)
            }
        }
    }
}

/// The errors of the walk.
impl Walk<'_> {
    pub(super) fn error(
        &self,
        refusal: Refusal,
        at: usize,
        found: impl Into<String>,
        expected: impl Into<String>,
    ) -> ReadError {
        let (line, column) = line_and_column(self.text, at);
        let (found, expected) = (found.into(), expected.into());
        ReadError { refusal, line, column, path: self.path(), found, expected, hint: String::new() }
    }

    /// What a sign is, in words.
    pub(super) fn describe(&self, token: Token) -> String {
        let slice = self.slice(token);
        let short = match slice.char_indices().nth(40) {
            Some((end, _)) => format!("{}…", &slice[..end]),
            None => slice.to_owned(),
        };
        let short = short.replace(['\n', '\r'], " ");
        match token.kind {
            Kind::Open('(') => "a group `(`".into(),
            Kind::Open(_) => "a list `[`".into(),
            Kind::Text(_) => format!("the text {short}"),
            Kind::Word => format!("the word `{short}`"),
            Kind::Number => format!("the number `{short}`"),
            Kind::End => "the end of the file".into(),
            Kind::Close(_) | Kind::Comma | Kind::Colon => format!("`{short}`"),
        }
    }

    fn over(&self, limit: Limit, found: usize, at: usize) -> ReadError {
        self.error(Refusal::OverLimit, at, format!("{found} {}", limit.of), limit.most.to_string()).hint(limit.hint)
    }

    /// Behind a member stands neither a comma nor the closing bracket.
    fn no_comma(&self, token: Token) -> ReadError {
        let close = self.stack.last().map_or(')', |frame| closing(frame.bracket));
        self.unless_cut_off(token, &format!("`,` or `{close}`"), "is a comma missing before it?")
    }

    fn unless_cut_off(&self, token: Token, expected: &str, hint: &str) -> ReadError {
        let error = self.error(Refusal::Syntax, token.start, self.describe(token), expected);
        if let (Kind::End, Some(frame)) = (token.kind, self.stack.last()) {
            let (line, column) = line_and_column(self.text, frame.at);
            let open = frame.bracket;
            return error
                .hint(format!("the `{open}` of line {line}, column {column} is still open: is the file cut off?"));
        }
        match self.long_text() {
            Some(hint) => error.hint(hint),
            None => error.hint(hint),
        }
    }

    /// A forgotten quote makes a text run on into the next line, and the error appears right behind it.
    fn long_text(&self) -> Option<String> {
        let text = self.long.filter(|_| self.since_long <= 2)?;
        let (line, column) = line_and_column(self.text, text.start);
        let (last, _) = line_and_column(self.text, text.end);
        Some(format!(
            "the text that begins in line {line}, column {column} ends in line {last}: is its closing quote missing?"
        ))
    }

    fn fault(&self, fault: Fault) -> ReadError {
        match fault.kind {
            FaultKind::Letter(letter) => {
                let error = self.error(Refusal::Syntax, fault.at, strange(letter), "a sign of a draft");
                match (self.long_text(), hint_on(letter)) {
                    (Some(hint), _) => error.hint(hint),
                    (None, hint) => error.hint(hint),
                }
            }
            FaultKind::OpenText => self
                .error(Refusal::Syntax, fault.at, "a text that never ends", "a closing quote `\"`")
                .hint("is the file cut off, or a quote missing?"),
            FaultKind::OpenComment => self
                .error(Refusal::Syntax, fault.at, "a comment that never ends", "its closing `*/`")
                .hint("is the file cut off?"),
            FaultKind::Escape(letter) => self
                .error(Refusal::Syntax, fault.at, format!("`\\{letter}` in a text"), "`\\\\`, `\\\"`, `\\n` or `\\t`")
                .hint("a backslash itself is written twice"),
        }
    }
}

impl ReadError {
    /// With what to do.
    pub(super) fn hint(mut self, hint: impl Into<String>) -> Self {
        self.hint = hint.into();
        self
    }
}

fn strange(letter: char) -> String {
    if letter.is_control() || letter.is_whitespace() || letter == '\u{feff}' || letter == char::REPLACEMENT_CHARACTER {
        format!("the letter U+{:04X}", u32::from(letter))
    } else {
        format!("`{letter}`")
    }
}

fn hint_on(letter: char) -> &'static str {
    match letter {
        '“' | '”' | '„' | '«' | '»' | '″' | '\'' | '‘' | '’' => "texts stand in straight quotes: \"…\"",
        '{' | '}' => "fields stand in round brackets, lists in square ones",
        _ if letter.is_whitespace() && !letter.is_control() => "it is no blank although it looks like one: replace it",
        _ if letter.is_control() => "the file is damaged",
        _ => "is it part of a text whose quotes are missing?",
    }
}

fn closing(bracket: char) -> char {
    if bracket == '(' { ')' } else { ']' }
}

fn join(path: &mut String, word: &str) {
    if !path.is_empty() {
        path.push('.');
    }
    path.push_str(word);
}
