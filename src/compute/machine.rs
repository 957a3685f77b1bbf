//! Computing one node from those it needs, over any scalar.

use std::sync::Arc;

use super::geometry;
use super::item::{EdgeShape, Folded, Home, Item, NodeTrouble, Stop};
use super::plan::{Def, Fit, Formula, MouthDef, NodeId, PlacementDef, Plan, SegmentDef};
use super::seam::{self, RunPart};
use super::shape::{self, MouthParts, Tip};
use crate::base::{Scalar, tolerance};
use crate::curves::{Curve, Pt, Rigid, Segment, spline};
use crate::document::Side;
use crate::language::{Function, Kind, Machine, Trouble, Value, evaluate};
use crate::texts::id;

/// What has been computed so far.
pub(super) trait Access<S: Scalar> {
    /// The item of a node; `None` if it has none.
    fn item(&self, node: NodeId) -> Option<Item<S>>;
    /// A row's number in this case, or in another one.
    fn row(&self, row: u32, case: Option<u32>) -> Result<f64, Stop>;
}

/// Runs formulas over what has been computed.
pub(super) struct Runner<'a, A> {
    pub plan: &'a Plan,
    pub access: &'a A,
}

impl<S: Scalar, A: Access<S>> Machine<S> for Runner<'_, A> {
    type Edge = Arc<EdgeShape<S>>;

    fn load(&self, symbol: u32) -> Result<Value<S, Self::Edge>, Trouble> {
        match self.access.item(symbol) {
            Some(Item::Value(value)) => Ok(value),
            _ => Err(Trouble::Upstream),
        }
    }

    fn call(&self, function: Function, values: &[Value<S, Self::Edge>]) -> Result<Value<S, Self::Edge>, Trouble> {
        geometry::call(function, values, &|frame| Self::sense::<S>(self, frame))
    }
}

type Made<S> = Result<Item<S>, Stop>;

