//! Seams, joints, conditions, measures.

use serde::{Deserialize, Serialize};

use super::is_default;

/// One of the two sides of a seam.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Side {
    /// The side called `one`.
    #[default]
    One,
    /// The side called `two`.
    Two,
}

/// How long the two sides of a seam are meant to be against each other.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Fit {
    /// Equally long.
    #[default]
    Equal,
    /// One side is longer and is eased in.
    Eased {
        /// The longer side.
        longer: Side,
        /// By how much.
        by: String,
    },
    /// One side is gathered.
    Gathered {
        /// The longer side.
        longer: Side,
        /// How many times as long (at least 1); empty: only the limits are looked at.
        #[serde(default, skip_serializing_if = "String::is_empty")]
        times: String,
        /// The least that is fine.
        #[serde(default, skip_serializing_if = "String::is_empty")]
        least: String,
        /// The most that is fine.
        #[serde(default, skip_serializing_if = "String::is_empty")]
        most: String,
    },
    /// One side is stretched.
    Stretched {
        /// The shorter side.
        shorter: Side,
        /// How many times as long (under 1).
        times: String,
    },
}

/// To which side of a seam its allowances are pressed.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum SeamPressed {
    /// Each to its own side.
    #[default]
    Open,
    /// Both towards side one.
    ToOne,
    /// Both towards side two.
    ToTwo,
}

/// Two runs of edges that are sewn together. Both start at the same sewn end.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Seam {
    /// Its name (`seam.name` in formulas).
    pub name: String,
    /// One side: formulas of edges, in order.
    pub one: Vec<String>,
    /// The other side.
    pub two: Vec<String>,
    /// How the sides fit over the whole length, where no stretches are told.
    pub fit: Fit,
    /// Stretches with a fit of their own, in order from the start.
    pub stretches: Vec<Stretch>,
    /// The found values that keep it true. None: it is watched.
    pub found_by: Vec<String>,
    /// Notches, from the start.
    pub notches: Vec<Notch>,
    /// When it is sewn: a number, or `after NAME`.
    pub order: String,
    /// To which side its allowances are pressed.
    #[serde(skip_serializing_if = "is_default")]
    pub pressed: SeamPressed,
    /// Its allowance on both sides, where the edges say none.
    pub allowance: String,
    /// How far from its start it stays open for a zip or another closure; empty: it is sewn all along.
    pub closure: String,
    /// Anything worth telling.
    pub note: String,
}

/// A stretch of a seam with a fit of its own.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Stretch {
    /// Formula of the point on side one at which it ends; empty: the end of the seam.
    pub to_one: String,
    /// Formula of the point on side two at which it ends.
    pub to_two: String,
    /// How the sides fit on it.
    pub fit: Fit,
    /// Instead of a fit of its own: which part of the ease of the whole seam falls on it.
    pub share: String,
}

/// A notch of a seam.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Notch {
    /// Its name.
    pub name: String,
    /// The side on which its place is told.
    #[serde(skip_serializing_if = "is_default")]
    pub on: Side,
    /// Sewn distance, or fraction, from the seam's start; or a point of that side.
    pub at: String,
    /// The place on the other side, where it is told and not left to the program: it is then compared.
    pub other: String,
    /// How many strokes: one, two, three.
    pub strokes: u32,
}

/// Corners that meet in the sewn garment and the angle that they are meant to make.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Joint {
    /// Its name.
    pub name: String,
    /// The corners, `piece.point` each.
    pub corners: Vec<String>,
    /// The sum of their angles that is meant: an angle, or `corner` for any.
    pub meant: String,
    /// Why.
    pub note: String,
}

/// A named equation that must hold (`a = b`), or a comparison that is watched (`a >= b`).
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Condition {
    /// Its name.
    pub name: String,
    /// What must hold.
    pub must: String,
    /// The found values that may give way for it. None told: all that it depends on.
    pub found_by: Vec<String>,
    /// Anything worth telling.
    pub note: String,
}

/// A finished measure.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Measure {
    /// Its name.
    pub name: String,
    /// Its formula, for the whole garment.
    pub is: String,
    /// The body row it stands beside.
    pub body: String,
    /// The least ease that is meant.
    pub ease_least: String,
    /// The most.
    pub ease_most: String,
    /// How far the ease may drift over the range, against the base size; empty: not looked at.
    pub drift_most: String,
    /// The body row over which the opening must pass.
    pub passes: String,
    /// By what part the opening stretches for that.
    pub stretch: String,
    /// Anything worth telling.
    pub note: String,
}
