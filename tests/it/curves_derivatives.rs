//! Every generic function of curves with dual numbers against central differences.

use tracewheel::base::{Dual, Scalar};
use tracewheel::curves::{Curve, Pt, Rigid, Segment, spline};

/// Some numbers of a figure that depends on two unknowns.
trait Figure {
    fn numbers<S: Scalar>(u: S, v: S) -> Vec<S>;
}

/// The unknowns at which figures are tried.
const AT: [(f64, f64); 3] = [(0.3, -0.2), (-0.7, 1.1), (0.05, 0.6)];

#[track_caller]
fn check<F: Figure>() {
    const STEP: f64 = 1e-4;
    let mut moving = 0;
    for (u, v) in AT {
        let plain = F::numbers(u, v);
        let dual = F::numbers(Dual::<2>::unknown(u, 0), Dual::<2>::unknown(v, 1));
        assert_eq!(plain.len(), dual.len());
        for k in 0..2 {
            let (du, dv) = if k == 0 { (STEP, 0.0) } else { (0.0, STEP) };
            let (up, down) = (F::numbers(u + du, v + dv), F::numbers(u - du, v - dv));
            for (i, d) in dual.iter().enumerate() {
                assert!((d.value - plain[i]).abs() <= 1e-9, "number {i}: {} with, {} without", d.value, plain[i]);
                let slope = (up[i] - down[i]) / (2.0 * STEP);
                let off = (d.slopes[k] - slope).abs();
                assert!(off <= 1e-5 * slope.abs().max(1.0), "number {i} by unknown {k}: {} for {slope}", d.slopes[k]);
                moving += usize::from(slope.abs() > 1e-3);
            }
        }
    }
    assert!(moving > 0, "nothing moves");
}

fn p<S: Scalar>(x: f64, y: f64) -> Pt<S> {
    Pt::constant(Pt::new(x, y))
}

/// A line, an arc, an armhole-like cubic, one with zero handles: all moving with the unknowns.
fn figure<S: Scalar>(u: S, v: S) -> Curve<S> {
    let a = Pt::new(u.times(20.0), v.times(-10.0));
    let b = p(60.0, 5.0);
    let centre = b + Pt::new(u.times(3.0), v.times(2.0).plus(25.0));
    let c = centre + (b - centre).turned(v.times(0.4).plus(1.2));
    let d = Pt::new(u.times(15.0).plus(150.0), v.times(8.0).plus(160.0));
    let e = d + Pt::new(v.times(30.0).plus(-90.0), u.times(25.0).plus(40.0));
    Curve::new(vec![
        Segment::Line(a, b),
        Segment::arc(b, c, centre, true).unwrap(),
        Segment::Cubic([c, c + Pt::new(u.times(30.0), S::constant(40.0)), d + p(-30.0, -70.0), d]),
        Segment::Cubic([d, d, e + Pt::new(v.times(20.0), u.times(-30.0).plus(-60.0)), e]),
    ])
    .unwrap()
}

fn numbers_of<S: Scalar>(points: impl IntoIterator<Item = Pt<S>>) -> Vec<S> {
    points.into_iter().flat_map(|p| [p.x, p.y]).collect()
}

struct Lengths;
impl Figure for Lengths {
    fn numbers<S: Scalar>(u: S, v: S) -> Vec<S> {
        let c = figure(u, v);
        let mut numbers = c.lengths().to_vec();
        numbers.extend([c.length(), c.reversed().length(), c.area_under().times(1e-3)]);
        numbers.extend(numbers_of([c.start_tangent().unwrap(), c.end_tangent().unwrap(), c.start(), c.end()]));
        numbers
    }
}

struct Places;
impl Figure for Places {
    fn numbers<S: Scalar>(u: S, v: S) -> Vec<S> {
        let c = figure(u, v);
        let mut numbers = Vec::new();
        for f in [0.05, 0.2, 0.3, 0.45, 0.6, 0.8, 0.97] {
            let s = c.length().times(f) + u.times(4.0);
            numbers.extend(numbers_of([c.point_at(s).unwrap(), c.tangent_at(s).unwrap()]));
        }
        // Both ends, and the start of a segment that stands still there.
        let still = c.lengths()[0] + c.lengths()[1] + c.lengths()[2];
        numbers.extend(numbers_of([c.point_at(S::zero()).unwrap(), c.point_at(c.length()).unwrap()]));
        numbers.extend(numbers_of([c.point_at(still).unwrap()]));
        numbers
    }
}

struct Parts;
impl Figure for Parts {
    fn numbers<S: Scalar>(u: S, v: S) -> Vec<S> {
        let c = figure(u, v);
        let first = c.length().times(0.1) + v.times(3.0);
        let last = c.length().times(0.8) - u.times(5.0);
        let part = c.between(first, last).unwrap();
        // Begins exactly where two segments meet.
        let at_joint = c.between(c.lengths()[0], last).unwrap();
        let mut numbers = vec![part.length(), at_joint.length(), part.area_under().times(1e-3)];
        numbers.extend(numbers_of([part.start(), part.end(), at_joint.start()]));
        numbers.extend(numbers_of([part.point_at(part.length().times(0.5)).unwrap()]));
        numbers.extend(numbers_of([part.end_tangent().unwrap()]));
        numbers
    }
}

