//! Steps that open: darts that are moved, slashes that are spread.

use super::{After, Before, Typed};
use crate::compute::derive::copy::point;
use crate::compute::derive::ring::{Arc, End, Place};
use crate::compute::derive::shape::{OWN, Shape, Spot};
use crate::document::{Dart, Inner, MoveDart, Opening, Piece, Segment, Spread};
use crate::texts::{id, say};

/// The most slashes that one step makes.
const MOST_SLASHES: u32 = 60;

/// Where the part beyond a slash begins: of the place of the slash and the edge beyond it.
type Lapped = dyn Fn(&str, &str) -> String;

impl Before<'_> {
    pub(super) fn move_dart(&mut self, step: &MoveDart) -> After {
        let dart = self.shape.dart(&step.close).cloned();
        let Some(dart) = dart else { return Err(say!("step-no-dart", dart = step.close)) };
        let closed = self.place(&step.close, "", "d")?;
        let opened = self.place(&step.on, &step.at, "p")?;
        if opened.edge().is_none() || opened.tip().is_some() {
            return Err(say!("step-opens-on", edge = step.on));
        }
        if !self.share.is_empty() && step.share.is_empty() {
            return Err(say!("step-for-one-dart"));
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
                return Err(say!("step-dart-unnamed"));
            }
            let new = dart_at(at_opened, &step.makes, &step.on);
            self.makes(Inner::Dart, &step.makes);
            shape.darts.push(new.clone());
            piece.darts.push(new);
        }
        Ok((piece, shape))
    }

    pub(super) fn spread(&mut self, step: &Spread) -> After {
        let [from, to] = self.slashed(step)?;
        let Some(opens) = from.edge().filter(|_| from.tip().is_none()) else {
            return Err(say!("step-opens", edge = step.from));
        };
        if to.tip().is_some() || (step.parallel && to.edge().is_none()) {
            return Err(say!("step-slash-end", edge = step.to));
        }
        let (one, two) = self.in_order(from.clone(), to.clone());
        let arc = Arc::of(self.shape, one.clone(), two, &step.stays, false)?;
        let (a, b) = (from.before().to_owned(), to.before().to_owned());
        let side = self.shape.edges[opens].clone();
        // Within one edge the numbers tell which end comes first on it.
        let first = (to.edge() == Some(opens)).then(|| self.is_first(opens, &a, &b));
        let starts = if first.is_some() { arc.from == one } else { arc.from == from };
        let beyond = |place: &Place, starts: bool| {
            let (at, side) = (place.before(), &self.shape.edges[place.edge().unwrap_or(opens)]);
            let part = |to: &str| format!("part({}, {at}, {to})", side.name);
            match &first {
                None => part(if starts { &side.to } else { &side.from }),
                Some(_) if !arc.is_outer => format!("part({}, {a}, {b})", side.name),
                Some(first) => {
                    let (low, high) = (part(&side.from), part(&side.to));
                    let (low, high) = if *place == from { (low, high) } else { (high, low) };
                    format!("if({first}, {low}, {high})")
                }
            }
        };
        // A point on the part that moves, near the slash, to know the side.
        let probe = format!("{OWN}probe");
        let (near, turns) = match &first {
            None => (format!("({}).at(1/10)", beyond(&from, starts)), ["1", "-1"]),
            Some(_) if arc.is_outer => (format!("part({}, {a}, {b}).at(1/2)", side.name), ["-1", "1"]),
            Some(_) => (format!("part({}, {a}, {b}).at(1/2)", side.name), ["1", "-1"]),
        };
        let beyonds = [beyond(&from, starts), if to.edge().is_some() { beyond(&to, !starts) } else { String::new() }];
        let [yes, no] = turns;
        self.piece.points.push(point(&probe, near));
        let region = format!("{OWN}region");
        self.piece.lines.push(arc.closed(self.shape, &region, vec![Segment::Straight(arc.from.after().to_owned())]));
        let (how, lapped): (String, Box<Lapped>) = if step.parallel {
            let by = self.amount(step)?;
            let sign = format!(
                "if(gap({a}.polar(heading({a}, {b}) + 90°, 1 mm), {probe}) < gap({a}.polar(heading({a}, {b}) - 90°, 1 mm), {probe}), {yes}, {no})"
            );
            let (shift, back) = (format!("{OWN}shift"), format!("{OWN}back"));
            self.piece.points.push(point(&shift, format!("{a}.polar(heading({a}, {b}) + {sign} * 90°, {by})")));
            self.piece.points.push(point(&back, format!("{a}.polar(heading({a}, {b}) + {sign} * 90°, -({by}))")));
            let how = format!(".moved({} - {})", self.was(&shift), self.was(&a));
            let line = format!("through({back}, parallel_to: line({a}, {b}))");
            (how, Box::new(move |at, edge| format!("if({by} < 0 mm, cross({edge}, {line}, nearest: {at}), {at})")))
        } else {
            let theta = if step.angle.trim().is_empty() {
                let by = self.amount(step)?;
                format!("2 * asin({by} / (2 * gap({a}, {b})))")
            } else {
                self.amount_of_turn(step)
            };
            let sign = format!(
                "if(gap({a}.turned({b}, 1 deg), {probe}) < gap({a}.turned({b}, -1 deg), {probe}), {yes}, {no})"
            );
            let turn = format!("{OWN}turn");
            self.piece.points.push(point(&turn, format!("({sign} * ({theta}) / 1 deg * 1 mm, 0 mm)")));
            let how = format!(".turned({}, {}.x / 1 mm * 1 deg)", self.was(&b), self.was(&turn));
            let line = format!("line({b}, {a}.turned({b}, -({turn}.x / 1 mm * 1 deg)))");
            (how, Box::new(move |at, edge| format!("if({theta} < 0 deg, cross({edge}, {line}, nearest: {at}), {at})")))
        };
        let across = if step.opening == Opening::Usual { Opening::Straight } else { step.opening };
        let count = self.piece.points.len();
        // Lapped, the part that moves begins further on: points of their own for that, at each end that opens.
        let mut begins = [a.clone(), b.clone()];
        for (k, (place, tag)) in [(&from, "f"), (&to, "t")].into_iter().enumerate() {
            if place.edge().is_some() && (k == 0 || step.parallel) {
                begins[k] = format!("{OWN}{tag}2");
                self.piece.points.push(point(&begins[k], lapped(place.before(), &beyonds[k])));
            }
        }
        if let Some(first) = &first {
            let [f, t] = begins;
            begins = ["l2", "h2"].map(|end| format!("{OWN}{end}"));
            self.piece.points.push(point(&begins[0], format!("if({first}, {f}, {t})")));
            self.piece.points.push(point(&begins[1], format!("if({first}, {t}, {f})")));
        }
        // Of the two ends the one at which the part that moves begins, in the order of the outline, comes first.
        let [mut at_one, mut at_two] = ["f", "t"].map(|tag| End::new(&format!("{tag}{count}"), across));
        let names = [at_one.names.clone(), at_two.names.clone()];
        let [one, two] = begins;
        let (at_start, at_end, start, end) =
            if starts { (&mut at_one, &mut at_two, one, two) } else { (&mut at_two, &mut at_one, two, one) };
        at_start.cut = Some([arc.from.before().to_owned(), start]);
        at_end.cut = Some([end, arc.to.before().to_owned()]);
        let ends = if starts { [at_one, at_two] } else { [at_two, at_one] };
        let moves = arc.moves(self.shape, how, &region, ends);
        let (mut piece, mut shape) = self.carried(&moves);
        if let Some(slash) = &self.slash {
            let own = ["a", "b"].map(|end| slash_place(slash.round, end));
            shape.spots.retain(|s| !own.contains(&s.name));
            piece.points.retain(|p| !own.contains(&p.name));
        }
        if step.opening == Opening::Dart {
            if step.makes.is_empty() || step.parallel || step.count > 0 {
                return Err(say!("step-slash-dart"));
            }
            self.makes(Inner::Dart, &step.makes);
            let [foot, other] = match &first {
                None => names[0].clone(),
                Some(_) => {
                    let (a, b) = (self.was(&a), self.was(&b));
                    let edge = self.was(&side.name);
                    [0, 1].map(|k| {
                        format!("if(place({edge}, {a}) <= place({edge}, {b}), {}, {})", names[0][k], names[1][k])
                    })
                }
            };
            let dart = Dart {
                name: step.makes.clone(),
                on: step.from.clone(),
                intake: format!("gap({foot}, {other})"),
                foot,
                tip: self.was(&b),
                ..Dart::default()
            };
            shape.darts.push(dart.clone());
            piece.darts.push(dart);
        }
        Ok((piece, shape))
    }

    /// Both ends of the slash.
    fn slashed(&mut self, step: &Spread) -> Result<[Place; 2], String> {
        let Some(slash) = self.slash.clone() else {
            return Ok([self.place(&step.from, &step.from_at, "a")?, self.place(&step.to, &step.to_at, "b")?]);
        };
        let mut end = |name: &str, end: &str| match self.shape.edge(name) {
            Some(edge) => {
                let at = slash_place(slash.round, end);
                Ok(Place::On { edge, before: at.clone(), after: at, tip: None })
            }
            None => self.place(name, "", end),
        };
        Ok([end(&step.from, "a")?, end(&step.to, "b")?])
    }

    /// By how much a slash opens: of several the amount is shared, and told before the first.
    fn amount(&mut self, step: &Spread) -> Result<String, String> {
        match self.slash.clone().filter(|slash| slash.round > 0) {
            Some(slash) => Ok(format!("{}.{OWN}by.x", slash.stage)),
            None => self.shared(step, |own| own.length("by", &step.by, id!("step-spread-unsaid"))),
        }
    }

    fn amount_of_turn(&mut self, step: &Spread) -> String {
        let own = match self.slash.clone().filter(|slash| slash.round > 0) {
            Some(slash) => format!("{}.{OWN}angle", slash.stage),
            None => self.shared(step, |own| {
                let after = format!(") / 1 deg * 1 mm{}, 0 mm)", own.share);
                own.keep("angle", "((", &step.angle, &after)
            }),
        };
        format!("{own}.x / 1 mm * 1 deg")
    }

    /// Tells an amount of which each of several slashes gets its share.
    fn shared<T>(&mut self, step: &Spread, tell: impl FnOnce(&mut Self) -> T) -> T {
        let whole = self.share.clone();
        if step.count > 0 {
            self.share.push_str(&format!(" / {}", step.count));
        }
        let told = tell(self);
        self.share = whole;
        told
    }
}

