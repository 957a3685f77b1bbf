//! Tables as text for spreadsheets: RFC 4180, UTF-8, lines end with CR LF. What separates cells, and how a number is written, is what a
//! spreadsheet of the language expects that opens the file unasked.

use super::{Cell, Line, Table};
use crate::base::round_half_away;
use crate::texts::{decimal, inch, spreadsheet, t};

/// The step to which millimetres are written.
const MM_PLACES: usize = 3;

/// A table as comma separated text; in German as semicolon separated text with decimal commas.
///
/// The first line is the head, with a column `unit` behind the names, and before them a column `group` where lines have one. A line with
/// lengths becomes three: `mm` with three decimals, `cm` and `in` as shown elsewhere; any other is one without a unit. Signs stand in a
/// line `sign` of their own, so that numbers stay numbers, and sentences come last, one each line, as `note`.
///
/// What cannot be computed is a dash, never a number. Inches below one are written `0 3/8`, because spreadsheets take `3/8` for a date.
/// Words that a spreadsheet would take for a formula (they begin with `=`, `+`, `-` or `@`) are put between quotation marks: unlike an
/// apostrophe those are words of everyday language, and unlike a space no program strips them.
pub fn to_csv(table: &Table) -> String {
    let grouped = table.lines.iter().any(|l| !l.group.is_empty());
    let mut rows = Vec::new();
    let mut write = |group: &str, name: &str, unit: &str, cells: &mut dyn Iterator<Item = String>| {
        let mut row = Vec::new();
        if grouped {
            row.push(words(group));
        }
        row.extend([words(name), unit.to_owned()]);
        row.extend(cells);
        rows.push(row);
    };
    let (first, sizes) = table.head.split_first().map_or(("", &[][..]), |(f, s)| (f.as_str(), s));
    write(&t!("csv-group"), first, &t!("csv-unit"), &mut sizes.iter().map(|s| words(s)));
    for line in &table.lines {
        let Line { group, name, cells } = line;
        if cells.iter().any(Cell::has_units) {
            write(group, name, "mm", &mut cells.iter().map(in_mm));
            write(group, name, "cm", &mut cells.iter().map(|c| words_of(c, c.unsigned().in_cm())));
            write(group, name, &inch(), &mut cells.iter().map(|c| words_of(c, in_inches(c))));
        } else {
            write(group, name, "", &mut cells.iter().map(|c| words_of(c, c.unsigned().in_cm())));
        }
        if cells.iter().any(|c| !c.sign().is_empty()) {
            write(group, name, &t!("csv-sign"), &mut cells.iter().map(|c| words(c.sign())));
        }
    }
    for note in table.before.iter().chain(&table.notes) {
        write("", note, &t!("csv-note"), &mut sizes.iter().map(|_| String::new()));
    }
    let (separator, mark) = spreadsheet();
    let mut builder = csv::WriterBuilder::new();
    let mut writer =
        builder.delimiter(separator).terminator(csv::Terminator::CRLF).from_writer(mark.as_bytes().to_vec());
    for row in rows {
        // Writing to memory does not fail, and all lines are equally long.
        let _ = writer.write_record(row);
    }
    String::from_utf8(writer.into_inner().unwrap_or_default()).unwrap_or_default()
}

/// A cell in mm.
fn in_mm(cell: &Cell) -> String {
    match cell.unsigned() {
        Cell::Length(mm) | Cell::ToBuy([mm, _]) => {
            let text = format!("{:.MM_PLACES$}", round_half_away(*mm, libm::pow(10.0, -(MM_PLACES as f64))));
            let is_nothing = text.trim_matches(['-', '0', '.']).is_empty();
            decimal(if is_nothing { text.trim_start_matches('-') } else { &text })
        }
        other => words_of(other, other.in_cm()),
    }
}

/// A cell in inches, with the whole number told also where it is 0.
fn in_inches(cell: &Cell) -> String {
    let text = cell.unsigned().in_inches();
    let is_length = cell.has_units();
    match text.strip_prefix('-') {
        Some(rest) if is_length && text.contains('/') && !text.contains(' ') => format!("-0 {rest}"),
        None if is_length && text.contains('/') && !text.contains(' ') => format!("0 {text}"),
        _ => text,
    }
}

/// What is shown of a cell, made safe where it is words.
fn words_of(cell: &Cell, shown: String) -> String {
    if matches!(cell.unsigned(), Cell::Words(_)) { words(&shown) } else { shown }
}

/// Words that no spreadsheet takes for a formula.
fn words(text: &str) -> String {
    if text.trim_start().starts_with(['=', '+', '-', '@']) { format!("“{text}”") } else { text.to_owned() }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn table(cells: Vec<Cell>) -> Table {
        let head = std::iter::once("line".to_owned()).chain((0..cells.len()).map(|i| format!("s{i}"))).collect();
        Table { head, lines: vec![Line { name: "a, \"b\"".to_owned(), cells, ..Line::default() }], ..Table::default() }
    }

    #[test]
    fn a_length_is_three_lines_each_from_the_millimetres() {
        // C056: 1450 mm is 145.0 cm and 57 1/8 in. C054: 9/8 in is 1 1/8 in.
        let cells =
            vec![Cell::Length(1450.0), Cell::Length(28.575), Cell::Length(9.525), Cell::Missing, Cell::Length(-1.0e-7)];
        let text = to_csv(&table(cells));
        let lines: Vec<&str> = text.split("\r\n").collect();
        assert_eq!(
            lines,
            [
                "line,unit,s0,s1,s2,s3,s4",
                "\"a, \"\"b\"\"\",mm,1450.000,28.575,9.525,–,0.000",
                "\"a, \"\"b\"\"\",cm,145.0,2.9,1.0,–,0.0",
                "\"a, \"\"b\"\"\",in,57 1/8,1 1/8,0 3/8,–,0",
                ""
            ]
        );
    }

    #[test]
    fn words_are_no_formulas_and_numbers_below_zero_stay_numbers() {
        let cells = ["=1+1", " +1", "-x", "@a", "fine"].map(|w| Cell::Words(w.to_owned()));
        let text = to_csv(&table(cells.to_vec()));
        assert!(text.contains("“=1+1”,“ +1”,“-x”,“@a”,fine"), "{text}");
        let text = to_csv(&table(vec![Cell::Length(-76.2), Cell::Number(-0.5), Cell::Length(-9.525)]));
        assert!(text.contains("mm,-76.200,-0.5,-9.525") && text.contains("in,-3,-0.5,-0 3/8"), "{text}");
    }

    #[test]
    fn signs_and_notes_stand_in_lines_of_their_own() {
        let mut table = table(vec![Cell::Length(10.0).signed("?"), Cell::Length(20.0)]);
        table.notes.push("?: guessed, not measured".to_owned());
        let text = to_csv(&table);
        assert!(text.contains("mm,10.000,20.000\r\n") && text.contains(",sign,?,\r\n"), "{text}");
        assert!(text.ends_with("\"?: guessed, not measured\",note,,\r\n"), "{text}");
    }
}
