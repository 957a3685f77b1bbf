//! The body chart: axes of sizes, rows of measures, persons.

use serde::{Deserialize, Serialize};

use super::is_default;

use crate::texts::say;

/// The body chart.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Chart {
    /// Labels along the girth axis, smallest first. Empty: the axis is not used.
    pub girth: Vec<String>,
    /// Labels along the cup axis.
    pub cup: Vec<String>,
    /// Labels along the length axis.
    pub length: Vec<String>,
    /// Address of the base size: the zero of steps and the first to be shown. It has no power over geometry.
    pub base: String,
    /// Whether its rows are a survey of bodies: what was found, not a chart to fit by. Nothing drafted on it is released.
    #[serde(skip_serializing_if = "is_default")]
    pub survey: bool,
    /// Named parts of the range with their own base and sheets. None: one set of all sizes.
    pub sets: Vec<SizeSet>,
    /// The rows.
    pub rows: Vec<Row>,
    /// Single bodies, kept out of range sheets, tables and drift checks.
    pub persons: Vec<Person>,
}

/// One of the three axes of a chart.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Axis {
    /// Going around.
    Girth,
    /// Cup.
    Cup,
    /// Going up.
    Length,
}

impl Axis {
    /// All of them, in the order in which addresses name them.
    pub const ALL: [Self; 3] = [Self::Girth, Self::Cup, Self::Length];

    /// Its word in files and where it is typed.
    pub fn word(self) -> &'static str {
        self.pick("girth", "cup", "length")
    }

    /// Its word for whoever is at the program.
    pub fn words(self) -> String {
        match self {
            Self::Girth => say!("axis-girth"),
            Self::Cup => say!("axis-cup"),
            Self::Length => say!("axis-length"),
        }
    }

    /// The axis of this word.
    pub fn of(word: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|a| a.word() == word)
    }

    /// Its own of three things, one for each axis.
    fn pick<T>(self, girth: T, cup: T, length: T) -> T {
        match self {
            Self::Girth => girth,
            Self::Cup => cup,
            Self::Length => length,
        }
    }
}

impl Chart {
    /// Labels along an axis.
    pub fn labels(&self, axis: Axis) -> &Vec<String> {
        axis.pick(&self.girth, &self.cup, &self.length)
    }

    /// Labels along an axis, to be changed.
    pub fn labels_mut(&mut self, axis: Axis) -> &mut Vec<String> {
        axis.pick(&mut self.girth, &mut self.cup, &mut self.length)
    }

    /// Every place of a row that varies by these axes: labels joined by `/`, the last axis going fastest. None where it varies
    /// by no axis.
    pub fn keys(&self, by: &[Axis]) -> Vec<String> {
        let Some((first, rest)) = by.split_first() else { return Vec::new() };
        let mut keys = self.labels(*first).clone();
        for axis in rest {
            keys = keys.iter().flat_map(|k| self.labels(*axis).iter().map(move |l| format!("{k}/{l}"))).collect();
        }
        keys
    }

    /// Whether there is such a place for a row that varies by these axes.
    pub fn has_key(&self, by: &[Axis], key: &str) -> bool {
        let parts: Vec<&str> = key.split('/').collect();
        !by.is_empty()
            && parts.len() == by.len()
            && parts.iter().zip(by).all(|(part, axis)| self.labels(*axis).iter().any(|l| l == part.trim()))
    }
}

impl SizeSet {
    /// Its own labels along an axis; none: all of the chart's.
    pub fn labels(&self, axis: Axis) -> &Vec<String> {
        axis.pick(&self.girth, &self.cup, &self.length)
    }

    /// The same, to be changed.
    pub fn labels_mut(&mut self, axis: Axis) -> &mut Vec<String> {
        axis.pick(&mut self.girth, &mut self.cup, &mut self.length)
    }
}

/// A named part of the range.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct SizeSet {
    /// Its name.
    pub name: String,
    /// Its girth labels, all of the chart's if empty; likewise the other two.
    pub girth: Vec<String>,
    /// Its cup labels.
    pub cup: Vec<String>,
    /// Its length labels.
    pub length: Vec<String>,
    /// Its base size.
    pub base: String,
    /// The sheets it is published on.
    pub sheets: Vec<String>,
}

/// Whether a row is a measure of bodies or anything else that goes by size.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum RowKind {
    /// A measure of the body; published.
    #[default]
    Body,
    /// Anything else that goes by size; never published.
    House,
}

/// A label (or labels joined by `/`, one for each axis of the row) and the formula typed for it.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Cell(pub String, pub String);

/// A row of the chart.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Row {
    /// Its name in formulas.
    pub name: String,
    /// Body or house.
    pub kind: RowKind,
    /// What is measured.
    pub what: String,
    /// At which level of the body.
    pub level: String,
    /// How to take it.
    pub how: String,
    /// Where the numbers come from.
    pub source: String,
    /// Anything else.
    pub note: String,
    /// By which axes it varies.
    pub by: Vec<Axis>,
    /// Formula for sizes without a cell. May name other rows.
    pub is: String,
    /// What was typed for single sizes.
    pub cells: Vec<Cell>,
}

/// A single body.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Person {
    /// Name or number; also the address by which it is asked for.
    pub name: String,
    /// Anything else.
    pub note: String,
    /// Row name and formula.
    pub cells: Vec<Cell>,
}
