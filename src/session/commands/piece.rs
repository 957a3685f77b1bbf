//! Changing pieces and drawings: points, edges, the outline.

use std::sync::Arc;

use crate::document::{Draft, Edge, Inner, Part, Piece, Point, Segment};
use crate::language::nearest;
use crate::session::naming::check_free;
use crate::session::{EditError, qualify_for};
use crate::texts::say;

/// A change of a piece.
#[derive(Clone, Debug, PartialEq)]
pub enum PieceCommand {
    /// A point is added: piece or drawing, name, formula.
    AddPoint(String, String, String),
    /// An edge is added to the outline, straight through points that are there.
    AddEdge {
        /// The piece.
        piece: String,
        /// The edge's name.
        name: String,
        /// The point at which it starts.
        from: String,
        /// The points to which it goes, in order.
        to: Vec<String>,
    },
    /// A straight line is added inside a piece or drawing: frame, name, the points at which it starts and ends.
    AddLine(String, String, [String; 2]),
    /// The outline is closed by a straight edge: piece, name.
    Close(String, String),
    /// A straight segment becomes a curve, or a curve straight: piece, edge, segment, whether curved.
    Bend(String, String, usize, bool),
    /// A joint inside an edge is to be smooth, or not: piece, edge, point, whether.
    SmoothAt(String, String, String, bool),
    /// A joint inside an edge is made smooth: the handle of a curve there is turned so that it goes on as the line comes in (or comes in
    /// as it goes on, where only that side is a curve). Piece, edge, point, how far the handle stands from the point, as a literal.
    MakeSmooth(String, String, String, String),
    /// Its sizes are laid over each other at this point: both ways, across only, or down only.
    StackAt(String, String, [bool; 2]),
    /// Its sizes are laid over each other at a point, first the first one, or at the origin again: piece, whether.
    Stack(String, bool),
}

impl PieceCommand {
    pub(in crate::session) fn label(&self) -> String {
        match self {
            Self::AddPoint(frame, name, _) => say!("undo-add-point", frame, name),
            Self::AddEdge { piece, name, .. } => say!("undo-add-edge", piece, name),
            Self::AddLine(frame, name, _) => say!("undo-add-line", frame, name),
            Self::Close(piece, _) => say!("undo-close", piece),
            Self::Bend(piece, edge, _, true) => say!("undo-curve", piece, edge),
            Self::Bend(piece, edge, _, false) => say!("undo-straighten", piece, edge),
            Self::SmoothAt(piece, edge, ..) => say!("undo-joints", piece, edge),
            Self::MakeSmooth(piece, edge, point, _) => say!("undo-smooth", piece, edge, point),
            Self::StackAt(piece, ..) | Self::Stack(piece, _) => say!("undo-stack", piece),
        }
    }

