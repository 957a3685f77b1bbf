//! Cubic Bézier segments: points, lengths and parts at parameters.

use super::Pt;
use super::quadrature::{error_bound, integral};
use crate::base::{Dual, Scalar, tolerance};

/// Start, two handles, end.
pub type Cubic<S> = [Pt<S>; 4];

/// Newton's steps, or halvings of the interval, before the best so far is taken.
const MOST_STEPS: usize = 64;

pub fn plain<S: Scalar>(c: &Cubic<S>) -> Cubic<f64> {
    c.map(Pt::plain)
}

pub fn to_kurbo<S: Scalar>(c: &Cubic<S>) -> kurbo::CubicBez {
    kurbo::CubicBez::new(c[0].value(), c[1].value(), c[2].value(), c[3].value())
}

/// The blossom: the curve's point at `t` for three times `t`, a handle of a part for mixed arguments.
pub fn blossom<S: Scalar>(c: &Cubic<S>, t0: S, t1: S, t2: S) -> Pt<S> {
    let (a, b, d) = (c[0].towards(c[1], t0), c[1].towards(c[2], t0), c[2].towards(c[3], t0));
    a.towards(b, t1).towards(b.towards(d, t1), t2)
}

pub fn point<S: Scalar>(c: &Cubic<S>, t: S) -> Pt<S> {
    blossom(c, t, t, t)
}

/// Derivative of the point by the parameter.
pub fn velocity<S: Scalar>(c: &Cubic<S>, t: S) -> Pt<S> {
    let (a, b, d) = (c[1] - c[0], c[2] - c[1], c[3] - c[2]);
    a.towards(b, t).towards(b.towards(d, t), t).scaled(3.0)
}

/// Second derivative of the point by the parameter.
pub fn bend<S: Scalar>(c: &Cubic<S>, t: S) -> Pt<S> {
    let (a, b, d) = (c[1] - c[0], c[2] - c[1], c[3] - c[2]);
    (b - a).towards(d - b, t).scaled(6.0)
}

/// Unit direction of travel at `t`. Where the first derivative is zero: the direction in which the curve leaves, at the end that in
/// which it arrives. None if all points lie on each other.
pub fn tangent<S: Scalar>(c: &Cubic<S>, t: S) -> Option<Pt<S>> {
    let sign = if t.value() < 1.0 { 1.0 } else { -1.0 };
    let third = || c[3] - c[2].scaled(3.0) + c[1].scaled(3.0) - c[0];
    velocity(c, t).unit().or_else(|| bend(c, t).scaled(sign).unit()).or_else(|| third().unit())
}

/// The part between two parameters.
pub fn part<S: Scalar>(c: &Cubic<S>, t0: S, t1: S) -> Cubic<S> {
    [blossom(c, t0, t0, t0), blossom(c, t0, t0, t1), blossom(c, t0, t1, t1), blossom(c, t1, t1, t1)]
}

/// Integral of (x dy - y dx) / 2, in closed form.
pub fn area_under<S: Scalar>(c: &Cubic<S>) -> S {
    // Taken from the start point, so that a curve far from the origin loses no digits.
    let [a, b, d] = [c[1] - c[0], c[2] - c[0], c[3] - c[0]];
    let own = (a.cross(b) + a.cross(d)).times(3.0) + b.cross(d).times(6.0);
    c[0].cross(d).times(0.5) + own.times(1.0 / 20.0)
}

/// Length from parameter `from` to `to`, within 1e-9 mm, with the derivatives by the four points.
pub fn length<S: Scalar>(c: &Cubic<S>, from: f64, to: f64) -> S {
    let speed = Speed::new(&plain(c));
    // A scalar as large as its value carries nothing else.
    if size_of::<S>() == size_of::<f64>() {
        return S::constant(speed.length(from, to));
    }
    // The derivatives by the six coordinates of the legs are plain numbers, whatever the scalar carries.
    let length = speed.length_with_slopes(from, to);
    [c[1] - c[0], c[2] - c[1], c[3] - c[2]].iter().enumerate().fold(S::constant(length.value), |sum, (i, leg)| {
        sum + leg.x.chain(0.0, length.slopes[i]) + leg.y.chain(0.0, length.slopes[i + 3])
    })
}

/// The speed of a cubic as a function of its parameter.
///
/// With the velocity as one complex number it is the root of velocity * conjugate: analytic but where the velocity, a quadratic,
/// is zero, and at the mirrored places. Those two places tell how good the rule is.
struct Speed {
    legs: [Pt<f64>; 3],
    /// Where the velocity is zero; their mirrored places are just as far from real intervals.
    zeros: [(f64, f64); 2],
}

