//! A lay as a picture: the cloth with its selvedges and folds, every piece with its letter and thread, and what stands beside it in words.

use kurbo::{BezPath, Point, Rect, Size, Vec2};

use super::job::{LayShape, LayStretch};
use super::length::both;
use super::packing::Laid;
use super::plan::Lay;
use crate::document::ClothLaid;
use crate::output::drawing::{Align, Ink, Item, Pen, Picture, Text};
use crate::output::font;
use crate::output::label::Shapes;
use crate::texts::{readable, t};

/// No letter in a picture of a lay is smaller, mm from line to line: 6 points are about what small print has (common practice, no source).
pub const SMALLEST: f64 = 2.1;
/// Letters of pieces are no larger than so many mm.
const LETTER: f64 = 4.8;
/// Letters of the words at a stretch, and from one line of them to the next.
const WORDS: f64 = 2.5;
const LINE: f64 = 3.4;
/// From the cloth to the words at it.
const OFF: f64 = 1.0;
/// Between two stretches.
const BETWEEN: f64 = 2.0;
/// From one row of letters beside the cloth to the next, and between two of a row.
const ROW: f64 = SMALLEST * 1.4;
const APART: f64 = 1.5;
/// However long the cloth, it is drawn no smaller.
const LEAST_SCALE: f64 = 1.0 / 20_000.0;
const CLOTH_INK: Ink = Ink::grey(120);
const FACE_DOWN: Ink = Ink::grey(215);

/// Letters of the pieces of a draft by their places, for a picture.
pub type Letters<'a> = &'a [String];

/// What stands for a piece in a picture: its letter, or its name where it has none.
fn sign(about: &LayShape, letters: Letters<'_>) -> String {
    let letter = letters.get(about.frame).filter(|l| !about.strip && !l.is_empty()).cloned();
    letter.unwrap_or_else(|| readable(&about.name))
}

/// What the letters mean, in the order of the draft: `A front, B back`.
pub fn legend(lay: &Lay, letters: Letters<'_>) -> String {
    let mut all: Vec<(bool, usize, String)> = Vec::new();
    for about in lay.job.stretches.iter().flat_map(|s| &s.shapes) {
        let name = readable(&about.name);
        let sign = sign(about, letters);
        let words = if sign == name { name } else { format!("{sign} {name}") };
        let one = (about.strip, about.frame, words);
        if !all.contains(&one) {
            all.push(one);
        }
    }
    all.sort();
    all.into_iter().map(|a| a.2).collect::<Vec<_>>().join(", ")
}

/// How a stretch of cloth lies, in words.
pub fn laid_words(laid: ClothLaid) -> String {
    match laid {
        ClothLaid::Open => t!("lay-open"),
        ClothLaid::Folded => t!("lay-folded"),
        ClothLaid::FoldedToMiddle => t!("lay-to-middle"),
        ClothLaid::FoldedPart => t!("lay-part"),
    }
}

/// The same in a few words, which tell each way from the others.
pub fn laid_briefly(laid: ClothLaid) -> String {
    match laid {
        ClothLaid::Open => t!("lay-brief-open"),
        ClothLaid::Folded => t!("lay-brief-folded"),
        ClothLaid::FoldedToMiddle => t!("lay-brief-to-middle"),
        ClothLaid::FoldedPart => t!("lay-brief-part"),
    }
}

/// Whether anything lies face down on a single layer, so that a reader must be told what grey means.
pub(super) fn has_face_down(lay: &Lay) -> bool {
    lay.job.stretches.iter().zip(&lay.layouts).any(|(s, l)| l.laid.iter().any(|p| is_face_down(lay, s, p)))
}

fn is_face_down(lay: &Lay, stretch: &LayStretch, piece: &Laid) -> bool {
    let s = lay.job.stretches.iter().position(|own| std::ptr::eq(own, stretch)).unwrap_or(0);
    let pose = lay.pose(s, piece);
    let about = stretch.shapes.get(piece.shape);
    pose.zip(about).is_some_and(|(pose, about)| pose.mirrored && about.gives == 1 && !about.on_fold)
}

