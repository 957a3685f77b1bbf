//! Places, parts, feet and motions of curves: exact cases and properties.

use crate::curves_values::{near, near_point};
use proptest::prelude::*;
use std::f64::consts::{FRAC_PI_2, PI};
use tracewheel::base::Scalar;
use tracewheel::curves::{Curve, Pt, Rigid, Segment, spline};

fn p(x: f64, y: f64) -> Pt<f64> {
    Pt::new(x, y)
}

/// A line, a quarter circle, a cubic with a zero handle: 40 + 10π + ...
fn mixed() -> Curve<f64> {
    Curve::new(vec![
        Segment::Line(p(0.0, 0.0), p(40.0, 0.0)),
        Segment::arc(p(40.0, 0.0), p(60.0, 20.0), p(40.0, 20.0), true).unwrap(),
        Segment::Cubic([p(60.0, 20.0), p(60.0, 20.0), p(60.0, 90.0), p(20.0, 110.0)]),
    ])
    .unwrap()
}

#[test]
fn places_on_a_mixed_curve() {
    let c = mixed();
    near(c.lengths()[1], 10.0 * PI, 1e-12, "quarter");
    near_point(c.point_at(25.0).unwrap(), p(25.0, 0.0), 1e-12, "on the line");
    let middle = p(40.0, 20.0) + Pt::heading(-PI / 4.0).scaled(20.0);
    near_point(c.point_at(40.0 + 5.0 * PI).unwrap(), middle, 1e-12, "on the arc");
    near_point(c.tangent_at(40.0 + 5.0 * PI).unwrap(), Pt::heading(PI / 4.0), 1e-12, "along the arc");
    near_point(c.tangent_at(40.0 + 10.0 * PI).unwrap(), p(0.0, 1.0), 1e-12, "limit direction of a zero handle");
    near_point(c.start_tangent().unwrap(), p(1.0, 0.0), 1e-12, "start");
    near_point(c.end_tangent().unwrap(), p(-40.0, 20.0).unit().unwrap(), 1e-12, "end");
    let total = c.length();
    near_point(c.point_at(-9e-7).unwrap(), p(0.0, 0.0), 0.0, "just before the start");
    near_point(c.point_at(total + 9e-7).unwrap(), p(20.0, 110.0), 1e-12, "just after the end");
    assert!(c.point_at(-2e-6).is_none() && c.point_at(total + 2e-6).is_none());
    assert!(c.point_at(f64::NAN).is_none() && c.tangent_at(f64::NAN).is_none() && c.between(0.0, f64::NAN).is_none());
}

#[test]
fn limit_directions() {
    let tangents = |c: [Pt<f64>; 4]| {
        let c = Curve::new(vec![Segment::Cubic(c)]).unwrap();
        (c.start_tangent(), c.end_tangent(), c.tangent_at(0.0), c.tangent_at(c.length()))
    };
    let (a, b) = (p(1.0, 2.0), p(31.0, 42.0));
    let (start, end, at_start, at_end) = tangents([a, a, b, b]);
    for t in [start, end, at_start, at_end] {
        near_point(t.unwrap(), p(0.6, 0.8), 1e-12, "straight, both handles zero");
    }
    let (start, end, ..) = tangents([a, a, a, b]);
    near_point(start.unwrap(), p(0.6, 0.8), 1e-12, "three points at the start");
    near_point(end.unwrap(), p(0.6, 0.8), 1e-12, "three points at the start, end");
    let (start, end, ..) = tangents([a, p(1.0, 20.0), b, b]);
    near_point(start.unwrap(), p(0.0, 1.0), 1e-12, "start");
    near_point(end.unwrap(), p(30.0, 22.0).unit().unwrap(), 1e-12, "zero handle at the end");
    assert_eq!(tangents([a, a, a, a]), (None, None, None, None));
    // The cusp in the middle is left downwards, y down.
    let cusp = Segment::Cubic([p(0.0, 0.0), p(100.0, 100.0), p(0.0, 100.0), p(100.0, 0.0)]);
    near_point(cusp.tangent(0.5).unwrap(), p(0.0, -1.0), 1e-12, "cusp");
}

