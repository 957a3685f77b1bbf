//! Giving a part another name, carried through every text.

use std::collections::BTreeMap;

use super::naming::{check_free, set_of};
use super::references::{Meaning, Occurrence, references};
use crate::base::Span;
use crate::document::{Address, Axis, Draft, Part, Role, check_label, fold};

/// Why a part was not renamed. The draft is as it was.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum RenameError {
    /// The name cannot be used.
    #[error("{0}")]
    Name(String),
    /// There is no such part, or it has no name.
    #[error("{0} cannot be renamed: it is not there, or has no name")]
    Missing(String),
    /// A formula would mean something else.
    #[error("renaming {part} would change what `{text}` in {place} means; change that formula first")]
    Meaning {
        /// The part.
        part: String,
        /// The formula.
        text: String,
        /// Where it stands.
        place: String,
    },
}

/// Renames a part everywhere. Returns what was done, in a sentence.
///
/// Formulas in which the new name could mean two things get the longer spelling in the same step; nothing computes otherwise
/// than before.
///
/// # Errors
/// See [`RenameError`].
pub fn rename(draft: &mut Draft, part: &Part, to: &str) -> Result<String, RenameError> {
    let is_there = set_of(draft, part).contains(part);
    if !is_there || part.name().is_empty() {
        return Err(RenameError::Missing(part.to_string()));
    }
    let new = part.renamed(to);
    if new == *part {
        return Ok(String::new());
    }
    if let Part::Person(_) = part {
        if check_label(to).is_err() || set_of(draft, part).contains(&new) {
            return Err(RenameError::Name(format!("`{to}` cannot name a person, or there is one of that name")));
        }
    } else {
        // A part does not stand in its own way where only capitals change.
        let mut without = draft.clone();
        if fold(to) == fold(part.name()) {
            own_name(&mut without, part, "a_name_that_nobody_uses");
        }
        check_free(&without, &new).map_err(|e| RenameError::Name(e.to_string()))?;
    }
    let before = references(draft).all;
    let mut next = draft.clone();
    let mut edits: BTreeMap<Address, Vec<(Span, String)>> = BTreeMap::new();
    let mut many = 0;
    for occurrence in before.iter().filter(|o| o.means(part)) {
        let words = occurrence.meanings.iter().flat_map(|m| &m.parts).filter(|(_, p)| p == part).map(|(i, _)| *i);
        let mut words: Vec<usize> = words.collect();
        words.sort_unstable();
        words.dedup();
        for i in words {
            edits.entry(occurrence.at.clone()).or_default().push((occurrence.words[i], to.to_owned()));
            many += 1;
        }
    }
    apply(&mut next, edits);
    own_name(&mut next, part, to);
    let wanted: Vec<Occurrence> = before.iter().map(|o| renamed(o, part, &new)).collect();
    let qualified = qualify(&mut next, &wanted);
    check_meaning(&next, &wanted, part)?;
    *draft = next;
    let also =
        if qualified > 0 { format!("; {qualified} got a longer spelling, to stay clear") } else { String::new() };
    Ok(match many {
        0 => format!("{part} is now called {to}{also}"),
        1 => format!("{part} is now called {to}, in 1 other place too{also}"),
        _ => format!("{part} is now called {to}, in {many} other places too{also}"),
    })
}

/// Changes the name that a part itself carries.
fn own_name(draft: &mut Draft, part: &Part, to: &str) {
    draft.each_text(&mut |at, role, text| {
        if *role == Role::OwnName && at.part == *part {
            to.clone_into(text);
        }
    });
}

/// Replaces spans in texts, from the back.
pub(super) fn apply(draft: &mut Draft, mut edits: BTreeMap<Address, Vec<(Span, String)>>) {
    for list in edits.values_mut() {
        list.sort_by_key(|e| std::cmp::Reverse(e.0));
    }
    draft.each_text(&mut |at, _, text| {
        for (span, to) in edits.get(at).into_iter().flatten() {
            text.replace_range(span.start..span.end, to);
        }
    });
}

/// What an occurrence has to mean once the part has its new name.
fn renamed(occurrence: &Occurrence, part: &Part, new: &Part) -> Occurrence {
    let inside = |p: &Part| match (p, part, new) {
        (p, part, new) if p == part => new.clone(),
        (Part::Inner(frame, inner, name), Part::Piece(old) | Part::Drawing(old), new) if frame == old => {
            Part::Inner(new.name().to_owned(), *inner, name.clone())
        }
        _ => p.clone(),
    };
    let mut out = occurrence.clone();
    out.at.part = match &occurrence.at.part {
        Part::Piece(name) | Part::Drawing(name) if Some(name.as_str()) == part_frame(part) => new.clone(),
        other => inside(other),
    };
    for meaning in &mut out.meanings {
        for (_, p) in &mut meaning.parts {
            *p = inside(p);
        }
    }
    out
}

/// The name of a piece or drawing that is itself renamed.
fn part_frame(part: &Part) -> Option<&str> {
    match part {
        Part::Piece(name) | Part::Drawing(name) => Some(name),
        _ => None,
    }
}

/// The thing itself, however long it is spelled.
fn thing(meaning: &Meaning) -> Option<&Part> {
    meaning.parts.last().map(|(_, p)| p)
}

