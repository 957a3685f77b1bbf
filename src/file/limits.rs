//! Every limit of the reader, with its message. They are far above what a garment needs and keep a damaged or malicious
//! file from filling the memory. How many sizes the axes make together is a matter of computing.

/// How much of something a file may hold, and how an error says so.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Limit {
    /// The most that is read.
    pub most: usize,
    /// What is counted.
    pub of: &'static str,
    /// What to do about it.
    pub hint: &'static str,
}

const fn limit(most: usize, of: &'static str, hint: &'static str) -> Limit {
    Limit { most, of, hint }
}

const SPLIT: &str = "split the draft in two";
const FEWER: &str = "take some out";

/// Bytes of a file (16 MiB).
pub const FILE: Limit = limit(16 * 1024 * 1024, "bytes", SPLIT);
/// Bytes of a file of the person's own (1 MiB).
pub const OWN: Limit = limit(1024 * 1024, "bytes", "delete it");
/// Brackets inside one another. A draft needs nine.
pub const DEPTH: Limit = limit(32, "brackets inside one another", "take out the superfluous brackets");
/// Groups and lists in a file.
pub const GROUPS: Limit = limit(500_000, "groups and lists in the file", SPLIT);
/// Letters of a formula, name or label. The language has its own, lower limit.
pub const FORMULA: Limit = limit(20_000, "letters in a formula, name or label", "name its parts as values or points");
/// Letters of any other text.
pub const TEXT: Limit = limit(200_000, "letters in a text", "shorten it");
/// Pieces of a draft, and pieces named in a view, sheet or step of the booklet.
pub const PIECES: Limit = limit(2_000, "pieces", SPLIT);
/// Drawings.
pub const DRAWINGS: Limit = limit(500, "drawings", SPLIT);
/// Points of a piece or drawing.
pub const POINTS: Limit = limit(5_000, "points", "split the piece");
/// Edges of a piece.
pub const EDGES: Limit = limit(1_000, "edges", "split the piece");
/// Lines of a piece or drawing.
pub const LINES: Limit = limit(1_000, "lines", "split the piece");
/// Segments of an edge (and axes of a row).
pub const SEGMENTS: Limit = limit(500, "entries in `by`", "split the edge");
/// Points that a smooth curve goes through.
pub const THROUGH: Limit = limit(500, "points in `through`", "split the curve");
/// Labels along one axis of the chart.
pub const SIZES: Limit = limit(400, "sizes", FEWER);
/// Rows of the chart.
pub const ROWS: Limit = limit(2_000, "rows", FEWER);
/// Cells of a row or person.
pub const CELLS: Limit = limit(20_000, "cells", FEWER);
/// Persons.
pub const PERSONS: Limit = limit(2_000, "persons", FEWER);
/// Values of a draft or view.
pub const VALUES: Limit = limit(5_000, "values", SPLIT);
/// Seams.
pub const SEAMS: Limit = limit(5_000, "seams", SPLIT);
/// Conditions.
pub const CONDITIONS: Limit = limit(2_000, "conditions", SPLIT);
/// Measures.
pub const MEASURES: Limit = limit(2_000, "measures", SPLIT);
/// Steps of a derived piece.
pub const STEPS: Limit = limit(200, "steps", "derive the piece in two goes");
/// Where pieces lie: on the table, on sheets, in a lay plan.
pub const PLACES: Limit = limit(20_000, "places", FEWER);
/// Steps of the booklet.
pub const BOOKLET: Limit = limit(2_000, "steps in the booklet", FEWER);
/// Entries of any other list.
pub const OTHER: Limit = limit(2_000, "entries", FEWER);

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
