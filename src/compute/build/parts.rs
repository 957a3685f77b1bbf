//! Values, placements, seams and conditions: their formulas.

use super::{FormulaScope, World};
use crate::base::{Code, Finding};
use crate::compute::cases::part_unknown;
use crate::compute::compile::FormulaReader;
use crate::compute::names::{Global, MATERIAL_MEMBERS};
use crate::compute::plan::{
    ConditionPlan, Def, Equation, Fit, Formula, NodeId, NotchPlan, Part, PlacementDef, SeamPlan, StretchPlan,
};
use crate::document::{self, Material, Seam};
use crate::language::{Frame, Kind, Relation, What};
use crate::texts::say;

const LENGTH: What = What::Kind(Kind::LENGTH);
const NUMBER: What = What::Kind(Kind::NUMBER);
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
                let problem = say!("read-part-limit-no-start", name = value.name, what);
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
                .word("expected", say!("read-part-to-be-found"))
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
    for (placement, &(node, lay, on)) in world.draft.placements.iter().zip(world.placements.iter()) {
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
            let problem = match both {
                true => say!("read-part-placement-both", name = placement.name),
                false => say!("read-part-placement-way", name = placement.name),
            };
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
    let orders = super::finishing::orders(&world.draft.seams, reader);
    for (seam, order) in world.draft.seams.iter().zip(orders) {
        let Some(&first) = world.names.seams.get(&seam.name) else { continue };
        seams.push(read_seam(world, seam, first, order, reader, &mut equations));
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
            let problem = say!("read-part-comparison", name = condition.name);
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

struct SeamReader<'a, 'b> {
    world: &'a World<'a>,
    reader: &'a mut FormulaReader<'b>,
    seam: &'a Seam,
    name: String,
}

impl SeamReader<'_, '_> {
    fn read(&mut self, text: &str, what: What) -> Option<Formula> {
        let scope = FormulaScope { world: self.world, frame: None };
        let (seam, name) = (&self.seam.name, &self.name);
        self.reader.read_as(text, &scope, what, None, |f| f.seam(seam).at(name.clone()))
    }

    fn optional(&mut self, text: &str, what: What) -> Option<Formula> {
        if text.is_empty() { None } else { self.read(text, what) }
    }

    fn wrong_kind(&mut self, formula: &Formula, expected: String) {
        self.reader.findings.push(Finding {
            formula: formula.text.to_string(),
            span: Some(formula.program.span),
            ..Finding::new(Code::WrongKind)
                .seam(&self.seam.name)
                .at(self.name.clone())
                .word("found", formula.kind.words())
                .word("expected", expected)
        });
    }

    /// The edges of a side, or the length of a strip.
    fn side(&mut self, texts: &[String], node: NodeId, which: &str) {
        if texts.is_empty() {
            let problem = match which {
                "one" => say!("read-part-side-one-empty", seam = self.seam.name),
                _ => say!("read-part-side-two-empty", seam = self.seam.name),
            };
            let finding = Finding::new(Code::PartMissing).seam(&self.seam.name).at(self.name.clone());
            self.reader.findings.push(finding.word("problem", problem));
            return;
        }
        let mut runs = Vec::with_capacity(texts.len());
        for text in texts {
            let formula = self.read(text, What::Any);
            let fits = |f: &Formula| f.kind == Kind::LENGTH || matches!(f.kind, Kind::Edge(_));
            if let Some(other) = formula.as_ref().filter(|f| !fits(f)) {
                self.wrong_kind(other, say!("read-part-edge-or-strip"));
            }
            runs.push(formula.filter(fits));
        }
        if let Some(runs) = runs.into_iter().collect::<Option<Vec<_>>>() {
            self.world.define(node, Def::Side(runs));
        }
    }

    fn fit(&mut self, fit: &document::Fit) -> Option<Fit> {
        match fit {
            document::Fit::Equal => Some(Fit::Equal),
            document::Fit::Eased { longer, by } => self.read(by, LENGTH).map(|f| Fit::Eased(*longer, f, None)),
            document::Fit::Gathered { longer, times, least, most } => {
                let limits = [self.optional(least, NUMBER), self.optional(most, NUMBER)];
                if times.is_empty() && limits.iter().any(Option::is_some) {
                    return Some(Fit::Times(*longer, None, limits));
                }
                self.read(times, NUMBER).map(|f| Fit::Times(*longer, Some(f), limits))
            }
            document::Fit::Stretched { shorter, times } => {
                self.read(times, NUMBER).map(|f| Fit::Times(*shorter, Some(f), [None, None]))
            }
        }
    }

    /// A node of this seam that nothing names.
    fn node(&self, def: Def) -> NodeId {
        let part = Part { seam: self.seam.name.as_str().into(), name: self.name.as_str().into(), ..Part::default() };
        let node = self.world.push(part, None);
        self.world.define(node, def);
        node
    }

    /// Where a stretch ends on a side: the point's place along it.
    fn end(&mut self, text: &str, side: NodeId) -> Option<NodeId> {
        let point = self.optional(text, What::Kind(Kind::Point(Frame(0))))?;
        Some(self.node(Def::Along(side, point)))
    }

    fn stretches(&mut self, [one, two]: [NodeId; 2]) -> Vec<StretchPlan> {
        let seam = self.seam;
        if seam.stretches.is_empty() {
            let fit = self.fit(&seam.fit);
            return vec![StretchPlan { lengths: [one, two], ends: [None, None], fit, equation: None }];
        }
        let whole = self.fit(&seam.fit);
        let shared = seam.stretches.iter().any(|s| !s.share.is_empty());
        let mut out: Vec<StretchPlan> = Vec::new();
        let mut before: [Option<NodeId>; 2] = [None, None];
        for stretch in &seam.stretches {
            let ends = [self.end(&stretch.to_one, one), self.end(&stretch.to_two, two)];
            let lengths = [0, 1].map(|i| {
                let end = ends[i].unwrap_or([one, two][i]);
                before[i].map_or(end, |start| self.node(Def::Difference(end, start)))
            });
            let fit = match (&whole, shared) {
                (Some(Fit::Eased(longer, by, _)), true) => {
                    let share = self.optional(&stretch.share, NUMBER);
                    let (longer, by) = (*longer, by.clone());
                    Some(share.map_or(Fit::Equal, |share| Fit::Eased(longer, by, Some(share))))
                }
                (_, true) => None,
                _ => self.fit(&stretch.fit),
            };
            out.push(StretchPlan { lengths, ends, fit, equation: None });
            before = ends;
        }
        if shared && !matches!(whole, None | Some(Fit::Eased(..))) {
            let problem = say!("read-part-share-not-eased", seam = seam.name);
            let finding = Finding::new(Code::PartMissing).seam(&seam.name).at(self.name.clone());
            self.reader.findings.push(finding.word("problem", problem));
        }
        out
    }

    /// A place on a side: a length, a fraction, a point.
    fn place(&mut self, text: &str) -> Option<Formula> {
        let formula = self.read(text, What::Any)?;
        if matches!(formula.kind, Kind::LENGTH | Kind::NUMBER | Kind::Point(_)) {
            return Some(formula);
        }
        self.wrong_kind(&formula, say!("read-part-place-of-side"));
        None
    }

    fn notches(&mut self) -> Vec<NotchPlan> {
        let mut out = Vec::new();
        for (i, notch) in self.seam.notches.iter().enumerate() {
            let at = self.place(&notch.at);
            let other = if notch.other.is_empty() { None } else { self.place(&notch.other) };
            let name = if notch.name.is_empty() { format!("{}", i + 1) } else { notch.name.clone() };
            let strokes = notch.strokes.clamp(1, 3);
            if notch.strokes > 3 {
                let problem = say!("read-part-strokes", name, strokes = notch.strokes.to_string());
                let at = format!("seam.{}", self.seam.name);
                let finding = Finding::new(Code::PartMissing).seam(&self.seam.name).at(at).word("problem", problem);
                self.reader.findings.push(finding);
            }
            out.extend(at.map(|at| NotchPlan { name: name.into(), on: notch.on, at, other, strokes }));
        }
        out
    }
}

fn read_seam(
    world: &World<'_>,
    seam: &Seam,
    first: NodeId,
    order: Option<(f64, u32)>,
    reader: &mut FormulaReader<'_>,
    equations: &mut Vec<Equation>,
) -> SeamPlan {
    let name = format!("seam.{}", seam.name);
    let sides = [first, first + 1, first + 2];
    let mut reading = SeamReader { world, reader, seam, name: name.clone() };
    reading.side(&seam.one, first, "one");
    reading.side(&seam.two, first + 1, "two");
    world.define(first + 2, Def::Difference(first, first + 1));
    let mut stretches = reading.stretches([first, first + 1]);
    let notches = reading.notches();
    let (allowance, closure) = (reading.optional(&seam.allowance, LENGTH), reading.optional(&seam.closure, LENGTH));
    let found = found_by(world, &seam.found_by, &name, reader);
    if !seam.found_by.is_empty() {
        let count = stretches.len();
        for (i, stretch) in stretches.iter_mut().enumerate() {
            let said = if count == 1 { name.clone() } else { format!("{name} (stretch {})", i + 1) };
            let part = Part { seam: seam.name.as_str().into(), name: said.as_str().into(), ..Part::default() };
            let node = world.push(part, None);
            match &stretch.fit {
                Some(Fit::Times(_, None, _)) => {
                    let problem = say!("read-part-watched", seam = seam.name);
                    let finding = Finding::new(Code::PartMissing).seam(&seam.name).at(name.clone());
                    reader.findings.push(finding.word("problem", problem));
                    continue;
                }
                Some(fit) => world.define(node, Def::SeamEquation(stretch.lengths[0], stretch.lengths[1], fit.clone())),
                None => {}
            }
            stretch.equation = Some(equations.len());
            equations.push(Equation { node, name: said.into(), found_by: found.clone() });
        }
    }
    SeamPlan {
        name: seam.name.as_str().into(),
        sides,
        stretches,
        notches,
        order,
        pressed: seam.pressed,
        allowance,
        closure,
    }
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
