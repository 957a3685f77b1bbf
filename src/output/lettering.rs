//! What is written on a piece: its label, inside where it can be read there, else beside it with a line that leads to it; and small
//! words at lines and marks.

use std::f64::consts::FRAC_PI_2;

use kurbo::{Affine, BezPath, Circle, ParamCurve, ParamCurveNearest, Point, Rect, Shape, Size, Vec2};

use super::drawing::{Align, Ink, Item, Pen, Text};
use super::font;
use super::home::MOST_SIZES;
use super::label::Shapes;
use super::pieces::straight;
use super::wide::{SheetPiece, closed};
use crate::base::tolerance;
use crate::texts::t;

/// Least height of a capital on a piece, mm: 16 minutes of arc at 60 cm, from where a piece on a table is read (2 tan 8' times 600 mm is
/// 2.79 mm). ISO 9241-303, from memory.
pub const CAPITAL: f64 = 2.8;
/// Em of a label where there is room, mm.
const LARGE: f64 = 9.0;
/// A label this large is not looked for elsewhere, mm.
const GOOD: f64 = 5.5;
/// How much more room than that is looked for.
const ROOM: f64 = 1.5;
/// A later way must be better by this.
const BETTER: f64 = 1.1;
/// From line to line, in sizes.
const LEADING: f64 = 1.3;
/// Widths to which lines are broken, in sizes; the first also where the label stands beside its piece.
const BROKEN: [f64; 3] = [24.0, 14.0, 9.0];
/// Between a label beside its piece and any line, mm.
const BESIDE: f64 = 4.0;
/// So many places are tried in each direction beside a piece.
const PLACES: usize = 40;
/// A millimetre that a label is farther off counts as so many square millimetres of the sheet.
const FAR: f64 = 20.0;
/// How far a leading line reaches into its piece, mm.
const INTO: f64 = 3.0;
/// Width of a leading line on paper, mm, and the radius of the dot at its end in such widths.
const LEADER: f64 = 0.18;
const DOT: f64 = 3.5;

/// How large letters are, as the em in mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Letters {
    /// At least.
    pub least: f64,
    /// Where there is room.
    pub most: f64,
    /// Width of the lines that lead to labels, mm.
    pub leader: f64,
}

impl Letters {
    /// Those of paper.
    pub fn of_paper() -> Self {
        Self { least: CAPITAL / font::cap_height(1.0), most: LARGE, leader: LEADER }
    }
}

/// A label with its place.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Label {
    lines: Vec<String>,
    upright: bool,
    centre: Point,
    size: f64,
    /// Width of the leader, mm.
    pen: f64,
    /// From the label into its piece, where it stands beside it.
    leader: Option<[Point; 2]>,
}

/// What the label of a piece says; `pieces`: its sizes.
fn label_lines(pieces: &[&SheetPiece]) -> Vec<String> {
    let Some(piece) = pieces.first() else { return Vec::new() };
    let name = piece.name.replace('_', " ");
    let head = if piece.letter.is_empty() { name } else { format!("{} · {name}", piece.letter) };
    let sizes: Vec<&str> = pieces.iter().map(|p| p.size.as_str()).filter(|s| !s.is_empty()).collect();
    let size = match sizes.as_slice() {
        [] => String::new(),
        [one] => t!("of-size", size = one),
        several if several.len() <= MOST_SIZES => t!("of-sizes", sizes = several.join(" · ")),
        [first, .., last] => t!("of-sizes-to", first, last),
    };
    let rest = piece.notes.iter().chain(&piece.about).cloned();
    [head, size].into_iter().chain(rest).filter(|l| !l.is_empty()).collect()
}

/// Ways to write lines: each by itself, broken, several joined.
fn ways(lines: &[String]) -> Vec<Vec<String>> {
    let broken = |width: f64| lines.iter().flat_map(|l| font::wrapped(l, 1.0, width)).collect::<Vec<_>>();
    let joined = |count: usize| lines.chunks(count).map(|c| c.join(" · ")).collect::<Vec<_>>();
    let mut out = vec![lines.to_vec()];
    for way in BROKEN.map(broken).into_iter().chain([2, 3, lines.len().max(1)].map(joined)) {
        if !out.contains(&way) {
            out.push(way);
        }
    }
    out
}

