//! Which part every name of a derived piece means: before each step, in the formulas of a step, and in the end.
//!
//! It is kept while pieces are derived, so that names are followed by the very rules by which they are computed.

use std::collections::{BTreeMap, BTreeSet};
use std::fmt;
use std::sync::Arc;

use super::shape::Shape;
use super::{is_hidden, made_of};
use crate::compute::names::thing;
use crate::document::{Does, Draft, Inner, Part, Piece, fold};
use crate::texts::say;

/// Of what a name, or a part of it, comes.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Owner {
    /// It is the name of this part.
    Part(Part),
    /// A step of this piece, by its place, puts it in front of names.
    Prefix(String, usize),
    /// It always stands there.
    Fixed(&'static str),
}

/// A name as it is seen in a piece.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Named {
    /// What it is there.
    pub inner: Inner,
    /// Of what it is made, in order, each with its letters.
    pub spelled: Vec<(Owner, String)>,
}

impl Named {
    /// A name that is that of a part.
    pub fn of(part: Part) -> Self {
        let inner = if let Part::Inner(_, inner, _) = &part { *inner } else { Inner::Point };
        let name = part.name().to_owned();
        Self { inner, spelled: vec![(Owner::Part(part), name)] }
    }

    /// The part that is meant.
    pub fn part(&self) -> Option<&Part> {
        self.spelled.iter().find_map(|(owner, _)| if let Owner::Part(part) = owner { Some(part) } else { None })
    }
}

/// The names that are seen at a place.
pub(crate) type Locals = BTreeMap<String, Named>;

/// The names of a derived piece.
#[derive(Clone, Debug, Default)]
pub(crate) struct PieceNames {
    /// Before each step.
    pub before: Vec<Arc<Locals>>,
    /// In the formulas of each step.
    pub formulas: Vec<Arc<Locals>>,
    /// What each step makes.
    pub made: Vec<Vec<Part>>,
    /// What is seen from outside.
    pub last: Arc<Locals>,
    /// Whether it could be derived, so that its own names come before all others.
    pub is_told: bool,
    /// The pieces of which it is made, also by way of others.
    pub from: BTreeSet<String>,
}

/// A name that two things would have.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Double {
    pub piece: String,
    /// The step after which it is double; empty: from the start, or in the end.
    pub step: String,
    pub name: String,
    /// What has the name.
    pub first: Inner,
}

impl fmt::Display for Double {
    /// What is wrong, and what to do.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (name, piece, step, first) = (&self.name, &self.piece, &self.step, thing(self.first.word()));
        f.write_str(&match step.is_empty() {
            true => say!("step-name-double", name, piece, first),
            false => say!("step-name-double-after", name, piece, step, first),
        })
    }
}

/// Which part every name of derived pieces means.
#[derive(Clone, Debug, Default)]
pub(crate) struct Lineage {
    pub pieces: BTreeMap<String, PieceNames>,
    pub doubles: Vec<Double>,
}

impl Lineage {
    /// Follows the names of a draft.
    pub fn of(draft: &Draft) -> Self {
        super::Whole::with_names(draft, Some(Self::default())).1.unwrap_or_default()
    }

    /// What a name of a piece means in the end.
    pub fn last(&self, piece: &str, name: &str) -> Option<&Named> {
        self.pieces.get(piece)?.last.get(name)
    }

    /// The steps of a derived piece, by their places, that make this part.
    pub fn makers(&self, part: &Part) -> Vec<usize> {
        let Part::Inner(piece, ..) = part else { return Vec::new() };
        let made = self.pieces.get(piece).map_or(&[][..], |p| &p.made);
        made.iter().enumerate().filter(|(_, made)| made.contains(part)).map(|(i, _)| i).collect()
    }

