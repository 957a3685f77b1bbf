//! Pulling an edge: which of its points and handles move, and how far for each step of the hand.

use kurbo::{ParamCurve, ParamCurveNearest, Point};

use super::{Computed, EditError};
use crate::base::tolerance;
use crate::document::{Address, Edge, Inner, Part, Segment};
use crate::texts::say;

/// A handle of a curve that is pulled moves no more than this many times as far as the hand.
const MOST: f64 = 2.5;

/// The points or handles that take the place of an edge under the hand along, each with how far it moves for each step: both
/// handles of a curve, both ends of a straight stretch, the nearest point of a smooth one. `place`: mm, in its frame.
///
/// # Errors
/// Why it has nothing that could be pulled.
pub fn edge_grips(
    computed: &Computed,
    part: &Part,
    case: usize,
    place: Point,
) -> Result<Vec<(Address, f64)>, EditError> {
    let refuse = |why: &str| EditError::refused(say!("refused-pull", part = part.words(), why));
    let Part::Inner(frame, inner, name) = part else { return Err(refuse(&say!("pull-no-edge"))) };
    let model = computed.model.as_ref().ok_or_else(|| refuse(&say!("draft-uncomputed")))?;
    let edge = drawn(computed, frame, *inner, name).ok_or_else(|| refuse(&say!("gone-it")))?;
    let node = model.plan.node_named(&format!("{frame}.{name}"));
    let shape = node.and_then(|n| model.item(case, n)?.edge());
    let path = shape.ok_or_else(|| refuse(&say!("pull-no-shape-here")))?.curve.to_path();
    let ends = |i: usize| {
        let from = if i == 0 { &edge.from } else { edge.by[i - 1].end() };
        [from.to_owned(), edge.by[i].end().to_owned()]
    };
    let point = |name: &str| Address::new(Part::point(frame, name), "at");
    let at = |field: &'static str, i: usize| Address::nth(part.clone(), field, i);
    if let [Segment::Smooth { through, .. }] = &edge.by[..] {
        let places = (0..through.len()).filter_map(|k| {
            let far = path.segments().nth(k).map(|s| (s.end() - place).hypot())?;
            Some((far, Address { inner: k, ..at("through", 0) }))
        });
        let nearest = places.min_by(|a, b| a.0.total_cmp(&b.0));
        return nearest.map(|(_, at)| vec![(at, 1.0)]).ok_or_else(|| refuse(&say!("pull-no-point")));
    }
    let plain = edge.by.iter().all(|s| matches!(s, Segment::Straight(_) | Segment::Curve(..)));
    if !plain || path.segments().count() != edge.by.len() {
        return Err(refuse(&say!("pull-arc")));
    }
    let near = path.segments().enumerate().map(|(i, s)| (i, s.nearest(place, tolerance::ON_EDGE)));
    let (i, near) = near
        .min_by(|a, b| a.1.distance_sq.total_cmp(&b.1.distance_sq))
        .ok_or_else(|| refuse(&say!("pull-no-shape")))?;
    Ok(match &edge.by[i] {
        Segment::Curve(..) => {
            // Both handles moved by d move the place by 3 t (1 - t) d.
            let share = (1.0 / (3.0 * near.t * (1.0 - near.t))).min(MOST);
            vec![(at("leaving", i), share), (at("arriving", i), share)]
        }
        _ => ends(i).iter().map(|p| (point(p), 1.0)).collect(),
    })
}

fn drawn(computed: &Computed, frame: &str, inner: Inner, name: &str) -> Option<Edge> {
    let piece = computed.draft.pieces.iter().find(|p| p.name == frame);
    let drawing = computed.draft.drawings.iter().find(|d| d.name == frame);
    let lines = piece.map(|p| &p.lines).or(drawing.map(|d| &d.lines))?;
    let all = if inner == Inner::Edge { &piece?.edges } else { lines };
    all.iter().find(|e| e.name == name).cloned()
}
