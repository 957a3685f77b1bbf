//! What may follow in a formula that is being typed: names with what they are, functions, the words of their arguments.

use super::Computed;
use crate::base::{DisplayUnit, Span};
use crate::compute::{Item, Trial};
use crate::language::{FUNCTIONS, How, Kind, Signature, Takes, usage};
use crate::texts::{decimal, length, owned, say};

/// The most that is offered.
const MOST: usize = 9;

/// Something that may stand in a formula.
#[derive(Clone, Debug, PartialEq)]
pub struct Completion {
    /// What is put in.
    pub text: String,
    /// How it is called: a name, or a function with what it takes.
    pub name: String,
    /// What it is, with its value in the size: "a length, 8 cm"; of a function, its sentence.
    pub about: String,
}

/// The part of a text that a completion takes the place of, and what may stand there, the likeliest first.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Completions {
    /// The word up to the cursor.
    pub span: Option<Span>,
    /// What may stand there.
    pub list: Vec<Completion>,
}

/// What may stand at a place of a formula (a byte of `text`) in a piece, in a drawing, or outside of all. `asked`: also where no
/// letter is typed yet.
pub fn completions(
    computed: &Computed,
    frame: Option<&str>,
    case: usize,
    text: &str,
    at: usize,
    asked: bool,
) -> Completions {
    let (Some(model), Some(head)) = (&computed.model, text.get(..at)) else { return Completions::default() };
    let start = head
        .rfind(|c: char| !(c == '_' || c == '.' || c.is_alphanumeric()))
        .map_or(0, |i| i + head[i..].chars().next().map_or(1, char::len_utf8));
    let word = &head[start..];
    // A number is being typed, or words in quotes.
    if word.starts_with(|c: char| c.is_ascii_digit()) || head.matches('"').count() % 2 == 1 {
        return Completions::default();
    }
    let (owner, typed) = word.rsplit_once('.').map_or(("", word), |(o, t)| (o, t));
    if word.is_empty() && !asked {
        return Completions::default();
    }
    let trial = Trial::new(&computed.draft, &model.plan);
    let known = trial.known(frame);
    let say = |node: u32, kind: Kind| about(model.item(case, node), kind, computed.draft.display);
    let mut found: Vec<(u8, Completion)> = Vec::new();
    let typed_low = typed.to_lowercase();
    let rank = |name: &str| {
        let name = name.to_lowercase();
        match () {
            () if name == typed_low => None,
            () if name.starts_with(&typed_low) => Some(0),
            () if name.contains(&typed_low) => Some(1),
            () => None,
        }
    };
    let mut add = |rank: u8, text: String, name: String, about: String| {
        if !found.iter().any(|(_, f)| f.text == text && f.name == name) {
            found.push((rank, Completion { text, name, about }));
        }
    };
    let after_call = owner.is_empty() && word.starts_with('.');
    if !after_call {
        for (name, node, kind) in &known {
            let (of, last) = name.rsplit_once('.').map_or(("", name.as_str()), |(o, l)| (o, l));
            // A row or value whose bare name means something else too is found by that name.
            let is_prefixed = owner.is_empty() && matches!(of, "chart" | "value");
            if (of == owner || is_prefixed)
                && let Some(rank) = rank(last)
            {
                let whole = u8::from(matches!(kind, Kind::Piece(_)));
                add(rank + whole, name.clone(), name.clone(), say(*node, *kind));
            }
            // Of what has parts, the first step of the way there.
            let rest = if owner.is_empty() { Some(name.as_str()) } else { name.strip_prefix(&format!("{owner}.")) };
            if let Some((step, _)) = rest.and_then(|r| r.split_once('.'))
                && let Some(rank) = rank(step)
            {
                let whole = if owner.is_empty() { step.to_owned() } else { format!("{owner}.{step}") };
                add(rank, format!("{whole}."), whole, say!("formula-has-parts"));
            }
        }
    }
    // Behind a dot stands what can be done with what stands before it.
    let before = known.iter().find(|(name, ..)| name == owner).map(|(_, _, kind)| *kind);
    let is_method = after_call || before.is_some();
    if owner.is_empty() || is_method {
        let lead = &word[..word.len() - typed.len()];
        for row in FUNCTIONS {
            let fits = !is_method || takes_first(row, before);
            if let Some(rank) = rank(row.name).filter(|_| fits) {
                let written = if is_method { without_first(row) } else { usage(row) };
                add(rank + 2, format!("{lead}{}(", row.name), written, row.sentence());
            }
        }
    }
    if owner.is_empty()
        && !after_call
        && let Some(function) = open_call(&head[..start])
    {
        for row in FUNCTIONS.iter().filter(|r| r.name == function) {
            for p in row.parameters.iter().filter(|p| matches!(p.how, How::Named | How::Choice)) {
                if let Some(rank) = rank(p.name) {
                    add(
                        rank,
                        format!("{}: ", p.name),
                        format!("{}:", p.name),
                        say!("formula-of-takes", function, takes = p.takes.words()),
                    );
                }
                let is_its_own = head[..start].trim_end().ends_with(&format!("{}:", p.name));
                if let (Takes::Word(words), true) = (p.takes, is_its_own) {
                    for word in words {
                        if let Some(rank) = rank(word) {
                            add(rank, (*word).to_owned(), (*word).to_owned(), say!("formula-of", function));
                        }
                    }
                }
            }
        }
    }
    found.sort_by_key(|f| (f.0, f.1.text.len()));
    Completions { span: Some(Span::new(start, at)), list: found.into_iter().take(MOST).map(|(_, c)| c).collect() }
}

