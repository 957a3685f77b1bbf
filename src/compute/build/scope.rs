//! What names mean where a formula stands.

use super::World;
use crate::base::Unit;
use crate::compute::derive::is_hidden;
use crate::compute::graph::order_of;
use crate::compute::names::{DART_MEMBERS, Global, Local, MATERIAL_MEMBERS};
use crate::compute::plan::{Def, NodeId, Part};
use crate::language::{Found, Frame, Kind, Scope, check, nearest, parse};
use crate::texts::say;

/// What is known of a value's kind.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(in crate::compute) enum ValueKind {
    Unknown,
    Known(Kind),
    Broken,
}

/// The place of a formula: in a frame, or outside all of them.
pub(in crate::compute) struct FormulaScope<'a> {
    pub world: &'a World<'a>,
    pub frame: Option<u32>,
}

impl FormulaScope<'_> {
    fn symbol(&self, node: NodeId) -> Found {
        let world = self.world;
        let value = node.wrapping_sub(world.first_value);
        if node >= world.first_value && (value as usize) < world.draft.values.len() {
            return match world.value_kind(value as usize) {
                Some(kind) => Found::Symbol(node, kind),
                None => Found::Broken,
            };
        }
        world.kind(node).map_or(Found::Broken, |kind| Found::Symbol(node, kind))
    }

    /// A name in a frame: what stands after `front.`.
    fn in_frame(&self, frame: u32, parts: &[&str]) -> Option<Found> {
        let names = &self.world.names.frames.get(frame as usize)?.locals;
        match (names.get(*parts.first()?)?, &parts[1..]) {
            (Local::Point(node) | Local::Edge(node), []) => Some(self.symbol(*node)),
            (Local::Dart(first), [member]) => {
                let i = DART_MEMBERS.iter().position(|m| m == member)?;
                Some(self.symbol(first + i as u32))
            }
            _ => None,
        }
    }

    /// A whole piece.
    fn whole(&self, frame: u32) -> Option<Found> {
        let plan = self.world.frames.get(frame as usize)?;
        plan.is_piece.then_some(Found::Symbol(plan.outline, Kind::Piece(Frame(frame))))
    }

    /// A name through a placement: what stands after `back_on_front.`.
    fn through(&self, placement: u32, parts: &[&str]) -> Option<Found> {
        let &(rigid, lay, on) = self.world.placements.get(placement as usize)?;
        let (lay, on) = (lay?, on?);
        match self.in_frame(lay.0, parts)? {
            Found::Symbol(target, kind) => {
                let laid = match kind {
                    Kind::Point(_) => Kind::Point(on),
                    Kind::Edge(_) => Kind::Edge(on),
                    // A length stays what it is.
                    kind => return Some(Found::Symbol(target, kind)),
                };
                Some(Found::Symbol(self.world.laid_node(rigid, target, laid), laid))
            }
            other => Some(other),
        }
    }

    /// All that a dotted name can mean, each with the spelling that says so.
    fn meanings(&self, parts: &[&str]) -> Vec<(Found, String)> {
        let mut out = Vec::new();
        let (first, rest) = (parts[0], &parts[1..]);
        let whole = parts.join(".");
        if let Some(found) = self.frame.and_then(|f| self.in_frame(f, parts)) {
            let frame = &self.world.names.frames[self.frame.unwrap_or(0) as usize];
            out.push((found, format!("{}.{whole}", frame.name)));
            if frame.is_told {
                return out;
            }
        }
        if let Some(global) = self.world.names.globals.get(first) {
            let found = match (global, rest) {
                (Global::Row(node), []) => Some((self.symbol(*node), format!("chart.{whole}"))),
                (Global::Value(node), []) => Some((self.symbol(*node), format!("value.{whole}"))),
                // A bare piece is meant only where nothing else is called so.
                (Global::Frame(f), []) if out.is_empty() => {
                    self.whole(*f).map(|found| (found, format!("piece.{whole}")))
                }
                (Global::Material(first), [member]) => {
                    self.of_material(*first, member).map(|found| (found, format!("material.{whole}")))
                }
                (Global::Frame(f), [_, ..]) => {
                    let word = if self.world.names.frames[*f as usize].is_piece { "piece" } else { "drawing" };
                    self.in_frame(*f, rest).map(|found| (found, format!("{word}.{whole}")))
                }
                (Global::Placement(p), [_, ..]) => self.through(*p, rest).map(|found| (found, whole.clone())),
                _ => None,
            };
            out.extend(found);
        }
        let prefixed = match (first, rest) {
            ("chart", [name]) => self.global(name, |g| matches!(g, Global::Row(_))),
            ("value", [name]) => self.global(name, |g| matches!(g, Global::Value(_))),
            ("piece", [name]) => match self.world.names.globals.get(*name) {
                Some(Global::Frame(f)) => self.whole(*f),
                _ => None,
            },
            ("piece" | "drawing", [name, inner @ ..]) if !inner.is_empty() => {
                match self.world.names.globals.get(*name) {
                    Some(Global::Frame(f)) => self.in_frame(*f, inner),
                    _ => None,
                }
            }
            ("material", [name, member]) => match self.world.names.globals.get(*name) {
                Some(Global::Material(first)) => self.of_material(*first, member),
                _ => None,
            },
            ("seam", [name, member]) => self.world.names.seams.get(*name).and_then(|first| {
                let i = ["one", "two", "difference"].iter().position(|m| m == member)?;
                Some(self.symbol(first + i as u32))
            }),
            ("strip", [name]) => self.world.names.strips.get(*name).map(|node| self.symbol(*node)),
            ("measure", [name]) => self.world.names.measures.get(*name).map(|node| self.symbol(*node)),
            _ => None,
        };
        out.extend(prefixed.map(|found| (found, whole)));
        out
    }

    /// A number of a material whose first is this node; none where it is left empty.
    fn of_material(&self, first: NodeId, member: &str) -> Option<Found> {
        let node = first + MATERIAL_MEMBERS.iter().position(|m| *m == member)? as NodeId;
        self.world.kind(node).map(|_| self.symbol(node))
    }

    fn global(&self, name: &str, fits: fn(&Global) -> bool) -> Option<Found> {
        match self.world.names.globals.get(name).filter(|g| fits(g))? {
            Global::Row(node) | Global::Value(node) => Some(self.symbol(*node)),
            _ => None,
        }
    }

    /// The nearest name that could stand here.
    fn hint(&self, parts: &[&str]) -> Option<String> {
        let names = &self.world.names;
        // Nobody is offered a name of the program's own.
        let told = |name: &&str| !is_hidden(name);
        let locals = |f: u32| names.frames[f as usize].locals.keys().map(String::as_str).filter(told);
        match parts {
            [one] => {
                let own = self.frame.into_iter().flat_map(locals);
                let global = names.globals.iter().filter(|(_, g)| matches!(g, Global::Row(_) | Global::Value(_)));
                let elsewhere = || {
                    // A name that only another frame has: say it in full.
                    let f = names.frames.iter().find(|f| !is_hidden(&f.name) && f.locals.contains_key(*one))?;
                    Some(format!("{}.{one}", f.name))
                };
                nearest(one, own.chain(global.map(|(n, _)| n.as_str()))).map(str::to_owned).or_else(elsewhere)
            }
            [first, second, rest @ ..] => {
                let tail: String = rest.iter().map(|r| format!(".{r}")).collect();
                match names.globals.get(*first) {
                    Some(Global::Frame(f)) => nearest(second, locals(*f)).map(|n| format!("{first}.{n}{tail}")),
                    Some(Global::Placement(p)) => {
                        let frame = self.world.placements.get(*p as usize)?.1?;
                        nearest(second, locals(frame.0)).map(|n| format!("{first}.{n}{tail}"))
                    }
                    Some(_) => None,
                    None if *first == "seam" => {
                        nearest(second, names.seams.keys().map(String::as_str)).map(|n| format!("seam.{n}{tail}"))
                    }
                    None => {
                        let globals = names.globals.keys().map(String::as_str).filter(told);
                        nearest(first, globals).map(|n| format!("{n}.{second}{tail}"))
                    }
                }
            }
            [] => None,
        }
    }
}

