//! Every limit of the reader, with its message. They are far above what a garment needs and keep a damaged or malicious
//! file from filling the memory. How many sizes the axes make together is a matter of computing.

use crate::texts::{id, own, said};

/// How much of something a file may hold, and how an error says so.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Limit {
    /// The most that is read.
    pub most: usize,
    /// The id of what is counted.
    of: &'static str,
    /// The id of what to do about it.
    hint: &'static str,
}

impl Limit {
    /// What is counted.
    pub fn of(self) -> String {
        said(own(), self.of, &[])
    }

    /// What to do about it.
    pub fn hint(self) -> String {
        said(own(), self.hint, &[])
    }
}

const fn limit(most: usize, of: &'static str, hint: &'static str) -> Limit {
    Limit { most, of, hint }
}

const SPLIT: &str = id!("limit-split");
const FEWER: &str = id!("limit-fewer");

/// Bytes of a file (16 MiB).
pub const FILE: Limit = limit(16 * 1024 * 1024, id!("limit-bytes"), SPLIT);
/// Bytes of a file of the person's own (1 MiB).
pub const OWN: Limit = limit(1024 * 1024, id!("limit-bytes"), id!("limit-delete"));
/// Brackets inside one another. A draft needs nine.
pub const DEPTH: Limit = limit(32, id!("limit-brackets"), id!("limit-take-brackets"));
/// Groups and lists in a file.
pub const GROUPS: Limit = limit(500_000, id!("limit-groups"), SPLIT);
/// Letters of a formula, name or label. The language has its own, lower limit.
pub const FORMULA: Limit = limit(20_000, id!("limit-letters"), id!("limit-name-parts"));
/// Letters of any other text.
pub const TEXT: Limit = limit(200_000, id!("limit-text"), id!("limit-shorten"));
/// Pieces of a draft, and pieces named in a view, sheet or step of the booklet.
pub const PIECES: Limit = limit(2_000, id!("limit-pieces"), SPLIT);
/// Drawings.
pub const DRAWINGS: Limit = limit(500, id!("limit-drawings"), SPLIT);
/// Points of a piece or drawing.
pub const POINTS: Limit = limit(5_000, id!("limit-points"), id!("limit-split-piece"));
/// Edges of a piece.
pub const EDGES: Limit = limit(1_000, id!("limit-edges"), id!("limit-split-piece"));
/// Lines of a piece or drawing.
pub const LINES: Limit = limit(1_000, id!("limit-lines"), id!("limit-split-piece"));
/// Segments of an edge (and axes of a row).
pub const SEGMENTS: Limit = limit(500, id!("limit-by"), id!("limit-split-edge"));
/// Points that a smooth curve goes through.
pub const THROUGH: Limit = limit(500, id!("limit-through"), id!("limit-split-curve"));
/// Labels along one axis of the chart.
pub const SIZES: Limit = limit(400, id!("limit-sizes"), FEWER);
/// Rows of the chart.
pub const ROWS: Limit = limit(2_000, id!("limit-rows"), FEWER);
/// Cells of a row or person.
pub const CELLS: Limit = limit(20_000, id!("limit-cells"), FEWER);
/// Persons.
pub const PERSONS: Limit = limit(2_000, id!("limit-persons"), FEWER);
/// Values of a draft or view.
pub const VALUES: Limit = limit(5_000, id!("limit-values"), SPLIT);
/// Seams.
pub const SEAMS: Limit = limit(5_000, id!("limit-seams"), SPLIT);
/// Conditions.
pub const CONDITIONS: Limit = limit(2_000, id!("limit-conditions"), SPLIT);
/// Measures.
pub const MEASURES: Limit = limit(2_000, id!("limit-measures"), SPLIT);
/// Steps of a derived piece.
pub const STEPS: Limit = limit(200, id!("limit-steps"), id!("limit-two-goes"));
/// Where pieces lie: on the table, on sheets, in a lay plan.
pub const PLACES: Limit = limit(20_000, id!("limit-places"), FEWER);
/// Steps of the booklet.
pub const BOOKLET: Limit = limit(2_000, id!("limit-booklet"), FEWER);
/// Entries of any other list.
pub const OTHER: Limit = limit(2_000, id!("limit-entries"), FEWER);

/// The limit of the list that stands in this field.
pub(super) fn of_list(field: &str) -> Limit {
    match field {
        "pieces" => PIECES,
        "drawings" => DRAWINGS,
        "points" => POINTS,
        "edges" => EDGES,
        "lines" => LINES,
        "by" => SEGMENTS,
        "through" => THROUGH,
        "girth" | "cup" | "length" | "sizes" => SIZES,
        "rows" => ROWS,
        "cells" => CELLS,
        "persons" => PERSONS,
        "values" => VALUES,
        "seams" => SEAMS,
        "conditions" => CONDITIONS,
        "measures" => MEASURES,
        "steps" => STEPS,
        "places" | "table" => PLACES,
        "booklet" => BOOKLET,
        _ => OTHER,
    }
}

/// The limit of the text that stands in this field.
pub(super) fn of_text(field: &str) -> Limit {
    match field {
        "title" | "note" | "author" | "licence" | "contact" | "what" | "how" | "source" | "reason" | "text" => TEXT,
        _ => FORMULA,
    }
}
