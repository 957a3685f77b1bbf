//! Words of the trade, each with a sentence and what it is called on both sides of the Atlantic.

use crate::texts::{Language, own};

/// A word of the trade.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Word {
    /// As it is said in the language of whoever is at the program.
    pub name: String,
    /// As it is said in the United Kingdom; its page is called so in every language.
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

const ENGLISH: &str = include_str!("../../assets/help/en/glossary.txt");
const GERMAN: &str = include_str!("../../assets/help/de/glossary.txt");

/// All words in the language of whoever is at the program, in the order of the alphabet.
pub fn glossary() -> Vec<Word> {
    words(own())
}

fn words(language: Language) -> Vec<Word> {
    let mut out: Vec<Word> = lines(ENGLISH)
        .map(|[uk, us, sentence]| Word {
            name: uk.to_owned(),
            us: if us.is_empty() { uk } else { us }.to_owned(),
            uk: uk.to_owned(),
            sentence: sentence.to_owned(),
        })
        .collect();
    match language {
        Language::English => {}
        Language::German => translate(&mut out, GERMAN),
    }
    out.sort_by_key(|w| in_alphabet(&w.name));
    out
}

/// A word as it is put in order: small, marks on letters left out.
fn in_alphabet(name: &str) -> String {
    let bare = |letter| match letter {
        'ä' => 'a',
        'ö' => 'o',
        'ü' => 'u',
        'é' => 'e',
        other => other,
    };
    name.to_lowercase().chars().map(bare).collect()
}

/// Puts name and sentence of another language in; a word that it has not stays as it is.
fn translate(words: &mut [Word], text: &str) {
    for [uk, name, sentence] in lines(text) {
        if let Some(word) = words.iter_mut().find(|w| w.uk == uk) {
            (word.name, word.sentence) = (name.to_owned(), sentence.to_owned());
        }
    }
}

/// Lines of three parts: in English `UK | US | sentence`, where both say the same without the second; in other languages
/// `UK | word | sentence`. Lines with `#` are remarks.
fn lines(text: &str) -> impl Iterator<Item = [&str; 3]> {
    let lines = text.lines().map(str::trim).filter(|l| !l.is_empty() && !l.starts_with('#'));
    lines.filter_map(|line| {
        let mut parts = line.splitn(3, '|').map(str::trim);
        Some([parts.next()?, parts.next()?, parts.next()?])
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::BTreeSet;

    #[test]
    fn every_line_is_a_word_with_a_sentence() {
        for (language, text) in [(Language::English, ENGLISH), (Language::German, GERMAN)] {
            let many = text.lines().filter(|l| !l.trim().is_empty() && !l.starts_with('#')).count();
            let all = words(language);
            assert_eq!((all.len(), lines(text).count()), (many, many), "a line without three parts, or a word twice");
            for word in &all {
                assert!(word.sentence.ends_with('.') && word.sentence.len() > 15, "{word:?}");
                assert!(!word.name.is_empty() && !word.us.contains('|'), "{word:?}");
            }
            let names: BTreeSet<&str> = all.iter().map(|w| w.name.as_str()).collect();
            assert_eq!(names.len(), all.len(), "a word twice");
        }
    }

    #[test]
    fn every_word_has_a_sentence_in_each_language() {
        let (english, german) = (words(Language::English), words(Language::German));
        let called = |text| lines(text).map(|[uk, ..]| uk).collect::<BTreeSet<&str>>();
        assert_eq!(called(ENGLISH), called(GERMAN));
        for word in &english {
            let other = german.iter().find(|w| w.uk == word.uk).expect("the same word");
            assert!(other.sentence != word.sentence && other.us == word.us, "{word:?}");
        }
        assert!(german.iter().any(|w| w.uk == "dart" && w.name == "Abnäher"));
        let at = |name: &str| german.iter().position(|w| w.name == name).expect("a word");
        assert!(at("Applikation") < at("Ärmelstellung") && at("Ärmelstellung") < at("Armkugel"));
    }

    #[test]
    fn words_that_differ_say_both() {
        let all = words(Language::English);
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
