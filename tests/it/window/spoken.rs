//! The language of the window: chosen in the preferences, spoken from the next frame on, kept, and left again; and nothing that is told
//! in German holds words of English.

use std::collections::BTreeSet;

use egui::{Key, Modifiers};

use super::stage::{Stage, Told};
use crate::texts::{catalogues, has_english};

const CTRL_SHIFT: Modifiers = Modifiers { alt: false, ctrl: true, shift: true, mac_cmd: false, command: true };

const ENGLISH: [&str; 3] = ["error", "warning", "note"];
const GERMAN: [&str; 3] = ["Fehler", "Warnung", "Hinweis"];

/// Chooses German as a person does.
fn in_german(stage: &mut Stage) {
    stage.ctrl(Key::Comma);
    assert!(stage.seen("language: as the system").chosen, "{}", stage.all());
    stage.click("language: Deutsch");
}

#[test]
fn german_is_chosen_worked_in_kept_and_left_again() {
    let mut stage = Stage::on("straight-skirt.ron");
    let before = stage.text();
    let found = counted(&stage, ENGLISH);
    assert!(found > 0, "the flaw of this draft: {}", stage.all());
    in_german(&mut stage);
    assert!(stage.seen("Sprache: Deutsch").chosen && !stage.seen("Sprache: wie das System").chosen);
    assert!(stage.says("Einstellungen") && !stage.says("Preferences"), "{}", stage.all());
    // A language is found in every other one by its own name.
    assert!(stage.find("Sprache: English").is_some());
    assert_eq!((counted(&stage, GERMAN), counted(&stage, ENGLISH)), (found, 0));
    // Contents, findings, strip, menus, card.
    let seen = ["Maßtabelle", "Prüfung", "andere Größen", "Hilfe zu den Größen", "Hinzufügen", "Ansicht", "Titel"];
    for words in seen.into_iter().chain(["Sprache der Veröffentlichung"]) {
        assert!(stage.says(words), "{words}: {}", stage.all());
    }
    let finding = |t: &&Told| GERMAN.iter().any(|word| t.name.starts_with(&format!("{word}: ")));
    assert!(stage.told.iter().filter(finding).all(|t| !has_english(&t.name)), "{}", stage.all());
    stage.ctrl(Key::Comma);

    // A dialog, what it refuses, an edit.
    stage.key(CTRL_SHIFT, Key::N);
    assert!(stage.says("Größe anlegen") && stage.says("auf welcher Achse"), "{}", stage.all());
    stage.answer(&[("Bezeichnung", "104"), ("nach welcher Größe", "99")], "Größe anlegen");
    assert!(stage.says("es gibt keine Größe 99, nach der sie stehen könnte"), "{}", stage.all());
    stage.answer(&[("nach welcher Größe", "")], "Größe anlegen");
    assert!(stage.seen("Größe 104").chosen, "{}", stage.all());
    stage.ctrl(Key::S);
    assert!(stage.says("ist gespeichert"), "{}", stage.all());
    assert!(stage.text().contains("\"104\"") && stage.text() != before);
    stage.ctrl(Key::Z);
    assert!(stage.says("rückgängig gemacht: "), "{}", stage.all());
    stage.ctrl(Key::S);
    assert_eq!(stage.text(), before, "no language is in a draft that says none");

    // It is kept, and the window begins in it.
    assert!(stage.own_text().contains("language: Some(de)"), "{}", stage.own_text());
    stage.ctrl(Key::Q);
    let (folder, file) = stage.vanish();
    let again = move || left_again(Stage::start(folder, Some(file)), found);
    std::thread::spawn(again).join().unwrap();
}

/// How many findings are told, under these words for how bad they are.
fn counted(stage: &Stage, words: [&str; 3]) -> usize {
    let begins = |t: &&Told| words.iter().any(|word| t.name.starts_with(&format!("{word}: ")));
    stage.told.iter().filter(begins).count()
}

/// The window that is begun later, in a thread that speaks the system's language.
fn left_again(mut stage: Stage, found: usize) {
    assert!(stage.says("Maßtabelle") && counted(&stage, GERMAN) == found, "{}", stage.all());

    // Back again: nothing German is left, and what was told goes.
    stage.ctrl(Key::S);
    assert!(stage.says("ist gespeichert"));
    stage.ctrl(Key::Comma);
    stage.click("Sprache: English");
    assert!(stage.seen("language: English").chosen && stage.says("Preferences"));
    assert!(!stage.says("ist gespeichert") && !stage.says("Maßtabelle"), "{}", stage.all());
    assert_eq!((counted(&stage, GERMAN), counted(&stage, ENGLISH)), (0, found));
    stage.click("language: as the system");
    assert!(stage.says("Preferences") && stage.own_text().contains("language: None"), "{}", stage.own_text());
}

