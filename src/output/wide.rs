//! One wide page in true size with all pieces on it, for a wide printer.
//!
//! Pieces lie in rows, highest first, beside each other and never over each other. Cut lines, tiled pages and the
//! choice of what is published are for others.

use kurbo::{Affine, BezPath, PathEl, Point, Rect, Shape, Size, Vec2};
use thiserror::Error;

use super::dashes::dashes;
use super::drawing::{Align, Ink, Item, Pen, Picture, Text};
use super::font;
use super::label::Shapes;
use super::pdf::{MAX_SIDE, PdfError};
use super::title_block::{self, CutLines, Words};

/// Free border of the page, mm.
pub const MARGIN: f64 = 15.0;
/// Least distance between pieces, and from the marks, mm.
pub const GAP: f64 = 10.0;
/// Width of outlines, mm.
pub(super) const OUTLINE_PEN: f64 = 0.35;
/// Width of inner lines, mm.
const INNER_PEN: f64 = 0.25;
/// Width of stitch lines inside cut lines, mm, and their dashes: shorter than those of any size.
const STITCH_PEN: f64 = 0.18;
const STITCH_DASHES: [f64; 2] = [1.2, 1.2];
/// Size of small words at lines and marks, mm.
const WORDS_SIZE: f64 = 3.2;
/// A label with all its words is taken while it is at least this large, mm.
const LABEL_WITH_WORDS: f64 = 4.0;
/// The grey of pieces that are only to be seen.
pub(super) const FADED: Ink = Ink::grey(160);
/// Em of a label where there is room, mm.
const LABEL_SIZE: f64 = 9.0;
/// How much more room than that is looked for.
const LABEL_ROOM: f64 = 1.5;
/// Below this size of the em a better place is looked for than the proposed one, and inner lines may be crossed, mm.
const LABEL_SMALL: f64 = 2.5;
/// From line to line of a label, in sizes.
const LABEL_LEADING: f64 = 1.3;

/// A piece in one size, to be put on a sheet.
#[derive(Clone, Debug, PartialEq)]
pub struct SheetPiece {
    /// Its name.
    pub name: String,
    /// The size; empty where there are no sizes.
    pub size: String,
    /// The line that is cut, one closed ring in the piece's own frame, mm: the stitch line where nothing is told of allowances.
    pub outline: BezPath,
    /// Its edges one by one, in the order of the outline: same frame.
    pub edges: Vec<BezPath>,
    /// Inner lines, dart legs, notches, marks: same frame.
    pub lines: Vec<BezPath>,
    /// The stitch line, where the outline is the cut line: same frame.
    pub stitch: Option<BezPath>,
    /// Words under the name where there is room: letter, how often it is cut from what.
    pub notes: Vec<String>,
    /// Small words at their places: the middle of their baseline, the direction of reading in radians.
    pub words: Vec<(Point, f64, String)>,
    /// From its frame to that in which its sizes lie over each other.
    pub stack: Vec2,
    /// Only to be seen, not true: drawn in grey, and the sheet says so.
    pub faded: bool,
    /// Where the label is wanted; used if it is inside the outline with room enough.
    pub label_at: Option<Point>,
}

/// How a wide sheet is made.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WideSettings {
    /// The page is never wider than this, mm; it is narrower where less is needed.
    pub width: f64,
}

impl Default for WideSettings {
    fn default() -> Self {
        Self { width: 1500.0 }
    }
}

