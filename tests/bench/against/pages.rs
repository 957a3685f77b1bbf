//! Writing pages as PDF beside `lopdf`: the home print of two drafts in one size, texts left out on both sides.
//!
//! Both get the same drawings, round to the same thousandths, write shared things once as a form and compress each stream. Ours keeps lines in the
//! file as it goes, the other makes a list of operations first, which is how that library writes. It compresses at its highest level; so that is
//! also timed by our level (6), by the same compressor that it brings. Ours also makes a digest of the content for the file's own number. The pages
//! are drawn by `pdftoppm` and compared point by point (in `figures.py`).

use std::collections::BTreeMap;
use std::io::Write as _;
use std::path::Path;
use std::sync::Arc;

use flate2::Compression;
use flate2::write::ZlibEncoder;
use kurbo::{BezPath, PathEl, Point};
use lopdf::content::{Content, Operation};
use lopdf::{Dictionary, Document, Object, ObjectId, Stream, dictionary};
use serde_json::json;
use tracewheel::base::round_half_away;
use tracewheel::compute::Engine;
use tracewheel::file;
use tracewheel::finish::finish;
use tracewheel::output::{Ink, Item, Picture, Shared, write_pdf};
use tracewheel::session::{PrintWish, home_print};

use crate::{millis, told};

const POINTS: f64 = 72.0 / 25.4;

/// Without texts and layers; what was shared still is.
fn bare(items: &[Item], known: &mut BTreeMap<usize, Arc<Shared>>) -> Vec<Item> {
    let mut out = Vec::new();
    for item in items {
        match item {
            Item::Text(_) | Item::Photo { .. } => {}
            Item::Clip { rect, items } => out.push(Item::Clip { rect: *rect, items: bare(items, known) }),
            Item::Group { items, .. } => out.push(Item::Group { layer: None, items: bare(items, known) }),
            Item::Shared { what, at } => {
                let key = Arc::as_ptr(what) as usize;
                let what = known.get(&key).cloned().unwrap_or_else(|| {
                    let made = Arc::new(Shared { room: what.room, items: bare(&what.items, known) });
                    known.insert(key, Arc::clone(&made));
                    made
                });
                out.push(Item::Shared { what, at: *at });
            }
            other => out.push(other.clone()),
        }
    }
    out
}

fn real(v: f64) -> Object {
    Object::Real(round_half_away(v, 1e-3) as f32)
}

/// Writes with the other library.
struct Theirs {
    document: Document,
    forms: Vec<(Arc<Shared>, ObjectId)>,
    /// The level of compression; none: as the library does it.
    level: Option<u32>,
}

impl Theirs {
    fn items(&mut self, items: &[Item], out: &mut Vec<Operation>) {
        let op = |out: &mut Vec<Operation>, word: &str, operands: Vec<Object>| out.push(Operation::new(word, operands));
        for item in items {
            match item {
                Item::Stroke { path, pen } if !path.is_empty() => {
                    op(out, "q", vec![]);
                    op(out, "w", vec![real(pen.width)]);
                    op(out, "J", vec![i64::from(pen.dashes.is_empty()).into()]);
                    op(out, "j", vec![1.into()]);
                    if !pen.dashes.is_empty() {
                        let dashes = pen.dashes.iter().map(|d| real(*d)).collect();
                        op(out, "d", vec![Object::Array(dashes), 0.into()]);
                    }
                    ink(out, pen.ink, ["G", "RG"]);
                    lines(out, path);
                    op(out, "S", vec![]);
                    op(out, "Q", vec![]);
                }
                Item::Fill { path, ink: colour } if !path.is_empty() => {
                    op(out, "q", vec![]);
                    ink(out, *colour, ["g", "rg"]);
                    lines(out, path);
                    op(out, "f", vec![]);
                    op(out, "Q", vec![]);
                }
                Item::Clip { rect, items } => {
                    op(out, "q", vec![]);
                    op(out, "re", vec![real(rect.x0), real(rect.y0), real(rect.width()), real(rect.height())]);
                    op(out, "W", vec![]);
                    op(out, "n", vec![]);
                    self.items(items, out);
                    op(out, "Q", vec![]);
                }
                Item::Group { items, .. } => self.items(items, out),
                Item::Shared { what, at } => {
                    let known = self.forms.iter().position(|(w, _)| Arc::ptr_eq(w, what));
                    let i = known.unwrap_or_else(|| self.form(what));
                    op(out, "q", vec![]);
                    op(out, "cm", vec![1.into(), 0.into(), 0.into(), 1.into(), real(at.x), real(at.y)]);
                    op(out, "Do", vec![Object::Name(format!("F{i}").into_bytes())]);
                    op(out, "Q", vec![]);
                }
                _ => {}
            }
        }
    }

    fn form(&mut self, what: &Arc<Shared>) -> usize {
        let mut own = Vec::new();
        self.items(&what.items, &mut own);
        let room = what.room;
        let id = self.stream(
            dictionary! {
                "Type" => "XObject", "Subtype" => "Form",
                "BBox" => Object::Array(vec![real(room.x0), real(room.y0), real(room.x1), real(room.y1)]),
            },
            own,
        );
        self.forms.push((Arc::clone(what), id));
        self.forms.len() - 1
    }

