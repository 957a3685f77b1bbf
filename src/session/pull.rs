//! Pulling a point or handle: which numbers in its formula change, and where the change goes.
//!
//! A [`Grip`] is taken once, from the draft and the model at that moment. Every move since then is told as the whole way
//! from the start, so that doing it twice does no harm and going back gives the very same text.

use kurbo::{Point, Vec2};

use super::computed::Computed;
use super::naming::fresh_name;
use super::{EditError, gathered};
use crate::base::{Span, Unit, tolerance};
use crate::compute::{Def, Engine, Formula, Item, Plan, Trial, unit_of};
use crate::document::{Address, Axis, Cell, Draft, Row, RowKind};
use crate::language::{Frame, Kind, Literal, Op, What, coarsest_step, literals, nudged};
use crate::texts::say;

/// To which sizes a pull goes.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Reach {
    /// All of them: the number itself changes.
    #[default]
    All,
    /// The chosen size or person only.
    One,
    /// The chosen size and all beyond it.
    FromHereUp,
}

/// A number that moves the point.
#[derive(Clone, Debug, PartialEq)]
struct Knob {
    literal: Literal,
    /// How the point moves, mm for one inside unit.
    effect: Vec2,
}

/// A point or handle that is held.
#[derive(Clone, Debug, PartialEq)]
pub struct Grip {
    /// What is pulled.
    pub at: Address,
    /// Its formula when it was taken.
    pub text: String,
    /// Its place then, mm, in its frame.
    pub place: Point,
    frame: String,
    case: usize,
    knobs: Vec<Knob>,
    /// `text` with an offset at its end that is still nothing.
    loose: Option<(String, Vec<Knob>)>,
    /// How the point moves for each of `knobs` once the seams are true again, where that is something else.
    settled: Option<Vec<Vec2>>,
}

/// The least sine of the angle between two numbers' effects at which both are used.
const LEAST_SINE: f64 = 0.17;
/// The smallest part of a correction that is tried.
const LEAST_PART: f64 = 1.0 / 64.0;
/// The most corrections on the way to the pointer.
const MOST_ROUNDS: usize = 12;

fn point() -> What {
    What::Kind(Kind::Point(Frame(0)))
}

fn place_of(item: Item<f64>) -> Option<Point> {
    item.point().map(|p| Point::new(p.x, p.y)).filter(|p| p.is_finite())
}

/// Where formulas with other numbers in them put the point.
struct Prober<'a> {
    trial: Trial<'a>,
    computed: &'a Computed,
    frame: &'a str,
    case: usize,
}

impl Prober<'_> {
    fn place(&self, text: &str) -> Option<Point> {
        let model = self.computed.model.as_ref()?;
        let formula: Formula = self.trial.read(Some(self.frame), text, point()).ok()?;
        place_of(self.trial.value(model, self.case, &formula)?)
    }

    /// The place with each number changed by so much.
    fn with(&self, text: &str, knobs: &[Knob], by: &[f64]) -> Option<Point> {
        let mut changed = text.to_owned();
        let mut edits: Vec<(Span, String)> = knobs
            .iter()
            .zip(by)
            .map(|(knob, by)| {
                (knob.literal.span, format!("({} + {})", knob.literal.span.of(text), probe(&knob.literal, *by)))
            })
            .collect();
        edits.sort_by_key(|e| std::cmp::Reverse(e.0));
        for (span, to) in edits {
            changed.replace_range(span.start..span.end, &to);
        }
        self.place(&changed)
    }

    /// The numbers of a formula that move its point.
    fn knobs(&self, text: &str) -> Vec<Knob> {
        let Some(start) = self.place(text) else { return Vec::new() };
        let mut out = Vec::new();
        for literal in literals(text).into_iter().filter(|l| l.pullable) {
            let step = probe_step(&literal);
            let knob = Knob { literal, effect: Vec2::ZERO };
            let Some(there) = self.with(text, std::slice::from_ref(&knob), &[step]) else { continue };
            let effect = (there - start) / step;
            if effect.hypot() > tolerance::NO_PULL {
                out.push(Knob { effect, ..knob });
            }
        }
        out
    }
}

