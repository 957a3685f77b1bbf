//! Calls of functions: which row of the table is meant, and whether its arguments fit.

use super::check::{Checker, Made, Stop, differ};
use super::functions::{FUNCTIONS, Function, Gives, How, Signature, Takes};
use super::kind::{Frame, Kind, What};
use super::lexer::problem;
use super::program::Op;
use super::spelling::nearest;
use super::tree::{Argument, ArgumentValue, Expr, NamePart};
use crate::base::{Code, Finding, Mend, Span};
use crate::texts::say;

/// A call of `function`.
pub(super) fn call(checker: &Checker<'_>, function: &NamePart, arguments: &[Argument], span: Span) -> Made {
    let rows: Vec<&Signature> = FUNCTIONS.iter().filter(|f| f.name == function.text).collect();
    let Some(first) = rows.first() else {
        return Err(Some(unknown(function)));
    };
    // Rows of one name differ in their named arguments, or in how many stand by their place.
    let named = || arguments.iter().filter_map(|a| a.name.as_ref());
    let placed = arguments.iter().filter(|a| a.name.is_none()).count();
    let names_fit = |row: &Signature| {
        named().all(|n| row.parameters.iter().any(|p| p.name == n.text))
            && row.parameters.iter().filter(|p| p.how == How::Named).all(|p| named().any(|n| n.text == p.name))
    };
    let count_fits = |row: &Signature| {
        let of = |how: &[How]| row.parameters.iter().filter(|p| how.contains(&p.how)).count();
        placed == of(&[How::Placed]) || (placed > of(&[How::Placed]) && of(&[How::Optional, How::Repeated]) > 0)
    };
    let row = rows
        .iter()
        .find(|row| names_fit(row) && count_fits(row))
        .or_else(|| rows.iter().find(|row| names_fit(row)))
        .or_else(|| rows.iter().find(|row| named().any(|n| row.parameters.iter().any(|p| p.name == n.text))))
        .unwrap_or(first);
    let slots = assign(row, function, arguments, span)?;
    compile(checker, row, &slots, span)
}

fn unknown(function: &NamePart) -> Box<Finding> {
    let mut finding = problem(Code::UnknownFunction, function.span);
    let near = nearest(&function.text, FUNCTIONS.iter().map(|f| f.name));
    let hint = near.map_or(String::new(), |n| say!("did-you-mean", name = n));
    let text: String = function.text.chars().take(60).collect();
    finding.words = vec![("name", format!("`{text}`")), ("hint", hint)];
    finding.mend = near.map(|by| Mend { span: function.span, by: by.to_owned() });
    finding
}

fn wrong(row: &Signature, span: Span, why: String) -> Stop {
    let mut finding = problem(Code::WrongArguments, span);
    finding.words = vec![("function", format!("`{}`", usage(row))), ("problem", why)];
    Some(finding)
}

/// How a function is written: `turned(point, about, from:, to:)`.
pub fn usage(row: &Signature) -> String {
    let parameters: Vec<String> = row
        .parameters
        .iter()
        .map(|p| match p.how {
            How::Placed => p.name.to_owned(),
            How::Optional => format!("[{}]", p.name),
            How::Repeated => format!("{}, …", p.name),
            How::Named => format!("{}: …", p.name),
            How::Choice => format!("[{}: …]", p.name),
        })
        .collect();
    format!("{}({})", row.name, parameters.join(", "))
}

/// The arguments in the order of the parameters; a repeated parameter takes all that are left.
fn assign<'a>(
    row: &Signature,
    function: &NamePart,
    arguments: &'a [Argument],
    span: Span,
) -> Result<Vec<(usize, &'a Argument)>, Stop> {
    let mut slots: Vec<(usize, &Argument)> = Vec::with_capacity(arguments.len());
    let mut next = 0;
    for argument in arguments {
        match &argument.name {
            Some(name) => {
                let Some(i) = row.parameters.iter().position(|p| p.name == name.text) else {
                    return Err(wrong(row, name.span, say!("call-no-parameter", name = name.text)));
                };
                if slots.iter().any(|(k, _)| *k == i) {
                    return Err(wrong(row, name.span, say!("call-twice", name = name.text)));
                }
                slots.push((i, argument));
            }
            None => {
                let Some(parameter) = row.parameters.get(next) else {
                    return Err(wrong(row, argument.span, say!("call-too-many")));
                };
                if parameter.how == How::Choice {
                    return Err(wrong(row, argument.span, say!("call-too-many")));
                }
                if parameter.how == How::Named {
                    let why = say!("call-name-first", name = parameter.name);
                    return Err(wrong(row, argument.span, why));
                }
                slots.push((next, argument));
                if parameter.how != How::Repeated {
                    next += 1;
                }
            }
        }
    }
    for (i, parameter) in row.parameters.iter().enumerate() {
        if !matches!(parameter.how, How::Optional | How::Choice) && !slots.iter().any(|(k, _)| *k == i) {
            let at = Span::new(function.span.start, span.end.max(function.span.end));
            return Err(wrong(row, at, say!("call-missing", name = parameter.name)));
        }
    }
    slots.sort_by_key(|(i, _)| *i);
    Ok(slots)
}

