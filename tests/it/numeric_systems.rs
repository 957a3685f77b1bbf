//! The systems on which `numeric` is tried: stated once here, generic over the scalar, and a second time by the outside
//! judge `tests/outside/systems.py`.

use tracewheel::base::{Dual, Scalar};
use tracewheel::numeric::{Equations, Settled, Unknowns, settle, settle_from};

/// A system: residuals over any scalar, with start, scale and limits.
pub struct Posed {
    pub name: &'static str,
    pub start: Vec<f64>,
    pub scale: Vec<f64>,
    pub least: Vec<f64>,
    pub most: Vec<f64>,
    pub count: usize,
    pub plain: fn(&[f64]) -> Vec<f64>,
    pub dual: fn(&[Dual<8>]) -> Vec<Dual<8>>,
}

impl Posed {
    pub fn unknowns(&self) -> Unknowns<'_> {
        Unknowns { start: &self.start, scale: &self.scale, least: &self.least, most: &self.most }
    }
    pub fn counted(&self) -> Counted<'_> {
        Counted { posed: self, residuals: 0, jacobians: 0, outside: 0 }
    }
    pub fn settle(&self) -> Settled {
        settle(&self.unknowns(), &mut self.counted())
    }
    pub fn settle_from(&self, begin: &[f64]) -> Settled {
        settle_from(&self.unknowns(), begin, &mut self.counted())
    }
    pub fn least(mut self, least: &[f64]) -> Self {
        self.least = least.to_vec();
        self
    }
    pub fn most(mut self, most: &[f64]) -> Self {
        self.most = most.to_vec();
        self
    }
}

/// A system in use, with its calls counted, and the calls outside the limits.
pub struct Counted<'a> {
    pub posed: &'a Posed,
    pub residuals: u32,
    pub jacobians: u32,
    pub outside: u32,
}

impl Counted<'_> {
    fn note(&mut self, x: &[f64]) {
        let p = self.posed;
        let within = x.iter().zip(&p.least).zip(&p.most).all(|((x, l), m)| x >= l && x <= m);
        self.outside += u32::from(!within);
    }
}

impl Equations for Counted<'_> {
    fn count(&self) -> usize {
        self.posed.count
    }
    fn residuals(&mut self, x: &[f64], out: &mut [f64]) -> bool {
        self.residuals += 1;
        self.note(x);
        out.copy_from_slice(&(self.posed.plain)(x));
        out.iter().all(|r| r.is_finite())
    }
    fn jacobian(&mut self, x: &[f64], out: &mut [f64], rows: &mut [f64]) -> bool {
        self.jacobians += 1;
        self.note(x);
        let n = x.len();
        // Eight derivatives at a time.
        for first in (0..n.max(1)).step_by(8) {
            let point: Vec<Dual<8>> = (0..n)
                .map(|i| if i / 8 == first / 8 { Dual::unknown(x[i], i % 8) } else { Dual::constant(x[i]) })
                .collect();
            for (e, r) in (self.posed.dual)(&point).iter().enumerate() {
                out[e] = r.value;
                for i in first..(first + 8).min(n) {
                    rows[e * n + i] = r.slopes[i - first];
                }
            }
        }
        out.iter().all(|r| r.is_finite())
    }
}

/// Residuals over any scalar, as a plain and a dual function.
macro_rules! posed {
    ($name:literal, $count:literal, $start:expr, $scale:expr, |$x:ident| $body:expr) => {{
        fn run<S: Scalar>($x: &[S]) -> Vec<S> {
            $body.into()
        }
        let (start, scale): (Vec<f64>, Vec<f64>) = ($start.into(), $scale.into());
        let n = start.len();
        Posed {
            name: $name,
            start,
            scale,
            least: vec![f64::NEG_INFINITY; n],
            most: vec![f64::INFINITY; n],
            count: $count,
            plain: run::<f64>,
            dual: run::<Dual<8>>,
        }
    }};
}

