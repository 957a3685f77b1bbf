//! Steps that are several moves of edges: an amount shared over edges, edges moved out to their cut line.

use super::shape::Shape;
use crate::document::{Allowance, Does, MoveEdge, Share, ToCutLine};

/// How wide the allowance of an edge is in a set, at its start and at its end.
type Width<'a> = dyn Fn(&str, &str) -> Result<[String; 2], String> + 'a;

/// A step as those that make one stage each.
pub(super) fn simple(does: &Does, shape: &Shape, width: &Width<'_>) -> Result<Vec<Does>, String> {
    match does {
        Does::Share(step) => share(step),
        Does::ToCutLine(step) => to_cut_line(step, shape, width),
        one => Ok(vec![one.clone()]),
    }
}

fn share(step: &Share) -> Result<Vec<Does>, String> {
    let Some((last, others)) = step.over.split_last() else {
        return Err("it does not say over which edges the amount is shared".to_owned());
    };
    let by = step.by.trim();
    if by.is_empty() {
        return Err("it does not say which amount is shared".to_owned());
    }
    if !last.share.trim().is_empty() {
        return Err(format!("the last edge, {}, takes what the others leave: leave its share empty", last.edge));
    }
    let mut left = "1".to_owned();
    let mut out = Vec::new();
    for one in others {
        let part = one.share.trim();
        if part.is_empty() {
            return Err(format!("it does not say which share edge {} takes", one.edge));
        }
        left.push_str(&format!(" - ({part})"));
        out.push(moved(&one.edge, format!("({by}) * ({part})"), String::new()));
    }
    out.push(moved(&last.edge, format!("({by}) * ({left})"), String::new()));
    Ok(out)
}

fn to_cut_line(step: &ToCutLine, shape: &Shape, width: &Width<'_>) -> Result<Vec<Does>, String> {
    edges(step, shape)
        .iter()
        .map(|edge| {
            if shape.edge(edge).is_none() {
                return Err(format!("the piece has no edge {edge} before this step"));
            }
            let [start, end] = width(edge, &step.set)?.map(|w| if w.is_empty() { w } else { format!("-({w})") });
            Ok(moved(edge, start, end))
        })
        .collect()
}

/// The edges that are moved out.
fn edges(step: &ToCutLine, shape: &Shape) -> Vec<String> {
    if !step.edges.is_empty() {
        return step.edges.clone();
    }
    let folded = |edge: &String| shape.rest.cuts.iter().any(|c| c.on_fold == *edge);
    shape.edges.iter().map(|e| e.name.clone()).filter(|e| !folded(e)).collect()
}

fn moved(edge: &str, by: String, to_by: String) -> Does {
    Does::MoveEdge(MoveEdge { edge: edge.to_owned(), by, to_by })
}

/// The width that an edge itself is told, if it is; a hem with all its turns.
pub(super) fn own_width(shape: &Shape, edge: &str, set: &str) -> Result<Option<[String; 2]>, String> {
    let of = |set: &str| -> Vec<&Allowance> {
        shape.rest.allowances.iter().filter(|a| a.edge == edge && a.set == set).collect()
    };
    let mut told = of(set);
    if told.is_empty() {
        told = of("");
    }
    match told.as_slice() {
        [] => Ok(None),
        [one] if one.from.trim().is_empty() => Ok(Some(match (one.turns, one.turn_in.trim()) {
            (0 | 1, _) => [one.width.clone(), if one.turns == 0 { one.to_width.clone() } else { String::new() }],
            (_, "") => [format!("2 * ({})", one.width), String::new()],
            (_, turn) => [format!("({0}) + max(0 mm, min({0}, {turn}))", one.width), String::new()],
        })),
        _ => Err(format!("the allowance of edge {edge} has steps: only an even or a running one can be moved out to")),
    }
}

/// Edges that lie on their cut line have no allowance beyond it, unless the piece itself says so.
pub(super) fn no_allowance(shape: &mut Shape, step: &ToCutLine) {
    for edge in edges(step, shape) {
        shape.rest.allowances.retain(|a| a.edge != edge);
        shape.rest.allowances.push(Allowance { edge, width: "0 mm".to_owned(), ..Allowance::default() });
    }
}
