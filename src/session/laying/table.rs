//! The table of what is to be bought: sizes, and groups of sizes, beside materials in their widths; each cell with what is laid and the plan
//! that is kept for it.

use std::sync::Arc;

use super::wish::{LayWish, books, job_from, usual_wishes, wish_of_plan};
use crate::compute::Model;
use crate::document::{ClothLaid, Nap};
use crate::finish::{ClothBook, Finished};
use crate::output::lay::{Lay, LayError, LayJob, kept_lays};
use crate::texts::say;

/// What a cell is about, in words of the draft: it outlives a change of the draft.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LayKey {
    /// The view, by its place; 0 where the draft has none.
    pub view: usize,
    /// The material.
    pub material: String,
    /// The width as it is typed.
    pub width: String,
    /// How the cloth is laid.
    pub laid: ClothLaid,
    /// Whether all heads lie one way.
    pub nap: bool,
    /// The sizes by their addresses, and how many garments of each.
    pub sizes: Vec<(String, u32)>,
}

impl LayKey {
    /// Whether both are about the same cloth.
    pub fn same_cloth(&self, other: &Self) -> bool {
        let key = |k: &Self| (k.view, k.material.clone(), k.width.clone(), k.laid, k.nap);
        key(self) == key(other)
    }

    /// The sizes in words: `88`, `2 x S + 4 x M`.
    pub fn sizes_called(&self) -> String {
        sizes_called(&self.sizes)
    }
}

/// Sizes in words: `88`, `2 x S + 4 x M`.
pub fn sizes_called(sizes: &[(String, u32)]) -> String {
    let one = |(size, count): &(String, u32)| if *count == 1 { size.clone() } else { format!("{count} x {size}") };
    sizes.iter().map(one).collect::<Vec<_>>().join(" + ")
}

/// Sizes as they are typed: `2 x S, 4 x M`, or `S, M`. `known`: the sizes that there are.
///
/// # Errors
/// What cannot be read, and how it is written.
pub fn sizes_typed(text: &str, known: &[String]) -> Result<Vec<(String, u32)>, String> {
    let mut out: Vec<(String, u32)> = Vec::new();
    for part in text.split([',', '+']).map(str::trim).filter(|p| !p.is_empty()) {
        // A size may be called 2XL: what is a size as it stands is no count.
        let is_size = known.iter().any(|k| k == part);
        let counted = part.split_once(['x', 'X', '×']).filter(|_| !is_size).and_then(|(count, size)| {
            let count: u32 = count.trim().parse().ok()?;
            Some((size.trim().to_owned(), count))
        });
        let (size, count) = counted.unwrap_or_else(|| (part.to_owned(), 1));
        if !known.contains(&size) {
            return Err(say!("sizes-typed-unknown", size, known = known.join(", ")));
        }
        if !(1..=MOST_GARMENTS).contains(&count) {
            return Err(say!("sizes-typed-many", text = part, most = MOST_GARMENTS));
        }
        match out.iter_mut().find(|(own, _)| *own == size) {
            Some(own) => own.1 = (own.1 + count).min(MOST_GARMENTS),
            None => out.push((size, count)),
        }
    }
    if out.is_empty() {
        return Err(say!("sizes-typed-none"));
    }
    Ok(out)
}

/// The most garments of one size in a group: more of them are laid as often as needed.
const MOST_GARMENTS: u32 = 50;

/// A plan that is kept for a cell.
#[derive(Clone, Debug)]
pub struct KeptPlan {
    /// Its place among the plans of the draft.
    pub place: usize,
    /// The lay with its locked pieces, or why no number may come of it.
    pub lay: Result<KeptLocked, String>,
}

/// A lay, and its locked pieces as stretch and place.
pub type KeptLocked = (Arc<Lay>, Vec<(usize, usize)>);

/// A cell of the table.
#[derive(Clone, Debug)]
pub struct LayCell {
    /// What it is about.
    pub key: LayKey,
    /// The same for the search.
    pub wish: LayWish,
    /// What is laid, or why nothing can.
    pub job: Result<Arc<LayJob>, LayError>,
    /// The plan that is kept.
    pub kept: Option<KeptPlan>,
}