impl<A> Runner<'_, A> {
    /// On which side of its outline's edges a frame's inside is.
    fn sense<S: Scalar>(&self, frame: u32) -> Result<f64, Trouble>
    where
        A: Access<S>,
    {
        let unknown = Trouble::NoAnswer(id!("answer-inside"));
        let Some(node) = self.plan.all_frames.get(frame as usize).map(|f| f.sense) else { return Err(unknown) };
        match (self.access.item(node), &self.plan.nodes[node as usize].def) {
            (Some(item), _) => item.real().map(Scalar::value).ok_or(Trouble::Upstream),
            (None, Def::Sense(edges)) if !edges.is_empty() => Err(Trouble::Upstream),
            (None, _) => Err(unknown),
        }
    }

    /// The value of a formula.
    pub fn formula<S: Scalar>(&self, formula: &Formula) -> Result<Item<S>, Stop>
    where
        A: Access<S>,
    {
        evaluate(&formula.program, self).map(Item::Value).map_err(|(trouble, span)| Stop {
            trouble: NodeTrouble::Formula(trouble),
            formula: Some((formula.text.clone(), span)),
        })
    }

    fn real<S: Scalar>(&self, formula: &Formula) -> Result<S, Stop>
    where
        A: Access<S>,
    {
        self.formula(formula)?.real().ok_or_else(Stop::upstream)
    }

    fn point<S: Scalar>(&self, formula: &Formula) -> Result<Pt<S>, Stop>
    where
        A: Access<S>,
    {
        self.formula(formula)?.point().ok_or_else(Stop::upstream)
    }

    fn point_of<S: Scalar>(&self, node: NodeId) -> Result<Pt<S>, Stop>
    where
        A: Access<S>,
    {
        self.access.item(node).and_then(|i| i.point()).ok_or_else(Stop::upstream)
    }

    fn edge_of<S: Scalar>(&self, node: NodeId) -> Result<Arc<EdgeShape<S>>, Stop>
    where
        A: Access<S>,
    {
        self.access.item(node).and_then(|i| i.edge().cloned()).ok_or_else(Stop::upstream)
    }

    /// Computes a node.
    pub fn node<S: Scalar>(&self, node: NodeId) -> Made<S>
    where
        A: Access<S>,
    {
        let real = |v: S| Ok(Item::Value(Value::Real(v)));
        match &self.plan.nodes[node as usize].def {
            Def::Broken | Def::Found(..) => Err(Stop::upstream()),
            Def::Row(row) => match self.access.row(*row, None) {
                Ok(v) => real(S::constant(v)),
                Err(_) => Err(Stop::upstream()),
            },
            Def::RowIn(row, case) => match self.access.row(*row, Some(*case)) {
                Ok(v) => real(S::constant(v)),
                Err(_) => Err(Stop::upstream()),
            },
            Def::Outline { edges, darts } => {
                let mut segments = Vec::new();
                for flat in edges {
                    segments.extend(self.edge_of(*flat)?.curve.segments().iter().cloned());
                }
                let open = |_| Stop::own(NodeTrouble::Curve(id!("edge-no-outline")));
                let mut shape = EdgeShape::plain(Curve::new(segments).map_err(open)?);
                for dart in darts {
                    let Some(Item::Mouth(mouth)) = self.access.item(*dart) else { return Err(Stop::upstream()) };
                    let tip = mouth.tip.ok_or_else(Stop::upstream)?;
                    let tips = std::iter::once(tip).chain(mouth.other_tip);
                    shape.folded.extend(tips.map(|tip| [tip, mouth.first_foot, mouth.second_foot]));
                }
                Ok(Item::Value(Value::Edge(Arc::new(shape))))
            }
            Def::Formula(formula) => self.formula(formula),
            Def::Flat { points, segments } => {
                // What is taken whole is that very curve.
                if let [SegmentDef::Taken(curve, None)] = segments.as_slice() {
                    let edge = self.formula(curve)?.edge().cloned().ok_or_else(Stop::upstream)?;
                    self.reaches(&edge, points[0], points[1])?;
                    let curve = Arc::clone(&edge.curve);
                    let (mouths, folded) = (Vec::new(), Vec::new());
                    return Ok(Item::Value(Value::Edge(Arc::new(EdgeShape { curve, mouths, home: None, folded }))));
                }
                self.flat(points, segments).map(edge)
            }
            Def::Mouth(def) => self.mouth(def),
            Def::Sewn { flat, mouths, outline } => {
                let flat = self.edge_of(*flat)?;
                let home = outline.map(|frame| Home { frame, against: false });
                if mouths.is_empty() {
                    return Ok(Item::Value(Value::Edge(Arc::new(EdgeShape { home, ..(*flat).clone() }))));
                }
                let mut folded = Vec::with_capacity(mouths.len());
                for (mouth, name) in mouths {
                    let Some(Item::Mouth(mouth)) = self.access.item(*mouth) else { return Err(Stop::upstream()) };
                    folded.push(Folded { first: mouth.first, second: mouth.second, name: name.clone() });
                }
                let sewn = shape::sewn(&flat.curve, folded).map_err(Stop::own)?;
                Ok(Item::Value(Value::Edge(Arc::new(EdgeShape { home, ..sewn }))))
            }
            Def::Member(mouth, which) => {
                let Some(Item::Mouth(mouth)) = self.access.item(*mouth) else { return Err(Stop::upstream()) };
                let point = |p: Pt<S>| Ok(Item::Value(Value::Pair(p.x, p.y)));
                match which {
                    0 => mouth.leg.map_or(Err(Stop::upstream()), real),
                    1 => real(mouth.intake),
                    2 => mouth.tip.map_or(Err(Stop::upstream()), point),
                    3 => point(mouth.first_foot),
                    _ => point(mouth.second_foot),
                }
            }
            Def::Sense(edges) => {
                let mut area = S::zero();
                for flat in edges {
                    area = area + self.edge_of(*flat)?.curve.area_under();
                }
                // In x right, y down the area of a clockwise ring, whose inside is on its right, is positive.
                real(S::constant(if area.value() < 0.0 { -1.0 } else { 1.0 }))
            }
            Def::Placement(def) => self.placement(def),
            Def::Still => Ok(Item::Rigid(Rigid::shifting(Pt::new(S::zero(), S::zero())))),
            Def::Laid(rigid, target) if self.plan.nodes[*rigid as usize].def == Def::Still => {
                self.access.item(*target).ok_or_else(Stop::upstream)
            }
            Def::Laid(rigid, target) => {
                let Some(Item::Rigid(rigid)) = self.access.item(*rigid) else { return Err(Stop::upstream()) };
                Ok(laid(self.access.item(*target).ok_or_else(Stop::upstream)?, &rigid))
            }
            Def::Side(runs) => {
                let side = self.side(runs)?;
                seam::check_run(&side)?;
                real(side.iter().fold(S::zero(), |sum, part| sum + part.sewn_length()))
            }
            Def::Along(side, point) => {
                let Def::Side(runs) = &self.plan.nodes[*side as usize].def else { return Err(Stop::upstream()) };
                let place = seam::place_on(&self.side(runs)?, self.point(point)?, point.kind.frame());
                place.map_or_else(|trouble| Err(Stop::own(NodeTrouble::Formula(trouble))), real)
            }
            Def::Difference(one, two) => {
                let (a, b) = (self.real_of(*one)?, self.real_of(*two)?);
                real(a - b)
            }
            Def::SeamEquation(one, two, fit) => {
                let (a, b): (S, S) = (self.real_of(*one)?, self.real_of(*two)?);
                real(match fit {
                    Fit::Equal => a - b,
                    Fit::Eased(side, by, share) => {
                        let mut by: S = self.real(by)?;
                        if let Some(share) = share {
                            by = by * self.real(share)?;
                        }
                        a - b - if *side == Side::One { by } else { -by }
                    }
                    Fit::Times(_, None, _) => return Err(Stop::upstream()),
                    Fit::Times(Side::One, Some(times), _) => a - b * self.real(times)?,
                    Fit::Times(Side::Two, Some(times), _) => b - a * self.real(times)?,
                })
            }
            Def::ConditionEquation(left, right, counts) => {
                let (a, b): (S, S) = (self.real_of(*left)?, self.real_of(*right)?);
                real((a - b).times(*counts))
            }
        }
    }

    /// The parts of a side of a seam.
    fn side<S: Scalar>(&self, runs: &[Formula]) -> Result<Vec<RunPart<S>>, Stop>
    where
        A: Access<S>,
    {
        let part = |run: &Formula| {
            let item = self.formula(run)?;
            Ok(match (item.edge(), item.real()) {
                (Some(edge), _) => RunPart::Edge(Arc::clone(edge), run.kind.frame(), seam::is_copy(&run.program.root)),
                (None, Some(length)) => RunPart::Strip(length),
                (None, None) => return Err(Stop::upstream()),
            })
        };
        runs.iter().map(part).collect()
    }

    fn real_of<S: Scalar>(&self, node: NodeId) -> Result<S, Stop>
    where
        A: Access<S>,
    {
        self.access.item(node).and_then(|i| i.real()).ok_or_else(Stop::upstream)
    }

    fn flat<S: Scalar>(&self, points: &[NodeId], segments: &[SegmentDef]) -> Result<Curve<S>, Stop>
    where
        A: Access<S>,
    {
        let mut made: Vec<Segment<S>> = Vec::with_capacity(segments.len());
        let mut from = self.point_of(points[0])?;
        let bent = |curve: &'static str| Stop::own(NodeTrouble::Curve(curve));
        for (k, (segment, end)) in segments.iter().zip(&points[1..]).enumerate() {
            let to = self.point_of(*end)?;
            match segment {
                // Where what is opened or closed has come to nothing, nothing lies across.
                SegmentDef::Straight if segments.len() > 1 && (to - from).length().value() <= tolerance::EQUAL => {}
                SegmentDef::Straight => made.push(Segment::Line(from, to)),
                SegmentDef::Curve(a, b) => made.push(Segment::Cubic([from, self.point(a)?, self.point(b)?, to])),
                SegmentDef::Arc(centre, clockwise) => {
                    let centre = self.point(centre)?;
                    let (a, b) = ((from - centre).length().value(), (to - centre).length().value());
                    if (a - b).abs() > tolerance::ON_EDGE {
                        return Err(Stop::own(NodeTrouble::ArcUneven { start: a, end: b }));
                    }
                    let arc = Segment::arc(from, to, centre, *clockwise);
                    made.push(arc.map_err(|_| bent(id!("answer-arc-centre")))?);
                }
                SegmentDef::Smooth(through, leaving, arriving) => {
                    let mut all = Vec::with_capacity(through.len() + 2);
                    all.push(from);
                    for point in through {
                        all.push(self.point(point)?);
                    }
                    all.push(to);
                    let leaving = leaving.as_ref().map(|f| self.real(f)).transpose()?;
                    let arriving = arriving.as_ref().map(|f| self.real(f)).transpose()?;
                    let pieces = spline(&all, leaving, arriving);
                    made.extend(pieces.map_err(|_| bent(id!("edge-points-in-one-place")))?);
                }
                SegmentDef::Taken(curve, apart) => {
                    let item = self.formula(curve)?;
                    let mut edge = item.edge().cloned().ok_or_else(Stop::upstream)?;
                    if let Some((off, end)) = apart {
                        let off_end = self.real(end.as_ref().unwrap_or(off))?;
                        let set = geometry::set_off(&edge, self.real(off)?, off_end, &|frame| self.sense(frame));
                        edge = Arc::new(set.map_err(|t| Stop::own(NodeTrouble::Formula(t)))?);
                    }
                    self.reaches(&edge, points[k], *end)?;
                    made.extend(edge.curve.segments().iter().cloned());
                }
            }
            from = to;
        }
        let curve = Curve::new(made).map_err(|_| bent(id!("edge-not-finite")))?;
        if curve.length().value() <= tolerance::EQUAL {
            return Err(bent(id!("edge-no-length")));
        }
        Ok(curve)
    }

    /// Whether a curve that is taken starts and ends at its points.
    fn reaches<S: Scalar>(&self, edge: &EdgeShape<S>, from: NodeId, to: NodeId) -> Result<(), Stop>
    where
        A: Access<S>,
    {
        for (which, node, at) in
            [(id!("edge-start"), from, edge.curve.start()), (id!("edge-end"), to, edge.curve.end())]
        {
            let distance = (self.point_of(node)? - at).length().value();
            if distance > tolerance::ON_EDGE {
                let point = self.plan.nodes[node as usize].part.name.clone();
                return Err(Stop::own(NodeTrouble::TakenApart { which, point, distance }));
            }
        }
        Ok(())
    }

    fn mouth<S: Scalar>(&self, def: &MouthDef) -> Made<S>
    where
        A: Access<S>,
    {
        let flat = self.edge_of(def.flat)?;
        let place: S = match def.place.kind {
            Kind::Point(_) => {
                let at = flat.curve.locate(self.point(&def.place)?);
                if at.distance.value() > tolerance::ON_EDGE {
                    return Err(Stop::own(NodeTrouble::MouthOff(id!("mouth-foot-off"))));
                }
                at.along
            }
            Kind::NUMBER => self.real::<S>(&def.place)? * flat.curve.length(),
            _ => self.real(&def.place)?,
        };
        let intake = self.real(&def.intake)?;
        let bow = def.bow.as_ref().map(|f| self.real(f)).transpose()?;
        if def.two_ended {
            return shape::two_ended(&flat.curve, place, intake, bow)
                .map(|m| Item::Mouth(Arc::new(m)))
                .map_err(Stop::own);
        }
        let tip = def.tip.and_then(|(node, deep)| {
            let tip = self.access.item(node)?;
            if !deep {
                return tip.point().map(Tip::Point);
            }
            let sense = def.sense.and_then(|n| self.access.item(n))?.real()?;
            Some(Tip::Deep(tip.real()?, sense.value()))
        });
        let parts = MouthParts { place, by_foot: def.by_foot, intake, tip, second_kept: def.second_kept, bow };
        shape::mouth(&flat.curve, &parts).map(|m| Item::Mouth(Arc::new(m))).map_err(Stop::own)
    }

    fn placement<S: Scalar>(&self, def: &PlacementDef) -> Made<S>
    where
        A: Access<S>,
    {
        let (point, onto): (Pt<S>, Pt<S>) = (self.point(&def.point)?, self.point(&def.onto)?);
        let no_direction = || Stop::own(NodeTrouble::Curve(id!("placement-in-one-place")));
        let (rigid, way) = match (&def.towards, &def.turned) {
            (Some((towards, along)), _) => {
                let (b, on_b) = (self.point(towards)?, self.point(along)?);
                let rigid = Rigid::laying(point, b, onto, on_b, def.mirrored).ok_or_else(no_direction)?;
                (rigid, (on_b - onto).unit().ok_or_else(no_direction)?)
            }
            (None, Some(turned)) => {
                let turn: S = self.real(turned)?;
                // Turned over left to right is turned over top to bottom and half way round.
                let extra = if def.mirrored { std::f64::consts::PI } else { 0.0 };
                (Rigid::taking(point, onto, turn.plus(extra), def.mirrored), Pt::heading(turn))
            }
            (None, None) => return Err(no_direction()),
        };
        let Some(overlap) = &def.overlap else { return Ok(Item::Rigid(rigid)) };
        Ok(Item::Rigid(rigid.then(&Rigid::shifting(way.times(self.real(overlap)?)))))
    }
}

/// A point or edge seen through a placement.
pub(super) fn laid<S: Scalar>(item: Item<S>, rigid: &Rigid<S>) -> Item<S> {
    match item {
        Item::Value(Value::Pair(x, y)) => {
            let p = rigid.of(Pt::new(x, y));
            Item::Value(Value::Pair(p.x, p.y))
        }
        Item::Value(Value::Edge(e)) => Item::Value(Value::Edge(Arc::new(e.moved(rigid)))),
        other => other,
    }
}

fn edge<S: Scalar>(curve: Curve<S>) -> Item<S> {
    Item::Value(Value::Edge(Arc::new(EdgeShape::plain(curve))))
}
