//! Pages for a projector: each as large as the picture on the cloth, with lines wide enough to be seen, a grid, and marks by which the
//! cloth or the table is moved on.
//!
//! The first page tests the scale. Then one page for each position: small pieces share one, a large piece takes several, which have a part
//! in common; shift marks lie in that part, in the same place of the piece on both pages.

use kurbo::{Affine, BezPath, Circle, Point, Rect, Shape, Size, Vec2};
use thiserror::Error;

use super::dashes::inner_dashes;
use super::drawing::{Align, Ink, Item, Pen, Picture, Text};
use super::lettering::{Letters, words_items};
use super::nest::Nest;
use super::paper::spread_over;
use super::pieces::straight;
use super::svg::decimals;
use super::wide::{OUTLINE_PEN, SheetError, SheetPiece, closed, sizes_and_pens};
use super::{font, text_width};
use crate::base::DisplayUnit;
use crate::texts::{self, decimal, own_number, say, t};

/// A line is at least so many projected pixels wide: thinner ones vanish on cloth (case C105).
pub const LINE_PIXELS: f64 = 2.0;
/// Neighbouring positions have at least this in common, mm: 10 cm (case C106).
pub const COMMON: f64 = 100.0;
/// A letter's em is at least so many pixels: common practice, no source.
const LETTER_PIXELS: f64 = 16.0;
/// From the grid's lines to those of pieces they differ by light: grey on black, and on white.
const GRID_INKS: [Ink; 2] = [Ink::grey(70), Ink::grey(205)];
/// Free room around pieces, mm.
const ROOM: f64 = 12.0;
/// Between a grid line and the next, mm: 5 cm and 2 in.
const CENTIMETRES: f64 = 50.0;
const INCHES: f64 = 50.8;
/// Dashes of the inches' lines, in widths of a line.
const INCH_DASHES: [f64; 2] = [1.5, 6.0];
/// Lengths by which the scale is tested, mm: the longest that fits is taken.
const TESTS: [f64; 3] = [500.0, 200.0, 100.0];
const INCH_TESTS: [f64; 3] = [508.0, 203.2, 101.6];
/// Sides of a picture that can be had, mm.
const SIDES: (f64, f64) = (250.0, 5000.0);
/// Pixels of a side that can be had.
const PIXELS: (u32, u32) = (200, 20_000);

/// Which lines lie behind the pieces.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Grid {
    /// Solid lines, 5 cm apart.
    #[default]
    Centimetres,
    /// Dotted lines, 2 in apart.
    Inches,
    /// Both.
    Both,
    /// None.
    None,
}

/// How pages for a projector are made.
#[derive(Clone, Debug, PartialEq)]
pub struct ProjectorSettings {
    /// The garment, with its view.
    pub title: String,
    /// Edition and date.
    pub edition: String,
    /// What is seen of the projection on the cloth: width and height, mm.
    pub picture: Size,
    /// How many pixels the projector has there: across and down.
    pub pixels: [u32; 2],
    /// Width of lines, mm; none: as wide as they must be.
    pub line: Option<f64>,
    /// What neighbouring positions have in common at least, mm.
    pub common: f64,
    /// Light lines on black, else dark ones on white.
    pub dark: bool,
    /// What lies behind the pieces.
    pub grid: Grid,
    /// How lengths are told.
    pub unit: DisplayUnit,
}

impl Default for ProjectorSettings {
    /// 36 x 24 in at 1280 x 720 pixels: a small projector over a table (the picture of case C105).
    fn default() -> Self {
        Self {
            title: String::new(),
            edition: String::new(),
            picture: Size::new(914.4, 609.6),
            pixels: [1280, 720],
            line: None,
            common: COMMON,
            dark: true,
            grid: Grid::Centimetres,
            unit: DisplayUnit::Cm,
        }
    }
}

