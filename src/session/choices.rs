//! What of a part is chosen rather than typed: kinds, counts, yes or no. The one list of it, as `document::texts` is that of texts:
//! cards show it and one command changes it.

use crate::base::Language;
use crate::document::{
    Audience, ClothLaid, Draft, MaterialKind, Nap, Part, Shrinks, StripGrain, StripInLay, StripKind, StripPlace,
    Wearers, WornAs,
};
use crate::texts::id;

/// How something is chosen.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Choosing {
    /// One of these words, by its place; their ids, to be said.
    Words(&'static [&'static str]),
    /// Yes (1) or no (0).
    YesNo,
    /// A whole number.
    Count,
}

/// Something that is chosen, as it stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Choice {
    /// Its field in the draft.
    pub field: &'static str,
    /// How it is chosen.
    pub how: Choosing,
    /// What is chosen now.
    pub now: u32,
}

/// A field of the draft that is chosen.
trait Chosen {
    fn how(&self) -> Choosing;
    fn now(&self) -> u32;
    /// What cannot be chosen leaves it as it is.
    fn put(&mut self, to: u32);
}

/// A field that has some words.
trait Worded: Copy + PartialEq + 'static {
    const ALL: &'static [Self];
    /// Ids of their words.
    const WORDS: &'static [&'static str];
}

impl<T: Worded> Chosen for T {
    fn how(&self) -> Choosing {
        Choosing::Words(T::WORDS)
    }

    fn now(&self) -> u32 {
        T::ALL.iter().position(|one| one == self).map_or(0, |i| i as u32)
    }

    fn put(&mut self, to: u32) {
        if let Some(one) = T::ALL.get(to as usize) {
            *self = *one;
        }
    }
}

impl Chosen for bool {
    fn how(&self) -> Choosing {
        Choosing::YesNo
    }

    fn now(&self) -> u32 {
        u32::from(*self)
    }

    fn put(&mut self, to: u32) {
        *self = to > 0;
    }
}

/// Most that can be counted: more of one thing in one garment is a slip of the finger.
const MOST: u32 = 999;

impl Chosen for u32 {
    fn how(&self) -> Choosing {
        Choosing::Count
    }

    fn now(&self) -> u32 {
        *self
    }

    fn put(&mut self, to: u32) {
        *self = to.min(MOST);
    }
}

impl Chosen for Audience {
    fn how(&self) -> Choosing {
        Choosing::Words(&[id!("chosen-unsaid"), id!("chosen-adults"), id!("chosen-children")])
    }

    fn now(&self) -> u32 {
        match self {
            Self::Unstated => 0,
            Self::Adult => 1,
            Self::Child { .. } => 2,
        }
    }

    fn put(&mut self, to: u32) {
        if to != self.now() {
            *self = match to {
                1 => Self::Adult,
                2 => Self::Child { from: String::new(), to: String::new() },
                _ => Self::Unstated,
            };
        }
    }
}

macro_rules! worded {
    ($($kind:ident: $($one:ident $word:expr),*;)*) => {
        $(impl Worded for $kind {
            const ALL: &'static [Self] = &[$(Self::$one),*];
            const WORDS: &'static [&'static str] = &[$($word),*];
        })*
    };
}

worded! {
    Language: English id!("chosen-language-english"), German id!("chosen-language-german");
    StripKind: Band id!("chosen-band"), Binding id!("chosen-binding"), Elastic id!("chosen-elastic"), Cord id!("chosen-cord");
    StripGrain: Along id!("chosen-grain-along"), Across id!("chosen-grain-across"), Bias id!("chosen-grain-bias");
    StripPlace: Unstated id!("chosen-unsaid"), Neck id!("chosen-place-neck"), Waist id!("chosen-place-waist"), Hem id!("chosen-place-hem"), Elsewhere id!("chosen-place-elsewhere");
    MaterialKind: Cloth id!("chosen-cloth"), Lining id!("chosen-lining"), Interfacing id!("chosen-interfacing");
    Nap: Without id!("chosen-nap-without"), With id!("chosen-nap-with");
    ClothLaid: Open id!("chosen-laid-open"), Folded id!("chosen-laid-folded"), FoldedToMiddle id!("chosen-laid-to-middle"), FoldedPart id!("chosen-laid-part");
    Shrinks: InPieces id!("chosen-shrinks-in-pieces"), BeforeCutting id!("chosen-shrinks-before");
    StripInLay: Counted id!("chosen-in-lay-counted"), Laid id!("chosen-in-lay-laid");
    WornAs: Unstated id!("chosen-unsaid"), Outerwear id!("chosen-worn-outerwear"), Sleepwear id!("chosen-worn-sleepwear"), TightSleepwear id!("chosen-worn-tight"), Other id!("chosen-worn-other");
    Wearers: Anyone id!("chosen-wearers-anyone"), Boys id!("chosen-wearers-boys"), Girls id!("chosen-wearers-girls");
}

