//! Joining what is found in single sizes to one finding with its sizes and numbers.

use crate::base::{Amount, Finding};

/// A finding that grows size by size. The last number decides which size is the worst.
pub(super) struct Tally {
    finding: Finding,
    units: Vec<(&'static str, &'static str)>,
    rows: Vec<Vec<f64>>,
}

impl Tally {
    /// A finding with these numbers (name, unit) still to come.
    pub fn new(finding: Finding, units: &[(&'static str, &'static str)]) -> Self {
        Self { finding, units: units.to_vec(), rows: Vec::new() }
    }

    /// One size with its numbers.
    pub fn add(&mut self, size: &str, numbers: &[f64]) {
        self.finding.sizes.push(size.to_owned());
        self.rows.push(numbers.to_vec());
    }

    /// The finding with a change of words that depends on the worst size, if there was any size.
    pub fn done(mut self, dress: impl FnOnce(Finding, &[f64]) -> Finding) -> Option<Finding> {
        let last = |r: &Vec<f64>| r.last().copied().unwrap_or(0.0).abs();
        let worst = (0..self.rows.len())
            .reduce(|best, i| if last(&self.rows[i]) > last(&self.rows[best]) { i } else { best })?;
        self.finding.worst = worst;
        for (k, (name, unit)) in self.units.iter().enumerate() {
            let by_size = self.rows.iter().map(|r| r[k]).collect();
            self.finding.amounts.push(Amount { name, unit, by_size });
        }
        let numbers = self.rows[worst].clone();
        Some(dress(self.finding, &numbers))
    }
}
