//! Sizes in words: `all sizes`, `sizes 16 to 20`, `sizes 8, 12`.

use crate::base::Language;
use crate::texts::{gathered, runs, t};

/// The sizes and persons in which two drafts are compared.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Sizes {
    /// Their addresses: sizes of the range first, then persons.
    pub list: Vec<String>,
    /// How many of them are sizes of the range.
    pub range: usize,
    /// How many sizes of the range both drafts have, also those that were not asked for.
    pub whole: usize,
    /// The language in which they were compared: facts are found by their words, so they are told in it too, whoever asks.
    pub language: Language,
}

impl Sizes {
    /// These sizes in words. Those that are not among the compared ones are left out.
    pub fn words(&self, sizes: &[&str]) -> String {
        let places: Vec<usize> = (0..self.list.len()).filter(|i| sizes.contains(&self.list[*i].as_str())).collect();
        let (range, persons): (Vec<usize>, Vec<usize>) = places.into_iter().partition(|i| *i < self.range);
        let mut out = Vec::new();
        if range.len() == self.whole && range.len() > 1 {
            out.push(t!("sizes-all"));
        } else if !range.is_empty() {
            let parts = runs(&self.list, &range);
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
