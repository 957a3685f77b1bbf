//! Something written as pages: words broken into lines, tables over pages, a foot with the number of each page.
//!
//! Nothing is drawn outside the margins. A table that is too wide for the page comes in parts, each with the names of its lines.

use std::sync::Arc;

use kurbo::{BezPath, PathEl, Point, Rect};

use super::grid::{self, Grid};
use super::{Block, Table, Writing};
use crate::output::drawing::{Align, Ink, Item, Pen, Picture, Text};
use crate::output::font;
use crate::output::paper::Paper;
use crate::output::photo::Photo;
use crate::texts::t;

/// Free border of a page, mm: more than any printer needs, so that it can be bound.
const MARGIN: f64 = 16.0;
/// Room for the foot above the lower margin, mm.
const FOOT: f64 = 8.0;
/// Sizes of the em, mm: 10 point text, as books have it.
const TEXT: f64 = 3.5;
const SMALL: f64 = 2.8;
const TITLE: f64 = 8.0;
const HEADINGS: [f64; 2] = [5.6, 4.4];
const TABLE_TITLE: f64 = 3.9;
/// From line to line, in sizes of the em.
const LEADING: f64 = 1.45;
/// Under a paragraph, mm.
const AFTER: f64 = 2.2;
/// What must still fit on the page under a heading, mm.
const UNDER_HEADING: f64 = 14.0;
/// How far points of a list are set in, mm.
const INDENT: f64 = 7.0;
/// The room of a picture of points, across and down, mm.
const PHOTO: (f64, f64) = (120.0, 84.0);
/// Room around the words of a caution, mm.
const CAUTION_ROOM: f64 = 3.0;
/// The grey of lines between the lines of a table.
const RULE: Ink = Ink::grey(170);
const SOFT: Ink = Ink::grey(80);

/// Where a heading stands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HeadingPlace {
    /// The page, counted from 0.
    pub page: usize,
    /// How far down on it its words begin, mm.
    pub down: f64,
}

/// The pages of something written. At least one.
pub fn pages(writing: &Writing, paper: Paper) -> Vec<Picture> {
    pages_and_headings(writing, paper).0
}

/// The same, and where each heading stands, in their order.
pub fn pages_and_headings(writing: &Writing, paper: Paper) -> (Vec<Picture>, Vec<HeadingPlace>) {
    let page = paper.page();
    let room = Rect::new(MARGIN, MARGIN, page.width - MARGIN, page.height - MARGIN - FOOT);
    let mut flow = Flow { room, down: room.y0, pages: vec![Vec::new()], fresh: true, headings: Vec::new() };
    flow.words(&writing.title, TITLE, 0.0, Ink::BLACK);
    for line in &writing.about {
        flow.words(line, SMALL, 0.0, SOFT);
    }
    flow.down += 2.0 * AFTER;
    for (i, block) in writing.blocks.iter().enumerate() {
        flow.block(block, &writing.blocks[i + 1..]);
    }
    let many = flow.pages.len();
    let foot = page.height - MARGIN;
    let pages = flow.pages.into_iter().enumerate();
    let pages = pages
        .map(|(i, mut items)| {
            let line = segment(Point::new(room.x0, foot - FOOT / 2.0), Point::new(room.x1, foot - FOOT / 2.0));
            items.push(Item::Stroke { path: line, pen: Pen { ink: RULE, ..Pen::solid(0.2) } });
            let number = t!("page-of", page = i + 1, many);
            let left = room.width() - font::text_width(&number, SMALL) - 6.0;
            let about: Vec<&str> = std::iter::once(&writing.title).chain(&writing.about).map(String::as_str).collect();
            let name = font::wrapped(&about.join(" · "), SMALL, left).into_iter().next().unwrap_or_default();
            items.push(Item::Text(Text { ink: SOFT, ..Text::new(name, Point::new(room.x0, foot), SMALL) }));
            let at = Point::new(room.x1, foot);
            items.push(Item::Text(Text { align: Align::End, ink: SOFT, ..Text::new(number, at, SMALL) }));
            Picture { width: page.width, height: page.height, items }
        })
        .collect();
    (pages, flow.headings)
}

/// Where writing has come to.
struct Flow {
    /// The part of a page that is written on.
    room: Rect,
    /// How far down the page it has come.
    down: f64,
    pages: Vec<Vec<Item>>,
    /// Whether nothing stands on the page yet.
    fresh: bool,
    headings: Vec<HeadingPlace>,
}

impl Flow {
    fn put(&mut self, item: Item) {
        self.fresh = false;
        if let Some(page) = self.pages.last_mut() {
            page.push(item);
        }
    }

    fn next_page(&mut self) {
        if !self.fresh {
            self.pages.push(Vec::new());
            self.fresh = true;
        }
        self.down = self.room.y0;
    }

    fn left(&self) -> f64 {
        self.room.y1 - self.down
    }

    /// A new page where so much does not fit on this one.
    fn need(&mut self, height: f64) {
        if self.left() < height {
            self.next_page();
        }
    }

