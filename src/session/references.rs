//! What the names in the texts of a draft mean, part by part: for renaming, "used by" and deleting.
//!
//! Names are followed here by the same rules by which formulas are computed; a test holds the two against each other.

use std::collections::BTreeMap;
use std::sync::Arc;

use crate::base::Span;
use crate::compute::{Lineage, Locals, MATERIAL_MEMBERS, Named, Owner};
use crate::document::{Address, Draft, Inner, Part, Role};
use crate::language::{Expr, NamePart, parse, parse_condition};

/// A stretch of a name, and of what it is the name.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Said {
    /// Which word of the name it belongs to.
    pub word: usize,
    /// The stretch in the text: a whole word, or less where a step made one name of several.
    pub span: Span,
    /// Of what it is the name.
    pub owner: Owner,
}

/// One meaning of a dotted name: which of its words mean which part.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Meaning {
    /// What its words say, in order.
    pub said: Vec<Said>,
    /// What can be put in front of the name to say just this.
    pub prefix: String,
}

impl Meaning {
    /// The thing itself, however long it is spelled.
    pub fn thing(&self) -> Vec<&Owner> {
        let last = self.said.last().map(|s| s.word);
        self.said.iter().filter(|s| Some(s.word) == last).map(|s| &s.owner).collect()
    }

    /// The parts that it names.
    pub fn parts(&self) -> impl Iterator<Item = (Span, &Part)> {
        self.said.iter().filter_map(|s| if let Owner::Part(part) = &s.owner { Some((s.span, part)) } else { None })
    }
}

/// A name in a text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Occurrence {
    /// The text.
    pub at: Address,
    /// The whole name.
    pub span: Span,
    /// What it can mean; more than one is an error of the formula.
    pub meanings: Vec<Meaning>,
    /// What it could mean too, if the names of a derived piece did not come before all others there.
    pub shadowed: Vec<Meaning>,
    /// Whether it stands in a formula; else the text is the name.
    pub in_formula: bool,
    /// Whether it is here that the name is given.
    pub gives: bool,
}

impl Occurrence {
    /// What its words can be the names of.
    pub fn said(&self) -> impl Iterator<Item = &Said> {
        self.meanings.iter().flat_map(|m| &m.said)
    }

    /// Whether any of its words can mean this.
    pub fn means(&self, owner: &Owner) -> bool {
        self.said().any(|s| s.owner == *owner)
    }
}

/// A text that cannot be read, in which nothing can be followed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Unread {
    pub at: Address,
    pub text: String,
}

/// All names of a draft.
#[derive(Clone, Debug, Default)]
pub(super) struct References {
    pub all: Vec<Occurrence>,
    pub unread: Vec<Unread>,
}

/// What can be named.
struct Index {
    globals: BTreeMap<String, Part>,
    /// The names of pieces and drawings as they are seen from outside.
    frames: BTreeMap<String, Arc<Locals>>,
    /// What names mean in derived pieces.
    lineage: Lineage,
    /// The frame that a placement lays.
    laid: BTreeMap<String, String>,
    seams: BTreeMap<String, Part>,
    /// Strips and finished measures, each by its word and name.
    worded: BTreeMap<(&'static str, String), Part>,
}

/// The names that are seen where a text stands.
struct Sight<'a> {
    frame: &'a str,
    /// The names, and those that count where the first have none.
    locals: [Option<&'a Arc<Locals>>; 2],
    /// Whether they come before all others.
    is_told: bool,
}

impl<'a> Sight<'a> {
    fn get(&self, name: &str) -> Option<&'a Named> {
        self.locals.iter().flatten().find_map(|l| l.get(name))
    }
}

/// A word of a dotted name.
#[derive(Clone, Copy)]
struct Word<'a> {
    text: &'a str,
    span: Span,
}

/// A name in a frame, from its first letter on.
fn spelled(named: &Named, word: usize, span: Span) -> Vec<Said> {
    let mut from = span.start;
    let mut out = Vec::with_capacity(named.spelled.len());
    for (owner, letters) in &named.spelled {
        out.push(Said { word, span: Span::new(from, from + letters.len()), owner: owner.clone() });
        from += letters.len();
    }
    out
}

