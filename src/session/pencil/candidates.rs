//! The readings of a place, the likeliest first.
//!
//! Geometry here only decides what is worth asking; where a reading puts its point is always what its formula gives.

use kurbo::{ParamCurve, ParamCurveNearest, Point, Vec2};

use super::sight::SeenEdge;
use super::{Pointing, Reading, Sight};
use crate::base::{Span, tolerance};
use crate::curves::Pt;
use crate::texts::{id, own, owned, said, say, typed};

/// The most readings that are offered for one place.
const MOST: usize = 14;
/// The most edges, and other points, that are looked at for one place: the nearest.
const MOST_EDGES: usize = 4;
const MOST_LEVELS: usize = 3;
/// Fractions of an edge that are offered, and the ids of their words.
const FRACTIONS: [(&str, &str); 5] = [
    ("1/2", id!("pencil-half")),
    ("1/3", id!("pencil-third")),
    ("2/3", id!("pencil-two-thirds")),
    ("1/4", id!("pencil-quarter")),
    ("3/4", id!("pencil-three-quarters")),
];
/// What can be said where there is more than one answer.
const WHICH: [&str; 5] = ["", ", side: left", ", side: right", ", side: above", ", side: below"];

/// How likely a reading is meant; the smaller the likelier.
mod rank {
    pub const POINT: u8 = 0;
    pub const CROSSING: u8 = 1;
    pub const SPECIAL: u8 = 2;
    pub const BOTH: u8 = 3;
    pub const ON_EDGE: u8 = 4;
    pub const LEVEL: u8 = 5;
    pub const SQUARE: u8 = 6;
    pub const ALIGNED: u8 = 7;
    pub const SWUNG: u8 = 8;
    pub const FREE: u8 = 9;
    pub const POLAR: u8 = 10;
    pub const COMPASS: u8 = 11;
}

struct Finder<'s, 'a> {
    sight: &'s Sight<'a>,
    ask: &'s Pointing,
    found: Vec<(u8, f64, Reading)>,
}

impl Sight<'_> {
    /// What a place could mean, the likeliest first. Without a point to measure from there is always one: its coordinates.
    pub fn readings(&self, ask: &Pointing) -> Vec<Reading> {
        let mut finder = Finder { sight: self, ask, found: Vec::new() };
        if ask.snap {
            finder.points();
            finder.edges();
            finder.prolonged();
            finder.levels();
            finder.measured();
            finder.between_two();
        }
        finder.free();
        finder.found.sort_by(|a, b| (a.0, a.1).partial_cmp(&(b.0, b.1)).unwrap_or(std::cmp::Ordering::Equal));
        finder.found.into_iter().take(MOST).map(|(_, _, reading)| reading).collect()
    }
}

/// A formula without the marks around its numbers, and where these stand.
fn unmarked(template: &str) -> (String, Vec<Span>) {
    let (mut text, mut numbers, mut start) = (String::new(), Vec::new(), 0);
    for c in template.chars() {
        match c {
            '«' => start = text.len(),
            '»' => numbers.push(Span::new(start, text.len())),
            c => text.push(c),
        }
    }
    (text, numbers)
}

impl Finder<'_, '_> {
    fn anchor(&self) -> Option<(&str, Point)> {
        let name = self.ask.from.last()?;
        Some((name, self.sight.point(name)?))
    }

    fn length(&self, mm: f64) -> String {
        self.ask.rounding.length(mm)
    }

    /// A length of a formula as it is read in words.
    fn told(&self, length: &str) -> String {
        owned(|| typed(length))
    }

    /// Takes a reading in if its formula has an answer that lies where the pointer is; one of the free ones wherever it lies. Says
    /// whether it is among the readings.
    fn offer(&mut self, rank: u8, template: &str, words: impl Into<String>, guides: &[Point]) -> bool {
        let (formula, numbers) = unmarked(template);
        if self.found.iter().any(|(_, _, r)| r.formula == formula) {
            return true;
        }
        let Ok(place) = self.sight.place(&formula) else { return false };
        let off = (place - self.ask.at).hypot();
        if rank < rank::FREE && off > self.ask.reach {
            return false;
        }
        let guides = guides.iter().map(|from| [*from, place]).collect();
        self.found.push((rank, off, Reading { formula, words: words.into(), place, numbers, guides, there: None }));
        true
    }

    /// The same for a formula that may have to say which of several answers is meant: `{}` stands where that is said.
    fn offer_which(&mut self, rank: u8, template: &str, words: &str, guides: &[Point]) {
        for which in WHICH {
            if self.offer(rank, &template.replace("{}", which), words, guides) {
                return;
            }
        }
    }