/// Gives the longer spelling to names that mean more than they are wanted to mean. Returns how many.
fn qualify(draft: &mut Draft, wanted: &[Occurrence]) -> usize {
    let now = references(draft).all;
    let mut edits: BTreeMap<Address, Vec<(Span, String)>> = BTreeMap::new();
    let mut many = 0;
    for (now, wanted) in now.iter().zip(wanted) {
        let [one] = wanted.meanings.as_slice() else { continue };
        if now.meanings.len() < 2 || !now.in_formula {
            continue;
        }
        if let Some(meant) = now.meanings.iter().find(|m| thing(m) == thing(one)) {
            let front = Span::new(now.span.start, now.span.start);
            edits.entry(now.at.clone()).or_default().push((front, meant.prefix.clone()));
            many += 1;
        }
    }
    apply(draft, edits);
    many
}

fn check_meaning(draft: &Draft, wanted: &[Occurrence], part: &Part) -> Result<(), RenameError> {
    let now = references(draft).all;
    let broken = |at: &Address| RenameError::Meaning {
        part: part.to_string(),
        text: draft.text(at).unwrap_or_default(),
        place: at.part.to_string(),
    };
    if now.len() != wanted.len() {
        return Err(broken(&Address::new(part.clone(), "name")));
    }
    for (now, wanted) in now.iter().zip(wanted) {
        let same = now.meanings.len() == wanted.meanings.len()
            && now.meanings.iter().zip(&wanted.meanings).all(|(a, b)| thing(a) == thing(b));
        if now.at != wanted.at || !same {
            return Err(broken(&now.at));
        }
    }
    Ok(())
}

/// A part of this name was added: formulas that could now mean it too get the longer spelling of what they meant.
pub fn qualify_for(draft: &mut Draft, part: &Part) {
    let wanted: Vec<Occurrence> = references(draft)
        .all
        .into_iter()
        .map(|mut o| {
            o.meanings.retain(|m| !m.parts.iter().any(|(_, p)| p == part));
            o
        })
        .collect();
    qualify(draft, &wanted);
}

/// Parts came in from another draft: formulas of the draft, and those that came (`is_new`), go on to mean what they meant before and there.
pub(super) fn qualify_as(draft: &mut Draft, before: &Draft, there: &Draft, is_new: &dyn Fn(&Part) -> bool) {
    let by_address = |draft: &Draft| {
        let mut out: BTreeMap<Address, Vec<Occurrence>> = BTreeMap::new();
        for occurrence in references(draft).all {
            out.entry(occurrence.at.clone()).or_default().push(occurrence);
        }
        out
    };
    let (mut own, mut other) = (by_address(before), by_address(there));
    own.values_mut().chain(other.values_mut()).for_each(|list| list.reverse());
    let mut wanted = |now: Occurrence| {
        let from = if is_new(&now.at.part) { &mut other } else { &mut own };
        from.get_mut(&now.at).and_then(Vec::pop).unwrap_or(now)
    };
    let wanted: Vec<Occurrence> = references(draft).all.into_iter().map(&mut wanted).collect();
    qualify(draft, &wanted);
}

/// Renames a size everywhere: labels, base, sets, cells, sheets, fittings, and `in_size` in formulas.
///
/// # Errors
/// See [`RenameError`].
pub fn rename_size(draft: &mut Draft, axis: Axis, old: &str, to: &str) -> Result<String, RenameError> {
    if !draft.chart.labels(axis).iter().any(|l| l == old) {
        return Err(RenameError::Missing(format!("size {old}")));
    }
    let chart = &draft.chart;
    let others = chart.girth.iter().chain(&chart.cup).chain(&chart.length);
    if check_label(to).is_err() || others.chain(chart.persons.iter().map(|p| &p.name)).any(|l| l == to) {
        return Err(RenameError::Name(format!(
            "`{to}` cannot be the label of a size: it is taken, or holds a `/`, or has more than 60 letters"
        )));
    }
    let by: BTreeMap<String, Vec<Axis>> = chart.rows.iter().map(|r| (r.name.clone(), r.by.clone())).collect();
    let field = axis.word();
    let quoted = (format!("\"{old}\""), format!("\"{to}\""));
    draft.each_text(&mut |at, role, text| match (role, &at.part, at.field) {
        (Role::Label, Part::Draft | Part::SizeSet(_), own) if own == field && text == old => to.clone_into(text),
        (Role::Label, Part::Row(row), "cell of") => {
            let Some(place) = by.get(row).and_then(|axes| axes.iter().position(|a| *a == axis)) else { return };
            let mut labels: Vec<&str> = text.split('/').collect();
            if labels.get(place).is_some_and(|l| l.trim() == old) {
                labels[place] = to;
                *text = labels.join("/");
            }
        }
        // An address: the label is one of its parts.
        (Role::Label, _, "base" | "sizes" | "fitting size") if text.split('/').any(|l| l == old) => {
            *text = text.split('/').map(|l| if l == old { to } else { l }).collect::<Vec<_>>().join("/");
        }
        (Role::Formula | Role::FormulaIn(_) | Role::Condition, ..) if text.contains("in_size") => {
            *text = text.replace(&quoted.0, &quoted.1);
        }
        _ => {}
    });
    Ok(format!("size {old} is now called {to}"))
}
