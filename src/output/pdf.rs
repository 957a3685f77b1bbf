//! Pictures as a PDF file. The only place that writes PDF.
//!
//! True size: one matrix turns millimetres into points, pages never carry another unit. Same pictures, same bytes: no
//! clock, numbers from the content. Coordinates are written to 0.001 mm.

use std::sync::Arc;

use kurbo::{BezPath, PathEl, Point};
use pdf_writer::types::{LineCapStyle, LineJoinStyle};
use pdf_writer::writers::Resources;
use pdf_writer::{Content, Filter, Finish, Name, Obj, Pdf, Rect, Ref, Str, TextStr};
use thiserror::Error;

use super::drawing::{Align, Ink, Item, Picture, Shared, Text};
use super::font;
use super::pdf_stream::Packer;
use super::pdf_text::TextBook;
use super::photo::Photo;
use crate::base::{Scalar, digest, round_half_away};
use crate::texts::{own_number, say};

/// The longest side of a page, mm: 14 400 points, beyond which readers disagree (ISO 32000, annex on limits).
pub const MAX_SIDE: f64 = 5080.0;
/// Points in a millimetre.
const POINTS: f64 = 72.0 / 25.4;
/// The step of written coordinates, mm.
pub(super) const STEP: f64 = 1e-3;
/// The step of written direction numbers: shorter decimals would be written with an exponent, which PDF does not know.
const TURN_STEP: f64 = 1e-5;

/// Why a PDF file cannot be made.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum PdfError {
    /// No pages.
    #[error("{}", say!("output-no-page"))]
    NoPages,
    /// A page without a size.
    #[error("{}", say!("output-page-empty", page, width = own_number(width), height = own_number(height)))]
    PageEmpty {
        /// Counted from 1.
        page: usize,
        /// mm.
        width: f64,
        /// mm.
        height: f64,
    },
    /// A page beyond [`MAX_SIDE`].
    #[error("{}", too_large(*page, *width, *height))]
    PageTooLarge {
        /// Counted from 1.
        page: usize,
        /// mm.
        width: f64,
        /// mm.
        height: f64,
    },
    /// A coordinate or size that is no number, or far beyond any page.
    #[error("{}", say!("output-page-place", page))]
    NotFinite {
        /// Counted from 1.
        page: usize,
    },
    /// The font that is part of the program failed.
    #[error("{}", say!("output-font", problem))]
    Font {
        /// What went wrong.
        problem: String,
    },
    /// More than one stream can hold.
    #[error(
        "a page has {bytes} bytes of drawing, more than can be packed into a PDF file; publish fewer sizes or pieces together"
    )]
    TooMuch {
        /// Before packing.
        bytes: usize,
    },
}

fn too_large(page: usize, width: f64, height: f64) -> String {
    let whole = |mm: f64| format!("{mm:.0}");
    let over = |mm: f64| whole((mm - MAX_SIDE).ceil());
    let too_much = match (width > MAX_SIDE, height > MAX_SIDE) {
        (true, true) => say!("output-too-wide-and-high", wide = over(width), high = over(height)),
        (false, true) => say!("output-too-high", high = over(height)),
        _ => say!("output-too-wide", wide = over(width)),
    };
    let (width, height) = (whole(width), whole(height));
    say!("output-page-large", page, width, height, too_much, most = own_number(MAX_SIDE))
}

/// The bytes of a PDF file with one page for each picture.
///
/// Signs that the font lacks are drawn as a box: ask [`font::missing_signs`] before, to tell the person.
pub fn write(title: &str, pages: &[Picture]) -> Result<Vec<u8>, PdfError> {
    if pages.is_empty() {
        return Err(PdfError::NoPages);
    }
    let mut text = TextBook::new();
    let mut layers: Vec<String> = Vec::new();
    let mut forms: Vec<Form> = Vec::new();
    let mut photos: Vec<Arc<Photo>> = Vec::new();
    let mut contents = Vec::with_capacity(pages.len());
    for (i, page) in pages.iter().enumerate() {
        check_size(i + 1, page.width, page.height)?;
        let mut artist = Artist {
            content: Content::new(),
            text: &mut text,
            layers: &mut layers,
            forms: &mut forms,
            photos: &mut photos,
            sound: true,
        };
        artist.content.transform([POINTS as f32, 0.0, 0.0, -POINTS as f32, 0.0, points(page.height)]);
        artist.items(&page.items);
        if !artist.sound {
            return Err(PdfError::NotFinite { page: i + 1 });
        }
        contents.push(artist.content.finish().into_vec());
    }
    assembled(title, pages, &contents, (&forms, &photos), &text, &layers)
}

