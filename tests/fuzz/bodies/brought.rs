//! What is brought in from other programs: drawings, and blocks of a spreadsheet.

use std::sync::Arc;

use tracewheel::base::{Severity, Unit, tolerance};
use tracewheel::compute::Engine;
use tracewheel::document::Draft;
use tracewheel::file;
use tracewheel::file::svg::{Run, read_svg};
use tracewheel::session::{
    Block, ChartCommand, Command, Fate, Home, OutlineCommand, Parted, Tracing, Work, closed_outlines, export_chart,
    import_chart, lay, told_scale, trace,
};

use super::FIXTURE;

/// The most letters that are read of an input.
const MOST: usize = 20_000;
/// The most outlines of a drawing that become pieces.
const MOST_PIECES: usize = 4;

/// A drawing or a block, by the first byte; what is said of it besides is in the second.
pub fn brought(data: &[u8]) {
    let [kind, how, rest @ ..] = data else { return };
    let text = String::from_utf8_lossy(&rest[..rest.len().min(MOST)]);
    if kind % 2 == 0 { drawing(&text, *how) } else { block(&text, *how) }
}

/// An SVG file: what is found in it is finite, and what becomes a piece is one, and is written down and read again.
fn drawing(text: &str, how: u8) {
    let Ok(found) = read_svg(text) else { return };
    for outline in &found.all {
        assert!(outline.start.is_finite(), "{outline:?}");
        for run in &outline.runs {
            let handles = if let Run::Cubic(a, b, _) = run { a.is_finite() && b.is_finite() } else { true };
            assert!(run.end().is_finite() && handles, "{run:?}");
        }
    }
    let (closed, open) = closed_outlines(&found, &["back".to_owned()]);
    assert_eq!(closed.len() + open, found.all.len());
    let scale = told_scale(&found.scale).unwrap_or(1.0);
    let corner = tolerance::TRACED_CORNER * f64::from(1 + how / 8 % 4);
    let unit = if how.is_multiple_of(2) { Unit::Centimetre } else { Unit::Inch };
    let pieces = closed.into_iter().take(MOST_PIECES).map(|o| (o.at, o.name)).collect();
    let Ok((pieces, notes)) = trace(&found, &Tracing { scale, corner, pieces }, unit) else { return };
    let mut work = Work::here(file::read(FIXTURE).unwrap().draft);
    let (before, names) = (Arc::clone(work.draft()), pieces.iter().map(|p| p.name.clone()).collect::<Vec<_>>());
    match work.run(&Command::Outline(Box::new(OutlineCommand::AddPieces(pieces, notes)))) {
        Err(_) => assert!(**work.draft() == *before, "refused, and something was changed"),
        Ok(_) => {
            let written = file::write(work.draft());
            let again = file::read(&written).unwrap_or_else(|e| panic!("{e}\n{written}")).draft;
            assert!(again == **work.draft(), "{written}");
            let wrong = Engine::new().compute(&again).findings;
            let is_own = |place: &str| names.iter().any(|n| place.contains(n.as_str()));
            let wrong: Vec<_> =
                wrong.iter().filter(|f| f.severity() == Severity::Error && is_own(&f.place.name)).collect();
            assert!(wrong.is_empty(), "{wrong:?}\n{written}");
        }
    }
}

/// A block that is pasted, or a table that is imported: what the preview says is what happens, and what is refused changes nothing.
fn block(text: &str, how: u8) {
    let mut work = Work::here(file::read(FIXTURE).unwrap().draft);
    let before = Arc::clone(work.draft());
    let mut block = Block::of(&before, text, Default::default());
    if how % 2 == 1 {
        block.unit = [None, Some(Unit::Centimetre), Some(Unit::Inch), Some(Unit::Degree)][usize::from(how / 2 % 4)];
        (block.add_sizes, block.add_rows) = (how & 8 != 0, how & 16 != 0);
        if how & 32 != 0 {
            block.parted = Parted::ALL[usize::from(how >> 6)];
            block.look_at_shape(&before);
        }
    }
    let laid = lay(&before, &block);
    let taken = work.run(&Command::Chart(ChartCommand::Paste(Box::new(block))));
    if taken.is_err() {
        assert!(**work.draft() == *before, "refused, and something was changed");
    } else {
        assert!(laid.fault.is_none(), "{laid:?}");
        for line in &laid.rows {
            let (Home::Known(row) | Home::New(row)) = &line.home else { continue };
            for (column, cell) in laid.head.iter().zip(&line.cells) {
                let (Fate::Takes(text), Home::Known(column) | Home::New(column)) = (&cell.fate, column) else {
                    continue;
                };
                assert!(stands(work.draft(), row, column, text), "{row}, {column}: {text}\n{laid:?}");
            }
        }
    }
    let mut draft = Draft::clone(&before);
    let unit = (how % 2 == 1).then_some("cm");
    if import_chart(&mut draft, text, unit).is_err() {
        assert!(draft == *before, "refused, and something was changed");
    }
    for draft in [work.draft(), &draft] {
        let written = file::write(draft);
        assert!(file::read(&written).is_ok_and(|o| o.draft == *draft), "{written}");
        export_chart(draft).unwrap();
    }
}

/// Whether a cell of the chart, or of a person, holds this text.
fn stands(draft: &Draft, row: &str, column: &str, text: &str) -> bool {
    let cells = draft.chart.rows.iter().filter(|r| r.name == row).flat_map(|r| &r.cells);
    let own = draft.chart.persons.iter().filter(|p| p.name == column).flat_map(|p| &p.cells);
    cells.filter(|c| c.0 == column).chain(own.filter(|c| c.0 == row)).any(|c| c.1 == text)
}
