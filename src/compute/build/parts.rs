//! Values, placements, seams and conditions: their formulas.

use super::{FormulaScope, World};
use crate::base::{Code, Finding};
use crate::compute::cases::part_unknown;
use crate::compute::compile::FormulaReader;
use crate::compute::names::{Global, MATERIAL_MEMBERS};
use crate::compute::plan::{ConditionPlan, Def, Equation, Fit, Formula, NodeId, Part, PlacementDef, SeamPlan};
use crate::document::{self, Material, Seam};
use crate::language::{Frame, Kind, Relation, What};

const LENGTH: What = What::Kind(Kind::LENGTH);
/// A plain number counts as this many millimetres in an equation.
const NUMBER_COUNTS: f64 = 100.0;

/// Reads the formulas of values.
pub(super) fn values(world: &World<'_>, circles: &[Vec<usize>], reader: &mut FormulaReader<'_>) {
    let draft = world.draft;
    for circle in circles {
        let names: Vec<&str> = circle.iter().map(|i| draft.values[*i].name.as_str()).collect();
        let at = format!("value {}", names[0]);
        reader.findings.push(Finding::new(Code::Circular).at(at).word("members", names.join(", ")));
    }
    for i in (0..draft.values.len()).filter(|i| !circles.iter().any(|c| c.contains(i))) {
        value(world, i, reader);
    }
}

/// Reads the formulas of one value.
pub(super) fn value(world: &World<'_>, i: usize, reader: &mut FormulaReader<'_>) {
    let (value, node) = (&world.draft.values[i], world.first_value + i as NodeId);
    let scope = FormulaScope { world, frame: None };
    let name = format!("value {}", value.name);
    if value.is_found() && !value.is.is_empty() {
        reader.findings.push(Finding::new(Code::ValueTwice).at(name).word("name", value.name.clone()));
        return;
    }
    let text = if value.is_found() { &value.start } else { &value.is };
    let Some(formula) = reader.read_in(text, &scope, |f| f.at(name.clone())) else { return };
    world.set_kind(node, formula.kind);
    if !value.is_found() {
        for (text, what) in [(&value.least, "least"), (&value.most, "most")] {
            if !text.is_empty() {
                let problem =
                    format!("{} has a `{what}` but no `start`: only a value that is found has limits", value.name);
                reader.findings.push(Finding::new(Code::PartMissing).at(name.clone()).word("problem", problem));
            }
        }
        world.define(node, Def::Formula(formula));
        return;
    }
    if !matches!(formula.kind, Kind::Quantity(0 | 1) | Kind::Angle) {
        reader.findings.push(Finding {
            formula: text.clone(),
            span: Some(formula.program.span),
            ..Finding::new(Code::WrongKind)
                .at(name)
                .word("found", formula.kind.words())
                .word("expected", "a number, a length or an angle, to be found")
        });
        return;
    }
    let what = What::Kind(formula.kind);
    let mut limit = |text: &String| match text.is_empty() {
        true => Some(None),
        false => reader.read_as(text, &scope, what, None, |f| f.at(name.clone())).map(Some),
    };
    if let (Some(least), Some(most)) = (limit(&value.least), limit(&value.most)) {
        world.define(node, Def::Found(formula, least, most));
    }
}

