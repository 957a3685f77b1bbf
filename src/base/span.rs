//! A stretch of a formula's text.

/// From `start` up to but not including `end`, counted in bytes of the text; always on letter borders.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub struct Span {
    /// First byte.
    pub start: usize,
    /// One past the last byte.
    pub end: usize,
}

impl Span {
    /// From `start` to `end`.
    pub fn new(start: usize, end: usize) -> Self {
        Self { start, end }
    }

    /// The smallest span that holds both.
    pub fn to(self, other: Self) -> Self {
        Self { start: self.start.min(other.start), end: self.end.max(other.end) }
    }

    /// The text it covers.
    pub fn of(self, text: &str) -> &str {
        text.get(self.start..self.end).unwrap_or("")
    }

    /// Start and end counted in letters, as people and the machine contract count.
    pub fn in_letters(self, text: &str) -> (usize, usize) {
        let count = |to: usize| text.char_indices().take_while(|(i, _)| *i < to).count();
        (count(self.start), count(self.end))
    }
}