/// By how much a number is changed to see what it does.
fn probe_step(literal: &Literal) -> f64 {
    let (length, other) = tolerance::PULL_PROBE;
    if literal.unit.is_some_and(Unit::is_length) { length } else { other }
}

/// A number inside as a literal that is read back to the last digit.
fn probe(literal: &Literal, by: f64) -> String {
    match literal.unit {
        Some(unit) if unit.is_length() => format!("({by:.12}) * 1 mm"),
        Some(Unit::Percent) | None => format!("({by:.15})"),
        Some(_) => format!("({:.15}) * 1 deg", by.to_degrees()),
    }
}

/// The one or two numbers that take the point where it is wanted best: those whose effects stand most square to each other,
/// of equals those further right in the text; one alone if no two span the motion.
fn best(knobs: Vec<Knob>) -> Vec<Knob> {
    let mut pair: Option<(f64, usize, usize)> = None;
    for i in 0..knobs.len() {
        for k in i + 1..knobs.len() {
            let (a, b) = (knobs[i].effect, knobs[k].effect);
            let sine = (a.cross(b) / (a.hypot() * b.hypot())).abs();
            if sine >= LEAST_SINE && pair.is_none_or(|(most, ..)| sine >= most - tolerance::PULL_GAIN) {
                pair = Some((sine, i, k));
            }
        }
    }
    if let Some((_, i, k)) = pair {
        return vec![knobs[i].clone(), knobs[k].clone()];
    }
    // No two span the motion: the last one that stands in the text, which is nearest to the point.
    knobs.last().cloned().into_iter().collect()
}

impl Grip {
    /// Takes hold of a point or handle in a case.
    ///
    /// # Errors
    /// Why it cannot be pulled: its formula cannot be read or computed there.
    pub fn take(draft: &Draft, computed: &Computed, at: &Address, case: usize) -> Result<Self, EditError> {
        let refuse = |why: &str| EditError::refused(say!("refused-pull", part = at.part.words(), why));
        let frame = at.part.frame().unwrap_or_default().to_owned();
        let made_of = draft.pieces.iter().find(|p| p.name == frame && !p.of.is_empty());
        let text = draft.text(at).ok_or_else(|| match made_of {
            Some(piece) => refuse(&say!("pull-elsewhere", of = piece.of, piece = frame)),
            None => refuse(&say!("gone-it")),
        })?;
        let model = computed.model.as_ref().ok_or_else(|| refuse(&say!("draft-uncomputed")))?;
        if computed.draft.text(at).as_ref() != Some(&text) {
            return Err(refuse(&say!("pull-computing")));
        }
        let trial = Trial::new(&computed.draft, &model.plan);
        let prober = Prober { trial, computed, frame: &frame, case };
        let place = prober.place(&text).ok_or_else(|| refuse(&say!("pull-no-answer")))?;
        let knobs = best(prober.knobs(&text));
        let bare = text.trim();
        let whole = if is_one_word(bare) { bare.to_owned() } else { format!("({bare})") };
        let unit = unit_of(draft).sign();
        // An offset that is there already is changed, not doubled.
        let with_offset = match ends_in_offset(&text) {
            true => text.clone(),
            false => format!("{whole}.moved(offset(0 {unit}, 0 {unit}))"),
        };
        let mut own = prober.knobs(&with_offset);
        let last_two = own.split_off(own.len().saturating_sub(2));
        let loose = (last_two.len() == 2).then_some((with_offset, last_two));
        Ok(Self { at: at.clone(), text, place, frame, case, knobs, loose, settled: None })
    }

