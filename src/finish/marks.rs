//! Marks of a piece: single ones and rows, and lines that are only drawn.

use kurbo::{BezPath, Point, Vec2};

use super::body::Body;
use super::widths::{point, real};
use crate::base::tolerance;
use crate::compute::{MarkPlan, Model, PieceFinishing};
use crate::curves::Pt;
use crate::document::{MarkKind, Pressed};
use crate::language::Value;

/// A mark, or one of a row.
#[derive(Clone, Debug, PartialEq)]
pub struct PlacedMark {
    /// Its place among the piece's marks.
    pub place: usize,
    /// Its number in a row, from 1; 0: it stands alone.
    pub number: u32,
    /// What it is.
    pub kind: MarkKind,
    /// Where.
    pub at: Point,
    /// Direction of the row, radians; 0 for a single one.
    pub heading: f64,
    /// Its size, mm; 0: none is told.
    pub size: f64,
}

/// A line that is only drawn.
#[derive(Clone, Debug, PartialEq)]
pub struct PlacedLine {
    /// Its place among the piece's lines.
    pub place: usize,
    /// Whether it is a slit.
    pub slit: bool,
    /// As far as it lies on the piece.
    pub path: BezPath,
}

/// A row that misses its level.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RowMiss {
    /// From the nearest of the row, mm.
    pub off: f64,
    /// From one to the next, mm.
    pub step: f64,
    /// The one that could lie level instead, from 1 …
    pub number: u32,
    /// … with steps of this length, mm …
    pub other: f64,
    /// … and a row of this length, mm.
    pub ends: f64,
}

/// The marks of a piece.
pub(super) fn placed(model: &Model, case: usize, finishing: &PieceFinishing) -> Vec<PlacedMark> {
    let mut out = Vec::new();
    for (place, mark) in finishing.marks.iter().enumerate() {
        let Some(at) = point(model, case, &mark.at) else { continue };
        let size = mark.size.as_ref().and_then(|f| real(model, case, f)).unwrap_or(0.0);
        let kind = mark.kind;
        match row(model, case, mark) {
            None => out.push(PlacedMark { place, number: 0, kind, at: at.value(), heading: 0.0, size }),
            Some(row) => out.extend((0..row.count).map(|i| {
                let along = at + row.way.scaled(row.step * f64::from(i));
                PlacedMark { place, number: i + 1, kind, at: along.value(), heading: row.way.angle(), size }
            })),
        }
    }
    out
}

/// A row as it is laid out.
struct Row {
    count: u32,
    way: Pt<f64>,
    step: f64,
    length: f64,
    /// Where the fixed point lies along it.
    fixed: Option<f64>,
}

fn row(model: &Model, case: usize, mark: &MarkPlan) -> Option<Row> {
    let (count, to) = (mark.count, mark.to.as_ref()?);
    if count < 2 {
        return None;
    }
    let (at, to) = (point(model, case, &mark.at)?, point(model, case, to)?);
    let (way, length) = ((to - at).unit()?, (to - at).length());
    let fixed = mark.fixed.as_ref().and_then(|f| point(model, case, f)).map(|p| (p - at).dot(way));
    let even = length / f64::from(count - 1);
    let step = match (fixed, mark.fixed_as) {
        (Some(place), number @ 2..) if number <= count => place / f64::from(number - 1),
        _ => even,
    };
    Some(Row { count, way, step, length, fixed })
}

/// Whether a row misses the point with which one of it should be level, by more than a limit.
pub fn row_miss(model: &Model, case: usize, mark: &MarkPlan, limit: f64) -> Option<RowMiss> {
    let row = row(model, case, mark)?;
    let fixed = row.fixed?;
    let nearest = (fixed / row.step).round().clamp(0.0, f64::from(row.count - 1));
    let off = (nearest * row.step - fixed).abs();
    if off <= limit + tolerance::EQUAL {
        return None;
    }
    // The step that becomes no longer than the even one, so that the row does not run past its end.
    let even = row.length / f64::from(row.count - 1);
    let steps = (fixed / even).ceil().clamp(1.0, f64::from(row.count - 1));
    let other = fixed / steps;
    Some(RowMiss { off, step: row.step, number: steps as u32 + 1, other, ends: other * f64::from(row.count - 1) })
}

/// How far inside the arrow of a pleat stands, and the size of its head, as parts of its intake.
const PLEAT_ARROW: (f64, f64) = (0.5, 0.25);

/// The lines of pleats and tucks: from both feet inwards as long as they are, square to the edge; an arrow towards the side to which they
/// are pressed.
pub(super) fn pleats(model: &Model, case: usize, finishing: &PieceFinishing, body: &Body) -> Vec<BezPath> {
    let mut out = Vec::new();
    for mouth in body.mouths.iter().filter(|m| m.tip.is_none()) {
        let Some(place) = mouth.place.checked_sub(finishing.legs.len()) else { continue };
        let depth = finishing.depths.get(place).and_then(Option::as_ref).and_then(|f| real(model, case, f));
        let [a, b] = mouth.at;
        let (Some(depth), Some(along)) = (depth.filter(|d| *d > 0.0), (b - a).unit()) else { continue };
        let inside = along.square().scaled(body.sense);
        let line = |from: Pt<f64>, to: Pt<f64>| {
            let mut path = BezPath::new();
            path.move_to(from.value());
            path.line_to(to.value());
            path
        };
        out.extend([a, b].map(|foot| line(foot, foot + inside.scaled(depth))));
        let (from, to) = if mouth.pressed == Pressed::ToStart { (b, a) } else { (a, b) };
        let intake = (b - a).length();
        let down = inside.scaled((PLEAT_ARROW.0 * intake).min(depth));
        let (from, to) = (from + down, to + down);
        out.push(line(from, to));
        let back = (from - to).scaled(PLEAT_ARROW.1);
        out.extend([back.square(), -back.square()].map(|aside| line(to, to + back + aside.scaled(PLEAT_ARROW.0))));
    }
    out
}

/// Lines to lengthen or shorten at, and slits, as far as they lie on the piece.
pub(super) fn lines(model: &Model, case: usize, finishing: &PieceFinishing, polygon: &[Point]) -> Vec<PlacedLine> {
    let mut out = Vec::new();
    for (place, line) in finishing.lines.iter().enumerate() {
        let Ok(item) = model.evaluate(&model.plan, case, &line.line) else { continue };
        let path = match &item {
            crate::compute::Item::Value(Value::Edge(edge)) => edge.curve.to_path(),
            crate::compute::Item::Value(Value::Line(at, way)) => {
                let (at, way) = (at_of(*at), at_of(*way));
                let Some(way) = way.unit() else { continue };
                within(polygon, at.value(), Vec2::new(way.x, way.y))
            }
            _ => continue,
        };
        out.push(PlacedLine { place, slit: line.slit, path });
    }
    out
}

fn at_of([x, y]: [f64; 2]) -> Pt<f64> {
    Pt::new(x, y)
}

/// The stretches of an endless line that lie in a polygon.
fn within(polygon: &[Point], at: Point, way: Vec2) -> BezPath {
    let mut path = BezPath::new();
    for pair in super::cutting::chords(polygon, at, way).chunks_exact(2) {
        path.move_to(at + way * pair[0]);
        path.line_to(at + way * pair[1]);
    }
    path
}
