//! Constructions that may have several answers, and which of them is meant.

use super::geometry::{Arguments, Val, foot};
use super::item::EdgeShape;
use crate::base::{Scalar, tolerance};
use crate::curves::{Curve, Endless, Met, Pt};
use crate::language::{Function, Trouble, Value};
use crate::texts::id;

/// A line or an edge.
enum Path<'a, S> {
    Line(Pt<S>, Pt<S>),
    Edge(&'a EdgeShape<S>),
}

/// The one answer of `cross`, `swing` or `touch`.
pub(super) fn one<S: Scalar>(function: Function, values: &[Val<S>]) -> Result<Val<S>, Trouble> {
    let args = Arguments(values);
    let endless = |_: Endless| Trouble::NoAnswer(id!("answer-endless"));
    let (path, met, choice) = match function {
        Function::Cross => {
            let (one, other) = (path(&args, 0)?, path(&args, 1)?);
            let met = crossings(&one, &other).map_err(endless)?;
            if met.is_empty() {
                let lines = matches!((&one, &other), (Path::Line(..), Path::Line(..)));
                let why = if lines { id!("answer-parallel") } else { id!("answer-not-crossing") };
                return Err(Trouble::NoAnswer(why));
            }
            (one, met, 2)
        }
        Function::Swing => {
            let (centre, radius, onto) = (args.point(0)?, args.real(1)?, path(&args, 2)?);
            if radius.value() <= tolerance::EQUAL {
                return Err(Trouble::NoAnswer(id!("answer-swing-zero")));
            }
            let met = swung(centre, radius, &onto).map_err(endless)?;
            if met.is_empty() {
                let why = id!("answer-swing-short");
                return Err(Trouble::NoAnswer(why));
            }
            (onto, met, 3)
        }
        _ => {
            let edge = args.edge(1)?;
            let met = edge.curve.touched_from(args.point(0)?);
            if met.is_empty() {
                return Err(Trouble::NoAnswer(id!("answer-no-touch")));
            }
            (Path::Edge(edge), met, 2)
        }
    };
    let answer = choose(&path, &met, &args, choice)?;
    Ok(Value::Pair(answer.x, answer.y))
}

fn path<'a, S: Scalar>(args: &Arguments<'a, S>, i: usize) -> Result<Path<'a, S>, Trouble> {
    match args.0.get(i) {
        Some(Value::Edge(edge)) => Ok(Path::Edge(edge)),
        _ => args.line(i).map(|(at, way)| Path::Line(at, way)),
    }
}

/// Answers in order along the first path; the place on a line counts from the point that it was made with.
fn crossings<S: Scalar>(one: &Path<'_, S>, other: &Path<'_, S>) -> Result<Vec<Met<S>>, Endless> {
    match (one, other) {
        (Path::Line(a, u), Path::Line(b, v)) => {
            let slant = u.cross(*v);
            if slant.value().abs() < tolerance::SOLVED {
                return Ok(Vec::new());
            }
            let along = (*b - *a).cross(*v) / slant;
            Ok(vec![Met { along, point: *a + u.times(along) }])
        }
        (Path::Line(a, u), Path::Edge(edge)) => {
            let met = edge.curve.meets_line(*a, *u)?;
            Ok(met.into_iter().map(|m| Met { along: (m.point - *a).dot(*u), point: m.point }).collect())
        }
        (Path::Edge(edge), Path::Line(b, v)) => edge.curve.meets_line(*b, *v),
        (Path::Edge(one), Path::Edge(other)) => one.curve.meets(&other.curve),
    }
}

fn swung<S: Scalar>(centre: Pt<S>, radius: S, onto: &Path<'_, S>) -> Result<Vec<Met<S>>, Endless> {
    let (at, way) = match onto {
        Path::Edge(edge) => return edge.curve.meets_circle(centre, radius),
        Path::Line(at, way) => (*at, *way),
    };
    let foot = foot(centre, (at, way));
    let beside = (foot - centre).length();
    let short = radius.value() - beside.value();
    if short < -tolerance::EQUAL {
        return Ok(Vec::new());
    }
    let met = |point: Pt<S>| Met { along: (point - at).dot(way), point };
    if short <= tolerance::EQUAL {
        return Ok(vec![met(foot)]);
    }
    let half = (radius * radius - (foot - centre).dot(foot - centre)).sqrt();
    Ok(vec![met(foot - way.times(half)), met(foot + way.times(half))])
}

/// How far an answer is from what was asked for: the least is taken.
type Farness<'a, S> = dyn Fn(&Met<S>) -> f64 + 'a;

/// The answer that is meant; `at` is the place of the choice among the arguments.
fn choose<S: Scalar>(path: &Path<'_, S>, met: &[Met<S>], args: &Arguments<'_, S>, at: usize) -> Result<Pt<S>, Trouble> {
    let far: Box<Farness<'_, S>> = match args.choice(at)? {
        0 => {
            return match met {
                [one] => Ok(one.point),
                _ => Err(Trouble::Several(met.len() as u32)),
            };
        }
        1 => {
            let to = args.point(at + 1)?.plain();
            Box::new(move |m| (m.point.plain() - to).length())
        }
        2 => {
            let from = args.point(at + 1)?;
            let start = match path {
                Path::Line(a, way) => (from - *a).dot(*way).value(),
                Path::Edge(edge) => place_near(&edge.curve, from),
            };
            Box::new(move |m| (m.along.value() - start).abs())
        }
        _ => {
            let side = args.choice(at + 1)?;
            Box::new(move |m| {
                let p = m.point.plain();
                match side {
                    0 => p.x,
                    1 => -p.x,
                    2 => p.y,
                    _ => -p.y,
                }
            })
        }
    };
    let mut order: Vec<(f64, &Met<S>)> = met.iter().map(|m| (far(m), m)).collect();
    order.sort_by(|a, b| a.0.total_cmp(&b.0));
    match order.as_slice() {
        [one, other, ..] if other.0 - one.0 <= tolerance::EQUAL => Err(Trouble::NoAnswer(id!("answer-equally-near"))),
        [one, ..] => Ok(one.1.point),
        [] => Err(Trouble::NoAnswer(id!("answer-none"))),
    }
}

fn place_near<S: Scalar>(curve: &Curve<S>, point: Pt<S>) -> f64 {
    curve.locate(point).along.value()
}
