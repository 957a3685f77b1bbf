//! The first page of a home print: what to print and how, the marks, and a map of the pages.

use crate::texts::{self, decimal, t};
use kurbo::{Affine, BezPath, PathEl, Point, Rect, Shape, Size, Vec2};

use super::drawing::{Align, Ink, Item, Pen, Picture, Text};
use super::font;
use super::home::{HomeSettings, PageInfo};
use super::layout::Layout;
use super::nest::Nest;
use super::paper::Paper;
use super::title_block::{self, CutLines, Words};

/// The least part of a page that the first page needs, mm.
pub const LEAST_WIDTH: f64 = 150.0;
/// Its least height, mm.
pub const LEAST_HEIGHT: f64 = 220.0;
const TEXT: f64 = 3.2;
const LEADING: f64 = 1.35;
const HEADING: f64 = 4.4;
/// Heights of the map: at most, and at least.
const MAP: (f64, f64) = (78.0, 24.0);

/// What the page speaks of.
pub struct Guide<'a> {
    pub settings: &'a HomeSettings,
    pub tile: Size,
    pub parts: &'a [PageInfo],
    pub layout: &'a Layout,
    pub nests: &'a [Nest],
    pub sizes: &'a [(String, Pen)],
}

/// The page.
pub fn page(guide: &Guide<'_>) -> Picture {
    let page = guide.settings.paper.page();
    let margin = guide.settings.margin;
    let room = Rect::from_origin_size(Point::new(margin, margin), guide.tile);
    let named: Vec<_> = guide.sizes.iter().filter(|(size, _)| !size.is_empty()).cloned().collect();
    let title = match guide.settings.purpose.as_str() {
        "" => guide.settings.title.clone(),
        purpose => format!("{} – {purpose}", guide.settings.title),
    };
    let faded = guide.nests.iter().any(|n| n.pieces.iter().any(|p| p.faded));
    let cut = CutLines::of(guide.nests.iter().flat_map(|n| &n.pieces).map(|p| p.stitch.is_some()));
    let words = Words { title: &title, sizes: &named, faded, cut };
    let (items, height) = title_block::draw(&words, room.origin(), (page.width, page.height));
    let mut column = Column { items, left: room.x0 + 5.0, width: room.width() - 10.0, down: room.y0 + height + 3.0 };
    column.heading(t!("guide-how"));
    for words in how(guide) {
        column.write(&words);
    }
    column.heading(t!("guide-which"));
    for words in which(guide) {
        column.write(&words);
    }
    let left = room.y1 - column.down - 3.0;
    if left >= MAP.1 {
        let at = Rect::new(room.x0 + 5.0, column.down + 1.0, room.x1 - 5.0, column.down + left.min(MAP.0));
        map(&mut column.items, guide, at);
    }
    Picture { width: page.width, height: page.height, items: column.items }
}

fn how(guide: &Guide<'_>) -> Vec<String> {
    let settings = guide.settings;
    let mut out = vec![t!("guide-print", paper = settings.paper.words()), t!("guide-stretched")];
    let (a4, letter) = (Paper::A4.page(), Paper::Letter.page());
    let scale = a4.width / letter.width;
    if let Some((name, mm)) = &settings.body {
        let shown = |mm: f64| texts::length(mm, settings.unit);
        let mark = decimal(&format!("{:.1}", 100.0 * scale));
        out.push(t!("guide-why", mark, measure = name, meant = shown(*mm), comes = shown(mm * scale)));
    }
    out.push(t!("guide-join"));
    out
}

fn which(guide: &Guide<'_>) -> Vec<String> {
    let pages = guide.parts.len();
    let mut out = vec![t!("guide-pages", pages, columns = guide.layout.columns, rows = guide.layout.rows)];
    let sizes: Vec<&str> = guide.sizes.iter().map(|(s, _)| s.as_str()).filter(|s| !s.is_empty()).collect();
    if sizes.len() > 1 {
        for size in sizes {
            let own: Vec<&str> =
                guide.parts.iter().filter(|p| p.sizes.iter().any(|s| s == size)).map(|p| p.name.as_str()).collect();
            let all = if own.len() == pages { t!("guide-all-pages") } else { own.join(", ") };
            out.push(t!("guide-size", size, pages = all));
        }
    }
    out
}

/// The pages in small, with the pieces on them.
fn map(items: &mut Vec<Item>, guide: &Guide<'_>, room: Rect) {
    let whole = Size::new(
        guide.layout.tile.width * guide.layout.columns as f64,
        guide.layout.tile.height * guide.layout.rows as f64,
    );
    let scale = (room.width() / whole.width).min(room.height() / whole.height);
    let small = Affine::translate(room.origin().to_vec2()) * Affine::scale(scale);
    for part in guide.parts {
        let own = guide.layout.part(part.column, part.row);
        let rect = small.transform_rect_bbox(own);
        items.push(Item::Stroke { path: rect.to_path(0.1), pen: Pen { ink: Ink::grey(150), ..Pen::solid(0.15) } });
        let size = (rect.height() * 0.3).min(6.0);
        let at = Point::new(rect.x0 + 1.0, rect.y0 + 0.6 + font::cap_height(size));
        items.push(Item::Text(Text { ink: Ink::grey(140), ..Text::new(&part.name, at, size) }));
    }
    for (nest, at) in guide.nests.iter().zip(&guide.layout.corners) {
        // The largest size stands for all.
        let Some(piece) = nest.pieces.iter().max_by(|a, b| area(&a.outline).total_cmp(&area(&b.outline))) else {
            continue;
        };
        let path = small * (Affine::translate(at.to_vec2()) * piece.outline.clone());
        let middle = path.bounding_box().center();
        items.push(Item::Stroke { path, pen: Pen::solid(0.2) });
        let mut text = Text::new(&nest.name, middle + Vec2::new(0.0, 0.8), 2.2);
        text.align = Align::Middle;
        items.push(Item::Text(text));
    }
}

fn area(path: &BezPath) -> f64 {
    path.area().abs()
}

/// Words written downwards.
struct Column {
    items: Vec<Item>,
    left: f64,
    width: f64,
    down: f64,
}

impl Column {
    fn heading(&mut self, words: String) {
        let line = BezPath::from_iter([
            PathEl::MoveTo(Point::new(self.left, self.down)),
            PathEl::LineTo(Point::new(self.left + self.width, self.down)),
        ]);
        self.items.push(Item::Stroke { path: line, pen: Pen { ink: Ink::grey(150), ..Pen::solid(0.15) } });
        self.down += 1.6;
        self.line(words, HEADING);
    }

    fn write(&mut self, words: &str) {
        for line in font::wrapped(words, TEXT, self.width) {
            self.line(line, TEXT);
        }
        self.down += 0.8;
    }

    fn line(&mut self, words: String, size: f64) {
        let at = Point::new(self.left, self.down + font::cap_height(size));
        self.items.push(Item::Text(Text::new(words, at, size)));
        self.down += size * LEADING;
    }
}
