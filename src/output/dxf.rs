//! Pieces as DXF R12 (AC1009), one block for each piece and size, in the layers of the open sewn-product standard (ASTM D6673).
//!
//! The numbers of the layers, and which texts a block has, are from memory: the standard itself was not at hand. The file says so. mm with
//! four decimals, x right, y up. Curves are straight stretches: an outline that is cut is never nearer than the true line and at most 0.01 mm
//! outside of it; other lines are within 0.01 mm.

use std::collections::BTreeSet;

use kurbo::{BezPath, ParamCurve, PathEl, Point, Shape, Vec2};
use thiserror::Error;

use super::OpenPiece;
use super::pdf::MAX_SIDE;
use super::wide::own_piece;
use crate::base::round_half_away;
use crate::base::tolerance::{FLAT, FLAT_OUT, STRAIGHT};
use crate::texts::say;

/// Layers by what lies on them.
mod layer {
    pub const BOUNDARY: u8 = 1;
    pub const TURN_POINTS: u8 = 2;
    pub const CURVE_POINTS: u8 = 3;
    pub const NOTCHES: u8 = 4;
    pub const MIRROR: u8 = 6;
    pub const GRAIN: u8 = 7;
    pub const INNER: u8 = 8;
    pub const CUT_OUTS: u8 = 11;
    pub const DRILL_HOLES: u8 = 13;
    pub const SEW: u8 = 14;
    pub const WORDS: u8 = 15;
    /// All of them.
    pub const ALL: [u8; 11] =
        [BOUNDARY, TURN_POINTS, CURVE_POINTS, NOTCHES, MIRROR, GRAIN, INNER, CUT_OUTS, DRILL_HOLES, SEW, WORDS];
}

/// Height of letters, mm.
const LETTERS: f64 = 5.0;
/// From line to line of them, mm.
const LEADING: f64 = 8.0;
/// Between pieces, mm.
const GAP: f64 = 20.0;
/// Numbers are written to this part of a millimetre …
const PARTS: u64 = 10_000;
/// … which are so many decimals.
const PLACES: usize = 4;
/// The longest name of a block in R12.
const LONGEST_NAME: usize = 31;
/// The most signs in a text of R12 (255), less room for one that is written as seven.
const LONGEST_TEXT: usize = 240;

/// What is said of all pieces together.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct DxfSettings {
    /// The garment, with its view.
    pub title: String,
    /// Edition and date.
    pub edition: String,
    /// The base size.
    pub base: String,
}

/// Why a file cannot be made.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum DxfError {
    /// Nothing to write.
    #[error("{}", say!("output-no-pieces-file"))]
    NoPieces,
    /// A place that is no usable number, or an outline without an inside.
    #[error("{}", say!("output-unwritten", piece = own_piece(piece, size)))]
    NoOutline {
        /// Its name.
        piece: String,
        /// Its size.
        size: String,
    },
}

/// The bytes of a DXF file with these pieces. Same pieces, same bytes; only signs of ASCII are in it, others stand as `\U+XXXX`.
///
/// # Errors
/// See [`DxfError`].
pub fn write(pieces: &[OpenPiece], settings: &DxfSettings) -> Result<Vec<u8>, DxfError> {
    if pieces.is_empty() {
        return Err(DxfError::NoPieces);
    }
    let rooms = pieces.iter().map(sound_room).collect::<Result<Vec<_>, _>>()?;
    let right: f64 = rooms.iter().map(|r| r.width() + GAP).sum();
    let highest = rooms.iter().map(|r| r.height()).fold(0.0, f64::max);
    let mut names = BTreeSet::new();
    let names: Vec<String> = pieces.iter().map(|p| block_name(p, &mut names)).collect();
    let style = style_lines(settings);
    let mut out = Writer::default();
    // The pieces hang below the origin, what stands above all of them begins a gap over it.
    head(&mut out, [Point::new(0.0, highest), Point::new(right, -GAP - LEADING * style.len() as f64)]);
    out.pairs(&[(0, "SECTION"), (2, "BLOCKS")]);
    for (piece, name) in pieces.iter().zip(&names) {
        block(&mut out, piece, name);
    }
    out.pairs(&[(0, "ENDSEC"), (0, "SECTION"), (2, "ENTITIES")]);
    let mut right = 0.0;
    for (room, name) in rooms.iter().zip(&names) {
        out.pairs(&[(0, "INSERT"), (8, "1"), (2, name)]);
        // Side by side, their tops level, so that a plain viewer shows them apart.
        out.at(10, Point::new(right - room.x0, -room.y0));
        right += room.width() + GAP;
    }
    for (i, words) in style.iter().enumerate() {
        out.words(layer::BOUNDARY, Point::new(0.0, -GAP - LEADING * i as f64), words);
    }
    out.pairs(&[(0, "ENDSEC"), (0, "EOF")]);
    Ok(out.bytes)
}