impl Index {
    fn of(draft: &Draft) -> Self {
        let mut globals = BTreeMap::new();
        // The first of a name counts, as when formulas are computed.
        let mut add = |name: &String, part: Part| {
            globals.entry(name.clone()).or_insert(part);
        };
        draft.chart.rows.iter().for_each(|r| add(&r.name, Part::Row(r.name.clone())));
        draft.values.iter().for_each(|v| add(&v.name, Part::Value(v.name.clone())));
        draft.pieces.iter().for_each(|p| add(&p.name, Part::Piece(p.name.clone())));
        draft.drawings.iter().for_each(|d| add(&d.name, Part::Drawing(d.name.clone())));
        draft.placements.iter().for_each(|p| add(&p.name, Part::Placement(p.name.clone())));
        draft.materials.iter().for_each(|m| add(&m.name, Part::Material(m.name.clone())));
        let lineage = Lineage::of(draft);
        let mut frames = BTreeMap::new();
        let names = draft.pieces.iter().map(|p| &p.name).chain(draft.drawings.iter().map(|d| &d.name));
        for frame in names {
            let locals = lineage.pieces.get(frame).map(|p| Arc::clone(&p.last));
            let typed = || {
                let mut locals = Locals::new();
                for part in super::naming::inner_parts(draft, frame) {
                    locals.entry(part.name().to_owned()).or_insert_with(|| Named::of(part));
                }
                Arc::new(locals)
            };
            frames.entry(frame.clone()).or_insert_with(|| locals.unwrap_or_else(typed));
        }
        let laid = draft.placements.iter().map(|p| (p.name.clone(), p.lay.clone())).collect();
        let seams = draft.seams.iter().map(|s| (s.name.clone(), Part::Seam(s.name.clone()))).collect();
        let strips = draft.strips.iter().map(|s| (("strip", s.name.clone()), Part::Strip(s.name.clone())));
        let measures = draft.measures.iter().map(|m| (("measure", m.name.clone()), Part::Measure(m.name.clone())));
        let worded = strips.chain(measures).collect();
        Self { globals, frames, lineage, laid, seams, worded }
    }

    /// What is seen of a piece or drawing from outside, and in what is typed in it.
    fn whole<'a>(&'a self, frame: &'a str) -> Sight<'a> {
        let is_told = self.lineage.pieces.get(frame).is_some_and(|p| p.is_told);
        Sight { frame, locals: [self.frames.get(frame), None], is_told }
    }

    /// What is seen where a text stands. Names that a step lists are those of the piece before it; its formulas see all of the stage.
    fn sight<'a>(&'a self, at: &'a Address, in_formula: bool) -> Option<Sight<'a>> {
        let frame = at.part.frame()?;
        let whole = self.whole(frame);
        if !whole.is_told || !at.field.starts_with("step ") {
            return Some(whole);
        }
        let names = self.lineage.pieces.get(frame)?;
        let (before, formulas) = (names.before.get(at.at), names.formulas.get(at.at));
        let locals = if in_formula { [formulas, before] } else { [before, formulas] };
        Some(Sight { locals, ..whole })
    }

