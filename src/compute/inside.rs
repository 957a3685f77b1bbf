//! What lies inside a closed line.

use std::sync::Arc;

use kurbo::Shape;

use super::geometry::Val;
use super::item::EdgeShape;
use crate::base::{Scalar, tolerance};
use crate::curves::Pt;
use crate::language::{Trouble, Value};
use crate::texts::id;

/// Whether a point lies inside; the line itself counts as inside.
///
/// # Errors
/// Where the line is not closed.
pub(super) fn holds<S: Scalar>(outline: &EdgeShape<S>, point: Pt<S>) -> Result<bool, Trouble> {
    let curve = &outline.curve;
    if (curve.end() - curve.start()).length().value() > tolerance::ON_EDGE {
        return Err(Trouble::NoAnswer(id!("answer-not-closed")));
    }
    if curve.locate(point).distance.value() <= tolerance::ON_EDGE {
        return Ok(true);
    }
    let mut path = curve.to_path();
    path.close_path();
    Ok(path.winding(point.value()) != 0)
}

/// A point that lies inside, or the part of a line that does. A closed line may be cut in two by the outline: its part inside runs over its
/// start then.
///
/// # Errors
/// `Nothing` where nothing does; where several parts do.
pub(super) fn kept<S: Scalar>(thing: &Val<S>, outline: &EdgeShape<S>) -> Result<Val<S>, Trouble> {
    let line = match thing {
        Value::Pair(x, y) => {
            return if holds(outline, Pt::new(*x, *y))? { Ok(thing.clone()) } else { Err(Trouble::Nothing) };
        }
        Value::Edge(line) => line,
        _ => return Err(Trouble::NoAnswer(id!("answer-kept-of"))),
    };
    let met = line.curve.meets(&outline.curve).unwrap_or_default();
    let total = line.curve.length();
    let mut places: Vec<S> = std::iter::once(S::zero()).chain(met.iter().map(|m| m.along)).chain([total]).collect();
    places.sort_by(|a, b| a.value().total_cmp(&b.value()));
    places.dedup_by(|a, b| (a.value() - b.value()).abs() <= tolerance::ON_EDGE);
    // Stretches inside, joined where they follow one another.
    let mut runs: Vec<(S, S)> = Vec::new();
    for pair in places.windows(2) {
        let middle = (pair[0] + pair[1]).times(0.5);
        let Some(at) = line.curve.point_at(middle) else { continue };
        if !holds(outline, at)? {
            continue;
        }
        match runs.last_mut() {
            Some(last) if last.1.value() == pair[0].value() => last.1 = pair[1],
            _ => runs.push((pair[0], pair[1])),
        }
    }
    let between = |(a, b): (S, S)| line.curve.between(a, b).ok_or(Trouble::NoAnswer(id!("answer-no-part-of-line")));
    let is_closed = (line.curve.end() - line.curve.start()).length().value() <= tolerance::ON_EDGE;
    let curve = match runs.as_slice() {
        [] => return Err(Trouble::Nothing),
        [(a, b)] if a.value() <= 0.0 && b.value() >= total.value() => return Ok(thing.clone()),
        [one] => between(*one)?,
        [first, .., last]
            if runs.len() == 2 && is_closed && first.0.value() <= 0.0 && last.1.value() >= total.value() =>
        {
            let (first, last) = (between(*first)?, between(*last)?);
            let all = last.segments().iter().chain(first.segments()).cloned().collect();
            crate::curves::Curve::new(all).map_err(|_| Trouble::NotFinite(id!("answer-point-not-finite")))?
        }
        _ => return Err(Trouble::NoAnswer(id!("answer-several-parts"))),
    };
    Ok(Value::Edge(Arc::new(EdgeShape::plain(curve))))
}