impl Scope for FormulaScope<'_> {
    fn look_up(&self, parts: &[&str]) -> Found {
        let mut meanings = self.meanings(parts);
        match meanings.len() {
            0 => Found::Unknown(self.hint(parts)),
            1 => meanings.remove(0).0,
            _ => Found::Ambiguous(meanings.into_iter().map(|(_, spelling)| spelling).collect()),
        }
    }

    fn frame(&self) -> Option<Frame> {
        self.frame.map(Frame)
    }

    fn frame_name(&self, frame: Frame) -> String {
        self.world.names.frames.get(frame.0 as usize).map_or(String::new(), |f| f.name.clone())
    }

    fn unit(&self) -> Unit {
        self.world.unit
    }

    fn row_in(&self, symbol: u32, size: &str) -> Result<u32, String> {
        let row = match self.world.nodes.borrow().get(symbol as usize).map(|n| &n.def) {
            Some(Def::Row(row)) => *row,
            _ => return Err(say!("in-size-row")),
        };
        let case = self.world.cases.of_range(size)? as u32;
        let earlier = self.world.earlier.and_then(|e| e.in_sizes.get(&(row, case)));
        if let Some(node) = earlier.or(self.world.in_sizes.borrow().get(&(row, case))) {
            return Ok(*node);
        }
        let name = self.world.nodes.borrow()[symbol as usize].part.name.clone();
        let part = Part { name: format!("{name} in {size}").into(), ..Part::default() };
        let node = self.world.push(part, self.world.kind(symbol));
        self.world.define(node, Def::RowIn(row, case));
        self.world.in_sizes.borrow_mut().insert((row, case), node);
        Ok(node)
    }

    fn outline(&self, frame: Frame) -> Option<(u32, f64)> {
        let plan = self.world.frames.get(frame.0 as usize).filter(|f| f.is_piece)?;
        let piece = self.world.draft.pieces.get(frame.0 as usize)?;
        let copies = piece.cuts.first().map_or(1, |cut| cut.count.max(1) * if cut.on_fold.is_empty() { 1 } else { 2 });
        Some((plan.outline, f64::from(copies)))
    }

    fn on_paper(&self, edge: u32) -> u32 {
        if self.world.flats.contains(&(edge + 1)) { edge + 1 } else { edge }
    }
}