    pub(in crate::session) fn apply(&self, draft: &mut Draft) -> Result<String, EditError> {
        match self {
            Self::AddPoint(frame, name, at) => {
                let part = Part::point(frame, name);
                check_free(draft, &part)?;
                let point = Point { name: name.clone(), at: at.clone(), ..Point::default() };
                if let Some(piece) = draft.pieces.iter_mut().find(|p| p.name == *frame) {
                    Arc::make_mut(piece).points.push(point);
                } else if let Some(drawing) = draft.drawings.iter_mut().find(|d| d.name == *frame) {
                    Arc::make_mut(drawing).points.push(point);
                } else {
                    return Err(gone(frame));
                }
                qualify_for(draft, &part);
                Ok(String::new())
            }
            Self::AddEdge { piece, name, from, to } => {
                let part = Part::edge(piece, name);
                check_free(draft, &part)?;
                add_edge(piece_of(draft, piece)?, name, from, to)?;
                qualify_for(draft, &part);
                Ok(String::new())
            }
            Self::AddLine(frame, name, [from, to]) => {
                let part = Part::Inner(frame.clone(), Inner::Line, name.clone());
                check_free(draft, &part)?;
                add_line(draft, frame, name, from, to)?;
                qualify_for(draft, &part);
                Ok(String::new())
            }
            Self::Close(piece, name) => {
                let part = Part::edge(piece, name);
                check_free(draft, &part)?;
                let own = piece_of(draft, piece)?;
                let (Some(first), Some(last)) = (own.edges.first(), own.edges.last()) else {
                    return Err(EditError::refused(say!("refused-nothing-to-close", piece)));
                };
                let (from, to) = (end_of(last).to_owned(), first.from.clone());
                if from == to {
                    return Err(EditError::refused(say!("refused-closed", piece, point = to)));
                }
                add_edge(own, name, &from, &[to])?;
                qualify_for(draft, &part);
                Ok(String::new())
            }
            Self::Stack(piece, on) => {
                let piece = piece_of(draft, piece)?;
                piece.stack.clear();
                if *on {
                    let first = piece.points.first().map(|p| p.name.clone());
                    let first = first.ok_or_else(|| EditError::refused(say!("refused-no-point-yet")))?;
                    piece.stack = vec![first.clone(), first];
                }
                Ok(String::new())
            }
            Self::StackAt(piece, point, [across, down]) => {
                let piece = piece_of(draft, piece)?;
                has_points(&piece.name, &piece.points, std::iter::once(point.as_str()))?;
                let mut both = [piece.stack.first(), piece.stack.get(1).or(piece.stack.first())]
                    .map(|s| s.cloned().unwrap_or_default());
                for (own, wanted) in both.iter_mut().zip([across, down]) {
                    if *wanted {
                        own.clone_from(point);
                    }
                }
                piece.stack = both.to_vec();
                Ok(String::new())
            }
            Self::MakeSmooth(piece, edge, point, far) => make_smooth(draft, piece, edge, point, far),
            Self::Bend(piece, edge, segment, curved) => bend(draft, piece, edge, *segment, *curved),
            Self::SmoothAt(piece, edge, point, smooth) => {
                let edge = edge_of(draft, piece, edge)?;
                edge.smooth_at.retain(|p| p != point);
                if *smooth {
                    let inner = edge.by.iter().rev().skip(1);
                    if !inner.rev().any(|s| s.end() == point) {
                        return Err(EditError::refused(say!("refused-no-joint", point, edge = edge.name)));
                    }
                    edge.smooth_at.push(point.clone());
                }
                Ok(String::new())
            }
        }
    }
}

fn gone(name: &str) -> EditError {
    EditError::refused(say!("gone-piece", name))
}

fn piece_of<'a>(draft: &'a mut Draft, name: &str) -> Result<&'a mut Piece, EditError> {
    draft.pieces.iter_mut().find(|p| p.name == name).map(Arc::make_mut).ok_or_else(|| gone(name))
}

fn edge_of<'a>(draft: &'a mut Draft, piece: &str, name: &str) -> Result<&'a mut Edge, EditError> {
    let own = piece_of(draft, piece)?;
    let edge = own.edges.iter_mut().chain(&mut own.lines).find(|e| e.name == name);
    edge.ok_or_else(|| EditError::refused(say!("gone-edge", piece, name)))
}

/// The point at which an edge ends.
fn end_of(edge: &Edge) -> &str {
    edge.by.last().map_or(&edge.from, |s| s.end())
}

fn add_edge(piece: &mut Piece, name: &str, from: &str, to: &[String]) -> Result<(), EditError> {
    if to.is_empty() {
        return Err(EditError::refused(say!("refused-edge-end", name)));
    }
    let mut before = from;
    has_points(&piece.name, &piece.points, std::iter::once(from).chain(to.iter().map(String::as_str)))?;
    for point in to {
        if point == before {
            return Err(EditError::refused(say!("refused-edge-same", name, point)));
        }
        before = point;
    }
    let by = to.iter().cloned().map(Segment::Straight).collect();
    let edge = Edge { name: name.to_owned(), from: from.to_owned(), by, ..Edge::default() };
    // Behind the edge that it goes on from, or before the one that goes on from it.
    let behind = piece.edges.iter().position(|e| end_of(e) == from).map(|i| i + 1);
    let ahead = piece.edges.iter().position(|e| to.last().is_some_and(|end| *end == e.from));
    let at = behind.or(ahead).unwrap_or(piece.edges.len());
    piece.edges.insert(at, edge);
    Ok(())
}

