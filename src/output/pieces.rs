//! The pieces of a model as they come on a sheet.

use kurbo::{BezPath, PathEl, Vec2};

use super::SheetPiece;
use crate::compute::{FramePlan, Item, Model};
use crate::document::Draft;

/// All pieces of a draft in one case, and the names of those that cannot be drawn there. Pieces that hang on something that
/// is not true come faded: they are to be seen, not to be cut.
pub fn sheet_pieces(draft: &Draft, model: &Model, case: usize) -> (Vec<SheetPiece>, Vec<String>) {
    let mut pieces = Vec::new();
    let mut missing = Vec::new();
    let size = model.plan.cases.list.get(case).map_or("", |c| c.address.as_str());
    for (frame, piece) in model.plan.frames.iter().zip(&draft.pieces).filter(|(f, _)| f.is_piece) {
        match outline(model, case, frame) {
            None => missing.push(piece.name.clone()),
            Some(outline) => pieces.push(SheetPiece {
                name: frame.name.to_string(),
                size: size.to_owned(),
                outline,
                edges: frame.edges.iter().filter_map(|e| Some(model.item(case, *e)?.edge()?.curve.to_path())).collect(),
                lines: lines(model, case, frame),
                stack: stack(draft, model, case, frame),
                faded: frame.edges.iter().any(|e| model.is_untrue(case, *e)),
                label_at: None,
            }),
        }
    }
    (pieces, missing)
}

/// The outline of a frame in one case, as one closed ring; none where an edge has no shape or the ring does not close.
pub fn outline(model: &Model, case: usize, frame: &FramePlan) -> Option<BezPath> {
    let mut ring = BezPath::new();
    let mut start = None;
    let mut end: Option<kurbo::Point> = None;
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
        Item::Mouth(m) => {
            let mut legs = BezPath::new();
            legs.move_to(m.first_foot.value());
            legs.line_to(m.tip?.value());
            legs.line_to(m.second_foot.value());
            Some(legs)
        }
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
    let down = piece.stack.get(1).map_or(across, place);
    Vec2::new(across.map_or(0.0, |p| -p.x), down.map_or(0.0, |p| -p.y))
}
