//! The cutting list: what is cut from which material, and how often.

use super::{Page, readable};
use crate::compute::CutPlan;
use crate::document::{Face, MaterialKind, StripGrain};
use crate::finish::{Symmetry, is_block, letters, outline_words, symmetry};
use crate::output::{Cell, Line, Table};

/// One line for each cut of each piece and for each strip, by material; counts are of cut pieces.
pub(super) fn table(page: &Page<'_>) -> Option<Table> {
    let mut table = page.titled("cutting-list", "Cutting list");
    table.head = ["piece", "letter", "cut", "how", "face", "grain"].map(str::to_owned).to_vec();
    table
        .before
        .push("What is cut, the same in all sizes. Counts are of cut pieces; a piece on the fold is one.".to_owned());
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
                StripGrain::Along => "along the thread",
                StripGrain::Across => "across the thread",
                StripGrain::Bias => "on the bias",
            };
            let words = ["", "strip: its lengths are in its own table", "", grain];
            let mut cells: Vec<Cell> = words.map(text).to_vec();
            cells.insert(1, Cell::Count(count));
            table.lines.push(Line { group: group.clone(), name: readable(&strip.name), cells });
        }
        if sum > 0 {
            let mut cells = vec![Cell::Empty; 5];
            cells[1] = Cell::Count(sum);
            table.lines.push(Line { group, name: "in all".to_owned(), cells });
        }
    }
    let untold = page.draft.pieces.iter().enumerate().filter(|(f, piece)| {
        page.model.plan.has_frame(*f) && !is_block(page.all, &piece.name) && !cuts.iter().any(|(c, _)| c == f)
    });
    let untold: Vec<String> = untold.map(|(_, piece)| readable(&piece.name)).collect();
    if !untold.is_empty() {
        table.notes.push(format!("Nothing tells from what these are cut, and how often: {}.", untold.join(", ")));
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
        ("", _) => "its cloth".to_owned(),
        (_, Some(MaterialKind::Lining)) => format!("{name} (lining)"),
        (_, Some(MaterialKind::Interfacing)) => format!("{name} (interfacing)"),
        _ => name.to_owned(),
    }
}

/// Pairs, face and grain of a cut, in words; empty where there is nothing to say.
fn told(page: &Page<'_>, (frame, cut): (usize, &CutPlan)) -> [String; 3] {
    let range = 0..page.model.plan.cases.range;
    let handed = symmetry(page.model, page.finished, range, (frame, cut)) == Symmetry::Handed;
    let how = how(cut, handed);
    let face = match cut.face {
        Face::Pairs => "",
        Face::RightSideUp => "right side of the cloth up",
        Face::WrongSideUp => "wrong side of the cloth up",
    };
    let ways = if cut.both_ways { "either way" } else { "one way" };
    let grain = match (&cut.along, &cut.heading) {
        (Some((line, _)), _) => format!("{ways}, along {}", readable(line)),
        (None, Some(_)) => format!("{ways}, by the arrow"),
        (None, None) => String::new(),
    };
    [how, face.to_owned(), grain]
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
    let from = if cut.material.is_empty() { "its cloth" } else { &*cut.material };
    let head = format!("{} from {from}", cut.count);
    if told.is_empty() { head } else { format!("{head} ({})", told.join(", ")) }
}

/// Pairs, fold, outline: `1 pair: 1 and 1 mirrored`.
fn how(cut: &CutPlan, handed: bool) -> String {
    let half = cut.count / 2;
    let count = if cut.on_fold.is_some() {
        "on the fold".to_owned()
    } else if handed && cut.face == Face::Pairs && cut.count.is_multiple_of(2) && half > 0 {
        let pairs = if half == 1 { "1 pair".to_owned() } else { format!("{half} pairs") };
        format!("{pairs}: {half} and {half} mirrored")
    } else {
        String::new()
    };
    [&*count, outline_words(cut.outline)].into_iter().filter(|w| !w.is_empty()).collect::<Vec<_>>().join("; ")
}

fn text(words: &str) -> Cell {
    if words.is_empty() { Cell::Empty } else { Cell::Words(words.to_owned()) }
}
