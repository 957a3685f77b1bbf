//! Roots of polynomials in Bernstein form on [0, 1]: between places where the slope is zero a polynomial has at most one.

/// Halvings of an interval, or Newton's steps in it, before the best so far is taken.
const MOST_STEPS: usize = 100;

/// So many coefficients need no memory of their own: what curves ask for has fewer.
const FEW: usize = 16;

/// The value at `t`, by de Casteljau's scheme.
pub fn value(coefficients: &[f64], t: f64) -> f64 {
    let mut room = [0.0; FEW];
    match room.get_mut(..coefficients.len()) {
        Some(row) => {
            row.copy_from_slice(coefficients);
            narrowed(row, t)
        }
        None => narrowed(&mut coefficients.to_vec(), t),
    }
}

fn narrowed(row: &mut [f64], t: f64) -> f64 {
    for last in (1..row.len()).rev() {
        for i in 0..last {
            row[i] += (row[i + 1] - row[i]) * t;
        }
    }
    row[0]
}

/// Coefficients of the derivative, up to a factor.
fn derivative(coefficients: &[f64]) -> Vec<f64> {
    coefficients.windows(2).map(|w| w[1] - w[0]).collect()
}

/// Places in (0, 1), rising, at which the polynomial goes through zero.
pub fn crossings(coefficients: &[f64]) -> Vec<f64> {
    let mut cuts = vec![0.0];
    cuts.extend(turns(coefficients));
    cuts.push(1.0);
    cuts.windows(2).filter_map(|w| between(coefficients, w[0], w[1])).collect()
}

/// Places in (0, 1), rising, at which the slope changes its sign.
pub fn turns(coefficients: &[f64]) -> Vec<f64> {
    if coefficients.len() <= 2 { Vec::new() } else { crossings(&derivative(coefficients)) }
}

/// Where a function that only rises or only falls from `low` to `high` goes through zero, if it does.
pub fn between(coefficients: &[f64], low: f64, high: f64) -> Option<f64> {
    root(|t| value(coefficients, t), low, high)
}

/// The same for any function.
pub fn root(f: impl Fn(f64) -> f64, low: f64, high: f64) -> Option<f64> {
    let (mut a, mut b) = (low, high);
    let (mut at_a, at_b) = (f(a), f(b));
    if at_a == 0.0 || at_b == 0.0 || at_a.is_nan() || at_b.is_nan() || (at_a > 0.0) == (at_b > 0.0) {
        return None;
    }
    let mut at_b = at_b;
    // False position that halves the weight of an end that stays (the Illinois rule), with halving where that is slow.
    let mut kept = 0i8;
    for step in 0..MOST_STEPS {
        if b == a {
            break;
        }
        let mut t = if step % 4 == 3 { 0.5 * (a + b) } else { b - at_b * (b - a) / (at_b - at_a) };
        if !(t > a.min(b) && t < a.max(b)) {
            t = 0.5 * (a + b);
        }
        let at_t = f(t);
        if at_t == 0.0 {
            return Some(t);
        }
        if (at_t > 0.0) == (at_a > 0.0) {
            (a, at_a) = (t, at_t);
            at_b = if kept == 1 { 0.5 * at_b } else { at_b };
            kept = 1;
        } else {
            (b, at_b) = (t, at_t);
            at_a = if kept == -1 { 0.5 * at_a } else { at_a };
            kept = -1;
        }
    }
    Some(0.5 * (a + b))
}

/// The product of two polynomials in Bernstein form; `times` multiplies their coefficients.
pub fn product<T: Copy>(a: &[T], b: &[T], times: impl Fn(T, T) -> f64) -> Vec<f64> {
    let (m, n) = (a.len() - 1, b.len() - 1);
    let mut out = vec![0.0; m + n + 1];
    for (i, x) in a.iter().enumerate() {
        for (j, y) in b.iter().enumerate() {
            out[i + j] += choose(m, i) * choose(n, j) / choose(m + n, i + j) * times(*x, *y);
        }
    }
    out
}

fn choose(n: usize, k: usize) -> f64 {
    (0..k).fold(1.0, |c, i| c * (n - i) as f64 / (i + 1) as f64)
}