impl ProjectorSettings {
    /// A pixel on the cloth, mm: the longer of its two sides.
    pub fn pixel(&self) -> f64 {
        let side = |mm: f64, pixels: u32| mm / f64::from(pixels.max(1));
        side(self.picture.width, self.pixels[0]).max(side(self.picture.height, self.pixels[1]))
    }

    /// What stands in a file's name where others have their paper: what the file is for and how large its picture must be.
    pub fn paper_name(&self) -> String {
        let [width, height] = [self.picture.width, self.picture.height].map(|mm| decimals(mm, 0));
        format!("projector-{}-{width}x{height}mm", if self.dark { "dark" } else { "light" })
    }

    /// The thinnest line that can be seen, mm.
    pub fn least_line(&self) -> f64 {
        LINE_PIXELS * self.pixel()
    }
}

/// Why pages for a projector cannot be made.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum ProjectorError {
    /// A picture or a number of pixels that cannot be.
    #[error("{}", say!(
        "output-projected", width = own_number(width), height = own_number(height), across, down,
        least = own_number(SIDES.0), most = own_number(SIDES.1)
    ))]
    Picture {
        /// mm.
        width: f64,
        /// mm.
        height: f64,
        /// Pixels.
        across: u32,
        /// Pixels.
        down: u32,
    },
    /// Lines that would not be seen.
    #[error("{}", say!(
        "output-line-thin", line = own_number(line), pixel = own_number(format_args!("{pixel:.3}")),
        least = own_number(format_args!("{least:.3}")), pixels = own_number(LINE_PIXELS)
    ))]
    LineThin {
        /// What was asked for, mm.
        line: f64,
        /// A pixel, mm.
        pixel: f64,
        /// mm.
        least: f64,
    },
    /// Neighbouring positions that have too little or too much in common.
    #[error("{}", say!(
        "output-common", common = own_number(common), least = format!("{least:.0}"), most = format!("{most:.0}")
    ))]
    Common {
        /// mm.
        common: f64,
        /// mm.
        least: f64,
        /// mm.
        most: f64,
    },
    /// As for other sheets.
    #[error(transparent)]
    Sheet(#[from] SheetError),
}

/// The pages: the test of the scale, then one for each position. Every page is as large as the picture.
///
/// # Errors
/// See [`ProjectorError`].
pub fn projector_sheet(pieces: &[SheetPiece], settings: &ProjectorSettings) -> Result<Vec<Picture>, ProjectorError> {
    projector_sheets(pieces, std::slice::from_ref(settings)).map(|mut all| all.remove(0))
}

/// The same several times, laid out once: what differs between `all` may only be what is dark and what lies behind.
///
/// # Errors
/// See [`ProjectorError`].
pub fn projector_sheets(pieces: &[SheetPiece], all: &[ProjectorSettings]) -> Result<Vec<Vec<Picture>>, ProjectorError> {
    let Some(settings) = all.first() else { return Ok(Vec::new()) };
    let line = checked(settings)?;
    if pieces.is_empty() {
        return Err(SheetError::NoPieces.into());
    }
    let size = LETTER_PIXELS * settings.pixel();
    let letters = Letters { least: size, most: 1.5 * size, leader: line };
    let mut nests = Nest::all_with(pieces, letters, &|own| most_of(own, settings))?;
    let views = fewest_views(&mut nests, letters, settings)?;
    let drawn = |settings: &ProjectorSettings| {
        let artist = Artist { settings, line, letters, pens: pens(pieces, line), count: views.len() };
        let pages = views.iter().enumerate().map(|(i, view)| artist.page(&nests, &views, (i, view)));
        std::iter::once(artist.test()).chain(pages).collect()
    };
    Ok(all.iter().map(drawn).collect())
}