impl World<'_> {
    /// The node of a point or edge seen through a placement.
    fn laid_node(&self, rigid: NodeId, target: NodeId, kind: Kind) -> NodeId {
        let earlier = self.earlier.and_then(|e| e.laid.get(&(rigid, target)));
        if let Some(node) = earlier.or(self.laid.borrow().get(&(rigid, target))) {
            return *node;
        }
        let (rigid_name, target_part) = {
            let nodes = self.nodes.borrow();
            (nodes[rigid as usize].part.name.clone(), nodes[target as usize].part.clone())
        };
        let short = rigid_name.strip_prefix("placement ").unwrap_or(&rigid_name);
        let local = target_part.name.split_once('.').map_or("", |(_, l)| l);
        let part = Part { name: format!("{short}.{local}").into(), ..target_part };
        let node = self.push(part, Some(kind));
        self.define(node, Def::Laid(rigid, target));
        self.laid.borrow_mut().insert((rigid, target), node);
        node
    }

    /// What a value's formula (or start) gives; `None` if that cannot be said.
    fn value_kind(&self, i: usize) -> Option<Kind> {
        match self.kinds.borrow()[i] {
            ValueKind::Known(kind) => Some(kind),
            ValueKind::Broken | ValueKind::Unknown => None,
        }
    }

    /// Finds the kinds of all values, in the order in which they name one another, and the circles among them.
    pub(in crate::compute) fn find_value_kinds(&self) -> Vec<Vec<usize>> {
        let values = &self.draft.values;
        let text = |i: usize| if values[i].is_found() { &values[i].start } else { &values[i].is };
        let read: Vec<_> = (0..values.len()).map(|i| parse(text(i)).ok()).collect();
        let needs = |i: usize| {
            let mut needed = Vec::new();
            if let Some(expr) = &read[i] {
                expr.each_name(&mut |parts| {
                    let name = match parts {
                        [word, name, ..] if word.text == "value" => &name.text,
                        [name, ..] => &name.text,
                        [] => return,
                    };
                    if let Some(Global::Value(node)) = self.names.globals.get(name.as_str()) {
                        needed.push((node - self.first_value) as usize);
                    }
                });
            }
            needed
        };
        let (order, circles) = order_of(values.len(), needs);
        let scope = FormulaScope { world: self, frame: None };
        for i in order {
            let kind = match (&read[i], circles.iter().any(|c| c.contains(&i))) {
                (Some(expr), false) => check(expr, &scope).ok().map(|checked| checked.kind),
                _ => None,
            };
            self.kinds.borrow_mut()[i] = kind.map_or(ValueKind::Broken, ValueKind::Known);
        }
        circles
    }
}
