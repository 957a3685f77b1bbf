//! Sheets for home printing: pages that are joined by their marks, and a first page that says how.
//!
//! Everything on a page lies between its margins; what a page shows is a part of one drawing, cut off exactly at its edges.

use crate::texts::{own_length, own_number, say, t};
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use kurbo::{Affine, BezPath, PathEl, PathSeg, Point, Rect, Shape, Size, Vec2};

use super::drawing::{Align, Ink, Item, Pen, Picture, Shared, Text};
use super::guide;
use super::layout::{Layout, arranged};
use super::lettering::{Letters, inside, words_items};
use super::nest::Nest;
use super::paper::{Paper, lacking};
use super::wide::{FADED, SheetError, draw_lines, sizes_and_pens};
use super::{SheetPiece, font};

/// The most sizes in one file that is to be cut from.
pub const MOST_SIZES: usize = 6;
/// Flattening by which it is seen which pages a line touches, mm.
const FLAT: f64 = 0.2;
/// Half of a join mark, mm.
const MARK: f64 = 4.0;
/// Half of a mark where a line crosses an edge, mm.
const CROSSING: f64 = 2.0;
/// How far the marks at the ends of an edge lie from its ends, mm.
const MARK_AT: f64 = 22.0;
/// Marks closer than this are one, mm.
const NEAR: f64 = 7.0;
/// The most marks for crossing lines at one edge.
const MOST_CROSSINGS: usize = 12;
const FRAME: Ink = Ink::grey(150);
const LARGE: f64 = 11.0;
const SMALL: f64 = 2.3;

/// How pages are made.
#[derive(Clone, Debug, PartialEq)]
pub struct HomeSettings {
    /// On which paper.
    pub paper: Paper,
    /// Border that printers leave free, mm.
    pub margin: f64,
    /// What the garment is called.
    pub title: String,
    /// What the print is for, in words; empty for a release.
    pub purpose: String,
    /// Edition and date, as printed.
    pub edition: String,
    /// A measure of the body by which a wrong scale is told: its name and its number in mm.
    pub body: Option<(String, f64)>,
    /// Corners of pieces that a person chose, mm from the top left of all pages.
    pub places: Vec<(String, Point)>,
    /// How lengths are told.
    pub unit: crate::base::DisplayUnit,
}

/// A page with a part of the drawing.
#[derive(Clone, Debug, PartialEq)]
pub struct PageInfo {
    /// Row letter and column number.
    pub name: String,
    /// Its column.
    pub column: usize,
    /// Its row.
    pub row: usize,
    /// Sizes with ink on it, in the order of the file.
    pub sizes: Vec<String>,
    /// Pieces with ink on it.
    pub pieces: Vec<String>,
}

/// Pages that can be printed and joined.
#[derive(Clone, Debug, PartialEq)]
pub struct HomeSheets {
    /// The first page, then those with a part of the drawing, row by row.
    pub pages: Vec<Picture>,
    /// About the latter.
    pub parts: Vec<PageInfo>,
    /// Where everything lies.
    pub layout: Layout,
    /// Names and rooms of the pieces, in the order of the layout.
    pub rooms: Vec<(String, Rect)>,
    /// What a person should know of this arrangement.
    pub notes: Vec<String>,
}

impl HomeSheets {
    /// Paper and number of pages as they stand in a file's name.
    pub fn paper_name(&self, paper: Paper) -> String {
        format!("{}-{}-pages", paper.short(), self.pages.len())
    }
}

/// The whole drawing: layers, each with its things.
type Drawing = Vec<(Option<String>, Vec<Arc<Shared>>)>;

/// Things that come on several pages.
fn shared(room: Rect, items: Vec<Item>) -> Arc<Shared> {
    // Lines have a width, labels reach a little out.
    Arc::new(Shared { room: room.inflate(1.0, 1.0), items })
}

/// The letter of a row: A to Z, then AA and on.
pub fn row_letter(row: usize) -> String {
    crate::finish::letter(row)
}

/// What lies on the table of pages, before it is cut into them.
struct Table {
    nests: Vec<Nest>,
    layout: Layout,
    /// Pages, and for each the sizes and pieces with ink on it.
    ink: BTreeMap<(usize, usize), (BTreeSet<usize>, BTreeSet<usize>)>,
    sizes: Vec<(String, Pen)>,
    /// Where lines cross the edges of pages: edges to the right of a page, and below it.
    right: BTreeMap<(usize, usize), Vec<f64>>,
    below: BTreeMap<(usize, usize), Vec<f64>>,
}

