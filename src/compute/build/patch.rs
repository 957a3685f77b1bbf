//! A plan from the one before, where a draft of the same shape only says other formulas: those alone are read.
//!
//! Anything out of the ordinary (another name, another kind, something that cannot be read, other dependencies) gives none, and the plan
//! is made from nothing. So what is patched is what would have been made.

use std::sync::Arc;

use super::{FrameParts, frames, parts, world_again};
use crate::compute::chart::ChartPlan;
use crate::compute::compile::{FormulaReader, ParseCache};
use crate::compute::derive::Whole;
use crate::compute::graph::deps_of;
use crate::compute::plan::{Def, NodeId, Plan};
use crate::document::{Chart, DartForm, Draft, Edge, Piece, Point, Value};

/// A formula that is another one now.
enum Change {
    Value(usize),
    /// Frame and place of the point.
    Point(u32, usize),
    /// Frame and place among its edges, lines behind.
    Edge(u32, usize),
    /// Piece and place among its darts, pleats and tucks.
    Mouth(u32, usize),
}

/// A patched plan, and the nodes that are defined otherwise.
pub(in crate::compute) struct Patched {
    pub plan: Arc<Plan>,
    pub touched: Vec<NodeId>,
    pub is_other_chart: bool,
}

/// The plan of a draft, made from that of `before`; none where more than formulas differs.
pub(in crate::compute) fn patch(before: &Whole, whole: &Whole, plan: &Plan, cache: &mut ParseCache) -> Option<Patched> {
    if before.stages.len() != whole.stages.len() || before.links != whole.links {
        return None;
    }
    let (earlier, draft) = (&*before.draft, &*whole.draft);
    let is_other_chart = earlier.chart != draft.chart;
    let mut changes = changes(earlier, draft, is_other_chart)?;
    stages(before, whole, &mut changes)?;
    let mut reader = FormulaReader { cache, findings: Vec::new(), unit: plan.heard.unit };
    let mut chart = Arc::clone(&plan.chart);
    if is_other_chart {
        let new = ChartPlan::of(&draft.chart, &plan.cases, &mut reader);
        if !plan.heard.chart_is_sound || !new.is_like(&plan.chart) {
            return None;
        }
        chart = Arc::new(new);
    }
    let world = world_again(draft, &whole.stages, plan);
    let mut touched = Vec::with_capacity(changes.len());
    for change in &changes {
        let node = match *change {
            Change::Value(i) => {
                parts::value(&world, i, &mut reader);
                world.first_value + i as NodeId
            }
            Change::Point(frame, i) => {
                let point = FrameParts::of(draft, &whole.stages, frame as usize)?.points.get(i)?;
                let node = *world.frames[frame as usize].points.get(i)?;
                frames::point(&world, frame, point, node, &mut reader);
                node
            }
            Change::Edge(frame, i) => {
                let parts = FrameParts::of(draft, &whole.stages, frame as usize)?;
                let nodes = &world.frames[frame as usize];
                let node = *nodes.edges.iter().chain(&nodes.lines).nth(i)?;
                frames::edge(&world, frame, parts.edges.iter().chain(parts.lines).nth(i)?, node, &mut reader);
                node + 1
            }
            Change::Mouth(frame, i) => {
                let stage = || whole.stages.get((frame as usize).checked_sub(plan.shown)?);
                let piece = draft.pieces.get(frame as usize).or_else(stage)?;
                let node = frames::mouth(&world, frame, piece, i, &mut reader)?;
                // The formula of a dart's tip stands behind its mouth.
                if piece.darts.get(i).is_some_and(|d| d.form != DartForm::TwoEnded) {
                    touched.push(node + 1);
                }
                node
            }
        };
        touched.push(node);
    }
    let nodes = world.nodes.into_inner();
    if !reader.findings.is_empty() || nodes.len() != plan.nodes.len() {
        return None;
    }
    let new = Plan { nodes, chart, ..plan.clone() };
    let is_patched = |node: &NodeId| {
        let (old, now) = (&plan.nodes[*node as usize], &new.nodes[*node as usize]);
        let defined = !Arc::ptr_eq(old, now) && !matches!(old.def, Def::Broken) && !matches!(now.def, Def::Broken);
        defined && old.kind == now.kind && deps_of(&now.def, &new) == old.deps
    };
    let told = changes.iter().all(|change| match change {
        Change::Value(i) => says(&new.nodes[plan.heard.first_value as usize + i].def, &draft.values[*i]),
        _ => true,
    });
    (told && touched.iter().all(is_patched)).then(|| Patched { plan: Arc::new(new), touched, is_other_chart })
}

/// Whether a node is what a value says: a formula that names something broken is read without a word.
fn says(def: &Def, value: &Value) -> bool {
    let same = |formula: Option<&crate::compute::plan::Formula>, text: &str| match formula {
        Some(formula) => *formula.text == *text,
        None => text.is_empty(),
    };
    match def {
        Def::Formula(formula) => same(Some(formula), &value.is),
        Def::Found(start, least, most) => {
            same(Some(start), &value.start) && same(least.as_ref(), &value.least) && same(most.as_ref(), &value.most)
        }
        _ => false,
    }
}