struct Nearest;
impl Figure for Nearest {
    fn numbers<S: Scalar>(u: S, v: S) -> Vec<S> {
        let c = figure(u, v);
        let mut numbers = Vec::new();
        for (x, y) in [(30.0, -12.0), (90.0, 12.0), (112.0, 90.0), (120.0, 215.0), (-40.0, 0.0)] {
            let found = c.locate(Pt::new(v.times(2.0).plus(x), u.times(3.0).plus(y)));
            numbers.extend([found.along, found.distance]);
        }
        numbers
    }
}

struct Feet;
impl Figure for Feet {
    fn numbers<S: Scalar>(u: S, v: S) -> Vec<S> {
        let c = figure(u, v);
        let mut numbers = Vec::new();
        for f in [0.08, 0.2, 0.35, 0.55] {
            let at = c.length().times(f) + u.times(2.0);
            numbers.push(c.chord_feet(at, v.times(5.0).plus(30.0)).unwrap());
            numbers.push(c.second_foot(at, u.times(-6.0).plus(40.0)).unwrap());
        }
        numbers
    }
}

struct Motions;
impl Figure for Motions {
    fn numbers<S: Scalar>(u: S, v: S) -> Vec<S> {
        let c = figure(u, v);
        let lay = Rigid::laying(c.start(), c.end(), p(3.0, 4.0), Pt::new(u.times(9.0), v.plus(30.0)), true).unwrap();
        let fold = Rigid::mirroring(c.start(), c.end()).unwrap();
        let turn = Rigid::turning(c.start(), v);
        let moves = [lay, fold, turn, lay.then(&turn), Rigid::shifting(c.end())];
        let mut numbers = Vec::new();
        for motion in moves {
            let moved = c.moved(&motion);
            let again = Curve::new(moved.segments().to_vec()).unwrap();
            numbers.extend([moved.length(), again.length(), again.area_under().times(1e-3)]);
            numbers.extend(numbers_of([
                moved.point_at(c.length().times(0.7)).unwrap(),
                moved.point_at(c.lengths()[0].plus(20.0)).unwrap(),
            ]));
        }
        numbers
    }
}

struct Splines;
impl Figure for Splines {
    fn numbers<S: Scalar>(u: S, v: S) -> Vec<S> {
        let points = [
            Pt::new(u.times(10.0), v.times(5.0)),
            Pt::new(v.times(12.0).plus(40.0), u.times(9.0).plus(-30.0)),
            Pt::new(S::constant(95.0), v.times(6.0).plus(10.0)),
            Pt::new(u.times(7.0).plus(130.0), S::constant(80.0)),
        ];
        let ends = [(None, None), (Some(u), None), (None, Some(v.plus(1.0))), (Some(u * v), Some(v))];
        let mut numbers = Vec::new();
        for (leaving, arriving) in ends {
            let c = Curve::new(spline(&points, leaving, arriving).unwrap()).unwrap();
            numbers.push(c.length());
            numbers.extend(numbers_of([c.point_at(c.length().times(0.4)).unwrap(), c.end_tangent().unwrap()]));
        }
        numbers
    }
}

struct SetOff;
impl Figure for SetOff {
    fn numbers<S: Scalar>(u: S, v: S) -> Vec<S> {
        let c = figure(u, v);
        let (d0, d1) = (u.times(2.0).plus(10.0), v.times(-3.0).plus(14.0));
        vec![c.set_off_length(d0, d1), c.set_off_length(-d0, -d0), c.set_off_length(S::constant(6.0), S::constant(6.0))]
    }
}

struct Meetings;
impl Figure for Meetings {
    fn numbers<S: Scalar>(u: S, v: S) -> Vec<S> {
        let c = figure(u, v);
        let mut met = Vec::new();
        for (x, y, turn) in [(100.0, 90.0, 0.2), (60.0, 0.0, 1.2), (80.0, 180.0, 1.9)] {
            let way = Pt::heading(v.times(0.1).plus(turn));
            met.extend(c.meets_line(Pt::new(u.times(3.0).plus(x), S::constant(y)), way).unwrap());
        }
        met.extend(c.meets_circle(p(70.0, 60.0), u.times(5.0).plus(62.0)).unwrap());
        met.extend(c.meets_circle(Pt::new(v.times(4.0).plus(150.0), S::constant(160.0)), S::constant(40.0)).unwrap());
        met.extend(c.touched_from(Pt::new(u.times(6.0).plus(20.0), v.times(5.0).plus(150.0))));
        let other = Curve::new(vec![
            Segment::Cubic([
                p(40.0, 20.0),
                Pt::new(u.times(9.0).plus(150.0), S::constant(40.0)),
                p(20.0, 120.0),
                p(160.0, 150.0),
            ]),
            Segment::Line(p(160.0, 150.0), Pt::new(S::constant(40.0), v.times(9.0).plus(210.0))),
        ])
        .unwrap();
        met.extend(c.meets(&other).unwrap());
        met.extend(other.meets(&c).unwrap());
        assert!(met.len() > 15, "{}", met.len());
        let mut numbers = vec![S::constant(met.len() as f64)];
        numbers.extend(met.iter().flat_map(|m| [m.along, m.point.x, m.point.y]));
        numbers
    }
}

