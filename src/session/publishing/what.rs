//! The kinds of things that are published.

use crate::texts::t;

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

    /// Its word on the command line and in lists of files.
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
    pub fn says(self) -> String {
        match self {
            Self::Pages => t!("what-pages"),
            Self::Wide => t!("what-wide"),
            Self::Projector => t!("what-projector"),
            Self::Svg => t!("what-svg"),
            Self::Dxf => t!("what-dxf"),
            Self::Tables => t!("what-tables"),
            Self::Lays => t!("what-lays"),
            Self::CheckList => t!("what-check-list"),
            Self::Booklet => t!("what-booklet"),
        }
    }

    /// Its heading where files are listed for whoever gets them.
    pub fn heading(self) -> String {
        match self {
            Self::Pages => t!("heading-pages"),
            Self::Wide => t!("heading-wide"),
            Self::Projector => t!("heading-projector"),
            Self::Svg => t!("heading-svg"),
            Self::Dxf => t!("heading-dxf"),
            Self::Tables => t!("heading-tables"),
            Self::Lays => t!("heading-lays"),
            Self::CheckList => t!("heading-check-list"),
            Self::Booklet => t!("heading-booklet"),
        }
    }
}
