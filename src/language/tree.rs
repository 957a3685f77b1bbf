//! The tree of a formula, as it was written.

use crate::base::{Span, Unit};

/// A part of a formula, with its place in the text.
#[derive(Clone, Debug, PartialEq)]
pub struct Expr {
    /// Where it stands.
    pub span: Span,
    /// What it is.
    pub form: Form,
}

/// One part of a dotted name.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NamePart {
    /// The word.
    pub text: String,
    /// Where it stands.
    pub span: Span,
}

/// What a part of a formula is.
#[derive(Clone, Debug, PartialEq)]
pub enum Form {
    /// A number with the unit behind it.
    Number(f64, Option<Unit>),
    /// `yes` or `no`.
    Truth(bool),
    /// `pi`.
    Pi,
    /// A name, possibly dotted.
    Name(Vec<NamePart>),
    /// A function and its arguments; what stood before a dot is the first one.
    Call(NamePart, Vec<Argument>),
    /// A point by its coordinates.
    Pair(Box<Expr>, Box<Expr>),
    /// Minus.
    Negate(Box<Expr>),
    /// Not.
    Not(Box<Expr>),
    /// Two parts and what stands between them.
    Binary(Binary, Box<Expr>, Box<Expr>),
}

/// What can stand between two parts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Binary {
    /// Plus.
    Add,
    /// Minus.
    Subtract,
    /// Times.
    Multiply,
    /// Over.
    Divide,
    /// To the power of.
    Power,
    /// Both.
    And,
    /// At least one.
    Or,
    /// Less.
    Less,
    /// Less or equal.
    LessEqual,
    /// More.
    More,
    /// More or equal.
    MoreEqual,
}

/// An argument of a function.
#[derive(Clone, Debug, PartialEq)]
pub struct Argument {
    /// Its name, if it was given one.
    pub name: Option<NamePart>,
    /// Where its value stands.
    pub span: Span,
    /// Its value.
    pub value: ArgumentValue,
}

impl Argument {
    /// Whether its value is a word of the language: `side: right`, `turn: clockwise`.
    pub fn is_word(&self) -> bool {
        let bare = matches!(&self.value, ArgumentValue::One(Expr { form: Form::Name(parts), .. }) if parts.len() == 1);
        bare && self.name.as_ref().is_some_and(|n| matches!(n.text.as_str(), "side" | "turn"))
    }
}

/// The value of an argument.
#[derive(Clone, Debug, PartialEq)]
pub enum ArgumentValue {
    /// A formula.
    One(Expr),
    /// A list of formulas.
    List(Vec<Expr>),
    /// Words, such as the label of a size.
    Text(String),
}

/// What a condition says of its two sides.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Relation {
    /// They are to be equal: an equation.
    Equal,
    /// A comparison that is watched.
    Compared(Binary),
}

/// A condition: two formulas and what is to hold between them.
#[derive(Clone, Debug, PartialEq)]
pub struct Condition {
    /// The left side.
    pub left: Expr,
    /// What is to hold.
    pub relation: Relation,
    /// The right side.
    pub right: Expr,
}

impl Expr {
    /// Calls `visit` for each dotted name in it, also those whose last part may turn out to be a function's.
    pub fn each_name(&self, visit: &mut dyn FnMut(&[NamePart])) {
        match &self.form {
            Form::Number(..) | Form::Truth(_) | Form::Pi => {}
            Form::Name(parts) => visit(parts),
            Form::Call(_, arguments) => {
                for argument in arguments {
                    match &argument.value {
                        // A word of the language, whatever else is called so.
                        ArgumentValue::One(_) if argument.is_word() => {}
                        ArgumentValue::One(expr) => expr.each_name(visit),
                        ArgumentValue::List(list) => list.iter().for_each(|e| e.each_name(visit)),
                        ArgumentValue::Text(_) => {}
                    }
                }
            }
            Form::Negate(a) | Form::Not(a) => a.each_name(visit),
            Form::Pair(a, b) | Form::Binary(_, a, b) => {
                a.each_name(visit);
                b.each_name(visit);
            }
        }
    }
}