fn add_line(draft: &mut Draft, frame: &str, name: &str, from: &str, to: &str) -> Result<(), EditError> {
    let (points, lines) = if let Some(piece) = draft.pieces.iter_mut().find(|p| p.name == frame) {
        let piece = Arc::make_mut(piece);
        (&piece.points, &mut piece.lines)
    } else if let Some(drawing) = draft.drawings.iter_mut().find(|d| d.name == frame) {
        let drawing = Arc::make_mut(drawing);
        (&drawing.points, &mut drawing.lines)
    } else {
        return Err(gone(frame));
    };
    has_points(frame, points, [from, to].into_iter())?;
    if from == to {
        return Err(EditError::refused(say!("refused-line-same", name, point = from)));
    }
    let by = vec![Segment::Straight(to.to_owned())];
    lines.push(Edge { name: name.to_owned(), from: from.to_owned(), by, ..Edge::default() });
    Ok(())
}

/// Refuses names of points that are not there.
fn has_points<'a>(frame: &str, points: &[Point], mut wanted: impl Iterator<Item = &'a str>) -> Result<(), EditError> {
    let Some(gone) = wanted.find(|w| !points.iter().any(|p| p.name == *w)) else { return Ok(()) };
    let hint = nearest(gone, points.iter().map(|p| p.name.as_str()));
    let hint = hint.map_or_else(|| say!("hint-add-first"), |name| say!("hint-meant-quoted", name));
    Err(EditError::refused(say!("refused-no-point", frame, point = gone, hint)))
}

fn make_smooth(draft: &mut Draft, piece: &str, name: &str, point: &str, far: &str) -> Result<String, EditError> {
    let edge = edge_of(draft, piece, name)?;
    let Some(i) = edge.by.iter().position(|s| s.end() == point).filter(|i| i + 1 < edge.by.len()) else {
        return Err(EditError::refused(say!("refused-no-joint", point, edge = name)));
    };
    let before = if i == 0 { edge.from.clone() } else { edge.by[i - 1].end().to_owned() };
    let after = edge.by[i + 1].end().to_owned();
    // As the line comes in, and as it goes on: from where, and where to.
    let comes = match &edge.by[i] {
        Segment::Curve(_, arriving, _) => Some(arriving.clone()),
        Segment::Straight(_) => Some(before),
        _ => None,
    };
    let goes = match &edge.by[i + 1] {
        Segment::Curve(leaving, _, _) => Some(leaving.clone()),
        Segment::Straight(_) => Some(after),
        _ => None,
    };
    if let (Some(comes), Segment::Curve(leaving, ..)) = (comes, &mut edge.by[i + 1]) {
        *leaving = format!("{point}.polar(heading({comes}, {point}), {far})");
    } else if let (Some(goes), Segment::Curve(_, arriving, _)) = (goes, &mut edge.by[i]) {
        *arriving = format!("{point}.polar(heading({goes}, {point}), {far})");
    } else {
        return Err(EditError::refused(say!("refused-no-handle", point)));
    }
    if !edge.smooth_at.iter().any(|p| p == point) {
        edge.smooth_at.push(point.to_owned());
    }
    Ok(String::new())
}

fn bend(draft: &mut Draft, piece: &str, name: &str, segment: usize, curved: bool) -> Result<String, EditError> {
    let edge = edge_of(draft, piece, name)?;
    let start = match segment.checked_sub(1) {
        Some(before) => edge.by.get(before).map(|s| s.end().to_owned()),
        None => Some(edge.from.clone()),
    };
    let (Some(start), Some(own)) = (start, edge.by.get_mut(segment)) else {
        return Err(EditError::refused(say!("refused-no-segment", piece, name, number = segment + 1)));
    };
    let end = own.end().to_owned();
    *own = match curved {
        // Handles on the straight line: the shape stays until they are pulled.
        true => Segment::Curve(format!("on_way({start}, {end}, 1/3)"), format!("on_way({end}, {start}, 1/3)"), end),
        false => Segment::Straight(end),
    };
    Ok(String::new())
}