/// What stands before the blocks; `room`: the lower left and the upper right corner of everything, y down.
fn head(out: &mut Writer, room: [Point; 2]) {
    for words in [
        "Pieces of a garment, one block for each piece and size; lengths in millimetres, y up.",
        "Layers as in the open sewn-product standard ASTM D6673; layer numbers as commonly quoted, not read from the standard itself: check them against it.",
        "1 boundary, 2 turn points, 3 curve points, 4 notches (their direction as an angle), 6 mirror line, 7 grain line,",
        "8 internal lines (not cut), 11 internal lines that are cut, 13 drill holes, 14 sew lines, 15 annotations.",
    ] {
        out.pair(999, words);
    }
    out.pairs(&[(0, "SECTION"), (2, "HEADER"), (9, "$ACADVER"), (1, "AC1009")]);
    for (name, corner) in ["$EXTMIN", "$EXTMAX"].into_iter().zip(room) {
        out.pair(9, name);
        out.at(10, corner);
    }
    out.pairs(&[(0, "ENDSEC"), (0, "SECTION"), (2, "TABLES")]);
    out.pairs(&[(0, "TABLE"), (2, "LTYPE"), (70, "1"), (0, "LTYPE"), (2, "CONTINUOUS"), (70, "0"), (3, "Solid line")]);
    out.pairs(&[(72, "65"), (73, "0"), (40, "0.0"), (0, "ENDTAB"), (0, "TABLE"), (2, "LAYER")]);
    out.pair(70, &layer::ALL.len().to_string());
    for layer in layer::ALL {
        out.pairs(&[(0, "LAYER"), (2, &layer.to_string()), (70, "0"), (62, "7"), (6, "CONTINUOUS")]);
    }
    out.pairs(&[(0, "ENDTAB"), (0, "ENDSEC")]);
}

/// The box of a piece, if all that is written of it are usable numbers.
fn sound_room(piece: &OpenPiece) -> Result<kurbo::Rect, DxfError> {
    let fault = || DxfError::NoOutline { piece: piece.name.clone(), size: piece.size.clone() };
    let paths = || {
        let others = piece.stitch.iter().chain(&piece.inner).chain(&piece.slits).chain(&piece.marks);
        std::iter::once(&piece.boundary).chain(others).filter(|p| p.segments().next().is_some())
    };
    let ends = piece.notches.iter().chain(&piece.grain).chain(&piece.fold).flatten();
    let points = ends.chain(&piece.holes).chain(piece.words.iter().map(|(at, _)| at));
    if !paths().all(BezPath::is_finite) || !points.into_iter().all(|p| p.is_finite()) || piece.boundary.area() == 0.0 {
        return Err(fault());
    }
    let room = paths().fold(piece.boundary.bounding_box(), |room, path| room.union(path.bounding_box()));
    let far = [room.x0, room.y0, room.x1, room.y1].into_iter().fold(0.0, |far: f64, v| far.max(v.abs()));
    if far > 10.0 * MAX_SIDE { Err(fault()) } else { Ok(room) }
}

/// A name of letters, digits, `-` and `_` that no other block has.
fn block_name(piece: &OpenPiece, names: &mut BTreeSet<String>) -> String {
    let both = if piece.size.is_empty() { piece.name.clone() } else { format!("{}-{}", piece.name, piece.size) };
    let plain = both.chars().map(|c| if c.is_ascii_alphanumeric() || c == '-' || c == '_' { c } else { '_' });
    let stem: String = plain.take(LONGEST_NAME).collect::<String>().to_uppercase();
    let mut name = stem.clone();
    let mut count = 1;
    while !names.insert(name.clone()) {
        count += 1;
        let tail = format!("${count}");
        name = format!("{}{tail}", &stem[..stem.len().min(LONGEST_NAME - tail.len())]);
    }
    name
}

