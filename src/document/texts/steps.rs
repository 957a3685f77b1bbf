//! The texts of the steps of derived pieces.

use super::In;
use crate::document::{Does, Inner, Role, Segment, Step};

/// The texts of a step. Names in it are those of the piece before it, which may be the names of the piece that it is derived from.
pub(super) fn step(to: &mut In<'_, '_>, i: usize, step: &mut Step) {
    // An edge may also be a dart, or a corner.
    const EDGE: Role = Role::OwnAny;
    to.nth("step name", i, Role::Words, &mut step.name);
    to.nth("step person", i, Role::Person, &mut step.person);
    to.nth("step note", i, Role::Words, &mut step.note);
    match &mut step.does {
        Does::MoveDart(m) => {
            to.nth("step close", i, Role::Own(Inner::Dart), &mut m.close);
            to.nth("step share", i, Role::Formula, &mut m.share);
            to.nth("step on", i, EDGE, &mut m.on);
            to.nth("step at", i, Role::Formula, &mut m.at);
            to.nth("step stays", i, EDGE, &mut m.stays);
            to.nth("step makes", i, Role::Makes(Inner::Dart), &mut m.makes);
        }
        Does::Spread(s) => {
            to.nth("step from", i, EDGE, &mut s.from);
            to.nth("step from_at", i, Role::Formula, &mut s.from_at);
            to.nth("step to", i, EDGE, &mut s.to);
            to.nth("step to_at", i, Role::Formula, &mut s.to_at);
            if s.count > 0 || !s.from_until.is_empty() || !s.to_until.is_empty() {
                to.nth("step from_until", i, Role::Formula, &mut s.from_until);
                to.nth("step to_until", i, Role::Formula, &mut s.to_until);
            }
            to.nth("step by", i, Role::Formula, &mut s.by);
            to.nth("step angle", i, Role::Formula, &mut s.angle);
            to.nth("step stays", i, EDGE, &mut s.stays);
            to.nth("step makes", i, Role::Makes(Inner::Dart), &mut s.makes);
        }
        Does::Cut(c) => {
            to.nth("step from", i, EDGE, &mut c.from);
            to.nth("step from_at", i, Role::Formula, &mut c.from_at);
            to.nth("step to", i, EDGE, &mut c.to);
            to.nth("step to_at", i, Role::Formula, &mut c.to_at);
            to.all_within("step darts", i, &EDGE, &mut c.darts);
            to.nth("step along", i, Role::Formula, &mut c.along);
            to.nth("step keep", i, EDGE, &mut c.keep);
            to.nth("step makes", i, Role::Makes(Inner::Edge), &mut c.makes);
            to.nth("step start", i, Role::Makes(Inner::Point), &mut c.start);
            to.nth("step end", i, Role::Makes(Inner::Point), &mut c.end);
            if c.from == c.to || !c.rest.is_empty() {
                to.nth("step rest", i, Role::Makes(Inner::Edge), &mut c.rest);
            }
        }
        Does::Join(j) => {
            to.nth("step edge", i, EDGE, &mut j.edge);
            to.nth("step piece", i, Role::Frame, &mut j.piece);
            to.nth("step to", i, Role::OwnOf(Inner::Edge, j.piece.clone()), &mut j.to);
            to.nth("step prefix", i, Role::Prefix, &mut j.prefix);
        }
        Does::Unfold(u) => {
            to.nth("step over", i, EDGE, &mut u.over);
            to.nth("step prefix", i, Role::Prefix, &mut u.prefix);
        }
        Does::TurnOver => {}
        Does::AddStrip(a) => {
            to.nth("step edge", i, EDGE, &mut a.edge);
            to.nth("step width", i, Role::Formula, &mut a.width);
            to.nth("step makes", i, Role::Makes(Inner::Edge), &mut a.makes);
            to.nth("step start", i, Role::Makes(Inner::Edge), &mut a.start);
            to.nth("step end", i, Role::Makes(Inner::Edge), &mut a.end);
        }
        Does::MoveEdge(m) => {
            to.nth("step edge", i, EDGE, &mut m.edge);
            to.nth("step by", i, Role::Formula, &mut m.by);
            to.nth("step to_by", i, Role::Formula, &mut m.to_by);
        }
        Does::Share(s) => {
            to.nth("step by", i, Role::Formula, &mut s.by);
            for (k, part) in s.over.iter_mut().enumerate() {
                to.within("step over", i, k, EDGE, &mut part.edge);
                to.within("step share", i, k, Role::Formula, &mut part.share);
            }
        }
        Does::ToCutLine(t) => {
            to.all_within("step edges", i, &EDGE, &mut t.edges);
            to.nth("step set", i, Role::Words, &mut t.set);
        }
        Does::Redraw(r) => {
            to.nth("step edge", i, EDGE, &mut r.edge);
            to.all_within("step smooth_at", i, &Role::Own(Inner::Point), &mut r.smooth_at);
            for (k, segment) in r.by.iter_mut().enumerate() {
                segment_texts(to, i, k, segment);
            }
        }
        Does::Draw(d) => {
            for (k, point) in d.points.iter_mut().enumerate() {
                to.within("step point name", i, k, Role::Makes(Inner::Point), &mut point.name);
                to.within("step point", i, k, Role::Formula, &mut point.at);
                to.within("step point note", i, k, Role::Words, &mut point.note);
            }
            // Segments of a line are told apart by hundreds.
            for (k, line) in d.lines.iter_mut().enumerate() {
                to.within("step line name", i, k, Role::Makes(Inner::Line), &mut line.name);
                to.within("step line from", i, k, Role::Own(Inner::Point), &mut line.from);
                for (s, segment) in line.by.iter_mut().enumerate() {
                    segment_texts(to, i, 100 * k + s, segment);
                }
                to.within("step line note", i, k, Role::Words, &mut line.note);
            }
            for (k, dart) in d.darts.iter_mut().enumerate() {
                to.within("step dart name", i, k, Role::Makes(Inner::Dart), &mut dart.name);
                to.within("step dart on", i, k, EDGE, &mut dart.on);
                to.within("step dart centre", i, k, Role::Formula, &mut dart.centre);
                to.within("step dart foot", i, k, Role::Formula, &mut dart.foot);
                to.within("step dart intake", i, k, Role::Formula, &mut dart.intake);
                to.within("step dart tip", i, k, Role::Formula, &mut dart.tip);
                to.within("step dart bow", i, k, Role::Formula, &mut dart.bow);
                to.within("step dart allowance", i, k, Role::Formula, &mut dart.allowance);
                to.within("step dart note", i, k, Role::Words, &mut dart.note);
            }
            for (k, mark) in d.marks.iter_mut().enumerate() {
                to.within("step mark name", i, k, Role::Makes(Inner::Mark), &mut mark.name);
                to.within("step mark at", i, k, Role::Formula, &mut mark.at);
                to.within("step mark to", i, k, Role::Formula, &mut mark.to);
                to.within("step mark fixed", i, k, Role::Formula, &mut mark.fixed);
                to.within("step mark piece", i, k, Role::Frame, &mut mark.piece);
                to.within("step mark size", i, k, Role::Formula, &mut mark.size);
                to.within("step mark text", i, k, Role::Braces, &mut mark.text);
            }
        }
        Does::LeaveOut(names) => to.all_within("step leaves out", i, &Role::OwnAny, names),
    }
}

