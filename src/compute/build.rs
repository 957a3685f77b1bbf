//! From draft to plan: names first, then formulas, then the graph.

mod finishing;
mod frames;
mod parts;
pub(super) mod patch;
mod publishing;
mod scope;

use std::borrow::Cow;
use std::cell::RefCell;
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use super::cases::Cases;
use super::chart::ChartPlan;
use super::compile::{FormulaReader, ParseCache};
use super::derive::{Link, Whole, is_hidden};
use super::graph;
use super::names::{Global, MATERIAL_MEMBERS, NameSet, Names};
use super::plan::{Def, FramePlan, Node, NodeId, Part, Plan};
use super::views;
use crate::base::{DisplayUnit, Finding, Unit};
use crate::document::{Draft, Edge, Piece, Point};
use crate::language::{Frame, Kind};

pub(super) use scope::FormulaScope;

/// The unit proposed where one is missing.
pub fn unit_of(draft: &Draft) -> Unit {
    match draft.display {
        DisplayUnit::Cm => Unit::Centimetre,
        DisplayUnit::Mm => Unit::Millimetre,
        DisplayUnit::InchEighths | DisplayUnit::InchSixteenths => Unit::Inch,
    }
}

/// A placement: its node, the frame that is laid, the frame it is laid on.
type LaidOn = (NodeId, Option<Frame>, Option<Frame>);

/// What is known while formulas are read. Nodes can still be added: those that are named through placements.
pub(super) struct World<'a> {
    pub draft: &'a Draft,
    /// Stages of derived pieces: frames behind pieces and drawings.
    pub stages: &'a [Arc<Piece>],
    links: &'a [Link],
    pub names: Cow<'a, Names>,
    pub nodes: RefCell<Vec<Arc<Node>>>,
    pub cases: &'a Cases,
    pub laid: RefCell<BTreeMap<(NodeId, NodeId), NodeId>>,
    /// Nodes of rows in certain sizes, by row and case.
    pub in_sizes: RefCell<BTreeMap<(NodeId, u32), NodeId>>,
    /// What was heard earlier, if this is the world of a plan again: `laid` and `in_sizes` hold what came since.
    pub earlier: Option<&'a Heard>,
    pub kinds: RefCell<Vec<scope::ValueKind>>,
    pub chart: ChartPlan,
    /// Whether nothing was wrong with the chart's formulas.
    pub chart_is_sound: bool,
    pub frames: Cow<'a, [FramePlan]>,
    /// Nodes of edges as drawn, each behind that of the sewn edge.
    pub flats: Cow<'a, BTreeSet<NodeId>>,
    /// Node of the first value.
    pub first_value: NodeId,
    pub placements: Cow<'a, [LaidOn]>,
    /// Values that name one another in a circle.
    pub circles: Vec<Vec<usize>>,
    pub unit: Unit,
}

impl World<'_> {
    fn push(&self, part: Part, kind: Option<Kind>) -> NodeId {
        let mut nodes = self.nodes.borrow_mut();
        nodes.push(Arc::new(Node { part, def: Def::Broken, kind, deps: Vec::new() }));
        (nodes.len() - 1) as NodeId
    }

    pub(super) fn define(&self, node: NodeId, def: Def) {
        Arc::make_mut(&mut self.nodes.borrow_mut()[node as usize]).def = def;
    }

    pub(super) fn set_kind(&self, node: NodeId, kind: Kind) {
        Arc::make_mut(&mut self.nodes.borrow_mut()[node as usize]).kind = Some(kind);
    }

    pub(super) fn kind(&self, node: NodeId) -> Option<Kind> {
        self.nodes.borrow()[node as usize].kind
    }
}

/// The names of a draft and the kinds of its values; what is wrong with them.
pub(super) fn world_of<'a>(whole: &'a Whole, cases: &'a Cases, cache: &mut ParseCache) -> (World<'a>, Vec<Finding>) {
    let draft = &*whole.draft;
    let unit = unit_of(draft);
    let mut reader = FormulaReader { cache, findings: Vec::new(), unit };
    let chart = ChartPlan::of(&draft.chart, cases, &mut reader);
    let chart_is_sound = reader.findings.is_empty();
    let mut world = World {
        draft,
        stages: &whole.stages,
        links: &whole.links,
        names: Cow::default(),
        nodes: RefCell::default(),
        cases,
        laid: RefCell::default(),
        in_sizes: RefCell::default(),
        earlier: None,
        kinds: RefCell::new(vec![scope::ValueKind::Unknown; draft.values.len()]),
        chart,
        chart_is_sound,
        frames: Cow::default(),
        flats: Cow::default(),
        first_value: 0,
        placements: Cow::default(),
        circles: Vec::new(),
        unit,
    };
    enumerate(&mut world, &mut reader);
    world.circles = world.find_value_kinds();
    (world, reader.findings)
}

