//! What the functions of geometry do.

use std::sync::Arc;

use super::item::EdgeShape;
use super::{choose, inside, width};
use crate::base::{Scalar, tolerance};
use crate::curves::{Curve, CurveError, NoParallel, Pt, Rigid, Segment};
use crate::language::{Function, Trouble, Value};
use crate::texts::id;

pub(super) type Val<S> = Value<S, Arc<EdgeShape<S>>>;

/// Runs a function. `sense` tells on which side of its outline's edges a frame's inside is.
pub(super) fn call<S: Scalar>(
    function: Function,
    values: &[Val<S>],
    sense: &dyn Fn(u32) -> Result<f64, Trouble>,
) -> Result<Val<S>, Trouble> {
    let args = Arguments(values);
    let (p, n) = (|i| args.point(i), |i| args.real(i));
    let point = |p: Pt<S>| Ok(Value::Pair(p.x, p.y));
    match function {
        Function::Right => point(Pt::new(p(0)?.x + n(1)?, p(0)?.y)),
        Function::Left => point(Pt::new(p(0)?.x - n(1)?, p(0)?.y)),
        Function::Down => point(Pt::new(p(0)?.x, p(0)?.y + n(1)?)),
        Function::Up => point(Pt::new(p(0)?.x, p(0)?.y - n(1)?)),
        Function::Polar => point(p(0)? + heading(n(1)?).times(n(2)?)),
        Function::Moved => moved(&values[0], &Rigid::shifting(p(1)?)),
        Function::OnWay => {
            let (a, b) = (p(0)?, p(1)?);
            let way = b - a;
            point(a + way.times(args.share(2, || distance(way))?))
        }
        Function::Halfway => point((p(0)? + p(1)?).times(S::constant(0.5))),
        Function::Turned => moved(&values[0], &Rigid::turning(p(1)?, n(2)?)),
        Function::TurnedLeg => {
            let (about, from, to) = (p(1)?, p(2)? - p(1)?, p(3)? - p(1)?);
            let (from, to) = (direction(from)?, direction(to)?);
            let by = (from.x * to.y - from.y * to.x).atan2(from.x * to.x + from.y * to.y);
            moved(&values[0], &Rigid::turning(about, by))
        }
        Function::Mirrored => {
            let (at, way) = args.line(1)?;
            let mirror = Rigid::mirroring(at, at + way);
            moved(&values[0], &mirror.ok_or(Trouble::NotFinite(id!("answer-line-direction")))?)
        }
        Function::Foot => match args.edge(1) {
            Ok(edge) => {
                let along = edge.curve.locate(p(0)?).along;
                point(edge.curve.point_at(along).ok_or_else(|| off_end(edge))?)
            }
            Err(_) => point(foot(p(0)?, args.line(1)?)),
        },
        Function::Bisect => {
            let (a, b) = (direction(p(0)? - p(1)?)?, direction(p(2)? - p(1)?)?);
            let way = a + b;
            if way.length().value() < tolerance::SOLVED {
                return Err(Trouble::NoAnswer(id!("answer-legs-straight")));
            }
            point(p(1)? + direction(way)?.times(n(3)?))
        }
        Function::Line => {
            let way = direction(p(1)? - p(0)?)?;
            Ok(line(p(0)?, way))
        }
        Function::Level => Ok(line(p(0)?, Pt::new(S::constant(1.0), S::zero()))),
        Function::Plumb => Ok(line(p(0)?, Pt::new(S::zero(), S::constant(1.0)))),
        Function::Through => {
            let (_, way) = args.line(1)?;
            Ok(line(p(0)?, right_of(way)))
        }
        Function::ThroughParallel => {
            let (_, way) = args.line(1)?;
            Ok(line(p(0)?, way))
        }
        Function::ThroughHeading => Ok(line(p(0)?, heading(n(1)?))),
        Function::Along => {
            let (at, way) = ray(args.edge(0)?, &args)?;
            Ok(line(at, way))
        }
        Function::Parallel => {
            let (at, way) = args.line(0)?;
            Ok(line(at + right_of(way).times(n(1)?), way))
        }
        Function::Cross | Function::Swing | Function::Touch => choose::one(function, values),
        Function::Gap => Ok(Value::Real((p(1)? - p(0)?).length())),
        Function::Heading => Ok(Value::Real(bearing(direction(p(1)? - p(0)?)?))),
        Function::HeadingOf => Ok(Value::Real(bearing(args.line(0)?.1))),
        Function::Angle => {
            let angle = swept(p(0)?, p(1)?, p(2)?)?;
            Ok(Value::Real(if angle.value() < 0.0 { angle.plus(std::f64::consts::TAU) } else { angle }))
        }
        Function::CornerAngle => Ok(Value::Real(swept(p(0)?, p(1)?, p(2)?)?.abs())),
        Function::Between => {
            direction(p(1)? - p(0)?)?;
            let curve =
                Curve::straight(p(0)?, p(1)?).map_err(|_| Trouble::NotFinite(id!("answer-point-not-finite")))?;
            Ok(Value::Edge(Arc::new(EdgeShape::plain(curve))))
        }
        Function::Length => Ok(Value::Real(args.edge(0)?.sewn_length())),
        Function::FlatLength => Ok(Value::Real(args.edge(0)?.flat_length())),
        Function::Arc => {
            let (centre, from, to) = (p(0)?, p(1)?, p(2)?);
            let clockwise = match args.choice(3)? {
                0 => {
                    let swept = swept(from, centre, to)?.value();
                    if swept.abs() < tolerance::SOLVED || std::f64::consts::PI - swept.abs() < tolerance::SOLVED {
                        return Err(Trouble::NoAnswer(id!("answer-which-turn")));
                    }
                    swept > 0.0
                }
                _ => args.choice(4)? == 0,
            };
            let arc = Segment::arc(from, to, centre, clockwise).map_err(|e| match e {
                CurveError::NoRadius => Trouble::NoAnswer(id!("answer-arc-centre")),
                _ => Trouble::NoAnswer(id!("answer-arc-uneven")),
            })?;
            plain_edge(vec![arc])
        }
        Function::Circle => {
            let (centre, radius) = (p(0)?, n(1)?);
            if radius.value() <= tolerance::EQUAL {
                return Err(Trouble::NoAnswer(id!("answer-radius")));
            }
            let start = Pt::new(centre.x + radius, centre.y);
            plain_edge(vec![
                Segment::arc(start, start, centre, true)
                    .map_err(|_| Trouble::NotFinite(id!("answer-point-not-finite")))?,
            ])
        }
        Function::SetOff | Function::SetOffRunning => {
            let edge = args.edge(0)?;
            let (from, to) = (n(1)?, if function == Function::SetOff { n(1)? } else { n(2)? });
            Ok(Value::Edge(Arc::new(set_off(edge, from, to, sense)?)))
        }
        Function::Place => {
            let edge = args.edge(0)?;
            Ok(Value::Real(edge.sewn_place(edge.place_of(p(1)?)?)?))
        }
        Function::Bend => {
            let edge = args.edge(0)?;
            let flat = edge.flat_place(args.place(1, edge.sewn_length())?)?;
            let bend = edge.curve.bend_at(flat);
            Ok(Value::Real(bend.ok_or(Trouble::NoAnswer(id!("answer-no-bend")))?))
        }
        Function::Area => {
            let area = args.edge(0)?.curve.area_under();
            Ok(Value::Real(area.abs()))
        }
        Function::Width => Ok(Value::Real(width::of(args.edge(0)?, args.line(1)?)?)),
        Function::Girth => {
            let mut sum = S::zero();
            for i in (0..values.len()).step_by(3) {
                sum = sum + width::of(args.edge(i + 1)?, args.line(i)?)? * n(i + 2)?;
            }
            Ok(Value::Real(sum))
        }
        Function::At => {
            let edge = args.edge(0)?;
            let flat = edge.flat_place(args.place(1, edge.sewn_length())?)?;
            point(edge.curve.point_at(flat).ok_or_else(|| off_end(edge))?)
        }
        Function::Off => {
            let edge = args.edge(0)?;
            let home = edge.home.ok_or(Trouble::NoAnswer(id!("answer-inside")))?;
            let inside = sense(home.frame)? * if home.against { -1.0 } else { 1.0 };
            let (at, along) = ray(edge, &args)?;
            point(at + right_of(along).times(n(2)?.times(inside)))
        }
        Function::Copy => Ok(Value::Edge(Arc::new(args.edge(0)?.clone()))),
        Function::Reversed => Ok(Value::Edge(Arc::new(args.edge(0)?.reversed()))),
        Function::LiesIn => Ok(Value::Truth(inside::holds(args.edge(1)?, p(0)?)?)),
        Function::KeptIn => inside::kept(&values[0], args.edge(1)?),
        Function::Part => Ok(Value::Edge(Arc::new(args.edge(0)?.part(p(1)?, p(2)?)?))),
        _ => Err(Trouble::NoAnswer(id!("answer-not-known"))),
    }
}