/// Length of a cubic by Simpson's rule over 400 parts: no more than 1e-9 mm away for the curves used here.
fn curve_length<S: Scalar>(p: [[S; 2]; 4]) -> S {
    let speed = |t: f64| {
        let u = 1.0 - t;
        let part = |k: usize| {
            (p[1][k] - p[0][k]).times(3.0 * u * u)
                + (p[2][k] - p[1][k]).times(6.0 * u * t)
                + (p[3][k] - p[2][k]).times(3.0 * t * t)
        };
        part(0).hypot(part(1))
    };
    let parts = 400;
    let mut sum = speed(0.0) + speed(1.0);
    for k in 1..parts {
        sum = sum + speed(f64::from(k) / f64::from(parts)).times(if k % 2 == 1 { 4.0 } else { 2.0 });
    }
    sum.times(1.0 / (3.0 * f64::from(parts)))
}

fn handled<S: Scalar>(leaving: [S; 2], width: f64, height: f64, arriving: S) -> S {
    let at = |x: f64, y: f64| [S::constant(x), S::constant(y)];
    let handle = [S::constant(width), S::constant(height) - arriving];
    curve_length([at(0.0, 0.0), leaving, handle, at(width, height)])
}

const INF: f64 = f64::INFINITY;
const DEGREES: f64 = std::f64::consts::PI / 36.0;

fn two_of_five<S: Scalar>(x: &[S]) -> Vec<S> {
    vec![x[0].hypot(x[1]) + x[2].plus(-220.0), (x[2] * x[3]).times(0.02) + (x[4] * x[4]).times(0.01).plus(-130.0)]
}

fn three_circles<S: Scalar>(x: &[S]) -> Vec<S> {
    vec![
        x[0].hypot(x[1]).plus(-100.0),
        x[0].plus(-260.0).hypot(x[1]).plus(-120.0),
        x[0].plus(-120.0).hypot(x[1].plus(-200.0)).plus(-90.0),
    ]
}

fn two_circles<S: Scalar>(x: &[S]) -> Vec<S> {
    vec![x[0].hypot(x[1]).plus(-200.0), x[0].plus(-240.0).hypot(x[1]).plus(-150.0)]
}