    fn points(&mut self) {
        if self.sight.points.is_empty() {
            // Wherever it lies, the rest is measured from it.
            let (formula, numbers) = unmarked(&format!("(«{}», «{}»)", self.length(0.0), self.length(0.0)));
            let words = say!("pencil-first");
            let reading = Reading { formula, words, place: Point::ZERO, numbers, guides: Vec::new(), there: None };
            self.found.push((rank::POINT, 0.0, reading));
        }
        let near = self.sight.points.iter().filter(|p| (p.at - self.ask.at).hypot() <= self.ask.reach);
        let near: Vec<_> = near.map(|p| (p.name.clone(), p.at)).collect();
        for (name, at) in near {
            let reading = Reading {
                formula: name.clone(),
                words: say!("pencil-point", name),
                place: at,
                numbers: Vec::new(),
                guides: Vec::new(),
                there: Some(name),
            };
            self.found.push((rank::POINT, (at - self.ask.at).hypot(), reading));
        }
    }

    /// The nearest edges: how far away, and which.
    fn near_edges(&self) -> Vec<usize> {
        let distance = |e: &SeenEdge| {
            let all = e.path.segments().map(|s| s.nearest(self.ask.at, tolerance::ON_EDGE).distance_sq);
            all.reduce(f64::min).map_or(f64::INFINITY, f64::sqrt)
        };
        let all = self.sight.edges.iter().enumerate().map(|(i, e)| (distance(e), i));
        let mut near: Vec<_> = all.filter(|(d, _)| *d <= self.ask.reach).collect();
        near.sort_by(|a, b| a.0.total_cmp(&b.0));
        near.into_iter().take(MOST_EDGES).map(|(_, i)| i).collect()
    }

    /// Where edges cross; on an edge: parts of it, what lies square, level or plumb to the point before, and how far along.
    fn edges(&mut self) {
        let near = self.near_edges();
        let sight = self.sight;
        for (k, i) in near.iter().enumerate() {
            for j in &near[k + 1..] {
                let (one, other) = (&sight.edges[*i.min(j)].name, &sight.edges[*i.max(j)].name);
                let words = say!("pencil-cross", one, other);
                self.offer_which(rank::CROSSING, &format!("cross({one}, {other}{{}})"), &words, &[]);
            }
        }
        for i in near {
            let edge = &sight.edges[i];
            let name = &edge.name;
            for (text, words) in FRACTIONS {
                let words = say!("pencil-on", edge = name, part = said(own(), words, &[]));
                self.offer(rank::SPECIAL, &format!("{name}.at(«{text}»)"), words, &[]);
            }
            if let Some((from, at)) = self.anchor().map(|(n, p)| (n.to_owned(), p)) {
                if !edge.ends.contains(&from) {
                    let words = say!("pencil-square-on", edge = name, from);
                    self.offer(rank::SPECIAL, &format!("foot({from}, {name})"), words, &[at]);
                }
                for (function, level) in [("level", true), ("plumb", false)] {
                    let words = aligned_on(name, level, &from);
                    self.offer_which(rank::SPECIAL, &format!("cross({function}({from}), {name}{{}})"), &words, &[at]);
                }
                if !edge.straight {
                    let words = say!("pencil-touch", from, edge = name);
                    self.offer_which(rank::SPECIAL, &format!("touch({from}, {name}{{}})"), &words, &[at]);
                }
                let long = self.length((self.ask.at - at).hypot());
                let words = say!("pencil-swing", edge = name, far = self.told(&long), from);
                self.offer_which(rank::SWUNG, &format!("swing({from}, «{long}», {name}{{}})"), &words, &[at]);
            }
            for (p, level) in self.aligned() {
                let function = if level { "level" } else { "plumb" };
                let (other, at) = (&sight.points[p].name, sight.points[p].at);
                let words = aligned_on(name, level, other);
                self.offer_which(rank::BOTH, &format!("cross({function}({other}), {name}{{}})"), &words, &[at]);
            }
            self.along(edge);
        }
    }

    /// So far along an edge, from the end that is nearer.
    fn along(&mut self, edge: &SeenEdge) {
        let name = &edge.name;
        let (x, y) = (self.ask.at.x, self.ask.at.y);
        let place = self.sight.real(&format!("place({name}, foot(({x:.4} mm, {y:.4} mm), {name}))"));
        let all = self.sight.real(&format!("length({name})"));
        let (Some(place), Some(all)) = (place, all) else { return };
        let (text, far, end) = match place * 2.0 <= all {
            true => (name.clone(), place, &edge.ends[0]),
            false => (format!("reversed({name})"), all - place, &edge.ends[1]),
        };
        let far = self.length(far);
        let words = say!("pencil-along", edge = name, far = self.told(&far), from = end);
        self.offer(rank::ON_EDGE, &format!("{text}.at(«{far}»)"), words, &[]);
    }

