//! Pieces from outlines of a drawing file: points with typed places, edges between corners, handles and arcs as formulas.
//!
//! Numbers are rounded to 0.01 mm (0.0001 in); curves are taken as they are. Each piece has a frame of its own, from the upper
//! left corner of its outline on.

use kurbo::{Affine, BezPath, Point, Rect, Shape, Vec2};

use super::EditError;
use super::traced_shape::{bend, crossing, holds};
use crate::base::{Unit, round_half_away, tolerance};
use crate::document::{Edge, Piece, Point as NamedPoint, Segment, Turn, check_name, fold};
use crate::file::svg::{ArcRun, Outline, Outlines, Run, Scale};
use crate::texts::{owned, say, typed};

/// How a draft takes outlines from a file.
#[derive(Clone, Debug, PartialEq)]
pub struct Tracing {
    /// Millimetres of one unit of the file.
    pub scale: f64,
    /// Lines that turn by more than this make a corner, radians.
    pub corner: f64,
    /// The closed outlines that become pieces, by their place in the file, with the names of the pieces.
    pub pieces: Vec<(usize, String)>,
}

/// An outline as a person sees it before it is taken.
#[derive(Clone, Debug, PartialEq)]
pub struct TracedOutline {
    /// Its place in the file.
    pub at: usize,
    /// Its width and height in units of the file.
    pub size: (f64, f64),
    /// A name for the piece.
    pub name: String,
    /// Whether it crosses itself.
    pub crosses: bool,
}

/// Ends of an outline that are nearer than this share of its size lie on each other.
fn meets(outline: &Outline, bounds: Rect) -> bool {
    let limit = bounds.width().max(bounds.height()) * tolerance::EQUAL;
    outline.runs.last().is_some_and(|r| (r.end() - outline.start).hypot() <= limit)
}

/// The closed outlines of a file with names to propose, and how many lines are open.
pub fn closed_outlines(found: &Outlines, taken: &[String]) -> (Vec<TracedOutline>, usize) {
    let mut names: Vec<String> = taken.iter().map(|n| fold(n)).collect();
    let mut out = Vec::new();
    for (at, outline) in found.all.iter().enumerate() {
        let bounds = outline.bounds();
        let flat = bounds.width() <= 0.0 || bounds.height() <= 0.0;
        if flat || !(outline.closed || meets(outline, bounds)) {
            continue;
        }
        let stem = name_of(&outline.name, "piece");
        let name = free_name(&stem, &names);
        names.push(fold(&name));
        let crosses = crossing(outline).is_some();
        out.push(TracedOutline { at, size: (bounds.width(), bounds.height()), name, crosses });
    }
    let open = found.all.len() - out.len();
    (out, open)
}

/// The millimetres of one unit, as a file or a person says.
///
/// # Errors
/// That the file does not say it, and what to do.
pub fn told_scale(scale: &Scale) -> Result<f64, EditError> {
    match scale {
        Scale::Known(mm) => Ok(*mm),
        Scale::Unknown(why) => Err(EditError::refused(say!("tracing-scale-unknown", why = why.to_string()))),
    }
}

/// The first of `stem`, `stem_2`, … that is not taken.
fn free_name(stem: &str, taken: &[String]) -> String {
    let numbered = (2..).map(|i| format!("{stem}_{i}"));
    std::iter::once(stem.to_owned()).chain(numbered).find(|n| !taken.contains(&fold(n))).unwrap_or_default()
}

/// A name made of what a file calls something.
fn name_of(text: &str, otherwise: &str) -> String {
    let clean: String = text.chars().take(40).map(|c| if c.is_alphanumeric() || c == '_' { c } else { '_' }).collect();
    let clean = clean.trim_matches('_').to_owned();
    if check_name(&clean).is_ok() { clean } else { otherwise.to_owned() }
}