fn off_end<S: Scalar>(edge: &EdgeShape<S>) -> Trouble {
    Trouble::OffTheEdge(f64::NAN, edge.sewn_length().value())
}

/// An edge set off, the distance running from one length to another; inside positive.
pub(super) fn set_off<S: Scalar>(
    edge: &EdgeShape<S>,
    from: S,
    to: S,
    sense: &dyn Fn(u32) -> Result<f64, Trouble>,
) -> Result<EdgeShape<S>, Trouble> {
    let inside = match edge.home {
        Some(home) => sense(home.frame)? * if home.against { -1.0 } else { 1.0 },
        None => 1.0,
    };
    let curve = edge.curve.parallel(from.times(inside), to.times(inside)).map_err(|e| match e {
        NoParallel::Tight => Trouble::NoAnswer(id!("answer-too-tight")),
        NoParallel::Corner(_) => Trouble::NoAnswer(id!("answer-corner")),
    })?;
    Ok(EdgeShape { home: edge.home, ..EdgeShape::plain(curve) })
}

/// The point and the direction of an edge at the place that is the second argument.
fn ray<S: Scalar>(edge: &EdgeShape<S>, args: &Arguments<'_, S>) -> Result<(Pt<S>, Pt<S>), Trouble> {
    let flat = edge.flat_place(args.place(1, edge.sewn_length())?)?;
    let at = edge.curve.point_at(flat).ok_or_else(|| off_end(edge))?;
    let along = edge.curve.tangent_at(flat).ok_or(Trouble::NoAnswer(id!("answer-edge-direction")))?;
    Ok((at, along))
}

