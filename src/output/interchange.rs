//! Pieces as they are handed to other programs: every kind of line by itself, so that a file can say which is which.
//!
//! `dxf` writes them as blocks, [`interchange_drawing`] makes a drawing of them whose groups are named, for `svg`.

use kurbo::{Affine, BezPath, Point, Rect, Shape, Vec2};

use super::drawing::{Align, Item, Pen, Picture, Text};
use super::pieces::{fold_of, lines, outline, signs_of, straight};
use super::words_of;
use crate::compute::{FramePlan, Model};
use crate::document::MarkKind;
use crate::finish::{Finished, FinishedPiece, Symmetry, cut_words, is_block, letters, outline_words, pair_words};

/// Free room between pieces and around them, mm.
const ROOM: f64 = 20.0;
/// Width of lines, mm.
const PEN: f64 = 0.35;
/// Em of labels, mm.
const LABEL: f64 = 5.0;

/// A piece in one size, its lines apart by what they are. Its own frame: mm, x right, y down.
#[derive(Clone, Debug, PartialEq)]
pub struct OpenPiece {
    /// Its name.
    pub name: String,
    /// Its letter; may be empty.
    pub letter: String,
    /// Its size; empty where there are no sizes.
    pub size: String,
    /// The line that is cut, closed; a piece of which no allowance is told has its stitch line here.
    pub boundary: BezPath,
    /// The stitch line, closed, where it is another line.
    pub stitch: Option<BezPath>,
    /// Strokes of notches, each from the boundary inwards.
    pub notches: Vec<[Point; 2]>,
    /// The grain line, its head first.
    pub grain: Option<[Point; 2]>,
    /// Both ends of the edge that lies on a fold of the cloth: the boundary is a half.
    pub fold: Option<[Point; 2]>,
    /// Lines inside that are drawn: style lines, legs of darts, pleats, places of other pieces, lines to lengthen at.
    pub inner: Vec<BezPath>,
    /// Lines inside that are cut: slits.
    pub slits: Vec<BezPath>,
    /// Holes that are punched.
    pub holes: Vec<Point>,
    /// Signs of buttons, buttonholes, circles, ends of zips.
    pub marks: Vec<BezPath>,
    /// Words at their places.
    pub words: Vec<(Point, String)>,
    /// From which material, how many, and in words.
    pub cuts: Vec<OpenCut>,
    /// Whether it hangs on something that is not true: to be seen, not to be cut.
    pub faded: bool,
}

/// How a piece is cut from one material.
#[derive(Clone, Debug, PartialEq)]
pub struct OpenCut {
    /// The material; empty: not said.
    pub material: String,
    /// How many as drawn, and how many mirrored.
    pub counts: [u32; 2],
    /// The words of sheets and lists.
    pub words: String,
}

/// All pieces of a model in one case, and the names of those that cannot be drawn there.
pub fn open_pieces(model: &Model, finished: &Finished, case: usize) -> (Vec<OpenPiece>, Vec<String>) {
    let (mut pieces, mut missing) = (Vec::new(), Vec::new());
    let (letters, size) = (letters(model), model.plan.cases.list.get(case).map_or("", |c| c.address.as_str()));
    let frames = model.plan.frames().iter().enumerate();
    for (i, frame) in frames.filter(|(i, f)| f.is_piece && model.plan.has_frame(*i) && !is_block(model, &f.name)) {
        let made = finished.cases.get(case).and_then(|c| c.get(i)?.as_deref());
        let Some(drawn) = outline(model, case, frame) else {
            missing.push(frame.name.to_string());
            continue;
        };
        let mut piece = OpenPiece {
            name: frame.name.to_string(),
            letter: letters.get(i).cloned().unwrap_or_default(),
            size: size.to_owned(),
            boundary: drawn,
            stitch: None,
            notches: Vec::new(),
            grain: None,
            fold: fold_of(model, case, frame).map(|(a, b)| [a, b]),
            inner: lines(model, case, frame),
            slits: Vec::new(),
            holes: Vec::new(),
            marks: Vec::new(),
            words: Vec::new(),
            cuts: Vec::new(),
            faded: frame.edges.iter().any(|e| model.is_untrue(case, *e)),
        };
        if let Some(made) = made {
            add_finished(&mut piece, (model, case), frame, made);
        }
        pieces.push(piece);
    }
    (pieces, missing)
}

fn add_finished(piece: &mut OpenPiece, (model, case): (&Model, usize), frame: &FramePlan, made: &FinishedPiece) {
    let symmetry = Symmetry::of(&made.stitch, 0.0);
    match made.cuts.first().and_then(|c| c.outline.clone()) {
        Some(cut) => {
            piece.boundary = cut;
            piece.stitch = Some(made.stitch.clone());
        }
        None => piece.boundary.clone_from(&made.stitch),
    }
    piece.notches.extend(made.notches.iter().flat_map(|n| n.strokes.iter().copied()));
    piece.grain = made.cuts.iter().find_map(|c| c.grain);
    piece.inner.extend(made.pleats.iter().chain(&made.places).filter(|p| !p.elements().is_empty()).cloned());
    for line in made.lines.iter().filter(|l| !l.path.elements().is_empty()) {
        if line.slit { &mut piece.slits } else { &mut piece.inner }.push(line.path.clone());
    }
    for mark in &made.marks {
        match mark.kind {
            MarkKind::DrillHole => piece.holes.push(mark.at),
            _ => piece.marks.extend(signs_of(mark)),
        }
        let words = frame.finishing.marks.get(mark.place).map_or_else(String::new, |m| words_of(model, case, &m.text));
        if mark.number <= 1 && !words.is_empty() {
            piece.words.push((mark.at, words));
        }
    }
    for cut in &frame.finishing.cuts {
        let pairs = pair_words(cut, symmetry).is_some();
        let counts = if pairs { [cut.count / 2, cut.count / 2] } else { [cut.count, 0] };
        let (material, mut words) = (cut.material.to_string(), cut_words(cut, symmetry));
        // Its boundary is that of the first cut: what is cut otherwise must say so.
        let outline = outline_words(cut.outline);
        if !outline.is_empty() {
            words.push_str(&format!(", {outline}"));
        }
        piece.cuts.push(OpenCut { material, counts, words });
    }
}

