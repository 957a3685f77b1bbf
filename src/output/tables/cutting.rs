//! The cutting list: what is cut from which material, and how often.

use super::Page;
use crate::compute::CutPlan;
use crate::document::{Face, MaterialKind, StripGrain};
use crate::finish::{Symmetry, is_block, letters, outline_words, symmetry};
use crate::output::{Cell, Line, Table};
use crate::texts::{readable, t};

/// One line for each cut of each piece and for each strip, by material; counts are of cut pieces.
pub(super) fn table(page: &Page<'_>) -> Option<Table> {
    let mut table = page.titled("cutting-list", t!("table-cutting"));
    table.head = vec![
        t!("cutting-piece"),
        t!("cutting-letter"),
        t!("cutting-cut"),
        t!("cutting-how"),
        t!("cutting-face"),
        t!("cutting-grain"),
    ];
    table.before.push(t!("cutting-before"));
    let mut materials: Vec<String> = page.draft.materials.iter().map(|m| m.name.clone()).collect();
    let cuts: Vec<(usize, &CutPlan)> = own_cuts(page);
    let strips = page.model.plan.publishing.strips.iter().filter(|s| page.model.plan.is_needed(s.length));
    let strips = strips.map(|s| &page.draft.strips[s.place]).filter(|s| !s.material.is_empty());
    let strips: Vec<_> = strips.collect();
    let named = cuts.iter().map(|(_, c)| c.material.to_string()).chain(strips.iter().map(|s| s.material.clone()));
    for name in named {
        if !materials.contains(&name) {
            materials.push(name);
        }
    }
    let letters = letters(page.all);
    for material in &materials {
        let group = heading(page, material);
        let mut sum = 0;
        for (frame, cut) in cuts.iter().filter(|(_, c)| *c.material == **material) {
            sum += u64::from(cut.count);
            table.lines.push(Line { group: group.clone(), ..piece_line(page, &letters[*frame], (*frame, cut)) });
        }
        for strip in strips.iter().filter(|s| s.material == *material) {
            let count = u64::from(strip.count.max(1));
            sum += count;
            let grain = match strip.grain {
                StripGrain::Along => t!("grain-along"),
                StripGrain::Across => t!("grain-across"),
                StripGrain::Bias => t!("grain-bias"),
            };
            let how = Cell::Words(t!("cutting-strip"));
            let cells = vec![Cell::Empty, Cell::Count(count), how, Cell::Empty, Cell::Words(grain)];
            table.lines.push(Line { group: group.clone(), name: readable(&strip.name), cells });
        }
        if sum > 0 {
            let mut cells = vec![Cell::Empty; 5];
            cells[1] = Cell::Count(sum);
            table.lines.push(Line { group, name: t!("cutting-sum"), cells });
        }
    }
    let untold = page.draft.pieces.iter().enumerate().filter(|(f, piece)| {
        page.model.plan.has_frame(*f) && !is_block(page.all, &piece.name) && !cuts.iter().any(|(c, _)| c == f)
    });
    let untold: Vec<String> = untold.map(|(_, piece)| readable(&piece.name)).collect();
    if !untold.is_empty() {
        table.notes.push(t!("cutting-untold", pieces = untold.join(", ")));
    }
    (!table.lines.is_empty()).then_some(table)
}

/// The cuts of the view's pieces, in the order of the draft.
fn own_cuts<'a>(page: &Page<'a>) -> Vec<(usize, &'a CutPlan)> {
    let plan = &page.model.plan;
    let frames = 0..page.draft.pieces.len();
    let own = frames.filter(|f| plan.has_frame(*f));
    own.flat_map(|f| plan.frames()[f].finishing.cuts.iter().map(move |c| (f, c))).collect()
}

/// A material with what it is.
fn heading(page: &Page<'_>, name: &str) -> String {
    let kind = page.draft.materials.iter().find(|m| m.name == name).map(|m| m.kind);
    match (name, kind) {
        ("", _) => t!("cutting-own-cloth"),
        (_, Some(MaterialKind::Lining)) => t!("cutting-lining", name),
        (_, Some(MaterialKind::Interfacing)) => t!("cutting-interfacing", name),
        _ => name.to_owned(),
    }
}

/// Pairs, face and grain of a cut, in words; empty where there is nothing to say.
fn told(page: &Page<'_>, (frame, cut): (usize, &CutPlan)) -> [String; 3] {
    let range = 0..page.model.plan.cases.range;
    let handed = symmetry(page.model, page.finished, range, (frame, cut)) == Symmetry::Handed;
    let how = how(cut, handed);
    let face = match cut.face {
        Face::Pairs => String::new(),
        Face::RightSideUp => t!("face-right"),
        Face::WrongSideUp => t!("face-wrong"),
    };
    let ways = if cut.both_ways { t!("grain-either-way") } else { t!("grain-one-way") };
    let grain = match (&cut.along, &cut.heading) {
        (Some((line, _)), _) => t!("grain-along-line", ways, line = readable(line)),
        (None, Some(_)) => t!("grain-by-arrow", ways),
        (None, None) => String::new(),
    };
    [how, face, grain]
}

fn piece_line(page: &Page<'_>, letter: &str, (frame, cut): (usize, &CutPlan)) -> Line {
    let [how, face, grain] = told(page, (frame, cut));
    let cells = vec![text(letter), Cell::Count(u64::from(cut.count)), text(&how), text(&face), text(&grain)];
    Line { name: readable(&page.draft.pieces[frame].name), cells, ..Line::default() }
}

/// A cut as a sentence has it: `2 from main: 1 pair: 1 and 1 mirrored; one way, along centre`.
pub(super) fn in_words(page: &Page<'_>, (frame, cut): (usize, &CutPlan)) -> String {
    let told = told(page, (frame, cut));
    let told: Vec<&str> = told.iter().map(String::as_str).filter(|w| !w.is_empty()).collect();
    let from = if cut.material.is_empty() { t!("cutting-own-cloth") } else { cut.material.to_string() };
    let head = t!("check-cut", count = cut.count, material = from);
    if told.is_empty() { head } else { format!("{head} ({})", told.join(", ")) }
}

/// Pairs, fold, outline: `1 pair: 1 and 1 mirrored`.
fn how(cut: &CutPlan, handed: bool) -> String {
    let half = cut.count / 2;
    let count = if cut.on_fold.is_some() {
        t!("cutting-on-fold")
    } else if handed && cut.face == Face::Pairs && cut.count.is_multiple_of(2) && half > 0 {
        t!("cutting-pairs", pairs = half)
    } else {
        String::new()
    };
    [count, outline_words(cut.outline)].into_iter().filter(|w| !w.is_empty()).collect::<Vec<_>>().join("; ")
}

fn text(words: &str) -> Cell {
    if words.is_empty() { Cell::Empty } else { Cell::Words(words.to_owned()) }
}
