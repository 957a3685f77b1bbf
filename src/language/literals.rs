//! The numbers in a formula, and changing one of them as a pull on the canvas does.
//!
//! Arithmetic here is in whole numbers over whole numbers, so that nudging twice is nudging the sum, to the last digit.

use super::parser::{parse, parse_condition};
use super::tree::{ArgumentValue, Binary, Condition, Expr, Form};
use crate::base::{Span, Unit, round_half_away};

/// A number in a formula.
#[derive(Clone, Debug, PartialEq)]
pub struct Literal {
    /// Where it stands, with its unit.
    pub span: Span,
    /// Its value inside: mm, radians or plain.
    pub value: f64,
    /// Its unit.
    pub unit: Option<Unit>,
    /// Whether it is written as a fraction, and over what.
    under: Option<i128>,
    /// Whether a pull may change it: no divisor, exponent, count, tolerance or place in a table.
    pub pullable: bool,
}

/// How finely a literal is changed, in its own unit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Step {
    over: i128,
    under: i128,
}

/// Numbers above and below this are not changed.
const MOST: i128 = 1_000_000_000_000_000_000;
/// The finest decimal step is one over ten to this power; the finest fraction one over two to this power.
const FINEST: u32 = 9;

/// All numbers of a formula or condition, in the order of the text; none where it cannot be read.
pub fn literals(text: &str) -> Vec<Literal> {
    let mut finder = Finder { text, found: Vec::new() };
    match parse(text) {
        Ok(expr) => finder.walk(&expr, true),
        Err(_) => {
            if let Ok(Condition { left, right, .. }) = parse_condition(text) {
                finder.walk(&left, true);
                finder.walk(&right, true);
            }
        }
    }
    finder.found.sort_by_key(|l| l.span);
    finder.found
}

struct Finder<'a> {
    text: &'a str,
    found: Vec<Literal>,
}

impl Finder<'_> {
    fn walk(&mut self, expr: &Expr, pullable: bool) {
        match &expr.form {
            Form::Number(value, unit) => self.number(expr.span, *value, *unit, pullable),
            Form::Truth(_) | Form::Pi | Form::Name(_) => {}
            Form::Pair(a, b) => {
                self.walk(a, pullable);
                self.walk(b, pullable);
            }
            Form::Negate(a) | Form::Not(a) => self.walk(a, pullable),
            Form::Binary(op, a, b) => match op {
                Binary::Divide if self.quotient(a, b, expr.span.end, pullable) => {}
                Binary::Divide | Binary::Power => {
                    self.walk(a, pullable);
                    self.walk(b, false);
                }
                Binary::Add | Binary::Subtract | Binary::Multiply => {
                    self.walk(a, pullable);
                    self.walk(b, pullable);
                }
                _ => {
                    self.walk(a, false);
                    self.walk(b, false);
                }
            },
            Form::Call(function, arguments) => {
                for (i, argument) in arguments.iter().enumerate() {
                    let name = argument.name.as_ref().map(|n| n.text.as_str());
                    let fixed = match function.text.as_str() {
                        "round" => i == 1,
                        "near" => true,
                        "if" => i == 0,
                        "graded" => name != Some("give"),
                        _ => false,
                    };
                    match &argument.value {
                        ArgumentValue::One(expr) => self.walk(expr, pullable && !fixed),
                        ArgumentValue::List(list) => list.iter().for_each(|e| self.walk(e, pullable && !fixed)),
                        ArgumentValue::Text(_) => {}
                    }
                }
            }
        }
    }

    /// A span without the brackets around the number.
    fn bare(&self, mut span: Span) -> Span {
        loop {
            let text = span.of(self.text);
            let inner = text.strip_prefix('(').and_then(|t| t.strip_suffix(')'));
            let Some(inner) = inner else { return span };
            let start = span.start + 1 + (inner.len() - inner.trim_start().len());
            span = Span::new(start, start + inner.trim().len());
        }
    }

    fn number(&mut self, span: Span, value: f64, unit: Option<Unit>, pullable: bool) {
        let span = self.bare(span);
        let (times, over) = unit.map_or((1.0, 1.0), Unit::inside);
        let under = match span.of(self.text).split_once('/') {
            Some((_, rest)) => {
                let rest = rest.trim_start();
                rest.find(|c: char| !c.is_ascii_digit()).and_then(|end| rest[..end].parse().ok())
            }
            // Whole inches become halves and quarters, as they came from them.
            None => (unit == Some(Unit::Inch) && !span.of(self.text).contains('.')).then_some(1),
        };
        let counts = unit.is_none() && !span.of(self.text).contains('.');
        self.found.push(Literal { span, value: value * times / over, unit, under, pullable: pullable && !counts });
    }

    /// A bare `1/3`, maybe with a minus before it; says whether it is one.
    fn quotient(&mut self, a: &Expr, b: &Expr, end: usize, pullable: bool) -> bool {
        let a = if let Form::Negate(inner) = &a.form { inner } else { a };
        if !is_count(a) || !is_count(b) {
            return false;
        }
        let span = self.bare(Span::new(a.span.start, end));
        let text = span.of(self.text);
        let Some((over, under)) = text.split_once('/') else { return false };
        let (Ok(over), Ok(under)) = (over.trim().parse::<i128>(), under.trim().parse::<i128>()) else { return false };
        if under != 0 {
            let value = over as f64 / under as f64;
            self.found.push(Literal { span, value, unit: None, under: Some(under), pullable });
        }
        under != 0
    }
}

