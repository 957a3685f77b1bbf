//! Differences in words: the whole list, and the one for those who sew.

use std::collections::BTreeMap;
use std::fmt::Write as _;

use kurbo::{Affine, PathEl, Point, Vec2};

use super::apart::{apart, length};
use super::{Change, Comparison, Difference, Missing, Pair, Sizes, Thing, Unit};
use crate::base::{DisplayUnit, tolerance};
use crate::document::{Draft, Inner, Part, RowKind};
use crate::texts::{self, decimal, gathered, outward, speaking, t};

/// Words that are quoted are cut after so many letters.
const MOST_LETTERS: usize = 70;

/// A part in words, within its piece.
pub(super) fn called(part: &Part) -> String {
    match part {
        Part::Inner(_, inner, name) => match inner {
            Inner::Point => t!("part-point", name),
            Inner::Edge => t!("part-edge", name),
            Inner::Line => t!("part-line", name),
            Inner::Dart => t!("part-dart", name),
            Inner::Pleat => t!("part-pleat", name),
            Inner::Tuck => t!("part-tuck", name),
            Inner::Fold => t!("part-fold", name),
            Inner::Lengthen => t!("part-lengthen", name),
            Inner::Slit => t!("part-slit", name),
            Inner::Mark => t!("part-mark", name),
        },
        Part::Piece(name) => t!("part-piece", name),
        Part::Row(name) => t!("part-row", name),
        Part::Measure(name) => t!("part-measure", name),
        Part::Material(name) => t!("part-material", name),
        Part::Strip(name) => t!("part-strip", name),
        Part::Notion(name) => t!("part-notion", name),
        Part::View(name) => t!("part-view", name),
        Part::Seam(name) => t!("part-seam", name),
        Part::Draft => t!("part-draft"),
        Part::Step(place) => t!("part-step", number = place + 1),
        Part::Kept => t!("part-kept"),
        // Of no concern to those who sew, so told to the designer only.
        other => outward(|| other.to_string()),
    }
}

impl Pair {
    /// From the old place to the new one, of a line from start to start and from end to end, mm.
    pub fn moved(&self) -> Option<[[f64; 2]; 2]> {
        let both = |v: Vec2, w: Vec2| [[v.x, v.y], [w.x, w.y]];
        match (&self.old, &self.new) {
            (Ok(Thing::Place(a)), Ok(Thing::Place(b))) => Some(both(*b - *a, *b - *a)),
            (Ok(Thing::Line(a)), Ok(Thing::Line(b))) => {
                let ends = |elements: &[PathEl]| {
                    let start = elements.first().and_then(PathEl::end_point)?;
                    let end = elements.iter().rev().find_map(PathEl::end_point)?;
                    Some((start, end))
                };
                let ((a0, a1), (b0, b1)) = (ends(a.elements())?, ends(b.elements())?);
                Some(both(b0 - a0, b1 - a1))
            }
            _ => None,
        }
    }

    /// New number less old one: mm, radians or plain.
    pub fn amount(&self) -> Option<f64> {
        match (&self.old, &self.new) {
            (Ok(Thing::Number(a, _)), Ok(Thing::Number(b, _))) => Some(b - a),
            _ => None,
        }
    }

