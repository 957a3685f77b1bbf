//! What the sheet shows: the outlines of the pieces in every size that is drawn, and the place of each piece on the table.
//!
//! Everything is read from the model; nothing is computed here but bounds and places. How it is painted is the canvas's.

use std::collections::BTreeMap;
use std::sync::Arc;

use kurbo::{BezPath, Point, Rect, Shape as _, Vec2};

use crate::compute::{EdgeShape, FramePlan, Item, Model, Mouth};
use crate::document::Draft;
use crate::output;
use crate::session::places_on;

/// The most sizes that are drawn behind the chosen one; of more an even choice is drawn.
const MOST_BEHIND: usize = 60;
/// The place of a piece that has no shape in any size, mm.
const EMPTY: Rect = Rect::new(0.0, 0.0, 200.0, 200.0);
/// Space between pieces, as a part of the longest side of any.
const GAP: f64 = 0.09;
/// How many gaps rows are apart.
const ROW_GAP: f64 = 3.2;
/// Rows of pieces are broken so that the whole comes near this shape, width over height.
const SHAPE: f64 = 1.7;
/// The most ways of breaking rows that are tried.
const MOST_TRIES: usize = 64;

/// Something of the model that is drawn.
#[derive(Clone, Debug, PartialEq)]
enum Source {
    Edge(Arc<EdgeShape<f64>>),
    Mouth(Arc<Mouth<f64>>),
}

impl Source {
    /// Whether it is the very same, not only an equal one.
    fn is_same(&self, other: &Self) -> bool {
        match (self, other) {
            (Self::Edge(a), Self::Edge(b)) => Arc::ptr_eq(a, b),
            (Self::Mouth(a), Self::Mouth(b)) => Arc::ptr_eq(a, b),
            _ => false,
        }
    }
}

/// A piece or drawing in one size.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Drawn {
    /// Its edges, mm, in its own frame; one closed line if they make an outline.
    pub outline: BezPath,
    /// Lines in it.
    pub lines: Vec<BezPath>,
    /// Whether everything in it could be computed and the outline is closed.
    pub is_whole: bool,
    /// Whether it hangs on something that is not true.
    pub untrue: bool,
    /// Whether this is an earlier shape, because there is none now.
    pub is_past: bool,
    /// The smallest upright rectangle around lines and points, if there are any.
    pub bounds: Option<Rect>,
    /// From its frame to the frame in which the sizes lie over each other.
    pub stack: Vec2,
    /// What it was made of, to see whether it is the same again.
    made_of: Vec<Option<Source>>,
}

impl Drawn {
    /// Whether there is any line.
    pub fn is_empty(&self) -> bool {
        self.outline.elements().is_empty() && self.lines.is_empty()
    }
}

/// A piece's place on the table.
#[derive(Clone, Debug, PartialEq)]
pub struct Slot {
    /// The piece's name.
    pub name: String,
    /// Whether it is a piece; else a drawing.
    pub is_piece: bool,
    /// The room it needs in all drawn sizes, mm, where the sizes lie over each other.
    pub bounds: Rect,
    /// Whether it has no shape in any size, so that the room is only kept for it.
    blank: bool,
    /// Whether it is not in the view that is shown: nothing of it is seen, and its room is kept.
    pub absent: bool,
    /// From there to the table, where there is room for it.
    home: Vec2,
    /// From there to the table, as it lies: where a person put it, else where there is room.
    pub shift: Vec2,
}

impl Slot {
    /// Its room on the table.
    pub fn room(&self) -> Rect {
        self.bounds + self.shift
    }
}

/// Shapes of all pieces and drawings.
#[derive(Clone, Debug, Default)]
pub struct Shapes {
    /// Pieces in the order of the draft, then drawings.
    pub slots: Vec<Slot>,
    /// Cases that are drawn behind the chosen one.
    pub behind: Vec<usize>,
    /// Addresses of all cases.
    addresses: Vec<String>,
    /// By case, then by slot.
    drawn: BTreeMap<usize, Vec<Arc<Drawn>>>,
    /// The room that is seen where all is to be seen: it does not follow every pull.
    fit: Option<Rect>,
    /// Where a person put pieces: where their coordinates begin.
    put: Vec<(String, Point)>,
}

impl Shapes {
    /// The shapes of a model with a place for each piece.
    pub fn of(draft: &Draft, model: &Model) -> Self {
        Self::read(draft, model, &Self::default(), false).arranged()
    }

