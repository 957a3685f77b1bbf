//! From text to tree. The grammar stands in `assets/help/en/language.md`.

use super::lexer::{Token, problem, tokens};
use super::tree::{Argument, ArgumentValue, Binary, Condition, Expr, Form, NamePart, Relation};
use crate::base::{Code, Finding, Mend, Span, Unit};
use crate::texts::{id, own, said, say};

/// The most letters of a formula that are read.
pub const MAX_LETTERS: usize = 2_000;
/// The most brackets (and signs like them) that may stand inside each other.
pub const MAX_DEPTH: u32 = 64;

type Read<T> = Result<T, Box<Finding>>;

/// Reads a formula. The finding has its code, span, words and mend; text and place are the caller's to fill in.
pub fn parse(text: &str) -> Read<Expr> {
    let mut parser = Parser::new(text)?;
    let expr = parser.formula()?;
    parser.end(id!("read-operator-or-end"))?;
    Ok(expr)
}

/// Reads a condition: two formulas with `=`, `<`, `<=`, `>` or `>=` between them.
pub fn parse_condition(text: &str) -> Read<Condition> {
    let mut parser = Parser::new(text)?;
    let left = parser.formula()?;
    if parser.skip("=") {
        let right = parser.formula()?;
        parser.end(id!("read-operator-or-end-of-condition"))?;
        return Ok(Condition { left, relation: Relation::Equal, right });
    }
    parser.end(id!("read-equal-or-comparison"))?;
    match left.form {
        Form::Binary(op @ (Binary::Less | Binary::LessEqual | Binary::More | Binary::MoreEqual), a, b) => {
            Ok(Condition { left: *a, relation: Relation::Compared(op), right: *b })
        }
        _ => {
            let mut finding = problem(Code::Unexpected, Span::new(text.len(), text.len()));
            finding.words = vec![("found", say!("read-the-end")), ("expected", say!("read-comparison"))];
            Err(finding)
        }
    }
}

struct Parser<'a> {
    text: &'a str,
    tokens: Vec<(Token<'a>, Span)>,
    at: usize,
    depth: u32,
}

impl<'a> Parser<'a> {
    fn new(text: &'a str) -> Read<Self> {
        let count = text.chars().take(MAX_LETTERS + 1).count();
        if count > MAX_LETTERS {
            let mut finding = problem(Code::FormulaLong, Span::new(0, 0));
            let all = text.chars().count();
            finding.words = vec![("count", all.to_string()), ("limit", MAX_LETTERS.to_string())];
            return Err(finding);
        }
        if text.trim().is_empty() {
            return Err(problem(Code::FormulaEmpty, Span::new(0, text.len())));
        }
        Ok(Self { text, tokens: tokens(text)?, at: 0, depth: 0 })
    }

