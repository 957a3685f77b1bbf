//! The pieces of a model as they come on a sheet.

use kurbo::{BezPath, Circle, PathEl, Point, Shape, Vec2};

use super::notes::{about, cut_notes};
use super::{SheetPiece, words_of};
use crate::compute::{FramePlan, Item, Model};
use crate::document::{Draft, MarkKind};
use crate::finish::{Finished, FinishedPiece, PlacedMark, doubled, letters, unfolded};
use crate::texts::t;

/// All pieces of a draft in one case, and the names of those that cannot be drawn there. Pieces that hang on something that
/// is not true come faded: they are to be seen, not to be cut. `whole`: those that are cut on the fold are unfolded.
pub fn sheet_pieces(
    draft: &Draft,
    model: &Model,
    finished: &Finished,
    case: usize,
    whole: bool,
) -> (Vec<SheetPiece>, Vec<String>) {
    let mut pieces = Vec::new();
    let mut missing = Vec::new();
    let size = model.plan.cases.list.get(case).map_or("", |c| c.address.as_str());
    let (letters, about) = (letters(model), about(draft));
    for (i, (frame, piece)) in model
        .plan
        .frames()
        .iter()
        .zip(&draft.pieces)
        .enumerate()
        .filter(|(i, (f, _))| f.is_piece && model.plan.has_frame(*i))
    {
        let made = finished.cases.get(case).and_then(|c| c.get(i)?.as_deref());
        let Some(stitch) = outline(model, case, frame) else {
            missing.push(piece.name.clone());
            continue;
        };
        let mut sheet = SheetPiece {
            name: frame.name.to_string(),
            letter: letters.get(i).cloned().unwrap_or_default(),
            size: size.to_owned(),
            outline: stitch,
            edges: frame.edges.iter().filter_map(|e| Some(model.item(case, *e)?.edge()?.curve.to_path())).collect(),
            lines: lines(model, case, frame),
            stitch: None,
            notes: Vec::new(),
            about: about.clone(),
            words: Vec::new(),
            stack: stack(draft, model, case, frame),
            faded: frame.edges.iter().any(|e| model.is_untrue(case, *e)),
            label_at: made.and_then(|m| m.label),
        };
        if let Some(made) = made {
            let fold = fold_of(model, case, frame).filter(|_| whole);
            sheet.notes = cut_notes((draft, model), case, &frame.finishing, made, fold);
            finished_lines((model, case), frame, made, &mut sheet);
            match fold {
                Some(fold) => unfold(&mut sheet, fold),
                None => fold_signs(frame, made, &mut sheet),
            }
        }
        pieces.push(sheet);
    }
    (pieces, missing)
}

/// Both ends of the edge of a piece that lies on a fold of the cloth.
pub fn fold_of(model: &Model, case: usize, frame: &FramePlan) -> Option<(Point, Point)> {
    let edge = frame.finishing.cuts.iter().find_map(|c| c.on_fold)?;
    let shape = model.item(case, *frame.edges.get(edge)?)?.edge()?;
    Some((shape.curve.start().value(), shape.curve.end().value()))
}

/// A piece that is cut on the fold, drawn whole.
fn unfold(sheet: &mut SheetPiece, fold: (Point, Point)) {
    sheet.outline = unfolded(&sheet.outline, fold);
    sheet.stitch = sheet.stitch.as_ref().map(|s| unfolded(s, fold));
    doubled(&mut sheet.lines, fold);
}

/// What finishing adds to a piece on a sheet: the cut line around the stitch line, notches, marks, grain, words.
fn finished_lines((model, case): (&Model, usize), frame: &FramePlan, made: &FinishedPiece, sheet: &mut SheetPiece) {
    let cut = made.cuts.first();
    match cut.and_then(|c| c.outline.clone()) {
        Some(outline) => {
            sheet.stitch = Some(made.stitch.clone());
            sheet.outline = outline;
            if let Some(cut) = cut.filter(|c| c.edges.iter().all(|e| !e.elements().is_empty())) {
                sheet.edges.clone_from(&cut.edges);
            }
        }
        None => sheet.outline.clone_from(&made.stitch),
    }
    sheet.lines.extend(signs(made));
    let finishing = &frame.finishing;
    for line in made.lines.iter().filter(|l| !l.slit) {
        let ends = line.path.elements().iter().filter_map(PathEl::end_point).collect::<Vec<_>>();
        if let [a, .., b] = ends.as_slice() {
            sheet.words.push(along(*a, *b, 0.25, &t!("lengthen-here")));
        }
    }
    for mark in made.marks.iter().filter(|m| m.number <= 1) {
        let text = finishing.marks.get(mark.place).map_or_else(String::new, |m| words_of(model, case, &m.text));
        if !text.is_empty() {
            sheet.words.push((mark.at + Vec2::new(0.0, FOLD_WORDS + mark.size / 2.0), 0.0, text));
        }
    }
}

