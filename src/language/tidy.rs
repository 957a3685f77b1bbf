//! What is put right in a formula when a field is left: signs that files do not hold.

/// The text as files hold it: `,` between digits outside brackets becomes a point, `"` and `″` become ` in`, `×` and `·`
/// become `*`, `−` becomes `-`, `½` and its like become fractions, `W-N/D` before a unit as the whole entry a mixed number.
pub fn tidy(typed: &str) -> String {
    let letters: Vec<char> = typed.trim().chars().collect();
    let mut out = String::with_capacity(typed.len() + 8);
    let mut depth = 0i32;
    let mut quoted = false;
    for (i, &letter) in letters.iter().enumerate() {
        let digit = |j: Option<&char>| j.is_some_and(char::is_ascii_digit);
        let before = i.checked_sub(1).and_then(|j| letters.get(j));
        let figure = |j: Option<&char>| j.is_some_and(|c| c.is_ascii_digit() || fraction(*c).is_some());
        let between_figures = figure(before) && figure(letters.get(i + 1));
        let number_before = letters[..i].iter().rev().find(|c| **c != ' ');
        let inch = matches!(letter, '"' | '″')
            && !quoted
            && number_before.is_some_and(|c| c.is_ascii_digit() || fraction(*c).is_some());
        match letter {
            _ if inch => out.push_str(" in"),
            '"' => {
                quoted = !quoted;
                out.push('"');
            }
            _ if quoted => out.push(letter),
            '(' | '[' => {
                depth += 1;
                out.push(letter);
            }
            ')' | ']' => {
                depth -= 1;
                out.push(letter);
            }
            ',' if depth == 0 && digit(before) && digit(letters.get(i + 1)) => out.push('.'),
            // Beside a fraction it is no decimal point, also once the fraction stands in digits.
            ',' if between_figures && !(digit(before) && digit(letters.get(i + 1))) => out.push_str(", "),
            '×' | '·' => out.push('*'),
            '−' => out.push('-'),
            _ => match fraction(letter) {
                Some(text) => {
                    if digit(before) {
                        out.push(' ');
                    }
                    out.push_str(text);
                }
                None => out.push(letter),
            },
        }
    }
    mixed(&out).unwrap_or(out)
}

fn fraction(letter: char) -> Option<&'static str> {
    Some(match letter {
        '½' => "1/2",
        '¼' => "1/4",
        '¾' => "3/4",
        '⅓' => "1/3",
        '⅔' => "2/3",
        '⅛' => "1/8",
        '⅜' => "3/8",
        '⅝' => "5/8",
        '⅞' => "7/8",
        _ => return None,
    })
}

/// `W-N/D unit` as the whole entry, with a space instead of the stroke.
fn mixed(text: &str) -> Option<String> {
    let (whole, rest) = text.split_once('-')?;
    let (over, rest) = rest.split_once('/')?;
    let digits = |s: &str| !s.is_empty() && s.chars().all(|c| c.is_ascii_digit());
    let under_end = rest.find(|c: char| !c.is_ascii_digit())?;
    let (under, unit) = rest.split_at(under_end);
    let fits = digits(whole) && digits(over) && digits(under) && crate::base::Unit::of(unit.trim()).is_some();
    fits.then(|| format!("{whole} {over}/{under}{unit}"))
}