    /// The names of a derived piece and, if it is the base of others, of those: everything that a name in it may meet.
    pub fn beyond<'a>(&'a self, frame: &'a str) -> impl Iterator<Item = (&'a str, &'a PieceNames)> {
        let concerned = move |(name, of): &(&String, &PieceNames)| *name == frame || of.from.contains(frame);
        self.pieces.iter().filter(concerned).map(|(name, of)| (name.as_str(), of))
    }

    fn entry(&mut self, piece: &str) -> &mut PieceNames {
        self.pieces.entry(piece.to_owned()).or_default()
    }
}

impl PieceNames {
    /// The names of all stages.
    pub fn all(&self) -> impl Iterator<Item = (&String, &Named)> {
        self.before.iter().chain([&self.last]).flat_map(|l| l.iter())
    }
}

/// What a step made, told by the step itself.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Made {
    pub inner: Inner,
    pub name: String,
    /// What always stands behind the name.
    pub tail: &'static str,
}

/// The names of one derived piece while it is derived.
pub(super) struct Following<'a> {
    lineage: &'a mut Lineage,
    piece: &'a Piece,
    now: Arc<Locals>,
    /// The first step that is done in this stage.
    since: usize,
}

impl<'a> Following<'a> {
    /// The piece as it comes from its base.
    pub fn begin(lineage: &'a mut Lineage, draft: &Draft, piece: &'a Piece, stage: &Piece, shape: &Shape) -> Self {
        let mut from: BTreeSet<String> = BTreeSet::new();
        for base in made_of(piece).filter(|n| !n.is_empty()) {
            from.extend(lineage.pieces.get(base).map_or_else(BTreeSet::new, |p| p.from.clone()));
            from.insert(base.clone());
        }
        let base = names_in_end(lineage, draft, &piece.of);
        *lineage.entry(&piece.name) = PieceNames { is_told: true, from, ..PieceNames::default() };
        let mut out = Self { lineage, piece, now: base, since: 0 };
        out.now = out.next(stage, shape, "", &[], &Locals::new(), None);
        out
    }

    /// A step is looked at: what it sees.
    pub fn step(&mut self) {
        let now = Arc::clone(&self.now);
        let names = self.lineage.entry(&self.piece.name);
        names.before.push(now);
        names.made.push(Vec::new());
    }

    /// The step was done in its stage, or led to a further one.
    pub fn done(&mut self, draft: &Draft, after: (&Piece, &Shape), made: &[Made], is_further: bool) {
        let i = self.lineage.entry(&self.piece.name).made.len() - 1;
        if is_further {
            self.end_stage(i + 1);
        }
        let step = &self.piece.steps[i];
        let (prefix, copied) = match &step.does {
            Does::Join(join) => (join.prefix.as_str(), names_in_end(self.lineage, draft, &join.piece)),
            Does::Unfold(unfold) => (unfold.prefix.as_str(), Arc::clone(&self.now)),
            _ => ("", Arc::default()),
        };
        let name = self.piece.name.clone();
        let part = |m: &Made| Part::Inner(name.clone(), m.inner, m.name.clone());
        let parts = made.iter().filter(|m| m.tail.is_empty()).map(part).collect();
        self.lineage.entry(&name).made[i] = parts;
        let prefix = (!copied.is_empty()).then_some((prefix, i));
        self.now = self.next(after.0, after.1, &step.name, made, &copied, prefix);
    }

    /// The last stage is the piece as it is told: with what is typed in it.
    pub fn end(mut self) {
        let count = self.lineage.entry(&self.piece.name).made.len();
        let mut last = Locals::clone(&self.now);
        let mut seen: BTreeMap<String, Inner> = last.iter().map(|(n, of)| (fold(n), of.inner)).collect();
        for (inner, name) in self.piece.named().filter(|(inner, _)| *inner != Inner::Edge) {
            // A mark or fold that is typed takes the place of one that passes: it is the same one under the same name.
            let replaces =
                matches!(inner, Inner::Mark | Inner::Fold) && last.get(name).is_some_and(|n| n.inner == inner);
            if replaces {
                continue;
            }
            if let Some(first) = seen.insert(fold(name), inner) {
                self.double("", name, first);
            }
            let own = Part::Inner(self.piece.name.clone(), inner, name.clone());
            last.entry(name.clone()).or_insert_with(|| Named::of(own));
        }
        self.now = Arc::new(last);
        self.end_stage(count);
        self.lineage.entry(&self.piece.name).last = self.now;
    }