/// The width of lines, if all settings can be had.
fn checked(settings: &ProjectorSettings) -> Result<f64, ProjectorError> {
    let (Size { width, height }, [across, down]) = (settings.picture, settings.pixels);
    let sides = [width, height].iter().all(|mm| (SIDES.0..=SIDES.1).contains(mm));
    if !sides || ![across, down].iter().all(|p| (PIXELS.0..=PIXELS.1).contains(p)) {
        return Err(ProjectorError::Picture { width, height, across, down });
    }
    // Room for two marks at least, and still most of a picture that is new.
    let (least, most) = (0.1 * width.min(height), 0.5 * width.min(height));
    if !(least..=most).contains(&settings.common) {
        return Err(ProjectorError::Common { common: settings.common, least, most });
    }
    let least = settings.least_line();
    let line = settings.line.unwrap_or(least);
    if !(line >= least - crate::base::tolerance::EQUAL && line.is_finite()) {
        return Err(ProjectorError::LineThin { line, pixel: settings.pixel(), least });
    }
    Ok(line)
}

/// The pens of the sizes, as wide as lines are here; dashes grow with them.
fn pens(pieces: &[SheetPiece], line: f64) -> Vec<(String, Pen)> {
    let times = line / OUTLINE_PEN;
    let wider = |pen: Pen| Pen { width: line, dashes: pen.dashes.iter().map(|d| d * times).collect(), ..pen };
    sizes_and_pens(pieces).into_iter().map(|(size, pen)| (size, wider(pen))).collect()
}

/// A position of the picture.
struct View {
    /// The pieces that are seen, each with the shift from its own place to the page, mm.
    seen: Vec<(usize, Vec2)>,
    /// Which of how many of one piece, across and down; for pieces that need one position alone `[0, 0]` of `[1, 1]`.
    place: [usize; 2],
    of: [usize; 2],
}

/// How large a piece's room may become with its label before it takes more positions, mm.
fn most_of(own: Size, settings: &ProjectorSettings) -> Size {
    let side = |own: f64, picture: f64| {
        let count = spread_over(own + 2.0 * ROOM, picture, settings.common).count as f64;
        count * picture - (count - 1.0) * settings.common - 2.0 * ROOM
    };
    Size::new(side(own.width, settings.picture.width), side(own.height, settings.picture.height))
}

/// All positions: no more of them than there would be without labels. A label beside its piece that would make more lies over its lines,
/// unless it is larger than they are.
fn fewest_views(
    nests: &mut [Nest],
    letters: Letters,
    settings: &ProjectorSettings,
) -> Result<Vec<View>, ProjectorError> {
    // The same nests with their labels over them.
    let mut others: Vec<(usize, Nest)> = Vec::new();
    for (i, nest) in nests.iter().enumerate().filter(|(_, n)| n.label.as_ref().is_some_and(|l| l.is_beside())) {
        others.extend(nest.with_label_over(letters)?.map(|other| (i, other)));
    }
    for (i, other) in &mut others {
        std::mem::swap(&mut nests[*i], other);
    }
    let mut found = views(nests, settings);
    let least = found.len();
    // Back beside their pieces, one after the other, as long as that costs nothing.
    for (i, other) in &mut others {
        std::mem::swap(&mut nests[*i], other);
        let with = views(nests, settings);
        if with.len() > least {
            std::mem::swap(&mut nests[*i], other);
        } else {
            found = with;
        }
    }
    Ok(found)
}

