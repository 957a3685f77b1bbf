//! Pieces drawn small, all to one scale, with their letters and names.

use kurbo::{Affine, BezPath, Point, Shape, Size, Vec2};

use crate::output::drawing::{Align, Ink, Item, Pen, Picture, Text};
use crate::output::font;
use crate::output::label::Shapes;
use crate::output::wide::SheetPiece;

/// The width of a figure, mm: the column of a page.
const WIDTH: f64 = 174.0;
/// Higher it never is, mm: a page with room for words.
const MOST_HEIGHT: f64 = 205.0;
const GAP: f64 = 6.0;
/// Never larger than this share of true size.
const MOST_SCALE: f64 = 0.35;
const LETTER: f64 = 5.0;
const NAME: f64 = 2.8;
const NAME_ROOM: f64 = 4.4;
const OUTLINE: f64 = 0.35;
const INNER: f64 = 0.15;
const SOFT: Ink = Ink::grey(90);

/// A piece to be drawn.
#[derive(Clone, Debug, PartialEq)]
pub struct Drawn {
    /// The piece as it comes on a sheet.
    pub piece: SheetPiece,
    /// Its letter; may be empty.
    pub letter: String,
}

impl Drawn {
    /// Letter and name.
    pub fn words(&self) -> String {
        let name = self.piece.name.replace('_', " ");
        if self.letter.is_empty() { name } else { format!("{} {name}", self.letter) }
    }

    fn size(&self) -> Size {
        self.piece.outline.bounding_box().size()
    }
}

/// Some pieces beside each other, the highest so high at most, mm. None without pieces.
pub fn pieces_figure(pieces: &[Drawn], height: f64) -> Option<Picture> {
    let sound: Vec<&Drawn> = pieces.iter().filter(|d| d.size().width > 0.0 && d.size().height > 0.0).collect();
    let tallest = sound.iter().map(|d| d.size().height).fold(0.0, f64::max);
    let widest = sound.iter().map(|d| d.size().width).fold(0.0, f64::max);
    if sound.is_empty() || !tallest.is_finite() || !widest.is_finite() {
        return None;
    }
    let mut scale = (height / tallest).min(WIDTH / widest).min(MOST_SCALE);
    let mut placed = rows(&sound, scale);
    // Each turn makes it smaller by a tenth: twenty are enough for any number of pieces that a page can hold.
    for _ in 0..20 {
        if placed.1 <= MOST_HEIGHT {
            break;
        }
        scale *= 0.9;
        placed = rows(&sound, scale);
    }
    let (corners, height) = placed;
    let mut items = Vec::new();
    for (drawn, corner) in sound.iter().zip(corners) {
        draw(&mut items, drawn, corner, scale);
    }
    // Half a line beyond the pieces is seen too.
    let edge = Vec2::new(OUTLINE, OUTLINE);
    let picture = Picture { width: WIDTH + 2.0 * edge.x, height: height + 2.0 * edge.y, items: Vec::new() };
    let items = Picture { width: WIDTH, height, items }.moved(edge);
    Some(Picture { items, ..picture })
}

/// How wide a piece is with its name, mm.
fn room(drawn: &Drawn, scale: f64) -> f64 {
    (drawn.size().width * scale).max(font::text_width(&drawn.words(), NAME)).min(WIDTH)
}

/// Where the top left corner of each piece lies, and how high all are together.
fn rows(pieces: &[&Drawn], scale: f64) -> (Vec<Point>, f64) {
    let mut out: Vec<Point> = Vec::new();
    let (mut left, mut top, mut first) = (0.0, 0.0, 0);
    let high = |from: usize, to: usize| {
        pieces[from..to].iter().map(|d| d.size().height * scale).fold(0.0, f64::max) + NAME_ROOM
    };
    for (i, drawn) in pieces.iter().enumerate() {
        let width = room(drawn, scale);
        if left > 0.0 && left + width > WIDTH {
            top += high(first, i) + GAP;
            (left, first) = (0.0, i);
        }
        out.push(Point::new(left, top));
        left += width + GAP;
    }
    (out, top + high(first, pieces.len()))
}

fn draw(items: &mut Vec<Item>, drawn: &Drawn, corner: Point, scale: f64) {
    let piece = &drawn.piece;
    let bounds = piece.outline.bounding_box();
    let width = room(drawn, scale);
    let aside = Vec2::new((width - bounds.width() * scale) / 2.0, 0.0);
    let to = Affine::translate((corner + aside).to_vec2())
        * Affine::scale(scale)
        * Affine::translate(-bounds.origin().to_vec2());
    let ink = if piece.faded { Ink::grey(160) } else { Ink::BLACK };
    let outline = to * piece.outline.clone();
    let lines: Vec<BezPath> = piece.lines.iter().map(|l| to * l.clone()).collect();
    for path in &lines {
        items.push(Item::Stroke { path: path.clone(), pen: Pen { ink: SOFT, ..Pen::solid(INNER) } });
    }
    if let Some(stitch) = &piece.stitch {
        let pen = Pen { ink: SOFT, dashes: vec![0.6, 0.6], ..Pen::solid(INNER) };
        items.push(Item::Stroke { path: to * stitch.clone(), pen });
    }
    items.push(Item::Stroke { path: outline.clone(), pen: Pen { ink, ..Pen::solid(OUTLINE) } });
    if !drawn.letter.is_empty() {
        let size = Size::new(font::text_width(&drawn.letter, 1.0) + 0.5, 1.2);
        // A letter that has no room inside stands in the name alone.
        if let Some(found) = Shapes::new(&outline, &lines).room(size, LETTER, true).filter(|r| r.scale >= NAME) {
            let size = found.scale.min(LETTER);
            let at = found.centre + Vec2::new(0.0, font::cap_height(size) / 2.0);
            items.push(Item::Text(Text { align: Align::Middle, ink, ..Text::new(&*drawn.letter, at, size) }));
        }
    }
    let down = corner.y + bounds.height() * scale + NAME_ROOM - 1.0;
    let words = font::wrapped(&drawn.words(), NAME, width + GAP).into_iter().next().unwrap_or_default();
    let at = Point::new(corner.x + width / 2.0, down);
    items.push(Item::Text(Text { align: Align::Middle, ink, ..Text::new(words, at, NAME) }));
}