    fn stream(&mut self, dictionary: Dictionary, operations: Vec<Operation>) -> ObjectId {
        let content = Content { operations }.encode().unwrap();
        let stream = match self.level {
            None => {
                let mut stream = Stream::new(dictionary, content);
                stream.compress().unwrap();
                stream
            }
            Some(level) => {
                let mut packed = ZlibEncoder::new(Vec::new(), Compression::new(level));
                packed.write_all(&content).unwrap();
                let mut stream = Stream::new(dictionary, packed.finish().unwrap());
                stream.dict.set("Filter", "FlateDecode");
                stream
            }
        };
        self.document.add_object(stream)
    }

    fn write(pages: &[Picture], level: Option<u32>) -> Vec<u8> {
        let mut own = Self { document: Document::with_version("1.7"), forms: Vec::new(), level };
        let (tree, resources) = (own.document.new_object_id(), own.document.new_object_id());
        let mut kids = Vec::new();
        for page in pages {
            let high = (page.height * POINTS) as f32;
            let mut out = vec![Operation::new(
                "cm",
                vec![
                    Object::Real(POINTS as f32),
                    0.into(),
                    0.into(),
                    Object::Real(-POINTS as f32),
                    0.into(),
                    Object::Real(high),
                ],
            )];
            own.items(&page.items, &mut out);
            let content = own.stream(Dictionary::new(), out);
            let box_of = vec![0.into(), 0.into(), Object::Real((page.width * POINTS) as f32), Object::Real(high)];
            kids.push(Object::Reference(own.document.add_object(dictionary! {
                "Type" => "Page", "Parent" => tree, "Contents" => content, "Resources" => resources,
                "MediaBox" => Object::Array(box_of),
            })));
        }
        let mut names = Dictionary::new();
        for (i, (_, id)) in own.forms.iter().enumerate() {
            names.set(format!("F{i}"), Object::Reference(*id));
        }
        let document = &mut own.document;
        document.objects.insert(resources, Object::Dictionary(dictionary! { "XObject" => names }));
        let count = kids.len() as i64;
        document
            .objects
            .insert(tree, Object::Dictionary(dictionary! { "Type" => "Pages", "Kids" => kids, "Count" => count }));
        let catalog = document.add_object(dictionary! { "Type" => "Catalog", "Pages" => tree });
        document.trailer.set("Root", catalog);
        let mut bytes = Vec::new();
        document.save_to(&mut bytes).unwrap();
        bytes
    }
}

fn ink(out: &mut Vec<Operation>, ink: Ink, [grey, colour]: [&str; 2]) {
    let part = |v: u8| real(f64::from(v) / 255.0);
    if ink.red == ink.green && ink.green == ink.blue {
        out.push(Operation::new(grey, vec![part(ink.red)]));
    } else {
        out.push(Operation::new(colour, vec![part(ink.red), part(ink.green), part(ink.blue)]));
    }
}

fn lines(out: &mut Vec<Operation>, path: &BezPath) {
    let at = |points: &[Point]| points.iter().flat_map(|p| [real(p.x), real(p.y)]).collect();
    let (mut start, mut last) = (Point::ZERO, Point::ZERO);
    for element in path.elements() {
        match *element {
            PathEl::MoveTo(p) => {
                start = p;
                out.push(Operation::new("m", at(&[p])));
            }
            PathEl::LineTo(p) => out.push(Operation::new("l", at(&[p]))),
            PathEl::QuadTo(a, p) => {
                out.push(Operation::new("c", at(&[last.lerp(a, 2.0 / 3.0), p.lerp(a, 2.0 / 3.0), p])));
            }
            PathEl::CurveTo(a, b, p) => out.push(Operation::new("c", at(&[a, b, p]))),
            PathEl::ClosePath => out.push(Operation::new("h", vec![])),
        }
        last = element.end_point().unwrap_or(start);
    }
}

pub fn run(rounds: usize, folder: &Path) {
    for (name, text, size) in [
        ("bodice", include_str!("../../../examples/bodice-finished.ron"), "88"),
        ("smock", include_str!("../../../examples/work-smock.ron"), ""),
    ] {
        let draft = file::read(text).unwrap().draft;
        let model = Engine::new().compute(&draft);
        let finished = finish(&draft, &model);
        let list = &model.of_views()[0].plan.cases.list;
        let case = list.iter().position(|c| c.address.ends_with(size)).unwrap();
        let (sheets, _) = home_print(&draft, (&model, &finished), 0, &[case], &PrintWish::default()).unwrap();
        let mut known = BTreeMap::new();
        let pages: Vec<Picture> = sheets
            .pages
            .iter()
            .map(|p| Picture { width: p.width, height: p.height, items: bare(&p.items, &mut known) })
            .collect();
        let mut times = Vec::new();
        for _ in 0..rounds {
            times.push([
                millis(|| drop(write_pdf("x", &pages).unwrap())),
                millis(|| drop(Theirs::write(&pages, Some(6)))),
                millis(|| drop(Theirs::write(&pages, None))),
                millis(|| drop(write_pdf("x", &sheets.pages).unwrap())),
            ]);
        }
        let files = [
            ("ours", write_pdf("x", &pages).unwrap()),
            ("level-6", Theirs::write(&pages, Some(6))),
            ("own-level", Theirs::write(&pages, None)),
            ("with-texts", write_pdf("x", &sheets.pages).unwrap()),
        ];
        let sizes: Vec<usize> = files.iter().map(|(_, bytes)| bytes.len()).collect();
        for (kind, bytes) in files {
            std::fs::write(folder.join(format!("{name}-{kind}.pdf")), bytes).unwrap();
        }
        told(&json!({
            "name": name, "size": list[case].address, "pages": pages.len(), "ms": times, "bytes": sizes,
        }));
    }
}
