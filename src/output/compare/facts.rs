//! What is true of each part of a draft: numbers, places and lines by size, and words. Two drafts are compared fact by fact.
//!
//! Computed things come from the model and from what is finished; every other formula is evaluated on trial, and every name and word is a fact of
//! its own, so that no field of the file is left out. Texts are kept beside, to tell what was only written otherwise.

use std::collections::BTreeMap;

use kurbo::{BezPath, Point};

use super::views::{is_other_view, lacks};
use super::{Side, Thing, Unit};
use crate::compute::{Item, NodeId, Trial};
use crate::document::{Address, Draft, Inner, Part, Role};
use crate::language::{Kind, Op, Value, What};
use crate::texts::t;

/// What is known in one size.
#[derive(Clone, Debug)]
pub(super) enum Got {
    /// This.
    Is(Thing),
    /// The draft says nothing of the kind there.
    NotSaid,
    /// It cannot be computed, or hangs on something that is not true.
    Fails,
}

/// Something that is true of a part.
#[derive(Clone, Debug)]
pub(super) struct Fact {
    /// What it is: `sewn length`.
    pub what: String,
    /// The texts that decide it and nothing else; empty: any of the part.
    pub field: String,
    /// By size, in the order of the sizes that are compared; a single one where it does not go by size.
    pub values: Vec<Got>,
    /// Whether it goes by size.
    pub by_size: bool,
    /// Nobody who sews needs to know it.
    pub is_note: bool,
    /// An angle that turns with its piece.
    pub turns: bool,
}

/// A text as it was typed.
#[derive(Clone, Debug)]
pub(super) struct Typed {
    /// The field with what says which of several.
    pub key: String,
    /// The same in words.
    pub what: String,
    /// Whether names in it can be followed.
    pub is_formula: bool,
    pub text: String,
}

/// A part and all that is true of it.
#[derive(Clone, Debug)]
pub(super) struct PartFacts {
    pub part: Part,
    pub facts: Vec<Fact>,
    pub texts: Vec<Typed>,
}

/// All parts of a draft.
#[derive(Debug, Default)]
pub(super) struct Facts {
    pub parts: Vec<PartFacts>,
    places: BTreeMap<Part, usize>,
}

impl Facts {
    /// Everything about a draft in these cases.
    pub fn of(side: &Side<'_>, cases: &[usize]) -> Self {
        let mut make = Make { side, cases, facts: Self::default(), trial: Trial::new(side.draft, &side.model.plan) };
        make.texts();
        make.head();
        make.chart();
        for i in (0..side.model.plan.frames().len()).filter(|i| side.model.plan.has_frame(*i)) {
            make.frame(i);
        }
        make.sewn();
        make.bought();
        make.facts
    }

    pub fn part(&mut self, part: Part) -> &mut PartFacts {
        let parts = &mut self.parts;
        let at = *self.places.entry(part).or_insert_with_key(|part| {
            parts.push(PartFacts { part: part.clone(), facts: Vec::new(), texts: Vec::new() });
            parts.len() - 1
        });
        &mut self.parts[at]
    }

    /// The place of a part.
    pub fn place(&self, part: &Part) -> Option<usize> {
        self.places.get(part).copied()
    }
}

impl PartFacts {
    pub fn put(&mut self, mut fact: Fact) {
        // Two things of one name are a fault of the draft; neither is left out.
        let what = fact.what.clone();
        let mut number = 1;
        while self.facts.iter().any(|f| f.what == fact.what) {
            number += 1;
            fact.what = format!("{what} ({number})");
        }
        self.facts.push(fact);
    }

    pub fn sized(&mut self, what: impl Into<String>, field: &str, values: Vec<Got>) {
        let (what, field) = (what.into(), field.to_owned());
        self.put(Fact { what, field, values, by_size: true, is_note: false, turns: false });
    }

    pub fn words(&mut self, what: impl Into<String>, field: &str, words: impl Into<String>) {
        let words: String = words.into();
        if words.is_empty() {
            return;
        }
        let values = vec![Got::Is(Thing::Words(words))];
        self.put(Fact {
            what: what.into(),
            field: field.to_owned(),
            values,
            by_size: false,
            is_note: false,
            turns: false,
        });
    }

