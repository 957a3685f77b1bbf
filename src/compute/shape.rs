//! Edges as drawn and as sewn: mouths, places, parts.

use std::sync::Arc;

use kurbo::BezPath;

use super::item::{EdgeShape, Folded, Mouth, NodeTrouble};
use crate::base::{Scalar, tolerance};
use crate::curves::{Curve, Pt, Rigid, Segment};
use crate::language::Trouble;
use crate::texts::id;

impl<S: Scalar> EdgeShape<S> {
    /// An edge without mouths.
    pub fn plain(curve: Curve<S>) -> Self {
        Self { curve: Arc::new(curve), mouths: Vec::new(), home: None, folded: Vec::new() }
    }

    /// Length of the paper, mm.
    pub fn flat_length(&self) -> S {
        self.curve.length()
    }

    /// Sewn length, mm: mouths taken out.
    pub fn sewn_length(&self) -> S {
        self.mouths.iter().fold(self.curve.length(), |length, m| length - (m.second - m.first))
    }

    /// Flat place of a sewn place (mm from the start).
    pub fn flat_place(&self, sewn: S) -> Result<S, Trouble> {
        let total = self.sewn_length();
        let at = sewn.value();
        if at < -tolerance::EQUAL || at > total.value() + tolerance::EQUAL || at.is_nan() {
            return Err(Trouble::OffTheEdge(at, total.value()));
        }
        let mut flat = sewn;
        for mouth in &self.mouths {
            // At the mouth itself the first foot is meant.
            if flat.value() > mouth.first.value() + tolerance::EQUAL {
                flat = flat + (mouth.second - mouth.first);
            }
        }
        Ok(flat)
    }

    /// Sewn place of a flat place; inside a mouth there is none.
    pub fn sewn_place(&self, flat: S) -> Result<S, Trouble> {
        let mut sewn = flat;
        for mouth in &self.mouths {
            let (a, b, at) = (mouth.first.value(), mouth.second.value(), flat.value());
            if at > a + tolerance::EQUAL && at < b - tolerance::EQUAL {
                return Err(Trouble::InsideMouth(mouth.name.to_string()));
            }
            if at >= b - tolerance::EQUAL {
                sewn = sewn - (mouth.second - mouth.first);
            }
        }
        Ok(sewn)
    }

    /// The same line the other way round.
    pub fn reversed(&self) -> Self {
        let total = self.curve.length();
        let mouths = self.mouths.iter().rev().map(|m| Folded {
            first: total - m.second,
            second: total - m.first,
            name: m.name.clone(),
        });
        Self {
            curve: Arc::new(self.curve.reversed()),
            mouths: mouths.collect(),
            home: self.home.map(super::item::Home::turned),
            folded: self.folded.clone(),
        }
    }

    /// The part between two points that lie on it; from the later to the earlier it runs the other way.
    pub fn part(&self, from: Pt<S>, to: Pt<S>) -> Result<Self, Trouble> {
        let (a, b) = (self.place_of(from)?, self.place_of(to)?);
        if a.value() > b.value() {
            return Ok(self.between(b, a)?.reversed());
        }
        self.between(a, b)
    }

    /// The flat place of a point on it.
    pub fn place_of(&self, point: Pt<S>) -> Result<S, Trouble> {
        let place = self.curve.locate(point);
        let distance = place.distance.value();
        if distance > tolerance::ON_EDGE { Err(Trouble::NotOnEdge(distance)) } else { Ok(place.along) }
    }

    fn between(&self, a: S, b: S) -> Result<Self, Trouble> {
        let mut mouths = Vec::new();
        for mouth in &self.mouths {
            let (first, second) = (mouth.first.value(), mouth.second.value());
            if second <= a.value() + tolerance::EQUAL || first >= b.value() - tolerance::EQUAL {
                continue;
            }
            if first < a.value() - tolerance::EQUAL || second > b.value() + tolerance::EQUAL {
                return Err(Trouble::InsideMouth(mouth.name.to_string()));
            }
            mouths.push(Folded { first: mouth.first - a, second: mouth.second - a, name: mouth.name.clone() });
        }
        if b.value() - a.value() <= tolerance::EQUAL {
            return Err(Trouble::NoAnswer(id!("answer-part-one-place")));
        }
        let curve = self.curve.between(a, b).ok_or(Trouble::NoAnswer(id!("answer-no-part-of-edge")))?;
        Ok(Self { curve: Arc::new(curve), mouths, home: self.home, folded: Vec::new() })
    }

    /// Moved as a rigid body.
    pub fn moved(&self, rigid: &Rigid<S>) -> Self {
        let home = self.home.map(|h| if rigid.is_mirrored() { h.turned() } else { h });
        Self {
            curve: Arc::new(self.curve.moved(rigid)),
            mouths: self.mouths.clone(),
            home,
            folded: self.folded.iter().map(|t| t.map(|p| rigid.of(p))).collect(),
        }
    }
}

/// What a mouth is told by, found for one case.
pub(super) struct MouthParts<S> {
    pub place: S,
    pub by_foot: bool,
    pub intake: S,
    pub tip: Option<Tip<S>>,
    pub second_kept: bool,
    pub bow: Option<S>,
}

/// The tip of a dart.
pub(super) enum Tip<S> {
    Point(Pt<S>),
    /// So far inside, with the sense of the outline.
    Deep(S, f64),
}

