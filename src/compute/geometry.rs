//! What the functions of geometry do.

use std::sync::Arc;

use super::item::EdgeShape;
use crate::base::{Scalar, tolerance};
use crate::curves::{Curve, Pt};
use crate::language::{Function, Trouble, Value};

type Val<S> = Value<S, Arc<EdgeShape<S>>>;

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
        Function::Moved => point(p(0)? + p(1)?),
        Function::OnWay => {
            let (a, b) = (p(0)?, p(1)?);
            let way = b - a;
            point(a + way.times(args.share(2, || distance(way))?))
        }
        Function::Halfway => point((p(0)? + p(1)?).times(S::constant(0.5))),
        Function::Turned => point(turned(p(0)?, p(1)?, n(2)?)),
        Function::TurnedLeg => {
            let (about, from, to) = (p(1)?, p(2)? - p(1)?, p(3)? - p(1)?);
            let (from, to) = (direction(from)?, direction(to)?);
            let by = (from.x * to.y - from.y * to.x).atan2(from.x * to.x + from.y * to.y);
            point(turned(p(0)?, about, by))
        }
        Function::Mirrored => {
            let foot = foot(p(0)?, args.line(1)?);
            point(foot + (foot - p(0)?))
        }
        Function::Foot => point(foot(p(0)?, args.line(1)?)),
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
        Function::Parallel => {
            let (at, way) = args.line(0)?;
            Ok(line(at + right_of(way).times(n(1)?), way))
        }
        Function::Cross => {
            let ((a, u), (b, v)) = (args.line(0)?, args.line(1)?);
            let slant = u.x * v.y - u.y * v.x;
            if slant.value().abs() < tolerance::SOLVED {
                return Err(Trouble::NoAnswer("the two lines are parallel and never cross"));
            }
            let w = b - a;
            point(a + u.times((w.x * v.y - w.y * v.x) / slant))
        }
        Function::Gap => Ok(Value::Real((p(1)? - p(0)?).length())),
        Function::Heading => {
            let way = direction(p(1)? - p(0)?)?;
            let angle = way.y.atan2(way.x);
            let straight_back = angle.value() == -std::f64::consts::PI;
            Ok(Value::Real(if straight_back { angle.plus(std::f64::consts::TAU) } else { angle }))
        }
        Function::Angle => {
            let angle = swept(p(0)?, p(1)?, p(2)?)?;
            Ok(Value::Real(if angle.value() < 0.0 { angle.plus(std::f64::consts::TAU) } else { angle }))
        }
        Function::CornerAngle => Ok(Value::Real(swept(p(0)?, p(1)?, p(2)?)?.abs())),
        Function::Between => {
            direction(p(1)? - p(0)?)?;
            let curve = Curve::straight(p(0)?, p(1)?).map_err(|_| Trouble::NotFinite("a point is not finite"))?;
            Ok(Value::Edge(Arc::new(EdgeShape::plain(curve))))
        }
        Function::Length => Ok(Value::Real(args.edge(0)?.sewn_length())),
        Function::FlatLength => Ok(Value::Real(args.edge(0)?.flat_length())),
        Function::At => {
            let edge = args.edge(0)?;
            let flat = edge.flat_place(args.place(1, edge.sewn_length())?)?;
            point(edge.curve.point_at(flat).ok_or(off_end(edge))?)
        }
        Function::Off => {
            let edge = args.edge(0)?;
            let sense = sense(n(3)?.value() as u32)?;
            let flat = edge.flat_place(args.place(1, edge.sewn_length())?)?;
            let at = edge.curve.point_at(flat).ok_or(off_end(edge))?;
            let along = edge.curve.tangent_at(flat).ok_or(Trouble::NoAnswer("the edge has no direction there"))?;
            point(at + right_of(along).times(n(2)?.times(sense)))
        }
        Function::Reversed => Ok(Value::Edge(Arc::new(args.edge(0)?.reversed()))),
        Function::Part => Ok(Value::Edge(Arc::new(args.edge(0)?.part(p(1)?, p(2)?)?))),
        _ => Err(Trouble::NoAnswer("this function is not known to the machine")),
    }
}

fn off_end<S: Scalar>(edge: &EdgeShape<S>) -> Trouble {
    Trouble::OffTheEdge(f64::NAN, edge.sewn_length().value())
}

/// Arguments by place; kinds were checked, so a wrong one is a fault of the program.
struct Arguments<'a, S>(&'a [Val<S>]);

impl<S: Scalar> Arguments<'_, S> {
    fn real(&self, i: usize) -> Result<S, Trouble> {
        match self.0.get(i) {
            Some(Value::Real(v)) => Ok(*v),
            _ => Err(Trouble::NoAnswer("a number is missing")),
        }
    }
    fn point(&self, i: usize) -> Result<Pt<S>, Trouble> {
        match self.0.get(i) {
            Some(Value::Pair(x, y)) => Ok(Pt::new(*x, *y)),
            _ => Err(Trouble::NoAnswer("a point is missing")),
        }
    }
    fn line(&self, i: usize) -> Result<(Pt<S>, Pt<S>), Trouble> {
        match self.0.get(i) {
            Some(Value::Line(p, d)) => Ok((Pt::new(p[0], p[1]), Pt::new(d[0], d[1]))),
            _ => Err(Trouble::NoAnswer("a line is missing")),
        }
    }
    fn edge(&self, i: usize) -> Result<&EdgeShape<S>, Trouble> {
        match self.0.get(i) {
            Some(Value::Edge(e)) => Ok(e),
            _ => Err(Trouble::NoAnswer("an edge is missing")),
        }
    }
    /// A place in mm: a fraction is one of the whole.
    fn place(&self, i: usize, whole: S) -> Result<S, Trouble> {
        match self.0.get(i) {
            Some(Value::Real(v)) => Ok(*v),
            Some(Value::Share(v)) => Ok(*v * whole),
            _ => Err(Trouble::NoAnswer("a place is missing")),
        }
    }
    /// A place as a share of a way that is `whole` long.
    fn share(&self, i: usize, whole: impl Fn() -> Result<S, Trouble>) -> Result<S, Trouble> {
        match self.0.get(i) {
            Some(Value::Share(v)) => Ok(*v),
            Some(Value::Real(v)) => Ok(*v / whole()?),
            _ => Err(Trouble::NoAnswer("a place is missing")),
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
        return Err(Trouble::NoAnswer("two points lie in one place, so there is no direction between them"));
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

fn turned<S: Scalar>(point: Pt<S>, about: Pt<S>, by: S) -> Pt<S> {
    let (way, to) = (point - about, heading(by));
    about + Pt::new(way.x * to.x - way.y * to.y, way.x * to.y + way.y * to.x)
}

fn foot<S: Scalar>(point: Pt<S>, (at, way): (Pt<S>, Pt<S>)) -> Pt<S> {
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
