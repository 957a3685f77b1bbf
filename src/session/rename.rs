//! Giving a part another name, carried through every text.

use std::collections::{BTreeMap, BTreeSet};

use super::naming::{check_typed, set_of};
use super::references::{Occurrence, references};
use crate::base::Span;
use crate::compute::{Double, Lineage, Named, Owner};
use crate::document::{Address, Axis, Draft, Inner, Part, Role, TakenPart, check_label, check_name, fold};
use crate::texts::say;

/// Why a part was not renamed. The draft is as it was.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum RenameError {
    /// The name cannot be used.
    #[error("{0}")]
    Name(String),
    /// There is no such part, or it has no name.
    #[error("{}", say!("refused-rename", part = .0))]
    Missing(String),
    /// A formula would mean something else.
    #[error("{}", say!("refused-meaning", part, text, place))]
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
/// A name that a derived piece has from another one is renamed where it comes from, and so in all pieces that are made of that one. Formulas in
/// which the new name could mean two things get the longer spelling in the same step; nothing computes otherwise than before.
///
/// # Errors
/// See [`RenameError`].
pub fn rename(draft: &mut Draft, part: &Part, to: &str) -> Result<String, RenameError> {
    let lineage = Lineage::of(draft);
    let is_there = set_of(draft, part).contains(part);
    let named = if let Part::Inner(frame, _, name) = part { lineage.last(frame, name) } else { None };
    let Some(named) = named else {
        if (!is_there && lineage.makers(part).is_empty()) || part.name().is_empty() {
            return Err(RenameError::Missing(part.words()));
        }
        return rename_part(draft, part, to);
    };
    let Some((own, rest)) = own_of(named, to) else { return Err(RenameError::Missing(part.words())) };
    let Some(rest) = rest else {
        let shown = part.name();
        let name = shown.replacen(own.name(), to, 1);
        return Err(RenameError::Name(say!("refused-affix", shown, part = own.words(), name)));
    };
    rename_part(draft, &own, rest)
}

/// The part behind a name, and what of the new name is its own; none where that lacks what steps put around it.
fn own_of<'a>(named: &Named, to: &'a str) -> Option<(Part, Option<&'a str>)> {
    let at = named.spelled.iter().position(|(owner, _)| matches!(owner, Owner::Part(_)))?;
    let around = |all: &[(Owner, String)]| all.iter().map(|(_, letters)| letters.as_str()).collect::<String>();
    let (before, behind) = (around(&named.spelled[..at]), around(&named.spelled[at + 1..]));
    let own = to.strip_prefix(before.as_str()).and_then(|rest| rest.strip_suffix(behind.as_str()));
    Some((named.part()?.clone(), own))
}

/// Renames a part that carries its own name, or that a step makes.
fn rename_part(draft: &mut Draft, part: &Part, to: &str) -> Result<String, RenameError> {
    let new = part.renamed(to);
    if new == *part {
        return Ok(String::new());
    }
    if let Part::Person(_) = part {
        if check_label(to).is_err() || set_of(draft, part).contains(&new) {
            return Err(RenameError::Name(say!("refused-person-rename", name = to)));
        }
    } else {
        // A part does not stand in its own way where only capitals change.
        let mut without = draft.clone();
        if fold(to) == fold(part.name()) {
            own_name(&mut without, part, "a_name_that_nobody_uses");
        }
        check_typed(&without, &new).map_err(|e| RenameError::Name(e.to_string()))?;
    }
    let mut next = draft.clone();
    let change = Change { old: Owner::Part(part.clone()), new: Owner::Part(new.clone()), to };
    let many = carry(&mut next, &change, &|next| own_name(next, part, to))?;
    keep_known(&mut next, part, to);
    *draft = next;
    Ok(told(&part.words(), to, many))
}

