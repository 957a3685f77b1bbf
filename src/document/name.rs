//! What may be a name: of things (used in formulas) and of sizes (labels).

use unicode_normalization::UnicodeNormalization;

/// The most letters that a name or label may have.
pub const MAX_NAME_LETTERS: usize = 60;

/// Words of the language that cannot be names: units, `yes no and or not if`, `pi` and the words that stand in front of a
/// name to say which kind of thing is meant. Names of functions are free.
pub const RESERVED: [&str; 24] = [
    "mm",
    "cm",
    "m",
    "in",
    "ft",
    "yd",
    "deg",
    "pi",
    "yes",
    "no",
    "and",
    "or",
    "not",
    "if",
    "chart",
    "value",
    "drawing",
    "piece",
    "seam",
    "condition",
    "measure",
    "strip",
    "view",
    "material",
];

/// What is wrong with a name.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NameFault {
    /// It has no letters.
    Empty,
    /// It has more than [`MAX_NAME_LETTERS`].
    TooLong,
    /// It starts with something that is neither a letter nor an underscore.
    Start,
    /// It holds something that is neither letter, digit nor underscore.
    Letter(char),
    /// It is a word of the language.
    Reserved,
}

/// The form in which names are kept: canonical composition.
pub fn normal(name: &str) -> String {
    name.nfc().collect()
}

/// The form in which two names are compared: two that agree here may not stand in one set.
pub fn fold(name: &str) -> String {
    caseless::default_case_fold_str(&normal(name))
}

/// The letter of names that the program makes for itself; no name that is typed has it.
pub const OWN_LETTER: char = 'ǀ';

/// Whether `name` can be the name of a thing.
pub fn check_name(name: &str) -> Result<(), NameFault> {
    length(name)?;
    for (i, letter) in name.chars().enumerate() {
        let fits = letter != OWN_LETTER
            && (letter == '_' || letter.is_alphabetic() || (i > 0 && (letter.is_numeric() || is_mark(letter))));
        match (fits, i) {
            (true, _) => {}
            (false, 0) if letter.is_numeric() => return Err(NameFault::Start),
            (false, _) => return Err(NameFault::Letter(letter)),
        }
    }
    if RESERVED.contains(&name) { Err(NameFault::Reserved) } else { Ok(()) }
}

/// Whether `label` can be the label of a size, set or person: any words without `/` and control characters.
pub fn check_label(label: &str) -> Result<(), NameFault> {
    length(label)?;
    match label.chars().find(|c| *c == '/' || c.is_control()) {
        Some(letter) => Err(NameFault::Letter(letter)),
        None => Ok(()),
    }
}

fn length(name: &str) -> Result<(), NameFault> {
    match name.chars().take(MAX_NAME_LETTERS + 1).count() {
        0 => Err(NameFault::Empty),
        n if n > MAX_NAME_LETTERS => Err(NameFault::TooLong),
        _ => Ok(()),
    }
}

/// Combining marks, which scripts without composed letters need inside their words.
fn is_mark(letter: char) -> bool {
    unicode_normalization::char::is_combining_mark(letter)
}
