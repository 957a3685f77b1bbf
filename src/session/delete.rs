//! Taking a part out of a draft.

use std::collections::BTreeMap;
use std::sync::Arc;

use super::naming::{fresh_name, inner_parts};
use super::references::references;
use super::uses::used_by;
use crate::base::{Span, Unit, tolerance};
use crate::compute::{Lineage, Model, Owner, unit_of};
use crate::document::{Address, Axis, Cell, Does, Draft, Inner, Part, Role, Row, RowKind};
use crate::language::{Kind, literal_text};
use crate::texts::say;

/// What becomes of the texts that name the part.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Deleting {
    /// There must be none.
    IfUnused,
    /// They get its present value: a number if all sizes agree, else the name of a new house row.
    PutValue,
    /// They stay and become findings.
    LeaveBroken,
}

/// Why a part was not taken out. The draft is as it was.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum DeleteError {
    /// It is used.
    #[error("{}", say!("refused-used", part, users))]
    Used {
        /// The part.
        part: String,
        /// Who uses it.
        users: String,
    },
    /// It has no value that could stand in its place.
    #[error("{0}")]
    NoValue(String),
    /// It is seen there, but it comes from elsewhere.
    #[error("{0}")]
    Elsewhere(String),
    /// It is not there.
    #[error("{}", say!("gone-from-draft", part = .0))]
    Missing(String),
}

/// The most users that are named.
const MOST_NAMED: usize = 12;

/// Who uses a part, in words: each of them once.
pub fn users(draft: &Draft, part: &Part) -> Vec<String> {
    let mut out: Vec<String> = Vec::new();
    // Places and pictures of a piece go with it, and what views say of it or of a value.
    let goes_too = |at: &Address| match at.part {
        Part::Kept => ["table piece", "picture under", "block part", "plan piece"].contains(&at.field),
        Part::View(_) => ["pieces", "value"].contains(&at.field),
        _ => false,
    };
    for used in used_by(draft, part).into_iter().filter(|u| !goes_too(&u.at)) {
        let words = used.place(draft);
        if !out.contains(&words) {
            out.push(words);
        }
    }
    out
}

/// Why a part that is seen in a derived piece cannot be taken out there, and what to do; `None`: it can.
pub fn stands_elsewhere(draft: &Draft, part: &Part) -> Option<String> {
    let Part::Inner(frame, inner, name) = part else { return None };
    let lineage = Lineage::of(draft);
    let own = lineage.last(frame, name)?.part()?.clone();
    if inner_parts(draft, frame).contains(part) {
        return None;
    }
    let piece = draft.pieces.iter().find(|p| p.name == *frame)?;
    if let Some(step) = lineage.makers(&own).first().and_then(|i| piece.steps.get(*i))
        && own.frame() == Some(frame)
    {
        let is_drawn = matches!(step.does, Does::Draw(_)) && own == *part;
        return (!is_drawn).then(|| say!("refused-made-by", part = part.words(), step = step.name, piece = frame));
    }
    let leave = match inner {
        Inner::Point | Inner::Line | Inner::Dart | Inner::Mark => say!("hint-leave-out", piece = frame),
        _ => String::new(),
    };
    Some(say!("refused-passes", part = part.words(), own = own.words(), piece = frame, leave))
}

