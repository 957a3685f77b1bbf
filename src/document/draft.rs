//! The whole draft: its head, its settings and the lists of its parts.

use std::sync::Arc;

use serde::{Deserialize, Serialize};

use super::{
    BookletStep, Care, Chart, Condition, Drawing, Joint, LayPlan, Log, Material, Measure, Notion, Picture, Piece,
    Placement, Seam, Sheet, Strip, TablePlace, TakenBlock, Value, View, is_default,
};
use crate::base::{DisplayUnit, Language};

/// A draft as it stands in its file. Lists are in the order in which the person put them.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Draft {
    /// Always [`super::FORMAT`].
    pub format: String,
    /// The version of the format, see [`super::VERSION`].
    pub version: u32,
    /// What the pattern is called.
    pub title: String,
    /// Anything worth telling, in plain words.
    pub note: String,
    /// Who drafted it.
    pub author: String,
    /// On what terms it may be used.
    pub licence: String,
    /// Where the buyer can ask.
    pub contact: String,
    /// Edition of the pattern, as printed on it.
    pub edition: String,
    /// Date of the edition, as printed on it.
    pub date: String,
    /// The unit in which lengths are shown. Changes no formula.
    pub display: DisplayUnit,
    /// The language of all that is published. Changes no number.
    #[serde(skip_serializing_if = "is_default")]
    pub language: Language,
    /// Who is to wear it: decides which cautions are shown.
    #[serde(skip_serializing_if = "is_default")]
    pub audience: Audience,
    /// What else cautions hang on.
    #[serde(skip_serializing_if = "is_default")]
    pub care: Care,
    /// Limits by which proof judges, and defaults.
    pub settings: DraftSettings,
    /// Blocks that were taken from other drafts.
    pub blocks: Vec<TakenBlock>,
    /// The body chart.
    pub chart: Chart,
    /// Named style values and values that are found.
    pub values: Vec<Value>,
    /// Frames of points and lines from which pieces are traced.
    pub drawings: Vec<Arc<Drawing>>,
    /// The pieces.
    pub pieces: Vec<Arc<Piece>>,
    /// Pieces and drawings laid on one another.
    pub placements: Vec<Placement>,
    /// Which edges are sewn to which.
    pub seams: Vec<Arc<Seam>>,
    /// Corners that are meant not to run on.
    pub joints: Vec<Joint>,
    /// Equations that must hold and comparisons that are watched.
    pub conditions: Vec<Condition>,
    /// Finished measures.
    pub measures: Vec<Measure>,
    /// Cloth, lining, interfacing.
    pub materials: Vec<Material>,
    /// Things cut to a length.
    pub strips: Vec<Strip>,
    /// Things bought.
    pub notions: Vec<Notion>,
    /// Versions of the garment.
    pub views: Vec<View>,
    /// The written part.
    pub booklet: Vec<BookletStep>,
    /// How it is published.
    pub sheets: Vec<Sheet>,
    /// Where a person put a piece on the table or on a sheet.
    pub table: Vec<TablePlace>,
    /// Pictures that lie under pieces while they are drawn. No number of the draft hangs on them.
    pub pictures: Vec<Picture>,
    /// Lay plans that a person accepted.
    pub plans: Vec<LayPlan>,
    /// Findings that a person silenced, each with its reason.
    pub silenced: Vec<Silence>,
    /// Fittings and releases.
    pub log: Log,
}

/// Who is to wear the garment.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Audience {
    /// Not said.
    #[default]
    Unstated,
    /// Adults.
    Adult,
    /// Children of these ages, as plain words ("2 years", "14 years").
    Child {
        /// The youngest.
        from: String,
        /// The oldest.
        to: String,
    },
}

/// Limits by which proof judges this draft, and its defaults: formulas without names. Empty means the built-in one.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct DraftSettings {
    /// How far two sides of a seam may differ from what is meant (1 mm).
    pub seam_limit: String,
    /// How far two notches that meet may be apart (1 mm).
    pub notch_limit: String,
    /// How far a line that runs over a seam may be bent there (1°).
    pub joint_angle: String,
    /// How far it may be off 10 mm beside the seam (0.5 mm).
    pub joint_gap: String,
    /// The nearest that a notch may come to the stitching (1/8 in).
    pub notch_margin: String,
    /// How deep a notch is cut; empty: as deep as the allowance leaves, at most 1/4 in.
    pub notch_depth: String,
    /// Seam allowance where an edge says none.
    pub allowance: String,
    /// Unprintable border of home printers' pages.
    pub page_margin: String,
    /// How far one size may stand out from its neighbours, in an angle of a corner (1°) …
    pub odd_angle: String,
    /// … and in the length of an edge (3 mm).
    pub odd_length: String,
    /// How far a grain line may be off the line that it must follow (0.25°).
    pub grain_angle: String,
    /// Checks that are switched off: the code of the finding, and why.
    pub unchecked: Vec<(String, String)>,
}

/// A finding that a person has looked at and silenced. It speaks again when its number grows.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Silence {
    /// The finding's code.
    pub code: String,
    /// The name of the thing that it speaks of (`seam.side`, `front.armhole`).
    pub at: String,
    /// The number that was seen when it was silenced, with its unit.
    pub number: String,
    /// Why that is fine.
    pub reason: String,
}