/// The label of a piece whose sizes lie over each other in one frame. It keeps off all lines, and off `others` (edges of pages); none
/// where it cannot be read inside without crossing one.
pub(super) fn inside(pieces: &[&SheetPiece], others: &[BezPath], letters: Letters) -> Option<Label> {
    let least = least(pieces)?;
    let beyond = pieces.iter().filter(|p| !std::ptr::eq(**p, least)).map(|p| p.outline.clone());
    let mut lines: Vec<BezPath> = pieces.iter().flat_map(|p| p.lines.iter().chain(&p.stitch)).cloned().collect();
    lines.extend(beyond.chain(words_boxes(pieces, letters)).chain(others.iter().cloned()));
    let shapes = Shapes::new(&closed(least.outline.clone()), &lines);
    let mut best: Option<Label> = None;
    for (lines, upright) in ways(&label_lines(pieces)).iter().flat_map(|w| [(w, false), (w, true)]) {
        let floor = best.as_ref().map_or(letters.least * (1.0 - tolerance::EQUAL), |b| BETTER * b.size);
        if floor >= GOOD.min(letters.most) && best.is_some() {
            break;
        }
        best = Label::fitted(lines, upright, &shapes, least.label_at, (floor, letters)).or(best);
    }
    best
}

/// The smallest of a piece's sizes: what fits in it fits in all.
fn least<'a>(pieces: &[&'a SheetPiece]) -> Option<&'a SheetPiece> {
    pieces.iter().min_by(|a, b| a.outline.area().abs().total_cmp(&b.outline.area().abs())).copied()
}

/// The label of a piece, inside or beside it. `bounds`: the box around all its lines; `most`: a label that would make that box larger than
/// this stands elsewhere if it can, mm.
pub(super) fn label(pieces: &[&SheetPiece], bounds: Rect, most: Size, letters: Letters) -> Option<Label> {
    inside(pieces, &[], letters).or_else(|| beside(pieces, bounds, most, letters))
}

/// The label of a piece over its lines, as small as can be read: for where nothing may stand beside it. None where it is larger than
/// `bounds`, the box around all lines: it would lie on its neighbours.
pub(super) fn over(pieces: &[&SheetPiece], bounds: Rect, letters: Letters) -> Option<Label> {
    let least = least(pieces)?;
    let label = Label::smallest(pieces, letters);
    let room = label.room().size();
    if room.width > bounds.width() || room.height > bounds.height() {
        return None;
    }
    let found = Shapes::new(&closed(least.outline.clone()), &[]).room(room, 1.0, false);
    let at = found.map_or(bounds.center(), |r| r.centre);
    let free = bounds.inset((-room.width / 2.0, -room.height / 2.0));
    let centre = Point::new(at.x.max(free.x0).min(free.x1), at.y.max(free.y0).min(free.y1));
    Some(Label { centre, ..label })
}

