//! Places on a curve at a given straight distance: the feet of darts.

use super::Curve;
use crate::base::{Scalar, tolerance};

/// Steps towards the first root. Reached only where the distance stays for long just short of the chord.
const MOST_STEPS: usize = 2000;
/// No step bolder than this share of the chord: what comes and goes within it could be passed.
const BOLDEST: f64 = 0.05;
/// Newton's steps or halvings within a bracket.
const MOST_HALVINGS: usize = 80;

impl<S: Scalar> Curve<S> {
    /// The least `h` such that the points at the flat places `centre - h` and `centre + h` are the straight distance `chord` apart, within
    /// 1e-9 mm. None if the curve ends before that, or for a negative chord.
    ///
    /// Carries derivatives; where the distance does not grow with `h` there are none, and they are taken as zero.
    pub fn chord_feet(&self, centre: S, chord: S) -> Option<S> {
        let at = self.clamped(centre)?;
        let flat = Flat { curve: self.plain(), chord: chord.value() };
        let middle = at.value();
        let most = middle.min(self.length().value() - middle);
        let h = flat.first_root(|h| flat.miss(middle - h, middle + h, true), 2.0, most)?;
        let both = S::constant(h);
        let distance = (self.point_at(at + both)? - self.point_at(at - both)?).length();
        Some(stepped(h, distance - chord, flat.miss(middle - h, middle + h, true)?.1))
    }
    /// The first flat place after `first` that is the straight distance `chord` away from it, within 1e-9 mm. None if the curve ends
    /// before that, or for a negative chord.
    ///
    /// Carries derivatives; where the distance does not grow along the curve there are none, and they are taken as zero.
    pub fn second_foot(&self, first: S, chord: S) -> Option<S> {
        let at = self.clamped(first)?;
        let flat = Flat { curve: self.plain(), chord: chord.value() };
        let from = at.value();
        let way = flat.first_root(|x| flat.miss(from, from + x, false), 1.0, self.length().value() - from)?;
        let foot = S::constant(way);
        let distance = (self.point_at(at + foot)? - self.point_at(at)?).length();
        Some(at + stepped(way, distance - chord, flat.miss(from, from + way, false)?.1))
    }
}

/// One step of Newton's from `x`, whose derivatives are those of the root.
fn stepped<S: Scalar>(x: f64, miss: S, slope: f64) -> S {
    if slope.abs() <= tolerance::RANK { S::constant(x) } else { miss.times(-1.0 / slope).plus(x) }
}

/// The same question on plain values.
struct Flat {
    curve: Curve<f64>,
    chord: f64,
}

impl Flat {
    /// Straight distance between two flat places less the chord, and its derivative while the second place moves on (and the first back).
    fn miss(&self, a: f64, b: f64, both: bool) -> Option<(f64, f64)> {
        let (pa, ta) = self.curve.ray_at(a)?;
        let (pb, tb) = self.curve.ray_at(b)?;
        let way = pb - pa;
        let distance = way.length();
        let along = way.unit().unwrap_or(tb);
        let slope = along.dot(tb) + if both { along.dot(ta) } else { 0.0 };
        Some((distance - self.chord, slope))
    }

    /// The least root of `f` in [0, `most`], where `f(0)` is minus the chord and `f` grows by no more than `fastest`.
    fn first_root(&self, f: impl Fn(f64) -> Option<(f64, f64)>, fastest: f64, most: f64) -> Option<f64> {
        if self.chord.is_nan() || self.chord < 0.0 {
            return None;
        }
        let content = 0.1 * tolerance::SOLVED;
        let (mut x, mut before) = (self.chord / fastest, 0.0);
        for _ in 0..MOST_STEPS {
            if x >= most {
                break;
            }
            let (value, slope) = f(x)?;
            if value.abs() <= content {
                return Some(x);
            }
            if value > 0.0 {
                return polished(&f, before, x, content);
            }
            // No root lies within -value / fastest: a step of that length passes none. Newton's goes further, so it is tried only
            // where it is short, and taken only if it brackets the root.
            let bold = -1.5 * value / slope;
            if slope > 0.0 && bold <= BOLDEST * self.chord {
                let beyond = (x + bold).min(most);
                if f(beyond)?.0 >= 0.0 {
                    return polished(&f, x, beyond, content);
                }
            }
            before = x;
            // Two roots closer than that count as one.
            x += (-value / fastest).max(tolerance::EQUAL);
        }
        if x < most {
            return None;
        }
        // The curve may end just where the chord is reached.
        let at_end = f(most)?.0;
        (at_end.abs() <= tolerance::EQUAL && most >= 0.0).then_some(most)
    }
}

/// The root between `low` (where `f` is negative) and `high`.
fn polished(f: impl Fn(f64) -> Option<(f64, f64)>, mut low: f64, mut high: f64, content: f64) -> Option<f64> {
    let mut x = 0.5 * (low + high);
    for _ in 0..MOST_HALVINGS {
        let (value, slope) = f(x)?;
        if value.abs() <= content {
            break;
        }
        if value < 0.0 {
            low = x;
        } else {
            high = x;
        }
        let next = x - value / slope;
        x = if next > low && next < high { next } else { 0.5 * (low + high) };
    }
    Some(x)
}