/// A segment that a step draws: `k` tells which.
fn segment_texts(to: &mut In<'_, '_>, i: usize, k: usize, segment: &mut Segment) {
    match segment {
        Segment::Straight(end) => to.within("step segment to", i, k, Role::Own(Inner::Point), end),
        Segment::Curve(a, b, end) => {
            to.within("step leaving", i, k, Role::Formula, a);
            to.within("step arriving", i, k, Role::Formula, b);
            to.within("step segment to", i, k, Role::Own(Inner::Point), end);
        }
        Segment::Arc { centre, to: end, .. } => {
            to.within("step centre", i, k, Role::Formula, centre);
            to.within("step segment to", i, k, Role::Own(Inner::Point), end);
        }
        Segment::Smooth { through, leaving, arriving, to: end } => {
            for (n, point) in through.iter_mut().enumerate() {
                to.within("step through", i, 1000 * k + n, Role::Formula, point);
            }
            to.within("step leaving heading", i, k, Role::Formula, leaving);
            to.within("step arriving heading", i, k, Role::Formula, arriving);
            to.within("step segment to", i, k, Role::Own(Inner::Point), end);
        }
        Segment::Taken { curve, off, off_end, to: end } => {
            to.within("step curve", i, k, Role::Formula, curve);
            to.within("step off", i, k, Role::Formula, off);
            to.within("step off_end", i, k, Role::Formula, off_end);
            to.within("step segment to", i, k, Role::Own(Inner::Point), end);
        }
    }
}
