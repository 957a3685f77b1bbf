//! Where other pieces are sewn on: pockets, patches. Their outline is meant for the closed body, so it is carried over open darts and,
//! where it runs over a seam, onto the next piece.

use std::collections::BTreeMap;

use kurbo::{Affine, BezPath, Point, Shape};

use super::body::Body;
use super::cutting::flattened;
use super::mouth::trued_feet;
use super::sewing::Sewing;
use super::widths::point;
use crate::base::tolerance;
use crate::compute::{Model, RunPart, run_of};
use crate::curves::{Pt, Rigid};
use crate::document::MarkKind;

/// Lines that are carried, as straight stretches.
type Lines = Vec<Vec<Point>>;

/// For each piece the places of others on it, in its own frame. `body` and `stitch` give the pieces of this case.
pub(super) fn placed<'a>(
    model: &Model,
    case: usize,
    sewing: &Sewing,
    body: &dyn Fn(usize) -> Option<&'a Body>,
    stitch: &dyn Fn(usize) -> Option<BezPath>,
) -> BTreeMap<usize, Vec<BezPath>> {
    let mut out: BTreeMap<usize, Vec<BezPath>> = BTreeMap::new();
    let frames = &model.plan.frames();
    for (frame, plan) in frames.iter().enumerate() {
        for mark in plan.finishing.marks.iter().filter(|m| m.kind == MarkKind::Place) {
            let Some(of) = mark.piece.as_ref().and_then(|name| frames.iter().position(|f| f.name == *name)) else {
                continue;
            };
            let (Some(own), Some(at), Some(shape)) = (body(frame), point(model, case, &mark.at), stitch(of)) else {
                continue;
            };
            let heading = mark.to.as_ref().and_then(|f| point(model, case, f)).map_or(0.0, |to| (to - at).angle());
            let lay = Affine::translate(at.value().to_vec2()) * Affine::rotate(heading);
            let mut ring = flattened(&(lay * shape));
            ring.extend(ring.first().copied());
            let Some(outline) = stitch(frame) else { continue };
            let (inside, outside) = split_by(&outline, &ring);
            let mut lines = inside;
            for dart in own.mouths.iter().filter(|m| m.tip.is_some()) {
                lines = over_dart(lines, at, trued_feet(dart), dart.tip);
            }
            out.entry(frame).or_default().push(path_of(&lines));
            for piece in outside {
                if let Some((next, carried)) = over_seam(model, case, sewing, (frame, own), &piece) {
                    out.entry(next).or_default().push(path_of(&[carried]));
                }
            }
        }
    }
    out
}

fn path_of(lines: &[Vec<Point>]) -> BezPath {
    let mut path = BezPath::new();
    for line in lines.iter().filter(|l| l.len() > 1) {
        path.move_to(line[0]);
        line[1..].iter().for_each(|p| path.line_to(*p));
    }
    path
}

/// What of a line lies inside an outline, and what outside of it.
fn split_by(outline: &BezPath, line: &[Point]) -> (Lines, Lines) {
    let border = flattened(outline);
    let (mut inside, mut outside): (Lines, Lines) = (Vec::new(), Vec::new());
    let mut add = |from: Point, to: Point| {
        let middle = from.midpoint(to);
        let side = if outline.winding(middle) != 0 { &mut inside } else { &mut outside };
        match side.last_mut() {
            Some(last) if last.last().is_some_and(|p| p.distance(from) <= tolerance::EQUAL) => last.push(to),
            _ => side.push(vec![from, to]),
        }
    };
    for leg in line.windows(2) {
        let way = leg[1] - leg[0];
        let mut cuts: Vec<f64> = vec![0.0, 1.0];
        for i in 0..border.len() {
            let (a, b) = (border[i], border[(i + 1) % border.len()]);
            let turn = way.cross(b - a);
            if turn.abs() > tolerance::EQUAL {
                let (u, v) = ((a - leg[0]).cross(b - a) / turn, (a - leg[0]).cross(way) / turn);
                if (0.0..=1.0).contains(&u) && (0.0..=1.0).contains(&v) {
                    cuts.push(u);
                }
            }
        }
        cuts.sort_by(f64::total_cmp);
        for pair in cuts.windows(2).filter(|p| p[1] - p[0] > tolerance::EQUAL) {
            add(leg[0] + way * pair[0], leg[0] + way * pair[1]);
        }
    }
    // A ring that begins in the middle of a stretch is put together again.
    for lines in [&mut inside, &mut outside] {
        let joins = lines.len() > 1
            && lines[0]
                .first()
                .zip(lines[lines.len() - 1].last())
                .is_some_and(|(a, b)| a.distance(*b) <= tolerance::EQUAL);
        if joins && let Some(mut last) = lines.pop() {
            last.extend(lines[0].iter().skip(1));
            lines[0] = last;
        }
    }
    (inside, outside)
}

