//! A walk over a draft's text, sign by sign: finds what is wrong with brackets, commas and quotes, keeps to the limits,
//! and knows at every step where in the draft it is. Which fields there are is left to the document types.

use super::limits::{self, Limit};
use super::read_error::{ReadError, Refusal, line_and_column};
use super::token::{Fault, FaultKind, Kind, Token, Tokens};
use crate::texts::say;

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
                .error(Refusal::Syntax, token.start, self.describe(token), say!("refused-nothing-more"))
                .hint(say!("refused-closed-early"))),
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
            let hint = if matches!(token.kind, Kind::Text(_)) { say!("refused-without-quotes") } else { String::new() };
            return Err(self.unless_cut_off(token, say!("refused-name-of-field"), hint));
        }
        self.check_word(token)?;
        if self.peek()?.kind != Kind::Colon {
            let next = self.peek()?;
            let found = say!("refused-after-word", sign = self.describe(next), word = self.slice(token));
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
                let hint = say!("refused-counts", number = self.slice(token));
                let expected = say!("refused-text-or-number");
                return Err(self.error(Refusal::Shape, token.start, found, expected).hint(hint));
            }
            _ => return Err(self.unless_cut_off(token, say!("refused-any-value"), String::new())),
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
        let expected = say!("refused-plain-word");
        let hint = say!("refused-plain-meant", plain);
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
            let hint = {
                let (bracket, line, column) = (frame.bracket.to_string(), line.to_string(), column.to_string());
                say!("refused-still-open", bracket, line, column)
            };
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
            Kind::Open('(') => say!("refused-is-group"),
            Kind::Open(_) => say!("refused-is-list"),
            Kind::Text(_) => say!("refused-is-text", short),
            Kind::Word => say!("refused-is-word", short),
            Kind::Number => say!("refused-is-number", short),
            Kind::End => say!("refused-is-end"),
            Kind::Close(_) | Kind::Comma | Kind::Colon => format!("`{short}`"),
        }
    }

    fn over(&self, limit: Limit, found: usize, at: usize) -> ReadError {
        self.error(Refusal::OverLimit, at, format!("{found} {}", limit.of()), limit.most.to_string()).hint(limit.hint())
    }

    /// Behind a member stands neither a comma nor the closing bracket.
    fn no_comma(&self, token: Token) -> ReadError {
        let close = self.stack.last().map_or(')', |frame| closing(frame.bracket));
        self.unless_cut_off(token, say!("refused-comma-or", close = close.to_string()), say!("refused-comma-missing"))
    }

    fn unless_cut_off(&self, token: Token, expected: String, hint: String) -> ReadError {
        let error = self.error(Refusal::Syntax, token.start, self.describe(token), expected);
        if let (Kind::End, Some(frame)) = (token.kind, self.stack.last()) {
            let (line, column) = line_and_column(self.text, frame.at);
            return error.hint(say!(
                "refused-still-open-end",
                bracket = frame.bracket.to_string(),
                line = line.to_string(),
                column = column.to_string()
            ));
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
        let (line, column, last) = (line.to_string(), column.to_string(), last.to_string());
        Some(say!("refused-long-text", line, column, last))
    }

    fn fault(&self, fault: Fault) -> ReadError {
        match fault.kind {
            FaultKind::Letter(letter) => {
                let error = self.error(Refusal::Syntax, fault.at, strange(letter), say!("refused-sign"));
                match (self.long_text(), hint_on(letter)) {
                    (Some(hint), _) => error.hint(hint),
                    (None, hint) => error.hint(hint),
                }
            }
            FaultKind::OpenText => self
                .error(Refusal::Syntax, fault.at, say!("refused-open-text"), say!("refused-closing-quote"))
                .hint(say!("refused-cut-or-quote")),
            FaultKind::OpenComment => self
                .error(Refusal::Syntax, fault.at, say!("refused-open-comment"), say!("refused-closing-comment"))
                .hint(say!("refused-cut-off")),
            FaultKind::Escape(letter) => self
                .error(
                    Refusal::Syntax,
                    fault.at,
                    say!("refused-escape", letter = letter.to_string()),
                    say!("refused-wants-escape"),
                )
                .hint(say!("refused-backslash")),
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
        say!("refused-the-letter", code = format!("{:04X}", u32::from(letter)))
    } else {
        format!("`{letter}`")
    }
}

fn hint_on(letter: char) -> String {
    match letter {
        '“' | '”' | '„' | '«' | '»' | '″' | '\'' | '‘' | '’' => say!("refused-straight-quotes"),
        '{' | '}' => say!("refused-brackets"),
        _ if letter.is_whitespace() && !letter.is_control() => say!("refused-no-blank"),
        _ if letter.is_control() => say!("refused-damaged"),
        _ => say!("refused-quotes-missing"),
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
