//! What is published beyond shapes, as formulas: strips, notions, cloth, words with formulas in braces.
//!
//! Like finishing it hangs on the graph and is no part of it: whoever publishes evaluates it, in each case.

use std::sync::Arc;

use super::graph::named_by;
use super::item::Stop;
use super::model::Model;
use super::plan::{Formula, NodeId, Plan};
use crate::document::{Draft, GirthPlace};

/// What a draft says of what is published.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Publishing {
    /// Its strips, in its order; those of a name that is taken are left out.
    pub strips: Vec<StripPlan>,
    /// Its notions, in its order.
    pub notions: Vec<NotionPlan>,
    /// Its materials, in its order.
    pub materials: Vec<MaterialPlan>,
    /// The steps of its booklet, in its order.
    pub booklet: Vec<StepPlan>,
    /// Girths that rules speak of.
    pub girths: Vec<(GirthPlace, Formula)>,
}

/// A strip.
#[derive(Clone, Debug, PartialEq)]
pub struct StripPlan {
    /// Its place in the draft.
    pub place: usize,
    /// The node of its length.
    pub length: NodeId,
    /// Added at each end.
    pub ends: Option<Formula>,
    /// Its finished width.
    pub width: Option<Formula>,
    /// Added along each side.
    pub allowance: Option<Formula>,
    /// Allowance on each side of a join.
    pub join: Option<Formula>,
    /// How far each free end hangs out.
    pub free_end: Option<Formula>,
}

/// A notion.
#[derive(Clone, Debug, PartialEq)]
pub struct NotionPlan {
    /// Its place in the draft.
    pub place: usize,
    /// Its length or size: a length or a number.
    pub size: Option<Formula>,
    /// The sizes in which it is sold, of the same kind.
    pub sold: Vec<Formula>,
}

/// A material.
#[derive(Clone, Debug, PartialEq)]
pub struct MaterialPlan {
    /// Its place in the draft.
    pub place: usize,
    /// The widths in which it is sold.
    pub widths: Vec<Formula>,
    /// The node of its selvedge on each side, if one is told.
    pub selvedge: Option<NodeId>,
    /// The nodes of how much it shrinks, along and across, if that is told.
    pub shrinkage: [Option<NodeId>; 2],
    /// How wide its folded part is.
    pub folded_part: Option<Formula>,
    /// The least distance between two pieces.
    pub gap: Option<Formula>,
    /// The step in which it is sold.
    pub sold_in: Option<Formula>,
}

/// A step of the booklet.
#[derive(Clone, Debug, PartialEq)]
pub struct StepPlan {
    /// Its place in the draft.
    pub place: usize,
    /// Its heading.
    pub title: Braced,
    /// Its words.
    pub text: Braced,
}

/// Words with formulas in braces.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Braced {
    /// Words and formulas in turn.
    pub parts: Vec<BracedPart>,
}

/// A part of such words.
#[derive(Clone, Debug, PartialEq)]
pub enum BracedPart {
    /// Words.
    Words(Arc<str>),
    /// A formula.
    Formula(Formula),
    /// What stood in braces and cannot be read, as it was typed: told as a finding.
    Unread(Arc<str>),
}

impl Braced {
    /// Words without formulas.
    pub fn words(text: &str) -> Self {
        let parts = if text.is_empty() { Vec::new() } else { vec![BracedPart::Words(text.into())] };
        Self { parts }
    }

    /// Its formulas.
    pub fn formulas(&self) -> impl Iterator<Item = &Formula> {
        self.parts.iter().filter_map(|p| match p {
            BracedPart::Formula(f) => Some(f),
            _ => None,
        })
    }
}

impl Publishing {
    /// All its formulas, each with what it belongs to, as findings name it.
    pub fn formulas<'a>(&'a self, draft: &'a Draft) -> Vec<(String, &'a Formula)> {
        let mut out = Vec::new();
        for strip in &self.strips {
            let at = format!("strip.{}", draft.strips[strip.place].name);
            let all = [&strip.ends, &strip.width, &strip.allowance, &strip.join, &strip.free_end];
            out.extend(all.into_iter().flatten().map(|f| (at.clone(), f)));
        }
        for notion in &self.notions {
            let at = format!("notion {}", draft.notions[notion.place].name);
            out.extend(notion.size.iter().chain(&notion.sold).map(|f| (at.clone(), f)));
        }
        for material in &self.materials {
            let at = &draft.materials[material.place].name;
            let all = material.widths.iter().chain(&material.folded_part).chain(&material.gap).chain(&material.sold_in);
            out.extend(all.map(|f| (at.clone(), f)));
        }
        for step in &self.booklet {
            let at = format!("booklet step {}", step.place + 1);
            out.extend(step.title.formulas().chain(step.text.formulas()).map(|f| (at.clone(), f)));
        }
        out.extend(self.girths.iter().map(|(_, f)| ("care".to_owned(), f)));
        out
    }
}

impl Plan {
    /// Whether a view has all that a formula names.
    pub fn has_all_of(&self, formula: &Formula) -> bool {
        named_by(std::iter::once(formula), self).into_iter().all(|node| self.is_needed(node))
    }
}

impl Model {
    /// The number of a formula of this model's plan in a case, mm or radians or plain.
    ///
    /// # Errors
    /// Why it has none there.
    pub fn real(&self, case: usize, formula: &Formula) -> Result<f64, Stop> {
        self.evaluate(&self.plan, case, formula)?.real().ok_or_else(Stop::upstream)
    }
}
