//! The block at the top left of a sheet: what it is, its sizes, and the marks by which its scale is checked.
//!
//! Its place and its marks are the same on every sheet. Marks along the top and the left side, words between them.

use std::f64::consts::FRAC_PI_2;

use kurbo::{BezPath, PathEl, Point, Rect, Vec2};

use super::drawing::{Align, Item, Pen, Text};
use super::font;
use crate::texts::{decimal, inch, t};

/// Width of the block, mm.
pub const WIDTH: f64 = 124.0;
/// Least height of the block, mm.
const LEAST_HEIGHT: f64 = 124.0;
/// Where all marks start, along their direction.
const MARK_START: f64 = 20.0;
/// How far the two marks of a direction lie from the block's side.
const MARK_PLACES: [f64; 2] = [5.0, 15.0];
/// The two marks: length in mm and its words. Each is its own unit, so that neither can be taken for a rounded other.
const MARKS: [f64; 2] = [100.0, 101.6];
/// Half the length of an end tick.
const TICK: f64 = 3.0;
const MARK_PEN: f64 = 0.25;
const MARK_TEXT: f64 = 3.5;
/// Where the words start, right and down.
const WORDS: f64 = 24.0;
const TITLE_SIZE: f64 = 7.0;
const TEXT_SIZE: f64 = 3.8;
/// From line to line, in sizes.
const LEADING: f64 = 1.4;
/// Length of the sample of a size's line.
const SAMPLE: f64 = 40.0;

/// What the words of the block say.
pub struct Words<'a> {
    /// The title of the sheet.
    pub title: &'a str,
    /// The sizes on it, each with the pen of its outline.
    pub sizes: &'a [(String, Pen)],
    /// Whether some pieces are grey.
    pub faded: bool,
    /// Whether outlines are cut lines on all pieces, on some, or on none.
    pub cut: CutLines,
}

/// On which pieces the outline is the cut line.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CutLines {
    /// On none: all are stitch lines.
    None,
    /// On some.
    Some,
    /// On all.
    All,
}

impl CutLines {
    /// Of some pieces, by whether each has a cut line.
    pub fn of(mut has: impl Iterator<Item = bool>) -> Self {
        let Some(first) = has.next() else { return Self::None };
        match (first, has.any(|h| h != first)) {
            (_, true) => Self::Some,
            (true, false) => Self::All,
            (false, false) => Self::None,
        }
    }

    /// What a person must know before cutting.
    pub fn words(self) -> String {
        match self {
            Self::None => t!("title-no-allowance"),
            Self::Some => t!("title-some-allowance"),
            Self::All => t!("title-allowance"),
        }
    }
}

/// Height that the block needs, mm.
pub fn height(words: &Words<'_>) -> f64 {
    draw(words, Point::ZERO, (0.0, 0.0)).1
}

/// The block with its top left corner at `corner`, on a page of this size in mm; and its height.
pub fn draw(words: &Words<'_>, corner: Point, page: (f64, f64)) -> (Vec<Item>, f64) {
    let mut items = Vec::new();
    let names = ["100 mm".to_owned(), format!("4 {}", inch())];
    for (place, (length, name)) in MARK_PLACES.into_iter().zip(MARKS.into_iter().zip(names)) {
        mark(&mut items, corner, place, length, &name);
    }
    let mut column = Column { items, corner: corner + Vec2::new(WORDS, WORDS), down: 0.0 };
    column.write(words.title, TITLE_SIZE, 0.0);
    column.down += 2.0;
    // Kept in one line, so that the height does not depend on the numbers.
    let (mm, inches) =
        ([page.0, page.1].map(|mm| decimal(&mm.to_string())), |mm: f64| decimal(&format!("{:.2}", mm / 25.4)));
    let [width, height] = mm;
    let size = t!("title-page", width, height, across = inches(page.0), down = inches(page.1));
    column.line(size, TEXT_SIZE, 0.0);
    column.write(&t!("title-true-size"), TEXT_SIZE, 0.0);
    column.write(&words.cut.words(), TEXT_SIZE, 0.0);
    if words.faded {
        column.write(&t!("title-faded"), TEXT_SIZE, 0.0);
    }
    column.down += 2.0;
    match words.sizes {
        [] => {}
        [(size, _)] => column.write(&t!("title-size", size), TEXT_SIZE, 0.0),
        sizes => {
            column.write(&t!("title-sizes"), TEXT_SIZE, 0.0);
            for (size, pen) in sizes {
                let level = column.corner + Vec2::new(0.0, column.down + font::cap_height(TEXT_SIZE) / 2.0);
                let path = segment(level, level + Vec2::new(SAMPLE, 0.0));
                column.items.push(Item::Stroke { path, pen: pen.clone() });
                column.write(size, TEXT_SIZE, SAMPLE + 4.0);
            }
        }
    }
    (column.items, (WORDS + column.down).max(LEAST_HEIGHT))
}

/// The words of the block, written downwards.
struct Column {
    items: Vec<Item>,
    corner: Point,
    /// How far it has come.
    down: f64,
}

impl Column {
    fn write(&mut self, text: &str, size: f64, indent: f64) {
        for line in font::wrapped(text, size, WIDTH - WORDS - indent) {
            self.line(line, size, indent);
        }
    }

    fn line(&mut self, text: String, size: f64, indent: f64) {
        let at = self.corner + Vec2::new(indent, self.down + font::cap_height(size));
        self.items.push(Item::Text(Text::new(text, at, size)));
        self.down += size * LEADING;
    }
}

/// One mark across and its like down.
fn mark(items: &mut Vec<Item>, corner: Point, place: f64, length: f64, name: &str) {
    // Across first; down is the same with the parts of every point exchanged.
    for down in [false, true] {
        let at = |along: f64, aside: f64| {
            let (x, y) = if down { (aside, along) } else { (along, aside) };
            Point::new(corner.x + x, corner.y + y)
        };
        let (start, end) = (MARK_START, MARK_START + length);
        let mut path = segment(at(start, place), at(end, place));
        for tick in [start, end] {
            path.extend(segment(at(tick, place - TICK), at(tick, place + TICK)));
        }
        items.push(Item::Stroke { path, pen: Pen::solid(MARK_PEN) });
        let mut text = Text::new(name, at(start + length / 2.0, place - 1.2), MARK_TEXT);
        text.align = Align::Middle;
        text.angle = if down { -FRAC_PI_2 } else { 0.0 };
        items.push(Item::Text(text));
    }
}

fn segment(from: Point, to: Point) -> BezPath {
    BezPath::from_iter([PathEl::MoveTo(from), PathEl::LineTo(to)])
}

/// The room that the block takes.
pub fn frame(corner: Point, height: f64) -> Rect {
    Rect::new(corner.x, corner.y, corner.x + WIDTH, corner.y + height)
}
