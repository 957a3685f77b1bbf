//! Two drafts side by side, as computed: what came, went and changed, by how much and in which sizes.
//!
//! It stands in `output` because its list leaves the program (errata for testers and buyers) and because it only looks: it knows no command, no undo and no
//! window. Each draft is taken apart into facts ([`facts`]), which are compared part by part, by name; sizes are compared by their address. Pieces are laid
//! over each other by their frames; one that only lies elsewhere as a whole is laid over itself first.

mod apart;
mod choices;
mod facts;
mod parts;
mod renamed;
mod runs;
mod views;
mod words;

use std::collections::{BTreeMap, BTreeSet};

use kurbo::{Affine, BezPath, PathEl, Point, Vec2};

use crate::base::tolerance;
use crate::compute::{CaseError, Model};
use crate::document::{Draft, Inner, Part};
use crate::finish::Finished;
use crate::texts::{current, t};
use apart::{apart, is_same, laying, length};
use facts::{Fact, Facts, Got, PartFacts};
pub use runs::Sizes;

/// A draft with all that was computed of it.
#[derive(Clone, Copy, Debug)]
pub struct Side<'a> {
    /// The draft.
    pub draft: &'a Draft,
    /// Its model.
    pub model: &'a Model,
    /// Its pieces as they are cut.
    pub finished: &'a Finished,
}

/// The unit of a number.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unit {
    /// mm.
    Length,
    /// Radians.
    Angle,
    /// Plain.
    Number,
    /// A power of mm.
    Power(i8),
}

/// What is known of a part in one size.
#[derive(Clone, Debug, PartialEq)]
pub enum Thing {
    /// A number.
    Number(f64, Unit),
    /// A place in the frame of its piece, mm.
    Place(Point),
    /// A line in the frame of its piece, mm.
    Line(BezPath),
    /// Words.
    Words(String),
}

/// Why nothing is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Missing {
    /// The draft says nothing of the kind.
    NotSaid,
    /// It cannot be computed there, or hangs on something that is not true.
    NotComputed,
}

/// What was and what is, in one size.
#[derive(Clone, Debug, PartialEq)]
pub struct Pair {
    /// The size or person; empty where it does not go by size.
    pub size: String,
    /// What was.
    pub old: Result<Thing, Missing>,
    /// What is.
    pub new: Result<Thing, Missing>,
    /// How far two places or two lines are apart, mm: of lines the largest distance of any point of the one from the other.
    pub apart: Option<f64>,
    /// By how much a whole piece is turned besides, radians, clockwise.
    pub turned: f64,
}

/// How something differs.
#[derive(Clone, Debug, PartialEq)]
pub enum Change {
    /// Only the new draft has it.
    Came,
    /// Only the old draft has it.
    Went,
    /// All is equal but the name: what it was called.
    Renamed(String),
    /// What was and what is, in those sizes in which they differ.
    Other(Vec<Pair>),
    /// Its text was typed otherwise, and nothing that was computed differs.
    Written(String, String),
}

/// A difference.
#[derive(Clone, Debug, PartialEq)]
pub struct Difference {
    /// The part: of the new draft, or of the old one where it went.
    pub part: Part,
    /// The part in words, `edge hem`, within its piece; `size 22`.
    pub called: String,
    /// What of it, `sewn length`; empty where the whole part came, went or got another name.
    pub what: String,
    /// How.
    pub change: Change,
    /// In which views, where it is not so in all; else empty.
    pub view: String,
    /// Without effect on any number, line or word of the pattern.
    pub is_note: bool,
}

/// Something that neither draft computes.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NotCompared {
    /// The part.
    pub part: Part,
    /// What of it.
    pub what: String,
    /// In which sizes.
    pub sizes: Vec<String>,
}

/// All that differs.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Comparison {
    /// The differences in the order of the new draft, what went behind its like.
    pub differences: Vec<Difference>,
    /// What neither draft computes.
    pub not_compared: Vec<NotCompared>,
    /// The sizes and persons that both have, as far as they were asked for, in the order of the new draft.
    pub sizes: Sizes,
}