/// Why a sheet cannot be made.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum SheetError {
    /// Nothing to draw.
    #[error("there are no pieces to put on the sheet; draw a piece, or choose other pieces or sizes")]
    NoPieces,
    /// A width that cannot be had.
    #[error("a page {width} mm wide cannot be made; ask for {least} to {most} mm")]
    WidthBad {
        /// mm.
        width: f64,
        /// mm.
        least: f64,
        /// mm.
        most: f64,
    },
    /// A margin that leaves too little of a page.
    #[error("a margin of {margin} mm leaves too little of the page; ask for 0 to {most} mm")]
    Margin {
        /// mm.
        margin: f64,
        /// mm.
        most: f64,
    },
    /// An outline without an inside, or with coordinates that are no numbers.
    #[error("piece {piece}{} has no outline that can be drawn; look for its findings first", of_size(size))]
    PieceEmpty {
        /// Its name.
        piece: String,
        /// Its size.
        size: String,
    },
    /// A piece wider than the page.
    #[error(
        "piece {piece}{} is {needed:.0} mm wide, but the page leaves {room:.0} mm; ask for a page at least {:.0} mm wide{}",
        of_size(size), (needed + 2.0 * MARGIN).ceil(), beyond(needed + 2.0 * MARGIN)
    )]
    PieceTooWide {
        /// Its name.
        piece: String,
        /// Its size.
        size: String,
        /// Its width, mm.
        needed: f64,
        /// What is left between the margins, mm.
        room: f64,
    },
    /// More rows than a page can hold.
    #[error(
        "the pieces need a page {height:.0} mm long, {:.0} mm more than the {MAX_SIDE} mm that a PDF page can have; ask for a wider page than {width:.0} mm, or for fewer sizes or pieces",
        (height - MAX_SIDE).ceil()
    )]
    TooLong {
        /// What would be needed, mm.
        height: f64,
        /// The width that was allowed, mm.
        width: f64,
    },
    /// The file could not be made.
    #[error(transparent)]
    Pdf(#[from] PdfError),
}

fn of_size(size: &str) -> String {
    if size.is_empty() { String::new() } else { format!(" in size {size}") }
}

fn beyond(width: f64) -> String {
    if width > MAX_SIDE {
        format!(" (a PDF page can be {MAX_SIDE} mm at most: this piece needs several pages)")
    } else {
        String::new()
    }
}

/// The page with all pieces. Its size is in whole millimetres.
pub fn wide_sheet(title: &str, pieces: &[SheetPiece], settings: WideSettings) -> Result<Picture, SheetError> {
    let least = title_block::WIDTH + 2.0 * MARGIN;
    if !(settings.width >= least && settings.width <= MAX_SIDE) {
        return Err(SheetError::WidthBad { width: settings.width, least, most: MAX_SIDE });
    }
    if pieces.is_empty() {
        return Err(SheetError::NoPieces);
    }
    let sizes = sizes_and_pens(pieces);
    let named: Vec<_> = sizes.iter().filter(|(size, _)| !size.is_empty()).cloned().collect();
    let cut = CutLines::of(pieces.iter().map(|p| p.stitch.is_some()));
    let words = Words { title, sizes: &named, faded: pieces.iter().any(|p| p.faded), cut };
    let block = title_block::frame(Point::new(MARGIN, MARGIN), title_block::height(&words));

    let boxes = pieces.iter().map(extent).collect::<Result<Vec<_>, _>>()?;
    let corners = arranged(pieces, &boxes, block, settings.width)?;
    let placed = || boxes.iter().zip(&corners).map(|(b, c)| Rect::from_origin_size(*c, b.size()));
    let all = placed().fold(block, |all, b| all.union(b));
    // A piece may end on the thousandth; the margin may then be smaller by as much, never by a millimetre more.
    let whole = |far: f64| (far + MARGIN - crate::base::tolerance::EQUAL).ceil();
    let (width, height) = (whole(all.x1), whole(all.y1));
    if height > MAX_SIDE {
        return Err(SheetError::TooLong { height, width: settings.width });
    }

    let (mut items, _) = title_block::draw(&words, block.origin(), (width, height));
    for (size, pen) in &sizes {
        let layer = (sizes.len() > 1 && !size.is_empty()).then(|| format!("size {size}"));
        let mut drawn = Vec::new();
        for ((piece, from), to) in pieces.iter().zip(&boxes).zip(&corners).filter(|((p, _), _)| p.size == *size) {
            draw_piece(&mut drawn, piece, *to - from.origin(), pen);
        }
        items.push(Item::Group { layer, items: drawn });
    }
    Ok(Picture { width, height, items })
}

/// The sizes in order of appearance, each with the pen of its outlines.
pub(super) fn sizes_and_pens(pieces: &[SheetPiece]) -> Vec<(String, Pen)> {
    let mut sizes: Vec<(String, Pen)> = Vec::new();
    for piece in pieces {
        if !sizes.iter().any(|(size, _)| *size == piece.size) {
            let pen = Pen { dashes: dashes(sizes.len()), ..Pen::solid(OUTLINE_PEN) };
            sizes.push((piece.size.clone(), pen));
        }
    }
    sizes
}