struct Row<'a, 'b> {
    checker: &'a Checker<'b>,
    row: &'a Signature,
    frame: Option<Frame>,
    first: Option<Kind>,
    ops: Vec<Op>,
    kinds: Vec<Kind>,
}

fn compile(checker: &Checker<'_>, row: &Signature, slots: &[(usize, &Argument)], span: Span) -> Made {
    let mut state = Row { checker, row, frame: None, first: None, ops: Vec::new(), kinds: Vec::new() };
    let mut list: Option<usize> = None;
    for (i, argument) in slots {
        match (row.parameters[*i].takes, &argument.value) {
            (Takes::One(what), ArgumentValue::One(expr)) => state.take(expr, what, argument.span)?,
            (Takes::AsFirst, ArgumentValue::One(expr)) => state.alike(expr, state.first)?,
            (Takes::AsBefore, ArgumentValue::One(expr)) => state.alike(expr, state.kinds.last().copied())?,
            (Takes::ListAsFirst, ArgumentValue::List(exprs)) => {
                list = Some(exprs.len());
                for expr in exprs {
                    state.alike(expr, state.first)?;
                }
            }
            (Takes::ListAlongside, ArgumentValue::List(exprs)) => {
                if list != Some(exprs.len()) {
                    return Err(wrong(row, argument.span, say!("call-lists-uneven")));
                }
                state.take(&exprs[0], What::Quantity, argument.span)?;
                let kind = state.kinds.last().copied();
                for expr in &exprs[1..] {
                    state.alike(expr, kind)?;
                }
            }
            (Takes::Each(what), ArgumentValue::One(expr)) => {
                state.frame = None;
                state.take(expr, what, argument.span)?;
                state.copies(expr.span)?;
            }
            (Takes::Row, ArgumentValue::One(expr)) => state.take(expr, What::Quantity, argument.span)?,
            (Takes::Words, ArgumentValue::Text(words)) => state.in_size(words, argument.span)?,
            (Takes::Words, _) => return Err(wrong(row, argument.span, say!("call-wants-words"))),
            (Takes::Word(words), ArgumentValue::One(expr)) => state.word(*i, words, expr)?,
            (Takes::ListAsFirst | Takes::ListAlongside, _) => {
                return Err(wrong(row, argument.span, say!("call-wants-list")));
            }
            (_, ArgumentValue::List(_)) => return Err(wrong(row, argument.span, say!("call-wants-no-list"))),
            (_, ArgumentValue::Text(_)) => return Err(wrong(row, argument.span, say!("call-wants-no-words"))),
        }
    }
    let kind = state.gives(span)?;
    let has_choice = row.parameters.iter().any(|p| p.how == How::Choice);
    if has_choice {
        state.choose(slots, span)?;
    }
    let mut ops = state.ops;
    if row.function == Function::InSize {
        // The size is a matter of which symbol is loaded.
        return Ok((ops.pop().unwrap_or(Op::Constant(f64::NAN)), kind));
    }
    if let (Function::FlatLength, [Op::Load(edge)]) = (row.function, ops.as_mut_slice()) {
        *edge = checker.scope.on_paper(*edge);
    }
    if row.function == Function::If {
        let (otherwise, then, condition) = (ops.pop(), ops.pop(), ops.pop());
        if let (Some(c), Some(t), Some(o)) = (condition, then, otherwise) {
            return Ok((Op::If(Box::new(c), Box::new(t), Box::new(o)), kind));
        }
        return Err(wrong(row, span, say!("call-wants-three")));
    }
    Ok((Op::Call(row.function, ops, span), kind))
}