/// What is kept of a world in the plan that was made in it, so that single formulas can be read later.
#[derive(Debug)]
pub(super) struct Heard {
    names: Names,
    laid: BTreeMap<(NodeId, NodeId), NodeId>,
    in_sizes: BTreeMap<(NodeId, u32), NodeId>,
    kinds: Vec<scope::ValueKind>,
    flats: BTreeSet<NodeId>,
    first_value: NodeId,
    placements: Vec<LaidOn>,
    unit: Unit,
    chart_is_sound: bool,
}

impl Heard {
    fn of(world: World<'_>) -> Self {
        Self {
            names: world.names.into_owned(),
            laid: world.laid.into_inner(),
            in_sizes: world.in_sizes.into_inner(),
            kinds: world.kinds.into_inner(),
            flats: world.flats.into_owned(),
            first_value: world.first_value,
            placements: world.placements.into_owned(),
            unit: world.unit,
            chart_is_sound: world.chart_is_sound,
        }
    }
}

/// The world of a plan again, for a draft (and its stages) of the same shape as the one that it was made of.
pub(super) fn world_again<'a>(draft: &'a Draft, stages: &'a [Arc<Piece>], plan: &'a Plan) -> World<'a> {
    let heard: &Heard = &plan.heard;
    World {
        draft,
        stages,
        links: &[],
        names: Cow::Borrowed(&heard.names),
        nodes: RefCell::new(plan.nodes.clone()),
        cases: &plan.cases,
        laid: RefCell::default(),
        in_sizes: RefCell::default(),
        earlier: Some(heard),
        kinds: RefCell::new(heard.kinds.clone()),
        chart: ChartPlan::default(),
        chart_is_sound: heard.chart_is_sound,
        frames: Cow::Borrowed(&plan.all_frames),
        flats: Cow::Borrowed(&heard.flats),
        first_value: heard.first_value,
        placements: Cow::Borrowed(&heard.placements),
        circles: Vec::new(),
        unit: heard.unit,
    }
}

/// Makes the plan of a draft; of its views there are further ones.
pub(super) fn build(whole: &Whole, extras: &[&str], cache: &mut ParseCache) -> Plan {
    let draft = &*whole.draft;
    let mut findings = Vec::new();
    let cases = Cases::of(draft, &mut findings);
    let (mut world, found) = world_of(whole, &cases, cache);
    findings.extend(found);
    let mut reader = FormulaReader { cache, findings, unit: world.unit };
    let circles = world.circles.clone();
    parts::values(&world, &circles, &mut reader);
    frames::compile(&world, &mut reader);
    parts::placements(&world, &mut reader);
    parts::materials(&world, &mut reader);
    finishing::strips(&world, &mut reader);
    let measures = finishing::measures(&world, &mut reader);
    let publishing = Arc::new(publishing::publishing(&world, &mut reader));
    let finishings = finishing::pieces(&world, &mut reader);
    for (frame, finishing) in world.frames.to_mut().iter_mut().zip(finishings) {
        frame.finishing = finishing;
    }
    let (seams, conditions, equations) = parts::seams_and_conditions(&world, &mut reader);
    let extras = parts::extras(&world, extras, &mut reader);
    let versions = views::read(&world, &whole.bases, &mut reader);
    let (nodes, chart, frames) =
        (world.nodes.take(), std::mem::take(&mut world.chart), std::mem::take(&mut world.frames).into_owned());
    let heard = Arc::new(Heard::of(world));
    let findings = reader.findings;
    let mut plan = Plan {
        cases,
        nodes,
        all_frames: frames,
        shown: draft.pieces.len() + draft.drawings.len(),
        seams,
        conditions,
        measures,
        publishing,
        equations,
        systems: Vec::new(),
        tasks: Vec::new(),
        homes: Vec::new(),
        extras,
        findings,
        view: None,
        has: Vec::new(),
        has_seams: Vec::new(),
        needed: Vec::new(),
        replaced: BTreeSet::new(),
        shared: Arc::default(),
        versions: Arc::new(versions),
        chart: Arc::new(chart),
        heard,
    };
    if plan.versions.is_empty() {
        graph::arrange(&mut plan);
    } else {
        // What hangs together, and in which order, is a matter of each view.
        graph::depend(&mut plan);
    }
    plan
}