/// The sign of an edge that lies on the fold of the cloth and is not cut: a bracket inside the piece whose ends point at it, with words.
fn fold_signs(frame: &FramePlan, made: &FinishedPiece, sheet: &mut SheetPiece) {
    let Some(edge) = frame.finishing.cuts.iter().find_map(|c| c.on_fold) else { return };
    let Some(path) = sheet.edges.get(edge) else { return };
    let ends = [path.elements().first(), path.elements().last()].map(|e| e.and_then(PathEl::end_point));
    let [Some(a), Some(b)] = ends else { return };
    let way = b - a;
    let long = way.hypot();
    if long < 2.0 * FOLD_DEPTH {
        return;
    }
    let inside = made.stitch.bounding_box().center() - a.midpoint(b);
    let square = Vec2::new(-way.y, way.x) / long;
    let square = if square.dot(inside) < 0.0 { -square } else { square };
    let feet = [0.15, 0.85].map(|share| a.lerp(b, share));
    let corners = feet.map(|foot| foot + square * FOLD_DEPTH);
    sheet.lines.push(straight(corners[0], corners[1]));
    for (corner, foot) in corners.into_iter().zip(feet) {
        sheet.lines.push(straight(corner, foot));
        let back = square * FOLD_HEAD;
        for turn in [GRAIN_OPEN, -GRAIN_OPEN] {
            sheet.lines.push(straight(foot, foot + turned(back, turn)));
        }
    }
    let text = if long < FOLD_LONG { t!("fold") } else { t!("on-fold-of-cloth") };
    let (at, angle, text) = along(corners[0], corners[1], 0.5, &text);
    // Words stand on the inner side of the bracket: an upright line is read from the other end, below a level one they hang.
    let up = Vec2::new(libm::sin(angle), -libm::cos(angle));
    let words = match up.dot(square) {
        on if on >= 0.0 => (at, angle, text),
        _ if libm::cos(angle).abs() < 0.5 => (at - up * (2.0 * WORDS_OFF), angle + std::f64::consts::PI, text),
        _ => (at - up * (WORDS_OFF + FOLD_WORDS), angle, text),
    };
    sheet.words.push(words);
}

/// Notches, marks, grain line and lines to lengthen at, as they are drawn.
pub fn signs(made: &FinishedPiece) -> Vec<BezPath> {
    let mut out = Vec::new();
    out.extend(made.notches.iter().flat_map(|n| &n.strokes).map(|s| straight(s[0], s[1])));
    out.extend(made.pleats.iter().cloned());
    out.extend(made.places.iter().filter(|p| !p.elements().is_empty()).cloned());
    out.extend(made.lines.iter().filter(|l| !l.path.elements().is_empty()).map(|l| l.path.clone()));
    if let Some((both_ways, [head, tail])) = made.cuts.iter().find_map(|c| Some((c.both_ways, c.grain?))) {
        out.push(straight(tail, head));
        // One head where all tops must point one way, two where it may be turned.
        let ends = [(head, tail), (tail, head)];
        for (at, from) in ends.into_iter().take(if both_ways { 2 } else { 1 }) {
            let way = (from - at).normalize() * GRAIN_HEAD;
            for turn in [GRAIN_OPEN, -GRAIN_OPEN] {
                out.push(straight(at, at + turned(way, turn)));
            }
        }
    }
    out.extend(made.marks.iter().flat_map(signs_of));
    out
}

/// A straight line.
pub(super) fn straight(a: Point, b: Point) -> BezPath {
    BezPath::from_iter([PathEl::MoveTo(a), PathEl::LineTo(b)])
}

/// A mark, as it is drawn.
pub(super) fn signs_of(mark: &PlacedMark) -> Vec<BezPath> {
    let along = Vec2::new(libm::cos(mark.heading), libm::sin(mark.heading));
    let across = Vec2::new(-along.y, along.x);
    let size = if mark.size > 0.0 { mark.size } else { MARK_SIZE };
    let cross = |half: f64| {
        [
            straight(mark.at - along * half, mark.at + along * half),
            straight(mark.at - across * half, mark.at + across * half),
        ]
    };
    let ring = |radius: f64| Circle::new(mark.at, radius).to_path(crate::base::tolerance::CURVE);
    let mut out = Vec::new();
    match mark.kind {
        MarkKind::Circle => out.push(ring(size / 2.0)),
        MarkKind::DrillHole => {
            out.push(ring(DRILL / 2.0));
            out.extend(cross(MARK_SIZE / 2.0));
        }
        MarkKind::Button => {
            out.push(ring(size / 2.0));
            out.extend(cross(size / 2.0));
        }
        // A row runs along the edge; buttonholes lie across it unless they stand alone.
        MarkKind::Buttonhole => {
            let half = if mark.number > 0 { across } else { along } * (size / 2.0);
            out.push(straight(mark.at - half, mark.at + half));
            let bar = if mark.number > 0 { along } else { across } * (DRILL / 2.0);
            out.push(straight(mark.at - half - bar, mark.at - half + bar));
            out.push(straight(mark.at + half - bar, mark.at + half + bar));
        }
        MarkKind::ZipEnd | MarkKind::Place | MarkKind::Text => out.extend(cross(MARK_SIZE / 2.0)),
    }
    out
}