    fn peek(&self) -> Token<'a> {
        self.tokens[self.at].0
    }
    fn peek_after(&self, n: usize) -> Token<'a> {
        self.tokens.get(self.at + n).map_or(Token::End, |t| t.0)
    }
    fn span(&self) -> Span {
        self.tokens[self.at].1
    }
    fn next(&mut self) -> Span {
        let span = self.span();
        self.at = (self.at + 1).min(self.tokens.len() - 1);
        span
    }
    fn skip(&mut self, sign: &str) -> bool {
        let here = matches!(self.peek(), Token::Sign(s) if s == sign);
        if here {
            self.next();
        }
        here
    }
    fn skip_word(&mut self, word: &str) -> bool {
        let here = matches!(self.peek(), Token::Word(w) if w == word);
        if here {
            self.next();
        }
        here
    }

    /// Something else is needed here, of which this is the id.
    fn unexpected(&self, expected: &'static str) -> Box<Finding> {
        self.stands_for(said(own(), expected, &[]))
    }

    fn stands_for(&self, expected: String) -> Box<Finding> {
        let span = self.span();
        let mut finding = problem(Code::Unexpected, span);
        let found = match self.peek() {
            Token::End => say!("read-the-end"),
            Token::Unit(_) => say!("read-the-unit", unit = span.of(self.text)),
            _ => format!("`{}`", span.of(self.text)),
        };
        finding.words = vec![("found", found), ("expected", expected)];
        finding
    }

    fn end(&mut self, expected: &'static str) -> Read<()> {
        match self.peek() {
            Token::End => Ok(()),
            Token::Sign(",") if matches!(self.peek_after(1), Token::Number { .. }) => {
                let mut finding = self.unexpected(id!("read-decimal-point"));
                finding.mend = Some(Mend { span: self.span(), by: ".".into() });
                Err(finding)
            }
            _ => Err(self.unexpected(expected)),
        }
    }

    fn deeper<T>(&mut self, read: impl FnOnce(&mut Self) -> Read<T>) -> Read<T> {
        self.depth += 1;
        if self.depth > MAX_DEPTH {
            let mut finding = problem(Code::FormulaDeep, self.span());
            finding.words = vec![("limit", MAX_DEPTH.to_string())];
            return Err(finding);
        }
        let result = read(self);
        self.depth -= 1;
        result
    }

    fn formula(&mut self) -> Read<Expr> {
        self.deeper(Self::or)
    }

    fn or(&mut self) -> Read<Expr> {
        let mut left = self.and()?;
        while self.skip_word("or") {
            left = binary(Binary::Or, left, self.and()?);
        }
        Ok(left)
    }

    fn and(&mut self) -> Read<Expr> {
        let mut left = self.not()?;
        while self.skip_word("and") {
            left = binary(Binary::And, left, self.not()?);
        }
        Ok(left)
    }

    fn not(&mut self) -> Read<Expr> {
        let start = self.span();
        if self.skip_word("not") {
            let inner = self.deeper(Self::not)?;
            return Ok(Expr { span: start.to(inner.span), form: Form::Not(Box::new(inner)) });
        }
        self.comparison()
    }

    fn comparison(&mut self) -> Read<Expr> {
        let left = self.sum()?;
        let op = match self.peek() {
            Token::Sign("<") => Binary::Less,
            Token::Sign("<=") => Binary::LessEqual,
            Token::Sign(">") => Binary::More,
            Token::Sign(">=") => Binary::MoreEqual,
            _ => return Ok(left),
        };
        self.next();
        Ok(binary(op, left, self.sum()?))
    }

    fn sum(&mut self) -> Read<Expr> {
        let mut left = self.product()?;
        loop {
            let op = match self.peek() {
                Token::Sign("+") => Binary::Add,
                Token::Sign("-") => Binary::Subtract,
                _ => return Ok(left),
            };
            self.next();
            left = binary(op, left, self.product()?);
        }
    }

    fn product(&mut self) -> Read<Expr> {
        let mut left = self.signed()?;
        loop {
            let op = match self.peek() {
                Token::Sign("*") => Binary::Multiply,
                Token::Sign("/") => Binary::Divide,
                _ => return Ok(left),
            };
            self.next();
            left = binary(op, left, self.signed()?);
        }
    }

    fn signed(&mut self) -> Read<Expr> {
        let start = self.span();
        if self.skip("-") {
            let inner = self.deeper(Self::signed)?;
            return Ok(Expr { span: start.to(inner.span), form: Form::Negate(Box::new(inner)) });
        }
        let base = self.postfix()?;
        if self.skip("^") {
            let exponent = self.deeper(Self::signed)?;
            return Ok(binary(Binary::Power, base, exponent));
        }
        Ok(base)
    }

    fn postfix(&mut self) -> Read<Expr> {
        let mut left = self.primary()?;
        while self.skip(".") {
            let name = self.word(id!("read-function-or-point"))?;
            let mut arguments = vec![argument(left)];
            let mut span = arguments[0].span.to(name.span);
            if self.skip("(") {
                span = span.to(self.arguments(&mut arguments)?);
            }
            left = Expr { span, form: Form::Call(name, arguments) };
        }
        Ok(left)
    }

    fn word(&mut self, expected: &'static str) -> Read<NamePart> {
        match self.peek() {
            Token::Word(text) => {
                let span = self.next();
                Ok(NamePart { text: text.to_owned(), span })
            }
            _ => Err(self.unexpected(expected)),
        }
    }

    fn primary(&mut self) -> Read<Expr> {
        let span = self.span();
        match self.peek() {
            Token::Number { .. } => self.number(),
            Token::Word(word @ ("yes" | "no")) => {
                self.next();
                Ok(Expr { span, form: Form::Truth(word == "yes") })
            }
            Token::Word("pi") => {
                self.next();
                Ok(Expr { span, form: Form::Pi })
            }
            Token::Word(word @ ("and" | "or" | "not")) => Err(self.stands_for(say!("read-start-before", word))),
            Token::Word(_) => self.name(),
            Token::Sign("(") => {
                self.next();
                let inner = self.formula()?;
                let form = if self.skip(",") { Some(self.formula()?) } else { None };
                let span = span.to(self.close(")", span)?);
                Ok(match form {
                    Some(second) => Expr { span, form: Form::Pair(Box::new(inner), Box::new(second)) },
                    None => Expr { span, ..inner },
                })
            }
            _ => Err(self.unexpected(id!("read-start"))),
        }
    }

    /// A name, or a function with its arguments.
    fn name(&mut self) -> Read<Expr> {
        let mut parts = vec![self.word(id!("read-name"))?];
        while matches!(self.peek(), Token::Sign(".")) {
            self.next();
            parts.push(self.word(id!("read-name"))?);
        }
        let start = parts[0].span;
        let last = parts.len() - 1;
        if !self.skip("(") {
            let span = start.to(parts[last].span);
            return Ok(Expr { span, form: Form::Name(parts) });
        }
        let function = parts.remove(last);
        let mut arguments = Vec::new();
        if last > 0 {
            let span = start.to(parts[last - 1].span);
            arguments.push(argument(Expr { span, form: Form::Name(parts) }));
        }
        let end = self.arguments(&mut arguments)?;
        Ok(Expr { span: start.to(end), form: Form::Call(function, arguments) })
    }

    /// Arguments up to and with the closing bracket; the opening one is read already.
    fn arguments(&mut self, into: &mut Vec<Argument>) -> Read<Span> {
        let open = self.tokens[self.at - 1].1;
        if matches!(self.peek(), Token::Sign(")")) {
            return Ok(self.next());
        }
        loop {
            let name = match (self.peek(), self.peek_after(1)) {
                (Token::Word(_), Token::Sign(":")) => {
                    let name = self.word(id!("read-name"))?;
                    self.next();
                    Some(name)
                }
                _ => None,
            };
            let start = self.span();
            let value = match self.peek() {
                Token::Sign("[") => {
                    self.next();
                    let mut list = vec![self.formula()?];
                    while self.skip(",") {
                        list.push(self.formula()?);
                    }
                    self.close("]", start)?;
                    ArgumentValue::List(list)
                }
                Token::Text(text) => {
                    self.next();
                    ArgumentValue::Text(text.to_owned())
                }
                _ => ArgumentValue::One(self.formula()?),
            };
            let span = start.to(self.tokens[self.at - 1].1);
            into.push(Argument { name, span, value });
            if !self.skip(",") {
                return self.close(")", open);
            }
        }
    }

    fn close(&mut self, sign: &'static str, open: Span) -> Read<Span> {
        match self.peek() {
            Token::Sign(s) if s == sign => Ok(self.next()),
            Token::End => Err(problem(Code::BracketOpen, open)),
            _ => Err(self.stands_for(say!("read-comma-or-close", sign))),
        }
    }

    /// A number with its unit; `N/D unit` and `W N/D unit` are one literal.
    fn number(&mut self) -> Read<Expr> {
        let start = self.span();
        let whole = |t: Token<'a>| match t {
            Token::Number { text, whole: true } => Some(text),
            _ => None,
        };
        let over = |p: &Self, n: usize| {
            let (a, b) = (whole(p.peek_after(n))?, whole(p.peek_after(n + 2))?);
            let fraction = p.peek_after(n + 1) == Token::Sign("/") && matches!(p.peek_after(n + 3), Token::Unit(_));
            fraction.then_some((a, b))
        };
        let first = match self.peek() {
            Token::Number { text, .. } => text,
            _ => return Err(self.unexpected(id!("read-number"))),
        };
        let (value, used) = if let Some((n, d)) = over(self, 0) {
            (self.fraction(n, d)?, 3)
        } else if let (Some(w), Some((n, d))) = (whole(self.peek()), over(self, 1)) {
            (self.read(w)? + self.fraction(n, d)?, 4)
        } else {
            (self.read(first)?, 1)
        };
        for _ in 0..used {
            self.next();
        }
        let mut span = start.to(self.tokens[self.at - 1].1);
        let mut unit: Option<Unit> = None;
        match self.peek() {
            Token::Unit(u) => {
                span = span.to(self.next());
                unit = Some(u);
            }
            Token::Word(word) if !matches!(word, "and" | "or") => {
                let mut finding = self.unexpected(id!("read-unit-or-operator"));
                let low = word.to_lowercase();
                if let Some(u) = Unit::of(&low).or(Unit::of(low.trim_end_matches("ch").trim_end_matches("es"))) {
                    finding.mend = Some(Mend { span: self.span(), by: u.sign().to_owned() });
                }
                return Err(finding);
            }
            _ => {}
        }
        Ok(Expr { span, form: Form::Number(value, unit) })
    }

    fn read(&self, digits: &str) -> Read<f64> {
        match digits.parse::<f64>() {
            Ok(value) if value.is_finite() => Ok(value),
            _ => Err(self.bad_number(digits, say!("read-too-large"))),
        }
    }

    fn fraction(&self, over: &str, under: &str) -> Read<f64> {
        let (over_value, under_value) = (self.read(over)?, self.read(under)?);
        if under_value == 0.0 {
            return Err(self.bad_number(&format!("{over}/{under}"), say!("read-by-zero")));
        }
        Ok(over_value / under_value)
    }

    fn bad_number(&self, found: &str, why: String) -> Box<Finding> {
        let mut finding = problem(Code::NumberBad, self.span());
        let short: String = found.chars().take(20).collect();
        finding.words = vec![("found", short), ("problem", why)];
        finding
    }
}

fn binary(op: Binary, left: Expr, right: Expr) -> Expr {
    Expr { span: left.span.to(right.span), form: Form::Binary(op, Box::new(left), Box::new(right)) }
}

fn argument(value: Expr) -> Argument {
    Argument { name: None, span: value.span, value: ArgumentValue::One(value) }
}