/// Where the sheet grows least, and near the piece.
fn beside(pieces: &[&SheetPiece], bounds: Rect, most: Size, letters: Letters) -> Option<Label> {
    let least = least(pieces)?;
    let label = Label::smallest(pieces, letters);
    let room = label.room().size();
    let clear = Size::new(room.width + 2.0 * BESIDE, room.height + 2.0 * BESIDE);
    let words = words_boxes(pieces, letters);
    let shapes: Vec<Shapes> = pieces
        .iter()
        .map(|p| {
            let lines: Vec<BezPath> = p.lines.iter().chain(&words).cloned().collect();
            Shapes::new(&closed(p.outline.clone()), &lines)
        })
        .collect();
    let reach = least.outline.bounding_box();
    let mut best: Option<((bool, f64), Point)> = None;
    for i in 0..=PLACES {
        for k in 0..=PLACES {
            let share = |from: f64, to: f64, at: usize| from + (to - from) * at as f64 / PLACES as f64;
            let centre = Point::new(
                share(bounds.x0 - clear.width / 2.0, bounds.x1 + clear.width / 2.0, i),
                share(bounds.y0 - clear.height / 2.0, bounds.y1 + clear.height / 2.0, k),
            );
            let own = Rect::from_center_size(centre, room);
            let all = own.union(bounds);
            let (is_large, area) = (all.width() > most.width || all.height() > most.height, all.area());
            // The outline is no nearer than its box. What is not better even there needs no look at its lines, where most of the time goes.
            let nearest_box = Point::new(centre.x.clamp(reach.x0, reach.x1), centre.y.clamp(reach.y0, reach.y1));
            let least_score = area + FAR * (nearest_box.distance(centre) - tolerance::CURVE);
            let could_be = best.is_none_or(|(b, _)| (is_large, least_score) < b);
            let is_free = || {
                shapes
                    .iter()
                    .all(|s| !s.holds(centre) && s.scale_at(centre, clear, true, (0.0, 1.0)) >= 1.0 - tolerance::EQUAL)
            };
            if !could_be || !is_free() {
                continue;
            }
            let score = (is_large, area + FAR * nearest(&least.outline, centre).distance(centre));
            if best.is_none_or(|(b, _)| score < b) {
                best = Some((score, centre));
            }
        }
    }
    let (_, centre) = best?;
    let own = Rect::from_center_size(centre, room);
    let edge = nearest(&least.outline, centre);
    let from = Point::new(edge.x.clamp(own.x0, own.x1), edge.y.clamp(own.y0, own.y1));
    let way = (edge - from).normalize();
    let holds = |p: &Point| least.outline.winding(*p) != 0;
    let to = [INTO, INTO / 3.0].map(|into| edge + way * into).into_iter().find(holds).unwrap_or(edge);
    Some(Label { centre, leader: Some([from, to]), ..label })
}

/// The point of a line that is nearest to another.
fn nearest(path: &BezPath, at: Point) -> Point {
    let near = path.segments().map(|s| (s, s.nearest(at, tolerance::PRINT)));
    near.min_by(|a, b| a.1.distance_sq.total_cmp(&b.1.distance_sq)).map_or(at, |(s, n)| s.eval(n.t))
}

impl Label {
    /// In the smallest letters, its lines broken; it has no place yet.
    fn smallest(pieces: &[&SheetPiece], letters: Letters) -> Self {
        let lines = ways(&label_lines(pieces)).into_iter().nth(1).unwrap_or_else(|| label_lines(pieces));
        let (centre, size, pen) = (Point::ZERO, letters.least, letters.leader);
        Self { lines, upright: false, centre, size, pen, leader: None }
    }

    /// As large as it can be, but larger than the floor.
    fn fitted(
        lines: &[String],
        upright: bool,
        shapes: &Shapes,
        wanted: Option<Point>,
        (floor, letters): (f64, Letters),
    ) -> Option<Self> {
        // The box of the label at size 1, with half a letter around it.
        let width = lines.iter().map(|l| font::text_width(l, 1.0)).fold(0.0, f64::max) + 1.0;
        let height = LEADING * lines.len() as f64 + 0.5;
        let room = if upright { Size::new(height, width) } else { Size::new(width, height) };
        let at_wanted =
            wanted.filter(|p| shapes.holds(*p)).map(|p| (p, shapes.scale_at(p, room, true, (0.0, letters.most))));
        let (centre, scale) = match at_wanted.filter(|(_, scale)| *scale >= floor) {
            Some(place) => place,
            None => shapes.room_above(floor, room, ROOM * letters.most, true).map(|r| (r.centre, r.scale))?,
        };
        Some(Self {
            lines: lines.to_vec(),
            upright,
            centre,
            size: scale.min(letters.most),
            pen: letters.leader,
            leader: None,
        })
    }