impl Comparison {
    /// How many differences there are, and how many notes besides.
    pub fn counts(&self) -> (usize, usize) {
        let notes = self.differences.iter().filter(|d| d.is_note).count();
        (self.differences.len() - notes, notes)
    }

    /// Only what concerns these pieces or drawings; without any all.
    #[must_use]
    pub fn only(mut self, pieces: &[String]) -> Self {
        let wanted = |part: &Part| pieces.is_empty() || part.frame().is_some_and(|f| pieces.iter().any(|p| p == f));
        self.differences.retain(|d| wanted(&d.part));
        self.not_compared.retain(|n| wanted(&n.part));
        self
    }
}

/// Compares two drafts in the sizes and persons that both have; if some are asked for, in those alone. Drafts with views are compared in each
/// view that both have, or in these `views`.
///
/// # Errors
/// A size or view that is asked for and that neither draft has, or that could be several.
pub fn compare(old: Side<'_>, new: Side<'_>, asked: &[String], views: &[String]) -> Result<Comparison, CaseError> {
    views::compare(old, new, asked, views)
}

/// Compares two drafts in one view.
fn in_view(old: Side<'_>, new: Side<'_>, asked: &[String]) -> Result<Comparison, CaseError> {
    let wanted = wanted(&old, &new, asked)?;
    let address = |side: &Side<'_>, i: usize| side.model.plan.cases.list[i].address.clone();
    let (mut of_old, mut of_new) = (Vec::new(), Vec::new());
    let mut sizes = Sizes { language: current(), ..Sizes::default() };
    let range = new.model.plan.cases.range;
    for i in 0..new.model.plan.cases.list.len() {
        let name = address(&new, i);
        let there = old.model.plan.cases.list.iter().position(|c| c.address == name);
        let Some(k) = there.filter(|k| (*k < old.model.plan.cases.range) == (i < range)) else { continue };
        if i < range {
            sizes.whole += 1;
        }
        if wanted.as_ref().is_none_or(|w| w.contains(&name)) {
            sizes.list.push(name);
            sizes.range += usize::from(i < range);
            of_new.push(i);
            of_old.push(k);
        }
    }
    let mut run = Run {
        was: Facts::of(&old, &of_old),
        is: Facts::of(&new, &of_new),
        out: Comparison { sizes, ..Comparison::default() },
    };
    let names = renamed::Names::find(&run.was, &run.is);
    run.came_and_went(&old, &new, wanted.as_ref());
    run.parts(&names);
    run.out.differences.sort_by_key(|d| place_of(&run.is, &run.was, d));
    Ok(run.out)
}

/// The addresses that are asked for; none: all.
fn wanted(old: &Side<'_>, new: &Side<'_>, asked: &[String]) -> Result<Option<BTreeSet<String>>, CaseError> {
    let find = |name: &String| {
        let (there, here) = (old.model.plan.cases.find(name), new.model.plan.cases.find(name));
        let of = |side: &Side<'_>, i: usize| side.model.plan.cases.list[i].address.clone();
        match (here, there) {
            (Ok(i), _) => Ok(of(new, i)),
            (Err(CaseError::Unknown { .. }), Ok(i)) => Ok(of(old, i)),
            (Err(e), _) => Err(e),
        }
    };
    if asked.is_empty() { Ok(None) } else { asked.iter().map(find).collect::<Result<_, _>>().map(Some) }
}