impl Row<'_, '_> {
    fn take(&mut self, expr: &Expr, what: What, span: Span) -> Result<(), Stop> {
        let (op, kind) = self.checker.wanted(expr, what)?;
        if let Some(frame) = kind.frame() {
            self.frame = Some(self.checker.one_frame(self.frame, frame, span)?);
        }
        self.first = self.first.or(Some(kind));
        let fraction = what == What::Place && kind == Kind::NUMBER;
        self.ops.push(if fraction { Op::Share(Box::new(op)) } else { op });
        self.kinds.push(kind);
        Ok(())
    }

    /// The outline of the piece in which the last line lies, and how many copies of it are cut.
    fn copies(&mut self, span: Span) -> Result<(), Stop> {
        let Some((outline, copies)) = self.frame.and_then(|f| self.checker.scope.outline(f)) else {
            return Err(wrong(self.row, span, say!("call-line-in-piece")));
        };
        self.ops.extend([Op::Load(outline), Op::Constant(copies)]);
        Ok(())
    }

    /// The row that was named, in another size.
    fn in_size(&mut self, words: &str, span: Span) -> Result<(), Stop> {
        let Some(Op::Load(symbol)) = self.ops.pop() else {
            return Err(wrong(self.row, span, say!("call-wants-row")));
        };
        match self.checker.scope.row_in(symbol, words) {
            Ok(symbol) => self.ops.push(Op::Load(symbol)),
            Err(why) => return Err(wrong(self.row, span, why)),
        }
        Ok(())
    }

    /// One of some words; it is kept as a number that says which.
    fn word(&mut self, parameter: usize, words: &[&str], expr: &Expr) -> Result<(), Stop> {
        let name = self.row.parameters[parameter].name;
        if let super::tree::Form::Name(parts) = &expr.form
            && let [one] = parts.as_slice()
            && let Some(i) = words.iter().position(|w| *w == one.text)
        {
            self.ops.push(Op::Constant(i as f64));
            return Ok(());
        }
        Err(wrong(self.row, expr.span, say!("call-one-of-words", name, words = words.join(", "))))
    }

    /// Which choice was made, as a number behind the arguments that stand by their place: 0 none, 1 the first parameter that can be
    /// chosen, and so on; what was given for it comes last.
    fn choose(&mut self, slots: &[(usize, &Argument)], span: Span) -> Result<(), Stop> {
        let first = self.row.parameters.iter().position(|p| p.how == How::Choice).unwrap_or(0);
        let chosen: Vec<usize> = slots.iter().map(|(i, _)| *i).filter(|i| *i >= first).collect();
        if chosen.len() > 1 {
            let names: Vec<String> = self.row.parameters[first..].iter().map(|p| format!("`{}:`", p.name)).collect();
            return Err(wrong(self.row, span, say!("call-one-of-names", names = names.join(", "))));
        }
        let what = if chosen.is_empty() { None } else { self.ops.pop() };
        self.ops.push(Op::Constant(chosen.first().map_or(0.0, |i| (i - first + 1) as f64)));
        self.ops.extend(what);
        Ok(())
    }

    fn alike(&mut self, expr: &Expr, kind: Option<Kind>) -> Result<(), Stop> {
        let kind = kind.unwrap_or(Kind::NUMBER);
        if let Some(wanted) = kind.frame() {
            let (op, got) = self.checker.wanted(expr, What::Kind(kind))?;
            self.checker.one_frame(Some(wanted), got.frame().unwrap_or(wanted), expr.span)?;
            self.ops.push(op);
            self.kinds.push(got);
            return Ok(());
        }
        self.take(expr, What::Kind(kind), expr.span)
    }

    fn gives(&self, span: Span) -> Result<Kind, Stop> {
        let first = self.first.unwrap_or(Kind::NUMBER);
        Ok(match self.row.gives {
            Gives::Kind(kind) => match (kind, self.frame) {
                (Kind::Point(_), Some(f)) => Kind::Point(f),
                (Kind::Line(_), Some(f)) => Kind::Line(f),
                (Kind::Edge(_), Some(f)) => Kind::Edge(f),
                (kind, _) => kind,
            },
            Gives::First => {
                if self.row.function == Function::Round && self.kinds.len() == 1 && first != Kind::NUMBER {
                    return Err(wrong(self.row, span, say!("call-round-step")));
                }
                first
            }
            Gives::Second => self.kinds.get(1).copied().unwrap_or(Kind::NUMBER),
            Gives::Root => match first {
                Kind::Quantity(n) if n % 2 == 0 => Kind::Quantity(n / 2),
                kind => return Err(Some(differ(span, say!("differ-root", kind = kind.words())))),
            },
            Gives::OfList => self.kinds.last().copied().unwrap_or(Kind::NUMBER),
        })
    }
}