    /// Points that lie level or plumb with the pointer, the nearest first: which, and whether level.
    fn aligned(&self) -> Vec<(usize, bool)> {
        let mut all: Vec<(f64, usize, bool)> = Vec::new();
        for (i, point) in self.sight.points.iter().enumerate() {
            let off = self.ask.at - point.at;
            let far = off.hypot();
            if far > self.ask.reach && off.y.abs() <= self.ask.reach {
                all.push((far, i, true));
            }
            if far > self.ask.reach && off.x.abs() <= self.ask.reach {
                all.push((far, i, false));
            }
        }
        all.sort_by(|a, b| a.0.total_cmp(&b.0));
        let level = all.iter().filter(|a| a.2).take(MOST_LEVELS);
        level.chain(all.iter().filter(|a| !a.2).take(MOST_LEVELS)).map(|a| (a.1, a.2)).collect()
    }

    /// Beyond straight edges, and where two of them would meet.
    fn prolonged(&mut self) {
        let sight = self.sight;
        let mut lines: Vec<(usize, Point, Point)> = Vec::new();
        for (i, edge) in sight.edges.iter().enumerate().filter(|(_, e)| e.straight) {
            let (Some(p), Some(q)) = (sight.point(&edge.ends[0]), sight.point(&edge.ends[1])) else { continue };
            let way = q - p;
            let long = way.hypot();
            if long <= tolerance::ON_EDGE || (way.cross(self.ask.at - p) / long).abs() > self.ask.reach {
                continue;
            }
            lines.push((i, p, q));
        }
        for (k, (i, p, q)) in lines.iter().enumerate() {
            let [from, to] = &sight.edges[*i].ends;
            let name = &sight.edges[*i].name;
            for (j, r, s) in &lines[k + 1..] {
                let [other_from, other_to] = &sight.edges[*j].ends;
                let words = say!("pencil-meet", one = name, other = sight.edges[*j].name);
                let template = format!("cross(line({from}, {to}), line({other_from}, {other_to}))");
                self.offer(rank::CROSSING, &template, words, &[*p, *q, *r, *s]);
            }
            let share = (self.ask.at - *p).dot(*q - *p) / (*q - *p).hypot2();
            let beyond = match share {
                s if s > 1.0 => Some((from, to, *q)),
                s if s < 0.0 => Some((to, from, *p)),
                _ => None,
            };
            if let Some((near, end, at)) = beyond {
                let far = self.length((self.ask.at - at).hypot());
                let words = say!("pencil-beyond", far = self.told(&far), end, edge = name);
                self.offer(rank::BOTH, &format!("{end}.polar(heading({near}, {end}), «{far}»)"), words, &[at]);
            }
        }
    }

    /// Level with one point and plumb with another.
    fn levels(&mut self) {
        let sight = self.sight;
        let all = self.aligned();
        let anchor = self.anchor().map(|(n, p)| (n.to_owned(), p));
        for (i, _) in all.iter().filter(|a| a.1) {
            for (j, _) in all.iter().filter(|a| !a.1) {
                let (p, q) = (&sight.points[*i], &sight.points[*j]);
                let words = say!("pencil-level-plumb", level = p.name, plumb = q.name);
                self.offer(rank::BOTH, &format!("({}.x, {}.y)", q.name, p.name), words, &[p.at, q.at]);
            }
        }
        let Some((from, at)) = anchor else { return };
        for (i, level) in all {
            let other = &sight.points[i];
            if other.name == from {
                continue;
            }
            let off = self.ask.at - at;
            let template = match level {
                true => format!("({from}.x {}, {}.y)", signed(&self.length(off.x)), other.name),
                false => format!("({}.x, {from}.y {})", other.name, signed(&self.length(off.y))),
            };
            self.offer(rank::ALIGNED, &template, aligned_with(level, &other.name), &[other.at]);
        }
    }