#[test]
fn parts_at_joints_have_no_slivers() {
    let c = mixed();
    let (joint, end) = (c.lengths()[0], c.lengths()[0] + c.lengths()[1]);
    for noise in [-1e-10, 0.0, 1e-10] {
        let part = c.between(joint + noise, end - noise).unwrap();
        assert_eq!(part.segments().len(), 1, "noise {noise}");
        assert!(matches!(part.segments()[0], Segment::Arc(_)));
        near(part.length(), end - joint - 2.0 * noise, 1e-12, "length");
    }
    let none = c.between(50.0, 50.0).unwrap();
    near(none.length(), 0.0, 0.0, "nothing");
    near_point(none.start(), c.point_at(50.0).unwrap(), 1e-12, "where nothing is");
    assert!(c.between(50.0, 49.0).is_none() && c.between(-1.0, 5.0).is_none() && c.between(5.0, 1e4).is_none());
}

#[test]
fn feet_of_darts() {
    let line = Curve::straight(p(0.0, 0.0), p(60.0, 80.0)).unwrap();
    near(line.chord_feet(40.0, 30.0).unwrap(), 15.0, 1e-12, "straight");
    near(line.second_foot(40.0, 30.0).unwrap(), 70.0, 1e-12, "straight");
    near(line.chord_feet(15.0, 30.0).unwrap(), 15.0, 1e-6, "just up to the start");
    assert!(line.chord_feet(14.9, 30.0).is_none() && line.second_foot(70.1, 30.0).is_none());
    near(line.chord_feet(40.0, 0.0).unwrap(), 0.0, 0.0, "no intake");
    assert!(line.chord_feet(40.0, -1.0).is_none() && line.chord_feet(40.0, f64::NAN).is_none());
    assert!(line.chord_feet(101.0, 1.0).is_none() && line.second_foot(-1.0, 1.0).is_none());
    // On a circle: chord = 2 r sin(h / r) for the half distance h, 2 r sin(x / 2 r) for the whole.
    let r = 50.0;
    let ring = Curve::new(vec![Segment::arc(p(r, 0.0), p(r, 0.0), p(0.0, 0.0), true).unwrap()]).unwrap();
    for chord in [1.0_f64, 40.0, 90.0, 99.99] {
        let h = r * Scalar::asin(chord / (2.0 * r));
        // The distance hardly grows near the full diameter.
        near(ring.chord_feet(PI * r, chord).unwrap(), h, 1e-7, "circle, half");
        near(ring.second_foot(20.0, chord).unwrap(), 20.0 + 2.0 * h, 1e-7, "circle, whole");
    }
    assert!(ring.chord_feet(PI * r, 100.01).is_none(), "wider than the circle");
    // Round a corner: both legs of an L.
    let corner = Curve::new(vec![Segment::Line(p(0.0, 0.0), p(50.0, 0.0)), Segment::Line(p(50.0, 0.0), p(50.0, 50.0))]);
    near(corner.unwrap().chord_feet(50.0, 20.0).unwrap(), 200_f64.sqrt(), 1e-9, "round a corner");
    // The first of several: a hairpin comes back near the foot.
    let hairpin = Curve::new(vec![
        Segment::Line(p(0.0, 0.0), p(100.0, 0.0)),
        Segment::Line(p(100.0, 0.0), p(100.0, 2.0)),
        Segment::Line(p(100.0, 2.0), p(0.0, 2.0)),
    ]);
    near(hairpin.unwrap().second_foot(60.0, 30.0).unwrap(), 90.0, 1e-9, "hairpin");
    // The distance reaches 30, falls again and passes 30 for good further on.
    let corners = [p(0.0, 0.0), p(0.0, 20.0), p(22.5, 20.0), p(19.0, 20.3), p(80.0, 20.3)];
    let bump = Curve::new(corners.windows(2).map(|w| Segment::Line(w[0], w[1])).collect()).unwrap();
    near(bump.second_foot(0.0, 30.0).unwrap(), 20.0 + 500_f64.sqrt(), 1e-9, "the first of three");
}