/// Where a difference stands in the list: groups, pieces in the order of the new draft, parts within them, what went behind what is there.
fn place_of(is: &Facts, was: &Facts, d: &Difference) -> (u8, usize, u8, usize) {
    let group = match &d.part {
        Part::Draft => 0,
        Part::SizeSet(_) => 1,
        Part::Row(_) => 2,
        Part::Person(_) => 3,
        Part::Value(_) => 4,
        Part::Piece(_) | Part::Drawing(_) | Part::Inner(..) => 5,
        Part::Placement(_) => 6,
        Part::Seam(_) => 7,
        Part::Joint(_) => 8,
        Part::Condition(_) => 9,
        Part::Measure(_) => 10,
        Part::Material(_) => 11,
        Part::Strip(_) => 12,
        Part::Notion(_) => 13,
        Part::View(_) => 14,
        Part::Step(_) => 15,
        Part::Sheet(_) => 16,
        Part::Kept => 17,
    };
    let behind = is.parts.len();
    let of = |part: &Part| is.place(part).or_else(|| was.place(part).map(|i| i + behind)).unwrap_or(2 * behind);
    let frame = d.part.frame().map_or(0, |f| {
        let piece = of(&Part::Piece(f.to_owned()));
        piece.min(of(&Part::Drawing(f.to_owned())))
    });
    let inner = match &d.part {
        Part::Inner(_, inner, _) => match inner {
            Inner::Edge => 1,
            Inner::Line => 2,
            Inner::Dart => 3,
            Inner::Pleat => 4,
            Inner::Tuck => 5,
            Inner::Fold => 6,
            Inner::Lengthen => 7,
            Inner::Slit => 8,
            Inner::Mark => 9,
            Inner::Point => 10,
        },
        _ => 0,
    };
    (group, frame, inner, of(&d.part))
}

struct Run {
    was: Facts,
    is: Facts,
    out: Comparison,
}

impl Run {
    fn tell(&mut self, part: &Part, what: &str, change: Change, is_note: bool) {
        let called = words::called(part);
        let (what, view) = (what.to_owned(), String::new());
        self.out.differences.push(Difference { part: part.clone(), called, what, change, view, is_note });
    }

