//! Text in PDF files: which signs are used, the subset of the font, and the way back from glyphs to letters.
//!
//! Only `pdf` uses it.

use std::collections::BTreeMap;

use pdf_writer::types::{CidFontType, FontFlags, SystemInfo, UnicodeCmap};
use pdf_writer::{Filter, Finish, Name, Pdf, Rect, Ref, Str};
use subsetter::GlyphRemapper;

use super::font::{self, FONT, FONT_NAME, Glyph};
use super::pdf::PdfError;
use super::pdf_stream::Packer;
use crate::base::digest;

const IDENTITY: SystemInfo<'_> = SystemInfo { registry: Str(b"Adobe"), ordering: Str(b"Identity"), supplement: 0 };

/// Signs that are shown with one font resource.
pub(super) struct Run {
    /// The number of the font resource.
    pub(super) slot: usize,
    /// Two bytes for each glyph.
    pub(super) codes: Vec<u8>,
    /// The letters themselves where glyphs cannot lead back to them: a box that stands for a missing sign.
    pub(super) letters: Option<String>,
}

/// All text of a document.
pub(super) struct TextBook {
    glyphs: GlyphRemapper,
    widths: BTreeMap<u16, f64>,
    /// A glyph leads back to one letter only, but several letters can share a glyph (space and no-break space). So each
    /// slot is a font resource of its own over the same embedded file, and a letter goes to the first slot where its
    /// glyph is free or already its own.
    slots: Vec<BTreeMap<u16, char>>,
}

impl TextBook {
    pub(super) fn new() -> Self {
        let widths = BTreeMap::from([(0, font::face().missing.advance)]);
        Self { glyphs: GlyphRemapper::new(), widths, slots: vec![BTreeMap::from([(0, char::REPLACEMENT_CHARACTER)])] }
    }

    /// The runs that show a text.
    pub(super) fn runs(&mut self, text: &str) -> Vec<Run> {
        let mut runs: Vec<Run> = Vec::new();
        for sign in font::signs(text) {
            let (code, slot) = match sign.glyph {
                Some(glyph) => self.placed(glyph, sign.letter),
                None => (0, 0),
            };
            match runs.last_mut() {
                Some(run) if run.slot == slot && run.letters.is_some() == sign.glyph.is_none() => {
                    run.codes.extend(code.to_be_bytes());
                    if let Some(letters) = &mut run.letters {
                        letters.push(sign.letter);
                    }
                }
                _ => {
                    let letters = sign.glyph.is_none().then(|| sign.letter.to_string());
                    runs.push(Run { slot, codes: code.to_be_bytes().to_vec(), letters });
                }
            }
        }
        runs
    }

    fn placed(&mut self, glyph: Glyph, letter: char) -> (u16, usize) {
        let code = self.glyphs.remap(glyph.number);
        // Most letters were there before.
        if self.slots.first().and_then(|slot| slot.get(&code)) == Some(&letter) {
            return (code, 0);
        }
        self.widths.insert(code, glyph.advance);
        let slot = self.slots.iter().position(|slot| slot.get(&code).is_none_or(|l| *l == letter));
        let slot = slot.unwrap_or_else(|| {
            self.slots.push(BTreeMap::new());
            self.slots.len() - 1
        });
        self.slots[slot].insert(code, letter);
        (code, slot)
    }

    /// The name of a font resource.
    pub(super) fn slot_name(slot: usize) -> String {
        format!("F{slot}")
    }

    /// Writes the font; returns the objects of the font resources in order of their numbers.
    pub(super) fn write(
        &self,
        pdf: &mut Pdf,
        packer: &mut Packer,
        next: &mut impl FnMut() -> Ref,
    ) -> Result<Vec<Ref>, PdfError> {
        let broken = |problem: String| PdfError::Font { problem };
        let subset = subsetter::subset(FONT, 0, &self.glyphs).map_err(|e| broken(e.to_string()))?;
        let file = font::outlines_table(&subset).ok_or_else(|| broken("it has no outlines".to_owned()))?;
        let name = format!("{}+{FONT_NAME}", tag(&file));
        let (file_ref, descriptor) = (next(), next());

        let packed = packer.packed(&file)?;
        let mut stream = pdf.stream(file_ref, &packed);
        stream.filter(Filter::FlateDecode);
        stream.pair(Name(b"Subtype"), Name(b"CIDFontType0C"));
        stream.finish();

        let face = font::face();
        let em = |share: f64| thousandths(share);
        let [left, bottom, right, top] = face.bounds.map(em);
        pdf.font_descriptor(descriptor)
            .name(Name(name.as_bytes()))
            .flags(FontFlags::SYMBOLIC)
            .bbox(Rect::new(left, bottom, right, top))
            .italic_angle(0.0)
            .ascent(em(face.ascent))
            .descent(em(face.descent))
            .cap_height(em(face.cap_height))
            .stem_v(80.0)
            .font_file3(file_ref);

        let mut fonts = Vec::with_capacity(self.slots.len());
        for slot in &self.slots {
            let (font, cid, letters) = (next(), next(), next());
            fonts.push(font);
            pdf.type0_font(font)
                .base_font(Name(format!("{name}-Identity-H").as_bytes()))
                .encoding_predefined(Name(b"Identity-H"))
                .descendant_font(cid)
                .to_unicode(letters);
            let mut dict = pdf.cid_font(cid);
            dict.subtype(CidFontType::Type0)
                .base_font(Name(name.as_bytes()))
                .system_info(IDENTITY)
                .font_descriptor(descriptor)
                .default_width(0.0);
            // Codes are given out one after another from 0, so one run of widths holds them all.
            dict.widths().consecutive(0, self.widths.values().map(|w| em(*w)));
            dict.finish();
            let mut map = UnicodeCmap::new(Name(b"Tracewheel-Letters"), IDENTITY);
            for (code, letter) in slot {
                map.pair(*code, *letter);
            }
            let map = packer.packed(&map.finish())?;
            let mut stream = pdf.cmap(letters, &map);
            stream.filter(Filter::FlateDecode);
        }
        Ok(fonts)
    }
}

/// Shares of the em in the thousandths that PDF counts in, to 0.001 of them.
fn thousandths(share: f64) -> f32 {
    crate::base::round_half_away(share * 1000.0, 1e-3) as f32
}

/// Six capital letters that mark a subset, from its content.
fn tag(file: &[u8]) -> String {
    let mut rest = digest(&[file]);
    (0..6)
        .map(|_| {
            let letter = b'A' + (rest % 26) as u8;
            rest /= 26;
            char::from(letter)
        })
        .collect()
}
