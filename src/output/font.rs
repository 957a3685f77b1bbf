//! The one font of every sheet: what it can show and how wide text is in it.
//!
//! Inter Regular is part of the program, so that sheets look alike everywhere. Letters are placed one by one: no
//! ligatures, no kerning, no script that joins its letters. Embedding it in a file is `pdf_text`'s.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::LazyLock;

use skrifa::instance::{LocationRef, Size};
use skrifa::{FontRef, MetadataProvider, Tag};
use unicode_normalization::UnicodeNormalization;

/// The font file. Its licence lies beside it.
pub(super) const FONT: &[u8] = include_bytes!("../../assets/fonts/Inter-Regular.otf");
/// Its name in files.
pub(super) const FONT_NAME: &str = "Inter-Regular";
/// The first sign that may combine with the one before it: a text of signs before it alone is its own composed form (Unicode, NFC).
const COMBINING: char = '\u{300}';

/// What is asked of the font, read once. Lengths in shares of the em.
pub(super) struct Face {
    glyphs: BTreeMap<char, Glyph>,
    /// Those of the signs before [`COMBINING`], by their code: most of what is ever written.
    common: Vec<Option<Glyph>>,
    /// The box that stands for a sign the font lacks.
    pub(super) missing: Glyph,
    pub(super) ascent: f64,
    /// Below zero.
    pub(super) descent: f64,
    pub(super) cap_height: f64,
    /// Left, bottom, right, top of all glyphs together, y up.
    pub(super) bounds: [f64; 4],
}

/// A drawn sign.
#[derive(Clone, Copy)]
pub(super) struct Glyph {
    /// Its number in the font file.
    pub(super) number: u16,
    /// How far it moves the pen, em.
    pub(super) advance: f64,
}

/// A sign of a text with its glyph; without one the font lacks it.
pub(super) struct Sign {
    pub(super) letter: char,
    pub(super) glyph: Option<Glyph>,
}

// A font file that could not be read would give an empty table: every sign is then missing, and writing it is an error.
static FACE: LazyLock<Face> = LazyLock::new(|| {
    let empty = Face {
        glyphs: BTreeMap::new(),
        common: Vec::new(),
        missing: Glyph { number: 0, advance: 0.5 },
        ascent: 0.75,
        descent: -0.25,
        cap_height: 0.7,
        bounds: [0.0, -0.25, 1.0, 0.75],
    };
    FontRef::new(FONT).map_or(empty, |font| read(&font))
});

fn read(font: &FontRef<'_>) -> Face {
    let metrics = font.metrics(Size::unscaled(), LocationRef::default());
    let widths = font.glyph_metrics(Size::unscaled(), LocationRef::default());
    let em = f64::from(metrics.units_per_em.max(1));
    let share = |units: f32| f64::from(units) / em;
    let glyph = |number: u16| Glyph { number, advance: share(widths.advance_width(number.into()).unwrap_or(0.0)) };
    let mut glyphs = BTreeMap::new();
    for (code, number) in font.charmap().mappings() {
        if let (Some(letter), Ok(number)) = (char::from_u32(code), u16::try_from(number.to_u32()))
            && number != 0
        {
            glyphs.insert(letter, glyph(number));
        }
    }
    let bounds = metrics.bounds.unwrap_or_default();
    let common = ('\0'..COMBINING).map(|letter| glyphs.get(&letter).copied()).collect();
    Face {
        glyphs,
        common,
        missing: glyph(0),
        ascent: share(metrics.ascent),
        descent: share(metrics.descent),
        cap_height: share(metrics.cap_height.unwrap_or(0.7 * metrics.units_per_em as f32)),
        bounds: [bounds.x_min, bounds.y_min, bounds.x_max, bounds.y_max].map(share),
    }
}

impl Face {
    fn glyph(&self, letter: char) -> Option<Glyph> {
        match self.common.get(letter as usize) {
            Some(known) => *known,
            None => self.glyphs.get(&letter).copied(),
        }
    }
}

/// The font's table.
pub(super) fn face() -> &'static Face {
    &FACE
}

/// The signs that are drawn for a text: composed, with spaces for control signs.
pub(super) fn signs(text: &str) -> impl Iterator<Item = Sign> + '_ {
    // Where nothing combines, all is composed already.
    let (plain, rest) = if text.chars().all(|c| c < COMBINING) { (text, "") } else { ("", text) };
    plain
        .chars()
        .chain(rest.nfc())
        .map(|c| if c.is_control() { ' ' } else { c })
        .map(|letter| Sign { letter, glyph: FACE.glyph(letter) })
}

/// Width of a text whose em is `size`, in the unit of `size`.
pub fn text_width(text: &str, size: f64) -> f64 {
    size * signs(text).map(|s| s.glyph.unwrap_or(FACE.missing).advance).sum::<f64>()
}

/// Height of a capital above the baseline where the em is `size`.
pub fn cap_height(size: f64) -> f64 {
    size * FACE.cap_height
}

/// The signs of these texts that the font lacks. A box is drawn for each; the text behind it stays exact.
pub fn missing_signs<'a>(texts: impl IntoIterator<Item = &'a str>) -> BTreeSet<char> {
    texts.into_iter().flat_map(signs).filter(|s| s.glyph.is_none()).map(|s| s.letter).collect()
}

/// `text` in lines no wider than `width`, broken at spaces, and within a word only where it is wider than a line.
///
/// A single sign wider than the line has one to itself. An empty text has no lines.
pub fn wrapped(text: &str, size: f64, width: f64) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    let mut line = String::new();
    // What a space holds together that may not be broken stays together.
    for word in text.split(|c: char| c.is_whitespace() && c != '\u{a0}').filter(|w| !w.is_empty()) {
        let longer = if line.is_empty() { word.to_owned() } else { format!("{line} {word}") };
        if text_width(&longer, size) <= width {
            line = longer;
            continue;
        }
        if !line.is_empty() {
            lines.push(std::mem::take(&mut line));
        }
        let mut reach = 0.0;
        for sign in word.nfc() {
            let advance = text_width(sign.encode_utf8(&mut [0; 4]), size);
            if reach + advance > width && !line.is_empty() {
                lines.push(std::mem::take(&mut line));
                reach = 0.0;
            }
            reach += advance;
            line.push(sign);
        }
    }
    if !line.is_empty() {
        lines.push(line);
    }
    lines
}

/// The outlines table of a subset font file, the part that a PDF holds.
pub(super) fn outlines_table(font: &[u8]) -> Option<Vec<u8>> {
    let font = FontRef::new(font).ok()?;
    Some(font.table_data(Tag::new(b"CFF "))?.as_bytes().to_vec())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_taken_for_composed_is_and_common_signs_are_those_of_the_table() {
        for letter in '\0'..COMBINING {
            let alone = letter.to_string();
            assert!(alone.nfc().eq(alone.chars()), "{letter:?}");
            // Beside each other they do not combine either.
            let both = format!("A{letter}a{letter}");
            assert!(both.nfc().eq(both.chars()), "{letter:?}");
            let (known, told) = (FACE.glyphs.get(&letter), FACE.glyph(letter));
            assert_eq!(known.map(|g| (g.number, g.advance)), told.map(|g| (g.number, g.advance)), "{letter:?}");
        }
        assert!(FACE.glyph('·').is_some() && FACE.glyph('–').is_some() && FACE.glyph('日').is_none());
        // One that combines: as wide as the composed letter.
        assert_eq!(text_width("e\u{301}", 1.0), text_width("é", 1.0));
    }
}