/// The table. Cells stand row by row; one is left out where a width cannot be computed in a size.
#[derive(Clone, Debug, Default)]
pub struct LayTable {
    /// All cells; behind those of the columns the ones of kept plans whose cloth is laid, or is as wide, as the draft does not say (any more).
    pub cells: Vec<LayCell>,
    /// One key for each column, of whatever sizes.
    pub columns: Vec<LayKey>,
    /// The rows: sizes and how many of each.
    pub rows: Vec<Vec<(String, u32)>>,
    /// Plans of the draft that belong to no cell, and why.
    pub lost: Vec<(usize, String)>,
}

impl LayTable {
    /// The cell of a key.
    pub fn cell(&self, key: &LayKey) -> Option<&LayCell> {
        self.cells.iter().find(|c| c.key == *key)
    }

    /// Whether the draft says that there is such a cloth.
    pub fn is_told(&self, key: &LayKey) -> bool {
        self.columns.iter().any(|c| c.same_cloth(key))
    }

    /// Kept plans of cloth that the draft does not tell, by cloth.
    pub fn untold(&self) -> Vec<Vec<&LayCell>> {
        let mut out: Vec<Vec<&LayCell>> = Vec::new();
        for cell in self.cells.iter().filter(|c| !self.is_told(&c.key)) {
            match out.iter_mut().find(|own| own[0].key.same_cloth(&cell.key)) {
                Some(own) => own.push(cell),
                None => out.push(vec![cell]),
            }
        }
        out
    }
}

/// The table of a draft, with these groups of sizes beside those of plans that are kept. `model` and `finished` are of the whole draft.
pub fn lay_table(model: &Model, finished: &Finished, groups: &[Vec<(String, u32)>]) -> LayTable {
    let draft = &model.draft;
    let mut table = LayTable::default();
    let usual = usual_wishes(model);
    let address = |wish: &LayWish| -> Vec<(String, u32)> {
        let cases = &model.of_views()[wish.view.min(model.of_views().len() - 1)].plan.cases.list;
        let one =
            |(case, count): &(usize, u32)| (cases.get(*case).map_or_else(String::new, |c| c.address.clone()), *count);
        wish.call.sizes.iter().map(one).collect()
    };
    let key_of = |wish: &LayWish| {
        let told = draft.materials.iter().find(|m| m.name == wish.call.material);
        LayKey {
            view: wish.view,
            material: wish.call.material.clone(),
            width: wish.width.clone(),
            laid: wish.call.laid.or(told.map(|m| m.laid)).unwrap_or_default(),
            nap: wish.call.nap.unwrap_or_else(|| told.is_some_and(|m| m.nap == Nap::With)),
            sizes: address(wish),
        }
    };
    // For each column a wish of which those of its cells are made.
    let mut patterns: Vec<LayWish> = Vec::new();
    let mut column = |table: &mut LayTable, wish: &LayWish| {
        let key = key_of(wish);
        if !table.columns.iter().any(|c| c.same_cloth(&key)) {
            table.columns.push(key);
            patterns.push(wish.clone());
        }
    };
    for wish in &usual {
        column(&mut table, wish);
        let sizes = address(wish);
        if !table.rows.contains(&sizes) {
            table.rows.push(sizes);
        }
    }
    let mut plans: Vec<(usize, Option<LayKey>)> = Vec::new();
    let mut more: Vec<Vec<(String, u32)>> = groups.to_vec();
    let mut untold: Vec<LayWish> = Vec::new();
    for (place, plan) in draft.plans.iter().enumerate() {
        let wish = wish_of_plan(model, plan);
        if let Some(wish) = &wish {
            // Where the draft tells no width of a cloth, what is kept tells it.
            if !usual.iter().any(|w| w.view == wish.view && w.call.material == wish.call.material) {
                column(&mut table, wish);
            }
            if table.is_told(&key_of(wish)) { more.push(address(wish)) } else { untold.push(wish.clone()) }
        }
        plans.push((place, wish.as_ref().map(key_of)));
    }
    for sizes in more {
        if !table.rows.contains(&sizes) {
            table.rows.push(sizes);
        }
    }
    let books = books(model, finished);
    let kept = kept(model, &books);
    let cell = |key: LayKey, wish: LayWish| {
        let job = job_from(&books, &wish).map(Arc::new);
        let own = plans.iter().find(|(_, k)| k.as_ref() == Some(&key)).map(|(place, _)| *place);
        let kept = own.map(|place| KeptPlan { place, lay: still(kept.get(place), &job) });
        LayCell { key, wish, job, kept }
    };
    for row in &table.rows {
        for (pattern, column) in patterns.iter().zip(&table.columns) {
            let Some(wish) = cell_wish(model, &usual, pattern, row) else { continue };
            table.cells.push(cell(LayKey { sizes: row.clone(), ..column.clone() }, wish));
        }
    }
    for wish in untold {
        let key = key_of(&wish);
        if table.cell(&key).is_none() {
            table.cells.push(cell(key, wish));
        }
    }
    for (place, key) in plans {
        let known = key.is_some_and(|k| table.cells.iter().any(|c| c.key == k));
        if !known {
            let why = match kept.get(place) {
                Some(Err(why)) => why.clone(),
                _ => say!("plan-lost"),
            };
            table.lost.push((place, why));
        }
    }
    table
}