/// The pieces of a tracing, and what is to be told about them.
///
/// # Errors
/// Why an outline cannot become a piece.
pub fn trace(found: &Outlines, wish: &Tracing, unit: Unit) -> Result<(Vec<Piece>, Vec<String>), EditError> {
    if !(wish.scale > 0.0 && wish.scale.is_finite()) {
        return Err(EditError::refused(say!("tracing-scale-zero")));
    }
    if wish.pieces.is_empty() {
        return Err(EditError::refused(say!("tracing-none")));
    }
    let mut notes = Vec::new();
    let map = Affine::scale(wish.scale);
    let mut homes = Vec::new();
    for (at, name) in &wish.pieces {
        let outline =
            found.all.get(*at).ok_or_else(|| EditError::refused(say!("tracing-no-outline", number = at + 1)))?;
        let path = map * outline.path(tolerance::CURVE / wish.scale);
        if crossing(outline).is_some() {
            notes.push(say!("tracing-crosses", name));
        }
        let whole: Vec<Run> = outline.runs.iter().map(|r| r.mapped(map)).collect();
        let bounds = path.bounding_box();
        if bounds.width().max(bounds.height()) > MOST_MM {
            return Err(EditError::refused(say!(
                "tracing-too-large",
                name,
                metres = format!("{:.0}", bounds.width().max(bounds.height()) / 1000.0)
            )));
        }
        if bounds.width().min(bounds.height()) < LEAST_MM {
            return Err(EditError::refused(say!("tracing-too-small", name)));
        }
        let origin = bounds.origin();
        let mut hand = Hand { unit, corner: wish.corner, origin, points: Vec::new(), taken: Vec::new() };
        let edges = hand.outline(map * outline.start, &whole)?;
        let piece = Piece { name: name.clone(), edges, points: hand.points.clone(), ..Piece::default() };
        homes.push(Home { path, piece, hand });
    }
    let mut left = 0usize;
    for (at, line) in found.all.iter().enumerate() {
        let bounds = line.bounds();
        if line.closed || meets(line, bounds) || wish.pieces.iter().any(|(i, _)| i == &at) {
            continue;
        }
        let path = map * line.path(tolerance::CURVE / wish.scale);
        let home = homes.iter_mut().filter(|h| holds(&h.path, &path));
        match home.min_by(|a, b| a.path.area().abs().total_cmp(&b.path.area().abs())) {
            None => left += 1,
            Some(home) => {
                let stem = name_of(&line.name, "line");
                let name = free_name(&stem, &home.hand.taken);
                let runs: Vec<Run> = line.runs.iter().map(|r| r.mapped(map)).collect();
                if let Some(edge) = home.hand.line(&name, map * line.start, &runs)? {
                    home.hand.taken.push(fold(&name));
                    home.piece.lines.push(edge);
                    home.piece.points.clone_from(&home.hand.points);
                }
            }
        }
    }
    if left > 0 {
        notes.push(say!("tracing-open-lines", count = left));
    }
    notes.push(say!(
        "tracing-rounded",
        step = owned(|| typed(if unit == Unit::Inch { "0.0001 in" } else { "0.01 mm" }))
    ));
    Ok((homes.into_iter().map(|h| h.piece).collect(), notes))
}

/// Pieces larger than this are a wrong scale, mm.
const MOST_MM: f64 = 20_000.0;
/// Pieces smaller than this are one too, mm.
const LEAST_MM: f64 = 1.0;

struct Home {
    path: BezPath,
    piece: Piece,
    hand: Hand,
}

/// A stretch between two named points.
struct Stretch {
    run: Run,
    /// The point at which it ends.
    end: String,
}

/// Writes the parts of one piece.
struct Hand {
    unit: Unit,
    corner: f64,
    origin: Point,
    points: Vec<NamedPoint>,
    /// Names that are taken, folded.
    taken: Vec<String>,
}