    /// Looks how the point moves once the seams are true again: where it hangs on values that are found, these change with
    /// it, and it would slip from under the pointer. Computes the draft once for each number, so it is done when it is taken.
    pub fn settle(mut self, computed: &Computed) -> Self {
        let Some(model) = &computed.model else { return self };
        let trial = Trial::new(&computed.draft, &model.plan);
        let formula = trial.read(Some(&self.frame), &self.text, point());
        if !formula.is_ok_and(|f| hangs_on_found(&model.plan, &f)) {
            return self;
        }
        let effects = self.knobs.iter().map(|knob| {
            let step = probe_step(&knob.literal);
            let mut draft = Draft::clone(&computed.draft);
            let number = knob.literal.span.of(&self.text);
            let mut text = self.text.clone();
            let (start, end) = (knob.literal.span.start, knob.literal.span.end);
            text.replace_range(start..end, &format!("({number} + {})", probe(&knob.literal, step)));
            draft.set_text(&self.at, &text);
            let model = Engine::new().compute_guarded(&draft, &[]).ok()?;
            let trial = Trial::new(&draft, &model.plan);
            let formula = trial.read(Some(&self.frame), &text, point()).ok()?;
            let there = place_of(trial.value(&model, self.case, &formula)?)?;
            Some((there - self.place) / step)
        });
        self.settled = effects.collect();
        self
    }

    /// Where the formula alone must put the point, so that it comes to lie by so much from its place in the end.
    fn aim(&self, by: Vec2) -> Vec2 {
        match (self.settled.as_deref(), self.knobs.as_slice()) {
            (Some([a, b]), [p, q]) if a.cross(*b).abs() > tolerance::NO_PULL => {
                p.effect * (by.cross(*b) / a.cross(*b)) + q.effect * (a.cross(by) / a.cross(*b))
            }
            (Some([a]), [p]) if a.hypot() > tolerance::NO_PULL => p.effect * (by.dot(*a) / a.hypot2()),
            _ => by,
        }
    }

    /// The numbers in the formula that a pull changes; none: it can only be moved by an offset at its end.
    pub fn numbers(&self) -> Vec<Span> {
        self.knobs.iter().map(|k| k.literal.span).collect()
    }

    /// The same numbers in the formula as it is by now.
    pub fn numbers_in(&self, text: &str) -> Vec<Span> {
        let (then, now) = (literals(&self.text), literals(text));
        if then.len() != now.len() {
            return Vec::new(); // an offset or a house row came in
        }
        let places = self.knobs.iter().filter_map(|k| then.iter().position(|l| l.span == k.literal.span));
        places.map(|i| now[i].span).collect()
    }

    /// What holds the point, where no number of its own formula moves it.
    pub fn held_by(&self) -> Option<String> {
        self.knobs.is_empty().then(|| say!("pull-held", text = self.text.trim()))
    }

    /// Whether a pull goes wherever the pointer goes; else the point slides along a line.
    pub fn is_free(&self) -> bool {
        self.knobs.len() == 2
    }

    /// The pull by so much, mm. `loose`: by an offset at the end of the formula.
    ///
    /// # Errors
    /// Where nothing moves it.
    pub fn pulled(&self, computed: &Computed, by: Vec2, reach: Reach, loose: bool) -> Result<Pull, EditError> {
        let (text, knobs) = match (&self.loose, loose) {
            (Some((text, knobs)), true) => (text, knobs),
            _ => (&self.text, &self.knobs),
        };
        if knobs.is_empty() {
            let why = self.held_by().unwrap_or_default();
            return Err(EditError::refused(say!("pull-held-hint", why)));
        }
        let changes = match &computed.model {
            Some(model) if by != Vec2::ZERO => {
                let trial = Trial::new(&computed.draft, &model.plan);
                let prober = Prober { trial, computed, frame: &self.frame, case: self.case };
                let by = if std::ptr::eq(knobs, &self.knobs) { self.aim(by) } else { by };
                reached(&prober, text, knobs, self.place + by)
            }
            _ => vec![0.0; knobs.len()],
        };
        let size = computed.model.as_ref().and_then(|m| m.plan.cases.list.get(self.case));
        let who = match size {
            Some(case) => Who { labels: case.labels, person: case.person, address: case.address.clone() },
            None => return Err(EditError::refused(say!("pull-size-gone"))),
        };
        let changes = knobs.iter().zip(changes).map(|(k, by)| Change { knob: k.clone(), by }).collect();
        Ok(Pull { at: self.at.clone(), text: text.clone(), changes, reach, who })
    }
}