    /// What differs in this size, in words.
    fn words(&self, unit: DisplayUnit, longer: bool) -> String {
        let thing = |t: &Thing| value(t, unit);
        match (&self.old, &self.new) {
            (Ok(Thing::Number(a, of)), Ok(Thing::Number(b, _))) if longer && *of == Unit::Length => {
                let by = sized((b - a).abs(), unit);
                if b > a { t!("change-longer", by) } else { t!("change-shorter", by) }
            }
            (Ok(Thing::Number(a, of)), Ok(Thing::Number(b, _))) => {
                format!("{}{}", if b > a { "+" } else { "-" }, number((b - a).abs(), *of, unit))
            }
            (Ok(Thing::Place(a)), Ok(Thing::Place(b))) => {
                let way = way(*b - *a, unit);
                if self.turned == 0.0 {
                    t!("change-moved", way)
                } else {
                    t!("change-turned", way, angle = number(self.turned, Unit::Angle, unit))
                }
            }
            (Ok(Thing::Line(a)), Ok(Thing::Line(b))) => {
                let vector = |v: [f64; 2]| Vec2::new(v[0], v[1]);
                // It only moved if, moved by as much, it lies where it is now, as far as a sheet shows.
                let is_there = |start: Vec2, end: Vec2| {
                    let alike = length(start - end) <= tolerance::PRINT && length(start) > tolerance::PRINT;
                    alike && apart(&(Affine::translate(start) * a.clone()), b).is_some_and(|d| d <= tolerance::PRINT)
                };
                let ends = self.moved().map(|[start, end]| (vector(start), vector(end)));
                match ends.filter(|(start, end)| is_there(*start, *end)).map(|(start, _)| start) {
                    Some(shift) => t!("change-moved", way = way(shift, unit)),
                    None => t!("change-away", apart = sized(self.apart.unwrap_or(0.0), unit)),
                }
            }
            (Ok(a), Ok(b)) => t!("change-was-is", was = thing(a), is = thing(b)),
            (Err(Missing::NotSaid), Ok(b)) => t!("change-before-unsaid", is = thing(b)),
            (Ok(a), Err(Missing::NotSaid)) => t!("change-not-said-any-more", was = thing(a)),
            (Ok(a), Err(Missing::NotComputed)) => t!("change-not-computed", was = thing(a)),
            (Err(Missing::NotComputed), Ok(b)) => t!("change-computed-now", is = thing(b)),
            (Err(Missing::NotSaid), Err(_)) => t!("change-not-computed-unsaid"),
            (Err(_), Err(_)) => t!("change-not-said-uncomputed"),
        }
    }
}

/// A thing in words.
fn value(thing: &Thing, unit: DisplayUnit) -> String {
    match thing {
        Thing::Number(v, of) => format!("{}{}", if *v < 0.0 { "-" } else { "" }, number(v.abs(), *of, unit)),
        Thing::Place(Point { x, y }) => format!("({}, {})", texts::length(*x, unit), texts::length(*y, unit)),
        Thing::Line(_) => t!("change-a-line"),
        Thing::Words(words) => quoted(words),
    }
}

fn quoted(words: &str) -> String {
    let mut letters = words.chars().map(|c| if c.is_control() { ' ' } else { c });
    let short: String = letters.by_ref().take(MOST_LETTERS).collect();
    let more = if letters.next().is_some() { "…" } else { "" };
    t!("change-quoted", words = format!("{short}{more}"))
}

/// A number without its sign.
fn number(v: f64, of: Unit, unit: DisplayUnit) -> String {
    match of {
        Unit::Length => sized(v, unit),
        Unit::Angle => format!("{}°", short(v.to_degrees(), 3)),
        Unit::Number => short(v, 4),
        Unit::Power(2) => t!("change-square-cm", area = short(v / 100.0, 2)),
        Unit::Power(n) => format!("{} mm^{n}", short(v, 4)),
    }
}

/// With so many decimals at most; with more where nothing would be left.
fn short(v: f64, places: usize) -> String {
    let text = format!("{v:.places$}");
    let text = text.trim_end_matches('0').trim_end_matches('.');
    decimal(&if text == "0" && v > 0.0 { format!("{v:.1e}") } else { text.to_owned() })
}

/// A length in the draft's unit; in mm where that would show nothing.
fn sized(mm: f64, unit: DisplayUnit) -> String {
    let text = texts::length(mm, unit);
    if mm > 0.0 && text == texts::length(0.0, unit) { format!("{} mm", short(mm, 3)) } else { text }
}

/// An offset in words: `1 cm down and 0.5 cm to the left`.
fn way(by: Vec2, unit: DisplayUnit) -> String {
    let nothing = texts::length(0.0, unit);
    let parts = [(by.x, t!("way-right"), t!("way-left")), (by.y, t!("way-down"), t!("way-up"))];
    let told: Vec<String> = parts
        .iter()
        .filter(|(v, ..)| texts::length(v.abs(), unit) != nothing)
        .map(|(v, more, less)| format!("{} {}", texts::length(v.abs(), unit), if *v > 0.0 { more } else { less }))
        .collect();
    if told.is_empty() { sized(length(by), unit) } else { gathered(&told) }
}

impl Difference {
    /// What differs, a sentence for each run of sizes, without the name of the part.
    pub fn sentences(&self, sizes: &Sizes, unit: DisplayUnit) -> Vec<String> {
        speaking(sizes.language, || self.told(sizes, unit, false))
    }

