//! A piece in the sizes of one file, laid over each other, with the labels that tell them apart.

use kurbo::{Affine, BezPath, ParamCurve, ParamCurveArclen, ParamCurveNearest, Point, Rect, Shape, Size, Vec2};

use super::SheetPiece;
use super::drawing::{Align, Ink, Item, Pen, Text};
use super::font;
use super::lettering::{Label, Letters, label, over, words_boxes};
use super::wide::{SheetError, extent};

/// Where lines are this far apart a label has room on each of them, mm.
const LABEL_GAP: f64 = 2.5;
/// Neighbours closer than this run together, mm (case C103 of the trade's cases: 0.8 mm does, 2.5 mm does not).
const CROWDED: f64 = 1.5;
/// … if they do so over more than this part of an edge.
const CROWDED_PART: f64 = 1.0 / 3.0;
/// Lines closer than this are one line, mm.
const SAME: f64 = 0.05;
/// Em of labels at lines, mm.
const LABEL: f64 = 4.0;
/// Lines so far apart have labels that can be read at arm's length, mm.
const READ_GAP: f64 = 4.0;
/// Distance of labels in a fan, mm.
const FAN: f64 = 3.6;
/// Length of its leaders, mm.
const LEADER: f64 = 14.0;
/// Accuracy of lengths and nearest points, mm.
const ACCURACY: f64 = 0.01;
/// Places at which distances along an edge are looked at.
const LOOKS: usize = 24;

/// A piece in several sizes, each moved so that the top left corner of all of them is the origin.
pub struct Nest {
    pub name: String,
    /// Sizes in the order of the file.
    pub pieces: Vec<SheetPiece>,
    /// Width and height of all, the label too.
    pub room: Size,
    /// Its label, inside or beside it.
    pub label: Option<Label>,
}

impl Nest {
    /// Lays the sizes of each piece over each other.
    pub fn all(pieces: &[SheetPiece]) -> Result<Vec<Self>, SheetError> {
        Self::all_with(pieces, Letters::of_paper(), &|_| Size::new(f64::INFINITY, f64::INFINITY))
    }

    /// The same, with labels of other letters. `most` says of a piece's room without its label how large it may become with it, where a
    /// place for the label can be found so.
    pub fn all_with(
        pieces: &[SheetPiece],
        letters: Letters,
        most: &dyn Fn(Size) -> Size,
    ) -> Result<Vec<Self>, SheetError> {
        let mut out: Vec<Self> = Vec::new();
        for piece in pieces {
            extent(piece)?;
            let moved = shifted(piece, piece.stack);
            match out.iter_mut().find(|n| n.name == piece.name) {
                Some(nest) => nest.pieces.push(moved),
                None => {
                    let (name, room) = (piece.name.clone(), Size::ZERO);
                    out.push(Self { name, pieces: vec![moved], room, label: None });
                }
            }
        }
        for nest in &mut out {
            let (own, all) = nest.extent(letters)?;
            // Found where the pieces lie now; it moves with them.
            let found = label(&own, all, most(all.size()), letters);
            nest.lie(all, found);
        }
        Ok(out)
    }

    /// The same with its label over its lines instead of beside them, so that it takes no more room than its lines do; none
    /// where those are smaller than the label.
    pub fn with_label_over(&self, letters: Letters) -> Result<Option<Self>, SheetError> {
        let Self { name, pieces, .. } = self;
        let mut out = Self { name: name.clone(), pieces: pieces.clone(), room: Size::ZERO, label: None };
        let (own, all) = out.extent(letters)?;
        let found = over(&own, all, letters);
        if found.is_none() {
            return Ok(None);
        }
        out.lie(all, found);
        Ok(Some(out))
    }

    /// Its pieces, and the box around all that is drawn of them but the label.
    fn extent(&self, letters: Letters) -> Result<(Vec<&SheetPiece>, Rect), SheetError> {
        let own: Vec<&SheetPiece> = self.pieces.iter().collect();
        let mut all: Option<Rect> = None;
        for piece in &own {
            let room = extent(piece)?;
            all = Some(all.map_or(room, |a| a.union(room)));
        }
        let words = words_boxes(&own, letters);
        let all = words.iter().fold(all.unwrap_or(Rect::ZERO), |all, words| all.union(words.bounding_box()));
        Ok((own, all))
    }