impl Hand {
    /// The closed outline as edges from corner to corner.
    fn outline(&mut self, start: Point, runs: &[Run]) -> Result<Vec<Edge>, EditError> {
        let mut runs = self.cleaned(start, runs);
        if runs.last().is_some_and(|r| self.grid(r.end()) != self.grid(start)) {
            runs.push(Run::Straight(start));
        }
        // One stretch that comes back to its start is two.
        while runs.len() < 2 {
            match runs.first() {
                Some(Run::Cubic(a, b, to)) => runs = halves(start, *a, *b, *to),
                Some(Run::Arc(arc)) => runs = arc.halves().map(Run::Arc).to_vec(),
                _ => return Err(EditError::refused(say!("tracing-one-line"))),
            }
        }
        let many = runs.len();
        let before = |i: usize| runs[(i + many - 1) % many].end();
        let turns: Vec<Option<f64>> = (0..many)
            .map(|i| {
                let last = (i + many - 1) % many;
                bend((before(last), &runs[last]), (before(i), &runs[i]))
            })
            .collect();
        // Corner i is where stretch i starts; what has no direction is one too.
        let is_corner = |i: &usize| turns[*i].is_none_or(|t| t > self.corner);
        let mut corners: Vec<usize> = (0..many).filter(is_corner).collect();
        if corners.is_empty() {
            corners.push(0);
        }
        if corners.len() == 1 {
            let other = (corners[0] + many / 2) % many;
            corners.push(other);
            corners.sort_unstable();
        }
        let first = corners[0];
        let order: Vec<usize> = (0..many).map(|k| (first + k) % many).collect();
        let names: Vec<String> = order.iter().map(|i| self.point(before(*i))).collect();
        let mut edges: Vec<Edge> = Vec::new();
        for (k, i) in order.iter().enumerate() {
            let from = names[k].clone();
            let end = names[(k + 1) % many].clone();
            if corners.contains(i) {
                let name = format!("edge_{}", edges.len() + 1);
                self.taken.push(fold(&name));
                edges.push(Edge { name, from: from.clone(), ..Edge::default() });
            }
            let stretch = Stretch { run: runs[*i], end };
            let segment = self.segments(before(*i), &from, &stretch);
            if let Some(edge) = edges.last_mut() {
                if !edge.by.is_empty() && turns[*i].is_some_and(|t| t <= tolerance::limit::JOINT_ANGLE) {
                    edge.smooth_at.push(from);
                }
                join(edge, segment);
            }
        }
        Ok(edges)
    }

    /// An open line; none if nothing is left of it.
    fn line(&mut self, name: &str, start: Point, runs: &[Run]) -> Result<Option<Edge>, EditError> {
        let runs = self.cleaned(start, runs);
        if runs.is_empty() {
            return Ok(None);
        }
        let mut from = self.point(start);
        let mut edge = Edge { name: name.to_owned(), from: from.clone(), ..Edge::default() };
        let mut at = start;
        for (i, run) in runs.iter().enumerate() {
            let end = self.point(run.end());
            if i > 0
                && bend((start_of(&runs, i - 1, start), &runs[i - 1]), (at, run))
                    .is_some_and(|t| t <= tolerance::limit::JOINT_ANGLE)
            {
                edge.smooth_at.push(from.clone());
            }
            let segments = self.segments(at, &from, &Stretch { run: *run, end: end.clone() });
            join(&mut edge, segments);
            (at, from) = (run.end(), end);
        }
        Ok(Some(edge))
    }

    /// Without stretches that are nothing on the grid; curves that come back to their start in two.
    fn cleaned(&self, start: Point, runs: &[Run]) -> Vec<Run> {
        let mut at = start;
        let mut out = Vec::new();
        for run in runs {
            let same = self.grid(run.end()) == self.grid(at);
            match run {
                Run::Straight(_) if same => {
                    // The next stretch starts where this one would have ended: within the grid, so nothing is torn.
                }
                Run::Cubic(a, b, to) if same => {
                    let far = (*a - at).hypot().max((*b - at).hypot());
                    if far > tolerance::ON_EDGE {
                        out.extend(halves(at, *a, *b, *to));
                    }
                }
                Run::Arc(arc) if same || arc.sweep.abs() > MOST_SWEEP => {
                    if arc.reach() > tolerance::ON_EDGE && arc.sweep.abs() > tolerance::STRAIGHT {
                        out.extend(arc.halves().map(Run::Arc));
                    }
                }
                _ => out.push(*run),
            }
            at = run.end();
        }
        out
    }

    /// A number on the grid, in the draft's unit: so many smallest steps.
    fn steps(&self, mm: f64) -> i64 {
        let (_, step) = grid_of(self.unit);
        let (times, over) = self.unit.inside();
        let value = mm * over / times;
        (round_half_away(value, step) / step).round() as i64
    }

    fn grid(&self, p: Point) -> (i64, i64) {
        (self.steps(p.x - self.origin.x), self.steps(p.y - self.origin.y))
    }

    /// A length as it is typed.
    fn text(&self, mm: f64) -> String {
        let (places, step) = grid_of(self.unit);
        let value = self.steps(mm) as f64 * step;
        let text = format!("{value:.places$}");
        let text = text.trim_end_matches('0').trim_end_matches('.');
        let text = if text == "-0" { "0" } else { text };
        format!("{text} {}", self.unit.sign())
    }