    fn told(&self, sizes: &Sizes, unit: DisplayUnit, for_sewing: bool) -> Vec<String> {
        match &self.change {
            Change::Came => vec![t!("change-new")],
            Change::Went => vec![t!("change-gone")],
            Change::Renamed(name) => vec![t!("change-renamed", name)],
            Change::Written(old, new) if old.is_empty() => vec![t!("change-now", what = self.what, new = quoted(new))],
            Change::Written(old, new) if new.is_empty() => {
                vec![t!("change-text-gone", what = self.what, old = quoted(old))]
            }
            Change::Written(old, new) => {
                vec![t!("change-written", what = self.what, old = quoted(old), new = quoted(new))]
            }
            Change::Other(pairs) => {
                let is_length = for_sewing && [t!("fact-sewn-length"), t!("fact-length")].contains(&self.what);
                let mut runs: Vec<(String, Vec<&Pair>)> = Vec::new();
                for pair in pairs {
                    let words = pair.words(unit, is_length);
                    match runs.iter_mut().find(|(w, _)| *w == words) {
                        Some((_, run)) => run.push(pair),
                        None => runs.push((words, vec![pair])),
                    }
                }
                let one = |(words, run): (String, Vec<&Pair>)| {
                    let words = ends_of(words, &run, unit);
                    let which: Vec<&str> = run.iter().map(|p| p.size.as_str()).collect();
                    let which = sizes.words(&which);
                    // What a part is all about goes without saying.
                    let itself =
                        [t!("fact-value"), t!("fact-number"), t!("fact-place"), t!("fact-line"), t!("fact-measure")];
                    let is_told = !is_length && !itself.contains(&self.what);
                    let words = if is_told { format!("{} {words}", self.what) } else { words };
                    if which.is_empty() { words } else { t!("change-in-sizes", change = words, sizes = which) }
                };
                runs.into_iter().map(one).collect()
            }
        }
    }
}

/// A change with from what to what, where that is the same in all sizes of a run.
fn ends_of(change: String, run: &[&Pair], unit: DisplayUnit) -> String {
    let ends = |p: &Pair| match (&p.old, &p.new) {
        (Ok(a @ Thing::Number(..)), Ok(b @ Thing::Number(..))) => Some((value(a, unit), value(b, unit))),
        _ => None,
    };
    match run.first().and_then(|p| ends(p)) {
        Some((from, to)) if run.iter().all(|p| ends(p).is_some_and(|e| (&e.0, &e.1) == (&from, &to))) => {
            t!("change-from-to", change, from, to)
        }
        _ => change,
    }
}

/// The heading under which a difference stands: its piece, or what it is of.
fn heading(part: &Part) -> String {
    match part {
        Part::Inner(frame, ..) | Part::Piece(frame) | Part::Drawing(frame) => frame.clone(),
        Part::Draft | Part::Kept => t!("changed-in-draft"),
        Part::SizeSet(_) | Part::Row(_) | Part::Person(_) => t!("changed-in-chart"),
        Part::Value(_) => t!("changed-in-values"),
        Part::Placement(_) => t!("changed-in-placements"),
        Part::Seam(_) | Part::Joint(_) => t!("changed-in-seams"),
        Part::Condition(_) => t!("changed-in-conditions"),
        Part::Measure(_) => t!("changed-in-measures"),
        Part::Material(_) | Part::Strip(_) | Part::Notion(_) => t!("changed-in-needs"),
        Part::View(_) => t!("changed-in-views"),
        Part::Step(_) => t!("changed-in-booklet"),
        Part::Sheet(_) => t!("changed-in-sheets"),
    }
}

impl Comparison {
    /// All differences as text, grouped by piece; then how many there are, and what could not be compared.
    pub fn text(&self, unit: DisplayUnit) -> String {
        speaking(self.sizes.language, || self.as_text(unit))
    }

    fn as_text(&self, unit: DisplayUnit) -> String {
        let mut out = String::new();
        let mut last = String::new();
        for d in &self.differences {
            let heading = heading(&d.part);
            if heading != last {
                let _ = writeln!(out, "{heading}");
                last = heading;
            }
            for sentence in d.sentences(&self.sizes, unit) {
                let part = if d.is_note { t!("compare-note", part = d.called) } else { d.called.clone() };
                let _ = writeln!(out, "  {part}: {sentence}");
            }
        }
        out.push_str(&self.summary());
        out
    }