impl Speed {
    fn new(c: &Cubic<f64>) -> Self {
        let legs = [c[1] - c[0], c[2] - c[1], c[3] - c[2]];
        // v = p + 2 q t + r t²: zeros at s / r and p / s with s = -q ± sqrt(q² - p r), the sign that does not cancel.
        let (p, q) = (legs[0], legs[1] - legs[0]);
        let r = legs[2] - legs[1] - q;
        let inner = q.turned_by(q) - p.turned_by(r);
        let length = inner.dot(inner).sqrt();
        let re = (0.5 * (length + inner.x.abs())).sqrt();
        let im = if re > 0.0 { 0.5 * inner.y / re } else { 0.0 };
        let root = if inner.x >= 0.0 { Pt::new(re, im) } else { Pt::new(im.abs(), re.copysign(inner.y)) };
        let s = if q.dot(root) >= 0.0 { -q - root } else { root - q };
        let ratio = |a: Pt<f64>, b: Pt<f64>| {
            let z = a.turned_by(Pt::new(b.x, -b.y)).scaled(1.0 / b.dot(b));
            // No zero: as good as one far away.
            if z.is_finite() { (z.x, z.y) } else { (1e150, 0.0) }
        };
        Self { legs, zeros: [ratio(s, r), ratio(p, s)] }
    }
    /// The length between two parameters, within 1e-9 mm.
    fn length(&self, from: f64, to: f64) -> f64 {
        integral(self.is_good(), |t| self.velocity(t).0, from, to)
    }
    /// With the derivatives by the x, then the y of the three legs.
    fn length_with_slopes(&self, from: f64, to: f64) -> Dual<6> {
        let with_slopes = |t: f64| {
            let (value, x, y, [u, v, w]) = self.velocity(t);
            let (ux, uy) = if value > 0.0 { (x / value, y / value) } else { (0.0, 0.0) };
            Dual { value, slopes: [ux * u, ux * v, ux * w, uy * u, uy * v, uy * w] }
        };
        integral(self.is_good(), with_slopes, from, to)
    }
    /// Speed, velocity and the weights of the legs in it.
    fn velocity(&self, t: f64) -> (f64, f64, f64, [f64; 3]) {
        let [a, b, d] = self.legs;
        let (u, v, w) = (3.0 * (1.0 - t) * (1.0 - t), 6.0 * t * (1.0 - t), 3.0 * t * t);
        let (x, y) = (u * a.x + v * b.x + w * d.x, u * a.y + v * b.y + w * d.y);
        ((x * x + y * y).sqrt(), x, y, [u, v, w])
    }
    fn is_good(&self) -> impl Fn(f64, f64, f64) -> bool {
        let [a, b, d] = self.legs;
        let (q, r) = (b - a, d - b.scaled(2.0) + a);
        let r_length = r.dot(r).sqrt();
        move |from, to, _| {
            let t = 0.5 * (from + to);
            let half_bend = q + r.scaled(t);
            let (speed, half_bend) = (self.velocity(t).0, half_bend.dot(half_bend).sqrt());
            let most = |reach: f64| speed + 3.0 * reach * (2.0 * half_bend + reach * r_length);
            let is_off = error_bound(from, to, &self.zeros, most) > tolerance::ARC_LENGTH / 10.0;
            // What is not a number is not halved further.
            !is_off
        }
    }
}

/// The parameters, rising, near which the curve all but stands still: a cusp, or a bend that takes less than a thirtieth of the
/// parameter.
pub fn sharp_bends(c: &Cubic<f64>) -> Vec<f64> {
    const NEAR: f64 = 1.0 / 32.0;
    let zeros = Speed::new(c).zeros.into_iter();
    let mut sharp: Vec<f64> = zeros.filter(|z| z.0 > 0.0 && z.0 < 1.0 && z.1.abs() < NEAR).map(|z| z.0).collect();
    sharp.sort_by(f64::total_cmp);
    sharp
}

/// The parameter at which the length from the start is `s`, 0 <= `s` <= `total`: within 1e-10 mm of length.
pub fn parameter_at(c: &Cubic<f64>, s: f64, total: f64) -> f64 {
    if s <= 0.0 || total <= 0.0 {
        return 0.0;
    }
    if s >= total {
        return 1.0;
    }
    let (mut low, mut high) = (0.0, 1.0);
    let (mut known, mut known_length) = (0.0, 0.0);
    let speed = Speed::new(c);
    let mut t = s / total;
    for _ in 0..MOST_STEPS {
        known_length += speed.length(known, t);
        known = t;
        let over = known_length - s;
        if over > 0.0 {
            high = t;
        } else {
            low = t;
        }
        let here = speed.velocity(t).0;
        let next = t - over / here;
        let inside = next > low && next < high;
        if over.abs() <= tolerance::ARC_LENGTH / 10.0 {
            // The last step is free: it squares what is left. Where the curve all but stands still it would leap.
            return if inside && speed.velocity(next).0 <= 2.0 * here { next } else { t };
        }
        t = if inside { next } else { 0.5 * (low + high) };
    }
    t
}

/// The parameter `t` of the length `s` with its derivatives. They are left out where the curve stands still at `t`.
pub fn carried_parameter<S: Scalar>(c: &Cubic<S>, s: S, t: f64) -> S {
    let speed = velocity(&plain(c), t).length();
    if speed <= tolerance::ARC_LENGTH {
        return S::constant(t);
    }
    (s - length(c, 0.0, t)).times(1.0 / speed).plus(t)
}