/// Whether a formula ends in an offset by two numbers, as a pull adds one.
fn ends_in_offset(text: &str) -> bool {
    let Some(at) = text.rfind(".moved(offset(") else { return false };
    let inside = literals(text).into_iter().filter(|l| l.span.start > at && l.pullable).count();
    let commas = text[at..].matches(',').count();
    inside == 2 && commas == 1 && text.trim_end().ends_with("))")
}

/// Whether a formula hangs on a value that the program finds.
fn hangs_on_found(plan: &Plan, formula: &Formula) -> bool {
    let mut seen = vec![false; plan.nodes.len()];
    let mut open = Vec::new();
    formula.program.root.each(&mut |op| {
        if let Op::Load(symbol) = op {
            open.push(*symbol);
        }
    });
    while let Some(node) = open.pop() {
        let Some(known) = seen.get_mut(node as usize).filter(|s| !**s) else { continue };
        *known = true;
        if matches!(plan.nodes[node as usize].def, Def::Found(..)) {
            return true;
        }
        open.extend(&plan.nodes[node as usize].deps);
    }
    false
}

/// Whether a formula is a name, or a name with functions behind it, so that a further function can follow.
fn is_one_word(text: &str) -> bool {
    let mut depth = 0usize;
    text.chars().all(|c| {
        match c {
            '(' | '[' => depth += 1,
            ')' | ']' => depth = depth.saturating_sub(1),
            _ => {}
        }
        depth > 0 || c == '_' || c == '.' || c == ')' || c.is_alphanumeric()
    })
}

/// By how much the numbers must change so that the point comes to `target`, or as near as they take it.
fn reached(prober: &Prober<'_>, text: &str, knobs: &[Knob], target: Point) -> Vec<f64> {
    let mut by = vec![0.0; knobs.len()];
    let Some(mut here) = prober.with(text, knobs, &by) else { return by };
    for _ in 0..MOST_ROUNDS {
        let off = target - here;
        let effects: Vec<Vec2> = (0..knobs.len())
            .map(|i| {
                let step = probe_step(&knobs[i].literal);
                let mut probed = by.clone();
                probed[i] += step;
                prober.with(text, knobs, &probed).map_or(knobs[i].effect, |there| (there - here) / step)
            })
            .collect();
        let wanted = match effects[..] {
            [a, b] if a.cross(b).abs() > tolerance::NO_PULL => {
                vec![off.cross(b) / a.cross(b), a.cross(off) / a.cross(b)]
            }
            [a, ..] if a.hypot() > tolerance::NO_PULL => {
                let mut one = vec![0.0; knobs.len()];
                one[0] = off.dot(a) / a.hypot2();
                one
            }
            _ => return by,
        };
        // Half of a step is tried where the whole of it leads where there is no answer, or further away.
        let mut part = 1.0;
        let next = loop {
            let tried: Vec<f64> = by.iter().zip(&wanted).map(|(b, w)| b + part * w).collect();
            match prober.with(text, knobs, &tried) {
                Some(there) if (target - there).hypot() < off.hypot() - tolerance::PULL_GAIN => {
                    break Some((tried, there));
                }
                _ if part < LEAST_PART => break None,
                _ => part /= 2.0,
            }
        };
        let Some((tried, there)) = next else { return by };
        let moved = (there - here).hypot();
        (by, here) = (tried, there);
        if moved < tolerance::CURVE {
            return by;
        }
    }
    by
}

