//! Singular values and eigenvalues: the one door to linear algebra.
//!
//! Matrices come as plain rows. Products of two matrices are written out here and not taken from the crate, which
//! would choose another order of additions on another processor.

use std::cell::OnceCell;

use nalgebra::{DMatrix, SVD, SymmetricEigen};

use crate::base::tolerance;

/// Most sweeps for each column before a factorisation is given up; two or three are usual.
const SWEEPS: usize = 100;

/// `rows = sum(sigma_j u_j v_j^T)` over the directions that have an effect.
pub(super) struct Factor {
    m: usize,
    n: usize,
    /// Singular values that count, largest first.
    sigma: Vec<f64>,
    left: Vec<f64>,
    right: Vec<f64>,
    /// An orthonormal basis of what has no effect, vector by vector; only where it was asked for.
    pub null: Vec<f64>,
    /// Where every column clearly has an effect of its own: this instead of all above, which takes far longer.
    regular: Option<Regular>,
}

/// `rows = Q R` with the columns in another order: largest rest first.
struct Regular {
    /// The columns of Q, one behind the other.
    q: Vec<f64>,
    /// The upper triangle, row by row.
    r: Vec<f64>,
    order: Vec<usize>,
    /// The singular values of R in the columns' own order, where damping asks for them.
    inner: OnceCell<Option<Box<Factor>>>,
}

impl Regular {
    /// None where the columns are too nearly dependent.
    fn of(entry: &dyn Fn(usize, usize) -> f64, m: usize, n: usize) -> Option<Self> {
        /// The smallest rest against the largest column; the rest of rounding grows against it.
        const CLEAR: f64 = 1e-3;
        let mut q: Vec<f64> = (0..n * m).map(|k| entry(k % m, k / m)).collect();
        let (mut r, mut order) = (vec![0.0; n * n], (0..n).collect::<Vec<_>>());
        let square = |column: &[f64]| column.iter().map(|v| v * v).sum::<f64>();
        for k in 0..n {
            let (mut best, mut most) = (k, -1.0);
            for j in k..n {
                let size = square(&q[j * m..(j + 1) * m]);
                if size > most {
                    (best, most) = (j, size);
                }
            }
            if best != k {
                order.swap(k, best);
                (0..m).for_each(|e| q.swap(k * m + e, best * m + e));
                (0..k).for_each(|i| r.swap(i * n + k, i * n + best));
            }
            let size = most.sqrt();
            if !(size > tolerance::NO_EFFECT && size > CLEAR * if k == 0 { 0.0 } else { r[0] }) {
                return None;
            }
            r[k * n + k] = size;
            let (done, rest) = q.split_at_mut((k + 1) * m);
            let column = &mut done[k * m..];
            column.iter_mut().for_each(|v| *v /= size);
            for (j, other) in rest.chunks_exact_mut(m).enumerate() {
                let share: f64 = column.iter().zip(&*other).map(|(a, b)| a * b).sum();
                r[k * n + k + 1 + j] = share;
                other.iter_mut().zip(&*column).for_each(|(o, c)| *o -= share * c);
            }
        }
        Some(Self { q, r, order, inner: OnceCell::new() })
    }

    fn shares(&self, values: &[f64]) -> Vec<f64> {
        self.q.chunks_exact(values.len().max(1)).map(|c| c.iter().zip(values).map(|(a, b)| a * b).sum()).collect()
    }

    fn solve(&self, shares: &[f64]) -> Vec<f64> {
        let n = self.order.len();
        let mut x = shares.to_vec();
        for i in (0..n).rev() {
            let sum: f64 = (i + 1..n).map(|k| self.r[i * n + k] * x[k]).sum();
            x[i] = (x[i] - sum) / self.r[i * n + i];
        }
        let mut out = vec![0.0; n];
        self.order.iter().zip(x).for_each(|(i, x)| out[*i] = x);
        out
    }

    fn solve_transposed(&self, values: &[f64], m: usize) -> Vec<f64> {
        let n = self.order.len();
        let mut x: Vec<f64> = self.order.iter().map(|i| values[*i]).collect();
        for i in 0..n {
            let sum: f64 = (0..i).map(|k| self.r[k * n + i] * x[k]).sum();
            x[i] = (x[i] - sum) / self.r[i * n + i];
        }
        let mut out = vec![0.0; m];
        for (column, x) in self.q.chunks_exact(m.max(1)).zip(x) {
            out.iter_mut().zip(column).for_each(|(o, c)| *o += x * c);
        }
        out
    }