/// Lines on the closed body, laid out on the open piece: what lies beyond the leg next to `anchor` goes to beyond the other leg.
fn over_dart(lines: Lines, anchor: Pt<f64>, feet: [Pt<f64>; 2], tip: Option<Pt<f64>>) -> Lines {
    let Some(tip) = tip else { return lines };
    let middle = feet[0].towards(feet[1], 0.5) - tip;
    let side = |p: Pt<f64>| middle.cross(p - tip);
    let near = if (side(anchor) > 0.0) == (side(feet[0]) > 0.0) { 0 } else { 1 };
    let (own, other) = ((feet[near] - tip).value().to_vec2(), (feet[1 - near] - tip).value().to_vec2());
    let turn = Affine::translate(tip.value().to_vec2())
        * Affine::rotate(libm::atan2(own.cross(other), own.dot(other)))
        * Affine::translate(-tip.value().to_vec2());
    let (tip, beyond) = (tip.value(), own.cross(other).signum());
    // Beyond the leg, and past the tip: nearer to the body the cloth is whole.
    let is_beyond = |p: Point| own.cross(p - tip) * beyond > 0.0 && own.dot(p - tip) > 0.0;
    let mut out: Lines = Vec::new();
    for line in lines {
        let mut now: Vec<Point> = Vec::new();
        for leg in line.windows(2) {
            let (a, b) = (own.cross(leg[0] - tip), own.cross(leg[1] - tip));
            let crosses = (a > 0.0) != (b > 0.0);
            let meet = if crosses { leg[0].lerp(leg[1], a / (a - b)) } else { leg[1] };
            let parts = if crosses { vec![(leg[0], meet), (meet, leg[1])] } else { vec![(leg[0], leg[1])] };
            for (from, to) in parts {
                let moved = is_beyond(from.midpoint(to));
                let (from, to) = if moved { (turn * from, turn * to) } else { (from, to) };
                if now.last().is_none_or(|p| p.distance(from) > tolerance::EQUAL) {
                    out.push(std::mem::take(&mut now));
                    now.push(from);
                }
                now.push(to);
            }
        }
        out.push(now);
    }
    out.retain(|l| l.len() > 1);
    out
}

/// A line that lies outside of a piece, carried onto the piece to which the edge is sewn that it crosses: that piece is laid along the
/// seam where the line crosses it.
fn over_seam(
    model: &Model,
    case: usize,
    sewing: &Sewing,
    (frame, body): (usize, &Body),
    line: &[Point],
) -> Option<(usize, Vec<Point>)> {
    let (first, last) = (line.first()?, line.last()?);
    let middle = first.midpoint(*last);
    let at = Pt::new(middle.x, middle.y);
    let near = |e: &usize| body.edges[*e].locate(at).distance;
    let edge = (0..body.edges.len()).min_by(|a, b| near(a).total_cmp(&near(b)))?;
    let sewn = sewing.of_edge(frame, edge).first()?;
    let seam = &model.plan.seams[sewn.seam];
    let run = |side: usize| run_of(model, &model.plan, case, seam.sides[side]);
    let (own, other) = (run(sewn.side)?, run(1 - sewn.side)?);
    let place = {
        let RunPart::Edge(shape, ..) = own.parts.get(sewn.part)? else { return None };
        let before: f64 = own.parts[..sewn.part].iter().map(RunPart::sewn_length).sum();
        before + shape.sewn_place(shape.curve.locate(at).along).ok()?
    };
    let touch = |run: &crate::compute::Run, place: f64| {
        let (part, rest) = run.part_at(place.min(run.sewn_length()), false)?;
        let RunPart::Edge(shape, ..) = run.parts.get(part)? else { return None };
        let flat = shape.flat_place(rest).ok()?;
        let home = shape.home?;
        let sense = model.item(case, model.plan.all_frames[home.frame as usize].sense)?.real()?;
        Some((
            home.frame as usize,
            shape.curve.point_at(flat)?,
            shape.curve.tangent_at(flat)?,
            (sense > 0.0) != home.against,
        ))
    };
    let ((_, p, way_p, right_p), (next, q, way_q, right_q)) = (touch(&own, place)?, touch(&other, place)?);
    let lay = Rigid::laying(p, p + way_p, q, q + way_q, right_p == right_q)?;
    let carried = line.iter().map(|v| lay.of(Pt::new(v.x, v.y)).value());
    Some((next, carried.collect()))
}
