//! The kinds of things that are published.

/// Kinds of things that are published.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum What {
    /// Pages for printers at home, to be joined.
    Pages,
    /// One wide sheet.
    Wide,
    /// Pictures for a projector.
    Projector,
    /// Tables: body chart, finished measures, strips, notions, cutting list.
    Tables,
    /// The booklet.
    Booklet,
    /// Lay plans that are kept.
    Lays,
    /// The check list, for who makes the pattern.
    CheckList,
    /// Pieces as SVG.
    Svg,
    /// Pieces as DXF.
    Dxf,
}

impl What {
    /// All of them, in the order in which files are listed.
    pub const ALL: [Self; 9] = [
        Self::Pages,
        Self::Wide,
        Self::Projector,
        Self::Tables,
        Self::Booklet,
        Self::Lays,
        Self::CheckList,
        Self::Svg,
        Self::Dxf,
    ];

    /// Its word on the command line and in the window.
    pub fn word(self) -> &'static str {
        match self {
            Self::Pages => "pages",
            Self::Wide => "wide",
            Self::Projector => "projector",
            Self::Svg => "svg",
            Self::Dxf => "dxf",
            Self::Tables => "tables",
            Self::Booklet => "booklet",
            Self::Lays => "lays",
            Self::CheckList => "check-list",
        }
    }

    /// Whether pieces are drawn in it in true size, the sizes of a group together; else all sizes come in one.
    pub(super) fn is_drawn(self) -> bool {
        !matches!(self, Self::Tables | Self::Booklet | Self::Lays | Self::CheckList)
    }

    /// Whether it goes out with an edition; else it is for the maker and for testers.
    pub fn is_for_buyers(self) -> bool {
        self != Self::CheckList
    }

    /// What such a file is for, in words for who buys the pattern.
    pub fn says(self) -> &'static str {
        match self {
            Self::Pages => "pieces in true size on pages of a home printer, to be joined; print the first page first",
            Self::Wide => "pieces in true size on one wide sheet, for a copy shop",
            Self::Projector => {
                "pieces in true size for a projector over the cloth, light lines on black and dark lines on white"
            }
            Self::Svg => "pieces as lines for other drawing programs, in millimetres, each kind of line by itself",
            Self::Dxf => {
                "pieces for cutting machines and other programs of the trade, in the layers of the open standard"
            }
            Self::Tables => {
                "body chart, finished measures, lengths to cut, what to buy, cutting list; to read, or for a spreadsheet"
            }
            Self::Lays => "how the pieces lie on the cloth, and how much of it to buy; a page for each size and width",
            Self::CheckList => {
                "each piece with what it is sewn to, notches, grain, counts and the steps that mention it; for the maker and testers, in no release"
            }
            Self::Booklet => "how to choose a size, what is needed, the pieces, and how it is sewn",
        }
    }
}
