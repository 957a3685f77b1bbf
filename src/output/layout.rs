//! Arranging pieces over the pages of a home printer, so that few are needed.
//!
//! Small pieces are never split, and no piece reaches a page by a sliver. Places that a person chose are kept.

use std::collections::BTreeSet;

use kurbo::{Point, Rect, Size};

/// Free room between pieces, mm.
const GAP: f64 = 6.0;
/// Free room between a piece and the edge of a page that it does not cross, mm.
const INSET: f64 = 5.0;
/// A piece that reaches a page reaches it by at least this much, mm.
const SLIVER: f64 = 14.0;
/// The most columns of pages.
const MOST_COLUMNS: usize = 12;
/// The most places that are tried for a piece, in each direction.
const MOST_PLACES: usize = 220;

/// Where the pieces lie, mm, and how many pages there are.
#[derive(Clone, Debug, PartialEq)]
pub struct Layout {
    /// The top left corner of each piece's room.
    pub corners: Vec<Point>,
    /// The size of a page's part.
    pub tile: Size,
    /// Columns and rows of pages.
    pub columns: usize,
    /// Rows.
    pub rows: usize,
}

impl Layout {
    /// The part of a page, mm.
    pub fn part(&self, column: usize, row: usize) -> Rect {
        let at = Point::new(column as f64 * self.tile.width, row as f64 * self.tile.height);
        Rect::from_origin_size(at, self.tile)
    }

    /// The pages that a room touches.
    pub fn touched(&self, room: Rect) -> impl Iterator<Item = (usize, usize)> {
        let (columns, rows) = (range(room.x0, room.x1, self.tile.width), range(room.y0, room.y1, self.tile.height));
        rows.flat_map(move |row| columns.clone().map(move |column| (column, row)))
    }
}

fn range(from: f64, to: f64, tile: f64) -> std::ops::Range<usize> {
    let first = (from / tile).floor().max(0.0) as usize;
    let last = ((to - crate::base::tolerance::EQUAL) / tile).floor().max(0.0) as usize;
    first..last + 1
}

/// Arranges rooms of these sizes. `fixed`: corners that a person chose.
pub fn arranged(rooms: &[Size], fixed: &[Option<Point>], tile: Size) -> Layout {
    let widest = rooms.iter().map(|r| r.width).fold(0.0, f64::max);
    let least = super::paper::pages_over(widest + 2.0 * INSET, tile.width, 0.0);
    let area: f64 = rooms.iter().map(|r| r.area()).sum();
    let enough = ((area / tile.area()).sqrt().ceil() as usize * 2 + 2).clamp(least, MOST_COLUMNS.max(least));
    let mut best: Option<(usize, f64, Layout)> = None;
    for columns in least..=enough {
        let layout = with_columns(rooms, fixed, tile, columns);
        let pages = pages(rooms, &layout);
        // Of equally many pages those nearest to a square are the easiest to join on a table.
        let shape = layout.columns as f64 * tile.width / (layout.rows as f64 * tile.height);
        let off = if shape > 1.0 { shape } else { 1.0 / shape };
        if best.as_ref().is_none_or(|(least, shape, _)| pages < *least || (pages == *least && off < *shape)) {
            best = Some((pages, off, layout));
        }
    }
    best.map_or_else(|| with_columns(rooms, fixed, tile, least), |(.., layout)| layout)
}

/// How many pages the rooms touch.
fn pages(rooms: &[Size], layout: &Layout) -> usize {
    let all = rooms.iter().zip(&layout.corners).flat_map(|(s, at)| layout.touched(Rect::from_origin_size(*at, *s)));
    all.collect::<BTreeSet<_>>().len()
}

fn with_columns(rooms: &[Size], fixed: &[Option<Point>], tile: Size, columns: usize) -> Layout {
    let mut layout = Layout { corners: vec![Point::ZERO; rooms.len()], tile, columns, rows: 1 };
    let mut placed: Vec<Rect> = Vec::new();
    let mut used: BTreeSet<(usize, usize)> = BTreeSet::new();
    let fixed_at = |i: usize| fixed.get(i).copied().flatten();
    let mut order: Vec<usize> = (0..rooms.len()).collect();
    // What a person placed first, then the largest.
    order.sort_by(|a, b| {
        let key = |i: usize| (fixed_at(i).is_none(), -rooms[i].area());
        let ((fa, aa), (fb, ab)) = (key(*a), key(*b));
        fa.cmp(&fb).then(aa.total_cmp(&ab))
    });
    for i in order {
        let at = fixed_at(i).unwrap_or_else(|| place(rooms[i], &placed, &used, &layout));
        let room = Rect::from_origin_size(at, rooms[i]);
        used.extend(layout.touched(room));
        placed.push(room);
        layout.corners[i] = at;
    }
    layout.columns = used.iter().map(|(c, _)| c + 1).max().unwrap_or(1);
    layout.rows = used.iter().map(|(_, r)| r + 1).max().unwrap_or(1);
    layout
}