/// Whose number is changed.
#[derive(Clone, Debug, PartialEq)]
struct Who {
    labels: [Option<u32>; 3],
    person: Option<u32>,
    address: String,
}

#[derive(Clone, Debug, PartialEq)]
struct Change {
    knob: Knob,
    by: f64,
}

/// A pull, as a change of the draft in which it was begun.
#[derive(Clone, Debug, PartialEq)]
pub struct Pull {
    at: Address,
    text: String,
    changes: Vec<Change>,
    reach: Reach,
    who: Who,
}

impl Pull {
    /// What it does, for undo.
    pub fn label(&self) -> String {
        let (part, size) = (self.at.part.words(), &self.who.address);
        match self.reach {
            Reach::All => say!("undo-pull", part),
            Reach::One => say!("undo-pull-in", part, size),
            Reach::FromHereUp => say!("undo-pull-up", part, size),
        }
    }

    /// The formula that it makes, where all sizes follow.
    pub(super) fn apply(&self, draft: &mut Draft) -> Result<String, EditError> {
        let mut text = self.text.clone();
        let mut changes = self.changes.clone();
        changes.sort_by_key(|c| std::cmp::Reverse(c.knob.literal.span));
        let mut told = Vec::new();
        for change in &changes {
            let literal = &change.knob.literal;
            let step = coarsest_step(literal, change.knob.effect.hypot(), tolerance::PULL_STEP);
            match self.reach {
                Reach::All => {
                    let Some(next) = nudged(&text, literal, change.by, step) else {
                        return Err(EditError::refused(say!("pull-too-far", number = literal.span.of(&text))));
                    };
                    text = next;
                }
                Reach::One | Reach::FromHereUp => {
                    let row = own_row(draft, &text, literal.span);
                    if row.is_none() && change.by == 0.0 {
                        continue;
                    }
                    let row = match row {
                        Some(row) => row,
                        None => {
                            let row = new_row(draft, &self.at, literal, &self.who, self.reach);
                            let number = literal.span.of(&text).to_owned();
                            text.replace_range(literal.span.start..literal.span.end, &format!("({number} + {row})"));
                            told.push(row.clone());
                            row
                        }
                    };
                    nudge_cells(draft, &row, literal, change.by, step, &self.who, self.reach)?;
                }
            }
        }
        if !draft.set_text(&self.at, &text) {
            return Err(EditError::refused(say!("gone-named", part = self.at.part.words())));
        }
        Ok(match told.is_empty() {
            true => String::new(),
            false => say!("told-house-row", rows = gathered(&told)),
        })
    }
}

/// The house row that was added to a number by an earlier pull: `(8 cm + neck_1)`.
fn own_row(draft: &Draft, text: &str, number: Span) -> Option<String> {
    let before = text.get(..number.start)?.trim_end();
    let after = text.get(number.end..)?.trim_start().strip_prefix('+')?.trim_start();
    let end = after.find(|c: char| c != '_' && !c.is_alphanumeric())?;
    let (name, rest) = after.split_at(end);
    let is_house = draft.chart.rows.iter().any(|r| r.name == name && r.kind == RowKind::House);
    (before.ends_with('(') && rest.trim_start().starts_with(')') && is_house).then(|| name.to_owned())
}

/// The number nothing in the unit of a literal.
fn nothing(literal: &Literal) -> String {
    literal.unit.map_or_else(|| "0".to_owned(), |unit| format!("0 {}", unit.sign()))
}

