//! Straight equations within a box: the settled solution is the projection of the start, which R. L. Dykstra's
//! alternating projections (1983) find in quite another way.

use proptest::prelude::*;
use tracewheel::numeric::{Ending, Equations, Unknowns, settle, settle_from};

struct Straight<'a> {
    rows: &'a [Vec<f64>],
    sums: &'a [f64],
}

impl Equations for Straight<'_> {
    fn count(&self) -> usize {
        self.rows.len()
    }
    fn residuals(&mut self, x: &[f64], out: &mut [f64]) -> bool {
        for (o, (row, sum)) in out.iter_mut().zip(self.rows.iter().zip(self.sums)) {
            *o = row.iter().zip(x).map(|(a, x)| a * x).sum::<f64>() - sum;
        }
        true
    }
    fn jacobian(&mut self, x: &[f64], out: &mut [f64], rows: &mut [f64]) -> bool {
        rows.copy_from_slice(&self.rows.concat());
        self.residuals(x, out)
    }
}

/// The same with a square of each unknown's sum with the next added.
struct Bent<'a> {
    straight: Straight<'a>,
    bend: f64,
}

impl Equations for Bent<'_> {
    fn count(&self) -> usize {
        self.straight.count()
    }
    fn residuals(&mut self, x: &[f64], out: &mut [f64]) -> bool {
        let n = x.len();
        let fine = self.straight.residuals(x, out);
        for (e, o) in out.iter_mut().enumerate() {
            for i in 0..n {
                *o += self.bend * (x[i] + (e as f64 - 1.0) * x[(i + 1) % n]).powi(2);
            }
        }
        fine
    }
    fn jacobian(&mut self, x: &[f64], out: &mut [f64], rows: &mut [f64]) -> bool {
        let n = x.len();
        rows.copy_from_slice(&self.straight.rows.concat());
        for e in 0..out.len() {
            let share = e as f64 - 1.0;
            for i in 0..n {
                let slope = 2.0 * self.bend * (x[i] + share * x[(i + 1) % n]);
                rows[e * n + i] += slope;
                rows[e * n + (i + 1) % n] += share * slope;
            }
        }
        self.residuals(x, out)
    }
}

/// Dykstra over the box and each plane in turn, in the given scales; None where it does not come to rest.
fn project(
    rows: &[Vec<f64>],
    sums: &[f64],
    start: &[f64],
    scale: &[f64],
    low: &[f64],
    high: &[f64],
) -> Option<Vec<f64>> {
    let n = start.len();
    let mut z = vec![0.0; n];
    let mut carried = vec![vec![0.0; n]; rows.len() + 1];
    for _ in 0..200_000 {
        let (before, carried_before) = (z.clone(), carried.clone());
        for (k, carry) in carried.iter_mut().enumerate() {
            let y: Vec<f64> = z.iter().zip(carry.iter()).map(|(z, c)| z + c).collect();
            z = if k == 0 {
                (0..n).map(|i| y[i].clamp((low[i] - start[i]) / scale[i], (high[i] - start[i]) / scale[i])).collect()
            } else {
                let a: Vec<f64> = (0..n).map(|i| rows[k - 1][i] * scale[i]).collect();
                let off: f64 = (0..n).map(|i| rows[k - 1][i] * start[i] + a[i] * y[i]).sum::<f64>() - sums[k - 1];
                let square: f64 = a.iter().map(|a| a * a).sum();
                (0..n).map(|i| y[i] - a[i] * off / square).collect()
            };
            for i in 0..n {
                carry[i] = y[i] - z[i];
            }
        }
        // What is carried must rest too: the points alone may pause far from the answer.
        let rests = |a: &[f64], b: &[f64]| a.iter().zip(b).all(|(a, b)| (a - b).abs() < 1e-12);
        if rests(&z, &before) && carried.iter().zip(&carried_before).all(|(a, b)| rests(a, b)) {
            return Some((0..n).map(|i| start[i] + scale[i] * z[i]).collect());
        }
    }
    None
}