fn block(out: &mut Writer, piece: &OpenPiece, name: &str) {
    out.pairs(&[(0, "BLOCK"), (8, "1"), (2, name), (70, "0")]);
    out.at(10, Point::ZERO);
    out.pair(3, name);
    let boundary = outward(&piece.boundary);
    let corners: Vec<Point> = boundary.iter().map(|v| v.at).collect();
    out.polyline(layer::BOUNDARY, &corners, true);
    for vertex in &boundary {
        out.point(if vertex.is_turn { layer::TURN_POINTS } else { layer::CURVE_POINTS }, vertex.at, None);
    }
    if let Some(stitch) = &piece.stitch {
        out.lines(layer::SEW, stitch, true);
    }
    for [from, to] in &piece.notches {
        let way = *to - *from;
        // y is up here.
        out.point(layer::NOTCHES, *from, Some(libm::atan2(0.0 - way.y, way.x).to_degrees()));
    }
    if let Some([head, tail]) = piece.grain {
        out.line(layer::GRAIN, tail, head);
    }
    if let Some([a, b]) = piece.fold {
        out.line(layer::MIRROR, a, b);
    }
    for (layer, paths) in [(layer::INNER, &piece.inner), (layer::INNER, &piece.marks), (layer::CUT_OUTS, &piece.slits)]
    {
        for path in paths {
            out.lines(layer, path, false);
        }
    }
    for hole in &piece.holes {
        out.point(layer::DRILL_HOLES, *hole, None);
    }
    // Words from the middle of the piece downwards.
    let mut at = piece.boundary.bounding_box().center();
    let mut write = |layer: u8, words: String| {
        for part in parts(&words) {
            out.words(layer, at, &part);
            at.y += LEADING;
        }
    };
    write(layer::BOUNDARY, format!("Piece Name: {}", piece.name));
    if !piece.size.is_empty() {
        write(layer::BOUNDARY, format!("Size: {}", piece.size));
    }
    for cut in &piece.cuts {
        let [drawn, mirrored] = cut.counts;
        write(layer::BOUNDARY, format!("Quantity: {drawn},{mirrored}"));
        if !cut.material.is_empty() {
            write(layer::BOUNDARY, format!("Material: {}", cut.material));
        }
        write(layer::WORDS, format!("Annotation: {}", cut.words));
    }
    if !piece.letter.is_empty() {
        write(layer::WORDS, format!("Annotation: letter {}", piece.letter));
    }
    if piece.stitch.is_none() {
        write(layer::WORDS, "Annotation: the boundary is the stitch line, no allowance is included".to_owned());
    }
    if piece.faded {
        write(layer::WORDS, "Annotation: not true in this size, not to be cut".to_owned());
    }
    for (at, words) in &piece.words {
        for (i, part) in parts(words).iter().enumerate() {
            out.words(layer::WORDS, *at + Vec2::new(0.0, LEADING * i as f64), part);
        }
    }
    out.pairs(&[(0, "ENDBLK"), (8, "1")]);
}

/// What stands above all pieces, from below upwards.
fn style_lines(settings: &DxfSettings) -> Vec<String> {
    let base = if settings.base.is_empty() { String::new() } else { format!("Sample Size: {}", settings.base) };
    let edition = if settings.edition.is_empty() { String::new() } else { format!("Annotation: {}", settings.edition) };
    let program = concat!("Author: Tracewheel ", env!("CARGO_PKG_VERSION")).to_owned();
    let all = [format!("Style Name: {}", settings.title), base, edition, program, "Units: METRIC".to_owned()];
    all.iter().filter(|w| !w.is_empty()).flat_map(|w| parts(w)).collect()
}

