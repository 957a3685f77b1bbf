//! Names and kinds: from tree to program.

use super::arguments;
use super::kind::{Found, Frame, Kind, Scope, What};
use super::lexer::problem;
use super::program::{Comparison, Op, Program};
use super::tree::{Binary, Condition, Expr, Form, NamePart};
use crate::base::{Code, Finding, Mend, Span};
use crate::texts::say;

/// A checked formula.
#[derive(Clone, Debug, PartialEq)]
pub struct Checked {
    /// What is run.
    pub program: Program,
    /// What it gives.
    pub kind: Kind,
}

/// A finding, or `None` where something that the formula names is broken itself, which is reported there.
pub(super) type Stop = Option<Box<Finding>>;

/// Checks a formula. The finding has code, span, words and mend; text and place are the caller's to fill in.
pub fn check(expr: &Expr, scope: &dyn Scope) -> Result<Checked, Option<Box<Finding>>> {
    let (op, kind) = Checker { scope }.expr(expr)?;
    if let Kind::Piece(_) = kind {
        return Err(Some(wrong_kind(expr.span, kind, What::Any)));
    }
    Ok(Checked { program: Program { root: op, span: expr.span }, kind })
}

/// Checks a condition: both sides must be of one kind that can be compared.
pub fn check_condition(condition: &Condition, scope: &dyn Scope) -> Result<(Checked, Checked), Option<Box<Finding>>> {
    let (left, right) = (check(&condition.left, scope)?, check(&condition.right, scope)?);
    if !left.kind.is_quantity() {
        return Err(Some(wrong_kind(condition.left.span, left.kind, What::Quantity)));
    }
    if left.kind != right.kind {
        return Err(Some(differ(
            condition.left.span.to(condition.right.span),
            say!("differ-compared", left = left.kind.words(), right = right.kind.words()),
        )));
    }
    Ok((left, right))
}

pub(super) struct Checker<'a> {
    pub(super) scope: &'a dyn Scope,
}

pub(super) type Made = Result<(Op, Kind), Stop>;

