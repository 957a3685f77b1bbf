//! Edges as drawn and as sewn: mouths, places, parts.

use std::sync::Arc;

use super::item::{EdgeShape, Folded, Mouth, NodeTrouble};
use crate::base::{Scalar, tolerance};
use crate::curves::{Curve, Pt, Rigid};
use crate::language::Trouble;

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
            return Err(Trouble::NoAnswer("both points are one place of the edge"));
        }
        let curve = self.curve.between(a, b).ok_or(Trouble::NoAnswer("there is no such part of the edge"))?;
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
        return off("its intake is below zero");
    }
    if parts.place.value() < -tolerance::EQUAL || parts.place.value() > total.value() + tolerance::EQUAL {
        return off("its place is outside the edge");
    }
    let (first, second) = if parts.intake.value() <= tolerance::EQUAL {
        (parts.place, parts.place + parts.intake)
    } else if parts.by_foot {
        match curve.second_foot(parts.place, parts.intake) {
            Some(second) => (parts.place, second),
            None => return off("no second foot lies on the edge at that distance"),
        }
    } else {
        match curve.chord_feet(parts.place, parts.intake) {
            Some(half) => (parts.place - half, parts.place + half),
            None => return off("the edge is too short for its intake there"),
        }
    };
    if first.value() < -tolerance::EQUAL || second.value() > total.value() + tolerance::EQUAL {
        return off("a foot lies beyond the end of the edge");
    }
    let at = |s: S| curve.point_at(s).ok_or(NodeTrouble::MouthOff("a foot lies beyond the end of the edge"));
    let (first_foot, second_foot) = (at(first)?, at(second)?);
    let tip = match parts.tip {
        None => None,
        Some(Tip::Point(point)) => Some(point),
        Some(Tip::Deep(depth, sense)) => {
            let middle = (first + second).times(0.5);
            let along = curve.tangent_at(middle).ok_or(NodeTrouble::MouthOff("the edge has no direction there"))?;
            // To the right of the direction, as seen, is a quarter turn clockwise.
            let inside = Pt::new(-along.y, along.x).times(S::constant(sense));
            Some(at(middle)? + inside.times(depth))
        }
    };
    let kept = if parts.second_kept { second_foot } else { first_foot };
    let leg = tip.map(|tip| (tip - kept).length());
    Ok(Mouth { first, second, first_foot, second_foot, intake: parts.intake, tip, leg })
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
