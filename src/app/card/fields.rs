//! Fields of the file in words, where a card shows them one under the other.

use crate::texts::{id, own, said};

/// Each field with the id of its words.
const FIELDS: &[(&str, &str)] = &[
    ("name", id!("card-field-name")),
    ("note", id!("card-field-note")),
    ("girth", id!("card-field-girth")),
    ("cup", id!("card-field-cup")),
    ("length", id!("card-field-length")),
    ("base", id!("card-field-base")),
    ("sheets", id!("card-field-sheets")),
    ("paper", id!("card-field-paper")),
    ("sizes", id!("card-field-sizes")),
    ("pieces", id!("card-field-pieces")),
    ("lay", id!("card-field-lay")),
    ("on", id!("card-field-on")),
    ("point", id!("card-field-point")),
    ("onto", id!("card-field-onto")),
    ("towards", id!("card-field-towards")),
    ("along", id!("card-field-along")),
    ("turned", id!("card-field-turned")),
    ("overlap", id!("card-field-overlap")),
    ("corners", id!("card-field-corners")),
    ("meant", id!("card-field-meant")),
    ("is", id!("card-field-is")),
    ("body", id!("card-field-body")),
    ("ease_least", id!("card-field-ease-least")),
    ("ease_most", id!("card-field-ease-most")),
    ("drift_most", id!("card-field-drift-most")),
    ("passes", id!("card-field-passes")),
    ("stretch", id!("card-field-stretch")),
    ("centre", id!("card-field-centre")),
    ("foot", id!("card-field-foot")),
    ("intake", id!("card-field-intake")),
    ("tip", id!("card-field-tip")),
    ("bow", id!("card-field-bow")),
    ("allowance", id!("card-field-allowance")),
    ("depth", id!("card-field-depth")),
    ("line", id!("card-field-line")),
    ("over", id!("card-field-over")),
    ("at", id!("card-field-at")),
    ("to", id!("card-field-to")),
    ("fixed", id!("card-field-fixed")),
    ("piece", id!("card-field-piece")),
    ("size", id!("card-field-size")),
    ("text", id!("card-field-text")),
    ("person", id!("card-field-person")),
    ("close", id!("card-field-close")),
    ("share", id!("card-field-share")),
    ("stays", id!("card-field-stays")),
    ("makes", id!("card-field-makes")),
    ("from", id!("card-field-from")),
    ("from_at", id!("card-field-from-at")),
    ("to_at", id!("card-field-to-at")),
    ("from_until", id!("card-field-from-until")),
    ("to_until", id!("card-field-to-until")),
    ("by", id!("card-field-by")),
    ("angle", id!("card-field-angle")),
    ("darts", id!("card-field-darts")),
    ("keep", id!("card-field-keep")),
    ("start", id!("card-field-start")),
    ("end", id!("card-field-end")),
    ("rest", id!("card-field-rest")),
    ("edge", id!("card-field-edge")),
    ("prefix", id!("card-field-prefix")),
    ("width", id!("card-field-width")),
    ("to_by", id!("card-field-to-by")),
    ("edges", id!("card-field-edges")),
    ("set", id!("card-field-set")),
    ("smooth_at", id!("card-field-smooth-at")),
    ("segment to", id!("card-field-segment-to")),
    ("leaving", id!("card-field-leaving")),
    ("arriving", id!("card-field-arriving")),
    ("through", id!("card-field-through")),
    ("leaving heading", id!("card-field-leaving-heading")),
    ("arriving heading", id!("card-field-arriving-heading")),
    ("curve", id!("card-field-curve")),
    ("off", id!("card-field-off")),
    ("off_end", id!("card-field-off-end")),
    ("leaves out", id!("card-field-leaves-out")),
    ("point name", id!("card-field-point-name")),
    ("point note", id!("card-field-point-note")),
    ("line name", id!("card-field-line-name")),
    ("line from", id!("card-field-line-from")),
    ("line note", id!("card-field-line-note")),
    ("dart name", id!("card-field-dart-name")),
    ("dart on", id!("card-field-dart-on")),
    ("dart centre", id!("card-field-dart-centre")),
    ("dart foot", id!("card-field-dart-foot")),
    ("dart intake", id!("card-field-dart-intake")),
    ("dart tip", id!("card-field-dart-tip")),
    ("dart bow", id!("card-field-dart-bow")),
    ("dart allowance", id!("card-field-dart-allowance")),
    ("dart note", id!("card-field-dart-note")),
    ("mark name", id!("card-field-mark-name")),
    ("mark at", id!("card-field-mark-at")),
    ("mark to", id!("card-field-mark-to")),
    ("mark fixed", id!("card-field-mark-fixed")),
    ("mark piece", id!("card-field-mark-piece")),
    ("mark size", id!("card-field-mark-size")),
    ("mark text", id!("card-field-mark-text")),
];

/// A field of the file in words; one that is not known is told as it is written there.
pub(super) fn field_words(field: &str) -> String {
    let known = FIELDS.iter().find(|(known, _)| *known == field);
    known.map_or_else(|| field.replace('_', " "), |(_, id)| said(own(), id, &[]))
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use super::*;
    use crate::document::{Inner, Part, Role};

    #[test]
    fn every_field_that_a_list_of_texts_shows_has_its_words() {
        for (field, _) in FIELDS {
            assert_eq!(field_words(field), field.replace('_', " "));
        }
        let mut seen = BTreeSet::new();
        for file in std::fs::read_dir("examples").expect("the examples").flatten() {
            if file.path().extension().is_none_or(|e| e != "ron") {
                continue;
            }
            let text = std::fs::read_to_string(file.path()).expect("an example");
            let mut draft = crate::file::read(&text).expect("a draft").draft;
            draft.each_text(&mut |at, role, _| {
                let has_own_card = matches!(at.part, Part::Draft | Part::Value(_) | Part::Row(_) | Part::Person(_))
                    || matches!(at.part, Part::Seam(_) | Part::Condition(_) | Part::View(_) | Part::Strip(_))
                    || matches!(at.part, Part::Notion(_) | Part::Material(_) | Part::Step(_) | Part::Kept)
                    || matches!(at.part, Part::Inner(_, Inner::Point | Inner::Edge | Inner::Line, _));
                match (&at.part, at.field.strip_prefix("step ")) {
                    (Part::Piece(_), Some(of_step)) => drop(seen.insert(of_step.to_owned())),
                    (Part::Piece(_), _) => {}
                    _ if has_own_card || *role == Role::OwnName => {}
                    _ => drop(seen.insert(at.field.to_owned())),
                }
            });
        }
        let known: BTreeSet<String> = FIELDS.iter().map(|(field, _)| (*field).to_owned()).collect();
        assert!(seen.len() > 20, "{seen:?}");
        assert_eq!(seen.difference(&known).collect::<Vec<_>>(), [""; 0]);
    }
}