/// What is renamed in a piece that was taken from another draft is still known by its name there.
fn keep_known(draft: &mut Draft, part: &Part, to: &str) {
    let Part::Inner(frame, inner, name) = part else { return };
    let of_frame =
        |p: &&mut TakenPart| p.name == *frame && Part::of_words(&p.part).is_some_and(|p| p.frame().is_some());
    for taken in draft.blocks.iter_mut().flat_map(|b| &mut b.parts).filter(of_frame) {
        let is_it = |(there, here): &(String, String)| here == name && there.starts_with(inner.word());
        match taken.names.iter_mut().find(|n| is_it(n)) {
            Some(known) => to.clone_into(&mut known.1),
            None => taken.names.push((format!("{} {name}", inner.word()), to.to_owned())),
        }
        taken.names.retain(|(there, here)| there.rsplit(' ').next() != Some(here));
    }
}

/// What was done, in a sentence.
fn told(part: &str, to: &str, (many, qualified): (usize, usize)) -> String {
    let also = if qualified > 0 { say!("told-longer", count = qualified) } else { String::new() };
    match many {
        0 => say!("told-renamed", part, name = to, also),
        many => say!("told-renamed-in", part, name = to, count = many, also),
    }
}

/// What gets another name.
struct Change<'a> {
    old: Owner,
    new: Owner,
    to: &'a str,
}

/// Carries a name through all texts; `own` writes it where it is given. How many other places follow, and how many got a longer spelling.
fn carry(next: &mut Draft, change: &Change<'_>, own: &dyn Fn(&mut Draft)) -> Result<(usize, usize), RenameError> {
    let doubles = Lineage::of(next).doubles;
    let before = references(next).all;
    let mut edits: BTreeMap<Address, Vec<(Span, String)>> = BTreeMap::new();
    let mut many = 0;
    for occurrence in before.iter().filter(|o| o.means(&change.old)) {
        let mut spans: Vec<Span> = occurrence.said().filter(|s| s.owner == change.old).map(|s| s.span).collect();
        spans.sort_unstable();
        spans.dedup();
        many += if occurrence.gives { 0 } else { spans.len() };
        let all = edits.entry(occurrence.at.clone()).or_default();
        all.extend(spans.into_iter().map(|span| (span, change.to.to_owned())));
    }
    let lineage = Lineage::of(next);
    let wanted: Vec<Occurrence> = before.iter().map(|o| renamed(&lineage, o, change)).collect();
    apply(next, edits);
    own(next);
    check_told(&Lineage::of(next), &doubles, change)?;
    let qualified = qualify(next, &wanted) + shield(next, &change.new);
    check_meaning(next, &wanted, change)?;
    Ok((many, qualified))
}

/// Refuses a name that would be double in a derived piece, or that could not be a name there.
fn check_told(lineage: &Lineage, before: &[Double], change: &Change<'_>) -> Result<(), RenameError> {
    if let Some(double) = lineage.doubles.iter().find(|d| !before.contains(d)) {
        return Err(RenameError::Name(double.to_string()));
    }
    for (piece, names) in &lineage.pieces {
        for (name, _) in names.all().filter(|(_, n)| n.spelled.iter().any(|(o, _)| *o == change.new)) {
            if name != change.to && check_name(name).is_err() {
                return Err(RenameError::Name(say!("refused-derived-name", piece, name)));
            }
        }
    }
    Ok(())
}

/// Gives what a step of a derived piece makes, or puts in front of names, another name, and the step itself; `None`: the text is no such name.
pub(super) fn rename_given(draft: &mut Draft, at: &Address, to: &str) -> Option<Result<String, RenameError>> {
    let Part::Piece(piece) = &at.part else { return None };
    if at.field == "step name" {
        return Some(rename_step(draft, piece, at.at, to));
    }
    if !at.field.starts_with("step ") {
        return None;
    }
    let all = references(draft).all;
    let owner = all.iter().find(|o| o.at == *at && o.gives)?.said().next()?.owner.clone();
    let is_used = all.iter().any(|o| o.means(&owner) && !o.gives);
    match owner {
        // A prefix is nothing by itself, and what nobody names may be called anything: what is wrong with it is a finding.
        _ if !is_used => None,
        Owner::Part(part) => Some(rename_part(draft, &part, to)),
        Owner::Prefix(..) => {
            let mut next = draft.clone();
            let change = Change { old: owner.clone(), new: owner, to };
            let done = carry(&mut next, &change, &|_| {});
            Some(done.map(|many| {
                *draft = next;
                told(&say!("word-prefix"), to, many)
            }))
        }
        Owner::Fixed(_) => None,
    }
}