fn a_case() -> impl Strategy<Value = (Vec<Vec<f64>>, Vec<f64>, Vec<f64>, Vec<f64>, Vec<f64>, Vec<f64>)> {
    (1..4_usize, 2..7_usize).prop_flat_map(|(m, n)| {
        let of = move |range: std::ops::Range<f64>| prop::collection::vec(range, n);
        let rows = prop::collection::vec(prop::collection::vec((-20..21_i32).prop_map(|k| f64::from(k) / 10.0), n), m);
        (rows, of(-60.0..60.0), of(5.0..20.0), of(-50.0..0.0), of(0.0..50.0), of(0.0..1.0))
    })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 300, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn settled_is_the_projection((rows, start, scale, least, most, share) in a_case()) {
        prop_assume!(rows.iter().all(|r| r.iter().any(|a| a.abs() > 0.25)));
        // Some point within the box fulfils the equations; often on the box itself.
        let inside: Vec<f64> = (0..start.len())
            .map(|i| least[i] + (most[i] - least[i]) * (share[i] * 1.4 - 0.2).clamp(0.0, 1.0))
            .collect();
        let sums: Vec<f64> = rows.iter().map(|r| r.iter().zip(&inside).map(|(a, x)| a * x).sum()).collect();
        let unknowns = Unknowns { start: &start, scale: &scale, least: &least, most: &most };
        let found = settle(&unknowns, &mut Straight { rows: &rows, sums: &sums });
        prop_assert_eq!(found.ending, Ending::True, "{:?}", found);
        let judge = project(&rows, &sums, &start, &scale, &least, &most);
        prop_assume!(judge.is_some(), "the judge came to no rest");
        let judge = judge.unwrap();
        for (a, b) in found.x.iter().zip(&judge) {
            prop_assert!((a - b).abs() < 1e-6, "{:?} against {:?}", found, judge);
        }
    }

    #[test]
    fn no_answer_nearby_is_nearer((rows, start, scale, least, most, share) in a_case(), bend in 0.0..0.02) {
        let n = start.len();
        prop_assume!(rows.len() < n && rows.iter().all(|r| r.iter().any(|a| a.abs() > 0.25)));
        let inside: Vec<f64> = (0..n).map(|i| least[i] + (most[i] - least[i]) * share[i]).collect();
        let unknowns = Unknowns { start: &start, scale: &scale, least: &least, most: &most };
        let sums = vec![0.0; rows.len()];
        let mut bent = Bent { straight: Straight { rows: &rows, sums: &sums }, bend };
        let mut sums = vec![0.0; rows.len()];
        prop_assert!(bent.residuals(&inside, &mut sums));
        bent.straight.sums = &sums;
        let found = settle(&unknowns, &mut bent);
        prop_assert!(found.ending != Ending::RanOut, "{:?}", found);
        // A bent system may end in a local best fit.
        prop_assume!(found.ending == Ending::True);
        let distance = |x: &[f64]| -> f64 { (0..n).map(|i| ((x[i] - start[i]) / scale[i]).powi(2)).sum() };
        for i in 0..2 * n {
            let mut begin = found.x.clone();
            begin[i / 2] += if i % 2 == 0 { 0.01 } else { -0.01 };
            let other = settle_from(&unknowns, &begin, &mut bent);
            if other.ending == Ending::True {
                prop_assert!(distance(&other.x) > distance(&found.x) - 1e-7, "{:?} before {:?}", other, found);
            }
        }
    }
}

/// Found by chance: one bent equation, both limits meeting in a corner. The search creeps into the corner and runs out of
/// its counts, where it should say that nothing within the limits is nearer: a known weakness, kept until it is mended.
#[test]
#[ignore = "known weakness: runs out instead of ending as not true"]
fn a_corner_is_reached_in_time() {
    let rows = vec![vec![0.4, -0.8]];
    let (least, most) = ([-43.192_866_306_010_34, -37.880_647_780_203_745], [0.0, 24.810_681_017_872_535]);
    let share = [0.903_591_223_639_516_5, 0.185_746_907_610_683_13];
    let inside: Vec<f64> = (0..2).map(|i| least[i] + (most[i] - least[i]) * share[i]).collect();
    let none = [0.0];
    let mut bent = Bent { straight: Straight { rows: &rows, sums: &none }, bend: 0.014_480_266_650_915_933 };
    let mut sums = [0.0];
    assert!(bent.residuals(&inside, &mut sums));
    bent.straight.sums = &sums;
    let start = [-27.520_570_784_035_77, -17.106_331_547_982_226];
    let found = settle(&Unknowns { start: &start, scale: &[5.0, 5.0], least: &least, most: &most }, &mut bent);
    assert!(found.ending != Ending::RanOut, "{found:?}");
}