/// Takes a part out. Returns what was done, in a sentence.
///
/// # Errors
/// See [`DeleteError`].
pub fn delete(draft: &mut Draft, model: &Model, part: &Part, how: Deleting) -> Result<String, DeleteError> {
    if let Some(why) = stands_elsewhere(draft, part) {
        return Err(DeleteError::Elsewhere(why));
    }
    let users = users(draft, part);
    if let Part::Piece(name) = part
        && let Some(view) = draft.views.iter().find(|v| v.pieces.iter().all(|p| p == name) && !v.pieces.is_empty())
    {
        let words = say!("refused-all-of-view", part = part.words(), view = view.name);
        return Err(DeleteError::NoValue(words));
    }
    let mut next = draft.clone();
    let mut told = say!("told-taken-out", part = part.words());
    match how {
        Deleting::IfUnused if !users.is_empty() => {
            let mut named = users.iter().take(MOST_NAMED).cloned().collect::<Vec<_>>().join(", ");
            if users.len() > MOST_NAMED {
                named = say!("users-more", named, count = users.len() - MOST_NAMED);
            }
            return Err(DeleteError::Used { part: part.words(), users: named });
        }
        Deleting::PutValue => told.push_str(&put_value(&mut next, model, part)?),
        Deleting::LeaveBroken if !users.is_empty() => {
            told.push_str(&say!("told-broken", count = users.len()));
        }
        _ => {}
    }
    if !take_out(&mut next, part) {
        return Err(DeleteError::Missing(part.words()));
    }
    *draft = next;
    Ok(told)
}

/// Removes the part itself; names that only listed it go along.
pub(super) fn take_out(draft: &mut Draft, part: &Part) -> bool {
    fn without<T>(list: &mut Vec<T>, is_it: impl Fn(&T) -> bool) -> bool {
        let many = list.len();
        list.retain(|t| !is_it(t));
        list.len() < many
    }
    match part {
        Part::Row(n) => {
            draft.chart.persons.iter_mut().for_each(|p| p.cells.retain(|c| c.0 != *n));
            without(&mut draft.chart.rows, |r| r.name == *n)
        }
        Part::Person(n) => without(&mut draft.chart.persons, |p| p.name == *n),
        Part::SizeSet(n) => without(&mut draft.chart.sets, |s| s.name == *n),
        Part::Value(n) => {
            draft.views.iter_mut().for_each(|v| v.values.retain(|(o, _)| o.strip_prefix("value.").unwrap_or(o) != n));
            without(&mut draft.values, |v| v.name == *n)
        }
        Part::Drawing(n) => {
            draft.pictures.retain(|p| p.under != *n);
            without(&mut draft.drawings, |d| d.name == *n)
        }
        Part::Piece(n) => {
            draft.views.iter_mut().for_each(|v| v.pieces.retain(|p| p != n));
            draft.table.retain(|t| t.piece != *n);
            draft.plans.iter_mut().for_each(|p| p.places.retain(|l| l.strip || l.piece != *n));
            draft.pictures.retain(|p| p.under != *n);
            without(&mut draft.pieces, |p| p.name == *n)
        }
        Part::Placement(n) => without(&mut draft.placements, |p| p.name == *n),
        Part::Seam(n) => without(&mut draft.seams, |s| s.name == *n),
        Part::Joint(n) => without(&mut draft.joints, |j| j.name == *n),
        Part::Condition(n) => without(&mut draft.conditions, |c| c.name == *n),
        Part::Measure(n) => without(&mut draft.measures, |m| m.name == *n),
        Part::Material(n) => without(&mut draft.materials, |m| m.name == *n),
        Part::Strip(n) => {
            draft.plans.iter_mut().for_each(|p| p.places.retain(|l| !l.strip || l.piece != *n));
            without(&mut draft.strips, |s| s.name == *n)
        }
        Part::Notion(n) => without(&mut draft.notions, |m| m.name == *n),
        Part::View(n) => without(&mut draft.views, |v| v.name == *n),
        Part::Sheet(n) => without(&mut draft.sheets, |s| s.name == *n),
        Part::Step(i) if *i < draft.booklet.len() => {
            draft.booklet.remove(*i);
            true
        }
        Part::Inner(frame, inner, n) => {
            if let Some(piece) = draft.pieces.iter_mut().find(|p| p.name == *frame).map(Arc::make_mut) {
                let mut drawn = false;
                for step in &mut piece.steps {
                    let Does::Draw(draw) = &mut step.does else { continue };
                    drawn |= match inner {
                        Inner::Point => without(&mut draw.points, |p| p.name == *n),
                        Inner::Line => without(&mut draw.lines, |l| l.name == *n),
                        Inner::Dart => without(&mut draw.darts, |d| d.name == *n),
                        Inner::Mark => without(&mut draw.marks, |m| m.name == *n),
                        _ => false,
                    };
                }
                drawn
                    | match inner {
                        Inner::Point => without(&mut piece.points, |p| p.name == *n),
                        Inner::Edge => without(&mut piece.edges, |e| e.name == *n),
                        Inner::Line => without(&mut piece.lines, |e| e.name == *n),
                        Inner::Dart => without(&mut piece.darts, |d| d.name == *n),
                        Inner::Pleat => without(&mut piece.pleats, |t| t.name == *n),
                        Inner::Tuck => without(&mut piece.tucks, |t| t.name == *n),
                        Inner::Fold => without(&mut piece.folds, |f| f.name == *n),
                        Inner::Lengthen => without(&mut piece.lengthen, |l| l.name == *n),
                        Inner::Slit => without(&mut piece.slits, |l| l.name == *n),
                        Inner::Mark => without(&mut piece.marks, |m| m.name == *n),
                    }
            } else if let Some(own) = draft.drawings.iter_mut().find(|d| d.name == *frame).map(Arc::make_mut) {
                match inner {
                    Inner::Point => without(&mut own.points, |p| p.name == *n),
                    _ => without(&mut own.lines, |l| l.name == *n),
                }
            } else {
                false
            }
        }
        Part::Draft | Part::Step(_) | Part::Kept => false,
    }
}