    /// Measured from the point before: level, plumb, square to edges, beside them, mirrored in them, halving a corner.
    fn measured(&mut self) {
        let Some((from, at)) = self.anchor().map(|(n, p)| (n.to_owned(), p)) else { return };
        let off = self.ask.at - at;
        let far = off.hypot();
        if far <= self.ask.reach {
            return;
        }
        if off.y.abs() <= self.ask.reach {
            let word = if off.x > 0.0 { "right" } else { "left" };
            let template = format!("{from}.{word}(«{}»)", self.length(off.x.abs()));
            self.offer(rank::LEVEL, &template, aligned_with(true, &from), &[at]);
        }
        if off.x.abs() <= self.ask.reach {
            let word = if off.y > 0.0 { "down" } else { "up" };
            let template = format!("{from}.{word}(«{}»)", self.length(off.y.abs()));
            self.offer(rank::LEVEL, &template, aligned_with(false, &from), &[at]);
        }
        let sight = self.sight;
        for edge in &sight.edges {
            let [p, q] = &edge.ends;
            let belongs = edge.ends.contains(&from);
            let (Some(first), Some(last)) = (sight.point(p), sight.point(q)) else { continue };
            let way = if edge.straight { last - first } else { end_way(edge, &from).unwrap_or(Vec2::ZERO) };
            let long = way.hypot();
            if long > tolerance::ON_EDGE && (edge.straight || belongs) {
                let heading = match (edge.straight, *p == from) {
                    (true, _) => format!("heading({p}, {q})"),
                    (false, true) => format!("heading(along({}, 0 cm))", edge.name),
                    (false, false) => format!("heading(along(reversed({}), 0 cm))", edge.name),
                };
                self.beside_and_square(&from, at, way / long, &heading, edge, belongs);
            }
            if edge.straight {
                let words = say!("pencil-mirrored", from, edge = edge.name);
                self.offer(rank::BOTH, &format!("{from}.mirrored(line({p}, {q}))"), words, &[at]);
            }
            if edge.outline && !belongs && lies_on(edge, at) {
                let name = &edge.name;
                let inside = sight.place(&format!("{name}.off(place({name}, {from}), 1 mm)")).ok();
                let sign = inside.map_or(1.0, |p| if (p - at).dot(off) < 0.0 { -1.0 } else { 1.0 });
                let template = format!("{name}.off(place({name}, {from}), «{}»)", self.length(far * sign));
                self.offer(rank::SQUARE, &template, say!("pencil-square-off", edge = name, from), &[at]);
            }
        }
        self.bisected(&from, at, far);
    }

    fn beside_and_square(&mut self, from: &str, at: Point, way: Vec2, heading: &str, edge: &SeenEdge, belongs: bool) {
        let off = self.ask.at - at;
        let far = self.length(off.hypot());
        let rank = if belongs { rank::LEVEL } else { rank::SQUARE };
        let name = &edge.name;
        // Level and plumb have shorter words of their own.
        let leans = way.x.abs() > tolerance::EQUAL && way.y.abs() > tolerance::EQUAL;
        if way.cross(off).abs() <= self.ask.reach && leans && !belongs {
            let back = if way.dot(off) < 0.0 { " + 180°" } else { "" };
            let template = format!("{from}.polar({heading}{back}, «{far}»)");
            self.offer(rank, &template, say!("pencil-parallel", edge = name), &[at]);
        }
        if way.dot(off).abs() <= self.ask.reach && leans {
            let turn = if way.cross(off) > 0.0 { "+" } else { "-" };
            let template = format!("{from}.polar({heading} {turn} 90°, «{far}»)");
            self.offer(rank, &template, say!("pencil-square", edge = name), &[at]);
        }
    }

    /// On the line that halves the corner at the point.
    fn bisected(&mut self, from: &str, at: Point, far: f64) {
        let sight = self.sight;
        let into = sight.edges.iter().find(|e| e.outline && e.straight && e.ends[1] == *from);
        let out = sight.edges.iter().find(|e| e.outline && e.straight && e.ends[0] == *from);
        if let (Some(into), Some(out)) = (into, out) {
            let (a, b) = (&into.ends[0], &out.ends[1]);
            let template = format!("bisect({a}, {from}, {b}, «{}»)", self.length(far));
            self.offer(rank::BOTH, &template, say!("pencil-bisect", from), &[at]);
        }
    }

