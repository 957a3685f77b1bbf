//! The mouth of a dart, pleat or tuck: the line between its legs, so shaped that it lies on the edge when folded.

use super::body::BodyMouth;
use super::corner::{Join, Limb, meet_lines, straight};
use crate::base::tolerance;
use crate::curves::{Curve, Pt, Rigid, Segment};
use crate::document::{DartForm, Pressed};

/// Direction outwards of both legs and of the middle, and a point of each.
struct Legs {
    a: (Pt<f64>, Pt<f64>),
    b: (Pt<f64>, Pt<f64>),
    middle: (Pt<f64>, Pt<f64>),
}

/// The feet when both legs are equally long: the one that is not kept swings about the tip.
pub(super) fn trued_feet(mouth: &BodyMouth) -> [Pt<f64>; 2] {
    let (Some(tip), [a, b]) = (mouth.tip, mouth.at) else { return mouth.at };
    let (kept, swung) = if mouth.kept == Pressed::ToEnd { (b, a) } else { (a, b) };
    let leg = (kept - tip).length();
    let Some(way) = (swung - tip).unit() else { return mouth.at };
    let swung = tip + way.scaled(leg);
    if mouth.kept == Pressed::ToEnd { [swung, kept] } else { [kept, swung] }
}

fn legs(mouth: &BodyMouth, sense: f64) -> Option<Legs> {
    let [a, b] = trued_feet(mouth);
    let halfway = a.towards(b, 0.5);
    match mouth.tip {
        Some(tip) => {
            let (to_a, to_b) = ((a - tip).unit()?, (b - tip).unit()?);
            Some(Legs { a: (a, to_a), b: (b, to_b), middle: (tip, (to_a + to_b).unit()?) })
        }
        None => {
            let out = (b - a).unit()?.square().scaled(-sense);
            Some(Legs { a: (a, out), b: (b, out), middle: (halfway, out) })
        }
    }
}

/// From the cut line before the mouth to that behind it. `leg` is the allowance of each leg where it is cut open.
pub(super) fn shaped(mouth: &BodyMouth, before: &Limb<'_>, behind: &Limb<'_>, leg: f64, sense: f64) -> Option<Join> {
    let legs = legs(mouth, sense)?;
    if mouth.form == DartForm::CutOut
        && let Some(join) = cut_out(mouth, &legs, before, behind, leg)
    {
        return Some(join);
    }
    let gap = (mouth.at[1] - mouth.at[0]).length();
    let reach = 4.0 * (gap + before.width.max(behind.width)) + 10.0;
    // Both lines as they run towards the mouth.
    let a = Flap::of(before.off, legs.a, reach)?;
    let reversed = behind.off.reversed();
    let b = Flap::of(&reversed, legs.b, reach)?;
    let half_a = a.half(legs.middle)?;
    let half_b = b.half(legs.middle)?;
    let over = Rigid::mirroring(legs.middle.0, legs.middle.0 + legs.middle.1)?;
    let (first, second) = match (mouth.form, mouth.pressed) {
        (DartForm::Slashed, _) => (half_a, half_b.reversed()),
        (_, Pressed::ToStart) => {
            let second = half_a.moved(&over).reversed();
            (half_a, second)
        }
        (_, Pressed::ToEnd) => (half_b.moved(&over), half_b.reversed()),
    };
    let mut via: Vec<Segment<f64>> = Vec::new();
    via.extend(a.end_line);
    via.extend(chained(a.foot, first.segments()));
    via.extend(chained(end_of(&via, a.foot), second.segments()));
    via.extend(straight(end_of(&via, a.foot), b.foot));
    via.extend(b.end_line.map(|l| l.reversed()));
    Some(Join { keep: a.keep, via, from: behind.off.length() - b.keep })
}

fn end_of(via: &[Segment<f64>], otherwise: Pt<f64>) -> Pt<f64> {
    via.last().map_or(otherwise, Segment::end)
}