    /// Moves its pieces and their label, which is found where they lie, to the origin.
    fn lie(&mut self, all: Rect, label: Option<Label>) {
        let whole = label.iter().filter(|l| l.is_beside()).fold(all, |all, label| all.union(label.room()));
        let by = -whole.origin().to_vec2();
        self.label = label.map(|l| l.moved(by));
        self.pieces = self.pieces.iter().map(|p| shifted(p, by)).collect();
        self.room = whole.size();
    }

    /// Edges, by their place in the outline, at which neighbouring sizes run together.
    pub fn crowded(&self) -> Vec<usize> {
        let edges = self.pieces.iter().map(|p| p.edges.len()).min().unwrap_or(0);
        (0..edges).filter(|e| self.pieces.windows(2).any(|p| run_together(&p[0].edges[*e], &p[1].edges[*e]))).collect()
    }

    /// The size labels: for each size those at its lines.
    pub fn labels(&self) -> Vec<Vec<Item>> {
        let many = self.pieces.len();
        if many < 2 {
            return vec![Vec::new(); many];
        }
        let edges = self.pieces.iter().map(|p| p.edges.len()).min().unwrap_or(0);
        let mut best: Vec<(f64, usize, f64)> = Vec::new();
        for edge in 0..edges {
            let mut own: Option<(f64, f64)> = None;
            for at in [0.5, 0.35, 0.65, 0.2, 0.8] {
                let places: Vec<Point> = self.pieces.iter().filter_map(|p| place(&p.edges[edge], at)).collect();
                if places.len() < many {
                    continue;
                }
                // Each line against all the others there: a label must not lie on a neighbour either.
                let gap = (0..many)
                    .flat_map(|i| (0..many).filter(move |k| *k != i).map(move |k| (i, k)))
                    .map(|(i, k)| distance(&self.pieces[k].edges[edge], places[i]))
                    .fold(f64::INFINITY, f64::min);
                if own.is_none_or(|(most, _)| gap > most) {
                    own = Some((gap, at));
                }
            }
            best.extend(own.map(|(gap, at)| (gap, edge, at)));
        }
        let Some(&(most, edge, at)) = best.iter().reduce(|a, b| if b.0 > a.0 { b } else { a }) else {
            return vec![Vec::new(); many];
        };
        if most < LABEL_GAP {
            return self.fan(edge, at);
        }
        // On every edge where they can be read, so that a page with a part of the piece has them too.
        let mut out = self.on_lines(edge, at, most);
        for (gap, edge, at) in best.into_iter().filter(|b| b.1 != edge && b.0 >= READ_GAP) {
            for (all, more) in out.iter_mut().zip(self.on_lines(edge, at, gap)) {
                all.extend(more);
            }
        }
        out
    }

    fn on_lines(&self, edge: usize, at: f64, gap: f64) -> Vec<Vec<Item>> {
        let size = LABEL.min(0.75 * gap);
        let label = |piece: &SheetPiece| {
            let (at, way) = place(&piece.edges[edge], at).zip(heading(&piece.edges[edge], at))?;
            // Read from the left or from below.
            let mut angle = crate::base::Scalar::atan2(way.y, way.x);
            if !(-std::f64::consts::FRAC_PI_2..std::f64::consts::FRAC_PI_2).contains(&angle) {
                angle += std::f64::consts::PI;
            }
            let (sin, cos) = (crate::base::Scalar::sin(angle), crate::base::Scalar::cos(angle));
            let (along, up) = (Vec2::new(cos, sin), Vec2::new(sin, -cos));
            let (half, high) = (font::text_width(&piece.size, size) / 2.0, font::cap_height(size));
            // Above the line, or below where it would stand out of the room of the piece and be cut off.
            let feet = [at + up * 0.5, at - up * (0.5 + high)];
            let stays = |foot: &Point| {
                let corners = [
                    *foot - along * half,
                    *foot + along * half,
                    *foot - along * half + up * size,
                    *foot + along * half + up * size,
                ];
                corners.iter().all(|c| c.x >= 0.0 && c.y >= 0.0 && c.x <= self.room.width && c.y <= self.room.height)
            };
            let foot = feet.into_iter().find(stays)?;
            Some(Item::Text(Text { angle, align: Align::Middle, ..Text::new(&piece.size, foot, size) }))
        };
        self.pieces.iter().map(|p| label(p).into_iter().collect()).collect()
    }