    /// The box of its letters.
    pub fn room(&self) -> Rect {
        let width = self.lines.iter().map(|l| font::text_width(l, self.size)).fold(0.0, f64::max);
        let height = LEADING * self.size * self.lines.len() as f64;
        let size = if self.upright { Size::new(height, width) } else { Size::new(width, height) };
        Rect::from_center_size(self.centre, size)
    }

    /// The same, moved along.
    pub fn moved(self, by: Vec2) -> Self {
        Self { centre: self.centre + by, leader: self.leader.map(|l| l.map(|p| p + by)), ..self }
    }

    /// Whether it stands beside its piece.
    pub fn is_beside(&self) -> bool {
        self.leader.is_some()
    }

    /// As it is drawn, moved along.
    pub fn items(&self, by: Vec2, ink: Ink) -> Vec<Item> {
        let step = LEADING * self.size;
        // The middle of the first line's capitals to the middle of the last line's is centred.
        let first = font::cap_height(self.size) / 2.0 - step * (self.lines.len() as f64 - 1.0) / 2.0;
        let item = |(i, line): (usize, &String)| {
            let down = first + step * i as f64;
            let aside = if self.upright { Vec2::new(down, 0.0) } else { Vec2::new(0.0, down) };
            let angle = if self.upright { -FRAC_PI_2 } else { 0.0 };
            let at = self.centre + aside + by;
            Item::Text(Text { text: line.clone(), at, size: self.size, angle, align: Align::Middle, ink })
        };
        let mut items: Vec<Item> = self.lines.iter().enumerate().map(item).collect();
        if let Some([from, to]) = self.leader {
            items.push(Item::Stroke { path: straight(from + by, to + by), pen: Pen { ink, ..Pen::solid(self.pen) } });
            let dot = Circle::new(to + by, DOT * self.pen).to_path(tolerance::PRINT);
            items.push(Item::Fill { path: dot, ink });
        }
        items
    }
}

/// The small words of a piece whose sizes lie over each other: those of the smallest, once; where they differ from size to size a line for
/// each, its size before it. The middle of each baseline, the direction of reading, the words.
pub(super) fn words(pieces: &[&SheetPiece], letters: Letters) -> Vec<(Point, f64, String)> {
    let Some(least) = least(pieces) else { return Vec::new() };
    let mut out = Vec::new();
    for (i, (at, angle, text)) in least.words.iter().enumerate() {
        let of_size = |p: &&SheetPiece| p.words.get(i).map(|(_, _, text)| (p.size.clone(), text.clone()));
        let all: Vec<(String, String)> = pieces.iter().filter_map(of_size).collect();
        if all.iter().all(|(_, other)| other == text) {
            out.push((*at, *angle, text.clone()));
            continue;
        }
        let down = Vec2::new(-libm::sin(*angle), libm::cos(*angle)) * (LEADING * letters.least);
        let lines = all.into_iter().enumerate();
        out.extend(lines.map(|(k, (size, text))| (*at + down * k as f64, *angle, format!("{size}: {text}"))));
    }
    out
}

/// Small words as they are drawn, moved along.
pub(super) fn words_items(pieces: &[&SheetPiece], by: Vec2, ink: Ink, letters: Letters) -> Vec<Item> {
    let item = |(at, angle, text): (Point, f64, String)| {
        Item::Text(Text { text, at: at + by, size: letters.least, angle, align: Align::Middle, ink })
    };
    words(pieces, letters).into_iter().map(item).collect()
}

/// The boxes of small words, turned as they are.
pub(super) fn words_boxes(pieces: &[&SheetPiece], letters: Letters) -> Vec<BezPath> {
    let one = |(at, angle, text): (Point, f64, String)| {
        let half = font::text_width(&text, letters.least) / 2.0;
        let face = font::face();
        let own = Rect::new(-half, -face.ascent * letters.least, half, -face.descent * letters.least);
        Affine::translate(at.to_vec2()) * Affine::rotate(angle) * own.to_path(tolerance::PRINT)
    };
    words(pieces, letters).into_iter().map(one).collect()
}