    /// The singular values of R, whose left directions are told in shares.
    fn inner(&self) -> Option<&Factor> {
        let make = || {
            let n = self.order.len();
            let mut rows = vec![0.0; n * n];
            for (k, column) in self.order.iter().enumerate() {
                (0..=k).for_each(|i| rows[i * n + column] = self.r[i * n + k]);
            }
            let columns: Vec<usize> = (0..n).collect();
            Factor::singular(&|e, c| rows[e * n + columns[c]], n, n, false).map(Box::new)
        };
        self.inner.get_or_init(make).as_deref()
    }
}

impl Factor {
    /// Factors the chosen columns of `rows` (`m` rows of `width`). None if the iteration does not end.
    pub fn of(rows: &[f64], m: usize, width: usize, columns: &[usize], with_null: bool) -> Option<Self> {
        let n = columns.len();
        let entry = |e: usize, c: usize| rows[e * width + columns[c]];
        if n > 1 && m >= n {
            let regular = Regular::of(&entry, m, n);
            if regular.is_some() {
                return Some(Self { regular, ..Self::empty(m, n) });
            }
        }
        Self::singular(&entry, m, n, with_null)
    }

    fn empty(m: usize, n: usize) -> Self {
        let (sigma, left, right, null) = Default::default();
        Self { m, n, sigma, left, right, null, regular: None }
    }

    fn singular(entry: &dyn Fn(usize, usize) -> f64, m: usize, n: usize, with_null: bool) -> Option<Self> {
        let mut factor = Self::empty(m, n);
        if n == 0 || (m == 0 && !with_null) {
            return Some(factor);
        }
        if n == 1 || (m == 1 && !with_null) {
            factor.line(entry, with_null);
            return Some(factor);
        }
        // Zero rows make the right side complete, so that the null space can be read from it.
        let tall = if with_null { m.max(n) } else { m };
        let matrix = DMatrix::from_fn(tall, n, |e, c| if e < m { entry(e, c) } else { 0.0 });
        let bound = SWEEPS * tall.max(n);
        let svd = SVD::try_new(matrix, true, true, f64::EPSILON, bound)?;
        let (left, right) = (svd.u?, svd.v_t?);
        let least = smallest_that_counts(svd.singular_values.iter().fold(0.0, |a: f64, &b| a.max(b)));
        for (j, &sigma) in svd.singular_values.iter().enumerate() {
            let across = right.row(j);
            if sigma > least {
                factor.sigma.push(sigma);
                factor.left.extend((0..m).map(|e| left[(e, j)]));
                factor.right.extend(across.iter());
            } else if with_null {
                factor.null.extend(across.iter());
            }
        }
        Some(factor)
    }

    /// One row or one column: no iteration needed.
    fn line(&mut self, entry: impl Fn(usize, usize) -> f64, with_null: bool) {
        let (m, n) = (self.m, self.n);
        let mut values: Vec<f64> = (0..m * n).map(|k| if n == 1 { entry(k, 0) } else { entry(0, k) }).collect();
        let largest = values.iter().fold(0.0_f64, |a, b| a.max(b.abs()));
        let norm = if largest > 0.0 {
            largest * values.iter().map(|v| (v / largest) * (v / largest)).sum::<f64>().sqrt()
        } else {
            0.0
        };
        if norm <= smallest_that_counts(norm) {
            if with_null {
                self.null = vec![1.0];
            }
            return;
        }
        values.iter_mut().for_each(|v| *v /= norm);
        self.sigma = vec![norm];
        (self.left, self.right) = if n == 1 { (values, vec![1.0]) } else { (vec![1.0], values) };
    }

    /// How many directions count.
    pub fn rank(&self) -> usize {
        if self.regular.is_some() { self.n } else { self.sigma.len() }
    }

    /// Shares of `values` in the left directions.
    pub fn shares(&self, values: &[f64]) -> Vec<f64> {
        if let Some(regular) = &self.regular {
            return regular.shares(values);
        }
        self.left.chunks_exact(self.m.max(1)).map(|u| u.iter().zip(values).map(|(a, b)| a * b).sum()).collect()
    }

    /// The shortest minimiser of `|A p - sum(shares u)|^2 + damping |p|^2`.
    pub fn solve(&self, shares: &[f64], damping: f64) -> Vec<f64> {
        if let Some(regular) = &self.regular {
            return match (damping > 0.0).then(|| regular.inner()).flatten() {
                Some(inner) => inner.solve(&inner.shares(shares), damping),
                None => regular.solve(shares),
            };
        }
        let mut step = vec![0.0; self.n];
        for ((v, &s), &share) in self.right.chunks_exact(self.n.max(1)).zip(&self.sigma).zip(shares) {
            let weight = share * s / (s * s + damping);
            step.iter_mut().zip(v).for_each(|(p, v)| *p += weight * v);
        }
        step
    }