    /// How many differences there are, and what could not be compared, in words.
    pub fn summary(&self) -> String {
        speaking(self.sizes.language, || self.summed_up())
    }

    fn summed_up(&self) -> String {
        let mut out = String::new();
        let (differences, notes) = self.counts();
        let mut counted =
            vec![if differences == 0 { t!("compare-none") } else { t!("compare-differences", count = differences) }];
        counted.extend((notes > 0).then(|| t!("compare-notes", count = notes)));
        let _ = writeln!(out, "{}", counted.join(", "));
        if self.sizes.list.is_empty() {
            let _ = writeln!(out, "{}", t!("compare-no-sizes"));
        }
        for one in &self.not_compared {
            let frame = one.part.frame();
            let sizes: Vec<&str> = one.sizes.iter().map(String::as_str).collect();
            let sizes = self.sizes.words(&sizes);
            let part = frame.into_iter().map(str::to_owned).chain([called(&one.part)]).collect::<Vec<_>>().join(", ");
            let _ = writeln!(out, "{}", t!("compare-not", part, what = one.what, sizes));
        }
        out
    }

    /// The list for those who sew: what is printed or said otherwise, by piece, and what to print again. Persons, values, conditions and other things that
    /// are no part of what is published are left out, and what is less than the 0.1 mm to which sheets are true.
    pub fn errata(&self, old: &Draft, new: &Draft) -> String {
        speaking(self.sizes.language, || self.for_buyers(old, new))
    }

    fn for_buyers(&self, old: &Draft, new: &Draft) -> String {
        let unit = new.display;
        let head = |draft: &Draft| {
            let (title, edition) = (&draft.title, &draft.edition);
            if edition.is_empty() { title.clone() } else { t!("errata-titled", title, edition) }
        };
        let mut out = format!("{}\n", t!("errata-head", now = head(new), before = head(old)));
        let mut sections: Vec<(String, Vec<String>)> = Vec::new();
        let mut again: BTreeMap<usize, (String, Vec<String>)> = BTreeMap::new();
        let range = &self.sizes.list[..self.sizes.range];
        for d in &self.differences {
            let Some(d) = for_sewing(d, old, new, &self.sizes).filter(|d| !self.is_only_longer(d)) else { continue };
            let heading = heading(&d.part);
            let told = match (&d.part, &d.change) {
                // Who sews looks it up; what is typed for the program is none of theirs.
                (Part::Step(i), Change::Written(..) | Change::Other(_)) => {
                    let line = t!("errata-step", number = i + 1);
                    match sections.iter_mut().find(|(h, _)| *h == heading) {
                        Some((_, all)) if all.contains(&line) => {}
                        Some((_, all)) => all.push(line),
                        None => sections.push((heading, vec![line])),
                    }
                    continue;
                }
                _ => d.told(&self.sizes, unit, true),
            };
            let lines: Vec<String> = told
                .into_iter()
                .map(|s| match &d.part {
                    Part::Inner(_, _, name) if d.view.is_empty() => format!("{name}: {s}"),
                    Part::Piece(_) if !d.what.is_empty() && d.view.is_empty() => s,
                    _ => format!("{}: {s}", d.called),
                })
                .collect();
            if let (Part::Piece(name) | Part::Inner(name, ..), true) = (&d.part, is_printed(&d)) {
                let place = new.pieces.iter().position(|p| p.name == *name);
                let sizes: Vec<String> = match &d.change {
                    Change::Other(pairs) if pairs.iter().all(|p| !p.size.is_empty()) => {
                        pairs.iter().map(|p| p.size.clone()).collect()
                    }
                    _ => range.to_vec(),
                };
                if let Some(place) = place {
                    again.entry(place).or_insert_with(|| (name.clone(), Vec::new())).1.extend(sizes);
                }
            }
            match sections.iter_mut().find(|(h, _)| *h == heading) {
                Some((_, all)) => all.extend(lines),
                None => sections.push((heading, lines)),
            }
        }
        if sections.is_empty() {
            out.push_str(&format!("\n{}\n", t!("errata-nothing")));
            return out;
        }
        for (heading, lines) in sections {
            let _ = writeln!(out, "\n{heading}");
            for line in lines {
                let _ = writeln!(out, "- {line}");
            }
        }
        let parts: Vec<String> = again
            .into_values()
            .map(|(name, sizes)| {
                let sizes: Vec<&str> = sizes.iter().map(String::as_str).collect();
                let words = self.sizes.words(&sizes);
                if words.is_empty() { name } else { t!("errata-piece-in", piece = name, sizes = words) }
            })
            .collect();
        let came: Vec<&str> = self
            .differences
            .iter()
            .filter(|d| d.change == Change::Came && matches!(d.part, Part::Draft))
            .map(|d| d.called.as_str())
            .collect();
        out.push('\n');
        match parts.is_empty() {
            true => out.push_str(&format!("{}\n", t!("errata-none-again"))),
            false => {
                let _ = writeln!(out, "{}", t!("errata-again", pieces = parts.join("; ")));
            }
        }
        if !came.is_empty() {
            let _ = writeln!(out, "{}", t!("errata-all-new", sizes = came.join(", ")));
        }
        out
    }
}

