//! A picture as SVG: one unit of the drawing is one millimetre (W3C SVG, `width` in mm and a `viewBox` in mm).
//!
//! Layers are groups with a name as their title. It can stand by itself as a file or within an HTML page: every id begins with a prefix.
//! Same picture, same text; coordinates are written to 0.001 mm.

use std::collections::BTreeSet;
use std::sync::Arc;

use kurbo::{BezPath, PathEl, Point};
use thiserror::Error;

use super::drawing::{Align, Ink, Item, Picture, Shared, Text};
use super::font;
use super::pdf::MAX_SIDE;
use crate::base::round_half_away;
use crate::texts::{own_number, say};

/// How a picture is written.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct SvgSettings {
    /// What it shows: its title, read out where it is not seen.
    pub title: String,
    /// What all ids begin with, so that several drawings can stand in one page: letters, digits, `-` and `_`; anything else becomes `-`.
    pub prefix: String,
    /// Whether it stands within an HTML page, without the head of a file.
    pub inline: bool,
}

/// Why a picture cannot be written.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum SvgError {
    /// A page without a size.
    #[error("{}", say!("output-drawing-empty", title, width = own_number(width), height = own_number(height)))]
    Empty {
        /// Its title.
        title: String,
        /// mm.
        width: f64,
        /// mm.
        height: f64,
    },
    /// A coordinate that is no number, or far beyond any sheet.
    #[error("{}", say!("output-drawing-place", title))]
    NotFinite {
        /// Its title.
        title: String,
    },
}

/// The text of an SVG drawing.
///
/// # Errors
/// See [`SvgError`]. Signs that the font lacks are written as they are: a reader may have them.
pub fn write(picture: &Picture, settings: &SvgSettings) -> Result<String, SvgError> {
    let (width, height) = (picture.width, picture.height);
    if !(width.is_finite() && height.is_finite() && width > 0.0 && height > 0.0) {
        return Err(SvgError::Empty { title: settings.title.clone(), width, height });
    }
    let mut writer = Writer {
        body: String::new(),
        defs: String::new(),
        prefix: named(slug(&settings.prefix)),
        ids: BTreeSet::new(),
        shared: Vec::new(),
        clips: 0,
        sound: true,
    };
    let title = writer.id("title");
    writer.items(&picture.items, 1);
    let (w, h) = (writer.mm(width), writer.mm(height));
    if !writer.sound {
        return Err(SvgError::NotFinite { title: settings.title.clone() });
    }
    let head = if settings.inline { "" } else { "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n" };
    let defs = if writer.defs.is_empty() { String::new() } else { format!("<defs>\n{}</defs>\n", writer.defs) };
    Ok(format!(
        "{head}<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{w}mm\" height=\"{h}mm\" viewBox=\"0 0 {w} {h}\" \
         role=\"img\" aria-labelledby=\"{title}\">\n<title id=\"{title}\">{}</title>\n{defs}{}</svg>\n",
        escaped(&settings.title),
        writer.body
    ))
}

struct Writer {
    body: String,
    /// Clips and shared things.
    defs: String,
    prefix: String,
    ids: BTreeSet<String>,
    /// What was written once, with its id.
    shared: Vec<(Arc<Shared>, String)>,
    clips: usize,
    /// Whether all numbers were usable.
    sound: bool,
}

impl Writer {
    fn items(&mut self, items: &[Item], depth: usize) {
        for item in items {
            self.item(item, depth);
        }
    }

    fn item(&mut self, item: &Item, depth: usize) {
        let pad = " ".repeat(depth);
        match item {
            Item::Stroke { path, .. } | Item::Fill { path, .. } if path.is_empty() => {}
            Item::Stroke { path, pen } => {
                let (d, width) = (self.path(path), self.mm(pen.width));
                let cap = if pen.dashes.is_empty() { "round" } else { "butt" };
                let dashes: Vec<String> = pen.dashes.iter().map(|l| self.mm(*l)).collect();
                let dashes = if dashes.is_empty() {
                    String::new()
                } else {
                    format!(" stroke-dasharray=\"{}\"", dashes.join(" "))
                };
                self.body += &format!(
                    "{pad}<path d=\"{d}\" fill=\"none\" stroke=\"{}\" stroke-width=\"{width}\" stroke-linecap=\"{cap}\" \
                     stroke-linejoin=\"round\"{dashes}/>\n",
                    colour(pen.ink)
                );
            }
            Item::Fill { path, ink } => {
                let d = self.path(path);
                self.body += &format!("{pad}<path d=\"{d}\" fill=\"{}\"/>\n", colour(*ink));
            }
            Item::Photo { photo, rect } => {
                let [x, y, width, height] = [rect.x0, rect.y0, rect.width(), rect.height()].map(|v| self.mm(v));
                self.body += &format!(
                    "{pad}<image x=\"{x}\" y=\"{y}\" width=\"{width}\" height=\"{height}\" preserveAspectRatio=\"none\" href=\"{}\"/>\n",
                    photo.data_address()
                );
            }
            Item::Text(text) => self.text(text, &pad),
            Item::Clip { rect, items } => {
                let id = self.clip(rect.x0, rect.y0, rect.width(), rect.height());
                self.body += &format!("{pad}<g clip-path=\"url(#{id})\">\n");
                self.items(items, depth + 1);
                self.body += &format!("{pad}</g>\n");
            }
            Item::Shared { what, at } => {
                let id = self.once(what);
                let (x, y) = (self.mm(at.x), self.mm(at.y));
                self.body += &format!("{pad}<use href=\"#{id}\" x=\"{x}\" y=\"{y}\"/>\n");
            }
            Item::Group { layer: None, items } => self.items(items, depth),
            Item::Group { layer: Some(name), items } => {
                let id = self.id(name);
                self.body += &format!("{pad}<g id=\"{id}\">\n{pad} <title>{}</title>\n", escaped(name));
                self.items(items, depth + 1);
                self.body += &format!("{pad}</g>\n");
            }
        }
    }