/// Gives a step another name; findings that were silenced in it stay so.
fn rename_step(draft: &mut Draft, piece: &str, i: usize, to: &str) -> Result<String, RenameError> {
    let steps = draft.pieces.iter().find(|p| p.name == piece).map_or(&[][..], |p| &p.steps);
    let Some(old) = steps.get(i).map(|s| s.name.clone()) else {
        return Err(RenameError::Missing(say!("place-step", step = i + 1, piece)));
    };
    if to.trim().is_empty() {
        return Err(RenameError::Name(say!("refused-step-unnamed")));
    }
    if steps.iter().enumerate().any(|(k, s)| k != i && fold(&s.name) == fold(to)) {
        return Err(RenameError::Name(say!("refused-step-name", name = to, piece)));
    }
    let place = |step: &str| format!("{piece}, step {step}");
    draft.each_text(&mut |at, role, text| {
        let is_name = at.field == "step name" && at.at == i && matches!(&at.part, Part::Piece(p) if p == piece);
        if is_name {
            to.clone_into(text);
        } else if *role == Role::FindingPlace && *text == place(&old) {
            *text = place(to);
        }
    });
    Ok(String::new())
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

/// What an occurrence has to mean once the name has changed.
fn renamed(lineage: &Lineage, occurrence: &Occurrence, change: &Change<'_>) -> Occurrence {
    let (Owner::Part(part), Owner::Part(new)) = (&change.old, &change.new) else { return occurrence.clone() };
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
        // What takes the place of a mark or fold that passes has its name.
        own @ Part::Inner(frame, _, name)
            if own != part && lineage.last(frame, name).is_some_and(|n| n.part() == Some(part)) =>
        {
            own.renamed(change.to)
        }
        other => inside(other),
    };
    for said in out.meanings.iter_mut().flat_map(|m| &mut m.said) {
        match &mut said.owner {
            Owner::Part(p) => *p = inside(p),
            Owner::Prefix(piece, _) if Some(piece.as_str()) == part_frame(part) => new.name().clone_into(piece),
            Owner::Prefix(..) | Owner::Fixed(_) => {}
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

/// Gives the longer spelling to names that mean more than they are wanted to mean, or something else. Returns how many.
fn qualify(draft: &mut Draft, wanted: &[Occurrence]) -> usize {
    let now = references(draft).all;
    let mut edits: BTreeMap<Address, Vec<(Span, String)>> = BTreeMap::new();
    let mut many = 0;
    for (now, wanted) in now.iter().zip(wanted) {
        let [one] = wanted.meanings.as_slice() else { continue };
        let is_clear = now.meanings.len() == 1 && now.meanings[0].thing() == one.thing();
        if is_clear || !now.in_formula {
            continue;
        }
        if let Some(meant) = now.meanings.iter().chain(&now.shadowed).find(|m| m.thing() == one.thing()) {
            let front = Span::new(now.span.start, now.span.start);
            edits.entry(now.at.clone()).or_default().push((front, meant.prefix.clone()));
            many += 1;
        }
    }
    apply(draft, edits);
    many
}

/// Formulas of a base that go with its parts into derived pieces (of darts, marks, allowances) must not meet a new name there: names of rows
/// and values in them get the longer spelling. Returns how many.
fn shield(draft: &mut Draft, new: &Owner) -> usize {
    let lineage = Lineage::of(draft);
    let mut met: BTreeSet<(String, String)> = BTreeSet::new();
    for names in lineage.pieces.values() {
        let new = names.all().filter(|(_, n)| n.spelled.iter().any(|(o, _)| o == new));
        for (name, _) in new {
            met.extend(names.from.iter().map(|base| (base.clone(), name.clone())));
        }
    }
    if met.is_empty() {
        return 0;
    }
    let mut edits: BTreeMap<Address, Vec<(Span, String)>> = BTreeMap::new();
    let mut many = 0;
    for occurrence in references(draft).all.iter().filter(|o| o.in_formula && goes_along(&o.at)) {
        let [one] = occurrence.meanings.as_slice() else { continue };
        let (Some(frame), Some(text)) = (occurrence.at.part.frame(), draft.text(&occurrence.at)) else { continue };
        let first = occurrence.span.of(&text).split('.').next().unwrap_or_default().trim().to_owned();
        let is_outside = ["value.", "chart."].contains(&one.prefix.as_str());
        if is_outside && met.contains(&(frame.to_owned(), first)) {
            let front = Span::new(occurrence.span.start, occurrence.span.start);
            edits.entry(occurrence.at.clone()).or_default().push((front, one.prefix.clone()));
            many += 1;
        }
    }
    apply(draft, edits);
    many
}

/// Whether a text of a piece is a formula that is said anew in pieces that are made of it.
fn goes_along(at: &Address) -> bool {
    match &at.part {
        Part::Inner(_, Inner::Dart | Inner::Mark | Inner::Pleat | Inner::Tuck, _) => true,
        Part::Piece(_) => ["allowance", "corner", "cut", "label", "step dart", "step mark"]
            .iter()
            .any(|field| at.field.starts_with(field)),
        _ => false,
    }
}

fn check_meaning(draft: &Draft, wanted: &[Occurrence], change: &Change<'_>) -> Result<(), RenameError> {
    let now = references(draft).all;
    let part = if let Owner::Part(part) = &change.old { part.words() } else { say!("word-it") };
    let broken = |at: &Address| RenameError::Meaning {
        part: part.clone(),
        text: draft.text(at).unwrap_or_default(),
        place: at.part.words(),
    };
    if now.len() != wanted.len() {
        return Err(broken(&wanted.first().map_or(Address::new(Part::Draft, "name"), |o| o.at.clone())));
    }
    for (now, wanted) in now.iter().zip(wanted) {
        let same = now.meanings.len() == wanted.meanings.len()
            && now.meanings.iter().zip(&wanted.meanings).all(|(a, b)| a.thing() == b.thing());
        if now.at != wanted.at || !same {
            return Err(broken(&now.at));
        }
    }
    Ok(())
}

/// A part of this name was added: formulas that could now mean it too get the longer spelling of what they meant.
pub fn qualify_for(draft: &mut Draft, part: &Part) {
    let owner = Owner::Part(part.clone());
    let wanted: Vec<Occurrence> = references(draft)
        .all
        .into_iter()
        .map(|mut o| {
            o.meanings.retain(|m| !m.said.iter().any(|s| s.owner == owner));
            // In a derived piece the new name has come before what was meant.
            if o.meanings.is_empty() && !o.shadowed.is_empty() {
                o.meanings = o.shadowed.clone();
            }
            o
        })
        .collect();
    qualify(draft, &wanted);
    shield(draft, &owner);
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
        return Err(RenameError::Missing(say!("thing-called", kind = say!("word-size"), name = old)));
    }
    let chart = &draft.chart;
    let others = chart.girth.iter().chain(&chart.cup).chain(&chart.length);
    if check_label(to).is_err() || others.chain(chart.persons.iter().map(|p| &p.name)).any(|l| l == to) {
        return Err(RenameError::Name(say!("refused-size-rename", label = to)));
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
        (Role::Label, _, "base" | "sizes" | "fitting size" | "plan size" | "plan piece size")
            if text.split('/').any(|l| l == old) =>
        {
            *text = text.split('/').map(|l| if l == old { to } else { l }).collect::<Vec<_>>().join("/");
        }
        (Role::Formula | Role::FormulaIn(_) | Role::Condition, ..) if text.contains("in_size") => {
            *text = text.replace(&quoted.0, &quoted.1);
        }
        _ => {}
    });
    Ok(say!("told-size-renamed", old, new = to))
}
