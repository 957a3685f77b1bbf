//! The arguments of what publishes: `publish`, `tables`, `release`.

use std::path::PathBuf;

use clap::{Args, Subcommand};

use super::Comments;

/// Arguments of `tables`.
#[derive(Args, Debug)]
pub struct TablesCall {
    /// The draft.
    pub file: PathBuf,
    /// Only these sizes of the range, as `SIZE`, or `VIEW//SIZE` in one view; may be repeated.
    #[arg(long = "size")]
    pub sizes: Vec<String>,
    /// Only these views; may be repeated. Each view has tables of its own.
    #[arg(long = "view", value_name = "VIEW")]
    pub views: Vec<String>,
    /// The check list instead: each piece with what it is sewn to, notches, grain, counts and the steps that mention it; exits with 1 if
    /// something is open.
    #[arg(long, conflicts_with = "sizes")]
    pub check_list: bool,
    /// Into this folder as comma separated text, a file for each table.
    #[arg(long, value_name = "DIR", conflicts_with = "json")]
    pub csv: Option<PathBuf>,
    /// As JSON on stdout: lengths in mm and as shown in both units.
    #[arg(long)]
    pub json: bool,
}

/// Arguments of `publish`.
#[derive(Args, Debug)]
pub struct PublishCall {
    /// The draft.
    pub file: PathBuf,
    /// The folder to write to; made if it is not there.
    #[arg(long)]
    pub out: PathBuf,
    /// What the print is for: a toile is never blocked, a release is blocked by errors.
    #[arg(long = "for", value_enum, default_value_t = Purpose::Toile)]
    pub purpose: Purpose,
    /// What is written; may be repeated. Without it: sheets on the paper that `--paper` says.
    #[arg(long, value_enum)]
    pub what: Vec<WhatCall>,
    /// A sheet that the draft tells of, by its name; may be repeated. Paper, sizes and pieces are those it tells.
    #[arg(long = "sheet", value_name = "SHEET", conflicts_with_all = ["sizes", "all_sizes", "pieces", "what"])]
    pub sheets: Vec<String>,
    /// Only these sizes (or persons), together in one file, at most six for home printing; without it each size of the
    /// range gets a file of its own. `VIEW//SIZE` is a size in one view.
    #[arg(long = "size")]
    pub sizes: Vec<String>,
    /// Only these views; may be repeated. Each view has files of its own.
    #[arg(long = "view", value_name = "VIEW")]
    pub views: Vec<String>,
    /// All sizes of the range together in one file, each a layer that a reader can switch off.
    #[arg(long, conflicts_with = "sizes")]
    pub all_sizes: bool,
    /// Only these pieces; may be repeated.
    #[arg(long = "piece")]
    pub pieces: Vec<String>,
    /// Pieces that are cut on the fold are drawn whole.
    #[arg(long)]
    pub whole: bool,
    /// One wide sheet, or pages of a home printer: `both` can be printed on A4 and on US Letter.
    #[arg(long, value_enum, default_value_t = PaperCall::Wide)]
    pub paper: PaperCall,
    /// Border that the home printer leaves free, such as `8 mm`; without it the draft's, else 10 mm.
    #[arg(long)]
    pub margin: Option<String>,
    /// Width of the paper of a wide sheet, such as `914 mm` or `36 in`.
    #[arg(long, default_value = "1500 mm")]
    pub width: String,
    /// What is seen of a projection on the cloth, such as `36 x 24 in` or `91 x 61 cm`.
    #[arg(long, value_name = "WIDTH x HEIGHT", default_value = "36 x 24 in")]
    pub picture: String,
    /// How many pixels the projector has there.
    #[arg(long, value_name = "ACROSS x DOWN", default_value = "1280 x 720")]
    pub pixels: String,
    /// Width of lines for a projector, such as `2 mm`; without it as wide as they must be to be seen.
    #[arg(long)]
    pub line: Option<String>,
}

/// Arguments of `release`.
#[derive(Args, Debug)]
#[command(args_conflicts_with_subcommands = true, subcommand_negates_reqs = true)]
pub struct ReleaseCall {
    /// Something else than a new release.
    #[command(subcommand)]
    pub what: Option<ReleaseWhat>,
    /// The draft.
    #[arg(required = true)]
    pub file: Option<PathBuf>,
    /// The folder in which that of the release is made, called by title and edition.
    #[arg(long, required = true)]
    pub out: Option<PathBuf>,
    /// The date of the edition, such as 2026-05-31; without it the draft's own.
    #[arg(long, value_name = "YYYY-MM-DD")]
    pub date: Option<String>,
    /// The folder of the release before, against which changes are told; without it the youngest of the same title in `--out`.
    #[arg(long, value_name = "DIR")]
    pub last: Option<PathBuf>,
    /// There is no release before: no changes are told.
    #[arg(long, conflicts_with = "last")]
    pub first: bool,
    /// What becomes of comments in the file, which rewriting does not keep: the release is written into its log.
    #[arg(long, value_enum)]
    pub comments: Option<Comments>,
}

/// What else is done with releases.
#[derive(Debug, Subcommand)]
pub enum ReleaseWhat {
    /// Copy a release, byte for byte, after every file of it was checked.
    Again {
        /// The folder of the release.
        folder: PathBuf,
        /// The folder in which the copy is made.
        #[arg(long)]
        out: PathBuf,
    },
    /// Say whether every file of a release is as it was written.
    Check {
        /// The folder of the release.
        folder: PathBuf,
    },
}

/// What a print is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, clap::ValueEnum)]
pub enum Purpose {
    /// For a trial garment.
    Toile,
    /// For testers.
    Testers,
    /// For buyers.
    Release,
}

/// What is written.
#[derive(Clone, Copy, Debug, PartialEq, Eq, clap::ValueEnum)]
pub enum WhatCall {
    /// Sheets on the paper that `--paper` says.
    Sheets,
    /// Pages of a home printer.
    Pages,
    /// One wide sheet.
    Wide,
    /// Pictures for a projector, see `--picture` and `--pixels`.
    Projector,
    /// Pieces as lines for other programs, as SVG.
    Svg,
    /// Pieces for other programs of the trade, as DXF.
    Dxf,
    /// Tables of numbers, to read and for spreadsheets.
    Tables,
    /// The booklet.
    Booklet,
    /// Lay plans that the draft keeps.
    Lays,
    /// Each piece with its mates, notches, grain, counts and steps; not for buyers.
    CheckList,
    /// All there is.
    All,
}

/// On what it is printed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, clap::ValueEnum)]
pub enum PaperCall {
    /// One wide sheet, or a roll.
    Wide,
    /// Pages of A4.
    A4,
    /// Pages of US Letter.
    Letter,
    /// Pages that fit both.
    Both,
}