/// Words that read along a line, a little above it, upright or from below.
fn along(a: Point, b: Point, share: f64, text: &str) -> (Point, f64, String) {
    let way = b - a;
    let turned_over =
        way.x < -crate::base::tolerance::EQUAL || way.x.abs() <= crate::base::tolerance::EQUAL && way.y > 0.0;
    let way = if turned_over { -way } else { way };
    let angle = libm::atan2(way.y, way.x);
    let up = Vec2::new(libm::sin(angle), -libm::cos(angle));
    (a.lerp(b, share) + up * WORDS_OFF, angle, text.to_owned())
}

fn turned(v: Vec2, by: f64) -> Vec2 {
    let (sin, cos) = (libm::sin(by), libm::cos(by));
    Vec2::new(v.x * cos - v.y * sin, v.x * sin + v.y * cos)
}

/// How far words stand above their line, mm, and below it.
const WORDS_OFF: f64 = 1.2;
const FOLD_WORDS: f64 = 4.5;
/// How far inside the bracket of a fold lies, mm, the length of the strokes of its heads, and how long the edge must be for all its words.
const FOLD_DEPTH: f64 = 9.0;
const FOLD_HEAD: f64 = 4.0;
const FOLD_LONG: f64 = 150.0;
/// Length of the strokes of a grain line's head, mm, and their angle to it.
const GRAIN_HEAD: f64 = 8.0;
const GRAIN_OPEN: f64 = 0.4;
/// Size of a mark that tells none, mm.
const MARK_SIZE: f64 = 6.0;
/// Size of a drill hole, mm.
const DRILL: f64 = 2.0;

/// The outline of a frame in one case, as one closed ring; none where an edge has no shape or the ring does not close.
pub fn outline(model: &Model, case: usize, frame: &FramePlan) -> Option<BezPath> {
    let mut ring = BezPath::new();
    let mut start = None;
    let mut end: Option<Point> = None;
    for edge in &frame.edges {
        let shape = model.item(case, *edge)?.edge()?.clone();
        for element in shape.curve.to_path().elements() {
            match (*element, end) {
                (PathEl::MoveTo(p), None) => {
                    start = Some(p);
                    ring.move_to(p);
                }
                (PathEl::MoveTo(p), Some(end)) if end.distance(p) > crate::base::tolerance::ON_EDGE => return None,
                (PathEl::MoveTo(_), Some(_)) => {}
                (element, _) => ring.push(element),
            }
            end = element.end_point().or(end);
        }
    }
    if end?.distance(start?) > crate::base::tolerance::ON_EDGE {
        return None;
    }
    ring.close_path();
    Some(ring)
}

/// Inner lines and dart legs of a frame in one case.
pub fn lines(model: &Model, case: usize, frame: &FramePlan) -> Vec<BezPath> {
    let drawn = frame.lines.iter().filter_map(|l| Some(model.item(case, *l)?.edge()?.curve.to_path()));
    let darts = frame.mouths.iter().filter_map(|(mouth, _)| match model.item(case, *mouth)? {
        Item::Mouth(m) => m.legs(),
        _ => None,
    });
    drawn.chain(darts).collect()
}

/// By how much a piece is moved so that its sizes lie over each other where the draft says so.
pub fn stack(draft: &Draft, model: &Model, case: usize, frame: &FramePlan) -> Vec2 {
    let Some(piece) = draft.pieces.iter().find(|p| p.name == *frame.name).filter(|p| !p.stack.is_empty()) else {
        return Vec2::ZERO;
    };
    let place = |name: &String| {
        let i = piece.points.iter().position(|p| p.name == *name)?;
        model.item(case, *frame.points.get(i)?)?.point()
    };
    let across = piece.stack.first().and_then(place);
    // A name that is empty: that way the coordinates themselves.
    let down = piece.stack.get(1).map_or(across, place);
    Vec2::new(across.map_or(0.0, |p| -p.x), down.map_or(0.0, |p| -p.y))
}