fn plain_edge<S: Scalar>(segments: Vec<Segment<S>>) -> Result<Val<S>, Trouble> {
    let curve = Curve::new(segments).map_err(|_| Trouble::NotFinite(id!("answer-point-not-finite")))?;
    Ok(Value::Edge(Arc::new(EdgeShape::plain(curve))))
}

/// A point, line or edge after a rigid motion.
fn moved<S: Scalar>(thing: &Val<S>, motion: &Rigid<S>) -> Result<Val<S>, Trouble> {
    match thing {
        Value::Pair(x, y) => {
            let p = motion.of(Pt::new(*x, *y));
            Ok(Value::Pair(p.x, p.y))
        }
        Value::Line(p, d) => Ok(line(motion.of(Pt::new(p[0], p[1])), motion.of_vector(Pt::new(d[0], d[1])))),
        Value::Edge(edge) => Ok(Value::Edge(Arc::new(edge.moved(motion)))),
        _ => Err(Trouble::NoAnswer(id!("answer-point-missing"))),
    }
}

/// The angle of a direction in (-180°, 180°].
fn bearing<S: Scalar>(way: Pt<S>) -> S {
    let angle = way.y.atan2(way.x);
    if angle.value() == -std::f64::consts::PI { angle.plus(std::f64::consts::TAU) } else { angle }
}

