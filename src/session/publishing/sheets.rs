//! Sheets that the draft tells of: on which paper, which sizes together, which pieces.

use super::what::What;
use crate::base::Unit;
use crate::compute::Model;
use crate::document::Sheet;
use crate::language::nearest;
use crate::output::{MOST_SIZES, Paper};
use crate::session::{length_typed, meant};
use crate::texts::say;

/// A sheet that is understood.
#[derive(Clone, Debug, PartialEq)]
pub struct SheetPlan {
    /// Its kind.
    pub what: What,
    /// The paper of pages.
    pub paper: Paper,
    /// How wide the paper of a wide sheet is, mm; 0: as it is where nothing is told.
    pub width: f64,
    /// Which sizes come together in which view: places of views, places of cases.
    pub groups: Vec<(usize, Vec<usize>)>,
    /// The pieces; none: all.
    pub pieces: Vec<String>,
}

/// What papers can be told.
const PAPERS: &str = "`A4`, `Letter`, `A4 or Letter`, `wide 914 mm`, `projector`";

/// What a sheet of the draft means.
///
/// # Errors
/// What is wrong with it, in a sentence.
pub fn sheet_plan(model: &Model, sheet: &Sheet) -> Result<SheetPlan, String> {
    let of = |problem: String| say!("sheet-of", name = sheet.name, problem);
    let (what, paper, width) = paper_of(&sheet.paper).map_err(of)?;
    let cases = &model.plan.cases;
    let mut together = Vec::new();
    for size in &sheet.sizes {
        let Some(case) = cases.list.iter().position(|c| c.address == *size) else {
            let near = nearest(size, cases.list.iter().map(|c| c.address.as_str()));
            return Err(of(say!("sheet-no-size", size, hint = meant(near))));
        };
        together.push(case);
    }
    if what == What::Pages && together.len() > MOST_SIZES {
        return Err(of(say!("sheet-too-many", count = together.len(), most = MOST_SIZES)));
    }
    for piece in &sheet.pieces {
        if !model.draft.pieces.iter().any(|p| p.name == *piece) {
            let near = nearest(piece, model.draft.pieces.iter().map(|p| p.name.as_str()));
            return Err(of(say!("sheet-no-piece", piece, hint = meant(near))));
        }
    }
    together.sort_unstable();
    together.dedup();
    let range = if cases.range > 0 { cases.range } else { cases.list.len() };
    let each = (0..range).map(|case| vec![case]);
    let groups: Vec<Vec<usize>> = if together.is_empty() { each.collect() } else { vec![together] };
    let views = 0..model.of_views().len();
    let groups = views.flat_map(|view| groups.iter().map(move |cases| (view, cases.clone()))).collect();
    Ok(SheetPlan { what, paper, width, groups, pieces: sheet.pieces.clone() })
}

/// What the words for a paper mean.
fn paper_of(words: &str) -> Result<(What, Paper, f64), String> {
    let plain = words.trim().to_lowercase();
    let home = |paper| Ok((What::Pages, paper, 0.0));
    match plain.as_str() {
        "a4" => return home(Paper::A4),
        "letter" | "us letter" => return home(Paper::Letter),
        "projector" => return Ok((What::Projector, Paper::Both, 0.0)),
        "" | "a4 or letter" | "letter or a4" | "a4 or us letter" => return home(Paper::Both),
        _ => {}
    }
    let wide = ["wide", "roll"].iter().find_map(|w| plain.strip_prefix(w));
    match wide.map(str::trim) {
        Some("") => Ok((What::Wide, Paper::Both, 0.0)),
        Some(length) => match length_typed(length, Unit::Millimetre) {
            Some(mm) if mm > 0.0 => Ok((What::Wide, Paper::Both, mm)),
            _ => Err(say!("sheet-width", text = length)),
        },
        None => Err(say!("sheet-paper", words, papers = PAPERS)),
    }
}