    /// The shortest least-squares answer of `A^T l = values`.
    pub fn solve_transposed(&self, values: &[f64]) -> Vec<f64> {
        if let Some(regular) = &self.regular {
            return regular.solve_transposed(values, self.m);
        }
        let mut out = vec![0.0; self.m];
        let sides = self.left.chunks_exact(self.m.max(1)).zip(self.right.chunks_exact(self.n.max(1)));
        for ((u, v), &s) in sides.zip(&self.sigma) {
            let weight = v.iter().zip(values).map(|(a, b)| a * b).sum::<f64>() / s;
            out.iter_mut().zip(u).for_each(|(l, u)| *l += weight * u);
        }
        out
    }

    /// The damping at which [`Factor::solve`] is as long as `radius` (Moré's iteration from below; a hard bound of 12).
    pub fn damping(&self, shares: &[f64], radius: f64) -> f64 {
        if let Some(regular) = &self.regular {
            return regular.inner().map_or(0.0, |inner| inner.damping(&inner.shares(shares), radius));
        }
        let mut damping = 0.0;
        for _ in 0..12 {
            let (mut square, mut slope) = (0.0, 0.0);
            for (&s, &share) in self.sigma.iter().zip(shares) {
                let below = s * s + damping;
                let weight = share * s / below;
                square += weight * weight;
                slope += weight * weight / below;
            }
            let length = square.sqrt();
            if length <= 1.01 * radius || slope <= 0.0 {
                break;
            }
            damping += (length / radius - 1.0) * square / slope;
        }
        damping
    }

    /// How much each of the columns takes part in what has no effect, 0 to 1.
    pub fn looseness(&self) -> Vec<f64> {
        let mut out = vec![0.0; self.n];
        for v in self.null.chunks_exact(self.n.max(1)) {
            out.iter_mut().zip(v).for_each(|(o, v)| *o += v * v);
        }
        out.into_iter().map(f64::sqrt).collect()
    }
}

fn smallest_that_counts(largest: f64) -> f64 {
    tolerance::NO_EFFECT.max(tolerance::RANK * largest)
}

/// Eigenvalues of a symmetric `n` by `n` matrix with their vectors, in rising order. None if the iteration does not end.
pub(super) fn eigen(matrix: &[f64], n: usize) -> Option<Vec<(f64, Vec<f64>)>> {
    if n == 1 {
        return Some(vec![(matrix[0], vec![1.0])]);
    }
    let halves = DMatrix::from_fn(n, n, |i, j| 0.5 * (matrix[i * n + j] + matrix[j * n + i]));
    let found = SymmetricEigen::try_new(halves, f64::EPSILON, SWEEPS * n)?;
    let mut pairs: Vec<_> =
        (0..n).map(|j| (found.eigenvalues[j], found.eigenvectors.column(j).iter().copied().collect())).collect();
    pairs.sort_by(|a: &(f64, Vec<f64>), b| a.0.total_cmp(&b.0));
    Some(pairs)
}

/// The lower triangle of Cholesky in place; false where the matrix is not clearly positive.
pub(super) fn cholesky(matrix: &mut [f64], n: usize) -> bool {
    let floor = f64::EPSILON * (0..n).fold(0.0_f64, |a, i| a.max(matrix[i * n + i]));
    for i in 0..n {
        for j in 0..=i {
            let sum: f64 = (0..j).map(|k| matrix[i * n + k] * matrix[j * n + k]).sum();
            let rest = matrix[i * n + j] - sum;
            if i != j {
                matrix[i * n + j] = rest / matrix[j * n + j];
            } else if rest > floor {
                matrix[i * n + i] = rest.sqrt();
            } else {
                return false;
            }
        }
    }
    true
}

/// Solves `L y = b` in place.
pub(super) fn forward(lower: &[f64], n: usize, b: &mut [f64]) {
    for i in 0..n {
        let sum: f64 = (0..i).map(|k| lower[i * n + k] * b[k]).sum();
        b[i] = (b[i] - sum) / lower[i * n + i];
    }
}

/// Solves `L^T y = b` in place.
pub(super) fn backward(lower: &[f64], n: usize, b: &mut [f64]) {
    for i in (0..n).rev() {
        let sum: f64 = (i + 1..n).map(|k| lower[k * n + i] * b[k]).sum();
        b[i] = (b[i] - sum) / lower[i * n + i];
    }
}