    /// A part of a frame that formulas can name by these words, the first of which is `word` of the name.
    fn local(sight: &Sight<'_>, words: &[Word<'_>], word: usize) -> Option<Vec<Said>> {
        let (first, rest) = words.split_first()?;
        let named = sight.get(first.text)?;
        let rest: Vec<&str> = rest.iter().map(|w| w.text).collect();
        let fits = match (named.inner, rest.as_slice()) {
            (Inner::Point, [] | ["x" | "y"]) | (Inner::Edge | Inner::Line, []) => true,
            (Inner::Dart, ["leg" | "intake" | "tip" | "first_foot" | "second_foot", rest @ ..]) => {
                matches!(rest, [] | ["x" | "y"])
            }
            _ => false,
        };
        fits.then(|| spelled(named, word, first.span))
    }

    /// What a dotted name can mean, and what it could mean too if a derived piece's own names did not come first.
    fn meanings(&self, sight: Option<&Sight<'_>>, words: &[Word<'_>]) -> (Vec<Meaning>, Vec<Meaning>) {
        let mut own = Vec::new();
        if let Some(sight) = sight
            && let Some(said) = Self::local(sight, words, 0)
        {
            own.push(Meaning { said, prefix: format!("{}.", sight.frame) });
        }
        let others = self.outside(words, own.is_empty());
        if sight.is_some_and(|s| s.is_told) && !own.is_empty() {
            return (own, others);
        }
        own.extend(others);
        (own, Vec::new())
    }

    /// What a dotted name can mean outside of all frames; `bare`: also a piece as a whole.
    fn outside(&self, words: &[Word<'_>], bare: bool) -> Vec<Meaning> {
        let mut out = Vec::new();
        let spoken: Vec<&str> = words.iter().map(|w| w.text).collect();
        let Some((first, rest)) = spoken.split_first() else { return out };
        let part = |word: usize, part: &Part| Said { word, span: words[word].span, owner: Owner::Part(part.clone()) };
        let plain = |p: &Part, word: &str| Meaning { said: vec![part(0, p)], prefix: format!("{word}.") };
        // A frame or placement and what is said in it.
        let within = |word: usize, whole: &Part, frame: &str| {
            let inner = Self::local(&self.whole(frame), &words[word + 1..], word + 1)?;
            Some(std::iter::once(part(word, whole)).chain(inner).collect::<Vec<_>>())
        };
        match self.globals.get(*first) {
            Some(row @ Part::Row(_)) if rest.is_empty() => out.push(plain(row, "chart")),
            Some(value @ Part::Value(_)) if matches!(rest, [] | ["x" | "y"]) => out.push(plain(value, "value")),
            Some(frame @ (Part::Piece(_) | Part::Drawing(_))) => {
                if let Some(said) = within(0, frame, first) {
                    out.push(Meaning { said, prefix: format!("{}.", frame.word()) });
                } else if rest.is_empty() && matches!(frame, Part::Piece(_)) && bare {
                    out.push(plain(frame, "piece"));
                }
            }
            Some(material @ Part::Material(_)) if of_material(rest) => out.push(plain(material, "material")),
            Some(placement @ Part::Placement(name)) => {
                let said = self.laid.get(name).and_then(|lay| within(0, placement, lay));
                out.extend(said.map(|said| Meaning { said, prefix: String::new() }));
            }
            _ => {}
        }
        let said = |said: Vec<Said>| Meaning { said, prefix: String::new() };
        let second = |p: Option<&Part>| p.map(|p| said(vec![part(1, p)]));
        match (*first, rest) {
            ("chart", [name]) => out.extend(second(self.globals.get(*name).filter(|p| matches!(p, Part::Row(_))))),
            ("value", [name] | [name, "x" | "y"]) => {
                out.extend(second(self.globals.get(*name).filter(|p| matches!(p, Part::Value(_)))));
            }
            ("piece" | "drawing", [name, inner @ ..]) => {
                if let Some(frame) = self.globals.get(*name).filter(|p| p.frame().is_some()) {
                    match within(1, frame, name) {
                        Some(all) => out.push(said(all)),
                        None if inner.is_empty() && matches!(frame, Part::Piece(_)) => out.extend(second(Some(frame))),
                        None => {}
                    }
                }
            }
            ("material", [name, member @ ..]) if of_material(member) => {
                out.extend(second(self.globals.get(*name).filter(|p| matches!(p, Part::Material(_)))));
            }
            ("strip", [name]) => out.extend(second(self.worded.get(&("strip", (*name).to_owned())))),
            ("measure", [name]) => out.extend(second(self.worded.get(&("measure", (*name).to_owned())))),
            ("seam", [name, "one" | "two" | "difference"]) => out.extend(second(self.seams.get(*name))),
            _ => {}
        }
        out
    }
}

/// Whether these words say a number of a material.
fn of_material(words: &[&str]) -> bool {
    matches!(words, [member] if MATERIAL_MEMBERS.contains(member))
}

/// Follows every name in every text.
pub(super) fn references(draft: &Draft) -> References {
    let index = Index::of(draft);
    let mut out = References::default();
    draft.clone().each_text(&mut |at, role, text| {
        if !text.trim().is_empty() {
            follow(&index, at, role, text, &mut out);
        }
    });
    out
}