/// Reads the formulas of placements.
pub(super) fn placements(world: &World<'_>, reader: &mut FormulaReader<'_>) {
    let names: Vec<&String> =
        world.draft.pieces.iter().map(|p| &p.name).chain(world.draft.drawings.iter().map(|d| &d.name)).collect();
    for (placement, &(node, lay, on)) in world.draft.placements.iter().zip(&world.placements) {
        let name = format!("placement {}", placement.name);
        for (frame, asked) in [(lay, &placement.lay), (on, &placement.on)] {
            if frame.is_none() {
                reader.findings.push(part_unknown("piece or drawing", asked, names.iter().copied()).at(name.clone()));
            }
        }
        let (Some(lay), Some(on)) = (lay, on) else { continue };
        let mut read = |text: &str, frame: Frame, what: What| {
            let scope = FormulaScope { world, frame: Some(frame.0) };
            let own = matches!(what, What::Kind(Kind::Point(_))).then_some(frame);
            reader.read_as(text, &scope, what, own, |f| f.at(name.clone()))
        };
        let point = What::Kind(Kind::Point(Frame(0)));
        let (a, b) = (read(&placement.point, lay, point), read(&placement.onto, on, point));
        let by_points = !placement.towards.is_empty() || !placement.along.is_empty();
        let towards = by_points.then(|| (read(&placement.towards, lay, point), read(&placement.along, on, point)));
        let angle = What::Kind(Kind::Angle);
        let turned = (!placement.turned.is_empty()).then(|| read(&placement.turned, on, angle));
        let overlap = (!placement.overlap.is_empty()).then(|| read(&placement.overlap, on, LENGTH));
        let both = towards.is_some() && turned.is_some();
        if both || (towards.is_none() && turned.is_none()) {
            let problem = format!(
                "{} needs a second pair of points (`towards` and `along`) or an angle (`turned`){}",
                placement.name,
                if both { ", not both" } else { "" }
            );
            reader.findings.push(Finding::new(Code::PartMissing).at(name).word("problem", problem));
            continue;
        }
        let towards = match towards {
            None => None,
            Some((Some(t), Some(a))) => Some((t, a)),
            Some(_) => continue,
        };
        let (Some(point), Some(onto)) = (a, b) else { continue };
        if matches!(turned, Some(None)) || matches!(overlap, Some(None)) {
            continue;
        }
        let def = PlacementDef {
            point,
            onto,
            towards,
            turned: turned.flatten(),
            overlap: overlap.flatten(),
            mirrored: placement.mirrored,
        };
        world.define(node, Def::Placement(Box::new(def)));
    }
}

/// The text of a material's member.
pub(super) fn of_material<'a>(material: &'a Material, member: &str) -> &'a str {
    match member {
        "selvedge" => &material.selvedge,
        "stretch_along" => &material.stretch_along,
        "stretch_across" => &material.stretch_across,
        "shrinkage_along" => &material.shrinkage_along,
        _ => &material.shrinkage_across,
    }
}

/// Reads the formulas of materials.
pub(super) fn materials(world: &World<'_>, reader: &mut FormulaReader<'_>) {
    let scope = FormulaScope { world, frame: None };
    for material in &world.draft.materials {
        let Some(Global::Material(first)) = world.names.globals.get(&material.name) else { continue };
        for (i, member) in MATERIAL_MEMBERS.iter().enumerate() {
            let text = of_material(material, member);
            let node = first + i as NodeId;
            let Some(kind) = world.kind(node).filter(|_| !text.is_empty()) else { continue };
            let name = format!("material {}", material.name);
            if let Some(formula) = reader.read_as(text, &scope, What::Kind(kind), None, |f| f.at(name.clone())) {
                world.define(node, Def::Formula(formula));
            }
        }
    }
}

type Made = (Vec<SeamPlan>, Vec<ConditionPlan>, Vec<Equation>);

/// Reads seams and conditions, and makes their equations.
pub(super) fn seams_and_conditions(world: &World<'_>, reader: &mut FormulaReader<'_>) -> Made {
    let mut equations = Vec::new();
    let mut seams = Vec::new();
    for seam in &world.draft.seams {
        let Some(&first) = world.names.seams.get(&seam.name) else { continue };
        seams.push(read_seam(world, seam, first, reader, &mut equations));
    }
    let mut conditions = Vec::new();
    let scope = FormulaScope { world, frame: None };
    for condition in &world.draft.conditions {
        let name = format!("condition.{}", condition.name);
        let (tree, sides) = reader.read_condition(&condition.must, &scope, |f| f.at(name.clone()));
        let (Some(tree), Some((left, right))) = (tree, sides) else { continue };
        let kind = left.kind;
        let side = |formula: Formula, which: &str| {
            let part = Part { name: format!("{name}.{which}").into(), ..Part::default() };
            let node = world.push(part, Some(kind));
            world.define(node, Def::Formula(formula));
            node
        };
        let nodes = [side(left, "left"), side(right, "right")];
        let found_by = found_by(world, &condition.found_by, &name, reader);
        let mut equation = None;
        if tree.relation == Relation::Equal {
            let counts = match kind {
                Kind::NUMBER => NUMBER_COUNTS,
                Kind::Angle => 180.0 / std::f64::consts::PI,
                _ => 1.0,
            };
            let node = world.push(Part { name: name.as_str().into(), ..Part::default() }, None);
            world.define(node, Def::ConditionEquation(nodes[0], nodes[1], counts));
            equation = Some(equations.len());
            equations.push(Equation { node, name: name.as_str().into(), found_by });
        } else if !condition.found_by.is_empty() {
            let problem =
                format!("{} is a comparison, which is only watched: nothing can be found by it", condition.name);
            reader.findings.push(Finding::new(Code::PartMissing).at(name.clone()).word("problem", problem));
        }
        conditions.push(ConditionPlan {
            name: name.as_str().into(),
            text: condition.must.as_str().into(),
            sides: nodes,
            relation: tree.relation,
            equation,
        });
    }
    (seams, conditions, equations)
}