/// A house row that is nothing everywhere yet.
fn new_row(draft: &mut Draft, at: &Address, literal: &Literal, who: &Who, reach: Reach) -> String {
    let name = fresh_name(draft, at.part.name());
    let chart = &draft.chart;
    let used = [(Axis::Girth, &chart.girth), (Axis::Cup, &chart.cup), (Axis::Length, &chart.length)];
    let mut by: Vec<Axis> = used.iter().filter(|(_, l)| l.len() > 1).map(|(axis, _)| *axis).collect();
    if by.is_empty() {
        by.extend(used.iter().find(|(_, l)| !l.is_empty()).map(|(axis, _)| *axis));
    }
    if reach == Reach::FromHereUp && who.person.is_none() {
        by.truncate(1);
    }
    draft.chart.rows.push(Row {
        name: name.clone(),
        kind: RowKind::House,
        what: say!("note-added-to", part = at.part.words()),
        by,
        is: nothing(literal),
        ..Row::default()
    });
    name
}

/// Changes the cells of a house row for one size, or from there up, or for a person.
fn nudge_cells(
    draft: &mut Draft,
    row: &str,
    literal: &Literal,
    by: f64,
    step: crate::language::Step,
    who: &Who,
    reach: Reach,
) -> Result<(), EditError> {
    let wrong = |text: &str| EditError::refused(say!("pull-house-row", text, row));
    let change = |text: &str| -> Result<String, EditError> {
        let all = literals(text);
        let [only] = all.as_slice() else { return Err(wrong(text)) };
        nudged(text, only, by, step).ok_or_else(|| wrong(text))
    };
    let zero = nothing(literal);
    if let Some(person) = who.person {
        let cells = &mut draft.chart.persons.get_mut(person as usize).ok_or_else(|| wrong(&zero))?.cells;
        match cells.iter_mut().find(|c| c.0 == row) {
            Some(cell) => cell.1 = change(&cell.1)?,
            None => cells.push(Cell(row.to_owned(), change(&zero)?)),
        }
        return Ok(());
    }
    let chart = &mut draft.chart;
    let lists =
        [(Axis::Girth, chart.girth.clone()), (Axis::Cup, chart.cup.clone()), (Axis::Length, chart.length.clone())];
    let row_of = chart.rows.iter_mut().find(|r| r.name == row).ok_or_else(|| wrong(&zero))?;
    let label_at = |axis: Axis, place: Option<u32>| -> Option<String> {
        let (_, labels) = lists.iter().find(|(a, _)| *a == axis)?;
        labels.get(place? as usize).cloned()
    };
    let place_of = |axis: Axis| who.labels[axis as usize];
    // All addresses on the row's axes that the change goes to.
    let mut keys: Vec<Vec<String>> = vec![Vec::new()];
    for (i, axis) in row_of.by.iter().enumerate() {
        let labels: Vec<String> = match (reach, i) {
            (Reach::FromHereUp, 0) => {
                let from = place_of(*axis).unwrap_or(0) as usize;
                lists.iter().find(|(a, _)| a == axis).map(|(_, l)| l[from.min(l.len())..].to_vec()).unwrap_or_default()
            }
            (Reach::FromHereUp, _) => lists.iter().find(|(a, _)| a == axis).map(|(_, l)| l.clone()).unwrap_or_default(),
            _ => label_at(*axis, place_of(*axis)).into_iter().collect(),
        };
        keys = keys
            .iter()
            .flat_map(|k| labels.iter().map(move |l| [k.as_slice(), std::slice::from_ref(l)].concat()))
            .collect();
    }
    let otherwise = if row_of.is.is_empty() { zero } else { row_of.is.clone() };
    for key in keys.iter().map(|k| k.join("/")) {
        match row_of.cells.iter_mut().find(|c| c.0 == key) {
            Some(cell) => cell.1 = change(&cell.1)?,
            None => row_of.cells.push(Cell(key, change(&otherwise)?)),
        }
    }
    // In the order of the sizes, whatever came first.
    let first = row_of.by.first().copied();
    let order = lists.iter().find(|(a, _)| Some(*a) == first).map(|(_, l)| l.clone()).unwrap_or_default();
    row_of.cells.sort_by_key(|c| {
        let head = c.0.split('/').next().unwrap_or_default();
        order.iter().position(|l| l == head)
    });
    Ok(())
}
