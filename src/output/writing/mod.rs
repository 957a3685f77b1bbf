//! What is written rather than drawn: headings, sentences, tables, figures, of no file format.
//!
//! Tables and the booklet are made of it; `html`, `flow` (pages) and `csv` write it. Lengths stay lengths until then: both units are
//! shown of the one value, each rounded once.

mod csv;
mod flow;
mod grid;
mod html;
mod table;
mod words;

use std::ops::Range;
use std::sync::Arc;

pub use self::csv::to_csv;
use super::{Photo, Picture};
pub use flow::{HeadingPlace, pages, pages_and_headings};
pub use html::html;
pub use table::{Cell, Line, Shown, Table};
pub use words::{both_units, cell_of, words_of};

/// Something written: the booklet, a sheet of tables.
#[derive(Clone, Debug, PartialEq)]
pub struct Writing {
    /// Its title.
    pub title: String,
    /// What stands small under the title and at the foot of every page: edition, date, contact.
    pub about: Vec<String>,
    /// What it consists of.
    pub blocks: Vec<Block>,
    /// Which of its headings, counted through, are those of the booklet's steps; none elsewhere.
    pub steps: Range<usize>,
}

/// A part of something written.
#[derive(Clone, Debug, PartialEq)]
pub enum Block {
    /// A heading of level 2 (a chapter) or 3 (a section); the title is level 1.
    Heading {
        /// 2 or 3.
        level: u8,
        /// Its words.
        text: String,
    },
    /// Sentences.
    Paragraph(String),
    /// Points of a list.
    List {
        /// Whether they are counted.
        numbered: bool,
        /// The points.
        items: Vec<String>,
    },
    /// A table.
    Table(Table),
    /// A drawing between the words.
    Figure {
        /// What is drawn, at its own size in mm; made smaller where it is too wide, never larger.
        picture: Arc<Picture>,
        /// What it shows, for whoever does not see it.
        says: String,
        /// What stands under it; may be empty.
        caption: String,
    },
    /// A picture of points.
    Photo {
        /// The picture.
        photo: Arc<Photo>,
        /// What it shows, for whoever does not see it.
        says: String,
        /// What stands under it; may be empty.
        caption: String,
    },
    /// Something that a person must not miss: where a garment can hurt.
    Caution {
        /// Its heading.
        title: String,
        /// Its sentences.
        text: Vec<String>,
    },
    /// What follows begins on a new page, where there are pages.
    NewPage,
}
