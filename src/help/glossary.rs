//! Words of the trade, each with a sentence and what it is called on the other side of the Atlantic.

/// A word of the trade.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Word {
    /// As it is said in the United Kingdom, and here.
    pub uk: String,
    /// As it is said in the United States.
    pub us: String,
    /// What it is, in a sentence.
    pub sentence: String,
}

impl Word {
    /// Whether both sides say the same.
    pub fn is_shared(&self) -> bool {
        self.uk == self.us
    }
}

/// All words, in the order of the alphabet.
pub fn glossary() -> Vec<Word> {
    words(include_str!("../../assets/help/glossary.txt"))
}

/// Lines of `UK | US | sentence`; where both say the same, the second is empty. Lines with `#` are remarks.
fn words(text: &str) -> Vec<Word> {
    let lines = text.lines().map(str::trim).filter(|l| !l.is_empty() && !l.starts_with('#'));
    let mut out: Vec<Word> = lines
        .filter_map(|line| {
            let mut parts = line.splitn(3, '|').map(|p| p.trim().to_owned());
            let (uk, us, sentence) = (parts.next()?, parts.next()?, parts.next()?);
            Some(Word { us: if us.is_empty() { uk.clone() } else { us }, uk, sentence })
        })
        .collect();
    out.sort_by_key(|w| w.uk.to_lowercase());
    out
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::BTreeSet;

    #[test]
    fn every_line_is_a_word_with_a_sentence() {
        let text = include_str!("../../assets/help/glossary.txt");
        let lines = text.lines().filter(|l| !l.trim().is_empty() && !l.starts_with('#')).count();
        let all = glossary();
        assert_eq!(all.len(), lines, "a line without three parts");
        for word in &all {
            assert!(word.sentence.ends_with('.') && word.sentence.len() > 15, "{word:?}");
            assert!(!word.uk.is_empty() && !word.us.contains('|'), "{word:?}");
        }
        let names: BTreeSet<&str> = all.iter().map(|w| w.uk.as_str()).collect();
        assert_eq!(names.len(), all.len(), "a word twice");
    }

    #[test]
    fn words_that_differ_say_both() {
        let all = glossary();
        let us = |uk: &str| all.iter().find(|w| w.uk == uk).map(|w| w.us.as_str());
        for (uk, other) in [
            ("toile", "muslin"),
            ("tack", "baste"),
            ("turn-up", "cuff"),
            ("vest", "undershirt"),
            ("waistcoat", "vest"),
            ("wadding", "batting"),
            ("press stud", "snap"),
            ("selvedge", "selvage"),
            ("zip", "zipper"),
        ] {
            assert_eq!(us(uk), Some(other));
        }
        assert!(all.iter().any(|w| w.uk == "ease" && w.is_shared()));
        assert!(all.iter().filter(|w| !w.is_shared()).count() >= 20);
    }
}
