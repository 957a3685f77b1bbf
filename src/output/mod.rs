//! What leaves the program: sheets as drawings, drawings as files, files on the disk.
//!
//! A sheet is a [`Picture`] in millimetres; arranging (`wide`) knows no file format, the writer (`pdf`) knows no piece.
//! Which pieces in which sizes are published, and whether findings forbid it, is decided above.

mod booklet;
mod compare;
mod dashes;
mod drawing;
mod dxf;
mod folder;
mod font;
mod guide;
mod home;
mod interchange;
mod label;
pub mod lay;
mod layout;
mod lettering;
mod nest;
mod notes;
mod paper;
mod pdf;
mod pdf_stream;
mod pdf_text;
mod photo;
mod picture_digest;
mod pieces;
mod projector;
mod save;
mod svg;
mod tables;
mod title_block;
mod wide;
mod writing;

pub use booklet::{BookletOrder, allowance_words, booklet, steps_of_view};
pub use compare::{Change, Comparison, Difference, Missing, NotCompared, Pair, Side, Sizes, Thing, Unit, compare};
pub use drawing::{Align, Ink, Item, Pen, Picture, Shared, Text};
pub use dxf::{DxfError, DxfSettings, write as write_dxf};
pub use folder::{FolderError, save_folder};
pub use font::{missing_signs, text_width};
pub use home::{HomeSettings, HomeSheets, MOST_SIZES, PageInfo, home_sheets, row_letter};
pub use interchange::{OpenCut, OpenPiece, interchange_drawing, open_pieces};
pub use label::{Room, Shapes};
pub use layout::Layout;
pub use lettering::CAPITAL;
pub use notes::edition_words;
pub use paper::{HOME_MARGIN, Paper, lacking, pages_over};
pub use pdf::{MAX_SIDE, PdfError, write as write_pdf};
pub use photo::{Photo, PhotoError};
pub use picture_digest::picture_digest;
pub use pieces::{fold_of, lines, outline, sheet_pieces, signs, stack};
pub use projector::{Grid, ProjectorError, ProjectorSettings, projector_sheet, projector_sheets};
pub use save::{SaveError, make_folder, save_all};
pub use svg::{SvgError, SvgSettings, write as write_svg};
pub use tables::{check_list, cloth_without_plan, lines_open, tables, tables_of};
pub use wide::{GAP, MARGIN, SheetError, SheetPiece, WideSettings, wide_sheet};
pub use writing::{
    Block, Cell, HeadingPlace, Line, Shown, Table, Writing, both_units, cell_of, html as write_html,
    pages as written_pages, pages_and_headings, to_csv, words_of,
};