/// The wish of a cell; none where its width cannot be computed, or a size is not there.
fn cell_wish(model: &Model, usual: &[LayWish], pattern: &LayWish, row: &[(String, u32)]) -> Option<LayWish> {
    let cases = &model.of_views()[pattern.view.min(model.of_views().len() - 1)].plan.cases.list;
    let sizes: Option<Vec<(usize, u32)>> =
        row.iter().map(|(size, count)| Some((cases.iter().position(|c| c.address == *size)?, *count))).collect();
    let sizes = sizes?;
    let first = sizes.first()?.0;
    let same =
        |w: &&LayWish| w.view == pattern.view && w.call.material == pattern.call.material && w.width == pattern.width;
    // Where the draft has no such width any more it is the plan's own.
    let any = usual.iter().any(|w| same(&w));
    let width = match usual.iter().filter(same).find(|w| w.call.sizes.first().map(|s| s.0) == Some(first)) {
        Some(own) => own.call.width,
        None if any => return None,
        None => pattern.call.width,
    };
    let mut wish = pattern.clone();
    wish.call.width = width;
    wish.call.sizes = sizes;
    Some(wish)
}

/// All plans of the draft, by their places.
fn kept(model: &Model, books: &[ClothBook<'_>]) -> Vec<Result<KeptLocked, String>> {
    let none = || Err(say!("plan-no-view"));
    let mut out: Vec<Result<KeptLocked, String>> = model.draft.plans.iter().map(|_| none()).collect();
    for book in books {
        for kept in kept_lays(book) {
            if let Some(to) = out.get_mut(kept.place) {
                let locked = kept.locked;
                *to = kept.lay.map(|lay| (Arc::new(lay), locked));
            }
        }
    }
    out
}

/// A kept plan as one of the job of its cell.
fn still(kept: Option<&Result<KeptLocked, String>>, job: &Result<Arc<LayJob>, LayError>) -> Result<KeptLocked, String> {
    match (kept, job) {
        (Some(Ok((lay, locked))), Ok(job)) if lay.job.is_of(job) => Ok((Arc::clone(lay), locked.clone())),
        (Some(Err(why)), _) => Err(why.clone()),
        _ => Err(say!("plan-otherwise")),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn groups_are_read_as_they_are_typed() {
        let known: Vec<String> = ["S", "M", "XL", "2XL", "88/B"].map(str::to_owned).to_vec();
        let own = |all: &[(&str, u32)]| Ok(all.iter().map(|(s, n)| ((*s).to_owned(), *n)).collect::<Vec<_>>());
        assert_eq!(sizes_typed("2 x S, 4 x M", &known), own(&[("S", 2), ("M", 4)]));
        assert_eq!(sizes_typed(" S + 3x88/B ", &known), own(&[("S", 1), ("88/B", 3)]));
        // A letter in the name of a size is no count.
        assert_eq!(sizes_typed("XL, 2 x XL, 2XL", &known), own(&[("XL", 3), ("2XL", 1)]));
        for wrong in ["", " , ", "0 x S", "51 x S", "2 x L", "3 S"] {
            assert!(sizes_typed(wrong, &known).is_err(), "{wrong}");
        }
        assert_eq!(sizes_called(&[("S".to_owned(), 2), ("M".to_owned(), 1)]), "2 x S + M");
    }
}