    fn words(&mut self, text: &str, size: f64, indent: f64, ink: Ink) {
        for line in font::wrapped(text, size, self.room.width() - indent) {
            self.need(size * LEADING);
            self.line(line, size, indent, ink);
        }
    }

    fn line(&mut self, text: String, size: f64, indent: f64, ink: Ink) {
        let at = Point::new(self.room.x0 + indent, self.down + font::cap_height(size));
        self.put(Item::Text(Text { ink, ..Text::new(text, at, size) }));
        self.down += size * LEADING;
    }

    /// How much room the first part of these needs that may not be torn apart, mm: what must stand under a heading.
    fn start_height(&self, blocks: &[Block]) -> f64 {
        let Some((first, rest)) = blocks.split_first() else { return 0.0 };
        let most = self.room.height() / 2.0;
        match first {
            Block::Heading { level, .. } => {
                HEADINGS[usize::from(*level > 2)] * LEADING + 2.2 * AFTER + self.start_height(rest)
            }
            Block::Figure { picture, .. } => {
                picture.height * (self.room.width() / picture.width).min(1.0) + SMALL * LEADING + 2.0 * AFTER
            }
            Block::Photo { .. } => PHOTO.1 + SMALL * LEADING + 2.0 * AFTER,
            Block::Table(table) => {
                let before = table.before.iter().map(|s| font::wrapped(s, TEXT, self.room.width()).len());
                TABLE_TITLE * LEADING + before.sum::<usize>() as f64 * TEXT * LEADING + 6.0 * grid::SIZE
            }
            Block::Paragraph(_) | Block::List { .. } | Block::Caution { .. } => 2.0 * TEXT * LEADING + CAUTION_ROOM,
            Block::NewPage => 0.0,
        }
        .min(most)
    }

    /// A block; `after` are those behind it.
    fn block(&mut self, block: &Block, after: &[Block]) {
        match block {
            Block::Heading { level, text } => {
                let size = HEADINGS[usize::from(*level > 2)];
                if !self.fresh {
                    self.down += 1.6 * AFTER;
                }
                self.need(size * LEADING + 0.6 * AFTER + self.start_height(after).max(UNDER_HEADING));
                self.headings.push(HeadingPlace { page: self.pages.len() - 1, down: self.down });
                self.words(text, size, 0.0, Ink::BLACK);
                self.down += 0.6 * AFTER;
            }
            Block::Paragraph(text) => {
                self.words(text, TEXT, 0.0, Ink::BLACK);
                self.down += AFTER;
            }
            Block::List { numbered, items } => {
                for (i, item) in items.iter().enumerate() {
                    self.need(TEXT * LEADING);
                    let sign = if *numbered { format!("{}.", i + 1) } else { "•".to_owned() };
                    let at = Point::new(self.room.x0 + 1.0, self.down + font::cap_height(TEXT));
                    self.put(Item::Text(Text::new(sign, at, TEXT)));
                    self.words(item, TEXT, INDENT, Ink::BLACK);
                    self.down += 0.3 * AFTER;
                }
                self.down += AFTER;
            }
            Block::Table(table) => self.table(table),
            Block::Figure { picture, caption, .. } => self.figure(picture, caption),
            Block::Photo { photo, caption, .. } => self.photo(photo, caption),
            Block::Caution { title, text } => self.caution(title, text),
            Block::NewPage => self.next_page(),
        }
    }

    fn figure(&mut self, picture: &Picture, caption: &str) {
        let under = if caption.is_empty() { 0.0 } else { SMALL * LEADING };
        let most = (self.room.width(), self.room.height() - under - 2.0 * AFTER);
        let scale = (most.0 / picture.width).min(most.1 / picture.height).min(1.0);
        self.need(picture.height * scale + under + AFTER);
        let at = Point::new(self.room.x0, self.down);
        picture.fitted(scale, at).into_iter().for_each(|item| self.put(item));
        self.down += picture.height * scale + AFTER;
        self.words(caption, SMALL, 0.0, SOFT);
        self.down += AFTER;
    }

    fn photo(&mut self, photo: &Arc<Photo>, caption: &str) {
        let under = if caption.is_empty() { 0.0 } else { SMALL * LEADING };
        let (wide, high) = (f64::from(photo.width.max(1)), f64::from(photo.height.max(1)));
        let scale = (PHOTO.0 / wide).min(PHOTO.1 / high);
        let (width, height) = (wide * scale, high * scale);
        self.need(height + under + AFTER);
        let rect = Rect::new(self.room.x0, self.down, self.room.x0 + width, self.down + height);
        self.put(Item::Photo { photo: Arc::clone(photo), rect });
        self.down += height + AFTER;
        self.words(caption, SMALL, 0.0, SOFT);
        self.down += AFTER;
    }