/// Makes the pages.
///
/// # Errors
/// Where there is nothing to print, or a margin that leaves too little of a page.
pub fn home_sheets(pieces: &[SheetPiece], settings: &HomeSettings) -> Result<HomeSheets, SheetError> {
    let tile = settings.paper.tile(settings.margin);
    if !(settings.margin >= 0.0 && tile.width >= guide::LEAST_WIDTH && tile.height >= guide::LEAST_HEIGHT) {
        return Err(SheetError::Margin { margin: settings.margin, most: most_margin(settings.paper) });
    }
    if pieces.is_empty() {
        return Err(SheetError::NoPieces);
    }
    let table = laid_out(pieces, settings, tile)?;
    let parts: Vec<PageInfo> = table.parts();
    let mut pages = vec![guide::page(&guide::Guide {
        settings,
        tile,
        parts: &parts,
        layout: &table.layout,
        nests: &table.nests,
        sizes: &table.sizes,
    })];
    let drawing = table.drawing();
    let frame = shared(Rect::from_origin_size(Point::new(settings.margin, settings.margin), tile), {
        let mut items = Vec::new();
        ruler(&mut items, Rect::from_origin_size(Point::new(settings.margin, settings.margin), tile));
        items
    });
    for (i, part) in parts.iter().enumerate() {
        pages.push(table.page(part, (i + 1, parts.len()), (&drawing, &frame), settings));
    }
    let rooms = table.nests.iter().zip(&table.layout.corners);
    let rooms = rooms.map(|(n, at)| (n.name.clone(), Rect::from_origin_size(*at, n.room))).collect();
    Ok(HomeSheets { pages, notes: table.notes(settings), parts, rooms, layout: table.layout })
}

/// The largest margin that leaves room for the first page, mm.
fn most_margin(paper: Paper) -> f64 {
    let page = paper.page();
    ((page.width - guide::LEAST_WIDTH) / 2.0).min((page.height - guide::LEAST_HEIGHT) / 2.0).floor()
}

fn laid_out(pieces: &[SheetPiece], settings: &HomeSettings, tile: Size) -> Result<Table, SheetError> {
    let nests = Nest::all(pieces)?;
    let rooms: Vec<Size> = nests.iter().map(|n| n.room).collect();
    let fixed: Vec<Option<Point>> =
        nests.iter().map(|n| settings.places.iter().find(|p| p.0 == n.name).map(|p| p.1)).collect();
    let layout = arranged(&rooms, &fixed, tile);
    let sizes = sizes_and_pens(pieces);
    let mut table =
        Table { nests, layout, ink: BTreeMap::new(), sizes, right: BTreeMap::new(), below: BTreeMap::new() };
    table.find_ink();
    Ok(table)
}

impl Table {
    /// Follows every line over the pages.
    fn find_ink(&mut self) {
        let tile = self.layout.tile;
        let page =
            |p: Point| ((p.x / tile.width).floor().max(0.0) as usize, (p.y / tile.height).floor().max(0.0) as usize);
        for (n, (nest, at)) in self.nests.iter().zip(&self.layout.corners).enumerate() {
            for piece in &nest.pieces {
                let size = self.sizes.iter().position(|(s, _)| *s == piece.size).unwrap_or(0);
                let shift = Affine::translate(at.to_vec2());
                for path in std::iter::once(&piece.outline).chain(&piece.lines) {
                    for (a, b) in straights(&(shift * path.clone())) {
                        // So finely that no page in between is missed.
                        let steps = ((b - a).hypot() / 5.0).ceil().max(1.0) as usize;
                        for i in 0..=steps {
                            let own = self.ink.entry(page(a.lerp(b, i as f64 / steps as f64))).or_default();
                            own.0.insert(size);
                            own.1.insert(n);
                        }
                        crossings(a, b, tile, &mut self.right, &mut self.below);
                    }
                }
            }
        }
    }

    fn parts(&self) -> Vec<PageInfo> {
        let mut all: Vec<_> = self.ink.iter().collect();
        all.sort_by_key(|((column, row), _)| (*row, *column));
        all.into_iter()
            .map(|(&(column, row), (sizes, pieces))| PageInfo {
                name: format!("{}{}", row_letter(row), column + 1),
                column,
                row,
                sizes: sizes.iter().map(|i| self.sizes[*i].0.clone()).collect(),
                pieces: pieces.iter().map(|i| self.nests[*i].name.clone()).collect(),
            })
            .collect()
    }