/// A first page that nobody touched stays in its place when another language is begun with.
#[test]
fn the_first_page_is_in_the_language_that_was_chosen() {
    let mut stage = Stage::empty();
    in_german(&mut stage);
    let (folder, _) = stage.vanish();
    let again = move || {
        let stage = Stage::start(folder, None);
        assert!(stage.find("Beispiel trousers öffnen").is_some() && stage.says("Ein Zeichentisch"), "{}", stage.all());
    };
    std::thread::spawn(again).join().unwrap();
}

/// What may be said in English: why, and what is told there. What nobody says any more must go.
const ALLOWED: &[(&str, fn(&Told) -> bool)] =
    &[("the booklet is in the language of its draft", |told| told.name.starts_with("Seite 1 der Anleitung:"))];

/// What may be English in German: the draft's own words, and the languages' names for themselves.
struct Catalogue {
    typed: String,
    /// Texts of more than one word that are others in German.
    texts: BTreeSet<String>,
    ids: BTreeSet<String>,
}

impl Catalogue {
    fn of(typed: &str) -> Self {
        let [english, german] = catalogues();
        let is_other = |(id, text): &(&String, &String)| german[*id] != **text && !text.contains('{');
        let texts = english.iter().filter(is_other).map(|(_, text)| text.trim().to_owned());
        let texts: BTreeSet<String> = texts.filter(|t| t.contains(' ')).collect();
        assert!(texts.len() > 300, "{}", texts.len());
        Self { typed: plain(typed), texts, ids: english.into_keys().collect() }
    }

    /// Why words are taken for English, or for the name of a text instead of the text.
    fn in_words(&self, words: &str) -> Option<String> {
        if self.typed.contains(&plain(words)) {
            return None;
        }
        if words.contains('-') && self.ids.contains(words) {
            return Some(format!("the id {words}"));
        }
        if let Some(text) = self.texts.iter().find(|t| words.contains(t.as_str())) {
            return Some(format!("{words} (holds: {text})"));
        }
        // In backticks stand words of formulas and of the file; pages of help are called by their ids, parts by their names in the draft.
        let outside: String = words.split('`').step_by(2).collect();
        let outside = outside.strip_prefix("Seite ").unwrap_or(&outside);
        let is_name = |word: &str| word.contains(['_', '/']) || word == outside;
        let left = outside.split(' ').filter(|w| !is_name(w.trim_end_matches([',', '.'])));
        has_english(&left.collect::<Vec<_>>().join(" ")).then(|| words.to_owned())
    }
}

fn plain(text: &str) -> String {
    text.replace('_', " ").to_lowercase()
}

/// A window in German on the skirt, as a person left it.
fn window(preferences: &str, chosen: &str) -> Stage {
    let folder = tempfile::tempdir().unwrap();
    std::fs::create_dir(folder.path().join("own")).unwrap();
    std::fs::write(folder.path().join("own/preferences.ron"), preferences).unwrap();
    let file = folder.path().join("draft.ron");
    std::fs::copy(super::stage::example("straight-skirt.ron"), &file).unwrap();
    let mut stage = Stage::start(folder, Some(file));
    for name in chosen.split(' ').filter(|n| !n.is_empty()) {
        // In the contents, whatever kinds of parts are called.
        let is_it = |t: &&Told| t.name.ends_with(&format!(" {name}")) && t.rect.is_some_and(|r| r.right() < CONTENTS);
        let at = stage.told.iter().find(is_it).and_then(|t| t.rect);
        let at = at.unwrap_or_else(|| panic!("{name} is not in the contents: {}", stage.all()));
        stage.click_at(at.center());
    }
    stage
}

/// Parts of the smock as the finder finds them, each with the word for what it is.
const PARTS: [(&str, &str); 8] = [
    ("front", "Schnittteil"),
    ("front_block.tip", "Punkt"),
    ("front_block.armhole", "Kante"),
    ("pocket_rim", "Naht"),
    ("tie", "Streifen"),
    ("button", "Zutat"),
    ("main", "Material"),
    ("bust", "Zeile"),
];

