//! What cautions hang on: what the garment is worn as, and which of its measures the rules speak of.

use serde::{Deserialize, Serialize};

use super::is_default;
use crate::texts::say;

/// What is told of a garment so that the usual cautions can be given. What is not told is named as not checked.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Care {
    /// What it is worn as.
    #[serde(skip_serializing_if = "is_default")]
    pub worn_as: WornAs,
    /// Whose sizes the rules are asked for.
    #[serde(skip_serializing_if = "is_default")]
    pub wearers: Wearers,
    /// Which size of the rules each size of the chart is: ("98", "3").
    pub rule_sizes: Vec<(String, String)>,
    /// Girths of the garment that the rules speak of.
    pub girths: Vec<RuleGirth>,
}

/// What a garment is worn as.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum WornAs {
    /// Not said.
    #[default]
    Unstated,
    /// Over other clothes, out of doors.
    Outerwear,
    /// In bed, loose.
    Sleepwear,
    /// In bed, close to the body.
    TightSleepwear,
    /// Anything else.
    Other,
}

/// Whose sizes are meant.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Wearers {
    /// Anyone: the stricter row holds.
    #[default]
    Anyone,
    /// Boys.
    Boys,
    /// Girls.
    Girls,
}

/// A girth of the garment at a place of which the rules speak.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct RuleGirth {
    /// Where.
    pub place: GirthPlace,
    /// How much it is around there, all round: a formula.
    pub is: String,
}

/// A place at which the rules for tight sleepwear measure.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum GirthPlace {
    /// Around the chest.
    #[default]
    Chest,
    /// Around the waist.
    Waist,
    /// Around the seat.
    Seat,
    /// Around the upper arm.
    UpperArm,
    /// Around the thigh.
    Thigh,
    /// Around the wrist.
    Wrist,
    /// Around the ankle.
    Ankle,
}

impl GirthPlace {
    /// All of them, in the order of the columns of the rule.
    pub const ALL: [Self; 7] =
        [Self::Chest, Self::Waist, Self::Seat, Self::UpperArm, Self::Thigh, Self::Wrist, Self::Ankle];

    /// Its word for whoever is at the program.
    pub fn words(self) -> String {
        match self {
            Self::Chest => say!("girth-chest"),
            Self::Waist => say!("girth-waist"),
            Self::Seat => say!("girth-seat"),
            Self::UpperArm => say!("girth-upper-arm"),
            Self::Thigh => say!("girth-thigh"),
            Self::Wrist => say!("girth-wrist"),
            Self::Ankle => say!("girth-ankle"),
        }
    }
}