/// Gives every part of the draft its nodes and names.
fn enumerate(world: &mut World<'_>, reader: &mut FormulaReader<'_>) {
    let draft = world.draft;
    let mut set = NameSet::default();
    // Names of the program's own: rows of persons for whom steps are done, stages, links.
    let mut told = NameSet::of("", true);
    let mut rows = 0;
    let names_of = |name: &str, node: NodeId, global: fn(NodeId) -> Global, names: &mut Names| {
        names.globals.entry(name.to_owned()).or_insert(global(node));
    };
    for (i, row) in draft.chart.rows.iter().enumerate() {
        let set = if is_hidden(&row.name) { &mut told } else { &mut set };
        set.add(&row.name, "row", &mut reader.findings);
        let part = Part { name: format!("chart.{}", row.name).into(), ..Part::default() };
        let node = world.push(part, world.chart.kind(i as u32));
        world.define(node, Def::Row(i as u32));
        names_of(&row.name, node, Global::Row, world.names.to_mut());
        rows += 1;
    }
    world.first_value = rows;
    for value in &draft.values {
        set.add(&value.name, "value", &mut reader.findings);
        let part = Part { name: value.name.as_str().into(), ..Part::default() };
        let node = world.push(part, None);
        names_of(&value.name, node, Global::Value, world.names.to_mut());
    }
    for piece in &draft.pieces {
        frames::enumerate_piece(world, piece, &mut set, reader);
    }
    for drawing in &draft.drawings {
        frames::enumerate_drawing(world, drawing, &mut set, reader);
    }
    for stage in world.stages {
        frames::enumerate_piece(world, stage, &mut told, reader);
    }
    for placement in &draft.placements {
        let set = if is_hidden(&placement.name) { &mut told } else { &mut set };
        set.add(&placement.name, "placement", &mut reader.findings);
        let part = Part { name: format!("placement {}", placement.name).into(), ..Part::default() };
        let node = world.push(part, None);
        let i = world.placements.len() as u32;
        world.names.to_mut().globals.entry(placement.name.clone()).or_insert(Global::Placement(i));
        let frame = |name: &str| {
            world.names.globals.get(name).and_then(|g| match g {
                Global::Frame(f) => Some(Frame(*f)),
                _ => None,
            })
        };
        let (lay, on) = (frame(&placement.lay), frame(&placement.on));
        world.placements.to_mut().push((node, lay, on));
    }
    for link in world.links {
        let part = Part { name: format!("placement {}", link.name).into(), ..Part::default() };
        let node = world.push(part, None);
        world.define(node, Def::Still);
        let frame = |name: &str| match world.names.globals.get(name) {
            Some(Global::Frame(f)) => Some(Frame(*f)),
            _ => None,
        };
        let (lay, on) = (frame(&link.lay), frame(&link.on));
        let i = world.placements.len() as u32;
        world.names.to_mut().globals.entry(link.name.clone()).or_insert(Global::Placement(i));
        world.placements.to_mut().push((node, lay, on));
    }
    for material in &draft.materials {
        set.add(&material.name, "material", &mut reader.findings);
        let first = MATERIAL_MEMBERS.map(|member| {
            let part = Part { name: format!("{}.{member}", material.name).into(), ..Part::default() };
            let kind = if member == "selvedge" { Kind::LENGTH } else { Kind::NUMBER };
            world.push(part, (!parts::of_material(material, member).is_empty()).then_some(kind))
        })[0];
        world.names.to_mut().globals.entry(material.name.clone()).or_insert(Global::Material(first));
    }
    let mut seams = NameSet::default();
    for seam in &draft.seams {
        seams.add(&seam.name, "seam", &mut reader.findings);
        let part = |member: &str| Part {
            seam: seam.name.as_str().into(),
            name: format!("seam.{}.{member}", seam.name).into(),
            ..Part::default()
        };
        let nodes = ["one", "two", "difference"].map(|m| world.push(part(m), Some(Kind::LENGTH)));
        world.names.to_mut().seams.entry(seam.name.clone()).or_insert(nodes[0]);
    }
    for (what, names) in [
        ("condition", draft.conditions.iter().map(|c| &c.name).collect::<Vec<_>>()),
        ("measure", draft.measures.iter().map(|c| &c.name).collect()),
        ("strip", draft.strips.iter().map(|c| &c.name).collect()),
        ("view", draft.views.iter().map(|c| &c.name).collect()),
    ] {
        let mut set = NameSet::default();
        for name in names {
            set.add(name, what, &mut reader.findings);
            if !matches!(what, "measure" | "strip") {
                continue;
            }
            let node =
                world.push(Part { name: format!("{what}.{name}").into(), ..Part::default() }, Some(Kind::LENGTH));
            let names = world.names.to_mut();
            let known = if what == "strip" { &mut names.strips } else { &mut names.measures };
            known.entry(name.clone()).or_insert(node);
        }
    }
}

/// Points and edges are what pieces and drawings share.
pub(super) struct FrameParts<'a> {
    pub points: &'a [Point],
    pub edges: &'a [Edge],
    pub lines: &'a [Edge],
}

impl<'a> FrameParts<'a> {
    /// Those of the frame with this number: pieces first, then drawings, then stages.
    fn of(draft: &'a Draft, stages: &'a [Arc<Piece>], frame: usize) -> Option<Self> {
        let stage = || stages.get(frame.checked_sub(draft.pieces.len() + draft.drawings.len())?);
        if let Some(piece) = draft.pieces.get(frame).or_else(stage) {
            return Some(Self { points: &piece.points, edges: &piece.edges, lines: &piece.lines });
        }
        let drawing = draft.drawings.get(frame - draft.pieces.len())?;
        Some(Self { points: &drawing.points, edges: &[], lines: &drawing.lines })
    }
}

/// A part of a frame, for findings.
pub(super) fn part_of(frame: &Arc<str>, edge: &str, name: &str) -> Part {
    Part { piece: frame.clone(), edge: edge.into(), name: format!("{frame}.{name}").into(), ..Part::default() }
}