/// A whole number without a unit.
fn is_count(expr: &Expr) -> bool {
    matches!(expr.form, Form::Number(v, None) if v.fract() == 0.0 && v >= 0.0)
}

/// A number as a whole number over a whole number.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Ratio(i128, i128);

impl Ratio {
    fn plus(self, other: Self) -> Option<Self> {
        let common = self.1 / greatest(self.1, other.1) * other.1;
        let sum = self.0.checked_mul(common / self.1)?.checked_add(other.0.checked_mul(common / other.1)?)?;
        let by = greatest(sum, common);
        let out = Self(sum / by, common / by);
        (out.0.abs() < MOST && out.1 < MOST).then_some(out)
    }
}

fn greatest(a: i128, b: i128) -> i128 {
    let (mut a, mut b) = (a.abs(), b.abs());
    while b != 0 {
        (a, b) = (b, a % b);
    }
    a.max(1)
}

/// The digits of a literal: `8.4`, `3/8`, `1 1/2`.
fn ratio_of(digits: &str) -> Option<Ratio> {
    let digits = digits.trim();
    if let Some((over, under)) = digits.split_once('/') {
        let (whole, over) = over.trim().rsplit_once(' ').map_or(("0", over.trim()), |(w, o)| (w.trim(), o));
        let (whole, over, under): (i128, i128, i128) =
            (whole.parse().ok()?, over.parse().ok()?, under.trim().parse().ok()?);
        return Ratio(whole, 1).plus(Ratio(over, under)).filter(|_| under != 0);
    }
    let (whole, part) = digits.split_once('.').unwrap_or((digits, ""));
    if part.len() > 15 {
        return None;
    }
    let under = 10i128.pow(part.len() as u32);
    let over: i128 = format!("{whole}{part}").parse().ok()?;
    Ratio(over, under).plus(Ratio(0, 1))
}

/// Digits and what stands behind them: the unit with the space before it.
fn split(text: &str) -> (&str, &str) {
    let end = text.find(|c: char| !(c.is_ascii_digit() || matches!(c, '.' | '/' | ' '))).unwrap_or(text.len());
    let digits = text[..end].trim_end();
    (digits, &text[digits.len()..])
}

/// The coarsest step of a literal at which rounding moves the point by less than `tolerance`, mm.
///
/// `effect` is how far the point moves for one unit inside (mm, radian or 1). Powers of ten of the literal's own unit; of a
/// fraction, powers of two of what stands under its line.
pub fn coarsest_step(literal: &Literal, effect: f64, tolerance: f64) -> Step {
    let (times, over) = literal.unit.map_or((1.0, 1.0), Unit::inside);
    let moved = (effect * times / over).abs();
    let fits = |step: f64| step / 2.0 * moved < tolerance;
    if let Some(under) = literal.under {
        let finer = (0..=FINEST).map(|k| under << k).find(|u| fits(1.0 / *u as f64));
        return Step { over: 1, under: finer.unwrap_or(under << FINEST) };
    }
    let coarse = (0..=3u32).rev().map(|k| Step { over: 10i128.pow(k), under: 1 });
    let fine = (1..=FINEST).map(|k| Step { over: 1, under: 10i128.pow(k) });
    let finest = Step { over: 1, under: 10i128.pow(FINEST) };
    coarse.chain(fine).find(|s| fits(s.over as f64 / s.under as f64)).unwrap_or(finest)
}