    /// Measured from the last two points: between them, or turned about the first.
    fn between_two(&mut self) {
        let [.., first, last] = &self.ask.from[..] else { return };
        let (Some(a), Some(b)) = (self.sight.point(first), self.sight.point(last)) else { return };
        let way = b - a;
        let long = way.hypot();
        if first == last || long <= tolerance::ON_EDGE {
            return;
        }
        self.offer(rank::SPECIAL, &format!("halfway({first}, {last})"), say!("pencil-halfway", first, last), &[a, b]);
        for (text, words) in FRACTIONS.iter().skip(1) {
            let template = format!("on_way({first}, {last}, «{text}»)");
            let words = say!("pencil-part-way", part = said(own(), words, &[]), first, last);
            self.offer(rank::SPECIAL, &template, words, &[a, b]);
        }
        let off = self.ask.at - a;
        if (way.cross(off) / long).abs() <= self.ask.reach && way.dot(off) > 0.0 {
            let far = self.length(off.hypot());
            let template = format!("on_way({first}, {last}, «{far}»)");
            self.offer(rank::SQUARE, &template, say!("pencil-towards", far = self.told(&far), first, last), &[a]);
        }
        if (off.hypot() - long).abs() <= self.ask.reach {
            let angle = Pt::new(way.dot(off), way.cross(off)).angle();
            let template = format!("{last}.turned({first}, «{}»)", self.ask.rounding.angle(angle));
            self.offer(rank::SQUARE, &template, say!("pencil-turned", last, first), &[a]);
        }
    }

    /// Anywhere: as two lengths, as a direction, as two distances, or as coordinates.
    fn free(&mut self) {
        let at = self.ask.at;
        let Some((from, start)) = self.anchor().map(|(n, p)| (n.to_owned(), p)) else {
            let template = format!("(«{}», «{}»)", self.length(at.x), self.length(at.y));
            self.offer(rank::FREE, &template, say!("pencil-coordinates"), &[]);
            return;
        };
        let off = at - start;
        let (x, y) = (if off.x < 0.0 { "left" } else { "right" }, if off.y < 0.0 { "up" } else { "down" });
        let template = format!("{from}.{x}(«{}»).{y}(«{}»)", self.length(off.x.abs()), self.length(off.y.abs()));
        self.offer(rank::FREE, &template, say!("pencil-measured", from), &[start]);
        let angle = self.ask.rounding.angle(Pt::new(off.x, off.y).angle());
        let template = format!("{from}.polar(«{angle}», «{}»)", self.length(off.hypot()));
        self.offer(rank::POLAR, &template, say!("pencil-polar", from), &[start]);
        if let [.., first, last] = &self.ask.from[..]
            && let (Some(a), Some(b)) = (self.sight.point(first), self.sight.point(last))
            && first != last
        {
            let (one, other) = (self.length((at - a).hypot()), self.length((at - b).hypot()));
            let circles = format!("cross(circle({first}, «{one}»), circle({last}, «{other}»){{}})");
            let words = say!("pencil-compass", first, last);
            let known = self.found.len();
            for which in WHICH {
                let template = circles.replace("{}", which);
                if self.offer(rank::COMPASS, &template, words.clone(), &[a, b]) {
                    // Of the two places where the circles cross, the one that is pointed at.
                    let place = self.found[known].2.place;
                    if (place - at).hypot() <= (mirrored(place, a, b) - at).hypot() {
                        break;
                    }
                    self.found.truncate(known);
                }
            }
        }
    }
}

/// On an edge, level or plumb with a point.
fn aligned_on(edge: &str, level: bool, with: &str) -> String {
    if level { say!("pencil-level-on", edge, with) } else { say!("pencil-plumb-on", edge, with) }
}

fn aligned_with(level: bool, with: &str) -> String {
    if level { say!("pencil-level", with) } else { say!("pencil-plumb", with) }
}

/// A length as what is added: `+ «3 cm»`, `- «3 cm»`.
fn signed(length: &str) -> String {
    match length.strip_prefix('-') {
        Some(rest) => format!("- «{rest}»"),
        None => format!("+ «{length}»"),
    }
}

/// The direction in which an edge leaves one of its ends, into the edge.
fn end_way(edge: &SeenEdge, end: &str) -> Option<Vec2> {
    let at_start = edge.ends[0] == end;
    let mut segments = edge.path.segments();
    let segment = if at_start { segments.next() } else { segments.last() }?;
    let (t, step) = if at_start { (0.0, tolerance::CURVE) } else { (1.0, -tolerance::CURVE) };
    Some((segment.eval(t + step) - segment.eval(t)) / tolerance::CURVE)
}

fn lies_on(edge: &SeenEdge, at: Point) -> bool {
    let near = edge.path.segments().map(|s| s.nearest(at, tolerance::CURVE).distance_sq).reduce(f64::min);
    near.is_some_and(|d| d.sqrt() <= tolerance::ON_EDGE)
}

fn mirrored(p: Point, a: Point, b: Point) -> Point {
    let way = b - a;
    let foot = a + way * ((p - a).dot(way) / way.hypot2());
    foot + (foot - p)
}