    /// An id that nothing else has.
    fn id(&mut self, name: &str) -> String {
        let stem = named(format!("{}{}", self.prefix, slug(name)));
        let mut id = stem.clone();
        let mut count = 1;
        while !self.ids.insert(id.clone()) {
            count += 1;
            id = format!("{stem}.{count}");
        }
        id
    }

    fn clip(&mut self, x: f64, y: f64, width: f64, height: f64) -> String {
        self.clips += 1;
        let id = self.id(&format!("clip-{}", self.clips));
        let [x, y, width, height] = [x, y, width, height].map(|v| self.mm(v));
        self.defs += &format!(
            "<clipPath id=\"{id}\"><rect x=\"{x}\" y=\"{y}\" width=\"{width}\" height=\"{height}\"/></clipPath>\n"
        );
        id
    }

    /// Things that come several times, written down where they come first.
    fn once(&mut self, what: &Arc<Shared>) -> String {
        if let Some((_, id)) = self.shared.iter().find(|(known, _)| Arc::ptr_eq(known, what)) {
            return id.clone();
        }
        let room = what.room;
        let clip = self.clip(room.x0, room.y0, room.width(), room.height());
        let id = self.id(&format!("shared-{}", self.shared.len() + 1));
        let before = std::mem::take(&mut self.body);
        self.items(&what.items, 1);
        let own = std::mem::replace(&mut self.body, before);
        self.defs += &format!("<g id=\"{id}\" clip-path=\"url(#{clip})\">\n{own}</g>\n");
        self.shared.push((Arc::clone(what), id.clone()));
        id
    }

    fn text(&mut self, text: &Text, pad: &str) {
        if text.text.trim().is_empty() {
            return;
        }
        let width = font::text_width(&text.text, text.size);
        let [x, y, size, width] = [text.at.x, text.at.y, text.size, width].map(|v| self.mm(v));
        let anchor = match text.align {
            Align::Start => "start",
            Align::Middle => "middle",
            Align::End => "end",
        };
        let turned = if text.angle == 0.0 {
            String::new()
        } else {
            format!(" transform=\"rotate({} {x} {y})\"", self.mm(text.angle.to_degrees()))
        };
        let letters: String = font::signs(&text.text).map(|s| s.letter).collect();
        // Where another font is taken, the words keep their width.
        self.body += &format!(
            "{pad}<text xml:space=\"preserve\" x=\"{x}\" y=\"{y}\" font-family=\"Inter, sans-serif\" font-size=\"{size}\" \
             text-anchor=\"{anchor}\" textLength=\"{width}\" lengthAdjust=\"spacingAndGlyphs\" fill=\"{}\"{turned}>{}</text>\n",
            colour(text.ink),
            escaped(&letters)
        );
    }

    fn path(&mut self, path: &BezPath) -> String {
        let mut out: Vec<String> = Vec::new();
        for element in path.elements() {
            let (letter, points): (&str, &[Point]) = match element {
                PathEl::MoveTo(p) => ("M", &[*p]),
                PathEl::LineTo(p) => ("L", &[*p]),
                PathEl::QuadTo(a, p) => ("Q", &[*a, *p]),
                PathEl::CurveTo(a, b, p) => ("C", &[*a, *b, *p]),
                PathEl::ClosePath => ("Z", &[]),
            };
            let numbers: Vec<String> = points.iter().map(|p| format!("{} {}", self.mm(p.x), self.mm(p.y))).collect();
            out.push(format!("{letter}{}", numbers.join(" ")));
        }
        out.join(" ")
    }

    /// A number to three decimals, without zeros at its end.
    fn mm(&mut self, value: f64) -> String {
        // Ten sheets beyond the sheet is a fault.
        if value.is_nan() || value.abs() > 10.0 * MAX_SIDE {
            self.sound = false;
            return String::new();
        }
        decimals(value, 3)
    }
}

/// A number with so many decimals, without zeros at its end and without a sign in front of nothing.
pub(super) fn decimals(value: f64, places: usize) -> String {
    let parts = libm::pow(10.0, places as f64);
    let text = format!("{:.places$}", round_half_away(value * parts, 1.0) / parts);
    let text = if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.') } else { &text };
    if text == "-0" { "0".to_owned() } else { text.to_owned() }
}

/// As an id may be: anything but letters, digits, `-` and `_` becomes `-`.
fn slug(text: &str) -> String {
    text.chars().map(|c| if c.is_ascii_alphanumeric() || c == '-' || c == '_' { c } else { '-' }).collect()
}

/// A name in XML begins with a letter.
fn named(text: String) -> String {
    if text.is_empty() || text.starts_with(|c: char| c.is_ascii_alphabetic()) { text } else { format!("n{text}") }
}

/// Text as it stands in XML; what may not stand there is left out.
fn escaped(text: &str) -> String {
    let allowed = |c: &char| !c.is_control() && !matches!(c, '\u{fffe}' | '\u{ffff}');
    let plain: String = text.chars().map(|c| if c.is_whitespace() { ' ' } else { c }).filter(allowed).collect();
    plain.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;").replace('"', "&quot;")
}

fn colour(ink: Ink) -> String {
    format!("#{:02x}{:02x}{:02x}", ink.red, ink.green, ink.blue)
}
