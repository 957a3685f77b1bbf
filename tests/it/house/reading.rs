//! Reading the project's own files, so that the house rules can be asked of them.

use std::fs;
use std::path::{Path, PathBuf};

/// A text file of the project.
pub struct Text {
    /// Where it is, from the top of the project, with `/`.
    pub path: String,
    /// As it stands.
    pub text: String,
    /// Rust only: the same lines, with comments and the insides of strings blanked.
    pub code: String,
    /// Rust only: `code` with test modules blanked as well.
    pub work: String,
}

impl Text {
    /// A file as if it stood at that place.
    pub fn new(path: &str, text: &str) -> Self {
        let code = if path.ends_with(".rs") { bare(text) } else { String::new() };
        let work = if path.ends_with("/tests.rs") { String::new() } else { without_tests(&code) };
        Self { path: path.into(), text: text.into(), code, work }
    }
}

/// Something against the rules.
#[derive(Debug)]
pub struct Fault {
    /// In which file.
    pub path: String,
    /// In which line, from 1; 0: the file as a whole.
    pub line: usize,
    /// What, and what to do.
    pub what: String,
}

impl Fault {
    /// At the byte `at` of a text.
    pub fn at(path: &str, text: &str, at: usize, what: String) -> Self {
        Self { path: path.into(), line: text[..at].matches('\n').count() + 1, what }
    }

    /// Of a file as a whole.
    pub fn of(path: &str, what: impl Into<String>) -> Self {
        Self { path: path.into(), line: 0, what: what.into() }
    }
}

/// The top of the project.
pub fn top() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
}

/// What stands at the top, without what `.gitignore` names there and the version control itself.
pub fn entries() -> Vec<String> {
    let ignored = fs::read_to_string(top().join(".gitignore")).unwrap();
    let ignored: Vec<&str> = ignored.lines().map(|line| line.trim_matches('/')).collect();
    let names = fs::read_dir(top()).unwrap().map(|e| e.unwrap().file_name().into_string().unwrap());
    let mut names: Vec<String> = names.filter(|n| n != ".git" && !ignored.contains(&n.as_str())).collect();
    names.sort();
    names
}

/// Every text file of the project; second, what should be text and cannot be read as such.
pub fn everything() -> (Vec<Text>, Vec<Fault>) {
    const NOT_TEXT: [&str; 6] = ["png", "ttf", "otf", "pdf", "ico", "gz"];
    // Bytes for the fuzz targets, what a run of them leaves, what the interpreter leaves.
    const NOT_READ: [&str; 4] = ["tests/fuzz/corpus", "tests/fuzz/artifacts", "tests/fuzz/target", "__pycache__"];
    let (mut texts, mut faults) = (Vec::new(), Vec::new());
    let mut open: Vec<PathBuf> = entries().iter().map(|name| top().join(name)).collect();
    while let Some(path) = open.pop() {
        if path.is_dir() {
            if !NOT_READ.iter().any(|folder| path.ends_with(folder)) {
                open.extend(fs::read_dir(&path).unwrap().map(|e| e.unwrap().path()));
            }
            continue;
        }
        if path.extension().is_some_and(|e| NOT_TEXT.iter().any(|n| e == *n)) {
            continue;
        }
        let name = from_top(&path);
        match String::from_utf8(fs::read(&path).unwrap()) {
            Ok(text) => texts.push(Text::new(&name, &text)),
            Err(_) => faults.push(Fault::of(&name, "is not UTF-8")),
        }
    }
    texts.sort_by(|a, b| a.path.cmp(&b.path));
    (texts, faults)
}

fn from_top(path: &Path) -> String {
    let parts = path.strip_prefix(top()).unwrap().components();
    parts.map(|p| p.as_os_str().to_str().unwrap()).collect::<Vec<_>>().join("/")
}

/// Rust with comments and the insides of strings and characters blanked, byte for byte, lines kept.
pub fn bare(text: &str) -> String {
    let bytes = text.as_bytes();
    let mut out = bytes.to_vec();
    let mut i = 0;
    while i < bytes.len() {
        let rest = &bytes[i..];
        let end = match bytes[i] {
            b'/' if rest.starts_with(b"//") => i + rest.iter().position(|b| *b == b'\n').unwrap_or(rest.len()),
            b'/' if rest.starts_with(b"/*") => i + comment(rest),
            b'"' => i + string(rest),
            b'r' if i == 0 || !is_word(bytes[i - 1]) || bytes[i - 1] == b'b' => i + raw_string(rest),
            b'\'' => i + letter(rest),
            _ => i,
        };
        let quoted = matches!(bytes[i], b'"' | b'\'' | b'r');
        for (k, byte) in out.iter_mut().enumerate().take(end).skip(i) {
            let edge = quoted && (k == i || k == end - 1);
            *byte = if *byte == b'\n' || (edge && byte.is_ascii()) { *byte } else { b' ' };
        }
        i = end.max(i + 1);
    }
    String::from_utf8(out).unwrap()
}

