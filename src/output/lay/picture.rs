//! A lay as a picture: the cloth with its selvedges and folds, every piece with its letter and thread, and what stands beside it in words.

use kurbo::{BezPath, Point, Rect, Size, Vec2};

use super::job::{LayShape, LayStretch};
use super::length::{yards, yards_exact};
use super::packing::Laid;
use super::plan::Lay;
use crate::base::{DisplayUnit, shown};
use crate::document::ClothLaid;
use crate::output::drawing::{Align, Ink, Item, Pen, Picture, Text};
use crate::output::font;
use crate::output::label::Shapes;

/// A page of its own: A4, lying, mm (ISO 216).
const PAGE: Size = Size::new(297.0, 210.0);
const MARGIN: f64 = 12.0;
const WORDS: f64 = 3.0;
const LINE: f64 = 4.4;
const TITLE: f64 = 5.0;
/// Room above and below a stretch for its words.
const ROOM: f64 = 5.5;
const LETTER: f64 = 6.0;
const LEAST_LETTER: f64 = 1.6;
const CLOTH_INK: Ink = Ink::grey(120);
const FACE_DOWN: Ink = Ink::grey(215);

/// Letters of the pieces of a draft by their places, for a picture.
pub type Letters<'a> = &'a [String];

/// What stands for a piece in a picture: its letter, or its name where it has none.
fn sign(about: &LayShape, letters: Letters<'_>) -> String {
    let letter = letters.get(about.frame).filter(|l| !about.strip && !l.is_empty()).cloned();
    letter.unwrap_or_else(|| about.name.replace('_', " "))
}

/// What the letters mean, in the order of the draft: `A front, B back`.
pub fn legend(lay: &Lay, letters: Letters<'_>) -> String {
    let mut all: Vec<(bool, usize, String)> = Vec::new();
    for about in lay.job.stretches.iter().flat_map(|s| &s.shapes) {
        let name = about.name.replace('_', " ");
        let sign = sign(about, letters);
        let words = if sign == name { name } else { format!("{sign} {name}") };
        let one = (about.strip, about.frame, words);
        if !all.contains(&one) {
            all.push(one);
        }
    }
    all.sort();
    all.into_iter().map(|a| a.2).collect::<Vec<_>>().join(", ")
}

/// How a stretch of cloth lies, in words.
pub fn laid_words(laid: ClothLaid) -> &'static str {
    match laid {
        ClothLaid::Open => "single layer, right side of the cloth up",
        ClothLaid::Folded => "folded lengthwise, right sides together",
        ClothLaid::FoldedToMiddle => "both selvedges folded to the middle, right sides together",
        ClothLaid::FoldedPart => {
            "folded in part, right sides together there; the rest in a single layer, right side up"
        }
    }
}

/// Whether anything lies face down on a single layer, so that a reader must be told what grey means.
fn has_face_down(lay: &Lay) -> bool {
    lay.job.stretches.iter().zip(&lay.layouts).any(|(s, l)| l.laid.iter().any(|p| is_face_down(lay, s, p)))
}

fn is_face_down(lay: &Lay, stretch: &LayStretch, piece: &Laid) -> bool {
    let s = lay.job.stretches.iter().position(|own| std::ptr::eq(own, stretch)).unwrap_or(0);
    let pose = lay.pose(s, piece);
    let about = stretch.shapes.get(piece.shape);
    pose.zip(about).is_some_and(|(pose, about)| pose.mirrored && about.gives == 1 && !about.on_fold)
}

/// The lay within this room, mm, drawn to scale; and what one of its millimetres stands for.
pub fn lay_figure(lay: &Lay, letters: Letters<'_>, room: Size) -> (Picture, f64) {
    let (top, bottom) = (1.0, 1.0);
    let count = lay.job.stretches.len().max(1) as f64;
    let longest = lay.layouts.iter().map(|l| l.length).fold(1.0, f64::max);
    let wide: f64 = lay.job.stretches.iter().map(|s| height(lay, s)).sum::<f64>().max(1.0);
    let scale = ((room.width - 2.0) / longest).min((room.height - top - bottom - count * 2.0 * ROOM) / wide).max(1e-4);
    let mut items = Vec::new();
    let mut down = top;
    for s in 0..lay.job.stretches.len() {
        down += ROOM;
        stretch(&mut items, lay, s, letters, (Point::new(1.0, down), scale));
        down += height(lay, &lay.job.stretches[s]) * scale + ROOM;
    }
    (Picture { width: room.width, height: down + bottom, items }, 1.0 / scale)
}

