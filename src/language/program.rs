//! What the checker makes of a formula: a program without names and kinds.

use super::functions::Function;
use crate::base::Span;

/// How two values are compared.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Comparison {
    /// `<`
    Less,
    /// `<=`
    LessEqual,
    /// `>`
    More,
    /// `>=`
    MoreEqual,
}

/// A step of a program.
#[derive(Clone, Debug, PartialEq)]
pub enum Op {
    /// A number inside: mm, mm2, radians or plain.
    Constant(f64),
    /// Yes or no.
    Truth(bool),
    /// The value of a symbol.
    Load(u32),
    /// Minus.
    Negate(Box<Op>),
    /// Not.
    Not(Box<Op>),
    /// Plus, also of pairs.
    Add(Box<Op>, Box<Op>),
    /// Minus, also of pairs.
    Subtract(Box<Op>, Box<Op>),
    /// Times; the right one is not a pair.
    Multiply(Box<Op>, Box<Op>),
    /// Over; the right one is not a pair.
    Divide(Box<Op>, Box<Op>, Span),
    /// Whole power.
    Whole(Box<Op>, i32),
    /// Power of plain numbers.
    Power(Box<Op>, Box<Op>),
    /// Both; the second is looked at only if needed.
    And(Box<Op>, Box<Op>),
    /// At least one; the second is looked at only if needed.
    Or(Box<Op>, Box<Op>),
    /// A comparison.
    Compare(Comparison, Box<Op>, Box<Op>),
    /// One of two.
    If(Box<Op>, Box<Op>, Box<Op>),
    /// A point or offset.
    Pair(Box<Op>, Box<Op>),
    /// A fraction where a place is wanted.
    Share(Box<Op>),
    /// A function.
    Call(Function, Vec<Op>, Span),
}

impl Op {
    /// Shows `visit` this step and all those in it.
    pub fn each(&self, visit: &mut dyn FnMut(&Self)) {
        visit(self);
        match self {
            Self::Constant(_) | Self::Truth(_) | Self::Load(_) => {}
            Self::Negate(a) | Self::Not(a) | Self::Whole(a, _) | Self::Share(a) => a.each(visit),
            Self::Add(a, b)
            | Self::Subtract(a, b)
            | Self::Multiply(a, b)
            | Self::Divide(a, b, _)
            | Self::Power(a, b)
            | Self::And(a, b)
            | Self::Or(a, b)
            | Self::Compare(_, a, b)
            | Self::Pair(a, b) => {
                a.each(visit);
                b.each(visit);
            }
            Self::If(a, b, c) => {
                a.each(visit);
                b.each(visit);
                c.each(visit);
            }
            Self::Call(_, arguments, _) => arguments.iter().for_each(|a| a.each(visit)),
        }
    }
}

/// A formula that has been checked, ready to be evaluated in each size.
#[derive(Clone, Debug, PartialEq)]
pub struct Program {
    /// Its last step.
    pub root: Op,
    /// The whole formula's span.
    pub span: Span,
}