struct Parallels;
impl Figure for Parallels {
    fn numbers<S: Scalar>(u: S, v: S) -> Vec<S> {
        let whole = figure(u, v);
        let (d0, d1) = (u.times(2.0).plus(4.0), v.times(-2.0).plus(6.0));
        let mut numbers = Vec::new();
        for i in 0..3 {
            let c = Curve::new(vec![whole.segments()[i]]).unwrap();
            for (from, to) in [(d0, d1), (d0, d0), (-d0, -d1)] {
                let off = c.parallel(from, to).unwrap();
                // The cubics against the exact integral, with their derivatives.
                let exact = c.set_off_length(from, to);
                assert!((off.length() - exact).value().abs() < 5e-6, "{:?} for {exact:?}", off.length());
                numbers.extend([off.length(), off.area_under().times(1e-3)]);
                numbers.extend(numbers_of([off.start(), off.end(), off.point_at(off.length().times(0.37)).unwrap()]));
            }
            numbers.push(c.bend_at(c.length().times(0.4) + u).unwrap().times(1e3));
        }
        numbers
    }
}

#[test]
fn meetings() {
    check::<Meetings>();
}

#[test]
fn parallels() {
    check::<Parallels>();
}

#[test]
fn lengths() {
    check::<Lengths>();
}

#[test]
fn places() {
    check::<Places>();
}

#[test]
fn parts() {
    check::<Parts>();
}

#[test]
fn nearest() {
    check::<Nearest>();
}

#[test]
fn feet() {
    check::<Feet>();
}

#[test]
fn motions() {
    check::<Motions>();
}

#[test]
fn splines() {
    check::<Splines>();
}

#[test]
fn set_off() {
    check::<SetOff>();
}

/// Prints times; asserts none, the machine is shared. Run with `--ignored --nocapture` in a release build.
#[test]
#[allow(clippy::disallowed_methods, clippy::print_stdout, reason = "measures")]
#[ignore = "measures"]
fn times() {
    fn armhole<S: Scalar>(x: S) -> [Pt<S>; 4] {
        [p(0.0, 0.0), Pt::new(x, S::constant(-75.0)), p(30.0, -140.0), p(105.0, -150.0)]
    }
    fn print(what: &str, mut f: impl FnMut(f64) -> f64) {
        const RUNS: u32 = 20_000;
        let mut best = f64::INFINITY;
        for _ in 0..7 {
            let clock = std::time::Instant::now();
            let mut sum = 0.0;
            for i in 0..RUNS {
                sum += f(f64::from(i) / f64::from(RUNS));
            }
            assert!(std::hint::black_box(sum).is_finite());
            best = best.min(clock.elapsed().as_secs_f64() / f64::from(RUNS));
        }
        println!("{what}: {:.0} ns", best * 1e9);
    }
    print("length", |f| Segment::Cubic(armhole(18.0 + f)).length());
    print("length, Dual<6>", |f| Segment::Cubic(armhole(Dual::<6>::unknown(18.0 + f, 0))).length().slopes[0]);
    let c = Curve::new(vec![Segment::Cubic(armhole(18.0))]).unwrap();
    print("point_at", |f| c.point_at(f * c.length()).unwrap().x);
    print("tangent_at", |f| c.tangent_at(f * c.length()).unwrap().x);
    let d = Curve::new(vec![Segment::Cubic(armhole(Dual::<6>::unknown(18.0, 0)))]).unwrap();
    print("point_at, Dual<6>", |f| d.point_at(d.length().times(f)).unwrap().x.slopes[0]);
    print("locate", |f| c.locate(Pt::new(40.0 * f, -70.0)).along);
    print("between", |f| c.between(f * 50.0, 60.0).unwrap().length());
    print("chord_feet", |f| c.chord_feet(60.0 + 60.0 * f, 30.0).unwrap());
    print("set_off_length", |f| c.set_off_length(10.0, 10.0 + f));
    print("set_off", |f| c.set_off(10.0 + f).path.elements().len() as f64);
    let cusp = |e: f64| Segment::Cubic([p(0.0, 0.0), p(100.0 - e, 100.0), p(e, 100.0), p(100.0, 0.0)]);
    print("length, cusp", |_| cusp(0.0).length());
    print("length, near-cusp 0.1", |_| cusp(0.1).length());
}
