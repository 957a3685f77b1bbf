//! Reading formulas, with findings for those that cannot be read.

use std::collections::BTreeMap;
use std::sync::Arc;

use super::plan::Formula;
use crate::base::{Code, Finding, Mend, Span, Unit};
use crate::language::{Condition, Expr, Frame, Scope, What, check, check_condition, parse, parse_condition};
use crate::texts::say;

/// Formulas that were read before, by their text.
#[derive(Debug, Default)]
pub(crate) struct ParseCache {
    read: BTreeMap<Box<str>, Result<Arc<Expr>, Box<Finding>>>,
}

/// More texts than this are not kept: then all are forgotten, which only costs time.
const MAX_KEPT: usize = 100_000;

impl ParseCache {
    fn get(&mut self, text: &str) -> Result<Arc<Expr>, Box<Finding>> {
        if let Some(known) = self.read.get(text) {
            return known.clone();
        }
        if self.read.len() >= MAX_KEPT {
            self.read.clear();
        }
        let result = parse(text).map(Arc::new);
        self.read.insert(text.into(), result.clone());
        result
    }
}

/// Reads formulas and gathers what is wrong with them.
pub(crate) struct FormulaReader<'a> {
    pub cache: &'a mut ParseCache,
    pub findings: Vec<Finding>,
    pub unit: Unit,
}

impl FormulaReader<'_> {
    /// Reads a formula of any kind. `dress` says what the finding is about.
    pub fn read_in(&mut self, text: &str, scope: &dyn Scope, dress: impl Fn(Finding) -> Finding) -> Option<Formula> {
        self.read_as(text, scope, What::Any, None, dress)
    }

    /// Reads a formula that must give `what`, in `frame` if one is given.
    pub fn read_as(
        &mut self,
        text: &str,
        scope: &dyn Scope,
        what: What,
        frame: Option<Frame>,
        dress: impl Fn(Finding) -> Finding,
    ) -> Option<Formula> {
        let checked = match self.cache.get(text) {
            Err(finding) => Err(Some(finding)),
            Ok(expr) => check(&expr, scope).and_then(|c| c.must_be(what, frame, scope).map_err(Some)),
        };
        match checked {
            Ok(checked) => Some(Formula { text: text.into(), program: Arc::new(checked.program), kind: checked.kind }),
            Err(None) => None,
            Err(Some(mut finding)) => {
                if finding.code == Code::FormulaEmpty {
                    finding.words.push(("expected", what.words()));
                }
                finding.mend = finding.mend.or_else(|| decimal_points(text, scope, what, frame));
                self.findings.push(dress(with_text(*finding, text)));
                None
            }
        }
    }

    /// Reads a condition; its two sides come as formulas that share its text.
    pub fn read_condition(
        &mut self,
        text: &str,
        scope: &dyn Scope,
        dress: impl Fn(Finding) -> Finding,
    ) -> (Option<Condition>, Option<(Formula, Formula)>) {
        let condition = match parse_condition(text) {
            Ok(condition) => condition,
            Err(mut finding) => {
                finding.words.push(("expected", say!("read-part-condition")));
                self.findings.push(dress(with_text(*finding, text)));
                return (None, None);
            }
        };
        match check_condition(&condition, scope) {
            Ok((left, right)) => {
                let side = |c: crate::language::Checked| Formula {
                    text: text.into(),
                    program: Arc::new(c.program),
                    kind: c.kind,
                };
                (Some(condition), Some((side(left), side(right))))
            }
            Err(None) => (Some(condition), None),
            Err(Some(finding)) => {
                self.findings.push(dress(with_text(*finding, text)));
                (Some(condition), None)
            }
        }
    }
}

/// Where a formula could be used if its commas between digits were decimal points, and `;` stood for `,`: that. Within brackets a comma
/// parts things, so it is only proposed.
fn decimal_points(text: &str, scope: &dyn Scope, what: What, frame: Option<Frame>) -> Option<Mend> {
    let letters: Vec<char> = text.chars().collect();
    let digit = |i: Option<usize>| i.and_then(|i| letters.get(i)).is_some_and(char::is_ascii_digit);
    let meant = |(i, letter): (usize, &char)| match letter {
        ',' if digit(i.checked_sub(1)) && digit(Some(i + 1)) => '.',
        ';' => ',',
        other => *other,
    };
    let by: String = letters.iter().enumerate().map(meant).collect();
    let fits = || check(&parse(&by).ok()?, scope).ok()?.must_be(what, frame, scope).ok();
    (by != text && fits().is_some()).then_some(Mend { span: Span::new(0, text.len()), by })
}

/// A finding of the language with the formula's text in it.
fn with_text(mut finding: Finding, text: &str) -> Finding {
    finding.formula = text.to_owned();
    let span = finding.span.unwrap_or_default();
    for (name, word) in &mut finding.words {
        if *name == "name" && word == "this" {
            *word = format!("`{}`", span.of(text));
        }
    }
    finding
}