    /// A frame around its words, on one page as long as it fits on one.
    fn caution(&mut self, title: &str, text: &[String]) {
        let width = self.room.width() - 2.0 * CAUTION_ROOM;
        let heading = font::wrapped(title, TEXT * 1.15, width);
        let lines: Vec<Vec<String>> = text.iter().map(|t| font::wrapped(t, TEXT, width)).collect();
        let many = lines.iter().map(Vec::len).sum::<usize>() as f64;
        let height = 2.0 * CAUTION_ROOM
            + heading.len() as f64 * TEXT * 1.15 * LEADING
            + many * TEXT * LEADING
            + lines.len() as f64 * 0.4 * AFTER;
        self.need(height.min(self.room.height()));
        let top = self.down;
        self.down += CAUTION_ROOM;
        for line in heading {
            self.line(line, TEXT * 1.15, CAUTION_ROOM, Ink::BLACK);
        }
        let mut from = top;
        for sentence in lines {
            for line in sentence {
                if self.left() < TEXT * LEADING + CAUTION_ROOM {
                    self.frame(from, self.down);
                    self.next_page();
                    from = self.down;
                    self.down += CAUTION_ROOM;
                }
                self.line(line, TEXT, CAUTION_ROOM, Ink::BLACK);
            }
            self.down += 0.4 * AFTER;
        }
        self.down += CAUTION_ROOM - 0.4 * AFTER;
        self.frame(from, self.down);
        self.down += 1.5 * AFTER;
    }

    fn frame(&mut self, from: f64, to: f64) {
        let mut path = BezPath::new();
        let (x0, x1) = (self.room.x0, self.room.x1);
        path.extend([
            PathEl::MoveTo(Point::new(x0, from)),
            PathEl::LineTo(Point::new(x1, from)),
            PathEl::LineTo(Point::new(x1, to)),
            PathEl::LineTo(Point::new(x0, to)),
            PathEl::ClosePath,
        ]);
        self.put(Item::Stroke { path, pen: Pen::solid(0.6) });
    }

    fn table(&mut self, table: &Table) {
        self.need(HEADINGS[1] * LEADING + UNDER_HEADING);
        self.words(&table.title, TABLE_TITLE, 0.0, Ink::BLACK);
        for sentence in &table.before {
            self.words(sentence, TEXT, 0.0, Ink::BLACK);
        }
        self.down += 0.5 * AFTER;
        let whole = Grid::of(table, self.room.width());
        for part in whole.parts(self.room.width()) {
            self.part(&whole, &part);
            self.down += 1.5 * AFTER;
        }
        for note in &table.notes {
            self.words(note, SMALL, 0.0, SOFT);
        }
        self.down += 1.5 * AFTER;
    }

    /// Some columns of a table: the head again on every page.
    fn part(&mut self, grid: &Grid, columns: &[usize]) {
        let head = grid.head_height(columns);
        // A head without a line under it helps nobody.
        self.need(head + grid.rows.first().map_or(0.0, |r| r.height(columns)));
        self.head(grid, columns);
        for (i, row) in grid.rows.iter().enumerate() {
            // Rows of one line stay together.
            let height: f64 = grid.rows[i..]
                .iter()
                .enumerate()
                .take_while(|(k, r)| *k == 0 || r.follows)
                .map(|(_, r)| r.height(columns))
                .sum();
            let together = if row.follows { row.height(columns) } else { height };
            if self.left() < together && together < self.room.height() - head {
                self.next_page();
                self.head(grid, columns);
            }
            if !row.group.is_empty() {
                let from = self.down;
                self.down += 1.6 * grid::ROOM;
                self.line(row.group.clone(), grid::SIZE, 0.0, SOFT);
                self.down = from + grid::GROUP;
            }
            self.cells(&row.cells, grid, columns);
            let last = grid.rows.get(i + 1).is_none_or(|next| !next.follows);
            if last {
                self.rule(if i + 1 == grid.rows.len() { 0.35 } else { 0.15 }, grid, columns);
            }
        }
    }

    fn head(&mut self, grid: &Grid, columns: &[usize]) {
        self.rule(0.35, grid, columns);
        self.cells(&grid.head, grid, columns);
        self.rule(0.35, grid, columns);
    }

    fn rule(&mut self, width: f64, grid: &Grid, columns: &[usize]) {
        let wide: f64 = columns.iter().map(|c| grid.widths[*c]).sum();
        let path = segment(Point::new(self.room.x0, self.down), Point::new(self.room.x0 + wide, self.down));
        self.put(Item::Stroke { path, pen: Pen { ink: RULE, ..Pen::solid(width) } });
    }

    fn cells(&mut self, cells: &[grid::Words], grid: &Grid, columns: &[usize]) {
        let mut left = self.room.x0;
        for column in columns {
            let width = grid.widths[*column];
            let cell = &cells[*column];
            for (i, line) in cell.lines.iter().enumerate() {
                let down =
                    self.down + grid::ROOM + grid::SIZE * grid::LEADING * i as f64 + font::cap_height(grid::SIZE);
                let (x, align) = match cell.is_number {
                    true => (left + width - grid::ROOM, Align::End),
                    false => (left + grid::ROOM, Align::Start),
                };
                self.put(Item::Text(Text { align, ..Text::new(line.clone(), Point::new(x, down), grid::SIZE) }));
            }
            left += width;
        }
        self.down += grid::height(cells, columns);
    }
}

fn segment(from: Point, to: Point) -> BezPath {
    BezPath::from_iter([PathEl::MoveTo(from), PathEl::LineTo(to)])
}