/// Those that `systems.json` judges.
#[allow(clippy::too_many_lines)]
pub fn judged() -> Vec<Posed> {
    let ten = |n: usize| vec![10.0; n];
    vec![
        posed!("single, straight", 1, [1.0], [10.0], |x| [x[0].times(3.0).plus(-12.0)]),
        posed!("single, square", 1, [30.0], [10.0], |x| [(x[0] * x[0]).times(0.1).plus(-250.0)]),
        posed!("single, angle", 1, [0.2], [DEGREES], |x| [x[0].sin().times(200.0).plus(-77.0)]),
        posed!("single, distance", 1, [80.0], [10.0], |x| [x[0].hypot(S::constant(120.0)).plus(-173.0)]),
        posed!("single, steep", 1, [40.0], [10.0], |x| [S::constant(std::f64::consts::E)
            .powf(x[0].times(1.0 / 40.0))
            .plus(-60.0)]),
        posed!("single, root near its edge", 1, [90.0], [10.0], |x| [x[0].sqrt().times(10.0).plus(-20.0)]),
        posed!("single, handle of a curve", 1, [80.0], [10.0], |x| {
            let at = |x: f64, y: f64| [S::constant(x), S::constant(y)];
            let curve = [at(0.0, 0.0), [x[0], S::zero()], at(150.0, 180.0), at(150.0, 240.0)];
            [curve_length(curve).plus(-330.0)]
        }),
        posed!("chain of two", 2, [60.0, 70.0], ten(2), |x| [
            (x[0] * x[0]).times(0.02).plus(-98.0),
            x[0].hypot(x[1]).plus(-113.0)
        ]),
        posed!("chain of four", 4, [0.6, 40.0, 60.0, 2.0], [DEGREES, 10.0, 10.0, 0.2], |x| [
            x[0].cos().times(200.0).plus(-150.0),
            x[0].sin().times(200.0) + x[1].plus(-180.0),
            x[1].hypot(x[2]).plus(-90.0),
            (x[2] * x[3]).times(0.1).plus(-25.0),
        ]),
        posed!("ring of two", 2, [130.0, 90.0], ten(2), |x| two_circles(x)),
        posed!("ring of three", 3, [50.0; 3], ten(3), |x| [
            x[0] + (x[1] * x[1]).times(1.0 / 300.0).plus(-90.0),
            x[1] + (x[2] * x[2]).times(1.0 / 300.0).plus(-70.0),
            x[2] + (x[0] * x[0]).times(1.0 / 300.0).plus(-80.0),
        ]),
        posed!("ring of forty", 40, [50.0; 40], ten(40), |x| (0..40)
            .map(|i| {
                let next = x[(i + 1) % 40];
                x[i] + (next * next).times(1.0 / 400.0).plus(-60.0 - i as f64)
            })
            .collect::<Vec<S>>()),
        posed!("redundant, twice the same", 2, [50.0], ten(1), |x| [
            x[0].hypot(S::constant(60.0)).plus(-100.0),
            x[0].hypot(S::constant(60.0)).plus(-100.0)
        ]),
        posed!("redundant, the sum", 3, [70.0, 25.0], ten(2), |x| {
            let (a, b) = ((x[0] + x[1]).plus(-90.0), (x[0] * x[1]).times(0.05).plus(-90.0));
            [a, b, a + b]
        }),
        posed!("redundant and free", 2, [100.0, 20.0], ten(2), |x| {
            let a = x[0].hypot(x[1]).plus(-130.0);
            [a, a.times(2.0)]
        }),
        posed!("redundant, three circles", 3, [35.0, 20.0], ten(2), |x| [
            x[0].hypot(x[1]).plus(-50.0),
            x[0].plus(-80.0).hypot(x[1]).plus(-50.0),
            x[0].plus(-40.0).hypot(x[1].plus(30.0)).plus(-60.0),
        ]),
        posed!("conflict of two", 2, [0.0], ten(1), |x| [x[0].plus(-10.0), x[0].plus(-14.0)]),
        posed!("conflict of three", 3, [0.0, 0.0], ten(2), |x| [
            (x[0] + x[1]).plus(-10.0),
            (x[0] - x[1]).plus(-2.0),
            x[0].plus(-9.0)
        ]),
        posed!("conflict of five", 5, [0.0, 20.0, 40.0, 80.0], ten(4), |x| [
            x[0].plus(-10.0),
            (x[1] - x[0]).plus(-20.0),
            (x[2] - x[1]).plus(-30.0),
            (x[3] - x[2]).plus(-40.0),
            x[3].plus(-107.0),
        ]),
        posed!("conflict, three circles", 3, [110.0, 60.0], ten(2), |x| three_circles(x)),
        posed!("free, line", 1, [40.0, 40.0], ten(2), |x| [x[0] + x[1].times(2.0).plus(-170.0)]),
        posed!("free, circle", 1, [60.0, 80.0], ten(2), |x| [x[0].hypot(x[1]).plus(-150.0)]),
        posed!("free, ellipse", 1, [40.0, 30.0], ten(2), |x| [
            (x[0] * x[0]).times(1.0 / 360.0) + (x[1] * x[1]).times(1.0 / 40.0).plus(-90.0)
        ]),
        posed!("free, length and angle", 1, [100.0, 0.3], [10.0, DEGREES], |x| [(x[0] * x[1].sin()).plus(-60.0)]),
        posed!("free, two of five", 2, [90.0, 60.0, 80.0, 50.0, 40.0], ten(5), |x| two_of_five(x)),
        posed!("free, two handles of a curve", 1, [60.0, 80.0], ten(2), |x| [handled(
            [x[0], S::zero()],
            150.0,
            240.0,
            x[1]
        )
        .plus(-340.0)]),
        posed!("free, two curves", 1, [60.0, 80.0, 50.0, 50.0], ten(4), |x| [handled(
            [x[0], S::zero()],
            150.0,
            240.0,
            x[1]
        ) - handled(
            [x[2], x[2].times(0.25)],
            110.0,
            260.0,
            x[3]
        )
        .plus(25.0)]),
        posed!("limited, one rests", 1, [40.0, 40.0], ten(2), |x| [x[0] + x[1].times(2.0).plus(-170.0)])
            .most(&[INF, 52.0]),
        posed!("limited, circle", 1, [60.0, 80.0], ten(2), |x| [x[0].hypot(x[1]).plus(-150.0)])
            .least(&[0.0, 0.0])
            .most(&[75.0, INF]),
        posed!("limited, two of five", 2, [90.0, 60.0, 80.0, 50.0, 40.0], ten(5), |x| two_of_five(x))
            .least(&[0.0; 5])
            .most(&[92.0, 300.0, 84.0, 300.0, 46.0]),
        posed!("limited, let go", 1, [20.0, 20.0], ten(2), |x| [x[0] + x[1].plus(-100.0)])
            .least(&[20.0, 0.0])
            .most(&[INF, 300.0]),
        posed!("limited, start outside", 1, [10.0, 30.0], ten(2), |x| [x[0] + x[1].plus(-100.0)])
            .least(&[45.0, 0.0])
            .most(&[90.0, 90.0]),
        posed!("limited, six handles", 1, [50.0, 60.0, 70.0, 40.0, 55.0, 65.0], ten(6), |x| [x
            .iter()
            .fold(S::constant(-260.0), |sum, v| sum + (*v * *v).times(0.01))])
        .least(&[0.0; 6])
        .most(&[56.0, 66.0, 72.0, 50.0, 90.0, 90.0]),
        posed!("limit in the way, one", 1, [80.0], ten(1), |x| [x[0].hypot(S::constant(120.0)).plus(-173.0)])
            .most(&[100.0]),
        posed!("limit in the way, two", 2, [130.0, 90.0], ten(2), |x| two_circles(x)).most(&[300.0, 100.0]),
        posed!("branch above", 2, [50.0, 10.0], ten(2), |x| [x[0].hypot(x[1]).plus(-100.0), x[0].plus(-60.0)]),
        posed!("branch below", 2, [50.0, -10.0], ten(2), |x| [x[0].hypot(x[1]).plus(-100.0), x[0].plus(-60.0)]),
        posed!("branch of a square, far", 1, [-5.0], ten(1), |x| [(x[0] * x[0]).times(0.1).plus(-90.0)]),
        posed!("without effect, one", 1, [10.0, 25.0], ten(2), |x| [x[0].times(3.0).plus(-120.0)]),
        posed!("without effect at the start", 1, [30.0, 0.0], ten(2), |x| [(x[0] * x[1]).times(0.1).plus(-90.0)]),
        posed!("scaled, rows", 2, [10.0, 10.0], ten(2), |x| [
            (x[0] + x[1].plus(-50.0)).times(1e4),
            (x[0] - (x[1] * x[1]).times(1.0 / 60.0)).plus(4.0).times(1e-3)
        ]),
        posed!("scaled, columns", 2, [1.0, 1.0], ten(2), |x| [
            x[0].times(1e-4) + x[1].plus(-31.0),
            x[1].times(0.01).sin().times(300.0) - x[0].times(0.002).plus(88.0)
        ]),
        posed!("scaled, valley", 2, [-1.2, 1.0], [1.0, 1.0], |x| [
            (x[1] - x[0] * x[0]).times(10.0),
            S::constant(1.0) - x[0]
        ]),
        posed!("scaled, mixed and free", 1, [100.0, 0.5, 1.2], [10.0, DEGREES, 0.12], |x| [
            (x[0] * x[1].cos() * x[2]).plus(-140.0)
        ]),
    ]
}