/// The box around everything that is drawn of a piece, in its own frame.
pub(super) fn extent(piece: &SheetPiece) -> Result<Rect, SheetError> {
    let fault = || SheetError::PieceEmpty { piece: piece.name.clone(), size: piece.size.clone() };
    let paths = || std::iter::once(&piece.outline).chain(&piece.lines);
    if !paths().all(BezPath::is_finite) || piece.outline.segments().next().is_none() {
        return Err(fault());
    }
    let outline = piece.outline.bounding_box();
    if !(outline.width() > 0.0 && outline.height() > 0.0) {
        return Err(fault());
    }
    let lines = piece.lines.iter().filter(|l| l.segments().next().is_some());
    Ok(lines.fold(outline, |all, line| all.union(line.bounding_box())))
}

/// A row of pieces.
struct Shelf {
    top: f64,
    height: f64,
    /// Where its next piece starts.
    next: f64,
}

/// Where the top left corner of each piece's box lies on the page.
///
/// Highest first, each into the first row with room. The block at the top left takes part as the first thing of the
/// first row.
fn arranged(pieces: &[SheetPiece], boxes: &[Rect], block: Rect, width: f64) -> Result<Vec<Point>, SheetError> {
    let mut order: Vec<usize> = (0..boxes.len()).collect();
    order.sort_by(|a, b| boxes[*b].height().total_cmp(&boxes[*a].height()));
    let right = width - MARGIN;
    let mut shelves = vec![Shelf { top: block.y0, height: block.height(), next: block.x1 + GAP }];
    let mut corners = vec![Point::ZERO; boxes.len()];
    for i in order {
        let size = boxes[i].size();
        if size.width > right - MARGIN {
            let (piece, size_name) = (pieces[i].name.clone(), pieces[i].size.clone());
            return Err(SheetError::PieceTooWide { piece, size: size_name, needed: size.width, room: right - MARGIN });
        }
        // While it is the last, the first row may grow beyond the block; later rows have the height of their first piece.
        let grows = shelves.len() == 1;
        let fits = |s: &Shelf| s.next + size.width <= right && (size.height <= s.height || grows);
        let found = shelves.iter().position(fits);
        let shelf = match found {
            Some(shelf) => &mut shelves[shelf],
            None => {
                let top = shelves.last().map_or(block.y1, |s| s.top + s.height) + GAP;
                shelves.push(Shelf { top, height: size.height, next: MARGIN });
                let last = shelves.len() - 1;
                &mut shelves[last]
            }
        };
        shelf.height = shelf.height.max(size.height);
        corners[i] = Point::new(shelf.next, shelf.top);
        shelf.next += size.width + GAP;
    }
    Ok(corners)
}

fn draw_piece(items: &mut Vec<Item>, piece: &SheetPiece, shift: Vec2, pen: &Pen) {
    let ink = if piece.faded { FADED } else { Ink::BLACK };
    items.extend(draw_label(piece, shift, &[]));
    draw_lines(items, piece, shift, pen, ink);
}

/// The label of a piece: name and size. It keeps off inner lines and off `others` too, where it can.
pub(super) fn draw_label(piece: &SheetPiece, shift: Vec2, others: &[BezPath]) -> Vec<Item> {
    let ink = if piece.faded { FADED } else { Ink::BLACK };
    let shift = Affine::translate(shift);
    let drawn = piece.lines.iter().chain(&piece.stitch);
    let lines: Vec<BezPath> = drawn.map(|l| shift * l.clone()).chain(others.iter().cloned()).collect();
    let shapes = Shapes::new(&closed(shift * piece.outline.clone()), &lines);
    let mut items = label(piece, &shapes, piece.label_at.map(|p| shift * p), ink);
    items.extend(piece.words.iter().map(|(at, angle, text)| {
        let (text, at, angle) = (text.clone(), shift * *at, *angle);
        Item::Text(Text { text, at, size: WORDS_SIZE, angle, align: Align::Middle, ink })
    }));
    items
}

fn closed(mut outline: BezPath) -> BezPath {
    if !matches!(outline.elements().last(), Some(PathEl::ClosePath) | None) {
        outline.close_path();
    }
    outline
}