/// Shared things with what is written for them.
struct Form {
    what: Arc<Shared>,
    content: Vec<u8>,
}

fn check_size(page: usize, width: f64, height: f64) -> Result<(), PdfError> {
    if !(width.is_finite() && height.is_finite() && width > 0.0 && height > 0.0) {
        return Err(PdfError::PageEmpty { page, width, height });
    }
    if width > MAX_SIDE || height > MAX_SIDE {
        return Err(PdfError::PageTooLarge { page, width, height });
    }
    Ok(())
}

fn assembled(
    title: &str,
    pages: &[Picture],
    contents: &[Vec<u8>],
    (forms, photos): (&[Form], &[Arc<Photo>]),
    text: &TextBook,
    layers: &[String],
) -> Result<Vec<u8>, PdfError> {
    let mut count = 0;
    let mut next = || {
        count += 1;
        Ref::new(count)
    };
    let mut pdf = Pdf::new();
    let (catalog, tree, info, metadata) = (next(), next(), next(), next());
    let mut packer = Packer::new();
    let fonts = text.write(&mut pdf, &mut packer, &mut next)?;
    let layer_refs: Vec<Ref> = layers.iter().map(|_| next()).collect();
    let form_refs: Vec<Ref> = forms.iter().map(|_| next()).collect();
    let photo_refs: Vec<Ref> = photos.iter().map(|_| next()).collect();
    let page_refs: Vec<(Ref, Ref)> = pages.iter().map(|_| (next(), next())).collect();

    let title = plain(title);
    pdf.document_info(info).title(TextStr(&title)).producer(TextStr(PRODUCER));
    pdf.stream(metadata, xmp(&title).as_bytes())
        .pair(Name(b"Type"), Name(b"Metadata"))
        .pair(Name(b"Subtype"), Name(b"XML"));

    for (layer, name) in layer_refs.iter().zip(layers) {
        let mut dict = pdf.indirect(*layer).dict();
        dict.pair(Name(b"Type"), Name(b"OCG"));
        dict.pair(Name(b"Name"), TextStr(name));
    }

    let mut root = pdf.catalog(catalog);
    root.pages(tree).metadata(metadata);
    let mut wishes = root.viewer_preferences();
    wishes.display_doc_title(true);
    // Print dialogs propose the true size instead of fitting to the paper.
    wishes.pair(Name(b"PrintScaling"), Name(b"None"));
    wishes.finish();
    if !layers.is_empty() {
        layer_table(root.insert(Name(b"OCProperties")), &layer_refs);
    }
    root.finish();

    let mut list = pdf.pages(tree);
    list.kids(page_refs.iter().map(|(page, _)| *page)).count(page_refs.len() as i32);
    let mut resources = list.resources();
    font_table(&mut resources, &fonts);
    if !forms.is_empty() || !photos.is_empty() {
        let mut names = resources.x_objects();
        for (i, photo) in photo_refs.iter().enumerate() {
            names.pair(Name(photo_name(i).as_bytes()), *photo);
        }
        for (i, form) in form_refs.iter().enumerate() {
            names.pair(Name(form_name(i).as_bytes()), *form);
        }
    }
    if !layers.is_empty() {
        let mut names = resources.insert(Name(b"Properties")).dict();
        for (i, layer) in layer_refs.iter().enumerate() {
            names.pair(Name(layer_name(i).as_bytes()), *layer);
        }
    }
    resources.finish();
    list.finish();

    for ((page, (page_ref, content_ref)), content) in pages.iter().zip(&page_refs).zip(contents) {
        pdf.page(*page_ref)
            .parent(tree)
            .media_box(Rect::new(0.0, 0.0, points(page.width), points(page.height)))
            .contents(*content_ref);
        pdf.stream(*content_ref, &packer.packed(content)?).filter(Filter::FlateDecode);
    }

    for (form, reference) in forms.iter().zip(&form_refs) {
        let bytes = packer.packed(&form.content)?;
        let mut object = pdf.form_xobject(*reference, &bytes);
        let room = form.what.room;
        let corner = |v: f64| round_half_away(v, STEP) as f32;
        object.bbox(Rect::new(corner(room.x0), corner(room.y0), corner(room.x1), corner(room.y1)));
        font_table(&mut object.resources(), &fonts);
        object.filter(Filter::FlateDecode);
    }

    for (photo, reference) in photos.iter().zip(&photo_refs) {
        let bytes = if photo.is_jpeg { photo.bytes.clone() } else { packer.packed(&photo.points)? };
        let mut object = pdf.image_xobject(*reference, &bytes);
        object.filter(if photo.is_jpeg { Filter::DctDecode } else { Filter::FlateDecode });
        object.width(photo.width as i32).height(photo.height as i32).bits_per_component(8);
        object.color_space().device_rgb();
    }

    let mut parts: Vec<&[u8]> = vec![title.as_bytes()];
    parts.extend(photos.iter().map(|p| p.bytes.as_slice()));
    parts.extend(forms.iter().map(|f| f.content.as_slice()));
    parts.extend(contents.iter().map(Vec::as_slice));
    let id = digest(&parts).to_be_bytes().to_vec();
    pdf.set_file_id((id.clone(), id));
    Ok(pdf.finish())
}

