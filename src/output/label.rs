//! The place for a label: truly inside an outline, with as much room as is wanted or else as there is.
//!
//! Candidates lie on level lines through the shape; for each the largest box of the label's proportions is computed
//! exactly against the flattened outline, so the label never reaches over it.

use std::cell::OnceCell;

use kurbo::{BezPath, Line, PathEl, Point, Rect, Shape, Size};

use crate::base::tolerance;

/// Level lines through the shape.
const LEVELS: usize = 32;
/// Candidates in each stretch of such a line that is inside: its parts, so one less.
const PARTS: usize = 16;
/// Places whose room differs by no more than this share count as alike.
const ALIKE: f64 = 0.01;

/// A place for a box.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Room {
    /// The middle of the box.
    pub centre: Point,
    /// How many times the given box fits there.
    pub scale: f64,
}

/// Lines within which a label must stay, flattened to the tolerance of print.
pub struct Shapes {
    outline: Vec<Line>,
    obstacles: Vec<Line>,
    bounds: Rect,
    /// Where the level lines cross the outline, and the lines in it: several labels are tried in the same shapes.
    levels: [OnceCell<Vec<Vec<f64>>>; 2],
}

impl Shapes {
    /// The inside of `outline`, with `lines` in it that a label should not cross.
    pub fn new(outline: &BezPath, lines: &[BezPath]) -> Self {
        let outline = flattened(outline, true);
        let bounds = outline.iter().fold(Rect::ZERO, |all, line| {
            let one = line.bounding_box();
            if all == Rect::ZERO { one } else { all.union(one) }
        });
        let obstacles = lines.iter().flat_map(|l| flattened(l, false)).collect();
        Self { outline, obstacles, bounds, levels: Default::default() }
    }

    fn level(&self, level: usize) -> f64 {
        self.bounds.y0 + self.bounds.height() * (level as f64 + 0.5) / LEVELS as f64
    }

    /// Whether the point is inside the outline.
    pub fn holds(&self, p: Point) -> bool {
        crossings(&self.outline, p.y).iter().filter(|x| **x > p.x).count() % 2 == 1
    }

    /// A place for a box of this size: of those where it fits `enough` times the one nearest to the middle, or else the
    /// largest. `None` where the outline has no inside.
    ///
    /// `clear` keeps off the inner lines too.
    pub fn room(&self, size: Size, enough: f64, clear: bool) -> Option<Room> {
        self.room_above(0.0, size, enough, clear)
    }

    /// The same, of those where it fits more than `floor` times.
    pub fn room_above(&self, floor: f64, size: Size, enough: f64, clear: bool) -> Option<Room> {
        let mut best: Option<(Room, f64)> = None;
        let (mut hint, mut near) = (None, Vec::new());
        let crossed = |lines: &[Line]| (0..LEVELS).map(|level| crossings(lines, self.level(level))).collect();
        let [outer, lines] = &self.levels;
        let outer: &Vec<Vec<f64>> = outer.get_or_init(|| crossed(&self.outline));
        let lines: &[Vec<f64>] = if clear { lines.get_or_init(|| crossed(&self.obstacles)) } else { &[] };
        for (level, crossed) in outer.iter().enumerate() {
            let y = self.level(level);
            let inner = lines.get(level).map_or(&[][..], Vec::as_slice);
            near.clear();
            let mut looked = false;
            for pair in crossed.chunks_exact(2) {
                for part in 1..PARTS {
                    let centre = Point::new(pair[0] + (pair[1] - pair[0]) * part as f64 / PARTS as f64, y);
                    let off = centre.distance_squared(self.bounds.center());
                    // No box is larger than is enough: from there on only a place nearer to the middle is better.
                    if best.is_some_and(|(room, o)| room.scale * (1.0 + ALIKE) >= enough && off >= o) {
                        continue;
                    }
                    let least = best.map_or(floor, |(room, _)| room.scale * (1.0 - ALIKE));
                    // What crosses the level limits it already: most places need no look at all the lines.
                    let next = inner.partition_point(|x| *x < centre.x);
                    let beside = [next.checked_sub(1), Some(next)].map(|i| i.and_then(|i| inner.get(i)).copied());
                    let sides = beside.into_iter().flatten().chain([pair[0], pair[1]]).map(|x| (x - centre.x).abs());
                    if sides.fold(f64::INFINITY, f64::min) * 2.0 / size.width <= least {
                        continue;
                    }
                    // For a neighbouring place the line that was too near is likely to be too near again.
                    if hint.is_some_and(|line| reach(&line, centre, size, enough) <= least) {
                        continue;
                    }
                    if !looked {
                        near.extend(self.lines(clear).filter(|l| comes_near(l, y, size, enough)).copied());
                        looked = true;
                    }
                    let (scale, last) = scale_among(&near, centre, size, (least, enough));
                    hint = last.copied().or(hint);
                    let better =
                        best.is_none_or(|(room, o)| scale > room.scale * (1.0 + ALIKE) || (scale > least && off < o));
                    if scale > floor && better {
                        best = Some((Room { centre, scale }, off));
                    }
                }
            }
        }
        best.map(|(room, _)| room)
    }

