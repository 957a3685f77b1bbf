//! What the sheet shows: the outlines of the pieces in every size that is drawn, and the place of each piece on the table.
//!
//! Everything is read from the model; nothing is computed here but bounds and places. How it is painted is the canvas's.

use std::collections::BTreeMap;

use kurbo::{BezPath, Point, Rect, Shape as _, Vec2};

use crate::compute::Model;
use crate::output;

/// The most sizes that are drawn behind the chosen one; of more an even choice is drawn.
const MOST_BEHIND: usize = 60;
/// A piece that has no shape in any size gets a place of this side, mm.
const EMPTY_SIDE: f64 = 200.0;
/// Space between pieces, as a part of the longest side of any.
const GAP: f64 = 0.09;
/// Rows of pieces are broken so that the whole comes near this shape, width over height.
const SHAPE: f64 = 1.7;
/// The most ways of breaking rows that are tried.
const MOST_TRIES: usize = 64;

/// A piece in one size.
#[derive(Clone, Debug, PartialEq)]
pub enum Drawn {
    /// It cannot be drawn in that size.
    Missing,
    /// It has a shape.
    Shape {
        /// Its outline, mm, in its own frame.
        outline: BezPath,
        /// Lines in it.
        lines: Vec<BezPath>,
        /// Whether it hangs on something that is not true.
        untrue: bool,
        /// The smallest upright rectangle around it.
        bounds: Rect,
    },
}

/// A piece's place on the table.
#[derive(Clone, Debug, PartialEq)]
pub struct Slot {
    /// The piece's name.
    pub name: String,
    /// The room it needs in all drawn sizes, mm, in its own frame.
    pub bounds: Rect,
    /// From its frame to the table.
    pub shift: Vec2,
}

impl Slot {
    /// Its room on the table.
    pub fn room(&self) -> Rect {
        self.bounds + self.shift
    }
}

/// Shapes of all pieces.
#[derive(Clone, Debug, Default)]
pub struct Shapes {
    /// Pieces in the order of the draft.
    pub slots: Vec<Slot>,
    /// Cases that are drawn behind the chosen one.
    pub behind: Vec<usize>,
    /// By case, then by piece.
    drawn: BTreeMap<usize, Vec<Drawn>>,
}

impl Shapes {
    /// The shapes of a model with a place for each piece.
    pub fn of(model: &Model) -> Self {
        let cases = &model.plan.cases;
        let many = if cases.range > 0 { cases.range } else { cases.list.len() };
        let mut shapes = Self { behind: even_choice(many), ..Self::default() };
        for case in shapes.behind.clone() {
            shapes.add(model, case);
        }
        let names = model.plan.frames.iter().filter(|f| f.is_piece).map(|f| f.name.to_string());
        shapes.slots = names
            .enumerate()
            .map(|(piece, name)| {
                let bounds = shapes.drawn.values().filter_map(|pieces| match &pieces[piece] {
                    Drawn::Shape { bounds, .. } => Some(*bounds),
                    Drawn::Missing => None,
                });
                let empty = Rect::new(0.0, 0.0, EMPTY_SIDE, EMPTY_SIDE);
                Slot { name, bounds: bounds.reduce(|a, b| a.union(b)).unwrap_or(empty), shift: Vec2::ZERO }
            })
            .collect();
        arrange(&mut shapes.slots);
        shapes
    }

    /// Reads the shapes of a further case.
    pub fn add(&mut self, model: &Model, case: usize) {
        let pieces = model.plan.frames.iter().filter(|f| f.is_piece);
        self.drawn.entry(case).or_insert_with(|| {
            pieces
                .map(|frame| match output::outline(model, case, frame) {
                    None => Drawn::Missing,
                    Some(outline) => {
                        let lines = output::lines(model, case, frame);
                        let bounds = lines.iter().fold(outline.bounding_box(), |b, l| b.union(l.bounding_box()));
                        let untrue = frame.edges.iter().any(|e| model.is_untrue(case, *e));
                        Drawn::Shape { outline, lines, untrue, bounds }
                    }
                })
                .collect()
        });
    }