impl Checker<'_> {
    pub(super) fn expr(&self, expr: &Expr) -> Made {
        match &expr.form {
            Form::Number(value, unit) => Ok(match unit {
                None => (Op::Constant(*value), Kind::NUMBER),
                Some(unit) => {
                    let (times, over) = unit.inside();
                    let kind = match unit {
                        u if u.is_length() => Kind::LENGTH,
                        crate::base::Unit::Percent => Kind::NUMBER,
                        _ => Kind::Angle,
                    };
                    (Op::Constant(value * times / over), kind)
                }
            }),
            Form::Pi => Ok((Op::Constant(std::f64::consts::PI), Kind::NUMBER)),
            Form::Truth(truth) => Ok((Op::Truth(*truth), Kind::Truth)),
            Form::Name(parts) => self.name(parts, expr.span),
            Form::Call(function, arguments) => arguments::call(self, function, arguments, expr.span),
            Form::Pair(x, y) => {
                let Some(frame) = self.scope.frame() else {
                    let what = say!("differ-coordinates");
                    return Err(Some(differ(expr.span, what)));
                };
                let (x, y) = (self.wanted(x, What::Kind(Kind::LENGTH))?, self.wanted(y, What::Kind(Kind::LENGTH))?);
                Ok((Op::Pair(Box::new(x.0), Box::new(y.0)), Kind::Point(frame)))
            }
            Form::Negate(inner) => {
                let (op, kind) = self.expr(inner)?;
                match kind {
                    Kind::Quantity(_) | Kind::Angle | Kind::Offset => Ok((Op::Negate(Box::new(op)), kind)),
                    _ => Err(Some(differ(expr.span, say!("differ-negative", kind = kind.words())))),
                }
            }
            Form::Not(inner) => {
                let (op, kind) = self.wanted(inner, What::Kind(Kind::Truth))?;
                Ok((Op::Not(Box::new(op)), kind))
            }
            Form::Binary(op, left, right) => self.binary(*op, left, right, expr.span),
        }
    }

    /// An expression that must give a certain kind.
    pub(super) fn wanted(&self, expr: &Expr, what: What) -> Made {
        let (op, kind) = self.expr(expr)?;
        if what.fits(kind) { Ok((op, kind)) } else { Err(Some(self.unfit(expr, kind, what))) }
    }

    /// Why `expr` does not fit, with a mend where only the unit is missing.
    pub(super) fn unfit(&self, expr: &Expr, kind: Kind, what: What) -> Box<Finding> {
        if what == What::Kind(Kind::LENGTH) && kind == Kind::NUMBER {
            return self.unit_missing(expr, self.scope.unit().sign());
        }
        if what == What::Kind(Kind::Angle) && kind == Kind::NUMBER {
            return self.unit_missing(expr, "deg");
        }
        wrong_kind(expr.span, kind, what)
    }

    fn unit_missing(&self, expr: &Expr, unit: &str) -> Box<Finding> {
        let mut finding = problem(Code::UnitMissing, expr.span);
        match expr.form {
            Form::Number(value, None) => {
                let by = format!("{value} {unit}");
                finding.words = vec![("found", format!("`{value}`")), ("hint", say!("did-you-mean", name = by))];
                finding.mend = Some(Mend { span: expr.span, by });
            }
            _ => finding.words = vec![("found", say!("unit-of-this-number")), ("hint", String::new())],
        }
        finding
    }

    fn name(&self, parts: &[NamePart], span: Span) -> Made {
        let words: Vec<&str> = parts.iter().map(|p| p.text.as_str()).collect();
        let mut found = self.scope.look_up(&words);
        if let (Found::Unknown(_), [first @ .., "x" | "y"]) = (&found, words.as_slice())
            && !first.is_empty()
        {
            let inner = Expr {
                span: parts[0].span.to(parts[first.len() - 1].span),
                form: Form::Name(parts[..first.len()].to_vec()),
            };
            let is_point = matches!(
                self.scope.look_up(first),
                Found::Symbol(_, Kind::Point(_) | Kind::Offset) | Found::Broken | Found::Ambiguous(_)
            );
            if is_point {
                let argument =
                    super::Argument { name: None, span: inner.span, value: super::ArgumentValue::One(inner) };
                return arguments::call(self, &parts[first.len()], &[argument], span);
            }
            found = self.scope.look_up(&words);
        }
        match found {
            Found::Symbol(symbol, kind) => Ok((Op::Load(symbol), kind)),
            Found::Broken => Err(None),
            Found::Ambiguous(choices) => {
                let mut finding = problem(Code::AmbiguousName, span);
                let list = choices.iter().map(|c| format!("`{c}`"));
                let either = list.reduce(|first, last| say!("either", first, last)).unwrap_or_default();
                finding.words = vec![("name", format!("`{}`", words.join("."))), ("choices", either)];
                Err(Some(finding))
            }
            Found::Unknown(near) => {
                let mut finding = problem(Code::UnknownName, span);
                let hint = near.as_ref().map_or(String::new(), |n| say!("did-you-mean", name = n));
                let text: String = words.join(".").chars().take(60).collect();
                finding.words = vec![("name", format!("`{text}`")), ("hint", hint)];
                finding.mend = near.map(|by| Mend { span, by });
                Err(Some(finding))
            }
        }
    }

    fn binary(&self, op: Binary, left: &Expr, right: &Expr, span: Span) -> Made {
        if matches!(op, Binary::And | Binary::Or) {
            let a = self.wanted(left, What::Kind(Kind::Truth))?.0;
            let b = self.wanted(right, What::Kind(Kind::Truth))?.0;
            let made = if op == Binary::And { Op::And } else { Op::Or };
            return Ok((made(Box::new(a), Box::new(b)), Kind::Truth));
        }
        let ((a, ka), (b, kb)) = (self.expr(left)?, self.expr(right)?);
        let pair = |made: fn(Box<Op>, Box<Op>) -> Op, a, b| made(Box::new(a), Box::new(b));
        match op {
            Binary::Add | Binary::Subtract => {
                let kind = self.sum(op, left, ka, right, kb, span)?;
                Ok((pair(if op == Binary::Add { Op::Add } else { Op::Subtract }, a, b), kind))
            }
            Binary::Multiply | Binary::Divide => {
                let kind = self.product(op, ka, right, kb, span)?;
                Ok((
                    if op == Binary::Multiply {
                        pair(Op::Multiply, a, b)
                    } else {
                        Op::Divide(Box::new(a), Box::new(b), right.span)
                    },
                    kind,
                ))
            }
            Binary::Power => self.power((a, ka), right, (b, kb), span),
            _ => {
                if ka != kb || !ka.is_quantity() {
                    self.same_unit(left, ka, right, kb)?;
                    let text = say!("differ-compared", left = ka.words(), right = kb.words());
                    return Err(Some(differ(span, text)));
                }
                let how = match op {
                    Binary::Less => Comparison::Less,
                    Binary::LessEqual => Comparison::LessEqual,
                    Binary::More => Comparison::More,
                    _ => Comparison::MoreEqual,
                };
                Ok((Op::Compare(how, Box::new(a), Box::new(b)), Kind::Truth))
            }
        }
    }

    /// A mend where one side is a plain number and the other a length or an angle.
    fn same_unit(&self, left: &Expr, ka: Kind, right: &Expr, kb: Kind) -> Result<(), Stop> {
        let unit = |kind| match kind {
            Kind::LENGTH => Some(self.scope.unit().sign()),
            Kind::Angle => Some("deg"),
            _ => None,
        };
        let (bare, other) = match (ka, kb) {
            (Kind::NUMBER, other) => (left, other),
            (other, Kind::NUMBER) => (right, other),
            _ => return Ok(()),
        };
        match unit(other) {
            Some(unit) => Err(Some(self.unit_missing(bare, unit))),
            None => Ok(()),
        }
    }

    fn sum(&self, op: Binary, left: &Expr, ka: Kind, right: &Expr, kb: Kind, span: Span) -> Result<Kind, Stop> {
        let plus = op == Binary::Add;
        match (ka, kb) {
            (Kind::Quantity(_) | Kind::Angle | Kind::Offset, _) if ka == kb => Ok(ka),
            (Kind::Point(_), Kind::Offset) => Ok(ka),
            (Kind::Point(f), Kind::Point(g)) if !plus => {
                self.one_frame(Some(f), g, right.span)?;
                Ok(Kind::Offset)
            }
            (Kind::Point(_), Kind::Point(_)) => Err(Some(differ(span, say!("differ-points-sum")))),
            _ => {
                self.same_unit(left, ka, right, kb)?;
                let words = if plus {
                    say!("differ-added", left = ka.words(), right = kb.words())
                } else {
                    say!("differ-taken", taken = kb.words(), from = ka.words())
                };
                Err(Some(differ(span, words)))
            }
        }
    }

    fn product(&self, op: Binary, ka: Kind, right: &Expr, kb: Kind, span: Span) -> Result<Kind, Stop> {
        let times = op == Binary::Multiply;
        let power = |n: i8| match n {
            -3..=3 => Ok(Kind::Quantity(n)),
            _ => Err(Some(differ(span, say!("differ-power-beyond")))),
        };
        match (ka, kb) {
            (Kind::Quantity(a), Kind::Quantity(b)) => power(if times { a + b } else { a - b }),
            (Kind::Angle | Kind::Offset, Kind::NUMBER) => Ok(ka),
            (Kind::NUMBER, Kind::Angle | Kind::Offset) if times => Ok(kb),
            (Kind::Angle, Kind::Angle) if !times => Ok(Kind::NUMBER),
            (Kind::Angle, Kind::Quantity(1)) | (Kind::Quantity(1), Kind::Angle) if times => {
                Err(Some(differ(span, say!("differ-arc-length"))))
            }
            _ => {
                let at = if times { span } else { right.span.to(span) };
                let words = if times {
                    say!("differ-multiplied", left = ka.words(), right = kb.words())
                } else {
                    say!("differ-divided", left = ka.words(), right = kb.words())
                };
                Err(Some(differ(at, words)))
            }
        }
    }

    fn power(&self, (a, ka): (Op, Kind), right: &Expr, (b, kb): (Op, Kind), span: Span) -> Made {
        let whole = match &right.form {
            Form::Number(v, None) if v.fract() == 0.0 && *v <= 64.0 => Some(*v as i32),
            Form::Negate(inner) => match inner.form {
                Form::Number(v, None) if v.fract() == 0.0 && v <= 64.0 => Some(-(v as i32)),
                _ => None,
            },
            _ => None,
        };
        match (ka, kb, whole) {
            (Kind::NUMBER, Kind::NUMBER, Some(n)) => Ok((Op::Whole(Box::new(a), n), Kind::NUMBER)),
            (Kind::NUMBER, Kind::NUMBER, None) => Ok((Op::Power(Box::new(a), Box::new(b)), Kind::NUMBER)),
            (Kind::Quantity(p), Kind::NUMBER, Some(n)) => match i32::from(p) * n {
                power @ -3..=3 => Ok((Op::Whole(Box::new(a), n), Kind::Quantity(power as i8))),
                _ => Err(Some(differ(span, say!("differ-power-beyond")))),
            },
            (Kind::Quantity(_), Kind::NUMBER, None) => Err(Some(differ(right.span, say!("differ-power-whole")))),
            _ => Err(Some(differ(span, say!("differ-raised", left = ka.words(), right = kb.words())))),
        }
    }

    /// Refuses a second frame beside a first.
    pub(super) fn one_frame(&self, first: Option<Frame>, other: Frame, span: Span) -> Result<Frame, Stop> {
        match first {
            Some(frame) if frame != other => Err(Some(other_frame(self.scope, frame, other, span))),
            _ => Ok(other),
        }
    }
}