#[test]
fn motions() {
    let turn = Rigid::turning(p(10.0, 10.0), FRAC_PI_2);
    near_point(turn.of(p(20.0, 10.0)), p(10.0, 20.0), 1e-12, "clockwise as seen: right to down");
    let mirror = Rigid::mirroring(p(0.0, 0.0), p(5.0, 5.0)).unwrap();
    near_point(mirror.of(p(7.0, 1.0)), p(1.0, 7.0), 1e-12, "mirrored in the diagonal");
    let lay = Rigid::laying(p(1.0, 1.0), p(1.0, 9.0), p(50.0, 0.0), p(60.0, 0.0), false).unwrap();
    near_point(lay.of(p(1.0, 1.0)), p(50.0, 0.0), 1e-12, "the point itself");
    near_point(lay.of(p(1.0, 4.0)), p(53.0, 0.0), 1e-12, "the direction");
    near_point(lay.of(p(3.0, 1.0)), p(50.0, -2.0), 1e-12, "the side");
    let over = Rigid::laying(p(1.0, 1.0), p(1.0, 9.0), p(50.0, 0.0), p(60.0, 0.0), true).unwrap();
    near_point(over.of(p(1.0, 4.0)), p(53.0, 0.0), 1e-12, "turned over, the direction");
    near_point(over.of(p(3.0, 1.0)), p(50.0, 2.0), 1e-12, "turned over, the other side");
    assert!(Rigid::mirroring(p(3.0, 3.0), p(3.0, 3.0)).is_none());
    assert!(Rigid::laying(p(0.0, 0.0), p(1.0, 0.0), p(3.0, 3.0), p(3.0, 3.0), false).is_none());
    let both = over.then(&turn);
    near_point(both.of(p(-4.0, 7.0)), turn.of(over.of(p(-4.0, 7.0))), 1e-12, "one after the other");
    let back = over.then(&mirror);
    assert!(over.is_mirrored() && !back.is_mirrored());
    near_point(back.of(p(-4.0, 7.0)), mirror.of(over.of(p(-4.0, 7.0))), 1e-12, "twice turned over");
}

fn point() -> impl Strategy<Value = Pt<f64>> {
    (-200.0..200.0, -200.0..200.0).prop_map(|(x, y)| Pt::new(x, y))
}

