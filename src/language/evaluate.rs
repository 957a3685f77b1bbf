//! Running a program.

use super::functions::Function;
use super::program::{Comparison, Op, Program};
use crate::base::{Scalar, Span, round_half_away};
use crate::texts::id;

/// A value while a program runs. Kinds were checked before.
#[derive(Clone, Debug, PartialEq)]
pub enum Value<S, E> {
    /// A number, length, area …, or angle.
    Real(S),
    /// A point or offset.
    Pair(S, S),
    /// An endless line: a point on it and its unit direction.
    Line([S; 2], [S; 2]),
    /// An edge.
    Edge(E),
    /// Yes or no.
    Truth(bool),
    /// A place on an edge or a way, told as a fraction of it.
    Share(S),
}

/// Why a formula has no value in one size.
#[derive(Clone, Debug, PartialEq)]
pub enum Trouble {
    /// Something that it needs has none, which is reported there.
    Upstream,
    /// The result is not finite: the id of the words that say why.
    NotFinite(&'static str),
    /// A place outside an edge: the place and the edge's length, mm.
    OffTheEdge(f64, f64),
    /// A point that is not on an edge: its distance, mm.
    NotOnEdge(f64),
    /// A construction without answer: the id of the words that say why.
    NoAnswer(&'static str),
    /// More than one answer where none was chosen: how many.
    Several(u32),
    /// Nothing lies where it was asked for, which is no fault.
    Nothing,
    /// A place in the mouth of a dart, pleat or tuck of this name.
    InsideMouth(String),
}

/// What gives names their values and functions of geometry their meaning.
pub trait Machine<S: Scalar> {
    /// What an edge is.
    type Edge: Clone;
    /// The value of a symbol.
    fn load(&self, symbol: u32) -> Result<Value<S, Self::Edge>, Trouble>;
    /// The value of a function that is not mere arithmetic.
    fn call(&self, function: Function, arguments: &[Value<S, Self::Edge>]) -> Result<Value<S, Self::Edge>, Trouble>;
}

/// Runs a program. The trouble comes with the span of the part that has no value.
pub fn evaluate<S: Scalar, M: Machine<S>>(
    program: &Program,
    machine: &M,
) -> Result<Value<S, M::Edge>, (Trouble, Span)> {
    let value = run(&program.root, machine, program.span)?;
    let finite = match &value {
        Value::Real(a) => a.value().is_finite(),
        Value::Pair(a, b) => a.value().is_finite() && b.value().is_finite(),
        Value::Line(p, d) => p.iter().chain(d).all(|v| v.value().is_finite()),
        Value::Edge(_) | Value::Truth(_) => true,
        Value::Share(a) => a.value().is_finite(),
    };
    if finite { Ok(value) } else { Err((Trouble::NotFinite(id!("answer-too-large")), program.span)) }
}

type Ran<S, M> = Result<Value<S, <M as Machine<S>>::Edge>, (Trouble, Span)>;

fn run<S: Scalar, M: Machine<S>>(op: &Op, machine: &M, span: Span) -> Ran<S, M> {
    Ok(match op {
        Op::Constant(c) => Value::Real(S::constant(*c)),
        Op::Truth(t) => Value::Truth(*t),
        Op::Load(symbol) => return machine.load(*symbol).map_err(|t| (t, span)),
        Op::Negate(a) => match run(a, machine, span)? {
            Value::Real(a) => Value::Real(-a),
            Value::Pair(x, y) => Value::Pair(-x, -y),
            other => other,
        },
        Op::Not(a) => Value::Truth(!truth(&run(a, machine, span)?)),
        Op::Add(a, b) => sum(&run(a, machine, span)?, &run(b, machine, span)?, |a, b| a + b),
        Op::Subtract(a, b) => sum(&run(a, machine, span)?, &run(b, machine, span)?, |a, b| a - b),
        Op::Multiply(a, b) => {
            let (a, b) = (run(a, machine, span)?, run(b, machine, span)?);
            match (a, b) {
                (Value::Pair(x, y), b) => Value::Pair(x * real(&b), y * real(&b)),
                (a, Value::Pair(x, y)) => Value::Pair(real(&a) * x, real(&a) * y),
                (a, b) => Value::Real(real(&a) * real(&b)),
            }
        }
        Op::Divide(a, b, at) => {
            let (a, b) = (run(a, machine, span)?, real(&run(b, machine, span)?));
            if b.value() == 0.0 {
                return Err((Trouble::NotFinite(id!("answer-by-zero")), *at));
            }
            match a {
                Value::Pair(x, y) => Value::Pair(x / b, y / b),
                a => Value::Real(real(&a) / b),
            }
        }
        Op::Whole(a, n) => {
            let a = real(&run(a, machine, span)?);
            if a.value() == 0.0 && *n < 0 {
                return Err((Trouble::NotFinite(id!("answer-by-zero")), span));
            }
            Value::Real(a.powi(*n))
        }
        Op::Power(a, b) => {
            let power = real(&run(a, machine, span)?).powf(real(&run(b, machine, span)?));
            if !power.value().is_finite() {
                return Err((Trouble::NotFinite(id!("answer-no-power")), span));
            }
            Value::Real(power)
        }
        Op::And(a, b) => Value::Truth(truth(&run(a, machine, span)?) && truth(&run(b, machine, span)?)),
        Op::Or(a, b) => Value::Truth(truth(&run(a, machine, span)?) || truth(&run(b, machine, span)?)),
        Op::Compare(how, a, b) => {
            let (a, b) = (real(&run(a, machine, span)?).value(), real(&run(b, machine, span)?).value());
            Value::Truth(match how {
                Comparison::Less => a < b,
                Comparison::LessEqual => a <= b,
                Comparison::More => a > b,
                Comparison::MoreEqual => a >= b,
            })
        }
        Op::If(condition, then, otherwise) => {
            let taken = if truth(&run(condition, machine, span)?) { then } else { otherwise };
            return run(taken, machine, span);
        }
        Op::Share(a) => Value::Share(real(&run(a, machine, span)?)),
        Op::Pair(x, y) => Value::Pair(real(&run(x, machine, span)?), real(&run(y, machine, span)?)),
        Op::Call(function, arguments, at) => {
            let one = |argument: &Op| run(argument, machine, *at);
            let call = |values: &[Value<S, M::Edge>]| match arithmetic(*function, values) {
                Some(value) => value.map_err(|t| (t, *at)),
                None => machine.call(*function, values).map_err(|t| (t, *at)),
            };
            // Nearly all have few, which then need no memory of their own.
            return match arguments.as_slice() {
                [a] => call(&[one(a)?]),
                [a, b] => call(&[one(a)?, one(b)?]),
                [a, b, c] => call(&[one(a)?, one(b)?, one(c)?]),
                all => call(&all.iter().map(one).collect::<Result<Vec<_>, _>>()?),
            };
        }
    })
}

fn real<S: Scalar, E>(value: &Value<S, E>) -> S {
    match value {
        Value::Real(a) => *a,
        // Kinds were checked; a wrong one must not pass as a number.
        _ => S::constant(f64::NAN),
    }
}

fn truth<S, E>(value: &Value<S, E>) -> bool {
    matches!(value, Value::Truth(true))
}

fn sum<S: Scalar, E>(a: &Value<S, E>, b: &Value<S, E>, put: fn(S, S) -> S) -> Value<S, E> {
    match (a, b) {
        (Value::Pair(ax, ay), Value::Pair(bx, by)) => Value::Pair(put(*ax, *bx), put(*ay, *by)),
        _ => Value::Real(put(real(a), real(b))),
    }
}

/// Functions that need nothing but numbers; `None` for all others.
fn arithmetic<S: Scalar, E>(function: Function, values: &[Value<S, E>]) -> Option<Result<Value<S, E>, Trouble>> {
    let n = |i: usize| values.get(i).map_or(S::constant(f64::NAN), real);
    let choose = |better: fn(f64, f64) -> bool| {
        values.iter().skip(1).map(real).fold(n(0), |best, v| if better(v.value(), best.value()) { v } else { best })
    };
    let result = match function {
        Function::Abs => n(0).abs(),
        Function::Min => choose(|a, b| a < b),
        Function::Max => choose(|a, b| a > b),
        Function::Round => {
            let step = values.get(1).map_or(1.0, |v| real(v).value());
            if step <= 0.0 {
                return Some(Err(Trouble::NoAnswer(id!("answer-round-step"))));
            }
            S::constant(round_half_away(n(0).value(), step))
        }
        Function::Sqrt => {
            if n(0).value() < 0.0 {
                return Some(Err(Trouble::NotFinite(id!("answer-no-root"))));
            }
            n(0).sqrt()
        }
        Function::Sin => n(0).sin(),
        Function::Cos => n(0).cos(),
        Function::Tan => n(0).tan(),
        Function::Asin | Function::Acos if n(0).value().abs() > 1.0 => {
            return Some(Err(Trouble::NotFinite(id!("answer-beyond-one"))));
        }
        Function::Asin => n(0).asin(),
        Function::Acos => n(0).acos(),
        Function::Atan => n(0).atan(),
        Function::Near => {
            return Some(Ok(Value::Truth((n(0) - n(1)).value().abs() <= n(2).value())));
        }
        Function::Graded => return Some(graded(values)),
        Function::Offset => return Some(Ok(Value::Pair(n(0), n(1)))),
        Function::X | Function::Y => match values.first() {
            Some(Value::Pair(x, y)) => {
                if function == Function::X {
                    *x
                } else {
                    *y
                }
            }
            _ => S::constant(f64::NAN),
        },
        _ => return None,
    };
    Some(Ok(Value::Real(result)))
}

/// `by`, then the steps, then as many values.
fn graded<S: Scalar, E>(values: &[Value<S, E>]) -> Result<Value<S, E>, Trouble> {
    let count = (values.len() - 1) / 2;
    let step = |i: usize| real(&values[1 + i]);
    let give = |i: usize| real(&values[1 + count + i]);
    if (1..count).any(|i| step(i).value() <= step(i - 1).value()) {
        return Err(Trouble::NoAnswer(id!("answer-steps-rise")));
    }
    let by = real(&values[0]);
    if by.value() <= step(0).value() {
        return Ok(Value::Real(give(0)));
    }
    match (1..count).find(|i| by.value() <= step(*i).value()) {
        None => Ok(Value::Real(give(count - 1))),
        Some(i) => {
            let share = (by - step(i - 1)) / (step(i) - step(i - 1));
            Ok(Value::Real(give(i - 1) + (give(i) - give(i - 1)) * share))
        }
    }
}