// A language that is added gets its word here.
const _: () = assert!(<Language as Worded>::ALL.len() == Language::ALL.len());

/// Sees a field that is chosen.
type See<'a> = dyn FnMut(&'static str, &mut dyn Chosen) + 'a;

/// Shows `see` every field of a part that is chosen; says whether there is such a part.
fn each(draft: &mut Draft, part: &Part, see: &mut See<'_>) -> bool {
    match part {
        Part::Draft => {
            see("language", &mut draft.language);
            see("audience", &mut draft.audience);
            see("worn_as", &mut draft.care.worn_as);
            see("wearers", &mut draft.care.wearers);
            see("survey", &mut draft.chart.survey);
            true
        }
        Part::Strip(name) => draft.strips.iter_mut().find(|s| s.name == *name).is_some_and(|strip| {
            see("kind", &mut strip.kind);
            see("count", &mut strip.count);
            see("layers", &mut strip.layers);
            see("grain", &mut strip.grain);
            see("place", &mut strip.place);
            see("fastened", &mut strip.fastened);
            see("in_lay", &mut strip.in_lay);
            true
        }),
        Part::Notion(name) => draft.notions.iter_mut().find(|n| n.name == *name).is_some_and(|notion| {
            see("count", &mut notion.count);
            true
        }),
        Part::Material(name) => draft.materials.iter_mut().find(|m| m.name == *name).is_some_and(|material| {
            see("kind", &mut material.kind);
            see("nap", &mut material.nap);
            see("laid", &mut material.laid);
            see("shrinks", &mut material.shrinks);
            true
        }),
        _ => false,
    }
}

/// What of a part is chosen, as it stands.
pub fn choices(draft: &Draft, part: &Part) -> Vec<Choice> {
    let mut out = Vec::new();
    each(&mut draft.only(part), part, &mut |field, own| out.push(Choice { field, how: own.how(), now: own.now() }));
    out
}

/// Chooses; says whether there is such a field.
pub(super) fn choose(draft: &mut Draft, part: &Part, field: &str, to: u32) -> bool {
    let mut found = false;
    each(draft, part, &mut |name, own| {
        if name == field {
            own.put(to);
            found = true;
        }
    });
    found
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::Strip;

    #[test]
    fn every_word_of_a_choice_can_be_chosen_and_stays_chosen() {
        let mut draft =
            Draft { strips: vec![Strip { name: "tie".to_owned(), ..Strip::default() }], ..Draft::default() };
        let mut many = 0;
        for part in [Part::Draft, Part::Strip("tie".to_owned())] {
            for choice in choices(&draft, &part) {
                let most = match choice.how {
                    Choosing::Words(words) => words.len() as u32,
                    Choosing::YesNo => 2,
                    Choosing::Count => 4,
                };
                for to in 0..most {
                    assert!(choose(&mut draft, &part, choice.field, to));
                    let now = choices(&draft, &part).iter().find(|c| c.field == choice.field).map(|c| c.now);
                    assert_eq!(now, Some(to), "{part} {}", choice.field);
                    many += 1;
                }
                // What is beyond changes nothing but a count, which ends somewhere.
                choose(&mut draft, &part, choice.field, 5_000);
            }
        }
        assert_eq!(many, 2 + 3 + 5 + 3 + 2 + 4 + 4 + 4 + 3 + 5 + 2 + 2);
        assert_eq!(draft.strips[0].count, MOST);
        assert!(!choose(&mut draft, &Part::Strip("gone".to_owned()), "count", 1));
    }
}
