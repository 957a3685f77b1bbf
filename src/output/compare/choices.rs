//! Plain choices of the file in words: how a dart is pressed, where a strip lies.

use crate::texts::{current, id, said};

/// What a choice is called in code, and its text. One name has one text, whichever choice it is of.
const CHOICES: [(&str, &str); 62] = [
    ("true", id!("choice-true")),
    ("false", id!("choice-false")),
    ("Cm", id!("choice-cm")),
    ("Mm", id!("choice-mm")),
    ("InchEighths", id!("choice-inch-eighths")),
    ("InchSixteenths", id!("choice-inch-sixteenths")),
    ("English", id!("choice-english")),
    ("German", id!("choice-german")),
    ("Unstated", id!("choice-unstated")),
    ("Adult", id!("choice-adult")),
    ("Body", id!("choice-body")),
    ("House", id!("choice-house")),
    ("Slashed", id!("choice-slashed")),
    ("CutOut", id!("choice-cut-out")),
    ("TwoEnded", id!("choice-two-ended")),
    ("ToStart", id!("choice-to-start")),
    ("ToEnd", id!("choice-to-end")),
    ("Pairs", id!("choice-pairs")),
    ("RightSideUp", id!("choice-right-side-up")),
    ("WrongSideUp", id!("choice-wrong-side-up")),
    ("Full", id!("choice-full")),
    ("LessAllowance", id!("choice-less-allowance")),
    ("Block", id!("choice-block")),
    ("BySewing", id!("choice-by-sewing")),
    ("Plain", id!("choice-plain")),
    ("Mitred", id!("choice-mitred")),
    ("Across", id!("choice-across")),
    ("Circle", id!("choice-circle")),
    ("DrillHole", id!("choice-drill-hole")),
    ("Button", id!("choice-button")),
    ("Buttonhole", id!("choice-buttonhole")),
    ("ZipEnd", id!("choice-zip-end")),
    ("Place", id!("choice-place")),
    ("Text", id!("choice-text")),
    ("ToOne", id!("choice-to-one")),
    ("ToTwo", id!("choice-to-two")),
    ("One", id!("choice-one")),
    ("Two", id!("choice-two")),
    ("Equal", id!("choice-equal")),
    ("Cloth", id!("choice-cloth")),
    ("Lining", id!("choice-lining")),
    ("Interfacing", id!("choice-interfacing")),
    ("Without", id!("choice-without")),
    ("With", id!("choice-with")),
    ("Open", id!("choice-open")),
    ("Folded", id!("choice-folded")),
    ("FoldedToMiddle", id!("choice-folded-to-middle")),
    ("FoldedPart", id!("choice-folded-part")),
    ("InPieces", id!("choice-in-pieces")),
    ("BeforeCutting", id!("choice-before-cutting")),
    ("Along", id!("choice-along")),
    ("Bias", id!("choice-bias")),
    ("Band", id!("choice-band")),
    ("Binding", id!("choice-binding")),
    ("Elastic", id!("choice-elastic")),
    ("Cord", id!("choice-cord")),
    ("Neck", id!("choice-neck")),
    ("Waist", id!("choice-waist")),
    ("Hem", id!("choice-hem")),
    ("Elsewhere", id!("choice-elsewhere")),
    ("Laid", id!("choice-laid")),
    ("Counted", id!("choice-counted")),
];

/// The word of a plain choice: `RightSideUp` becomes `right side up`. One without a text is told by its name.
pub(super) fn word(choice: &impl std::fmt::Debug) -> String {
    let name = format!("{choice:?}");
    match CHOICES.iter().find(|(n, _)| *n == name) {
        Some((_, id)) => said(current(), id, &[]),
        None => plain(&name),
    }
}

/// A name of code in small letters, as several words.
fn plain(name: &str) -> String {
    let mut out = String::new();
    for c in name.chars() {
        if c.is_uppercase() && !out.is_empty() {
            out.push(' ');
        }
        out.extend(c.to_lowercase());
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::base::Language;
    use crate::document::{ClothLaid, Face};
    use crate::texts::speaking;

    #[test]
    fn english_words_are_those_of_the_names_and_german_has_its_own() {
        for (name, id) in CHOICES {
            assert_eq!(said(Language::English, id, &[]), plain(name), "{name}");
        }
        assert_eq!(word(&Face::RightSideUp), "right side up");
        assert_eq!(speaking(Language::German, || word(&ClothLaid::FoldedToMiddle)), "zur Mitte gefaltet");
    }
}