/// The table of layers: all on, all listed (a reader shows only what is listed).
fn layer_table(place: Obj<'_>, layers: &[Ref]) {
    let mut table = place.dict();
    table.insert(Name(b"OCGs")).array().items(layers);
    let mut shown = table.insert(Name(b"D")).dict();
    shown.pair(Name(b"Name"), TextStr("Layers"));
    shown.insert(Name(b"Order")).array().items(layers);
}

fn font_table(resources: &mut Resources<'_>, fonts: &[Ref]) {
    let mut names = resources.fonts();
    for (slot, font) in fonts.iter().enumerate() {
        names.pair(Name(TextBook::slot_name(slot).as_bytes()), *font);
    }
}

fn form_name(i: usize) -> String {
    format!("F{i}")
}

fn photo_name(i: usize) -> String {
    format!("I{i}")
}

fn layer_name(i: usize) -> String {
    format!("L{i}")
}

/// Writes the content of one page.
struct Artist<'a> {
    content: Content,
    text: &'a mut TextBook,
    layers: &'a mut Vec<String>,
    forms: &'a mut Vec<Form>,
    photos: &'a mut Vec<Arc<Photo>>,
    /// Whether all numbers were usable.
    sound: bool,
}

impl Artist<'_> {
    fn items(&mut self, items: &[Item]) {
        for item in items {
            match item {
                Item::Stroke { path, .. } | Item::Fill { path, .. } if path.is_empty() => {}
                Item::Stroke { path, pen } => {
                    self.content.save_state();
                    let width = self.mm(pen.width);
                    let cap = if pen.dashes.is_empty() { LineCapStyle::RoundCap } else { LineCapStyle::ButtCap };
                    self.content.set_line_width(width).set_line_cap(cap).set_line_join(LineJoinStyle::RoundJoin);
                    if !pen.dashes.is_empty() {
                        let dashes: Vec<f32> = pen.dashes.iter().map(|d| self.mm(*d)).collect();
                        self.content.set_dash_pattern(dashes, 0.0);
                    }
                    match grey(pen.ink) {
                        Ok(light) => self.content.set_stroke_gray(light),
                        Err([r, g, b]) => self.content.set_stroke_rgb(r, g, b),
                    };
                    self.path(path);
                    self.content.stroke().restore_state();
                }
                Item::Fill { path, ink } => {
                    self.content.save_state();
                    self.fill_ink(*ink);
                    self.path(path);
                    self.content.fill_nonzero().restore_state();
                }
                Item::Text(text) => self.line_of_text(text),
                Item::Photo { photo, rect } => {
                    let known = self.photos.iter().position(|p| p.digest == photo.digest);
                    let i = known.unwrap_or_else(|| {
                        self.photos.push(Arc::clone(photo));
                        self.photos.len() - 1
                    });
                    // A picture is drawn in the unit square, its upper edge at 1; y points down here.
                    let (x, y) = self.point(Point::new(rect.x0, rect.y1));
                    let (width, height) = (self.mm(rect.width()), self.mm(rect.height()));
                    self.content.save_state().transform([width, 0.0, 0.0, -height, x, y]);
                    self.content.x_object(Name(photo_name(i).as_bytes())).restore_state();
                }
                Item::Clip { rect, items } => {
                    let (x, y) = self.point(rect.origin());
                    let (width, height) = (self.mm(rect.width()), self.mm(rect.height()));
                    self.content.save_state().rect(x, y, width, height).clip_nonzero().end_path();
                    self.items(items);
                    self.content.restore_state();
                }
                Item::Shared { what, at } => {
                    let known = self.forms.iter().position(|f| Arc::ptr_eq(&f.what, what));
                    let i = known.unwrap_or_else(|| self.form(what));
                    let (x, y) = (self.mm(at.x), self.mm(at.y));
                    self.content.save_state().transform([1.0, 0.0, 0.0, 1.0, x, y]);
                    self.content.x_object(Name(form_name(i).as_bytes())).restore_state();
                }
                Item::Group { layer: None, items } => self.items(items),
                Item::Group { layer: Some(name), items } => {
                    let i = self.layers.iter().position(|l| l == name).unwrap_or_else(|| {
                        self.layers.push(name.clone());
                        self.layers.len() - 1
                    });
                    self.content
                        .begin_marked_content_with_properties(Name(b"OC"))
                        .properties_named(Name(layer_name(i).as_bytes()));
                    self.items(items);
                    self.content.end_marked_content();
                }
            }
        }
    }

    /// Writes shared things down, once.
    fn form(&mut self, what: &Arc<Shared>) -> usize {
        let mut own = Artist {
            content: Content::new(),
            text: &mut *self.text,
            layers: &mut *self.layers,
            forms: &mut *self.forms,
            photos: &mut *self.photos,
            sound: true,
        };
        own.items(&what.items);
        let (sound, content) = (own.sound, own.content.finish().into_vec());
        self.sound &= sound;
        self.forms.push(Form { what: Arc::clone(what), content });
        self.forms.len() - 1
    }

    fn line_of_text(&mut self, text: &Text) {
        let width = font::text_width(&text.text, text.size);
        let (cos, sin) = (Scalar::cos(text.angle), Scalar::sin(text.angle));
        let back = match text.align {
            Align::Start => 0.0,
            Align::Middle => width / 2.0,
            Align::End => width,
        };
        let (x, y) = (self.mm(text.at.x - back * cos), self.mm(text.at.y - back * sin));
        let size = self.mm(text.size);
        let (cos, sin) = (self.number(cos, TURN_STEP), self.number(sin, TURN_STEP));
        self.content.save_state();
        self.fill_ink(text.ink);
        // Letters stand up against the page's y, which points down.
        self.content.begin_text().set_text_matrix([cos, sin, sin, -cos, x, y]);
        for run in self.text.runs(&text.text) {
            if let Some(letters) = &run.letters {
                let mut mark = self.content.begin_marked_content_with_properties(Name(b"Span"));
                mark.properties().actual_text(TextStr(letters));
            }
            self.content.set_font(Name(TextBook::slot_name(run.slot).as_bytes()), size).show(Str(&run.codes));
            if run.letters.is_some() {
                self.content.end_marked_content();
            }
        }
        self.content.end_text().restore_state();
    }

    fn path(&mut self, path: &BezPath) {
        let (mut start, mut last) = (Point::ZERO, Point::ZERO);
        for element in path.elements() {
            let element = *element;
            match element {
                PathEl::MoveTo(p) => {
                    start = p;
                    let (x, y) = self.point(p);
                    self.content.move_to(x, y);
                }
                PathEl::LineTo(p) => {
                    let (x, y) = self.point(p);
                    self.content.line_to(x, y);
                }
                PathEl::QuadTo(a, p) => self.cubic(last.lerp(a, 2.0 / 3.0), p.lerp(a, 2.0 / 3.0), p),
                PathEl::CurveTo(a, b, p) => self.cubic(a, b, p),
                PathEl::ClosePath => {
                    self.content.close_path();
                }
            }
            last = element.end_point().unwrap_or(start);
        }
    }

    fn cubic(&mut self, a: Point, b: Point, p: Point) {
        let ((ax, ay), (bx, by), (x, y)) = (self.point(a), self.point(b), self.point(p));
        self.content.cubic_to(ax, ay, bx, by, x, y);
    }

    fn fill_ink(&mut self, ink: Ink) {
        match grey(ink) {
            Ok(light) => self.content.set_fill_gray(light),
            Err([r, g, b]) => self.content.set_fill_rgb(r, g, b),
        };
    }

    fn point(&mut self, p: Point) -> (f32, f32) {
        (self.mm(p.x), self.mm(p.y))
    }

    fn mm(&mut self, value: f64) -> f32 {
        self.number(value, STEP)
    }

    fn number(&mut self, value: f64, step: f64) -> f32 {
        // Ten pages beyond the page is a fault, and larger numbers would lose their thousandths.
        self.sound &= value.abs() <= 10.0 * MAX_SIDE;
        round_half_away(value, step) as f32
    }
}