    /// Sizes of the range that came or went.
    fn came_and_went(&mut self, old: &Side<'_>, new: &Side<'_>, wanted: Option<&BTreeSet<String>>) {
        let range = |side: &Side<'_>| -> Vec<String> {
            let cases = &side.model.plan.cases;
            cases.list[..cases.range].iter().map(|c| c.address.clone()).collect()
        };
        let (was, is) = (range(old), range(new));
        for (list, other, change) in [(&is, &was, Change::Came), (&was, &is, Change::Went)] {
            for size in list.iter().filter(|s| !other.contains(s) && wanted.is_none_or(|w| w.contains(*s))) {
                self.out.differences.push(Difference {
                    part: Part::Draft,
                    called: t!("of-size", size),
                    what: String::new(),
                    change: change.clone(),
                    view: String::new(),
                    is_note: false,
                });
            }
        }
    }

    fn parts(&mut self, names: &renamed::Names) {
        let (was, is) = (std::mem::take(&mut self.was), std::mem::take(&mut self.is));
        let mut met: BTreeSet<usize> = BTreeSet::new();
        let frames = |facts: &Facts| -> BTreeSet<String> {
            let is_frame = |p: &&PartFacts| matches!(p.part, Part::Piece(_) | Part::Drawing(_));
            facts.parts.iter().filter(is_frame).filter_map(|p| p.part.frame().map(str::to_owned)).collect()
        };
        let (old_frames, new_frames) = (frames(&was), frames(&is));
        let mut motions = BTreeMap::new();
        for frame in &new_frames {
            let before = names.frame_before(frame);
            if old_frames.contains(before) {
                let found = self.motions(&was, &is, before, frame, names);
                motions.insert(frame.clone(), found);
            }
        }
        for part in &is.parts {
            let before = names.before(&part.part);
            match was.place(&before) {
                Some(i) => {
                    met.insert(i);
                    if before.name() != part.part.name() {
                        self.tell(&part.part, "", Change::Renamed(before.name().to_owned()), false);
                    }
                    let motion = part.part.frame().and_then(|f| motions.get(f));
                    self.part(&was.parts[i], part, motion, names);
                }
                None => {
                    let of_new_frame = matches!(&part.part, Part::Inner(f, ..) if !motions.contains_key(f));
                    if !of_new_frame {
                        self.tell(&part.part, "", Change::Came, false);
                    }
                }
            }
        }
        for (_, part) in was.parts.iter().enumerate().filter(|(i, _)| !met.contains(i)) {
            let of_old_frame = matches!(&part.part, Part::Inner(f, ..) if !motions.contains_key(names.frame_after(f)));
            if !of_old_frame {
                self.tell(&names.in_new_frame(&part.part), "", Change::Went, false);
            }
        }
        (self.was, self.is) = (was, is);
    }

    /// By size how a piece or drawing as a whole lies elsewhere; those that do are told.
    fn motions(
        &mut self,
        was: &Facts,
        is: &Facts,
        before: &str,
        after: &str,
        names: &renamed::Names,
    ) -> Vec<Option<Affine>> {
        // The lines that are in both; an outline says where a piece is, its inner lines only where there is no outline.
        let lines = |wanted: Inner| -> Vec<(&Fact, &Fact)> {
            is.parts
                .iter()
                .filter(|p| matches!(&p.part, Part::Inner(f, inner, _) if f == after && *inner == wanted))
                .filter_map(|p| {
                    let old = &was.parts[was.place(&names.before(&p.part))?];
                    let line = |p: &PartFacts| p.facts.iter().position(|f| f.what == t!("fact-line"));
                    Some((&old.facts[line(old)?], &p.facts[line(p)?]))
                })
                .collect()
        };
        let outline = lines(Inner::Edge);
        let pairs = if outline.is_empty() { lines(Inner::Line) } else { outline };
        let whole = |parts: &Facts, frame: &str| {
            let is_edge = |p: &&PartFacts| matches!(&p.part, Part::Inner(f, Inner::Edge, _) if f == frame);
            parts.parts.iter().filter(is_edge).count()
        };
        let all = self.out.sizes.list.clone();
        let mut told = Vec::new();
        let motions = all
            .iter()
            .enumerate()
            .map(|(i, size)| {
                if pairs.is_empty() || whole(was, before) != whole(is, after) {
                    return None;
                }
                let both: Option<Vec<(&BezPath, &BezPath)>> = pairs
                    .iter()
                    .map(|(old, new)| match (old.values.get(i), new.values.get(i)) {
                        (Some(Got::Is(Thing::Line(a))), Some(Got::Is(Thing::Line(b)))) => Some((a, b)),
                        _ => None,
                    })
                    .collect();
                let (motion, from, to, turned) = motion(&both?)?;
                told.push(Pair {
                    size: size.clone(),
                    old: Ok(Thing::Place(from)),
                    new: Ok(Thing::Place(to)),
                    apart: Some(length(to - from)),
                    turned,
                });
                Some(motion)
            })
            .collect();
        if !told.is_empty() {
            let is_piece = is.place(&Part::Piece(after.to_owned())).is_some();
            let part = if is_piece { Part::Piece(after.to_owned()) } else { Part::Drawing(after.to_owned()) };
            self.tell(&part, &t!("fact-whole-piece"), Change::Other(told), false);
        }
        motions
    }

    /// A part that both drafts have.
    fn part(&mut self, was: &PartFacts, is: &PartFacts, motions: Option<&Vec<Option<Affine>>>, names: &renamed::Names) {
        let mut fields: Vec<&str> = Vec::new();
        let mut found: Vec<(usize, String, Vec<Pair>, bool)> = Vec::new();
        let matched: Vec<Option<usize>> = is
            .facts
            .iter()
            .map(|f| {
                was.facts.iter().position(|o| o.what == f.what || names.follow(&o.what, is.part.frame()) == f.what)
            })
            .collect();
        for (k, fact) in is.facts.iter().enumerate() {
            let old = matched[k].map(|i| &was.facts[i]);
            if let Some(pairs) = self.fact(is, old, Some(fact), motions, names) {
                found.push((k, fact.what.clone(), pairs, fact.is_note));
                fields.push(&fact.field);
            }
        }
        for (i, fact) in was.facts.iter().enumerate().filter(|(i, _)| !matched.contains(&Some(*i))) {
            if let Some(pairs) = self.fact(is, Some(fact), None, motions, names) {
                found.push((i, fact.what.clone(), pairs, fact.is_note));
                fields.push(&fact.field);
            }
        }
        let is_told = |key: &str| {
            fields
                .iter()
                .any(|f| f.is_empty() && !matches!(is.part, Part::Piece(_)) || key.starts_with(f) && !f.is_empty())
        };
        // Numbers of sizes that came, went or were not asked for are told with the size.
        let sizes = &self.out.sizes.list;
        let is_other_size = |key: &str| {
            let label = key.strip_prefix("cell ").filter(|_| matches!(is.part, Part::Row(_)));
            let has =
                |size: &String, label: &str| label.split('/').all(|l| size == l || size.split('/').any(|s| s == l));
            label.is_some_and(|label| !sizes.iter().any(|size| has(size, label)))
        };
        // Whatever moved a piece as a whole was told as that.
        let has_moved = motions.is_some_and(|m| m.iter().any(Option::is_some));
        let is_told = |key: &str| is_told(key) || has_moved && matches!(is.part, Part::Inner(_, Inner::Point, _));
        let mut written = Vec::new();
        for text in &is.texts {
            let old = was.texts.iter().find(|t| names.follow(&t.key, is.part.frame()) == text.key);
            let before = old.map_or(String::new(), |o| names.followed(o, is.part.frame()));
            if before != text.text && !is_told(&text.key) && !is_other_size(&text.key) {
                written.push((text.what.clone(), old.map_or(String::new(), |o| o.text.clone()), text.text.clone()));
            }
        }
        for text in &was.texts {
            let key = names.follow(&text.key, is.part.frame());
            if !is.texts.iter().any(|t| t.key == key) && !is_told(&key) && !is_other_size(&key) {
                written.push((text.what.clone(), text.text.clone(), String::new()));
            }
        }
        for (_, what, pairs, is_note) in found {
            self.tell(&is.part, &what, Change::Other(pairs), is_note);
        }
        for (field, old, new) in written {
            self.tell(&is.part, &field, Change::Written(old, new), true);
        }
    }

    /// Where a fact differs; what neither side computes is noted.
    fn fact(
        &mut self,
        part: &PartFacts,
        was: Option<&Fact>,
        is: Option<&Fact>,
        motions: Option<&Vec<Option<Affine>>>,
        names: &renamed::Names,
    ) -> Option<Vec<Pair>> {
        let one = is.or(was)?;
        let count = if one.by_size { self.out.sizes.list.len() } else { 1 };
        let mut pairs = Vec::new();
        let mut neither = Vec::new();
        for i in 0..count {
            let size = if one.by_size { self.out.sizes.list[i].clone() } else { String::new() };
            let got = |fact: Option<&Fact>| match fact.map(|f| f.values.get(i)) {
                Some(Some(Got::Is(thing))) => Ok(thing.clone()),
                Some(Some(Got::Fails)) => Err(Missing::NotComputed),
                _ => Err(Missing::NotSaid),
            };
            let (old, new) = (got(was), got(is));
            if old == Err(Missing::NotComputed) && new == Err(Missing::NotComputed) {
                neither.push(size);
                continue;
            }
            let motion = motions.and_then(|m| m.get(i).copied().flatten());
            let old = old.map(|thing| {
                let thing = match motion {
                    Some(motion) => laid(thing, motion, one.turns),
                    None => thing,
                };
                // The same words with the new names in them.
                match (&thing, &new) {
                    (Thing::Words(was), Ok(Thing::Words(is))) if names.follow(was, part.part.frame()) == *is => {
                        Thing::Words(is.clone())
                    }
                    _ => thing,
                }
            });
            if let Some(apart) = differ(&old, &new) {
                pairs.push(Pair { size, old, new, apart, turned: 0.0 });
            }
        }
        if !neither.is_empty() {
            let (part, what) = (part.part.clone(), one.what.clone());
            self.out.not_compared.push(NotCompared { part, what, sizes: neither });
        }
        (!pairs.is_empty()).then_some(pairs)
    }
}

