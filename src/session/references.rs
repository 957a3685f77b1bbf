//! What the names in the texts of a draft mean, part by part: for renaming, "used by" and deleting.
//!
//! Names are followed here by the same rules by which formulas are computed; a test holds the two against each other.

use std::collections::BTreeMap;

use crate::base::Span;
use crate::compute::MATERIAL_MEMBERS;
use crate::document::{Address, Draft, Inner, Part, Role};
use crate::language::{Expr, NamePart, parse, parse_condition};

/// One meaning of a dotted name: which of its words mean which part.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Meaning {
    /// Word of the name, and what it means.
    pub parts: Vec<(usize, Part)>,
    /// What can be put in front of the name to say just this.
    pub prefix: String,
}

/// A name in a text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Occurrence {
    /// The text.
    pub at: Address,
    /// The whole name.
    pub span: Span,
    /// Its words.
    pub words: Vec<Span>,
    /// What it can mean; more than one is an error of the formula.
    pub meanings: Vec<Meaning>,
    /// Whether it stands in a formula; else the text is the name.
    pub in_formula: bool,
}

impl Occurrence {
    /// Whether any of its words can mean this part.
    pub fn means(&self, part: &Part) -> bool {
        self.meanings.iter().any(|m| m.parts.iter().any(|(_, p)| p == part))
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
    frames: BTreeMap<String, BTreeMap<String, Inner>>,
    /// The frame that a placement lays.
    laid: BTreeMap<String, String>,
    seams: BTreeMap<String, Part>,
    /// Strips and finished measures, each by its word and name.
    worded: BTreeMap<(&'static str, String), Part>,
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
        let mut frames = BTreeMap::new();
        let names = draft.pieces.iter().map(|p| &p.name).chain(draft.drawings.iter().map(|d| &d.name));
        for frame in names {
            let locals: &mut BTreeMap<String, Inner> = frames.entry(frame.clone()).or_default();
            for part in super::naming::inner_parts(draft, frame) {
                if let Part::Inner(_, inner, name) = part {
                    locals.entry(name).or_insert(inner);
                }
            }
        }
        let laid = draft.placements.iter().map(|p| (p.name.clone(), p.lay.clone())).collect();
        let seams = draft.seams.iter().map(|s| (s.name.clone(), Part::Seam(s.name.clone()))).collect();
        let strips = draft.strips.iter().map(|s| (("strip", s.name.clone()), Part::Strip(s.name.clone())));
        let measures = draft.measures.iter().map(|m| (("measure", m.name.clone()), Part::Measure(m.name.clone())));
        let worded = strips.chain(measures).collect();
        Self { globals, frames, laid, seams, worded }
    }

    /// A part of a frame that formulas can name by these words.
    fn local(&self, frame: &str, words: &[&str]) -> Option<Part> {
        let name = *words.first()?;
        let inner = *self.frames.get(frame)?.get(name)?;
        let fits = match (inner, &words[1..]) {
            (Inner::Point, [] | ["x" | "y"]) | (Inner::Edge | Inner::Line, []) => true,
            (Inner::Dart, ["leg" | "intake" | "tip" | "first_foot" | "second_foot", rest @ ..]) => {
                matches!(rest, [] | ["x" | "y"])
            }
            _ => false,
        };
        fits.then(|| Part::Inner(frame.to_owned(), inner, name.to_owned()))
    }

    fn meanings(&self, frame: Option<&str>, words: &[&str]) -> Vec<Meaning> {
        let mut out = Vec::new();
        let Some((first, rest)) = words.split_first() else { return out };
        if let Some(frame) = frame
            && let Some(part) = self.local(frame, words)
        {
            out.push(Meaning { parts: vec![(0, part)], prefix: format!("{frame}.") });
        }
        let plain = |part: &Part, word: &str| Meaning { parts: vec![(0, part.clone())], prefix: format!("{word}.") };
        match self.globals.get(*first) {
            Some(part @ Part::Row(_)) if rest.is_empty() => out.push(plain(part, "chart")),
            Some(part @ Part::Value(_)) if matches!(rest, [] | ["x" | "y"]) => out.push(plain(part, "value")),
            Some(part @ (Part::Piece(_) | Part::Drawing(_))) => {
                if let Some(inner) = self.local(first, rest) {
                    let prefix = format!("{}.", part.word());
                    out.push(Meaning { parts: vec![(0, part.clone()), (1, inner)], prefix });
                } else if rest.is_empty() && matches!(part, Part::Piece(_)) && out.is_empty() {
                    out.push(plain(part, "piece"));
                }
            }
            Some(part @ Part::Material(_)) if of_material(rest) => out.push(plain(part, "material")),
            Some(part @ Part::Placement(name)) => {
                if let Some(inner) = self.laid.get(name).and_then(|lay| self.local(lay, rest)) {
                    out.push(Meaning { parts: vec![(0, part.clone()), (1, inner)], prefix: String::new() });
                }
            }
            _ => {}
        }
        let said = |parts: Vec<(usize, Part)>| Meaning { parts, prefix: String::new() };
        match (*first, rest) {
            ("chart", [name]) => {
                let row = self.globals.get(*name).filter(|p| matches!(p, Part::Row(_)));
                out.extend(row.map(|p| said(vec![(1, p.clone())])));
            }
            ("value", [name] | [name, "x" | "y"]) => {
                let value = self.globals.get(*name).filter(|p| matches!(p, Part::Value(_)));
                out.extend(value.map(|p| said(vec![(1, p.clone())])));
            }
            ("piece" | "drawing", [name, inner @ ..]) => {
                let frame = self.globals.get(*name).filter(|p| p.frame().is_some());
                match (frame, self.local(name, inner)) {
                    (Some(part), Some(inner)) => out.push(said(vec![(1, part.clone()), (2, inner)])),
                    (Some(part @ Part::Piece(_)), None) if inner.is_empty() => out.push(said(vec![(1, part.clone())])),
                    _ => {}
                }
            }
            ("material", [name, member @ ..]) if of_material(member) => {
                let material = self.globals.get(*name).filter(|p| matches!(p, Part::Material(_)));
                out.extend(material.map(|p| said(vec![(1, p.clone())])));
            }
            ("strip", [name]) => {
                out.extend(self.worded.get(&("strip", (*name).to_owned())).map(|p| said(vec![(1, p.clone())])));
            }
            ("measure", [name]) => {
                out.extend(self.worded.get(&("measure", (*name).to_owned())).map(|p| said(vec![(1, p.clone())])));
            }
            ("seam", [name, "one" | "two" | "difference"]) => {
                out.extend(self.seams.get(*name).map(|p| said(vec![(1, p.clone())])));
            }
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
    let frame = at.part.frame();
    let named = |part: Option<Part>, span: Span, out: &mut References| {
        let meanings = part.map(|p| Meaning { parts: vec![(0, p)], prefix: String::new() });
        let meanings = meanings.into_iter().collect();
        out.all.push(Occurrence { at: at.clone(), span, words: vec![span], meanings, in_formula: false });
    };
    let whole = Span::new(0, text.len());
    let global = |fits: fn(&Part) -> bool| index.globals.get(text).filter(|p| fits(p)).cloned();
    match role {
        Role::Words | Role::OwnName | Role::Label => {}
        Role::Formula => formula(index, at, frame, text, 0, out),
        Role::FormulaIn(other) => formula(index, at, Some(other), text, 0, out),
        Role::Condition => match parse_condition(text) {
            Ok(condition) => {
                for side in [&condition.left, &condition.right] {
                    names(index, at, frame, side, 0, out);
                }
            }
            Err(_) => out.unread.push(Unread { at: at.clone(), text: text.to_owned() }),
        },
        Role::Braces => {
            let mut from = 0;
            while let Some(open) = text[from..].find('{').map(|i| from + i + 1) {
                let Some(close) = text[open..].find('}').map(|i| open + i) else { break };
                formula(index, at, frame, &text[open..close], open, out);
                from = close;
            }
        }
        Role::Own(inner) => {
            let locals = frame.and_then(|f| index.frames.get(f));
            let own = locals.and_then(|l| l.get(text)).copied();
            let fits = |i: Inner| i == *inner || (*inner == Inner::Edge && i == Inner::Line);
            let part =
                own.filter(|i| fits(*i)).map(|i| Part::Inner(frame.unwrap_or("").to_owned(), i, text.to_owned()));
            named(part, whole, out);
        }
        Role::OwnAny | Role::OwnOf(..) => {
            let frame = if let Role::OwnOf(_, other) = role { Some(other.as_str()) } else { frame };
            let own = frame.and_then(|f| index.frames.get(f)).and_then(|l| l.get(text)).copied();
            named(own.map(|i| Part::Inner(frame.unwrap_or("").to_owned(), i, text.to_owned())), whole, out);
        }
        Role::Person => named(Some(Part::Person(text.to_owned())), whole, out),
        Role::Value => {
            let short = text.strip_prefix("value.").unwrap_or(text);
            let part = index.globals.get(short).filter(|p| matches!(p, Part::Value(_))).cloned();
            named(part, Span::new(text.len() - short.len(), text.len()), out);
        }
        Role::Row => named(global(|p| matches!(p, Part::Row(_))), whole, out),
        Role::Frame => named(global(|p| p.frame().is_some()), whole, out),
        Role::Material => named(global(|p| matches!(p, Part::Material(_))), whole, out),
        Role::Sheet => named(Some(Part::Sheet(text.to_owned())), whole, out),
        Role::View => named(Some(Part::View(text.to_owned())), whole, out),
        Role::AfterSeam => {
            if let Some(name) = text.strip_prefix("after ") {
                let start = text.len() - name.trim_start().len();
                named(index.seams.get(name.trim()).cloned(), Span::new(start, start + name.trim().len()), out);
            }
        }
        Role::FindingPlace => finding_place(index, at, text, out),
        Role::NameOf(part) => named(Some(part.clone()), whole, out),
    }
}

/// How a finding calls its place: `value x`, `seam.side`, `chart.bust`, `front.tip`.
fn finding_place(index: &Index, at: &Address, text: &str, out: &mut References) {
    let start = text.find(' ').map_or(0, |i| i + 1);
    let mut words = Vec::new();
    let mut from = start;
    for word in text[start..].split('.') {
        words.push(Span::new(from, from + word.len()));
        from += word.len() + 1;
    }
    let spoken: Vec<&str> = words.iter().map(|w| w.of(text)).collect();
    let mut meanings = index.meanings(None, &spoken);
    if let ["seam", name] = spoken[..] {
        let seam = index.seams.get(name);
        meanings.extend(seam.map(|p| Meaning { parts: vec![(1, p.clone())], prefix: String::new() }));
    }
    if let ["condition", name] = spoken[..] {
        meanings.push(Meaning { parts: vec![(1, Part::Condition(name.to_owned()))], prefix: String::new() });
    }
    if let [name] = spoken[..]
        && meanings.is_empty()
    {
        let known = index.globals.get(name);
        meanings.extend(known.map(|p| Meaning { parts: vec![(0, p.clone())], prefix: String::new() }));
    }
    meanings.truncate(1);
    let span = Span::new(start, text.len());
    out.all.push(Occurrence { at: at.clone(), span, words, meanings, in_formula: false });
}

fn formula(index: &Index, at: &Address, frame: Option<&str>, text: &str, shift: usize, out: &mut References) {
    match parse(text) {
        Ok(expr) => names(index, at, frame, &expr, shift, out),
        Err(_) => out.unread.push(Unread { at: at.clone(), text: text.to_owned() }),
    }
}

fn names(index: &Index, at: &Address, frame: Option<&str>, expr: &Expr, shift: usize, out: &mut References) {
    expr.each_name(&mut |parts: &[NamePart]| {
        let words: Vec<Span> = parts.iter().map(|p| Span::new(p.span.start + shift, p.span.end + shift)).collect();
        let spoken: Vec<&str> = parts.iter().map(|p| p.text.as_str()).collect();
        let (Some(first), Some(last)) = (words.first(), words.last()) else { return };
        let meanings = index.meanings(frame, &spoken);
        out.all.push(Occurrence { at: at.clone(), span: first.to(*last), words, meanings, in_formula: true });
    });
}