    /// A piece in a case that was read.
    pub fn get(&self, case: usize, piece: usize) -> Option<&Drawn> {
        self.drawn.get(&case)?.get(piece)
    }

    /// The room that all pieces take on the table, mm.
    pub fn room(&self) -> Option<Rect> {
        self.slots.iter().map(Slot::room).reduce(|a, b| a.union(b))
    }
}

/// All of so many cases, or an even choice with the first and the last.
fn even_choice(many: usize) -> Vec<usize> {
    if many <= MOST_BEHIND {
        return (0..many).collect();
    }
    (0..MOST_BEHIND).map(|i| i * (many - 1) / (MOST_BEHIND - 1)).collect()
}

/// Puts the pieces beside each other in rows, in their order, tops level.
fn arrange(slots: &mut [Slot]) {
    let longest = slots.iter().map(|s| s.bounds.width().max(s.bounds.height())).fold(0.0, f64::max);
    let gap = longest * GAP;
    let widths: Vec<f64> = slots
        .iter()
        .scan(0.0, |sum, s| {
            *sum += s.bounds.width() + gap;
            Some(*sum)
        })
        .collect();
    // The row that needs the least scaling down; the longer one of equals.
    let best = widths.iter().rev().take(MOST_TRIES).map(|width| (place(slots, *width, gap), *width)).fold(
        None,
        |best: Option<(f64, f64)>, (room, width)| {
            let need = room.width().max(room.height() * SHAPE);
            if best.is_none_or(|(least, _)| need < least) { Some((need, width)) } else { best }
        },
    );
    if let Some((_, width)) = best {
        place(slots, width, gap);
    }
}

/// Places the pieces in rows no wider than `width`, and says what room they take.
fn place(slots: &mut [Slot], width: f64, gap: f64) -> Rect {
    let (mut x, mut y, mut row) = (0.0, 0.0, 0.0_f64);
    let mut room = Rect::ZERO;
    for slot in slots {
        if x > 0.0 && x + slot.bounds.width() > width {
            // Names stand under the pieces, so rows are further apart than columns.
            (x, y, row) = (0.0, y + row + 2.0 * gap, 0.0);
        }
        slot.shift = Point::new(x, y) - slot.bounds.origin();
        x += slot.bounds.width() + gap;
        row = row.max(slot.bounds.height());
        room = room.union(slot.room());
    }
    room
}

#[cfg(test)]
mod tests {
    use super::*;

    fn slot(width: f64, height: f64) -> Slot {
        Slot { name: String::new(), bounds: Rect::new(-5.0, -7.0, width - 5.0, height - 7.0), shift: Vec2::ZERO }
    }

    #[test]
    fn pieces_never_lie_on_each_other() {
        for count in [1, 2, 3, 7, 40] {
            let mut slots: Vec<Slot> = (0..count).map(|i| slot(50.0 + 31.0 * (i % 5) as f64, 400.0)).collect();
            arrange(&mut slots);
            for (i, a) in slots.iter().enumerate() {
                for b in &slots[i + 1..] {
                    assert!(a.room().intersect(b.room()).area() <= 0.0, "{count}: {:?} and {:?}", a.room(), b.room());
                }
            }
        }
    }

    #[test]
    fn many_pieces_come_in_rows() {
        let mut few = vec![slot(300.0, 500.0), slot(300.0, 500.0)];
        arrange(&mut few);
        assert!(few[1].room().x0 > few[0].room().x1 && few[1].room().y0 == few[0].room().y0);
        let mut many = vec![slot(300.0, 500.0); 24];
        arrange(&mut many);
        let room = many.iter().map(Slot::room).reduce(|a, b| a.union(b)).unwrap_or(Rect::ZERO);
        assert!((1.0..3.0).contains(&(room.width() / room.height())), "{room:?}");
    }

    #[test]
    fn the_choice_has_both_ends_and_none_twice() {
        assert_eq!(even_choice(3), [0, 1, 2]);
        let many = even_choice(4_000);
        assert_eq!((many.len(), many[0], many[MOST_BEHIND - 1]), (MOST_BEHIND, 0, 3_999));
        assert!(many.windows(2).all(|p| p[0] < p[1]));
    }
}
