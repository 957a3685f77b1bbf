//! From a finding to the part of the draft that it speaks of.

use super::naming::inner_parts;
use crate::base::Finding;
use crate::document::{Draft, Part};

/// The part of a draft that a finding speaks of, as near as can be said.
pub fn part_of_finding(draft: &Draft, finding: &Finding) -> Option<Part> {
    part_named(draft, &finding.place.name).or_else(|| {
        let place = &finding.place;
        if !place.seam.is_empty() {
            return Some(Part::Seam(place.seam.clone()));
        }
        if !place.edge.is_empty() {
            return inner_named(draft, &place.piece, &place.edge);
        }
        draft.pieces.iter().any(|p| p.name == place.piece).then(|| Part::Piece(place.piece.clone()))
    })
}

/// The part that is called so where findings and formulas speak of it: `front.tip`, `chart.bust`, `seam.side`,
/// `value cap_height`, `person 12`.
pub fn part_named(draft: &Draft, name: &str) -> Option<Part> {
    let name = name.strip_suffix(" as drawn").or(name.strip_suffix(" outline")).unwrap_or(name);
    if let Some(view) = name.strip_prefix("view ") {
        // `view short, value body_length`: told on the card of the view.
        return Some(Part::View(view.split(", ").next().unwrap_or(view).to_owned()));
    }
    if let Some((word, rest)) = name.split_once(' ') {
        let known = match word {
            "value" => Part::Value(rest.to_owned()),
            "person" => Part::Person(rest.to_owned()),
            "row" => Part::Row(rest.to_owned()),
            "piece" => Part::Piece(rest.to_owned()),
            "drawing" => Part::Drawing(rest.to_owned()),
            "placement" => Part::Placement(rest.to_owned()),
            "seam" => Part::Seam(rest.to_owned()),
            "strip" => Part::Strip(rest.to_owned()),
            "material" => Part::Material(rest.to_owned()),
            "notion" => Part::Notion(rest.to_owned()),
            "booklet" => {
                let number = rest.strip_prefix("step ").and_then(|n| n.parse::<usize>().ok());
                return number.filter(|n| (1..=draft.booklet.len()).contains(n)).map(|n| Part::Step(n - 1));
            }
            "block" => Part::Draft,
            "point" | "edge" | "line" | "dart" => return part_named(draft, rest),
            _ => return None,
        };
        return Some(known);
    }
    match name.split_once('.') {
        Some(("chart", row)) => Some(Part::Row(row.to_owned())),
        Some(("value", value)) => Some(Part::Value(value.to_owned())),
        Some(("seam", rest)) => Some(Part::Seam(rest.split('.').next().unwrap_or_default().to_owned())),
        Some(("condition", rest)) => Some(Part::Condition(rest.split('.').next().unwrap_or_default().to_owned())),
        Some(("strip", rest)) => Some(Part::Strip(rest.split('.').next().unwrap_or_default().to_owned())),
        Some(("joint", rest)) => Some(Part::Joint(rest.to_owned())),
        Some((frame, rest)) => {
            let local = rest.split('.').next().unwrap_or_default();
            let is_frame =
                draft.pieces.iter().any(|p| p.name == frame) || draft.drawings.iter().any(|d| d.name == frame);
            is_frame.then(|| inner_named(draft, frame, local).unwrap_or_else(|| Part::Piece(frame.to_owned())))
        }
        None => {
            let value = draft.values.iter().any(|v| v.name == name).then(|| Part::Value(name.to_owned()));
            let row = draft.chart.rows.iter().any(|r| r.name == name).then(|| Part::Row(name.to_owned()));
            let piece = draft.pieces.iter().any(|p| p.name == name).then(|| Part::Piece(name.to_owned()));
            let material = draft.materials.iter().any(|m| m.name == name).then(|| Part::Material(name.to_owned()));
            value.or(row).or(piece).or(material).or((name == "care").then_some(Part::Draft))
        }
    }
}

/// The part of a piece or drawing that has this name.
fn inner_named(draft: &Draft, frame: &str, name: &str) -> Option<Part> {
    if let Some(piece) = draft.pieces.iter().find(|p| p.name == frame) {
        // Most findings speak of points and edges.
        if piece.points.iter().any(|p| p.name == name) {
            return Some(Part::point(frame, name));
        }
        if piece.edges.iter().any(|e| e.name == name) {
            return Some(Part::edge(frame, name));
        }
    }
    inner_parts(draft, frame).into_iter().find(|p| p.name() == name)
}