    pub fn noted(&mut self, what: impl Into<String>, field: &str, words: impl Into<String>) {
        let before = self.facts.len();
        self.words(what, field, words);
        self.facts[before..].iter_mut().for_each(|f| f.is_note = true);
    }
}

/// Names of fields as words.
fn field_words(field: &str) -> String {
    match field {
        "is" | "at" => t!("field-formula"),
        "value is" => t!("fact-value"),
        "must" => t!("fact-must"),
        "one" => t!("field-side-one"),
        "two" => t!("field-side-two"),
        "allowance width" => t!("field-allowance"),
        "allowance from" => t!("field-allowance-start"),
        "allowance to_width" => t!("field-allowance-end"),
        "allowance turn_in" => t!("field-turn-in"),
        "corner width" => t!("field-corner-width"),
        "cut material" => t!("field-material"),
        "cut heading" => t!("field-grain"),
        "cut along" => t!("field-grain-line"),
        "cut on_fold" => t!("field-on-fold"),
        "cut border" => t!("field-border"),
        "folded_part" => t!("field-folded-part"),
        "gap" => t!("field-gap"),
        "sold_in" => t!("field-sold-in"),
        "label at" => t!("field-label"),
        "label turn" => t!("field-label-turn"),
        "fit" => t!("field-fit"),
        "stretch fit" => t!("field-stretch-fit"),
        "closure" => t!("field-closure"),
        "on" => t!("field-edge"),
        "title" => t!("field-title"),
        "author" => t!("field-author"),
        "licence" => t!("field-licence"),
        "contact" => t!("field-contact"),
        "edition" => t!("field-edition"),
        "date" => t!("field-date"),
        "width" => t!("field-width"),
        "ends" => t!("field-ends"),
        "join" => t!("field-join"),
        "size" => t!("field-size"),
        "letter" => t!("field-letter"),
        "source" => t!("field-source"),
        "what" => t!("field-what"),
        "how" => t!("field-how"),
        "level" => t!("field-level"),
        "body" => t!("field-body"),
        "least" => t!("field-least"),
        "most" => t!("field-most"),
        "depth" => t!("field-depth"),
        "text" => t!("field-text"),
        _ => field.replace('_', " "),
    }
}

/// Takes a draft apart.
pub(super) struct Make<'a> {
    pub side: &'a Side<'a>,
    pub cases: &'a [usize],
    pub facts: Facts,
    trial: Trial<'a>,
}