/// Whether a name may stand at the end of this text: after a sign, an open bracket, a comma, or at the start.
pub fn wants_name(head: &str) -> bool {
    let head = head.trim_end();
    head.is_empty()
        || head.ends_with(|c: char| "+-−*×·/^(,[:<>=".contains(c))
        || ["and", "or", "not"]
            .iter()
            .any(|w| head.strip_suffix(w).is_some_and(|rest| rest.ends_with(|c: char| c.is_whitespace() || c == '(')))
}

fn about(item: Option<&Item<f64>>, kind: Kind, unit: DisplayUnit) -> String {
    let words = kind.words();
    let number = item.and_then(|i| i.real().or_else(|| i.edge().map(|e| e.curve.length())));
    match (number.filter(|v| v.is_finite()), kind) {
        (Some(v), Kind::LENGTH) => say!("formula-is", kind = words, value = owned(|| length(v, unit))),
        (Some(v), Kind::Edge(_)) => say!("formula-edge", kind = words, long = owned(|| length(v, unit))),
        (Some(v), Kind::Angle) => {
            say!("formula-is", kind = words, value = owned(|| decimal(&format!("{:.1}°", v.to_degrees()))))
        }
        (Some(v), Kind::NUMBER) => say!("formula-is", kind = words, value = owned(|| decimal(&format!("{v:.3}")))),
        _ => words,
    }
}

fn takes_first(row: &Signature, kind: Option<Kind>) -> bool {
    let Some(first) = row.parameters.first().filter(|p| matches!(p.how, How::Placed | How::Repeated)) else {
        return false;
    };
    match (first.takes, kind) {
        (Takes::One(what) | Takes::Each(what), Some(kind)) => what.fits(kind),
        (Takes::Row, Some(_)) => false,
        // What a bracket before the dot gives is not known: points are the most of it.
        (Takes::One(what) | Takes::Each(what), None) => what.is_of_a_frame(),
        _ => false,
    }
}

/// How a function is written behind a dot: without the first thing that it takes.
fn without_first(row: &Signature) -> String {
    let all = usage(row);
    let (Some(open), first) = (all.find('('), row.parameters.first().map_or("", |p| p.name)) else { return all };
    let rest = all[open + 1..].strip_prefix(first).map_or("", |r| r.trim_start_matches([',', ' ', '…']));
    format!("{}({rest}", &all[..open])
}

/// The function whose bracket is open at the end of a text.
fn open_call(head: &str) -> Option<&str> {
    let mut depth = 0usize;
    for (i, c) in head.char_indices().rev() {
        match c {
            ')' | ']' => depth += 1,
            '(' if depth == 0 => {
                let name = &head[..i];
                let start = name.rfind(|c: char| !(c == '_' || c.is_alphanumeric())).map_or(0, |k| k + 1);
                return name.get(start..).filter(|n| !n.is_empty());
            }
            '(' | '[' => depth = depth.saturating_sub(1),
            _ => {}
        }
    }
    None
}