    /// The formulas of the steps of a stage see the whole of it.
    fn end_stage(&mut self, until: usize) {
        let now = Arc::clone(&self.now);
        let names = self.lineage.entry(&self.piece.name);
        names.formulas.extend((self.since..until).map(|_| Arc::clone(&now)));
        self.since = until;
    }

    fn double(&mut self, step: &str, name: &str, first: Inner) {
        let (piece, step) = (self.piece.name.clone(), step.to_owned());
        self.lineage.doubles.push(Double { piece, step, name: name.to_owned(), first });
    }

    fn next(
        &mut self,
        stage: &Piece,
        shape: &Shape,
        step: &str,
        made: &[Made],
        copied: &Locals,
        prefix: Option<(&str, usize)>,
    ) -> Arc<Locals> {
        let own = |m: &Made| {
            let mut spelled = Named::of(Part::Inner(self.piece.name.clone(), m.inner, m.name.clone())).spelled;
            spelled.extend((!m.tail.is_empty()).then(|| (Owner::Fixed(m.tail), m.tail.to_owned())));
            spelled
        };
        let with_prefix = |name: &str| {
            let (prefix, i) = prefix?;
            let mut spelled = copied.get(name.strip_prefix(prefix)?)?.spelled.clone();
            if !prefix.is_empty() {
                spelled.insert(0, (Owner::Prefix(self.piece.name.clone(), i), prefix.to_owned()));
            }
            Some(spelled)
        };
        let passes = |name: &str| self.now.get(name).map(|n| n.spelled.clone());
        let is_made = |m: &&Made, name: &str| name.strip_suffix(m.tail).is_some_and(|n| n == m.name);
        let rest = shape.rest.named();
        let names = stage.named().chain(rest).filter(|(_, name)| !is_hidden(name));
        let mut out = Locals::new();
        let mut seen: BTreeMap<String, Inner> = BTreeMap::new();
        let mut doubles = Vec::new();
        for (inner, name) in names {
            let spelled = made.iter().find(|m| is_made(m, name)).map(own);
            let Some(spelled) = spelled.or_else(|| passes(name)).or_else(|| with_prefix(name)) else { continue };
            if let Some(first) = seen.insert(fold(name), inner) {
                doubles.push((name.clone(), first));
            }
            out.entry(name.clone()).or_insert(Named { inner, spelled });
        }
        for (name, first) in doubles {
            self.double(step, &name, first);
        }
        Arc::new(out)
    }
}

/// The names of a piece that are seen from outside.
fn names_in_end(lineage: &Lineage, draft: &Draft, piece: &str) -> Arc<Locals> {
    if let Some(names) = lineage.pieces.get(piece) {
        return Arc::clone(&names.last);
    }
    let Some(piece) = draft.pieces.iter().find(|p| p.name == piece) else { return Arc::default() };
    let part = |(inner, name): (Inner, &String)| Part::Inner(piece.name.clone(), inner, name.clone());
    let mut out = Locals::new();
    for part in piece.named().map(part) {
        out.entry(part.name().to_owned()).or_insert_with(|| Named::of(part));
    }
    Arc::new(out)
}

/// A piece that could not be derived: only what is typed in it.
pub(super) fn bare(lineage: &mut Lineage, piece: &Piece) {
    let mut last = Locals::new();
    for (inner, name) in piece.named() {
        let part = Part::Inner(piece.name.clone(), inner, name.clone());
        last.entry(name.clone()).or_insert_with(|| Named::of(part));
    }
    let names = lineage.entry(&piece.name);
    names.last = Arc::new(last);
    names.from = made_of(piece).filter(|n| !n.is_empty()).cloned().collect();
}