/// Which formulas differ; none where anything else does.
fn changes(before: &Draft, draft: &Draft, is_other_chart: bool) -> Option<Vec<Change>> {
    // Every field is named, so that a new one is thought of.
    let Draft {
        blocks: _,
        format: _,
        version: _,
        title: _,
        note: _,
        author: _,
        licence: _,
        contact: _,
        edition: _,
        date: _,
        display,
        language: _,
        audience: _,
        care,
        settings: _,
        chart,
        values,
        drawings,
        pieces,
        placements,
        seams,
        joints: _,
        conditions,
        measures,
        materials,
        strips,
        notions,
        views,
        booklet,
        sheets: _,
        table: _,
        pictures: _,
        plans: _,
        silenced: _,
        log: _,
    } = draft;
    let same = *display == before.display
        && (!is_other_chart || same_but_cells(&before.chart, chart))
        && before.values.len() == values.len()
        && before.drawings.len() == drawings.len()
        && before.pieces.len() == pieces.len()
        && before.placements == *placements
        && before.seams == *seams
        && before.conditions == *conditions
        && before.measures == *measures
        && before.materials == *materials
        && before.strips == *strips
        && before.notions == *notions
        && before.booklet == *booklet
        && before.care == *care
        && before.views == *views;
    if !same {
        return None;
    }
    let mut out = Vec::new();
    for (i, (a, b)) in before.values.iter().zip(values).enumerate() {
        if a == b {
            continue;
        }
        let alike = |a: &str, b: &str| a.is_empty() == b.is_empty();
        if a.name != b.name || !alike(&a.is, &b.is) || !alike(&a.start, &b.start) {
            return None;
        }
        out.push(Change::Value(i));
    }
    for (i, (a, b)) in before.pieces.iter().zip(pieces).enumerate() {
        if a == b {
            continue;
        }
        let mut probe = (**b).clone();
        points(i, &a.points, &mut probe.points, &mut out)?;
        edges(i, 0, &a.edges, &mut probe.edges, &mut out)?;
        edges(i, a.edges.len(), &a.lines, &mut probe.lines, &mut out)?;
        mouths(i, a, &mut probe, &mut out)?;
        if probe != **a {
            return None;
        }
    }
    for (i, (a, b)) in before.drawings.iter().zip(drawings).enumerate() {
        if a == b {
            continue;
        }
        let (i, mut probe) = (i + pieces.len(), (**b).clone());
        points(i, &a.points, &mut probe.points, &mut out)?;
        edges(i, 0, &a.lines, &mut probe.lines, &mut out)?;
        if probe != **a {
            return None;
        }
    }
    Some(out)
}

/// Which formulas of stages differ.
fn stages(before: &Whole, whole: &Whole, out: &mut Vec<Change>) -> Option<()> {
    let first = whole.draft.pieces.len() + whole.draft.drawings.len();
    for (i, (a, b)) in before.stages.iter().zip(&whole.stages).enumerate() {
        if a != b {
            let mut probe = (**b).clone();
            points(first + i, &a.points, &mut probe.points, out)?;
            edges(first + i, 0, &a.edges, &mut probe.edges, out)?;
            edges(first + i, a.edges.len(), &a.lines, &mut probe.lines, out)?;
            mouths(first + i, a, &mut probe, out)?;
            if probe != **a {
                return None;
            }
        }
    }
    Some(())
}

/// Notes the points with another formula, and gives them the earlier one.
fn points(frame: usize, before: &[Point], now: &mut [Point], out: &mut Vec<Change>) -> Option<()> {
    if before.len() != now.len() {
        return None;
    }
    for (i, (a, b)) in before.iter().zip(now).enumerate() {
        if a != b {
            b.at.clone_from(&a.at);
            out.push(Change::Point(frame as u32, i));
        }
    }
    Some(())
}

/// The same for edges: their segments may say other curves between the same points.
fn edges(frame: usize, first: usize, before: &[Edge], now: &mut [Edge], out: &mut Vec<Change>) -> Option<()> {
    if before.len() != now.len() {
        return None;
    }
    for (i, (a, b)) in before.iter().zip(now).enumerate() {
        if a != b {
            let same_ends = a.by.len() == b.by.len() && a.by.iter().zip(&b.by).all(|(a, b)| a.end() == b.end());
            if !same_ends {
                return None;
            }
            b.by.clone_from(&a.by);
            out.push(Change::Edge(frame as u32, first + i));
        }
    }
    Some(())
}

/// The same for darts, pleats and tucks.
fn mouths(frame: usize, before: &Piece, now: &mut Piece, out: &mut Vec<Change>) -> Option<()> {
    let counts = |p: &Piece| (p.darts.len(), p.pleats.len(), p.tucks.len());
    if counts(before) != counts(now) {
        return None;
    }
    for (i, (a, b)) in before.darts.iter().zip(&mut now.darts).enumerate() {
        if a != b {
            if a.foot.is_empty() != b.foot.is_empty() {
                return None;
            }
            for (from, to) in [
                (&a.centre, &mut b.centre),
                (&a.foot, &mut b.foot),
                (&a.intake, &mut b.intake),
                (&a.tip, &mut b.tip),
                (&a.bow, &mut b.bow),
            ] {
                to.clone_from(from);
            }
            out.push(Change::Mouth(frame as u32, i));
        }
    }
    let (old, new) = (before.pleats.iter().chain(&before.tucks), now.pleats.iter_mut().chain(&mut now.tucks));
    for (i, (a, b)) in old.zip(new).enumerate() {
        if a != b {
            b.centre.clone_from(&a.centre);
            b.intake.clone_from(&a.intake);
            out.push(Change::Mouth(frame as u32, before.darts.len() + i));
        }
    }
    Some(())
}

/// Whether two charts differ in the texts of rows and cells only.
fn same_but_cells(before: &Chart, now: &Chart) -> bool {
    if before.rows.len() != now.rows.len() {
        return false;
    }
    let mut probe = now.clone();
    for (a, b) in before.rows.iter().zip(&mut probe.rows) {
        b.is.clone_from(&a.is);
        b.cells.clone_from(&a.cells);
    }
    probe == *before
}