/// A thing of `other` stands where one of `frame` is needed.
pub(super) fn other_frame(scope: &dyn Scope, frame: Frame, other: Frame, span: Span) -> Box<Finding> {
    let mut finding = problem(Code::OtherFrame, span);
    finding.words =
        vec![("name", "this".into()), ("other", scope.frame_name(other)), ("frame", scope.frame_name(frame))];
    finding
}

pub(super) fn differ(span: Span, words: String) -> Box<Finding> {
    let mut finding = problem(Code::KindsDiffer, span);
    finding.words = vec![("problem", words)];
    finding
}

fn wrong_kind(span: Span, found: Kind, what: What) -> Box<Finding> {
    let mut finding = problem(Code::WrongKind, span);
    finding.words = vec![("found", found.words()), ("expected", what.words())];
    finding
}

impl Checked {
    /// This formula where `what` is needed, in `frame` if one is given.
    pub fn must_be(self, what: What, frame: Option<Frame>, scope: &dyn Scope) -> Result<Self, Box<Finding>> {
        let span = self.program.span;
        if !what.fits(self.kind) {
            let mut finding = wrong_kind(span, self.kind, what);
            if self.kind == Kind::NUMBER
                && let Op::Constant(value) = self.program.root
                && let Some(unit) = match what {
                    What::Kind(Kind::LENGTH) => Some(scope.unit().sign()),
                    What::Kind(Kind::Angle) => Some("deg"),
                    _ => None,
                }
            {
                finding = problem(Code::UnitMissing, span);
                let by = format!("{value} {unit}");
                finding.words = vec![("found", format!("`{value}`")), ("hint", say!("did-you-mean", name = by))];
                finding.mend = Some(Mend { span, by });
            }
            return Err(finding);
        }
        match (frame, self.kind.frame()) {
            (Some(frame), Some(other)) if frame != other => Err(other_frame(scope, frame, other, span)),
            _ => Ok(self),
        }
    }
}