    /// The whole drawing, a layer for each size, and the room of each thing.
    fn drawing(&self) -> Drawing {
        let many = self.sizes.len() > 1;
        let labels: Vec<Vec<Vec<Item>>> = self.nests.iter().map(Nest::labels).collect();
        let sized = self.sizes.iter().map(|(size, pen)| {
            let layer = (many && !size.is_empty()).then(|| t!("of-size", size));
            let mut items = Vec::new();
            for ((nest, at), labels) in self.nests.iter().zip(&self.layout.corners).zip(&labels) {
                for (piece, labels) in nest.pieces.iter().zip(labels).filter(|(p, _)| p.size == *size) {
                    let mut own = Vec::new();
                    let ink = if piece.faded { FADED } else { Ink::BLACK };
                    draw_lines(&mut own, piece, at.to_vec2(), pen, ink);
                    own.extend(labels.iter().map(|i| moved(i.clone(), at.to_vec2())));
                    items.push(shared(Rect::from_origin_size(*at, nest.room), own));
                }
            }
            (layer, items)
        });
        // Names are in no layer: they stay whatever sizes are switched off.
        std::iter::once((None, self.names())).chain(sized).collect()
    }

    /// The name of each piece, once, off the edges of pages where it can be.
    fn names(&self) -> Vec<Arc<Shared>> {
        let all = self.nests.iter().zip(&self.layout.corners);
        all.map(|(nest, at)| {
            let room = Rect::from_origin_size(*at, nest.room);
            let (letters, by) = (Letters::of_paper(), at.to_vec2());
            let own: Vec<&SheetPiece> = nest.pieces.iter().collect();
            let ink = if own.iter().any(|p| p.faded) { FADED } else { Ink::BLACK };
            let edges: Vec<BezPath> = self.edges(room).into_iter().map(|e| Affine::translate(-by) * e).collect();
            // Inside the piece it may keep off the edges too.
            let is_inside = nest.label.as_ref().is_some_and(|l| !l.is_beside()) && !edges.is_empty();
            let off_edges = is_inside.then(|| inside(&own, &edges, letters)).flatten();
            let label = off_edges.as_ref().or(nest.label.as_ref());
            let mut items: Vec<Item> = label.into_iter().flat_map(|l| l.items(by, ink)).collect();
            items.extend(words_items(&own, by, ink, letters));
            shared(room, items)
        })
        .collect()
    }

    /// The edges of pages that cross a room.
    fn edges(&self, room: Rect) -> Vec<BezPath> {
        let line = |a: Point, b: Point| BezPath::from_iter([PathEl::MoveTo(a), PathEl::LineTo(b)]);
        let mut out = Vec::new();
        for (column, row) in self.layout.touched(room) {
            let part = self.layout.part(column, row);
            if part.x1 < room.x1 {
                out.push(line(Point::new(part.x1, part.y0), Point::new(part.x1, part.y1)));
            }
            if part.y1 < room.y1 {
                out.push(line(Point::new(part.x0, part.y1), Point::new(part.x1, part.y1)));
            }
        }
        out
    }

    fn page(
        &self,
        part: &PageInfo,
        (number, many): (usize, usize),
        (drawing, frame): (&Drawing, &Arc<Shared>),
        settings: &HomeSettings,
    ) -> Picture {
        let page = settings.paper.page();
        let own = self.layout.part(part.column, part.row);
        let shift = Vec2::new(settings.margin, settings.margin) - own.origin().to_vec2();
        let seen = own + shift;
        let mut items = vec![];
        let name = Point::new(seen.x0 + 7.0, seen.y0 + 7.0 + font::cap_height(LARGE));
        items.push(Item::Text(Text { ink: Ink::grey(175), ..Text::new(&part.name, name, LARGE) }));
        items.push(Item::Shared { what: Arc::clone(frame), at: Vec2::ZERO });
        self.marks(&mut items, part, seen);
        let words = footer(settings, part, number, many);
        let at = Point::new(seen.x0 + 28.0, seen.y1 - 2.2);
        items.push(Item::Text(Text { ink: Ink::grey(60), ..Text::new(words, at, SMALL) }));
        let mut shown = Vec::new();
        for (layer, things) in drawing {
            let here: Vec<Item> = things
                .iter()
                .filter(|shared| shared.room.intersect(own).area() > 0.0)
                .map(|shared| Item::Shared { what: Arc::clone(shared), at: shift })
                .collect();
            if !here.is_empty() {
                shown.push(Item::Group { layer: layer.clone(), items: here });
            }
        }
        items.push(Item::Clip { rect: seen, items: shown });
        Picture { width: page.width, height: page.height, items }
    }

