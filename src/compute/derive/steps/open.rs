//! Steps that open: darts that are moved, slashes that are spread.

use super::After;
use super::Before;
use crate::compute::derive::copy::point;
use crate::compute::derive::ring::{Arc, End, Place};
use crate::compute::derive::shape::{OWN, Side};
use crate::document::{Dart, Inner, MoveDart, Opening, Segment, Spread};

/// Where the part beyond a slash begins: of the place of the slash and the edge beyond it.
type Lapped = dyn Fn(&str, &str) -> String;

impl Before<'_> {
    pub(super) fn move_dart(&mut self, step: &MoveDart) -> After {
        let dart = self.shape.dart(&step.close).cloned();
        let Some(dart) = dart else { return Err(format!("the piece has no dart {} before this step", step.close)) };
        let closed = self.place(&step.close, "", "d")?;
        let opened = self.place(&step.on, &step.at, "p")?;
        if opened.edge().is_none() || opened.tip().is_some() {
            return Err(format!("{} is no edge on which it could open", step.on));
        }
        if !self.share.is_empty() && step.share.is_empty() {
            return Err(
                "a step for one person keeps all names: say a share of the dart, so that both darts remain".to_owned()
            );
        }
        let arc = Arc::of(self.shape, closed.clone(), opened, &step.stays, false)?;
        let starts = arc.from == closed;
        let (leg, onto) = match starts {
            true => (closed.after().to_owned(), closed.before().to_owned()),
            false => (closed.before().to_owned(), closed.after().to_owned()),
        };
        let tip = closed.inner().to_owned();
        let region = format!("{OWN}region");
        let back = vec![Segment::Straight(tip.clone()), Segment::Straight(arc.from.after().to_owned())];
        self.piece.lines.push(arc.closed(self.shape, &region, back));
        let (leg, onto) = match step.share.trim() {
            "" => (leg, onto),
            share => {
                // On the legs, at one distance from the tip, so that a share of the angle is one of an arc.
                let near = format!("{OWN}n1");
                let far = format!("{OWN}n2");
                self.piece.points.push(point(&near, format!("on_way({tip}, {leg}, 10 mm)")));
                self.piece.points.push(point(&far, format!("on_way({tip}, {onto}, 10 mm)")));
                let after = format!("){})", self.share);
                let to = self.keep("n3", &format!("arc({tip}, {near}, {far}).at(("), share, &after);
                (near, to)
            }
        };
        let how = format!(".turned({}, from: {}, to: {})", self.was(&tip), self.was(&leg), self.was(&onto));
        let tag = |place: &Place| format!("{}{}", if *place == closed { "c" } else { "o" }, self.piece.points.len());
        let ends = [&arc.from, &arc.to].map(|p| {
            let across = if *p == closed || step.opening == Opening::Usual { Opening::Straight } else { step.opening };
            End::new(&tag(p), across)
        });
        let names = ends.each_ref().map(|e| e.names.clone());
        let (at_closed, at_opened) = if starts { (&names[0], &names[1]) } else { (&names[1], &names[0]) };
        let moves = arc.moves(self.shape, how, &region, ends);
        let (mut piece, mut shape) = self.carried(&moves);
        let dart_at = |names: &[String; 2], name: &str, on: &str| Dart {
            name: name.to_owned(),
            on: on.to_owned(),
            foot: names[0].clone(),
            centre: String::new(),
            intake: format!("gap({}, {})", names[0], names[1]),
            tip: self.was(&tip),
            ..dart.clone()
        };
        piece.darts.retain(|d| d.name != step.close);
        if step.share.trim().is_empty() {
            shape.darts.retain(|d| d.name != step.close);
        } else {
            piece.darts.push(dart_at(at_closed, &step.close, &dart.on));
        }
        if matches!(step.opening, Opening::Usual | Opening::Dart) {
            if step.makes.is_empty() {
                return Err("it does not say how the new dart is called".to_owned());
            }
            let new = dart_at(at_opened, &step.makes, &step.on);
            self.makes(Inner::Dart, &step.makes);
            shape.darts.push(new.clone());
            piece.darts.push(new);
        }
        Ok((piece, shape))
    }

    pub(super) fn spread(&mut self, step: &Spread) -> After {
        let from = self.place(&step.from, &step.from_at, "a")?;
        let to = self.place(&step.to, &step.to_at, "b")?;
        let Some(opens) = from.edge().filter(|_| from.tip().is_none()) else {
            return Err(format!("{} is no edge that could open", step.from));
        };
        if to.tip().is_some() || (step.parallel && to.edge().is_none()) {
            return Err(format!("{} is no edge at which the slash could end", step.to));
        }
        let arc = Arc::of(self.shape, from.clone(), to.clone(), &step.stays, false)?;
        let starts = arc.from == from;
        let (a, b) = (from.before().to_owned(), to.before().to_owned());
        // A point on the part that moves, near the slash, to know the side.
        let side = self.shape.edges[opens].clone();
        let beyond = |at: &str, side: &Side, after: bool| {
            format!("part({}, {at}, {})", side.name, if after { &side.to } else { &side.from })
        };
        let moving = beyond(&a, &side, starts);
        let probe = format!("{OWN}probe");
        self.piece.points.push(point(&probe, format!("({moving}).at(1/10)")));
        let region = format!("{OWN}region");
        self.piece.lines.push(arc.closed(self.shape, &region, vec![Segment::Straight(arc.from.after().to_owned())]));
        let (how, lapped): (String, Box<Lapped>) = if step.parallel {
            let by = self.length("by", &step.by, "by how much it is spread")?;
            let sign = format!(
                "if(gap({a}.polar(heading({a}, {b}) + 90°, 1 mm), {probe}) < gap({a}.polar(heading({a}, {b}) - 90°, 1 mm), {probe}), 1, -1)"
            );
            let (shift, back) = (format!("{OWN}shift"), format!("{OWN}back"));
            self.piece.points.push(point(&shift, format!("{a}.polar(heading({a}, {b}) + {sign} * 90°, {by})")));
            self.piece.points.push(point(&back, format!("{a}.polar(heading({a}, {b}) + {sign} * 90°, -({by}))")));
            let how = format!(".moved({} - {})", self.was(&shift), self.was(&a));
            let line = format!("through({back}, parallel_to: line({a}, {b}))");
            (how, Box::new(move |at, edge| format!("if({by} < 0 mm, cross({edge}, {line}, nearest: {at}), {at})")))
        } else {
            let theta = if step.angle.trim().is_empty() {
                let by = self.length("by", &step.by, "by how much it is spread")?;
                format!("2 * asin({by} / (2 * gap({a}, {b})))")
            } else {
                let after = format!(") / 1 deg * 1 mm{}, 0 mm)", self.share);
                format!("{}.x / 1 mm * 1 deg", self.keep("angle", "((", &step.angle, &after))
            };
            let sign =
                format!("if(gap({a}.turned({b}, 1 deg), {probe}) < gap({a}.turned({b}, -1 deg), {probe}), 1, -1)");
            let turn = format!("{OWN}turn");
            self.piece.points.push(point(&turn, format!("({sign} * ({theta}) / 1 deg * 1 mm, 0 mm)")));
            let how = format!(".turned({}, {}.x / 1 mm * 1 deg)", self.was(&b), self.was(&turn));
            let line = format!("line({b}, {a}.turned({b}, -({turn}.x / 1 mm * 1 deg)))");
            (how, Box::new(move |at, edge| format!("if({theta} < 0 deg, cross({edge}, {line}, nearest: {at}), {at})")))
        };
        let across = if step.opening == Opening::Usual { Opening::Straight } else { step.opening };
        let count = self.piece.points.len();
        let mut end = |place: &Place, first: bool, tag: &str, opening: bool| {
            let mut end = End::new(&format!("{tag}{count}"), across);
            if let (Some(edge), true) = (place.edge(), opening) {
                // Lapped, the part that moves begins further on.
                let beyond = beyond(place.before(), &self.shape.edges[edge], first);
                let name = format!("{OWN}{tag}2");
                self.piece.points.push(point(&name, lapped(place.before(), &beyond)));
                let at = place.before().to_owned();
                end.cut = Some(if first { [at, name] } else { [name, at] });
            }
            end
        };
        let at_from = end(&from, starts, "f", true);
        let at_to = end(&to, !starts, "t", step.parallel);
        let names = at_from.names.clone();
        let ends = if starts { [at_from, at_to] } else { [at_to, at_from] };
        let moves = arc.moves(self.shape, how, &region, ends);
        let (mut piece, mut shape) = self.carried(&moves);
        if step.opening == Opening::Dart {
            if step.makes.is_empty() || step.parallel {
                return Err("a slash that opens as a dart needs a hinge and a name for the dart".to_owned());
            }
            self.makes(Inner::Dart, &step.makes);
            let dart = Dart {
                name: step.makes.clone(),
                on: step.from.clone(),
                foot: names[0].clone(),
                intake: format!("gap({}, {})", names[0], names[1]),
                tip: self.was(&b),
                ..Dart::default()
            };
            shape.darts.push(dart.clone());
            piece.darts.push(dart);
        }
        Ok((piece, shape))
    }
}