/// `None`: nothing differs. Else how far two places or lines are apart.
fn differ(old: &Result<Thing, Missing>, new: &Result<Thing, Missing>) -> Option<Option<f64>> {
    match (old, new) {
        (Err(a), Err(b)) => (a != b).then_some(None),
        (Ok(Thing::Number(a, of)), Ok(Thing::Number(b, other))) if of == other => {
            let by = match of {
                Unit::Length => tolerance::COMPARED,
                Unit::Angle => tolerance::COMPARED_ANGLE,
                Unit::Number | Unit::Power(_) => tolerance::COMPARED_NUMBER * a.abs().max(1.0),
            };
            ((a - b).abs() > by).then_some(None)
        }
        (Ok(Thing::Place(a)), Ok(Thing::Place(b))) => {
            let far = length(*b - *a);
            (far > tolerance::COMPARED).then_some(Some(far))
        }
        (Ok(Thing::Line(a)), Ok(Thing::Line(b))) => match apart(a, b) {
            Some(far) => (far > tolerance::LINES_APART).then_some(Some(far)),
            None => (a != b).then_some(None),
        },
        (Ok(a), Ok(b)) => (a != b).then_some(None),
        _ => Some(None),
    }
}

/// Something of a piece after the motion that lays the piece over its new place.
fn laid(thing: Thing, motion: Affine, turns: bool) -> Thing {
    match thing {
        Thing::Place(p) => Thing::Place(motion * p),
        Thing::Line(line) => Thing::Line(motion * line),
        Thing::Number(v, Unit::Angle) if turns => Thing::Number(v + angle(motion), Unit::Angle),
        other => other,
    }
}