/// Curves of one to four segments of all kinds, some with zero handles and turns.
pub fn curve() -> impl Strategy<Value = Curve<f64>> {
    let segment = (0..5, point(), point(), point(), 0.3..6.0, any::<bool>());
    (point(), proptest::collection::vec(segment, 1..5)).prop_map(|(start, list)| {
        let mut at = start;
        let mut segments = Vec::new();
        for (kind, a, b, end, angle, clockwise) in list {
            if (end - at).length() < 1.0 || (a - at).length() < 1.0 {
                continue;
            }
            match kind {
                0 => segments.push(Segment::Line(at, end)),
                1 => segments.push(Segment::Cubic([at, at, b, end])),
                2 => {
                    let to = a + (at - a).turned(if clockwise { angle } else { -angle });
                    segments.push(Segment::arc(at, to, a, clockwise).unwrap());
                }
                3 => segments.extend(spline(&[at, a, end], None, Some(angle)).unwrap_or_default()),
                _ => segments.push(Segment::Cubic([at, a, b, end])),
            }
            at = segments.last().map_or(at, Segment::end);
        }
        if segments.is_empty() {
            segments.push(Segment::Line(start, start + Pt::new(30.0, 40.0)));
        }
        Curve::new(segments).unwrap()
    })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 400, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn rigid_motion_and_reversal_keep_lengths(c in curve(), turn in -7.0..7.0, mirrored: bool, shift in point()) {
        let motion = Rigid::new(turn, mirrored, shift);
        let moved = c.moved(&motion);
        // Measured anew: `moved` itself only hands the lengths on.
        let again = Curve::new(moved.segments().to_vec()).unwrap();
        prop_assert!((again.length() - c.length()).abs() < 1e-8);
        let back = Curve::new(c.reversed().segments().to_vec()).unwrap();
        prop_assert!((back.length() - c.length()).abs() < 1e-8);
        for k in 0..=10 {
            let s = c.length() * f64::from(k) / 10.0;
            let want = c.point_at(s).unwrap();
            prop_assert!((moved.point_at(s).unwrap() - motion.of(want)).length() < 1e-8);
            prop_assert!((back.point_at((c.length() - s).min(back.length())).unwrap() - want).length() < 1e-8);
        }
        // A closed figure keeps its area, or turns its sign.
        let closed = |c: &Curve<f64>| c.area_under() + Segment::Line(c.end(), c.start()).area_under();
        let sign = if mirrored { -1.0 } else { 1.0 };
        prop_assert!((closed(&moved) - sign * closed(&c)).abs() < 1e-6);
    }

    #[test]
    fn parts_add_up(c in curve(), a in 0.0..1.0, b in 0.0..1.0) {
        let (low, high) = (c.length() * f64::min(a, b), c.length() * f64::max(a, b));
        let parts = [c.between(0.0, low), c.between(low, high), c.between(high, c.length())].map(Option::unwrap);
        let sum: f64 = parts.iter().map(Curve::length).sum();
        prop_assert!((sum - c.length()).abs() < 1e-8, "{} of {}", sum, c.length());
        prop_assert!((parts[1].length() - (high - low)).abs() < 1e-8);
        prop_assert!((parts[0].end() - parts[1].start()).length() < 1e-9);
        prop_assert!((parts[1].end() - c.point_at(high).unwrap()).length() < 1e-8);
        let area: f64 = parts.iter().map(Curve::area_under).sum();
        prop_assert!((area - c.area_under()).abs() < 1e-6);
        let middle = parts[1].point_at(parts[1].length() / 2.0).unwrap();
        prop_assert!((middle - c.point_at((low + high) / 2.0).unwrap()).length() < 1e-7);
    }

    #[test]
    fn places_are_found_again(c in curve(), f in 0.0..1.0) {
        let p = c.point_at(f * c.length()).unwrap();
        let found = c.locate(p);
        prop_assert!(found.distance < 1e-8, "{:e}", found.distance);
        // The curve may come by twice: the place found is a place of the same point.
        prop_assert!((c.point_at(found.along).unwrap() - p).length() < 1e-8);
        prop_assert!(c.bounds().inflate(1e-9, 1e-9).contains(p.value()));
    }

    #[test]
    fn nothing_is_nearer_than_the_nearest(c in curve(), p in point()) {
        let found = c.locate(p);
        let at = c.point_at(found.along).unwrap();
        prop_assert!(((at - p).length() - found.distance).abs() < 1e-7);
        for segment in c.segments() {
            for k in 0..=500 {
                let there = segment.point(f64::from(k) / 500.0);
                prop_assert!((there - p).length() >= found.distance - 1e-9);
            }
        }
    }

    #[test]
    fn feet_are_the_first_at_their_distance(c in curve(), f in 0.0..1.0, share in 0.01..0.6) {
        let (at, chord) = (f * c.length(), share * 100.0);
        let wide = |h: f64| {
            let (a, b) = (c.point_at(at - h)?, c.point_at(at + h)?);
            Some((b - a).length())
        };
        let found = c.chord_feet(at, chord);
        if let Some(h) = found {
            prop_assert!((wide(h).unwrap() - chord).abs() < 1e-8, "{}", wide(h).unwrap() - chord);
        }
        let far = |x: f64| Some((c.point_at(at + x)? - c.point_at(at)?).length());
        let second = c.second_foot(at, chord);
        if let Some(x) = second {
            prop_assert!((far(x - at).unwrap() - chord).abs() < 1e-8);
        }
        for k in 1..400 {
            let x = c.length() * f64::from(k) / 400.0;
            if wide(x).is_some_and(|w| w >= chord) {
                prop_assert!(found.is_some_and(|h| h <= x + 1e-6), "{found:?}, but {x}");
            }
            if far(x).is_some_and(|w| w >= chord) {
                prop_assert!(second.is_some_and(|s| s <= at + x + 1e-6), "{second:?}, but {x} after {at}");
            }
        }
    }
}
