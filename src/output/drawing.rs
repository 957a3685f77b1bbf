//! A drawing in millimetres, independent of any file format: what sheets are made of and what writers read.
//!
//! x to the right, y down, origin at the top left of the page. Arranging is `wide`'s, writing is `pdf`'s.

use std::sync::Arc;

use kurbo::{Affine, BezPath, Point, Rect, Vec2};

use super::photo::Photo;

/// One page of drawing.
#[derive(Clone, Debug, PartialEq)]
pub struct Picture {
    /// Width of the page, mm.
    pub width: f64,
    /// Height of the page, mm.
    pub height: f64,
    /// What is drawn, the first at the bottom.
    pub items: Vec<Item>,
}

impl Picture {
    /// What is drawn, moved.
    pub fn moved(&self, by: Vec2) -> Vec<Item> {
        self.items.iter().map(|i| fitted(i, Affine::translate(by), 1.0)).collect()
    }

    /// What is drawn, at another scale and place: lines as wide as before, words scaled.
    pub fn fitted(&self, scale: f64, at: Point) -> Vec<Item> {
        let clip = Item::Clip { rect: Rect::new(0.0, 0.0, self.width, self.height), items: self.items.clone() };
        vec![fitted(&clip, Affine::translate(at.to_vec2()) * Affine::scale(scale), scale)]
    }
}

fn fitted(item: &Item, by: Affine, scale: f64) -> Item {
    let all = |items: &[Item], by: Affine| items.iter().map(|i| fitted(i, by, scale)).collect();
    match item {
        Item::Stroke { path, pen } => {
            let dashes = pen.dashes.iter().map(|d| d * scale).collect();
            Item::Stroke { path: by * path.clone(), pen: Pen { dashes, ..pen.clone() } }
        }
        Item::Fill { path, ink } => Item::Fill { path: by * path.clone(), ink: *ink },
        Item::Photo { photo, rect } => Item::Photo { photo: Arc::clone(photo), rect: by.transform_rect_bbox(*rect) },
        Item::Text(text) => Item::Text(Text { at: by * text.at, size: text.size * scale, ..text.clone() }),
        Item::Clip { rect, items } => Item::Clip { rect: by.transform_rect_bbox(*rect), items: all(items, by) },
        Item::Shared { what, at } => {
            let by = by * Affine::translate(*at);
            Item::Clip { rect: by.transform_rect_bbox(what.room), items: all(&what.items, by) }
        }
        Item::Group { layer, items } => Item::Group { layer: layer.clone(), items: all(items, by) },
    }
}

/// A thing that is drawn.
#[derive(Clone, Debug, PartialEq)]
pub enum Item {
    /// A line along a path.
    Stroke {
        /// The path, mm.
        path: BezPath,
        /// How it is drawn.
        pen: Pen,
    },
    /// The inside of a path (by winding, not zero).
    Fill {
        /// The path, mm.
        path: BezPath,
        /// Its colour.
        ink: Ink,
    },
    /// One line of text.
    Text(Text),
    /// A picture of points, upright.
    Photo {
        /// The picture.
        photo: Arc<Photo>,
        /// Where it lies, mm.
        rect: Rect,
    },
    /// Things of which only what lies in a rectangle is seen.
    Clip {
        /// The rectangle, mm.
        rect: Rect,
        /// What is in it.
        items: Vec<Item>,
    },
    /// The same things at several places, on several pages: written once.
    Shared {
        /// What is drawn.
        what: Arc<Shared>,
        /// By how much it is moved, mm.
        at: Vec2,
    },
    /// Things that belong together.
    Group {
        /// The layer that a reader can switch off; groups of the same name are one layer. `None`: no layer.
        layer: Option<String>,
        /// What is in it.
        items: Vec<Item>,
    },
}

/// Things that are drawn in several places. Layers stand around them, not in them.
#[derive(Clone, Debug, PartialEq)]
pub struct Shared {
    /// Their room: nothing outside of it is seen, mm.
    pub room: Rect,
    /// What is drawn.
    pub items: Vec<Item>,
}

/// How a line is drawn.
#[derive(Clone, Debug, PartialEq)]
pub struct Pen {
    /// Width of the line, mm.
    pub width: f64,
    /// Lengths of dashes and gaps in turn, mm; none: a solid line.
    pub dashes: Vec<f64>,
    /// Its colour.
    pub ink: Ink,
}

impl Pen {
    /// A solid black line.
    pub fn solid(width: f64) -> Self {
        Self { width, dashes: Vec::new(), ink: Ink::BLACK }
    }
}

/// A colour of print, each part from 0 (dark) to 255.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Ink {
    /// Red.
    pub red: u8,
    /// Green.
    pub green: u8,
    /// Blue.
    pub blue: u8,
}

impl Ink {
    /// Black.
    pub const BLACK: Self = Self::grey(0);

    /// A grey.
    pub const fn grey(light: u8) -> Self {
        Self { red: light, green: light, blue: light }
    }
}

/// One line of text.
#[derive(Clone, Debug, PartialEq)]
pub struct Text {
    /// Its letters. Written in Unicode's composed form (NFC); control signs are written as spaces.
    pub text: String,
    /// A point of its baseline; which one, says `align`.
    pub at: Point,
    /// Size of the em, mm.
    pub size: f64,
    /// Direction of reading in radians: 0 to the right, positive clockwise as seen.
    pub angle: f64,
    /// Which point of the baseline lies at `at`.
    pub align: Align,
    /// Its colour.
    pub ink: Ink,
}

impl Text {
    /// Black text that reads to the right from `at`.
    pub fn new(text: impl Into<String>, at: Point, size: f64) -> Self {
        Self { text: text.into(), at, size, angle: 0.0, align: Align::Start, ink: Ink::BLACK }
    }
}

/// Which point of a line of text is placed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Align {
    /// Where reading starts.
    Start,
    /// The middle.
    Middle,
    /// Where reading ends.
    End,
}
