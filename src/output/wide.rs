//! One wide page in true size with all pieces on it, for a wide printer.
//!
//! Pieces lie in rows, highest first, beside each other and never over each other. Cut lines, tiled pages and the
//! choice of what is published are for others.

use crate::texts::{own_number, say, t};
use kurbo::{Affine, BezPath, PathEl, Point, Rect, Shape, Size, Vec2};
use thiserror::Error;

use super::dashes::{dashes, inner_dashes};
use super::drawing::{Ink, Item, Pen, Picture};
use super::lettering::{Label, Letters, label, words_boxes, words_items};
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
/// The grey of pieces that are only to be seen.
pub(super) const FADED: Ink = Ink::grey(160);

/// A piece in one size, to be put on a sheet.
#[derive(Clone, Debug, PartialEq)]
pub struct SheetPiece {
    /// Its name.
    pub name: String,
    /// Its letter; may be empty.
    pub letter: String,
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
    /// Words under the name: how often it is cut from what, grain, nap.
    pub notes: Vec<String>,
    /// Words under those: of which garment it is, edition and date.
    pub about: Vec<String>,
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
    #[error("{}", say!("output-no-pieces"))]
    NoPieces,
    /// A width that cannot be had.
    #[error("{}", say!(
        "output-width", width = own_number(width), least = own_number(least), most = own_number(most)
    ))]
    WidthBad {
        /// mm.
        width: f64,
        /// mm.
        least: f64,
        /// mm.
        most: f64,
    },
    /// A margin that leaves too little of a page.
    #[error("{}", say!("output-margin", margin = own_number(margin), most = own_number(most)))]
    Margin {
        /// mm.
        margin: f64,
        /// mm.
        most: f64,
    },
    /// An outline without an inside, or with coordinates that are no numbers.
    #[error("{}", say!("output-undrawn", piece = own_piece(piece, size)))]
    PieceEmpty {
        /// Its name.
        piece: String,
        /// Its size.
        size: String,
    },
    /// A piece wider than the page.
    #[error("{}", too_wide(piece, size, *needed, *room))]
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
    #[error("{}", say!(
        "output-too-long", height = format!("{height:.0}"), over = format!("{:.0}", (height - MAX_SIDE).ceil()),
        most = own_number(MAX_SIDE), width = format!("{width:.0}")
    ))]
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

/// A piece in its size, for whoever is at the program.
pub(super) fn own_piece(piece: &str, size: &str) -> String {
    if size.is_empty() { say!("output-piece", piece) } else { say!("output-piece-in", piece, size) }
}

fn too_wide(piece: &str, size: &str, needed: f64, room: f64) -> String {
    let page = (needed + 2.0 * MARGIN).ceil();
    let [least, needed, room] = [page, needed, room].map(|mm| format!("{mm:.0}"));
    let piece = own_piece(piece, size);
    if page > MAX_SIDE {
        say!("output-piece-beyond", piece, needed, room, least, most = own_number(MAX_SIDE))
    } else {
        say!("output-piece-wide", piece, needed, room, least)
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

    let mut boxes = pieces.iter().map(extent).collect::<Result<Vec<_>, _>>()?;
    let most = Size::new(settings.width - 2.0 * MARGIN, f64::INFINITY);
    let own = |(p, room): (&SheetPiece, &Rect)| label(&[p], *room, most, Letters::of_paper());
    let labels: Vec<Option<Label>> = pieces.iter().zip(&boxes).map(own).collect();
    for (room, label) in boxes.iter_mut().zip(&labels) {
        *room = label.iter().fold(*room, |room, label| room.union(label.room()));
    }
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
        let layer = (sizes.len() > 1 && !size.is_empty()).then(|| t!("of-size", size));
        let mut drawn = Vec::new();
        let placed = pieces.iter().zip(&labels).zip(boxes.iter().zip(&corners));
        for ((piece, label), (from, to)) in placed.filter(|((p, _), _)| p.size == *size) {
            draw_piece(&mut drawn, piece, label.as_ref(), *to - from.origin(), pen);
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
    let words = words_boxes(&[piece], Letters::of_paper());
    Ok(lines.chain(&words).fold(outline, |all, line| all.union(line.bounding_box())))
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

fn draw_piece(items: &mut Vec<Item>, piece: &SheetPiece, label: Option<&Label>, shift: Vec2, pen: &Pen) {
    let ink = if piece.faded { FADED } else { Ink::BLACK };
    items.extend(label.into_iter().flat_map(|l| l.items(shift, ink)));
    items.extend(words_items(&[piece], shift, ink, Letters::of_paper()));
    draw_lines(items, piece, shift, pen, ink);
}

/// A path that ends where it starts.
pub(super) fn closed(mut outline: BezPath) -> BezPath {
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
        let dashes = inner_dashes(&path, &pen.dashes).to_vec();
        items.push(Item::Stroke { path, pen: Pen { ink, dashes, ..Pen::solid(INNER_PEN) } });
    }
    if let Some(stitch) = &piece.stitch {
        let path = closed(shift * stitch.clone());
        items.push(Item::Stroke { path, pen: Pen { ink, dashes: STITCH_DASHES.to_vec(), ..Pen::solid(STITCH_PEN) } });
    }
    items.push(Item::Stroke { path: outline, pen: Pen { ink, ..pen.clone() } });
}