/// The lay within this room, mm, drawn to scale, as high as it comes out; and what one of its millimetres stands for. Letters that would be
/// too small within their pieces stand beside the cloth with a line to them.
pub fn lay_figure(lay: &Lay, letters: Letters<'_>, room: Size) -> (Picture, f64) {
    let longest = lay.layouts.iter().map(|l| l.length).fold(1.0, f64::max);
    let wide: f64 = lay.job.stretches.iter().map(|s| height(lay, s)).sum::<f64>().max(1.0);
    let words: Vec<[Vec<String>; 2]> = (0..lay.job.stretches.len())
        .map(|s| stretch_words(lay, s).map(|w| font::wrapped(&w, WORDS, room.width - 2.0)))
        .collect();
    let lines = words.iter().flatten().map(Vec::len).sum::<usize>() as f64;
    let plain = lines * LINE + words.len() as f64 * (2.0 * OFF + BETWEEN);
    // How many rows of letters beside the cloth there are hangs on the scale, and that on the rows.
    let (mut rows, mut scale) = (0, LEAST_SCALE);
    for _ in 0..3 {
        let high = room.height - plain - rows as f64 * ROW;
        scale = ((room.width - 2.0) / longest).min(high / wide).max(LEAST_SCALE);
        let now = (0..words.len()).map(|s| Signs::of(lay, s, letters, scale).rows()).sum::<usize>();
        if now <= rows {
            break;
        }
        rows = now;
    }
    let mut items = Vec::new();
    let mut down = 0.0;
    for (s, [above, below]) in words.iter().enumerate() {
        down = lines_at(&mut items, above, down) + OFF;
        let signs = Signs::of(lay, s, letters, scale);
        let corner = Point::new(1.0, down);
        stretch(&mut items, lay, s, (corner, scale));
        signs.draw(&mut items, corner, height(lay, &lay.job.stretches[s]) * scale);
        down += height(lay, &lay.job.stretches[s]) * scale + signs.rows() as f64 * ROW + OFF;
        down = lines_at(&mut items, below, down) + BETWEEN;
    }
    (Picture { width: room.width, height: down, items }, 1.0 / scale)
}

/// Lines of words from here down; where they end.
fn lines_at(items: &mut Vec<Item>, lines: &[String], mut down: f64) -> f64 {
    for line in lines {
        let at = Point::new(1.0, down + LINE * 0.5 + font::cap_height(WORDS) / 2.0);
        items.push(Item::Text(Text::new(line.clone(), at, WORDS)));
        down += LINE;
    }
    down
}

/// What stands above and below a stretch.
fn stretch_words(lay: &Lay, s: usize) -> [String; 2] {
    let own = &lay.job.stretches[s];
    let (upper, lower) = match own.laid {
        ClothLaid::Open => (t!("lay-selvedge"), t!("lay-selvedge")),
        ClothLaid::Folded => (t!("lay-fold"), t!("lay-selvedges")),
        ClothLaid::FoldedToMiddle => (t!("lay-fold"), t!("lay-fold")),
        ClothLaid::FoldedPart => (t!("lay-fold"), t!("lay-selvedge")),
    };
    let laid = laid_words(own.laid);
    let above = if lay.job.on.cloth.nap {
        t!("lay-above-nap", edge = upper, laid)
    } else {
        t!("lay-above", edge = upper, laid)
    };
    [above, t!("lay-below", edge = lower, length = both(lay.layouts[s].length))]
}

/// How high a stretch lies on the table, selvedges and all, mm.
fn height(lay: &Lay, stretch: &LayStretch) -> f64 {
    let (above, below) = selvedges(lay, stretch);
    stretch.job.width + above + below
}

/// How much selvedge there is above and below what is used, mm.
fn selvedges(lay: &Lay, stretch: &LayStretch) -> (f64, f64) {
    let edge = lay.job.on.cloth.selvedge;
    match stretch.laid {
        ClothLaid::Open => (edge, edge),
        ClothLaid::Folded | ClothLaid::FoldedPart => (0.0, edge),
        ClothLaid::FoldedToMiddle => (0.0, 0.0),
    }
}