impl Comparison {
    /// Whether it is the line of an edge that only goes on or stops shorter, which is told by its length.
    fn is_only_longer(&self, line: &Difference) -> bool {
        let Change::Other(lines) = &line.change else { return false };
        if line.what != t!("fact-line") {
            return false;
        }
        let length = [t!("fact-sewn-length"), t!("fact-length")];
        let lengths = self.differences.iter().find_map(|d| match &d.change {
            Change::Other(pairs) if d.part == line.part && d.view == line.view && length.contains(&d.what) => {
                Some(pairs)
            }
            _ => None,
        });
        lengths.is_some_and(|lengths| {
            lines.iter().all(|l| {
                let by = lengths.iter().find(|p| p.size == l.size).and_then(Pair::amount);
                l.apart.zip(by).is_some_and(|(apart, by)| apart <= by.abs() + tolerance::LINES_APART)
            })
        })
    }
}

/// A difference as far as it concerns those who sew: without persons.
fn for_sewing(d: &Difference, old: &Draft, new: &Draft, sizes: &Sizes) -> Option<Difference> {
    if d.is_note || d.what == t!("fact-whole-piece") {
        return None;
    }
    let is_body =
        |draft: &Draft, name: &str| draft.chart.rows.iter().any(|r| r.name == name && r.kind == RowKind::Body);
    let wanted = match &d.part {
        Part::Row(name) => is_body(old, name) || is_body(new, name),
        // Where the legs of a dart run follows from its tip and intake.
        Part::Inner(_, Inner::Dart, _)
            if [t!("fact-first-foot"), t!("fact-second-foot"), t!("fact-leg")].contains(&d.what) =>
        {
            false
        }
        Part::Inner(frame, inner, _) => *inner != Inner::Point && new.drawings.iter().all(|d| d.name != *frame),
        Part::Draft => {
            !matches!(d.what.as_str(), w if w.contains("limit") || w.contains("joint") || w.contains("odd") || w.contains("grain"))
        }
        Part::Piece(_)
        | Part::Measure(_)
        | Part::Material(_)
        | Part::Strip(_)
        | Part::Notion(_)
        | Part::View(_)
        | Part::Step(_) => true,
        Part::Seam(_) => d.what != t!("fact-difference"),
        _ => false,
    };
    let mut out = d.clone();
    if let Change::Other(pairs) = &mut out.change {
        pairs.retain(|p| p.size.is_empty() || sizes.is_size(&p.size) && !is_not_printed(p));
        if pairs.is_empty() {
            return None;
        }
    }
    wanted.then_some(out)
}

/// Whether it is less than a sheet is true to.
fn is_not_printed(p: &Pair) -> bool {
    let is_length = matches!(&p.new, Ok(Thing::Number(_, Unit::Length)));
    let by = p.amount().filter(|_| is_length).map(f64::abs).or(p.apart);
    by.is_some_and(|by| by < tolerance::PRINT)
}

/// Whether it is seen on a printed piece.
fn is_printed(d: &Difference) -> bool {
    !matches!(d.change, Change::Went) || matches!(d.part, Part::Inner(..))
}