/// Arguments by place; kinds were checked, so a wrong one is a fault of the program.
pub(super) struct Arguments<'a, S>(pub &'a [Val<S>]);

impl<S: Scalar> Arguments<'_, S> {
    pub fn real(&self, i: usize) -> Result<S, Trouble> {
        match self.0.get(i) {
            Some(Value::Real(v)) => Ok(*v),
            _ => Err(Trouble::NoAnswer(id!("answer-number-missing"))),
        }
    }
    pub fn point(&self, i: usize) -> Result<Pt<S>, Trouble> {
        match self.0.get(i) {
            Some(Value::Pair(x, y)) => Ok(Pt::new(*x, *y)),
            _ => Err(Trouble::NoAnswer(id!("answer-point-missing"))),
        }
    }
    pub fn line(&self, i: usize) -> Result<(Pt<S>, Pt<S>), Trouble> {
        match self.0.get(i) {
            Some(Value::Line(p, d)) => Ok((Pt::new(p[0], p[1]), Pt::new(d[0], d[1]))),
            _ => Err(Trouble::NoAnswer(id!("answer-line-missing"))),
        }
    }
    pub fn edge(&self, i: usize) -> Result<&EdgeShape<S>, Trouble> {
        match self.0.get(i) {
            Some(Value::Edge(e)) => Ok(e),
            _ => Err(Trouble::NoAnswer(id!("answer-edge-missing"))),
        }
    }
    /// A number that says which of some words was given.
    pub fn choice(&self, i: usize) -> Result<u32, Trouble> {
        Ok(self.real(i)?.value() as u32)
    }
    /// A place in mm: a fraction is one of the whole.
    fn place(&self, i: usize, whole: S) -> Result<S, Trouble> {
        match self.0.get(i) {
            Some(Value::Real(v)) => Ok(*v),
            Some(Value::Share(v)) => Ok(*v * whole),
            _ => Err(Trouble::NoAnswer(id!("answer-place-missing"))),
        }
    }
    /// A place as a share of a way that is `whole` long.
    fn share(&self, i: usize, whole: impl Fn() -> Result<S, Trouble>) -> Result<S, Trouble> {
        match self.0.get(i) {
            Some(Value::Share(v)) => Ok(*v),
            Some(Value::Real(v)) => Ok(*v / whole()?),
            _ => Err(Trouble::NoAnswer(id!("answer-place-missing"))),
        }
    }
}

fn distance<S: Scalar>(way: Pt<S>) -> Result<S, Trouble> {
    direction(way)?;
    Ok(way.length())
}

/// The unit vector; two points in one place have none.
fn direction<S: Scalar>(way: Pt<S>) -> Result<Pt<S>, Trouble> {
    let length = way.length();
    if length.value() < tolerance::SOLVED {
        return Err(Trouble::NoAnswer(id!("answer-one-place")));
    }
    Ok(Pt::new(way.x / length, way.y / length))
}

fn heading<S: Scalar>(angle: S) -> Pt<S> {
    Pt::new(angle.cos(), angle.sin())
}

/// A quarter turn clockwise as seen.
fn right_of<S: Scalar>(way: Pt<S>) -> Pt<S> {
    Pt::new(-way.y, way.x)
}

pub(super) fn foot<S: Scalar>(point: Pt<S>, (at, way): (Pt<S>, Pt<S>)) -> Pt<S> {
    let to = point - at;
    at + way.times(to.x * way.x + to.y * way.y)
}

fn line<S: Scalar>(at: Pt<S>, way: Pt<S>) -> Val<S> {
    Value::Line([at.x, at.y], [way.x, way.y])
}

/// The angle from one leg of a corner to the other, clockwise, in (-180°, 180°].
fn swept<S: Scalar>(from: Pt<S>, corner: Pt<S>, to: Pt<S>) -> Result<S, Trouble> {
    let (a, b) = (direction(from - corner)?, direction(to - corner)?);
    Ok((a.x * b.y - a.y * b.x).atan2(a.x * b.x + a.y * b.y))
}
