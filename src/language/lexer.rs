//! Cutting a formula's text into words and signs.

use crate::base::{Code, Finding, Span, Unit};

/// A word or sign.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Token<'a> {
    /// A number as written; `whole` if it has no point.
    Number { text: &'a str, whole: bool },
    /// A unit that is no word: `°` and `%`, or a word that is one.
    Unit(Unit),
    /// A word.
    Word(&'a str),
    /// Words in quotes, without them.
    Text(&'a str),
    /// A sign.
    Sign(&'static str),
    /// The end of the text.
    End,
}

/// The signs of the language, longer ones first.
const SIGNS: [&str; 16] = ["<=", ">=", "+", "-", "*", "/", "^", "(", ")", "[", "]", ",", ".", ":", "<", ">"];

/// All tokens with their places; the last one is [`Token::End`].
pub(super) fn tokens(text: &str) -> Result<Vec<(Token<'_>, Span)>, Box<Finding>> {
    let mut out = Vec::new();
    let mut at = 0;
    while let Some(letter) = text[at..].chars().next() {
        let start = at;
        if letter.is_whitespace() {
            at += letter.len_utf8();
            continue;
        }
        let token = if letter.is_ascii_digit() {
            at = end_of_number(text, at);
            let word = &text[start..at];
            Token::Number { text: word, whole: !word.contains('.') }
        } else if letter == '_' || letter.is_alphabetic() {
            at += text[at..].find(|c: char| !is_word(c)).unwrap_or(text.len() - at);
            let word = &text[start..at];
            Unit::of(word).map_or(Token::Word(word), Token::Unit)
        } else if letter == '"' {
            let Some(close) = text[at + 1..].find('"') else {
                return Err(problem(Code::BracketOpen, Span::new(at, at + 1)));
            };
            at += close + 2;
            Token::Text(&text[start + 1..at - 1])
        } else if let Some(unit) = ["°", "%"].iter().find(|sign| text[at..].starts_with(**sign)) {
            at += unit.len();
            Token::Unit(Unit::of(unit).unwrap_or(Unit::Degree))
        } else if let Some(sign) = SIGNS.iter().find(|sign| text[at..].starts_with(**sign)) {
            at += sign.len();
            Token::Sign(sign)
        } else if letter == '=' {
            at += 1;
            Token::Sign("=")
        } else {
            let end = at + letter.len_utf8();
            let shown = if letter.is_control() { format!("U+{:04X}", u32::from(letter)) } else { letter.to_string() };
            let mut finding = problem(Code::UnknownSign, Span::new(at, end));
            finding.words.push(("found", format!("`{shown}`")));
            return Err(finding);
        };
        out.push((token, Span::new(start, at)));
    }
    out.push((Token::End, Span::new(text.len(), text.len())));
    Ok(out)
}

fn is_word(letter: char) -> bool {
    letter == '_' || letter.is_alphanumeric() || unicode_normalization::char::is_combining_mark(letter)
}

/// Digits, and a point with digits behind it.
fn end_of_number(text: &str, from: usize) -> usize {
    let digits = |at: usize| text[at..].find(|c: char| !c.is_ascii_digit()).map_or(text.len(), |i| at + i);
    let whole = digits(from);
    let after = text[whole..].strip_prefix('.').is_some_and(|rest| rest.starts_with(|c: char| c.is_ascii_digit()));
    if after { digits(whole + 1) } else { whole }
}

pub(super) fn problem(code: Code, span: Span) -> Box<Finding> {
    let mut finding = Finding::new(code);
    finding.span = Some(span);
    Box::new(finding)
}
