//! Whether two pages show the same: a digest of a picture, with some words left out.

use kurbo::{BezPath, PathEl, Point};

use super::drawing::{Align, Ink, Item, Pen, Picture};
use super::pdf::{STEP, digest};
use crate::base::round_half_away;

/// A digest of what a picture shows. In words, what is in `leave_out` does not count: edition and date stand on every page and would make
/// all of them other.
pub fn picture_digest(picture: &Picture, leave_out: &[&str]) -> u128 {
    let mut bytes = Bytes { out: Vec::new(), leave_out };
    bytes.number(picture.width);
    bytes.number(picture.height);
    bytes.items(&picture.items);
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

    fn point(&mut self, p: Point) {
        self.number(p.x);
        self.number(p.y);
    }

    fn ink(&mut self, ink: Ink) {
        self.out.extend([ink.red, ink.green, ink.blue]);
    }

    fn path(&mut self, path: &BezPath) {
        for element in path.elements() {
            match *element {
                PathEl::MoveTo(p) => self.points(b'm', &[p]),
                PathEl::LineTo(p) => self.points(b'l', &[p]),
                PathEl::QuadTo(a, p) => self.points(b'q', &[a, p]),
                PathEl::CurveTo(a, b, p) => self.points(b'c', &[a, b, p]),
                PathEl::ClosePath => self.out.push(b'z'),
            }
        }
    }

    fn points(&mut self, sign: u8, points: &[Point]) {
        self.out.push(sign);
        points.iter().for_each(|p| self.point(*p));
    }

    fn pen(&mut self, pen: &Pen) {
        self.number(pen.width);
        pen.dashes.iter().for_each(|d| self.number(*d));
        self.ink(pen.ink);
    }

    fn items(&mut self, items: &[Item]) {
        for item in items {
            match item {
                Item::Stroke { path, pen } => {
                    self.out.push(b'S');
                    self.path(path);
                    self.pen(pen);
                }
                Item::Fill { path, ink } => {
                    self.out.push(b'F');
                    self.path(path);
                    self.ink(*ink);
                }
                Item::Text(text) => {
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
                Item::Photo { photo, rect } => {
                    self.out.push(b'P');
                    self.points(b'r', &[rect.origin(), Point::new(rect.x1, rect.y1)]);
                    self.out.extend(photo.digest.to_be_bytes());
                }
                Item::Clip { rect, items } => {
                    self.out.push(b'C');
                    self.points(b'r', &[rect.origin(), Point::new(rect.x1, rect.y1)]);
                    self.items(items);
                    self.out.push(b'/');
                }
                Item::Shared { what, at } => {
                    self.out.push(b'H');
                    self.points(b'r', &[what.room.origin(), Point::new(what.room.x1, what.room.y1), at.to_point()]);
                    self.items(&what.items);
                    self.out.push(b'/');
                }
                Item::Group { items, .. } => self.items(items),
            }
        }
    }
}