    /// Join marks: halves of a diamond at both ends of each edge with a neighbour, smaller ones where lines cross it.
    fn marks(&self, items: &mut Vec<Item>, part: &PageInfo, seen: Rect) {
        let (column, row) = (part.column, part.row);
        let has = |c: Option<usize>, r: Option<usize>| c.zip(r).is_some_and(|at| self.ink.contains_key(&at));
        let none = Vec::new();
        let tile = self.layout.tile;
        let origin = self.layout.part(column, row).origin();
        for (neighbour, upright, inward) in [
            ((Some(column + 1), Some(row)), true, -1.0),
            ((column.checked_sub(1), Some(row)), true, 1.0),
            ((Some(column), Some(row + 1)), false, -1.0),
            ((Some(column), row.checked_sub(1)), false, 1.0),
        ] {
            if !has(neighbour.0, neighbour.1) {
                continue;
            }
            let crossed = match (upright, inward > 0.0) {
                (true, false) => self.right.get(&(column, row)),
                (true, true) => column.checked_sub(1).and_then(|c| self.right.get(&(c, row))),
                (false, false) => self.below.get(&(column, row)),
                (false, true) => row.checked_sub(1).and_then(|r| self.below.get(&(column, r))),
            };
            let (long, start) = if upright { (tile.height, origin.y) } else { (tile.width, origin.x) };
            let ends = [MARK_AT, long - MARK_AT];
            let mut at: Vec<(f64, f64)> = ends.iter().map(|e| (*e, MARK)).collect();
            for place in spread(crossed.unwrap_or(&none)).into_iter().map(|p| p - start) {
                if at.iter().all(|(other, _)| (other - place).abs() >= NEAR) && (NEAR..long - NEAR).contains(&place) {
                    at.push((place, CROSSING));
                }
            }
            for (place, half) in at {
                let edge = match (upright, inward > 0.0) {
                    (true, false) => Point::new(seen.x1, seen.y0 + place),
                    (true, true) => Point::new(seen.x0, seen.y0 + place),
                    (false, false) => Point::new(seen.x0 + place, seen.y1),
                    (false, true) => Point::new(seen.x0 + place, seen.y0),
                };
                let (along, into) = match upright {
                    true => (Vec2::new(0.0, half), Vec2::new(inward * half, 0.0)),
                    false => (Vec2::new(half, 0.0), Vec2::new(0.0, inward * half)),
                };
                let path = BezPath::from_iter([
                    PathEl::MoveTo(edge - along),
                    PathEl::LineTo(edge + into),
                    PathEl::LineTo(edge + along),
                ]);
                items.push(Item::Clip { rect: seen, items: vec![Item::Stroke { path, pen: Pen::solid(0.25) }] });
            }
            // Which page comes there.
            if let (Some(c), Some(r)) = neighbour {
                let words = format!("{}{}", row_letter(r), c + 1);
                let middle = seen.center();
                let (at, angle) = match (upright, inward > 0.0) {
                    (true, false) => (Point::new(seen.x1 - 3.6, middle.y), -std::f64::consts::FRAC_PI_2),
                    (true, true) => (Point::new(seen.x0 + 5.2, middle.y), -std::f64::consts::FRAC_PI_2),
                    (false, false) => (Point::new(middle.x + 60.0, seen.y1 - 3.6), 0.0),
                    (false, true) => (Point::new(middle.x + 60.0, seen.y0 + 5.2), 0.0),
                };
                let text = Text { angle, align: Align::Middle, ink: Ink::grey(120), ..Text::new(words, at, 2.6) };
                items.push(Item::Text(text));
            }
        }
    }

    fn notes(&self, settings: &HomeSettings) -> Vec<String> {
        let mut out = Vec::new();
        for nest in self.nests.iter().filter(|n| n.pieces.len() > 1) {
            let crowded = nest.crowded().len();
            if crowded > 0 {
                out.push(say!("output-crowded", piece = nest.name, count = crowded, apart = own_number(1.5)));
            }
        }
        let tile = self.layout.tile;
        let all = self.nests.iter().zip(&self.layout.corners);
        let far = all.fold(Point::ZERO, |far, (n, at)| {
            Point::new(far.x.max(at.x + n.room.width), far.y.max(at.y + n.room.height))
        });
        let over = |length, tile| lacking(length, tile).map(|over| own_length(over, settings.unit));
        if let Some(by) = over(far.x, tile.width) {
            out.push(say!("output-narrower", by, count = self.layout.rows));
        }
        if let Some(by) = over(far.y, tile.height) {
            out.push(say!("output-lower", by, count = self.layout.columns));
        }
        out
    }
}