/// A text in parts that are short enough.
fn parts(words: &str) -> Vec<String> {
    let (mut out, mut part) = (Vec::new(), String::new());
    for sign in words.chars() {
        let sign = match sign {
            ' '..='~' => sign.to_string(),
            c if c.is_whitespace() || c.is_control() => " ".to_owned(),
            c => c.encode_utf16(&mut [0; 2]).iter().map(|unit| format!("\\U+{unit:04X}")).collect(),
        };
        if part.len() + sign.len() > LONGEST_TEXT {
            out.push(std::mem::take(&mut part));
        }
        part += &sign;
    }
    out.push(part);
    out
}

/// A corner of a polygon.
struct Vertex {
    at: Point,
    /// Whether the line turns there, or a straight stretch ends.
    is_turn: bool,
}

/// A closed line as a polygon that is nowhere inside of it and at most 0.01 mm outside: points between the ends of each curve are moved
/// outwards, so that no chord cuts in.
fn outward(path: &BezPath) -> Vec<Vertex> {
    let sense = if path.area() < 0.0 { -1.0 } else { 1.0 };
    let segments: Vec<kurbo::PathSeg> = path.segments().filter(|s| !is_nothing(s)).collect();
    let mut out = Vec::new();
    for (i, segment) in segments.iter().enumerate() {
        let before = &segments[(i + segments.len() - 1) % segments.len()];
        let (a, b) = (ends_way(before).1, ends_way(segment).0);
        let is_line = |s: &kurbo::PathSeg| matches!(s, kurbo::PathSeg::Line(_));
        let turns = a.cross(b).abs() > STRAIGHT || a.dot(b) < 0.0;
        out.push(Vertex { at: segment.start(), is_turn: turns || is_line(segment) != is_line(before) });
        if is_line(segment) {
            continue;
        }
        let points = between_ends(segment);
        let all: Vec<Point> = std::iter::once(segment.start()).chain(points).chain([segment.end()]).collect();
        for k in 1..all.len() - 1 {
            let way = all[k + 1] - all[k - 1];
            let out_way = Vec2::new(way.y, -way.x) * (sense / way.hypot());
            out.push(Vertex { at: all[k] + out_way * FLAT_OUT, is_turn: false });
        }
    }
    out
}

fn is_nothing(segment: &kurbo::PathSeg) -> bool {
    matches!(segment, kurbo::PathSeg::Line(l) if l.p0 == l.p1)
}

/// Points of a curve between its ends, at least one, by which its chords are within a quarter of what its points are moved outwards.
fn between_ends(segment: &kurbo::PathSeg) -> Vec<Point> {
    let path = BezPath::from_path_segments(std::iter::once(*segment));
    let mut out = Vec::new();
    kurbo::flatten(&path, FLAT, |el| {
        if let PathEl::LineTo(p) = el {
            out.push(p);
        }
    });
    out.pop();
    if out.is_empty() {
        out.push(segment.eval(0.5));
    }
    out
}

/// The directions, of length 1, in which a segment leaves and arrives.
fn ends_way(segment: &kurbo::PathSeg) -> (Vec2, Vec2) {
    let points: Vec<Point> = match segment {
        kurbo::PathSeg::Line(l) => vec![l.p0, l.p1],
        kurbo::PathSeg::Quad(q) => vec![q.p0, q.p1, q.p2],
        kurbo::PathSeg::Cubic(c) => vec![c.p0, c.p1, c.p2, c.p3],
    };
    let (first, last) = (points[0], points[points.len() - 1]);
    let leaving = points.iter().find(|p| **p != first).map_or(Vec2::ZERO, |p| (*p - first).normalize());
    let arriving = points.iter().rev().find(|p| **p != last).map_or(Vec2::ZERO, |p| (last - *p).normalize());
    (leaving, arriving)
}

/// A code as it stands on its line, three signs wide.
fn code_line(code: u16) -> [u8; 5] {
    let digit = |least: u16, over: u16| if code < least { b' ' } else { b'0' + (code / over % 10) as u8 };
    [digit(100, 100), digit(10, 10), digit(0, 1), b'\r', b'\n']
}

/// Codes and values, a line each.
#[derive(Default)]
struct Writer {
    bytes: Vec<u8>,
}

/// The end of a line.
const END: &[u8] = b"\r\n";