/// How high a stretch lies on the table, selvedges and all, mm.
fn height(lay: &Lay, stretch: &LayStretch) -> f64 {
    let (above, below) = selvedges(lay, stretch);
    stretch.job.width + above + below
}

/// How much selvedge there is above and below what is used, mm.
fn selvedges(lay: &Lay, stretch: &LayStretch) -> (f64, f64) {
    let edge = lay.job.on.cloth.selvedge;
    match stretch.laid {
        ClothLaid::Open => (edge, edge),
        ClothLaid::Folded | ClothLaid::FoldedPart => (0.0, edge),
        ClothLaid::FoldedToMiddle => (0.0, 0.0),
    }
}

fn stretch(items: &mut Vec<Item>, lay: &Lay, s: usize, letters: Letters<'_>, (corner, scale): (Point, f64)) {
    let own = &lay.job.stretches[s];
    let layout = &lay.layouts[s];
    let (above, below) = selvedges(lay, own);
    let (length, width) = (layout.length * scale, height(lay, own) * scale);
    let zero = corner + Vec2::new(0.0, above * scale);
    let line = |y: f64, pen: Pen| {
        let mut path = BezPath::new();
        path.move_to((corner.x, corner.y + y));
        path.line_to((corner.x + length, corner.y + y));
        Item::Stroke { path, pen }
    };
    let pen = |width: f64, dashes: &[f64]| Pen { ink: CLOTH_INK, dashes: dashes.to_vec(), ..Pen::solid(width) };
    for (i, piece) in layout.laid.iter().enumerate() {
        let to = |p: Point| zero + (p.to_vec2() * scale);
        let points: Vec<Point> = lay.polygon(s, piece).into_iter().map(to).collect();
        let mut path = BezPath::new();
        for (k, p) in points.iter().enumerate() {
            if k == 0 { path.move_to(*p) } else { path.line_to(*p) }
        }
        path.close_path();
        if is_face_down(lay, own, piece) {
            items.push(Item::Fill { path: path.clone(), ink: FACE_DOWN });
        }
        items.push(Item::Stroke { path: path.clone(), pen: Pen::solid(0.25) });
        let Some(about) = own.shapes.get(piece.shape) else { continue };
        lettered(
            items,
            &path,
            about,
            letters,
            lay.pose(s, piece).map_or(0.0, |p| p.turned),
            lay.job.on.sizes.len() > 1,
        );
        let _ = i;
    }
    // The ends of the cloth, its selvedges and folds.
    let frame = Rect::new(corner.x, corner.y, corner.x + length, corner.y + width);
    for x in [frame.x0, frame.x1] {
        let mut path = BezPath::new();
        path.move_to((x, frame.y0));
        path.line_to((x, frame.y1));
        items.push(Item::Stroke { path, pen: pen(0.2, &[1.2, 0.8]) });
    }
    let mut told: Vec<(f64, &str)> = Vec::new();
    match own.laid {
        ClothLaid::Open => {
            items.extend([line(0.0, pen(0.35, &[])), line(width, pen(0.35, &[]))]);
            told.extend([(0.0, "selvedge"), (width, "selvedge")]);
        }
        ClothLaid::Folded => {
            items.extend([line(0.0, pen(0.7, &[])), line(width, pen(0.35, &[]))]);
            told.extend([(0.0, "fold"), (width, "selvedges")]);
        }
        ClothLaid::FoldedToMiddle => {
            items.extend([line(0.0, pen(0.7, &[])), line(width, pen(0.7, &[]))]);
            items.push(line(width / 2.0, pen(0.25, &[2.0, 1.0])));
            told.extend([(0.0, "fold"), (width, "fold")]);
        }
        ClothLaid::FoldedPart => {
            items.extend([line(0.0, pen(0.7, &[])), line(width, pen(0.35, &[]))]);
            items.push(line(own.folded_part * scale, pen(0.25, &[2.0, 1.0])));
            told.extend([(0.0, "fold"), (width, "selvedge")]);
        }
    }
    if lay.job.on.cloth.selvedge > 0.0 {
        for (y, there) in [(above * scale, above > 0.0), (width - below * scale, below > 0.0)] {
            if there {
                items.push(line(y, pen(0.12, &[0.8, 0.8])));
            }
        }
    }
    let upper = format!("{}: {}", told[0].1, laid_words(own.laid));
    let arrow = if lay.job.on.cloth.nap { "; with nap: every arrow points the same way, to the right" } else { "" };
    items.push(Item::Text(Text::new(format!("{upper}{arrow}"), corner + Vec2::new(0.0, -1.4), WORDS * 0.85)));
    let both =
        format!("{} ({})", shown(layout.length, DisplayUnit::Cm), shown(layout.length, DisplayUnit::InchEighths));
    let words = format!("{}; this stretch is {both} long", told[1].1);
    items.push(Item::Text(Text::new(words, corner + Vec2::new(0.0, width + 3.6), WORDS * 0.85)));
}