/// All positions: large pieces first, each with its own; then small ones together, row by row.
fn views(nests: &[Nest], settings: &ProjectorSettings) -> Vec<View> {
    let (mut out, mut small) = (Vec::new(), Vec::new());
    let [wide, high] = [settings.picture.width, settings.picture.height];
    for (i, nest) in nests.iter().enumerate() {
        let (width, height) = (nest.room.width + 2.0 * ROOM, nest.room.height + 2.0 * ROOM);
        if width <= wide && height <= high {
            small.push(i);
            continue;
        }
        let (across, down) = (spread_over(width, wide, settings.common), spread_over(height, high, settings.common));
        for row in 0..down.count {
            for column in 0..across.count {
                let shift = Vec2::new(ROOM - across.at(column), ROOM - down.at(row));
                out.push(View { seen: vec![(i, shift)], place: [column, row], of: [across.count, down.count] });
            }
        }
    }
    small.sort_by(|a, b| nests[*b].room.height.total_cmp(&nests[*a].room.height));
    let (mut at, mut row, mut seen): (Point, f64, Vec<(usize, Vec2)>) = (Point::new(ROOM, ROOM), 0.0, Vec::new());
    for i in small {
        let room = nests[i].room;
        if at.x + room.width + ROOM > wide {
            at = Point::new(ROOM, at.y + row + ROOM);
            row = 0.0;
        }
        if at.y + room.height + ROOM > high {
            out.push(View { seen: std::mem::take(&mut seen), place: [0, 0], of: [1, 1] });
            (at, row) = (Point::new(ROOM, ROOM), 0.0);
        }
        seen.push((i, at.to_vec2()));
        at.x += room.width + ROOM;
        row = row.max(room.height);
    }
    if !seen.is_empty() {
        out.push(View { seen, place: [0, 0], of: [1, 1] });
    }
    out
}

/// What is the same for all pages.
struct Artist<'a> {
    settings: &'a ProjectorSettings,
    /// Width of lines, mm.
    line: f64,
    letters: Letters,
    pens: Vec<(String, Pen)>,
    /// How many positions.
    count: usize,
}

