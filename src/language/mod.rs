//! The drafting language: text, names, kinds, programs.
//!
//! Reads a formula to a tree, checks names and kinds against a [`Scope`] and makes a program that is evaluated once for
//! each size, over any [`Scalar`](crate::base::Scalar). What a curve is and where a name's value comes from is the
//! business of the [`Machine`] that runs the program.

mod arguments;
mod check;
mod evaluate;
mod functions;
mod kind;
mod lexer;
mod literals;
mod parser;
mod program;
mod spelling;
mod tidy;
mod tree;

pub use arguments::usage;
pub use check::{Checked, check, check_condition};
pub use evaluate::{Machine, Trouble, Value, evaluate};
pub use functions::{FUNCTIONS, Function, Gives, How, Parameter, SIDES, Signature, TURNS, Takes};
pub use kind::{Found, Frame, Kind, Scope, What};
pub use literals::{Literal, Step, coarsest_step, literal_text, literals, nudged};
pub use parser::{MAX_DEPTH, MAX_LETTERS, parse, parse_condition};
pub use program::{Comparison, Op, Program};
pub use spelling::nearest;
pub use tidy::tidy;
pub use tree::{Argument, ArgumentValue, Binary, Condition, Expr, Form, NamePart, Relation};
