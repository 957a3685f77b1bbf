//! Made-up outlines for the tests of sheets, and a sample file for the outside script.

use kurbo::{BezPath, Point};
use tracewheel::output::{SheetError, SheetPiece, WideSettings, wide_sheet, write_pdf};

/// A PDF file with all pieces on one page.
pub fn wide_pdf(title: &str, pieces: &[SheetPiece], settings: WideSettings) -> Result<Vec<u8>, SheetError> {
    Ok(write_pdf(title, &[wide_sheet(title, pieces, settings)?])?)
}

/// A piece from SVG path text.
pub fn piece(name: &str, size: &str, outline: &str, lines: &[&str]) -> SheetPiece {
    SheetPiece {
        name: name.to_owned(),
        size: size.to_owned(),
        outline: BezPath::from_svg(outline).unwrap(),
        edges: vec![BezPath::from_svg(outline).unwrap()],
        stack: kurbo::Vec2::ZERO,
        lines: lines.iter().map(|l| BezPath::from_svg(l).unwrap()).collect(),
        faded: false,
        label_at: None,
        stitch: None,
        notes: Vec::new(),
        about: Vec::new(),
        letter: String::new(),
        words: Vec::new(),
    }
}

/// Five pieces in three sizes: a bodice half with a dart, a sleeve, a strip, a collar, a small facing.
pub fn demo() -> Vec<SheetPiece> {
    let mut pieces = Vec::new();
    for (i, size) in ["36", "40", "Größe 44 lang"].into_iter().enumerate() {
        let grown = 1.0 + 0.06 * i as f64;
        let mut add = |name: &str, outline: &str, lines: &[&str]| {
            let mut piece = piece(name, size, outline, lines);
            let grow = kurbo::Affine::scale(grown);
            piece.outline.apply_affine(grow);
            piece.lines.iter_mut().for_each(|l| l.apply_affine(grow));
            pieces.push(piece);
        };
        let dart = ["M 90 400 L 105 260 L 120 400", "M 60 60 L 60 380"];
        add("Vorderteil", "M 0 70 C 40 70 65 40 70 0 L 200 40 C 170 120 190 170 240 190 L 230 400 L 0 400 Z", &dart);
        add("Ärmel / Рукав", "M 0 150 C 60 140 90 0 170 0 C 250 0 280 140 340 150 L 300 580 L 40 580 Z", &[]);
        add("Waistband ½", "M 0 0 L 380 0 L 380 40 L 0 40 Z", &[]);
        add("Κολάρο", "M 0 60 C 60 20 150 0 220 0 L 235 55 C 160 55 80 70 15 110 Z", &[]);
        add("Facing", "M 0 0 L 28 0 L 28 170 L 0 170 Z", &[]);
    }
    pieces
}

/// Writes the sample sheet to the path in `TRACEWHEEL_SAMPLE_PDF`, for `tests/outside/print.py` and for eyes.
#[test]
#[ignore = "writes a file where TRACEWHEEL_SAMPLE_PDF says"]
fn write_the_sample_sheet() {
    let path = std::env::var("TRACEWHEEL_SAMPLE_PDF").unwrap();
    let mut pieces = demo();
    pieces.push(SheetPiece { faded: true, ..piece("Not yet true 日 Δ∆", "40", "M 0 0 L 130 0 L 65 110 Z", &[]) });
    let bytes = wide_pdf("Bodice & sleeve, spring", &pieces, WideSettings { width: 1400.0 }).unwrap();
    std::fs::write(path, bytes).unwrap();
}

#[test]
fn the_demo_has_usable_outlines() {
    use kurbo::Shape;
    for piece in demo() {
        assert!(piece.outline.area().abs() > 1000.0, "{}", piece.name);
        assert!(piece.outline.winding(Point::new(1e6, 0.0)) == 0);
    }
}
