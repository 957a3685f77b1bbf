//! The arguments of `lay`.

use std::path::PathBuf;

use clap::{Args, ValueEnum};

use super::Comments;
use crate::document::ClothLaid;

/// Arguments of `lay`.
#[derive(Args, Debug)]
pub struct LayCall {
    /// The draft.
    pub file: PathBuf,
    /// The material; may be left out where the draft has one.
    #[arg(long)]
    pub material: Option<String>,
    /// The width of the cloth, selvedge to selvedge, such as `45 in`; may be repeated. Without it the widths of the material.
    #[arg(long = "width")]
    pub widths: Vec<String>,
    /// Only this size, as `SIZE`, or `VIEW//SIZE` in one view; may be repeated. Without it all sizes of the range.
    #[arg(long = "size")]
    pub sizes: Vec<String>,
    /// Several garments on one cloth, such as `2 x S, 4 x M`; may be repeated.
    #[arg(long = "group", value_name = "SIZES", conflicts_with = "sizes")]
    pub groups: Vec<String>,
    /// Only this view; may be repeated.
    #[arg(long = "view", value_name = "VIEW")]
    pub views: Vec<String>,
    /// How the cloth is laid; without it as the draft says.
    #[arg(long, value_enum)]
    pub laid: Option<LaidCall>,
    /// How wide the folded part is, from the fold on, such as `30 cm`; without it as the draft says, else as wide as its pieces need.
    #[arg(long, value_name = "LENGTH")]
    pub folded_part: Option<String>,
    /// All heads lie one way, whatever the draft says.
    #[arg(long)]
    pub nap: bool,
    /// Moves of single pieces for each lay: the same number and seed give the same lays.
    #[arg(long, default_value_t = crate::session::USUAL_MOVES)]
    pub moves: u64,
    /// The best within so many seconds, all lays together; what is found then hangs on the machine.
    #[arg(long)]
    pub seconds: Option<f64>,
    /// Where chance begins.
    #[arg(long, default_value_t = 1)]
    pub seed: u64,
    /// The length of cloth at hand, such as `4 yd`: does each lay fit on it? With `--vary`: how large may a value be?
    #[arg(long, value_name = "LENGTH")]
    pub have: Option<String>,
    /// The value that is varied to use what is at hand, one size and one width.
    #[arg(long, value_name = "VALUE", requires = "have")]
    pub vary: Option<String>,
    /// As JSON on stdout: every piece as it lies, in mm.
    #[arg(long)]
    pub json: bool,
    /// Pictures of the lays into this folder: an SVG file for each, and all as pages of a PDF file.
    #[arg(long, value_name = "DIR")]
    pub out: Option<PathBuf>,
    /// The lays are kept in the draft.
    #[arg(long)]
    pub keep: bool,
    /// What becomes of comments in the file, which rewriting does not keep.
    #[arg(long, value_enum)]
    pub comments: Option<Comments>,
}

/// How cloth is laid.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum LaidCall {
    /// In a single layer.
    Open,
    /// Folded along its length.
    Folded,
    /// Both selvedges to the middle.
    ToMiddle,
    /// Folded as far as pieces need it.
    Part,
}

impl LaidCall {
    pub(super) fn laid(self) -> ClothLaid {
        match self {
            Self::Open => ClothLaid::Open,
            Self::Folded => ClothLaid::Folded,
            Self::ToMiddle => ClothLaid::FoldedToMiddle,
            Self::Part => ClothLaid::FoldedPart,
        }
    }
}