impl Make<'_> {
    /// A node's value in all cases.
    pub fn node(
        &self,
        node: NodeId,
        kind: Option<Kind>,
        thing: impl Fn(&Item<f64>, Option<Kind>) -> Option<Thing>,
    ) -> Vec<Got> {
        let model = self.side.model;
        let one = |case: &usize| match model.item(*case, node) {
            Some(item) if !model.is_untrue(*case, node) => thing(item, kind).map_or(Got::Fails, Got::Is),
            _ => Got::Fails,
        };
        self.cases.iter().map(one).collect()
    }

    pub fn named(&self, name: &str) -> Option<Vec<Got>> {
        let plan = &self.side.model.plan;
        let node = plan.node_named(name)?;
        Some(self.node(node, plan.nodes[node as usize].kind, thing))
    }

    /// A formula, evaluated on trial.
    fn formula(&self, frame: Option<&str>, text: &str) -> Vec<Got> {
        let model = self.side.model;
        let Ok(formula) = self.trial.read(frame, text, What::Any) else { return vec![Got::Fails; self.cases.len()] };
        let mut named = Vec::new();
        formula.program.root.each(&mut |op| {
            if let Op::Load(node) = op {
                named.push(*node);
            }
        });
        let is_untrue = |case: usize| named.iter().any(|node| model.is_untrue(case, *node));
        let one = |case: &usize| match self.trial.value(model, *case, &formula) {
            Some(item) if !is_untrue(*case) => thing(&item, Some(formula.kind)).map_or(Got::Fails, Got::Is),
            _ => Got::Fails,
        };
        self.cases.iter().map(one).collect()
    }

    /// All texts: formulas that nothing else computes, names and words as facts; each as it was typed.
    fn texts(&mut self) {
        let mut copy = self.side.draft.clone();
        let mut all: Vec<(Address, Role, String)> = Vec::new();
        copy.each_text(&mut |at, role, text| all.push((at.clone(), role.clone(), text.clone())));
        // Names in a row, as one fact.
        let mut rows: Vec<(Part, String, Vec<String>)> = Vec::new();
        for (at, role, text) in all {
            let part = match (&at.part, at.field) {
                (Part::Person(_), "cell") => match label_of(self.side.draft, &at) {
                    Some(row) => Part::Row(row),
                    None => at.part.clone(),
                },
                _ => at.part.clone(),
            };
            if lacks(self.side.model, &part) {
                continue;
            }
            let of = label(self.side.draft, &at);
            let (field, key) = (at.field, format!("{} {of}", at.field).trim_end().to_owned());
            let of_step = field.strip_prefix("step ").and_then(|word| {
                let piece = self.side.draft.pieces.iter().find(|p| part.frame() == Some(p.name.as_str()))?;
                Some(t!("fact-of-step", what = field_words(word), step = piece.steps.get(at.at)?.name))
            });
            let what = match of_step {
                Some(what) => what,
                None if of.is_empty() => field_words(field),
                None => t!("fact-of", what = field_words(field), of),
            };
            let own = self.facts.part(part.clone());
            if at.field == "value is" && is_other_view(self.side.model, &part) {
                continue;
            }
            // Which row or size a cell is of is in its key.
            if role == Role::OwnName
                || field == "cell of"
                || role == Role::Label && !matches!(at.part, Part::Kept | Part::Sheet(_))
            {
                continue;
            }
            // What a step makes, and puts in front of names, is words here: the parts themselves are compared by name.
            let role = if matches!(role, Role::Makes(_) | Role::Prefix) { Role::Words } else { role };
            let is_formula = !matches!(role, Role::Words | Role::Braces);
            if !text.is_empty() {
                own.texts.push(Typed { key: key.clone(), what: what.clone(), is_formula, text: text.clone() });
            }
            match role {
                _ if text.is_empty() || field == "note" || field == "reason" => {}
                // What a step names is how it was typed: what comes of it is compared by itself.
                Role::Words | Role::OwnAny | Role::OwnOf(..) if field.starts_with("step") => {}
                Role::Words | Role::Braces if matches!(part, Part::Kept) => own.noted(&what, &key, text),
                Role::Words | Role::Braces => own.words(what, &key, text),
                Role::Formula if is_words(&at) => row(&mut rows, part, field, &text),
                Role::Formula if !is_computed(&at) => {
                    let values = self.formula(part.frame(), &text);
                    let own = self.facts.part(part);
                    own.sized(what, &key, values);
                    if matches!(field, "cut heading" | "label turn") {
                        own.facts.iter_mut().rev().take(1).for_each(|f| f.turns = true);
                    }
                }
                Role::Own(_) if matches!(at.part, Part::Inner(_, Inner::Edge | Inner::Line, _)) => {}
                Role::Own(_) | Role::Frame if field.starts_with("step") => {}
                Role::Own(Inner::Edge) if matches!(field, "allowance edge") => {}
                Role::Own(Inner::Point) if matches!(field, "corner at") => {}
                Role::Formula | Role::FormulaIn(_) | Role::Condition | Role::OwnName => {}
                _ => row(&mut rows, part, field, &text),
            }
        }
        for (part, field, texts) in rows {
            let is_note =
                matches!(part, Part::Kept | Part::Sheet(_) | Part::Inner(_, Inner::Dart, _)) || field == "stack";
            let own = self.facts.part(part);
            let text = texts.join(", ");
            if is_note {
                own.noted(field_words(&field), &field, text)
            } else {
                own.words(field_words(&field), &field, text)
            }
        }
    }
}

/// Puts a name behind others of its field.
fn row(rows: &mut Vec<(Part, String, Vec<String>)>, part: Part, field: &str, text: &str) {
    let text: String = text.split_whitespace().collect();
    match rows.iter_mut().find(|(p, f, _)| *p == part && f == field) {
        Some((.., texts)) => texts.push(text),
        None => rows.push((part, field.to_owned(), vec![text])),
    }
}

/// Formulas that say which thing is meant, and are compared as such.
fn is_words(at: &Address) -> bool {
    match &at.part {
        Part::Seam(_) => matches!(at.field, "one" | "two"),
        Part::Joint(_) => true,
        _ => false,
    }
}

