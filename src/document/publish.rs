//! Cloth, strips, notions, views, booklet, sheets, log: what the sewer gets.

use serde::{Deserialize, Serialize};

use super::is_default;

use crate::texts::say;

/// A material.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Material {
    /// Its name.
    pub name: String,
    /// What it is.
    pub kind: MaterialKind,
    /// The widths in which it is sold.
    pub widths: Vec<String>,
    /// Selvedge on each side, not used.
    pub selvedge: String,
    /// Whether it has a direction.
    #[serde(skip_serializing_if = "is_default")]
    pub nap: Nap,
    /// How it is laid to be cut.
    #[serde(skip_serializing_if = "is_default")]
    pub laid: ClothLaid,
    /// How wide the folded part is, where a part of it is folded, from the fold on; empty: as wide as its pieces need.
    pub folded_part: String,
    /// The least distance between two pieces; empty: none.
    pub gap: String,
    /// The step in which its length is sold; empty: 1/8 yd where lengths are shown in inches, else 10 cm.
    pub sold_in: String,
    /// How far it stretches along the thread.
    pub stretch_along: String,
    /// How far it stretches across.
    pub stretch_across: String,
    /// How much it shrinks along the thread.
    pub shrinkage_along: String,
    /// How much it shrinks across.
    pub shrinkage_across: String,
    /// Where that is allowed for.
    #[serde(skip_serializing_if = "is_default")]
    pub shrinks: Shrinks,
    /// Anything worth telling.
    pub note: String,
}

/// What a material is.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum MaterialKind {
    /// Outer cloth.
    #[default]
    Cloth,
    /// Lining.
    Lining,
    /// Interfacing.
    Interfacing,
}

/// Whether a cloth has a direction.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Nap {
    /// It has none.
    #[default]
    Without,
    /// All tops one way.
    With,
}

/// How a cloth is laid to be cut.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum ClothLaid {
    /// In a single layer, its right side up.
    #[default]
    Open,
    /// Folded along its length, selvedge on selvedge, right sides together.
    Folded,
    /// Both selvedges folded to the middle, right sides together.
    FoldedToMiddle,
    /// One selvedge folded in as far as pieces need it, the rest in a single layer.
    FoldedPart,
}

impl ClothLaid {
    /// In a few words, which tell each way from the others.
    pub fn words(self) -> String {
        match self {
            Self::Open => say!("lies-open"),
            Self::Folded => say!("lies-folded"),
            Self::FoldedToMiddle => say!("lies-to-middle"),
            Self::FoldedPart => say!("lies-part"),
        }
    }
}

/// Where it is allowed for that a cloth shrinks.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Shrinks {
    /// Pieces are cut larger.
    #[default]
    InPieces,
    /// The cloth is washed before it is cut: more of it is bought, and it is narrower then.
    BeforeCutting,
}

/// A thing cut to a length: binding, elastic, cord, band.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Strip {
    /// Its name.
    pub name: String,
    /// What it is.
    #[serde(skip_serializing_if = "is_default")]
    pub kind: StripKind,
    /// How many; 0: one.
    pub count: u32,
    /// The material it is cut from; empty: bought.
    pub material: String,
    /// Its finished length, from seam to seam: the rule that is printed with it.
    pub length: String,
    /// Added at each end of it; empty: nothing.
    pub ends: String,
    /// Its finished width.
    pub width: String,
    /// How many layers of that width are cut; 0: one.
    pub layers: u32,
    /// Added to the cut width along each of its two sides; empty: nothing.
    pub allowance: String,
    /// Straight or bias.
    #[serde(skip_serializing_if = "is_default")]
    pub grain: StripGrain,
    /// Allowance on each side of a join; empty: it is not joined.
    pub join: String,
    /// Where on the body it is: cautions hang on that.
    #[serde(skip_serializing_if = "is_default")]
    pub place: StripPlace,
    /// How far each free end hangs out where the garment is opened flat; empty: not said; `0 cm` where no end is free.
    pub free_end: String,
    /// Whether it is sewn fast at its middle, so that it cannot be drawn out.
    #[serde(skip_serializing_if = "is_default")]
    pub fastened: bool,
    /// How it stands in lay plans.
    #[serde(skip_serializing_if = "is_default")]
    pub in_lay: StripInLay,
    /// Anything worth telling.
    pub note: String,
}

/// What a strip is.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum StripKind {
    /// A band: sewn on, shown.
    #[default]
    Band,
    /// A binding: wraps an edge.
    Binding,
    /// Elastic.
    Elastic,
    /// A cord, tie or drawstring.
    Cord,
}

/// Where on the body a strip is.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum StripPlace {
    /// Not said.
    #[default]
    Unstated,
    /// At the hood or the neck.
    Neck,
    /// At the waist.
    Waist,
    /// At the lower edge.
    Hem,
    /// Elsewhere.
    Elsewhere,
}

/// How a strip lies on the cloth.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum StripGrain {
    /// Along the thread.
    #[default]
    Along,
    /// Across it.
    Across,
    /// At 45° to it.
    Bias,
}

/// How a strip stands in a lay plan of its cloth.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum StripInLay {
    /// It lies among the pieces; where it must be joined, it is counted.
    #[default]
    Laid,
    /// The length of cloth that strips alone take is added.
    Counted,
}

/// A thing bought.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Notion {
    /// Its name.
    pub name: String,
    /// How many.
    pub count: u32,
    /// Its length or size.
    pub size: String,
    /// The sizes in which it is sold.
    pub sold: Vec<String>,
    /// Anything worth telling.
    pub note: String,
}