/// The name of an end of one of several slashes.
fn slash_place(round: u32, end: &str) -> String {
    format!("{OWN}slash{round}{end}")
}

/// Marks the places of several slashes on a piece, before the first is made: they go with their edges.
pub(in crate::compute::derive) fn mark_slashes(
    piece: &mut Piece,
    shape: &mut Shape,
    step: &Spread,
) -> Result<Vec<Typed>, String> {
    let count = step.count;
    if count > MOST_SLASHES {
        return Err(say!("step-slashes", given = count.to_string(), most = MOST_SLASHES.to_string()));
    }
    if step.from == step.to {
        return Err(say!("step-slashes-run"));
    }
    let mut typed = Vec::new();
    let ends = [
        (&step.from, [(&step.from_at, "0"), (&step.from_until, "1")], "a"),
        (&step.to, [(&step.to_at, "1"), (&step.to_until, "0")], "b"),
    ];
    for (name, between, end) in ends {
        let Some(edge) = shape.edge(name) else { continue };
        let name = &shape.edges[edge].name.clone();
        for (k, (at, otherwise)) in between.into_iter().enumerate() {
            let at = if at.trim().is_empty() { otherwise } else { at.as_str() };
            let own = format!("{OWN}between{end}{k}");
            typed.push(Typed { name: own.clone(), text: at.to_owned(), before: name.len() + 4 });
            piece.points.push(point(&own, format!("{name}.at({at})")));
        }
        for round in 0..count {
            let own = slash_place(round, end);
            let between = format!("part({name}, {OWN}between{end}0, {OWN}between{end}1)");
            piece.points.push(point(&own, format!("{between}.at({}/{})", round + 1, count + 1)));
            shape.spots.push(Spot { name: own, on: Some(name.clone()), is_mark: false });
        }
    }
    Ok(typed)
}
