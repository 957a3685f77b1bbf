//! What allowance is on which edge, in words.

use super::BookletOrder;
use crate::document::Piece;
use crate::finish::{EdgeWidths, FinishedCut};
use crate::output::writing::{Block, both_units};
use crate::texts::t;

/// The allowances of a cut, the commonest first: `1 cm (3/8 in), but 3 cm (1 1/8 in) hem at hem; none at neckline`. Empty where it has none
/// at all, or where its edges cannot be told.
pub fn allowance_words(piece: &Piece, cut: &FinishedCut) -> String {
    let mut groups: Vec<(String, Vec<&str>)> = Vec::new();
    for (edge, widths) in piece.edges.iter().zip(&cut.widths).filter(|(_, w)| !w.on_fold) {
        let words = of_edge(widths);
        match groups.iter_mut().find(|(known, _)| *known == words) {
            Some((_, edges)) => edges.push(&edge.name),
            None => groups.push((words, vec![&edge.name])),
        }
    }
    let named = |edges: &[&str]| edges.iter().map(|e| e.replace('_', " ")).collect::<Vec<_>>().join(", ");
    if groups.len() > 1 && groups.iter().all(|(_, edges)| edges.len() == 1) {
        let all: Vec<String> =
            groups.iter().map(|(words, edges)| t!("allowance-at", allowance = words, edges = named(edges))).collect();
        return all.join("; ");
    }
    // The first of those with most edges.
    let most = groups.iter().map(|(_, edges)| edges.len()).max().unwrap_or(0);
    let Some(main) = groups.iter().position(|(_, edges)| edges.len() == most) else { return String::new() };
    let (words, _) = groups.remove(main);
    if groups.is_empty() {
        return if words == t!("allowance-none") { String::new() } else { t!("allowance-round", allowance = words) };
    }
    let rest: Vec<String> =
        groups.iter().map(|(words, edges)| t!("allowance-at", allowance = words, edges = named(edges))).collect();
    t!("allowance-but", allowance = words, rest = rest.join("; "))
}

/// The allowances of a cut in few words, for its label: from the least to the most that is not nothing.
pub fn allowance_in_short(cut: &FinishedCut) -> String {
    let widths = cut.widths.iter().filter(|e| !e.on_fold).flat_map(|e| &e.widths).flat_map(|w| [w.start, w.end]);
    let wide: Vec<f64> = widths.filter(|w| *w > crate::base::tolerance::EQUAL).collect();
    let (least, most) = wide.iter().fold((f64::INFINITY, 0.0_f64), |(a, b), w| (a.min(*w), b.max(*w)));
    if wide.is_empty() {
        return t!("label-no-allowance");
    }
    let words = match (both_units(least), both_units(most)) {
        (least, most) if least == most => t!("label-allowance", allowance = most),
        (least, most) => t!("label-allowances", least, most),
    };
    let is_bare = |e: &EdgeWidths| e.widths.iter().all(|w| w.start.max(w.end) <= crate::base::tolerance::EQUAL);
    let some_bare = cut.widths.iter().any(|e| !e.on_fold && is_bare(e));
    if some_bare { t!("label-some-without", words) } else { words }
}

fn of_edge(edge: &EdgeWidths) -> String {
    if let Some(hem) = edge.hem {
        let depth = both_units(hem.depth);
        return match hem.turn_in > 0.0 {
            true => t!("allowance-hem-turned", depth, turn = both_units(hem.turn_in)),
            false => t!("allowance-hem", depth),
        };
    }
    let nothing = edge.widths.iter().all(|w| w.start <= 0.0 && w.end <= 0.0);
    if nothing {
        return t!("allowance-none");
    }
    let stretch = |w: &crate::finish::Width| {
        let (start, end) = (both_units(w.start), both_units(w.end));
        if start == end { start } else { t!("allowance-running", start, end) }
    };
    edge.widths.iter().map(stretch).collect::<Vec<_>>().join(&format!(", {} ", t!("allowance-then")))
}

/// A list of all pieces with their allowances, and what a person must know before cutting.
pub fn allowances(order: &BookletOrder<'_>) -> Vec<Block> {
    let model = order.model;
    let Some(base) = order.shown() else { return Vec::new() };
    let letters = crate::finish::letters(model);
    let mut items = Vec::new();
    let mut without = Vec::new();
    for (i, piece) in order.draft.pieces.iter().enumerate() {
        if !model.plan.has_frame(i) || crate::finish::is_block(model, &piece.name) {
            continue;
        }
        let Some(made) = order.finished.cases.get(base).and_then(|c| c.get(i)?.as_deref()) else { continue };
        let letter = letters.get(i).map_or("", String::as_str);
        let name = format!("{letter} {}", piece.name.replace('_', " ")).trim().to_owned();
        // What is said of which materials.
        let mut told: Vec<(String, Vec<String>)> = Vec::new();
        for cut in made.cuts.iter().filter(|c| !c.widths.is_empty()) {
            let words =
                Some(allowance_words(piece, cut)).filter(|w| !w.is_empty()).unwrap_or_else(|| t!("allowance-none"));
            let from = piece.cuts.get(cut.place).map_or("", |c| c.material.as_str()).replace('_', " ");
            match told.iter_mut().find(|(known, _)| *known == words) {
                Some((_, materials)) => materials.push(from),
                None => told.push((words, vec![from])),
            }
        }
        match told.as_slice() {
            [] => without.push(name),
            [(words, _)] if *words == t!("allowance-none") => without.push(name),
            [(words, _)] => items.push(format!("{name}: {words}")),
            several => {
                let all: Vec<String> =
                    several.iter().map(|(words, from)| format!("{}: {words}", from.join(", "))).collect();
                items.push(format!("{name}: {}", all.join("; ")));
            }
        }
    }
    let mut out = Vec::new();
    if !items.is_empty() {
        out.push(Block::Paragraph(t!("allowances-included")));
        out.push(Block::List { numbered: false, items });
    }
    if !without.is_empty() {
        out.push(Block::Paragraph(t!("allowances-without", pieces = without.join(", "))));
    }
    out
}