/// The text with a literal changed by `by` (inside), rounded to whole steps. All else stays as typed; where the number
/// changes its sign, the sign in front of it does.
pub fn nudged(text: &str, literal: &Literal, by: f64, step: Step) -> Option<String> {
    let (times, over) = literal.unit.map_or((1.0, 1.0), Unit::inside);
    let steps = round_half_away(by * over / times * step.under as f64 / step.over as f64, 1.0);
    if !steps.is_finite() || steps.abs() >= MOST as f64 {
        return None;
    }
    let own = literal.span.of(text);
    let (digits, unit) = split(own);
    let change = Ratio((steps as i128).checked_mul(step.over)?, step.under).plus(Ratio(0, 1))?;
    if change.0 == 0 {
        return Some(text.to_owned());
    }
    let sum = ratio_of(digits)?.plus(change)?;
    let shown = format!("{}{unit}", written(Ratio(sum.0.abs(), sum.1), literal)?);
    let (before, after) = (text.get(..literal.span.start)?, text.get(literal.span.end..)?);
    if sum.0 >= 0 {
        return Some(format!("{before}{shown}{after}"));
    }
    Some(negative(before, &shown, after))
}

/// The text with a number that became negative.
fn negative(before: &str, shown: &str, after: &str) -> String {
    let powered = after.trim_start().starts_with('^');
    let head = before.trim_end();
    let gap = &before[head.len()..];
    let (sign, front) = match head.chars().last() {
        Some(sign @ ('+' | '-')) if !powered => (Some(sign), head[..head.len() - 1].trim_end()),
        other => (other, head),
    };
    let behind_operand =
        front.chars().last().is_some_and(|c| c.is_alphanumeric() || matches!(c, '_' | ')' | ']' | '%' | '°' | '"'));
    let signed = &head[..head.len().saturating_sub(1)];
    match sign {
        Some('+') if !powered && behind_operand => format!("{signed}-{gap}{shown}{after}"),
        Some('-') if !powered && behind_operand => format!("{signed}+{gap}{shown}{after}"),
        // A minus of its own in front goes away.
        Some('-') if !powered => format!("{signed}{shown}{after}"),
        None | Some('(' | ',' | '[' | ':') if !powered => format!("{before}-{shown}{after}"),
        _ => format!("{before}(-{shown}){after}"),
    }
}

/// A number in the style of a literal: a decimal or a fraction.
fn written(value: Ratio, literal: &Literal) -> Option<String> {
    let Ratio(over, under) = value;
    if literal.under.is_some() {
        if literal.unit.is_none() {
            // `3/3` stays a fraction, so that it can be pulled again.
            let by = if under == 1 { literal.under? } else { 1 };
            return Some(format!("{}/{}", over * by, under * by));
        }
        let (whole, rest) = (over / under, over % under);
        return Some(match (whole, rest) {
            (whole, 0) => whole.to_string(),
            (0, rest) => format!("{rest}/{under}"),
            (whole, rest) => format!("{whole} {rest}/{under}"),
        });
    }
    let decimals = (0..=18u32).find(|k| 10i128.pow(*k) % under == 0)?;
    let scaled = over.checked_mul(10i128.pow(decimals) / under)?;
    let unit = 10i128.pow(decimals);
    Some(match decimals {
        // A plain `1.0` is a factor; a plain `1` would be a count.
        0 if literal.unit.is_none() => format!("{scaled}.0"),
        0 => scaled.to_string(),
        _ => format!("{}.{:0width$}", scaled / unit, scaled % unit, width = decimals as usize),
    })
}