impl Artist<'_> {
    fn ink(&self) -> Ink {
        if self.settings.dark { Ink::grey(255) } else { Ink::BLACK }
    }

    fn pen(&self) -> Pen {
        Pen { ink: self.ink(), ..Pen::solid(self.line) }
    }

    fn room(&self) -> Rect {
        Rect::from_origin_size(Point::ZERO, self.settings.picture)
    }

    fn text(&self, words: impl Into<String>, at: Point, align: Align) -> Item {
        Item::Text(Text { align, ink: self.ink(), ..Text::new(words, at, self.letters.least) })
    }

    /// The ground with its grid; `from`: where a line of it lies, so that it stays with the piece from position to position.
    fn ground(&self, from: Vec2) -> Vec<Item> {
        let room = self.room();
        let ground = if self.settings.dark { Ink::BLACK } else { Ink::grey(255) };
        let mut items = vec![Item::Fill { path: room.to_path(crate::base::tolerance::PRINT), ink: ground }];
        let ink = GRID_INKS[usize::from(!self.settings.dark)];
        let mut grid = |pitch: f64, dashes: Vec<f64>| {
            let mut path = BezPath::new();
            let first = |from: f64| from.rem_euclid(pitch);
            let places = |from: f64, to: f64| {
                let many = ((to - first(from)) / pitch).floor().max(0.0) as usize;
                (0..=many).map(move |i| first(from) + pitch * i as f64).filter(move |at| *at < to)
            };
            for x in places(from.x, room.x1) {
                path.extend(straight(Point::new(x, room.y0), Point::new(x, room.y1)));
            }
            for y in places(from.y, room.y1) {
                path.extend(straight(Point::new(room.x0, y), Point::new(room.x1, y)));
            }
            items.push(Item::Stroke { path, pen: Pen { width: self.line, dashes, ink } });
        };
        if matches!(self.settings.grid, Grid::Centimetres | Grid::Both) {
            grid(CENTIMETRES, Vec::new());
        }
        if matches!(self.settings.grid, Grid::Inches | Grid::Both) {
            grid(INCHES, INCH_DASHES.map(|d| d * self.line).to_vec());
        }
        items
    }

    /// What the grid is.
    fn grid_words(&self) -> String {
        match self.settings.grid {
            Grid::Centimetres => t!("grid-cm"),
            Grid::Inches => t!("grid-inches"),
            Grid::Both => t!("grid-both"),
            Grid::None => t!("grid-none"),
        }
    }

    /// The page by which the scale is set.
    fn test(&self) -> Picture {
        let mut items = self.ground(Vec2::ZERO);
        let room = self.room();
        // The edge of the picture: it must be seen on all four sides.
        let edge = room.inset(-0.5 * self.line);
        items.push(Item::Stroke { path: edge.to_path(crate::base::tolerance::PRINT), pen: self.pen() });
        let (em, step) = (self.letters.least, 1.5 * self.letters.least);
        for down in [false, true] {
            let side = if down { room.height() } else { room.width() };
            for (k, tests) in [TESTS, INCH_TESTS].into_iter().enumerate() {
                let length = tests.into_iter().find(|length| length + 6.0 * step <= side).unwrap_or(tests[2]);
                let unit = if k == 0 { DisplayUnit::Mm } else { DisplayUnit::InchEighths };
                let name = texts::length(length, unit);
                let aside = step * (2.0 * k as f64 + 1.5);
                let place =
                    |along: f64, aside: f64| if down { Point::new(aside, along) } else { Point::new(along, aside) };
                let start = 5.0 * step;
                items.push(Item::Stroke {
                    path: straight(place(start, aside), place(start + length, aside)),
                    pen: self.pen(),
                });
                for end in [start, start + length] {
                    let tick = straight(place(end, aside - em / 2.0), place(end, aside + em / 2.0));
                    items.push(Item::Stroke { path: tick, pen: self.pen() });
                }
                let angle = if down { -std::f64::consts::FRAC_PI_2 } else { 0.0 };
                let at = place(start + length / 2.0, aside - 0.4 * em);
                items.push(Item::Text(Text {
                    angle,
                    align: Align::Middle,
                    ink: self.ink(),
                    ..Text::new(name, at, em)
                }));
            }
        }
        let settings = self.settings;
        let told = |mm: f64| texts::length(mm, settings.unit);
        let sizes: Vec<&str> = self.pens.iter().map(|(s, _)| s.as_str()).filter(|s| !s.is_empty()).collect();
        let mut said = vec![
            settings.title.clone(),
            settings.edition.clone(),
            if sizes.is_empty() { String::new() } else { t!("of-size", size = sizes.join(", ")) },
            t!("projector-test", width = told(settings.picture.width), height = told(settings.picture.height)),
            t!(
                "projector-pixels",
                across = settings.pixels[0],
                down = settings.pixels[1],
                pixel = decimal(&decimals(settings.pixel(), 2)),
                line = decimal(&decimals(self.line, 2)),
                grid = self.grid_words()
            ),
            t!("projector-then", count = self.count),
        ];
        said.retain(|words| !words.is_empty());
        let left = 5.0 * step;
        let mut at = Point::new(left, 6.5 * step);
        for words in said {
            for line in font::wrapped(&words, em, (room.width() - left - step).max(em)) {
                items.push(self.text(line, at, Align::Start));
                at.y += step;
            }
        }
        Picture { width: room.width(), height: room.height(), items: vec![Item::Clip { rect: room, items }] }
    }

    /// A position.
    fn page(&self, nests: &[Nest], views: &[View], (number, view): (usize, &View)) -> Picture {
        let room = self.room();
        let mut items = self.ground(view.seen.first().map_or(Vec2::ZERO, |s| s.1));
        for (i, shift) in &view.seen {
            self.nest(&mut items, &nests[*i], *shift);
        }
        if view.of != [1, 1] {
            self.shift_marks(&mut items, views, (number, view));
        }
        let em = self.letters.least;
        let names: Vec<&str> = view.seen.iter().map(|(i, _)| nests[*i].name.as_str()).collect();
        let mut said = t!("projector-position", number = number + 1, count = self.count);
        if view.of != [1, 1] {
            let [across, down] = view.of;
            let part = t!(
                "projector-part",
                pieces = names.join(", ").replace('_', " "),
                number = view.place[1] * across + view.place[0] + 1,
                count = across * down
            );
            said += &format!(" · {part}");
        }
        // On a ground of its own, so that no line runs through it.
        let at = Point::new(room.x1 - em, room.y1 - 0.7 * em);
        let ground = if self.settings.dark { Ink::BLACK } else { Ink::grey(255) };
        let own = Rect::new(at.x - text_width(&said, em) - em / 2.0, at.y - em, room.x1, room.y1);
        items.push(Item::Fill { path: own.to_path(crate::base::tolerance::PRINT), ink: ground });
        items.push(self.text(said, at, Align::End));
        Picture { width: room.width(), height: room.height(), items: vec![Item::Clip { rect: room, items }] }
    }

    fn nest(&self, items: &mut Vec<Item>, nest: &Nest, shift: Vec2) {
        let moved = Affine::translate(shift);
        for piece in &nest.pieces {
            let pen =
                self.pens.iter().find(|(size, _)| *size == piece.size).map_or_else(|| self.pen(), |p| p.1.clone());
            let ink = match (piece.faded, self.settings.dark) {
                (true, true) => Ink::grey(130),
                (true, false) => Ink::grey(160),
                _ => self.ink(),
            };
            let mut stroke = |path: &BezPath, dashes: Vec<f64>| {
                items.push(Item::Stroke { path: moved * path.clone(), pen: Pen { width: self.line, dashes, ink } });
            };
            for line in &piece.lines {
                stroke(line, inner_dashes(line, &pen.dashes).to_vec());
            }
            if let Some(stitch) = &piece.stitch {
                stroke(&closed(stitch.clone()), vec![2.5 * self.line, 2.5 * self.line]);
            }
            stroke(&closed(piece.outline.clone()), pen.dashes);
        }
        let own: Vec<&SheetPiece> = nest.pieces.iter().collect();
        items.extend(nest.label.iter().flat_map(|l| l.items(shift, self.ink())));
        items.extend(words_items(&own, shift, self.ink(), self.letters));
    }

    /// Two marks in what this position has in common with each of its neighbours: in the same place of the piece on both pages.
    fn shift_marks(&self, items: &mut Vec<Item>, views: &[View], (number, view): (usize, &View)) {
        let Some((nest, shift)) = view.seen.first() else { return };
        let room = self.room();
        for (other, neighbour) in views.iter().enumerate() {
            let Some(their) = neighbour.seen.iter().find(|(i, _)| i == nest).map(|s| s.1) else { continue };
            let apart = [0, 1].map(|k| view.place[k].abs_diff(neighbour.place[k]));
            if other == number || neighbour.of != view.of || apart[0] + apart[1] != 1 {
                continue;
            }
            // Both pictures in the piece's own place.
            let common = (room - *shift).intersect(room - their);
            let is_across = apart[0] == 1;
            for (letter, share) in [("a", 0.25), ("b", 0.75)] {
                let at = if is_across {
                    Point::new(common.center().x, common.y0 + share * common.height())
                } else {
                    Point::new(common.x0 + share * common.width(), common.center().y)
                };
                let (first, second) = (number.min(other) + 1, number.max(other) + 1);
                self.mark(items, at + *shift, &format!("{first}–{second} {letter}"));
            }
        }
    }

    /// A cross in a ring, with its name.
    fn mark(&self, items: &mut Vec<Item>, at: Point, name: &str) {
        let radius = 0.8 * self.letters.least;
        let ring = Circle::new(at, radius).to_path(crate::base::tolerance::PRINT);
        items.push(Item::Stroke { path: ring, pen: self.pen() });
        for way in [Vec2::new(1.6 * radius, 0.0), Vec2::new(0.0, 1.6 * radius)] {
            items.push(Item::Stroke { path: straight(at - way, at + way), pen: self.pen() });
        }
        items.push(self.text(name, at + Vec2::new(1.2 * radius, -0.6 * radius), Align::Start));
    }
}