fn stretch(items: &mut Vec<Item>, lay: &Lay, s: usize, (corner, scale): (Point, f64)) {
    let own = &lay.job.stretches[s];
    let layout = &lay.layouts[s];
    let (above, below) = selvedges(lay, own);
    let (length, width) = (layout.length * scale, height(lay, own) * scale);
    let zero = corner + Vec2::new(0.0, above * scale);
    let line = |y: f64, pen: Pen| {
        let mut path = BezPath::new();
        path.move_to((corner.x, corner.y + y));
        path.line_to((corner.x + length, corner.y + y));
        Item::Stroke { path, pen }
    };
    let pen = |width: f64, dashes: &[f64]| Pen { ink: CLOTH_INK, dashes: dashes.to_vec(), ..Pen::solid(width) };
    for piece in &layout.laid {
        let path = path_of(lay, s, piece, scale, zero.to_vec2());
        if is_face_down(lay, own, piece) {
            items.push(Item::Fill { path: path.clone(), ink: FACE_DOWN });
        }
        items.push(Item::Stroke { path, pen: Pen::solid(0.25) });
    }
    // The ends of the cloth, its selvedges and folds.
    let frame = Rect::new(corner.x, corner.y, corner.x + length, corner.y + width);
    for x in [frame.x0, frame.x1] {
        let mut path = BezPath::new();
        path.move_to((x, frame.y0));
        path.line_to((x, frame.y1));
        items.push(Item::Stroke { path, pen: pen(0.2, &[1.2, 0.8]) });
    }
    match own.laid {
        ClothLaid::Open => items.extend([line(0.0, pen(0.35, &[])), line(width, pen(0.35, &[]))]),
        ClothLaid::Folded => items.extend([line(0.0, pen(0.7, &[])), line(width, pen(0.35, &[]))]),
        ClothLaid::FoldedToMiddle => {
            items.extend([line(0.0, pen(0.7, &[])), line(width, pen(0.7, &[]))]);
            items.push(line(width / 2.0, pen(0.25, &[2.0, 1.0])));
        }
        ClothLaid::FoldedPart => {
            items.extend([line(0.0, pen(0.7, &[])), line(width, pen(0.35, &[]))]);
            items.push(line(own.folded_part * scale, pen(0.25, &[2.0, 1.0])));
        }
    }
    if lay.job.on.cloth.selvedge > 0.0 {
        for (y, there) in [(above * scale, above > 0.0), (width - below * scale, below > 0.0)] {
            if there {
                items.push(line(y, pen(0.12, &[0.8, 0.8])));
            }
        }
    }
}

/// The outline of a piece as it is drawn.
fn path_of(lay: &Lay, s: usize, piece: &Laid, scale: f64, zero: Vec2) -> BezPath {
    let mut path = BezPath::new();
    for (k, p) in lay.polygon(s, piece).into_iter().enumerate() {
        let p = (p.to_vec2() * scale + zero).to_point();
        if k == 0 { path.move_to(p) } else { path.line_to(p) }
    }
    path.close_path();
    path
}

/// What stands for the pieces of a stretch: within them, or beside the cloth where it would be too small.
struct Signs {
    within: Vec<Item>,
    /// Rows of words with the places, on the cloth, to which lines go from them; the left end of the words.
    beside: Vec<Vec<(f64, String, Vec<Point>)>>,
}