/// By which angle a motion turns, radians.
fn angle(motion: Affine) -> f64 {
    let [cos, sin, ..] = motion.as_coeffs();
    crate::curves::Pt::new(cos, sin).angle()
}

/// The one motion that lays all lines over their mates, if there is one and it moves something: with a place before and after, and the turn.
fn motion(lines: &[(&BezPath, &BezPath)]) -> Option<(Affine, Point, Point, f64)> {
    let points = |path: &BezPath| -> Vec<Point> {
        path.elements()
            .iter()
            .flat_map(|el| match el {
                PathEl::MoveTo(p) | PathEl::LineTo(p) => vec![*p],
                PathEl::QuadTo(p, q) => vec![*p, *q],
                PathEl::CurveTo(p, q, r) => vec![*p, *q, *r],
                PathEl::ClosePath => Vec::new(),
            })
            .collect()
    };
    let (was, is): (Vec<Point>, Vec<Point>) = {
        let mut all = (Vec::new(), Vec::new());
        for (a, b) in lines {
            all.0.extend(points(a));
            all.1.extend(points(b));
        }
        all
    };
    if was.len() != is.len() {
        return None;
    }
    let (from, to) = (*was.first()?, *is.first()?);
    let shift = to - from;
    if lines.iter().all(|(a, b)| is_same(a, b, shift)) {
        let moves = length(shift) > tolerance::COMPARED;
        return moves.then_some((Affine::translate(shift), from, to, 0.0));
    }
    let far = (0..was.len()).max_by(|i, k| (was[*i] - from).hypot2().total_cmp(&(was[*k] - from).hypot2()))?;
    let motion = laying(from, was[far], to, is[far])?;
    let fits = lines.iter().all(|(a, b)| is_same(&(motion * (*a).clone()), b, Vec2::ZERO));
    fits.then_some((motion, from, to, angle(motion)))
}