/// A wave of length 1/2 and height 0.2, two above the start, on whose crest the first step ends: a step of 1 along it ends on a crest
/// farther away, one of 1/4 in the next trough.
pub fn wave() -> Posed {
    posed!("a wave", 1, [0.0, 0.0], [1.0, 1.0], |x| [
        x[1] - x[0].times(4.0 * std::f64::consts::PI).cos().times(0.2).plus(2.0)
    ])
}

/// Those that a closed form judges, with the answer and whether it is true.
pub fn closed() -> Vec<(Posed, Vec<f64>, bool)> {
    let ten = |n: usize| vec![10.0; n];
    // Nearest point of a line a.x = c to a start s: s + a (c - a.s) / a.a.
    let line = posed!("closed, plane", 1, [10.0, 20.0, 30.0], ten(3), |x| [
        (x[0] + x[1].times(2.0) + x[2].times(2.0)).plus(-200.0)
    ]);
    vec![
        (line, vec![10.0 + 10.0, 20.0 + 20.0, 30.0 + 20.0], true),
        // The best fit of hypot(x, 120) = 100 is its minimum, where the derivative is zero.
        (
            posed!("closed, shortest is too long", 1, [80.0], ten(1), |x| [x[0]
                .hypot(S::constant(120.0))
                .plus(-100.0)]),
            vec![0.0],
            false,
        ),
        // x + y = 1 against x + y = 3: fits best at 2, nearest to the start (4, 0, 7) there.
        (
            posed!("closed, conflict and free", 2, [4.0, 0.0, 7.0], ten(3), |x| [
                (x[0] + x[1]).plus(-1.0),
                (x[0] + x[1]).plus(-3.0)
            ]),
            vec![3.0, -1.0, 7.0],
            false,
        ),
        // A circle of 100 against one of 120: fits best at 110, nearest to (30, 40) there.
        (
            posed!("closed, circles and free", 2, [30.0, 40.0], ten(2), |x| [
                x[0].hypot(x[1]).plus(-100.0),
                x[0].hypot(x[1]).plus(-120.0)
            ]),
            vec![66.0, 88.0],
            false,
        ),
        (posed!("closed, flat", 1, [0.0], ten(1), |x| [(x[0] * x[0]).plus(-1.0)]), vec![1.0], true),
        (posed!("closed, flat without a way", 1, [0.0], ten(1), |x| [(x[0] * x[0]).plus(1.0)]), vec![0.0], false),
        (posed!("closed, no root", 1, [7.0], ten(1), |x| [(x[0] * x[0]).times(0.1).plus(9.0)]), vec![0.0], false),
        // y = 5 x^2 - 1 with x, y in units of 10: the start is over a crest of the distance. Minimum: 10 y = -1, so
        // y = -0.1, x = sqrt(0.18).
        (
            posed!("closed, crest of the distance", 1, [0.0, 0.0], ten(2), |x| [
                x[1] - (x[0] * x[0]).times(0.5).plus(-10.0)
            ]),
            vec![10.0 * 0.18_f64.sqrt(), -1.0],
            true,
        ),
        // Nothing to do: the very start.
        (
            posed!("closed, true at the start", 1, [30.0, 40.0], ten(2), |x| [x[0].hypot(x[1]).plus(-50.0)]),
            vec![30.0, 40.0],
            true,
        ),
        // No equation, and a start outside its limit.
        (
            posed!("closed, no equation", 0, [30.0, 40.0], ten(2), |x| [x[0]; 0]).most(&[20.0, INF]),
            vec![20.0, 40.0],
            true,
        ),
        // A double root: x^2 = 0.
        (posed!("closed, double root", 1, [50.0], ten(1), |x| [(x[0] * x[0]).times(0.1)]), vec![0.0], true),
        // Touching circles: the two unknowns meet in one point only, where the derivatives depend on each other.
        (
            posed!("closed, touching circles", 2, [70.0, 25.0], ten(2), |x| [
                x[0].hypot(x[1]).plus(-80.0),
                x[0].plus(-200.0).hypot(x[1]).plus(-120.0)
            ]),
            vec![80.0, 0.0],
            true,
        ),
        // An unknown that cannot move, and one that must follow.
        (
            posed!("closed, held", 1, [30.0, 10.0], ten(2), |x| [x[0] + x[1].plus(-100.0)])
                .least(&[30.0, -INF])
                .most(&[30.0, INF]),
            vec![30.0, 70.0],
            true,
        ),
        // Both unknowns end in a corner of the limits: x + y = 5 with x <= 3, y <= 2.
        (
            posed!("closed, corner", 1, [-20.0, -20.0], ten(2), |x| [x[0] + x[1].plus(-5.0)]).most(&[3.0, 2.0]),
            vec![3.0, 2.0],
            true,
        ),
    ]
}