impl Writer {
    // Millions of lines are written so: nothing is made on the way.
    fn pair(&mut self, code: u16, value: &str) {
        self.code(code);
        self.bytes.extend_from_slice(value.as_bytes());
        self.bytes.extend_from_slice(END);
    }

    fn code(&mut self, code: u16) {
        self.bytes.extend_from_slice(&code_line(code));
    }

    /// A number with four decimals, as many as are needed, at least one.
    fn number(&mut self, code: u16, value: f64) {
        // Written from its end, so that the line is put behind the others at once.
        let mut line = [0_u8; 5 + 32];
        let mut first = line.len();
        let mut put = |byte: u8| {
            first -= 1;
            line[first] = byte;
        };
        END.iter().rev().for_each(|b| put(*b));
        let parts = round_half_away(value * PARTS as f64, 1.0) as i64;
        let (mut whole, mut rest) = (parts.unsigned_abs() / PARTS, parts.unsigned_abs() % PARTS);
        let mut places = PLACES;
        while places > 1 && rest % 10 == 0 {
            (rest, places) = (rest / 10, places - 1);
        }
        for _ in 0..places {
            put(b'0' + (rest % 10) as u8);
            rest /= 10;
        }
        put(b'.');
        loop {
            put(b'0' + (whole % 10) as u8);
            whole /= 10;
            if whole == 0 {
                break;
            }
        }
        if parts < 0 {
            put(b'-');
        }
        code_line(code).iter().rev().for_each(|b| put(*b));
        self.bytes.extend_from_slice(&line[first..]);
    }

    fn pairs(&mut self, pairs: &[(u16, &str)]) {
        for (code, value) in pairs {
            self.pair(*code, value);
        }
    }

    /// A place, y turned up: its codes are `code`, and 10 and 20 more.
    fn at(&mut self, code: u16, at: Point) {
        for (more, value) in [(0, at.x), (10, -at.y), (20, 0.0)] {
            self.number(code + more, value);
        }
    }

    fn entity(&mut self, kind: &str, layer: u8) {
        self.pair(0, kind);
        self.code(8);
        // Layers have one digit or two.
        let digits = [b'0' + layer / 10, b'0' + layer % 10];
        self.bytes.extend_from_slice(&digits[usize::from(layer < 10)..]);
        self.bytes.extend_from_slice(END);
    }

    fn point(&mut self, layer: u8, at: Point, angle: Option<f64>) {
        self.entity("POINT", layer);
        self.at(10, at);
        if let Some(degrees) = angle {
            self.number(50, degrees);
        }
    }

    fn line(&mut self, layer: u8, from: Point, to: Point) {
        self.entity("LINE", layer);
        self.at(10, from);
        self.at(11, to);
    }

    fn words(&mut self, layer: u8, at: Point, words: &str) {
        self.entity("TEXT", layer);
        self.at(10, at);
        self.number(40, LETTERS);
        self.pair(1, words);
    }

    fn polyline(&mut self, layer: u8, points: &[Point], closed: bool) {
        self.entity("POLYLINE", layer);
        self.pair(66, "1");
        self.at(10, Point::ZERO);
        self.pair(70, if closed { "1" } else { "0" });
        for point in points {
            self.entity("VERTEX", layer);
            self.at(10, *point);
        }
        self.entity("SEQEND", layer);
    }

    /// Each stretch of a path.
    fn lines(&mut self, layer: u8, path: &BezPath, closed: bool) {
        let mut stretch: Vec<Point> = Vec::new();
        let mut flat = BezPath::new();
        kurbo::flatten(path, FLAT, |el| flat.push(el));
        for element in flat.elements().iter().chain([&PathEl::MoveTo(Point::ZERO)]) {
            match element {
                PathEl::MoveTo(p) => {
                    let is_ring = closed || (stretch.len() > 3 && stretch.first() == stretch.last());
                    if is_ring && stretch.len() > 1 && stretch.first() == stretch.last() {
                        stretch.pop();
                    }
                    if stretch.len() > 1 {
                        self.polyline(layer, &stretch, is_ring);
                    }
                    stretch = vec![*p];
                }
                PathEl::LineTo(p) => stretch.push(*p),
                PathEl::ClosePath => stretch.extend(stretch.first().copied()),
                _ => {}
            }
        }
    }
}