/// A drawing of pieces for other programs, in rows, mm: a group for each size, in it one for each piece, in it one for each kind of
/// line: cut line, stitch line, notches, grain, fold, inner lines, slits, marks, labels.
pub fn interchange_drawing(pieces: &[OpenPiece]) -> Picture {
    let mut sizes: Vec<&str> = Vec::new();
    for piece in pieces {
        if !sizes.contains(&piece.size.as_str()) {
            sizes.push(&piece.size);
        }
    }
    let (mut items, mut far) = (Vec::new(), Point::new(ROOM, ROOM));
    for size in sizes {
        let (mut own, mut at, mut lowest) = (Vec::new(), Point::new(ROOM, far.y), far.y);
        for piece in pieces.iter().filter(|p| p.size == size) {
            let room = room_of(piece);
            let name =
                if piece.letter.is_empty() { piece.name.clone() } else { format!("{} {}", piece.letter, piece.name) };
            own.push(Item::Group { layer: Some(name), items: groups(piece, at - room.origin()) });
            lowest = lowest.max(at.y + room.height());
            at.x += room.width() + ROOM;
            far.x = far.x.max(at.x);
        }
        let layer = if size.is_empty() { "all sizes".to_owned() } else { format!("size {size}") };
        items.push(Item::Group { layer: Some(layer), items: own });
        far.y = lowest + ROOM;
    }
    Picture { width: far.x.ceil(), height: far.y.ceil(), items }
}

/// The box around all lines of a piece.
fn room_of(piece: &OpenPiece) -> Rect {
    let all = piece.stitch.iter().chain(&piece.inner).chain(&piece.slits).chain(&piece.marks);
    let drawn = all.filter(|l| l.segments().next().is_some()).map(|l| l.bounding_box());
    drawn.fold(piece.boundary.bounding_box(), |room, own| room.union(own))
}

fn groups(piece: &OpenPiece, by: Vec2) -> Vec<Item> {
    let shift = Affine::translate(by);
    let stroke = |path: &BezPath| Item::Stroke { path: shift * path.clone(), pen: Pen::solid(PEN) };
    let stroked = |paths: &[BezPath]| paths.iter().map(stroke).collect::<Vec<_>>();
    let pairs = |pairs: &[[Point; 2]]| pairs.iter().map(|[a, b]| stroke(&straight(*a, *b))).collect::<Vec<_>>();
    let holes =
        piece.holes.iter().map(|at| stroke(&kurbo::Circle::new(*at, 1.0).to_path(crate::base::tolerance::CURVE)));
    let mut labels: Vec<Item> = Vec::new();
    let middle = piece.boundary.bounding_box().center();
    for (i, words) in label_lines(piece).into_iter().enumerate() {
        let at = shift * (middle + Vec2::new(0.0, 1.3 * LABEL * i as f64));
        labels.push(Item::Text(Text { align: Align::Middle, ..Text::new(words, at, LABEL) }));
    }
    labels.extend(piece.words.iter().map(|(at, words)| Item::Text(Text::new(words, shift * *at, LABEL))));
    let kinds: [(&str, Vec<Item>); 9] = [
        ("cut line", vec![stroke(&piece.boundary)]),
        ("stitch line", piece.stitch.iter().map(stroke).collect()),
        ("notches", pairs(&piece.notches)),
        ("grain", piece.grain.iter().map(|[head, tail]| stroke(&straight(*tail, *head))).collect()),
        ("fold", pairs(piece.fold.as_slice())),
        ("inner lines", stroked(&piece.inner)),
        ("slits", stroked(&piece.slits)),
        ("marks", stroked(&piece.marks).into_iter().chain(holes).collect()),
        ("labels", labels),
    ];
    let filled = kinds.into_iter().filter(|(_, items)| !items.is_empty());
    filled.map(|(kind, items)| Item::Group { layer: Some(kind.to_owned()), items }).collect()
}

/// What a piece says of itself.
fn label_lines(piece: &OpenPiece) -> Vec<String> {
    let name = if piece.letter.is_empty() { piece.name.clone() } else { format!("{} · {}", piece.letter, piece.name) };
    let size = if piece.size.is_empty() { String::new() } else { format!("size {}", piece.size) };
    let cuts = piece.cuts.iter().map(|c| c.words.clone());
    let only_seen = if piece.faded { "not true: not to be cut" } else { "" };
    [name, size].into_iter().chain(cuts).chain([only_seen.to_owned()]).filter(|l| !l.is_empty()).collect()
}