/// The lines of a piece.
pub(super) fn draw_lines(items: &mut Vec<Item>, piece: &SheetPiece, shift: Vec2, pen: &Pen, ink: Ink) {
    let shift = Affine::translate(shift);
    let outline = closed(shift * piece.outline.clone());
    for path in piece.lines.iter().map(|l| shift * l.clone()) {
        items.push(Item::Stroke { path, pen: Pen { ink, ..Pen::solid(INNER_PEN) } });
    }
    if let Some(stitch) = &piece.stitch {
        let path = closed(shift * stitch.clone());
        items.push(Item::Stroke { path, pen: Pen { ink, dashes: STITCH_DASHES.to_vec(), ..Pen::solid(STITCH_PEN) } });
    }
    items.push(Item::Stroke { path: outline, pen: Pen { ink, ..pen.clone() } });
}

/// Name and size inside the outline: one line or two, level or upright, whichever is largest.
fn label(piece: &SheetPiece, shapes: &Shapes, wanted: Option<Point>, ink: Ink) -> Vec<Item> {
    let size = if piece.size.is_empty() { String::new() } else { format!("size {}", piece.size) };
    let two: Vec<String> = [piece.name.clone(), size].into_iter().filter(|l| !l.is_empty()).collect();
    let mut ways = vec![two.clone()];
    if two.len() > 1 {
        ways.push(vec![two.join(", ")]);
    }
    if !piece.notes.is_empty() {
        let all: Vec<String> = two.iter().chain(&piece.notes).cloned().collect();
        let fitted = [false, true].map(|upright| Label::fitted(&all, upright, shapes, wanted, true));
        let larger = fitted.into_iter().flatten().reduce(|a, b| if b.size > 1.1 * a.size { b } else { a });
        if let Some(label) = larger.filter(|l| l.size >= LABEL_WITH_WORDS) {
            return label.items(ink);
        }
    }
    let mut best: Option<Label> = None;
    // Off the inner lines if it can be read there, else over them.
    for clear in [true, false] {
        for (lines, upright) in ways.iter().flat_map(|w| [(w, false), (w, true)]) {
            if best.as_ref().is_some_and(|b| b.size >= LABEL_SIZE) {
                break;
            }
            let found = Label::fitted(lines, upright, shapes, wanted, clear);
            // A later way must be better by a tenth: level text in two lines reads best.
            if let Some(found) = found.filter(|f| best.as_ref().is_none_or(|b| f.size > 1.1 * b.size)) {
                best = Some(found);
            }
        }
        if best.as_ref().is_some_and(|b| b.size >= LABEL_SMALL) {
            break;
        }
    }
    best.map(|b| b.items(ink)).unwrap_or_default()
}

/// A label with its place.
struct Label {
    lines: Vec<String>,
    upright: bool,
    centre: Point,
    size: f64,
}

impl Label {
    fn fitted(lines: &[String], upright: bool, shapes: &Shapes, wanted: Option<Point>, clear: bool) -> Option<Self> {
        // The box of the label at size 1, with half a letter around it.
        let width = lines.iter().map(|l| font::text_width(l, 1.0)).fold(0.0, f64::max) + 1.0;
        let height = LABEL_LEADING * lines.len() as f64 + 0.5;
        let room = if upright { Size::new(height, width) } else { Size::new(width, height) };
        let at_wanted =
            wanted.filter(|p| shapes.holds(*p)).map(|p| (p, shapes.scale_at(p, room, clear, (0.0, LABEL_SIZE))));
        let (centre, scale) = match at_wanted.filter(|(_, scale)| *scale >= LABEL_SMALL) {
            Some(place) => place,
            None => shapes.room(room, LABEL_ROOM * LABEL_SIZE, clear).map(|r| (r.centre, r.scale))?,
        };
        Some(Self { lines: lines.to_vec(), upright, centre, size: scale.min(LABEL_SIZE) })
    }

    fn items(self, ink: Ink) -> Vec<Item> {
        let step = LABEL_LEADING * self.size;
        // The middle of the first line's capitals to the middle of the last line's is centred.
        let first = font::cap_height(self.size) / 2.0 - step * (self.lines.len() as f64 - 1.0) / 2.0;
        let item = |(i, line): (usize, String)| {
            let down = first + step * i as f64;
            let aside = if self.upright { Vec2::new(down, 0.0) } else { Vec2::new(0.0, down) };
            let angle = if self.upright { -std::f64::consts::FRAC_PI_2 } else { 0.0 };
            let at = self.centre + aside;
            Item::Text(Text { text: line, at, size: self.size, angle, align: Align::Middle, ink })
        };
        self.lines.into_iter().enumerate().map(item).collect()
    }
}
