//! Sizes in words: `all sizes`, `sizes 16 to 20`, `sizes 8, 12`.

use crate::texts::{gathered, t};

/// The sizes and persons in which two drafts are compared.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Sizes {
    /// Their addresses: sizes of the range first, then persons.
    pub list: Vec<String>,
    /// How many of them are sizes of the range.
    pub range: usize,
    /// How many sizes of the range both drafts have, also those that were not asked for.
    pub whole: usize,
}

/// So many neighbours are told as a run.
const RUN: usize = 3;

impl Sizes {
    /// These sizes in words. Those that are not among the compared ones are left out.
    pub fn words(&self, sizes: &[&str]) -> String {
        let places: Vec<usize> = (0..self.list.len()).filter(|i| sizes.contains(&self.list[*i].as_str())).collect();
        let (range, persons): (Vec<usize>, Vec<usize>) = places.into_iter().partition(|i| *i < self.range);
        let mut out = Vec::new();
        if range.len() == self.whole && range.len() > 1 {
            out.push(t!("sizes-all"));
        } else if !range.is_empty() {
            let mut parts = Vec::new();
            let mut i = 0;
            while i < range.len() {
                let run = (i + 1..range.len()).take_while(|k| range[*k] == range[i] + (k - i)).count() + 1;
                if run >= RUN {
                    parts.push(t!("sizes-run", first = self.list[range[i]], last = self.list[range[i + run - 1]]));
                    i += run;
                } else {
                    parts.push(self.list[range[i]].clone());
                    i += 1;
                }
            }
            out.push(t!("sizes-in", count = range.len(), sizes = parts.join(", ")));
        }
        if !persons.is_empty() {
            let names: Vec<&str> = persons.iter().map(|i| self.list[*i].as_str()).collect();
            out.push(t!("persons-in", count = persons.len(), names = names.join(", ")));
        }
        gathered(&out)
    }

    /// Whether it is a size of the range, not a person.
    pub fn is_size(&self, size: &str) -> bool {
        self.list[..self.range].iter().any(|s| s == size)
    }
}