/// The grey of an ink, or else its colour, from 0 to 1.
fn grey(ink: Ink) -> Result<f32, [f32; 3]> {
    let parts = [ink.red, ink.green, ink.blue].map(|part| round_half_away(f64::from(part) / 255.0, 1e-3) as f32);
    if ink.red == ink.green && ink.green == ink.blue { Ok(parts[0]) } else { Err(parts) }
}

fn points(mm: f64) -> f32 {
    (mm * POINTS) as f32
}

const PRODUCER: &str = concat!("Tracewheel ", env!("CARGO_PKG_VERSION"));

fn plain(text: &str) -> String {
    font::signs(text).map(|s| s.letter).collect()
}

/// The title and the program once more, in the form that archives and file browsers read.
fn xmp(title: &str) -> String {
    // Two code points beside the control signs may not stand in XML.
    let title: String = title.chars().filter(|c| !matches!(c, '\u{fffe}' | '\u{ffff}')).collect();
    let title = title.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;");
    format!(
        "<?xpacket begin=\"\u{feff}\" id=\"W5M0MpCehiHzreSzNTczkc9d\"?>\n\
         <x:xmpmeta xmlns:x=\"adobe:ns:meta/\"><rdf:RDF xmlns:rdf=\"http://www.w3.org/1999/02/22-rdf-syntax-ns#\">\n\
         <rdf:Description rdf:about=\"\" xmlns:dc=\"http://purl.org/dc/elements/1.1/\" \
         xmlns:pdf=\"http://ns.adobe.com/pdf/1.3/\">\n\
         <dc:format>application/pdf</dc:format>\n\
         <dc:title><rdf:Alt><rdf:li xml:lang=\"x-default\">{title}</rdf:li></rdf:Alt></dc:title>\n\
         <pdf:Producer>{PRODUCER}</pdf:Producer>\n\
         </rdf:Description></rdf:RDF></x:xmpmeta>\n<?xpacket end=\"r\"?>"
    )
}
