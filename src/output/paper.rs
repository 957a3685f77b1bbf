//! Papers of home printers, and how many pages a drawing takes.

use crate::texts::t;
use kurbo::Size;

/// A paper, or a layout that fits two.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Paper {
    /// ISO 216: 210 x 297 mm.
    A4,
    /// 8 1/2 x 11 in.
    Letter,
    /// One layout that can be printed on both: as wide as A4, as high as Letter.
    #[default]
    Both,
}

/// Unprintable border of most printers, mm: common practice, no source.
pub const HOME_MARGIN: f64 = 10.0;

impl Paper {
    /// The page, mm.
    pub fn page(self) -> Size {
        match self {
            Self::A4 => Size::new(210.0, 297.0),
            Self::Letter => Size::new(215.9, 279.4),
            Self::Both => Size::new(210.0, 279.4),
        }
    }

    /// What can be printed on between the margins, mm.
    pub fn tile(self, margin: f64) -> Size {
        let page = self.page();
        Size::new(page.width - 2.0 * margin, page.height - 2.0 * margin)
    }

    /// As it is named on sheets.
    pub fn words(self) -> String {
        match self {
            Self::A4 => "A4".to_owned(),
            Self::Letter => "US Letter".to_owned(),
            Self::Both => t!("paper-both"),
        }
    }

    /// As it is named in file names.
    pub fn short(self) -> &'static str {
        match self {
            Self::A4 => "A4",
            Self::Letter => "Letter",
            Self::Both => "A4-or-Letter",
        }
    }
}

/// How many pages follow one another over a length, with `overlap` common to neighbours, mm.
///
/// One if it fits; else one and as many more as the rest needs, each page bringing its length less the overlap.
pub fn pages_over(length: f64, tile: f64, overlap: f64) -> usize {
    if length <= tile + crate::base::tolerance::EQUAL {
        return 1;
    }
    let more = (length - tile) / (tile - overlap);
    1 + (more - crate::base::tolerance::EQUAL).ceil().max(1.0) as usize
}

/// Equal parts that follow one another over a length, spread evenly.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spread {
    /// How many.
    pub count: usize,
    /// From the start of one to that of the next, mm; 0 for one alone.
    pub step: f64,
}

impl Spread {
    /// Where a part starts, mm from the start of the length.
    pub fn at(self, part: usize) -> f64 {
        self.step * part as f64
    }
}

/// As few parts of a size as cover a length with at least `overlap` common to neighbours, mm; the last ends where the length does.
pub fn spread_over(length: f64, part: f64, overlap: f64) -> Spread {
    let count = pages_over(length, part, overlap);
    let step = if count > 1 { (length - part) / (count - 1) as f64 } else { 0.0 };
    Spread { count, step }
}

/// By how little a row or column of pages is missed: what would have to be trimmed to save it, mm.
pub fn lacking(length: f64, tile: f64) -> Option<f64> {
    /// More than this is not worth trimming, mm.
    const MOST: f64 = 6.0;
    let pages = pages_over(length, tile, 0.0);
    let over = length - tile * (pages as f64 - 1.0);
    (pages > 1 && over <= MOST).then_some(over)
}