/// Formulas whose result is a fact already.
fn is_computed(at: &Address) -> bool {
    match &at.part {
        Part::Inner(_, Inner::Dart, _) => at.field != "allowance",
        Part::Inner(_, Inner::Pleat | Inner::Tuck, _) => at.field != "depth",
        Part::Inner(_, Inner::Mark, _) => at.field != "size",
        Part::Inner(..) | Part::Row(_) | Part::Person(_) => true,
        Part::Value(_) => matches!(at.field, "is" | "start"),
        Part::Seam(_) => at.field.starts_with("notch") || matches!(at.field, "stretch to_one" | "stretch to_two"),
        Part::Measure(_) => at.field == "is",
        Part::Strip(_) => at.field == "length",
        Part::Piece(_) => at.field.starts_with("step"),
        _ => false,
    }
}

/// What an address of one of several is called in the file.
fn label_of(draft: &Draft, at: &Address) -> Option<String> {
    let i = at.at;
    match &at.part {
        Part::Row(name) if at.field.starts_with("cell") => {
            draft.chart.rows.iter().find(|r| r.name == *name)?.cells.get(i).map(|c| c.0.clone())
        }
        Part::Person(name) if at.field.starts_with("cell") => {
            draft.chart.persons.iter().find(|p| p.name == *name)?.cells.get(i).map(|c| c.0.clone())
        }
        Part::Piece(name) => {
            let piece = draft.pieces.iter().find(|p| p.name == *name)?;
            let kind = at.field.split(' ').next()?;
            match kind {
                // One of several steps along an edge is told from another by where it starts.
                "allowance" => piece.allowances.get(i).map(|a| {
                    let from = if a.from.is_empty() { String::new() } else { format!(" from {}", a.from) };
                    format!("{} {}{from}", a.edge, a.set).replace("  ", " ").trim_end().to_owned()
                }),
                "corner" => piece.corners.get(i).map(|c| c.at.clone()),
                "cut" => piece.cuts.get(i).map(|c| c.material.clone()),
                _ => None,
            }
        }
        Part::Seam(name) if at.field.starts_with("notch") => {
            draft.seams.iter().find(|s| s.name == *name)?.notches.get(i).map(|n| n.name.clone())
        }
        Part::View(name) if at.field.starts_with("value") => {
            draft.views.iter().find(|v| v.name == *name)?.values.get(i).map(|v| v.0.clone())
        }
        _ => None,
    }
}

/// Which of several it is.
fn label(draft: &Draft, at: &Address) -> String {
    let number = || if at.at == 0 && at.inner == 0 { String::new() } else { format!("{}.{}", at.at + 1, at.inner + 1) };
    let found = label_of(draft, at);
    let label = match (&at.part, found) {
        (Part::Person(person), Some(_)) => Some(person.clone()),
        (_, found) => found,
    };
    label.unwrap_or_else(number)
}

/// The unit of a kind.
pub(super) fn unit(kind: Option<Kind>) -> Unit {
    match kind {
        Some(Kind::Angle) => Unit::Angle,
        Some(Kind::Quantity(0)) | None => Unit::Number,
        Some(Kind::Quantity(1) | Kind::Edge(_)) => Unit::Length,
        Some(Kind::Quantity(n)) => Unit::Power(n),
        Some(_) => Unit::Number,
    }
}

/// How long a piece of an endless line stands for it, mm to each side of its point nearest to the origin.
const ENDLESS: f64 = 100.0;

/// A value as it is compared; none for what has none.
pub(super) fn thing(item: &Item<f64>, kind: Option<Kind>) -> Option<Thing> {
    let Item::Value(value) = item else { return None };
    Some(match value {
        Value::Real(v) => Thing::Number(*v, unit(kind)),
        Value::Share(v) => Thing::Number(*v, Unit::Number),
        Value::Pair(x, y) => Thing::Place(Point::new(*x, *y)),
        Value::Truth(t) => Thing::Words(if *t { t!("yes") } else { t!("no") }),
        Value::Edge(edge) => Thing::Line(edge.curve.to_path()),
        Value::Line(p, d) => {
            let (p, d) = (Point::new(p[0], p[1]), kurbo::Vec2::new(d[0], d[1]));
            let foot = p - d * p.to_vec2().dot(d);
            let mut path = BezPath::new();
            path.move_to(foot - d * ENDLESS);
            path.line_to(foot + d * ENDLESS);
            Thing::Line(path)
        }
    })
}