/// Where the card begins and the window ends; between which heights it is seen, px.
const CARD: (f32, f32) = (1290.0, 1600.0);
const HEIGHTS: (f32, f32) = (175.0, 800.0);

#[test]
fn german_words_have_room_on_every_card() {
    let mut stage = Stage::on("work-smock.ron");
    in_german(&mut stage);
    stage.ctrl(Key::Comma);
    for (name, kind) in PARTS {
        stage.find_and_do(name);
        stage.rest();
        let on_card = |t: &&Told| {
            t.rect.is_some_and(|r| r.right() > CARD.0 + 1.0 && (HEIGHTS.0..HEIGHTS.1).contains(&r.center().y))
        };
        let told: Vec<&Told> = stage.told.iter().filter(on_card).collect();
        assert!(told.iter().any(|t| t.name == kind), "{name}: {}", stage.all());
        // A line that is longer than its field rolls within it.
        let is_beyond = |r: egui::Rect, t: &Told| t.can_be_used && (r.left() < CARD.0 || r.right() > CARD.1);
        let beyond: Vec<&&Told> = told.iter().filter(|t| t.rect.is_some_and(|r| is_beyond(r, t))).collect();
        assert!(beyond.is_empty(), "{name}: {beyond:?}");
    }
}

/// Where the contents end; where the menus stand, px.
const CONTENTS: f32 = 250.0;
const MENUS: (f32, f32) = (700.0, 44.0);

/// The buttons of the menus, from left to right.
fn menus(stage: &Stage) -> Vec<Told> {
    let stands = |t: &&Told| t.can_be_used && t.rect.is_some_and(|r| r.right() < MENUS.0 && r.bottom() < MENUS.1);
    let mut all: Vec<Told> = stage.told.iter().filter(stands).cloned().collect();
    all.sort_by_key(|t| t.rect.map_or(0, |r| r.left() as i32));
    all
}

/// The items of a menu, by a click on it: what can be used now and could not before at that place.
fn items(stage: &mut Stage, menu: &Told) -> Vec<Told> {
    let before = stage.told.clone();
    stage.click_at(menu.rect.unwrap().center());
    let is_new = |t: &&Told| t.can_be_used && !before.iter().any(|b| (&b.name, b.rect) == (&t.name, t.rect));
    stage.told.iter().filter(is_new).cloned().collect()
}

/// Goes through all menus: each action that can be done with what is chosen is done once, in a window of its own, and everything that
/// is told then is looked at.
#[test]
fn no_action_in_german_says_a_word_of_english() {
    let mut stage = Stage::on("straight-skirt.ron");
    let english = Catalogue::of(&stage.text());
    in_german(&mut stage);
    let preferences = stage.own_text();
    let (mut done, mut left, mut needed) = (BTreeSet::new(), BTreeSet::new(), BTreeSet::new());
    let mut look = |all: &[Told], at: &str| {
        for told in all {
            for words in [&told.name, &told.value] {
                let Some(why) = english.in_words(words) else { continue };
                match ALLOWED.iter().find(|(_, is_it)| is_it(told)) {
                    Some((whose, _)) => drop(needed.insert(*whose)),
                    None => drop(left.insert(format!("{at}: {why}"))),
                }
            }
        }
    };
    for chosen in ["", "front", "front front.waist_side", "side"] {
        let mut stage = window(&preferences, chosen);
        look(&stage.told.clone(), &format!("chosen {chosen:?}"));
        let all = menus(&stage);
        assert_eq!(all.len(), 5, "{all:?}");
        for (m, menu) in all.iter().enumerate() {
            let items = items(&mut stage, menu);
            assert!(items.len() > 3, "{}: {items:?}", menu.name);
            look(&items, &menu.name);
            stage.press(Key::Escape);
            for item in items.iter().filter(|i| i.enabled) {
                if !done.insert((m, item.name.clone())) {
                    continue;
                }
                let mut own = window(&preferences, chosen);
                own.click_at(menus(&own)[m].rect.unwrap().center());
                own.click_at(item.rect.unwrap().center());
                look(&own.told.clone(), &item.name);
            }
        }
    }
    assert!(done.len() > 80, "{}: {done:?}", done.len());
    assert!(left.is_empty(), "English in German, {}:\n{}", left.len(), left.into_iter().collect::<Vec<_>>().join("\n"));
    let idle: Vec<&str> = ALLOWED.iter().map(|(whose, _)| *whose).filter(|whose| !needed.contains(whose)).collect();
    assert_eq!(idle, [""; 0], "nothing of these is English any more: take them out of the list");
}