/// The place that needs the fewest new pages; of equals the highest, then the one furthest left.
fn place(room: Size, placed: &[Rect], used: &BTreeSet<(usize, usize)>, layout: &Layout) -> Point {
    let tile = layout.tile;
    let width = tile.width * layout.columns as f64;
    let below = placed.iter().map(|p| p.y1).fold(0.0, f64::max);
    let rows =
        range(0.0, below.max(1.0), tile.height).end + super::paper::pages_over(room.height, tile.height, 0.0) + 1;
    let across = places(room.width, tile.width, layout.columns, placed.iter().map(|p| (p.x0, p.x1)));
    let down = places(room.height, tile.height, rows, placed.iter().map(|p| (p.y0, p.y1)));
    let mut best: Option<(usize, Point)> = None;
    for &y in &down {
        // Places come from the highest on, so a later one must need fewer pages: where none is needed nothing is better.
        if best.is_some_and(|(least, _)| least == 0) {
            break;
        }
        for &x in &across {
            let here = Rect::from_origin_size(Point::new(x, y), room);
            if x + room.width > width - INSET && layout.columns > 1 && room.width + 2.0 * INSET <= width {
                continue;
            }
            let apart = |p: &Rect| {
                p.x1 + GAP <= here.x0 || here.x1 + GAP <= p.x0 || p.y1 + GAP <= here.y0 || here.y1 + GAP <= p.y0
            };
            if !placed.iter().all(apart) {
                continue;
            }
            // Counted no further than it could be better.
            let most = best.map_or(usize::MAX, |(least, _)| least);
            let new = layout.touched(here).filter(|t| !used.contains(t)).take(most).count();
            if new < most {
                best = Some((new, here.origin()));
            }
        }
    }
    // There is always the place below everything else.
    let lowest = range(0.0, below.max(1.0), tile.height).end as f64 * tile.height;
    best.map_or(Point::new(INSET, lowest + INSET), |(_, at)| at)
}

/// Places in one direction at which a length may begin: whole on a page, or over several without a sliver.
fn places(length: f64, tile: f64, pages: usize, others: impl Iterator<Item = (f64, f64)>) -> Vec<f64> {
    let mut out: Vec<f64> = Vec::new();
    let needed = super::paper::pages_over(length + 2.0 * INSET, tile, 0.0);
    for page in 0..pages {
        let start = page as f64 * tile;
        let end = (page + needed) as f64 * tile;
        out.push(start + INSET);
        out.push(end - INSET - length);
        out.push((start + end - length) / 2.0);
    }
    for (from, to) in others {
        out.push(to + GAP);
        out.push(from - GAP - length);
    }
    out.retain(|at| *at >= INSET - crate::base::tolerance::EQUAL && is_clear(*at, length, tile));
    out.sort_by(f64::total_cmp);
    out.dedup_by(|a, b| (*a - *b).abs() < crate::base::tolerance::EQUAL);
    out.truncate(MOST_PLACES);
    out
}

/// Whether a length that begins here is whole on a page, or reaches each page by more than a sliver.
fn is_clear(at: f64, length: f64, tile: f64) -> bool {
    let end = at + length;
    let (first, last) = ((at / tile).floor(), ((end - crate::base::tolerance::EQUAL) / tile).floor());
    let near_edge = |x: f64, other: f64| (x - other).abs();
    if first == last {
        // Whole on one page, off its edges.
        let (left, right) = (at - first * tile, (first + 1.0) * tile - end);
        return left.min(right) >= INSET - crate::base::tolerance::EQUAL || length + 2.0 * INSET > tile;
    }
    if length + 2.0 * INSET <= tile {
        return false; // a small piece is never split
    }
    near_edge((first + 1.0) * tile, at) >= SLIVER && near_edge(end, last * tile) >= SLIVER
}

#[cfg(test)]
mod tests {
    use super::*;

    const TILE: Size = Size::new(190.0, 259.4);

    fn check(rooms: &[Size]) -> usize {
        let layout = arranged(rooms, &[], TILE);
        let all: Vec<Rect> = rooms.iter().zip(&layout.corners).map(|(s, at)| Rect::from_origin_size(*at, *s)).collect();
        for (i, a) in all.iter().enumerate() {
            assert!(a.x0 >= 0.0 && a.y0 >= 0.0);
            for b in &all[..i] {
                assert!(a.intersect(*b).area() <= 0.0, "{a:?} lies on {b:?}");
            }
            let touched: Vec<_> = layout.touched(*a).collect();
            if a.width() + 10.0 <= TILE.width && a.height() + 10.0 <= TILE.height {
                assert_eq!(touched.len(), 1, "{a:?} is split");
            }
            for (column, row) in touched {
                let part = layout.part(column, row).intersect(*a);
                let least = |part: f64, all: f64| part >= SLIVER.min(all) - 1e-6;
                assert!(least(part.width(), a.width()) && least(part.height(), a.height()), "{a:?} reaches {part:?}");
            }
        }
        pages(rooms, &layout)
    }

    #[test]
    fn pieces_are_apart_whole_where_they_can_be_and_reach_no_page_by_a_sliver() {
        for n in 1..=24 {
            let rooms: Vec<Size> =
                (0..n).map(|i| Size::new(40.0 + 61.0 * (i % 7) as f64, 30.0 + 83.0 * (i % 5) as f64)).collect();
            check(&rooms);
        }
        for width in [179.0, 181.0, 190.0, 195.0, 203.0, 250.0, 380.0, 383.0, 760.0] {
            check(&[Size::new(width, 700.0), Size::new(100.0, 100.0)]);
        }
    }

    #[test]
    fn few_pages_are_needed() {
        assert_eq!(check(&[Size::new(180.0, 249.0)]), 1);
        assert_eq!(check(&[Size::new(80.0, 80.0); 4]), 1);
        assert_eq!(check(&[Size::new(370.0, 249.0)]), 2);
        assert_eq!(check(&[Size::new(370.0, 509.0), Size::new(60.0, 60.0)]), 5);
    }

    #[test]
    fn what_a_person_placed_stays() {
        let rooms = [Size::new(100.0, 100.0), Size::new(100.0, 100.0)];
        let layout = arranged(&rooms, &[None, Some(Point::new(8.0, 8.0))], TILE);
        assert_eq!(layout.corners[1], Point::new(8.0, 8.0));
        assert!(layout.corners[0] != layout.corners[1]);
    }
}