    /// The shapes of a later model. Pieces keep their places, new ones come beside them; what has no shape any more keeps its
    /// last one. `still`: sizes lie over each other as they did, because something is pulled and must not slip.
    pub fn followed(&self, draft: &Draft, model: &Model, still: bool) -> Self {
        if self.slots.is_empty() {
            return Self::of(draft, model);
        }
        let mut shapes = Self::read(draft, model, self, still);
        let gap = shapes.slots.iter().map(|s| s.bounds.width().max(s.bounds.height())).fold(0.0, f64::max) * GAP;
        let known = |name: &str| self.slots.iter().find(|s| s.name == name);
        let mut right = self.room().map_or(0.0, |r| r.x1);
        let top = self.room().map_or(0.0, |r| r.y0);
        let mut came = false;
        for slot in &mut shapes.slots {
            let earlier = known(&slot.name);
            if let Some(earlier) = earlier.filter(|_| slot.absent) {
                (slot.bounds, slot.blank) = (earlier.bounds, earlier.blank);
            }
            // A piece that was in no view until now has had no room of its size.
            came |= earlier.is_some_and(|e| e.absent && e.blank) && !slot.absent;
            slot.home = match earlier {
                // What was empty until now is put where its place was.
                Some(earlier) if earlier.blank => earlier.room().origin() - slot.bounds.origin(),
                Some(earlier) => earlier.home,
                None => {
                    let at = Point::new(right + gap, top) - slot.bounds.origin();
                    right += gap + slot.bounds.width();
                    at
                }
            };
        }
        if came {
            return shapes.arranged();
        }
        shapes.put_down();
        let same = self.slots.len() == shapes.slots.len()
            && self.slots.iter().zip(&shapes.slots).all(|(a, b)| a.name == b.name && a.blank == b.blank);
        shapes.fit = if same { self.fit } else { shapes.room() };
        shapes
    }

    /// Puts the pieces beside each other anew.
    pub fn arranged(mut self) -> Self {
        arrange(&mut self.slots);
        self.put_down();
        self.fit = self.room();
        self
    }

    /// Sees all that is there now.
    pub fn refit(&mut self) {
        self.fit = self.room();
    }

    /// Puts pieces where a person put them.
    fn put_down(&mut self) {
        for slot in &mut self.slots {
            let put = self.put.iter().find(|(name, _)| *name == slot.name);
            slot.shift = put.map_or(slot.home, |(_, at)| at.to_vec2());
        }
    }

    /// The room that is seen where all is to be seen, mm.
    pub fn fit(&self) -> Option<Rect> {
        self.fit
    }

    fn read(draft: &Draft, model: &Model, earlier: &Self, still: bool) -> Self {
        let cases = &model.plan.cases;
        let many = if cases.range > 0 { cases.range } else { cases.list.len() };
        let addresses = cases.list.iter().map(|c| c.address.clone()).collect();
        let put = places_on(draft, "");
        let mut shapes = Self { behind: even_choice(many), addresses, put, ..Self::default() };
        // Cases that were shown before, such as persons, stay read.
        let shown = earlier.drawn.keys().filter_map(|c| earlier.addresses.get(*c));
        let again: Vec<usize> = shown.filter_map(|a| shapes.addresses.iter().position(|b| a == b)).collect();
        for case in shapes.behind.iter().copied().chain(again).collect::<Vec<_>>() {
            shapes.add(draft, model, case, earlier, still);
        }
        shapes.slots = model
            .plan
            .frames()
            .iter()
            .enumerate()
            .map(|(i, frame)| {
                let all = shapes.drawn.values().filter_map(|pieces| Some(pieces[i].bounds? + pieces[i].stack));
                let bounds = all.reduce(|a, b| a.union(b));
                let (bounds, blank) = (bounds.unwrap_or(EMPTY), bounds.is_none());
                Slot {
                    name: frame.name.to_string(),
                    is_piece: frame.is_piece,
                    bounds,
                    blank,
                    absent: !model.plan.has_frame(i),
                    home: Vec2::ZERO,
                    shift: Vec2::ZERO,
                }
            })
            .collect();
        shapes
    }

    /// Reads the shapes of a further case.
    pub fn add(&mut self, draft: &Draft, model: &Model, case: usize, earlier: &Self, still: bool) {
        if self.drawn.contains_key(&case) || case >= model.plan.cases.list.len() {
            return;
        }
        let address = &model.plan.cases.list[case].address;
        let then = earlier.addresses.iter().position(|a| a == address).and_then(|c| earlier.drawn.get(&c));
        let pieces = model.plan.frames().iter().enumerate().map(|(i, frame)| {
            if !model.plan.has_frame(i) {
                return Arc::default();
            }
            let was = then.and_then(|pieces| {
                let i = earlier.slots.iter().position(|s| *s.name == *frame.name)?;
                pieces.get(i)
            });
            drawn(draft, model, case, frame, (was, still))
        });
        self.drawn.insert(case, pieces.collect());
    }