/// A number inside as a literal, to nine places of its unit.
pub fn literal_text(value: f64, unit: Option<Unit>) -> String {
    let (times, over) = unit.map_or((1.0, 1.0), Unit::inside);
    let rounded = (value * over / times * 1e9).round() / 1e9;
    // No minus in front of nothing.
    let rounded = if rounded == 0.0 { 0.0 } else { rounded };
    unit.map_or_else(|| format!("{rounded}"), |u| format!("{rounded} {}", u.sign()))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;
    use proptest::prelude::*;

    fn nudge(text: &str, which: usize, by: f64, effect: f64) -> String {
        let literal = literals(text).into_iter().filter(|l| l.pullable).nth(which).unwrap();
        nudged(text, &literal, by, coarsest_step(&literal, effect, 0.1)).unwrap()
    }

    #[test]
    fn numbers_change_in_their_own_unit_and_style() {
        // Formula, which pullable number, by (inside), mm moved for one inside; what comes out.
        for (text, which, by, effect, expected) in [
            ("neck.down(8 cm)", 0, 4.0, 1.0, "neck.down(8.4 cm)"),
            ("neck.down(8 cm)", 0, 4.13, 1.0, "neck.down(8.41 cm)"),
            ("neck.down(8cm)", 0, -3.0, 1.0, "neck.down(7.7cm)"),
            ("neck.down(84 mm)", 0, 4.13, 1.0, "neck.down(88.1 mm)"),
            ("neck.down(8.125 cm)", 0, 4.1, 1.0, "neck.down(8.535 cm)"),
            ("neck.down(3/8 in)", 0, 25.4 / 8.0, 1.0, "neck.down(1/2 in)"),
            ("neck.down(7/8 in)", 0, 25.4 / 4.0, 1.0, "neck.down(1 1/8 in)"),
            ("neck.down(1 1/2 in)", 0, 12.7, 1.0, "neck.down(2 in)"),
            ("neck.down(1 1/2 in)", 0, -38.1, 1.0, "neck.down(0 in)"),
            ("neck.down(3/8 in)", 0, 1.0, 1.0, "neck.down(53/128 in)"),
            ("tip.polar(22.5°, 3 cm)", 0, 0.01, 100.0, "tip.polar(23.1°, 3 cm)"),
            ("tip.polar(22.5°, 3 cm)", 1, 1.0, 1.0, "tip.polar(22.5°, 3.1 cm)"),
            ("on_way(a, b, 1/3)", 0, 0.01, 100.0, "on_way(a, b, 11/32)"),
            ("on_way(a, b, 2/3)", 0, 1.0 / 3.0, 100.0, "on_way(a, b, 3/3)"),
            ("0.35 * gap(tip, pitch)", 0, 0.0101, 100.0, "0.36 * gap(tip, pitch)"),
            ("0.35 * gap(tip, pitch)", 0, 0.65, 100.0, "1.0 * gap(tip, pitch)"),
            ("15 % * waist", 0, 0.01, 700.0, "16 % * waist"),
            ("bust/4 + 1 cm", 0, 5.0, 1.0, "bust/4 + 1.5 cm"),
            ("bust/4 + 1 cm", 0, -25.0, 1.0, "bust/4 - 1.5 cm"),
            ("bust/4 - 1 cm", 0, -25.0, 1.0, "bust/4 + 1.5 cm"),
            ("bust/4+1 cm", 0, -25.0, 1.0, "bust/4-1.5 cm"),
            ("neck.down(1 cm)", 0, -15.0, 1.0, "neck.down(-0.5 cm)"),
            ("neck.down(-1 cm)", 0, -15.0, 1.0, "neck.down(0.5 cm)"),
            ("neck.down( 1 cm )", 0, -15.0, 1.0, "neck.down( -0.5 cm )"),
            ("(0 cm, -2 cm)", 1, -30.0, 1.0, "(0 cm, 1 cm)"),
            ("1 cm", 0, -15.0, 1.0, "-0.5 cm"),
            ("width * 0.5", 0, -1.0, 100.0, "width * (-0.5)"),
            ("(2 cm)^2", 0, -30.0, 1.0, "(-1 cm)^2"),
            ("graded(bust, at: [88 cm], give: [2 cm])", 0, 10.0, 1.0, "graded(bust, at: [88 cm], give: [3 cm])"),
            ("(8 cm + neck_1)", 0, 1.0, 1.0, "(8.1 cm + neck_1)"),
            ("if(bust > 90 cm, 2 cm, 1 cm)", 1, 1.0, 1.0, "if(bust > 90 cm, 2 cm, 1.1 cm)"),
            ("9.9999 cm", 0, 0.001, 100.0, "10 cm"),
            ("a = 3 cm", 0, 1.0, 1.0, "a = 3.1 cm"),
        ] {
            assert_eq!(nudge(text, which, by, effect), expected, "{text}");
        }
    }

    #[test]
    fn what_is_no_measure_is_left_alone() {
        for (text, pulled) in [
            ("bust/4", vec![]),
            ("bust / 2.5", vec![]),
            ("bust / (2 cm + 1 cm) * 1 cm", vec!["1 cm"]),
            ("2 * ease + x^2", vec![]),
            ("1.5 * ease", vec!["1.5"]),
            ("round(bust, 5 mm)", vec![]),
            ("near(a, 3 cm, 1 mm)", vec![]),
            ("graded(bust, at: [88 cm, 110 cm], give: [2 cm, 3 cm])", vec!["2 cm", "3 cm"]),
            ("if(bust > 90 cm, 2 cm, 1 cm)", vec!["2 cm", "1 cm"]),
            ("in_size(bust, \"46\") + 1 cm", vec!["1 cm"]),
            ("on_way(a, b, 1/3)", vec!["1/3"]),
            ("bust / 4 in", vec![]),
            ("this is no formula 3 cm", vec![]),
            ("", vec![]),
        ] {
            let found: Vec<String> =
                literals(text).iter().filter(|l| l.pullable).map(|l| l.span.of(text).to_owned()).collect();
            assert_eq!(found, pulled, "{text}");
        }
    }

    #[test]
    fn cells_get_short_numbers() {
        assert_eq!(literal_text(84.1, Some(Unit::Centimetre)), "8.41 cm");
        assert_eq!(literal_text(-0.0, Some(Unit::Centimetre)), "0 cm");
        assert_eq!(literal_text(std::f64::consts::PI / 8.0, Some(Unit::Degree)), "22.5 deg");
        assert_eq!(literal_text(0.1 + 0.2, None), "0.3");
    }

    /// The value inside of the only literal of a text, with its sign.
    fn value(text: &str) -> f64 {
        match parse(text).unwrap().form {
            Form::Number(v, unit) => v * unit.map_or(1.0, |u| u.inside().0 / u.inside().1),
            Form::Negate(inner) => match inner.form {
                Form::Number(v, unit) => -v * unit.map_or(1.0, |u| u.inside().0 / u.inside().1),
                _ => f64::NAN,
            },
            _ => f64::NAN,
        }
    }

    proptest! {
        #[test]
        fn a_nudge_is_the_rounded_change(whole in 0i64..100_000, places in 0u32..5, by in -500.0..500.0f64, effect in 0.01..100.0f64) {
            let text = format!("{} cm", whole as f64 / 10u32.pow(places) as f64);
            let literal = literals(&text).remove(0);
            let step = coarsest_step(&literal, effect, 0.1);
            let size = step.over as f64 / step.under as f64 * 10.0;
            let after = nudged(&text, &literal, by, step).unwrap();
            let change = value(&after) - literal.value;
            prop_assert!((change - by).abs() <= size / 2.0 + 1e-6, "{} by {} gave {}", text, by, after);
            prop_assert!((change / size - (change / size).round()).abs() < 1e-4, "{} by {} gave {}", text, by, after);
            prop_assert!(size / 2.0 * effect < 0.1 || step.under == 10i128.pow(FINEST));
        }

        #[test]
        fn two_nudges_are_the_nudge_by_their_sum(whole in 3000i64..100_000, a in -900i32..900, b in -900i32..900, eighths in any::<bool>()) {
            let text = if eighths { format!("{} {}/8 in", whole, 1 + 2 * (whole % 4)) } else { format!("{} cm", whole as f64 / 100.0) };
            let first = literals(&text).remove(0);
            let step = coarsest_step(&first, 1.0, 0.1);
            let size = step.over as f64 / step.under as f64 * first.unit.map_or(1.0, |u| u.inside().0 / u.inside().1);
            let by = |text: &str, n: i32| {
                let literal = literals(text).remove(0);
                nudged(text, &literal, f64::from(n) * size, step).unwrap()
            };
            prop_assert_eq!(by(&by(&text, a), b), by(&text, a + b));
        }

        #[test]
        fn inches_stay_in_fractions_through_whole_ones(whole in 1i64..100, eighth in 1i64..8, further in 1i32..8) {
            let text = format!("{whole} {eighth}/8 in");
            let first = literals(&text).remove(0);
            let eighths = Step { over: 1, under: 8 };
            let down = nudged(&text, &first, -25.4 / 8.0 * eighth as f64, eighths).unwrap();
            prop_assert_eq!(&down, &format!("{whole} in"));
            let up = nudged(&down, &literals(&down).remove(0), 25.4 / 8.0 * f64::from(further), eighths).unwrap();
            prop_assert!(up.contains('/') && !up.contains('.'), "{}", up);
        }

        #[test]
        fn nothing_else_changes_and_nothing_fails(text in "[a-z0-9 .+*/()°,-]{0,24}", by in -50.0..50.0f64) {
            for literal in literals(&text).iter().filter(|l| l.pullable) {
                let step = coarsest_step(literal, 1.0, 0.1);
                let Some(after) = nudged(&text, literal, by, step) else { continue };
                prop_assert!(parse(&after).is_ok(), "{} became {}", text, after);
                prop_assert!(after.ends_with(&text[literal.span.end..]), "{} became {}", text, after);
                prop_assert_eq!(literals(&after).len(), literals(&text).len(), "{} became {}", text, after);
            }
        }
    }
}