/// A version of the garment.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct View {
    /// Its name.
    pub name: String,
    /// The pieces that belong to it.
    pub pieces: Vec<String>,
    /// Values that are other in it: name and formula.
    pub values: Vec<(String, String)>,
    /// Anything worth telling.
    pub note: String,
}

/// A step of the booklet. Formulas in braces become numbers; paragraphs are apart by an empty line, lines that begin with `- ` are
/// points of a list.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct BookletStep {
    /// Its heading.
    pub title: String,
    /// Its words.
    pub text: String,
    /// The pieces that are drawn beside it.
    pub pieces: Vec<String>,
    /// Pictures from files.
    pub pictures: Vec<StepPicture>,
    /// The views it belongs to; none: all.
    pub views: Vec<String>,
}

/// A picture of a step, from a file.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct StepPicture {
    /// Its file (PNG or JPEG), from the folder of the draft on; parts of the way with `/` between.
    pub file: String,
    /// What it shows, for whoever does not see it.
    pub says: String,
    /// What stands under it; may be empty.
    pub caption: String,
}

/// A way in which the pattern is published.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Sheet {
    /// Its name.
    pub name: String,
    /// The paper, in plain words ("A4", "roll 914 mm").
    pub paper: String,
    /// The sizes that come in one file together.
    pub sizes: Vec<String>,
    /// The pieces; none: all.
    pub pieces: Vec<String>,
}

/// Where a person put a piece.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct TablePlace {
    /// The sheet; empty: the table of the window.
    pub sheet: String,
    /// The piece.
    pub piece: String,
    /// To the right.
    pub x: String,
    /// Down.
    pub y: String,
    /// Turned by.
    pub turned: String,
}

/// A picture that lies under a piece or drawing, to be drawn over.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Picture {
    /// The piece or drawing in whose frame it lies, in every size; empty: the table.
    pub under: String,
    /// Its file, from the folder of the draft on; parts of the way with `/` between.
    pub file: String,
    /// Where its upper left corner lies, to the right.
    pub x: String,
    /// The same, down.
    pub y: String,
    /// How long one of its points is; empty: it is not scaled yet.
    pub scale: String,
    /// Turned by, clockwise about that corner.
    pub turned: String,
    /// How much it steps back, in hundredths: 0 as it is, 100 not to be seen.
    #[serde(skip_serializing_if = "is_default")]
    pub fade: u32,
    /// Whether it is kept but not shown.
    #[serde(skip_serializing_if = "is_default")]
    pub hidden: bool,
}

/// A lay plan that a person accepted.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct LayPlan {
    /// Its name.
    pub name: String,
    /// The view; empty where the draft has none.
    pub view: String,
    /// The material.
    pub material: String,
    /// The width of the cloth, selvedge to selvedge.
    pub width: String,
    /// How the cloth is laid.
    #[serde(skip_serializing_if = "is_default")]
    pub laid: ClothLaid,
    /// How wide its folded part is; empty: as wide as its pieces need.
    pub folded_part: String,
    /// Whether all heads lie one way.
    #[serde(skip_serializing_if = "is_default")]
    pub nap: Nap,
    /// The sizes, and how many of each.
    pub sizes: Vec<LaidSize>,
    /// Where each piece lies.
    pub places: Vec<LaidPiece>,
    /// Digest of what is laid and where: another one means that the plan is not of this draft any more.
    pub digest: String,
}

/// A size in a lay plan.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct LaidSize {
    /// Its address.
    pub size: String,
    /// How many garments; 0: one.
    pub count: u32,
}

/// Where a piece lies on the cloth. Its outline is turned so that the head of its grain arrow points along the cloth; then it is turned
/// over (about the length of the cloth), turned, and moved so that the first corner of its box lies where `x` and `y` say.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct LaidPiece {
    /// The piece, or the strip.
    pub piece: String,
    /// Whether it is a strip.
    #[serde(skip_serializing_if = "is_default")]
    pub strip: bool,
    /// Which of its cuts, counted from 0.
    pub cut: u32,
    /// Of which size; empty where the plan has one.
    pub size: String,
    /// On which stretch of the cloth, counted from 0.
    pub stretch: u32,
    /// How far along that stretch, a length.
    pub x: String,
    /// How far across, from the edge of what is used of the width, a length.
    pub y: String,
    /// Turned by, clockwise, an angle; empty: not turned.
    pub turned: String,
    /// Whether it lies face down.
    #[serde(skip_serializing_if = "is_default")]
    pub mirrored: bool,
    /// Whether it lies on two layers and is cut from one of them; the other one stays whole.
    #[serde(skip_serializing_if = "is_default")]
    pub one_layer: bool,
    /// Whether it stays where it is when the rest is laid anew.
    #[serde(skip_serializing_if = "is_default")]
    pub locked: bool,
}

/// What happened to the pattern.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Log {
    /// Fittings.
    pub fittings: Vec<FittingNote>,
    /// Releases.
    pub releases: Vec<Release>,
}

/// A fitting.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct FittingNote {
    /// When.
    pub date: String,
    /// The size that was sewn.
    pub size: String,
    /// In which cloth.
    pub cloth: String,
    /// What was changed.
    pub note: String,
}

/// A release.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Release {
    /// When.
    pub date: String,
    /// Which edition.
    pub edition: String,
    /// Digest of what was written.
    pub digest: String,
}