fn follow(index: &Index, at: &Address, role: &Role, text: &str, out: &mut References) {
    let sight = index.sight(at, true);
    let whole = Span::new(0, text.len());
    let mut said = |said: Option<Vec<Said>>, gives: bool| {
        let meanings = said.map(|said| Meaning { said, prefix: String::new() }).into_iter().collect();
        let (at, span) = (at.clone(), whole);
        out.all.push(Occurrence { at, span, meanings, shadowed: Vec::new(), in_formula: false, gives });
    };
    let named =
        |part: Option<Part>, span: Span| part.map(|part| vec![Said { word: 0, span, owner: Owner::Part(part) }]);
    let global = |fits: fn(&Part) -> bool| index.globals.get(text).filter(|p| fits(p)).cloned();
    match role {
        Role::Words | Role::Label => {}
        // What takes the place of a mark or fold that passes carries its name.
        Role::OwnName => {
            if let Part::Inner(frame, _, name) = &at.part
                && let Some(of) = index.lineage.last(frame, name).filter(|n| n.part() != Some(&at.part))
                && of.inner == Named::of(at.part.clone()).inner
            {
                said(Some(spelled(of, 0, whole)), true);
            }
        }
        Role::Formula => formula(index, at, sight.as_ref(), text, 0, out),
        Role::FormulaIn(other) => formula(index, at, Some(&index.whole(other)), text, 0, out),
        Role::Condition => match parse_condition(text) {
            Ok(condition) => {
                for side in [&condition.left, &condition.right] {
                    names(index, at, sight.as_ref(), side, 0, out);
                }
            }
            Err(_) => out.unread.push(Unread { at: at.clone(), text: text.to_owned() }),
        },
        Role::Braces => {
            let mut from = 0;
            while let Some(open) = text[from..].find('{').map(|i| from + i + 1) {
                let Some(close) = text[open..].find('}').map(|i| open + i) else { break };
                formula(index, at, sight.as_ref(), &text[open..close], open, out);
                from = close;
            }
        }
        Role::Own(inner) => {
            let fits = |i: Inner| i == *inner || (*inner == Inner::Edge && i == Inner::Line);
            let own = index.sight(at, false).and_then(|s| s.get(text)).filter(|n| fits(n.inner));
            said(own.map(|n| spelled(n, 0, whole)), false);
        }
        Role::OwnAny => {
            let own = index.sight(at, false).and_then(|s| s.get(text));
            said(own.map(|n| spelled(n, 0, whole)), false);
        }
        Role::OwnOf(_, other) => said(index.whole(other).get(text).map(|n| spelled(n, 0, whole)), false),
        Role::Makes(inner) => {
            let part = Part::Inner(at.part.frame().unwrap_or("").to_owned(), *inner, text.to_owned());
            let is_made = index.lineage.makers(&part).contains(&at.at);
            said(named(is_made.then_some(part), whole), true);
        }
        Role::Prefix => {
            let owner = Owner::Prefix(at.part.frame().unwrap_or("").to_owned(), at.at);
            said(Some(vec![Said { word: 0, span: whole, owner }]), true);
        }
        Role::Person => said(named(Some(Part::Person(text.to_owned())), whole), false),
        Role::Value => {
            let short = text.strip_prefix("value.").unwrap_or(text);
            let part = index.globals.get(short).filter(|p| matches!(p, Part::Value(_))).cloned();
            said(named(part, Span::new(text.len() - short.len(), text.len())), false);
        }
        Role::Row => said(named(global(|p| matches!(p, Part::Row(_))), whole), false),
        Role::Frame => said(named(global(|p| p.frame().is_some()), whole), false),
        Role::Material => said(named(global(|p| matches!(p, Part::Material(_))), whole), false),
        Role::Sheet => said(named(Some(Part::Sheet(text.to_owned())), whole), false),
        Role::View => said(named(Some(Part::View(text.to_owned())), whole), false),
        Role::AfterSeam => {
            if let Some(name) = text.strip_prefix("after ") {
                let start = text.len() - name.trim_start().len();
                let span = Span::new(start, start + name.trim().len());
                said(named(index.seams.get(name.trim()).cloned(), span), false);
            }
        }
        Role::FindingPlace => said(finding_place(index, text), false),
    }
}

/// How a finding calls its place: `value x`, `seam.side`, `chart.bust`, `front.tip`, `front, step cut`.
fn finding_place(index: &Index, text: &str) -> Option<Vec<Said>> {
    let single = |word: usize, span: Span, part: &Part| vec![Said { word, span, owner: Owner::Part(part.clone()) }];
    if let Some((piece, _)) = text.split_once(", step ") {
        return index.globals.get(piece).map(|p| single(0, Span::new(0, piece.len()), p));
    }
    let mut from = text.find(' ').map_or(0, |i| i + 1);
    let mut words = Vec::new();
    for word in text[from..].split('.') {
        words.push(Word { text: word, span: Span::new(from, from + word.len()) });
        from += word.len() + 1;
    }
    if let Some(first) = index.meanings(None, &words).0.into_iter().next() {
        return Some(first.said);
    }
    match words.as_slice() {
        [Word { text: "seam", .. }, name] => index.seams.get(name.text).map(|p| single(1, name.span, p)),
        [Word { text: "condition", .. }, name] => Some(single(1, name.span, &Part::Condition(name.text.to_owned()))),
        [name] => index.globals.get(name.text).map(|p| single(0, name.span, p)),
        _ => None,
    }
}

fn formula(index: &Index, at: &Address, sight: Option<&Sight<'_>>, text: &str, shift: usize, out: &mut References) {
    match parse(text) {
        Ok(expr) => names(index, at, sight, &expr, shift, out),
        Err(_) => out.unread.push(Unread { at: at.clone(), text: text.to_owned() }),
    }
}

fn names(index: &Index, at: &Address, sight: Option<&Sight<'_>>, expr: &Expr, shift: usize, out: &mut References) {
    expr.each_name(&mut |parts: &[NamePart]| {
        let word = |p: &'_ NamePart| Span::new(p.span.start + shift, p.span.end + shift);
        let words: Vec<Word<'_>> = parts.iter().map(|p| Word { text: &p.text, span: word(p) }).collect();
        let (Some(first), Some(last)) = (words.first(), words.last()) else { return };
        let (meanings, shadowed) = index.meanings(sight, &words);
        let span = first.span.to(last.span);
        out.all.push(Occurrence { at: at.clone(), span, meanings, shadowed, in_formula: true, gives: false });
    });
}
