//! Whether two pages show the same: a digest of a picture, with some words left out.

use kurbo::{BezPath, PathEl, Point, Rect, Vec2};

use super::drawing::{Align, Ink, Item, Pen, Picture, Text};
use super::font;
use super::pdf::STEP;
use crate::base::{digest, round_half_away};

/// Curves are taken as straight within this, mm.
const FLAT: f64 = crate::base::tolerance::PRINT;

/// A digest of what a picture shows. In words, what is in `leave_out` does not count: edition and date stand on every page and would make
/// all of them other. Lines count as far as they are seen on the page: a seam that goes on longer on the next page makes this one no other.
pub fn picture_digest(picture: &Picture, leave_out: &[&str]) -> u128 {
    let mut bytes = Bytes { out: Vec::new(), leave_out };
    bytes.number(picture.width);
    bytes.number(picture.height);
    let page = Rect::new(0.0, 0.0, picture.width, picture.height);
    bytes.items(&picture.items, Vec2::ZERO, page);
    digest(&[&bytes.out])
}

/// What is digested.
struct Bytes<'a> {
    out: Vec<u8>,
    leave_out: &'a [&'a str],
}

impl Bytes<'_> {
    fn number(&mut self, value: f64) {
        let steps = (round_half_away(value, STEP) / STEP).round();
        // No picture is so large that this loses anything.
        self.out.extend((steps as i64).to_be_bytes());
    }

    fn points(&mut self, sign: u8, points: &[Point]) {
        self.out.push(sign);
        for p in points {
            self.number(p.x);
            self.number(p.y);
        }
    }

    fn ink(&mut self, ink: Ink) {
        self.out.extend([ink.red, ink.green, ink.blue]);
    }

    fn pen(&mut self, pen: &Pen) {
        self.number(pen.width);
        pen.dashes.iter().for_each(|d| self.number(*d));
        self.ink(pen.ink);
    }

    /// What is seen of a path, moved by `by`; whether anything is.
    fn path(&mut self, sign: u8, path: &BezPath, by: Vec2, seen: Rect) -> bool {
        let before = self.out.len();
        let (mut start, mut last) = (Point::ZERO, Point::ZERO);
        let mut parts = Vec::new();
        kurbo::flatten(path, FLAT, |element| match element {
            PathEl::MoveTo(p) => (start, last) = (p + by, p + by),
            PathEl::ClosePath => {
                parts.push((last, start));
                last = start;
            }
            PathEl::LineTo(p) | PathEl::QuadTo(_, p) | PathEl::CurveTo(_, _, p) => {
                parts.push((last, p + by));
                last = p + by;
            }
        });
        for (a, b) in parts {
            if let Some([a, b]) = clipped(a, b, seen) {
                self.points(sign, &[a, b]);
            }
        }
        self.out.len() > before
    }

    fn items(&mut self, items: &[Item], by: Vec2, seen: Rect) {
        for item in items {
            match item {
                Item::Stroke { path, pen } => {
                    if self.path(b'l', path, by, seen) {
                        self.pen(pen);
                    }
                }
                Item::Fill { path, ink } => {
                    if self.path(b'f', path, by, seen) {
                        self.ink(*ink);
                    }
                }
                Item::Text(text) => self.text(text, by, seen),
                Item::Photo { photo, rect } => {
                    let rect = *rect + by;
                    if rect.overlaps(seen) {
                        self.points(b'P', &[rect.origin(), Point::new(rect.x1, rect.y1)]);
                        self.out.extend(photo.digest.to_be_bytes());
                    }
                }
                Item::Clip { rect, items } => self.items(items, by, seen.intersect(*rect + by)),
                Item::Shared { what, at } => {
                    let by = by + *at;
                    self.items(&what.items, by, seen.intersect(what.room + by));
                }
                Item::Group { items, .. } => self.items(items, by, seen),
            }
        }
    }

    fn text(&mut self, text: &Text, by: Vec2, seen: Rect) {
        // Around its place, whichever way it reads.
        let half = font::text_width(&text.text, text.size) + text.size;
        let around = Rect::from_center_size(text.at + by, (2.0 * half, 2.0 * half));
        if !around.overlaps(seen) {
            return;
        }
        let words = self.leave_out.iter().filter(|w| !w.is_empty());
        let words = words.fold(text.text.clone(), |all, word| all.replace(word, ""));
        self.out.push(b'T');
        self.out.extend((words.len() as u64).to_be_bytes());
        self.out.extend(words.as_bytes());
        // Where it stands may hang on how long it is.
        self.number(text.size);
        self.out.push(match text.align {
            Align::Start => 0,
            Align::Middle => 1,
            Align::End => 2,
        });
        self.ink(text.ink);
    }
}

/// The part of a line within a rectangle, after Liang and Barsky (1984); none where it is outside.
fn clipped(a: Point, b: Point, seen: Rect) -> Option<[Point; 2]> {
    let (d, mut from, mut to) = (b - a, 0.0_f64, 1.0_f64);
    for (step, room) in [(-d.x, a.x - seen.x0), (d.x, seen.x1 - a.x), (-d.y, a.y - seen.y0), (d.y, seen.y1 - a.y)] {
        if step == 0.0 {
            if room < 0.0 {
                return None;
            }
        } else if step < 0.0 {
            from = from.max(room / step);
        } else {
            to = to.min(room / step);
        }
    }
    (from < to).then(|| [a + d * from, a + d * to])
}
