//! Where a source can be changed by a little, so that a choice at run time still compiles: never in what is constant, in
//! patterns, types, array lengths or macros, and not in tests.

use std::ops::Range;

use proc_macro2::Span;
use syn::spanned::Spanned;
use syn::visit::{self, Visit};
use syn::{Attribute, BinOp, Block, Expr, Lit, Pat, RangeLimits, Stmt, UnOp};

/// Whether the mutant stands for a value or is a statement that is left out.
#[derive(Clone, Copy, PartialEq, Eq)]
pub enum Form {
    Expression,
    Statement,
}

/// One change at one place.
pub struct Place {
    pub start: usize,
    pub end: usize,
    pub line: usize,
    pub kind: &'static str,
    /// What is shown of the place as it is.
    pub before: String,
    /// What would stand there; nothing where a statement is left out.
    pub after: String,
    pub form: Form,
}

/// Methods, each with the one that it is taken for.
const SWAPPED: [(&str, &str); 15] = [
    ("min", "max"),
    ("max", "min"),
    ("min_by", "max_by"),
    ("max_by", "min_by"),
    ("min_by_key", "max_by_key"),
    ("max_by_key", "min_by_key"),
    ("any", "all"),
    ("all", "any"),
    ("floor", "ceil"),
    ("ceil", "floor"),
    ("is_some", "is_none"),
    ("is_none", "is_some"),
    ("first", "last"),
    ("last", "first"),
    ("next", "last"),
];

/// Every place of a source, in order.
pub fn places(text: &str) -> Result<Vec<Place>, String> {
    let file = syn::parse_file(text).map_err(|e| e.to_string())?;
    let mut finder = Finder { text, found: Vec::new() };
    finder.visit_file(&file);
    finder.found.sort_by_key(|p| (p.start, p.end));
    Ok(finder.found)
}

struct Finder<'t> {
    text: &'t str,
    found: Vec<Place>,
}

impl Finder<'_> {
    fn words(&self, range: Range<usize>) -> &str {
        &self.text[range]
    }

    fn add(&mut self, kind: &'static str, span: Span, after: String) {
        let Range { start, end } = span.byte_range();
        let before = self.words(start..end).to_owned();
        self.found.push(Place { start, end, line: span.start().line, kind, before, after, form: Form::Expression });
    }

    /// The same words with one sign in another's place.
    fn replace(&mut self, kind: &'static str, whole: Span, sign: Span, by: &str) {
        let (whole_at, sign_at) = (whole.byte_range(), sign.byte_range());
        let after =
            format!("{}{by}{}", self.words(whole_at.start..sign_at.start), self.words(sign_at.end..whole_at.end));
        self.add(kind, whole, after);
    }

    fn leave_out(&mut self, kind: &'static str, statement: &Stmt) {
        let span = statement.span();
        let Range { start, end } = span.byte_range();
        let before = self.words(start..end).to_owned();
        let line = span.start().line;
        self.found.push(Place { start, end, line, kind, before, after: String::new(), form: Form::Statement });
    }

    /// A condition that is always so, or never. What takes a value apart must stay: the parts beside it are conditions.
    fn condition(&mut self, condition: &Expr, may_be_always: bool) {
        if let Expr::Binary(both) = condition
            && matches!(both.op, BinOp::And(_))
            && binds(condition)
        {
            self.condition(&both.left, may_be_always);
            self.condition(&both.right, may_be_always);
        } else if !binds(condition) {
            if may_be_always {
                self.add("condition always", condition.span(), "true".into());
            }
            self.add("condition never", condition.span(), "false".into());
        }
    }
}

/// Whether a condition has `let` in it.
fn binds(condition: &Expr) -> bool {
    match condition {
        Expr::Let(_) => true,
        Expr::Binary(both) => binds(&both.left) || binds(&both.right),
        _ => false,
    }
}

/// Whether this is there in tests only.
fn only_tested(attributes: &[Attribute]) -> bool {
    attributes.iter().any(|a| {
        a.path().is_ident("test")
            || a.path().is_ident("cfg") && a.parse_args::<syn::Path>().is_ok_and(|p| p.is_ident("test"))
    })
}

/// What may stand for an operator, with the kind of the change.
fn instead(op: &BinOp) -> &'static [(&'static str, &'static str)] {
    const EDGE: &str = "comparison at its edge";
    const TURNED: &str = "comparison turned";
    const COUNT: &str = "arithmetic";
    const LOGIC: &str = "and, or";
    match op {
        BinOp::Lt(_) => &[(EDGE, "<="), (TURNED, ">=")],
        BinOp::Le(_) => &[(EDGE, "<"), (TURNED, ">")],
        BinOp::Gt(_) => &[(EDGE, ">="), (TURNED, "<=")],
        BinOp::Ge(_) => &[(EDGE, ">"), (TURNED, "<")],
        BinOp::Eq(_) => &[(TURNED, "!=")],
        BinOp::Ne(_) => &[(TURNED, "==")],
        BinOp::Add(_) => &[(COUNT, "-")],
        BinOp::Sub(_) => &[(COUNT, "+")],
        BinOp::Mul(_) => &[(COUNT, "/")],
        BinOp::Div(_) | BinOp::Rem(_) => &[(COUNT, "*")],
        BinOp::AddAssign(_) => &[(COUNT, "-=")],
        BinOp::SubAssign(_) => &[(COUNT, "+=")],
        BinOp::MulAssign(_) => &[(COUNT, "/=")],
        BinOp::DivAssign(_) | BinOp::RemAssign(_) => &[(COUNT, "*=")],
        BinOp::And(_) => &[(LOGIC, "||")],
        BinOp::Or(_) => &[(LOGIC, "&&")],
        _ => &[],
    }
}