/// What a page says of itself.
fn footer(settings: &HomeSettings, part: &PageInfo, number: usize, many: usize) -> String {
    let sizes = match part.sizes.as_slice() {
        [] => String::new(),
        [one] if one.is_empty() => String::new(),
        [one] => t!("of-size", size = one),
        several => t!("of-sizes", sizes = several.join(", ")),
    };
    let page = t!("page-named", name = part.name, number, many);
    let all = [settings.title.as_str(), &settings.purpose, &settings.edition, &sizes, &page];
    all.iter().filter(|w| !w.is_empty()).copied().collect::<Vec<_>>().join(" · ")
}

/// The frame of a page with ticks along it: every 10 mm, longer every 50 mm.
fn ruler(items: &mut Vec<Item>, seen: Rect) {
    let half = 0.1;
    let mut path = seen.inset(-half).to_path(FLAT);
    let long = |i: usize| if i.is_multiple_of(5) { 3.0 } else { 1.4 };
    let mut tick = |from: Point, by: Vec2| {
        path.move_to(from);
        path.line_to(from + by);
    };
    for i in 1..(seen.width() / 10.0).ceil() as usize {
        let x = seen.x0 + 10.0 * i as f64;
        tick(Point::new(x, seen.y0 + half), Vec2::new(0.0, long(i)));
        tick(Point::new(x, seen.y1 - half), Vec2::new(0.0, -long(i)));
    }
    for i in 1..(seen.height() / 10.0).ceil() as usize {
        let y = seen.y0 + 10.0 * i as f64;
        tick(Point::new(seen.x0 + half, y), Vec2::new(long(i), 0.0));
        tick(Point::new(seen.x1 - half, y), Vec2::new(-long(i), 0.0));
    }
    items.push(Item::Stroke { path, pen: Pen { ink: FRAME, ..Pen::solid(2.0 * half) } });
}

/// A path as straight stretches.
fn straights(path: &BezPath) -> Vec<(Point, Point)> {
    let mut flat = BezPath::new();
    kurbo::flatten(path, FLAT, |e| flat.push(e));
    flat.segments()
        .filter_map(|s| match s {
            PathSeg::Line(line) => Some((line.p0, line.p1)),
            _ => None,
        })
        .collect()
}

/// Where a straight stretch crosses edges of pages.
fn crossings(
    a: Point,
    b: Point,
    tile: Size,
    right: &mut BTreeMap<(usize, usize), Vec<f64>>,
    below: &mut BTreeMap<(usize, usize), Vec<f64>>,
) {
    let between = |a: f64, b: f64, tile: f64| {
        let (low, high) = (a.min(b), a.max(b));
        ((low / tile).floor() as i64 + 1)..=((high / tile).ceil() as i64 - 1)
    };
    for i in between(a.x, b.x, tile.width).filter(|i| *i > 0) {
        let y = a.lerp(b, (i as f64 * tile.width - a.x) / (b.x - a.x)).y;
        let row = (y / tile.height).floor().max(0.0) as usize;
        right.entry((i as usize - 1, row)).or_default().push(y);
    }
    for i in between(a.y, b.y, tile.height).filter(|i| *i > 0) {
        let x = a.lerp(b, (i as f64 * tile.height - a.y) / (b.y - a.y)).x;
        let column = (x / tile.width).floor().max(0.0) as usize;
        below.entry((column, i as usize - 1)).or_default().push(x);
    }
}

/// Places with those left out that lie close to others, and not too many of them.
fn spread(places: &[f64]) -> Vec<f64> {
    let mut all = places.to_vec();
    all.sort_by(f64::total_cmp);
    let mut out: Vec<f64> = Vec::new();
    for place in all {
        if out.last().is_none_or(|last| place - last >= NEAR) {
            out.push(place);
        }
    }
    let every = out.len().div_ceil(MOST_CROSSINGS).max(1);
    out.into_iter().step_by(every).collect()
}

/// A thing moved along.
pub(super) fn moved(item: Item, by: Vec2) -> Item {
    let affine = Affine::translate(by);
    match item {
        Item::Stroke { path, pen } => Item::Stroke { path: affine * path, pen },
        Item::Fill { path, ink } => Item::Fill { path: affine * path, ink },
        Item::Text(text) => Item::Text(Text { at: text.at + by, ..text }),
        Item::Photo { photo, rect } => Item::Photo { photo, rect: rect + by },
        Item::Clip { rect, items } => {
            Item::Clip { rect: rect + by, items: items.into_iter().map(|i| moved(i, by)).collect() }
        }
        Item::Shared { what, at } => Item::Shared { what, at: at + by },
        Item::Group { layer, items } => Item::Group { layer, items: items.into_iter().map(|i| moved(i, by)).collect() },
    }
}