/// Segments, with a straight line where they do not start at `from`.
fn chained(from: Pt<f64>, segments: &[Segment<f64>]) -> Vec<Segment<f64>> {
    let start = segments.first().map_or(from, Segment::start);
    straight(from, start).into_iter().chain(segments.iter().copied()).collect()
}

/// A cut line that runs towards a leg, and what of it is mirrored in the leg.
struct Flap {
    /// The place up to which the line is kept.
    keep: f64,
    /// Where it has to be run on to reach the leg.
    end_line: Option<Segment<f64>>,
    /// Where it crosses the leg's prolongation.
    foot: Pt<f64>,
    /// From the foot on, mirrored in the leg.
    path: Curve<f64>,
}

impl Flap {
    fn of(line: &Curve<f64>, leg: (Pt<f64>, Pt<f64>), reach: f64) -> Option<Self> {
        let whole = line.run_on(0.0, reach)?;
        let near = |m: &crate::curves::Met<f64>| (m.point - leg.0).length();
        let met = whole.meets_line(leg.0, leg.1).ok()?;
        let cross = met.into_iter().min_by(|a, b| near(a).total_cmp(&near(b)))?;
        let keep = cross.along.min(line.length());
        let end_line = if cross.along > keep { straight(line.end(), cross.point) } else { None };
        let back = whole.between((cross.along - reach).max(0.0), cross.along)?.reversed();
        let path = back.moved(&Rigid::mirroring(leg.0, leg.0 + leg.1)?);
        Some(Self { keep, end_line, foot: cross.point, path: path.run_on(0.0, reach)? })
    }

    /// The path up to the middle of the mouth.
    fn half(&self, middle: (Pt<f64>, Pt<f64>)) -> Option<Curve<f64>> {
        let met = self.path.meets_line(middle.0, middle.1).ok()?;
        self.path.between(0.0, met.first()?.along)
    }
}

/// A mouth that is cut out: along both legs with an allowance, as far as there is cloth between them.
fn cut_out(mouth: &BodyMouth, legs: &Legs, before: &Limb<'_>, behind: &Limb<'_>, leg: f64) -> Option<Join> {
    let towards = |foot: Pt<f64>, other: Pt<f64>, way: Pt<f64>| {
        let aside = way.square();
        let aside = if aside.dot(other - foot) >= 0.0 { aside } else { -aside };
        (foot + aside.scaled(leg), way)
    };
    let (a, b) = (towards(legs.a.0, legs.b.0, legs.a.1), towards(legs.b.0, legs.a.0, legs.b.1));
    let apex = meet_lines(a, b)?;
    let deep = (apex - legs.middle.0).dot(legs.middle.1);
    let open = (mouth.at[0].towards(mouth.at[1], 0.5) - legs.middle.0).dot(legs.middle.1);
    // Allowances that fill the mouth leave nothing to cut out.
    if deep >= open - leg - tolerance::EQUAL {
        return None;
    }
    let reach = 4.0 * leg + (mouth.at[1] - mouth.at[0]).length() + 10.0;
    let on = |line: &Curve<f64>, (p, way): (Pt<f64>, Pt<f64>)| {
        let whole = line.run_on(0.0, reach)?;
        let met = whole.meets_line(p, way).ok()?;
        met.into_iter().min_by(|m, n| (m.point - p).length().total_cmp(&(n.point - p).length()))
    };
    let reversed = behind.off.reversed();
    let (u, v) = (on(before.off, a)?, on(&reversed, b)?);
    let keep = u.along.min(before.off.length());
    let from = v.along.min(reversed.length());
    let via = [
        straight(before.off.point_at(keep)?, u.point),
        straight(u.point, apex),
        straight(apex, v.point),
        straight(v.point, reversed.point_at(from)?),
    ];
    Some(Join { keep, via: via.into_iter().flatten().collect(), from: behind.off.length() - from })
}