    /// Labels beside each other inside the piece, each with a line to its size.
    fn fan(&self, edge: usize, at: f64) -> Vec<Vec<Item>> {
        let many = self.pieces.len();
        let Some((middle, way)) =
            place(&self.pieces[many / 2].edges[edge], at).zip(heading(&self.pieces[many / 2].edges[edge], at))
        else {
            return vec![Vec::new(); many];
        };
        let inside = self.pieces[many / 2].outline.bounding_box().center() - middle;
        let side = Vec2::new(-way.y, way.x);
        let side = if side.dot(inside) >= 0.0 { side } else { -side };
        let long = length(&self.pieces[0].edges[edge]).max(ACCURACY);
        let item = |(i, piece): (usize, &SheetPiece)| {
            let off = (i as f64 - (many as f64 - 1.0) / 2.0) * FAN;
            let from = place(&piece.edges[edge], (at + off / long).clamp(0.02, 0.98))?;
            let to = middle + side * LEADER + way * off;
            let mut line = BezPath::new();
            line.move_to(from);
            line.line_to(to);
            let pen = Pen { ink: Ink::grey(90), ..Pen::solid(0.13) };
            let dot = kurbo::Circle::new(from, 0.4).to_path(ACCURACY);
            let down = Vec2::new(0.0, font::cap_height(LABEL) / 2.0);
            let (align, out) = if side.x >= 0.0 { (Align::Start, 0.8) } else { (Align::End, -0.8) };
            let text = Text { align, ..Text::new(&piece.size, to + down + Vec2::new(out, 0.0), LABEL) };
            Some(vec![Item::Stroke { path: line, pen }, Item::Fill { path: dot, ink: Ink::BLACK }, Item::Text(text)])
        };
        self.pieces.iter().enumerate().map(|p| item(p).unwrap_or_default()).collect()
    }
}

/// A piece moved along.
pub fn shifted(piece: &SheetPiece, by: Vec2) -> SheetPiece {
    let by = Affine::translate(by);
    SheetPiece {
        name: piece.name.clone(),
        letter: piece.letter.clone(),
        size: piece.size.clone(),
        outline: by * piece.outline.clone(),
        edges: piece.edges.iter().map(|e| by * e.clone()).collect(),
        lines: piece.lines.iter().map(|l| by * l.clone()).collect(),
        stitch: piece.stitch.as_ref().map(|s| by * s.clone()),
        notes: piece.notes.clone(),
        about: piece.about.clone(),
        words: piece.words.iter().map(|(at, angle, text)| (by * *at, *angle, text.clone())).collect(),
        stack: Vec2::ZERO,
        faded: piece.faded,
        label_at: piece.label_at.map(|p| by * p),
    }
}

/// Whether two lines lie closer than the limit over more than a part of the first. Where they are one line they do not.
fn run_together(one: &BezPath, other: &BezPath) -> bool {
    let close = (0..LOOKS)
        .filter_map(|i| place(one, (i as f64 + 0.5) / LOOKS as f64))
        .filter(|p| (SAME..CROWDED).contains(&distance(other, *p)))
        .count();
    close as f64 > CROWDED_PART * LOOKS as f64
}

fn length(path: &BezPath) -> f64 {
    path.segments().map(|s| s.arclen(ACCURACY)).sum()
}

fn distance(path: &BezPath, at: Point) -> f64 {
    path.segments().map(|s| s.nearest(at, ACCURACY).distance_sq).fold(f64::INFINITY, f64::min).sqrt()
}

/// The point at a part of a line's length.
fn place(path: &BezPath, part: f64) -> Option<Point> {
    let mut left = length(path) * part;
    let mut last = None;
    for segment in path.segments() {
        let own = segment.arclen(ACCURACY);
        if left <= own {
            return Some(segment.eval(segment.inv_arclen(left, ACCURACY)));
        }
        left -= own;
        last = Some(segment.end());
    }
    last
}

/// The direction at a part of a line's length, of length 1.
fn heading(path: &BezPath, part: f64) -> Option<Vec2> {
    let (a, b) = (place(path, (part - 0.01).max(0.0))?, place(path, (part + 0.01).min(1.0))?);
    let way = b - a;
    (way.hypot() > 0.0).then(|| way / way.hypot())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn line(y: f64) -> BezPath {
        let mut path = BezPath::new();
        path.move_to((0.0, y));
        path.line_to((100.0, y));
        path
    }

    #[test]
    fn lines_run_together_as_the_case_says() {
        // Case C103: a neckline whose sizes step by 0.8 mm runs together, one that steps by 2.5 mm does not.
        assert!(run_together(&line(0.0), &line(0.8)));
        assert!(!run_together(&line(0.0), &line(2.5)));
        assert!(!run_together(&line(0.0), &line(0.0)), "one line is no crowd");
    }
}