/// A number that is another: whole ones one more, others twice as much, nothing one.
fn other_number(literal: &Lit) -> Option<String> {
    match literal {
        Lit::Int(whole) => {
            let value: u128 = whole.base10_parse().ok()?;
            Some(format!("{}{}", value + 1, whole.suffix()))
        }
        Lit::Float(number) => {
            let value: f64 = number.base10_parse().ok()?;
            let other = if value == 0.0 { 1.0 } else { 2.0 * value };
            Some(format!("{other:?}{}", number.suffix()))
        }
        _ => None,
    }
}

impl<'a> Visit<'a> for Finder<'_> {
    fn visit_expr(&mut self, expression: &'a Expr) {
        let whole = expression.span();
        match expression {
            Expr::Binary(both) => {
                let logic = matches!(both.op, BinOp::And(_) | BinOp::Or(_));
                if !(logic && binds(expression)) {
                    for (kind, by) in instead(&both.op) {
                        self.replace(kind, whole, both.op.span(), by);
                    }
                }
            }
            Expr::Unary(one) => {
                let inner = self.words(one.expr.span().byte_range()).to_owned();
                match one.op {
                    UnOp::Not(_) => self.add("not dropped", whole, inner),
                    UnOp::Neg(_) => self.add("sign dropped", whole, inner),
                    _ => {}
                }
            }
            Expr::Lit(literal) => {
                if let Some(other) = other_number(&literal.lit) {
                    self.add("number", whole, other);
                }
            }
            Expr::If(choice) => self.condition(&choice.cond, true),
            // Always would be a loop without an end, which says little about tests.
            Expr::While(repeat) => self.condition(&repeat.cond, false),
            Expr::MethodCall(call) => {
                if let Some((_, by)) = SWAPPED.iter().find(|(name, _)| call.method == name) {
                    self.replace("method swapped", whole, call.method.span(), by);
                }
            }
            Expr::Range(range) => {
                if let Some(start) = range.start.as_ref().filter(|e| !matches!(***e, Expr::Lit(_))) {
                    let words = self.words(start.span().byte_range()).to_owned();
                    self.add("range start", start.span(), format!("({words}) + 1"));
                }
                if let Some(end) = range.end.as_ref().filter(|e| !matches!(***e, Expr::Lit(_))) {
                    let words = self.words(end.span().byte_range()).to_owned();
                    let by = if matches!(range.limits, RangeLimits::Closed(_)) { "- 1" } else { "+ 1" };
                    self.add("range end", end.span(), format!("({words}) {by}"));
                }
            }
            _ => {}
        }
        visit::visit_expr(self, expression);
    }

    fn visit_block(&mut self, block: &'a Block) {
        for statement in &block.stmts {
            match statement {
                Stmt::Expr(Expr::Return(_) | Expr::Break(_) | Expr::Continue(_), Some(_)) => {
                    self.leave_out("early end left out", statement);
                }
                Stmt::Expr(Expr::Call(_) | Expr::MethodCall(_) | Expr::Assign(_) | Expr::Try(_), Some(_)) => {
                    self.leave_out("statement left out", statement);
                }
                Stmt::Expr(Expr::Binary(_), Some(_)) => self.leave_out("statement left out", statement),
                _ => {}
            }
        }
        visit::visit_block(self, block);
    }

    /// Of a pattern only the condition behind it counts.
    fn visit_pat(&mut self, pattern: &'a Pat) {
        if let Pat::Guard(guarded) = pattern {
            self.condition(&guarded.guard, true);
            self.visit_expr(&guarded.guard);
        }
    }

    fn visit_expr_repeat(&mut self, repeat: &'a syn::ExprRepeat) {
        self.visit_expr(&repeat.expr);
    }

    fn visit_type(&mut self, _: &'a syn::Type) {}

    fn visit_generic_argument(&mut self, _: &'a syn::GenericArgument) {}

    fn visit_generics(&mut self, _: &'a syn::Generics) {}

    fn visit_expr_const(&mut self, _: &'a syn::ExprConst) {}

    fn visit_item_const(&mut self, _: &'a syn::ItemConst) {}

    fn visit_item_static(&mut self, _: &'a syn::ItemStatic) {}

    fn visit_impl_item_const(&mut self, _: &'a syn::ImplItemConst) {}

    fn visit_trait_item_const(&mut self, _: &'a syn::TraitItemConst) {}

    fn visit_variant(&mut self, _: &'a syn::Variant) {}

    fn visit_item_fn(&mut self, function: &'a syn::ItemFn) {
        if function.sig.constness.is_none() && !only_tested(&function.attrs) {
            visit::visit_item_fn(self, function);
        }
    }

    fn visit_impl_item_fn(&mut self, function: &'a syn::ImplItemFn) {
        if function.sig.constness.is_none() && !only_tested(&function.attrs) {
            visit::visit_impl_item_fn(self, function);
        }
    }

    fn visit_item_mod(&mut self, module: &'a syn::ItemMod) {
        if !only_tested(&module.attrs) {
            visit::visit_item_mod(self, module);
        }
    }
}