    /// How many times a box of this size around `centre`, a point inside, can be had before it touches a line.
    /// At most `most`; not computed further once it cannot exceed `least`.
    pub fn scale_at(&self, centre: Point, size: Size, clear: bool, (least, most): (f64, f64)) -> f64 {
        scale_among(self.lines(clear), centre, size, (least, most)).0
    }

    /// The outline, and the lines in it where they are to be kept off.
    fn lines(&self, clear: bool) -> impl Iterator<Item = &Line> {
        self.outline.iter().chain(if clear { self.obstacles.as_slice() } else { &[] })
    }
}

/// How many times a box fits among lines, and the line by which it cannot exceed `least`, which ends the search.
fn scale_among<'a>(
    lines: impl IntoIterator<Item = &'a Line>,
    centre: Point,
    size: Size,
    (least, most): (f64, f64),
) -> (f64, Option<&'a Line>) {
    let mut scale = most;
    for line in lines {
        scale = reach(line, centre, size, scale);
        if scale <= least {
            return (scale, Some(line));
        }
    }
    (scale, None)
}

/// Whether a line can touch a box that is had `most` times around a place at this height.
fn comes_near(line: &Line, y: f64, size: Size, most: f64) -> bool {
    let b = 2.0 / size.height;
    let (v0, v1) = ((line.p0.y - y) * b, (line.p1.y - y) * b);
    !lies_beyond(v0, v1, most)
}

/// Straight pieces of a path, zero lengths left out.
fn flattened(path: &BezPath, closed: bool) -> Vec<Line> {
    let mut lines = Vec::new();
    let (mut start, mut last) = (Point::ZERO, Point::ZERO);
    let mut line = |from: Point, to: Point| {
        if from != to {
            lines.push(Line::new(from, to));
        }
    };
    kurbo::flatten(path, tolerance::PRINT, |element| match element {
        PathEl::MoveTo(p) => {
            if closed {
                line(last, start);
            }
            (start, last) = (p, p);
        }
        PathEl::ClosePath => {
            line(last, start);
            last = start;
        }
        PathEl::LineTo(p) | PathEl::QuadTo(_, p) | PathEl::CurveTo(_, _, p) => {
            line(last, p);
            last = p;
        }
    });
    if closed {
        line(last, start);
    }
    lines
}

/// Where a level line crosses, sorted; an even number for closed outlines.
fn crossings(outline: &[Line], y: f64) -> Vec<f64> {
    let mut found: Vec<f64> = outline
        .iter()
        .filter(|l| (l.p0.y <= y) != (l.p1.y <= y))
        .map(|l| l.p0.x + (l.p1.x - l.p0.x) * (y - l.p0.y) / (l.p1.y - l.p0.y))
        .collect();
    found.sort_by(f64::total_cmp);
    found
}

/// Whether a stretch lies wholly so far off zero, to one side.
fn lies_beyond(from: f64, to: f64, most: f64) -> bool {
    (from >= most && to >= most) || (from <= -most && to <= -most)
}

/// How many times, at most `most`, a box of this size around `centre` can be had before it touches the line.
///
/// The distance in which that box is the unit ball is convex along the line and straight between the places where one of
/// its two parts is zero or both are equal, so its least value is at one of those or at an end.
fn reach(line: &Line, centre: Point, size: Size, most: f64) -> f64 {
    let (a, b) = (2.0 / size.width, 2.0 / size.height);
    let (u0, v0) = ((line.p0.x - centre.x) * a, (line.p0.y - centre.y) * b);
    let (u1, v1) = ((line.p1.x - centre.x) * a, (line.p1.y - centre.y) * b);
    // Most lines lie wholly to one side, too far to matter.
    if lies_beyond(u0, u1, most) || lies_beyond(v0, v1, most) {
        return most;
    }
    let (du, dv) = (u1 - u0, v1 - v0);
    let zeros = [(0.0, 1.0), (1.0, 1.0), (-u0, du), (-v0, dv), (v0 - u0, du - dv), (-u0 - v0, du + dv)];
    zeros
        .into_iter()
        .filter(|(_, slope)| *slope != 0.0)
        .map(|(zero, slope)| (zero / slope).clamp(0.0, 1.0))
        .map(|t| (u0 + t * du).abs().max((v0 + t * dv).abs()))
        .fold(most, f64::min)
}
