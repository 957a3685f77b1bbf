//! Formulas on trial: read and evaluated beside a computed draft, without changing it.
//!
//! For what a person is about to do: which number moves a point how, what a half-typed formula would give.

use std::cell::RefCell;

use super::build::{FormulaScope, World, world_again};
use super::compile::{FormulaReader, ParseCache};
use super::derive::is_hidden;
use super::item::{Item, Stop};
use super::machine::{Access, Runner, laid};
use super::model::Model;
use super::plan::{Def, Formula, NodeId, Plan};
use crate::base::Finding;
use crate::document::Draft;
use crate::language::{Found, Frame, Kind, Scope, Value, What};

/// A draft's names, against which formulas are read.
pub struct Trial<'a> {
    world: World<'a>,
    plan: &'a Plan,
    cache: RefCell<ParseCache>,
}

/// A model, and what a new formula needs beside it: things seen through placements, rows in other sizes.
struct Beside<'a> {
    world: &'a World<'a>,
    model: &'a Model,
    case: usize,
}

impl Access<f64> for Beside<'_> {
    fn item(&self, node: NodeId) -> Option<Item<f64>> {
        if let Some(known) = self.model.item(self.case, node) {
            return Some(known.clone());
        }
        let def = self.world.nodes.borrow().get(node as usize).map(|n| n.def.clone())?;
        match def {
            Def::RowIn(row, case) => Some(Item::Value(Value::Real(self.row(row, Some(case)).ok()?))),
            Def::Laid(rigid, target) => {
                let Item::Rigid(rigid) = self.item(rigid)? else { return None };
                Some(laid(self.item(target)?, &rigid))
            }
            _ => None,
        }
    }
    fn row(&self, row: u32, case: Option<u32>) -> Result<f64, Stop> {
        let case = self.model.cases.get(case.map_or(self.case, |c| c as usize));
        case.and_then(|c| c.rows.get(row as usize)).cloned().unwrap_or_else(|| Err(Stop::upstream()))
    }
}

impl<'a> Trial<'a> {
    /// The names of a draft and the plan that was made of the very same draft.
    pub fn new(draft: &'a Draft, plan: &'a Plan) -> Self {
        Self { world: world_again(draft, &[], plan), plan, cache: RefCell::default() }
    }

    /// Reads a formula that stands in a piece or drawing, or outside all of them.
    ///
    /// # Errors
    /// What is wrong with it; `None` where something that it names is broken itself.
    pub fn read(&self, frame: Option<&str>, text: &str, what: What) -> Result<Formula, Option<Box<Finding>>> {
        let place = self.frame_named(frame);
        let scope = FormulaScope { world: &self.world, frame: place };
        let mut cache = self.cache.borrow_mut();
        let mut reader = FormulaReader { cache: &mut cache, findings: Vec::new(), unit: self.world.unit };
        let own = place.map(Frame).filter(|_| what.is_of_a_frame());
        let read = reader.read_as(text, &scope, what, own, |f| f);
        read.ok_or_else(|| reader.findings.pop().map(Box::new))
    }

    /// What a formula gives in a case, as far as the model knows everything that it names.
    pub fn value(&self, model: &Model, case: usize, formula: &Formula) -> Option<Item<f64>> {
        self.evaluate(model, case, formula).ok()
    }

    /// What a formula gives in a case, or why it gives nothing.
    ///
    /// # Errors
    /// The trouble; something that it names may have no value itself.
    pub fn evaluate(&self, model: &Model, case: usize, formula: &Formula) -> Result<Item<f64>, Stop> {
        let access = Beside { world: &self.world, model, case };
        Runner { plan: self.plan, access: &access }.formula(formula)
    }

    /// All names that a formula there may use, as they would be written, with what they mean: its frame's own first. A name that
    /// would mean two things has what is needed in front of it.
    pub fn known(&self, frame: Option<&str>) -> Vec<(String, NodeId, Kind)> {
        let scope = FormulaScope { world: &self.world, frame: self.frame_named(frame) };
        let mut own = Vec::new();
        let mut other = Vec::new();
        for (i, node) in self.plan.nodes.iter().enumerate() {
            let name = &*node.part.name;
            let Some(kind) =
                node.kind.filter(|_| !name.contains(' ') && !name.starts_with("condition.") && !is_hidden(name))
            else {
                continue;
            };
            let short = match name.split_once('.') {
                Some((piece, local)) if Some(piece) == frame => Some(local),
                Some(("chart" | "value", local)) => Some(local),
                _ => None,
            };
            // Read as a formula would read it: two meanings are an error there.
            let is_plain = |short: &&str| {
                let path: Vec<&str> = short.split('.').collect();
                matches!(scope.look_up(&path), Found::Symbol(found, _) if found == i as NodeId)
            };
            let is_own =
                short.is_some() && frame.is_some_and(|f| name.strip_prefix(f).is_some_and(|r| r.starts_with('.')));
            let written = short.filter(is_plain).unwrap_or(name).to_owned();
            if is_own { &mut own } else { &mut other }.push((written, i as NodeId, kind));
        }
        own.append(&mut other);
        own
    }

    fn frame_named(&self, frame: Option<&str>) -> Option<u32> {
        frame.and_then(|name| self.plan.frames().iter().position(|f| *f.name == *name)).map(|i| i as u32)
    }
}