    /// A new named point.
    fn point(&mut self, at: Point) -> String {
        let name = free_numbered("p", self.points.len() + 1, &self.taken);
        let p = at - self.origin;
        let place = format!("({}, {})", self.text(p.x), self.text(p.y));
        self.taken.push(fold(&name));
        self.points.push(NamedPoint { name: name.clone(), at: place, ..NamedPoint::default() });
        name
    }

    /// A handle, said from its corner.
    fn handle(&self, corner: &str, by: Vec2) -> String {
        let mut out = corner.to_owned();
        let (x, y) = (self.steps(by.x), self.steps(by.y));
        if x != 0 {
            out.push_str(&format!(".{}({})", if x > 0 { "right" } else { "left" }, self.text(by.x.abs())));
        }
        if y != 0 {
            out.push_str(&format!(".{}({})", if y > 0 { "down" } else { "up" }, self.text(by.y.abs())));
        }
        out
    }

    fn segments(&mut self, at: Point, from: &str, stretch: &Stretch) -> Vec<Segment> {
        let end = stretch.end.clone();
        match stretch.run {
            Run::Straight(_) => vec![Segment::Straight(end)],
            Run::Cubic(a, b, to) => {
                vec![Segment::Curve(self.handle(from, a - at), self.handle(&end, b - to), end)]
            }
            Run::Arc(arc) => self.arc(at, from, arc, end),
        }
    }

    /// An arc about a point on the line that halves the way, so that both ends stay equally far from it; what is no circle becomes cubics.
    fn arc(&mut self, at: Point, from: &str, arc: ArcRun, end: String) -> Vec<Segment> {
        let circle = arc.circle(tolerance::ON_EDGE).filter(|c| c.1 <= tolerance::LARGEST_ARC);
        if let Some((centre, _, clockwise)) = circle {
            let way = arc.to - at;
            let right = Vec2::new(-way.y, way.x) / way.hypot();
            let off = (centre - at.midpoint(arc.to)).dot(right);
            let steps = self.steps(off);
            let middle = format!("halfway({from}, {end})");
            let centre = match steps {
                0 => middle,
                n => {
                    let sign = if n > 0 { '+' } else { '-' };
                    format!("{middle}.polar(heading({from}, {end}) {sign} 90 deg, {})", self.text(off.abs()))
                }
            };
            let turn = if clockwise { Turn::Clockwise } else { Turn::Anticlockwise };
            return vec![Segment::Arc { centre, turn, to: end }];
        }
        let cubics = arc.cubics(tolerance::CURVE);
        let (mut at, mut from) = (at, from.to_owned());
        let last = cubics.len().saturating_sub(1);
        let mut out = Vec::new();
        for (i, run) in cubics.into_iter().enumerate() {
            let to = if i == last { end.clone() } else { self.point(run.end()) };
            out.extend(self.segments(at, &from, &Stretch { run, end: to.clone() }));
            (at, from) = (run.end(), to);
        }
        out
    }
}

/// Arcs that turn further than this are taken in two, radians: three quarters round.
const MOST_SWEEP: f64 = 4.712_388_98;

/// Decimals and step to which numbers of a unit are written: 0.01 mm, in inches somewhat finer.
fn grid_of(unit: Unit) -> (usize, f64) {
    match unit {
        Unit::Centimetre => (3, tolerance::TRACED_STEP / 10.0),
        Unit::Inch => (4, tolerance::TRACED_STEP_INCH),
        _ => (2, tolerance::TRACED_STEP),
    }
}

fn start_of(runs: &[Run], i: usize, start: Point) -> Point {
    if i == 0 { start } else { runs[i - 1].end() }
}

/// Adds the segments of one stretch; between them it is smooth.
fn join(edge: &mut Edge, segments: Vec<Segment>) {
    let many = segments.len();
    edge.smooth_at.extend(segments.iter().take(many.saturating_sub(1)).map(|s| s.end().to_owned()));
    edge.by.extend(segments);
}

/// A cubic in two.
fn halves(from: Point, a: Point, b: Point, to: Point) -> Vec<Run> {
    let [first, second] = {
        use kurbo::ParamCurve;
        let (x, y) = kurbo::CubicBez::new(from, a, b, to).subdivide();
        [x, y]
    };
    vec![Run::Cubic(first.p1, first.p2, first.p3), Run::Cubic(second.p1, second.p2, second.p3)]
}

fn free_numbered(stem: &str, from: usize, taken: &[String]) -> String {
    (from..).map(|i| format!("{stem}{i}")).find(|n| !taken.contains(&fold(n))).unwrap_or_default()
}