/// Puts the present value of a row or value where its name stands.
fn put_value(draft: &mut Draft, model: &Model, part: &Part) -> Result<String, DeleteError> {
    let no_value = |why: &str| DeleteError::NoValue(say!("refused-no-value", part = part.words(), why));
    let name = match part {
        Part::Row(n) => format!("chart.{n}"),
        Part::Value(n) => n.clone(),
        _ => return Err(no_value(&say!("value-only-rows"))),
    };
    let node = model.plan.node_named(&name).ok_or_else(|| no_value(&say!("value-uncomputed")))?;
    let unit = match model.plan.nodes[node as usize].kind {
        Some(Kind::LENGTH) => Some(unit_of(draft)),
        Some(Kind::Angle) => Some(Unit::Degree),
        Some(Kind::NUMBER) => None,
        _ => return Err(no_value(&say!("value-no-number"))),
    };
    let cases = &model.plan.cases.list;
    let value = |case: usize| model.item(case, node).and_then(|i| i.real());
    let numbers: Option<Vec<f64>> = (0..cases.len()).map(value).collect();
    let numbers = numbers.filter(|n| !n.is_empty()).ok_or_else(|| no_value(&say!("value-some-sizes")))?;
    let differs = |view: &Model| {
        let here = |case: usize| view.item(case, node).and_then(|i| i.real());
        (0..cases.len()).any(|c| here(c).is_some_and(|n| (n - numbers[c]).abs() > tolerance::EQUAL))
    };
    if let Some(view) = model.views.iter().find(|v| differs(v)) {
        return Err(no_value(&say!("value-other-in-view", view = view.view())));
    }
    let agree = numbers.iter().all(|n| (n - numbers[0]).abs() <= tolerance::EQUAL);
    let (by, told) = if agree {
        let text = literal_text(numbers[0], unit);
        let told = say!("told-text-instead", text);
        (if text.starts_with('-') { format!("({text})") } else { text }, told)
    } else {
        let row = house_row(draft, model, part, &numbers, unit);
        let told = say!("told-row-instead", row);
        (row, told)
    };
    let mut edits: BTreeMap<Address, Vec<(Span, String)>> = BTreeMap::new();
    let mut listed: Vec<Address> = Vec::new();
    let owner = Owner::Part(part.clone());
    for occurrence in references(draft).all.iter().filter(|o| o.means(&owner) && o.at.part != *part) {
        if occurrence.in_formula {
            // `point_value.x` cannot come here: the kind was looked at.
            edits.entry(occurrence.at.clone()).or_default().push((occurrence.span, by.clone()));
        } else {
            listed.push(occurrence.at.clone());
        }
    }
    super::rename::apply(draft, edits);
    // Lists of found values cannot hold a number.
    for seam in &mut draft.seams {
        if seam.found_by.iter().any(|n| n == part.name()) {
            Arc::make_mut(seam).found_by.retain(|n| n != part.name());
        }
    }
    for condition in &mut draft.conditions {
        condition.found_by.retain(|n| n != part.name());
    }
    draft.each_text(&mut |at, role, text| {
        if listed.contains(at) && matches!(role, Role::Row) && matches!(at.part, Part::Measure(_)) {
            text.clear();
        }
    });
    Ok(told)
}