/// The letter of a piece within its outline, and an arrow of its thread: its head shows how the piece is turned.
fn lettered(items: &mut Vec<Item>, path: &BezPath, about: &LayShape, letters: Letters<'_>, turned: f64, sizes: bool) {
    let mut words = sign(about, letters);
    if sizes && !about.size.is_empty() {
        words = format!("{words} {}", about.size);
    }
    let shapes = Shapes::new(path, &[]);
    let size = Size::new(font::text_width(&words, 1.0) + 0.4, 1.3);
    let Some(found) = shapes.room(size, LETTER, true).filter(|r| r.scale >= LEAST_LETTER) else { return };
    let em = found.scale.min(LETTER) * 0.8;
    let at = found.centre + Vec2::new(0.0, font::cap_height(em) / 2.0 - em * 0.12);
    items.push(Item::Text(Text { align: Align::Middle, ..Text::new(words, at, em) }));
    if about.strip {
        return;
    }
    let half = (size.width * em / 2.0).max(em * 0.6);
    let head = if turned.rem_euclid(360.0) == 180.0 { -1.0 } else { 1.0 };
    let tip = found.centre + Vec2::new(half * head, em * 0.55);
    let mut arrow = BezPath::new();
    arrow.move_to(found.centre + Vec2::new(-half * head, em * 0.55));
    arrow.line_to(tip);
    arrow.move_to(tip + Vec2::new(-0.25 * em * head, -0.18 * em));
    arrow.line_to(tip);
    arrow.line_to(tip + Vec2::new(-0.25 * em * head, 0.18 * em));
    items.push(Item::Stroke { path: arrow, pen: Pen::solid(0.15) });
}

/// What is told under a picture of a lay, in sentences.
pub fn lay_words(lay: &Lay, letters: Letters<'_>) -> Vec<String> {
    let need = lay.need();
    let cloth = &lay.job.on.cloth;
    let width = format!("{} ({})", shown(cloth.sold, DisplayUnit::Cm), shown(cloth.sold, DisplayUnit::InchEighths));
    let mut out = vec![format!(
        "{} {width} wide: {} ({}) needed; buy {} or {}.",
        cloth.name.replace('_', " "),
        shown(need.exact, DisplayUnit::Cm),
        yards_exact(need.exact),
        shown(need.buy, DisplayUnit::Cm),
        yards(need.buy_yards)
    )];
    out.push(format!("{}.", legend(lay, letters)));
    if has_face_down(lay) {
        out.push("Grey: face down, the printed side of the pattern towards the cloth.".to_owned());
    }
    if lay.job.stretches.iter().flat_map(|s| &s.shapes).any(|s| s.on_fold) {
        out.push("Pieces that touch the fold are drawn as halves and cut there whole.".to_owned());
    }
    if lay.job.stretches.iter().flat_map(|s| &s.shapes).any(|s| s.gives == 2) {
        out.push("Other pieces on folded cloth are cut twice at once, one the mirror image of the other.".to_owned());
    }
    out.extend(lay.reasons());
    out.extend(lay.job.notes.iter().cloned());
    out
}

/// A page with one lay: A4, lying.
pub fn lay_page(title: &str, lay: &Lay, letters: Letters<'_>) -> Picture {
    let wide = PAGE.width - 2.0 * MARGIN;
    let words: Vec<String> = lay_words(lay, letters).iter().flat_map(|w| font::wrapped(w, WORDS, wide)).collect();
    let words_high = LINE * (words.len() as f64 + 1.0);
    let room = Size::new(wide, (PAGE.height - 2.0 * MARGIN - TITLE * 2.0 - words_high).max(40.0));
    let (figure, scale) = lay_figure(lay, letters, room);
    let mut items = vec![Item::Text(Text::new(title, Point::new(MARGIN, MARGIN + TITLE), TITLE))];
    items.extend(figure.moved(Vec2::new(MARGIN, MARGIN + TITLE * 2.0)));
    let mut down = MARGIN + TITLE * 2.0 + figure.height + LINE;
    let to_scale = format!("Scale 1 : {}. One letter for each piece; arrows run along its thread.", scale.ceil());
    for line in std::iter::once(to_scale).chain(words) {
        items.push(Item::Text(Text::new(line, Point::new(MARGIN, down), WORDS)));
        down += LINE;
    }
    Picture { width: PAGE.width, height: PAGE.height, items }
}