fn comment(rest: &[u8]) -> usize {
    let (mut depth, mut i) = (0, 0);
    while i < rest.len() {
        match () {
            () if rest[i..].starts_with(b"/*") => (depth, i) = (depth + 1, i + 2),
            () if rest[i..].starts_with(b"*/") => (depth, i) = (depth - 1, i + 2),
            () => i += 1,
        }
        if depth == 0 {
            break;
        }
    }
    i.min(rest.len())
}

fn string(rest: &[u8]) -> usize {
    let mut i = 1;
    while i < rest.len() && rest[i] != b'"' {
        i += if rest[i] == b'\\' { 2 } else { 1 };
    }
    (i + 1).min(rest.len())
}

/// Length of the raw string that starts here; 0: none does.
fn raw_string(rest: &[u8]) -> usize {
    let hashes = rest[1..].iter().take_while(|b| **b == b'#').count();
    if rest.get(1 + hashes) != Some(&b'"') {
        return 0;
    }
    let close = [b"\"".as_slice(), &b"#".repeat(hashes)].concat();
    let inside = 2 + hashes;
    let at = rest[inside..].windows(close.len()).position(|w| w == close);
    at.map_or(rest.len(), |at| inside + at + close.len())
}

/// Length of the character that starts here; 0: it is a lifetime.
fn letter(rest: &[u8]) -> usize {
    if rest.get(1) == Some(&b'\\') {
        return rest.iter().skip(3).position(|b| *b == b'\'').map_or(0, |at| at + 4);
    }
    let width = match rest.get(1) {
        Some(0xf0..) => 4,
        Some(0xe0..) => 3,
        Some(0xc0..) => 2,
        _ => 1,
    };
    if rest.get(1 + width) == Some(&b'\'') { width + 2 } else { 0 }
}

/// Whether a byte can stand in a Rust name.
pub fn is_word(byte: u8) -> bool {
    byte.is_ascii_alphanumeric() || byte == b'_' || byte >= 0x80
}

/// Bare code with whatever stands behind `#[cfg(test)]` blanked.
fn without_tests(code: &str) -> String {
    let mut out = code.as_bytes().to_vec();
    for (at, _) in code.match_indices("#[cfg(test)]") {
        let mut depth = 0_usize;
        for byte in &mut out[at..] {
            let was = std::mem::replace(byte, if *byte == b'\n' { b'\n' } else { b' ' });
            match was {
                b'{' => depth += 1,
                b'}' => depth = depth.saturating_sub(1),
                _ => {}
            }
            if depth == 0 && matches!(was, b'}' | b';') {
                break;
            }
        }
    }
    String::from_utf8(out).unwrap()
}

/// Where `word` stands in bare code as a whole word.
pub fn places(code: &str, word: &str) -> Vec<usize> {
    let bytes = code.as_bytes();
    let whole =
        |at: usize| (at == 0 || !is_word(bytes[at - 1])) && bytes.get(at + word.len()).is_none_or(|b| !is_word(*b));
    code.match_indices(word).map(|(at, _)| at).filter(|at| whole(*at)).collect()
}

/// The names that follow `crate::` (or any other head) at the byte behind it: one, or the first ones of a braced list.
/// Each comes with what follows it.
pub fn followers(code: &str) -> Vec<(&str, &str)> {
    let code = code.trim_start();
    if !code.starts_with('{') {
        let end = code.bytes().position(|b| !is_word(b)).unwrap_or(code.len());
        return vec![if end == 0 { ("*", code) } else { code.split_at(end) }];
    }
    let mut found = Vec::new();
    let (mut depth, mut start) = (0, 1);
    for (i, byte) in code.bytes().enumerate() {
        match byte {
            b'{' => depth += 1,
            b'}' => depth -= 1,
            _ => {}
        }
        if (byte == b',' && depth == 1) || depth == 0 {
            if !code[start..i].trim().is_empty() {
                found.extend(followers(&code[start..i]));
            }
            start = i + 1;
        }
        if depth == 0 {
            break;
        }
    }
    found
}