impl Signs {
    /// Of a stretch whose first corner lies at the origin.
    fn of(lay: &Lay, s: usize, letters: Letters<'_>, scale: f64) -> Self {
        let own = &lay.job.stretches[s];
        let zero = Vec2::new(0.0, selvedges(lay, own).0 * scale);
        let mut out = Self { within: Vec::new(), beside: Vec::new() };
        let mut beside: Vec<(Point, String)> = Vec::new();
        for piece in &lay.layouts[s].laid {
            let Some(about) = own.shapes.get(piece.shape) else { continue };
            let mut lines = vec![sign(about, letters)];
            if lay.job.on.sizes.len() > 1 && !about.size.is_empty() {
                lines = vec![format!("{} {}", lines[0], about.size)];
            }
            if about.one_layer {
                lines.push(t!("lay-one-layer"));
            }
            let shapes = Shapes::new(&path_of(lay, s, piece, scale, zero), &[]);
            let turned = lay.pose(s, piece).map_or(0.0, |p| p.turned);
            if !lettered(&mut out.within, &shapes, &lines, (!about.strip).then_some(turned)) {
                let place = shapes.room(Size::new(1.0, 1.0), LETTER, true);
                beside.extend(place.map(|r| (r.centre, lines.join(", "))));
            }
        }
        beside.sort_by(|a, b| a.0.x.total_cmp(&b.0.x).then(a.0.y.total_cmp(&b.0.y)));
        let right = lay.layouts[s].length * scale;
        for (at, words) in beside {
            let wide = font::text_width(&words, SMALLEST);
            let left = (at.x - wide / 2.0).min(right - wide).max(0.0);
            let free = |row: &Vec<(f64, String, Vec<Point>)>| {
                row.last().is_none_or(|(x, w, _)| x + font::text_width(w, SMALLEST) + APART <= left)
            };
            // Alike and near each other they share their words.
            let alike = out.beside.iter_mut().filter_map(|row| row.last_mut());
            if let Some(last) = alike.into_iter().find(|(x, w, _)| *w == words && x + wide + APART > left) {
                last.2.push(at);
            } else if let Some(row) = out.beside.iter_mut().find(|row| free(row)) {
                row.push((left, words, vec![at]));
            } else {
                out.beside.push(vec![(left, words, vec![at])]);
            }
        }
        out
    }

    fn rows(&self) -> usize {
        self.beside.len()
    }

    /// Draws them at a cloth that is so high.
    fn draw(&self, items: &mut Vec<Item>, corner: Point, high: f64) {
        let within = Picture { width: 0.0, height: 0.0, items: self.within.clone() };
        items.extend(within.moved(corner.to_vec2()));
        for (r, row) in self.beside.iter().enumerate() {
            let top = high + r as f64 * ROW + 0.3;
            for (left, words, places) in row {
                let middle = Point::new(left + font::text_width(words, SMALLEST) / 2.0, top + 0.2);
                for at in places {
                    let mut path = BezPath::new();
                    path.move_to(*at + corner.to_vec2());
                    path.line_to(middle + corner.to_vec2());
                    items.push(Item::Stroke { path, pen: Pen::solid(0.12) });
                }
                let at = Point::new(*left, top + ROW * 0.5 + font::cap_height(SMALLEST) / 2.0) + corner.to_vec2();
                items.push(Item::Text(Text::new(words.clone(), at, SMALLEST)));
            }
        }
    }
}

/// Words within an outline, and an arrow of the thread under them: its head shows how the piece is turned. Whether they have room.
fn lettered(items: &mut Vec<Item>, shapes: &Shapes, lines: &[String], turned: Option<f64>) -> bool {
    let wide = lines.iter().map(|l| font::text_width(l, 1.0)).fold(0.0, f64::max);
    let size = Size::new(wide + 0.4, 1.2 * lines.len() as f64 + 0.4);
    let Some(found) = shapes.room(size, LETTER, true).filter(|r| r.scale >= SMALLEST) else { return false };
    let em = found.scale.min(LETTER);
    let mut down = found.centre.y - size.height * em / 2.0;
    for line in lines {
        down += 1.2 * em;
        let at = Point::new(found.centre.x, down - 0.2 * em);
        items.push(Item::Text(Text { align: Align::Middle, ..Text::new(line.clone(), at, em) }));
    }
    let Some(turned) = turned else { return true };
    let half = (size.width * em / 2.0).min(em * 1.6);
    let head = if turned.rem_euclid(360.0) == 180.0 { -1.0 } else { 1.0 };
    let y = down + 0.12 * em;
    let tip = Point::new(found.centre.x + half * head, y);
    let mut arrow = BezPath::new();
    arrow.move_to((found.centre.x - half * head, y));
    arrow.line_to(tip);
    arrow.move_to(tip + Vec2::new(-0.25 * em * head, -0.15 * em));
    arrow.line_to(tip);
    arrow.line_to(tip + Vec2::new(-0.25 * em * head, 0.15 * em));
    items.push(Item::Stroke { path: arrow, pen: Pen::solid(0.15) });
    true
}