/// A house row with a number for each size and person.
fn house_row(draft: &mut Draft, model: &Model, part: &Part, numbers: &[f64], unit: Option<Unit>) -> String {
    let name = fresh_name(draft, part.name());
    let chart = &draft.chart;
    let lists = [(Axis::Girth, &chart.girth), (Axis::Cup, &chart.cup), (Axis::Length, &chart.length)];
    let mut by: Vec<Axis> = lists.iter().filter(|(_, l)| l.len() > 1).map(|(a, _)| *a).collect();
    if by.is_empty() {
        by.extend(lists.iter().find(|(_, l)| !l.is_empty()).map(|(a, _)| *a));
    }
    let mut cells: Vec<Cell> = Vec::new();
    let mut persons: Vec<(u32, String)> = Vec::new();
    for (case, number) in model.plan.cases.list.iter().zip(numbers) {
        let text = literal_text(*number, unit);
        if let Some(person) = case.person {
            persons.push((person, text));
            continue;
        }
        let label = |axis: &Axis| {
            let (_, labels) = lists.iter().find(|(a, _)| a == axis)?;
            labels.get(case.labels[*axis as usize]? as usize).cloned()
        };
        let key = by.iter().filter_map(label).collect::<Vec<_>>().join("/");
        if !cells.iter().any(|c| c.0 == key) {
            cells.push(Cell(key, text));
        }
    }
    for (person, text) in persons {
        if let Some(person) = draft.chart.persons.get_mut(person as usize) {
            person.cells.push(Cell(name.clone(), text));
        }
    }
    let what = say!("what-it-was", part = part.words());
    draft.chart.rows.push(Row { name: name.clone(), kind: RowKind::House, what, by, cells, ..Row::default() });
    name
}

/// Takes a size out of the chart, with its cells.
///
/// # Errors
/// When it is not there, or the last one.
pub fn delete_size(draft: &mut Draft, axis: Axis, label: &str) -> Result<String, DeleteError> {
    let chart = &mut draft.chart;
    let labels = chart.labels_mut(axis);
    let Some(at) = labels.iter().position(|l| l == label) else {
        return Err(DeleteError::Missing(say!("thing-called", kind = say!("word-size"), name = label)));
    };
    if labels.len() == 1 {
        return Err(DeleteError::NoValue(say!("refused-only-size", size = label)));
    }
    labels.remove(at);
    let neighbour = labels[at.min(labels.len() - 1)].clone();
    for row in &mut chart.rows {
        if let Some(place) = row.by.iter().position(|a| *a == axis) {
            row.cells.retain(|c| c.0.split('/').nth(place).map(str::trim) != Some(label));
        }
    }
    for set in &mut chart.sets {
        set.labels_mut(axis).retain(|l| l != label);
    }
    let moved = |text: &mut String| {
        if text.split('/').any(|l| l == label) {
            *text =
                text.split('/').map(|l| if l == label { neighbour.as_str() } else { l }).collect::<Vec<_>>().join("/");
            true
        } else {
            false
        }
    };
    let base = moved(&mut chart.base);
    chart.sets.iter_mut().for_each(|s| {
        moved(&mut s.base);
    });
    draft.sheets.iter_mut().for_each(|s| s.sizes.retain(|a| !a.split('/').any(|l| l == label)));
    let based = if base { say!("told-base-now", size = neighbour) } else { String::new() };
    Ok(say!("told-size-taken", size = label, based))
}