/// The found values named for an equation.
fn found_by(world: &World<'_>, names: &[String], at: &str, reader: &mut FormulaReader<'_>) -> Vec<NodeId> {
    let is_found = |node: NodeId| world.draft.values[(node - world.first_value) as usize].is_found();
    let mut out = Vec::new();
    for name in names {
        let short = name.strip_prefix("value.").unwrap_or(name);
        match world.names.globals.get(short) {
            Some(Global::Value(node)) if is_found(*node) => out.push(*node),
            _ => {
                let known: Vec<&String> = world.draft.values.iter().filter(|v| v.is_found()).map(|v| &v.name).collect();
                reader.findings.push(part_unknown("value that is found", name, known).at(at));
            }
        }
    }
    out
}

fn read_seam(
    world: &World<'_>,
    seam: &Seam,
    first: NodeId,
    reader: &mut FormulaReader<'_>,
    equations: &mut Vec<Equation>,
) -> SeamPlan {
    let name = format!("seam.{}", seam.name);
    let scope = FormulaScope { world, frame: None };
    let sides = [first, first + 1, first + 2];
    let edge = What::Kind(Kind::Edge(Frame(0)));
    for (texts, node, which) in [(&seam.one, first, "one"), (&seam.two, first + 1, "two")] {
        if texts.is_empty() {
            let problem = format!("side {which} of the seam {} names no edge", seam.name);
            reader
                .findings
                .push(Finding::new(Code::PartMissing).seam(&seam.name).at(name.clone()).word("problem", problem));
            continue;
        }
        let mut read =
            |text: &String| reader.read_as(text, &scope, edge, None, |f| f.seam(&seam.name).at(name.clone()));
        let runs: Vec<Option<Formula>> = texts.iter().map(&mut read).collect();
        if let Some(runs) = runs.into_iter().collect::<Option<Vec<_>>>() {
            world.define(node, Def::Side(runs));
        }
    }
    world.define(first + 2, Def::Difference(first, first + 1));
    let mut length =
        |text: &str, what: What| reader.read_as(text, &scope, what, None, |f| f.seam(&seam.name).at(name.clone()));
    let fit = match &seam.fit {
        document::Fit::Equal => Some(Fit::Equal),
        document::Fit::Eased { longer, by } => length(by, LENGTH).map(|f| Fit::Eased(*longer, f)),
        document::Fit::Gathered { longer, times, .. } => {
            length(times, What::Kind(Kind::NUMBER)).map(|f| Fit::Times(*longer, f))
        }
        document::Fit::Stretched { shorter, times } => {
            length(times, What::Kind(Kind::NUMBER)).map(|f| Fit::Times(*shorter, f))
        }
    };
    let found = found_by(world, &seam.found_by, &name, reader);
    let mut equation = None;
    if !seam.found_by.is_empty() {
        let part = Part { seam: seam.name.as_str().into(), name: name.as_str().into(), ..Part::default() };
        let node = world.push(part, None);
        if let Some(fit) = &fit {
            world.define(node, Def::SeamEquation(first, first + 1, fit.clone()));
        }
        equation = Some(equations.len());
        equations.push(Equation { node, name: name.as_str().into(), found_by: found });
    }
    SeamPlan { name: seam.name.as_str().into(), sides, fit, equation }
}

/// Reads formulas asked from outside.
pub(super) fn extras(world: &World<'_>, texts: &[&str], reader: &mut FormulaReader<'_>) -> Vec<Option<NodeId>> {
    let scope = FormulaScope { world, frame: None };
    let mut out = Vec::with_capacity(texts.len());
    for text in texts {
        let formula = reader.read_in(text, &scope, |f| f.at("asked"));
        out.push(formula.map(|formula| {
            let node = world.push(Part { name: "asked".into(), ..Part::default() }, Some(formula.kind));
            world.define(node, Def::Formula(formula));
            node
        }));
    }
    out
}