    /// A piece in a case that was read.
    pub fn get(&self, case: usize, piece: usize) -> Option<&Arc<Drawn>> {
        self.drawn.get(&case)?.get(piece)
    }

    /// From the frame of a piece in a case to the table.
    pub fn shift(&self, case: usize, piece: usize) -> Vec2 {
        let own = self.slots.get(piece).map_or(Vec2::ZERO, |s| s.shift);
        own + self.get(case, piece).map_or(Vec2::ZERO, |d| d.stack)
    }

    /// The place of a piece or drawing among the slots.
    pub fn slot(&self, name: &str) -> Option<usize> {
        self.slots.iter().position(|s| s.name == name)
    }

    /// The room that all pieces take on the table, mm.
    pub fn room(&self) -> Option<Rect> {
        self.slots.iter().map(Slot::room).reduce(|a, b| a.union(b))
    }
}

/// A piece in a case. Where it is made of the very same lines as before, it is the same.
fn drawn(
    draft: &Draft,
    model: &Model,
    case: usize,
    frame: &FramePlan,
    (was, still): (Option<&Arc<Drawn>>, bool),
) -> Arc<Drawn> {
    let edges = frame.edges.iter().chain(&frame.lines);
    let made_of: Vec<Option<Source>> = edges
        .chain(frame.mouths.iter().map(|(mouth, _)| mouth))
        .map(|node| match model.item(case, *node)? {
            Item::Mouth(mouth) => Some(Source::Mouth(Arc::clone(mouth))),
            item => item.edge().map(|e| Source::Edge(Arc::clone(e))),
        })
        .collect();
    let untrue = frame.edges.iter().chain(&frame.points).any(|e| model.is_untrue(case, *e));
    let stack = match was.filter(|_| still) {
        Some(was) => was.stack,
        None => output::stack(draft, model, case, frame),
    };
    let same = |a: &Option<Source>, b: &Option<Source>| match (a, b) {
        (Some(a), Some(b)) => a.is_same(b),
        _ => false,
    };
    if let Some(was) = was.filter(|w| w.is_whole && !w.is_past) {
        let all = was.made_of.len() == made_of.len() && was.made_of.iter().zip(&made_of).all(|(a, b)| same(a, b));
        if all && was.untrue == untrue && was.stack == stack {
            return Arc::clone(was);
        }
    }
    let closed = output::outline(model, case, frame);
    let parts = made_of.iter().zip(frame.edges.iter().chain(&frame.lines));
    let is_whole = (closed.is_some() || !frame.is_piece)
        && parts.into_iter().all(|(made, node)| made.is_some() || model.is_nothing(case, *node));
    let outline = closed.unwrap_or_else(|| {
        let mut open = BezPath::new();
        for edge in made_of.iter().take(frame.edges.len()).flatten() {
            if let Source::Edge(edge) = edge {
                open.extend(edge.curve.to_path().elements().iter().copied());
            }
        }
        open
    });
    let lines = output::lines(model, case, frame);
    let points = frame.points.iter().filter_map(|p| model.item(case, *p)?.point());
    let points = points.map(|p| Point::new(p.x, p.y)).filter(|p| p.is_finite());
    let point_room = points.fold(None, |room: Option<Rect>, p| {
        let own = Rect::from_points(p, p);
        Some(room.map_or(own, |r| r.union_pt(p)))
    });
    let boxes = std::iter::once(&outline).chain(&lines).filter(|l| !l.elements().is_empty()).map(|l| l.bounding_box());
    let bounds = boxes.chain(point_room).reduce(|a, b| a.union(b));
    let now = Drawn { outline, lines, is_whole, untrue, is_past: false, bounds, stack, made_of };
    match was {
        // A piece that was whole and is not now shows what it was, until it can be computed again.
        Some(was) if !now.is_whole && was.is_whole && frame.is_piece && !frame.edges.is_empty() => {
            Arc::new(Drawn { is_past: true, ..Drawn::clone(was) })
        }
        _ => Arc::new(now),
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
            (x, y, row) = (0.0, y + row + ROW_GAP * gap, 0.0);
        }
        slot.home = Point::new(x, y) - slot.bounds.origin();
        slot.shift = slot.home;
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
        Slot {
            name: String::new(),
            is_piece: true,
            bounds: Rect::new(-5.0, -7.0, width - 5.0, height - 7.0),
            blank: false,
            absent: false,
            home: Vec2::ZERO,
            shift: Vec2::ZERO,
        }
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