/// The mouth of a dart, pleat or tuck on its flat edge. `place` is a flat length from the start.
pub(super) fn mouth<S: Scalar>(curve: &Curve<S>, parts: &MouthParts<S>) -> Result<Mouth<S>, NodeTrouble> {
    let total = curve.length();
    let off = |what| Err(NodeTrouble::MouthOff(what));
    if parts.intake.value() < -tolerance::EQUAL {
        return off(id!("mouth-intake-below-zero"));
    }
    if parts.place.value() < -tolerance::EQUAL || parts.place.value() > total.value() + tolerance::EQUAL {
        return off(id!("mouth-outside"));
    }
    let (first, second) = if parts.intake.value() <= tolerance::EQUAL {
        (parts.place, parts.place + parts.intake)
    } else if parts.by_foot {
        match curve.second_foot(parts.place, parts.intake) {
            Some(second) => (parts.place, second),
            None => return off(id!("mouth-no-second-foot")),
        }
    } else {
        match curve.chord_feet(parts.place, parts.intake) {
            Some(half) => (parts.place - half, parts.place + half),
            None => return off(id!("mouth-edge-short")),
        }
    };
    if first.value() < -tolerance::EQUAL || second.value() > total.value() + tolerance::EQUAL {
        return off(id!("mouth-foot-beyond"));
    }
    let at = |s: S| curve.point_at(s).ok_or(NodeTrouble::MouthOff(id!("mouth-foot-beyond")));
    let (first_foot, second_foot) = (at(first)?, at(second)?);
    let tip = match parts.tip {
        None => None,
        Some(Tip::Point(point)) => Some(point),
        Some(Tip::Deep(depth, sense)) => {
            let middle = (first + second).times(0.5);
            let along = curve.tangent_at(middle).ok_or(NodeTrouble::MouthOff(id!("answer-edge-direction")))?;
            // To the right of the direction, as seen, is a quarter turn clockwise.
            let inside = Pt::new(-along.y, along.x).times(S::constant(sense));
            Some(at(middle)? + inside.times(depth))
        }
    };
    let kept = if parts.second_kept { second_foot } else { first_foot };
    let other = if parts.second_kept { first_foot } else { second_foot };
    let leg = tip.map(|tip| leg(kept, other, tip, parts.bow).length());
    let (intake, bow) = (parts.intake, parts.bow);
    Ok(Mouth { first, second, first_foot, second_foot, intake, tip, other_tip: None, bow, leg })
}

/// A dart inside a piece on the line from tip to tip: its feet lie square to it, the first on its left as seen.
pub(super) fn two_ended<S: Scalar>(
    line: &Curve<S>,
    place: S,
    intake: S,
    bow: Option<S>,
) -> Result<Mouth<S>, NodeTrouble> {
    let off = |what| Err(NodeTrouble::MouthOff(what));
    if intake.value() < -tolerance::EQUAL {
        return off(id!("mouth-intake-below-zero"));
    }
    let to_end = line.length().value() - place.value();
    if place.value() <= tolerance::EQUAL || to_end <= tolerance::EQUAL {
        return off(id!("mouth-middle-off"));
    }
    let (Some(middle), Some(along)) = (line.point_at(place), line.tangent_at(place)) else {
        return off(id!("mouth-line-direction"));
    };
    let aside = Pt::new(along.y, -along.x).times(intake.times(0.5));
    let (first_foot, second_foot, tip) = (middle + aside, middle - aside, line.start());
    let leg = Some(leg(first_foot, second_foot, tip, bow).length());
    let (tip, other_tip) = (Some(tip), Some(line.end()));
    Ok(Mouth { first: place, second: place, first_foot, second_foot, intake, tip, other_tip, bow, leg })
}

/// From a foot to the tip, bowed away from the other foot in its middle by so much.
fn leg<S: Scalar>(foot: Pt<S>, other: Pt<S>, tip: Pt<S>, bow: Option<S>) -> Segment<S> {
    let (Some(bow), Some(way)) = (bow, (tip - foot).unit()) else { return Segment::Line(foot, tip) };
    let aside = way.square();
    let aside = if aside.dot(foot - other).value() < 0.0 { -aside } else { aside };
    // A cubic whose two handles stand off by h stands off by 3/4 h in its middle.
    let out = aside.times(bow.times(4.0 / 3.0));
    let third = |t: f64| foot + (tip - foot).scaled(t) + out;
    Segment::Cubic([foot, third(1.0 / 3.0), third(2.0 / 3.0), tip])
}

impl Mouth<f64> {
    /// The legs of a dart, foot to tip to foot; with two ends, all round.
    pub fn legs(&self) -> Option<BezPath> {
        let (a, b) = (self.first_foot, self.second_foot);
        let round = |tip: Pt<f64>| [leg(a, b, tip, self.bow), leg(b, a, tip, self.bow).reversed()];
        let mut all = round(self.tip?).to_vec();
        if let Some(tip) = self.other_tip {
            let [there, back] = round(tip);
            all.extend([back.reversed(), there.reversed()]);
        }
        Curve::new(all).ok().map(|c| c.to_path())
    }
}

/// An edge with its mouths, in order along it.
pub(super) fn sewn<S: Scalar>(curve: &Arc<Curve<S>>, mut mouths: Vec<Folded<S>>) -> Result<EdgeShape<S>, NodeTrouble> {
    mouths.sort_by(|a, b| a.first.value().total_cmp(&b.first.value()));
    for pair in mouths.windows(2) {
        if pair[1].first.value() < pair[0].second.value() - tolerance::EQUAL {
            return Err(NodeTrouble::MouthOverlap(pair[0].name.clone(), pair[1].name.clone()));
        }
    }
    Ok(EdgeShape { curve: curve.clone(), mouths, home: None, folded: Vec::new() })
}
